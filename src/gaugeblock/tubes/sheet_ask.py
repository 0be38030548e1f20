"""What is asked about the mass of a piece of sheet, as people say it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.errors import InputError
from gaugeblock.tubes.sizes_ask import MILD

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_GAUGE = r"ga|gauge|gage|guage"
_UNITS = {"'": "ft", "foot": "ft", "feet": "ft", '"': "in", "inch": "in", "inches": "in"}
_UNITS |= dict.fromkeys(["metre", "meter", "metres", "meters"], "m")
# `in` is no inch before the metal: 900 by 600 in 1.6 mm steel
_OF_METAL = (
    rf"(?:an? |the |my |some )?(?:{NUMBER} ?(?:mm|ga|gu|(?:in|inch|\") (?:thick|plate|steel|alu))|mild|steel|alu|ali"
    r"|stain|plate|sheet|cold|galv|[0-9]{4})"
)
_UNIT = r"(?: ?(?P<{0}>ft|feet|foot|'|inch(?:es)?|in(?! _OF_METAL)|\"|mm|met(?:re|er)s?|m(?![a-z])))?".replace(
    "_OF_METAL", _OF_METAL.replace("{", "{{").replace("}", "}}")
)
_SIDES = rf"(?P<a>{NUMBER}){_UNIT.format('ua')} ?(?:x|by) ?(?P<b>{NUMBER}){_UNIT.format('ub')}"
_MILLIMETRES = 300  # no sheet has two sides of so many feet or inches
_LONGEST = 250  # no sheet is so many inches long
_WIDEST = 6  # feet; two bare sides of more are a plate in inches: 12 x 12
_LARGE = 12  # feet; a bare side over this is in inches


def _sides(match: re.Match[str]) -> str | None:
    """Two sides, in feet where no unit is said: a 4x8 sheet."""
    unit = match["ub"] or match["ua"] or None
    if unit is None and match["a"].isdigit() and " " in match["b"] and int(match["a"]) <= _LARGE:
        return None  # 4x8 1/4 is a stock sheet and its thickness
    own = _UNITS.get(match["ua"] or unit or "ft", match["ua"] or unit or "ft")
    other = _UNITS.get(unit or "ft", unit or "ft")
    if unit is None and min(float(match[k]) if "/" not in match[k] else 0 for k in "ab") >= _MILLIMETRES:
        return f"{match['a']} mm x {match['b']} mm"
    longest = max(float(units.parse_number(match[k])) for k in "ab")
    if unit is None and longest >= _LONGEST:
        return f"{match['a']} mm x {match['b']} mm"
    if unit is None and min(float(match[k]) if "/" not in match[k] else 0 for k in "ab") > _WIDEST:
        # no sheet has two sides of so many feet, nor of so few millimetres
        return f"{match['a']} inch x {match['b']} inch"
    if unit is None and all(_is_of_metres(match[k]) for k in "ab") and "." in match["a"] + match["b"]:
        return f"{match['a']} m x {match['b']} m"  # 2.4 by 1.2
    if unit is None and any(float(match[k]) > _LARGE for k in "ab" if "/" not in match[k]):
        return None
    return f"{match['a']} {own} x {match['b']} {other}"


def _is_of_metres(number: str) -> bool:
    """Whether a bare side may be in metres, as sheets are sold: 2.4, 1.25, 3."""
    return "/" not in number and _LEAST_SIDE <= float(number) <= _LONGEST_SIDE


_LEAST_SIDE, _LONGEST_SIDE = 0.9, 4.0


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """InputError for two sides without a unit that may be inches, beside a thickness in millimetres."""
    if "inch x" in values.get("size", "") and values.get("thickness", "").endswith("mm"):
        sides = values["size"].replace(" inch", "")
        do = f"say {sides} mm, or {sides} inches"
        raise InputError(values["size"], "size", f"{sides} of what: the thickness is in mm", (), do)
    return values


def _open(values: dict[str, str], _data: Refdata) -> Open | None:
    """A shop's metals, where none was named."""
    if "material" in values or "system" in values:
        return None
    return ("material",), [{"material": metal} for metal in ("mild steel", "304 stainless", "5052 aluminum")]


def topic(answer: Callable[[], Callable[..., Sheet]], stock: Reader) -> Topic:
    """The topic of the answer; ``stock`` reads a metal."""
    return Topic(
        answer,
        "mass of sheet",
        {
            "size": (
                Shaped(
                    r"(?P<a>[0-9]+)(?P<ua>) ?(?:x|by) ?(?P<b>[0-9]+)(?P<ub>)(?= [0-9]+/[0-9]+(?: |$))",
                    _sides,
                    "{}",
                    cue=("x", "by"),
                ),
                Shaped(rf"{_SIDES}(?: (?:sheets?|plates?|panels?|pieces?))?", _sides, "{}"),
                Shaped(r"(?:an?|one|1|per|each) square met(?:re|er)(?: of)?", always("1 m x 1 m"), cue=("square",)),
                Shaped(
                    r"(?:an?|one|1|per|each) (?:square (?:foot|ft)|(?:foot|ft) square)(?: of)?",
                    always("1 ft x 1 ft"),
                    cue=("square",),
                ),
                Shaped(r"(?:an?|one|1) met(?:re|er) square(?: of)?", always("1 m x 1 m"), cue=("square",)),
            ),
            "system": (
                Shaped(
                    r"galv(?:ani[sz]ed)?(?: (?:steel|sheet))*", always("galvanized sheet"), "galvanized", cue=("galv",)
                ),
            ),
            "thickness": (
                Shaped(rf"(?P<n>[0-9]{{1,2}}) ?(?:{_GAUGE})", lambda m: f"{m['n']} ga", "{}"),
                amount("length", before="x|by", after="thick|plate|sheet", say="{} thick"),
                amount("length", before="x|by", say="{} thick", most=30),
                Shaped(  # no sheet is so many inches thick
                    r"(?P<n>[1-6](?:\.[0-9]+)?|0\.[5-9])(?= (?:mild|stainless|galv\w*|ally|alumini?um|steel"
                    r"|304|316)\b)",
                    lambda m: f"{m['n']} mm",
                    "{} thick",
                    cue=("mild", "stainless", "galv", "al", "steel", "304", "316"),
                ),
                *(amount("length", after=after, say="{} thick") for after in ("thick|plate|sheet", "")),
            ),
            "material": (stock, MILD),
        },
        r"(?:how (?:much|heavy)|what)?(?: does| is)?(?: an?)?|weigh(?:s|t|ing)?|mass|heavy|(?:which (?:is"
        r"|one is) )?(?:lighter|heavier|lightest|heaviest)|would|sheets?|plates?"
        r"|panels?|metal"
        rf"|of|thick|mild|steel|{_GAUGE}|full|lbs?|pounds|kgs?|kilos|(?:comes? to)?(?: what)? ?(?:on the"
        rf" )?(?:scales?)|lift"
        r"|blank|(?:floor )?pan|cutting|bulkhead|each|(?:do they )?(?:each )?comes? to|before|out of|person",
        needs=("size", "thickness"),
        asks_for=r"weigh.* (?:mm|gauge|ga) (?:mild |stainless )?(?:steel|alumini?um) .*(?:x|by)|sheets?|plates?"
        r"|panels?|blank|pan|galv\w*|(?:4|5|8|10) ?(?:x|by) ?(?:4|5|8|10|12)",
        is_named=True,
        opens=_open,
        settle=_settle,
        unmoved="state standard service quality",
    )
