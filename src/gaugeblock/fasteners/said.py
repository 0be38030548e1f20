"""What an answer on a bolt says besides: how a thread was read, where a torque comes from, sources that disagree."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Check
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, Question
from gaugeblock.fasteners.draft import CONDITION

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.bolt import Bolt, Wish
    from gaugeblock.fasteners.draft import Draft
    from gaugeblock.fasteners.joint import Joint
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata


def ask_of_threads(of_maker: str, here: str, what: str, draft: Draft) -> None:
    """The maker's figure is for other threads than these, or he does not say so: one torque then clamps otherwise."""
    if of_maker:
        reason = f"the maker's figure is for {threads(of_maker)}, and these are {threads(here)}"
        text, key = (
            f"Ask the {what}'s maker for the torque of {threads(here)}, or use {threads(of_maker)}.",
            "maker.torque",
        )
    else:
        reason = f"the maker's figure does not say that it is for {threads(here)}, which clamp otherwise"
        text, key = f"Ask the maker whether its torque is for {threads(here)}.", "maker.condition"
    draft.check(Check(CONDITION, CANNOT_TELL, reason, bears=ASK))
    draft.ask(Question(ASK_MAKER, text, key, (CONDITION,)))


def for_other_threads(bolt: Bolt, draft: Draft) -> str:
    """Ask where the maker's figure is for other threads than these; the condition that makes it the one, else blank."""
    maker, here = bolt.wish.maker, bolt.of_threads
    if maker is None or not here or maker.condition in ("", here):
        return ""
    ask_of_threads(maker.condition, here, "bolt", draft)
    return threads_are(maker.condition)


def threads(condition: str) -> str:
    """Threads in a condition, in words.

    >>> threads("oiled"), threads("thread-locking liquid")
    ('oiled threads', 'threads with thread-locking liquid')
    """
    return f"{condition} threads" if condition.endswith(_OF_A_STATE) else f"threads with {condition}"


def threads_are(condition: str) -> str:
    """What makes a figure for a condition the one, in words; blank for no condition."""
    if not condition:
        return ""
    return f"the threads are {condition}" if condition.endswith(_OF_A_STATE) else f"the threads have {condition}"


_OF_A_STATE = ("dry", "ed", "less")  # what ends a word that says how a thread is


def ask_of_maker(wish: Wish, draft: Draft) -> None:
    """The paper and the place of a maker's figure, where they are not named. The figure stands without them."""
    maker = wish.maker
    if maker is None:
        return
    from gaugeblock.fasteners.maker import NO_PAGE, NO_SOURCE

    if maker.source and maker.place:
        return
    name = "where the maker's figure stands"
    what, key = ("which paper and page", "maker.source") if not maker.source else ("which page", "maker.place")
    draft.check(Check(name, CANNOT_TELL, NO_PAGE if maker.source else NO_SOURCE, bears=INFORM))
    draft.ask(Question(FILL_IN, f"Say {what} the maker's figure stands in.", key, (name,)))


def read_as(bolt: Bolt) -> list[Caution]:
    if bolt.thread is None or not bolt.thread.read_as:
        return []
    return [Caution(f"{bolt.thread.read_as}.", "note")]


def said_once(main: Figure, found: Joint) -> list[Caution]:
    """Cautions on where the torque comes from."""
    out = []
    if main.basis == "derived" and found.is_own:
        text = (
            f"This torque is worked out from what is stated ({found.key['stated']}). The part maker's figure governs."
        )
        out.append(Caution(text, "damage", (main.id,), "as given"))
    elif main.basis == "derived" and found.table is None:
        text = (
            "No published torque for exactly this thread, grade and condition: this one is calculated. The "
            "part maker's figure governs."
        )
        out.append(Caution(text, "damage", (main.id,), "refdata"))
    return out


def disagreements(found: Joint, data: Refdata) -> tuple[Caution, ...]:
    memo = ("disagreements", found.key)
    got = data._memo.get(memo) if found.is_kept else _disagreements(found, data)
    if got is None:
        got = data._memo[memo] = _disagreements(found, data)
    return got  # type: ignore[return-value]


def _disagreements(found: Joint, data: Refdata) -> tuple[Caution, ...]:
    friction = found.friction
    figures = [f for f in (found.published, friction.factor, found.proof) if f is not None]
    out = [c for f in figures if (c := _disagreement(f)) is not None]
    subjects = ["stainless"] if "stainless" in friction.rubs else []
    if any("12.9" in cell for cell in found.key.values()) and "plated" in found.key.get("condition", ""):
        subjects.append("plated bolts of class 12.9")
    rules = [r for r in data.statements("fasteners") if r["subject"] in subjects] if subjects else []
    out += [Caution(r["statement"], r["severity"], (), r["source"] or r["basis"]) for r in rules]
    if friction.assumed:
        out.append(Caution(friction.assumed, "damage", (friction.factor.id,), "assumed"))
    return tuple(out)


def _disagreement(figure: Figure) -> Caution | None:
    apart = lookup.disagreement(figure)
    if apart is None:
        return None
    low, high = (units.significant(v, 3) for v in apart)
    unit = "" if figure.unit == "1" else f" {figure.unit}"
    text = f"Sources disagree on {figure.quantity.replace('_', ' ')}: {low} to {high}{unit}."
    return Caution(text, "note", (figure.id, *(o.id for o in lookup.same_specificity(figure))), "refdata")
