"""What is asked of a pair of joints, read once: their angles, or the slopes of the three shafts, in both views."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.listed import items
from gaugeblock.tables.load import option
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.units import Measure

_LARGEST_DEG = 60.0
_SHAFTS = 3


class View(Value):
    """A slope, or a joint's angle, in the side view and, where it was taken, in the top view."""

    __slots__ = ("side", "top")

    side: Measure
    top: Measure | None

    def __init__(self, side: Measure, top: Measure | None = None) -> None:
        put(self, "side", side)
        put(self, "top", top)


OUT = "wrong phase"
_QUARTER = 90  # degrees
_IN_LINE = 2  # degrees: no shop sets yokes nearer (common practice)


class Joints(Value):
    """One joint or the two of a shaft: the angle of each, or the slopes of input, propeller and output shaft."""

    __slots__ = ("angles", "out", "phasing", "shafts", "speed")

    angles: tuple[View, ...]
    shafts: tuple[View, ...]
    phasing: str | None
    speed: Measure | None
    out: Measure | None

    def __init__(
        self,
        angles: tuple[View, ...] = (),
        shafts: tuple[View, ...] = (),
        phasing: str | None = None,
        speed: Measure | None = None,
        out: Measure | None = None,
    ) -> None:
        if phasing is not None:
            phasing = option(phasing, "driveline phasing", "not a phasing")
        if out is not None:
            if phasing == "in phase":
                why = "yokes that are so far out of line are not in phase"
                raise InputError(out.text, "yokes out", why, (), "give one of the two")
            if not 0 < out.to("deg") <= _QUARTER:
                why = "two yokes are out of line by up to a quarter turn"
                raise InputError(out.text, "yokes out", why, (), "give the smaller angle between them")
            phasing = OUT if out.to("deg") > _IN_LINE else "in phase"
        if bool(angles) == bool(shafts):
            do = "give the joints' angles, or the slopes of the three shafts"
            if not angles:
                why = "no joint angle and no shaft slope"
                raise Ambiguous("joints", "joints", why, ("angle", "shafts_side"), do)
            raise InputError("joints", "joints", "both joint angles and shaft slopes", (), do)
        below = next((v.side for v in angles if v.top is None and v.side.value < 0), None)
        if below is not None:
            why = "an angle below zero, and no top view that its sign could be about"
            raise InputError(below.text, "angle", why, (), "give the angle between the two shafts of the joint")
        if shafts and len(shafts) != _SHAFTS:
            raise InputError("shafts", "shafts", "not three shafts", (), "give input, propeller and output shaft")
        put(self, "angles", angles)
        put(self, "shafts", shafts)
        put(self, "phasing", phasing)
        put(self, "speed", speed)
        put(self, "out", out)

    @property
    def how_out(self) -> str:
        """How far the yokes are out of line, in words."""
        return "a quarter turn out of phase" if self.out is None else f"{self.out.text} out of line"


def angle_of_joint(typed: str, where: str) -> Measure:
    """A joint's angle in one view: signed where two views are to be put together."""
    got = units.parse_measure(typed, "angle", where)
    if abs(got.to("deg")) > _LARGEST_DEG:
        do = "give the angle between the two shafts of the joint"
        raise InputError(typed, where, "no joint works at this angle", (), do)
    return got


def slopes(typed: str | Sequence[str] | None, where: str) -> tuple[Measure, ...]:
    """The slopes of input, propeller and output shaft: ``3 deg, 5 deg, 3 deg``; () where none was given."""
    if typed is None:
        return ()
    parts = items(typed, where) if isinstance(typed, str) else list(typed)
    if len(parts) != _SHAFTS:
        why = f"{len(parts)} slopes; three are wanted: input, propeller, output"
        raise InputError(", ".join(parts)[:60], where, why, (), 'write it as "3 deg, 5 deg, 3 deg"')
    return tuple(angle_of_joint(part.strip(), where) for part in parts)


def views(side: tuple[Measure, ...], top: tuple[Measure, ...]) -> tuple[View, ...]:
    """Slopes of the two views put together."""
    return tuple(View(s, top[n] if top else None) for n, s in enumerate(side))
