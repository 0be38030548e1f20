"""A line with a path, and the hot pipe beside it, as bodies in the vehicle."""

from __future__ import annotations

from gaugeblock.bodies import HOT, LINE, Placed, Typed, moves_of
from gaugeblock.calc import clearance as space
from gaugeblock.calc import path as paths
from gaugeblock.errors import InputError
from gaugeblock.tables.load import refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.tables.load import Refdata


def placed_line(keys: Mapping[str, Any], data: Refdata | None = None) -> list[Placed]:
    """A line with a path and the hot pipe beside it. InputError when points do not fit the radius."""
    name, datum = str(keys["name"]), str(keys.get("datum") or "")
    typed = Typed(name, data or refdata())
    asked = typed.figure(keys["gap_asked"], "gap asked", "length", "gap_asked")[1] if keys.get("gap_asked") else None
    out = []
    for kind, table in ((LINE, keys), (HOT, keys.get("hot") or {})):
        if not table.get("points") or not table.get("od"):
            continue
        first, who = len(typed.figures), str(table["name"])
        points = [typed.point(p, f"{who} point {n}") for n, p in enumerate(table["points"], 1)]
        radius = typed.number(table["od"], f"{who} od", "length", "outside_diameter") / 2
        radius += _sleeve(table, typed) if kind == LINE else 0.0
        bend = (
            typed.number(table["radius"], f"{who} radius", "length", "centre_line_radius")
            if table.get("radius")
            else 0.0
        )
        moves = moves_of(table.get("moves"), typed, f"{who} moves")
        try:
            stick, pose = paths.from_points(points, bend)
        except ValueError as error:
            raise InputError(who, "points", str(error), (), "correct the points or the radius") from None
        body = space.Tube(who, paths.path(stick, pose), radius, moves=moves)
        out.append(Placed(kind, name, body, datum, asked if kind == LINE else None, tuple(typed.figures[first:])))
    return out


def _sleeve(table: Mapping[str, Any], typed: Typed) -> float:
    """Thickness of a line's sleeve in m, the higher end of a range."""
    text = table.get("sleeve")
    return typed.number(text.rpartition(" to ")[2], "sleeve", "length", "sleeve_thickness") if text else 0.0
