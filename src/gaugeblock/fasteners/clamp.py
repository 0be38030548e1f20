"""What a torque does to the bolt: clamp load with its ends, share of proof, and the checks on both."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check, at_most
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import fasteners as calc
from gaugeblock.fasteners.joint import Joint, joint_of
from gaugeblock.fasteners.target import derived_torque, named, proof_load_of
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata

_FAR = 25.0
# A figure within a twentieth of the dry one is taken to be as high.
_NEARLY = 0.95


def clamp_of(torque: Figure, found: Joint, data: Refdata) -> Figure:
    """The clamp load that a torque gives, low and high at the highest and the lowest friction."""
    torque_nm = units.to_base(torque.typical, torque.unit)
    diameter = units.to_base(found.diameter.typical, found.diameter.unit)
    unit = "N" if found.thread.is_metric else "lbf"
    scale = float(units.factor(unit))
    return Figure(
        found.id("preload_from_torque", "clamp_load", data, _of(torque)), "clamp_load",
        calc.preload_from_torque(torque_nm, found.factor.typical, diameter) / scale, unit,
        low=calc.preload_from_torque(torque_nm, found.factor_high, diameter) / scale,
        high=calc.preload_from_torque(torque_nm, found.factor_low, diameter) / scale,
        basis="derived", rule=data.rule("preload_from_torque"), inputs=(torque, found.factor, found.diameter, *found.ends), since=data.release,
        key=found.key, conditions="low and high: at the highest and the lowest friction",
    )  # fmt: skip


def _of(torque: Figure) -> str:
    """What tells one torque from another in an id: its source, number and unit, and the condition it is for."""
    return f"{torque.source or torque.basis} {torque.text or 'target'} {torque.unit} {torque.key.get('condition', '')}".rstrip()


def share_of(clamp: Figure, proof_load: Figure, found: Joint, data: Refdata) -> Figure:
    """A clamp load as a share of the proof load, its ends with it."""
    proof = proof_load.typical
    low, high = clamp.low or 0.0, clamp.high or 0.0
    return Figure(
        found.id("share_of_proof", "share_of_proof", data, _of(clamp.inputs[0])), "share_of_proof", clamp.typical / proof * 100,
        "%", low=low / proof * 100, high=high / proof * 100, basis="derived", rule=data.rule("share_of_proof"),
        inputs=(clamp, proof_load), since=data.release, key=found.key, conditions="high: at the lowest friction",
    )  # fmt: skip


def difference(published: Figure, derived: Figure, found: Joint, data: Refdata) -> Figure:
    """The published torque less the derived one, as a share of the derived one."""
    ratio = units.to_base(published.typical, published.unit) / units.to_base(derived.typical, derived.unit) - 1
    return Figure(
        found.id("relative_difference", "torque_difference", data), "torque_difference", ratio * 100, "%", basis="derived",
        rule=data.rule("relative_difference"), inputs=(published, derived), since=data.release, key=found.key,
        conditions="the published torque less the calculated one",
    )  # fmt: skip


def far_apart(apart: Figure) -> Caution | None:
    """A caution where published and derived torque differ by over a quarter."""
    if abs(apart.typical) <= _FAR:
        return None
    text = f"The published torque is {abs(apart.typical):.0f} % {'under' if apart.typical < 0 else 'over'} the calculated one: read both before use."
    return Caution(text, "damage", (apart.id,), "calculated")


def proof_check(share: Figure | None, found: Joint, torque: Figure) -> Check:
    """Clamp at the lowest friction within the proof load; ``cannot tell`` when only a lesser row says it is not."""
    name = "clamp at low friction within proof"
    if share is None:
        return Check(name, CANNOT_TELL, "no proof or yield strength is published for this grade and size")
    high = share.high or 0.0
    own = share.typical * found.factor.typical / found.factor_own_low
    check = at_most(name, Bound(high, "%", figure=share), Bound(100.0, "%"), "")
    ends = (
        f"{share.low:.0f} to {high:.0f} % of proof over nut factors {found.factor_high:.3g} to {found.factor_low:.3g}"
    )
    if check.result == OK:
        check = check.replace(reason=ends)
    elif own <= 100:
        rows = lookup.same_specificity(found.factor) or (found.factor,)
        strict = min(rows, key=lambda f: f.low if f.low is not None else f.typical)
        who = named(strict)
        if found.scatter is not None:
            who = f"tool scatter of {found.scatter.typical:g} %, {found.scatter.source}"
        past = f"past it only at the lowest friction known (nut factor {found.factor_low:.3g}, {who})"
        check = check.replace(result=OK if torque.basis == "maker" else CANNOT_TELL)
        tail = "the maker's figure governs" if torque.basis == "maker" else "measure this lot's friction, or go lower"
        check = check.replace(reason=f"{share.low:.0f} to {high:.0f} % of proof: {past}; {tail}")
    else:
        check = check.replace(reason=f"{ends}: the bolt may stretch for good; use less torque or measure the friction")
    return check


class DryHere:
    """What the dry figure would do on this condition: the figure, it in N m, the share of proof, and that in words."""

    __slots__ = ("figure", "highest", "share", "text", "torque_nm")

    def __init__(self, figure: Figure, torque_nm: float, share: Figure, text: str) -> None:
        self.figure = figure
        self.torque_nm = torque_nm
        self.share = share
        self.highest = share.high or 0.0
        self.text = text


def dry_here(found: Joint, service: str, joint: str, data: Refdata) -> DryHere | None:
    """The DryHere of a joint that is not dry; None on a dry one, or where no dry torque or proof is known."""
    if found.condition == "dry":
        return None
    memo = ("dry here", found, service, joint)
    if memo not in data.memo:
        data.memo[memo] = _dry_here(found, service, joint, data)
    return data.memo[memo]  # type: ignore[return-value]


def _dry_here(found: Joint, service: str, joint: str, data: Refdata) -> DryHere | None:
    dry = joint_of(found.thread.cell, f"{found.standard} {found.grade}", "dry", service, joint, data)
    here = derived_torque(found, data)
    figure = dry.published or derived_torque(dry, data)
    if figure is None or here is None:
        return None
    clamp = clamp_of(figure, found, data)
    share = share_of(clamp, proof_load_of(here), found, data)
    share = share.replace(
        id=f"{share.id}<dry", quantity="share_of_proof_with_dry_torque", conditions=f"if {number_only(figure, data)}, the dry figure, were used here"
    )  # fmt: skip
    ends = f"{share.typical:.0f} % of proof, {share.high or 0.0:.0f} % at the lowest friction"
    text = f"the dry figure, {number_only(figure, data)}, on {found.condition} threads: {ends}"
    return DryHere(figure, units.to_base(figure.typical, figure.unit), share, text)


def dry_check(answer: Figure, dry: DryHere, is_given: bool) -> tuple[Check, Caution]:
    """Not ok when the setting to judge is as high as the dry figure and that passes proof here."""
    used = units.to_base(answer.typical, answer.unit)
    as_high = used >= dry.torque_nm * _NEARLY
    result, reason = OK, f"not used here; {dry.text}"
    if as_high and dry.highest > 100:
        result = NOT_OK if is_given else CANNOT_TELL
        ask = "ask whether the maker's figure is for dry threads; " if answer.basis == "maker" else ""
        reason = f"{ask}this figure is about as high as the dry one; {dry.text}"
    bounds = (Bound(100.0, "%", "max"), Bound(dry.highest, "%", figure=dry.share)) if result != OK else ()
    check = Check("dry figure kept off this condition", result, reason, *bounds)
    severity = "injury" if dry.highest > 100 else "note"
    text = f"Do not use the dry torque here: {dry.text}."
    if as_high and answer.basis != "maker" and not is_given:
        text = f"On {dry.share.key['condition']} threads this torque is no lower than a dry one: the friction of this lot decides."
    return check, Caution(text, severity, (dry.share.id,), "calculated")
