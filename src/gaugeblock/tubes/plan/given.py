"""What is planned: a tube and its die as they were given, and the tape that its numbers are read on."""

from __future__ import annotations

from gaugeblock.answer.making import stated
from gaugeblock.drawing.lengths import tape
from gaugeblock.tubes import keys
from gaugeblock.tubes.plan.making import Make
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from fractions import Fraction

    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.job.model import Die
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.model import Tube
    from gaugeblock.units import Measure


class Given(Value):
    """A tube of a job with its die and the stock it is cut from, its OD in metres, and the tape of its numbers."""

    __slots__ = ("data", "datum", "die", "make", "name", "od", "od_m", "stock_length", "tape", "tube")

    tube: Tube
    die: Die | None
    stock_length: Measure | None
    data: Refdata
    name: str
    datum: str
    tape: Tape
    make: Make
    od: Figure | None
    od_m: Fraction

    def __init__(self, tube: Tube, die: Die | None, stock_length: Measure | None, data: Refdata) -> None:
        put(self, "tube", tube)
        put(self, "die", die)
        put(self, "stock_length", stock_length)
        put(self, "data", data)
        put(self, "name", getattr(tube, "name", None) or "tube")
        put(self, "datum", tube.marks_from or "start")
        metric = tube.od is not None and tube.od.unit == "mm"
        put(self, "tape", tape(tube.reads or ("mm" if metric else "1/32 in")))
        put(self, "make", Make(self.name, self.tape, data))
        put(self, "od", None if tube.od is None else stated(tube.od, "tube_od", "od", data))
        put(self, "od_m", keys.metres(tube.od) if tube.od is not None else keys.NOTHING)

    @property
    def title(self) -> str:
        """The tube, its size and metal, and its die."""
        tube, die = self.tube, self.die
        size = " x ".join(str(t) for t in (tube.od, tube.wall) if t)
        with_die = f"die {die.name}".replace("die die", "die") if die is not None and die.name else ""
        rest = ", ".join(t for t in (size, tube.material, with_die) if t)
        return ": ".join(t for t in (self.name, rest) if t)

    @property
    def asked(self) -> dict[str, str | None]:
        """What was given, key by key, as one line of text each."""
        out: dict[str, str | None] = {k: _text(v) for k, v in self.tube.as_dict().items() if v}
        if self.die is not None and self.die.name:
            out["die"] = self.die.name
        return out


def _text(value: object) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{k} {_text(v)}" for k, v in value.items() if v)
    if isinstance(value, list):
        return ("; " if any(isinstance(v, dict | list) for v in value) else " ").join(_text(v) for v in value)
    return str(value)
