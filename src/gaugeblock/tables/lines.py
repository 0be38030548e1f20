"""The lines of one CSV file of refdata: read whole or one by one, refused with file, line and fault."""

from __future__ import annotations

from gaugeblock.errors import DataError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable


def version_key(text: str) -> tuple[int, int, int]:
    """``0.2.0`` as comparable numbers; DataError when it is not a release number."""
    parts = text.split(".")
    if len(parts) != 3 or not all(p.isascii() and p.isdigit() and len(p) <= 6 for p in parts):
        raise DataError(text, "release number", "not a release number", (), "write it as 0.2.0")
    return int(parts[0]), int(parts[1]), int(parts[2])


def is_decimal(text: str) -> bool:
    """Plain decimal text: ``12``, ``-0.5``; no exponent, no comma, no bare point."""
    whole, point, part = text.removeprefix("-").partition(".")
    return text.isascii() and whole.isdigit() and (part.isdigit() if point else not part)


def read_lines(path: str, name: str, columns: tuple[str, ...]) -> list[list[str]]:
    """The cells of the lines after the header of one CSV file; DataError names file, line and fault."""
    text = read_text(path, name)
    rows = _plainly(text)
    if rows is None:
        import io

        try:
            rows = _as_library(io.StringIO(text, newline=""))
        except ValueError as error:
            raise _unreadable(name, error) from None
    if not rows or tuple(rows[0]) != columns:
        raise _other_header(name, columns)
    if set(map(len, rows)) != {len(columns)}:
        line, cells = next((n, c) for n, c in enumerate(rows, 1) if len(c) != len(columns))
        raise _other_width(name, line, cells, columns)
    return rows[1:]


def _plainly(text: str) -> list[list[str]] | None:
    """The cells of a text that has each row on a line of its own; None for another text."""
    lines = text.removesuffix("\n").split("\n")
    try:
        return None if "" in lines else split(lines)
    except ValueError:
        return None


def split(lines: list[str]) -> list[list[str]]:
    """The cells of some lines: a line whose cells have their quotes where they belong is taken apart at its quotes and
    commas, which is quicker than reading it sign by sign. ValueError where a cell goes on beyond its line.
    """
    rows: list[list[str]] = []
    others = []
    for at, line in enumerate(lines):
        if '"' in line or "\r" in line:
            cells = _quoted(line)
            if cells is None:
                others.append(at)
                cells = []
            rows.append(cells)
        else:
            rows.append(line.split(","))
    if others:
        read = _as_library([lines[at] for at in others])
        if len(read) != len(others):
            raise ValueError("a cell goes on beyond its line")
        for at, cells in zip(others, read, strict=True):
            rows[at] = cells
    return rows


def _as_library(lines: Iterable[str]) -> list[list[str]]:
    """The cells of lines as the standard library reads them: seldom needed, so loaded here."""
    import csv

    try:
        return list(csv.reader(lines, strict=True))
    except csv.Error as error:
        raise ValueError(str(error)) from None


def _quoted(line: str) -> list[str] | None:
    """The cells of a line whose quotes stand round whole cells, doubled inside them, and nowhere else; None for another
    line.
    """
    pieces = line.split('"')
    last = len(pieces) - 1
    if last % 2 or "\r" in line:
        return None
    cells = pieces[0][:-1].split(",") if pieces[0] else []
    if pieces[0][-1:] not in ("", ","):
        return None
    begun = ""
    for at in range(1, last, 2):
        between = pieces[at + 1]
        if not between and at + 1 != last:  # a quote inside a cell stands doubled
            begun += pieces[at] + '"'
            continue
        cells.append(begun + pieces[at])
        begun = ""
        if at + 1 == last:
            if between[:1] not in ("", ","):
                return None
            return cells + between[1:].split(",") if between else cells
        if between[:1] != "," or between[-1] != ",":
            return None
        if between != ",":
            cells += between[1:-1].split(",")
    return None  # no quote


def read_text(path: str, name: str) -> str:
    """The text of one CSV file as it stands; DataError when it cannot be read."""
    try:
        with open(path, "rb", buffering=0) as handle:  # and decoded at once: a stream of text takes twice the time
            return handle.read().decode()
    except (OSError, UnicodeDecodeError) as error:
        raise _unreadable(name, error) from None


def _unreadable(name: str, error: Exception) -> DataError:
    if isinstance(error, FileNotFoundError):
        return DataError(f"{name}.csv", "refdata", "the file is missing", (), "restore it")
    do = "correct the file, then run validate"
    return DataError(f"{name}.csv", "refdata", f"cannot be read: {error}", (), do)


def _other_header(name: str, columns: tuple[str, ...]) -> DataError:
    do = f"write: {','.join(columns)}"
    return DataError(f"{name}.csv", "line 1", "the header is not that of the catalogue", (), do)


def _other_width(name: str, line: int, cells: list[str], columns: tuple[str, ...]) -> DataError:
    why = f"{len(cells)} fields, not {len(columns)}"
    return DataError(f"{name}.csv", f"line {line}", why, (), "give every column, blank ones too")


def read_raw(path: str, name: str, columns: tuple[str, ...]) -> list[str]:
    """The lines of a file as they stand, its header first; DataError when it or its header cannot be read."""
    lines = read_text(path, name).split("\n")
    if lines[0].removesuffix("\r") != ",".join(columns):
        raise _other_header(name, columns)
    return lines


def split_at(lines: list[str], places: list[int], name: str, columns: tuple[str, ...]) -> list[tuple[int, list[str]]]:
    """Of the lines at some places, the number and the cells."""
    try:
        rows = split([lines[at] for at in places])
    except ValueError as error:
        raise _unreadable(name, error) from None
    if not set(map(len, rows)) <= {len(columns)}:
        at, cells = next((n, c) for n, c in zip(places, rows, strict=True) if len(c) != len(columns))
        raise _other_width(name, at + 1, cells, columns)
    return [(at + 1, cells) for at, cells in zip(places, rows, strict=True)]


# After so many questions the lines are sorted by their first cells: that takes as long as some ten searches.
_MANY = 8


class Lines:
    """The text of one list; a line is split when it is asked for, since a look-up needs few."""

    __slots__ = ("_asked", "_begins", "_blocks", "_columns", "_folded", "_name", "_text")

    def __init__(self, path: str, name: str, columns: tuple[str, ...]) -> None:
        self._name = name
        self._columns = columns
        text = read_text(path, name)
        header, _, text = text.partition("\n")
        if header != ",".join(columns):
            raise _other_header(name, columns)
        self._text = f"\n{text}" if not text or text.endswith("\n") else f"\n{text}\n"
        self._blocks: dict[str, str] = {}
        self._folded = ""
        self._asked = 0
        self._begins: dict[str, list[int]] = {}

    def of(self, first: str) -> list[list[str]]:
        """The cells of the lines whose first cell is this."""
        return [self._split(at, self._text.find("\n", at + 1)) for at in self._begun_by(first)]

    def _begun_by(self, first: str) -> list[int]:
        """Where the lines begin whose first cell is this."""
        self._asked += 1
        if self._asked > _MANY and "," not in first:
            return (self._begins or self._sorted()).get(first, [])
        text, sought = self._text, f"\n{first},"
        found = []
        at = text.find(sought)
        while at >= 0:
            found.append(at)
            at = text.find(sought, at + 1)
        return found

    def _sorted(self) -> dict[str, list[int]]:
        """Where the lines begin, by their first cells; kept when it is whole, for another thread may ask meanwhile."""
        begins: dict[str, list[int]] = {}
        at = 0
        for line in self._text[1:-1].split("\n"):
            first, comma, _ = line.partition(",")
            if comma:
                begins.setdefault(first, []).append(at)
            at += len(line) + 1
        self._begins = begins
        return begins

    def column_of(self, first: str, at: int, cell: str) -> list[list[str]]:
        """The cells of the lines whose first cell is ``first`` and whose cell in column ``at`` is ``cell``.

        Quickest where these stand together.
        """
        text, sought = self._block(first), f",{cell},"
        one, other = text.find(sought), text.rfind(sought)
        if one < 0:
            return []
        block = text[text.rfind("\n", 0, one) + 1 : text.find("\n", other)]
        lines = block.split("\n")
        try:
            cut = split(lines)
        except ValueError as error:
            raise _unreadable(self._name, error) from None
        if set(map(len, cut)) != {len(self._columns)}:
            self.all()  # which names the line
        return [cells for cells in cut if cells[0] == first and cells[at] == cell]

    def _block(self, first: str) -> str:
        """The text from the first line whose first cell is this to the last."""
        got = self._blocks.get(first)
        if got is None:
            text, begins = self._text, f"\n{first},"
            start, last = text.find(begins), text.rfind(begins)
            got = self._blocks[first] = text[start : text.find("\n", last + 1) + 1] if start >= 0 else ""
        return got

    def holding(self, word: str) -> list[list[str]]:
        """The cells of the lines in which a word stands, in whatever case; the word in lower case."""
        text = self._folded = self._folded or self._text.casefold()
        if len(text) != len(self._text):  # a letter that grew in lower case: places are no longer the same
            return [cells for cells in self.all() if any(word in cell.casefold() for cell in cells)]
        found = []
        at = text.find(word)
        while at >= 0:
            start, end = text.rfind("\n", 0, at), text.find("\n", at)
            found.append(self._split(start, end))
            at = text.find(word, end)
        return found

    def all(self) -> list[list[str]]:
        """The cells of every line."""
        found = []
        start = 0
        while (end := self._text.find("\n", start + 1)) >= 0:
            found.append(self._split(start, end))
            start = end
        return found

    def _split(self, start: int, end: int) -> list[str]:
        line = self._text[start + 1 : end]
        try:
            (cells,) = split([line])
        except ValueError as error:
            raise _unreadable(self._name, error) from None
        if len(cells) != len(self._columns):
            raise _other_width(self._name, self._text.count("\n", 0, start) + 2, cells, self._columns)
        return cells
