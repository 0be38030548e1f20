"""A preload and a backlash that one line tells together: each is the axle maker's own figure, and is asked alone."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, amount
from gaugeblock.driveline.ask.setups import SETUP
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata

_MOST_LASH = 3  # mm
_LASH = r"(?:of )?(?:back ?)?lash"
_TURNING = (
    r"(?:(?:of )?(?:pinion |bearing )*(?:preload|drag|turning torque|rotating torque)"
    r"|(?:to )?(?:turn|turning|rotating)(?: (?:the )?pinion)?)"
)


def _each_alone(values: dict[str, str], _data: Refdata) -> Open | None:
    """Raises Ambiguous: no figure of either holds for every axle."""
    preload, lash = values["preload"], values["lash"]
    why = (
        "a preload and a backlash are two settings, and each is the axle maker's own figure: neither is right or wrong"
        " by that of another axle"
    )
    do = (
        f'ask each alone, as "pinion preload new bearings {preload}" and "backlash {lash}", and hold it against the'
        " maker's"
    )
    raise Ambiguous(f"{preload} and {lash}", "read as axle set-up, preload and backlash", why, (), do)


BOTH_SET = Topic(
    SETUP.answer,
    SETUP.noun,
    {
        "preload": (
            amount("torque", after=_TURNING, say="preload {}", cue=("preload", "drag", "turn", "rotat")),
            amount(
                "torque",
                before=r"(?:preload|drag)(?: (?:of|is|at|reads?|measures?|set to))*",
                say="preload {}",
                cue=("preload", "drag"),
            ),
        ),
        "lash": (
            amount("length", after=_LASH, say="backlash {}", most=_MOST_LASH, cue=("lash",)),
            amount(
                "length",
                before=rf"{_LASH}(?: (?:of|is|at|reads?|measures?|set to))*",
                say="backlash {}",
                most=_MOST_LASH,
                cue=("lash",),
            ),
        ),
        "ratio": (
            Shaped(
                r"(?P<n>[2-6]\.[0-9]{2})(?= (?:ring|crown|gear|diff|cwp))", lambda m: m["n"], "{} gears", cue=(".",)
            ),
        ),
        **{key: SETUP.slots[key] for key in ("component", "wear", "size")},
    },
    SETUP.signals
    + r"|(?:with(?:out)?|no|not) (?:the )?(?:carrier|crown ?wheel|ring gear|diff|axles|half ?shafts)(?: (?:in|fitted"
    r"|on))?"
    r"|(?:is|are) (?:either|both|any)(?: (?:1|one))?(?: of)?(?: (?:those|these|them|that))?(?: (?:wrong|right|ok|okay"
    r"|off|bad|out))?"
    r"|ring and pinion|cwp|bench|bearings?",
    needs=("preload", "lash"),
    opens=_each_alone,
    asks_for=r"preload|drag|turn(?:ing)?|lash|backlash",
    is_named=True,
    unmoved="metal finish form standard service quality",
)
