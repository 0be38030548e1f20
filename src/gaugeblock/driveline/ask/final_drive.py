"""What is asked of the axle ratio for an engine speed, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.driveline.ask.common import answer_of
from gaugeblock.driveline.ask.either import bare_speed, either_speed
from gaugeblock.driveline.ask.gears import ROAD
from gaugeblock.driveline.ask.named_gear import GEAR_NAMED, NAMED_GEAR, with_its_ratio

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _tall(match: re.Match[str]) -> str:
    return f"{match['n']} {'mm' if match['mm'] else 'in'}"


def _open_speed(values: dict[str, str], _data: Refdata) -> Open | None:
    """Both units of a speed that has none."""
    return either_speed(values, "speed")


FINAL_DRIVE = Topic(
    lambda: answer_of("gears.final_drive", "finaldrive"),
    "axle ratio for an engine speed",
    {
        "engine_speed": (
            amount("rotational speed", before="(?:for|at|turning|sit at|about|only)(?: about)?", say="{} wanted"),
            amount("rotational speed", say="{} wanted"),
            Shaped(
                r"(?:does|turns?|turning|doing|for|at|shows?|revs?(?: at)?|needs?|wants?|runs?|pulls?|spins?"
                r"|sits? (?:at|on)"
                r"|sitting (?:at|on)|holds?)(?: about| around)? (?P<n>[1-9][0-9]{3})"
                r"(?! ?(?:lbs?|pounds|feet|ft|miles|mm|km))",
                lambda m: f"{m['n']} rpm",
                "{} wanted",
            ),
        ),
        "speed": (
            amount("speed", before="(?:at|doing|going|on)(?: about)?", say="at {}"),
            amount("speed", say="at {}"),
            bare_speed("at|doing", "at {}"),
        ),
        "tyre": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:(?P<mm>mm)|inch(?:es)?|in|\")(?: tall| dia(?:meter)?)*(?: tyres?| tires?)"
                r"(?: dia(?:meter)?)?",
                _tall,
                "tyre {}",
            ),
            amount(
                "length",
                before=r"(?:tyres?|tires?|wheels?)(?: (?:stands?|measures?|are|is|of|that|about))*",
                say="tyre {}",
                least=400,
                cue=("tyre", "tire", "wheel"),
            ),
            *ROAD.slots["tyre"],
        ),
        "gear": (
            Shaped(r"direct(?: top)?|top is direct|1 ?[:to]* ?1 top", always("1"), "direct top"),
            *ROAD.slots["gear"],
        ),
        NAMED_GEAR: GEAR_NAMED,
    },
    r"(?:what|which)(?: axle| diff| rear| final)*(?: drive)?(?: ratios?| gears?)?|final drive|diff|axle|ratio"
    r"|rear end"
    r"|would|wanted|needed|required|have me|gives?|gets?|puts?|want|need|me|do i need|should i (?:run|fit)|for|to"
    r"|doing|with|at|in|top|gear|(?:is )?in it|(?:has|have|had) (?:it|i|we|she) (?:got|in)|is it|have i|if|when"
    r"|tyres?|tires?|cruise|cruising",
    needs=("engine_speed", "speed", "tyre"),
    opens=_open_speed,
    settle=with_its_ratio("gear", "axle ratio for an engine speed"),
    asks_for=(
        r"(?:diff|axle|final drive|rear end)(?: ratio)?$|(?:what|which) (?:axle|diff|rear|final|ratio|gears?)\b.*"
        r"|(?:axle|diff|rear(?: end| axle)?|final(?: drive)?|gear)(?: ratio| gears?| gearing)?"
        r"(?: wanted| needed| required| i need| i want)? (?:for|to (?:get|give|do|turn|run|hit|cruise))"
        r"|(?:diff|axle|final drive|rear(?: end)?) (?:ratio )?(?:if|when) .*(?:rpm|revs)|(?:diff|axle"
        r"|final drive) ratio (?:is it"
        r"|has it|have i)"
        r"|ratio(?: wanted| needed| required| i need| i want)* (?:for|to (?:get|give|do|turn|run|hit|cruise))"
    ),
    is_named=True,
    unmoved="metal finish form standard service quality",
)
