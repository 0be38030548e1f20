"""A force that is said in kilograms is their weight."""

from __future__ import annotations

import pytest

from gaugeblock.cli import main


@pytest.mark.parametrize(("kilos", "newtons"), [("10", 98), ("50", 490), ("100", 981)])
def test_kilograms_on_a_pedal_are_their_weight(kilos: str, newtons: int, capsys: pytest.CaptureFixture[str]) -> None:
    main(["ask", *f"brake line pressure {kilos} kg on the pedal 6 to 1 ratio 20 mm master cylinder".split()])
    got = capsys.readouterr()
    assert f"{newtons} N" in " ".join((got.out + got.err).split())
