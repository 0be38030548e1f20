"""How a line joins and what it carries: flare on seat, nut in port, wall under the flare, fluid against rubber, hose slack."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, OK, Bound, Check, at_least, at_most
from gaugeblock.answer.making import base
from gaugeblock.answer.printing import number_only
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.lines.cautions import is_brake_fluid
from gaugeblock.lines.found import Found
from gaugeblock.lines.parts import is_metal

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata

_THREAD = re.compile(
    r"(?:(?P<d>[0-9]+(?:[ -][0-9]+)?/[0-9]+|[0-9]*\.[0-9]+)\s*(?:in)?\s*-\s*(?P<n>[0-9]+)|M\s*(?P<m>[0-9.]+)\s*[xX]\s*(?P<p>[0-9.]+)).*"
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
    checks = []
    flare, seat = (words.read(key, lambda typed: _angle(typed, data)) for key in ("flare", "seat"))
    if line.has("flare") or line.has("seat"):
        checks += _seat(words, flare, seat)
    nut, port = (words.read(key, lambda typed, key=key: Thread(typed, key)) for key in ("nut", "port"))  # type: ignore[misc]
    if line.has("nut") or line.has("port"):
        checks += _threads(words, nut, port)
    od, wall = line.figure("od", data), line.figure("wall", data)
    if flare is not None and od is not None and wall is not None:
        checks.append(_flare_wall(line.words["flare"], od, wall, data))
    return Found((), checks)


def _threads(words: Words, nut: Thread | None, port: Thread | None) -> list[Check]:
    name = "nut thread against port thread"
    if nut is None or port is None:
        return [_not_given(name, key) for key in ("nut thread", "port thread") if not words.line.has(key[:-7])][:1]
    if nut.same(port):
        return [Check(name, OK, f"{nut.text} in {port.text}")]
    why = f"{nut.text} does not enter {port.text}"
    if nut.starts_in(port):
        why = f"{nut.text} starts in {port.text} and then strips: diameter or pitch differ; never force it"
    return [Check(name, NOT_OK, why)]


def _not_given(name: str, what: str) -> Check:
    return Check(name, CANNOT_TELL, f"the {what} is not given", bears=ASK)


def _angle(text: str, data: Refdata) -> str:
    """The seat a flare or seat word means: ``37 deg``, ``45 deg`` or ``bubble``; LookupMiss with the flares there are."""
    folded = " ".join(text.casefold().split())
    for kind in ("37 deg", "45 deg", "bubble"):
        if folded == kind or folded.startswith(f"{kind} "):
            return kind
    found = data.words("tubes", "flare").get(folded)
    if found is not None and found != text:
        return _angle(found, data)
    flares = [c for c in data.table("tubes/flares").column("flare").values() if c.startswith(("37", "45", "bubble"))]
    raise LookupMiss(text, "flare", "not a flare or seat", flares, "write 37 deg, 45 deg or bubble")


def _seat(words: Words, flare: str | None, seat: str | None) -> list[Check]:
    name, line = "flare against seat", words.line
    if flare is None or seat is None:
        return [_not_given(name, key) for key in ("flare", "seat") if not line.has(key)][:1]
    said = line.words["flare"], line.words["seat"]
    if flare == seat:
        return [Check(name, OK, f"{said[0]} on {said[1]}")]
    why = f"{said[0]} on a {said[1]} seat does not seal: 37 and 45 degree flares and bubbles never mix"
    return [Check(name, NOT_OK, why)]


def _flare_wall(flare: str, od: Figure, wall: Figure, data: Refdata) -> Check:
    name = "wall against flare"
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
        return Check(name, CANNOT_TELL, f"no published wall limit for a {flare} flare on {od.text} {od.unit}")
    end = units.from_base(units.to_base(limit.typical, limit.unit), wall.unit)
    # The limit is a conversion printed to so many digits: half its last digit is what it leaves open.
    open_digit = units.from_base(units.to_base(0.5 * 10.0 ** -len(limit.text.partition(".")[2]), limit.unit), wall.unit)
    check = at_most(
        name,
        Bound(wall.typical, wall.unit, figure=wall),
        Bound(end, wall.unit, "max", limit),
        f"{wall.text} {wall.unit} wall, {number_only(limit, data)} at most",
    )
    if check.result == NOT_OK and wall.typical <= end + open_digit:
        check = check.replace(result=OK)
        check = check.replace(
            reason=check.reason + (" as printed (equal to its last digit): no heavier wall will flare")
        )
    return check


def compatible(fluid: str | None, material: str | None) -> list[Check]:
    """Fluid against a rubber or plastic line, where a published text names the pair; metal tubes are not judged."""
    if fluid is None or material is None or is_metal(material):
        return []
    name = "fluid against line material"
    if is_brake_fluid(fluid):
        if material in _BRAKE_RUBBERS:
            why = f"the brake fluid standard names {material} among the rubbers its fluids are made for"
            return [Check(name, OK, why)]
        if material == "hydraulic brake hose":
            return []
        why = f"the brake fluid standard does not name {material}: ask the maker of hose or seal"
    elif fluid in _BLENDS:
        why = f"no published figure for {fluid} in {material}: the hose or tube must be marked for that blend"
    else:
        why = f"no published source pairs {fluid} with {material}: read the marking on the hose or tube"
    return [Check(name, CANNOT_TELL, why)]


_BLENDS = ("E10", "E85", "ethanol", "methanol")


def hose(line: Line, data: Refdata) -> Found:
    """A flexible hose between its ends at full droop and at full lock, what it shortens under pressure left over.

    ``hose_length`` is between the fittings, ``droop`` and ``lock`` the way from fitting to fitting at each; nothing is
    judged when none is given.
    """
    name = "hose slack at droop and full lock"
    parts = {"hose_length": "free length of the hose", "droop": "way at full droop", "lock": "way at full lock"}
    long, droop, lock = (line.figure(key, data) for key in parts)
    if long is None and droop is None and lock is None:
        return Found()
    if long is None or droop is None or lock is None:
        lacking = [what for key, what in parts.items() if not line.has(key)]
        return Found((), (Check(name, CANNOT_TELL, f"not given: {', '.join(lacking)}"),))
    far = max((units.from_base(base(way), long.unit), way.locator) for way in (droop, lock))
    change = lookup.look_up("lines/materials", "length_change", data=data, item="flexible hose", state="under pressure")
    shortest = long.typical * (1 + units.to_base(change.low if change.low is not None else change.typical, change.unit))
    reason = (
        f"{units.significant(shortest, 4)} {long.unit} left of {long.text} {long.unit} under pressure ({number_only(change, data)}), "
        f"{units.significant(far[0], 4)} {long.unit} needed at {far[1]}; no twist: the lay line stays straight from lock to lock"
    )
    bounds = Bound(shortest, long.unit, figure=change), Bound(far[0], long.unit, "min", long)
    return Found((), (at_least(name, *bounds, reason),))
