"""What the wrench is set to: prevailing torque added, a crow-foot counted, on a graduation inside the window."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check
from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure
from gaugeblock.job.wrench import read_wrench
from gaugeblock.tables.load import canonical

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.joint import Joint
    from gaugeblock.tables.load import Refdata

_ADAPTER = r"(?P<adapter>.+?)\s+on\s+(?P<wrench>.+?)(?:\s+at\s+(?P<angle>.+))?"


def setting(
    answer: Figure,
    derived: Figure | None,
    found: Joint,
    locknut: str | None,
    prevailing: str | None,
    wrench: str | None,
    adapter: str | None,
    data: Refdata,
) -> tuple[list[Figure], list[Check], list[Caution]]:
    """Figures, checks and cautions of a wrench, a crow-foot and a locknut."""
    figures: list[Figure] = []
    checks: list[Check] = []
    cautions: list[Caution] = []
    now = answer
    low, high = _window(answer, derived)
    if locknut is not None or prevailing is not None:
        drag = _prevailing(found, locknut, prevailing, data)
        if drag is None:
            checks.append(
                Check(
                    "prevailing torque added",
                    CANNOT_TELL,
                    f"no figure for {locknut} on {found.thread.cell}: read the run-down torque on the wrench and add it",
                )
            )
        else:
            added = units.to_base(drag.typical, drag.unit) / float(units.factor(answer.unit))
            now = Figure(
                found.id("prevailing_added", "torque_setting", data, f"{answer.text}|{drag.id}"), "torque_setting", answer.typical + added, answer.unit,
                low=low + added, high=high + added, side="target", basis="derived", rule=data.rule("prevailing_added"),
                inputs=(answer, drag), since=data.release, key=found.key, conditions="prevailing torque of the locknut added",
            )  # fmt: skip
            low, high = low + added, high + added
            figures += [now, drag]
            if prevailing is None:
                cautions.append(
                    Caution(
                        "The prevailing torque added is the least that a locknut must still have to be used again; "
                        "a new one has more. Read yours while it runs down, and add that.",
                        "note",
                        (drag.id,),
                        drag.source or "common practice",
                    )
                )
    if adapter is not None:
        arm_m, wrench_m, angle = _arms(adapter)
        ratio = float(calc.adapter_setting(1.0, wrench_m, arm_m, angle))
        now = Figure(
            found.id("wrench_adapter_at_angle", "torque_setting", data, f"{answer.text}|{adapter}"), "torque_setting",
            now.typical * ratio, now.unit, low=low * ratio, high=high * ratio, side="target", basis="derived",
            rule=data.rule("wrench_adapter_at_angle"), inputs=(now,), since=data.release, key=found.key,
            conditions=f"crow-foot {adapter}",
        )  # fmt: skip
        low, high = low * ratio, high * ratio
        figures.insert(0, now)
    if wrench is not None:
        tool = read_wrench(wrench, "wrench")
        name = "a graduation inside the window"

        def exact(value: float) -> Fraction:
            return units.convert(Fraction(value).limit_denominator(10**12), now.unit, tool.unit)

        mark = tool.nearest_inside(exact(now.typical), exact(low), exact(high))
        ends = f"{float(exact(low)):.4g} to {float(exact(high)):.4g} {tool.unit}"
        if mark is None:
            checks.append(Check(name, NOT_OK, f"{wrench} has no graduation inside {ends}: use another wrench"))
        else:
            set_to = Figure(
                found.id("nearest_graduation", "torque_setting", data, f"{answer.text}|{wrench}|{adapter or ''}"), "torque_setting",
                float(mark), tool.unit, side="target",
                basis="derived", rule=data.rule("nearest_graduation"), inputs=(now,), since=data.release, key=found.key,
                conditions=f"wrench {wrench}", text=units.decimal_text(mark),
            )  # fmt: skip
            figures.insert(0, set_to)
            checks.append(
                Check(
                    name,
                    OK,
                    f"set {units.decimal_text(mark)} {tool.unit}, window {ends}",
                    None,
                    Bound(float(mark), tool.unit, figure=set_to),
                )
            )
    return figures, checks, cautions


def at_the_thread(
    given: Figure, found: Joint, locknut: str | None, prevailing: str | None, adapter: str | None, data: Refdata
) -> tuple[list[Figure], list[Check], list[Caution]]:
    """What of a setting reaches the thread, first, with its steps: a crow-foot makes it more, a locknut takes its own part.

    A locknut without a figure leaves its drag in; its check says so.
    """
    figures: list[Figure] = []
    now = given
    if adapter is not None:
        arm_m, wrench_m, angle = _arms(adapter)
        ratio = float(calc.adapter_setting(1.0, wrench_m, arm_m, angle))
        now = Figure(
            found.id("wrench_adapter_at_angle", "tightening_torque", data, f"{given.text} {given.unit}|{adapter}"), "tightening_torque",
            now.typical / ratio, now.unit, side="nominal", basis="derived", rule=data.rule("wrench_adapter_at_angle"), inputs=(now,),
            since=data.release, key=found.key, conditions=f"through the crow-foot {adapter}",
        )  # fmt: skip
        figures.insert(0, now)
    if locknut is None and prevailing is None:
        return figures, [], []
    drag = _prevailing(found, locknut, prevailing, data)
    if drag is None:
        reason = f"no figure for {locknut} on {found.thread.cell}: its drag is still in the setting, so the clamp is less than said"
        return figures or [now], [Check("prevailing torque taken off", CANNOT_TELL, reason)], []
    left = now.typical - units.to_base(drag.typical, drag.unit) / float(units.factor(now.unit))
    if left <= 0:
        raise InputError(
            f"{given.text} {given.unit}",
            "given",
            "the locknut alone takes all of it",
            (),
            "give the setting that clamps",
        )
    now = Figure(
        found.id("prevailing_added", "tightening_torque", data, f"{given.text} {given.unit}|{adapter or ''}|{drag.id}"), "tightening_torque",
        left, now.unit, side="nominal", basis="derived", rule=data.rule("prevailing_added"), inputs=(now, drag), since=data.release,
        key=found.key, conditions="prevailing torque of the locknut taken off",
    )  # fmt: skip
    text = "The locknut's least drag is taken off; a new one has more, and clamps less than said: read yours as it runs down."
    cautions = [] if prevailing is not None else [Caution(text, "note", (drag.id,), drag.source or "common practice")]
    return [now, drag], [], cautions


def _window(answer: Figure, derived: Figure | None) -> tuple[float, float]:
    """The window around the answer, in its unit: its own ends, else the derived window where it holds the answer, else itself."""
    if answer.low is not None and answer.high is not None:
        return answer.low, answer.high
    if derived is None:
        return answer.typical, answer.typical
    ratio = float(units.factor(derived.unit) / units.factor(answer.unit))
    low, high = (derived.low or 0.0) * ratio, (derived.high or 0.0) * ratio
    return min(low, answer.typical), max(high, answer.typical) if answer.typical <= high else answer.typical


def _prevailing(found: Joint, locknut: str | None, prevailing: str | None, data: Refdata) -> Figure | None:
    if prevailing is not None:
        measure = units.parse_measure(prevailing, "torque", "prevailing torque")
        if measure.value < 0:
            raise InputError(
                prevailing, "prevailing torque", "must not be less than zero", (), "give the run-down torque"
            )
        return Figure(
            f"asked:prevailing:{prevailing}", "prevailing_torque", float(measure.value), measure.unit, basis="measured", checked="primary",
            source="as asked", locator="prevailing torque", text=measure.text.rsplit(" ", 1)[0],
        )  # fmt: skip
    table = "fasteners/prevailing"
    nut = canonical(data, table, "nut", locknut or "")
    size = (
        found.thread.cell if found.thread.is_metric else f"{found.thread.cell.rsplit('-', 1)[0].replace('-', ' ')} in"
    )
    known = data.table(table).column("thread")
    for thread in (found.thread.cell, size):
        if thread.casefold() in known:
            got = lookup.look_up_or_none(
                table, "prevailing_torque_minimum", data=data, nut=nut, thread=thread, service=found.key["service"]
            )
            if got is not None:
                return got
    return None


def _arms(adapter: str) -> tuple[float, float, float]:
    match = re.fullmatch(_ADAPTER, " ".join(adapter.split()))
    if match is None:
        raise InputError(
            adapter,
            "adapter",
            "not a crow-foot on a wrench",
            (),
            'write it as "2 in on 12 in" or "2 in on 12 in at 90 deg"',
        )
    arm = units.parse_measure(match["adapter"], "length", "adapter").to("m")
    wrench = units.parse_measure(match["wrench"], "length", "adapter").to("m")
    angle = units.parse_measure(match["angle"], "angle", "adapter").to("rad") if match["angle"] else 0.0
    if arm < 0 or wrench <= 0 or wrench + arm * math.cos(angle) <= 0:
        raise InputError(
            adapter,
            "adapter",
            "lengths must be more than zero, the wrench longer than a turned-back adapter",
            (),
            "measure drive centre to grip centre, and drive centre to fastener centre",
        )
    return arm, wrench, angle
