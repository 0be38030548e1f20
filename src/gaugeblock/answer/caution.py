"""Caution: a warning printed on a sheet."""

from __future__ import annotations

from gaugeblock.value import Value, put


class Caution(Value):
    """A warning printed on the sheet: its severity (``injury``, ``damage``, ``note``), figures behind it, source."""

    __slots__ = ("figures", "severity", "source", "text")

    text: str
    severity: str
    figures: tuple[str, ...]
    source: str

    def __init__(
        self, text: str, severity: str, figures: tuple[str, ...] = (), source: str = "common practice"
    ) -> None:
        put(self, "text", text)
        put(self, "severity", severity)
        put(self, "figures", figures)
        put(self, "source", source)

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {"text": self.text, "severity": self.severity, "figures": list(self.figures), "source": self.source}
