"""Turned: a maker's torque for threads in another condition, by the nut factors of both, at the same clamp load."""

from __future__ import annotations

from gaugeblock.answer.making import derived
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.joint import friction_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


def turned(bolt: Bolt, torque: Figure, known: Figure | None, data: Refdata) -> Figure | None:
    """The torque that gives threads in the bolt's condition the clamp load of ``torque``, which is its maker's for
    threads in another one; None where the friction of either is not on record. ``known`` is the bolt's own nut factor.

    T = K D F with the same diameter and clamp load: T_here = T K_here / K_there. Source of the relation: Shigley's
    Mechanical Engineering Design, 9th ed., Eq. 8-27.
    """
    maker = bolt.wish.maker
    if maker is None:
        return None
    here = factor_of(bolt, bolt.condition[0], data) if known is None and bolt.condition is not None else known
    there = factor_of(bolt, maker.condition, data)
    if here is None or there is None:
        return None
    share = here.typical / there.typical
    of = f"the same clamp load as {torque.text} {torque.unit} on {maker.condition} threads"
    return derived(
        "torque_for_other_threads",
        "tightening_torque",
        None if torque.value is None else torque.value * share,
        torque.unit,
        (torque, here, there),
        data,
        about=bolt.of_threads,
        ends=(
            None if torque.low is None else torque.low * share,
            None if torque.high is None else torque.high * share,
        ),
        conditions=f"{of}; nut factor {here.text} for {there.text}",
    )


def is_slippery(bolt: Bolt, data: Refdata) -> bool:
    """Whether a torque of dry threads clamps a good deal harder on the bolt's: what oil does is in every torque."""
    here = None if bolt.condition is None else factor_of(bolt, bolt.condition[0], data)
    dry = factor_of(bolt, "dry", data)
    return here is not None and dry is not None and here.typical < _AS_OIL * dry.typical


_AS_OIL = 0.85


def factor_of(bolt: Bolt, condition: str, data: Refdata) -> Figure | None:
    """The nut factor of the bolt's grade, or of plain steel, in a condition; None where it is not on record."""
    try:
        return friction_of(bolt.grade or ("", ""), keys.condition(condition, data), data).factor
    except LookupMiss:
        return None
