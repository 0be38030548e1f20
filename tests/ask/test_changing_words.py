"""What changes a figure is never left out of a line as if it told a story."""

from __future__ import annotations

import pytest

from gaugeblock import ask
from gaugeblock.errors import GaugeblockError

_LINES = [
    "4340 40 hrc 1.25 in shaft 2000 lb ft {}",
    "does a 1.25 in shaft of 4340 at 40 hrc in the back axle carry 2000 lb ft {}",
]
_CHANGES = ["with a keyway", "keyed", "notched", "grooved", "shock loading", "fatigue", "hollow"]


@pytest.mark.parametrize("line", _LINES)
@pytest.mark.parametrize("change", _CHANGES)
def test_a_shaft_is_not_judged_without_it(line: str, change: str) -> None:
    ask(line.format("").strip())
    with pytest.raises(GaugeblockError):
        ask(line.format(change))
