"""What is said of a line, read once: the keys there are, and the Line that text or a job's line makes."""

from __future__ import annotations

from gaugeblock import span
from gaugeblock.answer.making import read_positive
from gaugeblock.answer.making import stated_span as stated
from gaugeblock.errors import InputError
from gaugeblock.span import Span
from gaugeblock.units import Measure
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

SERVICES = ("brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission")
SIDES = ("same side", "other side")
SHIELDS = ("none", "flat open", "curved open", "closed")
READ_BY = ("crayon", "paint", "thermocouple", "infra-red")


class Key(Value):
    """One key of a line: the ``quantity`` and ``dim`` of a measure, or a word, which may be one of ``choices``.

    ``label`` is what sheets call it.
    """

    __slots__ = ("choices", "dim", "label", "quantity")

    quantity: str
    dim: str
    choices: tuple[str, ...]
    label: str

    def __init__(self, quantity: str = "", dim: str = "", choices: tuple[str, ...] = (), label: str = "") -> None:
        put(self, "quantity", quantity)
        put(self, "dim", dim)
        put(self, "choices", choices)
        put(self, "label", label)


_WORD = Key()

# The keys of a line by the names of the job file, in the order of a sheet.
KEYS: dict[str, Key] = {
    "service": Key(choices=SERVICES),
    "material": _WORD,
    "class": _WORD,
    "state": _WORD,
    "od": Key("outside_diameter", "length"),
    "wall": Key("wall_thickness", "length"),
    "length": Key("length", "length"),
    "pressure": Key("system_pressure", "stress"),
    "factor": Key("safety_factor", "ratio"),
    "factor_on_burst": Key("safety_factor", "ratio"),
    "factor_on_yield": Key("safety_factor", "ratio"),
    "yield_strength": Key("yield_strength", "stress"),
    "tensile_strength": Key("tensile_strength", "stress"),
    "line_limit": Key("temperature_maximum", "temperature"),
    "line_limit_from": _WORD,
    "fluid": _WORD,
    "fluid_state": _WORD,
    "fluid_limit": Key("boiling_point_minimum", "temperature"),
    "fluid_limit_from": _WORD,
    "marked_for": _WORD,
    "beside": _WORD,
    "gap": Key("gap", "length"),
    "temperature": Key("line_temperature", "temperature"),
    "temperature_by": Key(choices=READ_BY),
    "side": Key(choices=SIDES),
    "shield": Key(choices=SHIELDS),
    "shield_finish": _WORD,
    "hot_od": Key("outside_diameter", "length", label="hot diameter"),
    "hot_temperature": Key("surface_temperature", "temperature"),
    "hot_finish": _WORD,
    "finish": _WORD,
    "air": Key("air_temperature", "temperature"),
    "soak_air": Key("air_temperature", "temperature"),
    "speed": Key("air_speed", "speed"),
    "sleeve": Key("sleeve_thickness", "length"),
    "sleeve_finish": _WORD,
    "sleeve_conductivity": Key("thermal_conductivity", "thermal conductivity"),
    "flow_temperature": Key("fluid_temperature", "temperature"),
    "flow_conductivity": Key("thermal_conductivity", "thermal conductivity"),
    "film": Key("film_coefficient", "film coefficient", label="film coefficient"),
    "margin": Key("temperature_margin", "temperature difference"),
    "jurisdiction": _WORD,
    "flare": _WORD,
    "seat": _WORD,
    "nut": _WORD,
    "port": _WORD,
    "anchors": Key("length", "length"),
    "exhaust_material": _WORD,
    "expansion": Key("expansion_coefficient", "thermal expansion", label="expansion coefficient"),
    "cold_end": Key("cold_end", "temperature"),
    "clip_spacing": Key("support_spacing_maximum", "length"),
    "hose_length": Key("length", "length"),
    "droop": Key("length", "length"),
    "lock": Key("length", "length"),
}
# What Python cannot call a parameter, and what the job's model cannot call an attribute.
_PARAMETERS = {"klass": "class"}
ATTRIBUTES = {"class": "hose_class"}


def label_of(name: str) -> str:
    """What sheets call a key."""
    return KEYS[name].label or name.replace("_", " ")


class Line(Value):
    """A line and what is hot beside it: its ``words`` and ``spans`` by key, its ``name`` where it has one.

    ``worked_out`` are the keys that nobody typed: the paths of line and hot pipe give them.
    """

    __slots__ = ("name", "spans", "words", "worked_out")

    name: str
    words: Mapping[str, str]
    spans: Mapping[str, Span]
    worked_out: tuple[str, ...]

    def __init__(
        self, name: str, words: Mapping[str, str], spans: Mapping[str, Span], worked_out: tuple[str, ...] = ()
    ) -> None:
        put(self, "name", name)
        put(self, "words", Keys(words))
        put(self, "spans", Keys(spans))
        put(self, "worked_out", worked_out)

    def word(self, name: str) -> str | None:
        """The word of a key; None when it was not given."""
        return self.words.get(name)

    def span(self, name: str) -> Span | None:
        """The measure of a key; None when it was not given."""
        return self.spans.get(name)

    def has(self, name: str) -> bool:
        """Whether a key was given."""
        return name in self.words or name in self.spans

    def figure(self, name: str, data: Refdata) -> Figure | None:
        """The measure of a key as a Figure of its quantity; None when it was not given."""
        got = self.spans.get(name)
        if got is None:
            return None
        made = stated(got, KEYS[name].quantity, label_of(name), data, read_by=self._tool(name))
        sheet = self.words.get(f"{name}_from")
        if sheet is not None:
            source, _, place = (part.strip() for part in sheet.partition(","))
            made = made.replace(
                basis="maker", source=source, locator=place or NO_PLACE, chosen_by="as the maker states"
            )
        if name in self.worked_out:
            return made.replace(locator="points of the line and of the hot pipe", note=_BY_PATHS)
        return made

    def _tool(self, name: str) -> str:
        read_by = self.words.get(f"{name}_read_by")
        if read_by is not None:
            return read_by
        tool = self.words.get("temperature_by") if name == "temperature" else None
        return "" if tool is None else f"measured by {tool}"

    def asked(self) -> dict[str, str | None]:
        """Every key with what was typed, for the sheet."""
        return {name: self.words.get(name) or (str(s) if (s := self.spans.get(name)) else None) for name in KEYS}

    def without(self, *names: str) -> Line:
        """The line as if these keys were not given."""
        words = {k: v for k, v in self.words.items() if k not in names}
        return self.replace(words=words, spans={k: v for k, v in self.spans.items() if k not in names})


# How a measure that was read is written, for a refusal.
_EXAMPLES = {
    "temperature": "150 degC",
    "temperature difference": "20 degC",
    "thermal expansion": "17.3 um/(m*K)",
    "film coefficient": "20 W/(m**2*K)",
}
_MAY_BE_NEGATIVE = ("temperature", "temperature difference")
_MAY_BE_ZERO = ("gap", "speed")
NO_PLACE = "page not given"
_BY_PATHS = "worked out from the paths; measure it on the car"


def read_span(text: str, dim: str, where: str) -> tuple[Span, str]:
    """A measure or a range, and with what it was measured (``by TOOL on YYYY-MM-DD`` behind it); blank where typed.

    A difference of temperatures is written as a temperature, ``20 degC``.
    """
    if dim == "temperature difference" and "delta_" not in text:
        text = text.replace("degC", "delta_degC").replace("degF", "delta_degF")
    if " by " not in text:
        return span.parse_span(text, dim, where), ""
    from gaugeblock.known import parse_known

    known = parse_known(text, dim, where, _EXAMPLES.get(dim, "12 in"))
    return known.ends, known.read_by


def line_of_text(given: Mapping[str, str | None], name: str = "") -> Line:
    """The Line of what was typed at the command or in Python, key -> text; InputError names the key that is wrong."""
    from gaugeblock.tables.near import alike, of_these

    words: dict[str, str] = {}
    spans: dict[str, Span] = {}
    for parameter, text in given.items():
        key_name = _PARAMETERS.get(parameter, parameter)
        key = KEYS.get(key_name)
        if key is None:
            pool = list(KEYS)
            raise InputError(
                parameter, "route", "not a key of a line", alike(parameter, pool) or pool, "use one of these"
            )
        if text is None:
            continue
        if not isinstance(text, str):
            do = f'write "{text}" with its unit' if key.dim else "write it in quotes"
            raise InputError(str(text)[:60], key_name, "text is wanted", (), do)
        if key.dim:
            spans[key_name], read_by = read_span(text, key.dim, label_of(key_name))
            if key.dim not in _MAY_BE_NEGATIVE:
                read_positive(spans[key_name].low, key.dim, label_of(key_name), zero=key_name in _MAY_BE_ZERO)
            words.update({f"{key_name}_read_by": read_by} if read_by else {})
        elif key.choices and text not in key.choices:
            choices = list(key.choices)
            raise InputError(text, key_name, "not one of the choices", of_these(text, choices), "use one of these")
        else:
            words[key_name] = text
    return Line(name, words, spans)


def line_of_part(part: Any) -> Line:
    """The Line of a job's line, whose measures are read."""
    words: dict[str, str] = {}
    spans: dict[str, Span] = {}
    for name in KEYS:
        got = getattr(part, ATTRIBUTES.get(name, name))
        if isinstance(got, Measure):
            spans[name] = span.of(got)
        elif isinstance(got, Span):
            spans[name] = got
        elif isinstance(got, tuple):
            spans[name], read_by = got
            words.update({f"{name}_read_by": read_by} if read_by else {})
        elif got is not None:
            words[name] = got
    return Line(part.name, words, spans)
