"""How warm a neighbour of an exhaust gets at the gap that is left, and whether it stands that: the estimate of a line
beside a hot pipe, of what was given of both.
"""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, stated_span
from gaugeblock.answer.needs import together
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.printing import number_only, printed
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.errors import LookupMiss
from gaugeblock.exhaust.gap import ROUND
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.estimate import Estimate
    from gaugeblock.warmth.item import Item

    Limit = tuple[str, Figure, Item | None]
    Case = tuple[Estimate, str, Figure]  # with what stands in for what nobody gave

# Key -> its dimension, the quantity that it is typed as, the estimate's own name for it.
_MEASURES = {
    "hot": ("temperature", "run_temperature", "hot temperature"),
    "pipe": ("length", "tube_od", "hot diameter"),
    "od": ("length", "tube_od", "line diameter"),
    "air": ("temperature", "air_temperature", "air"),
    "soak_air": ("temperature", "air_temperature", "soak air"),
    "limit": ("temperature", "temperature_maximum", ""),
    "measured": ("temperature", "temperature", ""),
}
_WORDS = ("hot_finish", "finish", "what", "state")
_NEEDED = {"hot": "the heat of the pipe's metal", "pipe": "the diameter of the pipe", "od": "its own diameter"}
# What stands in for a finish that nobody gave: a pipe that has been hot, and what takes up the most heat.
_PIPE_FINISH, _OWN_FINISH = "iron and steel: oxidised", "lacquer: black, dull"
# What a neighbour is usually made of; a lead of another rubber is told apart, for it is not said which it is.
_USUAL = {
    "rubber boot": ("mount rubber", "natural rubber, lasting heat"),
    "spark plug lead": ("spark plug lead or boot", "silicone rubber, lasting heat"),
}
_AT = {"idling": "idle", "hot soak": "hot soak"}
KEYS = (*_MEASURES, *_WORDS)


class Heat(Value):
    """What is known of the heat between an exhaust and a neighbour: measures as Figures by key, words by key."""

    __slots__ = ("figures", "words")

    figures: dict[str, Figure]
    words: dict[str, str]

    def __init__(self, figures: Mapping[str, Figure], words: Mapping[str, str]) -> None:
        put(self, "figures", dict(figures))
        put(self, "words", dict(words))

    def __bool__(self) -> bool:
        return bool(self.figures or self.words)


class Warmed(Value):
    """What the estimate brings to a sheet; ``needed`` is the gap that is cool enough, ``said`` one line of it."""

    __slots__ = ("cautions", "checks", "figures", "needed", "questions", "said")

    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    questions: tuple[Question, ...]
    cautions: tuple[Caution, ...]
    needed: Figure | None
    said: str

    def __init__(
        self,
        figures: Iterable[Figure] = (),
        checks: Iterable[Check] = (),
        questions: Iterable[Question] = (),
        cautions: Iterable[Caution] = (),
        needed: Figure | None = None,
        said: str = "",
    ) -> None:
        put(self, "figures", tuple(figures))
        put(self, "checks", tuple(checks))
        put(self, "questions", tuple(questions))
        put(self, "cautions", tuple(cautions))
        put(self, "needed", needed)
        put(self, "said", said)


def heat_of(asked: Mapping[str, str | None], data: Refdata) -> Heat:
    """The Heat of what was typed; a measure may be a range. InputError or UnitError for what cannot be read."""
    together(asked, {"state": ("what",)})
    for key in ("hot_finish", "finish"):
        if typed := asked.get(key):
            from gaugeblock.warmth.emissivity import refuse_unknown

            refuse_unknown(typed, key, data)  # whether an estimate can be made or not
    figures = {}
    for key, (dim, quantity, _) in _MEASURES.items():
        if typed := asked.get(key):
            from gaugeblock.span import parse_span

            figures[key] = stated_span(parse_span(typed, dim, key), quantity, key, data)
    return Heat(figures, {k: typed for k in _WORDS if (typed := asked.get(k))})


def warmed(name: str, left: Figure | None, heat: Heat, data: Refdata, key: str = "measured") -> Warmed:
    """What a neighbour comes to at the gap that is ``left`` when the run is hot; ``key`` settles what it asks."""
    title = f"temperature of the {name}"
    odd = list(_odd(heat, key, data))
    if odd:
        return Warmed(heat.figures.values(), [c for c, _ in odd], [q for _, q in odd])
    if name not in ROUND and "measured" not in heat.figures:
        why = f"no estimate is made of a {name}: measure it on the car, hot and after shut-down"
        return Warmed(checks=[Check(title, CANNOT_TELL, why, subject=name, bears=INFORM)] if heat else [])
    limits, opened = _limits(name, heat, key, data)
    if "measured" in heat.figures:
        return _measured(title, name, heat.figures["measured"], limits, key)
    lacks = [said for k, said in _NEEDED.items() if k not in heat.figures]
    if left is None:
        lacks.insert(0, "the gap")
    if left is None or lacks or left.typical <= 0:
        why = f"for an estimate these are not given: {', '.join(lacks)}"
        if not lacks:
            why = "it touches: contact conducts, which no estimate here covers"
        return Warmed(checks=[Check(title, CANNOT_TELL, why, subject=name, bears=INFORM)])
    cases, unsolved = _cases(title, name, left, heat, data)
    checks, questions = [*unsolved], []
    for case in cases:
        for limit in limits:
            check = _held(title, name, case, limit)
            checks.append(check)
            if check.asks:
                questions.append(_question(name, case[1], check, key))
    if opened is not None:
        checks.append(opened[0])
        questions.append(opened[1])
    if cases and not limits:
        why = "what it stands is not given: say what it is, or its maker's limit"
        checks.append(Check(f"{title} against its limit", CANNOT_TELL, why, subject=name, bears=INFORM))
    needed = _needed(cases, limits, data)
    figures = [f for _, f, _ in limits] + [figure for _, _, figure in cases] + ([] if needed is None else [needed])
    return Warmed(figures, checks, questions, _told(cases), needed, _said(cases, limits, data))


def _odd(heat: Heat, key: str, data: Refdata) -> Iterator[tuple[Check, Question]]:
    """What cannot be meant: outside its plausible range, or a pipe no warmer than the air beside it."""
    for name, figure in heat.figures.items():
        span = plausible_range(figure.quantity, data)
        ends = [f"{figure.low:.12g}", f"{figure.high:.12g}"] if figure.low is not None else [figure.text]
        for end in ends:
            measure = units.parse_measure(f"{end} {figure.unit}", units.dimension(figure.unit), name)
            if span is None or is_plausible(measure, figure.quantity, data):
                continue
            said = did_you_mean(f"{measure.text} is no usual {_CALLED[name]}", other_readings(measure, *span))
            check = Check(f"{name} as typed", CANNOT_TELL, said, subject=name, bears=ASK)
            yield check, Question(FILL_IN, said, key if key == "gaps" else name, (check.name,))
            break
    hot, air = heat.figures.get("hot"), heat.figures.get("soak_air") or heat.figures.get("air")
    if hot is not None and air is not None and base(hot) <= base(air):
        said = (
            f"The pipe at {hot.text} {hot.unit} is no warmer than the air beside it. Which of both is meant otherwise?"
        )
        check = Check("hot as typed", CANNOT_TELL, said, subject="hot", bears=ASK)
        yield check, Question(FILL_IN, said, key if key == "gaps" else "hot", (check.name,))


_CALLED = {
    "hot": "heat of an exhaust",
    "pipe": "pipe of an exhaust",
    "od": "diameter of a line or wire",
    "air": "heat of the air",
    "soak_air": "heat of the air after shut-down",
    "limit": "limit of heat",
    "measured": "heat of a line",
}


def _limits(name: str, heat: Heat, key: str, data: Refdata) -> tuple[list[Limit], tuple[Check, Question] | None]:
    """What the neighbour stands, each with the state that makes it the one; what is open of it."""
    typed, state, own = heat.words.get("what"), heat.words.get("state"), heat.figures.get("limit")
    wire = _wire(typed, data) if typed is not None and name == "wire" else None
    if wire is not None and state is not None:
        raise LookupMiss(state, "state", "no wire has a state in the tables", (), "leave it out")
    if own is not None and (typed is None or wire is not None):
        return [("", own, None)], None
    if typed is None:
        usual = _USUAL.get(name)
        if usual is None:
            return [], None
        keys = {"subject": usual[0], "case": usual[1]}
        rubber = lookup.look_up("exhaust/limits", "temperature_maximum", data=data, **keys)
        return [(usual[1].split(",")[0], rubber, None)], None
    if wire is not None:
        return [("", wire, None)], None
    from gaugeblock.warmth.item import item_of

    item = item_of(typed, None, state, data)  # refused by its name, whatever it is said to stand
    if own is not None:
        return [("", own, None)], None
    if not item.open_key:
        return ([] if item.limit is None else [("", item.limit, item)]), None
    found: list[Limit] = [(choice, i.limit, i) for choice, i in item.alternatives()[:3] if i.limit is not None]
    name = f"which {item.said}"
    check = Check(name, CANNOT_TELL, f"its {item.open_key} is not given: {', '.join(item.choices)}", bears=ASK)
    ask = f"Which {item.open_key} is the {item.said}: {' or '.join(item.choices)}?"
    closes = key if key == "gaps" else "state" if item.open_key == "state" else "what"
    return found, (check, Question(FILL_IN, ask, closes, (name,)))


def _wire(typed: str, data: Refdata) -> Figure | None:
    """What the insulation of a wire stands; None where no wire is called so."""
    from gaugeblock.tables.load import canonical

    try:
        cell = canonical(data, "wiring/wire", "item", typed)
    except LookupMiss:
        return None
    keys = {"item": cell, "size": "all sizes", "condition": "any"}
    return lookup.look_up_or_none("wiring/wire", "temperature_maximum", data=data, **keys)


def _inputs(left: Figure, heat: Heat, data: Refdata) -> tuple[dict[str, Figure], str]:
    """The inputs of the estimate by its own names, and what of them stands in for what nobody gave."""
    from gaugeblock.warmth.emissivity import emissivity

    found = {"gap": left}
    found.update({n: heat.figures[k] for k, (_, _, n) in _MEASURES.items() if n and k in heat.figures})
    soak = found.pop("soak air", None)
    guessed = []
    for key, name, else_, said in (
        ("hot_finish", "hot finish", _PIPE_FINISH, "finish of the pipe"),
        ("finish", "line finish", _OWN_FINISH, "its own finish"),
    ):
        at = found["hot temperature"] if name == "hot finish" else None
        typed = heat.words.get(key)
        try:
            found[name] = emissivity(typed or else_, at, key, data)
        except LookupMiss:
            if typed:
                raise
            continue  # no printed emissivity at this heat: the estimate says that it is not given
        if not typed:
            guessed.append(f"{said}, {else_.split(': ')[1]} ({number_only(found[name], data)})")
    if soak is not None:
        found["soak air"] = soak
    return found, " and ".join(guessed)


def _cases(title: str, name: str, left: Figure, heat: Heat, data: Refdata) -> tuple[list[Case], list[Check]]:
    """Each case that could be solved with what stands in for what nobody gave, the hottest of given inputs first."""
    from gaugeblock.warmth.estimate import Beside, Estimate

    inputs, guessed = _inputs(left, heat, data)
    soak = inputs.pop("soak air", None)
    solved: list[Case] = []
    unsolved = []
    known = None
    for case in ("idling", "hot soak"):
        more, air = guessed, inputs.get("air")
        if case == "hot soak":
            air = soak or lookup.look_up_or_none(
                "lines/heat_sources", "air_temperature", data=data, part="air above exhaust tunnel", state="hot soak"
            )
            if soak is None and air is not None:
                more = " and ".join(t for t in (guessed, f"air after shut-down ({number_only(air, data)})") if t)
        if air is None:
            why = "the temperature of the air beside it is not given"
        else:
            beside = Beside({**inputs, "air": air}, "none", data)
            why = f"for an estimate these are not given: {', '.join(beside.missing)}" if beside.missing else ""
            if not why:
                known = estimate = Estimate(case, beside, known)
                why = estimate.why
                if not why:
                    solved.append((estimate, more, _figure(estimate, more)))
        if why:
            unsolved.append(Check(f"{title}, {case}", CANNOT_TELL, why, subject=name, case=case, bears=INFORM))
    return sorted(solved, key=lambda case: (bool(case[1]), -case[0].high)), unsolved


def _figure(estimate: Estimate, guessed: str) -> Figure:
    made = estimate.figure()
    return made.replace(conditions=f"{made.conditions}; nobody gave this: {guessed}") if guessed else made


def _held(title: str, name: str, case: Case, limit: Limit) -> Check:
    """One case against one limit. What stands in for what nobody gave never passes and never stops: it informs where
    its whole band is cool enough, else it asks.
    """
    from gaugeblock.warmth.verdict import high_end, in_band, low_end, stands

    (estimate, guessed, figure), (choice, most, item) = case, limit
    end = low_end(most, figure.unit)
    others = item.stricter(most) if item is not None else []
    strictest = min([end, *(low_end(f, figure.unit) for f in others)])
    what = f"it stands no more than {most.text} {most.unit}"
    if item is not None:
        what = stands(item, most, figure.unit)
    result, said = in_band(figure, end, strictest, what)
    bears = STOP
    if guessed:
        bears = INFORM if result == OK else ASK
        result, said = CANNOT_TELL, f"nobody gave this: {guessed}; with it {said}"
    if choice:
        bears = INFORM  # the choice itself is asked
    high = high_end(figure, figure.unit)
    bounds = Bound(end, figure.unit, "max", most), Bound(high, figure.unit, figure=figure)
    about = f"{title}, {estimate.case}" + (f" ({choice})" if choice else "")
    return Check(about, result, said, *bounds, subject=name, case=estimate.case, bears=bears)


def _question(name: str, guessed: str, check: Check, key: str) -> Question:
    if guessed:
        text = f"Give what nobody gave ({guessed}), or measure the {name} on the car, hot and after shut-down."
        return Question(MEASURE, text, key, (check.name,))
    text = f"Measure the {name} on the car, hot and after shut-down, with a crayon, paint or a thermocouple."
    return Question(MEASURE, text, key, (check.name,))


def _measured(title: str, name: str, at: Figure, limits: list[Limit], key: str) -> Warmed:
    """What was measured on the car: it governs, and nothing is estimated."""
    from gaugeblock.warmth.verdict import CLOSE, high_end, is_close, low_end

    checks, questions = [], []
    for choice, most, _ in limits:
        end, high = low_end(most, at.unit), high_end(at, at.unit)
        said = f"measured {at.text} {at.unit}; it stands no more than {most.text} {most.unit}"
        result = OK
        if high > end * (1 + 1e-9):
            result, said = NOT_OK, f"{said}: too hot"
        elif is_close(end, high, at.unit):
            result, said = CANNOT_TELL, f"{said}: less than {CLOSE} is left, and a reading is no better than that"
        about = f"{title}, measured" + (f" ({choice})" if choice else "")
        bounds = Bound(end, at.unit, "max", most), Bound(high, at.unit, figure=at)
        bears = STOP if not choice else INFORM if result == OK else ASK
        check = Check(about, result, said, *bounds, subject=name, case="measured", bears=bears)
        checks.append(check)
        if check.asks:
            questions.append(Question(MEASURE, f"Read the temperature again: {said}.", key, (about,)))
    if not limits:
        why = "what it stands is not given: say what it is, or its maker's limit"
        checks.append(Check(f"{title}, measured", CANNOT_TELL, why, subject=name, bears=INFORM))
    return Warmed([at, *(f for _, f, _ in limits)], checks, questions)


def _needed(cases: list[Case], limits: list[Limit], data: Refdata) -> Figure | None:
    """The gap at which the hottest case of given inputs is cool enough; none where the air or a finish was not given,
    for a gap of a cooler case would mislead.
    """
    from gaugeblock.warmth.estimate import gap_needed
    from gaugeblock.warmth.verdict import CLOSE, CLOSE_K, low_end

    worst = next((e for e, guessed, _ in cases if not guessed and e.case == "hot soak"), None)
    if worst is None or len(limits) != 1:
        return None
    _, most, _ = limits[0]
    top = units.to_base(low_end(most, most.unit), most.unit) - CLOSE_K
    return gap_needed(worst, most, top, f"{CLOSE} under {number_only(most, data)}")


def _told(cases: list[Case]) -> list[Caution]:
    if not cases:
        return []
    text = (
        "The heat at this gap is an estimate of a long line beside a bare pipe in still air, without flow in it; hot "
        "gas and leaks are not in it. Measure it hot and after shut-down."
    )
    return [Caution(text, "note", (cases[0][2].id,), "calculated")]


def _said(cases: list[Case], limits: list[Limit], data: Refdata) -> str:
    """One line: how warm it gets at the worst and how far that is to be trusted, and what it stands."""
    if not cases:
        return ""
    from gaugeblock.warmth.verdict import low_end, too_hot_by

    estimate, _, figure = max(cases, key=lambda case: case[0].high)
    said = f"about {printed(figure, data)} at {_AT[estimate.case]}, {figure.trust}"
    stands = " or ".join(f"{number_only(f, data, figure.unit)}{f' ({c})' if c else ''}" for c, f, _ in limits)
    hot = too_hot_by(figure, min((low_end(f, figure.unit) for _, f, _ in limits), default=figure.typical))
    return f"{said}; it stands {stands}{hot if len(limits) == 1 else ''}" if stands else said
