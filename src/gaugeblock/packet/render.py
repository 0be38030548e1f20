"""A Packet as the bytes of packet.md, packet.html and packet.json. The page has no script and makes no request."""

from __future__ import annotations

import json
import os
from typing import TYPE_CHECKING, Any

from gaugeblock.answer.decision import USE
from gaugeblock.answer.pretty import pretty
from gaugeblock.errors import DataError
from gaugeblock.packet import markdown
from gaugeblock.packet.build import sources
from gaugeblock.packet.cards import card, pages
from gaugeblock.packet.cautions import told
from gaugeblock.packet.chosen import Scope, chosen
from gaugeblock.packet.desk import desk
from gaugeblock.packet.first import Place, first_page
from gaugeblock.packet.page.whole import page
from gaugeblock.packet.paper import Paper
from gaugeblock.packet.trust_page import trust_page
from gaugeblock.packet.worklist import sheets, worklist

if TYPE_CHECKING:
    from gaugeblock.answer.item import Item
    from gaugeblock.packet.build import Packet


def templates_folder() -> str:
    """The folder of the page's styles: inside the installed package, else beside ``src`` in a checkout."""
    package = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
    for folder in (os.path.join(package, "_templates"), os.path.join(package, "..", "..", "reports", "templates")):
        if os.path.isfile(os.path.join(folder, "packet.css")):
            return os.path.normpath(folder)
    raise DataError("templates", "installation", "the styles of the page are not there", (), "install gaugeblock again")


def css_string(text: str) -> str:
    """A CSS string literal of any text: everything but plain letters, digits and a few marks as a code point."""
    return '"' + "".join(c if (c.isalnum() and c.isascii()) or c in " .,-/" else f"\\{ord(c):06x} " for c in text) + '"'


def render(packet: Packet, scope: Scope | None = None) -> dict[str, bytes]:
    """File name -> content of the three files; the pages hold what ``scope`` says, all without one."""
    return {name: b"".join(pieces) for name, pieces in files_of(packet, scope or Scope()).items()}


def files_of(packet: Packet, scope: Scope) -> dict[str, list[bytes]]:
    """As ``render``, each content in pieces."""
    view = view_of(packet, scope)
    return {
        "packet.md": [markdown.document(view).encode()],
        "packet.html": [page(view, _css(), _title_block(packet)).encode()],
        "packet.json": record_pieces(packet.encoded),
    }


def record_pieces(parts: dict[str, list[bytes]]) -> list[bytes]:
    """An encoded record as JSON, one line a top-level key and one an entry of its lists, so that two packets
    compare by line.
    """
    pieces: list[bytes] = []
    before = "{"
    for key, (first, *rest) in parts.items():
        pieces += (f"{before}{json.dumps(key)}:".encode(), first)
        if len(rest) > 1:
            for at, entry in enumerate(rest[:-1]):
                pieces += (b",\n" if at else b"\n", entry)
            pieces += (b"\n", rest[-1])
        else:
            pieces += rest
        before = ",\n"
    pieces.append(b"}\n")
    return pieces


def _css() -> str:
    with open(os.path.join(templates_folder(), "packet.css"), encoding="utf-8") as handle:
        return handle.read()


def _title_block(packet: Packet) -> dict[str, str]:
    """The fields of ISO 7200 in three boxes at the foot of every page, as CSS strings."""
    document = packet.record["document"]
    said = document["status"] + (", not ready" if any(i.sheet.decision.kind != USE for i in packet.items) else "")
    left = [
        f"owner: {document['owner'] or '________'}",
        f"spec packet: {document['identification'] or '________'}",
        f"made by: {packet.job.title.creator or '________'}",
    ]
    middle = [
        f"revision {document['revision'] or '__'}, issued {document['issued'] or '________'}",
        f"status: {said}",
        f"data {packet.data.release}, digest {document['digest'][:12]}",
    ]
    return {
        "left": css_string("\n".join(t[:60] for t in left)),
        "middle": css_string("\n".join(t[:60] for t in middle)),
        "right": "approved: ________",
    }


def view_of(packet: Packet, scope: Scope) -> dict[str, Any]:
    """What the pages show of a packet."""
    record, title = packet.record, packet.job.title
    units = packet.job.shop.units
    paper = Paper(packet.data, None if units is None else units == "metric")
    said: set[str] = set()
    shown = chosen(packet.items, scope.sheet)
    cautions = {n: told(i, said) for n, i in shown.items()}
    made = {n: card(n, i, paper) for n, i in shown.items() if i.card is not None}
    on_cards = [c for bears in made.values() for c in bears.cautions]  # and not again at the desk
    cautions = {n: [c for c in found if c not in on_cards] for n, found in cautions.items()}
    sheets_of_cards = pages(list(made.values()))
    front = first_page(packet.items, record["document"]["status"], f"{title.vehicle or ''} {title.notes or ''}")
    listed = record["sources"] if scope.is_whole else sources(list(shown.values()), packet.data)
    places = [Place(n, None) for n in shown]
    lists = sheets(worklist(packet.items, places, paper)) if scope.is_whole else []
    before = len(front.sheets) + len(lists) if scope.is_whole else 0
    page_of = {c.number: before + n for n, page in enumerate(sheets_of_cards, 1) for c in page}
    for place in places:
        place.page = page_of.get(place.number)
    desks = [] if scope.cards_only else [desk(shown[p.number], p, paper, cautions[p.number]) for p in places]
    return {
        "document": record["document"],
        "title": _titled(record["document"], shown, scope),
        "subject": _subject(record, title.vehicle or ""),
        "has_pages": next((n for n, i in shown.items() if any(d.page for d in i.sheet.drawings)), 0) if desks else 0,
        "vehicle": title.vehicle or "",
        "notes": title.notes or "",
        "program": record["program"],
        "data_release": record["data_release"],
        "draft": packet.data.is_draft,
        "first": front if scope.is_whole else None,
        "page_of": page_of,
        "lists": lists,
        "cards": sheets_of_cards,
        "sheets": desks,
        "sources": [{k: pretty(v) for k, v in s.items()} for s in listed],
        "trust": trust_page(packet.items, paper, packet.audit) if scope.is_whole else None,
    }


def _titled(document: dict[str, Any], shown: dict[int, Item], scope: Scope) -> str:
    """What the document is called: the build, its revision, and what of it is shown."""
    of = f"Spec packet {document['identification'] or 'without identification'}"
    of += f", revision {document['revision']}" if document["revision"] else ""
    if scope.sheet is not None:
        return f"{of}: {'; '.join(f'{n}. {i.name}' for n, i in shown.items())}"
    return f"{of}: cards" if scope.cards_only else of


def _subject(record: dict[str, Any], vehicle: str) -> str:
    """What the document is about, for its properties."""
    document = record["document"]
    parts = (vehicle, f"issued {document['issued']}" if document["issued"] else "", f"status {document['status']}")
    data = f"data {record['data_release']}, digest {document['digest'][:12]}"
    return "; ".join(p for p in (*parts, data) if p)
