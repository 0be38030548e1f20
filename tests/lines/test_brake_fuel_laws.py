"""The laws of a decision over many brakes, hand brakes, hoses and fuel supplies, sound and odd ones."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.answer.check import STOP
from gaugeblock.answer.decision import ASK
from gaugeblock.errors import GaugeblockError
from gaugeblock.lines.brakes.circuit import brake
from gaugeblock.lines.brakes.hand import handbrake
from gaugeblock.lines.brakes.hose import brake_hose
from gaugeblock.lines.fuel.line import fuel_line
from gaugeblock.lines.fuel.supply import fuel
from gaugeblock.lookup import look_up
from gaugeblock.units import in_unit

CIRCUIT = {
    "master": ("1 in", "22 mm"),
    "force": ("100 lbf", "300 N", "4000 lbf"),
    "ratio": ("6", "5"),
    "assist": ("4", "1"),
    "stroke": ("0.9 in", "0.1 in"),
    "kind": ("drum", "fixed caliper", "floating caliper", "slave cylinder"),
    "bore": ("7/8 in", "38 mm"),
    "pistons": ("2", "4", "3"),
    "wheels": ("2", "1"),
    "travel": ("2 mm", "9 mm"),
    "play": ("1 mm", "0 mm"),
    "pedal": ("5 in", "1 in"),
    "was": ("3/4 in", "7/8 in"),
    "rated": ("3000 psi", "500 psi"),
    "hose": ("16 in", "13 in"),
    "droop": ("14 in", "350 mm"),
    "lock": ("13 in", "400 mm"),
    "balance": ("B. Sample",),
}
LEVER = {
    "force": ("300 N", "60 lbf", "700 N"),
    "ratio": ("6", "7"),
    "cables": ("2", "1"),
    "travel": ("20 mm", "2 in"),
    "lever": ("150 mm", "10 mm"),
    "rated": ("3000 N", "300 lbf"),
}
SUPPLY = {
    "power": ("400 hp", "100 kW"),
    "fuel": ("gasoline", "diesel", "E85", "methanol", "ethanol"),
    "boost": ("boost", "no boost"),
    "consumption": ("0.5 lb/(hp*h)", "300 g/(kW*h)", "5 lb/(hp*h)"),
    "system": ("injection", "carburettor"),
    "density": ("6 lb/gal", "0.75 g/cm**3"),
    "viscosity": ("0.6 mm**2/s", "3 cSt"),
    "reserve": ("20 %", "0 %"),
    "pump": ("60 gph", "190 L/h", "9 gph"),
    "length": ("14 ft", "5 m"),
    "bore": ("5/16 in", "6 mm"),
    "loss": ("2 psi", "1 kPa"),
    "return_length": ("14 ft",),
    "return_bore": ("1/4 in",),
    "return_loss": ("1 psi",),
    "pressure": ("43 psi", "3 bar"),
    "filter": ("10 um", "100 micron"),
    "filter_flow": ("300 L/h", "20 gph"),
    "rated": ("100 psi", "30 psi"),
    "injectors": ("8", "6"),
    "injector": ("42 lb/h", "440 cc/min"),
    "duty": ("80 %", "100 %"),
    "line": ("drawn tube", "rubber hose"),
}
HOSE = {k: CIRCUIT[k] for k in ("hose", "droop", "lock")}


def some(options):
    """Any of these options, each with one of its values."""
    return st.fixed_dictionaries({}, optional={k: st.sampled_from(v) for k, v in options.items()})


ASKED = st.one_of(
    st.tuples(st.just(brake), some(CIRCUIT)),
    st.tuples(st.just(handbrake), some(LEVER)),
    st.tuples(st.just(brake_hose), some(HOSE)),
    st.tuples(st.just(fuel), some(SUPPLY)),
    st.tuples(st.just(fuel_line), some(SUPPLY)),
)


@given(ASKED)
@settings(max_examples=400)
def test_every_answer_decides_once_and_says_why(asked):
    answer, options = asked
    try:
        sheet = answer(**options)
    except GaugeblockError:
        return  # refused with a message of its own
    decision = sheet.decision
    names = {c.name for c in sheet.checks}
    assert set(decision.because) <= names
    assert all(set(q.checks) <= names for q in sheet.questions)
    failed = [c for c in sheet.checks if c.result == "not ok" and c.bears == STOP]
    figures = [f for f in decision.figures if f is not None]
    if decision.kind == "use":
        assert len(figures) == 1
        assert not failed
        assert not [c for c in sheet.checks if c.asks]
    if decision.kind == "stop":
        assert [c for c in sheet.checks if c.stops]
        assert decision.because
    if decision.kind == "ask":
        assert 1 <= len(figures) <= 3
        assert sheet.questions
        assert not [c for c in sheet.checks if c.stops]
    if decision.kind == "none":
        assert not figures
        assert decision.do


@given(some(SUPPLY), st.data())
def test_the_order_in_which_it_is_told_changes_nothing(options, data):
    keys = data.draw(st.permutations(list(options)))
    again = {k: options[k] for k in keys}
    try:
        first = fuel(**options)
    except GaugeblockError:
        return
    assert first.as_dict() == fuel(**again).as_dict()


@given(
    st.sampled_from(("5/8 in", "3/4 in", "7/8 in", "1 in", "22 mm")),
    st.sampled_from(("60 lbf", "90 lbf", "150 lbf", "500 N")),
    st.sampled_from(("4", "5", "6", "7")),
    st.sampled_from((None, "1", "2", "4", "6")),
)
def test_a_pressure_over_the_proof_of_a_hose_is_never_handed_over(
    master: str, force: str, ratio: str, assist: str | None
) -> None:
    proof = look_up("lines/materials", "proof_pressure_minimum", item="hydraulic brake hose", state="proof test")
    sheet = brake(master, force=force, ratio=ratio, assist=assist)
    pressure = next(f for f in sheet.figures if f.quantity == "line_pressure")
    is_over = in_unit(pressure.typical, pressure.unit, "psi") > in_unit(proof.typical, proof.unit, "psi")
    assert (sheet.decision.kind == ASK) == is_over
    assert not is_over or any(q.key == "rated" for q in sheet.questions)
