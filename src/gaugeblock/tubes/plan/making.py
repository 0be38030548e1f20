"""Make: the derived Figures of one tube, from metres and radians to the shop's own unit."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.making import derived
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.making import Ends
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


class Make(Value):
    """Makes the derived Figures of one tube; SI in, the shop's unit out; ``bend`` tells those of one quantity apart."""

    __slots__ = ("data", "name", "tape")

    name: str
    tape: Tape
    data: Refdata

    def __init__(self, name: str, tape: Tape, data: Refdata) -> None:
        put(self, "name", name)
        put(self, "tape", tape)
        put(self, "data", data)

    def __call__(
        self,
        rule: str,
        quantity: str,
        value: float | None,
        inputs: tuple[Figure, ...],
        *,
        unit: str | None = None,
        bend: str = "",
        ends: Ends = (None, None),
        conditions: str = "",
        text: str = "",
        towards: str = "",
    ) -> Figure:
        unit = unit or self.tape.unit

        def out(v: float | None) -> float | None:
            return None if v is None else units.from_base(v, unit)

        return derived(
            rule,
            quantity,
            out(value),
            unit,
            inputs,
            self.data,
            ends=(out(ends[0]), out(ends[1])),
            key={"tube": self.name, **({"bend": bend} if bend else {}), **({"towards": towards} if towards else {})},
            conditions=conditions,
            text=text,
        )

    def length(
        self,
        rule: str,
        quantity: str,
        metres: float,
        inputs: tuple[Figure, ...],
        *,
        bend: str = "",
        conditions: str = "",
        towards: str = "",
    ) -> Figure:
        """A length that is marked: printed on the tape's step, the exact value kept and told."""
        exact = f"exactly {units.significant(units.from_base(metres, self.tape.unit), 6)} {self.tape.unit}"
        return self(
            rule,
            quantity,
            metres,
            inputs,
            bend=bend,
            text=self.tape.number(metres),
            conditions=f"{conditions}; {exact}" if conditions else exact,
            towards=towards,
        )
