"""The driveline's statements without a number, as cautions and as text."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.pretty import capital

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def rule_cautions(data: Refdata, topic: str, *subjects: str, named: bool = False) -> list[Caution]:
    """The statements of rules.csv on a topic, of the subjects named; a statement of another service names it.

    ``named`` puts the subject before the statement, where that says when it holds.
    """
    out = []
    for rule in data.statements("driveline"):
        if rule["topic"] != topic or rule["subject"] not in subjects or rule["standing"]:
            continue
        service = "" if rule["service"] in ("any", "vehicle") else f" ({rule['service']})"
        place = f"{rule['source']} {rule['locator']}" if rule["source"] else rule["basis"]
        subject = f"{capital(rule['subject'])}: " if named else ""
        out.append(Caution(subject + rule["statement"] + service, rule["severity"], (), place))
    return out


def statements_on(data: Refdata, topic: str, subject: str) -> list[str]:
    """The statements on one subject, as text."""
    return [
        r["statement"]
        for r in data.statements("driveline")
        if r["topic"] == topic and r["subject"] == subject and not r["standing"]
    ]
