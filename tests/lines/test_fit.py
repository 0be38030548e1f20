"""How a line joins: flare, thread, wall under the flare, fluid in it, hose slack."""

from __future__ import annotations

import pytest

from gaugeblock.lines.route import route
from lines.line_sheets import check_of


@pytest.mark.parametrize(
    ("flare", "seat", "result"),
    [
        ("45 deg double", "45 deg", "ok"),
        ("37 deg single", "37 deg", "ok"),
        ("45 deg double", "37 deg", "not ok"),
        ("bubble", "45 deg", "not ok"),
        ("jic", "37 deg", "ok"),  # as the trade names them
        ("double lap", "37 deg", "not ok"),
        ("mushroom flare", "bubble", "ok"),
    ],
)
def test_flares_of_two_angles_never_mix(flare, seat, result):
    assert check_of(route("brake", flare=flare, seat=seat), "flare against seat").result == result


@pytest.mark.parametrize(
    ("nut", "port", "result", "words"),
    [
        ("3/8-24", "3/8-24", "ok", ""),
        ("M10x1.0", "M10x1", "ok", ""),
        ("3/8-24", "M10x1.0", "not ok", "starts in"),
        ("7/16-24", "7/16-20", "not ok", "starts in"),
        ("M10x1.25", "M10x1.0", "not ok", "starts in"),
        ("M12x1.0", "M10x1.0", "not ok", "does not enter"),
        ("3/8-24", "1/2-20", "not ok", "does not enter"),
    ],
)
def test_pairs_that_start_and_then_strip_are_named(nut, port, result, words):
    check = check_of(route("brake", nut=nut, port=port), "nut thread")
    assert check.result == result
    assert words in check.reason


def test_the_common_wall_is_just_what_a_double_flare_takes():
    def result(wall):
        return check_of(
            route("brake", od="3/16 in", wall=wall, flare="45 deg double", seat="45 deg"), "wall against flare"
        ).result

    assert result("0.028 in") == "ok"
    assert result("0.035 in") == "not ok"


def test_fluid_against_rubber_where_a_text_names_the_pair():
    assert check_of(route("brake", material="EPDM", fluid="DOT 4"), "fluid against").result == "ok"
    assert (
        check_of(
            route("brake", material="FKM", klass="expansion joint", state="continuous", fluid="DOT 4"), "fluid against"
        ).result
        == "cannot tell"
    )
    assert check_of(route("fuel feed", material="R6", fluid="E85"), "fluid against").result == "cannot tell"


@pytest.mark.parametrize(
    ("droop", "lock", "result"),
    [("300 mm", "280 mm", "ok"), ("300 mm", "310 mm", "not ok"), ("305 mm", None, "cannot tell")],
)
def test_a_hose_keeps_slack_under_pressure(droop, lock, result):
    """A flexible hose may shorten by 4 % under pressure: 320 mm leaves 307.2 mm."""
    assert check_of(route("brake", hose_length="320 mm", droop=droop, lock=lock), "hose slack").result == result
