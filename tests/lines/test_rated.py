"""The pressure in a hose against what its class is sold for: over every class of the tables that has a pressure."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock import refdata, route
from gaugeblock.answer.check import NOT_OK, OK
from gaugeblock.answer.decision import ASK, STOP, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.units import in_unit

DATA = refdata()
RATED = sorted(
    {
        (r["item"], r["class"], float(r["value"] or r["low"]), r["unit"])
        for r in DATA.table("lines/materials").rows
        if r["quantity"] == "working_pressure_maximum" and not r["standing"] and r["class"] not in ("any", "not stated")
    }
)


def asked(item: str, klass: str, psi: float) -> Sheet:
    return route(material=item, klass=klass, od="14 mm", wall="3 mm", pressure=f"{psi:.2f} psi", temperature="20 degC")


@pytest.mark.parametrize(("item", "klass", "most", "unit"), RATED)
def test_a_hose_is_never_used_over_the_pressure_of_its_class(item: str, klass: str, most: float, unit: str) -> None:
    psi = in_unit(most, unit, "psi")
    for times in (1.1, 3):
        sheet = asked(item, klass, times * psi)
        check = next(c for c in sheet.checks if c.name == "pressure of its class")
        assert check.result == NOT_OK
        assert sheet.decision.kind in (ASK, STOP)
        said = sheet.decision.do if sheet.decision.kind == STOP else sheet.questions[0].text
        assert "is asked of it" in said
    sheet = asked(item, klass, 0.9 * psi)
    check = next(c for c in sheet.checks if c.name == "pressure of its class")
    assert (check.result, check.asks) == (OK, False)
    assert not any("tensile" in q.text for q in sheet.questions)


def test_a_rubber_hose_is_never_asked_for_the_strength_of_a_tube() -> None:
    """Somebody's own strength of a wall is still reckoned with."""
    for item in ("hydraulic brake hose", "fuel hose"):
        klass = "SAE J30 R6" if item == "fuel hose" else None
        sheet = route(material=item, klass=klass, pressure="30 psi", temperature="20 degC")
        assert not any("strength" in q.text or "wall" in q.text for q in sheet.questions)


def test_a_brake_hose_over_its_test_pressure_is_asked_about() -> None:
    """FMVSS 106 S5.3.2: 4000 psi for two minutes."""
    assert asked("hydraulic brake hose", "any", 4500).decision.kind != USE
    names = [c.name for c in asked("hydraulic brake hose", "any", 1000).checks if c.asks]
    assert "pressure of its class" not in names


def test_one_figure_of_habit_is_asked_and_not_used() -> None:
    """A single row decides where it is published; where it is habit its maker is asked."""
    sheet = gaugeblock.ask("fuel hose sae j30 r6 working pressure")
    assert isinstance(sheet, Sheet)
    assert sheet.decision.kind == "ask"
    assert sheet.decision.figure is None or sheet.decision.figure.evidence.basis == "common practice"
