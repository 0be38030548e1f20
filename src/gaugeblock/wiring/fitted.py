"""A fuse that is there already, or that somebody has in mind, beside the largest that its wire allows."""

from __future__ import annotations

from functools import wraps

from gaugeblock import units
from gaugeblock.answer.caution import Caution

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def of_fitted(answer: Callable[..., Sheet]) -> Callable[..., Sheet]:
    """The answer ``fuse``, which says too how a fuse that is ``fitted`` lies beside what the wire allows."""

    @wraps(answer)
    def asked(*args: object, fitted: str | None = None, **options: object) -> Sheet:
        sheet = answer(*args, **options)
        return sheet if fitted is None or not options.get("wire") else beside(fitted, sheet)

    return asked


def beside(fitted: str, sheet: Sheet) -> Sheet:
    """The Sheet of the largest fuse of a wire, with what is to be said of the one that is fitted."""
    most = [units.to_base(one.typical, one.unit) for one in sheet.decision.figures if one.unit == "A"]
    if not most:
        return sheet
    number, _, unit = fitted.partition(" ")
    amps = units.to_base(float(units.parse_number(number)), unit)
    if amps > max(most):
        said = f"A fuse of {fitted} is larger than every one of these: the wire burns before it blows."
    elif amps <= min(most):
        said = f"A fuse of {fitted} is not larger than any of these."
    else:
        said = f"Whether a fuse of {fitted} is too large hangs on which of these it is."
    severity = "injury" if amps > min(most) else "damage"
    return sheet.replace(cautions=(Caution(said, severity, (), "calculated"), *sheet.cautions))
