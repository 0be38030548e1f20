"""Questions in shop words, written without sight of the readers, each with the answer that it must give."""

from __future__ import annotations

import contextlib
import io
import json
import re
import shlex
import tomllib
from pathlib import Path
from typing import Any

import pytest

from gaugeblock.cli import main
from gaugeblock.plain.doubtful import NAME

HERE = Path(__file__).resolve().parent
# Of a hundred questions so many are right at the first try; none may be wrong.
RIGHT = 0.95
# Of rows that were looked through so many stand on the first screen.
LISTED = 12
# Of rules that many do.
FEW = 4
KINDS = ("same", "asks", "none", "refuse", "lists", "rules")


def questions() -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = []
    for path in sorted(HERE.glob("*questions.toml")):
        found += tomllib.loads(path.read_text(encoding="utf-8"))["question"]
    return found


def run(argv: list[str]) -> tuple[int, dict[str, Any]]:
    out, bad = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
        code = main(argv)
    text = out.getvalue() or bad.getvalue()
    return code, json.loads(text)


def decision(answer: dict[str, Any]) -> Any:
    """The decision with its numbers, whatever the figures are called."""
    if "decision" not in answer:
        return None
    known = {f["id"]: [f[k] for k in ("quantity", "value", "low", "high", "unit")] for f in answer["figures"]}
    told = {**answer["decision"], "figures": [known.get(one, one) for one in answer["decision"]["figures"]]}
    return alike(json.dumps(told))


def alike(text: str) -> str:
    """Text with ``1-3/4`` as ``1 3/4``: the commands repeat a length as it was typed."""
    return re.sub(r"([0-9])-([0-9]+/[0-9]+)", r"\1 \2", text)


def verdict(question: dict[str, Any]) -> str:
    """``right``; ``asks`` where it gave no number though it could; ``wrong`` where it gave any number but the right
    one, be it to use, to ask about, in a table or in a STOP.
    """
    code, got = run(["ask", "--json", "--", *question["ask"].split(" ")])
    assert code != 3, question["ask"]  # a fault of the program
    if any(is_right(kind, question, code, got) for kind in KINDS if kind in question):
        return "right"
    if is_in_doubt(got):
        return "asks" if "same" not in question or numbers(got) in figures_of(question["same"]) else "wrong"
    return "wrong" if numbers(got) else "asks"


def is_in_doubt(got: dict[str, Any]) -> bool:
    """Whether an answer asks of a word that it does not know, and stands only if that changes nothing."""
    return NAME in got.get("decision", {}).get("because", ())


def figures_of(wanted: str | list[str]) -> list[list[str]]:
    """The figures that each command line decides on."""
    texts = [wanted] if isinstance(wanted, str) else wanted
    return [numbers(run([*shlex.split(one), "--json"])[1]) for one in texts]


def numbers(got: dict[str, Any]) -> list[str]:
    """Every number that an answer decides on."""
    if "keys" in got:
        return [figure["id"] for figure in got["figures"]]
    told = [got] if "decision" in got else got.get("table", {}).get("rows", [])
    return [figure for one in told for figure in one["decision"]["figures"]]


def is_right(kind: str, question: dict[str, Any], code: int, got: dict[str, Any]) -> bool:
    """Whether an answer is of one of the kinds that the question allows."""
    wanted = question[kind]
    texts = [wanted] if isinstance(wanted, str) else wanted
    if kind == "same":
        told = [decision(run([*shlex.split(one), "--json"])[1]) for one in texts]
        return code in (0, 1) and decision(got) is not None and decision(got) in told
    if kind == "refuse":
        return code == 2 and any(alike(word.casefold()) in refusal(got, question["ask"]) for word in texts)
    if kind == "none":
        return code in (0, 1) and got.get("decision", {}).get("kind") == "none" and got["decision"]["do"] != ""
    if kind == "lists":
        return code == 0 and any(one in key["label"] for one in texts for key in got.get("keys", [])[:LISTED])
    if kind == "rules":
        return code == 0 and any(one in rule["statement"] for one in texts for rule in got.get("rules", [])[:FEW])
    names = {SPOKEN.get(one, one) for one in texts}
    if code == 2:
        return any(one in refusal(got, question["ask"]) for one in names)
    if "keys" in got:
        return False  # rows that were looked through: `lists` alone allows them
    if "table" in got:
        is_open = not names.isdisjoint(SPOKEN.get(one, one) for one in got["table"]["open"])
        return is_open and is_about(question.get("about"), got)
    if "questions" not in got:
        return False
    asked = json.dumps([[q["key"], q["text"]] for q in got["questions"]]).casefold()
    return got["decision"]["kind"] in ("ask", "none") and any(one in asked for one in names)


SPOKEN = {"klass": "class"}


def refusal(got: dict[str, Any], question: str) -> str:
    """What a refusal says of itself, and what of the question it names: not the whole question, which it repeats."""
    error = dict(got.get("error", {}))
    if error.get("asked", "").casefold() == question.casefold():
        del error["asked"]
    told = [error.get(k) for k in ("asked", "why", "do", "nearest")]
    return alike(json.dumps(told, ensure_ascii=False).casefold())


def is_about(command: str | None, got: dict[str, Any]) -> bool:
    """Whether a table is of what the command asks: each thing said of both is the same; of one decision each row."""
    if command is None:
        return True
    code, other = run([*shlex.split(command), "--json"])
    if code == 2:
        return False
    if "decision" in other:
        return decision(other) in [decision({**row, "figures": row["figures"]}) for row in got["table"]["rows"]] or (
            said_of(got).items() <= {**said_of(other)}.items()
        )
    rows = [decision(row) for row in got["table"]["rows"]]
    return any(decision(row) in rows for row in other["table"]["rows"])


def said_of(got: dict[str, Any]) -> dict[str, str]:
    return {k: " ".join(alike(str(v)).replace(" in", "").split()) for k, v in got["asked"].items() if v is not None}


@pytest.fixture(scope="module")
def verdicts() -> dict[str, str]:
    return {q["ask"]: verdict(q) for q in questions()}


def test_no_question_gets_a_wrong_number(verdicts: dict[str, str]) -> None:
    assert [ask for ask, told in verdicts.items() if told == "wrong"] == []


def test_nearly_all_are_right_at_the_first_try(verdicts: dict[str, str]) -> None:
    open_ones = [ask for ask, told in verdicts.items() if told != "right"]
    assert len(open_ones) <= (1 - RIGHT) * len(verdicts), open_ones
