"""How the straights beside a bend are told: one, both alike, each by itself, or to the corner -> their lengths."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Shaped


def _legs(match: re.Match[str]) -> str:
    """The straights beside a bend: one, or two alike."""
    unit = "mm" if match["unit"] == "mm" else "in"
    leg = f"{match['n']} {unit}"
    return f"{leg}, {leg}" if match["both"] or match["each"] else leg


_TO_CORNER = (
    r"(?:(?:measured|taken|each|both|up|out|out to|all|long) )*to (?:the |where the )?(?:cent(?:re|er) ?lines? )?"
    r"(?:corner|apex|intersection|cent(?:re|er) ?line of the (?:other|second"
    r"|next) (?:leg|side|straight|tube|run))"
)
UNIT = r"(?: ?(?P<unit>in|inch(?:es)?|mm|\"))?"


def _corner(match: re.Match[str]) -> str:
    """The legs of a bend to its corner: one, or two; a large number without a unit is millimetres."""
    said = match.groupdict()
    unit = said["unit"] or ("mm" if all(n.isdigit() for n in (said["n"], said.get("m") or "0")) else "in")
    unit = "mm" if unit == "mm" and (said["unit"] or int(said["n"]) > _MOST_INCHES) else "in"
    legs = [said["n"], *([said["m"]] if said.get("m") else [])]
    return ", ".join(f"{leg} {unit}" for leg in legs)


_MOST_INCHES = 60  # of a leg without a unit: more is millimetres


def _corner_in(match: re.Match[str], text: str) -> str:
    """Two legs of which either may have the unit."""
    unit = match["unit"] or next((u for u in ("mm", "in") if f" {u}" in f"{text} ".replace("inch", "in")), "")
    numbers = [match["n"], match["m"]]
    if not unit:
        unit = "mm" if all(n.isdigit() and int(n) > _MOST_INCHES for n in numbers) else "in"
    return ", ".join(f"{n} {'mm' if unit == 'mm' else 'in'}" for n in numbers)


def _large_legs(match: re.Match[str]) -> str | None:
    """``20 x 14``: two legs, where neither can be the wall of a tube."""
    numbers = [units.parse_number(match[key]) for key in ("n", "m")]
    if min(numbers) < _LEAST_LEG:
        return None
    return _corner_in(match, f"{match['first'] or ''} {match['unit'] or ''}".replace('"', "in").rjust(8))


def _hoop(match: re.Match[str]) -> str:
    """A leg, what is across the top, and the other leg."""
    across = re.search(NUMBER, match["across"])
    unit = "mm" if " mm" in match[0] else "in"
    return ", ".join(f"{n} {unit}" for n in (match["n"], across[0] if across else "0", match["m"]))


_LEAST_LEG = 6  # of two numbers side by side: less is a wall


def _three(match: re.Match[str]) -> str:
    """The three straights of a hoop, each in the unit that is said at one of them."""
    unit = "mm" if " mm" in f" {match[0]} " else "in"
    return ", ".join(f"{match[key]} {unit}" for key in ("n", "m", "k"))


_PART = r"(?: ?(?:in|inch(?:es)?|mm|\"))?"
LEG_READERS = (
    Shaped(
        rf"(?:(?:three|3) )?(?:straight )?(?:legs?|straights?|sides?)(?: (?:of|at|are|is))* (?P<n>{NUMBER}){_PART}"
        rf"(?: and| by| then| x)? (?P<m>{NUMBER}){_PART}(?: and| by| then| x)? (?P<k>{NUMBER})"
        r" ?(?:in|inch(?:es)?|mm|\")(?: of straight)?",
        _three,
        "legs {}",
        cue=("leg", "straight", "side"),
    ),
    Shaped(
        rf"(?:(?:with |want |and )*(?P<both>two|2|both) )?(?:straight )?(?:legs?|straights?|sides?|ends?"
        rf"|arms?)"
        rf"(?: (?:of|at|are|is|each|both|to be))* (?P<n>{NUMBER}) ?(?P<unit>in|inch(?:es)?|mm|\")"
        r"(?:(?: (?P<each>each(?: (?:side|end|way))?|both(?: sides| ends)?|long|either side|apiece))+"
        rf"|(?! (?:and |by |x |then |plus )+{NUMBER}| {NUMBER} ?(?:in|inch(?:es)?|mm|\")(?: |$)))"
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
    Shaped(  # two 10 in legs
        rf"(?P<both>two|2|both) (?P<n>{NUMBER}) ?(?P<unit>in|inch(?:es)?|mm|\") (?:long )?(?:straight )?"
        r"(?:legs?|straights?|arms?)(?P<each>)",
        _legs,
        "2 legs {}",
        cue=("leg", "straight", "arm"),
    ),
    Shaped(
        rf"(?:(?:one|1|an?|with) )+(?P<both>)(?P<n>{NUMBER}) ?(?P<unit>in|inch(?:es)?|mm|\") (?:long )?(?:straight )?"
        r"(?:legs?|straights?|arms?)(?P<each>)",
        _legs,
        "legs {}",
        cue=("leg", "straight", "arm"),
    ),
    Shaped(
        rf"(?P<both>)(?P<n>{NUMBER}) ?(?P<unit>in|inch(?:es)?|mm|\") (?:long )?(?:straight )?leg(?P<each>)",
        _legs,
        "legs {}",
        cue=("leg",),
    ),
)
_OTHER = r"(?:and |then |with )*(?:the )?other(?: (?:one|leg|side|arm|end|is|at|of|was))*"
TWO_READERS = (
    Shaped(  # 20 in one leg 14 the other
        rf"(?P<n>{NUMBER})(?: ?(?:in|inch(?:es)?|mm|\"))? (?:(?:is|on|for) )?(?:the )?(?:one|1|first) (?:leg"
        rf"|side|arm|end)"
        rf"(?: and| by)? (?P<m>{NUMBER}){UNIT} (?:(?:is|on|for) )?(?:the )?(?:other|second)(?: (?:leg|side|arm|end))?",
        lambda m: _corner_in(m, m[0]),
        "legs {}",
        cue=("other", "second"),
    ),
    Shaped(  # legs 40 in, 36 across the top, 40 down the other side: what is across stands by itself
        rf"(?:straight )?(?:legs?|sides?|arms?|uprights?)(?: (?:of|at|are"
        rf"|is))* (?P<n>{NUMBER})(?P<unit> ?(?:in|inch(?:es)?"
        rf"|mm|\"))?(?P<across> {NUMBER}(?: ?(?:in|inch(?:es)?|mm|\"))? (?:across|over)(?: the)?(?: (?:top|middle))?)"
        rf" (?:and )?(?P<m>{NUMBER})(?: ?(?:in|inch(?:es)?|mm|\"))? (?:down|up"
        rf"|on)(?: the)?(?: other)?(?: (?:side|leg|end))?",
        _hoop,
        "legs {}",
        cue=("across", " over"),
    ),
    Shaped(  # 44 up, 40 across and 44 down
        rf"(?P<n>{NUMBER}){_PART} (?:up|high|tall)(?: (?:one|each) side)?(?P<across> {NUMBER}{_PART}"
        rf" (?:across|over|wide)"
        rf"(?: (?:the )?(?:top|middle))?) (?:and )?(?:back )?(?P<m>{NUMBER}){_PART} (?:back )?(?:down|high|tall)"
        r"(?:(?: (?:on|the))* other(?: side)?)?",
        _hoop,
        "legs {}",
        cue=(" across", " over", " wide"),
    ),
    Shaped(
        rf"one (?:leg|side|arm|end|straight)(?: (?:is|of|at|was))* (?P<n>{NUMBER})(?: ?(?:in|inch(?:es)?|mm|\"))?"
        rf" {_OTHER} (?P<m>{NUMBER}){UNIT}",
        lambda m: _corner_in(m, m[0]),
        "legs {}",
        cue=("other",),
    ),
    Shaped(
        rf"(?:with |of )?(?P<n>{NUMBER}){UNIT.replace('unit', 'first')} ?(?:x|by|and) ?(?P<m>{NUMBER}){UNIT}"
        r"(?: (?:legs?|sides?|arms?))?(?! ?(?:x|by) )",
        _large_legs,
        "legs {}",
        doubt=1,
        cue=(" x ", " by "),
    ),
    Shaped(
        rf"(?:(?:with|of|straight|hoop|two|2|both) )*(?:legs?|sides?|arms?|straights?)(?: (?:of|at|are|is))*"
        rf" (?P<n>{NUMBER})"
        rf"(?: ?(?:in|inch(?:es)?|mm|\"))?(?: one (?:side|end|way))? (?:and|by|x) (?P<m>{NUMBER}){UNIT}"
        r"(?: (?:the |on the )?other(?: (?:side|end|way))?)?",
        _corner,
        "legs {}",
        cue=("leg", "side", "arm", "straight"),
    ),
    Shaped(
        rf"(?P<n>{NUMBER})(?P<m>){UNIT} (?:straight )?legs",
        lambda m: f"{_corner(m)}, {_corner(m)}" if m["unit"] or units.parse_number(m["n"]) >= _LEAST_LEG else None,
        "legs {} each",
        cue=("legs",),
    ),
)
CORNER_READERS = (
    Shaped(
        rf"(?:(?:with|of|straight) )*(?:legs?|sides?|arms?|ends?|straights?)(?: (?:of|at|are|is|must|should|has|have"
        r"|needs?|wants?|to|be|come|out))*"
        rf" (?P<n>{NUMBER})(?:(?: ?(?:in|inch(?:es)?|mm|\"))? (?:and|by|x) (?P<m>{NUMBER}))?{UNIT}"
        rf" (?:{_TO_CORNER}|to (?:the )?cent(?:re|er)(?: ?lines?)?(?: of (?:the )?(?:bend|tube|other leg|corner))?)",
        _corner,
        "legs to the corner {}",
        cue=("corner", "apex", "inter", "line", "cent"),
    ),
    Shaped(
        rf"(?P<n>{NUMBER}){UNIT} (?:(?:leg|side|straight) )?(?:from (?:the |an? )?(?:one )?ends?"
        rf"(?: of (?:the |my )?(?:tube|pipe|stick|stock))? )?{_TO_CORNER}",
        _corner,
        "leg to the corner {}",
        cue=("corner", "apex", "inter", "line"),
    ),
)
