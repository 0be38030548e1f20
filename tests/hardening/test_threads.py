"""Many threads may ask at once, in a process that has asked nothing yet: each gets the answer that it gets alone.

A small interval makes the interpreter change from thread to thread within nearly every line; each run is a fresh
process, as what is shared is filled once. What a run asks is drawn, so that no two threads walk in step.
"""

from __future__ import annotations

import json
import subprocess
import sys
from functools import cache
from random import Random
from typing import Any

import pytest

ASKED = {
    "wire": "gaugeblock.ask('12 awg 25 amps 12 ft')",
    "wire of metric": "gaugeblock.ask('2.5 mm2 20 amps 3 m')",
    "bolt": "gaugeblock.ask('3/8-16 grade 5 dry into aluminium')",
    "metric bolt": "gaugeblock.ask('m10 8.8 oiled')",
    "open": "gaugeblock.ask('torque for 1/2-13')",
    "brake": "gaugeblock.pedal('100 lb', ratio='6', bore='3/4 in')",
    "axle": "gaugeblock.ask('4340 axle 1-1/4 in')",
    "fluid": "gaugeblock.ask('dot 4 wet at 300 f')",
    "rule": "gaugeblock.ask('relay terminals 30 87')",
    "injector": "gaugeblock.ask('fuel pressure for 24 lb injectors')",
    "torque": "gaugeblock.torque('3/8-16', grade='SAE J429 5', condition='dry')",
    "fuel": "gaugeblock.fuel(power='300 hp')",
    "heat": "gaugeblock.heat('DOT 4', state='wet', at='160 degC')",
    "circuit": "gaugeblock.circuit('28 A', '12 ft', '12 V', drop='3 %')",
    "bend": "gaugeblock.bend(od='1-3/4 in', wall='.120 in', material='1020', method='rotary draw', radius='5-1/2 in')",
    "steel": "gaugeblock.steel('4340', treatment='quenched and tempered', temper='800 degF')",
    "find": "gaugeblock.find('banjo bolt')",
    "find a hose": "gaugeblock.find('fuel hose')",
    "find nothing": "gaugeblock.find('m8 flanje')",
    "look up": "gaugeblock.look_up('fasteners/threads', 'tensile_stress_area', thread='3/8-16 UNC')",
    "rows": "gaugeblock.refdata().table('fasteners/torques').rows[:3]",
}
THREADS = 8
# What comes of a question as one text: an answer says itself as JSON, a refusal with its table.
TOLD = """
import json, sys, threading
import gaugeblock

def told(asked):
    try:
        got = eval(asked)
        if isinstance(got, (list, tuple)):
            got = [list(row.values) for row in got]
        return json.dumps(got.as_dict() if hasattr(got, "as_dict") else got, default=repr)
    except gaugeblock.GaugeblockError as error:
        table = getattr(error, "table", None)
        return json.dumps([type(error).__name__, error.as_dict(), table and table.as_dict()], default=repr)
    except Exception as error:
        return f"{type(error).__name__}: {error}"

given = json.loads(sys.argv[1])
"""
ALONE = "print(json.dumps([told(given[0])]))"
# Each thread asks its one question; the interpreter changes from thread to thread within nearly every line.
AT_ONCE = """
sys.setswitchinterval(1e-5)
gate, found = threading.Barrier(len(given)), [None] * len(given)

def run(n):
    gate.wait()
    found[n] = told(given[n])

threads = [threading.Thread(target=run, args=(n,)) for n in range(len(given))]
for one in threads:
    one.start()
for one in threads:
    one.join()
print(json.dumps(found))
"""


def run(program: str, given: list[Any]) -> list[Any]:
    done = subprocess.run(
        [sys.executable, "-c", TOLD + program, json.dumps(given)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)  # type: ignore[no-any-return]


@cache
def alone(asked: str) -> str:
    """What a fresh process answers to this and nothing else."""
    return run(ALONE, [asked])[0]  # type: ignore[no-any-return]


def mix(seed: int) -> tuple[str, ...]:
    """What the threads of a run ask: all the same of the first runs, then of a few things each, then what comes."""
    drawn, every = Random(seed), list(ASKED.values())
    few = drawn.sample(every, (1, 5, 2, 3, THREADS)[seed % 5])
    return tuple(drawn.choice(few) if n >= len(few) else few[n] for n in range(THREADS))


@pytest.mark.parametrize("seed", range(10))
def test_each_thread_gets_the_answer_that_it_gets_alone(seed: int) -> None:
    asked = mix(seed)
    wrong = {one: got[:300] for one, got in zip(asked, run(AT_ONCE, list(asked)), strict=True) if got != alone(one)}
    assert wrong == {}
