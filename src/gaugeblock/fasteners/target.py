"""Tightening torques of a joint: calculated from the target preload, or from a table times a multiplier."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.joint import Joint, joint_of
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def calculated_torque(found: Joint, data: Refdata) -> Figure | None:
    """T = K D F at the joint's share of proof, or the preload wanted, with its window; None where no proof strength is
    known.
    """
    if not found.is_kept:
        return None if found.proof is None else _calculate(found, found.proof, data)
    memo = ("calculated torque", found.key)
    if memo not in data._memo:
        data._memo[memo] = None if found.proof is None else _calculate(found, found.proof, data)
    return data._memo[memo]  # type: ignore[return-value]


def _calculate(found: Joint, proof: Figure, data: Refdata) -> Figure:
    diameter, friction, key = base(found.diameter), found.friction, found.key
    proof_n = base(found.area) * units.to_base(proof.least, proof.unit)
    unit = "N*m" if found.thread.is_metric else "lbf*ft"
    proof_load = _proof_load(found, proof, data)
    preload = preload_of(found, proof_load, data)
    preload_n = base(preload)
    low, target, high = calc.torque_window(
        friction.low, friction.factor.typical, friction.high, diameter, preload_n, proof_n
    )
    limit = units.from_base(calc.torque_from_preload(friction.low, diameter, proof_n), unit)
    window = "window: enough preload at the lowest friction, never past proof at the lowest friction"
    if units.from_base(high, unit) > limit * (1 + 1e-9):
        window = (
            f"at the lowest friction known the target itself is past proof: {limit:.3g} {unit} is the most "
            "that stays within"
        )
    made = derived(
        "torque_from_preload",
        "tightening_torque",
        units.from_base(target, unit),
        unit,
        (friction.factor, found.diameter, preload, *friction.ends, *((proof_load,) if found.aim is not None else ())),
        data,
        ends=(units.from_base(low, unit), units.from_base(high, unit)),
        key=key,
        conditions=f"{preload_n / proof_n:.0%} of proof; nut factor {friction.low:.3g} to {friction.high:.3g}",
    )
    told = dict.fromkeys(named(f) for f in (friction.factor, *friction.ends))
    return made.replace(note=f"{window}; spread from {', '.join(told)}")


def proof_load_of(found: Joint, data: Refdata) -> Figure | None:
    """The proof load of a joint; None where no proof strength is known."""
    return None if found.proof is None else _proof_load(found, found.proof, data)


def _proof_load(found: Joint, proof: Figure, data: Refdata) -> Figure:
    force = "N" if found.thread.is_metric else "lbf"
    load = units.from_base(base(found.area) * units.to_base(proof.least, proof.unit), force)
    inputs, key = (proof, found.area), found.key
    return derived("proof_load_from_area", "proof_load", load, force, inputs, data, key=key, side="min")


def preload_of(found: Joint, proof_load: Figure, data: Refdata) -> Figure:
    """The clamp load that is aimed at: the one that is wanted, else the joint's share of its proof load."""
    if found.aim is not None:
        return found.aim
    aimed = base(found.share) * proof_load.typical
    inputs = (found.share, proof_load)
    return derived("preload_share_of_proof", "preload", aimed, proof_load.unit, inputs, data, key=found.key)


def named(figure: Figure) -> str:
    """The source of a figure with how weak it is."""
    return f"{figure.source or figure.basis}{' from memory' if figure.checked == 'memory' else ''}"


def dry_joint(found: Joint, data: Refdata) -> Joint | None:
    """The same joint with dry threads; None on a dry one."""
    key = found.key
    if found.condition in ("", "dry") or not key["standard"]:
        return None
    grade, dry = (key["standard"], key["grade"]), keys.condition("dry", data)
    try:
        return joint_of(found.thread, grade, dry, key["service"], key["joint"], data)
    except LookupMiss:
        return None  # a bolt whose strength is stated, and whose grade has none in the tables


def table_times_multiplier(found: Joint, data: Refdata) -> Figure | None:
    """The published dry torque times a published multiplier for this condition; None where either is missing."""
    memo = ("multiplied", found.key)
    if memo not in data._memo:
        dry = dry_joint(found, data)
        table = dry.published if dry is not None else None
        data._memo[memo] = None if table is None else _multiplied(table, found.condition, found, data)
    return data._memo[memo]  # type: ignore[return-value]


def ceiling_into(found: Joint, metal: str, data: Refdata) -> Figure | None:
    """The most that the published cut for a tapped metal leaves of this joint's torque; None where no cut is published.

    The manuals print the cut with their dry tables. It is a share of the clamp that the tapped metal bears, so it is
    taken of the published torque of this condition, else of the calculated one. Of several cuts the strictest counts.
    """
    whole = found.table or calculated_torque(found, data)
    return None if whole is None else _multiplied(whole, f"into {metal}", found, data, "dry")


def _multiplied(table: Figure, condition: str, found: Joint, data: Refdata, base_of: str = "") -> Figure | None:
    factor = lookup.look_up_or_none(
        "fasteners/torque_multipliers",
        "torque_multiplier",
        data=data,
        condition=condition,
        base=base_of or table.key["condition"],
        service=found.key["service"],
    )
    if factor is None:
        return None
    is_limit = factor.value is None
    if is_limit:
        factor = min((factor, *lookup.same_specificity(factor)), key=lambda f: f.typical)
    what = "calculated" if table.basis == "derived" else "published"
    of = found.condition if base_of else table.key["condition"]
    return derived(
        "table_torque_multiplied",
        "tightening_torque_maximum" if is_limit else "tightening_torque",
        table.typical * factor.typical,
        table.unit,
        (table, factor),
        data,
        about=condition,
        side="max" if is_limit else "target",
        key=found.key,
        conditions=f"the {what} {of} torque times {factor.text}{' or less' if is_limit else ''}, {condition}",
    )


def least_of(found: Joint, data: Refdata) -> Figure | None:
    """The least torque of a table for this thread, grade and condition; None where none is printed."""
    key = found.key
    if not key["standard"] or not key["condition"]:
        return None
    at = {name: key[name] for name in ("thread", "standard", "grade", "condition", "service")}
    return lookup.look_up_or_none("fasteners/torques", "tightening_torque_minimum", data=data, **at)
