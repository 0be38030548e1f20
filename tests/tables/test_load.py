"""Reading refdata on demand: lists line by line, tables whole, and what is told of a damaged file."""

from pathlib import Path

import pytest

from gaugeblock.errors import DataError
from gaugeblock.tables.catalogue import LISTS
from gaugeblock.tables.load import Lines, Refdata, read_lines, refdata

COLUMNS = LISTS["words"]
HEAD = ",".join(COLUMNS)


def lines_of(tmp_path: Path, *lines: str, end: str = "\n") -> Lines:
    file = tmp_path / "words.csv"
    file.write_text("\n".join((HEAD, *lines)) + end, encoding="utf-8", newline="")
    return Lines(str(file), "words", COLUMNS)


WHOLE = (
    "lines,dot four,item,DOT 4,0.1.0,,",
    'tubes,"dom, drawn",product,DOM tube,0.1.0,,"a ""note"", with commas"',
    "line,dot five,item,DOT 5,0.1.0,,",
    "lines,wet,state,wet,0.1.0,,a note that says lines",
)


@pytest.mark.parametrize("end", ["\n", ""])
def test_the_lines_of_one_first_cell_are_split_and_no_others(tmp_path: Path, end: str) -> None:
    lines = lines_of(tmp_path, *WHOLE, end=end)
    assert [cells[1] for cells in lines.of("lines")] == ["dot four", "wet"]
    assert [cells[1] for cells in lines.column_of("lines", 2, "state")] == ["wet"]
    assert lines.column_of("lines", 3, "lines") == []
    assert lines.of("tubes") == [["tubes", "dom, drawn", "product", "DOM tube", "0.1.0", "", 'a "note", with commas']]
    assert [cells[0] for cells in lines.all()] == ["lines", "tubes", "line", "lines"]
    assert lines.of("li") == lines.of("dot four") == lines.column_of("lines", 2, "class") == []


def test_a_list_with_its_header_alone_is_empty(tmp_path: Path) -> None:
    lines = lines_of(tmp_path)
    assert (lines.all(), lines.of("lines"), lines.column_of("lines", 2, "state")) == ([], [], [])


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("lines,dry,state,dry,0.1.0", "line 3: words.csv: 5 fields, not 7"),
        ("lines,dry,state,dry,0.1.0,,,", "line 3: words.csv: 8 fields, not 7"),
        ('lines,"dry,state,dry,0.1.0,,', "cannot be read"),
    ],
)
def test_a_damaged_line_is_told_when_it_is_asked_for(tmp_path: Path, line: str, told: str) -> None:
    lines = lines_of(tmp_path, WHOLE[1], line)
    assert len(lines.of("tubes")) == 1
    for ask in (lambda: lines.of("lines"), lines.all):
        with pytest.raises(DataError, match=r"words\.csv") as refused:
            ask()
        assert told in str(refused.value)


def test_another_header_or_encoding_or_no_file_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "words.csv"
    for raw, why in ((b"domain,word\n", "header"), (b"\xff\xfe", "cannot be read"), (b"", "header")):
        file.write_bytes(raw)
        with pytest.raises(DataError, match=why):
            Lines(str(file), "words", COLUMNS)
        with pytest.raises(DataError, match=why):
            read_lines(str(file), "words", COLUMNS)
    with pytest.raises(DataError, match="missing"):
        Lines(str(tmp_path / "none.csv"), "words", COLUMNS)


def test_every_line_of_every_list_is_found_by_its_first_cell() -> None:
    data = refdata()
    for name in ("sources", "quantities", "formulas"):
        every = read_lines(str(Path(data.folder) / f"{name}.csv"), name, LISTS[name])
        column = LISTS[name][0]
        assert data.listing(name).keys() <= {cells[0] for cells in every}
        assert all(data.entry(name, id) == entry and entry[column] == id for id, entry in data.listing(name).items())
    assert data.entry("sources", "no such source") is None


def test_words_are_those_of_their_domain_and_column_alone() -> None:
    data = refdata()
    every = read_lines(str(Path(data.folder) / "words.csv"), "words", COLUMNS)
    living = [c for c in every if data.lives(c[4], c[5])]
    for domain, column in {(c[0], c[2]) for c in living}:
        wanted = {c[1].casefold(): c[3] for c in living if (c[0], c[2]) == (domain, column)}
        assert data.words(domain, column) == wanted
    assert data.words("fasteners", "no such column") == {}


def test_a_row_gives_one_cell_or_all_of_them() -> None:
    row = refdata().table("fasteners/threads").by_quantity["tensile_stress_area"][0]
    assert all(row[column] == cell for column, cell in row.cells.items())
    with pytest.raises(ValueError, match="not in"):
        row["no such column"]


def test_an_earlier_release_reads_its_own_lines() -> None:
    assert len(Refdata(release="0.1.0").listing("sources")) < len(refdata().listing("sources"))
