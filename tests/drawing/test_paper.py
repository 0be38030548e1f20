"""Paper at full size: true scales, lines where they belong, and cuts that fit in space."""

from __future__ import annotations

import importlib.util
import math
import re
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.calc.cope import PieCuts, cope, cope_depth, mitre_depth
from gaugeblock.drawing import paper

INCH = 0.0254
_spec = importlib.util.spec_from_file_location("drawing_checks", Path(__file__).with_name("test_tube_drawing.py"))
checks = importlib.util.module_from_spec(_spec)
sys.modules["drawing_checks"] = checks
_spec.loader.exec_module(checks)

PAGES = {
    "strip": lambda: paper.wrap_strip(1.75 * INCH, [("1", 0.0), ("2", math.pi), ("3", 4.0)], title="t"),
    "wide strip": lambda: paper.wrap_strip(0.2, [("1", 0.0), ("2", 5.0)], title="t"),
    "cope": lambda: paper.cope_template(header_od=0.05, od=0.044, wall=0.003, angle=1.0, title="t"),
    "offset cope": lambda: paper.cope_template(
        header_od=0.05, od=0.03, wall=0.002, angle=1.2, offset=-0.008, title="t"
    ),
    "mitre": lambda: paper.mitre_template(0.06, 1.0, title="t"),
    "pie": lambda: paper.pie_template(0.076, 0.114, math.pi / 2, 5, title="t"),
}


def _lines(text):
    """Every straight line of a page as ((x, y), (u, v))."""
    for e in ET.fromstring(text).iter():
        if e.tag.endswith("path"):
            n = [float(x) for x in re.findall(r"-?[\d.]+", e.get("d"))]
            if len(n) == 4:
                yield (n[0], n[1]), (n[2], n[3])


@pytest.mark.parametrize("name", PAGES)
def test_every_page_has_both_scales_at_true_length_and_prints_whole(name):
    pages = PAGES[name]()
    assert pages
    for text in pages:
        checks.assert_prints(text)
        flat = [round(abs(b[0] - a[0]), 3) for a, b in _lines(text) if a[1] == b[1] and a[1] > 165]
        assert 101.6 in flat  # 4 in
        assert 100.0 in flat  # 100 mm
        assert any(w.startswith("PRINT AT 100 %") for w in checks.words_of(text))
        assert (ET.fromstring(text).get("width"), ET.fromstring(text).get("height")) == ("259mm", "190mm")


def test_turn_lines_stand_at_their_share_of_the_way_round():
    (text,) = PAGES["strip"]()
    around = math.pi * (1.75 * 25.4 + 0.1)
    upright = sorted(a[0] for a, b in _lines(text) if a[0] == b[0] and abs(b[1] - a[1]) == pytest.approx(32))
    assert upright == pytest.approx([10.0, 10.0 + around / 2, 10.0 + around * 4.0 / (2 * math.pi)], abs=0.01)
    assert paper.round_length(1.75 * INCH) == pytest.approx(around)


def test_a_wide_tube_gets_its_strip_in_rows():
    pages = PAGES["wide strip"]()
    widths = [
        float(e.get("width"))
        for text in pages
        for e in ET.fromstring(text).iter()
        if e.tag.endswith("rect") and e.get("height") == "32"
    ]
    assert sum(widths) == pytest.approx(math.pi * 200.1, abs=0.01)
    assert max(widths) <= 228


@given(st.floats(0.3, math.pi / 2), st.floats(0.3, 0.95), st.floats(-1, 1), st.floats(0, 2 * math.pi))
def test_a_cope_lies_on_the_header(angle, share, over, t):
    header, radius = 0.03, 0.03 * share
    offset = over * (header - radius)
    z = cope_depth(header, radius, angle, offset, t)
    # the branch runs from the header's axis (along x) at its angle; the place on it in space
    away = np.array([math.cos(angle), 0, math.sin(angle)])
    acute = np.array([math.sin(angle), 0, -math.cos(angle)])
    spot = z * away + radius * math.cos(t) * acute + (radius * math.sin(t) + offset) * np.array([0, 1, 0])
    assert math.hypot(spot[1], spot[2]) == pytest.approx(header, rel=1e-9)


@given(st.floats(0.3, math.pi / 2), st.floats(0.3, 0.95), st.floats(0.05, 1.0), st.floats(-1, 1))
@settings(max_examples=60)
def test_no_part_of_the_wall_goes_into_the_header_and_some_part_touches(angle, share, wall_share, over):
    header, outer = 0.03, 0.03 * share
    wall = outer * wall_share
    offset = over * (header - outer)
    got = cope(header_od=2 * header, od=2 * outer, wall=wall, angle=angle, offset=offset, count=72)
    for t, z in got:
        depths = [cope_depth(header, r, angle, offset, t) for r in np.linspace(outer - wall, outer, 200)]
        assert z >= max(depths) - 1e-12
        assert z - max(depths) < 1e-5


def test_a_square_cope_is_cut_by_the_inside_edge():
    for t, z in cope(header_od=0.05, od=0.04, wall=0.003, angle=math.pi / 2, count=36):
        assert z == pytest.approx(cope_depth(0.025, 0.017, math.pi / 2, 0.0, t))


@pytest.mark.parametrize(
    "bad",
    [
        {"od": 0.06},
        {"offset": 0.02},
        {"angle": 0.0},
        {"angle": 1.6},
        {"wall": 0.0},
    ],
)
def test_copes_that_miss_or_make_no_sense_are_refused(bad):
    with pytest.raises(ValueError, match=r"misses|angle"):
        cope(**({"header_od": 0.05, "od": 0.04, "wall": 0.003, "angle": 1.0} | bad))


@given(st.floats(0.05, 1.5), st.floats(0, 2 * math.pi))
def test_two_mitred_ends_meet_in_one_plane(turn, t):
    # the cut stands in the plane that halves the corner: height over it is linear in the place across the tube
    z = mitre_depth(0.02, turn / 2, t)
    assert z == pytest.approx(math.tan(turn / 2) * (0.02 - 0.02 * math.cos(t)), abs=1e-12)


def test_pie_cuts_turn_by_their_angle_and_close_on_the_radius():
    cuts = PieCuts(0.114, 0.076, math.pi / 2, 5)
    assert 2 * 5 * cuts.mitre == pytest.approx(math.pi / 2)
    # walk the centre lines: half a piece, corner, piece, ..., half a piece: ends at (R, R) heading square to the start
    at, heading = np.zeros(2), 0.0
    for i in range(6):
        length = cuts.end[1] if i in (0, 5) else cuts.middle[1]
        at = at + length * np.array([math.cos(heading), math.sin(heading)])
        heading += 2 * cuts.mitre if i < 5 else 0.0
    assert at == pytest.approx([0.114, 0.114])
    with pytest.raises(ValueError, match="half the diameter"):
        PieCuts(0.03, 0.076, 1.0, 3)
    with pytest.raises(ValueError, match="joint"):
        PieCuts(0.3, 0.076, 1.0, 0)


def test_a_cut_too_deep_for_a_page_is_refused():
    with pytest.raises(ValueError, match="does not fit a page"):
        paper.mitre_template(0.2, 2.2, title="t")
