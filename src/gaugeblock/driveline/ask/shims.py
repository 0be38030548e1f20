"""What is asked of the shims of an axle, side bearings and pinion, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always
from gaugeblock.driveline.ask.common import answer_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Reader

_UNIT = r"(?: ?(?P<unit>thou(?:sandths?)?|inch(?:es)?|in|\"|mm))?"
_THICK = rf"(?P<n>{NUMBER}){_UNIT}"


def _thick(match: re.Match[str]) -> str | None:
    """A thickness: in thousandths as shops say it, in millimetres, else in inches where it is a decimal of one."""
    number, unit = match["n"], match["unit"] or ""
    if unit.startswith("thou"):
        return f"{int(number) / 1000:.3f} in" if number.isdigit() else None
    if unit == "mm":
        return f"{number} mm"
    return f"{number} in" if unit or number.startswith((".", "0.")) else None


def _length(before: str, say: str, after: str = "") -> tuple[Reader, ...]:
    """A thickness with the words that mark it before it, or behind it."""
    found = [Shaped(rf"(?:{before}) {_THICK}", _thick, say)]
    return (*found, Shaped(rf"{_THICK} (?:{after})", _thick, say)) if after else tuple(found)


def _mark(whose: str, say: str) -> tuple[Reader, ...]:
    """The mark on a pinion: a whole number with its sign."""
    words = rf"(?:{whose})(?: (?:pinion|gear|head|one|mark|marked|is|was|says|reads|at|of))*"
    return (Shaped(rf"{words} (?P<n>[+-]?[0-9]{{1,2}})", lambda m: m["n"], say),)


_IS = r"(?: (?:is|was|of|now|reads?|measured|measures|at|pack|shims?))*"
SHIMS = Topic(
    lambda: answer_of("shims.answer", "shims"),
    "shims",
    {
        "backlash": _length(f"backlash{_IS}", "backlash {}", "(?:of )?backlash"),
        "wanted": (
            *_length(
                r"(?:i )?want(?:ed|s)?(?: it)?(?: (?:at|to be))?|should be|needs? to be|needs?|to get|target(?: of|"
                r" is)?"
                r"|(?:maker|book|manual) (?:says|wants)|spec(?: is)?",
                "wanted {}",
                "wanted",
            ),
            Shaped(
                r"(?:i )?(?:want|need)(?:s|ed)?(?: it)?(?: (?:at|to be))? (?P<n>[0-9]{1,2})(?= (?:so|how|what|which)"
                r"|$)",
                lambda m: f"{int(m['n']) / 1000:g} in",
                "wanted {}",
                doubt=1,
            ),
        ),
        "per_shim": (
            Shaped(
                rf"(?P<n>{NUMBER}) (?:per|a|for each|for every|each) (?:shim|thou)", lambda m: m["n"], "{} per shim"
            ),
            Shaped(
                rf"(?:per|each|every) shim(?: (?:moves(?: it)?|is|of))* (?P<n>{NUMBER})",
                lambda m: m["n"],
                "{} per shim",
            ),
        ),
        "move": _length(
            r"(?:shim )?change(?: of)?|(?:mov(?:e|ed|ing)|shift(?:ed|ing)?|swapp?(?:ed|ing)?|slide|slid)(?: an?)?"
            r"(?: (?:the )?(?:carrier|diff(?:erential)?|shims?))?(?: (?:over|across|by|of))*",
            "move {}",
            "shim change",
        ),
        "fact": (
            Shaped(
                r"(?:what does |how much (?:does |will |do )?|what happens to )(?:that |it )?(?:the )?(?:"
                r"(?:change|alter|move"
                r"|do to|affect) (?:the )?)?backlash"
                r"(?: (?:change|alter|move|shift|differ|go)s?(?: by)?)?"
                r"|backlash (?:change|alter|move)s?(?: by)? (?:how much|what)|(?:change|difference) (?:in|of) backlash",
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
            "(?:pinion |depth )*shims?(?: under (?:the |its )?head)?",
        ),
        "old_mark": _mark("old|mark(?:ed)? was|was|came out", "old mark {}"),
        "new_mark": _mark("new|now|goes in|mark(?:ed)? is|pinion head is|(?:new )?pinion is", "new mark {}"),
        "sign": (
            Shaped(r"plus (?:adds|means (?:more|thicker)|is thicker)", always("plus adds"), "plus adds"),
            Shaped(
                r"plus (?:takes off|takes away|means (?:less|thinner)|is thinner)",
                always("plus takes off"),
                "plus takes off",
            ),
        ),
    },
    r"shims?|shimming|(?:shift|slide|move)(?: the)? carrier|carrier|side bearings?|diff(?:erential)?|pinion(?: depth)?"
    r"|depth|axle|backlash|which(?: shims?)?"
    r"|which way(?: (?:do|should) (?:i|we|they|the shims))?(?: (?:move|go|shift))?|way"
    r"|from (?:one )?side to (?:the other(?: side)?|side)|from the left to the right|by|to the other side"
    r"|(?:to )?mov(?:e|ing)|packs?|rear(?: end)?|ring(?: gear)?|crown ?wheel|across|over|far|shows?|set(?:ting)?(?:"
    r" up)?|(?:the )?dial(?: says| reads)?|says|reads|nearer|closer"
    r"|(?:nearer|closer)(?: to)?(?: the)? pinion(?: or further(?: off| away| out)?)?|bring",
    table="shims",
    asks_for=r"shim(?:s|ming)?|(?:shift|slide|mov(?:e|ed|ing))(?: the)? (?:carrier|diff)|backlash changes?"
    r"|change.* backlash",
    is_named=True,
    unmoved="metal finish standard service quality",
)
