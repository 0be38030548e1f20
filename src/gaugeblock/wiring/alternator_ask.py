"""What is asked about the size of an alternator, as people say it: it is asked back what runs at once."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _circuit() -> Callable[..., Sheet]:
    from gaugeblock.wiring.circuit import circuit

    return circuit


def _no_loads(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous that asks for the loads, which an alternator is chosen by."""
    lacks = "" if "loads" in values else ", and what runs was not said"
    why = f"it must give what runs at once{lacks}; no answer here adds that up"
    do = (
        "list the amps of all that may run together (fans, pumps, lamps, heated screen, ignition), add them up, and"
        " choose one that gives more at idle too; ask for its charge wire when you have its amps"
    )
    raise Ambiguous("alternator size", "", why, (), do)


ALTERNATOR = Topic(
    _circuit,
    "alternator",
    {
        "alternator": (
            Shaped(r"(?:(?:big(?:ger)?|larger|high output|uprated) )?(?:alternator|dynamo)", always("alternator")),
        ),
        "loads": (
            amount("current", after="(?:each|apiece)", say="{} each"),
            amount("current"),
            amount("power"),
            Shaped(r"(?P<n>[1-9])(?= (?:[a-z]+ )?(?:fans?|pumps?|lamps?|lights?|blowers?|heaters?))", lambda m: m["n"]),
        ),
    },
    r"loads?|fans?|pumps?|winch(?:es)?|lamps?|lights?|screens?|heaters?|blowers?|stereo|ignition|compressor|battery"
    r"|total|draws?|(?:cooling|electric|fuel|heated|head|radiator)"
    r"|(?:what|which|how (?:big|many|much))(?: (?:an?|of an?))?|amps?|amperage|size|rating|output|need(?:s|ed)?"
    r"|big(?:ger)?"
    r"|enough|do i|for|conversion|swap|upgrade|large|larger|to run|run",
    needs=("alternator",),
    opens=_no_loads,
    joined=("loads",),
    asks_for=r"(?:what|which|how (?:big|many|much)|size|need).*(?:alternator|dynamo)"
    r"|(?:alternator|dynamo).*(?:amps?|amperage|size|big|rating|output|enough|load)",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
