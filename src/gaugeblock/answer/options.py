"""The options of a command: told once, and read without the parser of the standard library where a line is plain."""

from __future__ import annotations

from types import SimpleNamespace

from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.answer.parsing import Refusing

# What can be told of an option and is still read here; the rest is the library's.
_PLAIN = frozenset({"action", "default", "dest", "help", "metavar", "required"})
_TAKEN = frozenset({"choices", "default", "help", "metavar", "nargs"})  # of a word


class Parser:
    """The options of one command: ``prog`` as it is typed, what it is ``about``, a worked ``example``.

    A line of known options and words in one row is read here. All else, help and refusals among it, is read by the
    library, of which a plain line is read alike (a test draws lines and compares). Measured: the library takes 4 of the
    50 ms of an answer to load, and to be told the options.
    """

    def __init__(self, prog: str, about: str, example: str) -> None:
        self.prog = prog
        self.about = about
        self.example = example
        self.told: list[tuple[tuple[str, ...], dict[str, Any]]] = []

    def add_argument(self, *names: str, **how: Any) -> None:
        """An option or a word, as the standard library has it told."""
        self.told.append((names, how))

    def library(self) -> Refusing:
        """The parser of the standard library with the same options."""
        from gaugeblock.answer.parsing import refusing

        return refusing(self)

    def parse_args(self, argv: list[str]) -> SimpleNamespace:
        """What a line gives; InputError for a line that cannot be read."""
        values = self.plainly(argv)
        if values is None:
            values = vars(self.library().parse_args(argv))
        if not all(text.strip() and text[-1] not in "= " for text in argv):
            self.refuse_blank(values)
        return SimpleNamespace(**values)

    def refuse_blank(self, values: dict[str, Any]) -> None:
        """InputError for an option or a word in which nothing stands."""
        for (name, *_), how in self.told:
            value = values.get(_name(name, how))
            given = value if isinstance(value, list) and name[:1] == "-" else [value]
            if any(isinstance(one, str) and not one.strip() and one != how.get("default") for one in given):
                raise InputError("(blank)", name, "nothing is written there", (), "say it, or leave it out")

    def plainly(self, argv: list[str]) -> dict[str, Any] | None:
        """The values of a plain line by name; None for a line that the library must read."""
        values: dict[str, Any] = {}
        options: dict[str, tuple[str, bool]] = {}
        needed = set()
        words: list[tuple[str, dict[str, Any]]] = []
        for (name, *_), how in self.told:
            is_flag = how.get("action") == "store_true"
            if name[:1] != "-":
                words.append((name, how))
            elif not _PLAIN.issuperset(how) or ("action" in how and not is_flag):
                values[_name(name, how)] = how.get("default")
                continue  # one of these on the line is the library's
            else:
                options[name] = _name(name, how), is_flag
                if how.get("required"):
                    needed.add(options[name][0])
            values[_name(name, how)] = False if is_flag else how.get("default")
        said = _said(argv, options, values, needed)
        return values if said is not None and not needed and _words(words, said, values) else None


def _name(name: str, how: dict[str, Any]) -> str:
    return how.get("dest") or name.lstrip("-").replace("-", "_")


def _said(
    argv: list[str], options: dict[str, tuple[str, bool]], values: dict[str, Any], needed: set[str]
) -> list[str] | None:
    """The words of a line, its options put into ``values`` and struck from ``needed``; None for another line."""
    said: list[str] = []
    last = -1
    left = enumerate(argv)
    for at, text in left:
        if text[:1] != "-":
            if said and last != at - 1:
                return None
            said.append(text)
            last = at
            continue
        name, equals, value = text.partition("=")
        dest, is_flag = options.get(name, ("", False))
        if not dest or (equals and (is_flag or not value)):
            return None
        if not is_flag and not equals:
            value = next(left, (0, "-"))[1]
        if value[:1] == "-":
            return None
        values[dest] = is_flag or value
        needed.discard(dest)
    return said


def _words(words: list[tuple[str, dict[str, Any]]], said: list[str], values: dict[str, Any]) -> bool:
    """Put the words of a line into ``values``; whether they are as many as the command takes, and such as it takes."""
    counts = [how.get("nargs") for _, how in words]
    for at, (name, how) in enumerate(words):
        many, here = counts[at], said
        if many is None or (many == "?" and {*counts[at:]} == {"?"}):
            here, said = said[:1], said[1:]
        elif many in ("*", "+") and at == len(words) - 1:
            said = []
        else:
            return False  # the library shares words out
        if (
            (not here and many in (None, "+"))
            or not _TAKEN.issuperset(how)
            or not {*here} <= {*how.get("choices", here)}
        ):
            return False
        values[name] = (
            (here if many in ("*", "+") else here[0]) if here else how.get("default", [] if many == "*" else None)
        )
    return not said
