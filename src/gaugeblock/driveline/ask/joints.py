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
    values.pop(_SHAKES, "")
    if values.pop("both", ""):
        values.setdefault("second", values["angle"])
    return values


# The speed on the road at which it shakes: no angle hangs on it.
_SHAKES = "shakes_at"
SHAKING = (
    Shaped(
        r"(?:vibrat\w*|shak(?:es?|ing)|drone|shudder\w*|rumble|buzz)(?: (?:at|about|around|over))+"
        r" (?P<n>[3-9][0-9]|1[0-4][0-9])(?: ?(?P<u>mph|km/h|kph))?(?! ?[a-z]*rpm)",
        lambda m: f"{m['n']} {m['u']}" if m["u"] else m["n"],
        "shakes at {}",
        cue=("vibrat", "shak", "drone", "shudder", "rumble", "buzz"),
    ),
)


# How the joint behind the first one is called.
_SECOND = (
    r"(?:(?:one|joint|uj|u-joint) (?:at|by|on) (?:the )?(?:axle|diff|pinion|back|rear)"
    r"|(?:other|second|back|rear|diff|pinion|axle)(?! ?shaft))(?: (?:end|one|joint|uj|u-joint))*"
)


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


_FIRST_END = r"(?:front|first|gear ?box|transmission)"
_IS_AT = r" (?:is|at|runs?|running|has|works?(?: out)?(?: at)?|working|sits?|makes?|about)"


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
            Shaped(
                rf"(?:(?:the )?(?:joint|uj|u-joint|one|angle) (?:at|by|on) (?:the )?{_FIRST_END}(?:{_IS_AT})*"
                rf"|(?:the )?{_FIRST_END}(?: (?:end|one|joint|uj|u-joint))+(?:{_IS_AT})*|(?:the )?(?:front|first)"
                rf"(?:{_IS_AT})+)"
                rf" (?P<n>{NUMBER})(?: ?(?:deg(?:rees?|s)?|\u00b0))?(?! ?(?:{_OTHER_UNIT}|/|[0-9]))",
                lambda m: f"{m['n']} deg",
                cue=("front", "first", "gear", "trans"),
            ),
            Shaped(rf"(?P<n>{NUMBER})(?= and {NUMBER} ?deg)", lambda m: f"{m['n']} deg"),
            Shaped(
                r"(?:and )?(?:the )?front(?: (?:uj|u-joint|joint|one))? (?P<n>[0-9]{1,2}(?:\.[0-9]+)?)(?= |$)"
                rf"(?! ?(?:{_OTHER_UNIT}|/|[0-9]))",
                lambda m: f"{m['n']} deg",
                doubt=1,
                cue=("front",),
            ),
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
                rf"(?:and )?(?:at |on )?(?:the )?(?:{_SECOND})"
                r"(?: (?:is|at|runs?|running|has|works?(?: out)?(?: at)?|working(?: at)?|sits?|joint|makes?|about))*"
                rf" (?P<n>{NUMBER})(?: ?(?:deg(?:rees|s)?|\u00b0))?(?! ?(?:rpm|revs|in(?! (?:the|line|same|phase))"
                rf"|inch|mm|thou|/|[0-9]))",
                lambda m: f"{m['n']} deg",
                "second {}",
                cue=("other", "second", "back", "rear", "diff", "pinion", "axle"),
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
        _SHAKES: SHAKING,
    },
    r"(?:in |on )?(?:the )?same plane|drone|tail ?shaft|works? out(?: at)?|would that do it"
    r"|(?:at|by) (?:the )?gear ?box(?: end)?|cross[- ]type|(?:truck |car )?driveline|(?:u|universal|uj|cardan"
    r"|hooke'?s?)[- ]?joints?|ujs?|(?:2 joints(?= (?:at )?[0-9.]+ (?:deg\w* )?and)|joints?)"
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
    values.pop(_SHAKES, "")
    slopes = ", ".join(values.pop(key) for key in ("gearbox", "shaft", "pinion"))
    return {**values, "shafts_side": slopes}


def _sloped(name: str, way: str, sign: str, say: str) -> Shaped:
    """A slope that is said of a thing, as the axis of its shaft falls to the rear; level is none."""
    if way == "down":
        way = r"(?:downwards?|down|rearwards?|to the (?:rear|back)|away)"
    way = rf"{way}(?: (?:to|at) (?:the )?(?:back|rear|tail)(?: end)?)?"
    return Shaped(
        rf"(?:(?:shaft )?angle (?:of|at|on) (?:the )?|(?:the )?(?:back|tail|rear|nose|end) of (?:the )?)?"
        rf"(?:{name})(?: (?:tail(?: ?shaft)?|output|flange"
        rf"|nose))?(?: angle)?(?: is| at| points?| pointing| slopes?| sloping| sits?| sitting|"
        rf" tipped| tilted| tips?| falls?| falling| runs?| running| drops?| dropping| goes| going| hangs?| about)*"
        rf"(?:(?: {way})?(?: at| by)? (?P<n>{NUMBER})(?: ?(?:deg(?:rees?|s)?|\u00b0))?(?: {way}| at the (?:tail"
        rf"|back|rear))?|(?P<level> level|"
        r" flat))",
        lambda m: f"{sign}{m['n']} deg" if m["n"] else "0 deg",
        say,
    )


# The other half of the one question whether they cancel.
_OR_ELSE = (
    r"(?:or )?(?:will|would|does|is|do|are) (?:it|she|they|that) (?:be )?(?:going to |gonna )?"
    r"(?:shak(?:es?|ing)|vibrat(?:es?|ing)|rumbl(?:es?|ing)|whin(?:es?|ing)|wobbl(?:es?|ing)|drum(?:s|ming)?|growl)"
)
# What would be done about it, which changes no angle.
_OR_SHIM = (
    r"(?:or )?(?:have i got to|do i (?:have|need) to|should i|must i)(?= (?:shim|wedge|tip|pack))"
    r"|(?:or )?(?:does (?:it|that) (?:want|need) (?:an? )?)?(?:shim(?:ming|s)?|wedges?)(?: (?:the )?(?:axle|diff"
    r"|pinion))?"
)
_FINDER = r"(?:(?:put|with) )?(?:an |the |my )?angle (?:finder|gauge)"
_BOX = "transmission|trans|tranny|gear ?box|output(?: shaft)?"
_PROP = r"drive ?shaft|prop(?:eller)?[- ]?shaft|prop|tail ?shaft|shaft"
EITHER_WAY = "up or down"


def _open_slope(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous where nobody said how the shaft slopes, or which way: its joints stand otherwise each way."""
    if "shaft" not in values:
        why = "how the shaft between them slopes was not said, and its joints stand by it"
        do = 'measure it at ride height and say it too, as "shaft 5 deg down"'
        raise Ambiguous("slope of the shaft", "read as universal joints", why, (), do)
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
        _SHAKES: SHAKING,
    },
    JOINT.signals + rf"|{_OR_SHIM}|{_FINDER}|u|shafts?|down|up|slopes?|ok|right|good|cancel(?:s|led)?|{_OR_ELSE}",
    needs=("gearbox", "pinion"),
    opens=_open_slope,
    settle=_settle_slopes,
    asks_for=r"angles?|joints?|ujs?|u|deg(?:rees?|s)?|slop\w+|down|up|level|vibrat\w*|shak\w*|wedges?",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
