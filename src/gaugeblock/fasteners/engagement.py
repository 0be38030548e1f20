"""Whether the thread holds: length of engagement against the rule, stripping of screw and tapped thread, the torque cut."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, OK, Bound, Check, at_least
from gaugeblock.answer.printing import number_only
from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import InputError
from gaugeblock.fasteners.joint import Joint
from gaugeblock.fasteners.target import table_into
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, canonical


def engagement_checks(
    found: Joint, torque: Figure, into: str | None, engagement: str | None, tapped_strength: str | None, data: Refdata
) -> tuple[list[Figure], list[Check]]:
    """Figures and checks of the tapped metal; a missing input answers ``cannot tell``, never a default."""
    name = "length of engagement"
    if into is None:
        return [], [Check(name, CANNOT_TELL, "the tapped metal is not given")]
    metal = canonical(data, "fasteners/engagement", "into", into)
    strength = _asked("tapped_strength", tapped_strength, "stress", "ksi" if not found.thread.is_metric else "MPa")
    figures: list[Figure] = []
    checks: list[Check] = []
    minimum = lookup.look_up_or_none("fasteners/engagement", "engagement_minimum", data=data, into=metal, load="normal")
    if minimum is None:
        checks.append(Check(name, CANNOT_TELL, f"no published minimum for {metal}: ask the maker"))
    elif engagement is None:
        needed = _needed(minimum, found, data)
        figures.append(needed)
        checks.append(Check(name, CANNOT_TELL, "the thread length engaged is not given", _bound(needed)))
    else:
        needed = _needed(minimum, found, data)
        given = _asked("length_of_engagement", engagement, "length", needed.unit)
        if given is None:
            raise InputError(engagement, "engagement", "cannot be read", (), "give the thread length engaged")
        figures += [needed, given]
        checks.append(_long_enough(name, given, needed, minimum, found))
        more, stripping = _stripping(found, given, strength, metal, data)
        figures += more
        checks.append(stripping)
    cut = table_into(found, metal, found.key["service"], data)
    if cut is not None:
        figures.append(cut)
        checks.append(_cut_check(torque, cut, checks, data))
    return figures, checks


def cut_caution(cut: Figure) -> Caution:
    """The published cut of a table's torque for a tapped metal, as a caution."""
    factor = cut.inputs[1]
    text = f"General tables are for steel nuts: {factor.key['condition']} they are cut to {factor.text} or less unless the thread has an insert."
    return Caution(text, "damage", (cut.id, factor.id), factor.source)


def _asked(quantity: str, typed: str | None, dim: str, unit: str) -> Figure | None:
    """A typed measure as a Figure in ``unit``; InputError when it is not positive."""
    if typed is None:
        return None
    where = quantity.replace("_", " ")
    measure = units.parse_measure(typed, dim, where)
    if measure.value <= 0:
        raise InputError(measure.text, where, "must be more than zero", (), "give the size itself")
    shown = units.convert(measure.value, measure.unit, unit)
    return Figure(
        f"asked:{quantity}:{measure.text}", quantity, float(shown), unit, basis="measured", checked="primary", source="as asked",
        locator=where, text=units.decimal_text(shown, 4), side="min",
    )  # fmt: skip


def _long_enough(name: str, given: Figure, needed: Figure, minimum: Figure, found: Joint) -> Check:
    """Engaged length against the governing minimum; ``cannot tell`` where a stricter living row asks more."""
    metal = minimum.key["into"]
    ratio = given.typical / needed.typical
    reason = (
        f"{given.typical:.3g} {needed.unit} engaged, {needed.typical:.3g} {needed.unit} needed in {metal} ({ratio:.0%})"
    )
    check = at_least(name, Bound(given.typical, needed.unit, figure=given), _bound(needed), reason)
    lost = [o for o in minimum.others if o.chosen_by not in ("standing", "service")]
    strictest = max(lost, key=lambda f: f.typical, default=None)
    if check.result != OK or strictest is None:
        return check
    diameter = units.from_base(units.to_base(found.diameter.typical, found.diameter.unit), needed.unit)
    if given.typical < strictest.typical * diameter * (1 - 1e-9):
        check = check.replace(result=CANNOT_TELL)
        who = f"{strictest.source or 'habit'} asks {strictest.typical:g} diameters ({strictest.typical * diameter:.3g} {needed.unit})"
        check = check.replace(reason=f"{reason}; {who}")
    return check


def _cut_check(torque: Figure, cut: Figure, before: list[Check], data: Refdata) -> Check:
    """Whether the torque keeps to the published cut for the tapped metal; a thread shown to hold settles it."""
    name = f"torque {cut.conditions.rsplit(', ', 1)[-1]}"
    asked = units.from_base(units.to_base(torque.typical, torque.unit), cut.unit)
    bounds = (Bound(cut.typical, cut.unit, "max", cut), Bound(asked, cut.unit, figure=torque))
    cut_to = f"{cut.inputs[1].text} or less, here {number_only(cut, data)}"
    text = f"{number_only(torque, data)}; manuals cut a table's torque to {cut_to}, unless the thread has an insert"
    if asked <= cut.typical * (1 + 1e-9):
        return Check(name, OK, text, *bounds)
    if all(c.result == OK for c in before) and any(c.name == "thread stripping" for c in before):
        return Check(name, OK, f"{text}; length and strength of this thread are shown to hold", *bounds)
    return Check(
        name,
        CANNOT_TELL,
        f"{text}: show that the thread holds (length and strength of the metal), or ask the maker",
        *bounds,
    )


def _bound(figure: Figure) -> Bound:
    return Bound(figure.typical, figure.unit, "min", figure)


def _needed(minimum: Figure, found: Joint, data: Refdata) -> Figure:
    """Minimum length of engagement: diameters times the diameter, with the addend where the source prints one."""
    unit = "mm" if found.thread.is_metric else "in"
    length = minimum.typical * units.to_base(found.diameter.typical, found.diameter.unit)
    inputs = [minimum, found.diameter]
    addend = lookup.look_up_or_none(
        "fasteners/engagement", "engagement_addend", data=data, into=minimum.key["into"], load="normal"
    )
    if addend is not None and addend.source == minimum.source:
        length += units.to_base(addend.typical, addend.unit)
        inputs.append(addend)
    return Figure(
        found.id("engagement_length", "length_of_engagement", data, minimum.key["into"]), "length_of_engagement",
        units.from_base(length, unit), unit, side="min", basis="derived", rule=data.rule("engagement_length"), inputs=tuple(inputs),
        since=data.release, key=found.key, conditions=f"minimum in {minimum.key['into']}",
    )  # fmt: skip


def _stripping(
    found: Joint, given: Figure, strength: Figure | None, metal: str, data: Refdata
) -> tuple[list[Figure], Check]:
    """Whether the bolt breaks before a thread strips; the tapped side needs the tapped metal's strength."""
    name = "thread stripping"
    thread = found.thread
    if found.tensile is None:
        return [], Check(name, CANNOT_TELL, "no tensile strength is published for this grade and size")
    if not thread.is_metric and thread.diameter_m < 0.25 * 0.0254:
        return [], Check(name, CANNOT_TELL, "the tolerance formulas used start at 1/4 in")
    limits = (calc.limits_metric if thread.is_metric else calc.limits_unified)(thread.diameter_m, thread.pitch_m)
    engaged_m = units.to_base(given.typical, given.unit)
    external = calc.external_shear_area(engaged_m, thread.pitch_m, limits.nut_minor_max, limits.screw_pitch_min)
    internal = calc.internal_shear_area(engaged_m, thread.pitch_m, limits.screw_major_min, limits.nut_pitch_max)
    area = units.to_base(found.area.typical, found.area.unit)
    least = units.to_base(found.tensile.least, found.tensile.unit)
    most = units.to_base(found.tensile.high or found.tensile.least, found.tensile.unit)
    force, stress = ("N", "MPa") if thread.is_metric else ("lbf", "ksi")

    def derived(
        rule: str, quantity: str, value: float, unit: str, inputs: tuple[Figure, ...], conditions: str
    ) -> Figure:
        return Figure(
            found.id(rule, quantity, data, given.text), quantity, units.from_base(value, unit), unit, side="min", basis="derived",
            rule=data.rule(rule), inputs=inputs, since=data.release, key=found.key, conditions=conditions,
        )  # fmt: skip

    breaks = derived("tensile_load_from_area", "tensile_load", least * area, force, (found.tensile, found.area), "")
    strips = derived(
        "strip_load", "thread_strip_load", 0.577 * least * external, force, (found.tensile, found.diameter, given),
        "screw thread at least material",
    )  # fmt: skip
    needed = derived(
        "tapped_strength_needed", "tapped_strength_needed", most * area / (0.577 * internal), stress,
        (found.tensile, found.area, found.diameter, given), "tapped thread at least material, the strongest bolt of the grade",
    )  # fmt: skip
    figures = [breaks, strips, needed]
    if strips.typical < breaks.typical:
        ends = f"the screw's own thread strips at {strips.typical:.0f} {force}, under the {breaks.typical:.0f} {force}"
        reason = f"{ends} that breaks the bolt: engage more thread"
        bounds = (Bound(strips.typical, force, figure=strips), Bound(breaks.typical, force, "min", breaks))
        return figures, at_least(name, *bounds, reason)
    want = f"{needed.typical:.3g} {stress}"
    if strength is None:
        reason = f"the tapped {metal} must have {want} tensile strength or more for the bolt to break first; its strength is not given"
        return figures, Check(name, CANNOT_TELL, reason, Bound(needed.typical, stress, "min", needed))
    reason = f"tapped {metal} of {strength.typical:.3g} {stress}, {want} needed for the bolt to break first"
    bounds = (Bound(strength.typical, stress, figure=strength), Bound(needed.typical, stress, "min", needed))
    return [*figures, strength], at_least(name, *bounds, reason)
