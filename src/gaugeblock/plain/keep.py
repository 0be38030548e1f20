"""A question that was answered -> an item of a job file, its comments and everything else in it kept."""

from __future__ import annotations

import json
import os

from gaugeblock import domains
from gaugeblock.errors import InputError, OutputError, visible
from gaugeblock.listed import items

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata


def keep(reading: Reading, path: str, data: Refdata) -> str:
    """Put what was asked at the end of a job file, which is made where there is none; the name of the new item.

    InputError where a job has no place for it, or where what the file would hold is no job; OutputError where it
    cannot be written. Nothing is written then.
    """
    table = reading.topic.table
    if not table:
        noun = reading.topic.noun
        why = f"a job has no place for {'an' if noun[0] in 'aeiou' else 'a'} {noun}"
        raise InputError(reading.topic.noun, "to packet", why, (), "write down the number, or ask for something else")
    old = _text(path)
    taken = _names(old, path)
    name = _free(", ".join(reading.said.values())[:60], taken)
    text = f"{old.rstrip()}\n\n{_block(reading, table, name, data)}".lstrip()
    domains.parse_job(text, path, domains.hooks(data))
    from gaugeblock.job.output import write_all

    folder, file = os.path.split(os.path.abspath(path))
    write_all(folder, {file: text.encode("utf-8")})
    return name


def _text(path: str) -> str:
    try:
        with open(path, encoding="utf-8") as handle:
            return handle.read()
    except FileNotFoundError:
        return ""
    except (OSError, ValueError) as error:
        raise OutputError(visible(path), "job file", f"cannot be read: {error}", (), "name a job file") from None


def _names(text: str, path: str) -> set[str]:
    if not text.strip():
        return set()
    job = domains.parse_job(text, path)
    return {item.name.casefold() for table in domains.tables() for item in getattr(job, table)}


def _free(name: str, taken: set[str]) -> str:
    """The name, with a number behind it where another item has it."""
    found, count = name, 1
    while found.casefold() in taken:
        count += 1
        found = f"{name} ({count})"
    return found


def _block(reading: Reading, table: str, name: str, data: Refdata) -> str:
    """The item as TOML: what was read, as the answer takes it."""
    settle = reading.topic.settle
    values = dict(reading.values) if settle is None else settle(dict(reading.values), data)
    lines = [f"[[{table}]]", f"name = {_quoted(name)}"]
    for option, value in values.items():
        key = reading.topic.job_keys.get(option, option)
        if key.endswith("[]"):
            lines.append(f"{key[:-2]} = [{', '.join(_quoted(one) for one in items(value, option))}]")
        elif key.endswith("#"):
            lines.append(f"{key[:-1]} = {value}")
        else:
            lines.append(f"{key} = {_quoted(value)}")
    return "\n".join(lines) + "\n"


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
