"""Written rules for a line: clearances and routing by jurisdiction (most give no number), and the shop's cautions."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import MEASURE
from gaugeblock.errors import LookupMiss
from gaugeblock.lines.cautions import FUEL_WORK, statement_rows, statements
from gaugeblock.lines.found import Found, asking
from gaugeblock.tables.load import canonical
from gaugeblock.warmth.verdict import beside

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata, Row

_KIND = {"brake": "brake", "fuel feed": "fuel", "fuel return": "fuel", "vapour": "fuel"}
_TOPICS = ("line near exhaust",)


def clearance(words: Words, gap: Figure | None) -> Found:
    """The written clearance of a jurisdiction against the gap; where none gives a number the check says so."""
    line, data, name = words.line, words.data, "written clearance"
    if not line.has("jurisdiction"):
        return Found()
    service = line.word("service")
    kind = _KIND.get(service or "")
    if kind is None:
        why = "the service of the line is not given"
        if service is not None:
            why = f"no written clearance is known for a {service} line"
        return Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))
    cell = words.read("jurisdiction", lambda typed: _jurisdiction(typed, data))
    if cell is None:
        return Found()
    limit = None
    if any(r["jurisdiction"] == cell for r in _numbers(kind, data)):
        subject = f"{kind} line to exhaust"
        limit = lookup.look_up_or_none(
            "lines/clearances", "clearance_minimum", data=data, jurisdiction=cell, subject=subject
        )
    if limit is None:
        why = f"{cell}: no number is written for a {kind} line beside an exhaust; see its rules below"
        return Found((), (Check(name, CANNOT_TELL, why, bears=INFORM),))
    required = Bound(limit.typical, limit.unit, "min", limit)
    if gap is None:
        why = f"{cell} rejects under {number_only(limit, data)}; the gap is not given"
        check = Check(name, CANNOT_TELL, why, required)
        return asking(check, MEASURE, f"Measure the gap to the exhaust: {why}.", "gap", (limit,))
    got = units.from_base(units.to_base(gap.low if gap.low is not None else gap.typical, gap.unit), limit.unit)
    result = OK if got >= limit.typical * (1 - 1e-9) else NOT_OK
    least = beside(limit, gap.unit, data)
    reason = f"given {number_only(gap, data)}; {cell} rejects under {least} (inspection limit, not a target)"
    actual = Bound(got, limit.unit, figure=gap)
    return Found((limit,), (Check(name, result, reason, required, actual, got / limit.typical - 1),))


def _jurisdiction(typed: str, data: Refdata) -> str:
    """The jurisdiction that was typed: one with a number, or one whose rules are words."""
    try:
        return canonical(data, "lines/clearances", "jurisdiction", typed)
    except LookupMiss:
        places = {s["jurisdiction"] for s in statement_rows(data)}
        folded = typed.casefold()
        cell = next((p for p in places if p.casefold() == folded), "") or data.words("lines", "jurisdiction").get(
            folded
        )
        if not cell:
            raise
        return cell


def _numbers(kind: str, data: Refdata) -> list[Row]:
    """The written clearances of vehicles between this kind of line and an exhaust."""
    subject = f"{kind} line to exhaust"
    rows = data.table("lines/clearances").rows
    return [r for r in rows if r["subject"] == subject and r["service"] == "vehicle" and not r["standing"]]


def written(words: Words) -> list[Caution]:
    """The written routing rules for this kind of line, each with its jurisdiction; most give no distance."""
    line, data = words.line, words.data
    kind = _KIND.get(line.word("service") or "")
    if kind is None:
        return []
    out = []
    if not line.has("jurisdiction"):
        found = [lookup.figure_of(r, data) for r in _numbers(kind, data)]
        known = ", ".join(dict.fromkeys(f"{f.key['jurisdiction']} {number_only(f, data)}" for f in found))
        text = (
            f"Few rules give a distance to an exhaust. {known}: an inspection limit, not a target. "
            "Name the jurisdiction to have it checked."
        )
        out.append(Caution(text, "note", tuple(f.id for f in found), "refdata"))
    rules = [
        r
        for r in statement_rows(data)
        if r["topic"] in _TOPICS and r["service"] in ("vehicle", "any") and r["subject"].startswith(kind)
    ]
    own = words.read("jurisdiction", lambda typed: _jurisdiction(typed, data))
    if own is not None:
        rules = [r for r in rules if r["jurisdiction"] == own]
    for r in rules:
        severity = r["severity"] if own is not None else "note"  # those of other places are for information
        out.append(Caution(f"{r['jurisdiction']}: {r['statement']}", severity, (), r["source"] or r["basis"]))
    return out


def shop(line: Line, data: Refdata) -> list[Caution]:
    """The cautions of a careful shop for this line."""
    service, shield = line.word("service"), line.word("shield") or "none"
    wanted = [
        ("line routing", "moving engine"),
        ("line routing", "fuel line over exhaust"),
        ("heat shields", "hot soak"),
    ]
    if service == "brake":
        wanted += [("leak check", "brake line"), ("line repair", "brake line"), ("brake fluid water", "brake fluid")]
        wanted += [("brake fluid water", "brake fluid in service")]
    if shield != "none":
        wanted.append(("heat shields", "heat shield"))
    out = statements(data, tuple(wanted))
    if service == "brake":
        out.insert(
            0, Caution("Brake work is pressure-tested and checked by another person before the car moves.", "injury")
        )
    elif service in ("fuel feed", "fuel return", "vapour"):
        out.insert(0, Caution(FUEL_WORK, "injury"))
    out.append(
        Caution(
            "Emissivities are weak evidence: finish, dirt and age move them more than any other figure here.",
            "note",
            (),
            "refdata",
        )
    )
    out.append(Caution("An estimate is no measurement: measure on the car, hot and after shut-down.", "injury"))
    return out
