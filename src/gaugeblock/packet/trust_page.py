"""The audit page: how far to trust this packet, grouped by the weak link that figures rest on."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

from gaugeblock.answer.pretty import pretty
from gaugeblock.figure import TRUST

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.item import Item
    from gaugeblock.figure import Figure
    from gaugeblock.packet.paper import Paper

_MOST_LINKS = 8
_MOST_ITEMS = 3


def trust_page(items: Sequence[Item], paper: Paper, audit: dict[str, Any]) -> SimpleNamespace:
    """Counts of all figures by how they are known, and the weak links with the items that rest on them."""
    links = _weak_links(items)
    ranked = sorted(links.values(), key=lambda link: (-len(link.items), link.text))
    counts = audit["counts"]
    return SimpleNamespace(
        counts=[
            SimpleNamespace(word=word, figures=n)
            for word, n in sorted(_by_word(counts).items(), key=lambda pair: -pair[1])
        ],
        links=[_row(link, paper) for link in ranked[:_MOST_LINKS]],
        more=max(0, len(ranked) - _MOST_LINKS),
        disagree=counts.get("sources disagree", 0),
    )


def _by_word(counts: dict[str, int]) -> dict[str, int]:
    out: dict[str, int] = {}
    read = {"primary": ", read", "quoted": ", quoted", "memory": ", from memory"}
    for mark, number in counts.items():
        basis, _, checked = mark.partition(", ")
        if basis in TRUST:
            word = TRUST[basis] + (read.get(checked, "") if basis == "published" else "")
            out[word] = out.get(word, 0) + number
    return out


class _Link:
    def __init__(self, figure: Figure | None, text: str, do: str) -> None:
        self.figure = figure
        self.text = text
        self.do = do
        self.items: dict[str, None] = {}


def _weak_links(items: Sequence[Item]) -> dict[str, _Link]:
    """Every habit and every figure from memory below a figure that somebody works to, with the items it touches."""
    links: dict[str, _Link] = {}
    for item in items:
        for figure in item.sheet.decision.figures:
            for part in figure.walk():
                weak = part.basis == "common practice" or (part.basis == "published" and part.checked == "memory")
                if not weak:
                    continue
                habit = part.basis == "common practice"
                what = part.quantity.replace("_", " ")
                about = ", ".join(v for v in part.key.values() if v not in ("any", "vehicle"))
                text = f"{what} of {about}" if about else what
                do = "measure it, or get the maker's figure" if habit else f"read {part.source}, {part.locator}"
                links.setdefault(part.id, _Link(part, text, do)).items[item.name] = None
    return links


def _row(link: _Link, paper: Paper) -> SimpleNamespace:
    names = list(link.items)
    more = f" and {len(names) - _MOST_ITEMS} more" if len(names) > _MOST_ITEMS else ""
    assert link.figure is not None
    return SimpleNamespace(
        count=len(names),
        text=pretty(link.text),
        number=paper.whole(link.figure),
        word=TRUST[link.figure.basis] if link.figure.basis == "common practice" else "from memory",
        items=", ".join(names[:_MOST_ITEMS]) + more,
        do=pretty(link.do),
    )
