"""What is asked of universal joints, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.driveline.ask.common import THOUSANDS, answer_of
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
                r" (?:(?:out|off)(?: of)? (?:(?:line|phase|true|square)|with each other|from each other)"
                r"|out of alignment"
                r"|(?:out|off)(?= (?:on|at|with) (?:the )?(?:yokes?|spline|slip)))(?: (?:with|from|to) (?:each other"
                r"|one another|the other))?",
                lambda m: f"{m['n']} deg",
                "yokes {} out of line",
                cue=("out", "off"),
            ),
            Shaped(
                rf"yokes?(?: (?:are|is|by|about|set|welded|stand))* (?P<n>{NUMBER}) ?(?:deg(?:rees?|s)?|\u00b0) (?:out"
                rf"|off|apart|twisted)",
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
            THOUSANDS,
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
        way = r"(?:downwards?|down|rearwards?|to the (?:rear|back))"
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
