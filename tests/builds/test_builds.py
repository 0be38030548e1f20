"""The demo and three invented, half-filled builds: the packet is made, half of the items can be worked on, what is
open is worth asking.
"""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from gaugeblock.packet import make
from gaugeblock.packet.build import Packet
from gaugeblock.packet.render import render

DEMO = Path(__file__).parents[2] / "reports" / "examples" / "demo.toml"
BUILDS = [DEMO, *sorted(Path(__file__).parent.glob("*.toml"))]


@pytest.fixture(scope="module", params=BUILDS, ids=lambda p: p.stem)
def packet(request: pytest.FixtureRequest) -> Packet:
    return make.make(str(request.param))


def test_at_least_half_of_the_items_can_be_worked_on(packet: Packet) -> None:
    named = {i["name"] for table in packet.record["job"].values() if isinstance(table, list) for i in table}
    kinds = Counter(i.sheet.decision.kind for i in packet.items if i.name in named)
    assert sum(kinds.values()) == len(named)
    assert kinds["use"] * 2 >= len(named), kinds


def test_what_is_open_says_what_to_do(packet: Packet) -> None:
    for item in packet.items:
        decision = item.sheet.decision
        if decision.kind != "use":
            assert decision.do, item.name


def test_no_question_is_asked_twice(packet: Packet) -> None:
    texts = [(q["kind"], q["text"]) for q in packet.record["questions"]]
    assert len(texts) == len(set(texts))


def test_every_question_names_the_key_that_closes_it(packet: Packet) -> None:
    for question in packet.record["questions"]:
        assert question["key"], question


def test_a_unit_keeps_its_letters_on_paper(packet: Packet) -> None:
    pages = [render(packet)[name].decode() for name in ("packet.html", "packet.md")]
    assert any("N·m" in page for page in pages)
    for page in pages:
        assert not re.search(r"\b[0-9.]+ (?:n\*m|n·m|degc|degf|awg|mpa|kpa|v|a|hrc)\b", page)
