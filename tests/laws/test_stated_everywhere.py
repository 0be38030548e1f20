"""What somebody states counts alike in a job, at the bench, from Python and in plain words: one law over every thing.

It is printed as GIVEN, as SHOP with its tool and day where it was measured, beside what the tables have; what is not
plausible is asked about, under its own key.
"""

from __future__ import annotations

import io
import json
import shlex
from contextlib import redirect_stderr, redirect_stdout
from functools import cache
from typing import TYPE_CHECKING, Any

import pytest

import gaugeblock
from gaugeblock import domains
from gaugeblock.cli import main
from gaugeblock.packet.build import build
from gaugeblock.plain.answer import reading_of
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure

TOOL, DAY = "test rig 2", "2026-11-20"


class Thing:
    """One thing that may be stated: its ``key`` and quantity, a usual value and an odd one, and where it is asked.

    ``bench`` is a command without it, ``python`` a public answer with its keys, ``job`` a table with its keys, and
    ``words`` a line of plain words that ends with it (``{}``); ``beside`` is whether the tables have one too.
    """

    def __init__(
        self,
        key: str,
        quantity: str,
        usual: str,
        odd: str,
        *,
        bench: str,
        python: tuple[str, dict[str, Any]],
        job: tuple[str, str],
        words: str,
        option: str = "",
        beside: bool = True,
        measured: bool = True,
        job_key: str = "",
        said: str = "",
    ) -> None:
        self.key, self.quantity, self.usual, self.odd = key, quantity, usual, odd
        self.bench, self.python, self.job, self.words = bench, python, job, words
        self.option = option or key.replace("_", "-")
        self.beside, self.measured = beside, measured
        self.job_key, self.said = job_key or key, said or key

    def __repr__(self) -> str:
        return f"{self.key} of {self.bench.split()[0]}"


BOLT = {"thread": "M10", "grade": "10.9", "condition": "oiled"}
BOLTED: dict[str, Any] = {
    "bench": "torque M10 --grade 10.9 --condition oiled",
    "python": ("torque", BOLT),
    "job": ("fasteners", 'thread = "M10x1.5"\ngrade = "10.9"\ncondition = "oiled"\n'),
}
TUBE = {"od": "1-3/4 in", "wall": ".120 in", "material": "1020 DOM as drawn"}
DIE = {"method": "rotary draw", "radius": "5-1/2 in"}
SHAPE = 'offset = { rise = "6 in", angle = "30 deg", before = "8 in", after = "8 in" }\n'
BENT: dict[str, Any] = {
    "bench": (
        'bend --od "1-3/4 in" --wall ".120 in" --material "1020 DOM as drawn" --method "rotary draw"'
        ' --radius "5-1/2 in" --angle "30 deg"'
    ),
    "python": ("bend", {**TUBE, **DIE, "angle": "30 deg"}),
    "job": (
        "tubes",
        (
            'od = "1-3/4 in"\nwall = ".120 in"\nmaterial = "1020 DOM as drawn"\nmethod = "rotary draw"\n'
            f'radius = "5-1/2 in"\n{SHAPE}'
        ),
    ),
}
STEEL: dict[str, Any] = {
    "bench": (
        'steel 4340 --treatment "quenched and tempered" --temper "800 degF" --shaft "1 in" --torque'
        ' "1000 lbf*ft" --length "30 in"'
    ),
    "python": (
        "steel",
        {
            "grade": "4340",
            "treatment": "quenched and tempered",
            "temper": "800 degF",
            "shaft": "1 in",
            "torque": "1000 lbf*ft",
            "length": "30 in",
        },
    ),
    "job": (
        "driveline",
        (
            'kind = "shaft"\nsteel = "4340"\ntreatment = "quenched and tempered"\ntemper = "800 degF"\n'
            'diameter = "1 in"\ntorque = "1000 lbf*ft"\nlength = "30 in"\n'
        ),
    ),
}
AXLED: dict[str, Any] = {
    "bench": (
        'axle --material 4340 --treatment "quenched and tempered" --temper "800 degF" --diameter "1-1/4 in"'
        ' --length "30 in" --wheel-load "1000 lb" --grip 0.9 --radius "13 in"'
    ),
    "python": (
        "axle",
        {
            "material": "4340",
            "treatment": "quenched and tempered",
            "temper": "800 degF",
            "diameter": "1-1/4 in",
            "length": "30 in",
            "wheel_load": "1000 lb",
            "grip": "0.9",
            "radius": "13 in",
        },
    ),
    "job": (
        "axles",
        (
            'material = "4340"\ntreatment = "quenched and tempered"\ntemper = "800 degF"\ndiameter = "1-1/4 in"\n'
            'length = "30 in"\nwheel_load = "1000 lb"\ngrip = "0.9"\nradius = "13 in"\n'
        ),
    ),
}
PROPELLED: dict[str, Any] = {
    "bench": (
        'shaft --od "3 in" --wall ".083 in" --material steel --length "48 in" --speed "5000 rpm" --torque "900 lbf*ft"'
    ),
    "python": (
        "shaft",
        {
            "od": "3 in",
            "wall": ".083 in",
            "material": "steel",
            "length": "48 in",
            "speed": "5000 rpm",
            "torque": "900 lbf*ft",
        },
    ),
    "job": (
        "shafts",
        (
            'od = "3 in"\nwall = ".083 in"\nmaterial = "steel"\nlength = "48 in"\nspeed = "5000 rpm"\n'
            'torque = "900 lbf*ft"\n'
        ),
    ),
}
LINE = {"fluid": "DOT 4", "fluid_state": "wet", "temperature": "120 degC"}
LINED: dict[str, Any] = {
    "bench": 'heat "DOT 4" --state wet --at "120 degC"',
    "python": ("route", LINE),
    "job": ("lines", 'fluid = "DOT 4"\nfluid_state = "wet"\ntemperature = "120 degC"\n'),
}
FILMED: dict[str, Any] = {
    "bench": (
        'heat "DOT 4" --state wet --beside "exhaust header" --gap "1 in" --od "3/16 in" --hot-od "2 in" --hot'
        ' "400 degC" --hot-finish 0.8 --finish 0.8 --air "40 degC" --speed "5 m/s"'
    ),
    "python": (
        "route",
        {
            "fluid": "DOT 4",
            "fluid_state": "wet",
            "beside": "exhaust header",
            "gap": "1 in",
            "od": "3/16 in",
            "hot_od": "2 in",
            "hot_temperature": "400 degC",
            "hot_finish": "0.8",
            "finish": "0.8",
            "air": "40 degC",
            "speed": "5 m/s",
        },
    ),
    "job": (
        "lines",
        (
            'fluid = "DOT 4"\nfluid_state = "wet"\nbeside = "exhaust header"\ngap = "1 in"\nod = "3/16 in"\n'
            'hot_od = "2 in"\nhot_temperature = "400 degC"\nhot_finish = "0.8"\nfinish = "0.8"\nair = "40 degC"\n'
            'speed = "5 m/s"\n'
        ),
    ),
}
GROWN: dict[str, Any] = {
    "bench": 'growth --length "60 in" --hot "500 degC" --material 304',
    "python": ("growth", {"length": "60 in", "hot": "500 degC", "material": "304"}),
    "job": ("lines", 'anchors = "60 in"\nhot_temperature = "500 degC"\nexhaust_material = "304"\n'),
}
RUN: dict[str, Any] = {
    "bench": (
        'exhaust run --length "100 in" --od "2-1/2 in" --wall ".065 in" --material 304 --hot "900 degF" --fixed'
        ' "0 in" --hangers "20 in, 60 in, 95 in"'
    ),
    "python": (
        "exhaust_run",
        {
            "length": "100 in",
            "od": "2-1/2 in",
            "wall": ".065 in",
            "material": "304",
            "hot": "900 degF",
            "fixed": "0 in",
            "hangers": "20 in, 60 in, 95 in",
        },
    ),
    "job": (
        "exhausts",
        (
            'length = "100 in"\nod = "2-1/2 in"\nwall = ".065 in"\nmaterial = "304"\nhot = "900 degF"\nfixed = "0 in"\n'
            'hangers = [{ at = "20 in" }, { at = "60 in" }, { at = "95 in" }]\n'
        ),
    ),
}
TAPPED: dict[str, Any] = {
    "bench": f'{BOLTED["bench"]} --into aluminium --engagement "20 mm" --insert no',
    "python": ("torque", {**BOLT, "into": "aluminium", "engagement": "20 mm", "insert": "no"}),
    "job": ("fasteners", BOLTED["job"][1] + 'into = "aluminium"\nengagement = "20 mm"\ninsert = "no"\n'),
}
SECTION: dict[str, Any] = {
    "bench": (
        'section --od "1-3/4 in" --wall ".120 in" --material "1020 DOM as drawn" --length "30 in" --torque "200 lbf*ft"'
    ),
    "python": ("section", {**TUBE, "length": "30 in", "torque": "200 lbf*ft"}),
    "job": (BENT["job"][0], BENT["job"][1] + 'section = { length = "30 in", torque = "200 lbf*ft" }\n'),
}
BEND_WORDS = "bend 1-3/4 x .120 1020 dom as drawn rotary draw 5-1/2 radius 30 degrees"
SECTION_WORDS = "section 1-3/4 x .120 1020 dom as drawn 30 in long 200 ft lbs"
SHAFT_WORDS = "4340 quenched and tempered 800 f shaft 1 in 1000 ft lbs 30 in long"
AXLE_WORDS = "4340 quenched and tempered tempered at 800 f 1-1/4 axle shaft 30 in long 300 ft lbs engine"
PROP_WORDS = "driveshaft 3 in x .083 steel 48 in long 900 ft lbs 5000 rpm"
LINE_WORDS, FILM_WORDS = "dot 4 wet at 120 c", "dot 4 wet beside header 1 in away"
GROWTH_WORDS = "growth of 60 in 304 at 500 c"

THINGS = [
    Thing("nut_factor", "nut_factor", "0.16", "1.6", **BOLTED, words="m10 10.9 oiled nut factor {}"),
    Thing("preload", "preload_share", "65 %", "6.5 %", **BOLTED, words="m10 10.9 oiled preload {}"),
    Thing("preload", "preload", "25 kN", "250 kN", **BOLTED, words="m10 10.9 oiled preload {}", beside=False),
    Thing("proof_strength", "proof_strength", "800 MPa", "80 MPa", **BOLTED, words="m10 10.9 oiled proof strength {}"),
    Thing("yield_strength", "yield_strength", "900 MPa", "90 MPa", **BOLTED, words="m10 10.9 oiled yield {}"),
    Thing("tensile_strength", "tensile_strength", "1000 MPa", "100 MPa", **BOLTED, words="m10 10.9 oiled tensile {}"),
    Thing("yield_strength", "yield_strength", "62 ksi", "6 ksi", **BENT, words=f"{BEND_WORDS} yield {{}}"),
    Thing("tensile_strength", "tensile_strength", "78 ksi", "7.8 ksi", **BENT, words=f"{BEND_WORDS} tensile {{}}"),
    Thing("modulus", "modulus", "29 Msi", "29 ksi", **BENT, words=f"{BEND_WORDS} modulus {{}}"),
    Thing("yield_strength", "yield_strength", "62 ksi", "6 ksi", **SECTION, words=f"{SECTION_WORDS} yield {{}}"),
    Thing(
        "shear_modulus",
        "shear_modulus",
        "11.5 Msi",
        "11.5 ksi",
        **SECTION,
        words=f"{SECTION_WORDS} shear modulus {{}}",
        beside=False,
    ),
    Thing("yield_strength", "yield_strength", "190 ksi", "19000 ksi", **STEEL, words=f"{SHAFT_WORDS} yield {{}}"),
    Thing("shear_modulus", "shear_modulus", "11 Msi", "11 ksi", **STEEL, words=f"{SHAFT_WORDS} shear modulus {{}}"),
    Thing("yield_strength", "yield_strength", "190 ksi", "19000 ksi", **AXLED, words=f"{AXLE_WORDS} yield {{}}"),
    Thing("shear_modulus", "shear_modulus", "11 Msi", "11 ksi", **AXLED, words=f"{AXLE_WORDS} shear modulus {{}}"),
    Thing("modulus", "modulus_of_elasticity", "29 Msi", "29 ksi", **PROPELLED, words=f"{PROP_WORDS} modulus {{}}"),
    Thing(
        "yield_strength",
        "yield_strength",
        "60 ksi",
        "60 psi",
        **PROPELLED,
        words=f"{PROP_WORDS} yield {{}}",
        beside=False,
    ),
    Thing(
        "tapped_strength",
        "tapped_strength",
        "240 MPa",
        "24000 MPa",
        **TAPPED,
        words="m10 10.9 oiled 20 mm deep into aluminium of {}",
        beside=False,
    ),
    Thing("expansion", "expansion_coefficient", "17.3 um/(m*K)", "173 um/(m*K)", **RUN, words=""),
    Thing("cold_end", "cold_end", "10 degC", "1000 degC", **RUN, words="", beside=False),
    Thing(
        "fluid_limit",
        "boiling_point_minimum",
        "150 degC",
        "15000 degC",
        **LINED,
        words=f"{LINE_WORDS} limit {{}}",
        said="limit",
    ),
    Thing(
        "margin",
        "temperature_margin",
        "30 degC",
        "3000 degC",
        **LINED,
        words=f"{LINE_WORDS} margin {{}}",
        beside=False,
    ),
    Thing(
        "film",
        "film_coefficient",
        "20 W/(m**2*K)",
        "20000 W/(m**2*K)",
        **FILMED,
        words=f"{FILM_WORDS} film coefficient {{}}",
        beside=False,
    ),
    Thing(
        "expansion",
        "expansion_coefficient",
        "17.3 um/(m*K)",
        "173 um/(m*K)",
        **GROWN,
        words=f"{GROWTH_WORDS} coefficient {{}}",
    ),
    Thing(
        "cold_end",
        "cold_end",
        "10 degC",
        "1000 degC",
        **GROWN,
        words=f"{GROWTH_WORDS} from {{}}",
        beside=False,
    ),
]


@cache
def of_python(thing: Thing, value: str) -> Sheet:
    name, given = thing.python
    return getattr(gaugeblock, name)(**{**given, thing.key: value})  # type: ignore[no-any-return]


@cache
def of_job(thing: Thing, value: str) -> Sheet:
    table, block = thing.job
    text = f'[[{table}]]\nname = "x"\n{block}{thing.job_key} = {json.dumps(value)}\n'
    packet = build(domains.parse_job(text, "job.toml"), refdata(), "test")
    return next(i.sheet for i in packet.items if i.name == "x")


@cache
def said(line: tuple[str, ...]) -> dict[str, Any]:
    out, bad = io.StringIO(), io.StringIO()
    with redirect_stdout(out), redirect_stderr(bad):
        main([*line, "--json"])
    assert out.getvalue(), bad.getvalue()
    return json.loads(out.getvalue())  # type: ignore[no-any-return]


def of_bench(thing: Thing, value: str) -> dict[str, Any]:
    return said((*shlex.split(thing.bench), f"--{thing.option}", value))


def walked(sheet: Sheet) -> list[Figure]:
    return [f for made in (*sheet.figures, *sheet.decision.figures) for f in made.walk()]


def printed(got: object) -> list[dict[str, Any]]:
    """Every figure of a piece of JSON."""
    if isinstance(got, dict):
        own = [got] if "quantity" in got and "basis" in got else []
        return own + [f for v in got.values() for f in printed(v)]
    return [f for v in got for f in printed(v)] if isinstance(got, list) else []


def number(thing: Thing) -> float:
    return float(thing.usual.split(" ")[0])


def all_things(**more: bool) -> list[Thing]:
    return [t for t in THINGS if all(getattr(t, k) == v for k, v in more.items())]


@pytest.mark.parametrize("thing", THINGS, ids=repr)
def test_it_is_given_from_python_in_a_job_and_at_the_bench(thing: Thing) -> None:
    for sheet in (of_python(thing, thing.usual), of_job(thing, thing.usual)):
        found = [f for f in walked(sheet) if f.quantity == thing.quantity and f.basis == "stated"]
        assert [f.trust for f in found if f.typical == number(thing)], (thing, sheet.figures)
        assert {f.trust for f in found} == {"GIVEN"}
    told = printed(of_bench(thing, thing.usual))
    assert [f for f in told if (f["quantity"], f["basis"], f["value"]) == (thing.quantity, "stated", number(thing))]


@pytest.mark.parametrize("thing", THINGS, ids=repr)
def test_python_and_bench_decide_alike(thing: Thing) -> None:
    made, told = of_python(thing, thing.usual).decision, of_bench(thing, thing.usual)["decision"]
    assert (made.kind, made.do) == (told["kind"], told["do"])


@pytest.mark.parametrize("thing", [t for t in THINGS if t.words], ids=repr)
def test_it_is_read_in_plain_words(thing: Thing) -> None:
    value = thing.usual.replace("W/(m**2*K)", "w/m2k").replace("um/(m*K)", "um/m/k").replace("deg", "")
    reading = reading_of(thing.words.format(value), refdata())
    values = reading.values if reading.topic.settle is None else reading.topic.settle(dict(reading.values), refdata())
    assert values[thing.said] == thing.usual


@pytest.mark.parametrize("thing", all_things(measured=True), ids=repr)
def test_what_was_measured_is_the_shops_with_its_tool_and_day(thing: Thing) -> None:
    value = f"{thing.usual} by {TOOL} on {DAY}"
    for sheet in (of_python(thing, value), of_job(thing, value)):
        found = [f for f in walked(sheet) if f.quantity == thing.quantity and f.basis == "measured"]
        assert {(f.trust, f.source) for f in found} == {("SHOP", f"{TOOL}, {DAY}")}, thing
    told = [f for f in printed(of_bench(thing, value)) if f["quantity"] == thing.quantity and f["basis"] == "measured"]
    assert {f["source"] for f in told} == {f"{TOOL}, {DAY}"}


@pytest.mark.parametrize("thing", all_things(beside=True), ids=repr)
def test_what_the_tables_have_stands_beside_it(thing: Thing) -> None:
    for sheet in (of_python(thing, thing.usual), of_job(thing, thing.usual)):
        own = {f.id for made in sheet.figures for f in made.walk() if f.basis == "stated"}
        same = (thing.quantity, f"{thing.quantity}_typical")
        beside = [f for made in sheet.figures for f in (*made.walk(), *made.others) if f.quantity in same]
        assert [f for f in beside if f.id not in own], thing


@pytest.mark.parametrize("thing", THINGS, ids=repr)
def test_what_is_odd_is_asked_under_its_key(thing: Thing) -> None:
    for sheet in (of_python(thing, thing.odd), of_job(thing, thing.odd)):
        assert sheet.decision.kind in ("none", "ask"), (thing, sheet.decision)
        assert [q for q in sheet.questions if q.key.partition(".")[0] in (thing.key, thing.job_key)], (
            thing,
            sheet.questions,
        )
    assert of_bench(thing, thing.odd)["decision"]["kind"] in ("none", "ask")
