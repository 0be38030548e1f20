"""The rows of the table that bear on one step: its own axle's, and those of others, which inform."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.printing import printed
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.lookup import figure_of
from gaugeblock.tables.load import Refdata, Row, canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Step
    from gaugeblock.units import Measure

TABLE = "driveline/setup"
_SHOWN = 6
_BY_DIMENSION = {"length": "setup_length", "torque": "setup_torque", "angle": "setup_angle"}
NOT_SAID = ("any", "not stated")


def rows_of(of: Step, data: Refdata) -> list[Row]:
    """The rows of a component and step, wherever they come from; a step may be named by what is set at it."""
    part = canonical(data, TABLE, "component", of.component)
    own = [r for r in data.table(TABLE).rows if r["component"] == part and not r["standing"]]
    text = " ".join(of.step.split()).casefold()
    word = data.words("driveline", "step").get(text, text)
    rows = [r for r in own if r["step"].casefold() == word.casefold()]
    if not rows:
        name = text.replace(" ", "_")
        rows = [r for r in own if name in (q := r["quantity"], q.removesuffix("_maximum"), q.removesuffix("_torque"))]
    if not rows:
        steps = list(dict.fromkeys([r["step"] for r in own] + [r["quantity"].replace("_", " ") for r in own]))
        from gaugeblock.tables.near import offers

        near = offers(of.step, {s: s for s in steps}, steps, column="driveline step", data=data)
        raise LookupMiss(of.step, f"{TABLE} step", f"no such step of {part}", near, "use one of these")
    if of.wear is None:
        return rows
    worn = canonical(data, TABLE, "wear", of.wear)
    return [r for r in rows if r["wear"] in (worn, *NOT_SAID)]


def own_rows(of: Step, rows: list[Row]) -> list[Row]:
    """Those of exactly this axle."""
    return [r for r in rows if r["axle"].casefold() == " ".join(of.axle.split()).casefold()]


def published(own: list[Row], data: Refdata) -> tuple[Figure, ...]:
    """The published figures of exactly this axle, the same number once; more than one where they differ by
    quantity, wear or step.
    """
    found: dict[tuple[object, ...], Figure] = {}
    for row in own:
        figure = figure_of(row, data)
        same = (figure.quantity, figure.key["wear"], figure.value, figure.low, figure.high, figure.unit)
        found.setdefault(same, figure.replace(chosen_by="only row", conditions=_worn(figure)))
    return tuple(found.values())


def _worn(figure: Figure) -> str:
    wear = figure.key["wear"]
    return "; ".join(p for p in ("" if wear in NOT_SAID else f"{wear} parts", figure.conditions) if p)


def quantity_of(dimension: str, rows: list[Row]) -> str:
    """What a figure of a dimension is at this step: the quantity of its rows, else a plain one."""
    known = next((r["quantity"] for r in rows if units.dimension(r["unit"]) == dimension), "")
    return known or _BY_DIMENSION.get(dimension, "setup_length")


def dimension_of(measured: Measure | str | None, rows: list[Row]) -> str:
    """The dimension of what was measured when it is set at this step, else that of the first row."""
    known = list(dict.fromkeys(units.dimension(r["unit"]) for r in rows))
    own = "length" if measured is None or isinstance(measured, str) else units.dimension(measured.unit)
    return own if own in known or not known else known[0]


def envelope(quantity: str, rows: list[Row], data: Refdata) -> tuple[float, float] | None:
    """The least and the most that the rows of any axle have of a quantity here, in base units; None without rows."""
    figures = [figure_of(r, data) for r in rows if r["quantity"] == quantity]
    ends = [units.to_base(e, f.unit) for f in figures for e in (f.value, f.low, f.high) if e is not None]
    return (min(ends), max(ends)) if ends else None


def examples(others: tuple[Figure, ...], data: Refdata) -> Caution:
    """Figures of other axles, each with its axle: examples, not answers."""
    several = len({f.quantity for f in others}) > 1

    def said(figure: Figure) -> str:
        what = f"{figure.quantity.replace('_', ' ')} " if several else ""
        wear = figure.key["wear"]
        return f"{what}{printed(figure, data)} ({figure.key['axle']}{'' if wear in NOT_SAID else f', {wear}'})"

    parts = [said(f) for f in others[:_SHOWN]]
    more = f"; and {len(others) - _SHOWN} more" if len(others) > _SHOWN else ""
    sources = ", ".join(dict.fromkeys(f.source for f in others[:_SHOWN]))
    text = f"Examples of other axles, not for this one: {'; '.join(parts)}{more}."
    return Caution(text, "note", tuple(f.id for f in others), sources)


# What a pattern asks for, by where it stands on the tooth.
_PATTERNS = (
    "high pattern, pattern near the tooth top",
    "low pattern, pattern near the root",
    "pattern too far to the heel",
    "pattern too far to the toe",
)


def cautions_of(rows: list[Row], is_large: bool, data: Refdata) -> list[Caution]:
    """The rules that belong to what is set here, then those of all work on an axle."""
    quantities = {r["quantity"] for r in rows}
    components = {r["component"] for r in rows}
    out: list[Caution] = []
    if components & {"drive pinion bearings", "drive pinion nut"}:
        out += rule_cautions(data, "axle set-up", "crush sleeve", named=True)
    if any(q.startswith("preload") for q in quantities):
        out += rule_cautions(data, "axle set-up", "drag torque", "new and used bearings", named=True)
    if any(q.startswith("backlash") for q in quantities):
        shims = ("used gears", "backlash shims", "adjusting nuts", "cast iron shims")
        out += rule_cautions(data, "axle set-up", *shims, named=True)
        out += rule_cautions(data, "axle set-up", "backlash too large", named=True) if is_large else []
    if components & {"pinion depth shims", "side bearing shims"}:
        out += rule_cautions(data, "axle set-up", "pinion mark signs", "cast iron shims", named=True)
    if "pattern_brake_torque" in quantities or "teeth_painted" in quantities:
        out += rule_cautions(data, "contact pattern", "where backlash is read", "used gears", *_PATTERNS, named=True)
    if any("wheel bearing" in c for c in components):
        out += rule_cautions(data, "wheel bearings", "back-off", named=True)
    return out + rule_cautions(data, "axle set-up", "figures named by axle", "stands")
