"""What is asked of an injector by itself, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _injector() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.injector.flow import injector

    return injector


def _size() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.injector.size import injector_size

    return injector_size


_INJECTOR = r"inj(?:ectors?|s)?"
_CC = r"cc(?: ?(?:/|per|a) ?min(?:ute)?)?|ml(?: ?(?:/|per|a) ?min(?:ute)?)"
_LB = r"(?:lbs?|pounds?|#)(?: ?(?:/|per|an?) ?h(?:ou)?r?)?|pph"
_PER_HOUR = r"(?:lbs?|pounds?|#) ?(?:/|per|an?|in)? ?h(?:ou)?r|pph"
_RATED = r"(?:rated|flowed|tested|sized|marked|made|good|quoted|measured|specced)(?: (?:at|for|to|of|is|are))*"
_NOW = r"(?:now|only|actually|running|run|has|have|got|gets?|getting|with|sees?|on|at)"

INJECTOR = Topic(
    _injector,
    "injector",
    {
        "flow": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:{_CC})(?= (?:{_INJECTOR}))",
                lambda m: f"{m['n']} cm**3/min",
                cue=("cc", "ml"),
            ),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:{_LB})(?= (?:{_INJECTOR}))", lambda m: f"{m['n']} lb/h", cue=("inj",)),
            Shaped(
                rf"(?:{_INJECTOR})(?: (?:is|are|of|at|rated|flows?))* (?P<n>{NUMBER}) ?(?:{_CC})",
                lambda m: f"{m['n']} cm**3/min",
                cue=("cc", "ml"),
            ),
            Shaped(
                rf"(?:{_INJECTOR})(?: (?:is|are|of|at|rated|flows?))* (?P<n>{NUMBER}) ?(?:{_PER_HOUR}|{_LB})",
                lambda m: f"{m['n']} lb/h",
                cue=("inj",),
            ),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:{_CC})", lambda m: f"{m['n']} cm**3/min", doubt=1, cue=("cc", "ml")),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:{_PER_HOUR})", lambda m: f"{m['n']} lb/h", doubt=1, cue=("inj",)),
        ),
        "fuel": (
            Shaped(r"(?:on |of |with )?(?:petrol|gasoline|gas(?= (?:inj|$)))", always("gasoline"), "{}"),
            Shaped(r"(?:on |of |with )?(?P<n>diesel|ethanol|methanol)", lambda m: m["n"], "{}"),
            Shaped(r"(?:on |of |with )?e-?85", always("E85"), "{}"),
        ),
        "rated": (
            amount("stress", before=_RATED, say="rated at {}", cue=("rated", "flowed", "tested", "at", "for")),
            amount("stress", after=r"(?:rated|rating|injectors?)", say="rated at {}"),
            Shaped(  # a pressure of psi without its unit, where the other has it
                rf"{_RATED} (?P<n>[3-7][0-9](?:\.[0-9]+)?)(?! ?(?:psi|bar|kpa))(?=(?: [a-z]+){{1,7}} [0-9.]+ psi)",
                lambda m: f"{m['n']} psi",
                "rated at {}",
                doubt=1,
                cue=("psi",),
            ),
            amount("stress", before=r"(?:at|from|was|were)", say="rated at {}", doubt=1),
            amount("stress", say="rated at {}", doubt=3),
        ),
        "pressure": (
            amount(
                "stress",
                before=rf"(?:(?:but|and|the|rail|pressure|fuel|is|it|i|if|run|them|to|raise[sd]?|drop(?:s|ped)?"
                rf"|up) )*{_NOW}"
                rf"(?: (?:{_NOW}|about|to))*",
                say="now at {}",
            ),
            amount(
                "stress",
                after=r"(?:(?:on|in|at|of) (?:the )?(?:rail|fuel rail|fuel)|rail(?: pressure)?|fuel pressure|now)",
                say="now at {}",
            ),
            amount(
                "stress",
                before=r"(?:rail|fuel|rail pressure|pressure)(?: (?:is|of|at|to|reads|shows))*",
                say="now at {}",
            ),
            amount("stress", before=r"(?:to|for|instead of)", say="now at {}", doubt=1),
            amount("stress", say="now at {}", doubt=4),
        ),
    },
    rf"(?:fuel )?{_INJECTOR}|flows?|flow (?:now|rate|then)|now|pass(?:es)?|deliver(?:s|y)?|give|size[sd]?"
    rf"|(?:fuel )?rail"
    r"|(?:fuel )?pressure|(?:in|to|into|as) (?:lbs?|pounds?)(?: ?(?:/|per|an?|in)? ?h(?:ou)?r)?|(?:in|to|into|as) cc"
    r"(?: ?(?:/|per|a) ?min(?:ute)?)?|pph|lb/h(?:r)?|cc/min|hour|min(?:ute)?|per|how (?:much|many)|cc|lbs?|pounds?"
    r"|what|will|they|do|does|is|each|one",
    needs=("flow",),
    asks_for=rf"(?:{_INJECTOR})\b(?!.*\b(?:pump|hp|horsepower|duty|line|feed)\b)"
    rf"|[0-9]{{3,4}} ?cc(?: ?/ ?min)? (?:at |rated )?"
    r"[0-9.]+ ?(?:bar|psi)|(?:lbs?/hr?|lb/h|pph)\b.* [0-9]{3,4} ?cc",
    is_named=True,
    unmoved="metal finish form standard quality",
)


def _consumption(match: re.Match[str]) -> str:
    return f"{match['n']} lb/(hp*h)"


_NUMBERS = {"three": "3", "four": "4", "five": "5", "six": "6", "eight": "8", "ten": "10", "twelve": "12"}
INJECTOR_SIZE = Topic(
    _size,
    "size of injectors",
    {
        "power": (amount("power", say="{}"),),
        "injectors": (
            Shaped(
                rf"(?:on |for |in )?(?:an? )?(?P<n>[3-6]|8|10|12)[- ]?(?:pot|cyl(?:inders?)?|{_INJECTOR})(?: (?:engine"
                rf"|motor))?",
                lambda m: m["n"],
                "{} injectors",
            ),
            Shaped(
                rf"(?:on |for |in )?(?:an? )?(?P<n>{'|'.join(_NUMBERS)})[- ](?:pot|cyl(?:inders?)?"
                rf"|{_INJECTOR})(?: (?:engine|motor))?",
                lambda m: _NUMBERS[m["n"]],
                "{} injectors",
            ),
            Shaped(r"(?:on |for |in )?(?:an? )?v ?-?(?P<n>6|8|10|12)", lambda m: m["n"], "{} injectors", cue=("v",)),
            Shaped(r"(?:(?:inline|straight) )(?P<n>[3-6]|8)", lambda m: m["n"], "{} injectors"),
        ),
        "duty": (
            amount("ratio", after="duty(?: cycle)?", say="{} duty"),
            amount("ratio", before="duty(?: cycle)?(?: of| at)?", say="{} duty"),
        ),
        "boost": (
            Shaped(
                r"(?:no|without|not)[- ](?:boost(?:ed)?|turbo(?:charged)?|blower)|na|n/a|naturally aspirated|unboosted",
                always("no boost"),
                "no boost",
            ),
            Shaped(r"(?:with )?(?:boost(?:ed)?|turbo(?:charged)?|supercharged|blown)", always("boost"), "with boost"),
        ),
        "consumption": (
            Shaped(
                rf"(?:bsfc|brake specific)(?: (?:of|is|at|about))* (?P<n>{NUMBER})",
                _consumption,
                "burns {}",
                cue=("bsfc", "specific"),
            ),
            Shaped(
                rf"(?P<n>{NUMBER}) (?:bsfc|brake specific|lbs?/hp(?:/?h(?:r)?)?)",
                _consumption,
                "burns {}",
                cue=("bsfc", "specific", "lb"),
            ),
        ),
        "fuel": INJECTOR.slots["fuel"],
    },
    rf"(?:what |which )?(?:size )?(?:fuel )?{_INJECTOR}(?: (?:size|do i need|for))?|size|what|which|how big|big"
    rf"|do i (?:need|want)|need"
    r"|for|on|engine|motor|each|lb/hr?|cc|making|make|want|at",
    needs=("power", "injectors"),
    asks_for=rf"(?:{_INJECTOR})\b(?!.*\b(?:pump|line|feed)\b)",
    is_named=True,
    unmoved="metal finish form standard quality",
)
