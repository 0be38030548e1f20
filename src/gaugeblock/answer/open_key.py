"""A key that was left open carries what it would come to: the refusal of a public answer has the Table of its
values.
"""

from __future__ import annotations

from functools import wraps

from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from typing import Any, ParamSpec

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table

    P = ParamSpec("P")

# What is so where nobody says otherwise is no part of a title.
_USUAL = ("vehicle", "reused")


def opens(topic_of: Callable[[], Topic], first: str = "") -> Callable[[Callable[P, Sheet]], Callable[P, Sheet]]:
    """Of an answer: what it refuses because a key was left open has the Table that its topic makes of that.

    ``topic_of`` loads the topic, ``first`` is the option that stands first and without its name.
    """

    def of(answer: Callable[P, Sheet]) -> Callable[P, Sheet]:
        @wraps(answer)
        def asked(*args: P.args, **options: P.kwargs) -> Sheet:
            try:
                return answer(*args, **options)
            except Ambiguous as error:
                given: dict[str, Any] = {**({first: args[0]} if args and first else {}), **options}
                raise error.tabled(lambda: _table(topic_of(), given)) from None

        return asked

    return of


def _table(topic: Topic, given: Mapping[str, Any]) -> Table | None:
    """What the values of the open key come to; None where the topic does not know them."""
    from gaugeblock.answer.opening import answered
    from gaugeblock.answer.table import Table
    from gaugeblock.errors import GaugeblockError
    from gaugeblock.tables.load import refdata

    data = given.get("data") or refdata()
    values = {k: v for k, v in given.items() if k != "data" and v is not None}
    said = {k: v for k, v in values.items() if isinstance(v, str) and v not in _USUAL}
    try:
        got = answered(topic, values, said, data)
    except GaugeblockError:
        return None
    return got if isinstance(got, Table) else None
