"""The laws of a decision, on random tubes and bends: order and mirrors, one value, habit asks, a stop gives no
marks.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import permutations
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from gaugeblock.answer.check import NOT_OK
from gaugeblock.answer.decision import ASK, MOST_CANDIDATES, NONE, STOP, USE
from gaugeblock.answer.sheet import Sheet
from gaugeblock.job.model import Die, Shop
from gaugeblock.tables.load import refdata
from gaugeblock.tubes.bend.sheet import bend
from gaugeblock.tubes.flare import flare
from gaugeblock.tubes.gauge import gauge
from gaugeblock.tubes.material import material
from gaugeblock.tubes.model import Tube
from gaugeblock.tubes.pipe import pipe
from gaugeblock.tubes.plan.bench import render
from gaugeblock.tubes.plan.plan import work_out
from gaugeblock.tubes.plan.planned import Plan
from gaugeblock.tubes.plan.stock import groups_of

INCH = 0.0254
METAL = {"od": "1 in", "wall": ".120 in", "material": "1020 DOM", "method": "rotary draw", "radius": "4 in"}
SLOW = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def plain(text: str) -> str:
    """A text without the blanks that hold a number and its unit together."""
    return text.replace("\u00a0", " ")


def length(value: float) -> str:
    return f"{value:.3f} in"


def point(x: float, y: float, z: float) -> list[str]:
    return [length(x), length(y), length(z)]


def mirrored(keys: dict[str, Any]) -> dict[str, Any]:
    """The same job on the other side of the vehicle: right is left."""

    def other(p: list[str]) -> list[str]:
        return [p[0], p[1].removeprefix("-") if p[1].startswith("-") else f"-{p[1]}", p[2]]

    def thing(row: dict[str, Any]) -> dict[str, Any]:
        out = {**row, "points": [other(p) for p in row["points"]]}
        if "moves" in row:
            turned = {"left": "right", "right": "left"}
            out["moves"] = [{turned.get(k, k): v for k, v in m.items()} for m in row["moves"]]
        return out

    return {**keys, "points": [other(p) for p in keys["points"]], "obstacles": [thing(t) for t in keys["obstacles"]]}


def numbers(plan: Plan) -> dict[str, list[float]]:
    """The numbers of a plan by quantity, without which way the tube is turned."""
    out: dict[str, list[float]] = {}
    for f in plan.sheet.figures:
        if f.quantity not in ("tube_turn", "seam_position") and f.value is not None:
            out.setdefault(f.quantity, []).append(f.value)
    return {k: sorted(v) for k, v in out.items()}


def alike(one: Plan, other: Plan) -> None:
    a, b = numbers(one), numbers(other)
    assert a.keys() == b.keys()
    for quantity, values in a.items():
        # a place is searched for within 0.01 mm, and a gap is known within that
        assert b[quantity] == pytest.approx(values, rel=1e-9, abs=2e-3), quantity
    results = [sorted((c.name, c.result) for c in p.sheet.checks) for p in (one, other)]
    assert results[0] == results[1]
    assert one.sheet.decision.kind == other.sheet.decision.kind


apart = st.floats(-9, 9).map(lambda v: round(v, 2))
under = st.floats(0.5, 5).map(lambda v: round(v, 2))
pipe_rows = st.builds(
    lambda n, y, z, od, gap, moves: {
        "name": f"pipe {n}",
        "od": length(od),
        "gap": length(gap),
        "points": [point(-20, y, z), point(20, y, z)],
        **({"moves": moves} if moves else {}),
    },
    st.integers(1, 99),
    apart,
    under,
    st.sampled_from([0.5, 1.0, 2.0]),
    st.sampled_from([0.25, 0.5, 1.0]),
    st.sampled_from([[], [{"left": "1/8 in"}], [{"left": "1/16 in", "up": "1/8 in"}, {"right": "1/4 in"}]]),
)
tubes = st.builds(
    lambda top, rise, foot, rows, twist: {
        **METAL,
        "name": "t",
        "datum": "d",
        "points": [
            point(0, -foot - 12, 0),
            point(0, -top - 6, 0),
            point(twist, -top, rise),
            point(twist, top, rise),
            point(0, top + 6, 0),
            point(0, foot + 12, 0),
        ],
        "obstacles": list({r["name"]: r for r in rows}.values()),
    },
    st.floats(3, 9).map(lambda v: round(v, 2)),
    st.floats(3, 9).map(lambda v: round(v, 2)),
    st.floats(9, 14).map(lambda v: round(v, 2)),
    st.lists(pipe_rows, min_size=1, max_size=3),
    st.sampled_from([0.0, 0.0, 2.0]),
)


# ---------------------------------------------------------------- order and mirrors


@SLOW
@given(keys=tubes)
def test_listed_otherwise_the_same_tube(keys: dict[str, Any]) -> None:
    first = work_out(keys)
    for order in list(permutations(keys["obstacles"]))[1:3]:
        rows = [{**r, "moves": r["moves"][::-1]} if "moves" in r else r for r in order]
        alike(first, work_out({**keys, "obstacles": rows}))


@SLOW
@given(keys=tubes)
def test_mirrored_the_mirrored_tube(keys: dict[str, Any]) -> None:
    one, two = work_out(keys), work_out(mirrored(keys))
    alike(one, two)
    turns = [[f.typical for f in p.sheet.figures if f.quantity == "tube_turn"] for p in (one, two)]
    off = [(a + b) % 360 for a, b in zip(*turns, strict=True)]
    assert all(min(x, 360 - x) < 0.05 for x in off)
    seams = [next(f.typical for f in p.sheet.figures if f.quantity == "seam_position") for p in (one, two)]
    assert min(sum(seams) % 180, -sum(seams) % 180) < 0.05  # either side of the tube is as good


def test_two_mirrored_pipes_under_mirrored_points_give_mirrored_bends() -> None:
    """Two pipes alike at both top corners: each corner goes out alike, whichever pipe is named first."""

    def pipe(name: str, y: float) -> dict[str, Any]:
        points = [point(-20, y, 4.9), point(20, y, 4.9)]
        return {"name": name, "od": "1/2 in", "gap": "1/4 in", "points": points}

    keys = {
        **METAL,
        "points": [point(0, y, z) for y, z in ((-22, 0), (-12, 0), (-6, 6), (6, 6), (12, 0), (22, 0))],
        "obstacles": [pipe("left", -5.2), pipe("right", 5.2)],
    }
    one, two = work_out(keys), work_out({**keys, "obstacles": keys["obstacles"][::-1]})
    assert one.shape is not None
    assert two.shape is not None
    assert len(one.shape.regained) == 2  # otherwise there is nothing to be mirrored
    angles = [b.angle for b in one.shape.stick.bends]
    assert angles == pytest.approx(angles[::-1], abs=1e-6)
    assert angles == pytest.approx([b.angle for b in two.shape.stick.bends], abs=1e-6)
    alike(one, two)


# ---------------------------------------------------------------- one value


@SLOW
@given(
    rise=st.floats(5, 12),
    foot=st.floats(4, 15),
    trim=st.floats(0, 2),
    datum=st.sampled_from(["start", "end", "centre"]),
    reads=st.sampled_from(["1/32 in", "1/16 in"]),
)
def test_one_cut_length_on_every_page(rise: float, foot: float, trim: float, datum: str, reads: str) -> None:
    shape = {"rise": length(rise), "angle": "45 deg", "before": length(foot), "after": length(foot * 1.3)}
    keys = {**METAL, "offset": shape, "marks_from": datum, "reads": reads}
    plan = work_out({**keys, "trim": {"start": length(trim + 0.01)}}, die={"radius": "4 in", "grip": "1 in"}, draw=True)
    assume(plan.bench is not None)
    assert plan.marks is not None
    cut = plan.marks.cut
    said = set(re.findall(r"CUT ([0-9 /]+) in \(([0-9.]+)\)", render(plan)))
    stick = next(d.svg for d in plan.sheet.drawings if d.title.endswith("the stick"))
    said |= set(re.findall(r"CUT ([0-9 /]+) in \(([0-9.]+)\)", stick))
    assert said == {(cut.text, f"{cut.typical:.3f}")}  # one text, and the bracket is exact
    (group,) = groups_of([plan])
    assert group.tape.number(group.pieces[0][1]) == cut.text
    bare = work_out(keys, die={"radius": "4 in", "grip": "1 in"}, draw=True)
    order = next(d.svg for d in bare.sheet.drawings if "order" in d.title)
    assert bare.marks is not None
    assert f"along the centre line {bare.given.tape.reads(bare.marks.layout.cut_length)}" in order


# ---------------------------------------------------------------- bends: habit asks, limits are kept


bends = st.fixed_dictionaries(
    {
        "od": st.sampled_from(["3/16 in", "1/2 in", "1 in", "1 1/2 in", "1 3/4 in", "44.5 mm", "2 1/2 in", "3 in"]),
        "wall": st.sampled_from([".028 in", ".065 in", ".118 in", "16 BWG", "1.5 mm"]),
        "material": st.sampled_from(["1020 DOM", "4130 normalized", "304", "steel", "copper", "6061-T6", "409"]),
        "method": st.sampled_from(["rotary draw", "press", "mandrel", "hand", "roll"]),
        "service": st.sampled_from(["vehicle", "vehicle safety cage", "aircraft", "piping"]),
        "radius": st.one_of(st.none(), st.floats(0.6, 12).map(length)),
        "maker_radius": st.sampled_from([None, None, "2 in", "6 in"]),
        "maker_source": st.sampled_from([None, "bender manual, p. 12"]),
        "diameters": st.sampled_from([None, None, "1.02 x .98 in"]),
    }
)


def asked_of(given_: dict[str, Any]) -> Sheet | None:
    try:
        return bend(**given_)
    except (LookupError, ValueError):  # a size with no bore left, a metal that is not bent so: refused
        return None


@settings(max_examples=150, deadline=None)
@given(keys=bends)
def test_a_bend_decides_once_and_by_the_laws(keys: dict[str, Any]) -> None:
    sheet = asked_of(keys)
    assume(sheet is not None)
    assert sheet is not None
    decision = sheet.decision
    whole(sheet)
    if decision.kind == STOP:
        judged = [c for c in sheet.checks if c.name in decision.because]
        assert judged
        for check in judged:  # no habit and no memory stops
            assert check.result == NOT_OK
            for bound in (check.required, check.actual):
                assert bound is None or bound.is_firm
    if decision.kind == USE:
        (figure,) = decision.figures
        least = [f for f in sheet.figures if f.quantity == "bend_radius_minimum" and f is not figure]
        for limit in least:
            service = limit.key.get("service", keys["service"])
            is_habit = limit.evidence.basis == "common practice"
            if service == keys["service"] and not is_habit and not keys["diameters"]:
                assert in_metres(figure) >= in_metres(limit) * (1 - 1e-9)


def in_metres(figure: Any) -> float:
    from gaugeblock import units

    return units.to_base(figure.typical, figure.unit)


def whole(sheet: Sheet) -> None:
    """What every decision has."""
    decision = sheet.decision
    count = len(decision.candidates)
    assert (decision.kind, count) in {(USE, 1), (NONE, 0)} or decision.kind in (ASK, STOP)
    if decision.kind == ASK:
        assert 1 <= count <= MOST_CANDIDATES
        assert all(c.when and c.then for c in decision.candidates)
    if decision.kind in (ASK, STOP, NONE):
        assert decision.do
        assert decision.do.endswith((".", "?"))
    known = {f.id for f in sheet.figures}
    assert {f.id for f in decision.figures} <= known
    names = {c.name for c in sheet.checks}
    assert set(decision.because) <= names
    assert any(c.stops for c in sheet.checks) == (decision.kind == STOP)
    for question in sheet.questions:
        assert key_exists(question.key), question.key
        assert set(question.checks) <= names


def key_exists(key: str) -> bool:
    """Whether a job has this key."""
    first, *rest = key.split(".")
    if first == "shop":
        return rest[0] in Shop.keys if rest[0] != "dies" else len(rest) == 1 or rest[1] in Die.keys
    if first not in Tube.keys:
        return False
    part = Tube.keys[first].part
    return not rest or (part is not None and rest[0] in part.keys)


def test_the_bender_may_form_less_than_a_rule_allows() -> None:
    keys = {"od": "1 in", "wall": ".065 in", "material": "1020 DOM", "method": "rotary draw", "service": "cage"}
    sheet = bend(**keys, maker_radius="2 in", maker_source="bender manual, p. 12")
    assert (sheet.decision.kind, sheet.decision.figures[0].typical) == (USE, pytest.approx(3))
    assert bend(**keys, maker_radius="2 in", radius="2.5 in").decision.kind == STOP


def test_a_press_bend_a_little_under_the_habit_asks_for_a_test_piece() -> None:
    sheet = bend(od="2 in", wall=".065 in", material="409", method="press", radius="5.8 in")
    assert sheet.decision.kind == ASK
    assert not any(c.result == NOT_OK for c in sheet.checks)
    made = bend(od="2 in", wall=".065 in", material="409", method="press", radius="5.8 in", diameters="2.05 x 1.9 in")
    assert made.decision.kind == USE


# ---------------------------------------------------------------- tubes: a stop gives no marks


@settings(max_examples=40, deadline=None)
@given(
    rise=st.floats(0.5, 9),
    angle=st.sampled_from([20, 45, 70]),
    up=st.floats(-1, 4),
    grip=st.sampled_from([None, "1 in", "6 in"]),
    stock=st.sampled_from([None, "20 ft", "20 in"]),
    wall=st.sampled_from([None, ".120 in", "11 BWG", "16 ga"]),
    load=st.sampled_from([None, {"mass": "90 kg"}, {"mass": "2 t", "at": "centre"}]),
)
def test_a_tube_decides_once_and_a_stop_gives_no_marks(
    rise: float, angle: int, up: float, grip: str | None, stock: str | None, wall: str | None, load: Any
) -> None:
    box = {"name": "box", "gap": "1/4 in", "box": {"middle": point(0, 12, up), "size": ["2 in", "2 in", "1 in"]}}
    keys: dict[str, Any] = {
        **METAL,
        "wall": wall,
        "offset": {"rise": length(rise), "angle": f"{angle} deg", "before": "6 in", "after": "6 in"},
        "obstacles": [box],
    }
    if load and load["mass"] != "2 t":
        keys["load"] = load
    plan = work_out(keys, die={"radius": "4 in", "grip": grip}, stock_length=stock, draw=True)
    whole(plan.sheet)
    if plan.sheet.decision.kind == STOP:
        assert plan.bench is None
        assert "CUT" not in render(plan)
        assert not {"bend_mark", "bend_angle_set"} & {f.quantity for f in plan.sheet.figures}
        assert all(d.title.endswith("finished tube") for d in plan.sheet.drawings)
        assert all("STOP" in d.svg for d in plan.sheet.drawings)
        assert groups_of([plan]) == []
    if plan.sheet.decision.kind == USE:
        assert not [c for c in plan.sheet.checks if c.asks]


# ---------------------------------------------------------------- what is implausible is asked


LOAD = {"mass": "20 kg", "at": "centre", "bump_factor": 3, "feet": "pinned", "yield_share": "50 %"}
STRAIGHT = {**METAL, "points": [point(0, -20, 0), point(0, 20, 0)], "load": LOAD}


@pytest.mark.parametrize(
    ("change", "key", "meant"),
    [
        ({"bump_factor": "3 %"}, "load.bump_factor", "3?"),
        ({"feet_in": "30 in"}, "load.feet_in", ""),
        ({"feet_in": "45 in"}, "load.feet_in", ""),
        ({"feet_in": "11/2 in"}, "load.feet_in", "1 1/2 in?"),
        ({"mass": "90000 kg"}, "load.mass", ""),
    ],
)
def test_an_implausible_load_is_asked_about_and_nothing_is_worked_out_from_it(
    change: dict[str, str], key: str, meant: str
) -> None:
    plan = work_out({**STRAIGHT, "load": {**LOAD, **change}})
    assert plan.sheet.decision.kind == ASK
    assert [q.key for q in plan.sheet.questions] == [key]
    assert meant in plain(plan.sheet.questions[0].text)
    assert not any(f.quantity in ("bending_stress", "yield_share") for f in plan.sheet.figures)


@given(whole_=st.integers(1, 9), top=st.integers(1, 15), bottom=st.sampled_from([2, 4, 8, 16]))
def test_a_mixed_number_without_its_blank_is_asked_about(whole_: int, top: int, bottom: int) -> None:
    assume(top < bottom)
    assume(int(f"{whole_}{top}") > bottom)  # else it is a fraction as it stands
    plan = work_out({**STRAIGHT, "load": None, "gap": f"{whole_}{top}/{bottom} in"})
    asked = [q for q in plan.sheet.questions if q.key == "gap"]
    assert len(asked) == 1
    assert f"{whole_} {top}/{bottom} in" in plain(asked[0].text)
    spaced = work_out({**STRAIGHT, "load": None, "gap": f"{whole_} {top}/{bottom} in"})
    assert not [q for q in spaced.sheet.questions if q.key == "gap"]


def test_an_overload_stops_whatever_is_known_of_the_modulus() -> None:
    plan = work_out({**STRAIGHT, "load": {**LOAD, "mass": "900 kg"}})
    assert plan.sheet.decision.kind == STOP
    assert "CUT" not in render(plan)


def test_a_length_that_rests_on_a_doubtful_reading_is_no_candidate() -> None:
    shape = {"rise": "11/2 in", "angle": "20 deg", "before": "8 in", "after": "8 in"}
    plan = work_out({**METAL, "offset": shape}, die={"radius": "4 in", "grip": "1 in", "start_mark": "0 in"})
    assert (plan.sheet.decision.kind, plan.sheet.decision.figures) == (NONE, ())
    assert "1 1/2 in?" in plain(plan.sheet.decision.do)
    assert plan.bench is None
    assert "CUT" not in render(plan)
    sheet = bend(od="1 3/4 in", wall=".120 in", material="1020 DOM", method="rotary draw", radius="51/2 in")
    assert (sheet.decision.kind, [q.key for q in sheet.questions][:1]) == (NONE, ["radius"])


def test_a_bare_bump_factor_is_a_pure_number() -> None:
    one, two = (work_out({**STRAIGHT, "load": {**LOAD, "bump_factor": b}}) for b in (3, "3"))
    assert one.sheet.figure("tube_load") == two.sheet.figure("tube_load")
    assert "20 kg x 3, at the centre" in one.sheet.figure("tube_load").conditions


# ---------------------------------------------------------------- a straight tube; sizes


def test_a_straight_tube_needs_no_radius_and_has_no_bend_checks() -> None:
    bare = {k: v for k, v in STRAIGHT.items() if k not in ("radius", "method")}
    plan = work_out(bare)
    assert plan.sheet.decision.kind == USE
    assert plan.sheet.decision.figures[0].quantity == "cut_length"
    assert not any(word in c.name for c in plan.sheet.checks for word in ("radius", "bend", "grip", "angle", "mark of"))
    by_length = work_out({**{k: v for k, v in bare.items() if k != "points"}, "end": "40 in"})
    assert by_length.sheet.figure("cut_length").typical == pytest.approx(40)
    assert plan.sheet.figure("deflection").typical > 0


@pytest.mark.parametrize(
    ("od", "wall"),
    [
        ("1.75 in", ".118 in"),
        ("1 3/4 in", "11 BWG"),
        ("44.5 mm", "3 mm"),
        ("44.45 mm", "3.048 mm"),
        ("1.752 in", ".121 in"),
    ],
)
def test_a_measured_size_finds_the_rows_of_the_size_it_was_bought_as(od: str, wall: str) -> None:
    keys = {"material": "1020 DOM", "method": "rotary draw", "radius": "5 1/2 in"}
    nominal = bend(od="1 3/4 in", wall=".120 in", **keys)
    measured = bend(od=od, wall=wall, **keys)
    rows = [[f.id for f in s.figures if f.basis == "common practice"] for s in (nominal, measured)]
    assert rows[0] == rows[1]
    assert measured.decision.kind == USE


def test_a_wall_outside_every_tolerance_is_itself() -> None:
    keys = {"material": "1020 DOM", "method": "rotary draw", "radius": "5 1/2 in"}
    rows = [f.key["wall"] for f in bend(od="1 3/4 in", wall=".130 in", **keys).figures if "wall" in f.key]
    assert "0.12 in" not in rows


# ---------------------------------------------------------------- decisions stay useful


EVERYDAY = [
    {"od": "1 3/4 in", "wall": ".120 in", "material": "1020 DOM", "method": "rotary draw", "radius": "5 1/2 in"},
    {"od": "1 1/2 in", "wall": ".120 in", "material": "1020 DOM", "method": "rotary draw", "radius": "4 1/2 in"},
    {"od": "1 in", "wall": ".065 in", "material": "4130 normalized", "method": "rotary draw", "radius": "6 in"},
    {"od": "2 1/2 in", "wall": ".065 in", "material": "304", "method": "mandrel", "radius": "5 in"},
    {"od": "2 1/2 in", "wall": ".065 in", "material": "304", "method": "mandrel", "radius": "3 3/4 in"},
    {"od": "2 in", "wall": ".065 in", "material": "409", "method": "press", "radius": "5 in"},
    {"od": "3/16 in", "wall": ".028 in", "material": "steel", "method": "hand", "radius": "3/4 in"},
    {"od": "1 3/4 in", "wall": ".095 in", "material": "steel", "method": "rotary draw", "service": "cage"},
]


def test_a_tube_with_long_ends_is_cut_though_nobody_measured_the_grip() -> None:
    """Rotary draw grips 2 to 4 x OD by habit: 8 in of a 1 3/4 in tube are enough, 5 in are asked about."""
    metal = {"od": "1 3/4 in", "wall": ".120 in", "material": "1020 DOM", "method": "rotary draw", "radius": "5 1/2 in"}
    kinds = []
    for foot in ("8 in", "5 in"):
        shape = {"first": "20 in", "second": foot, "angle": "20 deg"}
        sheet = work_out({**metal, "single": shape}).sheet
        kinds.append((sheet.decision.kind, [q.key for q in sheet.questions if q.key.endswith("grip")]))
    assert kinds == [(USE, []), (ASK, ["shop.dies.grip"])]


@pytest.mark.parametrize("table", ["gauges", "pipe_sizes", "materials", "flares"])
def test_every_row_of_a_table_answers_with_a_decision(table: str) -> None:
    """The answers of every row of the look-up tables, and what else may be asked of each."""
    asked = {"gauges": gauges, "pipe_sizes": pipes, "materials": materials, "flares": flares}[table]
    count = 0
    for sheet in asked():
        whole(sheet)
        count += 1
    assert count > 20


def rows_of(table: str, *columns: str) -> list[tuple[str, ...]]:
    return list(dict.fromkeys(tuple(r.cells[c] for c in columns) for r in refdata().table(table).rows))


def gauges() -> Iterator[Sheet]:
    for system, number in rows_of("tubes/gauges", "system", "gauge"):
        yield gauge(number, system=system)


def pipes() -> Iterator[Sheet]:
    for nps, schedule in rows_of("tubes/pipe_sizes", "nps", "schedule"):
        yield pipe(nps)
        if schedule != "any":
            yield pipe(nps, schedule=schedule)


def materials() -> Iterator[Sheet]:
    for family, name, product, condition in rows_of("tubes/materials", "family", "material", "product", "condition"):
        words = [w for w in (name if name != "any" else family, product, condition) if w not in ("any", "not stated")]
        try:
            sheet = material(" ".join(words))
        except (LookupError, ValueError):  # the grade, or what decides between its rows, is missing
            continue
        is_guaranteed = any(f.quantity in ("yield_strength", "tensile_strength", "elongation") for f in sheet.figures)
        assert sheet.decision.kind == USE or not is_guaranteed
        yield sheet


def flares() -> Iterator[Sheet]:
    for standard, kind, od in rows_of("tubes/flares", "standard", "flare", "od"):
        if od == "any" or " to " in od or od.startswith(("to ", "over ")):
            continue
        for more in ({}, {"wall": ".028 in"}, {"wall": "3 mm"}, {"port": "3/8-24"}, {"standard": standard}):
            try:
                yield flare(kind, od=od, **more)
            except LookupError:  # no row of this standard
                continue


def test_at_least_half_of_everyday_bends_are_used() -> None:
    kinds = [bend(**keys).decision.kind for keys in EVERYDAY]
    assert 2 * kinds.count(USE) >= len(kinds), kinds
    assert refdata()  # the project's own tables
