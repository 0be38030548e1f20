"""Releases: what is released is frozen, and only ``until`` may be added."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from gaugeblock.closing import close, main
from gaugeblock.domains import check, validate
from gaugeblock.errors import DataError, InputError
from gaugeblock.tables import closed
from gaugeblock.tables.catalogue import LISTS, columns_of, refdata_folder
from gaugeblock.tables.releases import release_digest, released_files, row_digest
from gaugeblock.tables.validate import report

QUANTITY = (
    "tightening_torque,torque,target,none,maker > published,1 lbf*ft,injury,target,2,24000,lbf*in,torque of the last"
    " pass,torque,0.1.0,\n"
)
SOURCE = "TM1,A manual,Army,1990,government handbook,,,0.1.0,\n"
ROW = "3/8-16 UNC,SAE J429,8,dry,any,any,tightening_torque,44,,,lbf*ft,,published,TM1,p. 1,primary,,0.1.0,,\n"


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A whole refdata folder of one figure."""
    for name, columns in {**released_files(), **{n: LISTS[n] for n in ("ranges", "expressions", "symbols")}}.items():
        path = tmp_path / f"{name}.csv"
        path.parent.mkdir(exist_ok=True)
        path.write_text(",".join(columns) + "\n", encoding="ascii")
    _append(tmp_path, "quantities", QUANTITY)
    _append(tmp_path, "sources", SOURCE)
    _append(tmp_path, "fasteners/torques", ROW)
    (tmp_path / "releases.csv").write_text(
        ",".join(LISTS["releases"]) + "\n0.1.0,2026-11-25,first,\n", encoding="ascii"
    )
    return tmp_path


def _append(folder: Path, name: str, text: str) -> None:
    with (folder / f"{name}.csv").open("a", encoding="ascii") as handle:
        handle.write(text)


def _replace(folder: Path, name: str, old: str, new: str) -> None:
    path = folder / f"{name}.csv"
    text = path.read_text(encoding="ascii")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="ascii")


def test_the_small_folder_has_no_fault_and_says_so(small: Path) -> None:
    assert report(check(str(small))).startswith("1 rows in ")
    assert report(check(str(small))).endswith("1 releases: no fault")


def test_row_digest_leaves_out_blanks_and_until_only() -> None:
    cells = dict.fromkeys(columns_of("fasteners/threads"), "x")
    digest = row_digest("fasteners/threads", cells)
    assert row_digest("fasteners/threads", {**cells, "until": "0.2.0"}) == digest
    assert row_digest("fasteners/grades", cells) != digest
    for column in cells:
        if column != "until":
            assert row_digest("fasteners/threads", {**cells, column: "y"}) != digest


def test_row_digest_is_the_written_form() -> None:
    # sha256 of ["a/b",{"x":"1","y":"2"}]
    assert (
        row_digest("a/b", {"y": "2", "x": "1", "z": ""})
        == "be4f6d61fbff7ecc34452849266956a9a20555232b525a2af38b237c885cdc90"
    )


def test_release_digest_does_not_depend_on_the_order_of_rows(small: Path) -> None:
    other = ROW.replace("3/8-16 UNC", "7/16-14 UNC").replace(",44,", ",70,")
    _append(small, "fasteners/torques", other)
    first = release_digest(str(small), "0.1.0")
    _replace(small, "fasteners/torques", ROW + other, other + ROW)
    assert release_digest(str(small), "0.1.0") == first


def test_closing_writes_the_digest_once(small: Path) -> None:
    digest = close("0.1.0", str(small))
    assert digest == release_digest(str(small), "0.1.0")
    assert f"0.1.0,2026-11-25,first,{digest}\n" in (small / "releases.csv").read_text(encoding="ascii")
    with pytest.raises(InputError, match="closed already"):
        close("0.1.0", str(small))
    with pytest.raises(InputError, match="no such release"):
        close("0.7.0", str(small))
    assert validate(str(small)) == []


def test_releases_are_closed_in_order(small: Path) -> None:
    _append(small, "releases", "0.2.0,2026-12-01,second,\n")
    assert [f.rule for f in validate(str(small))] == ["open_release"]
    with pytest.raises(InputError, match="an earlier release is open"):
        close("0.2.0", str(small))
    close("0.1.0", str(small))
    close("0.2.0", str(small))
    assert validate(str(small)) == []


def test_a_release_with_a_fault_is_not_closed(small: Path) -> None:
    _replace(small, "fasteners/torques", ",44,", ",440,")
    before = (small / "releases.csv").read_bytes()
    with pytest.raises(DataError, match="torque_suits_its_thread"):
        close("0.1.0", str(small))
    assert (small / "releases.csv").read_bytes() == before


def test_a_correction_keeps_the_digest_of_the_earlier_release(small: Path) -> None:
    digest = close("0.1.0", str(small))
    _append(small, "releases", "0.2.0,2026-12-01,a correction,\n")
    _replace(small, "fasteners/torques", ",0.1.0,,", ",0.1.0,0.2.0,")
    _append(small, "fasteners/torques", ROW.replace(",44,", ",46,").replace("0.1.0", "0.2.0"))
    assert validate(str(small)) == []
    assert release_digest(str(small), "0.1.0") == digest
    assert release_digest(str(small), "0.2.0") != digest


@pytest.mark.parametrize(
    ("name", "old", "new"),
    [
        ("fasteners/torques", ",44,", ",45,"),
        ("fasteners/torques", ",primary,", ",quoted,"),
        ("sources", "A manual", "Another manual"),
        ("quantities", "torque of the last pass", "torque"),
    ],
)
def test_any_change_of_what_is_released_is_told(small: Path, name: str, old: str, new: str) -> None:
    close("0.1.0", str(small))
    _replace(small, name, old, new)
    assert [(f.file, f.line, f.rule) for f in validate(str(small))] == [("releases.csv", 2, "released_rows_frozen")]


def test_what_is_plausible_of_a_quantity_may_be_learned_later(small: Path) -> None:
    digest = close("0.1.0", str(small))
    _replace(small, "quantities", ",target,2,24000,lbf*in,", ",limit,1,30000,lbf*in,")
    _append(small, "ranges", "fasteners/torques,tightening_torque,3,20000,lbf*in\n")
    assert validate(str(small)) == []
    assert release_digest(str(small), "0.1.0") == digest


@pytest.mark.parametrize(
    ("name", "line", "column", "rule"),
    [
        ("ranges", "fasteners/torque,tightening_torque,3,20000,lbf*in", "table", "unknown_table"),
        ("ranges", "fasteners/torques,tightening,3,20000,lbf*in", "quantity", "unknown_quantity"),
        ("ranges", "fasteners/torques,tightening_torque,30000,20000,lbf*in", "low", "range_grammar"),
        ("ranges", "fasteners/torques,tightening_torque,3,20000,psi", "low", "range_grammar"),
        ("ranges", "fasteners/torques,tightening_torque,45,46,lbf*ft", "", ""),
        (
            "quantities",
            "preload_torque,torque,target,none,maker,1 N*m,none,target,,24000,lbf*in,d,,0.1.0,",
            "plausible_low",
            "range_grammar",
        ),
    ],
)
def test_a_range_that_is_none_is_told(small: Path, name: str, line: str, column: str, rule: str) -> None:
    _append(small, name, f"{line}\n")
    told = {(f.file, f.column, f.rule) for f in validate(str(small))}
    # A sound range of one table is used: the torque of 44 lies below it.
    assert told == (
        {(f"{name}.csv", column, rule)} if rule else {("fasteners/torques.csv", "value", "figure_in_its_range")}
    )


def test_a_range_of_a_table_twice_is_told(small: Path) -> None:
    _append(small, "ranges", "fasteners/torques,tightening_torque,3,20000,lbf*in\n" * 2)
    assert [(f.file, f.line, f.rule) for f in validate(str(small))] == [("ranges.csv", 3, "duplicate_entry")]


def test_a_row_that_outlives_its_source_is_told(small: Path) -> None:
    _append(small, "releases", "0.2.0,2026-12-01,second,\n")
    _replace(small, "sources", ",0.1.0,\n", ",0.1.0,0.2.0\n")
    assert ("fasteners/torques.csv", 2, "outlived_reference") in [
        (f.file, f.line, f.rule) for f in validate(str(small))
    ]


def test_the_command_closes_and_refuses(small: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["0.1.0", str(small)]) == 0
    assert capsys.readouterr().out.startswith("0.1.0 ")
    assert main(["0.1.0", str(small)]) == 2
    assert "closed already" in capsys.readouterr().err
    assert main([]) == 2


def test_every_closed_release_of_the_project_has_its_digest() -> None:
    folder = refdata_folder()
    with (Path(folder) / "releases.csv").open(encoding="ascii") as handle:
        rows = [line.rstrip("\n").split(",") for line in handle][1:]
    for row in rows:
        if row[-1]:
            assert release_digest(folder, row[0]) == row[-1]


def test_each_closed_release_is_signed_off_in_the_change_log() -> None:
    text = (Path(__file__).resolve().parents[2] / "CHANGELOG.md").read_text(encoding="utf-8")
    signed = dict(re.findall(r"^\| ([0-9.]+) \| `([0-9a-f]{64})` \|$", text, re.MULTILINE))
    assert signed == closed.carried().whole


def test_a_release_whose_files_stand_as_closed_has_the_digest_of_its_rows(tmp_path: Path) -> None:
    folder = refdata_folder()
    newest = next(reversed(closed.carried().whole))
    # the last release is closed: a draft's rows come after it, and the files differ until it is closed too
    if closed.whole_as_closed(newest, folder):
        assert closed.whole_as_closed(newest, folder) == release_digest(folder, newest)
    copy = tmp_path / "refdata"
    shutil.copytree(folder, copy)
    assert closed.whole_as_closed(newest, str(copy)) == closed.whole_as_closed(newest, folder)
    assert closed.whole_as_closed("99.0.0", str(copy)) == ""
    for name in ("sources", "fasteners/torques", "wiring/rules"):
        path = copy / f"{name}.csv"
        before = path.read_bytes()
        path.write_bytes(before.replace(b"\n", b"\r\n", 1))
        assert closed.whole_as_closed(newest, str(copy)) == ""
        path.unlink()
        assert closed.whole_as_closed(newest, str(copy)) == ""
        path.write_bytes(before)


def test_the_bytes_that_the_program_carries_are_those_of_the_last_closing() -> None:
    """Where the newest release is closed; a draft's files have grown."""
    with (Path(refdata_folder()) / "releases.csv").open(encoding="ascii") as handle:
        last = [line.rstrip("\n").split(",") for line in handle][-1]
    assert bool(closed.whole_as_closed(last[0], refdata_folder())) is bool(last[-1])
