"""A speed on the road whose unit nobody said, and what else is read alike of engine, tyre and clock."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open

EITHER = "mph or km/h"
# What makes a number another thing than a speed on the road.
_OTHER = (
    r"[a-z]*rpm|revs|mph|km|kph|kmh|kays|k\b"
    r"|inch|mm|cm|m\b|ft|feet|foot|tyres?|tires?|to 1|diffs?|axle|gears?"
    r"|ratio|teeth|tooth|hp|horse|lbs?|pounds?|n\b|nm|psi|percent|per ?cent|deg|seconds|miles|hours?|days?|years?"
    r"|[/x:.]|[0-9]"
)
_IN_A_GEAR = r"(?=$| in (?:top|direct|overdrive|fourth|fifth|sixth|4th|5th|6th|gear)\b| (?!in\b))"
_NUMBER = rf"(?P<n>[3-9][0-9]|1[0-9][0-9]){_IN_A_GEAR}(?! ?(?:{_OTHER}))"


def bare_speed(before: str, say: str) -> Shaped:
    """A number behind words of speed, without its unit: it stays open which of the two it is."""
    return Shaped(rf"(?:{before}) (?:about |around |roughly |say )*{_NUMBER}", lambda m: f"{m['n']} {EITHER}", say, 3)


def either_speed(values: dict[str, str], key: str) -> Open | None:
    """Both units of a speed that has none, which is then taken off the ``values``; None where its unit was said."""
    if not values.get(key, "").endswith(EITHER):
        return None
    number = values.pop(key).partition(" ")[0]
    return (key,), [{key: f"{number} {unit}"} for unit in ("mph", "km/h")]
