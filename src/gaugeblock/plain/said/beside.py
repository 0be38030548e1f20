"""What is said beside a question and changes no figure -> nothing: dirty hands, the weather, what nobody wants."""

from __future__ import annotations

# What nobody wants of a bolt, a tube or a line: it is no condition.
_HARM = (
    r"(?:shake|wear|vibrate|whip|strip|over ?stretch|stretch|pull|gall|round|choke|strangle|shear|break|snap"
    r"|leak|crack|warp|loosen"
    r"|come (?:loose|undone|off)"
    r"|fall off|pull out|fail|back out|kink"
    r"|collapse|wrinkle|flatten|crush|burn|melt|rub|rattle|sag|fry|blow|boil|cook|perish|burst|go(?:es)?"
    r" (?:hard|soft|off|bad|bang))(?:s|es)?(?: (?:out|off|up|over|on"
    r" me))*(?: (?:the |its |my )?threads?)?"
)
_WHOSE = r"(?:(?:the|my|it|they|them|this|that) )?(?:[a-z]+ )?"
_GOAL = (
    rf"\b(?:so that|so|that|and) (?:i |we )?{_WHOSE}(?:will not|won'?t|do(?:es)? not|do(?:es)?n'?t|can'?t|cannot"
    r"|would not|wouldn'?t)"
    rf" {_HARM}\b"
)
_UNWANTED = (
    r"\b(?:and |but )?(?:i|we|he|she|they) (?:dont|don't|do not|doesn't|doesnt) want (?:it|them|this|that|the"
    r" \w+) (?:to be |being )?"
    r"(?:choked(?: up)?|strangled|restricted|strangling|choking)\b"
)
_BEFORE = rf"\bbefore {_WHOSE}(?!boil){_HARM}(?: or {_HARM})?\b"
# What a torque shall not do.
_SPOILING = r"(?:strip|pull|gall|ruin|damage|break|snap|crack|stretch|crush|wreck|squash|wring|shear|twist|round|split)"
_SPOILED = (
    r"(?: (?:out|off))?(?: (?:the |my |his |its )?(?:threads?|bolts?|head|plug|casing|pan"
    r"|caps?|it|them|hole|stud|nut|union|pipe|flare)(?: (?:off|out))?"
    r"(?: (?:on|of) (?:it|them))?)?"
)
_HARMLESS = (
    rf"\b(?:that |which |and )?(?:won't|wont|will not|doesn't|does not) {_SPOILING}{_SPOILED}(?! at\b)(?=$| )",
    r"\bwithout (?:stretching|stripping|pulling|breaking|snapping|cracking|ruining|galling|damaging|crushing|wrecking)"
    rf"(?! dies?){_SPOILED}(?=$| )",
    rf"\b(?:and |but )?(?:i |we )?(?:dont|don't|do not) want to {_SPOILING}{_SPOILED}(?=$| )",
)
# What the pipe of an exhaust shall not do.
_CHOKING = (
    r"\b(?:and |but )?(?:that |which |it )?(?:will not|won'?t|would not|wouldn'?t|does not|doesn'?t|do not|don'?t|not)"
    r" (?:be |get )?(?:choked?|choking|strangled?|restrict(?:ed|ive)?|silly|loud|fancy)"
    r"(?: (?:it|her|him|them|me|power|the (?:engine|motor)))?\b"
)
# What is on the hands of who asks is not on the thread.
_FILTH = r"(?:grease|oil|greasy|oily|mud|muddy|dirty|muck|mucky|dirt|brake fluid|gloves)"
_OF_HANDS = ("hand", "finger", "thumb", "mitts", "paws", "glove", "arm", "elbow", "face", "phone", "screen")
_HANDS = r"(?:hands?|fingers?|thumbs?|mitts|paws|gloves|arms?|elbows|face|phone|screen)"
_DIRTY = (
    rf"\b(?:and |with )?(?:(?:my|me|his|both) )*{_HANDS}(?: (?:are|is|were|all|both|covered|full|black|dirty|in"
    rf"|with|of|and|too))+ (?:the )?{_FILTH}\b"
)
_ON_HANDS = (
    rf"\b(?:and |with |got |i have |i've got |ive got )?(?:the )?{_FILTH}(?: (?:is|all))*(?: (?:over|on|up to"
    r"|to|covering|in"
    rf"|under|off))+ (?:my|me|both|the|his) ?(?:own )?{_HANDS}\b|\b(?:and |with |got )?(?:my |me )?{_FILTH} {_HANDS}\b"
)
_WEATHER = (
    r"\b(?:and )?(?:its|it's|it is|it was|im|i'm) (?:bloody |damn |so |too )?(?:hot|cold|wet|freezing|boiling|windy)"
    r" (?:as out here|as out|out here|outside|out(?! of)|in here|as hell|as heck|today|tonight)\b(?: here\b)?"
)
# A piece that a line must have; the pattern; what is written for it.
SAID_BESIDE = (
    *(  # what somebody will not do again to so many of them
        (
            cue,
            r"\b(?:and |but |so )?(?:i am|i'm|im|we are|we're|i will|i'll|i do|we do|i) ?(?:not|never|don't|dont"
            r"|won't|wont)"
            r"(?: want to| going to| gonna| about to)? "
            r"(?:clean|wip|degreas|strip|tak|do|pull|buy|wash|chang|replac|swapp|undo)(?:e|ing)?(?: (?:apart|off|out))?"
            r"(?: (?:all|the|lot|[a-z]+teen|[a-z]+ty|one|two|three|four|five|six|seven|eight|nine|ten|twelve|[0-9]+"
            r"|a dozen"
            r"|every))* (?:of (?:em|them|'em|these|those)|the lot|em all|them all|all of it)"
            r"(?: (?:off|out|again|down|up|now|all))*(?= |$)",
            "",
        )
        for cue in (" of ", "the lot", " all")
    ),
    (
        "same ",
        r"\b(?:and |but )?(?:is (?:it|that|the (?:torque|figure|number)) |do i use |use )?(?:the )?same"
        r"(?: (?:number|torque|figure|setting|value|spec))? (?:as|like)(?: (?:if|when|for|it|they|was|were|is|are"
        r"|the|a))*"
        r" (dry|oiled|greased)(?: (?:bolts?|threads?|figure|torque|number))?(?: or (?:not|less|lower|different|what"
        r"|no))?$",
        r"vs \1",
    ),
    (
        " or is ",
        r"\bor is (?:that|it|this)(?: be)?(?: just)? (?:asking for|looking for|inviting|a recipe for)"
        r" (?:trouble|grief|disaster|leaks?)\b",
        "",
    ),
    *((cue, _DIRTY, "") for cue in _OF_HANDS),
    *((cue, _ON_HANDS, "") for cue in _OF_HANDS),
    *((cue, _WEATHER, "") for cue in (" here", "outside", " out ", "as he", "today", "tonight")),
    (" change", r"\b(?:an? |the )?oil(?: and filter)? change\b", ""),
    (
        " back",
        r"\b([0-9.]+) ?(m|metres?|meters?|ft|feet|foot) (?:out|there|along) and (?:\1 ?(?:\2)?|the same) back"
        r"(?: (?:in|by|along|through|on)(?: an?| the)?(?: own| return)? (?:wire|cable))?(?= |$)",
        r"\1 \2 one way wire return",
    ),
    (
        "relay",
        r"^(?=.*\brelay)(.*?)\b(?:when |while |with )?(?:it is |it's |its |the coil is |coil |is )*"
        r"not (?:pulled in|energi[sz]ed|powered|triggered|fired|switched on)\b",
        r"\1at rest",
    ),
    ("half", r"\ban? (half(?=[- ]shaft))", r"\1"),
    ("relay", r"\b(?:without|with no|no)(?: an?| any| the| using an?)? relay\b", "relay"),
    *(
        (
            cue,
            r"\b(?:(?:earth|ground)(?:ed|s)? (?:it |them |it'?s )?(?:local(?:ly)?|nearby|right there|close by"
            r"|(?:at|by|near|next to) the (?:front|back|rear|lamps?|lights?|pump|fans?|load|motor|winch))"
            r"|local (?:earth|ground))\b(?: to (?:the )?(?:body|chassis|frame))?",
            "body return",
        )
        for cue in ("earth", "ground")
    ),
    ("speedo", r"\b(speedo(?:meter)?)(?: (?:is|will|be|going|to|reads|now))* wrong\b", r"\1 error"),
    (
        "or not",
        r"\b(ok|okay|alright|all right|fine|safe|legal|good|enough|allowed)(?: for (?:it|this|that))? or not\b",
        r"\1",
    ),
    (
        "instead of",
        r"\binstead of (?:the |that )?(?:dry|book|printed|listed|old|maker'?s) (?:number|figure|torque|value"
        r"|spec|one)\b",
        "",
    ),
    (
        "length of",
        r"\ban? (?:short |long |nice )?length of (?=(?:[a-z0-9]+ ){1,7}(?:bar|rod|stock|tube|tubing|pipe|wire)\b)",
        "",
    ),
    ("old ", r"\bold (?=(?:guy|man|boy|fella|bloke|timer|hand|girl|lady|mate)\b)", ""),
    *(
        (
            cue,
            r"\b(my|the|our|this|that|his|her|old) (?:four by four|4x4|4 by 4)\b"
            r"(?! ?(?:x|by|inch|in|mm|box|tube|square|post|steel|bar|wall|[0-9]))",
            r"\1 truck",
        )
        for cue in ("four by four", "4x4", "4 by 4")
    ),
    ("true ", r"\btrue (?=duals?\b)", ""),
    *(
        (
            cue,
            r"\b(?:spat|spewed|puked|lost|boiled|threw|dumped|chucked|spits|pukes|boils|dumps|pushed|pushes|pushing"
            r"|puking|spewing|losing|dumping)(?: out)?(?: (?:its|her|his|all its|all the|the))?(?: own)?"
            r" (?:water|coolant)"
            r"(?: (?:out|off|away|again))*",
            "",
        )
        for cue in (" water", " coolant")
    ),
    ("straight", r"\bon the straights?\b(?! pipe)", ""),
    ("copper ", r"\bthe copper (?=pulled|stopped|booked|caught|got me|did me)", "the policeman "),
    ("room for", r"\bno room for (?:an? |the )?(?:heat ?)?shield(?:ing)?\b", "no shield"),
    (
        "worried",
        r"\b(?:and |but )?(?:now )?(?:i am |i'm |im |am )?worried (?:about|it(?:'ll| will| is)) [a-z]+ing"
        r" (?:the |my )?(?:fluid|fuel|hose|line|paint|carpet|wires|it|them)\b",
        "",
    ),
    (
        "before ",
        (
            r"\bbefore (?:i|we|he|she) (?:blame|bin|scrap|curse|paint|ruin|wreck|order|ring|call|start|close|sell|lose"
            r"|drill|cut|buy|machine|send)"
            r" (?:the|my|it|them|this|that|his|her)(?: [a-z]+){0,2}$"
        ),
        "",
    ),
    ("elbow", r"\b(?:i am |i'm |im )?up to (?:my|the|his|me) elbows(?: in (?:an? |the )?[a-z]+)?\b", ""),
    *(
        (
            cue,
            r"\b(lifted|raised|lowered|dropped)(?: (?:it|her|him|me|my|the|our)(?: [a-z]+)?)? (?:by )?"
            r"(?:one|two|three|four|five|six|eight|[0-9]+) ?(?:inch(?:es)?|in|mm)\b",
            r"\1",  # which is told
        )
        for cue in ("lifted", "raised", "lowered", "dropped")
    ),
    ("for nothing", r"\bfor nothing\b", ""),
    *(
        (cue, r"\b(?:in |into )?(?:the )?post[- ]hole (?:digger|borer|auger)s?\b", "digger")
        for cue in ("post hole", "post-hole")
    ),
    ("flat ", r"\bflat (?:out|on (?:my|his|me) back|on the floor|chat|to the floor)\b", ""),
    *(
        (cue, r"(?<![0-9.x/-])\b(?:four|five|two|[245]) (?=(?:new |old |used )?(?:tyres|tires)\b)", "")
        for cue in ("tyres", "tires")
    ),
    *((cue, _HARMLESS[0], "") for cue in ("won't", "wont ", "will not", "doesn't", "does not")),
    ("without ", _HARMLESS[1], ""),
    *((cue, _HARMLESS[2], "") for cue in ("dont want to", "don't want to", "do not want to")),
    *(
        (
            cue,
            r"(?<![0-9./-])\b(?:two|three|four|both|[2-4]) ((?:[a-z]+ )?(?:fans|lamps|lights|bulbs|pumps|motors"
            r"|horns|spots|heaters))\b"
            r"(?=.*\b(?:together|in total|between them|all up|combined)\b)",
            r"\1",
        )
        for cue in ("together", "in total", "between them", "all up", "combined")
    ),
    (  # one current of a pair is that of both, unless it is of each
        "pair of",
        r"\b(?:an? |the |my )?pair of ((?:[a-z]+ ){0,2}(?:fans|lamps|lights|bulbs|pumps|motors|horns|spots|spotlights"
        r"|heaters|headlights|headlamps))"
        r"(?= (?:that |which |they )?(?:pull|draw|tak|us|need|want)(?:e?s|ing|e)?(?: about| up to|"
        r" around)? [a-z0-9. -]+?"
        r" ?(?:amps?|a|watts?|w)\b(?! (?:each|apiece|per|a piece)))",
        r"\1",
    ),
    (
        "tight enough",
        r"\b(?:and |but )?(?:i (?:figure|reckon|think|guess) )?(?:i'm|im|i am|we're|were|we are) not (?:doing"
        r"|getting|pulling) (?:it|them"
        r"|em) (?:up )?tight enough\b",
        "",
    ),
    *(
        (
            cue,
            r"\bkeeps? (?:on )?(?:backing|coming|working|rattling|vibrating|shaking) (?:out|loose|off"
            r"|undone)(?: on me)?\b",
            "",
        )
        for cue in ("keep ", "keeps ")
    ),
    *(
        (cue, r"\bon (?:the |my |an? )?inch[- ]pound (?:torque )?wrench\b", "")
        for cue in ("inch pound ", "inch-pound ")
    ),
    ("new one", r"\b(?:and )?(?:ive |i've |i have |i )?got an? new one(?: (?:going in|to go in|to fit))?\b", ""),
    (" want", _UNWANTED, ""),
    *((cue, _CHOKING, "") for cue in ("chok", "strangl", "restrict", "silly", "loud", "fancy")),
    *((cue, _GOAL, "") for cue in (" so ", " that ", " and ")),
    (" before ", _BEFORE, ""),
)
