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
_GEARED = (
    r"(?:axles?|diffs?|differentials?|rear(?: ?end| axle)?|final drive|ring and pinion|gears?|gearing|ratio"
    r"|(?:first|low)(?= (?:gear|is|of|at|ratio)\b)(?: gear)?)"
)
_RATIO = rf"(two|three|four|five)[ -]({_TWO_DIGITS})"
_RIMS = {**_TEENS, "twenty": "20", "twenty two": "22", "twenty four": "24"}
_OF_RIM = "twenty two|twenty four|twent(?:y|ie)|" + "|".join(_TEENS)
# Without its R a tyre is known by the five at the end of its width.
_TYRE = (
    rf"\b(one|two|three) (?:({_OF_TEN})|oh)[ -]?(five)?[ -]({_OF_TEN})[ -]?(five)?(?: series)?( (?:z ?)?r)?"
    rf"[ -]?((?:{_OF_RIM})s?|1[3-9]|2[0-4])\b"
)
_TYRE_OF_FIFTEEN = (
    rf"\b(one|two|three) fifteen ({_OF_TEN})[ -]?(five)?(?: series)?( (?:z ?)?r)?"
    rf"[ -]?((?:{_OF_RIM})s(?= |$)|(?:{_OF_RIM}|1[3-9]|2[0-4])(?= (?:tyres?|tires?|rubber|rims?|wheels?)\b))"
)
_TYRE_BY_DIGITS = (
    rf"\b(one|two|three) ({_OF_ONE}) five ({_OF_TEN})[ -]?(five)?(?: series)?"
    rf"( (?:z ?)?r)?[ -]?((?:{_OF_RIM})s?|1[3-9]|2[0-4])\b"
)
_METRIC_SIZE = (
    r"\b(?P<size>six|eight|ten|twelve|fourteen|sixteen|eighteen|(?<![0-9/.])[0-9]{1,2})"
    r"[ -]?(?:mm|mils?|millimet(?:re|er)s?)"
)
_PITCH = r"(?:one|1)(?: point (?P<pitch>oh|zero|five|two five|seven five))?"
# What is counted, not measured: two thirty amp relays.
_COUNTED = (
    r"(?! ?(?:foot|ft) (?:long|of|pieces?|lengths?|sticks?|runs?|sections?|wires?|cables?|tubes?|bars?|lines?))"
    r"(?! ?(?:amps?|volts?|watts?) (?:fuses?|relays|breakers|fans|pumps|loads|circuits|lamps|lights|batteries"
    r"|alternators|wires|feeds))"
    r"(?! ?(?:degrees?|deg) (?:bends?|elbows?|turns?|flares?|joints?|angles?|mandrel))"
)


def _pair(said: str) -> str:
    """``seventy three`` is 73, ``oh eight`` 08, ``eleven`` 11."""
    first, _, second = said.replace("-", " ").partition(" ")
    if first == "oh":
        return f"0{_ONES[second]}"
    return _ONES.get(first) or _TEENS.get(first) or f"{_TENS[first]}{_ONES.get(second, '0')}"


def _geared(match: re.Match[str]) -> str:
    """``axle is four eleven`` is 4.11, as a ratio is said."""
    return f"{match['before'] or ''}{_ONES[match[2]]}.{_pair(match[3])}{match['behind'] or ''}"


def _tyre(match: re.Match[str]) -> str:
    """``two seventy five sixty r fifteen`` is 275/60R15; ``two forty five forty eighteens`` 245/40R18."""
    if not (match[3] or match[6]):
        return match[0]
    width = _ONES[match[1]] + (_TENS[match[2]] if match[2] else "0") + ("5" if match[3] else "0")
    rim = match[7].removesuffix("s").replace("twentie", "twenty")
    return f"{width}/{_TENS[match[4]]}{'5' if match[5] else '0'}r{_RIMS.get(rim, rim)}"


def _tyre_of_fifteen(match: re.Match[str]) -> str:
    """``two fifteen seventy fifteen tyres`` are 215/70R15."""
    rim = match[5].removesuffix("s").replace("twentie", "twenty")
    return f"{_ONES[match[1]]}15/{_TENS[match[2]]}{'5' if match[3] else '0'}r{_RIMS.get(rim, rim)}"


def _tall(match: re.Match[str]) -> str:
    """``thirty threes`` are tyres 33 in tall."""
    one = match[2].removesuffix("s").replace("sixe", "six")
    return f"{_TENS[match[1]]}{_ONES[one]} inch tyres"


def _with_part(match: re.Match[str]) -> str:
    """``ten by one and a half`` is M10x1.5, a thread."""
    part = {"a half": "1.5", "a quarter": "1.25", "three quarters": "1.75"}[match[2]]
    return f"m{_METRIC.get(match[1], '5' if match[1] == 'five' else match[1])}x{part}"


def _with_pitch(match: re.Match[str]) -> str:
    """``ten by one`` is M10x1, a thread."""
    part = {None: "", "oh": "", "zero": "", "five": ".5", "two five": ".25", "seven five": ".75"}[match[2]]
    return f"m{_METRIC[match[1]]}x1{part}"


def _watts(match: re.Match[str]) -> str:
    """``two 55 watt`` lamps are 110 W."""
    each = int(match[2] or _pair(match[3]))
    return f"{int(_ONES.get(match[1], match[1])) * each} watt"


def _of_each(match: re.Match[str]) -> str:
    """``pair of fans that draw 10 amps each`` draw 20 A on their wire; a fuse may be of each."""
    asked = match.string.replace("from the relay", "").replace("from a relay", "").replace("by a relay", "")
    if any(word in asked for word in ("fuse", "relay", "breaker")):
        return match[0]
    count = int(_ONES.get(match[1], "2" if match[1] in ("pair of", "twin", "both") else match[1]))
    each = float(match[4] or _pair(match[5]))
    return f"{match[2]} {match[3] or 'at'} {count * each:g} {match[6]}"


def _bolts_with_pitch(match: re.Match[str], what: str) -> str:
    """``twelve millimetre bolts one point seven five pitch`` are bolts M12x1.75."""
    part = {None: "", "oh": "", "zero": "", "five": ".5", "two five": ".25", "seven five": ".75"}[match["pitch"]]
    return f"m{_METRIC.get(match['size'], match['size'])}x1{part}{what}"


def _tyre_by_digits(match: re.Match[str]) -> str:
    """``two six five seventy seventeen`` is 265/70R17."""
    rim = match[6].removesuffix("s").replace("twentie", "twenty")
    return f"{_ONES[match[1]]}{_ONES[match[2]]}5/{_TENS[match[3]]}{'5' if match[4] else '0'}r{_RIMS.get(rim, rim)}"


def _part_of_an_inch(match: re.Match[str]) -> str:
    """``eighth inch`` is 1/8 in; ``three eighth inch`` stays."""
    return match[0] if match[1] else f"1/{8 if match[2] == 'eighth' else 16} inch"


_METRIC = {"six": "6", "eight": "8", "ten": "10", "twelve": "12", "fourteen": "14", "sixteen": "16", "eighteen": "18"}


def _of_bend(match: re.Match[str]) -> str:
    """``one eighty degree bend`` is one of 180 deg, ``one ninety degree bend`` one of 90.

    Of ``one sixty`` both are usual: ``1x`` is refused.
    """
    said = _pair(match[1])
    if said in ("80", "35"):
        return f"1{said} degree {match[2]}"
    return f"{'' if said in ('90', '45') else '1x '}{said} degree {match[2]}"


def _hundreds(match: re.Match[str]) -> str:
    """``three fifty horse`` is 350 hp."""
    return f"{_ONES[match[1]]}{_pair(match[2])}"


# What a number of two digits has when it is said aloud.
_SAID_BY_TENS = ("ty", "een", "eleven", "twelve", " ten", " oh ", "-ten", "-oh ")
_TENS_SAID = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    ("pair ", r"\b(?:an? )?pair (?:of )?(?=[0-9]{1,3} ?w)", "two "),
    (  # one point five eight point eight: the pitch ends before the class
        "eight point eight",
        r"\bpoint (five|two five|seven five|oh|zero) eight point eight\b",
        r"point \1 8.8",
    ),
    *(
        (
            scale,
            rf"\b(one|two|three|four|five|six|seven|eight|nine) ({'|'.join(_TENS_SAID)}) (?:deg(?:rees?)? )?{scale}\b",
            lambda m: f"{_ONES[m[1]]}{_TENS[m[2]]}0 {m[0].rpartition(' ')[2]}",
        )
        for scale in ("centigrade", "celsius", "fahrenheit")
    ),
    *(
        (
            f"grade {said} ",
            rf"\bgrade {said} (?=half|quarter|three[ -]|five[ -]|seven[ -]|nine[ -])",
            f"grade {digit} bolt ",
        )
        for said, digit in (("two", 2), ("five", 5), ("eight", 8))
    ),
    *(  # 373 gears, and 373s where a speed is asked: 3.73
        (
            cue,
            r"(?<![0-9./x-])\b([2-6])([0-9]{2})(?:'?s)? (?=(?:gears?|gearing|rear ends?|rear axles?"
            r"|axles?(?! ?shaft)|diffs?"
            r"|differential|final drive|ring and pinion|ratio)\b)",
            r"\1.\2 ",
        )
        for cue in (" gear", " rear", " axle", " diff", " final", " ring", " ratio")
    ),
    *(
        (
            f"{digit}s",
            r"^(?=.*\b(?:rpms?|revs?|mph|km/h|kph|tyres?|tires?|gears?|speedo|speed|cruis\w+|highway|motorway)\b)"
            r"(?!.*\b(?:stainless|exhaust|pipe|tube)\b)(.*?)(?<![0-9./x-])\b([2-6])([0-9]{2})'?s\b",
            r"\1\2.\3s",
        )
        for digit in range(10)
    ),
    *((cue, r"\b([0-9]{3}/[0-9]{2} ?z?r ?[12][0-9])'?s\b", r"\1") for cue in ("r1", "r 1", "r2", "r 2")),
    ("fifteen ", _TYRE_OF_FIFTEEN, _tyre_of_fifteen),
    *(  # a tyre whose rim is said behind it: 185/70 fourteens, 185/70 14
        (
            cue,
            rf"\b([12][0-9]{cue}[05])[ -](?:on )?(?:({_OF_RIM})(?:s|es)?|(1[0-9]|2[0-4])s?)\b(?! ?(?:mm|in|inch|ft))",
            lambda m: f"{m[1]}r{m[3] or _RIMS[m[2].replace('twentie', 'twenty')]}",
        )
        for cue in ("5/3", "5/4", "5/5", "5/6", "5/7", "5/8", "0/3", "0/4", "0/5")
    ),
    (" five ", _TYRE_BY_DIGITS, _tyre_by_digits),
    ("ty", _TYRE, _tyre),
    *(
        (
            cue,
            rf"(?P<before>\b{_GEARED}(?: ratio)?(?: (?:is|are|has|of|at|an?|with))* ){_RATIO}(?P<behind>)(?= |$)"
            r"(?! (?:inch|thou|rpm|mph|foot|feet|degrees|pounds|and an? |hundred|point))",
            _geared,
        )
        for cue in _SAID_BY_TENS
    ),
    *(
        (cue, rf"(?P<before>)\b(?<!ty )(?<!ty-){_RATIO}(?P<behind> (?:to one )?{_GEARED}\b)", _geared)
        for cue in _SAID_BY_TENS
    ),
    *(
        (
            cue,
            rf"(?P<before>)\b(?<!ty )(?<!ty-){_RATIO}(?P<behind> (?:to|for|with|and|or) [0-9]\.[0-9]{{2}}"
            rf" (?:{_GEARED})\b)",
            _geared,
        )
        for cue in _SAID_BY_TENS
    ),
    *(
        (cue, r"\b(?!forty[ -]fives)(thirty|forty)[ -]((?:one|two|three|four|five|seven|eight|nine)s|sixes)\b", _tall)
        for cue in ("ty ", "ty-")
    ),
    ("three oh four", r"\bthree oh four\b", "304"),
    ("four oh nine", r"\bfour oh nine\b", "409"),
    ("three sixteen", r"\bthree sixteen(?= stainless|l\b)|(?<=stainless )three sixteen\b", "316"),
    ("three twenty one", r"\bthree twenty one(?= stainless)|(?<=stainless )three twenty one\b", "321"),
    ("pair of", r"\b(?:an? |the )?pair of (?=(?:forty[ -]fives|thirties|sixties|nineties|[3469][05]s)\b)", "two "),
    ("pair of", r"\b(?:an? |the |my )?pair of (?=(?:[0-9]|[a-z]+ty)[a-z0-9 -]{0,12}?w(?:atts?)?\b)", "two "),
    *(
        (
            part,
            rf"\b((?:{_OF_ONE}|{_OF_TEEN}|[0-9/]+)[ -])?(?:an? )?({part})[ -]inch\b",
            _part_of_an_inch,
        )
        for part in ("eighth", "sixteenth")
    ),
    *(
        (f"eighty {one}", rf"^(?=.*\brelay)(.*)\beighty[ -]{one}\b", rf"\g<1>8{n}")
        for n, one in enumerate(("five", "six", "seven"), 5)
    ),
    (" pitch", rf"{_METRIC_SIZE} (?:by )?{_PITCH} pitch\b", lambda m: _bolts_with_pitch(m, "")),
    (
        " pitch",
        (
            rf"{_METRIC_SIZE} (?P<what>bolts?|studs?|nuts?|screws?|caps?crews?|fittings?|threads?)"
            rf"(?: with| and| by)?(?: an?)? {_PITCH} pitch\b"
        ),
        lambda m: _bolts_with_pitch(m, f" {m['what']}"),
    ),
    *(
        (cue, r"\b([0-9]{2,3}) ?w(?:atts?)? x ?([2-8])\b", lambda m: f"{int(m[1]) * int(m[2])} watt")
        for cue in ("w x", "watt x", "watts x")
    ),
    *(
        (
            cue,
            rf"(?<![0-9./x-])\b(?:an? |the |my )?(pair of|twin|both|two|three|four|six|[2-8]) ((?:[a-z]+"
            rf" ){{0,2}}(?:fans|lamps|lights"
            r"|bulbs|pumps|motors|horns|spots|spotlights|heaters|headlights))"
            r"(?: (at|of|about|around|(?:that |which |they )?(?:pull|draw|tak|us|need|want)(?:e?s|ing|e)?"
            r"(?: about| up to| around)?))?"
            rf" (?:([0-9]+(?:\.[0-9]+)?)|((?:{_OF_TEN})(?:[ -](?:{_OF_ONE}))?|{_OF_TEEN}|{_OF_ONE}))"
            r" ?(amps?|a|watts?|w) (?:each|apiece|a piece)\b",
            _of_each,
        )
        for cue in (" each", " apiece", " a piece")
    ),
    (  # four pistons of 38 mm
        "piston",
        r"(?<![\w./-])([1246]|two|four|six) ?x ?(?=(?:[2-6][0-9](?:\.[0-9]+)?|[0-9./]+)(?: ?(?:mm|mil|in|inch|\"))? "
        r"(?:bore )?(?:pistons?|pots?)\b)",
        r"\1 ",
    ),
    ("half a ", r"\bhalf an? (?=volt|amp|degree|pound|gallon|litre|liter|metre|meter|mm|millimet|thou\b)", "0.5 "),
    (
        "by one",
        r"\b(?:em|m) ?(five|six|eight|ten|twelve|fourteen|sixteen|[0-9]{1,2}) by one and (a half|a quarter|three"
        r" quarters)(?! (?:inch|in|long))",
        _with_part,
    ),
    (
        "by one",
        (
            r"\b(?<!ty )(?<!ty-)(six|eight|ten|twelve|fourteen|sixteen|eighteen)(?: mm| mil| millimet(?:re|er)s?)? by"
            r" one"
            r"(?! point (?:one|three|four|six|eight|nine))(?: point (oh|zero|five|two five|seven five))?(?= |$)(?:"
            r" pitch)?(?! (?:inch|and|half))"
        ),
        _with_pitch,
    ),
    *(
        (
            cue,
            rf"\b(two|three|four|five|six|eight|[2-8])(?: ?x ?| )(?:([0-9]{{1,3}}) ?(?:w|watts?)\b(?: each)?"
            rf"|((?:{_OF_TEN})(?:[ -](?:{_OF_ONE}))?) ?watts?\b(?: each|(?= (?:driving |spot |fog |head |work"
            r" )*(?:lamps|lights|bulbs|fans))))",
            _watts,
        )
        for cue in ("watt", *(f"{digit}{blank}w " for digit in range(10) for blank in ("", " ")))
    ),
    *(
        (
            cue,
            (
                rf"(?<!point )(?<!and )\b({_OF_ONE})[ -]({_TWO_DIGITS})"
                r"(?= ?(?:horse|horsepower|hp|ponies|amps?|degrees?|deg|foot|ft|pounds?|lbs?|psi|nm|newtons?|watts?"
                r"|fahrenheit|celsius|kpa|rpm|mph|miles|km/h|kmh|kph|kays|kilomet(?:re|er)s|f|c|cc|ccs|mpa"
                r"|megapascals?|kilos?|kg|litres|liters|revs)\b)"
                rf"{_COUNTED}"
            ),
            _hundreds,
        )
        for cue in _SAID_BY_TENS
    ),
    ("degree", rf"\bone ({_TWO_DIGITS})[ -]degrees? (bends?|elbows?|turns?|mandrel)\b", _of_bend),
    ("v ", r"\bv (eight|six|twelve|ten|four)\b", lambda m: f"v{_METRIC.get(m[1]) or _ONES.get(m[1]) or _TEENS[m[1]]}"),
)
