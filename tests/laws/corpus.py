"""What the program says, gathered wide: each derived figure of many answers as its JSON prints it."""

from __future__ import annotations

import io
import json
import shlex
from contextlib import redirect_stderr, redirect_stdout
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from gaugeblock import domains, units
from gaugeblock.answer.sheet import figure_dict
from gaugeblock.cli import main
from gaugeblock.figure import Figure
from gaugeblock.packet.build import build
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from collections.abc import Iterator

HERE = Path(__file__).parent
DEMO = HERE.parents[1] / "reports" / "examples" / "demo.toml"
JOBS = (DEMO, HERE / "trial.toml")

# What the examples of --help leave out: one question a line.
ASKED = (HERE / "questions.txt").read_text(encoding="ascii").splitlines()


def answer(line: str) -> dict[str, Any] | None:
    """The JSON of one command line; None where it is refused."""
    out = io.StringIO()
    with redirect_stdout(out), redirect_stderr(io.StringIO()):
        code = main([*shlex.split(line), "--json"])
    return json.loads(out.getvalue()) if code in (0, 1) else None


def derived(printed: object) -> Iterator[dict[str, Any]]:
    """Every derived figure of a piece of JSON, inputs of inputs too."""
    if isinstance(printed, dict):
        if printed.get("rule") and "quantity" in printed:
            yield printed
        for value in printed.values():
            yield from derived(value)
    elif isinstance(printed, list):
        for value in printed:
            yield from derived(value)


def figure_of(printed: dict[str, Any]) -> Figure:
    """A Figure out of its JSON: all that a reader of it has."""
    data = refdata()
    text = units.split_quantity(printed["printed"])[0] if printed["basis"] == "derived" else ""
    return Figure(
        printed["id"],
        printed["quantity"],
        _float(printed["value"]),
        printed["unit"],
        low=_float(printed["low"]),
        high=_float(printed["high"]),
        side=printed["side"],
        basis=printed["basis"],
        checked=printed["checked"] or "",
        source=printed["source"] or "",
        locator=printed["locator"] or "",
        key=printed["key"],
        rule=data.rule(printed["rule"]["name"]) if printed["rule"] else None,
        inputs=tuple(map(figure_of, printed["inputs"])),
        text=text,
    )


def _float(number: float | None) -> float | None:
    return None if number is None else float(number)


def examples() -> list[str]:
    """The worked examples that --help prints, of the commands that answer from the tables."""
    out = []
    for name in domains.commands():
        text = io.StringIO()
        try:
            with redirect_stdout(text):
                main([name, "--help"])
        except SystemExit:
            pass
        lines = text.getvalue().split("example:\n", 1)[1].replace("\\\n", " ").splitlines()
        out += [line.strip().removeprefix("gaugeblock ") for line in lines if line.strip().startswith("gaugeblock ")]
    return [line for line in out if "build.toml" not in line]


@cache
def sheets() -> tuple[tuple[str, dict[str, Any]], ...]:
    """What was asked and the JSON that answered: the examples, the questions above, every sheet of the jobs."""
    data = refdata()
    out = [(line, got) for line in [*examples(), *ASKED] if (got := answer(line)) is not None]
    for path in JOBS:
        packet = build(domains.read_job(path, domains.hooks(data)), data, "test")
        for item in packet.items:
            sheet = item.sheet
            bounds = [
                b.figure for c in sheet.checks for b in (c.required, c.actual) if b is not None and b.figure is not None
            ]
            printed = [figure_dict(f, data) for f in (*sheet.figures, *bounds, *sheet.decision.figures)]
            out.append((f"{path.name}: {item.name}", {"figures": printed}))
    return tuple(out)


@cache
def figures() -> dict[str, list[Figure]]:
    """Every derived figure of those sheets, each id once, by its rule."""
    out: dict[str, dict[str, Figure]] = {}
    for _, printed in sheets():
        for one in derived(printed):
            out.setdefault(one["rule"]["name"], {}).setdefault(one["id"], figure_of(one))
    return {rule: list(by.values()) for rule, by in out.items()}
