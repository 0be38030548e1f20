"""Physics rules of threads and bolt grades."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.calc import fasteners
from gaugeblock.tables.facts import (
    READ_AGAIN,
    Facts,
    Thread,
    column_of,
    printed,
    shown,
    thread_of,
)
from gaugeblock.tables.fault import Fault, at_row
from gaugeblock.tables.interval import parse_interval

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from gaugeblock.tables.load import Row


# Threads


def _threads(facts: Facts, *quantities: str) -> Iterator[tuple[Row, Thread]]:
    for row in facts.rows("fasteners/threads", *quantities):
        thread = thread_of(row.cells["thread"])
        if thread is not None:
            yield row, thread


def thread_agrees_with_its_name(facts: Facts) -> list[Fault]:
    """Major diameter, pitch and threads an inch are those of the designation, to the printed digits."""
    faults = []
    for row, thread in _threads(facts, "major_diameter", "pitch", "threads_per_inch"):
        named = {"major_diameter": thread.major_m, "pitch": thread.pitch_m}.get(
            row.cells["quantity"], 1 / thread.pitch_m
        )
        for column, number in facts.numbers(row).items():
            if abs(number - named) > facts.slack(row, column) * (1 + 1e-9) + 1e-9 * named:
                found = f"{shown(row, column)} for {row.cells['thread']}"
                faults.append(at_row(row, column, "thread_agrees_with_its_name", found, READ_AGAIN))
    return faults


def tensile_area(thread: Thread) -> float:
    if thread.is_metric:
        return float(fasteners.stress_area_metric(thread.major_m, thread.pitch_m))
    return float(fasteners.stress_area_unified(thread.major_m, thread.pitch_m))


def _minor_area(thread: Thread) -> float:
    # Root diameter d - 1.299038 P (Unified, basic rounded root of the handbook tables) and d - 1.226869 P (ISO 68-1
    # d3).
    depth = 1.226869 if thread.is_metric else 1.299038
    return 0.7853981633974483 * (thread.major_m - depth * thread.pitch_m) ** 2


def stress_area_agrees_with_formula(facts: Facts) -> list[Fault]:
    """A printed stress area is pi/4 (D - 0.9743 P)^2, or 0.938194 for metric, within its last place and 0.5 %.

    The 0.5 % is for tables that were computed from a rounded mean diameter.
    """
    return _areas(facts, "tensile_stress_area", tensile_area, 0.005, "stress_area_agrees_with_formula")


def minor_area_agrees_with_formula(facts: Facts) -> list[Fault]:
    """A printed root area is that of the root diameter, within its last place and 3 % (tables differ in the root
    form).
    """
    return _areas(facts, "minor_diameter_area", _minor_area, 0.03, "minor_area_agrees_with_formula")


def _root_area(thread: Thread) -> float:
    return 0.7853981633974483 * (thread.major_m - 1.299038 * thread.pitch_m) ** 2


def root_area_agrees_with_formula(facts: Facts) -> list[Fault]:
    """A printed root area is that of the sharp-rooted thread, d - 1.299038 P, within its last place and 0.5 %."""
    return _areas(facts, "root_area", _root_area, 0.005, "root_area_agrees_with_formula")


def _areas(facts: Facts, quantity: str, formula: Callable[[Thread], float], share: float, rule: str) -> list[Fault]:
    faults = []
    for row, thread in _threads(facts, quantity):
        wanted = formula(thread)
        for column, number in facts.numbers(row).items():
            if abs(number - wanted) > facts.slack(row, column) + share * wanted:
                found = f"{shown(row, column)}, the formula gives {units.from_base(wanted, row.cells['unit']):.4g}"
                faults.append(at_row(row, column, rule, found, READ_AGAIN))
    return faults


def stress_area_rises_with_diameter(facts: Facts) -> list[Fault]:
    """In one series and source, the stress area rises with the diameter."""
    faults = []
    placed = sorted(
        _threads(facts, "tensile_stress_area"),
        key=lambda p: (p[1].series, p[0].cells["source"], p[1].major_m, -p[1].pitch_m),
    )
    for (a, s), (b, t) in itertools.pairwise(placed):
        one_series = s.series == t.series and a.cells["source"] == b.cells["source"] and s.major_m < t.major_m
        if one_series and facts.middle(b) <= facts.middle(a):
            found = f"{printed(b)} for {b.cells['thread']}, not over {printed(a)} of {a.cells['thread']}"
            faults.append(at_row(b, column_of(b), "stress_area_rises_with_diameter", found, READ_AGAIN))
    return faults


def minor_below_stress_below_major(facts: Facts) -> list[Fault]:
    """Root area < stress area < area of the major diameter."""
    faults = []
    minor = {(r.cells["thread"], r.cells["source"]): r for r in facts.rows("fasteners/threads", "minor_diameter_area")}
    for row, thread in _threads(facts, "tensile_stress_area"):
        root = minor.get((row.cells["thread"], row.cells["source"]))
        if facts.high(row) >= 0.7853981633974483 * thread.major_m**2 or (
            root is not None and facts.high(root) >= facts.low(row)
        ):
            found = f"{printed(row)}" + (f", root area {printed(root)}" if root else "")
            faults.append(at_row(row, column_of(row), "minor_below_stress_below_major", found, READ_AGAIN))
    return faults


def strip_area_agrees_with_formula(facts: Facts) -> list[Fault]:
    """The shear area of one diameter of engagement is that of the 6g/6H limits, within 4 %.

    The published table rounds the limits of size; 4 % holds all of it and is far below any slip.
    """
    faults = []
    for row in facts.rows("fasteners/thread_stripping", "strip_area_one_diameter"):
        thread = thread_of(row.cells["thread"])
        if thread is None or not thread.is_metric:
            continue
        at = fasteners.limits_metric(thread.major_m, thread.pitch_m)
        inner = fasteners.internal_shear_area(thread.major_m, thread.pitch_m, at.screw_major_min, at.nut_pitch_max)
        outer = fasteners.external_shear_area(thread.major_m, thread.pitch_m, at.nut_minor_max, at.screw_pitch_min)
        wanted = inner if row.cells["member"] == "nut thread" else outer
        if abs(facts.middle(row) - wanted) > 0.04 * wanted:
            found = f"{printed(row)}, the formula gives {units.from_base(wanted, row.cells['unit']):.4g}"
            faults.append(at_row(row, column_of(row), "strip_area_agrees_with_formula", found, READ_AGAIN))
    return faults


def pipe_thread_agrees_with_itself(facts: Facts) -> list[Fault]:
    """Pitch times threads an inch is an inch; depth 0.640327 P; pitch and minor diameter lie one and two depths
    below the major.
    """
    faults = []
    by_size: dict[tuple[str, str], dict[str, Row]] = {}
    for row in facts.rows("fasteners/pipe_threads"):
        by_size.setdefault((row.cells["series"], row.cells["size"]), {})[row.cells["quantity"]] = row
    for found in by_size.values():
        per_inch = found.get("threads_per_inch")
        if per_inch is None:
            continue
        pitch = 1 / facts.middle(per_inch)
        wanted: dict[str, float] = {"pitch": pitch, "thread_depth": 0.640327 * pitch}
        major = found.get("gauge_plane_major_diameter")
        if major is not None:
            wanted["gauge_plane_pitch_diameter"] = facts.middle(major) - 0.640327 * pitch
            wanted["gauge_plane_minor_diameter"] = facts.middle(major) - 2 * 0.640327 * pitch
        for quantity, number in wanted.items():
            row_ = found.get(quantity)
            # 0.003 mm: each printed diameter is rounded on its own.
            if row_ is not None and abs(facts.middle(row_) - number) > 3e-6:
                text = (
                    f"{printed(row_)}, {units.from_base(number, row_.cells['unit']):.4g} by the pitch of line"
                    f" {per_inch.line}"
                )
                faults.append(at_row(row_, column_of(row_), "pipe_thread_agrees_with_itself", text, READ_AGAIN))
    return faults


_CLASS = re.compile(r"([1-9][0-9]?)\.([1-9])", re.ASCII)


def metric_class_says_its_strength(facts: Facts) -> list[Fault]:
    """ISO 898-1 class A.B: tensile strength 100 A MPa, yield 0.B of it (the minima are up to 8 % over); proof 0.85
    to 0.98 of yield.
    """
    faults = []
    for row in facts.rows("fasteners/grades"):
        match = _CLASS.fullmatch(row.cells["grade"])
        if match is None or row.cells["standard"] != "ISO 898-1":
            continue
        tensile = int(match[1]) * 100e6
        yield_ = tensile * int(match[2]) / 10
        least, most = {
            "tensile_strength": (tensile, 1.08 * tensile),
            "yield_strength": (yield_, 1.08 * yield_),
            "tensile_strength_nominal": (tensile, tensile),
            "proof_strength": (0.85 * yield_, yield_),
        }.get(row.cells["quantity"], (0.0, 1e12))
        for column, number in facts.numbers(row).items():
            if not least * (1 - 1e-9) <= number <= most * (1 + 1e-9):
                found = f"{shown(row, column)} for class {row.cells['grade']}"
                faults.append(at_row(row, column, "metric_class_says_its_strength", found, READ_AGAIN))
    return faults


class Strengths:
    """Strength of a grade at a diameter, in Pa."""

    def __init__(self, facts: Facts) -> None:
        self._by: dict[tuple[str, str, str], list[tuple[str, float]]] = {}
        self._found: dict[tuple[str, str, str, float], list[float]] = {}
        for row in facts.rows("fasteners/grades"):
            c = row.cells
            self._by.setdefault((c["standard"], c["grade"], c["quantity"]), []).append((c["size"], facts.middle(row)))

    def all_of(self, standard: str, grade: str, quantity: str, diameter_m: float) -> list[float]:
        """Every strength that the tables give for this grade and size."""
        asked = (standard, grade, quantity, diameter_m)
        out = self._found.get(asked)
        if out is None:
            exact = Fraction(diameter_m).limit_denominator(10**7)
            sized = [(parse_interval(size), strength) for size, strength in self._by.get(asked[:3], ())]
            out = self._found[asked] = [s for interval, s in sized if interval is None or interval.holds(exact)]
        return out


def proof_load_is_strength_times_area(facts: Facts) -> list[Fault]:
    """A proof or tensile load is the strength of the grade times the stress area, within 2 %.

    Loads are printed to three digits on an area of three digits, which is up to 1 % off for the smallest.
    """
    strengths = Strengths(facts)
    faults = []
    for row in facts.rows("fasteners/bolt_loads", "proof_load", "tensile_load"):
        thread = thread_of(row.cells["thread"])
        if thread is None:
            continue
        quantity = row.cells["quantity"].replace("_load", "_strength")
        wanted = [
            s * tensile_area(thread)
            for s in strengths.all_of(row.cells["standard"], row.cells["grade"], quantity, thread.major_m)
        ]
        if wanted and min(abs(facts.middle(row) / w - 1) for w in wanted) > 0.02:
            found = f"{printed(row)}, strength times area is {units.from_base(wanted[0], row.cells['unit']):.4g}"
            faults.append(at_row(row, column_of(row), "proof_load_is_strength_times_area", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    thread_agrees_with_its_name,
    stress_area_agrees_with_formula,
    minor_area_agrees_with_formula,
    root_area_agrees_with_formula,
    stress_area_rises_with_diameter,
    minor_below_stress_below_major,
    strip_area_agrees_with_formula,
    pipe_thread_agrees_with_itself,
    metric_class_says_its_strength,
    proof_load_is_strength_times_area,
)
