"""How many damaged figures each physics rule notices, by how much the figures are damaged.

The rows are those of one release, which stand still. ``as_noticed.txt`` holds the counts; where a rule was meant to
become wider or narrower, ``scripts/bless`` writes them anew.
"""

from __future__ import annotations

import random
from collections import Counter
from pathlib import Path

from gaugeblock import domains
from gaugeblock.fasteners import part_physics
from gaugeblock.tables import physics
from gaugeblock.tables.catalogue import TABLES, columns_of, refdata_folder
from gaugeblock.tables.facts import NUMBERS, Facts
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.limits import own_ranges
from gaugeblock.tables.load import Row
from gaugeblock.tables.raw import read_raw

KEPT = Path(__file__).parent / "as_noticed.txt"
RELEASE = (0, 18, 0)
# A damaged figure is so many times itself or its inverse; half of the rows are left whole, so that neighbours part.
FACTORS = (1.005, 1.02, 1.06, 1.2, 1.6, 3.0, 10.0)
RANGES = own_ranges()


def _release(text: str) -> tuple[int, ...]:
    return tuple(map(int, text.split(".")))


def rows() -> dict[str, list[Row]]:
    """The rows that were open in the release, as they were then."""
    faults: list[Fault] = []
    found = {}
    for name in TABLES:
        kept = []
        for row in read_raw(refdata_folder(), name, columns_of(name), faults):
            cells = row.cells
            if _release(cells["since"]) <= RELEASE and (not cells["until"] or _release(cells["until"]) > RELEASE):
                kept.append(Row(row.table, row.line, tuple(cells), list((cells | {"until": ""}).values()), row.key))
        found[name] = kept
    return found


def damaged(row: Row, factor: float, draw: random.Random) -> Row:
    """A row with its numbers a factor larger or smaller, or with one of them; half of them whole."""
    cells = row.cells
    given = [column for column in NUMBERS if cells[column]]
    if draw.random() < 0.5 or not given:
        return row
    by, which = draw.choice((factor, 1 / factor)), draw.choice((given, given[:1], given[-1:]))
    new = {column: f"{float(cells[column]) * by:.6g}" for column in which}
    return Row(row.table, row.line, tuple(cells), list((cells | new).values()), row.key)


def noticed(tables: dict[str, list[Row]], factor: float) -> Counter[str]:
    """How many faults each rule finds where figures are damaged by a factor, in three drawings."""
    found: Counter[str] = Counter()
    for drawing in range(3):
        draw = random.Random(f"{factor} {drawing}")
        facts = Facts({name: [damaged(row, factor, draw) for row in rows] for name, rows in tables.items()})
        found.update(fault.rule for rule in (*physics.RULES, *domains.physics()) for fault in rule(facts))
    return found


def counted() -> list[str]:
    """A line a rule: its name, and how many faults it finds at each factor."""
    tables = rows()
    by = [noticed(tables, factor) for factor in FACTORS]
    names = sorted({name for one in by for name in one})
    return [f"{name}: {' '.join(str(one[name]) for one in by)}" for name in names]


def bands() -> list[str]:
    """The torques that a part may have, N*m, by trial of the rule alone: a line a part."""
    rule = part_physics.part_torque_suits_its_part
    parts = {row.cells["part"]: row for row in rows()["fasteners/part_torques"] if row.cells["unit"] != "deg"}

    def is_told(row: Row, torque: float) -> bool:
        cells = row.cells | {"value": f"{torque:.9g}", "low": "", "high": "", "unit": "N*m", "standing": ""}
        cells["quantity"] = "tightening_torque"
        tried = Row(row.table, row.line, tuple(cells), list(cells.values()), row.key)
        return bool(rule(Facts({row.table: [tried]}, RANGES)))

    def edge(row: Row, good: float, bad: float) -> float:
        while abs(bad / good - 1) > 1e-5:
            middle = (good * bad) ** 0.5
            good, bad = (good, middle) if is_told(row, middle) else (middle, bad)
        return good

    out = []
    for part, row in sorted(parts.items()):
        good = next((t for t in (20.0, 60.0, 5.0, 200.0, 2.0, 600.0, 1.0) if not is_told(row, t)), None)
        if good is not None and is_told(row, 1e-4) and is_told(row, 1e7):
            out.append(f"{part}: {edge(row, good, 1e-4):.4g} to {edge(row, good, 1e7):.4g} N*m")
        else:
            out.append(f"{part}: any torque")
    return out


def kept() -> list[str]:
    """The lines that are kept."""
    return [line for line in KEPT.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]


if __name__ == "__main__":
    head = (
        f"# Faults that each rule finds at figures {', '.join(f'{f:g}' for f in FACTORS)} times off; by scripts/bless."
    )
    KEPT.write_text("\n".join([head, *counted(), "# Torques that a part may have.", *bands()]) + "\n", encoding="utf-8")
