"""A hollow shaft, a steel that is not hardened and mild steel, as people say them."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Shaped, always
from gaugeblock.driveline.ask.common import treatments
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from gaugeblock.answer.asking import Hit, Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

HOLLOW, SOFT, MILD = "hollow", "soft", "mild steel"
_LEAST_MM = 5  # no shaft has a bore of so many inches
_MOST_DIGITS = 3
_ANY_UNIT = rf"(?P<n>{NUMBER})(?: ?(?P<u>mm|cm|in|inch(?:es)?|\"))?"


def _bore(match: re.Match[str]) -> str | None:
    """A bore with its unit; of one without it what a bore can be."""
    number, unit = match["n"], match["u"]
    if not unit and number.isdigit() and len(number) > _MOST_DIGITS:
        return None  # a steel
    if not unit:
        is_inch = "/" in number or float(number) < _LEAST_MM
        unit = "in" if is_inch else "mm"
    return f"{number} {unit}"


# A hole across a shaft is no bore.
_ALONG = (
    r"(?: (?:right|straight|up|down|through|along|in|the|its|of|it|for))* (?:middle|centre|center|length|end to end"
    r"|core)"
)
BORE_SAID = (
    Shaped(
        rf"(?:with |and )?(?:an? |the )?{_ANY_UNIT} (?:(?:bore|inside(?: dia(?:meter)?)?|i\.?d)(?:{_ALONG})?"
        rf"|hole{_ALONG})",
        _bore,
        "bore {}",
        cue=("bore", "hole", "inside", "id", "i.d"),
    ),
    Shaped(
        rf"(?:gun ?drilled|bored|bore|inside(?: dia(?:meter)?)?)(?: (?:out|to|through|of|is|at|dia))* {_ANY_UNIT}"
        r"(?! ?(?:mm|cm|in|inch|(?:shaft|axle|bar)(?! [0-9])|od|o\.d|outside|hrc|rockwell))(?: (?:hole|bore))?"
        rf"(?:{_ALONG})?",
        _bore,
        "bore {}",
        doubt=1,
        cue=("drilled", "bore", "inside"),
    ),
    Shaped(
        rf"(?:drilled|hole)(?: (?:out|to|through|of|is|at|dia))* {_ANY_UNIT}(?: (?:hole|bore))?{_ALONG}",
        _bore,
        "bore {}",
        doubt=1,
        cue=("drilled", "hole"),
    ),
)
HOLLOW_SAID = (Shaped(r"h[o]llow|bored|gun ?drilled", always("yes"), "hollow", cue=("hollow", "bored", "drilled")),)
# What is done to a steel that hardens it.
_HARDENS = re.compile(r"quench|harden|carburi|aged|nitrid")
SOFT_SAID = (
    Shaped(
        r"un-?(?:hardened|treated|heat[- ]?treated|quenched)|(?:not|never|isn't|isnt|no) (?:been )?(?:hardened"
        r"|heat[- ]?treated|heat[- ]?treatment|heat[- ]?treat|quenched)",
        always("yes"),
        "not hardened",
        cue=("unh", "untr", "unq", "un-", "not", "never", "isn", "no "),
    ),
)
# Steels of so little carbon that they are called mild.
_MILD = ("1008", "1010", "1018", "1022", "1026")
_SHAFTS = frozenset(["axle", "axles", "shaft", "shafts", "halfshaft", "halfshafts", "half-shaft", "half-shafts"])


class _OfShafts(Shaped):
    """A pattern of a line that names a shaft: mild steel is the metal of much else."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """What the pattern matches at this place, where a shaft is named."""
        return () if _SHAFTS.isdisjoint(words) else super().take(words, at, data)


MILD_SAID = (_OfShafts(r"mild(?: steel)?(?: (?:bar|axles?|shafts?))?", always(MILD), "mild steel", cue=("mild",)),)


def no_bore(values: dict[str, str]) -> None:
    """Raises Ambiguous where a shaft is hollow and its bore was not said."""
    if HOLLOW in values and "bore" not in values:
        what = values.get("grade", values.get("material", ""))
        why = "the shaft is hollow and its bore was not said"
        raise Ambiguous("bore", f"read as shaft steel {what}", why, (), 'say its bore too, as "bore 20 mm"')


def said_alone(values: dict[str, str]) -> dict[str, str]:
    """The options without what only says how the others are to be read, and without a temper where there is none."""
    left_out = (HOLLOW, SOFT)
    return {key: value for key, value in values.items() if key not in left_out and (key, value) != ("temper", "any")}


def left_open(of: str, values: dict[str, str], answer: Callable[..., Sheet], data: Refdata) -> Open | None:
    """The treatments of a steel that was named alone, those that do not harden it where it is not hardened; of mild
    steel those of each steel that is called so.
    """
    no_bore(values)
    own = said_alone(values)
    if own.get(of) == MILD:
        rows = [
            {of: steel, **row}
            for steel in _MILD
            for row in (treatments(of, {**own, of: steel}, answer, data) or ((), [{}]))[1]
            if not _HARDENS.search(row.get("treatment", ""))
        ]
        keys = (of, *(key for key in ("treatment", "temper") if any(key in row for row in rows)))
        return keys, [{key: row.get(key, "any") for key in keys} for row in rows]
    left = treatments(of, own, answer, data)
    if SOFT not in values:
        return left
    if "treatment" in values and _HARDENS.search(values["treatment"]):
        why = "it was said to be hardened, and not to be"
        raise Ambiguous(values["treatment"], "treatment", why, (), "say which it is")
    if left is None:
        return None
    return left[0], [row for row in left[1] if not _HARDENS.search(row.get("treatment", ""))]
