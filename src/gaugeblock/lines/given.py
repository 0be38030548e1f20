"""What is typed of a task of several measures, read once: measures, counts, words, and what of it is doubtful."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, Decision, none, stop
from gaugeblock.answer.making import read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

    Quantities = Mapping[str, tuple[str, str]]  # key -> dimension, quantity

_MOST = 48
# Of these checks the limit is what a part has or stands: it is the part that is refused.
_PARTS = ("stroke", "lever", "rated")


class Given(Value):
    """The measures that were typed, by key; ``figure`` makes a Figure of one."""

    __slots__ = ("kinds", "measures")

    measures: dict[str, Measure]
    kinds: dict[str, tuple[str, str]]

    def __init__(self, asked: Mapping[str, str | None], kinds: Quantities, zero: tuple[str, ...] = ()) -> None:
        """Raises InputError or UnitError for what cannot be read."""
        read = {}
        for key, (dim, _) in kinds.items():
            typed = asked.get(key)
            if typed:
                read[key] = read_positive(_plain(typed.strip(), dim), dim, key, zero=key in zero)
        put(self, "measures", read)
        put(self, "kinds", dict(kinds))

    def has(self, *keys: str) -> bool:
        """Whether all of these were typed."""
        return all(k in self.measures for k in keys)

    def figure(self, key: str, data: Refdata) -> Figure | None:
        """One of them as a Figure; None where it was not typed."""
        measure = self.measures.get(key)
        return None if measure is None else stated(measure, self.kinds[key][1], key, data)

    def sure(self, key: str, data: Refdata) -> Figure:
        """As ``figure``, of one that was typed."""
        return stated(self.measures[key], self.kinds[key][1], key, data)

    def figures(self, data: Refdata) -> list[Figure]:
        """All of them."""
        return [self.sure(k, data) for k in self.measures]

    def doubts(self, data: Refdata) -> dict[str, str]:
        """Key -> what is doubtful about it, as a question."""
        out = {}
        for key, measure in self.measures.items():
            quantity = self.kinds[key][1]
            if not is_plausible(measure, quantity, data):
                span = plausible_range(quantity, data)
                meant = other_readings(measure, *span) if span is not None else ()
                said = f"{measure.text} is no usual {quantity.replace('_', ' ')}"
                out[key] = did_you_mean(said, meant)
        return out


def _plain(typed: str, dim: str) -> str:
    """A ratio without its ``:1``; a force in pounds, as shops say it."""
    if dim == "ratio":
        return typed.removesuffix(":1").strip()
    return re.sub(r"(?<=[0-9 ])(?:lbs?|pounds?)$", "lbf", typed) if dim == "force" else typed


def count_of(typed: str | None, key: str) -> Measure | None:
    """A whole number of things, as a ratio: ``2``."""
    if not typed:
        return None
    text = typed.strip()
    if not 1 <= (units.whole_number(text) or 0) <= _MOST:
        raise InputError(typed, key, f"not a count from 1 to {_MOST}", (), "write it as 2")
    return Measure(units.parse_number(text), "1", f"{text} 1")


def choice_of(typed: str | None, key: str, choices: Mapping[str, tuple[str, ...]]) -> str | None:
    """One of the choices, by its own name or another word for it."""
    if not typed:
        return None
    said = " ".join(typed.casefold().replace(",", " ").split())
    for choice, others in choices.items():
        if said in (choice.replace(",", ""), *others):
            return choice
    raise InputError(typed, key, f"not a {key}", tuple(choices), "use one of these")


def stopped(verb: str, stops: Sequence[Check]) -> Decision:
    """Stop: what the first of these checks refuses, and what it requires instead."""
    first = stops[0]
    wrong, right = first.actual, first.required
    if first.subject in _PARTS:
        wrong, right = right, wrong
    ends = ((right, "required"), (wrong, "refused"))
    shown = [Candidate(b.figure, "", then) for b, then in ends if b is not None and b.figure is not None]
    do = f"{capital(first.reason)}."
    return stop(verb, shown, [c.name for c in stops], do)


def doubtful(
    title: str,
    verb: str,
    doubts: Mapping[str, str],
    asked: Mapping[str, str | None],
    given: list[Figure],
    data: Refdata,
) -> Sheet:
    """The Sheet of what was typed and cannot be meant: nothing to use, one question each."""
    checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in doubts.items()]
    questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in doubts.items()]
    decision = none(verb, next(iter(doubts.values())))
    return Sheet(title, asked, data, given, checks, [], decision=decision, questions=questions)


def lacking(
    title: str, verb: str, needs: Mapping[str, str], asked: Mapping[str, str | None], given: list[Figure], data: Refdata
) -> Sheet:
    """The Sheet of a task that lacks what it cannot do without; ``needs`` is key -> what is to be asked."""
    check = Check(f"{verb.lower()} worked out", CANNOT_TELL, f"{', '.join(needs)} not given", bears=ASK)
    questions = [Question(FILL_IN, said, k, (check.name,)) for k, said in needs.items()]
    do = f"Give the {' and the '.join(k.replace('_', ' ') for k in needs)}."
    return Sheet(title, asked, data, given, [check], [], decision=none(verb, do), questions=questions)
