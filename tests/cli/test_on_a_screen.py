"""Every command says its decision on one small screen: 15 lines of 80 columns, and nothing wider than the screen."""

from __future__ import annotations

import contextlib
import io
import shlex
import tomllib
from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.cli import main

QUESTIONS = sorted((Path(__file__).resolve().parents[1] / "ask").glob("*questions.toml"))
MOST = 15
# What no worked example asks: what is long, what is open, what a shop wants to see whole.
OWN = """
sources
sources SHIGLEY9
audit
find torque
find wire
find spark plug
find steel
compare 0.7.0 0.8.0
compare 0.6.0 0.7.0 brake fluid
torque
torque --grade 8 --condition dry
torque 3/8 --grade 8
torque M8
part "wheel nut"
part "hose clamp"
heat
heat coolant
heat "fuel hose"
heat gasoline
steel 1541
steel 4340
gauge 16
gauge
flare 3/16
flare double
flare
material steel
spline 24/48
setup rear "ring gear"
hardness 42
exhaust gap
exhaust joint
brake "bleeding"
brake "parking brake"
brake --ratio 6 --force "100 lbf"
fuel pressure
clips --length "9 ft"
growth --length "60 in" --hot "500 degC"
circuit --current "28 A" --length "12 ft"
circuit --current "15 A" --length "10 ft" --voltage "12 V"
bend --od "1-3/4 in" --wall ".120 in" --material "1020 DOM"
bend --od "1-3/4 in" --wall ".120 in" --method "rotary draw" --radius "4 in"
tube --kick-up "flat 6 in, rise 5 in, angle 45 deg, foot 8 in, second rise 5 in" --od "1-1/2 in" --radius "4-1/2 in"
tube --offset "rise 6 in, angle 45 deg, before 8 in, after 8 in" --od "1-3/4 in" --wall ".120 in" --material DOM
"""


def answered(argv: list[str]) -> tuple[int, list[str]]:
    out, bad = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
        try:
            code = main(argv)
        except SystemExit as ended:  # --help
            code = int(ended.code or 0)
    return code, (out.getvalue() or bad.getvalue()).splitlines()


def examples() -> list[list[str]]:
    """The worked examples of every help that need no file of their own."""
    found = []
    kinds = [["exhaust", name] for name in ("pipe", "run", "gap", "joint", "outlet", "ignition")]
    for command in (*([name] for name in domains.commands()), *kinds, ["find"], ["sources"], ["ask"], ["compare"]):
        _, lines = answered([*command, "--help"])
        text = "\n".join(lines).partition("example:")[2].replace("\\\n", " ")
        found += [shlex.split(line)[1:] for line in text.splitlines() if line.strip().startswith("gaugeblock ")]
    assert len(found) > 40
    return [argv for argv in found if not any(word.endswith((".toml", ".json")) for word in argv)]


def asked() -> list[list[str]]:
    lines = [q["ask"] for path in QUESTIONS for q in tomllib.loads(path.read_text(encoding="utf-8"))["question"]]
    return [["ask", "--", *line.split()] for line in lines]


@pytest.mark.parametrize("columns", [80, 60])
def test_every_answer_is_on_one_screen(columns: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    most = MOST * 80 // columns
    long, wide = {}, {}
    for argv in [*examples(), *(shlex.split(line) for line in OWN.strip().splitlines()), *asked()]:
        code, lines = answered(argv)
        assert code in (0, 1, 2), argv
        if len(lines) > most:
            long[shlex.join(argv)] = len(lines)
        if max(map(len, lines)) > columns:
            wide[shlex.join(argv)] = max(map(len, lines))
    assert (long, wide) == ({}, {})


@pytest.mark.parametrize("argv", [["--help"], *([name, "--help"] for name in domains.commands())], ids=" ".join)
@pytest.mark.parametrize("columns", [80, 60])
def test_no_help_is_wider_than_the_screen(argv: list[str], columns: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    _, lines = answered(argv)
    text = "\n".join(lines).partition("\nexample:")[0]  # an example is one line to copy
    assert [line for line in text.splitlines() if len(line) > columns] == []


@pytest.mark.parametrize(
    ("short", "whole"),
    [
        (["sources"], ["sources", "--list"]),
        (["find", "torque"], ["find", "torque", "--list"]),
        (["audit"], ["audit", "--list"]),
        (["compare", "0.7.0", "0.8.0"], ["compare", "0.7.0", "0.8.0", "--all"]),
        (["exhaust", "gap"], ["exhaust", "gap", "--why"]),
    ],
    ids=" ".join,
)
def test_what_is_left_out_is_said_and_can_be_had(short: list[str], whole: list[str]) -> None:
    code, lines = answered(short)
    assert code == 0
    assert any(" more: " in line or line.strip().startswith("--list") for line in lines), lines
    assert len(answered(whole)[1]) > len(lines)
    assert not any(line.lstrip().startswith("... and ") for line in answered(whole)[1])
