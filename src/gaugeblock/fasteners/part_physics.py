"""Physics rules of the torques of parts - plugs, nuts, line fittings, clamps - and of oiled threads."""

from __future__ import annotations

import itertools
import re
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.facts import (
    NUMBERS,
    READ_AGAIN,
    Facts,
    column_of,
    group_by,
    order_of,
    printed,
    rest,
    series_of,
    shown,
    size_m,
    thread_of,
)
from gaugeblock.tables.fault import Fault, at_row

if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Row

TORQUES = ("tightening_torque", "tightening_torque_maximum")

# Oiled over dry torque: oil takes a tenth in the manuals and up to a quarter in the bolt tables, never half.
OILED_SHARE = (0.5, 1.0)


def oiled_torque_is_below_dry(facts: Facts) -> list[Fault]:
    """At one thread, grade and source, the oiled torque is not above the dry one: less of it is lost in friction."""
    faults = []
    for group in group_by(facts.rows("fasteners/torques", *TORQUES), lambda r: rest(r, "condition")):
        by = {r.cells["condition"]: r for r in group}
        dry, oiled = by.get("dry"), by.get("oiled")
        if dry is None or oiled is None:
            continue
        if facts.high(oiled) > OILED_SHARE[1] * facts.low(dry) or facts.low(oiled) < OILED_SHARE[0] * facts.low(dry):
            found = f"{printed(oiled)} oiled, {printed(dry)} dry on line {dry.line}"
            faults.append(at_row(oiled, column_of(oiled), "oiled_torque_is_below_dry", found, READ_AGAIN))
    return faults


# The torque that a part can take, lowest and highest; the first whose name starts so counts. Each band is that of the
# bolts
# such a part has: covers and pumps 1/4 to 7/16 in, engines' inner bolts 3/8 to 1/2 in, wheels 10 mm studs to heavy
# trucks' 3/4
# in, U-bolts 3/8 to 1 1/4 in. A clamp band and a plug's washer give way before any bolt.
PARTS: tuple[tuple[str, float, float, str], ...] = (
    ("spark plug", 5, 48, "lbf*ft"),
    ("glow plug", 6, 25, "lbf*ft"),
    ("drain plug", 6, 25, "lbf*ft"),
    ("oil drain plug", 12, 100, "lbf*ft"),
    ("brake bleeder screw", 4, 22, "N*m"),
    ("brake tube nut", 6, 28, "N*m"),
    ("brake tube union", 4, 28, "N*m"),
    ("brake hose banjo bolt", 15, 60, "N*m"),
    ("brake caliper adapter", 80, 260, "lbf*ft"),
    ("brake caliper mounting", 8, 45, "lbf*ft"),
    ("brake caliper p", 6, 30, "lbf*ft"),
    ("brake caliper", 20, 120, "lbf*ft"),
    ("hose clamp, worm", 3, 120, "lbf*in"),
    ("hose clamp, T-bolt", 30, 90, "lbf*in"),
    ("compression sleeve", 60, 600, "lbf*in"),
    ("tyre pressure sensor", 2, 8, "lbf*ft"),
    ("wheel nut, d", 180, 550, "lbf*ft"),
    ("wheel nut, ball", 180, 550, "lbf*ft"),
    ("wheel nut, first", 15, 60, "lbf*ft"),
    ("wheel nut, second", 15, 60, "lbf*ft"),
    ("wheel nut", 40, 520, "lbf*ft"),
    ("two-piece rim", 60, 180, "lbf*ft"),
    ("leaf spring U-bolt", 18, 1600, "lbf*ft"),
    ("leaf spring", 40, 180, "lbf*ft"),
    ("ball joint", 20, 120, "lbf*ft"),
    ("tie rod", 12, 120, "lbf*ft"),
    ("half-shaft nut", 120, 300, "lbf*ft"),
    ("half-shaft", 30, 120, "lbf*ft"),
    ("propeller shaft", 18, 120, "lbf*ft"),
    ("universal joint strap", 10, 40, "lbf*ft"),
    ("control arm", 60, 400, "lbf*ft"),
    ("shock absorber", 20, 120, "lbf*ft"),
    ("steering arm", 100, 260, "lbf*ft"),
    ("steering damper", 40, 110, "lbf*ft"),
    ("steering rack", 40, 110, "lbf*ft"),
    ("steering p", 6, 20, "lbf*ft"),
    ("steering r", 6, 20, "lbf*ft"),
    ("steering shaft", 8, 30, "lbf*ft"),
    ("steering", 15, 60, "lbf*ft"),
    ("engine crossmember", 50, 180, "lbf*ft"),
    ("engine subframe", 100, 200, "lbf*ft"),
    ("engine", 12, 110, "lbf*ft"),
    ("starter magnetic", 2, 10, "lbf*ft"),
    ("starter terminal", 5, 20, "lbf*ft"),
    ("starter", 15, 130, "lbf*ft"),
    ("alternator terminal", 5, 20, "lbf*ft"),
    ("alternator pulley", 40, 140, "lbf*ft"),
    ("alternator", 10, 80, "lbf*ft"),
    ("main bearing capscrew, pass 1", 8, 30, "lbf*ft"),
    ("main bearing capscrew, pass 2", 25, 90, "lbf*ft"),
    ("main bearing capscrew", 80, 160, "lbf*ft"),
    ("centre main bearing", 80, 160, "lbf*ft"),
    ("differential cover", 10, 40, "lbf*ft"),
    ("differential pinion", 12, 60, "lbf*ft"),
    ("differential carrier", 35, 260, "lbf*ft"),
    ("differential", 40, 130, "lbf*ft"),
    ("connecting rod", 20, 80, "lbf*ft"),
    ("cylinder head core", 8, 30, "lbf*ft"),
    ("cylinder head", 35, 120, "lbf*ft"),
    ("rocker cover", 5, 15, "lbf*ft"),
    ("valve cover", 1.5, 12, "lbf*ft"),
    ("rocker arm", 20, 60, "lbf*ft"),
    ("ring gear", 30, 150, "lbf*ft"),
    ("pinion nut", 100, 700, "lbf*ft"),
    ("flywheel to crankshaft bolt, first", 8, 80, "lbf*ft"),
    ("flywheel", 15, 190, "lbf*ft"),
    ("flexplate", 20, 120, "lbf*ft"),
    ("hub to flywheel", 12, 40, "lbf*ft"),
    ("exhaust manifold", 6, 45, "lbf*ft"),
    ("exhaust clamp", 5, 65, "lbf*ft"),
    ("exhaust sensor controller", 3, 15, "lbf*ft"),
    ("exhaust", 6, 60, "lbf*ft"),
    ("oxygen sensor", 20, 50, "lbf*ft"),
    ("coolant temperature sensor", 6, 25, "lbf*ft"),
    ("water pump", 4, 40, "lbf*ft"),
    ("intake hose", 1, 8, "lbf*ft"),
    ("intake", 4, 30, "lbf*ft"),
    ("injector", 10, 30, "lbf*ft"),
    ("injection", 10, 40, "lbf*ft"),
    ("fuel pump", 7, 40, "lbf*ft"),
    ("oil pressure", 4, 30, "lbf*ft"),
    ("oil pan", 5, 60, "lbf*ft"),
    ("oil p", 6, 60, "lbf*ft"),
    ("oil base", 25, 70, "lbf*ft"),
    ("timing", 10, 40, "lbf*ft"),
    ("crankshaft rear oil seal", 7, 40, "lbf*ft"),
    ("distributor cap", 0.8, 5, "lbf*ft"),
    ("distributor", 6, 40, "lbf*ft"),
    ("rear bearing plate", 25, 70, "lbf*ft"),
    ("clutch bell housing", 40, 110, "lbf*ft"),
    ("clutch", 8, 40, "lbf*ft"),
    ("gearbox output", 100, 320, "lbf*ft"),
    ("gearbox", 5, 180, "lbf*ft"),
    ("automatic gearbox", 12, 40, "lbf*ft"),
    ("split flange", 12, 80, "lbf*ft"),
)


def part_torque_suits_its_part(facts: Facts) -> list[Fault]:
    """The torque of a spark plug, a wheel nut, a brake pipe nut, a clamp is one that such a part can take."""
    faults: list[Fault] = []
    band: dict[str, tuple[float, float, str] | None] = {}
    for row in facts.rows("fasteners/part_torques", *TORQUES):
        part = row.cells["part"]
        if part not in band:
            band[part] = next(
                (
                    (units.to_base(low, unit), units.to_base(high, unit), f"{low:g} to {high:g} {unit}")
                    for start, low, high, unit in PARTS
                    if part.startswith(start)
                ),
                None,
            )
        limits = band[part]
        for column, number in facts.numbers(row).items() if limits else ():
            if limits and not limits[0] <= number <= limits[1]:
                found = f"{shown(row, column)} for a {part}, outside {limits[2]}"
                faults.append(at_row(row, column, "part_torque_suits_its_part", found, READ_AGAIN))
    return faults


def part_torque_rises_with_size(facts: Facts) -> list[Fault]:
    """For one part, seat, material and source, each end of a larger size's torque is no lower."""
    faults = []
    rows = facts.rows("fasteners/part_torques", *TORQUES)
    for group in group_by(rows, lambda r: (*rest(r, "size"), series_of(r, "size"))):
        placed = sorted(
            ((o, r.line, r) for r in group if (o := order_of(r.cells["size"])) is not None), key=lambda p: p[:2]
        )
        for (o1, _, a), (o2, _, b) in itertools.pairwise(placed):
            first, second = facts.numbers(a), facts.numbers(b)
            if o1 < o2 and any(second[c] < first[c] for c in NUMBERS if c in first and c in second):
                found = f"{printed(b)} for {b.cells['size']}, under {printed(a)} for {a.cells['size']}"
                faults.append(at_row(b, column_of(b), "part_torque_rises_with_size", found, READ_AGAIN))
    return faults


# Torque of a flare nut over the square of its tube's diameter, which goes with the flare it squeezes: thin aluminium
# lines of
# 1 1/4 in the least, steel ones of 1/8 in the most. The ends are a factor of 9.3 apart: ten times off lies outside.
LINE_NUT = (400.0, 3700.0)


def line_nut_torque_suits_its_tube(facts: Facts) -> list[Fault]:
    """The torque of a flare or coupling nut is a likely one for its tube."""
    faults = []
    least, most = (units.to_base(end, "lbf*in") / 0.0254**2 for end in LINE_NUT)
    for row in facts.rows("fasteners/part_torques", *TORQUES):
        size = size_m(row.cells["size"]) if row.cells["part"].startswith(("flare nut", "tube coupling nut")) else None
        for column, torque in facts.numbers(row).items() if size else ():
            if size and not least <= torque / size**2 <= most:
                found = f"{shown(row, column)} for a tube of {row.cells['size']}"
                faults.append(at_row(row, column, "line_nut_torque_suits_its_tube", found, READ_AGAIN))
    return faults


# (key column, the cell that takes no more torque, the cell that takes no less)
_NO_MORE = (
    ("seat", "taper", "gasket"),  # a taper wedges itself tight; a gasket has to be crushed
    ("material", "aluminium", "cast iron"),
    ("material", "aluminium", "steel"),  # aluminium threads and flares give first
)


def softer_part_takes_no_more_torque(facts: Facts) -> list[Fault]:
    """At one part, size and source, aluminium takes no more torque than iron or steel, a taper seat no more than a
    gasket.
    """
    faults = []
    rows = facts.rows("fasteners/part_torques", *TORQUES)
    for column, softer, harder in _NO_MORE:
        for group in group_by(rows, lambda r, c=column: rest(r, c)):  # type: ignore[misc]
            by: dict[str, Row] = {r.cells[column]: r for r in group}
            a, b = by.get(softer), by.get(harder)
            if a is None or b is None:
                continue
            if any(facts.numbers(a)[c] > facts.numbers(b).get(c, 1e9) for c in facts.numbers(a)):
                found = f"{printed(a)} for {softer}, over {printed(b)} for {harder} on line {b.line}"
                faults.append(at_row(a, column_of(a), "softer_part_takes_no_more_torque", found, READ_AGAIN))
    return faults


# A tap drill leaves this share of the full thread height; a clearance hole is wider than its bolt by this share of it
# and 0.4 mm, a free one by more.
TAPPED_SHARE, CLEARANCE_SHARE, FREE_SHARE = (0.55, 0.95), 0.15, 0.20


def hole_suits_its_thread(facts: Facts) -> list[Fault]:
    """A tap drill leaves most of the thread, a clearance hole passes the bolt and little more."""
    faults = []
    for row in facts.rows("fasteners/holes", "hole_diameter"):
        thread = thread_of(row.cells["thread"])
        if thread is None:
            continue
        hole = facts.middle(row)
        if row.cells["fit"] == "tap drill":
            share = (thread.major_m - hole) / (1.299038 * thread.pitch_m)
            sound = TAPPED_SHARE[0] <= share <= TAPPED_SHARE[1]
            found = f"{printed(row)} leaves {share:.2f} of the thread of {row.cells['thread']}"
        else:
            share = FREE_SHARE if row.cells["fit"].endswith("free") else CLEARANCE_SHARE
            sound = thread.major_m < hole < thread.major_m * (1 + share) + 0.0004
            found = f"{printed(row)} for a bolt of {row.cells['thread']}"
        if not sound:
            faults.append(at_row(row, column_of(row), "hole_suits_its_thread", found, READ_AGAIN))
    return faults


def washer_fits_its_bolt(facts: Facts) -> list[Fault]:
    """The hole of a washer passes its bolt, and its outside is 1.7 to 3.2 times the bolt."""
    faults = []
    for row in facts.rows("fasteners/washers"):
        size = size_m(row.cells["size"])
        least, most = {"washer_inside_diameter": (1.0, 1.3), "washer_outside_diameter": (1.7, 3.2)}.get(
            row.cells["quantity"], (0.1, 0.35)
        )
        if size and not least * size < facts.middle(row) <= most * size:
            found = f"{printed(row)} for a bolt of {row.cells['size']}"
            faults.append(at_row(row, column_of(row), "washer_fits_its_bolt", found, READ_AGAIN))
    return faults


# What a habit says of how many manuals it was gathered from.
_GATHERED = re.compile(r"([0-9]+) manuals, one vehicle each", re.ASCII)


def habit_has_the_ends_of_its_manuals(facts: Facts) -> list[Fault]:
    """A range gathered from manuals of one vehicle each has their ends, neither wider nor narrower, and their count."""
    faults = []
    rows = facts.rows("fasteners/part_torques", "tightening_torque")
    of_one = group_by([r for r in rows if r.cells["service"] == "one vehicle"], lambda r: (r.cells["part"],))
    by_part = {group[0].cells["part"]: group for group in of_one}
    for row in rows:
        told = _GATHERED.fullmatch(row.cells["conditions"])
        if told is None:
            continue
        cells = row.cells
        sources = [
            r
            for r in by_part.get(cells["part"], ())
            if (r.cells["size"], r.cells["material"]) == (cells["size"], cells["material"])
            and cells["seat"] in ("any", r.cells["seat"])
        ]
        count = len({r.cells["source"] for r in sources})
        slack = facts.slack(row, column_of(row)) * (1 + 1e-6)
        low = min((facts.low(r) for r in sources), default=0.0)
        high = max((facts.high(r) for r in sources), default=0.0)
        if count != int(told[1]) or abs(low - facts.low(row)) > slack or abs(high - facts.high(row)) > slack:
            least, most = units.from_base(low, cells["unit"]), units.from_base(high, cells["unit"])
            found = f"{printed(row)} of {told[1]} manuals; the rows of {count} run from {least:.4g} to {most:.4g}"
            faults.append(at_row(row, column_of(row), "habit_has_the_ends_of_its_manuals", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    oiled_torque_is_below_dry,
    part_torque_suits_its_part,
    part_torque_rises_with_size,
    line_nut_torque_suits_its_tube,
    softer_part_takes_no_more_torque,
    hole_suits_its_thread,
    washer_fits_its_bolt,
    habit_has_the_ends_of_its_manuals,
)
