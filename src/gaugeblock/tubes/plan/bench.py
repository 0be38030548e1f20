"""One planned stick as plain text for the bench: what to cut, then one row a bend in the order of the work."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import OK
from gaugeblock.answer.decision import STOP, USE
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.text import MARKS, fitted, width
from gaugeblock.drawing.lengths import degrees_text
from gaugeblock.drawing.stick_drawing import ordinal, turn_words
from gaugeblock.tubes.plan.marks import DATUMS
from gaugeblock.tubes.plan.section import is_asked

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.calc.stick import Mark
    from gaugeblock.tubes.plan.planned import Plan

_MOST_CAUTIONS = 2
_TOLD = {
    "section_modulus": "section modulus",
    "tube_mass": "mass as cut",
    "moment_at_yield": "bending at which it yields",
    "tube_twist": "twist of the piece",
}
# Lines that an answer may fill.
_SCREEN = 15
HEADS = ("DO", "BEND: ANGLE", "MARK AT", "FROM THE DATUM", "BEND TOWARD", "SET", "TURN FIRST")
_WAY = HEADS.index("FROM THE DATUM")


def table(plan: Plan) -> list[tuple[str, ...]]:
    """One row a bend in the order of bending, as ``HEADS``; no rows without a layout."""
    marks = plan.bench
    if marks is None:
        return []
    layout, tape = marks.layout, plan.given.tape
    by_number = {m.number: m for m in layout.marks}
    rows: list[tuple[str, ...]] = []
    before: Mark | None = None
    for place, n in enumerate(layout.order, 1):
        m: Mark = by_number[n]
        side = f"towards {'START' if m.rounded < 0 else 'END'}"
        words = " ".join(turn_words(m, before))
        goes = "to END" if m.goes > 0 else "to START"
        bend = f"{n}: {degrees_text(layout.stick.bends[n - 1].angle, '0.1')}"
        rows.append((ordinal(place), bend, tape.reads(abs(m.position)), side, goes, marks.settings[n - 1].text, words))
        before = m
    return rows


def datum_words(plan: Plan) -> str:
    """What the marks are measured from."""
    marks, datum = plan.marks, plan.given.datum
    if marks is None or datum != "centre":
        return DATUMS[datum]
    far = plan.given.tape.reads(marks.layout.datum + marks.layout.trim_start)
    return f"{DATUMS[datum]}, {far} from the START end of the blank"


def shape_words(plan: Plan) -> list[str]:
    """Straights and arcs from the start, and where the seam goes."""
    marks, short = plan.bench, plan.given.tape.short
    if marks is None:
        return []
    layout = marks.layout
    parts = []
    for b in layout.stick.bends:
        parts += [f"straight {short(b.straight)}", f"bend {degrees_text(b.angle)} (arc {short(b.arc)})"]
    lines = ["from START: " + ", ".join([*parts, f"straight {short(layout.stick.end)}"])]
    trims = [(w, t) for w, t in (("START", layout.trim_start), ("END", layout.trim_end)) if t > 0]
    lines.append(f"trim in the blank: {', '.join(f'{w} {short(t)}' for w, t in trims) or 'none'}")
    if marks.seam is not None:
        seam = degrees_text(marks.seam, "1")
        lines.append(f"weld seam: {seam} clockwise from the inside of bend 1, as seen from START")
    return lines


def _places(plan: Plan) -> list[str]:
    """Where the apexes lie, and the smallest rise that this die makes."""
    tape, figures = plan.given.tape, plan.sheet.figures
    places = ", ".join(f"{f.text} {f.unit}" for f in figures if f.quantity == "apex_place")
    lines = [f"apexes from START, along the straight legs: {places}"] if places else []
    rises = [f for f in figures if f.quantity == "rise_minimum"]
    return lines + [f"smallest rise {f.conditions}: {tape.up(units.to_base(f.typical, f.unit))}" for f in rises]


def _section(plan: Plan) -> list[str]:
    """What was asked of its section: how stiff it is, what it weighs, how far it twists."""
    if not is_asked(plan.given):
        return []
    told = {f.quantity: f for f in reversed(plan.sheet.figures)}
    parts = [f"{name} {number_only(told[q], plan.sheet.data)}" for q, name in _TOLD.items() if q in told]
    return [", ".join(parts)] if parts else []


def render(plan: Plan, *, why: bool = False) -> str:
    """The stick as text: what to do, its marks, what to settle, what can hurt; all of it, its shape too, with ``why``.

    Without ``why`` no more than a screen holds.
    """
    sheet = plan.sheet
    data = sheet.data
    checks = sorted(sheet.checks, key=lambda c: (not c.stops, not c.asks, c.result == OK))
    cautions = sorted(sheet.cautions, key=lambda c: ("injury", "damage", "note").index(c.severity))
    draft = " (draft data)" if data.is_draft else ""
    if not why:
        head = [*fitted(sheet.title, 0, 2), "", *_headline(plan)]
        pieces = [fitted(f"{c.name}: {c.reason}", 2, 14, MARKS[c.result]) for c in checks if c.stops or c.asks]
        pieces += [fitted(text, 2, 4) for text in _section(plan)]
        pieces += [fitted(f"{q.kind}: {q.text}", 2, 6) for q in sheet.questions if q.text not in plan.sheet.decision.do]
        pieces += [fitted(f"CARE  {c.text}", 2, 8) for c in cautions if c.severity != "note"][:_MOST_CAUTIONS]
        foot = fitted(f"--why: its shape, checks and cautions. data {data.release}{draft}", 2, 4)
        return "\n".join([*_on_a_screen(head, _marked(plan), pieces, foot), *foot])
    lines = [sheet.title, "", *_headline(plan), *[line for row in _marked(plan) for line in row], *_shaped(plan)]
    lines += ["", "  CHECKS"] if checks else []
    for check in checks:
        lines += fitted(f"{check.name}: {check.reason}", 2, 14, MARKS[check.result])
    lines += ["", "  TO SETTLE"] if sheet.questions else []
    for question in sheet.questions:
        lines += fitted(f"{question.kind}: {question.text}", 2, 6)
    lines += ["", "  CAUTIONS"] if cautions else []
    for caution in cautions:
        lines += fitted(f"{caution.severity}: {caution.text}", 2, 6)
    governs = f"data release {data.release}{draft}; the part maker's sheet and local codes govern"
    return "\n".join([*lines, "", *fitted(governs, 2, 4)])


def _on_a_screen(head: list[str], rows: list[list[str]], pieces: list[list[str]], foot: list[str]) -> list[str]:
    """The head and as many rows and pieces as a screen holds, each whole, with what was left out."""
    lines = list(head)
    room = _SCREEN - len(foot)
    kept = 0
    while kept < len(rows) and len(lines) + len(rows[kept]) <= room - (kept + 1 < len(rows)):
        lines += rows[kept]
        kept += 1
    if kept < len(rows):
        return [*lines, f"  ... and {len(rows) - kept} more bends: --why"]
    for piece in pieces:
        lines += piece if len(lines) + len(piece) <= room else []
    return lines


def _headline(plan: Plan) -> list[str]:
    """What to do: cut, ask first, or stop and why."""
    decision = plan.sheet.decision
    if decision.kind == STOP:
        return fitted(f"STOP: {decision.do}", 2, 4)
    if plan.bench is None:
        return fitted(decision.do, 2, 4)
    cut = plan.bench.cut
    word = "CUT" if decision.kind == USE else "ASK FIRST; THEN CUT"
    number = f"{word} {plan.given.tape.reads(plan.bench.layout.cut_length)}"
    line = f"  {number:<52}{cut.trust}"
    lines = [line] if len(line) <= width() else fitted(f"{number}  {cut.trust}", 2, 4)
    return lines if decision.kind == USE else [*lines, *fitted(decision.do, 2, 4)]


def _marked(plan: Plan) -> list[list[str]]:
    """The marks, a piece a bend; of a shape that is refused what would work."""
    if plan.bench is None:
        lines: list[str] = []
        for figure in plan.sheet.figures:
            if figure.quantity in ("rise_minimum", "radius_maximum"):
                name = figure.quantity.replace("_", " ")
                lines += fitted(f"{name}: {figure.typical:.3f} {figure.unit} ({figure.conditions})", 2, 4)
        return [lines] if lines else []
    rows = table(plan)
    if not rows:
        return []
    ways = {row[_WAY] for row in rows}
    all_one = f", {ways.pop()}" if len(ways) == 1 else ""
    pieces = [fitted(f"MEASURE FROM {datum_words(plan)}{all_one}", 2, 4)]
    shown = [row[:_WAY] + row[_WAY + 1 :] if all_one else row for row in (HEADS, *rows)]
    wide = [max(len(r[i]) for r in shown) + 2 for i in range(len(shown[0]) - 1)]
    for row in shown:
        start = "  " + "".join(f"{c:<{w}}" for c, w in zip(row[:-1], wide, strict=True))
        is_one = len(start) + len(row[-1]) <= width()
        # what is done first stands under the row where there is no room beside it
        pieces.append([start + row[-1]] if is_one else [*_row(start.rstrip()), *fitted(row[-1], 7, 7)])
    return [[*pieces[0], *pieces[1]], *pieces[2:]]


def _row(text: str) -> list[str]:
    """One row as it is where the screen is wide enough for it, else broken between its columns."""
    return [text] if len(text) <= width() else fitted(" ".join(text.split()), 2, 7)


def _shaped(plan: Plan) -> list[str]:
    """How it is looked at, its straights and arcs, its places, and what rounding does to it."""
    if plan.bench is None:
        return []
    seen = "clockwise is as seen looking along the tube from START, whichever end is in the die"
    lines = ["", *fitted(seen, 2, 4)] if table(plan) else []
    for text in (*shape_words(plan), *_places(plan), *_section(plan)):
        lines += fitted(text, 2, 4)
    for figure in plan.sheet.figures:
        if figure.rule is not None and figure.rule.name == "rounding_bound":
            text = f"rounding moves no point of the finished tube more than {figure.typical:.3f} {figure.unit}"
            lines += fitted(text, 2, 4)
    return lines
