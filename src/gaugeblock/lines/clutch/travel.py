"""The answer ``clutch``: how far a hydraulic clutch moves, from bores and strokes; of four the one left out."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.printing import significant_by_side
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import hydraulics as calc
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

# What is given -> its dimension and quantity.
_READ = {
    "master": ("length", "master_bore"),
    "slave": ("length", "slave_bore"),
    "stroke": ("length", "master_stroke"),
    "travel": ("length", "slave_travel"),
    "ratio": ("ratio", "pedal_ratio"),
    "force": ("force", "pedal_force"),
}
_OF_FOUR = ("master", "slave", "stroke", "travel")
_NAMES = {
    "master": "bore of the master cylinder",
    "slave": "bore of the slave cylinder",
    "stroke": "stroke of the master cylinder",
    "travel": "travel of the slave cylinder",
}
# What is left out -> how it is worked: formula, quantity, side and verb.
_RULES = {
    "travel": ("slave_travel_of_stroke", "slave_travel", "max", "SLAVE MOVES"),
    "stroke": ("stroke_of_slave_travel", "stroke_needed", "min", "MASTER MOVES"),
    "master": ("master_bore_of_travel", "master_bore_minimum", "min", "TAKE AT LEAST"),
    "slave": ("slave_bore_of_travel", "slave_bore_maximum", "max", "TAKE AT MOST"),
}
_SAID = {
    "travel": (
        "At the most: free play comes off it first, and a hose that swells takes some. Measure it at the fork, with a"
        " helper on the pedal."
    ),
    "stroke": "At the least: free play and a hose that swells come on top.",
    "master": "Take the next larger that is made: free play and a hose that swells take some of the way.",
    "slave": "Take the next smaller that is made: free play and a hose that swells take some of the way.",
}
_STOP = "A slave that goes further than the clutch wants bends its fingers: set a stop at the pedal."
_ORDER = {
    "travel": ("stroke", "master", "slave"),
    "stroke": ("travel", "slave", "master"),
    "master": ("slave", "travel", "stroke"),
    "slave": ("master", "stroke", "travel"),
}


def clutch(
    slave: str | None = None,
    *,
    master: str | None = None,
    stroke: str | None = None,
    travel: str | None = None,
    ratio: str | None = None,
    force: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How far a hydraulic clutch is moved: of two bores and two ways the one that was left out.

    ``slave`` its bore (``7/8 in``); ``master`` the bore of the master cylinder (``5/8 in``); ``stroke`` of the master's
    piston (``30 mm``); ``travel`` of the slave's (``14 mm``); ``ratio`` of the pedal, pad over push rod (``6``);
    ``force`` of the foot (``90 lbf``), which with both bores and the ratio gives the force at the fork.

    Returns a Sheet whose decision is the fourth. What no car has is asked about. Raises Ambiguous where not three of
    the four are given; InputError or UnitError for what cannot be read. Source: the fluid that leaves the master fills
    the slave.

    >>> round(clutch("1 in", master="5/8 in", stroke="1.1 in").decision.figure.typical, 2)
    0.43
    """
    data = data or refdata()
    asked = dict(zip(_READ, (master, slave, stroke, travel, ratio, force), strict=True))
    wanted = _fourth(asked)
    read = {key: read_positive(text, _READ[key][0], key) for key, text in asked.items() if text}
    title = "hydraulic clutch, " + ", ".join(f"{key} {read[key].text}" for key in _OF_FOUR if key in read)
    rule, quantity, side, verb = _RULES[wanted]
    doubts = {
        key: did_you_mean(f"{measure.text} is no usual {_READ[key][1].replace('_', ' ')}", ())
        for key, measure in read.items()
        if not is_plausible(measure, _READ[key][1], data)
    }
    if doubts:
        return questioned(title, asked, doubts, verb, data)
    given = {key: stated(measure, _READ[key][1], key, data) for key, measure in read.items()}
    known = {key: base(figure) for key, figure in given.items()}
    number = _worked(wanted, known)
    unit = "mm" if any(given[key].unit in ("mm", "cm") for key in _OF_FOUR if key in given) else "in"
    told = {key: measure.text for key, measure in read.items()}
    number = units.from_base(number, unit)
    inputs = [given[key] for key in _ORDER[wanted]]
    text = significant_by_side(number, side, 3)
    found = derived(rule, quantity, number, unit, inputs, data, key=told, text=text)
    figures = [found, *_beside(wanted, found, given, told, data), *given.values()]
    cautions = [Caution(_STOP, "damage", (), "common practice")]
    return Sheet(title, asked, data, figures, [], cautions, decision=use(verb, found, _SAID[wanted]))


def _fourth(asked: dict[str, str | None]) -> str:
    """The one of the four that was left out."""
    left = [key for key in _OF_FOUR if not asked[key]]
    if not left:
        why = "both bores, the stroke and the travel are all given, and nothing is left to work out"
        raise InputError(str(asked["travel"]), "travel", why, (), "leave one of the four out")
    if len(left) > 1:
        names = [f"the {_NAMES[key]}" for key in left]
        do = f"say all of these but the one that you want: {', '.join(names)}"
        why = "three of the two bores, the stroke and the travel are needed"
        raise Ambiguous("hydraulic clutch", "", why, (), do)
    return left[0]


def _worked(wanted: str, known: dict[str, float]) -> float:
    """The fourth, m."""
    found: float
    if wanted == "travel":
        found = calc.slave_travel(known["stroke"], known["master"], known["slave"])
    elif wanted == "stroke":
        found = calc.slave_travel(known["travel"], known["slave"], known["master"])
    elif wanted == "master":
        found = calc.bore_of_travel(known["slave"], known["travel"], known["stroke"])
    else:
        found = calc.bore_of_travel(known["master"], known["stroke"], known["travel"])
    return found


def _beside(wanted: str, found: Figure, given: dict[str, Figure], key: dict[str, str], data: Refdata) -> list[Figure]:
    """The way of the pedal where the master's stroke was asked, and the force at the fork where a foot was given."""
    out = []
    if "ratio" in given and wanted == "stroke":
        number = units.from_base(calc.pedal_travel(base(found), base(given["ratio"])), found.unit)
        inputs = [found, given["ratio"]]
        out.append(derived("pedal_travel_of_stroke", "pedal_travel", number, found.unit, inputs, data, key=key))
    if {"force", "ratio", "master", "slave"} <= given.keys():
        inputs = [given[name] for name in ("force", "ratio", "slave", "master")]
        number = base(given["force"]) * base(given["ratio"]) * calc.hydraulic_ratio(*map(base, inputs[2:]))
        unit = given["force"].unit
        out.append(derived("slave_force", "slave_force", units.from_base(number, unit), unit, inputs, data, key=key))
    return out
