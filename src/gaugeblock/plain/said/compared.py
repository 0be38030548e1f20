"""Two that are told apart, a gauge beside them, an alloy and a die by their digits -> as they are typed."""

from __future__ import annotations

import re

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

_DIGITS = {
    "oh": "0",
    "o": "0",
    "zero": "0",
    "one": "1",
    "two": "2",
    "three": "3",
    "four": "4",
    "five": "5",
    "six": "6",
    "seven": "7",
    "eight": "8",
    "nine": "9",
}
_TENS = ("ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_DIGIT = "|".join(_DIGITS)
# Of a line with one of these a gauge tells how hot it runs.
_OF_A_COOLANT = r"^(?=.*\b(?:caps?|coolant|anti-?freeze|glycol|half and half)\b)(?=.*\bboil)"
_IS_AT = (
    r"(?:gauge|needle|temp(?:erature)?|reads?|reading|sits|sitting|shows?|showing|runs?|running|went|goes|got|gets"
    r"|climbs?|climbed|hits?|at|to|on|about|around|touching)"
)
_WHOSE = r"us|american|imperial|uk|british"
_FLUID = r"(?:five point one|5\.1|three|four|five|[345])"
_INSTEAD = r"(?:instead of|rather than|in place of|or|vs|versus|than|against)"


def _hot(match: re.Match[str]) -> str:
    """``two twenty`` on a gauge is 220."""
    return f"{match[1]}{_DIGITS[match[2]]}{_TENS.index(match[3]) + 1}0"


def _alloy(match: re.Match[str]) -> str:
    """``six oh six one tee six`` is 6061-T6."""
    number = "".join(_DIGITS[word] for word in match[1].split())
    return number if match[2] is None else f"{number}-t{_DIGITS[match[2]]}"


def _millimetres(match: re.Match[str]) -> str:
    """``one three five`` on a die is 135 mm."""
    of = match[2] if match[2].startswith(("die", "former", "clr", "radius")) else ""
    named = "" if match[2].startswith(("clr", "radius")) else "radius "
    return f"{match[1]}{of}{named}{''.join(_DIGITS[word] for word in match[3].split())} mm"


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *(
        (cue, rf"^(.*\bthan\b.*?),? or (?:is it )?the other {cue}(?= |,|$)", r"\1")
        for cue in ("way round", "way around", "way about")
    ),
    *(
        (
            cue,
            rf"\bdot ?({_FLUID})((?: silicone| brake| clutch| fluid)*),? ({_INSTEAD}) (?:the |a )?({_FLUID})"
            r"(?= |,|$)(?! ?(?:mm|inch|in\b|percent|%|years?|bar|psi|degrees?))",
            r"dot \1\2 \3 dot \4",
        )
        for cue in ("dot",)
    ),
    *(
        (
            cue,
            r"\b(six (?:o|oh|zero) (?:six (?:one|three)|eight two)|five (?:o|oh|zero) five two)(?: tee"
            r" (six|four|three|five|eight))?\b(?! (?:point|hundred|thou))",
            _alloy,
        )
        for cue in ("six o", "six zero", "five o", "five zero")
    ),
    *(
        (
            cue,
            r"^(?=.*\byield)(.*?)(?:,? (?:and )?i)? (?:dont|don't|do not) (?:want|need)(?: the)?"
            r" (?:ultimate|tensile|uts)(?: strength| one| figure)?",
            r"\1 not the tensile",
        )
        for cue in ("dont ", "don't ", "do not ")
    ),
    *(
        (
            cue,
            rf"\b(freez\w*|boil\w*)(?: (?:over|up))? {cue} (?=(?:dot ?|a |the )?(?:[0-9]|{'|'.join(_TENS)}))",
            r"\1 higher than ",
        )
        for cue in ("before", "sooner than", "earlier than", "later than")
    ),
    ("tee", r"\b(6061|6063|6082|7075|2024)[ -]?tee[ -](six|four|three|five)\b", lambda m: f"{m[1]}-t{_DIGITS[m[2]]}"),
    *(
        (cue, rf"{_OF_A_COOLANT}(.*?\b{_IS_AT} )(one|two) ({'|'.join(_TENS)})\b(?! ?(?:psi|kpa|pounds?|lbs?))", _hot)
        for cue in ("one ", "two ")
    ),
    *(
        (
            cue,
            rf"^(?=.*\b(?:bends?|die|former|clr|radius|tubes?)\b)(.*?\b)({cue}(?: (?:on|is|of|at|it))* )"
            rf"((?:one|two|three|four|five|six|seven|eight|nine) (?:{_DIGIT}) (?:{_DIGIT}))(?= |$)"
            rf"(?! (?:(?:{_DIGIT})\b|point|inch|in\b|mm|mil|thou|degrees?|and|hundred|eighths?|quarters?|sixteenths?))",
            _millimetres,
        )
        for cue in ("says", "marked", "stamped", "reads", "die", "former", "clr", "radius")
    ),
    *(
        (
            f"and a half {by} ",
            r"\b((?:twenty|thirty|forty|fifty|sixty|seventy)(?:[ -](?:one|two|three|four|five|six|seven|eight|nine))?"
            rf"|[2-7][0-9]) and a half {by} (?=(?:one|two|three|four|five|six) point |[1-6]\.)",
            r"\1 point five mm by ",
        )
        for by in ("by", "x")
    ),
    (
        "gallon",
        rf"\b(?:its |it'?s |they'?re |these are |those are )?({_WHOSE}) gallons?,? +not (?:the )?"
        rf"(?:{_WHOSE})(?: ones| gallons)?,? +([0-9][0-9./]*|[a-z]+(?: and a half| point [a-z]+)?)"
        r" of (?:them|those|these)",
        r"\2 \1 gallons",
    ),
    (
        "kilo something",
        r"\bkilo something(?: or other)?(?: per| a| to the)? (?:square )?(?:centimet(?:re|er)|cm)s?(?: squared)?",
        "kilos per square cm",
    ),
)
