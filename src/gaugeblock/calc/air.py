"""Air between printed points: conductivity, kinematic viscosity and Prandtl number by temperature. SI in, SI out.

The points come from outside: this module opens no table.
"""

from __future__ import annotations

from bisect import bisect_right

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape


class Air:
    """Air as a source prints it: rising temperatures in K with k in W/(m K), nu in m^2/s and Pr at each.

    ValueError when the columns are of unequal length, shorter than two, or the temperatures do not rise.
    """

    __slots__ = ("conductivity", "prandtl", "temperature_k", "viscosity")

    def __init__(
        self,
        temperature_k: Sequence[float],
        conductivity: Sequence[float],
        viscosity: Sequence[float],
        prandtl: Sequence[float],
    ) -> None:
        self.temperature_k = tuple(temperature_k)
        self.conductivity = tuple(conductivity)
        self.viscosity = tuple(viscosity)
        self.prandtl = tuple(prandtl)
        count = len(self.temperature_k)
        if count < 2 or any(len(c) != count for c in (self.conductivity, self.viscosity, self.prandtl)):
            raise ValueError("air needs at least two points, and every property at each")
        if any(b <= a for a, b in zip(self.temperature_k, self.temperature_k[1:], strict=False)):
            raise ValueError("the temperatures of air must rise")

    def at(self, temperature_k: T) -> tuple[T, T, T]:
        """k, nu and Pr, linear between two points; outside the points the end's values (see ``covers``).

        >>> air = Air((273.15, 373.15), (0.02364, 0.03095), (1.338e-5, 2.306e-5), (0.7362, 0.7111))
        >>> [round(v, 9) for v in air.at(323.15)]
        [0.027295, 1.822e-05, 0.72365]
        """
        ns = None if type(temperature_k) is float else namespace.of(temperature_k)
        if ns is not None and ns.__name__ == "numpy":
            x = self.temperature_k
            k = ns.interp(temperature_k, x, self.conductivity)
            return k, ns.interp(temperature_k, x, self.viscosity), ns.interp(temperature_k, x, self.prandtl)
        points = self.temperature_k
        i = min(max(bisect_right(points, temperature_k) - 1, 0), len(points) - 2)
        share = min(max((temperature_k - points[i]) / (points[i + 1] - points[i]), 0.0), 1.0)
        return (
            self.conductivity[i] + share * (self.conductivity[i + 1] - self.conductivity[i]),
            self.viscosity[i] + share * (self.viscosity[i + 1] - self.viscosity[i]),
            self.prandtl[i] + share * (self.prandtl[i + 1] - self.prandtl[i]),
        )

    def covers(self, temperature_k: T) -> T:
        """Whether a temperature lies between the first and the last point."""
        return (temperature_k >= self.temperature_k[0]) & (temperature_k <= self.temperature_k[-1])
