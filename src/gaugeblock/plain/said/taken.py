"""A value that takes back the one before it: ``37/9 sorry 39/9``, ``m8, no, m10`` -> as it is marked in a line.

Without its pause a bare ``no`` may mean not: then both are shown, and neither is taken for the other.
"""

from __future__ import annotations

_TAKEN_BACK = "no-wait"
_ONE = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_FRACTION = r"(?:(?:three|five|seven) eighths?|(?:five|seven|nine) sixteenths?|half|quarter|[0-9]{1,2}/(?:2|4|8|16))"
_PITCH = r"(?:[0-2]?\.[0-9]{1,2}|[12](?![\w./])|(?:one|two) point [a-z]+(?: five)?|point [a-z]+(?: five)?)"
# Each kind of value that is taken back by one of its own kind.
_KINDS = (
    rf"m ?[0-9]{{1,2}}(?:(?: ?x ?| by | ){_PITCH})?",
    rf"{_FRACTION}(?:[- ](?:[1-4][0-9]|sixteen|eighteen|twenty(?:[ -](?:four|eight))?|thirteen|fourteen))?"
    r"(?: un[cf]| fine| coarse)?",
    r"(?:(?:class |grade )?(?:[0-9]+\.[89]|eight point eight|(?:ten|twelve) point nine))",
    r"(?:grade|gr) ?(?:[258]|two|five|eight)",
    r"[3-6][0-9]/(?:[7-9]|1[0-9])",
    rf"(?:[2-5]\.[0-9]{{1,2}}|{_ONE} point [a-z]+(?: [a-z]+)?)",
    r"(?:(?:at|to|of|for|only|is|it's) )?"
    r"(?:[0-9]{2,4}|(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)(?:[ -][a-z]+)?)",
    r"(?:dry|oiled|greased|lubed|lubricated|anti-?seized?|moly)",
    r"(?:cast iron|mild steel|stainless|steel|alumini?um|ally|ali|brass)",
    r"[0-9]+(?:\.[0-9]+)? ?(?:amps?|a|m|mm|mm2|awg|volts?|v|rpm|mph|metres?|meters?|feet|foot|ft|inch"
    r"|degrees|deg|thou)",
)
_AND_IS = (
    r"(?: +(?:it is|it's|its|they're|they are|that's|that|to|an?|make it|no|now|i see|i was wrong"
    r"|i(?:'ve)? (?:just )?(?:measured|checked|miked|looked|counted)(?: (?:it|them|that|again|at it))?))*"
)
_SURELY = (
    r"(?:sorry(?:  ?no)?|no  ?sorry|(?:no  ?|sorry  ?)?i me[a]nt?|make (?:that|it)|or rather|correction|scrub that"
    r"|(?:no  ?)?(?:hang|hold) on(?: a (?:sec|second|minute|mo))?)"
)
_NO = r"(?:no(?=  )|nope|nah|no(?= (?:it|they|its|it's|that's)\b))"
_CUES = ("sorry", "i mean", "make that", "make it", "or rather", "correction", "scrub that", "hang on", "hold on")

# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str], ...] = (
    *(  # of a thread its pitch alone
        (
            cue,
            rf"\b(m ?[0-9]{{1,2}})(?: ?x ?| by | )({_PITCH}) +{_SURELY}{_AND_IS} +(?:by +)?({_PITCH})",
            rf"\1 by \2 {_TAKEN_BACK} \1 by \3",
        )
        for cue in _CUES
    ),
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
    *(  # of any amount the last one of its unit, which is found when the line is read
        (
            cue,
            rf"^(.*[0-9].*?)(?:,| )+{_SURELY}{_AND_IS} +(?=[0-9.]*[0-9]/?[0-9]*(?: [a-z*/]+)*$)",
            rf"\1 {_TAKEN_BACK} ",
        )
        for cue in _CUES
    ),
    *((" no ", rf"(?<![\w./-])({kind}) no ({kind})(?![\w/]|\.[0-9])", r"\1 or \2") for kind in _KINDS),
)
