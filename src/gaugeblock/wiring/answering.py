"""One circuit being answered: which wires to show, its sheet, and the one decision."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import MOST_CANDIDATES, STOP, USE, Candidate, Decision, ask, stop, use
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import significant_by_side
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.wiring import checks, conductor, fuse, heat, words
from gaugeblock.wiring.conductor import SIZES, Conductor, Load, Sized

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.wiring.keys import Circuit
    from gaugeblock.wiring.settings import Setting, Ways

VERB = "USE WIRE"


class Answer:
    """One circuit being answered: the settings that are possible, and the sizes that they need."""

    def __init__(self, title: str, of: Circuit, load: Load, ways: Ways, every: Sequence[Sized], data: Refdata) -> None:
        self.title = title
        self.of = of
        self.load = load
        self.every = every
        self.data = data
        self.open = words.deciding(ways.open, every)
        cold = next((s for s in every if not s.is_listed), None)
        self.unserved = words.refused(cold.setting) if cold is not None else ""
        self.shown = _shown(every, ways.plain)
        self.built = [conductor.conductor(SIZES[s.at], s.setting, load, data) for s in self.shown]
        self.gauges = [self.gauge(s) for s in self.shown]

    def gauge(self, one: Sized) -> Figure:
        """The gauge of one setting: the larger wire of what its drop and its heat ask for."""
        drop = conductor.gauge(SIZES[one.by_drop], "drop", self.data)
        heat = conductor.gauge(SIZES[one.by_heat], "heat", self.data)
        size = SIZES[one.at]
        key = {"size": size, **{w.key: w.words for w in one.setting.ways}}
        number = min(drop.typical, heat.typical)
        text = size.removeprefix("AWG ")
        both = (drop, heat)
        return derived("wire_by_drop_and_heat", "wire_gauge", number, "AWG", both, self.data, key=key, text=text)

    def sheet(self, asked: dict[str, str | None]) -> Sheet:
        """The Sheet."""
        found, questions = self.checks()
        figures: list[Figure] = [*self.gauges]
        if self.load.fuse is not None:
            figures.append(self.load.fuse)
        for one, wire in zip(self.shown, self.built, strict=True):
            limit = one.setting.way("drop").figure
            figures += [*wire.figures[:1], *([limit] if limit is not None else [])]
            figures += [*fuse.largest(wire, self.of, self.data), *wire.figures[1:]]
            if left := self.left(one, wire):
                figures.append(left)
        near = fuse.distance(self.data)
        figures += [*([] if self.of.is_starter else [near]), self.load.current, self.load.length]
        if self.of.relay is not None:
            figures.append(fuse.coil(self.data))
        figures += [b.figure for c in found for b in (c.required, c.actual) if b is not None and b.figure is not None]
        decision = self.decision(found)
        size = self.load.fuse if decision.kind != STOP else None  # it must not be put on the wire that is stopped
        cautions = words.cautions(near, size, self.built[0], self.load, self.of, self.data)
        unique = list({f.id: f for f in figures}.values())
        is_used = decision.kind == USE
        drawings = words.drawings(self.of, self.load, self.shown[0], self.built[0], self.data) if is_used else []
        return Sheet(self.title, asked, self.data, unique, found, cautions, drawings, decision, questions)

    def left(self, one: Sized, wire: Conductor) -> Figure | None:
        """What the body may lose beside the wire, where the current comes back through it and nobody measured."""
        limit = one.setting.way("drop").figure
        is_body = one.setting.way("return").words.endswith("the body")
        if not is_body or self.of.earth_drop is not None or wire.drop is None or limit is None:
            return None
        number = base(limit) - base(wire.drop)
        inputs = (limit, wire.drop)
        key = {**wire.drop.key, "limit": one.setting.way("drop").words}
        text = significant_by_side(number, "max", 2)
        rule, quantity = "voltage_left", "voltage_drop_maximum"
        return derived(rule, quantity, number, "V", inputs, self.data, key=key, about="earth", text=text)

    def coolest(self) -> list[Sized]:
        """What each setting needs where it lies coolest, of the load alone or of the fuse that was named: what habit
        adds to it can stop nothing.
        """
        fitted = self.load.fuse if self.of.fuse is not None else None
        load = Load(self.load.current, fitted, self.load.length, self.load.cranking)
        return [conductor.sized(heat.cooled(one.setting, self.data), load, self.data) for one in self.every]

    def checks(self) -> tuple[list[Check], list[Question]]:
        """What each wire shown keeps, and what is open."""
        pairs = zip(self.shown, self.built, strict=True)
        out = [c for s, w in pairs for c in checks.of_wire(s, w, self.load, self.data)]
        out += checks.of_fuse(self.of, self.load, self.data)
        out += checks.of_wire_there(self.of, self.shown, self.coolest(), self.load, self.data)
        questions = []
        for key in self.open:
            kind, text = words.question(key, is_starter=self.of.is_starter)
            out.append(Check(key, CANNOT_TELL, "open, and it changes the wire", subject=key, bears=ASK))
            questions.append(Question(kind, text, key, (key,)))
        if self.unserved:
            out.append(Check("ways that no wire serves", CANNOT_TELL, self.unserved, subject="wire", bears=INFORM))
        left = self.left(self.shown[0], self.built[0])
        if left is not None and not self.open:
            said = words.earth(left, self.data)
            out.append(Check("earth path", CANNOT_TELL, said, subject="earth", bears=INFORM))
            questions.append(Question(MEASURE, said, "earth_drop", ("earth path",)))
        return out, questions

    def needed(self, stops: Sequence[Check]) -> Figure:
        """The gauge that is needed: what a wire that is there falls short of at its easiest where much is open."""
        asked = [c.required.figure for c in stops if c.subject == "wire" and c.required is not None]
        gauges = [f for f in asked if f is not None and f.quantity == "wire_gauge"]
        return min(gauges, key=lambda f: f.typical) if gauges and len(self.gauges) > 1 else self.gauges[0]

    def decision(self, found: list[Check]) -> Decision:
        """One wire where nothing open changes it, else the wires that it may be."""
        stops = [c for c in found if c.stops]
        if stops:
            needed = self.needed(stops)
            names = [c.name for c in stops]
            return stop(
                VERB,
                [Candidate(needed, "", "required")],
                names,
                words.stopped(stops[0], needed, is_least=needed not in self.gauges),
            )
        failing = [c.name for c in found if c.asks]
        if not failing:
            return use(VERB, self.gauges[0], words.do(self.shown[0], self.built[0], self.load, self.of, self.data))
        keys = self.open or tuple(w.key for w in self.shown[0].setting.ways)
        candidates = [
            Candidate(g, words.when(s.setting, keys), words.then(s, b, self.data))
            for g, s, b in zip(self.gauges, self.shown, self.built, strict=True)
        ]
        if self.open:
            return ask(VERB, candidates, failing, words.ask_for(self.open, self.unserved))
        reason = next(c.reason for c in found if c.asks)
        return ask(VERB, candidates, failing, f"{reason}.")


def _shown(every: Sequence[Sized], plain: Setting) -> list[Sized]:
    """The settings to show, the biggest wire first: one where all need the same, else up to three, of which one is
    the plain circuit.
    """
    by_size: dict[int, Sized] = {}
    for one in every:
        if one.is_listed:
            by_size.setdefault(one.at, one)
    sizes = sorted(by_size, reverse=True)
    few = len(sizes) <= MOST_CANDIDATES
    usual = next((one for one in every if one.is_listed and one.setting == plain), None)
    if usual is not None and len(sizes) > 1:
        by_size[usual.at] = usual
    middle = sizes[len(sizes) // 2] if usual is None or usual.at in (sizes[0], sizes[-1]) else usual.at
    picked = sizes if few else [sizes[0], middle, sizes[-1]]
    return [by_size[n] for n in picked]
