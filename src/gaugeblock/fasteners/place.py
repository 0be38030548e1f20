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


# Bolts that are tightened by their maker's own figure, to stretch, by angle or with their own lubricant, and whose
# failing hurts: a chart of plain bolts is not theirs.
_OWN = re.compile(
    r"(?<!to )(?<!to the )\b(?P<it>(?:cylinder )?heads?(?= (?:bolts?|studs?|nuts?|screws?)\b)|flywheels?|flex ?plates?"
    r"|(?:con(?:necting)?[ -]?)rods?(?: caps?)?|big ends?|main (?:bearings?|caps?|bearing caps?)|crank(?:shaft)?"
    r"|cam(?:shaft)?|seat ?belts?|safety belts?|(?:lap|shoulder) belts?|harness(?:es)?|(?:brake )?calipers?"
    r"|ball joints?|tie rods?|track rods?|steering wheel"
    r"|ring gear|crown ?wheel|hub (?=nut)|axle (?=nut)|pinion (?=nut))\b"
)
OWN_FIGURE = "a plain bolt's figure"


def of_its_place(made: Sheet, job: Fastener) -> Sheet:
    """The Sheet of a fastener with what a careful shop adds for the place that the job names."""
    words = f"{job.name} {job.where or ''} {job.part or ''}".casefold()
    made = made.replace(cautions=(*made.cautions, *cautions(job)))
    if job.part is not None or job.maker is not None or not made.decision.candidates:
        return made
    if _SOFT.search(words) is not None:
        why = "soft rubber or a gasket in the joint is crushed before the torque of a bolt chart is reached"
        text = "Ask the part's maker for the torque of this soft joint, or see that metal meets metal in it."
        made = _asked_first(made, SOFT, why, text, _WHEN_HARD)
    own = _OWN.search(job.name.casefold()) if job.wanted is None else None
    if own is not None:
        it = own["it"].strip()
        why = f"a plain bolt of this thread and grade takes it; the {it} has a figure of its own"
        text = f"What torque does the maker print for the {it}? A chart of plain bolts is not for it."
        made = _asked_first(made, OWN_FIGURE, why, text, "its maker prints none, and says that a plain bolt's will do")
    return made


def _asked_first(made: Sheet, name: str, why: str, text: str, when: str) -> Sheet:
    """The Sheet with a question to the maker; its number stands where ``when`` holds."""
    decision = made.decision
    if decision.kind == USE:
        (candidate,) = decision.candidates
        stages = decision.stages if isinstance(decision, Tightening) else ()
        decision = Tightening(ASK, decision.verb, [candidate.replace(when=when)], (name,), text, stages)
    question = Question(ASK_MAKER, text, "maker.torque", (name,))
    check = Check(name, CANNOT_TELL, why, bears=ASK)
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
