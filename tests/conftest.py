"""One profile for all property tests: examples may take their time on a busy machine."""

from hypothesis import settings

settings.register_profile("shop", deadline=None)
settings.load_profile("shop")
