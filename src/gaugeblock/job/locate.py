"""Where each key of a TOML text stands, and whether the text is too much to parse; one cheap pass, no values built.

The pass never fails: at the first thing it cannot read it stops, and the TOML parser, which stops there too, says why.
Limits are refused here because a parser may take very long over long dotted keys, or overflow on deep nesting.
"""

from __future__ import annotations

import re
from bisect import bisect_right

Path = tuple[str | int, ...]

PARTS_LIMIT = 8
DEPTH_LIMIT = 8
KEY_LIMIT = 100
BARE_LIMIT = 100
VALUES_LIMIT = 30_000

_GAP = re.compile(r"(?:[ \t\r\n]++|#[^\n]*+)*+")
_BLANKS = re.compile(r"[ \t]*+")
_KEY = re.compile(r"""[A-Za-z0-9_-]++|"(?:[^"\\\n]++|\\[^\n])*+"|'[^'\n]*+'""")
_STRING = re.compile(
    r'''"""(?:[^"\\]++|\\.|"(?!""))*+"{3,5}+|\'\'\'(?:[^']++|'(?!\'\'))*+'{3,5}+'''
    r"""|"(?!"")(?:[^"\\\n]++|\\[^\n])*+"|'(?!\'\')[^'\n]*+\'""",
    re.DOTALL,
)
_BARE = re.compile(r"""[^\s,\[\]{}#"']++""")


class Excess(Exception):
    """The text goes over a limit at ``line``."""

    def __init__(self, path: Path, line: int, why: str) -> None:
        super().__init__(why)
        self.path = path
        self.line = line
        self.why = why


class _End(Exception):
    """The pass stops here: the text ends or is no TOML."""


class Outline:
    """Key paths of a TOML text: ``lines`` by path, ``twice`` given ones, ``excess`` when a limit is passed."""

    __slots__ = ("_breaks", "_given", "_lists", "_pos", "_text", "_values", "excess", "lines", "twice")

    def __init__(self, text: str) -> None:
        self.lines: dict[Path, int] = {}
        self.twice: list[tuple[Path, int, int]] = []
        self.excess: Excess | None = None
        self._text = text
        self._breaks = [m.start() for m in re.finditer("\n", text)]
        self._pos = 0
        self._values = 0
        self._given: dict[Path, int] = {}
        self._lists: dict[Path, int] = {}
        try:
            self._read()
        except Excess as excess:
            self.excess = excess
        except _End:
            pass

    def line_of(self, path: Path) -> int | None:
        """The line of a key path, or of the nearest table around it."""
        while path:
            line = self.lines.get(path)
            if line is not None:
                return line
            path = path[:-1]
        return None

    def path_at(self, line: int) -> Path:
        """The last key that begins at or above a line; blank before the first key."""
        best: Path = ()
        for path, at in self.lines.items():
            if at <= line and at >= self.lines.get(best, 0):
                best = path
        return best

    def _line(self) -> int:
        return bisect_right(self._breaks, self._pos - 1) + 1 if self._pos else 1

    def _read(self) -> None:
        text = self._text
        base: Path = ()
        while True:
            self._skip(_GAP)
            if self._pos >= len(text):
                return
            if text[self._pos] == "[":
                base = self._header()
            else:
                self._value(self._pair(base))

    def _skip(self, what: re.Pattern[str]) -> None:
        match = what.match(self._text, self._pos)
        if match is not None:
            self._pos = match.end()

    def _take(self, token: str) -> None:
        self._skip(_BLANKS)
        if not self._text.startswith(token, self._pos):
            raise _End
        self._pos += len(token)

    def _key(self, base: Path) -> tuple[str, ...]:
        parts: list[str] = []
        while True:
            self._skip(_BLANKS)
            match = _KEY.match(self._text, self._pos)
            if match is None:
                raise _End
            length = len(match[0].strip("\"'"))
            if length > KEY_LIMIT:
                raise Excess(base, self._line(), f"a key of {length} characters; at most {KEY_LIMIT} are taken")
            parts.append(_unquoted(match[0]))
            if len(parts) > PARTS_LIMIT:
                raise Excess(base, self._line(), f"a dotted key of more than {PARTS_LIMIT} parts")
            self._pos = match.end()
            self._skip(_BLANKS)
            if not self._text.startswith(".", self._pos):
                return tuple(parts)
            self._pos += 1

    def _header(self) -> Path:
        line = self._line()
        many = self._text.startswith("[[", self._pos)
        self._pos += 2 if many else 1
        parts = self._key(())
        self._take("]]" if many else "]")
        path: Path = ()
        for part in parts[:-1]:
            path = self._within((*path, part))
            self.lines.setdefault(path, line)
        path = (*path, parts[-1])
        if many:
            self.lines.setdefault(path, line)
            self._lists[path] = self._lists.get(path, -1) + 1
            path = self._within(path)
            self.lines[path] = line
        else:
            self.lines.setdefault(path, line)
            self._give(path, line)
        self._count(path, line)
        return path

    def _within(self, path: Path) -> Path:
        index = self._lists.get(path)
        return path if index is None else (*path, index)

    def _pair(self, base: Path) -> Path:
        """Read ``key =`` and note every part of its path."""
        self._skip(_BLANKS)
        line = self._line()
        parts = self._key(base)
        self._take("=")
        path = base
        for part in parts:
            path = (*path, part)
            self.lines.setdefault(path, line)
        self._give(path, line)
        return path

    def _give(self, path: Path, line: int) -> None:
        first = self._given.get(path)
        if first is None:
            self._given[path] = line
        else:
            self.twice.append((path, line, first))

    def _count(self, path: Path, line: int) -> None:
        self._values += 1
        if self._values > VALUES_LIMIT:
            raise Excess(path, line, f"more than {VALUES_LIMIT} values")

    def _value(self, here: Path) -> None:
        """Walk over one value; lists and inline tables are kept on a stack of [path, index or None]."""
        text = self._text
        stack: list[tuple[Path, int | None]] = []
        while True:
            self._skip(_GAP if stack else _BLANKS)
            if self._pos >= len(text):
                raise _End
            at = text[self._pos]
            if not stack and at in "\r\n#":
                return
            if at in ",]}":
                if not stack:
                    raise _End
                here = self._close_or_next(at, stack)
                continue
            line = self._line()
            self.lines.setdefault(here, line)
            self._count(here, line)
            if at in "[{":
                self._pos += 1
                if len(stack) >= DEPTH_LIMIT:
                    raise Excess(here, line, f"nested more than {DEPTH_LIMIT} deep")
                stack.append((here, 0 if at == "[" else None))
                here = (*here, 0) if at == "[" else self._inline(here)
                continue
            match = (_STRING if at in "\"'" else _BARE).match(text, self._pos)
            if match is None:
                raise _End
            length = match.end() - match.start()
            if at not in "\"'" and length > BARE_LIMIT:
                why = f"a value of {length} characters without quotes; at most {BARE_LIMIT} are taken"
                raise Excess(here, line, why)
            self._pos = match.end()

    def _inline(self, table: Path) -> Path:
        """The path of the next key of an inline table; the table itself when it ends here."""
        self._skip(_GAP)
        return table if self._text.startswith("}", self._pos) else self._pair(table)

    def _close_or_next(self, at: str, stack: list[tuple[Path, int | None]]) -> Path:
        self._pos += 1
        path, index = stack.pop()
        if at in "]}":
            return path
        stack.append((path, None if index is None else index + 1))
        return self._inline(path) if index is None else (*path, index + 1)


def _unquoted(key: str) -> str:
    if key[0] not in "\"'":
        return key
    if key[0] == "'" or "\\" not in key:
        return key[1:-1]
    import tomllib

    try:
        return str(tomllib.loads(f"key = {key}")["key"])
    except tomllib.TOMLDecodeError:
        raise _End from None
