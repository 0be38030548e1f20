"""``python -m gaugeblock``."""

import sys

from gaugeblock.cli import main

sys.exit(main())
