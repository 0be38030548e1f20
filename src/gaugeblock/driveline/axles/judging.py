"""An axle shaft judged: each case of the torque that reaches it, one decision over all of them."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Check
from gaugeblock.answer.decision import MOST_CANDIDATES, Candidate, Decision, ask, none
from gaugeblock.answer.decision import STOP as STOPPED
from gaugeblock.answer.decision import USE as USED
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.axles.extras import extras
from gaugeblock.driveline.axles.form import Body, Form, body_of, doubt_of_shear, governs, twists_of
from gaugeblock.driveline.axles.ways import ENGINE_END, QUANTITIES, Case, cases
from gaugeblock.driveline.axles.welding import preheat
from gaugeblock.driveline.carrying import VERB, Outcome, outcome
from gaugeblock.driveline.case import with_case
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.driveline.steel import Material
from gaugeblock.driveline.torsion import Torsion, torsion
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.axles.pull import Pull
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.tables.load import Refdata

_SEES = "ONE SHAFT SEES"
_SEEN = "one shaft sees this, whatever its steel"
_STEEL_DECIDES = "its steel decides whether it carries that"
_STEEL = "steel of the shaft"
REACHES = "torque that reaches the shaft"
# What is asked for a key that is not given.
_WANTED = {
    "engine_torque": (FILL_IN, "What is the most torque that the engine makes?"),
    "gear": (FILL_IN, "What is the ratio of the lowest gear?"),
    "ratio": (FILL_IN, "What is the axle ratio?"),
    "converter": (FILL_IN, "Has the gearbox a torque converter, and what is its stall ratio?"),
    "differential": (FILL_IN, "Is the differential open, limited slip or locked?"),
    "bias": (ASK_MAKER, "What is the torque bias of the limited slip differential, by its maker?"),
    "wheel_load": (MEASURE, "How much weight stands on this wheel when it pulls hardest?"),
    "grip": (FILL_IN, "How well does the tyre grip: what is its greatest pull over the weight on it?"),
    "height": (MEASURE, "How high over the road is the vehicle's centre of mass?"),
    "wheelbase": (MEASURE, "How long is the wheelbase?"),
    "driven": (FILL_IN, "Which axle is driven: rear or front?"),
    "radius": (MEASURE, "How far is the centre of the loaded wheel above the road?"),
}

# The other half of what was half given.
_HALF = {
    "spline": "Teeth were given and no pitch: what is the pitch of the spline?",
    "teeth": "A spline was given without its teeth: how many has it?",
    "fillet": "A shoulder was given without its fillet: what is the radius there?",
    "shoulder": "A fillet was given without its shoulder: what is the diameter of that?",
}


class Ending(Value):
    """One case judged: what the torque does to the shaft, and what that comes to."""

    __slots__ = ("case", "end", "torsion")

    case: Case
    torsion: Torsion
    end: Outcome

    def __init__(self, case: Case, torsion: Torsion, end: Outcome) -> None:
        put(self, "case", case)
        put(self, "torsion", torsion)
        put(self, "end", end)

    @property
    def passes(self) -> bool:
        """Whether the shaft carries it with nothing open."""
        return self.end.decision.kind == USED

    @property
    def stops(self) -> bool:
        """Whether the shaft yields, by firm figures."""
        return self.end.decision.kind == STOPPED


def judged(shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``axle``, of a shaft, its form and a pull that were read."""
    doubts = {**_doubts(pull, data), **doubt_of_shear(form, data), **{k: _HALF[k] for k in form.lacks()}}
    body = body_of(shaft, form, data)
    standing = cases(pull, data)
    reached = [f for c in standing[:1] for f in (c.torque, c.engine, c.tyre) if f is not None]
    if doubts or not standing or shaft.grade == "":
        return _unjudged(pull, doubts, standing, asked, data)
    of = Material(_bar(shaft, form), data)
    endings = [_ending(body, of, case, data) for case in standing]
    worst = endings[0]
    decision, checks, questions = _decided(endings, pull, data)
    decision = decision.replace(do=" ".join(t for t in (decision.do, governs(body, data)) if t))
    more = extras(worst.torsion, worst.case.torque, body, form, of, data)
    twists, about_twist = twists_of(shaft, form, worst.case.torque, of.table, data)
    shown = dict.fromkeys(
        (
            *decision.figures,
            *(e.case.torque for e in endings),
            *reached,
            *((worst.torsion.factor,) if worst.torsion.factor is not None and not worst.end.checks else ()),
            *more.figures,
            *twists,
            *worst.torsion.figures,
            *body.figures,
            *of.figures,
            *of.welding,
            *preheat(of.table, _bar(shaft, form).diameter, data),
        )
    )
    cautions = [
        *of.cautions,
        *worst.torsion.cautions,
        *about_twist,
        *_cautions(worst, pull, form, data),
        *of.weld_cautions,
    ]
    title = f"axle shaft, {of.title}"
    return Sheet(
        title, asked, data, list(shown), [*checks, *more.checks], cautions, decision=decision, questions=questions
    )


def _bar(shaft: Shaft, form: Form) -> Shaft:
    """The shaft with the diameter of its bar: the thickest of its steps."""
    thickest = max((d for d, _ in form.parts), key=lambda d: d.to("m"), default=shaft.diameter)
    return shaft.replace(diameter=thickest)


def _ending(body: Body, of: Material, case: Case, data: Refdata) -> Ending:
    strained = torsion(body.shaft, of.table, of.strength, data, torque=case.torque, diameter=body.diameter)
    found = with_case(body.shaft, of.table, strained, data)
    return Ending(case, found, outcome(body.shaft, found, data))


def _decided(endings: list[Ending], pull: Pull, data: Refdata) -> tuple[Decision, list[Check], tuple[Question, ...]]:
    """One decision over all cases, the checks and the questions behind it."""
    worst, mildest = endings[0], endings[-1]
    lacks = pull.lacks()
    said = _said(worst, data)
    own = [*worst.torsion.checks, *worst.end.checks]
    if worst.passes and not ("converter" in lacks and pull.lacks_tyre()):
        at_most = " That is the most that can reach it: what is open only lessens it." if lacks else ""
        decision = worst.end.decision.replace(do=f"{said} {worst.end.decision.do}{at_most}")
        return decision, [*own, Check(REACHES, OK, said, subject="shaft torque", bears=INFORM)], ()
    is_least = not pull.lacks_engine() and not pull.lacks_tyre()
    if not lacks or (mildest.stops and is_least) or worst.end.checks:
        end = mildest.end if mildest.stops else worst.end
        checks = [*mildest.torsion.checks] if mildest.stops else own
        reached = Check(REACHES, OK, said, subject="shaft torque", bears=INFORM)
        return end.decision.replace(do=f"{end.decision.do} {said}"), [*checks, reached], end.questions
    why = f"not given: {', '.join(k.replace('_', ' ') for k in lacks)}"
    check = Check(REACHES, CANNOT_TELL, why, subject="shaft torque", bears=ASK)
    checks = [c.replace(bears=ASK) if c.result == NOT_OK else c for c in own]
    candidates = [
        Candidate(factor, e.case.when or "the rest is as given", _then(e, data))
        for e in endings
        if (factor := e.torsion.factor) is not None
    ]
    names = [c.name for c in (check, *checks) if c.asks]
    do = f"{_WANTED[lacks[0]][1]} {said}"
    fails = worst.torsion.factor is not None and worst.torsion.factor.typical < 1
    questions = (*_questions(lacks), *(q for q in worst.end.questions if not (fails and q.key == "diameter")))
    if not candidates:
        return worst.end.decision, [check, *checks], questions
    return ask(VERB, candidates[:MOST_CANDIDATES], names, do), [check, *checks], questions


def _then(ending: Ending, data: Refdata) -> str:
    factor = ending.torsion.factor
    assert factor is not None
    torque = number_only(ending.case.torque, data)
    if factor.typical < 1:
        return f"the surface yields under {torque}"
    return f"carries {torque} {number_only(factor, data)} times over"


def _said(ending: Ending, data: Refdata) -> str:
    """Which end governs, in a sentence."""
    case = ending.case
    torque = number_only(case.torque, data)
    if case.engine is None or case.tyre is None:
        only = "The engine can send" if case.tyre is None else "The tyre can take"
        return f"{only} {torque} to this shaft."
    engine, tyre = number_only(case.engine, data), number_only(case.tyre, data)
    if case.end == "engine":
        return f"The engine governs: it sends {engine}, and the tyre holds to {tyre}."
    return f"The tyre governs: it lets go at {tyre}, and the engine can send {engine}."


def _questions(lacks: list[str]) -> tuple[Question, ...]:
    return tuple(Question(_WANTED[k][0], _WANTED[k][1], k, (REACHES,)) for k in lacks)


def _doubts(pull: Pull, data: Refdata) -> dict[str, str]:
    """What was typed and is not plausible: key -> what is asked about it."""
    out = {}
    for key, quantity in QUANTITIES.items():
        measure = getattr(pull, key)
        if measure is None or is_plausible(measure, quantity, data):
            continue
        span = plausible_range(quantity, data) or (0.0, 0.0)
        said = f"{measure.text} is no usual {quantity.replace('_', ' ')}"
        out[key] = did_you_mean(said, other_readings(measure, *span, _MEANT.get(key, ())))
    return out


_MEANT = {
    "engine_torque": ("lbf*ft", "N*m"),
    "wheel_load": ("lbf", "kN", "N"),
    "radius": ("in", "mm"),
}


def _unjudged(
    pull: Pull,
    doubts: dict[str, str],
    standing: list[Case],
    asked: dict[str, str | None],
    data: Refdata,
) -> Sheet:
    """A sheet that cannot judge: something typed is doubtful, no way is whole, or no steel is named."""
    checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
    questions = [Question(FILL_IN, said, k, (f"{k.replace('_', ' ')} as typed",)) for k, said in doubts.items()]
    checks = [c.replace(name=c.name.replace("_", " ")) for c in checks]
    if doubts:
        do = next(iter(doubts.values()))
    elif not standing:
        lacks = pull.lacks()
        why = f"not given: {', '.join(k.replace('_', ' ') for k in lacks)}"
        checks.append(Check(REACHES, CANNOT_TELL, why, subject="shaft torque", bears=ASK))
        questions += _questions(lacks)
        do = "Give the engine's torque and its ratios, or the weight on the wheel, its grip and its radius."
    else:
        do = "What steel is the shaft of, and how was it treated?"
        checks.append(Check(_STEEL, CANNOT_TELL, "not given: material, treatment", bears=ASK))
        questions.append(Question(FILL_IN, do, "material", (_STEEL,)))
    figures = [f for c in ([] if doubts else standing) for f in (c.torque, c.engine, c.tyre) if f is not None]
    decision = none(VERB, do)
    if figures:
        candidates = [
            Candidate(c.torque, f"one shaft sees this when {c.when}" if c.when else _SEEN, _STEEL_DECIDES)
            for c in standing[:MOST_CANDIDATES]
        ]
        decision = ask(_SEES, candidates, (_STEEL,), do)
    return Sheet("axle shaft", asked, data, figures, checks, [], decision=decision, questions=questions)


def _cautions(worst: Ending, pull: Pull, form: Form, data: Refdata) -> list[Caution]:
    text = (
        "A clutch let in hard, or a spinning wheel that bites again, strikes the shaft with more than this steady"
        " torque."
    )
    torque = (worst.case.torque.id,)
    out = [Caution(text, "injury", torque, "common practice")]
    if worst.case.end == ENGINE_END and pull.transfer is None:
        said = (
            "No transfer case was counted. In its low range it multiplies the torque: give its ratio if there is one."
        )
        out.append(Caution(said, "injury", torque, "common practice"))
    if form.pitch is None:
        return [*out, *rule_cautions(data, "splines", "stress in the spline")]
    said = "The spline is judged under its roots alone. Its teeth and their sides are a question of their own: spline."
    return [*out, Caution(said, "injury", torque, "common practice")]
