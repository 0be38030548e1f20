"""The audit of one packet: every figure on its sheets and everything below it, once each."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from gaugeblock import spreads
from gaugeblock.audit.digest import record_digest
from gaugeblock.audit.kinds import answer, finding, kind_of, mark
from gaugeblock.errors import InputError
from gaugeblock.figure import weakness
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from collections.abc import Iterator

_TIED = ("edition", "source id")


def audit_packet(packet: dict[str, Any]) -> dict[str, Any]:
    """The audit of the ``packet`` that a packet.json holds: every figure on its sheets and everything below it, once
    each. InputError for what is no whole packet.json of this program, or was changed after it was made.
    """
    try:
        _same_digest(packet)
        return audit_record(packet)
    except (KeyError, TypeError, AttributeError, IndexError, ValueError, ZeroDivisionError, RecursionError) as error:
        if isinstance(error, InputError):
            raise
        why = "not a whole packet.json of this program"
        raise InputError("packet", "audit", why, (), "give the packet.json as it was made") from None


def _same_digest(packet: dict[str, Any]) -> None:
    """InputError when the record is not of this contract, or was changed after it was made."""
    if type(packet.get("contract")) is not int or packet["contract"] not in (1, 2):
        raise InputError("packet", "audit", "not a packet.json of this program", (), "give the packet.json of a packet")
    said = packet["document"]["digest"]
    if record_digest(packet) != said:
        why = f"its digest {str(said)[:12]} does not fit its contents: it was changed after it was made"
        raise InputError("packet", "audit", why, (), "make the packet again")


def audit_record(packet: dict[str, Any]) -> dict[str, Any]:
    """As ``audit_packet``, for a record that was just made here."""
    tables: dict[str, Counter[str]] = {}
    findings: list[dict[str, Any]] = []
    counts: Counter[str] = Counter()
    seen: set[str] = set()
    walked: set[str] = set()
    for sheet in packet["sheets"]:
        for figure in sheet["figures"]:
            findings += _answer_findings(sheet["name"], figure)
            for part in _walk(figure, walked):
                if part["id"] in seen:
                    continue
                seen.add(part["id"])
                marked = mark(part["basis"], part["checked"] or "")
                counts[marked] += 1
                place = part["id"].split(":", 1)[0] if "/" in part["id"].split(":", 1)[0] else part["basis"]
                tables.setdefault(place, Counter())[marked] += 1
                findings += _part_findings(part)
                findings += _packet_disagreement(part)
                for other in part["others"]:
                    if other["standing"] and other["id"] not in seen:
                        seen.add(other["id"])
                        findings += _part_findings(other)
        for check in sheet["cautions"]:
            counts[f"caution {check['severity']}"] += 1
    rows = [{"table": t, "rows": sum(by.values()), "by": dict(sorted(by.items()))} for t, by in sorted(tables.items())]
    return answer(f"packet {packet['document']['digest'][:12]}", packet["data_release"], rows, findings, counts)


def _walk(figure: dict[str, Any], walked: set[str]) -> Iterator[dict[str, Any]]:
    """A figure and all below it, but for those that were ``walked``: what stands below one is the same everywhere."""
    stack = [figure]
    while stack:
        part = stack.pop()
        if part["id"] not in walked:
            walked.add(part["id"])
            yield part
            stack.extend(reversed(part["inputs"]))


def _answer_findings(sheet: str, figure: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """A derived answer that rests on a weak link, the link named."""
    link = figure["evidence"]
    if figure["basis"] == "derived" and weakness(link["basis"], link["checked"] or "") >= 2:
        weak = "common practice" if link["basis"] == "common practice" else "memory"
        text = f"{sheet}: {figure['quantity'].replace('_', ' ')} {figure['printed']} rests on {weak}: {link['id']}"
        yield finding("weak input", _severity(figure), [figure["id"], link["id"]], text)


def _severity(figure: dict[str, Any]) -> str:
    """What a wrong figure of this quantity can do; a quantity that is not listed is taken to hurt."""
    row = refdata().entry("quantities", str(figure["quantity"]))
    return row["hazard"] if row is not None else "injury"


def _part_findings(figure: dict[str, Any]) -> Iterator[dict[str, Any]]:
    kind = kind_of(figure["basis"], figure["checked"] or "", figure["standing"] or "")
    if kind:
        what = f"{figure['quantity'].replace('_', ' ')} {figure['printed']}: {figure['id']}"
        yield finding(kind, "none" if figure["standing"] else _severity(figure), [figure["id"]], what)


def _packet_disagreement(figure: dict[str, Any]) -> Iterator[dict[str, Any]]:
    if figure["chosen_by"] not in _TIED:
        return
    tied = [o for o in figure["others"] if o["chosen_by"] in _TIED]
    found = spreads.apart([(_typical(f), f["unit"]) for f in (figure, *tied)])
    if found is not None:
        low, high = found
        names = ", ".join(o["source"] or "habit" for o in tied)
        what = f"{figure['quantity'].replace('_', ' ')} {low:.4g} to {high:.4g} {figure['unit']}"
        text = f"{what}: {figure['id']} beside {names}"
        yield finding("sources disagree", _severity(figure), [figure["id"], *(o["id"] for o in tied)], text)


def _typical(figure: dict[str, Any]) -> float:
    ends = [e for e in (figure["value"],) if e is not None] or [
        e for e in (figure["low"], figure["high"]) if e is not None
    ]
    return float(sum(ends) / len(ends))
