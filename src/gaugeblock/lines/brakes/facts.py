"""The answer ``brake_fact``: what rules and habits say of residual pressure, tests, slopes, stopping and bleeding."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.needs import unused
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import InputError
from gaugeblock.lines.brakes import balance, habits, rules
from gaugeblock.lines.brakes.habits import BRAKES, PEDAL, RESIDUAL, SIZE
from gaugeblock.lines.brakes.rules import LEAK, PARKING, RESERVE, STOPPING
from gaugeblock.lines.given import choice_of
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic

BALANCE, BLEEDING = "balance", "bleeding"
SUBJECTS = {
    RESIDUAL: ("residual", "residual valve", "residual pressure valve", "rpv"),
    SIZE: ("size", "tube size", "line", "brake line size", "tube"),
    PEDAL: ("ratio", "lever ratio", "pedal leverage"),
    BALANCE: ("bias", "brake balance", "brake bias", "proportioning", "proportioning valve"),
    BLEEDING: ("bleed", "bleed order", "bleeding order", "bleed sequence"),
    LEAK: ("leak", "pressure test", "hold test", "test", "leak check"),
    PARKING: ("parking", "hand brake", "handbrake", "emergency brake", "park brake"),
    STOPPING: ("stopping", "stop", "stopping distances", "braking distance"),
    RESERVE: ("reserve", "pedal", "pedal travel"),
}
# What a subject does not go by: a rule has its place, a habit its case.
_UNUSED = {
    **dict.fromkeys((BALANCE, BLEEDING), ("case", "place", "ratio")),
    **dict.fromkeys((RESIDUAL, SIZE), ("place", "ratio")),
    PEDAL: ("place",),
}
_ORDER = (
    "Bleed by the vehicle's own manual. Of four manuals read, three print right rear, left rear, right front, left"
    " front; one begins with the wheel nearest the place that was opened. After the master cylinder was off or ran"
    " dry, bleed it first."
)


def _fact_topic() -> Topic:
    from gaugeblock.lines.brakes.ask import FACT

    return FACT


@opens(_fact_topic, "subject")
def brake_fact(
    subject: str,
    *,
    case: str | None = None,
    place: str | None = None,
    ratio: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What rules and habits say of a brake.

    ``subject`` is ``residual pressure``, ``line size``, ``pedal ratio``, ``balance``, ``bleeding``, ``leak test``,
    ``parking brake``, ``stopping distance`` or ``pedal reserve``; ``case`` the kind of brake of a residual pressure
    (``drum``, ``disc below``, ``disc above``), what a tube feeds (``to one wheel``, ``axle``), or the help that a pedal
    has (``assisted``, ``no assist``);
    ``place`` whose rule it is (``US federal``); ``ratio`` that a pedal has (``4``), put beside what shops make.

    Raises InputError for a subject or a case that there is not, LookupMiss for a place without such a rule, Ambiguous
    where the place or the case was not said and there are several.

    >>> brake_fact("leak test", place="US Massachusetts").decision.figures[0].text
    '125'
    """
    data = data or refdata()
    named = subject_of(subject)
    asked = {"subject": subject, "case": case, "place": place, "ratio": ratio}
    unused(asked, _UNUSED.get(named, ("case", "ratio")), named)
    if named == BLEEDING:
        return _bleeding(asked, data)
    if named == BALANCE:
        return balance.judged("brake balance", asked, data)
    if named == RESIDUAL:
        return habits.residual(case, asked, data)
    if named == PEDAL:
        return habits.pedal(case, asked, data)
    if named == SIZE:
        return habits.size(case, asked, data)
    return rules.judged(named, place, asked, data)


def subject_of(typed: str) -> str:
    """The subject that was typed; InputError with the subjects there are."""
    named = choice_of(" ".join(typed.split()), "subject", SUBJECTS)
    if named is None:
        raise InputError(typed, "subject", "no subject is named", tuple(SUBJECTS), "name one of these")
    return named


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
