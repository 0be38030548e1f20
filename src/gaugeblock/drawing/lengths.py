"""Lengths and angles as a shop reads them: inches on a fraction with decimals, or millimetres."""

from __future__ import annotations

from fractions import Fraction
from math import floor, pi

from gaugeblock.units import decimal_text, fraction_text

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


def _on_step(value: float, step: str) -> str:
    """A number on a decimal step, as text."""
    size = _STEPS.get(step)
    if size is None:
        size = _STEPS[step] = Fraction(step)
    return decimal_text(_steps(value / float(size)) * size)


def inches(step: int = 32, *, decimals: bool = True) -> Reads:
    """Text of a length in inches to a fraction (32 or 16), with decimals behind it when asked.

    >>> inches(32)(0.0254 * 17.16)
    '17 5/32 in (17.160)'
    """

    def reads(metres: float) -> str:
        value = metres / INCH
        sign = "-" if value < 0 else ""
        whole = fraction_text(Fraction(_steps(abs(value) * step), step))
        return f"{sign}{whole} in ({value:.3f})" if decimals else f"{sign}{whole} in"

    return reads


def millimetres(step: str = "0.5") -> Reads:
    """Text of a length in mm to a step.

    >>> millimetres("0.5")(0.12345)
    '123.5 mm'
    """

    def reads(metres: float) -> str:
        return f"{_on_step(metres * 1000, step)} mm"

    return reads


def degrees_text(angle: float, step: str = "0.5") -> str:
    """An angle in degrees to a step.

    >>> degrees_text(0.7853981633974483)
    '45 deg'
    """
    return f"{_on_step(angle * 180 / pi, step)} deg"


class Tape:
    """How a shop reads a length: its word, the unit, the step that marks go on (m), and the text of a length."""

    __slots__ = ("reads", "step", "unit", "word")

    def __init__(self, word: str, unit: str, step: float, reads: Reads) -> None:
        self.word = word
        self.unit = unit
        self.step = step
        self.reads = reads

    def number(self, metres: float) -> str:
        """The rounded number without its unit or decimals."""
        return self.reads(metres).split(" (")[0].removesuffix(f" {self.unit}")

    def short(self, metres: float) -> str:
        """The rounded number with its unit, without decimals."""
        return f"{self.number(metres)} {self.unit}"


def hundredths() -> Reads:
    """Text of a length in inches to a hundredth.

    >>> hundredths()(0.0254 * 17.158)
    '17.16 in'
    """
    return lambda metres: f"{_on_step(metres / INCH, '0.01')} in"


TAPES = ("1/32 in", "1/16 in", "decimal", "mm")


def tape(word: str) -> Tape:
    """The tape of one of ``TAPES``; KeyError for another word.

    >>> tape("1/16 in").short(0.0254 * 17.16)
    '17 3/16 in'
    """
    return {
        "1/32 in": Tape("1/32 in", "in", INCH / 32, inches(32)),
        "1/16 in": Tape("1/16 in", "in", INCH / 16, inches(16)),
        "decimal": Tape("0.01 in", "in", INCH / 100, hundredths()),
        "mm": Tape("0.5 mm", "mm", 0.0005, millimetres("0.5")),
    }[word]
