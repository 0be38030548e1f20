"""What is asked about a thread or a part, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount
from gaugeblock.errors import InputError
from gaugeblock.fasteners.asked_part import PART
from gaugeblock.fasteners.crow_foot import CROW_FOOT_SIGNALS, CROW_FOOT_SLOTS, settle_crow_foot
from gaugeblock.fasteners.engaged_said import ENGAGED
from gaugeblock.fasteners.makers_words import OfMaker, with_threads
from gaugeblock.fasteners.mended import REPAIRED
from gaugeblock.fasteners.of_maker import of_maker
from gaugeblock.fasteners.own_words import KNOWN, StainlessBolt, Tapped, apart
from gaugeblock.fasteners.share import SHARE
from gaugeblock.fasteners.spoken import CONDITION, GRADE, INSERT, THREAD, TOOLS, TORQUE_SAID, torque_of
from gaugeblock.fasteners.thread_ask import (
    METAL_TAIL,
    TAPPED_GRADES,
    TAPPED_METAL,
    THREADS,
    metals_said,
    usual_threads,
)
from gaugeblock.fasteners.threads_said import threads_of
from gaugeblock.fasteners.tightening import CLAMPS, OUTCOME, ROUND_A_BOLT, STRIPS, TIGHTEN

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_EVERYDAY = {
    "metric": ("ISO 898-1 8.8", "ISO 898-1 10.9", "ISO 898-1 12.9"),
    "inch": ("SAE J429 5", "SAE J429 8"),
    "stainless metric": ("ISO 3506-1 A2-70", "ISO 3506-1 A4-80"),
    "stainless inch": ("ASTM F593 304 CW1", "ASTM F593 316 CW1"),
}
_TOLD = "told"
_CONDITIONS = ("dry", "oiled", "anti-seize")


def _open_bolt(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size, the everyday grades, dry, oiled and with anti-seize: whatever was not said."""
    if "strips" in values and "engagement" not in values:
        why = "no table has the torque at which threads strip; what is engaged can be judged"
        metal = "" if "into" in values else ", and in which metal"
        raise InputError("strip", "", why, (), f"say how much thread is engaged, 12 mm{metal}")
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
        is_stainless = values.get("condition", "").startswith("stainless") or "metal" in values
        kind = "metric" if values["thread"].startswith("M") else "inch"
        kind = f"stainless {kind}" if is_stainless else kind
        rows = [{**row, "grade": grade} for row in rows for grade in _EVERYDAY[kind]]
    if "condition" not in values and "nut_factor" not in values:
        open_keys.append("condition")
        conditions = _CONDITIONS[:1] if "strips" in values and "given" not in values else _CONDITIONS  # to one clamp
        rows = [{**row, "condition": condition} for row in rows for condition in conditions]
    return (tuple(open_keys), [{k: row[k] for k in open_keys} for row in rows]) if open_keys else None


def _settle_bolt(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """``M8 fine`` is M8x1 where that is the one fine thread of the size; a metal and its strength are two options."""
    values = with_threads(apart({key: value for key, value in values.items() if key != _TOLD}))
    if values.pop("metal", "") and not values.get("grade", "ISO 3506").startswith(("ISO 3506", "ASTM F593")):
        raise InputError(values["grade"], "grade", "it is no grade of stainless", (), "read the bolt's head again")
    if "thread" not in values:
        return values
    threads = threads_of(values["thread"], data) if values["thread"].endswith(" fine") else ()
    return {**values, "thread": threads[0]} if len(threads) == 1 else values


def _torque() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.torque import torque

    return of_maker(torque)


_SLOTS: dict[str, tuple[Reader, ...]] = {
    "thread": THREAD,
    "grade": GRADE,
    "condition": CONDITION,
    "metal": (StainlessBolt(),),  # beside a condition that does not say so
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
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            cue=("clamp",),
        ),
        Shaped(
            rf"(?:is )?(?P<n>{NUMBER}) ?{TORQUE_SAID} (?:too much|too tight|too"
            r" high|too low|plenty|low|right|correct|about right|normal|enough|ok|okay|safe|alright|all"
            r" right)",
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            cue=("too", "enough", "ok", "safe", "right", "plenty", "low", "correct", "normal"),
        ),
        Shaped(
            r"(?:did|d[o]ne|used|put|went|pulled|gave|torqued|tightened)(?: (?:it|them|em|to|at|up|on))*"
            rf" (?P<n>{NUMBER}) ?{TORQUE_SAID}",
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            doubt=1,
            cue=("did", "done", "used", "put", "went", "pulled", "gave", "torqued", "tightened"),
        ),
        Shaped(
            rf"(?:to|at) (?P<n>{NUMBER}) ?{TORQUE_SAID}",
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            doubt=2,
            cue=("nm", "n.m", "n m", "lb", "pound", "newton", "kg"),
        ),
        Shaped(
            r"(?:(?:will|would|does|do|can|could) )?(?:(?:it|they|that|the threads?) )*(?:hold|take|stand|bear|survive)"
            rf" (?P<n>{NUMBER}) ?{TORQUE_SAID}",
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            doubt=1,
            cue=("hold", "take", "stand", "bear", "surv"),
        ),
        Shaped(  # of a torque that is told, and what comes of it asked behind it
            rf"(?:does |do |will |would |is )?(?P<n>{NUMBER}) ?{TORQUE_SAID}(?: each)?"
            rf"(?=.* (?:{CLAMPS})(?= |$)| on (?:an?|the|my|these)? ?(?:m ?[0-9]|[0-9]+/))",
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            doubt=1,
            cue=("squeeze", "kn", "clamp", "stretch", " see", " on "),
        ),
        Shaped(  # of which nothing else is said
            rf"(?P<n>{NUMBER}) ?{TORQUE_SAID}",
            lambda m: torque_of(m["n"], m["unit"]),
            "clamp at {}",
            doubt=30,
            cue=("nm", "n.m", "n m", "lb", "pound", "newton", "kg"),
        ),
    ),
    _TOLD: (
        Shaped(  # a number without a unit that somebody gave: no torque until it has one
            r"(?:(?:and|but) )?(?:says?|said|reckons?|told me|thinks?|uses?|does)"
            r"(?: (?:that|it|it's|its|them|they|is|are|go|goes|to|use|about|around|only|just|up))*"
            rf" (?P<n>[1-9][0-9]{{1,2}})(?! ?(?:{TORQUE_SAID}|%|percent|mm|tpi|in|inch|deg\w*|grade|x|by|of|or|to|and"
            r" [0-9])\b)(?![/.x-])",
            lambda m: m["n"],
            "told {} of no unit",
            doubt=1,
            cue=("say", "said", "reckon", "told", "think", "use", "does"),
        ),
    ),
    "engagement": ENGAGED,
    **KNOWN,
    "strips": (
        Shaped(
            STRIPS,
            always("strips"),
            "whether it strips",
            cue=("strip", "pull", "let go", "lets go", "give", " or ", "first"),
        ),
    ),
    "joint": (Shaped(r"permanent(?: joint)?", always("permanent"), "permanent joint", cue=("permanent",)),),
    **TOOLS,
    "maker": (OfMaker(),),
}
_SIGNALS = (
    TIGHTEN
    + "|"
    + OUTCOME
    + "|"
    + ROUND_A_BOLT
    + r"|(?:standard|normal|usual) pitch|unknown grade"
    + r"|nuts? (?:that are |which are )?welded (?:in|on|to|into|onto)"
    + r"|(?:an? |the )?nuts? on top"
    + r"|(?:bonnet|hood|hinge|fender|bumper|bracket|crossmember|frame|floor|door)s?|(?:cap"
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
    {**CROW_FOOT_SLOTS, "wanted": (*_SLOTS["wanted"], amount("torque"))},
    f"{_SIGNALS}|{CROW_FOOT_SIGNALS}",
    needs=("crow_foot_length", "wrench_length", "wanted"),
    asks_for=r"crow\S*",
    is_named=True,
    asks_back=r"crow\S*",
    settle=settle_crow_foot,
    unmoved="metal finish standard service quality",
)
TOPICS = (TORQUE, PART, OTHER_THREADS, CROW_FOOT, REPAIRED, SHARE, *THREADS)
