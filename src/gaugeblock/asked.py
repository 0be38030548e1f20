"""What is asked of the keys of a table: the text of a question as cells and as measures in base units."""

from __future__ import annotations

from fractions import Fraction

from gaugeblock import units
from gaugeblock.errors import LookupMiss
from gaugeblock.tables.catalogue import SERVICES, Key
from gaugeblock.tables.load import Refdata, Table, canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping


class WholeTable(Exception):
    """A part of a table cannot tell what is asked: the whole one can."""


def wants_of(data: Refdata, table: Table, keys: Mapping[str, str]) -> list[str | Fraction | None]:
    """What is asked of each key, in their order; a vehicle's where a service is not said."""
    wants: list[str | Fraction | None] = []
    for name, means in table._means:
        typed = keys.get(name)
        if typed is None:
            wants.append("vehicle" if name == "service" else None)
        else:
            want = means.get(typed)
            wants.append(_read(data, table, len(wants), typed) if want is None else want)
    return wants


def _read(data: Refdata, table: Table, at: int, typed: str) -> str | Fraction:
    """What a text asks of a key that does not have it as it stands."""
    key = table.keys[at]
    if key.match == "exact":
        got = table.as_it_stands(at, typed)
        return _cell(data, table, key, typed) if got is None else got
    measure = table._means[at][1][typed] = _measure(data, table, key, typed)
    return measure


def _cell(data: Refdata, table: Table, key: Key, typed: str) -> str:
    """The cell that was meant. Where a source says ``any``, a word that resembles no cell of the column asks that
    row.
    """
    if key.name == "service":
        return known_service(typed, f"{table.name} service", "not a service")
    if table.name not in data.opened and not _may_be(data, table, key.name, typed):
        raise LookupMiss(typed, f"{table.name} {key.name}", "not a key of these rows", (), "use another")
    try:
        return canonical(data, table.name, key.name, typed)
    except LookupMiss:
        from gaugeblock.tables.near import alike

        cells = data.table(table.name).column(key.name)
        if key.any_allowed and "any" in cells and not alike(typed, cells, 1):
            return typed
        raise


def _may_be(data: Refdata, part: Table, column: str, typed: str) -> bool:
    """Whether what was typed can mean a cell of a part of a table: one of its rows says ``any``, has it in another
    case, or a listed word stands for another cell.
    """
    folded = " ".join(typed.split()).casefold()
    cells = part.column(column)
    word = data.words(part.name.partition("/")[0], column).get(folded, folded)
    return "any" in cells or folded in cells or word.casefold() != folded


def known_service(typed: str, where: str = "service", why: str = "not a service of the tables") -> str:
    """The service that was typed; LookupMiss with the services there are."""
    if typed in SERVICES:
        return typed
    from gaugeblock.tables.near import of_these

    near = of_these(typed, SERVICES, SERVICES[1:3])
    raise LookupMiss(typed[:60], where, why, near, "use one of these")


def _measure(data: Refdata, table: Table, key: Key, typed: str) -> Fraction | str:
    """What is asked of a measured key, in base units; each text is read once, however many quantities are asked."""
    dim = None if typed == "any" else table.dimension(key.name)
    if dim is None and typed != "any" and table.name not in data.opened:
        raise WholeTable  # another row may have a measure
    if dim is None:
        return typed  # asked as any, or every row of the column says any
    memo = ("measured", dim, typed)
    got = data._memo.get(memo)
    if got is None:
        got = table.single(key.name, typed)
        if got is None:
            measure = units.parse_measure(typed, dim, f"{table.name} {key.name}")
            got = measure.value * units.factor(measure.unit) + units.offset(measure.unit)
        data._memo[memo] = got
    return got  # type: ignore[return-value]
