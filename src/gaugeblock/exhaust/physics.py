"""Physics rules of an exhaust: what its tables must say of pipe, power and growth."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, printed
from gaugeblock.tables.fault import Fault, at_row
from gaugeblock.tables.interval import parse_interval

if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Row


def _low(row: Row, column: str) -> float:
    cell = parse_interval(row.cells[column])
    return float(cell.low) if cell is not None and cell.low is not None else 0.0


def a_wider_pipe_takes_more_power(facts: Facts) -> list[Fault]:
    """For one layout and source, a wider pipe is taken for no less power."""
    faults = []
    rows = facts.rows("exhaust/pipe_power", "pipe_power_maximum")
    for group in group_by(rows, lambda r: (r.cells["layout"], r.cells["source"])):
        for a, b in pairwise(sorted(group, key=lambda r: (_low(r, "od"), r.line))):
            if facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} for {b.cells['od']}, under {printed(a)} for {a.cells['od']}"
                faults.append(at_row(b, column_of(b), "a_wider_pipe_takes_more_power", found, READ_AGAIN))
    return faults


def more_power_needs_no_less_pipe(facts: Facts) -> list[Fault]:
    """For one displacement, layout and source, more power is given no narrower pipe."""
    faults = []
    rows = facts.rows("exhaust/pipes", "exhaust_pipe_od")
    for group in group_by(rows, lambda r: (r.cells["displacement"], r.cells["layout"], r.cells["source"])):
        for a, b in pairwise(sorted(group, key=lambda r: (_low(r, "power"), r.line))):
            if facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} at {b.cells['power']}, under {printed(a)} at {a.cells['power']}"
                faults.append(at_row(b, column_of(b), "more_power_needs_no_less_pipe", found, READ_AGAIN))
    return faults


def two_pipes_are_no_wider_than_one(facts: Facts) -> list[Fault]:
    """For one displacement and power, each of two pipes is no wider than the one pipe."""
    faults = []
    rows = facts.rows("exhaust/pipes", "exhaust_pipe_od")
    for group in group_by(rows, lambda r: (r.cells["displacement"], r.cells["power"], r.cells["source"])):
        by = {r.cells["layout"]: r for r in group}
        if len(by) == 2 and facts.middle(by["two pipes"]) > facts.middle(by["single pipe"]):
            row = by["two pipes"]
            found = f"{printed(row)} each, over {printed(by['single pipe'])} for one"
            faults.append(at_row(row, column_of(row), "two_pipes_are_no_wider_than_one", found, READ_AGAIN))
    return faults


def a_hotter_steel_is_no_stronger(facts: Facts) -> list[Fault]:
    """For one exhaust steel and source, strength falls as it is hotter."""
    faults = []
    rows = facts.rows("exhaust/materials", "tensile_strength_typical", "yield_strength_typical")
    for group in group_by(rows, lambda r: (r.cells["material"], r.cells["quantity"], r.cells["source"])):
        placed = sorted(group, key=lambda r: (_degrees(r), r.line))
        for a, b in pairwise(placed):
            if facts.middle(b) > facts.middle(a):
                found = f"{printed(b)} at {b.cells['state']}, over {printed(a)} at {a.cells['state']}"
                faults.append(at_row(b, column_of(b), "a_hotter_steel_is_no_stronger", found, READ_AGAIN))
    return faults


def _degrees(row: Row) -> float:
    words = row.cells["state"].split()
    return float(words[0]) if words[0].isdigit() else 20.0


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    a_wider_pipe_takes_more_power,
    more_power_needs_no_less_pipe,
    two_pipes_are_no_wider_than_one,
    a_hotter_steel_is_no_stronger,
)
