"""What is asked of an offset and of a cope, as people say it."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.answer.said_units import SAYS
from gaugeblock.tubes.said import answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

_IN = r"(?: ?(?:(?P<mm>mm|millimet(?:re|er)s?)|in|inch(?:es)?|\"))?"
_DEG = "|".join(SAYS["angle"].values())


def _length(match: re.Match[str]) -> str:
    number = match["n"]
    is_mm = match["mm"] or (
        not re.search(rf"{re.escape(number)} ?(?:in|\")", match[0]) and units.parse_number(number) > _MOST_INCHES
    )
    return f"{number} {'mm' if is_mm else 'in'}"


_MOST_INCHES = 20  # of an offset or a tube without a unit: more is millimetres


SAME = "the same"  # of two tubes of one size


def _degrees(match: re.Match[str]) -> str:
    return f"{match['n']} deg"


_OF_OFFSETS = (
    r"(?:two|2|both) bends|(?:how far|distance|spacing|centres?|centers?"
    r"|length)?(?: apart)?(?: between)?(?: the)?(?: two"
    r"| 2)? ?(?:bend )?"
    r"(?:marks?|bends?|corners?)|(?:rolling |rolled )?offsets?|jog|joggle|step(?:ped)?|travel"
    r"|slant(?:ing)?(?: bit)?|how (?:long|far)"
    r"|got to|go|need"
    r"|tubes?|pipe|between|apart|dog ?leg|to get|with|die|former|shoe|(?:bend )?spacing|spaced|making|making"
    r" an?|room"
    r"|(?:even )?room(?: for)?(?: both)?(?: bends)?|both bends|(?:what )?straight(?: is)?(?: left)?|(?:down"
    r" ?)?bar|only"
    r"|(?:carries|carry|runs?|goes) on|parallel(?: again)?|(?:the )?second mark|(?:the )?first(?: mark)?|again"
    r"|(?:brake|fuel|hard|exhaust|steel) (?:pipe|line|tube)s?|kick(?:up)?|where|(?:has|have|got) to|to clear"
    r"|clears?|(?:the )?(?:bit|piece|run) (?:in )?between|piece|bit"
)


def offset_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """How far apart the two bends of an offset are."""
    return Topic(
        lambda: answer_in("offset", "offset"),
        "offset",
        {
            "rise": (
                Shaped(
                    rf"(?P<n>{NUMBER}){_IN} (?:(?:rolling |rolled )?offset|jog|joggle|kick|dog ?leg|rise|jump|step|set"
                    r"|(?:up|high|over|down)(?! [0-9.]+(?: ?(?:in|mm))? (?:up|over|down)))",
                    _length,
                    "{} over",
                ),
                Shaped(
                    r"(?:(?:rolling |rolled )?offset|jog|joggle|dog ?leg|rise|kick|up|over|down|jump|step"
                    r"|set|drops?|dropped|lifts?|raised?"
                    rf"|lowered?)(?: (?:of|by|it|is|an?))* (?P<n>{NUMBER}){_IN}",
                    _length,
                    "{} over",
                ),
                Shaped(
                    rf"(?:clear|miss|step|move it|shift it|carry it)(?: (?:it|an?|the|my|gearbox|crossmember"
                    rf"|sump|axle|frame"
                    rf"|chassis|tank|diff|starter|tunnel|floor|exhaust"
                    rf"|rail|over|tube))* by(?: (?:about|an?))* (?P<n>{NUMBER}){_IN}",
                    _length,
                    "{} over",
                    cue=(" by ",),
                ),
            ),
            "across": (
                Shaped(
                    rf"(?:and )?(?:across|sideways|side|over|roll)(?: by)? (?P<n>{NUMBER}){_IN}", _length, "{} across"
                ),
                Shaped(rf"(?P<n>{NUMBER}){_IN} (?:across|sideways|to the side|roll)", _length, "{} across"),
            ),
            "angle": (
                Shaped(
                    rf"(?:(?:with|using|by|two|2|a pair of|both|at) )*(?P<n>{NUMBER}) ?(?:{_DEG}|s)(?: bends?)?",
                    _degrees,
                    "2 bends of {}",
                ),
                Shaped(r"(?:two|2) (?P<n>15|22\.5|30|45|60)(?: bends?)", _degrees, "2 bends of {}"),
                Shaped(
                    r"(?:at|with|on) (?P<n>15|22\.5|22 1/2|30|45|60)(?= *$| (?:what|how|where|and|on|with)\b)",
                    _degrees,
                    "2 bends of {}",
                ),
            ),
            "radius": slots["radius"],
        },
        _OF_OFFSETS,
        needs=("rise", "angle"),
        asks_for=r"offset|jog|joggle|travel|kick|drops?|dog ?leg|slant\w*|between|apart|across|parallel|step"
        r"|spacing|clear|miss",
        is_named=True,
        unmoved="metal finish state form standard service quality",
    )


# A pipe of inches is called by its bore: only one of millimetres is as large as it is called.
_TUBE = r"(?: (?:od|outside(?: diameter)?|tubes?|tubing|chrome moly|dom|bar|(?<=mm )pipe))*"
_SITS = (
    r"(?: (?:going|goes|lands?|square(?! (?:tub|box|section|rail|bar|hollow))|straight|that|which|butts?|butted"
    r"|sits?|sitting"
    r"|comes?|joins?|joining|welded|in|up|down|fits?|is|to be|at a right angle|dead(?= square)))*"
)
_ONTO = (
    Shaped(
        rf"both(?: (?:bits|pieces|tubes|of|them|are|being|is))*(?= {NUMBER})",
        always(SAME),
        "both of one size",
        cue=("both",),
    ),
    Shaped(
        rf"(?:on|onto|on to|to|into|against|sits on|m[e]ets|m[e]eting|that m[e]ets)(?: an?"
        rf"| the)? (?P<n>{NUMBER}){_IN}{_TUBE}"
        r"(?: one)?",
        _length,
        "onto {}",
    ),
    Shaped(
        r"(?:the )?(?:(?:thing|tube|one|bar|pipe) )?(?:that )?(?:it )?(?:lands|sits|goes|welds) on"
        r" is(?: only)?"
        rf"(?: an?)? (?P<n>{NUMBER}){_IN}{_TUBE}",
        _length,
        "onto {}",
        cue=(" on is",),
    ),
    Shaped(
        r"(?:on |onto |to |into |of |with )?(?:its own size|itself|(?:(?:another|one|two|tubes?)"
        r" (?:of )?)?(?:the )?same (?:size|diameter|od)(?: (?:tubes?|tubing|pipe))?)",
        always(SAME),
        "onto its own size",
        cue=("same", "own size", "itself"),
    ),
)


def _settle_cope(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """A tube that is coped onto another of its size; the depth at the outside hangs on no wall."""
    found = {key: value for key, value in values.items() if key != "wall"}
    return {**found, "onto": found["od"]} if found.get("onto") == SAME else found


def cope_of(walls: tuple[Reader, ...]) -> Topic:
    """How deep a tube is coped; ``walls`` are the words of a wall."""
    return Topic(
        lambda: answer_in("notch", "cope"),
        "cope",
        {
            "od": (
                Shaped(
                    rf"(?P<n>{NUMBER}){_IN}{_TUBE}{_SITS}(?= (?:on|onto|on to|to|into|against|m[e]ets|m[e]eting|that"
                    rf" m[e]ets|its own|itself|the same))",
                    _length,
                    "{}",
                ),
                Shaped(
                    rf"(?:cope|notch|fish ?mouth|saddle)(?: (?:on|of|for|in|if|an?|the))* (?P<n>{NUMBER}){_IN}{_TUBE}",
                    _length,
                    "{}",
                ),
                Shaped(
                    rf"(?:the )?(?:brace|branch|strut|smaller tube|gusset tube|diagonal)(?: tube)? is(?: an?)?"
                    rf" (?P<n>{NUMBER})"
                    rf"{_IN}{_TUBE}",
                    _length,
                    "{}",
                    cue=(" is ",),
                ),
                Shaped(rf"(?P<n>{NUMBER}){_IN}{_TUBE}", _length, "{}", doubt=2),
            ),
            "onto": _ONTO,
            "wall": walls,
            "angle": (
                Shaped(
                    r"(?:dead )?square(?: on)?(?! (?:tub|box|section|rail|bar|hollow))|at a right angle|straight on",
                    always("90 deg"),
                    "square",
                ),
                amount("angle", before="(?:at|by)", say="at {}"),
                Shaped(r"at (?P<n>30|45|60|90)", _degrees, "at {}"),
                amount("angle", say="at {}"),
            ),
        },
        r"(?:from )?(?:the )?(?:tips?|(?:shallow(?:est)?|high(?:est)?|long(?:est)?|short(?:est)?) points?)"
        r"(?: (?:down |back )?to (?:the )?(?:bottom|throat|(?:deep(?:est)?|low(?:est)?|long(?:est)?|short(?:est)?)"
        r" points?))?|down to the bottom|bottom of (?:it|the (?:notch|cope|saddle|mouth))|mouth|(?:cross"
        r"|diagonal) brace"
        r"|notching|notcher|(?:main |roll )?hoop|bench drill|roll bar"
        r"|(?:how deep|depth)|copes?|coped|coping|notch(?:es|ed)?|fish ?mouth|saddle|tubes?|deep|cut|hole ?saw|is|does"
        r"|the|what"
        r"|size|for|of|(?:how much )?(?:longer|deeper)(?: is)?(?: the)?(?: tip)?|tip|than|(?:the )?throat|bar"
        r"|main(?: tube)?"
        r"|comes? in|brace|hole ?saw|saw|can|even|make|that|thing|lands on|or not|joint",
        needs=("od", "onto"),
        settle=_settle_cope,
        asks_for=r"cope[sd]?|coping|notch\w*|fish ?mouth|saddle|saw\b.*[0-9](?: ?(?:in|inch|mm"
        r"|\"))?(?: (?:tube|tubing|od))?"
        r" (?:on|onto|to|into)(?: an?)? [0-9]|(?:how deep|depth)\b.*\bmouth|mouth\b.*\bdeep",
        is_named=True,
        unmoved="metal finish state form standard service quality",
    )
