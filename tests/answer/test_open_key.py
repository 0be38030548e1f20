"""A key that is left open is named from Python, with what there is for it and what each value comes to."""

from __future__ import annotations

import copy
import pickle

import pytest

import gaugeblock
from gaugeblock import Ambiguous, Table, domains
from gaugeblock.answer.opening import choices
from gaugeblock.tables.load import refdata

OPEN = [
    ("torque", ("3/8-16",), {}, ("grade", "condition")),
    ("torque", ("3/8",), {"grade": "5", "condition": "dry"}, ("thread",)),
    ("torque", ("3/8-16",), {"grade": "SAE J429 5"}, ("condition",)),
    ("steel", ("4340",), {"treatment": "quenched and tempered"}, ("temper",)),
    ("gauge", ("10",), {}, ("system",)),
    ("material", ("4130",), {}, ("material",)),
    ("heat", ("fuel hose",), {}, ("klass",)),
    ("growth", ("60 in",), {"hot": "500 degC"}, ("material",)),
    ("clips", ("9 ft",), {}, ("service",)),
    ("fuel_habit", ("pressure",), {}, ("system",)),
    ("brake_fact", ("residual pressure",), {}, ("case",)),
]
WITHOUT_ROWS = [
    ("parked", ("35 mA",), {}),
    ("joint", (), {}),
    ("gearing", ("4.10",), {}),
    ("bend", (), {"od": "1-3/4 in", "wall": "11 ga", "material": "steel", "method": "rotary draw"}),
]


def refused(name: str, told: tuple[str, ...], more: dict[str, str]) -> Ambiguous:
    with pytest.raises(Ambiguous) as caught:
        getattr(gaugeblock, name)(*told, **more)
    return caught.value


@pytest.mark.parametrize(("name", "told", "more", "keys"), OPEN)
def test_what_was_left_open_has_its_choices_and_their_answers(
    name: str, told: tuple[str, ...], more: dict[str, str], keys: tuple[str, ...]
) -> None:
    error = refused(name, told, more)
    assert error.nearest
    table = error.table
    assert isinstance(table, Table)
    assert tuple(table.open) == keys
    assert len(table.lines) > 1
    answer = getattr(gaugeblock, name)
    if name != "torque" and keys != ("material",):  # what a bare size means is settled before it is asked
        line = table.lines[0]
        assert answer(*told, **{**more, **line.key}).decision == line.sheet.decision


@pytest.mark.parametrize(("name", "told", "more", "keys"), OPEN)
def test_it_is_a_value_with_its_table(
    name: str, told: tuple[str, ...], more: dict[str, str], keys: tuple[str, ...]
) -> None:
    del keys
    error = refused(name, told, more)
    for again in (pickle.loads(pickle.dumps(error)), copy.deepcopy(error)):
        assert again == error
        assert again.table == error.table


@pytest.mark.parametrize(("name", "told", "more"), WITHOUT_ROWS)
def test_where_there_are_no_rows_the_keys_that_close_it_are_named(
    name: str, told: tuple[str, ...], more: dict[str, str]
) -> None:
    error = refused(name, told, more)
    assert error.nearest
    assert error.table is None


def test_a_table_that_is_whole_does_not_say_that_there_is_more() -> None:
    table = refused("torque", ("3/8-16",), {"grade": "SAE J429 5"}).table
    assert isinstance(table, Table)
    told = (table.title, table.asked, table.data, table.open, table.lines[:2])
    assert "more" not in Table(*told).text()
    assert "  ... and more: say more of it" in Table(*told, 3).text().splitlines()


def test_a_title_that_goes_on_is_set_in_by_two() -> None:
    table = refused("torque", ("3/8-16",), {}).table
    assert isinstance(table, Table)
    assert table.text(columns=40).splitlines()[:2] == ["torque: 3/8-16; not said: grade,", "  condition"]


@pytest.mark.parametrize("grade", ["4340", "1040", "1137"])
def test_the_values_of_an_option_are_those_of_the_rows_of_what_was_said(grade: str) -> None:
    data = refdata()
    (wing,) = [w for w in domains.WINGS if w.name == "driveline"]
    (topic,) = [t for t in wing.module("ask").TOPICS if {"grade", "treatment"} <= set(t.columns)]
    rows = [row for row in data.table("driveline/steels").rows if not row.standing]
    own = {row["treatment"] for row in rows if row["steel"] in (grade, "any")} - {"any", "not stated"}
    assert set(choices(topic, "treatment", {"grade": grade}, data)) == own
    assert own < set(choices(topic, "treatment", {}, data))


@pytest.mark.parametrize(
    ("line", "why"), [("wire size for fan", "were not said"), ("31 inch tyres ratio", "was not said")]
)
def test_what_is_lacking_is_told_of_one_and_of_several(line: str, why: str) -> None:
    with pytest.raises(gaugeblock.GaugeblockError) as refused:
        gaugeblock.ask(line)
    assert refused.value.why.endswith(why)
