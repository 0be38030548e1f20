"""What is asked of another bore of a master cylinder, as people say it."""

from __future__ import annotations

import re
from itertools import pairwise

from gaugeblock.answer.asking import Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _master() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.master import mastercylinder

    return mastercylinder


# No cylinder is so many inches: it is millimetres, with the unit or without.
_MM = r"(?:1[4-9]|2[0-9]|3[0-2])(?:\.[0-9]+)?(?! ?(?:%|percent|per|in|inch|lbs?|pounds?|kg|kilos?|n|psi|bar|deg|x)\b)"
_BORE = rf"(?P<n>[0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[01]?\.[0-9]+|{_MM}|[12])(?P<unit> ?(?:inch(?:es)?|in|\"|mm))?"
_CYLINDER = r"(?:(?: inch| bore)* (?:brake )?(?:master(?: cylinders?)?|m/?c|one|bore))?(?: bore)?"


def _bore(match: re.Match[str]) -> str:
    is_mm = "mm" in (match["unit"] or "") or re.fullmatch(_MM, match["n"]) is not None
    return f"{match['n']} {'mm' if is_mm else 'in'}"


_FOOT = "foot"
MASTER = Topic(
    _master,
    "another master cylinder",
    {
        "was": (
            Shaped(
                r"(?:from|was|instead of|in place of|replac(?:e|es|ed|ing)|took(?: out| off)?|swap(?:ped|ping)?(?:"
                r" out)?"
                r"|pulled(?: out| off)?|had|off|old|change(?:d)?|over)"
                r"(?: (?:the|my|an?|old|original|stock|its))*(?: (?:brake )?master(?: cylinder)?(?: from)?)?"
                rf" {_BORE}{_CYLINDER}"
                r"(?: (?:off|out))?",
                _bore,
                "in place of {}",
            ),
            Shaped(rf"{_BORE}{_CYLINDER}(?= (?:to|for|and) )", _bore, "in place of {}"),
            Shaped(rf"{_BORE}{_CYLINDER} (?:or|vs?|versus|against)(?: an?)?(?= [0-9.])", _bore, "in place of {}"),
        ),
        "master": (
            Shaped(
                r"(?:to|for|with|now|put|fitted|on|in|went to|up to|down to|new)(?: (?:the|my|an?|new|on|in|back))*"
                rf"(?: (?:brake )?master(?: cylinder)?(?: of)?)? {_BORE}{_CYLINDER}(?: on| in)?",
                _bore,
                "{} now",
            ),
            Shaped(rf"{_BORE}{_CYLINDER}", _bore, "{} now"),
            Shaped(rf"(?:master|m/?c)(?: cylinder)?(?: bore)?(?: of| is| now| to)* {_BORE}", _bore, "{} now"),
        ),
        _FOOT: (  # the shares of it are the same whatever the foot
            amount("force", say="foot {}", cue=("lb", "pound", "kg", "kilo", "newton", " n")),
        ),
    },
    r"(?:what do i )?(?:lose|gain)|changing|going|(?:brake )?master(?: cyl(?:inder)?s?)?|pedal|(?:same|line|brake"
    r"|more|less)? ?(?:line )?pressure|harder"
    r"|easier|softer|firmer"
    r"|how much|what|more|less|push(?:ing)?|foot|same|for|do i get|get|now|leg|effort|on|brakes?"
    r"|bore|size|bigger|smaller|larger|manual|discs?|disks?|drums?|change[sd]?|do|does|to|it"
    r"|will i have to|travel|further|because"
    r"|difference|(?:how much )?(?:heavier|lighter)|force",
    needs=("master", "was"),
    settle=lambda values, _: {key: value for key, value in values.items() if key != _FOOT},
    asks_for=r"master(?: cyl(?:inder)?)?|m/?c",
    is_named=True,
    unmoved="metal finish standard quality",
)


_BIGGER = "bigger"


def _open_bigger(values: dict[str, str], data: Refdata) -> Open:
    """Each master cylinder that shops fit in place of the next smaller one, or of the next bigger one."""
    sizes = [row.cells["case"] for row in data.table("lines/brakes").of("master_bore")]
    pairs = list(pairwise(sizes))
    rows = [{"was": a, "master": b} if values[_BIGGER] == "bigger" else {"was": b, "master": a} for a, b in pairs]
    return ("was", "master"), rows


_OF_A_MASTER = r"(?:brake )?(?:master(?: cyl(?:inder)?)?|m/?c)"
# What a bigger or a smaller one does, of which no size was said.
BIGGER = Topic(
    _master,
    "another master cylinder",
    {
        _BIGGER: (
            Shaped(
                rf"(?:an? )?(?:bigger|larger)(?: bore)?(?: {_OF_A_MASTER})?(?: bore)? or (?:an? )?smaller(?: bore)?"
                rf"(?: one| {_OF_A_MASTER})?(?: bore)?"
                rf"|(?:an? |the )?(?:bigger|larger|fatter|wider)(?: bore)? {_OF_A_MASTER}(?: bore)?"
                rf"|(?:an? |the )?{_OF_A_MASTER}(?: (?:with|of|an?))*(?: bore)? (?:bigger|larger|fatter|wider)"
                r"(?: bore)?",
                always("bigger"),
                "a bigger one",
                cue=("bigger", "larger", "fatter", "wider"),
            ),
            Shaped(
                rf"(?:an? |the )?(?:smaller|narrower)(?: bore)? {_OF_A_MASTER}(?: bore)?"
                rf"|(?:an? |the )?{_OF_A_MASTER}(?: (?:with|of|an?))*(?: bore)? (?:smaller|narrower)(?: bore)?",
                always("smaller"),
                "a smaller one",
                cue=("smaller", "narrower"),
            ),
        ),
    },
    MASTER.signals + r"|mean(?:s)?|make[s]?|gives?|feel|stops?|stopping|power|softer|longer|shorter|travel|way",
    needs=(_BIGGER,),
    opens=_open_bigger,
    settle=lambda values, _: {key: value for key, value in values.items() if key != _BIGGER},
    asks_for=r"(?:bigger|larger|fatter|wider|smaller|narrower)",
    is_named=True,
    unmoved="metal finish standard quality",
)
