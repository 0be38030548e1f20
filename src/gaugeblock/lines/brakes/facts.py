"""The answer ``brake_fact``: what rules and habits say of residual pressure, tests, slopes, stopping and bleeding."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import Candidate, Decision, ask, none, use
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.lines.brakes.words import SECOND
from gaugeblock.lines.given import choice_of
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

BRAKES, LIMITS = "lines/brakes", "lines/limits"
RESIDUAL, BLEEDING, LEAK, PARKING, STOPPING, RESERVE = (
    "residual pressure",
    "bleeding",
    "leak test",
    "parking brake",
    "stopping distance",
    "pedal reserve",
)
SUBJECTS = {
    RESIDUAL: ("residual", "residual valve", "residual pressure valve", "rpv"),
    BLEEDING: ("bleed", "bleed order", "bleeding order", "bleed sequence"),
    LEAK: ("leak", "pressure test", "hold test", "test", "leak check"),
    PARKING: ("parking", "hand brake", "handbrake", "emergency brake", "park brake"),
    STOPPING: ("stopping", "stop", "stopping distances", "braking distance"),
    RESERVE: ("reserve", "pedal", "pedal travel"),
}
_BELOW, _ABOVE = "disc, master cylinder below the calipers", "disc, master cylinder above the calipers"
CASES = {
    "drum": ("drums", "drum brakes", "drum brake"),
    _BELOW: ("disc below", "discs below", "below", "master below", "low master cylinder", "under the floor"),
    _ABOVE: ("disc above", "discs above", "above", "master above", "disc", "discs", "on the firewall"),
}


class Rule(Value):
    """One published rule: whose, its subject in the tables, the quantity, the verb and what to do; ``more`` are other
    quantities of it, with the subject that they stand under.
    """

    __slots__ = ("do", "more", "place", "quantity", "subject", "verb")

    place: str
    subject: str
    quantity: str
    verb: str
    do: str
    more: tuple[tuple[str, str], ...]

    def __init__(
        self, place: str, subject: str, quantity: str, verb: str, do: str, more: tuple[tuple[str, str], ...] = ()
    ) -> None:
        put(self, "place", place)
        put(self, "subject", subject)
        put(self, "quantity", quantity)
        put(self, "verb", verb)
        put(self, "do", do)
        put(self, "more", more)


_TEST = "hydraulic brake hold test"
_HOLD = "Push the pedal with it and hold for {0}: it must not sink. Look at every joint meanwhile, then again when hot."
_CAR, _FULL = "service brakes, car for 10 persons or fewer", "service brakes cold, full application"
RULES: dict[str, tuple[Rule, ...]] = {
    LEAK: (
        Rule("US Massachusetts", _TEST, "pedal_test_force", "PUSH WITH", _HOLD, (("hold_time", _TEST),)),
        Rule("Canada Quebec", _TEST, "pedal_test_force", "PUSH WITH", "{c}."),
    ),
    RESERVE: (
        Rule("Canada Quebec", _TEST, "pedal_travel_maximum", "KEEP UNDER", "Of the whole way of the pedal."),
        Rule("US Massachusetts", _TEST, "pedal_reserve_minimum", "LEAVE", "Of the way of the pedal, at the least."),
        Rule("US Maine", "brake pedal test", "pedal_reserve_minimum", "LEAVE", "Of the way of the pedal."),
    ),
    PARKING: (
        Rule(
            "US federal",
            "parking brake",
            "grade_hold",
            "MUST HOLD",
            "A slope of this, laden, both ways, for {0}, with {1} at the hand at most.",
            (("hold_time", "parking brake hold test"), ("control_force_maximum", "parking brake control, hand")),
        ),
    ),
    STOPPING: (
        Rule("US federal", _FULL, "stopping_distance_maximum", "STOP WITHIN", "{c}."),
        Rule(
            "US Pennsylvania",
            _CAR,
            "stopping_distance_maximum",
            "STOP WITHIN",
            "{c}; {0} of the weight as braking force.",
            (("braking_force_minimum", _CAR),),
        ),
    ),
}
_ORDER = (
    "Bleed by the vehicle's own manual. Of four manuals read, three print right rear, left rear, right front, left"
    " front; one begins with the wheel nearest the place that was opened. After the master cylinder was off or ran"
    " dry, bleed it first."
)
_NO_VALVE = "No residual valve: habit fits none where the master cylinder stands above the calipers."


def brake_fact(
    subject: str, *, case: str | None = None, place: str | None = None, data: Refdata | None = None
) -> Sheet:
    """What rules and habits say of a brake.

    ``subject`` is ``residual pressure``, ``bleeding``, ``leak test``, ``parking brake``, ``stopping distance`` or
    ``pedal reserve``; ``case`` the kind of brake of a residual pressure (``drum``, ``disc below``, ``disc above``);
    ``place`` whose rule it is (``US federal``).

    Raises InputError for a subject or a case that there is not, LookupMiss for a place without such a rule, Ambiguous
    where the place or the case was not said and there are several.

    >>> brake_fact("leak test", place="US Massachusetts").decision.figures[0].text
    '125'
    """
    data = data or refdata()
    named = choice_of(subject, "subject", SUBJECTS) or ""
    asked = {"subject": subject, "case": case, "place": place}
    if named == BLEEDING:
        return _bleeding(asked, data)
    if named == RESIDUAL:
        which = choice_of(case, "case", CASES)
        if which is None:
            raise Ambiguous(subject, BRAKES, "the kind of brake changes it", tuple(CASES), "name the case")
        return _residual(which, asked, data)
    return _rule(named, place, asked, data)


def _rule(named: str, place: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    rules = {r.place: r for r in RULES[named]}
    if place is None and len(rules) > 1:
        raise Ambiguous(named, LIMITS, "rules differ by place", tuple(rules), "name the place")
    own = next(iter(rules)) if place is None else place
    rule = next((r for p, r in rules.items() if p.casefold() == own.casefold()), None)
    if rule is None:
        raise LookupMiss(own, "place", f"no rule of a {named} was found for it", tuple(rules), "use one of these")

    def of(quantity: str, subject: str) -> Figure:
        return look_up(LIMITS, quantity, data=data, jurisdiction=rule.place, subject=subject, service="vehicle")

    figure = of(rule.quantity, rule.subject)
    more = [of(q, s) for q, s in rule.more]
    said = figure.conditions
    do = rule.do.format(*(number_only(f, data) for f in more), c=said[:1].upper() + said[1:])
    said = "a rule of inspection or approval, not a target; local rules govern"
    check = Check("what it is", CANNOT_TELL, said, subject="rule", bears=INFORM)
    decision = use(rule.verb, figure, do)
    title = f"{named}, {rule.place}"
    return Sheet(title, asked, data, [figure, *more], [check], [Caution(SECOND, "injury")], decision=decision)


def _residual(which: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    title = f"residual pressure, {which}"
    if which == _ABOVE:
        text = "A soft pedal there has another cause: look for it."
        return Sheet(
            title, asked, data, [], [], [Caution(text, "damage")], decision=none("RESIDUAL PRESSURE", _NO_VALVE)
        )
    figure = look_up(BRAKES, "residual_pressure_typical", data=data, subject=RESIDUAL, case=which, service="vehicle")
    others = [o for o in figure.others if not o.standing and o.chosen_by != "service"]
    candidates = [
        Candidate(f, "by a textbook" if f.source == "TXT-BRK08" else "as shops fit it", _comes(f))
        for f in (figure, *others)
    ]
    name = "residual pressure"
    check = Check(name, CANNOT_TELL, "habit, and no publication of a general figure was found", bears=ASK)
    do = "Ask the maker of the master cylinder whether it has a valve inside: two in one line drag or lock."
    question = Question(ASK_MAKER, "Is there a residual valve inside the master cylinder?", "case", (name,))
    caution = Caution("When drums become discs, take the drum valve out of that circuit: the pads drag.", "damage")
    decision: Decision = ask("RESIDUAL PRESSURE", candidates, (name,), do)
    return Sheet(title, asked, data, [figure, *others], [check], [caution], decision=decision, questions=[question])


def _comes(figure: Figure) -> str:
    return (
        "keeps the cups of the wheel cylinders spread"
        if "drum" in figure.key["case"]
        else "keeps the fluid from running back"
    )


def _bleeding(asked: dict[str, str | None], data: Refdata) -> Sheet:
    army = look_up(
        BRAKES, "bleeding_pressure", data=data, subject="bleeding", case="with pressure", service="military vehicle"
    )
    one = look_up(
        BRAKES,
        "pedal_strokes",
        data=data,
        subject="bleeding",
        case="with the pedal, empty the booster",
        service="one vehicle",
    )
    said = f"a truck manual bleeds with {number_only(army, data)} at the reservoir; the vehicle's own manual governs"
    checks = [
        Check("pressure at the reservoir", CANNOT_TELL, said, subject="pressure", bears=INFORM),
        Check(
            "booster", CANNOT_TELL, f"one manual empties it with {number_only(one, data)} strokes first", bears=INFORM
        ),
    ]
    caution = Caution("Brake fluid burns on a hot exhaust and takes paint off: catch it, wipe it up.", "injury")
    decision = none("BLEED", _ORDER)
    return Sheet("bleeding brakes", asked, data, [army, one], checks, [caution], decision=decision)
