"""A line past a hot part: what was measured on the car, then the plain rule, then the estimate; its rules and its
parts.
"""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, OK, Check
from gaugeblock.answer.needs import together
from gaugeblock.answer.sheet import Sheet
from gaugeblock.lines import cases as line_cases
from gaugeblock.lines import fit as line_fit
from gaugeblock.lines import parts as line_parts
from gaugeblock.lines import rules as line_rules
from gaugeblock.lines.cautions import boils, vapour
from gaugeblock.lines.decide import MEASURED_CHECK, decide
from gaugeblock.lines.doubts import doubts
from gaugeblock.lines.found import Found
from gaugeblock.lines.inputs import inputs_of
from gaugeblock.lines.judged import Judged, judged_by, untested
from gaugeblock.lines.keys import Line, line_of_text
from gaugeblock.lines.wall import pressure
from gaugeblock.lines.words import Words
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import TypedDict, Unpack

    from gaugeblock.answer.decision import Decision
    from gaugeblock.answer.drawing import Drawing
    from gaugeblock.figure import Figure
    from gaugeblock.lines.cases import Estimates

    class Typed(TypedDict, total=False):
        """Every key of a line but its service, as text."""

        material: str | None
        klass: str | None
        state: str | None
        od: str | None
        wall: str | None
        length: str | None
        pressure: str | None
        factor: str | None
        factor_on_burst: str | None
        factor_on_yield: str | None
        yield_strength: str | None
        tensile_strength: str | None
        line_limit: str | None
        line_limit_from: str | None
        fluid: str | None
        fluid_state: str | None
        fluid_limit: str | None
        fluid_limit_from: str | None
        marked_for: str | None
        beside: str | None
        gap: str | None
        temperature: str | None
        temperature_by: str | None
        side: str | None
        shield: str | None
        shield_finish: str | None
        hot_od: str | None
        hot_temperature: str | None
        hot_finish: str | None
        finish: str | None
        air: str | None
        soak_air: str | None
        speed: str | None
        sleeve: str | None
        sleeve_finish: str | None
        sleeve_conductivity: str | None
        flow_temperature: str | None
        flow_conductivity: str | None
        film: str | None
        margin: str | None
        jurisdiction: str | None
        flare: str | None
        seat: str | None
        nut: str | None
        port: str | None
        anchors: str | None
        exhaust_material: str | None
        expansion: str | None
        cold_end: str | None
        clip_spacing: str | None
        hose_length: str | None
        droop: str | None
        lock: str | None


def route(
    service: str | None = None, *, draw: bool = False, data: Refdata | None = None, **given: Unpack[Typed]
) -> Sheet:
    """Whether a line past a hot part is cool enough, far enough, allowed, held and joined.

    All parameters are text as people write them, and all may be missing: what needs one that is answers ``cannot tell``
    and names it. They are the keys of ``[[lines]]`` of a job (``klass`` is its ``class``):

    - the line: its ``service``, ``material``, ``klass``, ``state``, ``od``, ``wall``, ``length``, ``pressure``,
      ``factor``, ``factor_on_burst`` and ``factor_on_yield`` to keep, the tube's own ``tensile_strength`` and
      ``yield_strength``, ``fluid``, ``fluid_state``; what the makers state: ``line_limit``, ``fluid_limit``
      (``line_limit_from`` and ``fluid_limit_from`` the sheet and its page), ``marked_for`` the fluid that a hose is
      marked for; ``temperature`` its own as measured and ``temperature_by`` what read it;
    - what is hot: ``beside`` (``exhaust header``), ``gap``, ``hot_od``, ``hot_temperature``, ``hot_finish``, and the
      line's ``finish``; ``air``, ``soak_air`` after shut-down, ``speed`` of the air; ``side`` of the rail ``same side``
      or ``other side``; ``shield`` ``none``, ``flat open``, ``curved open`` or ``closed`` and ``shield_finish``;
    - ``sleeve`` its thickness over the line, ``sleeve_finish``, ``sleeve_conductivity``; ``flow_temperature`` and
      ``flow_conductivity`` of what flows in the line while the engine runs, which cools it; ``film`` the coefficient to
      the air, ``margin`` to keep under what the line stands;
    - ``jurisdiction``; ``flare``, ``seat``, ``nut``, ``port``; ``clip_spacing`` as it is; ``anchors``,
      ``exhaust_material``, its ``expansion`` and ``cold_end``; ``hose_length``,
      ``droop``, ``lock``.

    Measures may be ranges (``300 to 450 degC``); a finish is an emissivity or ``material: surface`` of the table.

    Returns a Sheet: a measured temperature governs, then the plain rule, then the estimate of each case with its band;
    gap needed beside gap measured; written rules; clips; wall and pressure; flare and thread fit; exhaust growth. With
    ``draw`` also temperature against gap and the section to scale, where there is an estimate.

    Raises LookupMiss, InputError or UnitError for what is given and cannot be read.

    >>> route("brake", fluid="DOT 4", temperature="170 degC", temperature_by="thermocouple").worst
    'not ok'
    """
    needs = {"line_limit_from": ("line_limit",), "fluid_limit_from": ("fluid_limit",)}
    together(given, {**needs, "temperature_by": ("temperature",)})
    text: dict[str, str | None] = {"service": service, **given}  # type: ignore[dict-item]
    return route_of(line_of_text(text), draw=draw, data=data)


def route_of(
    line: Line, *, draw: bool = False, data: Refdata | None = None, is_job: bool = False, first: Found | None = None
) -> Sheet:
    """As ``route``, of a Line. In a job a word that the tables do not know is an open question, and the sheet is made.

    ``first`` stands before all else on the sheet.
    """
    data = data or refdata()
    words = Words(line, data, is_job)
    judged = judged_by(words)
    measured = line.figure("temperature", data)
    inputs, stands_in, noted = inputs_of(words, judged)
    more = line_cases.estimates(inputs, stands_in, line, judged, data)
    gap = line.figure("gap", data)
    found = Found((), (), noted.cautions) + _measured(line, judged, measured, more) + Found((), noted.checks)
    found += _bearing(more.found, line)
    if measured is None and more.worst is None and more.guessed is None:
        found += untested(judged)
    found += Found([] if judged.margin is None else [judged.margin])
    found += Found([] if gap is None else [gap]) + _parts(words, judged, inputs, gap)
    doubted = doubts(line, inputs, data)
    found += doubted
    governs = measured if measured is not None else more.worst.figure() if more.worst is not None else None
    told = governs if measured is not None or more.guessed is None else more.guessed
    wet = (*vapour(judged.fluid.item), *boils(judged.fluid.item, governs))
    found += Found((), (), (*judged.cautions, *wet, *line_rules.written(words), *line_rules.shop(line, data)))
    found = (first or Found()) + found + words.found()
    decision, questions = decide(judged, found, doubted.questions, told, more.needed)
    return Sheet(
        _title(line),
        line.asked(),
        data,
        _in_order(decision, judged, found),
        list(found.checks),
        list(found.cautions),
        _drawn(more, judged) if draw else [],
        decision,
        questions,
    )


def _in_order(decision: Decision, judged: Judged, found: Found) -> list[Figure]:
    """The figures of the sheet: those that the decision names, what material and fluid stand, all else."""
    figures = {f.id: f for f in (*decision.figures, *judged.limits, *found.figures)}
    return list(figures.values())


def _bearing(found: Found, line: Line) -> Found:
    """An estimate's checks where the plain rule is met: what cannot be told of them only informs."""
    if not _is_plain_rule_met(line):
        return found
    checks = [c.replace(bears=INFORM) if c.result == CANNOT_TELL else c for c in found.checks]
    return Found(found.figures, checks, found.cautions, found.questions)


def _title(line: Line) -> str:
    beside = line.word("beside")
    title = " ".join(p for p in (line.word("service") or "", "line", f"beside {beside}" if beside else "") if p)
    return f"{line.name}: {title}" if line.name else title


def _drawn(more: Estimates, judged: Judged) -> list[Drawing]:
    if more.worst is None:
        return []
    from gaugeblock.lines.drawings import drawings

    return drawings(more.worst, judged.lowest, more.needed, judged.data)


def _parts(words: Words, judged: Judged, inputs: dict[str, Figure], gap: Figure | None) -> Found:
    """Written rules, clips, wall, growth and joints: what was begun is judged."""
    line, data = words.line, words.data
    found = line_rules.clearance(words, gap)
    found += line_parts.supports(line, data)
    found += pressure(line, judged.material.item, data)
    found += line_parts.exhaust_growth(words, inputs.get("hot temperature"))
    found += line_fit.fit(words)
    found += line_fit.hose(line, data)
    return found + line_fit.compatible(words, judged.fluid.item, judged.material.item)


def _measured(line: Line, judged: Judged, measured: Figure | None, more: Estimates) -> Found:
    """What was measured on the car, and the rule that needs no figure."""
    if measured is not None:
        found = Found([measured], judged.measured(measured, line.word("temperature_by")))
    else:
        text = "none is given: use a temperature crayon, paint or a thermocouple, hot and after shut-down"
        is_beside_heat = line.has("beside") or line.has("hot_temperature")
        is_shown = _is_plain_rule_met(line) or more.is_enough
        bears = ASK if is_beside_heat and not is_shown else INFORM
        found = Found((), (Check(MEASURED_CHECK, CANNOT_TELL, text, bears=bears), *judged.open_checks))
    plain = _plain_rule(line, measured)
    return found + Found((), () if plain is None else (plain,))


def _is_plain_rule_met(line: Line) -> bool:
    """Whether the rail or a shield stands between line and hot part."""
    return line.word("side") == "other side" or line.word("shield") not in (None, "none")


def _plain_rule(line: Line, measured: Figure | None) -> Check | None:
    """The rule that needs no figure; None where it is not met and a measured temperature governs instead."""
    name = "plain rule: other side of the rail, or a shield with air on both sides"
    side, shield = line.word("side"), line.word("shield")
    subject = "plain rule"
    if side == "other side":
        return Check(name, OK, "the rail stands between line and hot part", subject=subject)
    if _is_plain_rule_met(line):
        return Check(name, OK, f"a {shield} shield stands between; keep air on both its sides", subject=subject)
    if side is None and shield is None:
        why = "neither the side of the rail nor a shield is given"
        return Check(name, CANNOT_TELL, why, subject=subject, bears=INFORM)
    if measured is not None:
        return None
    return Check(name, CANNOT_TELL, "not met: measure on the car, or re-route", subject=subject, bears=INFORM)
