"""What a torque does to the bolt: clamp load with its ends, share of proof, and the checks on both."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check, at_most
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only, shop_unit
from gaugeblock.calc import fasteners as calc
from gaugeblock.fasteners.draft import DRY, PROOF
from gaugeblock.fasteners.joint import Joint
from gaugeblock.fasteners.target import calculated_torque, dry_joint, proof_load_of
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

# Whose torque is judged: that of the tables, the maker's, one that is wanted, a setting that is given.
TABLE, MAKER, WANTED, GIVEN = "table", "maker", "wanted", "given"
_FAR = 25.0
# A figure within a twentieth of the dry one is taken to be as high.
_NEARLY = 0.95


class Strain(Value):
    """What a torque does to a bolt.

    The clamp load and its share of the proof load (None where no strength is known).
    """

    __slots__ = ("clamp", "share", "torque")

    torque: Figure
    clamp: Figure
    share: Figure | None

    def __init__(self, torque: Figure, clamp: Figure, share: Figure | None) -> None:
        put(self, "torque", torque)
        put(self, "clamp", clamp)
        put(self, "share", share)

    @property
    def figures(self) -> list[Figure]:
        """Clamp and share, those that are there."""
        return [f for f in (self.clamp, self.share) if f is not None]


def strain_of(torque: Figure, found: Joint, data: Refdata) -> Strain:
    """The Strain of a torque at the thread."""
    clamp = clamp_of(torque, found, data)
    proof_load = proof_load_of(found, data)
    share = None if proof_load is None else share_of(clamp, proof_load, found, data)
    return Strain(torque, clamp, share)


def clamp_of(torque: Figure, found: Joint, data: Refdata) -> Figure:
    """The clamp load that a torque gives, low and high at the highest and the lowest friction."""
    torque_nm, diameter, friction = base(torque), base(found.diameter), found.friction
    unit = "N" if found.thread.is_metric else "lbf"

    def at(factor: float) -> float:
        return units.from_base(calc.preload_from_torque(torque_nm, factor, diameter), unit)

    return derived(
        "preload_from_torque",
        "clamp_load",
        at(friction.factor.typical),
        unit,
        (torque, friction.factor, found.diameter, *friction.ends),
        data,
        about=_of(torque),
        ends=(at(friction.high), at(friction.low)),
        key=found.key,
        conditions="low and high: at the highest and the lowest friction",
    )


def _of(torque: Figure) -> str:
    """What tells one torque from another in an id: its source, number and unit, and the condition it is for."""
    number = torque.text or f"{torque.typical:.6g}"
    return f"{torque.source or torque.basis} {number} {torque.unit} {torque.key.get('condition', '')}".rstrip()


def share_of(
    clamp: Figure,
    proof_load: Figure,
    found: Joint,
    data: Refdata,
    quantity: str = "share_of_proof",
    conditions: str = "",
) -> Figure:
    """A clamp load as a share of the proof load, its ends with it."""
    proof = proof_load.typical
    return derived(
        "share_of_proof",
        quantity,
        clamp.typical / proof * 100,
        "%",
        (clamp, proof_load),
        data,
        about=_of(clamp.inputs[0]),
        ends=((clamp.low or 0.0) / proof * 100, (clamp.high or 0.0) / proof * 100),
        key=found.key,
        conditions=conditions or "high: at the lowest friction",
    )


def difference(published: Figure, calculated: Figure, found: Joint, data: Refdata) -> Figure:
    """The published torque less the calculated one, as a share of the calculated one."""
    ratio = base(published) / base(calculated) - 1
    return derived(
        "relative_difference",
        "torque_difference",
        ratio * 100,
        "%",
        (published, calculated),
        data,
        key=found.key,
        conditions="the published torque less the calculated one",
    )


def far_apart(apart: Figure, data: Refdata) -> Caution | None:
    """A caution where published and calculated torque differ by over a quarter, with the calculated one."""
    if abs(apart.typical) <= _FAR:
        return None
    text = (
        f"The published torque is {abs(apart.typical):.0f} % {'under' if apart.typical < 0 else 'over'} "
        f"the calculated one, {number_only(apart.inputs[1], data, shop_unit(apart.inputs[1]))}: read both before use."
    )
    return Caution(text, "damage", (apart.id,), "calculated")


def proof_check(strain: Strain, found: Joint, whose: str) -> Check:
    """Whether the clamp stays within the proof load.

    A torque that passes proof at the usual friction may stop. One that passes it only at the lowest friction on record
    informs, for that end is far from usual; where the torque is what somebody named, it asks.
    """
    if strain.share is None:
        reason = "no proof or yield strength is published for this grade and size"
        return Check(PROOF, CANNOT_TELL, reason, bears=INFORM)
    share, friction = strain.share, found.friction
    low, high = share.low or 0.0, share.high or 0.0
    usual = f"about {share.typical:.0f} % of proof"
    ends = f"{low:.0f} to {high:.0f} % as friction goes"
    required, actual = Bound(100.0, "%", "max"), Bound(share.typical, "%", figure=share)
    margin = (100 - high) / 100
    if share.typical > 100 * (1 + 1e-9):
        most = units.from_base(base(strain.torque) * 100 / share.typical, strain.torque.unit)
        reason = (
            f"{usual} ({ends}): the bolt stretches for good; no more than {units.significant(most, 3)} "
            f"{strain.torque.unit} stays within proof"
        )
        bears = ASK if whose == MAKER else STOP
        actual = Bound(share.typical, "%", figure=_at_usual_friction(share))
        return Check(PROOF, NOT_OK, reason, required, actual, margin, bears=bears)
    if not friction.has_low:
        reason = f"{usual} at the usual friction; no source gives the lowest friction of this surface"
        return Check(PROOF, CANNOT_TELL, reason, required, actual, bears=INFORM)
    if high <= 100 * (1 + 1e-9):
        worst = Bound(high, "%", figure=share)
        return at_most(PROOF, worst, Bound(100.0, "%"), f"{usual} ({ends})", bears=INFORM)
    if friction.is_stated:
        reason = f"{usual}; may reach {high:.0f} % (the bolt stretches for good) at the lowest friction given"
        return Check(PROOF, CANNOT_TELL, reason, required, actual, margin, bears=ASK)
    reason = (
        f"{usual}; may reach {high:.0f} % (the bolt stretches for good) if this lot is as slippery as any on record"
    )
    own = share.typical * friction.factor.typical / friction.own_low
    bears = ASK if whose in (WANTED, GIVEN) and own > 100 else INFORM
    return Check(PROOF, CANNOT_TELL, reason, required, actual, margin, bears=bears)


def slippery(proof: Check, strain: Strain, whose: str, dry: DryHere | None = None) -> Caution | None:
    """A caution where a torque that is no maker's passes proof at the lowest friction on record, though not at
    the usual one; with what the dry torque would come to on threads that are not dry.
    """
    share = strain.share
    if share is None or proof.result != CANNOT_TELL or share.high is None or share.high <= 100:
        return None
    if whose == MAKER or (whose != TABLE and dry is not None):  # of the dry torque it is told by itself
        return None
    is_more = dry is not None and dry.highest > share.high * _AS_SLIPPERY
    and_dry = f" The dry torque, {dry.number}, reaches {dry.highest:.0f} %." if dry is not None and is_more else ""
    text = (
        f"On threads as slippery as any on record this torque reaches {share.high:.0f} % of proof: the bolt stretches"
        f" for good.{and_dry}"
    )
    ids = (share.id,) if dry is None else (share.id, dry.share.id)
    return Caution(text, "damage" if dry is None else "injury", ids, "calculated")


def aimed_at(clamp: Figure) -> Figure | None:
    """The clamp load as the preload that its torque was worked out for: no friction stands between the two. None where
    a torque was named.
    """
    torque = clamp.inputs[0]
    is_worked_out = torque.rule is not None and torque.rule.name == "torque_from_preload"
    aimed = next((f for f in torque.inputs if f.quantity == "preload"), None) if is_worked_out else None
    return None if aimed is None else aimed.replace(id=f"{aimed.id}<clamp", quantity=clamp.quantity)


def _at_usual_friction(share: Figure) -> Figure:
    """A share of proof at the governing friction alone: its evidence is not that of the ends of the spread."""
    clamp, proof_load = share.inputs
    aimed = aimed_at(clamp)
    if aimed is not None:
        return share.replace(id=f"{share.id}<usual", low=None, high=None, inputs=(aimed, proof_load), conditions="")
    alone = clamp.replace(
        id=f"{clamp.id}<usual", low=None, high=None, inputs=clamp.inputs[:3], conditions="at the usual friction"
    )
    return share.replace(
        id=f"{share.id}<usual", low=None, high=None, inputs=(alone, proof_load), conditions="at the usual friction"
    )


_AS_SLIPPERY = 1.01  # no more than this is the same torque


class DryHere(Value):
    """What the dry torque would do on this condition: the torque and its number, the share of proof, that in words."""

    __slots__ = ("figure", "number", "share", "text")

    figure: Figure
    number: str
    share: Figure
    text: str

    def __init__(self, figure: Figure, number: str, share: Figure, text: str) -> None:
        put(self, "number", number)
        put(self, "figure", figure)
        put(self, "share", share)
        put(self, "text", text)

    @property
    def highest(self) -> float:
        """Share of proof, in per cent, at the lowest friction."""
        return self.share.high or 0.0


def dry_here(found: Joint, data: Refdata) -> DryHere | None:
    """The DryHere of a joint that is not dry; None on a dry one, or where no dry torque or proof is known."""
    if not found.is_kept:
        return _dry_here(found, data)
    memo = ("dry here", found.key)
    if memo not in data._memo:
        data._memo[memo] = _dry_here(found, data)
    return data._memo[memo]  # type: ignore[return-value]


def _dry_here(found: Joint, data: Refdata) -> DryHere | None:
    dry = dry_joint(found, data)
    proof_load = proof_load_of(found, data)
    figure = None if dry is None else dry.published or calculated_torque(dry, data)
    if figure is None or proof_load is None:
        return None
    number = number_only(figure, data, shop_unit(figure))
    used = f"if {number}, the dry figure, were used here"
    clamp = clamp_of(figure, found, data)
    share = share_of(clamp, proof_load, found, data, "share_of_proof_with_dry_torque", used)
    ends = f"{share.typical:.0f} % of proof, {share.high or 0.0:.0f} % at the lowest friction"
    return DryHere(figure, number, share, f"the dry torque, {number}, gives {ends} on {found.condition} threads")


def dry_check(answer: Figure, dry: DryHere, whose: str, for_condition: str = "") -> tuple[Check, Caution]:
    """Whether the torque is as high as the dry one where that passes proof.

    ``for_condition`` is what a maker's figure is for.
    """
    as_high = base(answer) >= base(dry.figure) * _NEARLY
    if answer.rule is not None and any(f.quantity == "nut_factor" and f.basis == "stated" for f in answer.inputs):
        whose = TABLE  # worked out for the friction that was given: that it is as high as the dry one is no fault
    required = actual = None
    result, bears, reason = OK, INFORM, dry.text
    if as_high and dry.highest > 100:
        result, bears, reason = _as_high_as_dry(dry, whose, for_condition)
        required, actual = Bound(100.0, "%", "max"), Bound(dry.highest, "%", figure=dry.share)
    check = Check(DRY, result, reason, required, actual, bears=bears)
    severity = "injury" if dry.highest > 100 else "note"
    text = f"Do not use the dry torque here: {dry.text}."
    if as_high and whose == TABLE:
        text = (
            f"On {dry.share.key['condition']} threads this torque is no lower than a dry one: the friction of "
            "this lot decides."
        )
    return check, Caution(text, severity, (dry.share.id,), "calculated")


def _as_high_as_dry(dry: DryHere, whose: str, for_condition: str) -> tuple[str, str, str]:
    here = dry.share.key["condition"]
    if whose == MAKER and for_condition == here:
        return OK, INFORM, f"the maker's figure is for {here} threads"
    if whose == MAKER and for_condition:
        return NOT_OK, STOP, f"the maker's figure is for {for_condition} threads, and these are {here}: {dry.text}"
    if whose == MAKER:
        return CANNOT_TELL, ASK, f"the maker's figure is about as high as the dry torque: {dry.text}"
    if whose == TABLE:
        return CANNOT_TELL, INFORM, f"this torque is about as high as the dry one: {dry.text}"
    return NOT_OK, STOP, f"this torque is about as high as the dry one: {dry.text}"
