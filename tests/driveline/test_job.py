"""Items of a job: whatever is wrong with one of them is its question, and the packet is made."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from driveline.forms import keeps_form
from gaugeblock import domains
from gaugeblock.driveline import page
from gaugeblock.driveline.axles.job import AxleShaft
from gaugeblock.driveline.job import Driveline, Joints, Splines
from gaugeblock.driveline.propshafts.job import PropellerShaft
from gaugeblock.tables.load import refdata

MODELS = {
    "driveline": Driveline,
    "axles": AxleShaft,
    "shafts": PropellerShaft,
    "joints": Joints,
    "splines": Splines,
}
MAKER = {f"maker.{k}" for k in ("value", "low", "high", "source", "place")} | {"maker"}
LENGTHS = st.sampled_from(["1 in", "30 mm", "0.01 in", "40 in", "1-1/4 in"])
TORQUES = st.sampled_from(["1500 lbf*ft", "9 N*m", "20 lbf*in", "90000 lbf*ft"])
HARD = st.sampled_from(["42 HRC", "HRC 20", "300 HB", "99 HRC", "forty"])
FINDINGS = st.sampled_from(["0.007 in", "-0.006 in", "pattern on the toe", "12 lbf*in", "0.2 mm", "5 deg"])
ANGLES = st.sampled_from(["3 deg", "-2 deg", "0 deg", "50 deg", "170 deg"])
VALUES = {
    "axles": {
        "material": st.sampled_from(["4340", "1541", "A434", "9999", "1550"]),
        "treatment": st.sampled_from(["Oil quenched and tempered", "quenched and tempered to class BD", "nonsense"]),
        "temper": st.sampled_from(["800 degF", "100 degF"]),
        **dict.fromkeys(("diameter", "bore", "length", "section", "case_depth", "fillet", "shoulder"), LENGTHS),
        "spline": st.sampled_from(["24/48", "7/7", "nonsense"]),
        "engine_torque": st.sampled_from(["300 lbf*ft", "400 N*m", "9000 lbf*ft"]),
        "converter": st.sampled_from(["none", "2.1", "90", "some"]),
        **dict.fromkeys(("gear", "transfer", "ratio", "bias"), st.sampled_from(["2.5", "1", "30"])),
        "differential": st.sampled_from(["open", "limited slip", "locked"]),
        "lifted": st.sampled_from(["yes", "no"]),
        **dict.fromkeys(("wheel_load", "axle_load"), st.sampled_from(["1000 lb", "500 kg", "9 kN", "heavy"])),
        **dict.fromkeys(("height", "wheelbase", "radius"), st.sampled_from(["13 in", "100 in", "2.5 m"])),
        "driven": st.sampled_from(["rear", "front"]),
        "grip": st.sampled_from(["0.9", "9"]),
        **dict.fromkeys(("hardness", "core_hardness"), HARD),
        "yield_strength": st.sampled_from(["120 ksi", "800 MPa", "1 psi"]),
        "certificate": st.just("mill sheet 12"),
        "shear_modulus": st.sampled_from(["11.5 Msi", "79 GPa"]),
    },
    "driveline": {
        "kind": st.sampled_from(["shaft", "setup"]),
        "steel": st.sampled_from(["4340", "1541", "9999", "1550", "1050M"]),
        "treatment": st.sampled_from(["Oil quenched and tempered", "cold drawn", "induction hardened", "nonsense"]),
        "temper": st.sampled_from(["800 degF", "425 degC", "100 degF"]),
        **dict.fromkeys(("diameter", "bore", "length", "section", "case_depth"), LENGTHS),
        "torque": TORQUES,
        **dict.fromkeys(("hardness", "core_hardness"), HARD),
        "yield_strength": st.sampled_from(["120 ksi", "800 MPa", "1 psi"]),
        "certificate": st.just("mill sheet 12"),
        "axle": st.sampled_from(["rear", "wide utility truck axle (TM 9-2320-280-34)"]),
        "component": st.sampled_from(["ring gear", "pinion", "side bearings", "boot clamp"]),
        "setting": st.sampled_from(["backlash", "preload", "pattern check", "paint"]),
        "wear": st.sampled_from(["new", "used", "half worn"]),
        **dict.fromkeys(("as_found", "as_left"), FINDINGS),
    },
    "joints": {
        **dict.fromkeys(("angle", "second", "top", "second_top"), ANGLES),
        "phasing": st.sampled_from(["in phase", "wrong phase"]),
        "speed": st.sampled_from(["3000 rpm", "9000 rpm", "1 rpm", "99000 rpm"]),
    },
    "shafts": {
        **dict.fromkeys(("od", "spline_diameter", "slip_in", "engaged", "front_length"), LENGTHS),
        "wall": st.sampled_from(["0.083 in", "2 mm", "3 in"]),
        "material": st.sampled_from(["steel", "aluminium", "cheese"]),
        "modulus": st.sampled_from(["200 GPa", "10 psi"]),
        "density": st.sampled_from(["7.85 g/cm3", "0.098 lb/in3"]),
        "yield_strength": st.sampled_from(["60 ksi", "1 psi"]),
        **dict.fromkeys(("length", "bump", "droop"), st.sampled_from(["48 in", "1200 mm", "47.5 in", "9 in"])),
        **dict.fromkeys(("engine_speed", "speed"), st.sampled_from(["6000 rpm", "900 rpm", "99000 rpm"])),
        "transfer": st.sampled_from(["1", "2.7"]),
        "torque": TORQUES,
        "wind_up": st.sampled_from(["2 deg", "0 deg", "50 deg"]),
        "phasing": st.sampled_from(["in phase", "wrong phase"]),
    },
    "splines": {
        "pitch": st.sampled_from(["24/48", "7/7", "16/32", "parallel side", "nonsense"]),
        "root": st.sampled_from(["flat root", "fillet root"]),
        "fit": st.sampled_from(["side fit", "major diameter fit"]),
        "torque": TORQUES,
        **dict.fromkeys(("bore", "length"), LENGTHS),
        "material": st.sampled_from(["surface hardened, 48 to 53 HRC", "cheese"]),
        "source": st.sampled_from(["engine", "windmill"]),
        "load": st.sampled_from(["uniform load", "heavy"]),
        "cycles": st.sampled_from(["10000 cycles", "many"]),
        "seating": st.sampled_from(["fixed", "flexible"]),
        "misalignment": st.sampled_from(["0.002 in/in", "some"]),
        "revolutions": st.sampled_from(["1000000 revolutions", "all"]),
    },
}
ENDS = st.sampled_from(["0.006 in", "-0.006 in", "0.2 mm", "20 lbf*ft", "15 lbf*in", "3 deg"])


@st.composite
def items(draw: st.DrawFn) -> tuple[str, str]:
    table = draw(st.sampled_from(sorted(VALUES)))
    keys = draw(st.sets(st.sampled_from(sorted(VALUES[table]))))
    if table == "driveline" and draw(st.booleans()):
        side = {"axle", "component", "setting", "wear", "as_found", "as_left"}
        keys = keys & side or side
        keys |= {"component", "setting"}
    elif table == "driveline":
        keys -= {"axle", "component", "setting", "wear", "as_found", "as_left", "kind"}
    if "kind" in keys:
        keys.discard("kind")
    lines = [f'{key} = "{draw(VALUES[table][key])}"' for key in sorted(keys)]
    if table == "axles" and draw(st.booleans()):
        lines += draw(st.sampled_from([["teeth = 3"], ["teeth = 28"], ['parts = ["2 in x 3 in", "1 in x 9 in"]']]))
    if table == "shafts":
        count = draw(st.sampled_from([0, 3, 4]))
        for key in ("shafts_side", "shafts_top", "bump_side", "droop_side") if count else ():
            if key == "shafts_side" or draw(st.booleans()):
                slopes = ", ".join(f'"{draw(ANGLES)}"' for _ in range(count))
                lines.append(f"{key} = [{slopes}]")
        lines += draw(st.sampled_from([[], ['gears = ["3.06", "1"]'], ['gears = ["1"]']]))
    if table == "splines":
        lines.append(f"teeth = {draw(st.sampled_from([3, 35, 120]))}")
    if table == "joints" and draw(st.booleans()):
        lines = [line for line in lines if line.split(" ")[0] in ("phasing", "speed")]
        for view in ("side", "top"):
            slopes = ", ".join(f'"{draw(ANGLES)}"' for _ in range(3))
            lines.append(f"shafts_{view} = [{slopes}]")
    if "component" in keys and draw(st.booleans()):
        ends = draw(st.sets(st.sampled_from(["value", "low", "high"]), min_size=1))
        parts = [f'{end} = "{draw(ENDS)}"' for end in sorted(ends)]
        parts += draw(st.sampled_from([[], ['source = "sheet"'], ['source = "sheet"', 'place = "p. 1"']]))
        lines.append(f"maker = {{ {', '.join(parts)} }}")
    return table, "\n".join([f"[[{table}]]", 'name = "an item"', *lines]) + "\n"


@settings(max_examples=1000, deadline=None)
@given(items())
def test_an_item_of_any_keys_is_decided_and_stops_nothing_else(made: tuple[str, str]) -> None:
    table, text = made
    job = domains.parse_job(text, hooks=domains.hooks(refdata()))
    (given_item,) = getattr(job, table)
    item = page.item(given_item, job.shop, refdata())
    keeps_form(item.sheet, set(MODELS[table].keys) | (MAKER if table == "driveline" else set()))
    assert item.card is not None
    assert item.sheet.as_dict()


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ('steel = "9999"\ntreatment = "cold drawn"', "steel"),
        ('steel = "1550"\ntreatment = "cold drawn"', "steel"),
        ('steel = "4340"\ntreatment = "boiled"', "treatment"),
        ('steel = "4340"\ntreatment = "quenched and tempered"', "temper"),
        ('component = "ring gear"\nsetting = "paint"', "setting"),
        ('component = "boot clamp"\nsetting = "torque"', "component"),
    ],
)
def test_what_the_tables_do_not_know_is_the_items_question(text: str, key: str) -> None:
    job = domains.parse_job(f'[[driveline]]\nname = "x"\n{text}\n', hooks=domains.hooks(refdata()))
    sheet = page.item(job.driveline[0], job.shop, refdata()).sheet
    assert (sheet.decision.kind, [q.key for q in sheet.questions]) == ("none", [key])
