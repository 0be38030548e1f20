"""``[[exhausts]]``: a run of exhaust with its hangers and neighbours, or the pipe that an engine asks for."""

from functools import partial
from typing import Annotated

from gaugeblock.exhaust.run.fixing import KINDS as FLEXIBLE
from gaugeblock.job import values
from gaugeblock.job.checks import no_faults
from gaugeblock.job.kind import Kind
from gaugeblock.job.part import (
    Entry,
    Force,
    Gap,
    Length,
    Mass,
    Name,
    Part,
    Point,
    StatedExpansion,
    StatedTemperature,
    Stress,
    Temperature,
    Text,
    Wall,
    one_of,
)
from gaugeblock.units import Measure

Stiffness = Annotated[Measure, partial(values.measure, dim="stiffness")]
Area = Annotated[Measure, partial(values.measure, dim="area")]

RUN, PIPE, JOINT, OUTLET, IGNITION = WHAT = ("run", "pipe", "joint", "outlet", "ignition")
SMALL = (JOINT, OUTLET, IGNITION)


class ExhaustHanger(Part):
    """A hanger: its place from the front end, its length from pin to pin, what it may carry."""

    at: Gap
    length: Length | None = None
    limit: Force | None = None


class ExhaustMass(Part):
    """What hangs on the run: a silencer, a converter."""

    what: Name
    at: Gap
    mass: Mass


class ExhaustFlex(Part):
    """The flexible section: where it begins, its length, and what its maker says of it."""

    at: Gap
    length: Length | None = None
    kind: Annotated[str, one_of(*FLEXIBLE)] | None = None
    travel: Length | None = None
    rate: Stiffness | None = None
    area: Area | None = None


class ExhaustGap(Part):
    """A neighbour of the run, the gap to it when cold, and where on the run it is; for its heat its own diameter and
    finish, what it is and what it stands, and what it came to on the car.
    """

    to: Name
    gap: Gap
    at: Gap | None = None
    od: Length | None = None
    finish: Name | None = None
    what: Name | None = None
    state: Name | None = None
    limit: Name | None = None
    measured: Name | None = None


class Exhaust(Entry):
    """``[[exhausts]]``: a run made of tubes of this job, of points, or of a length; the size of a pipe, a joint,
    its outlet, or the ignition beside it.
    """

    name: Name
    where: Text | None = None
    kind: Annotated[str, one_of(*WHAT)] | None = None
    tubes: tuple[Name, ...] = ()
    points: tuple[Point, ...] = ()
    radius: Length | None = None
    length: Length | None = None
    od: Length | None = None
    wall: Wall | None = None
    material: Name | None = None
    hot: Temperature | None = None
    expansion: StatedExpansion | None = None
    cold_end: StatedTemperature | None = None
    fixed: Gap | None = None
    flex: ExhaustFlex | None = None
    pressure: Stress | None = None
    hangers: tuple[ExhaustHanger, ...] = ()
    masses: tuple[ExhaustMass, ...] = ()
    gaps: tuple[ExhaustGap, ...] = ()
    hot_finish: Name | None = None
    air: Name | None = None
    soak_air: Name | None = None
    jurisdiction: Name | None = None
    power: Name | None = None
    displacement: Name | None = None
    speed: Name | None = None
    pipes: Name | None = None
    gas: Name | None = None
    back_pressure: Name | None = None
    joint: Name | None = None
    socket: Name | None = None
    overlap: Name | None = None
    angle: Name | None = None
    tried: Name | None = None
    clamp: Name | None = None
    maker_gap: Name | None = None
    gap: Name | None = None
    reach: Name | None = None
    old_reach: Name | None = None
    heat_range: Name | None = None
    lead: Name | None = None
    timing_before: Name | None = None
    timing_after: Name | None = None
    notes: Text | None = None


STARTER = """\
#[[exhausts]]                           # a run of exhaust, or the size of its pipe
#name = "EXAMPLE left run"
#where = "collector to tail pipe"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#kind = "run"                           # "run", "pipe" (its size by the engine), "joint", "outlet" or "ignition"
#tubes = ["exhaust over the axle"]      # the tubes of this job that it is made of, from the engine on
#points = [["0 in", "0 in", "0 in"], ["60 in", "0 in", "0 in"]]  # or its path: rearward, right, up
#radius = "3-3/4 in"                    # bend radius of that path
#length = "108 in"                      # or its length along the middle line alone
#od = "2-1/2 in"                        # of the pipe, where the tubes do not say it
#wall = ".065 in"
#material = "aluminised steel"
#hot = "900 degF"                       # its metal at the hottest, all along
#fixed = "20 in"                        # where it is held so that it cannot move along; places are from the front end
#pressure = "2 psi"                     # in the pipe
#expansion = "17.3 um/(m*K)"            # of its metal, in place of the tables'; measured: "... by TOOL on 2026-11-20"
#cold_end = "10 degC"                   # what it grows from; else 20 degC
#hangers = [                            # each hanger: place, length from pin to pin, what it may carry
#  { at = "24 in", length = "3 in", limit = "40 lbf" },
#  { at = "66 in", length = "3 in", limit = "40 lbf" },
#]
#masses = [                             # what hangs on it besides the pipe
#  { what = "silencer", at = "80 in", mass = "12 lb" },
#]
#gaps = [                               # its neighbours and the gap when cold: floor, fuel tank, wire, tyre, ground ...
#  { to = "floor", at = "50 in", gap = "2 in" },
#  { to = "brake line", at = "40 in", gap = "2-1/2 in", od = "3/16 in", what = "DOT 4", state = "wet" },
#  { to = "wire", at = "60 in", gap = "3 in", od = "3 mm", finish = "0.8 to 0.95", limit = "125 degC", measured = "" },
#]                                      # for its heat: diameter, finish, what it is or its limit, as measured
#hot_finish = "0.7 to 0.9"              # emissivity of the pipe
#air = "40 to 60 degC"                  # air beside the neighbours
#soak_air = "60 to 90 degC"             # and after shut-down
#jurisdiction = "US Maryland"           # whose written rules
#power = "260 hp"                       # of the engine; with the next ones the size of the pipe
#displacement = "4.75 L"                # of the engine
#speed = "5500 rpm"                     # at that power
#pipes = "1"                            # equal pipes side by side
#gas = "1200 degF"                      # gas in the pipe
#back_pressure = "2 psi"                # that the engine maker allows
#joint = "slip joint"                   # or "sliding joint", "butt weld", "mitre", "collector", "sensor boss", "flange"
#socket = "2.52 in"                     # inside diameter of the socket
#overlap = "1-1/2 in"                   # of the pipe in it
#angle = "90 deg"                       # that a mitred bend turns in all
#clamp = "V-band"                       # that holds the joint
#tried = ""                             # how the joint was found tight
#maker_gap = "0.044 in"                 # of the plugs, as the engine maker says; beside headers:
#gap = "0.044 in"                       # as set
#reach = "0.75 in"                      # of the new plugs
#old_reach = "0.75 in"                  # of those that came out
#heat_range = ""                        # as the engine maker says
#lead = "1-1/2 in"                      # from the nearest lead to the pipe
#timing_before = "10 deg"               # before the headers came off
#timing_after = "10 deg"                # with them on, at the same speed
#notes = ""
#[exhausts.flex]                        # the flexible section
#at = "4 in"                            # where it begins
#length = "6 in"
#kind = "bellows"                       # "bellows" or "hose"
#travel = "3/4 in"                      # by its maker
#rate = "150 lbf/in"                    # its spring rate, by its maker
#area = "5 in**2"                       # its effective area, by its maker
"""

KINDS = {"exhausts": Kind(Exhaust, no_faults, STARTER)}
