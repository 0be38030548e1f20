"""Numbers as the trade says them aloud, and what looks like one of them and is a count."""

from __future__ import annotations

import pytest

from gaugeblock.plain.sayings import written
from gaugeblock.plain.words import words_of

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
    "two inch and a half": "two and a half inch",
    "22 inch and a half": "22 and a half inch",
    "onto inch three quarter": "1 3/4 in",
    "inch n half tube": "1 and a half inch",
    "m10 fine 1.25": "m10x1.25",
    "first is two eighty four": "2.84",
    "starter draws two hundred": "two hundred amps",
    "two inch or 3.08diff": "3.08diff",
}
# Two numbers, of which neither is part of the other.
APART = {
    "a quarter inch and three eighths": ["1/4", "inch", "and", "3/8"],
    "half inch and three quarters": ["1/2", "inch", "and", "3/4"],
    "oh ninety five inch and a half": [".095", "1", "1/2", "inch"],
    "m8 fine 8.8": ["m8", "fine", "8.8"],
    "3.08diff": ["3.08", "diff"],
    "1/2inch bolt": ["1/2", "inch", "bolt"],
    "m8x1.25mm": ["m8x1.25mm"],
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


@pytest.mark.parametrize("line", APART)
def test_two_numbers_side_by_side_stay_two(line: str) -> None:
    assert [word for word in words_of(line) if word != "a"] == APART[line]


@pytest.mark.parametrize("line", COUNTED)
def test_a_count_or_half_a_number_is_joined_to_nothing(line: str) -> None:
    assert not any(
        joined in written(line) for joined in ("330", "230", "520", "210", "240", "160", "225/", "22 inch", "2.20")
    )
