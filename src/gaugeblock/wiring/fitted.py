"""A fuse that is there already, or that somebody has in mind, beside the largest that its wire allows."""

from __future__ import annotations

from functools import wraps

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import Bound, at_most
from gaugeblock.answer.decision import Candidate, stop
from gaugeblock.answer.making import base, stated
from gaugeblock.answer.printing import printed
from gaugeblock.units import parse_measure
from gaugeblock.wiring import checks, conductor, heat
from gaugeblock.wiring.keys import named, wire_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.units import Measure


def of_fitted(answer: Callable[..., Sheet]) -> Callable[..., Sheet]:
    """The answer ``fuse``, which says too how a fuse that is ``fitted`` lies beside what the wire allows."""

    @wraps(answer)
    def asked(*args: object, fitted: str | None = None, **options: object) -> Sheet:
        sheet = answer(*args, **options)
        return sheet if fitted is None or not options.get("wire") else beside(fitted, sheet)

    return asked


def beside(fitted: str, sheet: Sheet) -> Sheet:
    """The Sheet of the largest fuse of a wire, with what is to be said of the one that is fitted: it stops where that
    is larger than the wire may carry even where it lies coolest.
    """
    most = [base(one) for one in sheet.decision.figures if one.unit == "A"]
    if not most:
        return sheet
    measure = parse_measure(fitted, "current", "fitted")
    amps = measure.to("A")
    stopped = _too_large(measure, sheet)
    if stopped is not None:
        return stopped
    if amps > max(most):
        said = f"A fuse of {fitted} is larger than every one of these: the wire burns before it blows."
    elif amps <= min(most):
        said = f"A fuse of {fitted} is not larger than any of these."
    else:
        said = f"Whether a fuse of {fitted} is too large hangs on which of these it is."
    severity = "injury" if amps > min(most) else "damage"
    return sheet.replace(cautions=(Caution(said, severity, (), "calculated"), *sheet.cautions))


def _too_large(fitted: Measure, sheet: Sheet) -> Sheet | None:
    """The Sheet that stops a fuse which its wire does not stand anywhere; None where it may stand it."""
    data, asked = sheet.data, dict(sheet.asked)
    wire = wire_of(asked.get("wire"))
    assert wire is not None
    size = conductor.size_of(checks.there(wire, data))
    most = heat.most(size, heat.ways_of(heat.Placed(asked, data), data), data)
    rating = stated(fitted, "fuse_rating", "fitted", data)
    said = (
        f"{named(wire)} wire may carry {printed(most, data)} even where it lies coolest, and the fuse is {fitted.text}"
    )
    bounds = Bound(base(rating), "A", "", rating), Bound(base(most), "A", "", most)
    check = at_most("wire stands the fuse that is fitted", *bounds, said, subject="fuse")
    if not check.stops:
        return None
    shown = [Candidate(c.figure, c.when, "at most") for c in sheet.decision.candidates]
    do = f"{said}: the wire burns before it blows. Fit no larger a fuse than its wire stands."
    decision = stop(sheet.decision.verb, shown, (check.name,), do)
    return sheet.replace(decision=decision, checks=(check,), figures=(*sheet.figures, most, rating))
