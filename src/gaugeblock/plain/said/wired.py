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
_AT_FIRST = (
    r"(?:(?:at|on|when it) (?:first )?(?:start(?:s|ing|up)?|turn[- ]on|switch[- ]on)|start(?:ing)?(?:[- ]?up)?|inrush"
    r"|surge)(?: (?:current|draw))?"
)
_AFTER = (
    r"(?:(?:when|once|while) )?(?:it(?:'s| is) )?(?:running|run|steady|continuous(?:ly)?|going|spinning|after that"
    r"|(?:once )?up to speed)"
)
_AMPS = r"([0-9.]+|[a-z]+(?:[ -][a-z]+)?) ?(?:amps?|a)"
_WHAT = (
    r"(?:amps?|amperage|current|draw|length|distance|run|how (?:many amps|much) (?:it|she|they) (?:draws?|pulls?"
    r"|takes?))"
)
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
    *(
        (  # of two currents both are answered: 28 amps at start, 18 running
            cue,
            rf"(?<![0-9./])\b{first}",
            r"\1 amps or \2 amps load",
        )
        for cue, first in (
            *(
                (
                    cue,
                    rf"{_AMPS} {_AT_FIRST}(?: +(?:and|then|but|or))* +(?:about )?([0-9.]+|[a-z]+(?:teen|ty)?) ?"
                    rf"(?:amps? |a )?{_AFTER}\b",
                )
                for cue in ("start", "inrush", "surge", "turn on", "turn-on", "switch on", "switch-on")
            ),
            *(
                (
                    cue,
                    rf"{_AMPS} {_AFTER}(?: +(?:and|then|but|or|with))* +(?:about )?([0-9.]+|[a-z]+(?:teen|ty)?) ?"
                    rf"(?:amps? |a )?{_AT_FIRST}\b",
                )
                for cue in ("start", "inrush", "surge", "turn on", "turn-on", "switch on", "switch-on")
            ),
        )
    ),
    *(  # what is not known is lacking
        (
            cue,
            rf"\b(?:(?:but|and|though) )?(?:i )?(?:i'?m |am )?(?:{said})(?: (?:of|about|on|what))*"
            rf"(?: (?:the|its|it's|my|exact))* {_WHAT}(?: (?:are|is|it (?:draws?|pulls?|takes?)))?(?= *$|  | (?:what"
            r"|which|so|and|but|from|in|with|for|on)\b)",
            "",
        )
        for cue, said in (
            ("not sure", "not sure"),
            ("unsure", "unsure"),
            ("know", "(?:do not|don'?t|not) know"),
            ("no idea", "(?:got |have |had )?no idea"),
            ("no clue", "(?:got |have |had )?no clue"),
        )
    ),
    *(  # two cores of one cable
        (
            cue,
            rf"^{_CIRCUIT}(.*?(?:mm2|mm|awg|gauge|sq|square)) twin(?: (?:cable|flex|wire))?(?= |$)(?! core)",
            r"\1 twin core cable",
        )
        for cue in (" twin",)
    ),
    ("twin ", r"\btwin (?=[0-9./]+ ?(?:mm2|mm|awg|gauge|sq)\b)", "twin core "),
    *(  # of a pair both are lit
        (
            cue,
            r"\b([0-9]{2,3}) ?w(?:att)?s?(?: (?:h[0-9]{1,2}|halogen|led|spot|driving|fog|head))* (?:pair|x ?2|twins?)\b"
            r"(?: of)?(?!.*\beach\b)",
            lambda m: f"{2 * int(m[1])} watt",
        )
        for cue in ("pair", "x2", "x 2", "twin")
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
            r"(?: (?:(?:when |if )?stalled|at stall|flat out|maxed out|(?:at|under|with a)(?: full)? load|loaded))?"
            r"(?= *$|  | (?:what|which|how|and|so|at|from|with|is)\b| [0-9a-z]+ (?:foot|feet|ft|met(?:re|er)s?|m)\b)",
            r"\1 amps",
        )
        for cue in ("starter ", "winch ")
    ),
)
