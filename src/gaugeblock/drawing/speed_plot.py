"""Engine speed against road speed: a straight line a gear."""

from __future__ import annotations

from gaugeblock.drawing.heat_plot import ticks
from gaugeblock.drawing.svg import HIDDEN, LEAST, MEDIUM, TEXT, THICK, THIN, Page

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

_WIDTH, _HEIGHT = 88.0, 82.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 19.0, 5.0, 4.0, 24.0
_MARGIN = 1.25
_LABEL = 0.85  # of the way out, where a line says its gear


def engine_against_road(
    fans: Sequence[tuple[str, Sequence[tuple[str, float]]]], most_rpm: float, unit: str, speed: float, said: str = ""
) -> str:
    """SVG of one or two fans of lines. A fan is a name and its gears, each with its engine rpm per road speed unit.

    The road speed runs to a quarter beyond ``speed``, which is marked, or to where the slowest engine meets
    ``most_rpm`` if that is less. ValueError without a fan, or for more than two.
    """
    if not 1 <= len(fans) <= 2:
        raise ValueError("one or two fans are drawn")
    page = Page(_WIDTH, _HEIGHT, "engine speed against road speed")
    rows = ticks(0.0, most_rpm)
    reach = max(most_rpm / slope for _, gears in fans for _, slope in gears)
    columns = ticks(0.0, max(min(reach, 2 * speed), _MARGIN * speed))
    wide, tall = _WIDTH - _LEFT - _RIGHT, _HEIGHT - _TOP - _BOTTOM

    def at(road: float, rpm: float) -> tuple[float, float]:
        return _LEFT + wide * road / columns[-1], _TOP + tall * (1 - rpm / rows[-1])

    for value in rows:
        page.line(at(0, value), at(columns[-1], value), THIN, "0.4 1.2")
        page.text((_LEFT - 1.5, at(0, value)[1] + 1.1), f"{value:g}", TEXT, "end")
    for value in columns:
        x, y = at(value, 0)
        page.line((x, y), (x, y + 1.5), THIN)
        page.text((x, y + 5.4), f"{value:g}", TEXT, "middle")
    page.rectangle(_LEFT, _TOP, wide, tall, MEDIUM)
    page.line(at(speed, 0), at(speed, rows[-1]), THIN, HIDDEN)
    for n, (_, gears) in enumerate(fans):
        for gear, slope in gears:
            end = min(most_rpm / slope, columns[-1])
            tip = at(end, end * slope)
            page.polyline([at(0, 0), tip], MEDIUM if n else THICK, HIDDEN if n else "")
            if n == 0:
                x, y = at(_LABEL * end, _LABEL * end * slope)
                page.text((x, y + 1.0), gear, LEAST, "middle", bold=True, clear=True)
    page.text((_LEFT + wide / 2, _HEIGHT - 12.5), f"road speed, {unit}; a line a gear, with its ratio", LEAST, "middle")
    page.text((4.0, _TOP + tall / 2), "engine, rpm", TEXT, "middle", turn=-90)
    for n, (name, _) in enumerate(fans):
        x, y = 1.0 + 44.0 * n, _HEIGHT - 6.6
        page.line((x, y - 1.1), (x + 7, y - 1.1), MEDIUM if n else THICK, HIDDEN if n else "")
        page.fit((x + 8.5, y), name, TEXT, 34.0)
    page.fit((1.0, _HEIGHT - 1.6), said, TEXT, _WIDTH - 2)
    return page.svg()
