"""From a job file to the three files of a packet on disk, all or nothing."""

from __future__ import annotations

import os
from typing import Any

import gaugeblock
from gaugeblock import domains
from gaugeblock.answer.decision import STOP, USE
from gaugeblock.job.output import write_all
from gaugeblock.packet import earlier
from gaugeblock.packet.build import Packet, build
from gaugeblock.packet.render import render
from gaugeblock.tables.load import refdata


class Made:
    """A packet that was written: where, and what stops the work."""

    __slots__ = ("folder", "packet")

    def __init__(self, packet: Packet, folder: str) -> None:
        self.packet = packet
        self.folder = folder

    @property
    def stops(self) -> bool:
        """Whether an item of the packet stops the work."""
        return any(i.sheet.decision.kind == STOP for i in self.packet.items)

    def summary(self) -> dict[str, Any]:
        """For JSON: the document, where it is, what to settle first."""
        record = self.packet.record
        files = [os.path.join(self.folder, n) for n in ("packet.md", "packet.html", "packet.json")]
        names = ("document", "settle_first", "questions")
        return {"files": files, **{n: record[n] for n in names}}

    def text(self) -> str:
        """For a person: ready or not, what stops, what to ask, and where the pages are."""
        items = self.packet.items
        kinds = [i.sheet.decision.kind for i in items]
        stops, ready = kinds.count(STOP), kinds.count(USE)
        counts = f"{stops} STOP, {len(items) - stops - ready} ask first, {ready} ready"
        lines = [f"{'Ready' if ready == len(items) else 'Not ready'} to build: {counts}."]
        lines += [
            f"  STOP  {number}. {item.name}: {item.sheet.decision.do}"
            for number, item in enumerate(items, 1)
            if item.sheet.decision.kind == STOP
        ]
        lines += [f"  {q['kind']}: {q['text']} ({', '.join(q['sheets'])})" for q in self.packet.record["questions"]]
        lines += [f"Print {os.path.join(self.folder, 'packet.html')} on Letter or A4."]
        return "\n".join(lines)


def make(job_path: str, release: str | None = None) -> Packet:
    """The packet of a job file, nothing written. JobError with every problem of the file."""
    data = refdata(release)
    job = domains.read_job(job_path, domains.hooks(data))
    return build(job, data, f"gaugeblock {gaugeblock.__version__}")


def make_packet(job_path: str, folder: str, release: str | None = None, *, cards_only: bool = False) -> Made:
    """Make a packet and write packet.md, packet.html and packet.json into ``folder``. OutputError leaves nothing new.

    With ``cards_only`` the pages hold the cards alone.
    """
    made = make(job_path, release)
    write_all(folder, render(made, cards_only=cards_only), lambda at: earlier.refuse(at, made.record))
    return Made(made, folder)
