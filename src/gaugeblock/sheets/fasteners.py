"""Fasteners: what to tighten a thread to, what clamp that gives, and whether thread and engagement hold."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import InputError
from gaugeblock.figure import Figure
from gaugeblock.sheets import fastener_threads
from gaugeblock.sheets.fastener_joint import Joint, joint_of
from gaugeblock.sheets.printing import number_only
from gaugeblock.sheets.sheet import CANNOT_TELL, NOT_OK, OK, Bound, Caution, Check, Sheet, at_most
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
    share of proof at the lowest friction. With ``given``, the clamp load of that setting comes first.

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
    derived = _derived_torque(found, data)
    typed = _stated(maker, given)
    habit = found.published if found.published is not None and found.published.basis == "common practice" else None
    answer = typed or (found.published if habit is None else None) or derived
    clamp = _clamp(answer, found, data)
    share = _share(clamp, derived, found, data)
    figures = [answer]
    if answer is not derived:
        figures.append(derived)
    if habit is not None and typed is None:
        figures.append(habit)
    table = _table_times_multiplier(found, service, joint, data)
    if table is not None:
        figures.append(table)
    if typed is not None and found.published is not None:
        figures.insert(1, found.published)
    if given is not None and maker is None:
        figures = [clamp, *figures, share]
    else:
        figures += [clamp, share]
    published = found.published
    if published is not None and habit is None:
        figures.append(_difference(published, derived, found, data))
    checks = [_proof_check(clamp, share, found)]
    cautions = _cautions(answer, found, data)
    dry = _dry_check(answer, found, service, joint, data)
    if dry is not None:
        checks.append(dry[0])
        cautions.append(dry[1])
    if into is not None or engagement is not None:
        more_figures, more_checks = fastener_threads.engagement_checks(found, into, engagement, tapped_strength, data)
        figures += more_figures
        checks += more_checks
    if locknut is not None or prevailing is not None or adapter is not None or wrench is not None:
        more_figures, more_checks, more_cautions = _setting(
            answer, derived, found, locknut, prevailing, wrench, adapter, data
        )
        figures += more_figures
        checks += more_checks
        cautions += more_cautions
    title = f"{found.thread.cell}, {found.standard} {found.grade}, {found.condition}"
    return Sheet(title, asked, data, figures, checks, cautions)


def _derived_torque(found: Joint, data: Refdata) -> Figure:
    memo = ("derived torque", found)
    got = data.memo.get(memo)
    if got is not None:
        return got  # type: ignore[return-value]
    area = units.to_base(found.area.typical, found.area.unit)
    diameter = units.to_base(found.diameter.typical, found.diameter.unit)
    proof_n = area * units.to_base(found.proof.typical, found.proof.unit)
    preload_n = found.share.typical * proof_n
    force, unit = ("N", "N*m") if found.thread.is_metric else ("lbf", "lbf*ft")
    proof_load = Figure(
        found.id("proof_load_from_area", "proof_load", data), "proof_load", units.from_base(proof_n, force), force, side="min",
        basis="derived", rule=data.rule("proof_load_from_area"), inputs=(found.proof, found.area), since=data.release, key=found.key,
    )  # fmt: skip
    preload = Figure(
        found.id("preload_share_of_proof", "preload", data), "preload", units.from_base(preload_n, force), force, side="target",
        basis="derived", rule=data.rule("preload_share_of_proof"), inputs=(found.share, proof_load), since=data.release,
        key=found.key,
    )  # fmt: skip
    low, target, high = calc.torque_window(
        found.factor_low, found.factor.typical, found.factor_high, diameter, preload_n, proof_n
    )
    spread_inputs = lookup.same_specificity(found.factor) if found.scatter is None else (found.scatter,)
    got = Figure(
        found.id("torque_from_preload", "tightening_torque", data), "tightening_torque", units.from_base(target, unit), unit,
        low=units.from_base(low, unit), high=units.from_base(high, unit), side="target", basis="derived",
        rule=data.rule("torque_from_preload"), inputs=(found.factor, found.diameter, preload), since=data.release, key=found.key,
        conditions=f"{found.share.typical:.0%} of proof; nut factor {found.factor_low:.3g} to {found.factor_high:.3g}",
        note="window: enough preload at the lowest friction, never past proof at the lowest friction; spread from "
        + ", ".join(dict.fromkeys(_named(f) for f in (found.factor, *spread_inputs))),
    )  # fmt: skip
    data.memo[memo] = got
    return got


def _named(figure: Figure) -> str:
    """The source of a figure with how weak it is."""
    return f"{figure.source or figure.basis}{' from memory' if figure.checked == 'memory' else ''}"


def _table_times_multiplier(found: Joint, service: str, joint: str, data: Refdata) -> Figure | None:
    """The published dry torque times a published multiplier for this condition; None where either is missing."""
    if found.condition == "dry":
        return None
    memo = ("multiplied", found, service, joint)
    if memo in data.memo:
        return data.memo[memo]  # type: ignore[return-value]
    data.memo[memo] = None
    factor = lookup.look_up_or_none(
        "fasteners/torque_multipliers",
        "torque_multiplier",
        data=data,
        condition=found.condition,
        base="dry",
        service=service,
    )
    dry = joint_of(found.thread.cell, f"{found.standard} {found.grade}", "dry", service, joint, data).published
    if factor is None or dry is None:
        return None
    got = data.memo[memo] = Figure(
        found.id("table_torque_multiplied", "tightening_torque", data), "tightening_torque", dry.typical * factor.typical, dry.unit,
        side="target", basis="derived", rule=data.rule("table_torque_multiplied"), inputs=(dry, factor), since=data.release,
        key=found.key, conditions=f"the published dry torque times {factor.text}",
    )  # fmt: skip
    return got


def _stated(maker: tuple[str, str, str] | None, given: str | None) -> Figure | None:
    """The maker's figure, else the setting to judge, as a Figure; None when neither was given."""
    if maker is not None:
        measure = units.parse_measure(maker[0], "torque", "maker's torque")
        return Figure(
            f"job:maker:{maker[1]}:{maker[0]}:tightening_torque", "tightening_torque", float(measure.value), measure.unit, side="target",
            basis="maker", checked="primary", source=maker[1], locator=maker[2], chosen_by="maker's figure", text=measure.text.split(" ")[0],
        )  # fmt: skip
    if given is None:
        return None
    measure = units.parse_measure(given, "torque", "--given")
    _positive(measure, "--given")
    return Figure(
        f"asked:given:{given}:tightening_torque", "tightening_torque", float(measure.value), measure.unit, side="target",
        basis="measured", checked="primary", source="as asked", locator="given setting", chosen_by="as asked",
        text=measure.text.rsplit(" ", 1)[0],
    )  # fmt: skip


def _positive(measure: units.Measure, where: str) -> None:
    if measure.value <= 0:
        raise InputError(measure.text, where, "must be more than zero", (), "give the size itself")


def _clamp(answer: Figure, found: Joint, data: Refdata) -> Figure:
    torque_nm = units.to_base(answer.typical, answer.unit)
    diameter = units.to_base(found.diameter.typical, found.diameter.unit)
    unit = "N" if found.thread.is_metric else "lbf"
    scale = float(units.factor(unit))
    return Figure(
        found.id("preload_from_torque", "clamp_load", data) + f"<{answer.text or 'target'}", "clamp_load",
        calc.preload_from_torque(torque_nm, found.factor.typical, diameter) / scale, unit,
        low=calc.preload_from_torque(torque_nm, found.factor_high, diameter) / scale,
        high=calc.preload_from_torque(torque_nm, found.factor_low, diameter) / scale,
        basis="derived", rule=data.rule("torque_from_preload"), inputs=(answer, found.factor, found.diameter), since=data.release,
        key=found.key, conditions="low and high: at the highest and the lowest friction",
    )  # fmt: skip


def _share(clamp: Figure, derived: Figure, found: Joint, data: Refdata) -> Figure:
    proof_load = derived.inputs[2].inputs[1]
    proof = proof_load.typical
    low, high = clamp.low or 0.0, clamp.high or 0.0
    return Figure(
        found.id("share_of_proof", "share_of_proof", data), "share_of_proof", clamp.typical / proof * 100, "%", low=low / proof * 100,
        high=high / proof * 100, basis="derived", rule=data.rule("share_of_proof"), inputs=(clamp, proof_load), since=data.release,
        key=found.key, conditions="high: at the lowest friction",
    )  # fmt: skip


def _difference(published: Figure, derived: Figure, found: Joint, data: Refdata) -> Figure:
    ratio = units.to_base(published.typical, published.unit) / units.to_base(derived.typical, derived.unit) - 1
    return Figure(
        found.id("relative_difference", "torque_difference", data), "torque_difference", ratio * 100, "%", basis="derived",
        rule=data.rule("relative_difference"), inputs=(published, derived), since=data.release, key=found.key,
    )  # fmt: skip


def _proof_check(clamp: Figure, share: Figure, found: Joint) -> Check:
    """Clamp at the lowest friction within the proof load; ``cannot tell`` when only a lesser row says it is not."""
    high = share.high or 0.0
    own = share.typical * found.factor.typical / found.factor_own_low
    check = at_most(
        "clamp at low friction within proof", Bound(high, "%", figure=share), Bound(100.0, "%", figure=clamp), ""
    )
    ends = (
        f"{share.low:.0f} to {high:.0f} % of proof over nut factors {found.factor_high:.3g} to {found.factor_low:.3g}"
    )
    if check.result == OK:
        check.reason = ends
    elif own <= 100:
        strict = min(
            lookup.same_specificity(found.factor) or (found.factor,),
            key=lambda f: f.low if f.low is not None else f.typical,
        )
        who = _named(strict)
        if found.scatter is not None:
            who = f"tool scatter of {found.scatter.typical:g} %, {found.scatter.source}"
        check.result = CANNOT_TELL
        check.reason = (
            f"{share.low:.0f} to {high:.0f} % of proof: past it only at the lowest friction known "
            f"(nut factor {found.factor_low:.3g}, {who}); measure this lot's friction, or go lower"
        )
    else:
        check.reason = f"{ends}: the bolt may stretch for good; use less torque or measure the friction"
    return check


def _dry_on(found: Joint, service: str, joint: str, data: Refdata) -> tuple[Figure, float, float, str]:
    """The dry figure, it in N m, the share of proof it gives here at the lowest friction, and that in words."""
    memo = ("dry on", found, service, joint)
    got = data.memo.get(memo)
    if got is not None:
        return got  # type: ignore[return-value]
    dry = joint_of(found.thread.cell, f"{found.standard} {found.grade}", "dry", service, joint, data)
    dry_figure = dry.published or _derived_torque(dry, data)
    dry_nm = units.to_base(dry_figure.typical, dry_figure.unit)
    proof_n = units.to_base(found.area.typical, found.area.unit) * units.to_base(found.proof.typical, found.proof.unit)
    diameter = units.to_base(found.diameter.typical, found.diameter.unit)
    typical = calc.preload_from_torque(dry_nm, found.factor.typical, diameter) / proof_n * 100
    highest = calc.preload_from_torque(dry_nm, found.factor_low, diameter) / proof_n * 100
    text = f"the dry figure, {number_only(dry_figure, data)}, on {found.condition} threads: {typical:.0f} % of proof, {highest:.0f} % at the lowest friction"
    got = data.memo[memo] = (dry_figure, dry_nm, highest, text)
    return got


def _dry_check(answer: Figure, found: Joint, service: str, joint: str, data: Refdata) -> tuple[Check, Caution] | None:
    """What the dry figure would do on this condition; not ok when the figure in use is as high as the dry one and passes proof."""
    if found.condition == "dry":
        return None
    dry_figure, dry_nm, highest, text = _dry_on(found, service, joint, data)
    used = units.to_base(answer.typical, answer.unit)
    bad = used >= dry_nm * (1 - 1e-9) and highest > 100 and answer.basis in ("maker", "measured")
    name = "dry figure kept off this condition"
    actual = Bound(highest, "%", figure=dry_figure)
    if bad:
        reason = f"this setting is as high as the dry figure; {text}"
        check = Check(
            name, NOT_OK if answer.basis == "measured" else CANNOT_TELL, reason, Bound(100.0, "%", "max"), actual
        )
    else:
        check = Check(name, OK, f"not used here; {text}", Bound(100.0, "%", "max"), actual)
    severity = "injury" if highest > 100 else "note"
    return check, Caution(f"Do not use the dry torque here: {text}.", severity, (dry_figure.id,), "calculated")


def _cautions(answer: Figure, found: Joint, data: Refdata) -> list[Caution]:
    out = list(_disagreements(found, data))
    if answer.basis == "derived":
        text = "No published torque for exactly this thread, grade and condition: this one is calculated. The part maker's figure governs."
        out.append(Caution(text, "damage", (answer.id,), "refdata"))
    return out


def _disagreements(found: Joint, data: Refdata) -> tuple[Caution, ...]:
    memo = ("disagreements", found)
    got = data.memo.get(memo)
    if got is not None:
        return got  # type: ignore[return-value]
    out = []
    for figure in (found.published, found.factor, found.proof):
        apart = lookup.disagreement(figure) if figure is not None else None
        if figure is not None and apart is not None:
            low, high = (units.significant(v, 3) for v in apart)
            out.append(
                Caution(
                    f"Sources disagree on {figure.quantity.replace('_', ' ')}: {low} to {high} {figure.unit}.".replace(
                        " 1.", "."
                    ),
                    "note",
                    (figure.id, *(o.id for o in lookup.same_specificity(figure))),
                    "refdata",
                )
            )
    done = data.memo[memo] = tuple(out)
    return done


def _setting(
    answer: Figure,
    derived: Figure,
    found: Joint,
    locknut: str | None,
    prevailing: str | None,
    wrench: str | None,
    adapter: str | None,
    data: Refdata,
) -> tuple[list[Figure], list[Check], list[Caution]]:
    """What the wrench is set to: prevailing torque added, the adapter counted, on a graduation inside the window."""
    from gaugeblock.sheets import wrench_setting

    return wrench_setting.setting(answer, derived, found, locknut, prevailing, wrench, adapter, data)
