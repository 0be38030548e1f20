"""What was given and is implausible: it is asked about, and nothing is worked out from it."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.plausible import (
    base_of,
    did_you_mean,
    is_plausible,
    other_readings,
    plausible_range,
    run_together,
)
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator
    from typing import Any

    from gaugeblock.job.model import TestBend
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.plan.given import Given

NAME = "as it was meant"
# Where a measure stands -> the quantity that it is.
_QUANTITIES = {
    "od": "tube_od",
    "radius": "centre_line_radius",
    "gap": "gap_asked",
    "trim": "trim",
    "at": "length",
    "rise": "rise",
    "straight": "straight",
    "end": "straight",
    "mass": "load_mass",
    "bump_factor": "bump_factor",
    "torque": "load_torque",
    "angle": "bend_angle",
}


class Doubt(Value):
    """A key that was given and may not be what was meant, and what to ask."""

    __slots__ = ("key", "text")

    key: str
    text: str

    def __init__(self, key: str, text: str) -> None:
        put(self, "key", key)
        put(self, "text", text)

    @property
    def is_of_the_shape(self) -> bool:
        """Whether what is cut depends on it."""
        return not self.key.startswith(("load.", "bolts.", "section.", "shear_modulus"))

    @property
    def check(self) -> Check:
        """The open check of this doubt."""
        return Check(f"{NAME}: {self.key}", CANNOT_TELL, self.text, subject=self.key, bears=ASK)

    @property
    def question(self) -> Question:
        """What settles it."""
        return Question(FILL_IN, self.text, self.key, (f"{NAME}: {self.key}",))


def doubts_of(given: Given) -> tuple[Doubt, ...]:
    """Every measure of a tube and of its die that is outside its quantity's plausible range, or reads two ways."""
    found = [d for key, name, m in _measures(given.tube, "") if (d := _doubt(key, name, m, given.data))]
    die = given.die
    if die is not None:
        for name in ("radius", "od", "start_mark", "grip", "between"):
            measure = getattr(die, name)
            doubt = _doubt(f"shop.dies.{name}", name, measure, given.data) if measure is not None else None
            found += [] if doubt is None else [doubt]
        found += [doubt for n, row in enumerate(die.test_bends, 1) if (doubt := _of_a_test(n, row)) is not None]
    radius = given.tube.radius or (die.radius if die is not None else None)
    found += beside(given.tube.od, given.tube.wall, radius, given.tube.method or "")
    return tuple(found)


# What a bend opens by when the tool lets go, as a share of what it was pulled to, is no more than this in any tube.
MOST_BACK = 0.25


def sprung_wrongly(pulled: Measure, released: Measure) -> str:
    """Why a test bend is not plausible, by what it was pulled to and what it then was; blank where it is.

    A bend opens when the tool lets go, and never closes.
    """
    share = base_of(released) / base_of(pulled)
    if share > 1 + 1e-9:
        return "a bend opens when the tool lets go"
    return f"a bend opens by less than {MOST_BACK:.0%} of its angle" if share < 1 - MOST_BACK else ""


def _of_a_test(n: int, row: TestBend) -> Doubt | None:
    """What is doubtful of a test bend of the die."""
    if row.pulled is None or row.released is None:
        return None
    why = sprung_wrongly(row.pulled, row.released)
    if not why:
        return None
    turned = not sprung_wrongly(row.released, row.pulled)
    said = f"test bend {n}, pulled to {row.pulled} and released to {row.released}: {why}"
    return Doubt(
        "shop.dies.test_bends",
        did_you_mean(said, (f"pulled to {row.released} and released to {row.pulled}",) if turned else ()),
    )


# A tube thinner than this share of its OD, or a bend wider than so many of it but on rolls, is a slip of a point.
_THINNEST, _WIDEST = 1 / 120, 15.0
# The tightest bend that a mandrel makes is of one OD; under three quarters of it something else was meant.
_TIGHTEST = 0.75


def beside(od: Measure | None, wall: object, radius: Measure | None, method: str) -> list[Doubt]:
    """What is senseless beside the OD of its tube: a wall ten times too thin, a radius ten times too wide."""
    found: list[Doubt] = []
    if od is None:
        return found
    od_m = base_of(od)
    if isinstance(wall, Measure) and base_of(wall) < od_m * _THINNEST:
        said = f"wall = {wall}, 1/{od_m / base_of(wall):.0f} of the OD {od}, is hardly a tube"
        found.append(Doubt("wall", did_you_mean(said, _shifted(wall, 10, od_m * _THINNEST, od_m / 4))))
    if radius is not None and base_of(radius) < od_m * _TIGHTEST:
        said = f"radius = {radius} is to the centre line, {base_of(radius) / od_m:.2g} of the OD {od}: hardly a bend"
        found.append(Doubt("radius", did_you_mean(said, (f"{radius} inside",))))
    if radius is not None and base_of(radius) > od_m * _WIDEST and not method.startswith("roll"):
        said = f"radius = {radius}, {base_of(radius) / od_m:.0f} times the OD {od}, is hardly a die's"
        found.append(Doubt("radius", did_you_mean(said, _shifted(radius, 0.1, od_m, od_m * _WIDEST))))
    return found


def _shifted(measure: Measure, by: float, low: float, high: float) -> tuple[str, ...]:
    """The number with its point one place on, where that lies between two lengths in m."""
    is_so = low <= base_of(measure) * by <= high
    return (f"{float(measure.value) * by:g} {measure.unit}",) if is_so else ()


def _measures(part: Any, at: str) -> Iterator[tuple[str, str, Measure]]:
    for name, key in part.keys.items():
        value = getattr(part, key.name)
        path = f"{at}.{name}" if at else name
        for inner in value if isinstance(value, tuple) else (value,):
            if isinstance(inner, Measure):
                yield path, name, inner
            elif isinstance(inner, tuple):
                yield from ((path, "", m) for m in inner if isinstance(m, Measure))
            elif key.part is not None and inner is not None:
                yield from _measures(inner, path)


def _doubt(key: str, name: str, measure: Measure, data: Refdata) -> Doubt | None:
    if name == "bump_factor" and measure.unit == "%":
        return Doubt(key, did_you_mean(f"{key} = {measure}: a bump factor multiplies the weight", (measure.number,)))
    return doubt_of(key, _QUANTITIES.get(name, ""), measure, data)


def doubt_of(key: str, quantity: str, measure: Measure, data: Refdata) -> Doubt | None:
    """What is doubtful of one measure: a blank that was left out, or a place outside its quantity's plausible range."""
    meant = run_together(measure)
    if meant:
        reads = f"{float(measure.value):g} {measure.unit}"
        return Doubt(key, did_you_mean(f"{key} = {measure} reads as {reads}", (meant,)))
    if not quantity or is_plausible(measure, quantity, data):
        return None
    span = plausible_range(quantity, data)
    others = () if span is None else other_readings(measure, *span)
    return Doubt(key, did_you_mean(f"{key} = {_shown(measure)} is not plausible", others))


def _shown(measure: Measure) -> str:
    return measure.number if measure.unit == "1" else measure.text
