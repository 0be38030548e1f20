"""The answer ``mastercylinder``: what another bore of a master cylinder does to the pressure and the pedal."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import USE, Candidate, Decision
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.sheet import Sheet
from gaugeblock.tables.load import Refdata, refdata

VERB = "LINE SEES"
_PERCENT, _HAIR = 100, 1e-6


def mastercylinder(master: str, was: str, *, data: Refdata | None = None) -> Sheet:
    """How many times the pressure of before a master cylinder of another bore gives, by the same foot.

    ``master`` its bore (``7/8 in``) and ``was`` the bore before (``1 in``). The pedal, its ratio and the force on it
    are the same, without a booster.

    Returns a Sheet whose decision is the pressure over the pressure before; the pedal goes so many times as far too.
    Raises InputError or UnitError for what cannot be read. Source: the force is the same, and the pressure goes as one
    over the area of the bore; the fluid moved is the same, and so is its way.

    >>> round(mastercylinder("7/8 in", "1 in").decision.figure.typical, 2)
    1.31
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"master": master, "was": was}
    read = {key: read_positive(text or "", "length", key) for key, text in asked.items()}
    title = f"master cylinder of {read['master'].text}, in place of {read['was'].text}"
    doubts = {
        key: did_you_mean(f"{bore.text} is no usual bore of a master cylinder", ())
        for key, bore in read.items()
        if not is_plausible(bore, "master_bore", data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    now, before = (stated(bore, "master_bore", key, data) for key, bore in read.items())
    number = base(before) ** 2 / base(now) ** 2
    key = {"master": master, "was": was}
    times = derived("pressure_change_of_master", "pressure_change", number, "1", (now, before), data, key=key)
    decision = Decision(USE, VERB, (Candidate(times, plus="times the pressure before"),), (), _said(number))
    return Sheet(title, asked, data, [times, now, before], [], _cautions(number), decision=decision)


def _said(number: float) -> str:
    """What the foot feels, in words."""
    if abs(number - 1) < _HAIR:
        return "Pressure and pedal stay as they were."
    more = abs(number - 1) * _PERCENT
    harder = abs(1 / number - 1) * _PERCENT
    if number > 1:
        return (
            f"By the same foot {more:.0f} % more pressure, or {harder:.0f} % less foot for the same; the pedal goes"
            f" {more:.0f} % further."
        )
    return (
        f"By the same foot {more:.0f} % less pressure, or {harder:.0f} % more foot for the same; the pedal goes"
        f" {more:.0f} % less far."
    )


def _cautions(number: float) -> list[Caution]:
    out = [Caution("Brake work is pressure-tested and checked by another person before the car moves.", "injury")]
    if number > 1:
        text = "The pedal goes further: see that it keeps way enough with one circuit open."
        out.insert(0, Caution(text, "injury", (), "calculated"))
    return out
