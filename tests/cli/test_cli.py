"""The command line: exit codes, one message, JSON, help examples that run, and what the look-up path loads."""

from __future__ import annotations

import json
import os
import re
import resource
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.cli import GENERAL, main

ROOT = Path(__file__).resolve().parents[2]
HEAVY = (
    "pandas",
    "pandera",
    "numpy",
    "scipy",
    "pint",
    "jinja2",
    "markdown",
    "pydantic",
    "typing",
    "dataclasses",
    "hashlib",
)
DRY = ["torque", "3/8-16", "--grade", "SAE J429 5", "--condition", "dry"]


def run(capsys: pytest.CaptureFixture[str], *argv: str) -> tuple[int, str, str]:
    code = main(list(argv))
    got = capsys.readouterr()
    return code, got.out, got.err


def test_a_look_up_prints_the_number_first(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, *DRY)
    assert (code, err) == (0, "")
    first = next(line for line in out.splitlines() if "31 lbf*ft" in line)
    assert "42 N*m" in first
    assert first.rstrip().endswith("PUBLISHED")
    assert len(out.splitlines()) <= 15


@pytest.mark.parametrize("columns", [40, 60, 80])
def test_a_short_answer_keeps_to_its_screen(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, columns: int
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    for argv in (
        DRY,
        [*DRY, "--into", "aluminium"],
        ["heat", "DOT 4", "--state", "wet"],
        ["steel", "4340", "--treatment", "q&t", "--temper", "800 degF"],
    ):
        code, out, _ = run(capsys, *argv)
        assert code in (0, 1)
        assert max(len(line) for line in out.splitlines()) <= columns


def test_why_prints_every_figure_check_and_caution(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, *DRY, "--why")
    assert "TIGHTENING TORQUE" in out
    assert "CHECKS" in out


def test_json_is_one_sheet(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, *DRY, "--json")
    sheet = json.loads(out)
    assert code == 0
    assert set(sheet) == {"asked", "data_release", "decision", "figures", "checks", "questions", "cautions"}
    assert sheet["figures"][0]["value"] == 31
    assert sheet["figures"][0]["unit"] == "lbf*ft"


def test_in_prints_another_unit_and_keeps_the_sources_value(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, *DRY, "--json", "--in", "N*m")
    figure = json.loads(out)["figures"][0]
    assert code == 0
    assert figure["printed"] == "42 N*m"
    assert (figure["value"], figure["unit"]) == (31, "lbf*ft")


@pytest.mark.parametrize(
    ("argv", "open_keys"),
    [
        (["torque", "3/8-16"], ["grade", "condition"]),
        (["torque", "3/8", *DRY[2:]], ["thread"]),
        (["torque", "M8"], ["grade", "condition"]),
        (["torque", "3/8-16", "--grade", "SAE J429", "--condition", "dry"], ["grade"]),
        (["part", "wheel nut"], ["size"]),
        (["heat", "fuel hose"], ["klass"]),
        (["steel", "1541"], ["treatment"]),
        (["gauge", "16"], ["system"]),
        (["material", "1020 DOM"], ["material"]),
    ],
)
def test_what_was_not_said_gives_a_table(
    capsys: pytest.CaptureFixture[str], argv: list[str], open_keys: list[str]
) -> None:
    code, out, err = run(capsys, *argv, "--json")
    assert (code, err) == (0, "")
    table = json.loads(out)["table"]
    assert table["open"] == open_keys
    assert len(table["rows"]) >= 2
    for row in table["rows"]:
        assert set(row["key"]) == set(open_keys)
        assert row["decision"]["kind"] in ("use", "ask", "stop", "none")


def test_exit_1_when_a_check_is_not_ok(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, *DRY, "--into", "aluminium", "--engagement", "1/4 in", "--why")
    assert (code, err) == (1, "")
    assert "NOT OK" in out


def test_an_earlier_data_release_answers_as_it_did(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, *DRY, "--data-release", "0.1.0", "--json")
    assert code == 0
    assert json.loads(out)["data_release"] == "0.1.0"


BAD = [
    ([], ["torque", "packet"]),
    (["torqe"], ["torque"]),
    (["bend", "--wall", ".120 in"], ["--od"]),
    ([*DRY[:4], "--condition"], ["--condition"]),
    (["torque", "3/8-18", *DRY[2:]], ["3/8-16 UNC", "3/8-24 UNF"]),
    (["torque", "M10", *DRY[2:]], ["ISO 898-1 8.8"]),
    (["torque", "3/8-16 UNF", *DRY[2:]], ["3/8-24 UNF"]),
    (["torque", "", *DRY[2:]], ["thread"]),
    (["torque", "8-Mar", *DRY[2:]], ["thread"]),
    (["torque", "3/0-16", *DRY[2:]], ["thread"]),
    (["torque", "M10x1,5", *DRY[2:]], ["M10x1.5"]),
    (["torque", "-3/8-16", *DRY[2:]], ["torque"]),
    (["torque", "9" * 5000, *DRY[2:]], ["thread"]),
    (["torque", "3/8-16\x00", *DRY[2:]], ["U+0000"]),
    (["torque", "3/8-16", "--grade", "5.5", "--condition", "dry"], ["grade"]),
    (["torque", "3/8-16", "--grade", "", "--condition", "dry"], ["grade"]),
    (["torque", "#10-24", "--grade", "SAE J429 5", "--condition", "dry"], ["1/4 to 1 in"]),
    (["torque", "3/8-16", "--grade", "SAE J429 5", "--condition", "slippery"], ["condition", "oiled"]),
    ([*DRY, "--service", "spaceship"], ["service", "vehicle"]),
    ([*DRY, "--joint", "welded"], ["reused", "permanent"]),
    ([*DRY, "--into", "cheese", "--engagement", "1 in"], ["aluminium"]),
    ([*DRY, "--into", "steel", "--engagement", "15"], ["15 in", "15 mm"]),
    ([*DRY, "--into", "steel", "--engagement", "0 in"], ["more than zero"]),
    ([*DRY, "--into", "steel", "--engagement", "-3/4 in"], ["engagement"]),
    ([*DRY, "--into", "steel", "--engagement", "15 kg"], ["mm"]),
    ([*DRY, "--into", "steel", "--engagement", "15,5 mm"], ["engagement"]),
    ([*DRY, "--into", "steel", "--engagement", "1e3 mm"], ["engagement"]),
    ([*DRY, "--into", "steel", "--engagement", "3/4 in", "--tapped-strength", "30 ft"], ["ksi"]),
    ([*DRY, "--given", "31"], ["lbf*ft", "N*m"]),
    ([*DRY, "--given", "31 lbs"], ["lbf*ft"]),
    ([*DRY, "--given", "-31 lbf*ft"], ["more than zero"]),
    ([*DRY, "--given", "31 lbf*furlong"], ["lbf*ft"]),
    ([*DRY, "--given", "nan lbf*ft"], ["not a number"]),
    ([*DRY, "--given", "1/0 lbf*ft"], ["zero"]),
    ([*DRY, "--wrench", "5-80"], ["5 to 80 lbf*ft by 1"]),
    ([*DRY, "--wrench", "80 to 5 lbf*ft by 1"], ["below the high end"]),
    ([*DRY, "--wrench", "5 to 80 lbf*ft by 0"], ["more than 0"]),
    ([*DRY, "--wrench", "5 to 80 ft by 1"], ["torque"]),
    ([*DRY, "--adapter", "2 in"], ["2 in on 12 in"]),
    ([*DRY, "--adapter", "2 in on 0 in"], ["more than zero"]),
    ([*DRY, "--adapter", "20 in on 12 in at 180 deg"], ["more than zero"]),
    ([*DRY, "--locknut", "magic"], ["all-metal"]),
    ([*DRY, "--prevailing", "-3 lbf*in"], ["more than zero"]),
    ([*DRY, "--in", "furlong"], ["unit"]),
    ([*DRY, "--in", "degC"], ["lbf*ft"]),
    ([*DRY, "--data-release", "9.9.9"], ["0.21.0"]),
    ([*DRY, "--no-such-option"], ["--no-such-option"]),
    ([*DRY, "extra"], ["extra"]),
    (["part", "spark plug", "--size", "15 mm"], ["14 mm"]),
    (["part", "sprak plug"], ["spark plug"]),
    (["find", " "], ["words"]),
    (["find", "x" * 300], ["words"]),
    (["audit", "--fail-on", "memry"], ["from memory"]),
    (["audit", "no-such-file.json"], ["cannot be read"]),
    (["audit", __file__], ["not JSON"]),
    (["packet", "no-such-job.toml", "--out", "x"], ["no-such-job.toml"]),
    (["packet", "."], ["--out"]),
]


# Without a command there is nothing to print as JSON.
@pytest.mark.parametrize(
    ("argv", "words", "as_json"),
    [(a, w, j) for a, w in BAD for j in (False, True) if a or not j],
    ids=lambda v: " ".join(v)[:40] if isinstance(v, list) else str(v),
)
def test_bad_input_is_one_message_exit_2_and_nothing_printed(
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    argv: list[str],
    words: list[str],
    as_json: bool,
) -> None:
    monkeypatch.chdir(tmp_path)
    code, out, err = run(capsys, *argv, *(["--json"] if as_json else []))
    assert code == 2
    if argv:
        assert out == ""
        assert len(err) < 2000
        told = " ".join(err.split()).casefold()
        for word in words:
            assert word.casefold() in told
        if as_json:
            error = json.loads(err)["error"]
            assert set(error) >= {"code", "asked", "where", "why", "nearest", "do"}
            assert error["why"]
            assert error["do"]
            assert len(error["nearest"]) <= 5
        else:
            lines = err.splitlines()
            assert [line for line in lines if len(line) > 80 and " " in line.strip()] == []
            assert sum(not line.startswith("  ") for line in lines) <= 3  # what, what is near it, what to do
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", sorted([*domains.commands(), *GENERAL]))
def test_every_help_has_an_example_that_runs(
    capsys: pytest.CaptureFixture[str], name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main([name, "--help"])
    assert stopped.value.code == 0
    shown = capsys.readouterr().out
    example = shlex.split(shown.split("example:\n", 1)[1].strip().splitlines()[0])
    assert example[:2] == ["gaugeblock", name]
    monkeypatch.chdir(tmp_path)
    demo = ROOT / "reports" / "examples" / "demo"
    for i, word in enumerate(example):
        if word.endswith("packet.json"):
            example[i] = str(demo / "packet.json")
        elif word.endswith(".toml") and name != "new":
            example[i] = str(demo) + ".toml"
        elif word.startswith("packets/"):
            example[i] = "out"
    assert main(example[1:]) in (0, 1)
    assert capsys.readouterr().out


def modules_after(*argv: str) -> list[str]:
    code = (
        "import sys\nfrom gaugeblock.cli import main\n"
        f"main({list(argv)!r})\nprint('\\n'.join(sys.modules), file=sys.stderr)"
    )
    environment = {k: v for k, v in os.environ.items() if not k.startswith("COV")}
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, env=environment, timeout=60
    )
    return done.stderr.split()


def test_the_look_up_path_is_light(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("XDG_CACHE_HOME", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(tmp_path))
    modules_after(*DRY)  # the first look-up of a user works out the digests of the tables
    loaded = modules_after(*DRY)
    own = [m for m in loaded if m.split(".")[0] == "gaugeblock"]
    assert len(loaded) - len(own) <= 68  # of others; our own are small, one noun each
    # each domain is one module, which names its rooms; the index of exact keys saves a walk through its table, and a
    # command's options are read by a module of ours in place of five of the library's
    assert len(own) <= 51 + len(domains.WINGS)
    assert not [m for m in loaded if m.split(".")[0] in HEAVY]


def test_importing_the_package_loads_no_room() -> None:
    done = subprocess.run(
        [sys.executable, "-c", "import sys, gaugeblock; print([m for m in sys.modules if m.startswith('gaugeblock')])"],
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    assert done.stdout.strip() == "['gaugeblock']"


def test_the_face_is_what_it_says() -> None:
    import gaugeblock

    assert sorted([*gaugeblock._FACE, *domains.answers()]) == gaugeblock.__all__
    for name in gaugeblock.__all__:
        assert getattr(gaugeblock, name) is not None
    with pytest.raises(AttributeError):
        _ = gaugeblock.no_such_name


def test_find_with_no_hit_is_empty_and_names_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "find", "sparrk plgu", "--json")
    found = json.loads(out)
    assert (code, err) == (0, "")
    assert found["figures"] == []
    assert "spark plug" in " ".join(found["nearest"])


def test_audit_fails_on_a_kind(capsys: pytest.CaptureFixture[str]) -> None:
    demo = str(ROOT / "reports" / "examples" / "demo" / "packet.json")
    assert run(capsys, "audit", demo)[0] == 0
    assert run(capsys, "audit", demo, "--fail-on", "no published source")[0] == 1
    assert run(capsys, "audit", demo, "--fail-on", "withdrawn")[0] == 0


def test_readme_commands_are_real() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    for script in re.findall(r"`(scripts/\w+)`", text):
        assert os.access(ROOT / script, os.X_OK), script


# The console script ends its process without the interpreter's own ending: all that was said must have arrived.

PROGRAM = str(Path(sys.executable).with_name("gaugeblock"))
# An unbuffered output would hide what is lost when a process ends without flushing.
BUFFERED = {k: v for k, v in os.environ.items() if k != "PYTHONUNBUFFERED"}


@pytest.mark.parametrize(
    ("argv", "code"),
    [
        (["--help"], 0),
        (["sources"], 0),
        (["find", "spark", "plug"], 0),
        (["torque", "3/8-17"], 2),
        (["steel", "4340", "--help"], 0),
        (["nothing"], 2),
        ([], 2),
        (["heat", "DOT 4", "--state", "wet", "--at", "400 degF"], 1),
        (["validate"], 0),
    ],
)
def test_the_process_says_all_that_main_says(capsys: pytest.CaptureFixture[str], argv: list[str], code: int) -> None:
    got = subprocess.run([PROGRAM, *argv], capture_output=True, text=True, encoding="utf-8", check=False, env=BUFFERED)
    try:
        said = run(capsys, *argv)
    except SystemExit as end:  # --help ends by itself
        said = (int(end.code or 0), capsys.readouterr().out, "")
    assert (got.returncode, got.stdout, got.stderr) == said
    assert got.returncode == code


def test_a_file_that_takes_no_more_is_told(tmp_path: Path) -> None:
    def no_room() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))

    with (tmp_path / "out").open("w") as full:
        got = subprocess.run(
            [PROGRAM, *DRY],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
            env=BUFFERED,
            preexec_fn=no_room,
        )
    assert got.returncode == 2
    assert got.stderr.startswith("output: cannot be written here")


def test_a_reader_that_leaves_early_is_no_fault() -> None:
    with subprocess.Popen(
        [PROGRAM, "sources"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=BUFFERED
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        assert process.stderr.read() == b""
        assert process.wait(timeout=60) == 0
