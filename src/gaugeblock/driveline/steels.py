"""What the tables say of one steel, treatment, temper and section. Nothing is borrowed from a neighbour."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from gaugeblock import units
from gaugeblock.driveline.statements import statements_on
from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.figure import CHECKED, Figure
from gaugeblock.lookup import figure_of
from gaugeblock.tables.interval import parse_interval
from gaugeblock.tables.load import Refdata, Row, canonical
from gaugeblock.tables.part import rows_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.units import Measure

TABLE = "driveline/steels"
STRENGTHS = (
    "yield_strength",
    "tensile_strength",
    "yield_strength_typical",
    "tensile_strength_typical",
    "shear_strength",
)
# The sources pair 425 degC with 800 degF, 540 with 1000: 5 degF apart at most.
_PAIRED = Fraction(25, 9)
# Two figures that are no further apart are the same, printed in two units.
_SAME = 0.98
_STEPS = ("specificity", "basis", "checked", "safer end", "edition", "source id")


@cache
def _exact(size: float) -> Fraction:
    """A size as the tables' sections have theirs."""
    return Fraction(size).limit_denominator(10**7)


class Steel:
    """The rows of one steel at one treatment and temper, and the size they are asked for.

    ``size`` is the section in m (None: not asked); ``strict`` when the section itself was typed, so that a row of
    another section is refused; else such a row answers and ``covers`` says that it does not fit.
    """

    __slots__ = ("composition", "data", "grade", "key", "rows", "size", "strict", "temper", "treatment")

    def __init__(self, shaft: Shaft, data: Refdata) -> None:
        self.data = data
        self.grade = _grade(shaft.grade, data)
        own = [r for r in rows_of(data, TABLE, self.grade) if not r["standing"]]
        self.composition = [r for r in own if r["treatment"] == "any"]
        treated = [r for r in own if r["quantity"] in STRENGTHS]
        if not treated:
            raise _unpublished(self.grade, data)
        self.treatment = _treatment(shaft, self.grade, treated, data)
        same = [r for r in own if r["treatment"] == self.treatment]
        self.temper = _temper(shaft.temper, self.treatment, same, treated)
        self.rows = [r for r in same if r["temper"] in ("any", self.temper)]
        self.strict = shaft.section is not None
        size = shaft.section if shaft.section is not None else shaft.diameter
        self.size = size.to("m") if size is not None else None
        self.key = {"steel": self.grade, "treatment": self.treatment, "temper": self.temper}
        if self.strict and not any(self.covers(r["section"]) for r in self.rows if r["quantity"] in STRENGTHS):
            raise LookupMiss(
                f"{self.grade} {self.treatment}, section {shaft.section}",
                f"{TABLE} section",
                "no published strength for this section",
                sorted({r["section"] for r in self.rows if r["quantity"] in STRENGTHS}),
                "strength falls as the section grows: ask the maker, or ask for one of these",
            )

    @classmethod
    def unlisted(cls, shaft: Shaft, data: Refdata) -> Steel:
        """A steel that no table has: its names as typed, no rows."""
        made = cls.__new__(cls)
        made.data = data
        made.grade, made.treatment = shaft.grade, shaft.treatment or "any"
        made.temper = shaft.temper.text if shaft.temper is not None else "any"
        made.composition, made.rows = [], []
        made.strict, made.size = False, None
        made.key = {"steel": made.grade, "treatment": made.treatment, "temper": made.temper}
        return made

    @classmethod
    def of_rows(
        cls, grade: str, treatment: str, temper: str, rows: list[Row], size: float | None, data: Refdata
    ) -> Steel:
        """One steel of the table by its own cells and rows, for a size in m."""
        made = cls.__new__(cls)
        made.data, made.grade, made.treatment, made.temper = data, grade, treatment, temper
        made.composition, made.rows = [], rows
        made.strict, made.size = False, size
        made.key = {"steel": grade, "treatment": treatment, "temper": temper}
        return made

    def covers(self, section: str) -> bool:
        """Whether a section cell holds the size asked; True when no size was asked."""
        interval = parse_interval(section)
        if interval is None or self.size is None:
            return True
        return interval.holds(_exact(self.size))

    @property
    def fits(self) -> tuple[tuple[bool, bool], ...]:
        """Which of the sections of its rows hold the size, and which are smaller: steels of one key that fit alike
        have one strength.
        """
        sections = dict.fromkeys(r["section"] for r in self.rows)
        return ((self.size is None, False), *((self.covers(s), self.beyond(s)) for s in sections))

    def beyond(self, section: str) -> bool:
        """Whether the size asked is larger than all of a section cell."""
        interval = parse_interval(section)
        return (
            interval is not None
            and interval.high is not None
            and self.size is not None
            and self.size > float(interval.high)
        )

    def figure(self, quantity: str) -> Figure | None:
        """The governing figure of a quantity for the size, the rest in ``others``; None when no row has it."""
        rows = [r for r in self.rows if r["quantity"] == quantity]
        fitting = [r for r in rows if self.covers(r["section"])]
        if len(fitting or rows) == 1:
            row = (fitting or rows)[0]
            return figure_of(row, self.data).replace(chosen_by="only row", conditions=_said(row))
        ranked = sorted(((self._order(r), r) for r in fitting or rows), key=lambda pair: (pair[0], pair[1].line))
        if not ranked:
            return None
        best = ranked[0][0]

        def lost_at(order: tuple[object, ...]) -> str:
            return next((step for step, a, b in zip(_STEPS, best, order, strict=True) if a != b), "source id")

        others = tuple(figure_of(row, self.data).replace(chosen_by=lost_at(order)) for order, row in ranked[1:])
        chosen = "only row" if len(ranked) == 1 else lost_at(ranked[1][0])
        return figure_of(ranked[0][1], self.data).replace(
            chosen_by=chosen, others=others, conditions=_said(ranked[0][1])
        )

    def _order(self, row: Row) -> tuple[object, ...]:
        c = row.cells
        meta = self.data.quantity(c["quantity"])
        prefers = meta["prefers"].split(" > ")
        interval = parse_interval(c["section"])
        wide = 1e10 if interval is None else float(interval.width) if interval.width is not None else 1e9
        figure = figure_of(row, self.data)
        number = units.to_base(figure.typical, figure.unit)
        year = self.data.source(c["source"])["year"] if c["source"] else ""
        return (
            wide if self.size is not None else 0.0,
            prefers.index(c["basis"]) if c["basis"] in prefers else len(prefers),
            CHECKED.index(c["checked"]) if c["checked"] in CHECKED else len(CHECKED),
            number if meta["safer"] == "low" else -number if meta["safer"] == "high" else 0.0,
            -int(year) if year else 0,
            c["source"],
        )


def governing(steel: Steel, least: str, typical: str) -> Figure | None:
    """The least value that a source states, else the typical one; a row that covers the section before one that
    does not. A typical value of a bar of this section, or of a smaller one, that is lower than what another
    source calls the least is the one: no bar is stronger than bars are.
    """
    found = [f for f in (steel.figure(least), steel.figure(typical)) if f is not None]
    if len(found) > 1:
        stated, usual = found
        section = usual.key["section"]
        if section != "any" and (steel.covers(section) or steel.beyond(section)) and _low(usual) < _SAME * _low(stated):
            return usual.replace(others=(*usual.others, stated.replace(chosen_by="safer end", others=())))
    return next((f for f in found if steel.covers(f.key["section"])), found[0] if found else None)


def _low(figure: Figure) -> float:
    return units.to_base(figure.typical, figure.unit)


def _said(row: Row) -> str:
    """The row's own conditions, with its section and specimen: they are never left unsaid."""
    c = row.cells
    section = "" if c["section"] == "any" else f"section {c['section']}"
    specimen = "" if c["specimen"] in ("any", "not stated") else c["specimen"]
    return "; ".join(part for part in (c["conditions"], section, specimen) if part)


def _grade(typed: str, data: Refdata) -> str:
    text = " ".join(typed.split())
    for name in (text, text.upper()):
        if statements_on(data, "steel strength", name) and name.casefold() not in data.table(TABLE).column("steel"):
            raise _unpublished(name, data)
    return canonical(data, TABLE, "steel", typed)


def _unpublished(grade: str, data: Refdata) -> LookupMiss:
    said = " ".join(statements_on(data, "steel strength", grade)) or "No published strength was found for this steel."
    return LookupMiss(
        grade, f"{TABLE} strength", said.rstrip("."), (), "ask the maker for a certificate, and test its hardness"
    )


def _labels(rows: list[Row]) -> list[str]:
    return list(
        dict.fromkeys(
            " | ".join(r.cells[k] for k in ("steel", "treatment", "temper") if r.cells[k] != "any") for r in rows
        )
    )


def _treatment(shaft: Shaft, grade: str, rows: list[Row], data: Refdata) -> str:
    """The treatment cell that was meant; where it has no such temper, the same treatment with its quench named, or
    not.
    """
    own = list(dict.fromkeys(r["treatment"] for r in rows))
    near = _labels(rows)
    if not shaft.treatment:
        why = "the strength depends on the treatment"
        raise Ambiguous(grade, f"{TABLE} treatment", why, own, "name the treatment")
    try:
        folded = " ".join(shaft.treatment.split()).casefold()
        cell = next((t for t in own if t.casefold() == folded), None) or canonical(
            data, TABLE, "treatment", shaft.treatment
        )
    except LookupMiss:
        from gaugeblock.tables.near import nearest

        near = [n for t in nearest(shaft.treatment, own) for n in near if f" | {t}" in n] or near
        why = f"not a treatment that is published for {grade}"
        raise LookupMiss(shaft.treatment, f"{TABLE} treatment", why, near, "use one of these") from None
    tempers = {t: {r["temper"] for r in rows if r["treatment"] == t} for t in own}
    if cell in own and _has_temper(shaft.temper, tempers[cell]):
        return cell
    alike = [t for t in own if t != cell and _alike(cell, t) and _has_temper(shaft.temper, tempers[t])]
    asked = f"{grade}, {cell}" + (f", {shaft.temper}" if shaft.temper is not None else "")
    if len(alike) > 1:
        why = "the strength depends on the quench"
        raise Ambiguous(asked, f"{TABLE} treatment", why, alike, "name the quench: oil or water")
    if alike or cell in own:
        return alike[0] if alike else cell
    why = f"no published strength of {grade} in this treatment"
    said = " ".join(statements_on(data, "steel strength", grade))
    do = "use one of the nearest keys, or ask the maker" + (f"; {said}" if said else "")
    raise LookupMiss(asked, f"{TABLE} treatment", why, _near(rows, cell, shaft.temper), do)


def _alike(a: str, b: str) -> bool:
    """Whether two treatments are one, the quench (oil, water) named in only one of them."""
    quenches = [set(t.split()) & {"oil", "water"} for t in (a, b)]
    bare = [set(t.split()) - {"oil", "water"} for t in (a, b)]
    return bare[0] == bare[1] and any(quenches) and not all(quenches)


def _has_temper(typed: Measure | None, cells: set[str]) -> bool:
    if typed is None:
        return "any" in cells
    want = _degrees(typed)
    points = (parse_interval(c) for c in cells)
    return any(p is not None and p.low is not None and abs(p.low - want) <= _PAIRED for p in points)


def _near(rows: list[Row], treatment: str, temper: Measure | None) -> list[str]:
    """The keys of one steel nearest a treatment and temper: most words in common, then the nearest temper."""
    degrees = _degrees(temper) if temper is not None else None
    words = set(treatment.split()) - {"and", "oil", "water"}

    def distance(row: Row) -> tuple[float, float, bool]:
        own = row["treatment"]
        at = parse_interval(row["temper"])
        apart = 1e6 if at is None or at.low is None or degrees is None else abs(float(at.low - degrees))
        return -len(words & set(own.split())), apart, own != treatment

    return _labels(sorted(rows, key=distance))


def _degrees(temper: Measure) -> Fraction:
    return temper.value * units.factor(temper.unit) + units.offset(temper.unit)


def _temper(typed: Measure | None, treatment: str, rows: list[Row], treated: list[Row]) -> str:
    """The temper cell that was meant. Tempers are not interpolated; a treatment published without one refuses one."""
    cells = list(dict.fromkeys(r["temper"] for r in rows if r["quantity"] in STRENGTHS))
    points = [
        (interval.low, c) for c in cells if (interval := parse_interval(c)) is not None and interval.low is not None
    ]
    said = f"{rows[0].cells['steel']}, {treatment}"
    if typed is None:
        if "any" in cells:
            return "any"
        found = [c for _, c in sorted(points)]
        raise Ambiguous(said, f"{TABLE} temper", "the strength depends on the temper", found, "name the temper")
    want = _degrees(typed)
    for low, cell in points:
        if abs(low - want) <= _PAIRED:
            return cell
    asked = f"{said}, temper {typed}"
    if not points:
        why = "this treatment is published without a temper"
        raise LookupMiss(asked, f"{TABLE} temper", why, _labels(rows), "leave the temper out, or ask the maker")
    why = "no published strength at this temper, and tempers are not interpolated"
    near = _near(treated, treatment, typed)
    raise LookupMiss(asked, f"{TABLE} temper", why, near, "use one of these, or ask the maker")
