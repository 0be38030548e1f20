"""The demo's packet is short enough to pin up, its references are true, and its pages hold every figure of every
decision.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from gaugeblock.packet import make, render
from gaugeblock.packet.chosen import Scope
from gaugeblock.packet.paper import Paper
from packet.test_browser import printed_pages

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "reports" / "examples" / "demo.toml"
PACKET = make.make(str(DEMO))


def pages_of(folder: Path, *, cards_only: bool) -> list[str]:
    """The text of each page, printed on Letter."""
    page = render.render(PACKET, Scope(cards_only=cards_only))["packet.html"].decode()
    return printed_pages(page, folder)


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    return pages_of(tmp_path_factory.mktemp("limits"), cards_only=False)


def plain(text: str) -> str:
    return " ".join(text.replace("\u00a0", " ").split())


def test_the_demo_has_at_most_24_pages_9000_words_and_25_warnings(pages: list[str]) -> None:
    assert len(pages) <= 24
    assert len(" ".join(pages).split()) <= 9000
    assert len(re.findall(r"\bWARNING\b", " ".join(pages))) <= 25


def test_the_cards_alone_have_at_most_10_pages(tmp_path: Path) -> None:
    assert len(pages_of(tmp_path, cards_only=True)) <= 10


def test_the_first_page_is_one_and_the_list_is_the_second(pages: list[str]) -> None:
    assert "NOT READY TO BUILD" in pages[0]
    assert "second person" in pages[0]
    assert "Every figure of the build" in pages[1]
    assert "At the car" in pages[2]


def test_a_card_stands_on_the_sheet_that_the_first_page_names(pages: list[str]) -> None:
    page_of = render.view_of(PACKET, Scope())["page_of"]
    assert len(page_of) == sum(i.card is not None for i in PACKET.items)
    for number, page in page_of.items():
        item = PACKET.items[number - 1]
        assert item.name.split(",")[0] in plain(pages[page - 1]), (number, page)
        assert re.search(rf"\b{number}\b", pages[page - 1])


def test_the_pages_hold_every_figure_of_every_decision(pages: list[str]) -> None:
    units = PACKET.job.shop.units
    paper = Paper(PACKET.data, None if units is None else units == "metric")
    text = plain(" ".join(pages))
    for item in PACKET.items:
        if item.card is not None:
            for figure in item.sheet.decision.figures:
                shown = plain(paper.number(figure))
                assert all(part in text for part in shown.split(" ")), (item.name, shown)
