"""Words: the words of a line read against the tables; one that cannot be read stops a look-up, and is a question in a
job.
"""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.lines.found import Found, asking
from gaugeblock.lines.keys import label_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import TypeVar

    from gaugeblock.lines.keys import Line
    from gaugeblock.tables.load import Refdata

    T = TypeVar("T")


class Words:
    """The words of a ``line``; ``unread`` are the keys that could not be read where the line is one of a job."""

    __slots__ = ("data", "is_job", "line", "unread")

    def __init__(self, line: Line, data: Refdata, is_job: bool) -> None:
        self.line = line
        self.data = data
        self.is_job = is_job
        self.unread: dict[str, LookupMiss | InputError] = {}

    def read(self, key: str, make: Callable[[str], T]) -> T | None:
        """What ``make`` makes of the word of a key; None when it was not given, or could not be read in a job."""
        typed = self.line.word(key)
        if typed is None or key in self.unread:
            return None
        try:
            return make(typed)
        except (LookupMiss, InputError) as refusal:
            if not self.is_job:
                raise
            self.unread[key] = refusal
            return None

    def found(self) -> Found:
        """An open check and its question for each word that could not be read, with the nearest that can."""
        out = Found()
        for key, refusal in self.unread.items():
            near = f"; nearest: {', '.join(refusal.nearest)}" if refusal.nearest else ""
            text = f"{self.line.word(key)}: {refusal.why}{near}"
            check = Check(label_of(key), CANNOT_TELL, text, subject=key, bears=ASK)
            out += asking(check, FILL_IN, f"Correct the {label_of(key)}. {capital(text)}.", key)
        return out
