"""The answer ``exhaust_pipe``: the usual pipe for an engine, by a guide and by flow; what a given pipe makes of it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, Decision, ask, none, use
from gaugeblock.answer.making import base
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.exhaust import flow
from gaugeblock.exhaust.keys import Pipe, doubts, pipe_of
from gaugeblock.lookup import look_up_or_none
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "USE PIPE"
SIZE = "pipe size"
_NEAR = 0.1
_LAYOUTS = {1: "single pipe", 2: "two pipes"}
_OPEN = "No standard for the size of an exhaust pipe was found. Ask the engine or silencer maker which he allows."


def exhaust_pipe(
    power: str,
    *,
    displacement: str | None = None,
    speed: str | None = None,
    pipes: str | None = None,
    od: str | None = None,
    wall: str | None = None,
    gas: str | None = None,
    length: str | None = None,
    back_pressure: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The usual size of an exhaust pipe, each with where it comes from.

    Parameters are text as people write them: ``power`` of the engine (``260 hp``); ``displacement`` (``3.8 L``);
    ``speed`` at that power (``5500 rpm``); ``pipes`` side by side (``1``, ``2``); ``od`` and ``wall`` of a pipe that
    is there or chosen; ``gas`` temperature in the pipe (``1200 degF``); ``length`` of the run as straight pipe, its
    bends counted as such; ``back_pressure`` that the engine maker allows.

    Returns a Sheet: one size where guide and flow agree, else the sizes to choose from. All rest on habit.

    Raises InputError or UnitError for what cannot be read.

    >>> exhaust_pipe("260 hp", displacement="290 in**3").decision.kind
    'ask'
    """
    data = data or refdata()
    asked = {
        "power": power,
        "displacement": displacement,
        "speed": speed,
        "pipes": pipes,
        "od": od,
        "wall": wall,
        "gas": gas,
        "length": length,
        "back_pressure": back_pressure,
    }
    return judged(pipe_of(asked), asked, data)


def judged(of: Pipe, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``exhaust_pipe``, of what was read."""
    title = f"exhaust pipe of {of.power.text}" + (f", {of.displacement.text}" if of.displacement else "")
    title += f", {of.pipes} pipes" if of.pipes > 1 else ""
    read = flow.given(of, data)
    odd = doubts(of, data)
    if odd:
        checks = [Check(f"{k} as typed", CANNOT_TELL, said, subject=k, bears=ASK) for k, said in odd.items()]
        questions = [Question(FILL_IN, said, k, (f"{k} as typed",)) for k, said in odd.items()]
        decision = none(VERB, next(iter(odd.values())))
        return Sheet(title, asked, data, list(read.values()), checks, [], decision=decision, questions=questions)
    sizes = _sizes(of, read, data)
    chosen = read.get("od")
    checks = flow.checks(of, read, data)
    decision, more, questions = _decided(sizes, chosen, checks)
    checks += more
    figures = [*([chosen] if chosen is not None else []), *(c.figure for c in sizes), *flow.listed(of, data)]
    figures += [*flow.made(of, read, data), *read.values()]
    return Sheet(title, asked, data, list({f.id: f for f in figures}.values()), checks, [], None, decision, questions)


def _sizes(of: Pipe, read: dict[str, Figure], data: Refdata) -> list[Candidate]:
    """The usual sizes: by a guide for displacement and power, and by the flow through the bore; the larger first."""
    out = []
    if of.displacement is not None and of.pipes in _LAYOUTS:
        guide = look_up_or_none(
            "exhaust/pipes",
            "exhaust_pipe_od",
            data=data,
            displacement=f"{units.decimal_text(of.displacement.value)} {of.displacement.unit}",
            power=f"{units.decimal_text(of.power.value)} {of.power.unit}",
            layout=_LAYOUTS[of.pipes],
        )
        if guide is not None:
            out.append(Candidate(guide, "by displacement and power", "the guide of a silencer maker, as quoted"))
    by_flow = flow.od_by_flow(of, read, data)
    out.append(Candidate(by_flow, "by power and flow", "a calculation with two habits"))
    return sorted(out, key=lambda c: -base(c.figure))


def _decided(
    sizes: list[Candidate], chosen: Figure | None, checks: list[Check]
) -> tuple[Decision, list[Check], list[Question]]:
    """One size where the ways agree within a tenth; else which there are. A pipe that is there is judged by them."""
    largest, least = base(sizes[0].figure), base(sizes[-1].figure)
    more = []
    if chosen is not None:
        is_less = base(chosen) < least * (1 - _NEAR)
        if not is_less and not any(c.asks for c in checks):
            said = "It lies among the sizes that such engines usually have."
            if base(chosen) > largest * (1 + 2 * _NEAR):
                said = "It is larger than such engines usually have: heavier, and in the way."
            return use(VERB, chosen, said), [], []
        if is_less:
            text = f"{chosen.text} {chosen.unit} is smaller than such engines usually have"
            more.append(Check(SIZE, CANNOT_TELL, text, subject=SIZE, bears=ASK))
        first = next(c for c in (*checks, *more) if c.asks)
        held = Candidate(chosen, "what was given", first.reason)
        question = Question(ASK_MAKER, _OPEN, "back_pressure", tuple(c.name for c in (*checks, *more) if c.asks))
        return ask(VERB, [sizes[0], held], question.checks, f"{first.reason}. {_OPEN}"), more, [question]
    if largest <= least * (1 + _NEAR) and len(sizes) > 1:
        return use(VERB, sizes[0].figure, "Habit: guide and flow agree within a tenth."), [], []
    text = "the ways that there are give different sizes" if len(sizes) > 1 else "only one habit speaks"
    more.append(Check(SIZE, CANNOT_TELL, text, subject=SIZE, bears=ASK))
    question = Question(ASK_MAKER, _OPEN, "od", (SIZE,))
    return ask(VERB, sizes, (SIZE,), _OPEN), more, [question]
