"""How a command ends: mistakes are refused, what cannot be told is told truly, a fault of the program is called one."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from gaugeblock import cli
from gaugeblock.cli import main
from gaugeblock.errors import DataError
from gaugeblock.tables import closed, load
from gaugeblock.tables.catalogue import refdata_folder

DEMO = Path(__file__).resolve().parents[2] / "reports" / "examples" / "demo.toml"


@pytest.mark.parametrize(
    "argv",
    [
        ["gauge", "16", "--data-release", "0.1.0"],
        ["route", str(DEMO), "--data-release", "0.2.0"],
        ["torque", "3/8-16", "--condition", "dry", "--grade=--"],
        ["sources", "--data-release", "0.5.²"],
        ["torque", "a\x00b"],
        ["find", "a\u200bb"],
        ["audit", "/dev/zero"],
        ["validate", "NOSUCH"],
    ],
    ids=str,
)
def test_a_mistake_is_refused(capsys: pytest.CaptureFixture[str], argv: list[str]) -> None:
    assert main(argv) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.strip()


def test_a_fault_of_the_program_is_called_one(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(argv: list[str]) -> int:
        raise KeyError("inside")

    monkeypatch.setattr(cli, "_command", broken)
    assert main(["torque", "x"]) == 3
    said = capsys.readouterr()
    assert "KeyError" in said.err
    assert "report" in said.err
    assert "Traceback" not in said.err


def test_a_changed_cell_of_a_closed_release_is_noticed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "refdata"
    shutil.copytree(refdata_folder(), folder)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(closed, "_SEEN", [])
    monkeypatch.setattr(load, "refdata_folder", lambda: str(folder))
    assert load.Refdata(release="0.6.0").table("fasteners/torques").rows
    path = folder / "fasteners" / "torques.csv"
    text = path.read_text(encoding="ascii")
    path.write_text(text.replace(",31,", ",37,", 1), encoding="ascii")
    assert path.read_text(encoding="ascii") != text
    with pytest.raises(DataError, match="not the rows that were released"):
        load.Refdata(release="0.6.0").table("fasteners/torques")
