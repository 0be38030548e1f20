"""The printed conversions of hardness read the other way: from a strength to a hardness, and back."""

from __future__ import annotations

import pytest

from gaugeblock import ask, hardness, steel
from gaugeblock.answer.decision import NONE, USE


# ASTM E140, its last column as a report prints it, and SAE J417: 40 HRC is near 182 ksi, 30 HRC near 138 ksi.
@pytest.mark.parametrize("hrc", range(26, 56, 3))
def test_there_and_back(hrc: int) -> None:
    strength = hardness("HRC", str(hrc)).figure("tensile_strength_typical")
    back = hardness("tensile", f"{strength.typical!r} {strength.unit}")
    assert back.decision.kind == USE
    assert back.decision.figure is not None
    assert back.decision.figure.unit == "HRC"
    assert back.decision.figure.typical == pytest.approx(hrc, abs=0.6)


def test_a_stronger_steel_is_harder() -> None:
    found = [hardness("tensile", f"{ksi} ksi").decision.figure for ksi in range(125, 270, 5)]
    numbers = [figure.typical for figure in found if figure is not None and figure.unit == "HRC"]
    assert len(numbers) > 20
    assert numbers == sorted(numbers)


def test_it_is_wanted_on_a_scale() -> None:
    sheet = hardness("tensile", "850 MPa", to="HB")
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.unit == "HB"
    assert sheet.decision.figure.typical == pytest.approx(
        255, rel=0.03
    )  # 248 to 302 HB go with 850 to 1000 MPa, BS 970
    assert hardness("tensile", "2000 ksi").decision.kind == NONE


def test_a_steel_without_a_hardness_is_told_by_its_strength() -> None:
    sheet = steel("4140", treatment="oil quenched and tempered", temper="1000 degF", fact="hardness")
    assert sheet.decision.kind == USE
    assert sheet.decision.figure is not None
    assert 28 <= sheet.decision.figure.typical <= 35
    assert "conversion" in sheet.decision.do


@pytest.mark.parametrize(
    ("line", "strength", "to"),
    [
        ("what hardness is 150 ksi", "150 ksi", None),
        ("how hard is a 1000 mpa steel", "1000 MPa", None),
        ("180 ksi tensile in rockwell", "180 ksi", "HRC"),
        ("850 mpa in brinell", "850 MPa", "HB"),
    ],
)
def test_it_is_asked_in_plain_words(line: str, strength: str, to: str | None) -> None:
    assert ask(line) == hardness("tensile", strength, to=to)
