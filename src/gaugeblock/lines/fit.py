"""How a line joins and what it carries: flare on seat, nut in port, wall under the flare, fluid against rubber, hose
slack.
"""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check, at_least, at_most
from gaugeblock.answer.making import base
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.lines.cautions import is_brake_fluid
from gaugeblock.lines.found import Found, asking
from gaugeblock.lines.parts import is_metal
from gaugeblock.warmth.item import item_cell

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.item import Item

_THREAD = re.compile(
    r"(?:(?P<d>[0-9]+(?:[ -][0-9]+)?/[0-9]+|[0-9]*\.[0-9]+)\s*(?:in)?\s*-\s*(?P<n>[0-9]+)"
    r"|M\s*(?P<m>[0-9.]+)\s*[xX]\s*(?P<p>[0-9.]+)).*"
)
# What the brake fluid standard names as the rubbers that glycol fluid is made for.
_BRAKE_RUBBERS = ("styrene-butadiene rubber (SBR)", "EPDM rubber", "chloroprene rubber (CR)", "natural rubber (NR)")


class Thread:
    """A nut's or port's thread: major diameter and pitch in m, as typed."""

    __slots__ = ("major_m", "pitch_m", "text")

    def __init__(self, text: str, name: str) -> None:
        match = _THREAD.fullmatch(" ".join(text.split()))
        if match is None:
            raise InputError(
                text,
                name,
                "not a thread",
                ("3/8-24", "7/16-24", "M10x1.0", "M12x1.0"),
                "write diameter and threads: 3/8-24 or M10x1.0",
            )
        if match["m"] is not None:
            self.major_m = float(units.parse_number(match["m"], name)) / 1000
            self.pitch_m = float(units.parse_number(match["p"], name)) / 1000
        else:
            self.major_m = float(units.parse_number(match["d"], name)) * 0.0254
            self.pitch_m = 0.0254 / int(match["n"])
        self.text = text

    def same(self, other: Thread) -> bool:
        """Whether diameter and pitch are equal."""
        return abs(self.major_m - other.major_m) < 1e-6 and abs(self.pitch_m - other.pitch_m) < 1e-7

    def starts_in(self, port: Thread) -> bool:
        """Whether this nut enters a port it does not fit: no larger than it (0.1 mm play), and larger than its bore."""
        return port.major_m - 1.0825 * port.pitch_m < self.major_m <= port.major_m + 1e-4


def fit(words: Words) -> Found:
    """Flare against seat, nut against port, and wall against the flare; only what was begun is judged."""
    line, data = words.line, words.data
    flare, seat = (words.read(key, lambda typed: _angle(typed, data)) for key in ("flare", "seat"))
    nut = words.read("nut", lambda typed: Thread(typed, "nut"))
    port = words.read("port", lambda typed: Thread(typed, "port"))
    found = _pair(words, SEAT, ("flare", "seat"), _seat(words, flare, seat))
    found += _pair(words, THREADS, ("nut", "port"), _threads(nut, port))
    od, wall = line.figure("od", data), line.figure("wall", data)
    if flare is not None and od is not None and wall is not None:
        found += Found((), (_flare_wall(line.words["flare"], od, wall, data),))
    return found


SEAT, THREADS, FLARE_WALL, HOSE, FLUID_IN = (
    "flare against seat",
    "nut thread against port thread",
    "wall against flare",
    "hose slack at droop and full lock",
    "fluid against line material",
)


def _pair(words: Words, name: str, keys: tuple[str, str], check: Check | None) -> Found:
    """The check of two that must fit; where only one is given, the other is asked."""
    if check is not None:
        return Found((), (check,))
    missing = [key for key in keys if not words.line.has(key)]
    if len(missing) != 1:
        return Found()
    what = _CALLED.get(missing[0], missing[0])
    open_check = Check(name, CANNOT_TELL, f"the {what} is not given", bears=ASK)
    return asking(open_check, FILL_IN, f"Name the {what} of the line's end.", missing[0])


_CALLED = {"nut": "nut thread", "port": "port thread"}


def _threads(nut: Thread | None, port: Thread | None) -> Check | None:
    if nut is None or port is None:
        return None
    if nut.same(port):
        return Check(THREADS, OK, f"{nut.text} in {port.text}")
    why = f"{nut.text} does not enter {port.text}"
    if nut.starts_in(port):
        why = f"{nut.text} starts in {port.text} and then strips: diameter or pitch differ; never force it"
    return Check(THREADS, NOT_OK, why)


def _angle(text: str, data: Refdata) -> str:
    """The seat a flare or seat word means: ``37 deg``, ``45 deg`` or ``bubble``; LookupMiss with the flares there
    are.
    """
    folded = " ".join(text.casefold().split())
    for kind in ("37 deg", "45 deg", "bubble"):
        if folded == kind or folded.startswith(f"{kind} "):
            return kind
    found = data.words("tubes", "flare").get(folded)
    if found is not None and found != text:
        return _angle(found, data)
    flares = [c for c in data.table("tubes/flares").column("flare").values() if c.startswith(("37", "45", "bubble"))]
    raise LookupMiss(text, "flare", "not a flare or seat", flares, "write 37 deg, 45 deg or bubble")


def _seat(words: Words, flare: str | None, seat: str | None) -> Check | None:
    if flare is None or seat is None:
        return None
    said = words.line.words["flare"], words.line.words["seat"]
    if flare == seat:
        return Check(SEAT, OK, f"{said[0]} on {said[1]}")
    why = f"{said[0]} on a {said[1]} seat does not seal: 37 and 45 degree flares and bubbles never mix"
    return Check(SEAT, NOT_OK, why)


def _flare_wall(flare: str, od: Figure, wall: Figure, data: Refdata) -> Check:
    name = FLARE_WALL
    cell = data.table("tubes/flares").column("flare").get(" ".join(flare.split()).casefold()) or data.words(
        "tubes", "flare"
    ).get(flare.casefold())
    limit = None
    if cell is not None:
        size = f"{units.decimal_text(units.parse_number(od.text), 6)} {od.unit}"
        limit = lookup.look_up_or_none(
            "tubes/flares", "wall_maximum", data=data, standard="SAE J533", flare=cell, tube_material="any", od=size
        )
    if limit is None:
        why = f"no published wall limit for a {flare} flare on {od.text} {od.unit}"
        return Check(name, CANNOT_TELL, why, bears=INFORM)
    end = units.from_base(units.to_base(limit.typical, limit.unit), wall.unit)
    # The limit is a conversion printed to so many digits: half its last digit is what it leaves open.
    open_digit = units.from_base(units.to_base(0.5 * 10.0 ** -len(limit.text.partition(".")[2]), limit.unit), wall.unit)
    said = f"{wall.text} {wall.unit} wall; limit {number_only(limit, data)}"
    bounds = Bound(wall.typical, wall.unit, figure=wall), Bound(end, wall.unit, "max", limit)
    check = at_most(name, *bounds, said)
    if check.result == NOT_OK and wall.typical <= end + open_digit:
        return check.replace(result=OK, reason=f"{said}: at the limit; no thicker wall")
    return check


def compatible(words: Words, fluid: Item | None, material: Item | None) -> Found:
    """Fluid against a rubber or plastic line, where a published text names the pair; metal tubes are not judged.

    What the line is marked for, or its maker's sheet names, settles it.
    """
    if fluid is None or material is None or is_metal(material.cell):
        return Found()
    marked = words.read("marked_for", lambda typed: item_cell(typed, words.data)[1])
    if marked is not None:
        if marked == fluid.cell:
            return Found((), (Check(FLUID_IN, OK, f"{material.cell} is marked for {fluid.cell}"),))
        why = f"{material.cell} is marked for {marked}, and {fluid.cell} runs in it"
        return Found((), (Check(FLUID_IN, NOT_OK, why),))
    check = _pair_named(fluid.cell, material.cell)
    if check is None:
        return Found()
    text = f"Read on the {material.cell} or ask its maker: is it made for {fluid.cell}?"
    return asking(check, ASK_MAKER, text, "marked_for")


def _pair_named(fluid: str, material: str) -> Check | None:
    """Whether a published text names the pair; None where the line is by its own name made for the fluid."""
    if is_brake_fluid(fluid):
        if material in _BRAKE_RUBBERS:
            why = f"the brake fluid standard names {material} among the rubbers its fluids are made for"
            return Check(FLUID_IN, OK, why)
        if material == "hydraulic brake hose":
            return None
        why = f"the brake fluid standard does not name {material}: ask the maker of hose or seal"
    elif fluid in _BLENDS:
        why = f"no published figure for {fluid} in {material}: the hose or tube must be marked for that blend"
    elif fluid in _PLAIN_FUELS and "fuel" in material:
        return None
    else:
        why = f"no published source pairs {fluid} with {material}: read the marking on the hose or tube"
        return Check(FLUID_IN, CANNOT_TELL, why, bears=INFORM)
    return Check(FLUID_IN, CANNOT_TELL, why)


_BLENDS = ("E10", "E85", "ethanol", "methanol")
_PLAIN_FUELS = ("gasoline", "straight run gasoline", "diesel")


def hose(line: Line, data: Refdata) -> Found:
    """A flexible hose between its ends at full droop and at full lock, what it shortens under pressure left over.

    ``hose_length`` is between the fittings, ``droop`` and ``lock`` the way from fitting to fitting at each; nothing is
    judged when none is given.
    """
    parts = {"hose_length": "free length of the hose", "droop": "way at full droop", "lock": "way at full lock"}
    long, droop, lock = (line.figure(key, data) for key in parts)
    if long is None and droop is None and lock is None:
        return Found()
    if long is None or droop is None or lock is None:
        lacking = [key for key in parts if not line.has(key)]
        what = ", ".join(parts[key] for key in lacking)
        check = Check(HOSE, CANNOT_TELL, f"not given: {what}")
        return asking(check, MEASURE, f"Measure the hose: {what}.", lacking[0])
    far = max((units.from_base(base(way), long.unit), way.locator) for way in (droop, lock))
    change = lookup.look_up("lines/materials", "length_change", data=data, item="flexible hose", state="under pressure")
    shortest = long.typical * (1 + units.to_base(change.low if change.low is not None else change.typical, change.unit))
    reason = (
        f"{units.significant(shortest, 4)} {long.unit} left of {long.text} {long.unit} under pressure "
        f"({number_only(change, data)}), {units.significant(far[0], 4)} {long.unit} needed at {far[1]}; "
        "no twist: the lay line stays straight from lock to lock"
    )
    bounds = Bound(shortest, long.unit, figure=change), Bound(far[0], long.unit, "min", long)
    return Found((), (at_least(HOSE, *bounds, reason),))
