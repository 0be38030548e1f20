"""Parts of a line: pressure and wall, clips, growth with heat. SI in, SI out; floats or arrays (n,)."""

from __future__ import annotations

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape


def pressure_of_wall(stress_pa: T, wall_m: T, diameter_m: T, factor: T = 1.0) -> T:
    """Inside pressure in Pa at which a thin tube's hoop stress is ``stress_pa`` / ``factor``: 2 S t / (D factor)
    (Barlow).

    Range: wall under about a twentieth of the outside diameter is thin; above it the rule is on the safe side only for
    the mean stress. End pull and bending are left out. Common practice; no publication read.

    >>> round(pressure_of_wall(170e6, 0.71e-3, 4.76e-3) / 1e6, 1)
    50.7
    """
    return 2.0 * stress_pa * wall_m / (diameter_m * factor)


def wall_for_pressure(pressure_pa: T, stress_pa: T, diameter_m: T, factor: T = 1.0) -> T:
    """Wall in m that keeps the hoop stress at ``stress_pa`` / ``factor``. Inverse of ``pressure_of_wall``."""
    return pressure_pa * diameter_m * factor / (2.0 * stress_pa)


def support_count(length_m: T, spacing_m: T) -> T:
    """Clips between two held ends so that no bay is longer than ``spacing_m``: ceil(L/s) - 1, never under 0.

    A length within 1e-9 of a whole number of bays is that number.

    >>> support_count(1.0, 0.3), support_count(0.9, 0.3), support_count(0.2, 0.3)
    (3, 2, 0)
    """
    ns = namespace.of(length_m, spacing_m)
    bays = ns.ceil(length_m / spacing_m * (1.0 - 1e-9))
    return ns.maximum(bays - 1, 0) if ns.__name__ == "numpy" else max(bays - 1, 0)


def support_places(length_m: float, count: int) -> tuple[float, ...]:
    """Distances in m from one end of ``count`` evenly spread clips.

    >>> support_places(1.0, 3)
    (0.25, 0.5, 0.75)
    """
    return tuple(length_m * (i + 1) / (count + 1) for i in range(count))


def growth(expansion_per_k: T, length_m: T, rise_k: T) -> T:
    """Growth in m of a part that is free to: alpha L dT; alpha the mean coefficient over the rise.

    Source: a university lecture on pipe expansion (25 ft of steel pipe, 160 degF: 0.312 in).

    >>> round(growth(6.5e-6 * 1.8, 300 * 0.0254, 160 / 1.8) / 0.0254, 3)
    0.312
    """
    return expansion_per_k * length_m * rise_k


def voltage_drop(resistance_per_m: T, length_m: T, current_a: T, runs: int = 1) -> T:
    """Voltage drop in V of a wire: runs R L I; ``runs`` 2 counts the return path of two equal wires, direct current.

    Source: AC 43.13-1B Table 11-7.

    >>> round(voltage_drop(0.00028 / 0.3048, 90 * 0.3048, 20.0), 3)
    0.504
    """
    return runs * resistance_per_m * length_m * current_a
