"""Miles per gallon in litres per 100 km: by the definitions of the mile and of both gallons (NIST SP 811, appendix B.8:
miles per gallon times 0.4251437 are km per litre; the imperial gallon is 4.54609 L).
"""

from __future__ import annotations

import pytest

from gaugeblock.plain.economy import economy
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

US, IMPERIAL = 100 / 0.4251437, 100 / (1.609344 / 4.54609)


def told(line: str) -> list[tuple[str, float]]:
    return [
        (one.found.rpartition(" mpg")[0] or one.found, float(one.exact)) for one in economy(words_of(line), refdata())
    ]


@pytest.mark.parametrize("line", ["28 mpg in l/100", "28 mpg to litres per 100 km", "28 miles per gallon in l/100 km"])
def test_both_gallons_where_none_is_named(line: str) -> None:
    assert [number for _, number in told(line)] == [pytest.approx(US / 28, 1e-6), pytest.approx(IMPERIAL / 28, 1e-6)]


@pytest.mark.parametrize(("which", "per"), [("us", US), ("uk", IMPERIAL), ("imperial", IMPERIAL)])
def test_the_gallon_that_is_named(which: str, per: float) -> None:
    assert [n for _, n in told(f"28 {which} mpg in l/100")] == [pytest.approx(per / 28, 1e-6)]
    assert [n for _, n in told(f"7.8 litres per 100 km in {which} mpg")] == [pytest.approx(per / 7.8, 1e-6)]


def test_the_gallon_is_told_beside_the_miles() -> None:
    first, second = economy(words_of("28 mpg in l/100"), refdata())
    assert (first.given, first.found) == ("28 US mpg", "about 8.4 L/100 km")
    assert (second.given, second.found) == ("28 imperial mpg", "about 10.1 L/100 km")


def test_another_question_is_none_of_this() -> None:
    assert economy(words_of("what ratio for 28 mpg"), refdata()) == ()
    assert economy(words_of("28 litres for 100 psi"), refdata()) == ()
