"""The same answers: every question of tests/ask and every command's example give the browser's JSON byte for byte."""

from __future__ import annotations

import contextlib
import io
import json
import shlex
import tomllib
from pathlib import Path
from typing import Any

from book.chromium import Chromium
from gaugeblock import domains
from gaugeblock.cli import GENERAL, main
from gaugeblock.tables.load import refdata

ASKED = Path(__file__).resolve().parents[1] / "ask"
AT_ONCE = 400  # lines: a browser is not waited for without end
# What writes or reads files, or serves them, is not done in a browser.
NOT_THERE = ("new", "packet", "export", "audit", "validate", "completion", "book")


def here(argv: list[str]) -> dict[str, Any]:
    """What the command line says and how it ends."""
    out, bad, code = io.StringIO(), io.StringIO(), 0
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
        try:
            code = main(argv)
        except SystemExit as ended:
            code = int(ended.code or 0)
    return {"is": "run", "code": code, "out": out.getvalue(), "err": bad.getvalue()}


def lines() -> list[list[str]]:
    """Every question as a command line, one for every few rows of the largest table, and the example of every command's
    help, all to be answered in JSON.
    """
    found: list[list[str]] = []
    for path in sorted(ASKED.glob("*questions.toml")):
        asked = tomllib.loads(path.read_text(encoding="utf-8"))["question"]
        found += [["ask", "--json", "--", *question["ask"].split(" ")] for question in asked]
    rows = sorted({(r["thread"], r["grade"], r["condition"]) for r in refdata().table("fasteners/torques").rows})
    found += [["ask", "--json", "--", *" ".join(row).split()] for row in rows[:: len(rows) // 150]]
    for name in sorted({*domains.commands(), *GENERAL} - {*NOT_THERE}):
        shown = here([name, "--help"])["out"]
        example = shlex.split(shown.split("example:\n", 1)[1].strip().splitlines()[0])[1:]
        if not any(word.endswith((".toml", ".json")) for word in example):
            found.append([*example, "--json"])
    return found


def test_every_answer_is_the_same_byte_for_byte(book: Chromium) -> None:
    asked = lines()
    assert len(asked) >= 500
    there: list[Any] = []
    for at in range(0, len(asked), AT_ONCE):
        some = json.dumps(asked[at : at + AT_ONCE])
        script = f"import('./engine.js').then(e => Promise.all({some}.map(argv => e.tell({{ do: 'run', argv }}))))"
        there += book.run(script)
    others = [line for line, got in zip(asked, there, strict=True) if got != here(line)]
    assert others == []
