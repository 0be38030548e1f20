"""Lines beside heat: what a line material, hose class, fluid or fuel stands, and whether a temperature is within it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check, at_least, at_most
from gaugeblock.answer.making import stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.figure import Figure
from gaugeblock.lines import cautions as line_cautions
from gaugeblock.lines.item import EXPANSION_JOINT, OPEN_STATES, Item, item_of
from gaugeblock.tables.load import Refdata, refdata


def heat(
    item: str,
    *,
    klass: str | None = None,
    state: str | None = None,
    at: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a line material, hose class, fluid or fuel stands, and whether a temperature is within it.

    Parameters are text as people write them: ``item`` ``DOT 4``, ``PTFE``, ``SAE J30 R9``, ``gasoline``; ``klass`` the
    hose class (``SAE J2260``); ``state`` ``wet``, ``continuous``, ``3 % water``; ``at`` a temperature to judge (``120 degC``).

    Returns a Sheet: the limit that governs first, then all else that is published for heat and pressure. With ``at`` a
    check: ``ok``, ``not ok``, or ``cannot tell`` where a stricter living figure says otherwise, or where only a demand, a
    test temperature or an expansion joint's figure is known.

    Raises LookupMiss with the nearest items, Ambiguous with the classes or states the answer depends on.

    >>> heat("DOT 4", state="wet").figures[0].text
    '155'
    """
    data = data or refdata()
    found = item_of(item, klass, state, data)
    if not found.figures:
        raise found.nothing()
    asked = {"item": item, "class": klass, "state": state, "at": at}
    checks = [] if at is None else judge(found, stated_temperature(at, data))
    governs = found.figures[0].key["state"]
    title = ", ".join(
        p for p in (found.cell, found.klass, found.state or (governs if governs not in OPEN_STATES else "")) if p
    )
    return Sheet(
        title,
        asked,
        data,
        [_with_state(f, found.state) for f in found.figures],
        checks,
        line_cautions.cautions_of(found),
    )


def _with_state(figure: Figure, asked: str | None) -> Figure:
    """The figure with the state it is for among its conditions, where that is not what was asked."""
    state = figure.key["state"]
    if state in (asked, *OPEN_STATES):
        return figure
    return figure.replace(conditions="; ".join(p for p in (state, figure.conditions) if p))


def stated_temperature(at: str, data: Refdata, where: str = "--at") -> Figure:
    """A temperature as the user states it, as a Figure."""
    measure = units.parse_measure(at, "temperature", where)
    return stated(measure, "temperature", where.lstrip("-"), data)


def judge(found: Item, at: Figure) -> list[Check]:
    """The checks of one temperature against what the item stands."""
    limit = found.judge
    checks = [_upper(found, limit, at)]
    lowest = next((f for f in found.figures if f.quantity == "temperature_minimum"), None)
    if lowest is not None:
        end = convert(lowest.typical, lowest.unit, at.unit)
        reason = f"{at.text} {at.unit} asked, down to {beside(lowest, at.unit, found.data)} is stated"
        checks.append(
            at_least(
                "temperature over the lowest",
                Bound(at.typical, at.unit, figure=at),
                Bound(end, at.unit, "min", lowest),
                reason,
            )
        )
    if limit is not None and limit.quantity == "boiling_point_minimum" and limit.key["state"] == "dry":
        wet = found.look_up("boiling_point_minimum", "wet")
        if wet is not None:
            checks.append(_used(wet, at, found))
    return checks


def _end(figure: Figure, unit: str) -> float:
    """The lowest of a figure, in ``unit``: the end at which trouble may begin."""
    return convert(figure.low if figure.low is not None else figure.typical, figure.unit, unit)


def convert(value: float, unit: str, to: str) -> float:
    """A float of one unit in another of the same dimension."""
    return value if unit == to else units.from_base(units.to_base(value, unit), to)


def beside(limit: Figure, unit: str, data: Refdata) -> str:
    """A limit in the unit of what is judged, with its source's own number where that is another."""
    own = number_only(limit, data)
    return own if limit.unit == unit else f"{number_only(limit, data, unit)} ({own})"


def is_close(limit: float, value: float, unit: str) -> bool:
    """Whether a temperature leaves less to its limit than a reading is good to."""
    return units.to_base(limit, unit) - units.to_base(value, unit) < CLOSE_K


def _upper(found: Item, limit: Figure | None, at: Figure) -> Check:
    name = "temperature within the limit"
    actual = Bound(at.typical, at.unit, figure=at)
    if limit is None:
        return Check(name, CANNOT_TELL, _no_limit(found), None, actual)
    end = _end(limit, at.unit)
    required = Bound(end, at.unit, "max", limit)
    what = f"{at.text} {at.unit} asked, {beside(limit, at.unit, found.data)} {_WORDS[limit.quantity]}"
    if found.klass == EXPANSION_JOINT:
        reason = f"{what}, of an expansion joint in air: it informs, it does not judge a hose"
        return Check(name, CANNOT_TELL, reason, required, actual)
    check = at_most(name, actual, required, what)
    if (
        limit.quantity == "boiling_point"
        and check.result == NOT_OK
        and limit.high is not None
        and at.typical < convert(limit.high, limit.unit, at.unit)
    ):
        return check.replace(
            result=CANNOT_TELL,
            reason=f"{what} at one atmosphere: part of it boils there; pressure in the line and the blend decide",
        )
    strict = [f for f in found.stricter(limit) if at.typical > _end(f, at.unit) * (1 + 1e-9)]
    if check.result == OK and strict:
        worst = min(strict, key=lambda f: _end(f, at.unit))
        check = check.replace(result=CANNOT_TELL)
        check = check.replace(
            reason=f"{what}, yet {beside(worst, at.unit, found.data)} by {worst.source or worst.basis}: ask the maker"
        )
    elif check.result == OK and is_close(end, at.typical, at.unit):
        check = check.replace(result=CANNOT_TELL)
        check = check.replace(
            reason=f"{what}: under {CLOSE} is left, no margin is published, and a reading is no better than that"
        )
    elif limit.basis == "common practice" or limit.checked == "memory":
        check = check.replace(
            reason=f"{what} ({'habit' if limit.basis == 'common practice' else 'from memory'}: read the marking on the part)"
        )
    return check


# A crayon or a thermocouple on a tube is good to about this; no published margin to a limit was found.
CLOSE_K = 10.0
CLOSE = "10 degC (18 degF)"

_WORDS = {
    "temperature_maximum": "is its limit",
    "boiling_point_minimum": "is the least it must reach before it boils",
    "vapour_lock_temperature_minimum": "is the least at which its class may turn to vapour at one atmosphere",
    "vapour_lock_temperature": "is where vapour forms",
    "boiling_point": "is its boiling range",
    "oxidation_temperature_maximum": "is its scaling limit",
    "storage_temperature_maximum": "is its storage limit",
}


def _no_limit(found: Item) -> str:
    there = {f.quantity for f in found.figures}
    if "heat_ageing_test_temperature" in there:
        return "only a heat-ageing test temperature is known: it classes the rubber and is never a service limit"
    if "temperature_rating_minimum" in there:
        return "only what a standard demands of such a line is known, not what the one in hand stands: read its marking"
    return "no limit of temperature is published for it: ask the maker"


def _used(wet: Figure, at: Figure, found: Item) -> Check:
    end = _end(wet, at.unit)
    what = f"{number_only(wet, found.data)} governs once the fluid has drawn water"
    result, reason = (
        (OK, what)
        if at.typical <= end * (1 + 1e-9)
        else (CANNOT_TELL, f"{what}: the dry figure holds for new fluid only")
    )
    return Check(
        "temperature within the wet boiling point",
        result,
        reason,
        Bound(end, at.unit, "max", wet),
        Bound(at.typical, at.unit, figure=at),
    )
