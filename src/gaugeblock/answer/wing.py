"""Wing: what one domain brings: its commands, its public answers, its tables of a job, what its rows must obey."""

from __future__ import annotations

import sys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any


def loaded(name: str) -> Any:
    """A module by its name, loaded. The library's importlib does the same and takes half a millisecond of the 40 ms of
    a look-up to load itself.
    """
    __import__(name)
    return sys.modules[name]


class Wing:
    """A domain by name; its modules are named and loaded when they are needed, so that a look-up loads one domain.

    ``hints`` is a pattern of words that point to the domain when something is asked in plain words.
    ``commands`` is command -> (module, one line about it), ``answers`` public name -> module, ``tables`` table of the
    job file -> model in ``job``; ``job_commands`` are those that are given the reader of a job.
    """

    __slots__ = ("answers", "commands", "hints", "job_commands", "name", "physics", "tables")

    def __init__(
        self,
        name: str,
        commands: dict[str, tuple[str, str]],
        answers: dict[str, str],
        tables: dict[str, str],
        physics: tuple[str, ...] = ("physics",),
        job_commands: tuple[str, ...] = (),
        hints: str = "",
    ) -> None:
        self.name = name
        self.commands = commands
        self.answers = answers
        self.tables = tables
        self.physics = physics
        self.job_commands = job_commands
        self.hints = hints

    def __repr__(self) -> str:
        return f"<Wing {self.name}>"

    def module(self, name: str) -> Any:
        """One module of the wing, loaded."""
        return loaded(f"gaugeblock.{self.name}.{name}")
