"""The first page: one sheet as long as its questions fit, more when they do not, and it is told how many."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from gaugeblock.domains import parse_job
from gaugeblock.packet import build, make, render
from gaugeblock.packet.chosen import Scope
from gaugeblock.tables.load import refdata
from packet.test_browser import printed_pages

TUBE = '[[tubes]]\nname = "tube {0}"\nod = "{1} in"\nbends = [{{ angle = "{0} deg" }}]\n'


@pytest.mark.parametrize("count", [1, 24, 70])
@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_the_first_page_takes_as_many_sheets_as_are_counted(count: int, paper: str, tmp_path: Path) -> None:
    """Items that each ask for something of their own, so that nothing is grouped: a card stands where it is said to."""
    text = "".join(TUBE.format(n, n + 1) for n in range(1, count + 1))
    made = build.build(parse_job(text), refdata(), "test")
    view = render.view_of(made, Scope())
    assert sum(len(g.rows) for g in view["first"].groups) >= 1
    pages = printed_pages(render.render(made)["packet.html"].decode(), tmp_path, paper)
    first = min(view["page_of"].values())
    assert "second person" in pages[len(view["first"].sheets) - 1]
    assert "Every figure of the build" in pages[len(view["first"].sheets)]
    assert "At the car" in pages[first - 1]
    assert "At the car" not in pages[first - 2]


def test_every_open_card_leads_to_its_question_and_back_and_no_link_is_dead() -> None:
    demo = Path(__file__).resolve().parents[2] / "reports" / "examples" / "demo.toml"
    made = make.make(str(demo))
    page = render.render(made)["packet.html"].decode()
    ids, links = re.findall(r' id="([^"]+)"', page), set(re.findall(r'href="#([^"]+)"', page))
    assert len(ids) == len(set(ids))
    assert links <= set(ids)
    open_cards = [n for n, i in enumerate(made.items, 1) if i.card is not None and i.sheet.decision.kind != "use"]
    assert len(open_cards) >= 8
    for number in open_cards:
        assert {f"ask-{number}", f"card-{number}", f"desk-{number}"} <= links, number
