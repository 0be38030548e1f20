"""packet.md: what is shown of a packet as a document that reads well as plain text; every value prints as it is."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence
    from types import SimpleNamespace

_MARKS = re.compile(r"([\\`*_{}\[\]<>#|&!~])")
_LIKE_A_LIST = re.compile(r"\A([0-9]*)([-+.)])(?=\s)")
_KIND = {"stop": "STOP", "ask": "ASK FIRST"}


def markdown_text(value: object) -> object:
    """What stands in a slot, so that Markdown prints it as it is: marks escaped, line breaks as spaces."""
    return _as_it_is(value) if isinstance(value, str) else value


@lru_cache(maxsize=4096)  # half of what a packet says it says twice
def _as_it_is(value: str) -> str:
    text = _MARKS.sub(r"\\\1", " ".join(value.split()))
    return _LIKE_A_LIST.sub(r"\1\\\2", text)


def _say(shape: str, *values: object) -> str:
    """A shape with one ``%s`` a value."""
    return shape % tuple([markdown_text(value) for value in values])


def _put(shape: str, value: object) -> str:
    """A shape filled with a value; nothing where there is none."""
    return _say(shape, value) if value else ""


def document(view: Mapping[str, Any]) -> str:
    """The whole of packet.md."""
    parts = [_head(view)]
    if view["first"]:
        parts += [_first(view["first"]), *_list(view["lists"])]
    if view["cards"]:
        parts += ["\n## At the car\n", *("".join(_card(c)) for page in view["cards"] for c in page)]
    if view["sheets"]:
        parts += ["\n## At the desk\n", *("".join(_sheet(s)) for s in view["sheets"])]
        parts += [_trust(view["trust"]) if view["trust"] else "", _sources(view["sources"])]
    return "".join([*parts, "\n"])


def _head(view: Mapping[str, Any]) -> str:
    about = view["document"]
    rows = [
        _say("| owner | %s |", about["owner"] or ""),
        _say("| vehicle | %s |", view["vehicle"]),
        _say("| revision | %s |", about["revision"] or ""),
        _say("| date of issue | %s |", about["issued"] or ""),
        _say("| status | %s |", about["status"]),
        _say(
            "| data release | %s%s, %s |",
            view["data_release"],
            " (draft data)" if view["draft"] else "",
            view["program"],
        ),
        _say("| digest | %s |", about["digest"]),
    ]
    governs = "The part maker's figure, local codes and licensed practice govern."
    notes = _put("\n%s\n", view["notes"])
    return _say("# %s\n", view["title"]) + "\n".join(["", "| | |", "|---|---|", *rows, notes, governs, ""])


def _first(first: SimpleNamespace) -> str:
    is_ready = "Ready to build" if first.is_ready else "Not ready to build"
    parts = [f"\n## {is_ready}: {first.stops} STOP, {first.asks} ask first, {first.ready} ready\n"]
    parts.append(_put("\n%s\n", first.contradiction))
    parts += [_say("\n- **STOP** %s. %s: %s", s.number, s.name, s.why) + _put(" %s", s.do) for s in first.stopped]
    parts.append("\n")
    for group in first.groups:
        parts.append(_say("\n### %s\n", group.head))
        for row in group.rows:
            items = "; ".join([_say("%s. %s", item.number, item.name) for item in row.items])
            parts.append(f"\n- [ ] {items}" + _say(": %s", row.text))
        parts.append("\n")
    return "".join(parts)


def _list(pages: Sequence[Sequence[SimpleNamespace]]) -> Iterator[str]:
    yield "\n## Every figure of the build\n\n"
    yield "| card | task | figure | condition | trust | done | tighten again |\n|---|---|---|---|---|---|---|\n"
    for line in [line for page in pages for line in page]:
        yield _say("| %s | %s | ", line.place.number, line.name) + _put("%s ", line.says)
        yield _say("%s | %s | %s | | %s |\n", line.figure, line.condition, line.trust, line.again)


def _card(c: SimpleNamespace) -> Iterator[str]:
    yield _say("\n### %s. %s\n\n%s", c.number, c.name, c.what)
    yield (_say(", %s %s", c.count, c.counted) if c.count > 1 else "") + "\n"
    if c.kind == "use":
        yield _used(c)
    else:
        yield _say("\n**%s** %s\n", _KIND.get(c.kind, "NO FIGURE"), c.do)
    if c.kind == "ask":
        yield "".join([_candidate(f) for f in c.figures]) + "\n"
    if c.trust.word:
        yield _say("\n- %s: %s", c.trust.word, c.trust.source)
    yield _put("\n- order: %s", c.order)
    yield "".join([_say("\n- [ ] %s", s) for s in c.steps])
    yield "".join([_say("\n- %s", n) for n in c.notes])
    yield _put("\n- tighten again: %s", c.again)
    yield "".join([_say("\n- **%s** %s", k.word, k.text) for k in c.cautions])
    if c.table:
        heads, *rows = c.table
        yield f"\n\n{_row(heads)}|{'---|' * len(heads)}\n" + "".join([_row(row) for row in rows])
    yield "\n- " + "; ".join([_say(r"%s: \_\_\_\_\_\_", b.label) + _put(" %s", b.unit) for b in c.boxes]) + "\n"


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join([_say('%s', cell) for cell in cells])} |\n"


def _used(c: SimpleNamespace) -> str:
    figure = c.figures[0]
    number = _say("\n**%s %s", c.verb, figure.value) + _put(" %s", figure.unit) + _put(" %s", figure.plus)
    return f"{number}**" + _put(" (%s)", figure.other) + _put(" **%s**", c.condition) + "\n" + _put("\n%s\n", c.do)


def _candidate(f: SimpleNamespace) -> str:
    number = _say("\n- %s", f.value) + _put(" %s", f.unit) + _put(" %s", f.plus) + _put(" (%s)", f.other)
    return number + _put(": %s", f.when) + _put("; %s", f.then)


def _sheet(s: SimpleNamespace) -> Iterator[str]:
    yield _say("\n### %s. %s", s.place.number, s.name) + _put(": %s", s.outcome or s.number) + "\n"
    if s.figures:
        yield "\n| figure | value | weakest link | read in, or worked out by |\n|---|---|---|---|\n"
    for f in s.figures:
        yield _say("| %s", f.label) + _put(" (%s)", f.role) + _say(" | %s", f.number) + _put(" (%s)", f.window)
        yield (
            _say(" | %s | %s", f.weakest, f.source) + _put("; %s", f.conditions) + _put("; others: %s", f.also) + " |\n"
        )
    yield "".join([_say("\n- **%s** %s: %s", c.word, c.name, c.reason) for c in s.checks])
    if s.kept:
        yield f"\n- OK: {s.kept} {'check' if s.kept == 1 else 'checks'}"
    yield "".join([_say("\n- **%s** %s", c.word, c.text) for c in s.cautions]) + "\n"


def _trust(page: SimpleNamespace) -> str:
    counts = ", ".join([_say("%s %s", c.figures, c.word) for c in page.counts])
    links = [
        _say(
            "\n- %s %s on %s, %s %s: %s. %s",
            link.count,
            "item rests" if link.count == 1 else "items rest",
            link.word,
            link.text,
            link.number,
            link.items,
            link.do,
        )
        for link in page.links
    ]
    return f"\n## How far to trust this packet\n\nFigures behind these pages: {counts}.\n{''.join(links)}\n"


def _sources(found: Sequence[Mapping[str, str]]) -> str:
    lines = [
        _say("- %s: %s", s["id"], s["title"]) + _put(", %s", s["publisher"]) + _put(", %s", s["year"]) + "\n"
        for s in found
    ]
    return f"\n## Sources\n\n{''.join(lines)}"
