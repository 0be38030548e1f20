"""A Sheet as plain text for the bench: the number first, then how far to trust it, then the rest."""

from __future__ import annotations

from gaugeblock.answer.printing import both_units, printed

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

_WIDE = 100
MARKS = {"ok": "ok", "not ok": "NOT OK", "cannot tell": "CANNOT TELL"}
READ = {"primary": "read", "quoted": "quoted", "memory": "from memory", "": ""}


def wrap(text: str, first: int, rest: int, mark: str = "", wide: int = _WIDE) -> list[str]:
    """``text`` in lines of at most ``wide`` characters, indented, ``mark`` in the indent; a longer word stays whole."""
    lines = [(" " * first + mark).ljust(rest if mark else first)]
    for word in text.split(" "):
        start = lines[-1] == "" or lines[-1].endswith(" ")
        if not start and len(lines[-1]) + 1 + len(word) > wide:
            lines.append(" " * rest)
            start = True
        lines[-1] += word if start else f" {word}"
    return [line.rstrip() for line in lines]


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


def others_line(figure: Figure, data: Refdata) -> str:
    """The rows that also answer and do not govern, in one line."""
    parts = []
    for other in figure.others:
        service = other.key.get("service", "")
        marks = [m for m in (service if other.chosen_by == "service" else "", other.standing) if m]
        parts.append(
            f"{printed(other, data)} {other.source or other.basis}" + (f" ({', '.join(marks)})" if marks else "")
        )
    return "; ".join(parts)


def _open(sheet: Sheet) -> list[str]:
    """The names of the checks that are not ok, above the number that they are about."""
    names = dict.fromkeys(c.name for c in sheet.checks if MARKS[c.result] == "NOT OK")
    return wrap(", ".join(names), 2, 14, "NOT OK") if names else []


def render(sheet: Sheet, unit: str | None = None) -> str:
    """The whole sheet as text; ``unit`` prints every figure of that dimension in it."""
    from gaugeblock import units

    data = sheet.data
    lines = [sheet.title, *_open(sheet), ""]
    wide = max([24, *(len(label(f)) for f in sheet.figures)])
    for i, figure in enumerate(sheet.figures):
        same = unit is not None and units.dimension(unit) == units.dimension(figure.unit)
        number = printed(figure, data, unit) if same else both_units(figure, data)
        name = label(figure).upper() if i == 0 else label(figure)
        lines.append(f"  {name:<{wide}} {number:<38} {figure.trust}")
        detail = [place(figure)] if i == 0 or figure.basis != "derived" else []
        if figure.conditions:
            detail.append(figure.conditions)
        if figure.key.get("service") and figure.basis != "derived":
            detail.append(f"service: {figure.key['service']}")
        if figure.others:
            detail.append(f"also: {others_line(figure, data)}")
        for text in detail:
            lines += wrap(text, wide + 3, wide + 5)
    if sheet.checks:
        lines += ["", "  CHECKS"]
        for check in sheet.checks:
            lines += wrap(f"{check.name}: {check.reason}", 2, 14, MARKS[check.result])
    if sheet.cautions:
        lines += ["", "  CAUTIONS"]
        for caution in sheet.cautions:
            lines += wrap(f"{caution.severity}: {caution.text}", 2, 6)
    lines += [
        "",
        (
            f"  data release {data.release}{' (draft data)' if data.is_draft else ''}; the part maker's sheet and local"
            " codes govern"
        ),
    ]
    return "\n".join(lines)
