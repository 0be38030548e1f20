"""The printed formula gives the printed number on the printed inputs, for every derived figure."""

from __future__ import annotations

import csv
import math
import re
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugeblock.answer.sheet import figure_dict
from gaugeblock.answer.worked import formula, worked
from gaugeblock.errors import DataError, LookupMiss
from gaugeblock.lookup import look_up
from gaugeblock.tables.catalogue import TABLES, keys_of, refdata_folder
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import refdata
from laws import corpus

if TYPE_CHECKING:
    from gaugeblock.figure import Figure

with (Path(refdata_folder()) / "formulas.csv").open(encoding="ascii") as handle:
    RULES = sorted({r["name"] for r in csv.DictReader(handle) if not r["until"]})
DATA = refdata()
PROCEDURES = [r for r in RULES if formula(r, DATA).expression is None]
EXPRESSIONS = [r for r in RULES if r not in PROCEDURES]
DIGITS = 1e-9

# Rules that code names and that no question of the corpus reaches.
UNREACHED = {"nominal_diameter_from_designation": "every thread of the tables has its major diameter"}


def differences(figure: Figure) -> str:
    """How a figure differs from its rule on its inputs; blank when it does not, or the rule is a procedure."""
    try:
        got = worked(figure, DATA)
    except DataError as error:
        return f"{figure.id}: {error.why}"
    if got is None:
        return ""
    if (
        formula(figure.rule.name, DATA).gives != ("any",)
        and figure.quantity not in formula(figure.rule.name, DATA).gives
    ):
        return f"{figure.id}: its rule does not give {figure.quantity}"
    for name, mine, printed in zip(("value", "low", "high"), got, (figure.value, figure.low, figure.high), strict=True):
        if mine is None and printed is None:
            continue
        if mine is None or printed is None or not math.isclose(mine, printed, rel_tol=DIGITS, abs_tol=1e-10):
            return f"{figure.id}: {name} {printed} {figure.unit} is printed, its formula gives {mine}"
    return ""


@pytest.mark.parametrize("rule", EXPRESSIONS)
def test_the_printed_formula_gives_the_printed_number(rule: str) -> None:
    wrong = [text for figure in corpus.figures().get(rule, []) if (text := differences(figure))]
    assert wrong == []


@pytest.mark.parametrize("rule", PROCEDURES)
def test_a_procedure_says_why_it_is_one_and_prints_what_went_in(rule: str) -> None:
    assert formula(rule, DATA).reason
    if rule not in UNREACHED:
        assert all(figure.inputs for figure in corpus.figures().get(rule, []))


def test_every_rule_is_an_expression_or_a_procedure() -> None:
    counts = Counter(
        "procedure" if r in PROCEDURES else "evaluated" if r in corpus.figures() else "no figure" for r in RULES
    )
    assert counts.total() == len(RULES)
    assert counts["procedure"] <= 30  # beams on hangers and the curve of a cope are no arithmetic
    assert counts["evaluated"] >= 80


def test_every_rule_that_code_names_is_reached() -> None:
    import gaugeblock

    code = "\n".join(p.read_text(encoding="utf-8") for p in Path(gaugeblock.__file__).parent.rglob("*.py"))
    quantities = DATA.listing("quantities")
    named = {r for r in RULES if re.search(rf"""["']{r}["']""", code) and r not in quantities}
    assert named - set(corpus.figures()) == set(UNREACHED)


# Between the printed points of every table


INTERPOLATED = [t for t in TABLES if any(k.match == "interpolated" for k in keys_of(t))]


@given(st.data())
@settings(max_examples=300, suppress_health_check=[HealthCheck.too_slow])
def test_a_figure_between_two_printed_points_of_any_table(data: st.DataObject) -> None:
    table = data.draw(st.sampled_from(INTERPOLATED))
    rows = [r for r in DATA.table(table).rows if not r.standing]
    row = data.draw(st.sampled_from(rows))
    keys = {}
    for key, cell in zip(keys_of(table), row.key, strict=True):
        point = parse_interval(cell) if key.match == "interpolated" else None
        if point is None or point.low is None:
            keys[key.name] = cell
        else:
            number = data.draw(
                st.decimals(cell.split(" ")[0], None, places=2).filter(lambda n: n.is_finite() and abs(n) < 10**5)
            )
            keys[key.name] = f"{number} {point.unit}".removesuffix(" 1")
    try:
        figure = look_up(table, row["quantity"], data=DATA, **keys)
    except LookupMiss:
        return
    for printed in corpus.derived(figure_dict(figure, DATA)):
        assert differences(corpus.figure_of(printed)) == ""


# Any question of the commands


def cells(table: str, *columns: str) -> st.SearchStrategy[tuple[str, ...]]:
    """Key cells that stand together in a row of a table."""
    found = {tuple(r.cells[c] for c in columns) for r in DATA.table(table).rows}
    return st.sampled_from(sorted(found))


def maybe(option: str, *values: str) -> st.SearchStrategy[str]:
    """An option with one of some values, or nothing."""
    return st.sampled_from(["", *(f'--{option} "{v}"' for v in values)])


def sized(unit: str, low: float, high: float, places: int = 3) -> st.SearchStrategy[str]:
    return st.floats(low, high).map(lambda v: f"{v:.{places}f} {unit}")


THREADS = cells("fasteners/threads", "thread").map(lambda c: c[0])
GRADES = cells("fasteners/grades", "standard", "grade").map(" ".join)
TORQUE = st.builds(
    'torque "{}" --grade "{}" {} {} {} {} {} {} {} {} {} {} {}'.format,
    THREADS,
    GRADES,
    maybe("condition", "dry", "oiled", "zinc plated", "anti-seize"),
    maybe("joint", "permanent"),
    maybe("into", "aluminium", "steel", "cast iron"),
    maybe("engagement", "3/4 in", "20 mm"),
    maybe("prevailing", "9 lbf*in", "2 N*m"),
    maybe("wrench", "5 to 150 lbf*ft by 1"),
    maybe("nut-factor", "0.16", "0.14 to 0.2", "0.16 (0.14 to 0.18) by load cell on 2026-11-20"),
    maybe("preload", "70 %", "4000 lbf"),
    maybe("tensile-strength", "150 ksi", "900 MPa"),
    maybe("tapped-strength", "30 ksi", "250 to 300 MPa"),
    st.sampled_from(["", '--grip "2 in" --grip-shank "1 in" --grip-metal aluminium --grip-load "500 lbf"']),
)
STEEL = st.builds(
    'steel "{0[0]}" --treatment "{0[1]}" {1} --shaft "{2}" {3} --torque "{4}" --length "{5}" {6}'.format,
    cells("driveline/steels", "steel", "treatment"),
    maybe("temper", "800 degF", "600 degF", "1000 degF"),
    sized("in", 0.5, 3.0),
    maybe("bore", "1/4 in", "6 mm"),
    sized("lbf*ft", 10.0, 3000.0, 1),
    sized("in", 5.0, 60.0, 2),
    maybe("hardness", "42 HRC", "302 HB", "150 HB"),
)
HARDNESS = st.builds("hardness {:.1f} {}".format, st.floats(20, 600), st.sampled_from(["HRC", "HB"]))
SPLINE = st.builds(
    "spline {} {} {} {} {} {}".format,
    st.sampled_from(["12/24", "16/32", "24/48", "5/10"]),
    st.integers(6, 60),
    maybe("root", "fillet root"),
    maybe("fit", "major diameter fit"),
    maybe("torque", "900 lbf*ft", "700 N*m"),
    maybe("bore", "1/4 in"),
)
JOINT = st.builds(
    'joint "{}" "{}" {} {}'.format,
    sized("deg", 0.1, 30, 2),
    sized("deg", 0, 30, 2),
    maybe("top", "2 deg"),
    maybe("phasing", "in phase"),
)
CIRCUIT = st.builds(
    'circuit --current "{}" --length "{}" --voltage "12 V" {} {} {} {} {} {} {}'.format,
    sized("A", 0.1, 250.0, 2),
    sized("m", 0.2, 12.0, 2),
    maybe("drop", "3 %", "0.4 V"),
    maybe("insulation", "GPT", "GXL", "105 degC"),
    maybe("air", "45 degC", "by the engine", "150 degF"),
    maybe("bundle", "1", "5"),
    maybe("return", "wire", "body"),
    maybe("wire", "10 AWG", "6 mm2"),
    maybe("wires", "2"),
)
RUN = st.builds(
    'exhaust run --length "100 in" --od "2-1/2 in" --wall "{}" --material "{}" --hot "{}" --fixed "{}" --hangers'
    ' "20 in, {}, 90 in" {} {} {} {}'.format,
    sized("in", 0.04, 0.1, 3),
    st.sampled_from(["304", "409", "321", "mild steel"]),
    sized("degF", 150, 1000, 0),
    sized("in", 0.0, 100.0, 1),
    sized("in", 21.0, 89.0, 1),
    maybe("hanger-length", "3 in", "75 mm"),
    maybe("masses", "12 lb at 80 in", "6 kg at 30 in, 4 lb at 60 in"),
    maybe("flex", "6 in at 4 in"),
    maybe("rate", "150 lbf/in"),
)
BEND = st.builds(
    'bend --od "{}" --wall "{}" --material "{}" --method "rotary draw" --radius "{}" --angle "{}" {}'.format,
    sized("in", 0.75, 3.0),
    sized("in", 0.035, 0.2),
    st.sampled_from(["1020 DOM", "1020", "4130", "304 stainless", "steel", "6061"]),
    sized("in", 2.0, 12.0),
    sized("deg", 5, 180, 1),
    maybe("service", "vehicle safety cage"),
)
HEAT = st.builds(
    'heat "brake tube" --beside "exhaust header" '
    '--gap "{}" --od "3/16 in" --hot-od "2 in" --hot "{}" {} --finish 0.8 {} {} {}'.format,
    sized("in", 0.2, 6.0, 2),
    sized("degC", 200, 800, 0),
    maybe("hot-finish", "stainless steel: typical, highly oxidised", "0.6 to 0.9"),
    maybe("shield", "flat open"),
    maybe("film", "8 to 25 W/(m**2*K)", "12 W/(m**2*K)"),
    maybe("margin", "20 degC", "40 degF"),
)


@pytest.mark.parametrize(
    "questions",
    [TORQUE, STEEL, HARDNESS, SPLINE, JOINT, CIRCUIT, RUN, BEND, HEAT],
    ids=["torque", "steel", "hardness", "spline", "joint", "circuit", "run", "bend", "heat"],
)
def test_any_question_is_answered_by_its_printed_formulas(questions: st.SearchStrategy[str]) -> None:
    answered = []

    @given(questions)
    @settings(max_examples=60, database=None, suppress_health_check=list(HealthCheck))
    def ask(line: str) -> None:
        got = corpus.answer(line)
        if got is None:
            return
        found = list(corpus.derived(got))
        answered.append(len(found))
        assert [text for f in found if (text := differences(corpus.figure_of(f)))] == []

    ask()
    assert len(answered) >= 10
    assert sum(answered) >= 10
