"""What a line about a circuit is about that rules alone have, and the rows that stand beside them."""

from __future__ import annotations

import re

from gaugeblock.plain.subjects.general import told_by_subject
from gaugeblock.plain.subjects.subject import Subject, shelved

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata

_LIMITS = "wiring/limits"
_NO_SIZE = r"what (?:size|gauge)|how (?:big|thick)|torque|tight\w*|volts? (?:lost|drop)|how far"
# What a subject shows beside its rules: the text to find, and of which things.
_COIL = ("ISO relay coil, 12 V",)
_CHARGING = ("12 V system",)
_CIRCUITS = (
    "main feeders, blowers, electronics, navigation lights",
    "other lighting and where it is not critical",
    "fire engine 12 V",
)
_HELD_WIRES = ("wire", "semitrailer wiring", "boat wire")
_WIRES = r"wires?|wiring|looms?|harness\w*|cables?"
_PIPES = r"(?:brake |fuel )?(?:lines?|pipes?|hoses?)|tub(?:e|es|ing)"


def _of_the_coil(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    return ("relay coil current",), shelved("relay coil", _LIMITS, _COIL, data)


def _of_loads(line: str, _data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """What the kind of load draws that is named."""
    if "start" in line:
        return ("current of a starter",), []
    return ("current of fans and pumps" if re.search(r"\b(?:fans?|pumps?)\b", line) else "current of lamps",), []


def _of_charging(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    return (), shelved("charging voltage", _LIMITS, _CHARGING, data)


def _of_cranking(line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The volts that each part of a starter's circuit may lose, of 24 V where that is said."""
    cranking = shelved("voltage drop", _LIMITS, (f"{'24' if '24' in line else '12'} V battery cables",), data)
    parts = [] if "24" in line else shelved("cranking voltage drop", _LIMITS, ("12 V cranking",), data)
    return ("cranking",), [*cranking, *parts]


def _of_fusing(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The rule that every wire is fused, and that of the starter's cable: where the fuse sits is another matter."""
    from gaugeblock.finding import rules

    every = [one for one in rules(data) if one.rule is not None and one.rule["statement"].startswith("Every wire not")]
    return ("starter cable",), [(one, []) for one in every]


def _of_a_circuit(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The shares of its volts that a circuit may lose; the tables have them of boats and fire engines."""
    return (), shelved("voltage drop share", _LIMITS, _CIRCUITS, data)


def _of_clips(line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """How far apart wires are held, and how far apart pipes are: both where neither is named."""
    is_wire, is_pipe = (re.search(rf"\b(?:{one})\b", line) for one in (_WIRES, _PIPES))
    wires = [] if is_pipe and not is_wire else shelved("wire support spacing", _LIMITS, _HELD_WIRES, data)
    of = next((one for one in ("brake", "fuel") if one in line), "vehicle")
    pipes = [] if is_wire else shelved(f"{of} line support spacing", "lines/supports", ("vehicle",), data)
    return ("support",) if wires and not pipes else (), [*pipes, *wires]


_SUBJECTS = (
    Subject(
        "how far apart clips are",
        (
            r"how often|how far apart|spacing|every|apart|interval\w*|distance between|between (?:the )?(?:clips"
            r"|clamps)",
            r"clip(?:s|ped|ping)?|clamp(?:s|ed|ing)?|tie(?:s|d)?|zip ?ties?|supports?|supported|secur\w+|fasten\w*"
            r"|p-?clips?",
            rf"{_WIRES}|{_PIPES}|things|stuff|them|it|you|i",
        ),
        (),
        unless=r"torque|tight\w*|aircraft|boats?|marine|hangers?|exhaust|hydraulic|size|worm|t-?bolt|od|copper|nickel",
        shown=_of_clips,
    ),
    Subject(
        "relay or no relay",
        (
            r"relays?",
            r"(?:need|needs|needed|require[sd]?|necessary|have to (?:use|fit|have|run)|should i (?:use|fit|run|add)"
            r"|do i (?:use|fit|run))(?: (?:an?|the|any|my|1|one|to|use|fit|seperate|separate|extra))* relays?"
            r"|relays? (?:or (?:not|no|just|direct\w*|(?:an? )?switch)|necessary|needed|required)"
            r"|without (?:an?|the|any) relays?|(?:is|are) (?:an? )?relays? (?:needed|necessary|worth)"
            r"|(?:with|through) (?:an?|the) switch (?:or|instead)",
        ),
        ("relay or no relay",),
        unless=rf"{_NO_SIZE}|pins?|8[567]a?|coil|diode|terminals?|wire (?:size|gauge)|legs?|fuses?|both",
        forbids=True,
    ),
    Subject(
        "terminals of a relay",
        (r"relays?", r"(?:5|five|4|four|3|three)[- ]?pins?|8[567]a?|legs?|terminals?|pin ?outs?|pins?"),
        ("terminals of a relay, 30, 85, 86, 87 and 87a",),
        unless=_NO_SIZE,
        forbids=True,
    ),
    Subject(
        "the coil of a relay",
        (r"relays?", r"coils?", r"amps?|current|draws?|ohms?|resistance|pulls?|takes?|milliamps?|ma"),
        (),
        unless=_NO_SIZE,
        shown=_of_the_coil,
    ),
    Subject(
        "colours of crimp terminals",
        (
            r"crimps?|(?:crimp|insulated|ring|spade|butt|bullet|push[- ]on)[- ]?(?:terminals?|connectors?|splices?"
            r"|lugs?)"
            r"|terminals?|connectors?",
            r"red|blue|yellow|colou?rs?",
            r"wires?|gauges?|sizes?|awg|mm2|takes?|for|fits?|which|what",
        ),
        ("crimp terminals, colours",),
        unless=r"batter(?:y|ies)|bolts?|threads?|relays?|earth|alternators?|corro\w*|solder\w*",
        forbids=True,
    ),
    Subject(
        "colours of blade fuses",
        (
            r"(?:amps? )?(?:blade |mini |maxi )*fuses?|amps?",
            r"colou?rs?|(?:red|blue|yellow|green|brown|tan|clear|orange|purple|violet|pink|grey|gray|white) (?:blade"
            r" |mini |maxi )?(?:fuses?|one)",
        ),
        ("blade fuse, colours", "maxi fuse, colours"),
        unless=r"wires? colou?r|cables?|coolant|what (?:size|gauge)|feet|ft|metres?|meters?",
        forbids=True,
    ),
    Subject(
        "colours of a British loom",
        (
            r"british|english|uk|brit|english|bs ?au ?7",
            r"wir(?:es?|ing)|looms?|harness\w*|cables?",
            r"colou?rs?|blue|white|brown|green|purple|red|black|yellow",
        ),
        ("British wiring colours",),
        unless=rf"{_NO_SIZE}|thread\w*|fuse",
    ),
    Subject(
        "what the usual loads draw",
        (
            r"how (?:many|much) (?:amps?|current|power|watts?)|what (?:amps?|amperage|current)|(?:current"
            r"|amp(?:erage)?)"
            r" (?:draw|rating)|amps? (?:does|do|will|would)",
            r"starters?(?: motors?)?|(?:fuel|petrol|gas|lift) pumps?|(?:(?:electric|cooling|radiator) )*fans?"
            r"|head ?(?:lamps?|lights?)|lamps?|bulbs?|lights?",
            r"draws?|drawing|pulls?|takes?|uses?|needs?|current|rating",
        ),
        (),
        unless=r"wires?|cables?|fuses?|relays?|alternators?|batter(?:y|ies)|drains?|ratios?|gears?|winch",
        shown=_of_loads,
    ),
    Subject(
        "house wire in a vehicle",
        (
            r"house(?:hold)?|mains|solid(?:[- ](?:core|copper))?|domestic|building|lamp cord|extension cord",
            r"wires?|cables?|wiring|flex|cord",
            r"cars?|vehicles?|trucks?|use|used|can|ok|okay|instead|on a",
        ),
        ("house wire",),
        unless=rf"{_NO_SIZE}|awg|resist\w*",
    ),
    Subject(
        "tinned or bare wire",
        (r"tinned", r"copper|wires?|cables?", r"or|better|bare|worth|need|should|vs|versus|why|use|corro\w*"),
        ("tinned wire",),
        unless=rf"{_NO_SIZE}|crimp\w*|solder\w*",
    ),
    Subject(
        "how near to the battery the fuse sits",
        (
            r"fus(?:es?|ed|ing)|breakers?",
            r"batter(?:y|ies)|source",
            r"how (?:far|close|near|soon)|where|distance|as (?:close|near)|inches",
        ),
        ("fuse at source", "battery main"),
        unless=r"boot|trunk|rear|wires? size|what (?:size|gauge)|awg|mm2|volts?|amps?|exhaust\w*|header\w*",
    ),
    Subject(
        "crimped or soldered",
        (
            r"crimp(?:s|ed|ing)?|solder(?:s|ed|ing)?",
            r"lugs?|wires?|cables?|terminals?|joints?|looms?|harness\w*|splices?|connections?|ends?|wiring|battery",
            r"or|vs|versus|better|best|practice|ok|okay|should|which|can|both|stronger|reliable|good",
        ),
        ("solder or crimp", "joints"),
        unless=rf"{_NO_SIZE}|pull|force|temp\w*|melt\w*",
        forbids=True,
    ),
    Subject(
        "wires and their fuses",
        (
            r"which|what|do all|does every|must every|should every|any|every|each",
            r"wires?|cables?|circuits?|feeds?|leads?",
            r"(?:need\w*|have|has|must|should|without|no|be)(?: to| not| a| an| any| be| no)* (?:fus(?:es?|ed|ing)"
            r"|protect\w*)",
        ),
        (),
        unless=rf"{_NO_SIZE}|what fuse|which fuse|amps?|watts?|awg|gauge|mm2",
        shown=_of_fusing,
    ),
    Subject(
        "the fuse of a battery in the trunk",
        (r"boot|trunk|rear|back", r"batter(?:y|ies)", r"fus(?:e|es|ed|ing)|breaker|cut[- ]?off"),
        ("battery in the trunk or the cabin", "starter cable"),
        unless=rf"{_NO_SIZE}|amps?|awg|gauge|mm2",
    ),
    Subject(
        "volts that a starter's circuit may lose",
        (
            r"allow\w*|permi\w*|max(?:imum)?|accept\w*|normal|how much|limit|ok|okay|most|should",
            r"(?:(?:6|12|24) )?volts?(?: drop)?|voltage(?: drop)?|drop",
            r"starter|starting|cranking|crank",
            r"drop|los(?:e|es|t|s)|lost",
        ),
        (),
        unless=r"amps?|awg|gauge|mm2|feet|foot|ft|met(?:re|er)s?|m",
        shown=_of_cranking,
    ),
    Subject(
        "volts that a circuit may lose",
        (
            r"allow\w*|permi\w*|max(?:imum)?|accept\w*|normal|limit|ok|okay|too much|should|typical",
            r"(?:volts?|voltage)(?: drop)?|drop",
            r"drop\w*|los(?:e|es|t|s|ing)|bulb|socket",
            r"lights?|lighting|lamps?|bulbs?|headlights?|circuits?|wir(?:es?|ing)|cables?|earths?|grounds?|ecu"
            r"|sensors?|looms?",
        ),
        (),
        unless=r"amps?|awg|gauge|mm2|feet|foot|ft|met(?:re|er)s?|m|fus\w*|what (?:wire|size|cable)",
        shown=_of_a_circuit,
        forbids=True,
    ),
    Subject(
        "charging voltage",
        (
            r"alternators?|dynamos?|charg(?:e|es|ing)|batter(?:y|ies)|system",
            r"volt\w*|read(?:s|ing)?|show(?:s|ing)?|put(?:s|ting)? out|meter",
            r"running|charging|idling|at idle|tick ?over|engine on|good|healthy|output|regulat\w*",
        ),
        (),
        unless=rf"{_NO_SIZE}|amps?|wires?|cables?|fuses?|drop\w*|los\w*|cca|ah|milliamps?|flat|drain|draw|ground|earth"
        r"|frame|resting|key off|pulley|horse\w*|lamps?|lights?|bulbs?",
        shown=_of_charging,
    ),
    Subject(
        "battery cables, which first",
        (
            r"batter(?:y|ies)|terminals?|(?:jump )?leads?|cables?",
            r"first|(?:on|off) last|in (?:what|which) order|what order",
            r"batter(?:y|ies)|negative|positive|earth|ground|terminals?|disconnect\w*|remov\w*|off|take|undo",
        ),
        ("battery cables, which first",),
        unless=rf"{_NO_SIZE}|fus\w*|relay|amps?|charg\w*|how long|flat|draw\w*|bolts?|nuts?|gears?|calipers?|bleed\w*",
        forbids=True,
    ),
    Subject(
        "cold cranking amps and amp hours",
        (r"cca|cold crank\w*(?: amps?)?", r"ah|amp[- ]?hours?|amps?|mean\w*|equal|same|what is|convert\w*|into|rating"),
        ("cold cranking amps and amp hours",),
        unless=r"cables?|wires?|awg|drop",
        forbids=True,
    ),
    Subject(
        "an alternator and what it is to run",
        (
            r"alternators?|dynamos?",
            r"(?:what|which|how big|how many|how large|size|big enough|enough|for|bigger|uprat\w*|need|will|do i)\b.*",
            r"size|amps?|big|loads?|enough|stereo|amplifier|idle|pulleys?|fans?|winch\w*|conversion|swap|upgrade"
            r"|keep up",
        ),
        ("size of an alternator",),
        unless=r"wires?|cables?|fuses?|link|bolts?|bracket|torque|tight\w*|nuts?|horse\w*|kw|power|drop|volts?|fusible"
        r"|gauge|awg|mm2|charge wire|length|feet|ft|met(?:re|er)s?",
        forbids=True,
    ),
    Subject(
        "what an alternator takes from the engine",
        (
            r"alternators?|dynamos?",
            r"horse ?power|hp|kw|power|drag|rob\w*",
            r"takes?|take off|draw\w*|rob\w*|cost\w*|use\w*|need\w*|lose\w*|drag",
        ),
        ("power that an alternator takes",),
        unless=r"wires?|cables?|fuses?|bolts?|steering",
        forbids=True,
    ),
    Subject(
        "charging at idle",
        (r"idl\w*|tick ?over", r"charg\w*|batter(?:y|ies)", r"enough|does|do|will|can|how long|charge"),
        ("charging at idle",),
        unless=rf"{_NO_SIZE}|volts?|voltage|read\w*|show\w*|amps?|wires?|pulleys?|alternator",
    ),
    Subject(
        "slow and quick fuses",
        (
            r"slow[- ]?(?:blow|burn|blowing)?|time[- ]?(?:delay|lag)|delay|anti[- ]?surge",
            r"fus(?:e|es|ed)",
            r"difference|or|vs|versus|better|which|what|use|need|for|should|why|when|normal|fast|quick|ordinary",
        ),
        ("slow and quick fuses",),
        unless=rf"{_NO_SIZE}|what amp|amps?|awg",
    ),
    Subject(
        "cable ties and heat",
        (
            r"(?:zip|cable|tie|nylon|plastic)[- ]?(?:ties|tie|wraps?)|zipties?",
            r"hot|heat|temp\w*|turbo\w*|exhausts?|headers?|manifolds?|melt\w*|deg[cf]|degrees|engine|bonnet|hood"
            r"|stands?|near",
        ),
        ("cable ties, heat",),
        unless=r"how far apart|spacing|every|often",
        forbids=True,
    ),
)


def told(_question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line about a circuit is about; None for any other."""
    return told_by_subject(words, data, _SUBJECTS)
