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
HEADS = ("DO", "BEND", "MARK AT", "FROM THE DATUM", "BEND TOWARD", "SET", "TURN FIRST")


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
        rows.append(
            (ordinal(place), str(n), tape.reads(abs(m.position)), side, goes, marks.settings[n - 1].text, words)
        )
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
    """The stick as text: what to do, its marks, its shape, what to settle, what can hurt; all of it with ``why``."""
    sheet = plan.sheet
    lines = [sheet.title, "", *_headline(plan), *_marked(plan)]
    checks = sorted(sheet.checks, key=lambda c: (not c.stops, not c.asks, c.result == OK))
    checks = [c for c in checks if why or c.stops or c.asks]
    lines += ["", "  CHECKS"] if checks else []
    for check in checks:
        lines += fitted(f"{check.name}: {check.reason}", 2, 14, MARKS[check.result])
    lines += ["", "  TO SETTLE"] if sheet.questions else []
    for question in sheet.questions:
        lines += fitted(f"{question.kind}: {question.text}", 2, 6)
    cautions = sorted(sheet.cautions, key=lambda c: ("injury", "damage", "note").index(c.severity))
    told = cautions if why else [c for c in cautions if c.severity != "note"][:_MOST_CAUTIONS]
    lines += ["", "  CAUTIONS"] if told else []
    for caution in told:
        lines += fitted(f"{caution.severity}: {caution.text}", 2, 6)
    data = sheet.data
    draft = " (draft data)" if data.is_draft else ""
    foot = f"data release {data.release}{draft}; the part maker's sheet and local codes govern"
    lines += ["", *fitted(foot if why else f"{foot}; all checks and cautions: --why", 2, 4)]
    return "\n".join(lines)


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
    lines = [f"  {number:<52}{cut.trust}"]
    return lines if decision.kind == USE else [*lines, *fitted(decision.do, 2, 4)]


def _marked(plan: Plan) -> list[str]:
    """The marks and the shape; of a shape that is refused what would work."""
    lines: list[str] = []
    if plan.bench is None:
        for figure in plan.sheet.figures:
            if figure.quantity in ("rise_minimum", "radius_maximum"):
                name = figure.quantity.replace("_", " ")
                lines += fitted(f"{name}: {figure.typical:.3f} {figure.unit} ({figure.conditions})", 2, 4)
        return lines
    rows = table(plan)
    if rows:
        lines += fitted(f"MEASURE FROM {datum_words(plan)}", 2, 4)
        wide = [max(len(r[i]) for r in (HEADS, *rows)) + 2 for i in range(len(HEADS) - 1)]
        lines.append("")
        for row in (HEADS, *rows):
            start = "  " + "".join(f"{c:<{w}}" for c, w in zip(row[:-1], wide, strict=True))
            if len(start) + len(row[-1]) <= width():
                lines.append(start + row[-1])
            else:  # what is done first stands under the row
                lines += [start.rstrip(), *fitted(row[-1], 7, 7)]
        seen = "clockwise is as seen looking along the tube from START, whichever end is in the die"
        lines += ["", *fitted(seen, 2, 4)]
    for text in (*shape_words(plan), *_places(plan), *_section(plan)):
        lines += fitted(text, 2, 4)
    for figure in plan.sheet.figures:
        if figure.rule is not None and figure.rule.name == "rounding_bound":
            text = f"rounding moves no point of the finished tube more than {figure.typical:.3f} {figure.unit}"
            lines += fitted(text, 2, 4)
    return lines
