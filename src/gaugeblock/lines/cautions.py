"""What belongs beside the figures of a line material, fluid or fuel: disagreements, what a figure is not, the shop's
cautions.
"""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.making import base
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.warmth.item import ANSWERS, OPEN_STATES

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.warmth.item import Item

# The statements of rules.csv that belong to an answer: (topic, subject).
_BRAKE_FLUID = (("brake fluid water", "brake fluid"), ("fire", "brake fluid on exhaust"))
_SILICONE = ("DOT 5",)
_GASOLINE = (("fire", "gasoline on hot surface"),)
FUEL_WORK = (
    "Fuel work: battery off, no ignition source, an extinguisher at hand, the spill wiped up before anything runs."
)
# Hoses of carburettors and return lines.
LOW_PRESSURE = ("SAE J30 R6", "SAE J30 R7", "SAE J30 R8")
_NOT_ON_INJECTION = (("fuel hose classes", "SAE J30 R6, R7, R8"),)
_HOSE = (("reading limits", "hose pressure and temperature"),)


def statement_rows(data: Refdata) -> list[dict[str, str]]:
    """The living statements of the domain without a standing, read once."""
    got = data._memo.get("lines statements")
    if got is None:
        got = data._memo["lines statements"] = [r for r in data.statements("lines") if not r["standing"]]
    return got  # type: ignore[return-value]


def statements(data: Refdata, wanted: tuple[tuple[str, str], ...]) -> list[Caution]:
    """Statements of the domain's rules, named by topic and subject, as cautions."""
    hits = [r for r in statement_rows(data) if (r["topic"], r["subject"]) in wanted]
    return [Caution(r["statement"], r["severity"], (), r["source"] or r["basis"]) for r in hits]


def is_brake_fluid(cell: str) -> bool:
    """Whether an item is a brake fluid."""
    return cell.startswith(("DOT ", "ISO 4925", "brake fluid"))


def cautions_of(found: Item) -> list[Caution]:
    """What belongs beside the figures of an item: disagreements, what the figures are not, and the shop's cautions."""
    out: list[Caution] = []
    if not found.figures:
        return out
    governing = found.figures[0]
    for figure in found.figures:
        apart = lookup.disagreement(figure)
        if apart is not None:
            low, high = (units.significant(v, 3) for v in apart)
            ids = (figure.id, *(o.id for o in lookup.same_specificity(figure)))
            out.append(
                Caution(
                    f"Sources disagree on {figure.quantity.replace('_', ' ')}: {low} to {high} {figure.unit}.",
                    "note",
                    ids,
                    "refdata",
                )
            )
    if is_brake_fluid(found.cell):
        wet = found.look_up("boiling_point_minimum", "wet")
        if wet is not None:
            text = (
                f"The wet boiling point, {number_only(wet, found.data)}, governs a fluid that has been in use; "
                "the dry one holds for a new fluid only."
            )
            out.append(Caution(text, "injury", (wet.id,), wet.source))
        out += [*statements(found.data, _BRAKE_FLUID), *vapour(found)]
    if found.table == "lines/fuels":
        out.append(Caution(FUEL_WORK, "injury"))
    if found.cell in ("gasoline", "straight run gasoline"):
        out += statements(found.data, _GASOLINE)
    if found.klass == "expansion joint" or "expansion joint" in governing.key.values():
        text = "An expansion joint's figure is not a hose limit."
        out.append(Caution(text, "damage", (governing.id,), governing.source))
    for figure in found.figures:
        if figure.quantity == "heat_ageing_test_temperature":
            out += statements(found.data, (("reading limits", "rubber type letters"),))
        if figure.quantity in ("temperature_rating_minimum", "pressure_rating_minimum"):
            what = capital(figure.quantity.replace("_", " "))
            text = f"{what} is what a standard demands of the line, not what every line stands."
            out.append(Caution(text, "note", (figure.id,), figure.source))
    if any(f.quantity in ("working_pressure_maximum", "burst_pressure_minimum") for f in found.figures):
        out += statements(found.data, _HOSE)
    out += _more_states(found)
    return out


def low_pressure(found: Item) -> list[Caution]:
    """That a low-pressure fuel hose is none for injection, whatever its rating."""
    return statements(found.data, _NOT_ON_INJECTION) if found.klass in LOW_PRESSURE else []


def vapour(found: Item | None) -> list[Caution]:
    """That old fluid forms vapour below the wet boiling point that a standard demands of this one: why the lower number
    stands beside the limit, and does not replace it. None of silicone, which takes up no water.
    """
    if found is None or not is_brake_fluid(found.cell) or found.cell in _SILICONE:
        return []
    data = found.data
    limit = found.look_up("boiling_point_minimum", "wet")
    keys = {"item": "brake fluid, glycol base", "state": "3 % water"}
    seen = lookup.look_up_or_none("lines/fluids", "vapour_lock_temperature", data=data, **keys)
    if limit is None or seen is None or base(limit) <= base(seen):
        return []
    text = (
        f"{number_only(limit, data)} is what the standard demands of {found.cell} with water in it. Fluids on sale in"
        f" the 1970s formed vapour near {number_only(seen, data)} with 3 % of water. Change the fluid on time, and stay"
        " well under the limit."
    )
    return [Caution(text, "injury", (limit.id, seen.id), "refdata")]


def boils(found: Item | None, at: Figure | None) -> list[Caution]:
    """That part of a fuel boils at a temperature that is measured or estimated, where no limit of it is published."""
    if found is None or at is None or found.limit is not None or found.informs is None:
        return []
    told = found.informs
    low = told.low if told.low is not None else told.typical
    if units.to_base(low, told.unit) >= base(at):
        return []
    text = (
        f"{capital(found.said)} begins to boil near {units.significant(low, 3)} {told.unit} in an"
        f" open vessel, under {number_only(at, found.data)}: vapour in the feed starves the engine, and a leak flashes."
        " Shield the line or move it."
    )
    return [Caution(text, "injury", (told.id, at.id), told.source)]


def _more_states(found: Item) -> list[Caution]:
    """That other classes or states have figures of their own, when none was named."""
    out = []
    if found.is_class_taken:
        text = f"The only class with published figures is {found.klass}: they hold if the part in hand is marked so."
        out.append(Caution(text, "note", (), "refdata"))
    shown = {f.key[column] for f in found.figures for column in ("class", "state") if column in f.key}
    for column, asked in (("class", found.klass), ("state", found.state)):
        if asked is None:
            rows = [r for r in found.rows if column in r.cells and r["quantity"] in ANSWERS]
            more = [c for c in dict.fromkeys(r.cells[column] for r in rows) if c not in OPEN_STATES and c not in shown]
            if more:
                some = "; ".join(more[:6]) + (" ..." if len(more) > 6 else "")
                out.append(Caution(f"More figures by {column}: {some}; name the {column}.", "note", (), "refdata"))
    return out
