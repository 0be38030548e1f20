"""An audit as text: on one screen, or the list to work down."""

from __future__ import annotations

from collections import Counter

from gaugeblock.answer.text import width, wrap
from gaugeblock.audit.kinds import KINDS

TYPE_CHECKING = False  # typing itself stays off the path of a summary
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

_HEAD = "  {}  rows  read  quoted  memory  habit  other   read"
_LEAST_NAME, _MOST_NAME = 9, 28


def summary(audit: Mapping[str, Any]) -> str:
    """A tally of the tables on one screen: by domain, what was found, and what to read next."""
    domains: dict[str, tuple[int, Counter[str]]] = {}
    for row in audit["tables"]:
        name = row["table"].partition("/")[0]
        rows, by = domains.get(name, (0, Counter()))
        domains[name] = rows + row["rows"], by + _columns(row["by"])
    lines = [f"audit of {audit['scope']}, data release {audit['data_release']}", "", _head("domain")]
    lines += [line for name, (rows, by) in domains.items() for line in _line(name, rows, by)]
    total = sum((by for _, by in domains.values()), Counter[str]())
    lines += _line("all", sum(rows for rows, _ in domains.values()), total)
    kinds = audit["kinds"]
    lines += wrap("Found: " + ", ".join(f"{kinds[k]} {k}" for k in KINDS if kinds.get(k)) + ".", 2, 4, wide=width())
    for one in audit["read_next"][:1]:
        lines += wrap(f"Read next: {_read_next(one)}.", 2, 4, wide=width())
    return "\n".join([*lines, *wrap("--list: every table, finding and what to read next.", 2, 4, wide=width())])


def to_read(audit: Mapping[str, Any]) -> str:
    """What to read next, by harm and by how many figures answer from it."""
    lines = wrap("Read next, by harm and by how many figures answer from it:", 2, 4, wide=width())
    for one in audit["read_next"]:
        lines += wrap(_read_next(one), 4, 6, wide=width())
    return "\n".join(lines)


def _read_next(one: Mapping[str, Any]) -> str:
    hurt = f", {one['hurt']} of them can hurt" if one["hurt"] else ""
    return f"{one['source']}, {one['place']}: {one['figures']} answers{hurt}"


def report(audit: dict[str, Any], limit: int | None = 40) -> str:
    """The audit as text: the share that is published and read, by table, then the list to work down."""
    lines = [f"audit of {audit['scope']}, data release {audit['data_release']}", ""]
    total: Counter[str] = Counter()
    lines.append(_head("table"))
    for row in audit["tables"]:
        by = _columns(row["by"])
        total.update(by)
        total["rows"] += row["rows"]
        lines += _line(row["table"], row["rows"], by)
    lines += [*_line("all", total["rows"], total), ""]
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


def _name_room() -> int:
    """Columns for a name: what the numbers leave of the screen."""
    return max(_LEAST_NAME, min(_MOST_NAME, width() - len(_HEAD.format(""))))


def _head(name: str) -> str:
    return _HEAD.format(name.ljust(_name_room()))


def _line(name: str, rows: int, by: Counter[str]) -> list[str]:
    """One row of the tally; a long name stands above its numbers."""
    share = f"{by['read'] / rows:.0%}" if rows else ""
    room = _name_room()
    own = name if len(name) <= room else ""
    numbers = (
        f"  {own:<{room}}{rows:>6}{by['read']:>6}{by['quoted']:>8}{by['memory']:>8}{by['habit']:>7}{by['other']:>7}  "
        f" {share}"
    )
    return [numbers] if own else [f"  {name}", numbers]
