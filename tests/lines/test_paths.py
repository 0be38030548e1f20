"""A line along its path: the gap at the nearest place."""

from __future__ import annotations

import pytest

from gaugeblock.calc.clearance import straight_pipe
from gaugeblock.errors import InputError
from gaugeblock.lines.paths import route_along, route_of_part
from lines.line_sheets import BESIDE, hottest, job_line, says


def test_the_gap_of_two_paths_is_their_nearest_place():
    line = straight_pipe("line", (0.0, 0.04, 0.0), (1.0, 0.09, 0.0), 0.00238125)
    hot = straight_pipe("exhaust", (0.0, 0.0, 0.0), (1.0, 0.0, 0.0), 0.028575)
    sheet = route_along(line, hot, "brake", **{k: v for k, v in BESIDE.items() if k not in ("gap", "od", "hot_od")})
    # the slanted line starts 40 mm beside the axis and leaves it from there
    assert sheet.figure("gap").value / 1000 == pytest.approx(0.04 - 0.00238125 - 0.028575, abs=2e-5)
    assert hottest(sheet)
    assert says(sheet, "nearest place of line to exhaust")
    with pytest.raises(InputError):
        route_along(line, hot, "brake", gap="1 in")


PATHS = {
    "points": [["0 in", "0 in", "0 in"], ["40 in", "0 in", "0 in"]],
    "hot": {"name": "pipe", "points": [["20 in", "-20 in", "3 in"], ["20 in", "20 in", "3 in"]], "od": "2 in"},
}


def _line_of_a_job(**keys):
    given = {k: v for k, v in BESIDE.items() if k not in ("gap", "hot_od", "od")}
    return job_line(**{"name": "line", "service": "brake", "od": "3/16 in", **given, **PATHS, **keys})


def test_the_paths_of_a_job_line_give_its_gap_and_its_nearest_place():
    """Two straight bodies square to each other: 3 in between centre lines, less 1 in and 3/32 in."""
    sheet = route_of_part(_line_of_a_job())
    # 1.90625 in; the search gives a lower bound within 0.02 mm of it, cut to 0.001 in on the near side
    assert 1.904 <= float(sheet.asked["gap"].removesuffix(" in")) <= 1.906
    assert says(sheet, "at 20 in rearward from the datum")
    assert (sheet.asked["length"], sheet.asked["hot_od"]) == ("40.0 in", "2 in")
    metric = route_of_part(_line_of_a_job(), is_metric=True)
    assert 48.38 <= float(metric.asked["gap"].removesuffix(" mm")) <= 48.419
    assert says(metric, "at 508 mm rearward from the datum")
    assert (metric.asked["length"], metric.asked["hot_od"]) == ("1016 mm", "50.8 mm")
    assert "from the paths" in sheet.figure("gap").note
    assert (
        route_of_part(_line_of_a_job(points=[["0 in", "0 in", "3 in"], ["40 in", "0 in", "3 in"]])).asked["gap"]
        == "0.000 in"
    )


def test_a_gap_measured_on_the_car_governs_over_the_paths():
    sheet = route_of_part(_line_of_a_job(gap="1-1/4 in"))
    assert sheet.asked["gap"] == "1-1/4 in"


def test_points_that_do_not_fit_the_radius_of_a_line_are_refused():
    sharp = [["0 in", "0 in", "0 in"], ["1 in", "0 in", "0 in"], ["1 in", "1 in", "0 in"]]
    with pytest.raises(InputError, match="line"):
        route_of_part(_line_of_a_job(points=sharp, radius="6 in"))
