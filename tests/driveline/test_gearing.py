"""Gearing: engine speed at a road speed, by ratio, tyre and gear; tooth counts; what is doubtful is asked."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.forms import keeps_form
from gaugeblock import domains, gearing
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import page
from gaugeblock.driveline.job import GearingItem
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.tables.load import refdata

KEYS = set(GearingItem.keys)


def speeds(sheet: Sheet) -> list[float]:
    return [f.typical for f in sheet.figures if f.quantity == "engine_speed"]


def test_the_trades_rule_of_336_is_met_to_its_rounding() -> None:
    """60 mph, 3.89 and a 29 in tyre: 336 x 60 x 3.89 / 29 prints 2,704 rpm; the exact constant is 336.13."""
    exact = gearing("3.89", tyre="29 in").decision.figures[0].typical
    assert exact == pytest.approx(2704.2 * 336.135 / 336, abs=0.2)


def test_an_article_prints_the_turns_of_a_tyre_in_a_mile() -> None:
    assert gearing("3.89", tyre="24.88 in").figure("tyre_revolutions").typical == pytest.approx(810.6, abs=0.05)


@pytest.mark.parametrize("code", ["P215/65R15", "215/65R15", "LT215/65R15", "215/65-15", "p215/65r15"])
def test_a_tyre_code_gives_two_heights_and_the_rim(code: str) -> None:
    """2 x 215 mm x 65 % + 15 in."""
    assert gearing("3.55", tyre=code).figure("tyre_diameter").typical == pytest.approx(2 * 215 * 0.65 / 25.4 + 15)


def test_the_makers_turns_a_mile_govern() -> None:
    by_maker = gearing("3.55", tyre="P215/65R15", revolutions="800 rev/mile")
    assert by_maker.decision.figures[0].typical == pytest.approx(800 * 3.55)
    assert by_maker.decision.kind == "use"


@pytest.mark.parametrize(
    ("teeth", "said"),
    [("41/10", "hunting: every"), ("40/10", "not hunting: teeth have 10"), ("42/12", "partly hunting: teeth have 6")],
)
def test_tooth_counts_make_a_ratio_and_say_whether_it_hunts(teeth: str, said: str) -> None:
    sheet = gearing(teeth, tyre="28 in")
    ring, pinion = (int(t) for t in teeth.split("/"))
    assert sheet.figure("axle_ratio").typical == ring / pinion
    assert any(said in c.text for c in sheet.cautions)


def test_several_ratios_are_candidates_and_ask_which_is_fitted() -> None:
    sheet = gearing("3.55, 41/10", tyre="28 in", gears="3.06, 1")
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("ask", ["ratios"])
    assert len(speeds(sheet)) == 4
    assert len({f.id for f in sheet.figures}) == len(sheet.figures)
    assert sheet.grid[0] == ("gear", "axle 3.55", "axle 4.1")
    assert [row[0] for row in sheet.grid[1:]] == ["3.06", "1"]
    assert sheet.as_dict()["grid"] == [list(row) for row in sheet.grid]


def test_ratios_in_one_gear_stand_fastest_first_by_that_gear() -> None:
    sheet = gearing("3.08, 4.10, 3.55", tyre="28 in")
    assert [c.figure.typical for c in sheet.decision.candidates] == sorted(speeds(sheet), reverse=True)
    assert ["4.1" in c.when for c in sheet.decision.candidates] == [True, False, False]


def test_tyres_stand_side_by_side_and_a_gear_that_overspeeds_the_engine_says_so() -> None:
    sheet = gearing("3.55", tyre="26 in, 28 in", gears="3.06, 1", engine_speed="6000 rpm")
    assert sheet.grid[0] == ("gear", "3.55, 26 in", "3.55, 28 in")
    assert [cell.endswith("over") for row in sheet.grid[1:] for cell in row[1:]] == [True, True, False, False]
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("ask", ["tyre"])


def test_a_school_problem_prints_what_a_larger_tyre_does_to_the_speedometer() -> None:
    """QAM: P205/75R14 (26.1 in) for P185/75R14 (24.92 in): the speedometer shows less, by 24.92 / 26.1."""
    sheet = gearing("3.55", tyre="P205/75R14", was_tyre="P185/75R14")
    assert sheet.figure("speedometer_ratio").typical == pytest.approx(24.92 / 26.10, abs=3e-4)
    assert sheet.figure("speedometer_reading").typical == pytest.approx(60 * 24.92 / 26.10, abs=0.02)


@pytest.mark.parametrize(("tyre", "result"), [("28 in", "ok"), ("25 in", "not ok"), ("31 in", "not ok")])
def test_one_axle_and_tyre_tell_whether_the_speedometer_shows_what_is_recommended(tyre: str, result: str) -> None:
    """A tenth off either way is outside of any recommendation for cars; side by side it is not judged."""
    (check,) = [c for c in gearing("3.55", tyre=tyre, was_tyre="28 in").checks if c.subject == "speedometer"]
    assert (check.result, check.bears) == (result, "inform")
    both = gearing("3.55", tyre=f"{tyre}, 27 in", was_tyre="28 in")
    assert not [c for c in both.checks if c.subject == "speedometer"]


@settings(max_examples=60, deadline=None)
@given(st.integers(250, 500), st.integers(250, 500), st.integers(22, 34), st.integers(22, 34), st.integers(12, 30))
def test_the_driven_gear_takes_the_error_back(now: int, was: int, tyre: int, old: int, driven: int) -> None:
    sheet = gearing(
        f"{now / 100}", tyre=f"{tyre} in", was_ratio=f"{was / 100}", was_tyre=f"{old} in", driven_gear=str(driven)
    )
    ratio, left = [f.typical for f in sheet.figures if f.quantity == "speedometer_ratio"]
    assert ratio == pytest.approx(now / was * old / tyre)
    assert abs(left - 1) <= 0.5 / max(round(driven * ratio), 1) + 1e-9
    same = gearing(f"{now / 100}", tyre=f"{tyre} in", was_ratio=f"{now / 100}", was_tyre=f"{tyre} in")
    assert same.figure("speedometer_ratio").typical == pytest.approx(1)


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"tyre": "3 in"}, "tyre"),
        ({"speed": "900 mph"}, "speed"),
        ({"ratios": "41"}, "ratios"),
        ({"gears": "60"}, "gears"),
        ({"revolutions": "90000 rev/mile"}, "revolutions"),
        ({"transfer": "40"}, "transfer"),
    ],
)
def test_what_is_doubtful_is_asked_and_turns_nothing(more: dict[str, str], key: str) -> None:
    asked = {"ratios": "3.55", **({"tyre": "28 in"} if "revolutions" not in more else {}), **more}
    sheet = gearing(asked.pop("ratios"), **asked)  # type: ignore[arg-type]
    keeps_form(sheet, KEYS)
    assert (sheet.decision.kind, sheet.questions[0].key) == ("none", key)


@pytest.mark.parametrize(
    "asked",
    [
        {"ratios": "", "tyre": "28 in"},
        {"ratios": "-3.55", "tyre": "28 in"},
        {"ratios": "41/0", "tyre": "28 in"},
        {"ratios": "3.55", "tyre": "0 in"},
        {"ratios": "3.55", "tyre": "big"},
        {"ratios": "3.55 %", "tyre": "28 in"},
        {"ratios": "3.55", "tyre": "28 in", "driven_gear": "many"},
        {"ratios": "3.55", "tyre": "28 in", "was_tyre": "big"},
        {"ratios": "3, 4, 5", "tyre": "25 in, 26 in, 27 in, 28 in, 29 in"},
    ],
)
def test_what_cannot_be_read_is_refused(asked: dict[str, str]) -> None:
    with pytest.raises(InputError):
        gearing(**asked)  # type: ignore[arg-type]


def test_a_tyre_that_is_left_open_is_named() -> None:
    with pytest.raises(Ambiguous) as caught:
        gearing("3.55")
    assert caught.value.nearest == ("tyre", "revolutions")


@settings(max_examples=80, deadline=None)
@given(st.integers(200, 700), st.integers(20, 40), st.integers(10, 120), st.integers(50, 400))
def test_engine_speed_scales_with_ratio_speed_and_gear_and_falls_with_the_tyre(r: int, d: int, v: int, g: int) -> None:
    def at(r: float, d: float, v: float, g: float) -> float:
        sheet = gearing(f"{r / 100}", tyre=f"{d} in", speed=f"{v} mph", gears=f"{g / 100}")
        keeps_form(sheet, KEYS)
        return speeds(sheet)[0]

    one = at(r, d, v, g)
    assert at(2 * r, d, v, g) == pytest.approx(2 * one)
    assert at(r, d, 2 * v, g) == pytest.approx(2 * one)
    assert at(r, d, v, 2 * g) == pytest.approx(2 * one)
    assert at(r, 2 * d, v, g) == pytest.approx(one / 2)


def test_a_gearing_of_a_job_has_a_table_on_its_card() -> None:
    text = (
        '[[gearing]]\nname = "x"\nratios = ["3.55", "41/10"]\ngears = ["3.06", "1"]\ntyre = "28 in"\nspeed = "60 mph"\n'
    )
    job = domains.parse_job(text)
    item = page.item(job.gearing[0], job.shop, refdata())
    keeps_form(item.sheet, KEYS)
    assert item.card is not None
    assert item.card.table[0] == ("gear", "axle 3.55", "axle 4.1")
    assert [row[0] for row in item.card.table[1:]] == ["3.06", "1"]
    empty = domains.parse_job('[[gearing]]\nname = "x"\n')
    assert {q.key for q in page.item(empty.gearing[0], empty.shop, refdata()).sheet.questions} == {
        "ratios",
        "speed",
        "tyre",
    }
    wrong = domains.parse_job(text.replace("28 in", "big"))
    assert page.item(wrong.gearing[0], wrong.shop, refdata()).sheet.questions[0].key == "tyre"
