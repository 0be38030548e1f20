"""How figures and units stand on paper: the shop's unit first, a raised dot, nothing that splits a number from its unit."""

from __future__ import annotations

import re
from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.printing import number_only, other_unit, printed
from gaugeblock.answer.text import READ
from gaugeblock.figure import TRUST

if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

NO_BREAK = "\u00a0"
_UNITS = (
    ("**2", "\u00b2"),
    ("**3", "\u00b3"),
    ("**4", "\u2074"),
    ("lbf*ft", "lbf\u00b7ft"),
    ("lbf*in", "lbf\u00b7in"),
    ("N*m", "N\u00b7m"),
    ("m*K", "m\u00b7K"),
    (" delta_degF", " \u00b0F"),
    (" delta_degC", " \u00b0C"),
    (" degF", " \u00b0F"),
    (" degC", " \u00b0C"),
    (" deg", "\u00b0"),
)
# A number with a unit after it, a mixed fraction, or a range: what must stay on one line.
_NUMBER = r"[0-9][0-9.,/]*"
_TOGETHER = re.compile(
    rf"({_NUMBER}(?:[ -]{_NUMBER})?(?: to {_NUMBER}(?:[ -]{_NUMBER})?)?(?: x {_NUMBER})?)"
    r" (in|mm|ft|m|lbf\u00b7ft|lbf\u00b7in|N\u00b7m|lbf|kN|N|ksi|psi|MPa|GPa|bar|kPa|\u00b0F|\u00b0C|%|lb|kg|mph|rpm|HRC|HB|gauge|BWG)\b"
)
_INCHES = ("lbf*ft", "lbf*in", "in", "ft", "lbf", "ksi", "psi", "Msi", "degF", "delta_degF", "in**2", "lb", "lb/in**3")
_SIGNIFICANT = re.compile(r"(?<![\w.])\.([0-9])")


def pretty(text: str) -> str:
    """Text as a person reads it on paper: units with their signs, a zero before a point, mixed fractions with a space."""
    for plain, shown in _UNITS:
        text = text.replace(plain, shown)
    text = _SIGNIFICANT.sub(r"0.\1", text)
    text = re.sub(r"\b([0-9]+)-([0-9]+/[0-9]+)(?= in\b)", r"\1 \2", text)
    return together(text)


def together(text: str) -> str:
    """Text whose numbers stay with their units, whose fractions and ranges stay whole."""
    return _TOGETHER.sub(lambda m: m[0].replace(" ", NO_BREAK), text)


class Paper:
    """Prints the figures of one packet: ``metric`` says which system stands first, None leaves each figure its own."""

    def __init__(self, data: Refdata, metric: bool | None) -> None:
        self.data = data
        self.metric = metric

    def unit_first(self, figure: Figure) -> str | None:
        """The unit that stands first; None for the figure's own. What a tool is set to is never turned into another unit."""
        own = figure.unit
        if self.metric is None or figure.quantity in ("torque_setting", "angle_from_snug"):
            return None
        other = other_unit(figure)
        return other if other is not None and (own in _INCHES) == self.metric else None

    def number(self, figure: Figure) -> str:
        """What stands large: the number without the window of a derived figure, with its unit."""
        return pretty(number_only(figure, self.data, self.unit_first(figure)))

    def whole(self, figure: Figure) -> str:
        """The number with its window."""
        return pretty(printed(figure, self.data, self.unit_first(figure)))

    def other(self, figure: Figure) -> str:
        """The number in the other system's unit; blank where there is none."""
        first = self.unit_first(figure)
        second = figure.unit if first is not None else other_unit(figure)
        return pretty(number_only(figure, self.data, second)) if second is not None else ""

    def split(self, figure: Figure) -> SimpleNamespace:
        """Number and unit apart, as a card prints them in two sizes, and the other unit's number."""
        text = self.number(figure)
        match = re.fullmatch(r"(.*?[0-9%°\u00b2])(?:[\u00a0 ]([^0-9].*))?", text)
        value, unit = (match[1], match[2] or "") if match else (text, "")
        return SimpleNamespace(
            value=value.replace(" ", NO_BREAK), unit=unit.replace(NO_BREAK, " "), other=self.other(figure)
        )

    def source(self, figure: Figure) -> str:
        """Where a figure comes from, short: source and place with how it was checked, or the rule's name and its source."""
        if figure.rule is not None:
            name = figure.rule.name.replace("_", " ")
            where = f" ({figure.rule.source} {figure.rule.locator})".replace(" )", ")") if figure.rule.source else ""
            return pretty(f"{name}{where}")
        if figure.basis == "common practice":
            return "no publication was found"
        if not figure.source:
            return "as given"
        mark = f", {READ[figure.checked]}" if figure.basis == "published" and READ[figure.checked] else ""
        return pretty(f"{figure.source}, {figure.locator}{mark}")

    def root(self, figure: Figure) -> str:
        """What a figure rests on, for a card: the printed figure of its dimension that it was made from, else its own source."""
        from gaugeblock import units

        dimension = units.dimension(figure.unit)
        for part in figure.walk():
            if part.basis in ("published", "maker", "measured") and units.dimension(part.unit) == dimension:
                shown = "" if part is figure else f"{self.number(part)}, "
                return shown + self.source(part)
        return self.source(figure)

    def weakest(self, figure: Figure) -> str:
        """The trust word of the weakest link."""
        link = figure.evidence
        word = TRUST[link.basis]
        return f"{word}, from memory" if link.checked == "memory" else word
