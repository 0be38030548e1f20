"""Reading a job file: from bytes to a checked Job, with every problem of the file told at once."""

from __future__ import annotations

import json
import os
import re
import stat
import tomllib
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from gaugeblock.errors import InputError, JobError, Problem, hidden
from gaugeblock.job.checks import ITEMS_LIMIT, check
from gaugeblock.job.kind import Kind
from gaugeblock.job.locate import Outline, Path
from gaugeblock.job.model import Job, Title, job_model
from gaugeblock.job.otherwise import OTHERWISE
from gaugeblock.job.part import Part, Refused
from gaugeblock.job.values import kind_of, shown
from gaugeblock.units import Measure

SIZE_LIMIT = 1_000_000
PROBLEMS_LIMIT = 50

# Given one item of a domain, a hook returns its problems; each Problem's path is the key inside the item.
Hook = Callable[[Any], Iterable[Problem]]

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+", re.ASCII)
_TOML_PLACE = re.compile(r"(.*) \(at (?:line (\d+), column (\d+)|end of document)\)", re.DOTALL)
# The parser's words -> what a person has to look at.
_TOML_WORDS = (
    ("Invalid value", "no value that can be read", "text stands in quotes"),
    ("Illegal character '\\n'", "a text is not closed on its line", "close it with a quote"),
    ("Unterminated string", "a text is not closed", "close it with a quote"),
    ("Expected \"'", "a text is not closed", "close it with a quote"),
    ("Unescaped '\\'", "a backslash inside a text", "write it twice, or put the text in single quotes"),
    ("Expected '='", "a key without =", 'write key = "value"'),
    ("Expected newline", "something follows the value", "text stands in quotes, and each key on its own line"),
    ("Unclosed array", "a list is not closed", "close it with ]"),
    ("Unclosed inline", "a table in braces is not closed", "close it with }"),
    ("Expected ']", "a table's name is not closed", "write [name] or [[name]]"),
    ("Invalid statement", "neither a key nor a table", 'write key = "value", or [[name]]'),
    ("Invalid initial", "a key is missing or not readable", 'write key = "value"'),
    ("Invalid date", "a date that does not exist", 'write it in quotes, "2031-05-17"'),
    ("Cannot", "given twice, or in two ways", "keep one of them"),
    ("Duplicate", "given twice", "keep one of them"),
)


def read_job(path: str | os.PathLike[str], kinds: Mapping[str, Kind], hooks: Mapping[str, Hook] | None = None) -> Job:
    """The checked job of a TOML file with the tables of ``kinds``; JobError tells every problem with key path and line.

    ``hooks`` are by table (``fasteners`` ...): each is called with every sound item.
    """
    name = os.fspath(path)
    where = shown(name.encode("utf-8", "backslashreplace").decode(), 200)
    return parse_job(_read_text(name, where), kinds, where or "job file", hooks)


def parse_job(
    text: str, kinds: Mapping[str, Kind], where: str = "job file", hooks: Mapping[str, Hook] | None = None
) -> Job:
    """The checked job of a TOML text; JobError as for ``read_job``."""
    outline = Outline(text)
    data = _parse(text, where, outline)
    names = _Names(data, outline)
    problems = [names.problem((), "nothing in it", (), "write a starter with `new`")] if not data else []
    too_long = _too_long(data)
    if too_long:
        raise _job_error(where, [names.problem(*fault) for fault in too_long])
    refused: list[Refused] = []
    model = job_model(kinds, data)
    job = model.read(data, (), refused)
    refused.sort(key=lambda r: outline.line_of(r.path) or 0)
    bad = {r.path[:2] for r in refused}
    # Looking for near words takes its time, so only what will be told is put into words.
    problems += [names.problem(r.path, *_told(r, model)) for r in refused[:PROBLEMS_LIMIT]]
    untold = max(0, len(refused) - PROBLEMS_LIMIT)
    for fault in check(data, job, kinds):
        first = outline.line_of(fault.other)
        why = f"{fault.why} (see line {first})" if first else fault.why
        problems.append(names.problem(fault.path, why, fault.nearest, fault.do))
    for table, hook in (hooks or {}).items():
        if table not in data:
            continue
        for index, item in _readable(data, table, kinds[table].model, bad, job):
            problems += [names.problem((table, index, *_split(p.path)), p.why, p.nearest, p.do) for p in hook(item)]
    if problems:
        raise _job_error(where, problems, untold)
    return job


def _read_text(name: str, where: str) -> str:
    def refuse(why: str, do: str, line: int | None = None) -> JobError:
        return JobError(where or "job file", [Problem("file", line, why, (), do)])

    if not name:
        raise refuse("no file name", "name the job file")
    try:
        mode = os.stat(name).st_mode
        if stat.S_ISDIR(mode):
            raise refuse("a folder, not a file", "name the job file in it")
        if not stat.S_ISREG(mode):
            raise refuse("not an ordinary file", "name a file with the job in it")
        with open(name, "rb") as handle:
            raw = handle.read(SIZE_LIMIT + 1)
    except FileNotFoundError:
        raise refuse("no such file", "correct the name, or write a starter with `new`") from None
    except (OSError, ValueError) as error:
        why = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise refuse(f"cannot be read: {why.lower()}", "correct the name or its permissions") from None
    if len(raw) > SIZE_LIMIT:
        raise refuse(f"larger than {SIZE_LIMIT} bytes", "split the job")
    return _decoded(raw, refuse)


def _decoded(raw: bytes, refuse: Callable[..., JobError]) -> str:
    if raw.startswith(b"\xef\xbb\xbf"):
        raise refuse("begins with a byte-order mark", "save it as UTF-8 without one", 1)
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise refuse("is UTF-16", "save it as UTF-8", 1)
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise refuse(f"not UTF-8: byte 0x{raw[error.start]:02X} does not fit", "save it as UTF-8", line) from None
    lone = re.search("\r(?!\n)", text)
    if lone:
        line = text.count("\n", 0, lone.start()) + 1
        raise refuse("a line ends in a carriage return alone", "save it with line feeds", line)
    for number, line_text in enumerate(text.split("\n"), 1):
        found = hidden(line_text.replace("\t", " ").removesuffix("\r"))
        if found:
            why = f"the control character U+{ord(found[0]):04X} in column {found.start() + 1}"
            raise refuse(why, "take it out; a job file is plain text", number)
    return text


def _parse(text: str, where: str, outline: Outline) -> dict[str, Any]:
    if outline.excess is not None:
        excess = outline.excess
        key = _path_text(excess.path) or "file"
        raise _job_error(where, [Problem(key, excess.line, excess.why, (), "write it more simply")])
    if outline.twice:
        twice = [
            Problem(_path_text(path), line, f"given twice; first in line {first}", (), "keep one of them")
            for path, line, first in outline.twice
        ]
        raise _job_error(where, twice)
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError) as error:
        raise _job_error(where, [_toml_problem(str(error), text, outline)]) from None


def _toml_problem(message: str, text: str, outline: Outline) -> Problem:
    match = _TOML_PLACE.fullmatch(message)
    why, line, column = (match[1], match[2], match[3]) if match else (message, None, None)
    number = int(line) if line else text.count("\n") + (0 if text.endswith("\n") else 1)
    path = outline.path_at(number)
    key = _path_text(path) if path and outline.lines[path] == number else "TOML"
    place = f"column {column}" if column else "at the end of the file"
    for start, words, do in _TOML_WORDS:
        if why.startswith(start):
            return Problem(key, number, f"{place}: {words}", (), do)
    return Problem(key, number, f"{place}: {shown(why[:1].lower() + why[1:])}", (), "correct it as TOML")


def _too_long(data: dict[str, Any]) -> list[tuple[Path, str, tuple[str, ...], str]]:
    """Lists with more items than a job may have, at the top and one table below."""
    out: list[tuple[Path, str, tuple[str, ...], str]] = []
    todo: list[tuple[Path, Any]] = [((), data)]
    while todo:
        path, value = todo.pop()
        if isinstance(value, dict):
            todo += [((*path, key), inner) for key, inner in value.items()]
        elif isinstance(value, list):
            if len(value) > ITEMS_LIMIT:
                out.append((path, f"{len(value)} items; at most {ITEMS_LIMIT} are taken", (), "split the job"))
            else:
                todo += [((*path, index), inner) for index, inner in enumerate(value)]
    return out


class _Names:
    """Turns a path of a job into a Problem with its line, its key path and the item's name."""

    def __init__(self, data: dict[str, Any], outline: Outline) -> None:
        self._data = data
        self._outline = outline

    def problem(self, path: Path, why: str, nearest: tuple[str, ...], do: str) -> Problem:
        name = self._name(path)
        text = _path_text(path) or "file"
        return Problem(f"{text} ({name})" if name else text, self._outline.line_of(path), why, nearest, do)

    def _name(self, path: Path) -> str:
        found = ""
        value: Any = self._data
        for part in path:
            try:
                value = value[part]
            except (KeyError, IndexError, TypeError):
                break
            if isinstance(value, dict) and isinstance(value.get("name"), str) and isinstance(part, int):
                found = shown(value["name"].strip(), 40)
        return found


def _path_text(path: Path) -> str:
    """``fasteners[2].grade``: list items count from 1, as people do."""
    out = ""
    for part in path:
        if isinstance(part, int):
            out += f"[{part + 1}]"
        else:
            key = part if _BARE_KEY.fullmatch(part) else json.dumps(part[:60])
            out += f".{key}" if out else key
    return out


def _split(path: str) -> Path:
    return tuple(path.split(".")) if path else ()


def _job_error(where: str, problems: list[Problem], untold: int = 0) -> JobError:
    ordered = sorted(problems, key=lambda p: p.line or 0)
    more = len(ordered) - PROBLEMS_LIMIT + untold
    if more > 0:
        ordered = [*ordered[:PROBLEMS_LIMIT], Problem("file", None, f"{more} more problems are not told here", (), "")]
    return JobError(where, ordered)


def _readable(
    data: dict[str, Any], table: str, model: type[Part], bad: set[Path], job: Job
) -> Iterable[tuple[int, Part]]:
    """The items of a table for its hook: sound ones whole, of the others each sound text and measure."""
    raws = data.get(table)
    if (table,) in bad or not isinstance(raws, list):
        return
    for index, (raw, item) in enumerate(zip(raws, getattr(job, table), strict=True)):
        if (table, index) not in bad:
            yield index, item
        elif isinstance(raw, dict):
            sound = {n: v for n, v in vars(item).items() if isinstance(v, str | Measure)}
            needed: dict[str, Any] = {key.name: "" for key in model.keys.values() if key.is_needed}
            yield index, model(**needed | sound)


def _told(refused: Refused, model: type[Job]) -> tuple[str, tuple[str, ...], str]:
    """What was refused as reason, nearest choices and what to do, in plain words."""
    path, kind = refused.path, refused.kind
    if isinstance(kind, InputError):
        return kind.why if kind.asked == "value" else f"{kind.asked}: {kind.why}", kind.nearest, kind.do
    if kind == "missing":
        return "is missing", (), f'write {path[-1]} = "..."'
    if kind == "unknown":
        return _unknown(path, model)
    if kind == "list":
        return _list_wanted(path, refused.value, model)
    return f"a table is wanted, not {kind_of(refused.value)}", (), f"write {_table_form(path)}"


def _list_wanted(path: Path, value: object, job: type[Job]) -> tuple[str, tuple[str, ...], str]:
    key = str(path[-1])
    if _model_at(path, job) is None:
        return f"a list is wanted, not {kind_of(value)}", (), f'write {key} = ["...", "..."]'
    form = ".".join(part for part in path if isinstance(part, str))
    if isinstance(value, dict):
        return f"a list of tables is wanted, and [{form}] makes one table", (), f"write [[{form}]], with two brackets"
    return f"a list of tables is wanted, not {kind_of(value)}", (), f"write [[{form}]] above each"


def _table_form(path: Path) -> str:
    form = ".".join(part for part in path if isinstance(part, str))
    return f"[[{form}]]" if isinstance(path[-1], int) else f"[{form}]"


def _model_at(path: Path, job: type[Job]) -> type[Part] | None:
    """The model of the table at ``path``; None where the path ends in a plain value."""
    model: type[Part] | None = job
    for part in path:
        if model is not None and isinstance(part, str):
            model = model.keys[part].part
    return model


def _unknown(path: Path, job: type[Job]) -> tuple[str, tuple[str, ...], str]:
    from difflib import get_close_matches

    key = str(path[-1])
    keys = (_model_at(path[:-1], job) or job).keys
    meant = tuple(name for name in OTHERWISE.get(key.casefold(), ()) if name in keys)
    near = meant or tuple(get_close_matches(key.casefold()[:60], keys, n=5, cutoff=0.5))
    if len(path) == 1 and key in Title.keys:
        return "not a key of the top of the file", (), "move it under [job]"
    here = _table_form(path[:-1]) if len(path) > 1 else "the top of the file"
    return f"no such key in {here}", near or tuple(keys), "use one of these, or put it in notes"
