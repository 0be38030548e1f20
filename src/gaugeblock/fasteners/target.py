"""Tightening torques of a joint: calculated from the target preload, or from a table times a multiplier."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import base, derived
from gaugeblock.calc import fasteners as calc
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.joint import Joint, joint_of
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def calculated_torque(found: Joint, data: Refdata) -> Figure | None:
    """T = K D F at the joint's share of proof, with its window; None where no proof or yield strength is published."""
    memo = ("calculated torque", found.key)
    if memo not in data.memo:
        data.memo[memo] = None if found.proof is None else _calculate(found, found.proof, data)
    return data.memo[memo]  # type: ignore[return-value]


def _calculate(found: Joint, proof: Figure, data: Refdata) -> Figure:
    diameter, friction, key = base(found.diameter), found.friction, found.key
    proof_n = base(found.area) * units.to_base(proof.least, proof.unit)
    preload_n = found.share.typical * proof_n
    force, unit = ("N", "N*m") if found.thread.is_metric else ("lbf", "lbf*ft")
    load = units.from_base(proof_n, force)
    proof_load = derived(
        "proof_load_from_area", "proof_load", load, force, (proof, found.area), data, key=key, side="min"
    )
    aimed = units.from_base(preload_n, force)
    preload = derived("preload_share_of_proof", "preload", aimed, force, (found.share, proof_load), data, key=key)
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
        (friction.factor, found.diameter, preload, *friction.ends),
        data,
        ends=(units.from_base(low, unit), units.from_base(high, unit)),
        key=key,
        conditions=f"{found.share.typical:.0%} of proof; nut factor {friction.low:.3g} to {friction.high:.3g}",
    )
    told = dict.fromkeys(named(f) for f in (friction.factor, *friction.ends))
    return made.replace(note=f"{window}; spread from {', '.join(told)}")


def proof_load_of(calculated: Figure) -> Figure:
    """The proof load that a calculated torque stands on."""
    return calculated.inputs[2].inputs[1]


def named(figure: Figure) -> str:
    """The source of a figure with how weak it is."""
    return f"{figure.source or figure.basis}{' from memory' if figure.checked == 'memory' else ''}"


def dry_joint(found: Joint, data: Refdata) -> Joint | None:
    """The same joint with dry threads; None on a dry one."""
    if found.condition == "dry":
        return None
    key = found.key
    grade, dry = (key["standard"], key["grade"]), keys.condition("dry", data)
    return joint_of(found.thread, grade, dry, key["service"], key["joint"], data)


def table_times_multiplier(found: Joint, data: Refdata) -> Figure | None:
    """The published dry torque times a published multiplier for this condition; None where either is missing."""
    memo = ("multiplied", found.key)
    if memo not in data.memo:
        dry = dry_joint(found, data)
        table = dry.published if dry is not None else None
        data.memo[memo] = None if table is None else _multiplied(table, found.condition, found, data)
    return data.memo[memo]  # type: ignore[return-value]


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
