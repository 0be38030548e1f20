"""Drawing: an SVG picture of a sheet with its title."""

from __future__ import annotations

from gaugeblock.value import Value, put


class Drawing(Value):
    """An SVG picture of a sheet with its title; ``page`` is ``landscape`` or ``portrait`` for one that prints as a
    whole page.
    """

    __slots__ = ("page", "svg", "title")

    title: str
    svg: str
    page: str

    def __init__(self, title: str, svg: str, page: str = "") -> None:
        put(self, "title", title)
        put(self, "svg", svg)
        put(self, "page", page)
