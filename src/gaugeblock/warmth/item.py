"""One line material, hose class, fluid or fuel of the tables: what was typed -> its rows and figures."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.errors import Ambiguous, LookupMiss, Offers
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Row

TABLES = ("lines/materials", "lines/fluids", "lines/fuels")

# What is said of how hot it may get, the one that governs first. Which of them are limits, and which inform only,
# stands
# in quantities.csv.
JUDGES = (
    "temperature_maximum",
    "boiling_point_minimum",
    "vapour_lock_temperature_minimum",
    "vapour_lock_temperature",
    "boiling_point",
    "oxidation_temperature_maximum",
    "storage_temperature_maximum",
)
# All else that is an answer about heat or pressure, in the order it is printed.
ANSWERS = (
    *JUDGES,
    "rust_protection_temperature_maximum",
    "temperature_minimum",
    "temperature_rating_minimum",
    "melting_temperature_minimum",
    "working_pressure_maximum",
    "burst_pressure_minimum",
    "proof_pressure_minimum",
    "pressure_rating_minimum",
    "service_pressure_class",
    "tensile_strength",
    "yield_strength",
    "vapour_pressure",
    "vapour_pressure_maximum",
    "vapour_pressure_allowance",
    "distillation_10",
    "distillation_10_maximum",
    "distillation_50_minimum",
    "distillation_50_maximum",
    "distillation_90_maximum",
    "evaporated_at_70_degc",
    "evaporated_at_100_degc",
    "evaporated_at_150_degc_minimum",
    "final_boiling_point_maximum",
    "ethanol_content",
    "flash_point",
    "autoignition_temperature",
    "hot_surface_ignition_temperature",
    "thermal_conductivity",
    "heat_ageing_test_temperature",
    "bend_radius_minimum",
    "wall_minimum",
)
EXPANSION_JOINT = "expansion joint"  # its figures are of joints in air, and judge no hose
OPEN_STATES = ("any", "not stated")  # what answers when no state is asked

_EVERYDAY = ("fuel hose", "hydraulic brake hose", "DOT 4", "gasoline", "PTFE")


class Item(Value):
    """One line material, fluid or fuel with the class and state that were asked; its figures, the governing one first.

    ``figures`` is empty where nothing is published for heat or pressure, and where the answer depends on a class or
    state that was not asked: ``open_key`` names it, and ``choices`` are its cells.
    """

    __slots__ = ("_choices", "_figures", "_is_class_taken", "_open_key", "cell", "data", "klass", "state", "table")

    table: str
    cell: str
    klass: str | None
    state: str | None
    data: Refdata
    _figures: tuple[Figure, ...]
    _open_key: str
    _choices: tuple[str, ...]
    _is_class_taken: bool

    def __init__(self, table: str, cell: str, klass: str | None, state: str | None, data: Refdata) -> None:
        put(self, "data", data)
        put(self, "table", table)
        put(self, "cell", cell)
        put(self, "klass", klass)
        put(self, "state", state)
        put(self, "_is_class_taken", False)
        put(self, "_open_key", "")
        put(self, "_choices", ())
        put(self, "_figures", tuple(self._answers()))

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All that is published of it for heat and pressure, the governing one first."""
        return self._figures

    @property
    def open_key(self) -> str:
        """``class`` or ``state`` where the answer depends on one that was not asked; else blank."""
        return self._open_key

    @property
    def choices(self) -> tuple[str, ...]:
        """The cells of the open key."""
        return self._choices

    @property
    def is_class_taken(self) -> bool:
        """Whether the class is the only one there is, and was not asked."""
        return self._is_class_taken

    @property
    def rows(self) -> list[Row]:
        """All rows of the item."""
        return rows_of(self.table, self.cell, self.data)

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
        return [r for r in self.rows if not r.standing and r["quantity"] in quantities]

    @property
    def _classes(self) -> tuple[str | None, ...]:
        return (None, "any") if self.klass is None else (self.klass, "any")

    def _answers(self) -> list[Figure]:
        rows = self._rows(*ANSWERS)
        if self.klass is None and rows and "class" in rows[0].cells and all(r["class"] != "any" for r in rows):
            named = list(dict.fromkeys(r["class"] for r in rows))
            if len(named) > 1 or named[0] == EXPANSION_JOINT:
                return self._depends_on("class", named)
            put(self, "klass", named[0])
            put(self, "_is_class_taken", True)
        got = [f for q in dict.fromkeys(ANSWERS) if self._rows(q) and (f := self.look_up(q)) is not None]
        own = [f for f in got if self.state is None or f.key["state"] == self.state]
        got = own + [f for f in got if f not in own]
        if self.state is None:
            judging = [r for r in self._rows(*JUDGES) if r.cells.get("class") in self._classes]
            here = [r for r in rows if r.cells.get("class") in self._classes]
            if judging and not any(f.quantity in JUDGES for f in got):
                return self._depends_on("state", [r["state"] for r in judging])
            if here and not got:
                return self._depends_on("state", [r["state"] for r in here])
        return got

    def _depends_on(self, key: str, found: list[str]) -> list[Figure]:
        put(self, "_open_key", key)
        put(self, "_choices", tuple(dict.fromkeys(found)))
        return []

    def must_name(self) -> Ambiguous:
        """The refusal of an open key, with its choices."""
        do = f"name the {self.open_key}" + ("; a used fluid is wet" if "wet" in self.choices else "")
        why = f"the answer depends on the {self.open_key}"
        return Ambiguous(self.said, self.table, why, list(self.choices), do)

    def alternatives(self) -> tuple[tuple[str, Item], ...]:
        """What the item may be: each choice of an open key with its Item, the lowest limit first; only those that
        have one.
        """
        made = [(c, self.replace(**{_PARAMETER[self.open_key]: c})) for c in self.choices]
        flat = [(c, i) for c, i in made if not i.open_key] + [
            p for _, i in made if i.open_key for p in i.alternatives()
        ]
        ends = [(c, i, units.to_base(i.limit.least, i.limit.unit)) for c, i in flat if i.limit is not None]
        return tuple((c, i) for c, i, _ in sorted(ends, key=lambda end: end[2]))

    def nothing(self) -> LookupMiss:
        """That nothing is published, with the nearest items that have a limit."""
        judged = [r["item"] for r in self.data.table(self.table).rows if r["quantity"] in JUDGES]
        pool = list(dict.fromkeys(judged))

        def near() -> list[str]:
            return [n for n in _offers(self.cell, {p: p for p in pool}, pool, "item", self.data) if n != self.cell]

        why = "no published source for a heat or pressure limit"
        return LookupMiss(self.said, self.table, why, near, "ask the maker of the part")

    @property
    def said(self) -> str:
        """The item as a person reads it: its name, class and state."""
        return ", ".join(p for p in (self.cell, self.klass, self.state) if p)

    @property
    def limit(self) -> Figure | None:
        """The figure that a temperature must keep under; None where no limit is published. A range of information is
        none.
        """
        return next((f for f in self.figures if f.quantity in JUDGES and is_limit(f, self.data)), None)

    @property
    def informs(self) -> Figure | None:
        """What is said of its boiling or vapour without being a limit; None where nothing is."""
        return next((f for f in self.figures if f.quantity in JUDGES and not is_limit(f, self.data)), None)

    def stricter(self, figure: Figure) -> list[Figure]:
        """Figures as living as the governing one that may be stricter: of its specificity, or for a state its source
        left out.
        """
        more = list(lookup.same_specificity(figure)) if is_limit(figure, self.data) else []
        if figure.key.get("state") != "not stated":
            unsaid = [r for r in self.rows if r["quantity"] == figure.quantity and r["state"] == "not stated"]
            more += [
                lookup.figure_of(r, self.data) for r in unsaid if r.cells.get("class", "any") == (self.klass or "any")
            ]
        return more


_PARAMETER = {"class": "klass", "state": "state"}


def is_limit(figure: Figure, data: Refdata) -> bool:
    """Whether a figure's quantity may decide: what informs only does not."""
    return data.quantity(figure.quantity)["may"] == "limit"


def rows_of(table: str, cell: str, data: Refdata) -> list[Row]:
    """The rows of one item."""
    memo = ("rows of an item", table, cell)
    got = data._memo.get(memo)
    if got is None:
        at = data.table(table).names.index("item")
        got = data._memo[memo] = [r for r in data.table(table).rows if r.key[at] == cell]
    return got  # type: ignore[return-value]


def item_of(typed: str, klass: str | None, state: str | None, data: Refdata) -> Item:
    """The Item that was typed; LookupMiss with the nearest items, classes or states, Ambiguous where one is missing."""
    table, cell, named = item_cell(typed, data)
    typed_class = klass or named
    own_class = None if typed_class is None else class_cell(table, cell, typed_class, data)
    return Item(table, cell, own_class, None if state is None else own_cell(table, cell, "state", state, data), data)


def class_cell(table: str, cell: str, typed: str, data: Refdata) -> str:
    """The class of a material that was typed; LookupMiss names its own, or that a fluid has none."""
    if table != "lines/materials":
        why = "a fluid or fuel has a state, not a class"
        raise LookupMiss(typed, f"{table} {cell}", why, (), "leave the class out")
    return own_cell(table, cell, "class", typed, data)


def own_cell(table: str, item: str, column: str, typed: str, data: Refdata) -> str:
    """The cell of a key of an item that was typed; LookupMiss names the item's own."""
    own = list(dict.fromkeys(r.cells[column] for r in rows_of(table, item, data)))
    folded = {cell.casefold(): cell for cell in own}
    text = " ".join(typed.split())
    cell = folded.get(text.casefold()) or data.words("lines", column).get(text.casefold())
    if cell is None and column == "class":
        ends = [c for c in own if c.casefold().endswith(f" {text.casefold()}")]
        cell = ends[0] if len(ends) == 1 else None
    if cell in own:
        return str(cell)
    real = sorted((c for c in own if c != "any"), key=lambda c: c[:1].isdigit() or c[:1] == "-")
    where = f"{table} {column}"
    if not real:
        raise LookupMiss(typed, where, f"{item} has no {column} of its own", (), f"leave the {column} out")
    spoken = {w: c for w, c in data.words("lines", column).items() if c in real}
    near = _offers(text, {**spoken, **{c: c for c in real}}, real, column, data)
    raise LookupMiss(typed, where, f"not a {column} of {item}", near, "use one of these, or ask the maker")


def item_cell(typed: str, data: Refdata) -> tuple[str, str, str | None]:
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
    words = data.words("lines", "item")
    known = {c: c for c in (*cells, *classes.values()) if c != "any"}
    spoken = {w: c for w, c in words.items() if c in known}
    near = _offers(text, {**spoken, **known}, _EVERYDAY, "item", data)
    if words.get(text.casefold()) is not None:
        why = "a wire, not a line or fluid"
        raise LookupMiss(typed, "lines item", why, near, "search it with find")
    raise LookupMiss(
        typed,
        "lines item",
        "not a line material, hose class, fluid or fuel of the tables",
        near,
        "use one of these, or ask the maker",
    )


def _offers(text: str, choices: dict[str, str], rest: Iterable[str], column: str, data: Refdata) -> Offers:
    from gaugeblock.tables.near import offers

    return offers(text, choices, rest, column=f"lines {column}", data=data)


def table_of(typed: str, data: Refdata) -> str:
    """The table that an item typed is of: ``lines/materials``, ``lines/fluids`` or ``lines/fuels``."""
    return item_cell(typed, data)[0]
