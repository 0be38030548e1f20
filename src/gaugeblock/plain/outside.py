"""What a shop asks and no table is about: welding settings, tyre pressures, an engine's clearances; who has it.

Nothing here is a figure. A line is of such a subject where a pattern finds its thing and what is asked of it.
"""

from __future__ import annotations

import re
from itertools import pairwise

from gaugeblock.answer.decision import none
from gaugeblock.answer.patterns import compiled
from gaugeblock.answer.sheet import Sheet
from gaugeblock.plain.chatter import CHATTER, TURNING, is_aside
from gaugeblock.plain.unlisted import SUBJECTS as UNLISTED

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_WELD = r"mig|tig|mma|gmaw|gtaw|stick weld\w*|weld(?:s|ing|ed|er)?|electrodes?|brazing|braze"
_ENGINE = "The maker of the engine prints it in the workshop manual."
_CAR = "The maker of the vehicle prints it in the handbook or the workshop manual."
_WELDER = "The maker of the wire or rod prints it, and a qualified procedure governs a weld that carries a load."
# The thing, what is asked of it (blank: the thing alone asks), how it is called, who has it.
_SUBJECTS: tuple[tuple[str, str, str, str], ...] = (
    (
        _WELD,
        r"amps?|amperage|current|volts?|voltage|settings?|wire speed|wire feed|heat setting|polarity|tungsten"
        r"|inductance",
        "the settings of a welder",
        _WELDER,
    ),
    (
        r"fillers?(?! (?:plug|cap|neck|hose|tube|hole))(?: rods?| wires?| metals?)?"
        r"|(?:welding|mig|tig) (?:rods?|wires?)",
        "",
        "the filler of a weld",
        _WELDER,
    ),
    (_WELD, r"filler|rods?|(?:which|what)(?: \w+)? wires?", "the filler of a weld", _WELDER),
    (rf"argon|shielding gas|{_WELD}", r"gas(?: flow)?|flow|argon|co2|purge", "the gas of a weld", _WELDER),
    (r"pre-?heat(?:ing|ed)?|post-?heat(?:ing|ed)?|interpass", "", "the preheat of a weld", _WELDER),
    (
        r"ty(?:re|res)|tires?|[0-9]{3}/[0-9]{2}z?r[0-9]{2}",
        r"pressures?|psi|bar|pump(?:ed)? up|inflate\w*",
        "tyre pressures",
        "The maker of the vehicle prints it; of other tyres the tyre's maker has it by load.",
    ),
    (r"toe(?:[ -](?:in|out))?|camber|cast[eo]r|tracking|king ?pin inclination|ackermann", "", "wheel alignment", _CAR),
    (r"valves?|tappets?|rockers?", r"clearances?|lash|gaps?|lift|timing", "valve clearances", _ENGINE),
    (
        r"pistons?|rings?|main bearings?|mains|big ends?|rod bearings?|crank(?:shaft)?|cam(?:shaft)?|head gasket|deck",
        r"clearances?|gaps?|end ?(?:float|play)|crush|lift|duration|height|timing",
        "the clearances inside an engine",
        _ENGINE,
    ),
    (
        r"ignition timing|timing advance|compression ratio|valve timing|float height|idle mixture",
        "",
        "the tuning of an engine",
        _ENGINE,
    ),
    (
        r"jets?|carb(?:s|urettors?|uretors?)?",
        r"sizes?|cfm|jetting|main|pilot|idle",
        "the size of a carburettor or its jets",
        _ENGINE,
    ),
    (
        r"buckl(?:e|es|ed|ing)|euler",
        "",
        "a strut that buckles",
        "An engineer works it out from its length, its section, its steel and how its ends are held.",
    ),
    (
        r"smoke|smoking|smokes",
        r"colou?r|blue|white|black|why|causes?|means?|worn",
        "what ails an engine",
        "A workshop manual has the faults of that engine and their signs.",
    ),
    (
        r"how many hours|(?:hours|labou?r time|labou?r hours)",
        r"(?:to|for) (?:fit|swap|do|install|convert|change|build|rebuild|weld|make)\w*|labou?r",
        "how long a job takes",
        "A shop that has done the like can say; nothing is printed of a conversion.",
    ),
    (
        r"(?:best|which|what|good)(?: \w+)? (?:paint|primer|lacquer)",
        "",
        "paint",
        "The paint's maker prints what it stands and on what it holds.",
    ),
    (
        r"(?:what|which|how much) (?:\w+ )?oil|oil (?:grade|capacity|weight|viscosity|level|pressure)",
        "",
        "the oil of an engine, a gearbox or an axle",
        "The maker of that unit prints its grade, its amount and its pressure.",
    ),
    (
        r"coolant|fuel|oil|tank|gearbox|axle|diff",
        r"how much a vehicle takes of its fluids",
        "how much a vehicle takes of its fluids",
        _CAR,
    ),
    (
        r"dis[ck]s?|rotors?|drums?|pads?|shoes|linings?",
        r"thickness|(?:how )?(?:thick|thin)|run-?out|wear|worn|minimum|min|diameter|limits?",
        "the wear limits of a brake",
        "The maker stamps it on the disc or the drum, and prints it in the workshop manual.",
    ),
    (
        r"coil ?springs?|leaf springs?|springs?|shocks?|dampers?|coilovers?|torsion bars?",
        r"rates?|lengths?|stiffness|heights?|travel|damping|preload|coils|turns",
        "springs and dampers",
        "The maker of the spring or the damper has it.",
    ),
    (
        r"radiators?|cfm",
        r"sizes?|fans?|core|rows|capacity|area",
        "the size of a radiator or a fan",
        "The maker of the radiator has it by the heat of the engine.",
    ),
    (
        r"(?:press|interference|shrink|sliding|running|push|transition|light drive|force) fits?|interference"
        r"|[a-z]{1,2}[5-9] (?:on|for|limits?|tolerance|fit|shaft|hole)|limits and fits|tolerance (?:class|grade)"
        r"|(?:hole|shaft|bore) (?:tolerance|limits)",
        "",
        "the limits of a fit",
        "The maker of the bearing prints the fits of its seats; a book of limits and fits has the rest.",
    ),
    (
        r"batter(?:y|ies)",
        r"cca|cold crank\w*",
        "the size of a battery",
        "The maker of the engine or the starter says what it cranks with.",
    ),
    (
        r"clutch(?:es)?",
        r"clamps?|torque capacity|diameter|pressure|size|hold|slips?|slipping",
        "clutches",
        "The maker of the clutch has what it carries.",
    ),
    (
        r"vacuum",
        r"boosters?|servos?|brakes?",
        "the vacuum that a brake booster needs",
        "The maker of the booster has it. Measure what there is at its hose, with the engine warm and at idle.",
    ),
    (
        r"(?:rivet|riv|blind) ?nuts?",
        "",
        "rivet nuts",
        "The maker of the rivet nut prints its hole, the sheet that it grips and what it holds.",
    ),
    (
        r"starter",
        r"(?:pinion|ring gear|mesh\w*)\b(.*)\b(?:lash|backlash|clearance|gap|shims?|depth)|shims?",
        "how deep the pinion of a starter meshes",
        "The maker of the starter or of the engine has it, and what shims it takes.",
    ),
    (
        r"bell ?housings?",
        r"run-?out|dowels?|register|indicat\w+|clock(?:ed|ing)|concentric\w*|centred|centered",
        "how true a bellhousing sits",
        "The gearbox maker has the limit. By how much it sits off is half of what a dial on the crank reads in one"
        " turn; offset dowels move it by what is stamped on them.",
    ),
    (
        r"(?:rubber |engine |motor |gearbox )?mounts?",
        r"(?:what |how much )?(?:weight|load)(?: (?:is|sits|sitting|on|does|each))*|each one",
        "how a weight is shared among its mounts",
        "Weigh each end of it on a scale where its mount will be. The maker of the mount has what it carries.",
    ),
    (
        r"(?:drill|saw|cutter|reamer|mill|lathe|tap)\b",
        r"(?:cutting |surface |spindle )?(?:speeds?|rpm|revs|feed)",
        "cutting speeds",
        "The maker of the tool prints them by metal and by diameter.",
    ),
    (
        r"paint\w*|primer|lacquer|powder ?coat\w*",
        r"dry\w*|cur\w*|times?|coats?|bake\w*|thin\w*",
        "paint",
        "The maker of the paint prints it on the tin and in its sheet.",
    ),
    (
        r"bias|balance|split|share|lock(?:s|ing|ed)?(?: up)? first|front[- ](?:to[- ])?(?:rear|back)",
        r"brak\w*|cal?lipers?|pistons?|pots?|discs?|dis[ck]s|drums?|fronts?\b(.*)\brears?",
        "how the braking is shared front to rear",
        "Nobody can work it out from bores alone: pistons, radii, linings, tyres and the load on each axle share it."
        " The front wheels must lock first. What to measure, whom to ask and how it is tried:"
        " `gaugeblock brake balance`.",
    ),
    (
        r"hydraulic (?:hand|park(?:ing)?)[- ]?brakes?|hydro (?:hand )?brakes?",
        r"sizes?|bore|cylinders?|master|diameter",
        "the cylinder of a hydraulic hand brake",
        "Its maker has it. To work it out say the pressure, the hand and the lever as of a pedal: `gaugeblock ask 600"
        " psi from 60 lb at 8 to 1 which bore`.",
    ),
    (
        r"(?:hand|park(?:ing)?)[- ]?brakes?",
        r"(?:lever )?ratio|leverage",
        "the lever ratio of a hand brake",
        "Measure it: the way of the grip over the way of the cable. With the pull of the hand `gaugeblock handbrake`"
        " has the pull of the cable.",
    ),
    (
        r"(?:british|uk|mot|great britain|australian|german|yearly|annual)\b(.*)\b(?:test|inspection)",
        r"(?:hand|park(?:ing)?)[- ]?brakes?|brake (?:effort|efficiency|force)",
        "the brake effort that such an inspection asks",
        "The authority prints it. The tables have the tests of the United States and Quebec: `gaugeblock brake parking"
        " brake`.",
    ),
    (
        r"(?:less|more|lower|higher|as much|same|different) (?:line |brake )?pressure",
        r"drums?|shoes?|wheel cylinders?",
        "the line pressure that a drum brake needs beside a disc",
        "The maker of the brake has it. What shops see at a hard stop: `gaugeblock ask line pressure hard stop`.",
    ),
    (
        r"(?:fuel )?(?:return|returns)(?: (?:line|hose|pipe))?",
        r"(?:same )?size|(?:how )?(?:big|small\w*|large)|bore|diameter|dash",
        "the size of a fuel return line",
        "The maker of the pump or the regulator has it: all that the engine does not burn goes back through it. What a"
        " bore of it loses: `gaugeblock fuel --help`, under --return-bore.",
    ),
    (
        r"(?:rail|fuel) pressure",
        r"boost(?:ed)?|referenced|manifold reference",
        "the fuel pressure under boost",
        "A regulator that is led to the manifold holds its base pressure over it: add the boost to the base, both in"
        " one unit. The maker of the injection has the base.",
    ),
    (
        r"brake\b(.*)\bhoses?|(?:braided|ptfe)\b(.*)\b(?:hoses?|lines?)",
        r"(?:smallest |least |minimum |min |tightest )?bend(?:ing)? radius|how tight|how sharp",
        "the bend radius of a braided brake hose",
        "Its maker prints it by size. The tables have that of aircraft rubber hose: `gaugeblock find bend"
        " radius hose`.",
    ),
    (
        r"(?:which|what)(?: [a-z-]+){0,2} (?:adapt[eo]rs?|bungs?)",
        r"(?:(?:-[0-9]{1,2}|an) )?hoses?\b(.*)\b(?:npt|pipe thread)|(?:npt|pipe thread)\b(.*)\bhoses?|npt|pipe"
        r" thread|an|jic|-[0-9]{1,2}",
        "adapters between a hose and a port",
        "Measure both threads first; who makes the hose ends has the adapter and its bore. The thread of a hose end:"
        " `gaugeblock ask -10 AN thread`.",
    ),
    *(
        (
            dash,
            hose,
            "the dash number of a hose",
            "A dash number counts sixteenths of an inch of the tube that its end is for: -6 goes with 3/8 in. The"
            " bore of the hose is less or more by its kind, and its maker prints it.",
        )
        for dash, hose in (
            (
                r"(?:what|which) dash|dash (?:number|size)|(?:hose|line|tube|in) dash",
                r"(?:[0-9]/[0-9]+|-[0-9]{1,2})(?: in| inch)?(?: fuel| oil| brake| rubber)?(?: (?:hose|line|tube)s?)?",
            ),
            (r"-[0-9]{1,2}", r"hoses?\b(.*)\b(?:inside|bore|id)|(?:inside|bore|id)\b(.*)\bhoses?"),
        )
    ),
    (
        r"push[- ]?(?:on|lock|fit)|(?:low|medium)[- ]pressure|return|worm[- ]drive",
        r"(?:steering|relief|hydraulics?)\b(.*)\bhoses?|hoses?\b(.*)\b(?:steering|relief|hydraulics?)|steering|relief",
        "the pressure hose of a power steering",
        "A hose is for no more than what is printed on it: one that is rated under the relief pressure is for the"
        " return alone. The maker of the steering has the pressure hose and its crimped ends.",
    ),
    (
        r"(?:copper|steel|metal|hard|rigid|cunifer|kunifer|copper[- ]nickel|cupro[- ]nickel|stainless) brake"
        r" (?:lines?|pipes?|tubes?|tubing)",
        r"temp\w*|hot|heat|degrees|melts?|melting|deg[cf]",
        "how hot a metal brake line may get",
        "The metal is not the limit, the fluid in it is: `gaugeblock ask brake fluid boiling point`.",
    ),
    (
        r"(?:fire|heat|glass(?: fib(?:re|er))?|braided glass) sleev\w+",
        r"(?:rubber |fuel |brake |oil )?(?:hoses?|lines?|wires?)(?: inside| in it| under it)?|inside",
        "what stands in a heat sleeve",
        "The limit of a sleeve is its own. It slows the heat, and what is inside keeps its own limit: ask that of the"
        " hose or the line by its name.",
    ),
    (
        r"(?:cross-?linked|xlpe|silicone|ptfe|thin[- ]?wall(?:ed)?)(?: [a-z]+){0,2} (?:wires?|cables?|insulation)",
        r"temp\w*|hot\w*|heat|deg(?:rees|f|c)?|beside|melts?|limits?",
        "the heat that silicone or PTFE wire stands",
        "Its maker has it. Of SAE J1128 wire the tables have it: `gaugeblock ask TXL wire heat limit`, or SXL and GXL,"
        " which are cross-linked too, GPT and TWP, which are PVC.",
    ),
    (
        r"cal?lipers?(?: pistons?)?\b(.*)\bseals?|seals?\b(.*)\bcal?lipers?|wheel cylinder (?:seals?|cups?)",
        r"temp\w*|hot|heat|deg(?:rees|f|c)?|stand|put up",
        "the heat that the seals of a caliper stand",
        "The maker of the caliper has it. The rubber kind by itself: `gaugeblock ask epdm rubber heat`; the fluid"
        " beside them: `gaugeblock ask brake fluid boiling point`.",
    ),
    (
        r"(?:pric(?:e|es|ing)|costs?|part-number)",
        "",
        "prices and part numbers",
        "A dealer has it.",
    ),
    (
        r"melting (?:point|temp\w*)s?",
        r"nylon|ptfe|rubber|silicone|neoprene|hoses?|boots?|plastics?|lines?|epdm|viton|fkm|nitrile"
        r"|polyurethane|seals?",
        "the melting point of a plastic or a rubber",
        "Its maker has it. What it stands in use the tables have: `gaugeblock ask nylon fuel line heat`.",
    ),
    (
        r"colou?rs?|cherry(?: red)?",
        r"temper\w*|heat\w*|temperature|hot|forg\w*",
        "the colours of hot steel",
        "A colour is no thermometer: use a crayon, a pyrometer or the steel maker's cycle.",
    ),
)

# With these a line asks for what the tables have, whatever else it tells.
_OF_THE_TABLES = frozenset(
    ["fuse", "cable", "torque", "drill", "relay", "bolt", "bolts", "nut", "nuts", "stud", "hose"]
)
# With these a line has two things, of neither of which a table is.
_CHOOSES = frozenset(["or", "vs", "versus"])
# What a rule may say of a subject: the words of a line by which it is found.
_OF_A_RULE = {"the filler of a weld": re.compile("filler|stainless|mild|steel|3[0-9]{2}")}


def by_rule(words: tuple[str, ...], subject: str) -> tuple[str, ...]:
    """The words of a line by which a rule of its subject is found; none where no rule is about it."""
    kept = _OF_A_RULE.get(subject)
    return () if kept is None else tuple(word for word in words if kept.fullmatch(word))


def not_looked_at(words: tuple[str, ...], known: str) -> str:
    """What a line says besides, for which nobody looked: ``; not looked at: ...``, or nothing."""
    left = left_of(words, known)
    return f"; not looked at: {', '.join(left)}" if left else ""


def left_of(words: tuple[str, ...], known: str) -> list[str]:
    """The words that a line says besides."""
    return [w for w in dict.fromkeys(words) if w not in CHATTER and not is_aside(w) and w not in known.split()]


def told_by(found: re.Match[str]) -> tuple[str, str]:
    """The words by which a match is known, and what is left of its line: what stands between two of its words, a group
    of its pattern, is left too.
    """
    line = found.string
    between = [at for span in found.regs[1:] if span[0] >= 0 for at in span]
    cuts = [0, found.start(), *between, found.end(), len(line)]
    pieces = [line[a:b] for a, b in pairwise(cuts)]  # left, known, left, known ... left
    known, rest = " ".join(pieces[1::2]), " ".join(pieces[::2])
    return known, rest


def outside(words: tuple[str, ...], data: Refdata) -> tuple[Sheet, str] | None:
    """The Sheet of a subject that no table is about, and the words by which it was known; None where the line names
    none of them, or turns what it says.
    """
    if not (TURNING - _CHOOSES).isdisjoint(words):
        return None
    line = " ".join(words)
    for thing, asked, what, who in (*UNLISTED, *_SUBJECTS):
        found = compiled(rf"(?<![^ ])(?:{thing})(?![^ ])").search(line)
        if found is None:
            continue
        known, rest = told_by(found)
        if asked:
            about = compiled(rf"(?<![^ ])(?:{asked})(?![^ ])").search(rest)
            if about is None:
                continue
            asks, rest = told_by(about)
            known = f"{known} {asks}"
        if not _OF_THE_TABLES.isdisjoint(rest.split()):
            return None  # this is what is asked
        do = f"No table here is about {what}. {who}"
        return Sheet(what, {"words": line}, data, [], [], (), decision=none("", do)), known
    return None
