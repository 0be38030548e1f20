"""Kind: what a domain says of one table of a job."""

from __future__ import annotations

from gaugeblock.answer.wing import loaded

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from typing import Any

    from gaugeblock.job.checks import Fault
    from gaugeblock.job.locate import Path
    from gaugeblock.job.part import Entry


class Kind:
    """One table of a job: the ``model`` of an item, what an item's keys say against each other, its ``starter``.

    ``faults`` is given the path of an item, the item and the whole job, as TOML gives them; ``clashes`` the path and
    the item as it was read, what was refused left out.
    """

    __slots__ = ("clashes", "faults", "model", "starter")

    def __init__(
        self,
        model: type[Entry],
        faults: Callable[[Path, dict[str, Any], dict[str, Any]], Iterator[Fault]],
        starter: str = "",
        clashes: Callable[[Path, Any], Iterator[Fault]] | None = None,
    ) -> None:
        self.model = model
        self.faults = faults
        self.starter = starter
        self.clashes = clashes


class Later(Kind):
    """A Kind that stands in a module of its own as ``KIND``, and is loaded when a job has such a table."""

    __slots__ = ("_module",)

    def __init__(self, module: str) -> None:
        self._module = module

    def __getattr__(self, name: str) -> Any:
        if name not in Kind.__slots__:
            raise AttributeError(name)
        kind = loaded(self._module).KIND
        for slot in Kind.__slots__:
            setattr(self, slot, getattr(kind, slot))
        return getattr(self, name)
