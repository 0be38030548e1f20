"""From a job file to the three files of a packet on disk, all or nothing."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any

import gaugeblock
from gaugeblock import domains
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.job.output import write_all
from gaugeblock.packet.build import Packet, build
from gaugeblock.packet.chosen import Scope, chosen
from gaugeblock.packet.render import files_of
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from gaugeblock.answer.item import Item


_OUTCOME = {USE: "ready", STOP: "STOP", ASK: "ask first", NONE: "no figure"}


class Made:
    """A packet that was written: where, which ``items`` its pages show (by card), and what stops the work."""

    __slots__ = ("folder", "items", "packet")

    def __init__(self, packet: Packet, folder: str, items: dict[int, Item]) -> None:
        self.packet = packet
        self.folder = folder
        self.items = items

    @property
    def stops(self) -> bool:
        """Whether an item of the pages stops the work."""
        return any(i.sheet.decision.kind == STOP for i in self.items.values())

    def summary(self) -> dict[str, Any]:
        """For JSON: the document, where it is, what to settle first."""
        record = self.packet.record
        files = [os.path.join(self.folder, n) for n in ("packet.md", "packet.html", "packet.json")]
        names = ("document", "settle_first", "questions")
        return {"files": files, **{n: record[n] for n in names}}

    def text(self) -> str:
        """For a person: ready or not, what stops, what to ask, and where the pages are."""
        items = self.items
        names = {i.name for i in items.values()}
        kinds = [i.sheet.decision.kind for i in items.values()]
        stops, ready = kinds.count(STOP), kinds.count(USE)
        counts = f"{stops} STOP, {len(items) - stops - ready} ask first, {ready} ready"
        lines = [f"{'Ready' if ready == len(items) else 'Not ready'} to build: {counts}."]
        if len(items) < len(self.packet.items):
            lines = [f"{n}. {i.name}: {_OUTCOME[i.sheet.decision.kind]}." for n, i in items.items()]
        lines += [
            f"  STOP  {number}. {item.name}: {item.sheet.decision.do}"
            for number, item in items.items()
            if item.sheet.decision.kind == STOP
        ]
        asked = [(q, [n for n in q["sheets"] if n in names]) for q in self.packet.record["questions"]]
        lines += [f"  {q['kind']}: {q['text']} ({', '.join(about)})" for q, about in asked if about]
        lines += [f"Print {os.path.join(self.folder, 'packet.html')} on Letter or A4."]
        return "\n".join(lines)


def make(job_path: str, release: str | None = None) -> Packet:
    """The packet of a job file, nothing written. JobError with every problem of the file."""
    data = refdata(release)
    job = domains.read_job(job_path, domains.hooks(data))
    return build(job, data, f"gaugeblock {gaugeblock.__version__}")


def make_packet(job_path: str, folder: str, release: str | None = None, scope: Scope | None = None) -> Made:
    """Make a packet of the job at ``job_path`` and write packet.md, packet.html and packet.json into ``folder``.

    It is made of the data ``release`` that is named, else of the newest. JobError tells what is wrong with a job;
    OutputError leaves nothing new. The pages hold what ``scope`` says, all without one; packet.json is always whole.
    LookupMiss for an item that the job does not have.
    """
    scope = scope or Scope()
    made = make(job_path, release)
    items = chosen(made.items, scope.sheet)

    def allows(at: str) -> None:
        from gaugeblock.packet import earlier  # of a folder that is there already

        earlier.refuse(at, made.record)

    write_all(folder, files_of(made, scope), allows)
    return Made(made, folder, items)
