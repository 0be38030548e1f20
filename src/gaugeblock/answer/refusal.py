"""A refusal as a person reads it."""

from __future__ import annotations

from gaugeblock.answer.pretty import capital
from gaugeblock.answer.text import width, wrap
from gaugeblock.errors import GaugeblockError, JobError


def told(error: GaugeblockError) -> str:
    """What is wrong, what is near it, what to do: one line each where it fits, none wider than the screen."""
    wide = width()
    if isinstance(error, JobError):
        parts = [(line, 2 if line.startswith("  ") else 0) for line in str(error).splitlines()]
        return "\n".join(part for line, at in parts for part in wrap(line.strip(), at, at + 2, wide=wide))
    table, _, key = error.where.rpartition(" ")
    where = key if "/" in table and " " not in table else error.where.removeprefix("command line")
    if where.startswith("read as "):
        lines = [f"{where}.", f"{error.why}."]
    else:
        lines = [f"{where}: {error.asked}: {error.why}." if where else f"{error.asked}: {error.why}."]
    lines += [f"{error.choices}."] if error.nearest else []
    lines += [f"{error.do}."] if error.do else []
    shown = [line if "/" in line.partition(" ")[0] else capital(line) for line in lines]
    return "\n".join(part for line in shown for part in wrap(line, 0, 2, wide=wide))
