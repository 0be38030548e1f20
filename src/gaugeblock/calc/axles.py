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
