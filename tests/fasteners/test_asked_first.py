"""What is asked before it is used: a wanted torque far off, threads that a figure is not for, a metal that no table
is for; and whose number a setting is.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock.answer.decision import ASK, NONE, USE
from gaugeblock.cli import main
from gaugeblock.errors import Ambiguous, GaugeblockError, LookupMiss
from gaugeblock.fasteners import place
from gaugeblock.fasteners.job import Fastener
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.torque import torque
from gaugeblock.packet import make
from gaugeblock.tables.load import refdata

DATA = refdata()
PLUG = {"size": "14 mm", "seat": "gasket", "material": "aluminium"}
SIZED = sorted({r.key[:4] for r in DATA.table("fasteners/part_torques").rows if not r.standing and r.key[1] != "any"})


# --- a torque that somebody wants is questioned as a maker's is


@pytest.mark.parametrize("wanted", ["180 lbf*ft", "200 N*m", "18 lbf*in"])
def test_a_wanted_torque_far_from_the_parts_own_is_asked_about(wanted: str) -> None:
    sheet = part("spark plug", **PLUG, wanted=wanted)
    assert sheet.decision.kind == ASK
    assert "Did you mean" in sheet.decision.do or "Read it again" in sheet.decision.do
    assert wanted not in {f"{f.text} {f.unit}" for f in sheet.decision.figures}
    assert part("spark plug", **PLUG, wanted=wanted, confirmed="wanted").decision.kind == USE


def test_a_wanted_torque_that_no_bolt_of_the_size_takes_is_asked_about() -> None:
    assert torque("3/8-16", wanted="300 lbf*ft").decision.kind == NONE
    assert torque("3/8-16", wanted="30 lbf*ft").decision.kind == USE
    judged = torque("3/8-16", grade="SAE J429 5", condition="dry", wanted="300 lbf*ft")
    assert judged.decision.kind == "stop"  # proof judges it


@settings(deadline=None, max_examples=150)
@given(st.sampled_from(SIZED), st.sampled_from([8, 12, 20, 50]), st.booleans())
def test_whoever_names_it_the_same_torque_is_doubted_alike(
    key: tuple[str, str, str, str], times: int, is_over: bool
) -> None:
    name, size, seat, material = key
    keys = {n: v for n, v in (("size", size), ("seat", seat), ("material", material)) if v not in ("any", "not stated")}
    try:
        plain = part(name, **keys)
    except GaugeblockError:
        return
    row = next((f for f in plain.figures if f.quantity == "tightening_torque"), None)
    if row is None:
        return
    low, high = (row.typical if end is None else end for end in (row.low, row.high))
    nm = high * times if is_over else low / times  # of a wide range the end, which is what it is far from
    text = f"{nm:.6g} {row.unit}"
    wanted, made = (part(name, **keys, **{who: text}) for who in ("wanted", "maker"))  # type: ignore[arg-type]
    assert {wanted.decision.kind, made.decision.kind} <= {ASK, NONE}
    assert "very" in wanted.decision.do
    assert "very" in made.decision.do


# --- the condition of the threads


def test_a_makers_figure_for_a_part_is_for_the_threads_it_says() -> None:
    nuts = {"size": "1/2-20"}
    paper = {"torque": "80 lbf*ft", "source": "handbook", "place": "p. 9"}
    assert part("wheel nut", **nuts, maker=paper).decision.kind == USE
    pasted = part("wheel nut", **nuts, maker=paper, condition="anti-seize")
    assert pasted.decision.kind == ASK
    assert [q.key for q in pasted.questions] == ["maker.condition"]
    for_paste = {**paper, "condition": "anti-seize"}
    assert part("wheel nut", **nuts, maker=for_paste, condition="anti-seize").decision.kind == USE
    for_dry = part("wheel nut", **nuts, maker={**paper, "condition": "dry"}, condition="anti-seize")
    assert for_dry.decision.kind == ASK
    assert for_dry.decision.candidates[0].when == "the threads are dry"


def test_a_makers_figure_for_a_bolt_is_for_the_threads_it_says() -> None:
    bolt = {"grade": "SAE J429 5", "maker": {"torque": "25 lbf*ft", "source": "m", "place": "p. 1"}}
    assert torque("3/8-16", **bolt, condition="oiled").decision.kind == USE  # type: ignore[arg-type]
    for here, of_maker in (("oiled", "dry"), ("dry", "oiled")):
        maker = {"torque": "25 lbf*ft", "source": "m", "place": "p. 1", "condition": of_maker}
        sheet = torque("3/8-16", grade="SAE J429 5", condition=here, maker=maker)
        assert sheet.decision.kind == ASK
        whens = {c.figure.basis: c.when for c in sheet.decision.candidates}
        assert whens["maker"] == f"the threads are {of_maker}"
        assert whens["derived"] == f"the threads are {here}, and the maker names no other torque"
        assert not any("whether its torque" in q.text for q in sheet.questions)  # he says it


FORMS = (
    "15 lbf*ft",
    "14 to 15 lbf*ft",
    "8 lbf*ft, then 15 lbf*ft",
    "8 lbf*ft, then 15 lbf*ft + 90 deg",
    "15 lbf*ft + yield",
)


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("own", [{}, {"nut_factor": "0.2"}], ids=["tables", "own friction"])
def test_whatever_a_maker_gives_is_for_the_threads_it_says(form: str, own: dict[str, str]) -> None:
    """By one torque, a range, stages, an angle or yield; of threads whose friction nobody published too."""
    conditions = ("dry", "oiled", "anti-seize", "cadmium plated", "thread-locking liquid")
    for here in conditions:
        for of_maker in conditions:
            maker = {"torque": form, "source": "m", "place": "p. 1", "condition": of_maker}
            sheet = torque("3/8-16", grade="SAE J429 5", condition=here, maker=maker, **own)  # type: ignore[arg-type]
            asked = any("or use" in q.text for q in sheet.questions)
            assert asked == (here != of_maker), (here, of_maker)
            if asked:
                assert sheet.decision.kind != USE, (here, of_maker)
                makers = [c for c in sheet.decision.candidates if c.figure.basis != "derived"]
                assert all(of_maker in c.when for c in makers)
                assert all(here in c.when for c in sheet.decision.candidates if c not in makers)


# --- a size that says no thread


@pytest.mark.parametrize(
    ("size", "threads"),
    [
        ("1/2 in", {"1/2-20 UNF"}),
        ("1/2", {"1/2-20 UNF"}),
        ("12 mm", {"M12x1.25", "M12x1.5"}),
        ("M12", {"M12x1.25", "M12x1.5"}),
        ("M14", {"M14x1.5"}),
    ],
)
def test_a_diameter_alone_offers_the_threads_there_are(size: str, threads: set[str]) -> None:
    sheet = part("wheel nut", size=size)
    assert sheet.decision.kind == ASK
    assert {c.when for c in sheet.decision.candidates} == threads
    assert [q.key for q in sheet.questions] == ["size"]
    assert part("wheel nut", size=size, maker="1500 lbf*ft").decision.kind == ASK


def test_what_somebody_names_is_set_on_a_size_that_the_tables_lack() -> None:
    assert part("exhaust clamp", size="2-1/2 in", wanted="40 lbf*ft").decision.kind == USE
    assert part("exhaust clamp", size="5/16-18", wanted="40 lbf*ft").decision.kind == USE
    assert part("banjo bolt", size="5/16-18", wanted="40 lbf*ft").decision.kind == USE


@pytest.mark.parametrize(("name", "size"), [("exhaust manifold stud", "M8"), ("oil drain plug", "M14x1.5")])
def test_a_habit_of_no_stated_size_is_asked_about_for_any(name: str, size: str) -> None:
    sheet = part(name, size=size)
    assert sheet.decision.kind == ASK
    assert sheet.decision.figures[0].basis == "common practice"
    assert f"none by the size {size} was found" in sheet.decision.do


@pytest.mark.parametrize("size", ["2-1/2 in", "60 mm", "2-1/4"])
def test_a_clamp_by_its_pipe_is_told_that_none_was_found_by_that_size(size: str) -> None:
    sheet = part("exhaust clamp", size=size)
    assert sheet.decision.kind == ASK
    assert "was found" in sheet.questions[0].text
    assert sheet.decision.figures[0].id == part("exhaust clamp").decision.figures[0].id


# --- a metal that the general tables are not for


def test_threads_in_a_soft_metal_are_never_given_a_steel_nuts_torque_unasked() -> None:
    bolt = {"grade": "SAE J429 8", "condition": "dry"}
    soft = {
        r.key[0]
        for r in DATA.table("fasteners/engagement").rows
        if r["quantity"] == "engagement_addend" and not r.standing
    }
    assert {"aluminium", "magnesium"} <= soft
    for metal in soft:
        full = torque("3/8-16", **bolt, into=metal, insert="yes").decision.figure
        assert full is not None
        for insert in (None, "no"):
            used = torque("3/8-16", **bolt, into=metal, insert=insert).decision.figure
            assert used is None or used.typical <= 0.7 * full.typical * (1 + 1e-9)
    assert torque("3/8-16", **bolt, into="magnesium").decision.kind == ASK
    assert torque("3/8-16", **bolt, into="magnesium", given="44 lbf*ft").decision.kind == ASK
    assert torque("3/8-16", **bolt, into="cast iron").decision.kind == USE


@pytest.mark.parametrize("insert", [None, "no"])
def test_a_torque_into_a_metal_that_no_table_is_for_is_asked_by_a_check_of_its_own(insert: str | None) -> None:
    sheet = torque("3/8-16", grade="SAE J429 5", condition="dry", into="magnesium", insert=insert, engagement="1 in")
    assert [c.name for c in sheet.checks if c.asks and c.name.startswith("torque into")] == ["torque into magnesium"]
    assert sheet.decision.because == ("torque into magnesium",)


def test_a_torque_far_from_any_of_its_part_is_asked_where_no_row_is_for_its_size() -> None:
    sheet = part("spark plug", size="1/2 in", seat="taper", wanted="400 lbf*ft")
    assert sheet.decision.kind == NONE
    assert "wanted as typed" in [c.name for c in sheet.checks if c.asks]
    plain = part("spark plug", size="1/2 in", seat="taper", wanted="20 lbf*ft")
    assert "wanted as typed" not in [c.name for c in plain.checks]


def test_a_setting_that_is_judged_says_too_that_no_table_has_its_torque() -> None:
    """With a crow-foot the torque at the thread is worked out, and no published torque stands beside it."""
    keys = {"grade": "SAE J429 8", "given": "26 lbf*ft", "adapter": "2 in on 12 in"}
    said = {c: [k.text for k in torque("3/8-16", condition=c, **keys).cautions] for c in ("anti-seize", "dry")}
    assert any(text.startswith("No published torque for exactly this thread") for text in said["anti-seize"])
    assert not any(text.startswith("No published torque for exactly this thread") for text in said["dry"])


@pytest.mark.parametrize(
    ("keys", "offered"),
    [({}, "SAE J429 5"), ({"condition": "dry"}, "SAE J429 5"), ({"grade": "SAE J429 5"}, "dry")],
)
def test_a_key_left_open_is_told_with_what_it_may_be(keys: dict[str, str], offered: str) -> None:
    with pytest.raises(Ambiguous, match="needed to find a torque") as open_key:
        torque("3/8-16", **keys)
    assert offered in open_key.value.every


def test_a_metal_without_a_source_is_its_items_question(tmp_path: Path) -> None:
    with pytest.raises(LookupMiss, match="no published") as refused:
        torque("3/8-16", grade="SAE J429 8", condition="dry", into="brass")
    assert "fasteners/" not in str(refused.value)
    job = tmp_path / "job.toml"
    item = '[[fasteners]]\nname = "a"\nthread = "3/8-16"\ngrade = "SAE J429 8"\ncondition = "dry"\ninto = "brass"\n'
    job.write_text(item, encoding="utf-8")
    (made,) = make.make(str(job)).items
    assert made.sheet.decision.kind == NONE
    assert "into brass" in made.sheet.decision.do
    assert "aluminium" in made.sheet.decision.do


# --- whose number it is


def test_a_setting_is_of_who_named_the_torque() -> None:
    tools = {"adapter": "2 in on 12 in", "wrench": "10 to 150 lbf*ft by 1"}
    maker = ("30 lbf*ft", "manual", "p. 4")
    table = torque("3/8-16", grade="SAE J429 5", condition="dry", **tools)  # type: ignore[arg-type]
    by_maker = torque("3/8-16", maker=maker, **tools)  # type: ignore[arg-type]
    by_wish = torque("3/8-16", wanted="30 lbf*ft", **tools)  # type: ignore[arg-type]
    figures = [s.decision.figure for s in (table, by_maker, by_wish)]
    trust = [figure.trust if figure is not None else "" for figure in figures]
    assert trust == ["CALCULATED, PUBLISHED", "CALCULATED, MAKER", "CALCULATED, GIVEN"]


def test_a_makers_range_is_said_with_the_setting_and_where_no_wrench_reaches_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    line = ["torque", "3/8-16", "--maker", "25 to 28 lbf*ft", "--maker-source", "manual", "--maker-place", "p. 4"]
    for wrench in ("10 to 80 lbf*ft by 1", "30 to 150 lbf*ft by 2"):
        main([*line, "--wrench", wrench])
        assert "25 to 28 lbf" in capsys.readouterr().out.replace("\N{NO-BREAK SPACE}", " ")


# --- what a careful shop adds is of this place


@pytest.mark.parametrize(
    ("name", "word", "is_said"),
    [
        ("flywheel bolts", "Wheel nuts", False),
        ("steering wheel nut", "Wheel nuts", False),
        ("wheel nuts", "Wheel nuts", True),
        ("intake manifold", "Hot joint", False),
        ("header tank bracket", "Hot joint", False),
        ("header flange", "Hot joint", True),
    ],
)
def test_cautions_of_a_place_are_of_that_place(name: str, word: str, is_said: bool) -> None:
    said = place.cautions(Fastener(name=name))
    assert any(word in c.text for c in said) is is_said


@pytest.mark.parametrize(
    ("name", "is_soft"),
    [
        ("rocker cover", True),
        ("rubber mount under the gearbox", True),
        ("oil pan", True),
        ("clutch cover to flywheel", False),
        ("recovered bracket", False),
        ("frame rail", False),
    ],
)
def test_a_soft_joint_is_asked_about_unless_its_maker_is_heard(name: str, is_soft: bool, tmp_path: Path) -> None:
    """Common practice: a bolt chart's torque is for a joint of metal."""
    lone = f'[[fasteners]]\nname = "{name}"\nthread = "5/16-18"\ngrade = "SAE J429 5"\ncondition = "dry"\n'
    heard = f'{lone}maker = {{ torque = "11 lbf*ft", source = "manual", place = "p. 2" }}\n'
    job = tmp_path / "job.toml"
    for text, is_asked in ((lone, is_soft), (heard, False)):
        job.write_text(text, encoding="utf-8")
        (made,) = make.make(str(job)).items
        assert (made.sheet.decision.kind == ASK) is is_asked
        assert any(c.name == place.SOFT and c.asks for c in made.sheet.checks) is is_asked
        assert any("soft joint" in q.text for q in made.sheet.questions) is is_asked


# --- one grammar of keys


def test_a_crow_foot_is_written_alike_everywhere(tmp_path: Path) -> None:
    base = '[[fasteners]]\nname = "a"\nthread = "3/8-16"\ngrade = "SAE J429 8"\ncondition = "dry"\n'
    text, table = "2 in on 12 in at 45 deg", '{ length = "2 in", wrench_length = "12 in", angle = "45 deg" }'
    ids = set()
    for n, adapter in enumerate((f'"{text}"', table)):
        job = tmp_path / f"{n}.toml"
        job.write_text(f"{base}adapter = {adapter}\n", encoding="utf-8")
        (made,) = make.make(str(job)).items
        assert made.sheet.decision.figure is not None
        ids.add(made.sheet.decision.figure.id)
    keys = {"length": "2 in", "wrench_length": "12 in", "angle": "45 deg"}
    for adapter in (text, keys):
        figure = torque("3/8-16", grade="SAE J429 8", condition="dry", adapter=adapter).decision.figure
        assert figure is not None
        ids.add(figure.id)
    assert len(ids) == 1
    with pytest.raises(GaugeblockError, match="crow-foot"):
        torque("3/8-16", wanted="30 lbf*ft", adapter={"length": "2 in"})


def test_what_is_missing_is_what_is_said_to_be_missing() -> None:
    with pytest.raises(GaugeblockError) as refused:
        torque("3/8-16", grade="8")
    assert "--grade" not in str(refused.value)
    assert "--condition" in str(refused.value)
    with pytest.raises(LookupMiss, match="threads per inch"):
        torque("3/8", grade="8")
