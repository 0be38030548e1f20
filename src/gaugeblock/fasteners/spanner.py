"""Spanner: the spanner, socket or hex key that fits a thread by its head, and the threads that one fits."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.british import british, diameter_m
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.asking import Topic
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Row

TABLE = "fasteners/hexagons"
QUANTITY = "width_across_flats"
BOLT, NUT = PAIR = ("hexagon bolt", "hexagon nut")
_KEYED = ("socket head cap screw", "button head screw", "countersunk socket screw", "set screw")
_PLUG = "spark plug"
_STANDARDS = ("ISO ", "ASME ", "BS ")  # by which a part is made today; DIN 931 and the like stand beside them
# What else a hexagon of the thread may be made to, as a sentence says it.
_ELSE = {
    "DIN 931": "by the older DIN 931 it is {}",
    "DIN 934": "by the older DIN 934 it is {}",
    "EN 1665": "with the heavy flange of EN 1665 it is {}",
    "old Whitworth": "with the larger hexagon of before the war it is {}",
    "JIS small": "on a Japanese vehicle it may be {}",
}
_FLANGED = "flange bolt"
_SAME = 2e-5  # m: two widths so near are one; 16 mm and 5/8 in are not
_SOLD_AS = 2e-4  # m: but of plugs they are sold as one
_METRIC, _INCH = "metric", "inch"
_ALIKE = 1e-6  # of a diameter, m


def _topic() -> Topic:
    from gaugeblock.fasteners.spanner_ask import SPANNER

    return SPANNER


@opens(_topic, "thread")
def spanner(
    thread: str | None = None,
    *,
    head: str | None = None,
    standard: str | None = None,
    flats: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The width across flats of a bolt, a nut or a plug, which is the size of its spanner, socket or hex key.

    ``thread`` ``M10`` or ``3/8-16``; its diameter alone says as much (``3/8``). ``head`` ``bolt``, ``nut``, ``socket
    head cap screw``, ``spark plug`` ...; without it the hexagons of bolt and nut are meant, where they are the same.
    ``standard`` what it is made to, where that is not the one of today (``DIN 931``); ``flats`` a size of spanner, to
    see what it fits.

    Returns a Sheet that names the other widths of the thread in its sentence; its decision is ``none`` where no table
    has one. Raises Ambiguous with the widths there are where bolt and nut differ or nothing says which it is,
    and with all that a spanner fits where no thread was said; LookupMiss for what is no thread and no head.

    >>> spanner("M10").decision.figure.text
    '16'
    """
    data = data or refdata()
    asked = {"thread": thread, "head": head, "standard": standard, "flats": flats}
    if standard is not None:
        _known(standard, data)
    if thread is None:
        raise _without_a_thread(head, flats, data)
    every, name = _of_thread(thread, data)
    rows = every
    if head is not None:
        cell = canonical(data, TABLE, "head", head)
        rows = [row for row in every if row["head"] == cell]
        name = rows[0]["size"] if rows else name
        title = f"{cell} of {name}"
    else:
        cell, title = "", f"hexagon of {name}"
    if flats is not None:
        return _of_flats(rows, flats, standard, title, asked, data)
    if not rows:
        do = "No table that was read has it. Measure over two opposite flats, or try the spanner that goes on snugly."
        return Sheet(title, asked, data, [], [], [], decision=none(_verb(cell), do))
    cell = cell or _unsaid(name, rows)
    return _of_head(name, every, cell, standard, title, asked, data)


def _known(standard: str, data: Refdata) -> None:
    """LookupMiss for what no hexagon is made to; its body alone names it (``DIN``)."""
    every = list(dict.fromkeys(row["standard"] for row in living(data)))
    if not standard.strip() or not any(one.casefold().startswith(standard.casefold()) for one in every):
        raise LookupMiss(standard, "standard", "no hexagon on record is made to it", every, "name one of these")


def _of_head(
    name: str,
    rows: list[Row],
    cell: str,
    standard: str | None,
    title: str,
    asked: dict[str, str | None],
    data: Refdata,
) -> Sheet:
    """The Sheet of one head of a thread, by the standard that was said or that it is made to today."""
    own = list(dict.fromkeys(row["standard"] for row in rows if row["head"] == cell))
    if standard is not None:
        made = next((one for one in own if one.casefold().startswith(standard.casefold())), "")
        if not made:
            raise InputError(standard, "standard", f"no {cell} of {name} by it is on record", own, "name one of these")
    else:
        today = [one for one in own if one.startswith(_STANDARDS)]
        if not today and len(own) > 1:
            raise Ambiguous(name, "standard", f"a {cell} of it has hexagons of several sizes", own, "name the standard")
        made = (today or own)[0]
    figure = _figure(next(row for row in rows if (row["head"], row["standard"]) == (cell, made)), data)
    others = _others(figure, cell, rows, data) if standard is None else []
    do = _sentence(figure, others, data)
    return Sheet(title, asked, data, [figure, *others], [], [], decision=use(_verb(cell), figure, do))


def _unsaid(name: str, rows: list[Row]) -> str:
    """The head that is taken of a thread where none was said: bolt and nut where they are one."""
    heads = list(dict.fromkeys(row["head"] for row in rows))
    pair = [head for head in PAIR if head in heads]
    if pair:
        widths = {head: _width(next(r for r in rows if r["head"] == head)) for head in pair}
        if max(widths.values()) - min(widths.values()) > _SAME:
            raise Ambiguous(name, "head", "its bolt and its nut have hexagons of two sizes", pair, "name the head")
        return pair[0]
    if len(heads) == 1:
        return heads[0]
    raise Ambiguous(name, "head", "which head was not said", heads, "name the head")


def _others(figure: Figure, cell: str, rows: list[Row], data: Refdata) -> list[Figure]:
    """The other widths that a hexagon of the thread may have: by an older standard, by another, under a flange."""
    alike = (cell, _FLANGED) if cell == BOLT else (cell,)
    found: dict[tuple[str, str], Figure] = {}
    for row in rows:
        is_other = row["standard"] in _ELSE or (row["head"] == _FLANGED and cell == BOLT)
        if row["head"] in alike and is_other and abs(_width(row) - _base(figure)) > _SAME:
            found.setdefault((row["head"], row["standard"]), _figure(row, data))
    return list(found.values())


def _sentence(figure: Figure, others: Iterable[Figure], data: Refdata) -> str:
    """What the other widths are, and what else is known of this one, as a sentence."""
    others = list(others)
    is_beside = figure.key["head"] != _FLANGED
    flanged = [printed(other, data) for other in others if is_beside and other.key["head"] == _FLANGED]
    said = [
        _ELSE[other.key["standard"]].format(printed(other, data))
        for other in others
        if not (is_beside and other.key["head"] == _FLANGED)
    ]
    said += [f"with a flange it is {' or '.join(dict.fromkeys(flanged))}"] if flanged else []
    known = f"{capital(figure.conditions)}." if figure.conditions else ""
    return " ".join(part for part in (known, f"{capital('; '.join(said))}." if said else "") if part)


def _of_flats(
    rows: list[Row], flats: str, standard: str | None, title: str, asked: dict[str, str | None], data: Refdata
) -> Sheet:
    """Whether a spanner fits a thread, and on what of it."""
    made, wide = (standard or "").casefold(), _flats(flats)
    fits = [r for r in rows if abs(_width(r) - wide) < _slack(r) and r["standard"].casefold().startswith(made)]
    if fits:
        figure = _figure(fits[0], data)
        do = f"It fits the {figure.key['head']}, {figure.key['standard']}."
        return Sheet(title, asked, data, [figure], [], [], decision=use(_verb(figure.key["head"]), figure, do))
    have = dict.fromkeys(f"{printed(_figure(row, data), data)} ({row['head']}, {row['standard']})" for row in rows)
    do = f"None of its hexagons on record is {flats} wide."
    do += f" They are {', '.join(have)}." if have else " No table that was read has this one."
    figures = [_figure(row, data) for row in rows]
    return Sheet(title, asked, data, figures, [], [], decision=none("", do))


def _without_a_thread(head: str | None, flats: str | None, data: Refdata) -> Ambiguous | InputError:
    """What is refused where no thread was said: all that a spanner fits, or all threads of a head, are named."""
    if flats is not None:
        found = fitted(flats, head, data)
        names = list(dict.fromkeys(row["size"] for row in found))
        if not names:
            why = "nothing that is on record has this width across flats"
            return InputError(flats, "flats", why, _nearest(flats, data), "measure over two opposite flats again")
        return Ambiguous(flats, "thread", "which thread was not said", names, "name the thread")
    if head is None:
        return InputError("(nothing)", "thread", "neither a thread nor a spanner was said", (), "say M10, or 3/8-16")
    sizes = list(dict.fromkeys(row["size"] for row in of_a_head(head, data)))
    if not sizes:
        return InputError(head, "thread", "which thread was not said", ("M10", "3/8-16"), "say the thread")
    return Ambiguous(head, "thread", "which thread was not said", sizes, "name the thread")


def of_a_head(head: str, data: Refdata) -> list[Row]:
    """The rows of a part that few threads have, one a thread and standard; none of a plain bolt or nut."""
    cell = canonical(data, TABLE, "head", head)
    rows = [row for row in living(data) if row["head"] == cell and cell not in PAIR]
    return list({row.key: row for row in rows}.values())


def living(data: Refdata) -> list[Row]:
    """The rows of all hexagons."""
    return [row for row in data.table(TABLE).rows if not row["standing"]]


def fitted(flats: str, head: str | None, data: Refdata, tool: str = "", made: str = "") -> list[Row]:
    """All that a spanner of this size fits, one row a thread and head, by the standard of today where it is that too;
    with ``tool`` only what a ``spanner`` or a ``hex key`` turns, with ``made`` what is made to that standard.
    """
    wide = _flats(flats)
    cell = None if head is None else canonical(data, TABLE, "head", head)
    found: dict[tuple[str, str], Row] = {}
    for row in living(data):
        is_turned = not tool or (row["head"] in _KEYED) == (tool == "hex key")
        is_own = cell in (None, row["head"]) and row["standard"].casefold().startswith(made)
        if abs(_width(row) - wide) < _slack(row) and is_own and is_turned:
            found.setdefault((row["size"], row["head"]), row)
    return list(found.values())


def _slack(row: Row) -> float:
    """How far two widths of a head may be apart and are one, m."""
    return _SOLD_AS if row["head"] == _PLUG else _SAME


def _nearest(flats: str, data: Refdata) -> list[str]:
    """The widths on record that are nearest to a size."""
    wide = _flats(flats)
    order = sorted(living(data), key=lambda row: abs(_width(row) - wide))
    return list(dict.fromkeys(printed(_figure(row, data), data) for row in order))[:3]


def _of_thread(thread: str, data: Refdata) -> tuple[list[Row], str]:
    """The rows of a thread by its diameter, and its name: ``M10`` of ``M10x1.25``, ``3/8 in`` of ``3/8-16``."""
    diameter, kind = size_of(thread, data)
    rows = [
        row for row in living(data) if (at := size_of(row["size"], data))[1] == kind and abs(at[0] - diameter) < _ALIKE
    ]
    return rows, rows[0]["size"] if rows else thread


def size_of(text: str, data: Refdata) -> tuple[float, str]:
    """The diameter of a thread or of a bare size in metres, and its kind: metric, inch, or an old British series."""
    text = text.removesuffix(" fine").removesuffix(" coarse")
    memo = ("hexagon size", text)
    got = data._memo.get(memo)
    if got is None:
        got = data._memo[memo] = _size_of(text, data)
    return got  # type: ignore[return-value]


def _size_of(text: str, data: Refdata) -> tuple[float, str]:
    old = british(text)
    if old:
        return diameter_m(old), old.rpartition(" ")[2]
    if text[:1] in "Mm" and text[1:].replace(".", "", 1).isdigit():
        return float(text[1:]) / 1000, _METRIC
    if text[:1] == "#" and text[1:].isdigit():
        return keys.numbered_m(int(text[1:])), _INCH
    try:
        found = keys.thread(text, data)
    except Ambiguous as error:
        found = keys.read_cell(error.nearest[0])
    except LookupMiss:
        size = _bare(text)
        if size is None:
            raise
        return size
    return found.diameter_m, _METRIC if found.is_metric else _INCH


def _bare(text: str) -> tuple[float, str] | None:
    """A diameter with its unit, of a plug or a tube; None of what is none."""
    try:
        size = units.parse_measure(text, "length", "thread")
    except InputError:
        return None
    return size.to("m"), _METRIC if size.unit == "mm" else _INCH


def _flats(typed: str) -> float:
    """A size of spanner in metres."""
    return units.parse_measure(typed, "length", "flats").to("m")


def _width(row: Row) -> float:
    return units.to_base(row.typical, row["unit"])


def _base(figure: Figure) -> float:
    return units.to_base(figure.typical, figure.unit)


def _figure(row: Row, data: Refdata) -> Figure:
    """The Figure that governs at the keys of a row."""
    return lookup.look_up(TABLE, QUANTITY, data=data, **Keys(zip(row.columns, row.key, strict=False)))


def _verb(head: str) -> str:
    return "HEX KEY" if head in _KEYED else "SOCKET" if head == _PLUG else "SPANNER"
