"""The job: what the owner, the vehicle and the shop are, in checked, frozen models. Blank text is a missing key.

What is tightened, bent, run and set up is modelled by the domains; a Kind is what a domain says of one table.
Keys of refdata (threads, grades, materials ...) stay text here; the hooks of ``read`` look them up.
"""

from collections.abc import Container, Mapping
from functools import cache
from typing import TYPE_CHECKING, Annotated, Any

from gaugeblock.job import form
from gaugeblock.job.kind import Kind
from gaugeblock.job.part import (
    BendAngle,
    Entry,
    Gap,
    IssueDate,
    Length,
    Name,
    Part,
    Place,
    Text,
    Wall,
    Wrench,
    one_of,
)

STATUSES = ("draft", "for build", "as built")


class Title(Part):
    """``[job]``: the title block."""

    owner: Name | None = None
    creator: Name | None = None
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

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any]:
        """As ``47 deg set, 45 deg got``."""
        return form.trial_bend(text)


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


class Move(Part):
    """How far a part moves from where it stands, by direction, and why: engine rock, bump, droop, hot growth."""

    why: Text | None = None
    forward: Gap | None = None
    rearward: Gap | None = None
    left: Gap | None = None
    right: Gap | None = None
    up: Gap | None = None
    down: Gap | None = None


class Job(Part, aliases={"title": "job"}):
    """A whole job file: ``title`` is its ``[job]`` table; each table of a domain is an attribute, a tuple of its
    items.
    """

    title: Title = Title()
    shop: Shop = Shop()

    if TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any: ...


def job_model(kinds: Mapping[str, Kind], given: Container[str] | None = None) -> type[Job]:
    """The model of a job with the tables of ``kinds``; those that are not ``given`` stay what any item is, unread."""
    is_given = kinds if given is None else given
    return _job_model(tuple((t, kind.model if t in is_given else Entry) for t, kind in kinds.items()))


@cache
def _job_model(models: tuple[tuple[str, type[Part]], ...]) -> type[Job]:
    body: dict[str, Any] = {"__annotations__": {**Job.__annotations__}, "__doc__": Job.__doc__}
    for table, model in models:
        body["__annotations__"][table] = tuple[model, ...]  # type: ignore[valid-type]
        body[table] = ()
    body |= {"title": Job.title, "shop": Job.shop}
    return type("Job", (Job,), body, aliases={"title": "job"})
