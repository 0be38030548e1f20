"""What a torque does to a spline: shear under the roots, shear of the teeth, pressure on their sides, each against
its allowable.
"""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, STOP, Bound, Check, at_most
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.calc import driveline as calc
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import canonical
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import SplineLoad
    from gaugeblock.driveline.splines.sizes import Sizes
    from gaugeblock.tables.load import Refdata

ROOTS, TEETH, SIDES = (
    "shear under the roots within the allowable",
    "shear of the teeth within the allowable",
    "pressure on the tooth sides within the allowable",
)
SHORT = {ROOTS: "shear under the roots", TEETH: "shear of the teeth", SIDES: "pressure on the tooth sides"}
_ALLOWABLES, _FACTORS = "driveline/spline_allowables", "driveline/spline_factors"
# What is asked for a key that is not given, and which checks need it.
_WANTED = {
    "material": (FILL_IN, "What is the spline made of, and how hard is it?", (ROOTS, TEETH, SIDES)),
    "source": (FILL_IN, "What drives it: an engine, an electric motor?", (ROOTS, TEETH, SIDES)),
    "load": (
        FILL_IN,
        "How is it loaded: uniform load, light, intermittent or heavy shock load?",
        (ROOTS, TEETH, SIDES),
    ),
    "cycles": (FILL_IN, "How many times is the torque put on and off in its life?", (ROOTS, TEETH, SIDES)),
    "length": (MEASURE, "On what length are shaft and hub spline engaged?", (TEETH, SIDES)),
    "seating": (FILL_IN, "Is the spline fixed (shrunk or piloted, it cannot rock) or flexible?", (TEETH, SIDES)),
    "misalignment": (MEASURE, "How far are shaft and hub out of line, for each inch of length?", (TEETH, SIDES)),
    "revolutions": (FILL_IN, "How many turns must the spline last?", (SIDES,)),
}


class Strained(Value):
    """The stresses and factors of a spline, the checks and the questions; ``factor`` is the least (None: not all
    are known).
    """

    __slots__ = ("checks", "factor", "figures", "questions")

    factor: Figure | None
    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]
    questions: tuple[Question, ...]

    def __init__(
        self,
        factor: Figure | None,
        figures: tuple[Figure, ...],
        checks: tuple[Check, ...],
        questions: tuple[Question, ...],
    ) -> None:
        put(self, "factor", factor)
        put(self, "figures", figures)
        put(self, "checks", checks)
        put(self, "questions", questions)


class _Strength:
    """One spline under one load: what was found of it in the tables."""

    def __init__(self, made: Sizes, load: SplineLoad, data: Refdata) -> None:
        self.made, self.load, self.data = made, load, data
        self.torque = stated(load.torque, "shaft_torque", "torque", data)
        self.bore = stated(load.bore, "shaft_bore", "bore", data) if load.bore is not None else None
        self.inside = base(self.bore) if self.bore is not None else 0.0
        if load.bore is not None and self.inside >= base(made.minor_external):
            raise InputError(
                load.bore.text, "bore", "not smaller than the spline's root", (), "give the bore under the spline"
            )
        self.key = {**made.key, "torque": f"{self.torque.text} {self.torque.unit}"}
        self._read_words()

    def _read_words(self) -> None:
        """Each word that was given is one of the tables, though another that its check needs was not given."""
        load = self.load
        if load.material is not None:
            self.material()
        for typed, name, quantity, column in (
            (load.source, "source", "application_factor", "case"),
            (load.load, "load", "application_factor", "level"),
            (load.cycles, "cycles", "fatigue_life_factor", "level"),
            (load.revolutions, "revolutions", "wear_life_factor", "level"),
            (load.misalignment, "misalignment", "load_distribution_factor", "level"),
        ):
            rows = self.data.table(_FACTORS).by_quantity.get(quantity, ())
            choices = dict.fromkeys(r[column].removeprefix(f"{name} ") for r in rows)
            if typed is not None and self.data.words("driveline", column).get(typed.casefold(), typed) not in choices:
                from gaugeblock.tables.near import of_these

                raise LookupMiss(typed, name, f"not a {name} of the tables", of_these(typed, list(choices)))

    def lacks(self, check: str) -> list[str]:
        """The keys that a check needs and that were not given."""
        load = self.load
        needed = [k for k, (_, _, checks) in _WANTED.items() if check in checks and getattr(load, k) is None]
        if load.seating != "flexible":
            needed = [k for k in needed if k not in ("misalignment", "revolutions")]
        return needed

    def factor_of(self, quantity: str, factor: str, case: str, level: str) -> Figure:
        """A factor of the tables."""
        return lookup.look_up(_FACTORS, quantity, data=self.data, factor=factor, case=case, level=level)

    def application(self) -> Figure:
        """Ka, by what drives and how it is loaded."""
        return self.factor_of("application_factor", "application factor", self.load.source or "", self.load.load or "")

    def life(self) -> Figure:
        """Kf, by cycles of torque in one direction."""
        return self.factor_of("fatigue_life_factor", "fatigue life factor", "one direction", self.load.cycles or "")

    def distribution(self) -> Figure:
        """Km, at the printed face width that is no less; a fixed spline is in line: the least misalignment that is
        printed.
        """
        assert self.load.length is not None
        length = self.load.length.to("m")
        out = self.load.misalignment or "0.001 in/in"
        rows = [
            r
            for r in self.data.table(_FACTORS).by_quantity.get("load_distribution_factor", ())
            if r["level"] == f"misalignment {out}" and not r.standing
        ]
        wide = [
            (p.low, r)
            for r in rows
            if (p := parse_interval(r["case"].removeprefix("face width "))) and p.low is not None
        ]
        fitting = [(low, r) for low, r in wide if float(low) >= length * (1 - 1e-9)]
        if not fitting:
            near = list(dict.fromkeys(r["level"].removeprefix("misalignment ") for r in rows)) or [
                "0.001 in/in",
                "0.002 in/in",
            ]
            why = f"no load distribution factor is printed for {self.load.length} at {out}"
            raise LookupMiss(out, "misalignment", why, near, "use one of these, or ask the maker")
        return lookup.figure_of(min(fitting, key=lambda pair: pair[0])[1], self.data)

    def material(self) -> str:
        """The cell of the material."""
        typed = self.load.material or ""
        try:
            return canonical(self.data, _ALLOWABLES, "material", typed)
        except LookupMiss as miss:
            near = lookup.choices(_ALLOWABLES, "material", data=self.data)
            raise LookupMiss(typed, "spline material", "no published allowable", near, "use one of these") from miss

    def made_of(
        self, rule: str, quantity: str, value_pa: float, inputs: tuple[Figure, ...], said: str, about: str
    ) -> Figure:
        """A derived stress in psi."""
        number = units.from_base(value_pa, "psi")
        return derived(rule, quantity, number, "psi", inputs, self.data, about=about, key=self.key, conditions=said)

    def shear_under_roots(self, factors: tuple[Figure, Figure] | None) -> Figure:
        """Stress under the roots; without its factors where they are not known."""
        ka, kf = (base(f) for f in factors) if factors is not None else (1.0, 1.0)
        value = calc.spline_shear_under_roots(base(self.torque), base(self.made.minor_external), self.inside, ka, kf)
        rule = "spline_shear_under_roots"
        if factors is not None:
            rule += "_solid" if self.bore is None else "_hollow"
        hole = () if self.bore is None else (self.bore,)
        said = "no factors" if factors is None else _said(factors)
        inputs = (self.torque, self.made.minor_external, *hole, *(factors or ()))
        return self.made_of(rule, "spline_shear_stress", value, inputs, said, "")


def _said(factors: tuple[Figure, ...]) -> str:
    return ", ".join(f"{f.quantity.replace('_', ' ')} {f.text}" for f in factors)


def strained(made: Sizes, load: SplineLoad, data: Refdata) -> Strained:
    """All three checks of a spline under a torque."""
    of = _Strength(made, load, data)
    parts = [_roots(of), _teeth(of), _sides(of)]
    figures = tuple(f for figures, _, _ in parts for f in figures)
    factors = [factor for _, factor, _ in parts if factor is not None]
    missing = dict.fromkeys(k for c in (ROOTS, TEETH, SIDES) for k in of.lacks(c))
    questions = tuple(Question(_WANTED[k][0], _WANTED[k][1], k, _WANTED[k][2]) for k in missing)
    fails = tuple(check.name for _, _, check in parts if check.result == NOT_OK)
    if fails:
        questions += (
            Question(ASK_MAKER, "What torque does the spline carry, by the maker of the shaft?", "notes", fails),
        )
    least = min(factors, key=lambda f: f.typical) if len(factors) == len(parts) else None
    return Strained(least, figures, tuple(check for _, _, check in parts), questions)


def _open(name: str, lacks: list[str]) -> Check:
    return Check(name, CANNOT_TELL, f"not given: {', '.join(lacks)}", subject="spline", bears=ASK)


Part = tuple[tuple[Figure, ...], "Figure | None", Check]


def _judged(of: _Strength, name: str, stress: Figure, allowed: Figure, figures: tuple[Figure, ...]) -> Part:
    value = base(allowed) / base(stress)
    factor = derived(
        "spline_factor",
        "spline_factor",
        value,
        "1",
        (allowed, stress),
        of.data,
        about=name,
        key=of.key,
        conditions=name,
    )
    limit = units.from_base(base(allowed), "psi")
    reason = (
        f"{number_only(stress, of.data)} against {number_only(allowed, of.data, 'psi')} for {of.material()}, "
        f"{stress.conditions}; factor {number_only(factor, of.data)}"
    )
    got = Bound(stress.typical, "psi", "", stress)
    check = at_most(name, got, Bound(limit, "psi", "max", allowed), reason, subject="spline", bears=STOP)
    return (*figures, stress, factor), factor, check


def _roots(of: _Strength) -> Part:
    lacks = of.lacks(ROOTS)
    if lacks:
        return (of.shear_under_roots(None),), None, _open(ROOTS, lacks)
    stress = of.shear_under_roots((of.application(), of.life()))
    allowed = lookup.look_up(_ALLOWABLES, "allowable_shear_stress", data=of.data, material=of.material())
    return _judged(of, ROOTS, stress, allowed, ())


def _teeth(of: _Strength) -> Part:
    lacks = of.lacks(TEETH)
    if lacks:
        return (), None, _open(TEETH, lacks)
    made, load = of.made, of.load
    assert load.length is not None
    length = stated(load.length, "length_of_engagement", "length", of.data)
    ka, km, kf = of.application(), of.distribution(), of.life()
    count, width = made.teeth.typical, made.space_width
    value = calc.spline_tooth_shear(
        base(of.torque), base(made.diameter), count, base(length), base(width), base(ka), base(km), base(kf)
    )
    inputs = (of.torque, ka, km, made.diameter, made.teeth, length, width, kf)
    stress = of.made_of("spline_tooth_shear_pitch", "spline_shear_stress", value, inputs, _said((ka, km, kf)), "teeth")
    allowed = lookup.look_up(_ALLOWABLES, "allowable_shear_stress", data=of.data, material=of.material())
    return _judged(of, TEETH, stress, allowed, ())


def _sides(of: _Strength) -> Part:
    lacks = of.lacks(SIDES)
    if lacks:
        return (), None, _open(SIDES, lacks)
    made, load, data = of.made, of.load, of.data
    assert load.length is not None
    length = stated(load.length, "length_of_engagement", "length", data)
    km, ka = of.distribution(), of.application()
    depth = made.contact_depth
    value = calc.spline_side_pressure(
        base(of.torque), base(made.diameter), made.teeth.typical, base(length), base(depth), base(km)
    )
    inputs = (of.torque, km, made.diameter, made.teeth, length, depth)
    stress = of.made_of(
        "spline_side_compression", "spline_side_pressure", value, inputs, f"{load.seating} spline, {_said((km,))}", ""
    )
    at = {"material": of.material(), "teeth": "straight"}
    allowed = lookup.look_up(_ALLOWABLES, "allowable_compressive_stress", data=data, **at)
    if load.seating == "fixed":
        life = of.life()
        value = calc.spline_side_allowable_fixed(base(allowed), base(life), base(ka))
        rule = "spline_side_compression_allowable_fixed"
    else:
        life = of.factor_of("wear_life_factor", "wear life factor", "flexible spline", load.revolutions or "")
        value = calc.spline_side_allowable_flexible(base(allowed), base(life), base(ka))
        rule = "spline_side_compression_allowable_flexible"
    permitted = of.made_of(
        rule, "allowable_compressive_stress", value, (allowed, life, ka), f"{load.seating} spline", ""
    )
    return _judged(of, SIDES, stress, permitted, (permitted,))
