"""Hardness: other scales and strength, on the printed points and between them; never outside."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline import keys
from gaugeblock.driveline.keys import Hardness
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.lookup import figure_of
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tables.part import rows_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.steels import Steel
    from gaugeblock.tables.load import Row

    _Point = tuple[float, float, Row]  # tensile strength, Pa; hardness; where both are printed

TABLE = "driveline/hardness"
TENSILE = "tensile"
_STRENGTHS = ("tensile_strength_typical", "yield_strength_typical")
_SCALES = ("hardness_hb", "hardness_hrc", "hardness_hv")


def converted(of: Hardness, quantity: str, data: Refdata) -> Figure | None:
    """One figure at a hardness, by the source with the most points of its scale that covers it; None outside all.

    One source over the whole scale keeps strength rising with hardness; what the others print at that point stands
    in ``others``.
    """
    counts: dict[str, int] = {}
    for row in rows_of(data, TABLE, of.scale):
        if row["quantity"] == quantity and not row.standing:
            counts[row["source"]] = counts.get(row["source"], 0) + 1
    found = []
    for source in sorted(counts, key=lambda s: (-counts[s], s)):
        try:
            found.append(
                lookup.look_up(TABLE, quantity, data=data, of_source=source, scale=of.scale, hardness=of.number)
            )
        except LookupMiss:
            continue
    if not found:
        return None
    others = tuple(f.replace(chosen_by="source id", others=()) for f in found[1:])
    return found[0].replace(chosen_by="most points" if others else found[0].chosen_by, others=others)


def torsional_yields(of: Hardness, data: Refdata) -> list[Figure]:
    """Torsional yields at a hardness, the lower first, which judges: what the axle paper prints, about 0.6 of the yield
    strength there, and 0.577 of it by distortion energy, as of every other shaft. None outside the points.
    """
    printed = converted(of, "torsional_yield_strength_typical", data)
    yields = converted(of, "yield_strength_typical", data)
    found = [] if printed is None else [printed]
    if yields is not None:
        number = units.from_base(calc.torsional_yield_distortion_energy(base(yields)), yields.unit)
        rule, quantity = "shear_yield_distortion_energy", "torsional_yield_strength_typical"
        key = {"scale": of.scale, "hardness": of.number}
        words = "by distortion energy, 0.577 of yield"
        found.append(derived(rule, quantity, number, yields.unit, (yields,), data, key=key, conditions=words))
    return sorted(found, key=base)


def tensile_from(measured: Figure, of: Hardness, data: Refdata) -> Figure | None:
    """Tensile strength at a hardness by the tables; below the Brinell table by the habit of half a ksi a point."""
    if of.scale == "HB" and 0 < float(of.number) < min(_points(data, "HB")):
        return derived(
            "tensile_from_brinell",
            "tensile_strength_typical",
            0.5 * float(of.number),
            "ksi",
            (measured,),
            data,
            key={"scale": of.scale, "hardness": of.number},
            conditions="below the tables: rough screen only",
        )
    return converted(of, "tensile_strength_typical", data)


def hardness_of(steel: Steel, data: Refdata) -> tuple[Figure, ...]:
    """How hard a steel is by its own table, and on the Rockwell C scale where the conversion reaches it; empty where it
    has none.
    """
    for quantity, scale in (("hardness_hrc_typical", "HRC"), ("hardness_hb_typical", "HB")):
        own = steel.figure(quantity)
        if own is None:
            continue
        if scale == "HRC" or own.value is None:
            return (own,)
        of = Hardness(scale, units.significant(own.value, 6))
        other = converted(of, "hardness_hrc", data)
        return (own,) if other is None else (own, other)
    return ()


def from_strength(strength: Figure, data: Refdata) -> list[Figure]:
    """How hard a steel of a tensile strength is near, on each scale whose printed points reach it: the table of one
    source read the other way, linear between two of its points; empty outside all.
    """
    wanted = units.to_base(strength.typical, strength.unit)
    found = []
    for scale in ("HRC", "HB"):
        pair = next((p for ladder in _ladders(scale, data) if (p := _around(ladder, wanted)) is not None), None)
        if pair is not None:
            (low, under, one), (high, over, other) = pair
            number = under + (over - under) * (wanted - low) / (high - low)
            inputs = (figure_of(one, data), figure_of(other, data), strength)
            key = {"strength": f"{strength.text} {strength.unit}"}
            name = f"hardness_{scale.casefold()}"
            text = f"{number:.0f}"
            found.append(derived("hardness_of_strength", name, number, scale, inputs, data, key=key, text=text))
    return found


def _around(ladder: list[_Point], wanted: float) -> tuple[_Point, _Point] | None:
    """The two printed points next to each other that a strength lies between; None outside them."""
    return next((pair for pair in pairwise(ladder) if pair[0][0] <= wanted <= pair[1][0] > pair[0][0]), None)


def _ladders(scale: str, data: Refdata) -> list[list[_Point]]:
    """The printed points of a scale, rising, by source: that with the most points first."""
    by_source: dict[str, list[_Point]] = {}
    for row in rows_of(data, TABLE, scale):
        if row["quantity"] == "tensile_strength_typical" and not row.standing:
            point = units.to_base(row.typical, row["unit"]), float(row["hardness"]), row
            by_source.setdefault(row["source"], []).append(point)
    ladders = sorted(by_source.items(), key=lambda one: (-len(one[1]), one[0]))
    return [sorted(points, key=lambda point: point[:2]) for _, points in ladders]


def _of_strength(strength: str, to: str | None, data: Refdata) -> Sheet:
    """The Sheet of the hardness that goes with a tensile strength."""
    measure = read_positive(strength, "stress", "strength")
    given = stated(measure, "tensile_strength_typical", "strength", data)
    figures = from_strength(given, data)
    asked: dict[str, str | None] = {"scale": TENSILE, "value": strength, "to": to}
    title = f"steel of {measure.text} tensile"
    wanted = None if to is None else canonical(data, TABLE, "scale", to)
    own = [f for f in figures if wanted is None or f.quantity == f"hardness_{wanted.casefold()}"]
    cautions = rule_cautions(data, "hardness conversion", "all scales")
    if not own:
        do = "No printed conversion reaches it. Have the part's hardness measured."
        return Sheet(title, asked, data, [given], [], cautions, decision=none("READS NEAR", do))
    shown = [*own, *(f for f in figures if f not in own), given]
    do = "A conversion of a steel of even structure: near enough to check a certificate by, no guarantee."
    return Sheet(title, asked, data, shown, [], cautions, decision=use("READS NEAR", own[0], do))


def hardness(scale: str, value: str, *, to: str | None = None, data: Refdata | None = None) -> Sheet:
    """What a hardness is on other scales and in strength.

    Parameters: ``scale`` as people write it (``HRC``, ``Rockwell C``, ``Brinell``); ``value`` the number. Either may
    stand first. ``to`` is the scale that is wanted, ``HB``: its number is then the decision. Of the scale ``tensile``
    the value is a strength, ``150 ksi``, and the decision is the hardness that goes with it.

    Returns a Sheet: tensile strength first, then yield and torsional yield where a source has them, then the other
    scales; between two printed points of one source linear, each such figure with its two points as inputs.

    Raises LookupMiss outside the printed points (extrapolation is refused), InputError for what is not a number.

    >>> hardness("Rockwell C", "42").figures[0].text
    '195'
    """
    data = data or refdata()
    if scale.casefold() == TENSILE:
        return _of_strength(value, to, data)
    of = keys.hardness(f"{value} {scale}", data)
    cell = of.scale
    strengths = [f for q in _STRENGTHS if (f := converted(of, q, data)) is not None]
    scales = [f for q in _SCALES if (f := converted(of, q, data)) is not None]
    torsional = sorted(torsional_yields(of, data), key=lambda f: f.rule is not None and "energy" in f.rule.name)
    figures = [*strengths, *torsional, *scales]  # first what the table prints: here it is read, and judges nothing
    if not figures:
        points = sorted(_points(data, cell))
        ends = [f"{points[0]:g} {cell}", f"{points[-1]:g} {cell}"]
        raise LookupMiss(
            of.text,
            f"{TABLE} hardness",
            f"outside the printed points, {ends[0]} to {ends[1]}; not extrapolated",
            ends,
            "measure on another scale, or test the part",
        )
    cautions = rule_cautions(data, "hardness conversion", "all scales") + _disagreements(figures)
    asked: dict[str, str | None] = {"scale": scale, "value": value, "to": to}
    wanted = cell if to is None else canonical(data, TABLE, "scale", to)
    if wanted != cell:
        on_it = [figure for figure in figures if figure.quantity == f"hardness_{wanted.casefold()}"]
        if not on_it:
            return Sheet(of.text, asked, data, figures, [], cautions, decision=none("READS", _no_scale(of, wanted)))
        figures = [*on_it, *(figure for figure in figures if figure not in on_it)]
    is_scale = figures[0].quantity.startswith("hardness")
    do = "" if is_scale and wanted == cell else "A conversion: near enough to judge by, no guarantee."
    return Sheet(
        of.text,
        asked,
        data,
        figures,
        [],
        cautions,
        decision=use("READS" if is_scale else "BREAKS NEAR", figures[0], do),
    )


def _no_scale(of: Hardness, wanted: str) -> str:
    """What is told where no table turns a hardness into a scale."""
    ends = f"Have it measured in {wanted} where that is what is asked for."
    if wanted == "HRB":
        ends = "The B scale ends near 100 HRB, by common practice 22 or 23 HRC: nothing harder is read on it."
    return f"The tables do not turn {of.text} into {wanted}. {ends}"


def _disagreements(figures: list[Figure]) -> list[Caution]:
    """Where the sources of one figure lie over 2 % apart."""
    out = []
    for figure in figures:
        values = [units.from_base(units.to_base(f.typical, f.unit), figure.unit) for f in (figure, *figure.others)]
        if max(values) - min(values) > 0.02 * figure.typical:
            low, high = (units.significant(v, 4) for v in (min(values), max(values)))
            text = f"Sources disagree on {figure.quantity.replace('_', ' ')}: {low} to {high} {figure.unit}."
            out.append(Caution(text, "note", (figure.id, *(o.id for o in figure.others)), "refdata"))
    return out


def _points(data: Refdata, scale: str) -> list[float]:
    return [float(r["hardness"]) for r in rows_of(data, TABLE, scale) if not r["standing"]]
