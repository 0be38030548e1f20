"""How much of a torque for dry threads is left for threads with something on them, whatever the bolt."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import derived
from gaugeblock.answer.sheet import Sheet
from gaugeblock.fasteners.spoken import CONDITION
from gaugeblock.fasteners.tightening import TIGHTEN

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Refdata

DRY = "dry"
_CARE = (
    "It is for a torque that was printed for dry threads on a bolt, at the same clamp load. A maker who names a torque"
    " for these threads governs. Never take it of a wheel nut, a spark plug or a part of the brakes: ask its maker."
)


def share(condition: str, *, data: Refdata) -> Sheet:
    """The Sheet of what is left of a dry torque in a ``condition``, per cent: the nut factors of plain steel, one over
    the other; none where no factor is on record.
    """
    from gaugeblock.errors import LookupMiss
    from gaugeblock.fasteners import keys
    from gaugeblock.fasteners.joint import friction_of

    asked: dict[str, str | None] = {"condition": condition}
    title = f"a torque for dry threads, on threads: {condition}"
    try:
        here = friction_of(("", ""), keys.condition(condition, data), data)
        dry = friction_of(("", ""), keys.condition(DRY, data), data)
    except LookupMiss:
        do = "No friction of it is on record. Its maker's sheet says what it takes off a dry torque."
        return Sheet(title, asked, data, [], [], [], decision=none("TAKE", do))
    figure = derived(
        "torque_for_other_threads",
        "torque_multiplier",
        100 * here.factor.typical / dry.factor.typical,
        "%",
        (here.factor, dry.factor),
        data,
        about=condition,
        ends=(100 * here.low / dry.factor.typical, 100 * here.high / dry.factor.typical),
        conditions=f"of the dry torque: nut factor {here.factor.text} for {dry.factor.text}",
    )
    said = [Caution(_CARE, "injury", (figure.id,), "")]
    do = "Keep so much of the dry torque, and knock the rest off."
    return Sheet(title, asked, data, [figure, here.factor, dry.factor], [], said, decision=use("TAKE", figure, do))


def _share() -> Callable[..., Sheet]:
    return share


_LESS = (
    r"(?:(?:how much|what|do i|should i|to) )*(?:knock(?:ed|ing)?|drop|reduc(?:e|ed|tion)|cut|take|lower|come down"
    r"|back)"
    r"(?: (?:it|off|down|the torque|torque|by|back))*(?: (?:by )?how much)?"
)
SHARE = Topic(
    _share,
    "share of a dry torque",
    {
        "condition": CONDITION,
        "there": (
            Shaped(
                r"(?:the )?dry (?:specs?|torques?|figures?|numbers?|values?|ch[a]rts?|books?|tables?)(?: (?:torque"
                r"|figure"
                r"|value))?|(?:off|below|under|than|of)(?: the)? dry(?: (?:torque|figure|one))?",
                always(DRY),
                "of the dry torque",
                doubt=0,
                cue=("dry",),
            ),
        ),
    },
    f"{_LESS}|percent(?:age)?|per cent|%|{TIGHTEN}|(?:with|on)|l[e]ss|lower|threads?|bolts?|off|how much|by",
    needs=("condition",),
    asks_for=r"knock\w*|reduc\w+|percent(?:age)?|%|how much (?:less|lower)|drop|lower|off",
    is_named=True,
    settle=lambda values, _: {"condition": values["condition"]},
)
