"""The size that a measured tube was bought as: the listed one whose standard's tolerance holds what was read."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.tables.interval import parse_interval
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable
    from fractions import Fraction

    from gaugeblock.tables.load import Refdata, Row
    from gaugeblock.tubes.keys import Stock

_BENT = "tubes/bend_minimums"
_SIZES = "tubes/sizes"


class Listed(Value):
    """A size as key cells of the tables; ``of_od`` and ``of_wall`` say whose tolerance holds what was read, else
    blank.
    """

    __slots__ = ("od", "of_od", "of_wall", "wall")

    od: str
    wall: str
    of_od: str
    of_wall: str

    def __init__(self, od: str, wall: str, of_od: str = "", of_wall: str = "") -> None:
        put(self, "od", od)
        put(self, "wall", wall)
        put(self, "of_od", of_od)
        put(self, "of_wall", of_wall)


def listed(od: str, od_m: Fraction, wall: str, wall_m: Fraction, stock: Stock, data: Refdata) -> Listed:
    """The listed size of a tube of ``od_m`` and ``wall_m`` metres; as typed where no tolerance reaches a listed one."""
    bent = [r for r in data.table(_BENT).rows if r["family"] == stock.family]
    sizes = _of_metal(data.table(_SIZES).rows, stock)
    named_od, of_od = _nearest(od, od_m, (r["od"] for r in bent), sizes, "od_tolerance", "")
    named = parse_interval(named_od) if of_od else None
    at = named.low if named is not None and named.low is not None else od_m
    held = {cell for cell in dict.fromkeys(r["od"] for r in (*bent, *sizes)) if _holds(cell, at)}
    near = [r for r in sizes if r["od"] in held]
    walls = [r["wall"] for r in bent if r["od"] in held]
    walls += [r["wall"] for r in near if r["quantity"] == "wall_tolerance"]
    named_wall, of_wall = _nearest(wall, wall_m, walls, near, "wall_tolerance", "wall")
    return Listed(named_od, named_wall, of_od, of_wall)


def held_by(nominal_m: Fraction, read_m: Fraction, stock: Stock, data: Refdata) -> str:
    """The standard whose OD tolerance of a tube of ``nominal_m`` metres holds what was read; blank where none does."""
    off = read_m - nominal_m
    for row in _of_metal(data.table(_SIZES).rows, stock):
        if row["quantity"] == "od_tolerance" and _holds(row["od"], nominal_m):
            low, high = (_metres(row, end) for end in ("low", "high"))
            if low <= off <= high:
                return row["spec"]
    return ""


def _of_metal(rows: Iterable[Row], stock: Stock) -> list[Row]:
    """The sizes of a metal, of its product and specification where these are known."""
    fit = [r for r in rows if r["material"] in (stock.family, "any") and not r["standing"]]
    fit = [r for r in fit if stock.product is None or r["product"] == stock.product]
    return [r for r in fit if stock.spec is None or r["spec"] in (stock.spec, "any")]


def _holds(cell: str, value: Fraction) -> bool:
    interval = parse_interval(cell)
    return interval is None or interval.holds(value)


def _nearest(
    typed: str, read: Fraction, cells: Iterable[str], rows: list[Row], quantity: str, column: str
) -> tuple[str, str]:
    """The listed size nearest to what was read among those whose tolerance holds it, and whose tolerance that is."""
    found: list[tuple[Fraction, str, str]] = []
    rows = [r for r in rows if r["quantity"] == quantity]
    for cell in dict.fromkeys(cells):
        interval = parse_interval(cell)
        if interval is None or interval.low is None or interval.low != interval.high:
            continue
        if interval.low == read:
            return typed, ""
        off = read - interval.low
        for row in rows:
            if not _holds(row[column or "od"], interval.low):
                continue
            low, high = (_metres(row, end) for end in ("low", "high"))
            if low <= off <= high:
                found.append((abs(off), cell, row["spec"]))
    _, cell, spec = min(found, default=(read, typed, ""))
    return cell, spec


def _metres(row: Row, end: str) -> Fraction:
    return units.parse_number(row[end] or "0") * units.factor(row["unit"])
