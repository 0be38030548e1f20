"""What is known of one propeller shaft, read once."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.driveline.joints.given import angle_of_joint
from gaugeblock.driveline.keys import PHASES, own_stress
from gaugeblock.errors import InputError
from gaugeblock.listed import items
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

# Key -> dimension, and the quantity that it is a figure of.
MEASURES = {
    "od": ("length", "shaft_diameter"),
    "wall": ("length", "wall_thickness"),
    "modulus": ("stress", "modulus_of_elasticity"),
    "density": ("density", "density"),
    "yield_strength": ("stress", "yield_strength"),
    "length": ("length", "joint_distance"),
    "bump": ("length", "joint_distance"),
    "droop": ("length", "joint_distance"),
    "front_length": ("length", "joint_distance"),
    "slip_in": ("length", "slip_left"),
    "engaged": ("length", "slip_engaged"),
    "spline_diameter": ("length", "spline_diameter"),
    "engine_speed": ("rotational speed", "engine_speed"),
    "transfer": ("ratio", "transfer_ratio"),
    "speed": ("rotational speed", "driveshaft_speed"),
    "torque": ("torque", "shaft_torque"),
    "wind_up": ("angle", "spring_wind_up"),
}
STATED = ("modulus", "yield_strength")
_MAY_BE_ZERO = ("slip_in", "engaged", "wind_up")
SLOPES = ("shafts_side", "shafts_top", "bump_side", "droop_side")
_MOST_GEARS, _ONE_PIECE, _TWO_PIECE = 12, 3, 4


class Propeller(Value):
    """One propeller shaft; None, or (), where something was not given.

    ``of`` the measures by key of MEASURES, ``read_by`` with what those of STATED were measured; ``material`` of the
    tube; ``gears`` ratios of the gearbox; slopes in the
    side and in the top view at ride height, in the side view at full bump and full droop: three shafts, or four where
    the shaft is in two pieces (gearbox, front piece, rear piece, pinion).
    """

    __slots__ = (
        "bump_side",
        "droop_side",
        "gears",
        "material",
        "of",
        "phasing",
        "read_by",
        "shafts_side",
        "shafts_top",
    )

    material: str | None
    gears: tuple[Measure, ...]
    phasing: str | None
    of: Mapping[str, Measure]
    read_by: Mapping[str, str]
    shafts_side: tuple[Measure, ...]
    shafts_top: tuple[Measure, ...]
    bump_side: tuple[Measure, ...]
    droop_side: tuple[Measure, ...]

    def __init__(
        self,
        of: Mapping[str, Measure],
        material: str | None = None,
        gears: tuple[Measure, ...] = (),
        phasing: str | None = None,
        read_by: Mapping[str, str] | None = None,
        **slopes: tuple[Measure, ...],
    ) -> None:
        if phasing is not None and phasing not in PHASES:
            raise InputError(phasing, "phasing", "not a phasing", PHASES, "use one of these")
        if len(gears) > _MOST_GEARS:
            raise InputError("gears", "gears", f"at most {_MOST_GEARS} are taken", (), "give them with commas")
        _refuse_slopes(slopes)
        _refuse_sizes(of)
        put(self, "of", of)
        put(self, "material", material)
        put(self, "gears", gears)
        put(self, "phasing", phasing)
        put(self, "read_by", read_by or {})
        for name in SLOPES:
            put(self, name, slopes.get(name, ()))

    @property
    def is_in_two_pieces(self) -> bool:
        """Whether it has a centre bearing: by its slopes, or by the length of its front piece."""
        return len(self.shafts_side) == _TWO_PIECE or "front_length" in self.of

    def get(self, key: str) -> Measure | None:
        """The measure under a key; None where it was not given."""
        return self.of.get(key)

    @classmethod
    def read(cls, typed: Mapping[str, Any]) -> Propeller:
        """From texts as people write them, or measures that are read already, by key."""
        known, read_by = {}, {}
        for key, (dim, _) in MEASURES.items():
            given = typed.get(key)
            if given is None:
                continue
            where = key.replace("_", " ")
            if key in STATED:
                own = own_stress(given, where, "29 Msi" if key == "modulus" else "60 ksi")
                assert own is not None
                given, read_by[key] = own.ends.low, own.read_by  # the least of a range is the safe one of both
            known[key] = read_positive(given, dim, where, zero=key in _MAY_BE_ZERO)
        slopes = {name: _slopes(typed.get(name), name) for name in SLOPES}
        gears = typed.get("gears") or ()
        parts = items(gears, "gears") if isinstance(gears, str) else gears
        read = tuple(read_positive(p.strip() if isinstance(p, str) else p, "ratio", "gears") for p in parts)
        return cls(known, typed.get("material"), read, typed.get("phasing"), read_by, **slopes)


def _slopes(typed: object, name: str) -> tuple[Measure, ...]:
    if not typed:
        return ()
    where = name.replace("_", " ")
    parts = items(typed, where) if isinstance(typed, str) else list(typed)  # type: ignore[call-overload]
    return tuple(angle_of_joint(p.strip(), where) if isinstance(p, str) else p for p in parts)


def _refuse_slopes(slopes: Mapping[str, tuple[Measure, ...]]) -> None:
    side = slopes.get("shafts_side", ())
    for name in SLOPES:
        got = slopes.get(name, ())
        where = name.replace("_", " ")
        if got and len(got) not in (_ONE_PIECE, _TWO_PIECE):
            why = f"{len(got)} slopes; three are wanted, or four of a shaft in two pieces"
            do = 'write them from the gearbox to the axle: "3 deg, 5 deg, 3 deg"'
            raise InputError(", ".join(m.text for m in got), where, why, (), do)
        if got and len(got) != len(side):
            why = "as many slopes at ride height in the side view are wanted beside it"
            raise InputError(", ".join(m.text for m in got), where, why, (), "give shafts side too, of as many shafts")


def _refuse_sizes(of: Mapping[str, Measure]) -> None:
    od, wall = of.get("od"), of.get("wall")
    if od is not None and wall is not None and _base(wall) * 2 >= _base(od):
        do = "give the wall of the tube itself"
        raise InputError(wall.text, "wall", f"not thinner than half of the tube's {od.text}", (), do)


def _base(measure: Measure) -> float:
    return units.to_base(float(measure.value), measure.unit)
