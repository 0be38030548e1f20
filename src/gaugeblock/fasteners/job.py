"""``[[fasteners]]``: a threaded fastener, or a part that has its own figure."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import Annotated, Any

from gaugeblock.fasteners.bolt import OWN
from gaugeblock.fasteners.maker import BACK, Stages, read_stages
from gaugeblock.fasteners.own import read_modulus, read_own, read_preload, read_strength
from gaugeblock.fasteners.read import CONFIRMED, crow_foot
from gaugeblock.job import values
from gaugeblock.job.checks import Fault, given, rising
from gaugeblock.job.kind import Kind
from gaugeblock.job.locate import Path
from gaugeblock.job.part import (
    Count,
    Entry,
    Force,
    Gap,
    Length,
    Name,
    Part,
    Service,
    Share,
    Text,
    Torque,
    Turn,
    Wrench,
    YesNo,
    one_of,
)
from gaugeblock.known import Known

_EITHER = "give part and size, or thread and grade"
_PARTS = ("size", "seat", "material")


def _stages(value: object) -> Stages:
    """A maker's figure: a torque, a range, or its stages in one text."""
    return read_stages(values.plain_text(value, values.NAME_LIMIT), "")


def _known(value: object, read: Callable[[str, str], Known]) -> Known:
    """What somebody states: a value or its range, and with what it was measured."""
    return read(values.plain_text(value, values.NAME_LIMIT), "")


def _nut_factor(text: str, where: str) -> Known:
    del where
    got = read_own({"nut_factor": text}).nut_factor
    assert got is not None
    return got


NutFactor = Annotated[Known, partial(_known, read=_nut_factor)]
Preload = Annotated[Known, partial(_known, read=read_preload)]
Strength = Annotated[Known, partial(_known, read=read_strength)]
Modulus = Annotated[Known, partial(_known, read=read_modulus)]
MakerText = Annotated[Stages, _stages]
Option = Annotated[str, one_of(*CONFIRMED)]


def _crow_foot(text: str) -> dict[str, str]:
    """``2 in on 12 in at 90 deg`` as keys of the table."""
    got = crow_foot(text)
    assert got is not None
    angle = {"angle": got.angle.text} if got.angle is not None else {}
    return {"length": got.arm.text, "wrench_length": got.wrench.text, **angle}


class MakerTorque(Part):
    """The maker's own tightening torque: it governs, and is printed as the maker's."""

    torque: MakerText | None = None
    low: Torque | None = None
    high: Torque | None = None
    condition: Name | None = None
    new_bolts: YesNo | None = None
    source: Text | None = None
    place: Text | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """Its torque alone, its range or its stages."""
        return {"torque": text}


class Adapter(Part):
    """A crow-foot between wrench and fastener: its length, the wrench's, the angle between them (0 is straight on)."""

    length: Length | None = None
    wrench_length: Length | None = None
    angle: Turn | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``2 in on 12 in at 90 deg``."""
        return _crow_foot(text)


class Clamped(Part):
    """What the bolt clamps: length of the grip, plain shank inside it, the metal or its modulus, the outside load."""

    length: Length | None = None
    shank: Gap | None = None
    metal: Name | None = None
    modulus: Modulus | None = None
    bolt_modulus: Modulus | None = None
    load: Force | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """Its length alone."""
        return {"length": text}


class Fastener(Entry):
    """``[[fasteners]]``: a threaded fastener (thread and grade), or a part that has its own figure (part and size)."""

    name: Name
    where: Text | None = None
    thread: Name | None = None
    grade: Name | None = None
    condition: Name | None = None
    part: Name | None = None
    size: Name | None = None
    seat: Name | None = None
    material: Name | None = None
    service: Service = "vehicle"
    into: Name | None = None
    insert: YesNo | None = None
    engagement: Length | None = None
    tapped_strength: Strength | None = None
    nut_factor: NutFactor | None = None
    preload: Preload | None = None
    proof_strength: Strength | None = None
    yield_strength: Strength | None = None
    tensile_strength: Strength | None = None
    grip: Clamped | None = None
    joint: Annotated[str, one_of("reused", "permanent")] | None = None
    locknut: Name | None = None
    prevailing: Torque | None = None
    wanted: Torque | None = None
    count: Count | None = None
    order: Text | None = None
    passes: tuple[Share, ...] = ()
    retighten: Text | None = None
    wrench: Wrench | None = None
    adapter: Adapter | None = None
    maker: MakerTorque | None = None
    confirmed: tuple[Option, ...] = ()
    notes: Text | None = None


def faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    threaded = given(item, ("thread", "grade"))
    if given(item, ("part",)):
        for key in given(item, (*OWN, "grip")):
            yield Fault((*path, key), "belongs to a thread; a part has its own figure", "leave it out")
    if threaded and given(item, ("part",)):
        for key in threaded:
            yield Fault((*path, key), "a part has its own figure and takes no thread or grade", _EITHER)
    elif threaded:
        for key in given(item, _PARTS):
            yield Fault((*path, key), "belongs to a part; this item gives a thread or a grade", _EITHER)


def clashes(path: Path, item: Fastener) -> Iterator[Fault]:
    """The passes rise, and the maker's range; the maker's stages are the passes, and others would say otherwise; a
    torque and a preload are not wanted both, and the shank lies in the grip.
    """
    if item.preload is not None and item.wanted is not None:
        why = "a torque and a preload are wanted, and one follows from the other"
        yield Fault((*path, "preload"), why, "leave out one of the two")
    grip = item.grip
    length, shank = (grip.length, grip.shank) if grip is not None else (None, None)
    if length is not None and shank is not None and shank.to("m") > length.to("m") * (1 + 1e-9):
        do = "measure the plain shank inside the grip alone"
        yield Fault((*path, "grip", "shank"), "longer than the grip that it lies in", do)
    before = 0.0
    for index, share in enumerate(item.passes):
        if share is None:
            break  # refused: told by the key itself
        if float(share.value) <= before:
            why = "not more than the pass before it"
            yield Fault((*path, "passes", index), why, "write the passes in rising order")
        before = float(share.value)
    maker = item.maker
    if maker is None:
        return
    steps = () if maker.torque is None else maker.torque.steps
    one = steps[0] if len(steps) == 1 and steps[0].kind != BACK else None
    middle = one.low if one is not None and one.low == one.high else None
    yield from rising((*path, "maker"), {"low": maker.low, "torque": middle, "high": maker.high})
    if len(steps) > 1 and item.passes:
        yield Fault((*path, "passes"), "the maker's stages are the passes", "leave the passes out")


STARTER = """\
[[fasteners]]                           # one a fastener, or a set of alike ones
name = "EXAMPLE bracket bolts"          # your own name for it; each name once
where = "steering gear to frame"        # where it is on the vehicle
#step = 1                               # its place in the order of the work, where the usual order is not yours
thread = "3/8-16 UNC"                   # size and thread, e.g. "1/2-20 UNF", "M10x1.5"
grade = "SAE J429 5"                    # standard and grade, e.g. "ISO 898-1 8.8"
condition = "dry"                       # thread as it is tightened: "dry", "oiled", a paste
into = ""                               # what the thread goes into, e.g. "aluminium", "cast iron", "steel"
#insert = "yes"                         # "yes" or "no": whether the hole has a steel thread insert
engagement = ""                         # length of thread in it, e.g. "5/8 in"
#tapped_strength = "30 ksi"             # tensile strength of that material, if you know it
#nut_factor = "0.16 (0.14 to 0.18) by load cell 2 on 2026-11-20"   # friction of this lot, as tried; typed: "0.16"
#proof_strength = "85 ksi"              # the bolt's own, in place of the grade's
#yield_strength = "92 ksi"              # proof is taken as 0.85 of it where no proof strength is known
#tensile_strength = "120 ksi"           # the bolt's own
#joint = "reused"                       # "reused" or "permanent"
locknut = ""                            # e.g. "nylon insert", "all-metal"
#prevailing = "20 lbf*in"               # drag of the locknut as measured on the way down
#wanted = "30 lbf*ft"                   # a torque that you want at the fastener, in place of the table's
#service = "vehicle"                    # leave it out for a road vehicle
count = 4                               # how many
order = ""                              # tightening order, e.g. "crosswise from the middle"
passes = []                             # shares of the final torque, rising, e.g. ["50 %", "80 %", "100 %"]
retighten = ""                          # after heat or after miles, e.g. "cold, after the first heat"
#wrench = "10 to 80 lbf*ft by 1"        # the wrench for this one
#adapter = { length = "2 in", wrench_length = "18 in", angle = "0 deg" }   # crow-foot; 0 deg points straight on
#confirmed = ["maker"]                  # keys that look odd here and were read twice, e.g. "maker", "prevailing"
notes = ""
#[fasteners.maker]                      # the part maker's own figure governs, and is printed as the maker's
#torque = "30 lbf*ft"                   # the figure, or a range, or stages: "20 N*m, then 22 N*m + 90 deg"
#low = "28 lbf*ft"                      # when the maker gives a range
#high = "32 lbf*ft"                     # the upper end of it
#condition = "oiled"                    # threads that the maker's figure is for
#new_bolts = "yes"                      # when the maker wants new bolts each time
#source = "maker's data sheet, issue 3" # the paper it stands in
#place = "page 2"                       # where in it

#[[fasteners]]                          # a part that has its own figure: plug, line nut, hose clamp, drain plug
#name = "EXAMPLE spark plugs"
#part = "spark plug"                    # what it is, instead of a thread and grade
#size = "14 mm"                         # its size as it is sold
#seat = "gasket seat"                   # how it seals
#material = "aluminium head"            # what it goes into
#count = 4

#[[fasteners]]                          # a bolt tightened to a preload, with what it clamps
#name = "EXAMPLE stretched bolts"
#thread = "M10x1.5"
#grade = "ISO 898-1 10.9"
#condition = "oiled"
#preload = "70 %"                       # the preload wanted: share of proof, a force "25 kN", a stretch "0.1 mm"
#[fasteners.grip]                       # what it clamps: its stretch and the joint's stiffness follow
#length = "40 mm"                       # of all that is clamped, washers too
#shank = "20 mm"                        # plain shank inside that
#metal = "steel"                        # what is clamped
#modulus = "207 GPa"                    # of elasticity of what is clamped, in place of the table's
#bolt_modulus = "207 GPa"               # the bolt's own
#load = "6 kN"                          # outside load that pulls the joint apart, on one bolt
"""

KINDS = {"fasteners": Kind(Fastener, faults, STARTER, clashes)}
