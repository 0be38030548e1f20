"""What is asked about a thread or a part, as people say it."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, amount, words_of
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.fasteners import keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata, Row

_INTO = r"(?:into|in to|in|going into|screwed into|threaded into|tapped into|tapped in)(?: (?:an?|the|my))?(?: bare)?"
_METAL_TAIL = r"block|head|heads|intake|manifold|case|casing|housing|casting|part|plate|hole|cover|tapped hole"
_SPAN = rf"(?P<low>{NUMBER})(?: ?(?:to|-|and) ?)(?P<high>{NUMBER})"
_TORQUE = r"(?P<unit>(?:ft|foot|in|inch)[-. *]?(?:lbs?|pounds?)|(?:lbs?|pounds?)[-. *]?(?:ft|foot|in|inch)|n[. ]?m)"
_BY = rf"(?: ?(?:by|in steps of|in) (?P<step>{NUMBER})s?)?"
_EVERYDAY = {
    "metric": ("ISO 898-1 8.8", "ISO 898-1 10.9", "ISO 898-1 12.9"),
    "inch": ("SAE J429 5", "SAE J429 8"),
    "stainless metric": ("ISO 3506-1 A2-70", "ISO 3506-1 A4-80"),
    "stainless inch": ("ASTM F593 304 CW1", "ASTM F593 316 CW1"),
}
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
_CONDITIONS = ("dry", "oiled", "anti-seize")


def _metric(match: re.Match[str]) -> str:
    pitch = match["pitch"] or match["pitch2"]
    return f"M{match['d']}x{pitch}" if pitch else f"M{match['d']}"


def _inch(match: re.Match[str]) -> str | None:
    size = f"#{match['no']}" if match["no"] else match["size"].replace("-", " ")
    series = _SERIES.get(match["series"] or "", "")
    if match["tpi"]:
        return f"{size}-{match['tpi']}" + (f" {series}" if series else "")
    if "/" not in size and not size.startswith("#") and not match["unit"] and not series:
        return None  # a bare whole number is no thread
    return f"{size} {series}".strip()


_THREAD = (
    Shaped(
        r"m ?(?P<d>[0-9]+(?:\.[0-9]+)?)(?: ?(?:x|by|\*|-) ?(?P<pitch>[0-9]*\.?[0-9]+)|"
        r" (?P<pitch2>0?\.[0-9]+|[123]\.[0-9]+))?"
        r"(?: ?mm)?(?: coarse)?",
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
        r"(?P<d>[0-9]+) ?mm(?P<pitch>)(?P<pitch2>)(?: coarse)?(?= bolts?| screws?| studs?| class| grade| [0-9]+\.[89])",
        _metric,
        doubt=2,
        cue=("mm",),
    ),
    Shaped(r"(?P<size>1(?: [0-9]/[0-9])?)-(?P<tpi>[5-8])(?P<no>)(?P<series>)(?P<unit>)", _inch),
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
            for lead in (
                "grade ",
                "gr",
                "gr ",
                "gr.",
                "gr. ",
                "g",
                "grade-",
                "class ",
                "class",
                "cl ",
                "cl",
                "cl. ",
                "pc ",
            ):
                found.setdefault(f"{lead}{grade}".casefold(), f"{standard} {grade}")
            if not grade.isdigit():
                found.setdefault(grade.casefold(), f"{standard} {grade}")
        for name in (f"{standard} {grade}", f"{standard} grade {grade}", f"{standard} class {grade}"):
            found[name.casefold()] = f"{standard} {grade}"
    standards = {s.casefold(): s for s, _ in pairs}
    for word, grade in data.words("fasteners", "grade").items():
        standard = data.words("fasteners", "standard").get(word, "")
        owners = [s for s, g in pairs if g == grade and (not standard or s == standard)]
        if len(owners) == 1 and not word.isdigit():
            found.setdefault(word, f"{owners[0]} {grade}")
    for word, standard in data.words("fasteners", "standard").items():
        of = [g for s, g in pairs if s == standards.get(standard.casefold(), standard)]
        if len(of) == 1 and not word.isdigit():
            found.setdefault(word, f"{standard} {of[0]}")
    return found


def _marks(data: Refdata) -> dict[str, str]:
    """Lines on a bolt's head -> the grade that they mean, where they mean one."""
    found: dict[str, str] = {}
    rows = [r for r in data.table("fasteners/head_marks").rows if not r.standing]
    for word, mark in data.words("fasteners", "mark").items():
        grades = {f"{r.key[1]} {r.key[2]}" for r in rows if r.key[0] == mark}
        if len(grades) == 1:
            found[word] = re.sub(r" or .*", "", grades.pop())  # of two grades with one mark, the weaker
    return found


_GRADE = (
    Named(_grades),
    Named(_marks, tail="on (?:the |its )?head|on top"),
)
_CONDITION = (
    Named(
        words_of("fasteners", "condition"),
        lead=r"(?:with|using|and|on|put|has|have|is|are)(?: some| an?)?",
        tail="on it|on them|on the threads?|threads?",
    ),
    Named(words_of("fasteners", "condition"), tail="threads?|on it|on them|on the threads?"),
    Shaped(
        r"(?:no|without) (?:any )?(?:lube|lubed|lubricant|lubricated|lubrication)",
        lambda m: "dry",
        cue=("lub",),
    ),
)
_NO = r"no|without|without an?|without any|no steel|without a steel|without steel"
_INSERT = (
    Shaped(rf"(?:{_NO}) (?:thread(?:ed)? )?inserts?", lambda m: "no", "no steel insert", cue=("insert",)),
    Shaped(
        r"(?:with|has|and)?(?: ?an?)?(?: ?steel)? ?(?:thread(?:ed)? )?inserts?(?: fitted| installed)?",
        lambda m: "yes",
        "with a steel insert",
        cue=("insert",),
    ),
)


def _range(match: re.Match[str]) -> str:
    unit = _unit(match["unit"] or "ft lb")
    return f"{match['low']} to {match['high']} {unit} by {match['step'] or '1'}"


def _stated(match: re.Match[str]) -> str:
    low = f"{match['low']} to " if match["low"] else ""
    return f"{low}{match['high']} {_unit(match['unit'])}"


def _unit(text: str) -> str:
    if text.replace(" ", "").replace(".", "") == "nm":
        return "N*m"
    return "lbf*in" if "in" in text else "lbf*ft"


_TOOLS: dict[str, tuple[Reader, ...]] = {
    "wrench": (
        Shaped(
            rf"(?:(?:torque )?wrench (?:of |from |is |reads |goes |range )?){_SPAN} ?(?:{_TORQUE})?{_BY}",
            _range,
            "wrench {}",
            cue=("wrench",),
        ),
        Shaped(rf"{_SPAN} ?(?:{_TORQUE}) (?:torque )?wrench{_BY}", _range, "wrench {}", cue=("wrench",)),
    ),
    "adapter": (
        Shaped(
            rf"(?:an? )?(?:(?P<arm>{NUMBER}) ?(?:inch|in|\") )?crow[ -]?(?:foot|feet)(?: (?:of )?(?P<arm2>{NUMBER})"
            r" ?(?:inch|in|\"))?"
            rf" on (?:an? )?(?P<wrench>{NUMBER}) ?(?:inch|in|\")(?: (?:torque )?wrench)?(?: at (?P<at>[0-9]+)(?: deg|"
            r" degrees)?)?",
            lambda m: _arms(m),
            "crow-foot {}",
            cue=("crow",),
        ),
    ),
    "locknut": (
        Named(
            words_of("fasteners", "nut", "fasteners/prevailing"),
            lead=r"(?:with|and|using)(?: an?)?",
            say="{} locknut",
        ),
        Named(words_of("fasteners", "nut", "fasteners/prevailing"), say="{} locknut"),
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
    "maker": (
        Shaped(
            r"(?:the )?(?:maker|manufacturer|manual|book|factory|maker's sheet|sheet)(?:'s)?"
            r"(?: (?:says|said|calls for|wants|gives|figure|spec|is|figure is|spec is))?"
            rf" (?:(?P<low>{NUMBER}) ?(?:to|-) ?)?(?P<high>{NUMBER}) ?{_TORQUE}",
            _stated,
            "maker's {}",
            cue=("maker", "manu", "book", "factory", "sheet"),
        ),
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
        Shaped(r"(?:on an? |for an? |on )?(?:aircraft|airplane|aeroplane)", lambda m: "aircraft", cue=("air", "aero")),
    ),
}


def _arms(match: re.Match[str]) -> str | None:
    arm = match["arm"] or match["arm2"]
    at = f" at {match['at']} deg" if match["at"] else ""
    return f"{arm} in on {match['wrench']} in{at}" if arm else None


def _open_bolt(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size, the everyday grades, dry, oiled and with anti-seize: whatever was not said."""
    open_keys, rows = [], [values]
    threads = _threads(values["thread"], data)
    if len(threads) > 1:
        open_keys.append("thread")
        rows = [{**row, "thread": cell} for row in rows for cell in threads]
    if any(k in values for k in ("maker", "wanted")):
        return (tuple(open_keys), [{k: row[k] for k in open_keys} for row in rows]) if open_keys else None
    if "grade" not in values:
        open_keys.append("grade")
        is_stainless = values.get("condition", "").startswith("stainless")
        kind = "metric" if values["thread"].startswith("M") else "inch"
        kind = f"stainless {kind}" if is_stainless else kind
        rows = [{**row, "grade": grade} for row in rows for grade in _EVERYDAY[kind]]
    if "condition" not in values:
        open_keys.append("condition")
        rows = [{**row, "condition": condition} for row in rows for condition in _CONDITIONS]
    return (tuple(open_keys), [{k: row[k] for k in open_keys} for row in rows]) if open_keys else None


def _threads(typed: str, data: Refdata) -> list[str]:
    """The thread, or the coarse and the fine one of a bare size."""
    try:
        return [keys.thread(typed, data).cell]
    except Ambiguous as error:
        cells = data.table("fasteners/threads").column("thread").values()
        size = typed.replace(" ", "-") + "-"
        return [c for c in cells if c.startswith(size) and c.endswith((" UNC", " UNF"))] or list(error.nearest)
    except LookupMiss:
        return [typed]


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
    return row.cells["quantity"] in ("tightening_torque", "turn_from_snug", "turn_from_finger_tight")


def _open_part(values: dict[str, str], data: Refdata) -> Open | None:
    """The sizes of the part that a bare size can mean: ``1/2`` is 1/2-20 where that alone is on record."""
    typed = values.get("size", "").removesuffix(" in").replace("-", " ").strip()
    if not typed or not typed[0].isdigit() or "mm" in typed:
        return None
    table = data.table("fasteners/part_torques")
    at = [k.name for k in table.keys]
    size, part, service = at.index("size"), at.index("part"), at.index("service")
    services = (values.get("service", "vehicle"), "any")
    rows = [r.key for r in table.rows if r.key[part] == values["part"] and r.key[service] in services and _tightens(r)]
    sizes = dict.fromkeys(key[size] for key in rows)
    if values["size"] in sizes or f"{typed} in" in sizes:
        return ("size",), [{"size": values["size"] if values["size"] in sizes else f"{typed} in"}]
    found = [s for s in sizes if s.replace("-", " ").startswith(f"{typed} ")]
    return (("size",), [{"size": s} for s in found]) if found else None


def _torque() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.torque import torque

    return torque


def _part() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.part import part

    return part


_TIGHTEN = (
    r"(?:wh?at'?s? )?(?:the )?(?:tightening |clamp(?:ing)? )?torque(?:s|d)?(?: specs?| settings?| figures?|"
    r" values?)?|torquing|tighten(?:ed|ing)?(?: down)?|tightness|how tight"
    r"|(?:ft|foot|inch|in)[- ]?(?:lbs?|pounds?)|newton met(?:re|er)s?|nm|set(?:ting)?|snug"
)
TORQUE = Topic(
    _torque,
    "torque",
    {
        "thread": _THREAD,
        "grade": _GRADE,
        "condition": _CONDITION,
        "into": (
            Named(
                words_of("fasteners", "into", "fasteners/engagement"),
                lead=_INTO,
                say="into {}",
                tail=_METAL_TAIL,
            ),
            Named(words_of("fasteners", "into", "fasteners/engagement"), say="into {}", tail=_METAL_TAIL, doubt=4),
        ),
        "insert": _INSERT,
        "given": (
            Shaped(
                r"(?:what )?clamp(?:ing)?(?: load| force)?(?: (?:do i get|does it give|at|from|for|of|is|with|i get))*"
                rf" (?P<n>{NUMBER}) ?{_TORQUE}",
                lambda m: f"{m['n']} {_unit(m['unit'])}",
                "clamp at {}",
                cue=("clamp",),
            ),
            Shaped(
                rf"(?:is )?(?P<n>{NUMBER}) ?{_TORQUE} (?:too much|too tight|too high|enough|ok|okay|safe|alright|all"
                r" right)",
                lambda m: f"{m['n']} {_unit(m['unit'])}",
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
        "joint": (Shaped(r"permanent(?: joint)?", lambda m: "permanent", "permanent joint", cue=("permanent",)),),
        **_TOOLS,
    },
    _TIGHTEN
    + r"|(?:cap |machine |set )?(?:bolts?|screws?|studs?)|capscrews?|hex(?: head)?|fasteners?|threads?|nuts?|hex"
    r" head|flange head|socket(?: head)?(?: cap)?|allen",
    needs=("thread",),
    opens=_open_bolt,
)
PART = Topic(
    _part,
    "torque",
    {
        "part": (Named(words_of("fasteners", "part", "fasteners/part_torques")),),
        "kind": (
            Shaped(
                r"(?:by|in|how many|how much|number of)(?: the)? turns?(?: past snug| past contact| past finger"
                r" tight)?(?: (?:for|with|on) an? new)?",
                lambda m: "by turns",
            ),
            Shaped(r"turns?(?: past (?:snug|contact|finger tight))", lambda m: "by turns"),
            Shaped(
                r"(?:used again|reused|re-used|reusing|re-using|refitted|refitting|second hand)(?: an?)?(?:"
                r" (?:old|used))?",
                lambda m: "used again",
            ),
        ),
        "size": (
            *_THREAD,
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
            Named(words_of("fasteners", "material", "fasteners/part_torques"), tail=_METAL_TAIL, doubt=1),
        ),
        "condition": _CONDITION,
        **_TOOLS,
        "service": (
            Named(words_of("fasteners", "service", "fasteners/part_torques"), lead="on|for|on an?|for an?|on the"),
            Named(words_of("fasteners", "service", "fasteners/part_torques")),
        ),
    },
    _TIGHTEN + r"|plug|nuts?|bolts?|fittings?|lines?|seat|threads?|studs?|brakes?|tubes?|tubing",
    needs=("part",),
    opens=_open_part,
    settle=_settle_part,
)
TOPICS = (TORQUE, PART)
