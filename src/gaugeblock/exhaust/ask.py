"""What is asked about an exhaust, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount

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


def _joint() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.joint import exhaust_joint

    return exhaust_joint


def _hanger() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.hanger import exhaust_hanger

    return exhaust_hanger


def _ignition() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.ignition import exhaust_ignition

    return exhaust_ignition


def _outlet() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.outlet import exhaust_outlet

    return exhaust_outlet


_LONG = 6  # letters of 2 1/2 and no more
_VOLUMES = {"l": "L", "c": "cm**3", "in": "in**3"}
_EXHAUST = r"(?:the |an? |my )?(?:exhausts?|tail ?pipes?|mufflers?|silencers?)(?: (?:pipe|tube|system|run))?"
_PIPES = r"(?:exhaust|tail|down) ?(?:pipes?|tubes?|system)?|pipes?|tubing"
PIPE = Topic(
    _pipe,
    "exhaust pipe",
    {
        "power": (amount("power", say="{}"),),
        "displacement": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:(?P<l>l|litres?|liters?)|(?P<c>cc|cm3)|(?P<in>ci|cid|cu in|cubic inch(?:es)?))"
                r"(?: (?:engine|six|four|eight|v6|v8))?",
                lambda m: f"{m['n']} {next(u for k, u in _VOLUMES.items() if m[k])}",
                "{}",
            ),
        ),
        "speed": (amount("rotational speed", say="{}"),),
        "pipes": (
            Shaped(
                r"(?:dual|twin|two|2)(?: separate| independent)? (?:exhausts?|pipes?|tail ?pipes?|system)|duals?",
                always("2"),
                "two pipes",
            ),
            Shaped(r"(?:dual|twin)s?(?= [0-9])", always("2"), "two pipes", cue=("dual", "twin")),
            Shaped(r"single(?: (?:exhaust|pipe|system))?", always("1"), "one pipe"),
        ),
        "od": (
            amount("length", after="(?:exhaust|pipe|tube|system)(?: pipe)?", bare="in", say="{} pipe"),
            amount("length", before=r"(?:is|will|does|with)(?: an?)?", say="{} pipe"),
            Shaped(
                rf"(?P<n>{NUMBER})(?: ?(?:(?P<mm>mm)|in|inch|\"))?(?= or | for |$)",
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
        "gas": (amount("temperature", say="gas {}"),),
        "back_pressure": (amount("stress", say="{} back pressure"),),
    },
    (
        rf"(?:what |which )?(?:size|diameter|dia)?(?: of)? ?(?:{_PIPES})(?: size| diameter)?|back ?pressure|big enough"
        r"|too (?:small|big)|(?:will|does) it (?:do|take|flow|cope(?: with)?)|ok for"
        r"|(?:what |which )?(?:bore|diameter)|engine|motor|for|mufflers?|exhausts?|size"
        r"|[vi][- ]?(?:4|6|8|10|12|twin)"
        r"|(?:straight|inline|flat) (?:four|five|six|eight|[4568])|small block|big block|headers?|how"
        r" big|diameter|inside"
    ),
    needs=("power",),
    asks_for=r"exhausts?|tail ?pipes?|pipes?|duals|mufflers?",
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
        rf"(?:how (?:much|far) )?(?:will|does|do)? ?(?:{_EXHAUST})|(?:from"
        r" )?cold|grows?|growth|expan(?:d|ds|sion)|longer|hot|when|"
        r"get|gets|move|moves|heat|pipe|tube"
    ),
    needs=("length", "od", "wall", "material"),
    columns={"material": ("exhaust/expansion", "material")},
    asks_for=r"grows?|growth|expan(?:d|ds|sion)|longer|moves?",
    table="exhausts",
    unmoved="finish standard service quality",
)
_NEAR = (
    r"near|close(?: to)?|clearance(?: to)?|from|to|next to|gap(?: to)?|away from|off|distance|between|and|under|over"
)


def _neighbours(_data: Refdata) -> list[str]:
    from gaugeblock.exhaust.gap import NEIGHBOURS

    return list(NEIGHBOURS)


GAP = Topic(
    _gap,
    "exhaust gap",
    {
        "to": (
            Shaped(
                (
                    r"(?:the |an? |my )?(?:(?:flexible|flex|rubber|steel|copper"
                    r"|metal|hard|rigid) )?(?:petrol (?=tank))?(?P<n>brake"
                    r" (?:line|hose|pipe)"
                    r"|(?:(?:nylon|plastic) )?fuel (?:line|hose|pipe|tank)|gas tank|tank|floor"
                    r"|frame|body|wires?|wiring|harness|loom|tyres?|tires?|ground|road|plug (?:leads?|wires?)|spark"
                    r" plug"
                    r" (?:leads?|wires?)|engine mounts?|mounts?|rubber boots?|cv boots?|boots?|bush(?:es|ings?)?|axle"
                    r"|driveshaft|prop(?:eller)? ?shaft|suspension|carpet|undercoating)(?: rubbers?)?"
                ),
                lambda m: m["n"],
                "to the {}",
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
                "length", bare="in", followed="(?:steel |hard )?(?:brake|fuel) (?:line|hose|pipe)s?", say="{} across"
            ),
        ),
        "pipe": (amount("length", before="an?", after="(?:exhaust|tail ?pipe|pipe|header)(?: pipe)?", say="{} pipe"),),
        "hot": (amount("temperature", before="(?:at|running(?: at)?)", say="pipe at {}"),),
        "movement": (amount("length", after="(?:movement|of growth|growth)", say="moves {}"),),
    },
    rf"how (?:close|near|far)|can|{_NEAR}|{_EXHAUST}|(?:the |my |an? )?headers?(?: tubes?| pipes?)?|lay|lie|room"
    rf"|enough|clear|run"
    r"|(?:if )?(?:there(?:'?s| is) )?(?:without|no)(?: an?| any| room for an?| space for an?)? (?:heat"
    r" )?shield(?:ing)?|unshielded|bare (?:exhaust|headers?|pipes?)(?: pipes?)?|past|big|exhaust|air|all round|round"
    r"|(?:at )?full (?:bump|droop|travel|lock)|bump|tail ?pipes?|down ?pipes?|pass|ends? up|silencer(?: box)?|muffler"
    r"|ended up|back axle"
    r"|(?:rubber[ -])?hung|hanging|bare(?= floor| body| frame)|under|over|between|leave"
    r"|(?:(?:turbo|exhaust) )?(?:down ?pipes?|manifolds?)|running|stay(?: there| put)?"
    r"|for (?:about )?an? (?:foot|metre|yard)"
    r"|or (?:do|should|must|will) i (?:need|have|want)?(?: to)?|(?:do|should) i|(?:shield|sleeve|move)(?: it)?$"
    r"|what (?:will|can|does) (?:the|that|its?) (?:rubber|line|hose|boot)|(?:take|stand|survive)$"
    r"|cross(?:es|ing)?|primar(?:y|ies)",
    needs=("to",),
    columns={"to": _neighbours},
    asks_for=rf"close|near|clearance|gap|room|clear|how far|away|headers?|down ?pipes?|manifolds?|{_EXHAUST}",
    is_named=True,  # a brake line alone is no question of its gap
    table="exhausts",
    job_keys={"to": "gaps[]"},
    unmoved="standard quality",
)
_AGAIN = r"re-?(?:tighten(?:ing)?|torqu(?:e|ing)|check)"
_KINDS = (
    (rf"{_AGAIN}(?: the| my)? (?:header|manifold) bolts?|(?:header|manifold) bolts? {_AGAIN}", "header flange"),
    (r"(?:slip|slip[ -]fit|expanded)(?: (?:joints?|fit|ends?))?|sockets?", "slip joint"),
    (r"(?:header|collector) slip(?: joint)?|sliding joint", "sliding joint"),
    (r"butt welds?|weld gap", "butt weld"),
    (r"pie ?cuts?|mit(?:er|re)(?:s|d)?(?: bends?)?", "mitre"),
    (r"collector (?:taper|angle)|(?:taper|angle) of (?:the |a )?collector", "collector"),
    (r"(?:x|h)[ -]pipe|balance pipe|cross ?over(?: pipe)?", "balance pipe"),
    (r"(?:o2|oxygen|lambda|wideband)?(?: sensor)? ?bungs?|sensor boss", "sensor boss"),
)
JOINT = Topic(
    _joint,
    "exhaust joint",
    {
        "kind": tuple(Shaped(pattern, always(kind), kind) for pattern, kind in _KINDS),
        "od": (
            amount("length", after="(?:exhaust|pipe|tube)(?: pipe)?", bare="in", say="{} pipe"),
            amount("length", say="{} pipe", doubt=1),
        ),
        "wall": (amount("length", after="wall", say="{} wall"),),
        "overlap": (amount("length", after="overlap", say="{} overlap"),),
        "socket": (amount("length", before="socket", say="{} socket"),),
        "angle": (amount("angle", say="{} in all"),),
    },
    rf"{_EXHAUST}|duals?(?: exhausts?| system)?|overlap|joints?|clearance|inside diameter|id|size|gap|for|how"
    r" (?:much|many|far|big)|bends?|where|place(?:ment)?|do i|when",
    needs=("kind",),
    asks_for=(
        r"re-?t\S+|slip\S*|expanded|sockets?|overlap|pie\S*|mit\S+|butt|collector|balance|cross\S*|[xh]["
        r" -]?pipe|bungs?|boss|sliding"
    ),
    table="exhausts",
    job_keys={"kind": "joint"},
)
OUTLET = Topic(
    _outlet,
    "exhaust outlet",
    {
        "jurisdiction": (
            Shaped(r"(?:in )?(?P<n>germany|austria|new hampshire|quebec|arizona)", lambda m: m["n"], "in {}"),
        ),
    },
    (
        rf"{_EXHAUST}|outlets?|tips?|exits?|ends?|(?:stop|finish|quit|terminate|dump|turn)s?(?= (?:out|short"
        rf"|before|ahead"
        r"|just|behind|under|in front|at))|(?:just |right )?(?:ahead|short) of|out|just|back|tyres?|tires?|come out"
        r"|stick(?:s|ing)?(?: out)?|point(?:s|ing)?|past|beyond"
        r"|(?:the )?body|bumpers?|how far|have to|has to|dump(?:s)?|legal|allowed|rules?|law|where|side|"
        r"under|in front of|may|before|rear|wheel|door"
    ),
    asks_for=r"outlets?|exits?|dumps?|come out|tips?|legal|stick\S*|tail ?pipes?|past|beyond",
    is_named=True,  # it needs nothing else
    columns={"jurisdiction": ("exhaust/outlets", "jurisdiction")},
    table="exhausts",
)
_BEHIND = r"(?:behind|from|after|past|off) (?:the |my )?(?:flex\S*|joint|collector|header)(?: (?:pipe|section|joint))?"
HANGER = Topic(
    _hanger,
    "hangers of an exhaust",
    {
        "spacing": (
            amount("length", after="(?:apart|spacing|between)", say="{} apart"),
            amount("length", before=r"every", say="{} apart"),
            amount("length", before=r"spacing(?: of)?", say="{} apart", doubt=1),  # or the pipe, said before its name
        ),
        "first": (
            amount("length", followed=_BEHIND, say="the first {} behind"),
            amount("length", before=r"first (?:exhaust |pipe )?hangers?(?: is| at)?", say="the first {} behind"),
        ),
        "od": (
            amount(
                "length",
                after=r"(?:(?:stainless|mild|steel|alumini[sz]ed) )*(?:exhaust|pipe|tube|system|stainless|steel)"
                r"(?: pipe| system)?",
            ),
        ),
        "run": (
            amount("length", after="(?:long|run)"),
            amount("length", before="(?:running|runs?|long|length)(?: of)?"),
        ),
        "swing": (amount("angle", say="swings {}"),),
    },
    (
        rf"under(?: (?:a|the|my))?|{_BEHIND}|{_EXHAUST}|(?:rubber )?hangers?|hang|spacing|apart|first|between"
        r"|swings?|distance|how"
        r" (?:far|many|close)|where|should|place|go|every|for|hot|rubbers?"
    ),
    asks_for=r"spacing|apart|first|swings?|between|every|how far|hangers?",
    is_named=True,
    # the habit is one for all pipes
    settle=lambda values, _: {k: v for k, v in values.items() if k not in ("od", "run")},
    unmoved="metal finish state form standard service quality",
)
_PLUGS = r"(?:the |new |old |these |my )?(?:spark ?)?plugs?"
IGNITION = Topic(
    _ignition,
    "ignition beside headers",
    {
        "maker_gap": (
            amount(
                "length", before=r"(?:the )?(?:engine )?makers?(?:'s)?(?: says?| gap)?", bare="in", say="maker's {}"
            ),
        ),
        "gap": (
            amount("length", before=r"(?:plug )?gap(?: is| of| set(?: to| at)?)?", bare="in", say="gap {}"),
            amount("length", after="(?:plug )?gap", bare="in", say="gap {}"),
        ),
        "old_reach": (
            amount("length", before=r"old(?: ones?| plugs?)?(?: have| with| are)?(?: an?)?", say="old reach {}"),
        ),
        "reach": (
            amount("length", before=r"(?:new )?(?:spark )?plugs?(?: have| with| are)?(?: an?)?", say="reach {}"),
            amount("length", followed="reach", say="reach {}", doubt=1),
            amount("length", before="reach(?: is| of)?", say="reach {}"),
        ),
        "timing_before": (
            amount("angle", followed="before", say="timing {} before"),
            amount("angle", before="(?:was|before)", say="timing {} before"),
        ),
        "timing_after": (
            amount("angle", followed="(?:after|now|with)", say="timing {} after"),
            amount("angle", before="(?:now|after)", say="timing {} after"),
        ),
        "lead": (amount("length", followed=r"(?:from|off|to) (?:the )?(?:headers?|pipe|exhaust)", say="lead {} off"),),
    },
    (
        rf"{_PLUGS}|gap|reach|heat|(?:breaker )?points?|coil|electronic|transistor(?:ised|ized)?|cdi|ignition"
        r" ?range|timing|ignition|before|after|with|headers?|(?:what|which)|(?:does|do|will|did)"
        r"|chang(?:e|es|ed)|the same|check|putting|on|from|(?:plug|spark plug) (?:wires?|leads?)|leads?|hotter"
        r"|colder|for|set|same"
    ),
    asks_for=r"plug gap|gap|reach|heat ?range|timing|hotter|colder",
    is_named=True,
    table="exhausts",
)
TOPICS = (PIPE, GAP, JOINT, RUN, OUTLET, HANGER, IGNITION)
