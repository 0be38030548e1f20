"""The same axle shaft of every steel in the table, ranked; and with the next sizes of its spline."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, NONE, STOP, USE, ask
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Line, Table
from gaugeblock.driveline.axles.form import body_of
from gaugeblock.driveline.axles.judging import judged
from gaugeblock.driveline.axles.ways import cases
from gaugeblock.driveline.carrying import VERB, outcome
from gaugeblock.driveline.steels import STRENGTHS, TABLE, Steel
from gaugeblock.driveline.strength import strength_of
from gaugeblock.driveline.torsion import torsion
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.driveline.axles.form import Body, Form
    from gaugeblock.driveline.axles.pull import Pull
    from gaugeblock.driveline.keys import Shaft
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata, Row

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


def stronger(shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> list[Line]:
    """The steels of the table that carry the torque with room and nothing open, the least of them first."""
    lines = _steels(shaft, form, pull, asked, data).lines
    firm = [n for n in lines if n.sheet.decision.kind == USE and n.sheet.decision.figures[0].typical >= ROOM]
    return sorted(firm, key=lambda n: (n.sheet.decision.figures[0].typical, tuple(n.key.values())))


def _torque(pull: Pull, data: Refdata) -> Figure:
    """The most that can reach the shaft."""
    standing = cases(pull, data)
    if not standing:
        why = "neither the way from the engine nor the way from the tyre is whole"
        raise InputError("torque", "compare", why, pull.lacks(), "give one of both")
    return standing[0].torque


def _steels(shaft: Shaft, form: Form, pull: Pull, asked: dict[str, str | None], data: Refdata) -> Table:
    torque = _torque(pull, data)
    body = body_of(shaft, form, data)
    if body.diameter is None:
        raise InputError("diameter", "compare", "no diameter and no spline is given", (), "give the shaft's diameter")
    thickest = max((d for d, _ in form.parts), key=lambda d: d.to("m"), default=shaft.diameter)
    size = None if thickest is None else thickest.to("m")
    whole = not pull.lacks()
    lines = [_line(Steel.of_rows(*of, size, data), body, torque, asked, data, whole) for of in _treated(data)]
    found = [line for line in lines if line.sheet.decision.figures]
    title = f"axle shaft under {_said(torque)}, every steel with a yield strength"
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
    if memo not in data.memo:
        by: dict[tuple[str, str], list[Row]] = {}
        for row in data.table(TABLE).rows:
            if row["treatment"] != "any" and not row["standing"]:
                by.setdefault((row["steel"], row["treatment"]), []).append(row)
        out = []
        for (steel, treatment), rows in by.items():
            strong = [r for r in rows if r["quantity"] in STRENGTHS and r["quantity"].startswith("yield")]
            for temper in dict.fromkeys(r["temper"] for r in strong):
                own = [r for r in strong if r["temper"] in ("any", temper)]
                out.append((steel, treatment, temper, own))
        data.memo[memo] = out
    return data.memo[memo]  # type: ignore[return-value]


def _line(
    steel: Steel, body: Body, torque: Figure, asked: dict[str, str | None], data: Refdata, is_whole: bool
) -> Line:
    """One steel; where it yields under the most that can reach it, and that is a bound alone, that is asked about."""
    strength = strength_of(steel, data)
    found = torsion(body.shaft, steel, strength, data, torque=torque, diameter=body.diameter)
    end = outcome(body.shaft, found, data)
    decision, checks = end.decision, found.checks
    if decision.kind == STOP and not is_whole:
        factor, when = decision.candidates[0], "all of the torque that can reach it does"
        decision = ask(VERB, [factor.replace(when=when)], decision.because, decision.do)
        checks = tuple(c.replace(bears=ASK) for c in checks)
    figures = [f for f in (*decision.figures, found.factor, strength.governing) if f is not None]
    title = f"{steel.grade}, {steel.treatment}"
    shown = list(dict.fromkeys(figures))
    sheet = Sheet(title, asked, data, shown, list(checks), [], decision=decision, questions=end.questions)
    return Line(steel.key, sheet)


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
