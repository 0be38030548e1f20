"""What a hose or a tube bears of pressure, where a fuel ignites: what the tables have of an item beside its heat."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, STOP, Bound, Check, at_most
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import stated
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.lines.cautions import cautions_of, low_pressure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.item import Item

WORKING, BURST = "working pressure", "burst pressure"
# What is asked of an item -> the verb, and the quantities that say it.
FACTS = {
    WORKING: ("BEARS AT MOST", ("working_pressure_maximum", "pressure_rating_minimum", "service_pressure_class")),
    BURST: ("HOLDS NEW AT LEAST", ("burst_pressure_minimum",)),
    "ignition": ("IGNITES FROM", ("autoignition_temperature", "hot_surface_ignition_temperature")),
    "flash point": ("FLASH POINT", ("flash_point",)),
}
_MOST = 3
# What to do with several figures of a fuel; of a hose its marking governs.
_DO = {
    "ignition": "Reckon with the lower one where a space can trap vapour: an open hot surface has to be hotter.",
    "flash point": "The safety sheet of the fuel has its own.",
}
_WHEN = {
    "autoignition_temperature": "by itself in a closed vessel",
    "hot_surface_ignition_temperature": "on an open hot surface, in tests",
}


def told(found: Item, fact: str, pressure: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of one fact of an item; with a ``pressure`` whether a working pressure bears it.

    Raises InputError for a fact that there is not, or a pressure beside another fact than the working one.
    """
    if fact not in FACTS:
        raise InputError(
            fact, "fact", "nothing of a line or a fluid is called so", tuple(FACTS), "ask for one of these"
        )
    if pressure is not None and fact != WORKING:
        raise InputError(pressure, "pressure", f"a {fact} is no working pressure", (), "ask for one of both")
    if fact in (WORKING, BURST) and found.table != "lines/materials":
        why = "a fluid bears no pressure of its own, its line or hose does"
        raise InputError(found.cell, "item", why, (), "name the hose or the line")
    peak = (
        None
        if pressure is None
        else stated(units.parse_measure(pressure, "stress", "pressure"), "system_pressure", "pressure", data)
    )
    verb, quantities = FACTS[fact]
    figures = _figures(found, quantities, data)
    title = ", ".join(p for p in (found.cell, found.klass) if p)
    if not figures:
        return _nobody(found, fact, verb, title, asked, data)
    classes = list(dict.fromkeys(f.key.get("class", "any") for f in figures))
    if len(classes) > _MOST:
        raise Ambiguous(found.said, found.table, "the answer depends on the class", classes, "name the class")
    checks = [] if peak is None else [_check(one, peak, data) for one in figures]
    decision = _decision(verb, fact, figures, checks, peak)
    beside = [found.limit] if found.limit is not None and found.limit not in figures else []
    cautions = [*low_pressure(found), *cautions_of(found)] if fact in (WORKING, BURST) else []
    return Sheet(title, asked, data, [*figures, *beside], checks, cautions, decision=decision)


def _figures(found: Item, quantities: tuple[str, ...], data: Refdata) -> list[Figure]:
    """The living figures of these quantities, of the class that was asked or of each; the lowest first."""
    rows = [row for row in found.rows if row["quantity"] in quantities and not row.standing]
    own = [row for row in rows if found.klass is None or row.cells.get("class", found.klass) in (found.klass, "any")]
    named = [row for row in own if row.cells.get("class") != "any"] or own
    state = [row for row in named if found.state is None or row["state"] == found.state] or named
    return sorted((lookup.figure_of(row, data) for row in state), key=lambda f: units.to_base(f.least, f.unit))


def _check(figure: Figure, peak: Figure, data: Refdata) -> Check:
    there = units.in_unit(peak.typical, peak.unit, figure.unit)
    said = f"{number_only(peak, data)} is asked, {number_only(figure, data)} at most in use"
    bounds = Bound(there, figure.unit, "", peak), Bound(figure.least, figure.unit, "max", figure)
    bears = ASK if figure.evidence.basis == "common practice" else STOP
    return at_most("working pressure", *bounds, said, subject="pressure", bears=bears)


def _decision(verb: str, fact: str, figures: list[Figure], checks: list[Check], peak: Figure | None) -> Decision:
    """The one figure to use; of several each with what it is of; where a pressure is too much, stop or ask."""
    names = list(dict.fromkeys(check.name for check in checks))
    candidates = [Candidate(f, _when(f), _outcome(f, peak, fact)) for f in figures[:_MOST]]
    if checks and all(check.stops for check in checks):
        return stop(verb, candidates[:1], names, f"{capital(checks[0].reason)}. Take one that bears more.")
    is_sure = len(figures) == 1 and figures[0].evidence.basis != "common practice"
    if is_sure:
        where = _alone(figures[0]) if fact == "ignition" else ""
        return use(verb, figures[0], where or _outcome(figures[0], peak, fact, full=True), names)
    said = f"{capital(figures[0].note)}. " if len(figures) == 1 and figures[0].note else ""
    return ask(verb, candidates, names, _DO.get(fact, f"{said}Ask its maker: that governs."))


def _alone(figure: Figure) -> str:
    """What is said of the one temperature of ignition that is on record."""
    more = (
        "" if figure.quantity == "autoignition_temperature" else " In a closed space it ignites sooner: how soon is on"
    )
    return f"{capital(_when(figure))}.{more}{' no table here.' if more else ''}"


def _when(figure: Figure) -> str:
    klass = figure.key.get("class", "any")
    state = figure.key["state"]
    parts = [_WHEN.get(figure.quantity, ""), *(p for p in (klass, state) if p not in ("any", "not stated", "new"))]
    return ", ".join(p for p in parts if p) or "as printed"


def _outcome(figure: Figure, peak: Figure | None, fact: str, *, full: bool = False) -> str:
    if peak is not None:
        there = units.in_unit(peak.typical, peak.unit, figure.unit)
        fits = there <= figure.least * (1 + 1e-9)
        return f"{peak.text} {peak.unit} is {'within it' if fits else 'too much for it'}" + "." * full
    if fact == BURST:
        return "no working pressure: a hose is worked far under it" + "." * full
    return ""


def _nobody(found: Item, fact: str, verb: str, title: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """That no table has it; with what they have of its pressure otherwise."""
    others = _figures(found, tuple(q for f in (WORKING, BURST) if f != fact for q in FACTS[f][1]), data)
    more = ""
    if fact in (WORKING, BURST) and others:
        what = BURST if fact == WORKING else WORKING
        more = f" Its {what} is on record: {number_only(others[0], data)}."
    do = f"No table has a {fact} of {title}: ask its maker.{more}"
    question = Question(ASK_MAKER, f"What {fact} does the maker of the {title} print?", "maker")
    return Sheet(title, asked, data, others, [], [], decision=none(verb, do), questions=[question])
