"""A fuel of which no limit is published still boils: that stands beside a temperature over its first drop."""

from __future__ import annotations

import pytest

from gaugeblock.lines.beside import beside
from gaugeblock.tables.load import refdata

GIVEN = {"gap": "1 in", "od": "3/8 in", "hot_od": "2 in", "hot_finish": "0.8", "finish": "0.8"}


@pytest.mark.parametrize(("item", "at", "is_told"), [("gasoline", "150 degF", True), ("gasoline", "60 degF", False)])
def test_that_it_boils_is_told(item: str, at: str, is_told: bool) -> None:
    given = {**GIVEN, "temperature": at, "temperature_by": "thermocouple"}
    sheet = beside(item, "exhaust header", klass=None, state=None, given=given, data=refdata())
    told = [c.text for c in sheet.cautions if "begins to boil" in c.text]
    assert [text.split(" begins")[0] for text in told] == ["Gasoline"] * is_told


def test_a_fluid_with_a_limit_is_judged_by_it_instead() -> None:
    sheet = beside("DOT 4", "exhaust header", klass=None, state="wet", given=GIVEN, data=refdata())
    assert not any("begins to boil" in c.text for c in sheet.cautions)
