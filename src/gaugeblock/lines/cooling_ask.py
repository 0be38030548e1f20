"""What is asked of a coolant, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Hit, Named, Shaped, Topic, always, amount
from gaugeblock.lines.shares import Now, Wanted

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable, Iterable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_WHOLE = 100
_MIXES = ("33 %", "40 %", "50 %", "60 %")


def coolant(*, gauge: str = "", data: Refdata, **options: str) -> Sheet:
    """As ``gaugeblock.coolant``; with what a ``gauge`` reads how far that is from where it boils."""
    from gaugeblock.lines.cooling import coolant as answer
    from gaugeblock.lines.cooling import left_to_boil

    sheet = answer(data=data, **options)
    return left_to_boil(sheet, gauge) if gauge else sheet


def _coolant() -> Callable[..., Sheet]:
    return coolant


_MOST_C = 135  # a gauge that reads more is in degF


def _read(match: re.Match[str]) -> str:
    """What a gauge reads, in the unit that its number can be of."""
    said = match["u"] or ("c" if int(match["n"]) <= _MOST_C else "f")
    return f"{match['n']} deg{said[0].upper()}"


_NO_HEAT = r"(?! ?(?:psi|kpa|lbs?|pounds?|bar|ft|feet|m\b|met|%|percent|per cent|mph|rpm|litres?|hp))"
_SCALE = r"(?: ?(?:deg(?:rees?)? ?)?(?P<u>fahrenheit|celsius|f|c)(?= |$))"
_HEAT = rf"(?P<n>1[0-9]{{2}}|2[0-9]{{2}}|[89][0-9]){_NO_HEAT}{_SCALE}?"


def _kinds(data: Refdata) -> dict[str, str]:
    """The glycols by name, and what a shop calls a coolant."""
    found = {word: cell for word, cell in data.words("lines", "item").items() if cell.startswith("coolant, ")}
    return {**found, **{kind: f"coolant, {kind} glycol" for kind in ("propylene", "ethylene")}}


def _pounds(match: re.Match[str]) -> str:
    return f"{match['n']} psi"


def _mix(match: re.Match[str]) -> str | None:
    """A share of glycol; two parts are one where they make a whole."""
    if match["n"]:
        return f"{match['n']} %"
    return f"{match['a']}/{match['b']}" if int(match["a"]) + int(match["b"]) == _WHOLE else None


def _open(values: dict[str, str], _data: Refdata) -> Open | None:
    """The usual mixtures, where none was said; of a mixture without a cap where it freezes and where it boils."""
    values = _settle(values, _data)
    if "fact" not in values and "mix" not in values:
        from gaugeblock.errors import InputError

        why = "it was not said what of it is asked"
        raise InputError("coolant", "fact", why, (), "say whether it freezes or boils, and its mixture or its cap")
    if "fact" not in values:
        return ("fact",), [{"fact": fact} for fact in ("freezing", "boiling")]
    return None if "mix" in values else (("mix",), [{"mix": mix} for mix in _MIXES])


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """A cap and a height say that it is asked where it boils."""
    is_under = "fact" not in values and not {"cap", "air", "gauge"}.isdisjoint(values)
    return {**values, "fact": "boiling"} if is_under else values


class Told(Shaped):
    """So much cold asks where a mixture freezes, so much heat where it boils; it is told."""

    __slots__ = ("_where",)

    def __init__(self, pattern: str, fact: str = "freezing", where: str = "where it freezes") -> None:
        super().__init__(pattern, always(fact))
        self._where = where

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, with what was typed."""
        for hit in super().take(words, at, data):
            yield Hit(hit.count, hit.value, f"{self._where}, {' '.join(words[at : at + hit.count])}")


def _share_in(match: re.Match[str]) -> str | None:
    """So much antifreeze in so much of it all, or to so much water: its share."""
    neat, other = float(match["x"]), float(match["y"])
    whole = other if match["into"] else neat + other
    return (
        f"{int(_WHOLE * neat / whole)} %" if match["u"][0] == (match["v"] or match["u"])[0] and neat < whole else None
    )


_OF_VOLUME = r"(?:gals?|gallons?|l|lit(?:re|er)s?|quarts?|qts?|pints?)"
_SHARE_IN = (
    rf"(?P<x>[0-9.]+) ?(?P<u>{_OF_VOLUME}) (?:of )?(?:the )?(?:(?:straight|neat|pure) )?(?:stuff"
    rf"|anti-?freeze|coolant|glycol)"
    rf" (?:(?P<into>in(?:to)?) )?(?:(?:to|and|with|plus|an?|my|the) )*(?P<y>[0-9.]+)(?: ?(?P<v>{_OF_VOLUME}))?"
)


class ShareIn(Shaped):
    """The share of so much antifreeze in so much, told with both."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, with what was typed."""
        for hit in super().take(words, at, data):
            yield Hit(hit.count, hit.value, f"{hit.value}, {' '.join(words[at : at + hit.count])}")


_GLYCOLS = frozenset(["antifreeze", "anti-freeze", "glycol", "ethylene", "propylene", "coolant", "eg", "pg"])
_AND_WATER = r"(?:and|with|plus|n|in|mixed with) water"


class _BareWater(Shaped):
    """Water alone in a line is plain water; with antifreeze in the line it is a part of the mixture."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The water of a line that names nothing to mix with it."""
        return super().take(words, at, data) if _GLYCOLS.isdisjoint(words) else ()


COOLANT = Topic(
    _coolant,
    "coolant",
    {
        "mix": (
            ShareIn(
                rf"{_SHARE_IN} (?:(?:cooling )?system|radiator|engine|block|all|total)(?P<w>)", _share_in, cue=(" in",)
            ),
            ShareIn(rf"{_SHARE_IN} (?:of )?water(?P<w>)", _share_in, cue=("water",)),
            Shaped(
                r"(?:an? )?(?:(?P<a>[3-7][0-9])(?: ?[/:-] ?| )(?P<b>[3-7][0-9])|(?P<n>[3-7][0-9]) ?(?:%|percent"
                r"|per cent))"
                r"(?: mix(?:ture)?| solution)?",
                _mix,
            ),
            Shaped(
                r"half(?: and half)?(?! (?:the|of|full|empty|way|a|an)\b)(?: (?:antifreeze|coolant|water"
                r"|glycol(?: and water)?))?",
                always("50 %"),
                "half and half",
            ),
            Shaped(r"(?P<n>[3-7][0-9]) (?:mix(?:ture)?|solution)(?P<a>)(?P<b>)", _mix, cue=("mix", "solution")),
            Shaped(
                r"(?:neat|straight|pure|undiluted|concentrated?|100 ?(?:%|percent|per cent)) ?(?:anti-?freeze"
                r"|coolant|glycol)"
                r"(?: (?:in|on its own|by itself|alone|with no water|without (?:any )?water))*",
                always("100 %"),
                "neat",
                cue=("neat", "straight", "pure", "undilut", "concentrat", "100"),
            ),
            Shaped(r"(?:plain|straight|pure|only|just) water", always("water"), "plain water"),
            _BareWater(r"water", always("water"), "plain water"),
        ),
        "kind": (
            Named(_kinds, tail=rf"{_AND_WATER} (?:mix|mixture|solution)|mix|mixture|solution|{_AND_WATER}"),
            Named(_kinds, lead="water (?:and|with|plus|n)|water mixed with", tail="mix|mixture|solution"),
        ),
        "cap": (
            amount("stress", before="(?:with|under|at)(?: an?| the)?", say="{} cap"),
            amount("stress", after="(?:rad(?:iator)? |pressure )*cap", say="{} cap"),
            amount("stress", say="{} cap"),
            Shaped(
                r"(?:(?:with|under|at|on)(?: an?| the)? )?(?P<n>[0-9]{2,3}) ?kpa(?: (?:rad(?:iator)? |pressure )*cap)?",
                lambda m: f"{m['n']} kPa",
                "{} cap",
                cue=("kpa",),
            ),
            Shaped(
                r"(?:(?:with|under|at|on)(?: an?| the)? )?(?P<n>[0-9]{1,2})(?: ?(?:lbs?|pounds?))(?:"
                r" (?:rad(?:iator)? )?cap)",
                _pounds,
                "{} cap",
                cue=("lb", "pound"),
            ),
        ),
        "gauge": (
            Shaped(
                r"(?:(?:the |my |her |his )?(?:temp(?:erature)? )?(?:gauge|needle|temp(?:erature)?)|runs?|running|sits"
                r"|sitting|reads|reading|shows|showing|goes|climbs|hits)"
                r"(?: (?:sits|sitting|reads?|reading|shows|showing|says|went|goes|gets|climbs|hits|is|was|up|at|to"
                rf"|about|around|on|near|touching))* {_HEAT}",
                _read,
                "its gauge at {}",
            ),
            Shaped(
                r"(?P<n>1[0-9]{2}|2[0-9]{2}|[89][0-9]) ?(?:deg(?:rees?)? ?)?(?P<u>fahrenheit|celsius|f|c)"
                r"(?: on (?:the )?(?:gauge|clock|dash))?(?= |$)",
                _read,
                "its gauge at {}",
                doubt=1,
            ),
        ),
        "air": (
            amount(
                "length",
                before=r"(?:at|up at|live at|elevation(?: of)?|altitude(?: of)?|up)(?: about)?",
                after="(?:of )?(?:altitude|elevation|above sea level|up|high)",
                say="at {}",
            ),
            amount(
                "length",
                before=r"(?:at|up at|up in|live at|elevation|altitude)(?: of)?(?: about)?",
                say="at {}",
            ),
            amount("length", after="(?:of )?(?:altitude|elevation|above sea level|up|high)", say="at {}"),
            Shaped(
                r"(?:(?:the )?(?:barometer|air pressure|air|glass)(?: (?:says|reads|is|at|shows|of))*"
                r" )?(?P<n>[0-9]{3,4})"
                r" ?(?:millibar|hpa)",
                lambda m: f"{float(m['n']) / 10:g} kPa",
                "air {}",
                cue=("millibar", "hpa"),
            ),
        ),
        "fact": (
            Shaped(
                r"(?:freez\w*|froze|frozen|burst)(?: (?:points?|protection|temp\w*|down to))?|how cold|cold(?:est)?"
                r"|(?:frost )?(?:protect(?:s|ion|ed)?|guards?)(?: to| down to| against frost)?|(?:degrees of )?frost"
                r"|slush(?:y|ed|es)?",
                always("freezing"),
                "where it freezes",
            ),
            Told(
                r"(?:(?:(?:good|protect(?:s|ed|ion)?|safe|guards?) )?(?:down )?to |for |at |(?:do|stand"
                r"|take|survive|handle"
                r"|cope with|cover) )(?:minus |-)[0-9]{1,2} ?(?:deg(?:rees?)? ?)?(?:f|c|fahrenheit"
                r"|celsius)?",
            ),
            Told(
                r"boil(?:s|ed|ing)?(?: over)? (?:at|about|around|near) (?:about |around )?[0-9]{2,3}"
                r"(?! ?(?:psi|lbs?|pounds?|ft|feet|m|%|percent|bar|kpa))(?: ?(?:deg(?:rees?)? ?)?"
                r"(?:f|c|fahrenheit|celsius|degrees)?(?= |$))?",
                "boiling",
                "where it boils",
            ),
            Shaped(
                r"(?:when does (?:it )?)?boil\w*(?: over)?(?: points?| temp\w*)?|how hot",
                always("boiling"),
                "where it boils",
            ),
        ),
    },
    r"how (?:far|close|near)(?: (?:off|away|short|from|to))?(?: (?:is|am|are|it|that|this|i|from|the))*"
    r"|how much (?:room|margin|headroom)(?: (?:is|have|do|i|left))*"
    r"|(?:about|close|near) to (?=boil)|gauge|temp(?:erature)?|running"
    r"|(?:and|to|with|without) water(?= with| under| on| at| what| when|$)|gets? to|it gets to|before"
    r"|below(?: freezing|"
    r" zero)?|how far|mix(?:ture)?|good(?: to)?|down to|rad(?:iator)?(?:"
    r" cap)?|cap|pressure|temp(?:erature)?s?|points?|solution|glycol"
    r"|(?:what|which|how much|how strong) (?:an? )?(?:%|percent(?:age)?|mix(?:ture)?|ratio|strength)(?: of)?"
    r"|(?:with )?(?:no|without(?: an?| the)?) (?:rad(?:iator)? |pressure )*cap|unpressuri[sz]ed|in an open pan"
    r"|(?:is )?(?:(?:that|this|it|he|she|they) )?(?:true|right|correct|bull|rubbish)(?= *$)"
    r"|coolant|antifreeze|over|limit|mixes|better|hows|add(?:s|ed)?(?: to)?|lifts?|raises?|lose|best|pour(?:ed"
    r"|ing)?(?: in)?",
    settle=_settle,
    asks_for=r"coolants?|anti-?fre\w*|glycol|propylene|ethylene|radiator|rad|cap|50/50|60/40|40/60|mix\w*|water",
    is_named=True,
    opens=_open,
    unmoved="metal finish form standard service quality",
)


def antifreeze(*, data: Refdata, **options: str) -> Sheet:
    """The neat antifreeze; InputError where what is in it was told by its frost, or where it is too much already."""
    from gaugeblock.errors import InputError
    from gaugeblock.lines.antifreeze import antifreeze as answer
    from gaugeblock.lines.cooling import share_of

    now, frost, mix = options.get("now"), options.pop("now_frost", ""), options.get("mix")
    if frost:
        why = "what is in it was told by the cold that it stands, and it is reckoned by its share of glycol"
        raise InputError(frost, "now", why, (), "read the share off the refractometer too: `it is 20 % now`")
    if now and mix and share_of(now) > share_of(mix) > 0:
        why = f"{now} is in it and {mix} is wanted, so water goes in, and no neat antifreeze"
        do = f"drain the share 1 - {share_of(mix):g}/{share_of(now):g} of what it holds, and fill up with water"
        raise InputError(now, "now", why, (), do)
    return answer(data=data, **options)


def _antifreeze() -> Callable[..., Sheet]:
    return antifreeze


def _cold(match: re.Match[str]) -> str:
    unit = "degF" if (match["f"] or "").startswith("f") else "degC"
    return f"-{match['n']} {unit}"


_SHARE = r"(?P<n>[0-9]{1,2}) ?(?:%|percent|per cent)"
ANTIFREEZE = Topic(
    _antifreeze,
    "antifreeze",
    {
        "system": (
            amount("volume", after="(?:cooling )?(?:system|capacity|in all|in total|coolant)", say="system of {}"),
            amount(
                "volume",
                before="(?:system|capacity|it|engine)(?:'?s)?(?: (?:holds|takes|is|of|us))*",
                say="system of {}",
            ),
            amount("volume", say="system of {}"),
        ),
        "frost": (
            Shaped(
                r"(?:(?:down )?to |at |for )?(?:minus |-|below )(?P<n>[0-9]{1,2}) ?(?:deg(?:rees?)? ?)?(?P<f>f\w*"
                r"|c\w*)?",
                _cold,
                "good to {}",
            ),
        ),
        "now_frost": (
            Shaped(
                r"(?:tests?|tested|reads?|reading|shows?|showing|measures?|is only|was only)"
                r"(?: (?:good|only|just|safe|protected|to|at|down|for|about|as))* (?:minus |-|below )(?P<n>[0-9]{1,2})"
                r" ?(?:deg(?:rees?)? ?)?(?P<f>f\w*|c(?:elsius|entigrade)?)?"
                r"(?: on (?:the |a |my )?(?:refractometer|hydrometer|tester))?",
                _cold,
                "it stands {} now",
                cue=("test", "read", "show", "measure", "only"),
            ),
        ),
        "now": (Now(),),
        "mix": (
            *COOLANT.slots["mix"][2:5],
            Wanted(),
        ),
        "kind": COOLANT.slots["kind"],
    },
    r"how (?:many|much)(?: (?:lit(?:re|er)s?|quarts?|pints?|gallons?))?|neat(?: stuff)?|straight|pure|concentrate|add"
    r"|cooling|before i|so|put(?: in| back)?|drain(?: out| off)?|top up|antifreeze|coolant|glycol|want|i|do|as|and"
    r"|system|holds?|takes?|litres?"
    r"|for|good to|to get|off|rad(?:iator)?|block|frost|protect(?:ion|ed)?|down|only|mix|topp?ing(?: it)?(?: up)?"
    r"|drop(?:s|ping)?|dilute|thin|refractometer|hydrometer|goes in|lifts?|raises?|brings?|out|water|from|reach(?:es)?"
    r"|swap(?:ped|ping)?(?: out| for)?|replac(?:e|ed|ing)(?: (?:with|by))?|tester|undiluted|comes? out|(?:goes "
    r"|go )?back in"
    r"|all up|in all|at the moment|currently|concentrat(?:e|ed|ion)|strength|fill(?:ed)?|with",
    needs=("system",),
    asks_for=r"anti-?freeze|coolant|glycol|neat|mix|system\b.*[0-9] ?(?:%|percent)|[0-9]+(?= ?(?:%"
    r"|percent).* water)|water\b.*[0-9](?= ?(?:%"
    r"|percent))",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
