"""A line of a job: what cannot be read, and what is asked."""

from __future__ import annotations

import json

import pytest

from gaugeblock.cli import main
from gaugeblock.domains import read_job
from gaugeblock.lines.paths import route_of_part
from lines.line_sheets import BESIDE, check_of, job_line


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("material", "unobtainium pipe"),
        ("fluid", "lemonade"),
        ("class", "R99"),
        ("fluid_state", "soggy"),
    ],
)
def test_a_word_of_a_job_that_cannot_be_read_is_an_open_question(key, typed):
    keys = {
        "service": "brake",
        "material": "fuel hose",
        "class": "SAE J30 R9",
        "fluid": "DOT 4",
        "temperature": "80 degC",
        key: typed,
    }
    sheet = route_of_part(job_line(**keys))
    check = next(c for c in sheet.checks if typed in c.reason)
    assert check.result == "cannot tell"
    assert sheet.asked[key] == typed
    assert sheet.title.startswith("front line")


def test_a_finish_of_a_job_that_is_not_in_the_table_is_an_open_question():
    sheet = route_of_part(job_line(service="brake", **{**BESIDE, "hot_finish": "titanium: blue"}))
    assert any("titanium" in c.reason for c in sheet.checks)
    assert "hot finish" in check_of(sheet, "estimated temperature").reason


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('name = "a"\nhot = "x"', "lines[1].hot (a): a table is wanted"),
        ('service = "brake"', "lines[1].name: is missing"),
        ('name = "a"\npressure = "1200"', "lines[1].pressure (a): 1200: a stress needs its unit"),
        ('name = "a"\nhot_temperature = "400"', "lines[1].hot_temperature (a): 400: a temperature needs its unit"),
        ('name = "a"\nair = "50 to 30 degC"', "the wrong way round"),
    ],
)
def test_what_cannot_be_read_of_a_line_is_refused_with_one_message(tmp_path, text, words):
    from gaugeblock.domains import hooks
    from gaugeblock.errors import JobError
    from gaugeblock.tables.load import refdata

    job = tmp_path / "build.toml"
    job.write_text(f"[[lines]]\n{text}\n")
    for checking in (None, hooks(refdata())):
        with pytest.raises(JobError) as refused:
            read_job(job, checking)
        assert len(refused.value.problems) == 1
        assert words in str(refused.value)


LINES = """\
[[lines]]
name = "front"
service = "brake"
material = "copper-nickel"
[[lines]]
name = "rear"
service = "brake"
material = "fuel hose"
class = "SAE J30 R9"
fluid = "DOT 4"
temperature = "250 degC"
"""


def test_the_lines_of_a_job_are_told_one_after_the_other_or_by_name(tmp_path, capsys):
    job = tmp_path / "two.toml"
    job.write_text(LINES)
    worst = main(["route", str(job)])
    told = capsys.readouterr().out
    assert not told.lstrip().startswith("{")
    assert told.index("front") < told.index("rear")
    codes = [main(["route", str(job), name]) for name in ("front", "rear")]
    assert capsys.readouterr().out.split() == told.split()
    assert worst == max(codes) == 1
    assert main(["route", str(job), "--json"]) == worst
    assert [s["name"] for s in json.loads(capsys.readouterr().out)["sheets"]] == [
        "front: brake line",
        "rear: brake line",
    ]
