"""What people type for a tube - material, size, wall, radius - -> key cells and measures. Nothing is guessed."""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import lookup, units
from gaugeblock.answer.making import stated
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata, Row

# Compiled by re when first used: a look-up needs few of them.
_PIPE = r"(?i)\b(?:pipe|nps|sch(?:edule)?\.?)\b|\bsch[0-9]"
_GAUGE = r"(?i)(?P<number>#?[0-9]{1,2})[ -]?(?:ga|gage|gauge|awg|bwg|msg)?\b\.?.*"
_NAMED = r"(?i)\b(?:ga|gage|gauge|awg|bwg|msg)\b|[0-9]ga\b|#"
COLUMNS = ("family", "material", "product", "condition", "spec")
_BLANK = ("any", "not stated")
NOTHING = Fraction(0)
MEASURED_TO = ("centre line", "inside")
_INSIDE = ("inside", "inside radius", "inner radius")
_WELDED = ("welded", "as welded")
_OF_A_TEMPER = ("yield_strength", "tensile_strength", "elongation")


class Stock(Value):
    """What is known of a tube's metal: cells of tubes/materials, None where it was not said."""

    __slots__ = ("condition", "family", "material", "product", "spec", "typed")

    typed: str
    family: str
    material: str | None
    product: str | None
    condition: str | None
    spec: str | None

    def __init__(
        self,
        typed: str,
        family: str,
        material: str | None = None,
        product: str | None = None,
        condition: str | None = None,
        spec: str | None = None,
    ) -> None:
        put(self, "typed", typed)
        put(self, "family", family)
        put(self, "material", material)
        put(self, "product", product)
        put(self, "condition", condition)
        put(self, "spec", spec)

    @property
    def is_graded(self) -> bool:
        """Whether a grade was named, of the tables or not."""
        return self.material is not None or self.product is not None or any(c.isdigit() for c in self.typed)

    @property
    def label(self) -> str:
        """The known cells as one text."""
        parts = (self.material or self.family, self.product, self.condition, self.spec)
        return " ".join(p for p in parts if p)


class Radius(Value):
    """The radius of a bend: as typed, what it was measured to, and its exact centre-line value in metres."""

    __slots__ = ("centre_m", "measured_to", "typed")

    typed: Figure
    centre_m: Fraction
    measured_to: str

    def __init__(self, typed: Figure, centre_m: Fraction, measured_to: str) -> None:
        put(self, "typed", typed)
        put(self, "centre_m", centre_m)
        put(self, "measured_to", measured_to)

    @property
    def plain(self) -> Radius:
        """The same of no item: what the sheet of a bend says is not of one tube."""
        typed = self.typed
        return self.replace(
            typed=typed.replace(id=f"stated:|radius:{typed.text} {typed.unit}", locator="radius", key={})
        )


def phrases(data: Refdata) -> dict[str, dict[str, str]]:
    """Every listed word and cell -> the columns it fills."""
    got = data._memo.get("tube phrases")
    if got is None:
        found: dict[str, dict[str, str]] = {}
        table = data.table("tubes/materials")
        names = [k.name for k in table.keys]
        places = [(c, names.index(c)) for c in COLUMNS]
        for key in dict.fromkeys(tuple(row.key[at] for _, at in places) for row in table.rows):
            cells = dict(zip(COLUMNS, key, strict=True))
            for column in COLUMNS[1:]:
                cell = cells[column]
                if cell not in _BLANK:
                    found.setdefault(cell.casefold(), {})[column] = cell
            if cells["material"] not in _BLANK:
                found[cells["material"].casefold()]["family"] = cells["family"]
            found.setdefault(cells["family"].casefold(), {})["family"] = cells["family"]
        for column in COLUMNS:
            for word, cell in data.words("tubes", column).items():
                found.setdefault(word, {}).setdefault(column, cell)
        got = data._memo["tube phrases"] = found
    return got  # type: ignore[return-value]


def stock(
    material: str, data: Refdata, product: str | None = None, condition: str | None = None, spec: str | None = None
) -> Stock:
    """The Stock of what was typed: ``1020 DOM as drawn``, ``4130 normalized``, ``304``, ``mild steel``.

    >>> from gaugeblock.tables.load import refdata
    >>> stock("1020 DOM", refdata()).product
    'DOM tube'
    """
    cells: dict[str, str] = {}
    for typed, where in ((material, "material"), (product, "product"), (condition, "condition"), (spec, "spec")):
        if typed is not None:
            for column, cell in _read(typed, where, data).items():
                if cells.setdefault(column, cell) != cell:
                    raise _of_both(typed, where, column, cells[column], cell)
    if "family" not in cells:
        from gaugeblock.tables.near import of_these

        pool = [w for w, c in phrases(data).items() if "family" in c]
        raise LookupMiss(
            material,
            "material",
            "no metal is named",
            of_these(material, pool, families(data)),
            "name the metal, as 1020 DOM or steel",
        )
    family = cells["family"]
    if family == "aluminum alloy" and "welded" in cells.get("product", ""):
        cells["condition"] = "welded"  # no aluminium tube is guaranteed with its seam
    if cells.get("product") not in lookup.choices("tubes/materials", "product", data=data, family=family):
        cells.pop("product", None)  # `tube` alone says nothing of how it was made
    return Stock(" ".join(t for t in (material, product, condition, spec) if t), **cells)


def materials_of(family: str, data: Refdata) -> list[str]:
    """The material cells of one family."""
    return lookup.choices("tubes/materials", "material", data=data, family=family)


def families(data: Refdata) -> list[str]:
    """The families of metal in tubes/materials."""
    return list(data.table("tubes/materials").column("family").values())


def _read(typed: str, where: str, data: Refdata) -> dict[str, str]:
    known = phrases(data)
    words = typed.casefold().replace(",", " ").split()
    cells: dict[str, str] = {}
    at = 0
    while at < len(words):
        for end in range(len(words), at, -1):
            found = known.get(" ".join(words[at:end]))
            if found is not None:
                for column, cell in found.items():
                    own = _narrower(cells.get(column, ""), cell) if column == "product" else ""
                    if own:
                        cells[column] = own
                    elif cells.setdefault(column, cell) != cell:
                        raise _of_both(typed, where, column, cells[column], cell)
                at = end
                break
        else:
            from gaugeblock.tables.near import of_these

            near = of_these(" ".join(words[at:]), list(known), ())
            near = near if near.near else of_these(words[at], list(known), families(data))
            why = f"{words[at]!r} is not a word of the tables"
            raise LookupMiss(typed, where, why, near, "use words of the tables, as 1020 DOM as drawn")
    return cells


def _of_both(typed: str, where: str, column: str, one: str, other: str) -> InputError:
    return InputError(typed, where, f"{column} is both {one} and {other}", (one, other), "name one of them")


def _narrower(first: str, second: str) -> str:
    """Of two products the one that says how a tube was made: of tube and DOM tube the DOM tube. Blank where both do."""
    own = [one for one, other in ((first, second), (second, first)) if other and one.endswith(f" {other}")]
    return own[0] if own else ""


def metres(measure: units.Measure) -> Fraction:
    """A length in metres, exactly."""
    return measure.value * units.factor(measure.unit)


def length(typed: str, where: str) -> units.Measure:
    """A length over zero."""
    measure = units.parse_measure(typed, "length", where)
    if measure.value <= 0:
        raise InputError(typed, where, "must be more than zero", (), "measure it")
    return measure


def size(typed: str, where: str, quantity: str, data: Refdata) -> units.Measure:
    """A size of a tube over zero; a bare number is read in the one unit in which such a tube exists (``1.75`` is
    inches).
    """
    number, unit = units.split_quantity(typed)
    if number and not unit:
        exact = units.parse_number(number, where)
        from gaugeblock.answer.plausible import is_plausible

        found = [units.Measure(exact, u, f"{number} {u}") for u in ("in", "mm")]
        fit = [m for m in found if is_plausible(m, quantity, data)]
        if len(fit) == 1:
            return fit[0]
    return length(typed, where)


def pipe_size(typed: str) -> str:
    """A nominal pipe size without the words around it: ``1-1/2 pipe``, ``NPS 2``."""
    return re.sub(_PIPE, " ", typed).strip() or typed


def outside_diameter(typed: str, data: Refdata) -> units.Measure:
    """The OD that was typed; a pipe size is refused with its true OD."""
    if re.search(_PIPE, typed):
        number = re.split(_PIPE, typed)[0].strip() or typed
        near: list[str] = []
        pipe = None
        if number in data.words("tubes", "nps") or number in data.table("tubes/pipe_sizes").column("nps"):
            pipe = lookup.look_up_or_none("tubes/pipe_sizes", "outside_diameter", data=data, nps=number)
        if pipe is not None:
            near = [f"{pipe.text} {pipe.unit}"]
        raise InputError(
            typed, "od", "a pipe size is a nominal bore, not an OD", near, "give the OD measured with a calliper"
        )
    return size(typed, "od", "tube_od", data)


def is_gauge(typed: str) -> bool:
    """Whether a wall is a gauge number: ``11 BWG``, ``16 ga``, ``#16``."""
    return re.search(_NAMED, typed) is not None


def wall(typed: str, data: Refdata) -> Figure:
    """The wall that was typed: a length, or a gauge with its system; a bare gauge is refused with its walls."""
    if is_gauge(typed):
        return gauge_wall(typed, None, data)
    return stated(size(typed, "wall", "tube_wall", data), "tube_wall", "wall", data)


def gauge_wall(typed: str, system: str | None, data: Refdata) -> Figure:
    """The wall of a gauge number in its system; Ambiguous with the walls there are when no system is named."""
    table = data.table("tubes/gauges")
    text = " ".join(typed.split())
    if system is None:
        for end in (text, re.sub(r"^#?[0-9]+[ -]?(?:ga|gage|gauge)?[ -]*", "", text, flags=re.IGNORECASE)):
            system = data.words("tubes", "system").get(end.casefold()) or table.column("system").get(end.casefold())
            if system is not None:
                break
    match = re.fullmatch(_GAUGE, text)
    number = data.words("tubes", "gauge").get(text.casefold()) or (match["number"].lstrip("#") if match else text)
    rows = [r for r in table.of("wall_thickness") if r["gauge"] == number and not r["standing"]]
    if system is None:
        if not rows:
            raise LookupMiss(
                typed,
                "gauge",
                "not a gauge number of the tables",
                sorted(table.column("gauge"), key=lambda g: (len(g), g)),
                "give the wall itself",
            )
        first = sorted(rows, key=lambda r: not r["conditions"].startswith("tube"))
        near = [f"{number} {r.cells['system']} ({r.cells['value']} {r.cells['unit']})" for r in first]
        raise Ambiguous(
            typed,
            "gauge",
            "a gauge number is a wall only with its system",
            near,
            "name the system, or give the wall itself",
        )
    return lookup.look_up("tubes/gauges", "wall_thickness", data=data, system=system, gauge=number)


def wall_figure(wall: units.Measure | str, data: Refdata) -> Figure:
    """The wall of a tube: a measure, or a gauge number with its system as text."""
    return stated(wall, "tube_wall", "wall", data) if isinstance(wall, units.Measure) else gauge_wall(wall, None, data)


def measure(wall: units.Measure | str) -> units.Measure:
    """A length that may still be text."""
    return wall if isinstance(wall, units.Measure) else length(wall, "wall")


def radius(typed: str, measured_to: str | None, od_m: Fraction, data: Refdata) -> Radius:
    """The radius as typed (``5 1/2 in inside``) of a tube of ``od_m`` metres."""
    text, to = radius_words(typed, measured_to, data)
    return radius_of(length(text, "radius"), to, od_m, data)


def radius_words(typed: str, measured_to: str | None, data: Refdata) -> tuple[str, str]:
    """The length in a typed radius, and what it was measured to: ``centre line`` or ``inside``."""
    # no row is measured to the inside, so it is no cell: it is how a die is measured
    words = {**data.words("tubes", "measured_to"), **dict.fromkeys(_INSIDE, "inside")}
    text = " ".join(typed.split())
    folded = text.casefold()
    for word, cell in sorted(words.items(), key=lambda item: -len(item[0])):
        if folded.endswith(" " + word):
            if measured_to is not None and words.get(measured_to.casefold()) != cell:
                why = f"measured to {cell} here and to {measured_to} beside it"
                raise InputError(typed, "radius", why, (), "say it once")
            measured_to, text = cell, text[: -len(word) - 1]
            break
    to = MEASURED_TO[0] if measured_to is None else words.get(measured_to.casefold(), "")
    if to not in MEASURED_TO:
        why = "not a way to measure a radius"
        raise InputError(measured_to or typed, "measured to", why, MEASURED_TO, "use one of these")
    return text, to


def radius_of(
    measure: units.Measure, to: str, od_m: Fraction, data: Refdata, where: str = "radius", owner: str = ""
) -> Radius:
    """The Radius of a measure; InputError where it leaves nothing inside the bend."""
    half = od_m / 2
    centre = metres(measure) + (0 if to == "centre line" else half)
    if centre <= half:
        why = "a centre-line radius is more than half the OD"
        raise InputError(measure.text, "radius", why, (), "check what the radius is measured to")
    quantity = "centre_line_radius" if to == "centre line" else "inside_radius"
    key = {"tube": owner} if owner else None
    return Radius(stated(measure, quantity, where, data, owner=owner, key=key), centre, to)


def maker_radius(typed: str, source: str | None, data: Refdata) -> Figure:
    """The least radius that the bender's maker gives for a tube; GIVEN where it is not said whose sheet says so."""
    return maker_radius_of(length(typed, "maker radius"), source, data)


def maker_radius_of(measure: units.Measure, source: str | None, data: Refdata, owner: str = "") -> Figure:
    """As ``maker_radius``, of a measure."""
    made = stated(measure, "bend_radius_minimum", "maker radius", data, owner=owner, conditions="the bender's maker")
    return made if not source else made.replace(basis="maker", source=source, locator="the sheet named")


def is_softened_by_a_weld(found: Stock) -> bool:
    """Whether it is aluminium beside a weld, that has lost its temper: what is guaranteed is of no weld."""
    return found.family == "aluminum alloy" and found.condition in _WELDED


def rows_of(found: Stock, quantity: str, od: Fraction | None, wall_m: Fraction | None, data: Refdata) -> list[Row]:
    """The living rows of tubes/materials that fit what is known; those of exactly the product before those of any."""
    from gaugeblock.tables.interval import parse_interval

    is_softened = is_softened_by_a_weld(found) and quantity in _OF_A_TEMPER

    def fits(row: Row, column: str, want: str | None) -> bool:
        return want is None or row.cells[column] in (want, *(() if is_softened and column == "condition" else ("any",)))

    def inside(row: Row, column: str, want: Fraction | None) -> bool:
        interval = parse_interval(row.cells[column])
        return interval is None or (want is not None and interval.holds(want))

    rows = [
        r
        for r in data.table("tubes/materials").by_quantity.get(quantity, [])
        if r["family"] == found.family and not r["standing"] and all(fits(r, c, getattr(found, c)) for c in COLUMNS[1:])
    ]
    exact = [r for r in rows if r["product"] == found.product]
    return [r for r in exact or rows if inside(r, "od", od) and inside(r, "wall", wall_m)]


def labels(found: Stock, data: Refdata) -> list[str]:
    """The kinds of this metal that the tables have, as one text each."""
    rows = [r for r in data.table("tubes/materials").rows if r["family"] == found.family]
    near = [r for r in rows if r["material"] == found.material] or rows
    return list(dict.fromkeys(" ".join(r.cells[c] for c in COLUMNS[1:] if r.cells[c] not in _BLANK) for r in near))
