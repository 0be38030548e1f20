"""What there is on a thing, where a line asks for that and for no figure: what do you have on relays."""

from __future__ import annotations

import re

from gaugeblock.plain.chatter import CHATTER, TURNING, is_aside
from gaugeblock.plain.given import Answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_YOU = r"(?:do |have |did )?(?:you|u|it|this thing)(?:'ve)?(?: guys)?"
_HOLD = r"(?:have|got|hold|know|have got|keep|cover)"
_FIRST = (
    rf"(?:so |ok |right |and |well |please )*(?:tell me |show me |give me |list )?"
    rf"(?:(?:what|whatever|everything|all)(?:'s| is| have| do| all| stuff| sort of \w+| kind of \w+)?"
    rf"(?: that)? {_YOU}(?: {_HOLD})?|anything|got anything|have you anything|is there anything|what is there"
    rf"|what's there"
    rf"|what there is|what there's|(?:do )?you (?:have|got) anything)"
    rf"(?: (?:in there|in here|at all|there|for me|in the tables))? (?:on|about|regarding|concerning)(?: the)? "
)
_ASKED = re.compile(_FIRST)
_ENDS = frozenset(
    ["mainly", "mostly", "especially", "and", "or", "so", "but", "which", "that", "for", "in", "when", "between"]
)
_MOST = 3  # words by which a thing is called


def held(words: tuple[str, ...], data: Refdata) -> Answer | None:
    """What the tables and the rules have of the thing that a line names; None for a line that asks for something else,
    or of a thing that none of them has.
    """
    found = _ASKED.match(" ".join(words))
    if found is None:
        return None
    asked = " ".join(words)[found.end() :].split()
    end = next((n for n, word in enumerate(asked) if n and (word in _ENDS or word in TURNING)), len(asked))
    thing, rest = [word for word in asked[:end] if word not in CHATTER], asked[end:]
    if not 0 < len(thing) <= _MOST or any(word[0].isdigit() for word in thing):
        return None
    from gaugeblock.finding import find

    more = f"; not answered: {' '.join(rest)}" if rest else ""
    for some in _ways(thing):
        rows = find(" ".join(some), data=data)
        if rows.groups:
            left = [word for word in thing if not {word, _single(word)} & {*some}]
            rows = rows.replace(asked=" ".join(some) + (f" (left out: {' '.join(left)})" if left else ""))
            return Answer(f"what there is on: {rows.asked}{more}", rows)
    return _nothing(" ".join(thing), more, data)


def _ways(thing: list[str]) -> list[list[str]]:
    """The words of a thing as they stand, each for one of it; then without those that are of the story."""
    one = [_single(word) for word in thing]
    fewer = [word for word in one if not is_aside(word)]
    return [thing, one, *([fewer] if fewer and fewer != one else [])]


def _single(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def _nothing(thing: str, more: str, data: Refdata) -> Answer:
    """The Answer that no table has a thing; ``more`` is what of the line was not answered."""
    from gaugeblock.answer.decision import none
    from gaugeblock.answer.sheet import Sheet

    do = f"No table here and no rule is about {thing}. The maker of the part, or a book of that trade, has it."
    return Answer(
        f"what there is on: {thing}{more}", Sheet(thing, {"words": thing}, data, [], [], (), decision=none("", do))
    )
