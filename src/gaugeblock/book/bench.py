"""A job on the phone: its first page, its cards, its drawings, and what was written on the cards as a file."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

import gaugeblock
from gaugeblock import domains
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.book.sheet_view import why
from gaugeblock.book.words import GOVERNS, release
from gaugeblock.errors import InputError
from gaugeblock.packet.build import Packet, build
from gaugeblock.packet.cards import card
from gaugeblock.packet.cautions import told
from gaugeblock.packet.first import first_page
from gaugeblock.packet.paper import Paper

if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.tables.load import Refdata


def job(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """The pages of the job in ``text``: what stops, what to ask, then every card. JobError with all that is wrong."""
    made = packet_of(asked["text"], asked.get("name") or "job file", data)
    title, record = made.job.title, made.record
    units = made.job.shop.units
    paper = Paper(data, metric if metric is not None or units is None else units == "metric")
    front = first_page(made.items, record["document"]["status"], "")
    said: set[str] = set()
    cautions = {n: told(i, said) for n, i in enumerate(made.items, 1)}
    cards = []
    for n, item in enumerate(made.items, 1):
        of = paper.of(item)
        shown = card(n, item, paper) if item.card is not None else None
        cards.append(
            {
                "number": n,
                "name": item.name,
                "kind": item.sheet.decision.kind,
                "card": shown,
                "do": pretty(item.sheet.decision.do),
                "cautions": cautions[n],
                "why": why(item.sheet, of),
                "drawings": [{"title": d.title, "svg": d.svg, "page": d.page} for d in item.sheet.drawings],
            }
        )
    return {
        "is": "job",
        "title": _capital(title.identification or "job without identification"),
        "vehicle": title.vehicle or "",
        "notes": title.notes or "",
        "document": record["document"],
        "digest": record["document"]["digest"][:12],
        "first": front,
        "cards": cards,
        "release": release(data),
        "governs": GOVERNS,
    }


def packet_of(text: str, name: str, data: Refdata) -> Packet:
    """The packet of a job's text."""
    parsed = domains.parse_job(text, name, domains.hooks(data))
    return build(parsed, data, f"gaugeblock {gaugeblock.__version__}")


def record(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """The record of the job in ``text`` as JSON: every figure, check and source, as the command line has it."""
    made = packet_of(asked["text"], asked.get("name") or "job file", data)
    return {"is": "record", "text": json.dumps(made.record, ensure_ascii=False)}


def done(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """What was written on the cards of the job in ``text``, as a file: every card with what it says to set.

    ``filled`` is card -> label of the box -> what was written.
    """
    made = packet_of(asked["text"], asked.get("name") or "job file", data)
    filled, paper = asked["filled"], Paper(data, metric)
    document = made.record["document"]
    lines = [
        "# As done at the car. Read it back into the shop book, or keep it with the packet.",
        "[packet]",
        f"identification = {_text(document['identification'] or '')}",
        f"revision = {_text(document['revision'] or '')}",
        f"digest = {_text(document['digest'])}",
        f"data_release = {_text(data.release)}",
    ]
    for n, item in enumerate(made.items, 1):
        written = {label: text for label, text in filled.get(str(n), {}).items() if text.strip()}
        if not written:
            continue
        shown = paper.of(item).numbers(item.sheet.decision)
        lines += ["", "[[card]]", f"number = {n}", f"name = {_text(item.name)}"]
        lines += [f"says = {_text(f'{item.sheet.decision.kind}: {shown}'.rstrip(': '))}"]
        lines += [f"{_text(label)} = {_text(text.strip())}" for label, text in written.items()]
    return {"is": "file", "name": f"as-done-{document['digest'][:12]}.toml", "text": "\n".join(lines) + "\n"}


def taken(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """What a file of ``done`` has for the packet of this ``digest``. InputError for another packet's."""
    import tomllib

    try:
        read = tomllib.loads(asked["text"])
        cards = {str(c["number"]): c for c in read.get("card", [])}
        digest = str(read["packet"]["digest"])
    except (tomllib.TOMLDecodeError, KeyError, TypeError, AttributeError) as error:
        why = f"not a file of what was done: {error}"
        raise InputError(asked.get("name", "file"), "as done", why, (), "choose the file that the book gave") from None
    if digest[:12] != asked["digest"]:
        why = "it belongs to another packet: the job or the data has changed since"
        raise InputError(asked.get("name", "file"), "as done", why, (), "open the job that it was written for")
    own = ("number", "name", "says")
    filled = {n: {k: str(v) for k, v in c.items() if k not in own} for n, c in cards.items()}
    return {"is": "taken", "filled": filled}


def starter(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """A commented job file to fill in."""
    from gaugeblock.job.starter import starter_text

    return {"is": "file", "name": "job.toml", "text": starter_text(domains.tables())}


def _capital(text: str) -> str:
    return capital(text)


def _text(text: str) -> str:
    """A string of TOML, which has JSON's marks."""
    return json.dumps(text, ensure_ascii=False)
