"""The model that the tables of a job share: what it takes, what it refuses and where."""

import pytest

from gaugeblock.errors import InputError
from gaugeblock.job.part import Count, Length, Name, Part, Refused


class Wheel(Part):
    name: Name
    width: Length | None = None


class Car(Part, aliases={"kind": "class"}):
    kind: Name | None = None
    seats: Count | None = None
    wheels: tuple[Wheel, ...] = ()
    spare: Wheel | None = None


def read(raw: object) -> tuple[Car, list[Refused]]:
    refused: list[Refused] = []
    return Car.read(raw, ("car",), refused), refused


def test_a_whole_table_is_taken_with_the_keys_of_the_file() -> None:
    raw = {"class": "van", "seats": 2, "wheels": [{"name": "left", "width": "6 in"}], "spare": {"name": "old"}}
    car, refused = read(raw)
    assert refused == []
    assert (car.kind, car.seats, str(car.wheels[0].width), car.spare and car.spare.name) == ("van", 2, "6 in", "old")
    assert car.as_dict() == raw


def test_what_is_missing_has_its_default_and_blank_text_is_missing() -> None:
    car, refused = read({"class": " ", "spare": ""})
    assert refused == []
    assert (car.kind, car.seats, car.wheels, car.spare) == (None, None, (), None)
    assert car == read({})[0]
    assert car != read({"seats": 2})[0]


@pytest.mark.parametrize(
    ("raw", "path", "kind"),
    [
        ([], (), "table"),
        ({"kind": "van"}, ("kind",), "unknown"),
        ({"wheels": {}}, ("wheels",), "list"),
        ({"wheels": ["x"]}, ("wheels", 0), "table"),
        ({"wheels": [{"name": "a"}, {}]}, ("wheels", 1, "name"), "missing"),
        ({"spare": 3}, ("spare",), "table"),
        ({"spare": {"name": "a", "size": "b"}}, ("spare", "size"), "unknown"),
    ],
)
def test_what_a_table_refuses_is_told_with_its_place(raw: object, path: tuple[str | int, ...], kind: str) -> None:
    _, (fault,) = read(raw)
    assert (fault.path, fault.kind) == (("car", *path), kind)


@pytest.mark.parametrize("seats", [0, 1000, 2.0, True, "2", [2], {}])
def test_a_value_is_refused_by_its_reader(seats: object) -> None:
    _, (fault,) = read({"seats": seats})
    assert fault.path == ("car", "seats")
    assert isinstance(fault.kind, InputError)


def test_all_faults_come_together() -> None:
    _, refused = read({"seats": "x", "colour": "red", "wheels": [{"width": "6"}]})
    assert [f.path[1:] for f in refused] == [("seats",), ("wheels", 0, "name"), ("wheels", 0, "width"), ("colour",)]


def test_a_part_is_frozen_and_has_no_hash() -> None:
    car, _ = read({})
    with pytest.raises(AttributeError, match="frozen"):
        car.seats = 3
    with pytest.raises(TypeError):
        hash(car)
