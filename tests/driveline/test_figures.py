"""Every figure of the driveline: its own id, its evidence, a quantity that refdata defines."""

from __future__ import annotations

import pytest

from driveline.asking import MAKER, shaft
from gaugeblock import hardness, joint, setup, spline
from gaugeblock.answer.sheet import Sheet


@pytest.mark.parametrize(
    "sheet",
    [
        shaft(length="30 in", hardness="43 HRC"),
        hardness("HRC", "42.5"),
        spline("24/48", "35", torque="900 lbf*ft"),
        setup("rear", "ring gear", "backlash", as_found="0.011 in", as_left="0.007 in", maker=MAKER),
        joint("5 deg", "4 deg", phasing="in phase", top="2 deg", speed="3000 rpm"),
    ],
    ids=["steel", "hardness", "spline", "setup", "joint"],
)
def test_every_figure_has_its_own_id_its_evidence_and_a_known_quantity(sheet: Sheet) -> None:
    ids = [f.id for f in sheet.figures]
    assert len(set(ids)) == len(ids)
    for figure in sheet.figures:
        assert figure.evidence.basis
        assert sheet.data.quantity(figure.quantity)
    assert sheet.as_dict()["figures"]
