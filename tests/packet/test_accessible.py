"""The demo's page by the rules of the web: valid HTML, no violation that axe-core knows, no number parted from its
unit.
"""

from __future__ import annotations

import html
import json
import re
from importlib.resources import files
from pathlib import Path

import html5lib
import pytest

from gaugeblock.cli import main
from gaugeblock.tables.load import refdata
from packet.test_browser import PAGE, run

# What a reader must find on one line: a number with its unit, a mixed fraction, a range.
SPLIT = r"""
const unit = '(?:in|mm|ft|m|lbf\u00b7ft|lbf\u00b7in|N\u00b7m|lbf|kN|N|ksi|psi|MPa|GPa|bar|\u00b0F|\u00b0C|%|lb|kg)';
const number = '[0-9][0-9.,/]*(?:[ \u00a0][0-9]+/[0-9]+)?';
const what = new RegExp(number + '(?:[ \u00a0]to[ \u00a0]' + number + ')?[ \u00a0]' + unit + '(?![a-z])', 'g');
const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
const split = [];
while (walk.nextNode()) {
  const node = walk.currentNode;
  if (!node.parentElement.checkVisibility() || node.parentElement.closest('svg, caption')) continue;
  for (const found of node.data.matchAll(what)) {
    const range = document.createRange();
    range.setStart(node, found.index); range.setEnd(node, found.index + found[0].length);
    const tops = new Set([...range.getClientRects()].map(r => Math.round(r.bottom)));
    if (tops.size > 1) split.push(found[0]);
  }
}
"""


def in_frame(folder: Path, width: int, script: str, page_at: Path = PAGE) -> object:
    """What a script on the page gives, the page in a frame ``width`` px wide; the script ends in ``tell(value)``."""
    axe = files("axe_core_python").joinpath("axe.min.js").read_text(encoding="utf-8")
    tell = "const tell = v => parent.postMessage(JSON.stringify(v), '*');"
    page = page_at.read_text(encoding="utf-8").replace(
        "</body>", f"<script>{axe}</script><script>{tell}{script}</script></body>"
    )
    (folder / "inner.html").write_text(page, encoding="utf-8")
    outer = folder / "outer.html"
    outer.write_text(
        '<!DOCTYPE html><script>onmessage = e => { document.getElementById("o").textContent = e.data; };</script>'
        f'<pre id="o"></pre><iframe src="inner.html" style="width:{width}px;height:900px;border:0"></iframe>',
        encoding="utf-8",
    )
    dom = run(folder, "--allow-file-access-from-files", "--virtual-time-budget=20000", "--dump-dom", outer.as_uri())
    found = re.search(r'<pre id="o">(.+?)</pre>', dom, re.DOTALL)
    assert found is not None, dom[:300]
    return json.loads(html.unescape(found[1]))


def test_the_page_is_valid_html() -> None:
    parser = html5lib.HTMLParser(strict=False)
    parser.parse(PAGE.read_text(encoding="utf-8"))
    assert parser.errors == []


@pytest.mark.parametrize("width", [390, 1400])
def test_axe_finds_no_violation(tmp_path: Path, width: int) -> None:
    script = "axe.run(document).then(r => tell(r.violations.map(v => v.id + ': ' + v.nodes[0].html.slice(0, 120))));"
    assert in_frame(tmp_path, width, script) == []


@pytest.mark.parametrize("width", [320, 390, 680, 820, 1400])
def test_no_number_is_parted_from_its_unit(tmp_path: Path, width: int) -> None:
    assert in_frame(tmp_path, width, f"{SPLIT} tell(split);") == []


def test_a_parted_number_would_be_seen(tmp_path: Path) -> None:
    script = (
        "const p = document.createElement('p'); p.style.width = '40px'; p.textContent = 'about 1 3/4 in';"
        f" document.body.prepend(p); {SPLIT} tell(split);"
    )
    assert in_frame(tmp_path, 390, script) == ["1 3/4 in"]


@pytest.mark.parametrize("width", [320, 390])
def test_the_first_card_is_near_and_nothing_scrolls_sideways(tmp_path: Path, width: int) -> None:
    script = "const d = document.documentElement; tell([d.scrollWidth, d.clientWidth]);"
    wide, screen = in_frame(tmp_path, width, script)  # type: ignore[misc]
    assert wide <= screen


@pytest.mark.parametrize("width", [390, 820, 1400])
def test_candidates_stand_apart_and_alike_in_size(tmp_path: Path, width: int) -> None:
    """Of each part with a torque that is over what is on record: two candidates a card, one of them a range."""
    data, items = refdata(), []
    for row in data.table("fasteners/part_torques").rows:
        keys = dict(zip(("part", "size", "seat", "material"), row.key, strict=False))
        said = {name: cell for name, cell in keys.items() if cell not in ("any", "not stated")}
        if row["quantity"] == "tightening_torque" and row["service"] == "vehicle" and row["low"] and not row.standing:
            said |= {"wanted": f"{1.5 * float(row['high']):g} {row['unit']}", "name": f"card {len(items) + 1}"}
            items.append("[[fasteners]]\n" + "".join(f"{key} = {json.dumps(text)}\n" for key, text in said.items()))
    job = tmp_path / "job.toml"
    job.write_text("\n".join(items), encoding="utf-8")
    main(["packet", str(job), "--out", str(tmp_path / "out")])
    script = """
    const all = [...document.querySelectorAll('.either')];
    const wide = all.filter(e => [...e.querySelectorAll('.v')].some(v => v.scrollWidth > v.clientWidth + 1));
    const size = v => getComputedStyle(v).fontSize;
    const big = all.filter(e => new Set([...e.querySelectorAll('.v')].map(size)).size > 1);
    tell([all.length, wide.map(e => e.textContent), big.map(e => e.textContent)]);
    """
    count, wide, unlike = in_frame(tmp_path, width, script, tmp_path / "out" / "packet.html")  # type: ignore[misc]
    assert count > 20
    assert (wide, unlike) == ([], [])
