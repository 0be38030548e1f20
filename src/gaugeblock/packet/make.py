"""From a job file to the three files of a packet on disk, all or nothing."""

from __future__ import annotations

import os
from typing import Any

import gaugeblock
from gaugeblock import domains
from gaugeblock.answer.check import NOT_OK, OK
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
    def has_not_ok(self) -> bool:
        """Whether a check of the packet is not ok."""
        return any(i.sheet.worst == NOT_OK for i in self.packet.items)

    def summary(self) -> dict[str, Any]:
        """For JSON: the document, where it is, what to settle first."""
        record = self.packet.record
        files = [os.path.join(self.folder, n) for n in ("packet.md", "packet.html", "packet.json")]
        return {"document": record["document"], "files": files, "settle_first": record["settle_first"]}

    def text(self) -> str:
        """For a person."""
        items = self.packet.items
        open_items = sum(i.sheet.worst != OK for i in items)
        lines = [f"packet of {len(items)} items, {open_items} with something to settle first:"]
        lines += [f"  {s['sheet']}: {s['reason']}" for s in self.packet.record["settle_first"]]
        lines += [f"print {os.path.join(self.folder, 'packet.html')} (Letter or A4)"]
        return "\n".join(lines)


def make(job_path: str, release: str | None = None) -> Packet:
    """The packet of a job file, nothing written. JobError with every problem of the file."""
    data = refdata(release)
    job = domains.read_job(job_path, domains.hooks(data))
    return build(job, data, f"gaugeblock {gaugeblock.__version__}")


def make_packet(job_path: str, folder: str, release: str | None = None) -> Made:
    """Make a packet and write packet.md, packet.html and packet.json into ``folder``. OutputError leaves nothing new."""
    made = make(job_path, release)
    write_all(folder, render(made), lambda at: earlier.refuse(at, made.record))
    return Made(made, folder)
