"""``[[tubes]]``: a tube to be bent, its shape, what it must clear and what it carries."""

from collections.abc import Iterator
from typing import Annotated, Any

from gaugeblock.job.checks import Fault, dies_of, folded, given, names, tables
from gaugeblock.job.kind import Kind
from gaugeblock.job.locate import Path
from gaugeblock.job.model import Move
from gaugeblock.job.part import (
    BendAngle,
    Count,
    Direction,
    Force,
    Gap,
    Length,
    Mass,
    Name,
    Part,
    Place,
    Point,
    Ratio,
    Service,
    Share,
    Size,
    Text,
    Torque,
    Turn,
    Wall,
    YesNo,
    one_of,
)
from gaugeblock.job.values import is_blank, shown

READS = ("1/32 in", "1/16 in", "decimal", "mm")
_POOL = 100  # names among which a near one is sought
_SHAPES = ("clear", "single", "offset", "kick_up", "saddle", "template", "bends", "points")
_AXES = {"forward": 0, "rearward": 0, "left": 1, "right": 1, "up": 2, "down": 2}


class Bend(Part):
    """One bend of a tube: the straight before it, its angle and radius, the turn of the tube since the bend before."""

    straight: Gap | None = None
    angle: BendAngle | None = None
    radius: Length | None = None
    turn: Turn | None = None


class Clear(Part):
    """A kick-up from what it must clear: a box (width), or a round pipe (od), its place along the span, the gap asked."""

    name: Name | None = None
    width: Length | None = None
    od: Length | None = None
    height: Length | None = None
    at: Length | None = None
    span: Length | None = None
    gap: Gap | None = None
    angle: BendAngle | None = None
    second_foot_up: Place | None = None
    moves: tuple[Move, ...] = ()


class Single(Part):
    """One bend between two legs, measured end to apex."""

    first: Length | None = None
    second: Length | None = None
    angle: BendAngle | None = None


class Offset(Part):
    """Two equal bends, opposite ways; ``before`` and ``after`` are the straights at the ends."""

    rise: Length | None = None
    angle: BendAngle | None = None
    before: Gap | None = None
    after: Gap | None = None


class Side(Part):
    """The second side of a kick-up that is not symmetrical; what is blank is as the first."""

    rise: Length | None = None
    angle: BendAngle | None = None
    foot: Gap | None = None


class KickUp(Part):
    """Foot, up, flat, down, foot: the flat, or the width over all."""

    flat: Gap | None = None
    width: Length | None = None
    rise: Length | None = None
    angle: BendAngle | None = None
    foot: Gap | None = None
    second: Side | None = None


class Template(Part):
    """Read off a bent rod: apex-to-apex lengths, angles, and the turn before each bend."""

    lengths: tuple[Length, ...] = ()
    angles: tuple[BendAngle, ...] = ()
    turns: tuple[Turn, ...] = ()


class TubePlace(Part):
    """Where a tube starts in the vehicle, which way it runs, and which way its first bend goes."""

    start: Point | None = None
    runs: Direction | None = None
    bends: Direction | None = None


class Trim(Part):
    """Spare length at each end, cut off after bending."""

    start: Gap | None = None
    end: Gap | None = None


class Collar(Part):
    """A flange or clamp wider than its tube: its middle from the tube's start, its length, its diameter."""

    at: Gap
    length: Length
    od: Length


class Box(Part):
    """A box by its middle and its sizes along the vehicle (rearward, right, up)."""

    middle: Point
    size: Size


class Plane(Part):
    """Everything behind a plane: a point of it, and which way the free side lies."""

    point: Point
    free: Direction


class Obstacle(Part):
    """What must not be touched: a pipe (points and od), a box or a plane; its movement, collars, and its own gap."""

    name: Name
    points: tuple[Point, ...] = ()
    od: Length | None = None
    radius: Length | None = None
    box: Box | None = None
    plane: Plane | None = None
    gap: Gap | None = None
    moves: tuple[Move, ...] = ()
    collars: tuple[Collar, ...] = ()


class Removal(Part):
    """A part that must come out past the tube: its box, and how far it is moved in a straight line."""

    name: Name
    middle: Point
    size: Size
    travel: Point


class TubeLoad(Part):
    """What a tube carries, as stated: mass and its place, bump factor, torque reaction, how the feet hold."""

    mass: Mass | None = None
    at: Name | None = None
    bump_factor: Ratio | None = None
    torque: Torque | None = None
    mount_spacing: Length | None = None
    feet: Annotated[str, one_of("pinned", "fixed")] | None = None
    feet_in: Gap | None = None
    yield_share: Share | None = None


class TubeBolts(Part):
    """Bolts through the tube: clamp load of one, tube under the washer or bracket, sleeve, slots, friction."""

    clamp_load: Force | None = None
    width: Length | None = None
    sleeve: YesNo | None = None
    slots: YesNo | None = None
    friction: Ratio | None = None
    count: Count | None = None


class Cope(Part):
    """An end that is cut to fit another tube: that tube's diameter, the angle between the two, how far their axes miss."""

    end: Annotated[str, one_of("start", "end")]
    onto: Length
    angle: BendAngle
    offset: Place | None = None


class Mitre(Part):
    """A corner that is cut and welded: its angle; with a radius and joints, pie cuts."""

    angle: BendAngle
    radius: Length | None = None
    joints: Count | None = None


class Tube(Part):
    """``[[tubes]]``: a tube to be bent; its shape is given in one of eight ways, ``clear`` to ``points``."""

    name: Name
    where: Text | None = None
    material: Name | None = None
    product: Name | None = None
    spec: Name | None = None
    condition: Name | None = None
    od: Length | None = None
    wall: Wall | None = None
    method: Name | None = None
    die: Name | None = None
    radius: Length | None = None
    service: Service = "vehicle"
    count: Count | None = None
    clear: Clear | None = None
    single: Single | None = None
    offset: Offset | None = None
    kick_up: KickUp | None = None
    saddle: Offset | None = None
    template: Template | None = None
    bends: tuple[Bend, ...] = ()
    end: Gap | None = None
    points: tuple[Point, ...] = ()
    datum: Text | None = None
    place: TubePlace | None = None
    marks_from: Annotated[str, one_of("centre", "start", "end")] | None = None
    trim: Trim | None = None
    reads: Annotated[str, one_of(*READS)] | None = None
    tolerance: Length | None = None
    wall_needed: Wall | None = None
    gap: Gap | None = None
    moves: tuple[Move, ...] = ()
    collars: tuple[Collar, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    removal: Removal | None = None
    load: TubeLoad | None = None
    bolts: TubeBolts | None = None
    copes: tuple[Cope, ...] = ()
    mitres: tuple[Mitre, ...] = ()
    notes: Text | None = None


def faults(path: Path, item: dict[str, Any], job: dict[str, Any]) -> Iterator[Fault]:
    yield from _shape(path, item)
    yield from _obstacles(path, item)
    die = item.get("die")
    if not isinstance(die, str) or is_blank(die):
        return
    if given(item, ("radius",)):
        why = "both a die and a radius are given"
        yield Fault((*path, "radius"), why, "give the die, or the radius", (*path, "die"))
    named = dies_of(job)
    known = {folded(name): name for name in named}
    if folded(die) not in known:
        from difflib import get_close_matches

        names = [shown(name) for name in list(known.values())[:_POOL]]
        near = tuple(get_close_matches(die[:80], names, n=5, cutoff=0.4) or names)
        why = f"{shown(die)}: no die of this name in [[shop.dies]]"
        yield Fault((*path, "die"), why, "use the name of a die, or add the die", (), near)


def _shape(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    """One shape a tube, and each shape in itself."""
    shapes = [key for key in _SHAPES if item.get(key)]
    for key in shapes[1:]:
        why = f"both {shapes[0]} and {key} give the shape"
        yield Fault((*path, key), why, "keep one of them", (*path, shapes[0]))
    for key, pair in (("kick_up", ("flat", "width")), ("clear", ("width", "od"))):
        table = item.get(key)
        if isinstance(table, dict) and len(given(table, pair)) == 2:
            why = f"both {pair[0]} and {pair[1]} are given"
            yield Fault((*path, key, pair[1]), why, f"give the {pair[0]}, or the {pair[1]}", (*path, key, pair[0]))
    rod = item.get("template")
    if isinstance(rod, dict):
        count = {k: len(rod[k]) for k in ("lengths", "angles", "turns") if isinstance(rod.get(k), list)}
        angles = count.get("angles")
        for key, more in (("lengths", 1), ("turns", 0)):
            if angles is not None and key in count and count[key] != angles + more:
                why = f"{count[key]} {key} for {angles} angles"
                do = "a template has one turn a bend, and one length more than bends"
                yield Fault((*path, "template", key), why, do, (*path, "template", "angles"))
    yield from _enough(path, item.get("points"), "points", item.get("points") is not None)
    place = item.get("place")
    ways = [_AXES.get(str(place.get(k))) for k in ("runs", "bends")] if isinstance(place, dict) else [None]
    if ways[0] is not None and ways[0] == ways[-1]:
        do = "give a direction across the tube"
        yield Fault((*path, "place", "bends"), "lies along the tube", do, (*path, "place", "runs"))


def _enough(path: Path, points: object, key: str, is_asked: bool) -> Iterator[Fault]:
    if is_asked and isinstance(points, list) and len(points) < 2:
        yield Fault((*path, key), f"{len(points)} of them; a path has two points at least", "give its points in order")


def _obstacles(path: Path, item: dict[str, Any]) -> Iterator[Fault]:
    """What an obstacle is: a pipe with its diameter, a box, or a plane."""
    yield from names(item, path, "obstacles")
    for where, thing in tables(item, path, "obstacles"):
        kinds = [key for key in ("points", "box", "plane") if thing.get(key)]
        if len(kinds) != 1:
            why = "neither points nor box nor plane" if not kinds else f"both {kinds[0]} and {kinds[1]}"
            yield Fault((*where, kinds[1]) if kinds else where, why, "give one: a pipe's points, a box or a plane")
        elif kinds == ["points"]:
            yield from _enough(where, thing["points"], "points", True)
            if not given(thing, ("od",)):
                yield Fault((*where, "points"), "a pipe without its od", 'add od = "2-1/2 in"')
            if isinstance(thing["points"], list) and len(thing["points"]) > 2 and not given(thing, ("radius",)):
                yield Fault((*where, "points"), "a bent pipe without its radius", "add the radius of its bends")
        else:
            for key in given(thing, ("od", "radius", "collars")):
                yield Fault(
                    (*where, key), f"belongs to a pipe, not to a {kinds[0]}", "leave it out", (*where, kinds[0])
                )


STARTER = """\
#[[tubes]]                              # one a tube to be bent; its shape is given in one of the ways below
#name = "EXAMPLE main hoop"
#where = "behind the seats"
#material = "1020"                      # steel or alloy
#product = "DOM"                        # how the tube was made
#spec = "ASTM A513"                     # what it was bought to
#condition = "as drawn"
#od = "1-3/4 in"
#wall = ".120 in"
#wall_needed = ".095 in"                # wall that must be left at the outside of a bend
#method = "rotary draw"                 # how it is bent
#die = "die A"                          # a name from [[shop.dies]]; or give a radius
#service = "vehicle"
#count = 1
#marks_from = "centre"                  # what marks are measured from: "centre", "start" or "end" of the tube
#reads = "1/32 in"                      # the tape: "1/32 in", "1/16 in", "decimal" or "mm"
#trim = { start = "1 in", end = "1 in" } # spare length at each end, cut off after bending
#tolerance = "1/16 in"                  # on the finished tube, for a bending shop
#end = "24 in"                          # straight after the last bend
#bends = [                              # in order: straight before it, angle, turn of the tube since the bend before
#  { straight = "24 in", angle = "90 deg" },
#  { straight = "20 in", angle = "90 deg", turn = "0 deg", radius = "6 in" },
#]
#copes = [{ end = "end", onto = "1-3/4 in", angle = "60 deg", offset = "0 in" }]   # ends cut to fit another tube
#mitres = [{ angle = "90 deg", radius = "4 in", joints = 3 }]   # corners cut and welded; a radius and joints: pie cuts
#notes = ""

#[[tubes]]                              # bent to a radius, without a die of the list
#name = "EXAMPLE hand rail"
#radius = "7 in"                        # centre-line radius
#single = { first = "12 in", second = "20 in", angle = "60 deg" }   # one bend: legs from end to apex

#[[tubes]]                              # from what it must clear: the tube goes over it and lands on its feet
#name = "EXAMPLE crossmember"
#datum = "middle of the frame at the gearbox mount"   # where rearward, right and up are measured from
#place = { start = ["0 in", "-18 in", "0 in"], runs = "right", bends = "up" }   # its first end, its run, its first bend
#gap = "3/4 in"                         # gap asked of everything round it
#moves = [                              # how far the tube itself moves, by direction
#  { why = "heat", up = "1 mm", down = "0 in", left = "0 in", right = "0 in", forward = "0 in", rearward = "0 in" },
#]
#collars = [{ at = "2 in", length = "1/4 in", od = "3 in" }]   # flanges and clamps wider than the tube
#[tubes.clear]
#name = "exhaust pipe"
#od = "2-1/2 in"                        # a round pipe; or width = "8 in" for something flat on top
#height = "2 in"                        # of its centre (flat: its top) over the centre line of the first foot
#at = "18 in"                           # its middle, from the first end
#span = "36 in"                         # from end to end
#gap = "3/4 in"
#angle = "45 deg"                       # of the bends
#second_foot_up = "0 in"                # how much higher the second foot stands
#moves = [
#  { why = "rock", left = "6 mm", right = "6 mm", up = "3 mm", down = "0 in", forward = "0 in", rearward = "0 in" },
#]
#[[tubes.obstacles]]                    # what must not be touched: a pipe along its points
#name = "propeller shaft"
#points = [["-4 in", "0 in", "9 in"], ["10 in", "0 in", "9 in"], ["30 in", "2 in", "8 in"]]   # rearward, right, up
#od = "3 in"
#radius = "6 in"                        # of its bends, where it has any
#gap = "1/2 in"                         # its own, where it is another
#collars = [{ at = "3 in", length = "1 in", od = "4 in" }]
#moves = [
#  { why = "bump", up = "3 in", down = "2 in", left = "0 in", right = "0 in", forward = "0 in", rearward = "1 in" },
#]
#[[tubes.obstacles]]
#name = "battery tray"
#box = { middle = ["6 in", "10 in", "8 in"], size = ["7 in", "9 in", "8 in"] }   # sizes rearward, right, up
#[[tubes.obstacles]]
#name = "road"
#plane = { point = ["0 in", "0 in", "-9 in"], free = "up" }   # and which side is free
#[tubes.removal]                        # a part that must come out past the tube
#name = "gearbox"
#middle = ["-10 in", "0 in", "9 in"]    # of the box round it
#size = ["18 in", "9 in", "7 in"]       # of that box: rearward, right, up
#travel = ["-8 in", "0 in", "0 in"]     # how it is moved out, in a straight line
#[tubes.load]                           # what it carries; a screening figure
#mass = "90 kg"                         # what rests on it
#at = "centre"                          # where: "centre", or a length from its first end, measured level
#bump_factor = "3"                      # times its weight, as you state it
#torque = "200 lbf*ft"                  # torque reaction
#mount_spacing = "6 in"                 # between two mounts that take it
#feet = "pinned"                        # "pinned" or "fixed"
#feet_in = "1-1/2 in"                   # how far inside the ends the feet hold
#yield_share = "50 %"                   # share of the yield strength that you allow
#[tubes.bolts]                          # bolts through the tube
#clamp_load = "8000 lbf"                # of one bolt, from its own sheet
#width = "1-1/2 in"                     # tube under the washer or bracket
#sleeve = "no"                          # "yes" with a crush sleeve
#slots = "yes"                          # slotted holes
#friction = "0.15"                      # between the clamped faces
#count = 4

#[[tubes]]
#name = "EXAMPLE offset pipe"
#offset = { rise = "6 in", angle = "45 deg", before = "8 in", after = "8 in" }   # straights before and after

#[[tubes]]
#name = "EXAMPLE kick-up"
#kick_up = { flat = "6 in", rise = "5 in", angle = "45 deg", foot = "8 in" }   # both sides alike

#[[tubes]]
#name = "EXAMPLE kick-up by its width"
#[tubes.kick_up]
#width = "40 in"                        # over all, for the flat
#rise = "5 in"                          # centre line to centre line
#foot = "8 in"                          # straight at the foot
#second = { rise = "4 in", angle = "30 deg", foot = "9 in" }   # the other side, where it is not the same

#[[tubes]]
#name = "EXAMPLE over a flat thing"
#clear = { width = "8 in", height = "3 in", at = "20 in", span = "42 in", gap = "1 in", angle = "45 deg" }   # a box

#[[tubes]]
#name = "EXAMPLE saddle"
#saddle = { rise = "3 in", angle = "30 deg", before = "8 in", after = "8 in" }   # three bends over one thing

#[[tubes]]
#name = "EXAMPLE read off a bent rod"
#[tubes.template]
#lengths = ["10 in", "6 in", "12 in"]   # apex to apex, ends included
#angles = ["45 deg", "30 deg"]          # of each bend
#turns = ["0 deg", "90 deg"]            # before each bend, clockwise as seen from its start; the first is 0

#[[tubes]]
#name = "EXAMPLE by its points"
#points = [["0 in", "-18 in", "4 in"], ["30 in", "-18 in", "4 in"]]  # or its path: rearward, right, up of datum
"""

KINDS = {"tubes": Kind(Tube, faults, STARTER)}
