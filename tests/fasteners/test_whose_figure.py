"""No number that is another thing's: a torque of no stated size, the middle of a habit, a plain bolt's for a head bolt,
one that may stretch the bolt and does not say so; and the unit that the thread is of stands first.
"""

from __future__ import annotations

from math import pi

import pytest

from gaugeblock import part, refdata, torque
from gaugeblock.answer.decision import ASK, NONE, USE, Decision
from gaugeblock.answer.short import short
from gaugeblock.errors import GaugeblockError
from gaugeblock.fasteners import keys
from gaugeblock.units import to_base

DATA = refdata()
THREADS = ("M6", "M8", "M10", "M12", "M14", "M16", "M20", "1/4-20", "5/16-18", "3/8-16", "7/16-14", "1/2-13", "5/8-11")
# Proof strength of class 8.8, ISO 898-1: the ordinary bolt.
ORDINARY = 600e6


def habits() -> list[str]:
    """The parts of which the tables have a habit of no stated size alone."""
    own: dict[str, set[tuple[str, str]]] = {}
    for row in DATA.table("fasteners/part_torques").rows:
        if row["service"] == "vehicle" and not row["standing"]:
            own.setdefault(row["part"], set()).add((row["size"], row.cells["basis"]))
    return sorted(p for p, kinds in own.items() if kinds == {("not stated", "common practice")})


@pytest.mark.parametrize("name", habits())
def test_a_torque_of_no_stated_size_is_shown_only_for_a_thread_that_takes_it(name: str) -> None:
    """The dry torque at proof by T = K d F, and the stress area by ISO 898-1: what clamps takes a fifth of it and no
    more than all.
    """
    clamps = name.endswith(("bolt", "stud", "nut", "bolts")) and not {"tube", "flare"} & set(name.split())
    answered = 0
    for typed in THREADS:
        thread = keys.thread(typed, DATA)
        area = pi / 4 * (thread.diameter_m - 0.9382 * thread.pitch_m) ** 2
        whole = 0.2 * thread.diameter_m * area * ORDINARY * (0.5 if "banjo" in name else 1)  # that is hollow
        decision = part(name, size=typed).decision
        for figure in decision.figures:
            ends = [to_base(e, figure.unit) for e in (figure.low, figure.high, figure.value) if e is not None]
            assert max(ends) <= whole * (1 + 1e-9), (name, typed)
            assert not clamps or min(ends) >= 0.2 * whole * (1 - 1e-9), (name, typed)
            answered += 1
        assert decision.kind == (ASK if decision.figures else NONE)
    assert answered < len(THREADS)  # not every thread takes it


@pytest.mark.parametrize("name", habits())
def test_no_wrench_is_set_to_the_middle_of_a_wide_habit(name: str) -> None:
    wrenches = ["2 to 25 N*m by 0.5", "20 to 200 N*m by 1", "100 to 500 N*m by 5"]
    plain, with_wrench = part(name).decision, part(name, wrench=wrenches).decision
    for bare, figure in zip(plain.figures, with_wrench.figures, strict=True):
        if bare.low is not None and bare.high is not None and bare.high > 1.25 * bare.low:
            assert figure.quantity == bare.quantity
            assert (figure.low, figure.high, figure.value) == (bare.low, bare.high, None)


def test_a_narrow_habit_is_set_on_the_wrench() -> None:
    decision = part("wheel nut", size="1/2-20", wrench="20 to 150 lbf*ft by 5").decision
    assert decision.figures[0].text == "80"


@pytest.mark.parametrize("condition", keys.conditions(DATA))
@pytest.mark.parametrize(
    ("thread", "grade"), [("M10x1.5", "8.8"), ("M12x1.75", "10.9"), ("3/8-16", "8"), ("1/2-13", "5")]
)
def test_a_torque_that_may_stretch_the_bolt_says_so_on_the_first_screen(
    thread: str, grade: str, condition: str
) -> None:
    try:
        sheet = torque(thread, grade=grade, condition=condition)
    except GaugeblockError:
        return
    share = next((f for f in sheet.figures if f.quantity == "share_of_proof"), None)
    if sheet.decision.kind != USE or share is None or (share.high or 0) <= 100:
        return
    said = [c for c in sheet.cautions if c.severity in ("injury", "damage") and f"{share.high:.0f} %" in c.text]
    assert said, (thread, grade, condition, share.high)
    assert said[0].text[:40] in " ".join(short(sheet, columns=80).split())


@pytest.mark.parametrize("thread", THREADS)
@pytest.mark.parametrize("condition", ["dry", "oiled", "anti-seize"])
def test_the_unit_that_the_thread_is_of_stands_first(thread: str, condition: str) -> None:
    sheet = torque(thread, grade="8.8" if thread[0] == "M" else "5", condition=condition)
    line = next(line for line in short(sheet).splitlines() if line.strip().startswith("TIGHTEN"))
    assert line.split()[2].startswith("N*m" if thread[0] == "M" else "lbf*")


JOB = '[[fasteners]]\nname = "{}"\nthread = "M12x1.75"\ngrade = "10.9"\ncondition = "oiled"\ncount = 4\n{}'

PAPER = 'maker = { torque = "100 N*m", source = "maker", place = "p. 2", condition = "oiled" }'


def decided(name: str, more: str = "") -> Decision:
    from gaugeblock.domains import hooks, parse_job
    from gaugeblock.fasteners.page import item

    job = parse_job(JOB.format(name, more), hooks=hooks(DATA))
    return item(job.fasteners[0], job.shop, DATA).sheet.decision


@pytest.mark.parametrize(
    "name",
    ["cylinder head bolts", "flywheel bolts", "seat belt anchors", "brake caliper bolts", "con rod bolts", "main caps"],
)
def test_a_bolt_with_a_figure_of_its_own_asks_its_maker_first(name: str) -> None:
    decision = decided(name)
    assert decision.kind == ASK
    assert "a plain bolt" in decision.candidates[0].when
    assert decided(name, PAPER).kind == USE


@pytest.mark.parametrize(
    "name", ["gearbox crossmember", "header tank bracket", "battery tray", "camera bracket", "clutch cover to flywheel"]
)
def test_any_other_bolt_is_a_plain_one(name: str) -> None:
    assert decided(name).kind == USE
