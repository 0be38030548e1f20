"""A maker's torque for threads in another condition: turned by the nut factors of both, at the same clamp load."""

from __future__ import annotations

import pytest

from gaugeblock import ask, torque
from gaugeblock.answer.decision import ASK, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.tables.load import Refdata, refdata

DRAFT = refdata("0.15.0")
DRY_90 = {"torque": "90 N*m", "condition": "dry", "source": "its sheet", "place": "p. 2"}


def _turned(sheet: Sheet) -> list[tuple[float, str]]:
    return [
        (c.figure.typical, c.figure.unit)
        for c in sheet.decision.candidates
        if c.figure.rule is not None and c.figure.rule.name == "torque_for_other_threads"
    ]


@pytest.mark.parametrize("condition", ["oiled", "anti-seize", "copper anti-seize", "moly paste", "zinc plated"])
@pytest.mark.parametrize("bolt", [("3/8-16", "SAE J429 8"), ("M12", "ISO 898-1 10.9"), (None, None)])
def test_the_clamp_load_is_the_one_of_the_makers_threads(condition: str, bolt: tuple[str | None, str | None]) -> None:
    """T / K is the same for both: SHIGLEY9 Eq. 8-27 with one diameter and one clamp load."""
    thread, grade = bolt
    sheet = torque(thread, grade=grade, condition=condition, maker=DRY_90, confirmed="maker", data=DRAFT)  # type: ignore[arg-type]
    assert sheet.decision.kind == ASK
    own = next(c.figure for c in sheet.decision.candidates if c.figure.basis == "maker")
    made = next(c.figure for c in sheet.decision.candidates if c.figure is not own)
    here, there = (f for f in made.inputs if f.quantity == "nut_factor")
    assert made.typical / here.typical == pytest.approx(own.typical / there.typical)
    assert [c.figure.typical for c in sheet.decision.candidates] == sorted((made.typical, own.typical)), "safer first"
    assert "dry" in next(c.when for c in sheet.decision.candidates if c.figure is own)


def test_a_handbooks_example_of_moly_paste() -> None:
    """Nut factors of 0.20 dry and 0.13 with moly paste: 100 comes to 65, a cut of a third, as shop handbooks say it."""
    sheet = torque(None, condition="moly paste", maker={"torque": "100 lbf*ft", "condition": "dry"}, data=DRAFT)  # type: ignore[arg-type]
    assert _turned(sheet) == [(pytest.approx(65.0), "lbf*ft")]


def test_a_range_of_the_maker_keeps_both_its_ends() -> None:
    maker = {"torque": "60 to 66 N*m", "condition": "oiled"}
    sheet = torque("M12", grade="ISO 898-1 10.9", condition="dry", maker=maker, data=DRAFT)
    made = sheet.decision.candidates[-1].figure
    assert made.low is not None
    assert made.high is not None
    assert made.high / made.low == pytest.approx(66 / 60)
    assert made.low > 60, "dry threads take more for the same clamp load"


def test_no_stop_for_a_torque_that_is_not_used_as_it_stands() -> None:
    """The dry torque itself passes proof on greased threads: it is turned and asked about, and not set."""
    maker = {"torque": "44 lbf*ft", "condition": "dry"}
    sheet = torque("3/8-16", grade="SAE J429 8", condition="anti-seize", maker=maker, data=DRAFT)
    assert sheet.decision.kind == ASK
    assert _turned(sheet)[0][0] < 30
    assert not [q for q in sheet.questions if "very high" in q.text], "it is judged by the threads that it is for"


def test_the_makers_own_threads_need_no_turning() -> None:
    maker = {"torque": "30 N*m", "condition": "oiled"}
    sheet = torque("M10", grade="ISO 898-1 8.8", condition="oiled", maker=maker, data=DRAFT)
    assert (sheet.decision.kind, _turned(sheet)) == (USE, [])


def test_a_torque_of_a_maker_who_says_no_threads_is_asked_about_on_paste() -> None:
    on = {c: torque(None, condition=c, maker="90 N*m", data=DRAFT).decision.kind for c in ("moly paste", "oiled")}
    assert on == {"moly paste": ASK, "oiled": USE}


@pytest.mark.parametrize(
    ("line", "torques"),
    [
        ("book says 90 nm dry but I have moly paste on the threads", [58.5, 90.0]),
        ("the chart says 100 lb-ft for a dry bolt, moly paste on mine", [65.0, 100.0]),
        ("dry torque is 80 ft lbs, what with oil", [72.0, 80.0]),
        ("manual calls for 35 ft lb dry, using moly paste, 3/8-16 grade 8", [22.75, 35.0]),
        ("m12 10.9 oiled, the sheet shows 90 N·m for dry threads", [81.0, 90.0]),
    ],
)
def test_the_threads_of_a_makers_torque_are_read_with_it(line: str, torques: list[float]) -> None:
    """``dry`` behind a maker's torque was read as saying nothing, and the dry torque set on greased threads."""
    sheet = ask(line, data=DRAFT)
    assert isinstance(sheet, Sheet)
    assert sheet.decision.kind == ASK
    assert [c.figure.typical for c in sheet.decision.candidates] == pytest.approx(torques)


def test_the_kept_item_has_the_makers_threads(tmp_path) -> None:  # type: ignore[no-untyped-def]
    from gaugeblock.plain.answer import reading_of
    from gaugeblock.plain.keep import keep

    data: Refdata = refdata()
    path = tmp_path / "build.toml"
    keep(reading_of("3/8-16 grade 8 oiled book says 40 ft lbs dry", data), str(path), data)
    text = path.read_text()
    assert 'maker.torque = "40 lbf*ft"' in text
    assert 'maker.condition = "dry"' in text
