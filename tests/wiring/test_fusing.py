"""The fuse of a load carries it, the wire that is named stands the fuse, and a wire's largest fuse is within it."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import Ambiguous, InputError, fuse
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import refdata
from gaugeblock.wiring import conductor
from gaugeblock.wiring.fusing import Fused
from gaugeblock.wiring.settings import Setting, lying

COOL = {"insulation": "105 degC", "air": "30 degC", "bundle": "1"}


@given(st.floats(0.5, 450))
def test_the_fuse_carries_its_load_and_habits_share_of_it(amperes: float) -> None:
    sheet = fuse(f"{amperes:.3f} A", **COOL)
    fuses = [base(f) for f in sheet.decision.figures]
    assert fuses == sorted(fuses, reverse=True)
    if amperes > 400:
        assert len(fuses) == 1  # no fuse of the table is that large
        assert sheet.decision.kind == ASK
        return
    assert all(f >= round(amperes, 3) for f in fuses)
    if sheet.decision.kind == USE:
        assert amperes <= 0.8001 * fuses[0]
    else:
        assert amperes > 0.7999 * fuses[-1]


@pytest.mark.parametrize("size", ["AWG 16", "AWG 14", "AWG 12", "AWG 10", "AWG 8"])
def test_a_wires_largest_fuse_is_within_the_boat_rules_current(size: str) -> None:
    """33 CFR 183.425 Table 5, the column for 105 degC, at the air that the table is made for."""
    table = look_up(
        "wiring/wire",
        "current_maximum",
        data=refdata(),
        item="boat copper wire",
        size=size,
        condition="105 degC insulation",
    )
    sheet = fuse(wire=size.removeprefix("AWG ") + " AWG", **COOL)
    assert sheet.decision.kind == USE
    rating = base(sheet.decision.figures[0])
    assert rating <= base(table)
    larger = [float(r.cells["value"]) for r in refdata().table("wiring/fuses").by_quantity["fuse_rating"]]
    assert not [one for one in larger if rating < one <= base(table)]


@pytest.mark.parametrize("size", ["AWG 18", "AWG 14", "AWG 10", "AWG 4", "AWG 2/0"])
@pytest.mark.parametrize("said", [{}, {"insulation": "GXL"}, {"bundle": "10"}, {"air": "by the engine"}])
def test_the_smallest_holds_wherever_the_wire_may_lie(size: str, said: dict[str, str]) -> None:
    data = refdata()
    name = size.removeprefix("AWG ") + " AWG"
    of = Fused({"wire": name, **said}, data)
    lies = [lie for ways in product(*lying(of, data)) if conductor.serves(lie := Setting(ways))]
    least = min(base(conductor.allowed(size, lie, data)) for lie in lies)
    assert base(fuse(wire=name, **said).decision.figures[0]) <= least
    assert base(fuse(wire=name, fact="current", **said).decision.figures[0]) == pytest.approx(least)


@pytest.mark.parametrize("said", [{}, {"insulation": "GXL"}, {"bundle": "10"}])
def test_a_wire_that_is_named_is_judged_where_it_lies_hottest(said: dict[str, str]) -> None:
    least = base(fuse(wire="10 AWG", fact="current", **said).decision.figures[0])
    sheet = fuse("10 A", wire="10 AWG", **said)
    check = next(c for c in sheet.checks if c.name == "wire stands the fuse")
    assert check.actual is not None
    assert check.actual.value == pytest.approx(least)


def test_where_no_single_wire_serves_it_is_said() -> None:
    assert "no single wire" in fuse("350 A").decision.candidates[0].then


def test_a_power_is_a_current_at_its_voltage() -> None:
    twelve, six = fuse("60 W"), fuse("60 W", voltage="6 V")
    assert twelve.figure("circuit_current").typical == pytest.approx(5)
    assert six.figure("circuit_current").typical == pytest.approx(10)


def test_a_hot_wire_takes_a_smaller_fuse_than_a_cool_one() -> None:
    hot = fuse(wire="12 AWG", insulation="105 degC", air="90 degC", bundle="10").decision.figures[0]
    cool = fuse(wire="12 AWG", **COOL).decision.figures[0]
    assert base(hot) < base(cool)


def test_a_wire_too_small_for_its_load_stops_where_all_is_settled() -> None:
    sheet = fuse("24 A", wire="16 AWG", insulation="80 degC", air="50 degC", bundle="10")
    assert sheet.decision.kind == STOP
    assert "16" in sheet.decision.do


def test_a_wire_that_may_be_too_small_is_the_reason_where_the_load_is_known_to_last() -> None:
    sheet = fuse("20 A", lasts="yes", wire="14 AWG")
    (asks,) = [check for check in sheet.checks if check.asks]
    assert sheet.decision.kind == ASK
    assert sheet.decision.do == f"{asks.reason}."
    assert sheet.decision.because == (asks.name,)
    assert [f"{f.text} {f.unit}" for f in sheet.decision.figures] == ["25 A"]


def test_what_is_left_open_is_said_with_each_candidate() -> None:
    decision = fuse(wire="14 AWG").decision
    assert decision.kind == ASK
    assert len({c.when for c in decision.candidates}) == len(decision.candidates) == 3


def test_neither_load_nor_wire_is_asked_back() -> None:
    with pytest.raises(Ambiguous):
        fuse()


def test_a_load_that_no_car_has_is_questioned() -> None:
    assert fuse("5000 A").decision.kind == NONE
    with pytest.raises(InputError):
        fuse("-3 A")


def test_air_over_the_insulation_has_no_fuse() -> None:
    assert fuse("8 A", insulation="80 degC", air="100 degC").decision.kind == NONE
