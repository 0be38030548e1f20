"""The statements of tubes/rules that belong to an answer, as cautions."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def rules_of(data: Refdata, *subjects: str) -> list[Caution]:
    """The living statements of these subjects, in the order of the table."""
    return [
        Caution(r["statement"], r["severity"], (), r["source"] or r["basis"])
        for r in data.statements("tubes")
        if r["subject"] in subjects and not r["standing"]
    ]
