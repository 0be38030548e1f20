"""Find: all words of a text, over every table and every rule, grouped by key with the governing figure first."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, nearest, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Row

SHOWN = 20
_LONGEST = 200


class Entry:
    """One key of one table with its rows (or one rule), and its texts to search: key, quantity, rest, each padded."""

    __slots__ = ("all", "key", "label", "quantity", "rows", "rule", "table")

    def __init__(
        self, table: str, label: str, key: str, quantity: str, rest: str, rows: list[Row], rule: dict[str, str] | None
    ) -> None:
        self.table = table
        self.label = label
        self.rows = rows
        self.rule = rule
        self.key = plain(f"{key} {table}")
        self.quantity = plain(quantity)
        self.all = f"{self.key}|{self.quantity}|{plain(rest)}"


def plain(text: str) -> str:
    """Lower case, punctuation that is not part of a size as blanks, padded with a blank at both ends."""
    for mark in "|,;:()_=\"'":
        text = text.replace(mark, " ")
    return f" {' '.join(text.casefold().split())} "


class Found:
    """What was found: ``groups`` of (entry, figures), ``more`` keys beyond those, ``nearest`` when there is none."""

    __slots__ = ("asked", "data", "groups", "more", "nearest")

    def __init__(
        self, asked: str, groups: list[tuple[Entry, list[Figure]]], more: int, near: list[str], data: Refdata
    ) -> None:
        self.asked = asked
        self.groups = groups
        self.more = more
        self.nearest = near
        self.data = data

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
            "nearest": self.nearest,
            "checks": [],
            "cautions": [],
        }

    def text(self) -> str:
        """For a person."""
        from gaugeblock.answer.printing import printed
        from gaugeblock.answer.text import label, others_line, place, wrap

        if not self.groups:
            return f"nothing has all of: {self.asked}" + (
                f"\nnearest: {', '.join(self.nearest)}" if self.nearest else ""
            )
        lines: list[str] = []
        for entry, figures in self.groups:
            if entry.rule is not None:
                where = (
                    f"{entry.rule['source']}, {entry.rule['locator']}" if entry.rule["source"] else "common practice"
                )
                lines += wrap(f"{entry.label}: {entry.rule['statement']} ({where})", 0, 4)
                continue
            lines.append(f"{entry.table}: {entry.label}")
            for figure in figures:
                standing = f" ({figure.standing})" if figure.standing else ""
                lines += wrap(
                    f"{label(figure)} {printed(figure, self.data)}{standing}   {figure.trust}   {place(figure)}", 4, 8
                )
                if figure.others:
                    lines += wrap(f"also: {others_line(figure, self.data)}", 8, 10)
        if self.more:
            lines.append(f"... and {self.more} more keys; add a word")
        return "\n".join(lines)


def find(text: str, *, data: Refdata | None = None) -> Found:
    """Every key and rule that has all words of ``text``: whole words first, key before quantity before the rest.

    At most 20 keys, then how many more. Nothing found is an empty answer with the nearest keys.
    InputError for a text without a word, or of over 200 characters.
    """
    data = data or refdata()
    words = plain(text).split() if len(text) <= _LONGEST else []
    if not words:
        raise InputError(text[:40] or "(blank)", "find", "no words, or too many", (), "give one to a few words")
    entries, texts = _index(data)
    first, *rest = sorted(words, key=len, reverse=True)
    at = [i for i, text in enumerate(texts) if first in text]
    for word in rest:
        at = [i for i in at if word in texts[i]]
    hits = [(_score(entries[i], words), i, entries[i]) for i in at]
    hits.sort(key=lambda h: h[:2])
    groups = [(entry, _figures(entry, data)) for _, _, entry in hits[:SHOWN]]
    near = _nearest(text, words, data) if not hits else []
    return Found(text, groups, max(0, len(hits) - SHOWN), near, data)


def _score(entry: Entry, words: list[str]) -> tuple[int, int, int]:
    """Words not found whole; where they stand (key, quantity, rest); then whether the key has them side by side."""
    parts, places = 0, 0
    for word in words:
        whole = f" {word} "
        if whole not in entry.all:
            parts += 1
        places += 0 if whole in entry.key else 1 if word in entry.key else 2 if word in entry.quantity else 3
    return parts, places, 0 if " ".join(words) in entry.key else 1


def _figures(entry: Entry, data: Refdata) -> list[Figure]:
    by_quantity: dict[str, list[Row]] = {}
    for row in entry.rows:
        by_quantity.setdefault(row.cells["quantity"], []).append(row)
    return [lookup.govern_rows(rows, data) for rows in by_quantity.values()]


def _index(data: Refdata) -> tuple[list[Entry], list[str]]:
    got = data.memo.get("find index")
    if got is None:
        entries = _build(data)
        got = data.memo["find index"] = (entries, [e.all for e in entries])
    return got  # type: ignore[return-value]


def _build(data: Refdata) -> list[Entry]:
    said: dict[tuple[str, str, str], list[str]] = {}
    out: list[Entry] = []
    for table in data.all_tables():
        domain = table.name.split("/", 1)[0]
        names = [k.name for k in table.keys]
        for name in names:
            for word, cell in data.words(domain, name).items():
                said.setdefault((table.name, name, cell), []).append(word)
        groups: dict[tuple[str, ...], list[Row]] = {}
        for row in table.rows:
            groups.setdefault(row.key, []).append(row)
        for key, rows in groups.items():
            aliases = [w for n, c in zip(names, key, strict=True) for w in said.get((table.name, n, c), ())]
            quantities = dict.fromkeys(r.cells["quantity"] for r in rows)
            about = " ".join(f"{q} {data.quantity(q)['words']}" for q in quantities)
            rest = " ".join(
                f"{r.cells['conditions']} {r.cells['note']} {r.cells['source']} {r.cells['basis']}" for r in rows
            )
            out.append(
                Entry(table.name, lookup.figure_label(rows[0]), " ".join([*key, *aliases]), about, rest, rows, None)
            )
    for domain, rule in data.all_statements():
        label = f"{domain} rule, {rule['topic']}, {rule['subject']}"
        out.append(
            Entry(
                f"{domain}/rules",
                label,
                f"{rule['topic']} {rule['subject']}",
                rule["statement"],
                f"{rule['jurisdiction']} {rule['source']} {rule['note']}",
                [],
                rule,
            )
        )
    return out


def _nearest(text: str, words: list[str], data: Refdata) -> list[str]:
    cells = {
        cell: cell for table in data.all_tables() for key in table.keys for cell in table.column(key.name).values()
    }
    found = nearest(text, cells)
    for word in words:
        found += [n for n in nearest(word, cells, 3) if n not in found]
    return found[:5]


def sources(words: list[str], *, data: Refdata | None = None) -> list[dict[str, str]]:
    """The publications whose id or title has all the words, each with how many living figures rest on it."""
    data = data or refdata()
    counts: dict[str, int] = {}
    for table in data.all_tables():
        for row in table.rows:
            counts[row.cells["source"]] = counts.get(row.cells["source"], 0) + 1
    wanted = [w.casefold() for w in words]
    out = []
    for id, listed in data.listing("sources").items():
        text = f"{id} {listed['title']} {listed['publisher']}".casefold()
        if all(w in text for w in wanted):
            out.append({**listed, "rows": str(counts.get(id, 0))})
    return out
