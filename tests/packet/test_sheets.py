"""Builds of many kinds: a card stands on the sheet that the first page names, in one unit."""

from __future__ import annotations

from pathlib import Path

import pytest

from gaugeblock.packet import make, render
from gaugeblock.packet.build import Packet
from gaugeblock.packet.chosen import Scope
from packet.test_browser import printed_pages

TESTS = Path(__file__).parents[1]
BUILDS = sorted([*TESTS.glob("builds/*.toml"), *TESTS.glob("packet/builds/*.toml")])


@pytest.fixture(scope="module", params=BUILDS, ids=lambda p: p.stem)
def packet(request: pytest.FixtureRequest) -> Packet:
    return make.make(str(request.param))


def test_a_card_stands_on_the_sheet_that_the_first_page_names(packet: Packet, tmp_path: Path) -> None:
    """Whatever the first page and the list hold: they take as many sheets as were counted."""
    view = render.view_of(packet, Scope())
    pages = printed_pages(render.render(packet)["packet.html"].decode(), tmp_path)
    assert view["page_of"]
    for number, page in view["page_of"].items():
        text = " ".join(pages[page - 1].replace("\u00a0", " ").split())
        assert "At the car" in text, (number, page)
        assert packet.items[number - 1].name[:20] in text, (number, page)
    last = max(view["page_of"].values())
    assert "At the desk" in pages[last]


def test_the_boxes_and_passes_of_a_card_are_in_the_unit_of_its_number(packet: Packet) -> None:
    torques = {"lbf\u00b7ft", "lbf\u00b7in", "N\u00b7m"}
    for card in (c for page in render.view_of(packet, Scope())["cards"] for c in page):
        units = {f.unit for f in card.figures} & torques
        said = {b.unit for b in card.boxes} | {s.rsplit("\u00a0", 1)[-1] for s in card.steps}
        if units:
            assert said & torques <= units, card.name
