"""Box: area, section modulus, second moment and mass of a square or rectangular tube."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.needs import together
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import keys
from gaugeblock.tubes.section import density_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.units import Measure

FACTS = {
    "section modulus": ("section_modulus",),
    "mass": ("tube_mass", "mass_per_length"),
    "second moment": ("second_moment",),
    "area": ("section_area",),
}
_UNNAMED = "hangs on the metal: name it"
_SIDES = ("height", "width")


def box(
    size: str,
    wall: str | None = None,
    *,
    material: str | None = None,
    length: str | None = None,
    span: str | None = None,
    load: str | None = None,
    fact: str = "section modulus",
    data: Refdata | None = None,
) -> Sheet:
    """Area, section modulus, second moment and mass of a square or rectangular tube.

    Parameters are text as people write them: ``size`` its sides, the one that stands upright under the load first
    (``3 x 2 in``), with the wall behind them (``3 x 2 x 3/16 in``) or apart in ``wall`` (``.120 in``); ``material``
    gives the density, ``length`` the mass of the piece; with a ``load`` (``200 kg``) in the middle of a ``span`` (``1.5
    m``) the stress and the sag stand first.

    Returns a Sheet whose decision is the ``fact``: ``section modulus``, ``mass`` (which needs a material), ``second
    moment`` or ``area``. Its outside corners are taken as round by twice the wall, as the steel tables do; the wall is
    the one that was given: tube of structural steel may be made 7 % thinner. Raises InputError, UnitError or LookupMiss
    for what cannot be read. Source: elementary beam theory.

    >>> round(box("2 x 2 in", ".116 in").decision.figure.typical, 3)
    0.486
    """
    data = data or refdata()
    asked = {
        "size": size,
        "wall": wall,
        "material": material,
        "length": length,
        "span": span,
        "load": load,
        "fact": fact,
    }
    together(asked, {"span": ("load",), "load": ("span",)})
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a section is called so", tuple(FACTS), "ask for one of these")
    sides, thick = _sized(size, wall, data)
    stock = keys.stock(material, data) if material else None
    long = stated(read_positive(length, "length", "length"), "length", "length", data) if length else None
    title = f"{sides['height'].text} x {sides['width'].text} x {thick.text} {thick.unit} box"
    title += f", {stock.label}: section" if stock is not None else ": section"
    doubts = _doubts(sides, thick, data)
    if doubts:
        checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=INFORM) for k, said in doubts.items()]
        questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
        decision = none("", next(iter(doubts.values())))
        return Sheet(title, asked, data, [], checks, (), decision=decision, questions=questions)
    figures = _section(sides, thick, data)
    density = None if stock is None else density_of(stock, data)
    if density is not None:
        figures += _mass(figures[2], density, long, sides["height"].unit == "in", data)
    wanted = next((f for q in FACTS[fact] for f in figures if f.quantity == q), None)
    if wanted is None:
        why = f"hangs on the metal: no density of {stock.label} is on record" if stock is not None else _UNNAMED
        decision = none("", f"The {fact} {why}.")
        return Sheet(title, asked, data, figures, [], (), decision=decision)
    do = "Loaded across its height. Corners round by twice the wall; no welds or holes in it." if fact != "mass" else ""
    ordered = [wanted, *(f for f in figures if f is not wanted)]
    section = Sheet(title, asked, data, ordered, [], (), decision=use("", wanted, do))
    if span is None or load is None:
        return section
    from gaugeblock.tubes.loaded_box import loaded

    return loaded(section, span, load, material, data)


def _sized(size: str, wall: str | None, data: Refdata) -> tuple[dict[str, Measure], Figure]:
    """The sides by name and the wall."""
    parts = [part.strip() for part in re.split(r"(?<=[0-9a-z. ])(?:x|by)(?=[0-9. ])", size.strip().casefold())]
    unit = re.search("[a-z]+$", parts[-1])
    texts = [part if re.search("[a-z]", part) or unit is None else f"{part} {unit[0]}" for part in parts]
    if len(texts) not in (2, 3):
        raise InputError(size, "size", "not two sides, nor two and a wall", (), "write it as 3 x 2 in")
    if len(texts) == 3 and wall is not None:
        raise InputError(wall, "wall", f"{size} has its wall already", (), "leave one of them out")
    thick = texts[2] if len(texts) == 3 else wall
    if not thick:
        raise Ambiguous(size, "wall", "the wall was not said", (), "write it as 3 x 2 x .120 in")
    sides = {name: keys.size(text, "size", f"box_{name}", data) for name, text in zip(_SIDES, texts, strict=False)}
    return sides, keys.wall(thick, data)


def _doubts(sides: dict[str, Measure], wall: Figure, data: Refdata) -> dict[str, str]:
    """What of the size is not plausible, by option."""
    out = {
        name: did_you_mean(f"{side.text} is no usual side of a box tube", ())
        for name, side in sides.items()
        if not is_plausible(side, f"box_{name}", data)
    }
    least = min(units.to_base(float(side.value), side.unit) for side in sides.values())
    if 4 * base(wall) > least * (1 + 1e-9):
        out["wall"] = did_you_mean(f"a wall of {wall.text} {wall.unit} fills the corners of that box", ())
    return out


def _section(sides: dict[str, Measure], wall: Figure, data: Refdata) -> list[Figure]:
    """Section modulus, second moment and area, with what was given."""
    height, width = (stated(sides[name], f"box_{name}", name, data) for name in _SIDES)
    inch = height.unit == "in"
    square, fourth, cube = ("in**2", "in**4", "in**3") if inch else ("mm**2", "mm**4", "mm**3")
    key = {"height": sides["height"].text, "width": sides["width"].text, "wall": f"{wall.text} {wall.unit}"}
    given = (height, width, wall)
    h, w, t = (base(f) for f in given)
    number = units.from_base(calc.box_area(h, w, t), square)
    area = derived("box_area", "section_area", number, square, given, data, key=key)
    number = units.from_base(calc.box_second_moment(h, w, t), fourth)
    second = derived("box_second_moment", "second_moment", number, fourth, given, data, key=key)
    number = units.from_base(2 * calc.box_second_moment(h, w, t) / h, cube)
    stiff = derived("box_section_modulus", "section_modulus", number, cube, (second, height), data, key=key)
    return [stiff, second, area, height, width, wall]


def _mass(area: Figure, density: Figure, long: Figure | None, inch: bool, data: Refdata) -> list[Figure]:
    """Mass of a foot or a metre, and of the piece."""
    unit, pound = ("lb/ft", "lb") if inch else ("kg/m", "kg")
    each = base(density) * base(area)
    key = {**area.key, **density.key}
    number = units.from_base(each, unit)
    out = [derived("tube_mass_per_length", "mass_per_length", number, unit, (density, area), data, key=key), density]
    if long is not None:
        number = units.from_base(each * base(long), pound)
        piece = {**key, "length": f"{long.text} {long.unit}"}
        out.insert(0, derived("tube_mass", "tube_mass", number, pound, (out[0], long), data, key=piece))
    return out
