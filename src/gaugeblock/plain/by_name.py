"""What a line asks for by name, and no table has: it is refused with the reason and the way to it."""

from __future__ import annotations

from gaugeblock.answer.patterns import compiled
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    Refused = tuple[tuple[str, ...], str, str, str]

_JOINT = r"v-? ?bands?|slip[- ](?:joints?|fits?|ons?)|slip(?= or| vs)|flanges?|ball (?:and socket|joints?)"
_CLAMP = r"u[- ]?bolts?|saddle|band|lap(?: joint)?|butt(?: joint)?"
# What has no figure and is refused by name: the patterns, what a line of it does not have, why, what to do.
_REFUSED = (
    (
        (r"whitworth|whit|bsw|bsf|[0-9]{1,2} ?ba", r"torques?|tight\w*|how (?:hard|tight)|nm|ft lbs?|foot pounds?"),
        r"tap|tapping|drill|pitch|tpi|threads? (?:per|to the)|spanner|flats|banjo|plugs?",
        "no torque of a British thread is on record, Whitworth, BSF or BA: that of a UNC or UNF bolt is not for it",
        "ask the maker of the vehicle or of the bolt; the thread itself: `gaugeblock find bsf`, `gaugeblock find bsw`",
    ),
    (
        (
            rf"(?:{_JOINT}).*\b(?:or|vs|versus|than)\b.*(?:{_JOINT})",
            r"exhausts?|turbo\w*|headers?|down ?pipes?|collectors?",
        ),
        r"torque|tight\w*|lbs?|lbf|nm|sizes?|gap|clearance|how (?:far|long|much|hot)|temp\w*|length",
        "no rule was found that chooses between a V-band, a flange, a ball joint and a slip joint",
        "ask the makers of the joints for the heat and the movement that each takes; what the tables have of each: "
        "`gaugeblock find v-band`, `gaugeblock find slip joint`",
    ),
    (
        (
            r"thins|thinner",
            r"[0-9.]+(?= ?(?:%|percent|per cent))",
            r"clr|radius|tightest|how tight|die",
            r"bends?|bending|bent|tubes?|tubing",
        ),
        r"paint|coats?|oil",
        "no answer works back from the thinning of a wall to the radius that leaves it",
        "ask what a radius leaves, and try a larger one: `gaugeblock ask outer wall 38 mm x 2 mm tube 110 mm radius`",
    ),
    (
        (
            r"clutch(?: hydraulic| hard)? (?:lines?|pipes?|hoses?)|(?:lines?|pipes?|hoses?) (?:for|of|to) (?:the"
            r" |my )?clutch",
            r"exhausts?|headers?|down ?pipes?|manifolds?|mufflers?",
            r"near|close|gap|clearance|how far|passes|beside|boil\w*|next to|by the",
        ),
        r"torque|tight\w*|flares?|threads?|fittings?",
        "no rule was found for the gap between an exhaust and the line of a clutch",
        "measure how hot it gets there; what its fluid stands: `gaugeblock ask how hot can dot 4"
        " get`; what is asked of a brake line: `gaugeblock ask brake line to exhaust gap`",
    ),
    (
        (
            rf"(?:{_CLAMP}).*\b(?:or|vs|versus|than)\b.*(?:{_CLAMP})",
            r"clamps?",
        ),
        r"torque|tight\w*|lbs?|lbf|nm|hoses?|temp\w*|worm|cables?|leaf|springs?",
        "no rule was found that chooses between a U-bolt clamp and a band clamp for an exhaust",
        "ask the makers of the clamps which joint each is for; what the tables have of each: "
        "`gaugeblock find band clamp`, `gaugeblock find exhaust clamp`",
    ),
    (
        (
            r"slip[- ]?(?:fits?|joints?|ons?)|swaged|expanded ends?|sleeves?",
            r"which way(?: round)?|face|facing|against (?:it|the flow)|with the (?:flow|gas)|upstream|downstream",
            r"flow|gas|way|upstream|downstream",
        ),
        r"valves?|filters?|pumps?|torque",
        "no rule was found that says which way round a slip joint of an exhaust faces",
        "ask the maker of the exhaust; the joint itself: `gaugeblock ask exhaust slip joint overlap`",
    ),
    (
        (r"cca|copper[- ]clad(?: alumini?um)?", r"wires?|cables?|awg|gauge|mm2|fuses?"),
        r"batter\w*|crank\w*|start\w*|edge|board",  # of a battery: cold cranking amps
        "no table is for copper-clad aluminium: it carries less than copper of its size, and its drop is larger",
        "ask the maker of the cable what it carries, or take copper by the same question without the word",
    ),
    (
        (
            r"(?:woodruff|gib(?:[- ]head)?|parallel|feather|square|taper(?:ed)?|half[- ]?moon|shaft) keys?|key ?ways?"
            r"|key ?(?:stock|steel|slots?)|keys? (?:size|for|in|on|fits?)|keyed",
            r"shafts?|bores?|hubs?|crank\w*|pulleys?|sprockets?|couplings?|size|what|which|how",
        ),
        r"allen|hex|socket|cap screws?|ignition|keys? (?:on|off|out)|spanner|drain|draw|fuses?|relays?|torque|tight\w*"
        r"|spline\w*|batter(?:y|ies)",
        "no table here has keys of shafts or their slots, neither square nor Woodruff",
        "the standard of the key has its section by the diameter of the shaft; measure the slot across and its mate, or"
        " ask the maker of the hub",
    ),
    (
        (
            r"(?:pop|blind|tubular|solid|countersunk|aircraft|bucked) rivets?|rivets?",
            r"holes?|drill\w*|sizes?|bits?|grip|length|long|strong|strength|shear|hold|holds|thick\w*|apart|spacing"
            r"|pitch",
        ),
        r"nuts?|weld\w*|ring gear|spot",
        "no table here is about rivets, neither their holes nor what they hold",
        "the maker of the rivet prints its hole, its grip and its strength",
    ),
    (
        (
            r"(?:what|which)(?: size)?(?: taps?| threads?| bolts?) (?:is |does |for |goes with |do i use with"
            r" )*(?:an? |the |my )?"
            r"(?:number |no |letter )?(?:#?[0-9]+(?:\.[0-9]+)?|[a-z])(?: ?(?:mm|in|inch))?(?: (?:drill|bit|drill bit))"
            r"|(?:#?[0-9]+(?:\.[0-9]+)?)(?: ?(?:mm|in|inch))? (?:drill|bit|drill bit)(?: is)? (?:taps|for) (?:what"
            r"|which)",
            r"drill|bit",
        ),
        r"m ?[0-9]+|[0-9]+/[0-9]+|pilot|clearance",
        "no answer here goes from a drill back to the thread that it is for",
        "say the thread, and its drill is told: `gaugeblock ask tap drill m8`; a row of the tables by its size:"
        " `gaugeblock find tap drill 6.8`",
    ),
    (
        (
            r"relays?",
            r"(?:what|which)(?: \w+)? (?:size|rating|amp(?:s|age)?|amp rating|rated)(?: of)?(?: an?)? relays?"
            r"|(?:what|which) relays?|relay (?:size|rating|amps?)|(?:size|rating) (?:of )?(?:the )?relay|how big an?"
            r" relay",
            r"[0-9].*|fans?|pumps?|lights?|lamps?|horns?|winch\w*|compressors?",
        ),
        r"coils?|pins?|terminals?|8[567]a?|fuses?|wires?|cables?|awg|gauge|mm2|met(?:re|er)s?|feet|ft|diode|legs?"
        r"|switch",
        "no table sizes a relay by its load",
        "take one whose contacts are marked for more than the load and for what it draws as it starts, two to three"
        " times as much of a motor; whether one is needed: `gaugeblock ask relay or no relay`",
    ),
    (
        (
            r"primar(?:y|ies)",
            r"sizes?|diameter|dia|od|bore|id|big|large|length|long",
            r"pipes?|tubes?|primar\w+|headers?",
        ),
        r"wrap|wire|cable|coil|gap|stroke|chain|how hot|temp\w*",
        "the tables have no rule for the primary tubes of a header, neither for their diameter nor for their length; "
        "none was found that could be read",
        "take them from the maker of the cam or of the header; for the pipe behind the collector say the power: "
        "`gaugeblock ask exhaust pipe size for 300 hp`",
    ),
)


def refused_by_name(question: str, words: tuple[str, ...], refused: Iterable[Refused] = ()) -> None:
    """InputError of a line that asks for what no table has, and that would be dangerous to answer by a number: of the
    ``refused``, which are those of this module where none are given.
    """
    line = " ".join(words)
    for patterns, unless, why, do in refused or _REFUSED:
        if _says(unless, line) or not all(_says(one, line) for one in patterns):
            continue
        raise InputError(question, "", why, (), do)


def _says(pattern: str, line: str) -> bool:
    return compiled(rf"(?:\b|^)(?:{pattern})\b").search(line) is not None
