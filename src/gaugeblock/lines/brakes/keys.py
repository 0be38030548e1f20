"""What is asked of one brake circuit, read once."""

from __future__ import annotations

from gaugeblock.answer.making import stated
from gaugeblock.errors import InputError
from gaugeblock.lines.brakes.hose import MEASURES as HOSE
from gaugeblock.lines.given import Given, choice_of, count_of
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

DRUM, FLOATING, FIXED, SLAVE = "drum", "floating caliper", "fixed caliper", "slave cylinder"
KINDS = {
    DRUM: ("drums", "drum brake", "drum brakes", "wheel cylinder", "wheel cylinders"),
    FLOATING: ("floating", "sliding caliper", "floating calipers", "single piston caliper", "disc floating caliper"),
    FIXED: ("fixed", "fixed calipers", "opposed pistons", "opposed piston caliper", "disc fixed caliper"),
    SLAVE: ("slave", "clutch", "clutch slave", "clutch slave cylinder"),
}
MEASURES = {
    "force": ("force", "pedal_force"),
    "ratio": ("ratio", "pedal_ratio"),
    "assist": ("ratio", "assist_ratio"),
    "master": ("length", "master_bore"),
    "stroke": ("length", "master_stroke"),
    "bore": ("length", "piston_bore"),
    "travel": ("length", "piston_travel"),
    "play": ("length", "free_play"),
    "pedal": ("length", "pedal_travel_whole"),
    "was": ("length", "piston_bore"),
    "rated": ("stress", "working_pressure_maximum"),
    "tube": ("length", "line_bore"),
    "time": ("time", "brake_apply_time"),
    **HOSE,
}
ALL = ("kind", *MEASURES, "pistons", "wheels", "balance")
# Pistons of one wheel that are known from the kind: a wheel cylinder has one for each shoe.
_PISTONS = {DRUM: "2", SLAVE: "1"}


class Circuit(Value):
    """One brake circuit: what of it was typed; ``pistons`` of one wheel and the ``wheels`` that the circuit works."""

    __slots__ = ("balance", "given", "kind", "pistons", "wheels")

    given: Given
    kind: str | None
    pistons: Measure | None
    wheels: Measure | None
    balance: str | None

    def __init__(self, asked: Mapping[str, str | None]) -> None:
        """Raises InputError or UnitError for what cannot be read."""
        kind = choice_of(asked.get("kind"), "kind", KINDS)
        own = {"travel": ("length", "slave_travel")} if kind == SLAVE else {}  # a slave moves further than a pad
        put(self, "given", Given(asked, {**MEASURES, **own}, zero=("play",)))
        put(self, "kind", kind)
        pistons = count_of(asked.get("pistons"), "pistons")
        if kind == FIXED and pistons is not None and pistons.value % 2:
            why = "a fixed caliper has as many pistons on each side of the disc"
            raise InputError(pistons.number, "pistons", why, (), "count both sides: 2, 4 or 6")
        put(self, "pistons", pistons or count_of(_PISTONS.get(kind or ""), "pistons"))
        wheels = count_of(asked.get("wheels"), "wheels")
        put(self, "wheels", wheels or (count_of("1", "wheels") if kind == SLAVE else None))
        put(self, "balance", asked.get("balance") or None)

    @property
    def noun(self) -> str:
        """What its pistons push."""
        return {DRUM: "shoe", SLAVE: "release lever"}.get(self.kind or "", "pad")

    def moving(self, data: Refdata) -> Figure | None:
        """How many pistons the master cylinder moves; None where that is not known."""
        if self.pistons is None or self.wheels is None:
            return None
        number = int(self.pistons.value) * int(self.wheels.value)
        count = count_of(str(number), "pistons")
        assert count is not None
        return stated(count, "pistons_that_move", "pistons", data)

    def pushing(self, data: Refdata) -> Figure | None:
        """How many pistons push one pad or shoe; None where that is not known."""
        if self.kind is None or self.pistons is None:
            return None
        number = int(self.pistons.value)
        halved = self.kind in (DRUM, FIXED) and number > 1
        count = count_of(str(number // 2 if halved else number), "pistons")
        assert count is not None
        return stated(count, "pistons_a_side", "pistons", data)
