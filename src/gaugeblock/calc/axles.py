"""What an axle shaft needs beside plain torsion: the smallest diameter, the load that shifts. SI in, SI out.

Every argument may be a float or an array (n,); the answer has the same shape.
"""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_PI = 3.141592653589793


def least_diameter(torque_nm: T, stress_pa: T, bore_m: T = 0.0) -> T:
    """Smallest outside diameter in m at which the surface stands at a shear stress: D^4 - d^4 = 16 T D / (pi stress).

    Example: Singer: a solid shaft for 10,000 ft lb at 6,080 psi is 4.65 in.

    >>> round(least_diameter(10000 * 1.3558179483314004, 6080 * 6894.757293168361) / 0.0254, 2)
    4.65
    """
    c = 16 * torque_nm / (_PI * stress_pa)
    # Ferrari's way; the parts of Cardano's root by their product, not their difference, which would lose a thin wall
    a = (c**2 / 16 + (c**4 / 256 + bore_m**12 / 27) ** 0.5) ** (1 / 3)
    b = bore_m**4 / (3 * a)
    m = c**2 / 8 / (a**2 + a * b + b**2)
    root = (2 * m) ** 0.5
    return (root + (2 * c / root - 2 * m) ** 0.5) / 2


def fillet_concentration_torsion(shoulder_m: T, diameter_m: T, fillet_m: T) -> T:
    """Peak over nominal shear stress at a shoulder fillet in torsion; nominal is that of the smaller diameter.

    The fit to the published chart, K = C1 + C2 y + C3 y^2 + C4 y^3 with y = 2 h / D, h the height of the shoulder.
    Range: h / r from 0.25 to 4.
    Source: Roark's Formulas for Stress and Strain, Table 17.1; Peterson, chart 3.12 (quoted).
    Example: Beer and Johnston, sample problem 3.6, reads 1.33 off the chart for D 7.5 in, d 3.75 in, r 9/16 in.

    >>> round(fillet_concentration_torsion(7.5, 3.75, 9 / 16), 2)
    1.33
    """
    h = (shoulder_m - diameter_m) / 2
    x, y = h / fillet_m, 2 * h / shoulder_m
    root = x**0.5
    c1 = 0.905 + 0.783 * root - 0.075 * x
    c2 = -0.437 - 1.969 * root + 0.553 * x
    c3 = 1.557 + 1.073 * root - 0.578 * x
    c4 = -1.061 + 0.171 * root + 0.086 * x
    return c1 + c2 * y + c3 * y**2 + c4 * y**3


def wheel_load_pulling(axle_load_n: T, grip: T, height_m: T, wheelbase_m: T, share: T = 0.5, front: bool = False) -> T:
    """Weight in N on one wheel of an axle that alone drives, at the greatest pull of its tyres.

    The pull at the road tips the vehicle back: the rear axle gains, the front one loses. Range: grip times height
    under the wheelbase, else the front wheels lift.
    Source: statics. Example: an exercise has 15 kN, 2.675 m, 0.475 m high, grip 0.5: the rear axle at 0.875 / 2.675 of
    the weight climbs 10.18 degrees (PHYSFOR).

    >>> from math import atan, degrees
    >>> rear = wheel_load_pulling(15000 * 0.875 / 2.675, 0.5, 0.475, 2.675, 1.0)
    >>> round(degrees(atan(0.5 * rear / 15000)), 2)
    10.18
    """
    shift = grip * height_m / wheelbase_m
    return axle_load_n * share / (1 + shift if front else 1 - shift)


# Fatigue, by screening rules in inch units: strengths in ksi, lengths in in


def shear_endurance(tensile_ksi: T, diameter_in: T) -> T:
    """Shear stress in ksi that a machined steel shaft bears up and down without end: an estimate.

    2.70 Su^-0.265 (surface) x 0.879 d^-0.107 (size) x 0.59 (torsion) x the lesser of half of Su and 100 ksi.
    Range: 0.11 to 2 in, steel. Source: Shigley, chapter 6 (quoted).
    """
    half = (0.5 * tensile_ksi + 100 - abs(0.5 * tensile_ksi - 100)) / 2  # the lesser, for arrays too
    return 2.70 * tensile_ksi**-0.265 * 0.879 * diameter_in**-0.107 * 0.59 * half


def notch_sensitivity_torsion(tensile_ksi: T, fillet_in: T) -> T:
    """Share of a fillet's stress that fatigue feels, in torsion: 1 / (1 + a / sqrt r). Range: 50 to 250 ksi.

    Source: Shigley, chapter 6, notch sensitivity (quoted).
    """
    a = 0.190 - 0.00251 * tensile_ksi + 0.0000135 * tensile_ksi**2 - 0.0000000267 * tensile_ksi**3
    return 1 / (1 + a / fillet_in**0.5)


def fatigue_factor(stress: T, endurance: T, shear_yield: T, concentration: T = 1.0, sensitivity: T = 0.0) -> T:
    """Factor by the Soderberg line for a shear stress that comes and goes from nothing to ``stress``; one unit.

    Half of it alternates, and feels the notch; half is steady.
    Example: a design text works 200 lbf in on 0.5 in with K 1.32 taken whole, endurance 17.952 ksi and shear yield
    half of 71 ksi: 2.41.

    >>> stress = 16 * 200 / 3.141592653589793 / 0.5**3 / 1000
    >>> round(fatigue_factor(stress, 0.85 * 0.88 * 0.6 * 40, 35.5, 1.32, 1.0), 2)
    2.41
    """
    felt = 1 + sensitivity * (concentration - 1)
    return 1 / (felt * stress / 2 / endurance + stress / 2 / shear_yield)
