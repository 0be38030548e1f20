"""What is stated of a bolt in place of the tables: it counts, is marked, stands beside them, and is questioned."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.answer.decision import ASK, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.short import short
from gaugeblock.errors import InputError, LookupMiss, UnitError
from gaugeblock.fasteners.torque import torque
from gaugeblock.figure import Figure

KEYS = {"thread": "3/8-16", "grade": "SAE J429 5", "condition": "dry"}
GRIP = {"length": "1-1/2 in", "shank": "1 in", "metal": "steel"}


def ask(**more: object) -> Sheet:
    return torque(**{**KEYS, **more})  # type: ignore[arg-type]


def of(sheet: Sheet, quantity: str) -> Figure:
    return next(f for f in sheet.figures if f.quantity == quantity)


def keys_asked(sheet: Sheet) -> set[str]:
    return {q.key for q in sheet.questions}


# --- each counts, and is marked ---------------------------------------------------------------------------------------


def test_a_nut_factor_moves_the_torque_and_the_table_stands_beside_it() -> None:
    sheet = ask(condition="oiled", nut_factor="0.16")
    made = sheet.decision.figure
    assert made.basis == "derived"
    factors = [f for f in sheet.figures if f.quantity == "nut_factor"]
    assert [f.basis for f in factors] == ["stated", "published"]
    assert "nut factor 0.16 GIVEN; the tables have 0.18" in short(sheet)
    preload = next(f for f in made.inputs if f.quantity == "preload")
    assert base(made) == pytest.approx(0.16 * 0.375 * 0.0254 * base(preload))


def test_what_was_measured_names_the_tool_and_the_day() -> None:
    factor = of(ask(nut_factor="0.16 (0.14 to 0.18) by load cell 2 on 2026-11-20"), "nut_factor")
    assert (factor.trust, factor.source) == ("SHOP", "load cell 2, 2026-11-20")
    assert (factor.value, factor.low, factor.high) == (0.16, 0.14, 0.18)


def test_a_preload_as_share_force_and_stretch_is_one_and_the_same() -> None:
    share = ask(preload="70 %", nut_factor="0.2")
    load = next(f for f in share.decision.figure.inputs if f.quantity == "preload")
    force = ask(preload=f"{load.typical:.6f} lbf", nut_factor="0.2")
    stretch = of(ask(preload="70 %", nut_factor="0.2", grip=GRIP), "bolt_stretch").inputs
    long = units.from_base(base(load) / base(stretch[1]), "in")
    stretched = ask(preload=f"{long:.9f} in", nut_factor="0.2", grip=GRIP)
    got = [base(s.decision.figure) for s in (share, force, stretched)]
    assert got == pytest.approx([got[0]] * 3, rel=1e-6)


@pytest.mark.parametrize(
    ("key", "text", "proof"),
    [("proof_strength", "100 ksi", 100.0), ("yield_strength", "120 ksi", 102.0)],
)
def test_a_strength_of_the_bolt_itself(key: str, text: str, proof: float) -> None:
    own = ask(**{key: text}).decision.figure
    table = ask(proof_strength="85 ksi").decision.figure
    preload = next(f for f in own.inputs if f.quantity == "preload")
    assert base(preload) == pytest.approx(0.75 * proof * 6894757.3 * 0.0775 * 0.0254**2, rel=1e-5)
    assert base(own) >= base(table) * 0.98


def test_a_bolt_without_grade_or_condition_is_found_by_what_is_stated() -> None:
    bare = torque("3/8-16", proof_strength="85 ksi", nut_factor="0.2")
    assert bare.decision.kind == USE
    graded = torque("3/8-16", grade="SAE J429 5", nut_factor="0.2")
    assert base(bare.decision.figure) == pytest.approx(base(graded.decision.figure))


# --- the same everywhere ----------------------------------------------------------------------------------------------


SAME = [
    ("nut_factor", "0.2", "dry"),
    ("nut_factor", "0.18", "oiled"),
    ("proof_strength", "85 ksi", "dry"),
    ("preload", "75 %", "dry"),
    ("preload", "75 %", "oiled"),
    ("tensile_strength", "120 ksi", "dry"),
]


@pytest.mark.parametrize(("key", "text", "condition"), SAME)
def test_the_tables_own_value_stated_gives_the_tables_own_answer(key: str, text: str, condition: str) -> None:
    own, table = ask(condition=condition, **{key: text}), ask(condition=condition)
    assert own.decision.kind == table.decision.kind
    assert [base(f) for f in own.decision.figures] == [base(f) for f in table.decision.figures]
    clamps = [of(s, "clamp_load") for s in (own, table)]
    assert clamps[0].low == pytest.approx(clamps[1].low)
    assert clamps[0].high == pytest.approx(clamps[1].high)


@given(
    st.sampled_from(["3/8-16", "1/2-13", "M10x1.5"]),
    st.sampled_from(["dry", "oiled", "zinc plated"]),
    st.floats(0.1, 0.2),
    st.floats(0.2, 0.3),
    st.floats(0, 0.03),
    st.floats(0, 0.1),
)
@settings(max_examples=40, deadline=None)
def test_a_wider_friction_range_never_narrows_the_clamp(
    thread: str, condition: str, low: float, high: float, lower: float, higher: float
) -> None:
    assume(high > low + 0.001)
    grade = "ISO 898-1 8.8" if thread.startswith("M") else "SAE J429 5"

    def clamp(a: float, b: float) -> Figure:
        text = f"0.2 ({a:.6f} to {b:.6f})"
        return of(torque(thread, grade=grade, condition=condition, nut_factor=text), "clamp_load")

    narrow, wide = clamp(low, high), clamp(low - lower, high + higher)
    assert (wide.low or 0) <= (narrow.low or 0) * (1 + 1e-9)
    assert (wide.high or 0) >= (narrow.high or 0) * (1 - 1e-9)


@given(st.floats(0.5, 8.0), st.floats(0, 1), st.sampled_from(["steel", "aluminium", "cast iron", "stainless steel"]))
@settings(max_examples=40, deadline=None)
def test_a_longer_bolt_stretches_further_and_takes_less_of_the_load(grip: float, part: float, metal: str) -> None:
    def at(length: float) -> Sheet:
        shank = f"{length * part:.6f} in"
        return ask(nut_factor="0.2", grip={"length": f"{length:.6f} in", "shank": shank, "metal": metal})

    short_one, long_one = at(grip), at(grip * 1.5)
    assert base(of(long_one, "bolt_stretch")) > base(of(short_one, "bolt_stretch"))
    for sheet in (short_one, long_one):
        assert 0 < of(sheet, "bolt_load_share").typical < 100


# --- it may judge and be judged ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("more", "check"),
    [
        ({"preload": "130 %", "nut_factor": "0.18 to 0.22"}, "clamp at low friction within proof"),
        ({"grip": {**GRIP, "load": "9000 lbf"}, "nut_factor": "0.18 to 0.22"}, "joint stays closed under the load"),
        ({"nut_factor": "0.18 to 0.22", "tapped_strength": "30 ksi", "engagement": "0.2 in"}, "thread holds the clamp"),
    ],
)
def test_what_is_stated_can_stop(more: dict[str, object], check: str) -> None:
    decision = ask(**more).decision
    assert decision.kind == STOP
    assert check in decision.because


def test_a_lowest_friction_that_passes_proof_asks() -> None:
    sheet = ask(nut_factor="0.10 to 0.30")
    assert sheet.decision.kind == ASK
    assert "at the lowest friction given" in sheet.decision.do


def test_engagement_that_the_tapped_metal_needs() -> None:
    sheet = ask(tapped_strength="30 ksi", nut_factor="0.2")
    holds, breaks = (f for f in sheet.figures if f.quantity == "length_of_engagement")
    assert base(holds) < base(breaks)
    assert "engagement" in keys_asked(sheet)
    enough = ask(tapped_strength="30 ksi", nut_factor="0.2", engagement=f"{holds.typical * 1.01:.4f} in")
    short_of = ask(tapped_strength="30 ksi", nut_factor="0.2", engagement=f"{holds.typical * 0.99:.4f} in")
    results = [next(c.result for c in s.checks if c.name == "thread holds the clamp") for s in (enough, short_of)]
    assert results == ["ok", "not ok"]


# --- the implausible is questioned, what is missing asked -------------------------------------------------------------


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"nut_factor": "16"}, "Did you mean 16 %?"),
        ({"proof_strength": "8 ksi"}, "no usual proof strength"),
        ({"proof_strength": "30 ksi"}, "under half of what SAE J429 5 has"),
        ({"proof_strength": "120 ksi", "yield_strength": "92 ksi"}, "proof strength is over the yield strength"),
        ({"preload": "7 %"}, "no usual share of proof"),
        ({"preload": "50 lbf"}, "a very small preload"),
        ({"tapped_strength": "30 psi"}, "no usual tensile strength"),
        ({"grip": {"length": "11/2 in", "shank": "0 in"}}, "no usual grip"),
    ],
)
def test_the_implausible_is_questioned_and_not_used(more: dict[str, object], said: str) -> None:
    sheet = ask(**more)
    assert sheet.decision.kind == ASK
    assert said in sheet.decision.do.replace("\N{NO-BREAK SPACE}", " ")
    assert base(sheet.decision.figures[0]) == base(ask().decision.figures[0])


def test_what_was_confirmed_is_used() -> None:
    sheet = ask(proof_strength="30 ksi", confirmed="proof_strength")
    assert base(sheet.decision.figures[0]) < 0.5 * base(ask().decision.figures[0])


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"preload": "0.004 in"}, "grip.length"),
        ({"preload": "0.004 in", "grip": {"length": "1-1/2 in"}}, "grip.shank"),
        ({"grip": {"length": "1-1/2 in", "shank": "0 in", "load": "500 lbf"}}, "grip.metal"),
    ],
)
def test_what_is_missing_is_asked(more: dict[str, object], key: str) -> None:
    sheet = ask(**more)
    assert sheet.decision.kind == ASK
    assert key in keys_asked(sheet)


@pytest.mark.parametrize(
    ("more", "error"),
    [
        ({"nut_factor": "0.16 by load cell"}, InputError),
        ({"nut_factor": "0.2 (0.14 to 0.18)"}, InputError),
        ({"nut_factor": "slippery"}, InputError),
        ({"preload": "4000"}, InputError),
        ({"preload": "60 to 70 %"}, InputError),
        ({"preload": "70 %", "wanted": "20 lbf*ft"}, InputError),
        ({"proof_strength": "85"}, UnitError),
        ({"grip": {"length": "1 in", "shank": "2 in"}}, InputError),
        ({"grip": {"length": "1 in", "shank": "1-1/8 in"}}, InputError),
        ({"grip": {"shank": "1 in"}}, InputError),
        ({"grip": {"length": "1 in", "metal": "unobtainium"}}, LookupMiss),
    ],
)
def test_what_cannot_be_read_is_refused(more: dict[str, object], error: type[Exception]) -> None:
    with pytest.raises(error):
        ask(**more)


@pytest.mark.parametrize("thread", ["3/8-16", "M10x1.5", "1/2-20"])
@pytest.mark.parametrize("condition", ["dry", "oiled", "anti-seize"])
@pytest.mark.parametrize("share", ["101 %", "110 %", "150 %"])
def test_a_preload_over_proof_stops_by_whatever_it_is_told(thread: str, condition: str, share: str) -> None:
    """No friction stands between a preload that is stated and the proof load: nothing is left to ask."""
    grade = "ISO 898-1 10.9" if thread[0] == "M" else "SAE J429 5"
    sheet = torque(thread, grade=grade, condition=condition, preload=share)
    assert sheet.decision.kind == STOP
    assert "stretches for good" in sheet.decision.do


@pytest.mark.parametrize(("load", "kind"), [("60 kN", STOP), ("48 kN", STOP), ("20 kN", USE)])
def test_a_joint_that_its_load_opens_stops_where_the_preload_is_stated(load: str, kind: str) -> None:
    """By the joint's own stiffness it opens at the preload over one less the bolt's share of the load."""
    grip = {"length": "50 mm", "shank": "20 mm", "metal": "steel", "load": load}
    sheet = torque("M12x1.75", grade="10.9", condition="dry", preload="40 kN", grip=grip)
    share = of(sheet, "bolt_load_share").typical / 100
    opens = 40_000 / (1 - share)
    assert of(sheet, "opening_load").typical == pytest.approx(opens)
    assert (units.to_base(float(load.split(maxsplit=1)[0]), "kN") > opens) == (kind == STOP)
    assert sheet.decision.kind == kind


def test_a_torque_for_the_friction_that_is_stated_is_not_refused_as_a_dry_one() -> None:
    sheet = ask(condition="oiled", nut_factor="0.16", preload="95 %")
    assert sheet.decision.kind == USE
    assert of(sheet, "share_of_proof").typical == pytest.approx(95)


@pytest.mark.parametrize(
    ("thread", "grade", "maker", "is_asked"),
    [
        ("M8x1.25", "8.8", "25 lbf*ft", True),
        ("M10x1.5", "8.8", "50 lbf*ft", True),
        ("3/8-16", "SAE J429 5", "42 lbf*ft", True),
        ("M8x1.25", "8.8", "25 N*m", False),
        ("M8x1.25", "8.8", "19 lbf*ft", False),
        ("3/8-16", "SAE J429 5", "31 lbf*ft", False),
        ("3/8-16", "SAE J429 5", "25 lbf*ft", False),
        ("7/16-20", "SAE J429 8", "75 lbf*ft", False),  # a third over the tables, and well under proof
    ],
)
def test_newton_metres_written_as_pound_feet_are_asked_about(
    thread: str, grade: str, maker: str, is_asked: bool
) -> None:
    sheet = torque(thread, grade=grade, condition="dry", maker=maker)
    assert (sheet.decision.kind == ASK) == is_asked
    assert ("Did you mean" in sheet.decision.do) == is_asked
    confirmed = torque(thread, grade=grade, condition="dry", maker=maker, confirmed=("maker",))
    assert "Did you mean" not in confirmed.decision.do


def test_a_doubt_never_contradicts_the_span_that_it_tells() -> None:
    do = torque("M10x1.25", grade="10.9", condition="dry", maker="75 lbf*ft").decision.do
    assert "18.7 to 74.9" in do.replace("\u00a0", " ")
