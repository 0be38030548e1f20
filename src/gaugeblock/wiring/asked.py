"""Readers of the wire of a circuit and of what it may lose, as people say them."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, always, amount
from gaugeblock.errors import Ambiguous
from gaugeblock.units import parse_number

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.tables.load import Refdata


def _gauge(match: re.Match[str]) -> str:
    return f"{match['n']} AWG"


_NO_RUN = 120  # mm


def by_area(values: dict[str, str]) -> dict[str, str]:
    """The options; Ambiguous for a wire of so many millimetres: sold by its area, or measured across."""
    wire = values.get("wire", "")
    if wire.endswith(" mm"):
        why = "a wire goes by the area of its copper, and this is a width"
        do = f"say {wire}2 if that is its area, as it is sold; a cable of so many mm across holds far less"
        raise Ambiguous(wire, "wire", why, (), do)
    run = values.get("length", "")
    if run.endswith(" mm") and "wire" not in values and float(parse_number(run.partition(" ")[0])) <= _NO_RUN:
        why = "no wire runs so short a way, and a wire goes by the area of its copper"
        raise Ambiguous(run, "length", why, (), f"say {run}2 if that is its area, as it is sold, and how far it runs")
    return values


_LOST = (
    r"(?:of )?(?:voltage )?(?:lost|loss|los(?:e|ing)|drop(?:ped)?)"
    r"(?: (?:in|on|along|over|across|at)(?: (?:it|the|wire|cable|run|end|way))*)?"
)
LEAST_VOLTS = 5  # of a vehicle: less is what a wire loses
# No more than: how a shop says what a wire may lose.
_MOST = (
    r"(?:(?:and|but|with|at|i|we) )*(?:(?:keeps?|stays?|los(?:e|es|ing)|drops?|want|allow|have) (?:me "
    r"|it |us )?)?"
    r"(?:(?:not|no|never|don't|dont|do not|can't|cant|cannot|won't|wont)(?: (?:want|wanna|lose|have|be|to|drop"
    r"|losing))* )?"
    r"(?:under|less than|more than|over|at most|within|below|only|max(?:imum)?|up to)(?: (?:an?|about))?"
)
DROPPED = (
    *(
        one
        for dimension in ("ratio", "voltage")
        for one in (
            amount(dimension, before=_MOST, after=_LOST, say="{} drop", cue=("lo", "drop")),
            amount(dimension, after=_LOST, say="{} drop", cue=("lo", "drop")),
            amount(
                dimension,
                before=r"(?:(?:allowed|permitted|voltage|max(?:imum)?) )*drop(?: of"
                r"| is)?",
                say="{} drop",
                cue=("drop",),
            ),
            amount(dimension, before=_MOST, say="{} drop"),
            amount(
                dimension,
                before=r"(?:(?:and|but|i|we|i'?ll|we'?ll|can|will|could) )*(?:allow|spare|stand)(?: (?:it"
                r"|about))?",
                say="{} drop",
                cue=("allow", "spare", "stand"),
            ),
        )
    ),
    Shaped(  # of a circuit nothing else is told so
        r"(?P<n>[1-9](?:\.[0-9])?|1[0-5]) ?(?:%|percent|per ?cent)(?! (?:duty|longer|more|less|load|bigger|over))",
        lambda m: f"{m['n']} %",
        "{} drop",
        doubt=2,
        cue=("%", "cent"),
    ),
    *(
        amount(
            dimension,
            after=rf"(?:{_LOST} )?(?:max(?:imum)?|at (?:the )?most|or less)(?: (?:voltage )?drop)?",
            say="{} drop",
            cue=("max", "most", "less"),
        )
        for dimension in ("ratio", "voltage")
    ),
)
# What the contact of a relay may carry, which is no load.
RELAY = (
    amount(
        "current",
        after=r"(?:relay(?:'?s)? )?(?:contacts?|relays?)(?: contacts?)?",
        say="{} relay",
        cue=("relay", "contact"),
    ),
    amount(
        "current",
        before=r"relay(?:'?s)?(?: (?:contacts?|that|is|are|rated(?: (?:at|for|to))?|rating|good for|of))+",
        say="{} relay",
        cue=("relay",),
    ),
)
# What a wire may carry, asked.
CARRIED = (
    Shaped(
        r"(?:how (?:many|much) |what )?(?:amps?|current|ampacity)?(?: (?:can|does|will|may|should))*"
        r"(?: (?:an? |the )?(?:wire|it|this))? ?(?:carry|carries|handle|ampacity|take)"
        r"|(?:how (?:many|much)|what|max(?:imum)?|safe) (?:amps|current)(?: (?:can|is|will|for|does|safe))?"
        r"|current|ampacity|amps? rating|amperage|rated (?:for|at)(?: (?:how many|what))?(?: amps?)?"
        r"|good for(?: in)?(?: (?:what|how many))? amps?",
        always("current"),
        "what it carries",
    ),
)


_SIZE = r"[0-9]+(?:\.[0-9]+|/0)?"
_OF_AREA = r" ?(?:mm2|mm\^2|sq ?mm|awg|gauge|ga)"
# Two or three wires of which one is bought.
OF_SIZES = (
    rf"(?:(?:is|will|do|should|would|use|buy|a|an|the|it|i|be) )*(?P<a>{_SIZE})(?:{_OF_AREA})?(?: (?P<b>{_SIZE})"
    rf"(?:{_OF_AREA})?)? or (?:(?:do|should|must|i|need|have|to|go|use|an?|for|up) )*(?P<c>{_SIZE})(?P<u>{_OF_AREA})"
)


def sizes(match: re.Match[str]) -> str:
    unit = "mm2" if match["u"].strip() in ("mm2", "mm^2", "sqmm", "sq mm") else "AWG"
    return f"{match['a']}{', ' + match['b'] if match['b'] else ''} or {match['c']} {unit}"


WIRE = (
    Shaped(r"(?P<n>[0-9]+(?:/0)?) ?(?:awg|gauge|gage|ga|guage)(?: (?:wire|cable))?", _gauge, "{} wire"),
    Shaped(r"(?P<n>[1-4]/0)(?: (?:wire|cable))?", _gauge, "{} wire"),
    Shaped(
        r"(?P<n>0\.5|0\.75|1(?:\.[05])?|2(?:\.[05])?|[3-68]|10|16|25|35|50|70) ?mm"
        r"(?= (?:auto(?:motive)? |copper |thin[- ]?wall |stranded |twin |flat |2 )*"
        r"(?:cables?|wires?|cores?|flex)(?: |$)"
        r"| (?:(?:can|will|could|go|be) )*(?:run|reach|carry|carries|carrying|fed|good for)(?: |$))",
        lambda m: f"{m['n']} mm",
        "{} wire",
        doubt=1,
        cue=("cable", "wire", "core", "flex", "run", "reach", "carr", "fed", "good"),
    ),
    Shaped(
        r"(?P<n>[0-9]+(?:\.[0-9]+)?)(?P<half> 1/2)? ?(?:mm2|mm\^2|sq ?mm|square (?:mm|millimet(?:re|er)s?))(?:"
        r" (?:wire|cable))?",
        lambda m: f"{m['n']}{'.5' if m['half'] else ''} mm2",
        "{} wire",
    ),
)
_LOAD = (
    r"(?:(?:the|an?|my|spot|spot ?|head|driving|fog|work|light|fuel|water|electric|cooling) )*"
    r"(?:spot ?|head ?)?(?:lights?|lamps?|spots?|bars?|horns?|fans?|pumps?|heaters?|blowers?|radios?|relays?"
    r"|wipers?|coils?)"
)
_DRAWN = r"(?P<{n}>[0-9]+(?:\.[0-9]+)?) ?(?P<{u}>watts?|w|amps?|a)"
_TIED = rf"(?: (?:and|plus|with|{_LOAD}|that|that's|is|are|draws?|pull[s]?|at|of|an?))* "


def _together(match: re.Match[str]) -> str | None:
    """What two loads draw that share a fuse; None where one is told in amps and the other in watts."""
    units = {match["u"][0], match["v"][0]}
    if len(units) > 1:
        return None
    return f"{float(match['n']) + float(match['m']):g} {units.pop().upper()}"


# Two loads on one fuse: 100 W spotlight and 180 W light bar on one fuse.
SHARED = Shaped(
    rf"{_DRAWN.format(n='n', u='u')}{_TIED}{_DRAWN.format(n='m', u='v')}(?: {_LOAD})?(?: (?:all|both))?"
    r" (?:(?:on|off|from|through) (?:the )?(?:one|1|same|a single|single) fuse|together|in total)",
    _together,
    "{} together",
    cue=("fuse", "together", "total"),
)


def of_a_power(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Of a power the current at the voltage that was said."""
    found = {key: value for key, value in by_area(values).items() if key != "voltage"}
    power = values.get("current", "")
    if power.endswith(" W"):
        if "voltage" not in values:
            why = "it draws twice the current at half the voltage, and that was not said"
            raise Ambiguous(power, "voltage", why, (), "say the voltage too: 12 V")
        watts, volts = (float(parse_number(values[key].partition(" ")[0])) for key in ("current", "voltage"))
        found["current"] = f"{watts / volts:.4g} A"
    return found
