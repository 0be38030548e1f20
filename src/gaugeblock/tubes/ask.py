"""What is asked about a tube, its wall, its bend or its flare, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Hit, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known
from gaugeblock.tubes import beam_ask, bend_ask, box_ask, burst_ask, flare_ask, keys, shape_ask, sheet_ask
from gaugeblock.tubes.pipe_ask import PIPE
from gaugeblock.tubes.said import DEG, answer_in, is_without_metal

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Iterable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.tables.load import Refdata

_IN = r"(?: ?(?:inch(?:es)?|in|\"))"
_GAUGE = r"gauge|gage|ga|guage"


class Stock:
    """Reader of a tube's metal: family, grade, product and condition, one phrase after another."""

    def phrases(self, data: Refdata) -> dict[str, str]:
        """The phrases of tubes, as ``Named`` has them."""
        return {p.casefold(): p for p in keys.phrases(data)}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: what stands in a row makes more than any list."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As many phrases as stand in a row."""
        known = keys.phrases(data)
        end = at
        while end < len(words):
            step = next(
                (n for n in range(5, 0, -1) if " ".join(words[end : end + n]) in known and end + n <= len(words)), 0
            )
            if not step:
                break
            end += step
        if end > at:
            yield Hit(end - at, " ".join(words[at:end]))


_STOCK = Stock()
_MILD = Shaped(r"mild(?! steel)", always("mild steel"), cue=("mild",))


def _inch(match: re.Match[str]) -> str | None:
    said = match.groupdict()
    number = said["n"]
    is_bare = not said["mm"] and not said["in"] and number.replace(".", "", 1).isdigit()
    unit = "mm" if said["mm"] or (is_bare and float(number) > _LARGEST_DIE) else "in"
    return f"{number} {unit}{' inside' if said.get('inside') else ''}"


# No shop has a die of so many inches: a larger number without a unit is millimetres.
_LARGEST_DIE = 16


def _bare_od(match: re.Match[str]) -> str | None:
    number = match["n"]
    if match["mm"]:
        return f"{number} mm"
    if "." in number and float(number) > _MOST_INCHES and not match["in"]:
        return f"{number} mm"  # no shop bends a tube of so many inches
    if match["in"] and number.isdigit() and int(number) > _MOST_INCHES:
        return None  # a leg, and no tube
    if match["in"] or "/" in number or ("." in number and not number.startswith((".", "0."))):
        return f"{number} in"
    return None


def _wall(match: re.Match[str]) -> str | None:
    number = match["n"]
    if match["mm"]:
        return f"{number} mm"
    if number.isdigit():  # "120 wall" is .120 in thousandths
        return f".{number} in" if len(number) == 3 else None
    return f"{number} in" if float(number) < 1 else f"{number} mm" if float(number) < _MOST_INCHES else None


_MOST_INCHES = 12
_OD = (
    Shaped(
        rf"(?P<n>{NUMBER})(?:(?P<in>{_IN})| ?(?P<mm>mm))?(?: ?(?:od|o\.d|outside diameter|outside|dia(?:meter)?))?",
        _bare_od,
        "{} OD",
    ),
    Shaped(r"(?P<n>[1-9])(?= (?:(?:x|by) )?0?\.[0-3][0-9]*(?: |$))", lambda m: f"{m['n']} in", "{} OD", doubt=1),
    Shaped(
        r"(?P<n>[0-9]{1,3}) (?:od|o\.d|outside(?: diameter)?)",
        lambda m: f"{m['n']} {'mm' if int(m['n']) > _MOST_INCHES else 'in'}",
        "{} OD",
    ),
    Shaped(
        r"(?P<n>[1-9][0-9]{1,2})(?= (?:x|by) [1-9](?:\.[0-9]+)?(?: |$))", lambda m: f"{m['n']} mm", "{} OD", doubt=1
    ),
)
_WALLS = (
    Shaped(
        rf"(?:x |by )?(?P<n>0?\.[0-9]+)(?:{_IN}| ?(?P<mm>mm))?(?: ?(?:wall(?: thickness)?|thick|w))?", _wall, "{} wall"
    ),
    Shaped(rf"(?:x |by )?(?P<n>[0-9.]+)(?:{_IN}| ?(?P<mm>mm))? (?:wall(?: thickness)?|thick)", _wall, "{} wall"),
    Shaped(r"(?:x |by )?(?P<n>[1-9]) (?:wall(?: thickness)?|thick)", lambda m: f"{m['n']} mm", "{} wall"),
    Shaped(
        rf"(?:x |by |with |and )*(?:an? )?(?P<n>[0-9]+/[0-9]+)(?:{_IN})? (?:wall(?: thickness)?|thick)",
        lambda m: f"{m['n']} in",
        "{} wall",
    ),
    Shaped(r"wall (?:of |is )?(?P<n>0?\.[0-9]+|[0-9.]+(?= ?mm))(?: ?(?:in|inch|\")| ?(?P<mm>mm))?", _wall, "{} wall"),
    Shaped(
        rf"(?:x |by )?(?P<n>[0-9]{{1,2}}) ?(?:{_GAUGE}|bwg)(?: wall)?(?: bwg)?",
        lambda m: f"{m['n']} BWG",
        "{} wall",
        doubt=2,
    ),
)
_THOUSANDTHS = Shaped(r"(?:x |by )?(?P<n>0[0-9]{2})(?: wall)?", lambda m: f".{m['n']} in", "{} wall")
_MM_WALL = Shaped(
    r"(?:x|by) ?(?P<n>[0-9](?:\.[0-9]+)?)(?: ?(?P<mm>mm))?(?: wall)?",
    lambda m: _wall(m) or f"{m['n']} mm",
    "{} wall",
    doubt=1,
)
_RADIUS = (
    Shaped(
        rf"(?:on |with |in |using |round |around )?(?:an? |my |the )?(?P<n>{NUMBER})(?:(?P<in>{_IN})| ?(?P<mm>mm))?"
        r"(?: radius| clr| centre ?line| center ?line)?(?= (?:die|former|shoe))",
        _inch,
        "radius {}",
    ),
    Shaped(
        rf"(?:on |to |at |round |around )?(?:an? )?(?P<n>{NUMBER})(?:(?P<in>{_IN})| ?(?P<mm>mm))?"
        r" (?:clr|centre ?line(?: radius)?|center ?line(?: radius)?|(?:bend )?radius)"
        r"(?P<inside> (?:measured )?(?:to the )?inside)?",
        _inch,
        "radius {}",
    ),
    Shaped(
        rf"(?:clr|(?:centre ?line |center ?line |bend )?radius)(?: of| is)? (?P<n>{NUMBER})(?:(?P<in>{_IN})"
        rf"| ?(?P<mm>mm))?",
        _inch,
        "radius {}",
    ),
)


_OWN: dict[str, tuple[Reader, ...]] = {
    "yield_strength": known("stress", "yields?(?: stress)?", "yield strength {}", cue=("yield",)),
    "tensile_strength": known("stress", "tensile|uts|ultimate", "tensile strength {}", cue=("tensile", "uts", "ultim")),
    "modulus": known("stress", "modulus(?: of elasticity)?|young'?s modulus", "modulus {}", cue=("modul",)),
}
_TEST = (
    rf"(?:with )?(?:an? |the )*test (?:bends?|piece)(?: (?:of|was|is|went|set|bent|at|to))* (?P<set>{NUMBER})"
    rf" ?(?:{DEG})?"
)


# The metals of a shop's tube, where none was named.
_USUAL = ("1020 DOM", "1020 ERW", "4130", "304 stainless")


def _open_bend(values: dict[str, str], data: Refdata) -> Open | None:
    """The ways to bend, and a shop's usual metals where none was named; on a die that is there it is one way."""
    typed = values.get("material", "")
    methods = [] if "method" in values else ["rotary draw", "mandrel", "press"]
    if not is_without_metal(typed, data):
        return (("method",), [{"method": m} for m in methods]) if methods else None
    if "radius" in values:
        methods = methods[:1]
    open_keys = ("material", "method") if methods else ("material",)
    rows = [(metal, m) for metal in _USUAL for m in methods or [""]]
    return open_keys, [dict(zip(open_keys, row, strict=False)) for row in rows]


def _systems(data: Refdata) -> dict[str, str]:
    """The systems of gauge numbers; a word with its own number (``10 awg``) would hide the number."""
    return {w: c for w, c in words_of("tubes", "system", "tubes/gauges")(data).items() if not w[0].isdigit()}


def _open_gauge(values: dict[str, str], data: Refdata) -> Open | None:
    """What the number means in each system that has it."""
    if "system" in values:
        return None
    rows = data.table("tubes/gauges").of("wall_thickness")
    number = values["number"]
    if not number.isdigit():
        return ("system",), [{"system": s} for s in dict.fromkeys(r["system"] for r in rows if not r["standing"])]
    systems = [r["system"] for r in rows if r["gauge"] == number and not r["standing"]]
    return ("system",), [{"system": s} for s in dict.fromkeys(systems)]


def _stocks(data: Refdata) -> list[str]:
    """Every stock of which the tables have a strength, as it is named."""
    named = ("material", "product", "condition")
    rows = data.table("tubes/materials").rows
    return [" ".join(r[k] for k in named if r[k] not in ("any", "not stated")) for r in rows if not r.standing]


# What may be said of a tube's stock besides its metal.
_STOCK_COLUMNS = {key: ("tubes/materials", key) for key in ("spec", "product", "condition")}
BEND = Topic(
    lambda: answer_in("bend.sheet", "bend"),
    "bend",
    {
        "od": _OD,
        "wall": (*_WALLS, _MM_WALL, _THOUSANDTHS),
        "material": (_STOCK, _MILD),
        "method": (
            Named(words_of("tubes", "method", "tubes/bend_minimums")),
            Shaped(r"(?:bending )?(?:die|former)", always("rotary draw")),
        ),
        "radius": _RADIUS,
        "angle": (
            amount("angle", after="bends?", say="{} bend"),
            amount("angle", say="{}"),
            Shaped(r"(?:an? )?(?P<n>30|45|60|90|120|180)(?: bend)?", lambda m: f"{m['n']} deg", "{} bend", doubt=1),
        ),
        "service": (
            Named(words_of("tubes", "service"), lead="for|in|on|for an?|for the"),
            Named(words_of("tubes", "service")),
        ),
        **_OWN,
        "test": (
            Shaped(
                rf"{_TEST}(?: (?:set|and|got|gave|came|sprang|springs?|back|to|for|kept|left|at))* (?P<got>{NUMBER})"
                rf" ?(?:{DEG})?(?: (?:got|kept|left|after))?",
                lambda m: f"{m['set']} deg set, {m['got']} deg got",
                "test bend {}",
                cue=("test",),
            ),
        ),
    },
    r"(?:bend )?radius|plain bender|flatten|too tight|hard ?lines?|clr|(?:can i |will (?:it )?|does (?:it )?"
    r"|how tight can i"
    r" )?(?:bends?|bending|bent|bendable)|tubes?|tubing|take|kinks?|how tight|tightest|min(?:imum)?(?: bend)?"
    r" radius|(?:smallest|tightest|least)(?: bend)?(?: radius)?|minimum|min|od|x|die|bender|exhaust|(?:fuel |brake"
    r" |hard )?lines?|(?:main |roll )?hoop|rules|shoe|cent(?:re|er)[ -]?line",
    needs=("od", "wall"),
    opens=_open_bend,
    joined=("material",),
    columns={"material": ("tubes/materials", "family"), **_STOCK_COLUMNS},
)


ARC, OVERBEND = bend_ask.arc_of(BEND.slots), bend_ask.overbend_of(BEND.slots)
OFFSET, COPE = shape_ask.offset_of(BEND.slots), shape_ask.cope_of()
_LEAST_MM_WALL = 0.5  # a wall without a unit: under it inches
GAUGE = Topic(
    lambda: answer_in("gauge", "gauge"),
    "gauge",
    {
        "number": (
            Shaped(rf"(?:#)?(?P<n>[0-9]{{1,2}}|0{{2,4}}) ?(?:{_GAUGE})?(?= |$)", lambda m: m["n"], "{} gauge"),
            *(amount("length", after=after, say="{} thick") for after in (r"(?:thick(?:ness)?|wall)", "")),
            Shaped(
                r"(?P<n>0?\.[0-9]+|[0-9]+\.[0-9]+) (?:thick(?:ness)?|wall)",
                lambda m: f"{m['n']} {'in' if float(m['n']) < _LEAST_MM_WALL else 'mm'}",
                "{} thick",
            ),
        ),
        "system": (
            Shaped(
                r"(?:swg|british)(?: gauge)? (?:and )?(?:not|no) (?:the )?(?:yank|american|us|u\.s\.)(?: (?:one|kind"
                r"|gauge))?",
                always("SWG (British)"),
                cue=("swg", "british"),
            ),
            Named(_systems),
        ),
    },
    rf"(?:{_GAUGE})|close to|nearest|plate|thick(?:ness)?|how thick|wall(?: thickness)?|in inches|in"
    r" mm|decimal|steel|dia(?:meter)?|metal"
    r"|sheet|floor ?pans?|pan|panel|for",
    needs=("number",),
    asks_for=rf"(?:{_GAUGE})|[a-z]wg|[0-9]ga|sheet\w*",
    opens=_open_gauge,
    columns={"number": ("tubes/gauges", "gauge"), "system": ("tubes/gauges", "system")},
)


def _settle_section(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """``tube`` alone names no metal, and says no more of a section."""
    return {k: v for k, v in values.items() if k != "material" or not is_without_metal(v, data)}


def _open_section(values: dict[str, str], data: Refdata) -> Open | None:
    """A shop's steels, where the mass is asked of a tube whose metal was not named."""
    if values.get("fact") != "mass" or not is_without_metal(values.get("material", ""), data):
        return None
    return ("material",), [{"material": metal} for metal in ("1020 DOM", "4130")]


SECTION = Topic(
    lambda: answer_in("section", "section"),
    "tube section",
    {
        "od": _OD,
        "wall": (*_WALLS, _MM_WALL, _THOUSANDTHS),
        "material": (_STOCK, _MILD),
        "length": (
            amount("length", after="long|of it|piece|stick|length", say="{} long"),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:ft|feet|foot|')", lambda m: f"{m['n']} ft", "{} long"),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:m|met(?:re|er)s?)", lambda m: f"{m['n']} m", "{} long"),
        ),
        "fact": (
            Shaped(
                r"(?:how )?(?:much )?(?:does )?(?:it |an? )?(?:weigh(?:t|s|ing)?|mass|heavy)",
                always("mass"),
                "its mass",
            ),
            Shaped(
                r"(?:how many )?(?:lbs?|pounds?|kgs?|kilos?|kilograms?) (?:per|an?|each) (?:foot|ft|met(?:re|er)|m)",
                always("mass"),
                "its mass",
            ),
            Shaped(r"(?:in )?(?:lbs?|pounds?|kgs?)/(?:ft|foot|m)", always("mass"), "its mass", cue=("/",)),
            Shaped(r"(?:kgs?|kilos?|kilograms?|lbs|pounds)|(?:heavier|lighter)", always("mass"), "its mass", doubt=1),
            Shaped(r"second moment(?: of area)?|moment of inertia", always("second moment")),
            Shaped(r"(?:how )?stiff\w*", always("second moment"), "how stiff it is: its second moment"),
            Shaped(r"(?:how )?strong\w*|strength", always("section modulus"), "its section modulus"),
            Shaped(r"(?:cross[- ]?section(?:al)? )?area", always("area"), "its area"),
        ),
        "torque": (
            amount("torque", before="(?:twisted|under)(?: by| with| at)?", say="{}"),
            amount("torque", say="{}"),
        ),
        **_OWN,
        "shear_modulus": known(
            "stress",
            "(?:shear|torsion(?:al)?|rigidity) modulus|modulus of rigidity",
            "shear modulus {}",
            cue=("modul",),
        ),
    },
    r"round|(?:tube )?section(?: modulus| properties)?|second moment(?: of area)?|moment of inertia|how heavy"
    r"|(?:how much )?(?:does )?(?:it |an? )?(?:weigh(?:t|s|ing)?|mass|heavy)|twist(?:ed|s)?|tubes?|tubing|(?:cross"
    r" )?section|area"
    r"|modulus|pounds?|lbs?|pipe|(?:per|an?|each) (?:foot|ft|met(?:re|er)|m)|piece|x",
    needs=("od", "wall"),
    settle=_settle_section,
    opens=_open_section,
    joined=("material",),
    columns={"material": _stocks, **_STOCK_COLUMNS},
    asks_for=(
        r"section|second moment|inertia|weigh\w*|mass|heav\w+|lighter|twist\w*|stiff\w*|strong\w*|area|kgs?|kilos?"
        r"|kilograms?|lbs|(?:per|an?) (?:foot|ft|m|met(?:re"
        r"|er))"
        r"|lbs?/ft|kg/m"
    ),
    is_named=True,
    unmoved="finish state standard service quality",
)
MATERIAL = Topic(
    lambda: answer_in("material", "material"),
    "strength",
    {"material": (_STOCK,), "od": _OD, "wall": _WALLS},
    r"(?:yield|tensile|ultimate)(?: strength| stress)?|strength|how"
    r" strong|strong\w*|steel|tubes?|tubing|guarantee[ds]?|min(?:imum)?|ksi|mpa",
    needs=("material",),
    joined=("material",),
    columns={"material": _stocks, **_STOCK_COLUMNS},
    asks_for=r"strength|strong\w*|yield|tensile|ultimate|ksi|mpa|guarantee\w*",
)


BURST = burst_ask.burst_of(SECTION.slots)
BEAM = beam_ask.beam_of(SECTION.slots, _settle_section)
BOX = box_ask.topic(SECTION)
FLARE = flare_ask.topic(_OD, _WALLS)
SHEET = sheet_ask.topic(lambda: answer_in("sheet_metal", "sheet"), _STOCK)
TOPICS = (
    BEND,
    BURST,
    ARC,
    OVERBEND,
    OFFSET,
    COPE,
    GAUGE,
    PIPE,
    MATERIAL,
    SECTION,
    BEAM,
    BOX,
    FLARE,
    flare_ask.PORT,
    flare_ask.ANGLE,
    SHEET,
)
