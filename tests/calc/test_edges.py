"""What stands at an edge: a plane at the start of a path, the smallest step of diameters of ISO 965-1."""

from __future__ import annotations

import pytest

from gaugeblock.calc import fasteners
from gaugeblock.calc.fasteners import limits_metric
from gaugeblock.calc.path import from_points, path


@pytest.mark.parametrize("at", [0.0, 0.25, 0.8])
def test_a_plane_at_the_start_of_a_path_is_met(at: float) -> None:
    line = path(*from_points([(0, 0, 0), (1, 0, 0), (1, 0, 1)], 0.1))
    assert line.on_plane((at, 0, 0), (1, 0, 0))[0] == pytest.approx(at, abs=1e-9)


@pytest.mark.parametrize(
    ("d", "p", "tolerance"),
    [
        (1.2, 0.25, 0.053),
        (2.5, 0.45, 0.071),
        (10.0, 1.5, 0.132),
        (24.0, 3.0, 0.200),
    ],
)
def test_the_pitch_diameter_has_the_tolerance_of_the_standard(d: float, p: float, tolerance: float) -> None:
    """ISO 965-1, pitch diameter tolerances of external threads, grade 6 (from memory). The standard rounds what its
    formula gives to preferred numbers, which stand 6 % apart.
    """
    limits = limits_metric(d / 1000, p / 1000)
    deviation = (15 + 11 * p) / 1000
    got = d - 0.64951905 * p - deviation - limits.screw_pitch_min * 1000
    assert got == pytest.approx(tolerance, rel=0.03)


def test_the_steps_of_diameters_of_metric_tolerances() -> None:
    """The series of basic major diameters of ISO 965-1 (from memory): one tolerance holds within each."""
    assert fasteners._ISO_STEPS_MM == (0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45.0, 90.0, 180.0)
    small, large = (limits_metric(d / 1000, 0.0005) for d in (2.8, 2.81))
    grown = (large.nut_pitch_max - small.nut_pitch_max) * 1000
    assert grown > 0.01 + 0.001  # a step up, on top of what the diameter adds
