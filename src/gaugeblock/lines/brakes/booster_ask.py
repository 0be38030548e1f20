"""What is said of the booster of a brake: its ratio, or only that there is one."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import NUMBER, Shaped, always
from gaugeblock.lines.brakes.hand_ask import RATIO

HAS_BOOSTER = "a booster"
ASSIST = (
    Shaped(rf"{RATIO} (?:booster|servo|assist\w*)", lambda m: m["n"], "booster {} to 1"),
    Shaped(
        rf"(?:booster|servo|assist\w*)(?: (?:of|with|ratio|gives?|that|which|is|it|has|an?|about|rated|boosts?"
        rf"|at))* {RATIO}"
        r"(?: (?:boost|ratio|assist\w*))?",
        lambda m: m["n"],
        "booster {} to 1",
    ),
    Shaped(
        r"(?:booster|servo)(?: (?:that|which|it|gives?|a|with|of|about))*"
        rf" (?:multipl\w+(?: (?:it|that|the force|the foot))?(?: (?:by|times))?|times) (?P<n>{NUMBER})(?: times)?",
        lambda m: m["n"],
        "booster {} to 1",
        cue=("multipl", "times"),
    ),
    Shaped(
        rf"(?:booster|servo) (?:that )?(?:ratio|boosts?(?: it)?|factor)(?: (?:of|is"
        rf"|by))* (?P<n>{NUMBER})(?: times)?(?! ?(?:in|inch"
        r"|mm|to|:))",
        lambda m: m["n"],
        "booster {} to 1",
        cue=("ratio", "boost", "factor"),
    ),
)
# A booster whose ratio is not said is read too, and asked about.
BOOSTED = (
    *ASSIST,
    Shaped(
        r"(?:(?:with|has|have|got|through|it has)(?: an?| the| got)? )?(?:(?:vacuum "
        r"|brake )?(?:servo|booster)s?"
        r"(?: assist\w*)?|boosted(?: brakes?| setup| system)?|power(?:ed)?[ -](?:assist\w*|brakes?)"
        r"|(?:servo )?assisted)"
        r"(?: fitted)?",
        always(HAS_BOOSTER),
        "with a booster",
        doubt=1,
        cue=("servo", "boost", "power", "assist"),
    ),
    Shaped(
        rf"(?P<n>{NUMBER}) ?(?:in|inch|inches|\"|mm)? ?(?:(?:single|dual|twin|tandem) )?(?:diaphragm"
        rf"|booster|servo)"
        r"(?: (?:booster|servo))?|(?:manifold |engine )?vacuum(?: (?:is|of|at|about))* [0-9.]+"
        r"(?: ?(?:in|inch|inches|\"))?(?: (?:of )?(?:hg|mercury))?",
        lambda m: f"{HAS_BOOSTER} ({m[0]})",
        "{}",
        cue=("diaphragm", "vacuum", "booster", "servo"),
    ),
)


def of_booster(said: str) -> str:
    """The ratio among what was said of a booster; blank where none was."""
    return re.sub(rf"{HAS_BOOSTER}(?: \([^)]*\))?", "", said).strip()
