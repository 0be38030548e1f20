"""What ends or turns a question and changes nothing of it: ``or not``, ``harder or softer``, ``not go over``."""

from __future__ import annotations

_MORE_OR_LESS = (
    r"harder|softer|stiffer|longer|shorter|stronger|weaker|higher|lower|faster|slower|tighter|looser|bigger|smaller"
    r"|heavier|lighter|thicker|thinner|worse|better|firmer|heavier|easier|hotter|cooler|more|less"
)
_ENDS = r"(?= *$| (?:and|what|how|which|if|please|pls|n)\b)"
# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str], ...] = (
    ("k's", r"(?<=[0-9d] )k's\b", "km/h"),
    ("hour", r"\b(?:k|kays|clicks|kilomet(?:re|er)s?) an hour\b", "km/h"),
    ("kays", r"\bkays\b", "km/h"),
    ("half thousand", r"\b([a-z]+|[0-9]+) and a half thousand\b", r"\1 thousand five hundred"),
    ("hottest", r"\b(?:what is the |what's the )?hottest\b", "how hot"),
    ("rubber", r"\brubber (?=cv boot|grommet|bellows)", ""),
    (
        " or ",
        rf"\b({_MORE_OR_LESS}) or (?:(?:is it|does it get|much|a lot|even|just|only) )*"
        rf"(?:{_MORE_OR_LESS}|the same|not)\b(?! than)",
        r"\1",
    ),
    (
        " or ",
        r"^(?!.*\bsame\b)(.*?) or (?:is it |am i |are they )?not(?: really)?(?= *$| (?:and|what|how|which|please|pls"
        r"|n)\b)",
        r"\1",
    ),
    *(  # how much stronger is one than the other, of the same size
        (
            f"how much {more}",
            rf"\bhow much {more} (?:is|are) (.+?) than (.+?)(?: (?:for|of|in|at) the same (?:size|wall|diameter)"
            rf"(?: (?:tube|tubing|bolt|bar|shaft))?)?(?= *$| and\b)",
            rf"is \1 {more} than \2",
        )
        for more in ("stronger", "weaker")
    ),
    (" or ", r"\bor (?:no|nope|nah)(?= *$)", ""),
    *(
        (
            cue,
            rf"\b((?:use|set|do|go for|go to|aim for|put|try|tighten to|torque to|pull|run|fit|get|buy)"
            rf"(?: (?:it|them|that|to))*) instead{_ENDS}",
            r"\1",
        )
        for cue in (" instead",)
    ),
    (
        "not ",
        r"\bnot (?:to )?(?:go|run|turn|rev|spin|exceed|be|get|take it|push it|drive)(?: it)?"
        r" (?:over|past|above|beyond|any faster than|faster than)\b",
        "keep under",
    ),
    (
        " 4 ",
        r"\b(drill|torque|wire|fuse|hole|bit|tap|die|pump|size|spec|setting|gap|gauge|relay|line|pipe|hose|nut"
        r"|plug)s? 4 (?=m ?[0-9]|[0-9]+/|an? |the |my )",
        r"\1 for ",
    ),
    ("mic", r"\b(?:mics|miced|mic'd|miked|mikes|mic) (?=(?:it|the|this|that|my|one|up|out|at|an?)\b)", "measures "),
    ("nb", r"(?<![a-z0-9])([0-9]{1,3}) ?nb\b", r"dn \1"),
    ("in mil", r"\b(thou|inch|inches|in|[0-9]/[0-9]+) in mil(?= *$)", r"\1 in mm"),
    (
        " k ",
        r"(?<= at )([0-9]{2,3}) ?k(?= )(?=.*\b(?:diff|axle|gears?|tyres?|tires?|revs?|rpm|top|final drive)\b)",
        r"\1 km/h",
    ),
)
