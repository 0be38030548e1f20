"""Sheets of items that cannot be answered as they stand: what is missing, or refused, is their question."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.errors import GaugeblockError
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


class Task:
    """What an item is asked: its name, what was given, the verb of its decision and its check."""

    __slots__ = ("asked", "check", "data", "name", "verb")

    def __init__(self, name: str, asked: dict[str, str | None], verb: str, check: str, data: Refdata) -> None:
        self.name = name
        self.asked = asked
        self.verb = verb
        self.check = check
        self.data = data

    def missing(self, keys: Sequence[str]) -> Sheet:
        """The sheet of an item that lacks keys: nothing to use, and one question a key."""
        questions = [Question(FILL_IN, f"What is its {k.replace('_', ' ')}?", k, (self.check,)) for k in keys]
        check = Check(self.check, CANNOT_TELL, f"{', '.join(keys)} not given", bears=ASK)
        decision = none(self.verb, f"Give the {' and the '.join(k.replace('_', ' ') for k in keys)}.")
        return self._sheet(check, decision.do, questions)

    def refused(self, error: GaugeblockError, keys: Mapping[str, str], otherwise: str) -> Sheet:
        """The sheet of an item that the tables refuse. ``keys`` is where an error arose -> the key to correct."""
        near = f" {error.choices}." if error.nearest else ""
        do = f"{error.asked}: {error.why}.{near}"
        questions = [Question(FILL_IN, do, keys.get(error.where, otherwise), (self.check,))]
        check = Check(self.check, CANNOT_TELL, f"{error.asked}: {error.why}", bears=ASK)
        return self._sheet(check, do, questions)

    def _sheet(self, check: Check, do: str, questions: list[Question]) -> Sheet:
        decision = none(self.verb, do)
        return Sheet(self.name, self.asked, self.data, [], [check], [], decision=decision, questions=questions)


def questioned(
    title: str,
    asked: dict[str, str | None],
    doubts: Mapping[str, str],
    verb: str,
    data: Refdata,
    figures: Sequence[Figure] = (),
) -> Sheet:
    """The sheet of a bench answer that was given what is hardly meant: nothing is calculated, each key of ``doubts`` is
    asked with its words.
    """
    checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
    questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
    decision = none(verb, next(iter(doubts.values())))
    return Sheet(title, asked, data, list(figures), checks, [], decision=decision, questions=questions)
