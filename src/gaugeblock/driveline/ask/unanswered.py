"""What is asked of the driveline that no answer here works out: each refusal says why, and what to ask instead."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, amount
from gaugeblock.driveline.ask.common import answer_of
from gaugeblock.driveline.ask.setups import SPLINE
from gaugeblock.driveline.ask.steels import STEEL
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _no_other_standard(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: a steel of another standard is not taken for one of the tables."""
    name = values["other_steel"]
    asked = ""
    if "shaft" in values and "torque" in values:
        asked = (
            f'first see what it must bear: `gaugeblock shaftstress "{values["shaft"]}" --torque "{values["torque"]}"`; '
        )
    raise Ambiguous(
        name,
        "",
        "it is a British or European name, and the tables have no steel under it; a steel of another standard is not"
        " taken for it",
        (),
        f"{asked}take its yield from the mill certificate, or test its hardness: `gaugeblock hardness 28 HRC` turns"
        " that into strength",
    )


OTHER_STEEL = Topic(
    STEEL.answer,
    STEEL.noun,
    {
        "other_steel": (
            Shaped(
                # EN24T, 817M40, 42CrMo4
                r"(?P<n>(?!en ?(?:8|16|19|24)(?= |$)|817m40(?= |$)|709m40(?= |$)|605m36(?= |$)|080m40(?= |$))"
                r"(?:en ?[0-9]{1,2}[a-z]{0,2}|[0-9]{3}[mah][0-9]{2}t?|[0-9]{2}(?:cr|mn|ni|mo|si|v)+[0-9]{0,2}))"
                r"(?: steel| bar)*",
                lambda m: m["n"].upper().replace(" ", ""),
            ),
        ),
        **{key: readers for key, readers in STEEL.slots.items() if key != "grade"},
    },
    STEEL.signals + r"|used for(?: what)?|for what|(?:what|which)(?: is|'?s)?(?: the)?|condition|[a-z] condition"
    r"|equivalent|same as|like",
    needs=("other_steel",),
    opens=_no_other_standard,
    unmoved="metal finish state form standard service quality",
)


def _no_equal(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: no table sets a steel of one standard equal to one of another."""
    raise Ambiguous(
        values["other_steel"],
        "",
        "no table sets a steel of one standard equal to one of another; nearly the same analysis is not the same"
        " strength",
        (),
        f"compare what each guarantees: `gaugeblock steel {values['other_steel']}`, and the mill certificate of the"
        f" bar",
    )


_SAME = (
    r"(?:the )?same (?:steel )?as|equivalents?|equal(?:s)? to|like|cross[- ]reference"
    r"|called in (?:america|the us|sae|aisi)"
)
EQUIVALENT = Topic(
    STEEL.answer,
    STEEL.noun,
    {
        "other_steel": (
            Shaped(
                r"(?P<n>en ?(?:8|16|19|24)|817m40|709m40|605m36|080m40)(?: steel| bar)*",
                lambda m: m["n"].upper().replace(" ", ""),
            ),
        ),
        "like": (
            Shaped(
                rf"(?:what |which )?(?:is |are )?(?:{_SAME})(?: (?P<n>[0-9]{{4}}))?",
                lambda m: m["n"] or "another",
                "its equal",
            ),
        ),
    },
    r"steels?|what|which|is|the|of|in|an?|to|american|sae|aisi|din|european",
    needs=("other_steel", "like"),
    opens=_no_equal,
    asks_for=_SAME,
    is_named=True,
    unmoved="metal finish state form standard service quality",
)


_THAN = (
    r"(?:over|vs|versus|against|than|to|or|and|instead of|from|up from|compared (?:to|with))"
    r"(?: (?:an?|the|my|old|new))*"
)
_STRONGER = r"(?:(?:is|are|be|how|much|any|that) )*(?:stronger|tougher)"
_TEETH = r"[1-6][0-9]"
_SPLINES = r"[- ]?(?:splines?|splined|spl)(?: (?:shafts?|axles?|axle shafts?|half ?shafts?))?"
_THICK = rf"(?![0-9]{{4}}){NUMBER}(?: ?(?:inch(?:es)?|in|mm|\"))?"
_SHAFTS = r"(?: (?:solid|round))*(?: (?:axle )?(?:shafts?|axles?|bars?|half ?shafts?))"


def _pair(one: str, other: str, of: str) -> Shaped:
    """Two sizes of shafts that are set against each other; that of one of them may go without its noun."""
    return Shaped(
        rf"(?:(?P<a>{one}){other} {_THAN} (?P<b>{one})(?:{other})?|(?P<c>{one})(?:{other})? {_THAN}"
        rf" (?P<d>{one}){other}"
        rf"|(?P<e>{one})(?:{other})? {_STRONGER} {_THAN} (?P<f>{one})(?:{other})?)",
        lambda m: f"{m['a'] or m['c'] or m['e']} against {m['b'] or m['d'] or m['f']} {of}",
        cue=("strong", "strength", "tough", "spline", "shaft", "axle", "bar"),
    )


def _no_cube(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: what each shaft bears is not worked out; by what law one is stronger, and the way to it are
    told.
    """
    first, _, rest = values["shafts"].partition(" against ")
    second, _, of = rest.rpartition(" ")
    if of == "splines":
        roots = sorted(int(teeth) - 2 for teeth in (first, second))
        where = (
            f"at the root of its splines: of one pitch, 16/32 or finer, the one with more bears about"
            f" {(roots[1] / roots[0]) ** 3:.2f} times as much"
        )
        pitch = values.get("pitch", "24/48")
        do = (
            f'ask "{first} spline {pitch} minor diameter" and "{second} spline {pitch} minor diameter" with the pitch'
            " of yours, then what torque a shaft of each of these stands in your steel: 4340 30 HRC"
        )
    else:
        where = "where it is thinnest"
        do = f'ask "{first} shaft" and "{second} shaft", each with its steel: 4340 30 HRC'
    why = (
        "no answer here sets two shafts against each other: of one steel their strength goes with the cube of the"
        f" diameter {where}"
    )
    raise Ambiguous(f"{first} {of} against {second}", "", why, (), do)


STRONGER = Topic(
    lambda: answer_of("splines.answer", "spline"),
    "strength of two shafts",
    {
        "shafts": (_pair(_TEETH, _SPLINES, "splines"), _pair(_THICK, _SHAFTS, "shafts")),
        "pitch": SPLINE.slots["pitch"],
    },
    rf"(?:by )?how much|{_STRONGER}|strength|strong|more (?:torque|strength)|torque|is|it|worth|going|upgrade|steel"
    r"|same steel|shafts?|axles?|pitch|take|hold",
    needs=("shafts",),
    opens=_no_cube,
    asks_for="stronger|strength|tougher|more torque",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
_HOLE = r"(?:bore|hole)(?: (?:right|straight|down|through|up|the|middle|centre|center|length|its|of|my|his|an?))*"


def _no_share(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: what a bore takes of a shaft's strength is told by its law; the way to the stress is told."""
    from gaugeblock import units

    shaft, bore = (units.parse_measure(values[key], "length", key) for key in ("shaft", "bore"))
    share = bore.to("m") / shaft.to("m")
    if share >= 1:
        raise Ambiguous(bore.text, "bore", "it is as large as the shaft, or larger", (), "say the bore of the shaft")
    raise Ambiguous(
        f"{bore.text} in {shaft.text}",
        "bore of a shaft",
        f"a bore takes of a shaft's torque the fourth power of its share of the diameter, here {share:.2f} to the"
        f" fourth, {100 * share**4:.2g} in a hundred, and of its weight {100 * share**2:.2g} in a hundred",
        (),
        f'ask the stress under your torque: `gaugeblock shaftstress "{shaft.text}" --bore "{bore.text}" --torque'
        ' "1500 lbf*ft"`, and leave off the bore for the solid shaft',
    )


BORED = Topic(
    lambda: answer_of("stress", "shaftstress"),
    "bore of a shaft",
    {
        "bore": (
            amount("length", after=_HOLE, say="bore {}", cue=("hole", "bore")),
            amount(
                "length",
                before=r"(?:bored?|(?:gun[- ]?)?drilled|hole of|bore of)(?: out)?",
                say="bore {}",
                cue=("bore", "drill", "hole"),
            ),
        ),
        "shaft": (
            amount(
                "length", after=r"(?:solid |round )*(?:axles?|shafts?|half ?shafts?|bars?)(?: shafts?)?", say="shaft {}"
            ),
            amount("length", before=r"(?:axle|shaft|bar)(?: (?:of|is))?", say="shaft {}"),
        ),
    },
    r"(?:gun[- ]?)?drill(?:s|ed|ing)?|bor(?:e|ed|ing)|hollow|save|saving|weight|strength|lose|loses|loss|cost"
    r"|how much|weaker"
    r"|weaken(?:s|ed)?|lighter|stronger|torque|strong|axles?|shafts?|bars?|solid|does it|what happens|middle"
    r"|holes?|down the",
    needs=("shaft", "bore"),
    opens=_no_share,
    asks_for=r"strength|weaker|weaken\w*|lose|loses|loss|cost|lighter|strong|stronger|weight|hurt|harm|ok|okay|safe",
    is_named=True,
    unmoved="metal finish form state standard service quality",
)
_AMOUNT = rf"(?P<n>{NUMBER})(?: ?(?P<unit>thou|inch|in|mm|\"))?"


def _no_sum(_values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: what shims a play and a preload ask for is not worked out; how it is reckoned is told."""
    why = (
        "no answer here adds it up: the shims change by the end float and the preload together, both in one unit."
        " Shims that hold the bearings apart, under a cap or in a spacer, come out; shims behind a bearing that push"
        " it up go in"
    )
    do = "add the two, change the shims by that, and read the turning torque against the axle maker's figure"
    raise Ambiguous("shims for a preload", "", why, (), do)


TAPER = Topic(
    lambda: answer_of("shims.answer", "shims"),
    "bearing preload by shims",
    {
        "play": (
            Shaped(rf"{_AMOUNT}(?: of)? end[ -]?(?:float|play)", lambda m: m[0]),
            Shaped(rf"end[ -]?(?:float|play)(?: (?:is|of|at|reads?|measures?|measured))* {_AMOUNT}", lambda m: m[0]),
        ),
        "preload": (
            Shaped(rf"{_AMOUNT}(?: of)? preload", lambda m: m[0]),
            Shaped(rf"preload(?: (?:is|of|at|should be))* {_AMOUNT}", lambda m: m[0]),
        ),
    },
    r"taper(?:ed)?(?: roller)?|(?:wheel|side|pinion|carrier|diff(?:erential)?|roller)? ?bearings?|hub|(?:i"
    r" )?measured?"
    r"|reads?|shims?|shimming|packs?|with|in|fitted|want(?:s|ed)?|needs?|comes? out|take out|remove|add|goes in"
    r"|how (?:much|thick)|end[ -]?(?:float|play)|preload|setting|set",
    needs=("play", "preload"),
    opens=_no_sum,
    asks_for=r"shims?|shimming",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
