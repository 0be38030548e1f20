"""Table: what an answer comes to for each value of the keys that are left open, or that are compared."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, NONE, STOP
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import MARKED, number_only, other_unit, shop_unit
from gaugeblock.errors import visible
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from gaugeblock.answer.decision import Decision
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

MOST = 24
_GRID = 4
# Lines that an answer may fill.
_SCREEN = 15
_ROW = "  "
_NARROW = 60
_CARES = ("injury", "damage")
_WORDS = {ASK: "ask first", STOP: "stop", NONE: "no figure"}


class Line(Value):
    """One row of a Table: the ``key`` it is for, and its answer."""

    __slots__ = ("key", "sheet")

    key: Mapping[str, str]
    sheet: Sheet

    def __init__(self, key: Mapping[str, str], sheet: Sheet) -> None:
        put(self, "key", Keys(key))
        put(self, "sheet", sheet)

    def __hash__(self) -> int:
        return hash((tuple(self.key.items()), self.sheet))


class Table(Value):
    """The answers of a question side by side: ``open`` keys, ``lines`` one for each set of values, ``title``.

    ``more`` is how many further sets of values there are; ``beside`` are quantities that stand under each row too.
    """

    __slots__ = ("asked", "beside", "data", "lines", "more", "open", "title")

    title: str
    asked: Mapping[str, str | None]
    data: Refdata
    open: tuple[str, ...]
    lines: tuple[Line, ...]
    more: int
    beside: tuple[str, ...]

    def __init__(
        self,
        title: str,
        asked: Mapping[str, str | None],
        data: Refdata,
        open: Iterable[str],
        lines: Iterable[Line],
        more: int = 0,
        beside: Iterable[str] = (),
    ) -> None:
        put(self, "beside", tuple(beside))
        put(self, "title", title)
        put(self, "asked", Keys(asked))
        put(self, "data", data)
        put(self, "open", tuple(open))
        put(self, "lines", tuple(lines))
        put(self, "more", more)

    def __hash__(self) -> int:
        return hash((self.title, self.open, self.lines))

    def __repr__(self) -> str:
        kinds = [line.sheet.decision.kind for line in self.lines]
        does = ", ".join([f"{kinds.count(kind)} {kind}" for kind in dict.fromkeys(kinds)])
        more = f" and {self.more} more" if self.more else ""
        return f"<Table {visible(self.title, 100)!r}: {len(self.lines)} lines{more} ({does})>"

    def as_dict(self) -> dict[str, object]:
        """The table in the JSON of the contract."""
        from gaugeblock.answer.sheet import figure_dict

        rows = []
        for line in self.lines:
            made: dict[int, dict[str, object]] = {}
            shown = [figure_dict(f, self.data, made) for f in line.sheet.decision.figures]
            rows.append({"key": dict(line.key), "decision": line.sheet.decision.as_dict(), "figures": shown})
        table: dict[str, object] = {"open": list(self.open), "rows": rows}
        if self.more:
            table["more"] = self.more
        return {"asked": dict(self.asked), "data_release": self.data.release, "table": table}

    def text(self, unit: str | None = None, columns: int | None = None, above: int = 0, whole: bool = False) -> str:
        """For a person: a grid of the last key's values where there are few, else a line for each row.

        ``above`` are lines in which the reader was told already what was asked. No more rows than a screen holds,
        unless the ``whole`` is asked for.
        """
        from gaugeblock.answer.text import width, wrap

        wide = columns or width()
        unit = unit or self._unit()
        is_alike = all(set(self.open) <= line.key.keys() for line in self.lines)
        across = list(dict.fromkeys(line.key[self.open[-1]] for line in self.lines)) if self.open and is_alike else []
        is_grid = len(self.open) > 1 and 1 < len(across) <= _GRID
        body, tail = self._grid(across, unit, wide) if is_grid else (self._list(unit, wide), [])
        foot: list[str] = []
        shared = [c for c in self.lines[0].sheet.cautions if all(c in line.sheet.cautions for line in self.lines)]
        cares = sorted((c for c in shared if c.severity in _CARES), key=lambda c: _CARES.index(c.severity))
        foot += [part for c in cares[:1] for part in wrap(f"CARE  {c.text}", 2, 8, wide=wide)]
        release = f"data {self.data.release}{' (draft)' if self.data.is_draft else ''}"
        said = "  The part maker's figure governs if you have it."
        gap = wide - len(said) - len(release)
        foot += [f"{said}{' ' * gap}{release}"] if gap > 1 else [*wrap(said.strip(), 2, 2, wide=wide), f"  {release}"]
        what = capital(self.title.rpartition("; ")[2]) + "." if above else self.title
        kinds = {f.quantity for line in self.lines for f in _shown(line)}
        named = kinds.pop() if len(kinds) == 1 else ""
        if named and not _is_named(named, self.title):
            shown = named.replace("_", " ")
            what += f" Shown: {shown}." if above else f"; shown: {shown}"
        head = [*wrap(what, 0, 2, wide=wide), ""]
        room = _SCREEN - above - len(head) - len(tail) - len(foot) - (self.more > 0)
        stops = _stopped([line.sheet.decision for line in self.lines if line.sheet.decision.kind == STOP])
        asking = [line.sheet.decision for line in self.lines if line.sheet.decision.kind == ASK]
        told = [
            [part for text in (*stops, *texts) for part in wrap(text, 2, 2, wide=wide)] for texts in _settling(asking)
        ]
        settling = next((one for one in told if len(body) + len(one) <= room), told[-1])
        foot, room = [*settling, *foot], room - len(settling)
        body, cut = (body, 0) if whole or len(body) <= room else _kept(body, room - (not self.more))
        rest = "more: say more of it" if self.more else f"{cut} more: --why"
        foot = [f"  ... and {rest}"] * bool(self.more or cut) + foot
        return "\n".join([*head, *body, *tail, *foot])

    def _unit(self) -> str | None:
        """The unit of most of the numbers, a torque's by its thread, so that a column is of one unit; a road speed
        keeps that of its line.
        """
        shown = [f for line in self.lines for f in line.sheet.decision.figures[:1]]
        if all(f.quantity in MARKED for f in shown):
            return None  # a spanner is called by what is marked on it
        found = [shop_unit(f) or f.unit for f in shown]
        if {*found} == {"mph", "km/h"}:
            return None  # a clock in km/h is told in km/h
        return max(found, key=found.count) if found else None

    def _other(self, unit: str | None) -> str:
        """The other system's unit of most of the numbers, so that the second column too is of one unit; blank where
        they are of several dimensions.
        """
        from gaugeblock import units

        shown = [f for line in self.lines for f in _shown(line)]
        if all(f.quantity in MARKED for f in shown) or unit is None:
            return ""
        found = [to for f in shown if (to := _other_of(f, unit))]
        return max(found, key=found.count) if len({units.dimension(to) for to in found}) == 1 else ""

    def _grid(self, across: list[str], unit: str | None, wide: int) -> tuple[list[str], list[str]]:
        """Its rows, and the trust of each column below them."""
        down = list(dict.fromkeys(tuple(line.key[k] for k in self.open[:-1]) for line in self.lines))
        cells = {tuple(line.key[k] for k in self.open): line.sheet for line in self.lines}
        names = [", ".join(d) for d in down]
        first = max(map(len, names)) + 4
        step = max(14, (wide - first) // len(across))
        longest = max(*(len(_cell(line.sheet, unit)) for line in self.lines), *map(len, across))
        if first + step * (len(across) - 1) + max(longest, 12) > wide or longest + 2 > step:
            return self._list(unit, wide), []
        out = ["".join([" " * first, *(f"{a:<{step}}" for a in across)]).rstrip()]
        trusts: list[list[str]] = [[] for _ in across]
        for at, name in zip(down, names, strict=True):
            row = f"  {name:<{first - 2}}"
            for i, value in enumerate(across):
                sheet = cells.get((*at, value))
                row += f"{_cell(sheet, unit):<{step}}" if sheet is not None else " " * step
                trusts[i] += [f.trust for f in _shown_of(sheet)] if sheet is not None else []
            out.append(row.rstrip())
        return out, _under(trusts, first, step)

    def _beside(self, line: Line, unit: str | None) -> list[str]:
        """The further figures of a row, each with its name."""
        own = {f.quantity: f for f in line.sheet.figures}
        kept = [own[quantity] for quantity in self.beside if quantity in own]
        return [f"{f.quantity.replace('_', ' ')} {_number(f, line.sheet, unit)}" for f in kept]

    def _with_label(self, name: str, line: Line) -> str:
        from gaugeblock.answer.text import label

        figures = line.sheet.decision.figures
        _, more, said = line.sheet.title.partition(": ")  # what a title says more of it, a thread
        name = f"{name}, {said}" if more else name
        return f"{name}: {label(figures[0])}" if figures else name

    def _list(self, unit: str | None, wide: int) -> list[str]:
        from gaugeblock.answer.text import wrap

        names = [", ".join(v for k, v in line.key.items() if v not in ("any", "not stated")) for line in self.lines]
        first = min(max(map(len, names), default=0) + 4, wide // 2)
        out = []
        kinds = {f.quantity for line in self.lines for f in line.sheet.decision.figures[:1]}
        if len(kinds) > 1:
            names = [self._with_label(name, line) for name, line in zip(names, self.lines, strict=True)]
            first = min(max(map(len, names), default=0) + 4, wide // 2)
        elif all(told := [line.sheet.title.partition(": ")[2] for line in self.lines]) and len(set(told)) > 1:
            names = [f"{name}: {more}" for name, more in zip(names, told, strict=True)]
            first = min(max(map(len, names), default=0) + 4, wide // 2)
        cell = max(14, *(len(_cell(line.sheet, unit)) + 2 for line in self.lines))
        other = self._other(unit)
        seconds = [len(_second(_shown(line), line.sheet, unit, other)) + 2 for line in self.lines]
        second = max(12, *seconds) if max(seconds) > 2 else 0
        for name, line in zip(names, self.lines, strict=True):
            figures = _shown(line)
            numbers = f"{_cell(line.sheet, unit):<{cell}}{_second(figures, line.sheet, unit, other):<{second}}"
            trust = " or ".join(dict.fromkeys(f.trust for f in figures))
            if wide < _NARROW or len(name) + 4 > first or first + len(numbers.rstrip()) > wide:
                out += [*wrap(name, 2, 4, wide=wide), *wrap(" ".join(f"{numbers} {trust}".split()), 8, 10, wide=wide)]
                continue
            row = f"  {name:<{first - 2}}{numbers}"
            fits = len(row + trust) <= wide
            under = min(len(row) - second, wide - max(map(len, trust.split()), default=0))  # its longest word fits too
            out += [
                f"{row}{trust if fits else ''}".rstrip(),
                *([] if fits or not trust else wrap(trust, under, under, wide=wide)),
            ]
            out += [part for text in self._beside(line, unit) for part in wrap(text, 8, 10, wide=wide)]
        return out


def _shown(line: Line) -> tuple[Figure, ...]:
    """The figures that stand in a row, as ``_cell`` has them: one, or the safer candidate and the last of them; none
    where it stops, whatever the torque that would be kept to.
    """
    return _shown_of(line.sheet)


def _shown_of(sheet: Sheet) -> tuple[Figure, ...]:
    figures = sheet.decision.figures
    if sheet.decision.kind == STOP:
        return ()
    return (figures[0], figures[-1]) if sheet.decision.kind == ASK and len(figures) > 1 else figures[:1]


def _stopped(stopping: list[Decision]) -> list[str]:
    """Why the rows that stop do, and what to do, where all say the same."""
    whys = list(dict.fromkeys(decision.do for decision in stopping))
    if len(whys) > 1:
        return ["A row that stops says why: ask for that row alone."]
    return [f"Stop: {why}" for why in whys]


def _settling(asking: list[Decision]) -> list[list[str]]:
    """What settles the rows that ask first, in fewer and fewer words: what to do and what their ends are for, where all
    say the same.
    """
    if not asking:
        return [[]]
    least = [["A ? asks first: ask for that row alone, and it says what settles it."]]
    if len({decision.do for decision in asking}) > 1:
        return least
    do = f"A ? asks first. {asking[0].do}"
    ends = {(decision.candidates[0].when, decision.candidates[-1].when) for decision in asking if decision.candidates}
    first, last = ends.pop() if len(ends) == 1 else ("", "")
    both = [[do, f"The first figure is for: {first}.", f"The last figure is for: {last}."]] if first != last else []
    return [*both, [do], *least]


def _is_named(quantity: str, title: str) -> bool:
    """Whether a title says already of which quantity the numbers are."""
    return quantity.rpartition("_")[2] in title


def _cell(sheet: Sheet, unit: str | None) -> str:
    """What a row comes to in one cell: the number to use, or the candidates, or a word."""
    decision = sheet.decision
    numbers = [f"{_number(c.figure, sheet, unit)} {c.plus}".rstrip() for c in decision.candidates]
    if decision.kind == NONE and sheet.figures:
        from gaugeblock.answer.text import label

        return f"no figure; {label(sheet.figures[0])} {number_only(sheet.figures[0], sheet.data)}"
    if decision.kind == ASK and len(numbers) == 1:
        return f"{numbers[0]} ?"
    if decision.kind == ASK and numbers:
        return f"{_between(numbers, len(numbers))} ?"
    if decision.kind in _WORDS:
        return _WORDS[decision.kind]
    return numbers[0] if numbers else _WORDS[NONE]


def _between(numbers: list[str], how_many: int) -> str:
    """The safer candidate and the last of them, the unit once where both have it: ``7 or 10 psi`` of two, ``6 to 14
    AWG`` of more.
    """
    first, last = numbers[0].split(" "), numbers[-1].split(" ")
    joined = "or" if how_many == _BOTH else "to"
    if len(first) == len(last) == _NUMBER_AND_UNIT and first[1] == last[1]:
        return f"{first[0]} {joined} {numbers[-1]}"
    return f"{numbers[0]}, {joined} {numbers[-1]}"


_BOTH = 2


_NUMBER_AND_UNIT = 2


def _number(figure: Figure, sheet: Sheet, unit: str | None) -> str:
    from gaugeblock import units

    is_alike = unit is not None and units.dimension(unit) == units.dimension(figure.unit)
    return number_only(figure, sheet.data, unit if is_alike else shop_unit(figure))


def _second(figures: tuple[Figure, ...], sheet: Sheet, unit: str | None, column: str) -> str:
    """The same in the other system's unit, in that of the ``column`` where there is one."""
    numbers = [number_only(f, sheet.data, column or to) for f in figures if (to := _other_of(f, unit))]
    if not numbers or len(numbers) < len(figures):
        return ""
    return numbers[0] if len(numbers) == 1 else _between(numbers, len(sheet.decision.candidates))


def _other_of(figure: Figure, unit: str | None) -> str | None:
    """The other system's unit of a number that is told in ``unit``; None where it has none."""
    from gaugeblock import units

    is_alike = unit is not None and units.dimension(unit) == units.dimension(figure.unit)
    if not is_alike and shop_unit(figure) is not None:
        return figure.unit
    return other_unit(figure.replace(unit=unit)) if is_alike else other_unit(figure)


def _under(trusts: list[list[str]], first: int, step: int) -> list[str]:
    """The trust of each column under it, broken at its words; the weakest where a column has several."""
    from textwrap import wrap as broken

    shown = [broken(max(t, key=len), step - 2) if t else [] for t in trusts]
    return [
        "".join([" " * first, *(f"{s[at] if at < len(s) else '':<{step}}" for s in shown)]).rstrip()
        for at in range(max(map(len, shown), default=0))
    ]


def _kept(body: list[str], room: int) -> tuple[list[str], int]:
    """The rows that a screen has room for, whole, and how many were left out."""
    starts = [n for n, line in enumerate(body) if line[: len(_ROW)] == _ROW and line[len(_ROW) : len(_ROW) + 1] != " "]
    end = max((n for n in starts if n <= room), default=room)
    return body[:end], sum(n >= end for n in starts)
