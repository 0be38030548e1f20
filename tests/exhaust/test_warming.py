"""The heat beside a gap: the estimate that a line past a header has, from the exhaust's side."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import domains, exhaust_gap, route
from gaugeblock.answer.check import INFORM, NOT_OK, OK
from gaugeblock.answer.decision import ASK, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.exhaust.gap import NEIGHBOURS, ROUND
from gaugeblock.figure import Figure
from gaugeblock.packet.build import build
from gaugeblock.tables.load import refdata

PIPE = {"pipe": "2-1/4 in", "hot": "350 to 450 degC", "hot_finish": "0.7 to 0.9"}
OWN = {"od": "3/16 in", "finish": "0.8 to 0.95", "air": "30 to 50 degC", "soak_air": "60 to 90 degC"}


def temperatures(sheet: Sheet) -> dict[str, Figure]:
    return {f.key["case"]: f for f in sheet.figures if f.quantity == "line_temperature"}


def warm(sheet: Sheet) -> list[str]:
    return [c.result for c in sheet.checks if c.name.startswith("temperature of the")]


def test_a_gap_and_a_line_have_one_temperature() -> None:
    """One quantity of one thing has one value, whichever domain is asked."""
    line = {"gap": "2 in", **OWN}
    route_sheet = route(
        "brake",
        fluid="DOT 4",
        fluid_state="wet",
        beside="exhaust header",
        hot_od="2-1/4 in",
        hot_temperature="350 to 450 degC",
        hot_finish="0.7 to 0.9",
        **line,
    )
    gap_sheet = exhaust_gap("brake line", "2 in", what="DOT 4", state="wet", **PIPE, **OWN)
    of_line, of_gap = temperatures(route_sheet), temperatures(gap_sheet)
    assert set(of_gap) == {"idling", "hot soak"}
    for case, figure in of_gap.items():
        same = of_line[case]
        assert (figure.low, figure.typical, figure.high) == (same.low, same.typical, same.high)
    needed = [f for f in route_sheet.figures if f.quantity == "gap_needed"]
    assert gap_sheet.figure("gap_needed").typical == needed[0].typical


def test_it_says_how_far_it_is_to_be_trusted() -> None:
    sheet = exhaust_gap("brake line", "3 in", what="DOT 4", state="wet", **PIPE, **OWN)
    figure = temperatures(sheet)["hot soak"]
    assert figure.trust.startswith("CALCULATED")
    assert figure.trust in sheet.decision.do
    assert any("estimate" in c.text for c in sheet.cautions)


def test_more_gap_may_be_needed_than_any_rule_asks() -> None:
    """No figure to use misses a minimum of its own sheet."""
    sheet = exhaust_gap("brake line", "6 in", what="DOT 4", state="wet", **{**PIPE, "hot": "500 to 550 degC"}, **OWN)
    assert sheet.decision.kind == USE
    rules = [f for f in sheet.figures if f.quantity == "clearance_minimum"]
    (used,) = sheet.decision.figures
    assert used.quantity == "gap_needed"
    assert len(rules) == 2
    assert all(base(used) >= base(f) for f in rules)


@pytest.mark.parametrize("lacks", ["hot_finish", "finish", "soak_air"])
def test_what_nobody_gave_never_passes_and_never_stops(lacks: str) -> None:
    given = {k: v for k, v in {**PIPE, **OWN, "hot": "700 to 800 degC"}.items() if k != lacks}
    sheet = exhaust_gap("brake line", "2-1/2 in", what="DOT 4", state="wet", **given)
    soak = [c for c in sheet.checks if c.name.startswith("temperature") and c.case == "hot soak"]
    assert [c.result for c in soak] == ["cannot tell"]
    assert soak[0].asks
    assert "nobody gave this" in soak[0].reason
    assert sheet.decision.kind == ASK


def test_a_state_that_nobody_gave_is_asked_with_what_comes_of_each() -> None:
    sheet = exhaust_gap("brake line", "3 in", what="DOT 4", **PIPE, **OWN)
    cases = [c for c in sheet.checks if c.case == "hot soak"]
    assert {c.name.rsplit("(")[-1] for c in cases} == {"dry)", "wet)"}
    assert all(c.bears == INFORM for c in cases)
    assert [q.key for q in sheet.questions if "state" in q.text] == ["state"]


@pytest.mark.parametrize(
    ("measured", "kind", "results"),
    [("90 degC", USE, [OK]), ("150 degC", ASK, ["cannot tell"]), ("170 degC", STOP, [NOT_OK])],
)
def test_what_was_measured_governs(measured: str, kind: str, results: list[str]) -> None:
    sheet = exhaust_gap("brake line", "3 in", what="DOT 4", state="wet", measured=measured, **PIPE, **OWN)
    assert (sheet.decision.kind, warm(sheet)) == (kind, results)
    assert not temperatures(sheet)


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"hot": "90 degF"}, "hot"),
        ({"hot": "2500 degF"}, "hot"),
        ({"hot": "300 to 4000 degF"}, "hot"),
        ({"od": "23/16 in"}, "od"),
        ({"pipe": "2-1/4 mm"}, "pipe"),
        ({"hot": "120 degF", "soak_air": "60 to 90 degC"}, "hot"),
        ({"limit": "2000 degC"}, "limit"),
    ],
)
def test_what_cannot_be_meant_is_asked(more: dict[str, str], key: str) -> None:
    sheet = exhaust_gap("brake line", "3 in", **{**PIPE, **OWN, **more})
    assert sheet.decision.kind == ASK
    assert key in [q.key for q in sheet.questions]
    assert not temperatures(sheet)


def test_what_says_nothing_is_refused() -> None:
    for more in ({"state": "wet"}, {"hot_finish": "1.4"}, {"finish": "0"}):
        with pytest.raises(InputError):
            exhaust_gap("brake line", "3 in", **more)


def test_a_mount_that_was_measured_is_held_against_its_rubber() -> None:
    hot, cool = (exhaust_gap("engine mount", "4 in", measured=m) for m in ("95 degC", "50 degC"))
    assert [c.result for c in hot.checks if c.case == "measured"] == [NOT_OK]
    assert [c.result for c in cool.checks if c.case == "measured"] == [OK]
    assert hot.decision.kind == ASK


def test_a_place_without_a_rule_is_told() -> None:
    names = {c.name for c in exhaust_gap("hose", "4 in", jurisdiction="Atlantis").checks}
    assert "rule of the place" in names
    assert "rule of the place" not in {c.name for c in exhaust_gap("brake line", jurisdiction="us maryland").checks}


@pytest.mark.parametrize("name", NEIGHBOURS)
def test_what_is_not_round_has_no_estimate_and_says_so(name: str) -> None:
    sheet = exhaust_gap(name, "4 in", **PIPE, **OWN)
    assert bool(temperatures(sheet)) == (name in ROUND)
    assert warm(sheet) or temperatures(sheet)


def test_a_wire_is_judged_by_its_insulation_and_what_is_not_known_is_refused() -> None:
    sheet = exhaust_gap("wire", "3 in", what="TXL", **PIPE, **OWN)
    assert sheet.figure("temperature_maximum").text == "125"
    with pytest.raises(LookupMiss):
        exhaust_gap("brake line", "3 in", what="treacle", **PIPE, **OWN)


def test_a_lead_of_a_rubber_that_nobody_named_is_told_by_the_usual_one() -> None:
    sheet = exhaust_gap("spark plug lead", "3 in", **PIPE, **{**OWN, "od": "8 mm"})
    cases = [c for c in sheet.checks if c.case == "hot soak"]
    assert [c.name for c in cases] == ["temperature of the spark plug lead, hot soak (silicone rubber)"]
    assert all(c.bears == INFORM for c in cases)


@settings(max_examples=20)
@given(st.integers(10, 300), st.integers(1, 300))
def test_a_wider_gap_is_never_hotter(gap: int, more: int) -> None:
    near, far = (temperatures(exhaust_gap("hose", f"{g} mm", **PIPE, **OWN)) for g in (gap, gap + more))
    for case in near:
        assert far[case].high <= near[case].high + 1e-9
        assert far[case].typical <= near[case].typical + 1e-9


JOB = """
[[exhausts]]
name = "tail"
od = "2-1/4 in"
wall = ".065 in"
material = "409"
length = "100 in"
hot = "850 degF"
hot_finish = "0.7 to 0.9"
air = "40 to 60 degC"
soak_air = "60 to 90 degC"
fixed = "0 in"
hangers = [{ at = "10 in", length = "3 in" }, { at = "60 in", length = "3 in" }]
gaps = [
  { to = "brake line", at = "60 in", gap = "3 in", od = "3/16 in", finish = "0.8 to 0.95", what = "DOT 4" },
  { to = "axle", at = "70 in", gap = "2 in" },
]
""".replace('what = "DOT 4"', 'what = "DOT 4", state = "wet"')


def test_a_run_in_a_job_has_the_heat_of_its_gaps() -> None:
    item = build(domains.parse_job(JOB), refdata(), "test").items[0]
    found = temperatures(item.sheet)
    assert set(found) == {"idling", "hot soak"}
    assert item.card is not None
    assert any("heat of the brake line" in note for note in item.card.notes)
    left = item.sheet.figure("gap_hot")
    alone = exhaust_gap(
        "brake line",
        f"{left.typical!r} {left.unit}",
        pipe="2-1/4 in",
        hot="850 degF",
        hot_finish="0.7 to 0.9",
        what="DOT 4",
        state="wet",
        **{**OWN, "air": "40 to 60 degC"},
    )
    assert temperatures(alone)["hot soak"].typical == pytest.approx(found["hot soak"].typical, rel=1e-9)


def test_a_fluid_that_nobody_knows_is_a_question_of_its_item() -> None:
    text = JOB.replace('what = "DOT 4"', 'what = "treacle"')
    item = build(domains.parse_job(text), refdata(), "test").items[0]
    assert item.sheet.decision.kind != USE
    assert item.sheet.questions
