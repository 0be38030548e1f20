"""The answer ``shaftstress``: the shear stress of a round shaft under a torque, or the torque that a stress allows."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import unusual
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.torsion import stress_of, torque_text
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB, YIELDS = "SHEAR STRESS", "YIELDS AT"
_DO = "At the surface, away from steps, keyways and splines, which raise it. Name the steel for whether it carries it."
_KEEP = "Keep well under it: steps, keyways and splines lower it, and a shock is more than the engine's torque."


def shaftstress(
    diameter: str,
    torque: str | None = None,
    *,
    bore: str | None = None,
    shear_yield: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The shear stress at the surface of a round shaft under a torque, or the torque at which its steel yields.

    ``diameter`` of the shaft (``1-1/4 in``), ``torque`` in it (``1100 lbf*ft``) or ``shear_yield`` of its steel
    (``500 MPa``: some 0.58 of what it yields at in tension), ``bore`` of a hollow one.

    Returns a Sheet whose decision is the stress, or that torque. Raises InputError or UnitError for what cannot be
    read, and where torque and shear yield are both given, or neither. Source: elementary mechanics, T r / J.

    >>> round(shaftstress("4 in", "15000 lbf*ft").decision.figure.typical, 2)
    14.32
    >>> round(shaftstress("30 mm", shear_yield="500 MPa").decision.figure.typical)
    2651
    """
    data = data or refdata()
    asked = {"diameter": diameter, "torque": torque, "bore": bore, "shear_yield": shear_yield}
    if (torque is None) == (shear_yield is None):
        why = "the torque was not said, nor where the steel yields in shear" if torque is None else "one is worked out"
        do = "give the torque for the stress, or the shear yield for the torque"
        raise InputError(diameter, "shaft", why, (), do)
    read = {
        "diameter": (read_positive(diameter, "length", "diameter"), "shaft_diameter"),
        **({"torque": (read_positive(torque, "torque", "torque"), "shaft_torque")} if torque else {}),
        **({"bore": (read_positive(bore, "length", "bore"), "shaft_bore")} if bore else {}),
        **(
            {"shear_yield": (read_positive(shear_yield, "stress", "shear yield"), "torsional_yield_strength")}
            if shear_yield
            else {}
        ),
    }
    under = "torque" if torque else "shear_yield"
    verb = VERB if torque else YIELDS
    title = (
        f"shaft of {read['diameter'][0].text} {'under' if torque else 'that yields in shear at'} {read[under][0].text}"
    )
    doubts = unusual(read, data)
    if doubts:
        return questioned(title, asked, doubts, verb, data)
    figures = {key: stated(measure, quantity, key, data) for key, (measure, quantity) in read.items()}
    hole = figures.get("bore")
    if hole is not None and base(hole) >= base(figures["diameter"]):
        raise InputError(bore or "", "bore", "as large as the shaft, or larger", (), "give the bore of the shaft")
    made = _stress(figures, diameter, bore, data) if torque else _torque(figures, diameter, bore, data)
    text = "A clutch let in hard, or a spinning wheel that bites again, strikes a shaft with more than a steady torque."
    cautions = [Caution(text, "injury", (made.id,), "common practice")]
    decision = use(verb, made, _DO if torque else _KEEP)
    return Sheet(title, asked, data, [made, *figures.values()], [], cautions, decision=decision)


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
    key = {"diameter": diameter, "bore": bore or "0", "shear yield": f"{strength.text} {strength.unit}"}
    return derived(name, name, units.from_base(torque, unit), unit, inputs, data, key=key)
