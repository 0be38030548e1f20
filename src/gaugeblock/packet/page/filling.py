"""Filling: a shape of HTML with values in its slots, each escaped unless it is a filled shape itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup, escape

if TYPE_CHECKING:
    from collections.abc import Iterable

NOTHING = Markup()


def fill(shape: str, *values: object) -> Markup:
    """A shape with one ``%s`` a value.

    >>> fill('<b>%s</b> of %s', 'A & B', fill('<i>%s</i>', 3))
    Markup('<b>A &amp; B</b> of <i>3</i>')
    """
    filled = shape % tuple([value if type(value) is Markup else escape(value) for value in values])
    return str.__new__(Markup, filled)  # past what Markup asks of other things than text, a third of the time


def put(shape: str, value: object) -> Markup:
    """A shape filled with a value; nothing where there is none."""
    return fill(shape, value) if value else NOTHING


def join(parts: Iterable[str], between: str = "") -> Markup:
    """Filled shapes one after another; text among them is escaped."""
    return Markup(between).join(parts)
