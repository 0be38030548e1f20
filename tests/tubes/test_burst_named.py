"""A tube bursts by its alloy and its temper: soft by itself is none."""

from __future__ import annotations

import pytest

from gaugeblock.errors import InputError
from gaugeblock.tubes.material import material


def test_a_tube_that_is_called_soft_is_asked_its_temper() -> None:
    with pytest.raises(InputError, match="soft is no temper"):
        material("3003 soft", fact="burst", od="3/8 in", wall="0.035 in")


def test_a_tube_with_its_temper_bursts_at_a_figure() -> None:
    """B210 gives 5052-O a least tensile strength of 25 ksi: 2 t S / d = 2 x 0.035 x 25000 / 0.375 = 4667 psi."""
    sheet = material("5052-O", fact="burst", od="3/8 in", wall="0.035 in")
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.typical == pytest.approx(2 * 0.035 * 25000 / 0.375, rel=1e-3)


def test_another_fact_than_the_burst_pressure_is_refused_by_name() -> None:
    with pytest.raises(InputError, match="burst"):
        material("5052-O", fact="colour")
