"""What is told round a question and changes nothing: a purpose, a thing that bears no mark -> nothing."""

from __future__ import annotations

# What is done so that nothing bad comes of it changes nothing: so that it neither knocks nor scorches.
_BAD = (
    r"(?:knocks?|rattles?|hits?|rubs?|touch(?:es)?|scorch(?:es)?|burns?|melts?|cooks?|boils?|chafes?|sags?|squeaks?"
    r"|shakes?|catch(?:es)?|clonks?|bangs?|clouts?|fouls?)"
)
_PURPOSE = (
    r"\bso (?:that )?(?:it|they|she|he|the \w+|nothing) (?:doesn't|doesnt|does not|don't|dont|do not|won't|wont|will"
    r" not"
    rf"|neither) {_BAD}(?: nor {_BAD})?(?: (?:when|as|if) (?:she|it|he|the car) \w+)?(?: on \w+)?"
)
_UNMARKED = (
    r"\b(?:and )?(?:there(?:'s| is) )?nothing (?:is |was )?(?:stamped|marked|printed|cast)"
    r"(?: (?:on|in) (?:it|them|the \w+))?"
)
# A piece that a line must have; the pattern; what is written for it.
SAID_ROUND: tuple[tuple[str, str, str], ...] = (
    *(
        (cue, _PURPOSE, "")
        for cue in ("doesn't", "doesnt", "does not", "neither", "don't", "dont", "do not", "won't", "wont", "will not")
    ),
    (
        "hand",
        r"\bsecond[- ]?hand (?=winch|engine|motor|trailer|truck|ute|car\b|van|gearbox|welder|compressor|radiator|fan"
        r"|pump)",
        "",
    ),
    *((f"{cent}-line", rf"\b{cent}-line\b", f"{cent} line") for cent in ("centre", "center")),
    ("stamped", _UNMARKED, ""),
    ("marked", _UNMARKED, ""),
    ("printed", _UNMARKED, ""),
    ("cast", _UNMARKED, ""),
)
