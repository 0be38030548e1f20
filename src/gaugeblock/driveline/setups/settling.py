"""What a step of a set-up comes to: the figure to set, what must be asked first, or that what was left is wrong."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, STOP, Bound, Check, at_least, at_most
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import base
from gaugeblock.answer.printing import printed
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, Question
from gaugeblock.driveline.setups.rows import NOT_SAID
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Step
    from gaugeblock.driveline.setups.given import Given
    from gaugeblock.tables.load import Refdata

CHECK = "as left within the maker's figure"
_RING = ("ring gear", "crown wheel", "crownwheel", "ring")


def ends_of(rule: Figure) -> tuple[float | None, float | None]:
    """Lowest and highest allowed; a lone value of a maximum or minimum is that end, another lone value has none."""
    if rule.low is not None or rule.high is not None:
        return rule.low, rule.high
    if rule.quantity.endswith("_maximum"):
        return None, rule.value
    return (rule.value, None) if rule.quantity.endswith("_minimum") else (None, None)


def within(name: str, got: Figure, rule: Figure) -> Check:
    """Whether a finding keeps a figure; where that has no tolerance and the finding differs, it cannot be told."""
    low, high = ends_of(rule)
    value = units.from_base(base(got), rule.unit)
    actual = Bound(value, rule.unit, "", got)
    said = f"{got.text} {got.unit}"
    if low is None and high is None:
        same = abs(value - rule.typical) <= 1e-9 * abs(rule.typical)
        end = Bound(rule.typical, rule.unit, "max", rule)
        if same:
            return at_most(name, actual, end, f"{said}, the figure itself", subject="as left")
        why = f"{said}; the figure is {rule.text} {rule.unit} without a tolerance"
        return Check(name, CANNOT_TELL, why, end, actual, subject="as left", bears=ASK)
    ends = " to ".join(f"{end:g}" for end in (low, high) if end is not None)
    word = "at least " if high is None else "at most " if low is None else ""
    reason = f"{said}; {word}{ends} {rule.unit}, {rule.source}"
    if low is not None and (high is None or value < low):
        return at_least(name, actual, Bound(low, rule.unit, "min", rule), reason, subject="as left", bears=STOP)
    return at_most(name, actual, Bound(high or 0.0, rule.unit, "max", rule), reason, subject="as left", bears=STOP)


def verb_of(rule: Figure) -> str:
    """How a figure is to be taken."""
    low, high = ends_of(rule)
    if low is None and high is not None and (rule.value is None or rule.quantity.endswith("_maximum")):
        return "KEEP UNDER"
    if high is None and low is not None and (rule.value is None or rule.quantity.endswith("_minimum")):
        return "KEEP OVER"
    return "TIGHTEN" if rule.quantity == "tightening_torque" else "SET"


def goes_back(of: Step, quantity: str) -> bool:
    """Whether used gears go back to the backlash that was read before stripping."""
    return of.wear == "used" and of.component.casefold() in _RING and quantity.startswith("backlash")


def check_left(of: Step, given: Given, own: tuple[Figure, ...]) -> Check:
    """Whether what was left is the figure to set; not yet left is an empty box, no question."""
    rule = given.made or (own[0] if len(own) == 1 else None)
    actual = Bound(given.left.typical, given.left.unit, "", given.left) if given.left is not None else None
    if any(d.key.startswith("maker") for d in given.doubts):
        return _open("the maker's figure is doubtful as it was typed", actual)
    if rule is None:
        several = "the manual of this axle has more than one figure here: say whether new or used, or name the step"
        missing = "the maker's figure is not given; figures of other axles do not answer"
        return _open(several if own else missing, actual)
    if given.made is None and of.wear is None and rule.key.get("wear") in ("new", "used"):
        why = f"the figure is for {rule.key['wear']} parts; whether these are new or used is not given"
        return _open(why, actual)
    if given.made is None and goes_back(of, rule.quantity):
        return _open("used gears go back to their recorded backlash, whatever the figure for new ones", actual)
    if given.made is not None and given.made.basis != "maker":
        return _open("the maker's figure has no source and place: name them", actual)
    if given.left is None:
        if any(d.key == "as_left" for d in given.doubts):
            return _open("as left is doubtful")
        said = f"as left is words: {of.as_left}" if of.as_left else "as left is not given"
        return Check(CHECK, CANNOT_TELL, said, subject="as left", bears=INFORM)
    return within(CHECK, given.left, rule)


def _open(why: str, actual: Bound | None = None) -> Check:
    return Check(CHECK, CANNOT_TELL, why, None, actual, subject="as left", bears=ASK)


def settle(
    of: Step, given: Given, own: tuple[Figure, ...], check: Check, data: Refdata
) -> tuple[Decision, tuple[Question, ...]]:
    """The decision of a step and the questions behind it."""
    what = f"{of.component}, {of.step}"
    questions = [Question(FILL_IN, d.said, d.key, (_name(d.key),)) for d in given.doubts]
    maker = Question(ASK_MAKER, f"What does the axle maker print for {what}?", "maker.value", (CHECK,))
    rule = given.made
    if rule is not None and rule.basis == "maker":
        if of.maker is not None and not of.maker.place:
            text = f"On which page of {of.maker.source} does the figure stand? {what}."
            questions.append(Question(FILL_IN, text, "maker.place"))
        return _by_rule(rule, given, check, data, questions)
    if rule is not None:
        whose = Question(FILL_IN, f"Whose figure is it: which sheet, which page? {what}.", "maker.source", (CHECK,))
        candidates = [Candidate(rule, "it is the axle maker's own figure", "set to it")]
        do = "Say whose figure it is: name the sheet and the page."
        return ask(verb_of(rule), candidates, [CHECK], do), (*questions, whose)
    candidates, do, more = _candidates(of, given, own, what)
    questions += more
    if len(own) == 1 and not candidates:
        return _by_rule(own[0], given, check, data, questions)
    doubt = next((d.said for d in given.doubts if d.key.startswith("maker")), "")
    if not candidates:
        questions += [] if doubt else [maker]
        return none(
            "SET", doubt or f"Ask the axle maker for the figure: {what}. Another axle's does not apply."
        ), tuple(questions)
    verb = verb_of(candidates[0].figure)
    return ask(verb, candidates, [CHECK, *[_name(d.key) for d in given.doubts]], doubt or do), (*questions, maker)


def _by_rule(
    rule: Figure, given: Given, check: Check, data: Refdata, questions: list[Question]
) -> tuple[Decision, tuple[Question, ...]]:
    verb = verb_of(rule)
    doubt = given.doubts[0] if given.doubts else None
    if check.stops:
        wrong = f"As left, {given.left.text} {given.left.unit}, is outside {printed(rule, data)}" if given.left else ""
        required = [Candidate(rule, "", "what is required")]
        return stop(verb, required, [CHECK], f"{wrong}. Set it again, and read it again."), tuple(questions)
    if doubt is not None:
        then = "set to it, whatever was left" if doubt.key == "as_left" else "this axle's own manual has it"
        return ask(verb, [Candidate(rule, "what was typed is wrong", then)], [_name(doubt.key)], doubt.said), tuple(
            questions
        )
    if check.asks:
        fails = check.result == NOT_OK
        do = (
            "What was left is outside it; the figure is a weak one: ask the axle maker."
            if fails
            else ("Ask the axle maker how far it may be off: the figure has no tolerance.")
        )
        questions.append(Question(ASK_MAKER, "How far may it be off, by the axle maker?", "maker.high", (CHECK,)))
        return ask(verb, [Candidate(rule, "the axle maker allows nothing else", "set to it")], [CHECK], do), tuple(
            questions
        )
    return use(verb, rule), tuple(questions)


def _candidates(
    of: Step, given: Given, own: tuple[Figure, ...], what: str
) -> tuple[list[Candidate], str, list[Question]]:
    """What may be the figure where the maker's is not given, what settles it, and the questions."""
    quantity = own[0].quantity if own else given.found.quantity if given.found is not None else ""
    if goes_back(of, quantity):
        found = (
            [Candidate(given.found, "the gears go back as they were", "what was read before stripping")]
            if given.found
            else []
        )
        new = [Candidate(f, "the gears are new after all", "the figure for new gears") for f in own[:1]]
        text = f"What backlash was read before stripping? {what}."
        do = "Used gears go back to the backlash that was read before stripping."
        return [*found, *new], do, [Question(FILL_IN, text, "as_found", (CHECK,))]
    if len(own) > 1 or (own and of.wear is None and own[0].key.get("wear") in ("new", "used")):
        candidates = [Candidate(f, _when(f, own), "set to it") for f in own]
        by_wear = len({f.key["wear"] for f in own} - set(NOT_SAID)) > 1 or len(own) == 1
        key = "wear" if by_wear else "setting"
        do = (
            "Say whether the parts are new or used."
            if by_wear
            else "Name the step: the manual has several figures here."
        )
        return candidates, do, [Question(FILL_IN, f"{do} {what}.", key, (CHECK,))]
    return [], "", []


def _when(figure: Figure, own: tuple[Figure, ...]) -> str:
    """What tells one figure of an axle's own manual from the others."""
    wear = figure.key["wear"]
    parts = [figure.quantity.replace("_", " ")] if len({f.quantity for f in own}) > 1 else []
    parts.append(figure.conditions or (figure.key["step"] if wear in NOT_SAID else f"{wear} parts"))
    return ", ".join(parts)


def _name(key: str) -> str:
    return f"{key.replace('_', ' ').replace('maker.', 'maker ')} as typed"


def doubt_checks(given: Given) -> list[Check]:
    """One check a doubt."""
    return [Check(_name(d.key), CANNOT_TELL, d.said, subject=d.key, bears=ASK) for d in given.doubts]
