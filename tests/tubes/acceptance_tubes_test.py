"""Fifteen look-ups a shop makes of each tube table: the figure, a refusal with the nearest keys, or "no published
source".
"""

from __future__ import annotations

import pytest

from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.tubes.bend.sheet import bend
from gaugeblock.tubes.flare import flare
from gaugeblock.tubes.gauge import gauge
from gaugeblock.tubes.material import material
from gaugeblock.tubes.pipe import pipe

NO_SOURCE = "no published source"


def meets(run, quantity: str, expected: str) -> None:  # type: ignore[no-untyped-def]
    """``expected`` is a printed figure, ``no published source``, or ``refused: text that the refusal must hold``."""
    if expected.startswith("refused: "):
        with pytest.raises(GaugeblockError) as caught:
            run()
        assert caught.value.nearest
        assert expected.removeprefix("refused: ") in str(caught.value)
        return
    sheet: Sheet = run()
    if expected == NO_SOURCE:
        assert any(NO_SOURCE in c.reason and c.result == "cannot tell" for c in sheet.checks)
        return
    figures = [f for f in sheet.figures if f.quantity == quantity]
    shown = [f"{f.text or f'{f.typical:.6g}'} {f.unit}".removesuffix(" 1") for f in figures]
    assert expected in shown, shown
    assert all(f.source or f.basis in ("common practice", "derived") for f in figures)


MATERIALS = [
    ("1020 DOM as drawn", "yield_strength", "60 ksi"),
    ("1020 DOM as drawn", "elongation", "5 %"),
    ("1020 DOM stress relieved", "elongation", "10 %"),
    ("1020 normalised", "elongation", "25 %"),
    ("1020 ERW", "yield_strength", "38 ksi"),
    ("1026 DOM as drawn", "tensile_strength", "80 ksi"),
    ("4130 normalized", "tensile_strength", "70 ksi"),
    ("4130 normalized", "tensile_strength_typical", "90 ksi"),
    ("chromoly norm MIL-T-6736", "yield_strength", "refused: depends on od and wall"),
    ("304", "elongation", "35 %"),
    ("cuni", "modulus", "18 Msi"),
    ("1020 DOM", "yield_strength", "refused: as drawn"),
    ("mild steel", "yield_strength", "refused: the grade is missing"),
    ("1541", "yield_strength", "refused: 1524"),
    ("6061", "yield_strength", "refused: the grade is missing"),
]


@pytest.mark.parametrize(("typed", "quantity", "expected"), MATERIALS)
def test_materials(typed: str, quantity: str, expected: str) -> None:
    meets(lambda: material(typed), quantity, expected)


BENDS = [
    ("1 3/4 in", ".120 in", "1020 DOM", "rotary draw", "vehicle", "bend_radius_minimum", "3.9 in"),
    ("1 3/4 in", ".120 in", "1020 DOM", "rotary draw", "roll cage", "bend_radius_minimum", "5.25 in"),
    ("1 3/4 in", ".095 in", "DOM", "rotary draw", "vehicle", "bend_radius_minimum", "5.1 in"),
    ("1 1/2 in", ".095 in", "4130 normalized", "rotary draw", "vehicle", "bend_ratio_minimum", "3"),
    ("1 1/2 in", ".120 in", "ERW", "draw bender", "vehicle", "bend_radius_minimum", "3.5 in"),
    ("38 mm", "2.5 mm", "steel", "mandrel", "cage", "bend_radius_minimum", "114 mm"),
    ("2 1/2 in", ".065 in", "304 stainless", "mandrel bent", "vehicle", "bend_ratio_minimum", "1.5"),
    ("3 in", ".065 in", "mild steel", "muffler bender", "vehicle", "bend_ratio_minimum", "4"),
    ("3/16 in", ".028 in", "cuni", "by hand", "vehicle", "bend_ratio_minimum", "3"),
    ("3/8 in", ".035 in", "steel", "by hand", "aircraft", "bend_radius_minimum", "1.3125 in"),
    ("1 in", ".065 in", "304", "rotary draw", "vehicle", "", NO_SOURCE),
    ("1 1/4 in", ".125 in", "6061-T6", "rotary draw", "vehicle", "", NO_SOURCE),
    ("1 1/2 in sch 40", ".145 in", "steel", "rotary draw", "vehicle", "", "refused: 1.9 in"),
    ("1 3/4 in", "11 ga", "DOM", "rotary draw", "vehicle", "", "refused: BWG"),
    ("1 3/4 in", ".120 in", "DOM", "hydraulic wishful", "vehicle", "", "refused: hydraulic"),
]


@pytest.mark.parametrize(("od", "wall", "metal", "method", "service", "quantity", "expected"), BENDS)
def test_bend_minimums(od: str, wall: str, metal: str, method: str, service: str, quantity: str, expected: str) -> None:
    meets(lambda: bend(od=od, wall=wall, material=metal, method=method, service=service), quantity, expected)


GAUGES = [
    ("16 BWG", None, "0.065 in"),
    ("11 BWG", None, "0.120 in"),
    ("16 ga", "tube gauge", "0.065 in"),
    ("16", "sheet steel", "0.0598 in"),
    ("16", "stainless sheet", "0.0625 in"),
    ("16 AWG", None, "0.0508 in"),
    ("16 ga", None, "refused: only with its system"),
    ("40 BWG", None, "refused: gauge"),
]
PIPES = [
    ("1 1/2", None, "outside_diameter", "1.9 in"),
    ("1-1/2 pipe", "sch 40", "wall_thickness", "0.145 in"),
    ("1", "sch 40", "inside_diameter", "1.049 in"),
    ("2", "80", "wall_thickness", "0.218 in"),
    ("1/2", "40", "outside_diameter", "0.84 in"),
    ("1 1/2", "160X", "", "refused: 10"),
    ("1.9", None, "", "refused: 1 1/2"),
]


@pytest.mark.parametrize(("number", "system", "expected"), GAUGES)
def test_gauges(number: str, system: str | None, expected: str) -> None:
    meets(lambda: gauge(number, system=system), "wall_thickness", expected)


@pytest.mark.parametrize(("nps", "schedule", "quantity", "expected"), PIPES)
def test_pipe_sizes(nps: str, schedule: str | None, quantity: str, expected: str) -> None:
    meets(lambda: pipe(nps, schedule=schedule), quantity, expected)


FLARES = [
    ("double", "3/16 in", None, "wall_maximum", "0.71 mm"),
    ("double", "3/16 in", "inverted flare", "nut_thread_major_diameter", "0.375 in"),
    ("double", "1/4 in", "brake nut", "nut_threads_per_inch", "24 1/in"),
    ("45 single", "3/16 in", None, "wall_maximum", "0.89 mm"),
    ("double", "3/16 in", "metric brake nut", "nut_thread_major_diameter", "10 mm"),
    ("bubble", "4.75 mm", None, "nut_thread_major_diameter", "10 mm"),
    ("bubble", "6 mm", None, "nut_thread_pitch", "1 mm"),
    ("AN", "3/8 in", "AN924", "nut_thread_major_diameter", "0.5625 in"),
    ("JIC", "1/2 in", "SAE J514", "nut_threads_per_inch", "16 1/in"),
    ("AN", "1/4 in", None, "seat_angle", "37 deg"),
    ("ORB", "3/8 in", None, "port_thread_major_diameter", "0.5625 in"),
    ("bubble", "3/16 in", None, "wall_maximum", NO_SOURCE),
    ("AN", "3/8 in", None, "wall_maximum", NO_SOURCE),
    ("double", "5 in", None, "", "refused: 3/4 in"),
    ("triple", "3/16 in", None, "", "refused: not a key of this table; nearest: 37 deg double"),
]


@pytest.mark.parametrize(("kind", "od", "standard", "quantity", "expected"), FLARES)
def test_flares(kind: str, od: str, standard: str | None, quantity: str, expected: str) -> None:
    meets(lambda: flare(kind, od=od, standard=standard), quantity, expected)
