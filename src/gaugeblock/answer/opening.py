"""What an answer comes to when something was not said: its Sheet, or a Table of what is left open."""

from __future__ import annotations

from gaugeblock.answer.decision import NONE
from gaugeblock.answer.table import MOST, Line, Table
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError, LookupMiss
from gaugeblock.listed import items
from gaugeblock.typed import innermost

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from gaugeblock.answer.asking import Open, Topic
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_KEYS = {"class": "klass"}  # what Python cannot call a parameter
# Values of an option that are tried for an answer: more than any table of a release has of one key.
_MOST_TRIED = 400


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


def compared(topic: Topic, values: dict[str, str], said: Mapping[str, str], compare: str, data: Refdata) -> Table:
    """The answers for every usual value of one option side by side, whatever was said of it; for the values alone that
    are named: ``wall=.095 in, .120 in``.

    LookupMiss where the topic has no such option, or no choices for it. A value that was named and has no answer is
    refused as it would be alone: it is never left out in silence.
    """
    key, _, text = compare.partition("=")
    named = [value for value in _values(text) if value]
    key = _option(key, topic)
    others = {k: v for k, v in values.items() if k != key}
    told = {k: v for k, v in said.items() if k != key}
    if named:
        every = _named(topic, others, key, named, data)
        table = _table(topic, others, told, every, data, "compared")
        answered_of = {line.key[key] for line in table.lines if key in line.key}
        for row in every[1][:MOST]:
            if row.get(key) not in {None, *answered_of}:
                sheet_of(topic, {**others, **row}, data)  # raises its own refusal
        return table
    try:
        left = topic.opens(others, data) if topic.opens is not None else None
    except (GaugeblockError, KeyError):  # what it cannot do without is open too
        left = None
    if left is None or key not in left[0]:
        rows = [{key: choice} for choice in choices(topic, key, others, data)]
        left = ((key,), _answering(topic, others, rows, data))
        if not left[1]:
            can = [spoken(k) for k in topic.slots if k != key and _has_choices(topic, k, data)]
            why = f"nothing to compare it by: {topic.noun} has no usual values of it that answer"
            raise LookupMiss(spoken(key), "compare", why, can, 'name the values: --compare "wall=.095 in, .120 in"')
    rows = left[1]
    own = values.get(key)
    if own is not None and len(left[0]) == 1 and all(row[key] != own for row in rows):
        rows = [{key: own}, *rows]
    return _table(topic, others, told, (left[0], rows), data, "compared")


def _values(text: str) -> list[str]:
    """Values that are named, with semicolons between them, or commas."""
    return [value.strip() for value in text.split(";")] if ";" in text else items(text, "compare")


def of_things(
    topic: Topic, values: dict[str, str], said: Mapping[str, str], rows: Sequence[dict[str, str]], data: Refdata
) -> Table:
    """The answers for whole things side by side, each by all that is said of it alone: ``2 in x .095 in``."""
    key = topic.noun
    lines = [Line({key: " x ".join(row.values())}, sheet_of(topic, {**values, **row}, data)) for row in rows]
    known = ", ".join(text for name, text in said.items() if name not in rows[0])
    return Table(f"{key}: {known or 'side by side'}; compared: {key}", values, data, (key,), lines, 0)


def _named(topic: Topic, others: dict[str, str], key: str, named: Sequence[str], data: Refdata) -> Open:
    """The values that are named of an option, each with every value of what else is open."""
    rows = [row for value in named for row in _each(topic, others, {key: value}, data)]
    left = topic.opens({**others, **rows[0]}, data) if topic.opens is not None else None
    if left is None or not left[1] or key in left[0]:
        return (key,), rows
    return (key, *left[0]), [{**row, **more} for row in rows for more in left[1]]


_MOST_MEANT = 4


def _each(topic: Topic, others: dict[str, str], row: dict[str, str], data: Refdata) -> list[dict[str, str]]:
    """A value that is named, or each that it may mean by itself: of stainless every one on record."""
    left = topic.opens({**others, **row}, data) if topic.opens is not None else None
    if left is not None:
        return [{**row, **one} for one in left[1]] if left[0] == tuple(row) and left[1] else [row]
    (key, value) = next(iter(row.items()))
    if key not in topic.columns:
        return [row]
    try:
        sheet_of(topic, {**others, **row}, data)
    except Ambiguous as error:  # 1020 DOM as drawn, and stress relieved
        if _left_open(error, row, topic) != key:
            return [row]
        meant = [one for one in error.every if one.casefold().startswith(value.casefold())]
        rows = _answering(topic, others, [{**row, key: one} for one in meant or error.every], data)
        return rows if 0 < len(rows) <= _MOST_MEANT else [row]  # of more of them it is asked which
    except (GaugeblockError, KeyError, TypeError):
        pass
    return [row]


def opened(
    topic: Topic, values: dict[str, str], said: Mapping[str, str], missing: Sequence[str], data: Refdata
) -> Table:
    """The Table of every value that the tables have of the options that are ``missing``.

    InputError that asks for them where they are no list, or where the answer hangs on more than they.
    """
    rows: list[dict[str, str]] = [{}]
    for key in missing:
        rows = [{**row, key: one} for row in rows for one in choices(topic, key, {**values, **row}, data)]
    there = _cells(row[missing[0]] for row in rows if missing[0] in row)
    rows = [{**row, **more} for row in rows[:_MOST_TRIED] for more in _more(topic, {**values, **row}, data)]
    found = _answering(topic, values, rows, data)
    if not found:
        what = " and the ".join(map(spoken, missing))
        why = f"the {what} {'was' if len(missing) == 1 else 'were'} not said"
        raise InputError(", ".join(said.values()) or topic.noun, topic.noun, why, there, f"say the {what}")
    # of one part the size is open, of the next the seat
    return _table(topic, values, said, (tuple(dict.fromkeys(key for row in found for key in row)), found), data)


def _more(topic: Topic, values: dict[str, str], data: Refdata) -> list[dict[str, str]]:
    """What else is open of an answer: every set of values for it; an empty one where nothing is."""
    try:
        left = topic.opens(values, data) if topic.opens is not None else None
    except GaugeblockError:
        return []
    return [{}] if left is None else left[1]


def choices(topic: Topic, key: str, values: Mapping[str, str], data: Refdata) -> list[str]:
    """The values that the tables have of one option: those that the answer names when it is open, else a column of a
    table beside what was said, else the vocabulary that reads it.
    """
    if key in topic.columns:
        at = topic.columns[key]
        return _cells(at(data) if callable(at) else _column(topic, key, values, data))
    try:
        sheet_of(topic, {k: v for k, v in values.items() if k != key}, data)
    except Ambiguous as error:
        if error.every and _left_open(error, values, topic) == key:
            return list(error.every)
    except (GaugeblockError, KeyError, TypeError):
        pass  # it cannot do without: the vocabulary has its values
    return _cells(cell for reader in topic.slots.get(key, ()) for cell in reader.choices(data))


def _column(topic: Topic, key: str, values: Mapping[str, str], data: Refdata) -> list[str]:
    """The cells of a column in the rows that have what was said of the other columns, where any has."""
    name, column = topic.columns[key]  # type: ignore[misc]
    table = data.table(name)
    same = {k: at[1] for k, at in topic.columns.items() if k != key and not callable(at) and at[0] == name}
    rows = [row for row in table.rows if not row.standing]
    for other, own in same.items():
        cell = table.column(own).get(values.get(other, "").casefold())
        kept = [row for row in rows if cell is not None and row[own] in (cell, "any")]
        rows = kept or rows
    return [row[column] for row in rows]


def _cells(found: Iterable[str]) -> list[str]:
    return [cell for cell in dict.fromkeys(found) if cell and cell not in ("any", "not stated")]


def _has_choices(topic: Topic, key: str, data: Refdata) -> bool:
    return key in topic.columns or len(choices(topic, key, {}, data)) > 1


def _option(key: str, topic: Topic) -> str:
    """An option by the name that a person gives it; LookupMiss for none."""
    plain = " ".join(key.casefold().replace("_", " ").replace("-", " ").split())
    for own in topic.slots:
        if plain in (own.replace("_", " "), spoken(own), own.rstrip("s"), f"{own.replace('_', ' ')}s"):
            return own
    own_names = [spoken(k) for k in topic.slots]
    raise LookupMiss(key, "compare", f"{topic.noun} has no such option", own_names, "compare one of these")


def _answering(
    topic: Topic, values: Mapping[str, str], rows: Sequence[dict[str, str]], data: Refdata
) -> list[dict[str, str]]:
    """Of these sets of values those that have an answer, as many as a table and one more may hold."""
    found: list[dict[str, str]] = []
    bare: list[dict[str, str]] = []
    for row in rows[:_MOST_TRIED]:
        try:
            sheet = sheet_of(topic, {**values, **row}, data)
        except (GaugeblockError, KeyError, TypeError):  # or what it cannot do without is open too
            continue
        has = sheet.decision.kind != NONE or sheet.figures
        (found if has else bare).append(row)
        if len(found) > MOST:
            break
    return found or bare


def sheet_of(topic: Topic, values: Mapping[str, str], data: Refdata) -> Sheet:
    """The Sheet of a topic with these options."""
    return topic.call(topic.settle(dict(values), data) if topic.settle is not None else values, data)


_SPOKEN = {
    "klass": "class",
    "test": "test bend",
    "nps": "pipe size",
    "od": "outside diameter",
    "to": "neighbour",
    "hot": "temperature of the hot part",
    "into": "metal that it goes into",
    "fit": "kind of hole",
    "at": "temperature",
    "was": "size that it had before",
    "ratios": "axle ratio",
    "value": "hardness",
    "number": "gauge number",
    "droop": "way from fitting to fitting at full droop",
    "lock": "way from fitting to fitting at full lock",
    "onto": "tube that it meets",
}


def spoken(key: str) -> str:
    """An option as a person says it."""
    return _SPOKEN.get(key, key.replace("_", " "))


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
) -> Table:
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
    names = ", ".join(map(spoken, open_keys))
    given = ", ".join(values[key] for key in open_keys if key in values)
    if given and not known:  # it was said, and means several things
        known, names = given, f"which {names}"
    title = f"{topic.noun}: {known or 'what there is'}; {how}: {names}"
    return Table(title, values, data, open_keys, lines, max(0, len(rows) - MOST))


def names_of(answer: Callable[..., Sheet]) -> tuple[str, ...]:
    """What a public answer can be told, by name and in its order, under whatever it is wrapped in."""
    code = innermost(answer).__code__
    names = code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]
    return tuple(name for name in names if name != "data")
