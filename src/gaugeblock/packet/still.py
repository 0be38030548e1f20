"""Is this print still good? A packet made earlier, its rows and its decisions against the tables of today."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from gaugeblock import domains, lookup
from gaugeblock.errors import GaugeblockError
from gaugeblock.packet.build import CONTRACT, build
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tables.releases import row_digest

if TYPE_CHECKING:
    from collections.abc import Mapping

CURRENT, UNAFFECTED, AFFECTED, UNKNOWN = "current", "changed without effect", "affected", "unknown"
_SHOWN = 12


def still_good(record: Mapping[str, Any], data: Refdata | None = None) -> dict[str, Any]:
    """Whether what a packet decides is decided today.

    ``record`` is a packet.json. Returns ``state``: ``current`` (the same rows), ``changed without effect`` (other rows,
    every decision the same), ``affected``, or ``unknown`` where the packet's release is not carried here, which is
    never called current; ``why``; ``rows`` that were closed since; and ``items`` whose decision is another today, each
    with ``then`` and ``now``.
    """
    data = data or refdata()
    release = str(record["data_release"])
    if release not in [r["version"] for r in data.releases]:
        why = f"data release {release} is not one of those that this program carries"
        return {"state": UNKNOWN, "why": why, "then": release, "now": data.release, "rows": [], "items": []}
    closed = sorted(row["id"] for row in record["rows_used"] if not _lives(row["id"], row["sha256"], data))
    if record.get("contract") != CONTRACT:
        why = "it is of an earlier form, which has no decisions"
        return {"state": UNKNOWN, "why": why, "then": release, "now": data.release, "rows": closed, "items": []}
    try:
        job = domains.parse_job(job_text(record["job"]), "packet.json")
        today = build(job, data, str(record.get("program", "")))
    except GaugeblockError as error:
        why = f"its job is no longer read as it was: {error}"
        return {"state": UNKNOWN, "why": why, "then": release, "now": data.release, "rows": closed, "items": []}
    now = {str(sheet["name"]): sheet for sheet in json.loads(json.dumps(today.record["sheets"]))}
    items = []
    for sheet in record["sheets"]:
        then_says, now_says = says(sheet), says(now[sheet["name"]]) if sheet["name"] in now else "not in the job"
        if then_says != now_says:
            items.append({"item": sheet["name"], "then": then_says, "now": now_says})
    state = AFFECTED if items else UNAFFECTED if closed else CURRENT
    return {"state": state, "why": "", "then": release, "now": data.release, "rows": closed, "items": items}


def says(sheet: Mapping[str, Any]) -> str:
    """What a sheet decides, as a person reads it: the verb and its numbers."""
    decision = sheet["decision"]
    figures = {figure["id"]: figure for figure in sheet["figures"]}
    after = decision.get("plus") or [""] * len(decision["figures"])
    numbers = [
        f"{figures[id]['printed']} {plus}".rstrip()
        for id, plus in zip(decision["figures"], after, strict=True)
        if id in figures
    ]
    word = {"use": decision["verb"] or "USE", "ask": "ASK FIRST", "stop": "STOP", "none": "NO FIGURE"}[decision["kind"]]
    return f"{word} {' or '.join(numbers)}".strip()


def report(found: Mapping[str, Any]) -> str:
    """The same for a person."""
    then, now = found["then"], found["now"]
    if found["state"] == UNKNOWN:
        return f"Is this print still good? It cannot be told: {found['why']}. Print it again before it is used."
    if found["state"] == CURRENT:
        return f"Is this print still good? Yes: data release {then}, and nothing of it has changed up to {now}."
    if found["state"] == UNAFFECTED:
        rows = len(found["rows"])
        return (
            f"Is this print still good? Yes: {rows} of its rows changed between data release {then} and {now}, and"
            " every decision is the same today."
        )
    lines = [f"Is this print still good? No: {len(found['items'])} decisions are others today (release {then}, {now})."]
    lines += [f"  {i['item']}: printed {i['then']}; today {i['now']}" for i in found["items"][:_SHOWN]]
    more = len(found["items"]) - _SHOWN
    return "\n".join([*lines, *([f"  ... and {more} more"] if more > 0 else []), "Print it again before it is used."])


def _lives(id: str, digest: str, data: Refdata) -> bool:
    """Whether a row is one of today's, cell for cell."""
    table = id.partition(":")[0]
    memo = ("rows by id", table)
    rows = data._memo.get(memo)
    if rows is None:
        rows = data._memo[memo] = {lookup.figure_of(row, data).id: row for row in data.table(table).rows}
    row = rows.get(id)  # type: ignore[attr-defined]
    return row is not None and row_digest(row.table, row.cells) == digest


# --- the job of a packet as a job file
# ----------------------------------------------------------------------------------------


def job_text(job: Mapping[str, Any]) -> str:
    """The job of a packet.json as TOML, without what is blank."""
    lines = []
    for table, value in job.items():
        for item in value if isinstance(value, list) else [value]:
            lines.append(f"[[{table}]]" if isinstance(value, list) else f"[{table}]")
            lines += [f"{key} = {_toml(one)}" for key, one in item.items() if not _is_blank(one)]
    return "\n".join(lines) + "\n"


def _is_blank(value: object) -> bool:
    return value is None or value in ([], {}, "")


def _toml(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{k} = {_toml(v)}" for k, v in value.items() if not _is_blank(v)) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(_toml, value)) + "]"
    return json.dumps(value, ensure_ascii=False)
