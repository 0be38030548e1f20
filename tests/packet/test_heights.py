"""How high a card is taken to be grows by its parts: words that wrap, boxes, tables, what is asked and what stops."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from gaugeblock.packet import cards
from gaugeblock.packet.measure import height, width

ROOM = 109.0
LONG = "Use another bolt, or a wrench that reaches so far, and ask the maker of the part before it is set. " * 2


def figure(**more: Any) -> SimpleNamespace:
    return SimpleNamespace(**{"value": "31", "unit": "lbf*ft", "other": "42 N*m", "when": "", "then": "", **more})


def made(kind: str, **more: Any) -> SimpleNamespace:
    parts = {
        "kind": kind,
        "name": "wheel nuts",
        "what": "1/2-20",
        "cautions": [],
        "notes": [],
        "again": "",
        "trust": SimpleNamespace(word="PUBLISHED", source="a manual"),
        "table": [],
        "boxes": [],
        "figures": [figure()],
        "verb": "TIGHTEN",
        "condition": "",
        "order": "",
        "steps": [],
        "do": "",
    }
    return SimpleNamespace(**{**parts, **more})


def test_what_stops_stands_beside_its_word_where_it_is_short_and_below_where_it_is_long() -> None:
    assert cards._stopped(made("stop", do="Stop.", figures=[]), ROOM) == pytest.approx(12.8)
    assert cards._stopped(made("stop", do="Stop."), ROOM) == pytest.approx(12.8 + 6.2)
    below = height(LONG, 12, 1.18, ROOM, bold=True)
    assert cards._stopped(made("stop", do=LONG), ROOM) == pytest.approx(14.5 + 6.2 + below)
    fits = width("Stop.", 12, bold=True) + 40
    assert cards._stopped(made("stop", do="Stop.", figures=[]), fits) == pytest.approx(12.8)
    assert cards._stopped(made("stop", do="Stop.", figures=[]), fits - 0.01) > 14.5


def test_a_question_stands_beside_its_word_or_below() -> None:
    short = "Ask the maker."
    assert cards._question(made("ask", do=short), ROOM) == pytest.approx(8.4)
    said = "Ask the maker of the part which of the two it is."
    beside = ROOM - 40
    assert cards._question(made("ask", do=said), ROOM) == pytest.approx(max(8.4, height(said, 11, 1.18, beside)))
    narrow = made("ask", do=said, condition="anti-seize on bare steel")
    assert cards._question(narrow, ROOM) == pytest.approx(9 + height(said, 11, 1.18, ROOM))
    assert cards._question(made("ask", do=LONG), ROOM) == pytest.approx(9 + height(LONG, 11, 1.18, ROOM))


def test_of_what_is_asked_the_numbers_stand_side_by_side() -> None:
    told = "a locknut that is used again, and was measured: turn it by hand and read the drag"
    for count, base, across in ((1, 11.5, ROOM - 3), (2, 11.5, (ROOM - 3) / 2), (3, 14.0, ROOM / 3 - 3)):
        figures = [figure(when=told, then="set so")] + [figure(when="new", then="so")] * (count - 1)
        got = cards._asked(made("ask", figures=figures, do="Ask."), ROOM)
        assert got == pytest.approx(1 + 8.4 + base + height(f"{told}: set so", 10.5, 1.18, across))
    assert cards._asked(made("ask", figures=[], do="Ask."), ROOM) == pytest.approx(1 + 8.4 + 11.5)
    assert cards._none(made("none", do="Ask."), ROOM) == pytest.approx(1 + 8.4 + 17.4)


def test_a_number_with_its_steps_takes_a_row_for_each_line_of_them() -> None:
    plain = cards._used(made("use"), ROOM)
    assert plain == pytest.approx(15.2)
    assert cards._used(made("use", condition="dry, and clean of paint under the head"), ROOM) == pytest.approx(
        15.2 + 7.5
    )
    step = "to 20 lbf*ft"
    one = width(step, 13.6) + 12
    count = int(ROOM // one)
    assert cards._used(made("use", steps=[step] * count), ROOM) == pytest.approx(15.2 + 6.4)
    assert cards._used(made("use", steps=[step] * (count + 1)), ROOM) == pytest.approx(15.2 + 2 * 6.4)
    assert cards._used(made("use", order="crosswise"), ROOM) == pytest.approx(15.2 + 6.4)
    assert cards._used(made("use", do="Then back off."), ROOM) == pytest.approx(15.2 + height("a", 12.5, 1.22, ROOM))


def test_two_halves_share_a_row_of_boxes() -> None:
    half, whole = SimpleNamespace(half=True), SimpleNamespace(half=False)
    for boxes, rows in (
        ([], 0),
        ([whole], 1),
        ([half], 1),
        ([half, half], 1),
        ([half, half, half], 2),
        ([half, whole, half], 3),
        ([whole, half, half, whole], 3),
    ):
        assert cards._rows(boxes) == rows


def test_a_card_is_at_least_so_high_and_higher_by_its_boxes_its_words_and_its_table() -> None:
    assert cards._height(made("use")) == 54.0
    whole = SimpleNamespace(half=False)
    assert cards._height(made("use", boxes=[whole] * 6)) == pytest.approx(1.4 + 6 * 9.2)
    notes = [LONG.strip()] * 4
    base = 5.2 + height("wheel nuts", 15, 1.15, ROOM, bold=True) + height("1/2-20", 13.6, 1.2, ROOM) + 15.2 + 0.6
    told = "PUBLISHED: a manual. " + "".join(f"{note}. " for note in notes)
    assert cards._height(made("use", notes=notes)) == pytest.approx(base + height(told, 9, 1.2, ROOM))
    again = f"{told} Tighten again after 50 miles."
    assert cards._height(made("use", notes=notes, again="after 50 miles")) == pytest.approx(
        base + height(again, 9, 1.2, ROOM)
    )
    care = [SimpleNamespace(text=LONG.strip())]
    warned = height(f"WARNING {LONG.strip()}", 9.5, 1.18, ROOM - 4) + 1.6
    assert cards._height(made("use", notes=notes, cautions=care)) == pytest.approx(
        base + warned + height(told, 9, 1.2, ROOM)
    )
    table = [["fit", ""], *([str(n), "0.250 in"] for n in range(9))]
    row = height("1", 12, 1.28, 40, bold=True) + 1.0
    wide = 159.0
    name = 5.2 + height("wheel nuts", 15, 1.15, wide, bold=True) + height("1/2-20", 13.6, 1.2, wide)
    trust = 0.6 + height("PUBLISHED: a manual. ", 9, 1.2, wide)
    assert cards._height(made("use", table=table)) == pytest.approx(name + 15.2 + trust + 5.4 + 9 * row + 13)


def test_of_a_table_too_wide_the_widest_column_gives_way() -> None:
    cell = "a long text that is wider than all the room there is for it beside the numbers of the same row"
    table = [["what", "so"], [cell, "0.250 in"], ["x", "1 in"]]
    narrow = width("0.250 in", 12, bold=True) + 1.6
    room = 60.0
    first = height(cell, 12, 1.28, room - narrow, bold=True)
    one = height("x", 12, 1.28, room, bold=True)
    assert cards._table_height(table, room) == pytest.approx(first + 1.0 + one + 1.0)
    assert first > one


def test_cards_fill_a_sheet_and_go_on_over_the_next() -> None:
    four = [made("use") for _ in range(9)]
    assert [len(page) for page in cards.pages(four)] == [4, 4, 1]
    assert cards.pages([]) == []


def test_a_card_without_a_condition_keeps_no_room_for_one() -> None:
    """The line of its number may be as wide as the card: a box that is not there takes none of it."""
    card = SimpleNamespace(figures=[figure()], verb="SET", condition="", order="", steps=[], do="")
    line = width("31", 42, bold=True) + width("lbf*ft", 21, bold=True) + width("42 N*m", 12) + 11
    line += min(width("SET", 13, bold=True), 20.0)
    assert cards._used(card, line + 0.5) < cards._used(card, line - 0.5)
    card.condition = "DRY"
    assert cards._used(card, line + 0.5) == cards._used(card, line - 0.5)
