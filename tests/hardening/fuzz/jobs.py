"""Job files: items of the demo with keys changed, left out and added, and texts with slips in them."""

from __future__ import annotations

import copy
import json
import tomllib
import traceback
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from gaugeblock import domains
from gaugeblock.errors import GaugeblockError
from gaugeblock.packet.build import build
from gaugeblock.packet.render import render
from gaugeblock.tables.load import refdata
from hardening.fuzz import pools

DEMO = Path(__file__).resolve().parents[3] / "reports" / "examples" / "demo.toml"


@cache
def demo() -> dict[str, Any]:
    """The demo job as TOML gives it."""
    return tomllib.loads(DEMO.read_text(encoding="utf-8"))


@cache
def keys(table: str) -> dict[str, Any]:
    """The keys of a table's items, with their models."""
    return domains.tables()[table].model.keys


def text(value: Any) -> str:
    """A value as TOML; tables inside one another inline."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_key(k)} = {text(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(text, value)) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    return repr(value)


def _key(key: str) -> str:
    return key if key.replace("_", "a").replace("-", "a").isalnum() and key.isascii() else json.dumps(key)


def document(job: dict[str, Any]) -> str:
    """A job as TOML."""
    lines = []
    for table, value in job.items():
        if isinstance(value, list):
            for item in value:
                lines += ["", f"[[{table}]]", *(f"{_key(k)} = {text(v)}" for k, v in item.items())]
        else:
            lines += ["", f"[{table}]", *(f"{_key(k)} = {text(v)}" for k, v in value.items())]
    return "\n".join([*lines, ""])


def job(chance: Random) -> str:
    """The text of one job."""
    made: dict[str, Any] = {}
    for table in ("job", "shop"):
        if chance.random() < 0.93:
            made[table] = copy.deepcopy(demo()[table])
    tables = [t for t in domains.tables() if demo().get(t)]
    for _ in range(chance.choice((1, 1, 1, 2, 3))):
        table = chance.choice(tables)
        item = copy.deepcopy(chance.choice(demo()[table]))
        made.setdefault(table, []).append(item)
    for _ in range(chance.choice((0, 1, 1, 1, 1, 2))):
        table = chance.choice(list(made))
        target = made[table]
        if isinstance(target, list):
            _change(chance.choice(target), keys(table), chance)
        else:
            _change(target, {}, chance)
    whole = document(made).encode("utf-8", "replace").decode()  # as a file has it
    return pools.spoilt(whole, chance) if chance.random() < 0.01 else whole


def _change(item: dict[str, Any], known: dict[str, Any], chance: Random) -> None:
    what = chance.randrange(8)
    here = list(item)
    if what == 0 and here:
        del item[chance.choice(here)]
    elif what in (1, 2) and known:
        key = chance.choice(list(known))
        item[key] = _value(key, item.get(key), known, chance)
    elif here:
        key = chance.choice(here)
        inner = item[key]
        if isinstance(inner, dict) and chance.random() < 0.8:
            _change(inner, getattr(getattr(known.get(key), "part", None), "keys", {}), chance)
        elif isinstance(inner, list) and inner and chance.random() < 0.8:
            at = chance.randrange(len(inner))
            if isinstance(inner[at], dict):
                _change(inner[at], getattr(getattr(known.get(key), "part", None), "keys", {}), chance)
            elif chance.random() < 0.3:
                del inner[at]
            else:
                inner[at] = _value(key, inner[at], known, chance)
        else:
            item[key] = _value(key, inner, known, chance)


def _value(key: str, old: Any, known: dict[str, Any], chance: Random) -> Any:
    roll = chance.random()
    if roll < 0.1:
        return chance.choice((90, 9000, 0, -1, 1.5, True, False, [], {}, [[]], 10**30, float("1e300")))
    if roll < 0.2:
        return [pools.value(key, chance) for _ in range(chance.choice((1, 2, 3, 3, 4)))]
    if roll < 0.25:
        return (
            {chance.choice((*known, "x")): pools.value(key, chance)} if known else {"value": pools.value(key, chance)}
        )
    if isinstance(old, str) and roll < 0.45:
        return pools.other_figure(old, chance)
    if roll < 0.55:
        return chance.choice(_same_key(key)) if _same_key(key) else pools.value(key, chance)
    return pools.value(key, chance)


@cache
def _same_key(key: str) -> tuple[Any, ...]:
    """Every value that the demo gives to a key of this name."""
    found: list[Any] = []

    def walk(value: Any) -> None:
        if isinstance(value, dict):
            for k, v in value.items():
                if k == key and v not in found:
                    found.append(v)
                walk(v)
        elif isinstance(value, list):
            for v in value:
                walk(v)

    walk(demo())
    return tuple(found)


def judge(whole: str, release: str | None = None, pages: bool = False) -> tuple[str, str]:
    """What is wrong with how a job ended, blank when nothing is; and how it ended."""
    try:
        data = refdata(release)
        made = build(domains.parse_job(whole, "job", domains.hooks(data)), data, "gaugeblock fuzz")
        if pages:
            render(made)
    except GaugeblockError as error:
        said = str(error)
        return (
            "" if error.as_dict()["why"] and len(said) < 60_000 else "a message without a reason, or too long"
        ), "refused"
    except Exception as error:
        frame = traceback.extract_tb(error.__traceback__)[-1]
        name = frame.filename.rpartition("/gaugeblock/")[2]
        return f"a traceback at {name} line {frame.lineno}: {type(error).__name__}: {str(error)[:200]}", "traceback"
    return "", "made"
