"""Look-up: keys -> the rows that answer -> the Figure that governs.

Rows match when each asked key equals, lies in, or meets ``any``; a key not asked is never ``any``. Then: living and of
blank standing; the most specific; the basis the quantity prefers; the weight of the source (a standard before a
handbook, a maker's table, any other page; from memory one lower); primary, quoted, memory; the safer end; the newer
edition; source id. ``chosen_by`` names the step that decided; ``others`` each name the step they lost at.
"""

from __future__ import annotations

from fractions import Fraction

from gaugeblock import units
from gaugeblock.asked import WholeTable, wants_of
from gaugeblock.asked import known_service as known_service
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.ranking import STEPS as STEPS
from gaugeblock.ranking import Asked, Rank, of_one_key, rank, rank_of_fitting, ranked
from gaugeblock.spreads import disagreement as disagreement
from gaugeblock.spreads import same_specificity as same_specificity
from gaugeblock.spreads import spread as spread
from gaugeblock.tables.catalogue import ROW_COLUMNS, Key, keys_of
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, Row, Table, refdata
from gaugeblock.tables.part import part_of
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from gaugeblock.errors import Offers


# Where the columns begin that every row has, counted from its end.
_FIRST = -len(ROW_COLUMNS)


def figure_of(row: Row, data: Refdata) -> Figure:
    """The Figure of one row, alone."""
    got = data._memo.get(row)
    if got is None:
        got = data._memo[row] = _made(row, data)
    return got  # type: ignore[return-value]


def _made(row: Row, data: Refdata, chosen_by: str = "") -> Figure:
    quantity, value, low, high, unit, conditions, basis, source, locator, checked, standing, since, _, note = (
        row.values[_FIRST:]
    )
    text = value or (f"{low} to {high}" if low and high else low or high)
    place = (source or basis) + (f" ({standing})" if standing else "")
    return Figure(
        f"{row.table}:{'|'.join(row.key)}:{quantity}:{place}@{since}",
        quantity,
        row.decimal("value", value) if value else None,
        unit,
        low=row.decimal("low", low) if low else None,
        high=row.decimal("high", high) if high else None,
        side=data.quantity(quantity)["side"],
        basis=basis,
        checked=checked,
        source=source,
        locator=locator,
        conditions=conditions,
        note=note,
        since=since,
        key=Keys(zip(row.columns, row.key, strict=False)),  # the key columns come first
        standing=standing,
        chosen_by=chosen_by,
        text=text,
    )


def look_up(
    table: str, quantity: str, *, data: Refdata | None = None, of_source: str | None = None, **keys: str
) -> Figure:
    """The governing Figure for a quantity at some keys, the other matching rows in ``others``.

    Parameters
    ----------
    table : ``domain/table``. quantity : a name of quantities.csv. keys : the key cells as people write them
        (``thread="3/8-16 UNC"``, ``size="3/8 in"``). of_source : only the rows of one publication. ``service``
        defaults to ``vehicle``; rows of another service are among the others and never govern.

    Raises LookupMiss with the nearest keys when nothing answers, InputError when a key cannot be read.

    >>> look_up("fasteners/threads", "tensile_stress_area", thread="3/8-16 UNC").text
    '0.0775'
    """
    data = data or refdata()
    memo_key = (table, quantity, of_source, *keys, *keys.values())  # as many names as values
    got = data._memo.get(memo_key)
    if got is None:
        part = _part(data, table, keys) if table not in data.opened else None
        try:
            got = None if part is None else _decide(data, part, quantity, keys, of_source)
        except (LookupMiss, _NoRow, WholeTable):
            got = None  # the whole table knows what is near
        if got is None:
            try:
                got = _decide(data, data.table(table), quantity, keys, of_source)
            except _NoRow as nothing:
                raise nothing.why() from None
        data._memo[memo_key] = got
    return got  # type: ignore[return-value]


def _part(data: Refdata, table: str, keys: Mapping[str, str]) -> Table | None:
    """The rows that the first key's cell can meet, where the table is not open and the cell is asked as it stands."""
    first = keys.get(keys_of(table)[0].name)
    return None if first is None else part_of(data, table, first)


def look_up_or_none(table: str, quantity: str, *, data: Refdata | None = None, **keys: str) -> Figure | None:
    """As ``look_up``; None where no row answers, be it for a cell that no row has. A measure that cannot be read
    still raises.
    """
    data = data or refdata()
    memo_key = ("or none", table, quantity, *keys.items())
    if memo_key not in data._memo:
        part = _part(data, table, keys) if table not in data.opened else None
        try:
            data._memo[memo_key] = _decide(data, data.table(table) if part is None else part, quantity, keys, None)
        except (LookupMiss, _NoRow):
            data._memo[memo_key] = None
        except WholeTable:
            data.table(table)
            return look_up_or_none(table, quantity, data=data, **keys)
    return data._memo[memo_key]  # type: ignore[return-value]


class _NoRow(Exception):
    """No row answers; ``why`` makes what says so, for to find what is near takes longer than a look-up."""

    def __init__(self, why: Callable[[], LookupMiss]) -> None:
        super().__init__()
        self.why = why


def _decide(data: Refdata, table: Table, quantity: str, keys: dict[str, str], of_source: str | None) -> Figure:
    rows: Sequence[Row] = table.by_quantity.get(quantity, ())
    if of_source is not None:
        rows = [r for r in rows if r["source"] == of_source]
    if not rows:
        raise _NoRow(lambda: no_quantity(table, quantity))
    for name in keys:
        if name not in table.names:
            raise InputError(name, table.name, "not a key of this table", table.names, "use one of these")
    wants = wants_of(data, table, keys)
    close = table.index(quantity).fitting(wants)
    if of_source is not None:
        close = [row for row in close if row["source"] == of_source]
    if len(close) == 1 and _governs_alone(close[0], table, wants):
        got = data._sole.get(close[0])
        if got is None:
            got = data._sole[close[0]] = _made(close[0], data, "only row")
        return got
    matched = [(rank, row) for row in close if (rank := rank_of_fitting(row, table, wants)) is not None]
    if not any(rank[0] == 0 for rank, _ in matched):
        asked = list(zip(table.keys, wants, strict=True))
        for at, (key, want) in enumerate(asked):
            if key.match == "interpolated" and want is not None:
                between = _interpolate(data, rows, asked, at, quantity)
                if between is not None:
                    return between
        raise _NoRow(lambda: _miss(data, table, rows, asked, quantity, keys, matched))
    return _govern(data, quantity, matched)


def _governs_alone(row: Row, table: Table, wants: Sequence[str | Fraction | None]) -> bool:
    """Whether a row that fits every other key may govern by its standing and its service."""
    at = table.service
    return not row.standing and (at is None or row.key[at] in ("any", wants[at]))


def _govern(data: Refdata, quantity: str, matched: list[tuple[Rank, Row]]) -> Figure:
    (best, chosen), *rest = ranked(data, quantity, matched)
    others = tuple([figure_of(row, data).ranked(step) for row, step in rest])
    return figure_of(best, data).ranked(chosen, others)


def govern_rows(rows: list[Row], data: Refdata) -> Figure:
    """The governing Figure among rows of one table, key and quantity, the rest in ``others``."""
    return _govern(data, rows[0]["quantity"], of_one_key(rows))


def governing_row(rows: list[Row], data: Refdata) -> Row:
    """As ``govern_rows``, the row alone."""
    return ranked(data, rows[0]["quantity"], of_one_key(rows))[0][0]


def _interpolate(data: Refdata, rows: Sequence[Row], asked: Asked, at: int, quantity: str) -> Figure | None:
    """Linear between the two printed points of one source that enclose the question; None when none do."""
    want = asked[at][1]
    if not isinstance(want, Fraction):
        return None
    best: tuple[Fraction, Row, Row] | None = None
    by_source: dict[str, list[tuple[Fraction, Row]]] = {}
    for row in rows:
        rest_fits = all(
            (a is not None and _rank_one(k, a, cell)) or cell == "any"
            for i, ((k, a), cell) in enumerate(zip(asked, row.key, strict=True))
            if i != at
        )
        point = parse_interval(row.key[at])
        if rest_fits and not row.standing and point is not None and point.low is not None and point.is_point:
            by_source.setdefault(row["source"], []).append((point.low, row))
    for points in by_source.values():
        below = max((p for p in points if p[0] < want), key=lambda p: p[0], default=None)
        above = min((p for p in points if p[0] > want), key=lambda p: p[0], default=None)
        if below and above and (best is None or above[0] - below[0] < best[0]):
            best = (above[0] - below[0], below[1], above[1])
    if best is None:
        return None
    low, high, a = figure_of(best[1], data), figure_of(best[2], data), parse_interval(best[1].key[at])
    if a is None or a.low is None:
        return None
    share = float((want - a.low) / best[0])
    value = low.typical + share * (high.typical - low.typical)
    stated = units.decimal_text((want - units.offset(a.unit)) / units.factor(a.unit))
    key = {**low.key, asked[at][0].name: f"{stated} {a.unit}".removesuffix(" 1")}
    return Figure(
        f"derived:linear_interpolation:{'|'.join(key.values())}:{quantity}@{data.release}",
        quantity,
        float(f"{value:.12g}"),
        low.unit,
        side=low.side,
        basis="derived",
        since=data.release,
        key=key,
        chosen_by="interpolated",
        rule=data.rule("linear_interpolation"),
        inputs=(low, high),
    )


def no_quantity(table: Table, quantity: str) -> LookupMiss:
    """Why nothing answers where a table has no such quantity."""

    def near() -> Offers:
        from gaugeblock.tables.near import of_these

        return of_these(quantity, list(table.by_quantity))

    return LookupMiss(quantity, table.name, "no such quantity in this table", near, "use one of these")


def _miss(
    data: Refdata,
    table: Table,
    rows: Sequence[Row],
    asked: Asked,
    quantity: str,
    keys: dict[str, str],
    matched: list[tuple[Rank, Row]],
) -> LookupMiss:
    """Why nothing answers: a key that must be named, or keys that no row has together."""
    said = ", ".join(f"{k} {v}" for k, v in keys.items()) or quantity
    if matched:
        services = {r["service"] for k, r in matched if k[0] == 2 and "service" in r.cells}
        other = f"only figures of another service are known ({', '.join(sorted(services))})"
        why = f"no published source: {other if services else 'only a misprint, superseded or withdrawn row'}"
        near_rows = [figure_label(r) for _, r in matched]
        do = "they inform, they do not answer: ask the maker"
        informs = [figure_of(r, data).replace(chosen_by="service" if k[0] == 2 else "standing") for k, r in matched]
        return LookupMiss(said, f"{table.name} {quantity}", why, near_rows, do, informs)
    open_keys = [i for i, (_, want) in enumerate(asked) if want is None]
    close = rows if open_keys else []
    for at, (key, want) in enumerate(asked):
        if want is not None and key.match == "exact" and key.name != "service":  # most rows go by their words alone
            close = [row for row in close if row.key[at] in (want, "any")]
    would = [row for row in close if rank(row, asked, skip=open_keys) is not None]
    depends = [i for i in open_keys if any(row.key[i] != "any" for row in would)]
    if would and depends:
        named = " and ".join(asked[i][0].name for i in depends)
        found = list(dict.fromkeys(" / ".join(row.key[i] for i in depends) for row in would))
        return Ambiguous(said, f"{table.name} {quantity}", f"the answer depends on {named}", found, f"name the {named}")

    def near() -> list[str]:
        scored = sorted(rows, key=lambda row: (-_agreement(row, asked), row.line))
        return list(dict.fromkeys(figure_label(r) for r in scored))

    why, do = "no published figure for these keys together", "use one of the nearest keys, or ask the maker"
    return LookupMiss(said, f"{table.name} {quantity}", why, near, do)


def _agreement(row: Row, asked: Asked) -> int:
    """How near a row is to what was asked: the first keys weigh most, one that is met counts more than ``any``."""
    score = 0
    for (key, want), cell in zip(asked, row.key, strict=True):
        score = score * 3 + (0 if want is None or not _rank_one(key, want, cell) else 1 if cell == "any" else 2)
    return score


def _rank_one(key: Key, want: str | Fraction, cell: str) -> bool:
    if cell in ("any", want):
        return True
    interval = parse_interval(cell) if key.match != "exact" else None
    return interval is not None and isinstance(want, Fraction) and interval.holds(want)


def figure_label(row: Row) -> str:
    """The key of a row as one readable text."""
    return " | ".join(cell for cell in row.key if cell != "any")


def choices(table: str, column: str, *, data: Refdata | None = None, **fixed: str) -> list[str]:
    """The distinct cells of a key column among rows whose other exact keys are as given."""
    got = (data or refdata()).table(table)
    at = got.names.index(column)
    asked = [(got.names.index(k), v) for k, v in fixed.items()]
    rows: Sequence[Row] = got.rows
    for i, cell in asked:
        rows = [row for row in rows if row.key[i] == cell]
    return list(dict.fromkeys([row.key[at] for row in rows]))
