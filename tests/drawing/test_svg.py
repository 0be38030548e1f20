"""The page builder: plain SVG in millimetres, nothing but black and white, nothing that runs or is fetched."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from gaugeblock.drawing import svg
from gaugeblock.drawing.lengths import degrees_text, inches, millimetres


def test_a_page_is_svg_at_its_size_in_millimetres():
    page = svg.Page(100, 50, 'a "<b>" & c')
    page.text((5, 5), "5 < 6 & 7", bold=True, clear=True)
    root = ET.fromstring(page.svg())
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("100mm", "50mm", "0 0 100 50")
    assert root[0].text == 'a "<b>" & c'
    assert root[-1].text == "5 < 6 & 7"


@pytest.mark.parametrize(
    ("value", "text"), [(0.0, "0"), (-0.0001, "0"), (1.5, "1.5"), (10.0, "10"), (-2.3456, "-2.346")]
)
def test_coordinates_have_no_idle_digits(value, text):
    assert svg.number(value) == text


@pytest.mark.parametrize("direction", ["along", "across", "upright"])
@pytest.mark.parametrize("far", [3.0, 60.0])
def test_a_dimension_has_two_arrowheads_and_its_words_upright(direction, far):
    page = svg.Page(200, 200, "t")
    page.dimension((50, 100), (50 + far, 100 + far), "12 in", off=20, direction=direction)
    root = ET.fromstring(page.svg())
    heads = [e for e in root if e.tag.endswith("path") and e.get("fill") == "#000"]
    assert len(heads) == 2
    (words,) = [e for e in root if e.tag.endswith("text")]
    turn = float((words.get("transform") or "rotate(0 ").split("(")[1].split()[0])
    assert -90.02 <= turn <= 90
    assert words.text == "12 in"


def test_lengths_read_as_a_shop_reads_them():
    assert inches(32)(0.0254 * 5.36) == "5 3/8 in (5.360)"
    assert inches(16, decimals=False)(0.0254 * 5.36) == "5 3/8 in"
    assert inches(32)(-0.0254 / 2) == "-1/2 in (-0.500)"
    assert inches(32)(0.0) == "0 in (0.000)"
    assert millimetres("1")(0.12345) == "123 mm"
    assert degrees_text(0.5) == "28.5 deg"
