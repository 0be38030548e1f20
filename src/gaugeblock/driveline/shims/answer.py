"""The answer ``shims``: what to move from side to side for a backlash, or what shim a pinion's mark asks for."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, none, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible, other_readings, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline.shims.change import SHIFT, change, of_another_axle
from gaugeblock.driveline.shims.given import BACKLASH, FACTS, PINION, SIDE, SIGNS, Shims
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.decision import Decision
    from gaugeblock.figure import Figure

MOVE, FIT = "MOVE", "FIT"
DEPTH, TYPED = "what a plus mark means", "as it was typed"


def shims(
    *,
    backlash: str | None = None,
    wanted: str | None = None,
    per_shim: str | None = None,
    move: str | None = None,
    ring_side: str | None = None,
    other_side: str | None = None,
    preload: str | None = None,
    shim: str | None = None,
    old_mark: str | None = None,
    new_mark: str | None = None,
    sign: str | None = None,
    fact: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """Shim arithmetic: backlash moved without changing the preload, or pinion depth by the pinion's mark.

    Parameters are text as people write them. Side bearings: ``backlash`` as it is read, ``wanted`` by the axle maker,
    ``per_shim`` the backlash that one shim thickness moves on this axle (``0.7``), or ``move``, the maker's own shim
    change from the gauge stack; ``ring_side`` and ``other_side`` the packs; ``preload`` added to each side after it.
    Pinion: ``shim`` that is in, or that the depth gauge asks for; ``old_mark`` and ``new_mark`` on the pinions
    (``+2``, thousandths of an inch, hundredths of a millimetre with a shim in mm); ``sign`` ``plus adds`` or
    ``plus takes off``, which makers do not agree on. ``fact`` ``backlash`` asks what a shim that is moved does to it.

    Returns a Sheet: the shim to move or to fit. What an axle does with a shim is measured on it or asked of its maker.

    Raises InputError or UnitError for what cannot be read, or for both at once.
    Source of the method: TM 9-2320-289-34, Tables 6-1 and 6-2.

    >>> sheet = shims(move="0.010 in", ring_side="0.250 in", other_side="0.265 in", preload="0.004 in")
    >>> [f.text or round(f.typical, 3) for f in sheet.figures if f.quantity == "shim_pack"][:2]
    [0.244, 0.279]
    """
    asked = {
        "backlash": backlash,
        "wanted": wanted,
        "per_shim": per_shim,
        "move": move,
        "ring_side": ring_side,
        "other_side": other_side,
        "preload": preload,
        "shim": shim,
        "old_mark": old_mark,
        "new_mark": new_mark,
        "sign": sign,
        "fact": fact,
    }
    if fact not in (None, *FACTS):
        raise InputError(str(fact)[:60], "fact", "nothing of shims is called so", FACTS, "ask for one of these")
    return judged(Shims.read(asked), asked, data or refdata())


def judged(of: Shims, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``shims``, of what was read."""
    doubts = _doubts(of, data)
    if doubts:
        checks = [Check(TYPED, CANNOT_TELL, q.text, subject=q.key, bears=ASK) for q in doubts]
        decision = none(FIT if of.is_pinion else MOVE, doubts[0].text)
        return Sheet(_title(of), asked, data, [], checks, _cautions(of, data), decision=decision, questions=doubts)
    is_change = asked.get("fact") == BACKLASH
    decision, figures, checks, questions = (
        change(of, data) if is_change else _pinion(of, data) if of.is_pinion else _side(of, data)
    )
    cautions = _cautions(of, data)
    listed = dict.fromkeys((*decision.figures, *figures))
    return Sheet(_title(of), asked, data, list(listed), checks, cautions, decision=decision, questions=questions)


def _title(of: Shims) -> str:
    return "pinion shim by the pinion's mark" if of.is_pinion else "side bearing shims"


def _figure(of: Shims, key: str, data: Refdata) -> Figure | None:
    measure = of.get(key)
    return None if measure is None else stated(measure, {**SIDE, **PINION}[key], key.replace("_", " "), data)


def _side(of: Shims, data: Refdata) -> tuple[Decision, list[Figure], list[Check], list[Question]]:
    own = _figure(of, "move", data)
    if own is not None:
        packs = _packs(of, own, -1, data)
        do = f"From the ring gear's side to the other: {_said(packs, data)}"
        return use(MOVE, own, do), packs, [], []
    found, wanted = _figure(of, "backlash", data), _figure(of, "wanted", data)
    if found is None or wanted is None:
        lacks = "backlash" if found is None else "wanted"
        text = (
            "What is the backlash, at the heel of a tooth?" if found is None else "What backlash does the maker want?"
        )
        question = Question(MEASURE if found is None else ASK_MAKER, text, lacks, (SHIFT,))
        check = Check(SHIFT, CANNOT_TELL, f"the {lacks} is not given", bears=ASK)
        return none(MOVE, text), [f for f in (found, wanted) if f is not None], [check], [question]
    apart = base(found) - base(wanted)
    if abs(apart) < _NOTHING:
        return none(MOVE, "The backlash is as wanted: move nothing."), [found, wanted], [], []
    way = 1 if apart > 0 else -1
    per = _figure(of, "per_shim", data)
    if per is not None:
        moved = _moved(found, wanted, per, data)
        packs = _packs(of, moved, way, data)
        return use(MOVE, moved, _do(way, packs, data)), [*packs, found, wanted, per], [], []
    example, ends = of_another_axle(data)
    moves = [_moved(found, wanted, e, data) for e in ends]
    shown = [
        Candidate(m, f"a shim moves {e.text} of itself, as on one truck axle", _way(way))
        for m, e in zip(moves, ends, strict=True)
    ]
    why = "how much backlash a shim moves on this axle is not given; another axle's does not answer"
    check = Check(SHIFT, CANNOT_TELL, why, subject="per shim", bears=ASK)
    text = "How much does the backlash change when a known shim is moved from side to side? Change over shim."
    do = "Move a known shim, read the backlash again, and say what a shim moves: backlash over shim."
    return (
        ask(MOVE, shown, [SHIFT], do),
        [found, wanted, example],
        [check],
        [Question(MEASURE, text, "per_shim", (SHIFT,))],
    )


_NOTHING = 1e-8


def _moved(found: Figure, wanted: Figure, per: Figure, data: Refdata) -> Figure:
    number = units.from_base(abs(base(found) - base(wanted)) / base(per), found.unit)
    key = {"from": _text(found), "to": _text(wanted), "per shim": per.text}
    return derived("shim_move_of_backlash", "shim_move", number, found.unit, (found, wanted, per), data, key=key)


def _text(figure: Figure) -> str:
    return f"{figure.text} {figure.unit}"


def _packs(of: Shims, moved: Figure, way: int, data: Refdata) -> list[Figure]:
    """The two packs as they are fitted: thicker by it on the ring gear's side where ``way`` is 1."""
    preload = _figure(of, "preload", data)
    out = []
    for key, sign in (("ring_side", way), ("other_side", -way)):
        pack = _figure(of, key, data)
        if pack is None:
            continue
        value = base(pack) + sign * base(moved) + (base(preload) if preload is not None else 0.0)
        name = "ring gear's side" if key == "ring_side" else "other side"
        inputs = (pack, moved) if preload is None else (pack, moved, preload)
        rule = "shim_pack_thicker" if sign > 0 else "shim_pack_thinner"
        number = units.from_base(value, pack.unit)
        made = {"side": name, "pack": _text(pack), "moved": moved.text or units.significant(moved.typical)}
        out.append(derived(rule, "shim_pack", number, pack.unit, inputs, data, key=made, conditions=name, about=name))
    return out


def _said(packs: list[Figure], data: Refdata) -> str:
    shown = [f"{f.conditions} {number_only(f, data)}" for f in packs]
    return f"{', '.join(shown)}." if shown else "the preload stays as it was."


def _way(way: int) -> str:
    side = "thicker" if way > 0 else "thinner"
    other = "thinner" if way > 0 else "thicker"
    return f"{side} on the ring gear's side, {other} by the same on the other"


def _do(way: int, packs: list[Figure], data: Refdata) -> str:
    end = f" Fit: {_said(packs, data)}" if packs else " The preload stays as it was."
    return f"{capital(_way(way))}.{end} Read the backlash again."


def _pinion(of: Shims, data: Refdata) -> tuple[Decision, list[Figure], list[Check], list[Question]]:
    shim = _figure(of, "shim", data)
    if shim is None or of.new_mark is None:
        lacks = "shim" if shim is None else "new_mark"
        text = (
            "What shim is in, or does the depth gauge ask for?"
            if shim is None
            else "What is marked on the head of the pinion that goes in: plus, minus, how much?"
        )
        check = Check(DEPTH, CANNOT_TELL, f"the {lacks.replace('_', ' ')} is not given", bears=ASK)
        return none(FIT, text), [shim] if shim is not None else [], [check], [Question(MEASURE, text, lacks, (DEPTH,))]
    by = {sign: _by_mark(of, shim, sign, data) for sign in SIGNS}
    if of.sign is not None:
        return use(FIT, by[of.sign], _marks(shim)), [shim], [], []
    if abs(base(by[SIGNS[0]]) - base(by[SIGNS[1]])) < _NOTHING:
        return use(FIT, by[SIGNS[0]], _marks(shim)), [shim], [], []
    whens = ("a plus mark adds shim on this axle", "a plus mark takes shim off on this axle")
    shown = [Candidate(by[sign], when, "by the axle maker") for sign, when in zip(SIGNS, whens, strict=True)]
    check = Check(DEPTH, CANNOT_TELL, "makers do not agree whether a plus adds shim", subject="sign", bears=ASK)
    text = "Does a plus mark add shim on this axle, or take it off, by its maker?"
    do = "Ask the axle maker what a plus mark means: on some axles it adds shim, on others it takes it off."
    return ask(FIT, shown, [DEPTH], do), [shim], [check], [Question(ASK_MAKER, text, "sign", (DEPTH,))]


def _step(shim: Figure) -> float:
    """What one of a mark is, in m: a thousandth of an inch, a hundredth of a millimetre where the shim is in mm."""
    return units.to_base(0.01, "mm") if shim.unit in ("mm", "cm", "m") else units.to_base(0.001, "in")


def _marks(shim: Figure) -> str:
    unit = "hundredths of a millimetre" if shim.unit in ("mm", "cm", "m") else "thousandths of an inch"
    return f"Marks read as {unit}. Read the pattern before it is closed."


def _by_mark(of: Shims, shim: Figure, sign: str, data: Refdata) -> Figure:
    step = _step(shim)
    old, new = of.old_mark or 0.0, of.new_mark or 0.0
    unit = shim.unit
    marks = [
        stated(
            units.parse_measure(f"{units.from_base(m * step, unit):.9g} {unit}", "length", "mark"),
            "pinion_mark",
            where,
            data,
        )
        for m, where in ((new, "new mark"), (old, "old mark"))
    ]
    way = 1 if sign == SIGNS[0] else -1
    number = units.from_base(base(shim) + way * (new - old) * step, unit)
    rule = "pinion_shim_plus_adds" if way > 0 else "pinion_shim_plus_takes_off"
    key = {"shim": _text(shim), "old": f"{old:+g}", "new": f"{new:+g}", "sign": sign}
    return derived(rule, "shim_pack", number, unit, (shim, *marks), data, key=key)


_WORDS = {
    "wanted": "backlash to set",
    "per_shim": "backlash over shim",
    "move": "shim to move",
    "ring_side": "pack on the ring gear's side",
    "other_side": "pack on the other side",
    "preload": "shim for preload",
    "shim": "pinion shim",
}


def _doubts(of: Shims, data: Refdata) -> list[Question]:
    out = []
    for key, quantity in {**SIDE, **PINION}.items():
        measure = of.get(key)
        if measure is None or is_plausible(measure, quantity, data):
            continue
        low, high = plausible_range(quantity, data) or (0.0, 0.0)
        said = did_you_mean(
            f"{measure.text} is no usual {_WORDS.get(key, key.replace('_', ' '))}", other_readings(measure, low, high)
        )
        out.append(Question(FILL_IN, said, key, (TYPED,)))
    return out


def _cautions(of: Shims, data: Refdata) -> list[Caution]:
    if of.is_pinion:
        return rule_cautions(data, "axle set-up", "pinion mark signs")
    text = "Equal shims from side to side leave the preload alone; a shim on one side only changes it."
    return [
        Caution(text, "damage", (), "TM289 pp. 6-21/6-22"),
        *rule_cautions(data, "axle set-up", "side bearing shims"),
    ]
