"""Clips of a line at any spacing, and the growth of what is held between two anchors, asked without a job."""

from __future__ import annotations

from gaugeblock.answer.decision import Candidate, ask, none, stop, use
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import Ambiguous
from gaugeblock.lines.doubts import doubts
from gaugeblock.lines.heat import sentence
from gaugeblock.lines.keys import SERVICES, line_of_text
from gaugeblock.lines.parts import exhaust_growth, supports
from gaugeblock.lines.words import Words
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.decision import Decision
    from gaugeblock.lines.found import Found
    from gaugeblock.lines.keys import Line


def _clips_topic() -> Topic:
    from gaugeblock.lines.held_ask import CLIPS

    return CLIPS


@opens(_clips_topic, "length")
def clips(length: str, *, service: str | None = None, spacing: str | None = None, data: Refdata | None = None) -> Sheet:
    """How many clips a line takes and where they stand: at the spacing that you want, else at the published one.

    ``length`` of the whole line (``9 ft``), whose ends are held by their fittings; ``service`` ``brake``, ``fuel feed``
    ...; ``spacing`` ``18 in``, which a published greatest spacing of the service judges. Raises Ambiguous with the
    services where neither is given, InputError or UnitError for what cannot be read.

    >>> clips("9 ft", spacing="18 in").decision.figure.typical
    5.0
    """
    data = data or refdata()
    if spacing is None and service is None:
        why = "neither a service nor a spacing is given"
        raise Ambiguous("clips", "service", why, SERVICES, "name the service, or give the spacing that is wanted")
    given = {"length": length, "service": service, "clip_spacing": spacing}
    line = line_of_text(given)
    found = supports(line, data)
    return _sheet("clips of a line", line, found, data, "support_count", "Clip it as it was made.")


def _growth_topic() -> Topic:
    from gaugeblock.lines.held_ask import GROWTH

    return GROWTH


@opens(_growth_topic, "length")
def growth(
    length: str,
    *,
    hot: str,
    material: str | None = None,
    expansion: str | None = None,
    cold_end: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How much a length between two anchors grows when it is hot, and the slip that this needs.

    ``length`` ``60 in``; ``hot`` its temperature, a range is taken at its high end; ``material`` ``carbon steel``, or
    its own coefficient ``expansion`` (``17.3 um/(m*K)``), which stands in place of the tables'; ``cold_end`` what it
    grows from (else 20 degC). Raises Ambiguous with the materials where neither is given, LookupMiss with the nearest,
    InputError or UnitError.

    >>> growth("60 in", hot="520 degC", expansion="17 um/(m*K)", cold_end="20 degC").decision.figure.unit
    'in'
    """
    data = data or refdata()
    if material is None and expansion is None:
        why = "neither a material nor a coefficient is given"
        tables = ("lines/growth", "lines/expansion")
        metals = sorted({m for table in tables for m in data.table(table).column("material").values()})
        raise Ambiguous("growth", "material", why, metals, "name the material, or give its coefficient of expansion")
    given = {
        "anchors": length,
        "hot_temperature": hot,
        "exhaust_material": material,
        "expansion": expansion,
        "cold_end": cold_end,
    }
    line = line_of_text(given)
    found = exhaust_growth(Words(line, data, is_job=False), line.figure("hot_temperature", data))
    why = "No growth of this material at this temperature is published: state its coefficient of expansion."
    return _sheet("growth between two anchors", line, found, data, "thermal_growth", why)


def _sheet(title: str, line: Line, found: Found, data: Refdata, quantity: str, otherwise: str) -> Sheet:
    """The sheet of what was found, which decides by the figure of one quantity."""
    doubted = doubts(line, {}, data)
    main = next((f for f in found.figures if f.quantity == quantity), None)
    figures = list(dict.fromkeys((*(() if main is None else (main,)), *found.figures)))
    checks = [*doubted.checks, *found.checks]
    stops = [c for c in found.checks if c.stops]
    decision: Decision
    if doubted.questions:
        decision = none("", doubted.questions[0].text)
    elif main is None:
        reasons = [sentence(c.reason) for c in found.checks if "the tables have it" in c.reason]
        decision = none("", f"{reasons[0]} State its coefficient of expansion." if reasons else otherwise)
    elif stops:
        required = stops[0].required.figure if stops[0].required is not None else None
        ends = [*([] if required is None else [Candidate(required, "", "required")]), Candidate(main, "", "refused")]
        said = f"{capital(stops[0].reason)}."
        decision = stop("", ends, [c.name for c in stops], said)
    elif asks := [c for c in found.checks if c.asks]:
        when = "no rule of your place says less"
        decision = ask("", [Candidate(main, when)], [c.name for c in asks], sentence(asks[0].reason))
    else:
        decision = use("", main, found.checks[0].reason if found.checks else "")
    asked: Mapping[str, str | None] = {k: v for k, v in line.asked().items() if v is not None}
    return Sheet(title, dict(asked), data, figures, checks, (), decision=decision, questions=doubted.questions)
