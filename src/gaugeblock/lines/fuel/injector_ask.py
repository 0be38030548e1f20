"""What is asked of an injector by itself, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _injector() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.injector import injector

    return injector


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
                rf"(?P<n>{NUMBER}) ?(?:{_CC})(?= (?:[a-z]+ )?(?:{_INJECTOR}))",
                lambda m: f"{m['n']} cm**3/min",
                cue=("cc", "ml"),
            ),
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:{_LB})(?= (?:[a-z]+ )?(?:{_INJECTOR}))", lambda m: f"{m['n']} lb/h", cue=("inj",)
            ),
            Shaped(
                rf"(?:{_INJECTOR})(?: (?:is|are|of|at|rated|flows?))* (?P<n>{NUMBER}) ?(?:{_CC})",
                lambda m: f"{m['n']} cm**3/min",
                cue=("cc", "ml"),
            ),
            Shaped(
                rf"(?:{_INJECTOR})(?: (?:is|are|of|at|rated|flows?))* (?P<n>{NUMBER}) ?(?:{_PER_HOUR})",
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
            amount("stress", before=r"(?:at|from|was|were)", say="rated at {}", doubt=1),
            amount("stress", say="rated at {}", doubt=3),
        ),
        "pressure": (
            amount(
                "stress",
                before=rf"(?:(?:but|and|the|rail|pressure|fuel|is|it|i|if|run|them|to|raise[sd]?|drop(?:s|ped)?|up) )*{_NOW}"
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
    rf"(?:fuel )?{_INJECTOR}|flows?|flow (?:now|rate|then)|now|pass(?:es)?|deliver(?:s|y)?|give|size[sd]?|(?:fuel )?rail"
    r"|(?:fuel )?pressure|(?:in|to|into|as) (?:lbs?|pounds?)(?: ?(?:/|per|an?|in)? ?h(?:ou)?r)?|(?:in|to|into|as) cc"
    r"(?: ?(?:/|per|a) ?min(?:ute)?)?|pph|lb/h(?:r)?|cc/min|hour|min(?:ute)?|per|how (?:much|many)|cc|lbs?|pounds?|what|will|they|do|does|is|each|one",
    needs=("flow",),
    asks_for=rf"(?:{_INJECTOR})\b(?!.*\b(?:pump|hp|horsepower|duty|line|feed)\b)",
    is_named=True,
    unmoved="metal finish form standard quality",
)
