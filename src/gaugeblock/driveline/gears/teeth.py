"""The answer ``ratio``: the axle ratio of a ring gear and its pinion, by their teeth."""

from __future__ import annotations

import math
import re

from gaugeblock import units
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.gears.given import ratio_measure
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

_TEETH = re.compile(r"(?P<ring>[0-9]{1,3})\s*[/:x]\s*(?P<pinion>[0-9]{1,3})", re.ASCII)


def ratio(teeth: str, *, data: Refdata | None = None) -> Sheet:
    """The axle ratio of a ring gear and its pinion.

    ``teeth`` are those of the ring gear and of the pinion (``41/11``).

    Returns a Sheet: the ratio, and whether the pair is hunting. Raises InputError for what is no pair of tooth counts.

    >>> round(ratio("41/11").decision.figure.typical, 2)
    3.73
    """
    data = data or refdata()
    if _TEETH.fullmatch(teeth.strip()) is None:
        raise InputError(teeth, "teeth", "not two tooth counts", (), "write it as 41/11, the ring gear first")
    figure = axle_of(teeth.strip(), data)
    if figure.typical < 1:
        raise InputError(teeth, "teeth", "the pinion has more teeth than the ring gear", (), "the ring gear first")
    said = f"{capital(figure.conditions)}."
    title, asked = f"ring gear and pinion {teeth.strip()}", {"teeth": teeth}
    low, high = plausible_range("axle_ratio", data) or (0.0, math.inf)
    if not low <= figure.typical <= high:
        number = units.significant(figure.typical, 3)
        doubt = did_you_mean(f"{teeth.strip()} makes {number}, which is no usual axle ratio", ())
        return questioned(title, {**asked}, {"teeth": doubt}, "RATIO", data, figure.inputs)
    return Sheet(title, asked, data, [figure], [], [], decision=use("RATIO", figure, said))


def axle_of(typed: str, data: Refdata) -> Figure:
    """An axle ratio as typed, or by its teeth; InputError for neither."""
    match = _TEETH.fullmatch(typed)
    if match is None:
        return stated(ratio_measure(typed, "ratios"), "axle_ratio", "axle ratio", data)
    teeth = []
    for name in ("ring", "pinion"):
        if int(match[name]) == 0:
            raise InputError(typed, "ratios", "no teeth", (), "count the teeth of ring gear and pinion")
        measure = units.parse_measure(f"{match[name]} teeth", "tooth count", name)
        teeth.append(stated(measure, "gear_teeth", f"{name} of {typed}", data))
    number = teeth[0].typical / teeth[1].typical
    said = _hunts(int(match["ring"]), int(match["pinion"]))
    return derived("ratio_of_teeth", "axle_ratio", number, "1", teeth, data, key={"teeth": typed}, conditions=said)


def _hunts(ring: int, pinion: int) -> str:
    """Whether every tooth meets every other, and what that asks of the one who sets the gears up."""
    common = math.gcd(ring, pinion)
    if common == 1:
        return "hunting: every tooth meets every other"
    kind = "not hunting" if ring % pinion == 0 else "partly hunting"
    return f"{kind}: teeth have {common} as common factor; set the makers' timing marks tooth to tooth"
