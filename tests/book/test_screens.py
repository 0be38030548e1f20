"""Every screen of the shop book by the rules of the web: on a phone, a tablet and in the dark; by keyboard alone."""

from __future__ import annotations

import pytest

from book.chromium import Chromium
from book.rules import fits, violations

# The start, and no answer that stands there still: an answer says how it was read.
START = "main:not(:has(.read)) .tap"
SCREENS = {
    "start": ("nav a[href='#ask']", START),
    "tables": ("nav a[href='#tables']", ".rows"),
    "job": ("nav a[href='#job']", ".wide.main"),
    "trust": ("nav a[href='#trust']", ".terms"),
}
QUESTIONS = {
    "use": "3/8-16 grade 5 dry",
    "ask": "3/8-16 grade 8 anti-seize into aluminum",
    "stop": "DOT 4 wet at 340 degF",
    "table": "3/8-16",
    "refused": "purple elephants",
    "listed": "-6 an aluminum fitting torque",
    "both": "3/8-16 grade 5 vs grade 8 dry",
    "ruled": "can i mix dot 4 and dot 5",
}


def show(book: Chromium, screen: str) -> None:
    """Open a screen by what a thumb would press, or a question by what would be typed."""
    if screen in SCREENS:
        press, wait = SCREENS[screen]
        book.run(f'document.querySelector("{press}").click()')
        book.until(f"document.querySelector('{wait}') !== null")
        return
    book.run("document.querySelector('nav a').click()")
    book.until(f"document.getElementById('box').value === '' && document.querySelector('{START}') !== null")
    book.run("document.getElementById('box').focus()")
    book.type(QUESTIONS[screen])
    book.key("Enter", 13, "\r")
    wait = {"refused": ".card.none", "table": ".rows", "listed": ".still", "both": ".still", "ruled": ".still"}.get(
        screen, f".card.{screen}"
    )
    book.until(f"document.querySelector('{wait}') !== null")


@pytest.mark.parametrize("screen", [*SCREENS, *QUESTIONS])
def test_nothing_scrolls_sideways_and_axe_finds_nothing(book: Chromium, screen: str) -> None:
    for width, dark in ((360, False), (390, True), (820, False)):
        book.screen(width, dark=dark)
        show(book, screen)
        book.run("document.querySelectorAll('details').forEach(d => { d.open = true; })")
        assert fits(book), (screen, width)
        assert violations(book) == [], (screen, width, dark)
    book.screen(390)


def test_what_axe_would_find_and_what_would_scroll_is_seen(book: Chromium) -> None:
    show(book, "start")
    bad = "<button></button><div style='width:3000px'>wide</div>"
    book.run(f"document.querySelector('main').insertAdjacentHTML('beforeend', {bad!r})")
    assert [v.split(":")[0] for v in violations(book)] == ["button-name"]
    assert not fits(book)


def test_a_candidate_that_is_pressed_answers_the_question(book: Chromium) -> None:
    book.screen(390)
    show(book, "ask")
    assert book.run("document.querySelector('.card .v').textContent") == "18.3"
    book.run("[...document.querySelectorAll('.either button')][1].click()")
    book.until("document.querySelector('.card.use') !== null")
    assert book.run("document.querySelector('.card .v').textContent") == "26"
    assert "insert: yes" in book.run("document.querySelector('.chips').innerText")


def test_the_whole_is_reached_by_keyboard(book: Chromium) -> None:
    """From the head of the page the tab key passes every part; what is in focus has a name."""
    show(book, "ask")
    book.run("document.activeElement.blur(); document.querySelector('.top a').focus()")
    seen = []
    for _ in range(40):
        name = "(document.activeElement.labels?.[0] ?? document.activeElement).textContent.trim()"
        seen.append(book.run(f"document.activeElement.getAttribute('aria-label') || {name}"))
        book.key("Tab", 9)
    assert all(seen[:10])
    text = " / ".join(seen)
    for part in ("Shop book", "Units", "18.3", "Why", "Ask in plain words", "Tables", "Trust"):
        assert part in text, part


def test_no_number_stands_before_the_program_has_answered(book: Chromium) -> None:
    """The page as it comes, before any script has run, has no figure in it."""
    page = book.run(
        "fetch('index.html').then(r => r.text()).then(t => new DOMParser().parseFromString(t, 'text/html')"
        ".body.textContent)"
    )
    assert not any(c.isdigit() for c in page)


def test_what_is_kept_is_exported_and_deleted(book: Chromium) -> None:
    show(book, "use")
    kept = book.run("import('./kept.js').then(k => k.exported())")
    assert QUESTIONS["use"] in kept
    show(book, "trust")
    for _ in range(2):
        book.run("[...document.querySelectorAll('.chips button')].at(-1).click()")
    book.until("document.getElementById('view').innerText.includes('0 questions and 0 jobs')")
    assert book.run("import('./kept.js').then(k => k.restore('{}'))") is False
    assert book.run(f"import('./kept.js').then(k => k.restore({kept!r}))") is True
    assert QUESTIONS["use"] in book.run("import('./kept.js').then(k => k.questions()[0])")
