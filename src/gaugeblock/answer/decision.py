"""Decision: what an answer comes to - use this figure, ask first, stop, or nobody has it. Worked out once, shown by
all views.
"""

from __future__ import annotations

from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check

USE, ASK, STOP, NONE = KINDS = ("use", "ask", "stop", "none")
MOST_CANDIDATES = 3
NEW_BOLTS_FIRST = "fit new bolts"  # a step of a tightening that tightens nothing


class Candidate(Value):
    """A figure that may be the one: ``when`` (the condition that makes it so) and ``then`` (what comes of it).

    ``plus`` is what is done after it, and stands beside the number wherever that is shown: ``+ 90 deg``.
    """

    __slots__ = ("figure", "plus", "then", "when")

    figure: Figure
    when: str
    then: str
    plus: str

    def __init__(self, figure: Figure, when: str = "", then: str = "", plus: str = "") -> None:
        put(self, "figure", figure)
        put(self, "when", when)
        put(self, "then", then)
        put(self, "plus", plus)


class Decision(Value):
    """What to do: ``kind``, ``verb`` (SET, CUT, KEEP UNDER ...), the candidates, the names of the checks that
    decided, one sentence.

    ``use`` has one candidate, ``ask`` up to three with the safer first, ``stop`` what is refused or required, ``none``
    none.
    """

    __slots__ = ("because", "candidates", "do", "kind", "verb")

    kind: str
    verb: str
    candidates: tuple[Candidate, ...]
    because: tuple[str, ...]
    do: str

    def __init__(
        self, kind: str, verb: str, candidates: Sequence[Candidate], because: Sequence[str] = (), do: str = ""
    ) -> None:
        put(self, "kind", kind)
        put(self, "verb", verb)
        put(self, "candidates", tuple(candidates))
        put(self, "because", tuple(because))
        put(self, "do", do)

    @property
    def figures(self) -> tuple[Figure, ...]:
        """The figures of the candidates."""
        return tuple(c.figure for c in self.candidates)

    @property
    def figure(self) -> Figure | None:
        """The one figure to use; None where there is none, or more than one."""
        return self.candidates[0].figure if self.kind == USE else None

    def as_dict(self) -> dict[str, object]:
        """For JSON."""
        return {
            "kind": self.kind,
            "verb": self.verb,
            "figures": [c.figure.id for c in self.candidates],
            "when": [c.when for c in self.candidates],
            "then": [c.then for c in self.candidates],
            **({"plus": plus} if any(plus := [c.plus for c in self.candidates]) else {}),
            "because": list(self.because),
            "do": self.do,
        }


def fact(figure: Figure) -> str:
    """What stands in place of a verb before a figure that is only read: its quantity."""
    return figure.quantity.replace("_", " ").upper()


def use(verb: str, figure: Figure, do: str = "", because: Sequence[str] = ()) -> Decision:
    """Use this one figure; without a verb it is a fact, called by its quantity."""
    return Decision(USE, verb or fact(figure), (Candidate(figure),), because, do)


def ask(verb: str, candidates: Sequence[Candidate], because: Sequence[str], do: str) -> Decision:
    """Ask first: one to three candidates, the safer first."""
    return Decision(ASK, verb, candidates[:MOST_CANDIDATES], because, do)


def stop(verb: str, candidates: Sequence[Candidate], because: Sequence[str], do: str) -> Decision:
    """Stop: what is refused, or what is required instead."""
    return Decision(STOP, verb, candidates, because, do)


def none(verb: str, do: str) -> Decision:
    """Nobody has the number."""
    return Decision(NONE, verb, (), (), do)


def decided(verb: str, figure: Figure | None, checks: Sequence[Check], do: str = "") -> Decision:
    """The plain case: a check that stops, then one that asks, else the figure is used; without a figure there is none.

    An answer with candidates of its own makes them itself. Without a verb the figure is a fact, called by its quantity.
    """
    if figure is not None:
        verb = verb or fact(figure)
    own = [] if figure is None else [Candidate(figure)]
    stops = [c for c in checks if c.stops]
    if stops:
        return stop(verb, own, [c.name for c in stops], do or stops[0].reason)
    if figure is None:
        return none(verb, do)
    asks = [c for c in checks if c.asks]
    if asks:
        return ask(verb, own, [c.name for c in asks], do or asks[0].reason)
    return use(verb, figure, do)
