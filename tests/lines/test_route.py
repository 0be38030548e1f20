"""The sheet of a line as a whole: nothing given, all given, drawings, the commands."""

from __future__ import annotations

import json

import pytest

from gaugeblock.domains import read_job
from gaugeblock.errors import InputError, LookupMiss, UnitError
from gaugeblock.lines import commands as command
from gaugeblock.lines.route import route
from lines.line_sheets import BESIDE, says


def test_nothing_given_answers_cannot_tell_for_all_and_not_ok_for_none():
    sheet = route()
    assert sheet.checks
    assert {c.result for c in sheet.checks} == {"cannot tell"}
    assert all(c.reason for c in sheet.checks)
    assert says(sheet, "measure on the car, hot and after shut-down")


@pytest.mark.parametrize(
    ("keys", "error"),
    [
        ({"service": "steam"}, InputError),
        ({"side": "left"}, InputError),
        ({"shield": "tin foil"}, InputError),
        ({"temperature_by": "hand"}, InputError),
        ({"gap": "1"}, UnitError),
        ({"gap": "-1 in"}, InputError),
        ({"temperature": "-300 degC"}, InputError),
        ({"fluid": "lemonade"}, LookupMiss),
        ({"material": "string"}, LookupMiss),
        ({"gap": "1 in", "jurisdiction": "Atlantis", "service": "brake"}, LookupMiss),
        ({"flare": "60 deg", "seat": "45 deg"}, LookupMiss),
        ({"nut": "3/8", "port": "3/8-24"}, InputError),
        ({"hot_finish": "1.4"}, InputError),
        ({"air": "50 to 30 degC", **{k: v for k, v in BESIDE.items() if k != "air"}}, InputError),
    ],
)
def test_what_cannot_be_read_is_refused(keys, error):
    with pytest.raises(error):
        route(**keys)


def test_drawings_come_when_asked_for_and_there_is_an_estimate():
    assert [d.title for d in route("brake", **BESIDE, draw=True).drawings] == [
        "temperature against gap, hot soak",
        "section",
    ]
    assert route("brake", **BESIDE).drawings == ()
    assert route("brake", draw=True).drawings == ()


PARTS = {
    "length": "1 m",
    "wall": "0.028 in",
    "pressure": "1000 psi",
    "factor": "3",
    "jurisdiction": "MD",
    "anchors": "1 m",
}


def test_every_figure_of_a_sheet_has_its_quantity_defined_and_its_id_once():
    sheet = route("brake", **BESIDE, **PARTS, exhaust_material="carbon steel")
    ids = [f.id for f in sheet.figures]
    assert len(ids) == len(set(ids))
    for figure in sheet.figures:
        for part in figure.walk():
            assert sheet.data.quantity(part.quantity)
            assert part.evidence


def test_the_command_estimates_beside_a_part(capsys):
    argv = ["DOT 4", "--beside", "exhaust header", "--gap", "1 in", "--od", "3/16 in", "--hot-od", "2 1/4 in", "--json"]
    argv += ["--hot-finish", "0.8", "--finish", "0.8"]
    command.heat(argv)
    out = json.loads(capsys.readouterr().out)
    assert any(f["quantity"] == "line_temperature" for f in out["figures"])
    assert any("measure the hot part" in c["text"] for c in out["cautions"])


def test_the_command_refuses_half_an_estimate():
    with pytest.raises(InputError, match="--beside"):
        command.heat(["DOT 4", "--state", "wet", "--gap", "1 in"])
    with pytest.raises(InputError):
        command.heat(["DOT 4", "--beside", "exhaust header", "--at", "100 degC"])


JOB = """
[job]
owner = "A"
identification = "B"

[[lines]]
name = "rear brake line"
service = "brake"
fluid = "DOT 4"
fluid_state = "wet"
temperature = "171 degC"
temperature_by = "thermocouple"

[[lines]]
name = "re-routed"
service = "brake"
material = "brazed steel tube"
fluid = "DOT 4"
temperature = "82 degC"
temperature_by = "thermocouple"
side = "other side"
length = "1 m"
"""


def test_route_of_a_job_runs_all_lines_or_the_one_named(tmp_path, capsys):
    job = tmp_path / "build.toml"
    job.write_text(JOB)
    assert command.route([str(job)], read_job) == 1
    assert "re-routed" in capsys.readouterr().out
    assert command.route([str(job), "re-routed", "--json"], read_job) == 0
    assert json.loads(capsys.readouterr().out)["asked"]["service"] == "brake"
    with pytest.raises(LookupMiss) as refusal:
        command.route([str(job), "re-routd"], read_job)
    assert "re-routed" in refusal.value.nearest


def test_a_route_is_the_same_twice():
    assert json.dumps(route("brake", **BESIDE).as_dict()) == json.dumps(route("brake", **BESIDE).as_dict())
