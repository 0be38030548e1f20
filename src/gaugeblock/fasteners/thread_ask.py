"""What is asked of a thread itself: its hole, its pitch, how much of it a metal needs."""

from __future__ import annotations

from gaugeblock.answer.alloys import Graded
from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.errors import InputError
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.drills_ask import DRILL
from gaugeblock.fasteners.engaged_said import ENGAGED
from gaugeblock.fasteners.hole_ask import HOLE, TAPPING
from gaugeblock.fasteners.identify_ask import IDENTIFY
from gaugeblock.fasteners.spanner_ask import SPANNERS
from gaugeblock.fasteners.spoken import GRADE, THREAD
from gaugeblock.fasteners.strength_ask import STRENGTH
from gaugeblock.fasteners.threads_said import threads_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

INTO = r"(?:into|in to|in|going into|screwed into|threaded into|tapped into|tapped in)(?: (?:an?|the|my))?(?: bare)?"
_COVER = r"(?:timing|chain|front|rear|side|valve|water pump|thermostat|end|gear) (?:cover|case|housing|plate)"
METAL_TAIL = (
    rf"{_COVER}|block|head|heads|intake|manifold|case|casing|housing|casting|part|plate|hole|cover|tapped hole|oil"
    r" pan|pan|sump"
    r"|hub|knuckle|rail|radiator|tank|bell ?housing|gearbox(?: housing| case| casing)?|transmission(?:"
    r" case)?|fitting|pipe|flange"
    r"|wheel cylinders?|cylinders?|rims?|wheels?|crossmember|chassis|frame|bracket|beam|axle|sheet|tab|stock|bar"
)


def metals_said(data: Refdata) -> dict[str, str]:
    """The metals by name; ``alloy`` alone is as often the steel of the bolt."""
    return {w: c for w, c in words_of("fasteners", "into", "fasteners/engagement")(data).items() if w != "alloy"}


TAPPED_GRADES = (Graded("aluminium", lead=INTO, say="into {}"), Graded("aluminium", say="into {}", doubt=2))
TAPPED_METAL = Named(words_of("fasteners", "into", "fasteners/engagement"), lead=INTO, say="into {}", tail=METAL_TAIL)


def usual_threads(data: Refdata) -> list[str]:
    """The coarse and fine threads in inches and the coarse ones in millimetres."""
    cells = list(dict.fromkeys(data.table("fasteners/threads").column("thread").values()))
    sizes = dict.fromkeys(c.partition("x")[0] for c in cells if c.startswith("M"))
    coarse = {keys.thread(size, data).cell for size in sizes}
    return [c for c in cells if c in coarse or c.endswith((" UNC", " UNF"))]


def _engagement() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.depth import engagement, of_grade

    return of_grade(engagement)


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


# Whether it is enough, which the answer says of what is engaged.
_LONG_ENOUGH = (
    r"how thick(?: (?:does|do|must|should|is))?|(?:need|needs|has|have) to be|(?:to )?tap(?= )|"
    r"(?:is (?:it|that) )?(?:far|deep|long|much|thread|good)? ?(?:enough|plenty|ok|okay|alright)(?: threads?)?|"
    r"(?:will (?:that|it) |that'?ll )do|(?:or )?(?:should|must|do|shall) i (?:go|buy|get"
    r"|use|fit)"
    r"(?: (?:deeper|longer|with longer))?|deeper|longer|(?:for|on|in) the (?:bell ?housing|gear ?box|casing|case)"
)
ENGAGEMENT = Topic(
    _engagement,
    "engagement",
    {
        "thread": (
            *THREAD,
            Shaped(
                r"(?:an? )?(?P<n>[4-9]|1[0-9]|2[04]) ?(?:mm|mil|millimet(?:re|er))(?: coarse)?"
                r"(?= (?:bolt|stud|screw|hole|thread|capscrew)s?(?: |$))",
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
        "grade": GRADE,
        "have": (
            Shaped(
                r"(?:(?:that|they|it|which) )?(?:(?:only|just|but) )?(?:(?:go(?:es)?|screws?|threads?|winds?|gets?)"
                r"(?: (?:only|just|about))* in|reach(?:es)?)(?: (?:only|just|about))*"
                rf" (?P<n>{NUMBER}) ?(?P<u>mm|inch(?:es)?|in|\")(?: deep| in)?(?: of(?= ))?",
                lambda m: f"{m['n']} {'mm' if m['u'] == 'mm' else 'in'}",
                "{} engaged",
                cue=("go", "screw", "thread", "reach", "wind", "get"),
            ),
            amount(
                "length",
                before="(?:i |we )?(?:only |just )?(?:have|got|with)(?: only)?",
                after="(?:of (?:good )?threads?|engaged|of engagement|in)",
                say="{} engaged",
                cue=("have", "got", "with"),
            ),
            *ENGAGED,
            amount(  # judged beside the size of the bolt
                "length",
                before="(?:(?:i'?ve|i have|have|has|got|with|only|just|is) )*(?:only|just|have|has|got|with|is)",
                after="(?:of )?threads?",
                say="{} engaged",
                doubt=1,
                cue=("thread",),
            ),
            amount("length", after="(?:of )?threads?", say="{} engaged", doubt=2, cue=("thread",)),
            amount("length", followed="enough (?:for|on)", say="{} engaged", doubt=2, cue=(" enough",)),
        ),
    },
    rf"{_LONG_ENOUGH}|(?:how )?(?:deep|far|much|long)(?:"
    r" thread)?|threads?|engage\w*|(?:steel )?(?:bolts?|screws?|studs?)|minimum|min|(?:at )?(?:the )?least|depth|length"
    r"|how (?:many|much) (?:inch(?:es)?|mm|diameters?)(?: (?:of )?(?:the )?threads?)?|how much thread"
    r"|(?:should|must|has to|have to|needs? to) be (?:screwed|threaded|wound) in|(?:be )?screwed in"
    r"|drill(?:ing)?(?: (?:an?|the|new|fresh|out))* (?:boss|bosses|holes?)|(?:fresh |new )?boss(?:es)?|ordinary"
    r"|(?:to be )?as strong as (?:the |my |a )?(?:bolts?|studs?|screws?)|go|must|holes?|tapped|blind|screw(?:ed)? in"
    r"|(?:before )?(?:it |they )?(?:will )?strips?|stripping|thread(?:ed)? in"
    r"|(?:so |if i want |so that |before )?(?:the |my |an? )?(?:bolts?|studs?|screws?) (?:to )?(?:breaks?|snaps?|fails?"
    r"|gives?(?: up| way)?|let'?s? go)|before (?:the |its |it |they )?(?:bolts? |studs? )?(?:breaks?|snaps?)(?: first)?"
    r"|before (?:the |its |it |they )?(?:threads?|hole)? ?(?:do|does|pulls? out|strips?"
    r"|gives?(?: way| up)?|let'?s? go)",
    needs=("thread",),
    asks_for=r"how thick(?! (?:is|are) (?:an? )?[^ ]+(?: (?:bolt|stud|screw)s?)?$)|how long (?:an? "
    r"|of a )?threads?|threads? how (?:long|deep)|far enough|deep enough"
    r"|long enough|(?:threads?|engage\w*)\b.*\b(?:enough|ok|okay|alright"
    r"|plenty)$"
    r"|(?:threads?|engage\w*)\b.*\benough\b|enough (?:threads?|engagement)"
    r"|enough (?:for|on) (?:(?:an?|the|my) )?(?:(?:m ?[0-9]|[0-9]+/[0-9]).* in|bolt in|stud in)|will (?:that"
    r"|it) do|only go(?:es)? in|how deep|deep|engage\w*|depth|how far"
    r"|how much thread|how many threads"
    r"|how (?:many|much) (?:inch(?:es)?|mm|diameters?) (?:of )?(?:the )?threads?",
    is_named=True,
    columns={"thread": usual_threads, "into": ("fasteners/engagement", "into")},
    opens=_open_engagement,
    unmoved="service",
)


def _by_diameters() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.depth import by_diameters

    return by_diameters


# How much of a thread a metal needs whatever the thread: in diameters, where these are named.
DIAMETERS = Topic(
    _by_diameters,
    "engagement in diameters",
    {
        "into": ENGAGEMENT.slots["into"],
        "have": (
            Shaped(
                rf"(?P<n>{NUMBER}|an?|one) (?:bolt )?diameters?(?: (?:of )?(?:thread|engagement|deep|engaged|in))*",
                lambda m: f"{1 if m['n'][0] in 'ao' else m['n']} diameters",
                cue=("diameter",),
            ),
        ),
    },
    rf"diameters?|(?:how many|of)|{ENGAGEMENT.signals}",
    needs=("into",),
    asks_for=rf"diameters?|{ENGAGEMENT.asks_for}",
    is_named=True,
    settle=lambda values, _: {"into": values["into"]},
)


def _thread() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.thread_facts import thread

    return thread


def _open_thread(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size."""
    threads = threads_of(values["thread"], data)
    if values.get("fact") == "pitch: every" and values["thread"].removeprefix("M").isdigit():
        every = dict.fromkeys(data.table("fasteners/threads").column("thread").values())
        threads += [cell for cell in every if cell.startswith(f"{values['thread']}x") and cell not in threads]
    return (("thread",), [{"thread": cell} for cell in threads]) if threads != [values["thread"]] else None


def _settle_fact(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """The fact alone; no table has a diameter but the outside one."""
    kind, _colon, said = values.get("fact", "").partition(": ")
    if kind == "other":
        do = f"its area is on record: `gaugeblock ask root area {values['thread']}`"
        raise InputError(said, "fact", "no table here has it of a thread", (), do)
    return {**values, "fact": kind}


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
            Shaped(  # of a bare metric size that is all of them
                r"(?:which|what) threads?(?: (?:is|would|could) (?:it|that|this)(?: be)?| does it have| is on (?:it"
                r"|that)"
                r"|(?: do(?:es)?)? (?:it|they) (?:have|take|come in))?",
                always("pitch: every"),
                "which thread",
                cue=("which thread", "what thread"),
            ),
            Shaped(r"(?:tensile )?stress area|area", always("stress area")),
            Shaped(r"root area|minor (?:diameter )?area", always("root area")),
            Shaped(r"(?:major |outside )?dia(?:meter)?|od|how (?:big|thick)(?: around| across)?", always("diameter")),
            Shaped(
                r"(?:minor|root|core|inside|inner|pitch|effective) dia(?:meter)?",
                lambda m: f"other: {m[0]}",
                cue=(" dia",),
            ),
        ),
    },
    r"threads?|bolts?|screws?|studs?|coarse|unc|unified|regular|metric|size",
    needs=("thread", "fact"),
    columns={"thread": usual_threads},
    opens=_open_thread,
    asks_for=r"threads?|tpi|pitch|area|dia(?:meter)?|^(?:so |ok )?how (?:big|thick) (?:is|are)"
    r"|[0-3](?:\.[0-9]+)?(?: ?mm)? or (?:an? )?[0-3](?:\.[0-9]+)?",
    is_named=True,
    settle=_settle_fact,
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
    found = sorted({row["series"] for row in rows if row["size"] == values.get("size")}, reverse=True)
    return ("series",), [{"series": series} for series in found]


def _settle_pipe(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """Without the threads an inch that were said with the name of a pipe thread, which are its own."""
    count, size = values.get("count"), values.get("size")
    rows = data.table("fasteners/pipe_threads").rows
    series = (values.get("series"), "any") if "series" in values else None
    own = {
        row["value"]
        for row in rows
        if row["size"] == size and row.cells["quantity"] == "threads_per_inch"
        if series is None or row["series"] in series
    }
    if count is not None and own and count not in own:
        raise InputError(f"{count} tpi", "size", f"no pipe thread of {size} has so many", (), "count them again")
    return {k: v for k, v in values.items() if k != "count"}


PIPE_THREAD = Topic(
    _pipe_thread,
    "pipe thread",
    {
        "series": (Named(_series),),
        "size": (
            Shaped(
                r"(?P<n>(?:[1-4][ -])?[0-9]{1,2}/[1-9][0-9]*|[1-6]|\.[0-9]+)(?:-(?:27|18|14|11\.5|11|28|19))?"
                r"(?: ?(?:in|inch|\"))?(?! ?mm)",
                lambda m: f"{m['n']} in",
            ),
        ),
        "count": (  # the threads an inch that a pipe thread of the size has, as its name
            Shaped(r"(?P<n>27|28|18|19|14|11\.5|11) ?tpi", lambda m: m["n"], "{} tpi", cue=("tpi",)),
        ),
        "fact": (
            TAPPING,
            Shaped(  # the same in every metal
                r"(?:tap(?:ping)? )?drill(?: size)? (?:alumini?um|alloy|ally|steel|cast iron|brass)",
                always("tap drill"),
                cue=("drill",),
            ),
            Shaped(  # which the drill on record is for
                r"(?:drill(?: size)? |hole )?(?:with )?(?:no|without)(?: (?:an?|any|the|my|using|taper(?:ed)?|pipe))*"
                r" reamer",
                always("tap drill"),
                "tap drill, no reamer",
                cue=("ream",),
            ),
            Shaped(
                r"(?:tap )?drill(?: size)?(?= and .*(?:deep|depth|length|long))|(?:drill|bore) (?:it|them|this"
                r"|that)(?: out)?(?: to)?",
                always("tap drill"),
                cue=("drill", "bore"),
            ),
            Shaped(
                r"(?:how many |what )(?:threads?|tpi)(?: per inch| to the inch)?|threads? (?:per|to the) inch"
                r"|tpi|pitch",
                always("pitch"),
            ),
            Shaped(
                r"(?:outside |major )?dia(?:meter)?|od"
                r"|measures?(?: (?:across|over|on|round|around)(?: the)?(?: outside)?)?"
                r"|how (?:big|thick|wide)(?: is)?(?: (?:across|over|on)(?: the)?(?: outside)?)?",
                always("diameter"),
                "diameter",
            ),
            Shaped(r"hand tight(?: engagement)?|(?:how far )?(?:in )?by hand", always("hand tight")),
            Shaped(r"(?:thread )?(?:length|depth)|how long|how deep", always("thread length")),
        ),
    },
    r"(?:out of|from|in)(?: an?)? (?:mild )?(?:steel|stainless|brass|alumini?um) (?:bar|stock|hex|round)"
    r"|for (?:an? |the |my )?(?:(?:oil|water|fuel|air|brake|coolant|temp\w*|pressure|block)"
    r" )*(?:senders?|sensors?|switch(?:es)?"
    r"|sending units?|gauges?|ports?|bungs?|adapters?|fittings?)|"
    + HOLE.signals
    + r"|(?:into|in|on)(?: an?| the| my)? (?:alumini?um|alloy|steel|cast iron|iron|brass) (?:sump|pan|tank|block|head"
    r"|case"
    r"|pot|body|manifold|housing|rocker cover)"
    r"|(?:making )?(?:an? )?(?:weld[- ](?:in|on) )?(?:bungs?|boss(?:es)?)"
    r"|(?:fe)?m[a]les?"
    r"|(?:does|do) the tap go|tap go(?:es)?"
    r"|(?:put|fit|screw)(?:ting|ing)?(?: in)? (?:an?|the|my) (?:(?:oil|water|fuel|air|coolant|temp\w*|pressure) )*"
    r"(?:senders?|sensors?|sending units?|switch(?:es)?)(?: (?:in|into) (?:the |my )?(?:block|head|manifold))?"
    r"|threads?|pipes?|taper(?:ed)?|fittings?|plugs?"
    r"|(?:an? |the )?(?:(?:oil|water|fuel|air|coolant|temp\w*|pressure) )*(?:senders?|sensors?|sending units?)(?= in)"
    r"|(?:which|that|it) (?:is|are) (?:alumini?um|alloy|steel|cast iron|brass)"
    r"|(?:in|into) (?:alumini?um|alloy|ally|steel|cast iron|brass)",
    needs=("size",),
    asks_for=r"np[tsf]\w*|bsp\w*|pipe",
    is_named=True,
    opens=_open_series,
    columns={"series": ("fasteners/pipe_threads", "series"), "size": ("fasteners/pipe_threads", "size")},
    settle=_settle_pipe,
)


THREADS = (HOLE, ENGAGEMENT, DIAMETERS, FACT, STRENGTH, PIPE_THREAD, IDENTIFY, DRILL, *SPANNERS)
