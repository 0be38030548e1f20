"""Physics rules of published tightening torques."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.calc import fasteners
from gaugeblock.fasteners.physics import Strengths, tensile_area
from gaugeblock.tables.facts import (
    NUMBERS,
    READ_AGAIN,
    Facts,
    Thread,
    column_of,
    group_by,
    printed,
    rest,
    series_of,
    shown,
    size_m,
    thread_of,
)
from gaugeblock.tables.fault import Fault, at_row

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from gaugeblock.tables.load import Row


TORQUES = ("tightening_torque", "tightening_torque_maximum", "tightening_torque_minimum")
# The nut factor of dry steel threads, and of a table that names no condition.
_DRY = 0.2
# Load over proof load at that nut factor. Above 1 the bolt may stretch for good; no published row is above 0.9. The low
# end is 0.34 of the usual 75 % of proof, the lowest published torque.
PROOF_BAND = (0.255, 1.0)


def _torque_rows(facts: Facts) -> Iterator[tuple[Row, Thread]]:
    for row in facts.rows("fasteners/torques", *TORQUES):
        thread = thread_of(row.cells["thread"])
        if thread is not None:
            yield row, thread


def published_torque_is_under_proof(facts: Facts) -> list[Fault]:
    """At a nut factor of 0.2 a published torque puts the bolt under its proof load, and over a quarter of it.

    Rows whose grade has no proof strength in the tables are not judged. At the low end of friction the same torque
    loads the bolt further: that is the sheet's caution, not a fault of the row.
    """
    strengths = Strengths(facts)
    faults = []
    for row, thread in _torque_rows(facts):
        proof = [
            s
            for grade in row.cells["grade"].split(" or ")
            for s in strengths.all_of(row.cells["standard"], grade, "proof_strength", thread.major_m)
        ]
        if not proof:
            continue
        for column, torque in facts.numbers(row).items():
            load = fasteners.preload_from_torque(torque, _DRY, thread.major_m) / tensile_area(thread)
            if not PROOF_BAND[0] * min(proof) <= load <= PROOF_BAND[1] * max(proof):
                found = (
                    f"{shown(row, column)}, which loads the bolt to {load / max(proof):.2f} of proof at a nut factor of"
                    f" {_DRY}"
                )
                faults.append(at_row(row, column, "published_torque_is_under_proof", found, READ_AGAIN))
    return faults


def published_torque_rises_with_diameter(facts: Facts) -> list[Fault]:
    """For one grade, condition, series and source, the torque rises with the diameter.

    Where the grade is weaker from the larger size on (grade 2 over 3/4 in) it may stand still.
    """
    faults = []
    strengths = Strengths(facts)

    def proof(row: Row, size: float) -> float:
        return max(strengths.all_of(row.cells["standard"], row.cells["grade"], "proof_strength", size), default=0.0)

    series = group_by(facts.rows("fasteners/torques"), lambda r: (*rest(r, "thread"), series_of(r, "thread")))
    for group in series:
        placed = sorted(
            ((s, r.line, r) for r in group if (s := size_m(r.cells["thread"])) is not None), key=lambda p: p[:2]
        )
        for (d1, _, a), (d2, _, b) in itertools.pairwise(placed):
            weaker = proof(b, d2) < proof(a, d1)
            fell = any(
                facts.numbers(b)[c] < facts.numbers(a)[c] or (facts.numbers(b)[c] == facts.numbers(a)[c] and not weaker)
                for c in NUMBERS
                if c in facts.numbers(a) and c in facts.numbers(b)
            )
            if d1 < d2 and fell:
                found = f"{printed(b)} for {b.cells['thread']}, not over {printed(a)} of {a.cells['thread']}"
                faults.append(at_row(b, column_of(b), "published_torque_rises_with_diameter", found, READ_AGAIN))
    return faults


def fine_thread_takes_no_less_torque(facts: Facts) -> list[Fault]:
    """At one diameter, grade, condition and source, the fine thread's torque is not below the coarse one's."""
    faults = []
    for group in group_by(
        facts.rows("fasteners/torques"), lambda r: (*rest(r, "thread"), str(size_m(r.cells["thread"])))
    ):
        placed = sorted(
            ((-t.pitch_m, r.line, r) for r in group if (t := thread_of(r.cells["thread"])) is not None),
            key=lambda p: p[:2],
        )
        for (p1, _, a), (p2, _, b) in itertools.pairwise(placed):
            if p1 < p2 and facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} for {b.cells['thread']}, under {printed(a)} of {a.cells['thread']}"
                faults.append(at_row(b, column_of(b), "fine_thread_takes_no_less_torque", found, READ_AGAIN))
    return faults


def stronger_grade_takes_no_less_torque(facts: Facts) -> list[Fault]:
    """At one thread, condition and source, a grade of higher proof strength takes no less torque."""
    strengths = Strengths(facts)
    faults = []
    for group in group_by(facts.rows("fasteners/torques"), lambda r: rest(r, "grade")):
        placed = []
        for row in group:
            size = size_m(row.cells["thread"])
            last = row.cells["grade"].split(" or ")[-1]
            proof = strengths.all_of(row.cells["standard"], last, "proof_strength", size) if size else []
            if proof:
                placed.append((max(proof), row.line, row))
        placed.sort(key=lambda p: p[:2])
        for (s1, _, a), (s2, _, b) in itertools.pairwise(placed):
            if s1 < s2 and facts.middle(b) < facts.middle(a):
                found = f"{printed(b)} for grade {b.cells['grade']}, under {printed(a)} of grade {a.cells['grade']}"
                faults.append(at_row(b, column_of(b), "stronger_grade_takes_no_less_torque", found, READ_AGAIN))
    return faults


# Torque over the cube of the diameter, a stress: K x preload stress x area / D^2. Weak to strong bolts with oiled to
# rough threads span 1.5 to 20 ksi; steel in aluminium and thin nuts reach down to 0.5 ksi.
TORQUE_STRESS = (0.5, 25.0)


# Parts whose thread holds no bolt's clamp: they squeeze a washer or an O-ring, or are hollow.
_NO_BOLT = ("plug", "stud end", "oil filter")


def torque_suits_its_thread(facts: Facts) -> list[Fault]:
    """A tightening torque over the cube of its thread's diameter is a likely stress; a plug only squeezes its
    washer.
    """
    faults = []
    least, most = (units.to_base(end, "ksi") for end in TORQUE_STRESS)
    for table, column in (("fasteners/torques", "thread"), ("fasteners/part_torques", "size")):
        for row in facts.rows(table, *TORQUES):
            is_bolt = table == "fasteners/torques" or (
                thread_of(row.cells[column]) is not None and not any(word in row.cells["part"] for word in _NO_BOLT)
            )
            size = size_m(row.cells[column]) if is_bolt else None
            for name, torque in facts.numbers(row).items() if size else ():
                stress = torque / size**3 if size else 0.0
                if not least <= stress <= most:
                    found = f"{shown(row, name)} on {row.cells[column]}: {units.from_base(stress, 'ksi'):.3g} ksi"
                    faults.append(at_row(row, name, "torque_suits_its_thread", found, READ_AGAIN))
    return faults


RULES: tuple[Callable[[Facts], list[Fault]], ...] = (
    published_torque_is_under_proof,
    published_torque_rises_with_diameter,
    fine_thread_takes_no_less_torque,
    stronger_grade_takes_no_less_torque,
    torque_suits_its_thread,
)
