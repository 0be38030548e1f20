"""What people type for a thread, a grade and a condition -> the key cells of the fastener tables. Nothing is
guessed.
"""

from __future__ import annotations

import re
from fractions import Fraction

from gaugeblock import units
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.tables.load import Refdata, canonical
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Sequence

# Compiled by re when first used: a look-up needs few of them.
_METRIC = r"M\s*(?P<d>[0-9]+(?:\.[0-9]+)?)\s*(?:[x*-]\s*(?P<p>[0-9]+(?:\.[0-9]+)?))?"
_INCH = (
    r"(?P<size>#\s*[0-9]+|No\.?\s*[0-9]+|[0-9]+["
    r" -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*\.[0-9]+|[0-9]+)\s*(?:\"|in\b|inch\b)?"
    r"\s*(?:[-x]\s*(?P<tpi>[0-9]+))?\s*(?P<series>UNC|UNF|UNEF|UNS|8-?UN|UNC/UNF)?"
)
_FLAGS = re.ASCII | re.IGNORECASE
_FITS = ("1A", "1B", "2A", "2B", "3A", "3B")
_NUMBER_SIZES = {n: Fraction(60 + 13 * n, 1000) for n in range(13)}


class Thread(Value):
    """A thread cell and what it says: ``size`` (a measure text), ``diameter_m``, ``pitch_m``, if it is metric.

    ``read_as`` says how a thread was read that was not typed in full; blank otherwise.
    """

    __slots__ = ("cell", "diameter_m", "is_metric", "pitch_m", "read_as", "size")

    cell: str
    size: str
    diameter_m: float
    pitch_m: float
    is_metric: bool
    read_as: str

    def __init__(
        self, cell: str, size: str, diameter_m: float, pitch_m: float, is_metric: bool, read_as: str = ""
    ) -> None:
        put(self, "cell", cell)
        put(self, "size", size)
        put(self, "diameter_m", diameter_m)
        put(self, "pitch_m", pitch_m)
        put(self, "is_metric", is_metric)
        put(self, "read_as", read_as)


def read_cell(cell: str) -> Thread:
    """The Thread of a cell such as ``3/8-16 UNC``, ``#10-24 UNC`` or ``M10x1.5``."""
    if cell.startswith("M"):
        d, p = cell[1:].split("x")
        return Thread(cell, f"{d} mm", float(d) / 1000, float(p) / 1000, True)
    size_text, tpi, _ = _inch_parts(cell)
    size = _inches(size_text)
    return Thread(cell, f"{units.decimal_text(size)} in", float(size) * 0.0254, 0.0254 / int(tpi), False)


def numbered_m(number: int) -> float:
    """The diameter of a numbered inch size, ``#10``, in metres."""
    if number not in _NUMBER_SIZES:
        raise LookupMiss(f"#{number}", "thread", "no such numbered size", ("#4", "#6", "#8", "#10", "#12"), "use one")
    return float(_NUMBER_SIZES[number]) * 0.0254


def _inch_parts(cell: str) -> tuple[str, str, str]:
    """Size, threads per inch and series of an inch thread's cell."""
    name, _, series = cell.rpartition(" ")
    size, _, tpi = name.rpartition("-")
    if not size or not tpi.isdigit():
        raise LookupMiss(cell, "thread", "not a thread cell", (), "write it as 3/8-16 UNC or M10x1.5")
    return size, tpi, series


def _inches(text: str) -> Fraction:
    if text.startswith("#"):
        return _NUMBER_SIZES[int(text[1:])]
    return units.parse_number(text.replace("-", " ", 1), "thread")


def thread(typed: str, data: Refdata) -> Thread:
    """The one thread that was typed; Ambiguous with the threads there are, LookupMiss with the nearest ones.

    A metric size without a pitch is the coarse thread, as the standard says, and ``read_as`` says so.

    >>> from gaugeblock.tables.load import refdata
    >>> thread("3/8-16", refdata()).cell
    '3/8-16 UNC'
    """
    memo = ("thread", typed)
    got = data._memo.get(memo)
    if got is None:
        got = data._memo[memo] = _thread(typed, data)
    return got  # type: ignore[return-value]


def threads_of(size: str, cells: Sequence[str], data: Refdata) -> list[str]:
    """Those of the cells that are threads of a diameter given alone (``1/2 in``, ``M12``); none for a whole thread."""
    bare = size.removeprefix("M") + (" mm" if size.startswith("M") else " in" if size[-1:].isdigit() else "")
    try:
        wanted = units.parse_measure(bare, "length", "size").to("m")
    except InputError:
        return []
    out = []
    for cell in cells:
        try:
            found = thread(cell, data)
        except LookupMiss:
            continue
        if found.cell == cell and abs(found.diameter_m - wanted) < 1e-6:
            out.append(cell)
    return out


def _thread(typed: str, data: Refdata) -> Thread:
    cells = list(data.table("fasteners/threads").column("thread").values())
    text = " ".join(typed.replace("\u00d7", "x").replace("\u2033", '"').split())[:60]
    if text[-3:-2] in ("-", " ") and text[-2:] in _FITS:
        text = text[:-3]  # the class of fit does not change the size
    if text in cells:
        return read_cell(text)
    metric = re.fullmatch(_METRIC, text, _FLAGS) if text[:1] in ("M", "m") else None
    if metric is not None:
        d = units.decimal_text(Fraction(metric["d"]))
        same = [c for c in cells if c.startswith(f"M{d}x")]
        if metric["p"] is None:
            if same:
                return _coarse(text, same)
            near = _alike(text, cells) or _beside(metric["d"], cells)
            raise LookupMiss(
                typed, "thread", "no such diameter in the tables", near, "measure it again; those next to it are named"
            )
        cell = f"M{d}x{units.decimal_text(Fraction(metric['p']))}"
        if cell in cells:
            return read_cell(cell)
        raise LookupMiss(
            typed, "thread", "no such thread in the tables", same or _alike(cell, cells), "use one of these"
        )
    inch = re.fullmatch(_INCH, text, _FLAGS)
    if inch is None or "/0" in text:
        raise LookupMiss(
            typed, "thread", "not a thread", _alike(text, cells) or cells[:5], "write it as 3/8-16 or M10x1.5"
        )
    return _inch_thread(typed, inch, cells)


def _coarse(text: str, same: list[str]) -> Thread:
    """The coarse thread of a metric size: of all pitches of a diameter the standard's coarse one is the greatest."""
    thread = max(map(read_cell, same), key=lambda t: t.pitch_m)
    return thread.replace(
        read_as=f"{text.upper()} without a pitch is read as {thread.cell}, the coarse thread of ISO 261"
    )


def _inch_thread(typed: str, match: re.Match[str], every: list[str]) -> Thread:
    cells = [c for c in every if not c.startswith("M")]
    size_text = match["size"]
    sizes = []
    if size_text[0] in "#Nn":
        number = int(size_text.lstrip("#NnOo. "))
        sizes = [_NUMBER_SIZES[number]] if number in _NUMBER_SIZES else []
    else:
        sizes = [_inches(size_text)]
        if size_text.isdigit() and 2 <= int(size_text) <= 12 and match["tpi"]:
            sizes.append(_NUMBER_SIZES[int(size_text)])
    parts = {cell: _inch_parts(cell) for cell in cells}
    same = [cell for cell, (size, _, _) in parts.items() if _inches(size) in sizes]
    fits = same
    if match["tpi"]:
        fits = [c for c in fits if parts[c][1] == match["tpi"]]
    if match["series"]:
        fits = [c for c in fits if parts[c][2] == match["series"].upper().replace("-", "")]
    if len(fits) == 1:
        return read_cell(fits[0])
    if len({parts[c][1] for c in fits}) == 1 and (coarse := [c for c in fits if parts[c][2] in ("UNC", "UNF")]):
        return read_cell(coarse[0])  # one size and pitch under two series names: the same thread
    if len(fits) > 1:
        raise Ambiguous(
            typed,
            "thread",
            "threads per inch are missing" if not match["tpi"] else "more than one series",
            fits,
            "name one of these",
        )
    near = same or _meant(size_text, every) or _alike(typed, cells)
    raise LookupMiss(typed, "thread", "no such thread in the tables", near or cells[:5], "use one of these")


def _meant(size: str, cells: Sequence[str]) -> list[str]:
    """What a whole number is short for: ``12`` is 1/2 without its stroke, #12, or M12; none for any other size."""
    if not size.isdigit():
        return []
    fractions = [f"{size[:at]}/{size[at:]}-" for at in range(1, len(size))]
    names = (*fractions, f"#{size}-", f"M{size}x")
    first = (next((c for c in cells if c.startswith(name)), "") for name in names)
    return [cell for cell in first if cell]


def grade(typed: str, data: Refdata) -> tuple[str, str]:
    """The standard and grade cells that were typed: ``SAE J429 5``, ``grade 5``, ``ISO 898-1 8.8``, ``8.8``."""
    memo = ("grade", typed)
    got = data._memo.get(memo)
    if got is None:
        got = data._memo[memo] = _grade(typed, data)
    return got  # type: ignore[return-value]


def _grade(typed: str, data: Refdata) -> tuple[str, str]:
    table = data.table("fasteners/grades")
    pairs = list(dict.fromkeys((r.key[0], r.key[1]) for r in table.rows if not r.standing))
    text = " ".join(typed.split()).casefold()
    found = [p for p in pairs if text in _grade_names(*p)] or _printed_list(text, pairs, data)
    if not found:
        standard = data.words("fasteners", "standard").get(text)
        word = data.words("fasteners", "grade").get(text)
        if word is not None:
            found = [p for p in pairs if p[1] == word and (standard is None or p[0] == standard)]
    if not found:
        found = [p for p in pairs if text == p[0].casefold() or text in p[0].casefold().split()]
        if len(found) > 1:
            raise Ambiguous(typed, "grade", "the grade is missing", [f"{s} {g}" for s, g in found], "name the grade")
    mark = data.words("fasteners", "mark").get(text)
    if not found and mark is not None:
        listed = [r.key for r in data.table("fasteners/head_marks").rows if not r.standing]
        found = [p for p in pairs if (mark, *p) in {key[:3] for key in listed}]
    if len(found) == 1:
        return found[0]
    if found:
        names = [f"{s} {g}" for s, g in found]
        raise Ambiguous(typed, "grade", "more than one standard has it", names, "name the standard")
    named = {name: f"{s} {g}" for s, g in pairs for name in _grade_names(s, g)}
    near = list(dict.fromkeys(named[n] for n in _alike(typed, named, 8)))
    do = "write standard and grade, as SAE J429 5"
    raise LookupMiss(typed, "grade", "not a grade of the tables", near or [f"{s} {g}" for s, g in pairs], do)


def _printed_list(text: str, pairs: Collection[tuple[str, str]], data: Refdata) -> list[tuple[str, str]]:
    """A list of grades that a torque table prints (``1 or 2``): it has no strength of its own, and is found by its full
    name only.
    """
    printed = dict.fromkeys((r.key[1], r.key[2]) for r in data.table("fasteners/torques").rows)
    lists = [p for p in printed if p not in pairs and p[0] != "not stated"]
    return [p for p in lists if text == f"{p[0]} {p[1]}".casefold()]


def kind_of(standard: str, data: Refdata) -> str:
    """``inch`` or ``metric`` where a standard is of one kind of thread only.

    Blank where it is of both, or none is said.
    """
    return data.words("fasteners", "kind of standard").get(standard.casefold(), "")


def refuse_other_thread(thread: Thread, grade: tuple[str, str], data: Refdata) -> None:
    """LookupMiss where a grade is not one of this kind of thread, with the grades there are for it."""
    own = "metric" if thread.is_metric else "inch"
    kind = kind_of(grade[0], data)
    if kind in ("", own):
        return
    rows = data.table("fasteners/grades").rows
    pairs = dict.fromkeys((r.key[0], r.key[1]) for r in rows if not r.standing and kind_of(r.key[0], data) == own)
    why = f"a grade of {kind} threads; {thread.cell} is {own}"
    do = "read the marks on the bolt's head again; use one of these, or name the thread again"
    raise LookupMiss(" ".join(grade), "grade", why, [f"{s} {g}" for s, g in _everyday_first(pairs, data)], do)


def refuse_other_metal(grade: tuple[str, str], condition: tuple[str, str, str], data: Refdata) -> None:
    """LookupMiss where threads are said to be stainless and the grade is one of plain steel: one of both is wrong."""
    stainless = "stainless steel"
    if condition[1] != stainless or surface_of(*grade, "bare steel", data) == stainless:
        return
    rows = data.table("fasteners/grades").rows
    pairs = dict.fromkeys((r.key[0], r.key[1]) for r in rows if not r.standing)
    own = [p for p in pairs if surface_of(*p, "bare steel", data) == stainless]
    why = f"a grade of plain steel bolts; the threads are said to be stainless ({condition[0]})"
    do = "read the marks on the bolt's head again; use one of these, or name the condition again"
    raise LookupMiss(" ".join(grade), "grade", why, [f"{s} {g}" for s, g in own], do)


def _everyday_first(pairs: Iterable[tuple[str, str]], data: Refdata) -> list[tuple[str, str]]:
    """Grades in the order of how many torques are on record: what a shop meets most stands first."""
    count: dict[tuple[str, str], int] = {}
    for row in data.table("fasteners/torques").rows:
        pair = (row.key[1], row.key[2])
        count[pair] = count.get(pair, 0) + 1
    return sorted(pairs, key=lambda pair: -count.get(pair, 0))


def _grade_names(standard: str, grade_cell: str) -> tuple[str, ...]:
    s, g = standard.casefold(), grade_cell.casefold()
    return (f"{s} {g}", f"{s} grade {g}", f"{s} class {g}", f"{s}-{g}", g, f"grade {g}", f"class {g}")


def condition(typed: str, data: Refdata) -> tuple[str, str, str]:
    """The condition cell that was typed, with its surface and lubricant; LookupMiss with the conditions there are."""
    memo = ("condition", typed)
    got = data._memo.get(memo)
    if got is None:
        got = data._memo[memo] = _condition(typed, data)
    return got  # type: ignore[return-value]


def condition_cell(typed: str, data: Refdata) -> str:
    """The condition cell that was typed, one without a published friction too: it is asked about and not worked out."""
    try:
        return condition(typed, data)[0]
    except LookupMiss:
        cell = data.words("fasteners", "condition").get(" ".join(typed.split()).casefold())
        if cell is None or cell == "not stated":
            raise
        return cell


def surface_of(standard: str, grade_cell: str, surface: str, data: Refdata) -> str:
    """The surface that rubs: a bare one is that of the grade's own metal, where words.csv names it."""
    words = data.words("fasteners", "surface")
    own = words.get(f"{standard} {grade_cell}".casefold()) or words.get(standard.casefold())
    return own if own is not None and surface == "bare steel" else surface


def conditions(data: Refdata) -> list[str]:
    """Every condition with a known surface and lubricant; what torque tables print first, dry before all."""
    in_torques = data.table("fasteners/torques").column("condition")
    return sorted(_with_friction(data), key=lambda c: (c.casefold() not in in_torques, c != "dry", c))


def _with_friction(data: Refdata) -> list[str]:
    surfaces = data.words("fasteners", "surface")
    cells = dict.fromkeys(data.words("fasteners", "condition").values())
    lubricants = data.words("fasteners", "lubricant")
    pairs = {(r.key[0], r.key[1]) for r in data.table("fasteners/nut_factors").rows}
    return [
        c for c in cells if (surfaces.get(c.casefold()), lubricants.get(c.casefold())) in pairs and c != "not stated"
    ]


def _beside(size: str, cells: Sequence[str]) -> list[str]:
    """The metric threads of the diameters next to one that no thread has."""
    wanted = float(size)
    by_size = {c: float(c[1:].partition("x")[0]) for c in cells if c.startswith("M")}
    less = max((d for d in by_size.values() if d < wanted), default=0)
    more = min((d for d in by_size.values() if d > wanted), default=0)
    return [c for c, d in by_size.items() if d in (less, more)]


def _alike(text: str, choices: Iterable[str], count: int = 5) -> list[str]:
    from gaugeblock.tables.near import alike

    return alike(text, choices, count)


def _condition(typed: str, data: Refdata) -> tuple[str, str, str]:
    known = _with_friction(data)
    text = " ".join(typed.split())
    cell = data.words("fasteners", "condition").get(text.casefold())
    if cell is None:
        cell = next((c for c in known if c.casefold() == text.casefold()), None)
    if cell is not None and cell not in known and cell != "not stated":
        why = f"no published nut factor for {cell}"
        do = "ask its maker what it does to the torque; with the part maker's own torque leave the condition out"
        raise LookupMiss(typed, "condition", why, (), do)
    if cell is None or cell not in known:
        from gaugeblock.tables.near import offers

        spoken = {w: c for w, c in data.words("fasteners", "condition").items() if c in known}
        known = conditions(data)
        near = offers(text, {**spoken, **{c: c for c in known}}, known, column="fasteners condition", data=data)
        raise LookupMiss(
            typed,
            "condition",
            "not a condition of the tables",
            near,
            "use one of these",
        )
    surface = canonical(data, "fasteners/nut_factors", "surface", cell)
    lubricant = data.words("fasteners", "lubricant")[cell.casefold()]
    return cell, surface, lubricant
