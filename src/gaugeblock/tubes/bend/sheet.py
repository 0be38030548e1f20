"""Bend: the least radius a tube is bent to, whether a die keeps to it, and what a bend does to the tube."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import INFORM
from gaugeblock.answer.decision import none
from gaugeblock.answer.needs import together
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import InputError
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.bend import metal
from gaugeblock.tubes.bend.bent import CAGE, MINIMUMS, OWN, Bent, service_of
from gaugeblock.tubes.bend.least import Minimum, minimums
from gaugeblock.tubes.bend.radius import VERB, decision, questions, radius_checks
from gaugeblock.tubes.doubt import Doubt, beside, doubt_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction
    from typing import Any

    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure


FACTS = ("radius", "outer wall")


def _bend_topic() -> Topic:
    from gaugeblock.tubes.ask import BEND

    return BEND


@opens(_bend_topic)
def bend(
    *,
    od: str,
    wall: str,
    material: str,
    method: str,
    radius: str | None = None,
    angle: str | None = None,
    service: str = "vehicle",
    measured_to: str | None = None,
    product: str | None = None,
    condition: str | None = None,
    spec: str | None = None,
    diameters: str | None = None,
    die: str | None = None,
    maker_radius: str | None = None,
    maker_source: str | None = None,
    yield_strength: str | None = None,
    tensile_strength: str | None = None,
    modulus: str | None = None,
    test: str | None = None,
    fact: str | None = None,
    least_wall: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The least radius for a tube, whether a die keeps to it, and what the bend does to the tube.

    Parameters are text as people write them: ``od`` ``1-3/4 in``; ``wall`` ``.120 in`` or ``11 BWG``; ``material``
    ``1020 DOM`` (or ``product``, ``condition``, ``spec`` apart); ``method`` ``rotary draw``; ``radius`` of the die,
    to the
    centre line unless ``measured_to`` (or the words after it) say inside; ``angle`` ``90 deg``; ``service``
    ``vehicle`` or
    ``vehicle safety cage``; ``diameters`` largest and smallest as measured at a bend made so (``1.80 x 1.70 in``);
    ``die`` its name; ``maker_radius`` the bender maker's least radius for this tube, ``maker_source`` his sheet and
    page; ``yield_strength``, ``tensile_strength`` and ``modulus`` this tube's own (``62 ksi``, ``62 ksi by tensile test
    on 2026-11-20``); ``test`` one bend of the same stock on the same die (``47 deg set, 45 deg got``), from which the
    angle to set follows in proportion; ``fact`` what is wanted first: ``radius``, or ``outer wall``, the wall that is
    left at the outside of the bend, against the ``least_wall`` that a rule asks for there.

    Returns a Sheet: the published cage rule first beside a steel tube (it governs a cage and informs otherwise), then
    the habit of the method, bend ratio, wall factor, and outer fibre strain beside the guaranteed elongation, predicted
    outer wall, arc length and springback as information. A radius under what shops usually bend asks for a test piece;
    one under a published rule, or under the maker's least, stops.

    Raises LookupMiss with the nearest keys, InputError or UnitError for what cannot be read.
    Source of the 3 x diameter rule: FSAE Rules 2021 F.5.2.1, FIA Appendix J Art. 253-8.3.3.

    >>> sheet = bend(od="1 3/4 in", wall=".120 in", material="1020 DOM", method="rotary draw", radius="5 1/2 in")
    >>> sheet.figures[0].text, sheet.figures[0].key["service"], round(sheet.figure("bend_ratio").typical, 2)
    ('3', 'vehicle safety cage', 3.14)
    """
    data = data or refdata()
    asked = {
        "od": od,
        "wall": wall,
        "material": material,
        "method": method,
        "radius": radius,
        "angle": angle,
        "service": service,
        "measured_to": measured_to,
        "product": product,
        "condition": condition,
        "spec": spec,
        "diameters": diameters,
        "die": die,
        "maker_radius": maker_radius,
        "maker_source": maker_source,
        "yield_strength": yield_strength,
        "tensile_strength": tensile_strength,
        "modulus": modulus,
        "test": test,
        "fact": fact,
        "least_wall": least_wall,
    }
    if fact is not None and fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a bend is called so", FACTS, "ask for one of these")
    together(asked, {"maker_source": ("maker_radius",), "measured_to": ("radius",)})
    size = keys.outside_diameter(od, data)
    made = _made(keys.metres(size), radius, measured_to, maker_radius, maker_source, diameters, data)
    stock = keys.stock(material, data, product, condition, spec)
    own = None
    if yield_strength or tensile_strength or modulus:
        from gaugeblock.tubes.own import read_own

        own = read_own(asked)
    tube = Bent(size, keys.wall(wall, data), stock, method, service_of(service, data), data, own=own, **made)
    tested = None
    if test is not None:
        from gaugeblock.tubes.bend.arcs import test_bend

        tested = test_bend(test, data)
    made_of = bend_of(tube, None if angle is None else units.parse_measure(angle, "angle", "angle"), asked, tested)
    if fact in (None, FACTS[0]) and least_wall is None:
        return made_of
    from gaugeblock.tubes.bend.thinned import outer_wall

    return outer_wall(made_of, least_wall, data)


def _doubts(tube: Bent) -> list[Doubt]:
    """What was typed of the tube and its bend that may not be what was meant."""
    typed = [
        ("od", "tube_od", tube.od),
        ("wall", "tube_wall", tube.wall),
        ("radius", "centre_line_radius", tube.radius),
    ]
    given = {
        key: (quantity, units.Measure(units.parse_number(f.text), f.unit, f"{f.text} {f.unit}"))
        for key, quantity, f in typed
        if f is not None and f.basis == "stated"
    }
    found = [d for key, (quantity, m) in given.items() if (d := doubt_of(key, quantity, m, tube.data)) is not None]
    od, wall, radius = (given[k][1] if k in given else None for k in ("od", "wall", "radius"))
    found = found or beside(od, wall, radius, tube.method)
    if found or not tube.own.text:
        return found
    from gaugeblock.tubes.own import doubts_of_own

    return doubts_of_own(tube.own, {name: metal.in_tables(tube, name) for name in OWN}, tube.data)


def _made(
    od_m: Fraction,
    radius: str | None,
    measured_to: str | None,
    maker_radius: str | None,
    maker_source: str | None,
    diameters: str | None,
    data: Refdata,
) -> dict[str, Any]:
    """What is known of the bend itself: the radius of its die, the maker's least, what was measured at one made."""
    return {
        "radius": None if radius is None else keys.radius(radius, measured_to, od_m, data),
        "maker": None if maker_radius is None else keys.maker_radius(maker_radius, maker_source, data),
        "tested": () if diameters is None else metal.diameters(diameters, data),
    }


def bend_of(
    tube: Bent, angle: Measure | None, asked: dict[str, str | None], test: tuple[Figure, Figure] | None = None
) -> Sheet:
    """The sheet of a tube with its bend."""
    data = tube.data
    own = minimums(tube, tube.service)
    cage = own if tube.service == CAGE else minimums(tube, CAGE) if tube.may_be_a_cage else []
    habits = own if tube.service != CAGE else minimums(tube, "vehicle")
    arcs: list[Figure] = []
    if angle is not None:
        from gaugeblock.tubes.bend.arcs import arc

        arcs = arc(tube, angle, test)
    figures: list[Figure] = [f for f in arcs if f.quantity == "bend_angle_set"]
    figures += [f for m in cage for f in m.figures]
    figures += [f for m in habits if m.row.id not in {c.row.id for c in cage} for f in m.figures]
    figures += [] if tube.maker is None else [tube.maker]
    figures += [tube.centre] if tube.centre is not None and tube.centre is not tube.radius else []
    if tube.centre is not None and tube.clr_m is not None:
        ratio = float(tube.clr_m / tube.od_m)
        figures.append(tube.derived("bend_ratio", "bend_ratio", ratio, "1", (tube.centre, tube.od)))
    factor = float(tube.od_m / tube.wall_m)
    figures.append(tube.derived("wall_factor", "wall_factor", factor, "1", (tube.od, tube.wall)))
    more, stretched = metal.stretch(tube)
    flat, flat_checks = metal.flattening(tube)
    figures += [*more, *(f for f in arcs if f.quantity != "bend_angle_set"), *flat, *metal.own_figures(tube)]
    doubts = _doubts(tube)
    checks = [*radius_checks(tube, own, habits), *flat_checks]
    if doubts:  # what may not be what was meant judges nothing
        checks = [*(d.check for d in doubts), *(c.replace(bears=INFORM) for c in checks)]
    if tube.centre is not None and tube.centre not in figures:
        figures.append(tube.centre)
    return Sheet(
        f"{tube.key['od']} x {tube.key['wall']} {tube.stock.label}, {tube.method}",
        asked,
        data,
        figures,
        checks,
        [
            *_read_as(tube, asked),
            *_bought_as(tube),
            *_informs(tube, cage),
            *stretched,
            *metal.trade(tube, is_tested=test is not None),
        ],
        decision=none(VERB, doubts[0].text) if doubts else decision(tube, own, checks),
        questions=[*(d.question for d in doubts), *questions(tube, own, checks)],
    )


def _bought_as(tube: Bent) -> list[Caution]:
    """The listed size that a measured tube is taken as."""
    size, said = tube.listed, []
    if size.of_od:
        said.append(f"An OD of {tube.key['od']} is taken as {size.od}, within the tolerance of {size.of_od}.")
    if size.of_wall:
        said.append(f"A wall of {tube.key['wall']} is taken as {size.wall}, within the tolerance of {size.of_wall}.")
    return [Caution(text, "note", (), "refdata") for text in said]


def _read_as(tube: Bent, asked: dict[str, str | None]) -> list[Caution]:
    """How a number without a unit was read."""
    typed = ((k, asked.get(k), tube.key[k]) for k in ("od", "wall"))
    bare = [(k, t, got) for k, t, got in typed if t and not units.split_quantity(t)[1]]
    return [Caution(f"{k} = {t} is read as {got}.", "note", (), "calculated") for k, t, got in bare]


def _informs(tube: Bent, cage: list[Minimum]) -> list[Caution]:
    """The cage rule beside a tube it does not govern, and the rows of other services."""
    out = []
    if cage and tube.service != CAGE:
        rule = cage[0]
        text = "No rule was found for a vehicle's own tube."
        text += (
            f" Safety cages need {rule.row.text} x OD to the centre line, {number_only(rule.radius, tube.data)} here"
        )
        if tube.clr_m is not None:
            met = float(tube.clr_m) >= rule.low_m * (1 - 1e-9)
            text += f": this bend {'meets' if met else 'does not meet'} it, {float(tube.clr_m / tube.od_m):.3g} x OD"
        out.append(Caution(f"{text}. For information only.", "note", (rule.row.id,), rule.row.source))
    rows: dict[tuple[str, str], Figure] = {}
    for row in tube.data.table(MINIMUMS).rows:
        c = row.cells
        if c["quantity"] not in ("bend_radius_minimum", "bend_ratio_minimum") or c["service"] in (
            tube.service,
            "any",
            "vehicle",
            CAGE,
            "conduit",
        ):
            continue
        interval = parse_interval(c["od"])
        if c["family"] == tube.family and c["material"] == "any" and (interval is None or interval.holds(tube.od_m)):
            rows.setdefault((c["service"], c["product"]), lookup.figure_of(row, tube.data))
    if rows:
        told = "; ".join(
            f"{s} {p} {f.text}{' x diameter' if f.unit == '1' else ' ' + f.unit} ({f.source})"
            for (s, p), f in rows.items()
        )
        out.append(Caution(f"For comparison: {told}.", "note", tuple(f.id for f in rows.values()), "refdata"))
    return out
