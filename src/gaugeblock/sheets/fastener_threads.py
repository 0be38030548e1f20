"""Whether the thread holds: length of engagement against the rule, and stripping of screw and tapped thread."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.sheets.sheet import CANNOT_TELL, Bound, Check, at_least

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.sheets.fastener_joint import Joint
    from gaugeblock.tables.load import Refdata


def engagement_checks(
    found: Joint, into: str | None, engagement: str | None, tapped_strength: str | None, data: Refdata
) -> tuple[list[Figure], list[Check]]:
    """Figures and checks of ``into`` and ``engagement``; a missing one answers ``cannot tell``, never a default."""
    name = "length of engagement"
    if into is None:
        return [], [Check(name, CANNOT_TELL, "the tapped metal is not given")]
    try:
        minimum = lookup.look_up("fasteners/engagement", "engagement_minimum", data=data, into=into, load="normal")
    except LookupMiss as miss:
        if not miss.nearest or "key" in miss.why:
            raise
        return [], [Check(name, CANNOT_TELL, f"no published minimum for {into}: ask the maker")]
    needed = _needed(minimum, found, data)
    if engagement is None:
        return [needed], [Check(name, CANNOT_TELL, "the thread length engaged is not given", _bound(needed))]
    measure = units.parse_measure(engagement, "length", "engagement")
    if measure.value <= 0:
        from gaugeblock.errors import InputError

        raise InputError(engagement, "engagement", "must be more than zero", (), "measure the thread length engaged")
    got = measure.to(needed.unit)
    given = Figure(
        f"asked:engagement:{engagement}", "length_of_engagement", got, needed.unit, side="nominal", basis="measured", checked="primary",
        source="as asked", locator="engagement", text=units.decimal_text(units.convert(measure.value, measure.unit, needed.unit), 4),
    )  # fmt: skip
    ratio = got / needed.typical * 1.0
    reason = f"{got:.3g} {needed.unit} engaged, {needed.typical:.3g} {needed.unit} needed in {into} ({ratio:.0%})"
    check = at_least(name, Bound(got, needed.unit, figure=given), _bound(needed), reason)
    figures, stripping = _stripping(found, measure.to("m"), tapped_strength, into, data)
    return [needed, *figures], [check, stripping]


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
        found.id("engagement_length", f"length_of_engagement:{minimum.key['into']}", data), "length_of_engagement",
        units.from_base(length, unit), unit, side="min", basis="derived", rule=data.rule("engagement_length"), inputs=tuple(inputs),
        since=data.release, key=found.key, conditions=f"minimum in {minimum.key['into']}",
    )  # fmt: skip


def _stripping(
    found: Joint, engaged_m: float, tapped_strength: str | None, into: str, data: Refdata
) -> tuple[list[Figure], Check]:
    """Whether the bolt breaks before a thread strips; the tapped side needs the tapped metal's strength."""
    name = "thread stripping"
    thread = found.thread
    if found.tensile is None:
        return [], Check(name, CANNOT_TELL, "no tensile strength is published for this grade and size")
    if not thread.is_metric and thread.diameter_m < 0.25 * 0.0254:
        return [], Check(name, CANNOT_TELL, "the tolerance formulas used start at 1/4 in")
    limits = (calc.limits_metric if thread.is_metric else calc.limits_unified)(thread.diameter_m, thread.pitch_m)
    external = calc.external_shear_area(engaged_m, thread.pitch_m, limits.nut_minor_max, limits.screw_pitch_min)
    internal = calc.internal_shear_area(engaged_m, thread.pitch_m, limits.screw_major_min, limits.nut_pitch_max)
    area = units.to_base(found.area.typical, found.area.unit)
    strength = units.to_base(found.tensile.typical, found.tensile.unit)
    break_n = strength * area
    screw_n = 0.577 * strength * external
    force, stress = ("N", "MPa") if thread.is_metric else ("lbf", "ksi")
    breaks = Figure(
        found.id("tensile_load_from_area", "tensile_load", data), "tensile_load", units.from_base(break_n, force), force, side="min",
        basis="derived", rule=data.rule("tensile_load_from_area"), inputs=(found.tensile, found.area), since=data.release, key=found.key,
    )  # fmt: skip
    strips = Figure(
        found.id("strip_load", "thread_strip_load", data), "thread_strip_load", units.from_base(screw_n, force), force, side="min",
        basis="derived", rule=data.rule("strip_load"), inputs=(found.tensile, found.diameter), since=data.release, key=found.key,
        conditions="screw thread at least material",
    )  # fmt: skip
    needed = Figure(
        found.id("tapped_strength_needed", "tapped_strength_needed", data), "tapped_strength_needed",
        units.from_base(break_n / (0.577 * internal), stress), stress, side="min", basis="derived",
        rule=data.rule("tapped_strength_needed"), inputs=(breaks, found.diameter), since=data.release, key=found.key,
        conditions="tapped thread at least material",
    )  # fmt: skip
    if screw_n < break_n:
        strip, limit = f"{strips.typical:.0f} {force}", f"{breaks.typical:.0f} {force}"
        reason = f"the screw's own thread strips at {strip}, under the {limit} that breaks the bolt: engage more thread"
        return [needed], at_least(
            name, Bound(strips.typical, force, figure=strips), Bound(breaks.typical, force, "min", breaks), reason
        )
    if tapped_strength is None:
        reason = f"the tapped {into} must have {needed.typical:.3g} {stress} tensile strength or more for the bolt to break first; its strength is not given"
        return [needed], Check(name, CANNOT_TELL, reason, Bound(needed.typical, stress, "min", needed))
    got = units.parse_measure(tapped_strength, "stress", "tapped strength").to(stress)
    reason = f"tapped {into} of {got:.3g} {stress}, {needed.typical:.3g} {stress} needed for the bolt to break first"
    return [needed], at_least(name, Bound(got, stress), Bound(needed.typical, stress, "min", needed), reason)
