"""The first page and the list as they are built: what is told of one and of many, and what has no place there."""

from __future__ import annotations

import re
from types import SimpleNamespace

import pytest

from gaugeblock.answer.decision import NEW_BOLTS_FIRST
from gaugeblock.domains import parse_job
from gaugeblock.packet import build, first, order, render, trust_page, worklist
from gaugeblock.packet.chosen import Scope
from gaugeblock.tables.load import refdata

OPEN = '[[fasteners]]\nname = "{}"\nthread = "3/8-16"\n'
READY = '[[fasteners]]\nname = "{}"\npart = "wheel nut"\nsize = "1/2-20"\n'


def page_of(text: str) -> str:
    made = build.build(parse_job(text), refdata(), "test")
    return render.render(made)["packet.html"].decode()


@pytest.mark.parametrize(("count", "said"), [(1, "Ask first: 1 item,"), (2, "Ask first: 2 items,")])
def test_one_item_is_one(count: int, said: str) -> None:
    page = page_of("".join(OPEN.format(f"bolt {n}") for n in range(count)))
    assert said in page
    assert "NOT READY TO BUILD" in page
    assert "Nothing is open" not in page


@pytest.mark.parametrize(
    ("status", "stops", "asks", "said"),
    [
        ("draft", 3, 3, ""),
        ("for build", 0, 0, ""),
        ("for build", 1, 0, "but one item stops."),
        ("for build", 2, 0, "but 2 items stop."),
        ("for build", 0, 1, "but one item is asked first."),
        ("for build", 0, 2, "but 2 items are asked first."),
        ("for build, second", 1, 1, "but one item stops and one is asked first."),
        ("for build", 2, 3, "but 2 items stop and 3 are asked first."),
    ],
)
def test_a_status_that_the_items_contradict_is_told(status: str, stops: int, asks: int, said: str) -> None:
    got = first._contradiction(status, stops, asks)
    assert got == (f"The job file says \u201cfor build\u201d, {said}" if said else "")


@pytest.mark.parametrize(
    ("numbers", "said"),
    [([], ""), ([4], "4"), ([4, 5], "4, 5"), ([4, 5, 6], "4 to 6"), ([1, 3, 4, 6, 7, 8, 10], "1, 3, 4, 6 to 8, 10")],
)
def test_numbers_that_follow_each_other_are_a_run_from_three_on(numbers: list[int], said: str) -> None:
    assert first._runs(numbers) == said


@pytest.mark.parametrize(("count", "names"), [(3, 3), (4, 0)])
def test_of_four_items_and_more_the_count_is_told_not_the_names(count: int, names: int) -> None:
    made = build.build(parse_job("".join(OPEN.format(f"bolt {n}") for n in range(count))), refdata(), "test")
    rows = [row for group in render.view_of(made, Scope())["first"].groups for row in group.rows]
    assert rows
    for row in rows:
        assert len(row.items) == count
        assert row.many == ("" if names else f"{count} items: 1 to {count}")


def row(text: str, *names: str) -> SimpleNamespace:
    return SimpleNamespace(text=text, items=[SimpleNamespace(name=n) for n in names], many="")


def test_the_groups_fill_sheet_by_sheet_and_a_group_that_goes_on_says_its_head_again() -> None:
    rows = first.Rows(40.0, 60.0, 9.5, 1.25, 50.0, 8.0)  # each row is 50 mm high, each head 8
    groups = [
        SimpleNamespace(head="one", rows=[row(str(n)) for n in range(5)]),
        SimpleNamespace(head="two", rows=[row("x")]),
    ]

    def heads(top: float) -> list[list[tuple[str, int]]]:
        return [[(part.head, len(part.rows)) for part in sheet] for sheet in first._sheets(groups, rows, top)]

    # 243 mm: under 35 there is room for a head and four rows; the rest follows under its head
    assert heads(35.0) == [[("one", 4)], [("one", 1), ("two", 1)]]
    assert heads(35.1) == [[("one", 3)], [("one", 2), ("two", 1)]]
    # what is signed needs 31 mm below the last row
    assert first._sheets([], rows, 243.0 - 31.0) == [[]]
    assert first._sheets([], rows, 243.0 - 30.9) == [[], []]
    assert heads(0.0)[0] == [("one", 4)]


def test_a_list_goes_on_over_the_next_sheet_where_it_is_full() -> None:
    line = SimpleNamespace(says="", figure="1", name="a", condition="", trust="", again="")
    tall = worklist._height(line)
    assert tall == 7.6
    most = int(229.0 / tall)
    assert [len(s) for s in worklist.sheets([line] * most)] == [most]
    assert [len(s) for s in worklist.sheets([line] * (2 * most + 1))] == [most, most, 1]
    assert worklist.sheets([]) == [[]]


@pytest.mark.parametrize(
    ("steps", "said"), [((), ""), (("20",), ""), (("20", "40"), " in 2 steps"), ((NEW_BOLTS_FIRST, "20"), "")]
)
def test_a_number_that_is_reached_in_one_step_is_not_said_to_be(steps: tuple[str, ...], said: str) -> None:
    paper = SimpleNamespace(numbers=lambda _: "40 lbf*ft", weakest=lambda _: "PUBLISHED")
    paper.of = lambda _: paper
    card = SimpleNamespace(steps=steps, condition="dry", again="")
    for kind, figure in (("use", f"40 lbf*ft{said}"), ("ask", "40 lbf*ft"), ("stop", "")):
        sheet = SimpleNamespace(decision=SimpleNamespace(kind=kind, verb="TIGHTEN", figures=()))
        item = SimpleNamespace(name="a", card=card, sheet=sheet)
        (line,) = worklist.worklist([item, SimpleNamespace(card=None)], [1, 2], paper)  # type: ignore[list-item, arg-type]
        assert line.figure == figure


def test_a_link_names_three_items_and_counts_the_rest() -> None:
    text = "".join(READY.format(f"bolt {n}") for n in range(5))
    made = build.build(parse_job(text), refdata(), "test")
    view = render.view_of(made, Scope())
    assert view["trust"].links
    for link in view["trust"].links:
        assert link.count == 5
        assert link.items == "bolt 0, bolt 1, bolt 2 and 2 more"
    made = build.build(parse_job("".join(READY.format(f"bolt {n}") for n in range(3))), refdata(), "test")
    assert all(link.items == "bolt 0, bolt 1, bolt 2" for link in render.view_of(made, Scope())["trust"].links)


def test_what_is_read_quoted_and_remembered_is_counted_apart_and_the_rest_by_its_word() -> None:
    marks = {"published, primary": 3, "published, quoted": 2, "published, memory": 1, "maker": 4, "derived": 5}
    marks |= {"derived, memory": 7, "common practice": 6, "caution injury": 9, "from memory": 2}
    assert trust_page._by_word(marks) == {
        "PUBLISHED, read": 3,
        "PUBLISHED, quoted": 2,
        "PUBLISHED, from memory": 1,
        "MAKER": 4,
        "CALCULATED": 12,
        "HABIT": 6,
    }


@pytest.mark.parametrize(
    ("word", "text", "at"),
    [
        ("plug", "plug", 0),
        ("plug", "spark plug", 6),
        ("line", "pipeline", -1),
        ("line", "pipeline of the line", 16),
        ("line", "pipe_line", -1),
        ("line", "(line", 1),
        ("line", "", -1),
    ],
)
def test_a_word_begins_where_no_letter_stands_before_it(word: str, text: str, at: int) -> None:
    assert order._begins(word, text) == at


def test_every_word_of_a_page_stands_in_its_own_box() -> None:
    page = page_of(OPEN.format("a") + READY.format("b"))
    assert page.count("<main") <= 1
    for tag in ("section", "article", "table", "tr", "td", "th", "div", "p", "span", "b"):
        assert len(re.findall(rf"<{tag}[ >]", page)) == page.count(f"</{tag}>"), tag
