"""The answer ``setup``: the maker's figure, as found, as left. Figures of other axles inform, never answer."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import NOT_OK
from gaugeblock.answer.making import base
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import keys
from gaugeblock.driveline.keys import Step
from gaugeblock.driveline.setups.given import given_at
from gaugeblock.driveline.setups.patterns import patterns
from gaugeblock.driveline.setups.rows import cautions_of, examples, own_rows, published, rows_of
from gaugeblock.driveline.setups.settling import check_left, doubt_checks, ends_of, settle, within
from gaugeblock.errors import LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.lookup import figure_of
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence


def setup(
    axle: str,
    component: str,
    step: str,
    wear: str | None = None,
    *,
    as_found: str | None = None,
    as_left: str | None = None,
    maker: Mapping[str, str | None] | Sequence[str | None] | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Whether what was left at one step of a set-up is the maker's figure.

    Parameters are text as people write them: ``axle`` the shop's name of it, or an axle of the table in full;
    ``component`` ``ring gear``; ``step`` a step of the table, or what is set (``backlash``); ``wear`` ``new`` or
    ``used``; ``as_found`` and ``as_left`` a measure, or words; ``maker`` its own figure:
    value, low, high, source, place, by these names or in this order.

    Returns a Sheet: the maker's figure first (else the published one of exactly this axle), then as left and as
    found. Figures of other axles stand in a caution: they inform and never pass or fail the check.

    Raises LookupMiss with the nearest components or steps, InputError or UnitError for a maker's figure that cannot
    be read.

    >>> sheet = setup("rear", "ring gear", "backlash", "new", as_left="0.007 in")
    >>> sheet.checks[0].result
    'cannot tell'
    """
    asked = {
        "axle": axle,
        "component": component,
        "step": step,
        "wear": wear,
        "as_found": as_found,
        "as_left": as_left,
        "maker": None,
    }
    left, found = keys.finding(as_left, "as left"), keys.finding(as_found, "as found")
    made = keys.maker(maker) if maker is not None else None
    asked["maker"] = made.text if made is not None else None
    return judged(Step(axle, component, step, wear, found, left, made), asked, data or refdata())


def judged(of: Step, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``setup``, of a step that was read."""
    try:
        rows = rows_of(of, data)
    except LookupMiss:
        if of.maker is None:
            raise
        rows = []  # the maker's figure answers for a component that no table knows
    mine = own_rows(of, rows)
    own = published(mine, data)
    given = given_at(of, rows, own[0] if len(own) == 1 else None, data)
    check = check_left(of, given, own)
    decision, questions = settle(of, given, own, check, data)
    made = given.made
    rule = made or (own[0] if len(own) == 1 else None)
    shown = decision.figures if made is None else (made,)
    figures = list(dict.fromkeys(f for f in (*shown, *(own[:1] if made is None else ()), given.left, given.found) if f))
    cautions = cautions_of(rows, _may_be_large(given.left, rule), data)
    if rule is not None and given.found is not None and within("as found", given.found, rule).result == NOT_OK:
        text = f"As found, {given.found.text} {given.found.unit} was outside {printed(rule, data)}."
        cautions.append(Caution(text, "note", (given.found.id, rule.id), rule.source))
    if made is not None and len(own) == 1 and _apart(made, own[0]):
        both = f"The maker's figure is {printed(made, data)}, the manual of this axle has {printed(own[0], data)}"
        text = f"{both}: the maker's governs; find out why they differ."
        cautions.append(Caution(text, "damage", (made.id, own[0].id), own[0].source))
    others = tuple(figure_of(r, data).replace(chosen_by="another axle") for r in rows if r not in mine)
    if others:
        cautions.append(examples(others, data))
    title = f"{of.axle}: {of.component}, {of.step}" + (f", {of.wear}" if of.wear else "")
    checks = [check, *doubt_checks(given)]
    return Sheet(title, asked, data, figures, checks, cautions, patterns(of), decision=decision, questions=questions)


def _may_be_large(left: Figure | None, rule: Figure | None) -> bool:
    """Whether what was left is over its figure, or that is not known."""
    if left is None or rule is None or units.dimension(left.unit) != units.dimension(rule.unit):
        return True
    low, high = ends_of(rule)
    value = units.from_base(base(left), rule.unit)
    return (low is None and high is None) or (high is not None and value > high)


def _apart(a: Figure, b: Figure) -> bool:
    if units.dimension(a.unit) != units.dimension(b.unit):
        return False
    ends_a = [units.to_base(e, a.unit) for e in (a.low, a.high, a.value) if e is not None]
    ends_b = [units.to_base(e, b.unit) for e in (b.low, b.high, b.value) if e is not None]
    return max(ends_a) < min(ends_b) * 0.98 or min(ends_a) > max(ends_b) * 1.02
