"""Bolt and clamped parts as springs: stretch, both stiffnesses, what an outside load does to bolt and joint."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, derived, moved_ends, stated, stated_known
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.calc import fasteners as calc
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.clamp import aimed_at
from gaugeblock.fasteners.draft import CLOSED, LOADED, STRETCH, Draft
from gaugeblock.fasteners.joint import Joint
from gaugeblock.fasteners.target import proof_load_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt, Grip
    from gaugeblock.fasteners.clamp import Strain
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


def bolt_stiffness(found: Joint, grip: Grip | None, data: Refdata) -> Figure | None:
    """The stiffness of the bolt over its grip; None where the grip or the shank inside it is not given."""
    if grip is None or grip.shank is None:
        return None
    modulus = _bolt_modulus(found, grip, data)
    length, shank = _length(grip, data), stated(grip.shank, "shank_in_grip", "grip shank", data)
    unit = _unit(found)
    number = calc.bolt_stiffness(base(found.diameter), base(found.area), base(modulus), base(length), base(shank))
    inputs = (found.diameter, found.area, modulus, length, shank)
    name = "bolt_stiffness"
    return derived(name, name, units.from_base(number, unit), unit, inputs, data, about=grip.text, key=found.key)


def check(found: Joint, strain: Strain, grip: Grip, draft: Draft) -> None:
    """Figures, checks and questions of the grip at this clamp."""
    stiff = bolt_stiffness(found, grip, draft.data)
    if stiff is None:
        _ask_shank(draft, INFORM)
        return
    draft.figure(stretch_of(strain.clamp, stiff, found, draft.data))
    members = _members(found, grip, draft)
    if members is None:
        draft.figure(stiff)
        return
    share = _share(stiff, members, found, draft.data)
    draft.figure(share, stiff, members)
    if grip.load is not None:
        _check_load(found, strain, grip, share, draft)


def ask_for_stretch(bolt: Bolt, draft: Draft) -> None:
    """What is missing where the preload wanted is a stretch."""
    wanted = bolt.own.preload
    if wanted is None or units.dimension(wanted.unit) != "length":
        return
    if bolt.grip is None:
        reason = f"a stretch of {wanted.typical.text} is wanted, and the grip is not given"
        draft.check(Check(STRETCH, CANNOT_TELL, reason, bears=ASK))
        text = "Measure the grip, all that is clamped, and the plain shank inside it."
        draft.ask(Question(MEASURE, text, "grip.length", (STRETCH,)))
    elif bolt.grip.shank is None:
        _ask_shank(draft, ASK)


def _ask_shank(draft: Draft, bears: str) -> None:
    draft.check(Check(STRETCH, CANNOT_TELL, "the plain shank inside the grip is not given", bears=bears))
    text = "Measure the plain shank inside the grip; 0 in where the thread runs all through it."
    draft.ask(Question(MEASURE, text, "grip.shank", (STRETCH,)))


def stretch_of(clamp: Figure, stiff: Figure, found: Joint, data: Refdata) -> Figure:
    """How far a clamp load stretches the bolt, its ends with it."""
    unit = "mm" if found.thread.is_metric else "in"

    def at(load: float) -> float:
        return units.from_base(units.to_base(load, clamp.unit) / base(stiff), unit)

    ends, about = moved_ends(clamp, at), clamp.id
    inputs = (clamp, stiff)
    name = "bolt_stretch"
    return derived(name, name, at(clamp.typical), unit, inputs, data, about=about, ends=ends, key=found.key)


def _unit(found: Joint) -> str:
    return "kN/mm" if found.thread.is_metric else "lbf/in"


def _length(grip: Grip, data: Refdata) -> Figure:
    return stated(grip.length, "clamped_length", "grip length", data)


def _modulus_of(metal: str, data: Refdata) -> Figure | None:
    return lookup.look_up_or_none("fasteners/moduli", "modulus_of_elasticity", data=data, metal=metal)


def _bolt_modulus(found: Joint, grip: Grip, data: Refdata) -> Figure:
    if grip.bolt_modulus is not None:
        return stated_known(grip.bolt_modulus, "modulus_of_elasticity", "grip bolt modulus", data)
    rubs = keys.surface_of(found.key["standard"], found.key["grade"], "bare steel", data)
    metal = "stainless steel" if rubs == "stainless steel" else "steel"
    return lookup.look_up("fasteners/moduli", "modulus_of_elasticity", data=data, metal=metal)


def _members(found: Joint, grip: Grip, draft: Draft) -> Figure | None:
    """The stiffness of the clamped parts; asked where neither their metal nor its modulus is given."""
    data = draft.data
    modulus = None
    if grip.modulus is not None:
        modulus = stated_known(grip.modulus, "modulus_of_elasticity", "grip modulus", data)
        draft.figure(_modulus_of(grip.metal, data) if grip.metal else None)
    elif grip.metal:
        modulus = _modulus_of(grip.metal, data)
    if modulus is None:
        why = f"no modulus of {grip.metal} is on record" if grip.metal else "the clamped metal is not given"
        draft.check(Check(CLOSED, CANNOT_TELL, why, bears=ASK if grip.load is not None else INFORM))
        text = "Say what metal is clamped, or state its modulus." if not grip.metal else "State its modulus."
        draft.ask(Question(FILL_IN, text, "grip.modulus" if grip.metal else "grip.metal", (CLOSED,)))
        return None
    length, unit = _length(grip, data), _unit(found)
    number = calc.member_stiffness(base(found.diameter), base(modulus), base(length))
    inputs, name = (found.diameter, modulus, length), "member_stiffness"
    return derived(name, name, units.from_base(number, unit), unit, inputs, data, about=grip.text, key=found.key)


def _share(stiff: Figure, members: Figure, found: Joint, data: Refdata) -> Figure:
    number = 100 * calc.load_share(base(stiff), base(members))
    about, inputs, name = f"{stiff.id}|{members.id}", (stiff, members), "bolt_load_share"
    return derived(name, name, number, "%", inputs, data, about=about, key=found.key)


# --- under an outside load --------------------------------------------------------------------------------------------


def _check_load(found: Joint, strain: Strain, grip: Grip, share: Figure, draft: Draft) -> None:
    """Whether the joint stays closed and the bolt within proof under the load."""
    data, clamp = draft.data, strain.clamp
    assert grip.load is not None
    load = stated(grip.load, "outside_load", "grip load", data)
    pull, part, unit = base(load), base(share), clamp.unit

    def opens_at(force: float) -> float:
        return force / (1 - part)

    def bolt_at(force: float) -> float:
        return force + units.from_base(part * pull, unit)

    opens = derived(
        "opening_load",
        "opening_load",
        opens_at(clamp.typical),
        unit,
        (clamp, share),
        data,
        about=clamp.id,
        ends=moved_ends(clamp, opens_at),
        key=found.key,
        conditions="low: at the highest friction",
    )
    bolt = derived(
        "bolt_load",
        "bolt_load",
        bolt_at(clamp.typical),
        unit,
        (clamp, share, load),
        data,
        about=f"{clamp.id}|{load.text} {load.unit}",
        ends=moved_ends(clamp, bolt_at),
        key=found.key,
        conditions="high: at the lowest friction",
    )
    draft.figure(load, opens, bolt)
    aimed = aimed_at(clamp)
    usual = (
        opens if aimed is None else opens.replace(id=f"{opens.id}<usual", low=None, high=None, inputs=(aimed, share))
    )
    draft.check(_closed(load, opens, usual, data))
    proof = proof_load_of(found, data)
    if proof is not None:
        draft.check(_loaded(bolt, proof, data))


def _closed(load: Figure, opens: Figure, usual: Figure, data: Refdata) -> Check:
    """Opened at the usual friction it stops, by what that is known from; at the highest friction alone it asks, for
    that end is far from usual.
    """
    got = units.from_base(base(load), opens.unit)
    least = opens.low if opens.low is not None else opens.typical
    said = f"the load on one bolt is {number_only(load, data)}; the joint opens at about {number_only(opens, data)}"
    ends = f"{said}, at {units.significant(least, 3)} {opens.unit} with the highest friction"
    required, actual = Bound(opens.typical, opens.unit, "max", usual), Bound(got, opens.unit, figure=load)
    margin = (least - got) / least
    if got > opens.typical * (1 + 1e-9):
        return Check(CLOSED, NOT_OK, said, required, actual, margin, bears=STOP)
    if got > least * (1 + 1e-9):
        return Check(CLOSED, CANNOT_TELL, ends, required, actual, margin, bears=ASK)
    return Check(CLOSED, OK, ends, required, actual, margin, bears=STOP)


def _loaded(bolt: Figure, proof: Figure, data: Refdata) -> Check:
    most = bolt.high if bolt.high is not None else bolt.typical
    said = f"the bolt is pulled with about {number_only(bolt, data)}; its proof load is {number_only(proof, data)}"
    ends = f"{said}; {units.significant(most, 3)} {bolt.unit} at the lowest friction"
    required, actual = Bound(proof.typical, proof.unit, "max", proof), Bound(bolt.typical, bolt.unit, figure=bolt)
    margin = (proof.typical - most) / proof.typical
    if bolt.typical > proof.typical * (1 + 1e-9):
        return Check(LOADED, NOT_OK, said, required, actual, margin, bears=STOP)
    result = CANNOT_TELL if most > proof.typical * (1 + 1e-9) else OK
    return Check(LOADED, result, ends, required, actual, margin, bears=INFORM)
