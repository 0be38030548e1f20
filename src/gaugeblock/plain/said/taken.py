"""A value that takes back the one before it: ``37/9 sorry 39/9``, ``m8, no, m10`` -> as it is marked in a line.

Without its pause a bare ``no`` may mean not: then both are shown, and neither is taken for the other.
"""

from __future__ import annotations

_TAKEN_BACK = "no-wait"
_ONE = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_FRACTION = r"(?:(?:three|five|seven) eighths?|(?:five|seven|nine) sixteenths?|half|quarter|[0-9]{1,2}/(?:2|4|8|16))"
# Each kind of value that is taken back by one of its own kind.
_KINDS = (
    r"m ?[0-9]{1,2}(?: ?x ?[0-9.]+)?",
    rf"{_FRACTION}(?:[- ](?:[1-4][0-9]|sixteen|eighteen|twenty(?:[ -](?:four|eight))?|thirteen|fourteen))?"
    r"(?: un[cf]| fine| coarse)?",
    r"(?:(?:class |grade )?(?:[0-9]+\.[89]|eight point eight|(?:ten|twelve) point nine))",
    r"(?:grade|gr) ?(?:[258]|two|five|eight)",
    r"[3-6][0-9]/(?:[7-9]|1[0-9])",
    rf"(?:[2-5]\.[0-9]{{1,2}}|{_ONE} point [a-z]+(?: [a-z]+)?)",
    r"(?:dry|oiled|greased|lubed|lubricated|anti-?seized?|moly)",
    r"(?:cast iron|mild steel|stainless|steel|alumini?um|ally|ali|brass)",
    r"[0-9]+(?:\.[0-9]+)? ?(?:amps?|a|m|mm|mm2|awg|volts?|v|rpm|mph|metres?|meters?|feet|foot|ft|inch"
    r"|degrees|deg|thou)",
)
_AND_IS = r"(?: +(?:it is|it's|its|they're|that's|that|to|an?|make it))*"
_SURELY = (
    r"(?:sorry(?:  ?no)?|no  ?sorry|(?:no  ?|sorry  ?)?i me[a]nt?|make (?:that|it)|or rather|correction|scrub that)"
)
_NO = r"(?:no(?=  )|nope|nah|no(?= (?:it|they|its|it's|that's)\b))"
_CUES = ("sorry", "i mean", "make that", "make it", "or rather", "correction", "scrub that")

# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str], ...] = (
    *(
        (
            cue,
            rf"^((?:.*?[^\w./-])?{kind}(?![\w/]|\.[0-9]).*?)(?: +-)? +{_SURELY}{_AND_IS} +({kind})(?![\w/]|\.[0-9])",
            rf"\1 {_TAKEN_BACK} \2",
        )
        for kind in _KINDS
        for cue in _CUES
    ),
    *(
        (
            cue,
            rf"(?<![\w./-])({kind})(?: (?:bolts?|studs?|diff|one))?(?: +-)? +{_NO}{_AND_IS} +({kind})(?![\w/]|\.[0-9])",
            rf"\1 {_TAKEN_BACK} \2",
        )
        for kind in _KINDS
        for cue in (" no ", "nope", " nah")
    ),
    *((" no ", rf"(?<![\w./-])({kind}) no ({kind})(?![\w/]|\.[0-9])", r"\1 or \2") for kind in _KINDS),
)
