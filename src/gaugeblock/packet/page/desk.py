"""The sheets at the desk, the drawings at full size, the trust page and the sources, as HTML."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from gaugeblock.packet.page.filling import NOTHING, fill, join, put

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from types import SimpleNamespace


def desk(sheets: Sequence[SimpleNamespace], *, has_trust: bool) -> Markup:
    """One sheet an item."""
    return fill(
        """<section id="desk" class="desk%s">
<div class="h2"><h2>At the desk</h2><small>One line a figure; a rule\u2019s name means CALCULATED. \
The card\u2019s number rests on what <b>governs</b>.</small></div>
%s</section>
""",
        "" if has_trust else " here",
        join([_sheet(s) for s in sheets]),
    )


def _sheet(s: SimpleNamespace) -> Markup:
    has_pages = any(d.page for d in s.drawings)
    more = '<p class="kept"><a href="#drawings-%s">Drawings at full size: after the last sheet</a>.</p>'
    return fill(
        """<article class="sheet" id="%s" aria-labelledby="%s-name">
%s
%s%s%s%s%s%s%s</article>
""",
        s.anchor,
        s.anchor,
        _bar(s),
        join([fill('<div class="cau"><b>%s</b> %s</div>', c.word, c.text) for c in s.cautions if c.word != "NOTE"]),
        _figures(s) if s.figures else NOTHING,
        _checks(s.checks) if s.checks else NOTHING,
        _kept(s) if s.kept or s.more else NOTHING,
        join([fill('<p class="note">%s</p>', c.text) for c in s.cautions if c.word == "NOTE"]),
        join([_drawing(d) for d in s.drawings if not d.page]),
        fill(more, s.place.number) if has_pages else NOTHING,
    )


def _bar(s: SimpleNamespace) -> Markup:
    back = fill(' <a class="back" href="#card-%s">card</a>', s.place.number) if s.place.page else NOTHING
    return fill(
        '<div class="bar"><b>%s</b><div><h3 id="%s-name">%s</h3>%s</div><span class="d">%s%s%s%s</span></div>',
        s.place.number,
        s.anchor,
        s.name,
        put(" <small>%s</small>", s.what),
        s.number,
        put(" <em>%s</em>", s.condition),
        put(' <em class="out">%s</em>', s.outcome),
        back,
    )


def _figures(s: SimpleNamespace) -> Markup:
    rows = [
        fill(
            '<tr><th scope="row">%s%s</th><td class="v"><b>%s</b>%s</td><td class="l">%s</td>'
            '<td class="d">%s%s%s</td></tr>\n',
            f.label,
            put(" <small>%s</small>", f.role),
            f.number,
            put(" <span>%s</span>", f.window or f.other),
            f.weakest,
            f.source,
            put("; %s", f.conditions),
            put("; others: %s", f.also),
        )
        for f in s.figures
    ]
    return fill(
        """<table class="fig"><caption>Figures of %s</caption><thead><tr><th scope="col">figure</th>\
<th scope="col">value</th><th scope="col">weakest link</th><th scope="col">read in, or worked out by</th></tr></thead>\
<tbody>
%s</tbody></table>""",
        s.name,
        join(rows),
    )


def _checks(checks: Sequence[SimpleNamespace]) -> Markup:
    lines = [
        fill('<li><b class="%s">%s</b> %s: %s</li>\n', "bad" if c.word == "NOT OK" else "", c.word, c.name, c.reason)
        for c in checks
    ]
    return fill('<ul class="checks">%s</ul>', join(lines))


def _kept(s: SimpleNamespace) -> Markup:
    kept = fill("<b>OK</b>: %s %s. ", s.kept, "check" if s.kept == 1 else "checks") if s.kept else NOTHING
    more = fill("%s more %s in packet.json.", s.more, "figure" if s.more == 1 else "figures") if s.more else NOTHING
    return fill('<p class="kept">%s%s</p>', kept, more)


def _drawing(d: SimpleNamespace) -> Markup:
    return fill(
        '<figure%s class="drawing%s"><figcaption>%s</figcaption>%s</figure>\n',
        Markup(' tabindex="0"') if d.wide else NOTHING,
        " wide" if d.wide else "",
        d.title,
        Markup(d.svg),
    )


def drawings(sheets: Sequence[SimpleNamespace], first: int) -> Markup:
    """The drawings that need a page of their own; ``first`` is the item that the heading stands over."""
    found = []
    for s in sheets:
        for at, d in enumerate([d for d in s.drawings if d.page]):
            leads = at == 0
            found.append(
                fill(
                    '<figure tabindex="0" class="drawing page %s"%s>%s<figcaption><h3>%s. %s</h3></figcaption>%s'
                    "</figure>\n",
                    d.page,
                    fill(' id="drawings-%s"', s.place.number) if leads else NOTHING,
                    Markup("<h2>Drawings at full size</h2>") if leads and s.place.number == first else NOTHING,
                    s.place.number,
                    d.title,
                    Markup(d.svg),
                )
            )
    return fill('<section id="drawings" class="drawings">\n%s</section>\n', join(found))


def trust(view: Mapping[str, Any]) -> Markup:
    """How far to trust the packet, and what mends it."""
    page = view["trust"]
    counts = ", ".join(f"{c.figures} {c.word}" for c in page.counts)
    return fill(
        """<section id="trust" class="trust">
<div class="h2"><h2>How far to trust this packet</h2><small>%s, data release %s%s</small></div>
<p>Figures behind these pages: %s.%s</p>
%s%s</section>
""",
        view["program"],
        view["data_release"],
        " (draft data)" if view["draft"] else "",
        counts,
        put(" Sources disagree on %s.", page.disagree),
        _links(page) if page.links else NOTHING,
        _listed(view["sources"]),
    )


def _links(page: SimpleNamespace) -> Markup:
    rows = [
        fill(
            "<tr><td>%s</td><td><b>%s</b> %s: %s</td><td>%s</td><td>%s</td></tr>\n",
            link.count,
            link.word,
            link.text,
            link.number,
            link.items,
            link.do,
        )
        for link in page.links
    ]
    return fill(
        """<table class="links"><caption>Weak links, and what rests on them</caption><thead><tr>\
<th scope="col">items</th><th scope="col">weak link</th><th scope="col">what rests on it</th>\
<th scope="col">what would mend it</th></tr></thead><tbody>
%s</tbody></table>
%s""",
        join(rows),
        put("<p>%s more weak links stand in packet.json.</p>\n", page.more),
    )


def sources(view: Mapping[str, Any]) -> Markup:
    """The sources of a page that has no trust page."""
    return fill('<section class="trust here">\n%s</section>\n', _listed(view["sources"]))


def _listed(found: Sequence[Mapping[str, str]]) -> Markup:
    lines = [fill("<li><b>%s</b> %s%s</li>\n", s["id"], s["title"], put(", %s", s["year"])) for s in found]
    return fill('<h2>Sources</h2>\n<ul class="sources">\n%s</ul>\n', join(lines))
