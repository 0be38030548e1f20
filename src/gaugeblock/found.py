"""What a look through the tables found, for JSON and for a person."""

from __future__ import annotations

from gaugeblock.answer.pretty import capital
from gaugeblock.errors import visible
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.figure import Figure
    from gaugeblock.shelf import Entry
    from gaugeblock.tables.load import Refdata

# Lines that an answer may fill.
_SCREEN = 15
_LEAST_NAME = 16
# Cells that a hit is read without.
_SAYS_NO_MORE = ("not stated", "any", "vehicle")
# So few figures are told with their sources.
_FEW = 4


class Listed(Value):
    """One key of a ``table``, or one ``rule``, as it was found; ``label`` is what a person is told."""

    __slots__ = ("key", "label", "rule", "table")

    table: str
    key: tuple[str, ...]
    label: str
    rule: Keys | None

    def __init__(self, table: str, key: Iterable[str], label: str, rule: dict[str, str] | None = None) -> None:
        put(self, "table", table)
        put(self, "key", tuple(key))
        put(self, "label", label)
        put(self, "rule", None if rule is None else Keys(rule))

    @property
    def text(self) -> str:
        """The key, or the topic and subject of the rule, in lower case."""
        return " ".join(self.key if self.rule is None else (self.rule["topic"], self.rule["subject"])).casefold()


class Found(Value):
    """What was found: ``groups`` of (entry, figures), ``more`` keys beyond those, ``nearest`` when there is none."""

    __slots__ = ("asked", "data", "groups", "more", "nearest")

    asked: str
    groups: tuple[tuple[Listed, tuple[Figure, ...]], ...]
    more: int
    nearest: tuple[str, ...]
    data: Refdata

    def __init__(
        self,
        asked: str,
        groups: Iterable[tuple[Entry | Listed, Iterable[Figure]]],
        more: int,
        nearest: Iterable[str],
        data: Refdata,
    ) -> None:
        put(self, "asked", asked)
        put(self, "groups", tuple([(_listed(entry), tuple(figures)) for entry, figures in groups]))
        put(self, "more", more)
        put(self, "nearest", tuple(nearest))
        put(self, "data", data)

    def __repr__(self) -> str:
        figures = sum(len(figures) for _, figures in self.groups)
        more = f" and {self.more} more" if self.more else ""
        return f"<Found {visible(self.asked)!r}: {len(self.groups)} keys{more}, {figures} figures>"

    def as_dict(self) -> dict[str, object]:
        """For JSON: the keys of a Sheet, and the groups by key."""
        from gaugeblock.answer.sheet import figure_dict

        keys: list[dict[str, object]] = []
        flat: list[dict[str, object]] = []
        rules: list[dict[str, str]] = []
        for entry, figures in self.groups:
            if entry.rule is not None:
                rules.append({"domain": entry.table.split("/", 1)[0], **entry.rule})
                continue
            made = [figure_dict(f, self.data) for f in figures]
            flat += made
            keys.append(
                {"table": entry.table, "key": figures[0].key, "label": entry.label, "figures": [f["id"] for f in made]}
            )
        return {
            "asked": {"text": self.asked},
            "data_release": self.data.release,
            "keys": keys,
            "figures": flat,
            "rules": rules,
            "more": self.more,
            "nearest": list(self.nearest),
            "checks": [],
            "cautions": [],
        }

    def text(self, columns: int | None = None, whole: bool = False, above: int = 0, more: str = "--list") -> str:
        """For a person: one line a hit, none wider than the screen, as many as it holds; every one with ``whole``.

        ``above`` are lines that stand over it already, ``more`` the option that shows every hit.
        """
        from gaugeblock.answer.text import width, wrap

        wide = columns or width()
        if not self.groups:
            lines = wrap(f"Nothing has all of these words: {self.asked}.", 0, 2, wide=wide)
            lines += wrap(f"Near it: {', '.join(self.nearest)}.", 0, 2, wide=wide) if self.nearest else []
            return "\n".join([*lines, "The figure of its maker governs."])
        if sum(len(figures) or 1 for _, figures in self.groups) <= _FEW and not self.more:
            hits = [self._whole(entry, figures, wide) for entry, figures in self.groups]
            foot = ["The part maker's figure governs if you have it."]
        else:
            hits = [self._line(entry, figures, wide).splitlines() for entry, figures in self.groups]
            foot = wrap("Ask for one of them, and it comes with its source and its checks.", 0, 2, wide=wide)
        room = len(hits) if whole else max(_SCREEN - above - len(foot) - 1, 1)
        lines = []
        kept = 0
        while kept < len(hits) and (whole or len(lines) + len(hits[kept]) <= room):
            lines += hits[kept]
            kept += 1
        if left := self.more + len(hits) - kept:
            lines.append(f"... and {left} more: add a word, or {more}")
        return "\n".join([*lines, *foot])

    def _whole(self, entry: Listed, figures: tuple[Figure, ...], wide: int) -> list[str]:
        """One hit with every figure that it has, and where each stands."""
        from gaugeblock.answer.short import source_of
        from gaugeblock.answer.text import wrap

        rule = entry.rule
        lines = wrap(self._name(entry) if rule is None else f"rule: {rule['statement']}", 0, 2, wide=wide)
        if rule is not None:
            lines += wrap(who_says(rule), 8, 8, wide=wide)
        for figure in figures:
            told = f"{figure.conditions}. " if figure.conditions else ""
            lines += wrap(self._says(figure), 2, 4, wide=wide)
            lines += wrap(f"{told}{source_of(figure, self.data)}", 8, 8, wide=wide)
        return lines

    def _name(self, entry: Listed) -> str:
        """What a hit is, without the cells that say no more."""
        parts = entry.label.split(" | ")
        return ", ".join(
            part for n, part in enumerate(parts) if part not in _SAYS_NO_MORE or (n == 0 and part != "any")
        )

    def _says(self, figure: Figure) -> str:
        """What a figure is, its number and how far to trust it."""
        from gaugeblock.answer.printing import printed
        from gaugeblock.answer.text import label

        standing = f" ({figure.standing})" if figure.standing else ""
        what = label(figure).removeprefix("tightening ")
        return f"{what} {printed(figure, self.data)}{standing} {figure.trust}"

    def _line(self, entry: Listed, figures: tuple[Figure, ...], wide: int) -> str:
        """One hit in one line, or two on a narrow screen: what it is, its first figure and how far to trust that; what
        does not fit is cut off the name, never off the number.
        """
        from gaugeblock.answer.text import wrap

        if entry.rule is not None:
            text = f"rule: {entry.rule['subject']}: {entry.rule['statement']}"
            return text if len(text) <= wide else f"{text[: wide - 3].rsplit(' ', 1)[0]}..."
        figure = figures[0]
        more = f" and {len(figures) - 1} more" if len(figures) > 1 else ""
        says = f": {self._says(figure)}"
        name = self._name(entry)
        for tail in (says + more, says, says.removesuffix(" (from memory)")):
            if len(name + tail) <= wide:
                return name + tail
        room = wide - len(tail) - 3
        if room >= _LEAST_NAME:
            return f"{name[:room]}...{tail}"
        cut = name if len(name) <= wide else f"{name[: wide - 3]}..."
        return "\n".join([cut, *wrap(tail[2:], 2, 4, wide=wide)])


def _listed(entry: Entry | Listed) -> Listed:
    return entry if isinstance(entry, Listed) else Listed(entry.table, entry.key, entry.label, entry.rule)


def who_says(rule: dict[str, str]) -> str:
    """For whom a rule is, who says so, and how it was read."""
    where = ", ".join(rule[key] for key in ("service", "jurisdiction") if rule[key] not in _SAYS_NO_MORE)
    source = f"{rule['source']}, {rule['locator']}".removesuffix(", ") if rule["source"] else ""
    read = {"primary": "read", "quoted": "quoted", "memory": "from memory"}.get(rule["checked"], "")
    said = ", ".join(part for part in (source, read) if part) or "Common practice; no publication was found"
    return f"{where}. {capital(said)}." if where else f"{capital(said)}."
