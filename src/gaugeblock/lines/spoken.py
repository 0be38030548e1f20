"""What people call a line, a hose or a rubber, what flows in it, and its size, where its heat is asked."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import Hit, Shaped, always, amount, words_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

# What people call an item besides.
_SAID_ITEMS = {
    "dot fluid": "brake fluid",  # what is asked most comes first where all there is is told
    **{
        f"nylon {fuel} {line}": "nonmetallic fuel tube"
        for fuel in ("petrol", "gas")
        for line in ("pipe", "line", "tube")
    },
    **{f"{word} rubber hose": "rubber hose, wire braid" for word in ("braided", "steel braided", "wire braided")},
    **{
        f"epdm {what} hose": "EPDM rubber"
        for what in ("heater", "coolant", "rubber", "rad", "water", "oil cooler", "cooler")
    },
    **{f"{what} hose epdm": "EPDM rubber" for what in ("heater", "coolant", "radiator", "rad", "rubber")},
    **{f"silicone {what} hose": "silicone coolant hose" for what in ("heater", "water", "coolant")},
    **{f"ptfe {what}": "PTFE" for what in ("braided line", "braided hose", "fuel line", "brake line", "fuel hose")},
    **{f"{what} air brake tube": "nylon air brake tube" for what in ("nylon", "plastic nylon")},
    "nylon airbrake tube": "nylon air brake tube",
    "nylon airbrake pipe": "nylon air brake tube",
    "fkm": "fluoroelastomer (FKM)",
    "nbr": "nitrile rubber (NBR)",
    "braided rubber line": "rubber hose, wire braid",
    "nitrile braided hose": "nitrile rubber (NBR)",
    "braided nitrile hose": "nitrile rubber (NBR)",
    "nitrile rubber hose": "nitrile rubber (NBR)",
    "nitrile fuel line": "nitrile rubber (NBR)",
    "nitrile fuel pipe": "nitrile rubber (NBR)",
    "neoprene gaiter": "chloroprene rubber (CR)",
    "automatic fluid": "automatic transmission fluid",
}
# By the rules of these, no limit of heat holds in oil.
_SWELLS = (
    "EPDM rubber",
    "silicone rubber",
    "silicone coolant hose",
    "natural rubber (NR)",
    "heater hose",
    "coolant hose",
)
_OIL, _FUEL = "oil", "fuel"
_FUEL_HOSE = "fuel hose"


def items(data: Refdata) -> dict[str, str]:
    """What the heat of is asked by name; a rubber hose alone is as often one of coolant or of brakes."""
    known = words_of("lines", "item", "lines/fluids", "lines/fuels", "lines/materials", bare=False)(data)
    return {**_SAID_ITEMS, **{phrase: cell for phrase, cell in known.items() if phrase != "rubber hose"}}


def ruined_inside(item: str, inside: str, data: Refdata) -> Sheet | None:
    """That an item does not last with what flows in it, by the rules: no limit of heat holds there; None where no rule
    says so.
    """
    is_fuel_hose = inside == _OIL and (item == _FUEL_HOSE or item.startswith("SAE J30"))
    if item not in _SWELLS and not is_fuel_hose:
        return None
    from gaugeblock.answer.decision import none
    from gaugeblock.answer.sheet import Sheet

    do = f"In {inside} {item} swells and fails, whatever its limit of heat: take nitrile or fluorocarbon rubber there."
    if is_fuel_hose:
        do = "With hot oil fuel hose does not last, whatever its limit of heat: take hose that is made for hot oil."
    return Sheet(item, {"item": item}, data, [], [], (), decision=none("KEEP UNDER", do))


_CARRIES = (
    r"(?:(?:in|with|for|on|to|of|and|carry(?:ing)?|carries|full of|holds?|as|through|a|an|the|my"
    r"|(?<=[a-z] )hot|some|its) )*"
)
_OF_OIL = (
    r"(?:(?:engine|motor|gearbox|gear|transmission|trans|tranny|auto(?:matic)?(?: box)?|power steering|steering"
    r"|hydraulic"
    r"|sump|diff|axle|turbo)(?: |$))*"
)
_PLUMBING = r"(?: (?:coolers?|hoses?|lines?|pipes?|returns?|feeds?|drains?|supply|itself|on the other side))*"
# What something flows in: a line without it asks of the oil or the fuel itself.
_VESSEL = (
    r"\b(?:hoses?|lines?|pipes?|tub(?:e|es|ing)|rubber|epdm|nitrile|nbr|buna|silicone|ptfe|nylon|fkm|fluoro\w*|neoprene"
    r"|o-?rings?|gaskets?|j30|hnbr|butyl|sbr)\b"
)


class Inside(Shaped):
    """What flows in a hose or stands at a rubber, where one is named."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read."""
        hits = list(super().take(words, at, data))
        if hits and re.search(_VESSEL, " ".join(words)) is not None:
            yield from hits


INSIDE = (
    Inside(
        rf"{_CARRIES}{_OF_OIL}(?:oil|atf|transmission fluid|(?:gearbox|trans(?:mission)?|tranny|auto(?:matic)?) fluid"
        rf"|(?:trans(?:mission)?|tranny|gearbox) cooler){_PLUMBING}",
        always(_OIL),
        "in oil",
        cue=("oil", "atf", "trans", "tranny", "gearbox", "auto"),
    ),
    Inside(
        r"(?:in|with|for|carry(?:ing)?|carries|full of)(?: (?:the|my|some|hot))* (?:petrol|gasoline|fuel"
        r"|diesel)(?: lines?)?",
        always(_FUEL),
        "in fuel",
        doubt=1,
        cue=("petrol", "gasoline", "fuel", "diesel"),
    ),
)
_HOSE = r"(?:lines?|tubes?|tubing|pipes?|hoses?)"
_MADE_OF = (
    r"(?:nitrile|silicone|nylon|rubber|epdm|ptfe|neoprene|fkm|braided|plastic|copper|steel|brake|fuel|coolant|heater"
    r"|radiator|rad|oil|vacuum|water|ordinary|plain|black|flexible|soft|bore|id|od|cooler)"
)
# A line that asks of heat: else the size of a hose is what it is about.
_HOT_PARTS = r"\b(?:exhausts?|headers?|manifolds?|turbo\w*|downpipes?|tailpipes?|silencers?|mufflers?|flame|engine)\b"
_OF_HEAT = (
    r"\b(?:hot|hotter|heat|temp\w*|deg\w*|celsius|centigrade|fahrenheit|[0-9]+ ?[cf]|melt\w*|boil\w*|cook\w*"
    r"|survives?|exhausts?|headers?|manifolds?|turbo\w*|downpipes?|silencers?|mufflers?)\b"
)


class Size:
    """The size of a hose, before what it is or behind it, in a line that asks of heat: it is no gap to what is hot."""

    __slots__ = ("_is_alone", "_reader", "doubt")

    def __init__(self, reader: Shaped, *, is_alone: bool = False) -> None:
        self._reader = reader
        self._is_alone = is_alone  # behind the word for a hose, in a line that names nothing hot
        self.doubt = reader.doubt

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """None of its own: the topic knows the words of a line."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: it is a number."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The size, where heat is asked."""
        hits = list(self._reader.take(words, at, data))
        line = " ".join(words)
        if not hits or re.search(_OF_HEAT, line) is None:
            return
        is_behind = at > 0 and re.fullmatch(_HOSE, words[at - 1]) is not None
        if not self._is_alone or (is_behind and re.search(_HOT_PARTS, line) is None):
            yield from hits


_RUBBERS = r"(?:nitrile|silicone|nylon|epdm|ptfe|neoprene|fkm|rubber|braided)"
_IS = r"(?: (?:is|are|of|its|it's|that|which|about|size|bore))+"
SIZE = (
    Size(amount("length", followed=rf"(?:{_MADE_OF} ){{0,4}}{_HOSE}", say="{} line")),
    Size(amount("length", followed=rf"(?:bore |id |od |black |plain |soft )*{_RUBBERS}", say="{} line")),
    Size(amount("length", before=rf"{_HOSE}{_IS}", say="{} line", doubt=1)),
    Size(amount("length", after=r"(?:id|bore|inside diameter|i\.d\.)", say="{} line", doubt=1)),
    Size(amount("length", say="{} line", doubt=2), is_alone=True),
)


class OnIt(Shaped):
    """A temperature on it, where what is hot was the last thing that was named, and no line or hose behind it."""

    __slots__ = ("_hot",)

    def __init__(self, pattern: str, hot: str) -> None:
        super().__init__(pattern, _degrees, "hot part {}", cue=("on it",))
        self._hot = hot

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read."""
        named = [word for word in words[:at] if re.fullmatch(rf"{self._hot}|{_HOSE}", word)]
        if named and re.fullmatch(self._hot, named[-1]):
            yield from super().take(words, at, data)


# A line that tells a hose which oil ruins: how hot it is changes nothing.
_RUINED = r"\b(?:epdm|heater hose|coolant hose|silicone|fuel hose|natural rubber)\b.*\b(?:oil|atf|trans\w*|gearbox)\b"


class Unscaled(Shaped):
    """So many degrees of what ruins a hose, without their scale."""

    __slots__ = ()

    def __init__(self) -> None:
        super().__init__(
            r"(?:gets?|goes|runs?|sees|hits|at|reaches)(?: (?:up|to|at|maybe|about|around|say))* (?P<n>[0-9]{2,3})"
            r"(?: degrees)?(?! ?(?:deg[cf]?|c|f|celsius|fahrenheit|centigrade|%|psi|bar|mm|in|inch(?:es)?|ft|m|hp)\b)",
            lambda match: match["n"],
            "{} degrees",
            cue=("get", "go", "run", "see", "hit", "at", "reach"),
        )

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, where no heat is asked."""
        if re.search(_RUINED, " ".join(words)) is not None:
            yield from super().take(words, at, data)


def _degrees(match: re.Match[str]) -> str:
    return f"{match['n']} {'degC' if match['u'].removeprefix('deg').strip()[:1] == 'c' else 'degF'}"


ON_IT = r"(?P<n>[0-9]+) ?(?P<u>(?:deg(?:rees?)? ?)?(?:c|f|celsius|centigrade|fahrenheit)|degc|degf) on it"
