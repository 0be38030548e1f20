"""A tube of a job: its shape, what it must clear and what it carries, as checked, frozen tables."""

from typing import Annotated, Any

from gaugeblock.errors import InputError
from gaugeblock.job import form, values
from gaugeblock.job.model import Move
from gaugeblock.job.part import (
    BendAngle,
    Count,
    Direction,
    Entry,
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
    StatedStress,
    Text,
    Torque,
    Turn,
    YesNo,
    one_of,
)
from gaugeblock.tubes.keys import is_gauge
from gaugeblock.units import Measure


def _wall(value: object) -> Measure | str:
    """A wall: a length, or a gauge number as words, which the tables turn into one (``11 BWG``)."""
    try:
        return values.wall(value)
    except InputError:
        if isinstance(value, str) and is_gauge(value):
            return values.plain_text(value, values.NAME_LIMIT)
        raise


def _bump(value: object) -> Measure:
    """A bump factor: a pure number, with or without quotes; one in percent is kept, and asked about."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = str(value)
    return values.measure(value, "ratio")


BumpFactor = Annotated[Measure, _bump]
TubeWall = Annotated[Measure | str, _wall]
READS = ("1/32 in", "1/16 in", "decimal", "mm")
SHAPES = ("clear", "single", "offset", "kick_up", "saddle", "template", "bends", "points")
DATUMS = ("centre", "start", "end")
MEASURED_TO = ("centre line", "inside")


class Bend(Part):
    """One bend of a tube: the straight before it, its angle and radius, the turn of the tube since the bend before."""

    straight: Gap | None = None
    angle: BendAngle | None = None
    radius: Length | None = None
    turn: Turn | None = None


class Clear(Part):
    """A kick-up from what it must clear: a box (width), or a round pipe (od), its place along the span, the gap wanted.

    ``spacing`` makes it two such pipes side by side, middle to middle; then ``at`` is half-way between them.
    """

    name: Name | None = None
    width: Length | None = None
    od: Length | None = None
    spacing: Length | None = None
    height: Length | None = None
    at: Length | None = None
    span: Length | None = None
    gap: Gap | None = None
    angle: BendAngle | None = None
    second_foot_up: Place | None = None
    moves: tuple[Move, ...] = ()

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``od 2-1/2 in, spacing 3 in, height 2 in, at 18 in, span 36 in, gap 3/4 in, angle 45 deg``."""
        return form.shape("clear", text)


class Single(Part):
    """One bend between two legs, measured end to apex."""

    first: Length | None = None
    second: Length | None = None
    angle: BendAngle | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``first 18 in, second 18 in, angle 80 deg``."""
        return form.shape("single", text)


class Offset(Part):
    """Two equal bends, opposite ways; ``before`` and ``after`` are the straights at the ends."""

    rise: Length | None = None
    angle: BendAngle | None = None
    before: Gap | None = None
    after: Gap | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``rise 6 in, angle 45 deg, before 8 in, after 8 in``."""
        return form.shape("offset", text)


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

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``flat 6 in, rise 5 in, angle 45 deg, foot 8 in``."""
        return form.shape("kick_up", text)


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
    """Spare length at each end, cut off after bending; one length is of each end."""

    start: Gap | None = None
    end: Gap | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """One length, of each end."""
        return {"start": text, "end": text}


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
    bump_factor: BumpFactor | None = None
    torque: Torque | None = None
    mount_spacing: Length | None = None
    feet: Annotated[str, one_of("pinned", "fixed")] | None = None
    feet_in: Gap | None = None
    yield_share: Share | None = None


class TubeSection(Part):
    """A straight piece of the tube that is twisted: its length, and the torque on it."""

    length: Length | None = None
    torque: Torque | None = None

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``length 30 in, torque 200 lbf*ft``."""
        return form.shape("section", text)


class TubeBolts(Part):
    """Bolts through the tube: clamp load of one, tube under the washer or bracket, sleeve, slots, friction."""

    clamp_load: Force | None = None
    width: Length | None = None
    sleeve: YesNo | None = None
    slots: YesNo | None = None
    friction: Ratio | None = None
    count: Count | None = None


class Cope(Part):
    """An end that is cut to fit another tube: that tube's diameter, the angle between the two, how far their axes
    miss.
    """

    end: Annotated[str, one_of("start", "end")]
    onto: Length
    angle: BendAngle
    offset: Place | None = None


class Mitre(Part):
    """A corner that is cut and welded: its angle; with a radius and joints, pie cuts."""

    angle: BendAngle
    radius: Length | None = None
    joints: Count | None = None


class Tube(Entry):
    """``[[tubes]]``: a tube to be bent; its shape is given in one of eight ways, ``clear`` to ``points``."""

    name: Name
    where: Text | None = None
    material: Name | None = None
    product: Name | None = None
    spec: Name | None = None
    condition: Name | None = None
    yield_strength: StatedStress | None = None
    tensile_strength: StatedStress | None = None
    modulus: StatedStress | None = None
    shear_modulus: StatedStress | None = None
    od: Length | None = None
    wall: TubeWall | None = None
    method: Name | None = None
    die: Name | None = None
    radius: Length | None = None
    measured_to: Annotated[str, one_of(*MEASURED_TO)] | None = None
    maker_radius: Length | None = None
    maker_source: Text | None = None
    diameters: tuple[Length, ...] = ()
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
    wall_needed: TubeWall | None = None
    gap: Gap | None = None
    moves: tuple[Move, ...] = ()
    collars: tuple[Collar, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    removal: Removal | None = None
    section: TubeSection | None = None
    load: TubeLoad | None = None
    bolts: TubeBolts | None = None
    copes: tuple[Cope, ...] = ()
    mitres: tuple[Mitre, ...] = ()
    notes: Text | None = None
