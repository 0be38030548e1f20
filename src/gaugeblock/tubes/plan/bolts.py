"""Bolts through the tube: against crushing it, and slots against slipping; cautions, each with its figure."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.bodies import Typed
from gaugeblock.calc import frame
from gaugeblock.tubes.plan.found import Found, joined
from gaugeblock.tubes.plan.load import number_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tubes.model import TubeBolts
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.metal import Metal

THROUGH, SLOTS = "bolt through the tube", "slotted holes"


def bolted(given: Given, table: TubeBolts, metal: Metal | None, force: float | None) -> Found:
    """What bolts through the tube do to it."""
    stages = [] if table.sleeve == "yes" else [_crush(table, given, metal)]
    stages += [_slip(table, given, force)] if table.slots == "yes" else []
    return joined(stages)


def _crush(table: TubeBolts, given: Given, metal: Metal | None) -> Found:
    lost = [k for k in ("clamp_load", "width") if not getattr(table, k)]
    if lost or table.clamp_load is None or table.width is None:
        why = f"{', '.join(f'bolts.{k}' for k in lost)} not given: fit a crush sleeve"
        words = " and ".join(k.replace("_", " ") for k in lost)
        ask = Question(
            FILL_IN, f"Give the {words} of the bolts, or fit a crush sleeve.", f"bolts.{lost[0]}", (THROUGH,)
        )
        return Found(checks=[Check(THROUGH, CANNOT_TELL, why, bears=ASK)], questions=[ask])
    if metal is None or metal.weak is None:
        why = "the yield strength of this metal is not known: fit a crush sleeve"
        return Found(checks=[Check(THROUGH, CANNOT_TELL, why, bears=ASK)])
    typed, newton = Typed(given.name, given.data), "lbf" if given.tape.unit == "in" else "N"
    clamp, clamp_figure = typed.figure(table.clamp_load, "bolts clamp load", "force", "clamp_load")
    width, figure = typed.figure(table.width, "bolts width", "length", "length")
    limit = frame.crush_force(metal.od, metal.wall, metal.low_pa, width)
    crush = given.make(
        "tube_crush",
        "crush_load",
        limit,
        (metal.weak, metal.tube.od, metal.tube.wall, figure),
        unit=newton,
        conditions=f"over {table.width} of tube, no sleeve",
    )
    over = clamp > limit
    text = f"A bolt through this tube without a sleeve flattens it at about {crush.typical:.0f} {newton};"
    text += f" the clamp stated is {table.clamp_load}, "
    text += (
        "which is over it: the tube is crushed and the bolt never gets tight. Weld in a crush sleeve."
        if over
        else "which is under it: a crush sleeve still keeps the joint tight."
    )
    needed = Bound(crush.typical, newton, "max", crush)
    stated = Bound(units.from_base(clamp, newton), newton, figure=clamp_figure)
    check = Check(THROUGH, NOT_OK if over else OK, text, needed, stated)
    return Found([crush], [check], [Caution(text, "damage" if over else "note", (crush.id,), "calculated")])


def _slip(table: TubeBolts, given: Given, force: float | None) -> Found:
    lost = [k for k in ("clamp_load", "friction", "count") if getattr(table, k) is None]
    if table.clamp_load is None or table.friction is None or table.count is None:
        names = " and ".join(k.replace("_", " ") for k in lost)
        why = f"slotted holes hold by friction only; give the {names} ({', '.join(f'bolts.{k}' for k in lost)})"
        return Found(checks=[Check(SLOTS, CANNOT_TELL, why, bears=INFORM)])
    typed, newton = Typed(given.name, given.data), "lbf" if given.tape.unit == "in" else "N"
    clamp, clamp_figure = typed.figure(table.clamp_load, "bolts clamp load", "force", "clamp_load")
    friction, figure = typed.figure(table.friction, "bolts friction", "ratio", "friction_coefficient")
    count = typed.figure(str(table.count), "bolts count", "ratio", "bolt_count")[1]
    held, inputs = frame.slip_force(clamp, friction, table.count), (clamp_figure, figure, count)
    words = f"{table.count} bolts at {table.clamp_load}, friction {number_of(table.friction)}"
    slip = given.make("joint_slip", "slip_load", held, inputs, unit=newton, conditions=words)
    text = f"Slotted holes hold by friction alone: these slip at about {slip.typical:.0f} {newton}."
    if force is not None:
        over = "more than the slots hold along them." if force > held else "less, as long as the bolts stay tight."
        text += f" The stated load is {units.from_base(force, newton):.0f} {newton}: {over}"
    text += " Set it, then drill and dowel or fit a round-hole bolt."
    return Found([slip], (), [Caution(text, "damage", (slip.id,), "calculated")])
