"""The keys of a tube: every shape is taken, and what is wrong is told with its key, line and reason."""

from __future__ import annotations

import pytest

from gaugeblock.domains import parse_job
from gaugeblock.errors import JobError

T = '[[tubes]]\nname = "T"\n'
P = '["0 in", "0 in", "0 in"]'

GOOD = [
    'clear = { od = "2 in", height = "1 in", at = "18 in", span = "36 in", gap = "1 in", angle = "45 deg" }',
    'single = { first = "8 in", second = "8 in", angle = "60 deg" }',
    'offset = { rise = "6 in", angle = "45 deg", before = "8 in", after = "8 in" }',
    'kick_up = { width = "36 in", rise = "5 in", angle = "45 deg", foot = "8 in", second = { rise = "4 in" } }',
    'saddle = { rise = "3 in", angle = "30 deg", before = "8 in", after = "8 in" }',
    'template = { lengths = ["8 in", "6 in"], angles = ["45 deg"], turns = ["0 deg"] }',
    f'points = [{P}, ["0 in", "-18 in", "5 in"]]\ndatum = "bolt"',
    'bends = [{ straight = "8 in", angle = "45 deg" }]\nend = "8 in"',
    'load = { mass = "90 kg", bump_factor = "3", at = "centre", feet = "fixed" }\nreads = "mm"\nmarks_from = "end"',
    f'[[tubes.obstacles]]\nname = "road"\nplane = {{ point = {P}, free = "up" }}',
]


@pytest.mark.parametrize("text", GOOD)
def test_each_shape_is_taken_and_comes_back_as_written(text: str) -> None:
    (tube,) = parse_job(T + text).tubes
    key = text.split(" ", 1)[0].removeprefix("[[tubes.").split("]", 1)[0]
    assert tube.as_dict()[key]


ALIKE = [
    ('offset = "rise 6 in, angle 45 deg"', 'offset = { rise = "6 in", angle = "45 deg" }'),
    (
        'single = "first 8 in, second 9 in, angle 60 deg"',
        'single = { first = "8 in", second = "9 in", angle = "60 deg" }',
    ),
    (
        'kick_up = "flat 6 in, rise 5 in, second rise 4 in"',
        'kick_up = { flat = "6 in", rise = "5 in", second = { rise = "4 in" } }',
    ),
    ('trim = "1 in"', 'trim = { start = "1 in", end = "1 in" }'),
]


@pytest.mark.parametrize(("text", "table"), ALIKE)
def test_a_table_may_be_written_as_the_commands_take_it(text: str, table: str) -> None:
    assert parse_job(T + text).tubes == parse_job(T + table).tubes


def test_a_test_bend_may_be_written_as_the_command_takes_it() -> None:
    die = '[[shop.dies]]\nname = "d"\ntest_bends = ['
    text, table = '"47 deg set, 45 deg got"]', '{ pulled = "47 deg", released = "45 deg" }]'
    assert parse_job(die + text).shop == parse_job(die + table).shop
    with pytest.raises(JobError, match="not a test bend"):
        parse_job(die + '"47 deg"]')


BAD = [
    ('offset = "rise 6 in, slope 45 deg"', "tubes[1].offset", 3, "not a measure of this shape"),
    ('wall_needed = "11"', "tubes[1].wall_needed", 3, "look it up with `gauge`"),
    ('offset = { rise = "6 in", slope = "45 deg" }', "tubes[1].offset.slope", 3, "no such key"),
    ('offset = { rise = "6" }', "tubes[1].offset.rise", 3, "needs its unit"),
    ('offset = { rise = "-6 in" }', "tubes[1].offset.rise", 3, "more than 0"),
    ('offset = { rise = "6 in" }\nkick_up = { rise = "6 in" }', "tubes[1].kick_up", 4, "both offset and kick_up"),
    ('kick_up = { flat = "6 in", width = "36 in" }', "tubes[1].kick_up.width", 3, "both flat and width"),
    ('clear = { od = "2 in", width = "3 in" }', "tubes[1].clear.od", 3, "both width and od"),
    ('clear = { gap = "-1 in" }', "tubes[1].clear.gap", 3, "0 or more"),
    (
        'template = { lengths = ["8 in"], angles = ["45 deg"] }',
        "tubes[1].template.lengths",
        3,
        "1 lengths for 1 angles",
    ),
    ('template = { angles = ["45 deg"], turns = [] }', "tubes[1].template.turns", 3, "0 turns for 1 angles"),
    ('points = [["0 in", "0 in"]]', "tubes[1].points[1]", 3, "three lengths"),
    ('points = [["0 in", "0 in", "0"], ["1 in", "0 in", "0 in"]]', "tubes[1].points[1]", 3, "needs its unit"),
    (f"points = [{P}]", "tubes[1].points", 3, "two points at least"),
    ('marks_from = "middle"', "tubes[1].marks_from", 3, "centre"),
    ('reads = "1/8 in"', "tubes[1].reads", 3, "1/16 in"),
    ('place = { runs = "north" }', "tubes[1].place.runs", 3, "right"),
    ('place = { runs = "right", bends = "left" }', "tubes[1].place.bends", 3, "lies along the tube"),
    ('moves = [{ why = "rock", upp = "1 in" }]', "tubes[1].moves[1].upp", 3, "up"),
    ('collars = [{ at = "1 in", od = "3 in" }]', "tubes[1].collars[1].length", 3, "is missing"),
    ('load = { feet = "welded" }', "tubes[1].load.feet", 3, "pinned"),
    ('load = { mass = "90 lbf" }', "tubes[1].load.mass", 3, "mass"),
    ("bolts = { sleeve = true }", "tubes[1].bolts.sleeve", 3, "text is wanted"),
    ('copes = [{ end = "left", onto = "2 in", angle = "60 deg" }]', "tubes[1].copes[1].end", 3, "start"),
    ('removal = { name = "g" }', "tubes[1].removal.middle", 3, "is missing"),
    ('[[tubes.obstacles]]\nname = "o"', "tubes[1].obstacles[1]", 3, "neither points nor box nor plane"),
    (
        f'[[tubes.obstacles]]\nname = "o"\npoints = [{P}, ["1 in", "0 in", "0 in"]]',
        "tubes[1].obstacles[1].points",
        5,
        "without its od",
    ),
    (
        f'[[tubes.obstacles]]\nname = "o"\nod = "1 in"\nplane = {{ point = {P}, free = "up" }}',
        "tubes[1].obstacles[1].od",
        5,
        "belongs to a pipe",
    ),
    (
        f'[[tubes.obstacles]]\nname = "o"\nod = "1 in"\npoints = [{P}, {P}, {P}]',
        "tubes[1].obstacles[1].points",
        6,
        "radius of its bends",
    ),
]


@pytest.mark.parametrize(("text", "path", "line", "word"), BAD)
def test_a_wrong_key_is_told_with_its_path_and_line(text: str, path: str, line: int, word: str) -> None:
    with pytest.raises(JobError) as caught:
        parse_job(T + text)
    found = [p for p in caught.value.problems if p.path.split(" ")[0] == path]
    assert found, [str(p) for p in caught.value.problems]
    assert found[0].line == line
    assert word in str(found[0])


def test_two_obstacles_of_one_name_are_told() -> None:
    twice = f'[[tubes.obstacles]]\nname = "road"\nplane = {{ point = {P}, free = "up" }}\n'
    with pytest.raises(JobError, match="given twice"):
        parse_job(T + twice + twice)
