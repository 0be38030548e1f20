"""What is asked about a thread or a part, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.unpublished import maker_of, named_by
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.open_keys import LIMITS
from gaugeblock.fasteners.own_words import KNOWN, Tapped, apart
from gaugeblock.fasteners.spoken import CONDITION, GRADE, INSERT, THREAD, TOOLS, TORQUE_SAID, unit_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata, Row

_INTO = r"(?:into|in to|in|going into|screwed into|threaded into|tapped into|tapped in)(?: (?:an?|the|my))?(?: bare)?"
_METAL_TAIL = (
    r"block|head|heads|intake|manifold|case|casing|housing|casting|part|plate|hole|cover|tapped hole|oil pan|pan|sump"
    r"|hub|knuckle|rail|radiator|tank|bell ?housing|gearbox|transmission|fitting|pipe|flange"
)
_EVERYDAY = {
    "metric": ("ISO 898-1 8.8", "ISO 898-1 10.9", "ISO 898-1 12.9"),
    "inch": ("SAE J429 5", "SAE J429 8"),
    "stainless metric": ("ISO 3506-1 A2-70", "ISO 3506-1 A4-80"),
    "stainless inch": ("ASTM F593 304 CW1", "ASTM F593 316 CW1"),
}
_CONDITIONS = ("dry", "oiled", "anti-seize")


def _metals(data: Refdata) -> dict[str, str]:
    """The metals by name; ``alloy`` alone is as often the steel of the bolt."""
    return {w: c for w, c in words_of("fasteners", "into", "fasteners/engagement")(data).items() if w != "alloy"}


def _open_bolt(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size, the everyday grades, dry, oiled and with anti-seize: whatever was not said."""
    open_keys, rows = [], [values]
    threads = _threads(values["thread"], data)
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
    values = apart(values)
    threads = _threads(values["thread"], data) if values["thread"].endswith(" fine") else ()
    return {**values, "thread": threads[0]} if len(threads) == 1 else values


def _threads(typed: str, data: Refdata) -> list[str]:
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


def _usual_threads(data: Refdata) -> list[str]:
    """The coarse and fine threads in inches and the coarse ones in millimetres."""
    cells = list(dict.fromkeys(data.table("fasteners/threads").column("thread").values()))
    sizes = dict.fromkeys(c.partition("x")[0] for c in cells if c.startswith("M"))
    coarse = {keys.thread(size, data).cell for size in sizes}
    return [c for c in cells if c in coarse or c.endswith((" UNC", " UNF"))]


def _settle_part(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """What is done by turns, or with a part used again, is a row of its own."""
    kind = values.pop("kind", "")
    if kind:
        name = f"{values['part']}, {kind}"
        if name.casefold() not in data.table("fasteners/part_torques").column("part"):
            raise LookupMiss(name, "part", "not in the tables", (), "ask its maker, or leave it out")
        values["part"] = name
    return values


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

    return torque


def _part() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.part import part

    return part


_TIGHTEN = (
    r"torque wrench|(?:how )?tite(?:n(?:ed)?)?|crank(?:ed)?(?: down)?|(?:wh?at'?s? )?(?:the )?(?:tightening"
    r" |clamp(?:ing)? )?torque(?:s|d)?(?: specs?| settings?|"
    r" figures?|"
    r" values?)?|torquing|tork|torgue|tighten(?:ed|ing)?(?: down)?|tightness|how tight"
    r"|(?:ft|foot|inch|in)[- ]?(?:lbs?|pounds?)|newton met(?:re|er)s?|nm|set(?:ting)?|snug"
)


_TAPPED_METAL = Named(
    words_of("fasteners", "into", "fasteners/engagement"), lead=_INTO, say="into {}", tail=_METAL_TAIL
)
TORQUE = Topic(
    _torque,
    "torque",
    {
        "thread": THREAD,
        "grade": GRADE,
        "condition": CONDITION,
        "into": (
            Tapped(_TAPPED_METAL),
            _TAPPED_METAL,
            Named(_metals, say="into {}", tail=_METAL_TAIL, doubt=4),
        ),
        "insert": INSERT,
        "given": (
            Shaped(
                r"(?:what )?clamp(?:ing)?(?: load| force)?(?: (?:do i get|does it give|at|from|for|of|is|with|i get))*"
                rf" (?P<n>{NUMBER}) ?{TORQUE_SAID}",
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
        ),
        "engagement": (
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
        "joint": (Shaped(r"permanent(?: joint)?", always("permanent"), "permanent joint", cue=("permanent",)),),
        **TOOLS,
    },
    _TIGHTEN
    + r"|(?:cap |machine |set )?(?:bolts?|screws?|studs?)|capscrews?|hex(?: head)?|fasteners?|threads?|nuts?|hex"
    r" head|flange head|socket(?: head)?(?: cap)?|allen",
    needs=("thread",),
    table="fasteners",
    job_keys={"maker": "maker.torque", "grip": "grip.length"},
    columns={"thread": _usual_threads},
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
        "seat": (Named(words_of("fasteners", "seat", "fasteners/part_torques"), tail="seat|seats|seated|type"),),
        "material": (
            Named(
                words_of("fasteners", "material", "fasteners/part_torques"),
                lead=_INTO,
                say="into {}",
                tail=_METAL_TAIL,
            ),
            Named(
                words_of("fasteners", "material", "fasteners/part_torques"),
                tail=_METAL_TAIL + "|lines?|tubes?|tubing",
                doubt=1,
            ),
        ),
        "condition": CONDITION,
        **TOOLS,
        "service": (
            Named(words_of("fasteners", "service", "fasteners/part_torques"), lead="on|for|on an?|for an?|on the"),
            Named(words_of("fasteners", "service", "fasteners/part_torques")),
        ),
    },
    _TIGHTEN + r"|nuts?|bolts?|seat|studs?|screws?|brakes?|tubes?|tubing",
    needs=("part",),
    table="fasteners",
    job_keys={"maker": "maker.torque"},
    columns={"part": ("fasteners/part_torques", "part"), "size": ("fasteners/part_torques", "size")},
    opens=_open_part,
    settle=_settle_part,
)


def _hole() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.hole import hole

    return hole


def _open_hole(values: dict[str, str], data: Refdata) -> Open | None:
    """The holes that are on record for a thread, or those of its clearance, where none was named."""
    from gaugeblock.fasteners.hole import fits_of

    said = values.get("fit", "")
    if said not in ("", _CLEARANCE) or "thread" not in values:
        return None
    fits = [f for f in fits_of(keys.thread(values["thread"], data).cell, data) if f.startswith(said)]
    return (("fit",), [{"fit": f} for f in fits]) if fits else None


_CLEARANCE = "clearance"
HOLE = Topic(
    _hole,
    "hole to drill",
    {
        "thread": THREAD,
        "fit": (
            Shaped(
                r"(?:tap(?:ping|ped)?|threaded)(?: (?:drill|hole|size))*(?: bit)?|drill(?: bit)? for a tap",
                always("tap drill"),
            ),
            Named(words_of("fasteners", "fit", "fasteners/holes"), tail="fit|clearance|holes?"),
            Shaped(r"clearances?(?: (?:holes?|drill|fit))*|through holes?", always(_CLEARANCE)),
        ),
    },
    r"(?:what |which )?(?:size )?(?:drill(?: bit)?s?|bits?|holes?)(?:"
    r" size)?|tap(?:ped|ping)?|thread(?:ed)?|diameter|size"
    r"|bolts?|screws?|pass|through|do i drill|to drill|need",
    needs=("thread",),
    asks_for=r"drill\w*|bits?|taps?|tapp\w+|clearance|holes?",
    is_named=True,
    columns={"thread": ("fasteners/holes", "thread"), "fit": ("fasteners/holes", "fit")},
    opens=_open_hole,
)


def _engagement() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.depth import engagement

    return engagement


def _open_engagement(values: dict[str, str], data: Refdata) -> Open | None:
    """Each thread of a bare size, each metal that a rule is for: whatever was not said."""
    from gaugeblock.fasteners.depth import metals

    threads, open_keys = _threads(values["thread"], data)[:1], ["thread"]
    rows = [{"thread": cell} for cell in threads]
    if "into" not in values:
        open_keys.append("into")
        rows = [{**row, "into": metal} for row in rows for metal in metals(data)]
    return tuple(open_keys), rows


ENGAGEMENT = Topic(
    _engagement,
    "engagement",
    {
        "thread": THREAD,
        "into": (_TAPPED_METAL, Named(_metals, say="into {}", tail=_METAL_TAIL, doubt=1)),
    },
    r"(?:how )?(?:deep|far|much|long)(?:"
    r" thread)?|threads?|engage\w*|bolts?|screws?|studs?|minimum|min|least|depth|length"
    r"|holes?|tapped|blind|screw(?:ed)? in|thread(?:ed)? in",
    needs=("thread",),
    asks_for=r"how deep|deep|engage\w*|depth|how far|how much thread|how many threads",
    is_named=True,
    columns={"thread": _usual_threads, "into": ("fasteners/engagement", "into")},
    opens=_open_engagement,
)
TOPICS = (TORQUE, PART, HOLE, ENGAGEMENT)
