"""What a line is about that rules alone have: which of them say it, however it is told; and what is refused by name.

Each Subject has patterns, every one of which the line must have. A rule that forbids a thing says it however the line
goes on; any other subject is answered only where every number of the line belongs to it, and where it has a pattern of
its words every word. What is left over is said.
"""

from __future__ import annotations

import re

from gaugeblock.errors import InputError
from gaugeblock.plain.chatter import CHATTER, TURNING, is_aside

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.found import Found
    from gaugeblock.shelf import Entry
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
_OF_OIL = r"oil|fuel|petrol|gas|gasoline|diesel|grease"
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
    r"|(?:grade [58]|8\.8|10\.9|12\.9|hardened|high tensile)(?: \w+)? (?:bolts?|studs?)|bolt heads?"
    r"|(?:axle|half) ?shafts?|torsion bars?|anti-?roll bars?|sway bars?"
)

# What is put in once more; what is asked of it otherwise.
_AGAIN = (
    r"re-?us(?:e|ed|ing|able)|use (?:it |them |the old \w+ )?(?:again|twice)|again|twice|second time|old (?:one|ones"
    r"|sleeve"
    r"|washers?)|refit\w*|put (?:it |them )?back|anneal\w*|back off|new (?:one|ones) (?:each|every)|every time"
    r"|each time"
)
_NO_AGAIN = r"torque|tight|how tight|lb|lbf|nm|ft|size|preload (?:of|is)|turning|thick\w*|heat|clamp"
_HOSE, _BRAKE_FLUID = "hose for fuel injection", "brake fluid, mixed"
_BUNG = "place and angle of an oxygen sensor bung in the exhaust pipe"
_FORBIDDEN = "heat on a forged or heat-treated part"
_HOT_RUN = "how hot an exhaust runs"
_LOW = "SAE J30 R6, R7, R8"
# What is measured of an exhaust that runs.
_OF_A_RUN = ("exhaust header", "exhaust gas at port, petrol engine")
# The rules of hoses, and of which classes each is.
_CLASS_RULES = (("SAE J30 R9", "9"), (_LOW, "6 7 8"), ("SAE J30 R14", "14"), ("SAE J30 R10", "10"))


class Subject:
    """A subject: its ``name``; ``patterns``, each of which a line must have; ``unless`` one that it must not have;
    ``rules`` the subjects of the rules that say it; ``words`` a pattern of the words that say no more of it, blank
    where the rule holds whatever is said.
    """

    __slots__ = ("name", "patterns", "rules", "unless", "words")

    def __init__(
        self, name: str, patterns: tuple[str, ...], rules: tuple[str, ...], words: str = "", unless: str = ""
    ) -> None:
        self.name = name
        self.patterns = patterns
        self.rules = rules
        self.words = words
        self.unless = unless

    def has(self, line: str) -> bool:
        """Whether a line has every pattern of it."""
        if self.unless and re.search(rf"\b(?:{self.unless})\b", line):
            return False
        return all(re.search(rf"(?<![\w.])(?:{pattern})(?![\w.])", line) for pattern in self.patterns)


_KINDS_OF_FLUID = r"dot|[345]|5\.1|51|silicone|glycol|mineral|oil|brake|fluids?|system|clutch|reservoir|master|cylinder"
_SUBJECTS = (
    Subject(
        _BRAKE_FLUID,
        (_INTO, rf"{_FLUID}(?![\w.]).*(?<![\w.]){_FLUID}", r"dot ?-?[345]\S*|dot|brake fluids?"),
        ("DOT 5", "brake fluids mixed"),
        rf"{_INTO}|{_KINDS_OF_FLUID}|over|up|got|all|only|each|other|kinds?|types?|different|same|old|new|fresh"
        "|used|instead",
        unless=r"power steering|atf|transmission|engine|motor|gear|water|grease|diesel|petrol|hoses?|seals?|rubber"
        r"|boil\w*|temp\w*",
    ),
    Subject(
        "oil in a brake system",
        (
            r"power steering fluid|atf|transmission fluid|(?:engine|motor|gear|gearbox|hydraulic|petroleum) ?oil|grease"
            r"|diesel|petrol|gasoline|paraffin|kerosene",
            r"brake (?:fluid|system|reservoir|master(?: cylinder)?)|brakes?|master cylinder|dot ?[- ]?(?:3|4|5\.1)",
            rf"{_MIX}|in|into|instead|contaminat\w*|mistake|wrong",
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
        _FORBIDDEN,
        (
            _FORGED,
            r"heat(?:ed|ing)?(?! treat)|(?:red|cherry|orange) ?(?:red|hot)|torch\w*|gas axe|blow ?(?:lamp|torch)"
            r"|oxy\w*|weld(?:ed|ing)?(?! (?:on|in) \w+ (?:bung|boss))",
        ),
        ("heat treated or forged part",),
        unless=r"pre-?heat\w*|heat treat\w*|shields?|shielding|torque|tight\w*|hrc|rockwell|axle tubes?|quench\w*"
        r"|temper(?:ed|ing)?|how hot|temp\w*",
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
                r"silicone[- ](?:\w+[- ])?hoses?",
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
            r"chang(?:e|ed|ing)|renew\w*|replac\w*|flush\w*|last",
            r"brake fluid|dot ?-?(?:3|4|5\.1)",
        ),
        ("brake fluid, how often", "brake fluid change"),
        unless=r"pads?|shoes?|discs?|boil\w*",
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
        _HOT_RUN,
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
    ),
    Subject(
        _HOSE,
        (
            r"hoses?|r ?(?:6|7|9|10|14)|30 ?r ?(?:6|7|9|10|14)",
            r"efi|inject(?:ion|ed|or|ors)|fuel inject\w*|high pressure",
            r"rubber|which|what|ok|okay|safe|use|for|good|will|can|does|or",
        ),
        (),
        r"hoses?|lines?|rubber|fuel|efi|inject\w*|(?:30)?r?(?:6|7|9|10|14)|j?30|sae|psi|bar|pressure|high|rated|rating"
        r"|system|pump|rail|petrol|gas|side|feed|hold|stand|return|clamps?|clips?|good",
        unless=r"size|bore|inch|in|mm|temp\w*|hot|heat|degf|degc|e85|ethanol|diesel|nylon|ptfe|braided",
    ),
)
_JOINT = r"v-? ?bands?|slip[- ](?:joints?|fits?|ons?)|slip(?= or| vs)|flanges?|ball (?:and socket|joints?)"
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
            rf"(?<!inert )(?:{_HOT_WORK})",
            r"(?:fuel|petrol|gas|gasoline|diesel|paraffin|kerosene) (?:tanks?|cells?|drums?|cans?|barrels?)"
            r"|(?:tanks?|cells?|drums?|barrels?)\b.*\b(?:fuel|petrol|gasoline|diesel)|jerry ?cans?|oil drums?"
            r"|(?:washed|rinsed|drained|emptied|empty|flushed|steamed|steam|old|used|leaky|leaking)\b.*\btanks?",
        ),
        r"gap|clearance|straps?|torque|tight\w*|shields?|shielding|battery|new tank|(?:build|mak|fabricat)\w*"
        r"|from scratch|how thick|thickness|wall|gauge|sheet|hoses?|beside|near|next to|close to|away"
        r"|exhausts?(?! (?:gas|fumes))|wires?|lines?|cable|air"
        r"|(?:water|header|expansion|hydraulic) tanks?",
        "a tank or a drum that held fuel can explode when it is welded, brazed, soldered, cut or heated: no washing and"
        " "
        "no waiting time is on record that makes it safe",
        "keep flame and sparks off it; a tank repairer cleans it, fills it with a gas that does not burn and measures "
        "it free of vapour first; or fit a new tank",
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
            r"primar(?:y|ies)",
            r"sizes?|diameter|dia|od|bore|id|big|large|length|long",
            r"pipes?|tubes?|primar\w+|headers?",
        ),
        r"wire|cable|coil|gap|stroke|chain|how hot|temp\w*",
        "the tables have no rule for the primary tubes of a header, neither for their diameter nor for their length; "
        "none was found that could be read",
        "take them from the maker of the cam or of the header; for the pipe behind the collector say the power: "
        "`gaugeblock ask exhaust pipe size for 300 hp`",
    ),
)


def refused_by_name(question: str, words: tuple[str, ...]) -> None:
    """InputError of a line that asks for what no table has, and that would be dangerous to answer by a number."""
    line = " ".join(words)
    for patterns, unless, why, do in _REFUSED:
        if re.search(rf"\b(?:{unless})\b", line) or not all(re.search(rf"\b(?:{p})\b", line) for p in patterns):
            continue
        raise InputError(question, "", why, (), do)


def told_by_subject(words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line is about; None for a line that is about none of these subjects."""
    line = " ".join(words)
    if words[-1] in TURNING:
        return None
    for subject in _SUBJECTS:
        if not subject.has(line):
            continue
        left = _left(line, subject)
        has_number = any(char.isdigit() for word in left for char in word)
        if left and (subject.words or (has_number and subject.name != _FORBIDDEN)):
            continue
        aside = [word for word in dict.fromkeys(_rest(line, subject).split()) if is_aside(word)]
        return _found(subject, line, [*left, *aside], data)
    return None


def _rest(line: str, subject: Subject) -> str:
    """A line without what its subject is known by."""
    known = "|".join((*subject.patterns, subject.words)) if subject.words else "|".join(subject.patterns)
    return re.sub(rf"(?<![\w.])(?:{known})(?![\w.])", " ", line)


def _left(line: str, subject: Subject) -> list[str]:
    """The words of a line that say nothing of its subject."""
    rest = _rest(line, subject)
    said = {word for word in rest.split() if word not in CHATTER and not is_aside(word)}
    numbers = {word for word in said if re.fullmatch(r"[0-9.]+", word)} if "psi|bar" in subject.words else set()
    turning = TURNING if not subject.words or subject.name == _BRAKE_FLUID else frozenset(["or"])
    return [word for word in dict.fromkeys(rest.split()) if word in said - numbers - turning]


def _found(subject: Subject, line: str, left: list[str], data: Refdata) -> Found:
    from gaugeblock.finding import rules
    from gaugeblock.found import Found

    groups: list[tuple[Entry, list[Figure]]] = []
    wanted = subject.rules
    if subject.name == _HOSE:
        named = set(re.findall(r"\b(?:30)?r ?(6|7|8|9|10|14)\b", line))
        wanted = tuple(one for one, of in _CLASS_RULES if (named or {"9", "6"}) & {*of.split()})
        wanted = (_LOW,) if _LOW in wanted and len(named) > 1 else wanted
        groups = _pressures(named | {"9"}, data)
    elif subject.name == _HOT_RUN:
        groups = _shelved("exhaust", "lines/heat_sources", _OF_A_RUN, data)
    elif subject.name == _BRAKE_FLUID and not re.search(r"(?<![\w.])(?:dot ?-?)?5(?![\w.])|silicone", line):
        wanted = wanted[1:]
    for one in wanted:
        groups += [(entry, []) for entry in rules(data) if entry.rule is not None and entry.rule["subject"] == one]
    held = " ".join(entry.rule["statement"].casefold() for entry, _ in groups if entry.rule is not None)
    left = [word for word in left if not re.search(rf"\b{word}\b", held)]
    more = f" (not in them: {', '.join(left)})" if left else ""
    return Found(f"{subject.name}{_numbers(line)}{more}", groups, 0, [], data)


def _pressures(named: set[str], data: Refdata) -> list[tuple[Entry, list[Figure]]]:
    """The working pressures of the fuel hoses of these classes."""
    groups = _shelved("fuel hose j30 working pressure", "lines/materials", ("fuel hose",), data)
    kept = [(e, [f for f in figures if f.quantity == "working_pressure_maximum"]) for e, figures in groups]
    return [(e, figures) for e, figures in kept if figures and named & set(re.findall(r"r([0-9]+)", e.text))]


def _shelved(text: str, table: str, things: tuple[str, ...], data: Refdata) -> list[tuple[Entry, list[Figure]]]:
    """The rows of a table that have the words of a text, those of these things alone."""
    from gaugeblock.finding import find

    groups = find(text, data=data, whole=True).groups
    return [(entry, figures) for entry, figures in groups if entry.table == table and entry.key[0] in things]


def _numbers(line: str) -> str:
    """The numbers that a line says, so that the reader sees them read."""
    found = re.findall(r"dot ?-?[0-9.]+|[0-9.]+ (?:psi|bar)|\b(?:30)?r[0-9]{1,2}\b|\b[0-9]\.?[0-9]?(?= |$)", line)
    return f": {', '.join(dict.fromkeys(found))}" if found else ""
