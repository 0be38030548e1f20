"""Profiles of the property tests: ``shop`` gives one verdict per commit, ``search`` looks for new failures."""

import os

import pytest
from hypothesis import settings

settings.register_profile("shop", deadline=None, derandomize=True)
settings.register_profile("search", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "shop"))

LONGEST = "test_same.py"  # minutes in one browser: begun last it would run alone


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The longest test first."""
    items.sort(key=lambda item: item.path.name != LONGEST)
