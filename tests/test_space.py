"""Tubes, lines, hot pipes and obstacles against each other: which pairs are told, how far apart, and what is asked."""

from __future__ import annotations

import pytest

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.bodies import HOT, LINE, Placed
from gaugeblock.errors import InputError
from gaugeblock.job.part import Refused
from gaugeblock.lines.job import Line
from gaugeblock.lines.placed import placed_line
from gaugeblock.space import apart
from gaugeblock.tables.load import refdata
from gaugeblock.tubes.placed import placed_tube
from gaugeblock.tubes.plan.plan import work_out

DATUM = "front crossmember, middle"
TUBE = {
    "name": "brace",
    "od": "2 in",
    "wall": ".120 in",
    "material": "1020",
    "radius": "6 in",
    "datum": DATUM,
    "gap": "1/2 in",
    "points": [["0 in", "-20 in", "0 in"], ["0 in", "20 in", "0 in"]],
    "obstacles": [{"name": "tray", "box": {"middle": ["0 in", "0 in", "10 in"], "size": ["4 in", "4 in", "4 in"]}}],
}


def line(name: str = "brake line", up: str = "3 in", **keys: object) -> list[Placed]:
    """A line square over the brace."""
    points = [["-10 in", "0 in", up], ["10 in", "0 in", up]]
    return placed({"name": name, "od": "1/4 in", "datum": DATUM, "points": points, **keys})


def placed(keys: dict[str, object]) -> list[Placed]:
    """What stands of a line as a job file gives it."""
    refused: list[Refused] = []
    part = Line.read(keys, (), refused)
    assert not refused
    return placed_line(part, refdata())


def tube(**keys: object) -> list[Placed]:
    given = {**TUBE, **keys}
    return placed_tube(work_out(given, data=refdata()))


def gap_of(sheet: object, name: str) -> float:
    figure = next(f for f in sheet.figures if f.key["bend"] == name)  # type: ignore[attr-defined]
    return units.convert(figure.value, figure.unit, "in")  # type: ignore[no-any-return]


def test_a_line_over_a_tube_is_as_far_as_a_tape_says():
    """3 in between centre lines square to each other, less 1 in and 1/8 in; 8 in to the tray less 1/8 in."""
    sheet = apart([*tube(), *line()], refdata())
    assert sheet is not None
    assert gap_of(sheet, "brace and brake line") == pytest.approx(1.875, abs=1e-3)
    assert gap_of(sheet, "tray and brake line") == pytest.approx(4.875, abs=1e-3)
    first = next(c for c in sheet.checks if "brace" in c.name)
    assert (first.result, "1/2 in" in first.reason) == (OK, True)
    assert not any("tray and brace" in f.key["bend"] or "brace and tray" in f.key["bend"] for f in sheet.figures)


@pytest.mark.parametrize(
    ("up", "result"), [("1.6 in", NOT_OK), ("1.62 in", NOT_OK), ("1.626 in", OK), ("1 in", NOT_OK)]
)
def test_the_larger_of_two_gaps_asked_governs(up, result):
    """The tube asks 1/2 in, the line 1/4 in: 1.625 in between centre lines is the least."""
    sheet = apart([*tube(obstacles=[]), *line(up=up, gap_asked="1/4 in")], refdata())
    assert sheet is not None
    assert [c.result for c in sheet.checks] == [result]


def test_movement_of_line_and_tube_counts():
    still = apart([*tube(obstacles=[]), *line()], refdata())
    moved = apart([*tube(obstacles=[], moves=[{"up": "1/4 in"}]), *line(moves=[{"down": "1/2 in"}])], refdata())
    assert still is not None
    assert moved is not None
    name = "brace and brake line"
    assert gap_of(still, name) - gap_of(moved, name) == pytest.approx(0.75, abs=2e-3)


def test_other_datums_cannot_tell_in_one_check():
    sheet = apart(
        [*tube(obstacles=[]), *line(datum="rear axle, middle"), *line("vent", "5 in", datum=DATUM)], refdata()
    )
    assert sheet is not None
    lost = [c for c in sheet.checks if c.name == "one datum"]
    assert [c.result for c in lost] == [CANNOT_TELL]
    assert all(n in lost[0].reason for n in ("brace", "brake line", "vent"))
    assert [f.key["bend"] for f in sheet.figures] == ["brace and vent"]


def test_gaps_that_nobody_asked_for_are_one_open_question():
    sheet = apart([*line(), *line("feed", "4 in"), *line("vent", "8 in")], refdata())
    assert sheet is not None
    assert [c.result for c in sheet.checks] == [CANNOT_TELL]
    words = sheet.checks[0].reason
    assert words.index("brake line and feed") < words.index("feed and vent") < words.index("brake line and vent")


def test_what_touches_is_not_ok_whether_asked_or_not():
    sheet = apart([*line(), *line("feed", "3.2 in")], refdata())
    assert sheet is not None
    assert [(c.result, "touch" in c.reason) for c in sheet.checks] == [(NOT_OK, True)]


def test_a_line_and_its_own_hot_pipe_are_on_its_own_sheet():
    hot = {"name": "header", "od": "2 in", "points": [["-10 in", "5 in", "3 in"], ["10 in", "5 in", "3 in"]]}
    assert apart(line(hot=hot), refdata()) is None
    two = [*line(hot=hot), *line("feed", "6 in", hot=hot)]
    assert [p.kind for p in two] == [LINE, HOT, LINE, HOT]
    sheet = apart(two, refdata())
    assert sheet is not None
    # one header, though two lines name it; the first line's own is not asked about
    assert sorted(f.key["bend"] for f in sheet.figures) == ["brake line and feed", "header and feed"]


def test_nothing_with_a_path_makes_no_sheet():
    assert apart([], refdata()) is None
    assert apart(tube(), refdata()) is None
    assert placed({"name": "line", "od": "1/4 in"}) == []
    assert apart([*placed_tube(work_out({"name": "x"}, data=refdata())), *line()], refdata()) is None


def test_points_that_do_not_fit_the_radius_name_the_line():
    with pytest.raises(InputError, match="brake line: "):
        line(points=[["0 in", "0 in", "0 in"], ["1 in", "0 in", "0 in"], ["1 in", "1 in", "0 in"]], radius="6 in")


def test_the_order_of_the_bodies_changes_nothing():
    tray = {"name": "tray", "box": {"middle": ["0 in", "0 in", "10 in"], "size": ["4 in", "4 in", "4 in"]}}
    bodies = [*tube(obstacles=[tray]), *line(), *line("feed", "6 in"), *line("vent", "1.55 in")]
    first = apart(bodies, refdata())
    assert first is not None
    assert first.decision.kind == "stop"  # the vent is nearer to the brace than its half inch
    for order in (bodies[::-1], bodies[2:] + bodies[:2]):
        again = apart(order, refdata())
        assert again is not None
        assert again.as_dict() == first.as_dict()


def test_what_is_there_decides_and_another_datum_is_asked_about():
    clear = apart([*tube(), *line()], refdata())
    assert clear is not None
    assert (clear.decision.kind, clear.decision.figures[0].quantity) == ("use", "surface_gap")
    other = apart([*tube(), *line(datum="rear axle")], refdata())
    assert other is not None
    assert other.decision.kind == "none"
    assert [q.key for q in other.questions] == ["datum"]
