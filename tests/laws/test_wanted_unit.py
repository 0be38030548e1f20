"""Where a unit is wanted, what stands beside the number is in it too: two units of one kind can be mixed up."""

from __future__ import annotations

import io
import json
import re
import shlex
from contextlib import redirect_stderr, redirect_stdout

import pytest

from gaugeblock import units
from gaugeblock.cli import main
from laws.corpus import ASKED

_KINDS = (
    ("N*m", "lbf*ft", "lbf*in"),
    ("mm", "in"),
    ("degF", "degC"),
    ("N", "lbf", "kN"),
    ("psi", "bar", "kPa"),
    ("MPa", "ksi"),
)


def _said(line: str, *more: str) -> str:
    out = io.StringIO()
    with redirect_stdout(out), redirect_stderr(io.StringIO()):
        code = main([*shlex.split(line), *more])
    return out.getvalue() if code in (0, 1) else ""


def _cases() -> list[tuple[str, str, tuple[str, ...]]]:
    """Command lines with each unit of their figure's kind, and the others of the kind."""
    cases = []
    for line in (line for line in ASKED if not line.startswith("ask ")):
        answer = json.loads(_said(line, "--json") or "{}")
        figures = answer.get("figures") or [{"unit": "1"}]
        kind = next((k for k in _KINDS if units.dimension(k[0]) == units.dimension(figures[0]["unit"])), ())
        cases += [(line, unit, tuple(u for u in kind if u != unit)) for unit in kind]
    return cases


@pytest.mark.parametrize("kind", [k[0] for k in _KINDS])
def test_no_other_unit_of_the_kind_stands_beside_it(kind: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "100")
    mixed, seen = [], 0
    for line, unit, others in _cases():
        if units.dimension(unit) != units.dimension(kind) or not (text := _said(line, "--in", unit)):
            continue
        answer = json.loads(_said(line, "--json"))
        do = " ".join(
            answer["decision"]["do"].split()
        )  # it names sizes as they are sold and lengths as they were given
        body = re.split(r"\n  (?:CARE|STOP|NOT OK|ASK)", text.split("\n", 1)[1])[0]
        told = " ".join(body.split()).replace(do, "") if do else " ".join(body.split())
        told = re.sub(r"\([^)]*[A-Z]{3}[^)]*\)", "", told)  # a place in a publication is in that one's words
        seen += 1
        mixed += [f"{line} --in {unit}: {u}" for u in others if re.search(rf"[0-9] {re.escape(u)}(?![\w*/])", told)]
    assert seen
    assert mixed == []
