"""The tables as one page without a script, for a phone that cannot run the program."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from gaugeblock.answer.pretty import capital
from gaugeblock.book import shelves
from gaugeblock.book.words import GOVERNS, release

if TYPE_CHECKING:
    from collections.abc import Iterator
    from typing import Any

    from gaugeblock.tables.load import Refdata

_HEAD = (
    '<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Shop book: the tables</title><meta'
    ' name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light'
    ' dark"><link rel="stylesheet" href="book.css"></head><body class="plain-page"><main>'
)


def plain_page(data: Refdata) -> str:
    """HTML with every figure of the release: its number, trust, source and conditions."""
    return "".join([_HEAD, *_parts(data), "</main></body></html>\n"])


def _parts(data: Refdata) -> Iterator[str]:
    yield f"<h1>The tables</h1><p>{escape(capital(release(data)))}. {escape(GOVERNS)}</p>"
    yield "<p>This page only lists what is on record. It checks nothing: a figure may not fit your part.</p>"
    for domain in shelves.domains({}, None, data)["domains"]:
        yield f"<h2>{escape(domain['say'])}</h2>"
        for shelf in domain["tables"]:
            yield f"<details><summary>{escape(shelf['say'])} ({shelf['figures']})</summary><div>"
            for group in shelves.table({"table": shelf["table"]}, None, data)["groups"]:
                yield f"<h3>{escape(group['say'])}</h3>"
                yield from map(_row, group["rows"])
            yield "</div></details>"


def _row(row: dict[str, Any]) -> str:
    name = ", ".join(part for part in (row["label"], row["keys"]) if part)
    standing = f" <b>{escape(row['standing'].upper())}</b>" if row["standing"] else ""
    more = "; ".join(part for part in (f"{row['trust']}: {row['source']}", row["conditions"]) if part)
    return f"<p>{escape(name)} <b>{escape(row['number'])}</b>{standing}<br>{escape(more)}</p>"
