"""An estimate against a limit: ok with its whole band and a reading's room, not ok with its likely value."""

from __future__ import annotations

import pytest

from gaugeblock import InputError
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.figure import Figure
from gaugeblock.tables.load import refdata
from gaugeblock.warmth.emissivity import emissivity
from gaugeblock.warmth.item import item_of
from gaugeblock.warmth.verdict import in_band


def estimate(low: float, likely: float, high: float) -> Figure:
    return Figure("e", "line_temperature", likely, "degC", low=low, high=high, basis="stated")


@pytest.mark.parametrize(
    ("ends", "limit", "strictest", "result"),
    [
        ((80, 100, 130), 155, 155, OK),
        ((80, 100, 146), 155, 155, CANNOT_TELL),
        ((80, 100, 160), 155, 155, CANNOT_TELL),
        ((80, 100, 130), 155, 125, CANNOT_TELL),
        ((100, 100, 100), 155, 155, CANNOT_TELL),
        ((140, 156, 170), 155, 155, NOT_OK),
    ],
)
def test_a_band_against_a_limit(ends: tuple[float, float, float], limit: float, strictest: float, result: str) -> None:
    assert in_band(estimate(*ends), limit, strictest, "it stands 155 degC")[0] == result


def test_a_margin_that_is_wanted_is_kept() -> None:
    margin = Figure("m", "temperature_margin", 60.0, "delta_degC", basis="stated", text="60")
    result, said = in_band(estimate(80, 100, 110), 155, 155, "it stands 155 degC", margin)
    assert result == NOT_OK
    assert "60 degC" in said


def test_what_a_fluid_stands_and_how_bright_a_pipe_is_are_read_as_people_write_them() -> None:
    data = refdata()
    wet = item_of("dot 4", None, "wet", data).limit
    assert wet is not None
    assert (wet.text, wet.unit) == ("155", "degC")
    assert emissivity("0.7 to 0.9", None, "finish", data).high == 0.9
    with pytest.raises(InputError):
        emissivity("1.2", None, "finish", data)
