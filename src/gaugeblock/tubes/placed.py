"""A planned tube and what stands round it, as bodies in the vehicle."""

from __future__ import annotations

from gaugeblock.bodies import OBSTACLE, TUBE, Drawn, Placed
from gaugeblock.units import Measure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tubes.plan.planned import Plan


def placed_tube(plan: Plan) -> list[Placed]:
    """A planned tube and its obstacles; nothing where it does not stand in the vehicle."""
    around, shape = plan.around, plan.shape
    if around is None or shape is None or not shape.is_placed:
        return []
    datum = plan.given.tube.datum or ""
    leaves = (*shape.leaves, *([plan.tool.radius] if plan.tool is not None else []))
    out = [Placed(TUBE, plan.name, around.tube, datum, around.asked, leaves)]
    return out + [Placed(OBSTACLE, plan.name, thing.body, datum, None, thing.leaves) for thing in around.things]


def drawn_tube(plan: Plan) -> Drawn | None:
    """A planned tube for whoever builds on it; None where its shape is not known."""
    shape, tube = plan.shape, plan.given.tube
    if shape is None:
        return None
    wall = tube.wall if isinstance(tube.wall, Measure) else None
    leaves = (*shape.leaves, *([plan.tool.radius] if plan.tool is not None else []))
    return Drawn(plan.name, shape.line, tube.od, wall, tube.material, shape.is_placed, leaves)
