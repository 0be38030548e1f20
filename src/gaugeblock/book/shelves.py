"""The tables for those who do not know what to ask: domains, their tables, the rows; the publications; the audit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock import domains as wings
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.answer.text import label, place
from gaugeblock.book.words import release
from gaugeblock.packet.paper import Paper

if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row

# Questions that show what can be asked, by domain.
EXAMPLES = {
    "fasteners": ("3/8-16 grade 5 dry", "spark plug 14 mm gasket aluminium", "1/2-13 grade 8 oiled"),
    "tubes": ("1 3/4 .120 dom on a 6 inch die", "1 1/2 .095 4130 minimum radius"),
    "lines": ("DOT 4 wet", "DOT 4 wet at 300 degF", "fuel pump 300 hp"),
    "driveline": ("4340 quenched and tempered 800 degF", "ring gear backlash"),
    "wiring": ("28 A 12 ft wire", "35 mA draw 60 Ah battery"),
    "exhaust": ("exhaust pipe 350 hp",),
}
_SAYS = {
    "fasteners": "Bolts, plugs, fittings: what to tighten to",
    "tubes": "Tubes: bends, walls, metals",
    "lines": "Brake, fuel and oil lines, hoses, fluids: what heat they stand",
    "driveline": "Shafts, joints, gears: what they carry, how to set them",
    "wiring": "Wires, fuses, batteries",
    "exhaust": "Exhaust: the pipe behind an engine",
}


def start(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """Questions to try, by domain; no table is opened for it."""
    wanted = [w.name for w in wings.WINGS if w.name in EXAMPLES]
    return {"is": "start", "domains": [{"say": _SAYS.get(n, n), "examples": list(EXAMPLES[n])} for n in wanted]}


def ready(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """Opens what a first question opens, while the page waits for one."""
    from gaugeblock.book import completing, question

    question.answer({"text": EXAMPLES["fasteners"][0]}, metric, data)
    completing.lines("3/8-16 gr", data)
    return {"is": "ready"}


def domains(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """Every domain with its tables, each with how many figures it has."""
    out = []
    for wing in wings.WINGS:
        tables = [t for t in data.all_tables() if t.name.startswith(f"{wing.name}/") and t.rows]
        shelves = [{"table": t.name, "say": named(t.name), "figures": len(t.rows)} for t in tables]
        out.append(
            {
                "say": _SAYS.get(wing.name, capital(wing.name)),
                "tables": shelves,
            }
        )
    return {"is": "domains", "domains": out, "release": release(data)}


def named(table: str) -> str:
    """A table in words."""
    words = table.partition("/")[2].replace("_", " ")
    return capital(words)


def table(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """The figures of one table under each value of its first key."""
    found = data.table(asked["table"])
    paper = Paper(data, metric)
    groups: dict[str, list[dict[str, Any]]] = {}
    for row in found.rows:
        groups.setdefault(_heading(row), []).append(_row(row, data, paper))
    listed = [{"say": pretty(name), "rows": rows} for name, rows in groups.items()]
    return {"is": "rows", "say": named(asked["table"]), "groups": listed, "release": release(data)}


def _heading(row: Row) -> str:
    return "all" if not row.key or row.key[0] in ("any", "not stated") else row.key[0]


def _row(row: Row, data: Refdata, paper: Paper) -> dict[str, Any]:
    from gaugeblock.lookup import figure_of

    figure: Figure = figure_of(row, data)
    rest = [k for k in row.key[1:] if k not in ("any", "not stated")]
    return {
        "keys": pretty(", ".join(rest)),
        "label": label(figure),
        "number": paper.whole(figure),
        "other": paper.other(figure) if figure.value is not None else "",
        "trust": figure.trust,
        "standing": figure.standing,
        "source": pretty(place(figure)),
        "conditions": pretty(figure.conditions),
    }


def sources(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """The publications whose id or title has all the words."""
    from gaugeblock import finding

    found = finding.sources(asked.get("text", "").split(), data=data)
    return {"is": "sources", "sources": [_source(s) for s in found], "release": release(data)}


def source(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """The publications with these ids."""
    from gaugeblock import finding

    wanted = set(asked["ids"])
    found = [s for s in finding.sources([], data=data) if s["id"] in wanted]
    return {"is": "sources", "sources": [_source(s) for s in found], "release": release(data)}


def _source(row: dict[str, str]) -> dict[str, str]:
    parts = [row["publisher"], row["year"], row["kind"]]
    return {
        "id": row["id"],
        "title": pretty(row["title"]),
        "about": pretty(", ".join(p for p in parts if p)),
        "note": pretty(row["note"]),
        "figures": row["rows"],
    }


def audit(asked: dict[str, Any], metric: bool | None, data: Refdata) -> dict[str, Any]:
    """How many figures of each domain were read, quoted, remembered or are habit, and what to read next."""
    from gaugeblock.audit.kinds import KINDS
    from gaugeblock.audit.tables import tally

    found = tally(data)
    by_domain: dict[str, dict[str, int]] = {}
    for row in found["tables"]:
        told = by_domain.setdefault(row["table"].partition("/")[0], {})
        for mark, count in row["by"].items():
            word = mark.replace("primary", "read").replace("memory", "from memory")
            told[word] = told.get(word, 0) + count
    return {
        "is": "audit",
        "domains": [
            {"say": name, "figures": sum(told.values()), "by": [{"say": w, "figures": n} for w, n in told.items()]}
            for name, told in by_domain.items()
        ],
        "kinds": [{"say": kind, "count": count} for kind in KINDS if (count := found["kinds"].get(kind))],
        "next": [
            {"say": f"{n['source']}, {n['place']}", "figures": n["figures"], "hurt": n["hurt"]}
            for n in found["read_next"][:12]
        ],
        "release": release(data),
    }
