"""Numbers as the trade says them aloud, and what looks like one of them and is a count."""

from __future__ import annotations

import pytest

from gaugeblock.plain.sayings import written

SAID = {
    "the axle is four eleven": "4.11",
    "three seventy three gears": "3.73 gears",
    "diff has two ninety": "2.90",
    "a ratio of three oh eight": "3.08",
    "two twenty five seventy fifteen": "225/70r15",
    "two seventy five sixty r fifteen": "275/60r15",
    "on the rear two seventy sixty r 15": "270/60r15",
    "two forty five forty eighteens": "245/40r18",
    "two oh five fifty five r sixteen": "205/55r16",
    "put thirty threes on": "33 inch tyres",
    "three fifty horse": "350 horse",
    "at two twelve degrees fahrenheit": "212 degrees",
    "one twenty amp alternator": "120 amp",
    "a ten by one nut": "m10x1",
    "a ten mm by one point two five nut": "m10x1.25",
    "two 55 watt lamps": "110 watt",
    "three fifty five watt lamps": "165 watt",
    "a two fifty watt heater": "250 watt",
    "one eighty degree bend": "180 degree",
    "one ninety degree bend": "90 degree",
    "stainless three oh four": "304",
}
COUNTED = [
    "three thirty degree bends",
    "two thirty amp relays",
    "five twenty amp fuses",
    "two ten foot lengths of tube",
    "two forty foot cables",
    "one sixty degree bend",
    "two twenty five seventy",
    "twenty twos",
    "the rear two twenty foot pounds",
]


@pytest.mark.parametrize("line", SAID)
def test_a_number_said_aloud_is_written_as_it_is_typed(line: str) -> None:
    assert SAID[line] in written(line)


@pytest.mark.parametrize("line", COUNTED)
def test_a_count_or_half_a_number_is_joined_to_nothing(line: str) -> None:
    assert not any(
        joined in written(line) for joined in ("330", "230", "520", "210", "240", "160", "225/", "22 inch", "2.20")
    )
