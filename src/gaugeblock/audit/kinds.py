"""Findings of an audit, those that can hurt someone first."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the path of a summary
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

KINDS = ("no published source", "from memory", "sources disagree", "weak input", "misprint", "superseded", "withdrawn")
SEVERITIES = ("injury", "damage", "none")


def kind_of(basis: str, checked: str, standing: str) -> str:
    """What is found of one figure by its own marks; blank when nothing is."""
    if standing:
        return standing
    if basis == "common practice":
        return "no published source"
    return "from memory" if checked == "memory" else ""


def finding(kind: str, severity: str, ids: list[str], text: str) -> dict[str, Any]:
    """One finding, in the JSON of the contract."""
    return {"kind": kind, "severity": severity, "ids": ids, "text": text}


def mark(basis: str, checked: str) -> str:
    """By what the rows of a table are counted."""
    return f"{basis}, {checked}" if checked else basis


def answer(
    scope: str, release: str, tables: list[dict[str, Any]], findings: list[dict[str, Any]], counts: Mapping[str, int]
) -> dict[str, Any]:
    """The whole audit, in the JSON of the contract."""
    findings.sort(key=lambda f: (SEVERITIES.index(f["severity"]), KINDS.index(f["kind"]), f["ids"]))
    every = dict(counts)
    for one in findings:
        every[one["kind"]] = every.get(one["kind"], 0) + 1
    return {
        "scope": scope,
        "data_release": release,
        "tables": tables,
        "findings": findings,
        "counts": dict(sorted(every.items())),
    }
