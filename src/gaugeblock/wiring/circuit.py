"""The answer ``circuit``: the smallest wire by drop and by heat, which of them governs, and its fuse."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, STOP, Bound, Check, at_least, at_most
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.wiring import conductor, fuse, words
from gaugeblock.wiring.conductor import SIZES, Conductor, Load, Sized
from gaugeblock.wiring.keys import Circuit, circuit_of
from gaugeblock.wiring.settings import Ways

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure

VERB = "USE WIRE"


def circuit(
    current: str,
    length: str,
    voltage: str,
    *,
    drop: str | None = None,
    insulation: str | None = None,
    air: str | None = None,
    bundle: str | None = None,
    back: str | None = None,
    fuse: str | None = None,
    connector: str | None = None,
    wire: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The wire and the fuse of one circuit.

    Parameters are text as people write them: ``current`` of the load (``28 A``); ``length`` of the wire from the
    source to the load, one way; ``voltage`` of the system; ``drop`` that is allowed, as a share or in volts;
    ``insulation`` a temperature or the letters of the cable (``GXL``); ``air`` along the wire, a temperature or
    ``by the engine``, ``in the cabin``; ``bundle`` how many loaded wires lie together; ``back`` ``wire`` or ``body``;
    ``fuse`` and ``connector`` in amperes; ``wire`` a gauge that is there already.

    Returns a Sheet: the gauge of the smallest wire. What is left open is worked out each way and asked where it
    changes the wire. Currents are those of the boat rule's table; none was found for road vehicles.

    Raises InputError, UnitError or LookupMiss for what cannot be read.

    >>> got = circuit("20 A", "3 m", "12 V", drop="3 %", insulation="GXL", air="40 degC", bundle="1", back="wire")
    >>> got.decision.figures[0].text
    '8'
    """
    data = data or refdata()
    asked = {
        "current": current,
        "length": length,
        "voltage": voltage,
        "drop": drop,
        "insulation": insulation,
        "air": air,
        "bundle": bundle,
        "return": back,
        "fuse": fuse,
        "connector": connector,
        "wire": wire,
    }
    return judged(circuit_of(asked, data), asked, data)


def judged(of: Circuit, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``circuit``, of what was read."""
    current = stated(of.current, "circuit_current", "current", data)
    voltage = stated(of.voltage, "system_voltage", "voltage", data)
    length = stated(of.length, "wire_length", "length", data)
    title = f"circuit of {of.current.text}, {of.length.text} at {of.voltage.text}"
    given = {"current": current, "voltage": voltage, "length": length}
    doubts = _doubts(of, given, data)
    if doubts:
        checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
        questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
        decision = none(VERB, next(iter(doubts.values())))
        figures = list(given.values())
        return Sheet(title, asked, data, figures, checks, [], decision=decision, questions=questions)
    load = Load(current, fuse.fuse_for(of, current, data), length)
    ways = Ways(of, voltage, data)
    every = [conductor.sized(s, load, data) for s in ways.settings()]
    listed = [s for s in every if s.is_listed]
    if not listed:
        return _unlisted(title, every, list(given.values()), asked, data)
    return Answer(title, of, load, ways, every, data).sheet(asked)


def _doubts(of: Circuit, given: dict[str, Figure], data: Refdata) -> dict[str, str]:
    read = {"current": of.current, "voltage": of.voltage, "length": of.length}
    return {
        key: did_you_mean(f"{read[key].text} is no usual {figure.quantity.replace('_', ' ')}", ())
        for key, figure in given.items()
        if not is_plausible(read[key], figure.quantity, data)
    }


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
        text = f"No single wire up to {SIZES[-1]} will do. Shorten it, allow more drop, or split the load."
        key = "current"
    check = Check("wire of the table", CANNOT_TELL, text, subject="wire", bears=ASK)
    question = Question(FILL_IN, text, key, (check.name,))
    return Sheet(title, asked, data, given, [check], [], decision=none(VERB, text), questions=[question])


class Answer:
    """One circuit being answered: the settings that are possible, and the sizes that they need."""

    def __init__(self, title: str, of: Circuit, load: Load, ways: Ways, every: Sequence[Sized], data: Refdata) -> None:
        self.title = title
        self.of = of
        self.load = load
        self.ways = ways
        self.every = every
        self.listed = [s for s in every if s.is_listed]
        self.data = data
        self.open = words.deciding(ways.open, every)

    def shown(self) -> list[Sized]:
        """The settings to show, the biggest wire first: one where all need the same, else up to three."""
        by_size: dict[int, Sized] = {}
        for one in self.listed:
            by_size.setdefault(one.at, one)
        sizes = sorted(by_size, reverse=True)
        picked = sizes if len(sizes) <= 3 else [sizes[0], sizes[len(sizes) // 2], sizes[-1]]
        return [by_size[n] for n in picked]

    def sheet(self, asked: dict[str, str | None]) -> Sheet:
        """The Sheet."""
        shown = self.shown()
        built = [conductor.conductor(SIZES[s.at], s.setting, self.load, self.data) for s in shown]
        gauges = [self.gauge(s) for s in shown]
        checks, questions = self.checks(shown, built)
        figures: list[Figure] = [*gauges]
        if self.load.fuse is not None:
            figures.append(self.load.fuse)
        for one, wire in zip(shown, built, strict=True):
            limit = one.setting.way("drop").figure
            figures += [*wire.figures[:1], *([limit] if limit is not None else [])]
            figures += [*fuse.largest(wire.allowed, self.of, self.data), *wire.figures[1:]]
        figures += [fuse.distance(self.data), self.load.current, self.load.length]
        decision = self.decision(shown, built, gauges, checks)
        cautions = words.cautions(fuse.distance(self.data), built[0], self.of, self.data)
        unique = list({f.id: f for f in figures}.values())
        return Sheet(self.title, asked, self.data, unique, checks, cautions, decision=decision, questions=questions)

    def gauge(self, one: Sized) -> Figure:
        """The gauge of one setting: the larger wire of what its drop and its heat ask for."""
        drop = conductor.gauge(SIZES[one.by_drop], "drop", self.data)
        heat = conductor.gauge(SIZES[one.by_heat], "heat", self.data)
        size = SIZES[one.at]
        key = {"size": size, **{w.key: w.words for w in one.setting.ways}}
        number = min(drop.typical, heat.typical)
        text = size.removeprefix("AWG ")
        return derived("larger_of_two_wires", "wire_gauge", number, "AWG", (drop, heat), self.data, key=key, text=text)

    def checks(self, shown: list[Sized], built: list[Conductor]) -> tuple[list[Check], list[Question]]:
        """What each wire shown keeps, and what is open."""
        checks: list[Check] = []
        for one, wire in zip(shown, built, strict=True):
            case = wire.size
            if wire.drop is not None:
                limit = one.setting.way("drop").figure
                assert limit is not None
                said = f"{printed(wire.drop, self.data)} lost of {printed(limit, self.data)}"
                actual, most = Bound(base(wire.drop), "V", "", wire.drop), Bound(base(limit), "V", "max", limit)
                checks.append(at_most(f"drop, {case}", actual, most, said, subject="drop", case=case))
            carried = self.load.fuse if self.load.fuse is not None else self.load.current
            said = f"{printed(wire.allowed, self.data)} allowed, {printed(carried, self.data)} fused"
            actual = Bound(base(wire.allowed), "A", "", wire.allowed)
            least = Bound(self.load.heating, "A", "min", carried)
            checks.append(at_least(f"heat, {case}", actual, least, said, subject="heat", case=case, bears=ASK))
        checks += [*self.fuse_checks(built), *self.wire_checks(shown)]
        questions = []
        for key in self.open:
            kind, text = words.question(key)
            checks.append(Check(key, CANNOT_TELL, "not given, and it changes the wire", subject=key, bears=ASK))
            questions.append(Question(kind, text, key, (key,)))
        if said := self.unserved():
            checks.append(Check("ways that no wire serves", CANNOT_TELL, said, subject="wire", bears=INFORM))
        return checks, questions

    def fuse_checks(self, built: list[Conductor]) -> list[Check]:
        """Whether fuse, connector and load agree."""
        out = []
        load, rating = self.load.current, self.load.fuse
        if rating is not None and self.of.fuse is not None:
            said = f"{printed(rating, self.data)} fuse, {printed(load, self.data)} load"
            bounds = Bound(base(rating), "A", "", rating), Bound(base(load), "A", "min", load)
            out.append(at_least("fuse carries the load", *bounds, said, subject="fuse"))
        if self.of.connector is not None:
            connector = fuse.largest(built[0].allowed, self.of, self.data)[1]
            carried = rating if rating is not None else load
            said = f"connector {printed(connector, self.data)}, {printed(carried, self.data)} fuse"
            bounds = Bound(base(carried), "A", "", carried), Bound(base(connector), "A", "max", connector)
            out.append(at_most("connector", *bounds, said, subject="connector"))
        return out

    def unserved(self) -> str:
        """Why no wire of the table serves one of the ways; blank where each has its wire."""
        cold = next((s for s in self.every if not s.is_listed), None)
        return words.refused(cold.setting) if cold is not None else ""

    def wire_checks(self, shown: list[Sized]) -> list[Check]:
        """Whether the wire that is there already is big enough: the drop can stop it, a boat's table only ask."""
        if self.of.wire is None:
            return []
        there = stated(self.of.wire, "wire_gauge", "wire", self.data)
        actual = Bound(there.typical, "AWG", "", there)
        out = []
        for at, name in (("by_drop", "drop"), ("by_heat", "heat")):
            needed = [getattr(s, at) for s in shown]
            least = conductor.gauge(SIZES[max(needed)], name, self.data)
            bears = STOP if at == "by_drop" and len(set(needed)) == 1 else ASK
            said = f"{there.text} AWG is there, {least.text} AWG is needed for the {name}"
            bound = Bound(least.typical, "AWG", "max", least)
            check = at_most(f"wire that is there, {name}", actual, bound, said, subject="wire", case=name, bears=bears)
            out.append(check.replace(margin=None))
        return out

    def decision(
        self, shown: list[Sized], built: list[Conductor], gauges: list[Figure], checks: list[Check]
    ) -> Decision:
        """One wire where nothing open changes it, else the wires that it may be."""
        stops = [c for c in checks if c.stops]
        if stops:
            do = words.stopped(stops[0])
            return stop(VERB, [Candidate(gauges[0], "required")], [c.name for c in stops], do)
        if not self.open:
            failing = [c for c in checks if c.asks]
            if failing:
                said = words.then(shown[0], built[0], self.data)
                when = words.when(shown[0].setting, tuple(w.key for w in shown[0].setting.ways))
                return ask(VERB, [Candidate(gauges[0], when, said)], [c.name for c in failing], failing[0].reason + ".")
            return use(VERB, gauges[0], words.do(shown[0], built[0], self.load, self.data))
        candidates = [
            Candidate(g, words.when(s.setting, self.open), words.then(s, b, self.data))
            for g, s, b in zip(gauges, shown, built, strict=True)
        ]
        return ask(VERB, candidates, list(self.open), words.ask_for(self.open, self.unserved()))
