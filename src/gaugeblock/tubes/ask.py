"""What is asked about a tube, its wall, its bend or its flare, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known
from gaugeblock.errors import InputError
from gaugeblock.tubes import (
    beam_ask,
    bend_ask,
    box_ask,
    burst_ask,
    corner_ask,
    flare_ask,
    line_bend_ask,
    mitre_ask,
    shape_ask,
    sheet_ask,
)
from gaugeblock.tubes.folded.ask import topic as folded_topic
from gaugeblock.tubes.gauge_ask import GAUGE
from gaugeblock.tubes.material_ask import MATERIAL, STOCK_COLUMNS, stocks_of
from gaugeblock.tubes.overbend_ask import overbend_of
from gaugeblock.tubes.pipe_ask import PIPE
from gaugeblock.tubes.said import DEG, LOOKS_THIN, answer_in, is_without_metal
from gaugeblock.tubes.sizes_ask import (
    EVERY_WALL,
    IN,
    MILD,
    OD,
    RADIUS,
    STOCK,
    WALLS,
    in_diameters,
)

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.tables.load import Refdata


_OWN: dict[str, tuple[Reader, ...]] = {
    "yield_strength": known("stress", "yields?(?: stress)?", "yield strength {}", cue=("yield",)),
    "tensile_strength": known("stress", "tensile|uts|ultimate", "tensile strength {}", cue=("tensile", "uts", "ultim")),
    "modulus": known("stress", "modulus(?: of elasticity)?|young'?s modulus", "modulus {}", cue=("modul",)),
}
_TEST = (
    rf"(?:with )?(?:an? |the )*test (?:bends?|piece)(?: (?:of|was|is|went|set|bent|at|to))* (?P<set>{NUMBER})"
    rf" ?(?:{DEG})?"
)


# The metals of a shop's tube, where none was named.
_USUAL = ("1020 DOM", "1020 ERW", "4130", "304 stainless")


def _settle_bend(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """A radius as a length; of the outer wall alone neither metal nor bender need be said."""
    values = in_diameters(values)
    if not _is_of_the_wall(values):
        return values
    if is_without_metal(values.get("material", ""), data):
        values = {**values, "material": "steel"}
    return {"method": _ANY_METHOD, "fact": "outer wall", **values}


_ANY_METHOD = "rotary draw"


def _is_of_the_wall(values: dict[str, str]) -> bool:
    """Whether what the bend leaves of the wall is asked, which hangs on no metal and on no bender."""
    return values.get("fact") == "outer wall" or bool(values.get("least_wall"))


def _open_bend(values: dict[str, str], data: Refdata) -> Open | None:
    """The ways to bend, and a shop's usual metals where none was named; on a die that is there it is one way."""
    typed = values.get("material", "")
    if typed == "brake line" and "radius" not in values:
        why = "it is bent by hand, and on no die of a tube"
        raise InputError(typed, "bend", why, (), "say what you want of it: its bend radius, its burst or its flare")
    if _is_of_the_wall(values):
        return None  # geometry, whatever the metal and the bender
    methods = [] if "method" in values else ["rotary draw", "mandrel", "press"]
    if not is_without_metal(typed, data):
        return (("method",), [{"method": m} for m in methods]) if methods else None
    if "radius" in values:
        methods = methods[:1]
    open_keys = ("material", "method") if methods else ("material",)
    rows = [(metal, m) for metal in _USUAL for m in methods or [""]]
    return open_keys, [dict(zip(open_keys, row, strict=False)) for row in rows]


BEND = Topic(
    lambda: answer_in("bend.sheet", "bend"),
    "bend",
    {
        "od": OD,
        "wall": EVERY_WALL,
        "material": (STOCK, MILD),
        "method": (
            Named(words_of("tubes", "method", "tubes/bend_minimums")),
            Shaped(r"(?:bending )?(?:die|former)", always("rotary draw")),
        ),
        "radius": RADIUS,
        "angle": (
            amount("angle", after="bends?", say="{} bend"),
            amount("angle", say="{}"),
            Shaped(rf"angle(?: of| is)? (?P<n>{NUMBER})(?! ?(?:in|inch|mm|\"))", lambda m: f"{m['n']} deg"),
            Shaped(r"(?:an? )?(?P<n>30|45|60|90|120|180)(?: bend)?", lambda m: f"{m['n']} deg", "{} bend", doubt=1),
        ),
        "service": (
            Named(words_of("tubes", "service"), lead="for|in|on|for an?|for the"),
            Named(words_of("tubes", "service")),
        ),
        "least_wall": (
            Shaped(
                rf"(?:rules? )?(?:wants?|needs?|asks?(?: for)?|requires?|required|calls? for|says?|minimum|min"
                rf"|at least)"
                rf"(?: (?:an?|of|is|at least))* (?P<n>0?\.[0-9]+|{NUMBER}(?= ?mm))(?:{IN}| ?(?P<mm>mm))?(?:"
                rf" (?:min(?:imum)?"
                r"|wall|left|or more))* (?:after|at the outside of|in) (?:the )?(?:bending|bend|it is bent)",
                lambda m: f"{m['n']} {'mm' if m['mm'] else 'in'}",
                "at least {} after bending",
                cue=("after", "outside of", " in "),
            ),
        ),
        "fact": (
            Shaped(
                r"(?:(?:how (?:much|thin|far|thick)|what|does|will|the) (?:(?:will|does|is|the|wall|a|do|it|be"
                r"|gets?|go) )*)?"
                r"(?:wall )?(?:thin(?:s|ned|ner)?(?: out)?|thinnest)(?: of)?(?: the)?(?: wall)?|(?:outer"
                r"|outside) wall(?: left)?"
                r"|wall (?:after|at the outside of) (?:the )?bend(?:ing)?"
                r"|(?:what(?:'?s| is)|how much(?: is| of)*) (?:the wall )?left(?: (?:of|on|at|in))*(?: the)?(?: wall)?"
                r"(?: (?:(?:on|at|round)(?: the)? )?outside)?(?: of(?: the)?(?: bend)?)?"
                r"|(?:what |how much )?wall (?:is |will be )?left(?: (?:(?:on|at|round) )?(?:the )?outside)?"
                r"|(?:how )?(?:thin|thick) (?:will|does|is"
                r"|the)(?: (?:the|wall"
                r"|outside|back|heel|of|a|bend|get|be|at))*",
                always("outer wall"),
                "its outer wall",
                cue=(
                    "thin",
                    "wall after",
                    "wall at the",
                    "outer wall",
                    "outside wall",
                    "wall left",
                    "wall is left",
                    "wall will be left",
                    " left",
                    "thick",
                ),
            ),
        ),
        **_OWN,
        "test": (
            Shaped(
                rf"{_TEST}(?: (?:set|and|got|gave|came|sprang|springs?|back|to|for|kept|left|at))* (?P<got>{NUMBER})"
                rf" ?(?:{DEG})?(?: (?:got|kept|left|after))?",
                lambda m: f"{m['set']} deg set, {m['got']} deg got",
                "test bend {}",
                cue=("test",),
            ),
        ),
    },
    r"(?:(?:will|would|can) (?:it|this|that) )?(?:go|goes|going|come|comes|pull|bend|wrap) (?:round|around)"
    r"|(?:bend )?radius|plain bender|flatten|too tight|hard ?lines?|clr|(?:can i |will (?:it )?|does (?:it )?"
    r"|how tight can i"
    r" )?(?:bends?|bending|bent|bendable)|tubes?|tubing|take|kinks?|how tight|tightest|min(?:imum)?(?: bend)?"
    r" (?:radius|clr)|(?:smallest|tightest|least)(?: bend)?(?: radius| clr)?|minimum|min|od|x|die|bender"
    r"|exhaust|(?:fuel |brake"
    r" |hard )?lines?|(?:main |roll )?hoop|rules|shoe|cent(?:re|er)[ -]?line|(?:the )?(?:back|outside|heel|outer side)"
    r" of (?:the |a |my )?bend|after bending|(?:small|big|large|other) (?:die|former|shoe)"
    rf"|{LOOKS_THIN}|(?:bent )?cold(?! (?:drawn|rolled|work\w*|form\w*|finish\w*|steel|reduced))",
    needs=("od", "wall"),
    settle=_settle_bend,
    opens=_open_bend,
    joined=("material",),
    columns={"material": ("tubes/materials", "family"), **STOCK_COLUMNS},
)


ARC, OVERBEND = bend_ask.arc_of(BEND.slots), overbend_of(BEND.slots)
OFFSET, COPE = shape_ask.offset_of(BEND.slots), shape_ask.cope_of(EVERY_WALL)


def _settle_section(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """``tube`` alone names no metal, and says no more of a section."""
    return {k: v for k, v in values.items() if k != "material" or not is_without_metal(v, data)}


def _open_section(values: dict[str, str], data: Refdata) -> Open | None:
    """A shop's steels, where the mass is asked of a tube whose metal was not named."""
    if values.get("fact") != "mass" or not is_without_metal(values.get("material", ""), data):
        return None
    return ("material",), [{"material": metal} for metal in ("1020 DOM", "4130")]


SECTION = Topic(
    lambda: answer_in("section", "section"),
    "tube section",
    {
        "od": OD,
        "wall": EVERY_WALL,
        "material": (STOCK, MILD),
        "length": (
            amount("length", after=rf"long|of it|piece|stick|length|of(?= {NUMBER})", say="{} long"),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:ft|feet|foot|')", lambda m: f"{m['n']} ft", "{} long"),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:m|met(?:re|er)s?)", lambda m: f"{m['n']} m", "{} long"),
        ),
        "fact": (
            Shaped(
                r"(?:how )?(?:much )?(?:does )?(?:it |an? )?(?:weigh(?:t|s|ing)?|mass|heavy)",
                always("mass"),
                "its mass",
            ),
            Shaped(
                r"(?:how many )?(?:lbs?|pounds?|kgs?|kilos?|kilograms?) (?:per|an?|each) (?:foot|ft|met(?:re|er)|m)",
                always("mass"),
                "its mass",
            ),
            Shaped(
                r"(?:in )?(?:lbs?|pounds?|kgs?)/(?:ft|foot|m)|(?:weight|mass) (?:of )?(?:(?:an?"
                r"|one) )?(?:foot|met(?:re|er))",
                always("mass"),
                "its mass",
                cue=("/", "weight", "mass"),
            ),
            Shaped(
                r"(?:go(?:es)?|runs?|comes? (?:to|in at|out at)) (?:per|an?|each) (?:foot|ft|met(?:re|er)|m)",
                always("mass"),
                "its mass",
                cue=("foot", " ft", "metre", "meter", " m"),
            ),
            Shaped(
                r"(?:(?:what|how much) )?(?:weight )?(?:would|do|will|could|can|should) (?:i|we) save"
                r"|saved?(?: (?:in|on) weight)?",
                always("mass"),
                "its mass",
                cue=("sav",),
            ),
            Shaped(
                r"(?:per|an?|each) (?:foot|ft|met(?:re|er))",
                always("mass"),
                "its mass",
                doubt=1,
                cue=("foot", " ft", "met"),
            ),
            Shaped(
                r"(?:(?:kgs?|kilos?|kilograms?|lbs?|pounds?)(?: (?:in (?:all|total)|total|all up))?)|(?:heavier"
                r"|lighter)",
                always("mass"),
                "its mass",
                doubt=1,
            ),
            Shaped(r"second moment(?: of area)?|moment of inertia", always("second moment")),
            Shaped(r"(?:how )?stiff\w*", always("second moment"), "how stiff it is: its second moment"),
            Shaped(r"(?:how )?strong\w*|strength", always("section modulus"), "its section modulus"),
            Shaped(r"(?:cross[- ]?section(?:al)? )?area", always("area"), "its area"),
        ),
        "torque": (
            amount("torque", before="(?:twisted|under)(?: by| with| at)?", say="{}"),
            amount("torque", say="{}"),
        ),
        **_OWN,
        "shear_modulus": known(
            "stress",
            "(?:shear|torsion(?:al)?|rigidity) modulus|modulus of rigidity",
            "shear modulus {}",
            cue=("modul",),
        ),
    },
    r"round|count|(?:for )?(?:an? |the )?cage|(?:tube )?section(?: modulus| properties)?|second moment(?: of"
    r" area)?|moment of inertia|how heavy"
    r"|(?:how much )?(?:does )?(?:it |an? )?(?:weigh(?:t|s|ing)?|mass|heavy)|twist(?:ed|s)?|tubes?|tubing|(?:cross"
    r" )?section|area"
    r"|modulus|pipe|piece|x",
    needs=("od", "wall"),
    settle=_settle_section,
    opens=_open_section,
    joined=("material",),
    columns={"material": stocks_of, **STOCK_COLUMNS},
    asks_for=(
        r"section|second moment|inertia|weigh\w*|mass|heav\w+|lighter|twist\w*|stiff\w*|strong\w*|area|kgs?|kilos?"
        r"|kilograms?|lbs|pounds|save|saving|(?:per|an?) (?:foot|ft|m|met(?:re"
        r"|er))"
        r"|lbs?/ft|kg/m"
    ),
    is_named=True,
    unmoved="finish state standard service quality",
)
BURST = burst_ask.burst_of(SECTION.slots)
BEAM = beam_ask.beam_of(SECTION.slots, _settle_section)
BOX = box_ask.topic(SECTION)
BOX_BEAM = beam_ask.box_beam_of(BOX, BEAM)
FLARE = flare_ask.topic(OD, WALLS)
SHEET = sheet_ask.topic(lambda: answer_in("sheet_metal", "sheet"), STOCK)
SHEET_BEND = folded_topic(STOCK)
MITRE, CORNER = mitre_ask.mitre_of(BEND.slots), corner_ask.corner_of(BOX.slots)
TOPICS = (
    MITRE,
    CORNER,
    line_bend_ask.topic(),
    line_bend_ask.nickel_topic(),
    BEND,
    BURST,
    ARC,
    OVERBEND,
    OFFSET,
    COPE,
    GAUGE,
    PIPE,
    MATERIAL,
    SECTION,
    BEAM,
    BOX,
    BOX_BEAM,
    FLARE,
    flare_ask.PORT,
    flare_ask.ANGLE,
    SHEET,
    SHEET_BEND,
)
