"""An outside diameter that was said is never the nominal size of a pipe."""

from __future__ import annotations

import pytest

from gaugeblock import ask, refdata, units
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError

ROWS = {r["nps"]: r for r in refdata().table("tubes/pipe_sizes").of("outside_diameter") if not r["standing"]}


@pytest.mark.parametrize("nps", ROWS)
@pytest.mark.parametrize("line", ["{} inch od pipe size", "what pipe size for {} inch od exhaust in mm"])
def test_an_outside_diameter_is_no_nominal_size(nps: str, line: str) -> None:
    try:
        found = ask(line.format(nps))
    except GaugeblockError:
        return  # no pipe is so wide outside
    if isinstance(found, Sheet) and found.title.startswith("pipe "):
        figure = found.decision.figure
        said = float(units.parse_number(nps.replace("-", " "))) * 0.0254
        assert units.to_base(figure.typical, figure.unit) == pytest.approx(said, rel=0.012), found.title
