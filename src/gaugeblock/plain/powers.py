"""Power of a torque at a speed, and of a current at a voltage, and back: what a line asks of two of the three."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER
from gaugeblock.plain.chatter import CHATTER
from gaugeblock.plain.convert import Conversion

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_POUND_FEET = r"(?:lbs?|lbf|pounds?)[-. *]?(?:ft|foot|feet)|(?:ft|foot|feet)[-. *]?(?:lbs?|lbf|pounds?)|ftlbs?|lbft"
_NEWTON_METRES = r"nm|n[-. *]m|newton[- ]?met(?:re|er)s?"
_HORSES = r"b?hp|horse(?: ?power)?|horses"
_AMOUNTS = (
    ("torque", rf"(?P<lbfft>{_POUND_FEET})|(?P<Nm>{_NEWTON_METRES})"),
    ("speed", r"(?P<rpm>rpm|revs?(?: (?:per|an?) minute)?)"),
    ("power", rf"(?P<hp>{_HORSES})|(?P<kW>kw|kilowatts?)"),
)
_LAMP = (("watts", r"(?P<W>w|watts?)"), ("volts", r"(?P<V>v|volts?)"), ("amps", r"(?P<A>a|amps?|amperes?)"))
_UNITS = {"lbfft": "lbf*ft", "Nm": "N*m"}
# What each of the three is asked by.
_ASKED = {
    "torque": rf"torque|{_POUND_FEET}|{_NEWTON_METRES}",
    "speed": r"rpm|revs|speed",
    "power": rf"power|{_HORSES}|kw|kilowatts?",
    "watts": r"w|watts?|wattage|power",
    "volts": r"v|volts?|voltage",
    "amps": r"a|amps?|amperes?|amperage|current",
}
_FIRST = {"power": ("hp", "kW"), "torque": ("lbf*ft", "N*m"), "speed": ("rpm", "")}
_SAYS = """
at from for with of on to make makes making made engine motor bulb bulbs lamp lamps globe light draw draws drawing pull
pulls take takes use uses equal equals give gives and is in its it peak crank flywheel x by times
"""
_NO_MORE = frozenset(_SAYS.split())
_TOLD = ("power", "torque", "speed")
_LEAST_RPM, _MOST_RPM, _MOST_VOLTS = 300, 20000, 60
_DIGITS = 3


def powers(words: tuple[str, ...], data: Refdata) -> tuple[Conversion, ...]:
    """The power of a torque at a speed, or whichever of the three is asked by the other two: in both units. The current
    of a load at a voltage, or of the three the one that is asked. None where a line says or asks anything else.

    P = 2 pi n T (SAE J1349's brake power of a torque at a speed), P = U I.

    >>> from gaugeblock.tables.load import refdata
    >>> [one.found for one in powers(("hp", "from", "400", "ftlb", "at", "4500"), refdata())]
    ['about 343 hp', 'about 256 kW']
    """
    for amounts, of in ((_AMOUNTS, _turning), (_LAMP, _electric)):
        given, rest = _given(" ".join(words), amounts)
        if not given:
            continue
        asked = [name for name, _ in amounts if name not in given and _takes(_ASKED[name], rest)]
        if len(given) != len(amounts) - 1 or len(asked) != 1:
            continue
        left = re.sub(rf"(?<![^ ])(?:{_ASKED[asked[0]]})(?![^ ])", " ", rest).split()
        if all(word in CHATTER or word in _NO_MORE for word in left):
            return of(given, asked[0], data)
    return ()


def _takes(pattern: str, rest: str) -> bool:
    return re.search(rf"(?<![^ ])(?:{pattern})(?![^ ])", rest) is not None


def _given(line: str, amounts: tuple[tuple[str, str], ...]) -> tuple[dict[str, tuple[float, str]], str]:
    """The amounts that stand in a line with their units, and the line without them. A bare number behind ``at`` is the
    speed of a torque or a power.
    """
    given: dict[str, tuple[float, str]] = {}
    for name, pattern in amounts:
        found = re.search(rf"(?<![^ ])(?P<n>{NUMBER}) ?(?:{pattern})(?![^ ])", line)
        if found is not None:
            unit = next(key for key, value in found.groupdict().items() if value and key != "n")
            given[name] = float(units.parse_number(found["n"])), unit
            line = f"{line[: found.start()]} {line[found.end() :]}"
    bare = re.search(r"(?<![^ ])at (?P<n>[0-9]+)(?![^ ])", line)
    is_open = bool(given) and "speed" not in given and amounts is _AMOUNTS
    if bare is not None and is_open and _LEAST_RPM <= int(bare["n"]) <= _MOST_RPM:
        given["speed"] = float(bare["n"]), "rpm"
        line = f"{line[: bare.start()]} {line[bare.end() :]}"
    return given, line


def _turning(given: dict[str, tuple[float, str]], asked: str, data: Refdata) -> tuple[Conversion, ...]:
    base = {name: units.to_base(number, _UNITS.get(unit, unit)) for name, (number, unit) in given.items()}
    if any(number <= 0 for number in base.values()):
        return ()
    turn = base.get("speed", 0.0)
    if asked == "power":
        value = base["torque"] * turn
    elif asked == "torque":
        value = base["power"] / turn
    else:
        value = base["power"] / base["torque"]
    told = " at ".join(f"{given[n][0]:g} {_UNITS.get(given[n][1], given[n][1])}" for n in _TOLD if n in given)
    is_metric = any(unit in ("Nm", "kW") for _, unit in given.values())
    names = [name for name in _FIRST[asked] if name]
    return tuple(_one(told, units.from_base(value, name), name, data) for name in (names[::-1] if is_metric else names))


def _electric(given: dict[str, tuple[float, str]], asked: str, data: Refdata) -> tuple[Conversion, ...]:
    watts, volts, amps = (given.get(name, (0.0, ""))[0] for name in ("watts", "volts", "amps"))
    if (asked != "volts" and not 0 < volts <= _MOST_VOLTS) or (asked == "volts" and amps <= 0):
        return ()  # of no vehicle
    value = {"amps": lambda: watts / volts, "watts": lambda: volts * amps, "volts": lambda: watts / amps}[asked]()
    told = " at ".join(f"{number:g} {unit}" for number, unit in given.values())
    return (_one(told, value, {"amps": "A", "watts": "W", "volts": "V"}[asked], data),)


def _one(given: str, value: float, unit: str, data: Refdata) -> Conversion:
    shown = units.significant(value, _DIGITS)
    return Conversion(given, f"about {shown} {unit}", units.significant(value, 12), unit, False, data)
