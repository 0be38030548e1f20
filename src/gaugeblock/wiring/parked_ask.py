"""What is asked about the draw of a parked car, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _parked() -> Callable[..., Sheet]:
    from gaugeblock.wiring.parked import parked

    return parked


# To what a battery goes down: one that is at half is another matter.
_IT = r"(?:(?:it|its|it's|it is|that|the battery|battery) )?"
_UNTIL = (
    rf"(?:(?:till|until|before|when) {_IT}(?:is |gets |got |goes )?(?:drops? |falls? |down |runs? |discharges? )*"
    rf"(?:to |at |about )*|{_IT}(?:drops? |falls? |down |runs? |discharges? )+to (?:about )?"
    rf"|to (?:go|get|be|reach) |to (?:about )?)"
)
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
                rf"(?:(?:rc|reserve(?: capacity)?)(?: (?:of|is))? )?(?P<n>{NUMBER}) ?(?:min|minutes?)(?: (?:rc"
                rf"|reserve(?: capacity)?))?(?: battery)?",
                lambda m: f"{m['n']} min",
                "reserve {}",
            ),
        ),
        "days": (
            Shaped(
                r"(?:an?|one) (?P<u>week|f[o]rtnight|month)",
                lambda m: {"week": "7 days", "fortnight": "14 days", "month": "30 days"}[m["u"]],
                "{}",
                cue=("week", "fortnight", "month"),
            ),
            Shaped(rf"(?P<n>{NUMBER}) days?", lambda m: f"{m['n']} days", "{}"),
            Shaped(rf"(?P<n>{NUMBER}) weeks?", lambda m: f"{int(m['n']) * 7} days" if m["n"].isdigit() else None, "{}"),
            Shaped(
                rf"(?P<n>{NUMBER}) months?", lambda m: f"{int(m['n']) * 30} days" if m["n"].isdigit() else None, "{}"
            ),
        ),
        "used": (
            Shaped(
                rf"{_UNTIL}half(?:[- ]?(?:flat|empty|full|charged?|dead|discharged|go(?:ne)|way))?",
                always("50 %"),
                "to half of its charge",
                cue=("half",),
            ),
            Shaped(
                rf"{_UNTIL}(?P<n>[1-9][0-9]) ?(?:%|percent|per ?cent)(?: (?:charged?|full|left|of (?:its )?charge"
                rf"|soc))?"
                r"(?! (?:go(?:ne)|used|flat|discharged|dod))",
                lambda m: f"{100 - int(m['n'])} %",
                "{} of its charge gone",
                cue=("%", "cent"),
            ),
            Shaped(
                rf"{_UNTIL}(?P<n>[1-9][0-9]) ?(?:%|percent|per ?cent)(?: is)? (?:go(?:ne)|used|flat|discharged"
                rf"|depth|dod)",
                lambda m: f"{m['n']} %",
                "{} of its charge gone",
                cue=("%", "cent"),
            ),
        ),
    },
    r"(?:the )?(?:most|max(?:imum)?|biggest|largest)(?: (?:parasitic|standing))?(?: (?:draw|drain))?"
    r"(?: (?:i|it|that) (?:can|may|could) (?:have|leave|live with|stand|take))?|(?:in )?storage|stored|laid up|standing"
    r"|flattens?|till|until|go(?:es)? flat|went flat|everything off|all off|drop(?:s|ping)?|days?|shows?"
    r"|how many (?:days|weeks|months)|(?:in )?(?:days|weeks|months)$"
    r"|after(?: only| just| about)*(?= (?:an?|[0-9]+) (?:days?|weeks?|months?))"
    r"|(?:is (?:that|it|this) )?(?:too much|normal|a lot|excessive)|measured|asleep|went to sleep|went"
    r"|sat|start|she'?ll be|radio|clock|alarm|fridge|meter|lights?|(?:parasitic |standing )?(?:draw|drain)"
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
# The same by the reserve capacity that a battery has printed on it.
PARKED_BY_RESERVE = Topic(
    _parked,
    PARKED.noun,
    PARKED.slots,
    PARKED.signals,
    needs=("reserve",),
    asks_for=PARKED.asks_for,
    is_named=True,
    unmoved=" ".join(sorted(PARKED.unmoved)),
)
