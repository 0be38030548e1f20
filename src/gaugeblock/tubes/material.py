"""Material: what a tube's metal guarantees, and what is typical of it."""

from __future__ import annotations

import re

from gaugeblock import lookup
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys, sized
from gaugeblock.tubes.rules import rules_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Row

_TEMPER = re.compile(r"[ -](?:t[1-9]|h[1-9])[0-9]*\b", re.IGNORECASE)
_GUARANTEED = ("yield_strength", "tensile_strength", "elongation", "yield_strength_design", "tensile_strength_design")
# What may be asked of a metal, by the guaranteed quantity that is it.
_FACTS = {name.replace("_", " "): (name, f"{name}_design") for name in _GUARANTEED[:3]}
_TYPICAL = ("yield_strength_typical", "tensile_strength_typical", "elongation_typical", "modulus", "density")


def _material_topic() -> Topic:
    from gaugeblock.tubes.material_ask import MATERIAL

    return MATERIAL


@opens(_material_topic, "material")
def material(
    material: str,
    *,
    product: str | None = None,
    condition: str | None = None,
    spec: str | None = None,
    od: str | None = None,
    wall: str | None = None,
    fact: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a tube metal guarantees, then what is typical of it; the two are never mixed.

    ``material`` ``1020 DOM as drawn`` (or ``product``, ``condition``, ``spec`` apart); ``od`` and ``wall`` where a
    specification steps by size; ``fact`` ``yield strength``, ``tensile strength`` or ``elongation`` for the one that is
    wanted first, ``burst`` for the pressure at which such a tube bursts.

    Raises Ambiguous with the choices when product, condition or spec decides, else
    LookupMiss.

    >>> material("1020 DOM as drawn").figure("elongation").text
    '5'
    >>> material("1020 DOM as drawn", fact="tensile strength").decision.figure.quantity
    'tensile_strength'
    """
    data = data or refdata()
    if fact == "burst":
        from gaugeblock.tubes.burst import burst

        if "soft" in material.casefold().split():
            why = "soft is no temper, and a tube bursts by its alloy and its temper"
            raise InputError(material, "material", why, (), "name both, as 5052-O or 3003-H14")
        own = {"product": product, "condition": condition, "spec": spec, "od": od, "wall": wall}
        return burst(material_of(material, own, data), od, wall, data)
    if fact is not None and fact not in _FACTS:
        raise InputError(fact, "fact", "nothing of a tube's metal is called so", (*_FACTS, "burst"), "leave it out")
    own = {"product": product, "condition": condition, "spec": spec, "od": od, "wall": wall}
    return material_of(material, own, data, fact)


def material_of(material: str, own: dict[str, str | None], data: Refdata, fact: str | None = None) -> Sheet:
    """As ``material``, of its strength alone."""
    product, condition, spec, od, wall = own.values()
    found = keys.stock(material, data, product, condition, spec)
    if found.material is None and found.product is None:
        names = [n for n in keys.materials_of(found.family, data) if n != "any"]
        if not names:
            families = keys.families(data)
            raise LookupMiss(
                material, "tubes/materials", f"no published source for {found.family}", families, "ask the maker"
            )
        # A number that was said is of an alloy: no other alloy is offered beside it.
        numbers = re.findall(r"(?<![0-9])[0-9]{3,4}(?![0-9])", material)
        alloy = [n for n in names if any(number in n for number in numbers)]
        if numbers and (not alloy or _TEMPER.search(material)):
            why = "no published source for this alloy in this temper"
            raise LookupMiss(material, "tubes/materials", why, alloy, "use one of these, or ask the maker")
        raise Ambiguous(material, "material", "the grade is missing", alloy or names, "name the grade")
    od_m = None if od is None else _base(od, "od", data)
    wall_m = None if wall is None else _base(wall, "wall", data)
    figures = _figures(found, material, {"od": od, "wall": wall}, od_m, wall_m, data)
    if fact is not None:  # what is asked stands first
        figures.sort(key=lambda f: f.quantity not in _FACTS[fact])
    is_guaranteed = any(f.quantity in (_GUARANTEED if fact is None else _FACTS[fact]) for f in figures)
    sizes = [] if is_guaranteed else sized.sizes(found, data)
    if sizes and (od is None or wall is None):
        raise Ambiguous(material, "tubes/materials", "the answer depends on od and wall", sizes, "give od and wall")
    if not figures:
        near = keys.labels(found, data)
        why = "no published source for this metal in this condition"
        raise LookupMiss(material, "tubes/materials", why, near, "use one of these, or ask the maker")
    asked = {"material": material, "product": product, "condition": condition, "spec": spec, "od": od, "wall": wall}
    asked |= {} if fact is None else {"fact": fact}
    if is_guaranteed:
        checks, decision = [], use("", figures[0])
    else:
        wanted = f"a {fact or 'strength'}" if fact != "elongation" else "an elongation"
        why = f"no published source guarantees {wanted} of {found.label}: ask for the mill certificate"
        checks = [Check("guaranteed strength", CANNOT_TELL, why)]
        decision = none("", "Ask the supplier for the mill certificate: what is typical guarantees nothing.")
        if keys.is_softened_by_a_weld(found):
            why = f"{found.label} has lost its temper beside the weld, and no table here says what is left of it"
            checks = [Check("guaranteed strength", CANNOT_TELL, why)]
            decision = none("", f"{why[0].upper()}{why[1:]}: a code of welded aluminium has it.")
    cautions = [*_read_as(found, figures, data), *rules_of(data, *_subjects(found))]
    return Sheet(found.label, asked, data, figures, checks, cautions, decision=decision)


def _figures(
    found: keys.Stock,
    typed: str,
    sizes: dict[str, str | None],
    od_m: Fraction | None,
    wall_m: Fraction | None,
    data: Refdata,
) -> list[Figure]:
    """What is guaranteed of a metal, then what else is on record, then what is typical."""
    others = (q for q in data.table("tubes/materials").by_quantity if q not in (*_GUARANTEED, *_TYPICAL))
    out: list[Figure] = []
    for quantity in (*_GUARANTEED, *others, *_TYPICAL):
        rows = keys.rows_of(found, quantity, od_m, wall_m, data)
        named = [r for r in rows if r["spec"] != "not stated"] if found.spec is None else rows
        out += _one(typed, quantity, named or rows, sizes, data)
    return out


def _subjects(found: keys.Stock) -> list[str]:
    """The rules that belong to a metal."""
    subjects = ["free-machining or unknown tube"]
    if found.material == "4130":
        subjects.append("4130 normalized")
    if found.product == "DOM tube" and found.material == "1020":
        subjects.append("as-drawn DOM 1020")
    if found.product == "ERW tube":
        subjects.append("as-welded tube")
    return subjects


def _read_as(found: keys.Stock, figures: list[Figure], data: Refdata) -> list[Caution]:
    """What was not named and is taken as the only kind on record; and specifications that step by size, told beside
    it.
    """
    out = []
    first = next((f for f in figures if f.quantity in _GUARANTEED), None)
    if first is not None:
        taken = [f"{c} {first.key[c]}" for c in keys.COLUMNS[2:] if getattr(found, c) is None and first.key[c] != "any"]
        if taken:
            out.append(
                Caution(
                    f"Not named, taken as the only one on record: {', '.join(taken)}.", "note", (first.id,), "refdata"
                )
            )
    shown = {f.id for f in figures}
    apart = [f for f in sized.figures(found, data) if f.id not in shown]
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
    return keys.metres(keys.outside_diameter(typed, data) if where == "od" else keys.length(typed, where))


def _one(typed: str, quantity: str, rows: list[Row], sizes: dict[str, str | None], data: Refdata) -> list[Figure]:
    """The Figure of a quantity among rows of one kind; Ambiguous when they are of more kinds than what was typed
    can tell apart.
    """
    if not rows:
        return []
    kinds = list(dict.fromkeys(tuple(r.cells[c] for c in keys.COLUMNS) for r in rows))
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
    cells = dict(zip(keys.COLUMNS, best[0], strict=True))
    cells.update({k: v for k, v in sizes.items() if v is not None})
    got = lookup.look_up_or_none("tubes/materials", quantity, data=data, **cells)
    return [] if got is None else [got]
