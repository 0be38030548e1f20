"""What is asked of a shaft steel, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known
from gaugeblock.driveline.ask.common import HALF_SHAFT, HARDNESS_SAID, SHEAR, answer_of
from gaugeblock.driveline.ask.shaft_said import (
    BORE_SAID,
    HOLLOW,
    HOLLOW_SAID,
    MILD_SAID,
    SOFT,
    SOFT_SAID,
    left_open,
    said_alone,
)
from gaugeblock.errors import Ambiguous, InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _no_temper_wanted(values: dict[str, str]) -> None:
    """Raises InputError where the temper is what is wanted: no answer turns a hardness into one."""
    if "wanted_temper" in values and "grade" in values:
        grade = values["grade"]
        hard = values.get("hardness", "?")
        strength = "" if "?" in hard else f", `gaugeblock hardness {hard}` that of a hardness"
        raise InputError(
            "which temper",
            f"read as shaft steel {grade}",
            "no answer here says at what to temper for a hardness; the steelmaker's or heat treater's curve does",
            (),
            f"`gaugeblock steel {grade} --compare temper` shows the strength at each temper{strength}",
        )


PREHARD = "prehard"


def _no_prehard(values: dict[str, str]) -> None:
    """Raises Ambiguous where a bar was bought hardened and nobody said how hard: its strength follows its hardness."""
    if PREHARD in values and not {"hardness", "yield_strength"} & values.keys():
        grade = values.get("grade", "4140")
        raise Ambiguous(
            "hardness",
            f"read as shaft steel {grade}, pre-hardened",
            "how hard the pre-hardened bar is was not said; such bar is commonly sold at 28 to 32 HRC, and its"
            " certificate says it",
            (),
            f'say its hardness with the rest, as "{grade} 28 HRC"',
        )


def _open_steel(values: dict[str, str], data: Refdata) -> Open | None:
    """The treatments of a steel that was named alone, each with what its shaft yields at."""
    own = _without_splines(values, data)
    return left_open("grade", own, answer_of("steel", "steel"), data)


def _without_splines(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """How many splines a shaft has says nothing of the diameter that was said."""
    _no_temper_wanted(values)
    _no_prehard(values)
    return {k: v for k, v in values.items() if k not in ("splines", PREHARD)}


def _settle_steel(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Without the splines, whose root is the shaft that is said, and without a temper where a treatment of several has
    none; a hardness that is given is not asked for.

    Raises InputError as ``_no_temper_wanted`` does.
    """
    _no_temper_wanted(values)
    _no_prehard(values)
    is_given = "hardness" in values and values.get("fact") == "hardness"
    is_judged = bool({"shaft", "torque"} & values.keys()) and "yield" in values.get("fact", "")  # by its yield
    left_out = {"splines", PREHARD, *(("fact",) if is_given or is_judged else ())}
    return {k: v for k, v in said_alone(values).items() if k not in left_out}


# ``temper 4140`` names a steel: nobody tempers at 4140 degF.
_NO_STEEL = r"(?! (?:10[1-9]|15[0-9]|4[0-9]{2}|[5-9][0-9]{2})[0-9]\b)"
_MOST_THICK = 250  # mm, of a shaft
STEEL = Topic(
    lambda: answer_of("steel", "steel"),
    "shaft steel",
    {
        "grade": (
            Named(words_of("driveline", "steel", "driveline/steels"), tail="steel|shaft|axle|bar", doubt=0),
            *MILD_SAID,
        ),
        "treatment": (
            Named(words_of("driveline", "treatment", "driveline/steels")),
            Shaped(
                r"(?P<in>oil|water)[- ]quench(?:ed|ing)?(?: (?:it|them|the|my))?",
                lambda m: f"{m['in']} quenched and tempered",
                cue=("quench",),
            ),
            Shaped(
                r"(?:at |to |treated to )?(?P<n>[0-9]{3}) ?ksi(?! yield)",
                lambda m: f"quenched and tempered to {m['n']} ksi",
            ),
            Shaped(
                r"(?:condition )?h ?-?(?P<n>900|925|1025|1075|1100|1150)",
                lambda m: f"{'double aged' if m['n'] == '1150' else 'aged'} H{m['n']}",
                "{}",
                cue=("h9", "h1", "h 9", "h 1", "h-9", "h-1"),
            ),
        ),
        PREHARD: (
            Shaped(r"pre-?hard(?:ened)?", always("yes"), "pre-hardened", cue=("prehard", "pre-hard")),
            Shaped(r"pre hard(?:ened)?", always("yes"), "pre-hardened", cue=("pre hard",)),
        ),
        "temper": (
            amount(
                "temperature",
                before=rf"(?:tempered|temper|drawn|draw)(?: it| them)?(?: at| to| of)?{_NO_STEEL}",
                bare="degF",
                say="tempered at {}",
            ),
            amount("temperature", after="temper", say="tempered at {}"),
            Shaped(r"(?P<n>[3-9][0-9]{2}|1[0-3][0-9]{2}) temper", lambda m: f"{m['n']} degF", "tempered at {}"),
            amount("temperature", before="at", say="tempered at {}", doubt=2),
            amount("temperature", say="tempered at {}", doubt=3),
        ),
        "wanted_temper": (
            Shaped(
                r"(?:at )?(?:what|which|how hot)(?: temp(?:erature)?| heat)?(?: (?:to|do|should|i|you|we))*"
                r" (?:temper|draw)(?:ing|ed)?"
                r"(?: (?:temp(?:erature)?|heat))?(?: back)?"
                r"|(?:temper|draw)(?:ing)?(?: (?:temp(?:erature)?|heat))?(?= (?:for|to get) )",
                always("asked"),
                "its temper asked",
            ),
        ),
        "hardness": HARDNESS_SAID,
        "fact": (
            Shaped(
                r"(?:what )?(?:ultimate )?tensile(?: strength| stress)?|uts|ultimate(?: strength)?|break(?:s|ing)?(?:"
                r" strength)?",
                always("tensile"),
                "tensile strength",
            ),
            Shaped(
                r"(?:what )?(?:torsion(?:al)?|shear) yields?(?: (?:strength|stress|point))?"
                r"|yields?(?: (?:strength|stress|point))? in (?:torsion|shear)",
                always("torsional yield"),
                "torsional yield",
                cue=("torsion", "shear"),
            ),
            Shaped(
                r"(?:what )?yields?(?: (?:strength|stress|point))?",
                always("yield"),
                "yield strength",
            ),
            Shaped(
                r"(?:what |which )?(?:rockwell|hrc|brinell)?(?: )?hardness|(?:what|which) (?:rockwell|hrc"
                r"|brinell)|how hard"
                r"|rockwell(?= should|$)",
                always("hardness"),
                "hardness",
            ),
        ),
        "splines": (Shaped(r"(?P<n>[0-9]{2}) ?(?:splines?|spl)", lambda m: m["n"], "{} splines"),),
        "shaft": (
            Shaped(  # nobody has a shaft so many inches thick
                r"(?P<n>1[3-9]|[2-9][0-9])(?: (?:solid|round))* (?:dia(?:meter)?)", lambda m: f"{m['n']} mm", "shaft {}"
            ),
            amount(
                "length",
                after=r"(?:shaft|axle(?: shaft)?|(?:round )?bar|(?:minor |root )?dia(?:meter)?|round|od|o\.d|outside)",
                bare="in",
                say="shaft {}",
                most=_MOST_THICK,
            ),
            amount("length", before=r"(?:shaft|axle|diameter|dia)(?: of| is)?", say="shaft {}", most=_MOST_THICK),
            amount("length", say="shaft {}", doubt=3, most=_MOST_THICK),
        ),
        "bore": BORE_SAID,
        HOLLOW: HOLLOW_SAID,
        SOFT: SOFT_SAID,
        "length": (
            amount("length", after="long", say="{} long"),
            amount("length", after=r"(?:axle|(?:half ?)?shaft)(?: shaft)?", say="{} long", least=_MOST_THICK),
        ),
        "torque": (amount("torque", say="{}"),),
        "yield_strength": known("stress", "yields?(?: stress)?", "yield {}", cue=("yield",)),
        "shear_modulus": known("stress", SHEAR, "shear modulus {}", cue=("shear", "rigid", "torsion")),
    },
    rf"{HALF_SHAFT}|(?:torque )?capacity|outside|od|o\.d|torsion|"
    r"(?:what|which) (?:size|diameter|thickness)(?: (?:of )?(?:an? )?(?:shaft|axle|bar))?|how (?:big|thick)(?= an?\b)"
    r"|(?:twisting|turning)(?: load| torque| force)?|load(?= (?:makes|will|does|can|before|till|until))"
    r"|(?:makes?|making) it yield|turn(?:ed|ing)?(?: (?:it|an?|the|my|that))? down|till|until"
    r"|(?:at )?(?:the )?(?:smallest|thinnest|narrowest)(?: (?:bit|part|point|place|end|spot))?|come(?:s)? out"
    r"|starts? to"
    r"|spline it"
    r"|(?:yield|torsional)(?: strength| yield)?|strength|how"
    r" strong|strong|hold|carr(?:y|ies)|enough|torque|twist|hard(?:ness|ened)?|treated|heat treat(?:ed|ment)?"
    r"|rc|hrc|rockwell|temper(?:ed)?|quenched|splined|it|steel|bars?|shafts?|axles?(?: shafts?)?|good"
    r" for|stub|round|take|stand|yields?|before it|limit|survive|thick|solid|before|carry|twists?|under"
    r"|(?:safe )?max(?:imum)?|most|sees|mid[- ]?shafts?|(?:input|output|lay|jack)[- ]?shafts?"
    r"|pull(?:er|ing)|(?:(?:race|racing) )?gears|thickness|big|diameter|stronger|weaker",
    needs=("grade",),
    table="driveline",
    job_keys={"grade": "steel", "shaft": "diameter"},
    columns={"grade": ("driveline/steels", "steel"), "treatment": ("driveline/steels", "treatment")},
    settle=_settle_steel,
    opens=_open_steel,
)
_MOST_WALL = 15  # mm
_OF_TUBE = Shaped(
    r"(?P<n>[1-6](?:\.[0-9]+)?)(?: od)?(?= (?:x|by) 0?\.| 0?\.[0-9]{2,3} ?wall)",
    lambda m: f"{m['n']} in",
    "{}",
    cue=(" x ", " by ", "wall"),
)
STRESS = Topic(
    lambda: answer_of("stress", "shaftstress"),
    "shear stress of a shaft",
    {
        "diameter": (
            amount(
                "length",
                after=r"(?:solid |round )*(?:shafts?|axles?(?: shaft)?|bars?|dia(?:meter)?|solid|round|across|thick"
                r"|od)",
            ),
            amount("length", before=r"(?:shaft|axle(?: shaft)?|bar|dia(?:meter)?|down to)(?: of| is| to)?"),
            _OF_TUBE,
            amount("length", doubt=1),
        ),
        "torque": (amount("torque", say="under {}"),),
        "bore": (
            amount("length", after="(?:bore|hole|inside)", say="bore {}"),
            amount("length", before="(?:bored?|bore of|hole of|hollow)", say="bore {}"),
        ),
        "wall": (
            amount("length", after="wall", bare="in", say="{} wall", most=_MOST_WALL, cue=("wall",)),
            amount("length", before="x|by", say="{} wall", most=_MOST_WALL, cue=("x ", "by ")),
            amount("length", before="wall(?: (?:of|is))?", say="{} wall", most=_MOST_WALL, cue=("wall",)),
        ),
    },
    rf"{HALF_SHAFT}|"
    r"(?:what |how much )?(?:shear |torsional |torsion )?stress(?:es)?|ksi|mpa|psi|shafts?|axles?|bars?|solid"
    r"|round|steel|od|carrying|sees"
    r"|carr(?:y|ies)|torque|tub(?:e|ing)|load|through|across|under|with|turned|putting|going|surface|see|has"
    r"|takes?|twist(?:ing)?",
    needs=("diameter", "torque"),
    asks_for=r"stress(?:es)?",
    is_named=True,
    unmoved="metal finish standard service quality",
)
SHEAR_YIELD = Topic(
    lambda: answer_of("stress", "shaftstress"),
    "torque at which a shaft yields",
    {
        "diameter": (
            amount("length", before=r"(?:plain|solid|round)(?: (?:plain|solid|round))*", after=r"(?:axle|shaft|bar)s?"),
            _OF_TUBE,
            *STRESS.slots["diameter"],
        ),
        "shear_yield": (
            amount(
                "stress",
                before=r"(?:(?:yields?|yielding|let'?s? go|gives?|goes) (?:in|under) )?(?:shear(?:ing)?|torsion)(?:"
                r" yields?)?"
                r"(?: (?:strength|stress|is|of|at|limit|about))*",
                say="shear yield {}",
            ),
            amount(
                "stress",
                before=r"(?:yields?|yielding|let'?s? go|gives?)(?: (?:at|about|around|is))*",
                after=r"(?:in|under) (?:shear(?:ing)?|torsion)",
                say="shear yield {}",
            ),
            amount("stress", after=r"(?:in |of )?shear(?: yield)?(?: strength)?", say="shear yield {}"),
        ),
        **{key: STRESS.slots[key] for key in ("bore", "wall")},
    },
    STRESS.signals + r"|thinnest(?: part| point)?|how much|its"
    r"|(?:before |until |when )?(?:it )?(?:yields?|twists?|takes? a set|let'?s go)",
    needs=("diameter", "shear_yield"),
    asks_for=r"torque|carry|take|takes|hold|stand|newton metres|pounds",
    is_named=True,
    unmoved="metal finish standard service quality",
)
_OF_A_TUBE = (
    r"|(?:dom|erw|drawn|welded|seamless|steel|mild steel)(?: steel)? (?:tub(?:e|ing)|pipe)|dom|erw|steel|tub(?:e"
    r"|ing)s?|limit|max(?:imum)?|most|safe"
)
_TENSION = r"(?:tensile |tension )?yields?(?: (?:strength|stress|point|in tension))*"
# The same of a steel of which one knows where it yields in tension, as a certificate says it.
TENSILE_YIELD = Topic(
    SHEAR_YIELD.answer,
    SHEAR_YIELD.noun,
    {
        "diameter": SHEAR_YIELD.slots["diameter"],
        "yield_strength": (
            amount(
                "stress",
                after=rf"(?:{_TENSION})(?! ?(?:in |under )?(?:shear|torsion))",
                say="yields in tension at {}",
                cue=("yield",),
            ),
            amount(
                "stress",
                before=rf"(?:{_TENSION})(?: (?:of|at|is|about|around))*",
                say="yields in tension at {}",
                cue=("yield",),
            ),
        ),
        **{key: STRESS.slots[key] for key in ("bore", "wall")},
    },
    SHEAR_YIELD.signals + _OF_A_TUBE,
    needs=("diameter", "yield_strength"),
    asks_for=SHEAR_YIELD.asks_for,
    is_named=True,
    unmoved="metal finish standard service quality",
)


def _no_steel(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Without the steel, which twists as any other does, soft or hard."""
    return {k: v for k, v in values.items() if k not in ("grade", "hardness")}


# How far a shaft of any steel twists.
TWIST = Topic(
    STRESS.answer,
    "twist of a shaft",
    {
        "diameter": STEEL.slots["shaft"],
        "length": (
            Shaped(r"per (?:met(?:re|er)|m)", always("1 m"), "a metre long", cue=("per ",)),
            Shaped(r"per (?:foot|ft)", always("1 ft"), "a foot long", cue=("per ",)),
            amount("length", after="of(?: an?)?", say="{} long", cue=("of",)),
            amount(  # the longer of two, before the one that is across
                "length",
                before="(?:in|over|of)(?: an?| the)?",
                followed=r"(?:of )?(?:an? )?[0-9][0-9/. -]*(?:inch |in |mm )?(?:bar|rod|shaft|axle|half ?shaft)",
                say="{} long",
                least=200,
            ),
            amount(
                "length",
                followed=r"(?:of )?(?:an? )?[0-9][0-9/. -]*(?:inch |in |mm )?(?:bar|rod|shaft|axle|half ?shaft)",
                say="{} long",
                least=200,
            ),
            *STEEL.slots["length"],
        ),
        **{key: STRESS.slots[key] for key in ("torque", "bore")},
        **{key: STEEL.slots[key] for key in ("grade", "hardness")},
    },
    STRESS.signals
    + r"|(?:angle of )?twist(?:s|ing)?(?: angle)?|wind(?:s|ing)?(?: ?-?up)?|how (?:far|much)|angle|degrees",
    needs=("diameter", "length", "torque"),
    settle=_no_steel,
    asks_for=r"(?:angle of )?twist(?:s|ing)?|wind(?:s|ing)?(?: ?-?up)?",
    is_named=True,
    unmoved="metal finish state standard service quality",
)


def _no_yield(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: what a tube bears hangs on where its steel yields, and nobody said that."""
    tube = f"{values['diameter']} x {values['wall']}"
    why = (
        "what torque a tube bears hangs on where its steel yields, and the name of its make does not say it; a weld"
        " beside it yields sooner"
    )
    do = (
        "take the yield from the mill certificate, or from the standard that it is sold to:"
        f' `gaugeblock ask 1026 DOM tube yield`. Then ask "{tube} tube yields at 70 ksi torque"'
    )
    raise Ambiguous("yield strength", f"read as torque of a tube, {tube}", why, (), do)


TUBE_TORQUE = Topic(
    SHEAR_YIELD.answer,
    "torque of a tube",
    {
        "diameter": (
            amount("length", before=r"(?:tube|tubing)(?: of)?"),
            _OF_TUBE,
            amount("length", doubt=1),
        ),
        "wall": STRESS.slots["wall"],
        "torque": STRESS.slots["torque"],
    },
    TENSILE_YIELD.signals + r"|prop(?:eller)?[- ]?shafts?|drive ?shafts?",
    needs=("diameter", "wall"),
    opens=_no_yield,
    asks_for=r"torque.*|take|carry|hold|stand|twist",
    is_named=True,
    unmoved="finish standard service quality",
)
