"""A question in plain words, and what was said since by tapping -> what the page shows of the answer."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.short import source_of
from gaugeblock.answer.table import Table
from gaugeblock.answer.text import label
from gaugeblock.book import settle
from gaugeblock.book.sheet_view import cell, sheet_view
from gaugeblock.book.words import GOVERNS, release
from gaugeblock.found import Found, who_says
from gaugeblock.packet.paper import Paper
from gaugeblock.plain.answer import answer_or_rules, read_or_answered
from gaugeblock.plain.convert import Conversion
from gaugeblock.plain.given import Answer
from gaugeblock.plain.reading import Reading
from gaugeblock.plain.understand import answer_to

if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.tables.load import Refdata


def answer(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """The answer to ``text``, with the options of ``also`` said besides, or with ``compare`` side by side.

    Raises whatever the reading or the answer refuses.
    """
    read_as = read_or_answered(asked["text"], data)
    if isinstance(read_as, Answer):
        return _otherwise(read_as, metric, data)
    reading = said_too(read_as, asked.get("also") or {})
    compare = asked.get("compare")
    found = answer_to(reading, compare, data) if compare else answer_or_rules(asked["text"], reading, data)
    if isinstance(found.found, Found):
        return _otherwise(found, metric, data)
    view = _view(found.found, Paper(data, metric))
    if isinstance(found.found, Sheet):
        settle.add(view, found.found, reading, data)
    return {
        **view,
        "read_as": _read_as(found),
        "compare": settle.comparable(reading, data),
        "release": release(data),
        "governs": GOVERNS,
    }


def _read_as(answer: Answer) -> str:
    """How a line was read; of what else it asked the page shows how to ask it."""
    more = "".join(f"; ask by itself: {one.read_as}" for one in answer.more)
    return pretty(f"{answer.read_as}{more}")


def _otherwise(answer: Answer, metric: bool | None, data: Refdata) -> dict[str, Any]:
    """What the page shows of an answer that no reading stands behind: nothing more can be said of its rows."""
    view = _view(answer.found, Paper(data, metric))
    for row in view.get("rows", ()):
        row["also"] = None
    said = {"read_as": _read_as(answer), "compare": [], "release": release(data), "governs": GOVERNS}
    return {**view, **said}


def _view(found: Sheet | Table | Conversion | Found, paper: Paper) -> dict[str, Any]:
    """What the page shows of what was found, whatever it is."""
    if isinstance(found, Sheet):
        return sheet_view(found, paper)
    if isinstance(found, Table):
        return _table(found, paper)
    return _conversion(found) if isinstance(found, Conversion) else _found(found)


def _conversion(found: Conversion) -> dict[str, Any]:
    """A measure in another unit as a table of one row, which says that no table has it."""
    row = {"names": [pretty(found.given)], "kind": "use", "word": "", "number": pretty(found.found)}
    row |= {"other": "" if found.is_exact else found.exact, "trust": "CONVERSION"}
    title = "a conversion of what you gave, no figure of any table"
    return {"is": "table", "title": title, "open": [], "rows": [row], "more": 0}


def _found(found: Found) -> dict[str, Any]:
    """The rows that have every word of a line, each with its first figure."""
    rows = []
    for entry, figures in found.groups:
        names = [pretty(part) for part in entry.label.split(" | ") if part not in ("any", "not stated")]
        row: dict[str, Any] = {"names": names, "kind": "use", "word": "", "number": "", "trust": ""}
        if figures:
            row["names"] = [*names, label(figures[0])]
            row |= {"number": pretty(printed(figures[0], found.data)), "trust": figures[0].trust}
            told = f"{pretty(figures[0].conditions)}. " if figures[0].conditions else ""
            row["said"] = f"{told}{pretty(source_of(figures[0], found.data))}"
        elif entry.rule is not None:
            row |= {"names": [pretty(entry.rule["statement"])], "said": pretty(who_says(entry.rule))}
        rows.append(row)
    title = "what the tables have of it"
    return {"is": "table", "title": title, "open": [], "rows": rows, "more": found.more}


def said_too(reading: Reading, also: dict[str, str]) -> Reading:
    """The reading with more said of it; what is blank is taken back."""
    if not also:
        return reading
    values = {**reading.values, **also}
    said = {**reading.said, **{k: f"{settle.spoken(k)} {v}" for k, v in also.items()}}
    kept = {k: v for k, v in values.items() if v}
    return reading.replace(values=kept, said={k: v for k, v in said.items() if k in kept})


def _table(table: Table, paper: Paper) -> dict[str, Any]:
    """The rows of what is open: each a line to tap, which says it."""
    rows = []
    for line in table.lines:
        names = [v for v in line.key.values() if v not in ("any", "not stated")]
        rows.append({"names": [pretty(n) for n in names], "also": dict(line.key), **cell(line.sheet, paper)})
    return {
        "is": "table",
        "title": pretty(table.title.rpartition("; ")[2]),
        "open": [settle.spoken(k) for k in table.open],
        "rows": rows,
        "more": table.more,
    }
