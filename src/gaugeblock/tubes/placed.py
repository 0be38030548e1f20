"""A planned tube and what stands round it, as bodies in the vehicle."""

from __future__ import annotations

from gaugeblock.bodies import OBSTACLE, TUBE, Placed, Typed

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.tubes.plan.planned import Plan


def placed_tube(plan: Plan, keys: Mapping[str, Any]) -> list[Placed]:
    """A planned tube and its obstacles; nothing where it does not stand in the vehicle."""
    if plan.tube is None or plan.shape is None or not plan.shape.is_placed:
        return []
    typed, datum = Typed(plan.name, plan.sheet.data), str(keys.get("datum") or "")
    asked = typed.figure(keys["gap"], "gap", "length", "gap_asked")[1] if keys.get("gap") else None
    leaves = (*plan.shape.leaves, *([plan.radius] if plan.radius is not None else []))
    out = [Placed(TUBE, plan.name, plan.tube, datum, asked, leaves)]
    out += [Placed(OBSTACLE, plan.name, thing.body, datum, None, thing.leaves) for thing in plan.things]
    return out
