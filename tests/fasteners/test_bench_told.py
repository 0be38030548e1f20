"""What is told of bolts at the bench and answered without a command of its own: shares, diameters, stripping."""

from __future__ import annotations

import pytest

from gaugeblock import ask, grade
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.fasteners.depth import engagement


def sheet(line: str) -> Sheet:
    got = ask(line)
    assert isinstance(got, Sheet), line
    return got


@pytest.mark.parametrize(
    ("line", "share"),
    [
        ("dry spec, greased threads, knock off?", 90),
        ("antisieze torque reduction percent", 60),
        ("how much less torque with moly paste", 65),
        ("what do i knock off for copper grease", 66),
    ],
)
def test_what_is_left_of_a_dry_torque_is_one_nut_factor_over_the_other(line: str, share: float) -> None:
    figure = sheet(line).decision.figure
    assert figure is not None
    assert (figure.typical, figure.unit) == (pytest.approx(share), "%")
    here, dry = figure.inputs
    assert figure.typical == pytest.approx(100 * here.typical / dry.typical)


def test_of_a_locking_liquid_no_share_is_known() -> None:
    assert sheet("do I drop the torque with threadlocker on").decision.kind == "none"


@pytest.mark.parametrize(
    ("line", "diameters"),
    [
        ("Is one diameter of engagement enough in mild steel or must I go deeper?", 1.5),
        ("how many diameters of thread in aluminium", 2),
    ],
)
def test_the_rules_are_told_in_diameters_where_no_thread_is_said(line: str, diameters: float) -> None:
    figure = sheet(line).decision.figure
    assert figure is not None
    assert (figure.quantity, figure.typical) == ("engagement_minimum", diameters)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("Which lets go first with an M6 8.8 nine mm deep in grey iron, screw or casting?", "36200 N"),
        (
            "we tapped a 3/8-16 in half inch mild steel plate and want to run a grade 8 at full whack, will the plate"
            " give up before the bolt does",
            "57.2 ksi",
        ),
        ("M10 class 8.8, 20 mm of thread in aluminium of 240 MPa, no insert, does it strip", "59900 N"),
    ],
)
def test_whether_a_thread_strips_is_told_first(line: str, told: str) -> None:
    assert any(told in caution.text for caution in sheet(line).cautions[:2])


def test_a_thread_that_is_not_asked_about_says_nothing_of_it() -> None:
    assert not any("Stripping" in caution.text for caution in sheet("m6 8.8 dry 9 mm deep in cast iron").cautions)


def test_too_little_thread_stops_by_a_rule_for_bolts_and_not_by_one_for_studs() -> None:
    kinds = [engagement("3/8-16", into=metal, have="1/2 in").decision.kind for metal in ("aluminium", "steel")]
    assert kinds == ["stop", "use"]
    assert engagement("3/8-16", into="aluminium", have="3/4 in").decision.kind == "use"


def test_a_load_is_area_times_strength_or_what_the_standard_prints() -> None:
    loads = {
        load: grade("grade 8", thread="1/2-13", load=load).decision.figure for load in ("tensile", "proof", "clamp")
    }
    area = 0.1419
    assert {k: f.typical for k, f in loads.items() if f is not None} == {
        "tensile": pytest.approx(150_000 * area),
        "proof": pytest.approx(120_000 * area),
        "clamp": pytest.approx(0.75 * 120_000 * area),
    }
    printed = grade("10.9", thread="M12").decision.figure
    assert printed is not None
    assert (printed.basis, printed.typical) == ("published", 87700)


@pytest.mark.parametrize("load", ["weight", "clamp", "stretch"])
def test_a_load_is_known_and_of_a_thread(load: str) -> None:
    with pytest.raises(InputError):
        grade("grade 8", load=load)


def test_kilogram_metres_are_newton_metres() -> None:
    figures = sheet("6 kgm on an m12 8.8 dry ok?").figures
    assert any(f.quantity == "tightening_torque" and f.typical == pytest.approx(6 * 9.80665, rel=1e-3) for f in figures)


@pytest.mark.parametrize("line", ["little screw off an old british gauge, 4.7 mm over the threads and 32 to the inch"])
def test_beside_a_british_thread_stands_the_rule_of_its_series(line: str) -> None:
    from gaugeblock.plain.answer import answer

    assert any("ba" in more.read_as.split() for more in answer(line).more)


def test_how_near_each_way_of_tightening_comes_and_the_shares_of_proof_are_shown() -> None:
    from gaugeblock.found import Found

    for line, quantity in (
        ("Torque plus angle or plain torque, who gets closer to the real bolt load?", "preload_scatter"),
        ("why 75 percent of proof", "preload_share"),
    ):
        got = ask(line)
        assert isinstance(got, Found)
        assert any(f.quantity == quantity for _, figures in got.groups for f in figures)
