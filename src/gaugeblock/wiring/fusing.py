"""The answer ``fuse``: the fuse that a load takes and the wire that stands it, or the largest that a wire allows."""

from __future__ import annotations

from itertools import product

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, STOP, Bound, Check, at_least
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import base
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import Measure
from gaugeblock.value import Value, put
from gaugeblock.wiring import checks, conductor, heat, keys, settings
from gaugeblock.wiring.conductor import SIZES
from gaugeblock.wiring.fuse import FUSES, LASTING, distance
from gaugeblock.wiring.settings import Setting

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "FIT FUSE"
FACTS = FUSE, CURRENT = ("fuse", "current")
_HOW_LONG = "how long the load lasts"


class Fused(Value):
    """What is asked: the ``load`` (a current), its ``power`` where that was given, or a ``wire``; what the wire lies
    in.
    """

    __slots__ = ("air", "bundle", "current", "insulation", "is_starter", "power", "voltage", "wire")

    current: Measure | None
    power: Measure | None
    voltage: Measure
    wire: Measure | None
    insulation: Measure | str | None
    air: Measure | str | None
    bundle: int | None
    is_starter: bool

    def __init__(self, asked: dict[str, str | None], data: Refdata) -> None:
        typed = asked.get("current")
        voltage = keys.voltage_of(asked.get("voltage"))
        current, power = keys.load_of(typed, voltage) if typed else (None, None)
        put(self, "current", current)
        put(self, "power", power)
        put(self, "voltage", voltage)
        put(self, "wire", keys.wire_of(asked.get("wire")))
        put(self, "insulation", keys.insulation_of(asked.get("insulation"), data))
        put(self, "air", keys.air_of(asked.get("air")))
        put(self, "bundle", keys.count_of(asked.get("bundle"), "bundle"))
        put(self, "is_starter", False)
        if current is None and self.wire is None:
            why = "it is chosen by what the circuit draws, or by the wire that it protects, and neither was said"
            do = (
                "say what it draws, which its label or its paper has, as 20 A or 240 W; or say the"
                " wire that is there, as"
                " 12 AWG or 2.5 mm2"
            )
            raise Ambiguous("fuse size", "", why, (), do)


def fuse(
    current: str | None = None,
    *,
    wire: str | None = None,
    voltage: str | None = None,
    insulation: str | None = None,
    air: str | None = None,
    bundle: str | None = None,
    lasts: str | None = None,
    fact: str = FUSE,
    data: Refdata | None = None,
) -> Sheet:
    """The fuse of a load, or the largest that a wire allows.

    Parameters are text as people write them: ``current`` of the load (``20 A``), or its power (``100 W``, at
    ``voltage``, 12 V unless given); ``wire`` (``12 AWG``, ``4 mm2``); ``insulation``, ``air`` and ``bundle`` as for
    ``circuit``; ``lasts`` whether the load is on for minutes (``yes``, ``no``); ``fact`` ``fuse``,
    or ``current``: what the wire may carry.

    Returns a Sheet. Of a load: the smallest fuse that is made for it, and where the load lasts the smallest that it
    takes no more than 80 % of (habit). Of a wire alone: the largest fuse that is no more than the wire may carry. The
    drop is not looked at: that needs the length, and ``circuit``.

    Raises Ambiguous where neither load nor wire is given; InputError, UnitError or LookupMiss for what cannot be read.

    >>> fuse("8 A").decision.figures[0].text
    '10'
    """
    data = data or refdata()
    asked = {
        "current": current,
        "wire": wire,
        "voltage": voltage,
        "insulation": insulation,
        "air": air,
        "bundle": bundle,
        "lasts": lasts,
        "fact": fact,
    }
    if lasts not in (None, "yes", "no"):
        raise InputError(str(lasts)[:60], "lasts", "not yes or no", ("yes", "no"), "say whether it is on for minutes")
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a fuse is called so", FACTS, "ask for one of these")
    of = Fused(asked, data)
    doubt = _doubt(of, data)
    if doubt:
        check = Check("load as typed", CANNOT_TELL, doubt, subject="current", bears=ASK)
        question = Question(FILL_IN, doubt, "current", (check.name,))
        return Sheet("fuse", asked, data, [], [check], [], decision=none(VERB, doubt), questions=[question])
    lies = [lie for ways in product(*settings.lying(of, data)) if conductor.serves(lie := Setting(ways))]
    if not lies:
        text = "The air is over what the insulation bears. Choose insulation for more heat."
        check = Check("insulation", CANNOT_TELL, text, subject="insulation", bears=ASK)
        question = Question(FILL_IN, text, "insulation", (check.name,))
        return Sheet("fuse", asked, data, [], [check], [], decision=none(VERB, text), questions=[question])
    if of.wire is not None and (of.current is None or fact == CURRENT):
        return _of_wire(of, lies, asked, data)
    return _of_load(of, lies, asked, data)


def _doubt(of: Fused, data: Refdata) -> str:
    """Why a load is questioned, and not worked with; blank where nothing is odd."""
    for measure, quantity in ((of.power or of.current, "load_power" if of.power else "circuit_current"),):
        if measure is not None and not is_plausible(measure, quantity, data):
            return did_you_mean(f"{measure.text} is no usual {quantity.replace('_', ' ')}", ())
    return ""


def _made(least: float, most: float, data: Refdata) -> list[Figure]:
    """The fuses that are made from a current to another, A, the smallest first, one of each rating."""
    rows = sorted(data.table(FUSES).by_quantity["fuse_rating"], key=lambda r: (float(r.cells["value"]), r.line))
    firsts = {float(r.cells["value"]): r for r in reversed(rows) if least <= float(r.cells["value"]) <= most}
    return [
        look_up(FUSES, "fuse_rating", data=data, fuse=r.cells["fuse"], rating=r.cells["rating"], load="any")
        for _, r in sorted(firsts.items())
    ]


def _of_load(of: Fused, lies: list[Setting], asked: dict[str, str | None], data: Refdata) -> Sheet:
    current = checks.current_of(of, data)
    load = base(current)
    assert of.current is not None
    by_power = "" if of.power is None else f"{of.power.text} at {keys.volts_said(of.voltage, asked.get('voltage'))}: "
    title = f"fuse of {by_power}{of.current.text}"
    made = _made(load * (1 - 1e-9), float("inf"), data)
    if not made:
        text = f"No fuse of the table carries {printed(current, data)}."
        return Sheet(title, asked, data, [current], [], [], decision=none(VERB, text))
    lasting = next((f for f in made if load <= LASTING * base(f) * (1 + 1e-9)), None)
    if asked["lasts"] == "yes" and lasting is None:
        text = "No fuse of the table is that large: share the load."
        return Sheet(title, asked, data, [current], [], [], decision=none(VERB, text))
    ways = {"yes": (lasting,), "no": (made[0],)}.get(asked["lasts"] or "", (lasting, made[0]))
    fuses = [f for f in ways if f is not None]
    found, figures = [], [*fuses, current, distance(data)]
    if of.wire is not None:
        check, allowed = _stands(of, current, fuses[0], made[0], lies, data)
        found.append(check)
        figures.append(allowed)
        if check.stops:
            return _stopped(title, check, [*fuses, current, allowed], lies, asked, data)
    if made[0] is not lasting and not asked["lasts"]:
        said = f"the load is {100 * load / base(made[0]):.0f} % of the smaller fuse"
        found.append(Check(_HOW_LONG, CANNOT_TELL, said, subject="fuse", bears=ASK))
    decision = _decided(fuses, lasting, found, [_wires(f, lies, data) for f in fuses])
    unique = list({f.id: f for f in figures}.values())
    return Sheet(title, asked, data, unique, found, _cautions(data), decision=decision)


def _decided(fuses: list[Figure], lasting: Figure | None, found: list[Check], wires: list[str]) -> Decision:
    """One fuse where the load is well under it, else the two by how long the load lasts."""
    asks = [c for c in found if c.asks]
    if not asks:
        return use(VERB, fuses[0], f"Put it at the source: {wires[0]}.")
    if len({f.id for f in fuses}) == 1 and lasting is not None:
        return ask(VERB, [Candidate(lasting, "", wires[0])], [c.name for c in asks], f"{asks[0].reason}.")
    do = "Does the load last? Habit is 80 % of the fuse at most."
    do = do if lasting is not None else f"{do} No fuse of the table is that large: share the load."
    do = next((f"{c.reason}." for c in asks if c.name != _HOW_LONG), do)
    whens = {True: "the load lasts for minutes", False: "it is on for moments"}
    both = [Candidate(f, whens[f is lasting], wire) for f, wire in zip(fuses, wires, strict=True)]
    return ask(VERB, both, [c.name for c in asks], do)


def _stands(
    of: Fused, current: Figure, rating: Figure, small: Figure, lies: list[Setting], data: Refdata
) -> tuple[Check, Figure]:
    """Whether a wire stands the fuse ``rating`` where it lies hardest; it stops where the load, or the ``small``est
    fuse that carries it, is too much for it even where it lies coolest.
    """
    assert of.wire is not None
    size = conductor.size_of(checks.there(of.wire, data))
    loaded = heat.stands(keys.named(of.wire), size, current, lies, data)
    most = heat.most(size, lies, data)
    if loaded is not None and loaded.stops:
        return loaded, most
    over = base(small) > base(most) * (1 + 1e-9)
    allowed = most if over else min((conductor.allowed(size, lie, data) for lie in lies), key=base)
    carried, where = (small, "even where it lies coolest") if over else (rating, "where it lies hottest")
    said = f"{size} may carry {printed(allowed, data)} {where}, under the fuse's {printed(carried, data)}"
    bounds = Bound(base(allowed), "A", "", allowed), Bound(base(carried), "A", "", carried)
    bears = STOP if over else ASK
    return at_least("wire stands the fuse", *bounds, said, subject="wire", bears=bears), allowed


def _stopped(
    title: str, check: Check, figures: list[Figure], lies: list[Setting], asked: dict[str, str | None], data: Refdata
) -> Sheet:
    """The Sheet of a wire that burns before the smallest fuse of its load blows, wherever it lies."""
    assert check.required is not None
    size = heat.needed(check.required.value, lies, data)
    own = [conductor.gauge(size, "heat", data)] if size else []
    do = f"{check.reason}: the wire burns before any fuse of this load blows. {heat.fit(size)}"
    decision = stop(VERB, [Candidate(gauge, "", "required") for gauge in own], (check.name,), do)
    unique = list({f.id: f for f in [*own, *figures]}.values())
    return Sheet(title, asked, data, unique, [check], _cautions(data), decision=decision)


def _wires(rating: Figure, lies: list[Setting], data: Refdata) -> str:
    """The least wires that stand a fuse, where it lies hardest and where it lies easiest."""
    sizes = sorted({conductor.least_by_heat(base(rating), lie, data) for lie in lies})
    if sizes[0] == len(SIZES):
        return f"no single wire up to {_size(len(SIZES) - 1)} stands it"
    if len(sizes) == 1:
        return f"wire {_size(sizes[0])} or heavier"
    if sizes[-1] == len(SIZES):
        return f"no single wire where it lies hottest, {_size(sizes[0])} where it lies coolest"
    most = f"{_size(sizes[-1])} or heavier"
    return f"wire {most} where it lies hottest, {_size(sizes[0])} where it lies coolest"


def _size(at: int) -> str:
    return f"{SIZES[at].removeprefix('AWG ')} AWG"


def _of_wire(of: Fused, lies: list[Setting], asked: dict[str, str | None], data: Refdata) -> Sheet:
    assert of.wire is not None
    gauge = checks.there(of.wire, data)
    size = conductor.size_of(gauge)
    is_current = asked["fact"] == CURRENT
    wire = f"{keys.named(of.wire)} wire"
    title = f"what {wire} may carry" if is_current else f"largest fuse of {wire}"
    by_rating: dict[str, tuple[Figure, Figure, Setting]] = {}
    for allowed, lie in sorted(
        ((conductor.allowed(size, lie, data), lie) for lie in lies), key=lambda one: base(one[0])
    ):
        made = _made(0.0, base(allowed) * (1 + 1e-9), data)
        if not made:
            by_rating.clear()  # it must hold wherever the wire may lie
            break
        by_rating.setdefault(made[-1].id, (made[-1], allowed, lie))  # of one fuse the way that allows the least
    ordered = list(by_rating.values())
    if not ordered:
        text = f"No fuse of the table is small enough for {size} there."
        return Sheet(title, asked, data, [gauge], [], [], decision=none(VERB, text))
    picked = ordered if len(ordered) <= 3 else [ordered[0], ordered[len(ordered) // 2], ordered[-1]]
    figures = [f for rating, allowed, _ in picked for f in (rating, allowed)] + [distance(data), gauge]
    found, decision = _decided_of_wire(picked, data, is_current=is_current)
    return Sheet(
        title, asked, data, list({f.id: f for f in figures}.values()), found, _cautions(data), decision=decision
    )


def _decided_of_wire(
    picked: list[tuple[Figure, Figure, Setting]], data: Refdata, *, is_current: bool
) -> tuple[list[Check], Decision]:
    """The largest fuse, or the current that the wire may carry, in each way that it may lie."""
    verb = "CARRIES" if is_current else VERB
    shown = [allowed if is_current else rating for rating, allowed, _ in picked]
    said = [
        f"{printed(rating, data)} is the largest fuse" if is_current else f"{printed(allowed, data)} allowed"
        for rating, allowed, _ in picked
    ]
    if len(picked) == 1:
        return [], use(verb, shown[0], f"{capital(said[0])}, as it lies.")
    why = "its insulation, the air and the loom change what it may carry"
    check = Check("how the wire lies", CANNOT_TELL, why, subject="insulation", bears=ASK)
    ways = [
        Candidate(figure, "; ".join(way.words for way in lie.ways), then)
        for figure, then, (_, _, lie) in zip(shown, said, picked, strict=True)
    ]
    do = "The smallest holds wherever the wire lies. Say insulation, air and loom for more."
    return [check], ask(verb, ways, [check.name], do)


def _cautions(data: Refdata) -> list[Caution]:
    near = distance(data)
    text = (
        f"Put the fuse at the battery, within {printed(near, data)} of wire (boat rule): a short ahead of it is stopped"
        " by nothing but fire."
    )
    drop = "The drop was not looked at: say the length, and the wire is sized for it too."
    return [Caution(text, "injury", (near.id,)), Caution(drop, "note")]
