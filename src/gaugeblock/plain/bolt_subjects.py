"""What a line on bolts and wrenches is about that rules alone have: fitted again, seized, checked again, in what range.

Each of these rules holds however the line goes on.
"""

from __future__ import annotations

from gaugeblock.plain.subjects import Subject, shelved, told_by_subject

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.subjects import Groups
    from gaugeblock.tables.load import Refdata

_AGAIN = (
    r"re-?us(?:e|ed|ing|able)|again|twice|second time|old|refit\w*|(?:put|chuck|bung|stick|pop)(?: \w+){0,2} back|back in"
    r"|bin|chuck|replace\w*|renew\w*|new (?:one|ones)"
)
_TIGHT = r"torque (?:of|for|spec|figure)|how tight|n ?m|ft ?lbs?|foot pounds?|lb ?ft"
_METHODS = (
    *("torque wrench", "turn-of-nut", "bolt elongation", "by feel"),
    *("computer-controlled wrench, yield-point sensing", "ultrasonic measurement"),
)


def _of_methods(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rule of the torque wrench, and how far each way of tightening is off."""
    return ("torque wrench scatter",), shelved("preload scatter", "fasteners/preload", _METHODS, data)


def _of_shares(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The shares of proof that joints are tightened to, and the rule of the torque wrench."""
    return ("torque wrench scatter",), shelved("target preload share", "fasteners/preload", ("target",), data)


SUBJECTS = (
    Subject(
        "a crow-foot at a right angle",
        (r"crow'?s?[ -]?(?:foot|feet)", r"(?:90|right angles?|square(?: on)?|sideways)(?! ?(?:nm|lb|ft|foot|mm|in))"),
        ("torque wrench with a crow foot, at a right angle",),
        unless=r"(?:mm|in|inch|cm)|on [0-9]+|gr ?[0-9]+|grade|[0-9]+-[0-9]+|m[0-9]+|n ?m|ft ?lbs?|foot pounds?|lb ?ft|pounds?|newton",
        forbids=True,
    ),
    Subject(
        "a locknut with nylon fitted again",
        (r"ny(?:loc|lock|lok|lon)s?(?: (?:insert )?(?:lock)?nuts?)?", _AGAIN),
        ("lock washers and nylon nuts", "breakaway test", "reuse in steering"),
        unless=rf"{_TIGHT}|heat|hot|temp\w*|hose|tube|line|fuel|deg[cf]",
        forbids=True,
    ),
    Subject(
        "red or blue threadlocker",
        (r"(?:red|blue) (?:or|vs|versus) (?:red|blue)|(?:red|blue)\b.*\b(?:or|vs|versus|than) (?:red|blue)",),
        ("blue and red threadlocker", "threadlocker near heat"),
        unless=rf"{_TIGHT}|wires?|coolant|fuse|paint|an(?:ti-?freeze)?|cables?|dip",
        forbids=True,
    ),
    Subject(
        "lock washers",
        (
            r"(?:spring|split|lock|star) ?washers?",
            r"do|does|any (?:good|use)|useful|useless|worth\w*|pointless|need\w*|necessary|help|under|should|better",
        ),
        ("flat washer and lock washer", "lock washers on flywheel bolts"),
        unless=_TIGHT,
        forbids=True,
    ),
    Subject(
        "wheel nuts checked again",
        (
            r"(?:wheel|lug) ?(?:nuts?|bolts?|studs?)|lugs?",
            r"re-?check\w*|re-?torqu\w*|re-?tight\w*|(?:go|going|went) (?:back )?over|check\w*|again",
            r"when|how (?:soon|long|far|often|many)|after|miles|km|tyre|tire|wheel change",
        ),
        ("recheck distance", "trailer recheck", "recheck"),
        unless=rf"{_TIGHT}|re-?us\w+|stud broke|snapped",
        forbids=True,
    ),
    Subject(
        "stainless on stainless",
        (
            r"stainless",
            r"seiz\w*|gall(?:s|ed|ing)?|pick(?:s|ed|ing)? up|bind(?:s|ing)?|bound up|locked (?:up|solid)|stuck",
        ),
        ("stainless on stainless", "stainless"),
        unless=rf"{_TIGHT}|exhaust|brake|caliper|piston|hose",
        forbids=True,
    ),
    Subject(
        "stainless bolts in place of others",
        (
            r"stainless|a[24]-[78]0",
            r"(?:in (?:its|their|the) place|in place of|instead|swap\w*|replac\w*|change (?:to|them))",
            r"bolts?|screws?|8\.8|10\.9|grade [258]|gr ?[58]",
        ),
        ("stainless", "higher grade replacement"),
        unless=rf"{_TIGHT}|exhaust|hose|wash\w+|vs",
        forbids=True,
    ),
    Subject(
        "bolts tightened past yield, fitted again",
        (
            r"stretch(?:[- ]type| bolts?| head bolts?|y)?|tty|torque[- ]to[- ]yield|angle[- ]tightened|yield bolts?",
            r"bolts?|studs?",
            _AGAIN,
        ),
        ("torque-to-yield bolts", "torque to yield", "connecting rod bolts and nuts"),
        unless=_TIGHT,
        forbids=True,
    ),
    Subject(
        "the range of a torque wrench",
        (
            r"(?:torque )?(?:wrench|clicker)",
            r"(?:goes|go|reads?) (?:below|under|down to|that low)|(?:bottom|low(?:er)?|top|end|middle) (?:end )?of (?:its|the) (?:range|scale)"
            r"|(?:use|using) (?:the|a|my) (?:big|large|half inch|3/4)|too (?:big|coarse) (?:a wrench )?for"
            r"|(?:can i|could i|ok to|okay to) use it (?:at|for|on|down)|big torque wrench",
        ),
        ("range",),
        unless=r"crow\S*|set (?:it )?to|what (?:do|should) i set",
        forbids=True,
    ),
    Subject(
        "how near each way of tightening comes",
        (
            r"angle|turn[- ]of[- ](?:the[- ])?nut|stretch|elongation|by feel|torque wrench|plain torque|torque alone",
            r"closer|closest|accura\w*|scatter|spread|how (?:close|near|far (?:off|out))|trust(?:ed)?|better|best",
            r"bolt (?:load|tension)|preload|clamp(?: load)?|tension|torque wrench",
        ),
        (),
        unless=r"[0-9].*|brakes?|driveline|joint angle|u-?joint",
        forbids=True,
        shown=_of_methods,
    ),
    Subject(
        "what share of proof to tighten to",
        (
            r"(?:75|70|80|85|90|seventy|ninety|three quarters)(?: ?(?:%|percent|per cent))?",
            r"(?:of )?proof",
            r"never|not|permanent|re-?us\w+|come (?:out|apart|off)|taken apart|why|go",
        ),
        (),
        unless=rf"{_TIGHT}|m[0-9].*|[0-9]+/[0-9]+|grade|class",
        forbids=True,
        shown=_of_shares,
    ),
)


def told_of_bolts(words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line on bolts and wrenches is about; None for any other."""
    return told_by_subject(words, data, SUBJECTS)
