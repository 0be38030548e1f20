"""The page for the axle shop: made when anything of the axle was given, and refused when it cannot be."""

from __future__ import annotations

import pytest

from gaugeblock import domains
from gaugeblock.answer.item import Item
from gaugeblock.answer.pretty import pretty
from gaugeblock.drawing.axle_plan import axle_plan
from gaugeblock.driveline import page
from gaugeblock.errors import JobError
from gaugeblock.tables.load import refdata

SHAFT = (
    '[[axles]]\nname = "rear axle"\nmaterial = "A434"\ntreatment = "quenched and tempered to class BD"\n'
    'diameter = "1-1/4 in"\nwheel_load = "1000 lb"\ngrip = "0.9"\nradius = "13 in"\nratio = "4.1"\n'
)


def item(more: str) -> Item:
    job = domains.parse_job(SHAFT + more, hooks=domains.hooks(refdata()))
    return page.item(job.axles[0], job.shop, refdata())


def test_a_shaft_alone_has_no_order() -> None:
    assert item("").sheet.drawings == ()


def test_the_order_says_what_was_given_and_changes_no_figure() -> None:
    plain, ordered = item(""), item('flange_to_flange = "60 in"\nspring_seats = "43 in"\npinion_offset = "-1 in"\n')
    assert plain.sheet.decision == ordered.sheet.decision
    (drawing,) = ordered.sheet.drawings
    assert drawing.page == "portrait"
    for words in ("ONE AXLE", "60 in", "43 in", "1 in to the left", ">4.1<"):
        assert pretty(words) in drawing.svg


def test_a_pinion_whose_place_was_not_given_says_so_on_the_plan() -> None:
    for given, said, unsaid in (
        ("", "pinion: place not given", "pinion, forward"),
        ('pinion_offset = "1 in"\n', "1 in to the right", "place not given"),
        ('pinion_offset = "0 in"\n', "pinion, forward", " to the "),
    ):
        (drawing,) = item('flange_to_flange = "60 in"\n' + given).sheet.drawings
        plan = drawing.svg
        assert pretty(said) in plan, said
        assert pretty(unsaid) not in plan, unsaid


@pytest.mark.parametrize(
    ("key", "inside", "outside"), [("spring_seats", "59.9", "60"), ("pinion_offset", "-29.9", "-30")]
)
def test_seats_and_pinion_lie_between_the_flanges_and_not_on_them(key: str, inside: str, outside: str) -> None:
    flanges = 'flange_to_flange = "60 in"\n'
    assert item(f'{flanges}{key} = "{inside} in"\n').sheet.drawings
    with pytest.raises(JobError, match="does not lie between flanges"):
        item(f'{flanges}{key} = "{outside} in"\n')


def test_seats_outside_the_flanges_are_refused() -> None:
    with pytest.raises(JobError, match="does not lie between flanges"):
        item('flange_to_flange = "60 in"\nspring_seats = "63 in"\n')
    with pytest.raises(ValueError, match="between the flanges"):
        axle_plan(60.0, 61.0, 0.0, ("", "", ""))
