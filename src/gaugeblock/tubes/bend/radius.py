"""A die's radius against the least radius of a tube, what that comes to, and what would settle it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check, at_least
from gaugeblock.answer.decision import Candidate, ask, none, stop, use
from gaugeblock.answer.making import base
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.tubes.bend.bent import CAGE, MINIMUMS, Bent
from gaugeblock.tubes.bend.least import Minimum, outside_list

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.decision import Decision

VERB = "BEND ON"
NAME = "radius against the governing minimum"
HABIT = "radius against the habit of the method"
MAKER = "radius against the maker's least"
_TEST = "bend a test piece"


def radius_checks(tube: Bent, own: list[Minimum], habits: list[Minimum]) -> list[Check]:
    """The governing minimum of the service asked, the maker's own, and the habit of the method beside a cage's rule."""
    checks = [_held_to_stricter(_against(NAME, tube, own[0]), tube, own[1:]) if own else _unknown(tube)]
    if tube.service == CAGE and habits:
        checks.append(_against(HABIT, tube, habits[0]))
    if tube.maker is None:
        return checks
    needed = Bound(units.from_base(base(tube.maker), tube.unit), tube.unit, "min", tube.maker)
    if tube.centre is None or tube.clr_m is None:
        why = f"the radius of the die is not given; {number_only(tube.maker, tube.data)} is needed (the maker)"
        return [*checks, Check(MAKER, CANNOT_TELL, why, needed, bears=INFORM)]
    got = Bound(tube.length(tube.clr_m), tube.unit, figure=tube.centre)
    why = f"die {_text(got.value)} {tube.unit}; {_text(needed.value)} {tube.unit} is needed (the maker)"
    return [*checks, at_least(MAKER, got, needed, why)]


def decision(tube: Bent, own: list[Minimum], checks: list[Check]) -> Decision:
    """The radius of the die, the least radius where no die is given, or a test piece first."""
    failed = [c for c in checks if c.stops]
    if failed:
        limits = {c.required.figure.id: c.required.figure for c in failed if c.required and c.required.figure}
        needed = max((c.required for c in failed if c.required), key=lambda b: b.value)
        what = f"Use a die of {_text(needed.value)} {needed.unit} radius or more."
        if needed.unit == "1":
            what = "Bend another tube: this one is too flat at the bend."
        return stop(VERB, [Candidate(f, "required") for f in limits.values()], [c.name for c in failed], what)
    open_ = [c for c in checks if c.asks]
    if tube.centre is None:
        return _without_die(tube, own)
    if not open_:
        return use(VERB, tube.centre, _rests_on(tube, own), [c.name for c in checks if c.result == OK])
    mine = Candidate(tube.centre, "a test piece of this tube on this die has no flaw", "bend on this die")
    larger = [
        Candidate(m.radius, "no test piece is bent", f"the usual least radius (HABIT), {_ends(tube, m)}")
        for m in own
        if m.high_m > float(tube.clr_m or 0) * (1 + 1e-9) and m.radius.quantity == "bend_radius_minimum"
    ]
    do = "Bend a test piece of this tube on this die first, or ask the die's maker for its least radius."
    return ask(VERB, [*larger[:2], mine], [c.name for c in open_], do)


def _rests_on(tube: Bent, own: list[Minimum]) -> str:
    """What lets the radius of the die be used."""
    if tube.maker is not None:
        return f"The bender's maker gives {number_only(tube.maker, tube.data)} or more."
    if own and own[0].row.basis != "common practice":
        return f"The rule needs {_ends(tube, own[0])} or more ({own[0].row.source})."
    return f"HABIT: the smallest usual radius is {_ends(tube, own[0])}." if own else "A bend made so was measured."


def _without_die(tube: Bent, own: list[Minimum]) -> Decision:
    rule = own[0].radius if own and own[0].row.basis != "common practice" else None
    firm = [f for f in (rule, tube.maker) if f is not None]
    if firm:  # the bender may form less than the rule allows
        return use(VERB, max(firm, key=base), "This radius or more.")
    if not own:
        return none(VERB, "Ask the maker of the bender for the least radius of this tube, or bend a test piece.")
    first = own[0]
    found = Candidate(first.radius, "the bender's maker gives no other", f"HABIT: shops differ, {_ends(tube, first)}")
    return ask(VERB, [found], [NAME], "Give the radius of the die, or ask its maker for the least radius of this tube.")


def questions(tube: Bent, own: list[Minimum], checks: list[Check]) -> list[Question]:
    """What settles an open radius."""
    names = tuple(c.name for c in checks if c.asks and c.name in (NAME, HABIT))
    if not names or any(c.stops for c in checks):
        return []
    maker = Question(ASK_MAKER, "Ask the bender's maker for the least radius of this tube.", "maker_radius", names)
    if tube.centre is None:
        habit = bool(own) and own[0].row.basis == "common practice"
        fill = Question(FILL_IN, "Give the centre-line radius of the die.", "radius", names)
        return [fill, maker] if habit or not own else []
    text = "Bend a test piece of this tube on this die, and measure the largest and the smallest diameter at the bend."
    return [Question(MEASURE, text, "diameters", names), maker]


def _text(value: float) -> str:
    return units.significant(value, 4)


def _ends(tube: Bent, minimum: Minimum) -> str:
    ends = (_text(tube.length(end)) for end in (minimum.low_m, minimum.high_m))
    return f"{' to '.join(dict.fromkeys(ends))} {tube.unit}"


def _unknown(tube: Bent) -> Check:
    """No row of this service answers for this tube and method."""
    known = (
        r["family"]
        for r in tube.data.table(MINIMUMS).rows
        if r["service"] == tube.service and r["family"] not in ("any", tube.family)
    )
    also = ", ".join(dict.fromkeys(known))
    why = (
        f"no published source was found, and no habit is on record, for {tube.family} tube by {tube.method} in service"
        f" {tube.service}"
    )
    why += f" (known for: {also})" if also else ""
    return Check(NAME, CANNOT_TELL, f"{why}: {_TEST}", bears=_bears(tube, ASK))


def _bears(tube: Bent, bears: str) -> str:
    """A bend that was made and measured, or the maker's own figure, settles what a habit would ask."""
    return INFORM if tube.tested or tube.maker is not None else bears


def _held_to_stricter(check: Check, tube: Bent, others: list[Minimum]) -> Check:
    """An ok on the governing minimum is ``cannot tell`` where another living one of the service needs a larger
    radius.
    """
    if check.result != OK or tube.clr_m is None:
        return check
    stricter = [(r, m) for m in others if (r := base(m.radius)) > float(tube.clr_m) * (1 + 1e-9)]
    if not stricter:
        return check
    most, minimum = max(stricter, key=lambda pair: pair[0])
    who = f"{minimum.row.source or 'another habit'}, service {minimum.row.key['service']}"
    why = f"{check.reason}; {who} needs {_text(tube.length(most))} {tube.unit}: {_TEST}"
    return check.replace(result=CANNOT_TELL, reason=why, bears=_bears(tube, ASK))


def _against(name: str, tube: Bent, minimum: Minimum) -> Check:
    """ok at or over all the spread; not ok under all of it where a publication says so, else ``cannot tell``."""
    row = minimum.row
    of = row.key["product"]
    is_habit = row.basis == "common practice"
    who = f"{row.source or 'HABIT'}, service {row.key['service']}{'' if of == 'tube' else f', {of}'}"
    needed = Bound(tube.length(minimum.high_m), tube.unit, "min", minimum.radius)
    if tube.centre is None or tube.clr_m is None:
        why = f"the radius of the die is not given; {number_only(minimum.radius, tube.data)} is needed ({who})"
        return Check(name, CANNOT_TELL, why, needed, bears=_bears(tube, ASK) if is_habit else INFORM)
    got = Bound(tube.length(tube.clr_m), tube.unit, figure=tube.centre)
    usual = "the smallest usual radius is" if is_habit else "the rule needs"
    text = f"die {_text(got.value)} {tube.unit} to the centre line; {usual} {_ends(tube, minimum)} ({who})"
    check = at_least(name, got, needed, text)
    over_low = float(tube.clr_m) >= minimum.low_m * (1 - 1e-9)
    thin = outside_list(tube, row)
    why = ""
    if thin and over_low:
        why = thin
    elif check.result == NOT_OK and over_low and row.key["measured_to"] == "not stated":
        why = "the source does not say what it is measured to"
    elif check.result == NOT_OK and is_habit:
        why = "shops differ" if over_low else "smaller than shops usually bend"
    elif check.result == NOT_OK and over_low:
        why = "between the ends of the rule"
    if why:
        return Check(name, CANNOT_TELL, f"{text}. {capital(why)}: {_TEST}", needed, got, bears=_bears(tube, ASK))
    if check.result == NOT_OK:
        return check.replace(reason=f"{check.reason}: use a larger die")
    if is_habit:
        return check.replace(reason=f"{check.reason}: what the method usually forms, not what the part may carry")
    return check
