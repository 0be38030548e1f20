"""Fasteners: what to tighten a thread to, what clamp that gives, and whether thread and engagement hold."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Check
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners import clamp, keys, read, said, target, wrench
from gaugeblock.fasteners.bolt import OWN, Own
from gaugeblock.fasteners.decide import decide, judged
from gaugeblock.fasteners.draft import PROOF, Draft
from gaugeblock.fasteners.joint import Joint, joint_of
from gaugeblock.fasteners.way import Way, exact_way, safer_first, table_way
from gaugeblock.fasteners.wrench import settings_of, stages_in_words
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.answer.asking import Topic
    from gaugeblock.fasteners.bolt import Bolt, CrowFoot, Wish
    from gaugeblock.fasteners.maker import Maker
    from gaugeblock.fasteners.wrench import Setting
    from gaugeblock.figure import Figure
    from gaugeblock.job.wrench import WrenchRange

Asked = dict[str, str | None]
UNCONFIRMED = "the maker's figure cannot be confirmed"
_TYPED = (
    *("thread", "grade", "condition", "service", "joint", "into", "insert", "engagement", "tapped_strength"),
    *("locknut", "prevailing", "wanted", "given", *OWN),
)


def _torque_topic() -> Topic:
    from gaugeblock.fasteners.ask import TORQUE

    return TORQUE


@opens(_torque_topic, "thread")
def torque(
    thread: str | None = None,
    *,
    grade: str | None = None,
    condition: str | None = None,
    service: str = "vehicle",
    joint: str = "reused",
    into: str | None = None,
    insert: str | None = None,
    engagement: str | None = None,
    tapped_strength: str | None = None,
    nut_factor: str | None = None,
    preload: str | None = None,
    proof_strength: str | None = None,
    yield_strength: str | None = None,
    tensile_strength: str | None = None,
    grip: str | Mapping[str, str | None] | None = None,
    locknut: str | None = None,
    prevailing: str | None = None,
    maker: str | Mapping[str, str | None] | Sequence[str] | Maker | None = None,
    wanted: str | None = None,
    given: str | None = None,
    wrench: str | WrenchRange | Sequence[str | WrenchRange] | None = None,
    adapter: str | CrowFoot | Mapping[str, str] | None = None,
    confirmed: str | Sequence[str] | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What to tighten a thread to, the clamp it gives, and whether bolt and thread stand it.

    Parameters are text as people write them: ``thread`` ``3/8-16`` or ``M10x1.5``; ``grade`` ``SAE J429 5``;
    ``condition`` ``dry`` (both may be left out where a torque is named); ``service`` ``vehicle``, ``joint`` ``reused``
    or ``permanent``; ``into`` the tapped metal, ``insert`` whether it has a steel thread insert (``yes``, ``no``),
    ``engagement`` the thread length in it (``3/4 in``) and ``tapped_strength`` its tensile strength; ``locknut`` a kind
    of locknut with ``prevailing`` its measured run-down torque; ``nut_factor`` the friction of this lot (``0.16``,
    ``0.16 (0.14 to 0.18) by load cell on 2026-11-20``), ``preload`` the one wanted (``70 %`` of proof, ``5000 lbf``, a
    stretch of ``0.004 in``), ``proof_strength``, ``yield_strength`` and ``tensile_strength`` the bolt's own; ``grip``
    the length that it clamps, or the keys of a job's grip; ``maker`` the part maker's: its torque, (torque, source,
    place), or the keys of a job; it governs; ``wanted`` the torque that you want at the fastener; ``given`` a setting
    to judge backwards; ``wrench`` its graduations (``5 to 80 lbf*ft by 1``), or several to choose from; ``adapter`` a
    crow-foot (``2 in on 12 in``, ``2 in on 12 in at 90 deg``); ``confirmed`` the odd options that were read twice.

    Returns a Sheet with its Decision: the maker's torque, else the one wanted, else the calculated one where friction,
    strength or preload are stated otherwise than in the tables, else the published one for exactly this grade and
    service, else the calculated one (T = K D F at a stated share of proof). With ``given``, the clamp load of
    that setting comes first, what a crow-foot adds and a locknut takes counted.

    Raises LookupMiss with the nearest keys, InputError or UnitError for what cannot be read.
    Source of the method: Shigley's Mechanical Engineering Design, 9th ed., Eq. 8-27 and 8-31.

    >>> torque("3/8-16", grade="SAE J429 5", condition="dry").decision.figure.text
    '31'
    """
    data = data or refdata()
    if given is not None and wrench:
        why = "a wrench's graduations are for finding a setting, and one is given"
        raise InputError(str(wrench), "wrench", why, (), "leave out the wrench or the given setting")
    wish = read.wish(maker, wanted, given, confirmed, data)
    if thread is None and adapter is not None and wish.given is not None:
        from gaugeblock.fasteners.through import through

        return through(adapter, wish.given, data)
    stated_ones = (nut_factor, preload, proof_strength, yield_strength, tensile_strength)
    own, gripped = Own(), None
    if any(stated_ones) or grip is not None:
        from gaugeblock.fasteners.own import read_grip, read_own

        own, gripped = read_own(dict(zip(OWN, stated_ones, strict=True))), read_grip(grip)
    if own.preload is not None and wanted:
        why = "a torque and a preload are wanted, and one follows from the other"
        raise InputError(preload or "", "preload", why, (), "leave out one of the two")
    has_grade, has_condition = grade or own.has_strength, condition or own.nut_factor is not None
    if not (wish.is_named or (has_grade and has_condition)):
        if thread is not None:
            keys.thread(thread, data)  # what is wrong with what is there is said first
        raise read.left_open(thread, bool(has_grade), bool(has_condition), data)
    tools = read.tools(locknut, prevailing, adapter, wrench, data)
    tapped = read.tapped(into, insert, engagement, tapped_strength, data)
    typed = (thread, grade, condition, service, joint, into, insert, engagement, tapped_strength, locknut, prevailing)
    asked: Asked = dict(zip(_TYPED, (*typed, wanted, given, *stated_ones), strict=True))
    try:
        bolt = read.bolt(thread, grade, condition, service, joint, tapped, tools, wish, data)
    except LookupMiss as miss:
        from gaugeblock.fasteners.unknown import is_without_friction, unknown

        if not is_without_friction(miss):
            raise
        bolt = read.bolt(thread, grade, None, service, joint, tapped, tools, wish, data)
        bolt = bolt.replace(rubs=keys.condition_cell(condition or "", data))
        if not (wish.is_named or own.nut_factor is not None):
            return unknown(", ".join(t for t in (thread, grade, condition) if t), miss, asked, data)
    bolt = bolt.replace(own=own, grip=read.grip(gripped, data))
    asked["grip"] = bolt.grip.text if bolt.grip is not None else None
    return answer(bolt, {**asked, **read.asked_of(tools, wish)}, data)


def answer(bolt: Bolt, asked: Asked, data: Refdata) -> Sheet:
    """The Sheet of a Bolt; as ``torque``, of what is read already. What is missing is asked."""
    if bolt.own.is_stated or bolt.grip is not None:
        return _of_stated(bolt, asked, data)
    if bolt.thread is not None and bolt.grade is not None and bolt.condition is not None:
        found = joint_of(bolt.thread, bolt.grade, bolt.condition, bolt.service, bolt.joint, data)
        return _known(bolt, found, asked, Draft(data))
    return _unknown(bolt, asked, data)


def _of_stated(bolt: Bolt, asked: Asked, data: Refdata) -> Sheet:
    """The Sheet of a bolt of which something is stated in place of the tables; what is not plausible is asked."""
    from gaugeblock.fasteners import springs
    from gaugeblock.fasteners.stated import joint_of_bolt
    from gaugeblock.fasteners.unlikely import without_doubts

    draft = Draft(data)
    bolt = without_doubts(bolt, draft)
    found = joint_of_bolt(bolt, data)
    if found is not None:
        draft.figure(*found.beside)
        springs.ask_for_stretch(bolt, draft)
        return _known(bolt, found, asked, draft)
    return _unknown(bolt, asked, data, draft)


# --- a bolt that is known ---------------------------------------------------------------------------------------------


def _known(bolt: Bolt, found: Joint, asked: Asked, draft: Draft) -> Sheet:
    data = draft.data
    calculated = target.calculated_torque(found, data)
    whole = found.table or calculated or found.published
    if bolt.has_typed:
        bolt = _without_doubts(bolt, found, whole, draft)
    draft.caution(*said.read_as(bolt))
    maker = bolt.wish.maker
    if bolt.wish.given is None and maker is not None and not maker.stages.ends_by_torque:
        return _by_stages(bolt, found.title, asked, draft)
    draft.caution(*said.disagreements(found, data))
    if bolt.wish.given is not None:
        return _backwards(bolt, found, bolt.wish.given, asked, draft)
    ways, whose = _ways(bolt, found, whole, draft)
    main = ways[-1].figure
    draft.figure(*_named_figures(bolt.wish, data), found.table, calculated, found.published)
    draft.figure(target.table_times_multiplier(found, data))
    _judge(main, whose, bolt, found, draft)
    draft.caution(*said.said_once(main, found))
    if found.published is not None and calculated is not None and (found.table is not None or found.is_own):
        apart = clamp.difference(found.published, calculated, found, data)
        draft.figure(apart)
        draft.caution(clamp.far_apart(apart, draft.data))
    said.ask_of_maker(bolt.wish, draft)
    outcomes, stages = _set(safer_first(ways) if whose == clamp.MAKER else ways, bolt, draft)
    decision = decide(outcomes, draft, stages)
    first = tuple(f for _, setting in outcomes for f in setting.steps or (setting.figure,))
    return draft.sheet(found.title, asked, decision, first)


def _without_doubts(bolt: Bolt, found: Joint | None, whole: Figure | None, draft: Draft) -> Bolt:
    """The bolt without what is not plausible, which is asked about."""
    from gaugeblock.fasteners import doubt

    doubts = doubt.of_bolt(bolt, found, whole, draft.data)
    for one in doubts:
        draft.check(one.check)
        draft.ask(one.question)
    return doubt.without(bolt, doubts)


def _ways(bolt: Bolt, found: Joint, whole: Figure | None, draft: Draft) -> tuple[list[Way], str]:
    """The torques that may be the one, the safer first, and whose they are."""
    data, tapped = draft.data, bolt.tapped
    named = _named_figures(bolt.wish, data)
    if bolt.wish.maker is not None:
        from gaugeblock.fasteners import turned

        return turned.makers_ways(bolt, named[-1], draft, found.friction.factor), clamp.MAKER
    ceiling = target.ceiling_into(found, tapped.metal, data) if tapped.metal else None
    whose = clamp.WANTED if named or bolt.own.preload is not None else clamp.TABLE
    first = named[0] if named else whole
    if first is None:
        raise LookupMiss(found.title, "tightening torque", "no published source", (), "ask the maker")
    when = UNCONFIRMED if any(q.key.startswith("maker") for q in draft.questions) else ""
    if not named and found.table is None and not found.friction.has_low:
        when = when or _without_low_friction(found, draft)
    way = exact_way(first, when) if named else table_way(first, data, when)
    if not tapped.metal:
        return [way], whose
    from gaugeblock.fasteners import engagement

    if ceiling is None:
        is_for = engagement.check_tables_metal(tapped, draft)
        return [way if is_for or when else way.replace(when=engagement.WHEN_ASKED[tapped.insert])], whose
    draft.figure(ceiling)
    draft.caution(engagement.ceiling_caution(ceiling))
    is_over = base(first) > base(ceiling) * (1 + 1e-9)
    bare = table_way(
        ceiling,
        data,
        f"the thread is cut in the {tapped.metal} itself",
        "no more than this, and two diameters of thread engaged",
    )
    if tapped.insert == "no" and not named and is_over:
        engagement.check_ceiling(ceiling, ceiling, tapped, False, draft)
        return [bare.replace(when="", then="")], whose
    engagement.check_ceiling(first, ceiling, tapped, bool(named), draft)
    if tapped.insert == "" and is_over:
        return [bare, way.replace(when="a steel thread insert is fitted", then="the full torque")], whose
    return [way], whose


def _without_low_friction(found: Joint, draft: Draft) -> str:
    """A calculated torque whose lowest friction no publication gives is asked about: what makes it the one."""
    name = "friction of the threads"
    reason = f"no published torque, and no source gives the lowest nut factor of {found.friction.rubs} threads"
    draft.check(Check(name, CANNOT_TELL, reason, bears=ASK))
    text = "Ask the bolt's maker for its torque, or tighten a few of this lot with a load cell."
    draft.ask(Question(ASK_MAKER, text, "maker.torque", (name,)))
    return "the bolt's maker names no other"


def _named_figures(wish: Wish, data: Refdata) -> list[Figure]:
    """The torque that somebody names as figures: the maker's stages by torque in order, or the one that is wanted."""
    maker = wish.maker
    if maker is not None:
        return [maker.figure(at) for at, stage in enumerate(maker.stages.steps) if stage.is_torque]
    return [] if wish.wanted is None else [stated(wish.wanted, "tightening_torque", "wanted", data)]


def _judge(main: Figure, whose: str, bolt: Bolt, found: Joint, draft: Draft) -> None:
    """What the torque does to bolt and thread: figures, checks, cautions."""
    data = draft.data
    strain = clamp.strain_of(main, found, data)
    draft.figure(strain.clamp)
    proof = clamp.proof_check(strain, found, whose)
    draft.check(proof)
    if bolt.grip is not None:
        from gaugeblock.fasteners import springs

        springs.check(found, strain, bolt.grip, draft)
    draft.figure(*strain.figures, proof.actual.figure if proof.actual is not None else None)
    maker = bolt.wish.maker
    least = target.least_of(found, data)
    if least is not None:
        from gaugeblock.fasteners.least import check_least

        check_least(least, main, whose, bolt, found, draft)
    dry = clamp.dry_here(found, data)
    if dry is None:
        draft.caution(clamp.slippery(proof, strain, whose))
    else:
        is_for = "" if maker is None else bolt.of_threads if main.basis == "derived" else maker.condition
        check, caution = clamp.dry_check(main, dry, whose, is_for)
        draft.figure(dry.share)
        draft.check(check)
        draft.caution(clamp.slippery(proof, strain, whose, dry) or caution)
        if whose == clamp.MAKER and check.asks and maker is not None and not maker.condition:
            text = "Ask the maker whether its torque is for dry threads."
            draft.ask(Question(ASK_MAKER, text, "maker.condition", (check.name,)))
    if bolt.tapped.is_asked:
        from gaugeblock.fasteners import engagement

        engagement.check_threads(found, strain, bolt.tapped, draft)


def _set(ways: Sequence[Way], bolt: Bolt, draft: Draft) -> tuple[list[tuple[Way, Setting]], list[str]]:
    """What to set for each way, and the stages of a maker's tightening in words."""
    thread = bolt.thread.cell if bolt.thread is not None else ""
    outcomes = settings_of(ways, bolt.tools, thread, bolt.service, draft)
    maker = bolt.wish.maker
    is_one = maker is None or (maker.stages.is_plain and not maker.new_bolts)
    return outcomes, [] if is_one else stages_in_words(bolt.wish, bolt.tools, draft)


def _by_stages(bolt: Bolt, title: str, asked: Asked, draft: Draft) -> Sheet:
    """A maker's tightening that ends by an angle or at yield: it stands alone, and no general table beside it."""
    maker = bolt.wish.maker
    assert maker is not None
    figures = [maker.figure(at) for at, stage in enumerate(maker.stages.steps) if stage.low is not None]
    main = [f for f in figures if f.quantity == "tightening_torque"][-1:] or figures[:1]
    when = said.for_other_threads(bolt, draft)
    ways = [exact_way(f, when).replace(plus=maker.stages.after) for f in main]
    said.ask_of_maker(bolt.wish, draft)
    outcomes, stages = _set(ways, bolt, draft)
    draft.figure(*(f for _, setting in outcomes for f in setting.steps or (setting.figure,)), *figures)
    return draft.sheet(title, asked, decide(outcomes, draft, stages))


def _backwards(bolt: Bolt, found: Joint, given: units.Measure, asked: Asked, draft: Draft) -> Sheet:
    """A setting that is given, judged: what reaches the thread, its clamp, and whether bolt and thread stand it."""
    data = draft.data
    setting = stated(given, "tightening_torque", "given", data)
    drag = wrench.drag_of(bolt.tools, data)
    wrench.check_locknut(bolt.tools, found.thread.cell, wrench.bare_size(found.thread.cell), bolt.service, drag, draft)
    at_thread = wrench.at_the_thread(setting, drag, bolt.tools.adapter, data)
    main = at_thread[0] if at_thread else setting
    strain = clamp.strain_of(main, found, data)
    draft.figure(strain.clamp, *at_thread, setting, *_named_figures(bolt.wish, data), found.table)
    draft.figure(target.calculated_torque(found, data), found.published, target.table_times_multiplier(found, data))
    if bolt.tapped.metal:
        from gaugeblock.fasteners import engagement

        ceiling = target.ceiling_into(found, bolt.tapped.metal, data)
        if ceiling is not None:
            draft.figure(ceiling)
            draft.caution(engagement.ceiling_caution(ceiling))
            engagement.check_ceiling(main, ceiling, bolt.tapped, True, draft)
        else:
            engagement.check_tables_metal(bolt.tapped, draft)
    _judge(main, clamp.GIVEN, bolt, found, draft)
    draft.caution(*said.said_once(main, found))
    return draft.sheet(found.title, asked, judged(strain.clamp, setting, draft))


# --- a bolt of which not all is known ---------------------------------------------------------------------------------


def _title(bolt: Bolt) -> str:
    parts = (
        bolt.thread.cell if bolt.thread is not None else "",
        " ".join(bolt.grade) if bolt.grade is not None else "",
        bolt.condition[0] if bolt.condition is not None else "",
    )
    return ", ".join(p for p in parts if p) or "bolt"


def _unknown(bolt: Bolt, asked: Asked, data: Refdata, draft: Draft | None = None) -> Sheet:
    if bolt.wish.is_named:
        return _named_only(bolt, asked, data)
    from gaugeblock.fasteners.lacking import missing

    return missing(bolt, _title(bolt), asked, data, draft)


def _named_only(bolt: Bolt, asked: Asked, data: Refdata) -> Sheet:
    """A torque that somebody names, on a bolt whose thread, grade or condition is not known: set, but not judged."""
    draft = Draft(data)
    bolt = _without_doubts(bolt, None, None, draft)
    draft.caution(*said.read_as(bolt))
    if not bolt.wish.is_named:
        return draft.sheet(_title(bolt), asked, decide((), draft))
    maker = bolt.wish.maker
    if maker is not None and not maker.stages.ends_by_torque:
        return _by_stages(bolt, _title(bolt), asked, draft)
    named = _named_figures(bolt.wish, data)
    lacks = ", ".join(n for n in ("thread", "grade", "condition") if getattr(bolt, n) is None)
    draft.check(Check(PROOF, CANNOT_TELL, f"not judged: {lacks} not given", bears=INFORM))
    said.ask_of_maker(bolt.wish, draft)
    ways = [exact_way(named[-1])]
    if maker is not None:
        from gaugeblock.fasteners import turned

        ways = safer_first(turned.makers_ways(bolt, named[-1], draft))
        if not maker.condition and turned.is_slippery(bolt, data):
            said.ask_of_threads("", bolt.of_threads, "bolt", draft)
    outcomes, stages = _set(ways, bolt, draft)
    draft.figure(*named)
    first = tuple(f for _, setting in outcomes for f in setting.steps or (setting.figure,))
    return draft.sheet(_title(bolt), asked, decide(outcomes, draft, stages), first)
