"""A line along its path, at its nearest place to the hot pipe: the gap that the paths of a job give."""

from __future__ import annotations

import math
from fractions import Fraction

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import HOT, LINE, place_words
from gaugeblock.drawing.lengths import tape
from gaugeblock.errors import InputError
from gaugeblock.lines.found import Found
from gaugeblock.lines.keys import Line, line_of_part, line_of_text
from gaugeblock.lines.placed import placed_line
from gaugeblock.lines.route import route_of
from gaugeblock.span import Span, of
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import Measure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.clearance import Gap, Tube
    from gaugeblock.lines import job


def route_of_part(
    part: job.Line, *, draw: bool = False, data: Refdata | None = None, is_metric: bool | None = None
) -> Sheet:
    """The sheet of one line of a job, with its drawings when ``draw``; in the unit of its points unless ``is_metric``
    says.

    A word that is not in the tables answers ``cannot tell`` and names the nearest; it never stops the sheet. InputError
    when points do not fit their radius.
    """
    data = data or refdata()
    line, first = line_with_paths(part, data, is_metric)
    return route_of(line, draw=draw, data=data, is_job=True, first=first)


def line_with_paths(part: job.Line, data: Refdata, is_metric: bool | None = None) -> tuple[Line, Found]:
    """A job's line with the gap, length and hot diameter that its paths give where they were not given, and where
    they meet.
    """
    line = line_of_part(part)
    bodies = bodies_of(part, data)
    if bodies is None or line.has("gap"):
        return line, Found()
    found = tube_gap(*bodies)
    if is_metric is None:
        is_metric = part.points[0][0].unit not in ("in", "ft")
    worked = {"gap": _near(found, is_metric), "hot_od": _size(2 * bodies[1].radius, is_metric)}
    worked["length"] = _size(bodies[0].path.length, is_metric, 0 if is_metric else 1)
    mine = {k: v for k, v in worked.items() if not line.has(k)}
    line = line.replace(spans={**line.spans, **mine}, worked_out=("gap",))
    return line, Found((), (), (place_caution(*bodies, found, is_metric),))


def route_along(
    line: Tube, hot: Tube, service: str | None = None, *, data: Refdata | None = None, **given: str | None
) -> Sheet:
    """As ``route`` for a line and a hot pipe that are paths in the vehicle's axes: judged at the nearest place of the
    two.

    The temperature falls with the gap, so the nearest place is the worst along the path. Movements and collars of the
    tubes count. Diameters come from the tubes unless given; a ``gap`` given as well is refused.
    """
    if given.get("gap") is not None:
        raise InputError(str(given["gap"]), "gap", "the paths give it", (), "leave one of the two out")
    found = tube_gap(line, hot)
    asked = line_of_text({"service": service, **given})
    worked = {"gap": _near(found, True), "od": _size(2 * line.radius, True), "hot_od": _size(2 * hot.radius, True)}
    asked = asked.replace(spans={**worked, **asked.spans})
    return route_of(asked, data=data, first=Found((), (), (place_caution(line, hot, found, True),)))


def tube_gap(line: Tube, hot: Tube) -> Gap:
    """The least gap of a line and a hot pipe, movement and collars counted."""
    from gaugeblock.calc.clearance import tube_gaps

    return tube_gaps([line, hot])[0]


def _near(found: Gap, is_metric: bool) -> Span:
    """The least gap as a job would give it, cut to 0.01 mm or 0.001 in on the near side, the hotter one; touching is
    0.
    """
    low = max(found.low, 0.0)
    if is_metric:
        return _length(f"{math.floor(1e5 * low) / 100:.2f}", "mm")
    return _length(f"{math.floor(1e3 * low / 0.0254) / 1000:.3f}", "in")


def _size(metres: float, is_metric: bool, places: int | None = None) -> Span:
    number, unit = (1000 * metres, "mm") if is_metric else (metres / 0.0254, "in")
    return _length(f"{number:.9g}" if places is None else f"{number:.{places}f}", unit)


def _length(number: str, unit: str) -> Span:
    """A length that was worked out, as the number that is printed of it."""
    return of(Measure(Fraction(number), unit, f"{number} {unit}"))


def place_caution(line: Tube, hot: Tube, found: Gap, is_metric: bool) -> Caution:
    """Where the two come nearest, in the vehicle's axes."""
    where = place_words(found.at, tape("mm" if is_metric else "1/16 in"))
    text = f"The nearest place of {line.name} to {hot.name} is at {where} from the datum ({found.what})."
    return Caution(text, "note", (), "calculated")


def bodies_of(part: job.Line, data: Refdata) -> tuple[Tube, Tube] | None:
    """A job line and its hot pipe as bodies in the vehicle's axes; None unless both have their path and diameter."""
    if not part.points:
        return None
    placed = {p.kind: p.body for p in placed_line(part, data)}
    return (placed[LINE], placed[HOT]) if LINE in placed and HOT in placed else None  # type: ignore[return-value]
