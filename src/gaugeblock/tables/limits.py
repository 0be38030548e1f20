"""What figures of each quantity can be: true ranges, kinds that stand together, and series that rise or fall."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.catalogue import LISTS, TABLES, refdata_folder
from gaugeblock.tables.fault import Fault, at_row
from gaugeblock.tables.load import is_decimal
from gaugeblock.tables.raw import read_raw

if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Row

# Where the lowest, the highest and their unit stand in quantities.csv and in ranges.csv.
PLAUSIBLE = ("plausible_low", "plausible_high", "plausible_unit")
ENDS = ("low", "high", "unit")


class Ranges:
    """The lowest and highest figure that any true row of a quantity can have, as quantities.csv and ranges.csv say."""

    __slots__ = ("_by_quantity", "_by_table")

    def __init__(self, quantities: Iterable[Row], ranges: Iterable[Row]) -> None:
        """``quantities`` and ``ranges``: the rows of the two files; one that is closed or faulty gives no range."""
        self._by_quantity = {
            r["quantity"]: _range(r, PLAUSIBLE) for r in quantities if not r["until"] and _is_range(r, PLAUSIBLE)
        }
        self._by_table = {(r["table"], r["quantity"]): _range(r, ENDS) for r in ranges if _is_range(r, ENDS)}

    def of(self, table: str, quantity: str) -> tuple[float, float, str] | None:
        """Lowest, highest and their unit, of this table when it has its own; None when there is none."""
        return self._by_table.get((table, quantity)) or self._by_quantity.get(quantity)


def _range(row: Row, columns: tuple[str, str, str]) -> tuple[float, float, str]:
    low, high, unit = (row[c] for c in columns)
    return float(low), float(high), unit


def _is_range(row: Row, columns: tuple[str, str, str], dimension: str = "") -> bool:
    low, high, unit = (row[c] for c in columns)
    if not (is_decimal(low) and is_decimal(high) and unit in units.UNITS and float(low) < float(high)):
        return False
    return not dimension or units.dimension(unit) == dimension


@cache
def own_ranges() -> Ranges:
    """The ranges of the project's own tables."""
    folder = refdata_folder()
    return Ranges(*(read_raw(folder, name, LISTS[name], []) for name in ("quantities", "ranges")))


def range_faults(quantities: Iterable[Row], ranges: Iterable[Row]) -> list[Fault]:
    """Each quantity has a plausible range in a unit of its dimension; a range of one table names both, and once."""
    do = "give the lowest and the highest that is plausible, the lower first, in a unit of the dimension"
    dimensions = {r["quantity"]: r["dimension"] for r in quantities}
    faults = [
        at_row(row, PLAUSIBLE[0], "range_grammar", " ".join(row[c] for c in PLAUSIBLE), do)
        for row in quantities
        if not _is_range(row, PLAUSIBLE, row["dimension"])
    ]
    seen: dict[tuple[str, str], int] = {}
    for row in ranges:
        table, quantity = row["table"], row["quantity"]
        earlier = seen.setdefault((table, quantity), row.line)
        if table not in TABLES:
            faults.append(at_row(row, "table", "unknown_table", repr(table), "name a table of the catalogue"))
        if quantity not in dimensions:
            faults.append(at_row(row, "quantity", "unknown_quantity", repr(quantity), "name one of quantities.csv"))
        elif not _is_range(row, ENDS, dimensions[quantity]):
            faults.append(at_row(row, ENDS[0], "range_grammar", " ".join(row[c] for c in ENDS), do))
        if earlier != row.line:
            faults.append(
                at_row(row, "quantity", "duplicate_entry", f"the entry of line {earlier} again", "take one out")
            )
    return faults


# (table, quantity or * for all): key columns that make rows peers, and how far one may stand from their median (a
# factor).
# Peers are of one kind, so that a figure ten times too high or low stands out where a range cannot be that narrow.
PEERS: dict[tuple[str, str], tuple[tuple[str, ...], float]] = {
    ("fasteners/grades", "proof_strength"): (("standard",), 4.0),
    ("fasteners/grades", "yield_strength"): (("standard",), 4.0),
    ("fasteners/grades", "tensile_strength"): (("standard",), 4.0),
    ("driveline/steels", "tensile_strength"): (("steel",), 1.6),
    ("driveline/steels", "yield_strength"): (("steel",), 2.0),
    ("driveline/steels", "tensile_strength_typical"): (("steel",), 3.1),
    ("driveline/steels", "yield_strength_typical"): (("steel",), 3.6),
    ("driveline/steels", "hardness_hb_typical"): (("steel",), 3.1),
    ("driveline/steels", "elongation_typical"): (("steel",), 3.2),
    ("driveline/steels", "elongation"): (("steel",), 1.8),
    ("driveline/steels", "reduction_of_area"): (("steel",), 1.6),
    ("driveline/steels", "reduction_of_area_typical"): (("steel",), 2.2),
    ("tubes/materials", "yield_strength"): (("product", "condition"), 2.2),
    ("tubes/materials", "tensile_strength"): (("product", "condition"), 1.8),
    ("tubes/materials", "elongation"): (("product", "condition"), 1.5),
    ("tubes/materials", "hardness_hrb_minimum"): (("product", "condition"), 1.42),
    ("tubes/materials", "hardness_hrb_maximum"): (("product", "condition"), 1.35),
    ("driveline/setup", "backlash"): ((), 5.5),
    ("driveline/setup", "preload_torque"): ((), 8.0),
}

# table, quantity or *, key column, +1 when the figure rises with the key and -1 when it falls, whether equal is
# allowed.
# Compared between rows of one source whose other keys are equal.
SERIES: tuple[tuple[str, str, str, int, bool], ...] = (
    ("driveline/hardness", "*", "hardness", 1, True),
    ("driveline/stress_concentration", "stress_concentration_factor", "radius_ratio", -1, True),
    ("tubes/gauges", "wall_thickness", "gauge", -1, False),
    ("tubes/sheet_bends", "sheet_bend_ratio_minimum", "thickness", 1, True),
    ("lines/growth", "linear_growth", "temperature", 1, False),
    ("exhaust/expansion", "*", "temperature", 1, True),
    ("lines/air", "density", "temperature", -1, False),
    ("lines/air", "kinematic_viscosity", "temperature", 1, False),
    ("lines/air", "thermal_conductivity", "temperature", 1, False),
    ("fasteners/thread_stripping", "strip_area_one_diameter", "thread", 1, False),
    ("fasteners/prevailing", "*", "thread", 1, False),
    ("fasteners/part_torques", "tightening_torque", "size", 1, True),
    ("fasteners/part_torques", "tightening_torque_maximum", "size", 1, True),
    ("fasteners/bolt_loads", "*", "thread", 1, False),
    ("fasteners/pipe_threads", "gauge_length", "size", 1, False),
    ("fasteners/pipe_threads", "effective_thread_length", "size", 1, False),
    ("fasteners/pipe_threads", "hand_tight_engagement", "size", 1, False),
    ("fasteners/pipe_threads", "pitch_diameter_hand_tight", "size", 1, False),
    ("fasteners/pipe_threads", "gauge_plane_major_diameter", "size", 1, False),
    ("fasteners/pipe_threads", "threads_per_inch", "size", -1, True),
    ("fasteners/british_threads", "threads_per_inch", "size", -1, True),
)
