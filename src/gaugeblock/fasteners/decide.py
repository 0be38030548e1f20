"""What an answer on fasteners comes to: set or tighten to this, ask first, stop, or nobody has it."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, NONE, STOP, USE, Candidate, Decision
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.fasteners.bolt import OWN
from gaugeblock.fasteners.draft import CAN_SET, CLOSED, DRY, HOLDS, LENGTH, LOADED, PROOF, REUSE, STRETCH
from gaugeblock.value import put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.fasteners.way import Way
    from gaugeblock.fasteners.wrench import Setting
    from gaugeblock.figure import Figure

SET, TIGHTEN, TURN, CHECK = "SET", "TIGHTEN", "TURN", "CHECK"
MAKER_LINE = "The maker's figure, if you have it, settles it."
NEW_BOLTS = "Use new bolts."
_RIGHT = {
    LENGTH: "Engage more thread, or use less torque after asking the maker.",
    HOLDS: "Engage more thread.",
    REUSE: "Use a new locknut.",
    PROOF: "Use less torque.",
    DRY: "Use the torque for this condition.",
    CLOSED: "Use more clamp, more bolts, or less load.",
    LOADED: "Use a stronger bolt, more bolts, or less load.",
}


class Tightening(Decision):
    """A Decision with the ``stages`` of a maker's tightening, in order and in words; none where it is one torque."""

    __slots__ = ("stages",)

    stages: tuple[str, ...]

    def __init__(
        self,
        kind: str,
        verb: str,
        candidates: Sequence[Candidate],
        because: Sequence[str] = (),
        do: str = "",
        stages: Sequence[str] = (),
    ) -> None:
        super().__init__(kind, verb, candidates, because, do)
        put(self, "stages", tuple(stages))

    @classmethod
    def _parts(cls) -> tuple[str, ...]:
        return (*Decision._parts(), "stages")

    def as_dict(self) -> dict[str, object]:
        """For JSON, with the stages where there are any."""
        return {**super().as_dict(), **({"stages": list(self.stages)} if self.stages else {})}


_BY_TABLES = "what was typed is wrong; this is by the tables alone"
# What makes a lone candidate the one, by the check that asks.
_WHEN = {
    DRY: "the maker says that it is for these threads",
    "condition of the threads": "the maker says that it is for these threads",
    "crow-foot as typed": "at the fastener; no crow-foot is counted",
    "wanted as typed": "what was typed is wrong; this is the tables' figure",
    "given as typed": "what was typed is wrong; this is the tables' figure",
    STRETCH: "the tables' preload is wanted, and not the stretch",
    **{f"{name.replace('_', ' ')} as typed": _BY_TABLES for name in (*OWN, "grip")},
}
_WELL = "what is asked comes out well"


def verb_of(setting: Setting) -> str:
    """SET for what a wrench reads, TURN for an angle, TIGHTEN for a torque at the fastener."""
    quantity = setting.figure.quantity
    if quantity == "torque_setting":
        return SET
    return TURN if quantity.startswith("turn") or quantity == "tightening_angle" else TIGHTEN


def decide(outcomes: Sequence[tuple[Way, Setting]], draft: Draft, stages: Sequence[str] = ()) -> Decision:
    """The Decision over the ways that there are, the safer first, and all that was checked."""
    stops = [c for c in draft.checks if c.stops]
    asks = [c for c in draft.checks if c.asks]
    candidates = [Candidate(setting.figure, way.when, way.then, way.plus) for way, setting in outcomes]
    if not outcomes:
        return Decision(NONE, TIGHTEN, (), [c.name for c in asks], _to_ask(draft) or "Ask the part's maker.")
    verb = verb_of(outcomes[0][1])
    if stops:
        first = stops[0]
        do = _sentence(first.reason)
        right = _RIGHT.get(first.name, "")
        if all(c.name == CAN_SET for c in stops):
            candidates = []  # the torque is right, only the wrench is not: nothing is refused
        return Tightening(STOP, verb, candidates, [c.name for c in stops], f"{do} {right}".strip(), stages)
    if asks:
        do = _to_ask(draft, [c.name for c in asks]) or _sentence(asks[0].reason)
        candidates = [c if c.when or c.then else c.replace(when=_when(asks)) for c in candidates]
        return Tightening(ASK, verb, candidates, [c.name for c in asks], do, stages)
    do = pretty(_sentence(", then ".join(stages))) if stages else ""
    return Tightening(USE, verb, candidates, (), do, stages)


def _when(asks: Sequence[Check]) -> str:
    return next((_WHEN[c.name] for c in asks if c.name in _WHEN), _WELL)


def judged(clamp: Figure, setting: Figure, draft: Draft) -> Decision:
    """The Decision on a setting that was given to be judged: its clamp load; what is refused is the setting."""
    stops = [c for c in draft.checks if c.stops]
    asks = [c for c in draft.checks if c.asks]
    candidates = (Candidate(clamp),)
    if stops:
        candidates = (Candidate(setting),)
        do = f"{_sentence(stops[0].reason)} {_RIGHT.get(stops[0].name, '')}".strip()
        return Decision(STOP, CHECK, candidates, [c.name for c in stops], do)
    if asks:
        do = _to_ask(draft, [c.name for c in asks]) or _sentence(asks[0].reason)
        return Decision(ASK, CHECK, [c.replace(when=_when(asks)) for c in candidates], [c.name for c in asks], do)
    return Decision(USE, CHECK, candidates)


def _to_ask(draft: Draft, names: Sequence[str] = ()) -> str:
    """The question that settles the first of these checks, and the line for the maker's figure."""
    chosen = next((q for name in names for q in draft.questions if name in q.checks), None)
    if chosen is None:
        chosen = draft.questions[0] if draft.questions and not names else None
    if chosen is None:
        return ""
    maker = "" if chosen.key.startswith("maker") else f" {MAKER_LINE}"
    return pretty(f"{chosen.text}{maker}")


def _sentence(text: str) -> str:
    text = text.strip()
    return pretty(f"{capital(text)}{'' if text.endswith(('.', '?')) else '.'}")
