"""Exhaust: flow of hot gas, pipe bore, pressure loss, what a fixed point takes, how far a hanger swings. SI in and out.

Every argument may be a float or an array (n,); the answer has the same shape. Temperatures are absolute (K).
"""

from __future__ import annotations

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

PI = 3.141592653589793


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
