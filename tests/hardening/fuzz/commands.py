"""Command lines: worked examples with options changed, left out and added, and lines made of anything."""

from __future__ import annotations

import io
import json
import os
import re
import shlex
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from random import Random

from gaugeblock.cli import main
from gaugeblock.errors import hidden
from hardening.fuzz import pools
from hardening.fuzz.jobs import DEMO

# These take a file, or all tables: one line in a few hundred is enough of them.
SLOW = ("packet", "new", "validate", "audit", "route", "compare", "export")
# Worked examples beside those of each --help.
SEEDS = (
    'torque 3/8-16 --grade "SAE J429 5" --condition dry',
    'torque M10x1.5 --grade 10.9 --condition oiled --into aluminium --engagement "15 mm" --wrench "20 to 150 N*m by 1"',
    'torque 7/16-20 --grade 8 --condition anti-seize --adapter "2 in on 12 in at 30 deg" --given "60 lbf*ft"',
    'bend --od "1 3/4 in" --wall "0.120 in" --material 1020 --method "rotary draw" --radius "5 1/2 in"',
    'part "spark plug" --size "14 mm"',
    "gauge 16",
    "pipe 2 --schedule 40",
    "hardness 40 HRC",
    "spline 16/32 20",
    'heat "DOT 4" --state wet --at "400 degF"',
    'steel 4340 --treatment "quenched and tempered" --temper "800 degF"',
    'steel 4130 --shaft "1 in" --bore "0.5 in" --torque "300 lbf*ft" --length "20 in" --hardness "32 HRC"',
    'spline 24/48 35 --torque "900 lbf*ft" --bore "0.5 in" --material 4340 --load steady --cycles 1000000',
    (
        'heat "DOT 4" --beside "exhaust header" --gap "2 in" --od "3/16 in" --hot-od "2 in" --shield "1 in" --speed "10'
        ' m/s" --sleeve "5 mm"'
    ),
    'joint "10 deg"',
    "find brake",
    "sources",
)
_MOST_LINES, _WIDEST = 10, 80  # of a refusal, at the width that is taken where there is no screen
_PLACE = re.compile(r"\((\S+ line \d+|unknown)\)")


@contextmanager
def listening() -> Iterator[tuple[io.StringIO, io.StringIO]]:
    """What is printed on either output."""
    was = sys.stdout, sys.stderr
    out, err = io.StringIO(), io.StringIO()
    sys.stdout, sys.stderr = out, err
    try:
        yield out, err
    finally:
        sys.stdout, sys.stderr = was


def _examples() -> list[list[str]]:
    found = [shlex.split(seed) for seed in SEEDS]
    for parser in pools.parsers().values():
        text = (parser.epilog or "").partition("example:\n")[2].replace("\\\n", " ").splitlines()
        found += [shlex.split(example)[1:] for example in text if example.strip().startswith("gaugeblock")]
    return found


_FIRST: list[list[str]] = []


def line(chance: Random) -> list[str]:
    """One command line."""
    if not _FIRST:
        _FIRST.extend(_examples())
    roll = chance.random()
    if roll < 0.02:
        return [chance.choice((*pools.JUNK, *pools.parsers())) for _ in range(chance.randrange(5))]
    argv = list(chance.choice(_FIRST))
    if argv[0] in SLOW and chance.random() > 0.02:
        argv = list(chance.choice([first for first in _FIRST if first[0] not in SLOW]))
    known = pools.parsers()
    parser = (
        known.get(" ".join(argv[:2]))
        or known.get(argv[0])
        or next(p for k, p in known.items() if k.startswith(argv[0]))
    )
    if roll < 0.2:
        argv = [argv[0]]
    options = [a for a in parser._actions if a.option_strings and a.dest != "help"]
    if chance.random() < 0.1 and any(a.dest == "data_release" for a in options):
        argv += ["--data-release", chance.choice(pools.releases())]
    for _ in range(chance.choice((0, 1, 1, 2, 2, 3, 5))):
        _change(argv, parser, options, chance)
    return argv


def _change(argv: list[str], parser: object, options: list[object], chance: Random) -> None:
    what = chance.randrange(6)
    at = chance.randrange(1, len(argv)) if len(argv) > 1 else 0
    if what == 0 and at:
        del argv[at]
    elif what == 1 and at and not argv[at].startswith("--"):
        name = argv[at - 1].removeprefix("--").replace("-", "_")
        roll = chance.random()
        if roll < 0.4:
            argv[at] = pools.value(name, chance)
        else:
            argv[at] = pools.other_figure(argv[at], chance) if roll < 0.8 else pools.spoilt(argv[at], chance)
    elif what == 2:
        positionals = [a for a in parser._actions if not a.option_strings]  # type: ignore[attr-defined]
        name = chance.choice(positionals).dest if positionals else "x"
        argv.insert(chance.randrange(1, len(argv) + 1), pools.value(name, chance))
    elif options:
        action = chance.choice(options)
        option = action.option_strings[-1]  # type: ignore[attr-defined]
        if action.nargs == 0:  # type: ignore[attr-defined]
            argv.append(option)
        else:
            given = pools.value(action.dest, chance)  # type: ignore[attr-defined]
            argv += [f"{option}={given}"] if chance.random() < 0.3 else [option, given]


def judge(argv: list[str]) -> tuple[str, int]:
    """What is wrong with how a command line ended, blank when nothing is; and its exit code."""
    with listening() as (out, err):
        try:
            code = main(list(argv))
        except SystemExit as ended:
            code = int(ended.code or 0)
            return (
                "" if code == 0 and out.getvalue() and {"-h", "--help"} & set(argv) else f"ended by itself with {code}"
            ), code
    said, told = out.getvalue(), err.getvalue()
    if code == 3:
        place = _PLACE.search(told) or re.search(r'"where": "([^"]*)"', told)
        why = re.search(r"[A-Z][A-Za-z]+(?:Error|Exception)[^(]{0,60}", told)
        return f"a fault of the program at {place[1] if place else told}: {why[0] if why else told}", code
    return _of_code(argv, code, said, told), code


def _of_code(argv: list[str], code: int, said: str, told: str) -> str:
    as_json = "--json" in argv[: argv.index("--") if "--" in argv else len(argv)] and not (argv and argv[0] in ("new",))
    if code == 2:
        if said:
            return "refused, and printed"
        if not told.strip() or (told.count("\n") > _MOST_LINES and "problems" not in told):
            return f"refused in {told.count(chr(10))} lines"
        if not as_json and any(
            len(line) > _WIDEST for line in told.splitlines() if max(map(len, line.split())) < _WIDEST
        ):
            return "refused wider than the screen"
        if len(told) > 3000:
            return f"refused in {len(told)} characters"
        if as_json and not _is_json(told):
            return "--json, and no JSON on standard error"
    elif code in (0, 1):
        if told or not said:
            return f"done, and standard error says {told[:100]!r}" if told else "done, and nothing said"
        if as_json and not _is_json(said):
            return "--json, and no JSON printed"
    else:
        return f"exit {code}"
    found = hidden((said + told).replace("\n", ""))
    return f"printed U+{ord(found[0]):04X}" if found else ""


def _is_json(text: str) -> bool:
    try:
        return bool(json.loads(text))
    except ValueError:
        return False


def prepare(folder: str) -> None:
    """A folder to work in, with the files that examples name."""
    os.chdir(folder)
    for name in ("build.toml", "JOB.toml", "roadster.toml"):
        shutil.copy(DEMO, name)
    os.mkdir("packets")
