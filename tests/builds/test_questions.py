"""Every open question of the half-filled builds is worth asking: its answer changes a number, or whether the work may
go on.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from gaugeblock.packet import make

HERE = Path(__file__).parent
# A figure of a maker is kept without its page: the page is asked for, and changes no number.
PAPER = "maker.place"
PLUS = '[[shop.dies]]\nname = "hoop die"\nod = "1 in"\nradius = "3 in"\n'
_TEST = 'test_bends = [{ pulled = "83 deg", released = "80 deg" }]\n'

# (build, item, key) -> what of the file is replaced by what: the answer written in.
ANSWERS = {
    ("special", "tail hoop", "shop.dies.test_bends"): [
        ('radius = "3 in"', 'die = "hoop die"'),
        ("[[fasteners]]", PLUS + _TEST + "[[fasteners]]"),
    ],
    ("special", "tail hoop", "shop.dies.start_mark"): [
        ('radius = "3 in"', 'die = "hoop die"'),
        ("[[fasteners]]", PLUS + 'start_mark = "1 in"\n[[fasteners]]'),
    ],
    ("special", "oil pressure line", "material"): [
        ('material = "copper tube"', 'material = "PTFE"'),
    ],
    ("special", "brake line nuts", "maker.torque"): [
        ('name = "brake line nuts"', 'name = "brake line nuts"\nmaker = "14 lbf*ft"'),
    ],
    ("special", "half shafts", "yield_strength"): [
        ('name = "half shafts"', 'name = "half shafts"\nyield_strength = "90 ksi"\ncertificate = "mill sheet 12"'),
    ],
    ("special", "joint at the gearbox", "setting"): [
        (
            'setting = "preload"',
            'setting = "preload"\nmaker = { value = "0.010 in", source = "sheet", place = "p. 1" }',
        ),
    ],
    ("special", "hub nuts", "size"): [('part = "hub nut"', 'part = "hub nut"\nmaker = "150 lbf*ft"')],
    ("van", "exhaust manifold nuts", "maker.torque"): [
        ('name = "exhaust manifold nuts"', 'name = "exhaust manifold nuts"\nmaker = "25 lbf*ft"'),
    ],
    ("trials", "roll hoop", "shop.dies.test_bends"): [
        ('grip = "3 in"', 'grip = "3 in"\ntest_bends = ["93 deg set, 90 deg got"]'),
    ],
    ("trials", "roll hoop", "shop.dies.start_mark"): [('grip = "3 in"', 'grip = "3 in"\nstart_mark = "1 in"')],
    ("trials", "rear stay", "shop.dies.test_bends"): [
        ('grip = "3 in"', 'grip = "3 in"\ntest_bends = ["32 deg set, 30 deg got"]'),
    ],
    ("trials", "rear stay", "shop.dies.start_mark"): [('grip = "3 in"', 'grip = "3 in"\nstart_mark = "1 in"')],
    ("trials", "rear brake line", "temperature"): [
        ('gap = "3 in"', 'gap = "3 in"\ntemperature = "340 degF"\ntemperature_by = "crayon"'),
    ],
    ("trials", "fuel line", "class"): [('fluid = "gasoline"', 'fluid = "gasoline"\nclass = "SAE J30 R9"')],
    ("trials", "brake hose to caliper", "maker.torque"): [
        ('part = "banjo bolt"', 'part = "banjo bolt"\nmaker = "25 lbf*ft"'),
    ],
    ("trials", "ring gear backlash", "maker.value"): [
        (
            'as_found = "0.009 in"',
            'as_found = "0.009 in"\nmaker = { low = "0.006 in", high = "0.008 in", source = "sheet", place = "p. 1" }',
        ),
    ],
    ("trials", "axle shafts", "hardness"): [('length = "24 in"', 'length = "24 in"\nhardness = "30 HRC"')],
    ("trials", "steering arm", "grade"): [('name = "steering arm"', 'name = "steering arm"\ngrade = "SAE J429 8"')],
    ("trials", "wheel nuts", "maker.torque"): [('part = "wheel nut"', 'part = "wheel nut"\nmaker = "85 lbf*ft"')],
    ("van", "gearbox crossmember", "diameters"): [
        ('die = "38 die"\nkick', 'die = "38 die"\ndiameters = ["38.2 mm", "36.8 mm"]\nkick'),
    ],
    ("van", "gearbox crossmember", "maker_radius"): [
        ('die = "38 die"\nkick', 'die = "38 die"\nmaker_radius = "120 mm"\nmaker_source = "sheet, p. 1"\nkick'),
    ],
    ("van", "glow plugs", "maker.torque"): [('part = "glow plug"', 'part = "glow plug"\nmaker = "18 N*m"')],
    ("van", "exhaust, front pipe", "diameters"): [
        ('radius = "150 mm"', 'radius = "150 mm"\ndiameters = ["51 mm", "49 mm"]'),
    ],
    ("van", "exhaust, front pipe", "maker_radius"): [
        ('radius = "150 mm"', 'radius = "150 mm"\nmaker_radius = "160 mm"\nmaker_source = "sheet, p. 1"'),
    ],
    ("van", "exhaust manifold nuts", "size"): [
        ('part = "exhaust manifold nut"', 'part = "exhaust manifold nut"\nmaker = "25 N*m"'),
    ],
    ("van", "fuel feed", "temperature"): [
        ('gap = "100 mm"', 'gap = "100 mm"\ntemperature = "120 degC"\ntemperature_by = "crayon"'),
    ],
    ("van", "fuel feed", "marked_for"): [('gap = "100 mm"', 'gap = "100 mm"\nmarked_for = "gasoline"')],
    ("van", "load bay lamps", "earth_drop"): [
        ('name = "load bay lamps"', 'name = "load bay lamps"\nearth_drop = "0.5 V"'),
    ],
    ("van", "heater hoses", "fluid"): [
        ('material = "coolant hose"', 'material = "coolant hose"\nfluid = "coolant, ethylene glycol"'),
    ],
    ("van", "heater hoses", "material"): [('material = "coolant hose"', 'material = "silicone rubber"')],
}
# The die of the front pipe is none of the shop's: what is measured on it stands in a die of its own.
_PIPE = [
    ('radius = "150 mm"', 'die = "pipe die"'),
    ("[[fasteners]]", '[[shop.dies]]\nname = "pipe die"\nod = "50 mm"\nradius = "150 mm"\nKEY\n[[fasteners]]'),
]
for _key, _line in (
    ("shop.dies.test_bends", 'test_bends = ["47 deg set, 45 deg got", "31 deg set, 30 deg got"]'),
    ("shop.dies.start_mark", 'start_mark = "20 mm"'),
    ("shop.dies.grip", 'grip = "60 mm"'),
):
    ANSWERS["van", "exhaust, front pipe", _key] = [(old, new.replace("KEY", _line)) for old, new in _PIPE]


def asked() -> list[tuple[str, str, str]]:
    """Every question of the builds: build, item, key."""
    out = []
    for path in sorted(HERE.glob("*.toml")):
        for item in make.make(str(path)).items:
            out += [(path.stem, item.name, q.key) for q in item.sheet.questions]
    return out


def shown(text: str, folder: Path, name: str) -> Any:
    """What is set and whether the work goes on: the decision, the marks and angles, the checks that can stop or ask."""
    job = folder / "job.toml"
    job.write_text(text, encoding="utf-8")
    (item,) = [i for i in make.make(str(job)).items if i.name == name]
    figures = [(f.quantity, f.typical, f.low, f.high) for f in item.sheet.decision.figures]
    set_by_hand = sorted(
        (f.quantity, f.typical, f.low or 0.0, f.high or 0.0)
        for f in item.sheet.figures
        if f.quantity in ("bend_angle_set", "bend_mark")
    )
    verdicts = [(c.name, c.result) for c in item.sheet.checks if c.bears != "inform"]
    return item.sheet.decision.kind, figures, set_by_hand, verdicts


def test_every_question_of_the_builds_is_answered_below() -> None:
    open_ones = [q for q in asked() if q[2] != PAPER]
    assert len(open_ones) == len(set(open_ones))
    assert set(open_ones) == set(ANSWERS)


@pytest.mark.parametrize("question", ANSWERS, ids=" / ".join)
def test_its_answer_changes_a_number_or_whether_the_work_goes_on(
    question: tuple[str, str, str], tmp_path: Path
) -> None:
    build, name, _ = question
    text = (HERE / f"{build}.toml").read_text(encoding="utf-8")
    before = shown(text, tmp_path, name)
    for old, new in ANSWERS[question]:
        assert old in text
        text = text.replace(old, new, 1)
    after = shown(text, tmp_path, name)
    assert after != before, after
