"""The shop book in a real browser, the network gone after the first visit: it asks nobody, and answers as the command
line does.
"""

from __future__ import annotations

import json
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from book.chromium import Chromium
from book.conftest import RUNS
from gaugeblock.book.serve import server
from gaugeblock.cli import main
from gaugeblock.tables.load import refdata


def ask(book: Chromium, question: str) -> str:
    """What the page says to a question that is typed and sent."""
    book.run("document.querySelector('nav a').click()")
    book.until("document.getElementById('box').value === '' && document.querySelector('.tap') !== null")
    book.run("document.getElementById('box').focus()")
    book.type(question)
    book.key("Enter", 13, "\r")
    shown = book.until("document.querySelector('.governs, .card.none') && document.getElementById('view').innerText")
    return " ".join(shown.split())


def told(book: Chromium, request: dict[str, Any]) -> dict[str, Any]:
    """What the program in the browser answers to a request of the page."""
    script = f"import('./engine.js').then(e => e.tell({json.dumps(request)}))"
    return dict(book.run(script))


def test_a_question_is_answered_without_a_network(book: Chromium) -> None:
    said = ask(book, "3/8-16 grade 5 dry")
    assert "31 lbf·ft" in said
    assert "PUBLISHED" in said
    assert "The part maker\u2019s figure governs" in said
    assert f"data release {refdata().release}" in said


def test_nothing_leaves_the_origin_and_nothing_is_set(book: Chromium) -> None:
    ask(book, "DOT 4 wet")
    assert len(book.requests) > 10
    assert {u for u in book.requests if not u.startswith((book.home, "blob:", "data:"))} == set()
    assert book.run("document.cookie") == ""
    assert book.faults() == []


def test_the_units_of_the_shop_stand_first(book: Chromium) -> None:
    said = {}
    for units in ("metric", "inch", ""):
        book.run(f"document.getElementById('units').value = '{units}'")
        book.run("document.getElementById('units').dispatchEvent(new Event('change'))")
        said[units] = ask(book, "3/8-16 grade 5 dry")
    assert said["metric"].index("42 N\u00b7m") < said["metric"].index("31 lbf\u00b7ft")
    assert said["inch"].index("31 lbf\u00b7ft") < said["inch"].index("42 N")
    assert said[""] == said["inch"]


def test_usual_values_stand_side_by_side_and_a_row_is_opened(book: Chromium) -> None:
    ask(book, "3/8-16 grade 5 dry")
    book.run("document.querySelector('[aria-label=\"side by side: condition\"]').click()")
    book.until("document.querySelectorAll('.rows .tap').length >= 3")
    book.run("[...document.querySelectorAll('.rows .tap')].find(b => b.textContent.startsWith('oiled')).click()")
    book.until("document.querySelector('.card.use') !== null")
    assert book.run("document.querySelector('.card .v').textContent") == "23"


def test_a_figure_leads_to_its_publication(book: Chromium) -> None:
    ask(book, "3/8-16 grade 5 dry")
    book.run("document.querySelector('details summary').click()")
    book.until("document.querySelector('.fig .link') !== null")
    book.run("document.querySelector('.fig .link').click()")
    book.until("document.title.startsWith('Publications')")
    assert "TM238" in book.run("document.getElementById('view').innerText")


def test_words_are_completed_as_they_are_typed(book: Chromium) -> None:
    book.run("document.querySelector('nav a').click()")
    book.until("document.getElementById('box').value === '' && document.querySelector('.tap') !== null")
    book.run("document.getElementById('box').focus()")
    book.type("spark p")
    book.until("document.querySelector('.words button') !== null")
    book.run("document.querySelector('.words button').click()")
    assert book.run("document.getElementById('box').value") == "spark plug "


def test_it_can_be_installed(book: Chromium) -> None:
    found = book.call("Page.getAppManifest", book.page)
    assert found["errors"] == []
    assert json.loads(found["data"])["start_url"] == "./index.html"
    assert book.call("Page.getInstallabilityErrors", book.page)["installabilityErrors"] == []


@pytest.fixture
def online(book: Chromium, folder: Path) -> Iterator[None]:
    """The network is back for a while, at the same address."""
    with server(str(folder), "127.0.0.1", int(book.home.rstrip("/").rsplit(":", 1)[1])) as running:
        threading.Thread(target=running.serve_forever, daemon=True).start()
        yield
        running.shutdown()


@pytest.mark.usefixtures("online")
def test_a_browser_that_cannot_run_it_is_led_to_the_tables(book: Chromium) -> None:
    lacks = "delete self.DecompressionStream"
    script = book.call("Page.addScriptToEvaluateOnNewDocument", book.page, source=lacks)["identifier"]
    try:
        book.open(book.home)
        book.until("document.querySelector('a[href=\"tables.html\"]') !== null")
        assert "This browser cannot run the program" in book.run("document.body.innerText")
        book.run("document.querySelector('a[href=\"tables.html\"]').click()")
        book.until("location.pathname.endsWith('tables.html') && document.querySelector('h1') !== null")
        shown = book.run("document.body.textContent")
        assert "3/8-16 UNC" in shown
        assert refdata().release in shown
        assert book.run("document.scripts.length") == 0
        assert book.run("document.documentElement.scrollWidth <= innerWidth")
    finally:
        book.call("Page.removeScriptToEvaluateOnNewDocument", book.page, identifier=script)
        book.open(book.home)
        book.until(RUNS)


def test_the_browser_says_what_the_command_line_says(book: Chromium, capsys: Any, tmp_path: Path) -> None:
    for words in (["ask", "3/8-16", "grade", "8"], ["find", "spark", "plug"], ["heat", "DOT 4", "--state", "wet"]):
        argv = [*words, "--json"]
        code = main(argv)
        here = {"code": code, "out": capsys.readouterr().out}
        there = told(book, {"do": "run", "argv": argv})
        assert {k: there[k] for k in here} == here
