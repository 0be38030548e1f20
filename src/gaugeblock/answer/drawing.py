"""Drawing: an SVG picture of a sheet with its title."""

from __future__ import annotations

from gaugeblock.value import Value, put


class Drawing(Value):
    """An SVG picture of a sheet with its title; ``page`` is ``landscape`` or ``portrait`` for one that prints as a
    whole page, ``wide`` says that it takes the whole width of the text.
    """

    __slots__ = ("page", "svg", "title", "wide")

    title: str
    svg: str
    page: str
    wide: bool

    def __init__(self, title: str, svg: str, page: str = "", *, wide: bool = False) -> None:
        put(self, "title", title)
        put(self, "svg", svg)
        put(self, "page", page)
        put(self, "wide", wide)
