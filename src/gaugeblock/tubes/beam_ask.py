"""What is asked of a tube across a gap with a load in its middle, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.tubes.said import answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

    Settle = Callable[[dict[str, str], Refdata], dict[str, str]]

_BETWEEN = (
    r"(?:across|over|spanning|span(?: of| is)?|between(?: the)?(?: two| 2)?(?: supports?| stands?| rails?| ends?)?)"
    r"(?: (?:an?|of|the|is|about|gap|span|are))*"
)
_APART = (
    r"(?:span|apart|gap|between(?: the| two| 2| its)*(?: supports?| stands?| rails?| ends?| mounts?| feet|"
    r" posts?| legs| uprights?)?"
    r"|(?:from )?support to support|across)"
)
_SITS = (
    r"(?:h[au]ng(?:ing|s)?|sat|sitting|sits|standing|stands|placed|parked|on it|load|weight|in (?:the )?(?:middle"
    r"|cent(?:re|er)))"
)


_BUMP = (
    Shaped(
        rf"(?:bumps?|bump factor|jolts?|shock)(?: factor| of| times)* (?P<n>{NUMBER})(?: times| x)?",
        lambda m: m["n"],
        "bumps {} times",
    ),
    Shaped(
        rf"(?P<n>{NUMBER}) (?:g|gs|times)(?: (?:that|it|as much|the (?:load|weight)))?(?: (?:for|in"
        rf"|over|on|with|when|it|a|the|bumps?|jolts?|pot ?holes?|hits?))*",
        lambda m: m["n"],
        "bumps {} times",
    ),
)


_SPANS = (
    Shaped(rf"{_BETWEEN} (?:a |one )?met(?:re|er)(?: gap| span)?", always("1 m"), "across {}"),
    amount("length", before=_BETWEEN, say="across {}"),
    amount("length", before=r"(?:in )?(?:the )?(?:middle|cent(?:re|er)) of(?: an?)?", say="across {}"),
    amount("length", after=_APART, say="across {}"),
    amount("length", before="(?:an?|the)", after="(?:length|piece|long|bit)(?: of)?", say="across {}"),
    amount("length", after="(?:long|length)", say="across {}"),
    Shaped(  # a bare span of hundreds is in millimetres
        rf"(?P<n>[3-9][0-9]{{2}}|[1-4][0-9]{{3}}) {_APART}|{_BETWEEN} (?P<m>[3-9][0-9]{{2}}"
        rf"|[1-4][0-9]{{3}})"
        r"(?! ?(?:mm|in|inch|kgs?|lbs?|pounds|kilos?|n|\"))",
        lambda m: f"{m['n'] or m['m']} mm",
        "across {}",
        cue=("span", "apart", "gap", "between", "across", "over"),
    ),
    amount("length", after=r"of(?: an?)?(?= [0-9])", say="across {}", doubt=1, cue=(" of ",)),
)


def beam_of(slots: Mapping[str, tuple[Reader, ...]], settle: Settle) -> Topic:
    """What a tube bears in the middle of a span."""
    return Topic(
        lambda: answer_in("beam", "beam"),
        "load on a tube",
        {
            "od": slots["od"],
            "wall": slots["wall"],
            "span": _SPANS,
            "material": slots["material"],
            "load": (
                amount(
                    "mass",
                    after=rf"(?:of (?:load|weight|engine|motor|gearbox|box|axle|kit|stuff|man|gear|it) )?{_SITS}",
                    say="{} on it",
                ),
                amount("mass", before=r"(?:load|weight|hold|carry|take|bear|with)(?: of| is)?", say="{} on it"),
                amount("mass", say="{} on it"),
                Shaped(rf"(?P<n>{NUMBER}) ?(?:pounds?|lbs?)", lambda m: f"{m['n']} lb", "{} on it"),
            ),
            "bump": _BUMP,
            "share": (
                Shaped(
                    rf"(?:(?:at|to|allowed|only|using|use) )*(?P<n>{NUMBER}) ?(?:%|percent|per cent)"
                    r"(?: (?:of|the|its|is|yield|strength|allowed))*",
                    lambda m: f"{m['n']} %",
                    "{} of yield allowed",
                ),
            ),
            "yield_strength": slots["yield_strength"],
        },
        r"how hard(?: (?:is|are|will|does))?(?: (?:it|the (?:steel|metal|tube|box)))?|(?:be(?:ing)? )?(?:worked"
        r"|stressed|loaded|working)|(?:what |how much |the )?(?:bending )?stress(?:es)?"
        r"(?: (?:is|does|will|in) (?:it|the (?:steel|metal|box|tube)))?|seeing|see|weigh(?:s|ing)?"
        r"|between (?:two |2 )?(?:stands|supports|rails|jacks|boxes|trestles)|(?:what|how much)? ?(?:weight|load"
        r"|mass)(?: (?:will|can|does|would) it)?|hold|holds|bear|bears|carr(?:y|ies)"
        r"|take|takes|support|supports|middle|cent(?:re|er)|tubes?|tubing|pipe|crossmember|cross ?member|beam|bar"
        r"|sag|sags|droop|bend|bends|h[au]ng(?:ing|s)?|sitting|sat|sits|stands?|rails?|gap|between|across|x|hoist"
        r"|gantry"
        r"|it|gonna|going to|(?:before it )?(?:bends|bows|goes|yields)(?: for good)?|for good|before|(?:in"
        r" )?(?:the )?middle"
        r"|(?:permanently )?(?:bent|bow(?:s|ed)?)|permanently|posts?|legs|uprights?",
        needs=("od", "wall", "span"),
        joined=("material",),
        settle=settle,
        asks_for=r"across (?:an? )?[0-9./ ]+ ?(?:m|mm|ft|in|inch)\b.*[0-9] ?(?:kgs?|lbs?|kilos?|pounds?)"
        r"|span(?:s|ning)?|hold|holds|bear|bears|carry|carries|support|sag|sags|droop|load|weight|(?:in|at) the"
        r" (?:middle|cent(?:re|er))",
        is_named=True,
        unmoved="finish state standard service quality",
    )


def box_beam_of(box: Topic, beam: Topic) -> Topic:
    """What a load in the middle of a span makes of a square or rectangular tube."""
    return Topic(
        box.answer,
        "load on a box tube",
        {
            "size": box.slots["size"],
            "wall": box.slots["wall"],
            "stands": box.slots["stands"],
            "shape": box.slots["shape"],
            **{key: beam.slots[key] for key in ("span", "material", "load")},
        },
        beam.signals
        + r"|box(?:es)?(?: section)?|square|sections?|rhs|shs|hss|bench|gantry|top|enough|(?:or )?should i go"
        r" heavier|heavier"
        r"|most days|how (?:much|far)|steel|wall",
        needs=("size", "span", "load"),
        joined=("material",),
        settle=box.settle,
        opens=box.opens,
        asks_for=beam.asks_for,
        is_named=True,
        asks_back="box|square|rhs|shs|hss",
        unmoved="finish standard service quality",
    )
