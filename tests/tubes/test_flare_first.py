"""What a flare leads with: its wall limit, its diameter or its nut, never the seat angle that its name has already."""

from __future__ import annotations

import pytest

from gaugeblock import LookupMiss
from gaugeblock.tables.load import refdata
from gaugeblock.tubes.flare import flare

ROWS = [r for r in refdata().table("tubes/flares").rows if r["od"] != "any" and " to " not in r["od"]]
FLARES = list(dict.fromkeys((r["flare"], r["od"]) for r in ROWS))


@pytest.mark.parametrize(("kind", "od"), FLARES)
def test_it_leads_with_what_it_is_asked_for(kind: str, od: str) -> None:
    try:
        sheet = flare(kind, od=od)
    except LookupMiss:
        return
    quantities = {f.quantity for f in sheet.figures}
    told = sheet.decision.figures[0].quantity if sheet.decision.figures else ""
    if quantities & {"wall_maximum", "flare_diameter", "nut_thread_major_diameter", "port_thread_major_diameter"}:
        assert told in ("wall_maximum", "flare_diameter", "nut_thread_major_diameter", "port_thread_major_diameter")


def test_a_wall_that_no_limit_judges_is_told_first() -> None:
    assert "flare a test piece" in flare("AN", od="3/8 in", wall=".035 in").decision.do
    assert flare("double", od="3/16 in", wall=".028 in").decision.do == ""
