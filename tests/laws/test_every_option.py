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
from gaugeblock.exhaust.commands import QUESTIONS

from .corpus import ASKED, HERE, examples

SENSELESS = "banana"
# Of each option so many answers are asked again with a senseless word: those where it is alone, then the rest.
MOST = 6
# What a person writes in own words: a paper, a page, a certificate, a name, a remark. It is printed as it was typed.
FREE = {
    "balance",
    "heat-range",
    "certificate",
    "die",
    "fluid-limit-from",
    "line-limit-from",
    "maker-place",
    "maker-source",
    "name",
    "title",
    "tried",
}
# A steel by its certificate or its hardness may be any; what was seen at a set-up may be said in words.
FREE_OF = {
    "axle": {"material", "treatment", "steel"},
    "setup": {"as-found", "as-left"},
    "torque": {"grip-metal"},  # one that no table has, beside its own modulus
    "growth": {"material"},  # the same beside its own coefficient
    "shaft": {"material"},  # and beside its own modulus and density
    "exhaust gap": {"shield", "jurisdiction"},  # a sheet of its own; a place of which it is told that no rule was found
}
# Every command; of one that has several questions each of them.
NAMES = [
    *(name for name in domains.commands() if name != "exhaust"),
    *(f"exhaust {question}" for question in QUESTIONS),
]
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
        name = " ".join(argv[:2]) if argv[0] == "exhaust" else argv[0]
        if name not in NAMES:
            continue
        found.setdefault(name, []).append(argv)
    return found


def options(name: str) -> list[str]:
    text = said([*name.split(), "--help"])[1]
    found = dict.fromkeys(re.findall(r"^ +--([a-z][a-z-]*) [A-Z]", text, re.MULTILINE))
    return [o for o in found if o not in NO_VALUE | ELSEWHERE]


CASES = [(name, option) for name in NAMES for option in options(name)]


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


@pytest.mark.parametrize(("name", "option"), CASES)
@pytest.mark.parametrize("blank", ["", "   "])
def test_a_blank_is_refused(name: str, option: str, blank: str) -> None:
    """Nothing at all is no count and no kind: it is never worked with."""
    own = sorted((argv for argv in lines().get(name, []) if f"--{option}" not in argv), key=len)
    for argv in own[:1]:
        for given in ([f"--{option}", blank], [f"--{option}={blank}"]):
            code, text = said([*argv, *given])
            assert code == 2, shlex.join([*argv, *given])
            assert f"--{option}: (blank)" in " ".join(text.split()), text


@pytest.mark.parametrize("name", NAMES)
def test_a_blank_word_is_refused(name: str) -> None:
    for argv in lines().get(name, [])[:2]:
        for at, word in enumerate(argv[1:], 1):
            before = argv[at - 1]
            if word[:1] == "-" or (before[:2] == "--" and "=" not in before) or at < len(name.split()):
                continue
            assert said([*argv[:at], " ", *argv[at + 1 :]])[0] == 2, (argv, at)


# Digits that are none of a count or a measure: raised, of another script, more than a number may have.
ODD = ["\u00b2", "\u0663", "5" * 5000, "\u00b2 in", "5" * 5000 + " in", "1/" + "0" * 400]


@pytest.mark.parametrize(("name", "option"), CASES)
def test_odd_digits_are_refused_or_printed(name: str, option: str) -> None:
    own = sorted((argv for argv in lines().get(name, []) if f"--{option}" not in argv), key=len)
    for argv in [*own[:1], *own[-1:]]:
        for value in ODD:
            code, text = said([*argv, f"--{option}", value])
            assert code in (0, 1, 2), (argv, value[:8], text[:300])


@pytest.mark.parametrize("name", NAMES)
def test_odd_digits_of_a_word_are_refused_or_printed(name: str) -> None:
    for argv in lines().get(name, [])[:2]:
        for at in range(len(name.split()), len(argv)):
            for value in ODD:
                code, text = said([*argv[:at], value, *argv[at + 1 :]])
                assert code in (0, 1, 2), (argv, at, value[:8], text[:300])
