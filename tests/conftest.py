"""Profiles of the property tests: ``shop`` gives one verdict per commit, ``search`` looks for new failures."""

import os

from hypothesis import settings

settings.register_profile("shop", deadline=None, derandomize=True)
settings.register_profile("search", deadline=None, max_examples=1000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "shop"))
