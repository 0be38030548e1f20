"""The temperature of exhaust gas, as people say it."""

from __future__ import annotations

from gaugeblock.answer.said_units import value_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from gaugeblock.answer.asking import Hit, Reader
    from gaugeblock.tables.load import Refdata

_LEAST_GAS = 100  # degrees on either scale: no exhaust gas under way is colder


class Hot:
    """A temperature that the gas of an exhaust can have: a bare number is its pipe, and not 2.5 degrees."""

    __slots__ = ("_reader", "doubt")

    def __init__(self, reader: Reader) -> None:
        self._reader = reader
        self.doubt = 0

    def phrases(self, _data: Refdata) -> Mapping[str, str]:
        """None of its own: a number has no words."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: it is a number."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The temperature, where it is one of hot gas."""
        for hit in self._reader.take(words, at, data):
            if value_of(hit.value.partition(" ")[0]) >= _LEAST_GAS:
                yield hit
