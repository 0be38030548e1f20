"""A user's script against the installed wheel: a strict type checker knows every public name, and so does help()."""

from __future__ import annotations

import os
import pydoc
import re
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


def test_every_public_name_has_its_type(installed: Path, tmp_path: Path) -> None:
    """None is ``object`` or ``Any`` to a type checker, and what is no public name is told."""
    lines = ["import gaugeblock", *(f"reveal_type(gaugeblock.{name})" for name in gaugeblock.__all__)]
    done = mypy(tmp_path, installed, "\n".join([*lines, "gaugeblock.no_such_name", ""]))
    shown = dict(re.findall(r'user\.py:(\d+): note: Revealed type is "(.*)"', done.stdout))
    kinds = {name: shown.get(str(n), "") for n, name in enumerate(gaugeblock.__all__, 2)}
    assert {name: kind for name, kind in kinds.items() if not kind.startswith(("def (", "Overload("))} == {}
    assert 'has no attribute "no_such_name"' in done.stdout


VAGUE = """
import gaugeblock
from gaugeblock import Ambiguous, Figure, LookupMiss


def shown(error: Ambiguous, miss: LookupMiss, figure: Figure) -> None:
    reveal_type(error.table)
    reveal_type(miss.informs)
    reveal_type(figure.quantity_value)
    reveal_type(figure.quantity_range)
    reveal_type(gaugeblock.ask("1 in in mm").text())
    reveal_type(gaugeblock.torque("3/8-16").decision.candidates[0])
    reveal_type(gaugeblock.torque("3/8-16").checks[0].required)
"""


def test_what_hangs_on_a_public_name_has_its_type(installed: Path, tmp_path: Path) -> None:
    done = mypy(tmp_path, installed, VAGUE)
    shown = re.findall(r'note: Revealed type is "(.*)"', done.stdout)
    assert [kind.replace("gaugeblock.", "").replace("builtins.", "") for kind in shown] == [
        "answer.table.Table | None",
        "tuple[figure.Figure, ...]",
        "pint.registry.Quantity[float]",
        "tuple[pint.registry.Quantity[float], pint.registry.Quantity[float]]",
        "str",
        "answer.decision.Candidate",
        "answer.check.Bound | None",
    ]


def test_a_mistyped_option_is_told_by_the_type_checker(installed: Path, tmp_path: Path) -> None:
    calls = ['fuel_line("400 hp", lenght="14 ft")', 'route(gapp="1 in")', 'shaft(odd="1 in")', 'axle(lenght="1 in")']
    done = mypy(tmp_path, installed, "\n".join(["import gaugeblock", *(f"gaugeblock.{call}" for call in calls), ""]))
    assert [f"user.py:{n}: error: Unexpected keyword" in done.stdout for n in range(2, 6)] == [True] * 4, done.stdout
