"""What is asked about the wire and the fuse of one circuit, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.errors import Ambiguous
from gaugeblock.wiring.alternator_ask import ALTERNATOR
from gaugeblock.wiring.asked import (
    CARRIED,
    DROPPED,
    LEAST_VOLTS,
    OF_SIZES,
    RELAY,
    SHARED,
    WIRE,
    by_area,
    of_a_power,
    sizes,
)
from gaugeblock.wiring.parked_ask import PARKED, PARKED_BY_RESERVE

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _gauge(match: re.Match[str]) -> str:
    return f"{match['n']} AWG"


def _circuit() -> Callable[..., Sheet]:
    from gaugeblock.wiring.circuit import circuit

    return circuit


def _voltages(_data: Refdata) -> tuple[str, ...]:
    """Of the systems that are built; 12 V is taken where none was said."""
    return ("12 V", "24 V")


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The cable of a starter is judged alone, however the current comes back; of which sizes one is to be is told."""
    values = {key: value for key, value in by_area(values).items() if key != "choice"}
    if values.get("kind") == "starter cable" and values.get("back") == "body":
        return {key: value for key, value in values.items() if key != "back"}
    return values


CIRCUIT = Topic(
    _circuit,
    "wire",
    {
        "current": (
            amount("current", say="{}"),
            amount(
                "current",
                after=r"(?:(?:on|at) (?:high|full(?: speed| beam)?|max)|max(?:imum)?|at (?:the )?most|peak|flat out)",
                say="{}",
                cue=(" high", " full", " max", " most", " peak", " flat"),
            ),
            amount("power", say="{}"),
        ),
        "length": (
            amount("length", say="{} one way"),
            amount("length", after="(?:each|one) way|long|away|run|of (?:wire|cable|run)", say="{} one way"),
        ),
        "voltage": (
            amount("voltage", say="{}", least=LEAST_VOLTS),
            amount("voltage", after="systems?", say="{}", least=LEAST_VOLTS),
        ),
        "drop": DROPPED,
        "insulation": (
            amount("temperature", after="(?:insulation|insulated|wire|cable)", say="{} insulation"),
            Shaped(r"(?P<n>gxl|sxl|txl|gpt|twp|hdt)(?: (?:wire|cable))?", lambda m: m["n"].upper()),
            # as the tables call it; cross-linked thin wall, which stands more, goes by its letters
            Shaped(
                r"thin[- ]?wall(?:ed)?(?: pvc)?(?: (?:wire|cable))?(?! (?:txl|xlpe|cross))",
                always("TWP"),
                "thin-wall PVC (TWP)",
            ),
        ),
        "air": (
            Shaped(
                (r"(?:by|near|beside|next to) (?:the )?engine|(?:in the )?engine bay|under the (?:hood" r"|bonnet)"),
                always("by the engine"),
            ),
            Shaped(r"(?:where )?(?:it ?is |it'?s |its )?hot", always("by the engine"), doubt=1),
            Shaped(
                r"(?:in(?:side)?|through) (?:the |a )?(?:cabin|car|cockpit)|cabin|(?:under"
                r"|behind) (?:the )?dash(?:board)?",
                always("in the cabin"),
            ),
            amount("temperature", say="air {}", doubt=1),
            amount("temperature", before="(?:in|at)", say="air {}"),
        ),
        "bundle": (
            Shaped(
                r"(?:in )?(?:an? )?(?:bundle|loom|harness) of (?P<n>[0-9]+)(?: wires?)?",
                lambda m: m["n"],
                "{} wires together",
            ),
            Shaped(
                (r"(?:1 |one |a )?(?:single )?wire (?:alone|by itself|on its own)|alone|single wire|by" r" itself"),
                always("1"),
                "one wire alone",
            ),
        ),
        "back": (
            Shaped(
                r"(?:twin|two|2)[- ]core(?: (?:cable|wire|flex))?",
                always("wire"),
                "return by wire",
                cue=("core",),
            ),
            Shaped(
                r"(?:ground(?:s|ed)?|earth(?:s|ed)?|negative) (?:(?:back|is|goes|side|lead) )*(?:(?:to|on|onto|at"
                r"|is) )?"
                r"(?:the )?(?:body|chassis|frame|shell)(?: (?:right )?(?:there|nearby|beside it|next to it))?",
                always("body"),
                "return by the body",
                cue=("ground", "earth", "negative"),
            ),
            Shaped(
                r"(?:ground(?:s|ed)?|earth(?:s|ed)?) (?:right |just )?(?:beside(?: it)?|next to it|there|locally|nearby"
                r"|at the (?:lamp|fan|pump|motor|unit|light|winch|load))",
                always("body"),
                "return by the body",
                cue=("ground", "earth"),
            ),
            Shaped(
                r"(?:separate |second )?(?:return(?:ed)?|ground(?:ed)?|earth(?:ed)?)(?: by| through| to)?"
                r"(?: an?| the)?(?: own| second| separate)? (?:wire|cable)|(?:wire|cable) (?:return|ground|earth)"
                r"|(?:its )?own (?:ground|earth|return)",
                always("wire"),
                "return by wire",
            ),
            Shaped(  # of two ways it is the other one
                r"not (?:(?:to|through|by|via|on|using|earthed|grounded|returned) )*(?:the )?"
                r"(?:chassis|body|frame|shell)(?: (?:earth|ground|return)(?:ed|s)?)?",
                always("wire"),
                "return by wire",
            ),
            Shaped(
                (
                    r"(?:(?:ground |earth )?return(?:s|ed|ing)?|ground(?:s|ed)?|earth(?:s|ed)?|comes back|back)"
                    r"(?: by| through| to| via)?(?: an?| the)? (?:body|chassis|frame|shell)"
                ),
                always("body"),
                "return by the body",
            ),
            Shaped(
                r"(?:(?:the |with )?(?:body |chassis |frame |shell )?(?:return|ground|earth)(?: (?:side|path|lead|wire"
                r"|is|was))*"
                r" (?:not (?:counted|included|counting)|left out|ignored|excluded)"
                r"|(?:not counting|ignoring|leaving out|without counting|excluding)(?: the)?(?: body| chassis| frame"
                r"| shell)?"
                r" (?:return|ground|earth)(?: side| path| lead)?)",
                always("body"),
                "the feed alone",
                cue=("earth", "ground", "return"),
            ),
            Shaped(
                r"(?:the )?(?:body|chassis|frame|shell)(?: (?:is|for|as)(?: the)?)? (?:return|ground|earth)(?:ed)?",
                always("body"),
                "return by the body",
            ),
        ),
        "fuse": (
            amount("current", after="fuse", say="{} fuse"),
            amount("current", before="fuse(?: of| is)?", say="{} fuse"),
        ),
        "kind": (
            Shaped(
                r"(?:(?:engine )?(?:earth|ground)(?:ing)? (?:strap|cable|lead)(?: size)?(?: for)?(?: the)? )?"
                r"(?:starter|cranking|starting)(?: motor)?(?: (?:cable|lead|wire)(?: size)?)?",
                always("starter cable"),
                "starter cable",
                cue=("start", "crank"),
            ),
        ),
        "choice": (Shaped(OF_SIZES, sizes, "one of {}", cue=(" or ",)),),
        "connector": (amount("current", after="connector", say="{} connector"),),
        "relay": RELAY,
        "wire": WIRE,
    },
    (
        r"(?:high|low|main|dipped|full) beams?|sizes?"
        r"|(?:for|to save) (?:the )?weight(?: distribution)?|according to the box|(?:the )?box says|how big an?"
        r"|(?:what |which |how many )?(?:mm2|sq ?mm)|(?:wiper|window|seat|aerial)s?(?: (?:motors?"
        r"|heaters?))?|heated seats?|pulls?|keeps?|lives?|(?:how )?(?:big|heavy|thick)|(?:(?:one"
        r"|1|each) )?way|(?:how (?:many|much) )?(?:volts?|voltage)"
        r"|drop(?:s|ped)?|los(?:e|es|ing|s)"
        r"|copper|through|down|across|(?:what |which )?(?:size|gauge|gage)?(?: of)? ?(?:wires?|wiring|cables?)(?:"
        r" size| gauge)?|(?:what|which)"
        r" (?:size|gauge|gage|ga)"
        r"|(?:in )?total|altogether|all together|together|awg|ga|circuits?|over|(?:cooling |electric |radiator |heater"
        r" )*(?:fans?|blowers?)|(?:fuel |water |vacuum"
        r" |washer"
        r" |electric"
        r" |lift )*pumps?|(?:head ?|fog ?|work ?|tail ?|brake |driving |light)?(?:lights?(?: bars?)?|lamps?"
        r"|halogens?)|voltage"
        r" drop|amps?|carry"
        r"|(?:trunk|boot|rear|front)[- ]?mount(?:ed)?|(?:to|in|into) (?:the )?(?:boot|trunk)|battery|from the"
        r" battery|relays?|alternators?|generators?|winch(?:es)?|compressors?|stereo|amplifier|charger"
        r"|charg(?:e|ing)|horns?|heaters?|ignition|coils?|loads?|draws?|motor|lost|los(?:e|ing|s)|copper|plate"
        r"|(?:what )?fuses?(?: size)?|breakers?|fuse ?box(?:es)?|cross[- ]?sections?|bulbs?|solenoids?|inverters?"
        r"|(?:trailer|electric) (?:plugs?|sockets?|brakes?)|trailers?|(?:gets?|get) power"
    ),
    needs=("current", "length"),
    settle=_settle,
    table="circuits",
    columns={"voltage": _voltages},
    asks_for=r"wir(?:es?|ing)|cables?|gauge|gage|awg|ga|leads?|drop|starter",
    asks_back=r"(?:size|gauge|how (?:big|thick|heavy)).*\b(?:cables?|wires?|wiring)"
    r"|(?:cables?|wires?|wiring)\b.*(?:size|gauge|how (?:big|thick|heavy)|for (?:an? )?[0-9.]+ (?:amps?|a|w|watts?)$)",
    unmoved="quality",
)


LOADS = "loads"  # of which there are several, on one fuse


def _fuse() -> Callable[..., Sheet]:
    from gaugeblock.wiring.fitted import of_fitted
    from gaugeblock.wiring.fusing import fuse

    return of_fitted(fuse)


def _settle_fuse(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The length changes the wire alone; a fuse that is there is no load, where load or wire was said."""
    by_area(values)  # a wire of so many millimetres is no run of that length
    left_out = ("length",) if "wire" in values else ("length", "fitted")
    found = {k: v for k, v in values.items() if k not in left_out}
    if LOADS in values:
        count = values[LOADS].split()[0]
        if "current" in values:
            why = (
                f"there are {count} of them: one fuse for all must bear what they draw together, a fuse of each its own"
            )
            raise Ambiguous(values["current"], "fuse", why, (), "say what all that is on the one fuse draws together")
        found.pop(LOADS)
    length = values.get("length", "")
    if length.endswith("mm") and not {"current", "wire", "fitted"} & values.keys():
        why = "a wire goes by the area of its copper, and this is a width or a length"
        raise Ambiguous(length, "fuse", why, (), f"say {length}2 if that is its area, as it is sold")
    return (
        found
        if {"current", "wire"} & found.keys() or "fitted" not in values
        else {"current": values["fitted"], **found}
    )


FUSE = Topic(
    _fuse,
    "fuse",
    {
        "current": (SHARED, *CIRCUIT.slots["current"]),
        **{key: CIRCUIT.slots[key] for key in ("voltage", "wire", "insulation", "air", "bundle", "length")},
        "fitted": (amount("current", after="(?:fuses?|(?:circuit[- ])?breakers?)", say="{} fuse"),),
        LOADS: (
            Shaped(
                r"(?P<n>[2-9]|both|two|pair of|twin) (?P<what>(?:spot ?|driving |fog |head ?|work |round )*"
                r"(?:lights|lamps|spots|spotlights|horns|fans|pumps))",
                lambda m: f"{'2' if not m['n'].isdigit() else m['n']} {m['what']}",
                "{}",
                cue=("lights", "lamps", "spots", "horns", "fans", "pumps"),
            ),
        ),
        "lasts": (
            Shaped(
                r"(?:(?:a |an |is |it's )?(?:steady|continuous|constant)(?: (?:load|draw|duty))?"
                r"|(?:(?:which |that )?(?:is |it's |runs? |stays )+)(?:on )?(?:continuously|constantly|all (?:the"
                r" time|day|night)))",
                always("yes"),
                "the load lasts",
            ),
            Shaped(
                r"(?:for )?(?:moments|a moment|momentary|momentarily|seconds|a few seconds)|short (?:bursts?|duty)",
                always("no"),
                "on for moments",
            ),
        ),
        "fact": CARRIED,
    },
    CIRCUIT.signals + r"|(?:all |both )?(?:on|off|from) (?:the )?(?:one|1|same|a single|single) fuse|spot ?(?:lights?"
    r"|lamps?)|spots|fit|both|fed|driving|current|ampacity|handle|how many amps|safely|protects?|largest|biggest"
    r"|maximum"
    r"|max|safe|put|blow",
    asks_for="fuses?|breakers?|fused|carry|ampacity|handle|current"
    r"|(?:how many|what|max(?:imum)?|safe) amps|amps? rating|amperage"
    r"|(?:rated|good) for(?: in)? (?:what |how many )?amps?",
    is_named=True,
    settle=_settle_fuse,
    unmoved="quality",
)


def _drop() -> Callable[..., Sheet]:
    from gaugeblock.wiring.lost import drop

    return drop


DROP = Topic(
    _drop,
    "voltage drop",
    {
        **{key: CIRCUIT.slots[key] for key in ("wire", "current", "length", "voltage", "kind")},
        "back": (
            *CIRCUIT.slots["back"],
            Shaped(r"(?:there and back|both ways|(?:and|plus) back)", always("wire"), "return by wire"),
        ),
    },
    CIRCUIT.signals
    + r"|cranking|starting|less|more|least|over|in that|that|this|get|end|at the end|los(?:e|es|ing|t)|starter"
    r"|battery|boot|trunk|pulls?"
    r"|moved",
    needs=("wire", "current", "length"),
    asks_for=r"drops?|dropped|dropping|los(?:e|es|ing|s|t)|how many volts|what voltage",
    is_named=True,
    settle=lambda values, data: of_a_power(values, data) | {k: v for k, v in values.items() if k == "voltage"},
    unmoved="standard service quality",
)


def _wire_size() -> Callable[..., Sheet]:
    from gaugeblock.wiring.size import wire_size

    return wire_size


SIZE = Topic(
    _wire_size,
    "wire size",
    {
        "wire": (
            *CIRCUIT.slots["wire"],
            Shaped(r"awg ?(?P<n>[0-9]+(?:/0)?)", _gauge, "{} wire"),
        ),
    },
    r"(?:in|to|as)?(?: what)? ?(?:awg|mm2|mm\^2|sq ?mm|square"
    r" (?:mm|millimet(?:re|er)s?)|metric|gauges?)|equals?|equivalent"
    r"|wires?|cables?|copper|how (?:thick|big)|area|cross[- ]?section|convert(?:ed)?",
    needs=("wire",),
    asks_for=r"mm2|mm\^2|sq ?mm|square|metric|awg|copper|area|equivalent|equals?|convert\w*|cross\S*",
    is_named=True,
)


def _reach() -> Callable[..., Sheet]:
    from gaugeblock.wiring.reach import reach

    return reach


def _open_drop(values: dict[str, str], _data: Refdata) -> Open | None:
    """3 and 10 per cent of the system, and half a volt, where nobody said what may be lost."""
    if "drop" in values:
        return None
    share = 2 if values.get("voltage", "").startswith("24") else 1
    return ("drop",), [{"drop": f"{volts * share:g} V"} for volts in (0.36, 0.5, 1.2)]


REACH = Topic(
    _reach,
    "reach of a wire",
    {
        **{key: DROP.slots[key] for key in ("wire", "current", "back", "kind")},
        "drop": (
            Shaped(
                r"(?:an? )?half (?:an? )?volt",
                always("0.5 V"),
                "to lose {}",
            ),
            amount(
                "voltage", before=r"(?:los(?:e|es|ing)|drop(?:s|ping)?|to|under|below|of)(?: to)?", say="to lose {}"
            ),
            amount("voltage", say="to lose {}"),
        ),
        "voltage": (amount("voltage", after="(?:systems?|supply|battery|batteries|electrics)", say="{}"),),
    },
    CIRCUIT.signals
    + r"|run|before|i|can i|how far|long|longest|furthest|reach(?:es)?|away|lose|losing|drop|keep|only|most|max"
    r"|cable|wire|it|at|draw(?:s|ing)?",
    needs=("wire", "current"),
    opens=_open_drop,
    asks_for=r"how far|longest|furthest|reach\w*|how long (?:can|could|may|a run|a wire|a cable)|(?:gauge|awg"
    r"|mm2)\b.* how long|how long .*(?:gauge|awg|mm2)|max(?:imum)? (?:run"
    r"|length)",
    is_named=True,
    unmoved="standard service quality",
)
TOPICS = (DROP, CIRCUIT, FUSE, SIZE, PARKED, PARKED_BY_RESERVE, REACH, ALTERNATOR)
