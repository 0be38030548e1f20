"""A route from a job's line, where a word that cannot be read is an open question; and along a path, at its nearest place."""

from __future__ import annotations

import math

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss
from gaugeblock.lines.estimate import SHIELDS
from gaugeblock.lines.route import SIDES, route
from gaugeblock.tables.load import Refdata, nearest, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.calc.clearance import Gap, Tube
    from gaugeblock.figure import Figure

# The keys of a job's line that ``route`` takes, by the model's own names.
ROUTE_KEYS = (
    "service", "material", "hose_class", "state", "od", "wall", "length", "pressure", "factor", "fluid", "fluid_state", "beside", "gap",
    "temperature", "temperature_by", "side", "shield", "shield_finish", "hot_od", "hot_temperature", "hot_finish", "finish", "air",
    "soak_air", "speed", "sleeve", "sleeve_finish", "sleeve_conductivity", "flow_temperature", "flow_conductivity",
    "jurisdiction", "flare", "seat", "nut", "port", "anchors", "exhaust_material", "hose_length", "droop", "lock",
)  # fmt: skip
_FINISHES = ("hot_finish", "finish", "shield_finish", "sleeve_finish")


def route_of(line: Any, *, draw: bool = False, data: Refdata | None = None, is_metric: bool | None = None) -> Sheet:
    """The sheet of one line of a job, with its drawings when ``draw``; in the unit of its points unless ``is_metric`` says.

    Keys that the job's model does not have are missing ones. What is given and cannot be read (a material that is not in
    the tables, a side that is neither of the two) answers ``cannot tell`` and names the nearest; it never stops the sheet.
    """
    data = data or refdata()
    names = [n for n in ROUTE_KEYS if getattr(line, n, None) is not None]
    given = {("klass" if n == "hose_class" else n): str(getattr(line, n)) for n in names}
    asked = {
        n.removeprefix("hose_") if n == "hose_class" else n: given["klass" if n == "hose_class" else n] for n in names
    }
    unread = [*_words(given, data), *_choices(given)]
    nearest_place = None
    bodies = paths_of(line)
    if bodies is not None and "gap" not in given:
        found = tube_gap(*bodies)
        if is_metric is None:
            is_metric = units.parse_measure(line.points[0][0], "length").unit not in ("in", "ft")
        nearest_place = place_caution(*bodies, found, is_metric)
        given["gap"] = _near(found, is_metric)
        given.setdefault("hot_od", _size(2 * bodies[1].radius, is_metric))
        given.setdefault("length", _size(bodies[0].path.length, is_metric, 0 if is_metric else 1))
    while True:
        try:
            sheet = route(**given, draw=draw, data=data)
            break
        except (LookupMiss, InputError) as refusal:
            key = _key_of(refusal, given)
            if key is None:
                raise
            unread.append(_open(key, given.pop(key), refusal))
    sheet.checks = [c for c in sheet.checks if not any(c.reason.startswith(f"the {u.name} ") for u in unread)]
    sheet.checks += unread
    if nearest_place is not None:
        sheet.cautions.insert(0, nearest_place)
        sheet.figures = [_from_paths(f) if f.quantity == "gap" and f.locator == "gap" else f for f in sheet.figures]
    sheet.asked.update(asked)
    sheet.title = f"{line.name}: {sheet.title}"
    return sheet


def _words(given: dict[str, str], data: Refdata) -> list[Check]:
    """Materials, classes and fluids that the tables do not know: taken out of what was given."""
    from gaugeblock.lines.item import Item

    out = []
    tries = (("material", "klass", "state"), ("fluid", None, "fluid_state"))
    for item, klass, state in tries:
        typed = given.get(item) or (given.get(klass) if klass else None)
        if typed is None:
            continue
        own_class = given.get(klass) if klass is not None and item in given else None
        try:
            Item(typed, own_class, given.get(state), data)
        except Ambiguous:
            continue
        except LookupMiss as miss:
            if "no published source" in miss.why:
                continue
            key = item if item in given else str(klass)
            if miss.asked == given.get(state):
                key = state
            elif klass is not None and miss.asked == given.get(klass):
                key = klass
            out.append(_open(key, given.pop(key), miss))
            out += _words(given, data)
            break
    return out


def _choices(given: dict[str, str]) -> list[Check]:
    out = []
    for key, choices in (("side", SIDES), ("shield", SHIELDS)):
        typed = given.get(key)
        if typed is not None and typed not in choices:
            near = nearest(typed, list(choices)) or choices
            out.append(Check(key, CANNOT_TELL, f"{typed!r} is not one of: {', '.join(near)}"))
            del given[key]
    return out


def _key_of(refusal: GaugeblockError, given: dict[str, str]) -> str | None:
    """Which of the given keys a refusal is about, by what was asked."""
    by_place = refusal.where.replace(" ", "_")
    if by_place in given:
        return by_place
    whole = next((k for k in (*_FINISHES, *given) if given.get(k) == refusal.asked), None)
    return whole or next((k for k in _FINISHES if refusal.asked and refusal.asked in given.get(k, "")), None)


def _open(key: str, typed: str, refusal: GaugeblockError) -> Check:
    near = f"; nearest: {', '.join(refusal.nearest)}" if refusal.nearest else ""
    return Check(key.replace("klass", "class").replace("_", " "), CANNOT_TELL, f"{typed}: {refusal.why}{near}")


def route_along(
    line: Tube, hot: Tube, service: str | None = None, *, data: Refdata | None = None, **given: str | None
) -> Sheet:
    """As ``route`` for a line and a hot pipe that are paths in the vehicle's axes: judged at the nearest place of the two.

    The temperature falls with the gap, so the nearest place is the worst along the path. Movements and collars of the
    tubes count. Diameters come from the tubes unless given; a ``gap`` given as well is refused.
    """
    if given.get("gap") is not None:
        raise InputError(str(given["gap"]), "gap", "the paths give it", (), "leave one of the two out")
    found = tube_gap(line, hot)
    sizes = {"od": f"{2000 * line.radius:.9g} mm", "hot_od": f"{2000 * hot.radius:.9g} mm"}
    keys = {**sizes, **{k: v for k, v in given.items() if v is not None}}
    sheet = route(service, gap=_near(found, True), data=data, **keys)  # type: ignore[arg-type]
    sheet.cautions.insert(0, place_caution(line, hot, found, True))
    return sheet


def tube_gap(line: Tube, hot: Tube) -> Gap:
    """The least gap of a line and a hot pipe, movement and collars counted."""
    from gaugeblock.calc.clearance import tube_gaps

    return tube_gaps([line, hot])[0]


def _from_paths(gap: Figure) -> Figure:
    """The gap as what it is: worked out from the shop's points, not read at the nearest place."""
    return gap.replace(
        locator="points of the line and of the hot pipe", note="worked out from the paths; measure it on the car"
    )


def _near(found: Gap, is_metric: bool) -> str:
    """The least gap as a job would give it, cut to 0.01 mm or 0.001 in on the near side, the hotter one; touching is 0."""
    low = max(found.low, 0.0)
    return f"{math.floor(1e5 * low) / 100:.2f} mm" if is_metric else f"{math.floor(1e3 * low / 0.0254) / 1000:.3f} in"


def _size(metres: float, is_metric: bool, places: int | None = None) -> str:
    number, unit = (1000 * metres, "mm") if is_metric else (metres / 0.0254, "in")
    return f"{number:.9g} {unit}" if places is None else f"{number:.{places}f} {unit}"


def place_caution(line: Tube, hot: Tube, found: Gap, is_metric: bool) -> Caution:
    """Where the two come nearest, in the vehicle's axes."""
    from gaugeblock.bodies import place_words
    from gaugeblock.drawing.lengths import tape

    where = place_words(found.at, tape("mm" if is_metric else "1/16 in"))
    text = f"The nearest place of {line.name} to {hot.name} is at {where} from the datum ({found.what})."
    return Caution(text, "note", (), "calculated")


def paths_of(line: Any) -> tuple[Tube, Tube] | None:
    """A job line and its hot pipe as bodies in the vehicle's axes; None unless both have their path and diameter."""
    from gaugeblock.bodies import HOT, LINE
    from gaugeblock.lines.placed import placed_line

    if not getattr(line, "points", ()):
        return None
    placed = {p.kind: p.body for p in placed_line(line.as_dict())}
    return (placed[LINE], placed[HOT]) if LINE in placed and HOT in placed else None  # type: ignore[return-value]
