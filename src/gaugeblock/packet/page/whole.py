"""The whole page: its head, the index and what is shown, in order."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from gaugeblock.packet.page import desk, front
from gaugeblock.packet.page.cards import cards
from gaugeblock.packet.page.filling import NOTHING, fill, join, put

if TYPE_CHECKING:
    from collections.abc import Mapping


def page(view: Mapping[str, Any], css: str, block: Mapping[str, str]) -> str:
    """packet.html: ``css`` and the CSS strings of the title ``block`` go in as they are."""
    first, sheets = view["first"], view["sheets"]
    parts = [
        _head(view, css, block),
        _index(view),
        Markup("<main>\n") if first else fill('<main>\n<h1 class="lead">%s</h1>\n', view["title"]),
    ]
    if first:
        parts += [front.front(view), front.figures(view["lists"], view["page_of"])]
    if view["cards"]:
        parts.append(cards(view["cards"], has_desk=bool(sheets), has_first=bool(first)))
    if sheets:
        parts.append(desk.desk(sheets, has_trust=bool(view["trust"])))
        if not view["trust"]:
            parts.append(desk.sources(view))
        if view["has_pages"]:
            parts.append(desk.drawings(sheets, view["has_pages"]))
        if view["trust"]:
            parts.append(desk.trust(view))
    return join([*parts, Markup("</main>\n</body>\n</html>\n")])


def _head(view: Mapping[str, Any], css: str, block: Mapping[str, str]) -> Markup:
    return fill(
        """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>%s</title>
<meta name="description" content="%s">
%s<meta name="generator" content="%s">
<style>
%s
@page { margin: 10mm 14mm 23mm 20mm;
  @bottom-left { content: %s; }
  @bottom-center { content: %s; }
  @bottom-right { content: "sheet\\A " counter(page) " / " counter(pages) "\\A %s"; } }
</style>
</head>
<body>
""",
        view["title"],
        view["subject"],
        put('<meta name="author" content="%s">\n', view["document"]["owner"]),
        view["program"],
        Markup(css),
        *(Markup(block[k]) for k in ("left", "middle", "right")),
    )


def _index(view: Mapping[str, Any]) -> Markup:
    first = view["first"]
    return fill(
        '<nav aria-label="Index">%s%s%s%s%s</nav>\n',
        Markup('<a href="#first">Settle first</a> <a href="#list">List</a>') if first else NOTHING,
        Markup(' <a href="#cards">At the car</a>') if view["cards"] else NOTHING,
        Markup(' <a href="#desk">At the desk</a>') if view["sheets"] else NOTHING,
        Markup(' <a href="#drawings">Drawings</a>') if view["has_pages"] else NOTHING,
        Markup(' <a href="#trust">Trust</a>') if view["trust"] else NOTHING,
    )
