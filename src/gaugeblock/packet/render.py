"""A Packet as the bytes of packet.md, packet.html and packet.json. The page has no script and makes no request."""

from __future__ import annotations

import contextlib
import json
import os
import re
import sys
from functools import cache
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import jinja2
import jinja2.bccache
from jinja2.ext import Extension
from markupsafe import Markup

from gaugeblock.answer.item import pretty
from gaugeblock.answer.printing import both_units
from gaugeblock.answer.text import label, others_line, place
from gaugeblock.errors import DataError

if TYPE_CHECKING:
    from gaugeblock.answer.item import Item
    from gaugeblock.figure import Figure
    from gaugeblock.packet.build import Packet
    from gaugeblock.tables.load import Refdata

_MARKDOWN_MARKS = re.compile(r"([\\`*_{}\[\]<>#|])")
_LONG_SHEET = 12
_MANY_QUESTIONS = 2


def templates_folder() -> str:
    """The folder of the templates: inside the installed package, else beside ``src`` in a checkout."""
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    for folder in (os.path.join(package, "_templates"), os.path.join(package, "..", "..", "reports", "templates")):
        if os.path.isfile(os.path.join(folder, "packet.html.j2")):
            return os.path.normpath(folder)
    raise DataError("templates", "installation", "the templates are not there", (), "install gaugeblock again")


class Prose(Extension):
    """Templates written in Markdown, turned into HTML once, when they are compiled."""

    def preprocess(self, source: str, name: str | None, filename: str | None = None) -> str:  # noqa: ARG002 - the library's own form
        """The source itself, or the HTML of a ``.md`` one, which holds no marks of templates."""
        if not (name or "").endswith(".md"):
            return source
        import markdown

        return "{% raw %}" + markdown.markdown(source, output_format="html") + "{% endraw %}"


class Compiled(jinja2.FileSystemBytecodeCache):
    """Compiled templates, kept beside them as Python keeps its modules: written where that is wanted and can be."""

    def __init__(self) -> None:
        super().__init__(os.path.join(templates_folder(), "__pycache__"))

    def dump_bytecode(self, bucket: jinja2.bccache.Bucket) -> None:
        """Keep one, or leave it."""
        if sys.dont_write_bytecode:
            return
        with contextlib.suppress(OSError):
            os.makedirs(self.directory, exist_ok=True)
            super().dump_bytecode(bucket)


@cache
def _environment(autoescape: bool) -> jinja2.Environment:
    made = jinja2.Environment(
        loader=jinja2.FileSystemLoader(templates_folder()), autoescape=autoescape, undefined=jinja2.StrictUndefined,
        keep_trailing_newline=True, trim_blocks=autoescape, bytecode_cache=Compiled(),
        extensions=[Prose],
    )  # fmt: skip
    made.filters["cell"] = markdown_text
    return made


def markdown_text(text: str) -> str:
    """Text that Markdown prints as it is: its marks escaped, line breaks as spaces."""
    return _MARKDOWN_MARKS.sub(r"\\\1", " ".join(str(text).split()))


def css_string(text: str) -> str:
    """A CSS string literal of any text: everything but plain letters, digits and a few marks as a code point."""
    return '"' + "".join(c if (c.isalnum() and c.isascii()) or c in " .,-/" else f"\\{ord(c):06x}" for c in text) + '"'


def render(packet: Packet) -> dict[str, bytes]:
    """File name -> content of the three files."""
    view = _view(packet)
    page = _environment(True).get_template("packet.html.j2").render(**view, **_page_extras(packet))
    text = _environment(False).get_template("packet.md.j2").render(**view)
    return {
        "packet.md": text.encode(),
        "packet.html": page.encode(),
        "packet.json": record_text(packet.encoded).encode(),
    }


def record_text(parts: dict[str, list[str]]) -> str:
    """An encoded record as JSON, one line a top-level key and one an entry of its lists, so that two packets compare by line."""
    lines = []
    for key, (first, *rest) in parts.items():
        entries = ",\n".join(rest[:-1])
        lines.append(f"{json.dumps(key)}:{first}" + (f"\n{entries}\n]" if entries else "".join(rest)))
    return "{" + ",\n".join(lines) + "}\n"


def _page_extras(packet: Packet) -> dict[str, Any]:
    folder = templates_folder()
    with open(os.path.join(folder, "packet.css"), encoding="utf-8") as handle:
        css = handle.read()
    document = packet.record["document"]
    left = f"{document['identification'] or 'no identification'}  revision {document['revision'] or '-'}  digest {document['digest'][:12]}"
    return {"css": Markup(css), "footer_left": Markup(css_string(left))}


def _view(packet: Packet) -> dict[str, Any]:
    record = packet.record
    title = packet.job.title
    return {
        "document": record["document"],
        "vehicle": title.vehicle or "",
        "notes": title.notes or "",
        "program": record["program"],
        "data_release": record["data_release"],
        "draft": packet.data.is_draft,
        "settle": _settle(record["settle_first"]),
        "cards": [_card(i) for i in packet.items if i.card is not None],
        "sheets": [_sheet(i, packet.data) for i in packet.items],
        "sources": record["sources"],
        "audit": packet.audit,
    }


def _settle(entries: list[dict[str, str]]) -> list[dict[str, str]]:
    """What to settle first, one line a sheet and result; where many questions are open, their names alone."""
    groups: dict[tuple[str, str], list[str]] = {}
    shared: dict[tuple[str, str], list[str]] = {}
    for entry in entries:
        result, _, reason = entry["reason"].partition(": ")
        shared.setdefault((result, reason.partition(": ")[0]), []).append(entry["sheet"])
    together = {k: v for k, v in shared.items() if k[0] != "not ok" and len(v) > _MANY_QUESTIONS}
    for entry in entries:
        result, _, reason = entry["reason"].partition(": ")
        if (result, reason.partition(": ")[0]) not in together:
            groups.setdefault((result, entry["sheet"]), []).append(reason)
    out = []
    for (result, sheet), reasons in groups.items():
        names = ", ".join(r.partition(": ")[0] for r in reasons)
        text = f"{len(reasons)} open: {names}" if len(reasons) > _MANY_QUESTIONS else "; ".join(reasons)
        out.append({"sheet": sheet, "result": result, "reason": pretty(text)})
    for (result, question), sheets in together.items():
        out.append(
            {
                "sheet": question,
                "result": result,
                "reason": f"{len(sheets)} items, see their sheets: {', '.join(sheets)}",
            }
        )
    return out


# The parts of the view have attributes: a template looks for those first, and for the keys of a dict last.


def _card(item: Item) -> SimpleNamespace:
    card = item.card
    if card is None:
        raise ValueError(item.name)
    return SimpleNamespace(
        name=item.name,
        domain=item.domain,
        verb=card.verb,
        number=pretty(card.number),
        other_unit=pretty(card.other_unit),
        condition=card.condition,
        trust=card.trust,
        what=card.what,
        detail=[SimpleNamespace(label=r.label, text=pretty(r.text)) for r in card.detail],
        table=[[pretty(c) for c in row] for row in card.table],
        warning=pretty(card.warning),
        maker=pretty(card.maker),
        boxes=card.boxes,
    )


def _sheet(item: Item, data: Refdata) -> SimpleNamespace:
    sheet = item.sheet
    return SimpleNamespace(
        name=item.name,
        facts=item.facts,
        figures=[_figure(f, data) for f in sheet.figures],
        checks=[SimpleNamespace(name=c.name, result=c.result, reason=pretty(c.reason)) for c in sheet.checks],
        cautions=[SimpleNamespace(severity=c.severity, text=pretty(c.text)) for c in sheet.cautions],
        drawings=[SimpleNamespace(title=d.title, svg=Markup(d.svg), page=d.page) for d in sheet.drawings],
        long=len(sheet.figures) + len(sheet.checks) + len(sheet.cautions) > _LONG_SHEET or bool(sheet.drawings),
    )


def _figure(figure: Figure, data: Refdata) -> SimpleNamespace:
    first, _, second = both_units(figure, data).partition(" = ")
    return SimpleNamespace(
        label=label(figure) + (f": {figure.key['bend']}" if figure.quantity == "surface_gap" else ""),
        number=pretty(first),
        other=pretty(second),
        trust=figure.trust,
        place=place(figure),
        conditions=pretty(figure.conditions),
        service=figure.key.get("service", "") if figure.basis != "derived" else "",
        also=pretty(others_line(figure, data)),
    )
