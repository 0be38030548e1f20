"""A Sheet in at most 15 lines: what to do, how far to trust it, what would settle it, what can hurt."""

from __future__ import annotations

from gaugeblock.answer.check import INFORM, NOT_OK
from gaugeblock.answer.decision import ASK, NONE, STOP, USE
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.answer.printing import number_only, other_unit, printed, shop_unit
from gaugeblock.answer.text import READ, label, width, wrap

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.check import Check
    from gaugeblock.answer.decision import Candidate, Decision
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

# How good a tool is and how far two ways agree: asked for when somebody doubts a number.
MINOR = ("torque_difference", "wrench_tolerance", "rounding_effect", "bend_ratio")
_MOST_LINES = 15
_WIDE = 80
_MOST_BESIDE = 3
_EVERY = ("", "any", "vehicle", "not stated")  # services that are every car's
_MOST_CAUTIONS = 2
_LEAST_ROOM = 2  # for one caution below a table


def short(
    sheet: Sheet, unit: str | None = None, columns: int | None = None, above: int = 0, whole: bool = False
) -> str:
    """The decision with what it rests on; ``unit`` prints every figure of that dimension in it; ``above`` are lines
    that stand over it. What it says of a candidate is cut where a screen has no room for it, unless it is asked for
    ``whole``.
    """
    wide = columns or width()
    decision = sheet.decision
    head = wrap(sheet.title, 0, 2, wide=wide)
    body, is_cut = _decided(sheet, unit, wide), False
    grid = aligned(sheet.grid, wide) if decision.kind in (USE, ASK) else []
    beside = _beside(sheet, unit, wide) if decision.kind in (USE, ASK) and not grid else []
    open_ones = [q for q in sheet.questions if pretty(q.text) not in pretty(decision.do)]
    rest = [wrap(f"{c.name}: {c.reason}", 2, 10, "NOT OK", wide=wide) for c in unmet(sheet)]
    rest += [wrap(f"{capital(q.kind)}: {q.text}", 2, 4, wide=wide) for q in open_ones[:2]]
    cares = [c for c in sheet.cautions if c.severity in ("injury", "damage")]
    cares.sort(key=lambda c: c.severity != "injury")
    rest += [wrap(f"CARE  {c.text}", 2, 8, wide=wide) for c in cares[:_MOST_CAUTIONS]]
    foot = _foot(sheet, wide)
    taken = above + len(head) + len(grid) + len(foot) + 1
    screen = _MOST_LINES * _WIDE // min(wide, _WIDE)  # on a narrow one as many words
    for most in (3, 2, 1) if not whole else ():
        if taken + len(body) < screen:
            break
        body, is_cut = _decided(sheet, unit, wide, most), True
    room = max(screen - taken - len(body), _LEAST_ROOM if grid and not above else 0)
    said = _fitting(beside, rest, room, is_cut)
    return "\n".join([*head, "", *body, *grid, *said, *foot])


def unmet(sheet: Sheet) -> list[Check]:
    """What an answer judged not ok and yet leaves its number standing, where neither the decision nor a question says
    so already: it is told beside the number, also where it only informs.
    """
    decision = sheet.decision
    if decision.kind not in (USE, ASK) or sheet.grid:  # a table has it in its own row
        return []
    asked = {*decision.because, *(name for q in sheet.questions for name in q.checks)}
    told = pretty(" ".join([decision.do, *(t for c in decision.candidates for t in (c.when, c.then))])).casefold()
    bad = [c for c in sheet.checks if c.result == NOT_OK and not c.stops]
    return [c for c in bad if (c.bears == INFORM or c.name not in asked) and pretty(c.reason).casefold() not in told]


def aligned(grid: tuple[tuple[str, ...], ...], wide: int) -> list[str]:
    """A table in columns, as many of them across as there is room for, the rest below under the same first column."""
    if not grid:
        return []
    sizes = [max(len(row[n]) for row in grid) for n in range(len(grid[0]))]
    lines: list[str] = []
    first = 1
    while first < len(sizes):
        last, at = first, 4 + sizes[0]
        while last < len(sizes) and (last == first or at + 2 + sizes[last] <= wide):
            at += 2 + sizes[last]
            last += 1
        for row in grid:
            cells = [row[0].ljust(sizes[0]), *(row[n].ljust(sizes[n]) for n in range(first, last))]
            lines.append(f"    {'  '.join(cells)}".rstrip())
        first = last
    return lines


def _fitting(beside: list[str], rest: list[list[str]], room: int, is_cut: bool) -> list[str]:
    """What there is room for, each piece whole: cautions and questions go before further figures."""
    if not is_cut and len(beside) + sum(map(len, rest)) <= room:
        return [*beside, *(line for piece in rest for line in piece)]
    kept: list[str] = []
    for piece in rest:
        if len(kept) + len(piece) < room:
            kept += piece
    return [*beside[: max(room - 1 - len(kept), 0)], *kept, "  More: --why"]


def _decided(sheet: Sheet, unit: str | None, wide: int, most: int | None = None) -> list[str]:
    """The decision; of each candidate ``most`` lines."""
    decision = sheet.decision
    if decision.kind == USE:
        (candidate,) = decision.candidates
        figure = candidate.figure
        verb = f"  {decision.verb or label(figure).upper()}   "
        number = _numbers(figure, sheet, unit)
        number = number.removesuffix(" times") if candidate.plus.startswith("times ") else number
        said = f"{number}{_plus(candidate)}"
        lines = [f"{verb}{said}     {figure.trust}"]
        if len(lines[0]) > wide:
            numbers = wrap(f"{verb.strip()} {said}", 2, 8, wide=wide)
            lines = [*numbers, *wrap(figure.trust, 8, 8, wide=wide)]
        lines += wrap(source_of(figure, sheet.data, unit), 8, 8, wide=wide)
        return lines + (wrap(decision.do, 8, 8, wide=wide) if decision.do else [])
    if decision.kind == NONE:
        return wrap(decision.do or "Nobody has the figure: ask the part maker.", 2, 13, "NO FIGURE", wide=wide)
    if decision.kind == STOP:
        lines = wrap(decision.do, 2, 8, "STOP", wide=wide)
        for candidate in decision.candidates:
            word = candidate.then or ("needed" if candidate.when == "required" else "refused")
            first, *other = _numbers(candidate.figure, sheet, unit).split("    ")
            number = f"{first} ({other[0]})" if other else first
            when = "" if candidate.when == "required" else candidate.when
            lines += wrap(f"{word}: {number} {when}".rstrip(), 8, 10, wide=wide)
        return lines
    return _asked(decision, sheet, unit, wide, most)


# How often a part carries what it must: a number that is puzzling without a word.
_TIMES_OVER = ("torsional_yield_factor", "safety_factor")


def _plus(candidate: Candidate) -> str:
    """What is done after the number, behind it."""
    return f"   {candidate.plus}" if candidate.plus else ""


def _asked(decision: Decision, sheet: Sheet, unit: str | None, wide: int, most: int | None) -> list[str]:
    candidates = decision.candidates
    lines = wrap(decision.do, 2, 13, "ASK FIRST", wide=wide)
    words = list(dict.fromkeys(c.figure.trust for c in candidates))
    for candidate in candidates:
        trust = candidate.figure.trust if len(words) > 1 else ""
        told = "; ".join(t for t in (candidate.plus, candidate.when, candidate.then) if t)
        said = (told, trust, most, wide)
        head = f"        {_columns(_numbers(candidate.figure, sheet, unit))}"
        if len(head) > wide * 0.6:
            lines += [*wrap(head.strip(), 8, 8, wide=wide), *_told(*said, 12)]
        else:
            first, *more = _told(*said, len(head))
            lines += [(head + first.lstrip()).rstrip(), *more]
    return lines + (wrap(words[0], 8, 8, wide=wide) if len(words) == 1 else [])


def _told(told: str, trust: str, most: int | None, wide: int, at: int) -> list[str]:
    """What is said of a candidate, and its trust, which is never cut; where what is said goes on, that is seen."""
    lines = wrap("; ".join(t for t in (told, trust) if t), at, at, wide=wide)
    if most is None or len(lines) <= most:
        return lines
    lines = wrap(told, at, at, wide=wide)
    if len(lines) > most:
        last = lines[most - 1]
        last = last if len(last) + 4 <= wide else last[: wide - 4].rsplit(" ", 1)[0]
        lines = [*lines[: most - 1], f"{last} ..."]
    return lines + (wrap(trust, at, at, wide=wide) if trust else [])


def _columns(numbers: str) -> str:
    """A number and the same in the other unit, in columns."""
    first, _, second = numbers.partition("    ")
    return f"{first:<12}  {second:<12}  " if second else f"{first:<12}  "


def _numbers(figure: Figure, sheet: Sheet, unit: str | None) -> str:
    """The number without its window, and in the other system's unit."""
    if _wanted(figure, unit) is not None:
        return number_only(figure, sheet.data, unit)
    other = other_unit(figure)
    first = number_only(figure, sheet.data)
    if other is None:
        return f"{first} times" if figure.quantity in _TIMES_OVER else first
    both = (first, number_only(figure, sheet.data, other))
    return "    ".join(both if shop_unit(figure) is None else reversed(both))


def source_of(figure: Figure, data: Refdata, unit: str | None = None) -> str:
    """Where the number comes from, and what other sources print; in ``unit`` what is of its dimension."""
    from gaugeblock import units

    if figure.rule is not None:
        kind = units.dimension(figure.unit)
        read = [f for f in figure.walk() if f.basis in ("published", "maker") and units.dimension(f.unit) == kind]
        from_ = next((f for f in read if f.quantity == figure.quantity), read[0] if read else None)
        name = figure.rule.name.replace("_", " ")
        where = f" ({figure.rule.source} {figure.rule.locator})".replace(" )", ")") if figure.rule.source else ""
        given = "" if from_ is None else f"{_range(from_, data, unit)}{_read(from_)}"
        text = f"By {name}, from {given}" if given else f"By {name}{where}"
    elif not figure.source:
        text = "Common practice; no publication was found"
    else:
        text = _read(figure)
    return f"{text}.{_speakers(figure, unit)}"


def _speakers(figure: Figure, unit: str | None) -> str:
    """How many publications print a figure for exactly this, and from where to where; blank where none does."""
    from gaugeblock import spreads, units

    if figure.rule is not None or figure.basis != "published":
        return ""
    count = len({f.source for f in (figure, *spreads.same_specificity(figure)) if f.source})
    if count == 1:
        return " One source."
    to = _wanted(figure, unit) or shop_unit(figure) or figure.unit
    low, high = (units.significant(units.in_unit(v, figure.unit, to), 3) for v in spreads.spread(figure))
    of = "" if to == "1" else f" {to}"
    return f" {count} sources, {low} to {high}{of}." if low != high else f" {count} sources print it."


def _range(figure: Figure, data: Refdata, unit: str | None) -> str:
    """The ends of what a number was made of, where it is a range: both ends hold, not the number alone."""
    is_range = figure.value is None and figure.low is not None
    return f"{printed(figure, data, _wanted(figure, unit))}, " if is_range else ""


def _wanted(figure: Figure, unit: str | None) -> str | None:
    """The unit in which a figure is wanted; None where that is of another dimension."""
    from gaugeblock import units

    return unit if unit is not None and units.dimension(unit) == units.dimension(figure.unit) else None


def _read(figure: Figure) -> str:
    mark = READ[figure.checked] if figure.basis == "published" else ""
    return ", ".join(t for t in (figure.source, figure.locator, mark) if t)


def _beside(sheet: Sheet, wanted: str | None, wide: int) -> list[str]:
    """The next figures of the answer, one a line; what could be taken for the number to use is left out."""
    from gaugeblock import units

    shown = {*MINOR, *(f.quantity for f in sheet.decision.figures)}
    kinds = {units.dimension(f.unit) for f in sheet.decision.figures}
    lines: list[str] = []
    most = _MOST_BESIDE
    for figure in sheet.figures:
        if figure.quantity in shown or len(lines) >= most:
            continue
        if units.dimension(figure.unit) in kinds and _is_target(figure, sheet):
            continue
        shown.add(figure.quantity)
        text = f"{label(figure)} {printed(figure, sheet.data, _wanted(figure, wanted))}"
        has = _in_tables(figure, sheet)
        if has is not None:
            alike = units.dimension(has.unit) == units.dimension(figure.unit)
            unit = (_wanted(figure, wanted) or figure.unit) if alike and figure.unit != "1" else None
            text += f" {figure.trust}; the tables have {printed(has, sheet.data, unit)}"
            most += 1
        if figure.conditions.startswith(("minimum", "maximum")):
            text += f", {figure.conditions}"  # the same quantity may stand beside it as it was measured
        service = figure.key.get("service", "")
        if figure.quantity.endswith(("_minimum", "_maximum")) and service not in _EVERY:
            text += f" ({service})"  # a rule of its own: it is no limit of everything else
        lines += wrap(text, 8, 10, wide=wide)
    return lines


def _in_tables(figure: Figure, sheet: Sheet) -> Figure | None:
    """What the tables have of a quantity that somebody stated; None where they have none, or it is not stated."""
    if figure.basis not in ("stated", "measured"):
        return None
    alike = (f for f in sheet.figures if f.quantity == figure.quantity and f is not figure)
    return next((f for f in alike if f.basis in ("published", "common practice")), None)


def _is_target(figure: Figure, sheet: Sheet) -> bool:
    """Whether a figure is such as a decision settles, or a limit of one."""
    bare = figure.quantity.removesuffix("_maximum").removesuffix("_minimum")
    rows = (sheet.data.entry("quantities", name) for name in (figure.quantity, bare))
    return any(row is not None and row["may"] == "target" for row in rows)


def _foot(sheet: Sheet, wide: int) -> list[str]:
    release = f"--why, data {sheet.data.release}{' (draft)' if sheet.data.is_draft else ''}"
    said = "  The part maker's figure governs if you have it."
    gap = wide - len(said) - len(release)
    return [f"{said}{' ' * gap}{release}"] if gap > 1 else [*wrap(said.strip(), 2, 2, wide=wide), f"  {release}"]
