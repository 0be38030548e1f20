"""Check: a question that an answer asks of itself, with its result, what is required and what is found."""

from __future__ import annotations

from gaugeblock.figure import Figure, derived_number
from gaugeblock.value import Value, put

OK, NOT_OK, CANNOT_TELL = "ok", "not ok", "cannot tell"
STOP, ASK, INFORM = "stop", "ask", "inform"


class Bound(Value):
    """What a check requires or finds: a number with its unit, the side of a requirement, and the figure behind it."""

    __slots__ = ("figure", "side", "unit", "value")

    value: float
    unit: str
    side: str
    figure: Figure | None

    def __init__(self, value: float, unit: str, side: str = "", figure: Figure | None = None) -> None:
        put(self, "value", value)
        put(self, "unit", unit)
        put(self, "side", side)
        put(self, "figure", figure)

    @property
    def is_firm(self) -> bool:
        """Whether a verdict may rest on it: no habit and no memory behind it; a bare number is geometry or physics."""
        if self.figure is None:
            return True
        weakest = self.figure.evidence
        return weakest.basis != "common practice" and weakest.checked != "memory"

    def as_dict(self) -> dict[str, object]:
        """For JSON; ``side`` only where there is one."""
        out: dict[str, object] = {"value": derived_number(self.value), "unit": self.unit}
        if self.side:
            out["side"] = self.side
        out["figure"] = self.figure.id if self.figure is not None else None
        return out


class Check(Value):
    """A question with the answer ``ok``, ``not ok`` or ``cannot tell`` and its reason.

    ``subject`` is what it is about and ``case`` when it holds (hot soak, bend 2); ``bears`` is what it may do to the
    answer: ``stop`` the work, ``ask`` before the number is used, or ``inform``.
    """

    __slots__ = ("actual", "bears", "case", "margin", "name", "reason", "required", "result", "subject")

    name: str
    result: str
    reason: str
    required: Bound | None
    actual: Bound | None
    margin: float | None
    subject: str
    case: str
    bears: str

    def __init__(
        self,
        name: str,
        result: str,
        reason: str,
        required: Bound | None = None,
        actual: Bound | None = None,
        margin: float | None = None,
        *,
        subject: str = "",
        case: str = "",
        bears: str = STOP,
    ) -> None:
        put(self, "name", name)
        put(self, "result", result)
        put(self, "reason", reason)
        put(self, "required", required)
        put(self, "actual", actual)
        put(self, "margin", margin)
        put(self, "subject", subject or name)
        put(self, "case", case)
        put(self, "bears", bears)

    @property
    def stops(self) -> bool:
        """Whether it stops the work: it fails, may stop, and rests on firm figures (habit and memory only ask)."""
        return self.result == NOT_OK and self.bears == STOP and self.is_firm

    @property
    def asks(self) -> bool:
        """Whether something must be settled before the number is used."""
        return self.result != OK and self.bears != INFORM and not self.stops

    @property
    def is_firm(self) -> bool:
        """Whether both what is required and what is found may carry a verdict."""
        return all(b is None or b.is_firm for b in (self.required, self.actual))

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {
            "name": self.name,
            "subject": self.subject,
            "case": self.case or None,
            "bears": self.bears,
            "result": self.result,
            "required": self.required.as_dict() if self.required else None,
            "actual": self.actual.as_dict() if self.actual else None,
            "margin": derived_number(round(self.margin, 12)) if self.margin is not None else None,
            "reason": self.reason,
        }


def at_most(name: str, actual: Bound, limit: Bound, reason: str, **more: str) -> Check:
    """A check that ``actual`` is not over ``limit`` (same unit); the margin is the room left as a share of the
    limit.
    """
    limit = limit.replace(side="max")
    result = OK if actual.value <= limit.value * (1 + 1e-9) else NOT_OK
    margin = (limit.value - actual.value) / limit.value if limit.value else None
    return Check(name, result, reason, limit, actual, margin, **more)


def at_least(name: str, actual: Bound, limit: Bound, reason: str, **more: str) -> Check:
    """A check that ``actual`` is not under ``limit`` (same unit); the margin is the excess as a share of the limit."""
    limit = limit.replace(side="min")
    result = OK if actual.value >= limit.value * (1 - 1e-9) else NOT_OK
    margin = (actual.value - limit.value) / limit.value if limit.value else None
    return Check(name, result, reason, limit, actual, margin, **more)
