"""Numbers as the trade says them aloud -> as they are typed: an axle ratio, a tyre, a class of stainless steel."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_ONES = {w: str(n) for n, w in enumerate(["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"], 1)}
_TEENS = {
    "ten": "10",
    "eleven": "11",
    "twelve": "12",
    **{
        w: str(n)
        for n, w in enumerate(["thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"], 13)
    },
}
_TENS = {
    w: str(n) for n, w in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], 2)
}
_OF_ONE, _OF_TEN, _OF_TEEN = "|".join(_ONES), "|".join(_TENS), "|".join(_TEENS)
_TWO_DIGITS = rf"(?:oh (?:{_OF_ONE})|{_OF_TEEN}|(?:{_OF_TEN})(?:[ -](?:{_OF_ONE}))?)"
_GEARED = r"(?:axles?|diffs?|differentials?|rear(?: ?end| axle)?|final drive|ring and pinion|gears?|gearing|ratio)"
_RATIO = rf"(two|three|four|five)[ -]({_TWO_DIGITS})"
_RIMS = {**_TEENS, "twenty": "20", "twenty two": "22", "twenty four": "24"}
_OF_RIM = "twenty two|twenty four|twent(?:y|ie)|" + "|".join(_TEENS)
_WIDTH = rf"(one|two|three) (?:({_OF_TEN})|oh)[ -]five"
_ASPECT = rf"({_OF_TEN})[ -]?(five)?"


def _pair(said: str) -> str:
    """``seventy three`` is 73, ``oh eight`` 08, ``eleven`` 11."""
    first, _, second = said.replace("-", " ").partition(" ")
    if first == "oh":
        return f"0{_ONES[second]}"
    return _TEENS.get(first) or f"{_TENS[first]}{_ONES.get(second, '0')}"


def _geared(match: re.Match[str]) -> str:
    """``axle is four eleven`` is 4.11, as a ratio is said."""
    return f"{match['before'] or ''}{_ONES[match[2]]}.{_pair(match[3])}{match['behind'] or ''}"


def _tyre(match: re.Match[str]) -> str:
    """``two forty five forty eighteens`` is 245/40R18."""
    width = _ONES[match[1]] + (_TENS[match[2]] if match[2] else "0") + "5"
    rim = match[5].removesuffix("s")
    rim = {"twentie": "twenty"}.get(rim, rim)
    return f"{width}/{_TENS[match[3]]}{'5' if match[4] else '0'}r{_RIMS[rim]}"


def _tall(match: re.Match[str]) -> str:
    """``thirty threes`` are tyres 33 in tall."""
    one = match[2].removesuffix("s").replace("sixe", "six")
    return f"{_TENS[match[1]]}{_ONES[one]} inch tyres"


def _with_pitch(match: re.Match[str]) -> str:
    """``ten by one`` is M10x1, a thread."""
    part = {None: "", "oh": "", "zero": "", "five": ".5", "two five": ".25", "seven five": ".75"}[match[2]]
    return f"m{_METRIC[match[1]]}x1{part}"


def _watts(match: re.Match[str]) -> str:
    """``two 55 watt`` lamps are 110 W."""
    each = match[2]
    number = int(each) if each.isdigit() else int(_pair(each)) if each != "hundred" else 100
    return f"{int(_ONES.get(match[1], match[1])) * number} watt"


_METRIC = {"six": "6", "eight": "8", "ten": "10", "twelve": "12", "fourteen": "14", "sixteen": "16", "eighteen": "18"}


def _hundreds(match: re.Match[str]) -> str:
    """``three fifty horse`` is 350 hp."""
    return f"{_ONES[match[1]]}{_pair(match[2])}"


SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    (
        " ",
        rf"(?P<before>\b{_GEARED}(?: ratio)?(?: (?:is|are|has|of|at|an?|with))* ){_RATIO}(?P<behind>)(?= |$)"
        r"(?! (?:inch|thou|rpm|mph|foot|feet|degrees|pounds|and an? |hundred|point))",
        _geared,
    ),
    (" ", rf"(?P<before>)\b{_RATIO}(?P<behind> (?:to one )?{_GEARED}\b)", _geared),
    ("een", rf"\b{_WIDTH}[ -]{_ASPECT}(?: series)?(?: z?r)?[ -]((?:{_OF_RIM})s?)\b", _tyre),
    ("twent", rf"\b{_WIDTH}[ -]{_ASPECT}(?: series)?(?: z?r)?[ -]((?:{_OF_RIM})s?)\b", _tyre),
    ("ty ", r"\b(twenty|thirty|forty)[ -]((?:one|two|three|four|five|seven|eight|nine)s|sixes)\b", _tall),
    ("three oh four", r"\bthree oh four\b", "304"),
    ("four oh nine", r"\bfour oh nine\b", "409"),
    ("three sixteen", r"\bthree sixteen(?= stainless|l\b)|(?<=stainless )three sixteen\b", "316"),
    ("three twenty one", r"\bthree twenty one(?= stainless)|(?<=stainless )three twenty one\b", "321"),
    (
        "by one",
        (
            r"\b(six|eight|ten|twelve|fourteen|sixteen|eighteen)(?: mm| mil| millimeters?)? by one"
            r"(?: point (oh|zero|five|two five|seven five))?(?= |$)(?! (?:inch|and|half))"
        ),
        _with_pitch,
    ),
    (
        "watt",
        (
            rf"\b(two|three|four|five|six|eight|[2-8]) (?:x )?([0-9]{{1,3}}|hundred"
            rf"|(?:{_OF_TEN})(?:[ -](?:{_OF_ONE}))?)"
            r" ?(?:w|watts?)\b(?: each)?"
        ),
        _watts,
    ),
    (
        " ",
        (
            rf"(?<!point )(?<!and )\b({_OF_ONE})[ -]({_TWO_DIGITS})"
            r"(?= ?(?:horse|horsepower|hp|ponies|amps?|degrees?|deg|foot|ft|pounds?|lbs?|psi|nm|newton"
            r"|fahrenheit|celsius|kpa|rpm)\b)"
            r"(?! ?(?:foot|ft) (?:long|of|pieces?|lengths?|sticks?|runs?|sections?))(?! ?amp fuse)"
        ),
        _hundreds,
    ),
    ("v ", r"\bv (eight|six|twelve|ten|four)\b", lambda m: f"v{_METRIC.get(m[1]) or _ONES.get(m[1]) or _TEENS[m[1]]}"),
)
