"""A spline: its sizes, and what a torque does to it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.asking import only
from driveline.forms import keeps_form
from gaugeblock import domains, spline, units
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import page
from gaugeblock.driveline.job import Splines
from gaugeblock.errors import InputError
from gaugeblock.tables.load import refdata


def test_the_root_form_changes_only_coarse_splines_and_the_hub() -> None:
    coarse = [
        spline("12/24", "20", root=r).figure("spline_minor_diameter_external").typical
        for r in ("flat root", "fillet root")
    ]
    fine = [
        spline("24/48", "20", root=r).figure("spline_minor_diameter_external").typical
        for r in ("flat root", "fillet root")
    ]
    assert coarse[0] > coarse[1]
    assert fine[0] == fine[1]


@pytest.mark.parametrize(
    ("pitch", "per_inch", "teeth", "clearance"), [("24/48", 24, 35, 0.002), ("4/8", 4, 21, 0.00525)]
)
def test_the_sizes_of_a_side_fit_are_those_of_its_standard(
    pitch: str, per_inch: int, teeth: int, clearance: float
) -> None:
    """ANSI B92.1 by hand: D = N/P, circular pitch pi/P, form diameters (N - 1)/P - 2 cF and (N + 1)/P + 2 cF with
    cF = 0.001 D, 0.002 in at least.
    """
    sheet = spline(pitch, str(teeth))
    wanted = {
        "spline_pitch_diameter": teeth / per_inch,
        "spline_circular_pitch": math.pi / per_inch,
        "spline_space_width": math.pi / per_inch / 2,
        "spline_base_diameter": teeth / per_inch * math.cos(math.radians(30)),
        "spline_form_diameter_external": (teeth - 1) / per_inch - 2 * clearance,
        "spline_form_diameter_internal": (teeth + 1) / per_inch + 2 * clearance,
    }
    got = {
        name: units.from_base(units.to_base(f.typical, f.unit), "in") for name in wanted for f in [sheet.figure(name)]
    }
    assert got == pytest.approx(wanted, rel=1e-9)


def test_spline_shear_without_its_factors_cannot_be_told() -> None:
    check = only(
        spline("24/48", "35", torque="2000 lbf*ft", source="engine"), "shear under the roots within the allowable"
    )
    assert check.result == "cannot tell"
    assert check.reason == "not given: material, load, cycles"


def test_spline_shear_is_judged_with_all_its_factors() -> None:
    def result(torque: str) -> str:
        sheet = spline(
            "24/48",
            "35",
            torque=torque,
            material="surface hardened, 48 to 53 HRC",
            source="engine",
            load="uniform load",
            cycles="10000 cycles",
        )
        return only(sheet, "shear under the roots within the allowable").result

    assert (result("800 lbf*ft"), result("900 lbf*ft")) == ("ok", "not ok")


JUDGED = {
    "material": "surface hardened, 48 to 53 HRC",
    "source": "engine",
    "load": "uniform load",
    "cycles": "10000 cycles",
    "length": "1.5 in",
}
FLEXIBLE = {"seating": "flexible", "misalignment": "0.002 in/in", "revolutions": "1000000 revolutions"}
NAMES = (
    "shear under the roots within the allowable",
    "shear of the teeth within the allowable",
    "pressure on the tooth sides within the allowable",
)


def loaded(torque: str = "800 lbf*ft", **more: str | None) -> Sheet:
    return spline("24/48", "35", torque=torque, **{**JUDGED, **more})  # type: ignore[arg-type]


def test_a_spline_is_used_on_all_three_checks_and_never_on_one() -> None:
    sheet = loaded(seating="fixed")
    assert [c.name for c in sheet.checks] == list(NAMES)
    assert {c.result for c in sheet.checks} == {"ok"}
    factors = [f.typical for f in sheet.figures if f.quantity == "spline_factor"]
    assert (sheet.decision.kind, sheet.decision.figures[0].typical) == ("use", min(factors))
    for key in (*JUDGED, "seating"):
        open_sheet = loaded(**{"seating": "fixed", key: None})
        assert open_sheet.decision.kind == "ask"
        assert key in {q.key for q in open_sheet.questions}


def test_a_fixed_spline_bears_nine_times_the_pressure_of_a_flexible_one() -> None:
    """9 Sc Lf / Ka against Sc Lw / Ka: 18,000 and 4,000 psi at a fatigue life factor of 1 and a wear life factor of
    2.
    """
    fixed, flexible = (only(loaded(**more), NAMES[2]) for more in ({"seating": "fixed"}, FLEXIBLE))
    assert (fixed.result, flexible.result) == ("ok", "not ok")
    bounds = [c.required.value for c in (fixed, flexible) if c.required is not None]
    assert bounds == pytest.approx([18000, 4000])


def test_a_spline_that_fails_one_check_is_never_used() -> None:
    assert loaded(**FLEXIBLE).decision.kind in ("ask", "stop")
    assert loaded("900 lbf*ft", seating="fixed").decision.kind == "stop"


@settings(deadline=None)
@given(
    st.sampled_from([None, "fixed", "flexible"]),
    st.sets(st.sampled_from(sorted({**JUDGED, **FLEXIBLE}))),
    st.integers(1, 3000),
)
def test_whatever_is_not_given_a_spline_keeps_the_laws(seating: str | None, left: set[str], torque: int) -> None:
    more = {k: None if k in left else v for k, v in {**JUDGED, **FLEXIBLE, "seating": seating}.items()}
    if more["seating"] != "flexible":  # these say nothing of a spline that cannot rock
        more |= dict.fromkeys(("misalignment", "revolutions"))
    sheet = loaded(f"{torque} lbf*ft", **more)
    keeps_form(sheet, set(Splines.keys))
    if sheet.decision.kind == "use":
        assert [c.result for c in sheet.checks] == ["ok"] * 3
        assert sheet.decision.figures[0].typical >= 1


def test_a_spline_of_a_job_has_its_decision() -> None:
    job = domains.parse_job('[[splines]]\nname = "axle"\npitch = "24/48"\nteeth = 35\ntorque = "800 lbf*ft"\n')
    item = page.item(job.splines[0], job.shop, refdata())
    assert (item.sheet.decision.kind, item.sheet.questions[0].key) == ("ask", "material")
    assert item.card is not None
    assert [box.label for box in item.card.boxes if box.half] == ["outside diameter", "engaged length"]  # in one row
    wrong = domains.parse_job('[[splines]]\nname = "axle"\npitch = "7/7"\nteeth = 35\n')
    assert page.item(wrong.splines[0], wrong.shop, refdata()).sheet.questions[0].key == "pitch"


def test_a_straight_sided_spline_has_its_tooth_width() -> None:
    assert spline("parallel side", "10").figures[0].text == "0.156"


@pytest.mark.parametrize(
    "more",
    [
        {"root": "round root"},
        {"fit": "press fit"},
        {"root": "fillet root", "fit": "major diameter fit"},
        {"bore": "1.4 in", "torque": "1 lbf*ft"},
    ],
)
def test_unknown_forms_of_a_spline_are_refused(more: dict[str, str]) -> None:
    with pytest.raises(InputError):
        spline("24/48", "35", **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("line", "pitch"),
    [
        ("counted 28 teeth 1.208 in over the tops what pitch is the spline", "24/48"),
        ("counted 14 teeth 0.469 in over the tops what pitch is the spline", "32/64"),
        ("counted 31 teeth 1.333 in over the tops what pitch is the spline", "24/48"),
    ],
)
def test_teeth_and_a_measure_over_the_tops_name_the_pitch(line: str, pitch: str) -> None:
    """ASME B92.1: a 30 degree flat root spline measures its teeth and one by the pitch over the tops."""
    from gaugeblock import ask

    assert pitch in ask(line).title


@pytest.mark.parametrize("measure", ["0.485 in", "0.452 in"])
def test_a_measure_that_is_three_per_cent_off_is_no_pitch(measure: str) -> None:
    from gaugeblock import ask
    from gaugeblock.errors import GaugeblockError

    with pytest.raises(GaugeblockError, match="over the tops"):
        ask(f"counted 14 teeth {measure} over the tops what pitch is the spline")
