"""Words are as wide as the sans serif that the pages name prints them."""

from __future__ import annotations

import pytest

from gaugeblock.packet.measure import height, width

# Adobe Font Metrics of Helvetica, thousandths of the size; Liberation Sans has the same advance widths.
AFM = {" ": 278, "i": 222, "A": 667, "W": 944, "m": 833, "0": 556, "R": 722, "M": 833, "%": 889, "-": 333, "'": 191}
POINT = 25.4 / 72


@pytest.mark.parametrize("sign", AFM)
def test_a_letter_has_its_advance_width(sign: str) -> None:
    assert width(sign * 8, 10) == pytest.approx(8 * AFM[sign] / 1000 * 10 * POINT * 0.985, rel=1e-6)


def test_what_is_bold_is_wider_and_what_wraps_is_higher() -> None:
    assert width("torque", 12, bold=True) > width("torque", 12)
    one = height("torque", 12, 1.2, 100)
    assert one == pytest.approx(12 * 1.2 * POINT)
    assert height("torque torque torque", 12, 1.2, width("torque ", 12)) == pytest.approx(3 * one)
    assert height("", 12, 1.2, 100) == 0
