"""Answer: what a question came to, with how it was read."""

from __future__ import annotations

from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table
    from gaugeblock.found import Found
    from gaugeblock.plain.convert import Conversion


class Answer(Value):
    """A question answered: how it was ``read_as``, and ``found``: a Sheet, a Table, the Conversion of a measure, or
    the rows Found; ``unit`` is the one that it was wanted in; ``more`` are the answers to what else was asked in the
    line.
    """

    __slots__ = ("found", "more", "read_as", "unit")

    read_as: str
    found: Sheet | Table | Conversion | Found
    unit: str
    more: tuple[Answer, ...]

    def __init__(
        self, read_as: str, found: Sheet | Table | Conversion | Found, unit: str = "", more: tuple[Answer, ...] = ()
    ) -> None:
        put(self, "more", more)
        put(self, "read_as", read_as)
        put(self, "found", found)
        put(self, "unit", unit)

    @property
    def is_of_all(self) -> bool:
        """Whether a subject that no table is about is all that a line names: no rule is meant."""
        return self.read_as.startswith("a question of") and "not looked at" not in self.read_as

    def as_dict(self) -> dict[str, object]:
        """The JSON of the answer, with how the line was read."""
        more = {"more": [one.as_dict() for one in self.more]} if self.more else {}
        return {"read_as": self.read_as, **self.found.as_dict(), **more}
