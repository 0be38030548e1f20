"""What the temperature of a line is judged by: the limits of its material and of its fluid."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.lines import parts as line_parts
from gaugeblock.lines.cautions import is_brake_fluid
from gaugeblock.lines.heat import CLOSE, beside, convert, is_close, judge
from gaugeblock.lines.item import Item
from gaugeblock.tables.load import Refdata

NO_BAND = "the inputs are single numbers, so the estimate has no band: give them as ranges, or measure on the car"


class Judged:
    """What the temperature of a line is judged by: its material and its fluid, each an Item or the reason why not."""

    def __init__(
        self,
        material: str | None,
        klass: str | None,
        state: str | None,
        fluid: str | None,
        fluid_state: str | None,
        data: Refdata,
    ) -> None:
        self.data = data
        self.items: list[tuple[str, Item]] = []
        self.cannot: list[Check] = []
        self.cautions: list[Caution] = []
        self.strength: Figure | None = None
        self.material_cell: str | None = None
        self.fluid_cell: str | None = None
        self._material(material, klass, state)
        self._fluid(fluid, fluid_state)

    def _material(self, material: str | None, klass: str | None, state: str | None) -> None:
        name = "line material's limit"
        if material is None and klass is None:
            self.cannot.append(Check(name, CANNOT_TELL, "the material or class of the line is not given"))
            return
        item = self._item(name, material or klass or "", klass if material is not None else None, state)
        if item is not None:
            self.material_cell = item.cell
            self.strength = next((f for f in item.figures if f.quantity == "yield_strength"), None)
        metal = self.material_cell is not None and line_parts.is_metal(self.material_cell)
        if self.strength is None and self.material_cell is not None and metal:
            self.strength = line_parts.tube_yield(self.material_cell, self.data)
        if metal and (item is None or item.judge is None):
            self.cannot = [c for c in self.cannot if c.name != name]
            text = f"No limit of temperature is published for {self.material_cell}: the fluid in it is judged, and coatings give out first."
            self.cautions.append(Caution(text, "note", (), "refdata"))
        elif item is not None:
            self.items.append((name, item))

    def _fluid(self, fluid: str | None, state: str | None) -> None:
        name = "fluid's limit"
        if fluid is None:
            self.cannot.append(Check(name, CANNOT_TELL, "the fluid is not given"))
            return
        cell = self.data.words("lines", "item").get(" ".join(fluid.casefold().split()), fluid)
        wet = is_brake_fluid(cell) and any(
            r["item"] == cell and r["state"] == "wet" for r in self.data.table("lines/fluids").rows
        )
        if wet and state is None:
            text = f"{cell} is judged by its wet boiling point: every fluid in use draws water."
            self.cautions.append(Caution(text, "injury", (), "refdata"))
        item = self._item(name, fluid, None, state or ("wet" if wet else None))
        if item is not None:
            self.fluid_cell = item.cell
            self.items.append((name, item))

    def _item(self, name: str, typed: str, klass: str | None, state: str | None) -> Item | None:
        try:
            return Item(typed, klass, state, self.data)
        except Ambiguous as choice:
            self.cannot.append(Check(name, CANNOT_TELL, f"{choice.why}: {', '.join(choice.nearest)}"))
        except LookupMiss as miss:
            if "no published source" not in miss.why:
                raise
            cells = self.data.table("lines/materials").column("item")
            text = " ".join(typed.casefold().split())
            cell = cells.get(text) or self.data.words("lines", "item").get(text)
            if name.startswith("line"):
                self.material_cell = cell
            self.cannot.append(Check(name, CANNOT_TELL, f"no limit of temperature is published for {cell or typed}"))
        return None

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
        out = []
        for name, item in self.items:
            limit = item.judge
            title = f"{case}: {name}"
            if limit is None:
                out.append(Check(title, CANNOT_TELL, f"no limit of temperature is published for {item.cell}"))
                continue
            end = convert(limit.low if limit.low is not None else limit.typical, limit.unit, figure.unit)
            strictest = min(
                [
                    end,
                    *(
                        convert(f.low if f.low is not None else f.typical, f.unit, figure.unit)
                        for f in item.stricter(limit)
                    ),
                ]
            )
            low, likely, high = (
                (figure.low or 0.0),
                figure.typical,
                (figure.high if figure.high is not None else figure.typical),
            )
            said = f"{likely:.0f} {figure.unit} ({low:.0f} to {high:.0f}) estimated, {beside(limit, figure.unit, self.data)} {item.cell}"
            if item.klass == "expansion joint":
                result, said = CANNOT_TELL, f"{said}: an expansion joint's figure does not judge a hose"
            elif limit.quantity == "boiling_point" and high > end and likely <= _top(limit, figure.unit):
                result, said = (
                    CANNOT_TELL,
                    f"{said} boiling range at one atmosphere: pressure in the line and the blend decide",
                )
            elif likely > end:
                result = NOT_OK
            elif high > strictest:
                result, said = CANNOT_TELL, f"{said}: the band or another living figure passes it: measure on the car"
            elif not low < high:
                result, said = CANNOT_TELL, f"{said}: {NO_BAND}"
            elif is_close(strictest, high, figure.unit):
                result, said = CANNOT_TELL, f"{said}: at the top of the band under {CLOSE} is left: measure on the car"
            else:
                result = OK
            out.append(
                Check(
                    title,
                    result,
                    said,
                    Bound(end, figure.unit, "max", limit),
                    Bound(high, figure.unit, figure=figure),
                    (end - high) / end if end else None,
                )
            )
        return out

    def untested(self) -> tuple[list[Figure], list[Check]]:
        """The limits themselves where there is no temperature to hold against them, neither read nor estimated."""
        figures, checks = [], []
        for name, item in self.items:
            limit = item.judge
            if limit is not None:
                figures.append(limit)
                said = (
                    f"{number_only(limit, self.data)} for {item.cell}; no temperature is measured or can be estimated"
                )
                checks.append(Check(name, CANNOT_TELL, said, Bound(limit.least, limit.unit, "max", limit)))
        return figures, checks

    def lowest_limit_k(self) -> tuple[float, Figure] | None:
        """The lowest living limit in K with its figure; None where nothing judges (a boiling range is no limit)."""
        ends = []
        for _, item in self.items:
            if item.judge is not None and item.klass != "expansion joint" and item.judge.quantity != "boiling_point":
                ends += [
                    (units.to_base(f.low if f.low is not None else f.typical, f.unit), f)
                    for f in (item.judge, *item.stricter(item.judge))
                ]
        return min(ends, key=lambda pair: pair[0]) if ends else None


def _top(figure: Figure, unit: str) -> float:
    """The highest of a figure, in ``unit``."""
    return convert(figure.high if figure.high is not None else figure.typical, figure.unit, unit)
