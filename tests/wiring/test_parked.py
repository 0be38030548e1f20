"""A battery that stands: time by charge, share and draw; a draw or a wish that is too much is asked."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import domains, parked
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.errors import Ambiguous
from gaugeblock.tables.load import refdata
from gaugeblock.wiring import page
from gaugeblock.wiring.job import BATTERY_STARTER, Battery

KEYS = set(Battery.keys)


def test_time_is_charge_by_draw_to_the_share_that_still_starts() -> None:
    """60 Ah x 40 % / 35 mA = 686 h = 28.6 days."""
    sheet = parked("35 mA", battery="60 Ah")
    assert sheet.decision.kind == USE
    assert sheet.decision.figures[0].typical == pytest.approx(28.57, abs=0.005)


def test_reserve_capacity_stands_for_charge() -> None:
    """A car maker's bulletin: 0.6 Ah for each minute; 100 min are 60 Ah."""
    assert parked("35 mA", reserve="100 min").figure("battery_charge").typical == pytest.approx(60)
    bulletin = parked("35 mA", reserve="100 min").decision.figures[0]
    assert bulletin.typical == pytest.approx(parked("35 mA", battery="60 Ah").decision.figures[0].typical)


@pytest.mark.parametrize(
    ("more", "kind", "key"),
    [
        ({"draw": "80 mA"}, ASK, "draw"),
        ({"days": "40 days"}, ASK, "days"),
        ({"draw": "35 A"}, NONE, "draw"),
        ({"battery": "6000 Ah"}, NONE, "battery"),
    ],
)
def test_too_much_is_asked(more: dict[str, str], kind: str, key: str) -> None:
    sheet = parked(**{"draw": "35 mA", "battery": "60 Ah", **more})  # type: ignore[arg-type]
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == (kind, [key])
    assert sheet.decision.do.endswith((".", "?"))


def test_a_wish_that_is_met_is_used() -> None:
    assert parked("35 mA", battery="60 Ah", days="21 days").decision.kind == USE


def test_the_share_that_may_be_gone_stands_for_the_one_that_no_longer_starts() -> None:
    """65 Ah x 50 % / 40 mA = 812.5 h; beyond 40 % it is not sure to start, and that time stands first."""
    decision = parked("40 mA", battery="65 Ah", used="50 %").decision
    assert decision.kind == ASK
    assert [f.typical for f in decision.figures] == pytest.approx([65 * 0.4 / 0.040 / 24, 65 * 0.5 / 0.040 / 24])
    assert "no longer sure to start" in parked("40 mA", battery="65 Ah", used="50 %").checks[-1].reason
    assert "still starts" in parked("40 mA", battery="65 Ah", used="30 %").decision.do
    both = parked("60 mA", battery="65 Ah", used="50 %").decision
    assert (both.kind, both.figures[1].typical) == (ASK, pytest.approx(22.57, abs=0.005))
    assert parked("40 mA", battery="65 Ah", used="5 %").decision.kind == NONE


@pytest.mark.parametrize("used", ["5 %", "20 %", "40 %", "41 %", "60 %", "90 %"])
def test_the_first_time_is_never_longer_than_it_is_sure_to_start(used: str) -> None:
    sure = parked("35 mA", battery="60 Ah").decision.figures[0].typical
    sheet = parked("35 mA", battery="60 Ah", used=used)
    assert sheet.decision.kind == NONE or sheet.decision.figures[0].typical <= sure * (1 + 1e-9)


def test_a_battery_that_is_left_open_is_named() -> None:
    with pytest.raises(Ambiguous) as caught:
        parked("35 mA")
    assert caught.value.nearest == ("battery", "reserve")


@given(st.floats(1, 45), st.floats(1.01, 1.5))
def test_more_draw_never_stands_longer(milliamps: float, more: float) -> None:
    one = parked(f"{milliamps:.3f} mA", battery="60 Ah").figure("parking_time").typical
    other = parked(f"{milliamps * more:.3f} mA", battery="60 Ah").figure("parking_time").typical
    assert other <= one


@pytest.mark.parametrize(("cut", "kind"), [("", USE), ('draw = "35 mA"', NONE), ('battery = "60 Ah"', USE)])
def test_an_item_of_the_job(cut: str, kind: str) -> None:
    text = BATTERY_STARTER.replace("\n#", "\n").removeprefix("#").replace(cut, "#") if cut else BATTERY_STARTER
    text = text.replace("\n#", "\n").removeprefix("#") if not cut else text
    job = domains.parse_job(f'[job]\nvehicle = "EXAMPLE"\n{text}', hooks=domains.hooks(refdata()))
    (one,) = job.batteries  # type: ignore[attr-defined]
    made = page.item(one, job.shop, refdata())
    assert made.sheet.decision.kind == kind
    assert made.card is not None
    assert all(q.key in KEYS for q in made.sheet.questions)
