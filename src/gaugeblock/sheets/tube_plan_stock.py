"""All tubes of a job together: the cut list on stock lengths, and the tubes against each other in space."""

from __future__ import annotations

from itertools import combinations

from gaugeblock import units
from gaugeblock.calc import clearance as space
from gaugeblock.calc.stock import Bar, TooLongError, cut_list
from gaugeblock.figure import Figure
from gaugeblock.sheets.sheet import CANNOT_TELL, NOT_OK, OK, Bound, Caution, Check, Sheet
from gaugeblock.sheets.tube_plan_keys import Typed
from gaugeblock.sheets.tube_plan_marks import Maker
from gaugeblock.sheets.tube_plan_space import place_words

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

    from gaugeblock.sheets.tube_plan import Plan
    from gaugeblock.tables.load import Refdata

HEADS = ("STOCK", "CUT", "LENGTH")


class Group:
    """Tubes of one material and size: their pieces, and the bars they are cut from once the stock is known."""

    __slots__ = ("bars", "label", "pieces", "plans")

    def __init__(self, label: str) -> None:
        self.label = label
        self.plans: list[tuple[Plan, int]] = []
        self.pieces: list[tuple[str, float]] = []
        self.bars: tuple[Bar, ...] = ()


def groups_of(plans: Sequence[tuple[Plan, Mapping[str, Any]]]) -> list[Group]:
    """Tubes that have marks, by material and size, in the order of the job."""
    out: dict[str, Group] = {}
    for plan, keys in plans:
        if plan.layout is None:
            continue
        words = [keys.get(k) for k in ("material", "product", "condition", "spec")]
        size = " x ".join(str(keys[k]) for k in ("od", "wall") if keys.get(k))
        group = out.setdefault(f"{size} {' '.join(w for w in words if w)}".strip(), Group(""))
        count = int(keys.get("count") or 1)
        group.plans.append((plan, count))
        for n in range(1, count + 1):
            name = plan.name if count == 1 else f"{plan.name}, {n} of {count}"
            group.pieces.append((name, round(plan.layout.cut_rounded, 9)))
    for label, group in out.items():
        group.label = label
    return list(out.values())


def cut_sheet(
    plans: Sequence[tuple[Plan, Mapping[str, Any]]], stock_length: str | None, kerf: str | None, data: Refdata
) -> tuple[Sheet, list[Group]]:
    """The cut list of all tubes: how many stock lengths, whether that is proved least, the offcuts by name."""
    groups = groups_of(plans)
    sheet = Sheet("cut list of all tubes", {"stock length": stock_length, "kerf": kerf}, data, [], [], [])
    without = [p.name for p, _ in plans if p.layout is None]
    if without:
        sheet.checks.append(
            Check("every tube is in the cut list", CANNOT_TELL, f"no cut length is known of {', '.join(without)}")
        )
    lost = [k for k, v in (("stock_length", stock_length), ("kerf", kerf)) if not v]
    if lost or stock_length is None or kerf is None:
        sheet.figures = [p.cut for g in groups for p, _ in g.plans if p.cut is not None]
        sheet.checks.append(
            Check("stock lengths", CANNOT_TELL, f"shop.{', shop.'.join(lost)} not given: the tubes are not packed")
        )
        return sheet, groups
    typed = Typed("cut list")
    stock, stock_figure = typed.figure(stock_length, "shop stock length", "length", "stock_length")
    saw, saw_figure = typed.figure(kerf, "shop kerf", "length", "kerf")
    offcuts = []
    number = 0
    for group in groups:
        make = Maker(f"cut list|{group.label}", group.plans[0][0].tape, data)
        inputs = (stock_figure, saw_figure, *(p.cut for p, _ in group.plans if p.cut is not None))
        name = f"stock lengths of {group.label}"
        try:
            got = cut_list(group.pieces, stock, saw)
        except TooLongError as error:
            sheet.checks.append(
                Check(
                    name,
                    NOT_OK,
                    f"{error.name} is longer than the stock of {stock_length}: make it of two pieces, or buy longer",
                )
            )
            continue
        for bar in got.bars:
            number += 1
            bar.offcut_name = f"offcut {number}"
        group.bars = got.bars
        count = make(
            "stock_count", "stock_bars", float(len(got.bars)), inputs, unit="1", conditions=f"{group.label}; {got.says}"
        )
        sheet.figures.append(count)
        text = f"{len(group.pieces)} piece{'s' if len(group.pieces) > 1 else ''} from {stock_length} with a kerf of {kerf}: {got.says}"
        sheet.checks.append(
            Check(name, OK if got.optimal else CANNOT_TELL, text, None, Bound(float(len(got.bars)), "1", figure=count))
        )
        for bar in got.bars:
            if bar.offcut > 0:
                words = f"{bar.offcut_name}: {group.label}, left of the bar with {', '.join(n for n, _ in bar.pieces)}"
                offcuts.append(
                    make.length("stock_offcut", "offcut", bar.offcut, inputs, bend=bar.offcut_name, conditions=words)
                )
    sheet.figures += offcuts
    text = "Write its name and its length on every offcut with paint: an offcut of unknown metal is scrap."
    sheet.cautions.append(Caution(text, "note", tuple(f.id for f in offcuts), "common practice"))
    return sheet, groups


def cut_rows(groups: Sequence[Group]) -> list[tuple[str, ...]]:
    """The cut list as rows for the saw: bar by bar, then its offcut."""
    rows: list[tuple[str, ...]] = [HEADS]
    number = 0
    for group in groups:
        tape = group.plans[0][0].tape
        if not group.bars:
            rows += [(group.label, name, tape.short(size)) for name, size in group.pieces]
        for bar in group.bars:
            number += 1
            for i, (name, size) in enumerate(bar.pieces):
                rows.append((f"{number}: {group.label}" if i == 0 else "", name, tape.short(size)))
            if bar.offcut > 0:
                rows.append(("", f"{bar.offcut_name} is left", tape.short(bar.offcut)))
    return rows


def together_sheet(plans: Sequence[tuple[Plan, Mapping[str, Any]]], data: Refdata) -> Sheet | None:
    """Tubes that stand in the vehicle against each other, under one datum; None when fewer than two do."""
    placed = [(p, k) for p, k in plans if p.tube is not None and p.shape is not None and p.shape.is_placed]
    if len(placed) < 2:
        return None
    sheet = Sheet("tubes against each other", {p.name: str(k.get("datum") or "") for p, k in placed}, data, [], [], [])
    tubes = [p.tube for p, _ in placed if p.tube is not None]
    found = {(g.first, g.second): g for g in space.tube_gaps(tubes)}
    for (a, ka), (b, kb) in combinations(placed, 2):
        name = f"gap of {a.name} and {b.name}"
        if not ka.get("datum") or ka.get("datum") != kb.get("datum"):
            sheet.checks.append(
                Check(name, CANNOT_TELL, "their datums are not stated in the same words: measure both from one datum")
            )
            continue
        gap = found[(a.name, b.name)]
        leaves = tuple(
            f for p in (a, b) if p.shape is not None and p.radius is not None for f in (*p.shape.leaves, p.radius)
        )
        at = f"at {place_words(gap.at, a.tape)} of the datum, movement counted"
        figure = a.make("least_gap_moved", "surface_gap", gap.gap, leaves, bend=b.name, conditions=f"{name}, {at}")
        sheet.figures.append(figure)
        sheet.checks.append(_pair_check(name, gap, at, figure, [k["gap"] for k in (ka, kb) if k.get("gap")], a))
    return sheet


def _pair_check(name: str, gap: space.Gap, at: str, figure: Figure, asked: list[str], plan: Plan) -> Check:
    got = Bound(figure.typical, figure.unit, figure=figure)
    if gap.gap <= 0:
        return Check(name, NOT_OK, f"they touch, {at}", None, got)
    if not asked:
        return Check(name, CANNOT_TELL, f"{plan.tape.reads(gap.gap)}, {at}; no gap is asked for", None, got)
    typed = Typed(plan.name)
    needs = [typed.figure(t, "gap", "length", "gap_asked") for t in asked]
    need, need_figure = max(needs, key=lambda n: n[0])
    text = f"{plan.tape.reads(gap.gap)}, {at}; {plan.tape.reads(need)} asked"
    bound = Bound(units.from_base(need, plan.tape.unit), plan.tape.unit, "min", need_figure)
    is_enough = gap.low >= need - 1.1 * space.TOLERANCE
    return Check(name, OK if is_enough else NOT_OK, text, bound, got, (gap.gap - need) / need if need else None)
