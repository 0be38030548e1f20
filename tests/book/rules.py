"""What every screen of the book is judged by: nothing scrolls sideways, and axe-core finds no violation."""

from __future__ import annotations

from importlib.resources import files

from book.chromium import Chromium

_AXE = (
    "axe.run({ exclude: [['[inert]']] }).then(r => r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0,"
    " 90)).join(' | ')))"
)
_FITS = "[document.documentElement, document.querySelector('main')].every(e => e.scrollWidth <= e.clientWidth)"


def fits(book: Chromium) -> bool:
    """Whether neither the page nor its middle is wider than the screen."""
    return bool(book.run(_FITS))


def violations(book: Chromium) -> list[str]:
    """The rules that axe-core sees broken, each with the elements; what nobody reaches now (inert) is left out."""
    if not book.run("'axe' in self"):
        axe = files("axe_core_python").joinpath("axe.min.js").read_text(encoding="utf-8")
        book.run(f"{axe}; null")
    return list(book.run(_AXE))
