"""What is asked of the shims of an axle, side bearings and pinion, as people say it."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.driveline.ask.common import answer_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.tables.load import Refdata

_UNIT = r"(?: ?(?P<unit>thou(?:sandths?)?|inch(?:es)?|in|\"|mm))?"
_THICK = rf"(?P<n>{NUMBER}){_UNIT}"


def _thick(match: re.Match[str]) -> str | None:
    """A thickness: in thousandths as shops say it, in millimetres, in inches; a bare decimal keeps the unit open."""
    number, unit = match["n"], match["unit"] or ""
    if unit.startswith("thou"):
        return f"{int(number) / 1000:.3f} in" if number.isdigit() else None
    if unit == "mm":
        return f"{number} mm"
    return f"{number} in" if unit else number if number.startswith((".", "0.")) else None


_MOST_THOU = 30  # of a backlash


def _span(match: re.Match[str]) -> str | None:
    """Two thicknesses that a backlash is to lie between: 0.13 to 0.18 mm, six to ten thou."""
    low, high, unit = match["low"], match["high"], match["unit"] or ""
    if unit.startswith("thou"):
        return f"{int(low) / 1000:.3f} to {int(high) / 1000:.3f} in" if low.isdigit() and high.isdigit() else None
    if not unit and low.isdigit() and high.isdigit() and int(low) < int(high) <= _MOST_THOU:
        return f"{int(low) / 1000:.3f} to {int(high) / 1000:.3f} in"  # a book of inches has thousandths
    if not unit and not low.startswith((".", "0.")):
        return None
    return f"{low} to {high}{f' {unit}' if unit == 'mm' else ' in' if unit else ''}"


def _in_thou(match: re.Match[str]) -> str | None:
    """As ``_span``; whole numbers are thousandths, as a book of inches has them."""
    low, high, unit = match["low"], match["high"], (match["unit"] or "").strip()
    if not unit and low.isdigit() and high.isdigit():
        unit = "thou"
    if unit == "thou":
        return f"{int(low) / 1000:.3f} to {int(high) / 1000:.3f} in" if low.isdigit() and high.isdigit() else None
    return f"{low} to {high} {unit or 'in'}"


def _in_one_unit(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The options with the unit of the others where one was said bare: a bare decimal beside millimetres is one too,
    unless it is so small that inches may be meant. What a book allows is wanted where nothing else was said.
    """
    book = values.get("book", "")
    values = {key: value for key, value in values.items() if key != "book"}
    if book:
        values.setdefault("wanted", book)
    unit = "mm" if any(value.endswith(" mm") for value in values.values()) else "in"
    least = _LEAST_MM if unit == "mm" else 0
    is_bare = {k for k, v in values.items() if k in _LENGTHS and _BARE.fullmatch(v) and float(v) >= least}
    return {k: f"{v} {unit}" if k in is_bare else v for k, v in values.items()}


def _open_span(values: dict[str, str], data: Refdata) -> Open | None:
    """Both ends of what the backlash is to be between."""
    wanted = values.get("wanted", "")
    if " to " not in wanted:
        return None
    low, _, rest = wanted.partition(" to ")
    high, _, unit = rest.partition(" ")
    ends = [f"{one} {unit}".strip() for one in (low, high)]
    return ("wanted",), [{"wanted": _in_one_unit({**values, "wanted": one}, data)["wanted"]} for one in ends]


def _length(before: str, say: str, after: str = "") -> tuple[Reader, ...]:
    """A thickness with the words that mark it before it, or behind it."""
    found = [Shaped(rf"(?:{before}) {_THICK}", _thick, say)]
    return (*found, Shaped(rf"{_THICK} (?:{after})", _thick, say)) if after else tuple(found)


def _mark(whose: str, say: str) -> tuple[Reader, ...]:
    """The mark on a pinion: a whole number with its sign."""
    words = (
        rf"(?:{whose})(?: (?:pinion|gear|head|one|mark|marked|etched|stamped|is|was|has|had|with|says|reads|at|of))*"
    )
    where = r"(?: (?:etched|stamped|marked|written|scribed|on|in|the|its|head|face|end|gear)(?! (?:of|shim)))*"
    return (Shaped(rf"{words} (?P<n>[+-]?[0-9]{{1,2}}){where}(?! ?(?:thou|in|mm|inch)\b)", lambda m: m["n"], say),)


_LENGTHS = ("backlash", "wanted", "move", "ring_side", "other_side", "preload", "shim")
_LEAST_MM = 0.03
_BARE = re.compile(r"0?\.[0-9]+", re.ASCII)
_WANTED = (
    r"(?:(?:i'?m |i am )?(?:after|aim\w* for)|wanting|supposed to be)(?: (?:about|around|roughly))?"
    r"|(?:i )?want(?:ed|s)?(?: it)?(?: (?:at|to be))?|should be|needs? to be|needs?|to get|target(?: of| is)?"
    r"|(?:the )?(?:maker|book|manual|sheet)(?: (?:says|wants|is))?|(?:new )?spec(?: is)?"
    r"|(?:to )?(?:land|end up|finish|sit|come out)(?: (?:at|on|with))+|(?:down|back|up) to"
)
_IS = (
    r"(?: (?:is|was|of|now|reads?|reading|measured|measures|at|pack|shims?|came (?:out|up)(?: (?:at|to))?"
    r"|comes (?:out|up)(?: at)?|out))*"
)
_TIGHT = r"(?: (?:is|was|are|too|a bit|way|tight|loose|wide|big|small))*"
_LASH = r"(?:of )?(?:back[- ]?)?lash"
# What the clock shows that stands on a tooth of the ring gear.
_CLOCK = (
    r"(?:the |my )?(?:clock|dial(?: gauge| indicator| clock)?|indicator|dti) on (?:the |a )?(?:ring|crown)"
    r"(?: wheel| gear)?(?:'?s)?(?: (?:tooth|teeth|gear|wheel))? (?:gives?|shows?|reads?|says?|showed|gave)"
    r"(?: (?:about|me|only|still))*"
)
SHIMS = Topic(
    lambda: answer_of("shims.answer", "shims"),
    "shims",
    {
        "backlash": (
            *_length(f"{_LASH}{_TIGHT}{_IS}", "backlash {}", _LASH),
            Shaped(  # what was measured, beside what is wanted
                rf"(?:i (?:get|got|measured?|read|have|had)|i'?m (?:getting|reading)|mine(?:'?s| is)?|getting|it(?:'s"
                rf"| is)? (?:reads?|shows?|at)"
                rf"|(?:dial|clock|gauge) (?:says?|reads?|shows?))(?: (?:about|only|around))* {_THICK}",
                _thick,
                "backlash {}",
                doubt=1,
                cue=("mine", " get", "got", "measure", "read", "have", "had", "show", "say", " at"),
            ),
            amount("length", before=_CLOCK, say="backlash {}", cue=("clock", "dial", "indicator")),
        ),
        "wanted": (
            Shaped(
                rf"(?:{_WANTED})(?: (?:is|between|from))* (?P<low>{NUMBER})(?: (?:in|mm))?(?: ?(?:to|-|and)"
                rf" ?)(?P<high>{NUMBER}){_UNIT}",
                _span,
                "wanted {}",
                cue=("to", "and", "-"),
            ),
            *_length(_WANTED, "wanted {}", "wanted"),
            Shaped(
                r"(?:(?:i )?(?:want|need)(?:s|ed)?(?: it)?(?: (?:at|to be|about))*|(?:i'?m |i am )?(?:after"
                r"|aim\w* for)(?: about| around)?|(?:the |my )*(?:book|manual|sheet|spec|maker) (?:says|wants|is"
                r"|gives)|(?:to )?(?:land|finish|end up|settle) (?:on|at))"
                r" (?P<n>[0-9]{1,2})(?= |$)"
                r"(?! ?(?:mm|in|inch|thou|deg\w*|x|(?:to|and|or|-) [0-9])\b)(?! to [0-9])",
                lambda m: f"{int(m['n']) / 1000:g} in",
                "wanted {}",
                doubt=1,
            ),
        ),
        "book": (  # what the book allows, beside the one that is wanted
            Shaped(
                r"(?:where )?(?:the |my |its )*(?:book|maker|manual|sheet|factory) (?:wants|says|asks(?: for)?|gives)"
                rf" (?P<low>{NUMBER})(?: ?(?:to|-|and) ?)(?P<high>{NUMBER})(?P<unit> ?(?:thou|in|mm))?",
                _in_thou,
                "book {}",
                cue=("book", "maker", "manual", "sheet", "factory"),
                doubt=1,
            ),
            Shaped(
                r"(?:(?:the |my |its )*(?:book|spec|maker'?s?|manual|sheet|factory)(?:'s)? )?(?:range|spec|limits?"
                r"|window"
                rf"|tolerance)(?: (?:for|it|is|of|between|from|on|says))* (?P<low>{NUMBER})(?: ?(?:to|-|and) ?)"
                rf"(?P<high>{NUMBER})(?P<unit> ?(?:thou|in|mm))?",
                _in_thou,
                "book {}",
                cue=("range", "spec", "limit", "window", "tolerance"),
            ),
        ),
        "per_shim": (
            Shaped(
                rf"(?P<n>{NUMBER}) (?:per|a|for each|for every|each) (?:shim|thou)", lambda m: m["n"], "{} per shim"
            ),
            Shaped(
                rf"(?:per|each|every) (?:thou of )?shim(?: (?:moves(?: it)?|is|of))* (?P<n>{NUMBER})",
                lambda m: m["n"],
                "{} per shim",
            ),
        ),
        "move": (
            *_length(
                r"(?:shim )?change(?: of)?|(?:mov(?:e|ed|ing)|shift(?:ed|ing)?|swapp?(?:ed|ing)?|slide|slid)(?: an?)?"
                r"(?: (?:the )?(?:carrier|diff(?:erential)?|shims?))?(?: (?:over|across|by|of))*",
                "move {}",
            ),
            Shaped(rf"{_THICK} shim change", _thick, "move {}", doubt=2, cue=("change",)),
        ),
        "fact": (
            Shaped(
                r"(?:what does |how much (?:does |will |do )?|what happens to )(?:that |it )?(?:the )?(?:"
                r"(?:change|alter|move"
                r"|do to|affect) (?:the )?)?backlash"
                r"(?: (?:change|alter|move|shift|differ|go)s?(?: by)?)?"
                r"|backlash (?:change|alter|move)s?(?: by)? (?:how much|what)|(?:change|difference) (?:in|of)"
                r" backlash",
                always("backlash"),
                "what the backlash changes by",
                cue=("backlash",),
            ),
        ),
        "ring_side": _length(rf"(?:from |on |the )*ring(?: gear)?(?:'s)?(?: side)?{_IS}", "ring side {}"),
        "other_side": _length(rf"(?:to |on |the )*(?:other|opposite|far|pinion) side{_IS}", "other side {}"),
        "preload": _length(r"preload(?: shims?)?(?: (?:of|is|each side))*", "preload shim {}", "preload shims?"),
        "shim": _length(
            rf"(?:pinion |depth |old )*shims?(?: (?:in|there))*{_IS}",
            "pinion shim {}",
            "(?:of )?(?:pinion |depth )*shims?(?: (?:under|behind|beneath) (?:(?:the |its )?(?:head|pinion)|it))?",
        ),
        "old_mark": (
            *_mark("old|mark(?:ed)? was|was|came out", "old mark {}"),
            Shaped(  # before the new one
                r"pinion(?: (?:is|was|marked|says|reads|head))* (?P<n>[+-][0-9]{1,2})(?=,? (?:and )?(?:the )?new )",
                lambda m: m["n"],
                "old mark {}",
                cue=("pinion",),
            ),
        ),
        "new_mark": _mark(
            "new|now|goes in|mark(?:ed)? is|(?:pinion )?head (?:is|says|reads|has)"
            "|(?:new )?pinion is|pinion(?=(?: is)? (?:marked|stamped"
            "|etched))",
            "new mark {}",
        ),
        "sign": (
            Shaped(r"plus (?:adds|means (?:more|thicker)|is thicker)", always("plus adds"), "plus adds"),
            Shaped(
                r"plus (?:takes off|takes away|means (?:less|thinner)|is thinner)",
                always("plus takes off"),
                "plus takes off",
            ),
        ),
    },
    r"(?:(?:the |contact )*pattern(?: (?:is|looks?|looked|seems?))? )(?:alright|all right|good|fine|ok|okay|right"
    r"|perfect)"
    r"|pinion (?:is )?(?:staying(?: put)?|stays(?: put)?|isn't moving|is not moving|not moving|isnt moving)"
    r"|(?:all (?:the way )?)?(?:round|around)(?: the crown ?wheel)?|gauge|dial gauge|swap|lash|(?:starts? "
    r"|start off )with"
    r"|etched|behind it|carrier over|thick|(?:which |what )(?:thickness |size )?shim"
    r"|shims?|shimming|(?:shift|slide|move)(?: the)? carrier|carrier|side bearings?|diff(?:erential)?|pinion(?:"
    r" depth)?"
    r"|depth|axle|backlash|which(?: shims?)?"
    r"|which way(?: (?:do|should) (?:i|we|they|the shims))?(?: (?:move|go|shift))?|way"
    r"|(?:shim )?change|(?:goes |moves )?from (?:which|what) side to (?:which|what)(?: side)?|start with"
    r"|thickness|had"
    r"|from (?:one )?side to (?:the other(?: side)?|side)|from the left to the right|by|to the other side"
    r"|(?:to )?mov(?:e|ing)|packs?|rear(?: end)?|ring(?: gear)?|crown ?wheel|across|over|far|shows?|set(?:ting)?(?:"
    r" up)?|(?:the )?dial(?: says| reads)?|says|reads|nearer|closer"
    r"|(?:nearer|closer)(?: to)?(?: the)? pinion(?: or further(?: off| away| out)?)?|bring",
    opens=_open_span,
    settle=_in_one_unit,
    table="shims",
    asks_for=r"shim(?:s|ming)?|backlash.*\b(?:wants?|needs?)\b.* [0-9]"
    r"|(?:shift|slide|mov(?:e|ed|ing))(?: the)? (?:carrier|diff)|backlash changes?"
    r"|change.* backlash|(?:back)?lash\b.*\b(?:book|maker|manual|sheet|spec)\b.* [0-9]"
    r"|(?:back)?lash\b.* how much (?:to|do i|should i)"
    r" (?:move|shift)",
    is_named=True,
    unmoved="metal finish standard service quality",
)
