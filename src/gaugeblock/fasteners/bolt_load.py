"""Bolt load: the pull that breaks a bolt, the one that it stands, the clamp that is aimed at; across it none."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.joint import diameter_of, proof_of, share_of_proof
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.keys import Thread
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

TENSILE, PROOF, CLAMP, SHEAR, STRETCH = LOADS = ("tensile", "proof", "clamp", "shear", "stretch")
_QUANTITIES = {TENSILE: "tensile_load", PROOF: "proof_load", CLAMP: "preload"}
_VERBS = {TENSILE: "BREAKS AT", PROOF: "PROOF LOAD", CLAMP: "CLAMP"}

_BREAKS = "There it breaks. What hangs, lifts or moves may put a good deal less on it: stay far under the proof load."


def bolt_load(standard: str, grade: str, thread: str, load: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of one load of a bolt, with the others beside it.

    ``load`` is ``tensile``, which breaks it, ``proof``, which it stands, ``clamp``, three quarters of that, or
    ``shear``, of which no table has any; or ``stretch``, how much longer the clamp makes it over its ``grip`` with so
    much plain ``shank`` in it, both of ``asked``. Area times strength, of ``tensile_load_from_area``, ``proof_load``
    and ``preload_target``; what a standard prints of the bolt itself goes before. LookupMiss for no strength on record.
    """
    if load not in LOADS:
        raise InputError(load, "load", "no load of a bolt is called so", LOADS, "ask for one of these")
    found = keys.thread(thread, data)
    at = {"standard": standard, "grade": grade, "size": found.size}
    area = lookup.look_up("fasteners/threads", "tensile_stress_area", data=data, thread=found.cell)
    strength = lookup.look_up("fasteners/grades", "tensile_strength", data=data, **at)
    proof = _load(PROOF, "proof_load", (proof_of(at, data), area), found, at, data)
    share = share_of_proof("reused", data)
    unit = "N" if found.is_metric else "lbf"
    clamp = derived(
        "preload_target",
        "preload",
        units.from_base(base(share) * base(proof), unit),
        unit,
        (share, proof),
        data,
        key=Keys(thread=found.cell, **at),
        conditions=f"{units.significant(100 * base(share), 2)} % of proof, for a joint that comes apart again",
    )
    figures = {
        TENSILE: _load(TENSILE, "tensile_load_from_area", (strength, area), found, at, data),
        PROOF: proof,
        CLAMP: clamp,
    }
    title = f"{found.cell}, {standard} {grade}"
    if load == SHEAR:
        across = none("SHEAR LOAD", _across(strength, area, found, data))
        return Sheet(title, asked, data, [*figures.values(), strength, area], [], [], decision=across)
    if load == STRETCH:
        return _stretched(title, (standard, grade), clamp, found, asked, data)
    main = figures.pop(load)
    said = [Caution(_BREAKS, "injury", (main.id,), "")] if load == TENSILE else []
    return Sheet(title, asked, data, [main, *figures.values()], [], said, decision=use(_VERBS[load], main))


def _stretched(
    title: str, grade: tuple[str, str], clamp: Figure, thread: Thread, asked: dict[str, str | None], data: Refdata
) -> Sheet:
    """The Sheet of how much longer the clamp makes a bolt; the plain shank inside the grip stretches least."""
    from gaugeblock.fasteners.joint import joint_of
    from gaugeblock.fasteners.own import read_grip
    from gaugeblock.fasteners.springs import bolt_stiffness, stretch_of

    if asked.get("grip") is None:
        raise InputError("stretch", "grip", "it hangs on the grip", (), "say how much is clamped, washers too: 60 mm")
    grip = read_grip({"length": asked["grip"], "shank": asked.get("shank")})
    joint = joint_of(thread, grade, keys.condition("dry", data), "vehicle", "reused", data)
    stiff = bolt_stiffness(joint, grip, data)
    if stiff is None:
        do = "Say how much plain shank is inside the grip: 0 where the thread runs all through it."
        return Sheet(title, asked, data, [clamp], [], [], decision=none("STRETCH", do))
    figure = stretch_of(clamp, stiff, joint, data)
    return Sheet(title, asked, data, [figure, clamp, stiff], [], [], decision=use("STRETCH", figure))


def _load(
    load: str, rule: str, inputs: tuple[Figure, Figure], thread: Thread, at: dict[str, str], data: Refdata
) -> Figure:
    """What a standard prints of this bolt, else strength times area."""
    quantity = _QUANTITIES[load]
    of = {"thread": thread.cell, "standard": at["standard"], "grade": at["grade"]}
    printed = lookup.look_up_or_none("fasteners/bolt_loads", quantity, data=data, **of)
    if printed is not None:
        return printed
    strength, area = inputs
    unit = "N" if thread.is_metric else "lbf"
    value = units.from_base(units.to_base(strength.least, strength.unit) * base(area), unit)
    return derived(rule, quantity, value, unit, inputs, data, key=Keys(**{**of, "size": at["size"]}), side="min")


def _across(strength: Figure, area: Figure, thread: Thread, data: Refdata) -> str:
    """What is known of a bolt that is loaded across its shank."""
    diameter = base(diameter_of(thread, data))
    shank = units.significant(units.from_base(0.7854 * diameter * diameter, area.unit), 3)
    square = "mm2" if thread.is_metric else "in2"
    return (
        "No table here has the load of a bolt across its shank. A designer takes 0.577 of the tensile strength,"
        f" {strength.text} {strength.unit}, times the area in each plane that is cut: {area.text} {square} where"
        f" threads lie in it, {shank} {square} of a full shank. That breaks it: a part that moves needs a good deal"
        " less. Keep the threads out of the plane, and ask the maker of the part."
    )
