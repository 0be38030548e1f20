"""Figure: a number that knows where it came from. Frozen; evidence by the weakest link; no I/O."""

from __future__ import annotations

from math import isfinite

from gaugeblock.errors import DataError
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from pint import Quantity

BASES = ("published", "maker", "measured", "stated", "derived", "common practice")
CHECKED = ("primary", "quoted", "memory")
STANDINGS = ("", "misprint", "superseded", "withdrawn")
SOURCED = ("published", "maker", "measured")

# What a bench card says beside the number.
TRUST = {
    "published": "PUBLISHED",
    "maker": "MAKER",
    "measured": "SHOP",
    "stated": "GIVEN",
    "common practice": "HABIT",
    "derived": "CALCULATED",
}


def weakness(basis: str, checked: str) -> int:
    """How weak one link is: 0 for text that was read, up to 3 for common practice."""
    if basis == "common practice":
        return 3
    if checked == "memory":
        return 2
    return 1 if checked == "quoted" else 0


class Evidence(Value):
    """The weakest link behind a figure: its ``basis``, its ``checked`` mark and the ``id`` of the row or rule."""

    __slots__ = ("basis", "checked", "id")

    basis: str
    checked: str
    id: str

    def __init__(self, basis: str, checked: str, id: str) -> None:
        put(self, "basis", basis)
        put(self, "checked", checked)
        put(self, "id", id)

    def as_dict(self) -> dict[str, str | None]:
        """For JSON."""
        return {"basis": self.basis, "checked": self.checked or None, "id": self.id}


class Rule(Value):
    """A named formula behind a derived figure: name, expression, source and place, and how it was checked."""

    __slots__ = ("basis", "checked", "expression", "locator", "name", "source")

    name: str
    expression: str
    basis: str
    checked: str
    source: str
    locator: str

    def __init__(self, name: str, expression: str, basis: str, checked: str, source: str, locator: str) -> None:
        put(self, "name", name)
        put(self, "expression", expression)
        put(self, "basis", basis)
        put(self, "checked", checked)
        put(self, "source", source)
        put(self, "locator", locator)

    def as_dict(self) -> dict[str, str | None]:
        """For JSON."""
        return {"name": self.name, "source": self.source or None, "locator": self.locator or None}


class _Open:
    """A Figure while it is made: its slots, and nothing that freezes them. To fill this and to make a Figure of it then
    takes a third of the time that ``put`` takes, measured; a first answer makes many.
    """

    __slots__: tuple[str, ...] = (
        "_below",
        "_evidence",
        "basis",
        "checked",
        "chosen_by",
        "conditions",
        "high",
        "id",
        "inputs",
        "key",
        "locator",
        "low",
        "note",
        "others",
        "quantity",
        "rule",
        "side",
        "since",
        "source",
        "standing",
        "text",
        "unit",
        "value",
    )

    id: str
    quantity: str
    value: float | None
    low: float | None
    high: float | None
    unit: str
    side: str
    basis: str
    checked: str
    source: str
    locator: str
    conditions: str
    note: str
    since: str
    key: Keys
    standing: str
    chosen_by: str
    rule: Rule | None
    inputs: tuple[Figure, ...]
    others: tuple[Figure, ...]
    text: str
    _below: tuple[bool, bool]
    _evidence: Evidence | None


class Figure(Value, _Open):
    """One number with its unit, side, evidence and place.

    ``value``, ``low`` and ``high`` are floats in ``unit`` (None when not given); ``text`` is the number as its
    source prints it. ``inputs`` and ``rule`` are set on derived figures, ``others`` holds the rows that also
    answer and do not govern. A published, maker or measured figure without source and place is refused.
    """

    __slots__ = ()

    @classmethod
    def _parts(cls) -> tuple[str, ...]:
        return _Open.__slots__[2:]  # its evidence and what stands below it are worked out

    def __init__(
        self,
        id: str,
        quantity: str,
        value: float | None,
        unit: str,
        *,
        low: float | None = None,
        high: float | None = None,
        side: str = "nominal",
        basis: str,
        checked: str = "",
        source: str = "",
        locator: str = "",
        conditions: str = "",
        note: str = "",
        since: str = "",
        key: Mapping[str, str] | None = None,
        standing: str = "",
        chosen_by: str = "",
        rule: Rule | None = None,
        inputs: tuple[Figure, ...] = (),
        others: tuple[Figure, ...] = (),
        text: str = "",
    ) -> None:
        if basis in SOURCED and not (source and locator):
            raise DataError(id, "figure", f"a {basis} figure needs its source and its place", (), "give both")
        if basis == "derived" and rule is None:
            raise DataError(id, "figure", "a derived figure needs the rule it was made with", (), "name the rule")
        if value is None and low is None and high is None:
            raise DataError(id, "figure", "no value, no low and no high", (), "give at least one")
        if basis not in TRUST:
            raise ValueError(f"{id}: basis {basis!r}: no such basis; use one of {', '.join(TRUST)}")
        if value is not None and not isfinite(value):
            raise ValueError(f"{id}: value {value}: no number")
        if low is not None and (not isfinite(low) or (high is not None and low > high)):
            raise ValueError(f"{id}: low {low}: no number, or over high {high}")
        if high is not None and not isfinite(high):
            raise ValueError(f"{id}: high {high}: no number")
        put(self, "__class__", _Open)
        self.id = id
        self.quantity = quantity
        self.value = value
        self.low = low
        self.high = high
        self.unit = unit
        self.side = side
        self.basis = basis
        self.checked = checked
        self.source = source
        self.locator = locator
        self.conditions = conditions
        self.note = note
        self.since = since
        self.key = key if type(key) is Keys else Keys(key or {})
        self.standing = standing
        self.chosen_by = chosen_by
        self.rule = rule
        self.inputs = inputs
        self.others = others
        self.text = text
        self._evidence = None
        put(self, "__class__", Figure)

    def ranked(self, chosen_by: str, others: tuple[Figure, ...] = ()) -> Figure:
        """A copy that says which step of the ranking decided, and what else answers; a look-up makes one of each
        row.
        """
        return Figure(
            self.id,
            self.quantity,
            self.value,
            self.unit,
            low=self.low,
            high=self.high,
            side=self.side,
            basis=self.basis,
            checked=self.checked,
            source=self.source,
            locator=self.locator,
            conditions=self.conditions,
            note=self.note,
            since=self.since,
            key=self.key,
            standing=self.standing,
            chosen_by=chosen_by,
            rule=self.rule,
            inputs=self.inputs,
            others=others,
            text=self.text,
        )

    def __hash__(self) -> int:
        return hash((self.id, self.quantity, self.unit))

    __eq__ = Value.__eq__

    def __repr__(self) -> str:
        return f"<Figure {self.id} = {self.text or self.value} {self.unit}>"

    @property
    def typical(self) -> float:
        """The value, or the middle of low and high, or the one end there is."""
        if self.value is not None:
            return self.value
        if self.low is not None and self.high is not None:
            return (self.low + self.high) / 2
        end = self.low if self.low is not None else self.high
        if end is None:
            raise DataError(self.id, "figure", "no value", (), "")
        return end

    @property
    def least(self) -> float:
        """What is guaranteed: the value, or the low end of a range, or the one end there is."""
        return self.value if self.value is not None else self.low if self.low is not None else self.typical

    @property
    def evidence(self) -> Evidence:
        """The weakest link of this figure, its rule and all its inputs."""
        got = self._evidence
        if got is None:
            got = self._weakest()
            put(self, "_evidence", got)
        return got

    def _weakest(self) -> Evidence:
        links: list[Evidence] = []
        if self.basis != "derived":
            links.append(Evidence(self.basis, self.checked, self.id))
        links += (figure.evidence for figure in self.inputs)
        if self.basis == "derived" and self.rule is not None and (self.rule.basis != "derived" or not self.inputs):
            # after the inputs: of links alike the number counts that the rule works on, not the rule
            links.append(Evidence(self.rule.basis, self.rule.checked, f"formulas:{self.rule.name}"))
        worst: Evidence | None = None
        for link in links:
            if worst is None or weakness(link.basis, link.checked) > weakness(worst.basis, worst.checked):
                worst = link
        if worst is None:
            raise DataError(self.id, "figure", "no evidence at all", (), "")
        return worst

    @property
    def trust(self) -> str:
        """The trust word of a bench card; a derived figure adds the word of its weakest link."""
        word = TRUST[self.basis]
        if self.basis == "derived":
            word = f"{word}, {TRUST[self.evidence.basis]}"
        return f"{word} (from memory)" if self.below[0] else word

    @property
    def below(self) -> tuple[bool, bool]:
        """Whether a figure from memory, and whether a nut factor, stands here or among the inputs; looked at once."""
        try:
            return self._below
        except AttributeError:
            pass
        recalled = self.checked == "memory" or (self.rule is not None and self.rule.checked == "memory")
        rubs = self.quantity == "nut_factor"
        for figure in self.inputs:
            of_input = figure.below
            recalled, rubs = recalled or of_input[0], rubs or of_input[1]
        put(self, "_below", (recalled, rubs))
        return recalled, rubs

    @property
    def is_range(self) -> bool:
        """Whether the figure is two ends without a value between them that was given."""
        return self.value is None and self.low is not None and self.high is not None

    @property
    def quantity_value(self) -> Quantity[float]:
        """The figure as a pint Quantity in its own unit; a range is refused with ValueError: it has
        ``quantity_range``.
        """
        from gaugeblock.registry import quantity

        if self.is_range:
            raise ValueError(f"{self!r} is a range, not one number: use quantity_range")
        made: Quantity[float] = quantity(self.typical, self.unit)
        return made

    @property
    def quantity_range(self) -> tuple[Quantity[float], Quantity[float]]:
        """Low and high as pint Quantities; where one is not given, the value stands for it."""
        from gaugeblock.registry import quantity

        ends = (self.low, self.high)
        low, high = (end if end is not None else self.typical for end in ends)
        return quantity(low, self.unit), quantity(high, self.unit)

    def walk(self, seen: set[str] | None = None) -> Iterator[Figure]:
        """This figure and every input below it, each once; those whose id is ``seen`` are left out, and it is added
        to.
        """
        seen = set() if seen is None else seen
        stack = [self]
        while stack:
            figure = stack.pop()
            if figure.id in seen:
                continue
            seen.add(figure.id)
            yield figure
            stack.extend(reversed(figure.inputs))

    def trace(self, depth: int = 0) -> str:
        """The tree of figures and rules behind this one, one a line, indented."""
        what = self.text or (f"{self.value:.12g}" if self.value is not None else f"{self.low} to {self.high}")
        place = f"{self.source} {self.locator}".strip()
        if self.rule is not None:
            place = f"{self.rule.name}: {self.rule.expression} ({self.rule.source} {self.rule.locator})"
        line = (
            f"{'  ' * depth}{self.quantity} = {what} {self.unit}"
            f" [{self.basis}{', ' + self.checked if self.checked else ''}] {place}"
        )
        return "\n".join([line, *(f.trace(depth + 1) for f in self.inputs)])


def derived_number(value: float) -> float:
    """A derived float at 12 significant digits, as JSON carries it."""
    return float(f"{value:.12g}")
