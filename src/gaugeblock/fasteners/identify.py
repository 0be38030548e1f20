"""Identify: the thread that a measured diameter and pitch are of."""

from __future__ import annotations

import math
import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import Candidate, ask, none, use
from gaugeblock.answer.making import read_positive
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.joint import diameter_of
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

_INCH = 0.0254
# A pitch gauge tells 20 threads an inch from 19 and 1.25 mm from 1.27 only by many threads: so near is the same.
_SAME_PITCH = 0.013
_NEAR_PITCH = 0.06  # a gauge that nearly fits: of 1 mm in 24 threads an inch, of 1.5 mm in 16
_FAR = 0.1  # of the outside: beyond it nobody takes one thread for the other
# How far under its size the outside of a good thread may be, in its tolerance; a worn one is further.
_UNDER, _OVER = 2.0, 0.6
_PIPE_UNDER, _PIPE_OVER = 0.05, 0.02  # of the outside: a taper is measured where one will
_NEARER = 2e-5  # m, of two diameters: what a caliper tells
_MOST = 4
_OLD = "On an old British machine it may be Whitworth: the same size and pitch, and another angle. "
_COUNT = "Count its threads over an inch: a gauge may only nearly fit."
_NAME = "thread as measured"
_KIND = {"BSPT": "BSP, a British pipe thread, straight or taper", "NPT": "NPT, an American taper pipe thread"}
PARALLEL, TAPER = FORMS = ("parallel", "taper")
_OF_FORM = {
    None: _KIND,
    PARALLEL: {"BSPT": "BSPP, a British straight pipe thread"},
    TAPER: {"BSPT": "BSPT, a British taper pipe thread", "NPT": _KIND["NPT"]},
}
# Coarse threads whose size and pitch British Standard Whitworth has too, with an angle of 55 degrees.
_WHITWORTH = ("1/4-20", "5/16-18", "3/8-16", "7/16-14", "5/8-11", "3/4-10", "7/8-9", "1-8")


def identify(diameter: str, pitch: str, *, form: str | None = None, data: Refdata | None = None) -> Sheet:
    """The thread that has an outside diameter and a pitch.

    ``diameter`` over the threads of a bolt or a fitting (``22.2 mm``, ``.874 in``); ``pitch`` its threads an inch or
    its pitch (``14 tpi``, ``1.5 mm``); ``form`` ``parallel`` or ``taper`` where that was seen.

    Returns a Sheet whose decision is the thread by its name, with its diameter as printed; several where they are too
    near to tell, or where the gauge only nearly fits the one of that diameter; ``none`` where no table has such a
    thread. Raises InputError or UnitError for what cannot be read.
    How far under its size a thread may measure: the tolerance of ASME B1.1 class 2A, 0.060 P**(2/3) in (from memory),
    which is that of ISO 965-1 6g within a few per cent; twice that for a worn or a plated one (common practice).

    >>> identify("22.2 mm", "14 tpi").decision.verb
    'IT IS 7/8-14 UNF'
    """
    data = data or refdata()
    asked = {"diameter": diameter, "pitch": pitch, "form": form}
    if form not in (None, *FORMS):
        raise InputError(form or "(blank)", "form", "no form of a thread is called so", FORMS, "say one of these")
    across = read_positive(diameter, "length", "diameter")
    step, said = _pitch(pitch)
    title = f"thread of {across.text} outside, {said}" + (f", {form}" if form else "")
    outside = across.to("in") * _INCH
    found = _with_british(_found(outside, step, form, data), outside, step, form, data)
    if len(found) == 1:
        name, figure = found[0]
        old = _OLD if name.removesuffix(" UNC") in _WHITWORTH else ""
        do = f"{_on_a_flare(name, data)}{old}Try a known nut on it before you trust it."
        said_of = _not_mixed([name], data)
        return Sheet(title, asked, data, [figure], [], said_of, decision=use(f"IT IS {name}", figure, do))
    if found:
        say = "Roll it on a flat table or try a known nut: these are too near to tell apart by what you measured."
        return _may_be(title, asked, found, "more than one thread has this diameter and pitch", say, data)
    near = _found(outside, step, form, data, _NEAR_PITCH)
    if near:
        say = f"{_thinner(outside, step, data)}{_COUNT}"
        return _may_be(title, asked, near, f"no thread of this diameter has {said}, and these have nearly", say, data)
    nearest = ", ".join(_nearest(outside, step, data))
    do = f"No thread of the tables measures so. The nearest are {nearest}. Measure again: a worn one is thinner."
    return Sheet(title, asked, data, [], [], [], decision=none("", do))


def _may_be(
    title: str,
    asked: dict[str, str | None],
    found: list[tuple[str, Figure]],
    reason: str,
    say: str,
    data: Refdata,
) -> Sheet:
    """The Sheet of threads of which what was measured does not tell one."""
    check = Check(_NAME, CANNOT_TELL, reason, bears=INFORM)
    decision = ask("MAY BE", [Candidate(f, name) for name, f in found[:_MOST]], (_NAME,), say)
    question = Question(FILL_IN, say, "diameter", (_NAME,))
    cautions = _not_mixed([name for name, _ in found], data)
    figures = [figure for _, figure in found]
    return Sheet(title, asked, data, figures, [check], cautions, decision=decision, questions=[question])


def _not_mixed(names: list[str], data: Refdata) -> list[Caution]:
    """The rules of the tables on a thread that starts in the port of another."""
    cells = [name.partition(" ")[0] for name in names]
    return [
        Caution(rule["statement"], rule["severity"], (), rule["source"])
        for rule in data.statements("fasteners")
        if rule["subject"].endswith("threads") and not rule["standing"]
        if any(cell in re.findall(r"[^ ,:]+", rule["statement"]) for cell in cells)
    ]


def _thinner(outside: float, step: float, data: Refdata) -> str:
    """Which thread of the pitch it is not, and what that measures, as a sentence; blank for none that is near."""
    cells = dict.fromkeys(data.table("fasteners/threads").column("thread").values())
    same = [t for t in map(keys.read_cell, cells) if abs(t.pitch_m / step - 1) < _SAME_PITCH]
    near = min(same, key=lambda t: abs(t.diameter_m - outside), default=None)
    if near is None or abs(near.diameter_m / outside - 1) > _FAR:
        return ""
    slack = _slack(near)
    low, high = (x * 1000 for x in (near.diameter_m - _UNDER * slack, near.diameter_m + _OVER * slack))
    return f"It is no {near.cell}, which measures {low:.2f} to {high:.2f} mm outside, worn or new. "


def _pitch(typed: str) -> tuple[float, str]:
    """A pitch in metres, and how it was said: ``14 tpi``, ``1.5 mm``; InputError for neither."""
    text = " ".join(typed.split()).casefold()
    tpi = re.fullmatch(r"([0-9]+(?:\.[0-9]+)?) ?(?:tpi|threads?(?: per inch| to the inch| an inch)?|/in|1/in)", text)
    if tpi is not None and float(tpi[1]) > 0:
        return _INCH / float(tpi[1]), f"{tpi[1]} threads an inch"
    metric = re.fullmatch(r"([0-9]*\.?[0-9]+) ?mm(?: pitch)?", text)
    if metric is not None and float(metric[1]) > 0:
        return float(metric[1]) / 1000, f"pitch {metric[1]} mm"
    raise InputError(
        typed[:60] or "(blank)", "pitch", "neither threads an inch nor a pitch", (), 'write "14 tpi" or "1.5 mm"'
    )


def _slack(thread: keys.Thread) -> float:
    """The tolerance of the outside of a good thread, m."""
    return 0.060 * math.pow(thread.pitch_m / _INCH, 2 / 3) * _INCH


def _found(
    across: float, step: float, form: str | None, data: Refdata, near: float = _SAME_PITCH
) -> list[tuple[str, Figure]]:
    """The threads that measure so, each with its outside diameter; both in metres; ``near`` is a share of the pitch."""
    found = []
    for cell in dict.fromkeys(data.table("fasteners/threads").column("thread").values()) if form != TAPER else ():
        thread = keys.read_cell(cell)
        slack = _slack(thread)
        is_near = thread.diameter_m - _UNDER * slack <= across <= thread.diameter_m + _OVER * slack
        if is_near and abs(thread.pitch_m / step - 1) < near:
            found.append((cell, diameter_of(thread, data)))
    return [*found, *_pipes(across, step, form, data, near)]


def _with_british(
    found: list[tuple[str, Figure]], across: float, step: float, form: str | None, data: Refdata
) -> list[tuple[str, Figure]]:
    """With the old British threads that are nearer to what was measured than any thread of today: one of the same size
    and pitch as today's is told beside it.
    """

    def apart(one: tuple[str, Figure]) -> float:
        return abs(units.to_base(one[1].typical, one[1].unit) - across)

    nearest = min(map(apart, found), default=math.inf) - _NEARER
    old = [] if form == TAPER else _british(across, step, data)
    return sorted([*found, *(one for one in old if apart(one) < nearest)], key=apart)


def _british(across: float, step: float, data: Refdata) -> list[tuple[str, Figure]]:
    """The old British threads that measure so."""
    table, found = "fasteners/british_threads", []
    for series, size in dict.fromkeys((row["series"], row["size"]) for row in data.table(table).rows):
        outside = lookup.look_up(table, "major_diameter", data=data, series=series, size=size)
        metric = series == "BA"
        quantity = "pitch" if metric else "threads_per_inch"
        own = lookup.look_up(table, quantity, data=data, series=series, size=size)
        pitch = units.to_base(own.typical, own.unit) if metric else _INCH / own.typical
        diameter = units.to_base(outside.typical, outside.unit)
        slack = 0.060 * math.pow(pitch / _INCH, 2 / 3) * _INCH
        is_near = diameter - _UNDER * slack <= across <= diameter + _OVER * slack
        if is_near and abs(pitch / step - 1) < _SAME_PITCH:
            said = size if metric else f"{size}-{own.text}"
            found.append((f"{said} {series}", outside))
    return found


def _pipes(across: float, step: float, form: str | None, data: Refdata, near: float) -> list[tuple[str, Figure]]:
    table, found, kinds = "fasteners/pipe_threads", [], _OF_FORM[form]
    pairs = dict.fromkeys((row["series"], row["size"]) for row in data.table(table).rows if row["series"] in kinds)
    for series, size in pairs:
        tpi = lookup.look_up_or_none(table, "threads_per_inch", data=data, series=series, size=size)
        outside = lookup.look_up_or_none(table, "gauge_plane_major_diameter", data=data, series=series, size=size)
        if outside is None:
            nps = size.removesuffix(" in")
            outside = lookup.look_up_or_none("tubes/pipe_sizes", "outside_diameter", data=data, nps=nps, schedule="any")
        if tpi is None or outside is None or abs(_INCH / tpi.typical / step - 1) >= near:
            continue
        own = units.to_base(outside.typical, outside.unit)
        if own * (1 - _PIPE_UNDER) <= across <= own * (1 + _PIPE_OVER):
            found.append((f"{size.removesuffix(' in')} {kinds[series]}", outside))
    return found


def _nearest(across: float, step: float, data: Refdata) -> list[str]:
    """The threads of the tables nearest to what was measured, by diameter and pitch together."""
    cells = dict.fromkeys(data.table("fasteners/threads").column("thread").values())

    def apart(cell: str) -> float:
        thread = keys.read_cell(cell)
        return abs(thread.diameter_m / across - 1) + abs(thread.pitch_m / step - 1) / 2

    return sorted(cells, key=apart)[:3]


def _on_a_flare(name: str, data: Refdata) -> str:
    """The tube whose flare nut has the thread, as a sentence; blank for none."""
    if name.startswith("M") or "," in name or name.endswith((" BSF", " BSW", " BA")):
        return ""
    thread = keys.read_cell(name)
    found: dict[str, None] = {}
    table = data.table("tubes/flares")
    for row in table.rows:
        if row["quantity"] != "nut_thread_major_diameter" or row.standing or "37 deg" not in row["flare"]:
            continue
        if abs(units.to_base(row.typical, row["unit"]) - thread.diameter_m) > 1e-5:
            continue
        own = (r for r in table.rows if r.key == row.key and r["quantity"] == "nut_threads_per_inch")
        if any(abs(_INCH / r.typical - thread.pitch_m) < 1e-6 for r in own):
            found[row["od"]] = None
    return f"With a 37 deg nose it is for {next(iter(found))} tube. " if found else ""
