"""``[[exhausts]]``: a run of the job's own tubes; its card, its drawing, what it asks."""

from __future__ import annotations

import pytest

from gaugeblock import domains
from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.answer.item import Item
from gaugeblock.packet.build import build
from gaugeblock.tables.load import refdata

DATA = refdata()
TUBE = """
[[tubes]]
name = "over the axle"
material = "304 stainless"
od = "2-1/2 in"
wall = ".065 in"
radius = "3-3/4 in"
points = [
  ["0 in", "0 in", "0 in"], ["40 in", "0 in", "0 in"], ["52 in", "{side}6 in", "12 in"], ["90 in", "0 in", "2 in"],
]
datum = "collector"
"""
RUN = """
[[exhausts]]
name = "left run"
tubes = ["over the axle"]
hot = "900 degF"
fixed = "0 in"
hangers = [
  {{ at = "2 in", length = "3 in", limit = "60 lbf" }},
  {{ at = "45 in", length = "3 in", limit = "60 lbf" }},
  {{ at = "80 in", length = "3 in", limit = "60 lbf" }},
]
masses = [{{ what = "silencer", at = "30 in", mass = "12 lb" }}]
gaps = [{{ to = "brake line", at = "50 in", gap = "{gap}" }}]
"""


def made(text: str) -> dict[str, Item]:
    return {i.name: i for i in build(domains.parse_job(text), DATA, "test").items}


def run(side: str = "", gap: str = "3 in", more: str = "") -> Item:
    return made(TUBE.format(side=side) + RUN.format(gap=gap) + more)["left run"]


def numbers(item: Item, quantity: str) -> list[float]:
    return [f.typical for f in item.sheet.figures if f.quantity == quantity]


def test_a_run_of_a_drawn_tube_takes_length_mass_and_bends_from_it() -> None:
    item = run()
    tube = made(TUBE.format(side=""))["over the axle"]
    assert item.sheet.decision.kind == USE
    assert numbers(item, "run_length")[0] == pytest.approx(tube.sheet.figure("cut_length").typical, rel=1e-6)
    assert numbers(item, "run_distance") == []
    ends = item.sheet.decision.figures[0]
    straight = next(f for f in ends.walk() if f.quantity == "run_distance").typical
    assert straight == pytest.approx((90**2 + 2**2) ** 0.5, rel=1e-6)
    assert straight < numbers(item, "run_length")[0]


def test_a_mirrored_run_grows_and_hangs_alike() -> None:
    one, other = run(), run(side="-")
    for quantity in ("run_movement", "hanger_load", "hung_mass", "hanger_swing"):
        assert numbers(one, quantity) == pytest.approx(numbers(other, quantity))


def test_its_card_has_a_row_for_each_hanger_and_its_sheet_a_drawing() -> None:
    item = run()
    assert item.card is not None
    assert [row[0] for row in item.card.table] == ["HOLDS AT", "fixed point", "hanger 1", "hanger 2", "hanger 3"]
    (drawing,) = item.sheet.drawings
    assert drawing.wide
    assert "brake line 3 in" in drawing.svg
    assert "seen from the side" in drawing.svg


def test_a_gap_that_is_too_small_when_hot_asks() -> None:
    item = run(gap="2 in")
    assert item.sheet.decision.kind == ASK
    assert "gap to the brake line" in item.sheet.decision.because


@pytest.mark.parametrize(
    ("keys", "key"),
    [
        ('tubes = ["none such"]', "tubes"),
        ('length = "90 in"\nod = "2 in"\nwall = ".065 in"', "material"),
        ('od = "2 in"\nwall = ".065 in"\nmaterial = "304"', "length"),
        ('length = "90 in"\nod = "2 in"\nwall = ".065 in"\nmaterial = "cheese"', "length"),
        ('kind = "pipe"', "power"),
    ],
)
def test_what_is_missing_or_not_known_is_the_items_question(keys: str, key: str) -> None:
    item = made(f'[[exhausts]]\nname = "a"\n{keys}\n')["a"]
    assert item.sheet.decision.kind == NONE
    assert key in {q.key for q in item.sheet.questions}


def test_a_pipe_is_sized_by_the_engine() -> None:
    item = made('[[exhausts]]\nname = "a"\nkind = "pipe"\npower = "200 hp"\ndisplacement = "3 L"\n')["a"]
    assert item.sheet.decision.kind == USE
