"""The answer ``exhaust_ignition``: plugs, leads and timing beside headers, before they are off and after they are
on.
"""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check, at_least
from gaugeblock.answer.decision import Candidate, Decision, ask, none, use
from gaugeblock.answer.making import base, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.exhaust.statements import cautions
from gaugeblock.lookup import figure_of, look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import parse_measure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.figure import Figure

VERB = "SET THE GAP"
_READ = {
    "maker_gap": ("length", "plug_gap"),
    "gap": ("length", "plug_gap"),
    "reach": ("length", "plug_reach"),
    "old_reach": ("length", "plug_reach"),
    "lead": ("length", "gap"),
    "timing_before": ("angle", "ignition_timing"),
    "timing_after": ("angle", "ignition_timing"),
}
_SUBJECTS = ("plug reach", "timing", "spark plug lead support", "spark plug heat range", "spark plug seat")
# A gap is set to this share of the maker's; a reach agrees within so much.
_GAP_WITHIN, _REACH_WITHIN_M = 0.05, 0.0005
_TIMING_WITHIN_RAD = 0.0175  # a degree


def exhaust_ignition(
    maker_gap: str | None = None,
    *,
    gap: str | None = None,
    reach: str | None = None,
    old_reach: str | None = None,
    heat_range: str | None = None,
    lead: str | None = None,
    timing_before: str | None = None,
    timing_after: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Whether plugs, leads and timing are as they were, or as the maker says, once headers are on.

    Parameters are text as people write them: ``maker_gap`` the gap that the engine maker says (``0.044 in``), ``gap``
    as set; ``reach`` of the new plugs and ``old_reach`` of those that came out; ``heat_range`` as the maker says
    (``his 5``); ``lead`` the way from the nearest lead or boot to the pipe; ``timing_before`` and ``timing_after`` at
    one and the same speed (``10 deg``).

    Returns a Sheet; no gap is taken from a table: they differ by engine. Raises InputError or UnitError for what
    cannot be read.

    >>> exhaust_ignition().decision.kind
    'none'
    """
    data = data or refdata()
    asked = {
        "maker_gap": maker_gap,
        "gap": gap,
        "reach": reach,
        "old_reach": old_reach,
        "heat_range": heat_range,
        "lead": lead,
        "timing_before": timing_before,
        "timing_after": timing_after,
    }
    return judged(asked, data)


def judged(asked: Mapping[str, str | None], data: Refdata) -> Sheet:
    """As ``exhaust_ignition``, of what was typed."""
    read = {}
    for key, (dim, quantity) in _READ.items():
        if typed := asked.get(key):
            is_signed = dim == "angle"
            measure = (
                parse_measure(typed, dim, key) if is_signed else read_positive(typed, dim, key, zero=key == "lead")
            )
            read[key] = stated(measure, quantity, key, data)
    told = (_doubt(k, f, data) for k, f in read.items())
    found: list[tuple[Check, Question | None]] = [t for t in told if t is not None]
    if not found:
        found = [*_gap(read, data), *_reach(read, data), *_range(asked), *_lead(read, data), *_timing(read, data)]
    checks, questions = [c for c, _ in found], [q for _, q in found if q is not None]
    decision = _decided(read, checks)
    figures = [*decision.figures, *read.values()]
    bounds = [b.figure for c in checks for b in (c.required, c.actual) if b is not None and b.figure is not None]
    listed = list({f.id: f for f in (*figures, *bounds)}.values())
    title = "ignition beside headers" + (
        f", gap {read['maker_gap'].text} {read['maker_gap'].unit}" if "maker_gap" in read else ""
    )
    notes = cautions(data, ("ignition",), _SUBJECTS)
    return Sheet(title, asked, data, listed, checks, notes, decision=decision, questions=questions)


def _doubt(key: str, figure: Figure, data: Refdata) -> tuple[Check, Question] | None:
    measure = parse_measure(f"{figure.text} {figure.unit}", _READ[key][0], key)
    if is_plausible(measure, figure.quantity, data):
        return None
    span = plausible_range(figure.quantity, data)
    said = did_you_mean(
        f"{measure.text} is no usual {key.replace('_', ' ')}", other_readings(measure, *span) if span else ()
    )
    check = Check(f"{key.replace('_', ' ')} as typed", CANNOT_TELL, said, bears=ASK)
    return check, Question(FILL_IN, said, key, (check.name,))


def _open(name: str, why: str, kind: str, text: str, key: str) -> list[tuple[Check, Question | None]]:
    return [(Check(name, CANNOT_TELL, why, bears=ASK), Question(kind, text, key, (name,)))]


def _gap(read: dict[str, Figure], data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "plug gap"
    if "maker_gap" not in read:
        why = f"the engine maker's gap is not given, and engines differ from {_others(data)}"
        return _open(name, why, ASK_MAKER, "Which plug gap does the engine maker say, with this ignition?", "maker_gap")
    if "gap" not in read:
        return _open(
            name, "the gap as set is not given", MEASURE, "Gauge the gap of every plug and write it down.", "gap"
        )
    return [_same(name, read["gap"], read["maker_gap"], _GAP_WITHIN * base(read["maker_gap"]), "gap", data)]


def _others(data: Refdata) -> str:
    """The ends of the gaps that single vehicles have."""
    rows = [figure_of(r, data) for r in data.table("exhaust/limits").of("plug_gap")]
    least = min(rows, key=lambda f: units.to_base(f.least, f.unit))
    most = max(rows, key=lambda f: units.to_base(f.high or f.typical, f.unit))
    return f"{units.significant(least.least, 3)} to {units.significant(most.high or most.typical, 3)} {most.unit}"


def _reach(read: dict[str, Figure], data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "plug reach"
    lacks = next((k for k in ("old_reach", "reach") if k not in read), None)
    if lacks is not None:
        text = "Lay the new plug beside the old one: reach and seat must be the same."
        return _open(name, f"the {lacks.replace('_', ' ')} is not given", MEASURE, text, lacks)
    return [_same(name, read["reach"], read["old_reach"], _REACH_WITHIN_M, "reach", data)]


def _range(asked: Mapping[str, str | None]) -> list[tuple[Check, Question | None]]:
    name = "heat range"
    if asked.get("heat_range"):
        return [(Check(name, OK, f"{asked['heat_range']}, as stated", bears=INFORM), None)]
    return _open(name, "not given", ASK_MAKER, "Which heat range does the engine maker say?", "heat_range")


def _lead(read: dict[str, Figure], data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "lead to pipe"
    if "lead" not in read:
        text = "Measure from the nearest lead and boot to the pipe."
        return _open(name, "the way from lead to pipe is not given", MEASURE, text, "lead")
    habit = look_up(
        "exhaust/clearances", "clearance_minimum", data=data, subject="exhaust to spark plug lead", case="any"
    )
    lead = read["lead"]
    said = f"the lead is {number_only(lead, data)} from the pipe, the habit is {number_only(habit, data, lead.unit)}"
    need = Bound(units.from_base(base(habit), lead.unit), lead.unit, "min", habit)
    check = at_least(name, Bound(lead.typical, lead.unit, figure=lead), need, said, bears=ASK)
    text = f"Route the lead away from the pipe, or sleeve it: {said}."
    return [(check, Question(FILL_IN, text, "lead", (name,)) if check.asks else None)]


def _timing(read: dict[str, Figure], data: Refdata) -> list[tuple[Check, Question | None]]:
    name = "timing"
    lacks = next((k for k in ("timing_before", "timing_after") if k not in read), None)
    if lacks is not None:
        text = "Read the timing at one speed before the headers come off and after they are on."
        return _open(name, f"{lacks.replace('_', ' ')} is not written down", MEASURE, text, lacks)
    return [_same(name, read["timing_after"], read["timing_before"], _TIMING_WITHIN_RAD, "timing_after", data)]


def _same(
    name: str, got: Figure, wanted: Figure, within: float, key: str, data: Refdata
) -> tuple[Check, Question | None]:
    """Whether two measures agree within so much in base units."""
    is_same = abs(base(got) - base(wanted)) <= within * (1 + 1e-9)
    said = f"{number_only(got, data)} now, {number_only(wanted, data)} wanted"
    required, actual = Bound(base(wanted), _base_unit(wanted), "", wanted), Bound(base(got), _base_unit(got), "", got)
    check = Check(name, OK if is_same else NOT_OK, said, required, actual, bears=ASK)
    return check, None if is_same else Question(FILL_IN, f"Put the {name} right: {said}.", key, (name,))


def _base_unit(figure: Figure) -> str:
    return "rad" if units.dimension(figure.unit) == "angle" else "m"


def _decided(read: dict[str, Figure], checks: list[Check]) -> Decision:
    asks = [c for c in checks if c.asks]
    first = capital(asks[0].reason).rstrip(".?") if asks else ""
    do = f"{first}." if not first.endswith("?") else first
    if "maker_gap" not in read or any(c.name.endswith("as typed") for c in asks):
        return none(VERB, do)
    gap = read["maker_gap"]
    if asks:
        return ask(
            VERB,
            [Candidate(gap, "this ignition is the maker's", "as the engine maker says")],
            [c.name for c in asks],
            do,
        )
    return use(VERB, gap, "Plugs, leads and timing are as they were, or as the maker says.")
