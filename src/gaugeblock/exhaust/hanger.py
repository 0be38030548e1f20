"""The answer ``exhaust_hanger``: how far apart hangers stand, how near the first, how far they may swing."""

from __future__ import annotations

from math import ceil

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, OK, Bound, Check, at_most
from gaugeblock.answer.decision import Candidate, ask, none, use
from gaugeblock.answer.making import read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.exhaust.statements import cautions
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "HANG AT MOST"
TABLE = "exhaust/limits"
# What is asked: its dimension, the quantity that it is typed as, what the table calls its limit.
_READ = {
    "spacing": ("length", "support_spacing", "support_spacing_maximum", "hanger spacing", "car exhaust"),
    "first": (
        "length",
        "run_place",
        "support_to_joint_maximum",
        "first hanger",
        "behind the flexible section or the first joint",
    ),
    "swing": ("angle", "hanger_swing", "hanger_swing_maximum", "hanger swing", "rubber hanger, hot"),
}
_SAID = {
    "spacing": "from hanger to hanger",
    "first": "from the flexible section or the first joint to the first hanger",
    "swing": "swing of a hanger when the run is hot",
}
_ALONE = "a habit alone"


def habit(key: str, data: Refdata) -> Figure:
    """The habit of a spacing, of the first hanger or of a swing."""
    _, _, quantity, subject, case = _READ[key]
    return look_up(TABLE, quantity, data=data, subject=subject, case=case)


def exhaust_hanger(
    spacing: str | None = None,
    *,
    first: str | None = None,
    swing: str | None = None,
    run: str | None = None,
    tried: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How far apart the hangers of an exhaust stand, how near the first one is, and how far one may swing.

    Parameters are text as people write them: ``spacing`` from hanger to hanger (``4 ft``); ``first`` from the flexible
    section, or the first joint, to the first hanger (``10 in``); ``swing`` of a hanger from straight down when hot
    (``15 deg``); ``run`` the length of the whole run (``12 ft``), of which is told how many hangers that is;
    ``tried`` how the run was found to hold still.

    Returns a Sheet: the habits, for no publication about cars was found, and what was given against them. What each
    hanger carries and how far it swings is worked out by ``exhaust_run``. Raises InputError or UnitError for what
    cannot be read.

    >>> exhaust_hanger("40 in").decision.kind
    'ask'
    """
    data = data or refdata()
    asked = {"spacing": spacing, "first": first, "swing": swing, "run": run, "tried": tried}
    read = {
        key: stated(read_positive(typed, dim, key), quantity, key, data)
        for key, (dim, quantity, *_) in _READ.items()
        if (typed := asked[key])
    }
    title = "hangers of an exhaust" + "".join(f", {k} {f.text} {f.unit}" for k, f in read.items())
    odd = [q for key, figure in read.items() if (q := _odd(key, figure, data)) is not None]
    if odd:
        checks = [Check(f"{q.key} as typed", CANNOT_TELL, q.text, bears=ASK) for q in odd]
        decision = none(VERB, odd[0].text)
        return Sheet(title, asked, data, list(read.values()), checks, [], decision=decision, questions=odd)
    habits = {key: habit(key, data) for key in _READ}
    checks = [_held(key, figure, habits[key], data) for key, figure in read.items()]
    questions = [Question(FILL_IN, _mend(c), c.subject, (c.name,)) for c in checks if c.asks]
    checks.append(_tried(tried))
    if not tried:
        text = "Hang the run, heat it, shake it by hand: nothing may touch, knock or sag. Write down how it was tried."
        questions.append(Question(MEASURE, text, "tried", (_ALONE,)))
    shown = [habits["spacing"], *(habits[k] for k in read if k != "spacing")]
    asks = [c for c in checks if c.asks]
    candidates = [Candidate(f, _when(f, habits), "nothing touches, knocks or sags when it is tried") for f in shown]
    first_said = next((c for c in asks if c.name != _ALONE), asks[0] if asks else None)
    if first_said is None:
        decision = use(VERB, shown[0], "Habit, tried in this shop.")
    else:
        do = f"{capital(first_said.reason)}.{_counted(run, habits['spacing'])}"
        decision = ask(VERB, candidates, [c.name for c in asks], do)
    listed = list({f.id: f for f in (*decision.figures, *habits.values(), *read.values())}.values())
    told = cautions(data, ("exhaust",), ("carbon monoxide", "fixed point"))
    return Sheet(title, asked, data, listed, checks, told, decision=decision, questions=questions)


def _counted(run: str | None, spacing: Figure) -> str:
    """How many hangers a run of this length has at the usual spacing; blank where none was given."""
    if run is None:
        return ""
    long = read_positive(run, "length", "run")
    ends = (spacing.high or spacing.typical, spacing.low or spacing.typical)
    counts = [ceil(long.to("m") / units.to_base(end, spacing.unit) * (1 - 1e-9)) for end in ends]
    many = f"{counts[0]} to {counts[1]}" if counts[0] < counts[1] else f"{counts[0]}"
    return f" At the usual spacing {long.text} takes {many} hangers."


def _odd(key: str, figure: Figure, data: Refdata) -> Question | None:
    measure = read_positive(f"{figure.text} {figure.unit}", _READ[key][0], key)
    if is_plausible(measure, figure.quantity, data):
        return None
    span = plausible_range(figure.quantity, data)
    said = did_you_mean(f"{measure.text} is no usual {key} of hangers", other_readings(measure, *span) if span else ())
    return Question(FILL_IN, said, key, (f"{key} as typed",))


def _held(key: str, figure: Figure, most: Figure, data: Refdata) -> Check:
    """What was given against the habit; past its far end it asks, for no habit stops."""
    end = units.from_base(units.to_base(most.high or most.typical, most.unit), figure.unit)
    said = f"{number_only(figure, data)} {_SAID[key]}, the habit is {number_only(most, data, figure.unit)}"
    said += "" if most.high is not None else " at most"
    bounds = Bound(figure.typical, figure.unit, figure=figure), Bound(end, figure.unit, "max", most)
    return at_most(f"{key} of the hangers", *bounds, said, subject=key, bears=ASK)


def _mend(check: Check) -> str:
    what = {"spacing": "Put a hanger between", "first": "Move the first hanger forward"}
    return f"{what.get(check.subject, 'Hang it on a longer rubber, or set it ahead when cold')}: {check.reason}."


def _tried(tried: str | None) -> Check:
    if tried:
        return Check(_ALONE, OK, f"tried here: {tried}", bears=INFORM)
    why = "no published spacing for the hangers of a car was found"
    return Check(_ALONE, CANNOT_TELL, why, bears=ASK)


def _when(figure: Figure, habits: dict[str, Figure]) -> str:
    return next(_SAID[k] for k, f in habits.items() if f.id == figure.id)
