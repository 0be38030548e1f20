"""What is asked about pump and fuel line, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.lines.fuel.injector.ask import INJECTOR, INJECTOR_SIZE
from gaugeblock.lines.told import Told

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

# The pumps that move no fuel.
_NO_FUEL = ("water", "coolant", "oil", "steering", "vacuum", "washer", "air", "brake")
_OTHERS = "".join(f"(?<!{what} )" for what in _NO_FUEL)
_FLOWS = {"gph": "gal/h", "gpm": "gal/min", "lph": "L/h"}


def _fuel() -> Callable[..., Sheet]:
    return supply


def supply(*, data: Refdata, **options: str) -> Sheet:
    """The supply; InputError for a pipe that was told by neither its bore nor its outside."""
    from gaugeblock.lines.fuel.supply import fuel

    options.pop("displacement", None)  # the power was said, and settles it
    outside = options.pop("outside", "")
    if outside and "bore" not in options:
        from gaugeblock.errors import InputError

        why = "a pipe is sold by its outside, and what flows hangs on its bore, which was not said"
        raise InputError(
            outside, "bore", why, (), "say the bore of each by itself: `6 mm bore`, the outside less two walls"
        )
    return fuel(data=data, **options)


def _line() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.line import fuel_line

    return fuel_line


def _habit() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.habits import fuel_habit

    return fuel_habit


def _open_habit(values: dict[str, str], _data: Refdata) -> Open | None:
    """Carburettor or injection, where it was not said."""
    from gaugeblock.lines.fuel.keys import SYSTEMS

    return None if "system" in values else (("system",), [{"system": s} for s in SYSTEMS])


def _test() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.leak import fuel_test

    return fuel_test


def _flow(match: re.Match[str]) -> str:
    said = match["u"].replace(" an ", " per ").replace(" a ", " per ").replace(" ", "")
    return f"{match['n']} {'L/h' if said[0] == 'l' else 'gal/h' if said.endswith('hour') else _FLOWS[said]}"


def _consumption(match: re.Match[str]) -> str:
    return f"{match['n']} lb/(hp*h)"


_SHARE_OVER = {"quarter": "25 %", "1/4": "25 %", "third": "33 %", "1/3": "33 %", "half": "50 %", "1/2": "50 %"}
FUEL = Topic(
    _fuel,
    "fuel supply",
    {
        "power": (
            amount("power", say="{}"),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:horses?|ponies)", lambda m: f"{m['n']} hp"),
        ),
        "fuel": (
            Shaped(r"gasoline|petrol|pump gas|gas", always("gasoline")),
            Shaped(r"diesel", always("diesel")),
            Shaped(r"e ?85|flex ?fuel", always("E85")),
            Shaped(r"methanol|alcohol|meth", always("methanol")),
        ),
        "boost": (
            Shaped(r"(?:boost(?:ed)?|turbo(?:charged|ed)?|supercharged|blown)(?: engine)?", always("boost"), "boosted"),
            Shaped(
                r"(?:naturally aspirated|n/?a|no boost|not boosted|unboosted|unblown|non[- ]turbo"
                r"|(?:it is |it's |its )?(?:not?|without(?: an?)?) (?:turbo(?:charged|ed|charger)?|blower"
                r"|supercharge(?:d|r)|blown))",
                always("no boost"),
            ),
        ),
        "system": (
            Shaped(r"(?:efi|fuel injection|injection|injected)", always("injection")),
            Shaped(
                r"(?:(?:twin|dual|triple|two|2|single|side ?drau?[gf]h?t|down ?drau?[gf]h?t) )*"
                r"(?:carbs?|carburet+[eo]rs?|carburet+ed)",
                always("carburettor"),
            ),
            Shaped(
                r"(?:an? |the )?(?:[124]|two|four)[ -]?(?:barrel|bbl)(?:[ -](?:carbs?|carburet+[eo]rs?))?",
                always("carburettor"),
                cue=("barrel", "bbl"),
            ),
        ),
        "consumption": (
            Shaped(rf"(?:bsfc(?: of| is)? )?(?P<n>{NUMBER}) (?:bsfc|lbs?/hp)", _consumption, "burns {}"),
            Shaped(rf"bsfc(?: of| is| at| about)* (?P<n>{NUMBER})", _consumption, "burns {}"),
            Shaped(  # in pounds for each horsepower in an hour, as it is said without a unit
                r"(?:brake specific|specific (?:fuel )?consumption)(?: (?:fuel|consumption|of|is|at|about"
                r"|fuel consumption))*"
                r" (?P<n>0?\.[2-9][0-9]?)(?! ?(?:kg|g|l))",
                _consumption,
                "burns {}",
                cue=("specific",),
            ),
            Shaped(
                r"(?:at |of |about )*(?P<n>0?\.[2-9][0-9]?) (?:brake specific|specific)(?: (?:fuel )?consumption)?",
                _consumption,
                "burns {}",
                cue=("specific",),
            ),
            Shaped(
                rf"(?:that )?(?:(?:burns?|uses?|drinks?) )?(?P<n>{NUMBER}) ?(?:lbs?|pounds?) (?:(?:of )?(?:fuel"
                rf"|petrol) )?"
                r"(?:per|an?|each|for each) (?:hp|horsepower|horse)[ -]?(?:(?:an?|per) )?(?:h|hr|hour)",
                _consumption,
                "burns {}",
                cue=("horse", "hp"),
            ),
        ),
        "pump": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:us )?(?P<u>gph|gpm|lph|l/h|lit(?:re|er)s? (?:per|an?) hour|gal(?:lon)?s? (?:per"
                rf"|an?) hour)"
                r"(?: pump)?",
                _flow,
                "pump {}",
            ),
        ),
        "pressure": (
            Shaped(
                rf"(?:(?:at|with|and|rail|running) )*(?P<n>{NUMBER}) ?(?P<u>psi|bar|kpa)"
                r"(?: (?:rail|fuel|line) pressure)?",
                lambda m: f"{m['n']} {'kPa' if m['u'] == 'kpa' else m['u']}",
                "{} at the engine",
                cue=("psi", "bar", "kpa"),
            ),
        ),
        "length": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?P<u>ft|feet|foot|m|metres?|meters?)(?: (?:of )?(?:fuel"
                r" )?(?:line|run|feed|long))?",
                lambda m: f"{m['n']} {'ft' if m['u'][0] == 'f' else 'm'}",
                "{} of line",
            ),
            Shaped(
                r"(?P<n>[2-9][0-9]|[1-4][0-9]{2}) ?(?:in|inch(?:es)?)(?= (?:of|long|run|feed|line))",
                lambda m: f"{m['n']} in",
                "{} of line",
                cue=("in",),
            ),
        ),
        "bore": (
            amount("length", after="(?:bore|id|inside)(?: (?:fuel )?line)?", say="bore {}"),
            amount("length", after="(?:fuel )?(?:line|hose|tube|feed)", say="bore {}", doubt=1),
            amount("length", followed="rubber(?: |$)", say="bore {}", doubt=1),
        ),
        "line": (
            Shaped(
                r"(?:in |of )?rubber(?: fuel)?(?: (?:lines?|hoses?|pipes?))?",
                always("rubber hose"),
                "rubber hose",
                cue=("rubber",),
            ),
        ),
        "outside": (
            Shaped(
                rf"(?:or )?(?P<n>{NUMBER}) ?(?P<u>mm|in|inch|\")?(?: (?:od|outside|o\.d\.))?(?: (?:steel|copper"
                rf"|alloy|hard|nylon"
                r"|kunifer))*(?: (?:fuel|petrol))? (?:pipe|pipes|tubing|od)",
                lambda m: f"{m['n']} {'mm' if m['u'] == 'mm' else 'in'}" if m["u"] or "/" in m["n"] else None,
                "a pipe of {}",
                doubt=1,
                cue=("pipe", "tubing", " od"),
            ),
        ),
        "displacement": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?P<u>l|lit(?:re|er)s?|cc|ci|cid|cu in|cubic inch(?:es)?)(?! (?:per|an?)\b)"
                r"(?: (?:engine|motor|v6|v8))?",
                lambda m: f"{m['n']} {m['u']}",
                "an engine of {}",
                doubt=1,
                cue=("l", "c"),
            ),
        ),
        "reserve": (
            amount(
                "ratio",
                after=r"(?:(?:in|of|as)(?: an?| the)? )?(?:safety )?(?:reserve|margin|headroom|over|spare|in hand"
                r"|hand|extra"
                r"|on top|more(?: than (?:it|the engine|she) (?:needs|burns|uses))?)",
                say="{} over",
            ),
            amount("ratio", before="(?:plus|reserve|margin|headroom)(?: of| is| another)*", say="{} over"),
            Told(
                r"(?:an? |1 )?(?P<n>quarter|1/4|third|1/3|half|1/2)(?: (?:as much|again|more|extra))+"
                r"(?: (?:than|as)(?: (?:it|the engine|she) (?:needs|burns|uses))?)?",
                lambda m: _SHARE_OVER[m["n"]],
                "{} over",
                cue=("more", "again", "extra"),
            ),
        ),
        "filter": (Shaped(rf"(?P<n>{NUMBER}) ?(?:microns?|um)(?: filter)?", lambda m: f"{m['n']} um", "filter {}"),),
        "injectors": (
            Shaped(r"(?P<n>[1-9][0-9]?)(?= (?:[0-9.]+ ?(?:lb|cc)\S* )?injectors?)", lambda m: m["n"], "{} injectors"),
            Shaped(
                r"(?P<n>[1-9][0-9]?) (?:x|off|of)(?= [0-9.]+ ?(?:lbs?|pounds?|cc)(?:/hr?|/min)? injectors?)",
                lambda m: m["n"],
                "{} injectors",
                cue=("injector",),
            ),
        ),
        "injector": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:lbs?|pounds?)(?:/hr?| an hour)?(?= injectors?)",
                lambda m: f"{m['n']} lb/h",
                "{} each",
            ),
            Shaped(rf"(?P<n>{NUMBER}) ?cc(?:/min)?(?= injectors?)", lambda m: f"{m['n']} cm**3/min", "{} each"),
        ),
        "duty": (amount("ratio", after="duty(?: cycle)?", say="{} duty"),),
    },
    r"lines?|pipes?|injectors?|(?:what |which |how (?:big|much) )?(?:size )?(?:fuel )?pumps?(?: size)?|fuel(?:"
    r" system| supply| flow)?"
    r"|engine|motor|makes|(?:what )?size(?: of)?|litres|hour"
    r"|making|deliver(?:y|s|ing)?|give|do i need|need|for|enough|burns?|uses?|can i|does|feed|supply|how big|how"
    r" much|flow|gallons|run(?:ning)?|on|(?:at )?(?:full|wide open|open|flat) (?:throttle|chat|out|load|power"
    r"|noise|bore)|wot"
    r"|flat out|rated(?: for)?|per hour|an hour|it (?:needs|burns)|than it needs|race (?:engine|car|motor)"
    r"|(?:goes|runs|going|running) lean|dyno|on the dyno|drink"
    r"|(?:how much )?(?:pressure )?(?:(?:do|does|will|would) (?:it|i|we|that) )?(?:lose|loses|drop|drops)(?: in it)?"
    r"|pressure(?= (?:drop|loss|does it lose|do i lose|will it lose))|(?:pressure )?(?:drop|loss)",
    needs=("power",),
    joined=("outside",),
    table="fuel",
    asks_for=rf"fuel|{_OTHERS}pumps?|bsfc|gph|lph|gpm|feed",
    unmoved="metal finish form standard quality",
)
_LITRES = {"L/h": 1.0, "gal/h": 3.785, "gal/min": 227.1}
_SHARES = (1.2, 1.5, 1.8, 2.1, 2.4, 2.7, 3.0)  # horsepower to each litre an hour of gasoline and alcohol


def _open_power(values: dict[str, str], _data: Refdata) -> Open | None:
    """Powers that a pump may feed, where none was said: each with what it needs."""
    if "power" in values:
        return None
    number, _, unit = values["pump"].partition(" ")
    litres = float(number) * _LITRES[unit]
    powers = dict.fromkeys(round(share * litres / 25) * 25 for share in _SHARES)
    return ("power",), [{"power": f"{hp} hp"} for hp in powers if hp]


PUMP = Topic(
    _fuel,
    "fuel pump",
    {k: r for k, r in FUEL.slots.items() if k not in ("power", "injectors", "injector", "outside")},
    FUEL.signals + r"|how many|horses?|ponies|power|horsepower|hp|good for|supports?|says|big enough|enough|it does",
    needs=("pump",),
    opens=_open_power,
    table="fuel",
    asks_for=FUEL.asks_for,
    unmoved="metal finish form standard quality",
)
INJECTORS = Topic(
    _fuel,
    "fuel supply",
    {k: r for k, r in FUEL.slots.items() if k != "power"},
    FUEL.signals,
    needs=("injectors", "injector"),
    table="fuel",
    asks_for="injectors?",
    unmoved="metal finish form standard quality",
)


def _settle_line(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """A bore hangs on the flow, and no pressure changes it. UnitError for one that is none."""
    if "pressure" in values:
        from gaugeblock import units

        units.parse_measure(values["pressure"], "stress", "pressure")
    return {key: value for key, value in values.items() if key != "pressure"}


_LINE_SLOTS = ("power", "fuel", "boost", "system", "consumption", "pump", "length", "pressure")
LINE = Topic(
    _line,
    "fuel line",
    {k: FUEL.slots[k] for k in _LINE_SLOTS},
    r"(?:what |which |how (?:big|large) (?:of )?(?:an? )?)?(?:size )?(?:of )?(?:fuel |feed"
    r" )?(?:lines?|hoses?|tubes?|pipes?)(?: size)?"
    r"|(?:what |which )?size|fuel|feed|bore|diameter|inside|dash|engine|motor|makes|making"
    r"|(?:(?:in|from) the )?(?:boot|trunk)|(?:fuel )?tank|do i"
    r" need|need|for|run(?:ning)?|how big|on",
    needs=("power",),
    settle=_settle_line,
    table="fuel",
    asks_for=r"(?:fuel |feed )(?:lines?|hoses?|tubes?|pipes?)",
    unmoved="metal finish form standard quality",
)
TEST = Topic(
    _test,
    "fuel leak test",
    {
        "test": (
            Shaped(
                r"fuel(?: system| line| tank)?(?: leak(?: down)?| pressure| hold)+ (?:test|check)(?: pressure| how"
                r" long)?"
                r"|(?:leak[- ]?|pressure[- ]?)?(?:test|check)(?:ing)? (?:the |a "
                r"|my )?(?:new )?fuel (?:system|lines?|rail|tank)"
                r"(?: for leaks)?",
                always("leaks"),
                "leaks",
            ),
        ),
    },
    r"how|do i|for|the|a",
    needs=("test",),
    settle=lambda _values, _data: {},
    table="fuel",
    asks_for="fuel",
)
HABIT = Topic(
    _habit,
    "fuel",
    {
        "subject": (
            Shaped(
                r"(?:(?:what |which )?(?:micron|size) )?(?:fuel )?filters?(?: (?:micron|size|rating)s?)?",
                always("filter"),
            ),
            Shaped(
                r"(?:before|after|ahead of|behind|either side of) (?:the |my )?(?:fuel |electric )?pump",
                always("filter"),
                doubt=1,
                cue=("pump",),
            ),
            Shaped(r"(?:what )?(?:fuel |pump )?(?:pressure|psi)", always("pressure"), "pressure"),
        ),
        "size": (
            Shaped(rf"(?P<n>{NUMBER}) ?(?:microns?|um)", lambda m: f"{m['n']} um", "one of {}", cue=("mic", "um")),
        ),
        "system": FUEL.slots["system"],
    },
    r"what|which|how (?:much|fine)|do i need|need|for|should|run|fuel|microns?|does|want|an|a|the|before|after|pump",
    needs=("subject",),
    settle=lambda values, _data: {key: value for key, value in values.items() if key != "size"},
    opens=_open_habit,
    table="fuel",
    asks_for=r"fuel|carb\w*|efi|inject\w*|micron\w*",
)
TOPICS = (INJECTOR, INJECTOR_SIZE, FUEL, PUMP, INJECTORS, LINE, TEST, HABIT)
