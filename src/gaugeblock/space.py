"""Everything of a job that has a path, against everything else: tubes, lines, hot pipes and what tubes must clear."""

from __future__ import annotations

from itertools import combinations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.decision import Candidate, ask, none, stop, use
from gaugeblock.answer.making import base, derived
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.bodies import HOT, LINE, OBSTACLE, TUBE, Placed, place_words
from gaugeblock.calc import clearance as space
from gaugeblock.drawing.lengths import tape

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.decision import Decision
    from gaugeblock.drawing.lengths import Tape
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

VERB = "CHECK"
ONE_DATUM = "one datum"


def apart(bodies: Sequence[Placed], data: Refdata, metric: bool = False) -> Sheet | None:
    """Least gaps of all that stands in the vehicle under one datum, movement counted; None where no two are to be told.

    A tube and its own obstacles, and a line and its own hot pipe, are on their own sheets. Two hot pipes, and two
    obstacles, are not asked about. The order of the bodies changes nothing.
    """
    pairs = [(a, b) for a, b in combinations(sorted(_once(bodies), key=_rank), 2) if _asks(a, b)]
    if not pairs:
        return None
    names = dict.fromkeys(p.body.name for pair in pairs for p in pair)
    of = {p.body.name: p.datum for pair in pairs for p in pair}
    told = [(a, b) for a, b in pairs if a.datum and a.datum == b.datum]
    figures, checks = _told(told, data, tape("mm" if metric else "1/32 in"))
    questions = []
    if len(told) < len(pairs):
        lost = dict.fromkeys(p.body.name for a, b in pairs if (a, b) not in told for p in (a, b))
        why = f"the datums of {', '.join(lost)} are not stated in the same words: measure all from one datum"
        checks.insert(0, Check(ONE_DATUM, CANNOT_TELL, why, bears=ASK))
        text = f"Measure {', '.join(lost)} from one datum, and state it in the same words."
        questions.append(Question(FILL_IN, text, "datum", (ONE_DATUM,)))
    decision = _decision(figures, checks, questions)
    return Sheet(
        "tubes and lines against each other",
        {n: of[n] for n in names},
        data,
        list(dict.fromkeys((*figures, *decision.figures))),
        checks,
        [],
        decision=decision,
        questions=questions,
    )


def _rank(placed: Placed) -> tuple[int, str, str]:
    return (TUBE, OBSTACLE, HOT, LINE).index(placed.kind), placed.body.name, placed.owner


def _decision(figures: list[Figure], checks: list[Check], questions: list[Question]) -> Decision:
    """The smallest gap; what touches, or is nearer than wanted, stops."""
    failed = [c for c in checks if c.stops]
    if failed:
        bounds = {b.figure.id: b.figure for c in failed if (b := c.required or c.actual) and b.figure is not None}
        wanted = [Candidate(f, "required" if f.quantity == "gap_asked" else "") for f in bounds.values()]
        apart_ = "; ".join(f"{c.subject}: {c.reason}" for c in failed[:2])
        return stop(VERB, wanted[:3], [c.name for c in failed], f"Move one of the two: {apart_}.")
    if not figures:
        return none(VERB, questions[0].text if questions else "State one datum for all.")
    least = min(figures, key=base)
    if questions:
        known = Candidate(least, "what has another datum stays clear too", "the smallest gap that is known")
        return ask(VERB, [known], [ONE_DATUM], questions[0].text)
    said = "Every gap that is wanted is there" if any(c.result == OK for c in checks) else "No gap is wanted of these"
    return use(VERB, least, f"{said}; this is the smallest.", [c.name for c in checks if c.result == OK])


def _told(told: Sequence[tuple[Placed, Placed]], data: Refdata, reads: Tape) -> tuple[list[Figure], list[Check]]:
    """The gap of each pair, and whether it is the one that was asked for."""
    figures: list[Figure] = []
    checks: list[Check] = []
    loose = []
    for (a, b), gap in zip(told, _gaps(told), strict=True):
        pair = f"{a.body.name} and {b.body.name}"
        name = f"gap of {pair}"
        at = f"at {place_words(gap.at, reads)} from the datum, movement counted"
        figure = derived(
            "least_gap_moved",
            "surface_gap",
            units.from_base(gap.gap, reads.unit),
            reads.unit,
            tuple(dict.fromkeys((*a.leaves, *b.leaves))),
            data,
            key={"tube": "tubes and lines", "bend": pair},
            conditions=f"{name}, {at}",
        )
        figures.append(figure)
        asked = [f for f in (a.asked, b.asked) if f is not None]
        if gap.gap <= 0:
            got = Bound(figure.typical, figure.unit, figure=figure)
            checks.append(Check(name, NOT_OK, f"they touch, {at}", None, got, subject=pair))
        elif asked:
            checks.append(_against(name, pair, gap, at, figure, asked, reads))
        else:
            loose.append((gap.gap, f"{reads.down(gap.gap)} {pair}"))
    if loose:
        why = f"no gap was required between these pairs; the nearest first: {'; '.join(t for _, t in sorted(loose))}"
        checks.append(Check("gaps not asked for", CANNOT_TELL, why, bears=INFORM))
    return figures, checks


def _once(bodies: Sequence[Placed]) -> list[Placed]:
    """A hot pipe that two lines name is one body."""
    seen: dict[tuple[str, str], Placed] = {}
    for n, placed in enumerate(bodies):
        key = (placed.body.name, placed.datum) if placed.kind == HOT else (str(n), "")
        seen.setdefault(key, placed)
    return list(seen.values())


def _asks(a: Placed, b: Placed) -> bool:
    """Whether the gap of two bodies is to be told here."""
    if a.owner == b.owner or not {a.kind, b.kind} & {TUBE, LINE}:
        return False
    # the same thing, named as obstacle by one and as hot pipe by another, or by the tube that it is
    return a.body.name != b.body.name


def _gaps(pairs: Sequence[tuple[Placed, Placed]]) -> list[space.Gap]:
    """The least gap of each pair; those of two round bodies all at once."""
    tubes = list({id(p.body): p.body for pair in pairs for p in pair if isinstance(p.body, space.Tube)}.values())
    at = {id(t): n for n, t in enumerate(tubes)}
    wanted = [(at[id(a.body)], at[id(b.body)]) for a, b in pairs if id(a.body) in at and id(b.body) in at]
    round_ = iter(space.tube_gaps(tubes, pairs=wanted))
    out = []
    for a, b in pairs:
        if isinstance(a.body, space.Tube) and isinstance(b.body, space.Tube):
            out.append(next(round_))
            continue
        tube, other = (a.body, b.body) if isinstance(a.body, space.Tube) else (b.body, a.body)
        if not isinstance(tube, space.Tube) or isinstance(other, space.Tube):
            raise ValueError("one of two bodies is a tube, the other is not")
        out.append(space.obstacle_gaps([tube], [other])[0])
    return out


def _against(name: str, pair: str, gap: space.Gap, at: str, figure: Figure, asked: list[Figure], reads: Tape) -> Check:
    got = Bound(figure.typical, figure.unit, figure=figure)
    most = max(asked, key=base)
    need = base(most)
    text = f"smallest gap {reads.down(gap.gap)}, {at}; wanted {reads.reads(need)}"
    bound = Bound(units.from_base(need, reads.unit), reads.unit, "min", most)
    result = OK if gap.low >= need - 1.1 * space.TOLERANCE else NOT_OK
    margin = (gap.gap - need) / need if need else None
    return Check(name, result, text, bound, got, margin, subject=pair)
