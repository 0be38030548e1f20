"""What would settle an answer: the values that answer its questions, and which candidate each of them makes the one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugeblock.answer.asking import Named
from gaugeblock.answer.decision import ASK, USE
from gaugeblock.answer.opening import answered, names_of, spoken
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError

if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.answer.asking import Topic
    from gaugeblock.plain.reading import Reading
    from gaugeblock.tables.load import Refdata

__all__ = ["add", "comparable", "spoken"]

# So many values of a key are tried; a longer list is typed.
_MOST = 12
_YES_NO = ("no", "yes")


def add(view: dict[str, Any], sheet: Sheet, reading: Reading, data: Refdata) -> None:
    """Put into a view what may be tapped or typed: ``questions``, each with its key, and ``also`` of each candidate."""
    topic = reading.topic
    options = names_of(topic.answer())
    view["questions"] = []
    ways: list[tuple[dict[str, str], Sheet]] = []
    for question in sheet.questions:
        key = next((o for o in options if topic.job_keys.get(o, o).rstrip("[]#") == question.key), "")
        choices = _choices(topic, key, data) if key and sheet.decision.kind == ASK else []
        tried = [(value, got) for value in choices if (got := _tried(reading, {key: value}, data)) is not None]
        if len(tried) > _MOST or len({_outcome(got) for _, got in tried}) < 2:
            tried = []  # whatever is said changes nothing, or too many to tap
        ways += [({key: value}, got) for value, got in tried]
        view["questions"].append(
            {
                "kind": capital(question.kind),
                "text": pretty(question.text),
                "key": key,
                "say": spoken(key),
                "choices": [value for value, _ in tried],
            }
        )
    for shown, candidate in zip(view["card"]["figures"], sheet.decision.candidates, strict=True):
        same = [also for also, got in ways if _is_that(got, candidate.figure.id, candidate.figure.typical)]
        shown.also = same[0] if len(same) == 1 else None
    view["maker"] = "maker" if "maker" in options and "maker" not in reading.values else ""


def comparable(reading: Reading, data: Refdata) -> list[dict[str, str]]:
    """The options of a question whose usual values can be put side by side."""
    topic = reading.topic
    if topic.opens is None:
        return []
    found = []
    for key in topic.slots:
        if key not in reading.values or key in topic.needs:
            continue
        others = {k: v for k, v in reading.values.items() if k != key}
        try:
            left = topic.opens(others, data)
        except GaugeblockError:  # without it the question is not whole
            continue
        if left is not None and key in left[0] and len(left[1]) > 1:
            found.append({"key": key, "say": spoken(key)})
    return found


def _choices(topic: Topic, key: str, data: Refdata) -> list[str]:
    """The values that an option is known to have; yes and no for one that has no vocabulary."""
    cells: list[str] = []
    for reader in topic.slots.get(key, ()):
        if isinstance(reader, Named):
            cells += reader.phrases(data).values()
    return list(dict.fromkeys(cells)) if cells else list(_YES_NO)


def _tried(reading: Reading, also: dict[str, str], data: Refdata) -> Sheet | None:
    try:
        got = answered(reading.topic, {**reading.values, **also}, reading.said, data)
    except (GaugeblockError, TypeError):
        return None
    return got if isinstance(got, Sheet) else None


def _outcome(sheet: Sheet) -> tuple[object, ...]:
    decision = sheet.decision
    return (decision.kind, decision.do, *(f.typical for f in decision.figures))


def _is_that(sheet: Sheet, id: str, value: float) -> bool:
    """Whether an answer comes to this figure."""
    figure = sheet.decision.figure if sheet.decision.kind == USE else None
    return figure is not None and (figure.id == id or abs(figure.typical - value) <= 1e-9 * abs(value))
