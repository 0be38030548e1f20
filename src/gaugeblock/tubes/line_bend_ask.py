"""What is asked of the bend of a brake or a fuel line, as people say it: bent by hand, and nobody says its wall."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.tubes.said import answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_MOST_OF_A_LINE = 13  # mm across: more is a tube that goes on a die
# The usual wall of a small steel line; the habit of a hand bender hangs on the diameter alone.
_WALL = ".028 in"


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Bent by hand, of the metal that was said or of steel."""
    found = {key: value for key, value in values.items() if key != "line"}
    return {"wall": _WALL, "material": "steel", "method": "hand", **found}


def topic() -> Topic:
    """The least radius of a small line that is bent by hand."""
    return Topic(
        lambda: answer_in("bend.sheet", "bend"),
        "bend of a line",
        {
            "od": (
                amount("length", bare="in", say="{} line", most=_MOST_OF_A_LINE),
                amount("length", after="(?:od|outside)", bare="in", say="{} line", most=_MOST_OF_A_LINE),
            ),
            "line": (
                Shaped(
                    r"(?:(?:hard|rigid|metal|brake|fuel|clutch|hydraulic|transmission|cooler|oil) )+(?:lines?|pipes?"
                    r"|tub(?:e|es|ing))",
                    always("line"),
                    "bent by hand",
                ),
            ),
            "material": (
                Shaped(r"(?:cupro[- ]?nickel|copper[- ]nickel|nickel[- ]copper)", always("copper-nickel"), "{}"),
                Shaped(r"stainless(?: steel)?", always("stainless steel"), "{}"),
                Shaped(r"steel", always("steel"), "{}", doubt=1),
            ),
        },
        r"(?:smallest |least |min(?:imum)? |tightest )?(?:bend(?:ing)? )?radius|bend(?:s|ing)?"
        r"|how (?:tight|sharp)(?:ly)?"
        r"|tight|least|min(?:imum)?|can|be|bent|without (?:a )?kink(?:ing)?|by hand|of|for",
        needs=("od", "line"),
        settle=_settle,
        asks_for=r"bend(?:ing)? radius|radius|how (?:tight|sharp)\w*\b.*\b(?:bend|bent)|bend\b.*\bhow (?:tight|sharp)",
        is_named=True,
        unmoved="state service quality",
    )
