"""One formula for one item or a million rows: ``math`` for numbers, numpy when an array is given."""

from __future__ import annotations

import math
import sys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any


def of(*values: Any) -> Any:
    """numpy when any value is an array, else ``math``; numpy is never imported for plain numbers."""
    numpy = sys.modules.get("numpy")
    if numpy is not None and any(isinstance(v, numpy.ndarray) for v in values):
        return numpy
    return math
