"""Symbol: one letter of a formula: the quantity and unit it stands for, and which of a figure's inputs it is."""

from __future__ import annotations

from gaugeblock.errors import DataError
from gaugeblock.tables.load import is_decimal

ORDER = ("first", "second", "third", "fourth", "fifth")
# all: the number of each; ends: every number that each gives
MANY = ("all", "ends")
# low: the low end where there is one; least: what is guaranteed; printed: on the step of the tape or the tool
ENDS = ("low", "high", "least", "printed")
# low and high of the result are had at the ends of this input (range), or over all inputs of its quantity (spread)
SPANS = ("range", "spread")


class Where:
    """Which input a symbol is.

    ``order`` counts from 0 among the inputs of its quantities (None: there is only one), ``many`` ``all`` or ``ends``,
    ``end`` and ``span`` as named above, ``absent`` what it is when no input carries it, ``number`` a constant,
    ``below`` that the inputs of inputs are searched too, ``key`` that the number is the key that the inputs differ in:
    of the input (``input``) or of the figure itself (``own``).
    """

    __slots__ = ("absent", "below", "end", "key", "many", "number", "order", "span")

    def __init__(self, text: str) -> None:
        """Raises DataError for a word that is none of these."""
        self.order: int | None = None
        self.many = self.end = self.span = self.key = ""
        self.absent: float | None = None
        self.number: float | None = None
        self.below = False
        for word in text.split(", ") if text else ():
            self._take(word, text)

    def _take(self, word: str, text: str) -> None:
        if word in ORDER:
            self.order = ORDER.index(word)
        elif word in MANY:
            self.many = word
        elif word in ENDS:
            self.end = word
        elif word in SPANS:
            self.span = word
        elif word in ("key", "own key"):
            self.key = "own" if word == "own key" else "input"
        elif word == "below":
            self.below = True
        elif word.startswith("or ") and is_decimal(word[3:]):
            self.absent = float(word[3:])
        elif word.startswith("is ") and is_decimal(word[3:]):
            self.number = float(word[3:])
        else:
            words = (*ORDER, *MANY, *ENDS, *SPANS, "key", "own key", "below", "or 0", "is 0.5")
            raise DataError(
                text, "symbols.csv where", f"{word!r} says nothing", words, "use these, with a comma between"
            )


class Symbol:
    """One symbol of a rule: its ``name``, the ``quantities`` that it may be, its ``unit`` and ``where`` it is found."""

    __slots__ = ("name", "quantities", "unit", "where")

    def __init__(self, name: str, quantities: str, unit: str, where: str) -> None:
        self.name = name
        self.quantities = tuple(quantities.split(" or ")) if quantities else ()
        self.unit = unit
        self.where = Where(where)

    def __repr__(self) -> str:
        return f"<Symbol {self.name} [{self.unit}]>"
