"""What of a setting reaches the nut through a crow-foot, whatever the bolt."""

from __future__ import annotations

from gaugeblock.answer.decision import use
from gaugeblock.answer.making import stated
from gaugeblock.answer.sheet import Sheet
from gaugeblock.fasteners import read, wrench

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.fasteners.bolt import CrowFoot
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure


def through(adapter: str | CrowFoot | Mapping[str, str], given: Measure, data: Refdata) -> Sheet:
    """The Sheet of the torque at the nut when a wrench with a crow-foot on it is pulled to ``given``."""
    foot = read.crow_foot(adapter)
    setting = stated(given, "tightening_torque", "given", data)
    at_nut = wrench.at_the_thread(setting, None, foot, data)
    asked: dict[str, str | None] = {"adapter": foot.text if foot is not None else None, "given": given.text}
    title = f"crow-foot {foot.text if foot is not None else ''}, the wrench pulled to {given.text}"
    return Sheet(title, asked, data, [*at_nut, setting], [], [], decision=use("AT THE NUT", at_nut[0]))
