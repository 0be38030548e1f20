"""Every option that is given is read and judged: a senseless word is refused by name, or it is free text."""

from __future__ import annotations

import io
import json
import re
import shlex
from contextlib import redirect_stderr, redirect_stdout
from functools import cache
from typing import Any

import pytest

from gaugeblock import domains
from gaugeblock.cli import main

from .corpus import ASKED, HERE, examples

SENSELESS = "banana"
# Of each option so many answers are asked again with a senseless word: those where it is alone, then the rest.
MOST = 6
# What a person writes in own words: a paper, a page, a certificate, a name, a remark. It is printed as it was typed.
FREE = {
    "balance",
    "certificate",
    "die",
    "fluid-limit-from",
    "line-limit-from",
    "maker-place",
    "maker-source",
    "name",
    "title",
}
# A steel by its certificate or its hardness may be any; what was seen at a set-up may be said in words.
FREE_OF = {
    "axle": {"material", "treatment", "steel"},
    "setup": {"as-found", "as-left"},
    "torque": {"grip-metal"},  # one that no table has, beside its own modulus
    "growth": {"material"},  # the same beside its own coefficient
    "shaft": {"material"},  # and beside its own modulus and density
}
NO_VALUE = {"json", "why", "help", "draw"}
ELSEWHERE = {"in", "data-release", "compare"}


def said(argv: list[str]) -> tuple[int, str]:
    out, bad = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(bad):
        try:
            code = main(argv)
        except SystemExit as end:
            code = int(end.code or 0)
    return code, out.getvalue() + bad.getvalue()


@cache
def lines() -> dict[str, list[list[str]]]:
    """Command lines that are answered, by the command (and its question, where it has several)."""
    known = (HERE / "commands.txt").read_text(encoding="utf-8").splitlines()
    found: dict[str, list[list[str]]] = {}
    for line in dict.fromkeys([*examples(), *ASKED, *known]):
        if not line.strip() or line.startswith("#"):
            continue
        argv = shlex.split(line)
        name = argv[0]
        if name not in domains.commands():
            continue
        found.setdefault(name, []).append(argv)
    return found


def options(name: str) -> list[str]:
    text = said([name, "--help"])[1]
    found = dict.fromkeys(re.findall(r"^ +--([a-z][a-z-]*) [A-Z]", text, re.MULTILINE))
    return [o for o in found if o not in NO_VALUE | ELSEWHERE]


CASES = [(name, option) for name in domains.commands() for option in options(name)]


@pytest.mark.parametrize(("name", "option"), CASES)
def test_a_senseless_word_is_refused_or_printed(name: str, option: str) -> None:
    own = sorted((argv for argv in lines().get(name, []) if f"--{option}" not in argv), key=len)
    ignored = []
    for argv in own[:MOST] + own[-MOST:]:
        if said([*argv, "--json"])[0] == 2:
            continue
        code, _ = said([*argv, f"--{option}", SENSELESS, "--json"])
        if code != 2 and option not in FREE | FREE_OF.get(name, set()):
            ignored.append(shlex.join(argv))
    assert ignored == []


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        ("spline 24/48 35 --seating fixed", "torque"),
        ("spline 24/48 35 --length '1 1/2 in'", "torque"),
        ("spline 'parallel side' 10 --torque '100 lbf*ft'", "parallel side"),
        ("torque 3/8-16 --grade 5 --condition dry --maker-place 'p. 3'", "maker"),
        ("steel 4340 --treatment 'cold drawn' --certificate 'mill sheet 12'", "yield strength"),
        ("bend --od '1 3/4 in' --wall '.120 in' --material 1020 --method 'rotary draw' --measured-to inside", "radius"),
    ],
)
def test_what_says_nothing_by_itself_asks_for_the_rest(line: str, wanted: str) -> None:
    code, text = said([*shlex.split(line), "--json"])
    error: dict[str, Any] = json.loads(text)["error"]
    assert code == 2
    assert wanted in error["why"] + error["do"]
