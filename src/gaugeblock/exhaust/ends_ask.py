"""What is asked about the hangers and the end of an exhaust, and about the ignition beside it, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

EXHAUST = r"(?:the |an? |my )?(?:exhausts?|tail ?pipes?|mufflers?|silencers?)(?: (?:pipe|tube|system|run))?"


def _hanger() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.hanger import exhaust_hanger

    return exhaust_hanger


def _ignition() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.ignition import exhaust_ignition

    return exhaust_ignition


def _outlet() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.outlet import exhaust_outlet

    return exhaust_outlet


# Places of which no rule is listed: each is named in the answer, and no other place stands in for it.
_UNLISTED = (
    r"queensland|victoria|new south wales|nsw|tasmania|australian?|british|britain|england|scotland|wales|uk|american"
    r"|usa|united states|us federal|federal|california|texas|florida|ohio|ontario|alberta|canadian?|new zealand|ireland"
    r"|france|french|italy|spain|sweden|norway|japan|south africa"
)
OUTLET = Topic(
    _outlet,
    "exhaust outlet",
    {
        "jurisdiction": (
            Shaped(r"(?:in )?(?P<n>germany|austria|new hampshire|quebec|arizona)", lambda m: m["n"], "in {}"),
            Shaped(
                rf"(?:(?:in|under|by) )?(?:the )?(?P<n>{_UNLISTED})(?: (?:commercial|federal|motor carrier|road|state"
                r"|traffic))*(?: (?:rules?|law|code))?",
                lambda m: m["n"],
                "in {}",
            ),
        ),
    },
    (
        rf"{EXHAUST}|outlets?|tips?|exits?|ends?|(?:stop|finish|quit|terminate|dump|turn)s?(?= (?:out|short"
        rf"|before|ahead"
        r"|just|behind|under|in front|at))|(?:just |right )?(?:ahead|short) of|out|just|back|tyres?|tires?|come out"
        r"|stick(?:s|ing)?(?: out)?|point(?:s|ing)?|past|beyond"
        r"|(?:the )?body(?:work)?|side[- ]?(?:pipes?|exit|exhausts?|dumps?)|bumpers?|how far|have to|has to"
        r"|dump(?:s)?|legal|allowed|rules?|law|where|side|"
        r"under|in front of|may|before|rear|wheel|door|cabs?|below|panels?|sills?|skirts?|opening windows?"
        r"|windows?|vents?"
        r"|behind|instead of at the (?:back|rear)|(?:on the )?(?:left|right|side)|discharge[sd]?|finish(?:es"
        r"|ed)?|alright"
        r"|design rules|not come out|(?:not )?(?:come|go|be)|camper|should"
    ),
    asks_for=r"outlets?|exits?|dumps?|come out|tips?|legal|stick\S*|tail ?pipes?|past|beyond|side[- ]?pipes?"
    r"|(?:exhausts?|pipe|system) (?:ends?|stops?|finish(?:es)?)|discharge\w*"
    r"|finished",
    is_named=True,  # it needs nothing else
    columns={"jurisdiction": ("exhaust/outlets", "jurisdiction")},
    table="exhausts",
)
_BEHIND = r"(?:behind|from|after|past|off) (?:the |my )?(?:flex\S*|joint|collector|header)(?: (?:pipe|section|joint))?"
_LEAST_RUN = 1500  # mm: no hanger stands so far from another, and no pipe is so thick
_PLACE = (
    r"(?:the |my |an? )?(?:manifolds?|flange|headers?|collector|engine|down ?pipes?|gearbox|tail(?: ?pipe)?|back|rear"
    r"|bumper|tip|end|axle|cat|turbo)"
)
_ASKED = r"spacing|apart|first|swings?|between|every|how far"  # of an exhaust alone
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
                r"(?: pipe| system)?|bore",
                most=200,
            ),
            Shaped(  # no pipe is 2.5 mm across
                r"(?P<n>[1-6]\.[0-9]+|[1-6] [1-7]/8|[1-6] [13]/4|[1-6] 1/2|[1-6])(?= (?:(?:stainless|mild|steel"
                r"|alumini[sz]ed) )*(?:exhaust|pipe|tube|system)s?\b)(?! (?:pipes|tubes|systems|exhausts)\b)",
                lambda m: f"{m['n']} in",
                "{} pipe",
                cue=("exhaust", "pipe", "tube", "system"),
            ),
        ),
        "run": (
            amount("length", after="(?:long|run)"),
            amount("length", before="(?:running|runs?|long|length)(?: of)?"),
            amount(
                "length",
                after=r"(?:(?:of|exhaust|complete|full) )*(?:system|exhaust|pipework)",
                say="{} long",
                cue=("system", "exhaust", "pipework"),
            ),
            amount("length", say="{} long", least=_LEAST_RUN, doubt=1),
        ),
        "swing": (amount("angle", say="swings {}"),),
    },
    (
        rf"under(?: (?:a|the|my))?|{_BEHIND}|{EXHAUST}|(?:rubber )?hangers?|hang|spacing|apart|first|between"
        r"|swings?|(?:swing )?angle|distance|how"
        rf" (?:far|many|close)|from {_PLACE}|to {_PLACE}|runs?|bore|(?:rubber )?mounts?|with|(?:in the middle"
        r"|at the (?:back"
        r"|rear|front))|(?:do )?they go|where|should|place|go|every|for|hot|rubbers?"
    ),
    asks_for=rf"hangers?|hang(?:s|ing)?|how many (?:rubber )?(?:mounts|rubbers)"
    rf"|(?:{EXHAUST}|pipe|system) .*\b(?:{_ASKED})|(?:{_ASKED}) .*\b(?:{EXHAUST}|pipe|system)",
    is_named=True,
    # the habit is one for all pipes
    settle=lambda values, _: {k: v for k, v in values.items() if k != "od"},
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
            amount(
                "length",
                before=r"(?:(?:i|we|i've|ive|i'm|he|have|them|they|are|it|is|and|but) )*(?:set|gapped|opened|closed)"
                r"(?: (?:it|them|mine|at|to|up|out|down|the gap))*",
                say="gap {}",
                cue=("set", "gapped", "opened", "closed"),
            ),
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
        r"|chang(?:e|es|ed)|the same|check|putting|fitting|on|from|(?:plug|spark plug) (?:wires?|leads?)|leads?|hotter"
        r"|colder|for|set|same"
    ),
    asks_for=r"reach|heat ?range|timing|hotter|colder|gap\b.*\b(?:plugs?|points?|coil|ignition|cdi|electronic)"
    r"|(?:plugs?|points?|coil|ignition|cdi|electronic)\b.*\bgaps?",
    is_named=True,
    table="exhausts",
)
