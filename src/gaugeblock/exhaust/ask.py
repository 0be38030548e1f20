"""What is asked about an exhaust, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _pipe() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.pipe import exhaust_pipe

    return exhaust_pipe


_VOLUMES = {"l": "L", "c": "cm**3", "in": "in**3"}
_PIPES = r"(?:exhaust|tail|down) ?(?:pipes?|tubes?|system)?|pipes?|tubing"
PIPE = Topic(
    _pipe,
    "exhaust pipe",
    {
        "power": (amount("power", say="{}"),),
        "displacement": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:(?P<l>l|litres?|liters?)|(?P<c>cc|cm3)|(?P<in>ci|cid|cu in|cubic inch(?:es)?))"
                r"(?: (?:engine|six|four|eight|v6|v8))?",
                lambda m: f"{m['n']} {next(u for k, u in _VOLUMES.items() if m[k])}",
                "{}",
            ),
        ),
        "speed": (amount("rotational speed", say="{}"),),
        "pipes": (
            Shaped(r"(?:dual|twin|two|2) (?:exhausts?|pipes?|tail ?pipes?|system)|duals", always("2"), "two pipes"),
            Shaped(r"single (?:exhaust|pipe|system)", always("1"), "one pipe"),
        ),
        "od": (
            amount("length", after="(?:exhaust|pipe|tube|system)(?: pipe)?", say="{} pipe"),
            amount("length", before=r"(?:is|will|does|with)(?: an?)?", say="{} pipe"),
        ),
        "wall": (amount("length", after="wall", say="{} wall"),),
        "gas": (amount("temperature", say="gas {}"),),
        "back_pressure": (amount("stress", say="{} back pressure"),),
    },
    rf"(?:what |which )?(?:size|diameter|dia)?(?: of)? ?(?:{_PIPES})(?: size| diameter)?|back ?pressure|big enough|too"
    r" (?:small|big)|engine|for|mufflers?|exhausts?",
    needs=("power",),
    asks_for=r"exhausts?|tail ?pipes?|pipes?|duals|mufflers?",
)
TOPICS = (PIPE,)
