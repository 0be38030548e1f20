"""Verdict: one temperature against what a line material, fluid or fuel stands."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check, at_least, at_most
from gaugeblock.answer.making import derived
from gaugeblock.answer.printing import number_only
from gaugeblock.warmth.item import EXPANSION_JOINT

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.item import Item

# A crayon or a thermocouple on a tube is good to about this; no published margin to a limit was found.
CLOSE_K = 10.0
CLOSE = "10 degC (18 degF)"

_STANDS = {
    "temperature_maximum": "stands no more than",
    "boiling_point_minimum": "may boil at",
    "vapour_lock_temperature_minimum": "may turn to vapour at",
    "oxidation_temperature_maximum": "begins to scale at",
    "storage_temperature_maximum": "may be stored at no more than",
}
WITHIN = "temperature within the limit"
NO_BAND = "the inputs are single numbers, so the estimate has no band: give them as ranges, or measure on the car"


def judge(found: Item, at: Figure, how: str = "given", case: str = "", margin: Figure | None = None) -> list[Check]:
    """The checks of one temperature against what the item stands; ``how`` it was come by: given, measured.

    A ``margin`` that somebody wants is kept under the limit, and stops; without one a reading's own asks.
    """
    limit = found.limit
    checks = [_upper(found, limit, at, how, margin)]
    lowest = next((f for f in found.figures if f.quantity == "temperature_minimum"), None)
    if lowest is not None:
        end = units.in_unit(lowest.typical, lowest.unit, at.unit)
        reason = f"{how} {at.text} {at.unit}; {found.said} is good down to {beside(lowest, at.unit, found.data)}"
        bounds = Bound(at.typical, at.unit, figure=at), Bound(end, at.unit, "min", lowest)
        checks.append(at_least("temperature over the lowest", *bounds, reason))
    if limit is not None and limit.quantity == "boiling_point_minimum" and limit.key["state"] == "dry":
        wet = found.look_up("boiling_point_minimum", "wet")
        if wet is not None:
            checks.append(_used(wet, at, found))
    return [c.replace(case=case) for c in checks] if case else checks


def low_end(figure: Figure, unit: str) -> float:
    """The lowest of a figure, in ``unit``: the end at which trouble may begin."""
    return units.in_unit(figure.low if figure.low is not None else figure.typical, figure.unit, unit)


def high_end(figure: Figure, unit: str) -> float:
    """The highest of a figure, in ``unit``."""
    return units.in_unit(figure.high if figure.high is not None else figure.typical, figure.unit, unit)


def beside(limit: Figure, unit: str, data: Refdata) -> str:
    """A limit in the unit of what is judged, with its source's own number where that is another."""
    own = number_only(limit, data)
    return own if limit.unit == unit else f"{number_only(limit, data, unit)} ({own})"


def is_close(limit: float, value: float, unit: str, room_k: float = CLOSE_K) -> bool:
    """Whether a temperature leaves less to its limit than a reading is good to, or than somebody wants."""
    return units.to_base(limit, unit) - units.to_base(value, unit) < room_k * (1 - 1e-9)


def room_of(margin: Figure | None) -> tuple[float, str]:
    """The room that is kept to a limit, K, and in words: the margin that is wanted, else what a reading is good to."""
    if margin is None:
        return CLOSE_K, CLOSE
    high = margin.high if margin.high is not None else margin.typical
    return units.to_base(high, margin.unit), f"{margin.text} {margin.unit}".replace("delta_", "")


def under(limit: Figure, margin: Figure, data: Refdata) -> Figure:
    """The highest temperature with the margin that is wanted."""
    room = units.from_base(room_of(margin)[0], f"delta_{limit.unit}")
    value, inputs = low_end(limit, limit.unit) - room, (limit, margin)
    name, words = "limit_less_margin", "with the margin that is wanted"
    about = f"{limit.id}|{margin.text} {margin.unit}"
    return derived(name, "temperature_wanted", value, limit.unit, inputs, data, about=about, conditions=words)


def too_near(margin: Figure) -> str:
    """What is said where less than the margin that is wanted is left."""
    return f"less than the margin of {room_of(margin)[1]} that is wanted is left"


def stands(found: Item, limit: Figure, unit: str) -> str:
    """What an item stands, as a clause: ``DOT 4, wet may boil at 311 degF``."""
    return f"{found.said} {_STANDS[limit.quantity]} {beside(limit, unit, found.data)}"


def in_band(figure: Figure, end: float, strictest: float, what: str, margin: Figure | None = None) -> tuple[str, str]:
    """What an estimate comes to against a limit, and that in words: ok with its whole band and a reading's margin, not
    ok with its likely value, else cannot tell. ``end`` is the limit, ``strictest`` the lowest of the living figures,
    both in the estimate's unit; ``what`` says whose limit it is.
    """
    unit = figure.unit
    low, likely = figure.low if figure.low is not None else figure.typical, figure.typical
    high = high_end(figure, unit)
    room_k, room = room_of(margin)
    said = f"estimated {likely:.0f} {unit} ({low:.0f} to {high:.0f}); {what}"
    if likely > end:
        return NOT_OK, f"{said}: too hot"
    if margin is not None and is_close(end, likely, unit, room_k):
        return NOT_OK, f"{said}: {too_near(margin)}"
    if high > strictest:
        why = "the top of the estimate, or another living figure, passes it: measure on the car"
        return CANNOT_TELL, f"{said}: {why}"
    if not low < high:
        return CANNOT_TELL, f"{said}: {NO_BAND}"
    if is_close(strictest, high, unit, room_k):
        return CANNOT_TELL, f"{said}: at the top of the estimate less than {room} is left: measure on the car"
    return OK, said


def too_hot_by(estimated: Figure, end: float) -> str:
    """What an estimate says of a limit in its own unit, behind its number; blank where it is under it with its whole
    band.
    """
    if estimated.typical > end:
        return ": too hot by that"
    return ": it may be too hot" if high_end(estimated, estimated.unit) > end else ""


def left(limit: Figure, at: Figure) -> str:
    """How much a temperature leaves to its limit, as a person reads it."""
    room = low_end(limit, at.unit) - high_end(at, at.unit)
    return f"{round(room)} {at.unit} left"


def _upper(found: Item, limit: Figure | None, at: Figure, how: str, margin: Figure | None) -> Check:
    actual = Bound(high_end(at, at.unit), at.unit, figure=at)
    if limit is None:
        return Check(WITHIN, CANNOT_TELL, no_limit(found), None, actual, bears=ASK)
    end = low_end(limit, at.unit)
    what = f"{how} {at.text} {at.unit}; {stands(found, limit, at.unit)}"
    if found.klass == EXPANSION_JOINT:
        reason = f"{what}, as an expansion joint in air: that does not judge a hose"
        return Check(WITHIN, CANNOT_TELL, reason, Bound(end, at.unit, "max", limit), actual, bears=ASK)
    check = at_most(WITHIN, actual, Bound(end, at.unit, "max", limit), what)
    if check.result == NOT_OK:
        return check.replace(reason=f"{what}: too hot{_weak(limit)}")
    strict = [f for f in found.stricter(limit) if actual.value > low_end(f, at.unit) * (1 + 1e-9)]
    if strict:
        worst = min(strict, key=lambda f: low_end(f, at.unit))
        reason = f"{what}, yet {beside(worst, at.unit, found.data)} by {worst.source or worst.basis}: ask the maker"
        return check.replace(result=CANNOT_TELL, reason=reason)
    if margin is not None and is_close(end, actual.value, at.unit, room_of(margin)[0]):
        wanted = under(limit, margin, found.data)
        bound = Bound(units.in_unit(wanted.typical, wanted.unit, at.unit), at.unit, "max", wanted)
        return check.replace(result=NOT_OK, required=bound, reason=f"{what}: {too_near(margin)}{_weak(limit)}")
    if margin is None and is_close(end, actual.value, at.unit):
        reason = f"{what}: less than {CLOSE} is left, and a reading is no better than that"
        return check.replace(result=CANNOT_TELL, reason=reason)
    return check.replace(reason=f"{what}: {left(limit, at)}{_weak(limit)}")


def _weak(limit: Figure) -> str:
    if limit.basis == "common practice":
        return " (habit: read the marking on the part)"
    return " (from memory: read the marking on the part)" if limit.checked == "memory" else ""


def no_limit(found: Item) -> str:
    """Why nothing judges a temperature of this item."""
    there = {f.quantity for f in found.figures}
    if "heat_ageing_test_temperature" in there:
        return "only a heat-ageing test temperature is known: it classes the rubber and is never a service limit"
    if "temperature_rating_minimum" in there:
        return "only what a standard demands of such a line is known, not what the one in hand stands: read its marking"
    none = f"no limit of temperature is published for {found.said}"
    range_ = found.informs
    if range_ is not None:
        word = range_.quantity.replace("_", " ")
        return f"{none}; its {word}, {number_only(range_, found.data)}, is for information: pressure and blend decide"
    return none


def _used(wet: Figure, at: Figure, found: Item) -> Check:
    end = low_end(wet, at.unit)
    what = f"{number_only(wet, found.data)} governs once the fluid has drawn water"
    is_under = at.typical <= end * (1 + 1e-9)
    reason = what if is_under else f"{what}: the dry figure holds for new fluid only"
    required, actual = Bound(end, at.unit, "max", wet), Bound(at.typical, at.unit, figure=at)
    name = "temperature within the wet boiling point"
    return Check(name, OK if is_under else CANNOT_TELL, reason, required, actual, bears=INFORM)
