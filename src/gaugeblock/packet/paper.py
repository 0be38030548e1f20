"""How figures and units stand on paper: the shop's unit first, a raised dot, nothing that splits a number from its
unit.
"""

from __future__ import annotations

import re
from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.answer.pretty import NO_BREAK, pretty
from gaugeblock.answer.printing import INCHES, is_of_metric, number_only, other_unit, printed, shop_unit
from gaugeblock.answer.text import READ
from gaugeblock.figure import TRUST

if TYPE_CHECKING:
    from gaugeblock.answer.decision import Decision
    from gaugeblock.answer.item import Item
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

# Rules that turn a torque into a reading of the tool: not what the torque rests on.
_OF_THE_TOOL = ("nearest_graduation", "wrench_adapter_at_angle", "prevailing_added")
# What a pure number counts.
_COUNTED = {"stock_bars": "stock length", "support_count": "clip"}
_TORQUES = ("lbf*ft", "lbf*in", "N*m")
_METRES = ("N*m", "mm", "m", "kN", "N", "MPa", "bar", "kPa", "GPa", "degC", "kg")


class Paper:
    """Prints the figures of one packet: ``metric`` says which system stands first, None leaves each figure its own.

    ``torque`` is the unit that the torques of one item stand in, but for those that are ``set``, by their ids.
    """

    def __init__(self, data: Refdata, metric: bool | None, torque: str = "", set: frozenset[str] = frozenset()) -> None:
        self.set = set
        self.data = data
        self.metric = metric
        self.torque = torque

    def of(self, item: Item) -> Paper:
        """The paper of one item: its numbers stand in the system, and its torques in the unit, of the card's number."""
        shown = next(iter(item.sheet.decision.figures), None)
        if shown is None or shown.unit not in (*INCHES, *_METRES):
            return self
        metric = self.metric
        if metric is None:
            of_thread = is_of_metric(shown)
            metric = shown.unit not in INCHES if of_thread is None else of_thread
        if shown.unit not in _TORQUES:
            return Paper(self.data, metric)
        unit = self.number(shown).rsplit(NO_BREAK, 1)[-1].replace("\u00b7", "*")
        return Paper(self.data, metric, unit, frozenset(f.id for f in item.sheet.decision.figures))

    def unit_first(self, figure: Figure) -> str | None:
        """The unit that stands first; None for the figure's own. What a tool is set to is never turned into another
        unit.
        """
        own = figure.unit
        if self.torque and own in _TORQUES and figure.id not in self.set and not _is_drag(figure):
            return self.torque
        return shop_unit(figure, self.metric)

    def number(self, figure: Figure) -> str:
        """What stands large: the number without the window of a derived figure, with its unit."""
        text = pretty(number_only(figure, self.data, self.unit_first(figure)))
        word = _COUNTED.get(figure.quantity)
        return text if word is None else f"{text}{NO_BREAK}{word if text == '1' else f'{word}s'}"

    def numbers(self, decision: Decision) -> str:
        """The number of each candidate as it stands large, with what is done after it: ``44 lbf*ft + 90 deg``."""
        return " or ".join(
            f"{self.number(c.figure)}{' ' if c.plus else ''}{_held(pretty(c.plus))}" for c in decision.candidates
        )

    def whole(self, figure: Figure) -> str:
        """The number with its window."""
        return pretty(printed(figure, self.data, self.unit_first(figure)))

    def other(self, figure: Figure) -> str:
        """The number in the other system's unit; blank where there is none."""
        first = self.unit_first(figure)
        second = figure.unit if first is not None else other_unit(figure)
        if self.torque and figure.unit in _TORQUES and not _is_drag(figure):
            second = "N*m" if (first or figure.unit) != "N*m" else "lbf*ft"
        return pretty(number_only(figure, self.data, second)) if second is not None else ""

    def split(self, figure: Figure) -> SimpleNamespace:
        """Number and unit apart, as a card prints them in two sizes, and the other unit's number."""
        text = self.number(figure)
        if figure.quantity in _COUNTED:
            value, _, word = text.partition(NO_BREAK)
            return SimpleNamespace(value=value, unit=word, other="")
        number = r".*?[0-9%°\u00b2](?:[\u00a0 ]to[\u00a0 ].*?[0-9%°\u00b2])?"
        match = re.fullmatch(rf"({number})(?:[\u00a0 ]([^0-9].*))?", text)
        value, unit = (match[1], match[2] or "") if match else (text, "")
        return SimpleNamespace(
            value=value.replace(" ", NO_BREAK), unit=unit.replace(NO_BREAK, " "), other=self.other(figure)
        )

    def source(self, figure: Figure) -> str:
        """Where a figure comes from, short: source and place with how it was checked, or the rule's name and its
        source.
        """
        if figure.rule is not None:
            name = figure.rule.name.replace("_", " ")
            where = f" ({figure.rule.source} {figure.rule.locator})".replace(" )", ")") if figure.rule.source else ""
            return pretty(f"{name}{where}")
        if figure.basis == "common practice":
            return "no publication was found"
        if not figure.source:
            return "given"
        mark = f", {READ[figure.checked]}" if figure.basis == "published" and READ[figure.checked] else ""
        return pretty(f"{figure.source}, {figure.locator}{mark}")

    def root(self, figure: Figure) -> str:
        """What a figure rests on, for a card: the printed figure of its dimension that it was made from, else its
        own source.
        """
        dimension = units.dimension(figure.unit)
        same = [part for part in figure.walk() if units.dimension(part.unit) == dimension]
        for part in same:
            if _is_drag(part):
                continue  # a locknut's drag is added to what the torque rests on
            if part.basis in ("published", "maker", "measured"):
                is_read = part.basis == "published"  # what a maker's paper says is told in its own unit
                number = self.number(part) if is_read else pretty(number_only(part, self.data))
                return f"{'' if part is figure else f'{number}, '}{self.source(part)}"
        made = next((p for p in same if p.rule is not None and p.rule.name not in _OF_THE_TOOL), same[-1])
        return self.source(made)

    def weakest(self, figure: Figure) -> str:
        """The trust word of the weakest link."""
        link = figure.evidence
        word = TRUST[link.basis]
        return f"{word}, from memory" if link.checked == "memory" else word


def _held(plus: str) -> str:
    """What is done after a number, on one line where it is short: ``+ 90 deg``."""
    return plus.replace(" ", NO_BREAK) if len(plus) <= _SHORT_PLUS else plus


_SHORT_PLUS = 9


def _is_drag(figure: Figure) -> bool:
    """Whether it is the drag of a locknut: read on a small wrench, and no torque of the joint."""
    return "prevailing_torque" in figure.quantity
