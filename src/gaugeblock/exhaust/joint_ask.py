"""What is asked of a joint of an exhaust, as people say it: a slip, a mitre, a balance pipe, a sensor's boss."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.exhaust.ends_ask import EXHAUST

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _joint() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.joint import exhaust_joint

    return exhaust_joint


_AGAIN = r"re-?(?:tighten(?:ing)?|torqu(?:e|ing)|check)"
_KINDS = (
    (rf"{_AGAIN}(?: the| my)? (?:header|manifold) bolts?|(?:header|manifold) bolts? {_AGAIN}", "header flange"),
    (r"(?:expand(?:ing|ed)?|swag(?:e|ed|ing)|stretch(?:ing|ed)?) (?:an? |the |my )?(?=[0-9])", "slip joint"),
    (r"(?:slip|slip[ -]fit|expanded)(?: (?:joints?|fit|ends?))?|sockets?", "slip joint"),
    (r"(?:header|collector) slip(?: joint)?|sliding joint", "sliding joint"),
    (r"butt welds?|weld gap", "butt weld"),
    (r"pie ?cuts?|mit(?:er|re)(?:s|d)?(?: bends?)?", "mitre"),
    (r"collector (?:taper|angle)|(?:taper|angle) of (?:the |a )?collector", "collector"),
    (r"(?:x|h)[ -]pipe|balance pipe|cross ?over(?: pipe)?", "balance pipe"),
    (r"(?:o2|oxygen|lambda|wideband)?(?: sensor)? ?bungs?|sensor boss", "sensor boss"),
)
JOINT = Topic(
    _joint,
    "exhaust joint",
    {
        "kind": tuple(Shaped(pattern, always(kind), kind) for pattern, kind in _KINDS),
        "od": (
            amount("length", after="(?:exhaust|pipe|tube)(?: pipe)?", bare="in", say="{} pipe"),
            amount("length", before="(?:over|into|onto|inside)(?: an?| the| another)?", bare="in", say="{} pipe"),
            amount("length", say="{} pipe", doubt=1),
        ),
        "wall": (amount("length", after="wall", say="{} wall"),),
        "overlap": (
            amount("length", after="(?:of )?(?:over)?lap", say="{} overlap"),
            amount("length", before=r"(?:over)?lap(?: (?:is|of|only|at|about|by))*", say="{} overlap"),
            amount(
                "length",
                followed=r"(?:enough|ok|okay|too (?:little|short)|plenty)",
                say="{} overlap",
                cue=("enough", "ok", "too ", "plenty"),
            ),
        ),
        "fact": (
            Shaped(
                r"(?:how (?:much|far|deep)(?: (?:should|must|does|do|of|an?|the|i|it|pipe|to|they|in))*"
                r" )?(?:overlap|insert(?:ion)?"
                r"(?: depth)?|slide in(?:to)?|push(?:ed)? in(?:to)?|go(?:es)? in(?:to)?|depth|engage(?:ment)?)",
                always("overlap"),
                "the overlap",
                cue=("overlap", "insert", " into", " in", "depth", "engage"),
            ),
            Shaped(r"how (?:far|deep)", always("overlap"), "the overlap", doubt=1, cue=("how far", "how deep")),
        ),
        "socket": (amount("length", before="socket", say="{} socket"),),
        "angle": (
            amount("angle", say="{} in all"),
            Shaped(
                r"(?:(?:for|in|at|to make) )*an? (?P<n>30|45|60|90|120|180)(?: (?:bends?|elbows?|turn))?"
                r"|(?P<m>30|45|60|90|120|180) (?:bends?|elbows?|turn)",
                lambda m: f"{m['n'] or m['m']} deg",
                "{} in all",
                doubt=1,
            ),
        ),
    },
    rf"{EXHAUST}|duals?(?: exhausts?| system)?|overlap|joints?|clearance|inside diameter|id|size|gap|for|how"
    r" (?:much|many|far|big)|bends?|where|place(?:ment)?|do i|when|its|before|(?:the )?clamps?|goes on"
    r"|(?:at )?(?:what |which )?angle(?= *$)|lap(?= (?:on|of|for|in)\b)|enough",
    needs=("kind",),
    asks_for=(
        r"expand(?:ing)?|swag(?:ed?|ing)|re-?t\S+|slip\S*|expanded|sockets?|overlap|pie\S*|mit\S+|butt"
        r"|collector|balance|cross\S*|[xh]["
        r" -]?pipe|bungs?|boss|sliding"
    ),
    table="exhausts",
    job_keys={"kind": "joint"},
)
