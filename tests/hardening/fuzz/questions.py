"""Questions in plain words: those of the lists with words put in, taken out, exchanged and joined to others."""

from __future__ import annotations

import tomllib
from functools import cache
from pathlib import Path
from random import Random

from hardening.fuzz import pools

LISTS = Path(__file__).resolve().parents[2] / "ask"
# What people say that stands in few questions: numbers in all their forms, units, words that turn.
SAID = """
18-8 400 n .008 0.25 in 37 m7 3/16 8.8 21 mm 91 deg 55 % 13 psi 303 9 amps 31 spline 4340 2x2 205/55r16 1/8 npt 50/50
three eights ten nine without not or vs between where how much what can i do i no i mean half a a 5 speed dash six
"""


@cache
def lines() -> list[str]:
    """Every question of the lists."""
    found: list[str] = []
    for path in sorted(LISTS.glob("*questions.toml")):
        found += [q["ask"] for q in tomllib.loads(path.read_text(encoding="utf-8"))["question"]]
    return found


@cache
def words() -> list[str]:
    """Words of all vocabularies."""
    return sorted({line[1] for line in pools.data().lines("words").all()})


def question(chance: Random) -> list[str]:
    """One question as an argument list of ``ask``."""
    said = chance.choice(lines()).split()
    for _ in range(chance.randint(1, 4)):
        at = chance.randint(0, len(said))
        how = chance.random()
        if how < 0.25:
            said.insert(at, chance.choice(words()))
        elif how < 0.5:
            said.insert(at, chance.choice(SAID.split()))
        elif how < 0.65 and said:
            del said[chance.randrange(len(said))]
        elif how < 0.8 and said:
            said[chance.randrange(len(said))] = chance.choice(chance.choice(lines()).split())
        else:
            other = chance.choice(lines()).split()
            said[at:at] = other[chance.randint(0, len(other)) :]
    more = ["--json"] if chance.random() < 0.3 else []
    return ["ask", *more, "--", *(said or ["m8"])]
