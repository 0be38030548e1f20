"""What is asked of a hexagon: which spanner, socket or hex key fits a thread, and what a spanner fits."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, words_of
from gaugeblock.fasteners.british import british
from gaugeblock.fasteners.spoken import THREAD

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_TABLE = "fasteners/hexagons"
_UNIT = r"(?P<u>mm|mil|millimet(?:re|er)s?|inch(?:es)?|in|\")"
_KEY = r"(?:allen|(?:hexagon|hex))[- ]?(?:keys?|wrench(?:es)?|bits?|drivers?|sockets?)"
_TOOL = (
    rf"(?:{_KEY}|(?:open[- ]ended?|ring|box(?:[- ]end)?|combination|ratchet(?:ing)?|deep|long|impact) )*"
    r"(?:span{1,2}[ea]rs?|sockets?|wrench(?:es)?|box[- ]ends?|ring|allen(?: keys?)?|hex[- ]?keys?|hex)"
)
_LEAST_MM, _MOST_MM = 1.5, 46.0
_TWO = 2
_CAP, _HEX_KEY, _SPANNER = "cap screw", "hex key", "spanner"
# What of a thread is another answer: a torque, a hole, a grade.
_OTHER = (
    r"torques?|tight\w*|nm|n\.m|ft[ -]?lbs?|foot[ -]pounds?|lbs?|lbf|drill\w*|tap|tapping|clearance|pitch|tpi|clamp\w*"
    r"|crow\S*|preload|stretch|strip\w*|od|measures?|range|setting"
)
_ASKED = (
    rf"span{{1,2}}[ea]rs?|sockets?|wrench(?:es)?|allen(?:[- ]keys?)?|hex[- ]?keys?"
    rf"|across (?:the )?flats?|a/?f|(?:hexagon|hex) size"
    rf"|size hex\w*|flats|hex bits?|{_KEY}|(?:bolt|nut|screw)?[- ]?head sizes?|size (?:is )?(?:the |an? )?head"
    rf"|{NUMBER} ?(?:mm|in|inch)?[- ]?(?:(?:bolt|nut|screw)[- ])?head(?:ed|s)?"
    r"|(?:is|are|of) (?:the |an? )?(?:hexagon|hex)"
)
_NAMED = rf"^(?!.*\b(?:{_OTHER})\b)(?=.*\b(?:{_ASKED})\b).*"


def _spanner() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.spanner import spanner

    return spanner


def _width(match: re.Match[str]) -> str | None:
    """A size of spanner: without its unit a fraction is of inches, and a whole number of millimetres."""
    number, unit = match["n"].replace("-", " "), match["u"] or ""
    if not unit and number.startswith("0."):
        number = number[1:]  # of millimetres no spanner is so small
    if not unit and "/" not in number and "." not in number[:1] and not _LEAST_MM <= float(number) <= _MOST_MM:
        return None
    is_inch = "/" in number or number.startswith(".") if not unit else not unit.startswith("m")
    tool = _HEX_KEY if re.search(r"allen|hex\w*[ -]?(?:key|bit|driver)", match[0]) else _SPANNER
    return f"{number} {'in' if is_inch else 'mm'} {tool}"


def _standard(match: re.Match[str]) -> str:
    """DIN 931 and DIN 933 have one hexagon, ISO 4014 and ISO 4017 too: by its body alone the right one is found."""
    return {"ansi": "ASME"}.get(match["s"], match["s"].upper())


def _plug(match: re.Match[str]) -> str:
    return f"{match['n']} mm"


def _open_spanner(values: dict[str, str], data: Refdata) -> Open | None:
    """All that a spanner fits, where no thread was said; all threads of a part that few have."""
    tool = next((tool for tool in (_HEX_KEY, _SPANNER) if values.get("flats", "").endswith(tool)), "")
    values = _settle(values, data)
    if "thread" in values or not {"flats", "head"} & values.keys():
        return None
    from gaugeblock.fasteners.spanner import fitted, of_a_head

    made = values.get("standard", "").casefold()
    if "flats" not in values:
        rows = [row for row in of_a_head(values["head"], data) if row["standard"].casefold().startswith(made)]
        own = [{"thread": row["size"], "standard": row["standard"]} for row in rows]
        if len({row["standard"] for row in rows}) < _TWO:
            own = [{"thread": one["thread"]} for one in own]
        return (tuple(own[0]), own) if own else None
    keys = ("thread", "head", "standard")
    found = fitted(values["flats"], values.get("head"), data, tool, made)
    return keys, [dict(zip(keys, (row["size"], row["head"], row["standard"]), strict=True)) for row in found]


_BARE = ("bolt", "nut", "bolt head", "hex bolt", "hex nut", "hex head", "hex")


def _own_heads(data: Refdata) -> dict[str, str]:
    """The heads by name; a bolt or a nut that is said of a spanner may be any of them."""
    return {w: c for w, c in words_of("fasteners", "head", _TABLE)(data).items() if w not in _BARE}


_OLD = "old Whitworth"


def _settle(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """A hex key turns a socket head, a cap screw too; without one a cap screw has a hexagon, as the trade calls it."""
    head, is_keyed = values.get("head", ""), "tool" in values
    if values.get("standard") == _OLD and not values.get("thread", "").endswith("BSW"):
        del values["standard"]  # no other had a larger one
    kept = {k: v for k, v in values.items() if k not in ("tool", "drive")}
    if "flats" in kept:
        kept["flats"] = kept["flats"].removesuffix(f" {_HEX_KEY}").removesuffix(f" {_SPANNER}")
    if head in (_CAP, "hexagon bolt", "") and is_keyed:
        return {**kept, "head": "socket head cap screw"}
    return {**kept, "head": "hexagon bolt"} if head == _CAP else kept


_CAPS = Shaped(r"cap[- ]?screws?", always(_CAP), cue=("cap",))
_TOOLS = (
    Shaped(
        rf"(?:(?:what|which)(?: size(?: of)?)? )?(?:an? |the )?(?:{_KEY}|allens?(?: keys?)?)(?: sizes?)?",
        always(_HEX_KEY),
        "a hex key",
        cue=("allen", "hex"),
    ),
)
HEAD = (
    Named(words_of("fasteners", "head", _TABLE), lead=r"for|on|of|with"),
    Named(words_of("fasteners", "head", _TABLE)),
    _CAPS,
)
# The square of a socket is said, and changes nothing.
_DRIVE = (
    Shaped(
        r"(?:(?:on|with) (?:an? )?)?(?P<n>1/4|3/8|1/2|3/4|1)(?: ?(?:in|inch|\"))?[- ]?drive",
        lambda m: m["n"],
        "{} in drive",
        cue=("drive",),
    ),
)
_BRITISH = (
    Shaped(
        rf"(?:(?:old|british) )*(?P<n>{NUMBER})(?: ?(?:in|inch(?:es)?|\"))? ?(?P<s>bsw|bsf|whitworth|whit|w)"
        r"(?: (?:thread|fine))*",
        lambda m: british(f"{m['n']} {m['s']}") or None,
        cue=("bsw", "bsf", "whit", "w"),
    ),
    Shaped(
        r"(?:no\.? ?)?(?P<n>10|[0-9]) ?-?ba(?: thread)?",
        lambda m: british(f"{m['n']} BA"),
        cue=("ba",),
    ),
)
_SLOTS = {
    "thread": (
        *THREAD,
        *_BRITISH,
        Shaped(
            r"(?P<n>10|12|14|18) ?(?:mm|mil|millimet(?:re|er))(?: threads?)?"
            r"(?= (?:spark ?)?plugs?|$| (?:thread|reach))",
            _plug,
            doubt=1,
            cue=("mm", "mil"),
        ),
    ),
    "head": HEAD,
    "tool": _TOOLS,
    "drive": _DRIVE,
    "standard": (
        Shaped(
            r"(?:(?:to|by|an?|of) )?(?:the )?(?:old(?:er)? )?(?P<s>din|jis|iso|asme|ansi)(?: ?(?P<n>[0-9]{3,4}))?"
            r"(?: (?:standard|one|size|small(?: (?:hexagon|hex))?))?",
            _standard,
            "by {}",
            cue=("din", "jis", "iso", "asme", "ansi"),
        ),
        Shaped(
            r"(?:on |of |for )?(?:an? |my |the )?japanese(?: (?:cars?|vehicles?|bikes?|bolts?|trucks?))?",
            always("JIS"),
            "on a Japanese vehicle",
            cue=("japan",),
        ),
        Shaped(
            r"(?:on |of |for |from )?(?:an? |my |the )?(?:pre[- ]?war|before the war|19[0-3]0'?s)(?: (?:cars?|saloon"
            r"|tourer|roadster|sports car))?",
            always(_OLD),
            "of before the war",
            cue=("war", "19"),
        ),
    ),
}
_SIGNALS = (
    rf"(?:what|which)(?: size| sized)?(?: of)? (?:{_TOOL})|(?:what|which) size(?: (?:do|does|is|are))?"
    rf"|(?:size )?(?:{_TOOL})(?: sizes?)?(?: (?:do|does|would|will|should|is|that|to))?"
    r"|(?:that |to |will |it |does )*(?:fits?|fitting|suits?|goes? on|undo(?:es)?|turns?|takes?|needs?|uses?|has|have"
    r"|go(?:es)? with|undoing|loosen|remove|grab|get)"
    r"|across (?:the )?flats?|a/?f|(?:the )?(?:hexagon|hex)(?: size| head)?|sizes?|bolts?|screws?|studs?|nuts?|heads?"
    r"|threads?|flats"
    r"|do i need|i need|need|for|metric|imperial|inch|coarse|fine|unf|unc|car|engine"
    r"|brakes?|calipers?|(?:is|of) (?:the |an? )?(?:hexagon|hex)|how (?:big|wide)(?: is)?"
)
SPANNER = Topic(
    _spanner,
    "spanner",
    _SLOTS,
    _SIGNALS,
    opens=_open_spanner,
    settle=_settle,
    asks_for=_NAMED,
    is_named=True,
    columns={"thread": (_TABLE, "size"), "head": (_TABLE, "head"), "standard": (_TABLE, "standard")},
)
# What a spanner fits.
FITS = Topic(
    _spanner,
    "what a spanner fits",
    {
        "flats": (
            Shaped(
                rf"(?:an? |the |my )?(?P<n>{NUMBER}) ?{_UNIT}?(?: (?:af|a/f))?[- ]"
                rf"(?:{_TOOL}(?! (?:head|cap|screw|sizes?(?: |$)))|head(?:ed|s)?|flats)"
                r"(?: (?:bolts?|nuts?|screws?)(?= (?:what|which|is|size|thread)|$))?",
                _width,
            ),
            Shaped(
                rf"(?:an? |the |my )?(?P<n>{NUMBER}) ?{_UNIT}?[- ](?:bolt|nut|screw)[- ]heads?"
                r"(?=.* (?:what|which)(?: size)? (?:threads?|bolts?|screws?))",
                _width,
            ),
            Shaped(
                rf"(?P<n>16|18|20\.[68]|21|5/8|13/16|3/4) ?{_UNIT}? (?:spark )?plug (?:{_TOOL})", _width, cue=("plug",)
            ),
            Shaped(
                rf"(?:{_TOOL})(?: (?:is|of|size|marked|says|that is))* (?P<n>{NUMBER}) ?{_UNIT}?"
                r"(?=.* (?:what|which|bolts?|nuts?|threads?|fits?))",
                _width,
            ),
            Shaped(
                rf"(?:is |measures |which is )?(?P<n>{NUMBER}) ?{_UNIT}?(?: (?:wide|is))?"
                r" (?:across (?:the )?flats?|a/?f)",
                _width,
            ),
            Shaped(rf"across (?:the )?flats?(?: (?:is|of|measures))? (?P<n>{NUMBER}) ?{_UNIT}?", _width),
            Shaped(
                rf"(?:(?:hexagon|hex)|head)(?: (?:is|of|size|measures))* (?P<n>{NUMBER}) ?{_UNIT}?", _width, doubt=2
            ),
        ),
        "head": (Named(_own_heads, lead=r"for|on|of|with"), Named(_own_heads), _CAPS),
        "thread": (*THREAD, *_BRITISH),
        "drive": _DRIVE,
        "standard": _SLOTS["standard"],
    },
    _SIGNALS,
    needs=("flats",),
    opens=_open_spanner,
    settle=_settle,
    asks_for=_NAMED,
    is_named=True,
)
SPANNERS = (SPANNER, FITS)
