"""What can be read of a line: each measure in its own sense, and no size under nothing."""

from __future__ import annotations

import pytest

from gaugeblock.errors import InputError
from gaugeblock.lines import keys

UNIT = {
    "length": " in",
    "stress": " psi",
    "temperature": " degC",
    "temperature difference": " degC",
    "speed": " m/s",
    "ratio": "",
    "thermal conductivity": " W/(m*K)",
    "film coefficient": " W/(m**2*K)",
    "thermal expansion": " um/(m*K)",
}
MEASURES = [name for name, key in keys.KEYS.items() if key.dim]


@pytest.mark.parametrize("name", MEASURES)
def test_only_a_temperature_is_under_nothing_and_only_a_gap_or_still_air_is_nothing(name: str) -> None:
    key = keys.KEYS[name]
    is_heat = key.dim.startswith("temperature")
    for number, may_be in ((2, True), (-2, is_heat), (0, is_heat or name in ("gap", "speed"))):
        given = {name: f"{number}{UNIT[key.dim]}"}
        if may_be:
            assert float(keys.line_of_text(given).spans[name].low.value) == number
        else:
            with pytest.raises(InputError):
                keys.line_of_text(given)
