"""What is asked about a thread or a part, as people say it."""

from __future__ import annotations

from functools import wraps

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.unpublished import maker_of, named_by
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners.crow_foot import CROW_FOOT_SIGNALS, CROW_FOOT_SLOTS, settle_crow_foot
from gaugeblock.fasteners.makers_words import OfMaker, with_threads
from gaugeblock.fasteners.mended import REPAIRED
from gaugeblock.fasteners.open_keys import LIMITS
from gaugeblock.fasteners.own_words import KNOWN, Tapped, apart
from gaugeblock.fasteners.spoken import CONDITION, GRADE, INSERT, THREAD, TOOLS, TORQUE_SAID, unit_of
from gaugeblock.fasteners.thread_ask import (
    INTO,
    METAL_TAIL,
    TAPPED_GRADES,
    TAPPED_METAL,
    THREADS,
    metals_said,
    threads_of,
    usual_threads,
)
from gaugeblock.fasteners.tightening import OUTCOME, STRIPS, TIGHTEN

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata, Row

_EVERYDAY = {
    "metric": ("ISO 898-1 8.8", "ISO 898-1 10.9", "ISO 898-1 12.9"),
    "inch": ("SAE J429 5", "SAE J429 8"),
    "stainless metric": ("ISO 3506-1 A2-70", "ISO 3506-1 A4-80"),
    "stainless inch": ("ASTM F593 304 CW1", "ASTM F593 316 CW1"),
}
_CONDITIONS = ("dry", "oiled", "anti-seize")


def _open_bolt(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size, the everyday grades, dry, oiled and with anti-seize: whatever was not said."""
    if "strips" in values and "engagement" not in values:
        why = "no table has the torque at which threads strip"
        raise InputError("strip", "", why, (), "say how much thread is engaged, 12 mm, and in which metal")
    if "thread" not in values:
        return None  # a maker's torque stands whatever the thread
    open_keys, rows = [], [values]
    threads = threads_of(values["thread"], data)
    if len(threads) > 1:
        open_keys.append("thread")
        rows = [{**row, "thread": cell} for row in rows for cell in threads]
    if any(k in values for k in ("maker", "wanted")):
        return (tuple(open_keys), [{k: row[k] for k in open_keys} for row in rows]) if open_keys else None
    if "grade" not in values and not {"proof_strength", "yield_strength"} & values.keys():
        open_keys.append("grade")
        is_stainless = values.get("condition", "").startswith("stainless")
        kind = "metric" if values["thread"].startswith("M") else "inch"
        kind = f"stainless {kind}" if is_stainless else kind
        rows = [{**row, "grade": grade} for row in rows for grade in _EVERYDAY[kind]]
    if "condition" not in values and "nut_factor" not in values:
        open_keys.append("condition")
        rows = [{**row, "condition": condition} for row in rows for condition in _CONDITIONS]
    return (tuple(open_keys), [{k: row[k] for k in open_keys} for row in rows]) if open_keys else None


def _settle_bolt(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """``M8 fine`` is M8x1 where that is the one fine thread of the size; a metal and its strength are two options."""
    values = {k: v for k, v in with_threads(apart(values)).items() if k != "strips"}
    if "thread" not in values:
        return values
    threads = threads_of(values["thread"], data) if values["thread"].endswith(" fine") else ()
    return {**values, "thread": threads[0]} if len(threads) == 1 else values


def _settle_part(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """What is done by turns, or with a part used again, is a row of its own; a part goes by its maker's torque,
    whatever the grade of its bolt.
    """
    values = {k: v for k, v in with_threads(values).items() if k != "grade"}
    if "pipe" in values:
        values = _by_its_pipe(values, data)
    size = values.get("size", "")
    if size[:1] == "M" and size[1:].isdigit():  # a spark plug of M14 is listed by 14 mm
        sizes, plain = _sizes(values["part"], data), f"{size[1:]} mm"
        values["size"] = plain if plain in sizes and not any(own.startswith(size) for own in sizes) else size
    kind = values.pop("kind", "")
    if kind:
        name = f"{values['part']}, {kind}"
        if name.casefold() not in data.table("fasteners/part_torques").column("part"):
            raise LookupMiss(name, "part", "not in the tables", (), "ask its maker, or leave it out")
        values["part"] = name
    return values


def _by_its_pipe(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """A nut whose thread and tube were both said, by the one of them that its torques are listed by."""
    rest = {k: v for k, v in values.items() if k != "pipe"}
    pipe, size = values["pipe"], values.get("size", "")
    if not size.startswith("M"):
        raise InputError(pipe, "size", "it was said beside another size", (), "say the tube or the thread, not both")
    sizes = _sizes(values["part"], data)
    return {**rest, "size": pipe} if size not in sizes and pipe in sizes else rest


def _sizes(part: str, data: Refdata) -> set[str]:
    """The sizes that a part's torques are listed by."""
    return {row["size"] for row in data.table("fasteners/part_torques").rows if row["part"] == part}


def _tightens(row: Row) -> bool:
    return row.cells["quantity"] in ("tightening_torque", "turn_from_snug", "turn_from_finger_tight", *LIMITS)


def _open_part(values: dict[str, str], data: Refdata) -> Open | None:
    """What was not said of a part where its rows differ by it, or what a bare size can mean.

    ``1/2`` is 1/2-20 where that alone is on record.
    """
    from gaugeblock.fasteners.part import part_cell
    from gaugeblock.tables.load import canonical

    table = data.table("fasteners/part_torques")
    at = {k.name: i for i, k in enumerate(table.keys)}
    if maker_of(values["part"], "fasteners", "part", data)[0]:
        return None
    part = part_cell(values["part"], data)
    services = (values.get("service", "vehicle"), "any")
    own = [r.key for r in table.rows if r.key[at["part"]] == part and r.key[at["service"]] in services and _tightens(r)]
    typed = values.get("size", "").removesuffix(" in").replace("-", " ").strip()
    if typed:
        sizes = dict.fromkeys(key[at["size"]] for key in own)
        if not typed[0].isdigit() or "mm" in typed or values["size"] in sizes:
            return None
        found = [s for s in sizes if s in (f"{typed} in",)] or [
            s for s in sizes if s.replace("-", " ").startswith(f"{typed} ")
        ]
        return (("size",), [{"size": s} for s in found]) if found else None
    if any(k in values for k in ("maker", "wanted")):
        return None
    names = [k for k in ("size", "seat", "material") if k not in values and len({key[at[k]] for key in own}) > 1]
    given = {k: canonical(data, "fasteners/part_torques", k, values[k]) for k in ("seat", "material") if k in values}
    own = [key for key in own if all(key[at[k]] in (v, "any") for k, v in given.items())]
    rows = list(dict.fromkeys(tuple(key[at[k]] for k in names) for key in own))
    return (tuple(names), [dict(zip(names, row, strict=True)) for row in rows]) if names and len(rows) > 1 else None


def _torque() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.torque import torque

    return _of_maker(torque)


def _part() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.part import part

    return _of_maker(part)


def _of_maker(answer: Callable[..., Sheet]) -> Callable[..., Sheet]:
    """The answer, which takes what was said of the maker's torque as one option."""

    @wraps(answer)
    def asked(*args: object, maker: str | None = None, maker_condition: str | None = None, **options: object) -> Sheet:
        if maker is None:
            return answer(*args, **options)
        own = {"torque": maker, "condition": maker_condition} if maker_condition else maker
        return answer(*args, maker=own, **options)

    return asked


_SLOTS: dict[str, tuple[Reader, ...]] = {
    "thread": THREAD,
    "grade": GRADE,
    "condition": CONDITION,
    "into": (
        Tapped(TAPPED_METAL),
        TAPPED_METAL,
        *TAPPED_GRADES,
        Named(metals_said, say="into {}", tail=METAL_TAIL, doubt=4),
    ),
    "insert": INSERT,
    "given": (
        Shaped(
            r"(?:what |how much )?clamp(?:ing)?(?: load| force)?(?: (?:do i get|does it give|at|from|for|of|is|with"
            r"|i get|does"
            r"|do|did|will|would))*"
            rf" (?P<n>{NUMBER}) ?{TORQUE_SAID}(?: (?:give|make|put on|come to|get)(?: me)?)?",
            lambda m: f"{m['n']} {unit_of(m['unit'])}",
            "clamp at {}",
            cue=("clamp",),
        ),
        Shaped(
            rf"(?:is )?(?P<n>{NUMBER}) ?{TORQUE_SAID} (?:too much|too tight|too"
            r" high|enough|ok|okay|safe|alright|all"
            r" right)",
            lambda m: f"{m['n']} {unit_of(m['unit'])}",
            "clamp at {}",
            cue=("too", "enough", "ok", "safe", "right"),
        ),
        Shaped(
            r"(?:did|d[o]ne|used|put|went|pulled|gave|torqued|tightened)(?: (?:it|them|em|to|at|up|on))*"
            rf" (?P<n>{NUMBER}) ?{TORQUE_SAID}",
            lambda m: f"{m['n']} {unit_of(m['unit'])}",
            "clamp at {}",
            doubt=1,
            cue=("did", "done", "used", "put", "went", "pulled", "gave", "torqued", "tightened"),
        ),
        Shaped(
            rf"(?:to|at) (?P<n>{NUMBER}) ?{TORQUE_SAID}",
            lambda m: f"{m['n']} {unit_of(m['unit'])}",
            "clamp at {}",
            doubt=2,
            cue=("nm", "n.m", "n m", "lb", "pound", "newton"),
        ),
    ),
    "engagement": (
        Shaped(
            r"(?:(?:that |which |and )?(?:only|just) )?(?:goes|screws|threads|reaches|gets|got|has|have|is"
            r"|winds)(?: (?:in|only"
            rf"|just|about))* (?P<n>{NUMBER}) ?(?P<u>mm|inch(?:es)?|in|\")(?: (?:of thread|in|deep|down))?"
            r"(?= (?:into|in) (?:the |my |an? )?[a-z])",
            lambda m: f"{m['n']} {'mm' if m['u'] == 'mm' else 'in'}",
            "{} engaged",
            cue=("goes", "screws", "threads", "reaches", "gets", "got", "has", "have", "is", "winds"),
        ),
        amount(
            "length",
            after=r"(?:deep|engaged|engagement|of thread|of threads|of engagement|thread engagement|in)",
            say="{} engaged",
            cue=("deep", "engag", "thread", " in"),
        ),
        amount(
            "length",
            before=r"(?:engagement|engaged|screwed in|goes in|thread engagement)(?: of| is)?",
            say="{} engaged",
            cue=("engag", "screwed in", "goes in"),
        ),
    ),
    **KNOWN,
    "strips": (
        Shaped(STRIPS, always("strips"), "whether it strips", cue=("strip", "pull", "let go", "lets go", "give")),
    ),
    "joint": (Shaped(r"permanent(?: joint)?", always("permanent"), "permanent joint", cue=("permanent",)),),
    **TOOLS,
    "maker": (OfMaker(),),
}
_SIGNALS = (
    TIGHTEN + "|" + OUTCOME + r"|(?:bonnet|hood|hinge|fender|bumper|bracket|crossmember|frame|floor|door)s?|(?:cap"
    r" |machine |set )?(?:bolts?|screws?|studs?)|capscrews?|hex(?:"
    r" head)?|fasteners?|threads?|nuts?|hex"
    r" head|flange head|flange(?= bolts?\b| screws?\b)|socket(?: head)?(?: cap)?|allen"
)
TORQUE = Topic(
    _torque,
    "torque",
    _SLOTS,
    _SIGNALS,
    needs=("thread",),
    table="fasteners",
    job_keys={"maker": "maker.torque", "maker_condition": "maker.condition", "grip": "grip.length"},
    columns={"thread": usual_threads},
    opens=_open_bolt,
    settle=_settle_bolt,
)
PART = Topic(
    _part,
    "torque",
    {
        "part": (
            Named(words_of("fasteners", "part", "fasteners/part_torques")),
            Named(lambda data: named_by("fasteners", "part", data)),
        ),
        "kind": (
            Shaped(
                r"(?:by|in|how many|how much|number of)(?: the)? turns?(?: past snug| past contact| past finger"
                r" tight)?(?: (?:for|with|on) an? new)?",
                always("by turns"),
            ),
            Shaped(r"turns?(?: past (?:snug|contact|finger tight))", always("by turns")),
            Shaped(r"how (?:much|many) turns?", always("by turns")),
            Shaped(
                r"(?:used again|reused|re-used|reusing|re-using|refitted|refitting|second hand)(?: an?)?(?:"
                r" (?:old|used))?",
                always("used again"),
            ),
        ),
        "size": (
            *THREAD,
            amount("length", say="{}", doubt=1),
            Shaped(
                rf"(?P<n>{NUMBER})(?: ?(?:inch|in|\"))?", lambda m: f"{m['n']} in" if "/" in m["n"] else None, doubt=3
            ),
        ),
        "pipe": (  # the tube of a nut whose thread was said changes nothing
            amount(
                "length",
                before="(?:on|for)(?: an?| the| my)?",
                after="(?:brake |fuel |steel )?(?:pipe|line|tub(?:e|ing))",
                say="on {} pipe",
                doubt=30,
                cue=("pipe", "line", "tub"),
                most=25,
            ),
        ),
        "seat": (
            Named(words_of("fasteners", "seat", "fasteners/part_torques"), tail="seat|seats|seated|type"),
            Shaped(  # the metal of a washer is none of the part's
                r"(?:with )?(?:an? |2 |1 |new |the )*(?:copper |alumini?um |crush |sealing |fibre |fiber )+(?:sealing "
                r")?washers?",
                always("gasket"),
                cue=("washer",),
            ),
        ),
        "material": (
            Named(
                words_of("fasteners", "material", "fasteners/part_torques"),
                lead=INTO,
                say="into {}",
                tail=METAL_TAIL,
            ),
            Named(
                words_of("fasteners", "material", "fasteners/part_torques"),
                tail=METAL_TAIL + "|lines?|tubes?|tubing",
                doubt=1,
            ),
        ),
        "condition": (
            *CONDITION,
            Shaped(  # its figure is for threads without, and another thing may be said to be on them
                r"(?:no|without|w/o)(?: any)? (?:copper |nickel )?(?:anti-?s(?:ei|ie)ze|anti s(?:ei|ie)ze|paste|slip)",
                always("dry"),
                doubt=175,
                cue=("anti", "paste", "slip"),
            ),
        ),
        "grade": GRADE,
        **TOOLS,
        "maker": (OfMaker(),),
        "service": (
            Named(words_of("fasteners", "service", "fasteners/part_torques"), lead="on|for|on an?|for an?|on the"),
            Named(words_of("fasteners", "service", "fasteners/part_torques")),
        ),
    },
    TIGHTEN + r"|tight(?= (?:for|on) the)|(?:on|at|to) (?:the |an? )?(?:brake )?cal?lipers?"
    r"|exhaust pipes?|pipes?|threads?|nuts?|bolts?|seat|(?:rear"
    r" |front"
    r" )(?:leaf )?springs?(?:"
    r" perch| pad)?|perch|pad|worm(?: gear)?|bung|boss|(?:oil"
    r" )?pans?|sumps?|studs?|screws?|brakes?|tubes?|tubing|(?:rad(?:iator)?|heater|coolant)"
    r" hoses?|clips?|(?:water|fuel) pump"
    r"|(?:the |my )?(?:front|rear)?(?: axle)|wheels?|do up",
    needs=("part",),
    table="fasteners",
    job_keys={"maker": "maker.torque", "maker_condition": "maker.condition"},
    columns={"part": ("fasteners/part_torques", "part"), "size": ("fasteners/part_torques", "size")},
    opens=_open_part,
    settle=_settle_part,
)
# A maker's torque and the threads that there are, whatever the bolt.
OTHER_THREADS = Topic(
    _torque,
    "torque",
    {key: readers for key, readers in _SLOTS.items() if key != "thread"},
    _SIGNALS,
    needs=("maker", "condition"),
    settle=_settle_bolt,
)
# What a wrench is set to with a crow-foot on it, whatever the bolt.
CROW_FOOT = Topic(
    _torque,
    "setting with a crow-foot",
    {**CROW_FOOT_SLOTS, "wanted": (*_SLOTS["wanted"], amount("torque", say="wanted {}"))},
    f"{_SIGNALS}|{CROW_FOOT_SIGNALS}",
    needs=("crow_foot_length", "wrench_length", "wanted"),
    asks_for=r"crow\S*",
    is_named=True,
    asks_back=r"crow\S*",
    settle=settle_crow_foot,
    unmoved="metal finish standard service quality",
)
TOPICS = (TORQUE, PART, OTHER_THREADS, CROW_FOOT, REPAIRED, *THREADS)
