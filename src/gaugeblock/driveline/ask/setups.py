"""What is asked of setting up an axle, of its shims and of a spline, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, always, amount, words_of
from gaugeblock.driveline.ask.common import HALF_SHAFT, answer_of
from gaugeblock.errors import Ambiguous, InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


_MOST_LEFT = 10  # mm, of backlash, end play and shims


def _components(data: Refdata) -> dict[str, str]:
    """The components; a phrase that has a step in it (``pinion preload``) would hide the step."""
    known = words_of("driveline", "component", "driveline/setup")(data)
    return {phrase: cell for phrase, cell in known.items() if "preload" not in phrase}


def _settle_setup(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """A rear axle, where none was said; a backlash is that of the ring gear, whichever gear is named."""
    values = {"axle": "rear", **{k: v for k, v in values.items() if k != "size"}}
    return {**values, "component": "ring gear"} if values.get("step") == "backlash" else values


def _open_component(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises InputError where the part was not said; a backlash is that of the ring gear alone."""
    if "component" in values or values.get("step", "backlash") == "backlash":
        return None
    why = "the part that it is of was not said"
    raise InputError(values["step"], "axle set-up", why, (), "say the component: ring gear, pinion, carrier bearing")


def _twice(match: re.Match[str]) -> str | None:
    """A pitch said in one breath, ``twenty four forty eight``: its second number is twice the first."""
    return f"{match['a']}/{match['b']}" if int(match["b"]) == 2 * int(match["a"]) else None


SETUP = Topic(
    lambda: answer_of("setups.answer", "setup"),
    "axle set-up",
    {
        "component": (
            Named(_components),
            Shaped(r"half[ -]?shafts?", always("axle shaft"), "axle shaft"),
            Shaped(  # none but the pinion has one
                r"crush (?:sleeve|spacer)(?= (?:pinion )?(?:bearings? )?(?:preload|drag|torque))",
                always("drive pinion bearings"),
                "drive pinion bearings",
                cue=("crush",),
            ),
        ),
        "step": (
            Named(words_of("driveline", "step", "driveline/setup")),
            Shaped(
                r"backlash|preload|run-?out|end[ -]?(?:play|float)|pattern|depth",
                lambda m: "end play" if m[0].startswith("end") else m[0].replace("-", ""),
            ),
            Shaped(
                r"(?:how much )?(?:rock|lash|slop|free ?play|play)(?= should| between| in (?:the|it)| at)",
                always("backlash"),
                cue=("rock", "lash", "slop", "play"),
            ),
            Shaped(r"(?:turning|rotating|drag|starting) torque|drag|torque to turn", always("preload")),
        ),
        "wear": (
            Named(words_of("driveline", "wear"), tail="bearings?|gears?|parts?"),
            Shaped(r"(?P<n>new|used)(?= (?:drive )?(?:pinion|carrier|side|ring|crown))", lambda m: m["n"]),
        ),
        "size": (  # of the ring gear, by which people call an axle; no figure goes by it
            Shaped(
                r"(?P<n>(?:[7-9]|1[0-4])\.[0-9]+)(?: (?:rear(?: end| axle)?|axle|diff)|(?= (?:ring gear"
                r"|crown ?wheel)))",
                lambda m: m["n"],
                "ring gear {} in",
            ),
        ),
        "as_left": (
            amount(
                "length",
                before=r"(?:i have|i've got|i got|left at|left|reads?|measured)",
                say="as left {}",
                most=_MOST_LEFT,
            ),
            amount("length", say="as left {}", doubt=1, most=_MOST_LEFT),
            amount("torque", say="as left {}", doubt=1),  # what the bearings take to turn
        ),
    },
    r"(?:[6-9]|1[0-4])(?:\.[0-9]+| [1-7]/[248])? ?(?:inch(?:es)?|in|\")"
    r"(?: (?:rear|axle|diff|ring(?! and|s)|across|over))?(?:"
    r" (?:end|axle|gear))?|dial(?: (?:gauge|indicator|clock))?|sheet|set(?:ting)?(?:"
    r" ?up)?|axle|diff(?:erential)?|rear(?: end)?|gears?|crown ?wheel|(?:with )?(?:an? )?(?:crush"
    r" (?:sleeve|spacer)|solid spacer)|setting|how much|clearance|torque|taper(?:ed)?(?: roller)?|thou|teeth|tooth"
    r"|between (?:the )?(?:teeth|gears)|on (?:an? |the )?(?:crown ?wheel|ring gear) tooth|dial gauge|lock"
    r"|turn(?:ing)?"
    r"|turn over|stop at|(?:with )?(?:an? |the )?(?:new )?crush (?:sleeve|spacer)|new (?:pinion |oil )?(?:seal|nut)"
    r"|(?:with )?no (?:oil )?seal(?: (?:fitted|in))?(?: yet)?",
    needs=("step",),
    opens=_open_component,
    columns={key: ("driveline/setup", key) for key in ("axle", "component", "step", "wear")},
    settle=_settle_setup,
)
# The pitches of the standard that shafts of a vehicle have.
_PITCHES = (4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48)
# Those that are set side by side where none was said.
_USUAL_PITCHES = ("16/32", "20/40", "24/48", "32/64")


# So few splines may have parallel sides.
_PARALLEL = ("4", "6", "10", "16")


def _open_pitch(values: dict[str, str], _data: Refdata) -> Open | None:
    """The usual pitches, where none was said: teeth alone give no diameter.

    Raises Ambiguous where a load is asked of it, or where it may be no involute spline.
    """
    if "judged" in values and not {"torque", "length"} & values.keys():
        raise Ambiguous(
            "torque",
            f"read as spline of {values['teeth']} teeth",
            "what it has to carry was not said, nor its steel",
            (),
            f'say the torque, and the steel with its hardness: "axle 4340 40 HRC, 1500 lb ft"; its size over the tops:'
            f' "{values["teeth"]} spline 24/48 diameter"',
        )
    if "pitch" in values:
        return None
    if values["teeth"] not in _PARALLEL and not {"torque", "length"} & values.keys():
        return ("pitch",), [{"pitch": pitch} for pitch in _USUAL_PITCHES]
    few = values["teeth"] in _PARALLEL
    why = "the pitch was not said" + (", and so few splines may have parallel sides" if few else "")
    raise Ambiguous("pitch", f"spline of {values['teeth']} teeth", why, (), "say the pitch too, as 24/48")


def _not_judged(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    return {key: value for key, value in values.items() if key != "judged"}


SPLINE = Topic(
    lambda: answer_of("splines.answer", "spline"),
    "spline",
    {
        "pitch": (
            Shaped(r"(?P<p>[0-9]{2}/[0-9]{2})(?: pitch)?", lambda m: m["p"], "{} pitch"),
            Shaped(r"(?P<a>12|16|20|24|32|40|48)(?P<b>24|32|40|48|64|80|96) pitch", _twice, "{} pitch", cue=("pitch",)),
            Shaped(r"(?P<a>[0-9]{1,2}) over (?P<b>[0-9]{1,2})(?: pitch)?", _twice, "{} pitch", cue=("over",)),
            Named(words_of("driveline", "pitch")),
        ),
        "teeth": (
            Shaped(r"(?P<n>[0-9]{1,2})[- ]?(?:tooth|teeth|splines?|t)", lambda m: m["n"], "{} teeth"),
            Shaped(
                r"count(?:ed)? (?P<n>[1-6][0-9])(?: of (?:them|'em|em))?(?! ?(?:threads?|tpi|turns?|mm|in\b|inch))",
                lambda m: m["n"],
                "{} teeth",
                cue=("count",),
            ),
            Shaped(r"(?P<n>[0-9]{2})", lambda m: m["n"], "{} teeth", doubt=2),
        ),
        "pressure_angle": (amount("angle", say="{} pressure angle"), amount("angle", after="pressure angle", say="{}")),
        "fact": (
            Shaped(r"pitch (?:circle )?dia(?:meter)?|pcd", always("pitch diameter"), "its pitch diameter"),
            Shaped(
                r"(?:minor|root|inside) dia(?:meter)?|(?:(?:dia(?:meter)?|size|thick(?:ness)?) )?(?:at|of"
                r"|in|across) (?:the |its )?"
                r"(?:root|bottom)s?(?: of (?:the |its )?splines?)?",
                always("minor diameter"),
                "its minor diameter",
            ),
        ),
        "torque": (amount("torque", say="{}"),),
        "judged": (
            Shaped(
                r"(?:will|does|do|can|would|is|are)(?: (?:it|they|that|an?|the|my))*(?= [1-6][0-9][ -]?spl)"
                r"|(?:hold|take|carry|survive|live|stand|strong enough|good enough|enough)(?: up| it)?",
                always("yes"),
                "what it carries",
                cue=("hold", "take", "carry", "survive", "live", "stand", "enough"),
            ),
        ),
        "length": (amount("length", after=r"(?:long|engaged|engagement|of engagement)", say="{} long"),),
    },
    # its size over the tops is told whatever else is asked
    r"(?:(?:over|across|round) )?(?:the )?outside(?: (?:size|dia(?:meter)?|measurement))?|output|input|measure(?:s|d)?"
    rf"|(?:with )?(?:the )?calipers|{HALF_SHAFT}|drive ?shafts?|prop(?:eller)?[- ]?shafts?|"
    r"(?:involute )?splines?|splined|shafts?|yokes?|(?:outside |major )?dia(?:meter)?s?|o\.?d|major"
    r"|pitch|sizes?|axle|(?:how (?:big|thick|fat)|what size)(?: is it| across| round)?|across|measure"
    r"|torque|carry|hold",
    needs=("teeth",),
    opens=_open_pitch,
    settle=_not_judged,
    asks_for=r"splin\w*|[0-9]{2}/[0-9]{2}|pitch",
    is_named=True,  # a count of teeth alone is of anything
    table="splines",
    columns={
        "pitch": lambda _: [f"{n}/{2 * n}" for n in _PITCHES],
        "teeth": lambda _: [str(n) for n in range(6, 61)],  # the counts that the standard's equations are for
        "root": lambda _: ("flat root", "fillet root"),
        "fit": lambda _: ("side fit", "major diameter fit"),
    },
    job_keys={"teeth": "teeth#"},
)
_NEAR = 0.02  # of what is measured over the tops, which wear


def _of_pitch(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The options with the pitch at which so many teeth measure so much over their tops, teeth and one by the pitch.

    Raises Ambiguous where no pitch of the standard comes near.
    """
    from gaugeblock import units

    teeth = int(values["teeth"])
    tops = units.parse_measure(values["over"], "length", "over the tops").to("in")
    near = min(_PITCHES, key=lambda pitch: abs((teeth + 1) / pitch - tops))
    if abs((teeth + 1) / near - tops) > _NEAR * tops:
        why = f"no pitch of the 30 degree involute standard gives {teeth} teeth {values['over']} over the tops"
        do = "measure again over the tops and count again; it may be a metric spline or one with straight sides"
        raise Ambiguous(values["over"], "spline", why, (), do)
    return {"teeth": values["teeth"], "pitch": f"{near}/{2 * near}"}


_TOPS = (
    r"(?:(?:across|over|on|round)(?: the)? (?:top[s]?|outside)(?! dia)|(?:od|o\.d|outside|major)(?: dia(?:meter)?)?"
    r"|across|over(?:"
    r" the)? splines?)"
)
# A spline of which one has the size over its tops and the count of its teeth, and wants its pitch.
SPLINE_BY_SIZE = Topic(
    SPLINE.answer,
    SPLINE.noun,
    {
        "over": (
            amount(
                "length",
                after=_TOPS,
                bare="in",
                say="{} over the tops",
                cue=("top", "od", "o.d", "outside", "major", "across", "over"),
            ),
            amount("length", before=rf"(?:{_TOPS}|measures?|mic'?s)(?: (?:of|is))?", bare="in", say="{} over the tops"),
            amount("length", say="{} over the tops", doubt=1),
            Shaped(  # nothing else of a spline is so many inches
                r"(?P<n>[12]?\.[0-9]{1,3})(?! ?(?:mm|cm|deg\w*|to|pitch|lbs?|nm|n|ft|foot)\b)",
                lambda m: f"{m['n']} in",
                "{} over the tops",
                doubt=2,
            ),
        ),
        "teeth": SPLINE.slots["teeth"],
    },
    SPLINE.signals
    + r"|(?:the |my |his )?(?:mic|micrometer|verniers?|calipers?|callipers?)(?: (?:reads?|says?|shows?|gives?"
    r"|makes it))?"
    r"|(?:i )?count(?:ed)?(?: (?:them|it|em|'em))?(?: (?:twice|again|[23] times))?|likely|work(?:ed|ing)? out"
    r"|old (?:shafts?|axles?|splines?|hubs?)|measures?|measured|count(?:ed)?|tops?|what pitch|which pitch"
    r"|call(?:ed)?|man|find|tell|spec",
    needs=("over", "teeth"),
    settle=_of_pitch,
    asks_for=r"splines?\b.*\b(?:what (?:are|is) (?:they|it|that|this)|whats? (?:pitch|spline))"
    r"|work(?:ing)? out .*splines?"
    r"|(?:what|which) (?:pitch|spline)|spline pitch|call.*spline|identify|spline.*(?:is it|called)|pitch is",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
