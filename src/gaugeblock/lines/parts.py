"""The parts of a line: clips, and how much the exhaust beside it grows."""

from __future__ import annotations

from fractions import Fraction

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, STOP, Bound, Check, at_most
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.printing import number_only, number_text
from gaugeblock.calc import line_parts as calc
from gaugeblock.lines.found import Found
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import canonical
from gaugeblock.warmth.grown import per_length
from gaugeblock.warmth.verdict import beside

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata

_SUBJECT = {"brake": "brake line", "fuel feed": "fuel line", "fuel return": "fuel line", "vapour": "fuel line"}
_METALS = ("steel", "copper", "nickel", "aluminium", "exhaust tube", "nonferrous", "brake tube")


def is_metal(material: str) -> bool:
    """Whether a line material is a metal tube: heat reaches its fluid long before it harms the tube."""
    return any(word in material for word in _METALS) and "hose" not in material and "nylon" not in material


def tape_unit(unit: str) -> str:
    """The unit that a tape or a rule reads a small length in."""
    return {"ft": "in", "m": "mm", "um": "mm"}.get(unit, unit)


def supports(line: Line, data: Refdata) -> Found:
    """Clip spacing with count and places; a missing length answers ``cannot tell``."""
    service, name = line.word("service"), "clips"
    run, wanted = line.figure("length", data), line.figure("clip_spacing", data)
    if wanted is not None and run is not None:
        return _clips(run, wanted, data, _published(service, data))
    if service is None:
        why = "the service of the line is not given"
        return Found() if run is None else Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))
    limit = _published(service, data)
    if limit is None:
        why = f"no published clip spacing for a {service} line: clip it beside each bend and each change to hose"
        return Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))
    if run is None:
        why = f"{number_only(limit, data)} apart at most; the length of the line is not given"
        required = Bound(limit.typical, limit.unit, "max", limit)
        return Found((limit,), (Check(name, CANNOT_TELL, why, required, bears=INFORM),))
    return _clips(run, limit, data)


def _published(service: str | None, data: Refdata) -> Figure | None:
    """The clip spacing that is published for a service; None where none is."""
    subject = _SUBJECT.get(service or "")
    if subject is None:
        return None
    keys = {"subject": subject, "size": "any"}
    return lookup.look_up_or_none("lines/supports", "support_spacing_maximum", data=data, **keys)


def _clips(run: Figure, limit: Figure, data: Refdata, published: Figure | None = None) -> Found:
    """How many clips a run takes at most so far apart, and where they stand; ``published`` judges a spacing that is
    wanted.
    """
    long_m, most_m = base(run), base(limit)
    count = int(calc.support_count(long_m, most_m))
    about = f"{run.text} {run.unit}"
    clips = derived(
        "support_count",
        "support_count",
        float(count),
        "1",
        (run, limit),
        data,
        about=about,
        conditions="both ends held by their fittings",
    )
    unit = tape_unit(run.unit)
    apart = units.from_base(long_m / (count + 1), unit)
    spacing = derived("support_spacing_even", "support_spacing", apart, unit, (run, clips), data, about=about)
    step = Fraction(1, 16) if unit == "in" else Fraction(1)
    placed = (units.from_base(p, unit) for p in calc.support_places(long_m, count)[:12])
    places = ", ".join(number_text(p, unit, "target", step) for p in placed)
    more = " ..." if count > 12 else ""
    where = f"at {places}{more} {unit} from one end" if count else "none between the fittings"
    reason = (
        f"{count} clips {where}; plus one beside each bend and each change to hose; "
        f"{beside(limit, unit, data)} apart at most"
    )
    judges, bears = limit if published is None else published, STOP
    if published is not None and published is not limit:
        whose = f"{published.source or 'habit'} ({published.conditions})" if published.conditions else published.source
        most = f"{beside(published, unit, data)} is the most by {whose}"
        is_over = units.to_base(apart, unit) > base(published) * (1 + 1e-9)
        reason = f"{most}; asked for are {reason}" if is_over else f"{reason}; {most}"
        bears = ASK  # a rule of one place: whether it is the builder's own is asked
    required = Bound(units.from_base(base(judges), unit), unit, "max", judges)
    told = (limit, clips, spacing, *(() if published is None else (published,)))
    return Found(told, (at_most("clips", Bound(apart, unit, figure=spacing), required, reason, bears=bears),))


def exhaust_growth(words: Words, hot: Figure | None) -> Found:
    """Growth of an exhaust between two anchors, and the slip or hanger travel it needs; nothing when no length was
    given.
    """
    line, data = words.line, words.data
    run = line.figure("anchors", data)
    if run is None:
        return Found()
    name = "exhaust growth"

    def cannot(why: str) -> Found:
        return Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))

    own, cold = line.figure("expansion", data), line.figure("cold_end", data)
    is_named = line.has("exhaust_material") or own is not None
    if not is_named or hot is None:
        lacking = "material of the exhaust" if not is_named else "temperature of the hot part"
        return cannot(f"the {lacking} is not given")
    top = hot.high if hot.high is not None else hot.typical
    wanted = f"{units.significant(top, 6)} {hot.unit}"
    per, table = own, None
    if line.has("exhaust_material"):
        is_from = own is not None or cold is not None
        read = _grown if own is None else per_length  # beside a coefficient of its own the material may be any
        table = words.read("exhaust_material", lambda typed: read(typed, wanted, data, is_from=is_from))
    per = own or table
    if per is None:
        return Found() if "exhaust_material" in words.unread else cannot(_none_published(line, wanted, data))
    beside_it = [f for f in (own, table) if f is not None and own is not None]
    if cold is not None:
        rule, said = "thermal_growth_from", f"from {cold.text} {cold.unit}"
        grown = calc.growth(base(per), base(run), units.to_base(top, hot.unit) - base(cold))
    elif per.quantity == "linear_growth":
        rule, grown, said = _by_table(data), base(per) * base(run), "from 70 degF"
    else:
        rule, said = "thermal_growth", "from 20 degC"
        grown = calc.growth(base(per), base(run), units.to_base(top, hot.unit) - 293.15)
    unit = tape_unit(run.unit)
    length = units.from_base(grown, unit)
    ends = (
        ("thermal_growth", f"{said} to {wanted}, free to grow"),
        ("slip_needed", "slip joints and hangers together"),
    )
    about = f"{run.text} {run.unit}|{line.word('exhaust_material')}|{wanted}"
    inputs = (per, run, hot, *(() if cold is None else (cold,)))
    about += "" if own is None else f"|{own.text} {own.unit}"
    growth, slip = (derived(rule, q, length, unit, inputs, data, about=about, conditions=c) for q, c in ends)
    reason = (
        f"{run.text} {run.unit} between anchors grows {number_only(growth, data)}: "
        f"slip joint and hangers must take {number_only(slip, data)} or more"
    )
    required = Bound(slip.typical, slip.unit, "min", slip)
    return Found((growth, slip, *beside_it), (Check(name, CANNOT_TELL, reason, required, bears=INFORM),))


def _by_table(data: Refdata) -> str:
    """The rule of a printed growth; releases before 0.7.0 have one rule for both."""
    return "thermal_growth_by_table" if data.entry("formulas", "thermal_growth_by_table") else "thermal_growth"


def _none_published(line: Line, wanted: str, data: Refdata) -> str:
    material = line.word("exhaust_material") or ""
    said = f"no published growth of {material} at {wanted}"
    ends = [
        (span.high, row["temperature"])
        for table in ("lines/growth", "lines/expansion")
        for row in data.table(table).rows
        if row["material"].casefold() == material.casefold() and not row["standing"]
        if (span := parse_interval(row["temperature"])) is not None and span.high is not None
    ]
    return f"{said}; the tables have it for {max(ends)[1]}" if ends else said


def _grown(material: str, at: str, data: Refdata, *, is_from: bool) -> Figure | None:
    """Growth of a material for its length to a temperature; None where none is published. LookupMiss for what is no
    material.
    """
    if material not in data.table("lines/expansion").column("material"):
        canonical(data, "lines/growth", "material", material)
    return per_length(material, at, data, is_from=is_from)
