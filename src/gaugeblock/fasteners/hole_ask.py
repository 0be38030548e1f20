"""What is asked of the hole for a thread: the drill for its tap, or for a bolt to pass."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.spoken import THREAD
from gaugeblock.fasteners.threads_said import threads_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

# Where a hole or a thread is: it changes no drill, no pitch and no size.
PLACE = (
    r"(?:in|on|at|of|into|for|through)(?: (?:the|my|an?|this))?(?: old)? (?:thermostat|water pump|oil"
    r" pump|cylinder|engine"
    r"|gear ?box|transmission|axle|intake|exhaust|brake|fuel|radiator|heater|sump|oil|valve)?(?: ?(?:housing|block|head"
    r"|manifold|case|casing|cover|pan|tank|flange|bracket|mount|plate|frame|crossmember|chassis|hub|pump))?(?= |$)"
    r"|so|cut|bit of room|with|room|space|play|goes|going|screws? in"
)


def _hole() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.hole import hole

    return hole


def _open_hole(values: dict[str, str], data: Refdata) -> Open | None:
    """The holes that are on record for a thread, or those of its clearance, where none was named; coarse and fine of a
    bare size have each its tap drill, and one clearance.
    """
    from gaugeblock.fasteners.hole import TAP, fits_of

    said = values.get("fit", TAP if "share" in values else "")
    threads = threads_of(values["thread"], data) if "thread" in values else []
    if values.get("share") == _OPENED:
        return ("thread", "share"), [{"thread": cell, "share": share} for cell in threads for share in _SHARES]
    if not threads or (len(threads) == 1 and said not in ("", _CLEARANCE)):
        return None
    if said == TAP:
        return ("thread",), [{"thread": cell} for cell in threads]
    fits = [f for f in fits_of(keys.thread(threads[0], data).cell, data) if f.startswith(_CLEARANCE)]
    if said in fits or not fits:
        return ("thread",), [{"thread": threads[0]}]
    rows = [{"thread": threads[0], "fit": f} for f in fits]
    if not said:
        rows = [*({"thread": cell, "fit": TAP} for cell in threads), *rows]
    return ("thread", "fit"), rows


_CLEARANCE = "clearance"
_OPENED, _SHARES = "less", ("75 %", "65 %", "55 %")
_USUAL_SHARE = "75 %"


def _settle_hole(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """A share of the thread is a tap's; three quarters is what the drill lists take."""
    kept = {
        k: v for k, v in values.items() if k not in ("usual", "plate", "metal") and (k, v) != ("share", _USUAL_SHARE)
    }
    return {**kept, "fit": "tap drill"} if "share" in values and "fit" not in values else kept


TAPPING = Shaped(
    r"(?:tap(?:ping|ped)?|threaded)(?: (?:drill|hole|size))*(?: bit)?|drill(?: bit)? for a tap"
    r"|before (?:the |i |we )?tap(?:ping)?(?: it)?",
    always("tap drill"),
)
HOLE = Topic(
    _hole,
    "hole to drill",
    {
        "thread": (
            *THREAD,
            Shaped(
                r"(?P<n>[2-9]|1[0-9]|2[0247]) ?mm(?= (?:thread|tap|tapped|tapping|metric)(?: |$|s))"
                r"|metric (?P<m>[2-9]|1[0-9]|2[0247])(?: ?mm)?(?= |$)(?! ?x)",
                lambda m: f"M{m['n'] or m['m']}",
                cue=("mm", "metric"),
            ),
        ),
        "fit": (
            Shaped(
                r"(?:an? )?(?:form(?:ing)?|thread[- ]?form(?:ing)?|roll(?:ing)?|fluteless)[- ]tap(?:ping)?",
                always("form tap"),
                "for a {}",
                cue=("form", "roll", "flutel"),
            ),
            Shaped(  # what stands before its thread
                r"(?:ahead of|before)(?: (?:an?|the|my))?(?= (?:m ?[0-9]|[0-9]+(?:/[0-9]+)?-[0-9]))",
                always("tap drill"),
                cue=("ahead", "before"),
            ),
            Shaped(
                r"(?:with |and )?no (?:slop|play|slack|wobble|rattle)(?: in it)?|(?:as )?(?:an? )?fitted (?:bolt|hole)",
                always("clearance, close"),
                cue=("no ", "fitted"),
            ),
            Shaped(
                r"(?:an? )?(?:(?:slightly|bit|little) )?(?:sloppy|loose|easy|slack|baggy|generous|wobbly"
                r"|rattling)(?: fit)?",
                always("clearance, free"),
                doubt=1,
                cue=("sloppy", "loose", "easy", "slack", "baggy", "generous", "wobbly", "rattl"),
            ),
            Shaped(
                r"(?:to )?(?:(?:go|goes|pass|passes|slide|slides|drop|drops|fit|fits)(?: (?:in|straight))? through"
                r"|clearance)(?: (?:nice and|a bit|really|good and))? (?:loose(?:ly)?|sloppy|easy|easily)",
                always("clearance, free"),
                cue=("loose", "sloppy", "eas"),
            ),
            Shaped(
                r"(?:so )?(?:that )?(?:(?:it|they|the (?:bolt|screw|stud)|bolt) )?(?:slides?|drops?|slips?|falls?)"
                r" (?:straight |right )?(?:in|through)(?: (?:easy|easily|freely))?",
                always(_CLEARANCE),
                cue=("slide", "drop", "slip", "fall"),
            ),
            Shaped(
                r"(?:an? )?(?:snug|neat|tight|close|good close)(?: (?:fit|one))",
                always("clearance, close"),
                cue=("snug", "neat", "tight", "close"),
            ),
            Shaped(
                r"(?:(?:an?|the) )?(?:wire |steel |coil |helical )*(?:thread )?inserts?(?: (?:drill|hole|size|tap))*",
                always("thread insert"),
                "for a thread insert",
                cue=("insert",),
            ),
            TAPPING,
            Named(words_of("fasteners", "fit", "fasteners/holes"), tail="fit|clearance|holes?"),
            Shaped(r"(?:to )?clear(?:s|ing)?(?= (?:an?|the|my|[0-9m]))", always(_CLEARANCE), cue=("clear",)),
            Shaped(
                r"(?:clearances?|clr)(?: (?:holes?|drill|fit))*|through holes?|(?:(?:have|has|need) to )?(?:go"
                r"|pass) through"
                r" (?:the same|one|an? single) holes?",
                always(_CLEARANCE),
            ),
        ),
        "share": (
            Shaped(  # by how much is what is asked
                r"(?:(?:and |so )?(?:should|can|could|do|shall|must) (?:i|we) )?(?:open|drill|go|make|bore"
                r"|step)(?:ing)?"
                r" (?:the |my )?(?:drill |hole |it )?(?:up|out|bigger|larger|oversized?)(?: a (?:bit|touch|size))?"
                r"(?: (?:and )?to what(?: size)?)?",
                always(_OPENED),
                "for less of the thread",
                cue=("open", "bigger", "larger", "overs", " up", " out"),
            ),
            Shaped(
                rf"(?:for |at |to )?(?:(?:about|around|only|an?|the) )*(?P<n>{NUMBER}) ?(?:%|percent|per cent)"
                r"(?: (?:of )?(?:the |an? )?(?:full )?(?:threads?|engagement))*",
                lambda m: f"{m['n']} %",
                "{} of the thread",
                cue=("%", "percent", "per cent"),
            ),
        ),
        "metal": (  # nor does it change the drill of a tap
            Shaped(
                r"(?:in |into |through )?(?:an? |the )?(?P<n>steel|alumini?um|cast iron|iron|brass)$",
                lambda m: m["n"],
                "in {}",
                doubt=1,
                cue=("steel", "alumin", "iron", "brass"),
            ),
        ),
        "plate": (  # it changes no drill
            amount(
                "length",
                before="(?:in|into|through)(?: an?| the| some| my)?",
                after="(?:thick )?(?:(?:mild )?(?:steel|alumini?um|alloy) )?(?:plates?|sheet|flat(?: bar)?|bar|box"
                "|angle)",
                say="in {} plate",
                cue=("plate", "sheet", "flat", "bar", "box", "angle"),
            ),
        ),
        "usual": (  # the drill that one has, in place of which another is asked for
            Shaped(
                rf"(?:instead of|rather than) (?:an? |the )?(?P<n>{NUMBER})(?: ?(?:mm|in|inch))?",
                lambda m: m["n"],
                "in place of {}",
                cue=("instead of", "rather than"),
            ),
            Shaped(
                rf"(?:would|will|is|are) (?:an? |the )?(?P<n>{NUMBER})(?: ?(?:mm|in|inch))?(?: be)? too (?:tight|small"
                rf"|big"
                r"|large|loose)(?: for (?:it|that|this))?",
                lambda m: m["n"],
                "for {}",
                cue=(" too ",),
            ),
            Shaped(
                r"(?:(?:the |my |our )?(?:welder|mate|boss|old man|he|she|they|i) (?:say|reckon|think|want)s?"
                rf"(?: (?:on|it'?s|for))? (?:an? )?)(?P<n>{NUMBER})(?: ?(?:mm|in|inch))?(?: (?:is |will )?(?:be |do )?"
                r"(?:fine|enough|plenty|ok|okay|right|best))?(?: (?:who|which) (?:has it|is|of us is) right)?",
                lambda m: m["n"],
                "{} said",
                cue=("say", "reckon", "think", "want"),
            ),
        ),
    },
    PLACE + r"|(?:(?:i |we )?keeps? )?(?:snap|break|snapp|wreck)(?:s|ing|ed)?(?: (?:the|my|off))* taps?"
    r"|(?:in|into) (?:stainless|steel|alumini?um|cast iron|iron|brass)(?:"
    r" (?:block|head|plate|case))?|(?:steel|alumini?um|cast iron|iron|brass)"
    r" (?:tee|block|plate|case|bracket|casting)s?(?: block)?|"
    r"(?:how )?big|(?:what |which )?(?:size )?(?:drill(?: bit)?s?|bits?|holes?)(?:"
    r" size)?|tap(?:ped|ping)?|thread(?:ed)?|diameter|size"
    r"|bolts?|screws?|pass|through|do i drill|to drill|need|bore|ream(?:er|ed|ing)?|pilot|ahead of|opening"
    r"|(?:weld[- ]in )?bungs?"
    r"|(?:an? )?single size|(?:that )?suits? (?:the )?(?:2|both|pair)"
    r"|(?:(?:an?|the) )?(?:(?:suspension|motor|engine|gear ?box) )?(?:bracket|mount|plate)|mark(?:ing|ed)? out"
    r"|(?:for )?(?:[2-9]|1[02])(?= m[0-9])",
    needs=("thread",),
    asks_for=r"^(?!.*\bedge\b)(?=.*\b(?:drill\w*|bits?|taps?|tapp\w+|clearance|holes?|bore|ream\w*|mark(?:ing)? out"
    r"|too (?:big|small|tight|loose) for)\b).*",
    is_named=True,
    joined=("usual",),
    columns={"thread": ("fasteners/holes", "thread"), "fit": ("fasteners/holes", "fit")},
    opens=_open_hole,
    settle=_settle_hole,
)
