"""What is asked of other tyres, as people say it: how fast it goes by its speedometer, and the axle ratio for them."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import USE, ask
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.driveline.ask.common import answer_of
from gaugeblock.driveline.ask.either import bare_speed, either_speed
from gaugeblock.driveline.ask.gears import CODED, RATIO
from gaugeblock.driveline.ask.tyres import code_of
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_WHEN_RIGHT = (
    r"(?:(?:it |they |i )*(?:was|were|had|used to (?:be|have|run)|instead of|in (?:place|lieu) of|from|off"
    r"|took off|took|replac(?:ed|ing)|over|before|originally|stock"
    r"|factory|right (?:with|on))(?: (?:it|with|on|the|of|my|old|had|were|was|stock|factory|for))*)"
)
# What is old or new of tyres, and how one says that it stands.
_ONES = r"(?: (?:set|pair|tyres?|tires?|ones|one|wheels?|rubber|size))*(?: (?:were|was|are|is|measured?s?|stand))*"
_OLD = rf"(?:the |my |its )*(?:old|original|factory|stock|previous|first){_ONES}"
_NEW = rf"(?:the |my |its )*new{_ONES}"
_TALL = r"[2-4][0-9](?:\.[0-9]+)?"


def _either(match: re.Match[str]) -> str:
    """A tyre by its code, or by its diameter."""
    if match["code"]:
        return code_of(match["code"])
    return match["wide"].replace(" ", "").upper() if match["wide"] else f"{match['n']} in"


def _by_height(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The options with a tyre by its height where its rim was not said: 31x10.5 stands 31 in."""
    wide = {key for key in ("tyre", "was") if "X" in values.get(key, "") and values[key][-3] not in "R-"}
    return {key: f"{value.partition('X')[0]} in" if key in wide else value for key, value in values.items()}


_EITHER_TYRE = (
    r"(?:(?P<wide>[2-4][0-9](?:\.[0-9])? ?x ?(?:[0-9]|1[0-9])(?:\.[0-9]{1,2})?(?: ?(?:-|r) ?1[0-9])?)"
    rf"|(?P<code>{CODED})s?|(?P<n>{_TALL}) ?(?:inch(?:es)?|in|\"|'?s)?)"
    r"(?: (?:tall |inch )*(?:tyres?|tires?|rubber|wheels?))?"
)
_ANY_TYRE = _EITHER_TYRE.replace("?P<code>", "?:").replace("?P<n>", "?:").replace("?P<wide>", "?:")
# One set comes off and another goes on, whichever is said first.
_COMES = r"(?:(?:were|was|are|came|come|went|going|put|now) )*"


OTHER_AXLE = "other_axle"
_AXLE = "axle"
_OF_AXLE = (
    "It stands for the axle ratio of before. Where the speedometer is driven from the gearbox, another ratio moves it"
    " too: say both ratios."
)


def _true_speed(*, other_axle: str = "", data: Refdata, **typed: str) -> Sheet:
    """How fast it goes; where the axle was changed too, its ratio is asked about."""
    sheet: Sheet = answer_of("gears.true_speed", "true_speed")(**typed, data=data)
    if not other_axle or sheet.decision.kind != USE:
        return sheet
    check = Check("axle ratio as before", CANNOT_TELL, "the axle was changed", subject="axle", bears=ASK)
    found = [one.replace(when="the axle ratio is that of before") for one in sheet.decision.candidates]
    decision = ask(sheet.decision.verb, found, [check.name], _OF_AXLE)
    question = Question(FILL_IN, "Has the axle that was fitted the ratio of the one before?", "was", (check.name,))
    return sheet.replace(checks=(*sheet.checks, check), decision=decision, questions=(*sheet.questions, question))


def _open_was(values: dict[str, str], _data: Refdata) -> Open | None:
    """Both units of what is shown without one. Raises Ambiguous where nobody said with which tyre it was right."""
    if "was" in values:
        return either_speed(values, "shown")
    why = "the tyre with which it was right was not said"
    raise Ambiguous("speedometer", f"read as tyre {values['tyre']}", why, (), "say both, the old one and the new one")


def _of_the_tyres(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """The options without an axle ratio that was told and stays. Raises Ambiguous for two of them: the drive of the
    speedometer may stand before or behind the axle.
    """
    if " " in values.get(_AXLE, ""):
        why = "another axle moves a speedometer that is driven from the gearbox, and none that a wheel drives"
        raise Ambiguous(
            values[_AXLE], "axle ratio", why, (), "ask of the tyres alone, or of the engine speed with each axle"
        )
    return _by_height({key: value for key, value in values.items() if key != _AXLE}, data)


SPEEDO = Topic(
    lambda: _true_speed,
    "speed with other tyres",
    {
        "tyre": (
            Shaped(rf"(?:(?:and|now) )*{_EITHER_TYRE} {_COMES}on", _either, "tyre {}", cue=(" on",)),
            Shaped(rf"{_NEW} {_EITHER_TYRE}", _either, "tyre {}", cue=("new",)),
            Shaped(
                r"(?:(?:now|to|on|for|put|fitted|with|got|running)(?: it| the| my| a set of| new| on)*"
                rf" )?{_EITHER_TYRE}",
                _either,
                "tyre {}",
            ),
        ),
        "was": (
            Shaped(
                rf"{_EITHER_TYRE} {_COMES}off"
                rf"(?= (?:and |then |with |now )*{_ANY_TYRE} {_COMES}on\b|$| speedo| what| how)",
                _either,
                "right with {}",
                cue=(" off",),
            ),
            Shaped(
                rf"with {_EITHER_TYRE}(?= (?:and |but |then )*(?:now|went to|going to|swapped to)\b)",
                _either,
                "right with {}",
                cue=("now", " to"),
            ),
            Shaped(rf"{_WHEN_RIGHT} {_EITHER_TYRE}", _either, "right with {}"),
            Shaped(rf"{_OLD} {_EITHER_TYRE}", _either, "right with {}"),
            Shaped(
                rf"{_EITHER_TYRE}(?= (?:to(?! (?:get|go|be|keep|put|bring|have))|for|off))", _either, "right with {}"
            ),
        ),
        "shown": (
            amount("speed", before="(?:says?|reads?|shows?|at|reading|showing|doing)(?: about)?", say="shown {}"),
            amount("speed", say="shown {}"),
            bare_speed("(?:says?|reads?|shows?|showing|reading|sat (?:at|on)|sits? (?:at|on)|doing|at|on)", "shown {}"),
        ),
        _AXLE: (  # which stays, and then changes nothing
            Shaped(
                rf"(?:(?:on|with|and|the|my|a) )*(?P<n>{RATIO})(?: (?:gears?|gearing|axle|ratio|diff|rear(?: end)?))*",
                lambda m: m["n"].removesuffix("s").removesuffix("'"),
                "axle ratio {}, which stays",
                doubt=2,
            ),
        ),
        OTHER_AXLE: (
            Shaped(
                r"(?:(?:when|since|after|and|with) )?(?:i |we |the |my |his |an? |new |other |another )*"
                r"(?:diff(?:erential)?|axle|rear end) (?:(?:that |was |got |has |been )*(?:swapped|changed|fitted"
                r"|put in"
                r"|went in|goes in)|swap)|(?:when|since|after|and) (?:i |we |he |they )?(?:swapped|changed|fitted"
                r"|put in)"
                r" (?:the |a |an |my |another |other |new )*(?:diff(?:erential)?|axle|rear end)(?: too| as well)?",
                always("yes"),
                "another axle",
                cue=("diff", "axle", "rear end"),
            ),
        ),
    },
    r"indicated|speedo(?:meter)?s?|clock|dial|reads?|reading|says?|shows?|how fast|true|real(?:ly)?|actual(?:ly)?|speed"
    r"|(?:how many |what |by what |which )?percent(?:age)?|per ?cent|over|under|fast|slow|how much|how far|too"
    r"|high|low"
    r"|going|doing"
    r"|(?:out|off)(?: by)?(?: how (?:much|far))?|by how much"
    r"|error|off|out|tall|high|dia(?:meter)?"
    r"|tyres?|tires?|wheels?|gps|fitted|put|on|back|took|changed|swapped|went|to|from|factory"
    r"|(?:the )?needle|go(?:ne)|sits?|after (?:going|changing|swapping|fitting|i went|we went|it went)"
    r"|never (?:touched|changed|altered|corrected|reset|recalibrated|adjusted) (?:the |my )*(?:speedo(?:meter)?|clock"
    r"|speedo (?:drive|gear))|still (?:has )?(?:the )?original|original|(?:the )?(?:speedo(?:meter)? )?drive"
    r"|(?:(?:is )?still )?(?:the )?original (?:one )?from when it had",
    needs=("tyre",),
    opens=_open_was,
    settle=_of_the_tyres,
    joined=(_AXLE,),
    asks_for=r"speedo\w*|indicated|needle|on the clock|clock (?:says?|reads?|shows?)|true speed|real speed|actual speed"
    r"|how fast|really (?:doing|going)|actually (?:doing|going)",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
REGEAR = Topic(
    lambda: answer_of("gears.regear", "regear"),
    "axle ratio for other tyres",
    {
        "ratio": (
            Shaped(
                rf"(?:(?:it |i )?(?:had|has|with|have|got|on|in) )?(?P<n>{RATIO})(?: to 1)?(?: (?:gears?"
                r"|gearing|axles?|ratios?"
                r"|diffs?|rear(?: end| axle)?|final(?: drive)?|ring and pinion))+",
                lambda m: m["n"],
                "axle ratio {}",
            ),
            Shaped(rf"(?:with |on |had )?(?P<n>{RATIO})'?s", lambda m: m["n"], "axle ratio {}"),
            Shaped(rf"(?:with|and)(?: an?)? (?P<n>{RATIO})", lambda m: m["n"], "axle ratio {}"),
            Shaped(
                rf"(?:had|got|has|running) (?P<n>{RATIO})(?= (?:and|with|on|whats?|what's|which)\b|$)",
                lambda m: m["n"],
                "axle ratio {}",
            ),
        ),
        "was": (
            Shaped(rf"(?:came|comes) (?:with|on) {_EITHER_TYRE}", _either, "in place of the one on {}"),
            Shaped(rf"{_WHEN_RIGHT} {_EITHER_TYRE}", _either, "in place of the one on {}"),
            Shaped(
                rf"{_EITHER_TYRE}(?= (?:up )?(?:to(?! (?:get|go|be|keep|put|bring|have))|for|off))",
                _either,
                "in place of the one on {}",
            ),
            Shaped(rf"from (?:the )?{_EITHER_TYRE}", _either, "in place of the one on {}"),
        ),
        "tyre": (
            Shaped(
                r"(?:(?:now|up|to|on|for|put|fitted|fitting|with|got|running|it's|its|going)(?: it| the| my| a"
                r" set of|"
                rf" new| on| to)* )?{_EITHER_TYRE}",
                _either,
                "tyre {}",
            ),
        ),
    },
    r"(?:what|which) (?:axle |diff |rear |final )*(?:ratios?|gears?|gearing|diffs?|axle)|suits?|(?:gets?|gives?"
    r"|keeps?|puts?|brings?)"
    r"(?: it| me| us| the)*(?: back)?(?: to)?|same (?:pull|revs|rpm|go|power|gearing|engine speed|feel)|back"
    r"|stock|factory"
    r"|original(?:ly)?|re-?gear(?:ing|ed)?|tyres?|tires?|wheels?|went|had|now|came|with|from|swapped|changed|do i"
    r" need|need|equals?|equivalent|match(?:es|ing)?|gears?|ratios?|whats?",
    needs=("ratio", "was", "tyre"),
    settle=_by_height,
    asks_for=r"(?:what|which) (?:axle |diff |rear |final )*(?:ratios?|gears?|gearing|diffs?|axle)|re-?gear\w*"
    r"|(?:equal|equivalent|matching) (?:ratios?|gears?|gearing|diff|axle)",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
