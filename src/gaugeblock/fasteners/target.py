"""Tightening torques of a joint: derived from the target preload, from a table times a multiplier, as stated."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import InputError
from gaugeblock.fasteners.joint import Joint, joint_of
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata


def derived_torque(found: Joint, data: Refdata) -> Figure | None:
    """T = K D F at the joint's share of proof, with its window; None where no proof or yield strength is published."""
    memo = ("derived torque", found)
    if memo not in data.memo:
        data.memo[memo] = None if found.proof is None else _derive(found, found.proof, data)
    return data.memo[memo]  # type: ignore[return-value]


def _derive(found: Joint, proof: Figure, data: Refdata) -> Figure:
    diameter = units.to_base(found.diameter.typical, found.diameter.unit)
    proof_n = units.to_base(found.area.typical, found.area.unit) * units.to_base(proof.least, proof.unit)
    preload_n = found.share.typical * proof_n
    force, unit = ("N", "N*m") if found.thread.is_metric else ("lbf", "lbf*ft")
    proof_load = Figure(
        found.id("proof_load_from_area", "proof_load", data), "proof_load", units.from_base(proof_n, force), force, side="min",
        basis="derived", rule=data.rule("proof_load_from_area"), inputs=(proof, found.area), since=data.release, key=found.key,
    )  # fmt: skip
    preload = Figure(
        found.id("preload_share_of_proof", "preload", data), "preload", units.from_base(preload_n, force), force, side="target",
        basis="derived", rule=data.rule("preload_share_of_proof"), inputs=(found.share, proof_load), since=data.release,
        key=found.key,
    )  # fmt: skip
    low, target, high = calc.torque_window(
        found.factor_low, found.factor.typical, found.factor_high, diameter, preload_n, proof_n
    )
    limit = units.from_base(calc.torque_from_preload(found.factor_low, diameter, proof_n), unit)
    window = "window: enough preload at the lowest friction, never past proof at the lowest friction"
    if units.from_base(high, unit) > limit * (1 + 1e-9):
        window = f"at the lowest friction known the target itself is past proof: {limit:.3g} {unit} is the most that stays within"
    return Figure(
        found.id("torque_from_preload", "tightening_torque", data), "tightening_torque", units.from_base(target, unit), unit,
        low=units.from_base(low, unit), high=units.from_base(high, unit), side="target", basis="derived",
        rule=data.rule("torque_from_preload"), inputs=(found.factor, found.diameter, preload, *found.ends), since=data.release, key=found.key,
        conditions=f"{found.share.typical:.0%} of proof; nut factor {found.factor_low:.3g} to {found.factor_high:.3g}",
        note=f"{window}; spread from {', '.join(dict.fromkeys(named(f) for f in (found.factor, *found.ends)))}",
    )  # fmt: skip


def proof_load_of(derived: Figure) -> Figure:
    """The proof load that a derived torque stands on."""
    return derived.inputs[2].inputs[1]


def named(figure: Figure) -> str:
    """The source of a figure with how weak it is."""
    return f"{figure.source or figure.basis}{' from memory' if figure.checked == 'memory' else ''}"


def table_times_multiplier(found: Joint, service: str, joint: str, data: Refdata) -> Figure | None:
    """The published dry torque times a published multiplier for this condition; None where either is missing."""
    if found.condition == "dry":
        return None
    memo = ("multiplied", found, service, joint)
    if memo not in data.memo:
        dry = joint_of(found.thread.cell, f"{found.standard} {found.grade}", "dry", service, joint, data).published
        data.memo[memo] = None if dry is None else _multiplied(dry, found.condition, found, service, data)
    return data.memo[memo]  # type: ignore[return-value]


def table_into(found: Joint, metal: str, service: str, data: Refdata) -> Figure | None:
    """The most that the published cut for a tapped metal leaves of this joint's torque; None where no cut is published.

    The manuals print the cut with their dry tables. It is a share of the clamp that the tapped metal bears, so it is
    taken of the published torque of this condition, else of the calculated one.
    """
    published = found.published if found.published is not None and found.published.basis != "common practice" else None
    whole = published or derived_torque(found, data)
    return None if whole is None else _multiplied(whole, f"into {metal}", found, service, data, "dry")


def _multiplied(
    table: Figure, condition: str, found: Joint, service: str, data: Refdata, base: str | None = None
) -> Figure | None:
    keys = {"condition": condition, "base": base or table.key["condition"], "service": service}
    factor = lookup.look_up_or_none("fasteners/torque_multipliers", "torque_multiplier", data=data, **keys)
    if factor is None:
        return None
    limit = factor.value is None
    return Figure(
        found.id("table_torque_multiplied", "tightening_torque", data, condition),
        "tightening_torque_maximum" if limit else "tightening_torque", table.typical * factor.typical, table.unit,
        side="max" if limit else "target", basis="derived", rule=data.rule("table_torque_multiplied"), inputs=(table, factor),
        since=data.release, key=found.key,
        conditions=f"the {'calculated' if table.basis == 'derived' else 'published'} {found.condition if base else table.key['condition']} torque "
        f"times {factor.text}{' or less' if limit else ''}, {condition}",
    )  # fmt: skip


def maker_torque(maker: tuple[str, str, str]) -> Figure:
    """The part maker's (torque, source, place) as a Figure; InputError when one is blank or the torque is not positive."""
    text, source, place = maker
    measure = _torque(text, "maker's torque")
    if not (source.strip() and place.strip()):
        raise InputError(
            text, "maker's torque", "needs its source and its place", (), "say which sheet, and where on it"
        )
    return Figure(
        f"job:maker:{source}:{place}:{measure.text}:tightening_torque", "tightening_torque", float(measure.value), measure.unit,
        side="target", basis="maker", checked="primary", source=source, locator=place, chosen_by="maker's figure",
        text=measure.text.rsplit(" ", 1)[0],
    )  # fmt: skip


def given_torque(given: str) -> Figure:
    """A setting to judge as a Figure; InputError when it is not positive."""
    measure = _torque(given, "--given")
    return Figure(
        f"asked:given:{measure.text}:tightening_torque", "tightening_torque", float(measure.value), measure.unit, side="target",
        basis="measured", checked="primary", source="as asked", locator="given setting", chosen_by="as asked",
        text=measure.text.rsplit(" ", 1)[0],
    )  # fmt: skip


def _torque(text: str, where: str) -> units.Measure:
    measure = units.parse_measure(text, "torque", where)
    if measure.value <= 0:
        raise InputError(measure.text, where, "must be more than zero", (), "give the torque itself")
    return measure
