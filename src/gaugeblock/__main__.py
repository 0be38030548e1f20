"""``python -m gaugeblock``."""

from gaugeblock.cli import entry

entry()
