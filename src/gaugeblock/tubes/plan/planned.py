"""One planned tube: what was given, the result of each stage, and the Sheet they make together."""

from __future__ import annotations

from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tubes.plan.around import Around
    from gaugeblock.tubes.plan.given import Given
    from gaugeblock.tubes.plan.marks import Marks
    from gaugeblock.tubes.plan.metal import Metal
    from gaugeblock.tubes.plan.shape import Shape
    from gaugeblock.tubes.plan.tool import Tool


class Plan(Value):
    """One planned tube: its Sheet, and the stages behind it that the bench, the drawings and the cut list use.

    ``shape``, ``around`` and ``marks`` are None when the shape is refused or not known: the sheet's checks say why.
    ``tool`` is None for a straight tube, ``metal`` where it is not known.
    """

    __slots__ = ("around", "given", "marks", "metal", "shape", "sheet", "tool")

    given: Given
    sheet: Sheet
    tool: Tool | None
    metal: Metal | None
    shape: Shape | None
    around: Around | None
    marks: Marks | None

    def __init__(
        self,
        given: Given,
        sheet: Sheet,
        tool: Tool | None = None,
        metal: Metal | None = None,
        shape: Shape | None = None,
        around: Around | None = None,
        marks: Marks | None = None,
    ) -> None:
        put(self, "given", given)
        put(self, "sheet", sheet)
        put(self, "tool", tool)
        put(self, "metal", metal)
        put(self, "shape", shape)
        put(self, "around", around)
        put(self, "marks", marks)

    @property
    def name(self) -> str:
        """The tube's name."""
        return self.given.name

    @property
    def is_stopped(self) -> bool:
        """Whether the sheet stops the work: then no marks are given anywhere."""
        return self.sheet.decision.kind == "stop"

    @property
    def bench(self) -> Marks | None:
        """The marks to work to; None when there are none, when the work is stopped, or when what was meant is asked."""
        return self.marks if self.sheet.decision.kind in ("use", "ask") else None
