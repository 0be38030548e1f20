"""The shop book in a real browser, the network gone after the first visit: it asks nobody, and answers as the command
line does.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from book.chromium import Chromium
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


def test_the_browser_says_what_the_command_line_says(book: Chromium, capsys: Any, tmp_path: Path) -> None:
    for words in (["ask", "3/8-16", "grade", "8"], ["find", "spark", "plug"], ["heat", "DOT 4", "--state", "wet"]):
        argv = [*words, "--json"]
        code = main(argv)
        here = {"code": code, "out": capsys.readouterr().out}
        there = told(book, {"do": "run", "argv": argv})
        assert {k: there[k] for k in here} == here
