"""Physics rules of tubes and pipes: walls, masses, bends."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.catalogue import keys_of
from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, order_of, printed, rest
from gaugeblock.tables.fault import Fault, at_row
from gaugeblock.tables.interval import parse_interval

if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Row

_PI = 3.141592653589793
# Steel 7850 kg/m3 (ASME B36.10 tables), stainless up to 2 % more.
_STEEL = 7850.0


def _point(cell: str) -> float | None:
    interval = parse_interval(cell)
    return float(interval.low) if interval is not None and interval.low is not None and interval.is_point else None


def wall_under_half_the_diameter(facts: Facts) -> list[Fault]:
    """A tube's wall is under half its outside diameter."""
    faults = []
    for table, rows in facts.tables.items():
        names = [k.name for k in keys_of(table)]
        if "od" not in names or "wall" not in names:
            continue
        for row in rows:
            od, wall = parse_interval(row.cells["od"]), parse_interval(row.cells["wall"])
            if od is None or wall is None or wall.low is None or od.high is None:
                continue
            if 2 * wall.low >= od.high:
                found = f"wall {wall.text} of od {od.text}"
                faults.append(at_row(row, "wall", "wall_under_half_the_diameter", found, READ_AGAIN))
    return faults


def _mass(od_m: float, wall_m: float) -> float:
    return _STEEL * _PI * (od_m - wall_m) * wall_m


def pipe_mass_is_that_of_its_wall(facts: Facts) -> list[Fault]:
    """Mass per length of a steel pipe or section is that of its diameter and wall, within 3 %.

    The 3 % holds the rounding of thin walls, and the corners that a section's own standard takes into its mass.
    """
    faults = []
    od = {r.cells["nps"]: facts.middle(r) for r in facts.rows("tubes/pipe_sizes", "outside_diameter")}
    walls = {r.key: r for r in facts.rows("tubes/pipe_sizes", "wall_thickness")}
    for row in facts.rows("tubes/pipe_sizes", "mass_per_length"):
        wall = walls.get(row.key)
        if wall is not None and row.cells["nps"] in od:
            faults += _mass_fault(
                facts, row, _mass(od[row.cells["nps"]], facts.middle(wall)), f" (wall on line {wall.line})"
            )
    for row in facts.rows("tubes/sizes", "mass_per_length"):
        diameter, thickness = _point(row.cells["od"]), _point(row.cells["wall"])
        if diameter and thickness:
            faults += _mass_fault(facts, row, _mass(diameter, thickness), "")
    return faults


def _mass_fault(facts: Facts, row: Row, wanted: float, where: str) -> list[Fault]:
    if abs(facts.middle(row) - wanted) <= 0.03 * wanted + facts.slack(row, column_of(row)):
        return []
    found = f"{printed(row)}, the wall gives {units.from_base(wanted, row.cells['unit']):.4g}{where}"
    return [at_row(row, column_of(row), "pipe_mass_is_that_of_its_wall", found, READ_AGAIN)]


# Wall over outside diameter of standard pipe, to schedule 160; XXS, whose wall is twice XS to NPS 6, leaves little
# bore.
PIPE_WALL_SHARE = (0.018, 0.31)
XXS_WALL_SHARE = (0.14, 0.48)


def pipe_wall_suits_its_size(facts: Facts) -> list[Fault]:
    """A pipe's wall is a likely share of its outside diameter."""
    od = {r.cells["nps"]: facts.middle(r) for r in facts.rows("tubes/pipe_sizes", "outside_diameter")}
    faults = []
    for row in facts.rows("tubes/pipe_sizes", "wall_thickness"):
        size = od.get(row.cells["nps"])
        least, most = XXS_WALL_SHARE if row.cells["schedule"] == "XXS" else PIPE_WALL_SHARE
        if size and not least <= facts.middle(row) / size <= most:
            found = f"{printed(row)}, {facts.middle(row) / size:.3f} of the outside diameter"
            faults.append(at_row(row, column_of(row), "pipe_wall_suits_its_size", found, READ_AGAIN))
    return faults


def xxs_wall_is_twice_xs(facts: Facts) -> list[Fault]:
    """The wall of XXS pipe is twice that of XS, in the sizes of the table."""
    xs = {r.cells["nps"]: r for r in facts.rows("tubes/pipe_sizes", "wall_thickness") if r.cells["schedule"] == "XS"}
    return [
        at_row(row, column_of(row), "xxs_wall_is_twice_xs", f"{printed(row)}, XS is {printed(one)}", READ_AGAIN)
        for row in facts.rows("tubes/pipe_sizes", "wall_thickness")
        if row.cells["schedule"] == "XXS" and (one := xs.get(row.cells["nps"])) is not None
        if abs(facts.middle(row) - 2 * facts.middle(one)) > 1e-6
    ]


# Bend radius over tube diameter: rotary-draw tooling from 1, conduit and pipe up to 12; a figure ten times off lies
# outside
# either end, as every true one is within 1 to 9.
BEND_RATIO = (0.8, 13.0)


def bend_radius_suits_its_tube(facts: Facts) -> list[Fault]:
    """A bend radius is a likely multiple of the tube's outside diameter."""
    faults = []
    for row in facts.rows("tubes/bend_minimums", "bend_radius_minimum"):
        od = _point(row.cells["od"])
        for column, radius in facts.numbers(row).items() if od else ():
            if od and not BEND_RATIO[0] <= radius / od <= BEND_RATIO[1]:
                found = f"{row.cells[column]} {row.cells['unit']}, {radius / od:.3g} times the diameter"
                faults.append(at_row(row, column, "bend_radius_suits_its_tube", found, READ_AGAIN))
    return faults


def bend_radius_rises_with_diameter(facts: Facts) -> list[Fault]:
    """For one product, material, method, service and source, a larger tube is not bent a fifth tighter.

    A fifth: tooling charts step unevenly, and the least radius on hand for one size may be larger than for the next.
    """
    faults = []
    rows = facts.rows("tubes/bend_minimums", "bend_radius_minimum")
    for group in group_by(rows, lambda r: rest(r, "od")):
        placed = sorted(
            ((o, r.line, r) for r in group if (o := order_of(r.cells["od"])) is not None), key=lambda p: p[:2]
        )
        for (_, _, a), (_, _, b) in itertools.pairwise(placed):
            if facts.middle(b) < 0.8 * facts.middle(a):
                found = f"{printed(b)} for {b.cells['od']}, well under {printed(a)} for {a.cells['od']}"
                faults.append(at_row(b, column_of(b), "bend_radius_rises_with_diameter", found, READ_AGAIN))
    return faults


# Tolerance over what it is a tolerance of, lowest and highest: a diameter is held within 3 %, a wall within a quarter
# (thin
# brake pipe, a fifth); no mill holds a diameter closer than a thousandth part or a wall closer than a hundredth.
TOLERANCES = {
    "od_tolerance": ("od", 0.001, 0.03),
    "id_tolerance": ("od", 0.001, 0.03),
    "ovality_allowance": ("od", 0.003, 0.05),
    "wall_tolerance": ("wall", 0.01, 0.25),
}


def tolerance_is_a_small_share(facts: Facts) -> list[Fault]:
    """A tolerance takes from nothing or less to nothing or more, and is a small share of the diameter or wall."""
    faults = []
    for row in facts.rows("tubes/sizes", *TOLERANCES):
        column, least, most = TOLERANCES[row.cells["quantity"]]
        interval, numbers = parse_interval(row.cells[column]), facts.numbers(row)
        size = float(interval.high) if interval is not None and interval.high is not None else 0.0
        wide = max(abs(n) for n in numbers.values())
        signs = numbers.get("low", -1.0) <= 0 <= numbers.get("high", 1.0)
        if not signs or (size and not least * size <= wide <= most * size):
            found = f"{printed(row)} of a {column} of {row.cells[column]}"
            faults.append(at_row(row, column_of(row), "tolerance_is_a_small_share", found, READ_AGAIN))
        for name, number in numbers.items():
            if size and number and abs(number) < least * size:
                found = f"{row.cells[name]} {row.cells['unit']} of a {column} of {row.cells[column]}"
                faults.append(at_row(row, name, "tolerance_is_a_small_share", found, READ_AGAIN))
    return faults


# Bore left at a flareless sleeve over the bore of the tube (outside diameter less two walls): the smallest tubes
# close by
# a third, the largest by a twentieth.
SLEEVE_BORE = (0.6, 1.0)
# Ends of a range of walls over the nominal wall between them: mills hold it within a tenth, or an eighth.
WALL_ENDS = ((0.8, 1.0), (1.0, 1.2))


def bore_and_wall_suit_their_tube(facts: Facts) -> list[Fault]:
    """A least bore is under the tube's own bore and not far; a range of walls lies about its nominal wall."""
    faults = []
    for row in facts.rows("tubes/sizes", "bore_minimum", "wall_range"):
        diameter, wall = _point(row.cells["od"]), _point(row.cells["wall"])
        numbers = facts.numbers(row)
        if row.cells["quantity"] == "bore_minimum":
            bore = diameter - 2 * wall if diameter and wall else 0.0
            wrong = [c for c, n in numbers.items() if bore and not SLEEVE_BORE[0] * bore <= n < SLEEVE_BORE[1] * bore]
        else:
            ends = dict(zip(("low", "high"), WALL_ENDS, strict=True))
            wrong = [
                c for c, n in numbers.items() if wall and c in ends and not ends[c][0] * wall <= n <= ends[c][1] * wall
            ]
        for column in wrong:
            found = f"{row.cells[column]} {row.cells['unit']} for {row.cells['od']}, wall {row.cells['wall']}"
            faults.append(at_row(row, column, "bore_and_wall_suit_their_tube", found, READ_AGAIN))
    return faults


def frame_tube_minimums_agree(facts: Facts) -> list[Fault]:
    """Least second moment of area is that of a round tube of the least diameter and section area, within 15 %.

    The rules round the numbers of a tube that they accept, which is a little larger than the least diameter.
    """
    faults = []
    rows = facts.rows("tubes/sizes", "od_minimum", "section_area_minimum", "second_moment_minimum")
    for group in group_by(rows, lambda r: (*r.key, r.cells["source"])):
        by = {r.cells["quantity"]: r for r in group}
        if len(by) < 3:
            continue
        od, area = facts.low(by["od_minimum"]), facts.low(by["section_area_minimum"])
        # pi/4 (D^2 - d^2) is the area, so d^2 follows, and I = area (D^2 + d^2) / 16.
        wanted = area * (2 * od**2 - 4 * area / _PI) / 16
        row = by["second_moment_minimum"]
        if abs(facts.low(row) - wanted) > 0.15 * wanted:
            found = f"{printed(row)}, diameter and area give {units.from_base(wanted, row.cells['unit']):.4g}"
            faults.append(at_row(row, column_of(row), "frame_tube_minimums_agree", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    wall_under_half_the_diameter,
    pipe_mass_is_that_of_its_wall,
    pipe_wall_suits_its_size,
    xxs_wall_is_twice_xs,
    bend_radius_suits_its_tube,
    bend_radius_rises_with_diameter,
    tolerance_is_a_small_share,
    bore_and_wall_suit_their_tube,
    frame_tube_minimums_agree,
)
