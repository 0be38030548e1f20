"""What the topics of the driveline share: the answer by its name, hardness as it is said, the treatments of a steel."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, always
from gaugeblock.answer.wing import loaded
from gaugeblock.errors import GaugeblockError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

# What a car has and no ratio and no speed hangs on: it is told, and left.
OF_THE_CAR = {
    "box": (
        Shaped(
            r"(?P<n>[3-6]) ?speed(?: (?:box|gear ?box|transmission|trans))?",
            lambda m: m["n"],
            "{} speed gearbox",
            cue=("speed",),
        ),
    ),
    "slip": (Shaped(r"(?:lsd|limited[- ]slip)", always("limited slip"), "{}", cue=("lsd", "limited")),),
}
# How a shaft from the differential to a wheel is called; a drive shaft or a propeller shaft may be a tube.
HALF_SHAFT = r"(?:half|axle|stub)[- ]?(?:shafts?|axles?)|solid (?:drive|prop(?:eller)?)[- ]?shafts?"
SHEAR = r"(?:shear|torsion(?:al)?|rigidity) modulus|modulus of rigidity"
SCALE = r"hrc|rockwell c|rockwell b|rockwell|hrb|rc|rb|brinell|bhn|hbw|hb|vickers|hv"
# A scale of Rockwell by its letter: 30 on the C scale.
_LETTER = r"(?:on |by |in )?(?:the )?(?:rockwell )?(?P<letter>[bc])(?: rockwell)?[ -]scale"
SCALES = {
    "rockwell": "HRC",
    "rockwell c": "HRC",
    "rc": "HRC",
    "hrc": "HRC",
    "rockwell b": "HRB",
    "hrb": "HRB",
    "rb": "HRB",
    "vickers": "HV",
    "hv": "HV",
}


def _hardness(match: re.Match[str]) -> str:
    return f"{match['n']} {SCALES.get(match['scale'], 'HB')}"


_HARD = r"(?P<n>[0-9]{1,3}(?:\.[0-9]+)?)"
HARDNESS_SAID = (
    Shaped(
        rf"(?:measured |tested )?(?:about )?(?P<n>[0-9]+(?:\.[0-9]+)?) ?(?P<scale>{SCALE})(?: hardness)?", _hardness
    ),
    Shaped(rf"(?P<scale>{SCALE}) ?(?:of |is |about )*(?P<n>[0-9]+(?:\.[0-9]+)?)(?! [0-9]+/)", _hardness),
    Shaped(rf"{_HARD} {_LETTER}", lambda m: f"{m['n']} HR{m['letter'].upper()}"),
    Shaped(
        rf"(?:{_LETTER})(?: (?:of|is|about|at|reads?|reading|says))* {_HARD}",
        lambda m: f"{m['n']} HR{m['letter'].upper()}",
    ),
    Shaped(  # forty on the Rockwell C
        rf"{_HARD} (?:on|by) (?:the )?(?P<scale>{SCALE})(?: scale)?(?: on it)?", _hardness, cue=("on ", "by ")
    ),
    Shaped(r"hardness (?:of |is )?(?P<n>[0-9]{2,3})", lambda m: f"{m['n']} ?", "hardness {}", doubt=6),
)


def answer_of(module: str, name: str) -> Callable[..., Sheet]:
    return getattr(loaded(f"gaugeblock.driveline.{module}"), name)  # type: ignore[no-any-return]


def treatments(of: str, values: dict[str, str], answer: Callable[..., Sheet], data: Refdata) -> Open | None:
    if "treatment" in values:
        return None
    if "hardness" in values:  # its strength follows its hardness, whatever was done to it
        return None
    if "yield_strength" in values:  # its strength is known, whatever it was tempered at
        return ("treatment",), [{"treatment": "quenched and tempered"}]
    table = data.table("driveline/steels")
    at = {k.name: i for i, k in enumerate(table.keys)}
    found: list[dict[str, str]] = []
    thin: list[dict[str, str]] = []  # of which nobody printed where it yields
    for row in table.rows:
        if row.key[at["steel"]] != values[of] or row.standing or row.key[at["treatment"]] == "any":
            continue
        one = {"treatment": row.key[at["treatment"]]}
        temper = row.key[at["temper"]]
        if temper not in ("any", "not stated") and "temper" not in values:
            one["temper"] = temper
        if one in found or one in thin:
            continue
        try:
            sheet = answer(**{**values, **one}, data=data)
        except GaugeblockError:
            continue
        is_thin = "fact" not in values and any(f.quantity.startswith("tensile") for f in sheet.decision.figures)
        (thin if is_thin else found).append(one)
    found = found or thin
    open_keys = ("treatment", "temper") if any("temper" in f for f in found) else ("treatment",)
    return open_keys, [{k: f.get(k, "any") for k in open_keys} for f in found]


# A propeller shaft is at no other thousands.
THOUSANDS = Shaped(
    r"at (?P<n>[1-9][0-9]{3})(?! ?(?:lbs?|pounds?|ft|feet|foot|n[-.]?m|newton|mm|in|inch|kg|deg))",
    lambda m: f"{m['n']} rpm",
    "at {}",
)
