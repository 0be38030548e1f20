"""The answer ``shaftstress``: the shear stress of a round shaft under a torque, whatever its steel."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.torsion import stress_of, torque_text
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

VERB = "SHEAR STRESS"
_DO = "At the surface, away from steps, keyways and splines, which raise it. Name the steel for whether it carries it."


def shaftstress(diameter: str, torque: str, *, bore: str | None = None, data: Refdata | None = None) -> Sheet:
    """The shear stress at the surface of a round shaft under a torque.

    ``diameter`` of the shaft (``1-1/4 in``), ``torque`` in it (``1100 lbf*ft``), ``bore`` of a hollow one.

    Returns a Sheet whose decision is the stress. Raises InputError or UnitError for what cannot be read. Source:
    elementary mechanics, T r / J.

    >>> round(shaftstress("4 in", "15000 lbf*ft").decision.figure.typical, 2)
    14.32
    """
    data = data or refdata()
    asked = {"diameter": diameter, "torque": torque, "bore": bore}
    read = {
        "diameter": (read_positive(diameter, "length", "diameter"), "shaft_diameter"),
        "torque": (read_positive(torque, "torque", "torque"), "shaft_torque"),
        **({"bore": (read_positive(bore, "length", "bore"), "shaft_bore")} if bore else {}),
    }
    title = f"shaft of {read['diameter'][0].text} under {read['torque'][0].text}"
    doubts = {
        key: did_you_mean(f"{measure.text} is no usual {quantity.replace('_', ' ')}", ())
        for key, (measure, quantity) in read.items()
        if not is_plausible(measure, quantity, data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    figures = {key: stated(measure, quantity, key, data) for key, (measure, quantity) in read.items()}
    hole = figures.get("bore")
    if hole is not None and base(hole) >= base(figures["diameter"]):
        raise InputError(bore or "", "bore", "as large as the shaft, or larger", (), "give the bore of the shaft")
    unit = "MPa" if read["torque"][0].unit == "N*m" else "ksi"
    key = {"diameter": diameter, "bore": bore or "0", "torque": torque_text(figures["torque"])}
    stress = stress_of(figures["torque"], figures["diameter"], hole, unit, key, data)
    text = "A clutch let in hard, or a spinning wheel that bites again, strikes a shaft with more than a steady torque."
    cautions = [Caution(text, "injury", (stress.id,), "common practice")]
    return Sheet(title, asked, data, [stress, *figures.values()], [], cautions, decision=use(VERB, stress, _DO))
