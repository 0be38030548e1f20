"""What every answer keeps, whatever was asked: it decides once, says what to do, and all that shows it shows the
same.
"""

from __future__ import annotations

import contextlib
import io
import json
import re
import shlex
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from gaugeblock.answer.decision import ASK, KINDS, MOST_CANDIDATES, NONE, STOP, USE
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.question import KINDS as QUESTIONS
from gaugeblock.cli import main
from gaugeblock.packet import make, render
from gaugeblock.packet.build import Packet

LINES = [
    line
    for name in ("questions.txt", "commands.txt")
    for line in (Path(__file__).parent / name).read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]
ROOT = Path(__file__).resolve().parents[2]
JOBS = [ROOT / "reports" / "examples" / "demo.toml", *sorted((ROOT / "tests" / "builds").glob("*.toml"))]


def answer(line: str) -> tuple[int, dict[str, Any]]:
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        code = main([*shlex.split(line.removeprefix("gaugeblock ")), "--json"])
    return code, json.loads(out.getvalue() or err.getvalue())


def sheets_of(record: Any) -> Iterator[dict[str, Any]]:
    if isinstance(record, dict):
        if "decision" in record and "checks" in record:
            yield record
        for value in record.values():
            yield from sheets_of(value)
    elif isinstance(record, list):
        for value in record:
            yield from sheets_of(value)


def keeps(sheet: dict[str, Any]) -> list[str]:
    """What of the contract a sheet breaks; empty when nothing."""
    decision = sheet["decision"]
    on_sheet = {f["id"] for f in sheet["figures"]}
    counts = {USE: (1, 1), ASK: (0, MOST_CANDIDATES), STOP: (0, MOST_CANDIDATES), NONE: (0, 0)}
    least, most = counts[decision["kind"]]
    names = {c["name"] for c in sheet["checks"]}
    wrong = []
    if not least <= len(decision["figures"]) <= most:
        wrong.append("too few or too many candidates")
    if not len(decision["figures"]) == len(decision["when"]) == len(decision["then"]):
        wrong.append("candidates without when and then")
    if not set(decision["figures"]) <= on_sheet:
        wrong.append("a candidate that is not on the sheet")
    if not set(decision["because"]) <= names:
        wrong.append("because of a check that is not on the sheet")
    if decision["kind"] == USE and not decision["verb"]:
        wrong.append("no verb")
    if decision["kind"] != USE and not decision["do"]:
        wrong.append("does not say what to do")
    if decision["kind"] == ASK and len(decision["figures"]) > 1 and not all(decision["when"]):
        wrong.append("candidates that do not say when")
    said = zip(decision["when"], decision["then"], strict=True)
    if decision["kind"] == ASK and not all(when or then for when, then in said):
        wrong.append("a candidate without an outcome")
    named = decision["then"] if decision["kind"] == STOP else []
    wrong += [f"a stop whose number is told by a sentence: {then}" for then in named if re.search(r"[0-9:;]", then)]
    wrong += [
        f"a question without kind, text or key: {question}"
        for question in sheet["questions"]
        if question["kind"] not in QUESTIONS or not question["text"] or not question["key"]
    ]
    stops = [c for c in sheet["checks"] if c["result"] == "not ok" and c["bears"] == "stop"]
    if decision["kind"] == USE and any(_is_firm(c, sheet) for c in stops):
        wrong.append("used although a firm check stops")
    return wrong


def _is_firm(check: dict[str, Any], sheet: dict[str, Any]) -> bool:
    """Whether neither habit nor memory stands behind what is required and what is found."""
    links = {f["id"]: f["evidence"] for f in sheet["figures"]}
    for bound in (check["required"], check["actual"]):
        if bound is not None and bound["figure"] is not None:
            link = links.get(bound["figure"])
            if link is None or link["basis"] == "common practice" or link["checked"] == "memory":
                return False
    return True


@pytest.mark.parametrize("line", LINES)
def test_an_answer_decides_once_and_says_what_to_do(line: str) -> None:
    code, record = answer(line)
    if code == 2:
        assert set(record["error"]) >= {"code", "asked", "where", "why", "nearest", "do"}
        return
    found = list(sheets_of(record))
    assert [keeps(s) for s in found] == [[] for _ in found]
    if found:
        stops = any(s["decision"]["kind"] == STOP for s in found)
        assert code == (1 if stops else 0)


@pytest.mark.parametrize("line", LINES)
def test_what_is_not_ok_is_told_beside_the_number(line: str) -> None:
    """A number that stands although something is not ok says so on its first screen, also where that only informs."""
    code, record = answer(line)
    missed: dict[str, str] = {}
    for sheet in sheets_of(record) if code != 2 else ():
        decision = sheet["decision"]
        asked = {*decision["because"], *(name for q in sheet["questions"] for name in q["checks"])}
        for check in sheet["checks"] if decision["kind"] in (USE, ASK) else ():
            if check["result"] == "not ok" and (check["bears"] == "inform" or check["name"] not in asked):
                missed[check["name"]] = check["reason"]
    if missed:
        out = io.StringIO()
        with contextlib.redirect_stdout(out):
            main(shlex.split(line.removeprefix("gaugeblock ")))
        told = pretty(re.sub(r"\s+", " ", out.getvalue())).casefold()
        assert [name for name, reason in missed.items() if pretty(reason).casefold() not in told] == []


@pytest.fixture(scope="module", params=JOBS, ids=lambda p: p.stem)
def packet(request: pytest.FixtureRequest) -> Packet:
    return make.make(str(request.param))


def test_every_item_of_a_job_decides(packet: Packet) -> None:
    broken = {s["name"]: wrong for s in packet.record["sheets"] if (wrong := keeps(s))}
    assert broken == {}


def test_a_stop_prints_no_passes_and_no_marks(packet: Packet) -> None:
    text = render.render(packet)["packet.md"].decode()
    for number, item in enumerate(packet.items, 1):
        if item.sheet.decision.kind == STOP and item.card is not None:
            card = text.split(f"\n### {number}. ")[1].split("\n### ")[0]
            assert "**STOP**" in card
            assert "- [ ]" not in card
            assert "MARK AT" not in card
            assert "**CUT" not in card


def test_one_value_stands_on_every_page(packet: Packet) -> None:
    """The number of a decision on the list, the card and the desk of packet.md is one text."""
    text = render.render(packet)["packet.md"].decode()
    lists = text.split("## Every figure of the build")[1].split("## At the car")[0]
    for number, item in enumerate(packet.items, 1):
        decision = item.sheet.decision
        if decision.kind != USE or item.card is None:
            continue
        row = next(line for line in lists.splitlines() if line.startswith(f"| {number} |"))
        # the list says beside the number in how many steps it is reached
        shown = re.sub(r" in [0-9]+ steps$", "", row.split("|")[3].strip())
        card = text.split(f"\n### {number}. ")[1].split("\n### ")[0]
        head = text.split("## At the desk")[1].split(f"\n### {number}. ")[1].splitlines()[0]
        assert f"**{decision.verb} {shown}**".replace("  ", " ") in card, item.name
        assert head.endswith(f": {shown}"), item.name


def test_kinds_are_the_four() -> None:
    assert KINDS == (USE, ASK, STOP, NONE)
