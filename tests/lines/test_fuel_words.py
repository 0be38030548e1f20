"""A pump by its flow: however its unit is said, it is the unit that is read."""

from __future__ import annotations

import pytest

from gaugeblock.cli import main

SAID = {
    "L/h": ("40 l/h", "40 lph", "40 litres an hour", "40 liter per hour", "40 litres per hour"),
    "gal/h": ("40 gph", "40 gallons an hour", "40 gals per hour", "40 us gallons an hour", "40 gal per hour"),
    "gal/min": ("40 gpm",),
}


@pytest.mark.parametrize(("said", "unit"), [(said, unit) for unit, every in SAID.items() for said in every])
def test_the_flow_of_a_pump_is_read_in_its_unit(said: str, unit: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["ask", *f"fuel pump {said}".split()])
    got = capsys.readouterr()
    assert f"pump 40 {unit}" in " ".join((got.out + got.err).split())
