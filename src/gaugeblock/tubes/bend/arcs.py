"""The arc of a bend, at its middle, inside and outside, and what to set for it: by a test bend, else by formula."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer import making
from gaugeblock.answer.making import base, stated
from gaugeblock.calc import tubes as calc
from gaugeblock.errors import InputError
from gaugeblock.tubes.bend.metal import known, modulus_of
from gaugeblock.tubes.doubt import sprung_wrongly

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.tubes.bend.bent import Bent
    from gaugeblock.units import Measure

_TURN = 6.2831853072


def test_bend(typed: str, data: Refdata) -> tuple[Figure, Figure]:
    """The angle set and the angle got of one test bend: ``47 deg set, 45 deg got``."""
    from gaugeblock.job import form

    made = form.trial_bend(typed, "test")
    pair = [making.read_positive(made[key], "angle", f"test {key}") for key in ("pulled", "released")]
    why = sprung_wrongly(*pair)
    if why:
        raise InputError(typed, "test", why, (), 'measure it again, and write "47 deg set, 45 deg got"')
    put, got = (stated(m, q, "test", data) for m, q in zip(pair, ("bend_angle_set", "bend_angle_got"), strict=True))
    return put, got


def arc(tube: Bent, measure: Measure, test: tuple[Figure, Figure] | None = None) -> list[Figure]:
    """Developed length of a bend of this angle, at its centre line, inside and outside, and what to set for it: by a
    test bend, else its springback by formula where the strength is known.
    """
    if tube.centre is None or tube.clr_m is None:
        return []
    radians = measure.to("rad")
    if measure.value <= 0 or radians > _TURN:
        do = "give the angle that the tube turns"
        raise InputError(measure.text, "angle", "a bend is over 0 to 360 deg", (), do)
    angle = stated(measure, "bend_angle", "angle", tube.data)
    length = tube.length(calc.developed_length(float(tube.clr_m), radians))
    out = [
        tube.derived(
            "developed_length",
            "developed_length",
            length,
            tube.unit,
            (tube.centre, angle),
            mark=measure.text,
            conditions="arc at the centre line",
        )
    ]
    out += [_arc_at(tube, angle, measure, inside=True), _arc_at(tube, angle, measure, inside=False)]
    return [*out, *(_springback(tube, angle, measure) if test is None else [_by_test(tube, angle, test)])]


def _arc_at(tube: Bent, angle: Figure, measure: Measure, *, inside: bool) -> Figure:
    """The arc at the inside or the outside of a bend."""
    assert tube.centre is not None
    assert tube.clr_m is not None
    half = float(tube.od_m) / 2
    at = float(tube.clr_m) + (-half if inside else half)
    name = "inner_arc" if inside else "outer_arc"
    length = tube.length(calc.developed_length(at, measure.to("rad")))
    words = f"arc along the {'inside' if inside else 'outside'} of the bend"
    inputs = (tube.centre, tube.od, angle)
    return tube.derived(name, name, length, tube.unit, inputs, mark=measure.text, conditions=words)


def _by_test(tube: Bent, angle: Figure, test: tuple[Figure, Figure]) -> Figure:
    """What to set for an angle by one test bend, in proportion."""
    from gaugeblock.calc.stick import set_angle_in_proportion

    exact = set_angle_in_proportion(base(angle), (base(test[0]), base(test[1])))
    words = "in proportion from one test bend of the same stock; measure the first bend"
    value, inputs = units.from_base(exact, "deg"), (angle, *test)
    mark = f"{angle.text} {angle.unit}"
    rule = "angle_set_in_proportion"
    return tube.derived(rule, "bend_angle_set", value, "deg", inputs, mark=mark, conditions=words)


def _springback(tube: Bent, angle: Figure, measure: Measure) -> list[Figure]:
    """The springback by both published formulas, over the guaranteed strengths; none outside their range."""
    weak, strong = known(tube, "yield_strength"), known(tube, "tensile_strength")
    modulus = modulus_of(tube)
    if weak is None or strong is None or modulus is None or tube.centre is None or tube.clr_m is None:
        return []
    low_pa = units.to_base(weak.low if weak.low is not None else weak.typical, weak.unit)
    high_pa = units.to_base(strong.high if strong.high is not None else strong.typical, strong.unit)
    stiff = base(modulus)
    od, bore, clr = float(tube.od_m), float(tube.od_m - 2 * tube.wall_m), float(tube.clr_m)
    if clr * high_pa >= 0.5 * stiff * od:
        return []  # such a bend is mostly elastic
    out = []
    between = (weak, strong, modulus, tube.centre, tube.od)
    for rule, inputs, ratio, words in (
        (
            "springback_radius_sheet",
            (*between, angle),
            [calc.springback_sheet(clr, od, y, stiff) for y in (low_pa, high_pa)],
            (
                "estimate, from the guaranteed yield to the guaranteed tensile strength (a bend hardens); the OD taken"
                " as the depth"
            ),
        ),
        (
            "springback_tube_plastic",
            (*between, tube.wall, angle),
            [calc.springback_tube(clr, od, bore, y, stiff) for y in (low_pa, high_pa)],
            "estimate, fully plastic tube, over the same strengths",
        ),
    ):
        ends = [calc.springback_angle(measure.to("deg"), r) for r in ratio]
        out.append(
            tube.derived(
                rule,
                "springback_angle",
                None,
                "deg",
                inputs,
                ends=(min(ends), max(ends)),
                mark=measure.text,
                conditions=words,
            )
        )
    return out
