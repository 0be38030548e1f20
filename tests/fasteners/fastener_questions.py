"""Questions that the tests of the torque sheet ask, and how they read its answers."""

from __future__ import annotations

from hypothesis import HealthCheck, assume, settings
from hypothesis import strategies as st

from gaugeblock.answer.check import Check
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners.job import Fastener
from gaugeblock.fasteners.keys import conditions
from gaugeblock.fasteners.torque import torque
from gaugeblock.figure import Figure
from gaugeblock.job.part import Part
from gaugeblock.tables.load import refdata

DRY5 = {"grade": "SAE J429 5", "condition": "dry"}
MAKER = ("33 lbf*ft", "maker's instruction sheet", "p. 4")

THREADS = ["1/4-20 UNC", "3/8-16 UNC", "1/2-20 UNF", "3/4-10 UNC", "M6x1", "M8x1.25", "M10x1.5", "M12x1.75", "M16x2"]
INCH_GRADES = ["SAE J429 2", "SAE J429 5", "SAE J429 8", "ASTM A574 socket head cap screw", "ASTM A193 B7"]
METRIC_GRADES = ["ISO 898-1 4.6", "ISO 898-1 8.8", "ISO 898-1 10.9", "ISO 898-1 12.9"]
NO_FACTOR = ("wax", "not stated")  # no nut factor is published for these alone
CONDITIONS = conditions(refdata())
STAINLESS = "stainless dry"  # the condition of stainless bolts alone
ASKED = [
    (t, g, c)
    for t in THREADS
    for g in (METRIC_GRADES if t.startswith("M") else INCH_GRADES)
    for c in CONDITIONS
    if c != STAINLESS
]
questions = st.sampled_from(ASKED)
fast = settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])


def ask(question: tuple[str, str, str], **options: str) -> Sheet:
    size, grade, condition = question
    return torque(size, grade=grade, condition=condition, **options)


def derived_of(sheet: Sheet) -> Figure:
    return next(f for f in sheet.figures if f.quantity == "tightening_torque" and f.rule is not None)


def check_of(sheet: Sheet, name: str) -> Check:
    return next(c for c in sheet.checks if c.name == name)


def ends(figure: Figure) -> tuple[float, float]:
    assert figure.low is not None
    assert figure.high is not None
    return figure.low, figure.high


def asked(thread: str, grade: tuple[str, str], condition: str, **more: object) -> Sheet:
    """The sheet of a bolt; a grade that the thread does not have, or no figure at all, is another example."""
    try:
        return torque(thread, grade=" ".join(grade), condition=condition, **{k: v for k, v in more.items() if v})  # type: ignore[arg-type]
    except LookupMiss:
        assume(False)
        raise


def plain(text: str) -> str:
    """Without the blanks that hold a number and its unit together."""
    return text.replace("\u00a0", " ")


def is_key(path: str) -> bool:
    """Whether a job has this key in an item of fasteners."""
    model: type[Part] | None = Fastener
    for name in path.split("."):
        if model is None or name not in model.keys:
            return False
        model = model.keys[name].part
    return True
