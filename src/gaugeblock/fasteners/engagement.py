"""Whether the tapped thread holds: the manuals' ceiling, length of engagement, and both threads against the clamp."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, NOT_OK, OK, STOP, Bound, Check
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.printing import number_only
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.fasteners import stripping
from gaugeblock.fasteners.bolt import Tapped
from gaugeblock.fasteners.clamp import Strain
from gaugeblock.fasteners.draft import LENGTH, Draft
from gaugeblock.fasteners.joint import Joint
from gaugeblock.fasteners.stripping import BRITTLE
from gaugeblock.figure import Figure

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.fasteners.keys import Thread
    from gaugeblock.tables.load import Refdata
    from gaugeblock.value import Keys

SHORT = "one diameter engaged"


def ceiling_name(metal: str) -> str:
    """The name of the check on the manuals' ceiling."""
    return f"torque into {metal}"


# What makes a table's torque the one in a metal that the tables are not for, by what is known of an insert.
WHEN_ASKED = {"": "a steel thread insert is fitted", "no": "the part's maker says the same"}


def check_tables_metal(tapped: Tapped, draft: Draft) -> bool:
    """Whether the general tables, which are for steel nuts, hold for the tapped metal; asked where no source says so.

    A metal whose engagement a source lengthens by an addend is softer than those that the tables are for.
    """
    name, metal = ceiling_name(tapped.metal), tapped.metal
    addend = lookup.look_up_or_none(
        "fasteners/engagement", "engagement_addend", data=draft.data, into=metal, load="normal"
    )
    if addend is None or tapped.insert == "yes":
        return True
    reason = f"general tables are for steel nuts, and no published torque for threads in {metal} was found"
    draft.check(Check(name, CANNOT_TELL, reason, bears=ASK))
    if tapped.insert == "":
        text = f"Say whether the hole in the {metal} has a steel thread insert."
        draft.ask(Question(FILL_IN, text, "insert", (name,)))
    draft.ask(Question(ASK_MAKER, f"Ask the part's maker for its torque into {metal}.", "maker.torque", (name,)))
    return False


def check_ceiling(torque: Figure, ceiling: Figure, tapped: Tapped, is_set: bool, draft: Draft) -> None:
    """Whether a torque keeps the manuals' ceiling for a tapped metal without a steel insert.

    ``is_set`` says that the torque is one that somebody names; else the answer takes the ceiling into account itself.
    """
    name, limit = ceiling_name(tapped.metal), number_only(ceiling, draft.data)
    got = units.from_base(base(torque), ceiling.unit)
    bounds = (Bound(ceiling.typical, ceiling.unit, "max", ceiling), Bound(got, ceiling.unit, figure=torque))
    if tapped.insert == "yes":
        draft.check(
            Check(name, OK, "a steel thread insert takes the thread: the manuals' cut does not apply", bears=INFORM)
        )
        return
    over = got > ceiling.typical * (1 + 1e-9)
    reason = f"into {tapped.metal}: no more than {limit} unless the thread has a steel insert"
    if not over:
        draft.check(Check(name, OK, reason, *bounds, bears=STOP if is_set else INFORM))
    elif tapped.insert == "no":
        draft.check(Check(name, NOT_OK, reason, *bounds, bears=STOP))
    else:
        draft.check(Check(name, CANNOT_TELL, reason, *bounds, bears=ASK))
        text = f"Say whether the hole in the {tapped.metal} has a steel thread insert."
        draft.ask(Question(FILL_IN, text, "insert", (name,)))


def ceiling_caution(ceiling: Figure) -> Caution:
    """The published cut of a table's torque for a tapped metal, as a caution."""
    factor = ceiling.inputs[1]
    text = (
        f"General tables are for steel nuts: {factor.key['condition']} they are cut to {factor.text} or "
        "less unless the thread has an insert."
    )
    return Caution(text, "damage", (ceiling.id, factor.id), factor.source)


def check_threads(found: Joint, strain: Strain, tapped: Tapped, draft: Draft) -> None:
    """Figures, checks and questions of what the thread goes into."""
    if not tapped.metal and tapped.strength is not None:
        stripping.check(found, strain, tapped, draft)
        return
    if not tapped.metal:
        draft.check(Check(LENGTH, CANNOT_TELL, "the tapped metal is not given", bears=INFORM))
        draft.ask(Question(FILL_IN, "Say what metal the thread goes into.", "into", (LENGTH,)))
        return
    _check_length(found, tapped, draft)
    _check_short(found, tapped, draft)
    if tapped.insert != "yes" and (tapped.engagement is not None or tapped.strength is not None):
        stripping.check(found, strain, tapped, draft)


# --- length -----------------------------------------------------------------------------------------------------------


def minimums(metal: str, data: Refdata) -> list[Figure]:
    """The rules for a tapped metal, the shortest length first."""
    least = lookup.look_up_or_none("fasteners/engagement", "engagement_minimum", data=data, into=metal, load="normal")
    if least is None:
        return []
    lost = (o for o in least.others if o.chosen_by not in ("standing", "service"))
    return sorted((least, *lost), key=lambda f: f.typical)


def ends(by_length: Mapping[Figure, Figure], data: Refdata) -> tuple[Figure, Figure]:
    """The shortest length that a rule asks, and the one that governs: the longest where its rule is one for bolts."""
    shortest, longest = min(by_length, key=base), max(by_length, key=base)
    return shortest, longest if is_stop(by_length[longest], data) else shortest


def _check_length(found: Joint, tapped: Tapped, draft: Draft) -> None:
    """Engaged length against the rules. A rule printed for studs informs a bolt; that of capscrews can stop it."""
    rules = minimums(tapped.metal, draft.data)
    if tapped.insert == "yes":
        draft.check(Check(LENGTH, OK, "the insert holds the thread: its maker says how long it must be", bears=INFORM))
        return
    if not rules:
        draft.check(Check(LENGTH, CANNOT_TELL, f"no published minimum for {tapped.metal}: ask the maker", bears=INFORM))
        return
    by_length = {needed(rule, found.thread, found.diameter, found.key, draft.data): rule for rule in rules}
    shortest, governing = ends(by_length, draft.data)
    draft.figure(governing)
    if tapped.engagement is None:
        reason = f"{number_only(governing, draft.data)} or more is needed in {tapped.metal}"
        draft.check(Check(LENGTH, CANNOT_TELL, reason, stripping.bound(governing), bears=INFORM))
        text = (
            f"Measure the thread length engaged: {number_only(governing, draft.data)} or more is needed in "
            f"{tapped.metal}."
        )
        draft.ask(Question(MEASURE, text, "engagement", (LENGTH,)))
        return
    given = stated(tapped.engagement, "length_of_engagement", "engagement", draft.data)
    draft.figure(given)
    got = units.from_base(base(given), governing.unit)
    says = (
        f"{tapped.engagement} engaged; {number_only(governing, draft.data)} needed in {tapped.metal} "
        f"({_rule(by_length[governing])})"
    )
    bounds = (
        stripping.bound(governing),
        Bound(got, governing.unit, figure=given),
        (got - governing.typical) / governing.typical,
    )
    if got >= governing.typical * (1 - 1e-9):
        draft.check(
            Check(LENGTH, OK, says, *bounds, bears=STOP if is_stop(by_length[governing], draft.data) else INFORM)
        )
    elif not is_stop(by_length[governing], draft.data):
        draft.check(Check(LENGTH, NOT_OK, f"{says}: a rule for studs, for information", *bounds, bears=INFORM))
    elif got >= base_in(shortest, governing.unit) * (1 - 1e-9):
        reason = f"{says}; {_rule(by_length[shortest])} asks {number_only(shortest, draft.data)}"
        draft.check(Check(LENGTH, CANNOT_TELL, reason, *bounds, bears=ASK))
        draft.ask(Question(MEASURE, "Engage more thread, or ask the maker of the part.", "engagement", (LENGTH,)))
    else:
        draft.check(Check(LENGTH, NOT_OK, says, *bounds, bears=STOP))


def _check_short(found: Joint, tapped: Tapped, draft: Draft) -> None:
    """Less than one diameter engaged is asked about: no nut is much thinner, and the rules for studs are longer still.

    Common practice, so it can only ask. A tapped metal whose strength is stated is judged by the clamp instead.
    """
    if tapped.engagement is None or (tapped.strength is not None and tapped.metal not in BRITTLE):
        return
    share = tapped.engagement.to("m") / base(found.diameter)
    if share >= 1 - 1e-9:
        return
    one = number_only(found.diameter, draft.data)
    reason = f"{tapped.engagement} is {share:.2g} of the thread's diameter; shops engage {one} or more"
    draft.check(Check(SHORT, CANNOT_TELL, reason, bears=ASK))
    what = "the insert" if tapped.insert == "yes" else f"the {tapped.metal}"
    text = f"Engage one diameter, {one}, or more in {what}"
    text += "." if tapped.metal in BRITTLE or tapped.insert == "yes" else "; or state the strength of the tapped metal."
    draft.ask(Question(MEASURE, text, "engagement", (SHORT,)))


def base_in(figure: Figure, unit: str) -> float:
    """A figure's typical number in ``unit``."""
    return units.from_base(base(figure), unit)


def is_stop(rule: Figure, data: Refdata) -> bool:
    """Whether a rule is one for bolts: printed with the cut of a bolt's torque. A textbook's for studs informs."""
    metal = rule.key["into"]
    cut = lookup.look_up_or_none(
        "fasteners/torque_multipliers", "torque_multiplier", data=data, condition=f"into {metal}", base="dry"
    )
    return cut is not None and rule.source in {f.source for f in (cut, *cut.others)}


def _rule(rule: Figure) -> str:
    return f"{rule.typical:g} diameters, {rule.source or 'habit'}"


def needed(minimum: Figure, thread: Thread, diameter: Figure, key: Keys, data: Refdata) -> Figure:
    """Minimum length of engagement: diameters times the diameter, with the addend where the source prints one."""
    unit = "mm" if thread.is_metric else "in"
    length = minimum.typical * base(diameter)
    inputs = [minimum, diameter]
    metal, load = minimum.key["into"], minimum.key["load"]
    addend = None
    if load != "any":
        addend = lookup.look_up_or_none("fasteners/engagement", "engagement_addend", data=data, into=metal, load=load)
    if addend is not None and addend.source == minimum.source:
        length += base(addend)
        inputs.append(addend)
    return derived(
        "engagement_length",
        "length_of_engagement",
        units.from_base(length, unit),
        unit,
        inputs,
        data,
        about=f"{metal} {minimum.source}",
        side="min",
        key=key,
        conditions=f"minimum in {metal}{' by a rule for studs' if 'stud' in minimum.conditions else ''}",
    )
