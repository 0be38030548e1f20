"""A Sheet as plain text for the bench: the number first, then how far to trust it, then the rest."""

from __future__ import annotations

from gaugeblock.answer.printing import both_units, printed

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

_WIDE = 100
_NARROW, _USUAL, _ONE_LINE = 40, 80, 70
MARKS = {"ok": "ok", "not ok": "NOT OK", "cannot tell": "CANNOT TELL"}
READ = {"primary": "read", "quoted": "quoted", "memory": "from memory", "": ""}


def wrap(text: str, first: int, rest: int, mark: str = "", wide: int = _WIDE) -> list[str]:
    """``text`` in lines of at most ``wide`` characters, indented, ``mark`` in the indent; a longer word stays whole."""
    lines = [(" " * first + mark).ljust(rest if mark else first)]
    for word in text.split():
        start = lines[-1] == "" or lines[-1].endswith(" ")
        if not start and len(lines[-1]) + 1 + len(word) > wide:
            lines.append(" " * rest)
            start = True
        lines[-1] += word if start else f" {word}"
    return [line.rstrip() for line in lines]


def fitted(text: str, first: int, rest: int, mark: str = "") -> list[str]:
    """As ``wrap``, no wider than the screen."""
    return wrap(text, first, rest, mark, width())


def label(figure: Figure) -> str:
    """The quantity in plain words."""
    return figure.quantity.replace("_", " ")


def place(figure: Figure) -> str:
    """Where a figure comes from, in one line: its source and place, or its rule, or that it is habit."""
    if figure.rule is not None:
        source = f", {figure.rule.source} {figure.rule.locator}".rstrip() if figure.rule.source else ""
        return f"{figure.rule.name.replace('_', ' ')}: {figure.rule.expression}{source}"
    if not figure.source:
        return "common practice, no publication"
    mark = READ[figure.checked] if figure.basis == "published" else ""
    return f"{figure.source}, {figure.locator}" + (f" ({mark})" if mark else "")


def others_line(figure: Figure, data: Refdata, unit: str | None = None) -> str:
    """The rows that also answer and do not govern, in one line; ``unit`` is of their dimension."""
    parts = []
    for other in figure.others:
        service = other.key.get("service", "")
        marks = [m for m in (service if other.chosen_by == "service" else "", other.standing) if m]
        parts.append(
            f"{printed(other, data, unit)} {other.source or other.basis}" + (f" ({', '.join(marks)})" if marks else "")
        )
    return "; ".join(parts)


def _open(sheet: Sheet, columns: int) -> list[str]:
    """The names of the checks that are not ok, above the number that they are about."""
    names = dict.fromkeys(c.name for c in sheet.checks if MARKS[c.result] == "NOT OK")
    return wrap(", ".join(names), 2, 14, "NOT OK", wide=columns) if names else []


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


def _figure(name: str, number: str, trust: str, wide: int, columns: int) -> list[str]:
    """The name, the number and its trust: on one line where they fit, else the trust under the number."""
    if columns < _ONE_LINE:
        return [*wrap(name, 2, 4, wide=columns), *wrap(f"{number}  {trust}", 4, 6, wide=columns)]
    line = f"  {name:<{wide}} {number}"
    whole = f"  {name:<{wide}} {number:<{columns - wide - 26}} {trust}"
    if len(line) > columns:
        return [
            *wrap(name, 2, 4, wide=columns),
            *wrap(number, wide + 3, wide + 5, wide=columns),
            *wrap(trust, wide + 3, wide + 3),
        ]
    return [whole] if len(whole) <= columns else [line, *wrap(trust, wide + 3, wide + 3, wide=columns)]


def render(sheet: Sheet, unit: str | None = None, columns: int | None = None) -> str:
    """The whole sheet as text, no wider than the screen; ``unit`` prints every figure of that dimension in it."""
    from gaugeblock import units

    data, columns = sheet.data, columns or width()
    lines = [*wrap(sheet.title, 0, 2, wide=columns), *_open(sheet, columns), ""]
    wide = min(max([24, *(len(label(f)) for f in sheet.figures)]), columns // 2 - 4)
    inner = wide + 3 if columns >= _ONE_LINE else 4
    for i, figure in enumerate(sheet.figures):
        same = unit is not None and units.dimension(unit) == units.dimension(figure.unit)
        number = printed(figure, data, unit) if same else both_units(figure, data)
        name = label(figure).upper() if i == 0 else label(figure)
        lines += _figure(name, number, figure.trust, wide, columns)
        detail = [place(figure)] if i == 0 or figure.basis != "derived" else []
        if figure.conditions:
            detail.append(figure.conditions)
        if figure.key.get("service") and figure.basis != "derived":
            detail.append(f"service: {figure.key['service']}")
        if figure.others:
            detail.append(f"also: {others_line(figure, data, unit if same else None)}")
        for text in detail:
            lines += wrap(text, inner, inner + 2, wide=columns)
    if sheet.checks:
        lines += ["", "  CHECKS"]
        for check in sheet.checks:
            lines += wrap(f"{check.name}: {check.reason}", 2, 14, MARKS[check.result], wide=columns)
    if sheet.cautions:
        lines += ["", "  CAUTIONS"]
        for caution in sheet.cautions:
            lines += wrap(f"{caution.severity}: {caution.text}", 2, 6, wide=columns)
    release = f"data release {data.release}{' (draft data)' if data.is_draft else ''}"
    lines += ["", *wrap(f"{release}; the part maker's sheet and local codes govern", 2, 4, wide=columns)]
    return "\n".join(lines)
