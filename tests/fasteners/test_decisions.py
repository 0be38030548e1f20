"""What decisions on fasteners come to: plain bolts, makers' figures as engines have them, items of a job, every
release.
"""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fasteners.fastener_questions import asked, is_key
from gaugeblock.answer.check import CANNOT_TELL
from gaugeblock.answer.pretty import NO_BREAK, pretty
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.cli import main
from gaugeblock.domains import hooks, parse_job
from gaugeblock.errors import GaugeblockError, LookupMiss
from gaugeblock.fasteners import keys, page
from gaugeblock.fasteners.part import part
from gaugeblock.fasteners.torque import torque
from gaugeblock.packet.paper import Paper
from gaugeblock.tables.load import refdata

DATA = refdata()
THREADS = sorted(DATA.table("fasteners/threads").column("thread").values())
GRADES = sorted({(r.key[0], r.key[1]) for r in DATA.table("fasteners/grades").rows if not r.standing})
CONDITIONS = keys.conditions(DATA)
METALS = sorted(DATA.table("fasteners/engagement").column("into").values())
PARTS = sorted({r.key[:5] for r in DATA.table("fasteners/part_torques").rows if not r.standing})
laws = settings(
    deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much]
)

# --- decisions stay useful
# ----------------------------------------------------------------------------------------------


@settings(laws, max_examples=400)
@given(
    st.sampled_from(THREADS),
    st.sampled_from(GRADES),
    st.sampled_from(CONDITIONS),
    st.sampled_from(["reused", "permanent"]),
)
def test_a_plain_bolt_always_ends_in_use(thread: str, grade: tuple[str, str], condition: str, joint: str) -> None:
    """A stainless one on dry threads alone asks: no source gives its lowest friction, and no table its torque."""
    sheet = asked(thread, grade, condition, joint=joint)
    is_stainless = keys.surface_of(*grade, "bare steel", DATA) == "stainless steel"
    if is_stainless and keys.condition(condition, DATA)[2] == "none":
        assert sheet.decision.kind in ("ask", "use")
        assert sheet.decision.kind == "ask" or sheet.figures[0].evidence.basis != "common practice"
        return
    assert sheet.decision.kind == "use"
    assert not sheet.questions
    figure = sheet.decision.figure
    assert figure is not None
    number = number_only(figure, DATA).split(" ")[0]
    if figure.basis == "derived":
        assert len(number.replace(".", "").strip("0")) <= 3


def test_no_ok_rests_on_a_low_friction_that_no_source_gives() -> None:
    sheet = torque("1/2-13", grade="304 CW1", condition="dry")
    assert (sheet.decision.kind, len(sheet.decision.candidates)) == ("ask", 1)
    (check,) = [c for c in sheet.checks if c.name == "clamp at low friction within proof"]
    assert (check.result, check.bears) == (CANNOT_TELL, "inform")


# --- makers' figures as engines have them
# -------------------------------------------------------------------------------


def test_a_torque_and_an_angle_stand_alone_with_their_stages() -> None:
    maker = {"torque": "22 N*m + 90 deg", "source": "engine manual", "place": "p. 12", "new_bolts": "yes"}
    sheet = torque("M8", grade="10.9", condition="oiled", maker=maker)
    assert (sheet.decision.kind, sheet.decision.verb) == ("use", "TIGHTEN")
    stages = ("fit new bolts", "tighten to 22 N*m", "turn 90 deg more")
    assert sheet.decision.stages == stages  # type: ignore[attr-defined]
    assert "new bolts" in sheet.decision.do
    assert {f.basis for f in sheet.figures} == {"maker"}
    crow = torque("M8", grade="10.9", condition="oiled", maker=maker, adapter="2 in on 12 in")
    assert crow.decision.figure is not None
    assert crow.decision.figure.typical == pytest.approx(22 * 12 / 14)
    assert crow.decision.stages[1].startswith("set 19 N*m")  # type: ignore[attr-defined]


def test_to_yield_and_by_stages() -> None:
    sheet = torque(
        "M10",
        maker="20 N*m, then 40 N*m, then to yield".join(["", ""]) and {"torque": "20 N*m, then 40 N*m, then to yield"},
    )
    assert sheet.decision.figure is not None
    assert sheet.decision.figure.text == "40"
    assert sheet.decision.stages[-1] == "tighten to yield"  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    "maker",
    [{"torqe": "22 N*m"}, {"torque": 22}, ("22 N*m", "sheet"), "22", {"torque": "22 N*m", "new_bolts": "maybe"}],
)
def test_a_makers_mapping_is_read_strictly(maker: object) -> None:
    with pytest.raises(GaugeblockError):
        torque("M8", grade="8.8", condition="dry", maker=maker)


def test_the_coarse_thread_is_the_standards_and_is_said() -> None:
    coarse = {
        "3": ".5",
        "4": ".7",
        "5": ".8",
        "6": "1",
        "7": "1",
        "8": "1.25",
        "10": "1.5",
        "12": "1.75",
        "14": "2",
        "16": "2",
        "18": "2.5",
        "20": "2.5",
        "22": "2.5",
        "24": "3",
    }
    there = {c[1:].split("x")[0] for c in THREADS if c.startswith("M")}
    for size in there & set(coarse):
        thread = keys.thread(f"M{size}", DATA)
        assert thread.pitch_m * 1000 == pytest.approx(float(coarse[size]))
        assert "read as" in thread.read_as
    sheet = torque("M8", grade="8.8", condition="dry")
    assert any("read as M8x1.25" in c.text for c in sheet.cautions)


# --- a job
# ----------------------------------------------------------------------------------------------------------------


def items_of(text: str) -> list[Sheet]:
    job = parse_job(text, hooks=hooks(DATA))
    return [page.item(one, job.shop, DATA).sheet for one in job.fasteners]


def test_a_grade_of_another_thread_is_that_items_question() -> None:
    for thread, grade in (("M10", "SAE J429 5"), ("3/8-16", "ISO 898-1 8.8")):
        with pytest.raises(LookupMiss) as refused:
            torque(thread, grade=grade, condition="dry")
        kind = "ISO" if thread.startswith("M") else "SAE"
        assert all(near.startswith(kind) for near in refused.value.nearest)
        (sheet,) = items_of(f'[[fasteners]]\nname = "a"\nthread = "{thread}"\ngrade = "{grade}"\ncondition = "dry"\n')
        assert sheet.decision.kind == "none"
        (question,) = sheet.questions
        assert question.key == "grade"
        assert "marks" in question.text


def test_a_condition_that_is_none_is_answered_with_what_it_is_near_and_never_its_opposite() -> None:
    with pytest.raises(LookupMiss) as refused:
        torque("3/8-16", grade="SAE J429 5", condition="wet")
    assert refused.value.nearest[0] == "oiled"
    assert "dry" not in refused.value.choices.split(", ")


_VALUES = {
    "thread": ["3/8-16", "1/2-13 UNC", "M8", "M10x1.25", "7/16-20"],
    "grade": ["SAE J429 5", "SAE J429 8", "ISO 898-1 8.8", "ISO 898-1 10.9"],
    "condition": ["dry", "oiled", "zinc plated", "anti-seize"],
    "into": ["aluminium", "cast iron", "steel"],
    "insert": ["yes", "no"],
    "engagement": ["1/2 in", "20 mm", "1 in"],
    "tapped_strength": ["30 ksi", "290 MPa"],
    "locknut": ["nylon insert", "all-metal"],
    "prevailing": ["20 lbf*in", "2 N*m", "150 lbf*ft"],
    "wanted": ["30 lbf*ft", "25 N*m", "30 lbf*in"],
    "wrench": ["10 to 80 lbf*ft by 1", "20 to 150 lbf*ft by 2"],
    "joint": ["reused", "permanent"],
}
_MAKERS = ["33 lbf*ft", "25 to 28 N*m", "22 N*m + 90 deg", "20 N*m, then 40 N*m"]
job_items = st.fixed_dictionaries(
    {}, optional={**{k: st.sampled_from(v) for k, v in _VALUES.items()}, "maker": st.sampled_from(_MAKERS)}
)


@settings(laws, max_examples=200)
@given(job_items)
def test_every_job_item_decides_and_its_questions_close_by_keys(values: dict[str, str]) -> None:
    lines = ['[[fasteners]]\nname = "a"']
    for key, value in values.items():
        lines.append(f'{key} = {{ torque = "{value}" }}' if key == "maker" else f'{key} = "{value}"')
    (sheet,) = items_of("\n".join(lines) + "\n")
    decision = sheet.decision
    assert decision.kind in ("use", "ask", "stop", "none")
    assert (decision.kind == "none") <= (not decision.candidates)
    assert decision.kind not in ("use", "ask") or decision.candidates
    if decision.kind != "use":
        assert decision.because
        assert decision.do
        assert decision.kind == "stop" or sheet.questions
    else:
        assert not any(c.asks or c.stops for c in sheet.checks)
    assert all(is_key(q.key) for q in sheet.questions)
    assert all(
        q.key not in values or q.key in ("grade", "prevailing", "wanted", "wrench", "engagement")
        for q in sheet.questions
    )


# --- every release
# ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("release", [r["version"] for r in DATA.releases])
@pytest.mark.parametrize(
    "options",
    [
        {"adapter": "2 in on 12 in", "wrench": "5 to 80 lbf*ft by 1/2"},
        {"given": "25 lbf*ft", "adapter": "2 in on 12 in", "prevailing": "12 lbf*in"},
        {"into": "steel", "engagement": "1/2 in", "tapped_strength": "60 ksi"},
        {"maker": {"torque": "22 N*m + 90 deg"}},
    ],
)
def test_an_earlier_release_of_the_data_answers_with_todays_definitions(
    release: str, options: dict[str, object]
) -> None:
    sheet = torque("3/8-16", grade="SAE J429 5", condition="dry", data=refdata(release), **options)  # type: ignore[arg-type]
    assert sheet.decision.candidates


@pytest.mark.parametrize("into", ["steel", "cast iron", "aluminium", "magnesium"])
@pytest.mark.parametrize("insert", [None, "yes"])
@pytest.mark.parametrize(("thread", "grade"), [("3/8-16", "8"), ("M8", "8.8"), ("1/2-13", "5")])
@pytest.mark.parametrize("diameters", [0.3, 0.6, 0.95])
def test_less_than_one_diameter_engaged_is_never_used_unasked(
    thread: str, grade: str, into: str, insert: str | None, diameters: float
) -> None:
    """No nut is much thinner than its thread's diameter; the tapped metal's strength is not known here."""
    size = {"3/8-16": 9.525, "M8": 8.0, "1/2-13": 12.7}[thread]
    length = f"{size * diameters:.4f} mm"
    sheet = torque(thread, grade=grade, condition="dry", into=into, insert=insert, engagement=length)
    assert sheet.decision.kind in ("ask", "stop")
    assert any(q.key == "engagement" for q in sheet.questions)


def test_one_diameter_in_steel_is_used() -> None:
    assert torque("3/8-16", grade="8", condition="dry", into="steel", engagement="3/8 in").decision.kind == "use"


@pytest.mark.parametrize(
    ("torque_of_maker", "plus"),
    [
        ("22 N*m", ""),
        ("20 N*m, then 22 N*m", ""),
        ("22 N*m + 90 deg", "+ 90 deg"),
        ("20 N*m, then 22 N*m + 90 deg + 45 deg", "+ 90 deg + 45 deg"),
        ("22 N*m, then yield", "then to yield"),
    ],
)
def test_what_follows_the_last_torque_stands_beside_it_everywhere(
    torque_of_maker: str, plus: str, capsys: pytest.CaptureFixture[str]
) -> None:
    maker = {"torque": torque_of_maker, "source": "engine manual", "place": "p. 12"}
    for sheet in (
        torque("M8", grade="10.9", condition="oiled", maker=maker),
        torque("M8", maker=maker),
        part("cylinder head bolt", size="M8", maker=maker),
    ):
        assert [c.plus for c in sheet.decision.candidates] == [plus]
        assert sheet.decision.as_dict().get("plus", [""]) == [plus]
        paper = Paper(sheet.data, None)
        shown = paper.numbers(sheet.decision).replace(NO_BREAK, " ")
        assert shown.endswith(pretty(plus) if plus else "m")
    main(["torque", "M8", "--maker", torque_of_maker])
    first = capsys.readouterr().out.splitlines()[2]
    assert plus in first
