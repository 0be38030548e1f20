"""Every thread that a size as it was typed can mean: coarse and fine of a bare one."""

from __future__ import annotations

from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.fasteners import keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def threads_of(typed: str, data: Refdata) -> list[str]:
    """The thread, or the coarse and the fine one of a bare size; the fine ones of a metric size."""
    if typed.endswith(" fine"):
        size = typed.removesuffix(" fine")
        coarse = keys.thread(size, data).cell
        own = data.table("fasteners/threads").column("thread").values()
        found = [c for c in own if c.startswith(f"{size}x") and c != coarse]
        if not found:
            raise LookupMiss(typed, "thread", "no fine thread of this size in the tables", [coarse], "say its pitch")
        return found
    try:
        return [keys.thread(typed, data).cell]
    except Ambiguous as error:
        cells = data.table("fasteners/threads").column("thread").values()
        size = typed.replace(" ", "-") + "-"
        return [c for c in cells if c.startswith(size) and c.endswith((" UNC", " UNF"))] or list(error.nearest)
    except LookupMiss:
        return [typed]
