"""The laws of a decision, held by every answer of the lines: over every row of their tables, and random lines of a
job.
"""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugeblock import units
from gaugeblock.answer.check import INFORM
from gaugeblock.answer.question import KINDS
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.lines.heat import heat
from gaugeblock.lines.job import Line
from gaugeblock.lines.keys import KEYS
from gaugeblock.lines.paths import route_of_part
from gaugeblock.lines.route import route
from gaugeblock.tables.load import refdata
from gaugeblock.warmth.item import EXPANSION_JOINT, TABLES, is_limit

DATA = refdata()
# What a part stands in service; storage is another thing.
SERVICE_LIMITS = ("temperature_maximum", "boiling_point_minimum", "vapour_lock_temperature_minimum")


def every_item():
    """Each item, class and state of the tables, with what is left out of them."""
    found = {}
    for table in TABLES:
        for row in DATA.table(table).rows:
            item, klass, state = row["item"], row.cells.get("class"), row["state"]
            klass = None if klass in (None, "any") else klass
            state = None if state in ("any", "not stated") else state
            for asked in ((item, klass, state), (item, klass, None), (item, None, None)):
                found[asked] = None
    return list(found)


def degrees(figure):
    return units.convert(figure.least, figure.unit, "degC")


def holds(sheet):
    """What is true of every decision."""
    decision = sheet.decision
    names = {c.name for c in sheet.checks}
    on_sheet = {f.id for f in sheet.figures}
    settled = {name for q in sheet.questions for name in q.checks}
    asks = {c.name for c in sheet.checks if c.asks}
    stops = [c for c in sheet.checks if c.stops]
    assert set(decision.because) <= names
    assert settled <= names
    assert all(
        q.kind in KINDS and q.key in {*KEYS, *Line.keys} and q.text.endswith((".", "?")) for q in sheet.questions
    )
    assert len({q.key for q in sheet.questions}) == len(sheet.questions)
    assert bool(stops) <= (decision.kind == "stop")
    if decision.kind == "use":
        assert not asks
        assert not sheet.questions or all(not q.checks for q in sheet.questions)
        assert decision.figure.evidence.basis != "common practice"
    if decision.kind == "ask":
        assert 1 <= len(decision.candidates) <= 3
        assert all(c.when and c.then for c in decision.candidates)
        assert [degrees(f) for f in decision.figures] == sorted(degrees(f) for f in decision.figures)
        assert sheet.questions
    for subject in ("line material's limit", "fluid's limit"):  # too hot for all that it may be: nothing is left to ask
        hot = [c for c in sheet.checks if c.name.startswith(f"measured: {subject}")]
        if hot and all(c.result == "not ok" and c.required is not None and c.required.is_firm for c in hot):
            assert decision.kind == "stop"
    if decision.kind in ("use", "ask"):
        assert asks <= settled
        assert {f.id for f in decision.figures} <= on_sheet
        for figure in decision.figures:
            assert is_limit(figure, DATA)
            assert figure.side == "max" or figure.quantity in SERVICE_LIMITS[1:]
            assert figure.basis != "derived"
    if decision.kind != "use":
        assert decision.do
    for check in stops:
        assert check.is_firm
    for check in sheet.checks:
        if check.bears != INFORM:
            behind = [b.figure for b in (check.required, check.actual) if b is not None and b.figure is not None]
            assert not [f for b in behind for f in b.walk() if f.id.startswith("lines/heat_sources")]


@pytest.mark.parametrize("table", TABLES)
def test_every_item_of_a_table_decides_by_the_laws(table):
    for item, klass, state in every_item():
        if not any(r["item"] == item for r in DATA.table(table).rows):
            continue
        for at in (None, "-80 degC", "20 degC", "100 degC", "154 degC", "1300 degC"):
            try:
                sheet = heat(item, klass=klass, state=state, at=at)
            except Ambiguous:
                continue
            holds(sheet)
            if sheet.decision.kind == "use":
                limits = [f for f in sheet.figures if f.quantity in SERVICE_LIMITS]
                assert all(degrees(sheet.decision.figure) <= degrees(f) * 1.02 for f in limits), (item, klass, state)
            if at == "1300 degC":
                assert sheet.decision.kind != "use"


def test_a_range_of_information_is_never_a_limit():
    for item, klass, state in every_item():
        try:
            figures = heat(item, klass=klass, state=state).decision.figures
        except (Ambiguous, LookupMiss):
            continue
        assert all(DATA.quantity(f.quantity)["may"] == "limit" for f in figures)


ITEMS = sorted({r["item"] for r in DATA.table("lines/materials").rows})
CLASSES = sorted({r["class"] for r in DATA.table("lines/materials").rows} - {"any", EXPANSION_JOINT})
FLUIDS = sorted({r["item"] for t in TABLES[1:] for r in DATA.table(t).rows})
SPANS = {
    "od": ["3/16 in", "8 mm", "3/8 in"],
    "wall": ["0.028 in", "1 mm", "0.2 in"],
    "length": ["9 ft", "1 m"],
    "pressure": ["1200 psi", "60 psi", "20000 psi"],
    "factor": ["4"],
    "factor_on_burst": ["4"],
    "factor_on_yield": ["3"],
    "tensile_strength": ["50 ksi"],
    "line_limit": ["120 degC"],
    "fluid_limit": ["500 degF"],
    "gap": ["1/4 in", "2 in", "40 mm", "0 in"],
    "temperature": ["60 degC", "150 degC", "300 degF", "250 degC"],
    "hot_od": ["2 1/4 in"],
    "hot_temperature": ["300 to 450 degC", "400 degC"],
    "air": ["30 to 50 degC"],
    "soak_air": ["60 to 90 degC", "80 degC"],
    "speed": ["3 to 10 m/s"],
    "sleeve": ["2 mm"],
    "flow_temperature": ["40 degC"],
    "anchors": ["60 in"],
    "hose_length": ["16 in"],
    "droop": ["14 in", "17 in"],
    "lock": ["13 in"],
}
WORDS = {
    "service": list(KEYS["service"].choices),
    "material": [*ITEMS, "brake tube", "unobtainium"],
    "class": [*CLASSES, "R99"],
    "state": ["continuous", "intermittent"],
    "fluid": [*FLUIDS, "DOT 4", "petrol", "lemonade"],
    "fluid_state": ["wet", "dry", "soggy"],
    "marked_for": ["E10", "gasoline"],
    "beside": ["exhaust header", "exhaust pipe", "muffler"],
    "temperature_by": list(KEYS["temperature_by"].choices),
    "side": list(KEYS["side"].choices),
    "shield": list(KEYS["shield"].choices),
    "hot_finish": ["0.6 to 0.9", "stainless steel: typical, highly oxidised", "titanium: blue"],
    "finish": ["0.5 to 0.9"],
    "shield_finish": ["0.3"],
    "sleeve_finish": ["0.8"],
    "jurisdiction": ["US Maryland", "Australia NSW", "Atlantis"],
    "flare": ["45 deg double", "bubble"],
    "seat": ["45 deg", "37 deg"],
    "nut": ["3/8-24", "M10x1.0"],
    "port": ["3/8-24", "M10x1"],
    "exhaust_material": ["carbon steel", "409"],
    "line_limit_from": ["hose maker's sheet, page 3", "hose maker's sheet"],
}


def lines_of_a_job():
    """Lines with any of their keys."""
    pools = {**SPANS, **WORDS}
    return st.fixed_dictionaries({}, optional={key: st.sampled_from(pool) for key, pool in pools.items()})


def part(keys, name="line"):
    refused = []
    made = Line.read({"name": name, **keys}, (), refused)
    assert not refused
    return made


@settings(max_examples=400, deadline=None)
@given(lines_of_a_job())
def test_every_line_decides_by_the_laws(keys):
    sheet = route_of_part(part(keys), data=DATA)
    holds(sheet)
    if sheet.decision.kind == "use":
        limits = [f for f in sheet.figures if f.quantity in SERVICE_LIMITS and f.key.get("class") != EXPANSION_JOINT]
        assert all(degrees(sheet.decision.figure) <= degrees(f) * 1.02 for f in limits)
        assert not ({"material", "fluid"} & {q.key for q in sheet.questions})


@pytest.mark.parametrize("fluid", FLUIDS)
def test_what_is_too_hot_for_all_that_is_open_stops(fluid):
    stopped = 0
    for item in (*ITEMS, *CLASSES):
        for at in ("150 degC", "250 degC", "500 degC"):
            sheet = route_of_part(part({"material": item, "fluid": fluid, "temperature": at}), data=DATA)
            holds(sheet)
            stopped += sheet.decision.kind == "stop"
    assert stopped


@settings(max_examples=100, deadline=None)
@given(lines_of_a_job(), st.randoms(use_true_random=False))
def test_the_order_of_the_keys_changes_nothing(keys, chance):
    shuffled = list(keys.items())
    chance.shuffle(shuffled)
    one, other = (route_of_part(part(k), data=DATA) for k in (keys, dict(shuffled)))
    assert one.as_dict() == other.as_dict()


def mirrored(points):
    return [[x, y.removeprefix("-") if y.startswith("-") else f"-{y}", z] for x, y, z in points]


def random_path(chance, side):
    x, points = 0, []
    for _ in range(chance.randint(2, 4)):
        points.append([f"{x} in", f"{side * chance.randint(1, 12)} in", f"{chance.randint(0, 8)} in"])
        x += chance.randint(10, 20)
    return points


def decided(keys):
    sheet = route_of_part(part(keys), data=DATA)
    gap = next((f for f in sheet.figures if f.quantity == "gap"), None)
    return sheet.decision.as_dict(), None if gap is None else gap.typical, [c.result for c in sheet.checks]


@pytest.mark.parametrize("seed", range(12))
def test_a_mirror_and_the_other_way_round_give_the_same_decision_and_gap(seed):
    chance = random.Random(seed)
    line, hot = random_path(chance, 1), random_path(chance, -1)
    keys = {
        "service": "brake",
        "material": "brake tube",
        "fluid": "DOT 4",
        "fluid_state": "wet",
        "od": "3/16 in",
        "hot_temperature": "300 to 450 degC",
        "hot_finish": "0.8",
        "finish": "0.8",
        "soak_air": "60 to 90 degC",
    }

    def of(a, b):
        return decided({**keys, "points": a, "hot": {"name": "pipe", "od": "2 in", "points": b}})

    decision, gap, results = of(line, hot)
    for other in (of(mirrored(line), mirrored(hot)), of(line[::-1], hot), of(line, hot[::-1])):
        assert (other[0], other[2]) == (decision, results)
        assert other[1] == pytest.approx(gap, abs=0.0021)


IMPLAUSIBLE = [
    ("temperature", "2000 degC"),
    ("hot_temperature", "4000 degC"),
    ("gap", "3 m"),
    ("pressure", "1200 bar"),
    ("hot_finish", "0.001"),
    ("air", "400 degC"),
    ("speed", "300 m/s"),
    ("sleeve", "3 in"),
    ("od", "40 in"),
]


@pytest.mark.parametrize(("key", "typed"), IMPLAUSIBLE)
def test_what_is_implausible_is_questioned_and_never_used(key, typed):
    keys = {"service": "brake", "material": "brake tube", "fluid": "DOT 4", "fluid_state": "wet", "side": "other side"}
    plain = route_of_part(part(keys), data=DATA)
    assert plain.decision.kind == "use"
    sheet = route_of_part(part({**keys, key: typed}), data=DATA)
    holds(sheet)
    assert sheet.decision.kind in ("ask", "stop")
    assert key in [q.key for q in sheet.questions]


@pytest.mark.parametrize(
    ("keys", "key", "words"),
    [
        ({"temperature": "500 degC", "hot_temperature": "450 degC"}, "temperature", "hotter than the hot part"),
        ({"temperature": "20 degC", "soak_air": "60 to 90 degC"}, "temperature", "colder than the air"),
        ({"soak_air": "290 degC", "hot_temperature": "250 to 450 degC"}, "soak_air", "as hot as the hot part"),
    ],
)
def test_what_is_senseless_beside_its_neighbours_is_questioned(keys, key, words):
    sheet = route("brake", material="brake tube", fluid="DOT 4", fluid_state="wet", **keys)
    assert [q for q in sheet.questions if q.key == key and words in q.text]


BRAKE = {"service": "brake", "material": "brake tube"}
RAIL = {"beside": "exhaust pipe", "side": "other side"}
EVERYDAY = [
    {**BRAKE, "fluid": "DOT 4", "fluid_state": "wet"},
    {**BRAKE, **RAIL, "fluid": "DOT 3", "fluid_state": "wet"},
    {**BRAKE, "fluid": "DOT 5.1", "fluid_state": "wet", "beside": "exhaust pipe", "temperature": "180 degF"},
    {"service": "fuel feed", "material": "SAE J30 R9", "fluid": "petrol", "temperature": "150 degF"},
    {"service": "fuel return", "material": "SAE J30 R7", "fluid": "diesel", "beside": "muffler", "shield": "flat open"},
    {"service": "fuel feed", "material": "brazed steel tube", "fluid": "petrol", "gap": "4 in"},
    {**BRAKE, "fluid": "DOT 4"},
    {"service": "coolant", "material": "EPDM", "fluid": "coolant, ethylene glycol"},
]


def test_at_least_half_of_everyday_lines_end_in_a_figure_to_use():
    kinds = [route(**keys).decision.kind for keys in EVERYDAY]
    assert kinds.count("use") >= len(kinds) / 2


@pytest.mark.parametrize("soak", [None, "60 to 90 degC", "100 to 140 degC"])
@pytest.mark.parametrize("gap", ["1.5 in", "3 in", "6 in"])
@pytest.mark.parametrize("fluid", ["DOT 4", "DOT 3"])
def test_a_line_is_told_of_its_hottest_case(fluid: str, gap: str, soak: str | None) -> None:
    sheet = route(
        "brake",
        material="brazed double-wall steel tube",
        od="3/16 in",
        fluid=fluid,
        fluid_state="wet",
        beside="exhaust pipe",
        gap=gap,
        hot_od="2 in",
        hot_temperature="350 to 420 degC",
        hot_finish="0.7 to 0.8",
        finish="0.3 to 0.5",
        air="40 to 50 degC",
        speed="3 to 10 m/s",
        soak_air=soak,
    )
    cases = [f for f in sheet.figures if f.quantity == "line_temperature"]
    hottest = max(cases, key=lambda f: f.high)
    told = f"{hottest.key['case']}: estimated {hottest.low:.0f} to {hottest.high:.0f}".casefold()
    candidates = sheet.decision.candidates
    if sheet.decision.kind != "stop":
        assert candidates
        assert all(told in f"{c.then} {sheet.decision.do}".casefold() for c in candidates)
