"""The angle to set for each bend: from test bends, else a range by formula that is said to be an estimate."""

from __future__ import annotations

from math import pi

from gaugeblock.answer.check import CANNOT_TELL, INFORM, OK, Check
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.calc import stick as sticks
from gaugeblock.drawing.lengths import degrees_text
from gaugeblock.tubes.plan.found import Found
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.calc.path import Bend, Stick
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.making import Make
    from gaugeblock.tubes.plan.metal import Metal
    from gaugeblock.tubes.plan.tool import Tool

HALF_DEGREE = pi / 360
NAME = "angle to set"


class Setting(Value):
    """What to set for one bend: its text, the Figure behind it; rounded and exact angle in rad when it is one angle."""

    __slots__ = ("angle", "exact", "figure", "text")

    text: str
    figure: Figure | None
    angle: float | None
    exact: float | None

    def __init__(
        self, text: str, figure: Figure | None, angle: float | None = None, exact: float | None = None
    ) -> None:
        put(self, "text", text)
        put(self, "figure", figure)
        put(self, "angle", angle)
        put(self, "exact", exact)


def settings_of(
    stick: Stick, tool: Tool | None, arcs: Sequence[Figure], metal: Metal | None, make: Make
) -> tuple[list[Setting], Found]:
    """What to set for each bend of a stick, whose arcs are given by radius and angle, and whether it is known."""
    if not stick.bends or tool is None:
        return [], Found()
    out, why = [], ""
    for n, (b, arc) in enumerate(zip(stick.bends, arcs, strict=True), 1):
        radius, angle = arc.inputs
        setting, reason = _tested(n, b, angle, tool, make)
        why = reason or why
        out.append(setting or _estimated(n, b, (angle, radius), metal, make))
    if all(s.angle is not None for s in out):
        tests = len(tool.die.tests)
        said = f"from {tests} test bend{'s' if tests > 1 else ''} on this die"
        if tests == 1 and not all(_is_own(b, tool) for b in stick.bends):
            said += ", in proportion: measure the first bend"
        return out, Found(checks=[Check(NAME, OK, said)])
    known = any(s.figure is not None for s in out)
    reason = why or "no test bend of this tube on this die (angle set, angle got)"
    reason += (
        "; the range by formula is an estimate" if known else "; no estimate: this metal's strengths are not known"
    )
    ask = "Bend a test piece of this lot on this die, and give the angle set and the angle it kept."
    question = Question(MEASURE, ask, "shop.dies.test_bends", (NAME,))
    return out, Found(checks=[Check(NAME, CANNOT_TELL, reason, bears=INFORM)], questions=[question])


def _tested(n: int, b: Bend, angle: Figure, tool: Tool, make: Make) -> tuple[Setting | None, str]:
    """The angle by the die's test bends; none, and why, outside them or where they do not rise together."""
    if not tool.die.tests:
        return None, ""
    if len(tool.die.tests) == 1 and not _is_own(b, tool):
        return _in_proportion(n, b, angle, tool, make), ""
    try:
        exact = sticks.set_angle(b.angle, tool.die.tests)
    except ValueError as error:
        return None, f"bend {n}: {error}"
    figure = make(
        "angle_set_from_tests",
        "bend_angle_set",
        exact,
        (angle, *tool.tests),
        unit="deg",
        bend=str(n),
        text=degrees_text(exact).removesuffix(" deg"),
        conditions=f"bend {n}, from test bends",
    )
    return Setting(degrees_text(exact), figure, sticks.round_to(exact, HALF_DEGREE), exact), ""


def _is_own(b: Bend, tool: Tool) -> bool:
    """Whether the one test bend was of this very angle."""
    return abs(tool.die.tests[0][1] - b.angle) <= 1e-9


def _in_proportion(n: int, b: Bend, angle: Figure, tool: Tool, make: Make) -> Setting:
    """The angle by one test bend: springback grows with the angle, for the ratio of the radii is the same."""
    exact = sticks.set_angle_in_proportion(b.angle, tool.die.tests[0])
    figure = make(
        "angle_set_in_proportion",
        "bend_angle_set",
        exact,
        (angle, *tool.tests),
        unit="deg",
        bend=str(n),
        text=degrees_text(exact).removesuffix(" deg"),
        conditions=f"bend {n}, in proportion from one test bend of the same stock; measure the first bend",
    )
    return Setting(degrees_text(exact), figure, sticks.round_to(exact, HALF_DEGREE), exact)


def _estimated(n: int, b: Bend, given: tuple[Figure, ...], metal: Metal | None, make: Make) -> Setting:
    """The range by the published springback formulas."""
    got = None if metal is None else metal.set_angle(b.angle, b.radius)
    if got is None:
        return Setting("test first", None)
    low, high, inputs = got
    figure = make(
        "angle_set_estimate",
        "bend_angle_set",
        None,
        (*given, *inputs),
        unit="deg",
        bend=str(n),
        ends=(low, high),
        conditions=f"bend {n}: AN ESTIMATE by formula, not a setting; bend a test piece",
    )
    ends = [degrees_text(a).removesuffix(" deg") for a in (low, high)]
    return Setting(f"{ends[0]} to {ends[1]} deg?" if ends[0] != ends[1] else f"about {ends[0]} deg?", figure)
