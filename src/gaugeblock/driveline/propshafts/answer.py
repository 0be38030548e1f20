"""The answer ``shaft``: a propeller shaft's length, travel, whip and joints."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, Decision, ask, none, stop, use
from gaugeblock.answer.making import base
from gaugeblock.answer.needs import known
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.joints.checks import Judged
from gaugeblock.driveline.propshafts import travel as slip
from gaugeblock.driveline.propshafts import whip as whirling
from gaugeblock.driveline.propshafts.angles import State, states
from gaugeblock.driveline.propshafts.drawings import drawings
from gaugeblock.driveline.propshafts.given import MEASURES, Propeller
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import TypedDict, Unpack

    from gaugeblock.figure import Figure

    class Typed(TypedDict, total=False):
        """Every key of a propeller shaft, as text."""

        od: str | None
        wall: str | None
        material: str | None
        modulus: str | None
        density: str | None
        yield_strength: str | None
        length: str | None
        front_length: str | None
        bump: str | None
        droop: str | None
        slip_in: str | None
        engaged: str | None
        spline_diameter: str | None
        engine_speed: str | None
        gears: str | None
        transfer: str | None
        speed: str | None
        torque: str | None
        wind_up: str | None
        phasing: str | None
        shafts_side: str | None
        shafts_top: str | None
        bump_side: str | None
        droop_side: str | None


VERB, SPEED_VERB, LONGEST_VERB, TURNS_VERB = "MAKE", "KEEP UNDER", "NO LONGER THAN", "TURNS"
_LONGEST = "there it turns the share of its critical speed that shops stay under"
_FASTEST = (
    "The shaft itself, at most. See that it stays under the speed at which it whips; where the engine cannot pull"
    " that gear to that speed, the road speed it does reach sets how fast the shaft turns."
)
_TO_MEASURE = "Measure the distance between the centres of the joints at ride height, and give it."
_OF_MAKING = ("bump", "droop", "slip_in", "engaged", "spline_diameter", "wind_up", "torque")
LENGTH, DOUBT = "distance between the joints", "as it was typed"
KEYS = (
    "od",
    "wall",
    "material",
    "modulus",
    "density",
    "yield_strength",
    "length",
    "front_length",
    "bump",
    "droop",
    "slip_in",
    "engaged",
    "spline_diameter",
    "engine_speed",
    "gears",
    "transfer",
    "speed",
    "torque",
    "wind_up",
    "phasing",
    "shafts_side",
    "shafts_top",
    "bump_side",
    "droop_side",
)


def shaft(*, data: Refdata | None = None, **typed: Unpack[Typed]) -> Sheet:
    """A propeller shaft: how long it is made, how far its slip joint goes, when it whips, and how its joints stand.

    Parameters are text as people write them. Of the tube: ``od`` ``3 in``, ``wall``, ``material`` ``steel`` or
    ``aluminium``, or its own ``modulus`` and ``density``; ``torque`` on it and its ``yield_strength``. Between the
    centres of its joints: ``length`` at ride height, the same at full ``bump`` and full ``droop``; of a shaft in two
    pieces these are the rear piece, and ``front_length`` is the front one. Of its slip joint
    at ride height: ``slip_in``, how far it can still go in, ``engaged`` length and ``spline_diameter``. How fast:
    ``engine_speed`` at most with ``gears`` and ``transfer``, or its own ``speed``. Slopes of gearbox, shaft and
    pinion in the side view, down to the rear positive: ``shafts_side`` (four of a shaft in two pieces),
    ``shafts_top``, ``bump_side``, ``droop_side``; ``phasing`` of its yokes; ``wind_up`` of the springs under power.

    Returns a Sheet: the length to make, then whip, speeds, travel and angles; what was not given is asked.

    Raises LookupMiss for a material that the table does not have, InputError or UnitError for what cannot be read.
    Source of the method: the exact first bending mode of a pinned beam (Machinery's Handbook 25, quoted); geometry.

    >>> sheet = shaft(od="3 in", wall="0.083 in", material="steel", length="48 in", bump="47.5 in", droop="48.75 in",
    ...     engine_speed="5000 rpm", gears="3, 1.6, 1")
    >>> sheet.decision.kind, round(sheet.figure("critical_speed").typical, -2)
    ('use', 8100.0)
    """
    data = data or refdata()
    known(typed, KEYS, "shaft")
    asked: dict[str, str | None] = {k: typed.get(k) for k in KEYS}  # type: ignore[misc]
    return judged(Propeller.read(asked), asked, data)


def judged(of: Propeller, asked: dict[str, str | None], data: Refdata, name: str = "") -> Sheet:
    """As ``shaft``, of what was read; one with a ``name`` has an order sheet too."""
    doubts = _doubts(of, data)
    if doubts:  # what is hardly meant is asked about, not calculated with
        said = none(VERB, doubts[0].text)
        checks = [Check(DOUBT, CANNOT_TELL, q.text, subject=q.key, case=q.key, bears=ASK) for q in doubts]
        return Sheet(_title(of), asked, data, [], checks, [], decision=said, questions=doubts)
    moved = slip.travel(of, data)
    found = whirling.whip(of, moved.longest, data)
    at = states(of, found.fastest, data)
    is_made = bool(name) or bool(of.shafts_side) or any(of.get(k) is not None for k in _OF_MAKING)
    told = _told(of, moved, found, at, data, is_made=is_made)
    strained, held = whirling.stress(of, data)
    told += [held] if held is not None else []
    number = next((f for f in moved.distances if f.locator == "length"), None)
    is_of_speed = number is not None and found.kept is not None and not is_made
    decision = _decide_speed(found, told, data) if is_of_speed else _decide(number, found, told, data)
    most = whirling.longest(of, found, data) if number is None and not is_made else None
    if most is not None:
        decision = ask(LONGEST_VERB, [Candidate(most, "between the joints", _LONGEST)], (LENGTH,), _TO_MEASURE)
    if number is None and of.get("od") is None and not is_made and found.fastest is not None:
        decision = use(TURNS_VERB, found.fastest, _FASTEST)
    opinion = whirling.second_opinion(found)
    own = (f for f in (found.critical, found.kept) if f is not None)
    angles = (f for state in at for f in state.figures)
    shown = (
        *decision.figures,
        *own,
        *sorted(found.speeds, key=base, reverse=True),
        *moved.figures,
        *moved.distances,
        *angles,
        *strained,
        *whirling.beside(of, data),
    )
    checks = [t.check for t in told] + ([opinion] if opinion is not None else [])
    return Sheet(
        _title(of),
        asked,
        data,
        list(dict.fromkeys(shown)),
        checks,
        _cautions(at, data, is_made=is_made),
        drawings(of, at, moved, found, decision, checks, name, data),
        decision=decision,
        questions=[t.question for t in told if t.question is not None],
    )


def _title(of: Propeller) -> str:
    tube = " x ".join(m.text for m in (of.get("od"), of.get("wall")) if m is not None)
    return ", ".join(t for t in ("propeller shaft", tube, of.material) if t)


def _told(
    of: Propeller, moved: slip.Travel, found: whirling.Whip, at: list[State], data: Refdata, *, is_made: bool
) -> list[Judged]:
    if of.get("length") is None:
        text = "How far apart are the centres of the two joints, at ride height?"
        check = Check(LENGTH, CANNOT_TELL, "the distance between the joints is not given", bears=ASK)
        told = [Judged(check, "", Question(MEASURE, text, "length", (LENGTH,)))]
    else:
        told = [whirling.judged(of, found, data, is_made=is_made), *whirling.front_piece(of)]
        told += slip.judged(of, moved, data) if is_made else []
    seen: set[tuple[str, str]] = set()
    for state in at:
        for one in state.told:
            mark = (one.check.name, one.check.reason)
            if mark not in seen:
                seen.add(mark)
                told.append(one)
    return told


def _decide(number: Figure | None, found: whirling.Whip, told: list[Judged], data: Refdata) -> Decision:
    """The length to make; where its whip is open or too near, the speed to keep under: no length is the answer then."""
    if number is None:
        if found.critical is not None:
            return use("WHIPS AT", found.critical)
        return none(VERB, "Measure the distance between the centres of the joints at ride height.")
    stops = [t for t in told if t.check.stops]
    if stops:
        shown = Candidate(number, "between the joints")
        return stop(VERB, [shown], [t.check.name for t in stops], stops[0].do)
    asks = [t for t in told if t.check.asks]
    if asks and asks[0].check.name == whirling.WHIPS and found.kept is not None and found.fastest is not None:
        return _decide_speed(found, told, data)
    if asks:
        names = [t.check.name for t in asks]
        first = asks[0]
        return ask(VERB, [Candidate(number, "between the joints at ride height", first.check.reason)], names, first.do)
    return use(VERB, number, "Between the centres of the joints, at ride height.")


def _decide_speed(found: whirling.Whip, told: list[Judged], data: Refdata) -> Decision:
    """Where nothing was said of making it: the speed to stay under."""
    assert found.kept is not None
    assert found.critical is not None
    whips = f"It whips at {number_only(found.critical, data)}."
    stops, asks = [t for t in told if t.check.stops], [t for t in told if t.check.asks]
    if stops:
        return stop(
            SPEED_VERB, [Candidate(found.kept, "", "shops stay under")], [t.check.name for t in stops], stops[0].do
        )
    if asks:
        whips = number_only(found.critical, data)
        then = f"it whips at {whips}"
        if found.fastest is not None:
            then = f"it is to turn {number_only(found.fastest, data)} at most, and whips at {whips}"
        shown = [Candidate(found.kept, "shops stay under this", then)]
        return ask(SPEED_VERB, shown, [t.check.name for t in asks], asks[0].do)
    return use(SPEED_VERB, found.kept, whips)


def _doubts(of: Propeller, data: Refdata) -> list[Question]:
    """What was typed and is hardly meant: far from what such a thing has."""
    out = []
    for key, (_, quantity) in MEASURES.items():
        measure = of.get(key)
        if measure is None or is_plausible(measure, quantity, data):
            continue
        low, high = plausible_range(quantity, data) or (0.0, 0.0)
        named = key.replace("_", " ")
        said = did_you_mean(
            f"{measure.text} is no usual {named} of a propeller shaft", other_readings(measure, low, high)
        )
        out.append(Question(FILL_IN, said, key, (DOUBT,)))
    return out


def _cautions(at: list[State], data: Refdata, *, is_made: bool) -> list[Caution]:
    out = rule_cautions(data, "driveshaft", "travel") if is_made else []
    text = "At the speed at which it whips a shaft breaks loose. Balance it, and keep it in a hoop."
    out.append(Caution(text, "injury", (), "common practice"))
    if any(state.found.is_taken for state in at):
        text = "All joints are taken to lie in one plane: slopes in the top view were not given."
        out.append(Caution(text, "note", (), "common practice"))
    return out + (rule_cautions(data, "universal joints", "phasing") if at else [])
