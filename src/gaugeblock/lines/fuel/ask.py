"""What is asked about pump and fuel line, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_FLOWS = {"gph": "gal/h", "gpm": "gal/min", "lph": "L/h"}


def _fuel() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.supply import fuel

    return fuel


def _flow(match: re.Match[str]) -> str:
    return f"{match['n']} {_FLOWS[match['u'].replace(' ', '')]}"


def _consumption(match: re.Match[str]) -> str:
    return f"{match['n']} lb/(hp*h)"


FUEL = Topic(
    _fuel,
    "fuel supply",
    {
        "power": (amount("power", say="{}"),),
        "fuel": (
            Shaped(r"gasoline|petrol|pump gas|gas", always("gasoline")),
            Shaped(r"diesel", always("diesel")),
            Shaped(r"e ?85|flex ?fuel", always("E85")),
            Shaped(r"methanol|alcohol|meth", always("methanol")),
        ),
        "boost": (
            Shaped(r"(?:boost(?:ed)?|turbo(?:charged|ed)?|supercharged|blown)(?: engine)?", always("boost"), "boosted"),
            Shaped(r"(?:naturally aspirated|n/?a|no boost|not boosted|non[- ]turbo)", always("no boost")),
        ),
        "system": (
            Shaped(r"(?:efi|fuel injection|injection|injected)", always("injection")),
            Shaped(r"(?:carbs?|carburet+[eo]rs?|carburet+ed)", always("carburettor")),
        ),
        "consumption": (
            Shaped(rf"(?:bsfc(?: of| is)? )?(?P<n>{NUMBER}) (?:bsfc|lbs?/hp)", _consumption, "burns {}"),
            Shaped(rf"bsfc(?: of| is)? (?P<n>{NUMBER})", _consumption, "burns {}"),
        ),
        "pump": (Shaped(rf"(?P<n>{NUMBER}) ?(?P<u>gph|gpm|lph)(?: pump)?", _flow, "pump {}"),),
        "length": (
            amount("length", after="(?:of )?(?:fuel )?(?:line|run|feed|long)", say="{} of line"),
            amount("length", say="{} of line", doubt=1),
        ),
        "bore": (
            amount("length", after="(?:bore|id|inside)(?: (?:fuel )?line)?", say="bore {}"),
            amount("length", after="(?:fuel )?(?:line|hose|tube|feed)", say="bore {}", doubt=1),
        ),
        "reserve": (amount("ratio", after="(?:reserve|margin|headroom|over|spare)", say="{} over"),),
        "filter": (Shaped(rf"(?P<n>{NUMBER}) ?(?:microns?|um)(?: filter)?", lambda m: f"{m['n']} um", "filter {}"),),
    },
    r"(?:what |which |how (?:big|much) )?(?:size )?(?:fuel )?pumps?|fuel(?: system| line| supply|"
    r" flow)?|line|engine|motor|makes"
    r"|making|do i need|need|for|enough|feed|supply|how big|how much|flow|gallons|run(?:ning)?|on",
    needs=("power",),
    table="fuel",
    asks_for=r"fuel|pumps?|bsfc|gph|lph|gpm|feed",
)
TOPICS = (FUEL,)
