"""What is asked of an axle shaft, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known
from gaugeblock.driveline.ask.common import HALF_SHAFT, HARDNESS_SAID, SHEAR, answer_of, treatments

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _open_axle(values: dict[str, str], data: Refdata) -> Open | None:
    """The same of an axle shaft."""
    return treatments("material", values, answer_of("axles.answer", "axle"), data) if "material" in values else None


# An axle is geared between these: a number so said of one is no thickness.
_USUAL_RATIO = r"[2-6]\.[0-9]{1,2}"
_MOST_SHAFT = 60  # mm
AXLE = Topic(
    lambda: answer_of("axles.answer", "axle"),
    "axle shaft",
    {
        "material": (Named(words_of("driveline", "steel", "driveline/steels"), tail="steel|shafts?|axles?"),),
        "treatment": (Named(words_of("driveline", "treatment", "driveline/steels")),),
        "temper": (amount("temperature", before=r"(?:tempered|drawn)(?: at| to)?", bare="degF", say="tempered at {}"),),
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
                rf"(?P<n>{NUMBER})(?: to 1)? (?:first(?: gear)?|1st(?: gear)?|low(?: gear)?)",
                lambda m: m["n"],
                "first gear {}",
            ),
            Shaped(
                rf"(?:first|1st|low)(?: gear)?(?: of| is)? (?P<n>{NUMBER})(?: to 1)?",
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
            Shaped(rf"(?P<n>{_USUAL_RATIO})(?: to 1)? axle(?! ?shafts?)", lambda m: m["n"], "axle ratio {}"),
            Shaped(
                r"(?:axle|rear(?: end)?|diff(?:erential)?|final(?: drive)?|ring and pinion)(?: ratio)?(?: (?:is"
                r"|of|has|at|an?))*"
                rf" (?P<n>{_USUAL_RATIO})(?: to 1)?(?! ?(?:in|inch|inches|mm|\"|dia(?:meter)?|thick|round|shaft))",
                lambda m: m["n"],
                "axle ratio {}",
            ),
        ),
        "differential": (
            Shaped("open(?: diff(?:erential)?)?", always("open"), "open differential"),
            Shaped(r"shared?s?(?: it)? even(?:ly)?", always("open"), "open differential"),
            Shaped("(?:locked|spool|welded|locker)(?: diff(?:erential)?)?", always("locked"), "locked differential"),
            Shaped(
                "(?:limited[- ]slip|lsd)(?: diff(?:erential)?)?",
                always("limited slip"),
                "limited slip differential",
            ),
        ),
        "hardness": HARDNESS_SAID,
        "yield_strength": known("stress", "yields?(?: stress)?", "yield {}", cue=("yield",)),
        "shear_modulus": known("stress", SHEAR, "shear modulus {}", cue=("shear", "rigid", "torsion")),
        "wheel_load": (
            amount("mass", after="(?:on (?:the|that|one|each) (?:wheel|tire|tyre))", say="{} on the wheel"),
        ),
        "converter": (Shaped("manual|no converter|clutch", always("none"), "no converter"),),
    },
    rf"{HALF_SHAFT}|(?:will|does|do|can|how much)(?: it| an?| my| the)?|axle|shafts?|holds?|takes?|carry"
    r"|snap(?:s|ping|ped)?|break(?:s|ing)?|twist(?:s|ing)?|each|side"
    r"|see(?:s|ing)?|get|survive|live|behind|engine|motor|torque|strong|enough",
    needs=("engine_torque",),
    table="axles",
    asks_for=r"engine|motor|gears?|first|1st|low|behind|diff\w*|lsd|locker|spool|final|ratio|converter|clutch|hp",
    is_named=True,  # a torque alone is of anything
    opens=_open_axle,
    unmoved="finish standard",
)
