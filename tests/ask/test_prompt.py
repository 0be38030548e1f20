"""The line to ask in: one conversation, what is put into a job file, what a shell completes."""

from __future__ import annotations

import subprocess
import tomllib
from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.cli import main
from gaugeblock.errors import InputError, JobError
from gaugeblock.fasteners.torque import torque
from gaugeblock.plain.answer import reading_of
from gaugeblock.plain.keep import keep
from gaugeblock.plain.prompt import Prompt, talk
from gaugeblock.tables.load import refdata

DATA = refdata()


def said(capsys: pytest.CaptureFixture[str], prompt: Prompt, line: str) -> str:
    assert prompt.take(line)
    return capsys.readouterr().out


def test_a_conversation(capsys: pytest.CaptureFixture[str]) -> None:
    prompt = Prompt()
    assert "Nothing was asked yet." in said(capsys, prompt, "why")
    assert "TIGHTEN   31 lbf*ft" in said(capsys, prompt, "3/8-16 grade 5 dry")
    assert "TIGHTEN   42 N*m" in said(capsys, prompt, "again in N*m")
    assert "CHECKS" in said(capsys, prompt, "why?")
    assert "oiled" in said(capsys, prompt, "compare condition")
    refused = said(capsys, prompt, "3/8-16 titanium")
    assert 'Not understood: "titanium".' in refused
    assert "42 N*m" in said(capsys, prompt, "again in N*m")  # a refusal forgets nothing
    assert "Near it" in said(capsys, prompt, "again in fathoms")
    assert not prompt.take("quit")


def test_it_ends_with_the_line(capsys: pytest.CaptureFixture[str]) -> None:
    lines = iter(["m8", "", "dot 4 wet"])

    def ask(_: str) -> str:
        try:
            return next(lines)
        except StopIteration:
            raise EOFError from None

    assert talk(ask) == 0
    out = capsys.readouterr().out
    assert "ISO 898-1 10.9" in out
    assert "KEEP UNDER" in out


def test_without_a_terminal_nothing_waits_for_a_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([]) == 2
    assert "no command was given" in capsys.readouterr().err


# --- into a job file
# ----------------------------------------------------------------------------------------------------

JOB = """# the blue one
[job]
owner = "a shop"  # ours

[[fasteners]]
name = "3/8-16, SAE J429 8, dry"
thread = "3/8-16"
"""


def test_an_item_is_added_and_all_else_is_kept(tmp_path: Path) -> None:
    path = tmp_path / "build.toml"
    path.write_text(JOB, encoding="utf-8")
    name = keep(reading_of("3/8-16 grade 8 dry into aluminum no insert 3/4 deep", DATA), str(path), DATA)
    text = path.read_text(encoding="utf-8")
    assert text.startswith(JOB.rstrip())
    item = tomllib.loads(text)["fasteners"][1]
    assert item["name"] == name
    job = domains.read_job(path, domains.hooks(DATA))
    (page,) = [domains.pages(job)["fasteners"].item(f, job.shop, DATA) for f in job.fasteners[1:]]
    same = torque("3/8-16", grade="8", condition="dry", into="aluminium", insert="no", engagement="3/4 in")
    assert page.sheet.decision == same.decision


def test_the_same_question_twice_gives_two_names(tmp_path: Path) -> None:
    path = tmp_path / "build.toml"
    reading = reading_of("wheel nuts 12 by 1.5", DATA)
    names = {keep(reading, str(path), DATA) for _ in range(3)}
    assert len(names) == 3
    assert len(domains.read_job(path).fasteners) == 3


@pytest.mark.parametrize(
    "line",
    [
        "m10 10.9 oiled",
        "14 mm spark plug gasket seat aluminium",
        "the book says 25 to 28 nm for this m8 8.8 dry",
        "28 amps 12 feet 12 volts",
        "35 ma drain 60 ah battery",
        "3.55 gears 28 inch tires at 60 mph",
        "u joint at 5 degrees and 3 degrees",
        "24/48 spline 35 teeth",
        "axle shaft 1541 1.25 inch 400 lb ft engine 3.0 first 3.73 rear locked",
    ],
)
def test_every_topic_with_a_place_in_a_job_can_be_added(tmp_path: Path, line: str) -> None:
    path = tmp_path / "build.toml"
    keep(reading_of(line, DATA), str(path), DATA)
    domains.read_job(path, domains.hooks(DATA))


def test_what_no_job_has_a_place_for_is_refused_and_nothing_is_written(tmp_path: Path) -> None:
    with pytest.raises(InputError):
        keep(reading_of("12 gauge sheet", DATA), str(tmp_path / "build.toml"), DATA)
    assert list(tmp_path.iterdir()) == []


def test_a_damaged_job_is_refused_and_stays(tmp_path: Path) -> None:
    path = tmp_path / "build.toml"
    path.write_text("[[fasteners]\n", encoding="utf-8")
    with pytest.raises(JobError):
        keep(reading_of("3/8-16 grade 8 dry", DATA), str(path), DATA)
    assert path.read_text(encoding="utf-8") == "[[fasteners]\n"


# --- completion
# ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_a_script_names_every_command_and_its_options(capsys: pytest.CaptureFixture[str], shell: str) -> None:
    assert main(["completion", shell]) == 0
    script = capsys.readouterr().out
    for word in (*domains.commands(), "ask", "packet", "condition", "data-release"):
        assert word in script


def test_bash_completes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", "bash"]) == 0
    script = tmp_path / "completion"
    script.write_text(capsys.readouterr().out, encoding="utf-8")
    words = "COMP_WORDS=(gaugeblock torque --cond); COMP_CWORD=2"
    code = f'source {script}; {words}; _gaugeblock; echo "${{COMPREPLY[@]}}"'
    done = subprocess.run(["bash", "-c", code], capture_output=True, text=True, check=True, timeout=20)
    assert done.stdout.split() == ["--condition"]


def test_another_shell_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["completion", "csh"]) == 2
    assert "bash, zsh, fish" in capsys.readouterr().err
