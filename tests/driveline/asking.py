"""What the tests of the driveline share: look-ups that are asked again and again, and how their sheets are read."""

from __future__ import annotations

from gaugeblock import steel
from gaugeblock.answer.check import Check
from gaugeblock.answer.sheet import Sheet

SHAFT = "shaft stress within torsional yield"
LEFT = "as left within the maker's figure"
MAKER = ("0.006 in", "0.005 in", "0.008 in", "axle maker's sheet", "page 4")


def only(sheet: Sheet, name: str) -> Check:
    """The one check of a name."""
    (check,) = [c for c in sheet.checks if c.name == name]
    return check


def shaft(grade: str = "4340", **more: str) -> Sheet:
    """A shaft of 4340, unless something else is said of it."""
    asked = {"treatment": "quenched and tempered", "temper": "800 degF", "shaft": "1 in", "torque": "1500 lbf*ft"}
    return steel(grade, **{**asked, **more})  # type: ignore[arg-type]


def plain(text: str) -> str:
    """A text of a page with plain blanks."""
    return text.replace("\u00a0", " ")


def texts(sheet: Sheet) -> str:
    """All its cautions."""
    return " ".join(c.text for c in sheet.cautions)
