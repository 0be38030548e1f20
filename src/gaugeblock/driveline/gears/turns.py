"""The answer ``turns``: the ratio of an axle whose cover stays on, by turning a wheel and counting the shaft."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, plausible_range
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.units import parse_measure

VERB = "AXLE RATIO"
ONE, BOTH = "one", "both"
_DO = "Turn the wheel ten times and divide by ten: it is truer."
_HOW = "which wheels turned"
_WHENS = {
    ONE: "one wheel turned and the other was held, differential open",
    BOTH: "both wheels turned together, or the differential is locked",
}


def turns(shaft: str, *, wheel: str = "1", turned: str | None = None, data: Refdata | None = None) -> Sheet:
    """The axle ratio by counting: how often the propeller shaft turned for so many turns of the wheel.

    ``shaft`` how often the shaft turned (``1.9``), ``wheel`` how often the wheel did (``1``); ``turned`` ``one`` where
    the other one stood still on an open differential, ``both`` where both turned.

    Returns a Sheet; both ratios where it was not said which wheels turned. Raises InputError for what cannot be read.
    Source: an open differential turns at the mean of its wheels, so one wheel alone counts for half.

    >>> turns("1.9", turned="one").decision.figure.typical
    3.8
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"shaft": shaft, "wheel": wheel, "turned": turned}
    if turned not in (None, ONE, BOTH):
        raise InputError(str(turned)[:60], "turned", "not one or both", (ONE, BOTH), "say which turned")
    read = {key: parse_measure(f"{str(asked[key]).strip()} 1", "ratio", key) for key in ("shaft", "wheel")}
    for key, measure in read.items():
        if measure.value <= 0:
            raise InputError(str(asked[key]), key, "not over zero", (), "count the turns")
    given = [stated(read[key], "turns_counted", key, data) for key in ("shaft", "wheel")]
    title = f"axle ratio: {shaft} turns of the shaft for {wheel} of the wheel"
    span = plausible_range("axle_ratio", data)
    found = {}
    for which in [turned] if turned else [ONE, BOTH]:
        number = base(given[0]) / base(given[1]) * (2 if which == ONE else 1)
        if span is None or span[0] <= number <= span[1]:
            rule = "ratio_of_turns_one_wheel" if which == ONE else "ratio_of_turns"
            found[which] = derived(rule, "axle_ratio", number, "1", given, data, key={"turned": which})
    if not found:
        said = did_you_mean(f"{shaft} turns of the shaft for {wheel} of the wheel is no axle ratio", ())
        return questioned(title, asked, {"shaft": said}, VERB, data)
    if len(found) == 1:
        (which,) = found
        return Sheet(
            title,
            asked,
            data,
            [*found.values(), *given],
            [],
            (),
            decision=use(VERB, found[which], f"{capital(_WHENS[which])}. {_DO}"),
        )
    text = "Did both wheels turn, or one alone while the other was held?"
    check = Check(_HOW, CANNOT_TELL, "not given", subject="turned", bears=ASK)
    candidates = [Candidate(figure, _WHENS[which]) for which, figure in found.items()]
    question = Question(FILL_IN, text, "turned", (_HOW,))
    decision = ask(VERB, candidates, (_HOW,), f"{text} {_DO}")
    return Sheet(title, asked, data, [*found.values(), *given], [check], (), decision=decision, questions=[question])
