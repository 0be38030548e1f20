"""A thread by what it measures: every thread of the tables is known again, and its neighbours are not taken for it."""

from __future__ import annotations

import random

import pytest

from gaugeblock import ask, identify, part
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import GaugeblockError
from gaugeblock.fasteners import keys
from gaugeblock.tables.load import refdata

DATA = refdata()
CELLS = list(dict.fromkeys(DATA.table("fasteners/threads").column("thread").values()))


def _names(sheet: Sheet) -> set[str]:
    decision = sheet.decision
    if decision.kind == "use":
        return {decision.verb.removeprefix("IT IS ")}
    return {candidate.when for candidate in decision.candidates}


@pytest.mark.parametrize("cell", CELLS)
def test_a_thread_a_little_under_its_size_is_known(cell: str) -> None:
    """A bolt of class 2A or 6g measures up to its tolerance under its size: ASME B1.1 and ISO 965-1 (from memory)."""
    thread = keys.read_cell(cell)
    under = random.Random(cell).uniform(0.001, 0.006) * 0.0254
    pitch = f"{thread.pitch_m * 1000:g} mm" if thread.is_metric else f"{round(0.0254 / thread.pitch_m)} tpi"
    for across in (f"{(thread.diameter_m - under) * 1000:.3f} mm", f"{(thread.diameter_m - under) / 0.0254:.4f} in"):
        names = _names(identify(across, pitch))
        assert cell in names, (cell, across, pitch, names)


@pytest.mark.parametrize(
    ("diameter", "pitch", "name"),
    [
        ("22.2 mm", "14 tpi", "7/8-14 UNF"),  # SAE J514, dash 10
        (".402 in", "27 tpi", "1/8 NPT, an American taper pipe thread"),  # ASME B1.20.1: 0.405 in pipe, 27 threads
        ("13.0 mm", "19 tpi", "1/4 BSP, a British pipe thread, straight or taper"),  # ISO 228-1: 13.157 mm, 19
        ("9.9 mm", "1 mm", "M10x1"),  # ISO 261
        ("7.8 mm", "1.25 mm", "M8x1.25"),
        ("7.9 mm", "18 tpi", "5/16-18 UNC"),
    ],
)
def test_threads_of_the_standards_are_told_apart(diameter: str, pitch: str, name: str) -> None:
    assert _names(identify(diameter, pitch)) == {name}


def test_threads_too_near_to_tell_are_both_shown_and_asked_about() -> None:
    sheet = identify("20.8 mm", "14 tpi")
    assert sheet.decision.kind == "ask"
    assert {name[:3] for name in _names(sheet)} == {"1/2"}
    assert len(_names(sheet)) == 2


def test_a_gauge_that_nearly_fits_is_asked_about_and_the_other_thread_is_ruled_out() -> None:
    """3/8-24 has 25.4 / 24 = 1.058 mm of pitch; M10x1 is no thinner than 9.6 mm, worn or new."""
    sheet = identify("9.45 mm", "1.0 mm")
    assert sheet.decision.kind == "ask"
    assert _names(sheet) == {"3/8-24 UNF"}
    assert "It is no M10x1" in sheet.decision.do
    assert any("strip" in caution.text for caution in sheet.cautions)


@pytest.mark.parametrize(
    ("diameter", "pitch", "form", "names"),
    [
        ("13.1 mm", "19 tpi", "parallel", {"1/4 BSPP, a British straight pipe thread"}),
        ("13.1 mm", "19 tpi", "taper", {"1/4 BSPT, a British taper pipe thread"}),
        ("13.6 mm", "18 tpi", "taper", {"1/4 NPT, an American taper pipe thread"}),
        ("13.6 mm", "18 tpi", "parallel", set()),  # NPT has no straight thread of this outside
        ("9.9 mm", "1.5 mm", "taper", set()),
    ],
)
def test_a_form_that_was_seen_leaves_the_threads_of_that_form(
    diameter: str, pitch: str, form: str, names: set[str]
) -> None:
    assert _names(identify(diameter, pitch, form=form)) == names


def test_a_form_of_no_thread_is_refused() -> None:
    with pytest.raises(GaugeblockError):
        identify("13.1 mm", "19 tpi", form="round")


def test_what_measures_as_no_thread_is_none() -> None:
    sheet = identify("9.4 mm", "22 tpi")
    assert sheet.decision.kind == "none"
    assert "M10" in sheet.decision.do


# BS 84 by its sizes (BSF, and Whitworth where no American thread is the same), BS 93 for BA.
@pytest.mark.parametrize(
    ("diameter", "pitch", "name"),
    [
        ("7.8 mm", "22 tpi", "5/16-22 BSF"),
        ("9.4 mm", "20 tpi", "3/8-20 BSF"),
        (".435 in", "18 tpi", "7/16-18 BSF"),
        ("12.6 mm", "12 tpi", "1/2-12 BSW"),
        ("6.3 mm", "26 tpi", "1/4-26 BSF"),
        ("5.2 mm", "0.9 mm", "1 BA"),
    ],
)
def test_an_old_british_thread_is_named(diameter: str, pitch: str, name: str) -> None:
    sheet = identify(diameter, pitch)
    shown = [sheet.decision.verb, *(one.when for one in sheet.decision.candidates)]
    assert any(name in text for text in shown), shown


def test_a_thread_of_today_that_is_as_near_is_not_put_in_doubt_by_an_old_one() -> None:
    for cell in ("3/8-16 UNC", "5/16-18 UNC", "7/16-14 UNC", "3/4-10 UNC"):
        assert identify(f"{cell.partition('-')[0]} in", f"{cell.partition('-')[2].split()[0]} tpi").decision.verb == (
            f"IT IS {cell}"
        )


@pytest.mark.parametrize("text", ["", "fine", "14", "0 tpi", "-3 mm"])
def test_a_pitch_that_is_none_is_refused(text: str) -> None:
    with pytest.raises(GaugeblockError):
        identify("3/8 in", text)


def test_whitworth_is_named_where_it_measures_the_same() -> None:
    """BS 84: Whitworth has the size and pitch of coarse threads but for 1/2 in, which has 12 threads."""
    assert "Whitworth" in identify(".374 in", "16 tpi").decision.do
    assert "Whitworth" not in identify(".498 in", "13 tpi").decision.do
    assert "Whitworth" not in identify(".374 in", "24 tpi").decision.do


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("bolt measures 0.374 over the thread and 16 tpi what is it", "3/8-16 UNC"),
        ("what thread is 9.8 mm outside with 1.5 mm pitch", "M10x1.5"),
        ("mystery stud .312 dia 24 tpi", "5/16-24 UNF"),
        (
            "a bolt measures three seventy four thou over the threads and has sixteen threads per inch what is it",
            "3/8-16 UNC",
        ),
    ],
)
def test_it_is_asked_as_people_say_it(line: str, name: str) -> None:
    sheet = ask(line)
    assert isinstance(sheet, Sheet)
    assert _names(sheet) == {name}


@pytest.mark.parametrize(("thread", "tube"), [("3/8-24", "3/16 in"), ("7/16-24", "1/4 in")])
def test_a_line_nut_is_known_by_its_thread(thread: str, tube: str) -> None:
    """The nut of a double flare goes by its tube; the table says which thread its nut has."""
    by_thread = part("brake tube nut", size=thread, seat="45 deg", material="steel").decision
    by_tube = part("brake tube nut", size=tube, seat="45 deg", material="steel").decision
    assert by_thread.figures == by_tube.figures
    assert by_thread.figures
