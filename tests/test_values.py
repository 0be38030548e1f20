"""Values are values: frozen all the way down, equal by value, readable, and they pickle and copy; every class and
error.
"""

from __future__ import annotations

import copy
import importlib
import inspect
import json
import pickle
import pkgutil
from collections.abc import Callable, Mapping
from threading import Event, Thread, current_thread, main_thread
from typing import Any

import pytest

import gaugeblock
from gaugeblock import errors
from gaugeblock.answer.printing import printed
from gaugeblock.answer.refusal import told
from gaugeblock.errors import GaugeblockError, JobError, Offers, Problem
from gaugeblock.figure import Evidence, Figure, Rule
from gaugeblock.found import Found
from gaugeblock.tables.catalogue import columns_of
from gaugeblock.tables.load import Refdata
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
    gaugeblock.find("fuel hose"),
    gaugeblock.find("relay terminals"),
    gaugeblock.find("m8 flanje"),
    gaugeblock.ask("relay terminals 30 87"),
    gaugeblock.ask("torque for 1/2-13"),
    gaugeblock.ask("31 ft lbs in nm"),
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
        "Found",
        "Listed",
        "Conversion",
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


@pytest.mark.parametrize("answer", ANSWERS, ids=lambda a: type(a).__name__)
def test_an_answer_says_itself_in_a_line(answer: Any) -> None:
    """A notebook shows it by itself."""
    said = repr(answer)
    assert len(said) <= 400
    assert "\n" not in said
    if isinstance(answer, gaugeblock.Sheet):
        assert answer.title[:60] in said
        assert answer.decision.kind in said
        assert f"{len(answer.figures)} figures" in said
    if isinstance(answer, gaugeblock.Table):
        assert answer.title[:60] in said
        assert f"{len(answer.lines)} lines" in said
    if isinstance(answer, Found):
        assert answer.asked[:60] in said
        assert f"{len(answer.groups)} keys" in said
    if isinstance(answer, gaugeblock.Sheet) and answer.decision.kind == "use":
        assert printed(answer.decision.candidates[0].figure, answer.data) in said


@pytest.mark.parametrize("words", ["fuel hose", "relay terminals", "m8 flanje"])
def test_what_is_found_is_found_again(words: str) -> None:
    found = gaugeblock.find(words)
    assert gaugeblock.find(words, data=Refdata()) == found == gaugeblock.find(words)
    assert hash(gaugeblock.find(words, data=Refdata())) == hash(found)
    assert found.replace(asked="another") != found
    assert len({found, gaugeblock.find(words)}) == 1


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
    names = {*vars(error), "nearest", "near", "every", "choices", "args", "table", "new", "_new", "code"}
    for name in names | {"errno", "strerror", "filename", "characters_written"}:
        before = getattr(error, name, None)
        with pytest.raises(AttributeError):
            setattr(error, name, "another")
        with pytest.raises(AttributeError):
            delattr(error, name)
        assert getattr(error, name, None) == before
        assert not isinstance(before, list | set | dict), name
    with pytest.raises(AttributeError, match="frozen"):
        problem.why = "another"  # type: ignore[misc]


@pytest.mark.parametrize("kind", ERRORS, ids=lambda k: k.__name__)
def test_what_an_error_says_is_its_arguments(kind: type[GaugeblockError]) -> None:
    error = kind("asked", "where", "why", ("a",), "do")
    assert error.args == ("asked", "where", "why")
    assert getattr(error, "errno", None) is None  # no number of the system's was given


# Refusals as they come: with what is near, with what there is where nothing is, with figures that inform, with a table.
REFUSED: dict[str, Callable[[], object]] = {
    "nothing near": lambda: gaugeblock.coolant(kind="nope"),
    "near and more": lambda: gaugeblock.heat("DOT 4", state="wett"),
    "no such thread": lambda: gaugeblock.torque("3/8-61", grade="SAE J429 5", condition="dry"),
    "no such table": lambda: gaugeblock.look_up("fasteners/thread", "pitch"),
    "informs": lambda: gaugeblock.look_up(
        "fasteners/part_torques",
        "tightening_torque",
        part="turbocharger to exhaust manifold nut",
        size="not stated",
    ),
    "a key left open": lambda: gaugeblock.steel("4340"),
    "no unit": lambda: gaugeblock.circuit("28 furlongs", "12 ft", "12 V"),
    "marks that cannot be seen": lambda: gaugeblock.heat("\x01" * 150),
    "a half of a pair": lambda: gaugeblock.heat("DOT \ud800"),
    "no words": lambda: gaugeblock.ask("zzz qqq"),
    "long": lambda: gaugeblock.ask("zebra " * 90),
    "denied": lambda: gaugeblock.heat("not DOT 4"),
}


@pytest.mark.parametrize("ask", REFUSED.values(), ids=REFUSED)
def test_a_refusal_stays_what_it_is(ask: Callable[[], object]) -> None:
    """Pickled, copied and copied deep, before it was looked at and after, and again."""
    for first in (lambda e: e, lambda e: e.choices and e):
        with pytest.raises(GaugeblockError) as caught:
            ask()
        error = caught.value
        error.add_note("seen")
        first(error)
        once = (pickle.loads(pickle.dumps(error)), copy.deepcopy(error), copy.copy(error))
        for again in (*once, *map(copy.deepcopy, once)):
            assert type(again) is type(error)
            assert again == error
            assert hash(again) == hash(error)
            for name in ("choices", "every", "near", "nearest", "args", "informs", "table", "__notes__"):
                assert getattr(again, name, None) == getattr(error, name, None), name
            assert str(again) == str(error)
            assert told(again) == told(error)


@pytest.mark.parametrize("ask", REFUSED.values(), ids=REFUSED)
def test_a_refusal_can_be_written(ask: Callable[[], object]) -> None:
    with pytest.raises(GaugeblockError) as caught:
        ask()
    for text in (str(caught.value), told(caught.value), json.dumps(caught.value.as_dict(), ensure_ascii=False)):
        assert "\ud800" not in text
        text.encode("utf-8")


def test_errors_that_offer_alike_and_differ_in_what_is_near_are_two() -> None:
    one, two = (gaugeblock.LookupMiss("asked", "where", "why", Offers(("a", "b"), near)) for near in (0, 2))
    assert one != two
    assert one.choices != two.choices


def test_a_miss_that_informs_of_others_offers_the_same() -> None:
    miss = gaugeblock.LookupMiss("asked", "where", "why", Offers(("a", "b"), 1))
    assert miss.informing(()).choices == miss.choices


@pytest.mark.parametrize("how", [lambda o: pickle.loads(pickle.dumps(o)), copy.copy, copy.deepcopy])
def test_offers_are_values(how: Callable[[Offers], Offers]) -> None:
    offers = Offers(("a", "b"), 1)
    again = how(offers)
    assert (tuple(again), again.near) == (("a", "b"), 1)
    with pytest.raises(AttributeError, match="frozen"):
        offers.near = 2
    with pytest.raises(AttributeError, match="frozen"):
        del offers.near


def test_a_table_that_one_thread_looks_for_is_there_for_another() -> None:
    error, begun, go = gaugeblock.Ambiguous("asked", "where", "why"), Event(), Event()

    def find() -> str:
        if current_thread() is not main_thread():
            begun.set()
            go.wait(10)
        return "the table"

    error.tabled(find)
    other = Thread(target=lambda: error.table)
    other.start()
    begun.wait(10)
    meanwhile = error.table
    go.set()
    other.join()
    assert (meanwhile, error.table) == ("the table", "the table")


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
    found.value.__suppress_context__ = False
    for name in ("__traceback__", "__context__", "__cause__"):
        setattr(found.value, name, None)
        assert getattr(found.value, name) is None


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
    table = data.table("fasteners/threads")
    row = table.rows[0]
    for thing in (data, table, row):
        names = {*dir(thing), "new", "_new"} - {name for name in dir(thing) if name.startswith("__")}
        for name in names:
            with pytest.raises(AttributeError, match="frozen"):
                setattr(thing, name, None)
            with pytest.raises(AttributeError, match="frozen"):
                delattr(thing, name)
    definitions = (data.quantity("tightening_torque"), data.source(row["source"]), row.cells, data.releases[0])
    for cells in (*definitions, data.statements("fasteners")[0]):
        with pytest.raises(TypeError, match="frozen"):
            cells[next(iter(cells))] = "another"


READ: tuple[Callable[[Refdata], object], ...] = (
    lambda data: data.words("fasteners", "grade"),
    lambda data: data.words_with("bolt"),
    lambda data: data.statements("fasteners"),
    lambda data: data.table("fasteners/threads").column("thread"),
    lambda data: data.table("fasteners/threads").of("pitch"),
    lambda data: data.table("fasteners/threads"),
    lambda data: data.row("fasteners/threads", 2, ["a"] * len(columns_of("fasteners/threads"))),
    lambda data: data.quantity("tightening_torque"),
    lambda data: data.rule("tube_mass"),
    lambda data: data,
)


@pytest.mark.parametrize("read", READ)
def test_nothing_that_the_tables_hand_out_can_be_changed(read: Callable[[Refdata], object]) -> None:
    """All the way down: no list, no set and no dict that takes a change, in what has no line before its name."""
    left, seen = [read(gaugeblock.refdata())], set()
    while left:
        thing = left.pop()
        if id(thing) in seen:
            continue
        seen.add(id(thing))
        assert not isinstance(thing, list | set), thing
        assert not isinstance(thing, dict) or isinstance(thing, Keys), thing
        if isinstance(thing, Mapping):
            left += [*thing, *thing.values()]
        elif isinstance(thing, tuple | frozenset):
            left += thing
        elif type(thing).__module__.startswith("gaugeblock"):
            names = [name for name in dir(thing) if not name.startswith("_")]
            held = [name for name in names if not callable(getattr(thing, name, None))]
            left += [getattr(thing, name) for name in held]
    assert len(seen) > 1


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


def test_keys_are_made_once() -> None:
    key = SHEET.figures[0].key
    before = dict(key)
    for again in (lambda: key.__init__(zz="1"), lambda: key.__init__({"zz": "1"})):  # type: ignore[misc]
        with pytest.raises(TypeError, match="frozen"):
            again()
    assert dict(key) == before


@pytest.mark.parametrize(
    ("part", "why"),
    [
        ({"basis": "zzz"}, "x: basis 'zzz'"),
        ({"value": float("nan")}, "x: value nan"),
        ({"value": float("inf")}, "x: value inf"),
        ({"low": 3.0, "high": 2.0}, "x: low 3.0"),
        ({"low": float("nan")}, "x: low nan"),
        ({"high": float("inf")}, "x: high inf"),
    ],
)
def test_a_figure_of_no_number_or_basis_is_refused(part: dict[str, Any], why: str) -> None:
    given = {"id": "x", "quantity": "backlash", "value": None, "unit": "in", "high": 2.0, "basis": "common practice"}
    with pytest.raises(ValueError, match=why):
        Figure(**{**given, **part})
    with pytest.raises(ValueError, match=why):
        Figure(**given).replace(**part)


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
    other = Figure("x", "core_hardness", 400.0, "HB", basis="common practice").quantity_value
    with pytest.raises(pint.DimensionalityError):
        _ = hardness + other
    with pytest.raises(pint.DimensionalityError):
        other.to(hardness.units)
    assert (hardness + hardness).magnitude == 80  # as README says: pint adds two of one scale
