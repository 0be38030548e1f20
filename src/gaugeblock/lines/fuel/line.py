"""The answer ``fuel_line``: the bores that shops feed an engine by, each with the speed and the loss in it."""

from __future__ import annotations

from fractions import Fraction

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, Bound, Check, at_most
from gaugeblock.answer.decision import Candidate, ask, none
from gaugeblock.answer.needs import known
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines.fuel import supply
from gaugeblock.lines.fuel.checks import WHICH
from gaugeblock.lines.fuel.demand import SUPPLY, demands
from gaugeblock.lines.fuel.keys import ALL, Supply
from gaugeblock.lines.fuel.pipe import pipe_with
from gaugeblock.lines.given import doubtful, lacking
from gaugeblock.lookup import look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import in_unit, significant

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import TypedDict, Unpack

    from gaugeblock.figure import Figure
    from gaugeblock.lines.fuel.pipe import Pipe

    class Typed(TypedDict, total=False):
        """Every option of ``fuel`` but the power, as text."""

        fuel: str | None
        boost: str | None
        consumption: str | None
        system: str | None
        density: str | None
        viscosity: str | None
        reserve: str | None
        pump: str | None
        length: str | None
        bore: str | None
        loss: str | None
        return_length: str | None
        return_bore: str | None
        return_loss: str | None
        pressure: str | None
        filter: str | None
        filter_flow: str | None
        rated: str | None
        injector: str | None
        duty: str | None
        injectors: str | None
        line: str | None


VERB = "FEED LINE"
CASES = ("high output, or alcohol", "street and mild competition", "stock engine")
_NAME = "bore of the feed"
_ALCOHOLS = ("E85", "methanol", "ethanol")


def fuel_line(power: str | None = None, *, data: Refdata | None = None, **more: Unpack[Typed]) -> Sheet:
    """The bores that shops feed an engine by, each with the speed of the fuel in it and the pressure that it loses.

    ``power`` and the other parameters are those of ``fuel``; with ``length`` the loss is told, with ``loss`` too what
    loses more is left out.

    Returns a Sheet: up to three candidates, the largest first; the pump's maker is asked.

    Raises InputError, UnitError or LookupMiss for what cannot be read or is not in the tables.

    >>> fuel_line("400 hp", boost="no boost").decision.kind
    'ask'
    """
    known(more, ALL, "fuel_line")
    asked: dict[str, str | None] = {**dict.fromkeys(ALL), "power": power, **more}  # type: ignore[dict-item]
    return judged(Supply(asked), asked, data or refdata())


def judged(of: Supply, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``fuel_line``, of what was read."""
    got = of.given.measures
    title = ", ".join(["fuel line", of.fuel, *([got["power"].text] if "power" in got else [])])
    given, doubts = of.given.figures(data), of.given.doubts(data)
    if doubts:
        return doubtful(title, VERB, doubts, asked, given, data)
    if not of.given.has("power") and (of.injectors is None or not of.given.has("injector")):
        return lacking(title, VERB, supply.NEEDS, asked, given, data)
    way = demands(of, data)[0]
    flow = of.given.figure("pump", data) or way.needed
    length = of.given.figure("length", data)
    rows = [_row(case, data) for case in CASES]
    pipes = [pipe_with(of, "feed", flow, way.density, row, length, data) for row in rows]
    checks = [c for row, pipe in zip(rows, pipes, strict=True) if (c := _check(of, row, pipe, data)) is not None]
    failed = {c.subject for c in checks if c.result == NOT_OK}
    kept = [(row, pipe) for row, pipe in zip(rows, pipes, strict=True) if row.key["case"] not in failed]
    said = "habit, and no publication of feed line sizes was found"
    checks.append(Check(_NAME, CANNOT_TELL, said, subject="bore", bears=ASK))
    candidates = [
        Candidate(row, f"{_inch(row)} inside, {row.key['case']}", _then(flow, pipe, data)) for row, pipe in kept
    ]
    do = "Ask the pump's maker for the bore at inlet and outlet: no line to the pump is smaller than its inlet."
    if of.given.figure("pump", data) is None and of.boost is None and "boost" in way.said:
        do += f" The flow is reckoned {way.said}: say whether it has boost."
    decision = ask(VERB, candidates, (_NAME,), do)
    if not kept:
        decision = none(VERB, f"None of the usual bores loses so little in {length.text if length else ''}.")
    figures = list(
        {f.id: f for f in (*rows, flow, *(x for p in pipes for x in p.figures), *way.figures, *given)}.values()
    )
    cautions = [Caution(supply.FIRE, "injury"), Caution(supply.HOT, "damage")]
    return Sheet(title, asked, data, figures, checks, cautions, decision=decision, questions=_questions(of))


def _row(case: str, data: Refdata) -> Figure:
    return look_up(SUPPLY, "bore_typical", data=data, subject="feed line", case=case, service="vehicle")


def _inch(row: Figure) -> str:
    """A bore as shops say it: ``5/16 in``."""
    return f"{Fraction(row.text).limit_denominator(32)} in"


def _check(of: Supply, row: Figure, pipe: Pipe, data: Refdata) -> Check | None:
    """Whether this bore loses no more than it may; a bore of stock engines is none for alcohol."""
    case = row.key["case"]
    if of.fuel in _ALCOHOLS and case != CASES[0]:
        said = f"{number_only(row, data)} is printed for gasoline; {of.fuel} needs more fuel"
        return Check(f"{number_only(row, data)} feed", NOT_OK, said, subject=case, bears=INFORM)
    most = of.given.figure("loss", data)
    if most is None or pipe.loss is None:
        return None
    lost = Bound(in_unit(pipe.loss.typical, pipe.loss.unit, most.unit), most.unit, "", pipe.loss)
    said = f"{number_only(pipe.loss, data)} of {number_only(most, data)} lost"
    limit = Bound(most.typical, most.unit, "max", most)
    return at_most(f"{number_only(row, data)} feed", lost, limit, said, subject=case, bears=INFORM)


def _then(flow: Figure, pipe: Pipe, data: Refdata) -> str:
    loss = "" if pipe.loss is None else f", loses {number_only(pipe.loss, data)}"
    speed, needed = (f"{significant(f.typical, 2)} {f.unit}" for f in (pipe.speed, flow))
    return f"{speed} at {needed}{loss}"


def _questions(of: Supply) -> list[Question]:
    asked = [Question(ASK_MAKER, "Which bores do inlet and outlet of the pump have, by its maker?", "bore", (_NAME,))]
    if of.is_assumed:
        asked.append(Question(FILL_IN, WHICH, "fuel", (_NAME,)))
    if not of.given.has("length"):
        text = "How long is the feed from tank to engine, bends and fittings counted as length?"
        asked.append(Question(MEASURE, text, "length", (_NAME,)))
    return asked
