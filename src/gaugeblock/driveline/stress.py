"""The answer ``shaftstress``: the shear stress of a round shaft under a torque, how far it twists, or the torque that a
stress allows.
"""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import unusual
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.steels import TABLE
from gaugeblock.driveline.torsion import LOW_ALLOY, stress_of, torque_text, twist_of
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB, YIELDS, TWISTS = "SHEAR STRESS", "YIELDS AT", "TWISTS"
# What is read of each option: its dimension, and the quantity that it is.
_READ = {
    "diameter": ("length", "shaft_diameter"),
    "torque": ("torque", "shaft_torque"),
    "bore": ("length", "shaft_bore"),
    "wall": ("length", "wall_thickness"),
    "length": ("length", "shaft_length"),
    "shear_yield": ("stress", "torsional_yield_strength"),
    "yield_strength": ("stress", "yield_strength"),
}
# What a shaft is judged under, and how a title says it.
_UNDER = {
    "torque": "under",
    "shear_yield": "that yields in shear at",
    "yield_strength": "that yields in tension at",
}
_DO = "At the surface, away from steps, keyways and splines, which raise it. Name the steel for whether it carries it."
_ALIKE = (
    "Over its length, while it does not yield. Every steel twists about as far, soft or hard: thicker or"
    " shorter twists less."
)
_KEEP = "Keep well under it: steps, keyways and splines lower it, and a shock is more than the engine's torque."


def shaftstress(
    diameter: str,
    torque: str | None = None,
    *,
    bore: str | None = None,
    shear_yield: str | None = None,
    yield_strength: str | None = None,
    wall: str | None = None,
    length: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The shear stress at the surface of a round shaft under a torque, how far it twists, or the torque at which its
    steel yields.

    ``diameter`` of the shaft (``1-1/4 in``), ``torque`` in it (``1100 lbf*ft``) or ``shear_yield`` of its steel
    (``500 MPa``), or ``yield_strength``, what it yields at in tension: 0.577 of that is its shear yield by distortion
    energy; ``bore`` of a hollow one, or ``wall`` of a tube; the ``length`` that twists under the torque (``30 in``),
    of any steel.

    Returns a Sheet whose decision is the stress, or that torque, or the twist where a length is given. Raises
    InputError or UnitError for what cannot be
    read, and where not one of torque and the two yields is given. Source: elementary mechanics, T r / J.

    >>> round(shaftstress("4 in", "15000 lbf*ft").decision.figure.typical, 2)
    14.32
    >>> round(shaftstress("30 mm", shear_yield="500 MPa").decision.figure.typical)
    2651
    """
    data = data or refdata()
    asked = {
        "diameter": diameter,
        "torque": torque,
        "bore": bore,
        "shear_yield": shear_yield,
        "yield_strength": yield_strength,
        "wall": wall,
        "length": length,
    }
    if bore is not None and wall is not None:
        raise InputError(wall, "wall", "the bore was given too", (), "give one of them")
    under = [key for key in _UNDER if asked[key] is not None]
    if len(under) != 1:
        why = "one is worked out" if under else "the torque was not said, nor where the steel yields"
        do = "give the torque for the stress, or one yield, in shear or in tension, for the torque"
        raise InputError(diameter, "shaft", why, (), do)
    if length is not None and torque is None:
        raise InputError(length, "length", "a length twists under a torque alone", (), "give the torque too")
    read = {
        key: (read_positive(text, dimension, key.replace("_", " ")), quantity)
        for key, (dimension, quantity) in _READ.items()
        if (text := asked[key])
    }
    verb = VERB if torque else YIELDS
    title = f"shaft of {read['diameter'][0].text} {_UNDER[under[0]]} {read[under[0]][0].text}"
    doubts = unusual(read, data)
    if doubts:
        return questioned(title, asked, doubts, verb, data)
    figures = {key: stated(measure, quantity, key, data) for key, (measure, quantity) in read.items()}
    if wall is not None:
        figures["bore"] = _bore(figures["diameter"], figures["wall"], data)
        bore = f"{units.significant(figures['bore'].typical)} {figures['bore'].unit}"
    hole = figures.get("bore")
    if hole is not None and not 0 < base(hole) < base(figures["diameter"]):
        raise InputError(
            wall or bore or "", "bore", "no bore of such a shaft", (), "give the bore or the wall of the shaft"
        )
    if "yield_strength" in figures:
        figures["shear_yield"] = _in_shear(figures["yield_strength"], data)
    made = _stress(figures, diameter, bore, data) if torque else _torque(figures, diameter, bore, data)
    text = "A clutch let in hard, or a spinning wheel that bites again, strikes a shaft with more than a steady torque."
    cautions = [Caution(text, "injury", (made.id,), "common practice")]
    decision = use(verb, made, _DO if torque else _KEEP)
    twist = _twist(figures, diameter, data)
    if twist is not None:
        decision = use(TWISTS, twist, _ALIKE)
    shown = [*([twist] if twist is not None else []), made, *figures.values()]
    return Sheet(title, asked, data, shown, [], cautions, decision=decision)


def _bore(diameter: Figure, wall: Figure, data: Refdata) -> Figure:
    """The bore of a tube."""
    hole = units.from_base(base(diameter) - 2 * base(wall), diameter.unit)
    key = {"tube": f"{diameter.text} {diameter.unit} x {wall.text} {wall.unit}"}
    return derived("bore_of_wall", "shaft_bore", hole, diameter.unit, (diameter, wall), data, key=key)


def _twist(figures: dict[str, Figure], diameter: str, data: Refdata) -> Figure | None:
    """How far it twists, by the modulus of low alloy steel; None where no length was given."""
    if "length" not in figures:
        return None
    length, torque = figures["length"], figures["torque"]
    modulus = lookup.look_up(TABLE, "shear_modulus", data=data, **LOW_ALLOY)
    key = {"diameter": diameter, "length": f"{length.text} {length.unit}", "torque": torque_text(torque)}
    said = f"shear modulus of low alloy steel, {modulus.text} {modulus.unit}"
    return twist_of(torque, length, modulus, (figures["diameter"], figures.get("bore")), key, said, data)


def _stress(figures: dict[str, Figure], diameter: str, bore: str | None, data: Refdata) -> Figure:
    torque = figures["torque"]
    unit = "MPa" if torque.unit == "N*m" else "ksi"
    key = {"diameter": diameter, "bore": bore or "0", "torque": torque_text(torque)}
    return stress_of(torque, figures["diameter"], figures.get("bore"), unit, key, data)


def _torque(figures: dict[str, Figure], diameter: str, bore: str | None, data: Refdata) -> Figure:
    """The torque at which the surface begins to yield."""
    strength, size, hole = figures["shear_yield"], figures["diameter"], figures.get("bore")
    torque = calc.torque_from_shear_stress(base(strength), base(size), base(hole) if hole is not None else 0.0)
    unit = "N*m" if size.unit == "mm" else "lbf*ft"
    name = "torque_at_torsional_yield"
    inputs = (strength, size) if hole is None else (strength, size, hole)
    known = figures.get("yield_strength", strength)
    key = {"diameter": diameter, "bore": bore or "0", "yield": f"{known.text} {known.unit}"}
    return derived(name, name, units.from_base(torque, unit), unit, inputs, data, key=key)


def _in_shear(tension: Figure, data: Refdata) -> Figure:
    """What a steel yields at in shear, of what it yields at in tension."""
    rule, quantity = "shear_yield_distortion_energy", "torsional_yield_strength"
    number = units.from_base(calc.torsional_yield_distortion_energy(base(tension)), tension.unit)
    key = {"yield": f"{tension.text} {tension.unit}"}
    words = "by distortion energy, 0.577 of yield"
    return derived(rule, quantity, number, tension.unit, (tension,), data, key=key, conditions=words)
