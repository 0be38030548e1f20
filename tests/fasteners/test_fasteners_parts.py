"""Parts that have a torque of their own: their sizes and names, those of the table and others."""

from __future__ import annotations

import re

import pytest

from gaugeblock import refdata
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.cli import main
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners.part import part

# --- parts ------------------------------------------------------------------------------------------------------------


def test_the_plug_makers_table_governs_and_a_leaflet_for_garden_machines_informs() -> None:
    figure = part("spark plug", size="14 mm", seat="gasket", material="aluminium").figures[0]
    assert (figure.basis, figure.text) == ("published", "18.0 to 21.6")
    assert [(o.text, o.chosen_by) for o in figure.others] == [("15 to 22", "service")]


def test_a_habit_alone_answers_with_a_caution() -> None:
    sheet = part("wheel nut", size="1/2-20")
    assert sheet.figures[0].trust == "HABIT"
    assert any(c.severity == "damage" and "Habit, not published" in c.text for c in sheet.cautions)


def test_the_makers_part_torque_governs_and_is_held_against_the_table() -> None:
    keys = {"size": "14 mm", "seat": "gasket", "material": "aluminium"}
    for number, result in (("20", OK), ("23", OK), ("25", NOT_OK), ("13", NOT_OK)):
        sheet = part("spark plug", **keys, maker=(f"{number} lbf*ft", "plug box", "side"))
        assert sheet.figures[0].basis == "maker"
        assert sheet.checks[0].result == result
    habit = part("wheel nut", size="1/2-20", maker=("100 lbf*ft", "maker's sheet", "p. 1"))
    assert habit.checks[0].result == CANNOT_TELL


# --- parts: sizes and names that the table does not have
# ----------------------------------------------------------------


@pytest.mark.parametrize("size", ["45 mm", "1 1/2 in", "2 in", "3 in", "7/16 in", "7 in"])
def test_a_size_inside_a_range_of_the_part_is_of_that_range(size: str) -> None:
    """The vehicle's own row is from 7/16 to 7 in; those of industrial clamps, to 50 and to 102 mm, stand behind it."""
    sheet = part("hose clamp", size=size)
    assert [c.figure.text for c in sheet.decision.candidates] == ["27 to 35", "30 to 45"]
    one = part("hose clamp", size=size, material="stainless screw")
    assert (one.decision.kind, one.decision.figures[0].text) == ("use", "30 to 45")


def test_a_range_of_another_service_informs() -> None:
    sheet = part("hose clamp", size="to 50 mm")
    assert any("25 lbf*in on hose clamp, worm drive in industrial service" in c.text for c in sheet.cautions)
    assert not sheet.figures


@pytest.mark.parametrize(("size", "limit"), [("1/2-20", "64"), ("1/2-20 UNF", "64")])
def test_a_limit_that_alone_is_printed_is_told_and_asked_about(size: str, limit: str) -> None:
    sheet = part("leaf spring U-bolt nut", size=size, material="grade 8, plated")
    assert sheet.decision.kind == "ask"
    (candidate,) = sheet.decision.candidates
    assert (candidate.figure.text, candidate.then) == (limit, "no more than this")
    assert "maker.torque" in [q.key for q in sheet.questions]


@pytest.mark.parametrize("size", ["M11x1.25", "3/16 in", "60 mm"])
def test_another_size_of_a_part_is_never_offered_for_use(size: str) -> None:
    if size == "3/16 in":  # a size of the table, of other parts
        assert not part("wheel nut", size=size).figures
        return
    with pytest.raises(LookupMiss, match="no published source for this size") as refused:
        part("wheel nut", size=size)
    assert "does not answer" in refused.value.do
    assert size not in refused.value.nearest
    assert all(part("wheel nut", size=near).asked["size"] for near in refused.value.nearest)


def test_a_part_of_another_name_is_not_likened_to_any() -> None:
    with pytest.raises(LookupMiss, match="no published source for a part of this name") as refused:
        part("sunroof gasket")
    assert refused.value.nearest == ()
    with pytest.raises(LookupMiss) as near:
        part("sparkk plug")
    assert near.value.nearest[0] == "spark plug"


def test_rows_of_every_other_service_inform() -> None:
    said = " ".join(c.text for c in part("flare nut", size="3/8 in", seat="37 deg", material="steel").cautions)
    assert "270 to 300 lbf*in on flare nut in aircraft service" in said
    assert "2.25 to 2.75 flats on flare nut in heavy truck service" in said


def test_what_must_be_named_is_told_with_how_many_choices_there_are() -> None:
    (check,) = [c for c in part("spark plug").checks if c.result == CANNOT_TELL]
    assert "name them: " in check.reason
    assert check.reason.endswith(" more")


def _in_millimetres() -> list[tuple[str, str]]:
    rows = refdata().table("fasteners/part_torques").rows
    return sorted(
        {(r["part"], r["size"]) for r in rows if re.fullmatch(r"[0-9.]+ mm", r["size"]) and not r["standing"]}
    )


@pytest.mark.parametrize(("name", "size"), _in_millimetres())
def test_inches_that_were_said_are_never_millimetres(name: str, size: str, capsys: pytest.CaptureFixture[str]) -> None:
    typed = size.replace("mm", "in")
    main(["part", name, "--size", typed])
    title = capsys.readouterr().out.partition("\n")[0]
    assert size not in title.split(", ")
