"""What is asked about a bend that is made: how much tube it takes, and how far to pull it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.tubes.said import DEG, answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata


def _legs(match: re.Match[str]) -> str:
    """The straights beside a bend: one, or two alike."""
    unit = "mm" if match["unit"] == "mm" else "in"
    leg = f"{match['n']} {unit}"
    return f"{leg}, {leg}" if match["both"] or match["each"] else leg


_OF_ARC = ("radius", "angle", "legs", "corner", "fact")
_TO_CORNER = (
    r"(?:(?:measured|taken|each|both|up|out|out to|all|long) )*to (?:the |where the )?(?:cent(?:re|er) ?lines? )?"
    r"(?:corner|apex|intersection|cent(?:re|er) ?line of the (?:other|second"
    r"|next) (?:leg|side|straight|tube|run))"
)
_UNIT = r"(?: ?(?P<unit>in|inch(?:es)?|mm|\"))?"


def _corner(match: re.Match[str]) -> str:
    """The legs of a bend to its corner: one, or two; a large number without a unit is millimetres."""
    said = match.groupdict()
    unit = said["unit"] or ("mm" if all(n.isdigit() for n in (said["n"], said.get("m") or "0")) else "in")
    unit = "mm" if unit == "mm" and (said["unit"] or int(said["n"]) > _MOST_INCHES) else "in"
    legs = [said["n"], *([said["m"]] if said.get("m") else [])]
    return ", ".join(f"{leg} {unit}" for leg in legs)


_MOST_INCHES = 60  # of a leg without a unit: more is millimetres


_LEG_READERS = (
    Shaped(
        rf"(?:(?:with |want |and )*(?P<both>two|2|both) )?(?:straight )?(?:legs?|straights?|sides?|ends?"
        rf"|arms?)"
        rf"(?: (?:of|at|are|is|each|both|to be))* (?P<n>{NUMBER}) ?(?P<unit>in|inch(?:es)?|mm|\")"
        r"(?: (?P<each>each(?: (?:side|end|way))?|both(?: sides| ends)?|long|either side|apiece))*"
        r"(?: to where the bend starts)?",
        _legs,
        "legs {}",
        cue=("leg", "straight", "side", "arm"),
    ),
    Shaped(
        rf"(?P<both>)(?P<n>{NUMBER}) ?(?P<unit>in|inch(?:es)?|mm|\") (?:of )?(?:straight )?(?:legs?"
        rf"|straights?|tube)?(?: on| at)?"
        r" ?(?P<each>each (?:side|end|way)|(?:both|either) (?:sides?|ends?)|each)"
        r"(?: (?:measured )?(?:up )?to where the bend starts)?",
        _legs,
        "legs {}",
        cue=("each", "both", "either"),
    ),
)
_TWO_READERS = (
    Shaped(
        rf"(?:(?:with|of|straight|hoop) )*(?:legs?|sides?|arms?|straights?)(?: (?:of|at|are|is))* (?P<n>{NUMBER})"
        rf"(?: ?(?:in|inch(?:es)?|mm|\"))?(?: one (?:side|end|way))? (?:and|by|x) (?P<m>{NUMBER}){_UNIT}"
        r"(?: (?:the |on the )?other(?: (?:side|end|way))?)?",
        _corner,
        "legs {}",
        cue=("leg", "side", "arm", "straight"),
    ),
    Shaped(
        rf"(?P<n>{NUMBER})(?P<m>){_UNIT} (?:straight )?legs",
        lambda m: f"{_corner(m)}, {_corner(m)}",
        "legs {} each",
        cue=("legs",),
    ),
)
_CORNER_READERS = (
    Shaped(
        rf"(?:(?:with|of|straight) )*(?:legs?|sides?|arms?|ends?|straights?)(?: (?:of|at|are|is))*"
        rf" (?P<n>{NUMBER})(?:(?: ?(?:in|inch(?:es)?|mm|\"))? (?:and|by|x) (?P<m>{NUMBER}))?{_UNIT}"
        rf" {_TO_CORNER}",
        _corner,
        "legs to the corner {}",
        cue=("corner", "apex", "inter", "line"),
    ),
    Shaped(
        rf"(?P<n>{NUMBER}){_UNIT} (?:(?:leg|side|straight) )?(?:from (?:the |an? )?(?:one )?ends?"
        rf"(?: of (?:the |my )?(?:tube|pipe|stick|stock))? )?{_TO_CORNER}",
        _corner,
        "leg to the corner {}",
        cue=("corner", "apex", "inter", "line"),
    ),
)
_FACT_READERS = (
    Shaped(r"(?:what(?:s| is)? )?(?:the )?set ?back", always("setback"), "its setback"),
    Shaped(
        r"(?:where|how far)(?: (?:do|does|is|from the end|in|should|would|i|we|you|it|the|my|go|goes|put|make|"
        r"scribe|to|bend|first))* (?:start(?:s|ing)?(?: mark)?|marks?)(?: (?:go|goes|at|it|start|sit))*",
        always("start"),
        "where it starts",
    ),
    Shaped(r"start(?:ing)? marks?", always("start"), "where it starts"),
)


_MEASURED = ("to the corner of the centre lines", "to where the bend starts")


def _settle_arc(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The bend of whatever tube; two legs are to the corner or to where it starts, as one of the two has it."""
    found = {key: values[key] for key in _OF_ARC if key in values}
    if "two" in values and values.get("measured") in _MEASURED:
        found["corner" if values["measured"] == _MEASURED[0] else "legs"] = values["two"]
    return found


def arc_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """How much tube a bend takes up, with what is said of the tube as of any bend."""
    return Topic(
        lambda: answer_in("arc", "arc"),
        "length in a bend",
        {
            "radius": slots["radius"],
            "angle": (*slots["angle"], amount("angle", after="angle", say="{}")),
            "legs": _LEG_READERS,
            "corner": _CORNER_READERS,
            "two": _TWO_READERS,
            "fact": _FACT_READERS,
            **{key: slots[key] for key in ("od", "wall", "material", "method")},
        },
        r"(?:how )?(?:much|long)(?: (?:tube|tubing|pipe|material|stock|metal|length))?|lengths?|bending|itself"
        r"|tubes?|tubing|pipe|material|stock|arc(?: length)?|bends?|elbows?|take up|takes? up|takes?|eat|eats|use"
        r"|uses|use[ds]? up|uses"
        r" up|die|just|developed"
        r"|exhaust|for|tangent(?: points?)?|corner|along the centre ?line|how far is it|straight|stick|stock"
        r"|cut length|(?:in )?between|saw off|cut|saw|hoop",
        needs=("radius", "angle"),
        asks_for=r"how much|how long|arc|length|takes? up|eats?|uses?|cut|saw|set ?back|marks?|starts?",
        is_named=True,
        settle=_settle_arc,
        opens=lambda values, _: (("measured",), [{"measured": one} for one in _MEASURED]) if "two" in values else None,
        unmoved="metal finish state form standard service quality",
    )


def _pulled(match: re.Match[str]) -> str | None:
    """What a bend was pulled to, and what it came to: ``springs back 3`` is by so much, ``to 87`` is what is left."""
    put, got = float(units.parse_number(match["set"])), float(units.parse_number(match["got"]))
    if got < put / 2:
        got = put - got
    return f"{match['set']} deg set, {got:g} deg got" if 0 < got <= put else None


_LETS_GO = (
    r"springs?|sprung|sprang|springing|relax(?:es|ed)?|comes?|came|opens?|opened|ends?|ended|measures?|measured|goes"
    r"|went|gives?|gave|drops?|dropped|unwinds?|unwound|settles?|settled|falls?|fell|reads?|is|its|it's|was|got|kept"
    r"|leaves"
)
# What stands between the pull and what became of it; any other word is read for itself.
_BETWEEN = (
    r"on|in|with|it|this|that|mine|then|and|but|the|a|an|my|bender|machine|die|former|dial|pointer|tube|tubing|pipe"
    r"|piece"
    r"|test|trial|bend|sample|bit|one|first|lever|arm|when|once|after|i|we|let|l[e]ts|l[e]tting|go|goes|off|of|up|back"
    r"|release|released|only|just|always|usually|at|which|same"
)
_WANTED_BEND = (
    r"(?:for|to get|get|want|wants|wanted|need|needs|finish(?:es|ed)?|ends? up|winds? up|land|lands|true|dead"
    r"|final|actual)"
    r"(?: (?:it|to|an?|be|me|at|finish|finished|up|true|dead|actual|real|get|end|with|square|bend|of|come|out|the|on"
    r"|at|exactly|bang))*"
)


def _settle_overbend(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """One stock and one die; the test bend is of the angle that is wanted, where no other is said."""
    tested = values.get("test", "")
    angle = values.get("angle") or tested.partition(" set")[0]
    return {key: value for key, value in (("angle", angle), ("test", tested)) if value}


def overbend_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """How far to pull a bend that springs back."""
    return Topic(
        lambda: answer_in("overbend", "overbend"),
        "overbend",
        {
            "test": (
                *slots["test"],
                Shaped(
                    r"(?:(?:when |if )?(?:i |we )?(?:pull(?:ed|ing)?|bent|set|wound|took|take|bending|go|went)"
                    r"(?: (?:it|this|that|mine|round|over|to|at|past|on|the|die|bender|an?|my|me|tube|pipe|test|bit"
                    r"|piece|sample"
                    r"|first|one))* )?"
                    rf"(?P<set>{NUMBER}) ?(?:{DEG})?(?: (?:{_BETWEEN}))* (?:{_LETS_GO})"
                    rf"(?: (?:back|out|up|open|to|at|as|about|only|around|down|be|just|off|by|it|me|roughly|an?))*"
                    rf" (?P<got>{NUMBER}) ?(?:{DEG})?",
                    _pulled,
                    "test bend {}",
                    cue=("pull", "bent", "spr", "relax", "out", "back", "open", "set", "let"),
                ),
            ),
            "angle": (
                Shaped(
                    rf"over-?bend(?: to| for| an?)? (?P<n>{NUMBER}) ?(?:{DEG})?", lambda m: f"{m['n']} deg", "to get {}"
                ),
                Shaped(
                    rf"{_WANTED_BEND} (?P<n>{NUMBER}) ?(?:{DEG})?(?: bends?)?", lambda m: f"{m['n']} deg", "to get {}"
                ),
                Shaped(
                    rf"(?P<n>{NUMBER}) ?(?:{DEG})? (?:finished|wanted|true|final)",
                    lambda m: f"{m['n']} deg",
                    "to get {}",
                ),
            ),
            **{key: slots[key] for key in ("od", "wall", "material", "method", "radius")},
        },
        r"(?:how (?:much|far) )?over|test (?:bit|piece|bend)|dial|(?:over-?|over )?(?:bend|bends|bending|pull|pulled"
        r"|pulling)|spring(?:s"
        r"|ing)?(?: ?back)?|sprang|sprung"
        r"|pointer|stop"
        r"|tubes?|tubing|pipe|bender|die|set|go|wind|take|round|finish|relax(?:es)?|let'?s? go|true|how far|bent"
        r"|degrees?|it"
        r"|where (?:do|should) i stop",
        needs=("test",),
        joined=("material",),
        asks_for=(
            r"spring\w*|sprang|sprung|relax\w*|lets? (?:it )?go|let'?s go|test (?:bit|piece|bend)|over-?bend|overbent"
            r"|over bend|pull\w*|pointer|opens|comes out"
            r"|came out|set [0-9]+ and got"
        ),
        is_named=True,
        settle=_settle_overbend,
        unmoved="metal finish state form standard service quality",
    )
