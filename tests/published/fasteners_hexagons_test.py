"""Widths across flats against printed ones that the rows were not taken from, each with its source."""

from __future__ import annotations

import pytest

from gaugeblock import spanner
from gaugeblock.answer.making import base

MM, IN = 0.001, 0.0254


def width_mm(size: str, head: str, standard: str | None = None) -> float:
    return base(spanner(size, head=head, standard=standard).decision.figures[0]) / MM


# Encyclopedia article "Width across flats", table of metric threads; and its sentence on ISO 272 of 1982, with which
# the widths of M10, M12, M14 and M22 changed from 17, 19, 22 and 32 mm.
ARTICLE = {"M4": 7, "M5": 8, "M6": 10, "M8": 13, "M10": 16, "M12": 18, "M16": 24, "M20": 30, "M24": 36}
BEFORE = {"M10": 17, "M12": 19, "M14": 22, "M22": 32}


@pytest.mark.parametrize("size", ARTICLE)
@pytest.mark.parametrize("head", ["bolt", "nut"])
def test_metric_hexagons_of_today(size: str, head: str) -> None:
    assert width_mm(size, head) == pytest.approx(ARTICLE[size])


@pytest.mark.parametrize("size", BEFORE)
@pytest.mark.parametrize("head", ["bolt", "nut"])
def test_metric_hexagons_before_iso_272_of_1982(size: str, head: str) -> None:
    assert width_mm(size, head, "DIN") == pytest.approx(BEFORE[size])
    assert width_mm(size, head) != pytest.approx(BEFORE[size])


# JIS B 1180 as a Japanese engineers' page on bolts tabulates it: the body of the standard, which is ISO 4014, and its
# annex with the older widths.
JIS_BODY = {"M10": 16, "M12": 18, "M14": 21, "M18": 27, "M20": 30, "M22": 34}
JIS_ANNEX = {"M10": 17, "M12": 19, "M14": 22, "M18": 27, "M20": 30, "M22": 32}


@pytest.mark.parametrize("size", JIS_BODY)
def test_the_body_and_the_annex_of_jis_b_1180(size: str) -> None:
    assert width_mm(size, "bolt") == pytest.approx(JIS_BODY[size])
    assert width_mm(size, "bolt", "DIN") == pytest.approx(JIS_ANNEX[size])


# ASME B18.2.1 as a bolt maker's page prints it, hex cap screws, width across flats F: maximum and minimum, in.
CAP_SCREWS = {
    "1/4": (0.438, 0.428),
    "5/16": (0.500, 0.489),
    "3/8": (0.562, 0.551),
    "7/16": (0.625, 0.612),
    "1/2": (0.750, 0.736),
    "9/16": (0.812, 0.798),
    "5/8": (0.938, 0.922),
    "3/4": (1.125, 1.100),
    "7/8": (1.312, 1.285),
    "1": (1.500, 1.469),
}
# Machinery's Handbook, 31st ed., Table 7, p. 1677, hex nuts, width across flats F: maximum and minimum, in.
NUTS = {
    "1/4": (0.438, 0.428),
    "5/16": (0.500, 0.489),
    "3/8": (0.562, 0.551),
    "7/16": (0.688, 0.675),
    "1/2": (0.750, 0.736),
    "9/16": (0.875, 0.861),
    "5/8": (0.938, 0.922),
    "3/4": (1.125, 1.088),
    "7/8": (1.312, 1.269),
    "1": (1.500, 1.450),
}
# ASME B18.2.2, wrench openings, as an engineering page prints them: basic size, minimum and maximum opening, in.
OPENINGS = {
    "1/4": (0.440, 0.446),
    "5/16": (0.504, 0.510),
    "3/8": (0.566, 0.573),
    "7/16": (0.629, 0.636),
    "1/2": (0.755, 0.763),
    "9/16": (0.818, 0.826),
    "5/8": (0.944, 0.953),
    "3/4": (1.132, 1.142),
    "7/8": (1.320, 1.331),
    "1": (1.508, 1.520),
}


@pytest.mark.parametrize(("head", "printed"), [("bolt", CAP_SCREWS), ("nut", NUTS)])
def test_an_inch_hexagon_is_the_printed_maximum(head: str, printed: dict[str, tuple[float, float]]) -> None:
    for size, (most, least) in printed.items():
        width = width_mm(f"{size} in", head) * MM / IN
        assert width == pytest.approx(most, abs=0.0005001)  # half a unit in the last printed digit
        assert width > least


@pytest.mark.parametrize("size", OPENINGS)
def test_the_opening_of_the_spanner_clears_the_bolt(size: str) -> None:
    least, most = OPENINGS[size]
    width = width_mm(f"{size} in", "bolt") * MM / IN
    assert width < least < most < width + 1 / 32


# DIN 912 as a screw maker's page tabulates it, hexagon socket s; ISO 4762 has the same.
SOCKETS = {
    "M3": 2.5,
    "M4": 3,
    "M5": 4,
    "M6": 5,
    "M8": 6,
    "M10": 8,
    "M12": 10,
    "M14": 12,
    "M16": 14,
    "M20": 17,
    "M24": 19,
}
# ASME B18.3 as another page prints it in millimetres, nominal hexagon socket J: a size, the key in 64ths of an inch.
INCH_SOCKETS = {"#2": 5, "#3": 5, "#4": 6, "#5": 6, "#6": 7, "#8": 9, "#10": 10}


@pytest.mark.parametrize("size", SOCKETS)
def test_metric_hex_keys(size: str) -> None:
    assert width_mm(size, "socket head cap screw") == pytest.approx(SOCKETS[size])


@pytest.mark.parametrize("size", INCH_SOCKETS)
def test_inch_hex_keys(size: str) -> None:
    key = width_mm(size, "socket head cap screw") * MM / IN
    assert key == pytest.approx(INCH_SOCKETS[size] / 64)


def test_a_structural_bolt_has_the_hexagon_of_its_heavy_nut() -> None:
    """Research Council on Structural Connections, as a bolt page tells it: one wrench turns the head and the nut."""
    for size in ("1/2", "5/8", "3/4", "7/8", "1"):
        bolt, nut = (width_mm(f"{size} in", head) for head in ("structural bolt", "heavy nut"))
        assert bolt == pytest.approx(nut, abs=0.0006 * IN / MM)
