"""What the place that a job names adds to its fastener: a soft joint is asked about, a hot one tightened again, another
person's life checked twice.
"""

from __future__ import annotations

import re

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import USE
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.fasteners.decide import Tightening

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.fasteners.job import Fastener

# Places that a careful shop knows, as whole words of what the job calls the item and where it stands.
_WHEEL = re.compile(r"(?<!steering )\bwheel (nut|bolt|stud)|\bwheels\b")
_OTHERS_LIFE = re.compile(r"\b(brake|caliper|steering|suspension)")
_HOT = re.compile(r"\b(exhaust|header(?!s? tank)|(?<!intake )(?<!inlet )manifold|turbo|catalyst|silencer|muffler)")
_SOFT = re.compile(r"(?<!clutch )\bcover\b|\b(gasket|oil pan|sump|rubber|bushing)")
SOFT = "soft joint"
_WHEN_HARD = "metal meets metal in the joint, or a sleeve takes the clamp"


def of_its_place(made: Sheet, job: Fastener) -> Sheet:
    """The Sheet of a fastener with what a careful shop adds for the place that the job names."""
    words = f"{job.name} {job.where or ''} {job.part or ''}".casefold()
    made = made.replace(cautions=(*made.cautions, *cautions(job)))
    is_soft = job.part is None and job.maker is None and _SOFT.search(words) is not None
    if not is_soft or not made.decision.candidates:
        return made
    why = "soft rubber or a gasket in the joint is crushed before the torque of a bolt chart is reached"
    text = "Ask the part's maker for the torque of this soft joint, or see that metal meets metal in it."
    question = Question(ASK_MAKER, text, "maker.torque", (SOFT,))
    check = Check(SOFT, CANNOT_TELL, why, bears=ASK)
    decision = made.decision
    if decision.kind == USE:
        (candidate,) = decision.candidates
        stages = decision.stages if isinstance(decision, Tightening) else ()
        decision = Tightening(ASK, decision.verb, [candidate.replace(when=_WHEN_HARD)], (SOFT,), text, stages)
    return made.replace(checks=(*made.checks, check), questions=(*made.questions, question), decision=decision)


def cautions(job: Fastener) -> list[Caution]:
    """What a careful shop adds for the place that the job names."""
    words = f"{job.name} {job.where or ''} {job.part or ''}".casefold()
    out = []
    is_wheel = _WHEEL.search(words)
    if is_wheel or _OTHERS_LIFE.search(words):
        out.append(
            Caution("Brake, wheel and steering work is checked by a second person before the car moves.", "injury")
        )
    if is_wheel:
        out.append(
            Caution("Wheel nuts: no oil on the seats, crosswise, and checked again after the first miles.", "injury")
        )
    if _HOT.search(words) and job.retighten is None:
        out.append(Caution("Hot joint: say whether it is tightened again, cold, after the first heat.", "damage"))
    return out
