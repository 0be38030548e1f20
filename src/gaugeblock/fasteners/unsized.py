"""A habit's torque whose thread nobody stated: whether a thread that is named may be one of those that it is of."""

from __future__ import annotations

import re
from math import pi

from gaugeblock import units

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.keys import Thread
    from gaugeblock.tables.load import Refdata

# Proof strength of the ordinary bolt, class 8.8 of ISO 898-1 to 16 mm, Pa, and the usual nut factor of dry threads.
_PROOF, _DRY = 600e6, 0.2
# What clamps is tightened to no less than this share of its proof load, and to no more than the whole.
_LEAST = 0.2
# What seals is turned as its seal wants it, which may be much less.
_SEALS = r"\b(?:plug|sensor$|tube nut|flare nut|bleeder|clamp, |fitting|valve$)"
_LEAST_OF_A_SEAL = 0.05
# A hollow bolt has about half the metal.
_HOLLOW, _HOLLOW_SHARE = r"\bbanjo\b", 0.5


def may_be(thread: Thread, part: str, service: str, data: Refdata) -> bool:
    """Whether all that the tables have of a part in its service is a habit of no stated size, and the thread takes the
    whole of it: 21 to 58 N*m of some crankshaft bolts are nothing to an M16, and 3 to 12 too much for no M6.
    """
    table = data.table("fasteners/part_torques")
    own = [r for r in table.rows if r["part"] == part and r["service"] == service and not r["standing"]]
    if not own or any(r["size"] != "not stated" or r.cells["basis"] != "common practice" for r in own):
        return False
    ends = [
        units.to_base(float(r[end]), r["unit"])
        for r in own
        if r["quantity"] == "tightening_torque"
        for end in ("value", "low", "high")
        if r[end]
    ]
    most = _torque_at_proof(thread) * (_HOLLOW_SHARE if re.search(_HOLLOW, part) else 1)
    least = (_LEAST_OF_A_SEAL if re.search(_SEALS, part) else _LEAST) * most
    return not ends or (least <= min(ends) and max(ends) <= most)


def _torque_at_proof(thread: Thread) -> float:
    """The dry torque at which an ordinary bolt of a thread comes to its proof load, N m; stress area by ISO 898-1."""
    area = pi / 4 * (thread.diameter_m - 0.9382 * thread.pitch_m) ** 2
    return _DRY * thread.diameter_m * area * _PROOF
