"""The page: whatever stands in a slot is text, never markup."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from gaugeblock.packet.chosen import Scope
from gaugeblock.packet.first import Place
from gaugeblock.packet.make import make
from gaugeblock.packet.page.whole import page
from gaugeblock.packet.render import view_of

_MARK = '<i x="&">'
# What the page is built by, not what it shows; a drawing is markup of our own, whose text is escaped where it is drawn.
_OURS = ("svg", "kind", "page_of")


def _marked(value: Any, name: str = "") -> Any:
    """A view with a mark behind every text."""
    if name in _OURS or isinstance(value, Place):
        return value
    if isinstance(value, str):
        return value + _MARK if value else value
    if isinstance(value, SimpleNamespace):
        return SimpleNamespace(**{k: _marked(v, k) for k, v in vars(value).items()})
    if isinstance(value, dict):
        return {k: _marked(v, k) for k, v in value.items()}
    return [_marked(v) for v in value] if isinstance(value, list) else value


def test_every_value_in_a_slot_is_escaped() -> None:
    packet = make("reports/examples/demo.toml")
    for scope in (Scope(), Scope(True, None), Scope(False, packet.items[0].name)):
        view = view_of(packet, scope)
        made = page(_marked(view), "", {"left": "", "middle": "", "right": ""})
        assert made.count("&lt;i x=&#34;&amp;&#34;&gt;") > 50
        assert "<i x" not in made
        assert 'x="&' not in made
