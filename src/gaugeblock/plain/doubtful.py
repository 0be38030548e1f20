"""A line that is whole but for some words that no answer reads: its answer, which stands if they change nothing.

Of a short line they are words that nobody here knows. Of a story they may be words of the language too.
"""

from __future__ import annotations

from itertools import pairwise

from gaugeblock.answer.check import ASK as BEARS
from gaugeblock.answer.check import CANNOT_TELL, Check
from gaugeblock.answer.decision import ASK, USE
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.plain.chatter import CHATTER
from gaugeblock.plain.leaving import SHORT, is_of_no_account, may_change, named_by
from gaugeblock.plain.round_words import MULTIPLE, NEVER_LEFT

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

NAME = "words not understood"
_SURELY = {"thread", "grade"}  # by which a bolt is known, whatever it holds
_MOST, _MOST_OF_A_STORY = 3, 8
_OF_A_SHOP = frozenset(["price", "prices", "cost", "costs", "part-number"])  # which are asked of a dealer
_ASKING = frozenset(["what", "which", "whats", "what's", "how"])


def unknown_words(words: tuple[str, ...], reading: Reading, data: Refdata) -> tuple[str, ...]:
    """The words that are not known and that are no sign of anything which could change the number; none where one may
    be such a sign, where the question is not whole, or where too much of it is not known.

    A number, a unit, a value of an option, a metal, a finish, a state, and what names a fastener are never among them,
    nor what turns one of these: such a line is refused.
    """
    left = tuple(dict.fromkeys(reading.unread))
    is_story = len(words) > SHORT
    content = [word for word in words if word not in CHATTER]
    topic = reading.topic
    is_whole = reading.values and all(need in reading.values for need in topic.needs)
    if not 0 < len(left) <= (_MOST_OF_A_STORY if is_story else _MOST) or not is_whole or not topic.is_meant(words):
        return ()
    is_unsure = "part" in topic.slots and not (is_story and reading.values.keys() >= _SURELY)
    if len(left) * 2 > len(content) or is_unsure or (not is_story and not _OF_A_SHOP.isdisjoint(words)):
        return ()
    named = named_by(words, reading, data) if "thread" in topic.slots else set()
    asked = {word for before, word in pairwise(words) if before in _ASKING}
    changes = _may_change_a_story if is_story else may_change
    if any(
        word in NEVER_LEFT or word in named or word in asked or changes(word, words, reading, data) for word in left
    ):
        return ()
    return left


def _may_change_a_story(token: str, words: tuple[str, ...], reading: Reading, data: Refdata) -> bool:
    """Whether a word of a story denies what comes after it, or is a number, a unit, or a word that the answer hangs
    on.
    """
    return " " in token or token in MULTIPLE or not is_of_no_account(token, words, reading, data)


def table_in_doubt(table: Table, left: tuple[str, ...]) -> Table:
    """The rows of a table, each as one that stands if the words that were left change nothing."""
    return table.replace(lines=[line.replace(sheet=in_doubt(line.sheet, left)) for line in table.lines])


def in_doubt(sheet: Sheet, left: tuple[str, ...]) -> Sheet:
    """The answer as one that stands if the words that were left change nothing."""
    decision = sheet.decision
    quoted = " and ".join(f'"{word}"' for word in left)
    is_one = len(left) == 1
    when = f"{quoted} {'changes' if is_one else 'change'} nothing"
    do = f"Say {quoted} in other words: {'it was' if is_one else 'they were'} not understood."
    check = Check(NAME, CANNOT_TELL, f"not understood: {quoted}", bears=BEARS)
    question = Question(FILL_IN, do, "question", (NAME,))
    if decision.kind in (USE, ASK):
        candidates = tuple(one.replace(when=f"{one.when}; {when}".removeprefix("; ")) for one in decision.candidates)
        told = do if decision.kind == USE else f"{decision.do} {do}"
        decision = decision.replace(kind=ASK, candidates=candidates, because=(*decision.because, NAME), do=told)
    return sheet.replace(decision=decision, checks=(*sheet.checks, check), questions=(*sheet.questions, question))
