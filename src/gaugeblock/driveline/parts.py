"""What the driveline sheets share: a typed measure as a Figure, a derived Figure, cautions from the rules."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def asked_measure(typed: str, dimension: str, quantity: str, name: str, zero: bool = False) -> Figure:
    """What was typed as a Figure of basis ``measured``, source ``as asked``; InputError when it is not more than zero."""
    measure = units.parse_measure(typed, dimension, name)
    if measure.value < 0 or (measure.value == 0 and not zero):
        raise InputError(typed, name, "must be more than zero", (), f"give the {name} itself")
    return Figure(
        f"asked:{name}:{measure.text}", quantity, float(measure.value), measure.unit, basis="measured", checked="primary",
        source="as asked", locator=name, text=measure.text[: -len(measure.unit)].strip(),
    )  # fmt: skip


def base(figure: Figure) -> float:
    """A figure in SI."""
    return units.to_base(figure.typical, figure.unit)


def derived(
    rule: str,
    quantity: str,
    value_si: float,
    unit: str,
    key: dict[str, str],
    inputs: tuple[Figure, ...],
    data: Refdata,
    conditions: str = "",
    note: str = "",
) -> Figure:
    """A Figure made with a named formula from an SI value; its side is the quantity's."""
    return Figure(
        f"derived:{rule}:{'|'.join(key.values())}:{quantity}@{data.release}", quantity, units.from_base(value_si, unit), unit,
        side=data.quantity(quantity)["side"], basis="derived", rule=data.rule(rule), inputs=inputs, since=data.release, key=key,
        conditions=conditions, note=note,
    )  # fmt: skip


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
        subject = f"{rule['subject'][0].upper()}{rule['subject'][1:]}: " if named else ""
        out.append(Caution(subject + rule["statement"] + service, rule["severity"], (), place))
    return out


def statements_on(data: Refdata, topic: str, subject: str) -> list[str]:
    """The statements on one subject, as text."""
    return [
        r["statement"]
        for r in data.statements("driveline")
        if r["topic"] == topic and r["subject"] == subject and not r["standing"]
    ]
