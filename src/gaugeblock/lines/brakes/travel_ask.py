"""What is asked of the way of a pedal or a master cylinder, as people say it: no force is told."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Reader

_PISTONS = {"single": "1", "one": "1", "twin": "2", "two": "2", "dual": "2", "four": "4", "six": "6", "eight": "8"}
_POTS = r"(?P<n>[12468]|single|one|twin|two|dual|four|six|eight)[- ]?(?:pots?|pistons?)(?= |$)(?! [0-9])"
_CALIPERS = r"(?: (?:brake )?(?:cal?lipers?|brakes?))?"
_COUNTED = {"twin": "2", "two": "2", "dual": "2", "four": "4", "six": "6", "single": "1", "one": "1"}
# What may stand between how many calipers there are and the word itself.
_OF_CALIPERS = (
    r"(?: (?:single|twin|dual|one|two|four|six|[1246]|pots?|pistons?|sliding|floating|fixed|opposed|front|rear"
    r"|disc|disk"
    r"|brake|new|old|bore|[0-9./]+ ?(?:mm|mil|in|inch|\")?))*"
)
_DISC = r"(?:the )?(?:discs?|disks?|rotors?|drums?|pads?)"


# How many pistons and wheels there are, and the bore of the pistons.
_PISTONS_OF: dict[str, tuple[Reader, ...]] = {
    "pistons": (
        Shaped(
            rf"{_POTS}{_CALIPERS}",
            lambda m: _PISTONS.get(m["n"], m["n"]),
            "{} pistons a wheel",
            cue=("pot", "piston"),
        ),
        Shaped(  # four 38 mm pistons
            r"(?:(?:each|with|has|have|having) )*(?P<n>[1246]|twin|two|dual|four|six|single"
            r"|one)(?: ?(?:x|by|of))?(?= [0-9./]+ ?(?:mm|mil|in|inch|\")? (?:bore )?pistons?(?= |$))",
            lambda m: _COUNTED.get(m["n"], m["n"]),
            "{} pistons a wheel",
            cue=("piston",),
        ),
    ),
    "wheels": (
        Shaped(
            r"both (?:sides|front wheels|fronts|wheels|cal?lipers)|(?:a )?pair of cal?lipers"
            r"|(?:two|2) (?:wheels|cal?lipers|sides|corners)",
            always("2"),
            "2 wheels",
            cue=("both", "pair", "two ", "2 "),
        ),
        Shaped(
            r"(?:one|1|single) (?:wheel|cal?liper|side|corner)",
            always("1"),
            "1 wheel",
            cue=("wheel", "iper", "side", "corner"),
        ),
        Shaped(
            rf"(?:two|2|(?:an? |the )?pair of)(?={_OF_CALIPERS} (?:floaters|cal?lipers)(?= |$))",
            always("2"),
            "2 wheels",
            cue=("floater", "iper"),
        ),
        Shaped(
            r"(?:in |on |of )?each front (?:cal?liper|wheel|brake|side|disc)|both(?: (?:the )?fronts?)?",
            always("2"),
            "2 wheels",
            cue=("each front", "both"),
        ),
    ),
    "bore": (
        amount(
            "length",
            after=r"(?:bore )?(?:wheel cyl(?:inder)?s?|(?:cal?liper )?pistons?)",
            say="pistons {}",
            cue=("piston", "cyl"),
        ),
        amount(
            "length",
            before=r"(?:wheel cyl(?:inder)?s?|(?:cal?liper )?pistons?)(?: of)?",
            say="pistons {}",
            cue=("piston", "cyl"),
        ),
        Shaped(r"(?P<n>[01]?\.[0-9]+)(?= (?:bore )?slave)", lambda m: f"{m['n']} in", "slave {}", cue=("slave",)),
        amount("length", followed="(?:bore )?slave", say="slave {}", cue=("slave",)),
        amount(
            "length",
            bare="in",
            followed=r"(?:and |it |that |which )*(?:has to|must|needs? to|wants to|should|moves?|goes|travels)",
            say="slave {}",
            cue=("slave",),
        ),
        amount(
            "length",
            after=r"(?:floaters?|cal?lipers?|pots?|bores?)",
            say="pistons {}",
            cue=("floater", "iper", "pot", "bore"),
        ),
        amount(
            "length",
            followed=r"(?:(?:single|twin|dual|one|two|four|six|[1246])[- ](?:pots?|pistons?) )?"
            r"(?:(?:sliding|floating|fixed|opposed|front|rear) )*(?:single piston )?(?:floaters?|cal?lipers?)",
            say="pistons {}",
            cue=("floater", "iper"),
        ),
        Shaped(
            r"(?P<n>[2-6][0-9](?:\.[0-9]+)?)(?: bore)? (?:(?:cal?liper )?pistons?|pots?)",
            lambda m: f"{m['n']} mm",  # no piston is so many inches
            "pistons {}",
            doubt=1,
            cue=("piston", "pot"),
        ),
    ),
}

# How far what the pistons push is moved.
_MOVES = (
    amount(
        "length",
        before=r"(?:pads?|shoes?|pistons?|each(?: one)?)(?: (?:sit|stand|are|moves?|go|goes|travels?|each|back"
        r"|off|to|by"
        r"|about|is|it|comes?|out|has|have|must|needs?|only|just|roughly))*",
        say="travel {}",
        cue=("pad", "shoe", "piston", "each"),
    ),
    amount(
        "length",
        after=rf"(?:(?:to|from|off|away from) {_DISC}|off|each|of (?:piston )?(?:movement|travel)|at the (?:fork"
        rf"|slave|pads?|pistons?)"
        r"|clearance)(?: (?:each|a side|the disc|the rotor))*",
        say="travel {}",
        cue=("off", "each", "movement", "travel", "at the", "clearance", "to ", "from "),
    ),
    amount(
        "length",
        before=r"(?:and |it |that |which |each )*(?:has to|have to|must|needs? to|wants to|should) (?:move|go|travel"
        r"|stroke|come)(?: out| about)*",
        bare="in",
        say="travel {}",
        cue=("move", "go", "travel", "stroke", "come"),
    ),
    amount(
        "length",
        before=r"(?:fork|slave|release (?:arm|lever|bearing)|lever)(?: (?:wants|needs|moves|has to"
        r"|must|move|goes|travels|takes|of))+",
        say="travel {}",
        cue=("fork", "slave", "release", "lever"),
    ),
)


def travel(circuit: Topic) -> Topic:
    """The topic, with the words of a circuit for its bore, its ratio and its pistons."""
    slots: Mapping[str, tuple[Reader, ...]] = circuit.slots
    return Topic(
        circuit.answer,
        "pedal travel",
        {
            "master": slots["master"],
            "ratio": slots["ratio"],
            "kind": (
                *slots["kind"],
                Shaped(
                    r"(?:clutch|release)(?: (?:pedal|fork|arm|lever|bearing))?|fork",
                    always("slave cylinder"),
                    doubt=1,
                    cue=("clutch", "release", "fork"),
                ),
                Shaped(r"floaters?", always("floating caliper"), cue=("floater",)),
                Shaped(
                    r"(?P<n>floating|sliding)(?: (?:type|style|ones?|sort))?",
                    always("floating caliper"),
                    cue=("floating", "sliding"),
                ),
                Shaped(
                    r"(?:fixed|opposed)(?: (?:type|style|ones?|sort))?(?: (?:with )?(?:pistons )?on (?:opposite|both)"
                    r" sides)?",
                    always("fixed caliper"),
                    cue=("fixed", "opposed"),
                ),
            ),
            **_PISTONS_OF,
            "travel": (*slots["travel"], *_MOVES),
            "play": (amount("length", after="(?:of )?(?:free )?play", say="free play {}", cue=("play",)),),
        },
        circuit.signals
        + r"|(?:clutch|brake) pedal|clutch|fork|(?:how (?:far|much)|what)(?: (?:travel|stroke|pedal|way))?"
        r"|stroke|travel"
        r"|(?:does|will|do) (?:my |the )?(?:foot|pedal)(?: go| move| travel)?|go(?:es)?|moves?|wants?|needs?"
        r"|far|each|pads?"
        r"|cal?lipers?|pistons?|sits?|off|drops?|sinks?|(?:before |until |till )?(?:the |it |they "
        r"|pads? )*(?:bites?|grabs?"
        r"|bites? the (?:disc|disk|rotor))|comes? out|(?:fronts?|rears?) only|only the fronts?|(?:on "
        r"|in )?(?:that|this|the"
        r"|one) circuit|(?:with |has |got )?(?:an? |the )?(?:servo|booster)(?! [0-9])|fluid|enough",
        needs=("master", "bore", "travel"),
        table="brakes",
        asks_for=r"stroke|travel|how far|fork|way|enough fluid",
        is_named=True,
        unmoved="metal finish standard quality state service",
    )
