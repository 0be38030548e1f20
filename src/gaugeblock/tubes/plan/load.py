"""Does the tube carry what is stated: reactions, bending stress, deflection, share of yield; bolts, slots. A screening figure."""

from __future__ import annotations

from itertools import product

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check, at_most
from gaugeblock.calc import frame, shapes
from gaugeblock.calc import path as paths

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.bodies import Typed
    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.keys import Shape
    from gaugeblock.tubes.plan.marks import Maker
    from gaugeblock.tubes.plan.metal import Metal

NAME = "carries its load (screening)"
SCREENING = (
    "The load figures are a screening: welds, holes, out-of-round bends, fatigue, twist and loads across the tube are not in them."
    " The engineer or inspector who signs for the vehicle decides whether it carries."
)
_UP = (0.0, 0.0, 1.0)
_MERE = 1e-6


class Answer:
    """Figures, checks and cautions of one load."""

    __slots__ = ("cautions", "checks", "figures", "force")

    def __init__(self) -> None:
        self.figures: list[Figure] = []
        self.checks: list[Check] = []
        self.cautions: list[Caution] = []
        self.force: float | None = None


def _plane(shape: Shape) -> tuple[Vector, str]:
    """The horizontal direction of the tube's upright plane; or why there is none."""
    if shape.stick is None:
        return _UP, "the shape is not known"
    try:
        points = shape.points or paths.to_points(shape.stick, shape.pose)
        normal = shapes.plane_normal(points)
    except ValueError as error:
        return _UP, f"{error}: only a flat tube in an upright plane is screened"
    run = paths.subtract(points[-1], points[0])
    level = (run[0], run[1], 0.0)
    if paths.norm(level) < _MERE:
        return _UP, "the tube stands upright"
    along = paths.unit(level)
    if abs(paths.dot(paths.cross(along, _UP), paths.unit(run))) > _MERE or (
        normal is not None and abs(paths.dot(normal, _UP)) > _MERE
    ):
        return _UP, "the tube does not lie in an upright plane: loads across it are not screened"
    return along, ""


def _on(line: Path, along: Vector, far: float) -> float | None:
    """The place along the tube that lies ``far`` from its start, measured level; the highest where there are several."""
    point = paths.add(line.at(0.0), along, far)
    found = line.on_plane(point, along)
    return max(found, key=lambda s: line.at(s)[2]) if found else None


def carries(
    table: Mapping[str, Any], shape: Shape, line: Path, metal: Metal | None, typed: Typed, make: Maker
) -> Answer:
    """The plane frame under the mass at its place times the bump factor, and the torque reaction."""
    out = Answer()
    keys = ("mass", "at", "bump_factor", "feet")
    lost = [f"load.{k}" for k in keys if not table.get(k)]
    if metal is None or metal.modulus is None:
        lost.append("a metal whose modulus is known")
    along, why = _plane(shape)
    if lost or why or metal is None:
        out.checks.append(Check(NAME, CANNOT_TELL, f"{', '.join(lost)} not given" if lost else why))
        return out
    first = len(typed.figures)
    mass = typed.number(table["mass"], "load mass", "mass", "load_mass")
    bump = typed.number(table["bump_factor"], "load bump factor", "ratio", "bump_factor")
    span = paths.dot(paths.subtract(line.at(line.length), line.at(0.0)), along)
    far = span / 2 if table["at"] == "centre" else typed.number(table["at"], "load at", "length", "length")
    foot = typed.number(table["feet_in"], "load feet in", "length", "length") if table.get("feet_in") else 0.0
    torque = typed.number(table["torque"], "load torque", "torque", "load_torque") if table.get("torque") else 0.0
    apart = (
        typed.number(table["mount_spacing"], "load mount spacing", "length", "length")
        if table.get("mount_spacing")
        else 0.0
    )
    leaves = (
        *typed.figures[first:],
        *shape.leaves,
        metal.tube.od,
        metal.tube.wall,
        *([metal.modulus] if metal.modulus else []),
    )
    mounts = [far - apart / 2, far + apart / 2] if apart else [far]
    places = [_on(line, along, m) for m in mounts]
    if any(p is None for p in places):
        out.checks.append(
            Check(NAME, CANNOT_TELL, "the load lies off the tube: give its place from the START end, measured level")
        )
        return out
    nodes, numbers = frame.nodes_of(line, along, _UP, [foot, line.length - foot, *(p for p in places if p is not None)])
    worst = _worst(nodes, numbers, metal, table["feet"], mass * bump * frame.G, torque, apart)
    force = out.force = mass * bump * frame.G
    _figures(out, worst, numbers, leaves, force, table, make)
    _verdict(out, metal, table, typed, make)
    said = "free to spread and held: the worse of the two" if table["feet"] == "pinned" else "held against turning"
    assumed = [f"feet {table['feet']}, {said}"]
    assumed.append(
        "the feet hold at the very ends of the tube"
        if not foot
        else f"the feet hold {table['feet_in']} inside the ends"
    )
    assumed.append(
        "the torque reaction is not stated and not in it"
        if not torque
        else "the torque reaction is taken both ways round"
    )
    out.cautions.append(
        Caution(f"{SCREENING} Taken: {'; '.join(assumed)}.", "injury", tuple(f.id for f in out.figures), "calculated")
    )
    return out


def _worst(
    nodes: list[tuple[float, float]], numbers: list[int], metal: Metal, feet: str, force: float, torque: float, apart: float
) -> tuple[frame.Answer, dict[int, tuple[float, float, float]]]:  # fmt: skip
    """The answer with the greatest stress over what the feet may do and both hands of the torque; reactions: the greatest of all."""
    section = frame.Section(metal.od, metal.wall)
    one, two, *loaded = numbers
    holds = (
        [(frame.FIXED, frame.FIXED)]
        if feet == "fixed"
        else [(frame.PINNED, frame.PINNED), (frame.PINNED, frame.SLIDING)]
    )
    best: frame.Answer | None = None
    most: dict[int, tuple[float, float, float]] = {}
    for (a, b), sign in product(holds, (1.0, -1.0) if torque else (1.0,)):
        loads = [frame.Load(n, up=-force / len(loaded)) for n in loaded]
        if torque and apart:
            loads += [
                frame.Load(n, up=sign * f) for n, f in zip(loaded, frame.torque_couple(torque, apart), strict=True)
            ]
        elif torque:
            loads.append(frame.Load(loaded[0], moment=sign * torque))
        got = frame.solve(nodes, section, metal.modulus_pa, {one: a, two: b}, loads)
        for n, r in got.reactions.items():
            x, y, m = most.get(n, (0.0, 0.0, 0.0))
            most[n] = (max(x, abs(r[0])), y if abs(y) > abs(r[1]) else r[1], max(m, abs(r[2])))
        if best is None or got.stress > best.stress:
            best = got
    if best is None:
        raise ValueError("no case of the feet")
    return best, most


def _figures(
    out: Answer, worst: tuple[frame.Answer, dict[int, tuple[float, float, float]]], numbers: list[int], leaves: tuple[Figure, ...],
    force: float, table: Mapping[str, Any], make: Maker,
) -> None:  # fmt: skip
    answer, reactions = worst
    inch = make.tape.unit == "in"
    newton, pascal = ("lbf", "ksi") if inch else ("N", "MPa")
    at = "the centre" if table["at"] == "centre" else f"{table['at']} from START"
    load = make(
        "load_force",
        "tube_load",
        force,
        leaves[:2],
        unit=newton,
        conditions=f"{table['mass']} x {table['bump_factor']}, at {at}",
    )
    stress = make(
        "frame_bending_stress",
        "bending_stress",
        answer.stress,
        leaves,
        unit=pascal,
        conditions="greatest, bending and pull together",
    )
    out.figures = [load, stress]
    for n, where in zip(numbers[:2], ("START", "END"), strict=True):
        side, up, turn = reactions[n]
        more = [f"{units.from_base(side, newton):.0f} {newton} level"] if side > 0.01 * force else []
        if turn > 1e-6:
            more.append(
                f"{units.from_base(turn, 'lbf*ft' if inch else 'N*m'):.0f} {'lbf*ft' if inch else 'N*m'} turning it"
            )
        words = f"foot at {where}, upright" + (f"; also up to {' and '.join(more)}" if more else "")
        out.figures.append(
            make("frame_reaction", "foot_reaction", up, leaves, unit=newton, bend=where, conditions=words)
        )
    out.figures.append(
        make("frame_deflection", "deflection", answer.sag, leaves, conditions="greatest, under the whole load")
    )


def _verdict(out: Answer, metal: Metal, table: Mapping[str, Any], typed: Typed, make: Maker) -> None:
    stress = next(f for f in out.figures if f.quantity == "bending_stress")
    if metal.weak is None:
        text = f"{stress.typical:.1f} {stress.unit} bending; the yield strength of this metal is not known"
        out.checks.append(Check(NAME, CANNOT_TELL, text, None, Bound(stress.typical, stress.unit, figure=stress)))
        return
    share = units.to_base(stress.typical, stress.unit) / metal.low_pa
    figure = make(
        "yield_share",
        "yield_share",
        share,
        (stress, metal.weak),
        unit="%",
        conditions="of the guaranteed yield strength, the lowest that fits",
    )
    out.figures.insert(1, figure)
    got = Bound(figure.typical, "%", figure=figure)
    text = f"{figure.typical:.0f} % of the guaranteed yield"
    who = "a screening figure; who signs for the vehicle decides"
    if share > 1:
        out.checks.append(
            Check(NAME, NOT_OK, f"{text}: it would bend for good; {who}", Bound(100.0, "%", "max", metal.weak), got)
        )
    elif table.get("yield_share"):
        asked = typed.figure(table["yield_share"], "load yield share", "ratio", "yield_share_allowed")[1]
        out.checks.append(
            at_most(
                NAME, got, Bound(asked.typical, "%", figure=asked), f"{text}, {table['yield_share']} allowed; {who}"
            )
        )
    else:
        out.checks.append(
            Check(
                NAME, CANNOT_TELL, f"{text}; what share is allowed is not stated (load.yield_share): {who}", None, got
            )
        )


def bolts(table: Mapping[str, Any], metal: Metal | None, force: float | None, typed: Typed, make: Maker) -> Answer:
    """A bolt through the tube against crushing, and a slot against slipping: cautions, each with its figure."""
    out = Answer()
    newton = "lbf" if make.tape.unit == "in" else "N"
    clamp, clamp_figure = (
        typed.figure(table["clamp_load"], "bolts clamp load", "force", "clamp_load")
        if table.get("clamp_load")
        else (0.0, None)
    )
    if table.get("sleeve") != "yes":
        lost = [f"bolts.{k}" for k in ("clamp_load", "width") if not table.get(k)]
        if metal is None or metal.weak is None:
            lost.append("a metal whose yield strength is known")
        if lost or metal is None or metal.weak is None:
            out.checks.append(
                Check("bolt through the tube", CANNOT_TELL, f"{', '.join(lost)} not given: fit a crush sleeve")
            )
        else:
            width, figure = typed.figure(table["width"], "bolts width", "length", "length")
            crush = make(
                "tube_crush", "crush_load", frame.crush_force(metal.od, metal.wall, metal.low_pa, width),
                (metal.weak, metal.tube.od, metal.tube.wall, figure), unit=newton, conditions=f"over {table['width']} of tube, no sleeve",
            )  # fmt: skip
            out.figures.append(crush)
            over = clamp > frame.crush_force(metal.od, metal.wall, metal.low_pa, width)
            text = f"A bolt through this tube without a sleeve flattens it at about {crush.typical:.0f} {newton}; the clamp stated is {table['clamp_load']}, "
            text += (
                "which is over it: the tube is crushed and the bolt never gets tight. Weld in a crush sleeve."
                if over
                else "which is under it: a crush sleeve still keeps the joint tight."
            )
            out.cautions.append(Caution(text, "damage" if over else "note", (crush.id,), "calculated"))
            limit = Bound(crush.typical, newton, "max", crush)
            stated = Bound(units.from_base(clamp, newton), newton, figure=clamp_figure)
            out.checks.append(Check("bolt through the tube", NOT_OK if over else OK, text, limit, stated))
    if table.get("slots") == "yes":
        lost = [f"bolts.{k}" for k in ("clamp_load", "friction", "count") if not table.get(k)]
        if lost or clamp_figure is None:
            out.checks.append(
                Check("slotted holes", CANNOT_TELL, f"{', '.join(lost)} not given: a slot holds by friction alone")
            )
        else:
            friction, figure = typed.figure(table["friction"], "bolts friction", "ratio", "friction_coefficient")
            count = int(table["count"])
            held = frame.slip_force(clamp, friction, count)
            slip = make(
                "joint_slip",
                "slip_load",
                held,
                (clamp_figure, figure),
                unit=newton,
                conditions=f"{count} bolts at {table['clamp_load']}, friction {table['friction']}",
            )
            out.figures.append(slip)
            text = f"Slotted holes hold by friction alone: these slip at about {slip.typical:.0f} {newton}."
            if force is not None:
                text += f" The stated load is {units.from_base(force, newton):.0f} {newton}: " + (
                    "more than the slots hold along them."
                    if force > held
                    else "less than that, as long as the bolts stay tight."
                )
            out.cautions.append(
                Caution(
                    text + " Set it, then drill and dowel or fit a round-hole bolt.", "damage", (slip.id,), "calculated"
                )
            )
    return out
