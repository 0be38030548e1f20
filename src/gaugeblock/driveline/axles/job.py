"""``[[axles]]``: an axle shaft, and what engine and tyre can send to it."""

from typing import Annotated

from gaugeblock.driveline.axles.pull import DIFFERENTIALS, DRIVEN
from gaugeblock.driveline.keys import ROOTS
from gaugeblock.job.part import (
    Count,
    Entry,
    Length,
    Name,
    Place,
    Ratio,
    StatedStress,
    Temperature,
    Text,
    Torque,
    Turn,
    YesNo,
    one_of,
)


class AxleShaft(Entry):
    """``[[axles]]``: one axle shaft: its steel and form, the way of the torque from the engine and from the tyre."""

    name: Name
    where: Text | None = None
    material: Name | None = None
    treatment: Name | None = None
    temper: Temperature | None = None
    diameter: Length | None = None
    bore: Length | None = None
    length: Length | None = None
    parts: tuple[Name, ...] = ()
    spline: Name | None = None
    teeth: Count | None = None
    root: Annotated[str, one_of(*ROOTS)] | None = None
    fillet: Length | None = None
    shoulder: Length | None = None
    engine_torque: Torque | None = None
    converter: Name | None = None
    gear: Ratio | None = None
    transfer: Ratio | None = None
    ratio: Ratio | None = None
    differential: Annotated[str, one_of(*DIFFERENTIALS)] | None = None
    bias: Ratio | None = None
    lifted: YesNo | None = None
    wheel_load: Name | None = None
    axle_load: Name | None = None
    height: Length | None = None
    wheelbase: Length | None = None
    driven: Annotated[str, one_of(*DRIVEN)] | None = None
    grip: Ratio | None = None
    radius: Length | None = None
    section: Length | None = None
    hardness: Name | None = None
    yield_strength: StatedStress | None = None
    certificate: Text | None = None
    shear_modulus: StatedStress | None = None
    case_depth: Length | None = None
    core_hardness: Name | None = None
    flange_to_flange: Length | None = None
    spring_seats: Length | None = None
    pinion_offset: Place | None = None
    housing_tube: Length | None = None
    seat_angle: Turn | None = None
    brakes: Name | None = None
    bolt_circle: Name | None = None
    register: Length | None = None
    notes: Text | None = None


# What is of the axle itself, for the page to its shop; nothing is worked out of it.
ORDER = (
    "flange_to_flange",
    "spring_seats",
    "pinion_offset",
    "housing_tube",
    "seat_angle",
    "brakes",
    "bolt_circle",
    "register",
)
STARTER = """\
#[[axles]]                              # an axle shaft, and the torque that can reach it
#name = "EXAMPLE rear axle shaft, left"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#where = "rear axle, left"
#material = "4340"                      # grade of steel
#treatment = "quenched and tempered"    # how it was hardened
#temper = "800 degF"                    # tempering temperature
#diameter = "1-1/4 in"                  # the smallest it has; or its steps:
#parts = ["1-1/2 in x 4 in", "1-1/4 in x 22 in"]   # diameter and length of each step
#length = "30 in"                       # that twists, of a shaft without steps
#bore = "1/2 in"                        # of a hollow shaft
#spline = "24/48"                       # pitch of its spline
#teeth = 30                             # of its spline
#root = "flat root"                     # "flat root" or "fillet root"
#fillet = "1/8 in"                      # radius under a shoulder or flange
#shoulder = "2 in"                      # diameter of that shoulder or flange
#engine_torque = "300 lbf*ft"           # the most it makes
#converter = "none"                     # stall ratio of a torque converter
#gear = "2.5"                           # lowest gear
#transfer = "1"                         # transfer case
#ratio = "4.1"                          # axle ratio
#differential = "open"                  # "open", "limited slip" or "locked"
#bias = "2.5"                           # torque bias of a limited slip one, by its maker
#wheel_load = "1000 lb"                 # on this wheel when it pulls hardest; or worked out from these:
#axle_load = "1800 lb"                  # on the axle at rest
#height = "20 in"                       # of the centre of mass over the road
#wheelbase = "100 in"                   # front wheels to rear wheels
#driven = "rear"                        # "rear" or "front"
#lifted = "no"                          # "yes": the other wheel in the air
#grip = "1.0"                           # greatest pull of the tyre over its weight
#radius = "13 in"                       # centre of the loaded wheel to the road
#hardness = "42 HRC"                    # measured on this very shaft
#yield_strength = "120 ksi"             # its own, by its certificate
#certificate = ""                       # where that stands: "mill sheet 12"
#section = "1-1/2 in"                   # the bar it was made of
#shear_modulus = "11.5 Msi"             # the steel's own
#case_depth = "0.15 in"                 # of a case-hardened shaft
#core_hardness = "25 HRC"               # below the case
#flange_to_flange = "60 in"             # with any of these, a page for the axle shop: between the wheel faces
#spring_seats = "43 in"                 # between the middles of the spring seats
#pinion_offset = "1 in"                 # of the pinion to the right of the middle, minus to the left
#housing_tube = "3 in"                  # outside diameter
#seat_angle = "3 deg"                   # by which the pinion points up from the seats
#brakes = "10 in drums"                 # that the housing ends take
#bolt_circle = "5 on 4-1/2 in"          # of the wheels
#register = "2.78 in"                   # diameter that centres the wheel
#notes = ""
"""
