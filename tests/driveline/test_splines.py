"""A spline: its sizes, and what a torque does to it."""

from __future__ import annotations

import pytest

from driveline.asking import only
from gaugeblock import spline
from gaugeblock.errors import InputError


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
