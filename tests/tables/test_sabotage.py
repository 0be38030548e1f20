"""Real tables, damaged one way each: ``validate`` names the rule, the file and the line."""

from __future__ import annotations

import csv
import io
import shutil
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from gaugeblock.domains import check, validate
from gaugeblock.tables.catalogue import refdata_folder
from gaugeblock.tables.releases import release_digest
from gaugeblock.tables.validate import report

if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.fault import Fault

Cells = dict[str, str]

AREA = ("fasteners/threads", {"thread": "3/8-16 UNC", "quantity": "tensile_stress_area"})
PROOF = (
    "fasteners/grades",
    {"standard": "SAE J429", "grade": "5", "size": "1/4 to 1 in", "quantity": "proof_strength"},
)
TORQUE = (
    "fasteners/torques",
    {"thread": "3/8-16 UNC", "standard": "SAE J429", "grade": "8", "condition": "dry", "source": "TM316"},
)
FINE = (
    "fasteners/torques",
    {"thread": "3/8-24 UNF", "standard": "SAE J429", "grade": "8", "condition": "dry", "source": "TM316"},
)
NEXT = (
    "fasteners/torques",
    {"thread": "7/16-14 UNC", "standard": "SAE J429", "grade": "8", "condition": "dry", "source": "TM316"},
)
LOAD = ("fasteners/bolt_loads", {"thread": "M10x1.5", "grade": "8.8", "quantity": "proof_load"})
NUT_FACTOR = ("fasteners/nut_factors", {"surface": "bare steel", "lubricant": "none", "source": "BICKFORD3"})


class Copy:
    """A copy of refdata that can be damaged."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def path(self, table: str) -> Path:
        return self.folder / f"{table}.csv"

    def lines(self, table: str) -> list[str]:
        return self.path(table).read_text(encoding="ascii").splitlines()

    def write(self, table: str, lines: list[str]) -> None:
        self.path(table).write_bytes("".join(f"{line}\n" for line in lines).encode())

    def find(self, table: str, wanted: Cells) -> int:
        """The line of the first open row with these cells."""
        lines = self.lines(table)
        header = lines[0].split(",")
        for number, line in enumerate(lines[1:], 2):
            cells = dict(zip(header, next(csv.reader([line])), strict=True))
            if not cells["until"] and all(cells[column] == cell for column, cell in wanted.items()):
                return number
        raise AssertionError(f"no such row in {table}: {wanted}")

    def cells(self, table: str, line: int) -> Cells:
        lines = self.lines(table)
        return dict(zip(lines[0].split(","), next(csv.reader([lines[line - 1]])), strict=True))

    def edit(self, table: str, line: int, change: Callable[[Cells], None]) -> None:
        cells = self.cells(table, line)
        change(cells)
        text = io.StringIO()
        csv.writer(text, lineterminator="").writerow(cells.values())
        lines = self.lines(table)
        lines[line - 1] = text.getvalue()
        self.write(table, lines)


@pytest.fixture
def copy(tmp_path: Path) -> Copy:
    folder = tmp_path / "refdata"
    shutil.copytree(refdata_folder(), folder)
    return Copy(folder)


def told(faults: list[Fault], table: str, line: int) -> set[str]:
    return {f.rule for f in faults if f.file == f"{table}.csv" and f.line == line}


def put(column: str, cell: str) -> Callable[[Cells], None]:
    def change(cells: Cells) -> None:
        cells[column] = cell

    return change


def times(factor: float) -> Callable[[Cells], None]:
    def change(cells: Cells) -> None:
        for column in ("value", "low", "high"):
            if cells[column]:
                cells[column] = f"{float(cells[column]) * factor:.10g}"

    return change


CHANGED = [
    pytest.param(AREA, times(10), "stress_area_agrees_with_formula", id="stress area x10"),
    pytest.param(PROOF, times(10), "figure_in_its_range", id="proof strength x10"),
    pytest.param(PROOF, times(0.1), "figure_in_its_range", id="proof strength /10"),
    pytest.param(TORQUE, times(10), "published_torque_is_under_proof", id="torque x10"),
    pytest.param(TORQUE, times(0.1), "published_torque_is_under_proof", id="torque /10"),
    pytest.param(TORQUE, put("value", "75"), "published_torque_is_under_proof", id="torque over proof load"),
    pytest.param(LOAD, times(10), "proof_load_is_strength_times_area", id="proof load x10"),
    pytest.param(NUT_FACTOR, times(10), "figure_in_its_range", id="nut factor x10"),
    pytest.param(TORQUE, put("unit", "ksi"), "wrong_dimension", id="unit of another dimension"),
    pytest.param(TORQUE, put("unit", "Nm"), "unknown_unit", id="unit spelling of a prompt"),
    pytest.param(TORQUE, put("unit", "lbf*in"), "published_torque_is_under_proof", id="inch for foot"),
    pytest.param(TORQUE, put("source", ""), "missing_source", id="missing source"),
    pytest.param(TORQUE, put("source", "NOWHERE"), "unknown_source", id="source not listed"),
    pytest.param(TORQUE, put("locator", ""), "missing_locator", id="missing place"),
    pytest.param(TORQUE, put("checked", ""), "missing_checked", id="missing mark"),
    pytest.param(TORQUE, put("basis", "hearsay"), "basis_word", id="basis of no vocabulary"),
    pytest.param(TORQUE, put("service", "rocket"), "service_word", id="service of no vocabulary"),
    pytest.param(TORQUE, put("quantity", "tightening"), "unknown_quantity", id="quantity not defined"),
    pytest.param(TORQUE, put("value", "44,5"), "decimal_comma", id="decimal comma"),
    pytest.param(TORQUE, put("value", "about 44"), "number_grammar", id="words for a number"),
    pytest.param(TORQUE, put("value", ""), "no_number", id="no number"),
    pytest.param(TORQUE, put("high", "12"), "value_outside_ends", id="value over its high end"),
    pytest.param(TORQUE, put("thread", "8-Mar"), "looks_like_a_date", id="size turned into a date"),
    pytest.param(TORQUE, put("thread", "2026-03-08"), "looks_like_a_date", id="size turned into a full date"),
    pytest.param(TORQUE, put("thread", "3/8x16"), "thread_grammar", id="thread of another notation"),
    pytest.param(TORQUE, put("thread", ""), "blank_cell", id="blank key"),
    pytest.param(TORQUE, put("thread", "any"), "any_not_allowed", id="any where one value is asked"),
    pytest.param(TORQUE, put("since", "9.9.9"), "unknown_release", id="release not listed"),
    pytest.param(TORQUE, put("until", "0.1.0"), "since_after_until", id="closed before it began"),
    pytest.param(TORQUE, put("note", "two  spaces"), "stray_space", id="two spaces"),
    pytest.param(PROOF, put("size", "0.25 to 1,0 in"), "interval_grammar", id="interval with a comma"),
    pytest.param(PROOF, put("size", "1/4 to 1 psi"), "interval_dimension", id="interval of pressures"),
    pytest.param(PROOF, put("value", "95"), "proof_below_yield_below_tensile", id="proof over yield"),
]


@pytest.fixture(scope="module")
def undamaged() -> list[Fault]:
    return validate(refdata_folder())


@pytest.mark.parametrize(("row", "change", "rule"), CHANGED)
def test_a_changed_cell_is_caught_at_its_line(
    copy: Copy, undamaged: list[Fault], row: tuple[str, Cells], change: Callable[[Cells], None], rule: str
) -> None:
    table, wanted = row
    line = copy.find(table, wanted)
    assert rule not in told(undamaged, table, line)
    copy.edit(table, line, change)
    assert rule in told(validate(str(copy.folder)), table, line)


def test_neighbours_swapped_are_caught(copy: Copy) -> None:
    table = TORQUE[0]
    here, there = copy.find(*TORQUE), copy.find(*NEXT)
    values = [copy.cells(table, line)["value"] for line in (here, there)]
    assert float(values[0]) < float(values[1])
    copy.edit(table, here, put("value", values[1]))
    copy.edit(table, there, put("value", values[0]))
    assert "published_torque_rises_with_diameter" in told(validate(str(copy.folder)), table, there)


def test_coarse_and_fine_swapped_are_caught(copy: Copy) -> None:
    table = TORQUE[0]
    coarse, fine = copy.find(*TORQUE), copy.find(*FINE)
    values = [copy.cells(table, line)["value"] for line in (coarse, fine)]
    copy.edit(table, coarse, put("value", values[1]))
    copy.edit(table, fine, put("value", values[0]))
    assert "fine_thread_takes_no_less_torque" in told(validate(str(copy.folder)), table, fine)


def test_a_row_doubled_is_caught(copy: Copy) -> None:
    table = TORQUE[0]
    line = copy.find(*TORQUE)
    lines = copy.lines(table)
    copy.write(table, [*lines[:line], *lines[line - 1 :]])
    assert "duplicate_row" in told(validate(str(copy.folder)), table, line + 1)


def test_a_second_value_for_one_key_and_source_is_caught(copy: Copy) -> None:
    table = TORQUE[0]
    line = copy.find(*TORQUE)
    lines = copy.lines(table)
    copy.write(table, [*lines[:line], *lines[line - 1 :]])
    copy.edit(table, line + 1, put("value", "45"))
    assert "duplicate_key" in told(validate(str(copy.folder)), table, line + 1)


def test_ranges_of_one_source_that_overlap_are_caught(copy: Copy) -> None:
    table, wanted = PROOF
    line = copy.find(table, wanted)
    lines = copy.lines(table)
    copy.write(table, [*lines[:line], *lines[line - 1 :]])
    copy.edit(table, line + 1, put("size", "3/4 to 1 1/2 in"))
    faults = validate(str(copy.folder))
    assert any(f.rule == "overlapping_range" and f.file == f"{table}.csv" and f.column == "size" for f in faults)


def raw(copy: Copy, table: str, line: int, change: Callable[[str], str]) -> None:
    lines = copy.lines(table)
    lines[line - 1] = change(lines[line - 1])
    copy.write(table, lines)


def test_a_byte_order_mark_is_caught(copy: Copy) -> None:
    path = copy.path("fasteners/grades")
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes())
    assert "byte_order_mark" in told(validate(str(copy.folder)), "fasteners/grades", 1)


def test_carriage_returns_are_caught(copy: Copy) -> None:
    path = copy.path("fasteners/grades")
    path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    assert "carriage_return" in told(validate(str(copy.folder)), "fasteners/grades", 1)


def test_an_unclosed_quote_is_caught_at_its_line_and_costs_no_other(copy: Copy) -> None:
    rows = check(str(copy.folder)).rows
    raw(copy, "fasteners/grades", 5, lambda text: text.replace(",published,", ',"published,', 1))
    found = check(str(copy.folder))
    assert "unclosed_quote" in told(found.faults, "fasteners/grades", 5)
    assert found.rows == rows - 1


def test_a_letter_outside_ascii_is_caught(copy: Copy) -> None:
    path = copy.path("fasteners/grades")
    lines = path.read_bytes().split(b"\n")
    lines[6] = lines[6].replace(b",published,", b",publish\xc3\xa9d,", 1)
    path.write_bytes(b"\n".join(lines))
    assert "not_ascii" in told(validate(str(copy.folder)), "fasteners/grades", 7)


def test_a_header_that_comes_again_is_caught(copy: Copy) -> None:
    lines = copy.lines("fasteners/grades")
    copy.write("fasteners/grades", [*lines[:9], lines[0], *lines[9:]])
    assert "repeated_header" in told(validate(str(copy.folder)), "fasteners/grades", 10)


def test_a_header_with_a_column_twice_is_caught(copy: Copy) -> None:
    raw(copy, "fasteners/grades", 1, lambda text: text.replace(",low,", ",value,"))
    assert "header" in told(validate(str(copy.folder)), "fasteners/grades", 1)


def test_a_short_row_is_caught(copy: Copy) -> None:
    raw(copy, "fasteners/grades", 8, lambda text: text.rsplit(",", 3)[0])
    assert "short_row" in told(validate(str(copy.folder)), "fasteners/grades", 8)


def test_a_decimal_comma_without_quotes_is_caught(copy: Copy) -> None:
    line = copy.find(*AREA)
    raw(copy, AREA[0], line, lambda text: text.replace("0.0775", "0,0775", 1))
    assert "long_row" in told(validate(str(copy.folder)), AREA[0], line)


def test_a_file_cut_off_is_caught(copy: Copy) -> None:
    path = copy.path("fasteners/grades")
    whole = path.read_bytes()
    path.write_bytes(whole[: len(whole) // 2])
    assert any(f.rule == "cut_off" and f.file == "fasteners/grades.csv" for f in validate(str(copy.folder)))


def test_a_missing_file_is_caught(copy: Copy) -> None:
    copy.path("fasteners/grades").unlink()
    assert "missing_file" in told(validate(str(copy.folder)), "fasteners/grades", 0)


def _close_first(copy: Copy) -> str:
    """Give the first release its digest as the tables stand."""
    version = copy.cells("releases", 2)["version"]
    copy.edit("releases", 2, put("sha256", release_digest(str(copy.folder), version)))
    return version


def test_a_released_row_that_was_edited_is_caught(copy: Copy) -> None:
    _close_first(copy)
    assert "released_rows_frozen" not in told(validate(str(copy.folder)), "releases", 2)
    copy.edit(TORQUE[0], copy.find(*TORQUE), put("note", "reads better now"))
    assert "released_rows_frozen" in told(validate(str(copy.folder)), "releases", 2)


def test_a_released_row_that_was_taken_out_is_caught(copy: Copy) -> None:
    _close_first(copy)
    lines = copy.lines(TORQUE[0])
    del lines[copy.find(*TORQUE) - 1]
    copy.write(TORQUE[0], lines)
    assert "released_rows_frozen" in told(validate(str(copy.folder)), "releases", 2)


def test_all_faults_are_told_at_once_with_what_to_do(copy: Copy) -> None:
    torque, area = copy.find(*TORQUE), copy.find(*AREA)
    copy.edit(TORQUE[0], torque, put("unit", "ksi"))
    copy.edit(AREA[0], area, times(10))
    raw(copy, "fasteners/grades", 8, lambda text: text.rsplit(",", 3)[0])
    found = check(str(copy.folder))
    text = report(found)
    assert f"refdata/fasteners/torques.csv:{torque}: unit: wrong_dimension: found 'ksi'; use a unit of" in text
    assert f"refdata/fasteners/threads.csv:{area}: value: stress_area_agrees_with_formula: found 0.775 in**2" in text
    assert "refdata/fasteners/grades.csv:8: short_row: found 14 fields, not 17; give every column" in text
    assert text.splitlines()[-1] == f"{found.rows} rows, {len(found.faults)} faults"
