"""Is this print still good: a packet against the tables of today, and of days to come."""

from __future__ import annotations

import copy
import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from gaugeblock.cli import main
from gaugeblock.packet.still import AFFECTED, CURRENT, UNAFFECTED, UNKNOWN, job_text, report, says, still_good
from gaugeblock.tables.load import Refdata, refdata, refdata_folder

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "reports" / "examples" / "demo" / "packet.json"
TORQUE = "7/16-14 UNC,SAE J429,8,dry,any,any,tightening_torque,"


@pytest.fixture
def record() -> dict[str, Any]:
    return json.loads(DEMO.read_text(encoding="utf-8"))  # type: ignore[no-any-return]


def later(tmp_path: Path, old: str, new: str, file: str = "fasteners/torques") -> Refdata:
    """Tables in which one line was closed by a later release and another written in its place."""
    folder = tmp_path / "refdata"
    shutil.copytree(refdata_folder(), folder)
    releases = folder / "releases.csv"
    releases.write_text(releases.read_text(encoding="utf-8") + '9.0.0,2027-01-01,"later",\n', encoding="utf-8")
    table = folder / f"{file}.csv"
    text = table.read_text(encoding="utf-8")
    assert text.count(old) == 1
    table.write_text(text.replace(old, new), encoding="utf-8")
    return Refdata(str(folder), "9.0.0")


def line_of(start: str) -> str:
    text = (Path(refdata_folder()) / "fasteners" / "torques.csv").read_text(encoding="utf-8")
    return next(line for line in text.splitlines() if line.startswith(start) and ",TM238," in line)


def test_a_packet_just_made_is_current(record: dict[str, Any]) -> None:
    found = still_good(record)
    assert (found["state"], found["rows"], found["items"]) == (CURRENT, [], [])
    assert report(found).startswith("Is this print still good? Yes")


def test_a_row_that_was_corrected_is_told_with_what_it_does(record: dict[str, Any], tmp_path: Path) -> None:
    line = line_of(TORQUE)
    closed = line.replace(",0.1.0,,", ",0.1.0,9.0.0,")
    assert closed != line
    new = closed.replace(",70,,,lbf*ft", ",60,,,lbf*ft").replace(",0.1.0,9.0.0,", ",9.0.0,,")
    found = still_good(record, later(tmp_path, line, f"{closed}\n{new}"))
    assert found["state"] == AFFECTED
    assert any("7/16-14 UNC|SAE J429|8|dry" in row for row in found["rows"])
    changed = {item["item"]: (item["then"], item["now"]) for item in found["items"]}
    assert any("70 lbf*ft" in then and "60 lbf*ft" in now for then, now in changed.values())
    assert "Print it again" in report(found)


def test_a_row_that_was_closed_and_said_again_changes_nothing(record: dict[str, Any], tmp_path: Path) -> None:
    line = line_of(TORQUE)
    closed = line.replace(",0.1.0,,", ",0.1.0,9.0.0,")
    again = line.replace(",0.1.0,,", ",9.0.0,,")
    found = still_good(record, later(tmp_path, line, f"{closed}\n{again}"))
    assert (found["state"], found["items"]) == (UNAFFECTED, [])
    assert found["rows"]


def test_a_release_that_is_not_carried_is_never_called_current(record: dict[str, Any]) -> None:
    found = still_good({**record, "data_release": "77.0.0"})
    assert found["state"] == UNKNOWN
    assert "cannot be told" in report(found)


def test_an_earlier_form_of_packet_is_not_called_current(record: dict[str, Any]) -> None:
    assert still_good({**record, "contract": 1})["state"] == UNKNOWN


def test_a_print_whose_job_is_no_longer_read_is_not_called_current(record: dict[str, Any]) -> None:
    found = still_good({**record, "job": {**record["job"], "hovercraft": [{"name": "skirt"}]}})
    assert (found["state"], found["items"]) == (UNKNOWN, [])
    assert "no longer read" in found["why"]
    assert "hovercraft" in report(found)


def test_a_changed_decision_in_the_print_itself_is_seen(record: dict[str, Any]) -> None:
    other = copy.deepcopy(record)
    sheet = next(s for s in other["sheets"] if s["decision"]["kind"] == "use")
    sheet["decision"]["kind"] = "stop"
    assert [i["item"] for i in still_good(other)["items"]] == [sheet["name"]]


def test_the_audit_of_a_packet_begins_with_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["audit", str(DEMO)]) == 0
    assert capsys.readouterr().out.startswith("Is this print still good? Yes")
    assert main(["audit", str(DEMO), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["still"]["state"] == CURRENT
    assert refdata().release == json.loads(DEMO.read_text(encoding="utf-8"))["data_release"]


@pytest.mark.parametrize(("count", "told"), [(1, 0), (12, 0), (13, 1), (20, 8)])
def test_of_many_changed_decisions_twelve_are_told_and_how_many_more(count: int, told: int) -> None:
    items = [{"item": f"item {n}", "then": "USE 1", "now": "USE 2"} for n in range(count)]
    text = report({"state": AFFECTED, "why": "", "then": "1", "now": "2", "rows": [], "items": items})
    assert text.startswith(f"Is this print still good? No: {count} decisions are others today (release 1, 2).")
    assert text.count("printed USE 1; today USE 2") == count - told
    assert (f"... and {told} more" in text) == bool(told)
    assert text.endswith("\nPrint it again before it is used.")


def test_a_job_is_written_as_it_was_but_for_what_is_blank() -> None:
    job = {
        "shop": {"units": "inch", "wrenches": ["10 to 80 lbf*ft by 1"], "blank": None, "none": [], "no": ""},
        "fasteners": [
            {"name": 'the "big" one', "step": 2, "new": True, "used": False, "maker": {"torque": "3", "p": ""}}
        ],
    }
    assert job_text(job) == (
        '[shop]\nunits = "inch"\nwrenches = ["10 to 80 lbf*ft by 1"]\n'
        '[[fasteners]]\nname = "the \\"big\\" one"\nstep = 2\nnew = true\nused = false\nmaker = {torque = "3"}\n'
    )


@pytest.mark.parametrize(
    ("kind", "verb", "said"),
    [
        ("use", "TIGHTEN", "TIGHTEN 31 lbf*ft + 90 deg or 40 lbf*ft"),
        ("use", "", "USE 31 lbf*ft + 90 deg or 40 lbf*ft"),
        ("ask", "TIGHTEN", "ASK FIRST 31 lbf*ft + 90 deg or 40 lbf*ft"),
        ("stop", "", "STOP 31 lbf*ft + 90 deg or 40 lbf*ft"),
        ("none", "", "NO FIGURE 31 lbf*ft + 90 deg or 40 lbf*ft"),
    ],
)
def test_what_a_sheet_decides_is_said_in_a_line(kind: str, verb: str, said: str) -> None:
    figures = [{"id": "a", "printed": "31 lbf*ft"}, {"id": "b", "printed": "40 lbf*ft"}]
    decision = {"kind": kind, "verb": verb, "figures": ["a", "gone", "b"], "plus": ["+ 90 deg", "", ""]}
    assert says({"decision": decision, "figures": figures}) == said
    del decision["plus"]
    assert says({"decision": decision, "figures": figures}) == said.replace(" + 90 deg", "")
    assert says({"decision": {**decision, "figures": []}, "figures": figures}) == said.partition(" 31")[0]


def test_a_print_says_how_many_of_its_rows_changed_without_effect() -> None:
    text = report({"state": UNAFFECTED, "why": "", "then": "1", "now": "2", "rows": ["a", "b"], "items": []})
    assert "Yes: 2 of its rows changed between data release 1 and 2" in text
