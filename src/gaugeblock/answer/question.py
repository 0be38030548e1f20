"""Question: what a person must do to settle one or more checks of an answer."""

from __future__ import annotations

from gaugeblock.value import Value, put

ASK_MAKER, MEASURE, FILL_IN = "ask the maker", "measure", "fill in"
KINDS = (ASK_MAKER, MEASURE, FILL_IN)


class Question(Value):
    """What must be done (``kind``: ask the maker, measure, fill in), in words, and the job key that closes it."""

    __slots__ = ("checks", "key", "kind", "text")

    kind: str
    text: str
    key: str
    checks: tuple[str, ...]

    def __init__(self, kind: str, text: str, key: str, checks: tuple[str, ...] = ()) -> None:
        put(self, "kind", kind)
        put(self, "text", text)
        put(self, "key", key)
        put(self, "checks", tuple(checks))

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {"kind": self.kind, "text": self.text, "key": self.key, "checks": list(self.checks)}
