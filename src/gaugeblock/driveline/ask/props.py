"""What is asked of a propeller shaft, as people say it."""

from __future__ import annotations

from gaugeblock.answer.alloys import Graded
from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.answer.stating import known
from gaugeblock.driveline.ask.common import THOUSANDS, answer_of
from gaugeblock.driveline.ask.either import either_speed
from gaugeblock.driveline.ask.gears import GEARING

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _open_shaft(values: dict[str, str], data: Refdata) -> Open | None:
    """A propeller shaft of each material, where none was named."""
    if "material" in values or "wall" not in values:
        return None
    found = dict.fromkeys(row["material"] for row in data.table("driveline/shaft_tubes").rows if not row.standing)
    return ("material",), [{"material": m} for m in found]


OF_THE_SHAFT = "speed_of_the_shaft"


def _behind_the_gearbox(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The speed of the engine, where a gear was said that turns the shaft otherwise."""
    if OF_THE_SHAFT in values:  # whatever the gear
        own = {key: value for key, value in values.items() if key not in (OF_THE_SHAFT, "gears")}
        return {**own, "speed": values[OF_THE_SHAFT]}
    if "gears" in values and "speed" in values:
        own = {key: value for key, value in values.items() if key != "speed"}
        return {**own, "engine_speed": values["speed"]}
    return {key: value for key, value in values.items() if key != "gears"}


# A gear that turns the shaft faster than the engine.
_OVERDRIVE = (
    Shaped(
        r"(?:an? |the )?(?P<n>0?\.[0-9]{1,3}) (?:overdrive|od|top|fifth|sixth|5th|6th|fourth|4th)(?: (?:top|gear))*",
        lambda m: f"0.{m['n'].split('.')[1]}",
        "gear {}",
    ),
    Shaped(
        r"(?:top gear is )?(?:overdrive|top|fifth|sixth|5th|6th)(?: gear)?(?: (?:of|is|ratio|at"
        r"|about))* (?P<n>0?\.[0-9]{1,3})",
        lambda m: f"0.{m['n'].split('.')[1]}",
        "gear {}",
    ),
)
# The two ends between which a shaft is measured.
_BETWEEN = (
    r"between (?:the )?(?:joints?|ujs?|u-joints?|yokes?|cent(?:re|er)s?)"
    r"(?: cent(?:re|er)s?| cent(?:re|er) to cent(?:re|er))?"
)
_MOST_TUBE, _MOST_WALL = 200, 12  # mm, of a propeller shaft
_MM = r"(?:[3-9][0-9]|1[0-5][0-9])(?:\.[0-9]{1,2})?"  # its tube in millimetres, without their name
_PROPELLER = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|prop"
SHAFT = Topic(
    lambda: answer_of("propshafts.answer", "shaft"),
    "propeller shaft",
    {
        "od": (
            amount(
                "length", after=rf"(?:od|dia(?:meter)?|tube|{_PROPELLER})", bare="in", say="tube {}", most=_MOST_TUBE
            ),
            Shaped(  # before its wall, where no length stands
                r"(?P<n>[1-6](?:\.[0-9]+)?|[1-6] [1-7]/[248])(?: ?(?:in|inch|\"))?(?: (?:tube|od))?(?= (?:x |by"
                r" )?(?:0?\.[0-9]{2,3}|0[2-9][0-9](?= |$)))",
                lambda m: f"{m['n']} in",
                "tube {}",
            ),
            Shaped(  # no shaft of a car is so many inches thick
                rf"(?P<n>{_MM})(?: (?:od|outside(?: dia(?:meter)?)?|dia(?:meter)?|tube)|(?=(?: mm)? (?:x|by)"
                r" [1-5](?:\.[0-9]{1,2})?(?: mm)?(?! ?(?:[0-9/x]|in|inch|ft|m|\")\b)))",
                lambda m: f"{m['n']} mm",
                "tube {}",
            ),
            amount("length", say="tube {}", doubt=2, most=_MOST_TUBE),
        ),
        "wall": (
            Shaped(
                r"(?P<n>0?\.[0-9]+)(?: ?(?:in|inch))?(?: ?wall)?",
                lambda m: f"0.{m['n'].split('.')[1]} in",
                "{} wall",
            ),
            Shaped(  # 065, as a wall is typed in thousandths
                r"(?P<n>0[2-9][0-9])(?: ?wall)?(?! ?(?:rpm|nm|lbs?|ft))", lambda m: f"0.{m['n']} in", "{} wall"
            ),
            Shaped(  # as walls of tube are called in thousandths
                r"(?P<n>49|58|65|72|83|95|109|120|125|134|156|188)(?: thou)? wall",
                lambda m: f"{int(m['n']) / 1000:g} in",
                "{} wall",
                cue=("wall",),
            ),
            amount("length", after="wall", bare="in", say="{} wall", most=_MOST_WALL),
            amount("length", before="x|by", say="{} wall", most=_MOST_WALL),
            Shaped(
                r"(?:x|by) (?P<n>[1-5](?:\.[0-9]{1,2})?)(?: mm)?(?: wall| tub(?:e|ing))?(?! ?(?:in|inch|ft|m|\")\b)",
                lambda m: f"{m['n']} mm",
                "{} wall",
                doubt=1,
                cue=("x ", "by "),
            ),
            amount("length", after="wall", bare="mm", say="{} wall", most=_MOST_WALL),
        ),
        "material": (
            Graded("aluminium"),
            Graded("steel"),
            Shaped("alumini?um|ally", always("aluminium"), "{}"),
            Shaped("(?:mild )?steel|dom", always("steel"), "{}"),
        ),
        "length": (
            Shaped(  # no shaft is so many inches long
                rf"(?P<n>[3-9][0-9]{{2}}|[12][0-9]{{3}}) (?:{_BETWEEN}|long|(?:joint )?cent(?:re"
                rf"|er)s?(?: to cent(?:re|er)s?)?"
                rf"|between (?:the )?(?:joints?(?: cent(?:re|er)s?)?|cent(?:re|er)s?|ujs?|u-joints?)"
                rf"|joint to joint|(?:{_PROPELLER})(?! ?(?:rpm|revs|speed)))",
                lambda m: f"{m['n']} mm",
                "{} long",
                cue=("long", "between", "cent", "joint", "prop", "shaft"),
            ),
            amount(
                "length",
                after=rf"(?:long|{_BETWEEN}|joint to joint|cent(?:re|er) to cent(?:re|er))",
                bare="in",
                say="{} long",
            ),
            amount("length", before="length(?: of| is)?", bare="in", say="{} long"),
            Shaped(  # 3 in x .083 x 52: of so few millimetres there is no shaft
                r"(?:x|by) (?P<n>[2-9][0-9](?:\.[0-9]+)?)(?: long)?(?! ?(?:in|inch|inches|mm|ft|feet|m|\"|x|by)\b)",
                lambda m: f"{m['n']} in",
                "{} long",
                doubt=1,
                cue=("x ", "by "),
            ),
            amount("length", say="{} long", doubt=3),
        ),
        "speed": (
            amount("rotational speed", before="at", say="at {}"),
            amount("rotational speed", say="at {}"),
            Shaped(
                r"(?:revs?|revved|spins?|spun|turns?|turning|winds?|wound|buzz(?:es|ed)?|runs?|sees?)(?: (?:it"
                r"|them|her|him"
                r"|up|out))*"
                r"(?: to| at)? (?P<n>[1-9][0-9]{3,4})(?! ?[a-z]*[0-9/])",
                lambda m: f"{m['n']} rpm",
                "at {}",
            ),
            THOUSANDS,
            Shaped(r"(?P<n>[4-9][0-9]{3})$", lambda m: f"{m['n']} rpm", "at {}", doubt=2),  # no torque is so high
        ),
        OF_THE_SHAFT: (
            Shaped(
                r"(?P<n>[1-9][0-9]{3})(?: (?:rpm|revs))? (?:on|at) the (?:prop|drive|tail)?[- ]?shaft",
                lambda m: f"{m['n']} rpm",
                "at {}",
                cue=("shaft",),
            ),
        ),
        "gears": _OVERDRIVE,
        "torque": (amount("torque", say="{}"),),
        "yield_strength": known("stress", "yields?(?: stress)?", "yield {}", cue=("yield",)),
        "modulus": known("stress", "modulus(?: of elasticity)?|young'?s modulus", "modulus {}", cue=("modul",)),
    },
    rf"hollow(?= (?:{_PROPELLER}))"
    rf"|(?:is )?fine|see|(?:at|up at) the top(?: end)?|having|made up|(?:top )?(?:gear )?(?:is )?overdrive|motor"
    rf"|engine|okay|ok|i rev|on the shaft"
    rf"|{_PROPELLER}|whips?|whirls?|whipping|outside(?: dia(?:meter)?)?|between (?:the )?(?:joint )?centres"
    rf"|critical(?:"
    r" speed)?|rpms?|revs|speed|safe|vibrat\w*|how"
    r" (?:fast|long)|spin|turn|too long"
    r"|(?:in )?(?:direct(?: top| drive)?|top)(?: gear)?|start(?:s|ing)?(?: to)?|longest|long|tube|shaft|steel|x"
    r"|max(?:imum)?|1 piece",
    needs=("od", "length"),
    table="shafts",
    asks_for=rf"{_PROPELLER}|whips?|whirls?|whipping|critical speed",
    is_named=True,  # two lengths alone are of anything
    opens=_open_shaft,
    settle=_behind_the_gearbox,
    unmoved="finish standard service quality",
)
LONGEST = Topic(
    SHAFT.answer,
    "propeller shaft",
    {key: readers for key, readers in SHAFT.slots.items() if key != "length"},
    SHAFT.signals + r"|length|tail ?shaft|(?:in )?(?:1|one)[ -]piece|i|dare|can|go|run|at|flat out|turning",
    needs=("od", "wall", "speed"),
    asks_for=rf"longest|how long|(?:max(?:imum)?|greatest) (?:(?:{_PROPELLER}|tail ?shaft|shaft) )?length",
    is_named=True,
    opens=_open_shaft,
    unmoved="finish standard service quality",
)
# How fast a shaft turns behind the gearbox, where nobody said anything of its tube.
PROP_SPEED = Topic(
    SHAFT.answer,
    "speed of a propeller shaft",
    {
        "engine_speed": (
            amount("rotational speed", say="engine at {}"),
            Shaped(
                r"(?:at|to|spin(?:s|ning)?(?: (?:it|her))?(?: to)?|rev(?:s|ving)?(?: (?:it|her))?(?: to)?"
                r"|turn(?:s|ing)?(?: to)?"
                r"|redline(?: (?:of|is|at))?) (?P<n>[1-9][0-9]{3})(?! ?(?:lbs?|pounds|ft|mm|nm))",
                lambda m: f"{m['n']} rpm",
                "engine at {}",
            ),
        ),
        "gears": (
            *_OVERDRIVE,
            Shaped(r"(?:in )?direct(?: top| drive)?|1 to 1(?: top)?", always("1"), "gear {}"),
        ),
    },
    rf"{_PROPELLER}|(?:gear ?)?box|engine|how fast|what speed|do|does|spin(?:s|ning)?|turn(?:s|ing)?|rpm|revs"
    rf"|then|speed|top"
    r"|whips?|check(?: whip)?(?: at)?|redline|is that|doing|with|an?",
    needs=("engine_speed", "gears"),
    asks_for=rf"(?:{_PROPELLER}).*(?:speed|do|does|turn\w*|spin\w*|fast|rpm|revs)|(?:fast|speed|rpm"
    rf"|revs).*(?:{_PROPELLER})",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
# How fast it turns on the road: as the engine does in a direct gear.
PROP_ON_THE_ROAD = Topic(
    GEARING.answer,
    "speed of a propeller shaft, as that of the engine in a direct gear",
    {key: GEARING.slots[key] for key in ("ratios", "tyre", "speed")},
    rf"{_PROPELLER}|how fast|what speed|do|does|spin(?:s|ning)?|turn(?:s|ing)?|rpm|revs|speed|with|an?|diff|axle|gears?"
    r"|tyres?|tires?|road speed",
    needs=("ratios", "tyre", "speed"),
    opens=lambda values, _: either_speed(values, "speed"),
    asks_for=rf"(?:{_PROPELLER}).*(?:do|does|turn\w*|spin\w*|rpm|revs)|(?:fast|rpm|revs).*(?:{_PROPELLER})",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
