"""The answer ``circuit``: the smallest wire by drop and by heat, which of them governs, and its fuse."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import Measure
from gaugeblock.wiring import checks, conductor, fuse
from gaugeblock.wiring.answering import VERB, Answer
from gaugeblock.wiring.conductor import SIZES, Load, Sized
from gaugeblock.wiring.keys import Circuit, circuit_of, too_great, volts_said
from gaugeblock.wiring.settings import LIMITS, Ways

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure


def circuit(
    current: str,
    length: str,
    voltage: str | None = None,
    *,
    drop: str | None = None,
    insulation: str | None = None,
    air: str | None = None,
    bundle: str | None = None,
    back: str | None = None,
    earth_drop: str | None = None,
    fuse: str | None = None,
    connector: str | None = None,
    relay: str | None = None,
    wire: str | None = None,
    wires: str | None = None,
    kind: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The wire and the fuse of one circuit.

    Parameters are text as people write them: ``current`` of the load (``28 A``), or its power
    (``100 W``); ``length`` of the wire from the
    source to the load, one way; ``voltage`` of the system, 12 V unless given;
    ``drop`` that is allowed, as a share or in volts;
    ``insulation`` a temperature or the letters of the cable (``GXL``); ``air`` along the wire, a temperature or
    ``by the engine``, ``in the cabin``; ``bundle`` how many loaded wires lie together; ``back`` ``wire`` or ``body``,
    ``earth_drop`` what the body was measured to lose; ``fuse``, ``connector`` and ``relay`` in amperes; ``wire`` a
    wire that is there already (``10 AWG``, ``6 mm2``); ``wires`` how many equal ones share the current; ``kind``
    ``load`` or ``starter cable``.

    Returns a Sheet: the gauge of the smallest wire. What is left open is worked out each way and asked where it
    changes the wire. Currents are those of the boat rule, or of a truck or trailer table where these are lower.

    Raises InputError, UnitError or LookupMiss for what cannot be read.

    >>> got = circuit("20 A", "3 m", "12 V", drop="3 %", insulation="GXL", air="40 degC", bundle="1", back="wire")
    >>> got.decision.figures[0].text
    '8'
    """
    data = data or refdata()
    asked = {
        "kind": kind,
        "current": current,
        "length": length,
        "voltage": voltage,
        "drop": drop,
        "insulation": insulation,
        "air": air,
        "bundle": bundle,
        "return": back,
        "earth_drop": earth_drop,
        "fuse": fuse,
        "connector": connector,
        "relay": relay,
        "wire": wire,
        "wires": wires,
    }
    return judged(circuit_of(asked, data), asked, data)


def judged(of: Circuit, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``circuit``, of what was read."""
    voltage = stated(of.voltage, "system_voltage", "voltage", data)
    current = checks.current_of(of, data)
    length = stated(of.length, "wire_length", "length", data)
    name = of.kind if of.is_starter else "circuit"
    load = of.current.text if of.power is None else f"{of.power.text} ({of.current.text})"
    title = f"{name} of {load}, {of.length.text} at {volts_said(of.voltage, asked.get('voltage'))}"
    given = [current, voltage, length]
    doubts = _doubts(of, data)
    if doubts:
        return questioned(title, asked, doubts, VERB, data, given)
    wired = _load(of, current, length, data)
    ways = Ways(of, voltage, data)
    every = [conductor.sized(s, wired, data) for s in ways.settings()]
    if not any(s.is_listed for s in every):
        return _unlisted(title, every, given, asked, data)
    return Answer(title, of, wired, ways, every, data).sheet(asked)


def _load(of: Circuit, current: Figure, length: Figure, data: Refdata) -> Load:
    if of.is_starter:
        time = look_up(LIMITS, "cranking_time", data=data, subject="cranking", case="one try")
        return Load(current, None, length, time)
    if of.wires is None or of.wires == 1:
        return Load(current, fuse.fuse_for(of, current, data), length)
    many = Measure(units.parse_number(str(of.wires)), "wires", f"{of.wires} wires")
    count = stated(many, "wire_count", "wires", data)
    key = {"current": of.current.text, "wires": many.text}
    number = units.from_base(base(current) / of.wires, current.unit)
    inputs = (current, count)
    each = derived("current_of_each_wire", "circuit_current", number, current.unit, inputs, data, key=key)
    return Load(each, fuse.fuse_for(of, each, data), length)


def _doubts(of: Circuit, data: Refdata) -> dict[str, str]:
    read = {
        "current": (of.power or of.current, "load_power" if of.power else "circuit_current"),
        "length": (of.length, "wire_length"),
        "voltage": (of.voltage, "system_voltage"),
        "insulation": (of.insulation, "insulation_temperature"),
        "air": (of.air, "air_temperature"),
        "fuse": (of.fuse, "fuse_rating"),
        "connector": (of.connector, "connector_current_maximum"),
        "relay": (of.relay, "relay_current_maximum"),
    }
    out = {}
    for key, (measure, quantity) in read.items():
        if isinstance(measure, Measure) and not is_plausible(measure, quantity, data):
            out[key] = did_you_mean(f"{measure.text} is no usual {quantity.replace('_', ' ')}", ())
    if of.drop is not None and (doubt := too_great(of.drop, of.voltage, data)):
        out["drop"] = doubt
    return out


def _by_drop(every: list[Sized]) -> str:
    """What to do where no wire will do: where the drop alone is in the way it is said, with what stands the heat."""
    cool = [s for s in every if s.by_heat < len(SIZES)]
    if not cool:
        return "Shorten it, allow more drop, or share the load."
    loosest = max(cool, key=lambda s: s.setting.number("drop"))
    size = SIZES[max(s.by_heat for s in cool)]
    return (
        f"The drop is in the way: {loosest.setting.way('drop').words}. {size} stands the heat. Say what drop you allow,"
        " shorten it, or share the load."
    )


def _unlisted(
    title: str, every: list[Sized], given: list[Figure], asked: dict[str, str | None], data: Refdata
) -> Sheet:
    """No wire of the table will do, whichever way the open keys are."""
    hot = [s.setting for s in every if s.setting.number("air") >= s.setting.number("insulation")]
    if len(hot) == len(every):
        air, insulation = (hot[0].way(k).words for k in ("air", "insulation"))
        text = f"{air} is over what the insulation bears ({insulation}). Choose insulation for more heat."
        key = "insulation"
    else:
        text, key = f"No single wire up to {SIZES[-1]} will do. {_by_drop(every)}", "current"
    check = Check("wire of the table", CANNOT_TELL, text, subject="wire", bears=ASK)
    question = Question(FILL_IN, text, key, (check.name,))
    return Sheet(title, asked, data, given, [check], [], decision=none(VERB, text), questions=[question])
