"""The one maker of figures that no table holds: what somebody stated, what the shop measured, what a formula gives."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from gaugeblock.known import Known
    from gaugeblock.span import Span
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

    Ends = tuple[float | None, float | None]


def stated(
    measure: Measure,
    quantity: str,
    where: str,
    data: Refdata,
    *,
    owner: str = "",
    read_by: str = "",
    key: Mapping[str, str] | None = None,
    conditions: str = "",
) -> Figure:
    """What somebody typed, as a Figure of basis ``stated``; ``measured`` where ``read_by`` says with what (and when).

    ``where`` is the key that it was typed under, ``owner`` the item whose it is. The side is the quantity's.
    """
    return Figure(
        f"{'measured' if read_by else 'stated'}:{owner}|{where}:{measure.text}",
        quantity,
        float(measure.value),
        measure.unit,
        side=data.quantity(quantity)["side"],
        basis="measured" if read_by else "stated",
        checked="primary" if read_by else "",
        source=read_by or "as given",
        locator=where,
        conditions=conditions,
        key=key,
        chosen_by="as given",
        text=measure.number,
    )


def stated_known(known: Known, quantity: str, where: str, data: Refdata, *, owner: str = "") -> Figure:
    """What somebody states of a quantity, its ends with it, as a Figure: ``measured`` where it says with what."""
    made = stated(known.typical, quantity, where, data, owner=owner, read_by=known.read_by)
    if not known.is_range:
        return made
    ends, usual = known.ends, known.usual
    unit = made.unit
    return made.replace(
        id=f"{made.basis}:{owner}|{where}:{known.numbers}",
        value=None if usual is None else made.value,
        low=ends.low.to(unit),
        high=ends.high.to(unit),
        text=known.numbers if unit == "1" else made.text if usual is not None else str(ends).removesuffix(f" {unit}"),
    )


def stated_span(got: Span, quantity: str, where: str, data: Refdata, *, read_by: str = "") -> Figure:
    """A measure or range that somebody typed, as a Figure; ``measured`` where ``read_by`` says with what tool."""
    made = stated(got.as_measure(), quantity, where, data, read_by=read_by)
    if not got.is_range:
        return made
    return made.replace(value=None, low=got.low.to(got.unit), high=float(got.high.value))


def read_positive(typed: str | Measure, dim: str, where: str, *, zero: bool = False) -> Measure:
    """A measure, as typed or read already, that must be more than zero (or not less, with ``zero``); InputError when
    it is not.
    """
    got = units.parse_measure(typed, dim, where) if isinstance(typed, str) else typed
    if got.value < 0 or (got.value == 0 and not zero):
        raise InputError(got.text, where, "must be more than zero", (), f"give the {where} itself")
    return got


def derived(
    rule: str,
    quantity: str,
    value: float | None,
    unit: str,
    inputs: Sequence[Figure],
    data: Refdata,
    *,
    about: str = "",
    ends: Ends = (None, None),
    side: str = "",
    key: Mapping[str, str] | None = None,
    conditions: str = "",
    text: str = "",
) -> Figure:
    """A Figure made by a named formula of formulas.csv from ``inputs``; ``value`` and its ``ends``, low and high,
    in ``unit``.

    ``about`` tells one result from another of the same rule. The side is the quantity's unless one is given.
    """
    name = "|".join([*(key or {}).values(), *([about] if about else [])])
    return Figure(
        f"derived:{rule}:{name}:{quantity}@{data.release}",
        quantity,
        value,
        unit,
        low=ends[0],
        high=ends[1],
        side=side or data.quantity(quantity)["side"],
        basis="derived",
        rule=data.rule(rule),
        inputs=tuple(inputs),
        since=data.release,
        key=key,
        conditions=conditions,
        text=text,
    )


def moved_ends(figure: Figure, move: Callable[[float], float]) -> Ends:
    """The low and the high end of a figure, each where ``move`` takes it; an end that is not known stays so."""
    low, high = figure.low, figure.high
    return None if low is None else move(low), None if high is None else move(high)


def base(figure: Figure) -> float:
    """A figure's typical number in the base unit (SI) of its dimension."""
    return units.to_base(figure.typical, figure.unit)
