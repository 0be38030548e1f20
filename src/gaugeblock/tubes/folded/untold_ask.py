"""What is asked of folded sheet and no table has: a hem, the shortest flange. It is refused by its name."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, always
from gaugeblock.errors import InputError

_HEM = "a hem"
UNTOLD = (
    Shaped(
        r"(?:(?:what(?:'?s| is)?|how) )?(?:the )?(?:min(?:imum)?|shortest|smallest|least|narrowest|how short)"
        r"(?: (?:an?|the|can|of|outside))* (?:flanges?|legs?|lip|upstands?|returns?)(?: (?:length|height"
        r"|width|size))?",
        always("the shortest flange"),
        cue=("flange", "leg", "lip", "upstand", "return"),
    ),
    Shaped(r"(?:closed |open |safe |rolled )?hem(?:med|ming)?", always(_HEM), cue=("hem",)),
)
_HANGS_ON = {
    "the shortest flange": (
        "it hangs on the opening of the bottom die, and no table has it",
        "ask the maker of the brake or its die",
    ),
    _HEM: (
        "it is flattened on itself in a second stroke, and no table has what it takes",
        "fold a test strip and measure it",
    ),
}


def refuse_untold(values: dict[str, str]) -> None:
    """InputError that says on what it hangs; a hem that is told by its radius is a bend like any other."""
    what = values.get("untold", "")
    if what and not (what == _HEM and "radius" in values):
        why, do = _HANGS_ON[what]
        raise InputError(what, "fact", why, (), do)
