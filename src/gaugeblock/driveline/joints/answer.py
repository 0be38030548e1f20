"""The answer ``joint``: how unevenly the joints of a shaft drive, and whether their working angles are usual."""

from __future__ import annotations

import math

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import USE, Candidate, Decision, ask, stop
from gaugeblock.answer.making import base, read_positive
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, plausible_range
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.joints.checks import CANCELS, SPEED, Judged, cancels, needles_roll, usual
from gaugeblock.driveline.joints.drawing import drawings
from gaugeblock.driveline.joints.given import Joints, View, angle_of_joint, slopes, views
from gaugeblock.driveline.joints.swing import Swings, one_joint, swings
from gaugeblock.driveline.joints.working import Working, text_of, working
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.figure import Figure

VERB, KEPT = "SWINGS", "KEEP UNDER"


def joint(
    angle: str | None = None,
    second: str | None = None,
    *,
    top: str | None = None,
    second_top: str | None = None,
    shafts_side: str | Sequence[str] | None = None,
    shafts_top: str | Sequence[str] | None = None,
    phasing: str | None = None,
    speed: str | None = None,
    yokes_out: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How much a driven shaft speeds up and slows down, and whether the working angles are usual.

    Parameters are text as people write them: ``angle`` the first joint's working angle (``7 deg``) and ``second`` the
    other's, in the side view where ``top`` and ``second_top`` give them in the top view; or ``shafts_side`` the
    slopes of
    input, propeller and output shaft in the side view (``3 deg, 5 deg, 3 deg``; down to the rear positive) and
    ``shafts_top`` the same in the top view; ``phasing`` ``in phase`` or ``wrong phase``; ``speed`` the driveshaft's
    (``3000 rpm``); ``yokes_out`` how far the yokes of the shaft are out of line, where that was measured (``15 deg``).

    Returns a Sheet: the swing of the pair as phased first, peak to peak as a share of the mean, then of one joint,
    then the
    true working angles. Without a top view the joints are taken to lie in one plane; that is printed.

    Raises InputError or UnitError for what cannot be read.

    >>> joint(shafts_side="3 deg, 5 deg, 3 deg", phasing="in phase").figures[0].typical < 1e-9
    True
    """
    data = data or refdata()
    asked = {
        "angle": angle,
        "second": second,
        "top": top,
        "second_top": second_top,
        "shafts_side": shafts_side if isinstance(shafts_side, str | None) else ", ".join(shafts_side),
        "shafts_top": shafts_top if isinstance(shafts_top, str | None) else ", ".join(shafts_top),
        "phasing": phasing,
        "speed": speed,
        "yokes_out": yokes_out,
    }
    side, above = slopes(shafts_side, "shafts, side view"), slopes(shafts_top, "shafts, top view")
    if above and not side:
        raise InputError(
            "shafts, top view", "joints", "no side view with it", (), "give the slopes in the side view too"
        )
    turning = None if speed is None else read_positive(speed, "rotational speed", "speed")
    given = (("first joint", angle, top), ("second joint", second, second_top))
    out = None if yokes_out is None else read_positive(yokes_out, "angle", "yokes out")
    return judged(Joints(_views(given), views(side, above), phasing, turning, out), asked, data)


def _views(given: Sequence[tuple[str, str | None, str | None]]) -> tuple[View, ...]:
    out = []
    for name, side, top in given:
        if side is None:
            if top is not None:
                raise InputError(
                    top, f"{name}, top view", "no side view with it", (), "give the angle in the side view too"
                )
            continue
        above = None if top is None else angle_of_joint(top, f"{name}, top view")
        out.append(View(angle_of_joint(side, name), above))
    return tuple(out)


def judged(of: Joints, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``joint``, of joints that were read."""
    found = working(of, data)
    doubts = _doubts(of, found, data)
    if doubts:
        return questioned(_title(found), asked, doubts, VERB, data)
    pair = swings(found, data, of.out) if len(found.angles) > 1 and not found.lacks else None
    one = pair.one if pair is not None else one_joint(found.angles[0], data)
    told = [cancels(of, found, pair or Swings(one, one, one), data), usual(found, of.speed, data)]
    rolls = needles_roll(of, found, data)
    told += [rolls] if rolls is not None else []
    decision = _decide(of, found, pair, one, told)
    shown = [*decision.figures, *((pair.good, pair.bad) if pair is not None else ()), one, *found.angles]
    figures = dict.fromkeys(f for f in (*shown, found.planes) if f is not None and f.basis == "derived")
    return Sheet(
        _title(found),
        asked,
        data,
        list(figures),
        [t.check for t in told],
        _cautions(found, one, data),
        drawings(of, found),
        decision=decision,
        questions=[t.question for t in told if t.question is not None],
    )


def _title(found: Working) -> str:
    return "universal joint at " + " and ".join(text_of(a) for a in found.angles)


def _doubts(of: Joints, found: Working, data: Refdata) -> dict[str, str]:
    """Angles that no universal joint works at, of a shaft whose speed was said those that none runs at: key by key."""
    quantity, at = ("working_angle", "") if of.speed is None else ("working_angle_maximum", f" at {of.speed.text}")
    _, most = plausible_range(quantity, data) or (0.0, math.inf)
    out = {}
    for key, angle in zip(("angle", "second"), found.angles, strict=False):
        if base(angle) > most * (1 + 1e-9):
            tenth = f"{units.significant(math.degrees(base(angle)) / 10, 3)} deg"
            said = f"{text_of(angle)}{at} is no usual working angle of a universal joint"
            out["shafts_side" if of.shafts else key] = did_you_mean(said, (tenth,))
    return out


def _cautions(found: Working, one: Figure, data: Refdata) -> list[Caution]:
    out = rule_cautions(data, "universal joints", "speed swing")
    if found.is_taken:
        text = "Both joints are taken to lie in one plane; a joint out of it leaves more swing."
        out.append(Caution(text, "note", (one.id,), "common practice"))
    out += rule_cautions(data, "universal joints", "cancellation", "phasing")
    return out + rule_cautions(data, "driveshaft", "travel")


def _decide(of: Joints, found: Working, pair: Swings | None, one: Figure, told: list[Judged]) -> Decision:
    now = one if pair is None else pair.bad if of.phasing == "wrong phase" else pair.good
    stops = [t for t in told if t.check.stops]
    if stops:
        check = stops[0].check
        allowed = check.required.figure if check.required is not None else None
        shown = Candidate(now, "", "the speed swings by")
        if check.name != CANCELS and allowed is not None:
            shown = Candidate(allowed, "", "required")
        return stop(VERB, [shown], [t.check.name for t in stops], stops[0].do)
    asks = [t for t in told if t.check.asks]
    if not asks:
        return Decision(USE, VERB, (Candidate(now, plus="of its speed"),))
    names = [t.check.name for t in asks]
    do = asks[0].do
    if pair is not None and of.phasing is None:
        worse = Candidate(pair.bad, "the yokes are a quarter turn out", "it vibrates")
        better = Candidate(pair.good, "the yokes stand in line", "this is all that is left")
        return ask(VERB, [worse, better], names, do)
    if pair is None:
        when = "nothing takes it back" if len(found.angles) == 1 else "the second joint takes nothing back"
        swung = [Candidate(one, when, "vibrates as the shaft turns faster")]
        if len(found.angles) == 1 and not found.is_taken and found.angles[0].basis == "derived":
            swung.insert(0, Candidate(found.angles[0], "both its views are as given", "the true angle of this joint"))
        return ask(VERB, swung, names, do)
    check = asks[0].check
    if check.name == SPEED and check.required is not None and check.required.figure is not None:
        return ask(KEPT, [Candidate(check.required.figure, "the angle of each joint", check.reason)], names, do)
    return ask(VERB, [Candidate(pair.good, "it is run as it stands", check.reason)], names, do)
