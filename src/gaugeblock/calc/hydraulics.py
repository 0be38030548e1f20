"""Brake hydraulics, hand brake levers, and the flow of fuel in a line. SI in, SI out.

Every argument may be a float or an array (n,); the answer has the same shape.
"""

from __future__ import annotations

from math import pi

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape


def area(bore_m: T) -> T:
    """Area of a bore, m^2.

    A brake maker's page prints 0.486 in^2 for 20 mm, from a radius cut to 0.393 in.

    >>> round(area(0.020) / 0.0254**2, 3)
    0.487
    """
    return pi / 4 * bore_m**2


def line_pressure(force_n: T, ratio: T, bore_m: T, assist: T = 1.0) -> T:
    """Pressure of a pedal force over a lever ratio, a booster and a master cylinder, Pa: F R B / A.

    A rod builder's page prints 764 psi for 100 lbf, 6 to 1 and a bore of 1 in.

    >>> round(line_pressure(100 * 4.4482216, 6, 0.0254) / 6894.757)
    764
    """
    return force_n * ratio * assist / area(bore_m)


def ratio_of_pressure(pressure_pa: T, force_n: T, bore_m: T, assist: T = 1.0) -> T:
    """The pedal ratio that gives a line pressure: p A / (F B).

    >>> round(ratio_of_pressure(764 * 6894.757, 100 * 4.4482216, 0.0254), 2)
    6.0
    """
    return pressure_pa * area(bore_m) / (force_n * assist)


def force_of_pressure(pressure_pa: T, ratio: T, bore_m: T, assist: T = 1.0) -> T:
    """The force on the pedal that gives a line pressure, N: p A / (R B)."""
    return pressure_pa * area(bore_m) / (ratio * assist)


def bore_of_pressure(pressure_pa: T, force_n: T, ratio: T, assist: T = 1.0) -> T:
    """The greatest bore of a master cylinder that gives a line pressure, m: sqrt(4 F R B / (pi p))."""
    return (4 * force_n * ratio * assist / (pi * pressure_pa)) ** 0.5


def piston_force(pressure_pa: T, bore_m: T, pistons: T = 1.0) -> T:
    """Force of the pistons on one pad or shoe, N."""
    return pressure_pa * pistons * area(bore_m)


def hydraulic_ratio(piston_m: T, master_m: T, pistons: T = 1.0) -> T:
    """Area of the pistons that push over that of the master piston."""
    return pistons * piston_m**2 / master_m**2


def slave_travel(stroke_m: T, master_m: T, slave_m: T) -> T:
    """Travel of the second piston for a stroke of the first, m: the fluid that leaves the one fills the other."""
    return stroke_m * master_m**2 / slave_m**2


def bore_of_travel(bore_m: T, way_m: T, other_m: T) -> T:
    """Bore of the cylinder whose piston goes ``other_m`` while that of the bore ``bore_m`` goes ``way_m``, m."""
    return bore_m * (way_m / other_m) ** 0.5


def displaced(bore_m: T, travel_m: T, pistons: T) -> T:
    """Fluid that pistons take for a travel, m^3."""
    return pistons * area(bore_m) * travel_m


def stroke(volume_m3: T, bore_m: T) -> T:
    """Stroke of a piston that gives a volume, m."""
    return volume_m3 / area(bore_m)


def pedal_travel(stroke_m: T, ratio: T, play_m: T = 0.0) -> T:
    """Way of the pedal pad for a stroke and a free play at the push rod, m."""
    return (stroke_m + play_m) * ratio


def flow_speed(flow_m3s: T, bore_m: T) -> T:
    """Mean speed in a full line, m/s."""
    return flow_m3s / area(bore_m)


def orifice_flow(flow: T, pressure_pa: T, rated_pa: T) -> T:
    """What a sharp hole passes at a pressure across it, in the unit of the flow that it passes at the rated one: as the
    root of the pressure.
    """
    return flow * (pressure_pa / rated_pa) ** 0.5


def friction_factor(reynolds: T, roughness_m: T, bore_m: T) -> T:
    """Darcy friction factor of a round line, laminar, turbulent and between.

    Source: Churchill, Chemical Engineering 84 (1977) no. 24. Laminar it is 64/Re:

    >>> round(friction_factor(1000, 1.5e-6, 0.008), 4)
    0.064
    """
    ns = namespace.of(reynolds, roughness_m, bore_m)
    a = (2.457 * ns.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * roughness_m / bore_m))) ** 16
    b = (37530 / reynolds) ** 16
    return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12)


def line_loss(factor: T, length_m: T, bore_m: T, density: T, speed_ms: T) -> T:
    """Pressure that a line loses, Pa: f L/D rho v^2/2 (Darcy)."""
    return factor * length_m / bore_m * density * speed_ms**2 / 2
