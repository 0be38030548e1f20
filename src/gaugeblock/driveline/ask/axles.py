"""What is asked of an axle shaft, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known
from gaugeblock.driveline.ask.common import HALF_SHAFT, HARDNESS_SAID, SHEAR, answer_of
from gaugeblock.driveline.ask.grip import GRIPPING, with_radius
from gaugeblock.driveline.ask.shaft_said import MILD_SAID, SOFT, SOFT_SAID, left_open, said_alone

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _open_axle(values: dict[str, str], data: Refdata) -> Open | None:
    """The same of an axle shaft."""
    if "material" not in values:
        return None
    return left_open("material", with_radius(values, data), answer_of("axles.answer", "axle"), data)


def _settle_axle(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """The options with the radius of the tyre; of a shaft whose hardness was measured the treatment matters no more."""
    own = said_alone(with_radius(values, data))
    if "hardness" in own and own.get("treatment") == "through hardened":  # its hardness says how hard
        own = {key: value for key, value in own.items() if key != "treatment"}
    if "hardness" in own and "material" in own and "treatment" not in own:
        treated = "quenched and tempered"
        rows = data.table("driveline/steels").rows
        if any(row["steel"] == own["material"] and row["treatment"] == treated for row in rows):
            return {**own, "treatment": treated}
        return {key: value for key, value in own.items() if key != "material"}
    return own


# An axle is geared between these: a number so said of one is no thickness.
_USUAL_RATIO = r"[2-6]\.[0-9]{1,2}"
_MOST_SHAFT = 60  # mm
_LOW_BOX = r"(?:low[- ]range|low box|transfer(?: (?:case|box))?(?: low)?|reduction box)"
# What makes the number before it the axle's, unless its own number follows: 4.10 diff, and not 2.5 axle ratio 4.1.
_OWN_NUMBER = r"(?! (?:(?:end|drive|ratio|gears?) )*(?:of |is )?[1-9])"
_OF_AXLE = rf"(?:to (?:1|one) )?(?:diff|axle|rear|final|ring|gears?|ratio){_OWN_NUMBER}"
AXLE = Topic(
    lambda: answer_of("axles.answer", "axle"),
    "axle shaft",
    {
        "material": (
            Named(words_of("driveline", "steel", "driveline/steels"), tail="steel|shafts?|axles?"),
            *MILD_SAID,
        ),
        SOFT: SOFT_SAID,
        "treatment": (Named(words_of("driveline", "treatment", "driveline/steels")),),
        "temper": (
            amount("temperature", before=r"(?:tempered|drawn)(?: at| to)?", bare="degF", say="tempered at {}"),
            amount("temperature", after="temper", say="tempered at {}"),
            amount("temperature", before="at", say="tempered at {}", doubt=2),
            amount("temperature", say="tempered at {}", doubt=3),
        ),
        "diameter": (
            amount(  # a number over that is a ratio
                "length",
                after=r"(?:axle(?: shafts?)?|shafts?|dia(?:meter)?|thick)",
                bare="in",
                say="shaft {}",
                most=_MOST_SHAFT,
            ),
            amount("length", say="shaft {}", doubt=2),
        ),
        "length": (amount("length", after="long", say="{} long"),),
        "engine_torque": (
            amount("torque", after=r"(?:engine|motor|of torque|torque)", say="engine {}"),
            amount("torque", say="engine {}", doubt=1),
        ),
        "gear": (
            Shaped(
                rf"(?P<n>{NUMBER})(?: to (?:1|one))? (?:first(?: gear)?|1st(?: gear)?|low(?: gear)?(?! (?:range"
                rf"|box|ratio)))(?!(?: gear)?(?: of| is)? [1-9]\.[0-9]+(?![0-9])(?! {_OF_AXLE}))",
                lambda m: m["n"],
                "first gear {}",
            ),
            Shaped(
                rf"(?:first|1st|low)(?: gear)?(?: of| is)? (?P<n>{NUMBER})(?: to (?:1"
                rf"|one))?(?! {_LOW_BOX})(?! {_OF_AXLE})",
                lambda m: m["n"],
                "first gear {}",
            ),
        ),
        "ratio": (
            Shaped(
                r"(?P<n>[0-9]\.[0-9]{1,2})(?: to 1)? (?:gears?|ratio|rear(?: end)?|final(?: drive)?|axle ratio|diff)",
                lambda m: m["n"],
                "axle ratio {}",
            ),
            Shaped(rf"(?P<n>{_USUAL_RATIO})'?s", lambda m: m["n"], "axle ratio {}"),
            Shaped(
                rf"(?P<n>{_USUAL_RATIO})(?= (?:first|1st|low)(?: gear)?(?: of| is)? [1-9])",
                lambda m: m["n"],
                "axle ratio {}",
                cue=("first", "1st", "low"),
            ),
            Shaped(rf"(?P<n>{_USUAL_RATIO})(?: to 1)? axle(?! ?shafts?)", lambda m: m["n"], "axle ratio {}"),
            Shaped(
                r"(?:axle|rear(?: end)?|diff(?:erential)?|final(?: drive)?|ring and pinion)(?: ratio)?(?: (?:is"
                r"|of|has|at|an?))*"
                rf" (?P<n>{_USUAL_RATIO})(?: to 1)?(?! ?(?:in|inch|inches|mm|\"|dia(?:meter)?|thick|round|shaft))",
                lambda m: m["n"],
                "axle ratio {}",
            ),
        ),
        "transfer": (
            Shaped(
                rf"(?P<n>{NUMBER})(?: to (?:1|one))? {_LOW_BOX}",
                lambda m: m["n"],
                "low range {}",
                cue=("low", "transfer"),
            ),
            Shaped(
                rf"{_LOW_BOX}(?: (?:of|is))? (?P<n>{NUMBER})(?: to (?:1|one))?",
                lambda m: m["n"],
                "low range {}",
                cue=("low", "transfer"),
            ),
        ),
        "differential": (
            Shaped("open(?: diff(?:erential)?)?", always("open"), "open differential"),
            Shaped(r"shared?s?(?: it)? even(?:ly)?", always("open"), "open differential"),
            Shaped(
                "(?:locked|spools?|welded|lockers?)(?: diff(?:erential)?s?)?", always("locked"), "locked differential"
            ),
            Shaped(
                "(?:limited[- ]slip|lsd)(?: diff(?:erential)?)?",
                always("limited slip"),
                "limited slip differential",
            ),
        ),
        "hardness": HARDNESS_SAID,
        "yield_strength": known("stress", "yields?(?: stress)?", "yield {}", cue=("yield",)),
        "shear_modulus": known("stress", SHEAR, "shear modulus {}", cue=("shear", "rigid", "torsion")),
        **GRIPPING,
        "converter": (Shaped("manual|no converter|clutch", always("none"), "no converter"),),
    },
    r"(?:at|across|over|on|in) (?:the |its )?(?:spline )?(?:roots?|bottoms?)(?: of (?:the )?splines?)?|spline roots?|"
    rf"(?:the |my |both |two |2 )*{HALF_SHAFT}|(?:stock|standard|original|factory) (?:half ?shafts?|axles?)"
    r"|axles|diesel"
    r"|crawlers?|(?:will|does|do|can|how much)(?: it| an?| my| the)?|axle|shafts?|holds?|takes?|carry"
    r"|snap(?:s|ping|ped)?|break(?:s|ing)?|twist(?:s|ing)?|each|side"
    r"|see(?:s|ing)?|get|survive|live|behind|engine|motor|torque|strong|enough",
    needs=("engine_torque",),
    settle=_settle_axle,
    table="axles",
    asks_for=r"engine|motor|gears?|first|1st|low|behind|diff\w*|lsd|locker|spool|final|ratio|converter|clutch|hp",
    is_named=True,  # a torque alone is of anything
    opens=_open_axle,
    unmoved="finish standard",
)
# The same by the tyre alone, where nobody said what the engine makes.
GRIP = Topic(
    AXLE.answer,
    AXLE.noun,
    {key: AXLE.slots[key] for key in ("material", "treatment", "temper", "diameter", *GRIPPING, "hardness")},
    AXLE.signals
    + r"|(?:tyre |tire |most |max(?:imum)? |greatest )?(?:grip )?torque|(?:tyre|tire) grip|most|max(?:imum)?"
    r"|rear|front"
    r"|wheels?|tyres?|tires?|hold|say",
    needs=("wheel_load",),
    settle=_settle_axle,
    opens=_open_axle,
    asks_for=r"axles?|shafts?|half ?shafts?|grip|mu|torque|traction",
    is_named=True,
    unmoved="finish standard",
)
