"""The Joint of a bolt of which something is stated: what is stated stands in place of the tables, which stand
beside.
"""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import base, derived, stated_known
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners.joint import (
    Joint,
    diameter_of,
    friction_of,
    joint_of,
    proof_from_yield,
    proof_of,
    scattered,
    share_of_proof,
)
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt
    from gaugeblock.fasteners.joint import Friction
    from gaugeblock.figure import Figure
    from gaugeblock.known import Known
    from gaugeblock.tables.load import Refdata

_SAME = 1e-9


def joint_of_bolt(bolt: Bolt, data: Refdata) -> Joint | None:
    """The Joint of a bolt; None where too little of it is known. LookupMiss where the tables have no strength for it
    and none is stated.
    """
    if bolt.thread is None:
        return None
    found = None
    if bolt.grade is not None and bolt.condition is not None:
        try:
            found = joint_of(bolt.thread, bolt.grade, bolt.condition, bolt.service, bolt.joint, data)
        except LookupMiss:
            if not bolt.own.has_strength:
                raise
    if not bolt.own.is_stated:
        return found
    has_strength = found is not None or bolt.own.has_strength or bolt.grade is not None
    has_friction = bolt.condition is not None or bolt.own.nut_factor is not None
    return _stated(bolt, found, data) if has_strength and has_friction else None


def _stated(bolt: Bolt, found: Joint | None, data: Refdata) -> Joint:
    """The joint with what is stated of it; ``found`` is what the tables say of it, None where they say nothing."""
    own, thread = bolt.own, bolt.thread
    assert thread is not None
    standard, grade = bolt.grade or ("", "")
    condition = bolt.condition or ("", "", "")
    key = Keys(
        thread=thread.cell,
        standard=standard,
        grade=grade,
        condition=condition[0],
        service=bolt.service,
        joint=bolt.joint,
        stated=own.text,
    )
    area = found.area if found is not None else _area(thread.cell, data)
    tables = found.friction if found is not None else None
    if tables is None and bolt.condition is not None:
        tables = friction_of(bolt.grade or ("", ""), bolt.condition, data)
    friction = _friction(own.nut_factor, tables, condition[2], data)
    share = found.share if found is not None else share_of_proof(bolt.joint, data)
    before = (found.proof, found.tensile) if found is not None else _of_grade(bolt, data)
    proof, tensile = _strengths(bolt, before, dict(key), data)
    diameter = found.diameter if found is not None else diameter_of(thread, data)
    made = Joint(thread, key, area, diameter, tensile, proof, friction, share, None)
    aim, wanted = _aim(bolt, made, data)
    of_torque: list[tuple[Figure | None, Figure | None]] = [
        (tables.factor if tables is not None else None, friction.factor),
        (share, wanted),
        (before[0], proof),
    ]
    pairs = [*of_torque, (before[1], tensile), _yields(bolt, data)]
    changed = [(was, now) for was, now in pairs if now is not was and now is not None]
    is_other = any(not _alike(was, now) for was, now in of_torque if now is not was)
    return made.replace(
        share=wanted,
        published=found.published if found is not None else None,
        is_own=aim is not None or is_other,
        aim=aim,
        beside=tuple(f for was, now in changed for f in (now, was) if f is not None),
    )


def _alike(before: Figure | None, now: Figure | None) -> bool:
    """Whether what is stated is the tables' own number."""
    if before is None or now is None:
        return False
    return abs(base(now) - base(before)) <= _SAME * abs(base(before))


def _area(cell: str, data: Refdata) -> Figure:
    return lookup.look_up("fasteners/threads", "tensile_stress_area", data=data, thread=cell)


def _friction(stated: Known | None, tables: Friction | None, lubricant: str, data: Refdata) -> Friction:
    """The friction that is stated. One number has the ends of the tool's scatter; where it is the tables' own number,
    theirs.
    """
    if stated is None:
        assert tables is not None
        return tables
    factor = stated_known(stated, "nut_factor", "nut factor", data)
    rubs = tables.rubs if tables is not None else ""
    if factor.low is not None and factor.high is not None:
        from gaugeblock.fasteners.joint import Friction

        return Friction(factor, factor.low, factor.high, factor.low, True, (), rubs, "")
    if tables is not None and _alike(tables.factor, factor):
        return tables.replace(factor=factor, ends=(tables.factor, *tables.ends))
    return scattered(factor, lubricant or "none", rubs, "", data)


def _of_grade(bolt: Bolt, data: Refdata) -> tuple[Figure | None, Figure | None]:
    """Proof and tensile strength of the grade in the tables; None twice where it has none and one is stated."""
    if bolt.grade is None or bolt.thread is None:
        return None, None
    standard, grade = bolt.grade
    at = {"standard": standard, "grade": grade, "size": bolt.thread.size}
    try:
        proof = proof_of(at, data)
    except LookupMiss:
        if not bolt.own.has_strength:
            raise
        return None, None
    return proof, lookup.look_up_or_none("fasteners/grades", "tensile_strength", data=data, **at)


def _yields(bolt: Bolt, data: Refdata) -> tuple[Figure | None, Figure | None]:
    """The yield strength of the grade in the tables, and the one that is stated."""
    own = bolt.own.yield_strength
    if own is None:
        return None, None
    table = None
    if bolt.grade is not None and bolt.thread is not None:
        at = {"standard": bolt.grade[0], "grade": bolt.grade[1], "size": bolt.thread.size}
        table = lookup.look_up_or_none("fasteners/grades", "yield_strength", data=data, **at)
    return table, stated_known(own, "yield_strength", "yield strength", data)


def _strengths(
    bolt: Bolt, before: tuple[Figure | None, Figure | None], at: dict[str, str], data: Refdata
) -> tuple[Figure | None, Figure | None]:
    """Proof and tensile strength: those stated, else 0.85 of a yield that is stated, else the tables'."""
    own = bolt.own
    proof, tensile = before
    if own.proof_strength is not None:
        proof = stated_known(own.proof_strength, "proof_strength", "proof strength", data)
    elif own.yield_strength is not None:
        yields = stated_known(own.yield_strength, "yield_strength", "yield strength", data)
        proof = proof_from_yield(yields, at, data)
    if own.tensile_strength is not None:
        tensile = stated_known(own.tensile_strength, "tensile_strength", "tensile strength", data)
    return proof, tensile


def _aim(bolt: Bolt, made: Joint, data: Refdata) -> tuple[Figure | None, Figure]:
    """The preload that is wanted as a force, None where it is a share of proof; and that share, or the tables'."""
    wanted = bolt.own.preload
    if wanted is None:
        return None, made.share
    dim = units.dimension(wanted.unit)
    if dim == "ratio":
        return None, stated_known(wanted, "preload_share", "preload", data)
    if dim == "force":
        return stated_known(wanted, "preload", "preload", data), made.share
    from gaugeblock.fasteners import springs

    stiff = springs.bolt_stiffness(made, bolt.grip, data)
    if stiff is None:
        return None, made.share  # what the stretch lacks is asked
    stretch = stated_known(wanted, "bolt_stretch_wanted", "preload", data)
    force = "N" if made.thread.is_metric else "lbf"
    load = units.from_base(base(stiff) * base(stretch), force)
    return derived("preload_from_stretch", "preload", load, force, (stiff, stretch), data, key=made.key), made.share
