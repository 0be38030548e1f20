"""The answer ``exhaust_gap``: how near a neighbour may be, by published rules and habits, and what is left when hot."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, Bound, Check
from gaugeblock.answer.decision import Candidate, Decision, ask, stop, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import LookupMiss
from gaugeblock.exhaust.statements import cautions
from gaugeblock.lookup import figure_of, look_up
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.exhaust.warming import Warmed
    from gaugeblock.figure import Figure

VERB = "KEEP AT LEAST"
# Neighbour -> what the tables call it; the first word is what it is called here.
NEIGHBOURS: dict[str, tuple[str, ...]] = {
    "floor": ("exhaust to body or frame", "muffler to floor", "exhaust to frame and floor pan"),
    "fuel tank": ("exhaust to tank",),
    "fuel line": ("fuel line to exhaust",),
    "brake line": ("brake line to exhaust",),
    "gas fuel line": ("gas fuel line to exhaust", "CNG or LPG pressure line to exhaust"),
    "wire": ("electric wire to exhaust",),
    "rubber boot": ("exhaust to boot or bush",),
    "hose": ("rubber hose (air conditioning) to exhaust manifold", "exhaust to boot or bush"),
    "tyre": ("exhaust to tyre",),
    "ground": ("exhaust to ground",),
    "spark plug lead": ("exhaust to spark plug lead",),
    "axle or suspension": ("exhaust to moving suspension or axle",),
    "what burns": ("combustible material to exhaust",),
}
# What is long and round, which an estimate of its heat is made for; of a floor, a tank or a boot none is made.
ROUND = ("fuel line", "brake line", "gas fuel line", "wire", "hose", "spark plug lead")
_WORDS = {
    "frame": "floor",
    "body": "floor",
    "tunnel": "floor",
    "firewall": "floor",
    "bulkhead": "floor",
    "tank": "fuel tank",
    "gas tank": "fuel tank",
    "fuel hose": "fuel line",
    "fuel pipe": "fuel line",
    **dict.fromkeys(("nylon fuel line", "nylon fuel hose", "nylon fuel pipe"), "fuel line"),
    **dict.fromkeys(("plastic fuel line", "plastic fuel hose", "plastic fuel pipe"), "fuel line"),
    "line": "brake line",
    "brake hose": "brake line",
    "brake pipe": "brake line",
    "lpg line": "gas fuel line",
    "wires": "wire",
    "wiring": "wire",
    "harness": "wire",
    "loom": "wire",
    "cable": "wire",
    "boot": "rubber boot",
    "bush": "rubber boot",
    "bushing": "rubber boot",
    "cv boot": "rubber boot",
    "mount": "rubber boot",
    "engine mount": "rubber boot",
    "tire": "tyre",
    "wheel": "tyre",
    "road": "ground",
    "plug lead": "spark plug lead",
    "plug wire": "spark plug lead",
    "spark plug wire": "spark plug lead",
    "lead": "spark plug lead",
    "axle": "axle or suspension",
    "suspension": "axle or suspension",
    "driveshaft": "axle or suspension",
    **dict.fromkeys(("propeller shaft", "propshaft", "prop shaft"), "axle or suspension"),
    "wood": "what burns",
    "undercoating": "what burns",
    "carpet": "what burns",
}
_TABLES = ("exhaust/clearances", "lines/clearances")
_OWN = ("vehicle", "any")


class Neighbour(Value):
    """What the tables say of one neighbour: figures for vehicles, the largest first, and those of other services."""

    __slots__ = ("name", "others", "own")

    name: str
    own: tuple[Figure, ...]
    others: tuple[Figure, ...]

    def __init__(self, name: str, own: Sequence[Figure], others: Sequence[Figure]) -> None:
        put(self, "name", name)
        put(self, "own", tuple(own))
        put(self, "others", tuple(others))


def neighbour_of(typed: str) -> str:
    """The neighbour that was typed; LookupMiss with the nearest."""
    said = " ".join(typed.casefold().replace("-", " ").split())
    said = said.removeprefix("the ")
    if said in NEIGHBOURS:
        return said
    for one in (said, said.removesuffix("s")):
        if one in _WORDS or one in NEIGHBOURS:
            return _WORDS.get(one, one)
    from gaugeblock.tables.near import nearest

    near = list(dict.fromkeys(_WORDS.get(n, n) for n in nearest(said, [*NEIGHBOURS, *_WORDS], 5)))
    raise LookupMiss(
        typed[:60], "to", "no neighbour of an exhaust that is known", near or list(NEIGHBOURS)[:5], "use one"
    )


def neighbour(typed: str, jurisdiction: str | None, data: Refdata) -> Neighbour:
    """The figures of a neighbour, of one jurisdiction where one is named."""
    name = neighbour_of(typed)
    found = [
        (row, figure_of(row, data))
        for table in _TABLES
        for row in data.table(table).by_quantity.get("clearance_minimum", ())
        if row["subject"] in NEIGHBOURS[name] and not row["standing"]
    ]
    if jurisdiction:
        here = [p for p in found if p[0].cells.get("jurisdiction", "").casefold() == jurisdiction.casefold()]
        found = here or found
    if not found:
        why = f"data release {data.release} has no figure of a gap to it"
        raise LookupMiss(name, "to", why, [r["version"] for r in data.releases][::-1][:3], "use a later data release")
    found.sort(key=lambda p: (-_most(p[1]), p[1].id))
    own = [f for row, f in found if row["service"] in _OWN]
    return Neighbour(name, own, [f for row, f in found if row["service"] not in _OWN])


def _is_of(known: Neighbour, jurisdiction: str | None) -> bool:
    """Whether a rule of this place is among what is known."""
    places = {f.key.get("jurisdiction", "").casefold() for f in (*known.own, *known.others)}
    return (jurisdiction or "").casefold() in places


def _most(figure: Figure) -> float:
    return units.to_base(figure.high if figure.high is not None else figure.typical, figure.unit)


def exhaust_gap(
    to: str,
    gap: str | None = None,
    *,
    movement: str | None = None,
    jurisdiction: str | None = None,
    pipe: str | None = None,
    hot: str | None = None,
    hot_finish: str | None = None,
    od: str | None = None,
    finish: str | None = None,
    air: str | None = None,
    soak_air: str | None = None,
    what: str | None = None,
    state: str | None = None,
    limit: str | None = None,
    measured: str | None = None,
    shield: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How near a neighbour of an exhaust may be, and whether a given gap keeps to it when the run is hot.

    Parameters are text as people write them: ``to`` the neighbour (``brake line``, ``fuel tank``, ``floor``, ``tyre``);
    ``gap`` between both when cold (``2 in``); ``movement`` of the run towards it when hot (``3/8 in``);
    ``jurisdiction`` whose rule it must keep (``US Maryland``). For the heat of a line, a wire, a hose or a plug lead:
    ``pipe`` its diameter, ``hot`` its metal, ``hot_finish`` its emissivity; ``od`` and ``finish`` of the neighbour;
    ``air`` beside it and ``soak_air`` after shut-down; ``what`` it is (``DOT 4``, ``SAE J30 R9``) and its ``state``, or
    ``limit`` that its maker says; ``measured`` what it came to on the car; ``shield`` what stands between (``yes``).
    Heat may be a range (``700 to 900 degF``).

    Returns a Sheet: the figures of rules and habits, the largest first; what the neighbour comes to at this gap by the
    estimate of ``route``, against what it stands. Raises LookupMiss for a neighbour that is not
    known, InputError or UnitError for what cannot be read.

    >>> exhaust_gap("brake line", jurisdiction="US Maryland").decision.kind
    'use'
    """
    data = data or refdata()
    asked = {k: v for k, v in locals().items() if k != "data"}
    known = neighbour(to, jurisdiction, data)
    cold = _read(gap, "gap", "gap", data)
    moved = _read(movement, "movement", "run_movement", data)
    title = f"exhaust to {known.name}" + (f", {cold.text} {cold.unit}" if cold is not None else "")
    left = hot_gap(cold, moved, known.name, data) if cold is not None and moved is not None else cold
    checks, questions = checked(known, left, data)
    if to.casefold().strip().startswith(_NYLON):
        checks.append(Check("nylon beside an exhaust", CANNOT_TELL, _NO_NYLON, bears=ASK))
        questions.append(Question(MEASURE, _NO_NYLON, "to", ("nylon beside an exhaust",)))
    stands = _stands(known.name, what, data)
    if stands is not None:
        said = f"Its insulation stands {number_only(stands, data)}: measure how hot it gets where the wire lies"
        checks.append(Check("what the insulation stands", CANNOT_TELL, said, bears=ASK))
        questions.append(Question(MEASURE, f"{said}.", "measured", ("what the insulation stands",)))
    odd = _doubts(cold, moved, data)
    checks += [c for c, _ in odd]
    questions += [q for _, q in odd]
    warm = None
    if not odd and any(asked[k] for k in _HEAT):
        warm = _warmed(known.name, left, asked, data)
        checks += warm.checks
        questions += warm.questions
    elif not odd and known.name in ROUND:
        checks.append(Check(f"temperature of the {known.name}", CANNOT_TELL, NO_HEAT, bears=INFORM))
    is_local = bool(jurisdiction) and _is_of(known, jurisdiction)
    if jurisdiction and not is_local:
        why = f"no rule of {jurisdiction[:60]} with a number was found: what is shown is of others"
        checks.append(Check("rule of the place", CANNOT_TELL, why, bears=INFORM))
    decision = _decided(known, left, checks, is_local, warm)
    if shield:
        decision = decision.replace(do=f"{decision.do} {_SHIELDED}")
    figures = [*decision.figures, *(warm.figures if warm is not None else ()), *known.own, *known.others]
    figures += [f for f in (left, cold, moved, stands) if f is not None]
    told = cautions(data, ("line near exhaust", "fire", "exhaust"), _STATED.get(known.name, ()))
    if to.casefold().strip().startswith(_NYLON):
        told = [*cautions(data, ("line routing",), ("nylon fuel line",)), *told]
    told += [_informs(f, data) for f in known.others[:2]]
    told += warm.cautions if warm is not None else ()
    if known.name == "rubber boot":
        figures.append(
            look_up("exhaust/limits", "temperature_maximum", data=data, subject="mount rubber", case=_RUBBER)
        )
    listed = list({f.id: f for f in figures}.values())
    return Sheet(title, asked, data, listed, checks, told, decision=decision, questions=questions)


_NYLON = ("nylon", "plastic")
_NO_NYLON = "Nylon tube does not belong beside an exhaust part: run metal tube or a rated hose there, and a shield"
_SHIELDED = "No table says how much less room is needed behind a shield: measure the heat behind it."
_HEAT = ("pipe", "hot", "hot_finish", "od", "finish", "air", "soak_air", "what", "state", "limit", "measured")
NO_HEAT = "an estimate of its heat needs the diameter of the pipe, the heat of its metal and its own diameter"
_RUBBER = "natural rubber, lasting heat"
_STATED = {
    "rubber boot": ("mount rubber",),
    "brake line": ("brake fluid on exhaust",),
    "what burns": ("dry grass under the car",),
}


def _stands(name: str, what: str | None, data: Refdata) -> Figure | None:
    """What the insulation of a wire stands, where its letters were said."""
    cable = data.words("wiring", "item").get((what or "").casefold()) if name == "wire" else None
    every = {"item": cable or "", "size": "all sizes", "condition": "any"}
    return look_up("wiring/wire", "temperature_maximum", data=data, **every) if cable is not None else None


def _read(typed: str | None, where: str, quantity: str, data: Refdata) -> Figure | None:
    return stated(read_positive(typed, "length", where, zero=True), quantity, where, data) if typed else None


def _warmed(name: str, left: Figure | None, asked: dict[str, str | None], data: Refdata) -> Warmed:
    from gaugeblock.exhaust.warming import heat_of, warmed

    return warmed(name, left, heat_of(asked, data), data)


def _doubts(cold: Figure | None, moved: Figure | None, data: Refdata) -> list[tuple[Check, Question]]:
    out = []
    for figure, key in ((cold, "gap"), (moved, "movement")):
        if figure is None:
            continue
        measure = read_positive(f"{figure.text} {figure.unit}", "length", key, zero=True)
        if not is_plausible(measure, figure.quantity, data):
            span = plausible_range(figure.quantity, data)
            said = did_you_mean(
                f"{measure.text} is no usual {key} of an exhaust", other_readings(measure, *span) if span else ()
            )
            check = Check(f"{key} as typed", CANNOT_TELL, said, bears=ASK)
            out.append((check, Question(FILL_IN, said, key, (check.name,))))
    return out


def _informs(figure: Figure, data: Refdata) -> Caution:
    service = figure.key.get("service", "")
    said = f"{figure.key['subject']}: {number_only(figure, data)}"
    text = f"{capital(said)} ({service}; {figure.conditions or 'nothing more is said'})."
    return Caution(text, "note", (figure.id,), figure.source or figure.basis)


def hot_gap(cold: Figure, moved: Figure, name: str, data: Refdata) -> Figure:
    """What is left of a gap when the run has moved straight at its neighbour."""
    number = units.from_base(base(cold) - base(moved), cold.unit)
    said = f"gap to the {name} when hot, the movement taken straight at it"
    return derived("run_gap_hot", "gap_hot", number, cold.unit, (cold, moved), data, about=name, conditions=said)


def checked(
    known: Neighbour, left: Figure | None, data: Refdata, key: str = "gap"
) -> tuple[list[Check], list[Question]]:
    """The gap that is left against what rules and habits ask; nothing passes on a habit alone without saying so."""
    name = f"gap to the {known.name}"
    if left is None:
        return [], []
    got = base(left)
    actual = Bound(left.typical, left.unit, figure=left)
    if got <= 0:
        return [Check(name, NOT_OK, f"it touches the {known.name} when hot", None, actual, subject=known.name)], []
    if not known.own:
        why = "no figure for road vehicles was found"
        return [Check(name, CANNOT_TELL, why, None, actual, subject=known.name, bears=INFORM)], []
    most = known.own[0]
    needed = units.from_base(_most(most), left.unit)
    required = Bound(needed, left.unit, "min", most)
    is_ok = left.typical >= needed * (1 - 1e-9)
    said = f"{number_only(left, data)} left, {number_only(most, data, left.unit)} {_whose(most)}"
    check = Check(
        name, OK if is_ok else NOT_OK, said, required, actual, left.typical / needed - 1, subject=known.name, bears=ASK
    )
    if is_ok:
        return [check], []
    text = f"Make more room to the {known.name}, or shield it and measure its heat: {said}."
    return [check], [Question(MEASURE, text, key, (name,))]


def _whose(figure: Figure) -> str:
    if figure.quantity == "gap_needed":
        return "is asked by the estimate of its heat"
    if figure.basis == "common practice":
        return "is the habit"
    return f"is asked by {figure.key.get('jurisdiction') or 'the maker of one vehicle'}"


def _decided(
    known: Neighbour, left: Figure | None, checks: list[Check], is_local: bool, warm: Warmed | None
) -> Decision:
    """By rules and habits; the gap that the estimate of heat asks for counts where it is more."""
    needed = warm.needed if warm is not None else None
    heat = f" Its heat there: {warm.said}." if warm is not None and warm.said else ""
    every = known.own or known.others
    if needed is not None and (not every or base(needed) > _most(every[0])):
        every = (needed, *every)
    stops = [c for c in checks if c.stops]
    if stops:
        return _stopped(every[0], stops, needed)
    asks = [c for c in checks if c.asks]
    firm = known.own[0] if known.own and known.own[0].basis == "published" else None
    if firm is not None and every[0] is needed:
        firm = needed
    if not asks and firm is not None and left is not None:
        said = f"it {_whose(firm)}" if firm is not needed else "the estimate of its heat asks for that"
        return use(VERB, firm, f"The gap keeps to the most that was found: {said}.{heat}")
    if not asks and firm is not None and is_local:
        return use(VERB, firm, "It is a reject limit: keep more where you can.")
    picked = list({round(_most(f), 6): f for f in reversed(every)}.values())[::-1]
    candidates = [Candidate(f, _whose(f), _what(f)) for f in sorted(picked, key=_most, reverse=True)]
    names = [c.name for c in asks or checks]
    if not asks and left is not None:
        return ask(VERB, candidates, names, f"The gap keeps to the habit; no rule with a number was found.{heat}")
    if asks and asks[0].name.startswith("temperature") and heat:
        return ask(VERB, candidates, names, f"Measure it hot and after shut-down.{heat}")
    first = f"{asks[0].reason.rstrip('.?')}{'?' if asks[0].reason.endswith('?') else '.'} " if asks else ""
    return ask(VERB, candidates, names, f"{first}Take the most that fits; no rule gives one number for all.{heat}")


def _stopped(most: Figure, stops: list[Check], needed: Figure | None) -> Decision:
    """It touches, or it is too hot there by what was measured or by firm figures alone."""
    names = [c.name for c in stops]
    hot = next((c for c in stops if c.name.startswith("temperature")), None)
    if hot is None or len(stops) > 1 or needed is not None:
        do = "Move it: it touches when hot." if hot is None else "Make more room: it is too hot there."
        return stop(VERB, [Candidate(needed or most, "", "required")], names, do)
    bounds = [b.figure for b in (hot.required, hot.actual) if b is not None and b.figure is not None]
    shown = [Candidate(f, "", word) for f, word in zip(bounds, ("required", "refused"), strict=False)]
    return stop(VERB, shown, names, "It is too hot there: make more room or shield it, and measure it again.")


def _what(figure: Figure) -> str:
    return figure.conditions.split(";")[0] or figure.key.get("subject", "as listed")
