"""The commented starter of a job file: every key with what it means and how the trade writes it."""

from __future__ import annotations

import os
from collections.abc import Mapping
from typing import TYPE_CHECKING

from gaugeblock.job.output import write_new

if TYPE_CHECKING:
    from gaugeblock.job.kind import Kind

STARTER = """\
# A job file: one vehicle, and what is tightened, bent, run and set up on it.
#
# Fill in what you know. What is left blank comes out as a blank box, and a check that needs it says `cannot tell`.
# A line that begins with # and a key is switched off: take the # away to use it.
# Figures are text with their unit: "31 lbf*ft", "25 Nm", "1-3/4 in", ".120 in", "16 mm", "45 deg", "250 degF".
# Items are numbered on the packet in the order of the work. Give an item a step to put it in another place:
# those with a step stand first, in the order of their numbers.
# Items of one kind each begin with their name in double brackets; write as many as there are.

[job]                                   # the title block of the packet
owner = ""                              # whose it is, e.g. "A. Sample"
creator = ""                            # who made this packet, e.g. "B. Sample"
identification = ""                     # number on the vehicle, e.g. "frame no. 1047"
vehicle = ""                            # in plain words, e.g. "two-seat roadster, tube frame, front engine"
revision = ""                           # e.g. "A", then "B" when a figure changes
issued = ""                             # date of issue, year-month-day, e.g. "2031-05-17"
status = "draft"                        # "draft", "for build" or "as built"
notes = ""                              # one line for the title block

[shop]                                  # the tools that the numbers are set with
name = ""                               # e.g. "north bay"
units = "inch"                          # "inch" or "metric": which unit stands first
#wrenches = ["30 to 250 lbf*in by 1", "10 to 80 lbf*ft by 1"]   # each torque wrench: low to high, by its graduation
#stock_length = "20 ft"                 # tube as it is bought
#kerf = "1/16 in"                       # what the saw takes

#[[shop.dies]]                          # each bending die
#name = "die A"                         # how the shop calls it
#od = "1-3/4 in"                        # tube it takes
#radius = "6 in"                        # centre-line radius
#start_mark = "2-1/4 in"                # from the mark on the die to the tangent point
#grip = "4 in"                          # straight that the clamp needs
#between = "2 in"                       # straight needed between two bends, where it is not the grip
#notes = ""
#[[shop.dies.test_bends]]               # bends made to learn how far this lot springs back
#pulled = "92 deg"                      # angle under load
#released = "90 deg"                    # angle when let go
#material = "1020"                      # of the tube that was bent, as the tube names it
#wall = ".120 in"                       # wall thickness
#notes = ""

"""


def starter_text(kinds: Mapping[str, Kind]) -> str:
    """The whole starter: the title block, the shop, then the tables of all domains."""
    return STARTER + "\n".join(kind.starter for kind in kinds.values())


def starter(path: str | os.PathLike[str], kinds: Mapping[str, Kind]) -> None:
    """Write the starter to ``path``; OutputError, with nothing written, when a file is there or the folder is not."""
    write_new(path, starter_text(kinds).encode("utf-8"))
