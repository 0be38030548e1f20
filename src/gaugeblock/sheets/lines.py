"""Lines beside heat: what a line material, hose class, fluid or fuel stands, and whether a temperature is within it."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.sheets import line_cautions
from gaugeblock.sheets.printing import number_only
from gaugeblock.sheets.sheet import CANNOT_TELL, NOT_OK, OK, Bound, Check, Sheet, at_least, at_most
from gaugeblock.tables.load import Refdata, nearest, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Row

TABLES = ("lines/materials", "lines/fluids", "lines/fuels")

# Upper limits that judge a temperature, the one that governs first.
JUDGES = (
    "temperature_maximum", "boiling_point_minimum", "vapour_lock_temperature_minimum", "vapour_lock_temperature", "boiling_point",
    "oxidation_temperature_maximum", "storage_temperature_maximum",
)  # fmt: skip
# All else that is an answer about heat or pressure, in the order it is printed.
ANSWERS = (
    *JUDGES, "rust_protection_temperature_maximum", "temperature_minimum", "temperature_rating_minimum", "melting_temperature_minimum",
    "working_pressure_maximum", "burst_pressure_minimum", "proof_pressure_minimum", "pressure_rating_minimum",
    "service_pressure_class", "tensile_strength", "yield_strength", "vapour_pressure", "vapour_pressure_maximum",
    "vapour_pressure_allowance", "distillation_10", "distillation_10_maximum", "distillation_50_minimum", "distillation_50_maximum",
    "distillation_90_maximum", "evaporated_at_70_degc", "evaporated_at_100_degc", "evaporated_at_150_degc_minimum",
    "final_boiling_point_maximum", "ethanol_content", "flash_point", "autoignition_temperature", "hot_surface_ignition_temperature",
    "thermal_conductivity", "heat_ageing_test_temperature", "bend_radius_minimum", "wall_minimum",
)  # fmt: skip
OPEN_STATES = ("any", "not stated")  # what answers when no state is asked


class Item:
    """One line material, fluid or fuel with the class and state that were asked; its figures, the governing one first."""

    __slots__ = ("cell", "class_taken", "data", "figures", "klass", "rows", "state", "table")

    def __init__(self, typed: str, klass: str | None, state: str | None, data: Refdata) -> None:
        self.data = data
        self.table, self.cell, named = _item(typed, data)
        if named is not None and klass is None:
            klass = named
        self.rows = [r for r in data.table(self.table).rows if r["item"] == self.cell]
        self.klass = self._asked("class", klass) if "class" in self.rows[0].cells else None
        if klass is not None and self.klass is None:
            do = "leave the class out"
            raise LookupMiss(klass, f"{self.table} {self.cell}", "a fluid or fuel has a state, not a class", (), do)
        self.state = self._asked("state", state)
        self.class_taken = False
        self.figures = self._figures()

    def _asked(self, column: str, typed: str | None) -> str | None:
        """The cell of a key of this item, or None when it was not asked; LookupMiss names the item's own."""
        if typed is None:
            return None
        own = list(dict.fromkeys(r.cells[column] for r in self.rows))
        folded = {cell.casefold(): cell for cell in own}
        text = " ".join(typed.split())
        cell = folded.get(text.casefold()) or self.data.words("lines", column).get(text.casefold())
        if cell is None and column == "class":
            ends = [c for c in own if c.casefold().endswith(f" {text.casefold()}")]
            cell = ends[0] if len(ends) == 1 else None
        if cell in own:
            return cell
        real = [c for c in own if c != "any"]
        where = f"{self.table} {column}"
        if not real:
            raise LookupMiss(typed, where, f"{self.cell} has no {column} of its own", (), f"leave the {column} out")
        raise LookupMiss(
            typed,
            where,
            f"not a {column} of {self.cell}",
            nearest(text, real) or real,
            "use one of these, or ask the maker",
        )

    def look_up(self, quantity: str, state: str | None = None) -> Figure | None:
        """The governing figure of a quantity; None when no row answers.

        A state that was not asked is that of a row whose source gives none, else the only one this quantity has.
        """
        keys = {"item": self.cell, "state": state or self.state or self._only_state(quantity)}
        if self.table == "lines/materials":
            keys["class"] = self.klass or "any"
        return lookup.look_up_or_none(self.table, quantity, data=self.data, **keys)

    def _only_state(self, quantity: str) -> str:
        states = dict.fromkeys(r["state"] for r in self._rows(quantity) if r.cells.get("class") in self._classes)
        for state in OPEN_STATES:
            if state in states:
                return state
        return next(iter(states)) if len(states) == 1 else "any"

    def _rows(self, *quantities: str) -> list[Row]:
        return [r for r in self.rows if r["quantity"] in quantities and not r["standing"]]

    @property
    def _classes(self) -> tuple[str | None, ...]:
        return (None, "any") if self.klass is None else (self.klass, "any")

    def _figures(self) -> list[Figure]:
        rows = self._rows(*ANSWERS)
        if not rows:
            raise self._nothing()
        if self.klass is None and self.table == "lines/materials" and all(r["class"] != "any" for r in rows):
            named = list(dict.fromkeys(r["class"] for r in rows))
            if len(named) > 1 or named[0] == "expansion joint":
                raise self._must_name("class", named)
            self.klass, self.class_taken = named[0], True
        got = [f for q in dict.fromkeys(ANSWERS) if self._rows(q) and (f := self.look_up(q)) is not None]
        own = [f for f in got if self.state is None or f.key["state"] == self.state]
        got = own + [f for f in got if f not in own]
        here = [r for r in self._rows(*JUDGES) if r.cells.get("class") in self._classes]
        if self.state is None and here and not any(f.quantity in JUDGES for f in got):
            raise self._must_name("state", list(dict.fromkeys(r["state"] for r in here)))
        if not got:
            here = [r for r in rows if r.cells.get("class") in self._classes]
            if self.state is None and here:
                raise self._must_name("state", list(dict.fromkeys(r["state"] for r in here)))
            raise self._nothing()
        return got

    def _must_name(self, what: str, found: list[str]) -> Ambiguous:
        do = f"name the {what}" + ("; a used fluid is wet" if "wet" in found else "")
        return Ambiguous(self._said, self.table, f"the answer depends on the {what}", found, do)

    def _nothing(self) -> LookupMiss:
        judged = [r["item"] for r in self.data.table(self.table).rows if r["quantity"] in JUDGES]
        pool = list(dict.fromkeys(judged))

        def near() -> list[str]:
            return [n for n in dict.fromkeys([*nearest(self.cell, pool), *pool]) if n != self.cell]

        return LookupMiss(
            self._said,
            self.table,
            "no published source for a heat or pressure limit",
            near,
            "ask the maker of the part",
        )

    @property
    def _said(self) -> str:
        return ", ".join(p for p in (self.cell, self.klass, self.state) if p)

    @property
    def judge(self) -> Figure | None:
        """The figure that judges a temperature; None when no limit is published."""
        return next((f for f in self.figures if f.quantity in JUDGES), None)

    def stricter(self, figure: Figure) -> list[Figure]:
        """Figures as living as the governing one that may be stricter: of its specificity, or for a state its source left out."""
        more = list(lookup.same_specificity(figure))
        if figure.key.get("state") != "not stated":
            unsaid = [r for r in self.rows if r["quantity"] == figure.quantity and r["state"] == "not stated"]
            more += [
                lookup.figure_of(r, self.data) for r in unsaid if r.cells.get("class", "any") == (self.klass or "any")
            ]
        return more


def _item(typed: str, data: Refdata) -> tuple[str, str, str | None]:
    """Table, item cell and, where a hose class was typed for the item, the class cell."""
    text = " ".join(typed.split())
    cells: list[str] = []
    for table in TABLES:
        column = data.table(table).column("item")
        cell = column.get(text.casefold()) or data.words("lines", "item").get(text.casefold(), "")
        if cell.casefold() in column:
            return table, cell, None
        cells += column.values()
    classes = data.table("lines/materials").column("class")
    klass = classes.get(text.casefold()) or data.words("lines", "class").get(text.casefold())
    if klass is not None and klass != "any":
        homes = [r["item"] for r in data.table("lines/materials").rows if r["class"] == klass]
        found = list(dict.fromkeys(homes))
        if len(found) > 1:
            raise Ambiguous(
                typed, "lines/materials class", "a class of more than one item", found, "name the item and --class"
            )
        return "lines/materials", found[0], klass
    pool = dict.fromkeys([*cells, *data.words("lines", "item"), *(c for c in classes.values() if c != "any")])
    words = data.words("lines", "item")
    near = [words.get(n, n) for n in nearest(text, list(pool), 8)]
    known = {*cells, *classes.values()}
    if words.get(text.casefold()) is not None:
        why = "a wire, not a line or fluid"
        raise LookupMiss(typed, "lines item", why, near, "search it with find")
    near = list(dict.fromkeys(n for n in near if n in known)) or [
        "fuel hose",
        "hydraulic brake hose",
        "DOT 4",
        "gasoline",
        "PTFE",
    ]
    raise LookupMiss(
        typed,
        "lines item",
        "not a line material, hose class, fluid or fuel of the tables",
        near,
        "use one of these, or ask the maker",
    )


def table_of(typed: str, data: Refdata) -> str:
    """The table that an item typed is of: ``lines/materials``, ``lines/fluids`` or ``lines/fuels``."""
    return _item(typed, data)[0]


def heat(
    item: str,
    *,
    klass: str | None = None,
    state: str | None = None,
    at: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What a line material, hose class, fluid or fuel stands, and whether a temperature is within it.

    Parameters are text as people write them: ``item`` ``DOT 4``, ``PTFE``, ``SAE J30 R9``, ``gasoline``; ``klass`` the
    hose class (``SAE J2260``); ``state`` ``wet``, ``continuous``, ``3 % water``; ``at`` a temperature to judge (``120 degC``).

    Returns a Sheet: the limit that governs first, then all else that is published for heat and pressure. With ``at`` a
    check: ``ok``, ``not ok``, or ``cannot tell`` where a stricter living figure says otherwise, or where only a demand, a
    test temperature or an expansion joint's figure is known.

    Raises LookupMiss with the nearest items, Ambiguous with the classes or states the answer depends on.

    >>> heat("DOT 4", state="wet").figures[0].text
    '311'
    """
    data = data or refdata()
    found = Item(item, klass, state, data)
    asked = {"item": item, "class": klass, "state": state, "at": at}
    checks = [] if at is None else judge(found, stated_temperature(at))
    governs = found.figures[0].key["state"]
    title = ", ".join(
        p for p in (found.cell, found.klass, found.state or (governs if governs not in OPEN_STATES else "")) if p
    )
    return Sheet(
        title,
        asked,
        data,
        [_with_state(f, found.state) for f in found.figures],
        checks,
        line_cautions.cautions_of(found),
    )


def _with_state(figure: Figure, asked: str | None) -> Figure:
    """The figure with the state it is for among its conditions, where that is not what was asked."""
    state = figure.key["state"]
    if state in (asked, *OPEN_STATES):
        return figure
    return figure.replace(conditions="; ".join(p for p in (state, figure.conditions) if p))


def stated_temperature(at: str, where: str = "--at") -> Figure:
    """A temperature as the user states it, as a Figure."""
    measure = units.parse_measure(at, "temperature", where)
    return Figure(
        f"asked:{where.lstrip('-')}:{at}:temperature", "temperature", float(measure.value), measure.unit, side="nominal",
        basis="measured", checked="primary", source="as asked", locator=where.lstrip("-"), text=measure.text.rsplit(" ", 1)[0],
    )  # fmt: skip


def judge(found: Item, at: Figure) -> list[Check]:
    """The checks of one temperature against what the item stands."""
    limit = found.judge
    checks = [_upper(found, limit, at)]
    lowest = next((f for f in found.figures if f.quantity == "temperature_minimum"), None)
    if lowest is not None:
        end = convert(lowest.typical, lowest.unit, at.unit)
        reason = f"{at.text} {at.unit} asked, down to {number_only(lowest, found.data)} is stated"
        checks.append(
            at_least(
                "temperature over the lowest",
                Bound(at.typical, at.unit, figure=at),
                Bound(end, at.unit, "min", lowest),
                reason,
            )
        )
    if limit is not None and limit.quantity == "boiling_point_minimum" and limit.key["state"] == "dry":
        wet = found.look_up("boiling_point_minimum", "wet")
        if wet is not None:
            checks.append(_used(wet, at, found))
    return checks


def _end(figure: Figure, unit: str) -> float:
    """The lowest of a figure, in ``unit``: the end at which trouble may begin."""
    return convert(figure.low if figure.low is not None else figure.typical, figure.unit, unit)


def convert(value: float, unit: str, to: str) -> float:
    """A float of one unit in another of the same dimension."""
    return value if unit == to else units.from_base(units.to_base(value, unit), to)


def _upper(found: Item, limit: Figure | None, at: Figure) -> Check:
    name = "temperature within the limit"
    actual = Bound(at.typical, at.unit, figure=at)
    if limit is None:
        return Check(name, CANNOT_TELL, _no_limit(found), None, actual)
    end = _end(limit, at.unit)
    required = Bound(end, at.unit, "max", limit)
    what = f"{at.text} {at.unit} asked, {number_only(limit, found.data)} {_WORDS[limit.quantity]}"
    if found.klass == "expansion joint":
        reason = f"{what}, of an expansion joint in air: it informs, it does not judge a hose"
        return Check(name, CANNOT_TELL, reason, required, actual)
    check = at_most(name, actual, required, what)
    if (
        limit.quantity == "boiling_point"
        and check.result == NOT_OK
        and limit.high is not None
        and at.typical < convert(limit.high, limit.unit, at.unit)
    ):
        check.result = CANNOT_TELL
        check.reason = f"{what} at one atmosphere: part of it boils there; pressure in the line and the blend decide"
        return check
    strict = [f for f in found.stricter(limit) if at.typical > _end(f, at.unit) * (1 + 1e-9)]
    if check.result == OK and strict:
        worst = min(strict, key=lambda f: _end(f, at.unit))
        check.result = CANNOT_TELL
        check.reason = f"{what}, yet {number_only(worst, found.data)} by {worst.source or worst.basis}: ask the maker"
    elif check.result == OK and units.to_base(end, at.unit) - units.to_base(at.typical, at.unit) < _CLOSE_K:
        check.result = CANNOT_TELL
        check.reason = (
            f"{what}: under {_CLOSE_K:g} degC is left, no margin is published, and a reading is no better than that"
        )
    elif limit.basis == "common practice" or limit.checked == "memory":
        check.reason = (
            f"{what} ({'habit' if limit.basis == 'common practice' else 'from memory'}: read the marking on the part)"
        )
    return check


# A crayon or a thermocouple on a tube is good to about this; no published margin to a limit was found.
_CLOSE_K = 10.0

_WORDS = {
    "temperature_maximum": "is its limit",
    "boiling_point_minimum": "is the least it must reach before it boils",
    "vapour_lock_temperature_minimum": "is the least at which its class may turn to vapour at one atmosphere",
    "vapour_lock_temperature": "is where vapour forms",
    "boiling_point": "is its boiling range",
    "oxidation_temperature_maximum": "is its scaling limit",
    "storage_temperature_maximum": "is its storage limit",
}


def _no_limit(found: Item) -> str:
    there = {f.quantity for f in found.figures}
    if "heat_ageing_test_temperature" in there:
        return "only a heat-ageing test temperature is known: it classes the rubber and is never a service limit"
    if "temperature_rating_minimum" in there:
        return "only what a standard demands of such a line is known, not what the one in hand stands: read its marking"
    return "no limit of temperature is published for it: ask the maker"


def _used(wet: Figure, at: Figure, found: Item) -> Check:
    end = _end(wet, at.unit)
    what = f"{number_only(wet, found.data)} governs once the fluid has drawn water"
    result, reason = (
        (OK, what)
        if at.typical <= end * (1 + 1e-9)
        else (CANNOT_TELL, f"{what}: the dry figure holds for new fluid only")
    )
    return Check(
        "temperature within the wet boiling point",
        result,
        reason,
        Bound(end, at.unit, "max", wet),
        Bound(at.typical, at.unit, figure=at),
    )
