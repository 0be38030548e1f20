"""``[[shafts]]``: a propeller shaft."""

from collections.abc import Iterator
from typing import Annotated, Any

from gaugeblock.driveline.keys import PHASES
from gaugeblock.job.checks import Fault
from gaugeblock.job.locate import Path
from gaugeblock.job.part import (
    Entry,
    Gap,
    Length,
    Name,
    Ratio,
    Speed,
    StatedStress,
    Text,
    Torque,
    Turn,
    Wall,
    one_of,
)


class PropellerShaft(Entry):
    """``[[shafts]]``: a propeller shaft by its tube, the distances between its joints, its slip joint and slopes."""

    name: Name
    where: Text | None = None
    od: Length | None = None
    wall: Wall | None = None
    material: Name | None = None
    modulus: StatedStress | None = None
    density: Name | None = None
    yield_strength: StatedStress | None = None
    length: Length | None = None
    front_length: Length | None = None
    bump: Length | None = None
    droop: Length | None = None
    slip_in: Gap | None = None
    engaged: Gap | None = None
    spline_diameter: Length | None = None
    engine_speed: Speed | None = None
    gears: tuple[Ratio, ...] = ()
    transfer: Ratio | None = None
    speed: Speed | None = None
    torque: Torque | None = None
    wind_up: Turn | None = None
    phasing: Annotated[str, one_of(*PHASES)] | None = None
    shafts_side: tuple[Turn, ...] = ()
    shafts_top: tuple[Turn, ...] = ()
    bump_side: tuple[Turn, ...] = ()
    droop_side: tuple[Turn, ...] = ()
    notes: Text | None = None


_SLOPES = ("shafts_side", "shafts_top", "bump_side", "droop_side")


def faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    """Slopes that are too few or too many."""
    side = item.get("shafts_side")
    for key in _SLOPES:
        slopes = item.get(key)
        if not isinstance(slopes, list):
            continue
        do = 'write them from the gearbox to the axle: ["3 deg", "5 deg", "3 deg"]'
        if len(slopes) not in (3, 4):
            yield Fault((*path, key), f"{len(slopes)} slopes; three are wanted, or four of a shaft in two pieces", do)
        elif not isinstance(side, list) or len(slopes) != len(side):
            yield Fault((*path, key), "as many slopes are wanted in shafts_side", do, (*path, "shafts_side"))


STARTER = """\
#[[shafts]]                             # a propeller shaft
#name = "EXAMPLE rear propeller shaft"
#where = "gearbox to rear axle"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#od = "3 in"                            # outside diameter of its tube
#wall = "0.083 in"
#material = "steel"                     # or "aluminium"
#modulus = "200 GPa"                    # the tube's own, where it is of another metal
#density = "7.85 g/cm**3"               # the same
#length = "48 in"                       # between the centres of its joints, at ride height
#front_length = "20 in"                 # of a shaft in two pieces, whose length is then the rear piece
#bump = "47-1/2 in"                     # the same at full bump
#droop = "48-3/4 in"                    # and at full droop
#slip_in = "1-3/4 in"                   # how far the slip joint can still go in, at ride height
#engaged = "3 in"                       # length on which its splines are engaged, at ride height
#spline_diameter = "1-1/4 in"           # of the slip joint
#engine_speed = "6000 rpm"              # the most
#gears = ["3.06", "1.63", "1"]          # of the gearbox, the top gear last
#transfer = "1"                         # ratio of a transfer case
#speed = "5000 rpm"                     # or the most of the shaft itself
#shafts_side = ["3 deg", "5 deg", "3 deg"]   # slopes of gearbox, shaft and pinion, side view, down to the rear
#shafts_top = ["0 deg", "0 deg", "0 deg"]    # the same in the top view, to the right
#bump_side = ["3 deg", "4 deg", "3 deg"]     # the side view again at full bump
#droop_side = ["3 deg", "8 deg", "4 deg"]    # and at full droop
#phasing = "in phase"                   # the yokes of the shaft: "in phase" (in line) or "wrong phase"
#wind_up = "2 deg"                      # by which the springs let the pinion rise under power
#torque = "900 lbf*ft"                  # the most on the shaft
#yield_strength = "60 ksi"              # of its tube, by its certificate, or "58 ksi by tensile test on 2026-11-20"
#notes = ""
"""
