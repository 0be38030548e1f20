"""All tubes of a job together: the cut list on stock lengths."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import Typed
from gaugeblock.calc.stock import Bar, TooLongError, cut_list
from gaugeblock.tubes.plan.marks import Maker

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import Any

    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.plan.planned import Plan

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
    typed = Typed("cut list", data)
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
