"""What is asked about a part that has its own figure, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.unpublished import maker_of, named_by
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners.engaged_said import DEEP
from gaugeblock.fasteners.makers_words import OfMaker, with_threads
from gaugeblock.fasteners.of_maker import of_maker
from gaugeblock.fasteners.open_keys import LIMITS
from gaugeblock.fasteners.spoken import CONDITION, GRADE, THREAD, TOOLS, TORQUE_SAID, torque_of
from gaugeblock.fasteners.thread_ask import INTO, METAL_TAIL
from gaugeblock.fasteners.tightening import TIGHTEN

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata, Row


_BY_TURNS = "by turns"
_OF_NO_PART = ("grade", "band", "engaged", "series")  # they change nothing of a part's own torque


def _settle_part(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """What is done by turns, or with a part used again, is a row of its own; a part goes by its maker's torque,
    whatever the grade of its bolt.
    """
    if "series" in values and ("universal joint" not in values["part"] or "service" in values):
        why = "it is of a universal joint, and no torque on record is of a joint by its series"
        raise InputError(values["series"], "series", why, (), "ask the maker of the joint or of the yoke")
    values = {k: v for k, v in with_threads(values).items() if k not in _OF_NO_PART}
    if "pipe" in values:
        values = _by_its_pipe(values, data)
    size = values.get("size", "")
    if size[:1] == "M" and size[1:].isdigit():  # a spark plug of M14 is listed by 14 mm
        sizes, plain = _sizes(values["part"], data), f"{size[1:]} mm"
        values["size"] = plain if plain in sizes and not any(own.startswith(size) for own in sizes) else size
    if usual := _by_its_usual(values["part"], size, values.get("service", "vehicle"), data):
        values["size"] = usual
    kind = values.pop("kind", "")
    if kind:
        name = f"{values['part']}, {kind}"
        if kind == _BY_TURNS and _is_turned(values["part"], data):
            return values
        if name.casefold() not in data.table("fasteners/part_torques").column("part"):
            raise LookupMiss(name, "part", "not in the tables", (), "ask its maker, or leave it out")
        values["part"] = name
    return values


# The one thread that a part has by the size that its torques are listed by.
_USUAL = {
    "spark plug": {"M10x1": "10 mm", "M12x1.25": "12 mm", "M14x1.25": "14 mm", "M18x1.5": "18 mm"},
    "wheel nut": {"7/16-20": "7/16 in", "1/2-20": "1/2 in", "9/16-18": "9/16 in", "5/8-18": "5/8 in"},
}


def _by_its_usual(part: str, size: str, service: str, data: Refdata) -> str:
    """The size that a part's torques are listed by, of a thread that is said in full; blank for any other."""
    plain = size.removesuffix(" UNF")
    usual = _USUAL.get(part, {})
    thread = next((one for one in usual if one == plain or (size != plain and one.startswith(f"{plain}-"))), "")
    rows = data.table("fasteners/part_torques").rows
    own = {row["size"] for row in rows if row["part"] == part and row["service"] in (service, "any")}
    return usual[thread] if thread and not any(one.startswith(thread) for one in own) else ""


def _is_turned(part: str, data: Refdata) -> bool:
    """Whether a part is tightened by turns alone, as an oil filter is."""
    rows = [row for row in data.table("fasteners/part_torques").rows if row["part"] == part]
    return bool(rows) and all(row.cells["quantity"].startswith("turn_") for row in rows)


def _by_its_pipe(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """A nut whose thread and tube were both said, by the one of them that its torques are listed by."""
    rest = {k: v for k, v in values.items() if k != "pipe"}
    pipe, size = values["pipe"], values.get("size", "")
    if not (size.startswith("M") or "-" in size):
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
        is_inch = values["size"].endswith(" in")  # which was said, and is never millimetres
        if not typed[0].isdigit() or "mm" in typed or values["size"] in sizes:
            return None
        found = [s for s in sizes if s in (f"{typed} in",)] or [
            s for s in sizes if s.replace("-", " ").startswith(f"{typed} ") and not (is_inch and s.endswith(" mm"))
        ]
        return (("size",), [{"size": s} for s in found]) if found else None
    if any(k in values for k in ("maker", "wanted")):
        return None
    names = [k for k in ("size", "seat", "material") if k not in values and len({key[at[k]] for key in own}) > 1]
    given = {k: canonical(data, "fasteners/part_torques", k, values[k]) for k in ("seat", "material") if k in values}
    own = [key for key in own if all(key[at[k]] in (v, "any") for k, v in given.items())]
    rows = list(dict.fromkeys(tuple(key[at[k]] for k in names) for key in own))
    return (tuple(names), [dict(zip(names, row, strict=True)) for row in rows]) if names and len(rows) > 1 else None


def _part() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.part import part

    return of_maker(part)


_MOST_SIZE = 80  # mm, of a thread
_PIPE = r"(?:pipes?|lines?|tub(?:es?|ing))"
_OF_PIPE = r"(?:brake |hard |male |female |flare |flared |union |tube )"
# The nut of a brake pipe, however it is called; a hose has a fitting of its own.
_BRAKE_NUT = (
    rf"(?:(?:male|female) )*brake {_OF_PIPE}*(?:{_PIPE} )?{_OF_PIPE}*(?:nuts?|unions?)"
    rf"|brake {_OF_PIPE}*{_PIPE} {_OF_PIPE}*fittings?"
)

PART = Topic(
    _part,
    "torque",
    {
        "part": (
            Named(words_of("fasteners", "part", "fasteners/part_torques")),
            Named(lambda data: named_by("fasteners", "part", data)),
            Shaped(_BRAKE_NUT, always("brake tube nut"), cue=("brake",)),
            Shaped("jic(?: (?:end|swivel|union))?", always("flare nut"), cue=("jic",)),
        ),
        "kind": (
            Shaped(
                r"(?:how )?tight(?: (?:do|should|must) i (?:do|go|turn|wind|get)(?: (?:it|one))?(?: up)?)? by hand",
                always("by turns"),
                cue=("by hand",),
            ),
            Shaped(
                r"(?:by|in|how many|how much|number of)(?: the)? turns?(?: past snug| past contact| past finger"
                r" tight)?(?: (?:for|with|on) an? new)?",
                always("by turns"),
            ),
            Shaped(r"turns?(?: past (?:snug|contact|finger tight))", always("by turns")),
            Shaped(r"how (?:much|many) turns?", always("by turns")),
            Shaped(
                r"how (?:far|much)(?: (?:do i|should i|to) (?:turn|go)(?: (?:it|them))?)? (?:past|beyond|after"
                r"|from) (?:finger|hand)[- ]?tight"
                r"(?: (?:do|should|must) i (?:turn|go|take|wind)(?: (?:it|them))?)?",
                always("by turns"),
                cue=("tight",),
            ),
            Shaped(
                r"(?:used again|reused|re-used|reusing|re-using|refitted|refitting|second hand)(?: an?)?(?:"
                r" (?:old|used))?",
                always("used again"),
            ),
        ),
        "size": (
            *THREAD,
            amount("length", say="{}", doubt=1, most=_MOST_SIZE),
            Shaped(
                rf"(?P<n>{NUMBER})(?: ?(?:inch|in|\"))?", lambda m: f"{m['n']} in" if "/" in m["n"] else None, doubt=3
            ),
        ),
        "band": (  # of a clamp, as most are: a narrower one takes less
            Shaped(
                r"(?:(?:1/2|0?\.5|9/16)(?: ?(?:inch|in|\"))?|1[234](?:\.[0-9])? ?mm) (?:wide )?bands?(?: width)?",
                lambda m: m[0].partition(" band")[0],
                "{} band",
                cue=("band",),
            ),
        ),
        "pipe": (  # the tube of a nut whose thread was said changes nothing
            Shaped(  # of a brake tube nut
                r"on (?:an? |the )?(?P<n>3/16|1/4|5/16|3/8)(?= |$)"
                r"(?! ?(?:-|un|in|inch|studs?|bolts?|threads?|fine|coarse))",
                lambda m: f"{m['n']} in",
                "on {} pipe",
                doubt=45,
                cue=("3/16", "1/4", "5/16", "3/8"),
            ),
            amount(
                "length",
                after=rf"(?:brake |hard )*{_PIPE}",
                say="on {} pipe",
                doubt=40,
                cue=("pipe", "line", "tub"),
                most=25,
            ),
            amount(
                "length",
                before="(?:on|for)(?: an?| the| my)?",
                after="(?:brake |fuel |steel )?(?:pipe|line|tub(?:e|ing))",
                say="on {} pipe",
                doubt=30,
                cue=("pipe", "line", "tub"),
                most=25,
            ),
            amount(
                "length",
                followed="steel (?:brake |fuel )?(?:pipe|line|tub)",
                say="on {} pipe",
                doubt=30,
                cue=("steel",),
                most=25,
            ),
        ),
        "seat": (
            Named(  # 45 nm is no seat
                words_of("fasteners", "seat", "fasteners/part_torques"),
                tail="seat|seats|seated|type",
                unless=r"(?:nm|n|ft|foot|feet|ftlbs?|lbs?|pounds?|inch|inches|mm|newtons?|kgm?|psi|bar|thou|%)$",
            ),
            Shaped(r"(?:inverted )?double (?:inverted )?flares?", always("45 deg"), cue=("flare",)),
            Shaped(r"(?:with )?(?:an? |the )?crush (?:gasket|ring)s?", always("gasket"), cue=("crush",)),
            Shaped(  # the metal of a washer is none of the part's
                r"(?:with |on )?(?:an? |2 |1 |its |new |the )*(?:copper |alumini?um |crush |sealing |fibre |fiber"
                r" )+(?:sealing "
                r")?washers?"
                r"|(?:with )?(?:an? |its |the )?(?:brand )?new washers?",
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
        "grade": (*GRADE, Shaped("unknown grade", always("unknown grade"), cue=("unknown",))),
        "engaged": (DEEP,),
        **TOOLS,
        "maker": (OfMaker(),),
        "series": (  # by which makers call a universal joint; no torque goes by it
            Shaped(
                r"(?:on |for |of )?(?:an? |the |my )?(?P<n>1(?:[2-7][0-9]|8[0-9])0)(?: series)?"
                r" (?:u-?joints?|(?:uni|universal)[- ]?joints?|joints?|yokes?|ujs?)"
                r"|(?:on |for |of )?(?:an? |the |my )?(?P<m>1(?:[2-7][0-9]|8[0-9])0) series",
                lambda m: m["n"] or m["m"],
                "joint of series {}",
                cue=("joint", "yoke", "series", " uj"),
            ),
        ),
        "told": (  # what somebody has in mind is held against the figure, and is none
            Shaped(
                rf"(?:(?:is|was|would|will|should|about|at|to) )*(?P<n>{NUMBER}) ?{TORQUE_SAID}"
                r"(?: (?:be |is )?(?:too much|too tight|too high|too low|plenty|right|correct|about right|enough"
                r"|ok|okay"
                r"|safe|alright|all right|normal))?",
                lambda m: torque_of(m["n"], m["unit"]),
                "{} in mind",
                doubt=20,
                cue=("nm", "n.m", "n m", "lb", "pound", "newton", "kg"),
            ),
        ),
        "service": (
            Named(words_of("fasteners", "service", "fasteners/part_torques"), lead="on|for|on an?|for an?|on the"),
            Named(words_of("fasteners", "service", "fasteners/part_torques")),
        ),
    },
    "brake lines?|" + TIGHTEN + r"|tight(?= (?:for|on) the)|(?:on|at|to) (?:the |an? )?(?:brake )?cal?lipers?"
    r"|exhaust pipes?|pipes?|threads?|nuts?|bolts?|seat|(?:rear"
    r" |front"
    r" )(?:leaf )?springs?(?:"
    r" perch| pad)?|perch|pad|worm(?: gear)?|(?:(?:trailer|front|rear|wheel|caravan) )*hubs?|bung|boss|(?:oil"
    r" )?pans?|sumps?|studs?|screws?|brakes?|tubes?|tubing|(?:rad(?:iator)?|heater|coolant)"
    r" hoses?|clips?|(?:water|fuel) pump"
    r"|(?:the |my )?(?:front|rear)?(?: axle)|wheels?|do up|(?:fe)?males?(?: ones?)?"
    r"|(?:in|into|to|on|at)(?: (?:the|an?|my))?(?: cast)? (?:(?:brake )?master(?: cylinders?)?|(?:wheel"
    r"|slave) cylinders?|slave)"
    r"|(?:in|into|on)(?: (?:an?|the|my))? stainless(?: steel)? (?:bungs?|boss(?:es)?)"
    r"|(?:to|on)(?: (?:the|my))? (?:chassis|frame|crossmember)"
    r"|new(?= (?:spark )?plugs?(?: |$))",
    needs=("part",),
    table="fasteners",
    job_keys={"maker": "maker.torque", "maker_condition": "maker.condition", "told": "wanted"},
    columns={"part": ("fasteners/part_torques", "part"), "size": ("fasteners/part_torques", "size")},
    opens=_open_part,
    settle=_settle_part,
)
