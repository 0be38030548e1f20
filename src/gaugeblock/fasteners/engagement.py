"""Whether the tapped thread holds: the manuals' ceiling, length of engagement, and both threads against the clamp."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check, at_most
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.calc import fasteners as calc
from gaugeblock.fasteners.bolt import Tapped
from gaugeblock.fasteners.clamp import Strain
from gaugeblock.fasteners.draft import HOLDS, LENGTH, Draft
from gaugeblock.fasteners.joint import Joint
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

FIRST, SHORT = "bolt breaks before the thread", "one diameter engaged"
# Shear strength as this share of tensile strength holds for steel and light alloy, not for a metal that does not yield.
_BRITTLE = ("cast iron",)


def ceiling_name(metal: str) -> str:
    """The name of the check on the manuals' ceiling."""
    return f"torque into {metal}"


# What makes a table's torque the one in a metal that the tables are not for, by what is known of an insert.
WHEN_ASKED = {"": "a steel thread insert is fitted", "no": "the part's maker says the same"}


def check_tables_metal(tapped: Tapped, draft: Draft) -> bool:
    """Whether the general tables, which are for steel nuts, hold for the tapped metal; asked where no source says so.

    A metal whose engagement a source lengthens by an addend is softer than those that the tables are for.
    """
    name, metal = ceiling_name(tapped.metal), tapped.metal
    addend = lookup.look_up_or_none(
        "fasteners/engagement", "engagement_addend", data=draft.data, into=metal, load="normal"
    )
    if addend is None or tapped.insert == "yes":
        return True
    reason = f"general tables are for steel nuts, and no published torque for threads in {metal} was found"
    draft.check(Check(name, CANNOT_TELL, reason, bears=ASK))
    if tapped.insert == "":
        text = f"Say whether the hole in the {metal} has a steel thread insert."
        draft.ask(Question(FILL_IN, text, "insert", (name,)))
    draft.ask(Question(ASK_MAKER, f"Ask the part's maker for its torque into {metal}.", "maker.torque", (name,)))
    return False


def check_ceiling(torque: Figure, ceiling: Figure, tapped: Tapped, is_set: bool, draft: Draft) -> None:
    """Whether a torque keeps the manuals' ceiling for a tapped metal without a steel insert.

    ``is_set`` says that the torque is one that somebody names; else the answer takes the ceiling into account itself.
    """
    name, limit = ceiling_name(tapped.metal), number_only(ceiling, draft.data)
    got = units.from_base(base(torque), ceiling.unit)
    bounds = (Bound(ceiling.typical, ceiling.unit, "max", ceiling), Bound(got, ceiling.unit, figure=torque))
    if tapped.insert == "yes":
        draft.check(
            Check(name, OK, "a steel thread insert takes the thread: the manuals' cut does not apply", bears=INFORM)
        )
        return
    over = got > ceiling.typical * (1 + 1e-9)
    reason = f"into {tapped.metal}: no more than {limit} unless the thread has a steel insert"
    if not over:
        draft.check(Check(name, OK, reason, *bounds, bears=STOP if is_set else INFORM))
    elif tapped.insert == "no":
        draft.check(Check(name, NOT_OK, reason, *bounds, bears=STOP))
    else:
        draft.check(Check(name, CANNOT_TELL, reason, *bounds, bears=ASK))
        text = f"Say whether the hole in the {tapped.metal} has a steel thread insert."
        draft.ask(Question(FILL_IN, text, "insert", (name,)))


def ceiling_caution(ceiling: Figure) -> Caution:
    """The published cut of a table's torque for a tapped metal, as a caution."""
    factor = ceiling.inputs[1]
    text = (
        f"General tables are for steel nuts: {factor.key['condition']} they are cut to {factor.text} or "
        "less unless the thread has an insert."
    )
    return Caution(text, "damage", (ceiling.id, factor.id), factor.source)


def check_threads(found: Joint, strain: Strain, tapped: Tapped, draft: Draft) -> None:
    """Figures, checks and questions of what the thread goes into."""
    if not tapped.metal:
        draft.check(Check(LENGTH, CANNOT_TELL, "the tapped metal is not given", bears=INFORM))
        draft.ask(Question(FILL_IN, "Say what metal the thread goes into.", "into", (LENGTH,)))
        return
    _check_length(found, tapped, draft)
    _check_short(found, tapped, draft)
    if tapped.engagement is not None and tapped.insert != "yes":
        _check_strength(found, strain, tapped, draft)


# --- length -----------------------------------------------------------------------------------------------------------


def _minimums(metal: str, data: Refdata) -> list[Figure]:
    """The rules for a tapped metal, the shortest length first."""
    least = lookup.look_up_or_none("fasteners/engagement", "engagement_minimum", data=data, into=metal, load="normal")
    if least is None:
        return []
    lost = (o for o in least.others if o.chosen_by not in ("standing", "service"))
    return sorted((least, *lost), key=lambda f: f.typical)


def _check_length(found: Joint, tapped: Tapped, draft: Draft) -> None:
    """Engaged length against the rules. A rule printed for studs informs a bolt; that of capscrews can stop it."""
    rules = _minimums(tapped.metal, draft.data)
    if tapped.insert == "yes":
        draft.check(Check(LENGTH, OK, "the insert holds the thread: its maker says how long it must be", bears=INFORM))
        return
    if not rules:
        draft.check(Check(LENGTH, CANNOT_TELL, f"no published minimum for {tapped.metal}: ask the maker", bears=INFORM))
        return
    needed = {_needed(rule, found, draft.data): rule for rule in rules}
    shortest, longest = min(needed, key=base), max(needed, key=base)
    governing = longest if _is_stop(needed[longest], draft.data) else shortest
    draft.figure(governing)
    if tapped.engagement is None:
        reason = f"{number_only(governing, draft.data)} or more is needed in {tapped.metal}"
        draft.check(Check(LENGTH, CANNOT_TELL, reason, _bound(governing), bears=INFORM))
        text = (
            f"Measure the thread length engaged: {number_only(governing, draft.data)} or more is needed in "
            f"{tapped.metal}."
        )
        draft.ask(Question(MEASURE, text, "engagement", (LENGTH,)))
        return
    given = stated(tapped.engagement, "length_of_engagement", "engagement", draft.data)
    draft.figure(given)
    got = units.from_base(base(given), governing.unit)
    says = (
        f"{tapped.engagement} engaged; {number_only(governing, draft.data)} needed in {tapped.metal} "
        f"({_rule(needed[governing])})"
    )
    bounds = (
        _bound(governing),
        Bound(got, governing.unit, figure=given),
        (got - governing.typical) / governing.typical,
    )
    if got >= governing.typical * (1 - 1e-9):
        draft.check(Check(LENGTH, OK, says, *bounds, bears=STOP if _is_stop(needed[governing], draft.data) else INFORM))
    elif not _is_stop(needed[governing], draft.data):
        draft.check(Check(LENGTH, NOT_OK, f"{says}: a rule for studs, for information", *bounds, bears=INFORM))
    elif got >= base_in(shortest, governing.unit) * (1 - 1e-9):
        reason = f"{says}; {_rule(needed[shortest])} asks {number_only(shortest, draft.data)}"
        draft.check(Check(LENGTH, CANNOT_TELL, reason, *bounds, bears=ASK))
        draft.ask(Question(MEASURE, "Engage more thread, or ask the maker of the part.", "engagement", (LENGTH,)))
    else:
        draft.check(Check(LENGTH, NOT_OK, says, *bounds, bears=STOP))


def _check_short(found: Joint, tapped: Tapped, draft: Draft) -> None:
    """Less than one diameter engaged is asked about: no nut is much thinner, and the rules for studs are longer still.

    Common practice, so it can only ask. A tapped metal whose strength is stated is judged by the clamp instead.
    """
    if tapped.engagement is None or (tapped.strength is not None and tapped.metal not in _BRITTLE):
        return
    share = tapped.engagement.to("m") / base(found.diameter)
    if share >= 1 - 1e-9:
        return
    one = number_only(found.diameter, draft.data)
    reason = f"{tapped.engagement} is {share:.2g} of the thread's diameter; shops engage {one} or more"
    draft.check(Check(SHORT, CANNOT_TELL, reason, bears=ASK))
    what = "the insert" if tapped.insert == "yes" else f"the {tapped.metal}"
    text = f"Engage one diameter, {one}, or more in {what}"
    text += (
        "." if tapped.metal in _BRITTLE or tapped.insert == "yes" else "; or state the strength of the tapped metal."
    )
    draft.ask(Question(MEASURE, text, "engagement", (SHORT,)))


def base_in(figure: Figure, unit: str) -> float:
    """A figure's typical number in ``unit``."""
    return units.from_base(base(figure), unit)


def _is_stop(rule: Figure, data: Refdata) -> bool:
    """Whether a rule is one for bolts: printed with the cut of a bolt's torque. A textbook's for studs informs."""
    metal = rule.key["into"]
    cut = lookup.look_up_or_none(
        "fasteners/torque_multipliers", "torque_multiplier", data=data, condition=f"into {metal}", base="dry"
    )
    return cut is not None and rule.source in {f.source for f in (cut, *cut.others)}


def _rule(rule: Figure) -> str:
    return f"{rule.typical:g} diameters, {rule.source or 'habit'}"


def _bound(figure: Figure) -> Bound:
    return Bound(figure.typical, figure.unit, "min", figure)


def _needed(minimum: Figure, found: Joint, data: Refdata) -> Figure:
    """Minimum length of engagement: diameters times the diameter, with the addend where the source prints one."""
    unit = "mm" if found.thread.is_metric else "in"
    length = minimum.typical * base(found.diameter)
    inputs = [minimum, found.diameter]
    metal, load = minimum.key["into"], minimum.key["load"]
    addend = None
    if load != "any":
        addend = lookup.look_up_or_none("fasteners/engagement", "engagement_addend", data=data, into=metal, load=load)
    if addend is not None and addend.source == minimum.source:
        length += base(addend)
        inputs.append(addend)
    return derived(
        "engagement_length",
        "length_of_engagement",
        units.from_base(length, unit),
        unit,
        inputs,
        data,
        about=f"{metal} {minimum.source}",
        side="min",
        key=found.key,
        conditions=f"minimum in {metal}{' by a rule for studs' if 'stud' in minimum.conditions else ''}",
    )


# --- strength ---------------------------------------------------------------------------------------------------------


def _check_strength(found: Joint, strain: Strain, tapped: Tapped, draft: Draft) -> None:
    """Whether both threads hold the clamp, which may stop; whether the bolt would break before them, which informs."""
    thread, data = found.thread, draft.data
    if tapped.engagement is None:
        return
    if found.tensile is None:
        draft.check(Check(HOLDS, CANNOT_TELL, "no tensile strength is published for this grade and size", bears=INFORM))
        return
    if not thread.is_metric and thread.diameter_m < 0.25 * 0.0254:
        draft.check(Check(HOLDS, CANNOT_TELL, "the tolerance formulas used start at 1/4 in", bears=INFORM))
        return
    given = stated(tapped.engagement, "length_of_engagement", "engagement", data)
    limits = (calc.limits_metric if thread.is_metric else calc.limits_unified)(thread.diameter_m, thread.pitch_m)
    engaged_m = base(given)
    external = calc.external_shear_area(engaged_m, thread.pitch_m, limits.nut_minor_max, limits.screw_pitch_min)
    internal = calc.internal_shear_area(engaged_m, thread.pitch_m, limits.screw_major_min, limits.nut_pitch_max)
    screw = _strip_load(found, found.tensile, external, given, "the screw's own thread, at its smallest,", draft)
    holders = [screw]
    if tapped.strength is not None and tapped.metal not in _BRITTLE:
        own = stated(tapped.strength, "tapped_strength", "tapped_strength", data)
        draft.figure(own)
        holders.append(
            _strip_load(found, own, internal, given, f"the thread in the {tapped.metal}, at its smallest,", draft)
        )
    weakest = min(holders, key=lambda f: f.typical)
    clamp = units.from_base(base(strain.clamp), weakest.unit)
    load, clamp_text = (units.significant(v, 3) for v in (weakest.typical, clamp))
    reason = f"{weakest.conditions} strips at {load} {weakest.unit}; the clamp is about {clamp_text} {weakest.unit}"
    if tapped.metal in _BRITTLE:
        reason += f"; no shear strength of {tapped.metal} is on record, so the tapped thread is not judged"
    elif tapped.strength is None:
        reason += f"; the strength of the {tapped.metal} is not given, so the tapped thread is not judged"
    draft.check(
        at_most(
            HOLDS,
            Bound(clamp, weakest.unit, figure=strain.clamp),
            Bound(weakest.typical, weakest.unit, figure=weakest),
            reason,
            bears=STOP,
        )
    )
    if clamp > weakest.typical * (1 + 1e-9):
        draft.ask(
            Question(MEASURE, "Engage more thread: what is engaged strips before the clamp.", "engagement", (HOLDS,))
        )
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
    if found.tensile is not None and found.tensile.high is not None:
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


def _at_its_high(figure: Figure) -> Figure:
    """A figure at the upper end of its range; itself where it is one number."""
    if figure.high is None:
        return figure
    return figure.replace(value=figure.high, low=None, high=None, text="", id=f"{figure.id}<high")


def _inform_first(found: Joint, screw: Figure, internal_m2: float, given: Figure, tapped: Tapped, draft: Draft) -> None:
    """A design habit, for information: the strongest bolt of the grade should break before a thread strips."""
    top, data = greatest_strength(found, draft.data), draft.data
    if top is None:
        reason = "the greatest strength of this grade is not on record: ask the bolt's maker"
        draft.check(Check(FIRST, CANNOT_TELL, reason, bears=INFORM))
        return
    force, stress = ("N", "MPa") if found.thread.is_metric else ("lbf", "ksi")
    most = base(top) * base(found.area)
    about = f"{given.text} {given.unit}"
    breaks = derived(
        "tensile_load_from_area",
        "tensile_load",
        units.from_base(most, force),
        force,
        (top, found.area),
        data,
        key=found.key,
        conditions="the strongest bolt of the grade",
    )
    draft.figure(breaks)
    if screw.typical < breaks.typical:
        strips, top_load = (units.significant(f.typical, 3) for f in (screw, breaks))
        text = (
            f"the screw's own thread strips at {strips} {force}, before the strongest bolt of the grade "
            f"breaks ({top_load} {force})"
        )
        draft.check(Check(FIRST, NOT_OK, text, _bound(breaks), Bound(screw.typical, force, figure=screw), bears=INFORM))
        return
    if tapped.metal in _BRITTLE:
        text = f"0.577 of tensile strength is no shear strength of {tapped.metal}: not judged"
        draft.check(Check(FIRST, CANNOT_TELL, text, bears=INFORM))
        return
    needed = derived(
        "tapped_strength_needed",
        "tapped_strength_needed",
        units.from_base(most / (0.577 * internal_m2), stress),
        stress,
        (breaks, _shear_area(found, internal_m2, given, f"the thread in the {tapped.metal}, at its smallest,", data)),
        data,
        about=about,
        key=found.key,
        conditions="the thread in the tapped metal at its smallest, the strongest bolt of the grade",
    )
    draft.figure(needed)
    want = f"{units.significant(needed.typical, 3)} {stress}"
    if tapped.strength is None:
        reason = (
            f"the tapped {tapped.metal} must have {want} tensile strength for the bolt to break first; its "
            "strength is not given"
        )
        draft.check(Check(FIRST, CANNOT_TELL, reason, _bound(needed), bears=INFORM))
        return
    own = tapped.strength.to(stress)
    result = OK if own >= needed.typical * (1 - 1e-9) else NOT_OK
    reason = f"tapped {tapped.metal} of {tapped.strength}; {want} is needed for the bolt to break first"
    draft.check(Check(FIRST, result, reason, _bound(needed), Bound(own, stress), bears=INFORM))
