"""What is asked of a low range, and of a speedometer after other gears, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic
from gaugeblock.driveline.ask.common import answer_of
from gaugeblock.driveline.ask.gears import ROAD
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_LOW_BOX = r"(?:low[- ]range|low box|low|transfer(?: (?:case|box))?(?: low)?|reduction(?: box)?)"
_RATIO = r"[2-9]\.[0-9]{1,2}"


def _whole(values: dict[str, str]) -> str:
    """The whole ratio of a low range, as a person is told it."""
    of = [values[key] for key in ("gear", "low", "ratio")]
    product = float(of[0]) * float(of[1]) * float(of[2])
    return f"the engine turns {product:.3g} times for one turn of the wheel, {' x '.join(of)}"


def _crawls(ratio: str, low: str, gear: str, tyre: str, engine_speed: str, *, data: Refdata) -> Sheet:
    """How fast a truck crawls: its first gear and its low range as one gear; the whole ratio is told with it."""
    both = f"{float(gear) * float(low):.6g}"
    roadspeed = answer_of("gears.road_speed", "roadspeed")
    sheet = roadspeed(ratio=ratio, tyre=tyre, engine_speed=engine_speed, gear=both, data=data)
    whole = _whole({"gear": gear, "low": low, "ratio": ratio})
    do = f"{whole[0].upper()}{whole[1:]}. {sheet.decision.do}"
    return sheet.replace(decision=sheet.decision.replace(do=do.strip()))


def _open_speed(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous, with the whole ratio, where what makes a road speed of it was not said."""
    lacking = [name for key, name in (("tyre", "tyre"), ("engine_speed", "engine speed")) if key not in values]
    if lacking:
        why = f"{_whole(values)}; for the road speed the {' and the '.join(lacking)} must be said too"
        raise Ambiguous("crawl ratio", "", why, (), 'say the rest with it, as "33 inch tyres at 800 rpm"')
    return None


CRAWL = Topic(
    lambda: _crawls,
    "crawl",
    {
        "gear": (
            Shaped(rf"(?P<n>{NUMBER})(?: to (?:1|one))? (?:first|1st)(?: gear)?", lambda m: m["n"], "first gear {}"),
            Shaped(rf"(?:first|1st)(?: gear)?(?: (?:of|is))? (?P<n>{NUMBER})", lambda m: m["n"], "first gear {}"),
        ),
        "low": (
            Shaped(
                rf"(?P<n>{NUMBER})(?: to (?:1|one))? {_LOW_BOX}",
                lambda m: m["n"],
                "low range {}",
                cue=("low", "transfer", "reduction"),
            ),
            Shaped(
                rf"{_LOW_BOX}(?: (?:of|is))? (?P<n>{NUMBER})",
                lambda m: m["n"],
                "low range {}",
                cue=("low", "transfer", "reduction"),
            ),
        ),
        "ratio": (
            Shaped(
                rf"(?P<n>{_RATIO})'?s?(?: to (?:1|one))?(?: (?:diffs?|axles?|gears?|ratios?|rear(?: end)?|final"
                rf" drive|ring and"
                r" pinion))*",
                lambda m: m["n"],
                "axle ratio {}",
                doubt=1,
            ),
        ),
        "tyre": ROAD.slots["tyre"],
        "engine_speed": ROAD.slots["engine_speed"],
    },
    r"crawl(?:s|ing|er)?(?: ratio| speed)?|how (?:slow|fast)|slow|what(?: crawl)? ratio|ratio|overall|total|revs"
    r"|rpm|have i got"
    r"|tyres?|tires?|at|on|that|idle|idling|in low|low range|first gear|speed|walking pace",
    needs=("gear", "low", "ratio"),
    opens=_open_speed,
    asks_for=r"crawl\w*|how slow|low range",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)


def _geared(ratio: str, was_ratio: str, *, data: Refdata) -> Sheet:
    """What a speedometer shows after other gears, on the tyres that it had: any tyre gives the same."""
    from gaugeblock.answer.decision import USE, Candidate, Decision
    from gaugeblock.driveline.gears.true_speed import shown_over_true

    tyre = "28 in"
    sheet = answer_of("gears.answer", "gearing")(
        ratio, was_ratio=was_ratio, tyre=tyre, was_tyre=tyre, speed="60 mph", data=data
    )
    shows = sheet.figure("speedometer_ratio")
    do = f"{shown_over_true(shows.typical)} The same tyres were taken before and after, here of {tyre}."
    candidate = Candidate(shows, plus="times the true speed")
    figures = sorted(sheet.figures, key=lambda one: one is not shows)
    return sheet.replace(
        title=f"speedometer with {ratio} gears, right with {was_ratio}",
        figures=tuple(figures),
        decision=Decision(USE, "SPEEDOMETER SHOWS", (candidate,), (), do),
    )


_GEARS = r"(?: (?:gears?|gearing|diffs?|axles?|ratios?|rear(?: end)?|final drive|ring and pinion))*"
SPEEDO_OF_GEARS = Topic(
    lambda: _geared,
    "speedometer after other gears",
    {
        "was_ratio": (
            Shaped(
                rf"(?:from|had|was|were|in (?:place|lieu) of|swapp?ed|changed|right with|out of|took out"
                rf"|replaced)(?: (?:the|my|out|it|with|from))*"
                rf" (?P<n>{_RATIO})'?s?{_GEARS}",
                lambda m: m["n"],
                "right with {}",
            ),
            Shaped(
                rf"(?P<n>{_RATIO})'?s?{_GEARS}(?= (?:to|for|out|swapped for|changed (?:to|for))\b)",
                lambda m: m["n"],
                "right with {}",
            ),
        ),
        "ratio": (
            Shaped(
                rf"(?:to|for|now|with|put in|fitted|got|on)(?: (?:the|it|has|have|is|my))*"
                rf" (?P<n>{_RATIO})'?s?{_GEARS}",
                lambda m: m["n"],
                "now {}",
            ),
            Shaped(rf"(?P<n>{_RATIO})'?s?{_GEARS} (?:in(?! (?:place|lieu))|now|fitted)", lambda m: m["n"], "now {}"),
            Shaped(rf"(?P<n>{_RATIO})'?s?{_GEARS}(?= in (?:place|lieu) of)", lambda m: m["n"], "now {}"),
        ),
    },
    r"speedo(?:meter)?s?|how far (?:off|out)|how much|how (?:far|much) (?:is|will|does) (?:it|the speedo)|out"
    r"|off|read(?:s|ing)?|shows?"
    r"|(?:on |with )?(?:the )?same (?:tyres?|tires?|wheels?|rubber)|gears?|swapp?ed|changed|drives? off(?: the)?"
    r"|driven off|tail"
    r"|transmission|trans|gear ?box|error|percent(?:age)?|now|will|fast|slow|correct(?:ion)?|diff|axle|ratio"
    r"|went|going",
    needs=("ratio", "was_ratio"),
    asks_for=r"speedo\w*",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
