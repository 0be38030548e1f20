"""The true working angle of each joint, and the angle between their planes."""

from __future__ import annotations

import math

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import driveline as calc
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.joints.given import Joints, View
    from gaugeblock.tables.load import Refdata

_SHAFT_NAMES = ("input shaft", "propeller shaft", "output shaft")
_JOINT_NAMES = ("first joint", "second joint")


class Working(Value):
    """The working angle of each joint; ``planes`` the angle between their planes (None: not known).

    ``is_taken`` that they are taken to lie in one plane, since nothing was said of the top view; ``lacks`` the key that
    is missing where only one of two joints has a top view.
    """

    __slots__ = ("angles", "is_taken", "lacks", "planes")

    angles: tuple[Figure, ...]
    planes: Figure | None
    is_taken: bool
    lacks: str

    def __init__(
        self, angles: tuple[Figure, ...], planes: Figure | None = None, *, is_taken: bool = False, lacks: str = ""
    ) -> None:
        put(self, "angles", angles)
        put(self, "planes", planes)
        put(self, "is_taken", is_taken)
        put(self, "lacks", lacks)

    @property
    def apart(self) -> float:
        """The angle between the planes in rad; 0 where it is not known."""
        return base(self.planes) if self.planes is not None else 0.0


def text_of(figure: Figure) -> str:
    """An angle or speed as it was typed, or to four digits."""
    return f"{figure.text or units.significant(figure.typical)} {figure.unit}"


def working(of: Joints, data: Refdata) -> Working:
    """The working angles of what was given."""
    return _of_shafts(of.shafts, data) if of.shafts else _of_angles(of.angles, data)


def _of_shafts(shafts: tuple[View, ...], data: Refdata) -> Working:
    side = [
        stated(v.side, "shaft_slope_side", f"{n}, side view", data) for n, v in zip(_SHAFT_NAMES, shafts, strict=True)
    ]
    top = [
        stated(v.top, "shaft_slope_top", f"{n}, top view", data)
        for n, v in zip(_SHAFT_NAMES, shafts, strict=True)
        if v.top is not None
    ]
    both = [(base(s), base(top[n]) if top else 0.0) for n, s in enumerate(side)]
    angles = []
    for n, name in enumerate(_JOINT_NAMES):
        value = calc.shaft_line_angle(*both[n], *both[n + 1])
        inputs = (*side[n : n + 2], *top[n : n + 2])
        key = {"joint": name, "slopes": ", ".join(text_of(f) for f in inputs)}
        angles.append(_angle("universal_joint_shaft_angle", value, inputs, key, data))
    if not top:
        return Working(tuple(angles), is_taken=True)
    planes = calc.joint_plane_angle(*both)
    return Working(tuple(angles), _planes("universal_joint_plane_angle", planes, (*side, *top), data))


def _of_angles(views: tuple[View, ...], data: Refdata) -> Working:
    made: list[tuple[Figure, tuple[Figure, ...]]] = []
    for view, name in zip(views, _JOINT_NAMES, strict=False):
        side = stated(view.side, "working_angle", name, data)
        if view.top is None:
            made.append((side, (side,)))
            continue
        top = stated(view.top, "working_angle", f"{name}, top view", data)
        first = stated(view.side, "working_angle", name, data)
        key = {"side": text_of(first), "top": text_of(top), "joint": name}
        true = calc.true_joint_angle(base(first), base(top))
        made.append((_angle("universal_joint_true_angle", true, (first, top), key, data), (first, top)))
    angles = tuple(angle for angle, _ in made)
    seen = [view.top is not None for view in views]
    if len(made) == 1 or not any(seen):
        return Working(angles, is_taken=len(made) > 1)
    if not all(seen):
        return Working(angles, lacks="second_top" if seen[0] else "top")
    turned = [math.atan2(math.tan(base(pair[1])), math.tan(base(pair[0]))) for _, pair in made]
    if any(base(a) == 0 for a in angles):
        return Working(angles)  # a joint that runs straight has no plane
    apart = math.asin(min(abs(math.sin(turned[0] - turned[1])), 1.0))
    inputs = tuple(f for _, pair in made for f in pair)
    return Working(angles, _planes("universal_joint_plane_angle_of_views", apart, inputs, data))


def _angle(rule: str, value: float, inputs: tuple[Figure, ...], key: dict[str, str], data: Refdata) -> Figure:
    return derived(rule, "working_angle_true", units.from_base(value, "deg"), "deg", inputs, data, key=key)


def _planes(rule: str, value: float, inputs: tuple[Figure, ...], data: Refdata) -> Figure:
    key = {"views": ", ".join(text_of(f) for f in inputs)}
    return derived(rule, "joint_plane_angle", units.from_base(value, "deg"), "deg", inputs, data, key=key)
