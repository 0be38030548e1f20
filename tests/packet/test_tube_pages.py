"""Tubes in a packet: the bench card with its marks, whole pages at full size, the cut list, and open questions."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.answer.item import Item
from gaugeblock.answer.printing import number_only
from gaugeblock.domains import parse_job
from gaugeblock.packet import build, render
from gaugeblock.tables.load import refdata

SHOP = """
[shop]
stock_length = "10 ft"
kerf = "1/16 in"
[[shop.dies]]
name = "die A"
radius = "5-1/2 in"
start_mark = "1-1/4 in"
grip = "3 in"
test_bends = [{ pulled = "47 deg", released = "45 deg" }]
"""
TUBE = """
[[tubes]]
name = "{name}"
material = "1020 DOM"
od = "1-3/4 in"
wall = ".120 in"
method = "rotary draw"
die = "die A"
count = {count}
offset = {{ rise = "6 in", angle = "45 deg", before = "8 in", after = "8 in" }}
"""
MM = 72 / 25.4


def packet_of(text: str) -> build.Packet:
    data = refdata()
    return build.build(parse_job(text, hooks=domains.hooks(data)), data, "gaugeblock test")


def named(made: build.Packet, name: str) -> Item:
    return next(i for i in made.items if i.name == name)


def test_the_facts_of_a_tube_name_the_die_that_it_is_bent_on() -> None:
    bent = named(packet_of(SHOP + TUBE.format(name="brace", count=1)), "brace")
    assert {row.label: row.text for row in bent.facts}["die"] == "die A, radius 5-1/2 in"
    without = TUBE.replace('die = "die A"', 'radius = "5-1/2 in"').format(name="brace", count=1)
    assert "die" not in [row.label for row in named(packet_of(SHOP + without), "brace").facts]


def test_the_card_says_what_to_cut_and_has_a_row_a_bend() -> None:
    made = packet_of(SHOP + TUBE.format(name="brace", count=1))
    item = named(made, "brace")
    card = item.card
    assert card is not None
    decision = item.sheet.decision
    assert (decision.verb, number_only(decision.figures[0], refdata())) == ("CUT", "28 9/16 in")
    assert card.table[0][:2] == ("DO", "BEND: ANGLE")
    assert [r[:2] for r in card.table[1:]] == [("1st", "1: 45 deg"), ("2nd", "2: 45 deg")]
    assert card.table[1][5] == "47 deg"
    page = render.render(made)["packet.html"].decode()
    assert page.count('class="drawing page landscape"') == 3
    assert page.count('class="drawing page portrait"') == 1
    assert "half a turn, 180" in render.render(made)["packet.md"].decode()


def test_the_cut_list_packs_all_tubes_and_names_the_offcuts() -> None:
    made = packet_of(SHOP + TUBE.format(name="brace", count=5) + TUBE.format(name="strut", count=1))
    (item,) = [i for i in made.items if i.name == "cut list of all tubes"]
    # six pieces of 28 9/16 in with a kerf: four from 10 ft, so two lengths
    assert item.sheet.figure("stock_bars").typical == 2
    assert item.card is not None
    cuts = [r[1] for r in item.card.table[1:]]
    assert sorted(c for c in cuts if "left" not in c) == [f"brace, {n} of 5" for n in range(1, 6)] + ["strut"]
    assert [c for c in cuts if "left" in c] == ["offcut 1 is left", "offcut 2 is left"]
    assert "no plan needs fewer" in item.sheet.checks[-1].reason
    left = [f.typical for f in item.sheet.figures if f.quantity == "offcut"]
    assert sum(left) == pytest.approx(240 - 6 * (28 + 9 / 16 + 1 / 16))


def test_without_stock_or_kerf_the_tubes_are_not_packed() -> None:
    made = packet_of(SHOP.replace('kerf = "1/16 in"', "") + TUBE.format(name="brace", count=1))
    (item,) = [i for i in made.items if i.name == "cut list of all tubes"]
    assert [c.result for c in item.sheet.checks] == ["cannot tell"]
    assert "shop.kerf not given" in item.sheet.checks[0].reason


def test_tubes_of_one_datum_are_held_against_each_other() -> None:
    keys = '[[tubes]]\nname = "{}"\nod = "2 in"\nradius = "6 in"\ngap = "1 in"\ndatum = "bolt"\n'
    keys += 'points = [["{} in", "-9 in", "0 in"], ["{} in", "9 in", "0 in"]]\n'
    far, near = (packet_of(keys.format("a", 0, 0) + keys.format("b", x, x)).items[-1].sheet for x in (4, 2.5))
    assert [c.result for c in far.checks] == ["ok"]
    assert far.figures[0].typical == pytest.approx(2, abs=1e-3)
    assert [c.result for c in near.checks] == ["not ok"]


def test_a_tube_whose_keys_do_not_go_together_is_one_open_item_not_a_failed_packet() -> None:
    text = SHOP + TUBE.format(name="brace", count=1).replace(".120 in", "1 in")
    item = named(packet_of(text), "brace")
    assert [c.result for c in item.sheet.checks] == ["cannot tell"]
    assert item.sheet.decision.kind in ("ask", "none")
    assert [q.kind for q in item.sheet.questions] == ["fill in"]
    assert "no bore is left" in item.sheet.checks[0].reason


def test_a_cope_that_cannot_be_cut_is_a_check_and_the_marks_stay() -> None:
    cope = 'copes = [{ end = "end", onto = "1 in", angle = "60 deg" }]\n'
    item = named(packet_of(SHOP + TUBE.format(name="brace", count=1) + cope), "brace")
    (check,) = [c for c in item.sheet.checks if c.name == "cope of the END"]
    assert check.result == "not ok"
    assert item.card is not None
    assert item.sheet.decision.verb == "CUT"


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_paper_prints_at_full_size_and_nothing_runs_off_it(tmp_path: Path, paper: str) -> None:
    """The check scales of the wrap strip as printed: an inch is 72 points, 20 mm are 56.7, on every page all words
    are inside.
    """
    browser = shutil.which("chromium") or shutil.which("chromium-browser")
    assert browser, "chromium is needed: scripts/test installs it"
    long = '[[fasteners]]\nname = "{}"\npart = "{}"\n'.format("x" * 80, "y" * 80)  # too wide for its card
    page = render.render(packet_of(SHOP + TUBE.format(name="brace", count=1) + long))["packet.html"].decode()
    source = tmp_path / "page.html"
    source.write_text(page.replace("</style>", f"@page {{ size: {paper} }}</style>"), encoding="utf-8")
    quiet = [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
    ]
    command = [
        browser,
        *quiet,
        f"--user-data-dir={tmp_path / 'p'}",
        "--no-pdf-header-footer",
        f"--print-to-pdf={tmp_path / 'page.pdf'}",
    ]
    subprocess.run([*command, source.as_uri()], capture_output=True, timeout=120, check=True)
    out = subprocess.run(
        ["pdftotext", "-bbox", str(tmp_path / "page.pdf"), "-"], capture_output=True, text=True, timeout=60, check=True
    ).stdout
    pages = out.split("<page ")[1:]
    (strip,) = [p for p in pages if ">wrap</word>" in p]
    width, height = map(float, re.findall(r'(?:width|height)="([\d.]+)"', strip)[:2])
    words = [
        (*map(float, w[:4]), w[4])
        for w in re.findall(
            r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>', strip
        )
    ]
    assert all(min(x0, y0, width - x1, height - y1) >= 14 for x0, y0, x1, y1, _ in words)  # 5 mm
    (level,) = [w[0] for w in words if w[4] == "80"]
    # the page stands upright: its scales run along y, side by side
    middle = {w[4]: (w[1] + w[3]) / 2 for w in words if abs(w[0] - level) < 1}
    assert abs(middle["1"] - middle["3"]) == pytest.approx(144, abs=0.3)
    assert abs(middle["20"] - middle["80"]) == pytest.approx(60 * MM, abs=0.3)


def test_a_tube_that_is_stopped_has_no_marks_on_any_page() -> None:
    touching = """
[[tubes.obstacles]]
name = "starter"
gap = "1/4 in"
box = { middle = ["0 in", "4 in", "1 in"], size = ["2 in", "2 in", "2 in"] }
"""
    one, other = TUBE.format(name="brace", count=1), TUBE.format(name="strut", count=1)
    made = packet_of(SHOP + one + touching + other)
    stopped, free, cut_list = (named(made, n) for n in ("brace", "strut", "cut list of all tubes"))
    assert (stopped.sheet.decision.kind, free.sheet.decision.kind) == ("stop", "use")
    assert stopped.card is not None
    assert stopped.card.table == ()
    assert [d.title for d in stopped.sheet.drawings] == ["brace: finished tube"]
    assert cut_list.card is not None
    assert "brace" not in str(cut_list.card.table)
    assert any("brace" in c.reason for c in cut_list.sheet.checks)
    page = render.render(made)["packet.html"].decode()
    assert "brace: the stick" not in page
    assert "brace: order for a bending shop" not in page


def test_one_cut_length_on_card_and_desk_and_order() -> None:
    made = packet_of(SHOP + TUBE.format(name="brace", count=1))
    text = render.render(made)["packet.html"].decode().replace("\u00a0", " ")
    lengths = set(re.findall(r"28 [0-9]+/[0-9]+ in(?: \(([0-9.]+)\))?", text))
    assert lengths <= {"", "28.568"}
    assert "28 9/16 in" in text
    assert not re.search(r"28 (?!9/16)[0-9]+/[0-9]+ in", text)


def test_a_gauge_number_and_a_bare_bump_factor_are_read_in_a_job() -> None:
    tube = TUBE.format(name="brace", count=1).replace('".120 in"', '"11 BWG"')
    made = packet_of(SHOP + tube + 'load = { mass = "20 kg", at = "centre", bump_factor = 3, feet = "pinned" }\n')
    sheet = named(made, "brace").sheet
    assert sheet.figure("bend_ratio").inputs[1].quantity == "tube_od"
    assert "20 kg x 3," in sheet.figure("tube_load").conditions
    assert [q.key for q in sheet.questions] == ["load.yield_share"]
    text = render.render(made)["packet.md"].decode()
    assert not re.search(r"x 3 1\b", text)
    assert "\u00b0rees" not in text


def test_no_text_of_a_drawing_of_the_demo_is_cut_short_or_too_small() -> None:
    from gaugeblock.drawing.svg import LEAST
    from gaugeblock.packet import make

    demo = Path(__file__).resolve().parents[2] / "reports" / "examples" / "demo.toml"
    drawings = [d for i in make.make(str(demo)).items for d in i.sheet.drawings]
    assert len(drawings) >= 6
    for drawing in drawings:
        for size, words in re.findall(r'font-size="([\d.]+)"[^>]*>([^<]*)<', drawing.svg):
            assert float(size) >= LEAST, (drawing.title, words)
            assert not words.endswith(".."), (drawing.title, words)


def test_a_cut_list_says_what_it_leaves_out_and_what_is_not_settled() -> None:
    short = TUBE.format(name="brace", count=1)
    stopped = TUBE.format(name="strut", count=1).replace('rise = "6 in"', 'rise = "1 in"')
    made = packet_of(
        SHOP + short + stopped + TUBE.format(name="post", count=1).replace('die = "die A"', 'radius = "4 in"')
    )
    (item,) = [i for i in made.items if i.name == "cut list of all tubes"]
    assert item.card is not None
    kinds = {name: named(made, name).sheet.decision.kind for name in ("brace", "strut", "post")}
    told = item.sheet.decision.do
    document = render.render(made)["packet.md"].decode()
    assert [part for part in ("Not in it: ", "Not settled yet") if (part in told) != (part in document)] == []
    cuts = [row[1] for row in item.card.table[1:]]
    for name, kind in kinds.items():
        plan = named(made, name).plan
        is_cut = getattr(plan, "bench", None) is not None and not getattr(plan, "is_stopped", False)
        assert (name in told.partition("Not settled")[0]) == (not is_cut), name
        assert (f"{name}: ask first" in cuts) == (is_cut and kind == "ask"), name
    assert set(kinds.values()) >= {"use"}
    assert told
