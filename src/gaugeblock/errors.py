"""What can go wrong, as one tree.

    GaugeblockError
    ├── LookupMiss (LookupError)      no row answers the question
    │   └── Ambiguous                 the words typed fit more than one key
    ├── InputError (ValueError)       a number, unit, option or job value cannot be read
    │   ├── UnitError                 unknown unit, or of another dimension
    │   └── JobError                  a job file with one or more problems
    ├── DataError (ValueError)        refdata itself is damaged
    └── OutputError (OSError)         the packet cannot be written there

Every error carries its parts: what was asked, where, why not, the nearest valid choices, what to do.
"""

from __future__ import annotations

import re

from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable
    from typing import NoReturn

    from gaugeblock import Figure, Table  # by the face alone: what they are made of stands in rooms above this one


# What cannot be seen, or makes a printed line differ from what was written: control characters, line and paragraph
# separators, marks of no width, marks that turn the reading direction, tags, and halves of a pair, which no file holds.
_HIDDEN = (
    "[\x00-\x1f\x7f-\x9f\xad\u061c\u115f\u1160\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\u3164\ufeff\uffa0"
    "\ufff9-\ufffb\U000e0000-\U000e007f\ud800-\udfff]"
)
_LONGEST = {"asked": 160, "where": 300, "why": 600, "nearest": 120, "do": 400}


def hidden(text: str) -> re.Match[str] | None:
    """The first character of a text that cannot be seen; None when all can be."""
    if text.isascii() and text.isprintable():
        return None  # without the pattern, whose making costs more than most texts
    return re.search(_HIDDEN, text)


def visible(text: str, limit: int | None = 60, keep: str = "") -> str:
    """Text as a terminal may print it: what cannot be seen as its number, long text cut.

    >>> visible("a\\x1b[31m")
    'a\\\\u001b[31m'
    """
    cut = text if limit is None or len(text) <= limit else text[:limit] + "..."
    if all(part.isprintable() for part in (cut.split(keep) if keep else (cut,))):
        return cut
    return re.sub(_HIDDEN, lambda m: m[0] if m[0] in keep else _number(m[0]), cut)


def _number(mark: str) -> str:
    # in pairs where JSON has them, so that JSON with such a mark stays JSON
    raw = mark.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{raw[at] << 8 | raw[at + 1]:04x}" for at in range(0, len(raw), 2))


class Offers(tuple[str, ...]):
    """Choices to offer, of which the first ``near`` are near to what was typed; the rest is what there is."""

    near: int

    def __new__(cls, choices: Iterable[str], near: int) -> Offers:
        """The choices, with how many of them are near."""
        made = super().__new__(cls, choices)
        put(made, "near", near)
        return made

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"Offers are frozen: {name} cannot be set")

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"Offers are frozen: {name} cannot be deleted")

    def __getnewargs__(self) -> tuple[tuple[str, ...], int]:
        return tuple(self), self.near


# What Python notes of an error as it goes up; all else of it is frozen.
_NOTED = ("__traceback__", "__context__", "__cause__", "__suppress_context__", "__notes__")


def _again(kind: type[GaugeblockError], args: tuple[str, ...], parts: dict[str, object]) -> GaugeblockError:
    """An error that was pickled or copied: its parts as they stood, as to read them again would cut them again."""
    made = kind.__new__(kind)
    Exception.__init__(made, *args)
    for name, value in parts.items():
        put(made, name, value)
    return made


class GaugeblockError(Exception):
    """Root of all refusals; prints as one message."""

    code = "error"
    asked: str
    where: str
    why: str
    do: str
    _nearest: Iterable[str] | Callable[[], Iterable[str]]
    _offers: Offers | None

    def __init__(
        self, asked: str, where: str, why: str, nearest: Iterable[str] | Callable[[], Iterable[str]] = (), do: str = ""
    ) -> None:
        put(self, "asked", visible(asked, _LONGEST["asked"]))
        put(self, "where", visible(where, _LONGEST["where"]))
        put(self, "why", visible(why, _LONGEST["why"]))
        put(self, "do", visible(do, _LONGEST["do"]))
        put(self, "_nearest", nearest if callable(nearest) or isinstance(nearest, Offers) else tuple(nearest))
        put(self, "_offers", None)
        Exception.__init__(self, self.asked, self.where, self.why)  # that of the system's errors reads numbers in them

    def __setattr__(self, name: str, value: object) -> None:
        if name not in _NOTED:
            self.__delattr__(name)
        super().__setattr__(name, value)

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"a {type(self).__name__} is frozen: {name} cannot be changed")

    def __reduce__(self) -> tuple[Callable[..., object], tuple[type, tuple[object, ...], dict[str, object]]]:
        parts = {**vars(self), "_nearest": (), "_offers": self._all}  # found now: what finds them stays here
        return _again, (type(self), self.args, parts)

    def __eq__(self, other: object) -> bool:
        if type(self) is not type(other) or not isinstance(other, GaugeblockError):
            return False
        return self.as_dict() == other.as_dict() and (self.every, self.near) == (other.every, other.near)

    def __hash__(self) -> int:
        return hash((type(self), self.asked, self.where, self.why, self.do))

    @property
    def nearest(self) -> tuple[str, ...]:
        """The nearest valid choices, five at the most; looked for when first asked, as many a refusal is not shown."""
        return self.every[:5]

    @property
    def _all(self) -> Offers:
        offers = self._offers
        if offers is None:
            found = self._nearest() if callable(self._nearest) else self._nearest
            from gaugeblock.negation import denied, says

            base = denied(self.asked)
            kept = [(n, choice) for n, choice in enumerate(found) if not (base and says(choice, base))]
            near = sum(n < found.near for n, _ in kept) if isinstance(found, Offers) else len(kept)
            offers = Offers((visible(choice, _LONGEST["nearest"]) for _, choice in kept), near)
            put(self, "_offers", offers)
        return offers

    @property
    def near(self) -> int:
        """How many of the choices are near to what was asked; the rest is what there is."""
        return self._all.near

    @property
    def every(self) -> tuple[str, ...]:
        """All valid choices that there are, the nearest first."""
        return tuple(self._all)

    @property
    def choices(self) -> str:
        """The choices as text: what is near, what else there is, and how many more."""
        shown, near = self.nearest, self.near
        more = len(self._all) - len(shown)
        also = ", ".join(shown[near:]) + (f" and {more} more" if more > 0 else "")
        if not near:
            return f"Nothing near it is known; there is: {also}" if shown else ""
        if near >= len(shown):
            return f"Near it: {', '.join(shown)}" + (f" and {more} more" if more > 0 else "")
        return f"Near it: {', '.join(shown[:near])}. There is also: {also}"

    def __str__(self) -> str:
        parts = [f"{self.where}: {self.asked}: {self.why}" if self.where else f"{self.asked}: {self.why}"]
        if self.nearest:
            parts.append("nearest: " + ", ".join(self.nearest))
        if self.do:
            parts.append(self.do)
        return "; ".join(parts)

    def as_dict(self) -> dict[str, object]:
        """The error as the command line prints it with ``--json``."""
        return {
            "code": self.code,
            "asked": self.asked,
            "where": self.where,
            "why": self.why,
            "nearest": list(self.nearest),
            "do": self.do,
        }


class LookupMiss(GaugeblockError, LookupError):
    """No row answers; ``nearest`` holds the keys that do exist, ``informs`` figures of another service or standing."""

    code = "not found"
    informs: tuple[Figure, ...]

    def __init__(
        self,
        asked: str,
        where: str,
        why: str,
        nearest: Iterable[str] | Callable[[], Iterable[str]] = (),
        do: str = "",
        informs: Iterable[Figure] = (),
    ) -> None:
        super().__init__(asked, where, why, nearest, do)
        put(self, "informs", tuple(informs))

    def __eq__(self, other: object) -> bool:
        return super().__eq__(other) and isinstance(other, LookupMiss) and self.informs == other.informs

    __hash__ = GaugeblockError.__hash__

    def informing(self, figures: Iterable[Figure]) -> LookupMiss:
        """The same miss with other figures that inform."""
        return type(self)(self.asked, self.where, self.why, self._all, self.do, figures)


class Ambiguous(LookupMiss):
    """More than one key fits what was typed, or one was left open.

    ``nearest`` are what fits; ``table`` the answers for its values side by side, None where they are not known.
    """

    code = "ambiguous"
    _tabled: Callable[[], Table | None] | None = None
    _table: Table | None = None

    def tabled(self, find: Callable[[], Table | None]) -> Ambiguous:
        """This refusal with what finds its table, which is looked for when first asked."""
        if self._tabled is None and self._table is None:
            put(self, "_tabled", find)
        return self

    @property
    def table(self) -> Table | None:
        """The Table of what the open key comes to, value by value."""
        find = self._tabled
        if find is not None:
            put(self, "_table", find())
            put(self, "_tabled", None)  # last: while it stands, another thread finds for itself
        return self._table

    def __reduce__(self) -> tuple[Callable[..., object], tuple[type, tuple[object, ...], dict[str, object]]]:
        kind, (made, args, parts) = super().__reduce__()
        return kind, (made, args, {**parts, "_table": self.table, "_tabled": None})


class InputError(GaugeblockError, ValueError):
    """A typed value cannot be read."""

    code = "bad input"


class UnitError(InputError):
    """A unit is unknown, or measures another dimension."""

    code = "unit"


class Problem(Value):
    """One fault of a job file: the key's path, its line, why, and the nearest valid choices."""

    __slots__ = ("do", "line", "nearest", "path", "why")

    path: str
    line: int | None
    why: str
    nearest: tuple[str, ...]
    do: str

    def __init__(self, path: str, line: int | None, why: str, nearest: tuple[str, ...] = (), do: str = "") -> None:
        put(self, "path", visible(path, _LONGEST["where"]))
        put(self, "line", line)
        put(self, "why", visible(why, _LONGEST["why"]))
        put(self, "nearest", tuple(visible(choice, _LONGEST["nearest"]) for choice in tuple(nearest)[:5]))
        put(self, "do", visible(do, _LONGEST["do"]))

    def __str__(self) -> str:
        at = f"line {self.line}: " if self.line else ""
        text = f"{at}{self.path}: {self.why}"
        if self.nearest:
            text += "; nearest: " + ", ".join(self.nearest)
        if self.do:
            text += "; " + self.do
        return text


class JobError(InputError):
    """A job file that cannot be used; all its problems are told at once."""

    code = "job"
    problems: tuple[Problem, ...]

    def __init__(self, where: str, problems: list[Problem]) -> None:
        count = len(problems)
        why = "; ".join(str(p) for p in problems) if count == 1 else f"{count} problems"
        nearest = problems[0].nearest if count == 1 else ()
        super().__init__("job file", where, why, nearest, "correct these and run it again; nothing was written")
        put(self, "problems", tuple(problems))

    def __str__(self) -> str:
        if len(self.problems) == 1:
            return f"{self.where}: {self.problems[0]}; {self.do}"
        lines = [f"{self.where}: {len(self.problems)} problems"]
        lines += [f"  {p}" for p in self.problems]
        lines.append(f"  {self.do}")
        return "\n".join(lines)

    def as_dict(self) -> dict[str, object]:
        """The error with its list of problems."""
        out = super().as_dict()
        out["problems"] = [
            {"path": p.path, "line": p.line, "why": p.why, "nearest": list(p.nearest), "do": p.do}
            for p in self.problems
        ]
        return out


class DataError(GaugeblockError, ValueError):
    """A table of refdata is damaged at the place named."""

    code = "data"


class OutputError(GaugeblockError, OSError):
    """The output folder or file cannot be written."""

    code = "output"
