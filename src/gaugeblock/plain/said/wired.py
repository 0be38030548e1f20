"""Wires, batteries and relays as a shop says them -> as one would have typed it."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_COUNT = {"double": "2", "one": "1", "two": "2", "three": "3", "four": "4", "single": "1"}
_CIRCUIT = r"(?=.*\b(?:amps?|volts?|cables?|wires?|awg|fuses?|what gauge)\b)"
_STOCK = r"(?!.*\b(?:tub(?:e|es|ing)|box|section|plate|sheet|bar|bend|inch)\b)"
_DRAWN = r"(?:[0-9.]+ ?(?:a|amps?|w|watts?)|[a-z]+ (?:amps?|watts?))"
_IN_ALL = r"(?:between (?:them|the (?:two|pair|lot))|in total|altogether|all together|together|combined|all up|total)"
_LAMP = ("light", "lamp", "bulb", "globe")
_LAMPS = r"(?:head|spot|driving|fog)? ?(?:lights?|lamps?|bulbs?|globes?)"
# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    (
        "ught",
        r"\b(one|two|three|four|double|single|[1-4])[ -](?:aught|ought|nought|naught)s?\b",
        lambda m: f"{_COUNT.get(m[1], m[1])}/0",
    ),
    (
        " or ",
        r"(?<![0-9./x-])\b([0-9]+(?:\.[0-9]+)?) or ([0-9]+(?:\.[0-9]+)?) ?(gauge|awg|ga|mm2)\b",
        r"\1 \3 or \2 \3",
    ),
    *(
        (  # an area, as it is said aloud: two and a half mil square
            cue,
            rf"^{_CIRCUIT}(.*?[a-z0-9]) ?(?:mm|mils?|mills?)[ -]squared?\b(?! (?:tub|box|bar|section))",
            r"\1 mm2",
        )
        for cue in ("mil square", "mils square", "mill square", "mil-square", "mm square", "mm-square")
    ),
    *((cue, rf"^{_CIRCUIT}(.*?[a-z0-9]) ?sq\.? ?mils?\b", r"\1 mm2") for cue in ("sq mil", "sq. mil", "sqmil")),
    (" square", rf"^{_CIRCUIT}{_STOCK}(.*?[0-9]) ?mm square\b", r"\1 mm2"),
    *(
        (
            cue,
            rf"\b(?:twin|dual) ([0-9]{{2,3}}) ?w(?:atts?)?(?= (?:driving |spot |fog |head ?|work )?(?:lights|lamps"
            rf"|bulbs|spots|spotlights|spotties)\b)"
            rf"(?!.*\b{_IN_ALL})",
            lambda m: f"{2 * int(m[1])} watt",
        )
        for cue in ("twin ", "dual ")
    ),
    (" square", rf"^{_CIRCUIT}{_STOCK}(.*?)(?<! a) square\b(?! (?:feet|foot|met|mil|cent|on|to|one|root))", r"\1 mm2"),
    (
        "hundred ",
        r"\b((?!(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|few|couple|several"
        r"|of)\b)[a-z]+ )"
        r"hundred (watts?|amps?|milliamps?)\b",
        r"\1a hundred \2",
    ),
    ("cranking amps", r"\bcranking amps\b", "amps cranking"),
    (
        "keeps ",
        r"\b(?:if|because|since|as|when|and|but) (?:the|my|an?) (?:[0-9]+|[a-z]+)(?: ?(?:a|amps?))?(?: fuse"
        r"| one)? keeps"
        r"(?: on)? (?:blowing|popping|going)\b",
        "",
    ),
    ("everything ", r"\b(?:with )?everything (?:switched |turned )?off\b", "with the key off"),
    *(
        (
            cue,
            rf"\b(?:the |my |an? |both )*(?:twin|dual|pair of|two|both|three"
            rf"|four) (?=[a-z]+ .*?\b{_DRAWN}\b.*?\b{_IN_ALL})",
            "",
        )
        for cue in ("twin ", "dual ", "pair of ", "two ", "both ", "three ", "four ")
    ),
    *(
        (cue, rf"\b(?:the |my |an? )*(?:twin|dual|pair of|both) (?=[a-z]+ .*?\b{_DRAWN} each\b)", "two ")
        for cue in ("twin ", "dual ", "pair of ", "both ")
    ),
    *((cue, rf"(?<=amps ){_IN_ALL}\b", "in total") for cue in ("between ", "combined", "all up")),
    *(
        (
            cue,
            r"\b(?:(?:an? )?pair of|two|2|both) ?(?:new |halogen |h4 )*([0-9]{2})/([0-9]{2})(?: ?w(?:att)?s?)?"
            rf"(?: halogen)?(?= (?:\w+ )?(?:{_LAMPS}))",
            lambda m: f"{2 * int(max(m[1], m[2]))} watt",
        )
        for cue in _LAMP
    ),
    *(
        (
            cue,
            rf"\b([0-9]{{2}})/([0-9]{{2}}) ?(?:w(?:att)?s?)?(?: halogen)?(?= (?:\w+ )?(?:{_LAMPS}))",
            lambda m: f"{max(m[1], m[2])} watt",
        )
        for cue in _LAMP
    ),
    *(
        (  # so many metres of it: an area that no gauge is called by
            cue,
            r"(?<=[0-9a-z]) ?(met(?:re|er)s?|m) of (0?\.75|1\.5|2\.5|(?:one|two) point five|(?:one|two) and a half)"
            r"(?= (?:at|for|with|and|carrying|from|to|in|what|cables?|wires?|how)\b|  |$)",
            r" \1 of \2 mm2",
        )
        for cue in ("tre of ", "tres of ", "ter of ", "ters of ", "m of ")
    ),
    (
        " cranking",
        r"(?<![0-9./])\b((?:[1-9][0-9]{1,2}|(?:an?|one|two|three|four|five) hundred(?: and)?(?: (?:ten|twenty|thirty"
        r"|forty"
        r"|fifty|sixty|seventy|eighty|ninety))?)) (?=cranking\b(?! amps))",
        r"\1 amps ",
    ),
    ("spotties", r"\bspotties\b", "driving lights"),
    *(
        (  # B and S is the American wire gauge
            cue,
            rf"^{_CIRCUIT}(.*?[a-z0-9]) ?(?:b&s|b & s|b and s|b n s)(?: (?:gauge|gage|awg))?(?= |$)",
            r"\1 awg",
        )
        for cue in ("b&s", "b & s", "b and s", "b n s")
    ),
    *(
        (  # a starter is told in amps by everybody
            cue,
            r"\b((?:starter|winch)(?: motor)?(?: (?:that|which|it))? (?:draws?|pulls?|takes?)"
            r"(?: (?:about|around|near|up to))* (?:[1-9][0-9]{1,2}|(?:(?:an?|one|two|three|four|five) hundred)"
            r"(?: and)?(?: (?:ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety))?))"
            r"(?= *$|  | (?:what|which|how|and|so|at|from|with|is)\b)",
            r"\1 amps",
        )
        for cue in ("starter ", "winch ")
    ),
)
