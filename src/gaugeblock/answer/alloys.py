"""A metal that is called by its grade, where a table has the metal in general alone: the grade is said with it."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import END, Hit

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

_ALUMINIUM = r"(?:6061|6063|6082|5052|5083|7075|2024)(?:[- ]?t6)?"
# The steels of a tube by number: of one stiffness and one mass.
_STEEL = r"(?:1010|1018|1020|1026|4130)"
_GRADES = {
    "aluminium": (_ALUMINIUM, r"alumini?um|ally|alloy"),
    "steel": (_STEEL, r"(?:mild )?steel|dom|chrom\w+"),
}


class Graded:
    """A metal by its number, with its name before or behind it or without -> ``metal`` itself, ``aluminium`` or
    ``steel``; ``lead`` is a pattern of the words that stand before it, ``say`` how a person is told.
    """

    __slots__ = ("_compiled", "_lead", "_metal", "_say", "doubt")

    def __init__(self, metal: str, lead: str = "", say: str = "{}", doubt: int = 0) -> None:
        self._metal = metal
        self._lead = f"(?:{lead}) " if lead else ""
        self._say = say
        self._compiled: re.Pattern[str] | None = None
        self.doubt = doubt

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """None: numbers are no words that are nearly typed."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """The metal."""
        return (self._metal,)

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """The number of the metal at this place."""
        if not any(word[:1].isdigit() and word[1:4].isdigit() for word in words):
            return
        grade, names = _GRADES[self._metal]
        if self._compiled is None:
            self._compiled = re.compile(rf"{self._lead}(?:(?:{names}) )?(?P<n>{grade})(?: (?:{names}))?{END}")
        found = self._compiled.match(" ".join(words[at : at + 8]))
        if found is not None:
            said = self._say.format(f"{self._metal} ({found['n']})")
            yield Hit(found[0].count(" ") + 1, self._metal, said, self.doubt)
