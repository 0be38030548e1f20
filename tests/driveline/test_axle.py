"""An axle shaft under what engine and tyre can send to it."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.forms import keeps_form
from gaugeblock import axle, axle_compared
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.axles.answer import asked_of, form_of, shaft_of
from gaugeblock.driveline.axles.comparing import ROOM, stronger
from gaugeblock.driveline.axles.pull import Pull
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.tables.load import refdata

STRONG: dict[str, Any] = {"yield_strength": "150 ksi", "certificate": "mill sheet", "diameter": "1-1/4 in"}
ENGINE: dict[str, Any] = {
    "engine_torque": "300 lbf*ft",
    "converter": "none",
    "gear": "2.5",
    "ratio": "4.1",
    "differential": "open",
}
TYRE: dict[str, Any] = {"wheel_load": "1000 lbf", "grip": "0.9", "radius": "13 in"}
KEYS = {
    *ENGINE,
    *TYRE,
    "bias",
    "transfer",
    "material",
    "treatment",
    "diameter",
    "yield_strength",
    "hardness",
    "case_depth",
    "length",
    "bore",
}


def torque_of(sheet: Sheet, quantity: str = "shaft_torque") -> float:
    figure = sheet.figure(quantity)
    assert figure is not None
    return figure.typical


def test_the_smaller_end_governs_and_the_answer_says_which() -> None:
    sheet = axle("4340", **STRONG, **ENGINE, **TYRE)
    assert torque_of(sheet, "shaft_torque_engine") == pytest.approx(300 * 2.5 * 4.1 / 2)
    assert torque_of(sheet, "shaft_torque_tyre") == pytest.approx(1000 * 0.9 * 13 / 12)
    assert torque_of(sheet) == pytest.approx(975)
    assert "The tyre governs" in sheet.decision.do
    weak = axle("4340", **STRONG, **{**ENGINE, "engine_torque": "100 lbf*ft"}, **TYRE)
    assert torque_of(weak) == pytest.approx(512.5)
    assert "The engine governs" in weak.decision.do


def test_the_strength_of_a_shaft_names_the_paper_it_stands_on() -> None:
    sheet = axle("4340", **STRONG, **ENGINE, **TYRE)
    behind = [part for figure in sheet.figures for part in figure.walk() if part.quantity == "yield_strength"]
    assert {(part.basis, part.source) for part in behind} == {("maker", "mill sheet")}


def test_a_shaft_that_yields_whatever_the_open_key_is_stops() -> None:
    weak = {**STRONG, "diameter": "9/16 in"}
    without = {k: v for k, v in ENGINE.items() if k != "converter"}
    assert axle("4340", **weak, **without, **TYRE).decision.kind == STOP
    assert axle("4340", **STRONG, **without, **TYRE).decision.kind != STOP
    no_grip = {k: v for k, v in TYRE.items() if k != "grip"}
    assert axle("4340", **weak, **ENGINE, **no_grip).decision.kind == ASK


def test_what_reaches_the_shaft_by_differential() -> None:
    def engine(differential: str, **more: str) -> float:
        given = {**ENGINE, "differential": differential, **more}
        return torque_of(axle("4340", **STRONG, **given), "shaft_torque_engine")

    whole = 300 * 2.5 * 4.1
    assert engine("locked") == pytest.approx(whole)
    assert engine("open") == pytest.approx(whole / 2)
    assert engine("limited slip", bias="3") == pytest.approx(whole * 3 / 4)
    assert engine("limited slip") == pytest.approx(whole)


def test_grip_that_nobody_gave_is_asked_with_candidates() -> None:
    tyre = {k: v for k, v in TYRE.items() if k != "grip"}
    sheet = axle("4340", yield_strength="60 ksi", diameter="1-1/4 in", **{**ENGINE, "differential": "locked"}, **tyre)
    assert sheet.decision.kind == ASK
    assert [round(f.typical, 2) for f in sheet.decision.figures] == [0.36, 0.85, 1.36]
    assert "grip" in {q.key for q in sheet.questions}


def test_a_bound_that_holds_whatever_is_open_is_used() -> None:
    assert axle("4340", **STRONG, **ENGINE).decision.kind == USE
    assert axle("4340", **STRONG, **TYRE).decision.kind == USE
    assert axle("4340", **STRONG, **{**ENGINE, "differential": None}, **TYRE).decision.kind == USE


def test_a_converter_that_nobody_spoke_of_is_asked_unless_the_tyre_lets_go_first() -> None:
    silent = {k: v for k, v in ENGINE.items() if k != "converter"}
    assert axle("4340", **STRONG, **silent).decision.kind == ASK
    assert axle("4340", **STRONG, **silent, **TYRE).decision.kind == USE
    doubled = axle("4340", **STRONG, **{**ENGINE, "converter": "2"})
    assert torque_of(doubled, "shaft_torque_engine") == pytest.approx(3075)


def test_a_shaft_that_yields_stops_only_when_the_torque_is_known() -> None:
    thin = {"yield_strength": "50 ksi", "diameter": "1 in"}
    assert axle("4340", **thin, **ENGINE, **TYRE).decision.kind == STOP
    assert axle("4340", **thin, **ENGINE).decision.kind == ASK
    assert axle("4340", **thin, **TYRE).decision.kind == ASK
    assert axle("4340", **thin).decision.kind == NONE


def test_the_smallest_diameter_just_yields() -> None:
    sheet = axle("4340", **STRONG, bore="1/2 in", **ENGINE, **TYRE)
    size = torque_of(sheet, "shaft_diameter_least")
    again = axle("4340", **{**STRONG, "diameter": f"{size:.9f} in"}, bore="1/2 in", **ENGINE, **TYRE)
    assert torque_of(again, "torsional_yield_factor") == pytest.approx(1)
    assert torque_of(again, "shaft_yield_share") == pytest.approx(100)


def test_the_implausible_is_questioned() -> None:
    sheet = axle("4340", **STRONG, **{**ENGINE, "engine_torque": "5000 lbf*ft"}, **TYRE)
    assert sheet.decision.kind == NONE
    assert "engine torque" in sheet.decision.do


@settings(max_examples=150, deadline=None)
@given(st.sets(st.sampled_from(sorted({*ENGINE, *TYRE}))), st.integers(4, 40), st.booleans())
def test_every_answer_keeps_the_form(left_out: set[str], size: int, typical: bool) -> None:
    given_ = {k: v for k, v in {**ENGINE, **TYRE}.items() if k not in left_out}
    by_table = {"treatment": "quenched and tempered", "temper": "800 degF"}
    shaft = by_table if typical else {"yield_strength": "90 ksi"}
    sheet = axle("4340", **shaft, diameter=f"{size / 16} in", **given_)
    keeps_form(sheet, KEYS)


@settings(max_examples=60, deadline=None)
@given(st.floats(1.1, 4), st.sampled_from(["gear", "ratio", "transfer", "converter"]))
def test_the_path_of_torque_scales(times: float, key: str) -> None:
    base = {**ENGINE, "converter": "1", "transfer": "1", "gear": "1", "ratio": "2"}
    more = {**base, key: f"{float(base[key]) * times:.9f}"}
    before, after = (torque_of(axle("4340", **STRONG, **of), "shaft_torque_engine") for of in (base, more))
    assert after / before == pytest.approx(times, rel=1e-8)


STEPS = {"yield_strength": "150 ksi", "certificate": "mill sheet"}


def test_twist_adds_along_the_steps() -> None:
    sheet = axle("4340", **STEPS, parts="1-1/2 in x 4 in, 1-1/4 in x 22 in", **TYRE)
    whole, *each = [f.typical for f in sheet.figures if f.quantity == "shaft_twist"]
    assert len(each) == 2
    assert whole == pytest.approx(sum(each))
    one = axle("4340", **STEPS, diameter="1-1/4 in", length="22 in", **TYRE)
    assert torque_of(one, "shaft_twist") == pytest.approx(each[1])
    split = axle("4340", **STEPS, parts="1-1/4 in x 10 in, 1-1/4 in x 12 in", **TYRE)
    assert torque_of(split, "shaft_twist") == pytest.approx(each[1])


def test_the_root_of_the_spline_governs_where_it_is_the_smallest() -> None:
    plain = axle("4340", **STRONG, **ENGINE, **TYRE)
    fine = axle("4340", **STRONG, spline="24/48", teeth="28", **ENGINE, **TYRE)
    root = (28 - 2) / 24
    share = torque_of(fine, "torsional_yield_factor") / torque_of(plain, "torsional_yield_factor")
    assert share == pytest.approx((root / 1.25) ** 3)
    large = axle("4340", **STRONG, spline="24/48", teeth="40", **ENGINE, **TYRE)
    assert torque_of(large, "torsional_yield_factor") == pytest.approx(torque_of(plain, "torsional_yield_factor"))


def test_the_pull_shifts_weight_onto_the_rear_and_off_the_front() -> None:
    given_ = {"axle_load": "2000 lbf", "height": "20 in", "wheelbase": "100 in", "grip": "1", "radius": "12 in"}

    def load(**more: str) -> float:
        return torque_of(axle("4340", **STRONG, **given_, **more), "shaft_torque_tyre")

    assert load(driven="rear") == pytest.approx(1000 / 0.8)
    assert load(driven="front") == pytest.approx(1000 / 1.2)
    assert load(driven="rear", lifted="yes") == pytest.approx(2000 / 0.8)


def test_a_fillet_informs_and_decides_nothing() -> None:
    plain = axle("4340", **STRONG, **ENGINE, **TYRE)
    sharp = axle("4340", **STRONG, fillet="1/16 in", shoulder="1-1/2 in", **ENGINE, **TYRE)
    assert sharp.decision.kind == plain.decision.kind
    assert torque_of(sharp, "stress_concentration_factor") > 1.3
    (check,) = [c for c in sharp.checks if c.name == "stress in the fillet"]
    assert check.bears == "inform"
    assert check.required is not None
    assert check.actual is not None
    assert check.margin == pytest.approx(1 - (check.actual.value or 0) / (check.required.value or 1))
    assert all(f.quantity != "shaft_peak_stress" for f in plain.figures)


@pytest.mark.parametrize(
    ("half", "asked"),
    [
        ({"fillet": "1/16 in"}, "shoulder"),
        ({"shoulder": "1-1/2 in"}, "fillet"),
        ({"spline": "24/48"}, "teeth"),
        ({"teeth": "30"}, "spline"),
    ],
)
def test_half_of_a_form_asks_for_the_other_half(half: dict[str, str], asked: str) -> None:
    sheet = axle("4340", **STRONG, **half, **ENGINE, **TYRE)
    assert (sheet.decision.kind, sheet.questions[0].key) == (NONE, asked)


def test_a_case_is_judged_where_it_ends() -> None:
    cased = {
        "treatment": "induction hardened",
        "case_depth": "0.12 in",
        "core_hardness": "25 HRC",
        "hardness": "55 HRC",
    }
    sheet = axle("1541", yield_strength="150 ksi", diameter="1-1/4 in", **cased, **ENGINE, **TYRE)
    places = [c.case for c in sheet.checks if c.subject == "shaft stress"]
    assert "below the case" in places
    surface, below = (f.typical for f in sheet.figures if f.quantity == "shaft_shear_stress")
    assert below / surface == pytest.approx((0.625 - 0.12) / 0.625)


REACHED = {"diameter": "0.9 in", **TYRE}


def test_every_steel_is_ranked_as_it_would_be_judged_alone() -> None:
    table = axle_compared("steels", **REACHED)
    assert len(table.lines) > 100
    for line in table.lines[::7]:
        temper = None if line.key["temper"] == "any" else line.key["temper"]
        alone = axle(line.key["steel"], treatment=line.key["treatment"], temper=temper, **REACHED)
        assert alone.decision.kind == line.sheet.decision.kind
        assert alone.decision.figures[0].typical == pytest.approx(line.sheet.decision.figures[0].typical)


@pytest.mark.parametrize("load", ["900 lbf", "1600 lbf", "3000 lbf", "9000 lbf", "60000 lbf"])
@pytest.mark.parametrize("size", ["0.9 in", "1-1/4 in", "45 mm"])
@pytest.mark.parametrize("most", [1, 2, 6])
def test_stronger_steels_are_the_weakest_of_the_ranking_that_have_room(load: str, size: str, most: int) -> None:
    asked = asked_of(None, {**TYRE, "diameter": size, "wheel_load": load})
    data = refdata()
    of = shaft_of(asked, data), form_of(asked), Pull.read(asked)
    ranked = axle_compared("steels", **{**TYRE, "diameter": size, "wheel_load": load}).lines
    firm = [n for n in ranked if n.sheet.decision.kind == USE and n.sheet.decision.figures[0].typical >= ROOM]
    firm.sort(key=lambda n: (n.sheet.decision.figures[0].typical, tuple(n.key.values())))
    assert stronger(*of, asked, data, most) == firm[:most]


def test_the_ranking_is_stable() -> None:
    keys = [tuple(line.key.values()) for line in axle_compared("steels", **REACHED).lines]
    assert len(set(keys)) == len(keys)
    firm = [line for line in axle_compared("steels", **REACHED).lines if line.sheet.decision.kind == USE]
    factors = [line.sheet.decision.figures[0].typical for line in firm]
    assert factors == sorted(factors, reverse=True)
    thicker = axle_compared("steels", **{**REACHED, "diameter": "0.91 in"})
    kept = [tuple(line.key.values()) for line in thicker.lines if line.sheet.decision.kind == USE]
    was = [tuple(line.key.values()) for line in firm]
    assert [k for k in kept if k in was] == [k for k in was if k in kept]


def test_a_bigger_spline_carries_more_until_the_body_governs() -> None:
    table = axle_compared("splines", **STRONG, spline="24/48", teeth="26", **TYRE)
    factors = [line.sheet.decision.figures[0].typical for line in table.lines]
    assert factors == sorted(factors)
    assert factors[-1] == pytest.approx(factors[-2])
    assert factors[1] / factors[0] == pytest.approx((25 / 24) ** 3)


@pytest.mark.parametrize(
    ("what", "given_"),
    [("steels", {"diameter": "1 in"}), ("steels", TYRE), ("splines", REACHED), ("wheels", REACHED)],
)
def test_what_cannot_be_compared_is_refused(what: str, given_: dict[str, Any]) -> None:
    with pytest.raises(InputError):
        axle_compared(what, **given_)


def test_a_shaft_without_a_published_strength_is_judged_by_its_own_hardness() -> None:
    cased = {"treatment": "induction hardened", "case_depth": "0.15 in", "core_hardness": "25 HRC"}
    sheet = axle("1541H", hardness="52 HRC", diameter="1-1/4 in", **cased, **ENGINE, **TYRE)
    assert sheet.decision.kind == USE
    assert sheet.decision.figures[0].conditions == "where the case ends"
    without = axle("1541H", hardness="52 HRC", treatment="induction hardened", diameter="1-1/4 in", **ENGINE, **TYRE)
    assert without.decision.kind == ASK
    assert "case_depth" in {q.key for q in without.questions}
    assert axle(hardness="30 HRC", diameter="1-1/4 in", **ENGINE, **TYRE).decision.kind == USE
    with pytest.raises(LookupMiss):
        axle("4340", treatment="boiled", hardness="30 HRC", diameter="1-1/4 in", **ENGINE, **TYRE)


def test_a_transfer_case_that_was_not_counted_is_said_where_the_engine_governs() -> None:
    def says(**more: str) -> bool:
        sheet = axle("4340", **STRONG, **{**ENGINE, **more})
        return any("transfer case" in c.text for c in sheet.cautions)

    assert says()
    assert not says(transfer="1")
    assert not says(**TYRE)


@settings(max_examples=60, deadline=None)
@given(st.floats(0.2, 2), st.floats(1.01, 1.6), st.sampled_from(["grip", "wheel_load", "radius", "engine_torque"]))
def test_more_pull_never_leaves_more_room(grip: float, times: float, key: str) -> None:
    units_ = {"grip": "", "wheel_load": " lbf", "radius": " in", "engine_torque": " lbf*ft"}
    base = {**ENGINE, **TYRE, "grip": f"{grip:.6f}"}
    more = {**base, key: f"{float(base[key].split()[0]) * times:.6f}{units_[key]}"}
    before, after = (torque_of(axle("4340", **STRONG, **of), "torsional_yield_factor") for of in (base, more))
    assert after <= before * (1 + 1e-9)
