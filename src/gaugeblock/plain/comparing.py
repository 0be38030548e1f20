"""Any answer for every usual value of one of its keys, side by side."""

from __future__ import annotations

from gaugeblock import domains
from gaugeblock.answer import opening
from gaugeblock.answer.asking import Topic
from gaugeblock.answer.needs import known
from gaugeblock.errors import InputError, visible
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.typed import check, innermost, needed_of, takes_more

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table


def compared(
    answer: Callable[..., Sheet],
    key: str,
    *given: str,
    data: Refdata | None = None,
    **options: str | bool | Sequence[object] | Mapping[str, object] | None,
) -> Table:
    """The answers of ``answer`` for every usual value of ``key`` side by side, whatever was said of it.

    ``answer`` is a public answer (``gaugeblock.torque``); ``key`` one of its keys (``condition``, ``grade``,
    ``temper``), or a key with the values to compare: ``wall=.095 in, .120 in``. The rest is what the answer itself
    takes. Returns a Table, one line for each value that has an answer. Raises LookupMiss for a key that the answer does
    not have, or that has no list of values; InputError for what is no public answer, for an option that it does not
    have, and for what it refuses itself.

    >>> from gaugeblock import torque
    >>> table = compared(torque, "condition", "3/8-16", grade="SAE J429 8")
    >>> [(line.key["condition"], line.sheet.decision.figure.text) for line in table.lines][:2]
    [('dry', '44'), ('oiled', '33')]
    """
    data = data or refdata()
    names = _names(answer, given, options)
    values: dict[str, object] = {**dict(zip(names, given, strict=False)), **options}
    values = {k: v for k, v in values.items() if v is not None}
    said = {k: v for k, v in values.items() if isinstance(v, str)}
    topic = _topic(answer, list(names))
    try:
        return opening.compared(topic, values, said, key, data)  # type: ignore[arg-type]
    except (KeyError, TypeError):
        left = [name for name in needed_of(answer) if name not in {*values, key.partition("=")[0].strip()}]
        if not left:
            raise
    raise InputError("(nothing)", left[0].replace("_", " "), "it is needed to compare by another", (), "say it too")


def _names(answer: Callable[..., Sheet], given: Sequence[object], options: Mapping[str, object]) -> tuple[str, ...]:
    """What an answer can be told; InputError for none of the public answers, and for what it cannot be told."""
    name = getattr(answer, "__name__", "")
    if name not in domains.answers():
        do = "give an answer itself: gaugeblock.torque"
        raise InputError(visible(name or str(answer)), "answer", "not a public answer", (), do)
    inner = innermost(answer)
    names = opening.names_of(answer)
    if len(given) > inner.__code__.co_argcount:
        last = visible(str(given[-1]))
        raise InputError(last, name, "more than it takes without a name", names, "give it by the name of its option")
    if not takes_more(inner):
        known(options, names, name)
    check(inner, tuple(given), options)
    return names


def _topic(answer: Callable[..., Sheet], names: list[str]) -> Topic:
    """What is known of an answer: the topic that asks it in plain words, or the names of its keys alone."""
    for wing in domains.WINGS:
        if answer.__name__ in wing.answers:
            ask = wing.module("ask")
            for topic in (*getattr(ask, "ALONE", ()), *ask.TOPICS):
                if topic.answer().__name__ == answer.__name__:
                    return topic.of(answer, names)  # type: ignore[no-any-return]
    return Topic(lambda: answer, answer.__name__.replace("_", " "), dict.fromkeys(names, ()), "")
