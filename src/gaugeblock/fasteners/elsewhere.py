"""What is on record of a part where its own torque is not: other sizes, another service, a longer name."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_MOST_SIZES = 4


def elsewhere(at: dict[str, str], data: Refdata) -> str:
    """That figures of the part are on record for other sizes or for another service, where its own has none."""
    rows = [r for r in data.table("fasteners/part_torques").rows if r["part"] == at.get("part") and not r["standing"]]
    sizes = list(dict.fromkeys(r["size"] for r in rows if r["service"] in ("any", at.get("service", ""))))
    if at.get("size", "not stated") not in ("not stated", *sizes) and sizes and "any" not in sizes:
        named = [s for s in sizes if s != "not stated"]
        if named:
            more = f" and {len(named) - _MOST_SIZES} more" if len(named) > _MOST_SIZES else ""
            shown = ", ".join(named[:_MOST_SIZES])
            return f" The tables have no {at['size']}, but {shown}{more}: another size does not answer."
    unsized = [r for r in rows if r["size"] == "not stated" and r["service"] == at.get("service", "")]
    if at.get("size") and unsized and unsized[0].cells["basis"] == "common practice":
        row = unsized[-1]
        ends = " to ".join(row[end] for end in ("low", "high", "value") if row[end])
        return f" {ends} {row['unit']} is on record for sizes that nobody named: not for {at['size']}."
    services = sorted({r["service"] for r in rows} - {"any", at.get("service", "")})
    if not services or any(r["service"] in ("any", at.get("service", "")) for r in rows):
        return ""
    return f" Figures of it are on record for another service: {', '.join(services)}.{_of_its_name(at, data)}"


def _of_its_name(at: dict[str, str], data: Refdata) -> str:
    """The parts of a vehicle whose name is this one with a word before it: an oil drain plug, for a drain plug."""
    services = ("any", at.get("service", ""))
    rows = (r for r in data.table("fasteners/part_torques").rows if r["service"] in services and not r["standing"])
    named = list(dict.fromkeys(r["part"] for r in rows if r["part"].endswith(f" {at.get('part')}")))
    return f" The tables have the {' and the '.join(named)}: ask for it by that name." if named else ""
