"""A number that another reader takes, where it can be meant at all."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

    from gaugeblock.answer.asking import Hit, Reader
    from gaugeblock.tables.load import Refdata


class Limited:
    """The hits of a reader that a condition ``holds`` for, of the words, the place and the hit; it has no words of its
    own, for it is a number.
    """

    __slots__ = ("_holds", "_reader", "doubt")

    def __init__(self, reader: Reader, holds: Callable[[tuple[str, ...], int, Hit], bool]) -> None:
        self._reader = reader
        self._holds = holds
        self.doubt = 0

    def phrases(self, _data: Refdata) -> Mapping[str, str]:
        """None: the topic knows the words that stand beside it."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: it is a number."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """What the reader takes, where the condition holds."""
        return (hit for hit in self._reader.take(words, at, data) if self._holds(words, at, hit))
