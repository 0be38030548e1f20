"""What a maker prints in stages: so many as a page holds, and no more."""

from __future__ import annotations

import pytest

from gaugeblock.errors import InputError
from gaugeblock.fasteners.maker import read_stages


@pytest.mark.parametrize("count", [1, 8, 9])
def test_nine_stages_are_read(count: int) -> None:
    assert len(read_stages(", then ".join(f"{10 + n} N*m" for n in range(count))).steps) == count


def test_a_tenth_is_refused() -> None:
    with pytest.raises(InputError, match="more stages"):
        read_stages(", then ".join(f"{10 + n} N*m" for n in range(10)))
