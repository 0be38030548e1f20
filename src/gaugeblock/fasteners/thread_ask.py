"""What is asked of a thread itself: its hole, its pitch, how much of it a metal needs."""

from __future__ import annotations

from gaugeblock.answer.alloys import Graded
from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.identify_ask import IDENTIFY
from gaugeblock.fasteners.spoken import GRADE, THREAD

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

INTO = r"(?:into|in to|in|going into|screwed into|threaded into|tapped into|tapped in)(?: (?:an?|the|my))?(?: bare)?"
# Where a hole or a thread is: it changes no drill, no pitch and no size.
PLACE = (
    r"(?:in|on|at|of|into|for|through)(?: (?:the|my|an?|this))?(?: old)? (?:thermostat|water pump|oil"
    r" pump|cylinder|engine"
    r"|gear ?box|transmission|axle|intake|exhaust|brake|fuel|radiator|heater|sump|oil|valve)?(?: ?(?:housing|block|head"
    r"|manifold|case|casing|cover|pan|tank|flange|bracket|mount|plate|frame|crossmember|chassis|hub|pump))?(?= |$)"
    r"|so|cut|bit of room|with|room|space|play|goes|going|screws? in"
)
_COVER = r"(?:timing|chain|front|rear|side|valve|water pump|thermostat|end|gear) (?:cover|case|housing|plate)"
METAL_TAIL = (
    rf"{_COVER}|block|head|heads|intake|manifold|case|casing|housing|casting|part|plate|hole|cover|tapped hole|oil"
    r" pan|pan|sump"
    r"|hub|knuckle|rail|radiator|tank|bell ?housing|gearbox(?: housing| case| casing)?|transmission(?:"
    r" case)?|fitting|pipe|flange"
    r"|rims?|wheels?|crossmember|chassis|frame|bracket|beam|axle|sheet|tab|stock|bar"
)


def metals_said(data: Refdata) -> dict[str, str]:
    """The metals by name; ``alloy`` alone is as often the steel of the bolt."""
    return {w: c for w, c in words_of("fasteners", "into", "fasteners/engagement")(data).items() if w != "alloy"}


TAPPED_GRADES = (Graded("aluminium", lead=INTO, say="into {}"), Graded("aluminium", say="into {}", doubt=2))
TAPPED_METAL = Named(words_of("fasteners", "into", "fasteners/engagement"), lead=INTO, say="into {}", tail=METAL_TAIL)


def threads_of(typed: str, data: Refdata) -> list[str]:
    """The thread, or the coarse and the fine one of a bare size; the fine ones of a metric size."""
    if typed.endswith(" fine"):
        size = typed.removesuffix(" fine")
        coarse = keys.thread(size, data).cell
        own = data.table("fasteners/threads").column("thread").values()
        found = [c for c in own if c.startswith(f"{size}x") and c != coarse]
        if not found:
            raise LookupMiss(typed, "thread", "no fine thread of this size in the tables", [coarse], "say its pitch")
        return found
    try:
        return [keys.thread(typed, data).cell]
    except Ambiguous as error:
        cells = data.table("fasteners/threads").column("thread").values()
        size = typed.replace(" ", "-") + "-"
        return [c for c in cells if c.startswith(size) and c.endswith((" UNC", " UNF"))] or list(error.nearest)
    except LookupMiss:
        return [typed]


def usual_threads(data: Refdata) -> list[str]:
    """The coarse and fine threads in inches and the coarse ones in millimetres."""
    cells = list(dict.fromkeys(data.table("fasteners/threads").column("thread").values()))
    sizes = dict.fromkeys(c.partition("x")[0] for c in cells if c.startswith("M"))
    coarse = {keys.thread(size, data).cell for size in sizes}
    return [c for c in cells if c in coarse or c.endswith((" UNC", " UNF"))]


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
_USUAL_SHARE = "75 %"


def _settle_hole(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """A share of the thread is a tap's; three quarters is what the drill lists take."""
    kept = {k: v for k, v in values.items() if k != "usual" and (k, v) != ("share", _USUAL_SHARE)}
    return {**kept, "fit": "tap drill"} if "share" in values and "fit" not in values else kept


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
                r"(?:an? )?(?:sloppy|loose|easy|slack|baggy|generous|wobbly|rattling)(?: fit)?",
                always("clearance, free"),
                doubt=1,
                cue=("sloppy", "loose", "easy", "slack", "baggy", "generous", "wobbly", "rattl"),
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
                r"(?:(?:an?|the) )?(?:wire |steel |coil )*(?:thread )?inserts?(?: (?:drill|hole|size|tap))*",
                always("thread insert"),
                "for a thread insert",
                cue=("insert",),
            ),
            Shaped(
                r"(?:tap(?:ping|ped)?|threaded)(?: (?:drill|hole|size))*(?: bit)?|drill(?: bit)? for a tap"
                r"|before (?:the |i |we )?tap(?:ping)?(?: it)?",
                always("tap drill"),
            ),
            Named(words_of("fasteners", "fit", "fasteners/holes"), tail="fit|clearance|holes?"),
            Shaped(r"clearances?(?: (?:holes?|drill|fit))*|through holes?", always(_CLEARANCE)),
        ),
        "share": (
            Shaped(
                rf"(?:for |at |to )?(?:(?:about|around|only|an?|the) )*(?P<n>{NUMBER}) ?(?:%|percent|per cent)"
                r"(?: (?:of )?(?:the |an? )?(?:full )?(?:threads?|engagement))*",
                lambda m: f"{m['n']} %",
                "{} of the thread",
                cue=("%", "percent", "per cent"),
            ),
        ),
        "usual": (  # the drill that one has, in place of which another is asked for
            Shaped(
                rf"(?:instead of|rather than) (?:an? |the )?(?P<n>{NUMBER})(?: ?(?:mm|in|inch))?",
                lambda m: m["n"],
                "in place of {}",
                cue=("instead of", "rather than"),
            ),
        ),
    },
    PLACE + r"|(?:(?:i |we )?keeps? )?(?:snap|break|snapp|wreck)(?:s|ing|ed)?(?: (?:the|my|off))* taps?"
    r"|(?:in|into) (?:stainless|steel|alumini?um|cast iron|iron|brass)(?:"
    r" (?:block|head|plate|case))?|(?:steel|alumini?um|cast iron|iron|brass)"
    r" (?:tee|block|plate|case|bracket|casting)s?(?: block)?|"
    r"(?:how )?big|(?:what |which )?(?:size )?(?:drill(?: bit)?s?|bits?|holes?)(?:"
    r" size)?|tap(?:ped|ping)?|thread(?:ed)?|diameter|size"
    r"|bolts?|screws?|pass|through|do i drill|to drill|need",
    needs=("thread",),
    asks_for=r"drill\w*|bits?|taps?|tapp\w+|clearance|holes?",
    is_named=True,
    columns={"thread": ("fasteners/holes", "thread"), "fit": ("fasteners/holes", "fit")},
    opens=_open_hole,
    settle=_settle_hole,
)


def _engagement() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.depth import engagement

    return engagement


def _open_engagement(values: dict[str, str], data: Refdata) -> Open | None:
    """Each thread of a bare size, each metal that a rule is for: whatever was not said."""
    from gaugeblock.fasteners.depth import metals

    threads, open_keys = threads_of(values["thread"], data)[:1], ["thread"]
    rows = [{"thread": cell} for cell in threads]
    if "into" not in values:
        open_keys.append("into")
        rows = [{**row, "into": metal} for row in rows for metal in metals(data)]
    return tuple(open_keys), rows


def _metric(match: re.Match[str]) -> str:
    return f"M{match['n']}"


ENGAGEMENT = Topic(
    _engagement,
    "engagement",
    {
        "thread": (
            *THREAD,
            Shaped(
                r"(?:an? )?(?P<n>[4-9]|1[0-9]|2[04]) ?(?:mm|mil|millimet(?:re|er))(?= (?:bolt|stud|screw))",
                _metric,
                "{}",
            ),
        ),
        "into": (
            TAPPED_METAL,
            *TAPPED_GRADES,
            Named(metals_said, say="into {}", tail=METAL_TAIL, doubt=1),
            Shaped(r"alloy (?:casting|case|block|head|housing)", always("aluminium"), "into {}", doubt=1),
        ),
    },
    r"(?:how )?(?:deep|far|much|long)(?:"
    r" thread)?|threads?|engage\w*|bolts?|screws?|studs?|minimum|min|least|depth|length"
    r"|(?:to be )?as strong as (?:the |my |a )?(?:bolts?|studs?|screws?)|go|must|holes?|tapped|blind|screw(?:ed)? in"
    r"|(?:before )?(?:it |they )?(?:will )?strips?|stripping|thread(?:ed)? in"
    r"|(?:so |if i want |so that |before )?(?:the |my |an? )?(?:bolts?|studs?|screws?) (?:to )?(?:breaks?|snaps?|fails?"
    r"|gives?(?: up| way)?|let'?s? go)|before (?:the |its |it |they )?(?:threads?|hole)? ?(?:do|does|pulls? out|strips?"
    r"|gives?(?: way| up)?|let'?s? go)",
    needs=("thread",),
    asks_for=r"how deep|deep|engage\w*|depth|how far|how much thread|how many threads",
    is_named=True,
    columns={"thread": usual_threads, "into": ("fasteners/engagement", "into")},
    opens=_open_engagement,
    unmoved="service",
)


def _thread() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.thread_facts import thread

    return thread


def _open_thread(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size."""
    threads = threads_of(values["thread"], data)
    return (("thread",), [{"thread": cell} for cell in threads]) if threads != [values["thread"]] else None


FACT = Topic(
    _thread,
    "thread",
    {
        "thread": THREAD,
        "fact": (
            Shaped(
                r"(?:how many |what )?(?:threads?|tpi)(?: per inch| to the inch)|how many (?:threads?|tpi)|tpi|pitch",
                always("pitch"),
            ),
            Shaped(  # which of two it is
                r"(?:(?:is )?(?:it|that) )?(?:an? )?(?P<a>[0-3](?:\.[0-9]{1,2})?)(?: ?mm)?(?: pitch)? or (?:an? )?"
                r"(?P<b>[0-3](?:\.[0-9]{1,2})?)(?: ?mm)?(?: pitch)?",
                lambda m: f"pitch: {m['a']} or {m['b']}",
                cue=(" or ",),
            ),
            Shaped(r"(?:tensile )?stress area|area", always("stress area")),
            Shaped(r"root area|minor (?:diameter )?area", always("root area")),
            Shaped(r"(?:major |outside )?dia(?:meter)?|od|how (?:big|thick)(?: around| across)?", always("diameter")),
        ),
    },
    r"threads?|bolts?|screws?|studs?|coarse|unc|unified|regular|metric|size",
    needs=("thread", "fact"),
    columns={"thread": usual_threads},
    opens=_open_thread,
    asks_for=r"threads?|tpi|pitch|area|dia(?:meter)?|[0-3](?:\.[0-9]+)?(?: ?mm)? or (?:an? )?[0-3](?:\.[0-9]+)?",
    is_named=True,
    settle=lambda values, _: {k: v.partition(":")[0] if k == "fact" else v for k, v in values.items()},
)


_METRIC, _INCH = "metric", "imperial"


def grades_said(data: Refdata) -> list[str]:
    """Every grade of the tables with its standard."""
    rows = data.table("fasteners/grades").rows
    return list(dict.fromkeys(f"{row['standard']} {row['grade']}" for row in rows if not row.standing))


def _grade() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.grade_facts import grade

    return grade


def _settle_grade(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """The grade, where it is of the inches or the metric bolts that were said."""
    grade, system = values["grade"], values.get("system")
    is_metric = grade.startswith(("ISO 898-1", "ISO 3506", "ISO "))
    if system is not None and is_metric != (system == _METRIC):
        other = _METRIC if is_metric else _INCH
        raise InputError(grade, "grade", f"it is of {other} bolts, not of {system} ones", (), "read the head again")
    return {k: v for k, v in values.items() if k != "system"}


STRENGTH = Topic(
    _grade,
    "bolt grade",
    {
        "grade": GRADE,
        "size": (amount("length", before="of|at", say="{}"), amount("length", after="bolts?|screws?|studs?", say="{}")),
        "system": (
            Shaped(r"(?:it is |its )?(?:an? )?(?:imperial|inch(?: size[ds]?)?|unified)", always(_INCH), "{}"),
            Shaped(r"(?:it is |its )?(?:an? )?metric", always(_METRIC), "{}"),
        ),
    },
    r"(?:how )?(?:much |any )?strong(?:er|est)?|the same(?: as)?|better|strength"
    r"|(?:tensile|proof|yield)(?: strength| stress| load)?|means?|stand(?: for)?|head"
    r"|mark(?:s|ed|ing|ings)?|stamp(?:s|ed)?|on it"
    r"|bolts?|screws?|grade|class|ksi|psi|mpa|lines?|what (?:is|are|grade)|is",
    needs=("grade",),
    asks_for=r"strong\w*|strength|tensile|proof|mean|means|head|mark\w*|stamp\w*|lines?",
    is_named=True,
    columns={"grade": grades_said},
    settle=_settle_grade,
)


def _pipe_thread() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.pipe_thread import pipe_thread

    return pipe_thread


def _series(data: Refdata) -> dict[str, str]:
    """The series of pipe threads by name."""
    own = data.table("fasteners/pipe_threads").column("series")
    return {w: c for w, c in words_of("fasteners", "series")(data).items() if c in own.values()} | dict(own)


def _open_series(values: dict[str, str], data: Refdata) -> Open | None:
    """The series of pipe threads that have the size, where none was said."""
    if "series" in values:
        return None
    rows = data.table("fasteners/pipe_threads").rows
    found = sorted({row["series"] for row in rows if row["size"] == values["size"]}, reverse=True)
    return ("series",), [{"series": series} for series in found]


PIPE_THREAD = Topic(
    _pipe_thread,
    "pipe thread",
    {
        "series": (Named(_series),),
        "size": (
            Shaped(rf"(?P<n>{NUMBER})(?:-(?:27|18|14|11\.5|11|28|19))?(?: ?(?:in|inch|\"))?", lambda m: f"{m['n']} in"),
        ),
        "fact": (
            HOLE.slots["fit"][0],
            Shaped(
                r"(?:how many |what )(?:threads?|tpi)(?: per inch| to the inch)?|threads? (?:per|to the) inch"
                r"|tpi|pitch",
                always("pitch"),
            ),
            Shaped(r"(?:outside |major )?dia(?:meter)?|od", always("diameter")),
            Shaped(r"hand tight(?: engagement)?|(?:how far )?(?:in )?by hand", always("hand tight")),
            Shaped(r"(?:thread )?length|how long|how deep", always("thread length")),
        ),
    },
    r"for (?:an? |the |my )?(?:(?:oil|water|fuel|air|brake|coolant|temp\w*|pressure|block)"
    r" )*(?:senders?|sensors?|switch(?:es)?"
    r"|sending units?|gauges?|ports?|bungs?|adapters?|fittings?)|"
    + HOLE.signals
    + r"|(?:put|fit|screw)(?:ting|ing)?(?: in)? (?:an?|the|my) (?:(?:oil|water|fuel|air|coolant|temp\w*|pressure) )*"
    r"(?:senders?|sensors?|sending units?|switch(?:es)?)(?: (?:in|into) (?:the |my )?(?:block|head|manifold))?"
    r"|threads?|pipes?|taper(?:ed)?|fittings?|plugs?|tight",
    needs=("size",),
    asks_for=r"np[tsf]\w*|bsp\w*|pipe",
    is_named=True,
    opens=_open_series,
    columns={"series": ("fasteners/pipe_threads", "series"), "size": ("fasteners/pipe_threads", "size")},
)


THREADS = (HOLE, ENGAGEMENT, FACT, STRENGTH, PIPE_THREAD, IDENTIFY)
