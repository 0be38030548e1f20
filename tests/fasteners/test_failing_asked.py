"""The torque at which a bolt fails is no torque to tighten to, and is not answered with one."""

from __future__ import annotations

import pytest

from gaugeblock import ask
from gaugeblock.errors import GaugeblockError

_VERBS = ["strip", "snap", "shear", "break", "yield", "stretch"]
_SAID = [
    "what torque to {} a 3/8-16 grade 5 dry",
    "how much torque does it take to {} a 3/8-16 grade 5 dry bolt on the bench",
    "what torque will {} a dry M10 8.8 bolt in the bracket of the engine mount",
    "3/8-16 grade 8 dry torque to {} into aluminium",
]


@pytest.mark.parametrize("verb", _VERBS)
@pytest.mark.parametrize("said", _SAID)
def test_a_failing_bolt_is_not_tightened(verb: str, said: str) -> None:
    with pytest.raises(GaugeblockError):
        ask(said.format(verb))
    ask(said.replace(" to {}", "").replace("does it take", "for").replace("will {}", "for").format())
