"""A wire is as warm as it may be, and never hotter than it stands: over gauges, currents and the ways that it lies."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import InputError, circuit, drop, fuse, reach, wire_size
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.tables.load import refdata
from gaugeblock.wiring import conductor, heat
from gaugeblock.wiring.conductor import SIZES
from gaugeblock.wiring.keys import wire_of

DATA = refdata()
GAUGES = [f"{size.removeprefix('AWG ')} AWG" for size in SIZES]
METRIC = ["1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2", "25 mm2"]
LIES = st.fixed_dictionaries(
    {},
    optional={
        "insulation": st.sampled_from(["GPT", "GXL", "105 degC", "125 degC"]),
        "air": st.sampled_from(["30 degC", "50 degC", "70 degC", "by the engine", "in the cabin"]),
        "bundle": st.sampled_from(["1", "3", "10", "40"]),
    },
)
SAID = {"insulation": "GXL", "air": "60 degC", "bundle": "1", "back": "wire"}
# The most that any table of ours lets a gauge carry in the air that the table is made for (30 degC, one wire alone),
# with cross-linked insulation: 33 CFR 183.425 Table 5, column 125 degC, or the truck part maker's table where that is
# lower.
MOST = {"18 AWG": 18, "16 AWG": 24, "14 AWG": 34, "12 AWG": 42, "10 AWG": 58, "8 AWG": 80, "6 AWG": 110, "4 AWG": 170}


def serves(said: dict[str, str]) -> bool:
    """Whether the insulation bears the air."""
    try:
        return bool(heat.ways_of(heat.Placed(dict(said), DATA), DATA))
    except InputError:
        return False


@pytest.mark.parametrize("wire", MOST)
def test_a_wire_that_its_current_overheats_everywhere_stops(wire: str) -> None:
    """Of every answer that names a wire and a current: a hair over the most that any table allows, and far over it."""
    for amps in (MOST[wire] + 0.5, 2 * MOST[wire], 5 * MOST[wire]):
        if amps > 590:
            continue
        current = f"{amps:g} A"
        assert drop(wire, current, "1 m").decision.kind == STOP
        assert reach(wire, current, "0.5 V", back="body").decision.kind == STOP
        assert circuit(current, "1 m", "12 V", wire=wire).decision.kind in (STOP, NONE)
        assert amps > 500 or fuse(current, wire=wire).decision.kind == STOP
    current = f"{MOST[wire] * 0.99:.3f} A"
    assert drop(wire, current, "1 m").decision.kind != STOP
    assert reach(wire, current, "0.5 V").decision.kind != STOP


@given(st.sampled_from(GAUGES), st.floats(0.5, 400), LIES)
@settings(max_examples=80, deadline=None)
def test_what_the_fuse_of_a_load_says_of_a_wire_agrees_with_the_wires_own_largest(
    wire: str, amps: float, said: dict[str, str]
) -> None:
    """Where a wire stands no fuse that carries the load, even where it lies coolest, it stops; where it stands one in
    a way that was named, it does not.
    """
    if not serves(said):
        return
    sheet = fuse(f"{amps:.2f} A", wire=wire, **said)
    largest = [base(f) for f in fuse(wire=wire, **said).decision.figures]
    made = sorted({float(r.cells["value"]) for r in DATA.table("wiring/fuses").by_quantity["fuse_rating"]})
    carrying = [one for one in made if one >= round(amps, 2)]
    if not carrying:
        return
    if largest and max(largest) >= carrying[0]:
        assert sheet.decision.kind != STOP
    lies = heat.ways_of(heat.Placed(dict(said), DATA), DATA)
    size = f"AWG {wire.removesuffix(' AWG')}"
    if base(heat.most(size, lies, DATA)) < round(amps, 2) * (1 - 1e-9):
        assert sheet.decision.kind == STOP
        needed = sheet.decision.figures
        assert not needed or needed[0].typical < conductor.number_of(size)


def test_habit_never_stops_a_wire() -> None:
    """The fuse that habit takes for a load that lasts is larger than the wire stands; the least one is not."""
    assert fuse("13 A", wire="18 AWG", lasts="yes").decision.kind == ASK
    assert drop("12 AWG", "41.9 A", "1 m", back="body").decision.kind != STOP


@given(st.sampled_from(GAUGES + METRIC), st.floats(0.5, 200), st.floats(0.3, 4), LIES)
@settings(max_examples=60, deadline=None)
def test_loses_up_to_is_the_most_of_all_that_was_left_open(
    wire: str, amps: float, metres: float, said: dict[str, str]
) -> None:
    """Every way of what was not said loses no more than what is said to be the most, and its reach is no shorter."""
    if not serves(said):
        return
    most = drop(wire, f"{amps:.2f} A", f"{metres:.2f} m", back="body", **said)
    if most.decision.kind in (STOP, NONE):
        return
    reached = reach(wire, f"{amps:.2f} A", "0.5 V", back="body", **said).decision.figures[0]
    for insulation in ("GPT", "GXL"):
        for air in ("30 degC", "50 degC", "105 degC"):
            one = {"insulation": insulation, "air": air, "bundle": "1", **said}
            if not serves(one):
                continue
            sheet = drop(wire, f"{amps:.2f} A", f"{metres:.2f} m", back="body", **one)
            if sheet.decision.kind in (STOP, NONE):
                continue
            assert sheet.decision.figures[0].typical <= most.decision.figures[0].typical * (1 + 1e-9)
            least = reach(wire, f"{amps:.2f} A", "0.5 V", back="body", **one).decision.figures[0]
            assert base(least) >= base(reached) * (1 - 1e-9)


@given(st.floats(1, 80), st.floats(0.5, 6), st.sampled_from(["40 degC", "60 degC", "90 degC"]))
@settings(max_examples=40, deadline=None)
def test_a_wire_loses_what_its_circuit_says_of_it(amps: float, metres: float, air: str) -> None:
    """One value: the same wire in the same air has one drop, whichever answer is asked."""
    said = {**SAID, "air": air}
    sheet = circuit(f"{amps:.2f} A", f"{metres:.2f} m", "12 V", drop="10 %", **said)
    if sheet.decision.kind != USE:
        return
    wire = f"{sheet.decision.figures[0].text} AWG"
    lost = drop(wire, f"{amps:.2f} A", f"{metres:.2f} m", **said)
    assert base(lost.figure("voltage_drop")) == pytest.approx(base(sheet.figure("voltage_drop")))
    assert lost.figure("conductor_temperature").typical == pytest.approx(sheet.figure("conductor_temperature").typical)


@pytest.mark.parametrize("wire", GAUGES)
def test_the_temperature_that_was_taken_is_said(wire: str) -> None:
    sheet = drop(wire, "2 A", "1 m", back="body")
    assert "degC" in sheet.decision.do
    assert "at 20 degC" not in sheet.decision.do


@pytest.mark.parametrize("number", ["4", "6", "16", "18", "2.5", " 10 ", "04"])
def test_a_bare_number_is_no_wire(number: str) -> None:
    """It is a gauge to one shop and an area to another, five times apart: every answer that takes a wire refuses it."""
    for ask in (
        lambda: drop(number, "20 A", "3 m"),
        lambda: reach(number, "20 A", "0.5 V"),
        lambda: fuse(wire=number),
        lambda: fuse("20 A", wire=number),
        lambda: wire_size(number),
        lambda: circuit("20 A", "3 m", "12 V", wire=number),
    ):
        with pytest.raises(InputError) as refused:
            ask()
        assert f"{number.strip()} mm2" in str(refused.value)
    assert wire_of(f"{number.strip()} mm2") is not None


@pytest.mark.parametrize(("typed", "gauge"), [("2/0", -1), ("00", -1), ("0", 0), ("SAE 10", 10), ("10 ga", 10)])
def test_what_only_a_gauge_is_written_like_is_one(typed: str, gauge: int) -> None:
    wire = wire_of(typed)
    assert wire is not None
    assert (wire.unit, int(wire.value)) == ("AWG", gauge)


@given(st.sampled_from(["6 V", "12 V", "24 V"]), st.floats(0.01, 2))
@settings(max_examples=40, deadline=None)
def test_an_allowed_drop_that_no_circuit_has_is_questioned(system: str, share: float) -> None:
    volts = round(float(system.split(maxsplit=1)[0]) * share, 3)
    sheets = [
        reach("10 AWG", "20 A", f"{volts} V", voltage=system, back="body"),
        circuit("20 A", "1 m", system, drop=f"{volts} V", **SAID),
    ]
    for sheet in sheets:
        asked = [q.key for q in sheet.questions] == ["drop"] and sheet.decision.kind == NONE
        assert asked == (volts > 0.2 * float(system.split(maxsplit=1)[0]) * (1 + 1e-9))


@given(st.floats(1, 14.9), st.sampled_from(["6 V", "12 V", "24 V"]))
@settings(max_examples=40, deadline=None)
def test_a_drop_of_all_that_the_battery_has_is_questioned(metres: float, system: str) -> None:
    sheet = drop("18 AWG", "17 A", f"{metres:.2f} m", voltage=system, back="wire")
    if sheet.decision.kind == NONE:
        assert [q.key for q in sheet.questions] == ["length"]
    else:
        assert sheet.decision.figures[0].typical < float(system.split(maxsplit=1)[0])
