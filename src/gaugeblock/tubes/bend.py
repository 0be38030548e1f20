"""Tubes: the least radius a tube is bent to, and what a bend does to it."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import CANNOT_TELL, NOT_OK, OK, Bound, Check, at_least
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.figure import Figure
from gaugeblock.tables.catalogue import VEHICLE_SERVICES
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tubes import bend_metal as tube_bend_metal
from gaugeblock.tubes import keys as tube_keys
from gaugeblock.tubes.bent import CAGE, MINIMUMS, Bent

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    pass


class Minimum:
    """A least radius: the row, the radius it comes to, and the ends to the centre line that rows of its kind give, in m."""

    __slots__ = ("high_m", "low_m", "radius", "row")

    def __init__(self, row: Figure, tube: Bent) -> None:
        self.row = row
        low, high = lookup.spread(row)
        if row.quantity == "bend_ratio_minimum":
            od_m = float(tube.od_m)
            self.low_m, self.high_m = low * od_m, high * od_m
            unit, scale = tube.unit, tube.length(tube.od_m)
            service = row.key["service"]
            self.radius = tube.derived(
                "radius_from_ratio", "bend_radius_minimum", row.typical * scale, unit, (row, tube.od),
                low=None if row.low is None else row.low * scale, high=None if row.high is None else row.high * scale, side="min",
                conditions=f"service: {service}; measured to: {row.key['measured_to']}", mark=f"|{service} {row.text}",
            )  # fmt: skip
        else:
            self.low_m, self.high_m = units.to_base(low, row.unit), units.to_base(high, row.unit)
            self.radius = row
        to = row.key["measured_to"]
        if to != "centre line":  # where the source does not say, it may be either: the ends lie half an OD apart
            half = float(tube.od_m) / 2
            self.low_m, self.high_m = self.low_m + (half if to == "inside" else 0.0), self.high_m + half

    @property
    def figures(self) -> list[Figure]:
        """The row, and the radius it comes to when the row is a ratio."""
        return [self.row] if self.radius is self.row else [self.row, self.radius]


def _minimums(tube: Bent, service: str) -> list[Minimum]:
    """What is known of this tube under one service, the most specific first; rows of another service are left out."""
    data = tube.data
    table = data.table(MINIMUMS)
    products = (
        ["tube"]
        if service in (*VEHICLE_SERVICES, CAGE)
        else lookup.choices(MINIMUMS, "product", data=data, service=service)
    )
    found: list[Minimum] = []
    keys = {
        "family": tube.family,
        "od": tube.key["od"],
        "wall": tube.key["wall"],
        "method": tube.method,
        "service": service,
    }
    if tube.stock.material is not None and tube.stock.material.casefold() in table.column("material"):
        keys["material"] = tube.stock.material
    names = [k.name for k in table.keys]
    fits = [
        (names.index(column), cells)
        for column, cells in (
            ("product", products), ("service", (service, "any")), ("family", (tube.family, "any")), ("method", (tube.method, "any")),
        )
    ]  # fmt: skip
    named = names.index("product"), names.index("measured_to")
    for quantity in ("bend_radius_minimum", "bend_ratio_minimum"):
        rows = [r for r in table.by_quantity[quantity] if all(r.key[at] in cells for at, cells in fits)]
        for product, measured_to in dict.fromkeys((r.key[named[0]], r.key[named[1]]) for r in rows):
            row = lookup.look_up_or_none(
                MINIMUMS, quantity, data=data, product=product, measured_to=measured_to, **keys
            )
            if row is not None:
                found.append(Minimum(row, tube))
    return sorted(
        found,
        key=lambda m: (m.row.key["wall"] == "any", m.row.key["od"] == "any", m.row.quantity == "bend_ratio_minimum"),
    )


def bend(
    *,
    od: str,
    wall: str,
    material: str,
    method: str,
    radius: str | None = None,
    angle: str | None = None,
    service: str = "vehicle",
    measured_to: str | None = None,
    product: str | None = None,
    condition: str | None = None,
    spec: str | None = None,
    diameters: str | None = None,
    die: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The least radius for a tube, whether a die keeps to it, and what the bend does to the tube.

    Parameters are text as people write them: ``od`` ``1-3/4 in``; ``wall`` ``.120 in`` or ``11 BWG``; ``material``
    ``1020 DOM`` (or ``product``, ``condition``, ``spec`` apart); ``method`` ``rotary draw``; ``radius`` of the die, to the
    centre line unless ``measured_to`` (or the words after it) say inside; ``angle`` ``90 deg``; ``service`` ``vehicle`` or
    ``vehicle safety cage``; ``diameters`` largest and smallest as measured at a bend (``1.80 x 1.70 in``); ``die`` its name.

    Returns a Sheet: the published cage rule first beside a steel tube (it governs a cage and informs otherwise), then
    the habit of the method, bend ratio, wall factor, and outer fibre strain beside the guaranteed elongation, predicted
    outer wall, arc length and springback as information. A radius inside a habit's spread answers ``cannot tell``.

    Raises LookupMiss with the nearest keys, InputError or UnitError for what cannot be read.
    Source of the 3 x diameter rule: FSAE Rules 2021 F.5.2.1, FIA Appendix J Art. 253-8.3.3.

    >>> sheet = bend(od="1 3/4 in", wall=".120 in", material="1020 DOM", method="rotary draw", radius="5 1/2 in")
    >>> sheet.figures[0].text, sheet.figures[0].key["service"], round(sheet.figure("bend_ratio").typical, 2)
    ('3', 'vehicle safety cage', 3.14)
    """
    data = data or refdata()
    asked = {
        "od": od, "wall": wall, "material": material, "method": method, "radius": radius, "angle": angle, "service": service,
        "measured_to": measured_to, "product": product, "condition": condition, "spec": spec, "diameters": diameters, "die": die,
    }  # fmt: skip
    tube = Bent(od, wall, tube_keys.stock(material, data, product, condition, spec), method, service, data)
    own = _minimums(tube, tube.service)
    cage = own if tube.service == CAGE else _minimums(tube, CAGE) if tube.may_be_a_cage else []
    habits = own if tube.service != CAGE else _minimums(tube, "vehicle")
    figures: list[Figure] = [f for m in cage for f in m.figures]
    figures += [f for m in habits if m.row.id not in {c.row.id for c in cage} for f in m.figures]
    centre = None
    if radius is not None:
        tube.radius, tube.clr_m, to = tube_keys.radius(radius, measured_to, tube.od_m, data)
        centre = tube.radius
        if to == "inside":
            centre = tube.derived(
                "centre_line_from_inside",
                "centre_line_radius",
                tube.length(tube.clr_m),
                tube.unit,
                (tube.radius, tube.od),
            )
            figures.append(centre)
    checks = _radius_checks(tube, own, habits, centre)
    figures += _shape(tube, centre)
    more, cautions = tube_bend_metal.stretch(tube, centre)
    figures += more
    if angle is not None:
        figures += tube_bend_metal.arc(tube, angle, centre)
    more, more_checks = tube_bend_metal.flattening(tube, diameters)
    figures += more
    checks += more_checks
    cautions = [*_informs(tube, cage), *cautions, *tube_bend_metal.trade(tube)]
    label = f"{tube.key['od']} x {tube.key['wall']} {tube.stock.label}, {tube.method}"
    return Sheet(label, asked, data, figures, checks, cautions)


def _shape(tube: Bent, centre: Figure | None) -> list[Figure]:
    out = [tube.derived("wall_factor", "wall_factor", float(tube.od_m / tube.wall_m), "1", (tube.od, tube.wall))]
    if centre is not None and tube.clr_m is not None:
        out.insert(0, tube.derived("bend_ratio", "bend_ratio", float(tube.clr_m / tube.od_m), "1", (centre, tube.od)))
    return out


def _radius_checks(tube: Bent, own: list[Minimum], habits: list[Minimum], centre: Figure | None) -> list[Check]:
    """The governing minimum of the service asked, and the habit of the method beside a cage's rule."""
    name = "radius against the governing minimum"
    if not own:
        also = ", ".join(
            dict.fromkeys(
                r["family"]
                for r in tube.data.table(MINIMUMS).rows
                if r["service"] == tube.service and r["family"] != "any"
            )
        )
        reason = f"no published source, and no habit on record, for {tube.family} tube by {tube.method} in service {tube.service}"
        checks = [
            Check(
                name,
                CANNOT_TELL,
                f"{reason} (known for: {also}): bend a test piece" if also else f"{reason}: bend a test piece",
            )
        ]
    else:
        checks = [_held_to_stricter(_against(name, tube, own[0], centre), tube, own[1:])]
    if tube.service == CAGE and habits:
        checks.append(_against("radius against the habit of the method", tube, habits[0], centre))
    return checks


def _held_to_stricter(check: Check, tube: Bent, others: list[Minimum]) -> Check:
    """An ok on the governing minimum is ``cannot tell`` where another living one of the service asks a larger radius."""
    if check.result != OK or tube.clr_m is None:
        return check
    asked = [(m.radius.typical * float(units.factor(m.radius.unit)), m) for m in others]
    stricter = [(r, m) for r, m in asked if r > float(tube.clr_m) * (1 + 1e-9)]
    if stricter:
        most, minimum = max(stricter, key=lambda pair: pair[0])
        who = f"{minimum.row.source or 'another habit'}, service {minimum.row.key['service']}"
        check = check.replace(result=CANNOT_TELL)
        check = check.replace(
            reason=check.reason
            + (f"; {who}, asks {units.significant(tube.length(most), 4)} {tube.unit}: bend a test piece")
        )
    return check


def _against(name: str, tube: Bent, minimum: Minimum, centre: Figure | None) -> Check:
    """ok at or over all the spread, not ok under all of it, else ``cannot tell``."""
    row = minimum.row
    of = row.key["product"]
    who = f"{row.source or 'common practice'}, service {row.key['service']}{'' if of == 'tube' else f', {of}'}"
    needed = Bound(tube.length(minimum.high_m), tube.unit, "min", minimum.radius)
    if centre is None or tube.clr_m is None:
        return Check(
            name,
            CANNOT_TELL,
            f"the radius of the die is not given; {number_only(minimum.radius, tube.data)} asked ({who})",
            needed,
        )
    thin = _outside_list(tube, row)
    got = tube.length(tube.clr_m)
    ends = " to ".join(dict.fromkeys(units.significant(tube.length(e), 4) for e in (minimum.low_m, minimum.high_m)))
    text = f"{units.significant(got, 4)} {tube.unit} to the centre line, {ends} {tube.unit} asked ({who})"
    check = at_least(name, Bound(got, tube.unit, figure=centre), needed, text)
    over_low = float(tube.clr_m) >= minimum.low_m * (1 - 1e-9)
    if thin and over_low:
        return Check(name, CANNOT_TELL, f"{text}; {thin}: bend a test piece", needed, check.actual)
    if check.result == NOT_OK and over_low and row.key["measured_to"] == "not stated":
        why = f"{text}: the source does not say what it is measured to"
        return Check(name, CANNOT_TELL, why, needed, check.actual)
    if check.result == NOT_OK and over_low:
        return Check(
            name, CANNOT_TELL, f"{text}: inside the spread of this habit; bend a test piece", needed, check.actual
        )
    if check.result == NOT_OK:
        check = check.replace(reason=check.reason + (": use a larger die"))
    elif row.basis == "common practice":
        check = check.replace(reason=check.reason + (": what the method usually forms, not what the part may carry"))
    return check


def _outside_list(tube: Bent, row: Figure) -> str:
    """Why a row for any wall of one OD does not reach this wall: it is outside the walls listed; blank when it is inside."""
    if row.key["wall"] != "any" or row.key["od"] == "any":
        return ""
    walls = [
        w
        for r in tube.data.table(MINIMUMS).by_quantity["bend_radius_minimum"]
        if r["od"] == row.key["od"] and r["method"] == tube.method and r["service"] == row.key["service"]
        and (w := parse_interval(r["wall"])) is not None and w.low is not None
    ]  # fmt: skip
    if not walls:
        return ""
    low, high = min(walls, key=lambda w: w.low or 0), max(walls, key=lambda w: w.low or 0)
    if (low.low or 0) <= tube.wall_m <= (high.low or 0):
        return ""
    return f"a wall of {tube.key['wall']} is outside the walls listed for this OD, {low.text} to {high.text}"


def _informs(tube: Bent, cage: list[Minimum]) -> list[Caution]:
    """The cage rule beside a tube it does not govern, and the rows of other services."""
    out = []
    if cage and tube.service != CAGE:
        rule = cage[0]
        text = (
            f"No rule is published for a vehicle's own tube. Safety cages ask {rule.row.text} x OD to the centre line"
        )
        text += f", {number_only(rule.radius, tube.data)} here"
        if tube.clr_m is not None:
            met = float(tube.clr_m) >= rule.low_m * (1 - 1e-9)
            text += f": this bend {'keeps' if met else 'does not keep'} it, {float(tube.clr_m / tube.od_m):.3g} x OD"
        out.append(
            Caution(f"{text}. It informs, it does not pass or fail this part.", "note", (rule.row.id,), rule.row.source)
        )
    rows: dict[tuple[str, str], Figure] = {}
    for row in tube.data.table(MINIMUMS).rows:
        c = row.cells
        if c["quantity"] not in ("bend_radius_minimum", "bend_ratio_minimum") or c["service"] in (
            tube.service,
            "any",
            "vehicle",
            CAGE,
            "conduit",
        ):
            continue
        interval = parse_interval(c["od"])
        if c["family"] == tube.family and c["material"] == "any" and (interval is None or interval.holds(tube.od_m)):
            rows.setdefault((c["service"], c["product"]), lookup.figure_of(row, tube.data))
    if rows:
        told = "; ".join(
            f"{s} {p} {f.text}{' x diameter' if f.unit == '1' else ' ' + f.unit} ({f.source})"
            for (s, p), f in rows.items()
        )
        out.append(
            Caution(
                f"Other services, for information only: {told}.", "note", tuple(f.id for f in rows.values()), "refdata"
            )
        )
    return out
