"""Values are values: frozen all the way down, equal by value, readable, and they pickle and copy; every class and
error.
"""

from __future__ import annotations

import copy
import importlib
import inspect
import pickle
import pkgutil
from typing import Any

import pytest

import gaugeblock
from gaugeblock import errors
from gaugeblock.errors import GaugeblockError, JobError, Problem
from gaugeblock.figure import Evidence, Figure, Rule
from gaugeblock.value import Keys, Value, put

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


ANSWERS = (
    SHEET,
    ASKS,
    gaugeblock.heat("DOT 4", state="wet", at="160 degC"),
    gaugeblock.heat("DOT 4"),
    gaugeblock.bend(od="1-3/4 in", wall=".120 in", material="1020", method="rotary draw", radius="5-1/2 in"),
    gaugeblock.steel("4340", treatment="quenched and tempered", temper="800 degF"),
    gaugeblock.circuit("28 A", "12 ft", "12 V", drop="3 %"),
    gaugeblock.parked("35 mA", battery="60 Ah"),
    gaugeblock.axle_compared("steels", diameter="1-1/4 in", wheel_load="1000 lb", grip="0.9", radius="13 in"),
)
FOUND = list(parts(ANSWERS, {}).values())
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
        "Table",
        "Line",
        "Tightening",
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
        assert not isinstance(before, dict) or isinstance(before, Keys), name
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


@pytest.mark.parametrize("kind", [*ERRORS, JobError], ids=lambda k: k.__name__)
def test_an_error_cannot_be_changed(kind: type[GaugeblockError]) -> None:
    problem = Problem("a", 3, "why", ("x",), "do")
    error = JobError("car.toml", [problem]) if kind is JobError else kind("asked", "where", "why", ("a", "b"), "do")
    names = [n for n in ("asked", "where", "why", "do", "nearest", "args", "informs", "problems") if hasattr(error, n)]
    for name in names:
        before = getattr(error, name)
        with pytest.raises(AttributeError):
            setattr(error, name, "another")
        with pytest.raises(AttributeError):
            delattr(error, name)
        assert getattr(error, name) == before
        assert not isinstance(before, list | set | dict), name
    with pytest.raises(AttributeError, match="frozen"):
        problem.why = "another"  # type: ignore[misc]


def test_an_error_is_raised_caused_and_noted_as_any_other() -> None:
    first = gaugeblock.LookupMiss("asked", "where", "why")

    def fail() -> None:
        try:
            raise first
        except gaugeblock.LookupMiss as caught:
            caught.add_note("seen")
            raise gaugeblock.InputError("asked", "where", "another") from caught

    with pytest.raises(gaugeblock.InputError) as found:
        fail()
    assert found.value.__cause__ is first
    assert first.__notes__ == ["seen"]


def test_a_miss_keeps_what_informs() -> None:
    with pytest.raises(gaugeblock.LookupMiss) as caught:
        gaugeblock.look_up(
            "fasteners/part_torques",
            "tightening_torque",
            part="turbocharger to exhaust manifold nut",
            size="not stated",
        )
    miss = caught.value
    assert miss.informs
    assert pickle.loads(pickle.dumps(miss)).informs == copy.deepcopy(miss).informs == miss.informs
    assert miss.informing(()) != miss


def test_the_tables_cannot_be_changed() -> None:
    """What a look-up rests on: the release that is open, a definition, a publication, a row and a rule."""
    data = gaugeblock.refdata()
    for name in ("release", "folder", "releases", "memo"):
        with pytest.raises(AttributeError, match="frozen"):
            setattr(data, name, None)
    row = data.table("fasteners/threads").rows[0]
    definitions = (data.quantity("tightening_torque"), data.source(row["source"]), row.cells, data.releases[0])
    for cells in (*definitions, data.statements("fasteners")[0]):
        with pytest.raises(TypeError, match="frozen"):
            cells[next(iter(cells))] = "another"


def test_every_record_of_the_program_is_frozen_and_pickles() -> None:
    kinds = [kind for kind in every_kind(Value) if kind.__module__.startswith("gaugeblock")]
    assert len(kinds) > 100
    for kind in kinds:
        assert kind.__setattr__ is Value.__setattr__, kind
        assert kind.__delattr__ is Value.__delattr__, kind
        assert "__dict__" not in dir(kind), kind
        slots = [slot for base in kind.__mro__ for slot in getattr(base, "__slots__", ())]
        made = object.__new__(kind)
        for slot in slots:
            put(made, slot, ("part", slot))
        again = pickle.loads(pickle.dumps(made))
        assert type(again) is kind
        assert {slot: getattr(again, slot) for slot in slots} == {slot: ("part", slot) for slot in slots}, kind


def test_a_table_of_answers_is_a_value_too() -> None:
    table = gaugeblock.axle_compared("steels", diameter="1-1/4 in", wheel_load="1000 lb", grip="0.9", radius="13 in")
    for again in (pickle.loads(pickle.dumps(table)), copy.deepcopy(table), table.replace()):
        assert again == table
        assert again.as_dict() == table.as_dict()
    with pytest.raises(TypeError, match="frozen"):
        table.asked["diameter"] = "9 in"  # type: ignore[index]


def every_kind(kind: type) -> list[type[Value]]:
    for module in pkgutil.walk_packages(gaugeblock.__path__, "gaugeblock."):
        if not module.name.endswith("__main__"):
            importlib.import_module(module.name)
    found, left = [], [kind]
    while left:
        left += (below := left.pop().__subclasses__())
        found += below
    return found


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
