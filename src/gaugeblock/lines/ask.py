"""What is asked about a line, a hose, a fluid or a fuel in the heat, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, amount, words_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_OLD = (
    r"(?:when |once |after )?(?:it's |its |it is )?(?:old|aged|used|wet|moist|years? old|in use|a year|two years|2"
    r" years)(?: in use| old)?"
)
_NEW = r"(?:brand )?(?:new|fresh|dry|unopened)(?: from the (?:can|bottle))?|out of the (?:can|bottle)"


def _dot(match: re.Match[str]) -> str:
    number = {"51": "5.1"}.get(match["n"], match["n"])
    return f"DOT {number}"


HEAT = Topic(
    lambda: _heat(),
    "heat",
    {
        "item": (
            Shaped(r"(?:brake fluid |fluid )?dot[- ]?(?P<n>3|4|5\.1|51|5)(?: (?:brake )?fluid)?", _dot),
            Shaped(r"brake fluid (?P<n>3|4|5\.1|5)", _dot),
            Named(
                words_of("lines", "item", "lines/fluids", "lines/fuels", "lines/materials", bare=False),
                tail=r"lines?|hoses?|tubes?|tubing|boots?|seals?|o-?rings?|grommets?|insulat(?:ion|ed)",
            ),
        ),
        "klass": (Named(words_of("lines", "class", "lines/materials", bare=False)),),
        "state": (
            Named(words_of("lines", "state", "lines/fluids", "lines/fuels", "lines/materials", bare=False)),
            Shaped(_OLD, lambda m: "wet", "old (wet)", doubt=1),
            Shaped(_NEW, lambda m: "dry", "new (dry)", doubt=1),
            Shaped(r"(?:all day|for long|all the time|steady|constant(?:ly)?)", lambda m: "continuous"),
            Shaped(
                r"(?:for )?(?:a )?(?:short (?:while|time)|moment|minute|few minutes|briefly|short)",
                lambda m: "intermittent",
            ),
        ),
        "at": (
            amount(
                "temperature",
                before=(
                    r"(?:at|to|of|in|hits?|sees?|reach(?:es)?|gets? to|gets? up to|up to|goes to|around|about|next"
                    r" to)(?: about| around)?"
                ),
                say="at {}",
            ),
            amount("temperature", say="at {}"),
        ),
    },
    r"(?:when does (?:it )?|does (?:it )?|will (?:it )?)?(?:boils?|boiling(?: points?)?|boil"
    r" over)|(?:max(?:imum)?|top|highest)|"
    r"temp(?:erature)?s?(?: limits?| ratings?| range)?|how hot|too hot|hot|heat(?: limit| rating|"
    r" resist\w*)?|stands?(?: up)?|limits?|survives?|melts?|rated|"
    r"ratings?|safe|okay|handle|live|good for|cope|degrees|burn|fluids?|hoses?|lines?|next"
    r" to|near|beside|header|exhaust|under the hood|engine bay",
    needs=("item",),
)


def _heat() -> Callable[..., Sheet]:
    from gaugeblock.lines.heat import heat

    return heat


TOPICS = (HEAT,)
