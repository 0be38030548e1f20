"""At the desk: one line a figure, what was checked, what can go wrong, and the drawings of each item."""

from __future__ import annotations

from types import SimpleNamespace
from typing import TYPE_CHECKING

from gaugeblock.answer.check import INFORM, NOT_OK, OK
from gaugeblock.answer.decision import ASK, NONE, STOP
from gaugeblock.answer.pretty import pretty
from gaugeblock.answer.short import MINOR
from gaugeblock.answer.text import label

if TYPE_CHECKING:
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.item import Item
    from gaugeblock.figure import Figure
    from gaugeblock.packet.first import Place
    from gaugeblock.packet.paper import Paper

# A condition that is longer stands in packet.json; the card says what matters of it.
_SHORT = 24
# What is worked to stands first on a sheet; what lies far behind it stands in packet.json.
_MOST_FIGURES = 5
_GOVERNS, _COMPARED = "governs", "for comparison"
_WHICH = ("first", "second", "third")
_OUTCOME = {STOP: "STOP", ASK: "ASK FIRST", NONE: "NO FIGURE"}


def desk(item: Item, place: Place, paper: Paper, cautions: list[SimpleNamespace]) -> SimpleNamespace:
    """The desk sheet of one item, with those of its ``cautions`` that its card does not bear."""
    sheet, paper = item.sheet, paper.of(item)
    decision = sheet.decision
    says = item.card.says if item.card is not None else ()
    listed = [f for f in sheet.figures if f.quantity not in says]
    roles = _roles(item)
    listed = sorted(_once(listed, paper), key=lambda f: _place(f, roles))
    figures = listed[: _MOST_FIGURES + _told_twice(listed)]
    apart = _apart(figures, roles)
    told = [c for c in sheet.checks if c.result != OK and not _is_on_card(c, item)]
    # What informs and cannot be told changes nothing that is set today: packet.json has it.
    told = [c for c in told if c.bears != INFORM or c.result == NOT_OK]
    return SimpleNamespace(
        name=item.name,
        place=place,
        anchor=f"desk-{place.number}",
        what=pretty(item.card.what) if item.card is not None else "",
        outcome=_OUTCOME.get(decision.kind, ""),
        number=paper.numbers(decision) if decision.kind != STOP else "",
        condition=item.card.condition if item.card is not None else "",
        facts=[SimpleNamespace(label=pretty(r.label), text=pretty(r.text)) for r in item.facts if r.text],
        figures=[
            _line(f, paper, roles.get(f.id, ""), apart.get(f.id, ""), is_first=n == 0) for n, f in enumerate(figures)
        ],
        more=len(listed) - len(figures),
        checks=[_check(c) for c in told],
        kept=sum(c.result == OK for c in sheet.checks),
        cautions=cautions,
        drawings=[SimpleNamespace(title=d.title, svg=d.svg, page=d.page, wide=d.wide) for d in sheet.drawings],
    )


def _told_twice(figures: list[Figure]) -> int:
    """How many lines what is stated and the tables beside it take: they are not counted against the rest."""
    stated = {f.quantity for f in figures if f.basis in ("measured", "stated")}
    table = {f.quantity for f in figures if f.basis in ("published", "common practice")}
    return 2 * len(stated & table)


def _once(figures: list[Figure], paper: Paper) -> list[Figure]:
    """Figures that print alike, quantity and number, stand once."""
    return list({(f.quantity, paper.number(f)): f for f in reversed(figures)}.values())[::-1]


def _stem(figure: Figure) -> str:
    """A quantity without its side: a torque and the most of it are of one kind."""
    return figure.quantity.removesuffix("_maximum").removesuffix("_minimum")


def _roles(item: Item) -> dict[str, str]:
    """What figures of one kind are there for, where a sheet has several: which of them the card's number rests on."""
    shown, figures = item.sheet.decision.figures, item.sheet.figures
    walks = [{part.id for part in figure.walk()} for figure in shown]
    kinds = {"tightening_torque", *map(_stem, shown)}
    rivals = [f for f in figures if _stem(f) in kinds and (f.basis not in ("measured", "stated") or f in shown)]
    several = {_stem(f) for f in rivals if sum(_stem(f) == _stem(other) for other in rivals) > 1}

    def role(figure: Figure) -> str:
        under = [n for n, walk in enumerate(walks) if figure.id in walk]
        if figure in shown and len(shown) > 1:
            return f"{_WHICH[shown.index(figure)]} number of the card"
        if len(under) == len(walks):
            return _GOVERNS
        return f"for the {_WHICH[under[0]]} number" if under else _COMPARED

    stops = item.sheet.decision.kind in (STOP, NONE)
    return {} if stops or item.card is None else {f.id: role(f) for f in rivals if _stem(f) in several}


def _place(figure: Figure, roles: dict[str, str]) -> int:
    """Where a figure stands: what the card rests on, then what comes of it, then comparisons, last what is minor."""
    return 2 if figure.quantity in MINOR else 1 if roles.get(figure.id) == _COMPARED else 0


def _apart(figures: list[Figure], roles: dict[str, str]) -> dict[str, str]:
    """What tells figures of one quantity apart that would stand under one name: of which gap, in which gear."""
    alike: dict[tuple[str, str], list[Figure]] = {}
    for figure in figures:
        alike.setdefault((figure.quantity, roles.get(figure.id, "")), []).append(figure)
    found: dict[str, str] = {}
    for group in alike.values():
        said = [_case(f) or f.conditions.split(";")[0] for f in group]
        for count in range(1, max(text.count(",") for text in said) + 2):
            short = [",".join(text.split(",")[:count]) for text in said]
            if len({*short}) == len(group) > 1:
                found |= {f.id: text for f, text in zip(group, short, strict=True)}
                break
    return found


def _case(figure: Figure) -> str:
    return figure.key.get("bend" if figure.quantity == "surface_gap" else "case", "")


def _line(figure: Figure, paper: Paper, role: str, apart: str, *, is_first: bool) -> SimpleNamespace:
    case = apart or (_case(figure) if len(_case(figure)) <= _SHORT else "")
    name = label(figure) + (f": {case}" if case else "")
    whole = paper.whole(figure)
    number, _, window = whole.partition(" (")
    others = sorted({paper.number(o) for o in figure.others if not o.standing and o.chosen_by != "service"} - {number})
    return SimpleNamespace(
        label=pretty(name),
        role=role,
        number=number,
        window=window.rstrip(")"),
        other=paper.other(figure),
        weakest=paper.weakest(figure),
        source=paper.source(figure),
        conditions=pretty(figure.conditions) if len(figure.conditions) <= _SHORT else "",
        also=", ".join(others[:3]) if is_first else "",
    )


def _is_on_card(check: Check, item: Item) -> bool:
    """Whether the card says it already, as what is to be done."""
    return item.card is not None and check.reason == item.sheet.decision.do


def _check(check: Check) -> SimpleNamespace:
    word = {"not ok": "NOT OK", "cannot tell": "ASK"}[check.result]
    return SimpleNamespace(word=word, name=pretty(check.name), reason=pretty(check.reason))
