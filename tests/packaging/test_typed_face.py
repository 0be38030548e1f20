"""A user's script against the installed wheel: a strict type checker knows every public name, and so does help()."""

from __future__ import annotations

import os
import pydoc
import subprocess
import sys
from pathlib import Path

import gaugeblock

SCRIPT = """
import gaugeblock
from gaugeblock import Ambiguous, Check, Decision, Fault, Figure, LookupMiss, Question, Refdata, Sheet


def torque_of(size: str) -> tuple[float, str]:
    sheet: Sheet = gaugeblock.torque(size, grade="SAE J429 5", condition="dry")
    decision: Decision = sheet.decision
    figure: Figure | None = decision.figure
    if figure is None:
        raise SystemExit(decision.do)
    return figure.typical, figure.unit


def open_checks(sheet: Sheet) -> list[str]:
    checks: list[Check] = [c for c in sheet.checks if c.asks]
    questions: list[Question] = list(sheet.questions)
    return [c.name for c in checks] + [q.text for q in questions]


def release(data: Refdata) -> str:
    return data.release


faults: list[Fault] = gaugeblock.validate()
try:
    gaugeblock.torque("3/8-17", grade="SAE J429 5", condition="dry")
except Ambiguous as more:
    print(more.nearest)
except LookupMiss as miss:
    print(miss.nearest, miss.do)
print(torque_of("3/8-16"), release(gaugeblock.refdata()))
"""


def mypy(folder: Path, installed: Path, script: str) -> subprocess.CompletedProcess[str]:
    file = folder / "user.py"
    file.write_text(script, encoding="utf-8")
    environment = {**os.environ, "MYPYPATH": str(installed)}
    command = [sys.executable, "-m", "mypy", "--strict", "--no-incremental", "--follow-imports=silent", str(file)]
    return subprocess.run(
        command, cwd=folder, env=environment, capture_output=True, text=True, timeout=300, check=False
    )


def test_a_strict_type_checker_knows_the_face(installed: Path, tmp_path: Path) -> None:
    done = mypy(tmp_path, installed, SCRIPT)
    assert done.returncode == 0, done.stdout


def test_a_wrong_use_is_told_by_the_type_checker(installed: Path, tmp_path: Path) -> None:
    wrong = SCRIPT.replace(
        'gaugeblock.torque(size, grade="SAE J429 5", condition="dry")', "gaugeblock.torque(size, grade=5)"
    )
    done = mypy(tmp_path, installed, wrong)
    assert done.returncode == 1
    assert "user.py:7" in done.stdout


def test_the_wheel_says_that_it_is_typed(installed: Path) -> None:
    assert (installed / "gaugeblock" / "py.typed").is_file()


def test_help_shows_what_every_public_name_is() -> None:
    for name in gaugeblock.__all__:
        text = pydoc.plain(pydoc.render_doc(getattr(gaugeblock, name)))
        assert len(text.splitlines()) > 3, name
        assert getattr(gaugeblock, name).__doc__, name
