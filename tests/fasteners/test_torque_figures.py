"""The torque sheet: every figure and its JSON, what a missing or odd input does, and what was found wrong once."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

from fasteners.fastener_questions import (
    CONDITIONS,
    DRY5,
    MAKER,
    NO_FACTOR,
    STAINLESS,
    check_of,
    derived_of,
)
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK
from gaugeblock.answer.decision import NONE
from gaugeblock.answer.printing import printed
from gaugeblock.cli import main
from gaugeblock.errors import GaugeblockError, InputError, LookupMiss
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.torque import torque
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import refdata

# --- every figure -----------------------------------------------------------------------------------------------------

QUESTIONS: list[tuple[str, dict[str, str]]] = [
    ("3/8-16", {"grade": "grade 5", "condition": "dry"}),
    ("3/8-16", {"grade": "grade 5", "condition": "oiled"}),
    ("3/8-16", {"grade": "grade 8", "condition": "antiseize", "joint": "permanent"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "given": "25 lbf*ft"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "given": "90 lbf*ft"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "into": "aluminum"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "into": "aluminum", "engagement": "3/4 in"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "into": "steel", "engagement": "0.2 in"}),
    ("3/8-16", {**DRY5, "into": "steel", "engagement": "1 in", "tapped_strength": "60 ksi"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "locknut": "nylon insert"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "locknut": "all-metal", "adapter": "2 in on 12 in"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "prevailing": "12 lbf*in", "wrench": "5 to 80 lbf*ft by 1"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "adapter": "2 in on 12 in at 45 deg"}),
    ("3/8-16", {"grade": "grade 5", "condition": "dry", "wrench": "0 to 250 lbf*in by 10"}),
    ("3/8-16", {"grade": "grade 5", "condition": "zinc plated"}),
    ("3/8-16", {"grade": "grade 5", "condition": "plated"}),
    ("3/8-24", {"grade": "grade 8", "condition": "moly"}),
    ("1/4-20", {"grade": "grade 8", "condition": "dry", "service": "aircraft"}),
    ("1/4-28", {"grade": "grade 5", "condition": "cad"}),
    ("5/16-18", {"grade": "grade 2", "condition": "dry"}),
    ("7/16-14", {"grade": "grade 8", "condition": "black oxide"}),
    ("1/2 x 13", {"grade": "grade 8", "condition": "dry"}),
    ("1/2-13", {"grade": "shcs", "condition": "oiled"}),
    ("1/2-13", {"grade": "B7", "condition": "moly"}),
    ("1/2-20", {"grade": "grade 5", "condition": "ptfe"}),
    ("9/16-12", {"grade": "grade 5", "condition": "zinc waxed"}),
    ("5/8-11", {"grade": "grade 8", "condition": "phosphate"}),
    ("3/4-10", {"grade": "grade 5", "condition": "copper antiseize"}),
    ("3/4-16", {"grade": "grade 8", "condition": "nickel antiseize"}),
    ("7/8-9", {"grade": "grade 5", "condition": "dry"}),
    ("1-8", {"grade": "grade 8", "condition": "dry"}),
    ("1-14", {"grade": "grade 5", "condition": "dry"}),
    ("3/8-16", {"grade": "304 CW1", "condition": "stainless"}),
    ("10-32", {"grade": "A574", "condition": "dry"}),
    ("M6x1", {"grade": "8.8", "condition": "dry"}),
    ("M8x1.25", {"grade": "10.9", "condition": "oiled"}),
    ("M10x1.5", {"grade": "8.8", "condition": "oiled", "into": "cast iron", "engagement": "15 mm"}),
    ("M10x1.25", {"grade": "10.9", "condition": "dry", "given": "60 N*m"}),
    ("M12x1.75", {"grade": "12.9", "condition": "moly"}),
    ("M16x2", {"grade": "8.8", "condition": "dry", "wrench": "40 to 200 N*m by 5"}),
    ("M20x2.5", {"grade": "4.6", "condition": "zinc"}),
    ("M12x1.5", {"grade": "class 8.8", "condition": "zinc and wax"}),
]

FIGURE_KEYS = {
    "id",
    "quantity",
    "value",
    "low",
    "high",
    "unit",
    "side",
    "basis",
    "checked",
    "source",
    "locator",
    "conditions",
    "note",
    "since",
    "key",
    "standing",
    "chosen_by",
    "evidence",
    "rule",
    "inputs",
    "others",
    "printed",
}
CHECK_KEYS = {"name", "subject", "case", "bears", "result", "required", "actual", "margin", "reason"}


def all_figures(rows: list[dict[str, object]]) -> list[dict[str, object]]:
    out = []
    for row in rows:
        out.append(row)
        for part_name in ("inputs", "others"):
            below = row[part_name]
            assert isinstance(below, list)
            out += all_figures(below)
    return out


def test_there_are_forty_different_questions() -> None:
    assert len({json.dumps(q) for q in QUESTIONS}) >= 40


@pytest.mark.parametrize(("size", "options"), QUESTIONS)
def test_every_key_of_the_contract_is_there_and_dumps(size: str, options: dict[str, str]) -> None:
    sheet = torque(size, **options)
    record = json.loads(json.dumps(sheet.as_dict(), allow_nan=False))
    assert set(record) == {"asked", "data_release", "decision", "figures", "checks", "questions", "cautions"}
    assert record["asked"]["thread"] == size
    assert record["figures"]
    for figure in all_figures(record["figures"]):
        assert set(figure) == FIGURE_KEYS
        assert set(figure["evidence"]) == {"basis", "checked", "id"}
        assert figure["rule"] is None or set(figure["rule"]) == {"name", "source", "locator"}
        assert figure["printed"]
        assert figure["basis"] == "derived" or not figure["inputs"]
        for end in ("value", "low", "high"):
            number = figure[end]
            if figure["basis"] == "derived" and number is not None:
                assert number == float(f"{number:.12g}")
    for check in record["checks"]:
        assert set(check) == CHECK_KEYS
        assert check["result"] in (OK, NOT_OK, CANNOT_TELL)
        assert check["reason"]
    for caution in record["cautions"]:
        assert set(caution) == {"text", "severity", "figures", "source"}
        assert caution["severity"] in ("injury", "damage", "note")


@pytest.mark.parametrize(("size", "options"), QUESTIONS)
def test_one_id_is_one_number_and_every_figure_has_evidence(size: str, options: dict[str, str]) -> None:
    sheet = torque(size, **options)
    answers = [f.id for f in sheet.figures]
    assert len(answers) == len(set(answers))
    seen: dict[str, tuple[float | None, float | None, float | None, str]] = {}
    for figure in sheet.figures:
        for below in figure.walk():
            numbers = (below.value, below.low, below.high, below.unit)
            assert seen.setdefault(below.id, numbers) == numbers
            assert below.evidence.basis in ("published", "maker", "measured", "stated", "common practice", "derived")
            assert below.evidence.id


def test_the_same_answer_from_python_and_from_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    for size, options in QUESTIONS[:16]:
        argv = ["torque", size, "--json"]
        for name, value in options.items():
            argv += [f"--{name.replace('_', '-')}", value]
        code = main(argv)
        sheet = torque(size, **options)
        assert json.loads(capsys.readouterr().out) == json.loads(json.dumps(sheet.as_dict()))
        assert code == (1 if sheet.decision.kind == "stop" else 0)


def test_exit_codes_and_empty_streams_in_a_process_of_its_own() -> None:
    def run(*argv: str) -> tuple[int, str, str]:
        done = subprocess.run(
            [sys.executable, "-m", "gaugeblock", *argv], capture_output=True, text=True, check=False, encoding="utf-8"
        )
        return done.returncode, done.stdout, done.stderr

    code, out, err = run("torque", "3/8-16", "--grade", "grade 5", "--condition", "dry")
    assert (code, err) == (0, "")
    assert "31 lbf*ft" in out
    code, out, err = run("torque", "3/8-16", "--grade", "5", "--condition", "dry", "--given", "90 lbf*ft", "--why")
    assert (code, err) == (1, "")
    assert "NOT OK" in out
    code, out, err = run("torque", "3/8-99", "--grade", "5", "--condition", "dry")
    assert (code, out) == (2, "")
    assert "3/8-16 UNC" in err
    code, out, err = run("torque", "3/8-99", "--grade", "5", "--condition", "dry", "--json")
    assert (code, out) == (2, "")
    error = json.loads(err)["error"]
    assert set(error) == {"code", "asked", "where", "why", "nearest", "do"}
    assert "3/8-16 UNC" in error["nearest"]


def test_another_unit_is_printed_and_the_values_stay(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["torque", "3/8-16", "--grade", "5", "--condition", "dry", "--json", "--in", "Nm"]) == 0
    first = json.loads(capsys.readouterr().out)["figures"][0]
    assert (first["value"], first["unit"], first["printed"]) == (31, "lbf*ft", "42 N*m")


def test_an_earlier_release_is_asked_by_name(capsys: pytest.CaptureFixture[str]) -> None:
    argv = ["torque", "3/8-16", "--grade", "5", "--condition", "dry", "--json", "--data-release"]
    assert main([*argv, "0.1.0"]) == 0
    assert json.loads(capsys.readouterr().out)["data_release"] == "0.1.0"
    assert main([*argv, "9.9.9"]) == 2
    assert capsys.readouterr().out == ""


# --- faults found when these tests were written -----------------------------------------------------------------------


def test_an_unknown_service_is_refused() -> None:
    with pytest.raises(LookupMiss):
        torque("3/8-16", **DRY5, service="boat")


@pytest.mark.parametrize("condition", CONDITIONS)
def test_every_condition_that_is_offered_answers(condition: str) -> None:
    grade = "304 CW1" if condition == STAINLESS else "grade 5"
    assert torque("3/8-16", grade=grade, condition=condition).figures


@pytest.mark.parametrize("grade", ["5", "8", "A574", "B7"])
@pytest.mark.parametrize("word", ["stainless", "dry stainless"])
def test_stainless_threads_of_a_plain_steel_grade_are_refused(word: str, grade: str) -> None:
    """Dry stainless rubs more: its torque on a plain steel bolt is half as much again as that bolt's own."""
    with pytest.raises(LookupMiss) as refused:
        torque("3/8-16", grade=grade, condition=word)
    assert refused.value.where == "grade"
    assert any("F593" in near or "A193 B8" in near for near in refused.value.nearest)


@pytest.mark.parametrize("condition", NO_FACTOR)
def test_a_condition_without_a_nut_factor_is_not_offered(condition: str) -> None:
    assert condition not in CONDITIONS
    with pytest.raises(LookupMiss):
        torque("3/8-16", grade="grade 5", condition=condition)


@pytest.mark.parametrize("typed", ["-5 lbf*ft", "0 lbf*ft"])
def test_a_makers_torque_must_be_more_than_zero(typed: str) -> None:
    with pytest.raises(InputError):
        torque("3/8-16", **DRY5, maker=(typed, "sheet", "p. 1"))
    with pytest.raises(InputError):
        part("wheel nut", size="1/2-20", maker=(typed, "sheet", "p. 1"))


def test_a_makers_mixed_number_is_printed_whole() -> None:
    sheet = torque("3/8-16", **DRY5, maker=("31 1/2 lbf*ft", "sheet", "p. 1"))
    assert printed(sheet.figures[0], sheet.data) == "31 1/2 lbf*ft"


def test_ids_of_a_reused_and_a_permanent_joint_differ() -> None:
    reused, permanent = derived_of(torque("3/8-16", **DRY5)), derived_of(torque("3/8-16", **DRY5, joint="permanent"))
    assert reused.id != permanent.id


def test_ids_of_two_judged_settings_differ() -> None:
    one, two = (torque("3/8-16", **DRY5, given=f"{n} lbf*ft").figure("share_of_proof") for n in (20, 30))
    assert one.value != two.value
    assert one.id != two.id


def test_figures_named_by_checks_and_cautions_are_on_the_sheet() -> None:
    sheet = torque("3/8-16", grade="grade 5", condition="oiled", into="steel", engagement="0.2 in")
    record = sheet.as_dict()
    rows = record["figures"]
    assert isinstance(rows, list)
    known = {f["id"] for f in all_figures(rows)}
    named = {i for c in sheet.cautions for i in c.figures}
    named |= {
        b.figure.id for c in sheet.checks for b in (c.required, c.actual) if b is not None and b.figure is not None
    }
    assert named <= known


def test_a_range_of_tensile_strength_asks_the_tapped_metal_for_the_strongest_bolt() -> None:
    sheet = torque("1/2-13", grade="304 CW1", condition="dry", into="aluminum", engagement="1 in")
    needed = sheet.figure("tapped_strength_needed")
    assert needed.typical == pytest.approx(27.34 * 150 / 125, rel=0.001)  # 27.34 ksi for 125, the middle of 100 to 150


def test_a_published_torque_answers_without_a_proof_strength() -> None:
    sheet = torque("10-32", grade="SAE J429 8", condition="dry", service="aircraft")
    assert sheet.figures[0].text == "29 to 43"
    assert check_of(sheet, "clamp at low friction within proof").result == CANNOT_TELL


def test_a_setting_beside_a_makers_figure_is_judged_or_refused() -> None:
    try:
        sheet = torque("3/8-16", **DRY5, maker=MAKER, given="90 lbf*ft")
    except GaugeblockError:
        return
    assert any(f.id == "stated:|given:90 lbf*ft" for f in sheet.figures)


def test_a_tapped_strength_alone_cannot_be_told_of() -> None:
    sheet = torque("3/8-16", **DRY5, tapped_strength="60 ksi")
    assert CANNOT_TELL in [c.result for c in sheet.checks]


def test_a_tapped_strength_must_be_more_than_zero() -> None:
    with pytest.raises(InputError):
        torque("3/8-16", **DRY5, into="steel", engagement="3/4 in", tapped_strength="-5 ksi")


def test_a_locknut_is_looked_up_in_the_service_asked() -> None:
    sheet = torque("3/8-16", **DRY5, service="aircraft", locknut="used locknut")
    assert [f.quantity for f in sheet.decision.figures] == ["tightening_torque"]
    assert all(
        not below.quantity.endswith("prevailing_torque_minimum") for f in sheet.decision.figures for below in f.walk()
    )
    assert check_of(sheet, "locknut's drag").result == CANNOT_TELL


def test_a_part_with_one_row_of_no_stated_size_answers() -> None:
    assert part("banjo bolt").figures[0].text == "27 to 54"


def test_another_unit_on_a_sheet_without_figures_still_says_why(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["part", "flare nut", "--size=-6", "--seat", "jic", "--material", "steel", "--in", "N*m", "--why"]) == 0
    assert "no published source" in capsys.readouterr().out


def test_no_command_is_refused_on_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([]) == 2
    streams = capsys.readouterr()
    assert streams.out == ""
    assert streams.err


def test_the_clamp_load_names_its_own_formula() -> None:
    rule = torque("3/8-16", **DRY5).figure("clamp_load").rule
    assert rule is not None
    assert rule.name == "preload_from_torque"


@pytest.mark.parametrize(("typed", "near"), [("10.8", "ISO 898-1 10.9"), ("F593", "ASTM F593 304 A")])
def test_the_nearest_grades_look_like_what_was_typed(typed: str, near: str) -> None:
    with pytest.raises(LookupMiss) as caught:
        torque("3/8-16", grade=typed, condition="dry")
    assert near in caught.value.nearest


def test_an_engagement_that_only_the_lesser_rule_passes_cannot_be_told_of() -> None:
    """MCHBOOK: 1.5 D + 0.062 in = 0.6245 in; TM 5-3895-367-14&P and TM 9-6115-604-34: 2 D = 0.75 in."""
    sheet = torque("3/8-16", **DRY5, into="aluminum", engagement="0.7 in")
    assert check_of(sheet, "length of engagement").result == CANNOT_TELL


def test_the_published_cut_into_aluminium_is_said() -> None:
    sheet = torque("3/8-16", **DRY5, into="aluminum", engagement="1 in")
    cut = look_up("fasteners/torque_multipliers", "torque_multiplier", condition="into aluminium", base="dry")
    assert any(cut.id in c.figures for c in sheet.cautions)


# --- stainless bolts
# ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("thread", "grade"), [("M8x1.25", "A2-70"), ("3/8-16", "ASTM F593 304 CW1")])
def test_dry_stainless_rubs_on_stainless(thread: str, grade: str) -> None:
    sheet = torque(thread, grade=grade, condition="dry")
    factor = next(f for f in sheet.figures[0].inputs if f.quantity == "nut_factor")
    assert factor.key["surface"] == "stainless steel"
    assert any("gall when dry" in c.text for c in sheet.cautions)


def test_lubricated_stainless_says_that_the_factor_is_of_bare_steel() -> None:
    sheet = torque("M8x1.25", grade="A4-80", condition="anti-seize")
    assert any("that of bare steel is taken" in c.text for c in sheet.cautions)
    plain = torque("M8x1.25", grade="8.8", condition="anti-seize")
    assert not any("bare steel is taken" in c.text or "gall" in c.text for c in plain.cautions)


def test_threadlocker_has_no_published_factor_and_is_no_fault_of_a_job() -> None:
    from gaugeblock.domains import hooks, parse_job
    from gaugeblock.fasteners.page import item

    alone = torque("3/8-16", grade="grade 5", condition="blue threadlocker")
    assert alone.decision.kind == NONE
    assert "no published nut factor for thread-locking liquid" in alone.checks[0].reason
    assert alone.questions[0].key == "maker.torque"
    made = torque("3/8-16", grade="grade 5", condition="blue threadlocker", maker="30 lbf*ft")
    assert made.decision.figure.text == "30"
    stated = torque("3/8-16", grade="grade 5", condition="blue threadlocker", nut_factor="0.15")
    assert stated.decision.figure == torque("3/8-16", grade="grade 5", nut_factor="0.15").decision.figure
    text = '[[fasteners]]\nname = "x"\nthread = "3/8-16"\ngrade = "grade 5"\ncondition = "threadlocker"\n'
    job = parse_job(text, hooks=hooks(refdata()))
    sheet = item(job.fasteners[0], job.shop, refdata()).sheet
    assert sheet.worst == CANNOT_TELL
    assert "thread-locking liquid" in sheet.checks[0].reason
