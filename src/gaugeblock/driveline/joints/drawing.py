"""The side view of the lines that two joints stand between, every slope true and each working angle dimensioned."""

from __future__ import annotations

from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.pretty import pretty
from gaugeblock.units import significant, to_base

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.joints.given import Joints
    from gaugeblock.driveline.joints.working import Working

_LINES = ("gearbox", "shaft", "pinion")


def drawings(of: Joints, found: Working) -> list[Drawing]:
    """The view where the slopes of the three shafts are known; () of angles alone, which lie in no known plane."""
    if not of.shafts:
        return []
    from gaugeblock.drawing.shaft_lines import side_view

    slopes = [to_base(float(v.side.value), v.side.unit) for v in of.shafts]
    named = [f"{what}|{pretty(v.side.text)}" for what, v in zip(_LINES, of.shafts, strict=True)]
    angles = [pretty(f"{significant(a.typical, 3)} {a.unit}") for a in found.angles]
    return [Drawing("side view, every slope true", side_view(slopes, named, angles, ["" for _ in angles[1:]]))]
