"""Nothing is wider than the screen."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest

from gaugeblock.cli import main

LAWS = Path(__file__).resolve().parents[1] / "laws"
LINES = [
    line
    for name in ("commands.txt", "questions.txt")
    for line in (LAWS / name).read_text(encoding="utf-8").splitlines()
    if line and not line.startswith(("#", "tube"))
]
OTHERS = [
    "sources",
    "sources SHIGLEY9",
    "find wire",
    "compare 0.6.0 0.7.0",
    "ask 3/8 bolt",
    "part 'wheel nut'",
    "torque 3/8-17",
]


@pytest.mark.parametrize("columns", [60, 80])
@pytest.mark.parametrize("why", ["", " --why"])
def test_an_answer_is_no_wider_than_the_screen(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, why: str, columns: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    wide = {}
    for line in [*(one + why for one in LINES), *OTHERS]:
        main(shlex.split(line))
        said = capsys.readouterr()
        long = [shown for shown in (said.out + said.err).splitlines() if len(shown) > columns]
        if long:
            wide[line] = long[0]
    assert wide == {}
