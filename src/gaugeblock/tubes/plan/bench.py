"""One planned stick as plain text for the bench: what to cut, then one row a bend in the order of the work."""

from __future__ import annotations

from gaugeblock.answer.check import OK
from gaugeblock.answer.text import MARKS, wrap
from gaugeblock.drawing.lengths import degrees_text
from gaugeblock.drawing.stick_drawing import turn_words
from gaugeblock.tubes.plan.marks import DATUMS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.stick import Mark
    from gaugeblock.tubes.plan.planned import Plan

HEADS = ("BEND", "MARK AT", "FROM THE DATUM", "BEND GOES", "SET", "TURN FIRST")


def table(plan: Plan) -> list[tuple[str, ...]]:
    """One row a bend in the order of bending, as ``HEADS``; no rows without a layout."""
    layout = plan.layout
    if layout is None:
        return []
    by_number = {m.number: m for m in layout.marks}
    rows: list[tuple[str, ...]] = []
    before: Mark | None = None
    for n in layout.order:
        m: Mark = by_number[n]
        side = f"towards {'START' if m.rounded < 0 else 'END'}"
        words = " ".join(turn_words(m, before))
        goes = "to END" if m.goes > 0 else "to START"
        rows.append((str(n), plan.tape.reads(abs(m.position)), side, goes, plan.settings[n - 1].text, words))
        before = m
    return rows


def datum_words(plan: Plan) -> str:
    """What the marks are measured from."""
    layout = plan.layout
    if layout is None or plan.datum != "centre":
        return DATUMS[plan.datum]
    return f"{DATUMS[plan.datum]}, {plan.tape.reads(layout.datum + layout.trim_start)} from the START end of the blank"


def shape_words(plan: Plan) -> list[str]:
    """Straights and arcs from the start, and where the seam goes."""
    layout = plan.layout
    if layout is None:
        return []
    parts = []
    for b in layout.stick.bends:
        parts += [
            f"straight {plan.tape.short(b.straight)}",
            f"bend {degrees_text(b.angle)} (arc {plan.tape.short(b.arc)})",
        ]
    lines = ["from START: " + ", ".join([*parts, f"straight {plan.tape.short(layout.stick.end)}"])]
    trims = [
        f"{where} {plan.tape.short(t)}"
        for where, t in (("START", layout.trim_start), ("END", layout.trim_end))
        if t > 0
    ]
    lines.append(f"trim in the blank: {', '.join(trims) or 'none'}")
    if plan.seam is not None:
        lines.append(
            f"weld seam: {degrees_text(plan.seam, '1')} clockwise from the inside of bend 1, as seen from START"
        )
    return lines


def render(plan: Plan) -> str:
    """The stick as text: cut, datum, the table of marks, the shape, then what to settle and what to mind."""
    sheet, lines = plan.sheet, [plan.sheet.title, ""]
    if plan.layout is not None and plan.cut is not None:
        cut = f"CUT {plan.tape.reads(plan.layout.cut_rounded)}"
        lines.append(f"  {cut:<52}{plan.cut.trust}")
        lines += wrap(f"MEASURE FROM {datum_words(plan)}", 2, 4)
        rows = table(plan)
        if rows:
            wide = [max(len(r[i]) for r in (HEADS, *rows)) + 2 for i in range(len(HEADS) - 1)]
            lines.append("")
            lines += [
                "  " + "".join(f"{c:<{w}}" for c, w in zip(r, [*wide, 0], strict=True)).rstrip() for r in (HEADS, *rows)
            ]
            lines += ["", "  clockwise is as seen looking along the tube from START, whichever end is in the die"]
        for text in shape_words(plan):
            lines += wrap(text, 2, 4)
        for figure in sheet.figures:
            if (
                figure.quantity == "rounding_effect"
                and figure.rule is not None
                and figure.rule.name == "rounding_bound"
            ):
                lines += wrap(
                    f"rounding moves no point of the finished tube more than {figure.typical:.3f} {figure.unit}", 2, 4
                )
    else:
        for figure in sheet.figures:
            if figure.quantity in ("rise_minimum", "radius_maximum"):
                lines += wrap(
                    f"{figure.quantity.replace('_', ' ')}: {figure.typical:.3f} {figure.unit} ({figure.conditions})",
                    2,
                    4,
                )
    lines += ["", "  CHECKS"]
    for check in sorted(sheet.checks, key=lambda c: c.result == OK):
        lines += wrap(f"{check.name}: {check.reason}", 2, 14, MARKS[check.result])
    lines += ["", "  CAUTIONS"]
    for caution in sorted(sheet.cautions, key=lambda c: ("injury", "damage", "note").index(c.severity)):
        lines += wrap(f"{caution.severity}: {caution.text}", 2, 6)
    data = sheet.data
    lines += [
        "",
        f"  data release {data.release}{' (draft data)' if data.is_draft else ''}; the part maker's sheet and local codes govern",
    ]
    return "\n".join(lines)
