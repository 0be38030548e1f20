"""What was typed at a step: the maker's figure and the findings as figures, and what of it is doubtful."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock import units
from gaugeblock.answer.maker import maker_figure
from gaugeblock.answer.making import stated
from gaugeblock.answer.plausible import base_of, did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.driveline.setups.rows import dimension_of, envelope, quantity_of
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Maker, Step
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row
    from gaugeblock.units import Measure

# A figure this many times outside what any axle has at a step was perhaps read in another unit.
_FAR = 3.0


class Doubt(Value):
    """What was typed under ``key`` and is not plausible, said as a question."""

    __slots__ = ("key", "said")

    key: str
    said: str

    def __init__(self, key: str, said: str) -> None:
        put(self, "key", key)
        put(self, "said", said)


class Given(Value):
    """The maker's figure, as left and as found (None where not given, words, or doubtful), and the doubts."""

    __slots__ = ("doubts", "found", "left", "made")

    made: Figure | None
    left: Figure | None
    found: Figure | None
    doubts: tuple[Doubt, ...]

    def __init__(
        self, made: Figure | None, left: Figure | None, found: Figure | None, doubts: tuple[Doubt, ...] = ()
    ) -> None:
        put(self, "made", made)
        put(self, "left", left)
        put(self, "found", found)
        put(self, "doubts", doubts)


def given_at(of: Step, rows: list[Row], own: Figure | None, data: Refdata) -> Given:
    """What was typed, read against the rows of the step; ``own`` is the published figure of this axle, where there
    is one.
    """
    doubts: list[Doubt] = []
    made = None
    if of.maker is not None:
        doubts += _maker_doubts(of.maker, rows, data)
        if not doubts:
            dimension = units.dimension(next(iter(of.maker.ends.values())).unit)
            made = maker_figure(of.maker.ends, quantity_of(dimension, rows), of.maker.source, of.maker.place)
    rule = made or own
    dimension = units.dimension(rule.unit) if rule is not None else dimension_of(of.as_left or of.as_found, rows)
    quantity = rule.quantity if rule is not None else quantity_of(dimension, rows)
    findings: list[Figure | None] = []
    for key, name in (("as_left", "as left"), ("as_found", "as found")):
        got: Measure | str | None = getattr(of, key)
        if got is None or isinstance(got, str):
            findings.append(None)
            continue
        said = _finding_doubt(got, dimension, rule, name)
        doubts += [Doubt(key, said)] if said else []
        findings.append(None if said else stated(got, quantity, name, data, read_by="read on this axle"))
    return Given(made, findings[0], findings[1], tuple(doubts))


def _maker_doubts(maker: Maker, rows: list[Row], data: Refdata) -> list[Doubt]:
    ends = maker.ends
    first = next(iter(ends.values()))
    dimension = units.dimension(first.unit)
    other = next((m for m in ends.values() if units.dimension(m.unit) != dimension), None)
    if other is not None:
        said = f"The maker's figure is {first.text} and {other.text}, which are two kinds of measure. Read it again."
        return [Doubt("maker", said)]
    known = {units.dimension(r["unit"]) for r in rows}
    if known and dimension not in known:
        said = (
            f"The maker's figure is a {dimension}, {first.text}; a {' or a '.join(sorted(known))} is set at this step"
        )
        return [Doubt("maker", f"{said}. Read it again.")]
    for name, m in ends.items():
        if m.value < 0:
            upright = (f"{m.number.lstrip('-')} {m.unit}",)
            return [Doubt(f"maker.{name}", did_you_mean(f"The maker's {name} is below zero, {m.text}", upright))]
    rising = [name for name in ("low", "value", "high") if name in ends]
    for low, high in pairwise(rising):
        if base_of(ends[low]) > base_of(ends[high]) * (1 + 1e-9):
            said = f"The maker's {low}, {ends[low].text}, is above its {high}, {ends[high].text}. Read it again."
            return [Doubt(f"maker.{low}", said)]
    return _far_from_any(ends, quantity_of(dimension, rows), rows, data)


def _far_from_any(ends: dict[str, Measure], quantity: str, rows: list[Row], data: Refdata) -> list[Doubt]:
    """A maker's figure outside the plausible range, or far outside what any axle has where another unit is not."""
    span = plausible_range(quantity, data)
    table = envelope(quantity, rows, data)
    for name, m in ends.items():
        if name != "value" and m.value == 0:
            continue  # from nothing up
        wide = (table[0] / _FAR, table[1] * _FAR) if table is not None else span
        meant = other_readings(m, *wide, _among(m)) if wide is not None else ()
        said = f"The maker's {name}, {m.text}, is far from any {quantity.replace('_', ' ')} of an axle"
        is_far = wide is not None and not wide[0] <= base_of(m) <= wide[1] and bool(meant)
        if is_far or not is_plausible(m, quantity, data):
            return [Doubt(f"maker.{name}", did_you_mean(said, meant))]
    return []


def _among(measure: Measure) -> tuple[str, ...]:
    return {"length": ("in", "mm"), "torque": ("lbf*in", "lbf*ft", "N*m")}.get(units.dimension(measure.unit), ())


def _finding_doubt(got: Measure, dimension: str, rule: Figure | None, name: str) -> str:
    own = units.dimension(got.unit)
    if own != dimension:
        return f"{capital(name)}, {got.text}, is a {own}; a {dimension} is set at this step. Read it again."
    if got.value < 0:
        upright = (f"{got.number.lstrip('-')} {got.unit}",)
        return did_you_mean(f"{capital(name)} is below zero, {got.text}", upright)
    if rule is None:
        return ""
    ends = [units.to_base(e, rule.unit) for e in (rule.low, rule.value, rule.high) if e is not None]
    low, high = min(ends), max(ends)
    if low / 10 <= base_of(got) <= high * 10:
        return ""
    meant = other_readings(got, low * 0.5, high * 2, _among(got))
    return did_you_mean(f"{capital(name)}, {got.text}, is far from the figure", meant) if meant else ""
