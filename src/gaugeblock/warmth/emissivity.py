"""Emissivity of a finish: what was typed -> a Figure."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.making import derived, stated_span
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.span import parse_span
from gaugeblock.tables.load import canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata, Row


def emissivity(text: str, at: Figure | None, name: str, data: Refdata) -> Figure:
    """Emissivity of a finish: a number, a range, or ``material: surface`` with ``@ 300 degC`` where the table has
    several.

    Between two printed points of one source it lies on their line, with those two as low and high; outside them it is
    refused with the nearest.
    """
    words, _, point = (part.strip() for part in text.partition("@"))
    if words[:1].isdigit() or words.startswith("."):
        got = parse_span(words, "ratio", name)
        if got.high.to("1") > 1 or got.low.to("1") <= 0:
            raise InputError(text, name, "an emissivity is between 0 and 1", (), "write 0.8 or 0.6 to 0.9")
        return stated_span(got, "total_emissivity", name, data)
    material, surface, mine = _rows(text, words, name, data)
    if point:
        wanted = point
    elif len(mine) == 1:
        return lookup.figure_of(mine[0], data)
    elif at is not None:
        wanted = f"{units.significant(at.typical, 6)} {at.unit}"
    else:
        near = [f"{material}: {surface} @ {r.cells['temperature']}" for r in mine]
        raise LookupMiss(text, name, "the table has several temperatures of this surface", near, "name one with @")
    try:
        return lookup.look_up(
            "lines/emissivity", "total_emissivity", data=data, material=material, surface=surface, temperature=wanted
        )
    except LookupMiss:
        return _between(text, name, wanted, mine, data)


def refuse_unknown(text: str, name: str, data: Refdata) -> None:
    """InputError or LookupMiss for what is no emissivity, and no surface of the table."""
    words = text.partition("@")[0].strip()
    if words[:1].isdigit() or words.startswith("."):
        emissivity(text, None, name, data)
    else:
        _rows(text, words, name, data)


def _rows(text: str, words: str, name: str, data: Refdata) -> tuple[str, str, list[Row]]:
    """Material, surface and the rows of ``material: surface``; LookupMiss with the surfaces there are."""
    typed, _, surface = (part.strip() for part in words.partition(":"))
    material = canonical(data, "lines/emissivity", "material", typed)
    rows = [
        r
        for r in data.table("lines/emissivity").rows
        if r["material"] == material and r["quantity"] == "total_emissivity"
    ]
    surfaces = list(dict.fromkeys(r["surface"] for r in rows))
    near = [f"{material}: {s}" for s in surfaces]
    if not rows:
        why = f"no total emissivity of {material} is on record"
        raise LookupMiss(text, name, why, (), "name another finish, or measure the line's temperature")
    if not surface:
        if len(surfaces) > 1:
            raise LookupMiss(text, name, "the surface is missing", near, "name the surface")
        surface = surfaces[0]
    else:
        surface = canonical(data, "lines/emissivity", "surface", surface)
    mine = [r for r in rows if r["surface"] == surface]
    if not mine:
        why = f"no published emissivity of {material} with this surface"
        raise LookupMiss(text, name, why, near, "use one of these")
    return material, surface, mine


def _between(text: str, name: str, wanted: str, rows: list[Row], data: Refdata) -> Figure:
    from gaugeblock.tables.interval import parse_interval

    at = units.parse_measure(wanted, "temperature", name)
    kelvin = at.value * units.factor(at.unit) + units.offset(at.unit)
    placed = [(i, r) for r in rows if (i := parse_interval(r["temperature"])) is not None and i.is_point]
    points = sorted(((i.low, r) for i, r in placed if i.low is not None), key=lambda pair: pair[0])
    below = [r for p, r in points if p < kelvin]
    above = [r for p, r in points if p > kelvin]
    if not below or not above:
        near = [f"{r.cells['material']}: {r.cells['surface']} @ {r.cells['temperature']}" for r in rows]
        why = f"no published emissivity at {wanted}, and none on both sides of it"
        raise LookupMiss(text, name, why, near, "name the nearest point with @")
    ends = lookup.figure_of(below[-1], data), lookup.figure_of(above[0], data)
    (cold, _), (warm, _) = [p for p in points if p[0] < kelvin][-1], next(p for p in points if p[0] > kelvin)
    share = float((kelvin - cold) / (warm - cold))
    values = sorted(e.typical for e in ends)
    return derived(
        "linear_interpolation",
        "total_emissivity",
        ends[0].typical + share * (ends[1].typical - ends[0].typical),
        "1",
        ends,
        data,
        ends=(values[0], values[1]),
        key={**ends[0].key, "temperature": wanted},
        conditions=f"between the printed points at {ends[0].key['temperature']} and {ends[1].key['temperature']}",
    )
