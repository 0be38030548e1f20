"""How people say a thread, a grade, what is on the threads, an insert and the tools."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Named, Shaped, always, amount, words_of
from gaugeblock.fasteners.crow_foot import ADAPTER

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

_SPAN = rf"(?P<low>{NUMBER})(?: ?(?:to|-|and) ?)(?P<high>{NUMBER})"


TORQUE_SAID = (
    r"(?P<unit>(?:ft|foot|feet|in|inch)[-. *]?(?:lbs?|lbf|pounds?)|(?:lbs?|lbf|pounds?)[-. *]?(?:ft|foot|feet|in|inch)"
    r"|n[-. *]?m|newton[ -]met(?:re|er)s?|kgf?[-. *]?m)"
)


_BY = rf"(?: ?(?:by|in steps of|in) (?P<step>{NUMBER})s?)?"


_SERIES = {
    "coarse": "UNC",
    "fine": "UNF",
    "unc": "UNC",
    "unf": "UNF",
    "unef": "UNEF",
    "un": "",
    "nf": "UNF",
    "nc": "UNC",
}


_SIZE = r"(?:#|no\.? ?|number |num )(?P<no>[0-9]+)|(?P<size>[0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+|0?\.[0-9]+)"


def _metric(match: re.Match[str]) -> str:
    pitch = match["pitch"] or match["pitch2"]
    if pitch:
        return f"M{match['d']}x{pitch}"
    return f"M{match['d']} fine" if " fine" in match[0] else f"M{match['d']}"


def _inch(match: re.Match[str]) -> str | None:
    size = f"#{match['no']}" if match["no"] else match["size"].replace("-", " ")
    series = _SERIES.get(match["series"] or "", "")
    if match["tpi"]:
        return f"{size}-{match['tpi']}" + (f" {series}" if series else "")
    if "/" not in size and not size.startswith("#") and not match["unit"] and not series:
        return None  # a bare whole number is no thread
    return f"{size} {series}".strip()


THREAD = (
    Shaped(
        r"m ?(?P<d>[0-9]+(?:\.[0-9]+)?)(?: ?(?:x|by|\*|-) ?(?P<pitch>[0-9]*\.?[0-9]+)|"
        r" (?P<pitch2>0?\.[0-9]+|[123]\.[0-9]+))?"
        r"(?: ?mm)?(?: (?:coarse|fine)(?: (?:pitch|threads?))?)?",
        _metric,
        cue=("m",),
    ),
    Shaped(
        r"(?P<d>[0-9]+)(?: ?mm)? ?(?:x|by) ?(?P<pitch>[0-9]?\.[0-9]+|[123])(?P<pitch2>)(?: ?mm)?(?: pitch)?",
        _metric,
        doubt=1,
        cue=("x", "by"),
    ),
    Shaped(
        r"(?P<d>[0-9]+) ?mm(?P<pitch>)(?P<pitch2>)(?: (?:coarse|fine)(?: (?:threads?|pitch))?)?"
        r"(?= bolts?| screws?| studs?| capscrews?| ones?(?: |$)| class| grade| [0-9]+\.[89]"
        r"| (?:hex|socket|allen|cap|flange)(?: heads?)? (?:bolts?|screws?))",
        _metric,
        doubt=2,
        cue=("mm",),
    ),
    Shaped(
        r"(?P<size>1(?: [0-9]/[0-9])?)-(?P<tpi>[5-8])(?P<no>)(?P<unit>)(?: ?(?P<series>unc|unf|un|nc|nf|coarse|fine))?",
        _inch,
    ),
    Shaped(
        rf"(?:{_SIZE})(?P<unit> ?(?:inch(?:es)?|in|\"))?(?: ?(?:-|x|by) ?| )(?P<tpi>[1-8][0-9])(?: ?(?:tpi|threads per"
        r" inch))?"
        r"(?: ?(?P<series>unc|unf|unef|un|nc|nf|coarse|fine))?(?:-[123][ab])?(?: threads?)?",
        _inch,
    ),
    Shaped(
        rf"(?:{_SIZE})(?P<unit> ?(?:inch(?:es)?|in|\"))?(?P<tpi>)(?: ?(?P<series>unc|unf|unef|nc|nf|coarse|fine))?(?:"
        r" threads?)?",
        _inch,
        doubt=3,
    ),
)


# What people say before a grade.
_LEADS = (
    *("grade ", "gr", "gr ", "gr.", "gr. ", "g", "grade-"),
    *("class ", "class", "cl ", "cl", "cl. ", "pc "),
)


def _grades(data: Refdata) -> dict[str, str]:
    """Every name of a grade that is not a bare whole number -> standard and grade."""
    table = data.table("fasteners/grades")
    found: dict[str, str] = {}
    pairs = dict.fromkeys((r.key[0], r.key[1]) for r in table.rows if not r.standing)
    count: dict[str, int] = {}
    for _, grade in pairs:
        count[grade] = count.get(grade, 0) + 1
    for standard, grade in pairs:
        if count[grade] == 1:
            plain, named = grade.casefold(), f"{standard} {grade}"
            for lead in _LEADS:
                found.setdefault(lead + plain, named)
            if not grade.isdigit():
                found.setdefault(plain, named)
        for name in (f"{standard} {grade}", f"{standard} grade {grade}", f"{standard} class {grade}"):
            found[name.casefold()] = f"{standard} {grade}"
    standards = {s.casefold(): s for s, _ in pairs}
    owners_of: dict[str, list[str]] = {}
    grades_of: dict[str, list[str]] = {}
    for standard, grade in pairs:
        owners_of.setdefault(grade, []).append(standard)
        grades_of.setdefault(standard, []).append(grade)
    said = data.words("fasteners", "standard")
    for word, grade in data.words("fasteners", "grade").items():
        standard = said.get(word, "")
        owners = [s for s in owners_of.get(grade, ()) if not standard or s == standard]
        if len(owners) == 1 and not word.isdigit():
            found.setdefault(word, f"{owners[0]} {grade}")
    for word, standard in said.items():
        of = grades_of.get(standards.get(standard.casefold(), standard), ())
        if len(of) == 1 and not word.isdigit():
            found.setdefault(word, f"{standard} {of[0]}")
    return found


def _marks(data: Refdata) -> dict[str, str]:
    """Lines on a bolt's head -> the grade that they mean, where they mean one."""
    found: dict[str, str] = {}
    rows = [r for r in data.table("fasteners/head_marks").rows if not r.standing]
    marks = {**data.words("fasteners", "mark"), "no lines": "no lines"}
    for word, mark in marks.items():
        grades = {f"{r.key[1]} {r.key[2]}" for r in rows if r.key[0] == mark}
        if len(grades) == 1:
            found[word] = re.sub(r" or .*", "", grades.pop())  # of two grades with one mark, the weaker
    return found


GRADE = (
    Named(_grades, tail="on (?:the |its )?heads?|on top"),
    Named(_marks, tail="on (?:the |its )?head|on top", cue=("line", "mark", "dash", "head")),
    Shaped(  # of a metric class, though a standard of inches is called by the same head
        r"(?P<n>8\.8|10\.9|12\.9) (?:socket|allen|cap)(?: heads?)?(?: cap)?(?: (?:screws?|bolts?))?",
        lambda m: f"ISO 898-1 {m['n']}",
        cue=("socket", "allen", "cap"),
    ),
)


# An oil pan is no oiled thread.
_OF_OIL = r"(?:pans?|filters?|coolers?|pumps?|lines?|drains?|pressure|caps?|sumps?|seals?|temp\w*|feeds?)$"
_NONE_OF = r"(?:with )?(?:no|without|w/o)(?: (?:any|been|an?|the))*"
_SLIPPERY = r"(?:lub(?:e|ed|es|ricant|ricated|rication|ing)|oil|oiled|oily|grease|greased|greasy)"
_ON_IT = r"(?: (?:on|to|in)(?: (?:the|my|its?|them|it))*(?: (?:threads?|bolts?|studs?))?)?"
CONDITION = (
    Named(
        words_of("fasteners", "condition"),
        lead=r"(?:(?:coated|smeared|covered|painted|dabbed|slathered|plastered|smothered|drowned|lathered|dunked)"
        r"(?: (?:the )?threads| them| it| em)?(?: (?:in|with))?"
        r"|(?:with |using |just )*(?:an? |the |some )?(?:smear|dab|touch|drop|spot|wipe|film|lick|squirt|splash"
        r"|dollop) of"
        r"|(?:i|we|i've|ive|we've|he|they) used|with|using|and|on|put|has|have|is|are)(?: some| an?)?",
        tail="on it|on them|on the threads?|threads?",
        unless=_OF_OIL,
    ),
    Shaped(
        r"dry,? (?:and )?zinc[- ]plated|zinc[- ]plated(?: and| but)? dry",
        always("zinc plated"),
        "zinc plated",
        cue=("zinc",),
    ),
    Named(words_of("fasteners", "condition"), tail="threads?|on it|on them|on the threads?", unless=_OF_OIL),
    Shaped(
        r"(?P<metal>copper|moly|nickel)[ -]?(?:greased|slipped|pasted|coated)",
        lambda m: {"copper": "copper anti-seize", "nickel": "nickel anti-seize"}.get(m["metal"], "moly paste"),
        cue=("copper", "moly", "nickel"),
    ),
    Shaped(rf"un-?(?:greased|lubed|oiled)(?: or un-?(?:greased|lubed|oiled))*{_ON_IT}", always("dry"), cue=("un",)),
    Shaped(r"[n]othing on (?:the |my |its )?(?:threads?|bolts?|studs?)", always("dry"), cue=("nothing",)),
    Shaped(
        rf"dry,? (?:and |but )?not (?:even )?{_SLIPPERY}(?: (?:or|nor) {_SLIPPERY})*{_ON_IT}"
        rf"|not {_SLIPPERY}(?: (?:or|nor) {_SLIPPERY})*{_ON_IT},? (?:and |but |just )?dry",
        always("dry"),
        cue=("dry",),
    ),
    Shaped(r"thread[- ]?locked(?: in)?", always("thread-locking liquid"), cue=("locked",)),
    Shaped(  # and another thing may be said to be on them
        rf"{_NONE_OF} {_SLIPPERY}(?: (?:or|nor|and no) {_SLIPPERY})*{_ON_IT}(?! {_OF_OIL[:-1]}(?: |$))"
        r"(?! (?:leak\w*|change|level|light)(?: |$))",
        always("dry"),
        doubt=105,
        cue=("lub", "oil", "greas"),
    ),
)


_NO = r"no|without|without an?|without any|no steel|without a steel|without steel"


INSERT = (
    Shaped(  # where one is asked about there is none
        r"(?:or )?(?:do|does|should|must|would|will) (?:i|we|it)(?: really| now)? (?:need|want|fit|take|put in)"
        r"(?: an?| the)?(?: (?:steel|wire|thread(?:ed)?))* inserts?",
        always("no"),
        "no insert yet",
        cue=("insert",),
    ),
    Shaped(rf"(?:{_NO}) (?:thread(?:ed)? )?inserts?", always("no"), "no steel insert", cue=("insert",)),
    Shaped(
        r"(?:with|has|and)?(?: ?an?)?(?: ?(?:steel|wire|helical|coil))* ?(?:thread(?:ed)? )?inserts?(?: fitted|"
        r" installed)?",
        always("yes"),
        "with a steel insert",
        cue=("insert",),
    ),
)


def _range(match: re.Match[str]) -> str:
    unit = unit_of(match["unit"] or "ft lb")
    return f"{match['low']} to {match['high']} {unit} by {match['step'] or '1'}"


_KILOGRAM_M = 9.80665  # N*m


def torque_of(number: str, unit: str) -> str:
    """A torque as it is typed, of one in kilogram metres in newton metres."""
    if unit[:1] == "k":
        parts = [part.partition("/") for part in re.split("[ -]", number)]
        kilograms = sum(float(top) / float(bottom or 1) for top, _, bottom in parts)
        return f"{kilograms * _KILOGRAM_M:.4g} N*m"
    return f"{number} {unit_of(unit)}"


def unit_of(text: str) -> str:
    if text[:1] == "n":
        return "N*m"
    return "lbf*in" if "in" in text else "lbf*ft"


def _locknuts(data: Refdata) -> dict[str, str]:
    """The locknuts by name; ``nylon`` by itself may be the bolt's metal."""
    return {w: c for w, c in words_of("fasteners", "nut", "fasteners/prevailing")(data).items() if w != "nylon"}


TOOLS: dict[str, tuple[Reader, ...]] = {
    "wrench": (
        Shaped(
            rf"(?:(?:torque )?wrench (?:of |from |is |reads |goes |range )?){_SPAN} ?(?:{TORQUE_SAID})?{_BY}",
            _range,
            "wrench {}",
            cue=("wrench",),
        ),
        Shaped(rf"{_SPAN} ?(?:{TORQUE_SAID}) (?:torque )?wrench{_BY}", _range, "wrench {}", cue=("wrench",)),
    ),
    "adapter": ADAPTER,
    "locknut": (
        Named(_locknuts, lead=r"(?:with|and|using)(?: an?)?", say="{} locknut"),
        Named(_locknuts, say="{} locknut"),
    ),
    "prevailing": (
        amount(
            "torque",
            before=r"(?:drag|prevailing torque|prevailing|run(?:ning)?[- ]down torque)(?: (?:of|is))?",
            say="drag {}",
            cue=("drag", "prevail", "down"),
        ),
        amount("torque", after=r"(?:of )?(?:drag|prevailing(?: torque)?)", say="drag {}", cue=("drag", "prevail")),
    ),
    "wanted": (
        amount(
            "torque",
            before=(
                r"(?:i )?want(?:ed)?(?: it)?(?: (?:at|to be))?|set (?:it )?to|(?:wrench )?setting (?:for|of|to get)"
                r"|to get|to give"
            ),
            say="wanted {}",
            cue=("want", "set", "to g"),
        ),
    ),
    "service": (
        Shaped(r"(?:on an? |for an? |on )?(?:aircraft|airplane|aeroplane)", always("aircraft"), cue=("air", "aero")),
    ),
}
