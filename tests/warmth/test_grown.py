"""Growth by heat: a coefficient printed without its range of temperature serves near a room's heat alone."""

from __future__ import annotations

import pytest

from gaugeblock import growth
from gaugeblock.errors import LookupMiss
from gaugeblock.tables.load import refdata
from gaugeblock.warmth.grown import per_length

DATA = refdata()
WITHOUT_RANGE = sorted(
    {r["material"] for r in DATA.table("lines/expansion").rows if r["temperature"] == "any" and not r.standing}
)


@pytest.mark.parametrize("fahrenheit", range(200, 1301, 50))
def test_steel_grows_as_carbon_steel_does(fahrenheit: int) -> None:
    """ASME II-D Table TE-1 group 1: the mean coefficient rises from 6.7 at 200 to 8.4e-6/degF at 1300 degF."""
    plain, own = (
        growth("6 ft", hot=f"{fahrenheit} degF", material=name).decision.figure for name in ("steel", "carbon steel")
    )
    assert plain is not None
    assert own is not None
    assert plain.typical == own.typical


def test_six_feet_of_steel_at_900_degf_grow_by_the_printed_table() -> None:
    """ASME II-D Table TE-1: 7.9 in per 100 ft from 70 to 900 degF."""
    figure = growth("6 ft", hot="900 degF", material="steel").decision.figure
    assert figure is not None
    assert figure.typical == pytest.approx(7.9 * 6 / 100, rel=1e-9)


@pytest.mark.parametrize("material", WITHOUT_RANGE)
@pytest.mark.parametrize("hot", ["101 degC", "480 degC", "1200 degF"])
def test_no_coefficient_without_its_range_serves_a_hot_part(material: str, hot: str) -> None:
    got = per_length(material, hot, DATA)
    assert got is None or got.key["temperature"] != "any"


def test_what_has_no_figure_at_a_heat_is_said_to_have_none() -> None:
    sheet = growth("1 m", hot="480 degC", material="grey cast iron")
    assert sheet.decision.kind == "none"
    assert "state its coefficient" in sheet.decision.do


def test_what_is_no_material_is_refused() -> None:
    with pytest.raises(LookupMiss):
        growth("1 m", hot="480 degC", material="unobtanium")


@pytest.mark.parametrize(("short", "name"), [("304", "stainless steel 304"), ("mild steel", "carbon steel")])
def test_a_material_is_called_as_people_call_it(short: str, name: str) -> None:
    sheets = [growth("60 in", hot="500 degC", material=one) for one in (short, name)]
    assert sheets[0].decision.figure is not None
    assert sheets[0].decision.figure.typical == sheets[1].decision.figure.typical  # type: ignore[union-attr]
