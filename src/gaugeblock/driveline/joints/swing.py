"""How much the driven shaft speeds up and slows down: by one joint, and by the pair, yokes in line and a quarter
turn out.
"""

from __future__ import annotations

import math

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline.joints.working import Working, text_of
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure


class Swings(Value):
    """Swing of one joint alone, of the pair with the yokes in line (``good``) and a quarter turn out (``bad``)."""

    __slots__ = ("bad", "good", "one")

    one: Figure
    good: Figure
    bad: Figure

    def __init__(self, one: Figure, good: Figure, bad: Figure) -> None:
        put(self, "one", one)
        put(self, "good", good)
        put(self, "bad", bad)

    @property
    def in_line(self) -> str:
        """What is left with the yokes in line."""
        return f"the driven shaft's speed swings by {_percent(self.good)}"

    @property
    def either(self) -> str:
        """What the phasing of the yokes makes of it."""
        return f"{self.in_line} with the yokes in line, and by {_percent(self.bad)} with them a quarter turn out"

    @property
    def out_of_phase(self) -> str:
        """What the wrong phasing leaves, beside what the right one would."""
        swings = f"the driven shaft's speed swings by {_percent(self.bad)}"
        return f"{swings}, and with the yokes in line by {_percent(self.good)}"

    def left_by(self, difference_rad: float, found: Working) -> float:
        """What a pair in one plane would leave, in per cent, were the lesser of its angles that much less."""
        worst = max(base(a) for a in found.angles)
        return 100 * float(calc.pair_speed_swing(worst, max(worst - difference_rad, 0.0)))


def _percent(figure: Figure) -> str:
    return f"{units.significant(figure.typical, 3)} %"


def one_joint(angle: Figure, data: Refdata) -> Figure:
    """The swing of one joint."""
    value = calc.joint_speed_swing(base(angle))
    return _swing("universal_joint_speed_swing", value, (angle,), {"angle": text_of(angle)}, "one joint", data)


def swings(found: Working, data: Refdata, yokes: Measure | None = None) -> Swings:
    """All swings of a pair; ``bad`` with the ``yokes`` out of line by so much, where that is known."""
    first, second = found.angles
    key = {"first": text_of(first), "second": text_of(second)}
    both = (first, second)
    one = one_joint(first, data)
    if yokes is not None:
        made = swings(found, data)
        far = stated(yokes, "joint_plane_angle", "yokes out", data)
        value = calc.pair_speed_swing_in_planes(base(first), base(second), found.apart or 0.0, yokes.to("rad"))
        said = f"yokes {yokes.text} out of line"
        own = {**key, "yokes": f"{yokes.text} out"}
        inputs = (*both, far, *([found.planes] if found.planes is not None else []))
        bad = _swing("universal_joint_pair_swing_in_planes", value, inputs, own, said, data)
        return Swings(one, made.good, bad)
    if found.planes is None or found.apart == 0:
        said = "two joints in one plane"
        value = calc.pair_speed_swing(base(first), base(second))
        good = _swing("universal_joint_pair_swing_in_phase", value, both, key, f"{said}, yokes in phase", data)
        value = calc.pair_speed_swing_wrong_phase(base(first), base(second))
        out = f"{said}, yokes a quarter turn out of phase"
        return Swings(one, good, _swing("universal_joint_pair_swing_wrong_phase", value, both, key, out, data))
    rule = "universal_joint_pair_swing_in_planes"
    inputs = (*both, found.planes)
    said = f"planes {units.significant(found.planes.typical, 3)} deg apart"
    value = calc.pair_speed_swing_in_planes(base(first), base(second), found.apart)
    good = _swing(rule, value, inputs, {**key, "yokes": "in phase"}, f"{said}, yokes in phase", data)
    value = calc.pair_speed_swing_in_planes(base(first), base(second), found.apart, math.pi / 2)
    out = f"{said}, yokes a quarter turn out of phase"
    return Swings(one, good, _swing(rule, value, inputs, {**key, "yokes": "a quarter turn out"}, out, data))


def _swing(
    rule: str, value: float, inputs: tuple[Figure, ...], key: dict[str, str], said: str, data: Refdata
) -> Figure:
    number = units.from_base(value, "%")
    return derived(rule, "speed_swing", number, "%", inputs, data, key=key, conditions=said)
