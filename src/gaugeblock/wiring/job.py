"""``[[circuits]]``: one circuit of the vehicle; ``[[batteries]]``: one that stands with a draw."""

from typing import Annotated

from gaugeblock.job.checks import no_faults
from gaugeblock.job.kind import Kind
from gaugeblock.job.part import Entry, Name, Text, one_of
from gaugeblock.wiring.keys import KINDS as KINDS_OF


class Circuit(Entry, aliases={"back": "return"}):
    """``[[circuits]]``: one circuit: its load, its run, what it may lose, and what the wire lies in."""

    name: Name
    where: Text | None = None
    kind: Annotated[str, one_of(*KINDS_OF)] | None = None
    current: Name | None = None
    length: Name | None = None
    voltage: Name | None = None
    drop: Name | None = None
    insulation: Name | None = None
    air: Name | None = None
    bundle: Name | None = None
    back: Name | None = None
    earth_drop: Name | None = None
    fuse: Name | None = None
    connector: Name | None = None
    relay: Name | None = None
    wire: Name | None = None
    wires: Name | None = None
    notes: Text | None = None


class Battery(Entry):
    """``[[batteries]]``: a battery, and what the parked vehicle draws from it."""

    name: Name
    where: Text | None = None
    battery: Name | None = None
    reserve: Name | None = None
    draw: Name | None = None
    days: Name | None = None
    used: Name | None = None
    notes: Text | None = None


STARTER = """\
#[[circuits]]                           # one circuit: the wire and the fuse
#name = "EXAMPLE fuel pump"
#where = "beside the tank"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#kind = "load"                          # "load", or "starter cable"
#current = "10 A"                       # of the load; a power will do too: current = "100 W"
#length = "8 ft"                        # from the source to the load, one way
#voltage = "12 V"                       # of the system
#drop = "3 %"                           # that is allowed: a share, or volts
#insulation = "GXL"                     # letters on the cable, or what it bears: "105 degC"
#air = "60 degC"                        # along the wire at its hottest; or "by the engine", "in the cabin"
#bundle = "1"                           # how many loaded wires lie together, this one too
#return = "body"                        # how the current comes back: "wire" or "body"
#earth_drop = "0.05 V"                  # what the body was measured to lose, under load
#fuse = "15 A"                          # that is to be fitted
#connector = "25 A"                     # what the weakest connector may carry
#relay = "30 A"                         # what the relay's contact may carry
#wire = "10 AWG"                        # a wire that is there already; or "6 mm2"
#wires = "1"                            # how many equal wires side by side share the current
#notes = ""
"""

BATTERY_STARTER = """\
#[[batteries]]                          # how long a parked vehicle still starts
#name = "EXAMPLE starting battery"
#where = "behind the seats"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#battery = "60 Ah"                      # charge of the full battery
#reserve = "100 min"                    # or its reserve capacity
#draw = "35 mA"                         # of the vehicle at rest, measured
#days = "21 days"                       # that it is to stand
#used = "30 %"                          # share of its charge that may be gone by then
#notes = ""
"""

KINDS = {"circuits": Kind(Circuit, no_faults, STARTER), "batteries": Kind(Battery, no_faults, BATTERY_STARTER)}
