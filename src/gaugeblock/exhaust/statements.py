"""The statements without a number that concern an exhaust, as cautions."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.tables.load import Refdata

_OWN = ("any", "vehicle")


def cautions(data: Refdata, topics: Sequence[str], subjects: Sequence[str]) -> list[Caution]:
    """The statements of the exhaust and of lines on these topics and subjects; one of another service names it."""
    return [
        _caution(row)
        for domain in ("exhaust", "lines")
        for row in data.statements(domain)
        if row["topic"] in topics and row["subject"] in subjects and not row["standing"]
    ]


def of_topic(data: Refdata, topic: str, services: Sequence[str] = _OWN) -> list[tuple[str, Caution]]:
    """Every statement of a topic for these services, with its jurisdiction."""
    return [
        (row["jurisdiction"], _caution(row))
        for domain in ("exhaust", "lines")
        for row in data.statements(domain)
        if row["topic"] == topic and row["service"] in services and not row["standing"]
    ]


def _caution(row: Mapping[str, str]) -> Caution:
    cell = row.__getitem__
    service = "" if cell("service") in _OWN else f" ({cell('service')})"
    where = "" if cell("jurisdiction") == "any" else f"{cell('jurisdiction')}: "
    place = f"{cell('source')} {cell('locator')}" if cell("source") else cell("basis")
    return Caution(f"{where}{cell('statement')}{service}", cell("severity"), (), place)
