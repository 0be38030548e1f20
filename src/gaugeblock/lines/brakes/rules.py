"""Published rules of brakes: hold tests, pedal travel, slopes, stopping."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import use
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.lines.brakes.words import SECOND
from gaugeblock.lookup import look_up
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

LIMITS = "lines/limits"
LEAK, PARKING, STOPPING, RESERVE = "leak test", "parking brake", "stopping distance", "pedal reserve"


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

    @property
    def jurisdiction(self) -> str:
        """Whose it is, without the vehicles that it is for."""
        return self.place.partition(",")[0]

    @property
    def service(self) -> str:
        """The service that its rows stand under."""
        return "heavy truck" if self.place.endswith(_HEAVY) else "vehicle"


_HEAVY = "over 10,000 lb"
_FEDERAL_HEAVY = f"US federal, {_HEAVY}"
_TEST = "hydraulic brake hold test"
_HOLD = "Push the pedal with it and hold for {0}: it must not sink. Look at every joint meanwhile, then again when hot."
_CAR, _FULL = "service brakes, car for 10 persons or fewer", "service brakes cold, full application"
RULES: dict[str, tuple[Rule, ...]] = {
    LEAK: (
        Rule("US Massachusetts", _TEST, "pedal_test_force", "PUSH WITH", _HOLD, (("hold_time", _TEST),)),
        Rule("Canada Quebec", _TEST, "pedal_test_force", "PUSH WITH", "{c}."),
        Rule(_FEDERAL_HEAVY, _TEST, "pedal_test_force", "PUSH WITH", _HOLD, (("hold_time", _TEST),)),
    ),
    RESERVE: (
        Rule("Canada Quebec", _TEST, "pedal_travel_maximum", "KEEP UNDER", "Of the whole way of the pedal."),
        Rule("US Massachusetts", _TEST, "pedal_reserve_minimum", "LEAVE", "Of the way of the pedal, at the least."),
        Rule("US Maine", "brake pedal test", "pedal_reserve_minimum", "LEAVE", "Of the way of the pedal."),
        Rule(
            _FEDERAL_HEAVY,
            "brake pedal reserve test",
            "pedal_travel_maximum",
            "KEEP UNDER",
            "Of the way of the pedal, pushed with {0}.",
            (("pedal_test_force", "brake pedal reserve test"),),
        ),
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


def judged(named: str, place: str | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of a rule; Ambiguous where places have several, LookupMiss for one that has none."""
    rules = {r.place: r for r in RULES[named]}
    if place is None and len(rules) > 1:
        raise Ambiguous(named, LIMITS, "rules differ by place", tuple(rules), "name the place")
    own = next(iter(rules)) if place is None else place
    rule = next((r for p, r in rules.items() if p.casefold() == own.casefold()), None)
    rule = rule or next((r for r in rules.values() if r.jurisdiction.casefold() == own.casefold()), None)
    if rule is None:
        raise LookupMiss(own, "place", f"no rule of a {named} was found for it", tuple(rules), "use one of these")

    def of(quantity: str, subject: str) -> Figure:
        return look_up(
            LIMITS, quantity, data=data, jurisdiction=rule.jurisdiction, subject=subject, service=rule.service
        )

    figure = of(rule.quantity, rule.subject)
    more = [of(q, s) for q, s in rule.more]
    said = figure.conditions
    do = rule.do.format(*(number_only(f, data) for f in more), c=capital(said))
    said = "a rule of inspection or approval, not a target; local rules govern"
    check = Check("what it is", CANNOT_TELL, said, subject="rule", bears=INFORM)
    decision = use(rule.verb, figure, do)
    title = f"{named}, {rule.place}"
    return Sheet(title, asked, data, [figure, *more], [check], [Caution(SECOND, "injury")], decision=decision)
