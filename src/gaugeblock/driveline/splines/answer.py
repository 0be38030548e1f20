"""The answer ``spline``: the sizes of a spline, and whether it carries a torque by all three checks of its rule."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import Candidate, Decision, ask, stop, use
from gaugeblock.answer.needs import together, unused
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import keys
from gaugeblock.driveline.keys import FIXED, SplineLoad
from gaugeblock.driveline.splines.sizes import Sizes, check_form, teeth_of
from gaugeblock.driveline.splines.strength import SHORT, Strained, strained
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

VERB = "CARRIES"
# What is said of the load of a spline, and says nothing of its sizes.
_OF_LOAD = ("bore", "material", "source", "load", "cycles", "length", "seating")
_NEEDS = {**dict.fromkeys(_OF_LOAD, ("torque",)), **dict.fromkeys(("misalignment", "revolutions"), ("seating",))}
_USUAL = {"pressure_angle": "30 deg", "root": "flat root", "fit": "side fit"}


# The size that is asked for -> what stands before the number, and its quantity.
FACTS = {
    "major diameter": ("MEASURES", "spline_major_diameter_external"),
    "minor diameter": ("AT THE ROOTS", "spline_minor_diameter_external"),
    "pitch diameter": ("PITCH DIAMETER", "spline_pitch_diameter"),
}


def spline(
    pitch: str,
    teeth: str,
    *,
    pressure_angle: str = "30 deg",
    root: str = "flat root",
    fit: str = "side fit",
    torque: str | None = None,
    bore: str | None = None,
    material: str | None = None,
    source: str | None = None,
    load: str | None = None,
    cycles: str | None = None,
    length: str | None = None,
    seating: str | None = None,
    misalignment: str | None = None,
    revolutions: str | None = None,
    fact: str = "major diameter",
    data: Refdata | None = None,
) -> Sheet:
    """Basic sizes of a 30 degree involute spline from its pitch and tooth count.

    Parameters are text as people write them: ``pitch`` ``24/48``; ``teeth`` ``35``; ``root`` ``flat root`` or
    ``fillet root``; ``fit`` ``side fit`` or ``major diameter fit``; ``pressure_angle`` ``30 deg``, the one
    there is. With ``torque`` (and ``bore``) it is judged:
    shear under the roots, shear of the teeth and pressure on their sides. These need ``material``, ``source`` and
    ``load`` of the drive, ``cycles`` of torque, the engaged ``length``, and the ``seating``: ``fixed`` (it cannot
    rock) or
    ``flexible``, which needs its ``misalignment`` (``0.002 in/in``) and the ``revolutions`` that it must last.

    ``fact`` is the size that is asked for: ``major diameter`` of the shaft, ``minor diameter`` or ``pitch diameter``.

    Returns a Sheet: that size first. These are basic sizes, without tolerance or fit.

    Raises InputError for another pressure angle, root or fit than the equations that were read, or a pitch that is
    none.
    Source: ANSI B92.1 basic dimension equations, as reprinted.

    >>> round(spline("24/48", "28").figure("spline_pitch_diameter").typical, 4)
    1.1667
    """
    data = data or refdata()
    asked = {
        "pitch": pitch,
        "teeth": teeth,
        "pressure_angle": pressure_angle,
        "root": root,
        "fit": fit,
        "torque": torque,
        "bore": bore,
        "material": material,
        "source": source,
        "load": load,
        "cycles": cycles,
        "length": length,
        "seating": seating,
        "misalignment": misalignment,
        "revolutions": revolutions,
        "fact": fact,
    }
    if fact not in FACTS:
        raise InputError(fact, "fact", "no size of a spline is called so", tuple(FACTS), "ask for one of these")
    together(asked, _NEEDS)
    cell = data.words("driveline", "pitch").get(" ".join(pitch.split()).casefold(), pitch.strip())
    count = teeth_of(teeth)
    if cell == "parallel side":
        given = {**asked, **{k: None for k, usual in _USUAL.items() if asked[k] == usual}}
        unused(given, ("torque", *_USUAL), "a parallel side spline")
        return _straight(cell, count, asked, data)
    root, fit = check_form(pressure_angle, root, fit, data)
    made = Sizes(cell, count, root, fit, data)
    twist = keys.positive(torque, "torque", "torque")
    load_of = None
    if twist is not None:
        load_of = SplineLoad(
            twist,
            keys.positive(bore, "length", "bore"),
            keys.positive(length, "length", "length"),
            material,
            source,
            load,
            cycles,
            seating,
            misalignment,
            revolutions,
        )
        if load_of.seating == FIXED:
            unused(asked, ("misalignment", "revolutions"), "a spline that cannot rock")
    return judged(made, load_of, asked, data)


def judged(made: Sizes, load: SplineLoad | None, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``spline``, of a spline that was read; ``load`` None for its sizes alone."""
    figures = made.figures()
    title = f"spline {made.key['pitch']}, {made.count} teeth, 30 deg, {made.root}, {made.fit}"
    text = "Basic sizes: tolerance, allowance and the size over pins are not in them."
    cautions = rule_cautions(data, "splines", "computed dimensions")
    cautions.append(Caution(text, "note", (figures[0].id,), "B921"))
    if load is None:
        verb, quantity = FACTS[asked.get("fact") or "major diameter"]
        wanted = next(f for f in figures if f.quantity == quantity)
        figures = [wanted, *(f for f in figures if f is not wanted)]
        do = "Basic size: measure a mating part."
        return Sheet(title, asked, data, figures, [], cautions, decision=use(verb, wanted, do))
    found = strained(made, load, data)
    cautions += rule_cautions(
        data, "splined shaft", "stress checks", "root finish and cold", "fixed and flexible splines"
    )
    cautions += rule_cautions(data, "induction hardening", "case depth")
    decision = _decide(found, data)
    shown = dict.fromkeys((*decision.figures, *figures, *found.figures))
    checks = list(found.checks)
    return Sheet(title, asked, data, list(shown), checks, cautions, decision=decision, questions=found.questions)


def _decide(found: Strained, data: Refdata) -> Decision:
    stops = [c for c in found.checks if c.stops]
    if stops:
        known = [f for f in found.figures if f.quantity == "spline_factor"]
        least = min(known, key=lambda f: f.typical)
        do = "Use a longer or a larger spline, a harder one, or less torque."
        do = f"The spline fails by {SHORT[least.conditions]}. {do}"
        shown = Candidate(least, "times the torque asked of it", "it carries")
        return stop(VERB, [shown], [c.name for c in stops], do)
    asks = [c.name for c in found.checks if c.asks]
    if found.factor is not None:
        times = number_only(found.factor, data)
        said = f"{times} times the torque asked of it, by the least of three: {SHORT[found.factor.conditions]}."
        if not asks:
            return use(VERB, found.factor, said)
        then = f"fails by {SHORT[found.factor.conditions]}"
        candidates = [Candidate(found.factor, "the figures from memory behind it are right", then)]
        return ask(VERB, candidates, asks, "Use a longer or a larger spline, a harder one, or ask the shaft's maker.")
    known = [f for f in found.figures if f.quantity == "spline_factor"]
    do = " ".join(q.text for q in found.questions[:2])
    if known:
        least = min(known, key=lambda f: f.typical)
        then = f"carries {number_only(least, data)} times the torque by {SHORT[least.conditions]}"
        return ask(VERB, [Candidate(least, "the checks that are open give no less", then)], asks, do)
    stress = found.figures[0]
    return ask(VERB, [Candidate(stress, "no factor is counted", "is the bare shear under the roots")], asks, do)


def _straight(cell: str, count: int, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """A straight-sided spline: tooth width over the major diameter, as the table has it."""
    width = lookup.look_up(
        "driveline/splines",
        "tooth_width_to_diameter",
        data=data,
        pitch=cell,
        teeth=str(count),
        pressure_angle="0 deg",
        root="straight",
    )
    cautions = rule_cautions(data, "splines", "computed dimensions")
    do = f"Of the major diameter, over the tops of the shaft's teeth: {width.typical:.3g} in wide on 1 in."
    do += " Recalled, not read: measure a mating part." if width.checked == "memory" else ""
    title = f"straight-sided spline, {count} teeth"
    return Sheet(title, asked, data, [width], [], cautions, decision=use("TOOTH WIDTH", width, do))
