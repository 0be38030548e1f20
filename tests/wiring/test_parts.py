"""The parts of a circuit: starter cable, earth through the body, relay, wires side by side, a metric wire, the page."""

from __future__ import annotations

import pytest

from gaugeblock import circuit, domains, drop, fuse
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.tables.load import refdata
from gaugeblock.wiring import page
from gaugeblock.wiring.job import STARTER
from wiring.test_circuit import asked, gauge, keeps_form


def starter(**more: str) -> Sheet:
    given = {"current": "200 A", "length": "5 ft", "voltage": "12 V", "insulation": "125 degC", "air": "80 degC"}
    return circuit(**{**given, **more}, kind="starter cable")  # type: ignore[arg-type]


def test_a_starter_cable_goes_by_the_manuals_drop_of_its_length() -> None:
    sheet = starter()
    keeps_form(sheet)
    assert sheet.decision.kind == USE
    limit = sheet.figure("voltage_drop_maximum")
    assert (limit.typical, limit.source) == (0.2, "TM3820-256")
    assert starter(length="2 ft").figure("voltage_drop_maximum").typical == 0.1
    assert not [f for f in sheet.figures if f.quantity in ("fuse_rating", "current_maximum", "fuse_distance_maximum")]
    assert sheet.cautions[0].severity == "injury"


def test_a_starter_cable_of_a_voltage_without_a_manual_wants_its_drop() -> None:
    with pytest.raises(InputError):
        starter(voltage="24 V")
    assert starter(voltage="24 V", drop="0.5 V").decision.kind == USE


FOREIGN = {"bundle": "2", "earth_drop": "0.1 V", "fuse": "30 A", "relay": "40 A", "wires": "2"}


@pytest.mark.parametrize(("key", "typed"), FOREIGN.items())
def test_what_does_not_belong_to_a_starter_cable_is_refused(key: str, typed: str) -> None:
    with pytest.raises(InputError):
        starter(**{key: typed})


def test_a_starter_cable_warms_by_the_heat_it_keeps() -> None:
    """By hand: 200 A, AWG 1: 0.15 ohm/1000 ft = 0.000492 ohm/m at 20 degC, 314.5/254.5 of it at 80 degC; 15 s.

    40000 x 0.000608 x 15 / (3.45 x 42.41) = 2.49 degC.
    """
    assert starter().figure("conductor_temperature").typical == pytest.approx(82.49, abs=0.005)


def test_the_body_leaves_the_whole_drop_to_the_wire_and_asks_what_it_loses() -> None:
    body = asked(back="body")
    keeps_form(body)
    assert gauge(body) > gauge(asked())
    left = next(f for f in body.figures if f.rule and f.rule.name == "voltage_left")
    assert left.typical == pytest.approx(0.36 - body.figure("voltage_drop").typical)
    assert [q.key for q in body.questions] == ["earth_drop"]
    measured = asked(back="body", earth_drop="0.1 V")
    assert measured.questions == ()
    assert measured.figure("voltage_drop_maximum").typical == pytest.approx(0.26)
    assert gauge(measured) <= gauge(body)


@pytest.mark.parametrize("more", [{"earth_drop": "0.1 V"}, {"back": "body", "earth_drop": "0.5 V"}])
def test_an_earth_that_loses_all_or_is_not_there_is_refused(more: dict[str, str]) -> None:
    with pytest.raises(InputError):
        asked(**more)


def test_a_relay_that_is_too_small_stops() -> None:
    assert asked(relay="40 A").decision.kind == USE
    assert asked(relay="20 A").decision.kind == STOP
    assert asked(relay="40 A").figure("coil_current").high == 200


def test_wires_side_by_side_share_the_current_and_each_has_its_fuse() -> None:
    two = asked(wires="2", bundle="2")
    keeps_form(two)
    assert gauge(two) > gauge(asked())
    assert two.figure("fuse_rating").typical == 20
    assert "Fuse each with 20 A" in two.decision.do
    assert any("side by side" in c.text for c in two.cautions if c.severity == "injury")
    assert gauge(asked(wires="1")) == gauge(asked())


@pytest.mark.parametrize(("metric", "kind"), [("16 mm2", USE), ("13 mm2", STOP), ("10 mm2", STOP), ("35 mm2", USE)])
def test_a_metric_wire_counts_as_the_gauge_that_has_no_more_copper(metric: str, kind: str) -> None:
    """6 AWG is needed, 13.3 mm2."""
    assert asked(wire=metric).decision.kind == kind


def test_the_metric_size_that_is_named_would_do() -> None:
    for current in ("2 A", "9 A", "28 A", "60 A", "110 A"):
        do = asked(current).decision.do
        metric = do.split(" as metric wire")[0].rsplit(" ", 2)[-2:]
        assert asked(current, wire=" ".join(metric)).decision.kind == USE


def test_a_vehicle_table_that_allows_less_governs() -> None:
    """AWG 10: the boat rule's 70 A of 125 degC insulation at 40 degC is 66 A; a truck part maker allows 58 A."""
    sheet = asked("40 A", "1 ft", air="40 degC", fuse="58 A")
    assert (sheet.decision.figures[0].text, sheet.figure("current_maximum").typical) == ("10", 58)
    assert asked("40 A", "1 ft", air="40 degC", fuse="60 A").decision.figures[0].text == "8"
    hot = asked("30 A", "1 ft", air="90 degC")
    assert hot.figure("current_maximum").rule.name == "derated_current"  # type: ignore[union-attr]


def test_pvc_is_held_against_the_trailer_table_of_its_air() -> None:
    """AWG 12 in 150 degF: a trailer lamp maker allows 24 A; the boat rule's 35 A x sqrt(14.4/50), 18.8 A, governs."""
    sheet = asked("12 A", "1 ft", insulation="GPT", air="150 degF")
    assert sheet.figure("current_maximum").typical == pytest.approx(35 * ((80 - 65.5556) / 50) ** 0.5, rel=1e-4)


def test_insulation_that_two_sources_rate_apart_is_judged_by_the_lower() -> None:
    """GPT: 85 degC by a summary of the standard, 80 by two suppliers; TWP: a range of 85 to 105, from memory."""
    assert asked(insulation="GPT", air="79 degC", length="1 ft").decision.kind == USE
    assert asked(insulation="GPT", air="82 degC", length="1 ft").decision.kind == NONE
    assert asked(insulation="TWP", air="90 degC", length="1 ft").decision.kind == NONE
    factor = asked(insulation="TWP", air="60 degC", length="1 ft").figure("ambient_factor")
    assert factor.typical == pytest.approx((25 / 55) ** 0.5)
    assert factor.evidence.checked == "memory"


def test_cold_air_allows_no_more_than_the_table() -> None:
    assert asked(air="-10 degC", length="1 ft").figure("ambient_factor").typical == 1


def test_a_load_that_fills_its_fuse_is_warned_of() -> None:
    assert any("80 % at most" in c.text for c in asked("28 A", fuse="30 A").cautions)
    assert not any("80 % at most" in c.text for c in asked("28 A").cautions)
    assert not any("80 % at most" in c.text for c in asked("20 A", fuse="30 A").cautions)


@pytest.mark.parametrize("amps", [0.5, 2, 3, 4.01, 7, 9, 12, 16, 18, 22, 24.1, 28, 30, 33, 45, 60])
def test_a_circuit_gets_the_fuse_that_is_told_for_a_load_that_lasts(amps: float) -> None:
    """The same fuse, whichever way it is asked; common practice: a lasting load takes 80 % of it at most."""
    lasting = fuse(current=f"{amps} A").decision.figures[0]
    made = asked(f"{amps} A", length="2 ft")
    assert made.figure("fuse_rating").id == lasting.id
    assert amps <= 0.8 * lasting.typical * (1 + 1e-9)
    assert not any("of its fuse" in c.text for c in made.cautions)


def test_wires_that_share_are_all_in_the_bundle() -> None:
    with pytest.raises(InputError):
        asked(wires="3", bundle="2")


def test_a_drop_in_volts_that_is_most_of_the_voltage_is_doubted() -> None:
    sheet = asked(drop="5 V")
    assert (sheet.decision.kind, sheet.questions[0].key) == (NONE, "drop")


# The job


def job_of(text: str) -> object:
    return domains.parse_job(f'[job]\nvehicle = "EXAMPLE"\n{text}', hooks=domains.hooks(refdata()))


def test_an_item_of_the_job_has_its_card_and_its_diagram() -> None:
    job = job_of(STARTER.replace("\n#", "\n").removeprefix("#"))
    (one,) = job.circuits  # type: ignore[attr-defined]
    made = page.item(one, job.shop, refdata())  # type: ignore[attr-defined]
    keeps_form(made.sheet)
    assert made.sheet.decision.kind == USE
    assert made.card is not None
    assert made.card.boxes
    assert made.card.condition == "or 2.5 mm2"
    assert made.sheet.drawings[0].svg.startswith("<svg")


@pytest.mark.parametrize("back", ["wire", "body"])
@pytest.mark.parametrize("length", ["2 ft", "5 ft", "12 ft"])
def test_however_the_current_of_a_starter_comes_back_its_cable_is_judged_alone(back: str, length: str) -> None:
    """In a job, at the bench and by --kind alike: the cable back is one by itself, and the body is no cable."""
    plain, told = starter(length=length), starter(length=length, back=back)
    assert told.decision == plain.decision
    given = {"current": "200 A", "length": length, "voltage": "12 V", "insulation": "125 degC", "air": "80 degC"}
    lines = [f'{key} = "{text}"' for key, text in {**given, "kind": "starter cable", "return": back}.items()]
    job = job_of("\n".join(['[[circuits]]\nname = "starter"', *lines]))
    (one,) = job.circuits  # type: ignore[attr-defined]
    assert page.item(one, job.shop, refdata()).sheet.decision == plain.decision  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("more", "kind", "key"),
    [
        ("", NONE, "current"),
        ('current = "28 A"\nlength = "4 ft"\nvoltage = "12 V"\nwire = "4"', NONE, "wire"),
        ('current = "28 A"\nlength = "4 ft"', NONE, "voltage"),
        ('current = "28 A"\nlength = "4 ft"\nvoltage = "12 V"\ninsulation = "XYZ9"', NONE, "insulation"),
        ('current = "28 A"\nlength = "4 ft"\nvoltage = "12 V"\nreturn = "air"', NONE, "return"),
        ('current = "28 A"\nlength = "4 ft"\nvoltage = "12 V"', ASK, "insulation"),
    ],
)
def test_what_is_wrong_with_an_item_is_its_question(more: str, kind: str, key: str) -> None:
    job = job_of(f'[[circuits]]\nname = "fan"\n{more}')
    (one,) = job.circuits  # type: ignore[attr-defined]
    sheet = page.item(one, job.shop, refdata()).sheet  # type: ignore[attr-defined]
    assert sheet.decision.kind == kind
    assert key in [q.key for q in sheet.questions]


BOOT = {"kind": "starter cable", "insulation": "GXL", "air": "50 degC"}


@pytest.mark.parametrize(("amps", "feet"), [(150, 10), (200, 16), (300, 8), (500, 7)])
def test_a_battery_in_the_boot_has_a_cable(amps: int, feet: int) -> None:
    """By the looser of two manuals: 0.4 V for the positive cable with its connections (TM671)."""
    sheet = circuit(f"{amps} A", f"{feet} ft", voltage="12 V", **BOOT)  # type: ignore[arg-type]
    assert sheet.decision.kind in (ASK, USE)
    smallest = sheet.decision.figures[-1].text
    for figure in sheet.decision.figures:
        found = drop(f"{figure.text} AWG", f"{amps} A", f"{feet} ft", back="body", **BOOT)  # type: ignore[arg-type]
        lost = found.decision.figures[0].typical
        assert lost <= 0.4
    assert smallest
    assert not any("3 %" in q.text for q in sheet.questions)
