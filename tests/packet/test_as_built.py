"""A packet of each build shows the decisions, numbers, pages and heights that it showed, until a change is meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from packet.as_built import builds, built, kept, named


@pytest.mark.parametrize("build", builds(), ids=named)
def test_a_packet_is_as_it_was_last_read(build: Path) -> None:
    assert built(build) == kept().get(named(build)), "where it was meant: scripts/bless, and read the difference"


def test_no_packet_that_is_kept_has_a_hole() -> None:
    assert [line for build in kept().values() for line in build if line.startswith("  hole ")] == []
