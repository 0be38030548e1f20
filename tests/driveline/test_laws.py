"""The laws of a decision, on every answer of the driveline: random look-ups over every row of its tables."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.asking import LEFT, SHAFT, plain
from driveline.forms import keeps_form
from gaugeblock import hardness, setup, steel
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.driveline.job import Driveline
from gaugeblock.driveline.steels import STRENGTHS
from gaugeblock.errors import GaugeblockError, LookupMiss
from gaugeblock.tables.load import refdata

STEELS = sorted(
    {
        (r["steel"], r["treatment"], None if r["temper"] == "any" else r["temper"])
        for r in refdata().table("driveline/steels").rows
        if r["quantity"] in STRENGTHS and not r.standing
    },
    key=str,
)
STEPS = sorted(
    {(r["axle"], r["component"], r["step"]) for r in refdata().table("driveline/setup").rows if not r.standing}
)
KEYS = {*Driveline.keys, *(f"maker.{k}" for k in ("value", "low", "high", "source", "place"))}


@st.composite
def shafts(draw: st.DrawFn) -> dict[str, str | None]:
    grade, treatment, temper = draw(st.sampled_from(STEELS))
    of: dict[str, str | None] = {"grade": grade, "treatment": treatment, "temper": temper}
    unit = draw(st.sampled_from(["in", "mm"]))
    size = draw(st.integers(4, 400)) / 100
    of["shaft"] = draw(st.sampled_from([None, f"{size if unit == 'in' else round(size * 25.4)} {unit}"]))
    torque = draw(st.integers(1, 20000))
    of["torque"] = draw(st.sampled_from([None, f"{torque} lbf*ft", f"{torque} N*m", f"{torque} lbf*in"]))
    of["hardness"] = draw(st.sampled_from([None, "20 HRC", "HRC 40", "52 HRC", "200 HB"]))
    of["length"] = draw(st.sampled_from([None, "30 in"]))
    own = draw(st.sampled_from([None, "60 ksi", "180 ksi", "6 ksi"]))
    return {**of, "yield_strength": own}


@settings(max_examples=300, deadline=None)
@given(shafts())
def test_a_shaft_of_any_steel_keeps_the_laws(of: dict[str, str | None]) -> None:
    try:
        sheet = steel(of.pop("grade") or "", **of)  # type: ignore[arg-type]
    except LookupMiss:
        return
    keeps_form(sheet, KEYS)
    decision = sheet.decision
    if of["shaft"] is None and of["torque"] is None and of["length"] is None:
        return
    if decision.kind == USE:
        assert decision.figures[0].quantity == "torsional_yield_factor"
        assert decision.figures[0].typical >= 1
        assert of["shaft"] is not None
        assert of["torque"] is not None
    if decision.kind == STOP:
        (check,) = [c for c in sheet.checks if c.name == SHAFT]
        assert check.required is not None
        assert check.required.figure is not None
        judged_by = check.required.figure
        assert judged_by.evidence.basis != "common practice"
        assert judged_by.evidence.checked != "memory"
        assert not judged_by.quantity.endswith("_typical") or of["hardness"] is not None
    if any(c.name.endswith("as typed") for c in sheet.checks):
        assert decision.kind in (ASK, NONE)
        assert all(f.quantity == "torque_at_torsional_yield" for f in decision.figures)


@pytest.mark.parametrize(("grade", "treatment", "temper"), STEELS)
def test_typical_recalled_and_habit_strength_never_stop_nor_pass_alone(
    grade: str, treatment: str, temper: str | None
) -> None:
    for torque in ("1 lbf*ft", "19000 lbf*ft"):
        sheet = steel(grade, treatment=treatment, temper=temper, shaft="1 in", torque=torque)
        source = next((f for f in sheet.figures if f.quantity.startswith("yield_strength")), None)
        if source is None or source.quantity.endswith("_typical") or source.checked == "memory":
            assert sheet.decision.kind in (ASK, NONE)
        keeps_form(sheet, KEYS)


@st.composite
def steps(draw: st.DrawFn) -> tuple[tuple[str, str, str, str | None], dict[str, object]]:
    axle, component, step = draw(st.sampled_from(STEPS))
    axle = draw(st.sampled_from([axle, "rear"]))
    wear = draw(st.sampled_from([None, "new", "used"]))
    unit = draw(st.sampled_from(["in", "mm", "lbf*in", "lbf*ft", "N*m", "deg"]))

    def measure() -> str | None:
        number = draw(st.one_of(st.none(), st.integers(-10, 300)))
        return None if number is None else f"{number / (1000 if unit in ('in', 'mm') else 1):g} {unit}"

    maker = (
        measure(),
        measure(),
        measure(),
        draw(st.sampled_from([None, "sheet"])),
        draw(st.sampled_from([None, "p. 1"])),
    )
    more: dict[str, object] = {"as_left": measure(), "as_found": measure()}
    return (axle, component, step, wear), {**more, "maker": maker if any(maker[:3]) else None}


@settings(max_examples=500, deadline=None)
@given(steps())
def test_a_step_of_any_axle_keeps_the_laws(asked: tuple[tuple[str, str, str, str | None], dict[str, object]]) -> None:
    (axle, component, step, wear), more = asked
    sheet = setup(axle, component, step, wear, **more)  # type: ignore[arg-type]
    keeps_form(sheet, KEYS)
    decision = sheet.decision
    maker = more["maker"]
    if decision.kind == USE and isinstance(maker, tuple):
        figure = decision.figures[0]
        assert figure.basis == "maker"
        assert all(end is None or end >= 0 for end in (figure.low, figure.value, figure.high))
        ends = [e for e in (figure.low, figure.value, figure.high) if e is not None]
        assert ends == sorted(ends)
    if decision.kind == USE:
        (check,) = [c for c in sheet.checks if c.name == LEFT]
        assert check.result != "not ok"
    if any(c.name.startswith("maker ") and c.name.endswith("as typed") for c in sheet.checks):
        assert decision.kind in (ASK, NONE)
        assert all(f.basis not in ("maker", "stated") for f in decision.figures)


@given(st.integers(-20, 80), st.sampled_from(["HRC", "Rockwell C", "HB", "Brinell"]), st.booleans())
def test_a_hardness_in_either_order_says_the_same(number: int, scale: str, turned: bool) -> None:
    def said(*words: str) -> object:
        try:
            sheet = hardness(*words)
        except GaugeblockError as error:
            return str(error)
        keeps_form(sheet, KEYS)
        return sheet.figures

    if turned:
        assert said(str(number), scale) == said(scale, str(number))
    else:
        said(scale, str(number))


@pytest.mark.parametrize(
    ("torque", "meant"),
    [("1500 lbf*in", "1500 lbf·ft"), ("22000 lbf*ft", "22000 lbf·in"), ("0.5 lbf*ft", "Read it again")],
)
def test_a_torque_in_the_wrong_unit_is_questioned(torque: str, meant: str) -> None:
    sheet = steel("4340", treatment="q&t", temper="800 F", shaft="1 in", torque=torque, hardness="43 HRC")
    assert meant in plain(sheet.questions[0].text)
    assert (sheet.questions[0].key, sheet.decision.kind) == ("torque", ASK)
    assert base(sheet.decision.figures[0]) > 2000  # the torque at yield, which no typed torque is in
