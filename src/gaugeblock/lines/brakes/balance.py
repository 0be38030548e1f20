"""The sheet of the brake balance: what must be asked and measured, front and rear. It has no figure of its own."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, INFORM, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.answer.sheet import Sheet

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

VERB = "BALANCE"
NAME = "front to rear balance"
KEY = "balance"
# What the balance hangs on, and a box for each, front and rear.
MEASURED = ("pistons, bore", "disc or drum", "tyre radius", "axle load")
_MEASURE = (
    "Measure, front and rear, as it was and as it is: bore and number of the pistons, radius of disc or drum where the"
    " lining sits, rolling radius of the tyres, and the load on each axle."
)
_MAKER = "Which linings and which proportioning valve go together on this vehicle, by the makers of brakes and linings?"
_TRIED = "Who tried the balance, where and when: did the front wheels lock first?"
_DO = (
    "Nobody can work the balance out from bores alone. Fill in the sheet, ask the makers, and have it tried by somebody"
    " who is trained to, away from traffic: the front wheels must lock first."
)
WARNING = "Rear wheels that lock first turn the vehicle round. Drive it only when the balance was tried."


def judged(title: str, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """The sheet of the balance; ``asked`` has who tried it, once it was."""
    tried = asked.get(KEY)
    if tried:
        check = Check(NAME, CANNOT_TELL, f"as recorded: {tried}", subject=KEY, bears=INFORM)
        decision = none(VERB, f"Tried: {tried}. Keep the sheet: the next change of a part opens it again.")
        return Sheet(title, asked, data, [], [check], [], decision=decision)
    check = Check(NAME, CANNOT_TELL, "it was not tried since the change", subject=KEY, bears=ASK)
    questions = [Question(k, t, KEY, (NAME,)) for k, t in ((MEASURE, _MEASURE), (ASK_MAKER, _MAKER), (FILL_IN, _TRIED))]
    cautions = [Caution(WARNING, "injury")]
    return Sheet(title, asked, data, [], [check], cautions, decision=none(VERB, _DO), questions=questions)
