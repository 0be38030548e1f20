"""A Sheet in at most 15 lines: what to do, how far to trust it, what would settle it, what can hurt."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.printing import number_only, other_unit, printed
from gaugeblock.answer.text import READ, label, wrap

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.decision import Candidate
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure

_MOST_LINES = 15
_MOST_BESIDE = 3
_MOST_CAUTIONS = 2
_NARROW, _WIDE, _USUAL = 40, 100, 80


def width() -> int:
    """Columns of the screen: COLUMNS where it is set, else the terminal's, else 80; 40 at the least, 100 at the
    most.
    """
    import os

    try:
        found = int(os.environ.get("COLUMNS") or os.get_terminal_size().columns)
    except (OSError, ValueError):
        found = _USUAL
    return min(max(found, _NARROW), _WIDE)


def short(sheet: Sheet, unit: str | None = None, columns: int | None = None) -> str:
    """The decision with what it rests on; ``unit`` prints every figure of that dimension in it."""
    wide = columns or width()
    decision = sheet.decision
    head = wrap(sheet.title, 0, 2, wide=wide)
    body = _decided(sheet, unit, wide)
    rest: list[str] = []
    if decision.kind in (USE, ASK):
        rest += _beside(sheet, wide)
    open_ones = [q for q in sheet.questions if q.text not in decision.do]
    for question in open_ones[:2]:
        rest += wrap(f"{question.kind.capitalize()}: {question.text}", 2, 4, wide=wide)
    cares = [c for c in sheet.cautions if c.severity in ("injury", "damage")]
    cares.sort(key=lambda c: c.severity != "injury")
    for caution in cares[:_MOST_CAUTIONS]:
        rest += wrap(f"CARE  {caution.text}", 2, 8, wide=wide)
    foot = _foot(sheet, wide)
    room = _MOST_LINES - len(head) - len(body) - len(foot) - 1
    if len(rest) > room:
        rest = [*rest[: max(room - 1, 0)], "  More: --why"]
    return "\n".join([*head, "", *body, *rest, *foot])


def _decided(sheet: Sheet, unit: str | None, wide: int) -> list[str]:
    decision = sheet.decision
    if decision.kind == USE:
        (candidate,) = decision.candidates
        figure = candidate.figure
        verb = f"  {decision.verb or label(figure).upper()}   "
        lines = [f"{verb}{_numbers(figure, sheet, unit)}     {figure.trust}"]
        if len(lines[0]) > wide:
            numbers = wrap(f"{verb.strip()} {_numbers(figure, sheet, unit)}", 2, 8, wide=wide)
            lines = [*numbers, *wrap(figure.trust, 8, 8, wide=wide)]
        lines += wrap(_source(figure, sheet), 8, 8, wide=wide)
        return lines + (wrap(decision.do, 8, 8, wide=wide) if decision.do else [])
    if decision.kind == NONE:
        return wrap(decision.do or "Nobody has the figure: ask the part maker.", 2, 13, "NO FIGURE", wide=wide)
    if decision.kind == STOP:
        lines = wrap(decision.do, 2, 8, "STOP", wide=wide)
        for candidate in decision.candidates:
            word = candidate.then or ("needed" if candidate.when == "required" else "refused")
            lines += wrap(
                f"{word}: {_numbers(candidate.figure, sheet, unit)} {candidate.when}".rstrip(), 8, 10, wide=wide
            )
        return lines
    return _asked(decision.candidates, decision.do, sheet, unit, wide)


def _asked(candidates: tuple[Candidate, ...], do: str, sheet: Sheet, unit: str | None, wide: int) -> list[str]:
    lines = wrap(do, 2, 13, "ASK FIRST", wide=wide)
    for candidate in candidates:
        said = "; ".join(t for t in (candidate.when, candidate.then) if t)
        head = f"        {_columns(_numbers(candidate.figure, sheet, unit))}"
        if len(head) > wide * 0.6:
            lines += [head.rstrip()[:wide], *wrap(said, 12, 12, wide=wide)]
        else:
            first, *more = wrap(said, len(head), len(head), wide=wide)
            lines += [head + first.lstrip(), *more]
    words = list(dict.fromkeys(c.figure.trust for c in candidates))
    return lines + (wrap(" or ".join(words), 8, 8, wide=wide) if words else [])


def _columns(numbers: str) -> str:
    """A number and the same in the other unit, in columns."""
    first, _, second = numbers.partition("    ")
    return f"{first:<12}  {second:<12}  " if second else f"{first:<12}  "


def _numbers(figure: Figure, sheet: Sheet, unit: str | None) -> str:
    """The number without its window, and in the other system's unit."""
    from gaugeblock import units

    if unit is not None and units.dimension(unit) == units.dimension(figure.unit):
        return number_only(figure, sheet.data, unit)
    other = other_unit(figure)
    first = number_only(figure, sheet.data)
    return first if other is None else f"{first}    {number_only(figure, sheet.data, other)}"


def _source(figure: Figure, sheet: Sheet) -> str:
    """Where the number comes from, and what other sources print."""
    if figure.rule is not None:
        from_ = next(
            (f for f in figure.walk() if f.basis in ("published", "maker") and f.quantity == figure.quantity), None
        )
        name = figure.rule.name.replace("_", " ")
        where = f" ({figure.rule.source} {figure.rule.locator})".replace(" )", ")") if figure.rule.source else ""
        text = f"By {name}{where}" if from_ is None else f"By {name}, from {_read(from_)}"
    elif not figure.source:
        text = "Common practice; no publication was found"
    else:
        text = _read(figure)
    others = [o for o in figure.others if not o.standing and o.chosen_by != "service" and o.unit == figure.unit]
    numbers = sorted({printed(o, sheet.data) for o in others} - {printed(figure, sheet.data)})
    return text + (f". Others: {', '.join(numbers[:4])}." if numbers else ".")


def _read(figure: Figure) -> str:
    mark = READ[figure.checked] if figure.basis == "published" else ""
    return ", ".join(t for t in (figure.source, figure.locator, mark) if t)


def _beside(sheet: Sheet, wide: int) -> list[str]:
    """The next figures of the answer, one a line, those of the decision and their like left out."""
    shown = {f.quantity for f in sheet.decision.figures}
    lines: list[str] = []
    for figure in sheet.figures:
        if figure.quantity in shown or len(lines) >= _MOST_BESIDE:
            continue
        shown.add(figure.quantity)
        text = f"{label(figure)} {printed(figure, sheet.data)}"
        lines += wrap(text, 8, 10, wide=wide)
    return lines


def _foot(sheet: Sheet, wide: int) -> list[str]:
    release = f"--why, data {sheet.data.release}{' (draft)' if sheet.data.is_draft else ''}"
    said = "  The part maker's figure governs if you have it."
    gap = wide - len(said) - len(release)
    return [f"{said}{' ' * gap}{release}"] if gap > 1 else [*wrap(said.strip(), 2, 2, wide=wide), f"  {release}"]
