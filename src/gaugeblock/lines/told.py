"""A pattern whose value has another number than was typed: what was typed is told with it."""

from __future__ import annotations

from gaugeblock.answer.asking import Hit, Shaped

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata


class Told(Shaped):
    """As ``Shaped``; what was typed stands behind what it was read as: ``245 N by hand, of 25 kilos``."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, with what was typed."""
        for hit in super().take(words, at, data):
            typed = " ".join(words[at : at + hit.count])
            yield Hit(hit.count, hit.value, f"{hit.said} ({typed})", hit.doubt)
