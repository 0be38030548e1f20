"""What a shim that is moved from side to side does to the backlash."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, none, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN, MEASURE, Question

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.decision import Decision
    from gaugeblock.driveline.shims.given import Shims
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

TABLE = "driveline/setup"
CHANGES = "BACKLASH CHANGES BY"
SHIFT = "backlash for each shim moved"
_EXAMPLE = (
    "light utility truck, lighter axle, front and rear (TM 9-2320-289-34)",
    "side bearing shims",
    "for each shim moved",
)
_WAY = "less where the shim goes to the ring gear's side, more on the other"


def of_another_axle(data: Refdata) -> tuple[Figure, list[Figure]]:
    """What a shim moves on the one truck axle whose manual prints it, and its ends, the greater first."""
    keys = dict(zip(("axle", "component", "step"), _EXAMPLE, strict=True))
    example = lookup.look_up(TABLE, "backlash_per_shim", data=data, **keys)
    ends = [units.parse_measure(f"{n:g}", "ratio", "per shim") for n in (example.high, example.low) if n]
    return example, [stated(end, "backlash_per_shim", "of another axle", data) for end in ends]


def change(of: Shims, data: Refdata) -> tuple[Decision, list[Figure], list[Check], list[Question]]:
    """What the backlash changes by; with another axle's ratio each way where this one's is not given."""
    measure = of.get("move")
    if measure is None:
        text = "How thick is the shim that goes from one side to the other?"
        check = Check(SHIFT, CANNOT_TELL, "the shim that is moved is not given", bears=ASK)
        return none(CHANGES, text), [], [check], [Question(FILL_IN, text, "move", (SHIFT,))]
    move = stated(measure, "shim_thickness_change", "move", data)
    given = of.get("per_shim")
    if given is not None:
        per = stated(given, "backlash_per_shim", "per shim", data)
        return use(CHANGES, _changed(move, per, data), f"{capital(_WAY)}."), [move, per], [], []
    example, ends = of_another_axle(data)
    shown = [
        Candidate(_changed(move, end, data), f"a shim moves {end.text} of itself, as on one truck axle", _WAY)
        for end in ends
    ]
    why = "how much backlash a shim moves on this axle is not given; another axle's does not answer"
    check = Check(SHIFT, CANNOT_TELL, why, subject="per shim", bears=ASK)
    text = "How much does the backlash change when a known shim is moved from side to side? Change over shim."
    do = "Move a known shim, read the backlash again, and say what a shim moves: backlash over shim."
    return ask(CHANGES, shown, [SHIFT], do), [move, example], [check], [Question(MEASURE, text, "per_shim", (SHIFT,))]


def _changed(move: Figure, per: Figure, data: Refdata) -> Figure:
    number = units.from_base(base(move) * base(per), move.unit)
    key = {"move": f"{move.text} {move.unit}", "per shim": per.text}
    return derived("backlash_side_shim", "backlash", number, move.unit, (move, per), data, key=key)
