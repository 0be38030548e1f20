"""A hardness that was measured: held against the two that it has to lie between; the scale on which it is wanted."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, always
from gaugeblock.answer.decision import none, use
from gaugeblock.driveline.ask.common import SCALE, SCALES

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.sheet import Sheet

_NUMBER = r"[0-9]{1,3}(?:\.[0-9]+)?"


def _span(match: re.Match[str]) -> str:
    return f"{match['low']} to {match['high']} {SCALES.get(match['scale'], 'HB')}"


HARDNESS_BETWEEN = (
    Shaped(
        rf"(?:between )?(?P<low>{_NUMBER})(?: ?(?:to|-|and) ?)(?P<high>{_NUMBER}) ?(?P<scale>{SCALE})",
        _span,
        "held against {}",
        cue=("to", "and", "-"),
    ),
)

SCALE_WANTED = (
    Shaped(
        rf"(?:in|to|as|into|on|equals?|is|what|which)(?: (?:what|the|in))* (?P<scale>{SCALE})(?: scale)?(?! [0-9])",
        lambda m: SCALES.get(m["scale"], "HB"),
        "wanted in {}",
    ),
    Shaped(
        r"(?:in|to|as|into|on)(?: (?:the|what))* (?P<letter>[bc])[ -]scale",
        lambda m: f"HR{m['letter'].upper()}",
        "wanted in {}",
        cue=("scale",),
    ),
)


# Which strength of a hardness is asked by its name, and the figure that is it; the tensile one stands first anyway.
STRENGTH_WANTED = (
    Shaped(
        r"(?:torsion(?:al)?|shear) yields?(?: (?:strength|stress|point))?"
        r"|yields?(?: (?:strength|stress|point))? in (?:torsion|shear)",
        always("torsional_yield_strength_typical"),
        "torsional yield",
        cue=("torsion", "shear"),
    ),
    Shaped(
        r"yields?(?: (?:strength|stress|point))?", always("yield_strength_typical"), "yield strength", cue=("yield",)
    ),
)


def of_strength(sheet: Sheet, quantity: str) -> Sheet:
    """The Sheet of a hardness, decided on the strength that is asked by its name."""
    own = next((figure for figure in sheet.figures if figure.quantity == quantity), None)
    if own is None:
        what = quantity.removesuffix("_typical").replace("_", " ")
        do = f"No table turns that hardness into a {what}. Have the steel tested."
        return sheet.replace(decision=none("YIELDS NEAR", do))
    verb = "YIELDS, TWISTED, NEAR" if quantity.startswith("torsional") else "YIELDS NEAR"
    figures = sorted(sheet.figures, key=lambda figure: figure is not own)
    do = "A conversion: near enough to judge by, no guarantee."
    return sheet.replace(figures=tuple(figures), decision=use(verb, own, do))


def held_against(sheet: Sheet, number: str, scale: str, within: str) -> Sheet:
    """The Sheet of a hardness, decided on the scale that it has to lie on, and whether it lies there."""
    low, _, rest = within.partition(" to ")
    high, _, wanted = rest.partition(" ")
    if scale == wanted:
        lies = _lies(float(number), float(low), float(high))
        return sheet.replace(decision=sheet.decision.replace(do=f"{number} {scale} {lies} {within}."))
    quantity = f"hardness_{wanted.casefold()}"
    figure = next((one for one in sheet.figures if one.quantity == quantity), None)
    if figure is None:
        do = f"The tables do not turn {number} {scale} into {wanted}. Have it measured in {wanted}."
        return sheet.replace(decision=none("", do))
    lies = _lies(figure.typical, float(low), float(high))
    do = f"That {lies} {within}; a conversion may be off by a point or two."
    figures = sorted(sheet.figures, key=lambda one: one is not figure)
    return sheet.replace(figures=tuple(figures), decision=use("READS", figure, do))


def _lies(value: float, low: float, high: float) -> str:
    low, high = min(low, high), max(low, high)
    return "lies under" if value < low else "lies over" if value > high else "lies within"
