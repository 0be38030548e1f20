"""One step of an axle's set-up: the maker's figure, as found, as left. Figures of other axles inform, never answer."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, NOT_OK, Bound, Check, at_least, at_most
from gaugeblock.answer.maker import maker_figure
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.printing import printed
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import keys
from gaugeblock.driveline.keys import Step
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import InputError, LookupMiss, UnitError
from gaugeblock.figure import Figure
from gaugeblock.lookup import figure_of
from gaugeblock.tables.load import Refdata, Row, canonical, nearest, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.units import Measure

TABLE = "driveline/setup"
CHECK = "as left within the maker's figure"
_SHOWN = 6
_BY_DIMENSION = {"length": "setup_length", "torque": "setup_torque", "angle": "setup_angle"}


def setup(
    axle: str,
    component: str,
    step: str,
    wear: str | None = None,
    *,
    as_found: str | None = None,
    as_left: str | None = None,
    maker: Mapping[str, str | None] | Sequence[str | None] | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Whether what was left at one step of a set-up is the maker's figure.

    Parameters are text as people write them: ``axle`` the shop's name of it, or an axle of the table in full;
    ``component`` ``ring gear``; ``step`` a step of the table, or what is set (``backlash``); ``wear`` ``new`` or
    ``used``; ``as_found`` and ``as_left`` a measure, or words; ``maker`` its own figure:
    value, low, high, source, place, by these names or in this order.

    Returns a Sheet: the maker's figure first (else the published one of exactly this axle), then as left and as
    found. Figures of other axles stand in a caution: they inform and never pass or fail the check.

    Raises LookupMiss with the nearest components or steps, InputError or UnitError for a maker's figure that cannot
    be read.

    >>> sheet = setup("rear", "ring gear", "backlash", "new", as_left="0.007 in")
    >>> sheet.checks[0].result
    'cannot tell'
    """
    asked = {
        "axle": axle,
        "component": component,
        "step": step,
        "wear": wear,
        "as_found": as_found,
        "as_left": as_left,
        "maker": None,
    }
    left, found = keys.finding(as_left, "as left"), keys.finding(as_found, "as found")
    made = keys.maker(maker) if maker is not None else None
    asked["maker"] = made.text if made is not None else None
    return judged(Step(axle, component, step, wear, found, left, made), asked, data or refdata())


def judged(of: Step, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``setup``, of a step that was read."""
    try:
        rows = _rows(of, data)
    except LookupMiss:
        if of.maker is None:
            raise
        rows = []  # the maker's figure answers for a component that no table knows
    own = [r for r in rows if r["axle"].casefold() == " ".join(of.axle.split()).casefold()]
    made = _maker(of.maker, rows) if of.maker is not None else None
    published = _published(own, data)
    others = tuple(figure_of(r, data).replace(chosen_by="another axle") for r in rows if r not in own)
    rule = made or published
    dimension = units.dimension(rule.unit) if rule is not None else _dimension(of.as_left or of.as_found, rows)
    quantity = rule.quantity if rule is not None else _BY_DIMENSION.get(dimension, "setup_length")
    left = _finding(of.as_left, dimension, quantity, "as left", data)
    found = _finding(of.as_found, dimension, quantity, "as found", data)
    figures = [f for f in (made, published if made is None else None, left, found) if f is not None]
    if rule is None:
        several = "the manual of this axle has more than one figure here: say whether new or used, or name the step"
        none = "the maker's figure is not given; figures of other axles do not answer"
        check = _open(several if own else none)
    else:
        check = _check(of, rule, made, left)
    cautions = _cautions(rows, _may_be_large(left, rule), data)
    if rule is not None and found is not None and _within("as found", found, rule).result == NOT_OK:
        text = f"As found, {found.text} {found.unit} was outside {printed(rule, data)}."
        cautions.append(Caution(text, "note", (found.id, rule.id), rule.source))
    if made is not None and published is not None and _apart(made, published):
        both = f"The maker's figure is {printed(made, data)}, the manual of this axle has {printed(published, data)}"
        text = f"{both}: the maker's governs; find out why they differ."
        cautions.append(Caution(text, "damage", (made.id, published.id), published.source))
    if others:
        cautions.append(_examples(others, data))
    title = f"{of.axle}: {of.component}, {of.step}" + (f", {of.wear}" if of.wear else "")
    return Sheet(title, asked, data, figures, [check], cautions)


def _rows(of: Step, data: Refdata) -> list[Row]:
    """The rows of a component and step, wherever they come from; a step may be named by what is set at it."""
    part = canonical(data, TABLE, "component", of.component)
    own = [r for r in data.table(TABLE).rows if r["component"] == part and not r["standing"]]
    text = " ".join(of.step.split()).casefold()
    word = data.words("driveline", "step").get(text, text)
    rows = [r for r in own if r["step"].casefold() == word.casefold()]
    if not rows:
        rows = [
            r
            for r in own
            if text.replace(" ", "_")
            in (
                r["quantity"],
                r["quantity"].removesuffix("_maximum"),
                r["quantity"].removesuffix("_torque"),
            )
        ]
    if not rows:
        steps = list(dict.fromkeys([r["step"] for r in own] + [r["quantity"].replace("_", " ") for r in own]))
        raise LookupMiss(
            of.step, f"{TABLE} step", f"no such step of {part}", nearest(of.step, steps) or steps, "use one of these"
        )
    if of.wear is None:
        return rows
    worn = canonical(data, TABLE, "wear", of.wear)
    return [r for r in rows if r["wear"] in (worn, "any", "not stated")]


def _maker(made: keys.Maker, rows: list[Row]) -> Figure:
    ends = made.ends
    first = next(iter(ends.values()))
    numbers = {name: m.to(first.unit) for name, m in ends.items()}
    rising = [numbers[n] for n in ("low", "value", "high") if n in numbers]
    if rising != sorted(rising):
        raise InputError(
            " ".join(m.text for m in ends.values()),
            "maker's figure",
            "its ends are the wrong way round",
            (),
            "give low, value and high in rising order",
        )
    dimension = units.dimension(first.unit)
    known = next(
        (r["quantity"] for r in rows if units.dimension(r["unit"]) == dimension),
        _BY_DIMENSION.get(dimension, "setup_length"),
    )
    return maker_figure(ends, known, made.source, made.place)


def _published(own: list[Row], data: Refdata) -> Figure | None:
    """The published figure of exactly this axle; None when there is none, or more than one with the wear not said."""
    found = [figure_of(r, data) for r in own]
    if not found:
        return None
    same = [f for f in found if f.quantity == found[0].quantity and f.key["wear"] == found[0].key["wear"]]
    return found[0].replace(chosen_by="only row", conditions=_worn(found[0])) if len(same) == len(found) else None


def _worn(figure: Figure) -> str:
    wear = figure.key["wear"]
    return "; ".join(p for p in ("" if wear in ("any", "not stated") else f"{wear} parts", figure.conditions) if p)


def _dimension(measured: Measure | str | None, rows: list[Row]) -> str:
    """The dimension of what was measured when it is set at this step, else that of the first row."""
    known = list(dict.fromkeys(units.dimension(r["unit"]) for r in rows))
    own = "length" if measured is None or isinstance(measured, str) else units.dimension(measured.unit)
    return own if own in known or not known else known[0]


def _finding(got: Measure | str | None, dimension: str, quantity: str, where: str, data: Refdata) -> Figure | None:
    """A finding as a Figure; None when it is not given, or is words."""
    if got is None or isinstance(got, str):
        return None
    if units.dimension(got.unit) != dimension:
        raise UnitError(
            got.text,
            where,
            f"{got.unit} is a {units.dimension(got.unit)}; a {dimension} is asked",
            units.spellings(dimension),
            "use a unit of the right dimension",
        )
    if got.value < 0:
        raise InputError(got.text, where, "must be more than zero", (), f"give the {where} itself")
    return stated(got, quantity, where, data, read_by="read on this axle")


def _ends(rule: Figure) -> tuple[float | None, float | None]:
    """Lowest and highest allowed; a lone value of a maximum or minimum is that end, another lone value has none."""
    if rule.low is not None or rule.high is not None:
        return rule.low, rule.high
    if rule.quantity.endswith("_maximum"):
        return None, rule.value
    return (rule.value, None) if rule.quantity.endswith("_minimum") else (None, None)


def _within(name: str, got: Figure, rule: Figure) -> Check:
    low, high = _ends(rule)
    value = units.from_base(base(got), rule.unit)
    actual = Bound(value, rule.unit, "", got)
    said = f"{got.text} {got.unit}"
    if low is None and high is None:
        same = abs(value - rule.typical) <= 1e-9 * abs(rule.typical)
        end = Bound(rule.typical, rule.unit, "max", rule)
        if same:
            return at_most(name, actual, end, f"{said}, the figure itself")
        return Check(
            name, CANNOT_TELL, f"{said}; the figure is {rule.text} {rule.unit} without a tolerance", end, actual
        )
    ends = " to ".join(f"{end:g}" for end in (low, high) if end is not None)
    word = "at least " if high is None else "at most " if low is None else ""
    reason = f"{said}; {word}{ends} {rule.unit}, {rule.source}"
    if low is not None and (high is None or value < low):
        return at_least(name, actual, Bound(low, rule.unit, "min", rule), reason)
    return at_most(name, actual, Bound(high or 0.0, rule.unit, "max", rule), reason)


def _open(why: str, actual: Bound | None = None) -> Check:
    return Check(CHECK, CANNOT_TELL, why, None, actual, subject="as left", bears=ASK)


def _check(of: Step, rule: Figure, made: Figure | None, left: Figure | None) -> Check:
    if left is None:
        return _open(f"as left is words: {of.as_left}" if of.as_left else "as left is not given")
    if made is not None and of.maker is not None and not (of.maker.source and of.maker.place):
        actual = Bound(left.typical, left.unit, "", left)
        return _open("the maker's figure has no source and place: name them", actual)
    if made is None and of.wear is None and rule.key.get("wear") in ("new", "used"):
        return _open(f"the figure is for {rule.key['wear']} parts; whether these are new or used is not given")
    is_ring = of.component.casefold() in ("ring gear", "crown wheel", "crownwheel")
    if of.wear == "used" and is_ring and made is None and rule.quantity == "backlash":
        return _open("used gears go back to their recorded backlash, whatever the figure for new ones")
    return _within(CHECK, left, rule)


def _apart(a: Figure, b: Figure) -> bool:
    if units.dimension(a.unit) != units.dimension(b.unit):
        return False
    ends_a = [units.to_base(e, a.unit) for e in (a.low, a.high, a.value) if e is not None]
    ends_b = [units.to_base(e, b.unit) for e in (b.low, b.high, b.value) if e is not None]
    return max(ends_a) < min(ends_b) * 0.98 or min(ends_a) > max(ends_b) * 1.02


def _examples(others: tuple[Figure, ...], data: Refdata) -> Caution:
    """Figures of other axles, each with its axle: examples, not answers."""
    several = len({f.quantity for f in others}) > 1

    def said(figure: Figure) -> str:
        what = f"{figure.quantity.replace('_', ' ')} " if several else ""
        wear = figure.key["wear"]
        return f"{what}{printed(figure, data)} ({figure.key['axle']}{'' if wear in ('any', 'not stated') else f', {wear}'})"

    parts = [said(f) for f in others[:_SHOWN]]
    more = f"; and {len(others) - _SHOWN} more" if len(others) > _SHOWN else ""
    sources = ", ".join(dict.fromkeys(f.source for f in others[:_SHOWN]))
    return Caution(
        f"Examples of other axles, not for this one: {'; '.join(parts)}{more}.",
        "note",
        tuple(f.id for f in others),
        sources,
    )


# What a pattern asks for, by where it stands on the tooth.
_PATTERNS = (
    "high pattern, pattern near the tooth top",
    "low pattern, pattern near the root",
    "pattern too far to the heel",
    "pattern too far to the toe",
)


def _may_be_large(left: Figure | None, rule: Figure | None) -> bool:
    """Whether what was left is over its figure, or that is not known."""
    if left is None or rule is None or units.dimension(left.unit) != units.dimension(rule.unit):
        return True
    low, high = _ends(rule)
    value = units.from_base(base(left), rule.unit)
    return (low is None and high is None) or (high is not None and value > high)


def _cautions(rows: list[Row], is_large: bool, data: Refdata) -> list[Caution]:
    """The rules that belong to what is set here, then those of all work on an axle."""
    quantities = {r["quantity"] for r in rows}
    components = {r["component"] for r in rows}
    out: list[Caution] = []
    if components & {"drive pinion bearings", "drive pinion nut"}:
        out += rule_cautions(data, "axle set-up", "crush sleeve", named=True)
    if any(q.startswith("preload") for q in quantities):
        out += rule_cautions(data, "axle set-up", "drag torque", "new and used bearings", named=True)
    if any(q.startswith("backlash") for q in quantities):
        out += rule_cautions(
            data,
            "axle set-up",
            "used gears",
            "backlash shims",
            "adjusting nuts",
            "cast iron shims",
            named=True,
        )
        out += rule_cautions(data, "axle set-up", "backlash too large", named=True) if is_large else []
    if components & {"pinion depth shims", "side bearing shims"}:
        out += rule_cautions(data, "axle set-up", "pinion mark signs", "cast iron shims", named=True)
    if "pattern_brake_torque" in quantities or "teeth_painted" in quantities:
        out += rule_cautions(data, "contact pattern", "where backlash is read", "used gears", *_PATTERNS, named=True)
    if any("wheel bearing" in c for c in components):
        out += rule_cautions(data, "wheel bearings", "back-off", named=True)
    return out + rule_cautions(data, "axle set-up", "figures named by axle", "stands")
