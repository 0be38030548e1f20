"""A run: it grows from its fixed point, its hangers share its weight, and nothing is overloaded or held silently."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from gaugeblock import exhaust_run
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.question import KINDS
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc.frame import G
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.exhaust.job import Exhaust
from gaugeblock.units import to_base

SETTLED = {
    "hot": "900 degF",
    "fixed": "20 in",
    "hangers": "20 in, 60 in, 100 in",
    "hanger_length": "3 in",
    "hanger_limit": "40 lbf",
    "masses": "12 lb at 80 in",
    "flex": "6 in at 4 in",
    "travel": "3/4 in",
    "rate": "150 lbf/in",
    "area": "5 in**2",
    "pressure": "2 psi",
}
STEELS = st.sampled_from(["mild steel", "304", "321", "409", "316"])


def asked(length: str = "108 in", material: str = "mild steel", **more: str | None) -> Sheet:
    known: dict[str, Any] = {k: v for k, v in {**SETTLED, **more}.items() if v is not None}
    return exhaust_run(length, "2-1/2 in", ".065 in", material, **known)


def of(sheet: Sheet, quantity: str) -> list[float]:
    return [to_base(f.typical, f.unit) for f in sheet.figures if f.quantity == quantity]


def keeps_form(sheet: Sheet) -> None:
    decision = sheet.decision
    names = {c.name for c in sheet.checks}
    low, high = {USE: (1, 1), ASK: (1, 3), STOP: (1, 3), NONE: (0, 0)}[decision.kind]
    assert low <= len(decision.candidates) <= high
    assert set(decision.because) <= names
    assert decision.do.endswith((".", "?"))
    assert decision.kind != USE or not any(c.asks or c.stops for c in sheet.checks)
    assert decision.kind != STOP or any(c.stops for c in sheet.checks)
    assert all(q.kind in KINDS and q.key in Exhaust.keys and set(q.checks) <= names for q in sheet.questions)
    assert len({f.id for f in sheet.figures}) == len(sheet.figures)


def test_a_settled_run_says_how_far_its_end_moves() -> None:
    """88 in of carbon steel from 70 to 900 degF; the growth table prints 7.90 in for 100 ft."""
    sheet = asked()
    keeps_form(sheet)
    assert sheet.decision.kind == USE
    assert sheet.decision.figures[0].typical == pytest.approx(88 / 1200 * 7.90)


def test_a_run_without_a_silencer_says_that_the_pipe_alone_is_counted() -> None:
    told = {c.name: c.reason for c in asked(masses=None).checks}
    assert "8 to 25 lb" in told["what hangs on the run"]
    assert "what hangs on the run" not in {c.name for c in asked().checks}


def test_hangers_at_one_place_share_its_load() -> None:
    alone, twice = asked(hangers="40 in, 100 in"), asked(hangers="40 in, 40 in, 100 in")
    one = of(alone, "hanger_load")
    two = of(twice, "hanger_load")
    assert len(two) == len(one) + 1
    assert sum(two) == pytest.approx(sum(one))
    loads = {f.conditions: to_base(f.typical, f.unit) for f in twice.figures if f.quantity == "hanger_load"}
    assert loads["hanger 1, at rest"] == loads["hanger 2, at rest"]


def test_the_force_on_the_fixed_point_is_thrust_and_spring_and_hangers() -> None:
    sheet = asked()
    parts = of(sheet, "pressure_thrust") + of(sheet, "spring_force") + of(sheet, "hanger_pull")
    assert of(sheet, "anchor_force")[0] == pytest.approx(sum(parts))


@pytest.mark.parametrize(
    ("more", "kind", "name", "key"),
    [
        ({"hanger_limit": "5 lbf"}, STOP, "load of hanger 2", "hangers"),
        ({"hanger_limit": None}, ASK, "what the hangers may carry", "hangers"),
        ({"hanger_length": None}, ASK, "swing of the hangers", "hangers"),
        ({"hanger_length": "3/4 in"}, ASK, "swing of hanger 3", "hangers"),
        ({"hangers": "100 in", "flex": None, "fixed": "100 in"}, ASK, "hangers", "hangers"),
        ({"hangers": "20 in, 100 in"}, ASK, "spacing of hangers 1 and 2", "hangers"),
        ({"travel": "1/16 in"}, STOP, "flexible section", "flex"),
        ({"travel": None}, ASK, "flexible section", "flex"),
        ({"flex": None}, ASK, "flexible section", "flex"),
        ({"rate": None}, ASK, "fixed point", "flex"),
        ({"hot": None}, NONE, "growth", "hot"),
        ({"fixed": None}, NONE, "growth", "fixed"),
        ({"hot": "1700 degF"}, NONE, "growth", "material"),
        ({"hot": "9000 degF"}, NONE, "hot as typed", "hot"),
        ({"hangers": "20 in, 60 in, 300 in"}, NONE, "hangers as typed", "hangers"),
    ],
)
def test_what_is_open_or_too_much_is_told(more: dict[str, str | None], kind: str, name: str, key: str) -> None:
    sheet = asked(**more)
    keeps_form(sheet)
    assert sheet.decision.kind == kind
    check = next(c for c in sheet.checks if c.name == name)
    assert check.asks or check.stops
    assert check.stops or key in {q.key for q in sheet.questions}


def test_what_cannot_be_read_is_refused() -> None:
    with pytest.raises(InputError):
        asked(masses="12 lb")
    with pytest.raises(InputError):
        asked(flex_kind="rope")
    with pytest.raises(InputError):
        exhaust_run("100 in", "2 in", "1 in", "304")
    with pytest.raises(LookupMiss):
        asked(material="cheese")


@given(STEELS, st.integers(24, 400), st.integers(0, 100))
def test_a_longer_run_never_grows_less(steel: str, length: int, more: int) -> None:
    short = exhaust_run(f"{length} in", "2 in", ".065 in", steel, hot="800 degF", fixed="0 in")
    long = exhaust_run(f"{length + more} in", "2 in", ".065 in", steel, hot="800 degF", fixed="0 in")
    assert long.decision.figures[0].typical >= short.decision.figures[0].typical


@given(STEELS, st.integers(110, 1200), st.integers(0, 200))
@example("mild steel", 200, 1)
@example("304", 800, 1)
def test_a_hotter_run_never_grows_less(steel: str, hot: int, more: int) -> None:
    cool = exhaust_run("100 in", "2 in", ".065 in", steel, hot=f"{hot} degF", fixed="0 in")
    warm = exhaust_run("100 in", "2 in", ".065 in", steel, hot=f"{hot + more} degF", fixed="0 in")
    if warm.decision.candidates:
        assert warm.decision.figures[0].typical >= cool.decision.figures[0].typical * (1 - 1e-9)


def test_what_hangs_on_the_engine_without_a_flexible_section_is_told() -> None:
    sheet = asked(flex=None, fixed="0 in", hangers="60 in, 90 in")
    assert any(c.name == "weight on the engine mounts" for c in sheet.checks)
    assert not any(c.name == "weight on the engine mounts" for c in asked().checks)


PLACES = st.lists(st.integers(2, 106), min_size=2, max_size=5, unique=True)


@given(PLACES, st.lists(st.tuples(st.integers(1, 40), st.integers(0, 108)), max_size=3))
@settings(max_examples=60)
def test_the_loads_on_the_hangers_sum_to_the_weight(places: list[int], masses: list[tuple[int, int]]) -> None:
    sheet = exhaust_run(
        "108 in",
        "2-1/2 in",
        ".065 in",
        "304",
        hot="900 degF",
        fixed=f"{places[0]} in",
        hangers=", ".join(f"{p} in" for p in places),
        masses=", ".join(f"{m} lb at {at} in" for m, at in masses) or None,
    )
    assert sum(of(sheet, "hanger_load")) == pytest.approx(of(sheet, "hung_mass")[0] * G, rel=1e-6)


@given(PLACES)
@settings(max_examples=40)
def test_a_mirrored_run_has_mirrored_hangers_and_grows_alike(places: list[int]) -> None:
    def run(places: list[int], fixed: int) -> Sheet:
        said = ", ".join(f"{p} in" for p in places)
        return exhaust_run("108 in", "2-1/2 in", ".065 in", "304", hot="900 degF", fixed=f"{fixed} in", hangers=said)

    there = run(sorted(places), places[0])
    back = run(sorted(108 - p for p in places), 108 - places[0])
    assert of(there, "hanger_load") == pytest.approx(of(back, "hanger_load")[::-1], rel=1e-6, abs=1e-6)


@given(PLACES, st.integers(1, 60))
@settings(max_examples=60)
def test_no_hanger_is_overloaded_silently(places: list[int], limit: int) -> None:
    sheet = asked(hangers=", ".join(f"{p} in" for p in places), hanger_limit=f"{limit} lbf", flex=None, fixed="0 in")
    keeps_form(sheet)
    over = [f for f in sheet.figures if f.quantity == "hanger_load" and "hanger" in f.conditions and f.typical > limit]
    assert not over or sheet.decision.kind == STOP


@pytest.mark.parametrize(
    ("metric", "foreign"),
    [(True, r"[0-9] (?:in|ft|lbf?|psi|degF)\b"), (False, r"[0-9] (?:mm|cm|m|kg|N|bar|degC)\b")],
)
def test_every_reason_is_in_the_units_that_were_typed(metric: bool, foreign: str) -> None:
    """Hangers too far apart and a first one too far behind: the habit stands beside them in their own unit."""
    told = (
        exhaust_run(
            "3 m",
            "63.5 mm",
            "1.6 mm",
            "409",
            hot="550 degC",
            fixed="0.3 m",
            hangers="1 m, 2.9 m",
            flex="0.15 m at 0.1 m",
        )
        if metric
        else exhaust_run(
            "120 in",
            "2-1/2 in",
            ".065 in",
            "409",
            hot="900 degF",
            fixed="10 in",
            hangers="40 in, 115 in",
            flex="6 in at 4 in",
        )
    )
    reasons = [check.reason for check in told.checks if "hanger" in check.name]
    assert any("the habit is" in reason for reason in reasons)
    assert [reason for reason in reasons if re.search(foreign, reason)] == []
