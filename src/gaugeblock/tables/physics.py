"""Physics rules: what must be true of the figures themselves, whatever their source says.

Each rule is a plain function named after what it holds; ``RULES`` lists them. A rule looks at the rows that are
open (``until`` blank) and of blank standing: a misprint is kept as printed and never governs. Limits here are wide
enough for every figure known to be true, and no wider; a reason stands beside each.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from statistics import median
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.tables.facts import READ_AGAIN, Facts, column_of, group_by, order_of, printed, rest, series_of, shown
from gaugeblock.tables.fault import Fault, at_row
from gaugeblock.tables.limits import PEERS, SERIES

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from gaugeblock.tables.limits import Ranges
    from gaugeblock.tables.load import Row

# Any quantity


def figure_in_its_range(facts: Facts) -> list[Fault]:
    """Each number lies in the range that its quantity can have."""
    limits: dict[tuple[str, str], tuple[float, float, str, str] | None] = {}
    faults = []
    for row in facts.all_rows():
        place = (row.table, row.cells["quantity"])
        if place not in limits:
            found = facts.ranges.of(*place)
            limits[place] = found and (
                units.to_base(found[0], found[2]),
                units.to_base(found[1], found[2]),
                f"{found[0]:g} to {found[1]:g} {found[2]}",
                units.dimension(found[2]),
            )
        limit = limits[place]
        if limit is None or units.dimension(row.cells["unit"]) != limit[3]:
            continue
        for column, number in facts.numbers(row).items():
            if not limit[0] - 1e-9 * abs(limit[0]) - 1e-12 <= number <= limit[1] * (1 + 1e-9) + 1e-12:
                faults.append(
                    at_row(row, column, "figure_in_its_range", f"{shown(row, column)}, outside {limit[2]}", READ_AGAIN)
                )
    return faults


def figure_near_its_peers(facts: Facts) -> list[Fault]:
    """Each number stands within a factor of the median of its kind (PEERS)."""
    faults = []
    for (table, quantity), (columns, factor) in PEERS.items():
        for rows in group_by(facts.rows(table, quantity), lambda r, c=columns: tuple(r.cells[k] for k in c)):  # type: ignore[misc]
            if len(rows) < 3:
                continue
            centre = median(facts.middle(r) for r in rows)
            for row in rows:
                for column, number in facts.numbers(row).items():
                    if not centre / factor <= number <= centre * factor:
                        usual = units.from_base(centre, row.cells["unit"])
                        found = (
                            f"{shown(row, column)}, over a factor of {factor:g} from the median of its kind,"
                            f" {usual:.4g}"
                        )
                        faults.append(at_row(row, column, "figure_near_its_peers", found, READ_AGAIN))
    return faults


# Sources that measured or chose differently do differ: torques of one thread by up to 2 (bolt tables of manuals),
# nut factors by up to 1.9 (zinc), so a third figure of the same key is not ten times another.
SOURCES_WITHIN = 3.2
# Parts of one name on several vehicles, each by its own manual: a damper bolt of one engine takes 3.3 times another's.
VEHICLES_WITHIN = 4.0


def sources_within_a_factor(facts: Facts) -> list[Fault]:
    """Figures of the same key and quantity from several sources stand within a factor of each other."""
    faults = []
    skip = ("preload_scatter", "shim_thickness_change")  # 1 and 10 % are both published for one method
    for table in facts.tables:
        rows = [r for r in facts.rows(table) if r.cells["quantity"] not in skip]
        for group in group_by(rows, lambda r: (*r.key, r.cells["quantity"])):
            within = VEHICLES_WITHIN if group[0].cells.get("service") == "one vehicle" else SOURCES_WITHIN
            for row in group[1:]:
                a, b = facts.middle(group[0]), facts.middle(row)
                if a > 0 and b > 0 and not 1 / within <= a / b <= within:
                    found = f"{printed(row)}, but {printed(group[0])} on line {group[0].line}"
                    faults.append(at_row(row, column_of(row), "sources_within_a_factor", found, READ_AGAIN))
    return faults


_ALSO = re.compile(r"also printed (-?[0-9.]+)(?: to (-?[0-9.]+))? ([^ ;,]+)", re.ASCII)


def second_printed_unit_agrees(facts: Facts) -> list[Fault]:
    """Where the note keeps the figure in the other printed unit, both say the same to their printed digits."""
    faults = []
    for row in facts.all_rows():
        match = _ALSO.search(row.cells["note"]) if "also printed" in row.cells["note"] else None
        if (
            match is None
            or match[3] not in units.UNITS
            or units.dimension(match[3]) != units.dimension(row.cells["unit"])
        ):
            continue
        columns = (
            ("low", "high") if match[2] and row.cells["low"] else ("value",) if row.cells["value"] else ("low", "high")
        )
        for column, text in zip(columns, (match[1], match[2]), strict=False):
            if text is None or not row.cells[column]:
                continue
            number, other = facts.numbers(row)[column], units.to_base(float(text), match[3])
            other_slack = 0.5 * 10.0 ** -len(text.partition(".")[2]) * float(units.factor(match[3]))
            # A converted figure was rounded once or truncated, often from another digit: a whole last place of each,
            # and 1 %.
            if abs(number - other) > 2 * (facts.slack(row, column) + other_slack) + 0.01 * abs(number):
                found = f"{shown(row, column)}, but the note has {text} {match[3]}"
                faults.append(at_row(row, column, "second_printed_unit_agrees", found, READ_AGAIN))
    return faults


# Quantities of which a source gives a lower end alone.
LONE_LOW = frozenset({"hot_surface_ignition_temperature"})  # no ignition when the test stopped: no upper end


def single_number_stands_in_value(facts: Facts) -> list[Fault]:
    """A lone number is ``value``: a minimum requirement is the value of a quantity whose side is min."""
    return [
        at_row(r, "low", "single_number_stands_in_value", f"{shown(r, 'low')} alone", "move it to value")
        for r in facts.all_rows()
        if r.cells["low"] and not r.cells["high"] and not r.cells["value"] and r.cells["quantity"] not in LONE_LOW
    ]


def figure_follows_its_series(facts: Facts) -> list[Fault]:
    """In the series of SERIES the figure rises, or falls, with its key."""
    faults = []
    for table, quantity, column, sign, equal in SERIES:
        rows = facts.rows(table) if quantity == "*" else facts.rows(table, quantity)
        for group in group_by(rows, lambda r, c=column: (*rest(r, c), series_of(r, c))):  # type: ignore[misc]
            placed = sorted(
                ((o, r.line, r) for r in group if (o := order_of(r.cells[column])) is not None), key=lambda p: p[:2]
            )
            for (o1, _, a), (o2, _, b) in itertools.pairwise(placed):
                if o1 == o2:
                    continue
                step = sign * (facts.middle(b) - facts.middle(a))
                if step < 0 or (step == 0 and not equal):
                    found = (
                        f"{printed(b)} after {printed(a)} of line {a.line}, {'falling' if sign > 0 else 'rising'} with"
                        f" {column}"
                    )
                    faults.append(at_row(b, column_of(b), "figure_follows_its_series", found, READ_AGAIN))
    return faults


# Strength

_STRENGTHS = (
    ("proof_strength", "yield_strength"),
    ("yield_strength", "tensile_strength"),
    ("proof_strength", "tensile_strength"),
    ("yield_strength_typical", "tensile_strength_typical"),
    ("proof_load", "tensile_load"),
    ("lower_yield_strength_typical", "upper_yield_strength_typical"),
    ("shear_strength", "tensile_strength_typical"),
    ("torsional_yield_strength_typical", "yield_strength_typical"),
)


def proof_below_yield_below_tensile(facts: Facts) -> list[Fault]:
    """At one key and source: proof <= yield <= tensile strength, shear below tensile."""
    faults = []
    for table in facts.tables:
        for group in group_by(facts.rows(table), lambda r: (*r.key, r.cells["source"])):
            if len(group) < 2:
                continue
            by = {r.cells["quantity"]: r for r in group}
            for weaker, stronger in _STRENGTHS:
                a, b = by.get(weaker), by.get(stronger)
                if a is not None and b is not None and facts.middle(a) > facts.middle(b):
                    found = f"{weaker} {printed(a)} over {stronger} {printed(b)} of line {b.line}"
                    faults.append(at_row(a, column_of(a), "proof_below_yield_below_tensile", found, READ_AGAIN))
    return faults


# Lowest share of tensile strength that proof and yield strength have: annealed stainless bolts yield at 20 of 65 ksi
# (ASTM F593), bolts are proved at 0.55 and more (grade 1: 33 of 60 ksi), grade 4 studs at 65 of a yield of 100 ksi.
# Steel
# shears at 0.577 of its tensile strength (von Mises), and handbooks take 0.6.
_SHARES = {
    ("proof_strength", "tensile_strength"): (0.5, 1.0),
    ("yield_strength", "tensile_strength"): (0.3, 1.0),
    ("proof_strength", "yield_strength"): (0.6, 1.0),
    ("yield_strength_typical", "tensile_strength_typical"): (0.3, 1.0),
    ("proof_load", "tensile_load"): (0.5, 1.0),
    ("shear_strength", "tensile_strength"): (0.5, 0.7),
    ("shear_strength", "tensile_strength_typical"): (0.5, 0.7),
}


def strength_shares_are_likely(facts: Facts) -> list[Fault]:
    """At one key and source, proof and yield strength are a likely share of the tensile strength."""
    faults = []
    for table in ("fasteners/grades", "fasteners/bolt_loads", "tubes/materials", "driveline/steels"):
        for group in group_by(facts.rows(table), lambda r: (*r.key, r.cells["source"])):
            by = {r.cells["quantity"]: r for r in group}
            for (part, whole), (least, most) in _SHARES.items():
                a, b = by.get(part), by.get(whole)
                if a is None or b is None:
                    continue
                if facts.low(a) < least * facts.low(b) or facts.middle(a) > most * facts.middle(b):
                    found = f"{part} {printed(a)} beside {whole} {printed(b)} of line {b.line}"
                    faults.append(at_row(a, column_of(a), "strength_shares_are_likely", found, READ_AGAIN))
    return faults


# Units of calculation: no source of figures prints a part's angle, length or stress in them; a way on the road it does.
UNPRINTED = ("rad", "m", "Pa")
ON_THE_ROAD = ("stopping_distance_maximum",)


def unit_is_one_that_sources_print(facts: Facts) -> list[Fault]:
    """Figures carry the unit that their source prints, and none prints these."""
    return [
        at_row(
            row,
            "unit",
            "unit_is_one_that_sources_print",
            repr(row.cells["unit"]),
            "give the unit as the source prints it",
        )
        for row in facts.all_rows()
        if row.cells["unit"] in UNPRINTED and row.cells["quantity"] not in ON_THE_ROAD
    ]


def unit_is_that_of_its_source(facts: Facts) -> list[Fault]:
    """A source that gives a torque three times in one system of units does not give it once in the other.

    Only torques: a table of strengths in two units may be legible in one of them alone.
    """
    faults = []
    for table in facts.tables:
        torques = [r for r in facts.rows(table) if units.dimension(r.cells["unit"]) == "torque"]
        for rows in group_by(torques, lambda r: (r.cells["quantity"], r.cells["source"])):
            units_here = [r.cells["unit"] for r in rows]
            if len(set(units_here)) == 1 or not rows[0].cells["source"]:
                continue
            usual = max(set(units_here), key=lambda u: (units_here.count(u), u))
            for row in rows:
                unit = row.cells["unit"]
                # Inch-pounds beside foot-pounds, for small beside large, is one system and one table's habit.
                if units_here.count(unit) == 1 and units_here.count(usual) >= 3 and _metric(unit) != _metric(usual):
                    found = f"{unit!r} once, beside {units_here.count(usual)} times {usual!r}"
                    faults.append(at_row(row, "unit", "unit_is_that_of_its_source", found, READ_AGAIN))
    return faults


_INCH_WORDS = re.compile(r"in\b|ft\b|lb|psi|ksi|Msi|degF|mile|mph|cmil|qt|floz|hp")


def _metric(unit: str) -> bool:
    return _INCH_WORDS.search(unit) is None


# Widest true: a clamp torque and its limit in one source; the ends of several in a habit (a manifold nut, M8 to M12).
PRINTED_WITHIN, GATHERED_WITHIN = 2.6, 4.6


def range_is_narrow(facts: Facts) -> list[Fault]:
    """The two ends of a torque are within a factor of each other: a printed range, and the range that several
    sources make.
    """
    faults = []
    for row in facts.all_rows():
        numbers = facts.numbers(row)
        gathered = row.cells["basis"] == "common practice" or ": " in row.cells["conditions"]
        within = GATHERED_WITHIN if gathered else PRINTED_WITHIN
        if row.cells["quantity"].startswith("tightening_torque") and numbers.get("high", 0) > within * numbers.get(
            "low", 1e9
        ):
            faults.append(at_row(row, "high", "range_is_narrow", printed(row), READ_AGAIN))
    return faults


Rule = Callable[[Facts], list[Fault]]

# What rows of every domain must obey; a domain brings its own.
RULES: tuple[Rule, ...] = (
    figure_in_its_range,
    figure_near_its_peers,
    sources_within_a_factor,
    second_printed_unit_agrees,
    single_number_stands_in_value,
    figure_follows_its_series,
    proof_below_yield_below_tensile,
    strength_shares_are_likely,
    range_is_narrow,
    unit_is_one_that_sources_print,
    unit_is_that_of_its_source,
)


def physics_faults(tables: Mapping[str, list[Row]], rules: Iterable[Rule], ranges: Ranges | None = None) -> list[Fault]:
    """What the rules of every domain, and ``rules`` of the domains, find in rows that the schemas passed.

    The ranges of the project's own tables when ``ranges`` is None.
    """
    facts = Facts(tables, ranges)
    return [fault for rule in (*RULES, *rules) for fault in rule(facts)]
