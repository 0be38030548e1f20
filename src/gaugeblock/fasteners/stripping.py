"""Whether bolt thread and tapped thread hold the clamp, the strongest bolt, and how much thread would."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check, at_most
from gaugeblock.answer.making import base, derived, stated, stated_known
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.calc import fasteners as calc
from gaugeblock.fasteners.bolt import Tapped
from gaugeblock.fasteners.clamp import Strain
from gaugeblock.fasteners.draft import HOLDS, Draft
from gaugeblock.fasteners.joint import Joint
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

FIRST = "bolt breaks before the thread"
# Shear strength as this share of tensile strength holds for steel and light alloy, not for a metal that does not yield.
BRITTLE = ("cast iron",)


def bound(figure: Figure) -> Bound:
    """A figure as the least that is required."""
    return Bound(figure.typical, figure.unit, "min", figure)


def told(sheet: Sheet) -> Sheet:
    """The Sheet of a bolt of which it is asked whether it strips: what its checks say of that stands first."""
    from gaugeblock.answer.caution import Caution

    found = {check.name: check for check in sheet.checks if check.name in (HOLDS, FIRST)}
    said = [f"{_TOLD.get((name, check.result), _TOLD[name])} {check.reason}." for name, check in found.items()]
    return sheet.replace(cautions=(*(Caution(text, "damage", (), "") for text in said), *sheet.cautions))


# How each check is told, by what it came to.
_TOLD: dict[object, str] = {
    HOLDS: "Stripping under the clamp:",
    FIRST: "Whether the bolt breaks before the thread:",
    (FIRST, OK): "The bolt breaks before the thread:",
    (FIRST, NOT_OK): "The thread may go before the bolt:",
}


class Threads:
    """Both threads at their limits of size: their shear areas, in m**2, over a length engaged."""

    __slots__ = ("_limits", "_pitch_m")

    def __init__(self, found: Joint) -> None:
        thread = found.thread
        self._pitch_m = thread.pitch_m
        self._limits = (calc.limits_metric if thread.is_metric else calc.limits_unified)(
            thread.diameter_m, thread.pitch_m
        )

    def screw_m2(self, engaged_m: float) -> float:
        """That of the screw's own thread."""
        at = self._limits
        return float(calc.external_shear_area(engaged_m, self._pitch_m, at.nut_minor_max, at.screw_pitch_min))

    def tapped_m2(self, engaged_m: float) -> float:
        """That of the tapped thread."""
        at = self._limits
        return float(calc.internal_shear_area(engaged_m, self._pitch_m, at.screw_major_min, at.nut_pitch_max))


def _named(tapped: Tapped) -> str:
    return tapped.metal or "tapped metal"


def check(found: Joint, strain: Strain, tapped: Tapped, draft: Draft) -> None:
    """Whether both threads hold the clamp, which may stop; whether the bolt would break before them, and the lengths
    that the tapped metal needs, which inform.
    """
    if not found.thread.is_metric and found.thread.diameter_m < 0.25 * 0.0254:
        draft.check(Check(HOLDS, CANNOT_TELL, "the tolerance formulas used start at 1/4 in", bears=INFORM))
        return
    threads = Threads(found)
    own = None
    if tapped.strength is not None and tapped.metal not in BRITTLE:
        own = stated_known(tapped.strength, "tapped_strength", "tapped strength", draft.data)
        draft.figure(own)
        needed = _lengths_needed(found, strain, own, threads, tapped, draft)
        if tapped.engagement is None:
            _ask_length(needed, tapped, draft)
    if tapped.engagement is not None:
        _check_engaged(found, strain, own, threads, tapped, draft)


def _lengths_needed(
    found: Joint, strain: Strain, own: Figure, threads: Threads, tapped: Tapped, draft: Draft
) -> list[Figure]:
    """The thread engaged that holds the clamp, and that with which the strongest bolt of the grade breaks first."""
    data, unit = draft.data, "mm" if found.thread.is_metric else "in"
    where = f"the thread in the {_named(tapped)}, at its smallest,"
    engaged_m = base(found.diameter)
    area_m2 = threads.tapped_m2(engaged_m)
    area = _shear_area(found, area_m2, found.diameter, where, data)
    loads = [(strain.clamp, f"holds this clamp in the {_named(tapped)}")]
    breaks = _breaks_at(found, data)
    if breaks is not None:
        loads.append((breaks, f"the bolt breaks before the thread in the {_named(tapped)} strips"))
    out = []
    for load, says in loads:
        length = calc.engagement_for_load(base(load), units.to_base(own.least, own.unit), area_m2, engaged_m)
        inputs, number = (load, found.diameter, own, area), units.from_base(length, unit)
        made = derived(
            "engagement_by_strength",
            "length_of_engagement",
            number,
            unit,
            inputs,
            data,
            about=load.id,
            side="min",
            key=found.key,
            conditions=says,
        )
        out.append(made)
    draft.figure(*out)
    return out


def _ask_length(needed: list[Figure], tapped: Tapped, draft: Draft) -> None:
    numbers = [number_only(f, draft.data) for f in needed]
    reason = f"{numbers[0]} of thread engaged or more holds the clamp in the {_named(tapped)}"
    draft.check(Check(HOLDS, CANNOT_TELL, reason, bound(needed[0]), bears=INFORM))
    more = f"; {numbers[1]} or more breaks the bolt first" if len(numbers) > 1 else ""
    text = f"Measure the thread length engaged: {reason}{more}."
    draft.ask(Question(MEASURE, text, "engagement", (HOLDS,)))


def _check_engaged(
    found: Joint, strain: Strain, own: Figure | None, threads: Threads, tapped: Tapped, draft: Draft
) -> None:
    """Both threads over the length that is engaged, against the clamp and the strongest bolt."""
    assert tapped.engagement is not None
    given = stated(tapped.engagement, "length_of_engagement", "engagement", draft.data)
    external, internal = threads.screw_m2(base(given)), threads.tapped_m2(base(given))
    screw = None
    holders = []
    if found.tensile is not None:
        what = "the screw's own thread, at its smallest,"
        screw = _strip_load(found, found.tensile, external, given, what, draft)
        holders.append(screw)
    if own is not None:
        what = f"the thread in the {_named(tapped)}, at its smallest,"
        holders.append(_strip_load(found, own, internal, given, what, draft))
    if not holders:
        draft.check(Check(HOLDS, CANNOT_TELL, "no tensile strength is published for this grade and size", bears=INFORM))
        return
    weakest = min(holders, key=lambda f: f.typical)
    clamp = units.from_base(base(strain.clamp), weakest.unit)
    load, clamp_text = (units.significant(v, 3) for v in (weakest.typical, clamp))
    reason = f"{weakest.conditions} strips at {load} {weakest.unit}; the clamp is about {clamp_text} {weakest.unit}"
    if tapped.metal in BRITTLE:
        reason += f"; no shear strength of {tapped.metal} is on record, so the tapped thread is not judged"
    elif own is None:
        reason += f"; the strength of the {_named(tapped)} is not given, so the tapped thread is not judged"
    elif screw is None:
        reason += "; the strength of the bolt is not known, so its own thread is not judged"
    actual = Bound(clamp, weakest.unit, figure=strain.clamp)
    limit = Bound(weakest.typical, weakest.unit, figure=weakest)
    draft.check(at_most(HOLDS, actual, limit, reason, bears=STOP))
    if clamp > weakest.typical * (1 + 1e-9):
        draft.ask(
            Question(MEASURE, "Engage more thread: what is engaged strips before the clamp.", "engagement", (HOLDS,))
        )
    if screw is not None:
        _inform_first(found, screw, internal, given, tapped, draft)


def _strip_load(found: Joint, strength: Figure, area_m2: float, given: Figure, what: str, draft: Draft) -> Figure:
    """The load that strips a thread of this strength over this shear area."""
    force, data = "N" if found.thread.is_metric else "lbf", draft.data
    load = 0.577 * units.to_base(strength.least, strength.unit) * area_m2
    made = derived(
        "strip_load",
        "thread_strip_load",
        units.from_base(load, force),
        force,
        (strength, _shear_area(found, area_m2, given, what, data)),
        data,
        about=f"{given.text} {given.unit}|{what}",
        key=found.key,
        conditions=what,
    )
    draft.figure(made)
    return made


def _shear_area(found: Joint, area_m2: float, given: Figure, what: str, data: Refdata) -> Figure:
    square = "mm**2" if found.thread.is_metric else "in**2"
    return derived(
        "shear_area_of_thread",
        "thread_shear_area",
        units.from_base(area_m2, square),
        square,
        (given, found.diameter),
        data,
        about=f"{given.text} {given.unit}|{what}",
        key=found.key,
        conditions=what,
    )


def greatest_strength(found: Joint, data: Refdata) -> Figure | None:
    """The greatest tensile strength of the grade: the standard's maximum, else what its greatest hardness goes with."""
    at = {"standard": found.key["standard"], "grade": found.key["grade"], "size": found.thread.size}
    if found.tensile is not None and (found.tensile.high is not None or found.tensile.basis in ("stated", "measured")):
        return _at_its_high(found.tensile)
    top = lookup.look_up_or_none("fasteners/grades", "tensile_strength_maximum", data=data, **at)
    if top is not None:
        return top
    hard = lookup.look_up_or_none("fasteners/grades", "core_hardness", data=data, **at)
    if hard is None or hard.high is None:
        return None
    scale = hard.unit
    got = lookup.look_up_or_none(
        "driveline/hardness", "tensile_strength_typical", data=data, scale=scale, hardness=units.significant(hard.high)
    )
    return None if got is None else _at_its_high(got)


def _breaks_at(found: Joint, data: Refdata) -> Figure | None:
    """The load that breaks the strongest bolt of the grade; None where its greatest strength is not on record."""
    top = greatest_strength(found, data)
    if top is None:
        return None
    force = "N" if found.thread.is_metric else "lbf"
    load = units.from_base(base(top) * base(found.area), force)
    return derived(
        "tensile_load_from_area",
        "tensile_load",
        load,
        force,
        (top, found.area),
        data,
        key=found.key,
        conditions="the strongest bolt of the grade",
    )


def _at_its_high(figure: Figure) -> Figure:
    """A figure at the upper end of its range; itself where it is one number."""
    if figure.high is None:
        return figure
    return figure.replace(value=figure.high, low=None, high=None, text="", id=f"{figure.id}<high")


def _inform_first(found: Joint, screw: Figure, internal_m2: float, given: Figure, tapped: Tapped, draft: Draft) -> None:
    """A design habit, for information: the strongest bolt of the grade should break before a thread strips."""
    data = draft.data
    breaks = _breaks_at(found, data)
    if breaks is None:
        reason = "the greatest strength of this grade is not on record: ask the bolt's maker"
        draft.check(Check(FIRST, CANNOT_TELL, reason, bears=INFORM))
        return
    force, stress = breaks.unit, "MPa" if found.thread.is_metric else "ksi"
    most, about = base(breaks), f"{given.text} {given.unit}"
    draft.figure(breaks)
    if screw.typical < breaks.typical:
        strips, top_load = (units.significant(f.typical, 3) for f in (screw, breaks))
        text = (
            f"the screw's own thread strips at {strips} {force}, before the strongest bolt of the grade "
            f"breaks ({top_load} {force})"
        )
        draft.check(Check(FIRST, NOT_OK, text, bound(breaks), Bound(screw.typical, force, figure=screw), bears=INFORM))
        return
    if tapped.metal in BRITTLE:
        text = f"0.577 of tensile strength is no shear strength of {tapped.metal}: not judged"
        draft.check(Check(FIRST, CANNOT_TELL, text, bears=INFORM))
        return
    needed = derived(
        "tapped_strength_needed",
        "tapped_strength_needed",
        units.from_base(most / (0.577 * internal_m2), stress),
        stress,
        (breaks, _shear_area(found, internal_m2, given, f"the thread in the {_named(tapped)}, at its smallest,", data)),
        data,
        about=about,
        key=found.key,
        conditions="the thread in the tapped metal at its smallest, the strongest bolt of the grade",
    )
    draft.figure(needed)
    want = f"{units.significant(needed.typical, 3)} {stress}"
    if tapped.strength is None:
        reason = (
            f"the tapped {tapped.metal or 'metal'} must have {want} tensile strength for the bolt to break first; its "
            "strength is not given"
        )
        draft.check(Check(FIRST, CANNOT_TELL, reason, bound(needed), bears=INFORM))
        return
    own = tapped.strength.typical.to(stress)
    result = OK if own >= needed.typical * (1 - 1e-9) else NOT_OK
    reason = f"tapped {tapped.metal or 'metal'} of {tapped.strength}; {want} is needed for the bolt to break first"
    draft.check(Check(FIRST, result, reason, bound(needed), Bound(own, stress), bears=INFORM))
