"""Joint: all that the tables say of one thread, grade, condition and service. Looked up once, then kept."""

from __future__ import annotations

from gaugeblock import lookup, spreads
from gaugeblock.answer.making import derived
from gaugeblock.errors import LookupMiss
from gaugeblock.fasteners import keys
from gaugeblock.figure import Figure
from gaugeblock.value import Keys, Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.keys import Thread
    from gaugeblock.tables.load import Refdata


class Friction(Value):
    """The nut factor that governs, the ends of its spread, and what those ends rest on.

    ``own_low`` is the low end of the governing figure alone. ``has_low`` says whether a source gives a low end at all:
    a mean alone gives none. ``assumed`` says whose factor was taken where none is on record for this surface.
    """

    __slots__ = ("assumed", "ends", "factor", "has_low", "high", "low", "own_low", "rubs")

    factor: Figure
    low: float
    high: float
    own_low: float
    has_low: bool
    ends: tuple[Figure, ...]
    rubs: str
    assumed: str

    def __init__(
        self,
        factor: Figure,
        low: float,
        high: float,
        own_low: float,
        has_low: bool,
        ends: tuple[Figure, ...],
        rubs: str,
        assumed: str,
    ) -> None:
        put(self, "factor", factor)
        put(self, "low", low)
        put(self, "high", high)
        put(self, "own_low", own_low)
        put(self, "has_low", has_low)
        put(self, "ends", ends)
        put(self, "rubs", rubs)
        put(self, "assumed", assumed)

    @property
    def is_stated(self) -> bool:
        """Whether somebody stated both of its ends."""
        return self.factor.basis in ("stated", "measured") and self.factor.low is not None


class Joint(Value):
    """All that the tables say of one thread, grade, condition and service, and what is stated in their place.

    ``published`` and ``proof`` may be missing. ``is_own`` says that something stated differs from the tables, so that
    no table's torque is for this bolt; ``aim`` is a preload that somebody wants as a force; ``beside`` is what is
    stated, each with what the tables have.
    """

    __slots__ = (
        *("aim", "area", "beside", "diameter", "friction", "is_own", "key", "proof", "published", "share", "tensile"),
        "thread",
    )

    thread: Thread
    key: Keys
    area: Figure
    diameter: Figure
    tensile: Figure | None
    proof: Figure | None
    friction: Friction
    share: Figure
    published: Figure | None
    is_own: bool
    aim: Figure | None
    beside: tuple[Figure, ...]

    def __init__(
        self,
        thread: Thread,
        key: Keys,
        area: Figure,
        diameter: Figure,
        tensile: Figure | None,
        proof: Figure | None,
        friction: Friction,
        share: Figure,
        published: Figure | None,
        is_own: bool = False,
        aim: Figure | None = None,
        beside: tuple[Figure, ...] = (),
    ) -> None:
        put(self, "thread", thread)
        put(self, "key", key)
        put(self, "area", area)
        put(self, "diameter", diameter)
        put(self, "tensile", tensile)
        put(self, "proof", proof)
        put(self, "friction", friction)
        put(self, "share", share)
        put(self, "published", published)
        put(self, "is_own", is_own)
        put(self, "aim", aim)
        put(self, "beside", beside)

    def __hash__(self) -> int:
        return hash(self.key)

    @property
    def condition(self) -> str:
        """The condition cell."""
        return self.key["condition"]

    @property
    def table(self) -> Figure | None:
        """The torque of a published table for this bolt; None where only habit has one, or its own figures differ."""
        found = self.published
        return found if found is not None and found.basis != "common practice" and not self.is_own else None

    @property
    def title(self) -> str:
        """Thread, grade and condition in one line."""
        grade = f"{self.key['standard']} {self.key['grade']}".strip()
        return ", ".join(t for t in (self.key["thread"], grade, self.condition) if t)

    @property
    def is_kept(self) -> bool:
        """Whether what is worked out of it may be kept for the next question: not where something is stated."""
        return not (self.is_own or self.beside or self.aim)


def joint_of(
    thread: Thread,
    grade: tuple[str, str],
    condition: tuple[str, str, str],
    service: str,
    joint: str,
    data: Refdata,
) -> Joint:
    """The Joint of key cells; memoised in ``data``. LookupMiss where neither a torque nor a strength is on record."""
    memo = ("joint", thread.cell, grade, condition, service, joint)
    got = data._memo.get(memo)
    if got is None:
        got = data._memo[memo] = _joint(thread, grade, condition, service, joint, data)
    return got  # type: ignore[return-value]


def _joint(
    thread: Thread, grade: tuple[str, str], condition: tuple[str, str, str], service: str, joint: str, data: Refdata
) -> Joint:
    standard, cell = grade
    key = Keys(thread=thread.cell, standard=standard, grade=cell, condition=condition[0], service=service, joint=joint)
    at = {"standard": standard, "grade": cell, "size": thread.size}
    miss: LookupMiss | None = None
    proof: Figure | None = None
    try:
        proof = proof_of(at, data)
    except LookupMiss as error:
        miss = error
    published = lookup.look_up_or_none(
        "fasteners/torques",
        "tightening_torque",
        data=data,
        thread=thread.cell,
        standard=standard,
        grade=cell,
        condition=condition[0],
        service=service,
    )
    if miss is not None and published is None:
        raise miss
    return Joint(
        thread,
        key,
        lookup.look_up("fasteners/threads", "tensile_stress_area", data=data, thread=thread.cell),
        diameter_of(thread, data),
        lookup.look_up_or_none("fasteners/grades", "tensile_strength", data=data, **at),
        proof,
        friction_of(grade, condition, data),
        share_of_proof(joint, data),
        published,
    )


def share_of_proof(joint: str, data: Refdata) -> Figure:
    """The share of the proof load that a joint is tightened to."""
    return lookup.look_up(
        "fasteners/preload", "preload_share", data=data, method="target", lubricant="any", case=f"{joint} joint"
    )


def friction_of(grade: tuple[str, str], condition: tuple[str, str, str], data: Refdata) -> Friction:
    """The nut factor of a grade's own metal in a condition, else that of the plain surface, with its ends."""
    _, surface, lubricant = condition
    table, rubs = "fasteners/nut_factors", keys.surface_of(*grade, surface, data)
    own = lookup.look_up_or_none(table, "nut_factor", data=data, surface=rubs, lubricant=lubricant)
    assumed = ""
    if own is None and rubs != surface:
        assumed = (
            f"No nut factor is on record for {rubs} with this lubricant: that of {surface} is taken. Measure "
            "this lot's friction."
        )
    factor = own or lookup.look_up(table, "nut_factor", data=data, surface=surface, lubricant=lubricant)
    low, high = lookup.spread(factor)
    own_low = factor.low if factor.low is not None else factor.typical
    if high - low < 1e-9:
        return scattered(factor, lubricant, rubs, assumed, data)
    ends = spreads.spread_ends(factor)
    alike = (factor, *lookup.same_specificity(factor))
    has_low = any(f.low is not None and f.basis != "common practice" for f in alike)
    return Friction(factor, low, high, own_low, has_low, ends, rubs, assumed)


def scattered(factor: Figure, lubricant: str, rubs: str, assumed: str, data: Refdata) -> Friction:
    """The Friction of one number: its ends are those of the tool's scatter."""
    greased = "none" if lubricant == "none" else "lubricated"
    scatter = lookup.look_up(
        "fasteners/preload", "preload_scatter", data=data, method="torque wrench", lubricant=greased, case="any"
    )
    part, own_low = scatter.typical / 100, factor.low if factor.low is not None else factor.typical
    low, high = factor.typical / (1 + part), factor.typical / (1 - part)
    return Friction(factor, low, high, own_low, True, (scatter,), rubs, assumed)


def diameter_of(thread: Thread, data: Refdata) -> Figure:
    found = lookup.look_up_or_none("fasteners/threads", "major_diameter", data=data, thread=thread.cell)
    if found is not None:
        return found
    number, unit = thread.size.split(" ")
    rule, key = "nominal_diameter_from_designation", {"thread": thread.cell}
    return derived(rule, "major_diameter", float(number), unit, (), data, key=key)


def proof_of(at: dict[str, str], data: Refdata) -> Figure:
    """The proof strength of a grade and size, else 0.85 of its yield strength by the textbook's estimate; LookupMiss
    where neither is on record.
    """
    try:
        return lookup.look_up("fasteners/grades", "proof_strength", data=data, **at)
    except LookupMiss as miss:
        yields = lookup.look_up_or_none("fasteners/grades", "yield_strength", data=data, **at)
        if yields is None:
            why = "no proof or yield strength is published for this grade and size"
            asked = f"{at['standard']} {at['grade']}, {at['size']}"
            raise LookupMiss(asked, "fasteners/grades proof_strength", why, miss.nearest, "ask the maker") from None
        return proof_from_yield(yields, at, data)


def proof_from_yield(yields: Figure, at: dict[str, str], data: Refdata) -> Figure:
    """0.85 of a yield strength, by the textbook's estimate."""
    ratio = lookup.look_up(
        "fasteners/preload",
        "proof_to_yield_ratio",
        data=data,
        method="estimate",
        lubricant="any",
        case="material without a proof value",
    )
    value = yields.least * ratio.typical
    return derived("proof_from_yield", "proof_strength", value, yields.unit, (yields, ratio), data, key=at, side="min")
