"""What is asked of a hydraulic clutch, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, amount
from gaugeblock.lines.brakes.ask import CIRCUIT

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _clutch() -> Callable[..., Sheet]:
    from gaugeblock.lines.clutch.travel import clutch

    return clutch


_MASTER = r"(?:clutch )?(?:masters?|m/?cs?)(?: cyl(?:inder)?s?)?"
_SLAVE = r"(?:clutch )?slaves?(?: cyl(?:inder)?s?)?"
_IS = r"(?: (?:is|of|are|has|have|with|a|an|bore|about|at|got))*"
_LINK = r"(?: (?:about|by|some|roughly|only|at|most|up|to|the|a|an|just))*"
_ROD = r"(?: (?:rod|piston|cylinder|push ?rod))*"
_WAY = r"(?:travel|movement|throw|of travel|of movement|of throw|of way|way)"
_GOES = r"(?:gives?|moves?|pushes?|strokes?|goes|go|travels?|gets?|got)"


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

CLUTCH = Topic(
    _clutch,
    "hydraulic clutch",
    {
        "master": (
            amount("length", after=rf"(?:bore )?{_MASTER}(?: bore)?", say="master {}", cue=("master", "mc", "m/c")),
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
                after=rf"(?:bore )?{_SLAVE}(?: bore)?(?! (?:travel|movement|stroke|rod))",
                say="slave {}",
                cue=("slave",),
            ),
            amount("length", before=rf"{_SLAVE}{_IS}", say="slave {}", cue=("slave",)),
            _bare(rf"(?:inch )?{_SLAVE}", "slave"),
            Shaped(
                rf"{_SLAVE}{_IS} (?P<n>{NUMBER})(?! ?(?:mm|in|inch|\"|cm|to|:))",
                lambda m: f"{m['n']} {'mm' if _is_millimetres(m['n']) else 'in'}",
                "slave {}",
                doubt=1,
                cue=("slave",),
            ),
        ),
        "stroke": (
            amount(
                "length",
                after=r"(?:(?:of )?(?:master )?(?:cylinder )?stroke|(?:of )?(?:push ?rod|master) (?:stroke|travel"
                r"|movement))"
                r"(?: (?:at|on|of) (?:the )?master)?",
                say="stroke {}",
                cue=("stroke", "rod", "master"),
            ),
            amount("length", before=rf"(?:{_MASTER} )?stroke{_IS}", say="stroke {}", cue=("stroke",)),
            amount(
                "length",
                before=rf"(?:the )?(?:pedal )?{_GOES}(?: the)? (?:{_MASTER}|push ?rod){_LINK}",
                say="stroke {}",
                cue=("master", "rod"),
            ),
            amount("length", before=rf"{_MASTER}{_ROD} {_GOES}{_LINK}", say="stroke {}", cue=("master",)),
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
                after=rf"(?:(?:of )?{_SLAVE}(?: rod)? {_WAY}|(?:of )?(?:slave |fork )?{_WAY}(?: at the (?:slave|fork)"
                r"(?: rod)?)?|at the (?:slave|fork|clutch fork|release arm)(?: rod)?)",
                say="slave to go {}",
                cue=("slave", "fork", "travel", "movement", "arm", "throw"),
            ),
            amount(
                "length",
                before=r"(?:slave|fork|clutch fork|release (?:arm|lever|bearing)|arm)(?: rod)?(?: (?:wants|needs|moves?"
                r"|has to|must|to|go|goes|travels?|takes|of|about|at|least))+",
                say="slave to go {}",
                cue=("slave", "fork", "release", "arm"),
            ),
            amount(
                "length",
                before=rf"(?:slave |fork )(?:rod )?{_WAY}(?: (?:is|of|at|about|only|needs?|needed|wanted|must|be))*",
                say="slave to go {}",
                cue=("slave", "fork"),
            ),
        ),
        "ratio": CIRCUIT.slots["ratio"],
        "force": CIRCUIT.slots["force"],
    },
    rf"hydraulic clutch|clutch(?: hydraulics?)?|{_SLAVE}|{_MASTER}|(?:slave |fork |rod )?(?:travel|movement|throw)"
    r"|stroke|(?:which|what)(?: size)?(?: of)?(?: clutch)? (?:master|slave)(?: cylinder)?(?: bore)?|bore|how far"
    r"|move[sd]?|moves?|push(?:es)?|rod|fork|pedal|gives?|do i (?:need|get)|need|get|with|to|what|for|go(?:es)?|far"
    r"|enough|at the|size|should|does|will|i",
    asks_for=r"slaves?|clutch (?:master|hydraulic\w*|fork)",
    is_named=True,
    unmoved="metal finish standard quality",
)
