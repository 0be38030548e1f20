"""The first page and the list of every figure, as HTML."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from gaugeblock.packet.page.filling import NOTHING, fill, join, put
from gaugeblock.packet.page.links import go, sheet_of

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from types import SimpleNamespace

    from gaugeblock.packet.page.links import PageOf

_WORDS = Markup("""<div class="words"><div><b>MAKER</b>the part maker\u2019s sheet: it governs</div>\
<div><b>PUBLISHED</b>standard or manual, place given</div><div><b>SHOP</b>measured here</div>\
<div><b>GIVEN</b>typed in, not measured</div><div><b>HABIT</b>common practice; no publication was found</div>\
<div><b>CALCULATED</b>by formula; the next word is its weakest link</div></div>
<p class="govern">The part maker\u2019s figure, local codes and licensed practice govern. \
<i>From memory</i> means: check the document before you use it.</p>
<div class="signs"><div>questions closed by, date</div><div>second person, date</div></div>
</section>
""")


def front(view: Mapping[str, Any]) -> Markup:
    """What is ready, what stops, and the questions by what somebody has to do."""
    first, page_of = view["first"], view["page_of"]
    if first.groups:
        items = "item" if first.asks == 1 else "items"
        asked = fill("<h2>Ask first: %s %s, by what you have to do</h2>\n", first.asks, items)
    else:
        asked = NOTHING if first.stopped else Markup("<p>Nothing is open.</p>")
    return join(
        [
            _top(view, first),
            put('<p class="contradiction">%s</p>', first.contradiction),
            _stopped(first.stopped, page_of) if first.stopped else NOTHING,
            asked,
            *_sheets(first, page_of),
            _WORDS,
        ]
    )


def _top(view: Mapping[str, Any], first: SimpleNamespace) -> Markup:
    document = view["document"]
    return fill(
        """<section id="first" class="first">
<div class="top"><div><h1>Spec packet <br>%s</h1>
<p class="document">%srevision %s, issued %s, %s; data %s%s, digest %s</p>
%s%s</div>
<div class="status"><div class="s">%s</div>
<div class="n"><div><b>%s</b>STOP</div><div><b>%s</b>ask first</div><div><b>%s</b>ready</div></div></div></div>
""",
        document["identification"] or "no identification",
        put("%s, ", document["owner"]),
        document["revision"] or "__",
        document["issued"] or "________",
        document["status"],
        view["data_release"],
        " (draft data)" if view["draft"] else "",
        document["digest"][:12],
        put("<p>%s</p>", view["vehicle"]),
        put("<p>%s</p>", view["notes"]),
        "READY TO BUILD" if first.is_ready else "NOT READY TO BUILD",
        first.stops,
        first.asks,
        first.ready,
    )


def _stopped(rows: Sequence[SimpleNamespace], page_of: PageOf) -> Markup:
    lines = [
        fill(
            '<tr class="stop"%s><th scope="row" class="k">%s</th><td class="t">%s</td><td>%s%s</td>'
            '<td class="p">%s</td></tr>\n',
            put(' id="%s"', s.anchor),
            go(s.number, page_of),
            s.name,
            s.why,
            put(" <b>%s</b>", s.do),
            sheet_of(s.number, page_of),
        )
        for s in rows
    ]
    return fill(
        """<div class="h2"><h2>Stop: %s</h2><small>number of the card, and sheet</small></div>
<table class="q"><caption>What stops the work</caption><tbody>
%s</tbody></table>
""",
        "this one is not ok" if len(rows) == 1 else "these are not ok",
        join(lines),
    )


def _sheets(first: SimpleNamespace, page_of: PageOf) -> list[Markup]:
    """The questions sheet by sheet; a kind that goes on has its heading again, which a screen has no need of."""
    compact, made, last = " compact" if first.is_compact else "", [], ""
    for groups in first.sheets:
        made.append(_asked(groups, page_of, compact, last))
        last = groups[-1].head if groups else last
    return made


def _asked(groups: Sequence[SimpleNamespace], page_of: PageOf, compact: str, last: str) -> Markup:
    """The questions of one sheet, a table a kind."""
    tables = [
        fill(
            """<table class="q%s%s"><caption>%s</caption>
<thead><tr><th scope="col" class="k"></th><th scope="col" class="t">%s</th><th scope="col"></th>\
<th scope="col" class="b">answer</th><th scope="col" class="p"></th></tr></thead><tbody>
%s</tbody></table>
""",
            compact,
            " more" if group.head == last else "",
            group.head,
            group.head,
            join([_question(row, page_of) for row in group.rows]),
        )
        for group in groups
    ]
    return fill('<div class="asked">\n%s</div>\n', join(tables))


def _question(row: SimpleNamespace, page_of: PageOf) -> Markup:
    first = row.items[0].number
    anchors = join([fill('<span id="%s"></span>', item.anchor) for item in row.items if item.anchor])
    if row.many:
        numbers, names = fill("%s \u2026", go(first, page_of)), row.many
    else:
        numbers = join([go(item.number, page_of) for item in row.items], ", ")
        names = "; ".join(item.name for item in row.items)
    return fill(
        '<tr><th scope="row" class="k">%s%s</th><td class="t">%s</td><td>%s</td><td class="b"></td>'
        '<td class="p">%s</td></tr>\n',
        anchors,
        numbers,
        names,
        row.text,
        sheet_of(first, page_of),
    )


def figures(pages: Sequence[Sequence[SimpleNamespace]], page_of: PageOf) -> Markup:
    """Every figure of the build, one line a task."""
    return fill('<section id="list">\n%s</section>\n', join([_sheet(n, p, page_of) for n, p in enumerate(pages, 1)]))


def _sheet(number: int, lines: Sequence[SimpleNamespace], page_of: PageOf) -> Markup:
    is_first = number == 1
    rows = [
        fill(
            '<tr class="is-%s"><th scope="row" class="k">%s</th><td>%s</td><td class="f">%s%s</td><td>%s</td>'
            '<td class="l">%s</td><td></td><td>%s</td></tr>\n',
            line.kind,
            go(line.place.number, page_of),
            line.name,
            put("<em>%s</em> ", line.says),
            line.figure,
            line.condition,
            line.trust,
            line.again,
        )
        for line in lines
    ]
    return fill(
        """<div class="list">
%s<small>tick as it is done; the date of tightening again in the last column</small></div>
<table class="w"><caption>Every figure of the build, one line a task%s</caption><thead><tr><th scope="col" class="k">\
card</th><th scope="col">task</th><th scope="col">figure</th><th scope="col">condition</th><th scope="col">trust</th>\
<th scope="col" class="d">done: date, by</th><th scope="col" class="d">tightened again</th></tr></thead><tbody>
%s</tbody></table>
</div>
""",
        head("Every figure of the build", is_first=is_first),
        "" if is_first else f", sheet {number}",
        join(rows),
    )


def head(title: str, *, is_first: bool) -> Markup:
    """The head of a sheet, which stays open; a heading stands on the first alone."""
    return fill('<div class="h2"><h2>%s</h2>' if is_first else '<div class="h2 on"><b>%s</b>', title)
