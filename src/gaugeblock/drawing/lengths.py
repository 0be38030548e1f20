"""Lengths and angles as a shop reads them: inches on a fraction with decimals, or millimetres."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor, pi

from gaugeblock.units import decimal_text, fraction_text
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import TypeAlias

    Reads: TypeAlias = Callable[[float], str]  # metres -> text with its unit

INCH = 0.0254
_STEPS: dict[str, Fraction] = {}


def _steps(count: float) -> int:
    """The nearest whole number of steps, halves up; within 1e-9 of a half counts as the half."""
    return floor(count + 0.5 + 1e-9)


def _on_step(value: float, step: str, way: int = 0) -> str:
    """A number on a decimal step, as text."""
    size = _STEPS.get(step)
    if size is None:
        size = _STEPS[step] = Fraction(step)
    return decimal_text(_rounded(value / float(size), way) * size)


def _rounded(count: float, way: int) -> int:
    """A whole number of steps: up for a ``way`` over nothing, down under it, else the nearest; a step's own float
    stays.
    """
    if not way:
        return _steps(count)
    return ceil(count - 1e-6) if way > 0 else floor(count + 1e-6)


def inches(step: int = 32, *, decimals: bool = True, way: int = 0) -> Reads:
    """Text of a length in inches to a fraction (32 or 16), with decimals behind it when asked.

    >>> inches(32)(0.0254 * 17.16)
    '17 5/32 in (17.160)'
    """

    def reads(metres: float) -> str:
        value = metres / INCH
        count = _rounded(abs(value) * step, way if value >= 0 else -way)
        sign = "-" if value < 0 and count else ""
        whole = fraction_text(Fraction(count, step))
        return f"{sign}{whole} in ({_plain(value)})" if decimals else f"{sign}{whole} in"

    return reads


def _plain(value: float) -> str:
    """Three decimals, and no minus before nothing."""
    text = f"{value:.3f}"
    return "0.000" if text == "-0.000" else text


def millimetres(step: str = "0.5", way: int = 0) -> Reads:
    """Text of a length in mm to a step.

    >>> millimetres("0.5")(0.12345)
    '123.5 mm'
    """

    def reads(metres: float) -> str:
        return f"{_on_step(metres * 1000, step, way)} mm"

    return reads


def degrees_text(angle: float, step: str = "0.5") -> str:
    """An angle in degrees to a step.

    >>> degrees_text(0.7853981633974483)
    '45 deg'
    """
    return f"{_on_step(angle * 180 / pi, step)} deg"


class Tape(Value):
    """How a shop reads a length: its word, the unit, the step that marks go on (m), and the text of a length.

    ``reads`` rounds to the nearest step, ``up`` and ``down`` to the next one; what stands in brackets is exact.
    """

    __slots__ = ("_make", "step", "unit", "word")

    word: str
    unit: str
    step: float
    _make: Callable[[int], Reads]

    def __init__(self, word: str, unit: str, step: float) -> None:
        put(self, "word", word)
        put(self, "unit", unit)
        put(self, "step", step)
        put(self, "_make", _READERS[word])

    def reads(self, metres: float) -> str:
        """A length on the nearest step, its exact decimals in brackets."""
        return self._text(metres, 0)

    def up(self, metres: float) -> str:
        """A length that must be reached, or a loss: on the next step up."""
        return self._text(metres, 1)

    def down(self, metres: float) -> str:
        """A length that must not be passed, or what is left: on the next step down."""
        return self._text(metres, -1)

    def _text(self, metres: float, way: int) -> str:
        return self._make(way)(metres)

    def number(self, metres: float) -> str:
        """The rounded number without its unit or decimals."""
        return self.reads(metres).split(" (")[0].removesuffix(f" {self.unit}")

    def short(self, metres: float) -> str:
        """The rounded number with its unit, without decimals."""
        return f"{self.number(metres)} {self.unit}"


def hundredths(way: int = 0) -> Reads:
    """Text of a length in inches to a hundredth.

    >>> hundredths()(0.0254 * 17.158)
    '17.16 in'
    """
    return lambda metres: f"{_on_step(metres / INCH, '0.01', way)} in"


_READERS: dict[str, Callable[[int], Reads]] = {
    "1/32 in": lambda way: inches(32, way=way),
    "1/16 in": lambda way: inches(16, way=way),
    "0.01 in": hundredths,
    "0.5 mm": lambda way: millimetres("0.5", way),
}
TAPES = ("1/32 in", "1/16 in", "decimal", "mm")


def tape(word: str) -> Tape:
    """The tape of one of ``TAPES``; KeyError for another word.

    >>> tape("1/16 in").short(0.0254 * 17.16)
    '17 3/16 in'
    >>> tape("1/32 in").up(0.0254 * 4.636)
    '4 21/32 in (4.636)'
    """
    return {
        "1/32 in": Tape("1/32 in", "in", INCH / 32),
        "1/16 in": Tape("1/16 in", "in", INCH / 16),
        "decimal": Tape("0.01 in", "in", INCH / 100),
        "mm": Tape("0.5 mm", "mm", 0.0005),
    }[word]
