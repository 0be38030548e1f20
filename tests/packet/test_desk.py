"""At the desk: of several torques it is plain which one governs, and all of an item stand in the unit of its card."""

from __future__ import annotations

import re
from pathlib import Path
from types import SimpleNamespace

import pytest

from gaugeblock.domains import parse_job
from gaugeblock.packet import build, make, render
from gaugeblock.packet.chosen import Scope
from gaugeblock.tables.load import refdata

ROOT = Path(__file__).resolve().parents[2]
HEAD = '{shop}\n[[fasteners]]\nname = "a"\nthread = "{thread}"\ngrade = "{grade}"\ncondition = "{condition}"\n{more}\n'


def view(
    more: str = "", shop: str = "", thread: str = "M12x1.75", grade: str = "ISO 898-1 8.8", condition: str = "dry"
) -> SimpleNamespace:
    text = HEAD.format(shop=shop, thread=thread, grade=grade, condition=condition, more=more)
    made = build.build(parse_job(text), refdata(), "test")
    got = render.view_of(made, Scope())
    return SimpleNamespace(card=got["cards"][0][0], desk=got["sheets"][0], line=got["lists"][0][0], item=made.items[0])


def torques(desk: SimpleNamespace) -> list[SimpleNamespace]:
    return [f for f in desk.figures if f.label.startswith("tightening torque")]


@pytest.mark.parametrize("shop", ["", '[shop]\nunits = "inch"\n', '[shop]\nunits = "metric"\n'])
@pytest.mark.parametrize("condition", ["dry", "oiled"])
@pytest.mark.parametrize(
    "more", ["", 'wanted = "60 lbf*ft"', 'maker = { torque = "80 N*m", source = "s", place = "p" }']
)
def test_one_torque_governs_and_the_others_say_that_they_are_compared(shop: str, condition: str, more: str) -> None:
    seen = view(more, shop, condition=condition)
    rows = torques(seen.desk)
    assert len(rows) > 1
    roles = [f.role for f in rows]
    assert roles.count("governs") == 1
    assert set(roles) == {"governs", "for comparison"}
    assert roles.index("governs") == 0
    shown = seen.card.figures[0]
    assert rows[0].number == f"{shown.value}\u00a0{shown.unit}"
    assert {f.number.rsplit("\u00a0", 1)[1] for f in rows} == {shown.unit}
    assert {f.other.rsplit("\u00a0", 1)[1] for f in rows if f.other} <= {"N\u00b7m", "lbf\u00b7ft"} - {shown.unit}


def test_what_each_number_of_an_open_card_rests_on_is_told_apart() -> None:
    wrench = '[shop]\nunits = "inch"\nwrenches = ["10 to 80 lbf*ft by 1"]\n'
    seen = view('into = "aluminium"\nengagement = "24 mm"', wrench)
    assert len(seen.card.figures) == 2
    roles = {f.number: f.role for f in seen.desk.figures if f.role}
    first, second = (f"{f.value}\u00a0{f.unit}" for f in seen.card.figures)
    settings = [f.role for f in seen.desk.figures if f.label == "torque setting"]
    assert settings == ["first number of the card", "second number of the card"]
    assert set(roles) >= {first, second}


def test_a_small_torque_is_told_in_the_unit_of_the_wrench() -> None:
    """A wrench in lbf*ft on a torque under 15 lbf*ft: one card, one unit."""
    wrench = '[shop]\nunits = "inch"\nwrenches = ["5 to 80 lbf*ft by 1"]\n'
    crow = 'adapter = { length = "2 in", wrench_length = "10 in", angle = "0 deg" }'
    seen = view(crow, wrench, thread="1/4-20", grade="SAE J429 8")
    card = seen.card
    assert card.figures[0].unit == "lbf\u00b7ft"
    (note,) = [n for n in card.notes if n.endswith("at the fastener")]
    assert "lbf\u00b7ft" in note
    said = " ".join([*card.notes, *(f.number for f in seen.desk.figures)])
    assert not re.search(r"lbf\u00b7in", said)


BUILDS = (ROOT / "reports" / "examples" / "demo.toml", *sorted((ROOT / "tests" / "packet" / "builds").glob("*.toml")))


@pytest.mark.parametrize("job", BUILDS, ids=lambda path: path.stem)
def test_no_two_lines_of_a_desk_sheet_say_they_are_the_same(job: Path) -> None:
    seen = render.view_of(make.make(str(job)), Scope())
    for sheet in seen["sheets"]:
        names = [(f.label, f.role, f.source) for f in sheet.figures]
        assert len({*names}) == len(names), (sheet.name, names)
