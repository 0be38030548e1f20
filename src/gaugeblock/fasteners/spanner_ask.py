"""What is asked of a hexagon: which spanner, socket or hex key fits a thread, and what a spanner fits."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, words_of
from gaugeblock.fasteners.spoken import THREAD

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_TABLE = "fasteners/hexagons"
_UNIT = r"(?P<u>mm|mil|millimet(?:re|er)s?|inch(?:es)?|in|\")"
_KEY = r"(?:allen|hex(?:agon)?)[- ]?(?:keys?|wrench(?:es)?|bits?|drivers?|sockets?)"
_TOOL = (
    rf"(?:{_KEY}|(?:open[- ]ended?|ring|box(?:[- ]end)?|combination|ratchet(?:ing)?|deep|long|impact) )*"
    r"(?:spanners?|sockets?|wrench(?:es)?|box[- ]ends?|ring|allen(?: keys?)?|hex[- ]?keys?|hex)"
)
_LEAST_MM, _MOST_MM = 1.5, 46.0
# What of a thread is another answer: a torque, a hole, a grade. British threads have no hexagon here.
_OTHER = (
    r"torques?|tight\w*|nm|n\.m|ft[ -]?lbs?|foot[ -]pounds?|lbs?|lbf|drill\w*|tap|tapping|clearance|pitch|tpi|clamp\w*"
    r"|crow\S*|preload|whit(?:worth)?|bs[fw]|[0-9]{1,2} ?ba|stretch|strip\w*|od|measures?|calipers?|range|setting"
)
_ASKED = (
    rf"spanners?|sockets?|wrench(?:es)?|allen(?:[- ]keys?)?|hex[- ]?keys?|across (?:the )?flats?|a/?f|hex(?:agon)? size"
    rf"|size hex\w*|flats|hex bits?|{_KEY}|(?:bolt|nut|screw)?[- ]?head sizes?|size (?:is )?(?:the |an? )?head"
)
_NAMED = rf"^(?!.*\b(?:{_OTHER})\b)(?=.*\b(?:{_ASKED})\b).*"


def _spanner() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.spanner import spanner

    return spanner


def _width(match: re.Match[str]) -> str | None:
    """A size of spanner: without its unit a fraction is of inches, and a whole number of millimetres."""
    number, unit = match["n"].replace("-", " "), match["u"] or ""
    if unit:
        return f"{number} mm" if unit.startswith("m") else f"{number} in"
    if "/" in number or number.startswith("."):
        return f"{number} in"
    return f"{number} mm" if _LEAST_MM <= float(number) <= _MOST_MM else None


def _plug(match: re.Match[str]) -> str:
    return f"{match['n']} mm"


def _open_spanner(values: dict[str, str], data: Refdata) -> Open | None:
    """All that a spanner fits, where no thread was said."""
    if "flats" not in values or "thread" in values:
        return None
    from gaugeblock.fasteners.spanner import fitted

    keys = ("thread", "head", "standard")
    found = fitted(values["flats"], values.get("head"), data)
    return keys, [dict(zip(keys, (row["size"], row["head"], row["standard"]), strict=True)) for row in found]


HEAD = (
    Named(words_of("fasteners", "head", _TABLE), lead=r"for|on|of|with"),
    Named(words_of("fasteners", "head", _TABLE)),
)
_SLOTS = {
    "thread": (
        *THREAD,
        Shaped(
            r"(?P<n>10|12|14|18) ?(?:mm|mil|millimet(?:re|er))(?: threads?)?(?= (?:spark ?)?plugs?|$| (?:thread|reach))",
            _plug,
            doubt=1,
            cue=("mm", "mil"),
        ),
    ),
    "head": HEAD,
    "standard": (Named(words_of("fasteners", "hexagon standard", _TABLE)),),
}
_SIGNALS = (
    rf"(?:what|which)(?: size| sized)?(?: of)? (?:{_TOOL})|(?:what|which) size(?: (?:do|does|is|are))?"
    rf"|(?:size )?(?:{_TOOL})(?: sizes?)?(?: (?:do|does|would|will|should|is|that|to))?"
    r"|(?:that |to |will |it |does )*(?:fits?|fitting|suits?|goes? on|undo(?:es)?|turns?|takes?|needs?|uses?|has|have"
    r"|go(?:es)? with|undoing|loosen|remove|grab|get)"
    r"|across (?:the )?flats?|a/?f|(?:the )?hex(?:agon)?(?: size| head)?|sizes?|bolts?|screws?|studs?|nuts?|heads?"
    r"|threads?|flats|do i need|i need|need|for|metric|imperial|inch|coarse|fine|unf|unc|car|engine|brakes?|calipers?"
)
SPANNER = Topic(
    _spanner,
    "spanner",
    _SLOTS,
    _SIGNALS,
    needs=("thread",),
    opens=_open_spanner,
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
                rf"(?:an? |the |my )?(?P<n>{NUMBER}) ?{_UNIT}?(?: (?:af|a/f))?[- ](?:{_TOOL}|head(?:ed|s)?|flats)"
                r"(?: (?:bolts?|nuts?|screws?)(?= (?:what|which|is|size|thread)|$))?",
                _width,
            ),
            Shaped(rf"(?:{_TOOL})(?: (?:is|of|size|marked|says|that is))* (?P<n>{NUMBER}) ?{_UNIT}?", _width),
            Shaped(
                rf"(?:is |measures |which is )?(?P<n>{NUMBER}) ?{_UNIT}?(?: (?:wide|is))? (?:across (?:the )?flats?|a/?f)",
                _width,
            ),
            Shaped(rf"across (?:the )?flats?(?: (?:is|of|measures))? (?P<n>{NUMBER}) ?{_UNIT}?", _width),
            Shaped(rf"(?:hex(?:agon)?|head)(?: (?:is|of|size|measures))* (?P<n>{NUMBER}) ?{_UNIT}?", _width, doubt=2),
        ),
        "head": HEAD,
    },
    _SIGNALS,
    needs=("flats",),
    opens=_open_spanner,
    asks_for=_NAMED,
    is_named=True,
)
SPANNERS = (SPANNER, FITS)
