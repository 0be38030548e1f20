"""What is asked of a hydraulic clutch, as people say it."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, amount
from gaugeblock.answer.limited import Limited
from gaugeblock.lines.brakes.ask import CIRCUIT

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Hit, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _clutch() -> Callable[..., Sheet]:
    from gaugeblock.lines.clutch.travel import clutch

    return clutch


_MASTER = r"(?:clutch )?(?:masters?|m/?cs?)(?: cyl(?:inder)?s?)?"
_SLAVE = r"(?:clutch )?slaves?(?: cyl(?:inder)?s?)?"
_IS = r"(?: (?:is|of|are|has|have|with|a|an|bore|about|at|got))*"
# A cylinder that is told by the number behind it is not the one before it.
_NO_OTHER = (
    rf"(?! (?:is|are)(?: (?:a|an|about))* {NUMBER})"
    rf"(?! {NUMBER}(?: ?(?:mm|in|inch|\"))? (?:bore|dia\w*))"
)
_LINK = r"(?: (?:about|by|some|roughly|only|at|most|up|to|the|a|an|just))*"
_ROD = r"(?: (?:rod|piston|cylinder|push ?rod))*"
_WAY = r"(?:travel|movement|throw|of travel|of movement|of throw|of way|way)"
_GOES = r"(?:gives?|moves?|pushes?|strokes?|goes|go|travels?|(?:gets?|is) (?:shoved|pushed|moved)|gets?|got)"
# What the slave has to do, wherever in the line it is told.
_MUST = (
    r"(?:(?:and|it|that|which|the rod|rod|i|we) )*(?:has to|have to|must|needs? to|wants? to|should|to|needs? it to"
    r"|needs?|wants?)"
    r"(?: (?:be|only|at|least|about|to|it))* (?:push(?:ed)?|mov(?:e|ed)|go|travel|stroke|throw|shift)"
    r"(?: (?:it|the (?:fork|arm|lever|rod|bearing)|by|about|out|at least|a))*"
)
_PEDAL_WAY = r"(?:(?:of )?(?:useful |usable |total |full |real |good )*(?:(?:clutch )?pedal(?: (?:travel"
_PEDAL_WAY += r"|movement|swing|stroke|way|throw))?"
_PEDAL_WAY += r"|(?:swing|travel|movement)(?: (?:at|of|on) the pedal| before it hits the floor)))"


def _bare(said: str, name: str) -> Shaped:
    """A bore whose unit goes without saying: .7 master, 3/4 slave; a whole number over ten is millimetres."""
    return Shaped(
        rf"(?P<n>{NUMBER})(?: ?(?:bore))? {said}",
        lambda m: f"{m['n']} {'mm' if _is_millimetres(m['n']) else 'in'}",
        f"{name} {{}}",
        cue=(name, "mc", "m/c"),
    )


def _is_millimetres(number: str) -> bool:
    """Whether no cylinder is so many inches."""
    return "/" not in number and float(number) > _MOST_INCHES


_MOST_INCHES = 4
_BEHIND = rf"{_MASTER}|cylinder|is|of"
_BORE_BEFORE = (
    rf"(?<!push )(?<!move )(?<!go )(?<!travel )(?<![0-9./]){NUMBER}(?: ?(?:mm|in|inch|\"))?(?: bore)? {_MASTER}(?= |$)"
)
_A_SIZE = rf"{NUMBER}(?: ?(?:mm|in|inch|\"))?"
# Slave travel 5/8 master 7/8 slave 30 mm stroke: each number is of the name before it, or of the one behind it.
_BETWEEN_NAMES = Shaped(
    rf"(?:slave (?:{_WAY})) {_A_SIZE} (?:{_MASTER} {_A_SIZE} {_SLAVE}|{_SLAVE} {_A_SIZE} {_MASTER}) {_A_SIZE}"
    r" (?:master )?stroke(?! (?:is|of|at|[0-9.]))",
    lambda m: m[0],
    cue=("slave",),
)


def _is_stroke(words: tuple[str, ...], at: int, hit: Hit) -> bool:
    """Whether a length beside the word of a stroke is surely no bore, nor may be the one of the master before it."""
    is_bore = words[at + hit.count : at + hit.count + 1] == ("bore",)
    is_behind = words[at][:1].isdigit() and at > 0 and re.fullmatch(_BEHIND, words[at - 1]) is not None
    return not is_bore and not (is_behind and re.search(_BORE_BEFORE, " ".join(words[:at])) is None)


def _stroke(reader: Reader) -> Limited:
    return Limited(reader, _is_stroke)


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The stroke of the master by the way of the pedal over its ratio; InputError where the ratio was not said, or
    where each number stands between two names.
    """
    if "between" in values:
        from gaugeblock.errors import InputError

        why = "each number stands between two names, and may be of either"
        raise InputError(values["between"], "master", why, (), "say `master 5/8, slave 7/8, stroke 30 mm`")
    if "way" not in values:
        return values
    way = values["way"]
    rest = {key: value for key, value in values.items() if key != "way"}
    if "stroke" in values:
        return rest  # which was told by itself
    if "ratio" not in values:
        from gaugeblock.errors import InputError

        why = "the way of the pedal moves the master by the pedal's ratio, and that was not said"
        raise InputError(way, "stroke", why, (), "say the ratio too, `6 to 1`; or the stroke of the master")
    from gaugeblock.units import parse_number

    number, _, unit = way.rpartition(" ")
    return {**rest, "stroke": f"{float(parse_number(number)) / float(parse_number(values['ratio'])):.4g} {unit}"}


CLUTCH = Topic(
    _clutch,
    "hydraulic clutch",
    {
        "master": (
            amount(
                "length",
                after=rf"(?:bore )?{_MASTER}(?: bore)?{_NO_OTHER}",
                say="master {}",
                cue=("master", "mc", "m/c"),
            ),
            amount("length", before=rf"{_MASTER}{_IS}", say="master {}", cue=("master", "mc", "m/c")),
            _bare(rf"(?:inch )?{_MASTER}", "master"),
            Shaped(
                rf"{_MASTER}{_IS} (?P<n>{NUMBER})(?! ?(?:mm|in|inch|\"|cm|to|:))",
                lambda m: f"{m['n']} {'mm' if _is_millimetres(m['n']) else 'in'}",
                "master {}",
                doubt=1,
                cue=("master", "mc", "m/c"),
            ),
        ),
        "slave": (
            amount(
                "length",
                after=(
                    rf"(?:bore )?{_SLAVE}(?: bore)?(?! (?:travel|movement|stroke|rod|throw))"
                    rf"{_NO_OTHER}"
                ),
                say="slave {}",
                cue=("slave",),
            ),
            amount("length", before=rf"{_SLAVE}{_IS}", say="slave {}", cue=("slave",)),
            _bare(rf"(?:inch )?{_SLAVE}", "slave"),
            amount(  # told of the slave by what it is, behind what it has to do
                "length",
                before=r"(?:and )?(?:it is|it's|its|which is|thats|that is)(?: an?)?",
                after="bore",
                say="slave {}",
                doubt=1,
                cue=("bore",),
            ),
            amount(
                "length",
                bare="in",
                followed=rf"{_SLAVE}(?: rod)? (?:that )?(?:moving|going|travelling|traveling|throwing|pushing"
                rf"|moves|must|has"
                r"|needs|should|goes|travels)",
                say="slave {}",
                cue=("slave",),
            ),
            Shaped(
                rf"{_SLAVE}{_IS} (?P<n>{NUMBER})(?! ?(?:mm|in|inch|\"|cm|to|:))",
                lambda m: f"{m['n']} {'mm' if _is_millimetres(m['n']) else 'in'}",
                "slave {}",
                doubt=1,
                cue=("slave",),
            ),
        ),
        "stroke": (
            _stroke(
                amount(
                    "length",
                    after=r"(?:(?:of )?(?:master )?(?:cylinder )?stroke|(?:of )?(?:push ?rod|master) (?:stroke|travel"
                    r"|movement))(?: (?:at|on|of) (?:the )?master)?",
                    say="stroke {}",
                    cue=("stroke", "rod", "master"),
                )
            ),
            _stroke(amount("length", before=rf"(?:{_MASTER} )?stroke{_IS}", say="stroke {}", cue=("stroke",))),
            _stroke(
                Shaped(
                    rf"(?:{_MASTER} )?stroke{_IS} (?P<n>{NUMBER})(?! ?(?:mm|in|inch|\"|cm|to"
                    rf"|:))(?! {_MASTER}| {_SLAVE})",
                    lambda m: f"{m['n']} {'mm' if _is_millimetres(m['n']) else 'in'}",
                    "stroke {}",
                    doubt=1,
                    cue=("stroke",),
                )
            ),
            _stroke(
                amount(
                    "length",
                    after=rf"(?:of )?(?:travel |movement |stroke )?(?:at|on|of|in) the {_MASTER}(?: rod| piston"
                    rf"| push ?rod)?",
                    say="stroke {}",
                    cue=("master", "mc", "m/c"),
                )
            ),
            amount(
                "length",
                before=rf"(?:the )?(?:pedal )?{_GOES}(?: the)? (?:{_MASTER}|push ?rod){_LINK}",
                say="stroke {}",
                cue=("master", "rod"),
            ),
            amount("length", before=rf"{_MASTER}{_ROD} {_GOES}{_LINK}", say="stroke {}", cue=("master",)),
            amount(
                "length",
                before=rf"(?:push ?)?rod {_GOES} in{_LINK}",
                say="stroke {}",
                cue=("rod",),
            ),
            amount(
                "length",
                before=rf"(?:i |we )?push(?:es|ed|ing)?{_LINK}",
                after="(?:in )?(?:at|on|of) the (?:push ?)?rod",
                say="stroke {}",
                cue=("rod",),
            ),
            amount(
                "length",
                before=rf"push ?rod(?: (?:into|in|of|at|to|the|my|{_MASTER}|and|it|that|which"
                rf"|measured))* {_GOES}{_LINK}",
                say="stroke {}",
                cue=("rod",),
            ),
        ),
        "travel": (
            amount(
                "length",
                after=rf"at (?:the|my|an?)(?= slave {NUMBER}(?: ?(?:mm|in|inch|\"))? bore)",
                say="slave to go {}",
                cue=("bore",),
            ),
            amount(
                "length",
                after=rf"(?:(?:of )?{_SLAVE}(?: rod)? {_WAY}|(?:of )?(?:slave |fork )?{_WAY}(?: at the (?:slave|fork)"
                r"(?: rod)?)?|at the (?:slave|fork|clutch fork|release arm)(?: rod)?)",
                say="slave to go {}",
                cue=("slave", "fork", "travel", "movement", "arm", "throw"),
            ),
            amount(
                "length",
                before=r"(?:slave|fork|clutch fork|release (?:arm|lever|bearing)|arm)(?: rod)?(?: (?:wants|needs|moves?"
                r"|has to|must|to|go|goes|travels?|takes|of|about|at|least|gives?|will|would|me|us|for|get|gets))+",
                say="slave to go {}",
                cue=("slave", "fork", "release", "arm"),
            ),
            amount(
                "length",
                before=rf"(?:{_SLAVE}|fork|arm)(?: push)?(?: ?rod)? {_GOES} (?:in|out){_LINK}",
                say="slave to go {}",
                cue=("slave", "fork", "arm"),
            ),
            amount(
                "length",
                before=_MUST,
                say="slave to go {}",
                cue=("push", "mov", "go", "travel", "stroke", "throw", "shift"),
            ),
            amount(
                "length",
                before=rf"(?:{_SLAVE}|fork)(?: rod)? (?:that )?(?:moving|going|travelling|traveling|throwing|pushing)",
                say="slave to go {}",
                cue=("ing ",),
            ),
            amount(
                "length",
                before=rf"(?:slave |fork )(?:rod )?{_WAY}(?: (?:is|of|at|about|only|needs?|needed|wanted|must|be))*",
                say="slave to go {}",
                cue=("slave", "fork"),
            ),
            Shaped(
                rf"(?:slave |fork )?(?:travel|movement|throw){_IS} (?P<n>{NUMBER})(?! ?(?:mm|in|inch|\"|cm|to|:|deg))"
                rf"(?! (?:{_MASTER}|{_SLAVE}|stroke)(?: |$))",
                lambda m: f"{m['n']} {'mm' if _is_millimetres(m['n']) else 'in'}",
                "slave to go {}",
                doubt=1,
                cue=("travel", "movement", "throw"),
            ),
        ),
        "way": (
            amount("length", after=_PEDAL_WAY, say="{} of pedal", cue=("pedal", "floor")),
            amount(
                "length",
                before="(?:clutch )?pedal",
                followed=rf"ratio (?:is |of )?{NUMBER}",
                say="{} of pedal",
                cue=("ratio",),
            ),
            amount(
                "length",
                before=(
                    r"(?:clutch |the )?pedal(?: (?:has|moves?|travels?|goes|swings?|gives|gets|with|and|about"
                    r"|only|down|by"
                    r"|travel|is|of|at))+"
                ),
                after=r"(?:of (?:travel|swing|movement|way)|(?:to|before it hits|down to) (?:the )?(?:floor|stop)"
                r"|in all)?",
                say="{} of pedal",
                cue=("pedal",),
            ),
            amount(
                "length",
                before=r"pedal (?:moves?|travels?|goes|swings?|travel|movement)(?: (?:about|only|is|of|by))*",
                say="{} of pedal",
                cue=("pedal",),
            ),
            amount(
                "length",
                before="(?:clutch |the )?pedal(?: (?:of|has|with|at))?",
                after="(?:of )?(?:travel|movement|swing|throw)",
                say="{} of pedal",
                cue=("pedal",),
            ),
        ),
        "between": (_BETWEEN_NAMES,),
        "ratio": CIRCUIT.slots["ratio"],
        "force": CIRCUIT.slots["force"],
    },
    rf"hydraulic clutch|clutch(?: hydraulics?)?|{_SLAVE}|{_MASTER}|(?:slave |fork |rod )?(?:travel|movement|throw)"
    r"|stroke|(?:which|what)(?: size)?(?: of)?(?: clutch)? (?:master|slave)(?: cylinder)?(?: bore)?|bore|how far"
    r"|move[sd]?|moves?|push(?:es)?|rod|fork|pedal|gives?|do i (?:need|get)|need|get|with|to|what|for|go(?:es)?|far"
    r"|enough|at the|size|should|does|will|i|ratio|hydraulic|rods?|moving|hits the floor|floor"
    r"|(?:clutch )?(?:won't|wont|will not|doesn't|doesnt|does not|not) (?:clear|release|releasing|clearing|disengage"
    r"|disengaging|free|freeing)(?: (?:fully|properly|right))?",
    settle=_settle,
    asks_for=r"slaves?|clutch (?:master|hydraulic\w*|fork)",
    is_named=True,
    unmoved="metal finish standard quality",
)
