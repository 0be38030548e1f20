"""Tube tables: the wall of a gauge number, the OD of a pipe size, what a metal guarantees, what a flare asks."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tubes import keys as tube_keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.tables.load import Row

_GUARANTEED = ("yield_strength", "tensile_strength", "elongation", "yield_strength_design", "tensile_strength_design")
_TYPICAL = ("yield_strength_typical", "tensile_strength_typical", "elongation_typical", "modulus", "density")


def _rules(data: Refdata, *subjects: str) -> list[Caution]:
    return [
        Caution(r["statement"], r["severity"], (), r["source"] or r["basis"])
        for r in data.statements("tubes")
        if r["subject"] in subjects and not r["standing"]
    ]


def gauge(number: str, *, system: str | None = None, data: Refdata | None = None) -> Sheet:
    """The wall that a gauge number means in one system; the other systems' walls are told beside it.

    ``number`` ``16``, ``16 ga`` or ``16 BWG``; ``system`` ``BWG``, ``sheet steel`` ...
    Raises Ambiguous with every system's wall when none is named, LookupMiss for a number no table has.

    >>> gauge("16 BWG").figures[0].text
    '0.065'
    """
    data = data or refdata()
    cell = None if system is None else canonical(data, "tubes/gauges", "system", system)
    wall = tube_keys.gauge_wall(number, cell, data)
    alike = [
        lookup.figure_of(r, data)
        for r in data.table("tubes/gauges").by_quantity["wall_thickness"]
        if r["gauge"] == wall.key["gauge"] and r["system"] != wall.key["system"] and not r["standing"]
    ]
    cautions = _rules(data, "gauge numbers")
    if alike:
        told = "; ".join(f"{f.text} {f.unit} {f.key['system']}" for f in alike)
        cautions.append(Caution(f"The same number elsewhere: {told}.", "damage", tuple(f.id for f in alike), "refdata"))
    title = f"gauge {wall.key['gauge']}, {wall.key['system']}"
    return Sheet(title, {"number": number, "system": system}, data, [wall], [], cautions)


def pipe(nps: str, *, schedule: str | None = None, data: Refdata | None = None) -> Sheet:
    """The true OD of a pipe size, its wall and bore when the schedule is named.

    Raises LookupMiss with the nearest sizes or schedules.

    >>> pipe("1 1/2", schedule="40").figures[0].text
    '1.9'
    """
    data = data or refdata()
    asked = {"nps": nps, "schedule": schedule}
    nps = tube_keys.pipe_size(nps)
    od = lookup.look_up("tubes/pipe_sizes", "outside_diameter", data=data, nps=nps)
    figures = [od]
    checks = []
    if schedule is None:
        names = lookup.choices("tubes/pipe_sizes", "schedule", data=data, nps=od.key["nps"])
        checks.append(
            Check(
                "wall of the pipe",
                CANNOT_TELL,
                f"the schedule is not given: {', '.join(n for n in names if n != 'any')}",
            )
        )
    else:
        wall = lookup.look_up("tubes/pipe_sizes", "wall_thickness", data=data, nps=nps, schedule=schedule)
        bore = calc.bore(units.to_base(od.typical, od.unit), units.to_base(wall.typical, wall.unit))
        inside = Figure(
            f"derived:tube_bore:{'|'.join(wall.key.values())}:inside_diameter@{data.release}", "inside_diameter",
            units.from_base(bore, od.unit), od.unit, basis="derived", rule=data.rule("tube_bore"), inputs=(od, wall), since=data.release,
            key=wall.key, conditions="by nominal sizes",
        )  # fmt: skip
        figures += [wall, inside]
        mass = lookup.look_up_or_none("tubes/pipe_sizes", "mass_per_length", data=data, nps=nps, schedule=schedule)
        if mass is not None:
            figures.append(mass)
    cautions = _rules(data, "pipe and tube", "pipe bender and tube")
    title = f"pipe {od.key['nps']}{f', schedule {schedule}' if schedule else ''}: not a {od.key['nps']} in tube"
    return Sheet(title, asked, data, figures, checks, cautions)


def material(
    material: str,
    *,
    product: str | None = None,
    condition: str | None = None,
    spec: str | None = None,
    od: str | None = None,
    wall: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a tube metal guarantees, then what is typical of it; the two are never mixed.

    ``material`` ``1020 DOM as drawn`` (or ``product``, ``condition``, ``spec`` apart); ``od`` and ``wall`` where a
    specification steps by size. Raises Ambiguous with the choices when product, condition or spec decides, LookupMiss otherwise.

    >>> material("1020 DOM as drawn").figure("elongation").text
    '5'
    """
    data = data or refdata()
    found = tube_keys.stock(material, data, product, condition, spec)
    if found.material is None and found.product is None:
        names = [n for n in tube_keys.materials_of(found.family, data) if n != "any"]
        if not names:
            families = tube_keys.families(data)
            raise LookupMiss(
                material, "tubes/materials", f"no published source for {found.family}", families, "ask the maker"
            )
        raise Ambiguous(material, "material", "the grade is missing", names, "name the grade")
    od_m = None if od is None else _base(od, "od", data)
    wall_m = None if wall is None else _base(wall, "wall", data)
    figures: list[Figure] = []
    for quantity in (
        *_GUARANTEED,
        *(q for q in data.table("tubes/materials").by_quantity if q not in (*_GUARANTEED, *_TYPICAL)),
        *_TYPICAL,
    ):
        rows = tube_keys.rows_of(found, quantity, od_m, wall_m, data)
        named = [r for r in rows if r["spec"] != "not stated"] if found.spec is None else rows
        figures += _one(material, quantity, named or rows, {"od": od, "wall": wall}, data)
    if not any(f.quantity in _GUARANTEED for f in figures):
        sizes = tube_keys.sized(found, data)
        if sizes and (od is None or wall is None):
            raise Ambiguous(material, "tubes/materials", "the answer depends on od and wall", sizes, "give od and wall")
    if not figures:
        raise LookupMiss(
            material,
            "tubes/materials",
            "no published source for this metal in this condition",
            tube_keys.labels(found, data),
            "use one of these, or ask the maker",
        )
    checks = []
    if not any(f.quantity in _GUARANTEED for f in figures):
        checks.append(
            Check(
                "guaranteed strength",
                CANNOT_TELL,
                f"no published source guarantees a strength of {found.label}: ask for the mill certificate",
            )
        )
    asked = {"material": material, "product": product, "condition": condition, "spec": spec, "od": od, "wall": wall}
    subjects = ["free-machining or unknown tube"]
    if found.material == "4130":
        subjects.append("4130 normalized")
    if found.product == "DOM tube" and found.material == "1020":
        subjects.append("as-drawn DOM 1020")
    if found.product == "ERW tube":
        subjects.append("as-welded tube")
    return Sheet(found.label, asked, data, figures, checks, [*_read_as(found, figures, data), *_rules(data, *subjects)])


def _read_as(found: tube_keys.Stock, figures: list[Figure], data: Refdata) -> list[Caution]:
    """What was not named and is taken as the only kind on record; and specifications that step by size, told beside it."""
    out = []
    first = next((f for f in figures if f.quantity in _GUARANTEED), None)
    if first is not None:
        taken = [
            f"{c} {first.key[c]}" for c in tube_keys.COLUMNS[2:] if getattr(found, c) is None and first.key[c] != "any"
        ]
        if taken:
            out.append(
                Caution(
                    f"Not named, taken as the only one on record: {', '.join(taken)}.", "note", (first.id,), "refdata"
                )
            )
    shown = {f.id for f in figures}
    apart = [f for f in tube_keys.sized_figures(found, data) if f.id not in shown]
    if apart and found.spec is None:
        told = "; ".join(
            f"{f.key['spec']} {f.quantity.replace('_', ' ')} {f.text} {f.unit} (od {f.key['od']}, wall {f.key['wall']})"
            for f in apart[:4]
        )
        out.append(
            Caution(
                f"Another specification guarantees otherwise: {told}. Name the spec, with od and wall.",
                "damage",
                tuple(f.id for f in apart[:4]),
                "refdata",
            )
        )
    return out


def _base(typed: str, where: str, data: Refdata) -> Fraction:
    measure = tube_keys.outside_diameter(typed, data) if where == "od" else tube_keys.length(typed, where)
    return measure.value * units.factor(measure.unit)


def _one(typed: str, quantity: str, rows: list[Row], sizes: dict[str, str | None], data: Refdata) -> list[Figure]:
    """The Figure of a quantity among rows of one kind; Ambiguous when they are of more kinds than what was typed can tell apart."""
    if not rows:
        return []
    kinds = list(dict.fromkeys(tuple(r.cells[c] for c in tube_keys.COLUMNS) for r in rows))
    best = (
        [k for k in kinds if k.count("any") == min(j.count("any") for j in kinds)]
        if quantity in ("modulus", "density")
        else kinds
    )
    if len(best) > 1:
        if quantity not in _GUARANTEED:
            return []  # typical of several kinds, and none is named
        near = [" ".join(c for c in k[1:] if c not in ("any", "not stated")) for k in best]
        raise Ambiguous(
            typed, "tubes/materials", "more than one product, condition or spec has it", near, "name one of these"
        )
    keys = dict(zip(tube_keys.COLUMNS, best[0], strict=True))
    keys.update({k: v for k, v in sizes.items() if v is not None})
    got = lookup.look_up_or_none("tubes/materials", quantity, data=data, **keys)
    return [] if got is None else [got]


_THREAD = re.compile(
    r"(?:M\s*(?P<d>[0-9.]+)\s*x\s*(?P<p>[0-9.]+)|(?P<size>[0-9 /.]+?)\s*-\s*(?P<tpi>[0-9]+).*)", re.IGNORECASE
)


def flare(
    flare: str,
    *,
    od: str,
    wall: str | None = None,
    standard: str | None = None,
    port: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a flare asks of the tube: wall limit, diameter, and the nut's thread; whether wall and port thread fit.

    ``flare`` ``double``, ``AN``, ``bubble``, ``ORB``; ``od`` of the tube; ``wall`` to check; ``standard`` of the nut;
    ``port`` its thread (``3/8-24``, ``M10x1``). A wall limit printed in rounded millimetres is held to half its last digit.
    Raises LookupMiss with the nearest keys.

    >>> flare("double", od="3/16 in", wall=".028 in").checks[0].result
    'ok'
    """
    data = data or refdata()
    cell = canonical(data, "tubes/flares", "flare", flare)
    size = tube_keys.outside_diameter(od, data)
    size_m = size.value * units.factor(size.unit)
    nut = None if standard is None else canonical(data, "tubes/flares", "standard", standard)
    rows = [r for r in data.table("tubes/flares").rows if r["flare"] == cell and not r["standing"]]
    fit = [r for r in rows if (i := parse_interval(r["od"])) is None or i.holds(size_m)]
    if all(r["od"] == "any" for r in fit):
        sizes = list(dict.fromkeys(r["od"] for r in rows if r["od"] != "any"))
        sizes.sort(key=lambda s: abs((_low(s)) - size_m))
        raise LookupMiss(od, f"tubes/flares {cell}", "no published size of this flare", sizes, "use one of these")
    threaded = [r for r in fit if "thread" in r["quantity"]]
    if nut is not None and all(r["standard"] != nut for r in fit):
        raise LookupMiss(
            standard or "",
            f"tubes/flares {cell}",
            "no row of this standard for this flare and size",
            list(dict.fromkeys(r["standard"] for r in fit)),
            "use one of these",
        )
    order = ("wall_maximum", "flare_diameter", "seat_angle")
    picked = [r for q in order for r in fit if r["quantity"] == q]
    picked += [r for r in fit if r not in picked and r not in threaded]
    picked += [r for r in threaded if nut is None or r["standard"] == nut]
    figures = [
        lookup.look_up(
            "tubes/flares",
            r["quantity"],
            data=data,
            od=f"{od}" if r["od"] != "any" else "any",
            **{c: r.cells[c] for c in ("standard", "flare", "tube_material")},
        )
        for r in picked
    ]
    figures = list({f.id: f for f in figures}.values())
    checks = []
    if wall is not None or not any(f.quantity.startswith("port_") for f in figures):
        checks.append(_wall_check(figures, wall, cell, od))
    if port is not None:
        checks.append(_port_check(figures, port))
    subjects = ["37 and 45 degree", "brake nut in the wrong port", "seamed tube"]
    if "double" in cell and size_m == units.parse_number("3/16") * units.factor("in"):
        subjects.append("double flare wall")
    if "single" in cell:
        subjects.append("single flare on brake line")
    if cell in ("bubble (ISO)", "45 deg double"):
        subjects.append("bubble and double flare")
    cautions = _rules(data, *subjects)
    kinds = {f.key["standard"] for f in figures if "thread" in f.quantity}
    if len({_thread_text(figures, k) for k in kinds}) > 1:
        told = "; ".join(f"{_thread_text(figures, k)} {k}" for k in sorted(kinds))
        cautions.append(
            Caution(
                f"More than one nut fits this flare, each with its own thread: {told}. Name the standard, or measure both threads.",
                "injury",
                (),
                "refdata",
            )
        )
    asked = {"flare": flare, "od": od, "wall": wall, "standard": standard, "port": port}
    return Sheet(f"{cell} flare on {od} tube", asked, data, figures, checks, cautions)


def _low(cell: str) -> Fraction:
    interval = parse_interval(cell)
    return interval.low if interval is not None and interval.low is not None else units.parse_number("0")


def half_last_digit(figure: Figure) -> float:
    """Half a unit in the last printed digit of a figure, in its unit."""
    return 0.5 / float(10 ** len(figure.text.partition(".")[2]))


def _wall_check(figures: list[Figure], wall: str | None, cell: str, od: str) -> Check:
    name = "wall against the flare's limit"
    limit = next((f for f in figures if f.quantity == "wall_maximum"), None)
    if limit is None:
        return Check(
            name,
            CANNOT_TELL,
            f"no published source for the wall of this flare ({cell}) on {od} tube: flare a test piece",
        )
    needed = Bound(limit.typical, limit.unit, "max", limit)
    if wall is None:
        return Check(
            name, CANNOT_TELL, f"the wall is not given; {limit.text} {limit.unit} at most ({limit.source})", needed
        )
    measure = tube_keys.length(wall, "wall")
    got = measure.to(limit.unit)
    slack = half_last_digit(limit)
    actual = Bound(got, limit.unit, figure=tube_keys.asked("wall", "tube_wall", measure))
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
        return Check(name, CANNOT_TELL, "no published source for the nut of this flare and size")
    told = "; ".join(f"{t} {s}" for s, t in known.items())
    same = [s for s, t in known.items() if t == asked]
    if len(same) == len(known):
        return Check(name, OK, f"port {asked}, nut {told}")
    if same:
        return Check(
            name, CANNOT_TELL, f"port {asked} fits the nut of {', '.join(same)} only ({told}): measure the nut"
        )
    return Check(name, NOT_OK, f"port {asked}, nut {told}: another thread; it may start and strip")
