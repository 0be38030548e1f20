"""How people say a maker's torque and the threads that it is for: the book says 90 N*m dry."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import END, NUMBER, Hit, Named, Shaped
from gaugeblock.fasteners.spoken import CONDITION, TORQUE_SAID, torque_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.tables.load import Refdata

_FOR = " for "
_PAPER = (
    r"(?:maker|manufacturer|(?:work ?shop |owner'?s |service |repair )?manual|handbook|book|chart|factory"
    r"|(?:maker's |data |spec |torque )?sheet|torque table|table|plate|label|sticker"
    r"|(?:wall )?(?:card|poster)(?: on the wall)?)"
)
_SAYS = (
    r"says?|said|calls? for|called for|wants?|gives?|gave|reads?|shows?|figure|spec|specs|specifies|specified|is|of"
    r"|quotes?|quoted|lists?|listed|asks? for|states?|stated|torque|puts it at|has it at|has them at|it at|it as"
    r"|to be|at|about|for (?:them|it|these|this|the bolts?)"
)
_TORQUE = rf"(?:(?P<low>{NUMBER}) ?(?:to|-) ?)?(?P<high>{NUMBER}) ?{TORQUE_SAID}"
_GIVEN = (
    r"(?:the |my )?(?:torque |tightening )?(?:figure|torque|number|value)(?: that| which)? (?:i|we)"
    r" (?:was|were|have|had|got|ve)(?: been)?(?: given| told| got)?"
)
# What may stand between the torque and the threads that it is for, and behind these.
_LEADS = r"(?:(?:for|on|with|when|if|is|it is|it's|they are|done|set)(?= |$) ?)*(?:(?:an?|the|clean|new)(?= |$) ?)*"
_TAIL = rf"(?:(?:clean )?(?:bolts?|nuts?|studs?|screws?|threads?|ones?|fasteners?)){END}"


def _stated(match: re.Match[str]) -> str:
    high = torque_of(match["high"], match["unit"])
    return f"{torque_of(match['low'], match['unit']).partition(' ')[0]} to {high}" if match["low"] else high


def _dry(match: re.Match[str]) -> str:
    return f"{_stated(match)}{_FOR}dry"


def _for_threads(match: re.Match[str]) -> str:
    return f"{_stated(match)}{_FOR}{'dry' if match['threads'] == 'dry' else 'oiled'}"


class OfMaker:
    """A maker's torque, with the threads that it is for where they are said next to it: ``90 N*m for dry``."""

    __slots__ = ("_conditions", "_torques")

    def __init__(self) -> None:
        cue = (
            "maker",
            "manu",
            "book",
            "factory",
            "sheet",
            "chart",
            "table",
            "plate",
            "label",
            "sticker",
            "card",
            "poster",
        )
        dry = r"(?:dry|unlubricated) (?:torque|figure|spec|value|number)"
        self._torques = (
            Shaped(
                rf"(?:the |my |its |his |her |our )?{_PAPER}(?:'s)? {dry}(?: (?:{_SAYS}))* {_TORQUE}",
                _dry,
                cue=("dry", "unlub"),
            ),
            Shaped(
                rf"(?:the |my |its |his |her |our )?(?:dry|unlubricated) {_PAPER}(?:'s)?(?: (?:{_SAYS}))* {_TORQUE}",
                _dry,
                cue=("dry", "unlub"),
            ),
            Shaped(rf"(?:the )?{dry}(?: (?:{_SAYS}))* {_TORQUE}", _dry, cue=("dry", "unlub")),
            Shaped(
                rf"{_GIVEN}(?: (?:is|was|it is|it's|for))*"
                rf" (?P<threads>dry|oiled|greased)(?: (?:threads?|bolts?|ones?))?(?: (?:at|is|of|and|it's))* {_TORQUE}",
                _for_threads,
                cue=("given", "told", "got", "have", "had"),
            ),
            Shaped(
                rf"(?:the |my |its |his |her |our )?{_PAPER}(?:'s)?(?: (?:{_SAYS}))* {_TORQUE}",
                _stated,
                cue=cue,
            ),
            Shaped(rf"(?:an? |the |my )?{_TORQUE} dry (?:spec|figure|value)", _dry, cue=("dry",)),
            Shaped(rf"(?:an? |the |my )?{_TORQUE} (?:spec|figure|book value)", _stated, cue=("spec", "figure", "book")),
            Shaped(
                rf"{_GIVEN}(?: (?:is|was|it is|it's|of))* {_TORQUE}",
                _stated,
                cue=("given", "told", "got", "have", "had"),
            ),
        )
        self._conditions: tuple[Named, ...] = tuple(one for one in CONDITION if isinstance(one, Named))

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """None: what is said of a maker are words of everyday speech."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: a torque is whatever the maker says."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The torque, and the threads that it is for; a dry chart is not parted from its dry."""
        if at and words[at - 1] in ("dry", "unlubricated") and re.fullmatch(_PAPER, words[at]):
            return
        for one in self._torques:
            for hit in one.take(words, at, data):
                if _FOR in hit.value:
                    yield Hit(hit.count, hit.value, f"maker's {hit.value}")
                    return
                rest = at + hit.count
                led = re.match(_LEADS, " ".join(words[rest : rest + 5]))
                rest += len(led[0].split()) if led is not None else 0
                for more in self._next(words, rest, data):
                    value = f"{hit.value}{_FOR}{more.value}"
                    end = rest + more.count
                    tail = re.match(_TAIL, " ".join(words[end : end + 2]))
                    end += len(tail[0].split()) if tail is not None else 0
                    yield Hit(end - at, value, f"maker's {value}")
                    return
                yield Hit(hit.count, hit.value, f"maker's {hit.value}")
                return

    def _next(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        for condition in self._conditions:
            yield from condition.take(words, at, data)


def with_threads(values: dict[str, str]) -> dict[str, str]:
    """The torque and the threads that it is for as two options."""
    torque, is_for, condition = str(values.get("maker", "")).partition(_FOR)
    return {**values, "maker": torque, "maker_condition": condition} if is_for else values
