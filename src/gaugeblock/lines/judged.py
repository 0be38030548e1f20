"""What the temperature of a line is judged by: the limits of its material and of its fluid."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.errors import Ambiguous
from gaugeblock.figure import Figure
from gaugeblock.lines import parts as line_parts
from gaugeblock.lines.cautions import is_brake_fluid
from gaugeblock.lines.found import Found
from gaugeblock.lines.heat import CLOSE, beside, convert, is_close, judge
from gaugeblock.lines.item import EXPANSION_JOINT, Item, class_cell, item_cell, own_cell

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.lines.words import Words

NO_BAND = "the inputs are single numbers, so the estimate has no band: give them as ranges, or measure on the car"


MATERIAL, FLUID = "line material's limit", "fluid's limit"


class Judged:
    """What the temperature of a line is judged by: its material and its fluid, each an Item or the reason why not."""

    __slots__ = ("cannot", "cautions", "data", "fluid_cell", "items", "material_cell", "strength")

    def __init__(self, words: Words) -> None:
        self.data = words.data
        self.items: list[tuple[str, Item]] = []
        self.cannot: list[Check] = []
        self.cautions: list[Caution] = []
        self.strength: Figure | None = None
        self.material_cell: str | None = None
        self.fluid_cell: str | None = None
        self._material(words)
        self._fluid(words)

    def _open(self, name: str, why: str) -> None:
        self.cannot.append(Check(name, CANNOT_TELL, why, subject=name, bears=ASK))

    def _material(self, words: Words) -> None:
        key = "material" if words.line.has("material") else "class"
        if not words.line.has(key):
            if words.line.has("service") or not words.line.has("fluid"):
                self._open(MATERIAL, "the material or class of the line is not given")
            return
        item = self._item(words, MATERIAL, key, "class" if key == "material" else "", "state")
        if item is not None and item.figures:
            self.material_cell = item.cell
            self.strength = next((f for f in item.figures if f.quantity == "yield_strength"), None)
        metal = self.material_cell is not None and line_parts.is_metal(self.material_cell)
        if self.strength is None and self.material_cell is not None and metal:
            self.strength = line_parts.tube_yield(self.material_cell, self.data)
        if metal and (item is None or item.judge is None):
            self.cannot = [c for c in self.cannot if c.name != MATERIAL]
            text = f"No limit of temperature is published for {self.material_cell}: the fluid in it is judged, and coatings give out first."
            self.cautions.append(Caution(text, "note", (), "refdata"))
        elif item is not None and item.figures:
            self.items.append((MATERIAL, item))

    def _fluid(self, words: Words) -> None:
        typed = words.line.word("fluid")
        if typed is None:
            if words.line.has("service") or not (words.line.has("material") or words.line.has("class")):
                self._open(FLUID, "the fluid is not given")
            return
        cell = self.data.words("lines", "item").get(" ".join(typed.casefold().split()), typed)
        wet = is_brake_fluid(cell) and any(
            r["item"] == cell and r["state"] == "wet" for r in self.data.table("lines/fluids").rows
        )
        if wet and not words.line.has("fluid_state"):
            text = f"{cell} is judged by its wet boiling point: every fluid in use draws water."
            self.cautions.append(Caution(text, "injury", (), "refdata"))
        item = self._item(words, FLUID, "fluid", "", "fluid_state", "wet" if wet else None)
        if item is not None and item.figures:
            self.fluid_cell = item.cell
            self.items.append((FLUID, item))

    def _item(
        self, words: Words, name: str, key: str, class_key: str, state_key: str, usual: str | None = None
    ) -> Item | None:
        """The Item of a key with its class and state; None where a word cannot be read or a choice is open."""
        try:
            place = words.read(key, lambda typed: item_cell(typed, self.data))
            if place is None:
                return None
            table, cell, klass = place
            if class_key:
                klass = words.read(class_key, lambda typed: class_cell(table, cell, typed, self.data)) or klass
            state = words.read(state_key, lambda typed: own_cell(table, cell, "state", typed, self.data))
            item = Item(table, cell, klass, state or usual, self.data)
        except Ambiguous as choice:
            self._open(name, f"{choice.why}: {', '.join(choice.nearest)}")
            return None
        if not item.figures:
            if name == MATERIAL:
                self.material_cell = item.cell
            self._open(name, f"no limit of temperature is published for {item.cell}")
        return item

    @property
    def fluid(self) -> Item | None:
        """The fluid, where it is one of the tables."""
        return next((item for name, item in self.items if name == FLUID), None)

    def measured(self, at: Figure, read_by: str | None) -> list[Check]:
        """The checks of a measured temperature; what an infra-red gun reads is never enough for an ``ok``."""
        out = list(self.cannot)
        for name, item in self.items:
            for found in judge(item, at):
                about = name if found.name == "temperature within the limit" else found.name
                check = found.replace(name=f"measured: {about}", subject=about, case="measured")
                if read_by == "infra-red" and check.result == OK:
                    low = "an infra-red gun reads low on bright metal: read it again by crayon, paint or thermocouple"
                    check = check.replace(result=CANNOT_TELL, reason=f"{check.reason}; {low}")
                out.append(check)
        return out

    def band(self, figure: Figure, case: str) -> list[Check]:
        """The checks of an estimate: ok with its whole band and a reading's margin, not ok with its likely value, else cannot tell.

        Inputs without a range give no band, and never an ok.
        """
        return [self._in_band(name, item, figure, case) for name, item in self.items]

    def _in_band(self, name: str, item: Item, figure: Figure, case: str) -> Check:
        limit, title, unit = item.judge, f"{case}: {name}", figure.unit
        if limit is None:
            why = f"no limit of temperature is published for {item.cell}"
            return Check(title, CANNOT_TELL, why, subject=name, case=case, bears=INFORM)
        end = _least(limit, unit)
        strictest = min([end, *(_least(f, unit) for f in item.stricter(limit))])
        low, likely = figure.low or 0.0, figure.typical
        high = figure.high if figure.high is not None else likely
        said = f"{likely:.0f} {unit} ({low:.0f} to {high:.0f}) estimated, {beside(limit, unit, self.data)} {item.cell}"
        result = CANNOT_TELL
        if item.klass == EXPANSION_JOINT:
            said += ": an expansion joint's figure does not judge a hose"
        elif limit.quantity == "boiling_point" and high > end and likely <= _top(limit, unit):
            said += " boiling range at one atmosphere: pressure in the line and the blend decide"
        elif likely > end:
            result = NOT_OK
        elif high > strictest:
            said += ": the band or another living figure passes it: measure on the car"
        elif not low < high:
            said += f": {NO_BAND}"
        elif is_close(strictest, high, unit):
            said += f": at the top of the band under {CLOSE} is left: measure on the car"
        else:
            result = OK
        required, actual = Bound(end, unit, "max", limit), Bound(high, unit, figure=figure)
        margin = (end - high) / end if end else None
        return Check(title, result, said, required, actual, margin, subject=name, case=case)

    def untested(self) -> Found:
        """The limits themselves where there is no temperature to hold against them, neither read nor estimated."""
        figures, checks = [], []
        for name, item in self.items:
            limit = item.judge
            if limit is not None:
                figures.append(limit)
                said = (
                    f"{number_only(limit, self.data)} for {item.cell}; no temperature is measured or can be estimated"
                )
                bound = Bound(limit.least, limit.unit, "max", limit)
                checks.append(Check(name, CANNOT_TELL, said, bound, subject=name, bears=ASK))
        return Found(figures, checks)

    def lowest_limit_k(self) -> tuple[float, Figure] | None:
        """The lowest living limit in K with its figure; None where nothing judges (a boiling range is no limit)."""
        ends = []
        for _, item in self.items:
            if item.judge is not None and item.klass != EXPANSION_JOINT and item.judge.quantity != "boiling_point":
                living = (item.judge, *item.stricter(item.judge))
                ends += [(units.to_base(_low(f), f.unit), f) for f in living]
        return min(ends, key=lambda pair: pair[0]) if ends else None


def _low(figure: Figure) -> float:
    return figure.low if figure.low is not None else figure.typical


def _least(figure: Figure, unit: str) -> float:
    """The lowest of a figure, in ``unit``."""
    return convert(_low(figure), figure.unit, unit)


def _top(figure: Figure, unit: str) -> float:
    """The highest of a figure, in ``unit``."""
    return convert(figure.high if figure.high is not None else figure.typical, figure.unit, unit)
