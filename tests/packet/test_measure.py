"""Words are as wide as the sans serif that the pages name prints them."""

from __future__ import annotations

import pytest

from gaugeblock.packet.measure import height, width

# Adobe Font Metrics of Helvetica, thousandths of the size; Liberation Sans has the same advance widths.
AFM = {
    **dict.fromkeys(" !,./:;I[\\]ft", 278),
    **dict.fromkeys("ijl", 222),
    **dict.fromkeys("()-r`", 333),
    **dict.fromkeys("Jcksvxyz", 500),
    **dict.fromkeys("+<=>~", 584),
    **dict.fromkeys("#$0123456789?L_abdeghnopqu", 556),
    **dict.fromkeys("FTZ", 611),
    **dict.fromkeys("&ABEKPSVXY", 667),
    **dict.fromkeys("CDHNRUw", 722),
    **dict.fromkeys("GOQ", 778),
    **dict.fromkeys("Mm", 833),
    "'": 191,
    '"': 355,
    "*": 389,
    "^": 469,
    "%": 889,
    "W": 944,
    "@": 1015,
    "\u00b0": 400,
}
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


def test_what_is_bold_is_a_fourteenth_wider_and_a_word_that_just_fits_stays_on_its_line() -> None:
    assert width("torque", 12, bold=True) == pytest.approx(1.07 * width("torque", 12))
    fits = width("torque torque", 12)
    line = 12 * 1.2 * POINT
    assert height("torque torque", 12, 1.2, fits + 1e-9) == pytest.approx(line)
    assert height("torque torque", 12, 1.2, fits - 0.01) == pytest.approx(2 * line)
    assert height("torque torque torque torque", 12, 1.2, fits + 1e-9) == pytest.approx(2 * line)
