"""What a public function is given: of the kind that it takes, or refused by the name of the option."""

from __future__ import annotations

import ast
import contextlib
import inspect
import pickle
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

import gaugeblock
from gaugeblock import domains, typed
from gaugeblock.cli import main
from gaugeblock.driveline.axles import answer as axles
from gaugeblock.driveline.propshafts import answer as propshafts
from gaugeblock.errors import GaugeblockError, InputError, LookupMiss
from gaugeblock.lines.fuel import keys as fuels
from gaugeblock.lines.keys import KEYS as LINE_KEYS

SRC = Path(gaugeblock.__file__).parent
FUNCTIONS = [n for n in gaugeblock.__all__ if not isinstance(getattr(gaugeblock, n), type)]
# Options that a function takes without naming each.
MORE = {
    "axle": axles.KEYS,
    "axle_compared": axles.KEYS,
    "shaft": propshafts.KEYS,
    "route": tuple("klass" if k == "class" else k for k in LINE_KEYS if k != "service"),
    "fuel_line": fuels.ALL,
    "look_up": ("thread",),
}
FIT = {
    "Refdata": gaugeblock.refdata(),
    "Mapping": {"od": "1 in"},
    "dict": {"contract": 1},
    "list": ["bolt"],
    "Callable": gaugeblock.torque,
    "bool": False,
}
STRANGE: dict[str, Any] = {"a whole number": 5, "a number": 8.8, "bytes": b"1 in", "a set": {1}, "a list": [5]}


def named(name: str) -> dict[str, inspect.Parameter]:
    return dict(inspect.signature(getattr(gaugeblock, name)).parameters)


def needed(name: str) -> dict[str, Any]:
    """What a function cannot be called without, each of its kind."""
    empty = inspect.Parameter.empty
    own = (inspect.Parameter.VAR_POSITIONAL, inspect.Parameter.VAR_KEYWORD)
    found = {k: p for k, p in named(name).items() if p.default is empty and p.kind not in own}
    return {
        k: next((v for head, v in FIT.items() if str(p.annotation).startswith(head)), "1 in") for k, p in found.items()
    }


def options(name: str) -> Iterator[str]:
    own = (inspect.Parameter.VAR_POSITIONAL, inspect.Parameter.VAR_KEYWORD)
    yield from dict.fromkeys([*(k for k, p in named(name).items() if p.kind not in own), *MORE.get(name, ())])


def refusal(name: str, /, **given: Any) -> InputError | None:
    """What a function refuses; None where it answers. Any other exception goes up."""
    try:
        getattr(gaugeblock, name)(**{**needed(name), **given})
    except InputError as error:
        return error
    return None


def takes(name: str, option: str, value: object) -> bool:
    """Whether the annotation of an option has a place for such a value."""
    kind = str(named(name)[option].annotation) if option in named(name) else "str | None"
    return {
        list: "Sequence[" in kind and value != [5],
        bool: "bool" in kind,
    }.get(type(value), False)


CASES = [(name, option) for name in FUNCTIONS for option in options(name)]


@pytest.mark.parametrize(("name", "option"), CASES, ids=lambda v: v)
def test_a_strange_value_is_refused_by_its_option(name: str, option: str) -> None:
    for what, value in STRANGE.items():
        if takes(name, option, value):
            continue
        error = refusal(name, **{option: value})
        assert error is not None, f"{name}({option}={value!r}) is answered: {what}"
        assert error.where.replace(" ", "_").startswith(option.replace("klass", "class")) or option in error.where, (
            error
        )


@pytest.mark.parametrize(("name", "option"), CASES, ids=lambda v: v)
def test_a_blank_is_refused_by_its_option(name: str, option: str) -> None:
    kind = str(named(name)[option].annotation) if option in named(name) else "str | None"
    if not kind.startswith(("str", "object")):
        return
    for blank in ("", "   ", "\t"):
        error = refusal(name, **{option: blank})
        assert error is not None, f"{name}({option}={blank!r}) is answered"
        assert error.where == option.replace("_", " "), error


@pytest.mark.parametrize("name", FUNCTIONS)
def test_what_cannot_be_none_is_not(name: str) -> None:
    always = {k for k, p in named(name).items() if p.annotation in ("str", "bool") and p.kind != p.VAR_POSITIONAL}
    for option in {*needed(name), *always}:
        error = refusal(name, **{option: None})
        assert error is not None
        assert (error.asked, error.where) == ("(nothing)", option.replace("_", " "))


@pytest.mark.parametrize("name", FUNCTIONS)
def test_text_for_tables_is_refused(name: str) -> None:
    if "data" not in named(name):
        return
    error = refusal(name, data="0.24.0")
    assert error is not None
    assert (error.where, error.do) == ("data", "give gaugeblock.refdata('0.24.0')")


@pytest.mark.parametrize("name", FUNCTIONS)
def test_a_function_of_the_face_is_sent_by_its_name(name: str) -> None:
    function = getattr(gaugeblock, name)
    assert pickle.loads(pickle.dumps(function)) is function
    assert inspect.signature(function) == inspect.signature(inspect.unwrap(function))


@pytest.mark.parametrize(
    ("kind", "value", "fits"),
    [
        ("str | Sequence[str] | None", ["a", "b"], True),
        ("str | Sequence[str] | None", ("a",), True),
        ("str | Sequence[str] | None", ["a", ""], False),
        ("str | Sequence[str] | None", {"a"}, False),
        ("Mapping[str, str | None]", {"a": None, "b": "", "c": "1 in"}, True),
        ("Mapping[str, str | None]", {"a": 5}, False),
        ("Mapping[str, Any]", {"a": 5}, True),
        ("Mapping[str, Any]", "a", False),
        ("list[str]", "bolt", False),
        ("bool", True, True),
        ("bool", "yes", False),
        ("str", True, False),
        ("Callable[..., Sheet]", len, True),
        ("Callable[..., Sheet]", "len", False),
    ],
)
def test_kinds(kind: str, value: object, fits: bool) -> None:
    def taken(option: object) -> None:
        """One option of this kind."""

    taken.__annotations__["option"] = kind
    function: Callable[..., Any] = typed.guarded(taken, "taken")
    if fits:
        assert function(value) is None
        assert function(option=value) is None
    else:
        with pytest.raises(GaugeblockError, match="option"):
            function(value)
        with pytest.raises(GaugeblockError, match="option"):
            function(option=value)


@pytest.mark.parametrize("name", [n for n in FUNCTIONS if n in MORE and n != "look_up"])
def test_an_option_that_is_none_is_refused_with_the_nearest(name: str) -> None:
    error = refusal(name, lenght="14 ft")
    assert error is not None
    assert error.asked == "lenght"
    assert "length" in error.nearest


@pytest.mark.parametrize(
    ("path", "keys"),
    [
        ("lines/route.py", MORE["route"]),
        ("lines/fuel/line.py", tuple(k for k in fuels.ALL if k != "power")),
        ("driveline/axles/answer.py", axles.KEYS),
        ("driveline/propshafts/answer.py", propshafts.KEYS),
    ],
)
def test_a_type_checker_knows_every_such_option(path: str, keys: tuple[str, ...]) -> None:
    tree = ast.parse((SRC / path).read_text(encoding="utf-8"))
    (options,) = (node for node in ast.walk(tree) if isinstance(node, ast.ClassDef) and node.name == "Typed")
    names = [n.target.id for n in options.body if isinstance(n, ast.AnnAssign) and isinstance(n.target, ast.Name)]
    assert sorted(names) == sorted(keys)


# Of these it is said that they are those of another answer.
OF_ANOTHER = {"fuel_line": "fuel", "axle_compared": "axle", "part": "torque"}


@pytest.mark.parametrize("name", FUNCTIONS)
def test_every_option_stands_in_the_help(name: str) -> None:
    said = getattr(gaugeblock, name).__doc__
    if name in OF_ANOTHER:
        assert f"of ``{OF_ANOTHER[name]}``" in said
        said += getattr(gaugeblock, OF_ANOTHER[name]).__doc__
    names = [option for option in options(name) if option != "data" and (name, option) != ("look_up", "thread")]
    assert [o for o in names if not re.search(rf"``{o}``|\b{o} :", said)] == []


@pytest.mark.parametrize("name", FUNCTIONS)
def test_the_help_names_what_is_raised(name: str) -> None:
    said = getattr(gaugeblock, name).__doc__
    assert re.search(r"\b(?:InputError|LookupMiss|JobError|DataError|UnitError|OutputError|Ambiguous)\b", said)


def test_what_is_compared_is_an_answer_and_its_own_options() -> None:
    for answer, given, options, where in [
        (len, (), {}, "answer"),
        (gaugeblock.frame, (), {}, "answer"),
        (gaugeblock.torque, ("3/8-16",), {"grad": "8"}, "torque"),
        (gaugeblock.torque, ("3/8-16", "8"), {}, "torque"),
        (gaugeblock.torque, ("3/8-16",), {"confirmed": {"a": "b"}}, "confirmed"),
        (gaugeblock.torque, (" ",), {}, "given"),
    ]:
        with pytest.raises(InputError) as refused:
            gaugeblock.compared(answer, "condition", *given, **options)
        assert refused.value.where == where


@pytest.mark.parametrize("name", [n for n in domains.answers() if n not in ("plan", "axle_compared")])
def test_a_comparison_refuses_by_itself(name: str) -> None:
    """Two values that mean nothing of each key, all else left open: no error of Python's own goes up."""
    for key in options(name):
        with contextlib.suppress(GaugeblockError):
            gaugeblock.compared(getattr(gaugeblock, name), f"{key}=\x00, \x00\x00")


def test_a_table_has_no_such_quantity() -> None:
    with pytest.raises(LookupMiss) as refused:
        gaugeblock.frame("fasteners/torques", "tightning_torque")
    assert refused.value.nearest[0] == "tightening_torque"
    assert len(gaugeblock.frame("fasteners/torques", "tightening_torque"))


def test_sources_takes_a_list() -> None:
    assert gaugeblock.sources(["bolt"])
    with pytest.raises(InputError, match="a list of texts is wanted, not text"):
        gaugeblock.sources("bolt")


@pytest.mark.parametrize("question", ["3/8-16 grade 5 dry", "3/8-16 grade 5", "31 ft lbs in nm", "dot 4 dry"])
def test_whatever_is_asked_has_its_text(question: str) -> None:
    kinds = (gaugeblock.Sheet, gaugeblock.Table, gaugeblock.Conversion, gaugeblock.Found)
    got = gaugeblock.ask(question)
    assert isinstance(got, kinds)
    assert got.text().strip()


def test_the_text_of_a_sheet_is_what_the_command_prints(capsys: pytest.CaptureFixture[str]) -> None:
    sheet = gaugeblock.torque("3/8-16", grade="SAE J429 5", condition="dry")
    line = ["torque", "3/8-16", "--grade", "SAE J429 5", "--condition", "dry"]
    for more, unit in (([], None), (["--in", "N*m"], "N*m")):
        main([*line, *more])
        assert capsys.readouterr().out == f"{sheet.text(unit)}\n"
