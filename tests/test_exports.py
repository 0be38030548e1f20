"""The tables for other programs, read back by programs that are not ours."""

from __future__ import annotations

import contextlib
import json
import sqlite3
import sys
import tomllib
from pathlib import Path

import pytest
from frictionless import Package
from pyarrow import parquet

from gaugeblock import __version__, exports
from gaugeblock.cli import main
from gaugeblock.tables.catalogue import DOMAINS, TABLES, columns_of
from gaugeblock.tables.load import Refdata, refdata, refdata_folder

ROOT = Path(__file__).resolve().parent.parent


def test_the_descriptor_beside_the_tables_is_that_of_the_catalogue() -> None:
    """Made by: gaugeblock export --datapackage > refdata/datapackage.json"""
    written = json.loads((Path(refdata_folder()) / "datapackage.json").read_text(encoding="utf-8"))
    assert written == exports.descriptor(refdata())


def test_frictionless_finds_the_tables_as_described() -> None:
    package = Package(str(Path(refdata_folder()) / "datapackage.json"))
    assert {r.name for r in package.resources} >= {t.replace("/", "-").replace("_", "-") for t in TABLES}
    report = package.validate()
    errors = [(t.name, e.message) for t in report.tasks for e in t.errors]
    assert errors == []


@pytest.mark.parametrize("release", ["0.3.0", None])
def test_an_sqlite_file_holds_every_living_row_cell_for_cell(tmp_path: Path, release: str | None) -> None:
    data = refdata(release)
    path = tmp_path / "figures.sqlite"
    count = exports.to_sqlite(str(path), data)
    with contextlib.closing(sqlite3.connect(path)) as base:
        for table in data.all_tables():
            rows = [tuple(r) for r in base.execute(f'SELECT * FROM "{table.name.replace("/", "_")}"')]
            assert rows == [row.values for row in table.rows]
        names = [name for (name,) in base.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        read = sum(base.execute(f'SELECT count(*) FROM "{name}"').fetchone()[0] for name in names)
        found = base.execute(
            "SELECT value, source FROM fasteners_torques WHERE thread = '3/8-16 UNC' AND grade = '5'"
            " AND condition = 'dry' AND source = 'TM238'"
        ).fetchall()
    assert found == [("31", "TM238")]
    assert count == read


@pytest.mark.parametrize("release", ["0.3.0", None])
def test_parquet_files_hold_every_living_row_cell_for_cell(tmp_path: Path, release: str | None) -> None:
    data = refdata(release)
    folder = tmp_path / "figures"
    count = exports.to_parquet(str(folder), data)
    read = {p.stem: parquet.read_table(p) for p in folder.iterdir()}
    for table in data.all_tables():
        got = read[table.name.replace("/", "_")]
        assert got.column_names == list(columns_of(table.name))
        assert [tuple(r.values()) for r in got.to_pylist()] == [row.values for row in table.rows]
    for name in ("sources", "quantities", "formulas"):
        assert [list(r.values()) for r in read[name].to_pylist()] == [
            [entry[c] for c in read[name].column_names] for entry in data.listing(name).values()
        ]
    assert read["releases"].to_pylist() == [dict(r) for r in data.releases]
    assert read["rules"].num_rows == sum(len(data.statements(d)) for d in DOMAINS)
    assert count == sum(got.num_rows for got in read.values())
    about = read["fasteners_torques"].schema.metadata
    assert about[b"gaugeblock_release"].decode() == data.release
    cited = {r["source"] for got in read.values() if "basis" in got.column_names for r in got.to_pylist()} - {""}
    assert cited <= {r["id"] for r in read["sources"].to_pylist()}, "a figure travels with its evidence"


def test_parquet_is_refused_plainly_where_it_cannot_be_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "figures"
    assert main(["export", "--parquet", str(folder), "--sqlite", str(tmp_path / "f.sqlite")]) == 2
    capsys.readouterr()
    folder.mkdir()
    (folder / "mine.txt").write_text("kept", encoding="ascii")
    assert main(["export", "--parquet", str(folder)]) == 2
    assert "already there" in capsys.readouterr().err
    assert [p.name for p in folder.iterdir()] == ["mine.txt"]
    monkeypatch.setitem(sys.modules, "pyarrow", None)
    assert main(["export", "--parquet", str(tmp_path / "other")]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert "pip install 'gaugeblock[parquet]'" in told.err
    assert not (tmp_path / "other").exists()


def test_the_command_writes_a_new_file_and_never_over_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "figures.sqlite"
    assert main(["export", "--sqlite", str(path)]) == 0
    first = path.read_bytes()
    assert first.startswith(b"SQLite format 3")
    assert main(["export", "--sqlite", str(path)]) == 2
    assert path.read_bytes() == first
    assert main(["export"]) == 2
    assert "--sqlite" in capsys.readouterr().err


def test_the_citation_is_of_this_version() -> None:
    text = (ROOT / "CITATION.cff").read_text(encoding="utf-8")
    assert f"version: {__version__}\n" in text
    licence = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["license"]
    assert f"license: {licence}\n" in text


def test_every_table_is_described_with_its_own_columns() -> None:
    resources = exports.descriptor(Refdata())["resources"]
    described = {r["path"]: [f["name"] for f in r["schema"]["fields"]] for r in resources}
    for table in TABLES:
        assert described[f"{table}.csv"] == list(columns_of(table))
