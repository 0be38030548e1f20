"""The one list of domains, and what is made of all of them: commands, public answers, the tables of a job."""

from __future__ import annotations

from gaugeblock import driveline, exhaust, fasteners, lines, tubes, wiring

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import os
    from typing import Any

    from gaugeblock.answer.wing import Wing
    from gaugeblock.job.model import Job
    from gaugeblock.job.read import Hook
    from gaugeblock.tables.fault import Fault
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tables.physics import Rule
    from gaugeblock.tables.validate import Checked

# In the order of the work on a car.
WINGS: tuple[Wing, ...] = (fasteners.WING, tubes.WING, lines.WING, driveline.WING, wiring.WING, exhaust.WING)


def commands() -> dict[str, tuple[Wing, str, str]]:
    """Command -> its wing, module and one line about it."""
    return {name: (wing, *entry) for wing in WINGS for name, entry in wing.commands.items()}


def answers() -> dict[str, str]:
    """Public answer -> the module that it stands in."""
    return {name: f"gaugeblock.{wing.name}.{module}" for wing in WINGS for name, module in wing.answers.items()}


def pages(job: Job) -> dict[str, Any]:
    """Table that a job fills in -> the module that makes its items: ``problems``, ``item``, and ``together`` where it
    has one. The other domains stay unread.
    """
    return {table: wing.module("page") for wing in WINGS for table in wing.tables if getattr(job, table)}


def read_job(path: str | os.PathLike[str], hooks: dict[str, Hook] | None = None) -> Job:
    """The checked job of a TOML file with the tables of all domains; JobError tells every problem."""
    from gaugeblock.job import read

    return read.read_job(path, tables(), hooks)


def parse_job(text: str, where: str = "job file", hooks: dict[str, Hook] | None = None) -> Job:
    """As ``read_job``, of a text."""
    from gaugeblock.job import read

    return read.parse_job(text, tables(), where, hooks)


def tables() -> dict[str, Any]:
    """Table of a job -> its Kind: the model of an item, what its keys say of each other, its starter."""
    return {t: wing.module("job").KINDS[t] for wing in WINGS for t in wing.tables}


def hooks(data: Refdata) -> dict[str, Hook]:
    """For reading a job: what the tables do not know of each item's keys."""

    def of(wing: Wing) -> Hook:
        return lambda item: wing.module("page").problems(item, data)  # read when there is an item of it

    return {table: of(wing) for wing in WINGS for table in wing.tables}


def physics() -> tuple[Rule, ...]:
    """What the rows of all domains must obey."""
    return tuple(rule for wing in WINGS for module in wing.physics for rule in wing.module(module).RULES)


def check(folder: str | None = None) -> Checked:
    """All faults of the tables in ``folder`` (the project's own when None), with the counts of rows, tables and
    releases.
    """
    from gaugeblock.tables import validate as checking

    return checking.check(folder, physics())


def validate(folder: str | None = None) -> list[Fault]:
    """All faults of the tables in ``folder`` (the project's own when None), ordered by file and line; InputError for
    no folder.
    """
    return check(folder).faults
