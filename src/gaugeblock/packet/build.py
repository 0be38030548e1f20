"""Packet: the items of a job with their sheets, what stops the work, the rows used and the digests."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from gaugeblock import domains
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import ask
from gaugeblock.answer.item import Item
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.audit import digest
from gaugeblock.audit.packets import audit_record
from gaugeblock.errors import DataError
from gaugeblock.job.model import Job
from gaugeblock.packet.order import in_order_of_work
from gaugeblock.packet.together import against_each_other, drawn
from gaugeblock.tables import releases
from gaugeblock.tables.catalogue import columns_of
from gaugeblock.tables.closed import whole_as_closed

if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row

CONTRACT = 2


class Packet:
    """One packet: ``items`` in the order of the work, ``record`` the JSON of the contract, ``audit`` its audit."""

    __slots__ = ("audit", "data", "encoded", "items", "job", "record")

    def __init__(
        self,
        job: Job,
        items: list[Item],
        record: dict[str, Any],
        found: dict[str, Any],
        data: Refdata,
        parts: dict[str, list[bytes]],
    ) -> None:
        self.encoded = parts
        self.job = job
        self.items = items
        self.record = record
        self.audit = found
        self.data = data


def build(job: Job, data: Refdata, program: str) -> Packet:
    """The packet of a checked job. ``program`` is name and version as printed."""
    items: list[Item] = []
    for table, page in domains.pages(job).items():
        items += _items(table, page, job, data, items)
    items += against_each_other(job, items, data)
    items = in_order_of_work([_questioned(i) for i in items])
    used = _used(items)
    made: dict[int, dict[str, object]] = {}
    title = job.title
    status = title.status or "draft"
    record: dict[str, Any] = {
        "contract": CONTRACT,
        "document": {
            "owner": title.owner,
            "identification": title.identification,
            "revision": title.revision,
            "issued": title.issued,
            "status": f"{status}, draft data" if data.is_draft else status,
            "digest": "",
        },
        "program": program,
        "data_release": data.release,
        "data_digest": data_digest(data),
        "rows_used": _rows_used(used, items, data),
        "job": job.as_dict(),
        "sheets": [{"name": i.name, "card": n, **i.sheet.as_dict(made)} for n, i in enumerate(items, 1)],
        "settle_first": settle_first(items),
        "questions": questions(items),
        "sources": sources(items, data, used),
    }
    parts = digest.encoded({**record, "sheets": []})
    parts["sheets"] = [b"[", *digest.encoded_sheets(record["sheets"]), b"]"]
    record["document"]["digest"] = digest.digest_of(parts)
    parts |= digest.encoded({"document": record["document"]})
    return Packet(job, items, record, audit_record(record), data, parts)


def _items(table: str, page: Any, job: Job, data: Refdata, before: list[Item]) -> list[Item]:
    """The items of one table, then what they say together, where its page has something to say.

    A page that builds on tubes (``item_of``) is given those ``before`` it whose shape is known, by name.
    """
    if hasattr(page, "item_of"):
        shapes = drawn(before)
        found = [page.item_of(i, job.shop, data, shapes).replace(step=i.step) for i in getattr(job, table)]
    else:
        found = [page.item(i, job.shop, data).replace(step=i.step) for i in getattr(job, table)]
    together = getattr(page, "together", None)
    of_all = together(job, found, data) if found and together is not None else []
    return [*found, *(i.replace(of_all=True) for i in of_all)]


def data_digest(data: Refdata) -> str:
    """The digest of the data release: as it was closed where no file has changed since, else worked out from its rows.
    DataError when a closed release had another one.
    """
    got = data._memo.get("data digest")
    if got is None:
        got = whole_as_closed(data.release, data.folder)
        got = got or releases.release_digest(data.folder, data.release, data.read_so_far())
        closed = next(r["sha256"] for r in data.releases if r["version"] == data.release)
        if closed and closed != got:
            why = "its rows are not those that were released: a cell was changed, a row added or taken out"
            do = "restore the tables as they were released, or run validate to see what is wrong"
            raise DataError(data.release, "data release", why, (), do)
        data._memo["data digest"] = got
    return str(got)


def _questioned(item: Item) -> Item:
    """An item that is still the starter's example asks to be replaced."""
    if not item.name.startswith("EXAMPLE"):
        return item
    text = "This is still the starter's example, not a part of this build: replace it."
    check = Check("an item of this build", CANNOT_TELL, text, bears=ASK)
    sheet = item.sheet
    decision = ask(sheet.decision.verb, sheet.decision.candidates, (check.name,), text)
    question = Question(FILL_IN, text, "name", (check.name,))
    made = sheet.replace(checks=(*sheet.checks, check), decision=decision, questions=(question,))
    return item.replace(sheet=made)


def settle_first(items: list[Item]) -> list[dict[str, Any]]:
    """Every check that stops the work, then every one that asks, with its sheet and the number of its card."""
    found = [
        (not c.stops, n, {"sheet": i.name, "card": n, "check": c.name, "result": c.result, "reason": c.reason})
        for n, i in enumerate(items, 1)
        for c in i.sheet.checks
        if c.stops or c.asks
    ]
    return [entry for _, _, entry in sorted(found, key=lambda f: f[:2])]


def questions(items: list[Item]) -> list[dict[str, Any]]:
    """What must be done, each question once with the sheets that it settles."""
    out: dict[tuple[str, str], dict[str, Any]] = {}
    for item in items:
        for question in item.sheet.questions:
            entry = out.setdefault((question.kind, question.text), {**question.as_dict(), "sheets": []})
            if item.name not in entry["sheets"]:
                entry["sheets"].append(item.name)
    return list(out.values())


def _used(items: list[Item]) -> list[Figure]:
    """Every figure that a sheet prints or judges by: answers, bounds of checks, what stands below them, and the
    others.
    """
    seen: dict[str, Figure] = {}
    walked: set[str] = set()  # what stands below a figure is the same wherever the figure stands
    for item in items:
        bounds = [b.figure for c in item.sheet.checks for b in (c.required, c.actual) if b is not None]
        for figure in (*item.sheet.figures, *(f for f in bounds if f is not None)):
            for part in figure.walk(walked):
                seen.setdefault(part.id, part)
                for other in part.others:
                    seen.setdefault(other.id, other)
    return list(seen.values())


def _named(items: list[Item]) -> set[str]:
    """The ids that cautions name."""
    return {id for item in items for caution in item.sheet.cautions for id in caution.figures}


def _rows_used(used: list[Figure], items: list[Item], data: Refdata) -> list[dict[str, str]]:
    """Every refdata row behind a figure of the packet, with its digest."""
    wanted = {id for id in {f.id for f in used} | _named(items) if "/" in id.split(":", 1)[0]}
    of_table: dict[str, dict[str, Row]] = {}
    for row, figure in data.figures_made():
        if figure.id in wanted:
            wanted.discard(figure.id)
            of_table.setdefault(row.table, {})[figure.id] = row
    out = []
    for table, rows in of_table.items():
        digests = releases.row_digests(table, columns_of(table), [row.values for row in rows.values()])
        out += [{"id": id, "sha256": digest} for id, digest in zip(rows, digests, strict=True)]
    return sorted(out, key=lambda r: r["id"])


def sources(items: list[Item], data: Refdata, used: list[Figure] | None = None) -> list[dict[str, str]]:
    """The publications behind items, formulas included; ``used`` are their figures where they are known."""
    used = _used(items) if used is None else used
    ids = {caution.source for item in items for caution in item.sheet.cautions}
    for figure in used:
        ids.add(figure.source)
        if figure.rule is not None:
            ids.add(figure.rule.source)
    known = [source for i in sorted(ids) if (source := data.entry("sources", i)) is not None]
    return [{k: source[k] for k in ("id", "title", "publisher", "year", "kind")} for source in known]
