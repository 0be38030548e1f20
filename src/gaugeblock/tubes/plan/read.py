"""A tube and a die from Python, with the keys of a job, read as strictly."""

from __future__ import annotations

from gaugeblock.errors import InputError
from gaugeblock.job.mapping import part_of, plain
from gaugeblock.job.model import Die
from gaugeblock.tubes.job import faults
from gaugeblock.tubes.keys import radius_words
from gaugeblock.tubes.model import Tube

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any

    from gaugeblock.tables.load import Refdata


def tube_of(given: Mapping[str, Any], die: Mapping[str, Any] | None, data: Refdata) -> Tube:
    """The tube of a mapping; InputError names the key that is unknown, missing, of the wrong type, or one too many.

    Its ``radius`` may say what it is measured to: ``4-5/8 in inside``.
    """
    raw = {"name": "tube", **plain(given)}
    if isinstance(raw.get("radius"), str):
        raw["radius"], raw["measured_to"] = radius_words(raw["radius"], raw.get("measured_to"), data)
    tube = part_of(Tube, raw, "tube")
    job = {"shop": {"dies": [plain(die)] if die else []}}
    for fault in faults((), raw, job):
        where = " ".join(str(p + 1) if isinstance(p, int) else p.replace("_", " ") for p in fault.path)
        raise InputError(
            str(fault.path[-1]) if fault.path else "tube", f"tube {where}", fault.why, fault.nearest, fault.do
        )
    return tube


def die_of(given: Mapping[str, Any]) -> Die:
    """The die of a mapping; one without a name is the shop's only one."""
    raw = plain(given)
    die = part_of(Die, {"name": "die", **raw}, "die")
    return die if raw.get("name") else Die(**{**vars(die), "name": ""})
