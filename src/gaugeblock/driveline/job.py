"""``[[driveline]]``: a shaft, or one step of an axle's set-up."""

from collections.abc import Iterator
from typing import Annotated, Any

from gaugeblock.job.checks import Fault, given
from gaugeblock.job.kind import Kind
from gaugeblock.job.locate import Path
from gaugeblock.job.part import AnyFigure, Finding, Length, Name, Part, Stress, Temperature, Text, Torque, one_of

SHAFT = (
    "steel",
    "treatment",
    "temper",
    "diameter",
    "length",
    "torque",
    "section",
    "bore",
    "hardness",
    "yield_strength",
    "certificate",
    "case_depth",
    "core_hardness",
)
SETUP = ("axle", "component", "step", "wear", "as_found", "as_left", "maker")


class MakerFigure(Part):
    """The maker's own set-up figure: one value, or low and high."""

    value: AnyFigure | None = None
    low: AnyFigure | None = None
    high: AnyFigure | None = None
    source: Text | None = None
    place: Text | None = None


class Driveline(Part):
    """``[[driveline]]``: a shaft (steel and size), or one step of an axle's set-up (found and left)."""

    name: Name
    where: Text | None = None
    kind: Annotated[str, one_of("shaft", "setup")] | None = None
    steel: Name | None = None
    treatment: Name | None = None
    temper: Temperature | None = None
    diameter: Length | None = None
    length: Length | None = None
    torque: Torque | None = None
    section: Length | None = None
    bore: Length | None = None
    hardness: Name | None = None
    yield_strength: Stress | None = None
    certificate: Text | None = None
    case_depth: Length | None = None
    core_hardness: Name | None = None
    axle: Name | None = None
    component: Name | None = None
    step: Name | None = None
    wear: Name | None = None
    as_found: Finding | None = None
    as_left: Finding | None = None
    maker: MakerFigure | None = None
    notes: Text | None = None


def faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    kind = item.get("kind")
    wrong = {"shaft": SETUP, "setup": SHAFT}.get(kind if isinstance(kind, str) else "", ())
    for key in given(item, wrong):
        yield Fault((*path, key), f"does not belong to a {kind}", "move it to an item of its own", (*path, "kind"))


STARTER = """\
#[[driveline]]                          # a shaft
#name = "EXAMPLE rear axle shaft"
#where = "rear axle, left"
#kind = "shaft"                         # "shaft" or "setup"
#steel = "4340"                         # grade of steel
#treatment = "quenched and tempered"    # how it was hardened
#temper = "800 degF"                    # tempering temperature
#diameter = "1-1/4 in"                  # the smallest it has
#length = "30 in"
#torque = "1500 lbf*ft"                 # what is asked of it
#bore = "1/2 in"                        # of a hollow shaft
#section = "1-1/2 in"                   # the bar it was made of, where that is not its diameter
#hardness = "42 HRC"                    # measured on this very shaft
#yield_strength = "120 ksi"             # its own, by its certificate
#certificate = ""                       # where that stands: "mill sheet 12"
#case_depth = "0.15 in"                 # of a case-hardened shaft
#core_hardness = "25 HRC"               # below the case
#notes = ""

#[[driveline]]                          # a step of an axle's set-up
#name = "EXAMPLE ring gear backlash"
#kind = "setup"
#axle = "rear"                          # which axle
#component = "ring gear"                # the part that is set
#step = "backlash"                      # what is set or measured on it
#wear = "new"                           # "new" or "used" parts
#as_found = "0.011 in"                  # a figure, or words
#as_left = "0.007 in"                   # the same after the work
#[driveline.maker]
#value = "0.006 in"                     # the axle maker's own figure
#low = "0.005 in"
#high = "0.008 in"
#source = "axle maker's sheet"
#place = "page 4"
"""

KINDS = {"driveline": Kind(Driveline, faults, STARTER)}
