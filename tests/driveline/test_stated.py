"""What is stated of a shaft: its own yield strength and shear modulus, beside what the tables have."""

from __future__ import annotations

import pytest

from gaugeblock.answer.decision import ASK, NONE, STOP
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.domains import parse_job
from gaugeblock.driveline.axles.answer import axle
from gaugeblock.driveline.steel import steel
from gaugeblock.errors import InputError, UnitError
from gaugeblock.figure import Figure

SHAFT = {
    "treatment": "quenched and tempered",
    "temper": "800 degF",
    "shaft": "1 in",
    "length": "30 in",
    "torque": "1000 lbf*ft",
}


def ask(**more: str) -> Sheet:
    return steel("4340", **{**SHAFT, **more})


def all_of(sheet: Sheet, quantity: str) -> list[Figure]:
    return [f for f in sheet.figures if f.quantity == quantity]


def test_a_shear_modulus_of_its_own_twists_it_and_stands_beside_the_tables() -> None:
    own, table = ask(shear_modulus="10 Msi by torsion test on 2026-11-20"), ask()
    stated, has = all_of(own, "shear_modulus")
    assert (stated.trust, stated.source, has.basis) == ("SHOP", "torsion test, 2026-11-20", "published")
    twists = [base(all_of(s, "shaft_twist")[0]) for s in (own, table)]
    assert twists[0] / twists[1] == pytest.approx(base(has) / base(stated))


def test_the_tables_own_shear_modulus_stated_gives_their_own_twist() -> None:
    has = all_of(ask(shear_modulus="11 Msi"), "shear_modulus")[1]
    same = ask(shear_modulus=f"{has.text} {has.unit}")
    assert base(all_of(same, "shaft_twist")[0]) == pytest.approx(base(all_of(ask(), "shaft_twist")[0]))


def test_a_measured_yield_strength_is_the_shops_and_can_stop() -> None:
    strong = ask(yield_strength="180 ksi by tensile test on 2026-11-20")
    assert all_of(strong, "yield_strength")[0].trust == "SHOP"
    assert all_of(strong, "yield_strength_typical")[0].basis == "published"
    assert ask(yield_strength="60 ksi by tensile test on 2026-11-20").decision.kind == STOP


def test_the_least_of_a_range_of_yield_strengths_governs() -> None:
    one, many = ask(yield_strength="150 ksi"), ask(yield_strength="150 to 170 ksi")
    factors = [base(all_of(s, "torsional_yield_factor")[0]) for s in (one, many)]
    assert factors[0] == factors[1]


@pytest.mark.parametrize(
    ("more", "said"), [({"shear_modulus": "11 ksi"}, "Did you mean 11 Msi?"), ({"yield_strength": "2 ksi"}, "no usual")]
)
def test_the_implausible_is_questioned(more: dict[str, str], said: str) -> None:
    sheet = ask(**more)
    assert sheet.decision.kind in (ASK, NONE)
    assert said in sheet.decision.do.replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("more", "error"), [({"shear_modulus": "11"}, UnitError), ({"yield_strength": "120 ksi by hand"}, InputError)]
)
def test_what_cannot_be_read_is_refused(more: dict[str, str], error: type[Exception]) -> None:
    with pytest.raises(error):
        ask(**more)


def test_an_axle_shaft_and_a_job_take_the_same_words() -> None:
    own = {"yield_strength": "118 ksi by tensile test on 2026-11-20", "shear_modulus": "11.2 Msi"}
    engine = {"engine_torque": "300 lbf*ft", "converter": "none", "gear": "2.5", "ratio": "4.1"}
    tyre = {"differential": "open", "wheel_load": "1000 lb", "grip": "0.9", "radius": "13 in"}
    sheet = axle(None, diameter="1-1/4 in", length="30 in", **engine, **tyre, **own)
    strengths = {f.trust for f in sheet.decision.figure.walk() if f.quantity == "yield_strength"}
    assert strengths == {"SHOP"}
    assert [f.text for f in all_of(sheet, "shaft_twist")[0].walk() if f.quantity == "shear_modulus"] == ["11.2"]
    text = "[[driveline]]\nname = 'a'\nsteel = '4340'\n" + "\n".join(f"{k} = '{v}'" for k, v in own.items())
    read = parse_job(text).driveline[0]
    assert (str(read.yield_strength), str(read.shear_modulus)) == tuple(own.values())
