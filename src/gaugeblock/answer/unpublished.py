"""The answer of what exists and has no figure in the tables: who has it, and what is near it.

Words of refdata name such things in a column ``maker of part``; the cell is who has the figure.
"""

from __future__ import annotations

from gaugeblock.answer.decision import none
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.caution import Caution
    from gaugeblock.tables.load import Refdata


def maker_of(typed: str, domain: str, column: str, data: Refdata) -> tuple[str, str]:
    """The thing that was typed, as the tables call it, and who has its figure; blanks where it is no such thing."""
    known = data.words(domain, f"maker of {column}")
    plain = " ".join(typed.casefold().split())
    for one in (plain, plain.removesuffix("s"), plain.replace("-", " ")):
        if one in known:
            return one, known[one]
    return "", ""


def named_by(domain: str, column: str, data: Refdata) -> dict[str, str]:
    """The things without a figure, as a vocabulary: each means itself."""
    return {word: word for word in data.words(domain, f"maker of {column}")}


def nobody(
    what: str,
    who: str,
    verb: str,
    wanted: str,
    asked: Mapping[str, str | None],
    data: Refdata,
    near: str = "",
    cautions: tuple[Caution, ...] = (),
) -> Sheet:
    """The Sheet of a thing whose figure (``wanted``: torque) no table has: who has it, and what the tables have."""
    also = f" The tables have the {near}, which is another thing." if near else ""
    do = f"No table has a {wanted} for the {what}: {who} has it.{also}"
    question = Question(ASK_MAKER, f"What {wanted} does {who} print for the {what}?", "maker")
    return Sheet(what, asked, data, [], [], cautions, decision=none(verb, do), questions=[question])
