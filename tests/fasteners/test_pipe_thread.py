"""What a taper pipe thread measures, and that its size is a name and no diameter."""

from __future__ import annotations

import pytest

from gaugeblock import InputError, pipe_thread
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.making import base
from gaugeblock.errors import LookupMiss

SIZES = ["1/8 in", "1/4 in", "3/8 in", "1/2 in", "3/4 in", "1 in"]
# ASME B1.20.1, taper pipe threads: outside diameter of the pipe and threads an inch, as tables of the standard print.
PIPE = {
    "1/8 in": (0.405, 27),
    "1/4 in": (0.540, 18),
    "3/8 in": (0.675, 18),
    "1/2 in": (0.840, 14),
    "3/4 in": (1.050, 14),
}


@pytest.mark.parametrize("size", PIPE)
def test_the_drill_lies_between_the_root_of_the_thread_and_its_pitch_line(size: str) -> None:
    outside, tpi = PIPE[size]
    drill = base(pipe_thread("NPT", size).decision.figures[0]) / 0.0254
    assert pipe_thread("NPT", size, fact="pitch").decision.figures[0].typical == tpi
    root = outside - 2 * 0.8 / tpi
    assert root - 1 / 32 < drill < outside - 0.8 / tpi


def test_a_larger_pipe_takes_a_larger_drill() -> None:
    drills = [base(pipe_thread("npt", size).decision.figures[0]) for size in SIZES]
    assert drills == sorted(drills)


def test_a_size_may_be_bare_and_a_fact_that_no_table_has_is_none() -> None:
    assert pipe_thread("NPT", "1/4").decision.kind == USE
    assert pipe_thread("BSPT", "1/4 in").decision.kind == NONE
    assert pipe_thread("BSPT", "1/4 in", fact="hand tight").decision.kind == USE


def test_what_is_no_pipe_thread_or_no_fact_is_refused() -> None:
    for series, size in (("NPT", "7/8 in"), ("UNC", "1/4 in")):
        with pytest.raises(LookupMiss):
            pipe_thread(series, size)
    with pytest.raises(InputError):
        pipe_thread("NPT", "1/4 in", fact="grip")
