"""Heat between bodies: view factors, radiation, and convection round a cylinder. SI in, SI out.

Every argument may be a float or an array (n,); the answer has the same shape. Temperatures are absolute (K).
"""

from __future__ import annotations

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

PI = 3.141592653589793
SIGMA = 5.670374419e-8  # Stefan-Boltzmann constant, W/(m^2 K^4), exact since the 2019 SI
GRAVITY = 9.80665

# Where the correlations are stated to hold.
RAYLEIGH_MAXIMUM = 1e12
REYNOLDS_PRANDTL_MINIMUM = 0.2


def _acos(ns: Any, x: T) -> T:
    return ns.arccos(x) if ns.__name__ == "numpy" else ns.acos(x)


def _atan(ns: Any, x: T) -> T:
    return ns.arctan(x) if ns.__name__ == "numpy" else ns.atan(x)


def view_factor_cylinders(radius_m: T, other_radius_m: T, gap_m: T) -> T:
    """View factor from one long cylinder to another beside it, on the whole area of the first.

    Crossed strings: (crossed - uncrossed string) / (half of the first's perimeter counts twice).
    F12 = [pi + sqrt(C^2-(R+1)^2) - sqrt(C^2-(R-1)^2) + (R-1) acos((R-1)/C) - (R+1) acos((R+1)/C)] / (2 pi),
    R = r2/r1, C = 1 + R + s/r1. Range: gap 0 (touching) to any; parallel, nothing between.
    Source: Incropera, Fundamentals of Heat and Mass Transfer, Table 13.1 (from memory; crossed strings give the same).

    Touching equal cylinders see (pi - 2)/(2 pi) of each other:

    >>> round(view_factor_cylinders(0.01, 0.01, 0.0), 6)
    0.18169
    """
    ratio = other_radius_m / radius_m
    c = 1.0 + ratio + gap_m / radius_m
    ns = namespace.of(c, ratio)
    crossed = c * c - (ratio + 1.0) ** 2
    crossed = ns.maximum(crossed, 0.0) if ns.__name__ == "numpy" else max(crossed, 0.0)  # rounding at gap 0
    toward = (ratio + 1.0) / c
    toward = ns.minimum(toward, 1.0) if ns.__name__ == "numpy" else min(toward, 1.0)
    return (
        PI
        + ns.sqrt(crossed)
        - ns.sqrt(c * c - (ratio - 1.0) ** 2)
        + (ratio - 1.0) * _acos(ns, (ratio - 1.0) / c)
        - (ratio + 1.0) * _acos(ns, toward)
    ) / (2.0 * PI)


def view_factor_strip(half_width_m: T, distance_m: T) -> T:
    """View factor from a long cylinder to a flat strip square to the line from its axis, centred: atan(b/d)/pi.

    ``distance_m`` is axis to strip and must be over the radius. Elementary: the strip's share of the full turn.

    >>> view_factor_strip(1.0, 1.0)
    0.25
    """
    ratio = half_width_m / distance_m
    return _atan(namespace.of(ratio), ratio) / PI


def emissive_power(temperature_k: T) -> T:
    """Black emissive power in W/m^2: sigma T^4."""
    square = temperature_k * temperature_k
    return SIGMA * (square * square)


def planes_factor(emissivity: T, other_emissivity: T) -> T:
    """Grey factor of two large parallel planes: 1/(1/e1 + 1/e2 - 1). Source: Kern, Process Heat Transfer, Example 4.2.

    >>> round(planes_factor(0.3, 0.8), 3)
    0.279
    """
    return 1.0 / (1.0 / emissivity + 1.0 / other_emissivity - 1.0)


def radiation(temperature_k: T, other_k: T, factor: T = 1.0, area_m2: T = 1.0) -> T:
    """Radiation in W from a body to another or to large surroundings: factor A sigma (T1^4 - T2^4).

    ``factor`` is the product of emissivity and view factor, or a grey factor of planes.
    Source: Katz, Automotive Aerodynamics, Example 11.3 (an exhaust header and a surface beside it).

    >>> round(radiation(673.0, 308.0, 0.60 * 0.1, 0.023), 1)
    15.3
    """
    return factor * area_m2 * (emissive_power(temperature_k) - emissive_power(other_k))


def shield_temperature(flux_w_m2: T, hot_k: T, hot_emissivity: T, shield_emissivity: T) -> T:
    """Temperature in K of a shield between planes that a flux reaches: (T1^4 - q (1/e1 + 1/e31 - 1)/sigma)^(1/4)."""
    return (hot_k**4 - flux_w_m2 / (SIGMA * planes_factor(hot_emissivity, shield_emissivity))) ** 0.25


def rayleigh(difference_k: T, film_k: T, diameter_m: T, viscosity: T, prandtl: T, gravity: float = GRAVITY) -> T:
    """Rayleigh number on the diameter, ideal gas: g |dT| D^3 Pr / (Tf nu^2); properties at the film temperature."""
    return (
        gravity
        * abs(difference_k)
        * (diameter_m * diameter_m * diameter_m)
        * prandtl
        / (film_k * viscosity * viscosity)
    )


def nusselt_natural(rayleigh_number: T, prandtl: T) -> T:
    """Nusselt number of a long horizontal cylinder in still air.

    (0.60 + 0.387 Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27))^2. Range: Ra to 1e12.
    Source: Churchill and Chu 1975, as quoted in a published question; its figures below are a textbook's pipe.

    >>> round(nusselt_natural(1.869e6, 0.7241), 1)
    17.4
    """
    root = 0.60 + 0.387 * rayleigh_number ** (1 / 6) / (1.0 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)
    return root * root


def nusselt_forced(reynolds: T, prandtl: T) -> T:
    """Nusselt number of a cylinder in cross flow.

    0.3 + 0.62 Re^(1/2) Pr^(1/3) [1 + (0.4/Pr)^(2/3)]^(-1/4) [1 + (Re/282000)^(5/8)]^(4/5). Range: Re Pr over 0.2.
    Source: Churchill and Bernstein 1977 (from memory; a textbook's printed figure below agrees).

    >>> round(nusselt_forced(6.228e4, 0.7232), 1)
    159.1
    """
    laminar = 0.62 * reynolds**0.5 * prandtl ** (1 / 3) / (1.0 + (0.4 / prandtl) ** (2 / 3)) ** 0.25
    return 0.3 + laminar * (1.0 + (reynolds / 282000.0) ** (5 / 8)) ** (4 / 5)


def grey_pair(
    hot_w_m2: T,
    own_w_m2: T,
    far_w_m2: T,
    hot_emissivity: T,
    own_emissivity: T,
    hot_to_own: T,
    own_to_hot: T,
    hot_to_hot: T = 0.0,
) -> tuple[T, T]:
    """Irradiation in W/m^2 on a body and on the hot one beside it, both grey, all else a black far surface.

    ``..._w_m2`` are black emissive powers sigma T^4. ``hot_to_own`` is the view factor on the hot body's area,
    ``own_to_hot`` on the body's own, ``hot_to_hot`` what a hollow hot body sees of itself. Exact solution of the
    radiosity balance of the two surfaces, all reflections counted.
    """
    hot_mirror, own_mirror = 1.0 - hot_emissivity, 1.0 - own_emissivity
    own_far = own_emissivity * own_w_m2 + own_mirror * (1.0 - own_to_hot) * far_w_m2
    hot_far = hot_emissivity * hot_w_m2 + hot_mirror * (1.0 - hot_to_own - hot_to_hot) * far_w_m2
    hot_leaves = (hot_far + hot_mirror * hot_to_own * own_far) / (
        1.0 - hot_mirror * hot_to_hot - hot_mirror * hot_to_own * own_mirror * own_to_hot
    )
    on_own = own_to_hot * hot_leaves + (1.0 - own_to_hot) * far_w_m2
    own_leaves = own_emissivity * own_w_m2 + own_mirror * on_own
    on_hot = hot_to_own * own_leaves + hot_to_hot * hot_leaves + (1.0 - hot_to_own - hot_to_hot) * far_w_m2
    return on_own, on_hot


_ATMOSPHERE_PA, _ATMOSPHERE_MMHG = 101325.0, 760.0
_ANTOINE_A, _ANTOINE_B = 8.14019, 1810.94  # of water, mmHg and degC, 99 to 374 degC


def air_pressure(altitude_m: float) -> float:
    """Pressure of the standard atmosphere, Pa, at an altitude to 11 km. Source: ISO 2533.

    >>> round(air_pressure(1500) / 100)  # ISO 2533: 845.6 hPa
    846
    """
    return float(_ATMOSPHERE_PA * (1 - 2.25577e-5 * altitude_m) ** 5.25588)


def boiling_under_pressure(boiling_k: float, over_pa: float) -> float:
    """Boiling temperature, K, under a pressure over one atmosphere, Pa, of what boils at ``boiling_k`` at one.

    Water's own boiling curve, by the Antoine equation; the lift of the glycol is taken as the same at every pressure.

    >>> round(boiling_under_pressure(373.15, 15 * 6894.757) - 273.15)  # steam tables: 121 degC at 30 psia
    121
    """
    from math import log10

    held = _ATMOSPHERE_MMHG * (1 + over_pa / _ATMOSPHERE_PA)
    above = _ANTOINE_B / (_ANTOINE_A - log10(held)) - _ANTOINE_B / (_ANTOINE_A - log10(_ATMOSPHERE_MMHG))
    return boiling_k + above


def antifreeze_to_fill(system_m3: T, share: T) -> T:
    """Neat antifreeze for an empty system, m^3: the share of it all."""
    return system_m3 * share


def antifreeze_to_swap(system_m3: T, now: T, share: T) -> T:
    """What is drained of a system and put back neat, m^3: V (w - n)/(1 - n), for what is drained has the share n.

    >>> round(antifreeze_to_swap(14.0, 0.3, 0.5), 6)
    4.0
    """
    return system_m3 * (share - now) / (1 - now)
