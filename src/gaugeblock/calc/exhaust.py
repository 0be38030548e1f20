"""Exhaust: flow of hot gas, pipe bore, pressure loss, what a fixed point takes, how far a hanger swings. SI in and out.

Every argument may be a float or an array (n,); the answer has the same shape. Temperatures are absolute (K).
"""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

PI = 3.141592653589793
G = 9.80665  # standard gravity, m/s^2


def wrap_length(length_m: T, outside_diameter_m: T, advance_m: T) -> T:
    """Wrap that a pipe takes, m: a helix unrolled, each turn going on by the advance; the wrap's thickness left out."""
    ns = namespace.of(length_m, outside_diameter_m, advance_m)
    return length_m / advance_m * ns.sqrt((PI * outside_diameter_m) ** 2 + advance_m**2)


def bore_for_flow(flow_m3_s: T, velocity_m_s: T) -> T:
    """Bore in m that takes a flow at a mean velocity: sqrt(4 Q / (pi v)).

    >>> round(bore_for_flow(0.1, 100.0), 4)
    0.0357
    """
    return namespace.of(flow_m3_s, velocity_m_s).sqrt(4.0 * flow_m3_s / (PI * velocity_m_s))


def mean_velocity(flow_m3_s: T, bore_m: T) -> T:
    """Mean velocity in m/s of a flow over a round bore: 4 Q / (pi d^2)."""
    return 4.0 * flow_m3_s / (PI * bore_m * bore_m)


def intake_flow(displacement_m3: T, speed_rev_s: T) -> T:
    """Air in m^3/s that a four-stroke engine draws when it fills wholly: V n / 2."""
    return displacement_m3 * speed_rev_s / 2.0


def hot_flow(flow_m3_s: T, gas_k: T, intake_k: T) -> T:
    """The flow of that air as hot exhaust at the same pressure: Q T / T0. The fuel's own mass is left out.

    Source: Kates, Example 4 p. 81 (1200 cfm at 600 degF cooled to 400 degF gives 973.58 cfm).

    >>> round(hot_flow(1200.0, 860.0, 1060.0), 2)
    973.58
    """
    return flow_m3_s * gas_k / intake_k


def gas_density(gas_k: T) -> T:
    """Density in kg/m^3 of exhaust gas at atmospheric pressure: 352.5 / T (found from a generator sheet's pair)."""
    return 352.5 / gas_k


def pipe_loss(length_m: T, flow_m3_s: T, density_kg_m3: T, bore_m: T) -> T:
    """Pressure in Pa that a smooth steel pipe loses: 3.6e6 L S Q^2 / D^5 in kPa, m, kg/m^3, m^3/min and mm.

    Its numbers are those of Darcy and Weisbach with a friction factor of 0.016. Source: a generator exhaust sheet,
    1650 kVA.

    >>> round(pipe_loss(12.0, 230.0 / 60.0, 0.506906475, 0.3) / 1000, 4)
    0.4767
    """
    return 1e3 * 3.6e6 * length_m * density_kg_m3 * (flow_m3_s * 60.0) ** 2 / (bore_m * 1e3) ** 5


def anchor_force(thrust_n: T, spring_n: T, hangers_n: T = 0.0) -> T:
    """Force in N along the run that its fixed point takes: pressure thrust, spring of the flexible section, hangers.

    >>> anchor_force(25200.0, 2628.0)
    27828.0
    """
    return thrust_n + spring_n + hangers_n


def swing(movement_m: T, hanger_m: T) -> T:
    """Angle in rad of a hanger from straight down when its foot has moved sideways: atan(m / h)."""
    ratio = movement_m / hanger_m
    ns = namespace.of(ratio)
    return ns.arctan(ratio) if ns.__name__ == "numpy" else ns.atan(ratio)


def hanger_loads(
    ends_m: tuple[float, float],
    mass_per_length: float,
    masses: Mapping[float, float],
    supports_m: Sequence[float],
) -> list[float]:
    """Force in N that each support of a run carries: a straight beam on stiff supports, which may hang over at both
    ends.

    ``ends_m`` where the run begins and ends, ``mass_per_length`` of its tube in kg/m, ``masses`` place -> kg of what
    hangs on it, ``supports_m`` their places. What the tube is made of changes nothing. ValueError for fewer than two
    supports. A support that would have to pull down has a force under nothing.

    Formula: the theorem of three moments at each inner support, the overhangs' moments at the outer ones, then statics.
    Source of the check: a beam of 6 m with 3 kN at 2 m and 6 kN at 4 m puts 5 kN on its far end (Bansal, 5.1).

    >>> loads = hanger_loads((0.0, 6.0), 0.0, {2.0: 3000 / G, 4.0: 6000 / G}, [0.0, 6.0])
    >>> [round(f) for f in loads]
    [4000, 5000]
    """
    supports = sorted(set(supports_m))
    if len(supports) < 2:
        raise ValueError("a run that hangs from one point swings about it")
    weight = mass_per_length * G
    points = [(at, mass * G) for at, mass in masses.items() if mass]
    first, last = supports[0], supports[-1]
    over = first - min(ends_m[0], first), max(ends_m[1], last) - last
    moments = [0.0] * len(supports)
    moments[0] = -weight * over[0] ** 2 / 2 - sum(p * (first - at) for at, p in points if at < first)
    moments[-1] = -weight * over[1] ** 2 / 2 - sum(p * (at - last) for at, p in points if at > last)
    _three_moments(supports, weight, points, moments)
    forces = [0.0] * len(supports)
    forces[0] = weight * over[0] + sum(p for at, p in points if at < first)
    forces[-1] = weight * over[1] + sum(p for at, p in points if at > last)
    for n, (a, b) in enumerate(pairwise(supports)):
        length = b - a
        # a load at an inner support belongs to the span before it, one at the first support to the first span
        inside = [(at - a, p) for at, p in points if a < at <= b or at == a == first]
        lean = (moments[n + 1] - moments[n]) / length
        forces[n] += weight * length / 2 + sum(p * (length - s) / length for s, p in inside) + lean
        forces[n + 1] += weight * length / 2 + sum(p * s / length for s, p in inside) - lean
    return forces


def _three_moments(
    supports: Sequence[float], weight: float, points: Sequence[tuple[float, float]], moments: list[float]
) -> None:
    """The moments at the inner supports, put into ``moments``, whose ends are known: a tridiagonal system."""
    inner = range(1, len(supports) - 1)
    spans = [b - a for a, b in pairwise(supports)]
    middle, right = {}, {}
    for n in inner:
        one, two, at = spans[n - 1], spans[n], supports[n]
        middle[n] = 2 * (one + two)
        right[n] = -weight * (one**3 + two**3) / 4
        for place, p in points:
            if at - one < place < at:
                s = place - (at - one)
                right[n] -= p * s * (one**2 - s**2) / one
            elif at < place < at + two:
                s = at + two - place
                right[n] -= p * s * (two**2 - s**2) / two
        if n == 1:
            right[n] -= moments[0] * one
        else:
            share = one / middle[n - 1]
            middle[n] -= share * one
            right[n] -= share * right[n - 1]
        if n == len(supports) - 2:
            right[n] -= moments[-1] * two
    for n in reversed(inner):
        known = moments[n + 1] * spans[n] if n < len(supports) - 2 else 0.0
        moments[n] = (right[n] - known) / middle[n]
