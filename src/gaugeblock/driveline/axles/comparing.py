"""The same axle shaft of every steel in the table, ranked; and with the next sizes of its spline."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, NONE, STOP, USE, ask
from gaugeblock.answer.making import base
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Line, Table
from gaugeblock.driveline.axles.form import body_of
from gaugeblock.driveline.axles.judging import judged
from gaugeblock.driveline.axles.ways import cases
from gaugeblock.driveline.carrying import VERB, outcome
from gaugeblock.driveline.steels import STRENGTHS, TABLE, Steel
from gaugeblock.driveline.strength import strength_of
from gaugeblock.driveline.torsion import Strength, torsion
from gaugeblock.errors import InputError
from gaugeblock.tables.part import rows_of_quantities

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.axles.form import Form
    from gaugeblock.driveline.axles.pull import Pull
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row

_YIELDS = tuple(name for name in STRENGTHS if name.startswith("yield"))
STEELS, SPLINES = COMPARED = ("steels", "splines")
_RANK = (USE, ASK, STOP, NONE)
# Under this factor a card shows what stronger steels would do.
ROOM = 1.5
_NEXT = 8  # teeth more than the spline has


def compared(what: str, shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> Table:
    """The Table of ``steels`` or of ``splines``; InputError for anything else, or where no torque or size is known."""
    if what == STEELS:
        return _steels(shaft, form, pull, asked, data)
    if what == SPLINES:
        return _splines(shaft, form, pull, asked, data)
    raise InputError(what, "compare", "not something that is compared", COMPARED, "use one of these")


def stronger(
    shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata, most: int
) -> list[Line]:
    """The ``most`` weakest steels of the table that carry the torque with room and nothing open, the least first.

    The factor on yield grows with the strength alone, so that no stronger steel is worked out than is shown.
    """
    asking = _Asking(shaft, form, pull, asked, data)
    strong = [(base(s.governing), steel, s) for steel, s in asking.strengths() if s.governing is not None]
    found: list[Line] = []
    least = last = 0.0
    for strength, steel, known in sorted(strong, key=lambda one: one[0]):
        if strength < least:
            continue
        if len(found) >= most and strength > last:
            break
        line = asking.line(steel, known)
        factor = line.sheet.decision.figures[0].typical
        least = strength * ROOM / factor * (1 - 1e-9)
        if line.sheet.decision.kind == USE and factor >= ROOM:
            found.append(line)
            last = strength
    return sorted(found, key=lambda n: (n.sheet.decision.figures[0].typical, tuple(n.key.values())))[:most]


def _torque(pull: Pull, data: Refdata) -> Figure:
    """The most that can reach the shaft."""
    standing = cases(pull, data)
    if not standing:
        why = "neither the way from the engine nor the way from the tyre is whole"
        raise InputError("torque", "compare", why, pull.lacks(), "give one of both")
    return standing[0].torque


class _Asking:
    """A shaft and what reaches it, to be asked of one steel after another."""

    def __init__(self, shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> None:
        self.torque = _torque(pull, data)
        self.body = body_of(shaft, form, data)
        if self.body.diameter is None:
            raise InputError("diameter", "compare", "no diameter and no spline is given", (), "give the diameter")
        thickest = max((d for d, _ in form.parts), key=lambda d: d.to("m"), default=shaft.diameter)
        self.size = None if thickest is None else thickest.to("m")
        self.is_whole = not pull.lacks()
        self.asked = asked
        self.data = data

    def strengths(self) -> list[tuple[Steel, Strength]]:
        """Every steel, treatment and temper with a yield strength."""
        steels = [Steel.of_rows(*of, self.size, self.data) for of in _treated(self.data)]
        return [(steel, strength_of(steel, self.data)) for steel in steels]

    def line(self, steel: Steel, strength: Strength) -> Line:
        """One steel; where it yields under the most that can reach it, and that is a bound alone, that is asked."""
        found = torsion(self.body.shaft, steel, strength, self.data, torque=self.torque, diameter=self.body.diameter)
        end = outcome(self.body.shaft, found, self.data)
        decision, checks = end.decision, found.checks
        if decision.kind == STOP and not self.is_whole:
            factor, when = decision.candidates[0], "all of the torque that can reach it does"
            decision = ask(VERB, [factor.replace(when=when)], decision.because, decision.do)
            checks = tuple(c.replace(bears=ASK) for c in checks)
        figures = dict.fromkeys(f for f in (*decision.figures, found.factor, strength.governing) if f is not None)
        title = f"{steel.grade}, {steel.treatment}"
        sheet = Sheet(
            title, self.asked, self.data, list(figures), list(checks), [], decision=decision, questions=end.questions
        )
        return Line(steel.key, sheet)


def _steels(shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> Table:
    asking = _Asking(shaft, form, pull, asked, data)
    lines = [asking.line(*of) for of in asking.strengths()]
    found = [line for line in lines if line.sheet.decision.figures]
    title = f"axle shaft under {_said(asking.torque)}, every steel with a yield strength"
    return Table(title, asked, data, ("steel", "treatment", "temper"), sorted(found, key=_order))


def _said(torque: Figure) -> str:
    return f"{torque.typical:.0f} {torque.unit}"


def _order(line: Line) -> tuple[int, float, tuple[str, ...]]:
    """What may be used first, then what is asked about; the strongest first."""
    decision = line.sheet.decision
    return _RANK.index(decision.kind), -decision.figures[0].typical, tuple(line.key.values())


def _treated(data: Refdata) -> list[tuple[str, str, str, list[Row]]]:
    """Steel, treatment, temper and its rows, for every one that has a yield strength; found once."""
    memo = ("steels by treatment",)
    if memo not in data._memo:
        by: dict[tuple[str, str], list[Row]] = {}
        for row in rows_of_quantities(data, TABLE, *_YIELDS):
            steel, treatment, *_ = row.key
            if treatment != "any" and not row.standing:
                by.setdefault((steel, treatment), []).append(row)
        out = []
        for (steel, treatment), rows in by.items():
            for temper in dict.fromkeys(r["temper"] for r in rows):
                own = [r for r in rows if r["temper"] in ("any", temper)]
                out.append((steel, treatment, temper, own))
        data._memo[memo] = out
    return data._memo[memo]  # type: ignore[return-value]


def _splines(shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> Table:
    if form.pitch is None or form.teeth is None:
        raise InputError("spline", "compare", "no spline is given", (), "give its pitch and its teeth")
    lines = []
    for more in range(_NEXT + 1):
        teeth = str(int(form.teeth) + more)
        own = form.replace(teeth=teeth)
        of = {**asked, "teeth": teeth}
        lines.append(Line({"pitch": form.pitch, "teeth": teeth}, judged(shaft, own, pull, of, data)))
    return Table("axle shaft with the next sizes of its spline", asked, data, ("pitch", "teeth"), lines)
