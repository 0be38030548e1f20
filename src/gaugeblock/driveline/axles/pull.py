"""What is asked of one axle shaft, read once: the way from the engine, the way from the tyre."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.tables.catalogue import OPTIONS
from gaugeblock.tables.load import option
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

OPEN, LIMITED, LOCKED = DIFFERENTIALS = OPTIONS["driveline differential"]
# How people say that a gearbox has a clutch.
NO_CONVERTER = ("none", "no", "clutch")
# Key -> its dimension.
ENGINE = {"engine_torque": "torque", "converter": "ratio", "gear": "ratio", "transfer": "ratio", "ratio": "ratio"}
TYRE = {"wheel_load": "force", "grip": "ratio", "radius": "length"}
# The weight on the wheel, worked out: the load of the axle at rest, and what the pull shifts.
SHIFT = {"axle_load": "force", "height": "length", "wheelbase": "length"}
REAR, FRONT = DRIVEN = OPTIONS["driveline driven"]
# A weight on a wheel as a scale shows it: mass unit -> the force it is read as.
_WEIGHTS = {"lb": ("1", "lbf"), "kg": ("9.80665", "N")}


class Pull(Value):
    """Both ways in which torque reaches one shaft; None where something was not given.

    ``engine_torque``, ``converter`` stall ratio (1 where there is none), ``gear`` first ratio of the gearbox,
    ``transfer`` and axle ``ratio``,
    ``differential`` one of DIFFERENTIALS; ``wheel_load`` on this wheel when it pulls hardest, ``grip`` and loaded
    ``radius`` of its tyre. In place of the wheel load the ``axle_load`` at rest, ``height`` of the centre of mass and
    ``wheelbase``, of the axle that is ``driven`` (one of DRIVEN); ``lifted`` where its other wheel is in the air.
    """

    __slots__ = (
        "axle_load",
        "bias",
        "converter",
        "differential",
        "driven",
        "engine_torque",
        "gear",
        "grip",
        "height",
        "lifted",
        "radius",
        "ratio",
        "transfer",
        "wheel_load",
        "wheelbase",
    )

    engine_torque: Measure | None
    converter: Measure | None
    gear: Measure | None
    transfer: Measure | None
    ratio: Measure | None
    differential: str | None
    bias: Measure | None
    wheel_load: Measure | None
    grip: Measure | None
    radius: Measure | None
    axle_load: Measure | None
    height: Measure | None
    wheelbase: Measure | None
    driven: str | None
    lifted: bool

    def __init__(
        self,
        differential: str | None = None,
        driven: str | None = None,
        *,
        lifted: bool = False,
        **given: Measure | None,
    ) -> None:
        if differential is not None:
            differential = option(differential, "driveline differential", "not a differential")
        if driven is not None:
            driven = option(driven, "driveline driven", "not an axle")
        put(self, "differential", differential)
        put(self, "driven", driven)
        put(self, "lifted", lifted)
        for name in self.__slots__:
            if name not in ("differential", "driven", "lifted"):
                put(self, name, given.get(name))

    @classmethod
    def read(cls, typed: Mapping[str, Any]) -> Pull:
        """From texts as people write them, or measures that are read already, by key."""
        known = {**ENGINE, **TYRE, **SHIFT, "bias": "ratio"}
        if (typed.get("converter") or "").strip().casefold() in NO_CONVERTER:
            typed = {**typed, "converter": "1"}
        read = {k: positive(t, dim, k) for k, dim in known.items() if (t := typed.get(k)) is not None}
        lifted = option(typed.get("lifted") or "no", "driveline lifted", "not yes or no")
        return cls(typed.get("differential"), typed.get("driven"), lifted=lifted == "yes", **read)

    def lacks_engine(self) -> list[str]:
        """What the way from the engine needs and was not given; without these there is no figure of it."""
        return [k for k in ("engine_torque", "gear", "ratio") if getattr(self, k) is None]

    def lacks_tyre(self) -> list[str]:
        """The same of the way from the tyre."""
        out = [k for k in TYRE if getattr(self, k) is None]
        if "wheel_load" in out and self.axle_load is not None:
            out.remove("wheel_load")
            out += [k for k in (*SHIFT, "driven") if getattr(self, k) is None]
        return out

    def lacks(self) -> list[str]:
        """All that is open about the torque that reaches the shaft."""
        out = self.lacks_engine()
        if self.converter is None:
            out.append("converter")
        if self.differential is None:
            out.append("differential")
        elif self.differential == LIMITED and self.bias is None:
            out.append("bias")
        return out + self.lacks_tyre()


def positive(typed: str | Measure, dimension: str, key: str) -> Measure:
    """A measure of more than zero; a weight in pounds or kilograms is read as the force that it presses with."""
    where = key.replace("_", " ")
    if dimension == "force" and isinstance(typed, str):
        number, unit = units.split_quantity(typed)
        unit = units.TYPED.get(unit, unit)
        if unit in _WEIGHTS:
            times, force = _WEIGHTS[unit]
            value = units.parse_number(number, where) * units.parse_number(times)
            typed = f"{units.decimal_text(value)} {force}"
    return read_positive(typed, dimension, where)
