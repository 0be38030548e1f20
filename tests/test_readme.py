"""What the README shows is what happens: its Python blocks run, its console blocks print what they say."""

from __future__ import annotations

import contextlib
import io
import re
import shlex
from pathlib import Path

import pytest

from gaugeblock.cli import main

README = (Path(__file__).resolve().parents[1] / "README.md").read_text(encoding="utf-8")


def blocks(language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```", README, re.MULTILINE | re.DOTALL)


@pytest.mark.parametrize("block", blocks("python"))
def test_a_python_block_runs(block: str) -> None:
    with contextlib.redirect_stdout(io.StringIO()):
        exec(compile(block, "README.md", "exec"), {})


@pytest.mark.parametrize("block", blocks("console"))
def test_a_console_block_prints_what_it_shows(block: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    command, *shown = block.splitlines()
    assert command.startswith("$ gaugeblock ")
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        main(shlex.split(command.removeprefix("$ gaugeblock ")))
    assert [line.rstrip() for line in shown] == [line.rstrip() for line in out.getvalue().splitlines()]


def test_there_are_blocks_to_test() -> None:
    assert blocks("python")
    assert blocks("console")


@pytest.mark.parametrize("command", re.findall(r"^\| [^|]+ \| `(gaugeblock [^`]*)` \|$", README, re.MULTILINE))
def test_a_command_of_the_table_answers(command: str) -> None:
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        assert main(shlex.split(command.removeprefix("gaugeblock "))) in (0, 1)
    assert out.getvalue()
