"""What is asked of a bend in flat sheet or plate, as people say it."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.errors import InputError
from gaugeblock.listed import items
from gaugeblock.tubes.folded.untold_ask import UNTOLD, refuse_untold
from gaugeblock.tubes.said import DEG, answer_in
from gaugeblock.tubes.sizes_ask import EVERYDAY_ANGLES

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.tables.load import Refdata

_GAUGE = r"gauge|gage|ga|guage"
_METAL = r"mild|steel|alu|ali|stain|plate|sheet|brass|copper|cold|hot|thick|galv|[0-9]{4}"
_OF_METAL = rf"(?:an? |the |my |our |some )?(?:{NUMBER} ?(?:mm|ga|gu|(?:in |inch |\" )?(?:{_METAL}))|{_METAL})"
# `in` is no inch before the metal: 50 30 50 in 3 mm plate
_UNIT = rf"(?: ?(?:mm|millimet(?:re|er)s?|cm|inch(?:es)?|in(?! {_OF_METAL})|\"))?"
_SPOKEN = {"millimetre": "mm", "millimeter": "mm", "millimetres": "mm", "millimeters": "mm"}
_SPOKEN |= {"inch": "in", "inches": "in", '"': "in"}
_STOCK_WORDS = r"sheet(?: metal)?|plate|thick(?:ness)?|flat(?: bar| stock)?|strip"
_NAMED_METAL = (
    r"(?:mild |stainless |carbon |cold rolled |hot rolled )*(?:steel|alumin(?:i)?um|ali|ally|stainless|brass|copper)"
)
_WHICH = r"inside|internal|inner|int|bend|bending|punch|nose|tip|corner"
_RADIUS = rf"(?:{_WHICH})"
_COATED = "galvanized sheet"
_USUAL_RADII = ("1 t", "1.5 t", "2 t")
_USUAL_METALS = ("mild steel", "304 stainless", "5052-H32", "6061-T6")


def _measure(match: re.Match[str]) -> str:
    """A number with the unit that was said; bare where none was."""
    return _with_unit(match["n"], match["u"] or "")


def _no_angle(match: re.Match[str]) -> str | None:
    """A radius; a bare number behind the word that is an everyday angle is that: 3 mm inside radius 90."""
    is_bare = not (match["u"] or match["is"])
    return None if is_bare and match["n"] in EVERYDAY_ANGLES else _measure(match)


def _with_unit(number: str, unit: str) -> str:
    unit = unit.strip()
    return f"{number} {_SPOKEN.get(unit, unit)}".strip()


def _legs(match: re.Match[str]) -> str | None:
    """The outside legs in order, each with the unit that stands at it or at the last."""
    found = re.findall(rf"({NUMBER})({_UNIT})", match["legs"])
    legs = [_with_unit(number, unit) for number, unit in found]
    if match.groupdict().get("both"):
        legs *= 2
    sizes = [float(units.parse_number(number)) for number, _ in found]
    is_wall = min(sizes) * _LEAST_SHARE < max(sizes)  # what is so much less is a thickness
    if len(sizes) == _OF_A_SECTION and sizes[-1] * _THIN < min(sizes[:-1]):  # 40 x 40 x 3
        return None
    return ", ".join(legs) if len(legs) > 1 and not is_wall else None


_LEAST_SHARE = 15
_OF_A_SECTION, _THIN = 3, 6


_LEG = rf"{NUMBER}{_UNIT}"
_NEXT = rf"(?:(?: ?(?:x|by|and|then|up|down|-|\+|plus|wide|base|across|back))* (?:an? |then )?{_LEG})"
_NO_RADIUS = (
    r"(?! (?:(?:inside|outside|inner|outer|internal|bend|corner) )*(?:rad(?:ius)?|ir)(?: |$)(?!(?:(?:of|is"
    r"|at|=) )*[0-9.]))"
)
_LEG_WORDS = r"legs?|flanges?|sides?|arms?|lip|upstands?|returns?"
_LEGS: tuple[Reader, ...] = (
    Shaped(
        rf"(?:(?:with|has|outside|the|bracket|of|part|channel|outer) )*(?:(?:{_LEG_WORDS}) (?:of |are |at |is )*)?"
        rf"(?P<legs>{_LEG}{_NEXT}{{2,7}}){_NO_RADIUS}(?: (?:outside|legs|overall|over|out to out|sides"
        rf"|flanges))*{_NO_RADIUS}",
        _legs,
        "outside legs {}",
    ),
    Shaped(
        rf"(?:(?:with|has|outside|the|both|two|2|outer) )*(?:{_LEG_WORDS})(?: (?:of|are|at|is|outside|measure))*"
        rf" (?P<legs>{_LEG}{_NEXT}){_NO_RADIUS}(?: (?:outside|overall))?",
        _legs,
        "outside legs {}",
        cue=("leg", "flange", "side", "arm", "lip", "upstand", "return"),
    ),
    Shaped(
        rf"(?P<legs>{_LEG}{_NEXT}) (?:outside )*(?:{_LEG_WORDS}|bracket|angle|l[ -]?bracket)",
        _legs,
        "outside legs {}",
        cue=("leg", "flange", "side", "arm", "lip", "bracket", "angle"),
    ),
    Shaped(
        rf"(?:angle |l[ -]?)?(?:brackets?|angles?|channels?|trays?|parts?|pieces?|clips?)(?: (?:of|is|are|at|measur\w+"
        rf"|that|out|from))*"
        rf" (?P<legs>{_LEG}{_NEXT})(?: (?:outside|overall|over|out to out|legs|sides|flanges))*",
        _legs,
        "outside legs {}",
        cue=("bracket", "angle", "channel", "tray", "part", "piece", "clip"),
    ),
    Shaped(
        rf"(?:(?:with|has|outside|the) )*(?P<both>two|both|2) (?P<legs>{_LEG}) (?:outside )*(?:{_LEG_WORDS})",
        _legs,
        "outside legs {}",
        cue=("leg", "flange", "side", "arm"),
    ),
)
_THICKNESS: tuple[Reader, ...] = (
    Shaped(rf"(?:an? )?(?P<n>[0-9]{{1,2}}) ?(?:{_GAUGE})", lambda m: f"{m['n']} ga", "{}", cue=("ga", "gu")),
    amount("length", before=r"(?:thick(?:ness)?|t)(?: of| is| =)?", say="{} thick"),
    amount("length", after=_STOCK_WORDS, say="{} thick"),
    amount("length", followed=rf"{_NAMED_METAL}|sheet|plate|[0-9]{{4}}|a36", say="{} thick"),
    Shaped(  # 40 x 40 x 3 steel
        rf"(?:x|by) (?P<n>{NUMBER})(?P<u>{_UNIT})(?= (?:thick|{_NAMED_METAL}))",
        lambda m: _with_unit(m["n"], m["u"] or "mm") if "/" not in m["n"] and "." not in m["n"][:1] else f"{m['n']} in",
        "{} thick",
        cue=("x", "by"),
    ),
    amount("length", followed="r ?[0-9]", say="{} thick"),
    amount("length", say="{} thick", doubt=1),
)
_RADII: tuple[Reader, ...] = (
    Shaped(
        rf"(?:(?:with|on|at|an?|the) )*(?:(?P<n>{NUMBER})(?P<u>{_UNIT}) (?:outside|outer"
        r"|external) (?:bend )?rad(?:ius)?"
        rf"(?! (?:of |is )*[0-9.])|(?:outside|outer|external) (?:bend )?rad(?:ius)?(?: (?:of|is|at"
        rf"|=))* (?P<m>{NUMBER})(?P<v>{_UNIT}))",
        lambda m: f"outside {_with_unit(m['n'] or m['m'], m['u'] or m['v'] or '')}",
        "radius {}",
        cue=("outside", "outer", "external"),
    ),
    Shaped(
        rf"(?:(?:with|on|at|using|an?|the|to|of|over|round|around) )*(?P<n>{NUMBER})(?P<u>{_UNIT})"
        rf" (?:{_RADIUS} )*(?:rad(?:ius|ii"
        rf"|uis)?|ir)",
        _measure,
        "inside radius {}",
        cue=("rad", "ir"),
    ),
    Shaped(
        rf"(?:(?:with|on|at|using|an?|the) )*(?:{_RADIUS} )*(?:rad(?:ius|ii|uis)?|ir|r)(?P<is>(?: (?:of|is|at|=|to))*)"
        rf" (?P<n>{NUMBER})(?P<u>{_UNIT})(?! ?(?:{DEG}))(?: inside)?",
        _no_angle,
        "inside radius {}",
        cue=("rad", "ir", "r "),
    ),
    Shaped(rf"r(?P<n>[0-9]+(?:\.[0-9]+)?)(?P<u>{_UNIT})", _measure, "inside radius {}", cue=("r",)),
    Shaped(
        rf"(?:(?:with|on|at|an?|the|of|to) )*(?P<n>{NUMBER}) ?(?:t|(?:x|times)(?: the| its)*(?: metal| material| sheet"
        r"| plate)? (?:thick(?:ness)?|t))"
        rf"(?: (?:{_RADIUS}))*(?: rad(?:ius)?)?",
        lambda m: f"{m['n']} t",
        "inside radius {}",
        cue=("t", "thick"),
    ),
    Shaped(
        r"(?:with |on |at )*(?:an? )?(?:inside |internal |bend )*(?:rad(?:ius)?)(?: (?:of|is|the|equal|to|same|as))*"
        r" (?:metal |material |sheet |plate )?thickness",
        always("1 t"),
        "inside radius {}",
        cue=("thickness",),
    ),
)
_ANGLES: tuple[Reader, ...] = (
    Shaped(
        rf"(?:at |to |through |by )?(?:an? )?(?P<n>{NUMBER}) ?(?:{DEG})(?: (?:bends?|angle|fold|turn))?",
        lambda m: f"{m['n']} deg",
        "{}",
        cue=("deg", "\u00b0"),
    ),
    Shaped(
        r"(?:at |to |through |by )?(?:an? )?(?P<n>15|30|45|60|90|120|135|180)s?(?: (?:bends?|bent|angle|fold|folds))?",
        lambda m: f"{m['n']} deg",
        "{} bend",
        doubt=1,
    ),
    Shaped(r"(?:an? |at |to )*(?:right angles?|square(?= bend))(?: bend)?", always("90 deg"), cue=("right", "square")),
    Shaped(
        rf"(?:both|all|two|2|each|every|three|3|four|4) (?:of (?:the|them) )?(?:the )?(?:corners?|bends?|folds?)"
        rf"(?: (?:is|are|at|to|of|being))*(?: (?P<n>{NUMBER})(?: ?(?:{DEG}))?| (?P<sq>square|right angles?))",
        lambda m: "90 deg" if m["sq"] else f"{m['n']} deg",
        "{} each",
        cue=("corner", "bend", "fold"),
    ),
    Shaped(
        r"square(?! (?:tub|bar|box|hole|section|feet|foot|met|inch|mm|plate|piece))",
        always("90 deg"),
        "square",
        doubt=1,
        cue=("square",),
    ),
)
_MUCH = r"(?:(?:what|how much|how far|do|does|should|must|i|we|you|the|to|a|it|is|will|of) )*"
_FACTS: tuple[Reader, ...] = (
    Shaped(
        rf"{_MUCH}(?:bend )?deduct(?:ions?)?|bend ded|{_MUCH}(?:take|takes|knock|comes?|lose|subtract|drop|cut)"
        r"(?: (?:it|off|from|the|flat|sum|total|overall|both|two|2|outside|legs?|length|dimensions?|sizes?|of|my"
        r"|blank|for))*",
        always("deduction"),
        "what comes off",
        cue=("deduct", "bend ded", " off", "subtract", "lose"),
    ),
    Shaped(
        rf"{_MUCH}(?:bend(?:ing)? )?allowances?|{_MUCH}(?:sheet|metal|material|plate|steel|stock|length"
        rf"|flat)?(?: (?:does"
        r"|will|do|is|a|the|one|in|goes|into))* ?bend(?:s)? (?:take|takes|use|uses|eat|eats|needs?)(?: up)?"
        r"|(?:arc )?length (?:of|in) (?:the |a )?bend|eaten by (?:the |a )?bend",
        always("allowance"),
        "its allowance",
        cue=("allow", "bend"),
    ),
    Shaped(rf"{_MUCH}(?:outside |bend )?set ?back", always("setback"), "its setback", cue=("set",)),
    Shaped(
        rf"{_MUCH}(?:flat|blank|developed|cut|stretch ?out|unfolded|unbent)(?: (?:length|size|blank"
        rf"|pattern|width|out|long"
        r"|piece|strip|sheet))*|how long(?: (?:a|do|does|should|must|i|we|to|the|my|it|blank|strip|piece|be|cut|flat|is"
        r"|need|of|before|bending|metal))*",
        always("flat length"),
        "its flat length",
        cue=("flat", "blank", "develop", "cut", "long", "stretch", "unfold", "unbent"),
    ),
    Shaped(
        rf"{_MUCH}(?:min(?:imum|inum)?|least|smallest|tightest|sharpest)(?: (?:safe|recommended|allowed|allowable|usual"
        rf"|{_WHICH}))*(?: rad(?:ius|ii|uis)?)?"
        r"|how (?:tight|sharp|small)(?: (?:can|could|may|do|should|i|we|you|it|a|the|an|bend|fold|be|is|radius|of"
        r"|inside))*",
        always("radius"),
        "its least inside radius",
        cue=("min", "least", "smallest", "tight", "sharp", "how small"),
    ),
    Shaped(
        r"(?:what|which) (?:inside |internal |bend )*rad(?:ius)?(?: (?:should|do|can|must|to|i|we|you|use|for|on|in"
        r"|need|is"
        r"|it|a|the|safe))*(?! [0-9])|(?:inside|internal|bend) (?:bend )?radius (?:for|on|in)",
        always("radius"),
        "its least inside radius",
        doubt=1,
        cue=("radius", "rad "),
    ),
    Shaped(
        r"(?:eats?|uses?|takes?) up|eats?|eaten(?: up)?",
        always("allowance"),
        "its allowance",
        doubt=1,
        cue=("eat", " up"),
    ),
)
_OWN_K = Shaped(
    r"(?:with |using |at |by )?(?:an? |my |our |the )?k(?:[ -]?factor)?(?: (?:of|is|=|was|at))* (?P<n>0?\.[0-9]+)",
    lambda m: m["n"],
    "K factor {}",
    cue=("k",),
)
_SIGNALS = (
    r"(?:flat )?sheets?(?: metal| steel)?|plates?|metal|bend(?:s|ing)?|bent|fold(?:s|ed|ing)?|(?:press |box "
    r"|finger |bar )?brake"
    r"|folder|brackets?|tabs?|mounts?|mounting|gussets?|channels?|u[ -]?channel|u[ -]?shaped?|z|hat section|parts?"
    r"|pieces?|strip|panel|pan"
    r"|inside|internal|outside|outer|inner|radius|rad|thick(?:ness)?|material|steel|flat|of|each|long|length"
    r"|flange[sd]?|legs?|lip|corners?|crack(?:s|ing|ed)?|without (?:it )?crack(?:ing|s)?"
    r"|before it|angle|degrees?|total|overall|minimum|min|gauge(?! (?:of|is|for) |$)|bend line|made (?:of"
    r"|from|in)|out of|from"
)
_ASKS_FOR = (
    r"sheet(?:s| metal)?|plates?|brackets?|tabs?|bend(?:ing)? deductions?|bend ded|deductions?|bend(?:ing)? allowances?"
    r"|set ?backs?|inside (?:bend )?rad\w*|internal rad\w*|inner rad\w*|press brake|box brake|finger brake"
    r"|brake press|folder"
    r"|fold(?:ed|ing|s)?|flat (?:length|blank|pattern|size)|blank (?:length|size)|developed (?:length|width)"
    r"|channels?\b.*\bblank|gussets?|flange[sd]?|hem|(?:5052|6061|2024|3003|1100)\b.*\bbend\w*|bend\w*"
    r" .*(?:5052|6061|2024|3003|1100)"
)


def _unit_of(thickness: str) -> str:
    """The unit that a thickness was said in; blank for a gauge number."""
    return units.split_quantity(thickness)[1] if not thickness.endswith(" ga") else ""


def _inside(radius: str, thickness: str) -> str:
    """The inside radius of one to the outside: it is less by the thickness. InputError where that is not known."""
    text = radius.removeprefix("outside ")
    unit = _unit_of(thickness)
    number, own = (text, unit) if _is_bare(text) else units.split_quantity(text)
    if not unit or own != unit:
        do = "say the inside radius, or radius and thickness in one unit"
        raise InputError(radius, "radius", "it is to the outside, and the thickness does not tell the inside", (), do)
    left = units.parse_number(number) - units.parse_number(units.split_quantity(thickness)[0])
    if left <= 0:
        why = "it is to the outside, and the sheet is thicker than that"
        raise InputError(radius, "radius", why, (), "say the inside radius")
    return f"{round(float(left), 4):g} {unit}"


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Bare lengths in the unit of the thickness; InputError where it tells none that they can have."""
    refuse_untold(values)
    unit = _unit_of(values.get("thickness", ""))
    found = {key: value for key, value in values.items() if key != "untold"}
    if found.get("radius", "").startswith("outside "):
        found["radius"] = _inside(found["radius"], found.get("thickness", ""))
    if "radius" in found and _is_bare(found["radius"]):
        found["radius"] = _given_unit(found["radius"], "radius", unit)
    if "legs" in found:
        legs = items(found["legs"], "legs")
        last = next((leg.rpartition(" ")[2] for leg in reversed(legs) if not _is_bare(leg)), "")
        whole = [f"{leg} {last}" if last and _is_bare(leg) else leg for leg in legs]
        if not unit:  # a gauge number: the radius may tell it
            unit = next((u for u in ("mm", "in") if found.get("radius", "").endswith(f" {u}")), "")
            whole = [f"{leg} {unit}".strip() if _is_bare(leg) else leg for leg in whole]
        is_small = unit in ("in", "ft") and all(_is_bare(leg) and _is_inches(leg, found["thickness"]) for leg in whole)
        found["legs"] = ", ".join(
            leg if not _is_bare(leg) else f"{leg} in" if is_small else _given_unit(leg, "legs", unit) for leg in whole
        )
    if found.get("system") == _COATED and unit:
        del found["system"]  # coated sheet, by its thickness
    if found.get("fact") == "flat length" and "legs" not in found:
        del found["fact"]  # what comes off any two legs
    if found.get("fact") == "radius":  # it hangs on metal and thickness alone
        read = [key for key in ("radius", "angle", "legs", "k") if re.match(r"[0-9.]", found.get(key, ""))]
        return {key: value for key, value in found.items() if key not in read}
    return found


def _is_inches(leg: str, thickness: str) -> bool:
    """Whether a bare leg of a sheet measured in inches would be no leg at all in millimetres."""
    number, _ = units.split_quantity(thickness)
    return float(units.parse_number(leg)) < _LEAST_LEG * float(units.parse_number(number)) * _INCH


_LEAST_LEG, _INCH = 3, 25.4  # thicknesses; millimetres


def _is_bare(length: str) -> bool:
    return re.fullmatch(r"[0-9./ -]+", length) is not None


def _given_unit(number: str, option: str, unit: str) -> str:
    """A bare length in the unit of the thickness; InputError where it can hardly have that one."""
    if "/" in number or number.startswith("."):
        return f"{number} in"
    if unit == "mm" and not number.startswith("0.0"):
        return f"{number} mm"
    if option == "radius" and number.startswith("0."):
        return f"{number} in"
    if option == "legs" and "." in number:
        return f"{number} in"
    do = f"say {number} mm, or {number} in"
    raise InputError(number, option, "no unit was said, and the thickness does not tell it", (), do)


def _open(values: dict[str, str], _data: Refdata) -> Open | None:
    """Usual radii where none was said; a shop's metals where the least radius or a gauge number hangs on one."""
    refuse_untold(values)
    is_least = values.get("fact") == "radius"
    radii = [] if "radius" in values or is_least else list(_USUAL_RADII)
    hangs = is_least or (values.get("thickness", "").endswith(" ga") and "system" not in values)
    metals = list(_USUAL_METALS[: 4 if is_least else 3]) if hangs and "material" not in values else []
    if radii and metals:
        return ("material", "radius"), [{"material": m, "radius": r} for m in metals for r in radii]
    if radii:
        return ("radius",), [{"radius": r} for r in radii]
    return (("material",), [{"material": m} for m in metals]) if metals else None


def topic(stock: Reader) -> Topic:
    """The topic of the answer; ``stock`` reads a metal."""
    return Topic(
        lambda: answer_in("folded.part", "sheet_bend"),
        "bend in sheet",
        {
            "thickness": _THICKNESS,
            "radius": _RADII,
            "angle": _ANGLES,
            "material": (
                Named(words_of("tubes", "grade", "tubes/sheet_bends"), tail="alumini?um(?: alloy)?|steel|alloy"),
                stock,
            ),
            "legs": _LEGS,
            "k": (_OWN_K,),
            "fact": _FACTS,
            "untold": UNTOLD,
            "system": (
                Shaped(r"galv(?:ani[sz]ed)?(?: (?:steel|sheet))*", always(_COATED), "galvanized", cue=("galv",)),
            ),
        },
        _SIGNALS,
        needs=("thickness",),
        asks_for=_ASKS_FOR,
        is_named=True,
        opens=_open,
        settle=_settle,
        columns={"material": ("tubes/sheet_bends", "grade")},
        unmoved="state standard service quality",
    )
