"""Joint: all that the tables say of one thread, grade, condition and service. Looked up once, then kept."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.errors import InputError, LookupMiss
from gaugeblock.fasteners import keys as fastener_keys
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.keys import Thread

JOINTS = ("reused", "permanent")


class Joint:
    """All that the tables say of one thread, grade, condition and service. Looked up once, then kept."""

    __slots__ = (
        "area", "assumed", "condition", "diameter", "ends", "factor", "factor_high", "factor_low", "factor_own_low", "grade", "key", "proof",
        "published", "rubs", "scatter", "share", "standard", "tensile", "thread",
    )  # fmt: skip

    def __init__(
        self, thread: Thread, standard: str, grade: str, condition: str, service: str, joint: str, data: Refdata
    ) -> None:
        self.thread = thread
        self.standard = standard
        self.grade = grade
        cell, surface, lubricant = fastener_keys.condition(condition, data)
        self.condition = cell
        self.key = {
            "thread": thread.cell, "standard": standard, "grade": grade, "condition": cell, "service": service, "joint": joint,
        }  # fmt: skip
        self.area = lookup.look_up("fasteners/threads", "tensile_stress_area", data=data, thread=thread.cell)
        self.diameter = _diameter(thread, data)
        at = {"standard": standard, "grade": grade, "size": thread.size}
        self.tensile = lookup.look_up_or_none("fasteners/grades", "tensile_strength", data=data, **at)
        self.proof: Figure | None = None
        miss: LookupMiss | None = None
        try:
            self.proof = _proof(at, data)
        except LookupMiss as error:
            miss = error
        table, rubs = "fasteners/nut_factors", fastener_keys.surface_of(standard, grade, surface, data)
        own = lookup.look_up_or_none(table, "nut_factor", data=data, surface=rubs, lubricant=lubricant)
        self.rubs = rubs
        self.assumed = ""
        if own is None and rubs != surface:
            self.assumed = f"No nut factor is on record for {rubs} with this lubricant: that of {surface} is taken. Measure this lot's friction."
        self.factor = own or lookup.look_up(table, "nut_factor", data=data, surface=surface, lubricant=lubricant)
        self.factor_own_low = self.factor.low if self.factor.low is not None else self.factor.typical
        self.factor_low, self.factor_high = lookup.spread(self.factor)
        self.scatter: Figure | None = None
        if self.factor_high - self.factor_low < 1e-9:
            greased = "none" if lubricant == "none" else "lubricated"
            self.scatter = lookup.look_up(
                "fasteners/preload", "preload_scatter", data=data, method="torque wrench", lubricant=greased, case="any"
            )
            part = self.scatter.typical / 100
            self.factor_low, self.factor_high = self.factor.typical / (1 + part), self.factor.typical / (1 - part)
        self.ends = lookup.spread_ends(self.factor) if self.scatter is None else (self.scatter,)
        self.share = lookup.look_up(
            "fasteners/preload", "preload_share", data=data, method="target", lubricant="any", case=f"{joint} joint"
        )
        self.published = lookup.look_up_or_none(
            "fasteners/torques", "tightening_torque", data=data, thread=thread.cell, standard=standard, grade=grade,
            condition=cell, service=service,
        )  # fmt: skip
        if miss is not None and self.published is None:
            raise miss

    def id(self, rule: str, quantity: str, data: Refdata, more: str = "") -> str:
        """The id of a derived figure of this joint; ``more`` tells apart what the key does not."""
        place = "|".join(self.key.values()) + (f"|{more}" if more else "")
        return f"derived:{rule}:{place}:{quantity}@{data.release}"


def _diameter(thread: Thread, data: Refdata) -> Figure:
    found = lookup.look_up_or_none("fasteners/threads", "major_diameter", data=data, thread=thread.cell)
    if found is not None:
        return found
    number, unit = thread.size.split(" ")
    rule = data.rule("nominal_diameter_from_designation")
    return Figure(
        f"derived:{rule.name}:{thread.cell}:major_diameter@{data.release}", "major_diameter", float(number), unit,
        basis="derived", rule=rule, since=data.release, key={"thread": thread.cell},
    )  # fmt: skip


def _proof(at: dict[str, str], data: Refdata) -> Figure:
    """The proof strength of a grade, else 0.85 of its yield strength by the textbook's estimate."""
    try:
        return lookup.look_up("fasteners/grades", "proof_strength", data=data, **at)
    except LookupMiss as miss:
        yields = lookup.look_up_or_none("fasteners/grades", "yield_strength", data=data, **at)
        if yields is None:
            raise LookupMiss(
                f"{at['standard']} {at['grade']}, {at['size']}", "fasteners/grades proof_strength",
                "no proof or yield strength is published for this grade and size", miss.nearest, "ask the maker",
            ) from None  # fmt: skip
        ratio = lookup.look_up(
            "fasteners/preload", "proof_to_yield_ratio", data=data, method="estimate", lubricant="any",
            case="material without a proof value",
        )  # fmt: skip
        return Figure(
            f"derived:proof_from_yield:{'|'.join(at.values())}:proof_strength@{data.release}", "proof_strength",
            yields.least * ratio.typical, yields.unit, side="min", basis="derived", rule=data.rule("proof_from_yield"),
            inputs=(yields, ratio), since=data.release, key=dict(at),
        )  # fmt: skip


def joint_of(thread: str, grade: str, condition: str, service: str, joint: str, data: Refdata) -> Joint:
    """The Joint for what was typed; memoised in ``data``."""
    memo = ("joint", thread, grade, condition, service, joint)
    got = data.memo.get(memo)
    if got is None:
        if joint not in JOINTS:
            raise InputError(joint, "joint", "not a kind of joint", JOINTS, "use one of these")
        lookup.known_service(service)
        standard, grade_cell = fastener_keys.grade(grade, data)
        got = Joint(fastener_keys.thread(thread, data), standard, grade_cell, condition, service, joint, data)
        data.memo[memo] = got
    return got  # type: ignore[return-value]
