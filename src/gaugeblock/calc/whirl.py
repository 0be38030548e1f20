"""Whirling of a turning shaft. SI in, SI out; floats or arrays, but for the frame."""

from __future__ import annotations

from gaugeblock.calc import frame

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_PI = 3.141592653589793
_PARTS = 24


def critical_speed(length_m: T, modulus_pa: T, density: T, diameter_m: T, bore_m: T = 0.0) -> T:
    """First whirling speed in rad/s of a uniform round shaft or tube on two joints: (pi/L)^2 sqrt(E I / (rho A)).

    ``density`` in kg/m^3. Joints, slip and wear lower it: never run near it.
    Source: Machinery's Handbook 25, critical speeds of shafts (quoted); elementary for a pinned beam.
    """
    radius_of_gyration_m = (diameter_m**2 + bore_m**2) ** 0.5 / 4
    return (_PI / length_m) ** 2 * (modulus_pa / density) ** 0.5 * radius_of_gyration_m


def longest_for_speed(speed_rad_s: T, modulus_pa: T, density: T, diameter_m: T, bore_m: T = 0.0, share: T = 1.0) -> T:
    """The longest distance between the joints, m, at which a tube turns this share of its critical speed, at most.

    Source: ``critical_speed`` solved for its length, which it falls with the square of.

    >>> round(longest_for_speed(critical_speed(1.5, 205e9, 7850.0, 0.0762, 0.072), 205e9, 7850.0, 0.0762, 0.072), 6)
    1.5
    """
    return (critical_speed(1.0, modulus_pa, density, diameter_m, bore_m) * share / speed_rad_s) ** 0.5


def whirl_by_frame(length_m: float, modulus_pa: float, density: float, od_m: float, wall_m: float) -> float:
    """First whirling speed in rad/s by Rayleigh's quotient on the sag of a frame of beams under its own weight.

    A second opinion on ``critical_speed``: for a uniform tube it lies 0.1 % above the exact first mode.
    Source of the method: Rayleigh, as every vibration handbook prints it; w**2 = g sum(m y) / sum(m y**2).
    """
    section = frame.Section(od_m, wall_m)
    step = length_m / _PARTS
    mass = density * section.area * step
    nodes = [(n * step, 0.0) for n in range(_PARTS + 1)]
    loads = [frame.Load(n, up=-mass * frame.G) for n in range(1, _PARTS)]
    solved = frame.solve(nodes, section, modulus_pa, {0: frame.PINNED, _PARTS: frame.SLIDING}, loads)
    sags = [-up for _, up, _ in solved.moves]
    return float((frame.G * sum(sags) / sum(y * y for y in sags)) ** 0.5)
