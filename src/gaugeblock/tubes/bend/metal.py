"""What a bend does to the metal: strain, walls, arc, springback, flattening; and the trade's cautions."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Bound, Check, at_least
from gaugeblock.answer.making import base, stated
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.catalogue import VEHICLE_SERVICES
from gaugeblock.tables.part import rows_of_quantities
from gaugeblock.tubes import keys
from gaugeblock.tubes.bend.bent import CAGE, OWN, Bent

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

SPRINGBACK = "springback"


def known(tube: Bent, quantity: str) -> Figure | None:
    """What is stated of this metal, else what the tables have of it."""
    own = tube.own.figure(quantity, tube.data)
    return own if own is not None else in_tables(tube, quantity)


def modulus_of(tube: Bent) -> Figure | None:
    """The modulus of elasticity of this metal."""
    return known(tube, "modulus")


def in_tables(tube: Bent, quantity: str) -> Figure | None:
    """What the tables guarantee of this metal: one row, or the envelope of those that fit; None without grade and
    product. A modulus is that of its family.
    """
    if quantity == "modulus":
        return lookup.look_up_or_none("tubes/materials", "modulus", data=tube.data, family=tube.family)
    stock, data = tube.stock, tube.data
    if stock.material is None and stock.product is None:
        return None
    rows = keys.rows_of(stock, quantity, tube.od_m, tube.wall_m, data)
    figures: list[Figure] = []
    for row in rows:
        cells = {k: v for k, v in row.cells.items() if k in keys.COLUMNS}
        at = lookup.look_up_or_none(
            "tubes/materials", quantity, data=data, od=tube.key["od"], wall=tube.key["wall"], **cells
        )
        if at is not None and all(at.id != f.id for f in figures):
            figures.append(at)
    if not figures:
        return None
    if len(figures) == 1:
        return figures[0]
    unit = figures[0].unit
    values = [units.from_base(units.to_base(f.typical, f.unit), unit) for f in figures]
    told = "; ".join(dict.fromkeys(_row_name(f) for f in figures))
    return tube.derived(
        "envelope",
        quantity,
        None,
        unit,
        tuple(figures),
        ends=(min(values), max(values)),
        conditions=told,
        mark=f"{stock.label}",
    )


def own_figures(tube: Bent) -> list[Figure]:
    """What is stated of the metal, each with what the tables have."""
    out = []
    for name in OWN:
        own = tube.own.figure(name, tube.data)
        if own is not None:
            table = in_tables(tube, name)
            out += [own, *([] if table is None else [table])]
    return out


def _row_name(figure: Figure) -> str:
    k = figure.key
    words = (k["material"], k["product"], k["condition"])
    return " ".join(w for w in words if w not in ("any", "not stated")) + f" {figure.text} {figure.unit}"


def _ends(figure: Figure) -> str:
    if figure.value is not None:
        return figure.text or f"{figure.value:g}"
    return " to ".join(dict.fromkeys(f"{e:g}" for e in (figure.low, figure.high) if e is not None))


def stretch(tube: Bent) -> tuple[list[Figure], list[Caution]]:
    """Outer fibre strain beside the guaranteed elongation and the predicted outer wall: information, never a
    verdict.
    """
    figures: list[Figure] = []
    cautions: list[Caution] = []
    elongation = known(tube, "elongation")
    if tube.centre is None or tube.clr_m is None:
        figures += [] if elongation is None else [elongation]
    else:
        percent = calc.outer_fibre_strain(float(tube.od_m), float(tube.clr_m)) * 100
        strain = tube.derived(
            "outer_fibre_strain",
            "outer_fibre_strain",
            percent,
            "%",
            (tube.od, tube.centre),
            conditions="information: strain alone is not a verdict",
        )
        cautions.append(_strain(tube, strain, elongation))
        figures += [strain, *([] if elongation is None else [elongation]), _outer_wall(tube, tube.centre)]
    least = _least_wall(tube)
    return (figures if least is None else [*figures, least]), cautions


def _strain(tube: Bent, strain: Figure, elongation: Figure | None) -> Caution:
    share = f"Outer fibre strain {strain.typical:.1f} %"
    if elongation is None:
        what = "the grade is not named"
        if tube.stock.is_graded:
            what = f"no guaranteed elongation is on record for {tube.stock.typed}"
        text = f"{share}; {what}, so there is no elongation to set beside it. The shop's own test bend is the verdict."
        return Caution(text, "note", (strain.id,), "calculated")
    least = elongation.low if elongation.low is not None else elongation.typical
    apart = "" if elongation.value is not None else " (the condition or grade is not fully named)"
    text = f"{share}; {_ends(elongation)} % elongation is guaranteed{apart}."
    text += " Strain alone does not decide: your own test bend does."
    severity = "damage" if strain.typical > least else "note"
    return Caution(text, severity, (strain.id, elongation.id), "calculated")


def _outer_wall(tube: Bent, centre: Figure) -> Figure:
    thin = calc.outer_wall_thinned(float(tube.wall_m), float(tube.od_m), base(centre))
    words = "predicted from the nominal wall: the whole stretch taken by the wall; measure the bend"
    inputs = (tube.wall, tube.od, centre)
    unit = tube.wall.unit
    return tube.derived("outer_wall_thinned", "outer_wall", units.from_base(thin, unit), unit, inputs, conditions=words)


def _least_wall(tube: Bent) -> Figure | None:
    """The wall that may arrive: nominal and the low tolerance of its standard, where one is on record."""
    product = tube.stock.product
    if product is None or tube.listed.of_wall:  # a wall that was measured is the wall that arrived
        return None
    specs = (
        [tube.stock.spec] if tube.stock.spec else lookup.choices("tubes/sizes", "spec", data=tube.data, product=product)
    )
    if len(specs) != 1:
        return None
    try:
        tolerance = lookup.look_up_or_none(
            "tubes/sizes",
            "wall_tolerance",
            data=tube.data,
            product=product,
            spec=specs[0],
            material=tube.family,
            od=tube.listed.od,
            wall=tube.listed.wall,
        )
    except InputError:
        return None
    if tolerance is None or tolerance.low is None:
        return None
    low = units.from_base(units.to_base(tolerance.low, tolerance.unit), tube.wall.unit)
    return tube.derived(
        "wall_least",
        "wall_least",
        tube.wall.typical + low,
        tube.wall.unit,
        (tube.wall, tolerance),
        conditions=f"as delivered to {specs[0]}"
        + ("" if tube.stock.spec else " (the only standard on record for it; not named)"),
    )


_PAIR = r"(?i)(?P<a>[0-9][0-9 ./-]*?)\s*(?P<ua>[a-z\"]*)\s*(?:x|,|and|by)\s*(?P<b>[0-9.][0-9 ./-]*?)\s*(?P<ub>[a-z\"]+)"


def diameters(typed: str, data: Refdata) -> tuple[Figure, Figure]:
    """The largest and the smallest diameter measured at a bend that was made: ``1.80 x 1.70 in``."""
    match = re.fullmatch(_PAIR, " ".join(typed.split()))
    if match is None:
        do = "write largest and smallest at the bend, as 1.80 x 1.70 in"
        raise InputError(typed, "diameters", "not two diameters", (), do)
    pair = [keys.length(f"{match[n]} {match[u] or match['ub']}", "diameters") for n, u in (("a", "ua"), ("b", "ub"))]
    return measured(pair, data)


def measured(diameters: Sequence[Measure], data: Refdata) -> tuple[Figure, Figure]:
    """The largest and the smallest of two diameters measured at a bend that was made."""
    pair = sorted(diameters, key=keys.metres, reverse=True)
    large, small = (
        stated(m, "diameter_at_bend", f"diameters {w}", data, read_by="calliper")
        for w, m in zip(("major", "minor"), pair, strict=True)
    )
    return large, small


def flattening(tube: Bent) -> tuple[list[Figure], list[Check]]:
    """The cage's least ratio of the two diameters at a bend, and what was measured; it judges a cage only."""
    limit = None
    if tube.may_be_a_cage:
        limit = lookup.look_up_or_none(
            "tubes/bend_quality",
            "minor_to_major_ratio_minimum",
            data=tube.data,
            service=CAGE,
            product="tube",
            family=tube.family,
        )
    figures: list[Figure] = [] if limit is None else [limit]
    ratio = None
    if tube.tested:
        large, small = (base(f) for f in tube.tested)
        ratio = tube.derived("minor_to_major_ratio", "minor_to_major_ratio", small / large, "1", tube.tested)
        oval = tube.derived(
            "ovality",
            "ovality",
            (large - small) / float(tube.od_m) * 100,
            "%",
            (*tube.tested, tube.od),
            conditions="over the nominal OD",
        )
        figures += [ratio, oval]
    if tube.service != CAGE or limit is None:
        return figures, []
    needed = Bound(limit.typical, "1", "min", limit)
    name = "minor over major diameter at the bend"
    if ratio is None:
        why = f"measure the two diameters at the bend once it is made: {limit.text} or more is needed ({limit.source})"
        return figures, [Check(name, CANNOT_TELL, why, needed, bears=INFORM)]
    reason = f"{ratio.typical:.3f}; {limit.text} or more is needed ({limit.source}, service {limit.key['service']})"
    return figures, [at_least(name, Bound(ratio.typical, "1", figure=ratio), needed, reason)]


def under_the_car(tube: Bent) -> list[Caution]:
    """What is said of the work when the tube goes on the vehicle; a line is not welded."""
    from gaugeblock.tubes.rules import rules_of  # a look-up of a bend never says it

    is_line = tube.service in VEHICLE_SERVICES and not tube.may_be_a_cage
    return rules_of(tube.data, "stands", *(() if is_line else ("welding",)))


def trade(tube: Bent, *, is_tested: bool = False) -> list[Caution]:
    """The statements of tubes/rules that belong to this tube and method; none on springback after a test bend."""
    stock = tube.stock
    is_line = tube.service in VEHICLE_SERVICES and not tube.may_be_a_cage
    wanted = [] if tube.tested or is_tested else [SPRINGBACK]  # a bend that was measured says it better
    if tube.method == "press (ram)":
        wanted.insert(0, "press (ram) bending")
    if tube.method == "rotary draw" and tube.family == "steel":
        wanted.append("capacity table")
    if stock.product == "DOM tube" and stock.condition in (None, "as drawn") and stock.material in (None, "1020"):
        wanted.append("as-drawn DOM 1020")
    if stock.material == "4130" and stock.condition in (None, "normalized") and stock.spec is None:
        wanted.append("4130 normalized")
    if stock.product in ("ERW tube", "cold-rolled ERW tube"):
        wanted += ["as-welded tube", "seam"]
    if not stock.is_graded and not is_line:
        wanted.append("free-machining or unknown tube")
    if _pipe_sized(tube):
        wanted += ["pipe and tube", "pipe bender and tube"]
    topics = ("bend", "material", "size")
    out = [
        Caution(row["statement"], row["severity"], (), row["source"] or row["basis"])
        for row in tube.data.statements("tubes")
        if row["subject"] in wanted and row["topic"] in topics and not row["standing"]
    ]
    return sorted(out, key=lambda c: ("injury", "damage", "note").index(c.severity))


def _pipe_sized(tube: Bent) -> bool:
    """Whether the OD is the name or the OD of a pipe size: the look-alikes."""
    inches = units.fraction_text(tube.od_m / units.factor("in"))
    for row in rows_of_quantities(tube.data, "tubes/pipe_sizes", "outside_diameter"):
        value = row["value"]
        if row["nps"] == inches or (value and units.parse_number(value) * units.factor(row["unit"]) == tube.od_m):
            return True
    return False
