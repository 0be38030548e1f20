"""A measure in another unit, asked in plain words: exact, marked as a conversion, and never guessed."""

from __future__ import annotations

import re
from fractions import Fraction
from re._parser import parse
from typing import Any

import pytest

from gaugeblock import units
from gaugeblock.errors import InputError
from gaugeblock.plain.answer import answer, ask
from gaugeblock.plain.convert import _MADE, _SPOKEN, Conversion, may_be_of_units
from gaugeblock.plain.prompt import Prompt


@pytest.mark.parametrize(
    ("line", "given", "found"),
    [
        ("31 ft lbs in nm", "31 lbf*ft", "about 42.03 N*m"),
        ("convert 3/8 to mm", "3/8 in", "9.525 mm"),
        ("200 psi in bar", "200 psi", "about 13.79 bar"),
        ("how many nm is 45 foot pounds", "45 lbf*ft", "about 61.012 N*m"),
        ("180 c in f", "180 degC", "356 degF"),
        ("what is 40 nm in foot pounds", "40 N*m", "about 29.502 lbf*ft"),
        ("120 in lbs to ft lbs", "120 lbf*in", "10 lbf*ft"),
        ("five eighths in mm", "5/8 in", "15.875 mm"),
        ("how many mm in 3/8 inch", "3/8 in", "9.525 mm"),
        ("16 thou in mm", "0.016 in", "0.4064 mm"),
        ("25.4 mm to inches please", "25.4 mm", "1 in"),
        ("50 lbs in kg", "50 lb", "about 22.68 kg"),
        ("50 lbs in newtons", "50 lbf", "about 222.41 N"),
        ("1 1/2 inches in mm", "1 1/2 in", "38.1 mm"),
        ("-40 f in c", "-40 degF", "-40 degC"),
        ("nm to ftlb 110", "110 N*m", "about 81.132 lbf*ft"),
        ("convert nm to lb ft 45", "45 N*m", "about 33.19 lbf*ft"),
        ("inches to mm 3/8", "3/8 in", "9.525 mm"),
    ],
)
def test_a_measure_is_converted(line: str, given: str, found: str) -> None:
    got = ask(line)
    assert isinstance(got, Conversion)
    assert (got.given, got.found) == (given, found)
    assert "no figure of any table" in got.text()


@pytest.mark.parametrize("line", ["10 to mm", "kw to hp", "31 lbs", "16 gauge in mm", "3/8 in 16 in nm"])
def test_what_lacks_a_unit_or_a_number_is_no_conversion(line: str) -> None:
    try:
        got = ask(line)
    except InputError:
        return
    assert not isinstance(got, Conversion)


def test_what_measures_another_thing_is_refused() -> None:
    with pytest.raises(InputError, match="two things"):
        ask("45 hp in nm")


@pytest.mark.parametrize("unit", _SPOKEN)
def test_every_unit_is_converted_exactly_and_back(unit: str) -> None:
    share, own = _MADE.get(unit, (Fraction(1), unit))
    value = Fraction(37, 8)
    assert units.convert(value * share, own, own) / share == value
    assert own in units.UNITS


def test_what_is_shown_as_exact_is_exact() -> None:
    for number in ("1", "0.375", "2.5", "17", "180"):
        for start, end in (("in", "mm"), ("ft lbs", "nm"), ("c", "f"), ("psi", "bar"), ("kg", "lb")):
            got = ask(f"{number} {start} to {end}")
            assert isinstance(got, Conversion)
            shown = Fraction(got.found.removeprefix("about ").split(" ")[0])
            assert (shown == Fraction(got.exact)) or not got.is_exact
            assert abs(shown - Fraction(got.exact)) <= abs(Fraction(got.exact)) / 10**4


def test_it_says_what_it_is_and_the_prompt_keeps_its_last_answer(capsys: pytest.CaptureFixture[str]) -> None:
    assert answer("31 ft lbs in nm").as_dict()["conversion"]["value"] == "42.0303563983"  # type: ignore[index]
    prompt = Prompt()
    for line in ("3/8-16 grade 5 dry", "31 ft lbs in nm", "again in N*m"):
        prompt.take(line)
    assert "TIGHTEN   42 N*m" in capsys.readouterr().out


def test_two_measures_in_a_line_are_both_converted() -> None:
    got = answer("95 inlb in nm, and 3.5 bar in psi")
    told = [one.found.text() for one in (got, *got.more)]
    assert "10.734 N*m" in told[0]
    assert "50.763 psi" in told[1]


def _every(pattern: Any) -> list[str]:
    """Each text that a pattern of letters, choices and options takes."""
    texts = [""]
    for kind, of in pattern:
        name = str(kind)
        if name == "LITERAL":
            more = [chr(of)]
        elif name == "IN":
            more = [chr(code) for _, code in of]
        elif name == "BRANCH":
            more = [text for one in of[1] for text in _every(one)]
        elif name == "SUBPATTERN":
            more = _every(of[3])
        elif name == "MAX_REPEAT" and of[:2] == (0, 1):
            more = ["", *_every(of[2])]
        else:
            raise AssertionError(f"a spelling with {name}")
        texts = [text + one for text in texts for one in more]
    return texts


@pytest.mark.parametrize("unit", sorted(_SPOKEN))
def test_the_quick_look_lets_every_spelling_of_a_unit_through(unit: str) -> None:
    spellings = _every(parse(_SPOKEN[unit]))
    assert len(spellings) > 1 or unit in ("hundredths of a mm",)
    for text in spellings:
        assert re.fullmatch(_SPOKEN[unit], text)
        assert may_be_of_units(f"convert 12 {text} into what"), text


@pytest.mark.parametrize("line", ["what gauge wire for 28 amps 12 feet", "12 gauge sheet", "bolt 10 mm"])
def test_the_quick_look_keeps_other_lines_out(line: str) -> None:
    assert not may_be_of_units(line)


def test_one_measure_is_converted_to_several_units() -> None:
    told = answer("how do i convert 120 inch pounds to newton metres and to foot pounds please")
    found = [told.found, *(one.found for one in told.more)]
    assert [one.found for one in found if isinstance(one, Conversion)] == ["about 13.558 N*m", "10 lbf*ft"]
