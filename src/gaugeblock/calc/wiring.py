"""One circuit: how hot its wire runs, what it may carry, what it loses. SI in, SI out; temperatures in kelvin.

Every argument may be a float or an array (n,); the answer has the same shape.
"""

from __future__ import annotations

from math import pi

from gaugeblock.calc import namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_ZERO_C = 273.15
_MIL_M = 0.0000254
_CMIL_M2 = 5.067074790974977e-10


def area_of_gauge(gauge: T) -> T:
    """The metal of a solid round wire of an American gauge, m^2; 1/0 is 0, 2/0 is -1. ASTM B258: 5 mil at No. 36.

    >>> [round(area_of_gauge(n) * 1e6, 2) for n in (10, 0, -3)]
    [5.26, 53.48, 107.22]
    """
    return pi / 4 * (5 * 25.4e-6 * 92 ** ((36 - gauge) / 39)) ** 2


def gauge_of_area(area_m2: T) -> T:
    """The gauge number, not rounded, of a round wire of this metal area.

    >>> round(gauge_of_area(10500 * 5.067074790974977e-10), 1)
    10.0
    """
    ns = namespace.of(area_m2)
    return 36 - 39 * ns.log(ns.sqrt(area_m2 / _CMIL_M2) / 5) / ns.log(92.0)


def ambient_factor(insulation_k: T, air_k: T, reference_k: T) -> T:
    """Share of a table's current that is left in other air: sqrt((Ti - Ta)/(Ti - Tr)), 1 at most; 0 where the air is
    hotter than the insulation bears.

    The heat of a wire rises with the square of its current. Source: 33 CFR 183.425 prints 0.58 for 60 degC insulation
    in an engine space, 0.85 for 105 degC; those are 50 degC air under a table of 30 degC.

    >>> round(ambient_factor(378.15, 323.15, 303.15), 2)
    0.86
    """
    ns = namespace.of(insulation_k, air_k, reference_k)
    share = (insulation_k - air_k) / (insulation_k - reference_k)
    share = share * (share > 0)
    return ns.sqrt(share * (share < 1) + (share >= 1))


def derated_current(table_a: T, ambient: T = 1.0, bundle: T = 1.0) -> T:
    """What a wire may carry, A: the table's current times the factors of its air and its bundle."""
    return table_a * ambient * bundle


def conductor_temperature(air_k: T, insulation_k: T, current_a: T, allowed_a: T) -> T:
    """Temperature of a loaded conductor, K: Ta + (Ti - Ta)(I/Im)^2, at Ti when it carries all that it may."""
    return air_k + (insulation_k - air_k) * (current_a / allowed_a) ** 2


def temperature_after(air_k: T, current_a: T, cold_ohm_m: T, seconds: T, area_m2: T) -> T:
    """Temperature of copper that keeps all its heat for some seconds, K: Ta + I^2 R t/(c A), R that at Ta.

    3.45 MJ/(m^3 K): 8,960 kg/m^3 of 385 J/(kg K). A cable of 33.6 mm^2 at 200 A for 15 s:

    >>> round(temperature_after(293.15, 200, 0.00051, 15, 33.6e-6) - 293.15, 1)
    2.6
    """
    return air_k + current_a**2 * resistance_hot(cold_ohm_m, air_k) * seconds / (3450000 * area_m2)


def resistance_hot(cold_ohm_m: T, conductor_k: T) -> T:
    """Resistance of copper at a temperature from that at 20 degC: R20 (234.5 + T)/254.5, T in degC.

    Source: AC 43.13-1B 11-66d(4).

    >>> round(resistance_hot(1.0, 273.15 + 75.0), 3)
    1.216
    """
    return cold_ohm_m * (234.5 + conductor_k - _ZERO_C) / 254.5


def voltage_drop(ohm_m: T, length_m: T, current_a: T, ways: T = 1) -> T:
    """Volts lost in a wire of this length, or in both ``ways`` of two equal ones: R L I.

    Source: AC 43.13-1B Table 11-7: 0.00028 ohm/ft, 90 ft and 20 A lose 0.504 V.

    >>> round(voltage_drop(0.00028 / 0.3048, 90 * 0.3048, 20), 3)
    0.504
    """
    return ways * ohm_m * length_m * current_a


def parking_time(charge_c: T, share: T, draw_a: T) -> T:
    """Seconds in which a steady draw takes this share of a battery's charge."""
    return charge_c * share / draw_a


def reach(volts: T, resistance: T, amperes: T, ways: T) -> T:
    """How far a wire may run, m, one way, before it loses so many volts: V / (r I n), r in ohm/m.

    >>> round(reach(0.5, 0.00509, 20.0, 1), 2)
    4.91
    """
    return volts / (resistance * amperes * ways)


def standing_draw(charge_c: T, share: T, time_s: T) -> T:
    """The draw that takes a share of a battery's charge in a time, A."""
    return charge_c * share / time_s
