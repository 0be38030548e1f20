"""How the way of a torque from the tyre is said: the weight on a wheel, the grip of its tyre, the radius that it rolls
on.
"""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, always, amount
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

_WHEEL = (
    r"(?:(?:the|that|this|one|each|a|my|every) )*(?:(?:rear|back|front|driven|driving|outside|inside)"
    r" )*(?:wheels?|tires?|tyres?)"
)
_GRIP = r"(?:mu|grip|friction|coefficient|coefficient of friction|friction coefficient)"
_TALL = r"(?P<n>[2-4][0-9](?:\.[0-9]+)?)"
_WHEELS = ("wheel", "tyre", "tire")
GRIPPING: dict[str, tuple[Reader, ...]] = {
    "wheel_load": (
        amount(
            "mass",
            after=rf"(?:(?:weight|load) )?(?:on|over|per) {_WHEEL}|(?:a|each|every) wheel",
            say="{} on the wheel",
            cue=_WHEELS,
        ),
        amount(
            "mass",
            before=rf"{_WHEEL}(?: (?:has|got|carries|carrying|with|load|weight|of|is|sees))*",
            after="on (?:it|that|top)",
            say="{} on the wheel",
            cue=_WHEELS,
        ),
        amount("mass", before=r"wheel (?:load|weight)(?: (?:of|is))?", say="{} on the wheel", cue=_WHEELS),
        amount("mass", after=r"wheel (?:load|weight)", say="{} on the wheel", cue=_WHEELS),
    ),
    "grip": (
        Shaped(
            rf"{_GRIP}(?: (?:say|of|is|about|at|around|maybe))* (?P<n>[01]?\.[0-9]+|[12])(?! ?(?:in|mm|lb|kg))",
            lambda m: m["n"],
            "grip {}",
            cue=("mu", "grip", "friction", "coefficient"),
        ),
        Shaped(
            rf"(?P<n>[01]?\.[0-9]+) {_GRIP}", lambda m: m["n"], "grip {}", cue=("mu", "grip", "friction", "coefficient")
        ),
    ),
    "radius": (
        amount(
            "length",
            before=r"(?:rolling |loaded |tyre |tire )*radius(?: (?:of|is|about))*",
            say="radius {}",
            cue=("radius",),
        ),
        amount("length", after=r"(?:rolling |loaded |tyre |tire )*radius", say="radius {}", cue=("radius",)),
    ),
    "tyre": (
        Shaped(
            rf"{_TALL} ?(?:inch|in|\")? (?:tall )?(?:tires?|tyres?)",
            lambda m: f"{m['n']} in",
            "tyre {}",
            cue=("tire", "tyre"),
        ),
        Shaped(rf"{_TALL}'?s(?= |$)", lambda m: f"{m['n']} in", "tyre {}", doubt=1),
    ),
    "lifted": (
        Shaped(
            r"(?:the )?other(?: (?:one|wheel|tyre|tire|side))?(?: (?:is|was|up|hanging|off|clear|lifted|in|of|the))*"
            r" (?:air|ground|up|lifted)|(?:one|1) (?:wheel|tyre|tire) (?:up )?in the air",
            always("yes"),
            "the other wheel in the air",
            cue=("other", "air"),
        ),
    ),
}


def with_radius(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The options with half of the tyre's height as its radius, which is a little more than it has under load.

    Raises Ambiguous where the weight on a wheel was said alone: the torque hangs on the radius too.
    """
    tyre = values.get("tyre")
    own = {key: value for key, value in values.items() if key != "tyre"}
    if tyre is not None and "radius" not in own:
        own["radius"] = f"{float(tyre.removesuffix(' in')) / 2:g} in"
    if "wheel_load" in own and "radius" not in own and "engine_torque" not in own:
        raise Ambiguous(
            "tyre",
            f"read as axle shaft, {own['wheel_load']} on the wheel",
            "the torque at which a tyre lets go is weight times grip times radius, and the radius was not said",
            (),
            'say the tyre or its rolling radius, as "31 inch tyre" or "radius 0.35 m", and the grip if you know it',
        )
    return own
