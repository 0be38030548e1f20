"""What is asked of a bend that is cut and welded of slices, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.tubes.said import DEG, answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Reader

_SLICE = (
    r"(?:pie[- ]?(?:cuts?|slices?|pieces?)|slices?|segments?|pieces?|lobster[- ]?back(?: segments?)?|wedges?|sections?)"
)
_COUNTS = {"two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9"}


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
            "slices": (
                Shaped(rf"(?P<n>[1-9]|[12][0-9]) (?:equal |full |whole )*{_SLICE}", lambda m: m["n"], "{} slices"),
                Shaped(
                    rf"(?P<n>{'|'.join(_COUNTS)}) (?:equal |full |whole )*{_SLICE}",
                    lambda m: _COUNTS[m["n"]],
                    "{} slices",
                ),
            ),
            "ends": (
                Shaped(
                    r"(?:(?:all|every|each)(?: (?:of|the|them|slice|piece|one|face|is|are))* cut (?:on )?(?:both"
                    r"|two) (?:faces"
                    r"|sides|ends)|both (?:faces|ends) cut|ends? cut too)",
                    always("cut"),
                    "all cut on both faces",
                    cue=("cut",),
                ),
                Shaped(r"(?:with )?square ends?|ends? (?:are |left )?square", always("square"), "its ends square"),
            ),
            "od": slots["od"],
            "radius": slots["radius"],
        },
        rf"{_SLICE}|pie|mit(?:er|re)(?:s|d)?|lobster ?back|cut(?:ting)?|saw(?:n|ed)?|saw (?:angle|at|set(?:ting)?)"
        r"|(?:what|which)(?: saw| cut| mitre)? angle|angles?|chop ?saw|set|degrees?|bends?|elbow|made|make|making|of"
        r"|out|from|pipe|tube|exhaust|intake|how long|how many degrees|each|per (?:cut|slice|piece|face)|do i|the"
        r"|weld|welded (?:up|of|from|out of)",
        needs=("angle", "slices"),
        asks_for=rf"(?:[1-9]|[12][0-9]|{'|'.join(_COUNTS)}) (?:equal |full |whole )*{_SLICE}",
        is_named=True,
        unmoved="metal finish state form standard service quality",
    )
