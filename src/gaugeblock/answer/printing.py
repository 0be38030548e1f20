"""How a figure is printed: the source's own text, or a derived number on the steps that a tool reads, by side."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

from gaugeblock import units
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# A number under so many of its steps is printed finer, down to this.
_FEWEST_STEPS = 10
_FINEST = Fraction(1, 10**6)
# A printed limit is not moved by more than this share in another unit.
_ANOTHER = 0.01
# A derived limit of a torque is printed as near as this.
_LIMIT = 0.005

# What is marked on its tool in fractions of an inch; a table's three digits of one are as near as this, in inches.
MARKED = ("width_across_flats",)
_SIXTY_FOURTH, _ROUNDED = Fraction(1, 64), 0.0006

# Below this a pressure is read in kPa beside psi.
_SMALL_PRESSURE_PSI = 100
_SMALL_FORCE_N = 1000.0
# Below this a wrench is read in lbf*in (the trade's habit; the smaller wrenches are graduated so).
_SMALL_TORQUE_NM = 15 * 1.3558179483314004
_OTHER_UNIT = {
    "lbf*ft": "N*m",
    "lbf*in": "N*m",
    "N*m": "lbf*ft",
    "in": "mm",
    "mm": "in",
    "lbf": "kN",
    "N": "lbf",
    "kN": "lbf",
    "ksi": "MPa",
    "psi": "MPa",
    "MPa": "ksi",
    "degF": "degC",
    "degC": "degF",
    "in**2": "mm**2",
    "mm**2": "in**2",
    "lb": "kg",
    "kg": "lb",
    "delta_degF": "delta_degC",
    "delta_degC": "delta_degF",
    "ft": "m",
    "m": "ft",
    "cm": "in",
    "thou": "mm",
    "kgf": "N",
    "kgf*m": "N*m",
    "kgf*cm": "N*m",
    "kgf/cm**2": "bar",
    "oz": "g",
    "lb/in**3": "g/cm**3",
    "g/cm**3": "lb/in**3",
    "cm**3/min": "gal/h",
    "gal/h": "L/h",
    "L/h": "gal/h",
    "gal/min": "L/min",
    "L/min": "gal/h",
    "lb/h": "kg/h",
    "kg/h": "lb/h",
    "in**3": "cm**3",
    "cm**3": "in**3",
    "ft/s": "m/s",
    "bar": "psi",
    "kPa": "psi",
    "GPa": "Msi",
    "Msi": "GPa",
    "lbf/in": "kN/mm",
    "kN/mm": "lbf/in",
    "lb/ft": "kg/m",
    "kg/m": "lb/ft",
}


def display_unit(value: float, unit: str) -> str:
    """The unit a person reads: lbf*in below 15 lbf*ft, else the unit itself."""
    if unit == "lbf*ft" and abs(units.to_base(value, unit)) < _SMALL_TORQUE_NM:
        return "lbf*in"
    return unit


def step_of(quantity: str, unit: str, data: Refdata) -> Fraction | None:
    """The graduation that this quantity is set by in ``unit``; None when it is not set by hand."""
    steps = data._memo.get(("steps", quantity))
    if steps is None:
        row = data.entry("quantities", quantity)
        parts = [units.split_quantity(p.strip()) for p in row["step"].split(";")] if row and row["step"] else []
        steps = data._memo["steps", quantity] = {name: units.parse_number(number) for number, name in parts}
    return steps.get(unit)  # type: ignore[attr-defined,no-any-return]


@lru_cache(maxsize=4096)  # an answer is printed on its card, in its sheet, in the record and below what is made of it
def number_text(value: float, unit: str, side: str, step: Fraction | None) -> str:
    """A number on its step by side, in fractions of an inch where the step is one; else four significant digits by
    side.
    """
    if step is None:
        return significant_by_side(value, side)
    rounded = units.step_round(value, step, side)
    return units.fraction_text(rounded) if _is_fraction(unit, step) else units.decimal_text(rounded)


def _is_fraction(unit: str, step: Fraction) -> bool:
    return unit == "in" and step.denominator in (2, 4, 8, 16, 32, 64)


def direction(figure: Figure, data: Refdata) -> str:
    """Which way a figure is rounded: a limit by its side, but what a part is guaranteed to bear never to more than
    it bears.

    A strength is a minimum of the part (side ``min``) and safe when taken low: rounded up it would promise more
    than its source.
    """
    row = data.entry("quantities", figure.quantity)
    safer = row["safer"] if row is not None else "none"
    if figure.side == "min" and safer == "low":
        return "max"
    return "min" if figure.side == "max" and safer == "high" else figure.side


def significant_by_side(value: float, side: str, digits: int = 4) -> str:
    """Four significant digits, never past the side: a maximum is not rounded up, a minimum not down."""
    if value == 0:
        return "0"
    from math import floor, log10

    step = Fraction(10) ** (floor(log10(abs(value))) - digits + 1)
    return units.decimal_text(units.step_round(value, step, side))


def fine_step(step: Fraction | None, unit: str, value: float) -> Fraction | None:
    """The step, or finer by digits where the number would be under ten of its steps (a fraction of an inch stays)."""
    while (
        step is not None
        and value
        and abs(value) < _FEWEST_STEPS * step.numerator / step.denominator
        and not _is_fraction(unit, step)
        and step > _FINEST
    ):
        step = step / 10
    return step


def window_step(low: float, high: float, step: Fraction | None) -> Fraction | None:
    """The step on which a window stays open: its own, or finer by a digit (four at most) where rounding would close
    it.
    """
    finer = step
    for _ in range(4):
        if finer is None or low == high or units.step_round(low, finer, "min") < units.step_round(high, finer, "max"):
            return finer
        finer = finer / 10
    return finer


# Figures as they were printed, each kept with its text so that no other takes its place.
_PRINTED: dict[tuple[int, int, str | None], tuple[Figure, Refdata, str]] = {}
_MOST_PRINTED = 2048


def printed(figure: Figure, data: Refdata, unit: str | None = None) -> str:
    """A figure as text with its unit: the source's own digits in its own unit, everything else rounded by side."""
    if figure.text and (unit is None or unit == figure.unit):
        return with_unit(_as_marked(figure), figure.unit)
    # on its card, in its sheet and in the record it is printed alike: a packet asks for each nearly twice
    key = id(figure), id(data), unit
    known = _PRINTED.get(key)
    if known is not None and known[0] is figure:
        return known[2]
    if len(_PRINTED) >= _MOST_PRINTED:
        _PRINTED.clear()
    text = _printed(figure, data, unit)
    _PRINTED[key] = figure, data, text
    return text


def _as_marked(figure: Figure) -> str:
    """The source's own digits; of what stands on a tool in 64ths of an inch that fraction: 9/16 for 0.5625 or 0.562."""
    if figure.quantity not in MARKED or figure.unit != "in":
        return figure.text
    mark = units.step_round(figure.typical, _SIXTY_FOURTH, "nominal")
    return units.fraction_text(mark) if abs(float(mark) - figure.typical) < _ROUNDED else figure.text


def _printed(figure: Figure, data: Refdata, unit: str | None) -> str:
    to = unit or display_unit(figure.typical, figure.unit)
    inside_to = units.from_base(units.to_base(figure.typical, figure.unit), to)
    step = fine_step(step_of(figure.quantity, to, data), to, inside_to)
    if figure.text and figure.side in ("max", "min") and step is not None and not _is_fraction(to, step):
        rounded = units.step_round(inside_to, step, direction(figure, data))
        if abs(float(rounded) - inside_to) > _ANOTHER * abs(inside_to):
            step = None  # in this unit the step would make another limit of it
    if not figure.text and figure.side == "max" and step is not None and units.dimension(to) == "torque":
        # what a wrench may be set to is worked out of the limit itself: its print is not lower than that setting
        while step > _FINEST and abs(float(units.step_round(inside_to, step, "max")) - inside_to) > _LIMIT * inside_to:
            step = step / 10
    if figure.rule is not None and rests_on_friction(figure):
        step = _three_digits(
            max(abs(e) for e in (figure.value, figure.low, figure.high) if e is not None), figure, to, step
        )

    def inside(value: float) -> float:
        return value if to == figure.unit else units.from_base(units.to_base(value, figure.unit), to)

    if figure.value is None and (figure.low is None or figure.high is None):
        end = figure.low if figure.low is not None else figure.high
        return with_unit(number_text(inside(end or 0.0), to, "min" if figure.low is not None else "max", step), to)
    ends = ""
    if figure.low is not None and figure.high is not None and (figure.value is None or figure.basis == "derived"):
        low, high = inside(figure.low), inside(figure.high)
        is_window = figure.side == "target"
        if is_window:
            step = window_step(low, high, step)
        first = number_text(low, to, "min" if is_window else "nominal", step)
        last = number_text(high, to, "max" if is_window else "nominal", step)
        ends = first if first == last else f"{first} to {last}"
        if figure.value is None:
            return with_unit(ends, to)
    value = inside(figure.value or 0.0)
    number = number_text(value, to, direction(figure, data), step)
    if ends and figure.side == "target" and step is not None:
        number = _into_window(value, inside(figure.low or 0.0), inside(figure.high or 0.0), number, to, step)
    return f"{with_unit(number, to)} ({ends})" if ends else with_unit(number, to)


def rests_on_friction(figure: Figure) -> bool:
    """Whether a nut factor stands behind a figure: friction is not known to more than three digits."""
    return figure.below[1]


def _three_digits(most: float, figure: Figure, unit: str, step: Fraction | None) -> Fraction | None:
    """The step, or one so coarse that the greatest of the figure's numbers has three significant digits."""
    number = abs(units.from_base(units.to_base(most, figure.unit), unit))
    if number <= 0:
        return step
    from math import floor, log10

    coarse = Fraction(10) ** (floor(log10(number)) - 2)
    return coarse if step is None or coarse > step else step


def _into_window(value: float, low: float, high: float, nearest: str, unit: str, step: Fraction) -> str:
    """The printed target never leaves its own window: rounded the other way when the nearest step is outside."""
    mark = units.step_round(value, step, "target")
    if mark > Fraction(high) * (1 + Fraction(1, 10**9)):
        return number_text(value, unit, "max", step)
    return number_text(value, unit, "min", step) if mark < Fraction(low) * (1 - Fraction(1, 10**9)) else nearest


def number_only(figure: Figure, data: Refdata, unit: str | None = None) -> str:
    """As ``printed``, without the window of a derived figure: what stands large on a bench card."""
    return printed(figure, data, unit).split(" (")[0]


def other_unit(figure: Figure) -> str | None:
    """The unit of the other system that a figure is printed in beside its own; None where there is none."""
    unit = display_unit(figure.typical, figure.unit) if not figure.text else figure.unit
    if unit == "N*m" and abs(units.to_base(figure.typical, unit)) < _SMALL_TORQUE_NM:
        return "lbf*in"  # as the small wrenches read
    if unit == "psi" and abs(figure.typical) < _SMALL_PRESSURE_PSI:
        return "kPa"
    if unit == "lbf" and abs(units.to_base(figure.typical, unit)) < _SMALL_FORCE_N:
        return "N"
    return _OTHER_UNIT.get(unit)


_INCH_SERIES = (" UNC", " UNF", " UNEF", " BSW", " BSF", " UN")
INCHES = (
    "lbf*ft",
    "lbf*in",
    "in",
    "ft",
    "lbf",
    "ksi",
    "psi",
    "Msi",
    "degF",
    "delta_degF",
    "in**2",
    "lb",
    "lb/in**3",
    "gal/h",
    "gal/min",
    "lb/h",
    "in**3",
    "ft/s",
    "lbf/in",
    "lb/ft",
)


def is_of_metric(figure: Figure) -> bool | None:
    """Whether a torque is of a metric thread (then newton metres stand first) or an inch one; None where neither is
    said, or somebody named the torque in the unit of his own.
    """
    if figure.basis in ("maker", "stated", "measured") or figure.quantity == "torque_setting":
        return None
    if units.dimension(figure.unit) != "torque":
        return None
    thread = figure.key.get("thread") or figure.key.get("size") or ""
    if thread[:1] == "M" and thread[1:2].isdigit():
        return True
    return False if thread.endswith(_INCH_SERIES) else None


def shop_unit(figure: Figure, metric: bool | None = None) -> str | None:
    """The unit that stands first in a shop of inches or of metres, of a torque by its thread where that is not said;
    None for the figure's own. What a tool is set to is never turned into another unit.
    """
    metric = is_of_metric(figure) if metric is None else metric
    if metric is None or figure.quantity in ("torque_setting", "angle_from_snug"):
        return None
    other = other_unit(figure)
    if other is None or (figure.unit in INCHES) != metric:
        return None
    return display_unit(units.from_base(units.to_base(figure.typical, figure.unit), other), other)


def both_units(figure: Figure, data: Refdata) -> str:
    """As ``printed``, with the other system's unit in brackets."""
    other = other_unit(figure)
    if other is None:
        return printed(figure, data)
    second = printed(figure, data, other) if figure.value is None else number_only(figure, data, other)
    return f"{printed(figure, data)} = {second}"


def with_unit(text: str, unit: str) -> str:
    """A number with its unit; a pure ratio has none."""
    return text if unit == "1" else f"{text} {unit.removeprefix('delta_')}"
