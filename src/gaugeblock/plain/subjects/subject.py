"""Subject: what a line may be about that rules alone have."""

from __future__ import annotations

from gaugeblock.answer.patterns import compiled

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.found import Listed
    from gaugeblock.shelf import Entry
    from gaugeblock.tables.load import Refdata

    Groups = list[tuple[Entry | Listed, Sequence[Figure]]]
    Shown = Callable[[str, Refdata], tuple[tuple[str, ...], Groups]]


class Subject:
    """A subject: its ``name``; ``patterns``, each of which a line must have; ``unless`` one that it must not have;
    ``rules`` the subjects of the rules that say it; ``words`` a pattern of the words that say no more of it, blank
    where the rule holds whatever is said; ``forbids`` where it holds whatever number is said too; ``shown`` gives the
    rules of it that a line asks for, and the rows beside them.
    """

    __slots__ = ("forbids", "name", "patterns", "rules", "shown", "unless", "words")

    def __init__(
        self,
        name: str,
        patterns: tuple[str, ...],
        rules: tuple[str, ...],
        words: str = "",
        unless: str = "",
        *,
        forbids: bool = False,
        shown: Shown | None = None,
    ) -> None:
        self.forbids = forbids
        self.shown = shown
        self.name = name
        self.patterns = patterns
        self.rules = rules
        self.words = words
        self.unless = unless

    def has(self, line: str) -> bool:
        """Whether a line has every pattern of it."""
        if self.unless and compiled(rf"\b(?:{self.unless})\b").search(line):
            return False
        return all(compiled(rf"(?<![\w.])(?:{pattern})(?![\w.])").search(line) for pattern in self.patterns)


def shelved(text: str, table: str, things: tuple[str, ...], data: Refdata) -> Groups:
    """The rows of a table that have the words of a text, those of these things alone."""
    from gaugeblock.finding import find

    groups = find(text, data=data, whole=True).groups
    return [(entry, figures) for entry, figures in groups if entry.table == table and entry.key[0] in things]
