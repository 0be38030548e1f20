"""Fasteners: what to tighten a thread to, what clamp that gives, and whether thread and engagement hold."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.fasteners import clamp as clamps
from gaugeblock.fasteners import engagement as fastener_threads
from gaugeblock.fasteners import target as torques
from gaugeblock.fasteners.joint import Joint, joint_of
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, refdata


def torque(
    thread: str,
    *,
    grade: str,
    condition: str,
    service: str = "vehicle",
    joint: str = "reused",
    into: str | None = None,
    engagement: str | None = None,
    tapped_strength: str | None = None,
    locknut: str | None = None,
    prevailing: str | None = None,
    maker: tuple[str, str, str] | None = None,
    given: str | None = None,
    wrench: str | None = None,
    adapter: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """What to tighten a thread to, the clamp it gives, and whether bolt and thread stand it.

    Parameters are text as people write them: ``thread`` ``3/8-16`` or ``M10x1.5``; ``grade`` ``SAE J429 5``;
    ``condition`` ``dry``; ``into`` the tapped metal with ``engagement`` the thread length in it (``3/4 in``) and
    ``tapped_strength`` its tensile strength; ``locknut`` a kind of locknut with ``prevailing`` its measured
    run-down torque; ``maker`` the part maker's (torque, source, place), which governs; ``given`` a setting to judge
    backwards; ``wrench`` its graduations (``5 to 80 lbf*ft by 1``); ``adapter`` a crow-foot
    (``2 in on 12 in``, ``2 in on 12 in at 90 deg``).

    Returns a Sheet: the governing tightening torque first (maker's, else published for exactly this grade and
    service, else derived), always the derived one (T = K D F at a stated share of proof), clamp load with its ends,
    share of proof at the lowest friction. With ``given``, the clamp load of that setting comes first, what a crow-foot
    adds and a locknut takes counted.

    Raises LookupMiss with the nearest keys, InputError or UnitError for what cannot be read.
    Source of the method: Shigley's Mechanical Engineering Design, 9th ed., Eq. 8-27 and 8-31.

    >>> torque("3/8-16", grade="SAE J429 5", condition="dry").figures[0].text
    '31'
    """
    data = data or refdata()
    found = joint_of(thread, grade, condition, service, joint, data)
    asked = {
        "thread": thread, "grade": grade, "condition": condition, "service": service, "joint": joint, "into": into,
        "engagement": engagement, "tapped_strength": tapped_strength, "locknut": locknut, "prevailing": prevailing,
        "maker": maker[0] if maker else None, "given": given, "wrench": wrench, "adapter": adapter,
    }  # fmt: skip
    derived = torques.derived_torque(found, data)
    published = found.published if found.published is not None and found.published.basis != "common practice" else None
    stated: list[Figure] = []
    at_thread: list[Figure] = []
    thread_checks: list[Check] = []
    thread_cautions: list[Caution] = []
    if given is not None:
        if wrench is not None:
            why = "a wrench's graduations are for finding a setting, and one is given"
            raise InputError(wrench, "wrench", why, (), "leave out the wrench or the given setting")
        stated = [torques.given_torque(given)]
        if adapter is not None or locknut is not None or prevailing is not None:
            from gaugeblock.fasteners import wrench as wrench_setting

            at_thread, thread_checks, thread_cautions = wrench_setting.at_the_thread(
                stated[0], found, locknut, prevailing, adapter, data
            )
    if maker is not None:
        stated.append(torques.maker_torque(maker))
    torque_figures = _unique(
        [*stated, published, derived, found.published, torques.table_times_multiplier(found, service, joint, data)]
    )
    answer = at_thread[0] if at_thread else torque_figures[0]
    clamp = clamps.clamp_of(answer, found, data)
    share = clamps.share_of(clamp, torques.proof_load_of(derived), found, data) if derived is not None else None
    figures = _unique([clamp, *at_thread, *torque_figures]) if given is not None else [*torque_figures, clamp]
    checks = [clamps.proof_check(share, found, answer), *thread_checks]
    cautions = [*_disagreements(found, data), *_said_once(torque_figures[0], published, found, data), *thread_cautions]
    if share is not None:
        figures.append(share)
    if published is not None and derived is not None:
        apart = clamps.difference(published, derived, found, data)
        figures.append(apart)
        cautions += [c for c in (clamps.far_apart(apart),) if c is not None]
    dry = clamps.dry_here(found, service, joint, data)
    if dry is not None:
        check, caution = clamps.dry_check(answer, dry, given is not None)
        figures.append(dry.share)
        checks.append(check)
        cautions.append(caution)
    if into is not None or engagement is not None or tapped_strength is not None:
        more_figures, more_checks = fastener_threads.engagement_checks(
            found, answer, into, engagement, tapped_strength, data
        )
        figures += more_figures
        checks += more_checks
        cautions += [fastener_threads.cut_caution(f) for f in more_figures if f.quantity == "tightening_torque_maximum"]
    if given is None and (locknut is not None or prevailing is not None or adapter is not None or wrench is not None):
        from gaugeblock.fasteners import wrench as wrench_setting

        more_figures, more_checks, more_cautions = wrench_setting.setting(
            answer, derived, found, locknut, prevailing, wrench, adapter, data
        )
        figures = _unique([*more_figures, *figures])
        checks += more_checks
        cautions += more_cautions
    title = f"{found.thread.cell}, {found.standard} {found.grade}, {found.condition}"
    return Sheet(title, asked, data, figures, checks, cautions)


def _unique(figures: list[Figure | None]) -> list[Figure]:
    """The figures that are there, each once, in order."""
    return list({f.id: f for f in figures if f is not None}.values())


def _said_once(answer: Figure, published: Figure | None, found: Joint, data: Refdata) -> list[Caution]:
    """Cautions on where the torque comes from, and on a grade that is not of this kind of thread."""
    out = []
    if published is None and answer.basis == "derived":
        text = "No published torque for exactly this thread, grade and condition: this one is calculated. The part maker's figure governs."
        out.append(Caution(text, "damage", (answer.id,), "refdata"))
    rules = (
        [r for r in data.statements("fasteners") if r["subject"] == "stainless"] if "stainless" in found.rubs else []
    )
    out += [Caution(r["statement"], r["severity"], (), r["source"] or r["basis"]) for r in rules]
    if found.assumed:
        out.append(Caution(found.assumed, "damage", (found.factor.id,), "assumed"))
    if found.thread.is_metric != found.standard.startswith("ISO") and found.standard.startswith(("ISO", "SAE")):
        kind = "metric" if found.thread.is_metric else "inch"
        text = f"{found.standard} {found.grade} is not a grade of {kind} threads: read the head marking again."
        out.append(Caution(text, "damage", (answer.id,)))
    return out


def _disagreements(found: Joint, data: Refdata) -> tuple[Caution, ...]:
    memo = ("disagreements", found)
    got = data.memo.get(memo)
    if got is None:
        figures = [f for f in (found.published, found.factor, found.proof) if f is not None]
        got = data.memo[memo] = tuple(c for f in figures if (c := _disagreement(f)) is not None)
    return got  # type: ignore[return-value]


def _disagreement(figure: Figure) -> Caution | None:
    apart = lookup.disagreement(figure)
    if apart is None:
        return None
    low, high = (units.significant(v, 3) for v in apart)
    unit = "" if figure.unit == "1" else f" {figure.unit}"
    text = f"Sources disagree on {figure.quantity.replace('_', ' ')}: {low} to {high}{unit}."
    return Caution(text, "note", (figure.id, *(o.id for o in lookup.same_specificity(figure))), "refdata")
