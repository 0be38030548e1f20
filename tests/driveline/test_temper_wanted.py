"""At what to temper a steel is not answered with the strength that a hardness has."""

from __future__ import annotations

import pytest

from gaugeblock import ask
from gaugeblock.errors import GaugeblockError
from gaugeblock.tables.load import refdata


def _tempered() -> list[str]:
    steels = refdata().table("driveline/steels").rows
    return sorted({row.key[0] for row in steels if "deg" in row.key[2]})


@pytest.mark.parametrize("steel", _tempered())
@pytest.mark.parametrize(
    "said",
    [
        "what temper for 44 hrc in {}",
        "what temp do i temper {} to for 40 hrc",
        "tempering temperature for {} at 40 hrc",
        "how hot do i draw {} for 35 rockwell c",
    ],
)
def test_a_wanted_temper_is_no_question_of_strength(steel: str, said: str) -> None:
    with pytest.raises(GaugeblockError) as refused:
        ask(said.format(steel.lower()))
    assert f"steel {steel} --compare temper" in refused.value.do
