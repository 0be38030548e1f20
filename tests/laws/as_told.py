"""What the answers told when they were last read: their decisions and numbers, and of their words the few that turn.

``as_told.txt`` holds it for every line of the corpus. A change that was meant is written by ``scripts/bless``, and its
difference is read like the difference of an example packet. Other words may change and nothing here
does.
"""

from __future__ import annotations

import io
import json
import os
import re
import shlex
import textwrap
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from typing import TYPE_CHECKING, Any
from unittest import mock
from zlib import crc32

from gaugeblock import __version__, domains
from gaugeblock.cli import main
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from collections.abc import Iterator

HERE = Path(__file__).parent
KEPT = HERE / "as_told.txt"
# A number, or a word that turns what is said round.
_NUMBER = re.compile(
    r"[0-9]+(?:[./:-][0-9]+)*"
    r"|\b(?:not|no|never|more|less|over|under|high(?:er)?|low(?:er)?|faster|slower|larger|smaller|longer|shorter"
    r"|thicker|thinner|above|below|left|right|maker's|given)\b"
)
_WIDE = 118
_ONE = "item source check thing step bolt figure wire row card page answer question candidate shim clip"
_HOLE = re.compile(
    r"\bNone\b(?! of)|\bnan\b|\binf\b|\b(and|or|the|a|of|to|in) \1\b| [,;.:](?![0-9])|[,;:][,;.]|\(\)|\( | \)"
    r"|(?<![\w./-])1 [a-z]+s\b"
    rf"|(?<![\w./-])(?:[2-9]|[1-9][0-9]+) (?:{_ONE.replace(' ', '|')})\b"
)
_SOUND = ("1 is", "1 times", "1 was", "1 has", "1 carries", "1 swings")  # joint 1 is ...
# What answers without a sheet, and no question of the corpus is.
_PARTS = ("exhaust pipe", "exhaust run", "exhaust gap", "exhaust joint", "exhaust hanger")
_NO_SHEETS = ("audit", "sources TM238 --list", "sources torque manual")


def corpus() -> list[str]:
    """Every command line of the corpus, once."""
    lines = [
        line.removeprefix("gaugeblock ")
        for name in ("questions.txt", "commands.txt")
        for line in (HERE / name).read_text(encoding="utf-8").splitlines()
        if line and not line.startswith("#")
    ]
    bare = [name for name in domains.commands() if name not in ("exhaust", "route", "tube")]
    return [*dict.fromkeys([*lines, *bare, *_PARTS]), *_NO_SHEETS]


def kept() -> dict[str, list[str]]:
    """What is kept, by command line."""
    found: dict[str, list[str]] = {}
    for line in KEPT.read_text(encoding="utf-8").splitlines():
        if line.startswith("  "):
            found[list(found)[-1]].append(line)
        elif line and not line.startswith("#"):
            found[line] = []
    return found


def told(line: str) -> list[str]:
    """What an answer tells, a fact a line: what is decided, each figure, each check, what is asked, all its numbers."""
    with mock.patch.dict(os.environ, {"COLUMNS": "80", "LINES": "24"}):
        code, text = _said(shlex.split(line))
        page, (_, record) = numbers(text), _said([*shlex.split(line), "--json"])
        whole = _said([*shlex.split(line), "--why"])[1] if _is_asked_why(line) else ""
    with mock.patch.dict(os.environ, {"COLUMNS": "40", "LINES": "24"}):
        narrow = _said(shlex.split(line))[1]
    out = [f"  ends with {code}", *holes(text)]
    if code == 2:  # what is lacking is named by its option
        out += wrapped(f"names {' '.join(re.findall('--[a-z-]+', text)) or 'no option'}")
    for sheet in _sheets(json.loads(record)):
        out += of_sheet(sheet)
    return [
        *out,
        *wrapped(f"page {page}"),
        f"  set in {_indents(text)}; narrow {_indents(narrow)}",
        *(wrapped(f"why {numbers(whole)}") if whole else ()),
        *holes(whole),
    ]


def _is_asked_why(line: str) -> bool:
    """Whether an answer is asked for its whole page too: a third of them, and always the same ones."""
    return line not in _NO_SHEETS and crc32(line.encode()) % 3 == 0


def numbers(text: str) -> str:
    """The numbers of a text and its words that turn, in their order, but for the releases, which change nothing."""
    return " ".join(_NUMBER.findall(text.replace(refdata().release, "").replace(__version__, ""))) or "none"


def _indents(text: str) -> str:
    """How far the lines of a page are set in, each depth once."""
    depths = {len(line) - len(line.lstrip()) for line in text.splitlines() if line.strip()}
    return " ".join(map(str, sorted(depths)))


def holes(text: str) -> list[str]:
    """Where a sentence has a hole, a word twice or a wrong number: ``None``, ``and and``, ``1 items``, ``2 item``."""
    flat = " ".join(text.replace("...", "~").split())
    return [f"  hole {found[0]}" for found in _HOLE.finditer(flat) if found[0] not in _SOUND]


def _said(argv: list[str]) -> tuple[int, str]:
    out, err = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(err):
        code = main(argv)
    return code, out.getvalue() or err.getvalue()


def _sheets(record: Any) -> Iterator[dict[str, Any]]:
    if isinstance(record, dict):
        if "decision" in record and "checks" in record:
            yield record
        for value in record.values():
            yield from _sheets(value)
    elif isinstance(record, list):
        for value in record:
            yield from _sheets(value)


def of_sheet(sheet: dict[str, Any]) -> Iterator[str]:
    decision = sheet["decision"]
    printed = {figure["id"]: figure["printed"] for figure in sheet["figures"]}
    yield f"  {decision['kind']} {decision['verb']} {'; '.join(printed[id] for id in decision['figures'])}".rstrip()
    for when, then, plus in zip(
        decision["when"], decision["then"], decision.get("plus") or decision["when"], strict=True
    ):
        told_of = [name for name, text in (("when", when), ("then", then)) if text]
        yield f"  candidate {' '.join(told_of) or 'alone'}: {numbers(f'{when} {then} {plus}')}"
    if decision["do"]:
        yield f"  do {numbers(decision['do'])}"
    if decision["because"]:
        yield f"  because {'; '.join(decision['because'])}"
    for figure in sheet["figures"]:
        marks = ", ".join(filter(None, (figure["basis"], figure["checked"], figure["side"], figure["chosen_by"])))
        yield from wrapped(f"{figure['quantity']} {figure['printed']} ({marks}){_made(figure)}")
    for check in sheet["checks"]:
        bears = f" {check['bears']}" if check["bears"] else ""
        held = f"{_bound(check['actual'])} against {_bound(check['required'])}, margin {_shown(check['margin'])}"
        yield from wrapped(f"check {check['name']}: {check['result']}{bears}, {held}; {numbers(check['reason'])}")
    for question in sheet["questions"]:
        yield f"  asks {question['key']} ({question['kind']}) {numbers(question['text'])}"
    for caution in sheet["cautions"]:
        yield f"  caution {caution['severity']}: {' '.join(caution['text'].split()[:4])} ~ {numbers(caution['text'])}"


def _bound(bound: dict[str, Any] | None) -> str:
    return "nothing" if bound is None else f"{_shown(bound['value'])} {bound['unit']}"


def _shown(number: float | None) -> str:
    return "none" if number is None else f"{number:.4g}"


def _made(figure: dict[str, Any]) -> str:
    """What a figure is worked out of, or who else prints it."""
    if figure["rule"]:
        return f" = {figure['rule']['name']}({', '.join(one['printed'] for one in figure['inputs'])})"
    others = ", ".join(one["printed"] for one in figure["others"])
    return f" beside {others}" if others else ""


def wrapped(text: str) -> list[str]:
    """A long line in several; those that follow are set in."""
    return textwrap.wrap(text, _WIDE, initial_indent="  ", subsequent_indent="      ", break_on_hyphens=False)


def write() -> None:
    """Write what is told today."""
    head = "# What the answers of the corpus told when they were last read (see as_told.py); written by scripts/bless."
    blocks = ["\n".join([line, *told(line)]) for line in corpus()]
    KEPT.write_text("\n\n".join([head, *blocks]) + "\n", encoding="utf-8")


if __name__ == "__main__":
    write()
