"""What is asked by its name is what stands first: the proof strength of a bolt is no tensile strength, and the melting
point of a hose is not the heat that it stands. What no table has is refused or has no figure, and no other quantity
stands in its place.
"""

from __future__ import annotations

import re

import pytest

from gaugeblock import ask
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.errors import GaugeblockError

# What is asked, and how the quantities are called that may answer it.
ASKED = {
    "proof strength": "proof|yield",  # the proof stress of a metal is what it yields at
    "tensile strength": "tensile",
    "elongation": "elong",
    "density": "density|mass",
    "melting point": "melt",
    "boiling point": "boil",
    "flash point": "flash",
    "freezing point": "freez",
    "viscosity": "viscos",
    "modulus": "modulus",
    "thermal expansion": "expansion|growth",
    "circumference": "circum|rev",
    "conductivity": "conduct",
    "fatigue strength": "fatig|endur",
    "price": "price",
    "part number": "number of the part",
}
THINGS = """
1045 normalized
4340 cold drawn
a36
1541 induction hardened
40 hrc
250 hb
grade 8
a 10.9 bolt
a 1/2-13 grade 5 bolt
m10x1.25
1/4 npt
6061-t6
4130 normalized
1020 dom
304 stainless
en24t
dot 4
petrol
50/50 coolant
nylon fuel line
30r9 hose
a neoprene boot
10 awg wire
a 30 amp fuse
2 inch schedule 40 pipe
1.5 x .095 tube
16 gauge sheet
a spark plug
a wheel nut
205/65r15
""".strip().splitlines()


@pytest.mark.parametrize("thing", THINGS)
def test_no_other_quantity_stands_in_place_of_the_one_that_is_asked(thing: str) -> None:
    wrong = []
    for asked, may in ASKED.items():
        for line in (f"{asked} of {thing}", f"{thing.removeprefix('a ')} {asked}"):
            try:
                found = ask(line)
            except GaugeblockError:
                continue
            sheets = [found] if isinstance(found, Sheet) else []
            if isinstance(found, Table):
                sheets = [row.sheet for row in found.lines]
            figures = [figure for sheet in sheets for figure in sheet.decision.figures]
            wrong += [(line, f.quantity) for f in figures if not re.search(may, f.quantity)]
    assert wrong == []


@pytest.mark.parametrize(
    ("line", "quantity"),
    [
        ("proof strength of grade 8", "proof_strength"),
        ("yield of class 10.9", "yield_strength"),
        ("tensile strength of 1020 erw", "tensile_strength"),
        ("elongation of 1020 dom as drawn", "elongation"),
        ("proof load of m10 10.9", "proof_load"),
        ("flash point of petrol", "flash_point"),
    ],
)
def test_what_the_tables_have_of_it_answers(line: str, quantity: str) -> None:
    found = ask(line)
    assert isinstance(found, Sheet)
    assert found.decision.figure.quantity == quantity
