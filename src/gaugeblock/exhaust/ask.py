"""What is asked about an exhaust, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.exhaust.ends_ask import EXHAUST, HANGER, IGNITION, OUTLET
from gaugeblock.exhaust.gas_ask import HOT
from gaugeblock.exhaust.joint_ask import JOINT
from gaugeblock.exhaust.wrap_ask import WRAP

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _pipe() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.pipe import exhaust_pipe

    return exhaust_pipe


def _run() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.run.answer import exhaust_run

    return exhaust_run


def _gap() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.gap import exhaust_gap

    return exhaust_gap


_LONG = 6  # letters of 2 1/2 and no more
_VOLUMES = {"l": "L", "c": "cm**3", "in": "in**3"}
_PIPES = r"(?:exhaust|tail|down) ?(?:pipes?|tubes?|system)?|pipes?|tubing"
PIPE = Topic(
    _pipe,
    "exhaust pipe",
    {
        "power": (amount("power", say="{}"),),
        "displacement": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:(?P<l>l|litres?|liters?)|(?P<c>cc|cm3)|(?P<in>ci|cid|cu in|cubic inch(?:es)?))"
                r"(?: (?:engine|six|four|eight|v6|v8|(?:straight |inline )?[468](?! ?(?:in|inch|mm|psi|bar|[0-9.])))"
                r"(?= |$))?",
                lambda m: f"{m['n']} {next(u for k, u in _VOLUMES.items() if m[k])}",
                "{}",
            ),
            Shaped(  # no engine has so many cubic inches
                r"(?P<n>[1-7][0-9]{3})(?= (?:engine|motor|lump|making|makes?|mill|putting|with|that|four|six"
                r"|v[- ]?[68]|petrol"
                r"|diesel|twin cam|pushrod))",
                lambda m: f"{m['n']} cm**3",
                "{}",
                cue=(
                    "engine",
                    "motor",
                    "lump",
                    "mak",
                    "mill",
                    "putting",
                    "with",
                    "that",
                    "four",
                    "six",
                    "v",
                    "petrol",
                    "diesel",
                ),
            ),
        ),
        "speed": (
            amount("rotational speed", say="{}"),
            Shaped(
                r"(?:at|by|up to) (?P<n>[2-9][05]00|[2-9][0-9]00)(?! ?(?:mm|hp))", lambda m: f"{m['n']} rpm", "at {}"
            ),
        ),
        "pipes": (
            Shaped(
                r"(?:dual|twin|two|2)(?: separate| independent)? (?:exhausts?|pipes?|tail ?pipes?|system)|duals?",
                always("2"),
                "two pipes",
            ),
            Shaped(
                r"(?:so )?each (?:side|pipe|bank) (?:only )?(?:has|gets|takes|sees|carries) (?:only )?(?:an? )?(?:1/2"
                r"|half)"
                r"(?: of (?:it|the gas|the power))?",
                always("2"),
                "two pipes",
                cue=("each",),
            ),
            Shaped(r"(?:dual|twin)s?(?= [0-9])|twins?(?= *$)", always("2"), "two pipes", cue=("dual", "twin")),
            Shaped(r"(?:an? )?single(?: (?:exhaust|pipe|system))?(?: only)?", always("1"), "one pipe"),
        ),
        "od": (
            amount("length", after="(?:exhaust|pipe|tube|system)(?: pipe)?", bare="in", say="{} pipe"),
            amount("length", before=r"(?:is|will|does|with|would|should|could)(?: an?)?", say="{} pipe"),
            Shaped(
                rf"(?P<n>{NUMBER})(?: ?(?:(?P<mm>mm)|in|inch|\"))?(?= or | for | ok| okay| enough| alright| fine"
                r"| (?:single|dual|twin)s?(?: |$)|$)",
                lambda m: f"{m['n']} {'mm' if m['mm'] else 'in'}" if len(m["n"]) < _LONG or m["mm"] else None,
                "{} pipe",
                doubt=3,
            ),
            amount(
                "length",
                before=r"exhaust(?: pipe)?(?: of)?",
                followed="(?:will|does|is|enough|ok|big|for|do)",
                say="{} pipe",
            ),
        ),
        "wall": (amount("length", after="wall", say="{} wall"),),
        "gas": (
            amount("temperature", before=r"(?:exhaust )?gas(?:es)?(?: (?:is|are|at|of|about|temp\w*))*", say="gas {}"),
            HOT,
        ),
        "back_pressure": (
            amount("stress", after=r"(?:of )?(?:exhaust )?(?:back ?)?pressure", say="{} back pressure"),
            amount(
                "stress",
                before=r"(?:back ?)?pressure(?: (?:is|of|at|under|below|allowed|max\w*|most))*",
                say="{} back pressure",
            ),
        ),
    },
    (
        rf"(?:what |which )?(?:size|diameter|dia)?(?: of)? ?(?:{_PIPES})(?: size| diameter)?|back ?pressure|big enough"
        r"|too (?:small|big)|(?:will|does) it (?:do|take|flow|cope(?: with)?)|ok for"
        r"|(?:what |which )?(?:bore|diameter)|engine|motor|for|mufflers?|exhausts?|size"
        r"|[vi][- ]?(?:4|6|8|10|12|twin)"
        r"|(?:straight|inline|flat) (?:four|five|six|eight|[4568])|small block|big block|headers?|how"
        r" big|diameter|inside|on the dyno|(?:there(?:'s| is) )?room for|room|be|too little|enough|only|makes?|making"
        r"|(?:new |whole )?system|under|mild cam|(?:wild|big|hot) cam|n\.?a|n/a|naturally[- ]aspirated"
        r"|stock|buying|buy|put(?:ting)?"
    ),
    needs=("power",),
    asks_for=r"exhausts?|tail ?pipes?|pipes?|(?:single|dual|twin)s? [0-9]|duals|mufflers?|new system|system under"
    r"|for a single",
    table="exhausts",
    unmoved="metal finish state standard quality",
)


def _steel(match: re.Match[str]) -> str:
    return match["n"] or ("aluminised steel" if match["al"] else "mild steel")


RUN = Topic(
    _run,
    "exhaust run",
    {
        "length": (
            amount("length", after="(?:long|of exhaust|of pipe|of tube|run|exhaust run)", say="{} long"),
            amount("length", say="{} long", doubt=2),
        ),
        "od": (amount("length", after="(?:od|diameter|exhaust|pipe|tube)(?: pipe| tube)?", say="{} pipe"),),
        "wall": (amount("length", after="wall", say="{} wall"),),
        "material": (
            Shaped(
                r"(?P<n>304|409|321|316)(?: (?:stainless|ss))?(?: steel)?|(?P<al>alumini[sz]ed)(?: steel)?|mild(?:"
                r" steel)?",
                _steel,
                "{}",
            ),
        ),
        "hot": (amount("temperature", say="hot {}"),),
        "fixed": (
            amount("length", before="(?:fixed|anchored|held)(?: at)?", say="fixed at {}"),
            Shaped(r"(?:fixed|anchored|held) (?:at|by) the (?:front|engine|header|collector)", always("0 in"), "{}"),
        ),
    },
    (
        rf"(?:how (?:much|far) )?(?:will|does|do)? ?(?:{EXHAUST})|(?:from"
        r" )?cold|grows?|growth|expan(?:d|ds|sion)|longer|hot|when|"
        r"get|gets|move|moves|heat|pipe|tube"
    ),
    needs=("length", "od", "wall", "material"),
    columns={"material": ("exhaust/expansion", "material")},
    asks_for=r"grows?|growth|expan(?:d|ds|sion)|longer|moves?",
    table="exhausts",
    unmoved="finish standard service quality",
)
_SHIELD = r"(?:(?:an?|the|my|some) )?(?:(?:heat|metal|steel|tin|sheet) ?)?shield(?:ing)?"
_NEAR = (
    r"near|close(?: to)?|clearance(?: to)?|from|to|next to|gap(?: to)?|away from|off|distance|between|and|under|over"
)


def _neighbours(_data: Refdata) -> list[str]:
    from gaugeblock.exhaust.gap import NEIGHBOURS

    return list(NEIGHBOURS)


_MOST_OF_A_LINE = 40  # mm across
GAP = Topic(
    _gap,
    "exhaust gap",
    {
        "to": (
            Shaped(
                (
                    r"(?:the |an? |my )?(?:(?:flexible|flex|rubber|steel|copper"
                    r"|metal|hard|rigid|braided|(?:steel|stainless)[- ]braided|braided (?:steel|stainless))"
                    r" )?(?:petrol (?=tank))?(?P<n>brake"
                    r" (?:line|hose|pipe)"
                    r"|(?:(?:nylon|plastic) )?fuel (?:line|hose|pipe)|fuel tank|gas tank|tank|floor|firewall|bulkhead"
                    r"|frame|body|wires?|wiring|harness|loom|tyres?|tires?|ground|road|plug (?:leads?|wires?)|spark"
                    r" plug"
                    r" (?:leads?|wires?)|engine mounts?|mounts?|rubber boots?|cv boots?|boots?|bush(?:es|ings?)?|axle"
                    r"|driveshaft|prop(?:eller)? ?shaft|suspension|carpet|undercoating)(?: rubbers?)?"
                ),
                lambda m: m["n"],
                "to the {}",
            ),
            Shaped(
                r"(?:the |an? |my )?(?:spark )?plug boots?",
                always("plug leads"),
                "to the plug boots",
                cue=("plug boot",),
            ),
            Shaped(r"(?:the |an? |my )?floor ?pans?", always("floor"), "to the floor", cue=("floor",)),
            Shaped(r"(?:the |an? |my )?wiring (?P<n>loom|harness)", lambda m: m["n"], "to the {}", cue=("wiring",)),
            Shaped(
                r"(?:the |an? |my )?(?:side of the )?(?P<n>(?:plastic|nylon) (?:fuel )?tank)",
                always("tank"),
                "to the tank",
                cue=("tank",),
            ),
            Shaped(
                r"(?:the |an? |my )?(?:plug |ht |ignition |spark )?(?:leads?|plug boots?)(?= (?:to|and|from|near"
                r"|off|clearance"
                r"|touching|on|against|by|beside)|$)",
                always("plug leads"),
                "to the plug leads",
                doubt=1,
                cue=("lead", "plug boot"),
            ),
        ),
        "gap": (
            amount("length", say="{} gap", doubt=1),
            Shaped(
                r"(?:(?:right|hard|up|lay|lie|resting|rest|flat) )*(?:against|touching|on to|onto)",
                always("0 in"),
                "touching",
                cue=("against", "touching", "onto", "on to"),
            ),
        ),
        "shield": (
            Shaped(
                rf"(?:if|when|with|once|behind)(?: (?:i|we|you|it|put|fit|have|has|use|add|make|run|is|got|get"
                rf"|there|in))*"
                rf" {_SHIELD}(?: (?:in|between|them|there|on|it|fitted))*|{_SHIELD} (?:in )?(?:between|there"
                rf"|fitted|on it)"
                r"(?: them)?",
                always("yes"),
                "a shield between",
                doubt=1,
                cue=("shield",),
            ),
        ),
        "what": (
            Shaped(
                r"(?P<n>gxl|sxl|txl|gpt|twp|hdt)(?= (?:wire|wiring|cable|loom|harness))",
                lambda m: m["n"].upper(),
                "{} insulation",
                cue=("gxl", "sxl", "txl", "gpt", "twp", "hdt"),
            ),
        ),
        "od": (
            amount(
                "length",
                bare="in",
                followed="(?:steel |hard )?(?:brake|fuel) (?:line|hose|pipe)s?",
                say="{} across",
                most=_MOST_OF_A_LINE,
            ),
        ),
        "pipe": (
            amount(
                "length",
                after=r"(?:header )?primar(?:y|ies)(?: tubes?| pipes?)?",
                say="{} pipe",
                cue=("primar",),
            ),
            amount(
                "length",
                before="(?:an?|the|my)",
                after="(?:exhaust|tail ?pipe|pipe|header)(?: pipe)?",
                bare="in",
                say="{} pipe",
            ),
        ),
        "hot": (amount("temperature", before="(?:at|running(?: at)?)", say="pipe at {}"),),
        "movement": (amount("length", after="(?:movement|of growth|growth)", say="moves {}"),),
    },
    rf"how (?:close|near|far)|can|{_NEAR}|{EXHAUST}|(?:the |my |an? )?headers?(?: tubes?| pipes?)?|lay|lie|room"
    rf"|enough|clear|runs?|(?:header )?tubes?(?= *$| (?:it|and|what|how|there|with)\b)|came with"
    r"|(?:above|over|under|beside|behind|next to)(?= (?:an? |the |my )?(?:exhaust|muffler|silencer))"
    r"|(?:if )?(?:there(?:'?s| is) )?(?:without|no)(?: an?| any| room for an?| space for an?)? (?:heat"
    r" )?shield(?:ing)?|unshielded"
    r"|bare (?:exhaust|headers?|pipes?|down ?pipes?|manifolds?|silencers?|mufflers?)(?: pipes?)?|past|big|exhaust|air"
    r"|all round|round"
    r"|(?:at )?full (?:bump|droop|travel|lock)|bump|tail ?pipes?|down ?pipes?|pass|ends? up|silencer(?: box)?|muffler"
    r"|ended up|back axle"
    r"|(?:rubber[ -])?hung|hanging|bare(?= floor| body| frame)|under|over|between|leave"
    r"|(?:(?:turbo|exhaust) )?(?:down ?pipes?|manifolds?)|running|stay(?: there| put)?"
    r"|for (?:about )?an? (?:foot|metre|yard)|(?:catalytic )?converter|cats?|side of|between|must be kept|kept"
    r"|cylinders?|since|clonks?|clunks?|knock(?:s|ing)?|bang(?:s|ing)?|hit(?:s|ting)?|(?:hit )?(?:an? )?bumps?"
    r"|(?:too )?few mounts|primar(?:y|ies)"
    r"|long tubes|clearance|at (?:the )?most|keep burning|burn(?:s|ing|t)?|melt(?:s|ing)?|unshielded|what should i do"
    r"|or (?:do|should|must|will) i (?:need|have|want)?(?: to)?|(?:do|should) i|(?:shield|sleeve|move)(?: it)?$"
    r"|what (?:will|can|does) (?:the|that|its?) (?:rubber|line|hose|boot)|(?:take|stand|survive)$"
    r"|cross(?:es|ing)?|primar(?:y|ies)|(?:twin|dual)s?(?: (?:pipes?|system|exhausts?))?"
    r"|(?:behind|ahead of|past|before|after) (?:the |my )?(?:box|mufflers?|silencers?|cats?|resonator)",
    needs=("to",),
    columns={"to": _neighbours},
    asks_for=rf"cats?|converter|long tubes|headers?|down ?pipes?|manifolds?|primar(?:y|ies)|turbo|shield\w*|silencer"
    rf"|muffler|tail ?pipes?|pipes?|hot|heat|burn\w*|melt\w*|collector|system|{EXHAUST}",
    is_named=True,  # a brake line alone is no question of its gap
    table="exhausts",
    job_keys={"to": "gaps[]"},
    unmoved="standard quality",
)
TOPICS = (WRAP, PIPE, GAP, JOINT, RUN, OUTLET, HANGER, IGNITION)
