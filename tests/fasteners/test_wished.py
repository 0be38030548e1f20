"""A torque that somebody wants, or has in mind, beside the one that is on record for a part."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.wished import BESIDE
from gaugeblock.lookup import figure_of
from gaugeblock.plain.answer import answer
from gaugeblock.tables.load import refdata

DATA = refdata()
PLUG = {"size": "14 mm", "seat": "gasket", "material": "aluminium"}
SIZED = sorted({r.key[:4] for r in DATA.table("fasteners/part_torques").rows if not r.standing and r.key[1] != "any"})
SAID = ("nm", "ft lb", "lb ft", "foot pounds", "newton metres", "lb in")


@pytest.mark.parametrize(("wanted", "said"), [("45 N*m", "over"), ("33 lbf*ft", "over"), ("12 N*m", "under")])
def test_a_wanted_torque_off_the_record_is_asked_about_the_safer_first(wanted: str, said: str) -> None:
    sheet = part("spark plug", **PLUG, wanted=wanted)
    assert sheet.decision.kind == ASK
    assert BESIDE in sheet.decision.because
    assert said in sheet.decision.do
    nm = [units.to_base(f.typical, f.unit) for f in sheet.decision.figures]
    assert nm == sorted(nm)
    assert {f.basis for f in sheet.decision.figures} == {"published", "stated"}
    assert part("spark plug", **PLUG, wanted=wanted, confirmed="wanted").decision.kind == USE


@pytest.mark.parametrize("wanted", ["25 N*m", "20 lbf*ft", "31 N*m", "24 N*m"])
def test_a_wanted_torque_on_the_record_is_used(wanted: str) -> None:
    sheet = part("spark plug", **PLUG, wanted=wanted)
    assert sheet.decision.kind == USE
    assert [f"{f.text} {f.unit}" for f in sheet.decision.figures] == [wanted]


@settings(deadline=None, max_examples=200)
@given(st.sampled_from(SIZED), st.floats(0.35, 2.8))
def test_no_torque_over_the_record_is_set_unasked(key: tuple[str, str, str, str], times: float) -> None:
    name, size, seat, material = key
    keys = {n: v for n, v in (("size", size), ("seat", seat), ("material", material)) if v not in ("any", "not stated")}
    try:
        plain = part(name, **keys)
    except GaugeblockError:
        return
    rows = [f for f in plain.figures if f.quantity == "tightening_torque"]
    if not rows or plain.decision.kind == NONE:
        return
    # of what is left open the most that any of them takes
    every = [
        figure_of(row, DATA) for row in DATA.table("fasteners/part_torques").rows if row.key[0] == plain.asked["part"]
    ]
    found = rows[:1] if len(rows) == 1 and "Say the" not in plain.decision.do else every
    most = max(units.to_base(e, f.unit) for f in found for e in (f.value, f.low, f.high) if e is not None)
    wanted = part(name, **keys, wanted=f"{most * times:.6g} N*m").decision
    if wanted.kind == USE:
        assert times <= 1.1 + 1e-6


CEILINGS = sorted({r.key[:4] for r in DATA.table("fasteners/part_torques").by_quantity["tightening_torque_maximum"]})


@pytest.mark.parametrize("key", CEILINGS)
def test_a_ceiling_is_never_passed_unasked(key: tuple[str, str, str, str]) -> None:
    name, size, seat, material = key
    keys = {n: v for n, v in (("size", size), ("seat", seat), ("material", material)) if v not in ("any", "not stated")}
    try:
        plain = part(name, **keys)
    except GaugeblockError:
        return
    rows = [f for f in plain.figures if f.quantity == "tightening_torque_maximum"]
    if not rows or len(plain.decision.candidates) != 1:
        return
    most = units.to_base(rows[0].typical, rows[0].unit)
    assert part(name, **keys, wanted=f"{most * 1.05:.6g} N*m").decision.kind == ASK
    assert part(name, **keys, wanted=f"{most * 0.95:.6g} N*m").decision.kind == USE


@pytest.mark.parametrize("number", ["37", "45"])
@pytest.mark.parametrize("unit", SAID)
def test_a_torque_is_no_seat(number: str, unit: str) -> None:
    for line in (f"spark plug 14 mm {number} {unit}", f"is {number} {unit} ok on a wheel nut m12x1.5"):
        got = answer(line)
        assert "deg" not in got.read_as, got.read_as


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("is 45 nm too much for a spark plug in alloy 14mm gasket seat", "over what is on record"),
        ("spark plug 14mm gasket alloy 28 nm ok", "lies in what is on record"),
        ("31 nm ok for a 14mm gasket spark plug into alloy", "over what is on record"),
        ("12 nm for a 14mm gasket spark plug into alloy", "under what is on record"),
        ("would 90 lb ft be ok on wheel nuts m12x1.5", "lies in what is on record"),
        ("mate reckons 120 foot pounds on the wheel nuts 1/2-20 is he right", "over what is on record"),
        ("hub nut 150 lb ft", "Nothing is on record"),
    ],
)
def test_what_somebody_has_in_mind_is_held_against_the_record_and_never_the_figure(line: str, said: str) -> None:
    got = answer(line)
    assert isinstance(got.found, Sheet)
    assert said in got.found.decision.do
    assert all(f.basis != "stated" for f in got.found.decision.figures)
