"""The job: what the owner, the vehicle and each item are, in checked, frozen models. Blank text is a missing key.

Keys of refdata (threads, grades, materials ...) stay text here; the hooks of ``read`` look them up.
"""

from typing import Annotated

from gaugeblock.job.part import (
    AnyFigure,
    BendAngle,
    Count,
    Finding,
    Gap,
    IssueDate,
    Length,
    Name,
    Part,
    Place,
    Point,
    Service,
    Share,
    Stress,
    Temperature,
    Text,
    Torque,
    Turn,
    Wall,
    Wrench,
    one_of,
)
from gaugeblock.job.tube_model import Move, Tube

STATUSES = ("draft", "for build", "as built")
LINE_SERVICES = ("brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission")
READ_BY = ("crayon", "paint", "thermocouple", "infra-red")


class Title(Part):
    """``[job]``: the title block."""

    owner: Name | None = None
    identification: Name | None = None
    vehicle: Text | None = None
    revision: Name | None = None
    issued: IssueDate | None = None
    status: Annotated[str, one_of(*STATUSES)] | None = None
    notes: Text | None = None


class TestBend(Part):
    """A bend made on the die to learn this lot's springback: angle under load, angle when let go."""

    __test__ = False  # not a test class, whatever its name begins with

    pulled: BendAngle | None = None
    released: BendAngle | None = None
    material: Name | None = None
    wall: Wall | None = None
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
    test_bends: tuple[TestBend, ...] = ()


class Shop(Part):
    """``[shop]``: the tools the numbers are set with."""

    name: Name | None = None
    units: Annotated[str, one_of("inch", "metric")] | None = None
    wrenches: tuple[Wrench, ...] = ()
    stock_length: Length | None = None
    kerf: Gap | None = None
    dies: tuple[Die, ...] = ()


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
    joint: Annotated[str, one_of("reused", "permanent")] | None = None
    locknut: Name | None = None
    prevailing: Torque | None = None
    count: Count | None = None
    order: Text | None = None
    passes: tuple[Share, ...] = ()
    retighten: Text | None = None
    wrench: Wrench | None = None
    adapter: Adapter | None = None
    maker: MakerTorque | None = None
    notes: Text | None = None


class HotPipe(Part):
    """The hot pipe a line passes: its path (rearward, right, up), bend radius and outside diameter."""

    name: Name
    points: tuple[Point, ...] = ()
    radius: Length | None = None
    od: Length | None = None
    moves: tuple[Move, ...] = ()


class Line(Part, aliases={"hose_class": "class"}):
    """``[[lines]]``: a fluid line and what is hot beside it; ``hose_class`` is the file's ``class``."""

    name: Name
    where: Text | None = None
    service: Annotated[str, one_of(*LINE_SERVICES)] | None = None
    material: Name | None = None
    hose_class: Name | None = None
    od: Length | None = None
    wall: Wall | None = None
    length: Length | None = None
    pressure: Stress | None = None
    fluid: Name | None = None
    fluid_state: Name | None = None
    beside: Name | None = None
    gap: Gap | None = None
    temperature: Temperature | None = None
    temperature_by: Annotated[str, one_of(*READ_BY)] | None = None
    side: Annotated[str, one_of("same side", "other side")] | None = None
    shield: Annotated[str, one_of("none", "flat open", "curved open", "closed")] | None = None
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
    sleeve: Name | None = None
    sleeve_finish: Name | None = None
    sleeve_conductivity: Name | None = None
    flow_temperature: Name | None = None
    flow_conductivity: Name | None = None
    jurisdiction: Name | None = None
    flare: Name | None = None
    seat: Name | None = None
    nut: Name | None = None
    port: Name | None = None
    anchors: Length | None = None
    exhaust_material: Name | None = None
    points: tuple[Point, ...] = ()
    radius: Length | None = None
    datum: Text | None = None
    gap_asked: Gap | None = None
    moves: tuple[Move, ...] = ()
    hot: HotPipe | None = None
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
    kind: Annotated[str, one_of("shaft", "setup")] | None = None
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


class Job(Part, aliases={"title": "job"}):
    """A whole job file. ``title`` is its ``[job]`` table."""

    title: Title = Title()
    shop: Shop = Shop()
    fasteners: tuple[Fastener, ...] = ()
    tubes: tuple[Tube, ...] = ()
    lines: tuple[Line, ...] = ()
    driveline: tuple[Driveline, ...] = ()


ITEMS: dict[str, type[Part]] = {"fasteners": Fastener, "tubes": Tube, "lines": Line, "driveline": Driveline}
