"""The order of the work: the steps of the job, else the trade's; cards, list and questions all follow it."""

from __future__ import annotations

import pytest

from gaugeblock import domains
from gaugeblock.domains import parse_job
from gaugeblock.errors import JobError
from gaugeblock.packet import build, render
from gaugeblock.packet.chosen import Scope
from gaugeblock.tables.load import refdata

BOLT = '[[fasteners]]\nname = "{}"\nthread = "3/8-16"\ngrade = "SAE J429 5"\n{}\n'
TUBE = '[[tubes]]\nname = "{}"\nod = "1-3/4 in"\nradius = "6 in"\n{}\n'
TUBE += 'offset = {{ rise = "6 in", angle = "45 deg", before = "8 in", after = "8 in" }}\n'


def packet_of(text: str) -> build.Packet:
    data = refdata()
    return build.build(parse_job(text, hooks=domains.hooks(data)), data, "gaugeblock test")


def names(text: str) -> list[str]:
    return [i.name for i in packet_of(text).items if i.card is not None]


def test_a_step_puts_an_item_before_those_without_and_in_the_order_of_its_number() -> None:
    wheel, mount = BOLT.format("wheel studs", "step = 2"), BOLT.format("engine mount", "")
    drain = BOLT.format("drain plug", "step = 1")
    assert names(wheel + mount + drain) == ["drain plug", "wheel studs", "engine mount"]


def test_cards_and_list_and_questions_follow_the_steps() -> None:
    made = packet_of(BOLT.format("alpha", "step = 30") + BOLT.format("beta", "step = 20") + BOLT.format("gamma", ""))
    view = render.view_of(made, Scope())
    assert [c.name for page in view["cards"] for c in page] == ["beta", "alpha", "gamma"]
    assert [line.name for line in view["lists"][0]] == ["beta", "alpha", "gamma"]
    assert [i.name for row in view["first"].groups[0].rows for i in row.items] == ["beta", "alpha", "gamma"]
    assert [q["sheets"] for q in made.record["questions"]] == [["beta", "alpha", "gamma"]]


def test_without_steps_the_trade_makes_before_it_bolts_and_starts_with_the_mounts() -> None:
    text = BOLT.format("wheel nuts", "") + BOLT.format("gearbox crossmember to frame", "")
    text += BOLT.format("gearbox mount to crossmember", "") + BOLT.format("brake line nuts", "")
    text += BOLT.format("axle spline nut", "") + BOLT.format("engine mount brackets", "")
    text += TUBE.format("gearbox crossmember", "")
    found = names(text)
    assert found[:3] == ["engine mount brackets", "cut list of all tubes", "gearbox crossmember"]
    assert found[3:5] == ["gearbox crossmember to frame", "gearbox mount to crossmember"]
    assert found[5:] == ["brake line nuts", "axle spline nut", "wheel nuts"]


@pytest.mark.parametrize(
    ("name", "as_one"),
    [
        ("bell housing bolts", "bellhousing bolts"),
        ("flex plate bolts", "flexplate bolts"),
        ("crank pulley bolt", "crankshaft bolt"),
        ("gear box mount", "gearbox mount"),
        ("prop shaft bolts", "driveshaft bolts"),
        ("cross-member bolts", "crossmember bolts"),
    ],
)
def test_a_compound_is_placed_however_it_is_spelled(name: str, as_one: str) -> None:
    wheels = BOLT.format("wheel nuts", "")
    assert names(wheels + BOLT.format(name, "")) == [name, "wheel nuts"]
    both = names(BOLT.format(as_one, "") + BOLT.format("engine mount", "") + BOLT.format(name, ""))
    assert both == ["engine mount", as_one, name]


def test_the_cut_list_goes_before_the_first_tube_of_the_steps() -> None:
    text = BOLT.format("a", "step = 1") + TUBE.format("hoop", "step = 2") + TUBE.format("brace", "step = 3")
    assert names(text) == ["a", "cut list of all tubes", "hoop", "brace"]


@pytest.mark.parametrize("table", sorted(domains.tables()))
@pytest.mark.parametrize("step", ["0", "-1", "1.5", "true", "[1]"])
def test_a_step_is_a_positive_whole_number(table: str, step: str) -> None:
    with pytest.raises(JobError) as caught:
        parse_job(f'[[{table}]]\nname = "a"\nstep = {step}\n')
    (problem,) = caught.value.problems
    assert (problem.path, problem.line) == (f"{table}[1].step (a)", 3)
    assert "whole number" in problem.why


@pytest.mark.parametrize("table", sorted(domains.tables()))
def test_every_item_takes_a_step(table: str) -> None:
    (item,) = getattr(parse_job(f'[[{table}]]\nname = "a"\nstep = 7\n'), table)
    assert item.step == 7


def test_a_step_in_words_is_a_setting_and_a_number_is_a_step() -> None:
    head = '[[driveline]]\nname = "a"\nkind = "setup"\ncomponent = "ring gear"\n'
    words, number = (parse_job(head + t).driveline[0] for t in ('step = "backlash"', 'setting = "backlash"\nstep = 4'))
    assert (words.setting, words.step) == ("backlash", None)
    assert (number.setting, number.step) == ("backlash", 4)
    with pytest.raises(JobError) as caught:
        parse_job(head + 'setting = "backlash"\nstep = "preload"')
    assert [p.path for p in caught.value.problems] == ["driveline[1].step (a)"]


def test_shims_are_moved_before_the_backlash_is_written_down_and_an_exhaust_comes_before_the_wheels() -> None:
    text = BOLT.format("backlash", "") + BOLT.format("carrier shims", "") + BOLT.format("wheel nuts", "")
    text += '[[exhausts]]\nname = "left run"\nkind = "run"\nlength = "3 m"\nod = "2-1/2 in"\nwall = ".065 in"\n'
    found = names(text + 'material = "304"\nhot = "500 degC"\nfixed = "500 mm"\n')
    assert found.index("left run") < found.index("carrier shims") < found.index("backlash") < found.index("wheel nuts")
