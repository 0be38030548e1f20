"""What the flexible section of a run must take up, and what its fixed point takes."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import exhaust as calc
from gaugeblock.lookup import look_up
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.exhaust.run.given import Flex, Run
    from gaugeblock.exhaust.run.growing import Growth
    from gaugeblock.exhaust.run.hanging import Hung
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

# What people call a flexible section -> the part and case of the table.
KINDS = {
    "hose": ("flexible connector", "of 321 hose"),
    "bellows": ("bellows", "of 304 or 321"),
}


class Fixing(Value):
    """The flexible section and the fixed point: what must be taken up, what there is, and the force; None not known."""

    __slots__ = ("force", "parts", "takes", "travel")

    takes: Figure | None
    travel: Figure | None
    force: Figure | None
    parts: tuple[Figure, ...]

    def __init__(
        self, takes: Figure | None, travel: Figure | None, force: Figure | None, parts: Sequence[Figure]
    ) -> None:
        put(self, "takes", takes)
        put(self, "travel", travel)
        put(self, "force", force)
        put(self, "parts", tuple(parts))


def between(run: Run, fixed: Figure) -> bool:
    """Whether the flexible section lies between the engine and the fixed point."""
    return run.flex is not None and run.flex.at.to("m") <= base(fixed) + 1e-9


def fixing(run: Run, growth: Growth | None, hung: Sequence[Hung], data: Refdata) -> Fixing:
    """The Fixing of a run."""
    flex = run.flex
    takes = None
    if growth is not None and flex is not None and between(run, growth.fixed):
        front = stated(_zero(run), "run_place", "front end", data)
        takes = growth.movement("flexible section", front, "what the flexible section must take up")
    travel = travel_of(flex, growth.unit if growth is not None else "in", data) if flex is not None else None
    parts: list[Figure] = []
    if flex is not None and flex.area is not None and run.pressure is not None:
        pressure = stated(run.pressure, "design_pressure", "pressure", data)
        area = stated(flex.area, "bellows_area", "area", data)
        thrust = units.from_base(base(pressure) * base(area), _force(run))
        parts.append(derived("pressure_thrust", "pressure_thrust", thrust, _force(run), (pressure, area), data))
    if flex is not None and flex.rate is not None and takes is not None:
        rate = stated(flex.rate, "spring_rate", "rate", data)
        spring = units.from_base(base(rate) * base(takes), _force(run))
        parts.append(derived("spring_force_of_travel", "spring_force", spring, _force(run), (rate, takes), data))
    pulls = [h.pull for h in hung if h.pull is not None]
    if not parts and not pulls:
        return Fixing(takes, travel, None, ())
    thrusts = {p.quantity: base(p) for p in parts}
    total = calc.anchor_force(
        thrusts.get("pressure_thrust", 0.0), thrusts.get("spring_force", 0.0), sum(base(p) for p in pulls)
    )
    number = units.from_base(total, _force(run))
    said = "along the run, on what holds the fixed point; friction left out"
    force = derived("run_anchor_force", "anchor_force", number, _force(run), (*parts, *pulls), data, conditions=said)
    return Fixing(takes, travel, force, parts)


def travel_of(flex: Flex, unit: str, data: Refdata) -> Figure | None:
    """The travel of a flexible section: as its maker says, else by its kind and length; None where neither is known."""
    if flex.travel is not None:
        return stated(flex.travel, "bellows_travel", "travel", data)
    if flex.length is None or flex.kind not in KINDS:
        return None
    part, case = KINDS[flex.kind]
    per = look_up("exhaust/joints", "axial_movement_per_length", data=data, part=part, case=case, service="industrial")
    long = stated(flex.length, "flexible_length", "flexible section length", data)

    def of(number: float | None) -> float | None:
        return None if number is None else units.from_base(units.to_base(number, per.unit) * base(long), unit)

    return derived(
        "bellows_travel_of_length",
        "bellows_travel",
        of(per.value),
        unit,
        (per, long),
        data,
        ends=(of(per.low), of(per.high)),
        conditions="generator practice",
    )


def _zero(run: Run) -> units.Measure:
    unit = "mm" if run.od.unit == "mm" else "in"
    return units.Measure(units.parse_number("0"), unit, f"0 {unit}")


def _force(run: Run) -> str:
    return "N" if run.od.unit == "mm" else "lbf"
