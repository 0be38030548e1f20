"""What is asked about a bend that is made: how much tube it takes, where it starts, what is cut for it."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.errors import InputError
from gaugeblock.tubes.legs_said import CORNER_READERS, LEG_READERS, TWO_READERS, UNIT
from gaugeblock.tubes.said import DEG, answer_in
from gaugeblock.tubes.sizes_ask import OD_OF_TUBE, in_diameters
from gaugeblock.tubes.sticks import COUNTED_BENDS, EQUAL_READERS, METRIC_OD, with_equal

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.tables.load import Refdata


_OF_ARC = ("radius", "angle", "legs", "corner", "bends", "fact")
_FACT_READERS = (
    Shaped(r"(?:(?:what(?:'?s| is)|how much|the|is) )*(?:bend )?gain", always("gain"), "its gain", cue=("gain",)),
    Shaped(r"(?:what(?:s| is)? )?(?:the )?set ?back", always("setback"), "its setback"),
    Shaped(
        r"tangent (?:lengths?|distance)|tangents?(?= (?:of|for|on) )",
        always("setback"),
        "its setback",
        cue=("tangent",),
    ),
    Shaped(
        r"(?:where|how far)(?: (?:do|does|is|should|the|my|from|before|ahead of|back|bend|tangent|it|start|starts"
        r"|begin|begins|mark|go|goes|and))* (?:back|before|ahead|short|away)(?: (?:of|from|the|it))* (?:corner|apex)"
        r"|(?:where|how far)(?: (?:do|does|should))?(?: (?:the|my))? bend (?:starts?|begins?) (?:back )?(?:from"
        r"|before) (?:the )?(?:corner|apex)",
        always("setback"),
        "its setback",
        cue=("corner", "apex"),
    ),
    Shaped(
        r"(?:where|how far) (?:before|ahead of|back from|from|short of) (?:it|that|this)(?: (?:do|does|should"
        r"|the|my|goes"
        r"|start|starting|mark|marks|go|goes|is|i|put|bend))*",
        always("setback"),
        "its setback",
        cue=("how far", "where"),
    ),
    Shaped(
        r"(?:and )?not counting (?:the |any )?(?:straights?|legs?|ends?)|(?:just |only )?the bend itself",
        always("length"),
        "the bend itself",
        cue=("not counting", "itself"),
    ),
    Shaped(
        r"(?:where|how far)(?: (?:do|does|is|from the end|in|should|would|i|we|you|it|the|my|go|goes|put|make|"
        r"scribe|to|bend|first))* (?:start(?:s|ing)?(?: mark)?|marks?)(?: (?:go|goes|at|it|start|sit))*",
        always("start"),
        "where it starts",
    ),
    Shaped(r"start(?:ing)? marks?", always("start"), "where it starts"),
    Shaped(
        r"marks? (?:for|on|of)(?= (?:an? |the |my )?(?:[0-9]+|bend|square))",
        always("start"),
        "where it starts",
        cue=("mark",),
    ),
)


_MEASURED = ("to the corner of the centre lines", "to where the bend starts")
_ENDS = r"(?:the )?(?:cut |outer |tube )?ends?"
_THE_CORNER = (
    r"(?:the |an? |that )?(?:imaginary |sharp |bend )*(?:cent(?:re|er) ?lines? )?(?:corners?|apex|point of"
    r" intersection)(?: of the cent(?:re|er) ?lines?)?"
)
_MEASURED_READERS = (
    Shaped(
        rf"(?:(?:both|all|each|dimensions?|sizes?|legs?|are|is|as) )*(?:measured |taken )?(?:from )?"
        rf"(?:{_THE_CORNER} to {_ENDS}|{_ENDS} to {_THE_CORNER}|corner to corner|to {_THE_CORNER})"
        r"(?: on the cent(?:re|er) ?line)?",
        always(_MEASURED[0]),
        cue=("corner", "apex", "intersection"),
    ),
    Shaped(
        r"(?:(?:both|all|each|are|is) )*(?:measured |taken )?(?:from )?(?:(?:up )?to (?:where the bend"
        r" (?:starts|begins)|(?:the )?tangents?(?: points?)?)|(?:as )?straights? only)",
        always(_MEASURED[1]),
        cue=("tangent", "where the", "only"),
    ),
)


def _corner_of_one(match: re.Match[str]) -> str | None:
    """A leg that must have its unit: ``then 35`` may be degrees."""
    return f"{match['n']} {'mm' if match['unit'] == 'mm' else 'in'}" if match["unit"] else None


_COUNTED = {"3": "3", "three": "3", "4": "4", "four": "4"}
_MIDDLE_READERS = (
    Shaped(
        rf"(?:and |by )?(?P<n>{NUMBER}){UNIT} (?:across|wide|over)(?: the| its)?(?: (?:top|bends|legs|middle|back))?",
        lambda m: (
            f"{m['n']} {m['unit'] or ''}".replace('"', "in").strip().replace("inches", "in").replace("inch", "in")
        ),
        "{} between the bends",
        cue=("across", "wide", "over"),
    ),
)
_FIRST = Shaped(
    rf"(?:it |tube |pipe )?(?:goes|runs|straight(?: for)?|starts with)(?: (?:straight|for|about|an?))* (?P<n>{NUMBER})"
    rf"{UNIT}",
    _corner_of_one,
    "first leg {}",
    cue=("then",),
)
_LAST = Shaped(
    rf"(?:and )?then(?: (?:on|another|a further|it|goes|runs|straight|for|about|an?))* (?P<n>{NUMBER}){UNIT}"
    r"(?: (?:more|further|straight))*(?! ?deg)",
    _corner_of_one,
    "last leg {}",
    cue=("then",),
)


def _settle_arc(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The bend of whatever tube; two legs are to the corner or to where it starts, as one of the two has it.

    InputError for a part of the tube that no answer takes in: one leg of two, what is between two bends alone.
    """
    values = in_diameters(values)
    alone = [] if _two_of(values) else [key for key in ("first", "last", "middle") if key in values]
    if alone:
        why = "the other parts of the tube were not said"
        raise InputError(values[alone[0]], "legs", why, (), "say each leg, and what is between two bends")
    count, _, angle = values.get("angle", "").rpartition(" x ")
    if count:
        values = {**values, "angle": angle, "bends": count}
    values = with_equal(values)
    found = {key: values[key] for key in _OF_ARC if key in values}
    two = _two_of(values)
    if two and values.get("measured") in _MEASURED:
        found["corner" if values["measured"] == _MEASURED[0] else "legs"] = two
    elif found.get("fact") == "start" and "corner" not in found:
        found["fact"] = "setback"  # so far before the corner
    if "corner" not in found and "legs" in found and values.get("measured") == _MEASURED[0]:
        found["corner"] = found.pop("legs")
    return found


def _two_of(values: dict[str, str]) -> str:
    """Both legs, said together or one after the other, with what is between two bends; blank for none."""
    if "two" in values:
        first, _, last = values["two"].partition(", ")
        middle = values.get("middle", "")
        if middle and " " not in middle:
            middle = f"{middle} {first.rpartition(' ')[2]}"
        return ", ".join(filter(None, (first, middle, last)))
    return f"{values['first']}, {values['last']}" if {"first", "last"} <= values.keys() else ""


def _open_arc(values: dict[str, str], _data: Refdata) -> Open | None:
    """What two legs are measured to, where it was not said."""
    is_open = bool(_two_of(values)) and "measured" not in values
    return (("measured",), [{"measured": one} for one in _MEASURED]) if is_open else None


def arc_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """How much tube a bend takes up, with what is said of the tube as of any bend."""
    return Topic(
        lambda: answer_in("arc", "arc"),
        "length in a bend",
        {
            "radius": slots["radius"],
            "angle": (
                COUNTED_BENDS,
                *slots["angle"],
                amount("angle", after="angle", say="{}"),
                Shaped(
                    rf"(?:with |has |of )*(?P<c>2|3|4|two|three|four|(?:an? )?pair of|both) (?P<n>{NUMBER})"
                    rf" ?(?:s|{DEG})(?: bends?)?",
                    lambda m: f"{_COUNTED.get(m['c'], '2')} x {m['n']} deg",
                    "{}",
                    cue=("2 ", "3 ", "4 ", "pair of", "both"),
                ),
                Shaped(
                    r"(?P<c>2|3|4|(?:an? )?pair of) (?P<n>15|30|45|60|90|120)(?: bends?)|(?P<m>30|45|60|90)s",
                    lambda m: f"{_COUNTED.get(m['c'], '2')} x {m['n'] or m['m']} deg",
                    "{}",
                    cue=("2 ", "3 ", "4 ", "pair of", "0s", "5s"),
                ),
            ),
            "equal": EQUAL_READERS,
            "legs": LEG_READERS,
            "corner": CORNER_READERS,
            "two": TWO_READERS,
            "measured": _MEASURED_READERS,
            "middle": _MIDDLE_READERS,
            "first": (_FIRST,),
            "last": (_LAST,),
            "fact": _FACT_READERS,
            "od": (*OD_OF_TUBE, METRIC_OD),
            **{key: slots[key] for key in ("wall", "material", "method")},
        },
        r"(?:(?:going|goes|go|get|gets|bent|bending) )?round(?= (?:an? |the |my )?(?:[0-9]+|bend))|(?:stick|length)"
        r" (?:do|should) i (?:need|buy|start with|cut)|bend allowance|(?:tube|pipe|is|are|gets?) used"
        r"|(?:how )?(?:much|long)(?: (?:tube|tubing|pipe|material|stock|metal|length))?"
        r"|lengths?|bending|itself"
        r"|tubes?|tubing|pipe|material|stock|arc(?: length)?|bends?|elbows?|take up|takes? up|takes?|eat|eats|use"
        r"|uses|use[ds]? up|uses"
        r" up|die|just|developed"
        r"|exhaust|for|tangent(?: points?)?|corner|along the centre ?line|how far is it|straight|stick|stock"
        r"|cut length|(?:in )?between|saw off|cut|saw|hoop|eaten|(?:gets? )?eaten up"
        r"|goes? into"
        r"|go into"
        r"|disappears?"
        r"|swallow(?:s|ed)?|blank(?: length)?|straights|kick|corner|chalked|arms?|legs?|total|bent|u[- ]?shaped?"
        r"|top|(?:main |roll )?hoop|grab"
        r" handle|handle",
        needs=("radius", "angle"),
        asks_for=r"how much|how long|gain|arc|length|bend allowance|takes? up|eats?|eaten|uses?|used|cut|saw"
        r"|set ?back|marks?"
        r"|starts?|goes? into"
        r"|blank|swallow\w*|disappears?|tangents?|back from|how far|legs|arms|corners?",
        is_named=True,
        settle=_settle_arc,
        opens=_open_arc,
        unmoved="metal finish state form standard service quality",
    )
