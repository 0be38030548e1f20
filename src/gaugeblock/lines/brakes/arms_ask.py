"""What is asked of a hand brake whose lever is told by its two arms: to the grip, and to the cable."""

from __future__ import annotations

from gaugeblock.answer.asking import Topic, amount
from gaugeblock.lines.brakes.hand_ask import HAND

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_PIVOT = r"(?:the |its |my )?pivot(?: (?:pin|bolt|point|shaft))?"
_IS = (
    r"(?: (?:is|are|measures|of|about|at|comes|sits|hooks|hooked|pulls|on|off|out|goes|fixes|fixed|pinned|that|which))*"
)
_HELD = r"(?:grip|handle|hand|where (?:you|i|we|they) (?:hold|grip|pull|grab)(?: it)?|where it is held|button|end)"
_TO_THE_GRIP = (
    rf"(?:(?:long|up|from|of|{_PIVOT}) )*(?:to|at) (?:the |my |its )?(?:(?:middle|centre|center|end) of (?:the |my )?)?"
    rf"{_HELD}(?: from {_PIVOT})?"
)
_GRIP = rf"(?:the |my )?(?:{_HELD})(?: (?:end|centre|center|middle))?"
_CABLE = (
    r"(?:(?:where )?(?:the |my |its |brake )*(?:cables?|clevis|yoke|rod)(?: (?:pin|hole|end|clevis|eye|hook"
    r"|fixing|arm))*)"
)


def _metres(said: str) -> float:
    from gaugeblock import units

    number, _, unit = said.rpartition(" ")
    return units.to_base(float(units.parse_number(number)), unit)


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The ratio of the lever, its long arm over its short one; InputError where the grip is no further out."""
    grip, arm = _metres(values["grip"]), _metres(values["arm"])
    if not 0 < arm < grip:
        from gaugeblock.errors import InputError

        why = f"the grip is not further from the pivot than the cable, {values['arm']}"
        raise InputError(values["grip"], "ratio", why, (), "say both from the pivot: to the grip, and to the cable")
    rest = {key: value for key, value in values.items() if key not in ("grip", "arm")}
    return {**rest, "ratio": f"{grip / arm:.4g}"}


ARMS = Topic(
    HAND.answer,
    "hand brake",
    {
        "force": HAND.slots["force"],
        "grip": (
            amount("length", after=_TO_THE_GRIP, say="{} to the grip"),
            amount("length", before=rf"{_GRIP}{_IS}", after=rf"(?:away )?from {_PIVOT}", say="{} to the grip"),
            amount(
                "length",
                before=rf"(?:from )?{_PIVOT} to {_GRIP}{_IS}",
                say="{} to the grip",
                cue=("pivot",),
            ),
            amount("length", before=rf"{_GRIP}{_IS}", say="{} to the grip", doubt=1, cue=("grip", "handle")),
            amount(
                "length",
                before=r"lever(?: (?:is|of|measures|about|itself|that))*",
                after="(?:long|in all|overall)",
                say="{} to the grip",
                doubt=1,
                cue=("lever",),
            ),
            amount("length", before=r"lever(?: (?:is|of|measures|about|itself))*", say="{} to the grip", doubt=2),
        ),
        "arm": (
            amount(
                "length",
                before=rf"{_CABLE}{_IS}",
                after=rf"(?:up |down |below |above |away |out |behind |ahead )*(?:(?:from|of|off) )?{_PIVOT}",
                say="cable {} from the pivot",
                cue=("pivot",),
            ),
            amount(
                "length",
                before=rf"(?:from )?{_PIVOT} to {_CABLE}{_IS}",
                say="cable {} from the pivot",
                cue=("pivot",),
            ),
            amount(
                "length",
                after=rf"(?:from )?{_PIVOT} to {_CABLE}|to {_CABLE}",
                say="cable {} from the pivot",
                cue=("cable", "clevis", "yoke", "rod"),
            ),
            amount("length", before=rf"{_CABLE}{_IS}", say="cable {} from the pivot", doubt=2, cue=("cable", "clevis")),
        ),
        "cables": HAND.slots["cables"],
        "travel": HAND.slots["travel"],
    },
    HAND.signals + r"|pivot|arms?|long|clevis",
    needs=("force", "grip", "arm"),
    settle=_settle,
    asks_for=HAND.asks_for,
    unmoved="metal finish standard quality",
)
