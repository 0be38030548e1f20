"""A fuse that is there already, beside the largest that its wire allows."""

from __future__ import annotations

import pytest

from gaugeblock.answer.sheet import Sheet
from gaugeblock.plain.answer import answer


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            "100 amp fuse on 10 awg",
            "A fuse of 100 A is larger than every one of these: the wire burns before it blows.",
        ),
        ("is a 30 amp fuse ok on 12 gauge", "Whether a fuse of 30 A is too large hangs on which of these it is."),
        ("5 amp fuse on 10 awg ok", "A fuse of 5 A is not larger than any of these."),
    ],
)
def test_a_fuse_that_is_there_is_held_against_what_the_wire_allows(line: str, said: str) -> None:
    got = answer(line)
    assert isinstance(got.found, Sheet)
    assert said in [one.text for one in got.found.cautions]
    plain = answer(
        " ".join(word for word in line.split() if not word.isdigit() or word in ("10", "12")).replace("amp ", "")
    )
    assert isinstance(plain.found, Sheet)
    assert got.found.decision == plain.found.decision


def test_a_fuse_beside_a_load_is_no_fuse_of_a_wire() -> None:
    got = answer("30 amp fuse for a 20 amp load")
    assert isinstance(got.found, Sheet)
    assert not any("A fuse of 30 A" in one.text or "a fuse of 30 A" in one.text for one in got.found.cautions)
