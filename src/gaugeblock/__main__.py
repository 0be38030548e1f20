"""``python -m gaugeblock``."""

from gaugeblock.cli import entry

if __name__ == "__main__":
    entry()
