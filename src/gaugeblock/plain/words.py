"""A typed or dictated line -> its words: lower case, numbers in digits, marks that say nothing taken off."""

from __future__ import annotations

import re

from gaugeblock.errors import InputError, visible

LONGEST = 400
_PLAIN = str.maketrans(
    {
        "\u00d7": "x",
        "\u2033": '"',
        "\u201d": '"',
        "\u201c": '"',
        "\u2019": "'",
        "\u2018": "'",
        "\u2032": "'",
        "\u2013": "-",
        "\u2014": " ",
        "\u00ba": "\u00b0",
        "\u00a0": " ",
        "\t": " ",
        "\n": " ",
    }
)
_VULGAR = {
    "\u00bd": "1/2",
    "\u00bc": "1/4",
    "\u00be": "3/4",
    "\u215b": "1/8",
    "\u215c": "3/8",
    "\u215d": "5/8",
    "\u215e": "7/8",
}
_ONES = {
    "zero": 0,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
    "eleven": 11,
    "twelve": 12,
    "thirteen": 13,
    "fourteen": 14,
    "fifteen": 15,
    "sixteen": 16,
    "seventeen": 17,
    "eighteen": 18,
    "nineteen": 19,
}
_TENS = {
    "twenty": 20,
    "thirty": 30,
    "forty": 40,
    "fifty": 50,
    "sixty": 60,
    "seventy": 70,
    "eighty": 80,
    "ninety": 90,
}
_PARTS = {
    "half": 2,
    "halves": 2,
    "quarter": 4,
    "quarters": 4,
    "eighth": 8,
    "eighths": 8,
    "sixteenth": 16,
    "sixteenths": 16,
    "thirtysecond": 32,
    "thirtyseconds": 32,
}
# What a hurried hand writes for a word.
_SHORT = {
    "trq": "torque",
    "tq": "torque",
    "sz": "size",
    "wt": "weight",
    "crit": "critical",
    "exh": "exhaust",
    "batt": "battery",
    "pts": "points",
    "ign": "ignition",
    "elec": "electric",
    "brg": "bearing",
    "brgs": "bearings",
    "cyl": "cylinder",
    "hyd": "hydraulic",
    "thru": "through",
    "xmember": "crossmember",
    "w": "with",
    "n": "and",
    "rad": "radiator",
    "mtr": "motor",
    "thrd": "thread",
    "thk": "thick",
    "whl": "wheel",
    "whls": "wheels",
    "hd": "head",
    "wtr": "water",
    "cvr": "cover",
    "resid": "residual",
    "axel": "axle",
    "brk": "brake",
    "gage": "gauge",
    "guage": "gauge",
    "dia": "diameter",
    "alum": "aluminum",
    "alu": "aluminium",
    "btw": "between",
    "approx": "about",
    "alt": "alternator",
}
# Where "one" and "a" are a number: before a part of an inch, a unit, or "point".
_AFTER_ONE = {*_PARTS, "inch", "point", "and", "thirty", "by", "mm", "hundred", "thousand", *_ONES}
_MOST = 60


def words_of(line: str) -> tuple[str, ...]:
    """The words of a line.

    InputError for none, or for more than a person says at once.

    >>> words_of("Three eighths-16, grade EIGHT; no insert?")
    ('3/8-16', 'grade', '8', 'no', 'insert')
    """
    if len(line) > LONGEST:
        raise InputError(visible(line), "question", "it is too long", (), "ask for one figure in a few words")
    text = line.translate(_PLAIN).casefold()
    for mark, plain in _VULGAR.items():
        text = text.replace(mark, f" {plain}")
    text = re.sub(r"(?<=[0-9]),(?=[0-9]{3}\b)", "", text)  # 1,500
    text = re.sub(r"\bw/o\b", "without", text)
    text = re.sub(r"\bw/ ?(?=[a-z0-9])", "with ", text)
    text = re.sub(r"\bw (?=oil|lube|greas|anti|moly|wax|paste|insert|lock|water|the |an? )", "with ", text)
    text = re.sub(r"(?<![0-9/] )\binch and an? (half|quarter)\b", r"1 and a \1 inch", text)
    text = re.sub(r"\b(grade|gr|class) ?([0-9]{1,2}(?:\.[0-9])?)'?s\b", r"\1 \2", text)
    text = re.sub(r"[,;:!?()\[\]]+|\.(?=\s|$)", " ", text)
    text = re.sub(r"(?<=[a-z])/(?=[a-z])(?<!\bw/)", " / ", text) if " / " in text else text
    text = re.sub(r"millimet(?:re|er)s?\b", "mm", text)
    text = re.sub(r"\bn[ .]m\b", "nm", text)
    text = re.sub(r"\bmild (?=tub(?:e|es|ing)\b|sheet|plate)", "mild steel ", text)
    text = re.sub(r"\bd[ -]shaft", "driveshaft", text)
    text = re.sub(r"\b(m ?(?:[0-9]+|six|eight|ten|twelve|fourteen)) by one\b(?! point)", r"\1 by 1", text)
    text = re.sub(r"\b(m ?[0-9]+ ?(?:x |by )?[0-9.]+) ?(?:mm )?pitch\b", r"\1", text)
    text = re.sub(r"\bfifty[ /-]fifty\b", "50/50", text)
    text = re.sub(r"\b(?:k|kays|clicks|kilomet(?:re|er)s?) an hour\b|\bkays\b", "km/h", text)
    text = re.sub(r"\b(?:an |one |1 )?inch and (?:an? |one )?(three )?(quarters?|half|eighths?)\b", _inch_and, text)
    text = re.sub(r"\b(?:oh|zero) (six|eight|nine|one) (five|three|zero|oh)\b(?= |$)", _thousandths, text)
    text = re.sub(r"\b([a-z]+|[0-9]+) and a half thousand\b", r"\1 thousand five hundred", text)
    # "40 mm by 2": the second has the unit of the first
    text = re.sub(
        r"(?<![0-9./-])([0-9.]+) ?(?:mm|millimet(?:re|er)s?) (?:by|x) ([0-9.]+)(?= |$)(?! ?m)", r"\1 mm x \2 mm", text
    )
    words = _in_digits([_SHORT.get(w, w) for w in (w.strip("'`*_") or "'" for w in text.split())])
    if not words:
        raise InputError(visible(line) or "(blank)", "question", "no words in it", (), "type what you want to know")
    if len(words) > _MOST:
        raise InputError(visible(line), "question", "it is too long", (), "ask for one figure in a few words")
    return tuple(words)


def _inch_and(match: re.Match[str]) -> str:
    """``an inch and three quarters`` is 1 3/4 in."""
    part = _PARTS[match[2]]
    return f"1 {3 if match[1] else 1}/{part} in"


def _thousandths(match: re.Match[str]) -> str:
    """``oh nine five`` is .095, as a wall is said."""
    digits = "".join({"oh": "0", "one": "1"}.get(w) or str(_ONES[w]) for w in match.groups())
    return f".0{digits}"


def _in_digits(words: list[str]) -> list[str]:
    """Numbers said in words as digits: ``three eighths`` 3/8, ``ten point nine`` 10.9, ``one and a half`` 1 1/2."""
    text = []
    for word in words:
        head, dash, tail = word.partition("-")
        if (
            dash
            and (head in _ONES or head in _TENS or head == "one")
            and (tail in _ONES or tail in _PARTS or tail[:-1] in _PARTS)
        ):
            text += [head, tail]
        elif dash and (head in _PARTS) and tail:
            text += [head, "-", tail]
        else:
            text.append(word)
    out: list[str] = []
    at = 0
    while at < len(text):
        number, after = _whole(text, at)
        if text[at] == "point" and not (out and out[-1].isdigit()):
            digits, end = _digits(text, at + 1)
            if digits:
                out.append(f".{digits}")
                at = end
                continue
        if number is None:
            out.append(text[at])
            at += 1
            continue
        nxt = text[after] if after < len(text) else ""
        if nxt == "point" and after + 1 < len(text):
            digits, end = _digits(text, after + 1)
            if digits:
                out.append(f"{number}.{digits}")
                at = end
                continue
        if nxt in _PARTS:
            out.append(f"{number}/{_PARTS[nxt]}")
            at = after + 1
            continue
        if nxt == "and" and after + 1 < len(text):
            part, end = _whole(text, after + 1)
            if part is not None and end < len(text) and text[end] in _PARTS:
                out += [str(number), f"{part}/{_PARTS[text[end]]}"]
                at = end + 1
                continue
        second, end = _whole(text, after) if after < len(text) else (None, after)
        is_pair = second is not None and 10 <= number < 100 and 10 <= second < 100
        if is_pair and (end >= len(text) or text[end] not in (*_PARTS, "point")):
            out.append(f"{number}{second}")  # forty-three forty is 4340
            at = end
            continue
        out.append(str(number))
        at = after
    return _joined(["mm" if w in ("mil", "mils") and n and _is_number(out[n - 1]) else w for n, w in enumerate(out)])


def _whole(words: list[str], at: int) -> tuple[int | None, int]:
    """A whole number said in words at this place, and the place after it."""
    word, nxt = words[at], words[at + 1] if at + 1 < len(words) else ""
    if word.isdigit() and nxt == "and":
        return int(word), at + 1
    if word in ("one", "a", "half", "quarter"):
        if word in ("half", "quarter"):
            return (1, at) if nxt in ("inch", "in", "-", "by", "of") or _is_number(nxt) else (None, at)
        is_part = nxt in _PARTS and not (
            word == "a" and nxt in ("half", "quarter") and at and _is_number(words[at - 1])
        )
        if word == "a" and nxt in ("hundred", "thousand"):
            return _hundreds(words, 1, at + 1)
        if word == "one" and nxt in ("hundred", "thousand"):
            return _hundreds(words, 1, at + 1)
        return (1, at + 1) if is_part or (word == "one" and nxt in _AFTER_ONE) else (None, at)
    if word in _TENS:
        if nxt in _ONES and 0 < _ONES[nxt] < 10:
            return _hundreds(words, _TENS[word] + _ONES[nxt], at + 2)
        return _hundreds(words, _TENS[word] + (1 if nxt == "one" else 0), at + (2 if nxt == "one" else 1))
    return _hundreds(words, _ONES[word], at + 1) if word in _ONES else (None, at)


def _hundreds(words: list[str], number: int, at: int) -> tuple[int, int]:
    if at >= len(words) or words[at] not in ("hundred", "thousand"):
        return number, at
    number *= 100 if words[at] == "hundred" else 1000
    rest = at + 2 if words[at + 1 : at + 2] == ["and"] else at + 1
    more, end = _whole(words, rest) if rest < len(words) and words[rest] not in _PARTS else (None, at)
    return (number + more, end) if more is not None and more < number else (number, at + 1)


def _digits(words: list[str], at: int) -> tuple[str, int]:
    """The digits after a point, each said by itself: ``one two oh`` 120."""
    digits = ""
    while at < len(words):
        word = words[at]
        one = {"oh": "0", "o": "0", "one": "1"}.get(word) or (str(_ONES[word]) if _ONES.get(word, 10) < 10 else "")
        if not one and word.isdigit():
            one = word
        if not one:
            break
        digits += one
        at += 1
    return digits, at


def _is_number(word: str) -> bool:
    return word[:1].isdigit() or word[:1] == "." or word in _ONES or word in _TENS


def _joined(words: list[str]) -> list[str]:
    """A dash that stood alone, back between its neighbours; a number and its inch mark that were parted."""
    out: list[str] = []
    for word in words:
        if (out and (out[-1].endswith("-") and _is_number(word) and len(out[-1]) > 1)) or (
            word in ("-", '"') and out and _is_number(out[-1])
        ):
            out[-1] += word
        else:
            out.append(word)
    return out
