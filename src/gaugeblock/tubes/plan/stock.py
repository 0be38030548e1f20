"""All tubes of a job together: the cut list on stock lengths."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.decision import ASK as ASKS
from gaugeblock.answer.decision import Candidate, none, stop, use
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Typed
from gaugeblock.calc.stick import round_to
from gaugeblock.calc.stock import TooLongError, cut_list
from gaugeblock.tubes.plan.found import Found, joined
from gaugeblock.tubes.plan.making import Make
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.decision import Decision
    from gaugeblock.calc.stock import Bar
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.plan.planned import Plan
    from gaugeblock.units import Measure

VERB = "CUT FROM"
HEADS = ("STOCK", "CUT", "LENGTH")
WHOLE, LENGTHS = "every tube is in the cut list", "stock lengths"


class Group(Value):
    """Tubes of one material and size: their plans, their pieces in m, and the bars they are cut from where known."""

    __slots__ = ("bars", "label", "pieces", "plans")

    label: str
    plans: tuple[Plan, ...]
    pieces: tuple[tuple[str, float], ...]
    bars: tuple[Bar, ...]

    def __init__(
        self,
        label: str,
        plans: tuple[Plan, ...],
        pieces: tuple[tuple[str, float], ...],
        bars: tuple[Bar, ...] = (),
    ) -> None:
        put(self, "label", label)
        put(self, "plans", plans)
        put(self, "pieces", pieces)
        put(self, "bars", bars)

    @property
    def tape(self) -> Tape:
        """The tape of its tubes."""
        return self.plans[0].given.tape

    @property
    def cuts(self) -> list[Figure]:
        """The cut length of each tube."""
        return [p.bench.cut for p in self.plans if p.bench is not None]

    def cut_of(self, piece: str) -> Figure:
        """The cut length of the tube that a piece is for."""
        owners = {name: p.bench.cut for p in self.plans if p.bench is not None for name in _names(p)}
        return owners[piece]


def _names(plan: Plan) -> list[str]:
    count = plan.given.tube.count or 1
    return [plan.name] if count == 1 else [f"{plan.name}, {n} of {count}" for n in range(1, count + 1)]


def groups_of(plans: Sequence[Plan]) -> list[Group]:
    """Tubes that may be cut, by material and size, in the order of the job; one that is stopped is not cut."""
    out: dict[str, Group] = {}
    for plan in plans:
        marks, tube = plan.bench, plan.given.tube
        if marks is None:
            continue
        words = [tube.material, tube.product, tube.condition, tube.spec]
        size = " x ".join(str(t) for t in (tube.od, tube.wall) if t)
        label = f"{size} {' '.join(w for w in words if w)}".strip()
        length = round(round_to(marks.layout.cut_length, plan.given.tape.step), 9)
        before = out.get(label) or Group(label, (), ())
        out[label] = Group(label, (*before.plans, plan), (*before.pieces, *((n, length) for n in _names(plan))))
    return list(out.values())


def cut_sheet(
    plans: Sequence[Plan], stock_length: Measure | None, kerf: Measure | None, data: Refdata
) -> tuple[Sheet, list[Group]]:
    """The cut list of all tubes: how many stock lengths, whether that is proved least, the offcuts by name."""
    groups = groups_of(plans)
    asked = {"stock length": str(stock_length) if stock_length else None, "kerf": str(kerf) if kerf else None}
    first = _left_out(plans)
    if stock_length is None or kerf is None:
        found = joined([first, _unpacked(groups, stock_length, kerf)])
    else:
        packed, groups = _packed(groups, stock_length, kerf, data)
        found = joined([first, packed])
    sheet = Sheet(
        "cut list of all tubes",
        asked,
        data,
        list(found.figures),
        list(found.checks),
        list(found.cautions),
        decision=_decision(found, beside_a_cut_list(plans)),
        questions=found.questions,
    )
    return sheet, groups


def beside_a_cut_list(plans: Sequence[Plan]) -> str:
    """What a cut list leaves out, and which of its pieces are not settled yet, in sentences; blank where there is none
    of either.
    """
    out = [p.name for p in plans if p.bench is None or p.is_stopped]
    asked = [p.name for p in plans if _is_asked(p)]
    told = [f"Not in it: {', '.join(out)}, see its own card." if len(out) == 1 else ""]
    told += [f"Not in it: {', '.join(out)}, see their own cards." if len(out) > 1 else ""]
    told += [f"Not settled yet, so cut last: {', '.join(asked)}." if asked else ""]
    return " ".join(t for t in told if t)


def _is_asked(plan: Plan) -> bool:
    """Whether a tube is in the cut list and asks something first, by which its length may change."""
    return plan.bench is not None and not plan.is_stopped and plan.sheet.decision.kind == ASKS


def _decision(found: Found, beside: str) -> Decision:
    """How many stock lengths of each metal and size; a piece that is too long stops."""
    counts = [f for f in found.figures if f.quantity == "stock_bars"]
    failed = [c for c in found.checks if c.stops]
    if failed:
        return stop(VERB, [Candidate(f) for f in counts], [c.name for c in failed], f"{failed[0].reason}.")
    if not counts:
        return none(VERB, " ".join(q.text for q in found.questions) or "Give the stock length and the kerf.")
    said = "; ".join(
        f"{f.typical:g} stock length{'' if f.typical == 1 else 's'} of tube {f.conditions.partition(';')[0]}"
        for f in counts
    )
    do = f"{said}. {beside}".rstrip()
    return use(VERB, counts[0], do, [c.name for c in found.checks if c.result == OK])


def _left_out(plans: Sequence[Plan]) -> Found:
    """Tubes that are not cut: those that are stopped, and those of no known length."""
    stopped = [p.name for p in plans if p.is_stopped]
    unknown = [p.name for p in plans if p.bench is None and not p.is_stopped]
    checks = []
    if stopped:
        why = f"not in the cut list: {', '.join(stopped)} (stopped, see the tube's own sheet)"
        checks.append(Check(WHOLE, CANNOT_TELL, why, bears=INFORM))
    if unknown:
        why = f"not in the cut list: {', '.join(unknown)} (no cut length yet)"
        checks.append(Check(WHOLE, CANNOT_TELL, why, bears=INFORM))
    return Found(checks=checks)


def _unpacked(groups: list[Group], stock_length: Measure | None, kerf: Measure | None) -> Found:
    lost = [k for k, v in (("stock_length", stock_length), ("kerf", kerf)) if v is None]
    why = f"{', '.join(f'shop.{k}' for k in lost)} not given: the tubes are not packed"
    asks = [Question(FILL_IN, f"Give the {k.replace('_', ' ')}.", f"shop.{k}", (LENGTHS,)) for k in lost]
    return Found([f for g in groups for f in g.cuts], [Check(LENGTHS, CANNOT_TELL, why, bears=ASK)], (), asks)


def _packed(groups: list[Group], stock_length: Measure, kerf: Measure, data: Refdata) -> tuple[Found, list[Group]]:
    """Each group on its bars."""
    typed = Typed("cut list", data)
    stock, stock_figure = typed.figure(stock_length, "shop stock length", "length", "stock_length")
    saw, saw_figure = typed.figure(kerf, "shop kerf", "length", "kerf")
    counts: list[Figure] = []
    offcuts: list[Figure] = []
    checks, out, number = [], [], 0
    for group in groups:
        name = f"stock lengths of {group.label}"
        try:
            got = cut_list(list(group.pieces), stock, saw)
        except TooLongError as error:
            why = f"{error.name} is longer than the stock of {stock_length}: make it of two pieces, or buy longer"
            checks.append(Check(name, NOT_OK, why, subject=error.name))
            out.append(group)
            continue
        make = Make(f"cut list|{group.label}", group.tape, data)
        inputs = (stock_figure, saw_figure, *group.cuts)
        words = f"{group.label}; {got.says}"
        count = make("stock_count", "stock_bars", float(len(got.bars)), inputs, unit="1", conditions=words)
        counts.append(count)
        pieces = len(group.pieces)
        text = f"{pieces} piece{'s' if pieces > 1 else ''} from {stock_length} with a kerf of {kerf}: {got.says}"
        bound = Bound(float(len(got.bars)), "1", figure=count)
        checks.append(Check(name, OK if got.optimal else CANNOT_TELL, text, None, bound, bears=INFORM))
        out.append(group.replace(bars=got.bars))
        for bar in got.bars:
            number += 1
            if bar.offcut > 0:
                cut = ", ".join(n for n, _ in bar.pieces)
                words = f"offcut {number}: {group.label}, left of the bar with {cut}"
                left = (stock_figure, saw_figure, *(group.cut_of(n) for n, _ in bar.pieces))
                offcuts.append(
                    make.length("stock_offcut", "offcut", bar.offcut, left, bend=f"offcut {number}", conditions=words)
                )
    text = "Write its name and its length on every offcut with paint: an offcut of unknown metal is scrap."
    caution = Caution(text, "note", tuple(f.id for f in offcuts), "common practice")
    return Found([*counts, *offcuts], checks, [caution]), out


def _said(name: str, asked: set[str]) -> str:
    """A piece by its name, and whether its card asks something first."""
    return f"{name}: ask first" if name in asked else name


def cut_rows(groups: Sequence[Group]) -> list[tuple[str, ...]]:
    """The cut list as rows for the saw: bar by bar, then its offcut."""
    rows: list[tuple[str, ...]] = [HEADS]
    number = 0
    for group in groups:
        short = group.tape.short
        asked = {name for plan in group.plans if _is_asked(plan) for name in _names(plan)}
        if not group.bars:
            rows += [(group.label, _said(name, asked), short(size)) for name, size in group.pieces]
        for bar in group.bars:
            number += 1
            for i, (name, size) in enumerate(bar.pieces):
                rows.append((f"{number}: {group.label}" if i == 0 else "", _said(name, asked), short(size)))
            if bar.offcut > 0:
                rows.append(("", f"offcut {number} is left", short(bar.offcut)))
    return rows
