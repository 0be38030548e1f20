"""The answer ``fuel``: what the pump must deliver for an engine's power, and what feed and return lose."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import ASK, MOST_CANDIDATES, Candidate, Decision, ask, decided
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines.fuel.checks import checks_of
from gaugeblock.lines.fuel.demand import Demand, demands
from gaugeblock.lines.fuel.keys import ALL, Supply
from gaugeblock.lines.fuel.pipe import Pipe, pipe_of
from gaugeblock.lines.given import doubtful, lacking, stopped
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check

VERB = "PUMP AT LEAST"
NEEDS = {"power": "What is the engine's greatest power?"}
_INJECTOR = {"injector": "What does one injector pass held open, at its pressure?"}
FIRE = (
    "Fuel under pressure: relieve it, no flame, no spark. With the pump running look at every joint before the engine"
    " runs."
)
VOLTS = (
    "A pump delivers what its sheet says at the sheet's voltage: measure it at the plug, under load. Its wire is a"
    " question for circuit."
)
HOT = "Hot fuel boils ahead of the pump: keep the pump low and near the tank, and the feed away from heat."


def fuel(
    power: str | None = None,
    *,
    fuel: str | None = None,
    boost: str | None = None,
    consumption: str | None = None,
    system: str | None = None,
    density: str | None = None,
    viscosity: str | None = None,
    reserve: str | None = None,
    pump: str | None = None,
    length: str | None = None,
    bore: str | None = None,
    loss: str | None = None,
    return_length: str | None = None,
    return_bore: str | None = None,
    return_loss: str | None = None,
    pressure: str | None = None,
    filter: str | None = None,
    filter_flow: str | None = None,
    rated: str | None = None,
    injector: str | None = None,
    duty: str | None = None,
    injectors: str | None = None,
    line: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What the pump must deliver for an engine's power, and what the feed and the return line lose.

    Parameters are text as people write them: ``power`` of the engine (``350 hp``); ``fuel`` ``gasoline`` (when left
    out), ``diesel``, ``E85``, ``methanol``, ``ethanol``; ``boost`` or ``no boost``; the engine's own ``consumption``
    (``0.5 lb/(hp*h)``); ``system`` ``carburettor`` or ``injection``; own ``density`` and ``viscosity`` of the fuel; a
    ``reserve`` on top (``20 %``); what the ``pump`` delivers at its pressure; ``length`` (fittings counted as length)
    and ``bore`` of the feed and the ``loss`` that it may have, the same of the return as ``return_length``,
    ``return_bore`` and ``return_loss``; ``pressure`` at the engine;
    ``filter`` in microns and ``filter_flow`` that it is made for; ``rated`` the pressure that the weakest hose stands;
    how many ``injectors``, what one ``injector`` passes held open (``42 lb/h``, ``440 cc/min``) and its ``duty``
    (``80 %``), in place of the power; ``line`` ``drawn tube`` or ``rubber hose``.

    Returns a Sheet: the flow needed. What the engine burns is habit until it is given, and asked.

    Raises InputError, UnitError or LookupMiss for what cannot be read or is not in the tables.

    >>> sheet = fuel("350 hp", consumption="0.5 lb/(hp*h)", density="6 lb/gal")
    >>> round(sheet.decision.figures[0].typical, 1)
    29.2
    """
    data = data or refdata()
    given = (
        power,
        fuel,
        boost,
        consumption,
        system,
        density,
        viscosity,
        reserve,
        pump,
        length,
        bore,
        loss,
        return_length,
        return_bore,
        return_loss,
        pressure,
        filter,
        filter_flow,
        rated,
        injector,
        duty,
        injectors,
        line,
    )
    asked = dict(zip(ALL, given, strict=True))
    return judged(Supply(asked), asked, data)


def judged(of: Supply, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``fuel``, of what was read."""
    got = of.given.measures
    parts = [got["power"].text] if "power" in got else []
    title = ", ".join([f"fuel supply, {of.fuel}", *parts, *([of.boost] if of.boost else [])])
    given, doubts = of.given.figures(data), of.given.doubts(data)
    if doubts:
        return doubtful(title, VERB, doubts, asked, given, data)
    by_injectors = of.injectors is not None and of.given.has("injector")
    if not of.given.has("power") and not by_injectors:
        return lacking(title, VERB, NEEDS if of.injectors is None else _INJECTOR, asked, given, data)
    ways = demands(of, data)
    pipes = _pipes(of, ways[0], data)
    checks, questions = checks_of(of, ways, pipes, data)
    limits = [b.figure for c in checks for b in (c.required, c.actual) if b is not None and b.figure is not None]
    every = [f.needed for f in ways]
    for pipe in pipes:
        every += pipe.figures
    for way in ways:
        every += way.figures
    figures = list({f.id: f for f in (*every, *given, *limits)}.values())
    cautions = [Caution(FIRE, "injury"), Caution(VOLTS, "damage"), Caution(HOT, "damage")]
    decision = _decision(ways, pipes, checks, data)
    return Sheet(title, asked, data, figures, checks, cautions, decision=decision, questions=questions)


def _pipes(of: Supply, way: Demand, data: Refdata) -> list[Pipe]:
    """Feed and return with all that the pump delivers: what the engine does not burn goes back."""
    flow = of.given.figure("pump", data) or way.needed
    made = [pipe_of(of, name, flow, way.density, data) for name in ("feed", "return")]
    return [p for p in made if p is not None]


def _decision(ways: Sequence[Demand], pipes: Sequence[Pipe], checks: list[Check], data: Refdata) -> Decision:
    stops = [c for c in checks if c.stops]
    first = ways[0]
    said = [f"The engine {first.then} at full load." if first.then else f"It is for {first.said}."]
    lost = [p for p in pipes if p.loss is not None]
    said += [f"The {p.name} loses {number_only(p.loss, data)}." for p in lost if p.loss is not None]
    if stops:
        return stopped(VERB, stops)
    decision = decided(VERB, first.needed, checks, " ".join(said))
    if decision.kind != ASK:
        return decision
    candidates = [Candidate(w.needed, w.said, w.then) for w in ways[:MOST_CANDIDATES]]
    reasons = [c for c in checks if c.asks]
    own = [c for c in reasons if c.subject not in ("consumption", "fuel")]
    do = f"{capital(own[0].reason)}." if own else "Settle what the engine burns: the flow hangs on it."
    unlost = [p for p in pipes if p.loss is None]  # its length was not given
    do = " ".join([do, *(f"In a {p.name} of this bore it runs at {number_only(p.speed, data)}." for p in unlost)])
    return ask(VERB, candidates, decision.because, do)
