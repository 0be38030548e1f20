"""``[[shims]]``: the side bearings' shims, or the pinion's."""

from typing import Annotated

from gaugeblock.driveline.shims.given import SIGNS
from gaugeblock.job.checks import no_faults
from gaugeblock.job.kind import Kind
from gaugeblock.job.part import Entry, Gap, Name, Ratio, Text, one_of


class ShimLog(Entry):
    """``[[shims]]``: backlash as read and wanted with the packs on both sides, or a pinion's shim and marks."""

    name: Name
    where: Text | None = None
    axle: Name | None = None
    backlash: Gap | None = None
    wanted: Gap | None = None
    per_shim: Ratio | None = None
    move: Gap | None = None
    ring_side: Gap | None = None
    other_side: Gap | None = None
    preload: Gap | None = None
    shim: Gap | None = None
    old_mark: Name | None = None
    new_mark: Name | None = None
    sign: Annotated[str, one_of(*SIGNS)] | None = None
    notes: Text | None = None


STARTER = """\
#[[shims]]                              # shims of the side bearings
#name = "EXAMPLE side bearing shims"
#axle = "rear"                          # which axle
#where = "rear axle"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#backlash = "0.012 in"                  # as it is read
#wanted = "0.006 in"                    # by the axle maker
#per_shim = "0.7"                       # backlash that one shim thickness moves on this axle: move one and read
#ring_side = "0.250 in"                 # the pack on the ring gear's side
#other_side = "0.265 in"                # and on the other
#move = "0.010 in"                      # or the maker's own shim change from the gauge stack
#preload = "0.004 in"                   # that is then added to each side
#notes = ""

#[[shims]]                              # or of the pinion
#name = "EXAMPLE pinion shim"
#shim = "0.031 in"                      # that is in, or that the depth gauge asks for
#old_mark = "+2"                        # on the pinion that comes out
#new_mark = "-1"                        # on the pinion that goes in
#sign = "plus adds"                     # or "plus takes off": ask the axle maker
"""
KIND = Kind(ShimLog, no_faults, STARTER)
