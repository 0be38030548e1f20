"""The ratio of a pedal told by two lengths: from its pivot to the push rod, and from its pivot to the pad."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import END, Hit

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

# A whole number and a part of an inch; the part is the bore of the cylinder where that is named behind it.
_MIXED = r"[0-9]{1,2}[ -][0-9]+/[0-9]+(?! ?(?:in|inch|mm|\")? ?(?:bore|master|m/?c|cyl))"
ONE_NUMBER = rf"(?:{_MIXED}|[0-9]*\.[0-9]+|[0-9]+(?!/))"
_LENGTH = r"(?:is |of |at )*(?P<%s>" + ONE_NUMBER + r")(?: ?(?P<u%s>mm|cm|in|inch(?:es)?|\"))?"
_ROD, _PAD = (
    r"(?:the )?(?:push ?rods?|push rod (?:pin|hole|clevis)|rod|clevis)",
    r"(?:the )?(?:foot ?|pedal )?(?:pads?|foot|plate)",
)
_FROM = r"(?:to|from) (?:the )?(?:pedal )?pivot"
_TO = r"(?:from )?(?:the )?(?:brake )?(?:pedal )?pivot to"
_LONGEST = 20  # words
# A line that tells two lengths has one of these.
_SIGNS = frozenset(["pivot", "over", "pushrod", "rod", "clevis"])


def _ways() -> tuple[str, ...]:
    """Every order in which the two lengths are told."""
    rod, pad = _LENGTH % ("rod", "rod"), _LENGTH % ("pad", "pad")
    return (
        rf"{_TO} {_ROD} {rod}(?: and)?(?: {_TO}| to)? {_PAD} {pad}",
        rf"{_TO} {_PAD} {pad}(?: and)?(?: {_TO}| to)? {_ROD} {rod}",
        rf"{pad} (?:long )?(?:brake )?pedal(?: and| with| has)* {_ROD} {rod} {_FROM}",
        rf"{_ROD} {rod} {_FROM} (?:and )?{_PAD} {pad}(?: {_FROM})?",
        rf"{_PAD} {pad} {_FROM} (?:and )?{_ROD} {rod}(?: {_FROM})?",
        rf"{pad} {_TO} {_PAD}(?: and)? {rod} {_TO} {_ROD}",
        rf"{rod} {_TO} {_ROD}(?: and)? {pad} {_TO} {_PAD}",
        rf"{pad} to {_PAD}(?: and)? {rod} to {_ROD}",
        rf"{rod} to {_ROD}(?: and)? {pad} to {_PAD}",
        rf"ratio {pad} over {rod}",
        rf"{pad} over {rod} (?:pedal|lever)(?: ratio)?",
    )


def _parts(text: str) -> float:
    """A number as it is typed: 2 1/4."""
    total = 0.0
    for part in re.split("[ -]", text):
        top, _, bottom = part.partition("/")
        total += float(top) / float(bottom or 1)
    return total


class Lever:
    """Two lengths of a pedal -> its ratio, the longer over the shorter."""

    __slots__ = ("_compiled",)

    def __init__(self) -> None:
        self._compiled: list[re.Pattern[str]] = []

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """The words by which the lengths are told."""
        return dict.fromkeys(("pivot", "pushrod", "clevis"), "")

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: it is a number."""
        return ()

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """The two lengths at this place; both are in one unit, or neither has one."""
        if _SIGNS.isdisjoint(words):
            return
        text = " ".join(words[at : at + _LONGEST])
        self._compiled = self._compiled or [re.compile(f"(?:{way}){END}") for way in _ways()]
        found = next((match for one in self._compiled if (match := one.match(text))), None)
        if found is None:
            return
        units = {unit if unit in ("mm", "cm") else "in" for unit in (found["urod"], found["upad"]) if unit}
        rod, pad = _parts(found["rod"]), _parts(found["pad"])
        if len(units) < 2 and 0 < rod < pad:
            ratio = f"{pad / rod:.4g}"
            yield Hit(found[0].count(" ") + 1, ratio, f"pedal {ratio} to 1 ({found['pad']} over {found['rod']})")
