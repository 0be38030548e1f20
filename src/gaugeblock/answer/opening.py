"""What an answer comes to when something was not said: its Sheet, or a Table of what is left open."""

from __future__ import annotations

from gaugeblock.answer.table import MOST, Line, Table
from gaugeblock.errors import Ambiguous, GaugeblockError, LookupMiss

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Open, Topic
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_KEYS = {"class": "klass"}  # what Python cannot call a parameter


def answered(topic: Topic, values: dict[str, str], said: Mapping[str, str], data: Refdata) -> Sheet | Table:
    """The answer of a topic to these options; a Table where one that changes the number was not said.

    ``said`` is how a person is told each option. LookupMiss where nothing is on record for what is open; else what
    the answer itself refuses.
    """
    left = topic.opens(values, data) if topic.opens is not None else None
    if left is not None:
        open_keys, rows = left
        if len(rows) == 1:
            values = {**values, **rows[0]}
        elif rows:
            return _table(topic, values, said, left, data)
        else:
            what = " and ".join(map(spoken, open_keys))
            why = f"the {what} was not said, and none is on record for it"
            raise LookupMiss(", ".join(said.values()), topic.noun, why, (), "ask its maker")
    try:
        return sheet_of(topic, values, data)
    except Ambiguous as error:
        key = _left_open(error, values, topic)
        if key is None or not error.every:
            raise
        own = [c for c in error.every if c.casefold().startswith(values.get(key, "").casefold())]
        return _table(topic, values, said, ((key,), [{key: choice} for choice in own or error.every]), data)


def compared(topic: Topic, values: dict[str, str], said: Mapping[str, str], key: str, data: Refdata) -> Sheet | Table:
    """The answers for every usual value of one option side by side, whatever was said of it.

    LookupMiss where the topic has no such option, or no choices for it.
    """
    others = {k: v for k, v in values.items() if k != key}
    left = topic.opens(others, data) if topic.opens is not None and key in topic.slots else None
    if left is None or key not in left[0]:
        choices = [k for k in topic.slots if k not in topic.needs]
        raise LookupMiss(key, "compare", f"nothing to compare of a {topic.noun}", choices, "compare one of these")
    rows = left[1]
    own = values.get(key)
    if own is not None and len(left[0]) == 1 and all(row[key] != own for row in rows):
        rows = [{key: own}, *rows]
    return _table(topic, others, {k: v for k, v in said.items() if k != key}, (left[0], rows), data, "compared")


def sheet_of(topic: Topic, values: Mapping[str, str], data: Refdata) -> Sheet:
    """The Sheet of a topic with these options."""
    return topic.call(topic.settle(dict(values), data) if topic.settle is not None else values, data)


def spoken(key: str) -> str:
    """An option as a person says it."""
    return {"klass": "class", "nps": "pipe size", "od": "outside diameter"}.get(key, key.replace("_", " "))


def _left_open(error: Ambiguous, values: Mapping[str, str], topic: Topic) -> str | None:
    """The option that a refusal says is open: one that was said and means several things, or one that was not said."""
    said = next((key for key, value in values.items() if value == error.asked), None)
    wanted = error.do.removeprefix("name the ").split(" ")[0]
    return next((k for k in (*topic.slots, said) if k is not None and k in (wanted, _KEYS.get(wanted))), said)


def _table(
    topic: Topic,
    values: Mapping[str, str],
    said: Mapping[str, str],
    left: Open,
    data: Refdata,
    how: str = "not said",
) -> Sheet | Table:
    open_keys, rows = left
    lines: list[Line] = []
    refused: GaugeblockError | None = None
    for row in rows[:MOST]:
        try:
            lines.append(Line(row, sheet_of(topic, {**values, **row}, data)))
        except GaugeblockError as error:
            refused = refused or error
    if not lines:
        raise refused or LookupMiss(topic.noun, "", "nothing is on record", (), "say more of it")
    known = ", ".join(text for key, text in said.items() if key not in open_keys)
    title = f"{topic.noun}: {known or 'what there is'}; {how}: {', '.join(map(spoken, open_keys))}"
    return Table(title, values, data, open_keys, lines, max(0, len(rows) - MOST))
