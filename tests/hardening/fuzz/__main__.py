"""``scripts/fuzz WHAT [COUNT] [--seed N]``: tries much of one kind, prints each fault once and the counts."""

from __future__ import annotations

import argparse
import gc
import os
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from random import Random

Found = dict[str, tuple[int, str]]


def _note(found: Found, wrong: str, example: str) -> None:
    key = wrong[:90]
    count, first = found.get(key, (0, f"{wrong}\n      {example[:1500]}"))
    found[key] = (count + 1, first)


def commands(count: int, seed: int) -> tuple[Counter[str], Found]:
    """Command lines, in process."""
    from hardening.fuzz import commands as lines

    by: Counter[str] = Counter()
    found: Found = {}
    with tempfile.TemporaryDirectory() as folder:
        lines.prepare(folder)
        for number in range(count):
            argv = lines.line(Random(f"{seed} {number}"))
            wrong, code = lines.judge(argv)
            by[f"exit {code}"] += 1
            if wrong:
                _note(found, wrong, repr(argv))
        os.chdir("/")
    return by, found


def questions(count: int, seed: int) -> tuple[Counter[str], Found]:
    """Questions in plain words, in process."""
    from hardening.fuzz import commands as lines
    from hardening.fuzz import questions as asked

    by: Counter[str] = Counter()
    found: Found = {}
    for number in range(count):
        argv = asked.question(Random(f"{seed} {number}"))
        wrong, code = lines.judge(argv)
        by[f"exit {code}"] += 1
        if wrong:
            _note(found, wrong, repr(argv))
    return by, found


def jobs(count: int, seed: int) -> tuple[Counter[str], Found]:
    """Job files, in process; of one in twenty the pages are made too, one in ten by an earlier release."""
    from hardening.fuzz import jobs as texts
    from hardening.fuzz import pools

    releases = [r["version"] for r in pools.data().releases]
    by: Counter[str] = Counter()
    found: Found = {}
    for number in range(count):
        chance = Random(f"{seed} {number}")
        text = texts.job(chance)
        release = chance.choice(releases) if chance.random() < 0.1 else None
        wrong, how = texts.judge(text, release, number % 20 == 0)
        by[how] += 1
        if wrong:
            _note(found, wrong, f"release {release}\n{text}")
        if number % 2000 == 0:
            gc.collect()
    return by, found


KINDS: dict[str, Callable[[int, int], tuple[Counter[str], Found]]] = {
    "commands": commands,
    "questions": questions,
    "jobs": jobs,
}


def main() -> int:
    """Exit 1 when something was found."""
    parser = argparse.ArgumentParser(prog="scripts/fuzz", description=__doc__)
    parser.add_argument("what", choices=[*KINDS, "all"])
    parser.add_argument("count", nargs="?", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    bad = 0
    for name in KINDS if options.what == "all" else (options.what,):
        start = time.perf_counter()
        by, found = KINDS[name](options.count, options.seed)
        seconds = time.perf_counter() - start
        print(f"{name}: {by.total()} in {seconds:.0f} s: " + ", ".join(f"{n} {k}" for k, n in sorted(by.items())))
        for count, first in sorted(found.values(), reverse=True):
            print(f"  {count} times: {first}")
        print(f"{name}: {len(found)} kinds of fault, {sum(n for n, _ in found.values())} in all", flush=True)
        bad += len(found)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
