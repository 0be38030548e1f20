"""Turns of speech -> what a person would have typed, before a line is parted into words."""

from __future__ import annotations

import re

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

_PARTS = {"half": 2, "quarter": 4, "quarters": 4, "eighth": 8, "eighths": 8}
_DIGITS = {"oh": "0", "zero": "0", "one": "1", "three": "3", "five": "5", "six": "6", "eight": "8", "nine": "9"}


def _inch_and(match: re.Match[str]) -> str:
    """``an inch and three quarters`` is 1 3/4 in."""
    return f"1 {3 if match[1] else 1}/{_PARTS[match[2]]} in"


def _thousandths(match: re.Match[str]) -> str:
    """``oh nine five`` is .095, as a wall is said."""
    return f".0{''.join(_DIGITS[w] for w in match.groups())}"


def _dash(match: re.Match[str]) -> str:
    """``dash six`` is -6, as a tube is sized by sixteenths."""
    return f"-{_CLASSES.get(match[1], match[1])}"


def _by_part(match: re.Match[str]) -> str:
    """``by eighth`` is by 1/8."""
    return f"by 1/{_PARTS.get(match[1], 16)}"


def _class(match: re.Match[str]) -> str:
    """``ten nine`` is the class 10.9 of a bolt."""
    return f"{_CLASSES[match[1]]}.{_CLASSES[match[2]]}"


_CLASSES = {"four": "4", "six": "6", "eight": "8", "ten": "10", "twelve": "12", "nine": "9"}
# A piece that a line must have, for no pattern is made in vain; the pattern; what is written for it. In this order.
_SAYINGS: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    ("w/o", r"\bw/o\b", "without"),
    ("w/", r"\bw/ ?(?=[a-z0-9])", "with "),
    ("w ", r"\bw (?=oil|lube|greas|anti|moly|wax|paste|insert|lock|water|the |an? )", "with "),
    ("inch and a", r"(?<![0-9/] )\binch and an? (half|quarter)\b", r"1 and a \1 inch"),
    ("gr", r"\b(grade|gr) ?([0-9]{1,2}(?:\.[0-9])?)'?s\b", r"\1 \2"),
    ("class", r"\b(class) ?([0-9]{1,2}(?:\.[0-9])?)'?s\b", r"\1 \2"),
    (" / ", r"(?<=[a-z])/(?=[a-z])(?<!\bw/)", " / "),
    ("millimet", r"millimet(?:re|er)s?\b", "mm"),
    ("n.m", r"\bn\.m\b", "nm"),
    ("n m", r"\bn m\b", "nm"),
    ("mild ", r"\bmild (?=tub(?:e|es|ing)\b|sheet|plate)", "mild steel "),
    ("shaft", r"\bd[ -]shaft", "driveshaft"),
    ("by one", r"\b(m ?(?:[0-9]+|six|eight|ten|twelve|fourteen)) by one\b(?! point)", r"\1 by 1"),
    ("pitch", r"\b(m ?[0-9]+(?: ?x ?| by | )[0-9](?:\.[0-9]+)?) ?(?:mm )?pitch\b", r"\1"),
    ("18", r"\b(?:stainless (?:steel )?)?18[-/]8(?: stainless)?(?: steel)?(?= |$)", "stainless"),
    ("ifference", r"^.*\bdifference between (?:an? |the )?(.+?) and (?:an? |the )?(.+)$", r"\1 vs \2"),
    ("alum", r"\balu(?:mnium|minuim|mnum|minim|munim)\b", "aluminum"),
    ("one thirty", r"\bfour one thirty\b", "4130"),
    ("one forty", r"\bfour one forty\b", "4140"),
    ("three forty", r"\bfour three forty\b", "4340"),
    ("u joint", r"\bu joint", "u-joint"),
    ("cross member", r"\bcross member", "crossmember"),
    ("dash ", r"\bdash (four|six|eight|ten|twelve|[0-9]+)\b", _dash),
    (" by ", r"\bby (?:an? )?(eighth|quarter|half|sixteenth)\b", _by_part),
    ("galvanised", r"\bgalvanised\b", "galvanized"),
    ("i mean", r"^.*\b(?:no|sorry|wait)[, ]+i mean(?:t)?\b", ""),
    ("old ", r"\b(?:old|rusty old) (?=cast|car\b|truck|manifold|engine|block|gearbox|axle|frame|chassis)", ""),
    (" to it", r"\bor (?:close|near|next) to it\b", ""),
    ("steel in", r"\bsteel (?=(?:in|into|going into|in to) (?:an? |the |my )?al(?:um|loy|ly))", ""),
    ("mm2", r"(?<=[0-9])mm2\b", " mm2"),
    ("copper slip", r"\bcopper slip\b", "copper grease"),
    ("eights", r"\b(one|three|five|seven) eights\b", r"\1 eighths"),
    (" nine", r"\b(ten|twelve) (nine)\b(?! (?:and|teen|hundred|thousand|point))", _class),
    (" eight", r"\b(eight) (eight)\b(?! (?:and|hundred|thousand|point))", _class),
    ("out ", r"\bwithout (?:it |them |the tube )?(?:kinking|collapsing|crushing|wrinkling|flattening|buckling)\b", ""),
    ("dot ", r"\b(?:put|pour|add) (dot ?[345](?:\.1)?) (?:in |in)?(?:with|to|into|on top of)\b", r"mix \1 with"),
    ("dot ", r"\bdot ?([345](?:\.1)?) in\b", r"dot \1 into"),
    ("fifty", r"\bfifty[ /-]fifty\b", "50/50"),
    ("hour", r"\b(?:k|kays|clicks|kilomet(?:re|er)s?) an hour\b", "km/h"),
    ("kays", r"\bkays\b", "km/h"),
    ("inch and", r"\b(?:an |one |1 )?inch and (?:an? |one )?(three )?(quarters?|half|eighths?)\b", _inch_and),
    ("oh ", r"\boh (six|eight|nine|one) (five|three|zero|oh)\b(?= |$)", _thousandths),
    ("zero ", r"\bzero (six|eight|nine|one) (five|three|zero|oh)\b(?= |$)", _thousandths),
    ("half thousand", r"\b([a-z]+|[0-9]+) and a half thousand\b", r"\1 thousand five hundred"),
    # "40 mm by 2": the second has the unit of the first
    ("mm", r"(?<![0-9./-])([0-9.]+) ?mm (?:by|x) ([0-9.]+)(?= |$)(?! ?m)", r"\1 mm x \2 mm"),
)
_MARKS = str.maketrans(dict.fromkeys(",;:!?()[]", " "))


def written(text: str) -> str:
    """A line in lower case as it would have been typed: its marks off, its sayings in digits and units."""
    if "," in text:
        text = re.sub(r"(?<=[0-9]),(?=[0-9]{3}\b)", "", text)  # 1,500
    text = _without_marks(text)
    for cue, pattern, shown in _SAYINGS:
        if cue in text:
            text = re.sub(pattern, shown, text)
    return text


def _without_marks(text: str) -> str:
    """Without the marks between words; a point inside a number stays."""
    text = text.translate(_MARKS)
    if "." not in text:
        return text
    return " ".join([word[:-1] if word.endswith(".") else word for word in text.split(" ")])
