"""The answer ``pedal``: the one of bore, pedal ratio and foot that gives a wanted line pressure, by the other two."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import plausible_range, unusual
from gaugeblock.answer.printing import number_only, significant_by_side
from gaugeblock.answer.question import MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import hydraulics as calc
from gaugeblock.errors import Ambiguous, InputError
from gaugeblock.lines.brakes.habits import BRAKES
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

PRESSURE = "pressure"
# What is typed -> dimension and quantity.
_READ = {
    PRESSURE: ("stress", "line_pressure"),
    "master": ("length", "master_bore"),
    "force": ("force", "pedal_force"),
    "ratio": ("ratio", "pedal_ratio"),
    "assist": ("ratio", "assist_ratio"),
}
_OF_THREE = ("master", "force", "ratio")
_VERBS = {"master": "MASTER CYLINDER", "force": "PUSH", "ratio": "PEDAL RATIO"}
_RULES = {
    "master": "master_bore_of_pressure",
    "force": "pedal_force_of_pressure",
    "ratio": "pedal_ratio_of_pressure",
}
_ODD = "usual"
# Whose rule says what a foot may be asked to push: of a parking brake, none of a service brake is on record.
_RULE, _FOOT = "US federal", "parking brake control, foot, to 10,000 lb"
_ALONE = "Losses are left out, and hoses and calipers that give way."


def pedal(
    pressure: str,
    *,
    master: str | None = None,
    force: str | None = None,
    ratio: str | None = None,
    assist: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What gives a wanted line pressure: the pedal ratio, the foot or the bore, whichever of the three was left out.

    ``pressure`` is wanted in the line (``900 psi``); ``master`` the bore of the master cylinder (``7/8 in``),
    ``force`` of the foot on the pedal (``80 lbf``) and ``ratio`` of the pedal (``6``), of which two are given;
    ``assist`` force out of a booster over force in.

    Returns a Sheet whose decision is the third. Of a bore the largest that is made and gives the pressure. One that no
    car has is asked about. Raises Ambiguous where not two of the three are given; InputError or UnitError for what
    cannot be read. Source: force over area, as ``brake``.

    >>> round(pedal("900 psi", master="7/8 in", force="80 lbf").decision.figures[0].typical, 1)
    6.8
    """
    data = data or refdata()
    asked: dict[str, str | None] = dict(zip(_READ, (pressure, master, force, ratio, assist), strict=True))
    wanted = _third(asked)
    read = {k: read_positive(text, _READ[k][0], k) for k, text in asked.items() if text}
    doubts = unusual({key: (measure, _READ[key][1]) for key, measure in read.items()}, data)
    title = f"brake pedal for {read[PRESSURE].text}"
    if doubts:
        return questioned(title, asked, doubts, _VERBS[wanted], data)
    given = {key: stated(measure, _READ[key][1], key, data) for key, measure in read.items()}
    third = _worked(wanted, given, data)
    made = _made(third, data) if wanted == "master" else None
    figures = [*([made] if made else []), third, *given.values()]
    cautions = [Caution("Brake work is pressure-tested and checked by another person before the car moves.", "injury")]
    odd = _odd(wanted, third, made, data)
    if not odd:
        decision = use(_VERBS[wanted], made or third, _said(wanted, third, made, data))
        return Sheet(title, asked, data, figures, [], cautions, decision=decision)
    check = Check(f"{_ODD} {_READ[wanted][1].replace('_', ' ')}", CANNOT_TELL, odd, subject=wanted, bears=ASK)
    question = Question(MEASURE, odd, wanted, (check.name,))
    candidate = Candidate(third, "the rest stays as it is")
    decision = ask(_VERBS[wanted], [candidate], (check.name,), odd)
    return Sheet(title, asked, data, figures, [check], cautions, decision=decision, questions=[question])


def _third(asked: dict[str, str | None]) -> str:
    """The one of the three that was left out."""
    left = [key for key in _OF_THREE if not asked[key]]
    if not asked[PRESSURE]:
        raise Ambiguous("pedal", PRESSURE, "no pressure was given", (PRESSURE,), "say what the line must see: 900 psi")
    if not left:
        why = "bore, foot and pedal ratio are all given, and say the pressure themselves"
        raise InputError(str(asked["ratio"]), "ratio", why, ("brake",), "leave one out, or ask brake for the pressure")
    if len(left) > 1:
        names = {"master": "the bore of the master cylinder", "force": "the force on the pedal", "ratio": "its ratio"}
        do = f"say {' or '.join(names[key] for key in left)}"
        raise Ambiguous(str(asked[PRESSURE]), left[0], "two of bore, foot and pedal ratio are needed", tuple(left), do)
    return left[0]


def _worked(wanted: str, given: dict[str, Figure], data: Refdata) -> Figure:
    """The third, in the reader's units."""
    assist = base(given["assist"]) if "assist" in given else 1.0
    known = {key: base(figure) for key, figure in given.items()}
    metric = given[PRESSURE].unit not in ("psi", "ksi")
    rule, key = _RULES[wanted], {k: f.text or f"{f.typical:g} {f.unit}" for k, f in given.items()}
    order = [given[k] for k in (PRESSURE, "force", "ratio", "assist", "master") if k in given]
    quantity = _READ[wanted][1]
    side = "max" if wanted == "master" else "min"  # a larger bore, less foot or less pedal gives less
    if wanted == "ratio":
        unit = "1"
        number = calc.ratio_of_pressure(known[PRESSURE], known["force"], known["master"], assist)
    elif wanted == "force":
        unit = "N" if metric else "lbf"
        number = calc.force_of_pressure(known[PRESSURE], known["ratio"], known["master"], assist)
    else:
        unit = "mm" if metric else "in"
        number = calc.bore_of_pressure(known[PRESSURE], known["force"], known["ratio"], assist)
    number = units.from_base(number, unit)
    text = significant_by_side(number, side, 3)
    return derived(rule, quantity, number, unit, order, data, key=key, text=text)


def _made(most: Figure, data: Refdata) -> Figure | None:
    """The largest master cylinder of the tables that gives the pressure; None where all are larger."""
    fits = [
        look_up(BRAKES, "master_bore", data=data, **{k: row.cells[k] for k in ("subject", "case", "service")})
        for row in data.table(BRAKES).of("master_bore")
    ]
    return max((f for f in fits if base(f) <= base(most) * (1 + 1e-9)), key=base, default=None)


def _odd(wanted: str, third: Figure, made: Figure | None, data: Refdata) -> str:
    """Why the third is none that a car has; blank where it is."""
    number = number_only(third, data)
    if wanted == "master":
        if made is None:
            return f"A bore of {number} would do, and none of the tables is so small: more pedal ratio, or a booster."
        return ""
    if wanted == "ratio":
        usual = look_up(BRAKES, "pedal_ratio_typical", data=data, subject="pedal", case="no assist", service="vehicle")
        shortest = plausible_range("pedal_ratio_typical", data)
        if usual.high is not None and third.typical > usual.high * (1 + 1e-9):
            return f"Shops make no pedal of over {usual.high:g} to 1, for its way: a smaller bore, or a booster."
        if shortest is not None and third.typical < shortest[0]:
            return "So short a lever is no pedal: a larger bore gives the pressure too, and a shorter way."
        return ""
    most = look_up(
        "lines/limits", "control_force_maximum", data=data, jurisdiction=_RULE, subject=_FOOT, service="vehicle"
    )
    if base(third) > base(most):
        says = number_only(most, data)
        return f"That is much for a foot: the rule of a parking brake stops at {says}. More ratio, or a booster."
    return ""


def _said(wanted: str, third: Figure, made: Figure | None, data: Refdata) -> str:
    if wanted == "master" and made is not None:
        return f"The largest that is made and gives it: {number_only(third, data)} would just do. {_ALONE}"
    return {"ratio": f"Pad over push rod, from the pivot. {_ALONE}", "force": f"On the pedal's pad. {_ALONE}"}[wanted]
