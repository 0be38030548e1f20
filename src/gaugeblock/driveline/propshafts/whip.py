"""The speed at which a propeller shaft whips, how fast it is to turn, and what a torque does to its tube."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.calc import driveline as calc
from gaugeblock.calc import whirl
from gaugeblock.driveline.joints.checks import TABLE as JOINTS
from gaugeblock.driveline.joints.checks import Judged
from gaugeblock.driveline.propshafts.given import MEASURES, Propeller
from gaugeblock.driveline.torsion import stress_of
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

TABLE = "driveline/shaft_tubes"
WHIPS = "speed against whipping"
STRESS = "stress in the tube"
AGREES = "whip by a frame of beams"
FRONT_PIECE = "front piece against whipping"
_PERCENT = 100


def figure_of(of: Propeller, key: str, data: Refdata) -> Figure | None:
    """What was given under a key, as a figure; None where it was not."""
    measure = of.get(key)
    where, read_by = key.replace("_", " "), of.read_by.get(key, "")
    return None if measure is None else stated(measure, MEASURES[key][1], where, data, read_by=read_by)


def text_of(figure: Figure) -> str:
    """A figure as it was typed, or to four digits, with its unit."""
    unit = "" if figure.unit == "1" else f" {figure.unit}"
    return f"{figure.text or units.significant(figure.typical)}{unit}"


class Whip(Value):
    """Speed at which the shaft whips, the speeds it is to turn at by gear, and the speed that it is kept under."""

    __slots__ = ("critical", "kept", "share", "speeds")

    critical: Figure | None
    share: Figure
    kept: Figure | None
    speeds: tuple[Figure, ...]

    def __init__(self, critical: Figure | None, share: Figure, kept: Figure | None, speeds: tuple[Figure, ...]) -> None:
        put(self, "critical", critical)
        put(self, "share", share)
        put(self, "kept", kept)
        put(self, "speeds", speeds)

    @property
    def fastest(self) -> Figure | None:
        """The greatest speed that the shaft is to turn at."""
        return max(self.speeds, key=base) if self.speeds else None


def whip(of: Propeller, longest: Figure | None, data: Refdata) -> Whip:
    """Of what was given; ``longest`` is the greatest distance between the joints. The longer piece of two whips
    first.
    """
    front = figure_of(of, "front_length", data)
    longest = max((f for f in (longest, front) if f is not None), key=base, default=None)
    share = lookup.look_up(
        JOINTS, "critical_speed_share_maximum", data=data, joint="propeller shaft", case="critical speed"
    )
    od, wall = figure_of(of, "od", data), figure_of(of, "wall", data)
    speeds = _speeds(of, data)
    metal = _metal(of, data)
    if od is None or wall is None or longest is None or metal is None:
        return Whip(None, share, None, speeds)
    modulus, density = metal
    hole = base(od) - 2 * base(wall)
    value = calc_speed(longest, modulus, density, od, hole)
    tube = f"{text_of(od)} x {text_of(wall)}"
    key = {"tube": tube, "length": text_of(longest), "material": of.material or "as given"}
    made = (longest, modulus, density, od, wall)
    number = units.from_base(value, "rpm")
    critical = derived("critical_speed_of_tube", "critical_speed", number, "rpm", made, data, key=key)
    kept = number * units.to_base(_least(share), share.unit)
    both = (critical, share)
    return Whip(
        critical,
        share,
        derived("share_of_critical_speed", "driveshaft_speed_kept", kept, "rpm", both, data, key=key),
        speeds,
    )


def _least(share: Figure) -> float:
    """The stricter end of the share of its whipping speed that shops run a shaft at."""
    return share.low if share.low is not None else share.typical


def longest(of: Propeller, found: Whip, data: Refdata) -> Figure | None:
    """How long the tube may be between its joints for the greatest speed that it is to turn at; None where its tube,
    its metal or its speed is not known.
    """
    od, wall, metal = figure_of(of, "od", data), figure_of(of, "wall", data), _metal(of, data)
    if od is None or wall is None or metal is None or found.fastest is None:
        return None
    modulus, density = metal
    share = _least(found.share)
    hole = base(od) - 2 * base(wall)
    value = whirl.longest_for_speed(
        base(found.fastest), base(modulus), base(density), base(od), hole, units.to_base(share, found.share.unit)
    )
    key = {"tube": f"{text_of(od)} x {text_of(wall)}", "speed": text_of(found.fastest)}
    key["material"] = of.material or "as given"
    inputs = (found.share, modulus, density, od, wall, found.fastest)
    number = units.from_base(value, od.unit)
    return derived("longest_shaft_for_speed", "joint_distance_maximum", number, od.unit, inputs, data, key=key)


def calc_speed(length: Figure, modulus: Figure, density: Figure, od: Figure, hole_m: float) -> float:
    """The critical speed of a tube in rad/s."""
    return float(whirl.critical_speed(base(length), base(modulus), base(density), base(od), hole_m))


def _metal(of: Propeller, data: Refdata) -> tuple[Figure, Figure] | None:
    """Modulus and density: the shaft's own, else of its material; None where neither is known."""
    own = figure_of(of, "modulus", data), figure_of(of, "density", data)
    if own[0] is not None and own[1] is not None:
        return own[0], own[1]
    if of.material is None:
        return None
    found = [lookup.look_up(TABLE, q, data=data, material=of.material) for q in ("modulus_of_elasticity", "density")]
    return own[0] or found[0], own[1] or found[1]


def beside(of: Propeller, data: Refdata) -> tuple[Figure, ...]:
    """What is stated of the metal, each with what the table has of the material that was named."""
    out = []
    for key, quantity in (("modulus", "modulus_of_elasticity"), ("density", "density")):
        own = figure_of(of, key, data)
        if own is not None:
            table = of.material and lookup.look_up_or_none(TABLE, quantity, data=data, material=of.material)
            out += [own, *([table] if table else [])]
    return tuple(out)


def _speeds(of: Propeller, data: Refdata) -> tuple[Figure, ...]:
    own = figure_of(of, "speed", data)
    if own is not None:
        return (own,)
    engine = figure_of(of, "engine_speed", data)
    if engine is None or not of.gears:
        return ()
    transfer = figure_of(of, "transfer", data)
    out = []
    for number, gear in enumerate(of.gears, 1):
        ratio = stated(gear, "gear_ratio", f"gear {number}", data)
        value = base(engine) / base(ratio) / (base(transfer) if transfer is not None else 1.0)
        inputs = (engine, ratio) if transfer is None else (engine, ratio, transfer)
        key = {"gear": ratio.text, "number": str(number), "engine": text_of(engine)}
        said = f"gear {number}, {ratio.text}, at {text_of(engine)} of the engine"
        made = units.from_base(value, "rpm")
        out.append(
            derived(
                "driveshaft_speed_of_engine", "driveshaft_speed", made, "rpm", inputs, data, key=key, conditions=said
            )
        )
    return tuple(out)


def judged(of: Propeller, found: Whip, data: Refdata, *, is_made: bool = True) -> Judged:
    """Whether the shaft stays under the speed at which it whips; how fast it turns is asked of one that is to be
    made.
    """
    critical, fastest = found.critical, found.fastest
    if critical is None or found.kept is None:
        return _open_tube(of)
    whips, keeps = number_only(critical, data), number_only(found.kept, data)
    share = number_only(found.share, data)
    if fastest is None:
        why = f"it whips at {whips}; how fast it is to turn is not given"
        text = "How fast does the engine turn at most, and what is the ratio of the top gear?"
        check = Check(WHIPS, CANNOT_TELL, why, subject="whip", bears=ASK if is_made else INFORM)
        do = f"Say how fast the shaft is to turn: it whips at {whips}, and is run to {keeps} at the most."
        return Judged(check, do, Question(FILL_IN, text, "speed", (WHIPS,)) if is_made else None)
    turns = number_only(fastest, data)
    actual = Bound(units.from_base(base(fastest), "rpm"), "rpm", "", fastest)
    room = (critical.typical - actual.value) / critical.typical
    if actual.value >= critical.typical:
        required = Bound(critical.typical, "rpm", "max", critical)
        why = f"it is to turn {turns} and whips at {whips}"
        other = "shorter pieces" if of.is_in_two_pieces else "a shorter shaft, or two pieces with a centre bearing"
        link = " or" if of.is_in_two_pieces else ","
        do = f"It is to turn {turns} and whips at {whips}: use a larger tube{link} {other}."
        question = Question(FILL_IN, "What tube, or what length, is it made of instead?", "od", (WHIPS,))
        return Judged(Check(WHIPS, NOT_OK, why, required, actual, room, subject="whip", bears=STOP), do, question)
    required = Bound(found.kept.typical, "rpm", "max", found.kept)
    of_it = f"{units.significant(_PERCENT * actual.value / critical.typical, 3)} %"
    why = f"it turns {turns} at most, {of_it} of the {whips} at which it whips; shops stay under {share} of that"
    if actual.value <= found.kept.typical * (1 + 1e-9):
        return Judged(Check(WHIPS, OK, why, required, actual, room, subject="whip"))
    least = units.significant(_least(found.share), 3)
    other = "shorter pieces" if of.is_in_two_pieces else "a shorter shaft"
    do = (
        f"It turns {of_it} of the speed at which it whips, and shops keep it under {least} %. Keep it under {keeps},"
        f" use a larger tube or {other}, or ask the driveshaft shop."
    )
    question = Question(ASK_MAKER, f"May this shaft turn {turns}, by the driveshaft shop?", "notes", (WHIPS,))
    return Judged(Check(WHIPS, NOT_OK, why, required, actual, room, subject="whip", bears=ASK), do, question)


def front_piece(of: Propeller) -> list[Judged]:
    """Asks for the front piece of a shaft in two pieces: it whips too."""
    if not of.is_in_two_pieces or of.get("front_length") is not None:
        return []
    text = "How long is the front piece, from its joint at the gearbox to the joint behind the centre bearing?"
    check = Check(FRONT_PIECE, CANNOT_TELL, "the length of the front piece is not given", subject="whip", bears=ASK)
    do = "Measure the front piece as well: the longer of the two pieces whips first."
    return [Judged(check, do, Question(MEASURE, text, "front_length", (FRONT_PIECE,)))]


_WORDS = {"od": "outside diameter of the tube", "wall": "wall of the tube", "material": "material of the tube"}


def _open_tube(of: Propeller) -> Judged:
    lacks = [k for k in ("od", "wall") if of.get(k) is None]
    if of.material is None and (of.get("modulus") is None or of.get("density") is None):
        lacks.append("material")
    named = " and the ".join(_WORDS[k] for k in lacks) or "distance between the joints"
    check = Check(WHIPS, CANNOT_TELL, f"not given: the {named}", subject="whip", bears=ASK)
    question = Question(
        MEASURE,
        f"What is the {named}?" if len(lacks) < _TWO else f"What are the {named}?",
        lacks[0] if lacks else "length",
        (WHIPS,),
    )
    return Judged(check, f"Say the {named}: a long thin shaft whips.", question)


def second_opinion(found: Whip) -> Check | None:
    """The same speed by a frame of beams that sags under its own weight; it changes nothing."""
    if found.critical is None:
        return None
    length, modulus, density, od, wall = found.critical.inputs
    value = units.from_base(
        whirl.whirl_by_frame(base(length), base(modulus), base(density), base(od), base(wall)), "rpm"
    )
    off = value / found.critical.typical - 1
    why = f"{units.significant(value, 4)} rpm by a frame of beams, {units.significant(_PERCENT * abs(off), 2)} % off"
    return Check(AGREES, OK if abs(off) < _AGREED else CANNOT_TELL, why, subject="whip", bears=INFORM)


_AGREED = 0.01
_TWO = 2


def stress(of: Propeller, data: Refdata) -> tuple[tuple[Figure, ...], Judged | None]:
    """Shear in the tube under the torque, and against its own yield strength where that was given."""
    torque, od, wall = (figure_of(of, k, data) for k in ("torque", "od", "wall"))
    if torque is None or od is None or wall is None:
        return (), None
    hole = units.from_base(base(od) - 2 * base(wall), od.unit)
    key = {"tube": f"{text_of(od)} x {text_of(wall)}"}
    bore = derived("bore_of_wall", "shaft_bore", hole, od.unit, (od, wall), data, key=key)
    made = stress_of(torque, od, bore, "ksi", {**key, "torque": text_of(torque)}, data)
    own = figure_of(of, "yield_strength", data)
    if own is None:
        return (made,), None
    value = units.from_base(calc.torsional_yield_distortion_energy(base(own)), "ksi")
    rule, quantity = "shear_yield_distortion_energy", "torsional_yield_strength"
    limit = derived(rule, quantity, value, "ksi", (own,), data, key={"yield": text_of(own)})
    over = made.typical > value
    why = f"{number_only(made, data)} under {text_of(torque)}, torsional yield {number_only(limit, data)}"
    required, actual = Bound(value, "ksi", "max", limit), Bound(made.typical, "ksi", "", made)
    check = Check(STRESS, NOT_OK if over else OK, why, required, actual, 1 - made.typical / value, bears=STOP)
    do = "The tube yields under this torque: use a larger or thicker one." if over else ""
    question = Question(FILL_IN, "What tube is it made of instead?", "od", (STRESS,)) if over else None
    return (made, limit), Judged(check, do, question)
