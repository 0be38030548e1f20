"""The decision of a line: which limit it must keep under, what stops it, and what is to be asked."""

from __future__ import annotations

from gaugeblock.answer.check import NOT_OK, OK
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.lines import fit
from gaugeblock.lines.found import of_stop, one_of_each
from gaugeblock.lines.heat import (
    KEEP,
    NO_MORE,
    VERB,
    lower_others,
    maker_question,
    sentence,
    state_question,
    when_words,
)
from gaugeblock.lines.judged import FLUID, MATERIAL, MISSING, NOBODY, OPEN
from gaugeblock.lines.keys import NO_PLACE
from gaugeblock.value import Value, put
from gaugeblock.warmth.verdict import beside, high_end, left, low_end, too_hot_by

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check
    from gaugeblock.figure import Figure
    from gaugeblock.lines.found import Found
    from gaugeblock.lines.judged import Judged, Side
    from gaugeblock.tables.load import Refdata

MEASURED_CHECK = "temperature measured on the car"
_HOT = "Measure the line's temperature, hot and after shut-down, with a crayon, paint or a thermocouple."
_TEMPERATURES = (MATERIAL, FLUID, "temperature over the lowest")


class Choice(Value):
    """A limit that may be the one, and the conditions that make it so (none where nothing is open)."""

    __slots__ = ("limit", "when")

    limit: Figure
    when: tuple[str, ...]

    def __init__(self, limit: Figure, when: tuple[str, ...] = ()) -> None:
        put(self, "limit", limit)
        put(self, "when", when)


def decide(
    judged: Judged, found: Found, doubted: Sequence[Question], temperature: Figure | None, needed: Figure | None
) -> tuple[Decision, tuple[Question, ...]]:
    """The decision and its questions. ``temperature`` is the one measured, else the estimate that governs;
    ``doubted`` are the questions about what is implausible, which come first. An estimate with something in it that
    nobody gave is told, and decides nothing.
    """
    choices = _choices(judged)
    questions = one_of_each(
        (
            *doubted,
            *_of_sides(judged),
            *_of_makers(judged, found.checks),
            *_of_checks(found.checks),
            *found.questions,
            *_of_places(judged),
        )
    )
    stops = [c for c in found.checks if c.stops]
    if stops:
        return _stopped(stops[0], [c.name for c in stops], needed, judged.data), questions
    measured = temperature if temperature is not None and temperature.quantity == "line_temperature" else None
    is_read = measured is not None and measured.basis != "derived"
    over_all = _over_all(judged, choices, measured) if is_read and measured is not None else []
    if over_all and measured is not None:
        highest = over_all[-1].limit
        most = beside(highest, measured.unit, judged.data)
        text = f"It is too hot, whatever is still open: keep it under {most} at the most."
        ends = [Candidate(highest, "", "required"), Candidate(measured, "", "refused")]
        over = [c.name for c in found.checks if c.subject in _TEMPERATURES and c.result == NOT_OK]
        return stop(VERB, ends, over, text), questions
    if not choices:
        do = questions[0].text if questions else f"{sentence('nobody has a limit of temperature for this line')}"
        return none(VERB, do), questions
    asks = [c for c in found.checks if c.asks]
    habit = choices[0].limit.evidence.basis == "common practice"
    if len(choices) == 1 and not asks and not habit:
        return use(VERB, choices[0].limit, _beside(choices[0].limit, measured), _names(found.checks)), questions
    candidates = [
        Candidate(c.limit, _when(c, judged, questions, _is_hotter(c.limit, measured)), _then(c.limit, measured))
        for c in choices
    ]
    if habit and not questions:
        questions = _habit(judged)
    because = list(dict.fromkeys(c.name for c in asks)) or _names(found.checks)
    return ask(VERB, candidates, because, questions[0].text if questions else sentence(asks[0].reason)), questions


def _names(checks: Sequence[Check]) -> list[str]:
    """The checks of temperature that carry a verdict."""
    return list(dict.fromkeys(c.name for c in checks if c.subject in _TEMPERATURES and c.result == OK))


def _over_all(judged: Judged, choices: list[Choice], measured: Figure) -> list[Choice]:
    """The limits that are all too low, whatever is open: of the line, or of its material or its fluid alone; the
    lowest first.
    """
    for options in (choices, *(_options(side) for side in judged.sides)):
        if len(options) > 1 and all(_is_over(c.limit, measured) for c in options):
            return sorted(options, key=lambda c: low_end(c.limit, "degC"))
    return []


def _is_over(limit: Figure, at: Figure) -> bool:
    return limit.evidence.checked != "memory" and _is_hotter(limit, at)


def _is_hotter(limit: Figure, at: Figure | None) -> bool:
    """Whether a temperature that was measured is over a limit."""
    if at is None or at.basis == "derived":
        return False
    return high_end(at, at.unit) > low_end(limit, at.unit) * (1 + 1e-9)


def _choices(judged: Judged) -> list[Choice]:
    """The limits that may be the one, the lowest first: the lower of material and fluid for all that is open."""
    sides = [_options(side) for side in judged.sides]
    known = [options for options in sides if options]
    if not known:
        return []
    pairs = [(a, b) for a in known[0] for b in known[1]] if len(known) > 1 else [(a,) for a in known[0]]
    lowest: dict[float, list[Choice]] = {}
    for pair in pairs:
        least = min(pair, key=lambda c: low_end(c.limit, "degC"))
        when = tuple(w for c in pair for w in c.when)
        lowest.setdefault(round(low_end(least.limit, "degC"), 3), []).append(Choice(least.limit, when))
    merged = [_merged(found, len(lowest)) for found in lowest.values()]
    return sorted(merged, key=lambda c: low_end(c.limit, "degC"))


def _options(side: Side) -> list[Choice]:
    """What a side's limit may be."""
    options = [Choice(limit, (when_words(choice),) if choice else ()) for choice, limit, _ in side.limits]
    if side.kind == OPEN or side.own is not None or side.item is None:
        return options
    others = lower_others(side.item)
    if not others:
        return options
    lower = min(others, key=lambda f: low_end(f, "degC"))
    return [Choice(f, (f"by {f.source or 'habit'}, {f.locator}",)) for f in (lower, options[0].limit)]


def _merged(found: list[Choice], how_many: int) -> Choice:
    """One limit that several conditions lead to; without a condition where it is the only one."""
    if how_many == 1:
        return Choice(found[0].limit)
    if len(found) == 1:
        return found[0]
    return Choice(found[0].limit, (" or ".join(dict.fromkeys(c.when[0] for c in found if c.when)),))


def _when(choice: Choice, judged: Judged, questions: Sequence[Question], is_over: bool) -> str:
    """The condition of a candidate, in words; ``is_over`` where it is too hot for it."""
    if choice.when:
        return ", and ".join(choice.when)
    if choice.limit.evidence.basis == "common practice":
        return "the maker of the part states no less"
    unknown = [side.name for side in judged.sides if not side.limits and not side.is_spared and side.check is not None]
    asked = [side for side in judged.sides if side.check is not None and side.check.asks]
    if MATERIAL in unknown and any(s.name == MATERIAL for s in asked):
        return "the line itself stands as much"
    if FLUID in unknown and any(s.name == FLUID for s in asked):
        return "the fluid stands as much"
    if questions and questions[0].key == "temperature":
        return "the line, measured hot, stays under it"
    if is_over:
        return NO_MORE
    return "what is asked first comes out well"


def _then(limit: Figure, temperature: Figure | None) -> str:
    """What comes of a candidate at the temperature there is."""
    if temperature is None:
        return KEEP
    if temperature.basis != "derived":
        return "stop: it is too hot" if _is_hotter(limit, temperature) else left(limit, temperature)
    low, high = (end(temperature, temperature.unit) for end in (low_end, high_end))
    when = f"{temperature.key['case']}: " if temperature.key.get("case") else ""
    if not low < high:
        return f"{when}estimated {high:.0f} {temperature.unit}, without a band"
    end, said = low_end(limit, temperature.unit), f"{when}estimated {low:.0f} to {high:.0f} {temperature.unit}"
    return f"{said}{too_hot_by(temperature, end)}"


def _beside(limit: Figure, temperature: Figure | None) -> str:
    """What is said beside a limit to use."""
    if temperature is None:
        return _HOT
    if temperature.basis != "derived":
        return f"{left(limit, temperature)} at {temperature.text} {temperature.unit}."
    return f"{sentence(_then(limit, temperature))} {_HOT}"


def _stopped(first: Check, because: list[str], needed: Figure | None, data: Refdata) -> Decision:
    """What would make right what stops."""
    required = first.required.figure if first.required is not None else None
    own = of_stop(first)
    actual = first.actual.unit if first.actual is not None else ""
    said = "" if required is None else beside(required, actual or required.unit, data)
    if first.subject in (MATERIAL, FLUID):
        away = "" if needed is None else f" By the estimate it needs a gap of {number_only(needed, data)}."
        text = f"It is too hot. Move the line away or put a shield between: it must stay under {said}.{away}"
        return stop(VERB, own, because, text)
    verb, text = {
        "written clearance": ("KEEP AWAY", f"Move the line: at least {said} from the exhaust."),
        "temperature over the lowest": ("KEEP OVER", f"It is too cold for the line: keep it over {said}."),
        fit.SEAT: ("CHANGE", "Change the flare or the fitting: both must have the same angle."),
        fit.THREADS: ("CHANGE", "Change the nut or the port: both must have the same thread."),
        fit.FLARE_WALL: ("CHANGE", f"Take a wall of no more than {said}, or another flare."),
        fit.HOSE: ("CHANGE", "Fit a longer hose."),
        fit.FLUID_IN: ("CHANGE", "Take a hose that is marked for the fluid."),
    }.get(first.subject, ("CHANGE", sentence(first.reason)))
    return stop(verb, own, because, text)


def _of_sides(judged: Judged) -> list[Question]:
    """What is to be asked of material and fluid themselves."""
    out = []
    for side in judged.sides:
        check = side.check
        if check is None or not check.asks:
            continue
        if side.kind == MISSING:
            what = (
                "material of the line, and the class where it is a hose"
                if side.name == MATERIAL
                else "fluid in the line"
            )
            out.append(Question(FILL_IN, f"Name the {what}.", side.key, (check.name,)))
        elif side.kind == OPEN and side.item is not None:
            out.append(state_question(side.item, side.key, (check.name,)))
        elif side.kind == NOBODY and side.item is not None:
            out.append(maker_question(side.item, (check.name,)))
    return out


def _of_checks(checks: Sequence[Check]) -> list[Question]:
    """The temperature to measure, for all checks that wait for it."""
    waiting = [c for c in checks if c.asks and (c.subject in _TEMPERATURES or c.name == MEASURED_CHECK)]
    waiting = [c for c in waiting if (c.case or c.name == MEASURED_CHECK) and not _is_maker_to_ask(c)]
    if not waiting:
        return []
    return [Question(MEASURE, _HOT, "temperature", tuple(dict.fromkeys(c.name for c in waiting)))]


def _is_maker_to_ask(check: Check) -> bool:
    """Whether a measured temperature is too hot by a limit that is habit or from memory: measuring again settles
    nothing.
    """
    firm = check.required is None or check.required.is_firm
    return check.asks and check.case == "measured" and check.result == NOT_OK and not firm


def _of_makers(judged: Judged, checks: Sequence[Check]) -> list[Question]:
    """The makers of what is too hot by a figure from memory."""
    out = []
    for side in judged.sides:
        names = [c.name for c in checks if c.subject == side.name and _is_maker_to_ask(c)]
        if names and side.item is not None:
            out.append(maker_question(side.item, names))
    return out


def _of_places(judged: Judged) -> list[Question]:
    """The page of a maker's sheet that was not given."""
    out = []
    for side, key in zip(judged.sides, ("line_limit_from", "fluid_limit_from"), strict=True):
        if side.own is not None and side.own.locator == NO_PLACE:
            out.append(Question(FILL_IN, f"Give the page of {side.own.source}.", key))
    return out


def _habit(judged: Judged) -> tuple[Question, ...]:
    """Who has the figure that only a shop habit gives."""
    items = [s.item for s in judged.sides if s.item is not None and s.limits and s.own is None]
    habits = [i for i in items if i.limit is not None and i.limit.evidence.basis == "common practice"]
    return tuple(maker_question(i) for i in habits) or (
        Question(ASK_MAKER, "Ask the maker of the line.", "line_limit"),
    )
