"""Hole: what to drill for a tap, or for a bolt to pass."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.calc.fasteners import tap_depth
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.drills import nearest
from gaugeblock.tables.load import Refdata, canonical, refdata
from gaugeblock.tables.part import rows_of
from gaugeblock.value import Keys

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.fasteners.keys import Thread
    from gaugeblock.figure import Figure

TABLE = "fasteners/holes"
VERB = "DRILL"
TAP, _CLEARANCE, INSERT, FORM = "tap drill", "clearance", "thread insert", "form tap"
RULE, SHARE = "tap_drill_for_thread_share", 0.75
_FITS = ("close", "normal", "free")
_LEAST_SHARE, _MOST_SHARE = 0.4, 0.9  # under it no thread holds, over it no tap turns
_SAME = 1e-6  # of a diameter, m


def _hole_topic() -> Topic:
    from gaugeblock.fasteners.hole_ask import HOLE

    return HOLE


def fits_of(thread: str, data: Refdata) -> list[str]:
    """The kinds of hole for a thread's cell: for its tap, and for a bolt to pass, which goes by its diameter alone."""
    own = [row["fit"] for row in rows_of(data, TABLE, thread) if not row["standing"]]
    passing = [row["fit"] for row in rows_of(data, TABLE, _alike(thread, data)) if row["fit"].startswith(_CLEARANCE)]
    return list(dict.fromkeys([TAP, *own, *passing]))


def _alike(thread: str, data: Refdata) -> str:
    """The thread of the tables with the diameter of this one, the thread itself where it has a hole for a bolt."""
    cells = list(dict.fromkeys(data.table(TABLE).column("thread").values()))
    if thread in cells:
        return thread
    diameter = keys.thread(thread, data).diameter_m
    return next((c for c in cells if abs(keys.thread(c, data).diameter_m - diameter) < _SAME), thread)


@opens(_hole_topic, "thread")
def hole(thread: str, *, fit: str | None = None, share: str | None = None, data: Refdata | None = None) -> Sheet:
    """The hole to drill for a thread.

    ``thread`` ``3/8-16`` or ``M8``; ``fit`` ``tap drill``, ``close``, ``normal`` or ``free`` for a bolt to pass,
    ``thread insert`` or ``form tap``; ``share`` how much of the full thread the tap shall cut, ``60 %``, where it is
    not the usual three quarters.

    Returns a Sheet. The drill for a tap of which no list has one is calculated for three quarters of the full thread;
    the hole for a bolt to pass is that of its diameter, coarse or fine. Raises Ambiguous with the holes there are when
    none is named, LookupMiss for what is no thread or no fit, InputError for a share of no tap.

    >>> hole("M8", fit="tap drill").decision.figure.text
    '6.8'
    """
    data = data or refdata()
    found = keys.thread(thread, data)
    known = fits_of(found.cell, data)
    asked = {"thread": thread, "fit": fit, "share": share}
    if share is not None:
        return _of_share(found, fit, share, asked, data)
    fit = f"{_CLEARANCE}, {fit.casefold()}" if fit is not None and fit.casefold() in _FITS else fit
    if fit == INSERT:
        do = "The insert's maker gives its drill and its tap: the hole is larger than that of the bolt's own tap."
        return Sheet(f"hole for an insert of {found.cell}", asked, data, [], [], [], decision=none(VERB, do))
    if fit == FORM:
        do = (
            "A form tap pushes the thread up and cuts none: its hole is larger than that of a cutting tap, which it"
            " would break in. Its maker prints the drill. Common practice is about the diameter less half a pitch."
        )
        return Sheet(f"hole for a form tap of {found.cell}", asked, data, [], [], [], decision=none(VERB, do))
    cell = None if fit is None else canonical(data, TABLE, "fit", fit)
    title = f"hole for {found.cell}, {cell}"
    if cell is not None and cell not in known and cell.startswith(_CLEARANCE):
        known = [k for k in known if k.startswith(_CLEARANCE)]
        if not known:
            do = "No drill list that was read has a bolt of this size. Its maker's catalogue has the hole."
            return Sheet(title, asked, data, [], [], [], decision=none(VERB, do))
        cell = None
    if cell is None or cell not in known:
        raise Ambiguous(found.cell, "fit", "which hole was not said", known, "name the fit")
    at = found.cell if cell == TAP else _alike(found.cell, data)
    figure = lookup.look_up_or_none(TABLE, "hole_diameter", data=data, thread=at, fit=cell)
    if figure is not None:
        do = f"{nearest(base(figure), data)}."
        return Sheet(title, asked, data, [figure], [], [], decision=use(VERB, figure, do))
    made = _calculated(found, data)
    said = [Caution("No drill list that was read has this thread. Take the nearest drill.", "damage", (made.id,), "")]
    do = f"{nearest(base(made), data)}."
    return Sheet(title, asked, data, [made], [], said, decision=use(VERB, made, do))


def _of_share(thread: Thread, fit: str | None, share: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The Sheet of the drill for a tap that leaves this share of the full thread."""
    if fit is not None and canonical(data, TABLE, "fit", fit) != TAP:
        raise InputError(share, "share", "only a tap leaves a share of the thread", (), "ask for the tap drill")
    part = float(number[1]) / 100 if (number := re.fullmatch(r"([0-9]+(?:\.[0-9]+)?) ?(?:%|percent)", share)) else 0
    if not _LEAST_SHARE <= part <= _MOST_SHARE:
        ends = f"{_LEAST_SHARE:.0%} to {_MOST_SHARE:.0%}".replace("%", " %")
        raise InputError(share, "share", f"no tap is drilled for it: {ends} of the thread is", (), 'write "60 %"')
    made = _calculated(thread, data, part)
    sooner = "less of the thread strips" if part < SHARE else "more of the thread breaks the tap"
    said = [Caution(f"Take the nearest drill. Than with three quarters, {sooner} sooner.", "damage", (made.id,), "")]
    title = f"hole for {thread.cell}, {TAP}, {part:.0%} of the thread".replace("%", " %")
    do = f"{nearest(base(made), data)}."
    return Sheet(title, asked, data, [made], [], said, decision=use(VERB, made, do))


def _calculated(thread: Thread, data: Refdata, share: float = SHARE) -> Figure:
    """The drill for a tap, for a share of thread; unsaid, for that which the drill lists take."""
    unit = "mm" if thread.is_metric else "in"
    diameter = lookup.look_up("fasteners/threads", "major_diameter", data=data, thread=thread.cell)
    named = thread.cell.partition("x")[2] if thread.is_metric else f"1/{thread.cell.partition('-')[2].split(' ')[0]}"
    pitch = stated(units.parse_measure(f"{named} {unit}", "length", "pitch"), "pitch", "thread", data)
    length = base(diameter) - tap_depth(base(pitch), share)
    key = Keys(thread=thread.cell)
    value = units.from_base(length, unit)
    about = f"{share:.0%} of the full thread"
    return derived(RULE, "hole_diameter", value, unit, [diameter, pitch], data, key=key, conditions=about)
