"""Values are values: frozen all the way down, equal by value, readable, and they pickle and copy; every class and
error.
"""

from __future__ import annotations

import copy
import inspect
import pickle
from typing import Any

import pytest

import gaugeblock
from gaugeblock import errors
from gaugeblock.errors import GaugeblockError, JobError, Problem
from gaugeblock.figure import Evidence, Figure, Rule
from gaugeblock.value import Keys, Value

SHEET = gaugeblock.torque("3/8-16", grade="SAE J429 5", condition="oiled", into="aluminium", engagement="5/8 in")
ASKS = gaugeblock.torque("3/8-16", grade="SAE J429 8", condition="anti-seize", into="aluminium")


def parts(value: Any, seen: dict[int, Any]) -> dict[int, Any]:
    """Every value inside a value."""
    if id(value) in seen:
        return seen
    if isinstance(value, Value | Keys):
        seen[id(value)] = value
    if isinstance(value, Value):
        for name in type(value)._parts():
            parts(getattr(value, name), seen)
    elif isinstance(value, tuple):
        for inner in value:
            parts(inner, seen)
    return seen


FOUND = list(
    parts((SHEET, ASKS, gaugeblock.heat("DOT 4", state="wet", at="160 degC"), gaugeblock.heat("DOT 4")), {}).values()
)
KINDS = {type(v): v for v in FOUND}


def test_the_values_of_an_answer_are_all_kinds_that_matter() -> None:
    names = {kind.__name__ for kind in KINDS}
    assert names >= {
        "Sheet",
        "Figure",
        "Rule",
        "Decision",
        "Candidate",
        "Check",
        "Bound",
        "Caution",
        "Question",
        "Keys",
    }


@pytest.mark.parametrize("kind", KINDS, ids=lambda k: k.__name__)
def test_a_value_pickles_copies_and_is_equal(kind: type) -> None:
    value = KINDS[kind]
    for again in (pickle.loads(pickle.dumps(value)), copy.deepcopy(value), copy.copy(value)):
        assert again == value
        assert hash(again) == hash(value) or kind.__name__ == "Sheet"
        assert repr(again) == repr(value)
        assert " object at 0x" not in repr(value)


@pytest.mark.parametrize("kind", [k for k in KINDS if k is not Keys], ids=lambda k: k.__name__)
def test_a_value_cannot_be_changed(kind: type) -> None:
    value = KINDS[kind]
    for name in kind._parts():
        before = getattr(value, name)
        with pytest.raises(AttributeError, match="frozen"):
            setattr(value, name, None)
        with pytest.raises(AttributeError, match="frozen"):
            delattr(value, name)
        assert getattr(value, name) is before
        assert not isinstance(before, list | set), name
    with pytest.raises((AttributeError, TypeError)):
        value.something_else = 1


def test_no_way_through_the_key_of_a_figure_changes_the_next_look_up() -> None:
    figure = gaugeblock.look_up("fasteners/threads", "tensile_stress_area", thread="3/8-16 UNC")
    for change in (
        lambda: figure.key.__setitem__("thread", "M8"),
        lambda: figure.key.update(thread="M8"),
        lambda: figure.key.pop("thread"),
        figure.key.clear,
        lambda: figure.key.setdefault("x", "y"),
    ):
        with pytest.raises(TypeError, match="frozen"):
            change()
    assert (
        gaugeblock.look_up("fasteners/threads", "tensile_stress_area", thread="3/8-16 UNC").key["thread"]
        == "3/8-16 UNC"
    )


def test_a_difference_is_seen() -> None:
    figure = SHEET.figures[0]
    assert figure.replace(note="another") != figure
    assert figure.evidence == Evidence(figure.evidence.basis, figure.evidence.checked, figure.evidence.id)
    assert Rule("a", "b", "c", "", "", "") != Rule("a", "b", "d", "", "", "")


def test_the_tables_pickle_as_what_they_are() -> None:
    data = gaugeblock.refdata()
    assert pickle.loads(pickle.dumps(data)) == data
    assert copy.deepcopy(data) is data
    assert repr(data) == f"<Refdata {data.release}>"


ERRORS = [
    kind
    for _, kind in inspect.getmembers(errors, inspect.isclass)
    if issubclass(kind, GaugeblockError) and kind is not JobError
]


@pytest.mark.parametrize("kind", ERRORS, ids=lambda k: k.__name__)
def test_every_error_pickles_copies_and_is_equal(kind: type[GaugeblockError]) -> None:
    error = kind("asked", "where", "why", ("a", "b"), "do")
    for again in (pickle.loads(pickle.dumps(error)), copy.deepcopy(error)):
        assert type(again) is kind
        assert again == error
        assert again.as_dict() == error.as_dict()
        assert str(again) == str(error)
    assert "asked" in repr(error)
    assert error != kind("asked", "where", "another", ("a", "b"), "do")


def test_a_jobs_error_keeps_its_problems() -> None:
    error = JobError("car.toml", [Problem("a", 3, "why", ("x",), "do"), Problem("b", 4, "why")])
    again = pickle.loads(pickle.dumps(error))
    assert str(again) == str(error)
    assert again.as_dict() == error.as_dict()
    assert again == error


def test_a_range_says_that_it_is_one() -> None:
    figure = Figure("x", "backlash", None, "in", low=0.006, high=0.010, basis="common practice")
    assert figure.is_range
    with pytest.raises(ValueError, match="range"):
        _ = figure.quantity_value
    low, high = figure.quantity_range
    assert (low.magnitude, high.magnitude) == (0.006, 0.010)
    assert str(low.units) == "inch"


def test_a_quantity_is_in_a_named_unit_and_a_hardness_is_no_number_to_add() -> None:
    import pint

    strength = Figure("x", "yield_strength", 112.5, "ksi", basis="common practice").quantity_value
    assert str(strength) == "112.5 kilopound_force_per_square_inch"
    assert strength.to("psi").magnitude == pytest.approx(112500)
    hardness = Figure("x", "core_hardness", 40.0, "HRC", basis="common practice").quantity_value
    with pytest.raises(pint.DimensionalityError):
        _ = hardness + 1
    with pytest.raises(pint.DimensionalityError):
        hardness.to("dimensionless")
