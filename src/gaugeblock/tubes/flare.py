"""Flare: the wall limit, the diameter and the nut's thread of a flare, and whether wall and port fit."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.decision import USE, Candidate, ask, none, stop, use
from gaugeblock.answer.making import stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.rules import rules_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.answer.decision import Decision
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

WALL = "wall against the flare's limit"
_FIRST = ("wall_maximum", "flare_diameter", "seat_angle")
# What a flare is asked for, the first that the tables have: its seat angle is in its name.
_FACTS = ("wall_maximum", "flare_diameter", "nut_thread_major_diameter", "port_thread_major_diameter")
_THREADS = ("nut_thread_major_diameter", "port_thread_major_diameter")
FACTS = ("wall", "thread", "angle")
_THREAD = re.compile(
    r"(?:M\s*(?P<d>[0-9.]+)\s*x\s*(?P<p>[0-9.]+)|(?P<size>[0-9 /.]+?)\s*-\s*(?P<tpi>[0-9]+).*)", re.IGNORECASE
)


def flare(
    flare: str,
    *,
    od: str | None = None,
    wall: str | None = None,
    standard: str | None = None,
    port: str | None = None,
    fact: str = "wall",
    data: Refdata | None = None,
) -> Sheet:
    """What a flare asks of the tube: wall limit, diameter, and the nut's thread; whether wall and port thread fit.

    ``flare`` ``double``, ``AN``, ``bubble``, ``ORB``; ``od`` of the tube; ``wall`` to check; ``standard`` of the nut;
    ``port`` its thread (``3/8-24``, ``M10x1``); ``fact`` what is asked of it: ``wall`` (its limit), ``thread`` (of the
    nut) or ``angle`` (of the seat, whatever the tube). A limit printed in rounded millimetres is held to half its last
    digit.
    Raises LookupMiss with the nearest keys, Ambiguous where nuts of several threads fit and the ``thread`` is asked.

    >>> flare("double", od="3/16 in", wall=".028 in").checks[0].result
    'ok'
    """
    data = data or refdata()
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a flare is called so", FACTS, "ask for one of these")
    cell = canonical(data, "tubes/flares", "flare", flare)
    if fact == "angle":
        return _angled(cell, flare, data)
    if od is None:
        raise Ambiguous(flare, "od", "the outside diameter of the tube was not given", (), "say it: 3/16 in")
    size = keys.outside_diameter(od, data)
    nut = None if standard is None else canonical(data, "tubes/flares", "standard", standard)
    figures = _figures(cell, size, nut, standard or "", data)
    checks = []
    if wall is not None or not any(f.quantity.startswith("port_") for f in figures):
        checks.append(_wall_check(figures, wall, cell, od, data))
    if port is not None:
        checks.append(_port_check(figures, port))
    asked = {"flare": flare, "od": od, "wall": wall, "standard": standard, "port": port, "fact": fact}
    title = f"{cell} flare on {od} tube{_threads_said(figures)}"
    facts = (f for q in _FACTS for f in figures if f.quantity == q)
    decision = _decision(next(facts, figures[0] if figures else None), checks)
    if fact == "thread" and decision.kind == USE:
        decision = _threaded(figures, od)
    return Sheet(title, asked, data, figures, checks, _cautions(cell, size, figures, data), decision=decision)


def _angled(cell: str, flare: str, data: Refdata) -> Sheet:
    """The angle of the seat of a flare: it is its form, and hangs on no tube."""
    rows = [r for r in data.table("tubes/flares").by_quantity.get("seat_angle", ()) if r["flare"] == cell]
    figure = next((lookup.figure_of(r, data) for r in rows if not r.standing), None)
    cautions = rules_of(data, "37 and 45 degree", *(["bubble and double flare"] if "bubble" in cell else []))
    do = "It is a form of its own, neither of 37 nor of 45 degrees, and no table has its angle: use a tool made for it."
    decision = none("SEAT ANGLE", do) if figure is None else use("SEAT ANGLE", figure)
    figures = [] if figure is None else [figure]
    return Sheet(f"{cell} flare", {"flare": flare, "fact": "angle"}, data, figures, [], cautions, decision=decision)


def _figures(cell: str, size: Measure, nut: str | None, standard: str, data: Refdata) -> list[Figure]:
    """The figures of a flare of one size: wall limit, diameter and seat first, threads last. LookupMiss without any."""
    size_m = keys.metres(size)
    rows = [r for r in data.table("tubes/flares").rows if r["flare"] == cell and not r["standing"]]
    fit = [r for r in rows if (i := parse_interval(r["od"])) is None or i.holds(size_m)]
    if all(r["od"] == "any" for r in fit):
        sizes = list(dict.fromkeys(r["od"] for r in rows if r["od"] != "any"))
        sizes.sort(key=lambda s: abs((_low(s)) - size_m))
        raise LookupMiss(
            size.text, f"tubes/flares {cell}", "no published size of this flare", sizes, "use one of these"
        )
    if nut is not None and all(r["standard"] != nut for r in fit):
        near = list(dict.fromkeys(r["standard"] for r in fit))
        why = "no row of this standard for this flare and size"
        raise LookupMiss(standard, f"tubes/flares {cell}", why, near, "use one of these")
    threaded = [r for r in fit if "thread" in r["quantity"]]
    picked = [r for q in _FIRST for r in fit if r["quantity"] == q]
    picked += [r for r in fit if r not in picked and r not in threaded]
    picked += [r for r in threaded if nut is None or r["standard"] == nut]
    found = (
        lookup.look_up(
            "tubes/flares",
            r["quantity"],
            data=data,
            od=size.text if r["od"] != "any" else "any",
            **{c: r.cells[c] for c in ("standard", "flare", "tube_material")},
        )
        for r in picked
    )
    return list({f.id: f for f in found}.values())


def _cautions(cell: str, size: Measure, figures: list[Figure], data: Refdata) -> list[Caution]:
    subjects = ["37 and 45 degree", "brake nut in the wrong port", "seamed tube"]
    if "double" in cell and keys.metres(size) == units.parse_number("3/16") * units.factor("in"):
        subjects.append("double flare wall")
    if "single" in cell:
        subjects.append("single flare on brake line")
    if cell in ("bubble (ISO)", "45 deg double"):
        subjects.append("bubble and double flare")
    cautions = rules_of(data, *subjects)
    kinds = {f.key["standard"] for f in figures if "thread" in f.quantity}
    if len({_thread_text(figures, k) for k in kinds}) > 1:
        told = "; ".join(f"{_thread_text(figures, k)} {k}" for k in sorted(kinds))
        text = (
            f"More than one nut fits this flare, each with its own thread: {told}. Name the standard, or measure both"
            " threads."
        )
        cautions.append(Caution(text, "injury", (), "refdata"))
    return cautions


def _threaded(figures: list[Figure], od: str) -> Decision:
    """The thread of the nut: Ambiguous where the standards have several."""
    kinds = list(dict.fromkeys(f.key["standard"] for f in figures if f.quantity in _THREADS))
    texts = {kind: _thread_text(figures, kind) for kind in kinds}
    if len(set(texts.values())) > 1:
        raise Ambiguous(od, "standard", "nuts of several threads fit this flare", kinds, "name the standard of the nut")
    major = next((f for f in figures if f.quantity in _THREADS), None)
    if major is None:
        return none("NUT THREAD", "No thread of its nut is on record: measure it, or ask the maker of the fitting.")
    return use(f"{'PORT' if major.quantity.startswith('port') else 'NUT'} THREAD {texts[kinds[0]]}", major)


def _decision(fact: Figure | None, checks: list[Check]) -> Decision:
    """The wall limit is the fact; a wall that is too thick, or a port of another thread, stops."""
    verb = "KEEP UNDER" if fact is not None and fact.side == "max" else ""
    if fact is None:
        return none(verb, "Flare a test piece, and ask the maker of the fitting.")
    failed = [c for c in checks if c.stops]
    if failed:
        do = "Fit a nut and a port of the same thread."
        if failed[0].name == WALL:
            do = f"Use a tube with a wall of {fact.text} {fact.unit} or less."
        return stop(verb, [Candidate(fact, "required")], [c.name for c in failed], do)
    open_ = [c for c in checks if c.asks]
    if any(c.name == WALL and c.result == NOT_OK for c in open_):
        limit = f"{fact.text} {fact.unit}"
        candidate = Candidate(fact, f"the wall is {limit} or less", "it can be flared to the standard")
        do = (
            f"The wall is over {limit}, the most that is known, from memory: take a thinner one, or ask the tool's"
            " maker."
        )
        return ask(verb, [candidate], [c.name for c in open_], do)
    if open_:
        candidate = Candidate(fact, "nut and port are of one thread", "the flare holds")
        return ask(verb, [candidate], [c.name for c in open_], "Measure the thread of the nut and of the port.")
    unknown = [c for c in checks if c.name == WALL and c.result == CANNOT_TELL and c.required is None]
    do = "No limit of its wall was found: flare a test piece of this tube." if unknown else ""
    return use(verb, fact, do, [c.name for c in checks if c.result == OK])


def _low(cell: str) -> Fraction:
    interval = parse_interval(cell)
    return interval.low if interval is not None and interval.low is not None else units.parse_number("0")


def half_last_digit(figure: Figure) -> float:
    """Half a unit in the last printed digit of a figure, in its unit."""
    return 0.5 / float(10 ** len(figure.text.partition(".")[2]))


def _wall_check(figures: list[Figure], wall: str | None, cell: str, od: str, data: Refdata) -> Check:
    name = WALL
    measure = None if wall is None else keys.length(wall, "wall")
    limit = next((f for f in figures if f.quantity == "wall_maximum"), None)
    if limit is None:
        return Check(
            name,
            CANNOT_TELL,
            f"no published source for the wall of this flare ({cell}) on {od} tube: flare a test piece",
            bears=INFORM,
        )
    needed = Bound(limit.typical, limit.unit, "max", limit)
    if measure is None:
        text = f"the wall is not given; {limit.text} {limit.unit} at most ({limit.source})"
        return Check(name, CANNOT_TELL, text, needed, bears=INFORM)
    got = measure.to(limit.unit)
    slack = half_last_digit(limit)
    actual = Bound(got, limit.unit, figure=stated(measure, "tube_wall", "wall", data))
    margin = (limit.typical - got) / limit.typical
    text = f"{measure.text} is {got:.4g} {limit.unit}, {limit.text} {limit.unit} at most ({limit.source})"
    if got <= limit.typical:
        return Check(name, OK, text, needed, actual, margin)
    if got <= limit.typical + slack:
        return Check(
            name, OK, f"{text}: exactly at the limit, which is printed in rounded {limit.unit}", needed, actual, margin
        )
    return Check(name, NOT_OK, f"{text}: too thick to flare to the standard", needed, actual, margin)


def _thread_text(figures: list[Figure], standard: str) -> str:
    parts = {f.quantity: f for f in figures if f.key["standard"] == standard and "thread" in f.quantity}
    by = {q.split("_thread", 1)[1]: f for q, f in parts.items()}
    major, pitch = by.get("_major_diameter"), by.get("s_per_inch") or by.get("_pitch")
    if major is None:
        return "thread"
    if major.unit == "mm":
        return f"M{major.typical:g}" + (f"x{pitch.typical:g}" if pitch is not None else "")
    size = units.fraction_text(units.parse_number(major.text))
    return size + (f"-{pitch.typical:g}" if pitch is not None else "")


def _threads_said(figures: list[Figure]) -> str:
    """The thread of the nut or of the port, for the title: what people ask a flare for."""
    said = []
    for what in ("nut", "port"):
        own = [f for f in figures if "thread" in f.quantity and f.quantity.startswith("port_") == (what == "port")]
        threads = dict.fromkeys(_thread_text(own, f.key["standard"]) for f in own)
        if threads:
            said.append(f"{what} {' or '.join(threads)}")
    return f": {', '.join(said)}" if said else ""


def _port_check(figures: list[Figure], port: str) -> Check:
    """Whether the port's thread is the nut's; ``cannot tell`` while more than one nut is possible."""
    name = "nut thread and port thread"
    match = _THREAD.fullmatch(port.strip())
    if match is None:
        raise InputError(port, "port", "not a thread", (), "write it as 3/8-24 or M10x1")
    if match["d"]:
        asked = f"M{float(units.parse_number(match['d'])):g}x{float(units.parse_number(match['p'])):g}"
    else:
        asked = f"{units.fraction_text(units.parse_number(match['size'].strip()))}-{match['tpi']}"
    known = {
        s: _thread_text(figures, s) for s in dict.fromkeys(f.key["standard"] for f in figures if "thread" in f.quantity)
    }
    if not known:
        return Check(name, CANNOT_TELL, "no published source for the nut of this flare and size: measure both threads")
    told = "; ".join(f"{t} {s}" for s, t in known.items())
    same = [s for s, t in known.items() if t == asked]
    if len(same) == len(known):
        return Check(name, OK, f"port {asked}, nut {told}")
    if same:
        return Check(
            name, CANNOT_TELL, f"port {asked} fits the nut of {', '.join(same)} only ({told}): measure the nut"
        )
    return Check(name, NOT_OK, f"port {asked}, nut {told}: another thread; it may start and strip")
