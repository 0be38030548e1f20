"""No answer is longer than a small screen, nor wider. That of a question in plain words is shorter yet: it is asked in
tests/cli/test_on_a_screen.py.
"""

from __future__ import annotations

import io
import shlex
from contextlib import redirect_stderr, redirect_stdout

import pytest

from gaugeblock.cli import main

from .corpus import ASKED, HERE, examples

ROWS, COLUMNS = 24, 80
# The plan of a tube is a sheet for the bench, with each bend; the list of sources is every source there is.
LONGER = ("tube", "sources")


def lines() -> list[list[str]]:
    known = [*examples(), *ASKED, *(HERE / "commands.txt").read_text(encoding="utf-8").splitlines()]
    return [shlex.split(line) for line in dict.fromkeys(known) if line.strip() and not line.startswith("#")]


def test_an_answer_keeps_to_the_screen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", str(COLUMNS))
    long, wide = [], []
    for argv in lines():
        out, bad = io.StringIO(), io.StringIO()
        with redirect_stdout(out), redirect_stderr(bad):
            code = main(argv)
        assert code in (0, 1, 2), argv
        shown = (out.getvalue() or bad.getvalue()).rstrip().splitlines()
        if len(shown) > ROWS and argv[0] not in LONGER:
            long.append(shlex.join(argv))
        if any(len(line) > COLUMNS for line in shown):
            wide.append(shlex.join(argv))
    assert (long, wide) == ([], [])
