"""An axle shaft whose treatment was not said: each treatment and temper of its steel, side by side."""

from __future__ import annotations

from gaugeblock import ask
from gaugeblock.answer.table import Table


def test_the_treatments_of_the_steel_stand_side_by_side() -> None:
    line = "4140 axle shaft 1 1/4 in engine 300 lb ft first gear 2.5 axle ratio 4.1 open diff"
    table = ask(line)
    assert isinstance(table, Table)
    assert table.open[0] == "treatment"
    assert table.open[1:] == ("temper",)
    assert len({row.key["temper"] for row in table.lines}) > 1
