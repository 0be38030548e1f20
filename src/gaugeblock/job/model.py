"""The job: what the owner, the vehicle and each item are, in checked, frozen models. Blank text is a missing key.

Keys of refdata (threads, grades, materials ...) stay text here; the hooks of ``read`` look them up.
"""

from __future__ import annotations

from functools import partial
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from gaugeblock.errors import InputError
from gaugeblock.job import values
from gaugeblock.tables.catalogue import SERVICES

STATUSES = ("draft", "for build", "as built")
LINE_SERVICES = ("brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission")
READS = ("1/32 in", "1/16 in", "decimal", "mm")
DIRECTIONS = ("forward", "rearward", "left", "right", "up", "down")
READ_BY = ("crayon", "paint", "thermocouple", "infra-red")

Name = Annotated[str, BeforeValidator(partial(values.plain_text, limit=values.NAME_LIMIT))]
Text = Annotated[str, BeforeValidator(values.plain_text)]
Length = Annotated[str, BeforeValidator(partial(values.measure, dim="length"))]
Gap = Annotated[str, BeforeValidator(partial(values.measure, dim="length", least="zero"))]
Torque = Annotated[str, BeforeValidator(partial(values.measure, dim="torque"))]
Stress = Annotated[str, BeforeValidator(partial(values.measure, dim="stress"))]
Temperature = Annotated[str, BeforeValidator(partial(values.measure, dim="temperature"))]
Turn = Annotated[str, BeforeValidator(partial(values.measure, dim="angle", least="any"))]
Place = Annotated[str, BeforeValidator(partial(values.measure, dim="length", least="any"))]
Mass = Annotated[str, BeforeValidator(partial(values.measure, dim="mass"))]
Force = Annotated[str, BeforeValidator(partial(values.measure, dim="force"))]
Ratio = Annotated[str, BeforeValidator(partial(values.measure, dim="ratio"))]
BendAngle = Annotated[str, BeforeValidator(values.bend_angle)]
Share = Annotated[str, BeforeValidator(values.share)]
Wrench = Annotated[str, BeforeValidator(values.wrench)]
IssueDate = Annotated[str, BeforeValidator(values.issue_date)]
AnyFigure = Annotated[str, BeforeValidator(values.figure_text)]
Finding = Annotated[str, BeforeValidator(values.finding)]
Count = Annotated[int, Field(ge=1, le=values.COUNT_LIMIT)]


def _one_of(*choices: str) -> BeforeValidator:
    return BeforeValidator(partial(values.choice, choices=choices))


Service = Annotated[str, _one_of(*SERVICES)]
Direction = Annotated[str, _one_of(*DIRECTIONS)]
YesNo = Annotated[str, _one_of("yes", "no")]


def _point(value: Any, least: str) -> tuple[str, str, str]:
    """Three lengths: rearward, right and up."""
    if not isinstance(value, list | tuple) or len(value) != 3:
        what = f"{len(value)} values" if isinstance(value, list | tuple) else values.kind_of(value)
        why = f"three lengths are wanted (rearward, right, up), not {what}"
        raise InputError("value", "", why, (), 'write it as ["0 in", "-18 in", "6 in"]')
    a, b, c = (values.measure(v, "length", least) for v in value)
    return (a, b, c)


Point = Annotated[tuple[str, str, str], BeforeValidator(partial(_point, least="any")), Field(strict=False)]
Size = Annotated[tuple[str, str, str], BeforeValidator(partial(_point, least="positive")), Field(strict=False)]
# TOML gives lists, a frozen model holds tuples; what is inside stays strict.
_as_tuple = Field(strict=False)


class Part(BaseModel):
    """What all tables of a job share: unknown keys refused, frozen, blank text dropped."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)

    @model_validator(mode="before")
    @classmethod
    def _drop_blanks(cls, raw: Any) -> Any:
        if not isinstance(raw, dict):
            return raw
        known = {field.alias or name for name, field in cls.model_fields.items()}
        return {key: value for key, value in raw.items() if key not in known or not values.is_blank(value)}


class Title(Part):
    """``[job]``: the title block."""

    owner: Name | None = None
    identification: Name | None = None
    vehicle: Text | None = None
    revision: Name | None = None
    issued: IssueDate | None = None
    status: Annotated[str, _one_of(*STATUSES)] | None = None
    notes: Text | None = None


class TestBend(Part):
    """A bend made on the die to learn this lot's springback: angle under load, angle when let go."""

    __test__ = False  # not a test class, whatever its name begins with

    pulled: BendAngle | None = None
    released: BendAngle | None = None
    material: Name | None = None
    wall: Length | None = None
    notes: Text | None = None


class Die(Part):
    """``[[shop.dies]]``: a bending die and what the shop measured on it."""

    name: Name
    radius: Length | None = None
    od: Length | None = None
    start_mark: Place | None = None
    grip: Gap | None = None
    between: Gap | None = None
    notes: Text | None = None
    test_bends: Annotated[tuple[TestBend, ...], _as_tuple] = ()


class Shop(Part):
    """``[shop]``: the tools the numbers are set with."""

    name: Name | None = None
    units: Annotated[str, _one_of("inch", "metric")] | None = None
    wrenches: Annotated[tuple[Wrench, ...], _as_tuple] = ()
    stock_length: Length | None = None
    kerf: Gap | None = None
    dies: Annotated[tuple[Die, ...], _as_tuple] = ()


class MakerTorque(Part):
    """The maker's own tightening torque: it governs, and is printed as the maker's."""

    torque: Torque | None = None
    low: Torque | None = None
    high: Torque | None = None
    source: Text | None = None
    place: Text | None = None


class Adapter(Part):
    """A crow-foot between wrench and fastener: its length, the wrench's, the angle between them (0 is straight on)."""

    length: Length | None = None
    wrench_length: Length | None = None
    angle: Turn | None = None


class Fastener(Part):
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
    engagement: Length | None = None
    tapped_strength: Stress | None = None
    joint: Annotated[str, _one_of("reused", "permanent")] | None = None
    locknut: Name | None = None
    prevailing: Torque | None = None
    count: Count | None = None
    order: Text | None = None
    passes: Annotated[tuple[Share, ...], _as_tuple] = ()
    retighten: Text | None = None
    wrench: Wrench | None = None
    adapter: Adapter | None = None
    maker: MakerTorque | None = None
    notes: Text | None = None


class Bend(Part):
    """One bend of a tube: the straight before it, its angle and radius, the turn of the tube since the bend before."""

    straight: Gap | None = None
    angle: BendAngle | None = None
    radius: Length | None = None
    turn: Turn | None = None


class Move(Part):
    """How far a part moves from where it stands, by direction, and why: engine rock, bump, droop, hot growth."""

    why: Text | None = None
    forward: Gap | None = None
    rearward: Gap | None = None
    left: Gap | None = None
    right: Gap | None = None
    up: Gap | None = None
    down: Gap | None = None


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
    moves: Annotated[tuple[Move, ...], _as_tuple] = ()


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

    lengths: Annotated[tuple[Length, ...], _as_tuple] = ()
    angles: Annotated[tuple[BendAngle, ...], _as_tuple] = ()
    turns: Annotated[tuple[Turn, ...], _as_tuple] = ()


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
    points: Annotated[tuple[Point, ...], _as_tuple] = ()
    od: Length | None = None
    radius: Length | None = None
    box: Box | None = None
    plane: Plane | None = None
    gap: Gap | None = None
    moves: Annotated[tuple[Move, ...], _as_tuple] = ()
    collars: Annotated[tuple[Collar, ...], _as_tuple] = ()


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
    feet: Annotated[str, _one_of("pinned", "fixed")] | None = None
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

    end: Annotated[str, _one_of("start", "end")]
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
    wall: Length | None = None
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
    bends: Annotated[tuple[Bend, ...], _as_tuple] = ()
    end: Gap | None = None
    points: Annotated[tuple[Point, ...], _as_tuple] = ()
    datum: Text | None = None
    place: TubePlace | None = None
    marks_from: Annotated[str, _one_of("centre", "start", "end")] | None = None
    trim: Trim | None = None
    reads: Annotated[str, _one_of(*READS)] | None = None
    tolerance: Length | None = None
    wall_needed: Length | None = None
    gap: Gap | None = None
    moves: Annotated[tuple[Move, ...], _as_tuple] = ()
    collars: Annotated[tuple[Collar, ...], _as_tuple] = ()
    obstacles: Annotated[tuple[Obstacle, ...], _as_tuple] = ()
    removal: Removal | None = None
    load: TubeLoad | None = None
    bolts: TubeBolts | None = None
    copes: Annotated[tuple[Cope, ...], _as_tuple] = ()
    mitres: Annotated[tuple[Mitre, ...], _as_tuple] = ()
    notes: Text | None = None


class Line(Part):
    """``[[lines]]``: a fluid line and what is hot beside it; ``hose_class`` is the file's ``class``."""

    name: Name
    where: Text | None = None
    service: Annotated[str, _one_of(*LINE_SERVICES)] | None = None
    material: Name | None = None
    hose_class: Name | None = Field(default=None, alias="class")
    od: Length | None = None
    wall: Length | None = None
    length: Length | None = None
    pressure: Stress | None = None
    fluid: Name | None = None
    fluid_state: Name | None = None
    beside: Name | None = None
    gap: Gap | None = None
    temperature: Temperature | None = None
    temperature_by: Annotated[str, _one_of(*READ_BY)] | None = None
    side: Annotated[str, _one_of("same side", "other side")] | None = None
    shield: Annotated[str, _one_of("none", "flat open", "curved open", "closed")] | None = None
    shield_finish: Name | None = None
    state: Name | None = None
    factor: Name | None = None
    hot_od: Length | None = None
    hot_temperature: Name | None = None
    hot_finish: Name | None = None
    finish: Name | None = None
    air: Name | None = None
    soak_air: Name | None = None
    speed: Name | None = None
    jurisdiction: Name | None = None
    flare: Name | None = None
    seat: Name | None = None
    nut: Name | None = None
    port: Name | None = None
    anchors: Length | None = None
    exhaust_material: Name | None = None
    hose_length: Length | None = None
    droop: Length | None = None
    lock: Length | None = None
    notes: Text | None = None


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
    kind: Annotated[str, _one_of("shaft", "setup")] | None = None
    steel: Name | None = None
    treatment: Name | None = None
    temper: Name | None = None
    diameter: Length | None = None
    length: Length | None = None
    torque: Torque | None = None
    axle: Name | None = None
    component: Name | None = None
    step: Name | None = None
    wear: Name | None = None
    as_found: Finding | None = None
    as_left: Finding | None = None
    maker: MakerFigure | None = None
    notes: Text | None = None


class Job(Part):
    """A whole job file. ``title`` is its ``[job]`` table."""

    title: Title = Field(default_factory=Title, alias="job")
    shop: Shop = Field(default_factory=Shop)
    fasteners: Annotated[tuple[Fastener, ...], _as_tuple] = ()
    tubes: Annotated[tuple[Tube, ...], _as_tuple] = ()
    lines: Annotated[tuple[Line, ...], _as_tuple] = ()
    driveline: Annotated[tuple[Driveline, ...], _as_tuple] = ()

    def as_dict(self) -> dict[str, Any]:
        """The job with the keys of its file, as JSON carries it; what is blank is left out."""
        return self.model_dump(mode="json", by_alias=True, exclude_none=True)


ITEMS: dict[str, type[Part]] = {"fasteners": Fastener, "tubes": Tube, "lines": Line, "driveline": Driveline}
