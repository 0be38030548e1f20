"""``[[fuel]]``: the fuel supply of the engine."""

from typing import Annotated

from gaugeblock.job.checks import no_faults
from gaugeblock.job.kind import Kind
from gaugeblock.job.part import Entry, Name, Text, one_of
from gaugeblock.lines.fuel.keys import BOOSTS, FUELS, LINES, SYSTEMS


class Fuel(Entry, aliases={"filter_rating": "filter"}):
    """``[[fuel]]``: the engine's power, its pump, feed and return; ``filter_rating`` is the file's ``filter``."""

    name: Name
    where: Text | None = None
    power: Name | None = None
    fuel: Annotated[str, one_of(*FUELS)] | None = None
    boost: Annotated[str, one_of(*BOOSTS)] | None = None
    consumption: Name | None = None
    system: Annotated[str, one_of(*SYSTEMS)] | None = None
    density: Name | None = None
    viscosity: Name | None = None
    reserve: Name | None = None
    pump: Name | None = None
    length: Name | None = None
    bore: Name | None = None
    loss: Name | None = None
    return_length: Name | None = None
    return_bore: Name | None = None
    return_loss: Name | None = None
    pressure: Name | None = None
    filter_rating: Name | None = None
    filter_flow: Name | None = None
    rated: Name | None = None
    injectors: Name | None = None
    injector: Name | None = None
    duty: Name | None = None
    line: Annotated[str, one_of(*LINES)] | None = None
    notes: Text | None = None


STARTER = """\
#[[fuel]]                               # what the pump must deliver, what feed and return lose
#name = "EXAMPLE fuel supply"
#where = "tank to engine"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#power = "350 hp"                       # of the engine
#fuel = "gasoline"                      # "gasoline", "diesel", "E85", "methanol", "ethanol"
#boost = "no boost"                     # "boost" or "no boost"
#consumption = "0.5 lb/(hp*h)"          # what the engine burns at full load, by its maker or measured
#system = "injection"                   # "carburettor" or "injection"
#density = "6.2 lb/gal"                 # the fuel's own, where the tables have none
#viscosity = "0.6 mm**2/s"              # the fuel's own, where the tables have none
#reserve = "20 %"                       # on top of what is burnt
#pump = "60 gal/h"                      # what it delivers at its pressure, by its maker
#length = "14 ft"                       # of the feed, fittings counted as length
#bore = "5/16 in"                       # inside diameter of the feed
#loss = "2 psi"                         # that the feed may have
#return_length = "14 ft"                # the same of the return
#return_bore = "1/4 in"                 # inside diameter of the return
#return_loss = "2 psi"                  # that the return may have
#pressure = "43 psi"                    # at the engine
#filter = "10 um"                       # after the pump
#filter_flow = "300 L/h"                # that the filter is made for, by its maker
#rated = "100 psi"                      # that the weakest hose or tube stands, by its maker
#injectors = "8"                        # how many, in place of the power
#injector = "42 lb/h"                   # what one passes held open
#duty = "80 %"                          # of the injectors
#line = "drawn tube"                    # "drawn tube" or "rubber hose"
#notes = ""
"""
KIND = Kind(Fuel, no_faults, STARTER)
