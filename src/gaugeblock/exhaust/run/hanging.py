"""What a run weighs, what each hanger carries of it, and how far each swings."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.calc import exhaust as calc
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.exhaust.run.given import Run
    from gaugeblock.exhaust.run.growing import Growth
    from gaugeblock.exhaust.run.shape import Shape
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


class Hung(Value):
    """One support with its figures: its place, load, movement, swing, pull, length and limit; None where not known."""

    __slots__ = ("at", "length", "limit", "load", "movement", "name", "pull", "swing")

    name: str
    at: Figure
    load: Figure | None
    movement: Figure | None
    swing: Figure | None
    pull: Figure | None
    length: Figure | None
    limit: Figure | None

    def __init__(
        self,
        name: str,
        at: Figure,
        load: Figure | None = None,
        movement: Figure | None = None,
        swing: Figure | None = None,
        pull: Figure | None = None,
        length: Figure | None = None,
        limit: Figure | None = None,
    ) -> None:
        put(self, "name", name)
        put(self, "at", at)
        put(self, "load", load)
        put(self, "movement", movement)
        put(self, "swing", swing)
        put(self, "pull", pull)
        put(self, "length", length)
        put(self, "limit", limit)


def pipe_mass(read: dict[str, Figure], density: Figure, shape: Shape, unit: str, data: Refdata) -> Figure:
    """The mass of the pipe alone."""
    od, wall = base(read["od"]), base(read["wall"])
    kilos = calc.PI * (od - wall) * wall * base(density) * base(shape.length)
    inputs = (read["od"], read["wall"], density, shape.length)
    return derived("run_pipe_mass", "pipe_mass", units.from_base(kilos, unit), unit, inputs, data)


def whole_mass(pipe: Figure, parts: Sequence[Figure], data: Refdata) -> Figure:
    """The mass of the run with all that hangs on it."""
    total = units.from_base(base(pipe) + sum(base(p) for p in parts), pipe.unit)
    return derived("run_mass", "hung_mass", total, pipe.unit, (pipe, *parts), data)


def begins(run: Run) -> float:
    """Where the part that hangs begins, in m: behind the flexible section, which carries nothing."""
    if run.flex is None:
        return 0.0
    return run.flex.at.to("m") + (run.flex.length.to("m") if run.flex.length is not None else 0.0)


def supports(run: Run, read: dict[str, Figure], data: Refdata) -> list[tuple[str, Figure, int | None]]:
    """What carries the run: name, place, and the number of the hanger; the fixed point too, where no hanger is."""
    out: list[tuple[str, Figure, int | None]] = []
    for n, hanger in enumerate(run.hangers, 1):
        at = stated(hanger.at, "run_place", f"hanger {n}", data, key={"hanger": str(n)})
        out.append((f"hanger {n}", at, n))
    fixed = read.get("fixed")
    is_apart = fixed is not None and all(abs(base(at) - base(fixed)) > 1e-6 for _, at, _ in out)
    if fixed is not None and is_apart and base(fixed) >= begins(run) - 1e-9:
        out.append(("fixed point", fixed, None))
    return sorted(out, key=lambda s: base(s[1]))


def loads(
    run: Run, read: dict[str, Figure], pipe: Figure, parts: Sequence[Figure], shape: Shape, data: Refdata
) -> list[Figure | None]:
    """What each support carries, in their order; None where they are too few."""
    all_of = supports(run, read, data)
    end, start = base(shape.length), begins(run)
    places = [base(at) for _, at, _ in all_of]
    if len({round(p, 6) for p in places}) < 2:
        return [None] * len(all_of)
    masses: dict[float, float] = {}
    for mass in run.masses:
        at = mass.at.to("m")
        if at >= start - 1e-9:
            masses[at] = masses.get(at, 0.0) + mass.mass.to("kg")
    per = base(pipe) / end
    alike = [round(at, 6) for at in places]  # two at one place share what hangs there
    each = dict(zip(sorted(set(alike)), calc.hanger_loads((start, end), per, masses, alike), strict=True))
    found = [each[at] / alike.count(at) for at in alike]
    unit = "N" if pipe.unit == "kg" else "lbf"
    inputs = (pipe, *parts, *(at for _, at, _ in all_of), shape.length)
    return [
        derived(
            "run_hanger_load",
            "hanger_load",
            units.from_base(force, unit),
            unit,
            inputs,
            data,
            about=name,
            conditions=f"{name}, at rest",
        )
        for (name, _, _), force in zip(all_of, found, strict=True)
    ]


def hung(
    run: Run, read: dict[str, Figure], carried: Sequence[Figure | None], growth: Growth | None, data: Refdata
) -> list[Hung]:
    """Every support with what it carries and how it swings."""
    out = []
    for (name, at, number), load in zip(supports(run, read, data), carried, strict=True):
        hanger = run.hangers[number - 1] if number is not None else None
        key = {"hanger": str(number)}
        long = limit = None
        if hanger is not None and hanger.length is not None:
            long = stated(hanger.length, "hanger_length", f"hanger {number} length", data, key=key)
        if hanger is not None and hanger.limit is not None:
            limit = stated(hanger.limit, "hanger_limit", f"hanger {number} limit", data, key=key)
        moved = growth.movement(name, at) if growth is not None and hanger is not None else None
        swing = _swing(name, moved, long, data)
        pull = _pull(name, load, moved, long, data)
        out.append(Hung(name, at, load, moved, swing, pull, long, limit))
    return out


def _swing(name: str, moved: Figure | None, long: Figure | None, data: Refdata) -> Figure | None:
    if moved is None or long is None:
        return None
    angle = units.from_base(calc.swing(base(moved), base(long)), "deg")
    said = f"{name}, from straight down when hot, hung straight when cold"
    return derived("hanger_swing", "hanger_swing", angle, "deg", (moved, long), data, about=name, conditions=said)


def _pull(name: str, load: Figure | None, moved: Figure | None, long: Figure | None, data: Refdata) -> Figure | None:
    if load is None or moved is None or long is None:
        return None
    force = units.from_base(base(load) * base(moved) / base(long), load.unit)
    return derived(
        "hanger_pull", "hanger_pull", force, load.unit, (load, moved, long), data, about=name, conditions=name
    )
