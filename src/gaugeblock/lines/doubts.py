"""What is implausible of what was typed of a line: outside its quantity's range, or senseless beside its neighbours."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN, MEASURE
from gaugeblock.lines.found import Found, asking
from gaugeblock.lines.keys import KEYS, label_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.keys import Line
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

# units that a person may have meant, by dimension
_MEANT = {
    "length": ("in", "mm", "ft", "m"),
    "temperature": ("degC", "degF"),
    "stress": ("psi", "ksi", "bar", "MPa", "kPa"),
    "speed": ("m/s", "mph", "km/h"),
}


def doubts(line: Line, inputs: dict[str, Figure], data: Refdata) -> Found:
    """A check that asks, with its question, for each thing typed that is not plausible."""
    found = Found()
    for name, span in line.spans.items():
        for end in dict.fromkeys((span.low, span.high)):
            if not is_plausible(end, KEYS[name].quantity, data):
                found += _out_of_range(name, end, data)
                break
    for label, key in (("hot finish", "hot_finish"), ("line finish", "finish"), ("sleeve finish", "sleeve_finish")):
        got = inputs.get(label)
        limits = plausible_range("total_emissivity", data)
        if got is not None and limits is not None and (got.low if got.low is not None else got.typical) < limits[0]:
            found += _doubt(key, f"{label} {got.text}: nothing radiates so little", FILL_IN)
    return found + _beside_each_other(line, data)


def _out_of_range(name: str, end: Measure, data: Refdata) -> Found:
    low, high = plausible_range(KEYS[name].quantity, data) or (0.0, 0.0)
    readings = other_readings(end, low, high, _MEANT.get(KEYS[name].dim, ()))
    return _doubt(name, f"{label_of(name)} {end.text} is hardly so", FILL_IN, readings)


def _doubt(key: str, said: str, kind: str, readings: tuple[str, ...] = ()) -> Found:
    check = Check(f"{label_of(key)}: plausible", CANNOT_TELL, said, subject=key, bears=ASK)
    return asking(check, kind, did_you_mean(capital(said), readings), key)


def _beside_each_other(line: Line, data: Refdata) -> Found:
    """A line hotter than what heats it, one colder than the air round it, air hotter than the hot part."""
    found = Found()
    read, hot = line.span("temperature"), line.span("hot_temperature")
    airs = [(key, s) for key in ("air", "soak_air") if (s := line.span(key)) is not None]
    if read is not None and hot is not None and read.high.to("degC") > hot.high.to("degC"):
        said = f"a line at {read} is hotter than the hot part at {hot}"
        found += _doubt("temperature", said, MEASURE, _other(read.high, data, most=hot.high.to("degC")))
    coldest = min((s.low.to("degC") for _, s in airs), default=None)
    if read is not None and coldest is not None and read.high.to("degC") < coldest:
        said = f"a line at {read} is colder than the air beside it: read it hot and after shut-down"
        found += _doubt("temperature", said, MEASURE)
    for key, air in airs:
        if hot is not None and air.high.to("degC") >= hot.low.to("degC"):
            said = f"{label_of(key)} {air} is as hot as the hot part at {hot}"
            found += _doubt(key, said, FILL_IN, _other(air.high, data, most=hot.low.to("degC")))
    return found


def _other(end: Measure, data: Refdata, most: float) -> tuple[str, ...]:
    """The same number in the other temperature unit, where that makes sense."""
    low, _ = plausible_range("air_temperature", data) or (0.0, 0.0)
    return other_readings(end, low, units.to_base(most, "degC"), _MEANT["temperature"])
