"""Lengths as a shop reads them: up, down and nearest, nothing without a minus, brackets exact."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock.drawing import lengths


@pytest.mark.parametrize("word", ["1/32 in", "1/16 in", "decimal", "mm"])
@pytest.mark.parametrize("metres", [-1e-9, -0.0, 0.0, 1e-9])
def test_nothing_has_no_minus(word: str, metres: float) -> None:
    tape = lengths.tape(word)
    assert "-" not in tape.reads(metres)
    assert "-" not in tape.short(metres)


@given(metres=st.floats(-2, 2), word=st.sampled_from(["1/32 in", "1/16 in"]))
def test_up_never_falls_short_and_down_never_passes_and_the_bracket_is_exact(metres: float, word: str) -> None:
    tape = lengths.tape(word)
    size = tape.step / 0.0254

    def value(text: str) -> float:
        number = text.split(" in", maxsplit=1)[0]
        sign = -1 if number.startswith("-") else 1
        return sign * sum(float(Fraction(p)) for p in number.removeprefix("-").split())

    inch = metres / 0.0254
    assert inch - 1e-6 * size <= value(tape.up(metres)) <= inch + size
    assert inch - size <= value(tape.down(metres)) <= inch + 1e-6 * size
    for text in (tape.up(metres), tape.down(metres), tape.reads(metres)):
        assert float(text.split("(")[1].rstrip(")")) == pytest.approx(inch, abs=5.1e-4)
