"""What is stated of a line in place of the tables: limit, margin, film coefficient, expansion, clip spacing."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import Ambiguous, InputError, UnitError
from gaugeblock.figure import Figure
from gaugeblock.lines.held import clips, growth
from gaugeblock.lines.route import route

HOT = {
    "fluid": "DOT 4",
    "fluid_state": "wet",
    "beside": "exhaust header",
    "gap": "1 in",
    "od": "3/16 in",
    "hot_od": "2-1/4 in",
    "hot_temperature": "400 degC",
    "hot_finish": "0.8",
    "finish": "0.8",
    "air": "50 degC",
    "soak_air": "80 degC",
    "speed": "5 m/s",
}


def line(**more: str) -> Sheet:
    return route(**{**HOT, **more})


def of(sheet: Sheet, quantity: str, case: str = "") -> Figure:
    return next(f for f in sheet.figures if f.quantity == quantity and case in ("", f.key.get("case")))


# --- film coefficient, view factor, heat loss -------------------------------------------------------------------------


def test_a_film_coefficient_of_its_own_cools_and_stands_beside_the_correlations() -> None:
    own, plain = line(film="25 W/(m**2*K) by hot wire on 2026-11-20"), line()
    stated, table = (f for f in own.figures if f.quantity == "film_coefficient")
    assert (stated.trust, stated.source) == ("SHOP", "hot wire, 2026-11-20")
    assert table.basis == "derived"
    assert base(of(own, "line_temperature", "hot soak")) < base(of(plain, "line_temperature", "hot soak"))


def test_the_correlations_own_coefficient_stated_gives_their_own_temperature() -> None:
    plain = line()
    film = of(plain, "film_coefficient")
    again = line(film=f"{film.typical:.9g} W/(m**2*K)")
    got, has = (of(s, "line_temperature", "hot soak").typical for s in (again, plain))
    assert got == pytest.approx(has, abs=0.05)  # the printed coefficient takes its air at whole degrees


@given(st.floats(4, 60), st.floats(1.05, 3))
@settings(max_examples=15, deadline=None)
def test_more_air_on_the_line_never_makes_it_hotter(film: float, more: float) -> None:
    low, high = (line(film=f"{f:.4f} W/(m**2*K)") for f in (film, film * more))
    assert base(of(high, "line_temperature", "hot soak")) <= base(of(low, "line_temperature", "hot soak")) + 1e-6


@given(st.floats(0.2, 12), st.floats(1.05, 3))
@settings(max_examples=15, deadline=None)
def test_the_view_factor_falls_with_the_gap(gap: float, more: float) -> None:
    near, far = (of(line(gap=f"{g:.4f} in"), "view_factor").typical for g in (gap, gap * more))
    assert 0 < far < near < 0.5


def test_the_heat_that_the_hot_part_gives_off_grows_with_its_heat() -> None:
    mild, hot = (of(line(hot_temperature=t), "heat_loss").typical for t in ("300 degC", "400 degC"))
    assert 0 < mild < hot


# --- limit and margin -------------------------------------------------------------------------------------------------


def test_a_limit_of_its_own_judges_and_can_stop() -> None:
    hot = route(material="PTFE", line_limit="150 degC", temperature="160 degC")
    cool = route(material="PTFE", line_limit="150 degC", temperature="120 degC")
    assert hot.decision.kind == STOP
    assert (cool.decision.kind, cool.decision.figure.basis) == (USE, "stated")


@pytest.mark.parametrize(("margin", "kind"), [("20 degC", USE), ("34 degC", USE), ("36 degC", STOP)])
def test_a_margin_that_is_wanted_is_kept_under_the_tables_limit(margin: str, kind: str) -> None:
    sheet = route(fluid="DOT 4", fluid_state="wet", temperature="120 degC", margin=margin)
    assert sheet.decision.kind == kind
    if kind == STOP:
        wanted = sheet.decision.figures[0]
        assert wanted.typical == pytest.approx(155 - 36)
        assert "119 degC" in sheet.decision.do.replace("\N{NO-BREAK SPACE}", " ").replace("°C", "degC")


def test_a_margin_in_degrees_fahrenheit_is_a_difference() -> None:
    sheet = route(fluid="DOT 4", fluid_state="wet", temperature="280 degF", margin="40 degF")
    assert sheet.decision.kind == STOP
    assert base(of(sheet, "temperature_margin")) == pytest.approx(40 / 1.8)


def test_a_margin_moves_the_gap_that_an_estimate_needs() -> None:
    plain, wide = line(), line(margin="40 degC")
    assert of(wide, "gap_needed").typical > of(plain, "gap_needed").typical
    same = line(margin="10 degC")
    assert of(same, "gap_needed").typical == pytest.approx(of(plain, "gap_needed").typical)


# --- growth -----------------------------------------------------------------------------------------------------------


def test_a_coefficient_of_its_own_stands_beside_the_tables() -> None:
    sheet = growth("60 in", hot="520 degC", material="carbon steel", expansion="17 um/(m*K)", cold_end="20 degC")
    made = sheet.decision.figure
    assert base(made) == pytest.approx(17e-6 * 60 * 0.0254 * 500)
    assert [f.basis for f in sheet.figures if f.quantity == "expansion_coefficient"] == ["stated", "published"]


def test_the_tables_own_coefficient_stated_gives_their_own_growth() -> None:
    table = growth("60 in", hot="500 degC", material="carbon steel", cold_end="10 degC").decision.figure
    alpha = next(f for f in table.inputs if f.quantity == "expansion_coefficient")
    own = growth("60 in", hot="500 degC", expansion=f"{alpha.text} {alpha.unit}", cold_end="10 degC").decision.figure
    assert base(own) == pytest.approx(base(table))


@given(st.floats(-20, 40), st.floats(1, 30))
@settings(max_examples=20, deadline=None)
def test_the_colder_it_begins_the_more_it_grows(cold: float, colder: float) -> None:
    def grown(at: float) -> float:
        return base(growth("1 m", hot="400 degC", expansion="17 um/(m*K)", cold_end=f"{at:.3f} degC").decision.figure)

    assert grown(cold - colder) > grown(cold)


def test_what_grows_asks_for_what_it_lacks() -> None:
    with pytest.raises(Ambiguous) as caught:
        growth("60 in", hot="500 degC")
    assert {line.key["material"] for line in caught.value.table.lines} >= {"carbon steel", "stainless steel 304"}
    assert growth("60 in", hot="500 degC", expansion="170 um/(m*K)").decision.kind == NONE


# --- clips ------------------------------------------------------------------------------------------------------------


@given(st.floats(0.5, 30), st.floats(3, 60))
@settings(max_examples=40, deadline=None)
def test_clips_at_any_spacing_are_no_further_apart_and_no_more_than_needed(feet: float, inches: float) -> None:
    sheet = clips(f"{feet:.4f} ft", spacing=f"{inches:.4f} in")
    count = round(sheet.decision.figure.typical)
    long, most = round(feet, 4) * 12, round(inches, 4)
    assert long / (count + 1) <= most * (1 + 1e-6)
    assert count == 0 or long / count > most * (1 - 1e-6)


def test_the_published_spacing_stated_gives_the_published_count_and_a_wider_one_asks_whose_rule_it_is() -> None:
    table = clips("9 ft", service="brake")
    limit = of(table, "support_spacing_maximum")
    same = clips("9 ft", service="brake", spacing=f"{limit.text} {limit.unit}")
    assert same.decision.figure.typical == table.decision.figure.typical
    wide = clips("9 ft", service="brake", spacing="30 in")
    assert wide.decision.kind == ASK
    assert wide.decision.do.startswith(f"11 3/4 in ({limit.text} {limit.unit}) is the most by {limit.source}")
    assert "NSW" in wide.decision.do  # one state's rule, whose it is said


# --- read strictly, and questioned ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"film": "25000 W/(m**2*K)"}, "film"),
        ({"margin": "400 degC"}, "margin"),
        ({"clip_spacing": "40 ft", "length": "9 ft"}, "clip_spacing"),
    ],
)
def test_the_implausible_is_questioned(more: dict[str, str], key: str) -> None:
    sheet = line(**more)
    assert sheet.decision.kind == ASK
    assert key in {q.key for q in sheet.questions}


@pytest.mark.parametrize(
    ("more", "error"),
    [
        ({"film": "25"}, UnitError),
        ({"film": "25 W/(m**2*K) by hand"}, InputError),
        ({"margin": "20 mm"}, UnitError),
        ({"expansion": "17 mm"}, UnitError),
    ],
)
def test_what_cannot_be_read_is_refused(more: dict[str, str], error: type[Exception]) -> None:
    with pytest.raises(error):
        line(**more)
