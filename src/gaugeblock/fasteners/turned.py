"""Turned: a maker's torque for threads in another condition, by the nut factors of both, at the same clamp load."""

from __future__ import annotations

from gaugeblock.answer.making import derived
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners import keys, said
from gaugeblock.fasteners.joint import friction_of
from gaugeblock.fasteners.way import Way, exact_way

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

# What oil takes off is in every table of torques; a paste that takes more is asked about.
_AS_OIL = 0.85
Grade = tuple[str, str] | None


def turned(
    torque: Figure, there: str, here: str, grade: Grade, data: Refdata, *, known: Figure | None = None
) -> Figure | None:
    """The torque that gives threads in the condition ``here`` the clamp load of ``torque``, a maker's for threads in
    the condition ``there``; None where the friction of either is not on record.

    ``grade`` is the bolt's, plain steel where it is None; ``known`` the nut factor of these threads, where it is not
    the tables'. T = K D F with the same diameter and clamp load: T_here = T K_here / K_there. Source of the relation:
    Shigley's Mechanical Engineering Design, 9th ed., Eq. 8-27.
    """
    own, other = known or factor_of(grade, here, data), factor_of(grade, there, data)
    if own is None or other is None:
        return None
    share = own.typical / other.typical
    of = f"the same clamp load as {torque.text} {torque.unit} on {there} threads"
    return derived(
        "torque_for_other_threads",
        "tightening_torque",
        None if torque.value is None else torque.value * share,
        torque.unit,
        (torque, own, other),
        data,
        about=here,
        ends=(
            None if torque.low is None else torque.low * share,
            None if torque.high is None else torque.high * share,
        ),
        conditions=f"{of}; nut factor {own.text} for {other.text}",
    )


def makers_ways(bolt: Bolt, torque: Figure, draft: Draft, known: Figure | None = None) -> list[Way]:
    """A maker's torque; where it is for other threads than the bolt's, with it what clamps as much here, the last of
    the two. ``known`` is the nut factor of these threads, where it is not the tables'.
    """
    maker = bolt.wish.maker
    other = said.for_other_threads(bolt, draft)
    own = exact_way(torque, other)
    if not other or maker is None or not maker.stages.is_plain:
        return [own]
    here = turned(torque, maker.condition, bolt.of_threads, bolt.grade, draft.data, known=known)
    if here is None:
        return [own]
    return [own, exact_way(here, f"{said.threads_are(bolt.of_threads)}, and the maker names no other torque")]


def is_slippery(bolt: Bolt, data: Refdata) -> bool:
    """Whether a torque of dry threads clamps a good deal harder on the bolt's, more than it does on oil."""
    if bolt.condition is None:
        return False
    here, dry = factor_of(bolt.grade, bolt.of_threads, data), factor_of(bolt.grade, "dry", data)
    return here is not None and dry is not None and here.typical < _AS_OIL * dry.typical


def factor_of(grade: Grade, condition: str, data: Refdata) -> Figure | None:
    """The nut factor of a grade, or of plain steel, in a condition; None where it is not on record."""
    try:
        return friction_of(grade or ("", ""), keys.condition(condition, data), data).factor
    except LookupMiss:
        return None
