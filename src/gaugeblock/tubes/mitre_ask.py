"""What is asked of a bend that is cut and welded of slices, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.errors import InputError
from gaugeblock.tubes.said import DEG, answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

_SLICE = (
    r"(?:pie[- ]?(?:cuts?|slices?|pieces?)|slices?|segments?|pieces?|lobster[- ]?back(?: segments?)?|wedges?|sections?)"
)
_JOINTS = r"(?:welds?|weld seams?|seams?|joints?)"
_COUNTS = {"two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9"}

_SLICES = (
    Shaped(rf"(?P<n>[1-9]|[12][0-9]) (?:equal |full |whole )*{_SLICE}", lambda m: m["n"], "{} slices"),
    Shaped(
        rf"(?P<n>{'|'.join(_COUNTS)}) (?:equal |full |whole )*{_SLICE}",
        lambda m: _COUNTS[m["n"]],
        "{} slices",
    ),
)
_WELDS = (
    Shaped(
        rf"(?:(?:so|with|and|that(?:'s| is)|makes|making|meaning) )*(?P<n>[1-9]|1[0-9]) {_JOINTS}",
        lambda m: m["n"],
        "{} joints",
        cue=("weld", "seam", "joint"),
    ),
)
_ENDS = (
    Shaped(
        r"(?:(?:all|every|each)(?: (?:of|the|them|slice|piece|one|face|is|are))* cut (?:on )?(?:both"
        r"|two) (?:faces"
        r"|sides|ends)|both (?:faces|ends) cut|ends? cut too)",
        always("cut"),
        "all cut on both faces",
        cue=("cut",),
    ),
    Shaped(
        r"(?:the )?(?:first|outer|end|outside)(?: (?:and|two|ones?|pieces?|slices?|the))*(?: last)?"
        r"(?: (?:ones?|pieces?|slices?|are|is|left|cut|kept|ends?))* (?:square|straight|on one (?:face"
        r"|side))"
        r"(?: (?:on|at) (?:the|one|their) (?:outside|end|ends|outer end|side))?",
        always("square"),
        "its ends square",
        cue=("square", "straight", "on one"),
    ),
    Shaped(r"(?:with )?square ends?|ends? (?:are |left )?square", always("square"), "its ends square"),
)
_LENGTHS = (
    Shaped(
        r"how (?:long|wide)(?: (?:is|are|does|do|should|each|every|the|an?|slice|piece|segment|wedge|it"
        r"|on|be"
        r"|must))*",
        always("both"),
        "its lengths",
        cue=("how long", "how wide"),
    ),
    Shaped(
        r"(?:(?:and|on|at|the|its) )*(?:long|short|outside|inside|outer|inner|throat|wide|narrow) (?:sides?"
        r"|edges?|lengths?)",
        always("both"),
        "its lengths",
        cue=("side", "edge", "length"),
    ),
)


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The slices; where each weld between two of them was counted, the outer two are cut on one face alone.

    InputError for any other count of welds: whether those at the ends turn too was not said.
    """
    found = {key: value for key, value in values.items() if key not in ("joints", "lengths")}
    if "joints" not in values or "slices" not in values:
        return found
    slices, joints = int(values["slices"]), int(values["joints"])
    if joints == slices - 1:
        return {"ends": "square", **found}
    why = f"{slices} slices in a row have {slices - 1} joints between them"
    do = "say the slices alone, and whether the first and the last are cut on both faces"
    raise InputError(f"{slices} slices, {joints} joints", "slices", why, (), do)


def mitre_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """The saw's angle, with what is said of tube and radius as of any bend."""
    return Topic(
        lambda: answer_in("mitre", "mitre"),
        "bend of slices",
        {
            "angle": (
                amount("angle", after="(?:bends?|elbows?|turn)?", say="{} in all"),
                amount("angle", say="{} in all"),
                Shaped(
                    rf"(?:an? |for )?(?P<n>15|30|45|60|75|90|120|135|180)(?: ?{DEG})?(?: (?:bends?|elbows?|turn))?",
                    lambda m: f"{m['n']} deg",
                    "{} in all",
                    doubt=1,
                ),
            ),
            "slices": _SLICES,
            "joints": _WELDS,
            "ends": _ENDS,
            "lengths": _LENGTHS,
            "od": slots["od"],
            "radius": slots["radius"],
        },
        rf"{_SLICE}|(?:chop|mitre|miter|drop|cold|band) ?saw|in (?:total|all)|total|all up|turn(?:s|ing)?|to make"
        rf"|(?:pie[- ])?(?:cut|cutting)|{_SLICE}|pie|mit(?:er|re)(?:s|d)?|lobster ?back|cut(?:ting)?|saw(?:n|ed)?"
        r"|saw (?:angle|at|set(?:ting)?)"
        r"|(?:what|which)(?: saw| cut| mitre)? angle|angles?|chop ?saw|set|degrees?|bends?|elbow|made|make|making|of"
        r"|out|from|pipe|tube|exhaust|intake|tail ?pipe|down ?pipe|how many degrees|each|per (?:cut|slice|piece|face)"
        r"|do i|the"
        r"|weld|welded (?:up|of|from|out of)",
        needs=("angle", "slices"),
        settle=_settle,
        asks_for=r"angle\b.*\b(?:pie|slices?|lobster)|(?:pie|slices?|lobster)\b.*\bangle"
        rf"|(?:[1-9]|[12][0-9]|{'|'.join(_COUNTS)}) (?:equal |full |whole )*{_SLICE}",
        is_named=True,
        unmoved="metal finish state form standard service quality",
    )
