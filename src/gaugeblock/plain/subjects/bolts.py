"""What a line on bolts and wrenches is about that rules alone have: fitted again, seized, checked again, in what range.

Each of these rules holds however the line goes on.
"""

from __future__ import annotations

from gaugeblock.plain.by_name import refused_by_name
from gaugeblock.plain.subjects.general import told_by_subject
from gaugeblock.plain.subjects.subject import Subject, shelved

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata

_AGAIN = (
    r"re-?us(?:e|ed|ing|able)|again|twice|second time|old|refit\w*|(?:put|chuck|bung|stick|pop)(?: \w+){0,2} back"
    r"|back in"
    r"|bin|chuck|replace\w*|renew\w*|new (?:one|ones)"
)
_TIGHT = r"torque (?:of|for|spec|figure|in)|(?:i|you|we|the) torque|newton|how tight|n ?m|ft ?lbs?|foot pounds?|lb ?ft"
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


class _Of(Subject):
    """A subject with its ``cues``, of which a line has one, so that no pattern of another is made."""

    __slots__ = ("cues",)

    def __init__(self, cues: tuple[str, ...], *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.cues = cues


_BRAKE_BOLTS = "master cylinder, booster, caliper and brake control fasteners"
_SUBJECTS = (
    _Of(
        ("wheel ", "lug "),
        "washers under wheel nuts",
        (r"washers?|spacers?", r"(?:wheel|lug) (?:nuts?|bolts?|studs?)", r"under|need|use|put|fit|want|behind|with"),
        ("washer under a wheel nut",),
        unless=r"torque|tight\w*|how (?:much|many|tight)|lb|nm|hub ?centric",
    ),
    _Of(
        ("stainless", "a2", "a4", "304", "316"),
        "stainless bolts in brakes, steering and suspension",
        (
            r"stainless|a[24](?:[- ]?[78]0)?|304|316",
            r"bolts?|screws?|studs?|nuts?|fasteners?|hardware",
            r"brakes?|cal?lipers?|suspension|steering|wishbones?|control arms?|shocks?|(?:seat ?)?belts?|ball joints?"
            r"|hubs?",
            r"can|ok|okay|safe|use|using|used|replace|swap|instead|strong enough|good enough|legal|allowed",
        ),
        ("stainless on brakes, steering and suspension", _BRAKE_BOLTS),
        unless=r"torque|tight\w*|lines?|hoses?|pipes?|flares?|tub(?:e|es|ing)|anti-?seize|gall\w*",
        forbids=True,
    ),
    _Of(
        ("plastic", "nylon", "acetal", "abs", "fibreglass", "fiberglass", "grp"),
        "a thread in plastic",
        (
            r"plastic|nylon|acetal|abs|fibreglass|fiberglass|grp",
            r"torque|tight\w*|screw(?:s|ed|ing)?|bolts?|threads?",
            r"in|into|in to|threaded",
        ),
        ("thread in plastic",),
        unless=r"inserts?|lock ?nuts?|nylocs?|nyloks?|washers?|fuel|lines?|clips?|tank",
        forbids=True,
    ),
    _Of(
        ("bsp",),
        "NPT and BSP pipe threads together",
        (
            r"(?:[0-9/]+ )?(?:inch )?npt[sf]?|national pipe",
            r"(?:[0-9/]+ )?(?:inch )?bsp[tp]?(?: taper| parallel)?|british (?:standard )?pipe",
            r"into|in|fits?|screws?|same|instead|mix\w*|seals?|adapt\w*|or|with|to|and|vs|difference",
        ),
        ("NPT and BSPT",),
        unless=r"torque|tight\w*|drill|tap|(?:how many|number of|by) turns|turns? past|pitch|tpi|across|measur\w*",
        forbids=True,
    ),
    _Of(
        ("crow",),
        "a crow-foot at a right angle",
        (r"crow'?s?[ -]?(?:foot|feet)", r"(?:90|right angles?|square(?: on)?|sideways)(?! ?(?:nm|lb|ft|foot|mm|in))"),
        ("torque wrench with a crow foot, at a right angle",),
        unless=r"(?:mm|in|inch|cm)|on [0-9]+|gr ?[0-9]+|grade|[0-9]+-[0-9]+|m[0-9]+|n ?m|ft ?lbs?|foot pounds?|lb ?ft"
        r"|pounds?|newton",
        forbids=True,
    ),
    _Of(
        ("seiz", "siez", "grease", "oil", "lub"),
        "a lubricant and the torque",
        (
            r"anti-?s[a-z]+|(?:copper |moly )?grease|copper ?slip|oil(?:ed|ing)?|lub(?:e|ricant|ricating|rication)",
            r"chang(?:es?|ing)|alters?|affects?|lowers?|reduces?|drops?|matters?|makes? a difference",
            r"torques?|tightening|figure|setting",
        ),
        ("nut factor",),
        unless=r"[0-9]+[-/][0-9]+|m ?[0-9]+|pump|pressure|filter|change (?:the )?oil|oil change|drain|seals?",
    ),
    _Of(
        ("washer",),
        "a drain plug without its washer",
        (
            r"(?:drain|sump) ?plugs?",
            r"(?:without|with no|no|missing|lost|left out|forgot)(?: (?:a|an|the|its|any|copper|crush|sealing"
            r"|my))* washers?",
        ),
        ("plug without its washer",),
        forbids=True,
    ),
    _Of(
        ("tap ", "tap,"),
        "a tap of another thread",
        (
            r"taps?",
            r"clean(?:s|ed|ing)?(?: (?:up|out))?|chas(?:e[sd]?|ing)|run(?:ning)?(?: (?:an?|it|the))*|through|into|in",
            r"(?:m ?[0-9]+(?: ?x ?[0-9.]+)?|[0-9]+ ?x ?[0-9.]+)\b.*\b(?:[0-9]+/[0-9]+|half|unf|unc|inch|tpi|bs[wf])"
            r"|(?:[0-9]+/[0-9]+|half|unf|unc|inch|tpi|bs[wf])\b.*\b(?:m ?[0-9]+(?: ?x ?[0-9.]+)?|[0-9]+ ?x ?[0-9.]+)",
        ),
        ("tap of another thread",),
        unless=r"drill(?: size)?|insert|helical|what size|which drill",
        forbids=True,
    ),
    _Of(
        ("flange",),
        "self-locking nuts of a propeller shaft flange",
        (
            r"(?:self[- ]?lock\w*|lock ?nuts?|ny(?:loc|lock|lok)s?|nuts?)",
            r"(?:prop\w*|drive ?shaft|pinion|shaft|diff) (?:shaft )?flanges?",
            _AGAIN,
        ),
        ("self-locking nut on a propeller shaft flange",),
        forbids=True,
    ),
    _Of(
        ("nyl",),
        "a locknut with nylon beside heat",
        (
            r"ny(?:loc|lock|lok)s?(?: (?:insert )?(?:lock)?nuts?)?|nylon (?:insert )?(?:lock ?)?nuts?|nylon inserts?",
            r"exhausts?|headers?|manifolds?|collectors?|turbos?|down ?pipes?|silencers?|mufflers?|melts?|hot|heat"
            r"|brake dis[ck]s?",
        ),
        ("nylon locknut near heat",),
        unless=rf"{_TIGHT}|hose|tube|line|fuel",
        forbids=True,
    ),
    _Of(
        ("nyl",),
        "a locknut with nylon fitted again",
        (r"ny(?:loc|lock|lok|lon)s?(?: (?:insert )?(?:lock)?nuts?)?", _AGAIN),
        ("lock washers and nylon nuts", "breakaway test", "reuse in steering"),
        unless=rf"{_TIGHT}|heat|hot|temp\w*|hose|tube|line|fuel|deg[cf]",
        forbids=True,
    ),
    _Of(
        ("past", "through", "showing", "stick"),
        "threads that stand past a nut",
        (
            r"threads?",
            r"past|(?:sticking |stick |stand |standing )?(?:out |through|proud)|show(?:ing)?|sticking",
            r"(?:lock ?)?nuts?|ny(?:loc|lock|lok)s?",
        ),
        ("thread past the nut", "breakaway test"),
        unless=rf"{_TIGHT}|hole|engage\w*|insert|tap(?:ped|ping)?|[0-9]/[0-9]|m[0-9]+",
    ),
    _Of(
        ("red", "blue"),
        "red or blue threadlocker",
        (r"(?:red|blue) (?:or|vs|versus) (?:red|blue)|(?:red|blue)\b.*\b(?:or|vs|versus|than) (?:red|blue)",),
        ("blue and red threadlocker", "threadlocker near heat"),
        unless=rf"{_TIGHT}|wires?|coolant|fuse|paint|an(?:ti-?freeze)?|cables?|dip",
        forbids=True,
    ),
    _Of(
        ("washer",),
        "lock washers",
        (
            r"(?:spring|split|lock|star) ?washers?",
            r"do|does|any (?:good|use)|useful|useless|worth\w*|pointless|need\w*|necessary|help|under|should|better",
        ),
        ("flat washer and lock washer", "lock washers on flywheel bolts"),
        unless=_TIGHT,
        forbids=True,
    ),
    _Of(
        ("wheel", "lug"),
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
    _Of(
        ("stainless",),
        "stainless on stainless",
        (
            r"stainless",
            r"(?<!anti )(?<!never )seiz\w*|gall(?:s|ed|ing)?|pick(?:s|ed|ing)? up|bind(?:s|ing)?|bound up|locked"
            r" (?:up|solid)|stuck",
        ),
        ("stainless on stainless", "stainless"),
        unless=rf"{_TIGHT}|torques?(?= *$)|what torque|exhaust|brake|caliper|piston|hose",
        forbids=True,
    ),
    _Of(
        ("stainless", "a2-", "a4-"),
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
    _Of(
        ("castle", "castellated", "cotter", "split pin", "slotted"),
        "a castle nut and its pin",
        (
            r"castle(?:llated)? nuts?|slotted nuts?|cotter(?: pins?)?|split pins?",
            r"line up|lines up|align\w*|slots?|back (?:it )?off|next|hole",
        ),
        ("castle nuts", "cotter pin slots", "cotter pins and lock tabs"),
        unless=rf"{_TIGHT}|drill|wheel bearing|hub",
        forbids=True,
    ),
    _Of(
        ("stretch", "tty", "yield", "angle"),
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
    _Of(
        ("wrench", "clicker"),
        "the range of a torque wrench",
        (
            r"(?:torque )?(?:wrench|clicker)",
            r"(?:goes|go|reads?) (?:below|under|down to|that low)|(?:bottom|low(?:er)?|top|end"
            r"|middle) (?:end )?of (?:its|the) (?:range|scale)"
            r"|(?:use|using) (?:the|a|my) (?:big|large|half inch|3/4)|too (?:big|coarse) (?:a wrench )?for"
            r"|(?:can i|could i|ok to|okay to) use it (?:at|for|on|down)|big torque wrench",
        ),
        ("range",),
        unless=r"crow\S*|set (?:it )?to|what (?:do|should) i set",
        forbids=True,
    ),
    _Of(
        ("angle", "turn", "stretch", "elong", "feel", "torque"),
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
    _Of(
        ("proof",),
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
# What has no figure and is refused by name: the pieces of which a line has one, the patterns, what a line of it does
# not have, why, what to do.
_REFUSED = (
    (
        ("spanner", "socket", "wrench", "flats", "hex"),
        (
            r"(?:which|what)(?: size)?(?: of)? (?:spanners?|sockets?|wrench(?:es)?)(?! (?:goes|reads|is))"
            r"|(?:spanner|socket|wrench|hex) size|across (?:the )?flats",
            r"drain plugs?|sump plugs?|filler plugs?|level plugs?|oil filters?|(?:oxygen|o2|lambda) sensors?"
            r"|(?:hub|axle|pinion|crank(?:shaft)?|pulley|cam(?:shaft)?|flywheel|head|main|rod|big end|caliper|banjo"
            r"|glow) (?:plugs?|nuts?|bolts?|studs?)|glow ?plugs?|banjos?|senders?|switch(?:es)?|injectors?"
            r"|thermostats?",
        ),
        r"torque|tight\w*|crow\S*|lbs?|lbf|nm|whitworth|bs[fw]|ba|m ?[0-9]+|[0-9]+/[0-9]+",
        "no table here has the hexagon of this part, across its flats",
        "measure it over two opposite flats, or ask its maker; of a plain bolt or nut say the thread:"
        " `gaugeblock ask what spanner for m10`",
    ),
    (
        ("snap", "break", "yield", "shear", "fail", "lets go"),
        (
            r"(?:at )?(?:what|which) torque|(?:yield|breaking|failure|snapping) torque|torque (?:that|to|will|does"
            r"|it takes to)",
            r"snap\w*|break\w*|yields?|shear\w*|fail\w*|lets? go",
        ),
        r"nut factor|crush|spline|shafts?|axles?|half ?shafts?|preload|bars?|re-?us\w+|again|snapped|broken?|new"
        r"|tubes?",
        "no table has the torque at which a bolt yields or breaks: it hangs on the friction of its threads",
        "say a torque, and its clamp is judged: `gaugeblock ask m8 8.8 dry at 30 Nm`; or ask for the pull that breaks"
        " it: `gaugeblock ask breaking load m8 8.8`",
    ),
    (
        ("stretch",),
        (r"torque (?:to|that|will|would|does it take to|it takes to)|(?:what|which) torque", r"stretch(?:es|ed)?"),
        r"[0-9]*\.[0-9]+(?: ?(?:mm|in|inch))?|[0-9]+ ?(?:mm|thou|%|percent)|nut factor|preload|belts?|chains?|re-?us\w+"
        r"|again|new|studs? that",
        "no table has the torque at which a bolt begins to stretch for good: it hangs on the friction of its threads",
        "say a torque, and its clamp is judged: `gaugeblock ask m8 8.8 dry at 30 Nm`; or how far it shall stretch, and"
        " its grip",
    ),
    (
        ("jam", "half nut", "thin", "lock nut", "locknut"),
        (
            r"jam nuts?|(?:half|thin) (?:jam )?nuts?|lock ?nuts?",
            r"first|which (?:one )?goes|order|which side|outside|on top",
        ),
        r"torque|tight\w*|lbs?|lbf|nm|nylon|nyl\w*|hub|bearings?|wheel",
        "no rule was found for the order of two nuts on one bolt",
        "common practice is the thin nut first, against the joint, then the full nut tight on it while the thin one is "
        "held; the maker of the part says whether it takes such nuts at all",
    ),
)


def told(question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line on bolts and wrenches is about; None for any other; InputError for a line
    that is refused by name.
    """
    line = " ".join(words)
    refused = [(of, no, why, do) for cues, of, no, why, do in _REFUSED if any(cue in line for cue in cues)]
    if refused:
        refused_by_name(question, words, refused)
    likely = [subject for subject in _SUBJECTS if any(cue in line for cue in subject.cues)]
    return told_by_subject(words, data, likely) if likely else None
