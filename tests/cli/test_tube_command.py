"""``gaugeblock tube``: the table at the bench, the quick forms, JSON, and what is refused."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from gaugeblock.cli import main

DEMO = str(Path(__file__).resolve().parents[2] / "reports" / "examples" / "demo.toml")
BARE = [
    "--od",
    "1-3/4 in",
    "--wall",
    ".120 in",
    "--material",
    "1020 DOM",
    "--method",
    "rotary draw",
    "--radius",
    "5-1/2 in",
]
DIE = ["--start-mark", "1-1/4 in", "--grip", "3 in", "--test", "47 deg set, 45 deg got"]
OFFSET = ["--offset", "rise 6 in, angle 45 deg, before 8 in, after 8 in"]


def run(capsys: pytest.CaptureFixture[str], *argv: str) -> tuple[int, str, str]:
    code = main(["tube", *argv])
    got = capsys.readouterr()
    return code, got.out, got.err


def test_a_quick_offset_prints_cut_and_a_table_of_marks(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, *OFFSET, *BARE, *DIE)
    assert (code, err) == (0, "")
    lines = [" ".join(line.split()) for line in out.splitlines()]
    assert lines[2].startswith("CUT 28 9/16 in (28.568)")
    head = lines.index("DO BEND: ANGLE MARK AT BEND TOWARD SET TURN FIRST")
    assert lines[head - 1].endswith(", towards END")  # all marks one way are said once
    assert lines[head + 1] == "1st 1: 45 deg 6 3/4 in (6.750) to END 47 deg start here"
    assert lines[head + 2] == "2nd 2: 45 deg 15 in (14.999) to END 47 deg half a turn, 180 deg"


def test_what_is_turned_first_has_a_line_of_its_own_on_a_narrow_screen(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "60")
    _, out, _ = run(capsys, *OFFSET, *BARE, *DIE)
    lines = [" ".join(line.split()) for line in out.splitlines()]
    at = lines.index("2nd 2: 45 deg 15 in (14.999) to END 47 deg")
    assert lines[at + 1] == "half a turn, 180 deg"


def test_the_bench_prints_what_is_open_and_why_prints_the_rest(capsys: pytest.CaptureFixture[str]) -> None:
    _, short, _ = run(capsys, *OFFSET, *BARE, *DIE)
    _, whole, _ = run(capsys, *OFFSET, *BARE, *DIE, "--why")
    assert len(short.splitlines()) <= 15 < len(whole.splitlines())
    assert "shape complete" in whole
    assert "shape complete" not in short
    assert "--why" in short


def test_a_quick_kick_up_takes_a_second_side(capsys: pytest.CaptureFixture[str]) -> None:
    form = "flat 6 in, rise 8 in, angle 45 deg, foot 8 in, second rise 7 in, second angle 60 deg"
    code, out, _ = run(capsys, "--kick-up", form, *BARE, *DIE, "--json")
    assert code == 1  # 1.7 in of straight are left in the second leg, the die grips 3 in
    sheet = json.loads(out)
    angles = [f["value"] for f in sheet["figures"] if f["quantity"] == "bend_angle"]
    assert angles == pytest.approx([45, 45, 60, 60])


def test_a_tube_of_a_job_by_its_name_and_all_of_them(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, DEMO, "gearbox crossmember")
    assert code == 0
    assert "CUT " in out
    assert "swap ends in the die" in out
    code, out, _ = run(capsys, DEMO, "--json")
    sheets = json.loads(out)["sheets"]
    assert [s["name"] for s in sheets] == ["gearbox crossmember"]
    assert {"bend_mark", "bend_angle_set", "tube_turn"} <= {f["quantity"] for f in sheets[0]["figures"]}


def test_a_shape_that_does_not_fit_ends_with_1_and_says_what_would(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "--offset", "rise 2 in, angle 60 deg, before 8 in, after 8 in", *BARE, *DIE)
    assert code == 1
    assert "NOT OK" in out
    assert "STOP" in out
    assert "rise minimum" in out
    assert "MARK AT" not in out
    assert "CUT" not in out


@pytest.mark.parametrize(
    ("argv", "word"),
    [
        ([], "--offset"),
        ([*OFFSET, "--kick-up", "flat 6 in", *BARE], "two forms"),
        ([DEMO, "no such tube"], "gearbox crossmember"),
        ([DEMO, *OFFSET], "leave the option out"),
        (["--offset", "rize 6 in", *BARE], "rise"),
        (["--offset", "rise 6 in, rise 7 in", *BARE], "twice"),
        (["--offset", "rise 6, angle 45 deg, before 8 in, after 8 in", *BARE], "6 in"),
        (["--kick-up", "flat 6 in, width 40 in, rise 5 in, angle 45 deg, foot 8 in", *BARE], "flat"),
        ([*OFFSET, *BARE, "--test", "47 deg"], "deg set"),
        ([*OFFSET, *BARE, "--reads", "1/8 in"], "1/16 in"),
        (["no-such-job.toml"], "no such file"),
    ],
)
def test_what_cannot_be_read_is_one_message(capsys: pytest.CaptureFixture[str], argv: list[str], word: str) -> None:
    code, out, err = run(capsys, *argv)
    assert (code, out) == (2, "")
    assert word in " ".join(err.split()).replace("Leave the", "leave the")


def test_a_form_with_something_missing_cannot_be_told(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "--offset", "rise 6 in, angle 45 deg", *BARE)
    assert code == 0
    assert "CANNOT TELL shape and marks: offset.before, offset.after not given" in out
