"""Ranking: which of the rows that answer governs, and at which step each other loses; ``lookup`` has the order."""

from __future__ import annotations

from fractions import Fraction
from operator import itemgetter

from gaugeblock import units
from gaugeblock.figure import CHECKED
from gaugeblock.spreads import STEPS as STEPS
from gaugeblock.tables.catalogue import LIGHTEST, ROW_COLUMNS, SOURCE_WEIGHTS, VEHICLE_SERVICES, Key
from gaugeblock.tables.interval import parse_interval

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.tables.load import Refdata, Row, Table

# A key with what is asked of it: a cell, a number in base units, or None when it is not asked.
Asked = list[tuple[Key, str | Fraction | None]]
# 0 when the row may govern, 1 when its standing forbids it, 2 when its service does; then specificity by column.
Rank = tuple[int, tuple[int | Fraction, ...]]

_EQUAL, _OPEN_RANGE, _ANY = 0, 10**9, 10**10
_of = itemgetter(*(ROW_COLUMNS.index(c) - len(ROW_COLUMNS) for c in ("basis", "source", "checked", "unit")))


def rank(row: Row, asked: Asked, skip: Sequence[int] = ()) -> Rank | None:
    """How well a row matches; None when it does not. The keys at the indexes ``skip`` are not looked at."""
    informs = 1 if row.standing else 0
    specific: list[int | Fraction] = []
    for i, ((key, want), cell) in enumerate(zip(asked, row.key, strict=True)):
        if cell == "any" or i in skip:
            specific.append(_ANY)
        elif want is None:
            return None
        elif key.match == "exact":
            if cell == want:
                specific.append(_EQUAL)
            elif key.name == "service" and want in VEHICLE_SERVICES:
                informs = 2
                specific.append(_ANY)
            else:
                return None
        else:
            interval = parse_interval(cell)
            if interval is None or not isinstance(want, Fraction) or not interval.holds(want):
                return None
            specific.append(_wide(cell))
    return informs, tuple(specific)


def rank_of_fitting(row: Row, table: Table, wants: Sequence[str | Fraction | None]) -> Rank | None:
    """As ``rank``, of a row that fits what is asked of every key but its service."""
    informs = 1 if row.standing else 0
    specific = [_ANY if cell == "any" else _EQUAL for cell in row.key]
    wide: list[int | Fraction] = [*specific]
    for at in table.measured:
        wide[at] = specific[at] or _wide(row.key[at])
    of = table.service
    if of is not None and not specific[of] and row.key[of] != wants[of]:
        if wants[of] not in VEHICLE_SERVICES:
            return None
        informs, wide[of] = 2, _ANY
    return informs, tuple(wide)


def _wide(cell: str) -> int | Fraction:
    """How far a cell reaches: a single measure not at all."""
    interval = parse_interval(cell)
    if interval is None or interval.is_point:
        return _EQUAL
    width = interval.width
    return _OPEN_RANGE if width is None else 1 + width


def of_one_key(rows: list[Row]) -> list[tuple[Rank, Row]]:
    """Rows of one table, key and quantity as they are ranked: by what they are alone."""
    return [((1 if row.standing else 0, ()), row) for row in rows]


def ranked(data: Refdata, quantity: str, matched: list[tuple[Rank, Row]]) -> list[tuple[Row, str]]:
    """The rows, the one that governs first, with the step at which each lost; the first has that of the second, or
    ``only row``.
    """
    if len(matched) == 1:
        return [(matched[0][1], "only row")]
    meta = data.quantity(quantity)
    prefers = meta["prefers"].split(" > ")
    early: list[tuple[object, ...]] = []
    for (informs, specific), row in matched:
        basis, source, checked, _ = _of(row.values)
        place = prefers.index(basis) if basis in prefers else len(prefers)
        weight = _of_source(data, source)[0] + (checked == "memory")
        read = CHECKED.index(checked) if checked in CHECKED else len(CHECKED)
        early.append((informs == 1, informs == 2, specific, place, weight, read))
    late: list[tuple[object, ...]] = [()] * len(matched)
    if any(early.count(one) > 1 for one in early):
        late = [_late(row, meta["safer"], data) for _, row in matched]
    orders = [((*one, *two, row.line), row) for one, two, (_, row) in zip(early, late, matched, strict=True)]
    orders.sort(key=itemgetter(0))
    best = orders[0][0]
    out = [(row, _lost_at(best, order)) for order, row in orders[1:]]
    return [(orders[0][1], out[0][1]), *out]


def _late(row: Row, safer: str, data: Refdata) -> tuple[object, ...]:
    """What tells rows apart that are alike by all marks: the safer end, the edition, the name of the source."""
    _, source, _, unit = _of(row.values)
    number = units.to_base(row.typical, unit)
    end = number if safer == "low" else -number if safer == "high" else 0.0
    return end, _of_source(data, source)[1], source


def _lost_at(best: tuple[object, ...], other: tuple[object, ...]) -> str:
    """The step at which two rows differ."""
    for step, one, two in zip(STEPS, best, other, strict=False):
        if one != two:
            return step
    return STEPS[-1]


def _of_source(data: Refdata, id: str) -> tuple[int, int]:
    """What a source weighs, and its edition, the newer the less."""
    got = data._weights.get(id)
    if got is None:
        source = data.source(id) if id else None
        weight = LIGHTEST if source is None else SOURCE_WEIGHTS.get(source["kind"], LIGHTEST)
        got = data._weights[id] = weight, -int(source["year"]) if source is not None and source["year"] else 0
    return got
