"""Turns of speech are written as they would have been typed."""

from __future__ import annotations

import pytest

from gaugeblock.plain.words import words_of

SAID = {
    "an inch and three quarters tube": "1 3/4 in tube",
    "an inch and a half pipe": "an 1 1/2 inch pipe",
    "tube oh nine five wall": "tube .095 wall",
    "at a hundred and ten kilometres an hour": "at 110 km/h",
    "two and a half thousand revs": "2500 revs",
    "1,500 ft lbs": "1500 ft lbs",
    "40 millimetres by 2": "40 mm x 2 mm",
    "40 mm by 2 mm": "40 mm by 2 mm",
    "a fifty fifty mix": "a 50/50 mix",
    "m10 by one nut": "m10 by 1 nut",
    "m10 by one point two five": "m10 by 1.25",
    "m10 pitch": "m10 pitch",
    "m12 1.25 pitch": "m12 by 1.25",
    "m10 x 1.25 mm pitch": "m10 x 1.25",
    "18-8 bolt": "stainless bolt",
    "stainless 18-8 bolt": "stainless bolt",
    "5/16-18 bolt": "5/16-18 bolt",
    "400 n on the pedal": "400 n on the pedal",
    "55 w lamp": "55 w lamp",
    "1.5 rad": "1.5 rad",
    "rad hose w clamp n nut": "radiator hose with clamp and nut",
    "two mil wall": "2 mm wall",
    "torque in N m": "torque in nm",
    "grade 8's": "grade 8",
    "class 10.9s": "class 10.9",
    "w/ oil": "with oil",
    "w/o oil": "without oil",
    "trq, dry.": "torque dry",
    "mild tube": "mild steel tube",
    "d shaft": "driveshaft",
    "three eights sixteen": "3/8 16",
    "m12 by 1.75 ten nine": "m12 by 1.75 10.9",
    "ten nine hundred": "10 900",
    "bend without it kinking": "bend",
    "without oil": "without oil",
    "put dot 5 in with dot 3": "mix dot 5 with dot 3",
    "dot 5 in a dot 3 car": "dot 5 into a dot 3 car",
    "vee clamp no I mean the band clamp": "the band clamp",
    "2.5mm2 wire": "2.5 mm2 wire",
    "steel into an aluminum pan": "into an aluminum pan",
    "one degree up": "1 degree up",
    "galvanised sheet": "galvanized sheet",
    "aluminised steel": "aluminised steel",
}


@pytest.mark.parametrize(("said", "typed"), SAID.items())
def test_a_saying_is_written_as_it_is_typed(said: str, typed: str) -> None:
    assert " ".join(words_of(said)) == typed
