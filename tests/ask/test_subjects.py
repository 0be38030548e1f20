"""Lines that rules alone answer, whatever is told round them; a metal and its grade; a pedal by its two lengths."""

from __future__ import annotations

import pytest

from gaugeblock import ask
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.finding import rules
from gaugeblock.found import Found
from gaugeblock.lines.brakes.lever import Lever
from gaugeblock.plain.answer import answer
from gaugeblock.plain.subjects.general import _CLASS_RULES, _SUBJECTS, told_by_subject
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

DATA = refdata()
NAMES = [*(one for subject in _SUBJECTS for one in subject.rules), *(one for one, _ in _CLASS_RULES)]


@pytest.mark.parametrize("name", sorted(set(NAMES)))
def test_every_rule_that_a_subject_names_is_on_record(name: str) -> None:
    assert [entry for entry in rules(DATA) if entry.rule is not None and entry.rule["subject"] == name]


def told(line: str) -> Found | None:
    return told_by_subject(words_of(line), DATA, _SUBJECTS)


@pytest.mark.parametrize(
    "line", ["dot 4 boiling point", "put dot 4 in clutch", "mix 2 parts paint", "fuel hose 5/16 bore"]
)
def test_what_is_no_subject_is_left_to_the_readers(line: str) -> None:
    assert told(line) is None


@pytest.mark.parametrize(
    "line", ["mix dot 3 with dot 5 purple", "mix dot 4 with dot 5 not", "r9 or r7 for efi 1/2 bore"]
)
def test_a_word_of_another_thing_or_one_that_turns_the_end_is_no_subject(line: str) -> None:
    assert told(line) is None


def test_silicone_fluid_is_told_first_where_it_is_named() -> None:
    with_it, without = told("mix dot 4 with dot 5"), told("mix dot 4 with dot 5.1")
    assert with_it is not None
    assert without is not None
    assert [entry.key for entry, _ in with_it.groups][1:] == [entry.key for entry, _ in without.groups]


@pytest.mark.parametrize("doing", ["weld", "solder", "braze", "torch", "grind"])
def test_of_a_tank_that_held_fuel_the_danger_is_told_with_who_says_it_and_who_does_it(doing: str) -> None:
    found = ask(f"can i {doing} a rinsed petrol tank")
    assert isinstance(found, Found)
    first, second = (entry.rule for entry, _ in found.groups)
    assert first is not None
    assert second is not None
    assert (first["source"], first["checked"], first["severity"]) == ("8CCR5166", "primary", "injury")
    assert "explodes" in second["statement"]
    assert "tank repairer" in second["statement"]


SAID = [
    ("growth of a 2 m {} pipe at 500 degC its {}", "stainless", "304"),
    ("4x8 sheet 16 gauge {} weight its {}", "stainless", "304"),
    ("1 1/2 x .095 {} tube weight per foot its {}", "steel", "4130"),
]


@pytest.mark.parametrize(("line", "wide", "own"), SAID)
def test_a_metal_and_then_its_grade_are_one_metal(line: str, wide: str, own: str) -> None:
    apart, together = ask(line.format(wide, own)), ask(line.format(f"{own} {wide}", "").replace(" its ", ""))
    assert isinstance(apart, Sheet)
    assert isinstance(together, Sheet)
    assert apart.decision.figure is not None
    assert together.decision.figure is not None
    assert apart.decision.figure.typical == together.decision.figure.typical


def test_two_metals_are_not_one_and_a_denied_grade_is_refused() -> None:
    with pytest.raises(InputError):
        ask("stainless exhaust 2m growth at 500c not 304")
    with pytest.raises(InputError):
        ask("aluminium exhaust 2m growth at 150c 304")


LEVERS = [
    ("pivot to pushrod 55 mm pivot to pad 330 mm", "6"),
    ("pivot to pad 13 1/2 in and pivot to pushrod 2 1/4 in", "6"),
    ("pushrod 2 inches from the pivot pad 9 inches from the pivot", "4.5"),
    ("pivot to pushrod 55 mm pivot to pad 330 3/4 in bore", "6"),
    ("pivot to pushrod 55 in pivot to pad 330 mm", None),
    ("pivot to pushrod 330 pivot to pad 55", None),
]


@pytest.mark.parametrize(("line", "ratio"), LEVERS)
def test_a_pedal_is_the_longer_length_over_the_shorter_in_one_unit(line: str, ratio: str | None) -> None:
    hits = list(Lever().take(tuple(line.split()), 0, DATA))
    assert [hit.value for hit in hits] == ([ratio] if ratio else [])


@pytest.mark.parametrize("said", ["with servo", "with a booster", "power brakes", "servo assisted"])
def test_a_booster_is_never_left_out(said: str) -> None:
    with pytest.raises(InputError, match="ratio was not said"):
        ask(f"pedal 6:1 50 kg 3/4 master {said}")


def test_nylon_beside_an_exhaust_asks_at_any_gap() -> None:
    got = answer("nylon fuel line 12 in from exhaust").found
    assert isinstance(got, Sheet)
    assert got.decision.kind == "ask"
    assert "Nylon" in got.decision.do
