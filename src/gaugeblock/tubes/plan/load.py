"""Does the tube carry what is stated: reactions, bending stress, deflection, share of yield. A screening figure."""

from __future__ import annotations

from itertools import product

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, Bound, Check, at_most
from gaugeblock.answer.making import base
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.bodies import Typed
from gaugeblock.calc import frame, shapes
from gaugeblock.calc import path as paths
from gaugeblock.tubes.plan.found import Found, joined
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.path import Path, Vector
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.doubt import Doubt
    from gaugeblock.tubes.model import TubeLoad
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.metal import Metal
    from gaugeblock.tubes.plan.shape import Shape

NAME = "carries its load (screening)"
SCREENING = (
    "The load figures are a screening: welds, holes, out-of-round bends, fatigue, twist and loads across the tube are"
    " not in them. The engineer or inspector who signs for the vehicle decides whether it carries."
)
_NEEDED = ("mass", "at", "bump_factor", "feet")
_UP = (0.0, 0.0, 1.0)
_MERE = 1e-6
_MOST_INSIDE = 0.25  # of the tube's length: feet are not further inside its ends than this


class Carried(Value):
    """What a load does to the tube: what was found, and the force in N; None where it is not known."""

    __slots__ = ("force", "found")

    found: Found
    force: float | None

    def __init__(self, found: Found, force: float | None = None) -> None:
        put(self, "found", found)
        put(self, "force", force)


class _Load(Value):
    """A load as numbers: N, m, N*m; its typed figures, the force first."""

    __slots__ = ("apart", "far", "foot", "force", "leaves", "torque")

    force: float
    far: float
    foot: float
    torque: float
    apart: float
    leaves: tuple[Figure, ...]

    def __init__(
        self, force: float, far: float, foot: float, torque: float, apart: float, leaves: tuple[Figure, ...]
    ) -> None:
        put(self, "force", force)
        put(self, "far", far)
        put(self, "foot", foot)
        put(self, "torque", torque)
        put(self, "apart", apart)
        put(self, "leaves", leaves)


def carried(given: Given, table: TubeLoad, shape: Shape, metal: Metal | None, doubts: tuple[Doubt, ...]) -> Carried:
    """The plane frame under the mass at its place times the bump factor, and the torque reaction."""
    lost = [k for k in _NEEDED if not getattr(table, k)]
    if lost:
        return Carried(_missing(lost))
    if metal is None or metal.modulus is None:
        return Carried(_open("give a metal whose modulus is known (wall, material)"))
    along, why = _plane(shape)
    if why:
        return Carried(_open(why))
    doubtful = [d for d in doubts if d.key.startswith("load.")]
    if doubtful:
        return Carried(_open(doubtful[0].text))
    line = shape.line
    load = _load(table, line, along, given, (*shape.leaves, metal.tube.od, metal.tube.wall))
    if load.foot > _MOST_INSIDE * line.length:
        return Carried(_far_inside(table, line, given))
    mounts = [load.far - load.apart / 2, load.far + load.apart / 2] if load.apart else [load.far]
    places = [p for m in mounts if (p := _on(line, along, m)) is not None]
    if len(places) < len(mounts):
        return Carried(_open("the load lies off the tube: give its place from the START end, measured level"))
    nodes, numbers = frame.nodes_of(line, along, _UP, [load.foot, line.length - load.foot, *places])
    worst = _worst(nodes, numbers, metal, str(table.feet), load)
    figures = _figures(worst, numbers, load, metal.modulus, table, given)
    share, check, question = _verdict(figures[1], metal, table, given)
    told = [figures[0], *([share] if share is not None else []), *figures[1:]]
    cautions = [_taken(table, load, tuple(f.id for f in told))]
    return Carried(Found(told, [check], cautions, question), load.force)


def _open(why: str) -> Found:
    return Found(checks=[Check(NAME, CANNOT_TELL, why, bears=ASK)])


def _missing(lost: list[str]) -> Found:
    words = ", ".join(f"load.{k}" for k in lost)
    asks = [Question(FILL_IN, f"Give the {k.replace('_', ' ')} of the load.", f"load.{k}", (NAME,)) for k in lost]
    return joined([_open(f"{words} not given"), Found(questions=asks)])


def _far_inside(table: TubeLoad, line: Path, given: Given) -> Found:
    """Feet that would stand nearer to the middle than to the ends: it is asked what was meant."""
    length = given.tape.reads(line.length)
    text = f"load.feet_in = {table.feet_in} puts the feet far inside the ends of a tube of {length}."
    text += " Give how far each foot holds inside its end."
    return joined([_open(text), Found(questions=[Question(FILL_IN, text, "load.feet_in", (NAME,))])])


def _plane(shape: Shape) -> tuple[Vector, str]:
    """The horizontal direction of the tube's upright plane; or why there is none."""
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
    is_askew = abs(paths.dot(paths.cross(along, _UP), paths.unit(run))) > _MERE
    if is_askew or (normal is not None and abs(paths.dot(normal, _UP)) > _MERE):
        return _UP, "the tube does not lie in an upright plane: loads across it are not screened"
    return along, ""


def _on(line: Path, along: Vector, far: float) -> float | None:
    """The place along the tube that lies ``far`` from its start, measured level; the highest where there are
    several.
    """
    point = paths.add(line.at(0.0), along, far)
    found = line.on_plane(point, along)
    return max(found, key=lambda s: line.at(s)[2]) if found else None


def _load(table: TubeLoad, line: Path, along: Vector, given: Given, more: tuple[Figure, ...]) -> _Load:
    typed = Typed(given.name, given.data)

    def number(key: str, dim: str, quantity: str) -> float:
        value = getattr(table, key)
        return typed.number(value, f"load {key.replace('_', ' ')}", dim, quantity) if value else 0.0

    mass, bump = number("mass", "mass", "load_mass"), number("bump_factor", "ratio", "bump_factor")
    span = paths.dot(paths.subtract(line.at(line.length), line.at(0.0)), along)
    far = span / 2 if table.at == "centre" else number("at", "length", "length")
    foot = number("feet_in", "length", "length")
    torque, apart = number("torque", "torque", "load_torque"), number("mount_spacing", "length", "length")
    return _Load(mass * bump * frame.G, far, foot, torque, apart, (*typed.figures, *more))


class _Worst(Value):
    """The greatest stress (Pa), deflection (m) and reactions (N, N*m) of all cases."""

    __slots__ = ("reactions", "sag", "stress")

    stress: float
    sag: float
    reactions: dict[int, tuple[float, float, float]]

    def __init__(self, stress: float, sag: float, reactions: dict[int, tuple[float, float, float]]) -> None:
        put(self, "stress", stress)
        put(self, "sag", sag)
        put(self, "reactions", reactions)


def _worst(nodes: list[tuple[float, float]], numbers: list[int], metal: Metal, feet: str, load: _Load) -> _Worst:
    """The greatest over what the feet may do and both hands of the torque."""
    section = frame.Section(metal.od, metal.wall)
    one, two, *loaded = numbers
    fixed = [(frame.FIXED, frame.FIXED)]
    pinned = [(frame.PINNED, frame.PINNED), (frame.PINNED, frame.SLIDING), (frame.SLIDING, frame.PINNED)]
    most: dict[int, tuple[float, float, float]] = {}
    answers = []
    for (a, b), sign in product(fixed if feet == "fixed" else pinned, (1.0, -1.0) if load.torque else (1.0,)):
        loads = [frame.Load(n, up=-load.force / len(loaded)) for n in loaded]
        if load.torque and load.apart:
            couple = frame.torque_couple(load.torque, load.apart)
            loads += [frame.Load(n, up=sign * f) for n, f in zip(loaded, couple, strict=True)]
        elif load.torque:
            loads.append(frame.Load(loaded[0], moment=sign * load.torque))
        got = frame.solve(nodes, section, metal.modulus_pa, {one: a, two: b}, loads)
        for n, r in got.reactions.items():
            x, y, m = most.get(n, (0.0, 0.0, 0.0))
            most[n] = (max(x, abs(r[0])), y if abs(y) > abs(r[1]) else r[1], max(m, abs(r[2])))
        answers.append(got)
    kept = {n: (frame.steady(x), frame.steady(y), frame.steady(m)) for n, (x, y, m) in most.items()}
    stress, sag = (frame.steady(max(found)) for found in zip(*((a.stress, a.sag) for a in answers), strict=True))
    return _Worst(stress, sag, kept)


def _figures(
    worst: _Worst, numbers: list[int], load: _Load, modulus: Figure, table: TubeLoad, given: Given
) -> list[Figure]:
    """The force, the stress, what each foot bears, the deflection."""
    make = given.make
    inch = given.tape.unit == "in"
    newton, pascal, turning = ("lbf", "ksi", "lbf*ft") if inch else ("N", "MPa", "N*m")
    at = "the centre" if table.at == "centre" else f"{table.at} from START"
    words = f"{table.mass} x {number_of(table.bump_factor)}, at {at}"
    out = [
        make("load_force", "tube_load", load.force, load.leaves[:2], unit=newton, conditions=words),
        make(
            "frame_bending_stress",
            "bending_stress",
            worst.stress,
            load.leaves,
            unit=pascal,
            conditions="greatest, bending and pull together",
        ),
    ]
    for n, where in zip(numbers[:2], ("START", "END"), strict=True):
        side, up, turn = worst.reactions[n]
        more = [f"{units.from_base(side, newton):.0f} {newton} level"] if side > 0.01 * load.force else []
        more += [f"{units.from_base(turn, turning):.0f} {turning} turning it"] if turn > _MERE else []
        words = f"foot at {where}, upright" + (f"; also up to {' and '.join(more)}" if more else "")
        out.append(make("frame_reaction", "foot_reaction", up, load.leaves, unit=newton, bend=where, conditions=words))
    words = "greatest anywhere along the tube, under the whole load"
    # of one metal throughout, so that its modulus decides how far the tube bends and not how hard it is stressed
    out.append(make("frame_deflection", "deflection", worst.sag, (*load.leaves, modulus), conditions=words))
    return out


def number_of(ratio: object) -> str:
    """A ratio as a person writes it: a pure number has no unit."""
    text = str(ratio)
    return text.removesuffix(" 1") if text.endswith(" 1") else text


def _verdict(
    stress: Figure, metal: Metal, table: TubeLoad, given: Given
) -> tuple[Figure | None, Check, list[Question]]:
    """The share of yield against what is allowed; over all of it the tube bends for good."""
    if metal.weak is None:
        text = f"{stress.typical:.1f} {stress.unit} bending; the yield strength of this metal is not known"
        got = Bound(stress.typical, stress.unit, figure=stress)
        return None, Check(NAME, CANNOT_TELL, text, None, got, bears=ASK), []
    is_own = metal.weak.basis in ("stated", "measured")
    whose = "yield strength given" if is_own else "guaranteed yield"
    words = "of the yield strength given" if is_own else "of the guaranteed yield strength, the lowest that fits"
    inputs = (stress, metal.weak)
    share = given.make("yield_share", "yield_share", base(stress) / metal.low_pa, inputs, unit="%", conditions=words)
    got = Bound(share.typical, "%", figure=share)
    text = f"{share.typical:.0f} % of the {whose}"
    who = "rough check only: the engineer or inspector who signs decides"
    if share.typical > 100:
        needed = Bound(100.0, "%", "max", metal.weak)
        return share, Check(NAME, NOT_OK, f"{text}: it would bend for good; {who}", needed, got), []
    if table.yield_share is None:
        why = f"{text}; what share is allowed is not stated (load.yield_share): {who}"
        ask = Question(FILL_IN, "Say what share of the yield strength is allowed.", "load.yield_share", (NAME,))
        return share, Check(NAME, CANNOT_TELL, why, None, got, bears=ASK), [ask]
    typed = Typed(given.name, given.data)
    allowed = typed.figure(table.yield_share, "load yield share", "ratio", "yield_share_allowed")[1]
    needed = Bound(allowed.typical, "%", figure=allowed)
    return share, at_most(NAME, got, needed, f"{text}; {table.yield_share} allowed; {who}"), []


def _taken(table: TubeLoad, load: _Load, figures: tuple[str, ...]) -> Caution:
    """What was assumed."""
    said = "free to spread and held: the worse of the two" if table.feet == "pinned" else "held against turning"
    inside = f"{table.feet_in} inside the ends" if load.foot else "at the very ends of the tube"
    turned = "is taken both ways round" if load.torque else "is left out (not given)"
    assumed = f"feet {table.feet}, {said}; the feet hold {inside}; the torque reaction {turned}"
    return Caution(f"{SCREENING} Assumed: {assumed}.", "injury", figures, "calculated")
