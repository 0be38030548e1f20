"""A job on the phone: the demo's cards in the shop book, worked out in the browser without a network."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest

from book.chromium import Chromium
from book.rules import fits, violations
from gaugeblock.book.face import Book
from gaugeblock.cli import main
from gaugeblock.packet.make import make

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "reports" / "examples" / "demo.toml"
TEXT = DEMO.read_text(encoding="utf-8")


def told(request: dict[str, Any]) -> dict[str, Any]:
    return dict(json.loads(Book(main).take(json.dumps(request))))


@pytest.fixture(scope="module")
def opened(book: Chromium) -> Chromium:
    """The browser with the demo's first page open."""
    book.screen(390)
    book.run(f"import('./kept.js').then(k => k.keepJob('demo.toml', {json.dumps(TEXT)}))")
    book.run("document.querySelector('nav a[href=\"#job\"]').click()")
    book.until("document.querySelector('.wide.main') !== null")
    book.run("[...document.querySelectorAll('.tap')].find(b => b.textContent === 'demo.toml').click()")
    book.until("document.querySelector('.verdict') !== null", 120)
    return book


def test_the_sheets_of_the_demo_are_those_of_the_command_line(opened: Chromium) -> None:
    packet = make(str(DEMO))
    request = {"do": "record", "text": TEXT}
    there = opened.run(f"import('./engine.js').then(e => e.tell({json.dumps(request)})).then(r => r.text)")
    assert there == json.dumps(packet.record, ensure_ascii=False)


def test_its_pages_fit_every_screen_and_break_no_rule(opened: Chromium) -> None:
    for press, wait in (("", ".verdict"), (".verdict ~ .tap", ".deck")):
        if press:
            opened.run(f"document.querySelector('{press}').click()")
        opened.until(f"document.querySelector('{wait}') !== null")
        opened.run("document.querySelectorAll(':not([inert]) > details').forEach(d => { d.open = true; })")
        for width, dark in ((360, False), (390, True), (820, False)):
            opened.screen(width, dark=dark)
            assert fits(opened), (wait, width)
            assert violations(opened) == [], (wait, width)
    opened.screen(390)
    opened.run("history.back()")
    opened.until("document.querySelector('.verdict') !== null")


def test_the_first_page_says_what_stops_and_leads_to_every_card(opened: Chromium) -> None:
    view = told({"do": "job", "text": TEXT})
    first = view["first"]
    shown = opened.run("document.querySelector('.verdict').innerText").split()
    assert shown[:4] == ["NOT", "READY", "TO", "BUILD"]
    assert [int(word) for word in shown if word.isdigit()] == [first["stops"], first["asks"], first["ready"]]
    numbers = opened.run("[...document.querySelectorAll('.todo .k')].map(k => Number(k.textContent))")
    assert set(numbers) == {c["number"] for c in view["cards"]}


def test_cards_are_turned_one_at_a_time_and_keep_what_is_written(opened: Chromium) -> None:
    opened.run("[...document.querySelectorAll('.tap')].find(b => b.textContent.startsWith('The cards')).click()")
    opened.until("document.querySelector('.deck') !== null")
    opened.run("document.querySelectorAll('.turn button')[1].click()")
    opened.until("document.querySelector('.turn p').textContent.startsWith('2 of ')")
    opened.run("document.querySelectorAll('.turn button')[0].click()")
    opened.until("document.querySelector('.turn p').textContent.startsWith('1 of ')")
    opened.until("document.querySelector('.deck').scrollLeft === 0")
    opened.swipe("document.querySelector('.deck')")
    opened.until("document.querySelector('.turn p').textContent.startsWith('2 of ')")
    opened.run("document.querySelectorAll('.turn button')[0].click()")
    opened.until("document.querySelector('.turn p').textContent.startsWith('1 of ')")
    assert opened.run("[...document.querySelectorAll('.leaf')].filter(l => !l.inert).length") == 1
    assert opened.run("document.querySelector('main').scrollWidth <= document.querySelector('main').clientWidth")
    for label, text in (("as done", "70"), ("by, date", 'B. "Bench" 17 May')):
        opened.run(
            "[...document.querySelectorAll('.leaf:not([inert]) .boxes label')]"
            f".find(l => l.textContent.startsWith('{label}')).querySelector('input').focus()"
        )
        opened.type(text)
    opened.run("history.back()")
    opened.until("document.querySelector('.verdict') !== null")
    opened.until("document.getElementById('view').innerText.includes('1 card has something written')")
    filled = opened.run("import('./kept.js').then(k => k.job('demo.toml').filled)")
    assert filled == {"1": {"as done": "70", "by, date": 'B. "Bench" 17 May'}}
    file = told({"do": "done", "text": TEXT, "filled": filled})
    read = tomllib.loads(file["text"])
    assert read["card"][0]["as done"] == "70"
    back = told({"do": "taken", "text": file["text"], "digest": read["packet"]["digest"][:12]})
    assert back["filled"] == filled
    other = told({"do": "taken", "text": file["text"], "digest": "0" * 12})
    assert other["is"] == "refused"


def test_a_job_with_a_fault_is_told_by_line_and_can_be_mended_there(opened: Chromium) -> None:
    wrong = TEXT.replace("[shop]", "[shop]\nunits_of = 3\n", 1)
    opened.run(f"import('./kept.js').then(k => k.keepJob('wrong.toml', {json.dumps(wrong)}))")
    opened.run("document.querySelector('nav a[href=\"#job\"]').click()")
    opened.until("document.querySelector('.wide.main') !== null")
    opened.run("[...document.querySelectorAll('.tap')].find(b => b.textContent === 'wrong.toml').click()")
    opened.until("document.querySelector('.card.none') !== null")
    assert "units_of" in opened.run("document.querySelector('.card.none').innerText")
    assert opened.run("document.querySelector('textarea').value") == wrong
    opened.run("import('./kept.js').then(k => { k.dropJob('wrong.toml'); })")
    assert opened.run("import('./kept.js').then(k => k.jobs().length)") == 1
