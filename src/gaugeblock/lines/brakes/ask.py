"""What is asked about brakes, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.lines.brakes.arms_ask import ARMS
from gaugeblock.lines.brakes.booster_ask import ASSIST, BOOSTED, of_booster
from gaugeblock.lines.brakes.hand_ask import HAND, HOSE, RATIO, SLOPE, kilos, pounds
from gaugeblock.lines.brakes.lever import ONE_NUMBER, Lever
from gaugeblock.lines.brakes.master_ask import BIGGER, MASTER
from gaugeblock.lines.brakes.travel_ask import travel
from gaugeblock.lines.told import Told

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def circuit(*, data: Refdata, **options: str) -> Sheet:
    """The circuit; InputError for one with a booster whose ratio was not said."""
    from gaugeblock.lines.brakes.circuit import brake

    ratio = of_booster(options.get("assist", ""))
    if ratio:
        options["assist"] = ratio
    elif "assist" in options:
        from gaugeblock.errors import InputError

        why = "the line pressure behind a booster hangs on the booster, and its ratio was not said"
        raise InputError("booster", "", why, (), "say its ratio: `4:1 booster`; or say `no booster`")
    return brake(data=data, **options)


def _fact() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.facts import brake_fact

    return brake_fact


def _open_circuit(values: dict[str, str], data: Refdata) -> Open | None:
    """The master cylinders that shops fit, where its bore was not said."""
    if "master" in values:
        return None
    rows = data.table("lines/brakes").of("master_bore")
    return ("master",), [{"master": row.cells["case"]} for row in rows]


def _open_fact(values: dict[str, str], _data: Refdata) -> Open | None:
    """The places that have a rule, or the kinds of brake."""
    from gaugeblock.lines.brakes.facts import subject_of
    from gaugeblock.lines.brakes.habits import CASES, PEDAL, PEDALS, RESIDUAL, SIZE, TUBES
    from gaugeblock.lines.brakes.rules import RULES

    named = subject_of(values["subject"])
    if named in (RESIDUAL, SIZE, PEDAL):
        cases = tuple(CASES if named == RESIDUAL else TUBES if named == SIZE else PEDALS)
        return None if "case" in values else (("case",), [{"case": c} for c in cases])
    if named in RULES and "place" not in values and len(RULES[named]) > 1:
        return ("place",), [{"place": r.place} for r in RULES[named]]
    return None


def _shared(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Of two masters behind a balance bar in its middle each has half the force."""
    if "twin" not in values:
        return values
    number, _, unit = values["force"].partition(" ")
    from gaugeblock.units import parse_number

    half = f"{float(parse_number(number)) / 2:g} {unit}"
    return {key: half if key == "force" else value for key, value in values.items() if key != "twin"}


_FOOT = (
    r"(?:(?: (?:on|at|of)(?: the| my)? (?:pedal|foot)| (?:of )?(?:foot|pedal|leg|boot|shoe)(?: force| effort)?| force"
    r"| (?:at|on) (?:it|the most|most))*)"
)
_PUSH = r"(?: (?:ever|really|be|push|press|give|get|do|put|stamp|exert|make|down|it|on|in))*"
# A limit of the foot is its force: she cannot push more than 400 N.
_AT_MOST = (
    rf"(?:(?:can(?:no|')?t|can not|won'?t|will not|couldn'?t|do(?:es)?n'?t want to|don'?t like to|never){_PUSH}(?:"
    rf" any)?"
    rf" (?:more|harder|over|above|past)(?: than)? |(?:can )?only{_PUSH} )?"
)
CIRCUIT = Topic(
    lambda: circuit,
    "brake circuit",
    {
        "master": (
            amount(
                "length",
                after=r"(?:bore )?(?:masters?|m/?cs?)(?: cyl(?:inder)?s?)?(?: bore)?",
                say="{} master cylinder",
            ),
            amount(
                "length",
                before=r"(?:masters?|m/?cs?)(?: cyl(?:inder)?s?)?",
                after="(?:inch )?bore",
                say="{} master cylinder",
            ),
            amount(
                "length",
                before=r"(?:masters?|m/?cs?)(?: cyl(?:inder)?s?)?(?: bore)?(?: of| is)?",
                say="{} master cylinder",
            ),
            Shaped(
                r"(?P<n>[01]\.[0-9]+)(?: bore)? (?:brake )?(?:masters?|m/?cs?)(?: cyl(?:inder)?s?)?(?: bore)?",
                lambda m: f"{m['n']} in",  # no cylinder is so many millimetres
                "{} master cylinder",
                cue=("mast", "mc", "m/c"),
            ),
            Shaped(  # nobody has a master cylinder of so many inches
                r"(?P<n>(?:1[2-9]|2[0-9]|3[0-2])(?:\.[0-9]+)?) (?:bore|(?:brake )?(?:masters?"
                r"|m/?c)(?: cyl(?:inder)?)?(?: bore)?)",
                lambda m: f"{m['n']} mm",
                "{} master cylinder",
                doubt=1,
            ),
            Shaped(
                r"(?:masters?|m/?c)(?: cyl(?:inder)?)?(?: bore)?(?: (?:is|of|at|about|an?))*"
                r" (?P<n>(?:1[2-9]|2[0-9]|3[0-2])(?:\.[0-9]+)?)"
                r"(?! ?(?:mm|mil|in|inch|\"|lbs?|lbf|pounds?|kg|kilos?|n|newtons?|psi|bar|to|%|percent|[0-9]+/)\b)",
                lambda m: f"{m['n']} mm",
                "{} master cylinder",
                doubt=1,
                cue=("master", "mc", "m/c"),
            ),
            amount("length", after="bore", say="{} master cylinder", doubt=3),
            amount("length", before="bore(?: of| is)?", say="{} master cylinder", doubt=3, cue=("bore",)),
            Shaped(
                r"(?:an? |one )?inch(?:-| )(?:bore|(?:brake )?master(?: cyl(?:inder)?)?|m/?c)(?: bore)?",
                always("1 in"),
                "{} master cylinder",
                cue=("inch",),
            ),
            amount("length", after="cylinder", say="{} master cylinder", doubt=2),
            amount(
                "length",
                before=r"(?<!wheel )(?<!slave )cylinder(?: (?:is|has|of|an?))*",
                after="(?:inch )?bore",
                say="{} master cylinder",
                doubt=2,
                cue=("cylinder",),
            ),
        ),
        "force": (
            Shaped(
                rf"{_AT_MOST}(?P<n>{NUMBER}) ?(?:lbs?|lbf|pounds?)(?: shove| push| stamp)?{_FOOT}",
                pounds,
                "{} on the pedal",
                cue=("lb", "pound"),
            ),
            Told(
                rf"{_AT_MOST}(?P<n>{NUMBER}) ?(?:kg|kgs|kilos?|kgf){_FOOT}",
                kilos,
                "{} on the pedal",
                cue=("kg", "kilo"),
            ),
            Shaped(rf"{_AT_MOST}(?P<n>{NUMBER}) ?(?:n|newtons?){_FOOT}", lambda m: f"{m['n']} N", "{} on the pedal"),
        ),
        "ratio": (
            Lever(),
            Shaped(rf"{RATIO}(?: pedal(?: ratio)?)?", lambda m: m["n"], "pedal {} to 1"),
            Shaped(rf"(?P<n>{NUMBER}) 1 pedal(?: ratio)?", lambda m: m["n"], "pedal {} to 1"),
            Shaped(
                r"(?P<n>[3-9](?:\.[0-9]+)?|1[0-2](?:\.[0-9]+)?) pedal(?!"
                r" ratio)",
                lambda m: m["n"],
                "pedal {} to 1",
            ),
            Shaped(
                rf"(?P<n>{ONE_NUMBER}) (?:pedal )?ratio(?! (?:of|is)\b)(?! [0-9./]+(?: (?!(?:lbs?|pounds?|kg"
                rf"|kilos?|n|newtons?|bore|master|m/?c|(?:mm|in|inch) (?:bore|master|m/?c))\b)|$))",
                lambda m: m["n"],
                "pedal {} to 1",
                cue=("ratio",),
            ),
            Shaped(
                r"pedal (?:of |is )?(?P<n>[3-9](?:\.[0-9]+)?)(?= |$)(?! ?(?:in|inch|inches|mm|cm|lbs?|kg|n|to|:"
                r"|/|pistons?)\b)",
                lambda m: m["n"],
                "pedal {} to 1",
                doubt=2,
                cue=("pedal",),
            ),
            Shaped(
                rf"(?:pedal )?ratio(?: of| is)? (?P<n>{ONE_NUMBER})(?: ?(?:to|:) ?(?:1|one))?",
                lambda m: m["n"],
                "pedal {} to 1",
            ),
        ),
        "twin": (
            Shaped(
                r"(?:twin|two|2|dual)(?= (?:[0-9/. -]+ ?(?:(?:in|inch|mm) )?(?:bore )?)?(?:m[a]sters|m/cs|master"
                r" cyl\w+s)\b)",
                always("balance bar"),
                "two masters, half the force on each with the bar in its middle",
                cue=("master", "m/c"),
            ),
            Shaped(
                r"(?:on |with |and )?(?:an? |the )?(?:balance|bias) bar(?: (?:is|set|all|in|the|dead|centred"
                r"|centered|middle"
                r"|central|centre|center|even|level|50/50))*",
                always("balance bar"),
                "two masters, half the force on each with the bar in its middle",
                cue=("bar",),
            ),
        ),
        "kind": (
            Shaped(r"(?:rear |front )?drums?(?: brakes?)?", always("drum"), "drums"),
            Shaped(r"(?:floating|sliding)(?: single piston)? cal?lipers?", always("floating caliper")),
            Shaped(r"(?:fixed|opposed(?: piston)?) cal?lipers?", always("fixed caliper")),
            Shaped(r"(?:clutch )?slave(?: cylinders?)?", always("slave cylinder")),
        ),
        "bore": (
            amount("length", after=r"(?:wheel cyl(?:inder)?s?|pistons?|cal?liper pistons?|slave)", say="pistons {}"),
            amount("length", before=r"(?:wheel cyl(?:inder)?s?|pistons?|cal?liper pistons?)", say="pistons {}"),
        ),
        "was": (amount("length", before="(?:was|were|instead of|before|from)", say="was {}"),),
        "stroke": (amount("length", after="stroke", say="stroke {}"),),
        "travel": (amount("length", after="(?:of )?(?:piston )?travel", say="travel {}"),),
        "wheels": (Shaped(r"(?P<n>[1-8]) wheels?", lambda m: m["n"], "{} wheels"),),
        "assist": BOOSTED,
    },
    r"(?:what|how many) (?:bar|psi|kpa)(?: (?:is|do i get|in))?|"
    r"(?:with )?(?:no|without)(?: an?| the| power)? (?:boosters?|servos?|power assist\w*|assist\w*"
    r"|power brakes?)"
    r"|line|(?:at the )?wheel cylinders?|(?:stamp|stand|press|push|lean)(?:s|ing)? on it|at the (?:cal?lipers?|wheels?)"
    r"|manual(?: brakes?)?|un(?:boosted|assisted)|(?:non[- ]|not )(?:boosted|assisted|power)"
    r"|come[sd]?|pushes|get|makes?"
    r"|(?:line |brake )?pressure|(?:i |you )(?:press|push)(?: on)?|pressing|pushing|(?:brake )?pedal|master(?:"
    r" cylinder)?|brakes?|hydraulics?|with|psi|what|how"
    r" much|(?:in )?(?:the )?(?:brake )?(?:lines?|pipes)|on it|rear|front|single(?: master)?(?: cylinder)?|(?:my "
    r"|his )?(?:leg|foot)|i get",
    needs=("force", "ratio"),
    opens=_open_circuit,
    settle=_shared,
    joined=("assist",),
    table="brakes",
    asks_for=r"brakes?|master|pedal|wheel cyl\w*|cal?lipers?|slave",
    unmoved="metal finish standard quality",
)

FACT = Topic(
    _fact,
    "brakes",
    {
        "subject": (
            Shaped(r"residual(?: pressure)?(?: valves?)?|rpv", always("residual pressure")),
            Shaped(
                r"(?:bleed(?:ing)?|bleed out)(?: the)?(?: brakes?)?(?: order| sequence)?"
                r"|(?:order|sequence)(?: to| of)? bleed(?:ing)?(?: the)?(?: brakes?)?"
                r"|which (?:wheel|brake|corner)(?: do i| to)? bleed(?: first)?",
                always("bleeding"),
            ),
            Shaped(
                r"(?:brake )?(?:lines? |system )?(?:leak|hold)(?: down)? (?:test|check)"
                r"|(?:brake )?(?:lines? |system )?pressure test(?: the)?(?: brakes?)?(?: lines?)?",
                always("leak test"),
            ),
            Shaped(
                r"(?:parking|park|hand|e|emergency)[- ]?brakes?(?: hold| hill| slope|"
                r" grade)?",
                always("parking brake"),
            ),
            Shaped(r"(?:stopping|braking) distances?", always("stopping distance")),
            Shaped(r"pedal (?:reserve|travel)", always("pedal reserve")),
            Shaped(
                rf"(?:brake )?pedal(?= (?:(?:at|is|of|ratio|with) )+{NUMBER}(?: ?(?:to|:) ?(?:1|one)| over ))"
                rf"|(?:brake )?pedal(?= ratio (?:(?:of|is|at) )*{ONE_NUMBER}(?: |$))"
                r"|(?:what )?(?:brake )?pedal (?:lever(?:age)? )?ratio(?: (?:should|do|does|for))?"
                r"|ratio (?:of|for) (?:the |a |my )?(?:brake )?pedal",
                always("pedal ratio"),
            ),
            Shaped(
                r"(?:what )?size (?:of )?brake (?:line|tube|pipe)s?|brake (?:line|tube|pipe)s? (?:size|diameter)",
                always("line size"),
            ),
            Shaped(
                r"(?:brake )?(?:balance|bias)(?: (?:front (?:to|and) (?:rear|back)|rear to front))?"
                r"|proportioning(?: valve)?",
                always("balance"),
            ),
        ),
        "case": (
            Shaped(
                r"(?:with )?(?:no|without an?) (?:booster|servo|assist\w*|vacuum booster)|manual(?: brakes?)?"
                r"|un(?:assisted|boosted)|not (?:boosted|assisted|power(?:ed)?)",
                always("no assist"),
            ),
            Shaped(r"(?:with an? )?(?:booster|servo)(?: brakes?)?|power(?:ed)? brakes?|boosted", always("assisted")),
            Shaped(r"(?:for )?(?:rear |front )?drums?(?: brakes?)?", always("drum"), "drums"),
            Shaped(r"to (?:one |a |each |the )?(?:front )?wheels?", always("to one wheel")),
            Shaped(r"to (?:the |an )?(?:rear )?axle", always("to an axle or a long run")),
            Shaped(r"(?:master|reservoir)(?: cylinder)? (?:is )?(?:on|at) (?:the )?firewall", always("disc above")),
            Shaped(
                r"(?:master|reservoir)(?: cylinder)? (?:is )?(?:under|below) (?:the )?floor\w*", always("disc below")
            ),
            Shaped(
                r"(?:master|reservoir)(?: cylinder)? (?:is )?(?:below|under|lower than)(?: the)? cal?lipers?",
                always("disc below"),
            ),
            Shaped(
                r"(?:master|reservoir)(?: cylinder)? (?:is )?(?:above|over|higher than)(?: the)? cal?lipers?",
                always("disc above"),
            ),
        ),
        "ratio": (
            Lever(),
            Shaped(
                rf"(?:ratio (?:of |is |at )?)?{RATIO}",
                lambda m: m["n"],
                "{} to 1",
                cue=("to 1", "to one", ":1", ": 1", "to1"),
            ),
            Shaped(rf"ratio(?: of| is| at)* (?P<n>{ONE_NUMBER})", lambda m: m["n"], "{} to 1", cue=("ratio",)),
        ),
        "place": (
            Shaped(r"(?:us |usa )?federal", always("US federal")),
            Shaped(r"(?:us )?(?P<n>massachusetts|pennsylvania|maine)", lambda m: f"US {m['n'].title()}"),
            Shaped(r"(?:canada )?quebec", always("Canada Quebec")),
        ),
    },
    r"what|which|how hard|how long|does|do i|to|have to|must|order|first|brakes?|do i need|need|how"
    r" much|(?:is (?:that|it|this) )?(?:far |way |a bit )?too (?:little|much|low|high|few)"
    r"|(?:is (?:that|it|this) )?enough|pedals?|wheels?|limits?|most|rules?|law|legal|inspection|discs?|disks?"
    r"|valve|hold|hill|slope",
    needs=("subject",),
    opens=_open_fact,
    table="brakes",
)


def _pedal() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.pedal import pedal

    return pedal


# What gives a pressure that is wanted: the two that were said of bore, foot and pedal ratio say the third.
PEDAL = Topic(
    _pedal,
    "pedal for a pressure",
    {
        "pressure": (
            amount("stress", say="{} wanted", after="(?:of )?(?:line |brake )?pressure", cue=("press",)),
            amount("stress", say="{} wanted"),
        ),
        **{key: CIRCUIT.slots[key] for key in ("master", "force", "ratio")},
        "assist": ASSIST,
    },
    CIRCUIT.signals + r"|how hard(?: (?:do|must|should) (?:i|you))?(?: have to)?(?: (?:push|press|lean on it|stamp))?"
    r"|gives?|need(?:ed)?|wants?|wanted|for|target|reach|hit|make|build|see|at the (?:line|cal?lipers?|wheels?)"
    r"|(?:pedal )?(?:ratio|leverage)|bore|size|foot|force|effort|leg|hard|into|using|through|off|from|line"
    r"|(?:(?:single|dual|split|tandem|old) )*circuits?|(?:4 |2 |all )?drums?|press(?:es)?",
    needs=("pressure",),
    table="brakes",
    asks_for=r"brakes?|master|pedal|foot|cal?lipers?|m/?c"
    r"|how hard(?: (?:do|must|should) i)?(?: have to)? (?:push|press)|(?:psi|bar)\b.*\b(?:which|what)(?: size)? bore"
    r"|(?:which|what)(?: size)? bore\b.*\b(?:psi|bar)",
    is_named=True,
    unmoved="metal finish standard quality",
)
TOPICS = (CIRCUIT, FACT, HAND, ARMS, SLOPE, HOSE, MASTER, BIGGER, PEDAL, travel(CIRCUIT))
