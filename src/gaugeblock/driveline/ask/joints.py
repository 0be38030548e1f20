"""What is asked of universal joints and of a propeller shaft, as people say it."""

from __future__ import annotations

from gaugeblock.answer.alloys import Graded
from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.answer.stating import known
from gaugeblock.driveline.ask.common import answer_of
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _settle_joint(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Both joints at one angle."""
    if values.pop("both", ""):
        values.setdefault("second", values["angle"])
    return values


def _open_shaft(values: dict[str, str], data: Refdata) -> Open | None:
    """A propeller shaft of each material, where none was named."""
    if "material" in values or "wall" not in values:
        return None
    found = dict.fromkeys(row["material"] for row in data.table("driveline/shaft_tubes").rows if not row.standing)
    return ("material",), [{"material": m} for m in found]


# A propeller shaft is at no other thousands.
_THOUSANDS = Shaped(
    r"at (?P<n>[1-9][0-9]{3})(?! ?(?:lbs?|pounds?|ft|feet|foot|n[-.]?m|newton|mm|in|inch|kg|deg))",
    lambda m: f"{m['n']} rpm",
    "at {}",
)
# How the joint behind the first one is called.
_SECOND = r"(?:other|second|back|rear|diff|pinion)(?: (?:end|one|joint|uj|u-joint))?"


# What a number is of that is no angle.
_OTHER_UNIT = (
    r"(?:rpm|revs|in|inch(?:es)?|mm|ft|mph|km/h|speed|thou|lbs?|hp|m|plan|top|above|side|elevation|in"
    r" plan|in the|from the|on plan|on the (?:plan|top|side))\b"
)


# To the side of the car, which is seen from above; a view from the side is another.
_SIDEWAYS = (
    r"(?:sideways|to (?:the|one) side|off to (?:the|one) side|(?:to the )?(?:left|right)(?: hand)?"
    r"|horizontal(?:ly)?|across)"
)
_DOWN = r"(?:down|downwards|downhill|vertical(?:ly)?|up and down|drop(?:s|ping)?|downward slope|of drop)"


def _bare(view: str, say: str) -> Shaped:
    """An angle whose degrees go without saying: 3 side and 2 plan."""
    return Shaped(
        rf"(?P<n>{NUMBER}) (?:off |out |down )?(?:in |from |on )?(?:the )?{view}(?: view)?",
        lambda m: f"{m['n']} deg",
        say,
        doubt=1,
        cue=("side", "elevation", "plan", "top", "above"),
    )


_AWAY = ("sideways", "side", "left", "right", "horizontal", "across")


def _aside(say: str) -> tuple[Shaped, ...]:
    """How far a shaft goes to the side: 2 degrees sideways, sideways 2."""
    return (
        Shaped(
            rf"(?P<n>{NUMBER})(?: ?(?:deg(?:rees?|s)?|\u00b0))? (?:out |over |off )?{_SIDEWAYS}",
            lambda m: f"{m['n']} deg",
            say,
            cue=_AWAY,
        ),
        Shaped(
            rf"(?:sideways|horizontal(?:ly)?)(?: (?:angle|by|is|of))* (?P<n>{NUMBER})(?: ?(?:deg(?:rees?|s)?"
            r"|\u00b0))?",
            lambda m: f"{m['n']} deg",
            say,
            cue=_AWAY,
        ),
    )


JOINT = Topic(
    lambda: answer_of("joints.answer", "joint"),
    "universal joint",
    {
        "top": (
            *_aside("{} seen from above"),
            _bare(r"(?:plan|top|above)", "{} seen from above"),
            amount(
                "angle",
                after=r"(?:off |out )?(?:in |from |on )?(?:the )?(?:plan|top|above)(?: view)?",
                say="{} seen from above",
                cue=("plan", "top", "above"),
            ),
            amount(
                "angle",
                before=r"(?:in |from |on )?(?:the )?(?:plan|top|above)(?: view)?(?: angle)?(?: of| is)?",
                say="{} seen from above",
                cue=("plan", "top", "above"),
            ),
        ),
        "angle": (
            amount(
                "angle", after=r"(?:off |out |down )?(?:in |from |on )?(?:the )?(?:side|elevation)(?: view)?", say="{}"
            ),
            _bare(r"(?:side|elevation)", "{}"),
            Shaped(
                rf"(?:and )?(?P<n>{NUMBER})(?: ?(?:deg(?:rees?|s)?|\u00b0))? {_DOWN}",
                lambda m: f"{m['n']} deg",
                cue=("down", "drop", "vertical"),
            ),
            amount("angle", say="{}"),
            Shaped(rf"(?P<n>{NUMBER})(?= and {NUMBER} ?deg)", lambda m: f"{m['n']} deg"),
            Shaped(
                rf"(?:working |joint )?angles?(?: (?:of|is|are|at))* (?P<n>{NUMBER})(?: (?:at |on )?(?:the"
                rf" )?front)?(?! ?{_OTHER_UNIT})",
                lambda m: f"{m['n']} deg",
                cue=("angle",),
            ),
        ),
        "both": (Shaped("both(?: of the)?(?: ends)?", always("yes"), "both joints"),),
        "second": (
            amount("angle", before="and|other(?: end)?(?: is| at)?|second(?: is| at)?", say="second {}"),
            Shaped(
                rf"(?:and )?(?P<n>{NUMBER})(?: ?deg(?:rees)?)? (?:at |on )?(?:the )?(?:{_SECOND})",
                lambda m: f"{m['n']} deg",
                "second {}",
            ),
            Shaped(
                rf"(?:and )?(?:at |on )?(?:the )?(?:{_SECOND})(?: (?:is|at|runs?|running|has|works?|sits?|joint))*"
                rf" (?P<n>{NUMBER})(?: ?(?:deg(?:rees|s)?|\u00b0))?(?! ?(?:rpm|revs|in|inch|mm|thou))",
                lambda m: f"{m['n']} deg",
                "second {}",
                cue=("other", "second", "back", "rear", "diff", "pinion"),
            ),
            amount("angle", say="second {}", doubt=1),
            Shaped(
                rf"and (?P<n>{NUMBER})(?= |$)(?! ?{_OTHER_UNIT})",
                lambda m: f"{m['n']} deg",
                "second {}",
                doubt=1,
                cue=("and",),
            ),
        ),
        "yokes_out": (
            Shaped(
                rf"(?:(?:are|is|about|roughly|by|nearly) )*(?P<n>{NUMBER}) ?(?:deg(?:rees?|s)?|\u00b0)"
                r" (?:(?:out|off)(?: of)? (?:(?:line|phase|true|square)|with each other|from each other)|out of alignment"
                r"|(?:out|off)(?= (?:on|at|with) (?:the )?(?:yokes?|spline|slip)))(?: (?:with|from|to) (?:each other|one another|the other))?",
                lambda m: f"{m['n']} deg",
                "yokes {} out of line",
                cue=("out", "off"),
            ),
            Shaped(
                rf"yokes?(?: (?:are|is|by|about|set|welded|stand))* (?P<n>{NUMBER}) ?(?:deg(?:rees?|s)?|\u00b0) (?:out|off|apart|twisted)",
                lambda m: f"{m['n']} deg",
                "yokes {} out of line",
                cue=("yoke",),
            ),
        ),
        "phasing": (
            Shaped(r"(?:in|correct(?:ly)?) phased?", always("in phase")),
            Shaped(r"(?:out of|wrong) phase|90 deg(?:rees)? out", always("wrong phase")),
        ),
        "speed": (
            amount("rotational speed", before="at", say="at {}"),
            amount("rotational speed", say="at {}"),
            _THOUSANDS,
        ),
    },
    r"cross[- ]type|(?:truck |car )?driveline|(?:u|universal|uj|cardan|hooke'?s?)[- ]?joints?|ujs?|joints?"
    r"|drive ?shaft|prop(?:eller)?[-"
    r" ]?shaft|shaft|angles?|vibrat\w*|working|operating"
    r"|(?:whats?|what is) the (?:real|true|actual|compound)|real|true|actual|compound|off|view|prop"
    r"|(?:at |on )?(?:the |at )?(?:one|front|first|gearbox) end"
    r"|lift(?:ed|ing)?|shudder(?:s|ing)?|works?|true|zero|nought|(?:what(?:'?s| is) )?wrong with (?:that|it|this)|she"
    r"|back|ok"
    r"|fastest|runs?|running|front|slowest|highest|lowest|greatest|least|speeds?|bent|one|single"
    r"|(?:speed )?(?:changes?|varia\w+|varies|ripple|swing)|see|output",
    needs=("angle",),
    asks_for=r"u|ujs?|u-?joints?|joints?|cardan|hooke\S*|drive ?shafts?|prop\S*|phase[ds]?|yokes?"
    r"|(?:true|compound|real) angles?|side.*plan|plan.*side",
    is_named=True,  # an angle alone is of anything
    table="joints",
    settle=_settle_joint,
    unmoved="metal finish form standard service quality",
)


def _open_limit(values: dict[str, str], data: Refdata) -> Open | None:
    """Every speed that is printed, where none was said."""
    if "speed" in values:
        return None
    rows = (r for r in data.table("driveline/joints").of("working_angle_maximum") if r["joint"] == "single cardan")
    speeds = {r["shaft_speed"] for r in rows if not r.standing and r["case"].startswith("normal operation")}
    return ("speed",), [{"speed": speed} for speed in sorted(speeds)]


JOINT_LIMIT = Topic(
    lambda: answer_of("joints.limit", "joint_limit"),
    "greatest angle of a universal joint",
    {
        "speed": (
            amount("rotational speed", before="at", say="at {}"),
            amount("rotational speed", say="at {}"),
            Shaped(
                r"(?:at )?(?P<n>[1-9][0-9]{2,3}) (?:drive ?shaft|prop(?:eller)?(?:[- ]?shaft)?) (?:rpm|revs)",
                lambda m: f"{m['n']} rpm",
                "at {}",
            ),
        )
    },
    JOINT.signals
    + r"|(?:drive|prop(?:eller)?)? ?(?:shaft )?rpm|revs|uj|(?:how much|what|the)? ?(?:max(?:imum)?|most|greatest"
    r"|biggest|steepest)(?: (?:working|operating|joint))?(?:"
    r" angle)?|how (?:much|steep)|too (?:much|steep)|prop|allowed|run(?:s)?|turns?|can|should|at that speed|limit|u",
    asks_for=r"(?:max(?:imum)?|most|greatest|biggest|steepest|how much|limit).*\bangles?"
    r"|angles?.*\b(?:max(?:imum)?|limit|most)|(?:what|which) (?:uj |u-joint |joint |working )*angle (?:can|may"
    r"|should|is)",
    is_named=True,
    opens=_open_limit,
    unmoved="metal finish form standard service quality",
)


def _settle_slopes(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The three slopes, down to the rear positive."""
    slopes = ", ".join(values.pop(key) for key in ("gearbox", "shaft", "pinion"))
    return {**values, "shafts_side": slopes}


def _sloped(name: str, way: str, sign: str, say: str) -> Shaped:
    """A slope that is said of a thing, as the axis of its shaft falls to the rear; level is none."""
    if way == "down":
        way = r"(?:down(?:wards?)?|rearwards?|to the (?:rear|back))"
    way = rf"{way}(?: (?:to|at) (?:the )?(?:back|rear)(?: end)?)?"
    return Shaped(
        rf"(?:(?:shaft )?angle (?:of|at|on) (?:the )?)?(?:{name})(?: (?:tail(?: ?shaft)?|output|flange"
        rf"|nose))?(?: angle)?(?: is| at| points?| slopes?| sloping| sits?|"
        rf" tipped| tilted| tips?| falls?| falling| runs?| running)*"
        rf"(?:(?: {way})?(?: at| by)? (?P<n>{NUMBER})(?: ?(?:deg(?:rees?|s)?|\u00b0))?(?: {way})?|(?P<level> level|"
        r" flat))",
        lambda m: f"{sign}{m['n']} deg" if m["n"] else "0 deg",
        say,
    )


# The other half of the one question whether they cancel.
_OR_ELSE = (
    r"(?:or )?(?:will|would|does|is|do|are) (?:it|she|they|that) (?:be )?(?:going to |gonna )?"
    r"(?:shak(?:es?|ing)|vibrat(?:es?|ing)|rumbl(?:es?|ing)|whin(?:es?|ing)|wobbl(?:es?|ing)|drum(?:s|ming)?|growl)"
)
_BOX = "transmission|trans|tranny|gear ?box|output(?: shaft)?"
_PROP = r"drive ?shaft|prop(?:eller)?[- ]?shaft|prop|shaft"
EITHER_WAY = "up or down"


def _open_slope(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous where nobody said which way the shaft slopes: its joints stand otherwise each way."""
    if EITHER_WAY in values["shaft"]:
        slope = values["shaft"].removesuffix(f" {EITHER_WAY}")
        why = f"which way the shaft slopes by {slope} was not said, and its joints stand otherwise each way"
        do = f'say it, as "shaft {slope} down" where it falls to the rear, or "shaft {slope} up"'
        raise Ambiguous("slope of the shaft", "read as universal joints", why, (), do)
    return None


SLOPES = Topic(
    lambda: answer_of("joints.answer", "joint"),
    "universal joints",
    {
        "gearbox": (_sloped(_BOX, "down", "", "gearbox {}"),),
        "shaft": (
            Shaped(
                rf"(?:the )?(?:{_PROP})(?: (?:is|at|runs?|sits?|stands?))+ (?P<n>[1-9][0-9.]*)(?:"
                rf" ?(?:deg(?:rees?)?|\u00b0))?"
                r"(?! ?(?:down|up|rpm|revs|mm|in))",
                lambda m: f"{m['n']} deg {EITHER_WAY}",
                "shaft {}",
            ),
            _sloped(_PROP, "down", "", "shaft {}"),
            _sloped(_PROP, "up", "-", "shaft {}"),
        ),
        "pinion": (
            _sloped("pinion(?: nose)?|diff|rear(?: end| axle)?", "up", "", "pinion up {}"),
            _sloped("pinion(?: nose)?", "down", "-", "pinion {}"),
        ),
        **{key: JOINT.slots[key] for key in ("phasing", "speed")},
    },
    JOINT.signals + rf"|u|shafts?|down|up|slopes?|ok|right|good|cancel(?:s|led)?|{_OR_ELSE}",
    needs=("gearbox", "shaft", "pinion"),
    opens=_open_slope,
    settle=_settle_slopes,
    unmoved="metal finish form standard service quality",
)
_MOST_TUBE, _MOST_WALL = 200, 12  # mm, of a propeller shaft
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
                r" )?0?\.[0-9]{2,3})",
                lambda m: f"{m['n']} in",
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
            amount("length", after="wall", bare="in", say="{} wall", most=_MOST_WALL),
            amount("length", before="x|by", say="{} wall", most=_MOST_WALL),
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
                r"(?P<n>[3-9][0-9]{2}|[12][0-9]{3}) (?:long|(?:joint )?cent(?:re|er)s?(?: to cent(?:re|er)s?)?"
                rf"|between (?:the )?(?:joints?(?: cent(?:re|er)s?)?|cent(?:re|er)s?|ujs?|u-joints?)"
                rf"|joint to joint|(?:{_PROPELLER})(?! ?(?:rpm|revs|speed)))",
                lambda m: f"{m['n']} mm",
                "{} long",
                cue=("long", "between", "cent", "joint", "prop", "shaft"),
            ),
            amount(
                "length",
                after="(?:long|between (?:the )?joints?(?: cent(?:re|er)s?)?|joint to joint|cent(?:re|er) to"
                " cent(?:re|er))",
                bare="in",
                say="{} long",
            ),
            amount("length", before="length(?: of| is)?", bare="in", say="{} long"),
            amount("length", say="{} long", doubt=3),
        ),
        "speed": (
            amount("rotational speed", before="at", say="at {}"),
            amount("rotational speed", say="at {}"),
            Shaped(
                r"(?:revs?|revved|spins?|spun|turns?|turning|winds?|wound|buzz(?:es|ed)?|runs?)(?: (?:it|them|her|him"
                r"|up|out))*"
                r"(?: to| at)? (?P<n>[1-9][0-9]{3,4})(?! ?[a-z]*[0-9/])",
                lambda m: f"{m['n']} rpm",
                "at {}",
            ),
            _THOUSANDS,
        ),
        "torque": (amount("torque", say="{}"),),
        "yield_strength": known("stress", "yields?(?: stress)?", "yield {}", cue=("yield",)),
        "modulus": known("stress", "modulus(?: of elasticity)?|young'?s modulus", "modulus {}", cue=("modul",)),
    },
    rf"{_PROPELLER}|whips?|whirls?|whipping|outside(?: dia(?:meter)?)?|between (?:the )?(?:joint )?centres"
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
    unmoved="finish standard service quality",
)
LONGEST = Topic(
    SHAFT.answer,
    "propeller shaft",
    {key: readers for key, readers in SHAFT.slots.items() if key != "length"},
    SHAFT.signals + r"|(?:in )?(?:1|one)[ -]piece|i|dare|can|go|run|at|flat out|turning",
    needs=("od", "wall", "speed"),
    asks_for=r"longest|how long|max(?:imum)? length|greatest length",
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
            Shaped(
                r"(?:an? |the )?(?P<n>0?\.[0-9]{1,3}) (?:overdrive|od|top|fifth|sixth|5th|6th|fourth|4th)(?:"
                r" (?:top|gear))*",
                lambda m: f"0.{m['n'].split('.')[1]}",
                "gear {}",
            ),
            Shaped(
                r"(?:overdrive|top|fifth|sixth|5th|6th)(?: gear)?(?: (?:of|is|ratio))* (?P<n>0?\.[0-9]{1,3})",
                lambda m: f"0.{m['n'].split('.')[1]}",
                "gear {}",
            ),
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
