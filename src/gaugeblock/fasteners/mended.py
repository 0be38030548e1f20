"""A bolt into a thread that was made anew in a weld, a filler or a cracked casting: nobody's figure was found."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.decision import none
from gaugeblock.answer.question import ASK_MAKER, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.fasteners.spoken import CONDITION, GRADE, THREAD
from gaugeblock.fasteners.thread_ask import METAL_TAIL, TAPPED_METAL

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.tables.load import Refdata

_DO = (
    "No figure was found for it, and that of a plain bolt is for sound metal: do not use it. Ask whoever made the"
    " repair, or put the thread in sound metal."
)
_CARE = (
    "A weld, a filler or a crack lets a thread go without warning. Use no such thread for what holds a wheel, steers or"
    " brakes."
)


def repaired(*, thread: str | None = None, data: Refdata, **_: object) -> Sheet:
    """The Sheet of a bolt into a repaired hole: no figure, and who may have one."""
    title = f"{thread or ''} thread in a repaired or damaged hole".strip()
    question = Question(ASK_MAKER, "What torque does whoever made the repair allow for it?", "maker")
    caution = Caution(_CARE, "injury")
    return Sheet(
        title, {"thread": thread}, data, [], [], [caution], decision=none("TIGHTEN", _DO), questions=[question]
    )


def _repaired() -> Callable[..., Sheet]:
    return repaired


_DONE = (
    r"(?:weld(?:ed)?|braz(?:ed)?|fill(?:ed)?|built|tigged|migged|glued|epoxied|repaired|retapped"
    r"|re-tapped|redrilled|recut|re-cut|stripped|damaged|re-drilled"
    r"|tapped again|drilled and tapped|cracked)(?: up| over| in| out)?"
)
REPAIRED = Topic(
    _repaired,
    "torque",
    {
        "repair": (
            Shaped(
                rf"(?:(?:that |which )?(?:has been|was|is|been) )?{_DONE}(?:(?: and| then| again)* {_DONE})*"
                r"(?: (?:alloy|alumini?um|steel|cast iron))?(?: (?:holes?|threads?|boss(?:es)?))?",
                lambda m: m[0],
                "{}",
            ),
        ),
        "thread": THREAD,
        "grade": GRADE,
        "condition": CONDITION,
        "into": (TAPPED_METAL,),
    },
    r"(?:what|how much)(?: can| should| do)? (?:i )?torque|torque(?:d)?|tight(?:en)?|how tight|(?:an? |the )?(?:holes?"
    r"|threads?|boss(?:es)?|ears?|lugs?|repairs?|bolts?|screws?|studs?|inserts?"
    r"|(?:(?:sump|drain|oil|filler|spark|caliper|gear ?box) )+(?:plugs?|holes?|bolts?))"
    r"|(?:in|into|on)(?: an?| the| my)*"
    rf" (?:(?:old|cast|cracked|broken|mended|gear ?box|engine|transmission|axle|bell ?housing|sump) )*(?:{METAL_TAIL})",
    needs=("repair", "thread"),
    asks_for=_DONE,
    is_named=True,
)
