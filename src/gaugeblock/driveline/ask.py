"""What is asked about shafts, steels, gears and joints, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.errors import Ambiguous, GaugeblockError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_SCALE = r"hrc|rockwell c|rockwell b|rockwell|hrb|rc|brinell|bhn|hbw|hb|vickers|hv"
_SCALES = {
    "rockwell": "HRC",
    "rockwell c": "HRC",
    "rc": "HRC",
    "hrc": "HRC",
    "rockwell b": "HRB",
    "hrb": "HRB",
    "vickers": "HV",
    "hv": "HV",
}
_JOIN = r"(?: ?(?:,|and|or|vs|versus|against|to) ?| )"


def _hardness(match: re.Match[str]) -> str:
    return f"{match['n']} {_SCALES.get(match['scale'], 'HB')}"


_HARDNESS = (
    Shaped(rf"(?P<n>[0-9]+(?:\.[0-9]+)?) ?(?P<scale>{_SCALE})(?: hardness)?", _hardness),
    Shaped(rf"(?P<scale>{_SCALE}) (?:of |is )?(?P<n>[0-9]+(?:\.[0-9]+)?)", _hardness),
    Shaped(r"hardness (?:of |is )?(?P<n>[0-9]{2,3})", lambda m: f"{m['n']} ?", "hardness {}", doubt=6),
)


def _by_value(value: str, *, steel: str = "", data: Refdata) -> Sheet:
    """A hardness on other scales and as strength, which is the same for every steel of even structure."""
    del steel
    from gaugeblock.driveline.hardness import hardness

    number, scale = value.split(" ")
    if scale == "?":
        raise Ambiguous(
            number, "hardness", "the scale was not said", ("HRC", "HRB", "HB", "HV"), "say the scale, 30 HRC"
        )
    return hardness(scale, number, data=data)


def _ratios(match: re.Match[str]) -> str:
    from re import findall

    return ", ".join(findall(r"[0-9]+\.[0-9]+|[0-9]+[/:][0-9]+|[0-9]+", match["all"])).replace(":", "/")


def _tyre(match: re.Match[str]) -> str:
    code = match["code"]
    if code:
        return code.upper().replace(" ", "").replace("-", "R") if "r" not in code else code.upper().replace(" ", "")
    return f"{match['n']} in"


def _settle_joint(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Both joints at one angle."""
    if values.pop("both", ""):
        values.setdefault("second", values["angle"])
    return values


def _answer(module: str, name: str) -> Callable[..., Sheet]:
    from importlib import import_module

    return getattr(import_module(f"gaugeblock.driveline.{module}"), name)  # type: ignore[no-any-return]


def _open_steel(values: dict[str, str], data: Refdata) -> Open | None:
    """The treatments of a steel that was named alone, each with what its shaft yields at."""
    return _treatments("grade", values, _answer("steel", "steel"), data)


def _open_axle(values: dict[str, str], data: Refdata) -> Open | None:
    """The same of an axle shaft."""
    return _treatments("material", values, _answer("axles.answer", "axle"), data) if "material" in values else None


def _open_shaft(values: dict[str, str], data: Refdata) -> Open | None:
    """A propeller shaft of each material, where none was named."""
    if "material" in values or "wall" not in values:
        return None
    found = dict.fromkeys(row["material"] for row in data.table("driveline/shaft_tubes").rows if not row.standing)
    return ("material",), [{"material": m} for m in found]


def _treatments(of: str, values: dict[str, str], answer: Callable[..., Sheet], data: Refdata) -> Open | None:
    if "treatment" in values:
        return None
    if "hardness" in values:  # its strength follows its hardness, whatever it was tempered at
        return ("treatment",), [{"treatment": "quenched and tempered"}]
    table = data.table("driveline/steels")
    at = {k.name: i for i, k in enumerate(table.keys)}
    found: list[dict[str, str]] = []
    for row in table.rows:
        if row.key[at["steel"]] != values[of] or row.standing:
            continue
        one = {"treatment": row.key[at["treatment"]]}
        temper = row.key[at["temper"]]
        if temper not in ("any", "not stated") and "temper" not in values:
            one["temper"] = temper
        if one in found:
            continue
        try:
            answer(**{**values, **one}, data=data)
        except GaugeblockError:
            continue
        found.append(one)
    open_keys = ("treatment", "temper") if any("temper" in f for f in found) else ("treatment",)
    return open_keys, [{k: f.get(k, "any") for k in open_keys} for f in found]


STEEL = Topic(
    lambda: _answer("steel", "steel"),
    "shaft steel",
    {
        "grade": (Named(words_of("driveline", "steel", "driveline/steels"), tail="steel|shaft|axle|bar", doubt=0),),
        "treatment": (
            Named(words_of("driveline", "treatment", "driveline/steels")),
            Shaped(r"(?:at |to |treated to )?(?P<n>[0-9]{3}) ?ksi", lambda m: f"quenched and tempered to {m['n']} ksi"),
        ),
        "temper": (
            amount(
                "temperature",
                before=r"(?:tempered|temper|drawn|draw)(?: at| to| of)?",
                bare="degF",
                say="tempered at {}",
            ),
            amount("temperature", after="temper", bare="degF", say="tempered at {}"),
            amount("temperature", before="at", say="tempered at {}", doubt=2),
            amount("temperature", say="tempered at {}", doubt=3),
        ),
        "hardness": _HARDNESS,
        "shaft": (
            amount(
                "length",
                after=r"(?:shaft|axle(?: shaft)?|(?:round )?bar|dia(?:meter)?|round)",
                bare="in",
                say="shaft {}",
            ),
            amount("length", before=r"(?:shaft|axle|diameter|dia)(?: of| is)?", say="shaft {}"),
            amount("length", say="shaft {}", doubt=3),
        ),
        "length": (amount("length", after="long", say="{} long"),),
        "torque": (amount("torque", say="{}"),),
        "yield_strength": (amount("stress", before=r"yield(?: strength)?(?: of| is)?", say="yield {}"),),
    },
    r"(?:yield|tensile|torsional)(?: strength| yield)?|strength|how"
    r" strong|strong|hold|carr(?:y|ies)|enough|torque|twist|hard(?:ness|ened)?|treated|heat treat(?:ed|ment)?"
    r"|steel|bars?|shafts?|axles?(?: shafts?)?|good for|take|stand|break|breaks|survive",
    needs=("grade",),
    table="driveline",
    job_keys={"grade": "steel", "shaft": "diameter"},
    opens=_open_steel,
)
HARDNESS = Topic(
    lambda: _by_value,
    "hardness",
    {"value": _HARDNESS, "steel": (Named(words_of("driveline", "steel", "driveline/steels"), say="steel {}"),)},
    r"(?:in|to|as|into|equals?|is)"
    rf" (?:{_SCALE}|ksi|mpa|psi|tensile)|convert(?:ed)?|conversion|hard(?:ness)?|strength|tensile(?:"
    r" strength)?|equivalent|ksi|psi|steel",
    needs=("value",),
)


_RATIO = r"(?:[0-9]\.[0-9]{1,2}(?::1)?|[0-9]{2}[/:][0-9]{1,2})"


GEARING = Topic(
    lambda: _answer("gears.answer", "gearing"),
    "engine speed",
    {
        "ratios": (
            Shaped(
                rf"(?P<all>{_RATIO}(?:{_JOIN}{_RATIO})*)(?: (?:to 1|to one))?(?:"
                r" (?:gears?|gearing|axles?|ratios?|rear(?: end| axle)?|diffs?|final(?: drive)?|ring and pinion))*",
                _ratios,
                "axle ratio {}",
            ),
        ),
        "tyre": (
            Shaped(
                r"(?P<code>p?[0-9]{3} ?/ ?[0-9]{2} ?[zr-]?r? ?[0-9]{2})|(?P<n>[0-9]{2}(?:\.[0-9]+)?)"
                r" ?(?:inch|in|\")? (?:tall )?(?:tires?|tyres?|rubber)",
                _tyre,
                "tyre {}",
            ),
        ),
        "speed": (amount("speed", before="at|doing|for", say="at {}"), amount("speed", say="at {}")),
        "gears": (
            Shaped(
                rf"(?:with |and |in )?(?:an? )?(?P<n>0?\.[0-9]+|{NUMBER}) (?:overdrive|top(?:"
                r" gear)?|od|fifth|5th|sixth|6th)",
                lambda m: m["n"] if m["n"][0] != "." else f"0{m['n']}",
                "top gear {}",
            ),
        ),
        "transfer": (Shaped(rf"(?P<n>{NUMBER}) transfer(?: case)?", lambda m: m["n"], "transfer {}"),),
    },
    r"(?:engine )?(?:rpms?|revs?|revolutions)|engine"
    r" speed|turn(?:ing)?|tires?|tyres?|gears?|gearing|axle|cruise|cruising|highway|top speed|speed|rear end",
    needs=("ratios",),
    table="gearing",
    job_keys={"ratios": "ratios[]", "gears": "gears[]"},
)


JOINT = Topic(
    lambda: _answer("joints.answer", "joint"),
    "universal joint",
    {
        "angle": (
            amount("angle", say="{}"),
            Shaped(rf"(?P<n>{NUMBER})(?= and {NUMBER} ?deg)", lambda m: f"{m['n']} deg"),
        ),
        "both": (Shaped("both(?: of the)?(?: ends)?", always("yes"), "both joints"),),
        "second": (
            amount("angle", before="and|other(?: end)?(?: is| at)?|second(?: is| at)?", say="second {}"),
            amount("angle", say="second {}", doubt=1),
        ),
        "phasing": (
            Shaped(r"(?:in|correct(?:ly)?) phased?", always("in phase")),
            Shaped(r"(?:out of|wrong) phase|90 deg(?:rees)? out", always("wrong phase")),
        ),
        "speed": (amount("rotational speed", before="at", say="at {}"), amount("rotational speed", say="at {}")),
    },
    r"(?:u|universal|uj|cardan|hooke'?s?)[- ]?joints?|ujs?|joints?|drive ?shaft|prop(?:eller)?[-"
    r" ]?shaft|angles?|vibrat\w*|working|operating",
    needs=("angle",),
    table="joints",
    settle=_settle_joint,
)
SETUP = Topic(
    lambda: _answer("setups.answer", "setup"),
    "axle set-up",
    {
        "component": (Named(words_of("driveline", "component", "driveline/setup")),),
        "step": (
            Named(words_of("driveline", "step", "driveline/setup")),
            Shaped(
                r"backlash|preload|run-?out|end ?play|pattern|depth",
                lambda m: m[0].replace("-", "").replace("end play", "end play"),
            ),
        ),
        "wear": (Named(words_of("driveline", "wear"), tail="bearings?|gears?|parts?"),),
        "as_left": (
            amount("length", before=r"(?:i have|i've got|i got|left at|left|reads?|measured)", say="as left {}"),
            amount("length", say="as left {}", doubt=1),
        ),
    },
    r"set(?:ting)?(?: ?up)?|axle|diff(?:erential)?|rear(?: end)?|gears?|crown ?wheel|setting|how much|clearance|torque",
    needs=("component", "step"),
    settle=lambda values, _data: {"axle": "rear", **values},
)
SPLINE = Topic(
    lambda: _answer("splines.answer", "spline"),
    "spline",
    {
        "pitch": (
            Shaped(r"(?P<p>[0-9]{2}/[0-9]{2})(?: pitch)?", lambda m: m["p"], "{} pitch"),
            Named(words_of("driveline", "pitch")),
        ),
        "teeth": (
            Shaped(r"(?P<n>[0-9]{1,2})[- ]?(?:tooth|teeth|splines?|t)", lambda m: m["n"], "{} teeth"),
            Shaped(r"(?P<n>[0-9]{2})", lambda m: m["n"], "{} teeth", doubt=2),
        ),
        "torque": (amount("torque", say="{}"),),
        "length": (amount("length", after=r"(?:long|engaged|engagement|of engagement)", say="{} long"),),
    },
    r"(?:involute )?splines?|splined|shafts?|yoke|dia(?:meter)?|major|minor|pitch|sizes?|axle|how"
    r" big|torque|carry|hold",
    needs=("pitch", "teeth"),
    table="splines",
    job_keys={"teeth": "teeth#"},
)
AXLE = Topic(
    lambda: _answer("axles.answer", "axle"),
    "axle shaft",
    {
        "material": (Named(words_of("driveline", "steel", "driveline/steels"), tail="steel|shafts?|axles?"),),
        "treatment": (Named(words_of("driveline", "treatment", "driveline/steels")),),
        "temper": (amount("temperature", before=r"(?:tempered|drawn)(?: at| to)?", bare="degF", say="tempered at {}"),),
        "diameter": (
            amount("length", after=r"(?:axle(?: shafts?)?|shafts?|dia(?:meter)?|thick)", bare="in", say="shaft {}"),
            amount("length", say="shaft {}", doubt=2),
        ),
        "length": (amount("length", after="long", say="{} long"),),
        "engine_torque": (
            amount("torque", after=r"(?:engine|motor|of torque|torque)", say="engine {}"),
            amount("torque", say="engine {}", doubt=1),
        ),
        "gear": (
            Shaped(
                rf"(?P<n>{NUMBER})(?: to 1)? (?:first(?: gear)?|1st(?: gear)?|low(?: gear)?)",
                lambda m: m["n"],
                "first gear {}",
            ),
            Shaped(rf"(?:first|1st|low)(?: gear)?(?: of| is)? (?P<n>{NUMBER})", lambda m: m["n"], "first gear {}"),
        ),
        "ratio": (
            Shaped(
                r"(?P<n>[0-9]\.[0-9]{1,2})(?: to 1)? (?:gears?|ratio|rear(?: end)?|final(?: drive)?|axle ratio|diff)",
                lambda m: m["n"],
                "axle ratio {}",
            ),
        ),
        "differential": (
            Shaped("open(?: diff(?:erential)?)?", always("open"), "open differential"),
            Shaped("(?:locked|spool|welded|locker)(?: diff(?:erential)?)?", always("locked"), "locked differential"),
            Shaped(
                "(?:limited[- ]slip|lsd)(?: diff(?:erential)?)?",
                always("limited slip"),
                "limited slip differential",
            ),
        ),
        "hardness": _HARDNESS,
        "wheel_load": (
            amount("mass", after="(?:on (?:the|that|one|each) (?:wheel|tire|tyre))", say="{} on the wheel"),
        ),
        "converter": (Shaped("manual|no converter|clutch", always("none"), "no converter"),),
    },
    r"(?:will|does|do|can|how much)(?: it| an?| my| the)?|axle(?: shafts?)?|half ?shafts?|shafts?|holds?|takes?|carry"
    r"|snap|break|twist|survive|live|behind|engine|motor|torque|strong|enough",
    needs=("engine_torque",),
    table="axles",
    asks_for=r"axles?|half ?shafts?",
    opens=_open_axle,
)
_PROPELLER = r"drive ?shafts?|prop(?:eller)?[- ]?shafts?|prop"
SHAFT = Topic(
    lambda: _answer("propshafts.answer", "shaft"),
    "propeller shaft",
    {
        "od": (
            amount("length", after=rf"(?:od|tube|{_PROPELLER})", bare="in", say="tube {}"),
            amount("length", say="tube {}", doubt=2),
        ),
        "wall": (
            Shaped(
                r"(?P<n>0?\.[0-9]+)(?: ?(?:in|inch))?(?: ?wall)?",
                lambda m: f"0.{m['n'].split('.')[1]} in",
                "{} wall",
            ),
            amount("length", after="wall", bare="in", say="{} wall"),
        ),
        "material": (
            Shaped("alumini?um|ally|6061", always("aluminium"), "{}"),
            Shaped("(?:mild )?steel|dom", always("steel"), "{}"),
        ),
        "length": (
            amount("length", after="(?:long|between (?:the )?joints|joint to joint)", bare="in", say="{} long"),
            amount("length", before="length(?: of| is)?", bare="in", say="{} long"),
            amount("length", say="{} long", doubt=3),
        ),
        "speed": (amount("rotational speed", before="at", say="at {}"), amount("rotational speed", say="at {}")),
    },
    rf"{_PROPELLER}|whips?|whirls?|whipping|critical(?: speed)?|safe|vibrat\w*|how fast|spin|turn|too long|tube|steel",
    needs=("od", "length"),
    table="shafts",
    asks_for=rf"{_PROPELLER}|whips?|whirls?|whipping",
    is_named=True,  # two lengths alone are of anything
    opens=_open_shaft,
)
TOPICS = (HARDNESS, STEEL, AXLE, GEARING, JOINT, SETUP, SPLINE, SHAFT)
