"""A typed or dictated line -> its words: lower case, numbers in digits, marks that say nothing taken off."""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.errors import InputError, visible
from gaugeblock.listed import refuse_decimal_comma
from gaugeblock.plain.both_ways import one_way
from gaugeblock.plain.chatter import CHATTER
from gaugeblock.plain.passing import in_passing
from gaugeblock.plain.said.glued import set_apart
from gaugeblock.plain.sayings import PARTED, written

LONGEST = 700
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
        "\u02da": "\u00b0",
        "\u2103": "\u00b0c",
        "\u2109": "\u00b0f",
        "\u2212": "-",
        "\u2011": "-",
        "\u2010": "-",
        "\u2044": "/",
        "\u00b7": "-",
        "\u22c5": "-",
        "\u2022": "-",
        "\u2219": "-",
        "\u00b2": "2",
        "\u00b3": "3",
        "\u00b5": "u",
        "\u03bc": "u",
        "\u2026": " ",
        **dict.fromkeys("\u202f\u2009\u00a0\t\n", " "),
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
# A word of a number that no number took: it is never part of a story.
NUMBER_WORDS = frozenset(
    [*_ONES, *_TENS, *_PARTS, "half", "quarter", "hundred", "thousand", "hundreds", "thousands", "dozen"]
) - {"second", "seconds"}
# What a hurried hand writes for a word.
_IN_FULL = """
pt=point, flair=flare, flaired=flared, trq=torque, torq=torque, ali=aluminium, tourqe=torque, torqu=torque,
toruqe=torque, tq=torque, sz=size, wt=weight, crit=critical, exh=exhaust, batt=battery, pts=points, ign=ignition,
elec=electric, brg=bearing, brgs=bearings, cyl=cylinder, hyd=hydraulic, thru=through, xmember=crossmember, w=with,
n=and, rad=radiator, mtr=motor, thrd=thread, thk=thick, whl=wheel, whls=wheels, hd=head, wtr=water, cvr=cover,
resid=residual, axel=axle, brk=brake, gage=gauge, guage=gauge, dia=diameter, ally=aluminium, alum=aluminum,
alu=aluminium, btw=between, sheild=shield, sheilds=shields, emisivity=emissivity, emmisivity=emissivity,
emissivty=emissivity, emmissivity=emissivity, guague=gauge, exaust=exhaust, exhuast=exhaust, exhast=exhaust,
alternater=alternator, radiater=radiator, callipers=calipers, propellor=propeller, millibars=millibar,
mbar=millibar, endfloat=end float, endplay=end play, approx=about, celcius=celsius, farenheit=fahrenheit,
alt=alternator, realy=really, teh=the, hte=the, adn=and, nad=and, fo=of, si=is, waht=what, hwat=what, wht=what,
hwo=how, taht=that, thsi=this, wiht=with, wih=with, fro=for, doens't=doesn't, becuase=because,
sqft=square foot, sqm=square metre
"""
_SHORT = dict(one.split("=") for one in _IN_FULL.replace("\n", " ").strip().split(", "))
# Shorthand that is a unit, behind a number.
_UNITS = frozenset(["n", "w", "rad", "pts", "pt"])
_OF_A_BEND = frozenset(
    ["inside", "outside", "inner", "outer", "bend", "corner", "die", "centre", "center", "centreline"]
)
# Where "one" and "a" are a number: before a part of an inch, a unit, or "point".
_AFTER_ONE = {
    *_PARTS,
    "tenth",
    "degree",
    "amp",
    "foot",
    "volt",
    "inch",
    "point",
    "and",
    "thirty",
    "by",
    "mm",
    "hundred",
    "thousand",
    *_ONES,
}
_HUNDRED_OF = frozenset(
    ["pounds", "pound", "lbs", "lb", "kilos", "kg", "horse", "horsepower", "psi", "degrees", "newtons", "mm"]
)
_FEW = frozenset(["couple", "few", "several", "some", "many", "of"])
_MOST = 100
_WIDE = 300  # mm: a sheet; the other side of it is said alike, seven fifty
_THOUSANDTHS = frozenset(["thou", "thous", "thousandth", "thousandths"])
_THOU = [[word] for word in sorted(_THOUSANDTHS)]


def words_of(line: str) -> tuple[str, ...]:
    """The words of a line.

    InputError for none, or for more than a person says at once.

    >>> words_of("Three eighths-16, grade EIGHT; no insert?")
    ('3/8-16', 'grade', '8', 'no', 'insert')
    """
    if len(line) > LONGEST:
        raise InputError(visible(line), "question", "it is too long", (), "ask for one figure in a few words")
    text = line.translate(_PLAIN).casefold()
    refuse_decimal_comma(text, "question", thousands=True)
    for mark, plain in _VULGAR.items():
        text = text.replace(mark, f" {plain}")
    if "\u00b0" in text:
        text = _of_degrees(text)
    text = set_apart(written(text))
    words = _in_digits(_in_full([_not_owned(w.strip("'`*_") or "'") for w in text.split()]))
    words = in_passing(one_way([word for word in words if word != PARTED] if PARTED in words else words))
    if not words:
        raise InputError(visible(line) or "(blank)", "question", "no words in it", (), "type what you want to know")
    if len(words) > _MOST:
        raise InputError(visible(line), "question", "it is too long", (), "ask for one figure in a few words")
    return tuple(words)


def _of_degrees(text: str) -> str:
    """A sign of degrees with its scale in letters, as people type it: 120 degC."""
    import re

    return re.sub(r" ?\u00b0 ?(?:deg )?([cf])(?![a-z])", r" deg\1", text)


def _not_owned(word: str) -> str:
    """A word without the ``'s`` of a verb or an owner: the head's got three lines."""
    is_owned = len(word) > 3 and word.endswith("'s") and word[:-2].isalpha() and word not in CHATTER
    return word[:-2] if is_owned else word


def _in_full(words: list[str]) -> list[str]:
    """Shorthand in full; what is a unit behind a number stays one: ``400 n``."""
    after = ["", *words]
    text = [w if w in _UNITS and after[n][:1].isdigit() else _SHORT.get(w, w) for n, w in enumerate(words)]
    return ["radius" if w == "rad" and after[n] in _OF_A_BEND else text[n] for n, w in enumerate(words)]


def _at_dashes(words: list[str]) -> list[str]:
    """The words with those apart that a dash joins in one number: ``three-eighths``."""
    text: list[str] = []
    for word in words:
        head, dash, tail = word.partition("-")
        if (
            dash
            and (head in _ONES or head in _TENS or head == "one")
            and (tail in _ONES or tail in _PARTS or tail[:-1] in _PARTS)
        ):
            text += [head, tail]
        elif dash and head in _PARTS and (_is_number(tail) or tail in ("in", "inch")):
            text += [head, "-", tail]
        else:
            text.append(word)
    return text


def _in_digits(words: list[str]) -> list[str]:
    """Numbers said in words as digits: ``three eighths`` 3/8, ``ten point nine`` 10.9, ``one and a half`` 1 1/2."""
    text = _at_dashes(words)
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
        tenths, end = _tenths(number, text, after)
        if tenths:
            out.append(tenths)
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
        is_thou = second is not None and 0 < number < 10 <= second < 100 and text[end : end + 1] in _THOU
        is_by = out[-1:] == ["by"] and len(out) > 1 and out[-2].isdigit() and int(out[-2]) >= _WIDE
        is_pair = (
            second is not None and (is_thou or (is_by and number > 0) or 10 <= number < 100) and 10 <= second < 100
        )
        if is_pair and (end >= len(text) or text[end] not in (*_PARTS, "point")):
            out.append(f"{number}{second}")  # forty-three forty is 4340, three seventy-four thou
            at = end
            continue
        out.append(str(number))
        at = after
    out = _in_inches(out)
    return _joined(["mm" if w in ("mil", "mils") and n and _is_number(out[n - 1]) else w for n, w in enumerate(out)])


def _is_of_a_sheet(out: list[str]) -> bool:
    """Whether the other side of a sheet follows: 1100 by seven fifty."""
    return out[-1:] == ["by"] and len(out) > 1 and out[-2].isdigit() and int(out[-2]) >= _WIDE


def _tenths(number: int, text: list[str], at: int) -> tuple[str, int]:
    """Tenths of a unit, ``three tenths of a volt`` 0.3, and the place behind them; blank for none."""
    if number >= 10 or text[at : at + 1] not in (["tenth"], ["tenths"]):
        return "", at
    return f"0.{number}", at + (3 if text[at + 1 : at + 3] in (["of", "a"], ["of", "an"]) else 1)


def _in_inches(words: list[str]) -> list[str]:
    """Thousandths of an inch behind a number, ``12 thou`` is 0.012 in."""
    out: list[str] = []
    for word in words:
        if word in _THOUSANDTHS and out and out[-1].isdigit():
            out[-1:] = [f"{int(out[-1]) / 1000:g}", "in"]
        else:
            out.append(word)
    return out


def _whole(words: list[str], at: int) -> tuple[int | None, int]:
    """A whole number said in words at this place, and the place after it."""
    word, nxt = words[at], words[at + 1] if at + 1 < len(words) else ""
    if word.isdigit() and nxt == "and" and word[0] != "0":
        return int(word), at + 1
    if word == "hundred" and nxt == "and" and not (at and _is_number(words[at - 1])):
        more, end = _whole(words, at + 2) if at + 2 < len(words) else (None, at)
        return (100 + more, end) if more is not None and more < 100 else (None, at)
    if word == "hundred" and nxt in _HUNDRED_OF and not (at and (_is_number(words[at - 1]) or words[at - 1] in _FEW)):
        return 100, at + 1  # said without its "a"
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
        is_one = word == "one" and nxt in _AFTER_ONE and (nxt != "and" or _is_of_a_whole(words, at + 2))
        return (1, at + 1) if is_part or is_one else (None, at)
    if word in _TENS:
        if nxt in _ONES and 0 < _ONES[nxt] < 10:
            return _hundreds(words, _TENS[word] + _ONES[nxt], at + 2)
        return _hundreds(words, _TENS[word] + (1 if nxt == "one" else 0), at + (2 if nxt == "one" else 1))
    return _hundreds(words, _ONES[word], at + 1) if word in _ONES else (None, at)


def _is_of_a_whole(words: list[str], at: int) -> bool:
    """Whether a part or a number follows: one and a half, and not the big one and the cable."""
    nxt = words[at : at + 2]
    return bool(nxt) and (
        _is_number(nxt[0]) or nxt[0] in _PARTS or (nxt[0] in ("a", "an", "one") and nxt[-1] in _PARTS)
    )


def _hundreds(words: list[str], number: int, at: int) -> tuple[int, int]:
    if at >= len(words) or words[at] not in ("hundred", "thousand"):
        return number, at
    number *= 100 if words[at] == "hundred" else 1000
    rest = at + 2 if words[at + 1 : at + 2] in (["and"], ["an"], ["n"], ["an'"]) else at + 1
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
    for word, after in pairwise((*words, "")):
        if word == "-" and not (out and _is_number(out[-1]) and _is_number(after)):
            continue  # between two clauses
        if (out and (out[-1].endswith("-") and _is_number(word) and len(out[-1]) > 1)) or (
            word in ("-", '"') and out and _is_number(out[-1])
        ):
            out[-1] += word
        else:
            out.append(word)
    return out
