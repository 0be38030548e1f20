"""Which items of a job are steps of a set-up: those that say so, and those of which only keys of one are given."""

from __future__ import annotations

import pytest

from gaugeblock.domains import parse_job
from gaugeblock.driveline.page import is_setup


@pytest.mark.parametrize(
    ("keys", "setup"),
    [
        ("", False),
        ('axle = "any"', True),
        ('kind = "setup"', True),
        ('kind = "shaft"', False),
        ('diameter = "30 mm"', False),
    ],
)
def test_a_set_up_is_said_or_given_by_a_key_of_one(keys: str, setup: bool) -> None:
    (job,) = parse_job(f'[[driveline]]\nname = "a"\n{keys}\n').driveline
    assert is_setup(job) is setup
