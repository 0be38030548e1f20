"""``[[circuits]]``: one circuit of the vehicle."""

from collections.abc import Iterator
from typing import Any

from gaugeblock.job.checks import Fault
from gaugeblock.job.kind import Kind
from gaugeblock.job.locate import Path
from gaugeblock.job.part import Entry, Name, Text


class Circuit(Entry, aliases={"back": "return"}):
    """``[[circuits]]``: one circuit: its load, its run, what it may lose, and what the wire lies in."""

    name: Name
    where: Text | None = None
    current: Name | None = None
    length: Name | None = None
    voltage: Name | None = None
    drop: Name | None = None
    insulation: Name | None = None
    air: Name | None = None
    bundle: Name | None = None
    back: Name | None = None
    fuse: Name | None = None
    connector: Name | None = None
    wire: Name | None = None
    notes: Text | None = None


def no_faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    yield from ()


STARTER = """\
#[[circuits]]                           # one circuit: the wire and the fuse
#name = "EXAMPLE cooling fan"
#where = "front of the radiator"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#current = "28 A"                       # of the load
#length = "12 ft"                       # from the source to the load, one way
#voltage = "12 V"                       # of the system
#drop = "3 %"                           # that is allowed: a share, or volts
#insulation = "GXL"                     # letters on the cable, or what it bears: "105 degC"
#air = "60 degC"                        # along the wire at its hottest; or "by the engine", "in the cabin"
#bundle = "1"                           # how many loaded wires lie together, this one too
#return = "wire"                        # how the current comes back: "wire" or "body"
#fuse = "30 A"                          # that is to be fitted
#connector = "40 A"                     # what the weakest connector may carry
#wire = "10 AWG"                        # a wire that is there already
#notes = ""
"""

KINDS = {"circuits": Kind(Circuit, no_faults, STARTER)}
