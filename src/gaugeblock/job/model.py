"""The job: what the owner, the vehicle and each item are, in checked, frozen models. Blank text is a missing key.

Keys of refdata (threads, grades, materials ...) stay text here; the hooks of ``read`` look them up.
"""

from __future__ import annotations

from functools import partial
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from gaugeblock.job import values
from gaugeblock.tables.catalogue import SERVICES

STATUSES = ("draft", "for build", "as built")
LINE_SERVICES = ("brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission")
READ_BY = ("crayon", "paint", "thermocouple", "infra-red")

Name = Annotated[str, BeforeValidator(partial(values.plain_text, limit=values.NAME_LIMIT))]
Text = Annotated[str, BeforeValidator(values.plain_text)]
Length = Annotated[str, BeforeValidator(partial(values.measure, dim="length"))]
Gap = Annotated[str, BeforeValidator(partial(values.measure, dim="length", least="zero"))]
Torque = Annotated[str, BeforeValidator(partial(values.measure, dim="torque"))]
Stress = Annotated[str, BeforeValidator(partial(values.measure, dim="stress"))]
Temperature = Annotated[str, BeforeValidator(partial(values.measure, dim="temperature"))]
Turn = Annotated[str, BeforeValidator(partial(values.measure, dim="angle", least="any"))]
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
    start_mark: Gap | None = None
    grip: Gap | None = None
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


class Tube(Part):
    """``[[tubes]]``: a tube to be bent."""

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
    bends: Annotated[tuple[Bend, ...], _as_tuple] = ()
    end: Gap | None = None
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
