"""Everything of a job that has a path, against everything else: tubes, lines, hot pipes and what tubes must clear."""

from __future__ import annotations

from itertools import combinations

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import clearance as space
from gaugeblock.calc import path as paths
from gaugeblock.drawing.lengths import tape
from gaugeblock.errors import InputError
from gaugeblock.tubes.plan.keys import Typed, moves_of
from gaugeblock.tubes.plan.marks import Maker
from gaugeblock.tubes.plan.space import place_words

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.plan.planned import Plan

    Body = space.Tube | space.Box | space.Plane

TUBE, LINE, HOT, OBSTACLE = "tube", "line", "hot pipe", "obstacle"


class Placed:
    """A body that stands in the vehicle: what it is, whose it is, its datum, the gap asked of it, its own figures."""

    __slots__ = ("asked", "body", "datum", "kind", "leaves", "owner")

    def __init__(
        self, kind: str, owner: str, body: Body, datum: str, asked: Figure | None, leaves: tuple[Figure, ...]
    ) -> None:
        self.kind = kind
        self.owner = owner
        self.body = body
        self.datum = " ".join(datum.casefold().split())
        self.asked = asked
        self.leaves = leaves


def placed_tube(plan: Plan, keys: Mapping[str, Any]) -> list[Placed]:
    """A planned tube and its obstacles; nothing where it does not stand in the vehicle."""
    if plan.tube is None or plan.shape is None or not plan.shape.is_placed:
        return []
    typed, datum = Typed(plan.name), str(keys.get("datum") or "")
    asked = typed.figure(keys["gap"], "gap", "length", "gap_asked")[1] if keys.get("gap") else None
    leaves = (*plan.shape.leaves, *([plan.radius] if plan.radius is not None else []))
    out = [Placed(TUBE, plan.name, plan.tube, datum, asked, leaves)]
    out += [Placed(OBSTACLE, plan.name, thing.body, datum, None, thing.leaves) for thing in plan.things]
    return out


def placed_line(keys: Mapping[str, Any]) -> list[Placed]:
    """A line with a path and the hot pipe beside it. InputError when points do not fit the radius."""
    name, datum = str(keys["name"]), str(keys.get("datum") or "")
    typed = Typed(name)
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


def apart(bodies: Sequence[Placed], data: Refdata, metric: bool = False) -> Sheet | None:
    """Least gaps of all that stands in the vehicle under one datum, movement counted; None where no two are to be told.

    A tube and its own obstacles, and a line and its own hot pipe, are on their own sheets. Two hot pipes, and two
    obstacles, are not asked about.
    """
    pairs = [(a, b) for a, b in combinations(_once(bodies), 2) if _asks(a, b)]
    if not pairs:
        return None
    names = dict.fromkeys(p.body.name for pair in pairs for p in pair)
    of = {p.body.name: p.datum for pair in pairs for p in pair}
    title = "tubes and lines against each other"
    sheet = Sheet(title, {n: of[n] for n in names}, data, [], [], [])
    make = Maker("tubes and lines", tape("mm" if metric else "1/32 in"), data)
    told = [(a, b) for a, b in pairs if a.datum and a.datum == b.datum]
    if len(told) < len(pairs):
        lost = dict.fromkeys(p.body.name for a, b in pairs if (a, b) not in told for p in (a, b))
        why = f"the datums of {', '.join(lost)} are not stated in the same words: measure all from one datum"
        sheet.checks.append(Check("one datum", CANNOT_TELL, why))
    loose = []
    for (a, b), gap in zip(told, _gaps(told), strict=True):
        name = f"gap of {a.body.name} and {b.body.name}"
        at = f"at {place_words(gap.at, make.tape)} from the datum, movement counted"
        leaves = tuple(dict.fromkeys((*a.leaves, *b.leaves)))
        key = f"{a.body.name} and {b.body.name}"
        figure = make("least_gap_moved", "surface_gap", gap.gap, leaves, bend=key, conditions=f"{name}, {at}")
        asked = [f for f in (a.asked, b.asked) if f is not None]
        sheet.figures.append(figure)
        if gap.gap <= 0:
            got = Bound(figure.typical, figure.unit, figure=figure)
            sheet.checks.append(Check(name, NOT_OK, f"they touch, {at}", None, got))
        elif asked:
            sheet.checks.append(_against(name, gap, at, figure, asked, make))
        else:
            loose.append((gap.gap, f"{make.tape.reads(gap.gap)} {a.body.name} and {b.body.name}"))
    if loose:
        why = f"nobody asked for a gap of these, the nearest first: {'; '.join(t for _, t in sorted(loose))}"
        sheet.checks.append(Check("gaps not asked for", CANNOT_TELL, why))
    return sheet


def _once(bodies: Sequence[Placed]) -> list[Placed]:
    """A hot pipe that two lines name is one body."""
    seen: dict[tuple[str, str], Placed] = {}
    for n, placed in enumerate(bodies):
        key = (placed.body.name, placed.datum) if placed.kind == HOT else (str(n), "")
        seen.setdefault(key, placed)
    return list(seen.values())


def _asks(a: Placed, b: Placed) -> bool:
    """Whether the gap of two bodies is to be told here."""
    if a.owner == b.owner or not {a.kind, b.kind} & {TUBE, LINE}:
        return False
    # the same thing, named as obstacle by one and as hot pipe by another, or by the tube that it is
    return a.body.name != b.body.name


def _gaps(pairs: Sequence[tuple[Placed, Placed]]) -> list[space.Gap]:
    """The least gap of each pair; those of two round bodies all at once."""
    tubes = list({id(p.body): p.body for pair in pairs for p in pair if isinstance(p.body, space.Tube)}.values())
    at = {id(t): n for n, t in enumerate(tubes)}
    wanted = [(at[id(a.body)], at[id(b.body)]) for a, b in pairs if id(a.body) in at and id(b.body) in at]
    round_ = iter(space.tube_gaps(tubes, pairs=wanted))
    out = []
    for a, b in pairs:
        if isinstance(a.body, space.Tube) and isinstance(b.body, space.Tube):
            out.append(next(round_))
            continue
        tube, other = (a.body, b.body) if isinstance(a.body, space.Tube) else (b.body, a.body)
        if not isinstance(tube, space.Tube) or isinstance(other, space.Tube):
            raise ValueError("one of two bodies is a tube, the other is not")
        out.append(space.obstacle_gaps([tube], [other])[0])
    return out


def _against(name: str, gap: space.Gap, at: str, figure: Figure, asked: list[Figure], make: Maker) -> Check:
    got = Bound(figure.typical, figure.unit, figure=figure)
    most = max(asked, key=lambda f: units.to_base(f.typical, f.unit))
    need = units.to_base(most.typical, most.unit)
    text = f"{make.tape.reads(gap.gap)}, {at}; {make.tape.reads(need)} asked"
    bound = Bound(units.from_base(need, make.tape.unit), make.tape.unit, "min", most)
    is_enough = gap.low >= need - 1.1 * space.TOLERANCE
    return Check(name, OK if is_enough else NOT_OK, text, bound, got, (gap.gap - need) / need if need else None)
