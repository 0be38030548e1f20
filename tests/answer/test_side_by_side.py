"""What is left open, or compared, stands side by side: from every command that has such a key, and from Python."""

from __future__ import annotations

import contextlib
import inspect
import io
import json
import re
import shlex
from typing import Any

import pytest

import gaugeblock
from gaugeblock import ask, domains
from gaugeblock.answer.table import Table, _under
from gaugeblock.cli import main
from gaugeblock.errors import LookupMiss


def run(line: str) -> tuple[int, dict[str, Any]]:
    out, bad = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
        code = main([*shlex.split(line), "--json"])
    return code, json.loads(out.getvalue() or bad.getvalue())


AXLE = '--material 4340 --diameter "1-1/4 in" --wheel-load "1000 lb" --grip 0.9 --radius "13 in"'
Q_AND_T = '--treatment "quenched and tempered"'
COMPARED = {
    "torque 3/8-16 --grade 8 --condition dry --compare condition": 3,
    "torque 3/8-16 --grade 8 --condition dry --compare grade": 2,
    'part "wheel nut" --size 1/2-20 --compare size': 2,
    'bend --od "1-3/4 in" --wall ".120 in" --material "1020 DOM" --method "rotary draw" --compare method': 3,
    'bend --od "1-3/4 in" --wall ".120 in" --material DOM --method mandrel --compare "wall=.095 in, .120 in"': 2,
    'steel 4340 --treatment "quenched and tempered" --temper "800 degF" --shaft "1 in" --compare temper': 4,
    'steel 4340 --treatment "quenched and tempered" --temper "800 degF" --shaft "1 in" --compare grade': 5,
    f"axle {AXLE} {Q_AND_T} --temper '800 degF' --compare temper": 4,
    'axle --compare steels --diameter "1-1/4 in" --wheel-load "1000 lb" --grip 0.9 --radius "13 in"': 5,
    'heat "DOT 4" --state wet --compare state': 2,
    'heat "DOT 4" --state wet --compare item': 4,
    'sheetbend --thickness "2 mm" --radius "3 mm" --angle 90 --material "mild steel" --compare "radius=2 mm, 3 mm"': 2,
    "gauge 16 --system BWG --compare system": 5,
    'material "1020 DOM as drawn" --compare material': 5,
    'pipe "1-1/2" --schedule 40 --compare schedule': 3,
    'flare double --od "3/16 in" --compare flare': 3,
    "spline 24/48 35 --compare fit": 2,
    'shaft --od "3 in" --wall "0.083 in" --length "48 in" --speed "6000 rpm" --compare material': 2,
    'gearing 3.55 --tyre "28 in" --compare "tyre=28 in; 31 in; 33 in"': 3,
    'circuit --current "28 A" --length "12 ft" --voltage "12 V" --compare voltage': 2,
    'section --od "1-3/4 in" --wall ".120 in" --compare "wall=.083 in, .095 in, .120 in"': 3,
    'growth --length "60 in" --hot "500 degC" --material "carbon steel" --compare material': 2,
    "hole M8 --fit close --compare fit": 3,
    "engagement 3/8-16 --into steel --compare into": 6,
    'thread M12 --compare "thread=M12x1.25, M12x1.5, M12x1.75"': 3,
    'grade 8.8 --compare "grade=8.8, 10.9, 12.9"': 3,
    'clips --length "9 ft" --service brake --compare service': 3,
    'exhaust gap --to "fuel line" --compare neighbour': 10,
    'exhaust joint --kind "slip joint" --compare kind': 5,
    'fuel --power "350 hp" --fuel gasoline --compare fuel': 3,
    'brake --master "1 in" --ratio 6 --force "100 lbf" --compare master': 2,
    'handbrake --force "300 N" --ratio 6 --cables 2 --compare "ratio=5, 6, 7"': 3,
    "hardness 42 HRC --compare scale": 1,
    'sheet --size "4 ft x 8 ft" --thickness "14 ga" --compare "thickness=14 ga, 16 ga, 18 ga"': 3,
    'drop --wire "12 AWG" --current "25 A" --length "12 ft" --return body --compare "wire=10 AWG, 12 AWG"': 2,
    'jointlimit --speed "3000 rpm" --compare "speed=3000 rpm, 4000 rpm"': 2,
    'mastercylinder "7/8 in" --was "1 in" --compare "master=3/4 in, 7/8 in"': 2,
    'beam --od "1.5 in" --wall ".095 in" --span "30 in" --material "1020 DOM" --compare "wall=.065 in, .120 in"': 2,
    'offset "4 in" --angle "30 deg" --compare "angle=30 deg, 45 deg"': 2,
    'cope "1-1/2 in" --onto "1-3/4 in" --compare "onto=1-1/2 in, 1-3/4 in"': 2,
    'finaldrive "2500 rpm" --speed "70 mph" --tyre "25 in" --compare "gear=1, 0.82"': 2,
    'turns 1.9 --turned one --compare "turned=one, both"': 2,
    'antifreeze "14 qt" --mix "50 %" --compare "mix=40 %, 50 %"': 2,
    'reach --wire "4 mm2" --current "20 A" --drop "0.5 V" --return body --compare "wire=4 mm2, 6 mm2"': 2,
    'clutch "7/8 in" --stroke "30 mm" --compare "master=5/8 in, 3/4 in"': 2,
    'injector "24 lb/h" --compare "fuel=gasoline, ethanol"': 2,
    'injectorsize "220 hp" --injectors 4 --boost "no boost" --compare "duty=80 %, 90 %"': 2,
    'mitre "90 deg" --slices 6 --compare ends': 2,
    'pedal "900 psi" --master "7/8 in" --force "80 lbf" --compare "master=3/4 in, 7/8 in"': 2,
    'shaftstress "1 in" --torque "1000 lbf*ft" --compare "diameter=1 in, 1-1/4 in"': 2,
    'roadspeed 4.56 --tyre "29 in" --engine-speed "6800 rpm" --compare "gear=1, 0.7"': 2,
    'regear 3.73 --was "31 in" --tyre "33 in" --compare "tyre=33 in, 35 in"': 2,
    'truespeed --tyre "33 in" --was "31 in" --shown "60 mph" --compare "tyre=32 in, 33 in"': 2,
    'wiresize "10 AWG" --compare "wire=10 AWG, 8 AWG"': 2,
    'fuse --wire "14 AWG" --compare "wire=14 AWG, 12 AWG"': 2,
    "tyre 205/55R16 --compare fact": 4,
    'ratio 41/11 --compare "teeth=41/11, 39/10"': 2,
    'box "3 x 2 in" --wall ".120 in" --compare "wall=.083 in, .120 in"': 2,
    'arc --radius "5 in" --angle "90 deg" --compare "angle=45 deg, 90 deg"': 2,
    'overbend "45 deg" --test "90 deg set, 87 deg got" --compare "angle=30 deg, 60 deg"': 2,
    'identify "22.2 mm" "14 tpi" --compare "pitch=14 tpi, 12 tpi"': 2,
    'pipethread NPT "1/4 in" --compare size': 6,
    'spanner M10 --compare "standard=ISO, DIN"': 2,
    "drill '#7' --compare 'name=#7, Q'": 2,
    'coolant 50/50 --cap "15 psi" --compare mix': 4,
    'parked --draw "35 mA" --battery "60 Ah" --compare "draw=20 mA, 35 mA, 50 mA"': 3,
    'joint "5 deg" "3 deg" --phasing "in phase" --compare phasing': 2,
    "setup rear 'ring gear' backlash --wear new --compare wear": 2,
    'shims --backlash "0.012 in" --wanted "0.006 in" --per-shim 0.7 --compare "wanted=0.006 in, 0.008 in"': 2,
}


@pytest.mark.parametrize(("line", "least"), COMPARED.items(), ids=lambda v: str(v)[:60])
def test_an_option_is_compared(line: str, least: int) -> None:
    code, got = run(line)
    assert code == 0, got
    rows = got["table"]["rows"]
    assert len(rows) >= least
    assert {tuple(row["key"]) for row in rows} == {tuple(got["table"]["open"])}
    assert len({json.dumps(row["key"]) for row in rows}) == len(rows)


def test_every_command_with_a_sheet_can_compare() -> None:
    """``tube`` and ``route`` show the items of a job."""
    compared = {line.split(" ", 1)[0] for line in COMPARED}
    assert set(domains.commands()) - compared == {"tube", "route"}


def test_a_row_is_the_answer_that_the_command_gives() -> None:
    _, got = run("torque 3/8-16 --grade 8 --condition dry --compare condition")
    for row in got["table"]["rows"]:
        _, own = run(f"torque 3/8-16 --grade 8 --condition {row['key']['condition']}")
        assert [f["value"] for f in row["figures"]] == [
            next(f["value"] for f in own["figures"] if f["id"] == id) for id in own["decision"]["figures"]
        ]


def test_what_cannot_be_compared_is_refused_with_what_can() -> None:
    code, got = run("torque 3/8-16 --grade 8 --condition dry --compare colour")
    assert code == 2
    assert "condition" in got["error"]["nearest"]
    code, got = run("bend --od '1 in' --wall '.065 in' --material DOM --method mandrel --compare radius")
    assert code == 2
    assert "name the values" in got["error"]["do"]


def test_from_python() -> None:
    table = gaugeblock.compared(gaugeblock.torque, "condition", "3/8-16", grade="SAE J429 8")
    assert isinstance(table, Table)
    for line in table.lines:
        same = gaugeblock.torque("3/8-16", grade="SAE J429 8", condition=line.key["condition"])
        assert line.sheet.decision == same.decision
    steels = gaugeblock.compared(gaugeblock.steel, "temper", "4340", treatment="quenched and tempered", shaft="1 in")
    assert [line.key["temper"] for line in steels.lines] == ["600 degF", "800 degF", "1000 degF", "1200 degF"]
    with pytest.raises(LookupMiss):
        gaugeblock.compared(gaugeblock.torque, "colour", "3/8-16")


@pytest.mark.parametrize("name", [n for n in domains.answers() if n not in ("plan", "route", "axle_compared")])
def test_every_public_answer_is_compared_by_values_that_are_named(name: str) -> None:
    """Its first key, by two values that are refused: the refusal is the answer's own, or Python's for a key that is
    missing, never another fault.
    """
    answer = getattr(gaugeblock, name)
    keys = [k for k in inspect.signature(answer).parameters if k not in ("data", "typed")]
    if keys:
        with contextlib.suppress(gaugeblock.GaugeblockError, TypeError):
            gaugeblock.compared(answer, f"{keys[0]}=\x00, \x00\x00")


OPEN = {
    "torque --grade 8 --condition dry": "thread",
    "torque": "thread",
    "part": "part",
    'part "wheel nut"': "size",
    'bend --od "1-3/4 in" --wall ".120 in" --method "rotary draw"': "material",
    'bend --od "1-3/4 in" --wall ".120 in" --material "1020 DOM"': "method",
    "gauge": "number",
    "gauge 16": "system",
    "pipe": "nps",
    "material": "material",
    "flare 3/16": "flare",
    "flare double": "od",
    "flare": "flare",
    "heat": "item",
    "heat coolant": "state",
    'clips --length "9 ft"': "service",
    'growth --length "60 in" --hot "500 degC"': "material",
    'brake --ratio 6 --force "100 lbf"': "master",
    'brake "leak test"': "place",
    "fuel pressure": "system",
    "steel 1541": "treatment",
    'steel --treatment "quenched and tempered" --temper "800 degF"': "grade",
    "hardness 42": "scale",
    "spline 24/48": "teeth",
    "setup rear 'ring gear'": "step",
    'axle --material 4340 --diameter "1-1/4 in" --wheel-load "1000 lb" --grip 0.9 --radius "13 in"': "treatment",
    f"axle {AXLE} {Q_AND_T}": "temper",
    "exhaust gap": "to",
    "exhaust joint": "kind",
    'exhaust run --length "100 in" --od "2 in" --wall ".065 in"': "material",
}


@pytest.mark.parametrize(("line", "key"), OPEN.items(), ids=lambda v: str(v)[:60])
def test_an_open_key_gives_a_table(line: str, key: str) -> None:
    code, got = run(line)
    assert code == 0, got
    assert key in got["table"]["open"]
    assert len(got["table"]["rows"]) >= 1


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ('bend --wall ".120 in" --material DOM --method mandrel', "outside diameter"),
        ("parked", "of the vehicle at rest"),
        ("exhaust pipe", "of the engine"),
    ],
)
def test_a_measure_that_no_table_lists_is_asked_for_in_words(line: str, said: str) -> None:
    code, got = run(line)
    assert code == 2
    assert "not said" in got["error"]["why"]
    assert said in got["error"]["why"]


@pytest.mark.parametrize("wide", range(58, 70))
def test_the_foot_of_a_table_is_one_line_where_it_fits(wide: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", str(wide))
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        assert main(["steel", "1541"]) == 0
    *_, before, last = out.getvalue().rstrip().splitlines()
    said, release = "  The part maker's figure governs if you have it.", f"data {gaugeblock.refdata().release}"
    if len(said) + len(release) + 2 <= wide:  # with two blanks between them
        assert last.startswith(said)
        assert last.endswith(release)
    else:
        assert last.strip() == release
        assert "governs" in before


@pytest.mark.parametrize(
    "line",
    [
        'fuse --wire "14 AWG" --compare "wire=14 AWG, 12"',
        'drop --wire "12 AWG" --current "5 A" --length "12 ft" --return body --compare "wire=10 AWG, banana"',
        'bend --od "1-3/4 in" --wall ".120 in" --material DOM --method mandrel --compare "wall=.095 in, thick"',
        'gearing 3.55 --tyre "28 in" --compare "tyre=28 in; banana"',
        'steel 4340 --treatment "quenched and tempered" --temper "800 degF" --shaft "1 in"'
        ' --compare "grade=4340, pewter"',
    ],
)
def test_a_value_that_was_named_and_has_no_answer_is_refused_and_not_left_out(
    line: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(shlex.split(line)) == 2
    got = capsys.readouterr()
    assert got.out == ""
    assert line.rstrip('"').replace(";", ",").split(",")[-1].strip() in got.err


@pytest.mark.parametrize(
    ("line", "first", "second", "trust"),
    [
        ("residual pressure", "7 or 10 psi", "48.26 or 68.95 kPa", "PUBLISHED or HABIT"),
        ("M6 stainless into aluminium copper grease", "3.19 or 4.5 N*m", "28.2 or 40 lbf*in", "CALCULATED"),
    ],
)
def test_both_ends_of_a_row_stand_in_both_units_with_the_trust_of_each(
    line: str, first: str, second: str, trust: str
) -> None:
    found = ask(line)
    assert isinstance(found, Table)
    told = found.text(columns=100)
    assert first in told
    assert second in told
    assert trust in told


@pytest.mark.parametrize("line", ["m8 8.8", "m6 8.8", "1/4-20 grade 5", "m10 10.9", "m5 8.8"])
def test_a_column_is_of_one_unit(line: str) -> None:
    found = ask(line)
    assert isinstance(found, Table)
    rows = [row for row in found.text(columns=120).splitlines() if re.search("PUBLISHED|HABIT|CALCULATED", row)]
    torques = [re.findall(r"(?:N\*m|lbf\*ft|lbf\*in)", row) for row in rows]
    assert len({tuple(units) for units in torques if units}) == 1


@pytest.mark.parametrize("line", ["3/8-16 grade 8", "m8 8.8", "1/4-28 grade 8", "m12 10.9", "spark plug 14 mm"])
def test_the_two_numbers_of_a_row_are_in_two_units(line: str) -> None:
    found = ask(line)
    if not isinstance(found, Table):
        return
    for row in found.text(columns=100).splitlines():
        pair = re.search(r"[0-9] (lbf\*ft|lbf\*in|N\*m) +[0-9.,]+(?: to [0-9.]+)? (lbf\*ft|lbf\*in|N\*m)", row)
        if pair is not None:
            assert ("N*m" in pair.groups()) == (pair[1] != pair[2]), row
            assert pair[1] != pair[2], row


def test_under_no_column_stands_no_line() -> None:
    assert _under([], 4, 10) == []
    assert _under([["PUBLISHED"], []], 2, 12) == ["  PUBLISHED"]
