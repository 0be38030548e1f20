"""The rows of a part, and what it takes where a key is left open or a size says no thread."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.errors import Ambiguous, InputError, LookupMiss, UnitError
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.unsized import may_be
from gaugeblock.fasteners.way import Way, table_way
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

TABLE = "fasteners/part_torques"
# Where no torque is printed for a part, the most or the least that one prints is told.
LIMITS = {"tightening_torque_maximum": "no more than this", "tightening_torque_minimum": "no less than this"}
_QUANTITIES = ("tightening_torque", "turn_from_snug", "turn_from_finger_tight", *LIMITS)


def open_ways(at: dict[str, str], miss: LookupMiss | None, data: Refdata) -> list[Way]:
    """What the part takes for each value of the keys that are left open, the least first; none where no row answers."""
    if not isinstance(miss, Ambiguous):
        return _of_threads(at, data)
    names = open_names(miss)
    ways: dict[str, Way] = {}
    for choice in miss.nearest:
        cells = dict(zip(names, choice.split(" / "), strict=False))
        figures, _ = rows_of({**at, **cells}, data)
        if figures and figures[0].quantity in ("tightening_torque", *LIMITS):
            when = ", ".join(f"{k} {v}" for k, v in cells.items())
            ways.setdefault(figures[0].id, table_way(figures[0], data, when, LIMITS.get(figures[0].quantity, "")))
    return sorted(ways.values(), key=lambda w: units.to_base(w.low, w.figure.unit))


def open_names(miss: Ambiguous) -> list[str]:
    """The names of the keys that are left open."""
    return miss.do.removeprefix("name the ").split(" and ")


def _of_threads(at: dict[str, str], data: Refdata) -> list[Way]:
    """What the part takes on each thread of the diameter that was given without one, the least first."""
    ways = []
    for cell in _threads(at, data):
        figures, _ = rows_of({**at, "size": cell}, data)
        if figures and figures[0].quantity == "tightening_torque":
            ways.append(table_way(figures[0], data, cell))
    return sorted(ways, key=lambda w: units.to_base(w.low, w.figure.unit))


def _threads(at: dict[str, str], data: Refdata) -> list[str]:
    """The threads of the table of the diameter that was given without one."""
    if "size" not in at:
        return []
    return keys.threads_of(at["size"], lookup.choices(TABLE, "size", data=data, part=at["part"]), data)


def rows_of(at: dict[str, str], data: Refdata) -> tuple[list[Figure], LookupMiss | None]:
    """The governing figure of each quantity that answers, and why the first one does not."""
    found: list[Figure] = []
    miss: LookupMiss | None = None
    for quantity in _quantities(data):
        try:
            found.append(lookup.look_up(TABLE, quantity, data=data, **at))
        except LookupMiss as error:
            is_wrong = error.where.split(" ")[-1] in at and not error.informs and error.code != "ambiguous"
            if is_wrong and not _threads(at, data):
                raise
            if miss is None or (error.code == "ambiguous" and miss.code != "ambiguous"):
                miss = error
            elif error.informs:
                miss = error.informing((*miss.informs, *error.informs))
    return found, miss


def _quantities(data: Refdata) -> list[str]:
    return [q for q in _QUANTITIES if q in data.table(TABLE).by_quantity]


# A clamp goes by its pipe, and no table of them by that size was found: what there is answers for none of them alone.
BY_PIPE = "exhaust clamp"


# A thread that exists, and nobody's figure of it was found.
NO_SIZE = "no published source for this size, which is a thread"


def _is_length(typed: str) -> bool:
    """Whether a size is the diameter of a pipe, and no thread."""
    try:
        return units.parse_measure(typed, "length", "size").value > 0
    except UnitError:
        return False


def size_cell(typed: str, part_cell: str, service: str, data: Refdata) -> str:
    """The size cell that was typed.

    As the table has it, as a thread (``1/2-20`` is ``1/2-20 UNF``), or the range it lies in, that of its own service
    before those of others.
    """
    own = lookup.choices(TABLE, "size", data=data, part=part_cell)
    known = data.table(TABLE).column("size")
    text = " ".join(typed.split()).casefold()
    cell = known.get(text) or data.words("fasteners", "size").get(text)
    try:
        known_as: keys.Thread | None = keys.thread(typed, data)
    except LookupMiss:
        known_as = None
    thread = known_as.cell if known_as is not None else ""
    near = {*lookup.choices(TABLE, "size", data=data, part=part_cell, service=service)}
    near |= {*lookup.choices(TABLE, "size", data=data, part=part_cell, service="any")}
    is_unsized = known_as is not None and may_be(known_as, part_cell, service, data)
    for one in (cell, thread):
        if one in own and (one in near or not is_unsized):
            return one
    tube = _tube_of_its_nut(thread or text, part_cell, data)
    if tube:
        return tube
    within = sorted((c for c in own if c.startswith(("to ", "over ")) or " to " in c), key=lambda c: c not in near)
    for found in (
        *(c for c in within if _lies_in(typed, c)),
        "not stated" if is_unsized else "",
        cell,
        known.get(thread.casefold()),
    ):
        if found:
            return found
    sizes = [c for c in own if c not in ("any", "not stated")]
    if not sizes and part_cell.startswith(BY_PIPE) and _is_length(typed):
        return "not stated"
    if (not sizes and not (thread and "any" not in own)) or keys.threads_of(typed, own, data):
        return typed
    do = "the figure of another size does not answer: ask the maker"
    raise LookupMiss(typed, f"{part_cell} size", NO_SIZE if thread else "no published source for this size", sizes, do)


def _tube_of_its_nut(thread: str, part_cell: str, data: Refdata) -> str:
    """The tube whose nut has a thread, of a part that goes by its tube: 3/16 in for a nut 3/8-24; blank for none."""
    name = thread.partition(" ")[0]
    if "-" not in name and "x" not in name:
        return ""
    sought = re.compile(rf"\b{re.escape(name)} nut\b", re.IGNORECASE)
    rows = (r for r in data.table(TABLE).rows if r["part"] == part_cell and not r["standing"])
    found = {r["size"] for r in rows if sought.search(r["conditions"])}
    return found.pop() if len(found) == 1 else ""


def _lies_in(typed: str, cell: str) -> bool:
    try:
        span = parse_interval(re.sub(r"(?<=[0-9])-(?=[0-9]+/)", " ", cell))  # 3-3/4 is 3 3/4
        measure = units.parse_measure(typed, "length", "size")
    except InputError:
        return False
    return span is not None and span.holds(measure.value * units.factor(measure.unit))
