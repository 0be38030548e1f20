"""Spanners: the width across flats of a thread by its head, and the threads that a spanner fits."""

from __future__ import annotations

import pytest

import gaugeblock
from gaugeblock import spanner
from gaugeblock.answer.decision import NONE, USE
from gaugeblock.answer.making import base
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.fasteners.spanner import PAIR, fitted, living, size_of
from gaugeblock.tables.load import refdata
from gaugeblock.units import to_base

DATA = refdata()
ROWS = living(DATA)
TURNED = (*PAIR, "heavy hexagon nut", "structural bolt")
OF_ONE_PAIR = {"ISO 4014": "ISO 4032", "DIN 931": "DIN 934", "JIS small": "JIS small", "ASME B18.2.1": "ASME B18.2.2"}


def flats(size: str, head: str, standard: str) -> float:
    return base(spanner(size, head=head, standard=standard, data=DATA).decision.figures[0])


def named(row) -> str:
    """The key of a row: the name of its test."""
    return " ".join(row.key)


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_every_hexagon_on_record_is_answered_and_its_spanner_fits_it_again(row) -> None:
    figure = spanner(row["size"], head=row["head"], standard=row["standard"]).decision.figure
    assert figure.quantity == "width_across_flats"
    assert base(figure) == pytest.approx(to_base(row.typical, row["unit"]))
    back = {(r["size"], r["head"]) for r in fitted(f"{figure.text} {figure.unit}", None, DATA)}
    assert (row["size"], row["head"]) in back


@pytest.mark.parametrize("row", [r for r in ROWS if r["head"] in TURNED], ids=named)
def test_a_hexagon_is_about_one_and_a_half_times_its_thread(row) -> None:
    least = 1.35 if row["standard"] == "JIS small" else 1.4
    most = 2.4 if row["standard"] == "old Whitworth" else 2.001
    share = to_base(row.typical, row["unit"]) / size_of(row["size"], DATA)[0]
    assert least < share <= most


@pytest.mark.parametrize("bolt", [r for r in ROWS if r["standard"] in OF_ONE_PAIR and r["head"] == PAIR[0]], ids=named)
def test_a_nut_is_never_smaller_than_the_head_of_its_bolt(bolt) -> None:
    nut = flats(bolt["size"], PAIR[1], OF_ONE_PAIR[bolt["standard"]])
    assert nut >= to_base(bolt.typical, bolt["unit"]) - 1e-9


@pytest.mark.parametrize(
    "kind", sorted({(r["head"], r["standard"]) for r in ROWS if r["standard"][:3] in ("ISO", "DIN", "ASM", "JIS")})
)
def test_a_larger_thread_has_no_smaller_hexagon(kind: tuple[str, str]) -> None:
    sizes = {r["size"]: size_of(r["size"], DATA)[0] for r in ROWS if (r["head"], r["standard"]) == kind}
    widths = [flats(size, *kind) for size in sorted(sizes, key=sizes.__getitem__)]
    assert widths == sorted(widths)


def test_the_pitch_and_the_way_a_thread_is_said_change_nothing() -> None:
    same = {base(spanner(typed).decision.figures[0]) for typed in ("M10", "m10", "M10x1.25", "M10x1.5", "M10 fine")}
    assert len(same) == 1
    same = {base(spanner(typed).decision.figures[0]) for typed in ("3/8", "3/8-16", "3/8-24 UNF", "3/8 in")}
    assert len(same) == 1


def test_the_older_width_the_japanese_and_the_flanged_one_stand_beside_that_of_today() -> None:
    sheet = spanner("M10")
    assert sheet.decision.figure.text == "16"
    assert [f.text for f in sheet.figures[1:]] == ["17", "14", "13"]
    assert all(f"{text} mm" in sheet.decision.do for text in ("17", "14", "13"))
    assert "16" not in sheet.decision.do


def test_what_is_the_same_by_every_standard_says_no_more() -> None:
    assert spanner("M20").decision.do == ""


def test_bolt_and_nut_that_differ_are_told_apart() -> None:
    with pytest.raises(Ambiguous) as refused:
        spanner("7/16-14")
    lines = refused.value.table.lines
    assert {line.key["head"]: line.sheet.decision.figure.text for line in lines} == {
        "hexagon bolt": "0.625",
        "hexagon nut": "0.6875",
    }


def test_a_standard_is_named_by_its_body() -> None:
    assert spanner("M12", head="nut", standard="DIN").decision.figure.text == "19"
    assert spanner("M12", head="bolt", standard="JIS").decision.figure.text == "17"
    with pytest.raises(InputError):
        spanner("M16", head="nut", standard="JIS")


def test_a_spanner_fits_a_thread_or_is_told_what_does() -> None:
    assert spanner("M10", flats="17 mm").decision.kind == USE
    other = spanner("M10", flats="15 mm").decision
    assert other.kind == NONE
    assert "16 mm" in other.do


def test_what_a_spanner_fits_is_open() -> None:
    with pytest.raises(Ambiguous) as refused:
        spanner(flats="9/16 in")
    found = {(line.key["thread"], line.key["head"]) for line in refused.value.table.lines}
    assert {("3/8 in", "hexagon bolt"), ("3/8 in", "hexagon nut")} <= found


def test_a_part_of_several_hexagons_is_open() -> None:
    with pytest.raises(Ambiguous) as refused:
        spanner("14 mm", head="spark plug")
    assert len(refused.value.nearest) > 1


def test_a_key_is_thinner_than_its_screw() -> None:
    for row in ROWS:
        if spanner(row["size"], head=row["head"], standard=row["standard"]).decision.verb == "HEX KEY":
            assert to_base(row.typical, row["unit"]) < size_of(row["size"], DATA)[0]


def test_what_no_table_has_is_no_figure_and_what_is_no_thread_is_refused() -> None:
    assert spanner("M30").decision.kind == NONE
    assert spanner("M16", head="bleed screw").decision.kind == NONE
    for wrong in ("banana", "M"):
        with pytest.raises(LookupMiss):
            spanner(wrong)
    with pytest.raises(LookupMiss):
        spanner("M10", head="sideways")
    with pytest.raises(InputError):
        spanner()
    with pytest.raises(InputError):
        spanner(flats="35 mm")


def test_a_spanner_is_printed_as_it_is_marked(capsys: pytest.CaptureFixture[str]) -> None:
    from gaugeblock.cli import main

    assert main(["spanner", "5/8-11", "--head", "nut"]) == 0
    assert "15/16 in" in capsys.readouterr().out
    assert main(["spanner", "5/8", "--head", "structural bolt"]) == 0
    assert "1 1/16 in" in capsys.readouterr().out


# A spanner size is no thread, and a socket screw's torque is no spanner.
@pytest.mark.parametrize(
    ("line", "noun"),
    [
        ("socket head cap screw m8 12.9 torque", "torque"),
        ("3/8 bolt clearance hole", "hole"),
        ("m10 pitch", "thread"),
    ],
)
def test_other_questions_stay_what_they_were(line: str, noun: str) -> None:
    from gaugeblock.plain.answer import answer

    assert answer(line).read_as.startswith(noun)


@pytest.mark.parametrize("line", ["13 mm bolt torque", "19 mm socket head bolt torque", "what spanner do i need"])
def test_what_lacks_its_thread_is_asked_back(line: str) -> None:
    with pytest.raises((InputError, LookupMiss)):
        gaugeblock.ask(line)


@pytest.mark.parametrize("part", ["sump plug", "oil filter", "hub nut", "lambda sensor"])
def test_a_part_that_no_table_has_is_refused_by_name(part: str) -> None:
    with pytest.raises(InputError, match="no table here has the hexagon of this part"):
        gaugeblock.ask(f"what size socket for the {part}")


# BS 1083, and the larger hexagon of before the war, as a list of jaw widths prints them; BA by the rule 1.75 d.
@pytest.mark.parametrize(
    ("line", "flats", "also"),
    [
        ("3/8 whitworth spanner size across flats", "0.600", "0.710"),
        ("spanner for 7/16 bsf", "0.710", ""),
        ("what spanner fits half inch whitworth", "0.820", "0.920"),
        ("spanner for 2 ba nut", "0.324", ""),
    ],
)
def test_an_old_british_thread_has_its_own_hexagon(line: str, flats: str, also: str) -> None:
    decision = gaugeblock.ask(line).decision
    assert decision.figure.text == flats
    assert also in decision.do


@pytest.mark.parametrize("size", ["3/8", "7/16", "1/2", "5/8", "3/4", "1"])
def test_a_british_hexagon_is_that_of_no_american_thread(size: str) -> None:
    old, new = (base(spanner(name, head="bolt").decision.figure) for name in (f"{size} BSF", size))
    assert old != pytest.approx(new, rel=1e-4)


def test_the_reduced_whitworth_takes_the_spanner_of_the_next_smaller() -> None:
    for small, large in (("7/16", "1/2"), ("3/8", "7/16"), ("1/2", "9/16"), ("11/16", "3/4")):
        of_old = spanner(f"{small} BSW", head="nut", standard="old Whitworth").decision.figure
        assert base(of_old) == pytest.approx(base(spanner(f"{large} BSW", head="nut").decision.figure))


def test_of_a_width_that_none_has_the_nearest_are_named() -> None:
    with pytest.raises(InputError) as refused:
        spanner(flats="16.5 mm")
    assert {"16 mm", "17 mm"} <= {*refused.value.nearest}
