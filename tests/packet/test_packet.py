"""The packet: same bytes, whole against the example, half-filled jobs, all or nothing on disk, digests."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import pytest

from gaugeblock.domains import hooks, parse_job
from gaugeblock.errors import JobError
from gaugeblock.packet import build, make, render
from gaugeblock.tables.load import refdata

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "reports" / "examples" / "demo.toml"
EXAMPLE = ROOT / "reports" / "examples" / "demo"
FILES = ("packet.md", "packet.html", "packet.json")

SHEET_KEYS = {"name", "card", "asked", "data_release", "decision", "figures", "checks", "questions", "cautions"}
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


def packet_of(text: str) -> build.Packet:
    data = refdata()
    job = parse_job(text, hooks=hooks(data))
    return build.build(job, data, "gaugeblock test")


@pytest.fixture(scope="module")
def demo() -> build.Packet:
    return make.make(str(DEMO))


def test_the_demo_packet_is_the_example_whole(demo: build.Packet) -> None:
    made = render.render(demo)
    for name in FILES:
        assert made[name].decode() == (EXAMPLE / name).read_text(encoding="utf-8"), f"{name} differs: run scripts/bless"


def test_two_runs_give_the_same_bytes() -> None:
    assert render.render(make.make(str(DEMO))) == render.render(make.make(str(DEMO)))


def test_the_demo_shows_what_it_must(demo: build.Packet) -> None:
    results = [c.result for i in demo.items for c in i.sheet.checks]
    assert {"fasteners", "tubes", "exhaust", "lines", "driveline", "wiring"} <= {i.domain for i in demo.items}
    assert sum(i.domain == "fasteners" for i in demo.items) >= 12
    assert "not ok" in results
    assert "cannot tell" in results


def test_record_has_the_keys_of_the_contract(demo: build.Packet) -> None:
    record = demo.record
    assert set(record) == {
        "contract",
        "document",
        "program",
        "data_release",
        "data_digest",
        "rows_used",
        "job",
        "sheets",
        "settle_first",
        "questions",
        "sources",
    }
    assert set(record["document"]) == {"owner", "identification", "revision", "issued", "status", "digest"}
    for sheet in record["sheets"]:
        assert set(sheet) == SHEET_KEYS
        stack = list(sheet["figures"])
        while stack:
            figure = stack.pop()
            assert set(figure) == FIGURE_KEYS
            stack += figure["inputs"] + figure["others"]


def test_digest_covers_the_record(demo: build.Packet) -> None:
    record = json.loads(render.render(demo)["packet.json"])
    digest = record["document"]["digest"]
    record["document"]["digest"] = ""
    text = json.dumps(record, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    assert hashlib.sha256(text.encode()).hexdigest() == digest


def test_every_row_behind_a_figure_is_listed_with_its_digest(demo: build.Packet) -> None:
    listed = {r["id"]: r["sha256"] for r in demo.record["rows_used"]}
    behind = [p for i in demo.items for f in i.sheet.figures for p in f.walk()]
    printed = {f.id for p in behind for f in (p, *p.others)}
    named = {id for i in demo.items for c in i.sheet.cautions for id in c.figures}
    wanted = {id for id in printed | named if "/" in id.split(":", 1)[0]}
    assert wanted <= set(listed)
    assert len(listed) < len(wanted) + 40  # the rest are the bounds of checks
    assert all(len(d) == 64 for d in listed.values())


def test_what_stops_the_work_begins_with_not_ok(demo: build.Packet) -> None:
    entries = demo.record["settle_first"]
    assert {tuple(sorted(e)) for e in entries} == {("card", "check", "reason", "result", "sheet")}
    named = {(i.name, c.name): c for i in demo.items for c in i.sheet.checks}
    stops = [named[e["sheet"], e["check"]].stops for e in entries]
    assert stops == sorted(stops, reverse=True)
    assert len(entries) == sum(c.stops or c.asks for i in demo.items for c in i.sheet.checks)


def test_a_bare_item_is_a_blank_box_and_cannot_tell() -> None:
    made = packet_of('[[fasteners]]\nname = "mystery bolt"\n')
    (item,) = made.items
    assert item.card is not None
    assert item.sheet.decision.kind == "none"
    assert [c.result for c in item.sheet.checks] == ["cannot tell"]
    assert "thread, grade, condition not given" in item.sheet.checks[0].reason
    assert '<div class="emptybox"></div>' in render.render(made)["packet.html"].decode()


def test_the_makers_figure_governs_and_is_printed_as_the_makers() -> None:
    made = packet_of(
        '[[fasteners]]\nname = "a"\nthread = "3/8-16"\ngrade = "SAE J429 5"\ncondition = "dry"\n'
        'maker = { torque = "28 lbf*ft", source = "data sheet 7", place = "page 2" }\n'
    )
    (item,) = made.items
    figure = item.sheet.decision.figure
    assert figure is not None
    assert (figure.text, figure.unit, figure.trust) == ("28", "lbf*ft", "MAKER")
    assert item.sheet.figures[0].basis == "maker"


def test_a_makers_figure_without_its_place_is_kept_and_the_place_is_asked_for() -> None:
    made = packet_of(
        '[[fasteners]]\nname = "a"\nthread = "3/8-16"\ngrade = "SAE J429 5"\ncondition = "dry"\n'
        'maker = { torque = "28 lbf*ft" }\n'
    )
    (item,) = made.items
    figure = item.sheet.decision.figure
    assert figure is not None
    assert (figure.text, figure.basis) == ("28", "maker")
    assert [q.key for q in item.sheet.questions] == ["maker.source"]


def test_an_unknown_part_is_answered_ask_the_maker() -> None:
    made = packet_of('[[fasteners]]\nname = "clamp"\npart = "exhaust clamp, V-band"\nsize = "5/16-18"\n')
    assert "no published source" in made.items[0].sheet.checks[0].reason


@pytest.mark.parametrize(
    ("key", "value", "nearest"),
    [
        ("thread", "3/8-18", "3/8-16 UNC"),
        ("grade", "SAE J429 55", "SAE J429 5"),
        ("condition", "drrry", "dry"),
    ],
)
def test_a_key_that_the_tables_do_not_know_is_a_problem_with_the_nearest(key: str, value: str, nearest: str) -> None:
    keys = {"thread": "3/8-16", "grade": "SAE J429 5", "condition": "dry", key: value}
    text = '[[fasteners]]\nname = "a"\n' + "".join(f'{k} = "{v}"\n' for k, v in keys.items())
    with pytest.raises(JobError) as caught:
        packet_of(text)
    (problem,) = caught.value.problems
    assert problem.path.startswith(f"fasteners[1].{key}")
    assert problem.line == 3 + list(keys).index(key)
    assert nearest in problem.nearest


def test_markup_in_text_stays_text() -> None:
    made = packet_of('[job]\nowner = "<script>alert(1)</script>"\n[[fasteners]]\nname = "a | b <b>*bold*</b>"\n')
    files = render.render(made)
    page = files["packet.html"].decode()
    assert "<script" not in page
    assert "&lt;script&gt;" in page
    assert r"a \| b \<b\>\*bold\*\</b\>" in files["packet.md"].decode()


def test_page_has_no_script_and_no_address() -> None:
    page = (EXAMPLE / "packet.html").read_text(encoding="utf-8").casefold()
    for word in (
        "<script",
        "javascript:",
        "http://",
        "https://",
        "src=",
        "@import",
        "<link",
        "<iframe",
        " onload",
        " onclick",
    ):
        assert word not in page.replace('xmlns="http://www.w3.org/2000/svg"', ""), word


def test_a_failed_packet_leaves_nothing(tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text('[[fasteners]]\nname = "a"\nthread = "nonsense"\n', encoding="utf-8")
    with pytest.raises(JobError):
        make.make_packet(str(bad), str(tmp_path / "out"))
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("wrenches", "tool"),
    [
        ('["10 to 80 lbf*ft by 1", "20 to 150 lbf*ft by 2"]', "10 to 80 lbf*ft by 1"),  # 80 is inside 75 to 85 lbf*ft
        ('["10 to 100 lbf*ft by 1", "20 to 150 lbf*ft by 2"]', "10 to 100 lbf*ft by 1"),
        ('["10 to 70 lbf*ft by 1"]', ""),
    ],
)
def test_a_parts_card_names_a_wrench_that_sets_a_torque_inside_its_range(wrenches: str, tool: str) -> None:
    text = f'[shop]\nwrenches = {wrenches}\n[[fasteners]]\nname = "w"\npart = "wheel nut"\nsize = "1/2-20"\n'
    (item,) = build.build(parse_job(text), refdata(), "test").items
    assert item.card is not None
    assert [n for n in item.card.notes if n.startswith("Wrench ")] == ([f"Wrench {tool}"] if tool else [])
