"""One circuit: its wire grows with length and current; what is open is asked; drop and heat each govern in turn."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import circuit
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.question import KINDS
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import wiring as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import refdata
from gaugeblock.units import from_base, to_base
from gaugeblock.wiring.conductor import SIZES
from gaugeblock.wiring.job import Circuit

KEYS = set(Circuit.keys)
SETTLED = {"drop": "3 %", "insulation": "GXL", "air": "60 degC", "bundle": "1", "back": "wire"}
LETTERS = st.sampled_from(["GPT", "GXL", "TXL", "105 degC", "60 degC", "125 C", "200 degC"])


def asked(current: str = "28 A", length: str = "12 ft", voltage: str = "12 V", **more: str | None) -> Sheet:
    return circuit(current, length, voltage, **{**SETTLED, **more})  # type: ignore[arg-type]


def gauge(sheet: Sheet) -> float:
    assert sheet.decision.kind == USE, sheet.decision
    return sheet.decision.figures[0].typical


def keeps_form(sheet: Sheet) -> None:
    decision = sheet.decision
    names = {c.name for c in sheet.checks}
    low, high = {USE: (1, 1), ASK: (1, 3), STOP: (1, 3), NONE: (0, 0)}[decision.kind]
    assert low <= len(decision.candidates) <= high
    assert set(decision.because) <= names
    assert decision.kind == USE or decision.do.endswith((".", "?"))
    assert decision.kind != ASK or all(c.when and c.then for c in decision.candidates)
    assert decision.kind != USE or not any(c.asks or c.stops for c in sheet.checks)
    assert decision.kind != STOP or any(c.stops for c in sheet.checks)
    assert all(q.kind in KINDS and q.key in KEYS and set(q.checks) <= names for q in sheet.questions)
    assert len({f.id for f in sheet.figures}) == len(sheet.figures)


def test_a_settled_circuit_names_its_wire_and_its_fuse() -> None:
    sheet = asked()
    keeps_form(sheet)
    assert (sheet.decision.kind, sheet.decision.figures[0].text) == (USE, "6")
    assert sheet.figure("fuse_rating").typical == 40  # of which 28 A, should it last, is no more than 80 %
    assert "the drop governs" in sheet.decision.do
    assert "4 AWG" in sheet.decision.do
    assert "16 mm2" in sheet.decision.do


def test_heat_governs_a_short_wire() -> None:
    sheet = asked(length="1 ft", drop="10 %", insulation="GPT", bundle="10")
    assert "the heat governs" in sheet.decision.do
    assert sheet.figure("voltage_drop").typical < 0.1


def test_what_nobody_gave_is_asked_with_the_bigger_wire_first() -> None:
    sheet = circuit("28 A", "12 ft", "12 V", drop="3 %")
    keeps_form(sheet)
    assert sheet.decision.kind == ASK
    assert [q.key for q in sheet.questions] == ["insulation", "air", "bundle", "return"]
    numbers = [f.typical for f in sheet.decision.figures]
    assert numbers == sorted(numbers)


def test_what_changes_nothing_is_not_asked() -> None:
    """Half an ampere over a foot: the smallest wire of the table, whatever is open but the heat by the engine."""
    sheet = circuit("0.5 A", "1 ft", "12 V", insulation="GXL")
    assert sheet.decision.kind == USE
    assert sheet.questions == ()


def test_insulation_that_the_air_melts_is_no_candidate_and_is_said() -> None:
    sheet = asked(insulation="GPT", air="by the engine")
    keeps_form(sheet)
    assert "No wire of GPT" in sheet.decision.do
    none_ = asked(insulation="GPT", air="110 degC")
    assert (none_.decision.kind, none_.questions[0].key) == (NONE, "insulation")


@pytest.mark.parametrize(
    ("key", "ways"),
    [
        ("air", {"50 degC": "cabin", "105 degC": "engine"}),
        ("drop", {"3 %": "3 %", "10 %": "10 %"}),
        ("back", {"wire": "back by a wire", "body": "back through"}),
    ],
)
def test_a_candidate_says_what_it_loses_as_it_does_once_its_way_is_settled(key: str, ways: dict[str, str]) -> None:
    candidates = asked(**{key: None}).decision.candidates
    assert len(candidates) == 2
    for way, said in ways.items():
        (candidate,) = [c for c in candidates if said in c.when]
        lost = asked(**{key: way}).figure("voltage_drop")
        metric, loses, _ = candidate.then.split("; ")
        assert loses == f"loses {to_base(lost.typical, lost.unit):.2f} V"
        assert metric.startswith("or ")
        assert metric.endswith(" mm2")


def test_a_wire_that_is_there_stops_when_it_loses_too_much_and_when_it_is_hot() -> None:
    """One gauge is named, that of drop and heat together."""
    keeps_form(asked(wire="8 AWG"))
    assert asked(wire="8 AWG").decision.kind == STOP
    assert asked(wire="6 AWG").decision.kind == USE
    assert asked(wire="2/0").decision.kind == USE
    assert asked(length="1 ft", wire="12 AWG").decision.kind == USE
    hot = asked(length="1 ft", drop="10 %", insulation="GPT", bundle="10", wire="10 AWG")
    keeps_form(hot)
    assert hot.decision.kind == STOP
    needed = hot.decision.figures[0].text
    assert f"{needed} AWG is needed" in hot.decision.do
    assert asked(length="1 ft", drop="10 %", insulation="GPT", bundle="10", wire=f"{needed} AWG").decision.kind == USE


def test_the_fuse_is_no_larger_than_wire_and_connector_allow() -> None:
    sheet = asked(connector="40 A")
    assert sheet.figure("fuse_rating_maximum").typical == 40
    assert asked(connector="25 A").decision.kind == STOP
    assert asked(fuse="20 A").decision.kind == STOP
    big = asked(length="1 ft", fuse="60 A")
    assert big.figure("current_maximum").typical >= 60


@pytest.mark.parametrize(
    "more",
    [{"drop": "30 %"}, {"drop": "0 V"}, {"air": "warm"}, {"bundle": "none"}, {"back": "air"}, {"wire": "thick"}],
)
def test_what_cannot_be_read_is_refused(more: dict[str, str]) -> None:
    with pytest.raises(InputError):
        asked(**more)


@pytest.mark.parametrize(("key", "typed"), [("current", "5000 A"), ("length", "2000 ft"), ("voltage", "0.1 V")])
def test_what_is_doubtful_is_asked(key: str, typed: str) -> None:
    sheet = asked(**{key: typed})
    keeps_form(sheet)
    assert (sheet.decision.kind, sheet.questions[0].key) == (NONE, key)


MORE = st.fixed_dictionaries(
    {},
    optional={
        "drop": st.sampled_from(["3 %", "10 %", "0.5 V"]),
        "insulation": LETTERS,
        "air": st.sampled_from(["30 degC", "80 degC", "by the engine", "in the cabin", "150 degF"]),
        "bundle": st.sampled_from(["1", "3", "5", "12", "40"]),
        "back": st.sampled_from(["wire", "body"]),
        "fuse": st.sampled_from(["10 A", "60 A"]),
        "connector": st.sampled_from(["15 A", "80 A"]),
        "wire": st.sampled_from(["18 AWG", "10 AWG", "3 AWG", "2/0"]),
    },
)


@given(st.floats(0.05, 300), st.floats(0.1, 14), st.sampled_from(["6 V", "12 V", "24 V"]), MORE)
@settings(max_examples=60, deadline=None)
def test_every_answer_keeps_its_form_and_its_own_limits(
    current: float, length: float, voltage: str, more: dict[str, str]
) -> None:
    sheet = circuit(f"{current:.2f} A", f"{length:.2f} m", voltage, **more)  # type: ignore[arg-type]
    keeps_form(sheet)
    if sheet.decision.kind == USE:
        assert sheet.figure("voltage_drop").typical <= sheet.figure("voltage_drop_maximum").typical * (1 + 1e-9)
        assert sheet.figure("current_maximum").typical >= sheet.figure("circuit_current").typical * (1 - 1e-9)
        if any(f.quantity == "fuse_rating" for f in sheet.figures):
            assert sheet.figure("fuse_rating").typical <= sheet.figure("fuse_rating_maximum").typical * (1 + 1e-9)


def need(sheet: Sheet) -> float:
    """Gauge number that is needed; below all of them where none of the table will do."""
    return -99.0 if sheet.decision.kind == NONE else gauge(sheet)


@given(st.floats(0.5, 150), st.floats(0.2, 10), st.floats(1.0, 1.4), LETTERS)
@settings(max_examples=40, deadline=None)
def test_longer_never_loses_less_and_more_current_never_takes_a_smaller_wire(
    current: float, length: float, more: float, letters: str
) -> None:
    here = asked(f"{current:.3f} A", f"{length:.3f} m", insulation=letters, air="40 degC")
    longer = asked(f"{current:.3f} A", f"{length * more:.3f} m", insulation=letters, air="40 degC")
    stronger = asked(f"{current * more:.3f} A", f"{length:.3f} m", insulation=letters, air="40 degC")
    assert need(longer) <= need(here)
    assert need(stronger) <= need(here)


@given(st.floats(0.5, 100), st.floats(0.5, 40))
@settings(max_examples=25, deadline=None)
def test_feet_and_metres_and_celsius_and_fahrenheit_agree(current: float, feet: float) -> None:
    one = asked(f"{current:.2f} A", f"{feet:.3f} ft", air="60 degC")
    other = asked(f"{1000 * current:.0f} mA", f"{feet * 0.3048:.7f} m", air="140 degF")
    assert need(one) == need(other)


def test_the_wires_of_the_answer_fall_in_resistance_and_rise_in_current() -> None:
    from gaugeblock.wiring.conductor import cold_resistance, table_current

    data = refdata()
    ohms = [cold_resistance(s, data).typical for s in SIZES]
    assert ohms == sorted(ohms, reverse=True)
    for column in (60, 75, 80, 90, 105, 125, 200):
        amperes = [table_current(s, f"{column} degC insulation", data).typical for s in SIZES]
        assert amperes == sorted(amperes)


def test_a_million_circuits_at_once_are_the_same_as_one_by_one() -> None:
    np = pytest.importorskip("numpy")
    amperes = np.linspace(1.0, 60.0, 7)
    hot = calc.conductor_temperature(313.15, 398.15, amperes, 70.0)
    lost = calc.voltage_drop(calc.resistance_hot(to_base(1.26, "ohm/1000ft"), hot), 3.0, amperes, 2)
    for one, each in zip(amperes, lost, strict=True):
        t = calc.conductor_temperature(313.15, 398.15, float(one), 70.0)
        assert calc.voltage_drop(
            calc.resistance_hot(to_base(1.26, "ohm/1000ft"), t), 3.0, float(one), 2
        ) == pytest.approx(float(each))
    factors = calc.ambient_factor(398.15, np.array([303.15, 400.0]), 303.15)
    assert factors.tolist() == pytest.approx([1.0, 0.0])
    assert from_base(float(hot[0]), "degC") > 40


@pytest.mark.parametrize("current", ["28 A", "100 W"])
def test_twelve_volts_are_taken_where_none_were_said_and_the_title_says_so(current: str) -> None:
    taken, said = circuit(current, "12 ft", **SETTLED), asked(current)  # type: ignore[arg-type]
    assert taken.decision.figures[0].text == said.decision.figures[0].text
    assert "12 V (taken" in taken.title
    assert "taken" not in said.title
    assert gauge(taken) < gauge(asked(current, voltage="24 V"))  # more volts take a smaller wire: a greater number


def test_the_fuse_of_a_power_says_that_its_volts_were_taken() -> None:
    from gaugeblock import fuse

    assert "12 V (taken" in fuse("110 W").title
    assert "taken" not in fuse("110 W", voltage="12 V").title


@pytest.mark.parametrize("wire", ["18 AWG", "16 AWG", "14 AWG", "10 AWG"])
@pytest.mark.parametrize("current", ["9.2 A", "12 A", "25 A", "40 A"])
@pytest.mark.parametrize("fuse", [None, "7.5 A", "20 A"])
def test_no_fuse_is_ordered_for_a_wire_that_is_stopped(fuse: str | None, current: str, wire: str) -> None:
    sheet = circuit(current=current, length="10 ft", wire=wire, fuse=fuse)
    told = " ".join(c.text for c in sheet.cautions if "fuse at the battery" in c.text)
    assert bool(re.search(r"Put a [0-9.]+ A fuse", told)) == (sheet.decision.kind != "stop")
    assert "fuse at the battery" in told
