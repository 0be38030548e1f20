"""One planned tube: its Sheet with the plain numbers behind it."""

from __future__ import annotations

from gaugeblock.calc.stick import Die
from gaugeblock.tubes.plan import marks

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.calc import clearance as space
    from gaugeblock.calc.path import Path
    from gaugeblock.calc.stick import Layout
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.tubes.plan.keys import Shape
    from gaugeblock.tubes.plan.marks import Maker, Setting
    from gaugeblock.tubes.plan.metal import Metal
    from gaugeblock.tubes.plan.space import Thing


class Plan:
    """One planned tube: its Sheet, and the plain numbers behind it that the bench, the drawings and the cut list use.

    ``layout`` is None when the shape is refused or not known; then the sheet's checks say why.
    """

    __slots__ = (
        "cut", "datum", "die", "layout", "line", "make", "metal", "name", "od", "radius", "seam", "settings", "shape", "sheet",
        "tape", "things", "tube",
    )  # fmt: skip

    def __init__(self, name: str, sheet: Sheet, tape: Tape, datum: str) -> None:
        self.name = name
        self.sheet = sheet
        self.tape = tape
        self.datum = datum
        self.make: Maker = marks.Maker(name, tape, sheet.data)
        self.layout: Layout | None = None
        self.die = Die(0.0)
        self.shape: Shape | None = None
        self.line: Path | None = None
        self.metal: Metal | None = None
        self.cut: Figure | None = None
        self.radius: Figure | None = None
        self.seam: float | None = None
        self.settings: list[Setting] = []
        self.things: list[Thing] = []
        self.tube: space.Tube | None = None
        self.od = 0.0
