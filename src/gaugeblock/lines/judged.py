"""What the temperature of a line is judged by: the limits of its material and of its fluid."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.decision import MOST_CANDIDATES
from gaugeblock.answer.plausible import is_plausible
from gaugeblock.answer.printing import number_only
from gaugeblock.lines import parts as line_parts
from gaugeblock.lines.found import Found
from gaugeblock.lines.keys import KEYS
from gaugeblock.value import Value, put
from gaugeblock.warmth.item import EXPANSION_JOINT, Item, class_cell, item_cell, own_cell
from gaugeblock.warmth.verdict import (
    CLOSE,
    WITHIN,
    high_end,
    in_band,
    is_close,
    judge,
    low_end,
    no_limit,
    room_of,
    stands,
    too_near,
    under,
)

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.lines.words import Words
    from gaugeblock.tables.load import Refdata

MATERIAL, FLUID = "line material's limit", "fluid's limit"
GIVEN, OPEN, MISSING, NOBODY, UNREAD = "given", "open", "missing", "nobody", "unread"


class Side(Value):
    """The material or the fluid of a line: how far it is known, its Item, and the check that is open where it is not.

    ``kind`` is ``given``; ``open`` where a class or state is; ``missing``; ``nobody`` where no limit is published;
    ``unread`` where a word is not in the tables. ``key`` is the key of the line that would settle it. ``is_spared``
    where no limit is needed of it (a metal tube).
    """

    __slots__ = ("check", "is_spared", "item", "key", "kind", "name", "own")

    name: str
    kind: str
    key: str
    item: Item | None
    check: Check | None
    own: Figure | None
    is_spared: bool

    def __init__(
        self,
        name: str,
        kind: str,
        key: str,
        item: Item | None = None,
        check: Check | None = None,
        own: Figure | None = None,
        is_spared: bool = False,
    ) -> None:
        put(self, "name", name)
        put(self, "kind", kind)
        put(self, "key", key)
        put(self, "item", item)
        put(self, "check", check)
        put(self, "own", own)
        put(self, "is_spared", is_spared)

    @property
    def limits(self) -> tuple[tuple[str, Figure, Item | None], ...]:
        """Its limit, or what it may be: each with the class or state that makes it the one, the lowest first."""
        if self.own is not None:
            return (("", self.own, self.item),)
        if self.item is None:
            return ()
        if self.item.open_key:
            return tuple((choice, i.limit, i) for choice, i in self.item.alternatives() if i.limit is not None)
        limit = self.item.limit
        return () if limit is None or self.item.klass == EXPANSION_JOINT else (("", limit, self.item),)


class Judged(Value):
    """What a line is judged by: its material and its fluid."""

    __slots__ = ("data", "fluid", "margin", "material")

    material: Side
    fluid: Side
    data: Refdata
    margin: Figure | None

    def __init__(self, material: Side, fluid: Side, data: Refdata, margin: Figure | None = None) -> None:
        put(self, "margin", margin)
        put(self, "material", material)
        put(self, "fluid", fluid)
        put(self, "data", data)

    @property
    def sides(self) -> tuple[Side, Side]:
        """Material and fluid."""
        return self.material, self.fluid

    @property
    def cautions(self) -> list[Caution]:
        """What belongs beside the limits."""
        item = self.material.item
        if not self.material.is_spared or item is None:
            return []
        text = (
            f"No limit of temperature is published for {item.cell}: the line is judged by its fluid; "
            "a coating on the tube fails first."
        )
        return [Caution(text, "note", (), "refdata")]

    @property
    def open_checks(self) -> tuple[Check, ...]:
        """What is open of material and fluid themselves."""
        return tuple(side.check for side in self.sides if side.check is not None)

    def measured(self, at: Figure, read_by: str | None) -> list[Check]:
        """The checks of a measured temperature; what an infra-red gun reads is never enough for an ``ok``."""
        out = list(self.open_checks)
        for side in self.sides:
            for choice, limit, item in side.limits[:MOST_CANDIDATES]:
                out += [_renamed(c, side, choice, read_by) for c in _held(at, limit, item, side.own is not None, self)]
        return out

    def band(self, figure: Figure, case: str) -> list[Check]:
        """The checks of an estimate: ok with its whole band and a reading's margin, not ok with its likely value,
        else cannot tell.

        Inputs without a range give no band, and never an ok.
        """
        found = [(side, *entry) for side in self.sides for entry in side.limits[:MOST_CANDIDATES]]
        return [_in_band(*entry, figure, case, self.margin) for entry in found]

    @property
    def limits(self) -> list[Figure]:
        """What material and fluid stand, what may be it included."""
        return [limit for side in self.sides for _, limit, _ in side.limits[:MOST_CANDIDATES]]

    @property
    def lowest(self) -> Figure | None:
        """The lowest limit that stands whatever is open; None where nothing judges."""
        ends = [(low_end(f, "degC"), f) for side in self.sides for f in _living(side)]
        return min(ends, key=lambda pair: pair[0])[1] if ends else None


def _living(side: Side) -> list[Figure]:
    found = side.limits[:1]
    return [f for _, limit, item in found for f in (limit, *(item.stricter(limit) if item and not side.own else ()))]


def _held(at: Figure, limit: Figure, item: Item | None, is_own: bool, judged: Judged) -> list[Check]:
    """The checks of a temperature against a limit of the tables, or one that the maker gave."""
    margin = judged.margin
    if item is not None and not is_own:
        return judge(item, at, "measured", margin=margin)
    end = low_end(limit, at.unit)
    whose = "its maker's limit" if limit.basis == "maker" else "the limit given"
    said = f"measured {at.text} {at.unit}; {whose} is {limit.text} {limit.unit}"
    result = NOT_OK if high_end(at, at.unit) > end * (1 + 1e-9) else OK
    bounds = Bound(end, at.unit, "max", limit), Bound(high_end(at, at.unit), at.unit, figure=at)
    if result == OK and margin is not None and is_close(end, high_end(at, at.unit), at.unit, room_of(margin)[0]):
        wanted = under(limit, margin, judged.data)
        bound = Bound(units.in_unit(wanted.typical, wanted.unit, at.unit), at.unit, "max", wanted)
        return [Check(WITHIN, NOT_OK, f"{said}: {too_near(margin)}", bound, bounds[1])]
    if result == OK and margin is None and is_close(end, high_end(at, at.unit), at.unit):
        return [Check(WITHIN, CANNOT_TELL, f"{said}: less than {CLOSE} is left", *bounds)]
    return [Check(WITHIN, result, said if result == OK else f"{said}: too hot", *bounds)]


def _renamed(check: Check, side: Side, choice: str, read_by: str | None) -> Check:
    about = side.name if check.name == WITHIN else check.name
    name = f"measured: {about}" + (f" ({choice})" if choice else "")
    check = check.replace(name=name, subject=about, case=choice or "measured")
    if choice:
        check = check.replace(bears=INFORM)  # the choice itself is asked, with what comes of each
    if read_by == "infra-red" and check.result == OK:
        low = "an infra-red gun reads low on bright metal: read it again by crayon, paint or thermocouple"
        check = check.replace(result=CANNOT_TELL, reason=f"{check.reason}; {low}")
    return check


def _in_band(
    side: Side,
    choice: str,
    limit: Figure,
    item: Item | None,
    figure: Figure,
    case: str,
    margin: Figure | None = None,
) -> Check:
    unit = figure.unit
    end = low_end(limit, unit)
    others = item.stricter(limit) if item is not None and side.own is None else []
    strictest = min([end, *(low_end(f, unit) for f in others)])
    whose = "its maker's limit" if limit.basis == "maker" else "the limit given"
    what = f"{whose} is {limit.text} {limit.unit}" if item is None or side.own else stands(item, limit, unit)
    result, said = in_band(figure, end, strictest, what, margin)
    high = high_end(figure, unit)
    required, actual = Bound(end, unit, "max", limit), Bound(high, unit, figure=figure)
    left = (end - high) / end if end else None
    name = f"{case}: {side.name}" + (f" ({choice})" if choice else "")
    bears = INFORM if choice else STOP  # a choice is asked itself, with what comes of each
    return Check(name, result, said, required, actual, left, subject=side.name, case=case, bears=bears)


def _open(name: str, why: str, bears: str = ASK) -> Check:
    return Check(name, CANNOT_TELL, why, subject=name, bears=bears)


def _material(words: Words) -> Side:
    line, data = words.line, words.data
    own = line.figure("line_limit", data)
    key = "material" if line.has("material") else "class"
    if not line.has(key):
        if own is not None:
            return Side(MATERIAL, GIVEN, "line_limit", own=own)
        is_asked = line.has("service") or not line.has("fluid")
        check = _open(MATERIAL, "the material or class of the line is not given") if is_asked else None
        return Side(MATERIAL, MISSING, "material", check=check)
    side = _side(words, MATERIAL, key, "class" if key == "material" else "", "state", own)
    item = side.item
    if item is not None and line_parts.is_metal(item.cell) and not side.limits and not item.open_key:
        return side.replace(check=None, is_spared=True)
    return side


def _fluid(words: Words) -> Side:
    line = words.line
    own = line.figure("fluid_limit", words.data)
    if line.has("fluid"):
        side = _side(words, FLUID, "fluid", "", "fluid_state", own)
        if side.kind == NOBODY and side.check is not None and not _is_class_to_name(side.item):
            return side.replace(check=side.check.replace(bears=INFORM))
        return side
    if own is not None:
        return Side(FLUID, GIVEN, "fluid_limit", own=own)
    is_asked = line.has("service") or not (line.has("material") or line.has("class"))
    check = _open(FLUID, "the fluid is not given") if is_asked else None
    return Side(FLUID, MISSING, "fluid", check=check)


def _is_class_to_name(item: Item | None) -> bool:
    """Whether a fluid is one of a family whose classes have limits: the class on the bottle settles it."""
    return item is not None and item.cell.startswith("brake fluid")


def _side(words: Words, name: str, key: str, class_key: str, state_key: str, own: Figure | None) -> Side:
    """Material or fluid of a key with its class and state."""
    place = words.read(key, lambda typed: item_cell(typed, words.data))
    if place is None:
        return Side(name, UNREAD if own is None else GIVEN, key, own=own)
    table, cell, klass = place
    if class_key:
        klass = words.read(class_key, lambda typed: class_cell(table, cell, typed, words.data)) or klass
    state = words.read(state_key, lambda typed: own_cell(table, cell, "state", typed, words.data))
    item = Item(table, cell, klass, state, words.data)
    if own is not None:
        return Side(name, GIVEN, key, item, own=_beside(own, item))
    if item.open_key and item.alternatives():
        open_key = state_key if item.open_key == "state" else "class"
        why = f"the answer depends on the {item.open_key}: {', '.join(item.choices)}"
        return Side(name, OPEN, open_key, item, _open(name, why))
    if item.limit is None or item.klass == EXPANSION_JOINT:
        why = no_limit(item)
        if item.klass == EXPANSION_JOINT:
            why = f"only an expansion joint's limit is published for {item.cell}: that does not judge a hose"
        return Side(name, NOBODY, "line_limit" if name == MATERIAL else "fluid_limit", item, _open(name, why))
    return Side(name, GIVEN, key, item)


def _beside(own: Figure, item: Item) -> Figure:
    """A limit that is stated, with what the tables have of the item among the others."""
    table = None if item.open_key else item.limit
    return own if table is None else own.replace(others=(table.replace(chosen_by="basis"),))


def judged_by(words: Words) -> Judged:
    """What the words of a line say that it is judged by; a margin that is hardly meant is asked, and judges nothing."""
    margin, data = words.line.span("margin"), words.data
    is_meant = margin is not None and all(
        is_plausible(end, KEYS["margin"].quantity, data) for end in (margin.low, margin.high)
    )
    return Judged(_material(words), _fluid(words), data, words.line.figure("margin", data) if is_meant else None)


def untested(judged: Judged) -> Found:
    """The limits where there is no temperature to hold against them, neither read nor estimated."""
    checks = []
    for side in judged.sides:
        for choice, limit, item in side.limits[:MOST_CANDIDATES]:
            what = item.said if item is not None else "the maker's limit"
            said = f"{number_only(limit, judged.data)} for {what}; no temperature is measured or can be estimated"
            bound = Bound(limit.least, limit.unit, "max", limit)
            checks.append(Check(side.name, CANNOT_TELL, said, bound, subject=side.name, case=choice, bears=INFORM))
    return Found((), checks)
