"""The part maker's own figure as engines have it today: a torque, its range, stages by torque and angle, to yield."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.units import Measure

TORQUE, ANGLE, BACK, YIELD = "torque", "angle", "back off", "yield"
NO_SOURCE, NO_PAGE = "the maker, paper not named", "place not given"
_FORM = 'write it as "22 N*m", "25 to 28 lbf*ft" or "22 N*m + 90 deg"'
_BETWEEN = re.compile(r"\s*(?:\+|,?\s*\bthen\b|;)\s*", re.IGNORECASE)
_RANGE = re.compile(r"(\S+(?: [0-9]+/[0-9]+)?)(?:\s+\S.*?)?\s+to\s+(\S.*)", re.ASCII)


class Stage(Value):
    """One step of a maker's tightening: ``kind`` torque, angle, back off or yield.

    ``low`` and ``high`` alike unless a range.
    """

    __slots__ = ("high", "kind", "low")

    kind: str
    low: Measure | None
    high: Measure | None

    def __init__(self, kind: str, low: Measure | None = None, high: Measure | None = None) -> None:
        put(self, "kind", kind)
        put(self, "low", low)
        put(self, "high", high if high is not None else low)

    @property
    def is_torque(self) -> bool:
        """Whether a torque wrench reads it."""
        return self.kind == TORQUE

    @property
    def text(self) -> str:
        """The figure as it was typed."""
        if self.low is None or self.high is None:
            return "to yield"
        return self.low.text if self.low == self.high else f"{self.low.number} to {self.high.text}"

    @property
    def do(self) -> str:
        """What to do, as a shop manual says it."""
        says = {TORQUE: "tighten to {}", ANGLE: "turn {} more", BACK: "turn back {}", YIELD: "tighten to yield"}
        return says[self.kind].format(self.text)


class Stages(Value):
    """What a maker's figure says: its ``steps`` in order."""

    __slots__ = ("steps",)

    steps: tuple[Stage, ...]

    def __init__(self, steps: Sequence[Stage]) -> None:
        put(self, "steps", tuple(steps))

    @property
    def text(self) -> str:
        """As it is written, units in their closed spelling: ``20 N*m, then 22 N*m + 90 deg``."""
        out = ""
        for step in self.steps:
            word = f"back off {step.text}" if step.kind == BACK else step.text
            out += ("" if not out else " + " if step.kind == ANGLE else ", then ") + word
        return out

    def __str__(self) -> str:
        return self.text

    @property
    def torques(self) -> tuple[Stage, ...]:
        """The steps that a torque wrench reads."""
        return tuple(s for s in self.steps if s.kind == TORQUE)

    @property
    def after(self) -> str:
        """What follows the number that stands first, the last torque or else the first step: ``+ 90 deg``."""
        torques = [at for at, step in enumerate(self.steps) if step.is_torque]
        first = torques[-1] if torques else next((at for at, step in enumerate(self.steps) if step.low is not None), 0)
        says = {ANGLE: "+ {}", BACK: "then back {}", YIELD: "then to yield"}
        return " ".join(says[step.kind].format(step.text) for step in self.steps[first + 1 :])

    @property
    def is_plain(self) -> bool:
        """Whether it is one torque, or its range, and nothing after."""
        return len(self.steps) == 1 and self.steps[0].kind == TORQUE

    @property
    def ends_by_torque(self) -> bool:
        """Whether the last step is a torque: its clamp can then be calculated."""
        return self.steps[-1].kind == TORQUE


class Maker(Value):
    """The maker's figure.

    Its ``stages``, the paper and the place, the condition it is for, and if new bolts are needed.
    """

    __slots__ = ("condition", "new_bolts", "place", "source", "stages")

    stages: Stages
    source: str
    place: str
    condition: str
    new_bolts: bool

    def __init__(
        self, stages: Stages, source: str = "", place: str = "", condition: str = "", new_bolts: bool = False
    ) -> None:
        put(self, "stages", stages)
        put(self, "source", source)
        put(self, "place", place)
        put(self, "condition", condition)
        put(self, "new_bolts", new_bolts)

    def figure(self, at: int) -> Figure:
        """The stage at an index as a Figure of basis ``maker``, both ends of a range kept."""
        stage = self.stages.steps[at]
        measure, top = stage.low, stage.high
        if measure is None or top is None:
            raise InputError(self.stages.text, "maker", "this stage has no figure", (), _FORM)
        is_range = measure != top
        quantity = "tightening_torque" if stage.kind == TORQUE else "tightening_angle"
        about = "" if self.stages.is_plain else f"stage {at + 1} of {len(self.stages.steps)}"
        high = float(units.convert(top.value, top.unit, measure.unit))
        return Figure(
            f"maker:{self.source or NO_SOURCE}:{self.place or NO_PAGE}:{about or 'all'}:{stage.text}:{quantity}",
            quantity,
            None if is_range else float(measure.value),
            measure.unit,
            low=float(measure.value) if is_range else None,
            high=high if is_range else None,
            side="target",
            basis="maker",
            checked="primary" if self.source and self.place else "",
            source=self.source or NO_SOURCE,
            locator=self.place or NO_PAGE,
            conditions=about,
            chosen_by="maker's figure",
            text=f"{measure.number} to {top.number}" if is_range else measure.number,
        )


def read_stages(whole: str, where: str = "maker") -> Stages:
    """A maker's figure: ``22 N*m``, ``25 to 28 lbf*ft``, ``20 N*m, then 22 N*m + 90 deg``. InputError otherwise.

    >>> [s.do for s in read_stages("22 N*m + 90 deg + 1/4 turn").steps]
    ['tighten to 22 N*m', 'turn 90 deg more', 'turn 1/4 turn more']
    """
    steps = tuple(_step(part.strip(), whole, where) for part in _BETWEEN.split(whole))
    if len(steps) > 9:
        raise InputError(whole[:60], where, "more stages than a page holds", (), "give nine at the most")
    return Stages(steps)


def _step(part: str, whole: str, where: str) -> Stage:
    folded = part.casefold()
    if folded in ("yield", "to yield", "until yield"):
        return Stage(YIELD)
    kind = ""
    for word in ("back off", "loosen"):
        if folded.startswith(word):
            kind, part = BACK, part[len(word) :].strip()
    number, unit = units.split_quantity(part)
    span = _RANGE.fullmatch(part) if " to " in part else None
    try:
        if span is not None:
            high = _measure(span[2], where)
            low = _measure(part[: span.start(2) - 4].strip(), where, high.unit)
            return Stage(kind or _kind(high), low, _above(low, high, whole, where))
        measure = _measure(f"{number} {unit}".strip(), where)
    except InputError as error:
        raise type(error)(part[:60] or "(blank)", where, error.why, error.nearest, _FORM) from None
    if measure.value <= 0:
        raise InputError(part[:60], where, "must be more than zero", (), "give the torque itself")
    return Stage(kind or _kind(measure), measure)


def _above(low: Measure, high: Measure, whole: str, where: str) -> Measure:
    if not 0 < low.to(high.unit) < float(high.value):
        raise InputError(whole[:60], where, "the upper end is not above the lower one", (), _FORM)
    return high


def _kind(measure: Measure) -> str:
    return TORQUE if units.dimension(measure.unit) == "torque" else ANGLE


def _measure(text: str, where: str, unit: str = "") -> Measure:
    """A torque or an angle; a bare lower end takes the unit of the upper one."""
    number, typed = units.split_quantity(text)
    named = typed or unit
    spelled = named if named in units.UNITS else units.TYPED.get(named, named)
    is_angle = spelled in units.UNITS and units.dimension(spelled) == "angle"
    return units.parse_measure(f"{number} {spelled}".strip(), "angle" if is_angle else "torque", where)


def read_maker(given: object) -> Maker | None:
    """The maker's figure from Python: its torque as text, (torque, source, place), or a mapping of the keys of a job.

    Read strictly.
    """
    if given is None or isinstance(given, Maker):
        return given
    if isinstance(given, str):
        return _of_mapping({"torque": given})
    if isinstance(given, tuple | list):
        if len(given) != 3 or not all(isinstance(p, str) for p in given):
            raise InputError("maker", "maker", "three texts are wanted: torque, source, place", (), _FORM)
        return Maker(read_stages(given[0]), given[1].strip(), given[2].strip())
    if not hasattr(given, "keys"):
        raise InputError("maker", "maker", "not a figure of the maker", (), _FORM)
    return _of_mapping(given)  # type: ignore[arg-type]


KEYS = ("torque", "low", "high", "source", "place", "condition", "new_bolts")


def _of_mapping(given: Mapping[str, object]) -> Maker | None:
    for key, value in given.items():
        if key not in KEYS:
            raise InputError(str(key)[:60], "maker", "not a key of a maker's figure", KEYS, "use one of these")
        if value is not None and not isinstance(value, str):
            raise InputError(str(value)[:60], f"maker.{key}", "text is wanted", (), 'write it as "22 N*m"')
    got = {k: str(v) for k, v in given.items() if v}
    stages = stages_of(got.get("torque"), got.get("low"), got.get("high"))
    if stages is None:
        return None
    new = got.get("new_bolts", "no")
    if new not in ("yes", "no"):
        raise InputError(str(new)[:60], "maker.new_bolts", "not yes or no", ("yes", "no"), "use one of these")
    texts = {k: str(got.get(k, "")).strip() for k in ("source", "place", "condition")}
    return Maker(stages, texts["source"], texts["place"], texts["condition"], new == "yes")


def stages_of(torque: str | None, low: str | None, high: str | None) -> Stages | None:
    """The stages that keys of a maker's figure say together: a range by its ends, or one figure."""
    if low and high:
        a, b = (units.parse_measure(t, "torque", "maker") for t in (low, high))
        return range_of(a, b)
    one = torque or low or high
    return read_stages(one) if one else None


def range_of(low: Measure, high: Measure) -> Stages:
    """A range by its ends; one torque where they are alike."""
    if low.unit != high.unit:
        turned = units.decimal_text(units.convert(low.value, low.unit, high.unit))
        low = units.parse_measure(f"{turned} {high.unit}", "torque", "maker")
    if low.value == high.value:
        return Stages((Stage(TORQUE, high),))
    return Stages((Stage(TORQUE, low, _above(low, high, high.text, "maker")),))
