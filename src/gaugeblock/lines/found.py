"""Found: what one part of an answer brings to the sheet."""

from __future__ import annotations

from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.caution import Caution
    from gaugeblock.answer.check import Check
    from gaugeblock.figure import Figure


class Found(Value):
    """The figures, checks and cautions of one part of an answer."""

    __slots__ = ("cautions", "checks", "figures")

    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    cautions: tuple[Caution, ...]

    def __init__(
        self, figures: Iterable[Figure] = (), checks: Iterable[Check] = (), cautions: Iterable[Caution] = ()
    ) -> None:
        put(self, "figures", tuple(figures))
        put(self, "checks", tuple(checks))
        put(self, "cautions", tuple(cautions))

    def __add__(self, other: Found) -> Found:
        return Found(self.figures + other.figures, self.checks + other.checks, self.cautions + other.cautions)
