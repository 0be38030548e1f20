"""``[[driveline]]``: a shaft, or one step of an axle's set-up; ``[[joints]]``: the universal joints of a shaft."""

from collections.abc import Iterator
from typing import Annotated, Any, Self

from gaugeblock.driveline.axles.job import STARTER as AXLES_STARTER
from gaugeblock.driveline.axles.job import AxleShaft
from gaugeblock.driveline.axles.order import faults as axle_faults
from gaugeblock.driveline.keys import FITS, PHASES, ROOTS, SEATINGS
from gaugeblock.driveline.propshafts.job import STARTER as SHAFTS_STARTER
from gaugeblock.driveline.propshafts.job import PropellerShaft
from gaugeblock.driveline.propshafts.job import faults as shaft_faults
from gaugeblock.job import values
from gaugeblock.job.checks import Fault, given, no_faults
from gaugeblock.job.kind import Kind, Later
from gaugeblock.job.locate import Path
from gaugeblock.job.part import (
    AnyFigure,
    Count,
    Entry,
    Finding,
    Length,
    Name,
    Part,
    Refused,
    Speed,
    StatedStress,
    Temperature,
    Text,
    Torque,
    Turn,
    one_of,
)

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
    "shear_modulus",
    "certificate",
    "case_depth",
    "core_hardness",
)
SETUP = ("axle", "component", "setting", "wear", "as_found", "as_left", "maker")


def _step(value: object) -> int | str:
    """A place in the order of the work; in words it is what is set, as jobs once called it."""
    return values.plain_text(value, values.NAME_LIMIT) if isinstance(value, str) else values.count(value)


StepOrSetting = Annotated[int | str, _step]


class MakerFigure(Part):
    """The maker's own set-up figure: one value, or low and high."""

    value: AnyFigure | None = None
    low: AnyFigure | None = None
    high: AnyFigure | None = None
    source: Text | None = None
    place: Text | None = None


class Driveline(Entry):
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
    yield_strength: StatedStress | None = None
    shear_modulus: StatedStress | None = None
    certificate: Text | None = None
    case_depth: Length | None = None
    core_hardness: Name | None = None
    axle: Name | None = None
    component: Name | None = None
    setting: Name | None = None
    step: StepOrSetting | None = None  # type: ignore[assignment]  # words, as read, become the setting
    wear: Name | None = None
    as_found: Finding | None = None
    as_left: Finding | None = None
    maker: MakerFigure | None = None
    notes: Text | None = None

    @classmethod
    def read(cls, raw: object, path: Path, refused: list[Refused]) -> Self:
        """As of any part; a ``step`` in words is the setting."""
        part = super().read(raw, path, refused)
        if isinstance(part.step, str):
            part.__dict__.update(setting=part.step, step=None)
        return part


class Joints(Entry):
    """``[[joints]]``: the joints of one propeller shaft, by their own angles or by the slopes of the three shafts."""

    name: Name
    where: Text | None = None
    angle: Turn | None = None
    second: Turn | None = None
    top: Turn | None = None
    second_top: Turn | None = None
    shafts_side: tuple[Turn, ...] = ()
    shafts_top: tuple[Turn, ...] = ()
    phasing: Annotated[str, one_of(*PHASES)] | None = None
    speed: Speed | None = None
    notes: Text | None = None


class Splines(Entry):
    """``[[splines]]``: an involute spline, and what it must carry."""

    name: Name
    where: Text | None = None
    pitch: Name | None = None
    teeth: Count | None = None
    root: Annotated[str, one_of(*ROOTS)] | None = None
    fit: Annotated[str, one_of(*FITS)] | None = None
    torque: Torque | None = None
    bore: Length | None = None
    length: Length | None = None
    material: Name | None = None
    source: Name | None = None
    load: Name | None = None
    cycles: Name | None = None
    seating: Annotated[str, one_of(*SEATINGS)] | None = None
    misalignment: Name | None = None
    revolutions: Name | None = None
    notes: Text | None = None


class GearingItem(Entry):
    """``[[gearing]]``: axle ratios side by side, with tyre, gears and a road speed."""

    name: Name
    where: Text | None = None
    ratios: tuple[Name, ...] = ()
    gears: tuple[Name, ...] = ()
    tyre: Name | None = None
    revolutions: Name | None = None
    speed: Name | None = None
    transfer: Name | None = None
    engine_speed: Name | None = None
    was_ratio: Name | None = None
    was_tyre: Name | None = None
    driven_gear: Name | None = None
    notes: Text | None = None


def faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    kind = item.get("kind")
    wrong = {"shaft": SETUP, "setup": SHAFT}.get(kind if isinstance(kind, str) else "", ())
    named = isinstance(item.get("step"), str)
    if named and given(item, ("setting",)):
        yield Fault(
            (*path, "step"), "words are a setting, and that is given", "write step as a number: the order of the work"
        )
    for key in (*given(item, wrong), *(("step",) if named and wrong is SETUP else ())):
        yield Fault((*path, key), f"does not belong to a {kind}", "move it to an item of its own", (*path, "kind"))


def joint_faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    for key in ("shafts_side", "shafts_top"):
        slopes = item.get(key)
        if isinstance(slopes, list) and len(slopes) != len(_THREE):
            do = 'write it as ["3 deg", "5 deg", "3 deg"]'
            yield Fault((*path, key), f"{len(slopes)} slopes; three are wanted: {', '.join(_THREE)}", do)
    if given(item, ("shafts_side",)):
        for key in given(item, ("angle", "second", "top", "second_top")):
            yield Fault(
                (*path, key), "given beside the slopes of the shafts", "give one of both", (*path, "shafts_side")
            )


_THREE = ("input shaft", "propeller shaft", "output shaft")

STARTER = """\
#[[driveline]]                          # a shaft
#name = "EXAMPLE rear axle shaft"
#where = "rear axle, left"
#step = 1                               # its place in the order of the work, where the usual order is not yours
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
#yield_strength = "120 ksi"             # its own, by its certificate, or "118 ksi by tensile test on 2026-11-20"
#shear_modulus = "11.5 Msi"             # the steel's own, in place of the table's
#certificate = ""                       # where that stands: "mill sheet 12"
#case_depth = "0.15 in"                 # of a case-hardened shaft
#core_hardness = "25 HRC"               # below the case
#notes = ""

#[[driveline]]                          # a step of an axle's set-up
#name = "EXAMPLE ring gear backlash"
#kind = "setup"
#axle = "rear"                          # which axle
#component = "ring gear"                # the part that is set
#setting = "backlash"                   # what is set or measured on it
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

JOINTS_STARTER = """\
#[[joints]]                             # the universal joints of one propeller shaft
#name = "EXAMPLE rear propeller shaft"
#where = "gearbox to rear axle"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#shafts_side = ["3 deg", "5 deg", "3 deg"]   # slopes of gearbox, shaft and pinion in the side view, down to the rear
#shafts_top = ["0 deg", "2 deg", "0 deg"]    # the same in the top view, to the right
#phasing = "in phase"                   # the yokes of the shaft: "in phase" (in line) or "wrong phase"
#speed = "4000 rpm"                     # of the shaft at top speed
#notes = ""

#[[joints]]                             # or by the angles of the joints themselves
#name = "EXAMPLE front propeller shaft"
#angle = "2 deg"                        # between the shafts at the first joint, in the side view
#second = "2 deg"                       # at the second
#top = "1 deg"                          # the first joint's angle in the top view
#second_top = "1 deg"                   # and the second's
"""

SPLINES_STARTER = """\
#[[splines]]                            # an involute spline of 30 degrees
#name = "EXAMPLE axle shaft spline"
#where = "rear axle, left"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#pitch = "24/48"                        # teeth to the inch of pitch diameter, and twice that
#teeth = 35                             # how many
#root = "flat root"                     # "flat root" or "fillet root"
#fit = "side fit"                       # "side fit" or "major diameter fit"
#torque = "900 lbf*ft"                  # what it must carry
#bore = "1/2 in"                        # of a hollow shaft
#length = "1-1/2 in"                    # on which shaft and hub are engaged
#material = "surface hardened, 48 to 53 HRC"
#source = "engine"                      # what drives
#load = "light shock load"              # "uniform load", "light", "intermittent" or "heavy shock load"
#cycles = "10000 cycles"                # torque on and off
#seating = "fixed"                      # "fixed" (shrunk or piloted, it cannot rock) or "flexible"
#misalignment = "0.001 in/in"           # of a flexible one
#revolutions = "1000000 revolutions"    # that a flexible one must last
#notes = ""
"""

GEARING_STARTER = """\
#[[gearing]]                            # engine speed at a road speed
#name = "EXAMPLE axle ratios"
#where = "rear axle"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#ratios = ["3.55", "41/10"]             # axle ratios, or teeth of ring gear and pinion
#gears = ["3.06", "1.63", "1", "0.7"]   # of the gearbox, the top gear last
#tyre = "P215/65R15"                    # size code, or outside diameter; several with commas
#revolutions = "775 rev/mile"           # of the tyre by its maker, which governs
#speed = "60 mph"                       # of the vehicle
#transfer = "1"                         # ratio of a transfer case
#engine_speed = "6000 rpm"              # the most of the engine
#was_ratio = "3.08"                     # with which the speedometer was right
#was_tyre = "P205/75R14"                # the same of the tyre
#driven_gear = "18"                     # teeth of the speedometer's driven gear
#notes = ""
"""

KINDS = {
    "driveline": Kind(Driveline, faults, STARTER),
    "axles": Kind(AxleShaft, axle_faults, AXLES_STARTER),
    "shafts": Kind(PropellerShaft, shaft_faults, SHAFTS_STARTER),
    "shims": Later("gaugeblock.driveline.shims.job"),
    "splines": Kind(Splines, no_faults, SPLINES_STARTER),
    "joints": Kind(Joints, joint_faults, JOINTS_STARTER),
    "gearing": Kind(GearingItem, no_faults, GEARING_STARTER),
}
