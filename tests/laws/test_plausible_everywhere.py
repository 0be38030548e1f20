"""Law 8 wherever a measure is typed: a blank left out is asked about, and so is a hardness on a wrong scale."""

from __future__ import annotations

import pytest

from gaugeblock.cli import main

SHAFT = 'steel 4340 --treatment "quenched and tempered" --temper "800 degF" --torque "1500 lbf*ft"'
BOLT = 'torque 3/8-16 --grade "SAE J429 5" --condition dry'
HOT = 'heat "DOT 4" --state wet --beside "exhaust header" --hot "450 degC" --air "40 degC"'
RUN = 'exhaust run --length "100 in" --wall ".065 in" --material 304 --hot "900 degF"'
TUBE = 'bend --wall ".120 in" --material "1020 DOM" --method "rotary draw"'


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        (f'{SHAFT} --shaft "11/4 in"', "1 1/4 in"),
        (f'{SHAFT} --shaft "1-1/4 in" --length "301/2 in"', "30 1/2 in"),
        (f'{SHAFT} --shaft "1-1/4 in" --hardness "42 HB"', "42 HRC"),
        (f'{BOLT} --adapter "11/2 in on 12 in"', "1 1/2 in"),
        (f'{BOLT} --into steel --engagement "11/8 in"', "1 1/8 in"),
        (f'{HOT} --gap "11/2 in" --od "3/16 in" --hot-od "2 in"', "1 1/2 in"),
        (f'{HOT} --gap "1 in" --od "3/16 in" --hot-od "13/4 in"', "1 3/4 in"),
        (f'{TUBE} --od "13/4 in" --radius "6 in"', "1 3/4 in"),
        ('bend --od "1-3/4 in" --wall ".120 in" --material steel --method "rotary draw" --radius "55 in"', "5.5 in"),
        ('bend --od "1-3/4 in" --wall ".0120 in" --material steel --method mandrel --radius "6 in"', "0.12 in"),
        ('bend --od "44.5 mm" --wall "0.3 mm" --material steel --method press --radius "160 mm"', "3 mm"),
        ('circuit --current "28 A" --length "121/2 ft" --voltage "12 V"', ""),
        (f'{RUN} --od "21/2 in"', "2 1/2 in"),
        (f'{RUN} --od "2-1/2 in" --fixed "0 in" --flex "61/2 in at 4 in"', "6 1/2 in"),
        ('exhaust gap --to "brake line" --gap "21/2 in"', "2 1/2 in"),
        ('exhaust joint --kind "slip joint" --od "21/2 in"', "2 1/2 in"),
    ],
)
def test_it_is_asked_and_nothing_is_used(line: str, meant: str, capsys: pytest.CaptureFixture[str]) -> None:
    import shlex

    assert main(shlex.split(line)) == 0
    said = " ".join(capsys.readouterr().out.replace("\N{NO-BREAK SPACE}", " ").split())
    assert "ASK FIRST" in said or "NO FIGURE" in said
    assert (f"Did you mean {meant}" if meant else "Read it again") in said


@pytest.mark.parametrize("hardness", ["42 HRC", "390 HB"])
def test_a_usual_hardness_is_not_questioned(hardness: str, capsys: pytest.CaptureFixture[str]) -> None:
    import shlex

    main(shlex.split(f'{SHAFT} --shaft "1-1/4 in" --hardness "{hardness}" --why'))
    assert "no usual hardness" not in capsys.readouterr().out


def test_what_is_usual_beside_its_tube_is_not_questioned(capsys: pytest.CaptureFixture[str]) -> None:
    import shlex

    for line in (
        'bend --od "4 in" --wall ".049 in" --material "304" --method mandrel --radius "6 in"',
        'bend --od "1-3/4 in" --wall ".120 in" --material steel --method roll --radius "55 in"',
        'bend --od "3/16 in" --wall ".028 in" --material steel --method hand --radius "1 in"',
    ):
        main(shlex.split(line))
        assert "Did you mean" not in capsys.readouterr().out, line
