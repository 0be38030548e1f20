"""Options as text -> a Bolt or a Piece. The one place where the text of a fastener's options is read."""

from __future__ import annotations

import re

from gaugeblock import lookup, units
from gaugeblock.answer.making import read_positive
from gaugeblock.errors import Ambiguous, InputError, LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.fasteners.bolt import Bolt, CrowFoot, Tapped, Tools, Wish
from gaugeblock.tables.load import canonical, option

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from gaugeblock.fasteners.bolt import Grip
    from gaugeblock.fasteners.maker import Maker
    from gaugeblock.job.wrench import WrenchRange
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

# What a person may type and have to confirm when it is unlikely.
CONFIRMED = (
    *("adapter", "engagement", "given", "grip", "maker", "nut_factor", "preload", "prevailing", "proof_strength"),
    *("tapped_strength", "tensile_strength", "wanted", "yield_strength"),
)
METAL = "tapped metal"
_ADAPTER = r"(?P<adapter>.+?)\s+on\s+(?P<wrench>.+?)(?:\s+at\s+(?P<angle>.+))?"


def left_open(thread: str | None, has_grade: bool, has_condition: bool, data: Refdata) -> Ambiguous:
    """What is asked of a bolt whose grade or condition is open, with those of the torque table that there are."""
    missing = [n for n, has in (("grade", has_grade), ("condition", has_condition)) if not has]

    def near() -> list[str]:
        rows = data.table("fasteners/torques").rows
        names = [f"{row['standard']} {row['grade']}" if missing[0] == "grade" else row["condition"] for row in rows]
        return list(dict.fromkeys(names))

    do = f"give {' and '.join(f'--{n}' for n in missing)}, or a torque that is wanted or the maker's"
    return Ambiguous(thread or "(no thread)", " and ".join(missing), "needed to find a torque", near, do)


def bolt(
    thread: str | None,
    grade: str | None,
    condition: str | None,
    service: str,
    joint: str,
    tapped: Tapped,
    tools: Tools,
    wish: Wish,
    data: Refdata,
) -> Bolt:
    """The Bolt of what was typed; LookupMiss where the grade is not one of this kind of thread."""
    joint = option(joint, "fasteners joint", "not a kind of joint", data=data)
    lookup.known_service(service)
    size = keys.thread(thread, data) if thread is not None else None
    grade_cells = keys.grade(grade, data) if grade is not None else None
    cell = keys.condition(condition, data) if condition is not None else None
    if size is not None and grade_cells is not None:
        keys.refuse_other_thread(size, grade_cells, data)
    if grade_cells is not None and cell is not None:
        keys.refuse_other_metal(grade_cells, cell, data)
    return Bolt(size, grade_cells, cell, service, joint, tapped, tools, wish)


def tapped(
    into: str | None, insert: str | None, engagement: str | None, tapped_strength: str | None, data: Refdata
) -> Tapped:
    """What the thread goes into."""
    metal = metal_cell(into, data) if into else ""
    fitted = option(insert, "fasteners insert", "not one of the words there are", data=data) if insert else ""
    length = read_positive(engagement, "length", "length of engagement") if engagement else None
    strength = None
    if tapped_strength:
        from gaugeblock.fasteners.own import read_strength

        strength = read_strength(tapped_strength, "tapped strength")
    return Tapped(metal, fitted, length, strength)


def grip(made: Grip | None, data: Refdata) -> Grip | None:
    """The grip with its metal as the tables have it; LookupMiss for one whose modulus they do not have."""
    if made is None or not made.metal:
        return made
    if made.modulus is not None:
        return made
    try:
        return made.replace(metal=canonical(data, "fasteners/moduli", "metal", made.metal))
    except LookupMiss as miss:
        why, do = "no modulus of it is in the tables", "use one of these, or state its modulus"
        raise LookupMiss(made.metal, "clamped metal", why, miss.nearest, do) from None


def metal_cell(typed: str, data: Refdata) -> str:
    """The tapped metal as the tables have it; LookupMiss for one that no source was found for."""
    try:
        return canonical(data, "fasteners/engagement", "into", typed)
    except LookupMiss as miss:
        why, do = "no published torque for threads in it was found", "use one of these, or ask the part's maker"
        raise LookupMiss(typed, METAL, why, miss.nearest, do) from None


def tools(
    locknut: str | None,
    prevailing: str | None,
    adapter: str | CrowFoot | Mapping[str, str] | None,
    wrench: str | WrenchRange | Sequence[str | WrenchRange] | None,
    data: Refdata,
) -> Tools:
    """Locknut, drag, crow-foot and wrenches; several wrenches are several to choose from."""
    nut = canonical(data, "fasteners/prevailing", "nut", locknut) if locknut else ""
    drag = read_positive(prevailing, "torque", "prevailing torque", zero=True) if prevailing else None
    return Tools(nut, drag, crow_foot(adapter), _wrenches(wrench) if wrench else ())


def _wrenches(typed: str | WrenchRange | Sequence[str | WrenchRange]) -> list[WrenchRange]:
    from gaugeblock.job.wrench import WrenchRange, read_wrench

    several = (typed,) if isinstance(typed, str | WrenchRange) else tuple(typed)
    return [read_wrench(w, "wrench") if isinstance(w, str) else w for w in several]


def wish(
    maker: str | Mapping[str, str | None] | Sequence[str] | Maker | None,
    wanted: str | None,
    given: str | None,
    confirmed: str | Sequence[str] | None,
    data: Refdata,
) -> Wish:
    """The torque that somebody names, and what was read twice."""
    made: Maker | None = None
    if maker is not None:
        from gaugeblock.fasteners.maker import read_maker

        made = read_maker(maker)
    if made is not None and made.condition:
        made = made.replace(condition=keys.condition_cell(made.condition, data))
    want = read_positive(wanted, "torque", "wanted") if wanted else None
    judged = read_positive(given, "torque", "--given") if given else None
    names = confirmed.replace(",", " ").split() if isinstance(confirmed, str) else tuple(confirmed or ())
    for name in names:
        _choice(name, "confirmed", CONFIRMED)
    return Wish(made, want, judged, tuple(names))


def asked_of(tools: Tools, wish: Wish) -> dict[str, str | None]:
    """What was asked of tools and maker, as text."""
    return {
        "maker": wish.maker.stages.text if wish.maker is not None else None,
        "wrench": "; ".join(w.text for w in tools.wrenches) or None,
        "adapter": tools.adapter.text if tools.adapter is not None else None,
    }


def crow_foot(typed: str | CrowFoot | Mapping[str, str] | None) -> CrowFoot | None:
    """``2 in on 12 in at 90 deg``, or the keys of a job's table; InputError when it is not so written."""
    if typed is None or isinstance(typed, CrowFoot):
        return typed
    if not isinstance(typed, str):
        return _crow_foot_of(typed)
    match = re.fullmatch(_ADAPTER, " ".join(typed.split()))
    if match is None:
        do = 'write it as "2 in on 12 in" or "2 in on 12 in at 90 deg"'
        raise InputError(typed, "adapter", "not a crow-foot on a wrench", (), do)
    arm, wrench = (units.parse_measure(match[part], "length", "adapter") for part in ("adapter", "wrench"))
    angle: Measure | None = units.parse_measure(match["angle"], "angle", "adapter") if match["angle"] else None
    return CrowFoot(arm, wrench, angle)


def _crow_foot_of(keys: Mapping[str, str]) -> CrowFoot:
    wanted = ("length", "wrench_length")
    if not set(wanted) <= set(keys) <= {*wanted, "angle"}:
        odd = next((k for k in keys if k not in (*wanted, "angle")), "adapter")
        do = "give length and wrench_length, and the angle where it is not straight on"
        raise InputError(odd, "adapter", "not the keys of a crow-foot", (*wanted, "angle"), do)
    arm, wrench = (units.parse_measure(keys[k], "length", f"adapter {k}") for k in wanted)
    angle = keys.get("angle")
    return CrowFoot(arm, wrench, units.parse_measure(angle, "angle", "adapter angle") if angle else None)


def _choice(typed: str, where: str, choices: Sequence[str]) -> str:
    if typed not in choices:
        from gaugeblock.tables.near import of_these

        raise InputError(
            typed[:60], where, "not one of the words there are", of_these(typed, choices), "use one of these"
        )
    return typed
