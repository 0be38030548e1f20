"""What a line is about that rules alone have: which of them say it, however it is told.

Each Subject has patterns, every one of which the line must have. A rule that forbids a thing says it however the line
goes on; any other subject is answered only where every number of the line belongs to it, and where it has a pattern of
its words every word. What is left over is said.
"""

from __future__ import annotations

import re

from gaugeblock.plain.chatter import CHATTER, TURNING, is_aside
from gaugeblock.plain.subjects.subject import Subject, shelved

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata

_MIX = (
    r"mix(?:es|ed|ing)?|top(?:s|ped|ping)?(?: it| this| that)?(?: up)?|compatible|add(?:ed|ing)?|pour(?:ed|ing)?|put"
    r"|blend(?:ed|ing)?|together|in with|into|on top of|interchange\w*"
)
_INTO = rf"{_MIX}|swap\w*|chang\w*|instead|in an?|had|replac\w*|go(?:es)? in|upgrad\w*|car"
_FLUID = r"(?:dot ?-?(?:3|4|5\.1|51|5)|5\.1|[345]|silicone|glycol|mineral oil)"
# Rubbers by name, and what they are put in.
_NITRILE, _EPDM, _FKM = r"nitrile|nbr|buna(?:[- ]n)?", r"epdm|ethylene[- ]propylene", r"fkm|fpm|fluoro\w+"
_OF_BRAKES = r"brake fluid|dot ?-?(?:3|4|5\.1)|brakes?|master cylinder|cal?lipers?"
_OF_OIL = r"oil|(?:e ?(?:5|10) )?(?:fuel|petrol|gas|gasoline)|e ?10|diesel|grease"
_STANDS = r"ok|okay|safe|with|in|for|swells?|soften\w*|stands?|use|compatible|good|resist\w*|survive"
_NO_STAND = r"temp\w*|hot|heat|deg[cf]|limit|pressure|torque|emissivity|coolant|boost|vacuum"
_HOT_WORK = (
    r"weld\w*|braz(?:e|ed|ing)|solder\w*|torch\w*|blow ?(?:lamp|torch)|flame|gas axe|oxy\w*|plasma|grind(?:ing|er)?"
    r"|cut(?:ting)?|heat(?:ed|ing)? (?:up )?(?:the|an?|it|my)|mig|tig|stick"
)
_FORGED = (
    r"steering (?:arms?|knuckles?|links?|levers?|box arms?)|spindles?|stub axles?|track rods?|tie rods?|drag links?"
    r"|(?:pitman|drop|idler) arms?|knuckles?"
    r"|(?:leaf|coil|torsion|road|rear|front) springs?"
    r"(?! (?:perch|pad|hanger|bracket|mount|shackle|bush|seat|cup|plate|saddle|u.?bolt)\w*)"
    r"|(?:grade [58]|8\.8|10\.9|12\.9|hardened|high tensile)(?: (?:steel|hex|head|cap|wheel))? (?:bolts?|studs?)"
    r"|bolt heads?"
    r"|(?:axle|half) ?shafts?|torsion bars?|anti-?roll bars?|sway bars?"
)

# What is put in once more; what is asked of it otherwise.
_AGAIN = (
    r"re-?us(?:e|ed|ing|able)|use (?:it |them |the old (?:one|ones|sleeve|washers?) )?(?:again|twice)|again|twice"
    r"|second time|old (?:one|ones"
    r"|sleeve"
    r"|washers?)|refit\w*|put (?:it |them )?back|anneal\w*|back off|new (?:one|ones) (?:each|every)|every time"
    r"|each time"
)
_NO_AGAIN = r"torque|tight|how tight|lb|lbf|nm|ft|size|preload (?:of|is)|turning|thick\w*|heat|clamp"
_BRAKE_FLUID = "brake fluid, mixed"
_BUNG = "place and angle of an oxygen sensor bung in the exhaust pipe"
_LOW = "SAE J30 R6, R7, R8"
_MOST_LEFT, _MOST_NUMBERS = 8, 2  # words that a subject says nothing of, and numbers among them
_MOST_IT_FORBIDS = 14  # of a subject that holds however the line goes on
# What is measured of an exhaust that runs.
_OF_A_RUN = ("exhaust header", "exhaust gas at port, petrol engine")
# The rules of hoses, and of which classes each is.
_CLASS_RULES = (("SAE J30 R9", "9"), (_LOW, "6 7 8"), ("SAE J30 R14", "14"), ("SAE J30 R10", "10"))


def _of_fluids(line: str, _data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rules of brake fluids that are mixed: that of silicone where it is named."""
    is_named = re.search(r"(?<![\w.])(?:dot ?-?)?5(?![\w.])|silicone", line) is not None
    return _OF_FLUIDS if is_named else _OF_FLUIDS[1:], []


def _of_hoses(line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rules of the classes of fuel hose that are named, and the pressures that these bear."""
    named = set(re.findall(r"\b(?:30)?r ?(6|7|8|9|10|14)\b", line))
    wanted = tuple(one for one, of in _CLASS_RULES if (named or {"9", "6"}) & {*of.split()})
    wanted = (_LOW,) if _LOW in wanted and len(named) > 1 else wanted
    return wanted, _pressures(named | {"9"}, data)


def _of_a_run(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rule of an exhaust's heat, and what was measured of one."""
    return ("exhaust surface temperature",), shelved("exhaust", "lines/heat_sources", _OF_A_RUN, data)


_OF_FLUIDS = ("DOT 5", "brake fluids mixed")
_KINDS_OF_FLUID = (
    r"dot|[345]|5\.1|51|silicone|glycol|mineral|oil|brake|fluids?|system|clutch|reservoir|master"
    r"|cylinder"
)
_SUBJECTS = (
    Subject(
        _BRAKE_FLUID,
        (_INTO, rf"{_FLUID}(?![\w.]).*(?<![\w.]){_FLUID}", r"dot ?-?[345]\S*|dot|brake fluids?"),
        _OF_FLUIDS,
        rf"{_INTO}|{_KINDS_OF_FLUID}|over|up|got|bottle|tin|there|all|only|each|other|kinds?|types?|different"
        "|same|old|new|fresh"
        "|used|instead|without|flush(?:ed|ing)?|drain(?:ed|ing)?|rins(?:ed|ing)|(?:flush|drain)(?:ing)? it(?: first)?",
        unless=r"power steering|atf|transmission|engine|motor|gear|water|grease|diesel|petrol|hoses?|seals?|rubber"
        r"|boil\w*|temp\w*",
        shown=_of_fluids,
    ),
    Subject(
        "oil in a brake system",
        (
            r"power steering fluid|atf|transmission fluid|(?:(?:engine|motor|gear|gearbox|hydraulic|petroleum) ?)?oil"
            r"|grease"
            r"|diesel|petrol|gasoline|paraffin|kerosene",
            r"brake (?:fluid|system|reservoir|master(?: cylinder)?)|brakes?|master cylinder|dot ?[- ]?(?:3|4|5\.1)",
            rf"{_MIX}|in|into|instead|contaminat\w*|mistake",
        ),
        ("oil or grease in a brake system",),
    ),
    Subject(
        "coolant, mixed",
        (
            _MIX + r"|with|and|or",
            r"coolants?|anti-?freeze",
            r"(?:green|orange|pink|red|blue|yellow|oat|iat|hoat)\b.*"
            r"\b(?:green|orange|pink|red|blue|yellow|oat|iat|hoat)|different (?:colou?rs?|kinds?|types?|makes?)",
        ),
        ("coolants mixed",),
        rf"{_MIX}|coolants?|anti-?freeze|green|orange|pink|red|blue|yellow|oat|iat|hoat|up|different|colou?rs?"
        r"|kinds?|types?|makes?|old|new|radiator|system|got|all|only",
    ),
    Subject(
        "heat on a forged or heat-treated part",
        (
            _FORGED,
            r"heat(?:ed|ing)?(?! treat)|(?:red|cherry|orange) ?(?:red|hot)|torch\w*|gas axe|blow ?(?:lamp|torch)"
            r"|oxy\w*|weld(?:ed|ing)?(?! (?:on|in) \w+ (?:bung|boss))",
        ),
        ("heat treated or forged part",),
        unless=r"pre-?heat\w*|heat treat\w*|shields?|shielding|torque|tight\w*|hrc|rockwell|axle tubes?|quench\w*"
        r"|temper(?:ed|ing)?|how hot|temp\w*",
        forbids=True,
    ),
    Subject(
        "hot work on a tank or a drum that held fuel",
        (
            rf"(?<!inert )(?:{_HOT_WORK})",
            r"(?:fuel|petrol|gas|gasoline|diesel|paraffin|kerosene) (?:tanks?|cells?|drums?|cans?|barrels?)"
            r"|(?:tanks?|cells?|drums?|barrels?)\b.*\b(?:fuel|petrol|gasoline|diesel)|jerry ?cans?|oil drums?"
            r"|(?:washed|rinsed|drained|emptied|empty|flushed|steamed|steam|old|used|leaky|leaking)\b.*\btanks?",
        ),
        ("tank or drum that held fuel",),
        unless=r"gap|clearance|straps?|torque|tight\w*|shields?|shielding|battery|new tank|(?:build|mak|fabricat)\w*"
        r"|from scratch|how thick|thickness|wall|gauge|sheet|hoses?|beside|near|next to|close to|away"
        r"|exhausts?(?! (?:gas|fumes))|wires?|lines?|cable|air"
        r"|(?:water|header|expansion|hydraulic) tanks?",
        forbids=True,
    ),
    Subject(
        "wrap on headers (no figure of how long it lasts was found)",
        (
            r"wrap(?:s|ped|ping)?|lagging|bandage",
            r"rot(?:s|ted|ting)?|rust(?:s|ed|y|ing)?|last(?:s|ing)?|life|scale|corrod\w*",
            r"headers?|manifolds?|exhausts?|down ?pipes?|primaries|pipes?",
        ),
        ("exhaust wrap, mild steel",),
        unless=r"stand|how hot|temp\w*|thick\w*",
    ),
    *(
        Subject(f"{name} and {fluid}", (rubber, of, _STANDS), rules, unless=_NO_STAND)
        for name, rubber, fluid, of, rules in (
            ("nitrile", _NITRILE, "brake fluid", _OF_BRAKES, ("nitrile rubber and brake fluid",)),
            ("EPDM", _EPDM, "brake fluid", _OF_BRAKES, ("EPDM rubber and oil or fuel",)),
            ("EPDM", _EPDM, "oil or fuel", _OF_OIL, ("EPDM rubber and oil or fuel",)),
            ("fluorocarbon rubber", _FKM, "brake fluid", _OF_BRAKES, ("fluorocarbon rubber and brake fluid",)),
            ("fluorocarbon rubber", _FKM, "oil or fuel", _OF_OIL, ("fluorocarbon rubber and brake fluid",)),
            (
                "silicone hose",
                r"silicone[- ](?:(?:rubber|coolant|radiator|heater|boost|intercooler|turbo|water|vacuum"
                r"|joiner)[- ])?hoses?",
                "oil or fuel",
                _OF_OIL,
                ("silicone rubber and fuel or oil",),
            ),
            ("nitrile", _NITRILE, "oil or fuel", _OF_OIL, ("nitrile rubber and brake fluid",)),
        )
    ),
    Subject(
        "how often brake fluid is changed",
        (
            r"how often|how many years|interval|every (?:[0-9]|year|two)\S*|when (?:do|should|must)|how long",
            r"chang(?:e|ed|ing)|renew\w*|replac\w*|flush\w*|last|bleed",
            r"brake fluid|dot ?-?(?:3|4|5\.1)|brakes?",
        ),
        ("brake fluid, how often", "brake fluid change"),
        unless=r"pads?|shoes?|discs?|boil\w*|hoses?|lines?|pipes?|braided",
    ),
    Subject(
        "wrap on a turbocharger or a manifold",
        (r"wrap(?:s|ped|ping)?|blanket|lagging|bandage", r"turbo\w*|manifolds?", r"ok|okay|safe|can|should|on|over|do"),
        ("exhaust wrap, turbocharger and manifold", "exhaust insulation"),
        unless=r"stand|how hot|temp\w*|thick\w*|conductivity",
    ),
    Subject(
        "where an oxygen sensor sits",
        (
            r"o2|oxygen|lambda|wide ?band",
            r"where|how (?:far|close|near)|place\w*|position|put|go(?:es)?",
            r"turbo\w*|cat|catalytic|converter|collectors?|down ?pipes?|ports?|head",
        ),
        ("oxygen sensor place", "oxygen sensor far from the engine", _BUNG),
        unless=r"torque|tight\w*|thread|volt\w*|wires?|fuse|temp\w*|hot",
    ),
    Subject(
        "hot work on a car near its fuel",
        (
            r"weld\w*|braz(?:e|ed|ing)|torch\w*|plasma|grind(?:ing|er)?|mig|tig|gas axe|oxy\w*",
            r"near|beside|next to|close to|under|with the",
            r"(?:fuel|petrol|gas|gasoline|diesel) (?:tanks?|lines?|pipes?|hoses?|rails?|cells?)",
        ),
        ("welding", "battery and electronics while welding"),
        unless=r"exhausts?|gap|how (?:close|near|far)|headers?|mufflers?|silencers?|torque|length|size",
    ),
    Subject(
        "clip on an injection hose",
        (
            r"worm[- ]?drive|hose (?:clips?|clamps?)|(?:clips?|clamps?)",
            r"efi|inject\w*|high[- ]pressure (?:fuel|petrol)",
            r"hoses?|lines?|rail",
        ),
        ("fuel injection hose clamp",),
        unless=r"torque|tight\w*|spacing|far apart|every|size",
    ),
    Subject(
        "sealing washers used again",
        (r"(?:copper|crush|sealing|alumini?um|ally|banjo|bonded)(?: (?:sealing|crush))? washers?", _AGAIN),
        ("crush washers and sealing washers",),
        unless=_NO_AGAIN,
    ),
    Subject(
        "crush sleeve used again; no rule here lets one be used again",
        (r"(?:crush|collapsible|pinion|preload) (?:sleeves?|spacers?|tubes?)", _AGAIN),
        ("crush sleeve",),
        unless=_NO_AGAIN,
    ),
    Subject(
        "how long a braided brake hose lasts",
        (r"braided|braid", r"brakes?|hoses?", r"last|lasts|life|how long|renew\w*|replac\w*|age"),
        ("braided brake hose, life",),
        unless=r"droop|lock|length|temp\w*|hot|pressure|fuel|psi",
    ),
    Subject(
        "how hot an exhaust runs",
        (
            r"how hot|temp(?:erature)?s?|glow\w*",
            r"headers?|primar(?:y|ies)|down ?pipes?|manifolds?|exhausts?|tail ?pipes?|collectors?",
            r"(?:primar\w+|down ?pipes?|manifolds?|tail ?pipes?|collectors?|exhausts?)\b.*\bgets?|runs?|running"
            r"|full (?:load|chat|throttle|power)|flat out|wide open|skin|surface|glow\w*",
        ),
        ("exhaust surface temperature",),
        r"how hot|temp\w*|exhausts?|headers?|primar\w+|down ?pipes?|manifolds?|tail ?pipes?|collectors?|pipes?|tubes?"
        r"|flat out|full|load|throttle|power|chat|wide|open|hard|skin|surface|outside|metal|wall"
        r"|glow\w*|red|gets?|runs?"
        r"|running|goes|go|turbo|v8|engine|petrol|pulling|towing|hill|track|on|typical\w*",
        shown=_of_a_run,
    ),
    Subject(
        "hose for fuel injection",
        (
            r"hoses?|r ?(?:6|7|9|10|14)|30 ?r ?(?:6|7|9|10|14)",
            r"efi|inject(?:ion|ed|or|ors)|fuel inject\w*|high pressure",
            r"rubber|which|what|ok|okay|safe|use|for|good|will|can|does|or",
        ),
        (),
        r"hoses?|lines?|rubber|fuel|efi|inject\w*|(?:30)?r?(?:6|7|9|10|14)|j?30|sae|psi|bar|pressure|high|rated|rating"
        r"|system|pump|rail|petrol|gas|side|feed(?:ing)?|hold|stand|return|clamps?|clips?|good|engine|sold|fit(?:ted)?"
        r"|stuff|marked|must",
        unless=r"size|bore|inch|in|mm|temp\w*|hot|heat|degf|degc|e85|ethanol|diesel|nylon|ptfe|braided",
        shown=_of_hoses,
    ),
)


def told(question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line is about; InputError for a line that is refused by name."""
    from gaugeblock.plain.by_name import refused_by_name

    refused_by_name(question, words)
    return told_by_subject(words, data, _SUBJECTS)


def told_by_subject(words: tuple[str, ...], data: Refdata, subjects: Iterable[Subject]) -> Found | None:
    """The rules that say all of what a line is about; None for a line that is about none of these ``subjects``."""
    line = " ".join(words)
    if words[-1] in TURNING:
        return None
    for subject in subjects:
        if not subject.has(line):
            continue
        left = _left(line, subject)
        if is_of_more(left, _MOST_IT_FORBIDS if subject.forbids else _MOST_LEFT):
            continue
        has_number = any(char.isdigit() for word in left for char in word)
        if left and (subject.words or (has_number and not subject.forbids)):
            continue
        aside = [word for word in dict.fromkeys(_rest(line, subject).split()) if is_aside(word)]
        return _found(subject, line, [*left, *aside], data)
    return None


def is_of_more(left: list[str], most: int = 8) -> bool:
    """Whether so much of a line is left, and so many numbers, that it asks for more than the subject that it names."""
    return len(left) > most and sum(any(map(str.isdigit, word)) for word in left) >= _MOST_NUMBERS


def _rest(line: str, subject: Subject) -> str:
    """A line without what its subject is known by."""
    known = "|".join((*subject.patterns, subject.words)) if subject.words else "|".join(subject.patterns)
    known = known.replace(".*", "|")  # what stands between two of its words is not known by them
    return re.sub(rf"(?<![\w.])(?:{known})(?![\w.])", " ", line)


def _left(line: str, subject: Subject) -> list[str]:
    """The words of a line that say nothing of its subject."""
    rest = _rest(line, subject)
    said = {word for word in rest.split() if word not in CHATTER and not is_aside(word)}
    numbers = {word for word in said if re.fullmatch(r"[0-9./]+", word)} if "psi|bar" in subject.words else set()
    turning = TURNING if not subject.words or subject.name == _BRAKE_FLUID else frozenset(["or"])
    return [word for word in dict.fromkeys(rest.split()) if word in said - numbers - turning]


def _found(subject: Subject, line: str, left: list[str], data: Refdata) -> Found:
    from gaugeblock.finding import rules
    from gaugeblock.found import Found

    groups: Groups
    wanted, groups = (subject.rules, []) if subject.shown is None else subject.shown(line, data)
    for one in wanted:
        groups += [(entry, []) for entry in rules(data) if entry.rule is not None and entry.rule["subject"] == one]
    held = " ".join(entry.rule["statement"].casefold() for entry, _ in groups if entry.rule is not None)
    numbers = _numbers(line)
    left = [word for word in left if not re.search(rf"\b{re.escape(word)}\b", f"{held} {numbers}")]
    more = f" (not in them: {', '.join(left)})" if left else ""
    return Found(f"{subject.name}{numbers}{more}", groups, 0, [], data)


def _pressures(named: set[str], data: Refdata) -> Groups:
    """The working pressures of the fuel hoses of these classes."""
    groups = shelved("fuel hose j30 working pressure", "lines/materials", ("fuel hose",), data)
    kept = [(e, [f for f in figures if f.quantity == "working_pressure_maximum"]) for e, figures in groups]
    return [(e, figures) for e, figures in kept if figures and named & set(re.findall(r"r([0-9]+)", e.text))]


def _numbers(line: str) -> str:
    """The numbers that a line says, so that the reader sees them read."""
    found = re.findall(
        r"dot ?-?[0-9.]+|(?:[0-9]+ )?[0-9./]+ (?:psi|bar)|\b(?:30)?r[0-9]{1,2}\b|(?<![\w./-])[0-9]\.?[0-9]?(?= |$)",
        line,
    )
    return f": {', '.join(dict.fromkeys(found))}" if found else ""
