"""What is asked of engine speed, axle ratio and tyre, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.driveline.ask.common import OF_THE_CAR, answer_of
from gaugeblock.driveline.ask.either import bare_speed, either_speed
from gaugeblock.driveline.ask.named_gear import GEAR_NAMED, HIGH, LOW, NAMED_GEAR, with_its_ratio
from gaugeblock.driveline.ask.tyres import code_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata

CODED = r"(?:p|lt)?[1-3][0-9]5 ?[/ -] ?[2-9][05](?: ?(?:z?r|-|/) ?| )[12][0-9](?:\.5)?"
_JOIN = r"(?: ?(?:,|and|or|vs|versus|against|to) ?| )"


def _ratios(match: re.Match[str]) -> str:
    import re

    typed = re.sub(r"\b([2-6]) ([0-9]{2})\b", r"\1.\2", match["all"])  # three fifty five
    return ", ".join(re.findall(r"[0-9]+\.[0-9]+|[0-9]+[/:][0-9]+|[0-9]+", typed)).replace(":", "/")


def _tyre(match: re.Match[str]) -> str:
    code = match["code"]
    if code:
        return code_of(code)
    return f"{match['n']} in"


# No axle turns its wheels as fast as its shaft: what is less is a gear of the gearbox.
RATIO = (
    r"(?:(?:[2-9]\.[0-9]{1,2}|1\.[1-9][0-9]?)(?::1|'?s)?|[0-9]{2}[/:][0-9]{1,2}"
    r"|[2-6] [0-9]{2}(?= (?:gears?|rear|axle|ratio)))"
)

# What stands after a number that is the axle's and no gear's.
_OF_AXLE = r"(?:axle|rear|diff|final|ratio|ring|gears?\b|gearing)"
_TYRES = ("24 in", "26 in", "28 in", "30 in")


# An overdrive whose name goes without saying: 3.54 0.82.
BARE_GEAR = Shaped(
    r"(?:and |with )?(?P<n>0?\.[5-9][0-9]{0,2})(?! ?(?:in|inch|mm|cm|m|ft|thou|wall|l|litres?|bar)\b)",
    lambda m: f"0.{m['n'].split('.')[1]}",
    "gear {}",
    doubt=1,
)


_gears_said = with_its_ratio("gears", "engine speed")


def _open_gearing(values: dict[str, str], data: Refdata) -> Open | None:
    """Usual tyres, where none was said; both units of a speed that has none."""
    _gears_said(values, data)
    speeds = either_speed(values, "speed")
    if "tyre" in values or "," in values["ratios"]:
        return speeds
    each = [{}] if speeds is None else speeds[1]
    keys = ("tyre",) if speeds is None else ("tyre", "speed")
    return keys, [{"tyre": tyre, **one} for tyre in _TYRES for one in each]


def _open_tyre(values: dict[str, str], _data: Refdata) -> Open | None:
    """Usual tyres, where none was said; each gear of several."""
    gears = values.get("gear", "").split()
    if len(gears) > 1:
        tyres = [values["tyre"]] if "tyre" in values else _TYRES
        keys = ("gear",) if "tyre" in values else ("tyre", "gear")
        every = [{"tyre": tyre, "gear": gear} for tyre in tyres for gear in gears]
        return keys, [{key: row[key] for key in keys} for row in every]
    return None if "tyre" in values else (("tyre",), [{"tyre": tyre} for tyre in _TYRES])


# Axle ratios that are common; they are set side by side where the ratio is what is asked.
_USUAL = "2.73, 3.08, 3.42, 3.73, 4.10, 4.56"
GEARING = Topic(
    lambda: answer_of("gears.answer", "gearing"),
    "engine speed",
    {
        "ratios": (
            Shaped(
                r"(?:(?:axle|rear(?: end| axle)?|final(?: drive)?|diff(?:erential)?)(?: (?:ratio|of|is|has|in it))* )?"
                rf"(?P<all>{RATIO}(?:{_JOIN}{RATIO})*)(?: (?:to 1|to one))?(?:"
                r" (?:gears?|gearing|axles?|ratios?|rear(?: end| axle)?|diffs?|final(?: drive)?|ring and pinion))*",
                _ratios,
                "axle ratio {}",
            ),
            Shaped(
                r"(?:what|which) (?:rear |axle |final |diff )*(?:gear(?:ing|s)?|ratios?)(?: ratio)?(?: do i need)?"
                r"|(?:what |which )?(?:axle|rear(?: end| axle)?|diff|final drive) ratio",
                always(_USUAL),
                "the usual axle ratios",
                doubt=2,
            ),
        ),
        "tyre": (
            Shaped(  # by its height, its width and its rim, which may go unsaid
                r"(?P<n>[2-4][0-9](?:\.[0-9]+)?) ?x ?(?P<wide>(?:[7-9]|1[0-5])(?:\.[0-9]{1,2})?)(?: ?(?:r|-|x) ?"
                r"(?P<rim>1[4-9]|2[0-4]))?'?s?(?: (?:tires?|tyres?|rubber|wheels?))*",
                lambda m: f"{m['n']}X{m['wide']}R{m['rim']}" if m["rim"] else f"{m['n']} in",
                "tyre {}",
                cue=("x",),
            ),
            Shaped(
                rf"(?P<code>{CODED})'?s?(?: (?:tires?|tyres?|rubber|rims?|wheels?))*|(?P<n>[0-9]{{2}}(?:\.[0-9]+)?)"
                r" ?(?:inch|in|\")? (?:tall )?(?:tires?|tyres?|rubber)",
                _tyre,
                "tyre {}",
            ),
            amount("length", after="(?:tall |diameter |high )?(?:tires?|tyres?|wheels?)", say="tyre {}"),
            amount(
                "length",
                before=r"(?:tires?|tyres?|wheels?)(?: (?:that|of|are|is|with|at|stand|about|an?))*",
                after=r"(?:(?:rolling|overall|outside|in|across|loaded) )*(?:diameter|dia|tall|high|height|od|across)",
                say="tyre {}",
                cue=("tyre", "tire", "wheel"),
            ),
            amount(
                "length",
                before=r"(?:tyres?|tires?|wheels?)(?: (?:stands?|standing|measures?|measured|measuring|are|is|of|that"
                r"|about|come out at|up))+",
                say="tyre {}",
                least=400,
                cue=("tyre", "tire", "wheel"),
            ),
            Shaped(
                r"(?:tires?|tyres?)(?: that)?(?: are| is| of)? (?P<n>[2-4][0-9](?:\.[0-9]+)?)(?:"
                r" ?(?:inch(?:es)?|in|\"))?"
                r"(?: tall| high| diameter)?",
                lambda m: f"{m['n']} in",
                "tyre {}",
                cue=("tire", "tyre"),
            ),
            Shaped(r"(?P<n>[2-4][0-9](?:\.5)?)'?s(?: on it)?", lambda m: f"{m['n']} in", "tyre {}"),
            Shaped(r"(?P<n>[2-4][0-9](?:\.[0-9]+)?) ?(?:inch|in|\")", lambda m: f"{m['n']} in", "tyre {}", doubt=2),
        ),
        "was_ratio": (
            Shaped(
                rf"(?:(?:was|were|had|from|right|correct|spot on|accurate)(?: right| correct)?(?: with| at| on)?(?:"
                rf" the)?) "
                rf"(?P<n>{RATIO})(?: gears?| rear| axle| ratio)*",
                lambda m: m["n"].removesuffix("s").removesuffix("'"),
                "speedometer right with {}",
                doubt=1,
            ),
        ),
        "speed": (
            amount("speed", before="at|doing|for", say="at {}"),
            amount("speed", say="at {}"),
            bare_speed("at|doing|do|cruis(?:e|es|ing)(?: at)?", "at {}"),
        ),
        "gears": (
            Shaped(
                rf"(?:in )?(?:top|{HIGH}|overdrive)(?: gear)?(?: of|(?: which| that)? is|,)?"
                r" (?P<n>0?\.[0-9]+|1(?:\.0+)?)(?: to (?:1|one))?",
                lambda m: m["n"] if m["n"][0] != "." else f"0{m['n']}",
                "gear {}",
            ),
            Shaped(
                rf"(?:in )?(?:top|{HIGH})(?: gear)?(?: (?:which|that))?(?: is)? (?:one to one|direct)",
                always("1"),
                "gear 1",
            ),
            Shaped(
                rf"(?:in )?(?:{LOW})(?: gear)?(?: of|(?: which| that)? is|,)?"
                rf" (?P<n>[1-3]\.[0-9]+)(?! ?(?:to 1 )?{_OF_AXLE})",
                lambda m: m["n"],
                "gear {}",
            ),
            Shaped(
                rf"(?:with |and |in )?(?:an? )?(?P<n>0?\.[0-9]+|{NUMBER}) (?:overdrive|top(?:"
                rf" gear)?|od|(?:{LOW}|{HIGH})(?: gear)?)",
                lambda m: m["n"] if m["n"][0] != "." else f"0{m['n']}",
                "gear {}",
            ),
            BARE_GEAR,
        ),
        "engine_speed": (
            # alone it asks for the road speed
            amount(
                "rotational speed", before="for|at|doing|sit at|sit on|turn(?:ing)?", say="no more than {}", doubt=1
            ),
            Shaped(r"(?P<n>[0-9]{3,5}) ?(?:rpm|revs|r/min)", lambda m: f"{m['n']} rpm", "no more than {}", doubt=1),
        ),
        NAMED_GEAR: GEAR_NAMED,
        **OF_THE_CAR,
        "transfer": (Shaped(rf"(?P<n>{NUMBER}) transfer(?: case)?", lambda m: m["n"], "transfer {}"),),
    },
    r"(?:gear ?)?box|rear|speedo(?:meter)?"
    r"|clock|went"
    r" to|changed?|swapped|same (?:tires?|tyres?)|how (?:far|much) (?:off|out)|reads?|shows?"
    r"|teeth|ring|pinion|ratio|(?:engine )?(?:rpms?|revs?|revolutions)|engine"
    r" speed|turn(?:ing)?|tires?|tyres?|gears?|gearing|axle|cruise|cruising|highway|top speed|(?:in )?top(?:"
    r" gear)?|diffs?|differential|final drive|standing(?: up)?|stand(?:s|ing)? tall|(?:in )?direct(?: top| drive)?"
    r"|speed|rear end",
    needs=("ratios",),
    opens=_open_gearing,
    settle=_gears_said,
    table="gearing",
    job_keys={"ratios": "ratios[]", "gears": "gears[]"},
    unmoved="metal finish form standard service quality",
)
_AT = (
    r"(?:at|to|hits?|with|doing|turn(?:ing)?|spin(?:ning)?|rev(?:s|ving)?(?: (?:it|her|to|out))*|line at"
    r"|redline(?: is| at| of)?|on)"
)
ROAD = Topic(
    lambda: answer_of("gears.road_speed", "roadspeed"),
    "road speed",
    {
        "ratio": (
            Shaped(
                r"(?:(?:axle|rear(?: end)?|final(?: drive)?|diff) (?:ratio )?(?:of |is )?)?"
                rf"(?P<n>{RATIO})(?: to 1)?(?: (?:gears?|gearing|axles?|ratios?|diffs?|rear(?: end| axle)?"
                r"|final(?: drive)?|ring and pinion))*",
                lambda m: m["n"].removesuffix("s").removesuffix("'"),
                "axle ratio {}",
            ),
        ),
        "tyre": (*GEARING.slots["tyre"], amount("length", after="slicks?", say="tyre {}")),
        "engine_speed": (
            amount("rotational speed", before=_AT, say="engine at {}"),
            amount("rotational speed", say="engine at {}"),
            # nobody drives so fast
            Shaped(
                rf"{_AT} (?:about )?(?P<n>[1-9][0-9]{{3}})(?! ?(?:lbs?|pounds|feet|ft|miles|mm))",
                lambda m: f"{m['n']} rpm",
                "engine at {}",
            ),
            Shaped(
                r"(?P<n>[1-9][0-9]{3})(?= in (?:the )?(?:top|direct|overdrive|first|second|third|fourth|fifth|sixth"
                r"|1st|2nd|3rd|[4-6]th)\b)",
                lambda m: f"{m['n']} rpm",
                "engine at {}",
            ),
        ),
        "gear": (
            Shaped(
                rf"(?:with |and |in )?(?:an? |the )?(?P<n>0?\.[0-9]+|{NUMBER}) (?:overdrive|top(?: gear)?|od"
                r"|(?:first|1st|second|2nd"
                r"|third|3rd|fourth|4th|fifth|5th|sixth|6th)(?: gear)?)",
                lambda m: m["n"] if m["n"][0] != "." else f"0{m['n']}",
                "gear {}",
            ),
            Shaped(
                r"(?:in )?(?:top|first|1st|second|2nd|third|3rd|fourth|4th|fifth|5th|sixth|6th|overdrive)(?:"
                r" gear)?(?: of|"
                r" is|,)?"
                r" (?P<n>0?\.[0-9]+|[1-4]\.[0-9]+|1(?= |$)(?! (?:to|[0-9])))",
                lambda m: m["n"] if m["n"][0] != "." else f"0{m['n']}",
                "gear {}",
            ),
            Shaped(
                r"(?:in )?(?:top|fourth|4th|direct)(?: gear)?(?: (?:which|that))?(?: is|,)?"
                r" (?:1 to 1|one to one|1:1|direct)|(?:1 to 1|one to one|1:1|direct)(?: top(?: gear)?)?",
                always("1"),
                "gear 1 to 1",
            ),
            BARE_GEAR,
        ),
        NAMED_GEAR: GEAR_NAMED,
        **OF_THE_CAR,
    },
    r"gear ?box|(?:gear ?)?box|speeds"
    r"|(?:one|1) to (?:one|1)|how fast|(?:what|which) (?:road )?speed|road speed|top speed|(?:how many )?(?:mph|km/h"
    r"|kph|miles an hour)|speed"
    r"|engine|rpms?|revs|gears?|gear ?box|axle|rear(?: end)?|diff|tyres?|tires?|(?:in )?top(?: gear)?|(?:the )?line"
    r"|crossed|shift"
    r"|redline|limiter|go(?:es|ing)?|doing|car|it|that|am i|will it|was he|would|is|at|fast",
    needs=("ratio", "engine_speed"),
    opens=_open_tyre,
    settle=with_its_ratio("gear", "road speed"),
    joined=("gear",),
    asks_for=r"how fast|speeds|(?:what|which|road|top) speed|how many (?:mph|km/h|miles)|(?<![0-9] )speed$|what mph"
    r"|mph at|speed at|rpms?|revs"
    r"|[1-9][0-9]{3} in (?:top|direct|overdrive|(?:first|second|third|fourth|fifth|sixth) gear)",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
