"""Job items of the domain driveline -> Items: a shaft, or one step of an axle's set-up."""

from __future__ import annotations

from collections.abc import Iterator

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.item import Box, Card, Item, Row
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.driveline import keys, steel
from gaugeblock.driveline.carrying import VERB
from gaugeblock.driveline.job import SETUP, SHAFT, Driveline
from gaugeblock.driveline.keys import Maker, Shaft, Step
from gaugeblock.driveline.setups import answer as setup
from gaugeblock.driveline.setups import settling
from gaugeblock.driveline.torsion import CHECK
from gaugeblock.errors import GaugeblockError, Problem
from gaugeblock.job.model import Shop
from gaugeblock.tables.load import Refdata
from gaugeblock.units import text_of

# Where a refusal says that it arose -> the key of the item that is to be corrected.
_KEYS = {
    "driveline/steels steel": "steel",
    "driveline/steels strength": "steel",
    "driveline/steels treatment": "treatment",
    "driveline/steels temper": "temper",
    "driveline/steels section": "section",
    "driveline/setup component": "component",
    "driveline/setup step": "step",
    "driveline/setup wear": "wear",
    "bore": "bore",
    "case depth": "case_depth",
    "core hardness": "core_hardness",
}


def problems(item: Driveline, data: Refdata) -> Iterator[Problem]:
    """Nothing stops the job here: what the tables do not know of an item is that item's question."""
    yield from ()


def is_setup(job: Driveline) -> bool:
    """Whether the item is a step of a set-up: said so, or only keys of one given."""
    return job.kind == "setup" or (job.kind is None and any(getattr(job, k) is not None for k in SETUP))


def item(job: Driveline, shop: Shop, data: Refdata) -> Item:
    """The Item of one shaft or set-up step of the job."""
    names = [k for k in (SETUP if is_setup(job) else SHAFT) if k != "maker"]
    asked = {k: text_of(getattr(job, k)) for k in names}
    facts = [Row("where", job.where or ""), *(Row(k.replace("_", " "), t) for k, t in asked.items() if t)]
    if job.notes:
        facts.append(Row("notes", job.notes))
    if not is_setup(job):
        return Item("driveline", job.name, facts, _shaft(job, asked, data), _shaft_card(job))
    sheet = _setup(job, asked, data)
    return Item("driveline", job.name, facts, sheet, _card(job, sheet))


def _missing(job: Driveline, asked: dict[str, str | None], needed: tuple[str, ...], verb: str, data: Refdata) -> Sheet:
    """The sheet of an item that lacks keys: nothing to use, and one question a key."""
    missing = [k for k in needed if getattr(job, k) is None]
    name = CHECK if verb == VERB else settling.CHECK
    why = f"{', '.join(missing)} not given"
    questions = [Question(FILL_IN, f"What is its {k.replace('_', ' ')}?", k, (name,)) for k in missing]
    check = Check(name, CANNOT_TELL, why, bears=ASK)
    decision = none(verb, f"Give the {' and the '.join(missing)}.")
    return Sheet(job.name, asked, data, [], [check], [], decision=decision, questions=questions)


def _refused(job: Driveline, asked: dict[str, str | None], verb: str, error: GaugeblockError, data: Refdata) -> Sheet:
    """The sheet of an item that the tables refuse: the refusal as its question."""
    name = CHECK if verb == VERB else settling.CHECK
    near = f" The nearest: {error.choices}." if error.nearest else ""
    do = f"{error.asked}: {error.why}.{near}"
    key = _KEYS.get(error.where, "steel" if verb == VERB else "step")
    questions = [Question(FILL_IN, do, key, (name,))]
    check = Check(name, CANNOT_TELL, f"{error.asked}: {error.why}", bears=ASK)
    return Sheet(job.name, asked, data, [], [check], [], decision=none(verb, do), questions=questions)


def _shaft(job: Driveline, asked: dict[str, str | None], data: Refdata) -> Sheet:
    own = job.yield_strength is not None
    if not own and (job.steel is None or job.treatment is None):
        return _missing(job, asked, ("steel", "treatment"), VERB, data)
    try:
        shaft = Shaft(
            job.steel or "steel not named",
            job.treatment or "as certified",
            temper=job.temper,
            section=job.section,
            diameter=job.diameter,
            bore=job.bore,
            length=job.length,
            torque=job.torque,
            hardness=keys.hardness(job.hardness, data) if job.hardness else None,
            yield_strength=job.yield_strength,
            certificate=job.certificate or "",
            case_depth=job.case_depth,
            core_hardness=keys.hardness(job.core_hardness, data, "core hardness") if job.core_hardness else None,
        )
        return steel.judged(shaft, _as_steel(asked), data)
    except GaugeblockError as error:
        return _refused(job, asked, VERB, error, data)


def _as_steel(asked: dict[str, str | None]) -> dict[str, str | None]:
    """The keys of a job's shaft as the answer ``steel`` names them."""
    names = {"steel": "grade", "diameter": "shaft"}
    return {names.get(k, k): v for k, v in asked.items()}


def _setup(job: Driveline, asked: dict[str, str | None], data: Refdata) -> Sheet:
    if job.component is None or job.step is None:
        return _missing(job, asked, ("component", "step"), "SET", data)
    given = job.maker
    maker = None
    if given is not None and any(v is not None for v in (given.value, given.low, given.high)):
        maker = Maker(given.value, given.low, given.high, given.source or "", given.place or "")
    axle = job.axle or "axle not named"
    step = Step(axle, job.component, job.step, job.wear, job.as_found, job.as_left, maker)
    said = {**asked, "axle": axle, "maker": maker.text if maker is not None else None}
    try:
        return setup.judged(step, said, data)
    except GaugeblockError as error:
        return _refused(job, asked, "SET", error, data)


def _card(job: Driveline, sheet: Sheet) -> Card:
    figure = next(iter(sheet.decision.figures), None)
    unit = figure.unit if figure is not None else ""
    found, left = text_of(job.as_found), text_of(job.as_left)
    return Card(
        ", ".join(t for t in (job.axle or job.where, job.component, job.step) if t),
        (job.wear or "").upper(),
        counted="setting",
        notes=[f"As found {found}." if found else "", f"As left {left}." if left else ""],
        boxes=[
            Box("maker's figure, page"),
            Box("as found", unit, half=True),
            Box("as left", unit, half=True),
            Box("by, date"),
            Box("checked by, date"),
        ],
    )


def _shaft_card(job: Driveline) -> Card:
    what = ", ".join(str(t) for t in (job.steel, job.treatment, job.temper, job.diameter) if t)
    return Card(
        what,
        counted="shaft",
        notes=[f"Torque asked of it {job.torque}." if job.torque else ""],
        boxes=[Box("steel as certified"), Box("hardness measured"), Box("by, date"), Box("checked by, date")],
    )
