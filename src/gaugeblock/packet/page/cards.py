"""The cards at the car, as HTML."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.answer.pretty import NO_BREAK
from gaugeblock.packet.page.filling import NOTHING, fill, join, put
from gaugeblock.packet.page.front import head

if TYPE_CHECKING:
    from collections.abc import Sequence
    from types import SimpleNamespace

    from markupsafe import Markup

# A value of more signs is printed smaller; a sentence of more stands on a line of its own.
_LONG_VALUE, _LONG_LINE = 9, 90
_CONDITION = '<span class="c">%s</span>'


def cards(pages: Sequence[Sequence[SimpleNamespace]], *, has_desk: bool, has_first: bool) -> Markup:
    """All cards; where the page has a desk and a first page, each leads there."""
    sheets = [
        fill(
            """<div class="cardpage">
%s<small>If you have the maker\u2019s figure, it replaces the big number.</small></div>

%s</div>
""",
            head("At the car", is_first=at == 0),
            join([_card(c, _back(c, has_first) if has_desk else NOTHING) for c in page]),
        )
        for at, page in enumerate(pages)
    ]
    return fill('<section id="cards" class="cards">\n%s</section>\n', join(sheets))


def _back(c: SimpleNamespace, has_first: bool) -> Markup:
    asked = has_first and c.kind != "use"
    question = fill(' <a href="#ask-%s">Question</a>.', c.number) if asked else NOTHING
    return fill('<span class="why"><a href="#desk-%s">Why</a>.%s</span>', c.number, question)


def _card(c: SimpleNamespace, back: Markup) -> Markup:
    says = {"use": _used, "ask": _asked, "stop": _stopped}.get(c.kind, _none)
    return fill(
        """<article class="card%s" id="%s" aria-labelledby="%s-name"><div class="no%s"><b>%s</b><span>%s%s</span></div>
<div class="mid">
<h3 id="%s-name">%s</h3><div class="on">%s</div>
%s%s%s%s</div>
<div class="right">%s</div></article>
""",
        " wide" if c.table else "",
        c.anchor,
        c.anchor,
        " stopno" if c.kind == "stop" else "",
        c.number,
        c.count,
        put("<em>%s</em>", c.counted),
        c.anchor,
        c.name,
        c.what,
        join([fill('<div class="warn"><b>%s</b> %s</div>', k.word, k.text) for k in c.cautions if _warns(k)]),
        says(c),
        _table(c) if c.table else NOTHING,
        _foot(c, back),
        join([_box(b) for b in c.boxes]),
    )


def _warns(caution: SimpleNamespace) -> bool:
    return bool(caution.word == "WARNING")


def _used(c: SimpleNamespace) -> Markup:
    figure = c.figures[0]
    steps = NOTHING
    if c.order or c.steps:
        order = fill("<span>%s%s</span>", c.order, ":" if c.steps else "") if c.order else NOTHING
        ticks = join([fill('<span><span class="tick"></span>%s</span>', s) for s in c.steps])
        steps = fill('<div class="steps">%s%s</div>', order, ticks)
    return fill(
        """<div class="big"><span class="verb">%s</span><span class="v%s">%s</span>%s%s%s<span class="o">%s</span></div>
%s%s""",
        c.verb,
        _ranged(figure),
        figure.value,
        put('<span class="u">%s</span>', figure.unit),
        put('<span class="v range">%s</span>', figure.plus),
        put(_CONDITION, c.condition),
        figure.other,
        steps,
        put('<div class="say">%s</div>', c.do),
    )


def _ranged(figure: SimpleNamespace) -> str:
    return " range" if len(figure.value) > _LONG_VALUE else ""


def _line(c: SimpleNamespace, shape: str) -> Markup:
    """What is to be done before there is a number."""
    return fill(shape, put(_CONDITION, c.condition), " long" if len(c.do) > _LONG_LINE else "", c.do)


def _asked(c: SimpleNamespace) -> Markup:
    values = [
        fill(
            '<div><div class="v%s">%s%s%s <span>%s</span></div><div class="when">%s%s</div></div>',
            _ranged(f),
            f.value,
            put(f"{' ' if _ranged(f) else NO_BREAK}<small>%s</small>", f.unit),
            put(" %s", f.plus),
            f.other,
            f.when,
            fill("%s%s", ": " if f.when else "", f.then) if f.then else NOTHING,
        )
        for f in c.figures
    ]
    line = _line(c, '<div class="askline"><span class="ask">ASK FIRST</span>%s<span class="s%s">%s</span></div>\n')
    return fill('%s<div class="either n%s">%s</div>\n', line, len(c.figures), join(values))


def _stopped(c: SimpleNamespace) -> Markup:
    said = [
        fill(
            "%s%s" + ("<b>%s %s</b>" if "required" in (f.when, f.then) else "<s>%s %s</s>"),
            f.when or ("required" if f.then == "required" else ""),
            " " if f.when or f.then == "required" else "",
            f.value,
            f.unit,
        )
        for f in c.figures
    ]
    return fill(
        '<div class="stopline"><span class="w">STOP</span><span class="s%s">%s</span></div>\n%s',
        " long" if len(c.do) > _LONG_LINE else "",
        c.do,
        put('<div class="say">%s</div>', join(said, "; ")),
    )


def _none(c: SimpleNamespace) -> Markup:
    shape = '<div class="askline"><span class="ask">NO FIGURE</span>%s<span class="s%s">%s</span></div>\n'
    return fill('%s<small>the figure, once it is found</small><div class="emptybox"></div>\n', _line(c, shape))


def _table(c: SimpleNamespace) -> Markup:
    heads, *rows = c.table
    lines = [
        fill(
            "<tr>%s</tr>\n",
            join([fill('<td data-head="%s">%s</td>', h, v) for h, v in zip(heads, row, strict=True)]),
        )
        for row in rows
    ]
    return fill(
        '<table class="marks"><caption>%s</caption><thead><tr>%s</tr></thead><tbody>\n%s</tbody></table>',
        c.name,
        join([fill('<th scope="col">%s</th>', h) for h in heads]),
        join(lines),
    )


def _foot(c: SimpleNamespace, back: Markup) -> Markup:
    return fill(
        '<div class="foot"><div>%s%s%s%s</div>%s</div>',
        fill("<b>%s</b>: %s. ", c.trust.word, c.trust.source) if c.trust.word else NOTHING,
        join([fill("%s. ", n) for n in c.notes]),
        back,
        put(" <b>Tighten again</b> %s.", c.again),
        join([fill("<div><b>%s</b> %s</div>", k.word, k.text) for k in c.cautions if not _warns(k)]),
    )


def _box(b: SimpleNamespace) -> Markup:
    return fill('<div class="%s">%s%s</div>', "h" if b.half else "w", b.label, put("<i>%s</i>", b.unit))
