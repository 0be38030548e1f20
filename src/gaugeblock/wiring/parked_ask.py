"""What is asked about the draw of a parked car, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _parked() -> Callable[..., Sheet]:
    from gaugeblock.wiring.parked import parked

    return parked


PARKED = Topic(
    _parked,
    "parked",
    {
        "draw": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?P<u>ma|milliamps?|milli amps?|a|amps?)(?: (?:draw|drain|standing|parasitic)(?:"
                r" draw| drain)?)?",
                lambda m: f"{m['n']} {'mA' if m['u'].startswith('m') else 'A'}",
                "draw {}",
            ),
        ),
        "battery": (
            Shaped(rf"(?P<n>{NUMBER}) ?(?:ah|amp[- ]?hours?)(?: battery)?", lambda m: f"{m['n']} Ah", "battery {}"),
        ),
        "reserve": (
            Shaped(
                rf"(?P<n>{NUMBER}) ?(?:min|minutes?)(?: reserve(?: capacity)?)?",
                lambda m: f"{m['n']} min",
                "reserve {}",
            ),
        ),
        "days": (
            Shaped(rf"(?P<n>{NUMBER}) days?", lambda m: f"{m['n']} days", "{}"),
            Shaped(rf"(?P<n>{NUMBER}) weeks?", lambda m: f"{int(m['n']) * 7} days" if m["n"].isdigit() else None, "{}"),
            Shaped(
                rf"(?P<n>{NUMBER}) months?", lambda m: f"{int(m['n']) * 30} days" if m["n"].isdigit() else None, "{}"
            ),
        ),
    },
    r"radio|clock|alarm|fridge|meter|lights?|(?:parasitic |standing )?(?:draw|drain)"
    r"|(?:what |how much )?(?:parasitic |standing )?(?:draw|drain) (?:can|may) i"
    r" (?:live with|have|leave)|car|sits?|live with|how much|battery|flat|dead|parked|(?:with )?(?:the )?key off"
    r"|(?:something"
    r" )?draws|stands?|how long|before|last",
    needs=("battery",),
    table="batteries",
    asks_for=r"draw|drain|parked|parasitic|flat|dead|days?|weeks?|ah|reserve"
    r"|how long.*\bbattery (?:last|hold)",
    unmoved="metal finish form standard service quality",
)
