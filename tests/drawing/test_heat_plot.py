"""The plot of temperature against gap and the section: what is drawn, and that it is true to scale."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from gaugeblock.drawing import heat_plot
from gaugeblock.drawing.svg import TEXT

POINTS = [(0.1, 90.0, 120.0, 180.0), (1.0, 70.0, 95.0, 140.0), (2.5, 60.0, 80.0, 110.0)]


def _plot(points=POINTS, limits=((155.0, "limit 155 degC"),), gaps=((1.0, "measured 1 in"), (9.0, "needed 9 in"))):
    marks = [[heat_plot.Mark(*m) for m in group] for group in (limits, gaps)]
    return heat_plot.temperature_against_gap(points, *marks, "A title & more", "in", "degC")


def test_the_plot_is_well_formed_and_carries_its_words():
    svg = _plot()
    root = ET.fromstring(svg)
    words = [t.text for t in root.iter("{http://www.w3.org/2000/svg}text")]
    assert "limit 155 degC" in words
    assert "measured 1 in" in words
    assert root[0].text == "A title & more"
    assert {float(n) for n in re.findall(r'font-size="([0-9.]+)"', svg)} == {TEXT}
    assert any("measure on the car" in w for w in words)
    assert "<script" not in svg
    assert "http" not in svg.replace("http://www.w3.org/2000/svg", "")


def test_a_gap_off_the_plot_is_left_out():
    assert "needed 9 in" not in _plot()


def test_same_numbers_same_bytes():
    assert _plot() == _plot()


def test_one_point_is_refused():
    with pytest.raises(ValueError, match="two points"):
        _plot(points=POINTS[:1])


def test_a_hotter_limit_is_higher_up():
    def height(limit):
        svg = _plot(limits=((limit, "the limit"), (50.0, "low"), (200.0, "top")), gaps=())
        return float(re.search(r'y="([0-9.]+)"[^>]*>the limit<', svg)[1])

    assert height(150.0) < height(100.0)


@pytest.mark.parametrize("shield", ["none", "flat open", "curved open", "closed"])
def test_the_section_is_to_scale_and_on_the_page(shield):
    svg = heat_plot.section(2.25, 0.1875, 1.0, shield, ("2 1/4 in", "3/16 in", "1 in"), "Section", 25.4)
    root = ET.fromstring(svg)
    wide, tall = (float(n) for n in root.get("viewBox").split()[2:])
    circles = [
        (float(c.get("cx")), float(c.get("cy")), float(c.get("r")))
        for c in root.iter("{http://www.w3.org/2000/svg}circle")
    ]
    hot, line = circles[0], circles[1]
    scale = hot[2] / (2.25 / 2)
    assert line[2] == pytest.approx(0.1875 / 2 * scale, abs=2e-3)
    assert line[0] - line[2] - hot[0] - hot[2] == pytest.approx(1.0 * scale, abs=5e-3)
    for number in re.findall(r"[ML]([0-9.-]+) ([0-9.-]+)", svg):
        assert 0 <= float(number[0]) <= wide
        assert 0 <= float(number[1]) <= tall
    said = re.search(r"scale ([0-9.]+):([0-9.]+)", svg)
    assert scale / 25.4 == pytest.approx(float(said[1]) / float(said[2]), rel=1e-3)


def test_ticks_hold_both_ends():
    rows = heat_plot.ticks(38, 171)
    assert rows[0] <= 38
    assert rows[-1] >= 171
