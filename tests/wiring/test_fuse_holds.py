"""The fuse of a circuit carries its load, whatever is made; the sentence on a wire's fuse is whole."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from gaugeblock import fuse
from gaugeblock.answer.making import stated
from gaugeblock.tables.load import refdata
from gaugeblock.units import parse_measure
from gaugeblock.wiring.fuse import LASTING, fuse_for

DATA = refdata()
MADE = sorted({float(r.cells["value"]) for r in DATA.table("wiring/fuses").by_quantity["fuse_rating"]})


@pytest.mark.parametrize("made", MADE)
@pytest.mark.parametrize("share", [0.3, 0.79, 0.85, 0.95, 1.0])
def test_the_fuse_of_a_circuit_carries_its_load(made: float, share: float) -> None:
    """Of a load over 80 % of the largest fuse that is made the smallest that carries it is taken, never a smaller."""
    of: Any = SimpleNamespace(fuse=None)
    current = stated(parse_measure(f"{made * share:g} A", "current", "load"), "circuit_current", "load", DATA)
    found = fuse_for(of, current, DATA)
    assert found is not None
    assert found.typical >= made * share * (1 - 1e-9)
    lasting = [rating for rating in MADE if rating * LASTING >= made * share * (1 - 1e-9)]
    assert found.typical == (lasting or [rating for rating in MADE if rating >= made * share * (1 - 1e-9)])[0]


def test_over_the_largest_fuse_there_is_none() -> None:
    of: Any = SimpleNamespace(fuse=None)
    current = stated(parse_measure(f"{MADE[-1] * 1.01:g} A", "current", "load"), "circuit_current", "load", DATA)
    assert fuse_for(of, current, DATA) is None


def test_the_sentence_of_a_wires_fuse_begins_with_its_first_letter() -> None:
    sheet = fuse(wire="12 AWG", insulation="105 degC", air="30 degC", bundle="1")
    assert sheet.decision.kind == "use"
    assert sheet.decision.do.startswith("45 A allowed"), sheet.decision.do
