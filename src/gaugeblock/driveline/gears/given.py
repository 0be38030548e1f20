"""What is known of a gearing, read once."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.making import read_positive
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.listed import items
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

_MOST = 12
_MOST_COLUMNS = 12
_WHOLE = re.compile(r"[0-9]{1,3}", re.ASCII)


def ratio_measure(typed: str, where: str) -> Measure:
    """A ratio as a plain number over zero; InputError for anything else."""
    got = units.parse_measure(typed, "ratio", where)
    if got.value <= 0 or got.unit != "1":
        raise InputError(typed, where, "not a ratio over zero", (), "write it as 3.55")
    return got


def listed(typed: str | Sequence[str] | None, where: str) -> tuple[str, ...]:
    """Texts with commas between, or a sequence of them."""
    parts = items(typed, where) if isinstance(typed, str) else typed or ()
    return tuple(p.strip() for p in parts if p.strip())


class Gearing(Value):
    """Axle ratios and tyres as typed, gears of the gearbox, road speed and transfer ratio; None where not given.

    ``was_ratio`` and ``was_tyre`` are those with which the speedometer was right; ``driven`` its driven gear's teeth;
    ``most`` the greatest speed of the engine.
    """

    __slots__ = (
        "driven",
        "gears",
        "most",
        "ratios",
        "revolutions",
        "speed",
        "transfer",
        "tyres",
        "was_ratio",
        "was_tyre",
    )

    ratios: tuple[str, ...]
    gears: tuple[Measure, ...]
    tyres: tuple[str, ...]
    revolutions: Measure | None
    speed: Measure
    transfer: Measure | None
    most: Measure | None
    was_ratio: str | None
    was_tyre: str | None
    driven: Measure | None

    def __init__(
        self, ratios: tuple[str, ...], gears: tuple[Measure, ...], tyres: tuple[str, ...], speed: Measure, **more: Any
    ) -> None:
        if not ratios or not gears or len(ratios) > _MOST or len(gears) > _MOST:
            raise InputError(
                "gearing", "ratios, gears", f"one to {_MOST} of each are wanted", (), "give them with commas"
            )
        if not tyres and more.get("revolutions") is None:
            why, do = "no size and no revolutions a mile", "write it as P215/65R15 or 26 in"
            raise Ambiguous("tyre", "tyre", why, ("tyre", "revolutions"), do)
        if len(tyres) * len(ratios) > _MOST_COLUMNS:
            why = f"{len(tyres)} tyres of {len(ratios)} ratios are more than {_MOST_COLUMNS} columns"
            raise InputError(", ".join(tyres), "tyre", why, (), "compare fewer at a time")
        put(self, "ratios", ratios)
        put(self, "gears", gears)
        put(self, "tyres", tyres)
        put(self, "speed", speed)
        for name in ("revolutions", "transfer", "most", "was_ratio", "was_tyre", "driven"):
            put(self, name, more.get(name))

    @classmethod
    def read(cls, typed: Mapping[str, Any]) -> Gearing:
        """From texts as people write them, by key; InputError or UnitError for what cannot be read."""

        def optional(key: str, dimension: str) -> Measure | None:
            given = typed.get(key)
            return None if given is None else read_positive(given, dimension, key.replace("_", " "))

        transfer = typed.get("transfer")
        driven = typed.get("driven_gear")
        return cls(
            listed(typed.get("ratios"), "ratios"),
            tuple(ratio_measure(g, "gears") for g in listed(typed.get("gears"), "gears") or ("1",)),
            listed(typed.get("tyre"), "tyre"),
            read_positive(typed.get("speed") or "60 mph", "speed", "speed"),
            revolutions=optional("revolutions", "revolutions per length"),
            transfer=None if transfer is None else ratio_measure(transfer, "transfer"),
            most=optional("engine_speed", "rotational speed"),
            was_ratio=typed.get("was_ratio"),
            was_tyre=typed.get("was_tyre"),
            driven=None if driven is None else _teeth(driven),
        )


def _teeth(typed: str | int) -> Measure:
    text = str(typed).removesuffix("teeth").strip()
    if _WHOLE.fullmatch(text) is None or int(text) == 0:
        raise InputError(str(typed), "driven gear", "not a number of teeth", (), "count them: 18")
    return units.parse_measure(f"{text} teeth", "tooth count", "driven gear")
