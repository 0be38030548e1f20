"""The answer ``brake``: pressure, force, fluid, stroke and pedal travel of one hydraulic circuit."""

from __future__ import annotations

from gaugeblock.answer.decision import ASK, Candidate, Decision, ask, decided
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines.brakes import moved, words
from gaugeblock.lines.brakes.checks import checks_of
from gaugeblock.lines.brakes.keys import Circuit
from gaugeblock.lines.brakes.working import Worked
from gaugeblock.lines.given import doubtful, lacking, stopped
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.check import Check

VERB = "LINE SEES"
_NEEDS = {
    "master": "Which bore has the master cylinder? It is cast or stamped on it, or measure the piston.",
    "ratio": "What is the pedal ratio? Measure pivot to pad, and pivot to push rod.",
    "force": "With what force is the pedal pushed?",
}


def brake(
    master: str | None = None,
    *,
    force: str | None = None,
    ratio: str | None = None,
    assist: str | None = None,
    stroke: str | None = None,
    kind: str | None = None,
    bore: str | None = None,
    pistons: str | None = None,
    wheels: str | None = None,
    travel: str | None = None,
    play: str | None = None,
    pedal: str | None = None,
    was: str | None = None,
    rated: str | None = None,
    tube: str | None = None,
    time: str | None = None,
    hose: str | None = None,
    droop: str | None = None,
    lock: str | None = None,
    balance: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Pressure, force, fluid, stroke and pedal travel of one hydraulic brake (or clutch) circuit.

    Parameters are text as people write them: ``master`` the bore of the master cylinder (``1 in``); ``force`` on the
    pedal (``100 lbf``) and its ``ratio`` (``6``); ``assist`` force out of a booster over force in; ``stroke`` that the
    master cylinder has for this circuit; ``kind`` ``drum``, ``floating caliper``, ``fixed caliper`` or ``slave
    cylinder``; ``bore`` of its pistons, how many ``pistons`` one wheel has, how many ``wheels`` the circuit works, the
    ``travel`` of each piston, free ``play`` at the push rod, the whole way of the ``pedal``; ``was`` the bore before a
    swap; ``rated`` the pressure that the weakest hose, tube or valve of it stands, by its maker; ``tube`` the
    inside diameter of its tube and ``time`` from the first touch of the pedal until the brake is hard on, for the
    speed of the fluid; ``hose`` the free length of its flexible hose, ``droop`` and ``lock`` the way from fitting to
    fitting at each; ``balance`` who tried the balance and when.

    Returns a Sheet: the line pressure first. Losses, and hoses and calipers that give way, are left out.

    Raises InputError or UnitError for what cannot be read.

    >>> round(brake("1 in", force="100 lbf", ratio="6").decision.figures[0].typical)
    764
    """
    data = data or refdata()
    given = (force, ratio, assist, master, stroke, bore, travel, play, pedal, was, rated, tube, time, hose, droop, lock)
    asked: dict[str, str | None] = dict(zip(words.MEASURED, given, strict=True))
    asked |= {"kind": kind, "pistons": pistons, "wheels": wheels, "balance": balance}
    return judged(Circuit(asked), asked, data)


def judged(of: Circuit, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``brake``, of what was read."""
    title = words.title(of)
    given = of.given.figures(data)
    doubts = of.given.doubts(data)
    if doubts:
        return doubtful(title, VERB, doubts, asked, given, data)
    if moved.is_asked(of):
        unsaid = moved.lacks(of)
        verb = "MASTER MOVES"
        return lacking(title, verb, unsaid, asked, given, data) if unsaid else moved.moved(of, asked, data)
    needs = {k: said for k, said in _NEEDS.items() if not of.given.has(k)}
    if needs:
        return lacking(title, VERB, needs, asked, given, data)
    worked = Worked(of, data)
    checks, questions = checks_of(of, worked, data)
    limits = [b.figure for c in checks for b in (c.required, c.actual) if b is not None and b.figure is not None]
    figures = list({f.id: f for f in (*worked.figures, *given, *limits)}.values())
    decision = _decision(of, worked, checks, data)
    return Sheet(title, asked, data, figures, checks, words.cautions(of), decision=decision, questions=questions)


def _decision(of: Circuit, worked: Worked, checks: list[Check], data: Refdata) -> Decision:
    said = words.do(of, worked, data)
    stops = [c for c in checks if c.stops]
    if stops:
        return stopped(VERB, stops)
    decision = decided(VERB, worked.pressure, checks, said)
    if decision.kind != ASK:
        return decision
    first = next(c for c in checks if c.asks)
    pressed = f"{number_only(worked.push, data)} on each {of.noun}" if worked.push is not None else "as worked out"
    candidate = Candidate(worked.pressure, words.when(of), pressed)
    return ask(VERB, [candidate], decision.because, f"{capital(first.reason)}.")
