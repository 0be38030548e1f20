"""What is asked of a coolant, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_MIXES = ("33 %", "40 %", "50 %", "60 %")


def _coolant() -> Callable[..., Sheet]:
    from gaugeblock.lines.cooling import coolant

    return coolant


def _kinds(data: Refdata) -> dict[str, str]:
    """The glycols by name, and what a shop calls a coolant."""
    return {word: cell for word, cell in data.words("lines", "item").items() if cell.startswith("coolant, ")}


def _pounds(match: re.Match[str]) -> str:
    return f"{match['n']} psi"


def _mix(match: re.Match[str]) -> str:
    return f"{match['n']} %" if match["n"] else f"{match['a']}/{match['b']}"


def _open(values: dict[str, str], _data: Refdata) -> Open | None:
    """The usual mixtures, where none was said."""
    return None if "mix" in values else (("mix",), [{"mix": mix} for mix in _MIXES])


COOLANT = Topic(
    _coolant,
    "coolant",
    {
        "mix": (
            Shaped(
                r"(?:an? )?(?:(?P<a>[3-7][0-9]) ?[/:-] ?(?P<b>[3-7][0-9])|(?P<n>[3-7][0-9]) ?(?:%|percent|per cent))"
                r"(?: mix(?:ture)?| solution)?",
                _mix,
            ),
            Shaped(
                r"half(?: and half)?(?: (?:antifreeze|coolant|water|glycol(?: and water)?))?",
                always("50 %"),
                "half and half",
            ),
            Shaped(r"(?:plain |straight |pure )?water", always("water"), "plain water"),
        ),
        "kind": (Named(_kinds, tail="mix|mixture|solution"),),
        "cap": (
            amount("stress", before="(?:with|under|at)(?: an?| the)?", say="{} cap"),
            amount("stress", after="(?:rad(?:iator)? |pressure )*cap", say="{} cap"),
            amount("stress", say="{} cap"),
            Shaped(r"(?P<n>[0-9]{1,2})(?: ?(?:lbs?|pounds?|pound))(?: (?:rad(?:iator)? )?cap)", _pounds, "{} cap"),
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
                r"|protect(?:s|ion|ed)?(?: to| down to)?",
                always("freezing"),
                "where it freezes",
            ),
            Shaped(
                r"(?:(?:good )?(?:down )?to |for |at )(?:minus |-)[0-9]{1,2} ?(?:deg(?:rees?)? ?)?(?:f|c|fahrenheit"
                r"|celsius)?",
                always("freezing"),
                "where it freezes",
            ),
            Shaped(
                r"(?:when does (?:it )?)?boil\w*(?: over)?(?: points?| temp\w*)?|how hot",
                always("boiling"),
                "where it boils",
            ),
        ),
    },
    r"(?:and|to|with) water(?= with| under| on| at| what| when|$)|gets? to|it gets to|before|below(?: freezing|"
    r" zero)?|how far|mix(?:ture)?|good(?: to)?|down to|rad(?:iator)?(?:"
    r" cap)?|cap|pressure|temp(?:erature)?s?|points?|solution|glycol"
    r"|coolant|antifreeze|over|limit",
    needs=("fact",),
    asks_for=r"coolants?|anti-?fre\w*|glycol|radiator|rad|cap|50/50|60/40|40/60|mix\w*|water",
    is_named=True,
    opens=_open,
    unmoved="metal finish form standard service quality",
)


def _antifreeze() -> Callable[..., Sheet]:
    from gaugeblock.lines.antifreeze import antifreeze

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
        "now": (
            Shaped(
                rf"(?:(?:is|it'?s|only|at|now|just|has|currently) )+{_SHARE}", lambda m: f"{m['n']} %", "{} in it now"
            ),
        ),
        "mix": (
            *COOLANT.slots["mix"][:2],
            Shaped(
                r"(?:want|to|need|get|make)(?: it)?(?: to| up to| get)? (?P<n>[2-7][0-9])(?: ?(?:%|percent|per cent))?",
                lambda m: f"{m['n']} %",
                "{} wanted",
            ),
        ),
        "kind": COOLANT.slots["kind"],
    },
    r"how (?:many|much)(?: (?:lit(?:re|er)s?|quarts?|pints?|gallons?))?|neat(?: stuff)?|straight|pure|concentrate|add"
    r"|put"
    r"(?: in| back)?|drain(?: out| off)?|top up|antifreeze|coolant|glycol|want|i|do|as|and|system|holds?|takes?|litres?"
    r"|for|good to|to get|off|rad(?:iator)?|block|frost|protect(?:ion|ed)?|down|only|mix",
    needs=("system",),
    asks_for=r"anti-?freeze|coolant|glycol|neat|mix",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
