"""The torque of a fastener that is called by a name which no table has: nobody's figure is known, and its maker has
it.
"""

from __future__ import annotations

from gaugeblock.answer.unpublished import nobody
from gaugeblock.plain.chatter import CHATTER, TURNING

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

FASTENERS = frozenset(
    ["bolt", "bolts", "nut", "nuts", "screw", "screws", "stud", "studs", "plug", "plugs", "capscrew", "capscrews"]
)
TORQUE = frozenset(["torque", "torqued", "tight", "tighten", "tightening", "tightened"])
_MOST_WORDS = 4
_SLIP = 2  # letters
_WHO = "the maker of the car or of the part"


def unnamed(words: tuple[str, ...], reading: Reading, data: Refdata) -> Sheet | None:
    """The Sheet that says whose figure it is; None for a line that asks for no torque, or says more than a name.

    A name that is nearly one of the tables is a slip of the keys, and a grade or a condition is of a bolt that the
    tables may know: neither is answered here.
    """
    if TORQUE.isdisjoint(words) or not TURNING.isdisjoint(words):
        return None
    if not {"grade", "condition", "into", "insert"}.isdisjoint(reading.values):
        return None
    left = [w for w in words if w not in CHATTER and w not in TORQUE]
    last = max((n for n, w in enumerate(left) if w in FASTENERS), default=0)
    name, rest = left[: last + 1], left[last + 1 :]
    if not 1 < len(name) <= _MOST_WORDS or rest or not all(w.isalpha() for w in name):
        return None
    text = " ".join([*name[:-1], name[-1].removesuffix("s")])
    if _is_nearly_known(text, data):
        return None
    return nobodys(text, data)


def nobodys(name: str, data: Refdata) -> Sheet:
    """The Sheet of a part whose torque its maker alone has."""
    return nobody(name, _WHO, "TIGHTEN", "torque", {"part": name}, data)


def _is_nearly_known(text: str, data: Refdata) -> bool:
    """Whether a name is one of the tables but for a slip in one of its words."""
    from gaugeblock.plain.mending import distance

    known = {*data.words("fasteners", "part"), *data.words("fasteners", "maker of part")}
    known.update(row["part"] for row in data.table("fasteners/part_torques").rows)
    words = text.split()
    for one in known:
        other = one.casefold().split()
        apart = [(a, b) for a, b in zip(words, other, strict=False) if a != b]
        if len(other) == len(words) and len(apart) == 1 and distance(*apart[0], _SLIP) <= _SLIP:
            return True
    return False
