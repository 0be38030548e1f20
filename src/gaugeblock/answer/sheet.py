"""Sheet: one answer, as the command line, the packet and Python all get it."""

from __future__ import annotations

from gaugeblock.answer.printing import printed
from gaugeblock.figure import Figure, derived_number

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

OK, NOT_OK, CANNOT_TELL = "ok", "not ok", "cannot tell"


class Bound:
    """What a check requires or finds: a number with its unit, the side of a requirement, and the figure behind it."""

    __slots__ = ("figure", "side", "unit", "value")

    def __init__(self, value: float, unit: str, side: str = "", figure: Figure | None = None) -> None:
        self.value = value
        self.unit = unit
        self.side = side
        self.figure = figure

    def as_dict(self) -> dict[str, object]:
        """For JSON; ``side`` only where there is one."""
        out: dict[str, object] = {"value": derived_number(self.value), "unit": self.unit}
        if self.side:
            out["side"] = self.side
        out["figure"] = self.figure.id if self.figure is not None else None
        return out


class Check:
    """A question with the answer ``ok``, ``not ok`` or ``cannot tell`` and its reason."""

    __slots__ = ("actual", "margin", "name", "reason", "required", "result")

    def __init__(
        self,
        name: str,
        result: str,
        reason: str,
        required: Bound | None = None,
        actual: Bound | None = None,
        margin: float | None = None,
    ) -> None:
        self.name = name
        self.result = result
        self.reason = reason
        self.required = required
        self.actual = actual
        self.margin = margin

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {
            "name": self.name,
            "result": self.result,
            "required": self.required.as_dict() if self.required else None,
            "actual": self.actual.as_dict() if self.actual else None,
            "margin": derived_number(self.margin) if self.margin is not None else None,
            "reason": self.reason,
        }


def at_most(name: str, actual: Bound, limit: Bound, reason: str) -> Check:
    """A check that ``actual`` is not over ``limit`` (same unit); the margin is the room left as a share of the limit."""
    limit.side = "max"
    result = OK if actual.value <= limit.value * (1 + 1e-9) else NOT_OK
    return Check(
        name, result, reason, limit, actual, (limit.value - actual.value) / limit.value if limit.value else None
    )


def at_least(name: str, actual: Bound, limit: Bound, reason: str) -> Check:
    """A check that ``actual`` is not under ``limit`` (same unit); the margin is the excess as a share of the limit."""
    limit.side = "min"
    result = OK if actual.value >= limit.value * (1 - 1e-9) else NOT_OK
    return Check(
        name, result, reason, limit, actual, (actual.value - limit.value) / limit.value if limit.value else None
    )


class Caution:
    """A warning printed on the sheet: its severity (``injury``, ``damage``, ``note``), figures behind it, source."""

    __slots__ = ("figures", "severity", "source", "text")

    def __init__(
        self, text: str, severity: str, figures: tuple[str, ...] = (), source: str = "common practice"
    ) -> None:
        self.text = text
        self.severity = severity
        self.figures = figures
        self.source = source

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {"text": self.text, "severity": self.severity, "figures": list(self.figures), "source": self.source}


class Drawing:
    """An SVG picture of a sheet with its title; ``page`` is ``landscape`` or ``portrait`` for one that prints as a whole page."""

    __slots__ = ("page", "svg", "title")

    def __init__(self, title: str, svg: str, page: str = "") -> None:
        self.title = title
        self.svg = svg
        self.page = page


class Sheet:
    """Figures (answers only, the governing one first), checks, cautions and drawings of one answer."""

    __slots__ = ("asked", "cautions", "checks", "data", "drawings", "figures", "title")

    def __init__(
        self,
        title: str,
        asked: dict[str, str | None],
        data: Refdata,
        figures: list[Figure],
        checks: list[Check],
        cautions: list[Caution],
        drawings: list[Drawing] | None = None,
    ) -> None:
        self.title = title
        self.asked = asked
        self.data = data
        self.figures = figures
        self.checks = checks
        self.cautions = cautions
        self.drawings = drawings or []

    @property
    def governing(self) -> Figure | None:
        """The first figure; None on a sheet that has none."""
        return self.figures[0] if self.figures else None

    def figure(self, quantity: str) -> Figure:
        """The first figure of a quantity; KeyError when the sheet has none."""
        for figure in self.figures:
            if figure.quantity == quantity:
                return figure
        raise KeyError(quantity)

    @property
    def worst(self) -> str:
        """``not ok`` if any check is, else ``cannot tell`` if any is, else ``ok``."""
        results = {c.result for c in self.checks}
        return NOT_OK if NOT_OK in results else CANNOT_TELL if CANNOT_TELL in results else OK

    def as_dict(self) -> dict[str, object]:
        """The sheet in the JSON of the contract."""
        made: dict[int, dict[str, object]] = {}
        return {
            "asked": self.asked,
            "data_release": self.data.release,
            "figures": [figure_dict(f, self.data, made) for f in self.figures],
            "checks": [c.as_dict() for c in self.checks],
            "cautions": [c.as_dict() for c in self.cautions],
        }


def figure_dict(figure: Figure, data: Refdata, made: dict[int, dict[str, object]] | None = None) -> dict[str, object]:
    """A Figure in the JSON of the contract: every key present, null when not given, derived numbers at 12 digits.

    ``made`` holds the figures of one sheet by identity: an input of ten answers is worked out once.
    """
    made = {} if made is None else made
    got = made.get(id(figure))
    if got is None:
        got = made[id(figure)] = _figure_dict(figure, data, made)
    return got


def _figure_dict(figure: Figure, data: Refdata, made: dict[int, dict[str, object]]) -> dict[str, object]:

    def number(value: float | None) -> float | int | None:
        if value is None:
            return None
        if figure.basis == "derived":
            value = derived_number(value)
        return int(value) if value.is_integer() and abs(value) < 1e15 else value

    return {
        "id": figure.id,
        "quantity": figure.quantity,
        "value": number(figure.value),
        "low": number(figure.low),
        "high": number(figure.high),
        "unit": figure.unit,
        "side": figure.side,
        "basis": figure.basis,
        "checked": figure.checked or None,
        "source": figure.source or None,
        "locator": figure.locator or None,
        "conditions": figure.conditions or None,
        "note": figure.note or None,
        "since": figure.since or None,
        "key": figure.key,
        "standing": figure.standing or None,
        "chosen_by": figure.chosen_by or None,
        "evidence": figure.evidence.as_dict(),
        "rule": figure.rule.as_dict() if figure.rule else None,
        "inputs": [figure_dict(f, data, made) for f in figure.inputs],
        "others": [figure_dict(f, data, made) for f in figure.others],
        "printed": printed(figure, data),
    }
