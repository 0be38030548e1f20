"""From a torque at the fastener to what the wrench is set to: a locknut's drag, a crow-foot, the graduations of a
wrench.
"""

from __future__ import annotations

from fractions import Fraction

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check, at_least, at_most
from gaugeblock.answer.decision import NEW_BOLTS_FIRST
from gaugeblock.answer.making import base, derived, moved_ends, stated
from gaugeblock.answer.printing import display_unit
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.errors import InputError
from gaugeblock.fasteners.bolt import CrowFoot, Tools
from gaugeblock.fasteners.draft import CAN_SET, REUSE
from gaugeblock.fasteners.way import exact_way
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.fasteners.bolt import Wish
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.fasteners.way import Way
    from gaugeblock.job.wrench import WrenchRange
    from gaugeblock.tables.load import Refdata

# Ends of a habit that are no further apart than this are one figure and its tolerance.
_ONE_FIGURE = 1.25
DRAG, LARGEST = "locknut's drag", "locknut not too tight"


class Setting(Value):
    """What to set: the ``figure`` (a setting, or the torque itself where nothing is in between), the wrench, its steps.

    ``is_short`` says that no wrench given can set it.
    """

    __slots__ = ("figure", "is_short", "steps", "wrench")

    figure: Figure
    steps: tuple[Figure, ...]
    wrench: WrenchRange | None
    is_short: bool

    def __init__(
        self, figure: Figure, steps: tuple[Figure, ...] = (), wrench: WrenchRange | None = None, is_short: bool = False
    ) -> None:
        put(self, "figure", figure)
        put(self, "steps", steps)
        put(self, "wrench", wrench)
        put(self, "is_short", is_short)


def drag_of(tools: Tools, data: Refdata) -> Figure | None:
    """The locknut's drag as measured; None where none was."""
    if tools.prevailing is None:
        return None
    return stated(
        tools.prevailing, "prevailing_torque", "prevailing", data, read_by="the shop's wrench, as it runs down"
    )


def check_locknut(tools: Tools, thread: str, size: str, service: str, drag: Figure | None, draft: Draft) -> None:
    """Whether the drag is known, and whether it is between the least for reuse and the most of a new nut."""
    if tools.locknut and tools.prevailing is None:
        reason = (
            "the drag of this locknut is not measured; what tables print is the least that an old one must still have"
        )
        draft.check(Check(DRAG, CANNOT_TELL, reason, bears=ASK))
        text = "Measure the drag of the locknut while it runs down, before it seats. Add it to the torque."
        draft.ask(Question(MEASURE, text, "prevailing", (DRAG,)))
    if not tools.locknut or not thread:
        return
    limits = {
        "reuse_prevailing_torque_minimum": REUSE,
        "prevailing_torque_minimum": REUSE,
        "prevailing_torque_maximum": LARGEST,
    }
    for quantity, name in limits.items():
        limit = _limit(quantity, tools.locknut, thread, size, service, draft.data)
        if limit is None:
            continue
        draft.figure(limit)
        says = (
            f"{'least drag to use it again' if name == REUSE else 'most drag of a new one'} {limit.text} {limit.unit}"
        )
        if drag is None:
            side = limit.side
            draft.check(Check(name, CANNOT_TELL, says, Bound(limit.typical, limit.unit, side, limit), bears=INFORM))
            continue
        got = Bound(units.from_base(base(drag), limit.unit), limit.unit, figure=drag)
        held = at_least if name == REUSE else at_most
        draft.check(
            held(name, got, Bound(limit.typical, limit.unit, figure=limit), f"{drag.text} {drag.unit} measured; {says}")
        )


def _limit(quantity: str, nut: str, thread: str, size: str, service: str, data: Refdata) -> Figure | None:
    """A limit of a locknut's drag, for its thread or else for its bare size."""
    table = "fasteners/prevailing"
    known = data.table(table).column("thread")
    for cell in (thread, size):
        if cell.casefold() in known:
            got = lookup.look_up_or_none(table, quantity, data=data, nut=nut, thread=cell, service=service)
            if got is not None:
                return got
    return None


def bare_size(thread: str) -> str:
    """The size of an inch thread as a table of locknuts names it (``3/8 in``); the thread itself for a metric one."""
    if thread.startswith("M"):
        return thread.split("x", maxsplit=1)[0]
    return f"{thread.rsplit('-', 1)[0].replace('-', ' ')} in"


def setting(way: Way, drag: Figure | None, tools: Tools, data: Refdata) -> Setting:
    """What to set for a way: the drag added, the crow-foot counted, on a graduation where wrenches are given."""
    now, low, high = way.figure, way.low, way.high
    steps: list[Figure] = []
    key, about = way.figure.key, way.figure.text or f"{way.figure.typical:.6g}"
    if drag is not None:
        extra = units.from_base(base(drag), now.unit)
        low, high = low + extra, high + extra
        inputs, says = (now, drag), "drag of the locknut added"
        now = derived(
            "prevailing_added",
            "torque_setting",
            now.typical + extra,
            now.unit,
            inputs,
            data,
            about=f"{about}|{drag.id}",
            ends=moved_ends(now, lambda end: end + extra),
            side="target",
            key=key,
            conditions=says,
        )
        steps = [now, drag, *steps]
    if tools.adapter is not None:
        ratio, parts = tools.adapter.ratio, crow_foot_figures(tools.adapter, data)
        low, high = low * ratio, high * ratio
        now = derived(
            "wrench_adapter_at_angle",
            "torque_setting",
            now.typical * ratio,
            now.unit,
            (now, *parts),
            data,
            about=f"{about}|{tools.adapter.text}",
            ends=moved_ends(now, lambda end: end * ratio),
            side="target",
            key=key,
            conditions=f"crow-foot {tools.adapter.text}",
        )
        steps = [now, *steps]
    if not tools.wrenches or is_disagreement(way.figure):
        return Setting(now, tuple(steps))
    return _on_a_wrench(way, now, (low, high), steps, tools.wrenches, data)


def is_disagreement(figure: Figure) -> bool:
    """Whether a range is a habit's ends that are far apart: its middle is nobody's figure, and none is set to it."""
    if figure.basis != "common practice" or figure.value is not None or not figure.low or not figure.high:
        return False
    return figure.high > _ONE_FIGURE * figure.low


def crow_foot_figures(adapter: CrowFoot, data: Refdata) -> tuple[Figure, ...]:
    """Length of the wrench, length of the arm and angle of a crow-foot, as the formula takes them."""
    angle = adapter.angle or units.Measure(Fraction(0), "deg", "0 deg")
    return (
        stated(adapter.wrench, "wrench_length", "adapter.wrench_length", data),
        stated(adapter.arm, "adapter_length", "adapter.length", data),
        stated(angle, "adapter_angle", "adapter.angle", data),
    )


def tolerance_of(wrench: WrenchRange, data: Refdata) -> Figure | None:
    """What a wrench of this size may miss by, from the standard of wrenches; None where the tables have none."""
    case = "reading of a wrench over 10 N*m" if wrench.to_nm(wrench.high) > 10 else "reading of a wrench to 10 N*m"
    return lookup.look_up_or_none(
        "fasteners/preload", "wrench_tolerance", data=data, method="torque wrench", lubricant="any", case=case
    )


def _on_a_wrench(
    way: Way,
    now: Figure,
    window: tuple[float, float],
    steps: list[Figure],
    wrenches: tuple[WrenchRange, ...],
    data: Refdata,
) -> Setting:
    """The best graduation of all wrenches: inside the window, else as near as the standard lets a wrench miss."""
    low, high = window
    found: list[tuple[bool, bool, bool, float, float, str, WrenchRange, Fraction]] = []
    shown = display_unit(now.typical, now.unit)
    for wrench in wrenches:
        miss = tolerance_of(wrench, data)
        share = miss.typical / 100 if miss is not None else 0.0
        inside = _nearest(wrench, now, low, high)
        wide = (low * (1 - share), high if way.is_most else high * (1 + share))
        mark = inside if inside is not None else _nearest(wrench, now, *wide)
        if mark is None:
            continue
        off = abs(units.from_base(wrench.to_nm(mark), now.unit) / now.typical - 1)
        is_low = wrench.to_nm(mark) < 0.2 * wrench.to_nm(wrench.high)
        is_far = miss is None or off > share
        # low on its scale a wrench reads worse; near enough, the unit that the torque is named in comes before a
        # finer step
        rank = (is_low, is_far, wrench.unit != shown, round(off, 6), wrench.to_nm(wrench.step), wrench.text)
        found.append((*rank, wrench, mark))
    if not found:
        return Setting(now, tuple(steps), None, True)
    *_, wrench, mark = min(found, key=lambda f: f[:6])
    set_to = derived(
        "nearest_graduation",
        "torque_setting",
        float(mark),
        wrench.unit,
        (now,),
        data,
        about=f"{way.figure.text or f'{way.figure.typical:.6g}'}|{now.id}|{wrench.text}",
        ends=moved_ends(now, lambda end: units.in_unit(end, now.unit, wrench.unit)),
        side="target",
        key=way.figure.key,
        conditions=f"wrench {wrench.text}",
        text=units.decimal_text(mark),
    )
    return Setting(set_to, (set_to, *([now] if now not in steps else []), *steps), wrench)


def _nearest(wrench: WrenchRange, now: Figure, low: float, high: float) -> Fraction | None:
    """The graduation nearest the target inside [low, high], which are in the target's unit."""

    def exact(value: float) -> Fraction:
        return units.convert(Fraction(value).limit_denominator(10**9), now.unit, wrench.unit)

    return wrench.nearest_inside(exact(now.typical), exact(low), exact(high))


def check_wrench(made: Setting, tools: Tools, draft: Draft) -> None:
    """Whether a wrench can set it, with what one may miss by and whose standard says so."""
    if not tools.wrenches or (made.wrench is None and not made.is_short):
        return
    wanted = made.figure if made.is_short else made.figure.inputs[0]
    text = f"{units.significant(wanted.typical, 4)} {wanted.unit}"
    if wanted.value is None and wanted.low is not None and wanted.high is not None:
        low, high = (units.significant(e, 4) for e in (wanted.low, wanted.high))
        text = f"{low} to {high} {wanted.unit}"
    if made.wrench is None:
        which = "none of the wrenches" if len(tools.wrenches) > 1 else f"a wrench of {tools.wrenches[0].text}"
        can = "can" if len(tools.wrenches) > 1 else "cannot"
        reason = f"{which} {can} be set to {text}: use a wrench that reads it"
        draft.check(Check(CAN_SET, NOT_OK, reason, Bound(wanted.typical, wanted.unit, "", wanted), bears=STOP))
        question = f"Name a wrench that reads {text}."
        draft.ask(Question(FILL_IN, question, "wrench", (CAN_SET,)))
        return
    miss = tolerance_of(made.wrench, draft.data)
    by = f"{miss.text} % is what {miss.source} lets a wrench miss by" if miss is not None else "as graduated"
    off = (units.from_base(base(made.figure), wanted.unit) / wanted.typical - 1) * 100
    reason = f"{made.figure.text} {made.figure.unit} on {made.wrench.text}, {off:+.1f} % from {text}; {by}"
    draft.figure(miss)
    draft.check(
        Check(
            CAN_SET,
            OK,
            reason,
            Bound(wanted.typical, wanted.unit, "", wanted),
            Bound(made.figure.typical, made.figure.unit, "", made.figure),
            bears=STOP,
        )
    )


def at_the_thread(given: Figure, drag: Figure | None, adapter: CrowFoot | None, data: Refdata) -> list[Figure]:
    """What of a setting reaches the thread, first, with its steps.

    A crow-foot makes it more, a locknut takes its own part.
    """
    now, steps = given, list[Figure]()
    about = f"{given.text} {given.unit}"
    if adapter is not None:
        inputs = (now, *crow_foot_figures(adapter, data))
        now = derived(
            "torque_through_adapter",
            "tightening_torque",
            now.typical / adapter.ratio,
            now.unit,
            inputs,
            data,
            about=f"{about}|{adapter.text}",
            side="nominal",
            key=given.key,
            conditions=f"through the crow-foot {adapter.text}",
        )
        steps = [now]
    if drag is None:
        return steps
    left = now.typical - units.from_base(base(drag), now.unit)
    if left <= 0:
        why = "the locknut alone takes all of it"
        raise InputError(about, "given", why, (), "give the setting that clamps")
    now = derived(
        "prevailing_taken_off",
        "tightening_torque",
        left,
        now.unit,
        (now, drag),
        data,
        about=f"{about}|{drag.id}",
        side="nominal",
        key=given.key,
        conditions="drag of the locknut taken off",
    )
    return [now, drag, *steps]


# --- of each torque that may be the one -----------------------------------------------------------------------------


def settings_of(
    ways: Sequence[Way], tools: Tools, thread: str, service: str, draft: Draft
) -> list[tuple[Way, Setting]]:
    """Each way with what to set for it; the locknut and the wrenches are checked once."""
    data = draft.data
    drag = drag_of(tools, data)
    check_locknut(tools, thread, bare_size(thread) if thread else "", service, drag, draft)
    if tools.locknut and drag is None:
        # without the drag no wrench can be set: the torque itself is shown, and what is to be added to it
        then = "set the wrench to this and the drag together"
        tools = tools.replace(wrenches=(), adapter=None)
        ways = [w.replace(then=f"{w.then}; {then}" if w.then else then) for w in ways]
    outcomes = [(way, setting(way, drag, tools, data)) for way in ways]
    short = next(((w, s) for w, s in outcomes if s.is_short), None)
    checked = short or (outcomes[-1] if outcomes else None)
    if checked is not None:
        check_wrench(checked[1], tools, draft)
    return outcomes


def stages_in_words(wish: Wish, tools: Tools, draft: Draft) -> list[str]:
    """The stages of a maker's tightening, each torque as the wrench is set for it."""
    from gaugeblock.answer.printing import number_only

    if wish.maker is None:
        return []
    drag = drag_of(tools, draft.data)
    is_in_play = drag is not None or tools.adapter is not None or bool(tools.wrenches)
    said = [NEW_BOLTS_FIRST] if wish.maker.new_bolts else []
    for at, stage in enumerate(wish.maker.stages.steps):
        if not stage.is_torque or not is_in_play:
            said.append(stage.do)
            continue
        made = setting(exact_way(wish.maker.figure(at)), drag, tools, draft.data)
        said.append(f"set {number_only(made.figure, draft.data)} and tighten")
    return said
