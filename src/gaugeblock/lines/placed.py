"""A line with a path, and the hot pipe beside it, as bodies in the vehicle."""

from __future__ import annotations

from gaugeblock.bodies import HOT, LINE, Placed, Typed, moves_of
from gaugeblock.calc import clearance as space
from gaugeblock.calc import path as paths
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.job.model import Move
    from gaugeblock.lines.job import HotPipe, Line
    from gaugeblock.tables.load import Refdata


def placed_line(part: Line, data: Refdata) -> list[Placed]:
    """A line with a path and the hot pipe beside it. InputError when points do not fit the radius."""
    typed = Typed(part.name, data)
    asked = None
    if part.gap_asked is not None:
        asked = typed.figure(part.gap_asked, "gap asked", "length", "gap_asked")[1]
    out = []
    for kind, piece in ((LINE, part), (HOT, part.hot)):
        if piece is None or not piece.points or piece.od is None:
            continue
        first = len(typed.figures)
        body = _body(piece, typed, 0.0 if kind == HOT else _sleeve(part, typed))
        leaves = tuple(typed.figures[first:])
        out.append(Placed(kind, part.name, body, part.datum or "", asked if kind == LINE else None, leaves))
    return out


def _body(piece: Line | HotPipe, typed: Typed, sleeve_m: float) -> space.Tube:
    who = piece.name
    points = [typed.point(p, f"{who} point {n}") for n, p in enumerate(piece.points, 1)]
    radius = typed.number(piece.od, f"{who} od", "length", "outside_diameter") / 2 + sleeve_m  # type: ignore[arg-type]
    bend = 0.0
    if piece.radius is not None:
        bend = typed.number(piece.radius, f"{who} radius", "length", "centre_line_radius")
    moves = moves_of([_row(m) for m in piece.moves], typed, f"{who} moves")
    try:
        stick, pose = paths.from_points(points, bend)
    except ValueError as error:
        raise InputError(who, "points", str(error), (), "correct the points or the radius") from None
    return space.Tube(who, paths.path(stick, pose), radius, moves=moves)


def _row(move: Move) -> dict[str, Any]:
    return {name: getattr(move, name) for name in move.keys}


def _sleeve(part: Line, typed: Typed) -> float:
    """Thickness of a line's sleeve in m, the higher end of a range."""
    got = part.sleeve
    return 0.0 if got is None else typed.number(got.high, "sleeve", "length", "sleeve_thickness")
