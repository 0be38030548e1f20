"""What a long run of scripts/fuzz found: ordinary mistakes that ended in a fault of the program."""

from __future__ import annotations

import shlex

import pytest

from gaugeblock import domains
from gaugeblock.cli import main
from gaugeblock.errors import GaugeblockError
from gaugeblock.job.values import example_unit, measure
from gaugeblock.packet.build import build
from gaugeblock.tables.load import refdata
from gaugeblock.units import UNITS

EARLIER = [r["version"] for r in refdata().releases][:-1]
LINES = [
    "brake --ratio 6",
    "brake --hose '16 in' --droop '14 in' --lock '13 in'",
    "exhaust gap --to tyre --gap '2 in'",
    "exhaust gap --to 'brake line' --gap '2 in' --movement '3/8 in'",
    "exhaust pipe --power '350 hp'",
    "circuit --current '28 A' --length '12 ft' --voltage '12 V' --drop '3 %'",
    "shaft --od '3 in' --wall '0.083 in' --length '50 in' --speed '4800 rpm'",
    "flare 3/16",
]


@pytest.mark.parametrize("release", EARLIER)
@pytest.mark.parametrize("line", LINES)
def test_an_earlier_release_without_the_figures_refuses(
    line: str, release: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*shlex.split(line), "--data-release", release]) in (0, 1, 2), capsys.readouterr().err


@pytest.mark.parametrize("subject", ["", " "])
def test_a_blank_word_is_no_subject(subject: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["brake", subject]) == 2
    assert "subject: (blank)" in capsys.readouterr().err.casefold()


@pytest.mark.parametrize("line", ["clips --length '9 ft' --spacing '0 in'", "clips --length '0 ft' --spacing '2 in'"])
def test_a_line_has_no_length_of_zero(line: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(shlex.split(line)) == 2
    assert "must be more than zero" in capsys.readouterr().err


def test_what_stands_behind_two_dashes_is_no_option(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["gauge", "--", "16", "--json"]) == 2
    assert not capsys.readouterr().err.startswith("{")


@pytest.mark.parametrize("dim", sorted({dim for dim, *_ in UNITS.values()}))
def test_every_measure_that_is_no_text_is_refused_with_a_unit(dim: str) -> None:
    assert UNITS[example_unit(dim)][0] == dim
    for value in (90, {"x": "1"}, [], True):
        with pytest.raises(GaugeblockError):
            measure(value, dim)


METALS = {*refdata().table("lines/emissivity").column("material").values(), *refdata().words("lines", "material")}


@pytest.mark.parametrize("material", sorted(METALS))
def test_a_finish_without_a_surface_is_a_figure_or_a_refusal(material: str, capsys: pytest.CaptureFixture[str]) -> None:
    line = "heat gasoline --beside 'exhaust header' --gap '4 in' --od '3/8 in' --hot-od '2 in' --shield 'flat open'"
    assert main([*shlex.split(line), "--shield-finish", material]) in (0, 1, 2), capsys.readouterr().err


def test_two_hangers_at_one_place_share_its_load() -> None:
    job = """
[job]
owner = "A. Sample"
identification = "frame no. 1"
[[exhausts]]
name = "run"
material = "304 stainless"
od = "2-1/2 in"
wall = ".065 in"
length = "92 in"
hot = "800 degF"
fixed = "8 in"
hangers = [{at = "48 in", length = "3 in"}, {at = "48 in", length = "3 in"}, {at = "80 in", length = "3 in"}]
"""
    data = refdata()
    made = build(domains.parse_job(job, "job", domains.hooks(data)), data, "test")
    figures = made.items[0].sheet.figures
    loads = [f.typical for f in figures if f.quantity == "hanger_load"]
    assert len(loads) == 4
    assert loads[1] == loads[2]
    alone = build(domains.parse_job(job.replace("""{at = "48 in", length = "3 in"}, """, "", 1), "job"), data, "test")
    once = [f.typical for f in alone.items[0].sheet.figures if f.quantity == "hanger_load"]
    assert 2 * loads[1] == pytest.approx(once[1])
    assert sum(loads) == pytest.approx(sum(once))


SERVICES = sorted({row["service"] for row in refdata().table("fasteners/part_torques").rows})


@pytest.mark.parametrize("service", SERVICES)
def test_parts_of_a_service_that_leave_different_things_open_are_one_table(
    service: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["part", "--service", service]) in (0, 2), capsys.readouterr().err
