"""The drawings of a line beside heat, from its estimate: plain numbers for the plot and the section."""

from __future__ import annotations

from math import exp, log

from gaugeblock import units
from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.printing import number_only
from gaugeblock.warmth import estimate as line_heat
from gaugeblock.warmth.verdict import low_end

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.estimate import Estimate

_POINTS = 25


def drawings(worst: Estimate, limit: Figure | None, needed: Figure | None, data: Refdata) -> list[Drawing]:
    """Temperature against gap for the case that governs, and the section to scale."""
    from gaugeblock.drawing import heat_plot

    beside = worst.beside
    gap, hot, line = (beside.inputs[n] for n in ("gap", "hot diameter", "line diameter"))
    here = beside.si("gap")
    need = units.to_base(needed.typical, needed.unit) if needed is not None else here
    unit = "degF" if gap.unit in ("in", "ft") else "degC"  # the shop that reads its gaps in inches
    last = min(max(2.5 * here, 1.4 * min(need, 6 * here)), 1.0)
    first = min(0.001, here / 2)
    points = []
    ends = [{n: e for n, e in which.items() if n != "gap"} for which in (worst.lowest, {}, worst.highest)]
    for i in range(_POINTS):
        at = exp(log(first) + (log(last) - log(first)) * i / (_POINTS - 1))
        low, likely, high = (units.from_base(float(line_heat.balance(beside, e, at).line_k), unit) for e in ends)
        points.append((units.from_base(at, gap.unit), low, likely, high))
    marks = [heat_plot.Mark(gap.typical, f"given {number_only(gap, data)}")]
    if needed is not None:
        marks.append(heat_plot.Mark(needed.typical, f"needed {number_only(needed, data)}"))
    limits = []
    if limit is not None:
        text = pretty(f"limit {number_only(limit, data, unit)}")
        limits.append(heat_plot.Mark(low_end(limit, unit), text))
    shield = "" if beside.shield == "none" else f", {beside.shield} shield"
    plot = heat_plot.temperature_against_gap(
        points, limits, marks, f"Line temperature, {worst.case}{shield}", gap.unit, unit
    )
    scale = float(units.factor(gap.unit)) * 1000
    sizes = [units.from_base(units.to_base(f.typical, f.unit), gap.unit) for f in (hot, line)]
    words = (number_only(hot, data), number_only(line, data), number_only(gap, data))
    title = f"Section{shield}"
    sleeve = units.from_base(beside.si("sleeve"), gap.unit) if "sleeve" in beside.inputs else 0.0
    across = heat_plot.section(sizes[0], sizes[1], gap.typical, beside.shield, words, title, scale, sleeve)
    return [Drawing(f"temperature against gap, {worst.case}{shield}", plot), Drawing(f"section{shield}", across)]
