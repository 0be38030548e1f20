"""The answer ``brake_hose``: how long a flexible hose must be so that neither droop nor full lock stretches it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, Bound, Check, at_least
from gaugeblock.answer.decision import decided
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines.given import Given, doubtful, lacking, stopped
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "HOSE AT LEAST"
NAME = "hose at droop and full lock"
MEASURES = {
    "hose": ("length", "hose_free_length"),
    "droop": ("length", "hose_span"),
    "lock": ("length", "hose_span"),
}
_SAID = {
    "hose": "How long is the hose between its fittings?",
    "droop": "How far is it from fitting to fitting at full droop, along the way that the hose takes?",
    "lock": "How far is it at full lock, to either side, the longer of the two?",
}
TWIST = "A hose is never twisted and touches nothing from lock to lock: watch the line along it, wheels hanging too."


def brake_hose(
    *, hose: str | None = None, droop: str | None = None, lock: str | None = None, data: Refdata | None = None
) -> Sheet:
    """How long a flexible hose must be so that neither droop nor full lock stretches it.

    Parameters are text as people write them: ``hose`` its free length between the fittings, ``droop`` and ``lock`` the
    way from fitting to fitting at each.

    Returns a Sheet: the least length; STOP for a hose that is shorter.

    Raises InputError or UnitError for what cannot be read.

    >>> round(brake_hose(droop="14 in", lock="13 in").decision.figures[0].typical, 1)
    14.6
    """
    asked = {"hose": hose, "droop": droop, "lock": lock}
    return judged(Given(asked, MEASURES), asked, data or refdata())


def judged(of: Given, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``brake_hose``, of what was read."""
    title = ", ".join(["flexible hose", *(f"{k} {m.text}" for k, m in of.measures.items())])
    given, doubts = of.figures(data), of.doubts(data)
    if doubts:
        return doubtful(title, VERB, doubts, asked, given, data)
    needs = {k: _SAID[k] for k in ("droop", "lock") if not of.has(k)}
    if needs:
        return lacking(title, VERB, needs, asked, given, data)
    needed = needed_of(of, data)
    assert needed is not None
    checks, questions = checks_of(of, data)
    slack = look_up("lines/brakes", "hose_slack", data=data, subject="hose", case="slack", service="hydraulic")
    said = f"a hydraulics handbook gives a hose {number_only(slack, data)} of slack; the hose maker's sheet governs"
    checks.append(Check("slack", CANNOT_TELL, said, subject="slack", bears=INFORM))
    stops = [c for c in checks if c.stops]
    do = "Measure it in place: wheels hanging, and at full lock to both sides."
    figures = list({f.id: f for f in (needed, *needed.inputs, *given, slack)}.values())
    cautions = [Caution(TWIST, "injury", source="FP14105")]
    decision = stopped(VERB, stops) if stops else decided(VERB, needed, checks, do)
    return Sheet(title, asked, data, figures, checks, cautions, decision=decision, questions=questions)


def needed_of(of: Given, data: Refdata) -> Figure | None:
    """The least free length of the hose; None where droop or lock was not given."""
    if not of.has("droop", "lock"):
        return None
    way = max((of.sure("droop", data), of.sure("lock", data)), key=base)
    change = look_up("lines/materials", "length_change", data=data, item="flexible hose", state="under pressure")
    shortest = change.low if change.low is not None else change.typical
    number = units.from_base(base(way) / (1 + units.to_base(shortest, change.unit)), way.unit)
    key = {"droop": of.measures["droop"].text, "lock": of.measures["lock"].text}
    return derived("hose_length_of_span", "hose_length_needed", number, way.unit, (way, change), data, key=key)


def checks_of(of: Given, data: Refdata) -> tuple[list[Check], list[Question]]:
    """Whether the hose is long enough; nothing where nothing of it was given."""
    missing = [k for k in MEASURES if not of.has(k)]
    if len(missing) == len(MEASURES):
        return [], []
    needed = needed_of(of, data)
    if needed is None or missing:
        text = " ".join(_SAID[k] for k in missing)
        check = Check(NAME, CANNOT_TELL, "its length, droop and lock are not all given", subject="hose", bears=INFORM)
        return [check], [Question(MEASURE, text, missing[0], (NAME,))]
    own = of.sure("hose", data)
    way = needed.inputs[0]
    said = f"{number_only(own, data)} of hose, {number_only(needed, data)} needed as it shortens under pressure"
    length = units.in_unit(own.typical, own.unit, needed.unit)
    check = at_least(NAME, Bound(length, needed.unit, "", own), Bound(needed.typical, needed.unit, "min", needed), said)
    if check.result == NOT_OK and base(own) < base(way):
        said = f"{number_only(own, data)} of hose is stretched over {number_only(way, data)}"
        check = at_least(NAME, check.actual, check.required, said)  # type: ignore[arg-type]
    return [check], []
