"""The section of a planned tube: area, second moment, section modulus, its mass as cut, what it takes, its twist."""

from __future__ import annotations

from gaugeblock.answer.making import stated
from gaugeblock.answer.question import Question
from gaugeblock.errors import LookupMiss
from gaugeblock.tubes.plan.found import Found
from gaugeblock.tubes.plan.metal import bent_of
from gaugeblock.tubes.section import section_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.doubt import Doubt
    from gaugeblock.tubes.plan.given import Given

# The keys of the piece that is twisted, as the section's own questions name them.
_KEYS = {"length": "section.length", "torque": "section.torque"}


def is_asked(given: Given) -> bool:
    """Whether the section was asked for: then it stands before what else is told of the tube, and asks."""
    return given.tube.section is not None or given.tube.shear_modulus is not None


def section_found(given: Given, cut: Figure, doubts: tuple[Doubt, ...]) -> Found:
    """The section of a tube of which size and wall are known; ``cut`` is the length that is cut, whose mass it is.

    Nothing is twisted by a number that is doubtful.
    """
    tube, data = given.tube, given.data
    if tube.od is None or tube.wall is None:
        return Found()
    try:
        bent, is_named = bent_of(given, None), tube.material is not None
    except LookupMiss:  # a wall or a metal that the tables do not know: it is asked elsewhere
        return Found()
    is_doubtful = any(d.key.startswith(("section.", "shear_modulus")) for d in doubts)
    piece = None if is_doubtful else tube.section
    long = None if piece is None or piece.length is None else stated(piece.length, "length", "section length", data)
    torque = None if piece is None or piece.torque is None else piece.torque
    twisting = None if torque is None else stated(torque, "load_torque", "section torque", data)
    found = section_of(bent, cut, twisting, long, is_named=is_named)
    if not is_asked(given):
        return Found(found.figures)
    asks = [Question(q.kind, q.text, _KEYS.get(q.key, q.key), q.checks) for q in found.questions]
    return Found(found.figures, found.checks, (), asks)
