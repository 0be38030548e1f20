"""Times the program against `python -c pass` beside it, and its warm answers a second. Run by scripts/bench."""

from __future__ import annotations

import contextlib
import datetime
import io
import os
import platform
import random
import resource
import shlex
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
BIN = ROOT / ".venv" / "bin"
DEMO = str(ROOT / "reports" / "examples" / "demo.toml")
ROUNDS = 15

COLD: list[tuple[str, list[str], str]] = [
    (
        'torque 3/8-16 --grade "SAE J429 5" --condition dry',
        ["torque", "3/8-16", "--grade", "SAE J429 5", "--condition", "dry"],
        "4x",
    ),
    (
        'bend --od "1 3/4 in" --wall "0.120 in" ...',
        [
            "bend",
            "--od",
            "1 3/4 in",
            "--wall",
            "0.120 in",
            "--material",
            "1020",
            "--method",
            "rotary draw",
            "--radius",
            "5 1/2 in",
        ],
        "4x",
    ),
    ("heat DOT 4 --state wet", ["heat", "DOT 4", "--state", "wet"], "4x"),
    (
        "steel 4340 --treatment ... --temper 800 degF",
        ["steel", "4340", "--treatment", "quenched and tempered", "--temper", "800 degF"],
        "4x",
    ),
    (
        'axle --material A434 --diameter "1-1/4 in" --engine-torque "300 lbf*ft" ...',
        [
            "axle",
            "--material",
            "A434",
            "--treatment",
            "quenched and tempered to class BD",
            "--diameter",
            "1-1/4 in",
            "--engine-torque",
            "300 lbf*ft",
            "--converter",
            "none",
            "--gear",
            "2.5",
            "--ratio",
            "4.1",
            "--differential",
            "open",
            "--wheel-load",
            "1000 lb",
            "--grip",
            "0.9",
            "--radius",
            "13 in",
        ],
        "4x",
    ),
    (
        'circuit --current "28 A" --length "12 ft" --voltage "12 V" --drop "3 %"',
        ["circuit", "--current", "28 A", "--length", "12 ft", "--voltage", "12 V", "--drop", "3 %"],
        "4x",
    ),
    (
        'brake --master "1 in" --ratio 6 --force "100 lbf" --kind drum ...',
        ["brake", "--master", "1 in", "--ratio", "6", "--force", "100 lbf", "--kind", "drum", "--bore", "7/8 in"],
        "4x",
    ),
    (
        'fuel --power "350 hp" --boost "no boost" --bore "5/16 in" --length "14 ft"',
        ["fuel", "--power", "350 hp", "--boost", "no boost", "--bore", "5/16 in", "--length", "14 ft"],
        "4x",
    ),
    (
        'exhaust run --length "108 in" --od "2-1/4 in" ... --hangers "20 in, 60 in, 100 in" --flex "6 in at 4 in"',
        [
            "exhaust",
            "run",
            "--length",
            "108 in",
            "--od",
            "2-1/4 in",
            "--wall",
            ".065 in",
            "--material",
            "aluminised steel",
            "--hot",
            "900 degF",
            "--fixed",
            "20 in",
            "--hangers",
            "20 in, 60 in, 100 in",
            "--hanger-length",
            "3 in",
            "--flex",
            "6 in at 4 in",
            "--masses",
            "12 lb at 80 in",
        ],
        "4x",
    ),
    *(
        (line, shlex.split(line), "4x")
        for line in (
            'shaft --od "3 in" --wall "0.083 in" --material steel --length "48 in" --engine-speed "6000 rpm" --gears 1',
            'gearing "3.55, 41/10" --tyre P215/65R15 --speed "60 mph" --gears "3.06, 1.63, 1, 0.7"',
            'joint --side "3 deg, 5 deg, 3 deg" --phasing "in phase" --speed "3000 rpm"',
        )
    ),
    ("packet (demo), into a new folder", ["packet", DEMO, "--out", "{new}"], "25x"),
    ("packet (demo), over the last one", ["packet", DEMO, "--out", "{out}"], "25x"),
    ("ask 3/8-16 grade 8 with anti-seize", ["ask", "3/8-16", "grade", "8", "with", "anti-seize"], "5x"),
    ("find spark plug", ["find", "spark", "plug"], "5x"),
    ("find steel", ["find", "steel"], "5x"),
    ("audit", ["audit"], "5x"),
    ("validate", ["validate"], "0.8 s"),
]


def once(command: list[str]) -> float:
    """Processor time of a whole process, in seconds: what else the machine does meanwhile counts little in it."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def cold() -> None:
    print("| cold, whole process, processor time | median | times `python -c pass` | budget |\n|---|---|---|---|")
    bare = [str(BIN / "python"), "-c", "pass"]
    with tempfile.TemporaryDirectory() as out:
        for name, argv, budget in COLD:

            def command(n: int, argv: list[str] = argv) -> list[str]:
                folders = {"{out}": f"{out}/packet", "{new}": f"{out}/packet {n}"}
                return [str(BIN / "gaugeblock"), *(folders.get(a, a) for a in argv)]

            once(command(0))
            pairs = [(once(command(n)), once(bare)) for n in range(1, ROUNDS + 1)]
            mine = statistics.median(p[0] for p in pairs)
            ratio = statistics.median(p[0] / p[1] for p in pairs)
            print(f"| {name} | {mine * 1000:.0f} ms | {ratio:.1f} | {budget} |")


def rate(call: Callable[[], object], seconds: float = 1.0, batch: int = 1) -> float:
    call()
    count, start = 0, time.process_time()
    while time.process_time() - start < seconds:
        for _ in range(batch):
            call()
        count += batch
    return count / (time.process_time() - start)


def once_each(calls: list[Callable[[], object]]) -> float:
    """Calls a second of processor time, each made once: no answer is a remembered one."""
    start = time.process_time()
    for call in calls:
        call()
    return len(calls) / (time.process_time() - start)


def questions_of_rows() -> list[tuple[str, str, dict[str, str]]]:
    """The table, quantity and key of each row that a look-up of exactly its key answers, in a random order."""
    from gaugeblock.errors import GaugeblockError
    from gaugeblock.lookup import look_up
    from gaugeblock.tables.catalogue import keys_of
    from gaugeblock.tables.load import Refdata

    trial, out = Refdata(), {}
    for table in trial.all_tables():
        names = [key.name for key in keys_of(table.name)]
        for row in table.rows:
            keys = dict(zip(names, row.key, strict=True))
            with contextlib.suppress(GaugeblockError):
                look_up(table.name, row["quantity"], data=trial, **keys)
                out[table.name, row["quantity"], row.key] = (table.name, row["quantity"], keys)
    found = list(out.values())
    random.Random(1).shuffle(found)
    return found


def first_time() -> tuple[float, float]:
    """Look-ups and whole torque answers a second, a different question each time; the tables are open."""
    from functools import partial

    from gaugeblock import look_up, torque
    from gaugeblock.errors import GaugeblockError
    from gaugeblock.tables.load import Refdata

    asked = questions_of_rows()
    data = Refdata()
    data.all_tables()
    looks = once_each([partial(look_up, table, quantity, data=data, **keys) for table, quantity, keys in asked])
    threads = dict.fromkeys(row.key[0] for row in data.table("fasteners/threads").rows)
    grades = ("SAE J429 5", "SAE J429 8", "ISO 898-1 8.8", "ISO 898-1 10.9")
    calls = [
        partial(torque, thread, grade=grade, condition=condition, data=data)
        for thread in threads
        for grade in grades
        for condition in ("dry", "oiled", "anti-seize")
    ]
    good = []
    for call in calls:
        with contextlib.suppress(GaugeblockError):
            call()
            good.append(call)
    data._memo.clear()
    return looks, once_each(good)


def warm() -> None:
    import numpy as np

    from gaugeblock import finding
    from gaugeblock.calc import driveline, fasteners, wiring
    from gaugeblock.packet import make, render

    print("\n| warm | measured | goal |\n|---|---|---|")
    looks, torques = first_time()
    print(f"| look-ups a second, a different key each time | {looks:,.0f} | 200,000 |")
    print(f"| whole `torque` answers a second, a different question each time | {torques:,.0f} | 5,000 |")
    n = 1_000_000
    draw = np.random.default_rng(1)
    k, d, f = draw.uniform(0.1, 0.3, n), draw.uniform(0.006, 0.02, n), draw.uniform(1e3, 1e5, n)
    low, high, proof = k * 0.8, k * 1.2, f / 0.75
    rows = rate(lambda: fasteners.torque_window(low, k, high, d, f, proof)) * n
    print(f"| torque with window over arrays, rows a second | {rows:,.0f} | 20,000,000 |")
    torque, size = draw.uniform(100, 5000, n), draw.uniform(0.02, 0.05, n)
    rows = (
        rate(
            lambda: (
                driveline.torsional_shear_stress(torque, size) <= driveline.torsional_yield_distortion_energy(k * 4e9)
            )
        )
        * n
    )
    print(f"| shafts checked over arrays, rows a second | {rows:,.0f} | 1,000,000 |")
    current, length = draw.uniform(1, 100, n), draw.uniform(0.5, 8, n)
    rows = (
        rate(lambda: wiring.voltage_drop(wiring.resistance_hot(k / 100, k * 1000 + 200), length, current, 2) <= k) * n
    )
    print(f"| circuits checked over arrays, rows a second | {rows:,.0f} | 1,000,000 |")
    search = 1 / rate(lambda: finding.find("spark plug 14 mm"), batch=5)
    print(f"| text search over all tables | {search * 1000:.1f} ms | 5 ms |")
    packet = 1 / rate(lambda: render.render(make.make(DEMO)), seconds=2)
    print(f"| demo packet | {packet * 1000:.0f} ms | 200 ms |")


def main() -> int:
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    print(
        f"{datetime.date.today()}, {platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}\n"
    )
    cold()
    with contextlib.redirect_stderr(io.StringIO()):
        warm()
    return 0


if __name__ == "__main__":
    sys.exit(main())
