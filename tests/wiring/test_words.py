"""What is to be settled of a circuit is named whole, one thing or many."""

from __future__ import annotations

from itertools import combinations

import pytest

from gaugeblock.wiring import words

KEYS = tuple(words._NAMED)


@pytest.mark.parametrize("count", range(1, 5))
def test_every_thing_that_is_open_is_named_once(count: int) -> None:
    for keys in combinations(KEYS, count):
        said = words.ask_for(keys)
        assert all(said.count(words._NAMED[key]) == 1 for key in keys), said
        assert said.endswith("hangs on it." if count == 1 else "hangs on them.")
        assert said.count(", ") == max(count - 2, 0)
        assert said.count(" and ") - sum(words._NAMED[key].count(" and ") for key in keys) == (count > 1)
    assert words.ask_for(KEYS[:1], "the other would burn").endswith("it. The other would burn.")
