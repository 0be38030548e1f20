"""The audit: what is published, what was read, what is habit, what disagrees. Over refdata, or over one packet.

Kinds of finding, those that can hurt someone first: ``no published source``, ``from memory``, ``sources disagree``,
``weak input``, ``misprint``, ``superseded``, ``withdrawn``.
"""

from __future__ import annotations

import hashlib
import json
from collections import Counter
from typing import TYPE_CHECKING, Any

from gaugeblock import lookup, spreads
from gaugeblock.answer.printing import with_unit
from gaugeblock.answer.text import width, wrap
from gaugeblock.errors import InputError
from gaugeblock.figure import weakness
from gaugeblock.tables.catalogue import columns_of
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.tables.load import Refdata, Row

KINDS = ("no published source", "from memory", "sources disagree", "weak input", "misprint", "superseded", "withdrawn")
SEVERITIES = ("injury", "damage", "none")
_TIED = ("edition", "source id")
_HEAD = "  {:<28}  rows  read  quoted  memory  habit  other   read"
_READ_NEXT = 8
_READ_COLUMNS = ("quantity", "basis", "checked", "source", "locator")


def audit_refdata(data: Refdata) -> dict[str, Any]:
    """The audit of all tables of one release, in the JSON of the contract."""
    tables = []
    findings: list[dict[str, Any]] = []
    counts: Counter[str] = Counter()
    for table in data.all_tables():
        by: Counter[str] = Counter(_mark(r.cells["basis"], r.cells["checked"]) for r in table.rows)
        counts.update(by)
        tables.append({"table": table.name, "rows": len(table.rows), "by": dict(sorted(by.items()))})
        for row in table.rows:
            findings += _row_findings(row, data)
        findings += _disagreements(table.rows, data)
    return {**_answer("refdata", data.release, tables, findings, counts), "read_next": read_next(data)}


def read_next(data: Refdata) -> list[dict[str, Any]]:
    """The publications that were quoted or remembered, by what a reading of them would settle: harm times figures.

    Each with its ``source`` and ``place``, how many ``figures`` answer from it today, and how many of those ``hurt``
    when they are wrong. Common practice has no publication to read.
    """
    found: dict[tuple[str, str], list[int]] = {}
    for table in data.all_tables():
        columns = columns_of(table.name)
        quantity, basis, checked, source, place = (columns.index(c) for c in _READ_COLUMNS)
        by: dict[tuple[tuple[str, ...], str], list[Row]] = {}
        for row in table.rows:
            if not row.standing:
                by.setdefault((row.key, row.values[quantity]), []).append(row)
        for (_, name), rows in by.items():
            if all(row.values[checked] == "primary" for row in rows):
                continue
            figure = lookup.govern_rows(rows, data) if len(rows) > 1 else None
            cells = rows[0].values
            told = (cells[basis], cells[checked]) if figure is None else (figure.basis, figure.checked)
            if told[0] != "published" or told[1] == "primary":
                continue
            at = (cells[source], cells[place]) if figure is None else (figure.source, figure.locator)
            counts = found.setdefault(at, [0, 0])
            counts[0] += 1
            counts[1] += data.quantity(name)["hazard"] == "injury"
    order = sorted(found.items(), key=lambda f: (-(f[1][0] + 2 * f[1][1]), f[0]))
    return [{"source": s, "place": p, "figures": n, "hurt": hurt} for (s, p), (n, hurt) in order]


def audit_packet(packet: dict[str, Any]) -> dict[str, Any]:
    """The audit of one packet.json: every figure on its sheets and everything below it, once each."""
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


_compact = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), sort_keys=True).encode


def record_digest(record: dict[str, Any]) -> str:
    """sha256 (hex) of a packet's record, its own digest left blank."""
    return digest_of(encoded({**record, "document": {**record["document"], "digest": ""}}))


def encoded(record: dict[str, Any]) -> dict[str, list[str]]:
    """Each top-level value of a record as compact JSON with sorted keys: one text, or one an entry and brackets
    round them.
    """
    return {
        key: ["[", *map(_compact, value), "]"] if isinstance(value, list) else [_compact(value)]
        for key, value in record.items()
    }


def encoded_sheets(sheets: list[dict[str, Any]]) -> list[str]:
    """The sheets of a record that was just made, as in ``encoded``: a figure below many answers is put into text
    once.
    """
    made: dict[int, str] = {}

    def text(figure: dict[str, Any]) -> str:
        got = made.get(id(figure))
        if got is None:
            # a quote inside a text is escaped, so these stand for the two lists and for nothing else
            got = _compact({**figure, "inputs": [], "others": []})
            for name in ("inputs", "others"):
                got = got.replace(f'"{name}":[]', f'"{name}":[{",".join(map(text, figure[name]))}]', 1)
            made[id(figure)] = got
        return got

    def part(name: str, value: Any) -> str:
        return f'"{name}":[{",".join(map(text, value))}]' if name == "figures" else f'"{name}":{_compact(value)}'

    return ["{" + ",".join(part(name, sheet[name]) for name in sorted(sheet)) + "}" for sheet in sheets]


def digest_of(parts: dict[str, list[str]]) -> str:
    """sha256 (hex) of an encoded record: compact JSON with sorted keys, the digest in it blank."""
    whole = []
    for key, (first, *rest) in sorted(parts.items()):
        whole.append(f"{json.dumps(key)}:{first}{','.join(rest[:-1])}{rest[-1] if rest else ''}")
    return hashlib.sha256(("{" + ",".join(whole) + "}").encode()).hexdigest()


def audit_record(packet: dict[str, Any]) -> dict[str, Any]:
    """As ``audit_packet``, for a record that was just made here."""
    tables: dict[str, Counter[str]] = {}
    findings: list[dict[str, Any]] = []
    counts: Counter[str] = Counter()
    seen: set[str] = set()
    for sheet in packet["sheets"]:
        for figure in sheet["figures"]:
            findings += _answer_findings(sheet["name"], figure)
            for part in _walk(figure):
                if part["id"] in seen:
                    continue
                seen.add(part["id"])
                mark = _mark(part["basis"], part["checked"] or "")
                counts[mark] += 1
                place = part["id"].split(":", 1)[0] if "/" in part["id"].split(":", 1)[0] else part["basis"]
                tables.setdefault(place, Counter())[mark] += 1
                findings += _part_findings(part)
                findings += _packet_disagreement(part)
                for other in part["others"]:
                    if other["standing"] and other["id"] not in seen:
                        seen.add(other["id"])
                        findings += _part_findings(other)
        for check in sheet["cautions"]:
            counts[f"caution {check['severity']}"] += 1
    rows = [{"table": t, "rows": sum(by.values()), "by": dict(sorted(by.items()))} for t, by in sorted(tables.items())]
    return _answer(f"packet {packet['document']['digest'][:12]}", packet["data_release"], rows, findings, counts)


def _answer(
    scope: str, release: str, tables: list[dict[str, Any]], findings: list[dict[str, Any]], counts: Counter[str]
) -> dict[str, Any]:
    findings.sort(key=lambda f: (SEVERITIES.index(f["severity"]), KINDS.index(f["kind"]), f["ids"]))
    for finding in findings:
        counts[finding["kind"]] += 1
    return {
        "scope": scope,
        "data_release": release,
        "tables": tables,
        "findings": findings,
        "counts": dict(sorted(counts.items())),
    }


def _mark(basis: str, checked: str) -> str:
    return f"{basis}, {checked}" if checked else basis


def _finding(kind: str, severity: str, ids: list[str], text: str) -> dict[str, Any]:
    return {"kind": kind, "severity": severity, "ids": ids, "text": text}


def _row_findings(row: Row, data: Refdata) -> Iterator[dict[str, Any]]:
    figure = lookup.figure_of(row, data)
    hazard = data.quantity(figure.quantity)["hazard"]
    what = (
        f"{row.table}: {lookup.figure_label(row)}: {figure.quantity.replace('_', ' ')}"
        f" {with_unit(figure.text, figure.unit)}"
    )
    if figure.standing:
        yield _finding(
            figure.standing, hazard, [figure.id], f"{what} ({figure.source}, {figure.locator}); it never governs"
        )
    elif figure.basis == "common practice":
        yield _finding("no published source", hazard, [figure.id], what)
    elif figure.checked == "memory":
        yield _finding(
            "from memory", hazard, [figure.id], f"{what} ({figure.source}, {figure.locator}): read it in its own text"
        )


def _disagreements(rows: list[Row], data: Refdata) -> Iterator[dict[str, Any]]:
    """Living rows of one key and quantity that only edition or source id could rank, over 2 % apart."""
    groups: dict[tuple[object, ...], list[Row]] = {}
    for row in rows:
        if not row.cells["standing"]:
            c = row.cells
            groups.setdefault((row.key, c["quantity"], c["basis"], c["checked"]), []).append(row)
    for group in groups.values():
        if len(group) < 2:
            continue
        figures = [lookup.figure_of(r, data) for r in group]
        found = spreads.apart([(f.typical, f.unit) for f in figures])
        if found is not None:
            low, high = found
            quantity = figures[0].quantity
            what = f"{group[0].table}: {lookup.figure_label(group[0])}: {quantity.replace('_', ' ')}"
            names = ", ".join(f.source or "habit" for f in figures)
            share = f" ({high / low - 1:.0%} apart)" if low > 0 else ""
            text = f"{what} {low:.4g} to {high:.4g} {figures[0].unit}{share}: {names}"
            yield _finding("sources disagree", data.quantity(quantity)["hazard"], [f.id for f in figures], text)


def _walk(figure: dict[str, Any]) -> Iterator[dict[str, Any]]:
    yield figure
    for part in figure["inputs"]:
        yield from _walk(part)


def _answer_findings(sheet: str, figure: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """A derived answer that rests on a weak link, the link named."""
    link = figure["evidence"]
    if figure["basis"] == "derived" and weakness(link["basis"], link["checked"] or "") >= 2:
        weak = "common practice" if link["basis"] == "common practice" else "memory"
        text = f"{sheet}: {figure['quantity'].replace('_', ' ')} {figure['printed']} rests on {weak}: {link['id']}"
        yield _finding("weak input", _severity(figure), [figure["id"], link["id"]], text)


def _severity(figure: dict[str, Any]) -> str:
    """What a wrong figure of this quantity can do; a quantity that is not listed is taken to hurt."""
    row = refdata().entry("quantities", str(figure["quantity"]))
    return row["hazard"] if row is not None else "injury"


def _part_findings(figure: dict[str, Any]) -> Iterator[dict[str, Any]]:
    what = f"{figure['quantity'].replace('_', ' ')} {figure['printed']}: {figure['id']}"
    if figure["standing"]:
        yield _finding(figure["standing"], "none", [figure["id"]], what)
    elif figure["basis"] == "common practice":
        yield _finding("no published source", _severity(figure), [figure["id"]], what)
    elif figure["checked"] == "memory":
        yield _finding("from memory", _severity(figure), [figure["id"]], what)


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
        yield _finding("sources disagree", _severity(figure), [figure["id"], *(o["id"] for o in tied)], text)


def _typical(figure: dict[str, Any]) -> float:
    ends = [e for e in (figure["value"],) if e is not None] or [
        e for e in (figure["low"], figure["high"]) if e is not None
    ]
    return float(sum(ends) / len(ends))


def summary(audit: dict[str, Any]) -> str:
    """The audit of the tables on one screen: by domain, what was found, and what to read next."""
    domains: dict[str, tuple[int, Counter[str]]] = {}
    for row in audit["tables"]:
        name = row["table"].partition("/")[0]
        rows, by = domains.get(name, (0, Counter()))
        domains[name] = rows + row["rows"], by + _columns(row["by"])
    lines = [f"audit of {audit['scope']}, data release {audit['data_release']}", "", _HEAD.format("domain")]
    lines += [_line(name, rows, by) for name, (rows, by) in domains.items()]
    total = sum((by for _, by in domains.values()), Counter[str]())
    lines += [_line("all", sum(rows for rows, _ in domains.values()), total), ""]
    kinds = Counter(f["kind"] for f in audit["findings"])
    lines += wrap("Found: " + ", ".join(f"{kinds[k]} {k}" for k in KINDS if kinds[k]) + ".", 2, 4, wide=width())
    lines += ["", "  Read next, by harm and by how many figures answer from it:"]
    for one in audit["read_next"][:_READ_NEXT]:
        hurt = f", {one['hurt']} of them can hurt" if one["hurt"] else ""
        lines += wrap(f"{one['source']}, {one['place']}: {one['figures']} figures{hurt}", 4, 6, wide=width())
    return "\n".join([*lines, "", "  --list prints every table and every finding."])


def report(audit: dict[str, Any], limit: int | None = 40) -> str:
    """The audit as text: the share that is published and read, by table, then the list to work down."""
    lines = [f"audit of {audit['scope']}, data release {audit['data_release']}", ""]
    total: Counter[str] = Counter()
    lines.append(_HEAD.format("table"))
    for row in audit["tables"]:
        by = _columns(row["by"])
        total.update(by)
        total["rows"] += row["rows"]
        lines.append(_line(row["table"], row["rows"], by))
    lines += [_line("all", total["rows"], total), ""]
    kinds = Counter(f["kind"] for f in audit["findings"])
    lines += [f"  {kind:<22}{kinds[kind]:>6}" for kind in KINDS if kinds[kind]]
    lines.append("")
    for finding in audit["findings"][:limit]:
        lines += wrap(f"[{finding['severity']}] {finding['kind']}: {finding['text']}", 2, 4, wide=width())
    more = 0 if limit is None else len(audit["findings"]) - limit
    if more > 0:
        lines.append(f"  ... and {more} more; --list prints all")
    return "\n".join(lines)


def _columns(by: dict[str, int]) -> Counter[str]:
    out: Counter[str] = Counter()
    for mark, count in by.items():
        basis, _, checked = mark.partition(", ")
        if basis == "common practice":
            out["habit"] += count
        elif basis == "published":
            out[{"primary": "read", "quoted": "quoted", "memory": "memory"}.get(checked, "other")] += count
        else:
            out["other"] += count
    return out


def _line(name: str, rows: int, by: Counter[str]) -> str:
    share = f"{by['read'] / rows:.0%}" if rows else ""
    return (
        f"  {name:<28}{rows:>6}{by['read']:>6}{by['quoted']:>8}{by['memory']:>8}{by['habit']:>7}{by['other']:>7}  "
        f" {share}"
    )
