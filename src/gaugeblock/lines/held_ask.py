"""What is asked of the clips of a line, and of what grows between two anchors, as people say it."""

from __future__ import annotations

from gaugeblock.answer.alloys import Graded
from gaugeblock.answer.asking import NUMBER, Hit, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable, Iterable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_STAINLESS, _FUEL = "stainless", "fuel"
_GROWN = ("lines/growth", "lines/expansion")
_CLIPPED = ("brake", "fuel feed", "fuel return")


def _answer(name: str) -> Callable[..., Sheet]:
    from gaugeblock.lines import held

    return getattr(held, name)  # type: ignore[no-any-return]


def _services(_data: Refdata) -> tuple[str, ...]:
    from gaugeblock.lines.keys import SERVICES

    return SERVICES


def _open_growth(values: dict[str, str], data: Refdata) -> Open | None:
    """Every metal whose growth is on record, or every stainless one, where no coefficient is stated."""
    said = values.get("material", "")
    if "expansion" in values or said not in ("", _STAINLESS, f"{_STAINLESS} steel"):
        return None
    metals = dict.fromkeys(m for table in _GROWN for m in data.table(table).column("material").values())
    return ("material",), [{"material": m} for m in sorted(metals) if m.startswith(said)]


def _open_clips(values: dict[str, str], _data: Refdata) -> Open | None:
    """The services that a published spacing is of, where neither one of them nor a spacing was said."""
    said = values.get("service", "")
    if said not in ("", _FUEL) or (not said and "spacing" in values):
        return None
    return ("service",), [{"service": s} for s in _CLIPPED if s.startswith(said)]


_ABOVE = (
    r"(?P<n>[0-9]{2,4}) ?(?:deg(?:rees?)? ?)?(?P<u>c|f|celsius|centigrade|fahrenheit|degc|degf)"
    r" (?:hotter(?! than)|(?:above|over|hotter than|up (?:on|from)|more than) (?:the )?(?:shop|room|ambient|workshop"
    r"|garage|outside|air"
    r"|day)(?: air)?(?: temp(?:erature)?)?)"
)


class NotBehindFeet(Shaped):
    """A size that is no part of feet and inches: 5 ft 6 in."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read; right behind feet only with a point or a part: 10 ft 2.5 in."""
        is_behind = at > 0 and words[at - 1] in ("ft", "foot", "feet", "'") and words[at].isdigit()
        is_behind = is_behind and not any("/" in word for word in words[at + 1 : at + 2])
        return () if is_behind else super().take(words, at, data)


class Above(Shaped):
    """So many degrees over a shop of 20 degC, in the scale that was said."""

    __slots__ = ()

    def __init__(self) -> None:
        super().__init__(_ABOVE, _above, cue=("above", "over", "hotter", "up ", "more"))

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, and told with what was typed."""
        for hit in super().take(words, at, data):
            yield Hit(hit.count, hit.value, f"at {hit.value}, {words[at]} over a shop of 20 degC")


def _above(match: re.Match[str]) -> str:
    """So many degrees over a shop of 20 degC."""
    is_c = match["u"].removeprefix("deg")[0] == "c"
    return f"{int(match['n']) + (20 if is_c else 68)} {'degC' if is_c else 'degF'}"


GROWTH = Topic(
    lambda: _answer("growth"),
    "growth",
    {
        "length": (amount("length", after="long|between (?:its |the )?anchors", say="{}"), amount("length", say="{}")),
        "hot": (
            amount(
                "temperature", before="(?:to|and|at|up to|reach(?:es)?|gets to|hits|hot at)(?: about)?", say="at {}"
            ),
            Above(),
            amount("temperature", after="hot", say="at {}"),
            amount("temperature", say="at {}", doubt=1),
        ),
        "cold_end": (
            amount(
                "temperature",
                before="from|between|starting (?:at|from)|cold(?: end)?(?: at| is| of)?|fitted at|built at",
                say="from {}",
            ),
            amount("temperature", followed="(?:up )?to", say="from {}"),
            amount("temperature", after="cold", say="from {}"),
        ),
        "material": (
            Named(words_of("lines", "material", *_GROWN)),
            Shaped("mild", always("carbon steel"), "mild steel", doubt=1),
            Shaped("stainless(?: steel)?", always(_STAINLESS), "stainless steel", doubt=1),
            Graded("aluminium"),
        ),
        "od": (
            NotBehindFeet(
                r"(?P<n>[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9.]+) ?(?:in|inch(?:es)?|\"|mm)"
                r"(?= (?:stainless|mild|steel|exhaust|pipe|tube|header))",
                lambda m: m[0],
                "{} tube",
                cue=("in", '"', "mm"),
            ),
            NotBehindFeet(  # beside a length of feet: no exhaust is wider
                r"(?P<n>[1-6](?:\.[0-9]+| [1-7]/8| [13]/4| 1/2)?|[1-6][0-9](?:\.[0-9])?(?= ?mm)) ?(?:in|inch|\"|mm)",
                lambda m: m[0],
                "{} tube",
                doubt=1,
                cue=("in", '"', "mm"),
            ),
            Shaped(  # 2 1/2 16 gauge
                rf"(?P<n>{NUMBER})(?: ?(?:in|inch|\"|mm))?(?: od)? (?:x |by )?[0-9]{{1,2}} ?(?:ga|gauge)(?: wall)?",
                lambda m: m[0],
                "{} tube",
                cue=("ga",),
            ),
            Shaped(  # 2.5 x .065
                rf"(?P<n>{NUMBER})(?: ?(?:in|inch|\"|mm))? (?:x|by) (?:0?\.[0-9]+"
                rf"|[1-3](?:\.[0-9]+)?)(?: ?(?:in|inch|\"|mm))?"
                r"(?: wall)?",
                lambda m: m[0],
                "{} tube",
                cue=(" x ", " by "),
            ),
        ),
        "expansion": known(
            "thermal expansion",
            "(?:its |own )*(?:coefficient|expansion|cte)(?: coefficient| of(?: thermal)? expansion)?",
            "coefficient {}",
            cue=("um/", "ppm", "micron"),
        ),
    },
    r"(?:how much )?(?:does|will)?(?: it| an?| my| the)?|grow(?:th|s|ing)?|expan(?:ds?|sion)|(?:how much )?longer"
    r"|which (?:one )?(?:moves|grows|expands|gets|stretches) (?:the )?(?:more|most|longer|furthest)|system|moves?|more"
    r"|above|lengthens?|gets?|(?:when |as )?(?:it )?(?:warms?(?: up)?|heats?(?: up)?)|run|length|piece|from cold"
    r"|cold|goes"
    r"|exhausts?|pipes?|tubes?|lines?|headers?|thermal|anchors"
    r"|hot|heat|(?:how much )?(?:slack|movement|free play)|(?:from the )?flanges?|(?:to the )?(?:first |last "
    r"|next )?hangers?"
    r"|first|last|runs?|(?:to the )?tail(?: ?pipe)?",
    needs=("length", "hot"),
    opens=_open_growth,
    settle=lambda values, _: {k: v for k, v in values.items() if k != "od"},  # a length grows alike at any diameter
    asks_for=r"grow\w*|expan\w*|longer|lengthens?|slack|movement",
    is_named=True,
    unmoved="finish state form standard service quality",
)
CLIPS = Topic(
    lambda: _answer("clips"),
    "clips of a line",
    {
        "spacing": (
            amount("length", before=r"every|each|spaced(?: at| by)?|spacing(?: of| is)?|at", say="every {}"),
            amount("length", after="apart|spacing|between(?: clips)?", say="every {}"),
        ),
        "length": (amount("length", after="long|of", say="{}"), amount("length", say="{}", doubt=1)),
        "service": (
            Shaped("brakes?", always("brake"), "brake"),
            Shaped("fuel (?:feed|supply|pressure)", always("fuel feed"), "fuel feed"),
            Shaped("fuel return", always("fuel return"), "fuel return"),
            Shaped("fuel|gas|petrol", always(_FUEL), "fuel", doubt=1),
            Shaped("vapou?r", always("vapour"), "vapour"),
            Shaped("coolant|heater", always("coolant"), "coolant"),
            Shaped("trans(?:mission)?(?: cooler)?|gearbox", always("transmission"), "transmission"),
        ),
    },
    r"(?:how many |cushion(?:ed)? |rubber |line |p[- ]?)*clips?|clipp(?:ed|ing)|supports?|hard ?lines?|lines?|pipes?"
    r"|hoses?|tubes?|tubing|hold|run|long|how far apart|apart|spac(?:ed|ing)|along|frame|rails?|every",
    needs=("length",),
    opens=_open_clips,
    columns={"service": _services},
    asks_for=r"clips?|clipp(?:ed|ing)|supports?",
    is_named=True,
    unmoved="finish standard quality",
)
TOPICS = (GROWTH, CLIPS)
