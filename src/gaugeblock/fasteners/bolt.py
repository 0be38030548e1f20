"""What an answer on fasteners is asked about: a bolt or a part, and what it is tightened with. All of it read."""

from __future__ import annotations

import math

from gaugeblock.calc import fasteners as calc
from gaugeblock.errors import InputError
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.fasteners.keys import Thread
    from gaugeblock.fasteners.maker import Maker
    from gaugeblock.job.wrench import WrenchRange
    from gaugeblock.known import Known
    from gaugeblock.units import Measure

STRENGTHS = ("proof_strength", "yield_strength", "tensile_strength")
OWN = ("nut_factor", "preload", *STRENGTHS)
GRIP = ("length", "shank", "metal", "modulus", "bolt_modulus", "load")


class CrowFoot(Value):
    """A crow-foot on a wrench.

    ``arm`` (drive centre to fastener), ``wrench`` (drive to grip), ``angle`` between them.
    """

    __slots__ = ("angle", "arm", "wrench")

    arm: Measure
    wrench: Measure
    angle: Measure | None

    def __init__(self, arm: Measure, wrench: Measure, angle: Measure | None = None) -> None:
        put(self, "arm", arm)
        put(self, "wrench", wrench)
        put(self, "angle", angle)
        arm_m, wrench_m, rad = self.metric
        if arm_m < 0 or wrench_m <= 0 or wrench_m + arm_m * math.cos(rad) <= 0:
            why = "lengths must be more than zero, the wrench longer than a turned-back adapter"
            do = "measure drive centre to grip centre, and drive centre to fastener centre"
            raise InputError(self.text, "adapter", why, (), do)

    @property
    def metric(self) -> tuple[float, float, float]:
        """Arm and wrench in metres, the angle in radians."""
        return self.arm.to("m"), self.wrench.to("m"), self.angle.to("rad") if self.angle is not None else 0.0

    @property
    def text(self) -> str:
        """As it is typed: ``2 in on 12 in at 90 deg``."""
        at = f" at {self.angle}" if self.angle is not None else ""
        return f"{self.arm} on {self.wrench}{at}"

    @property
    def ratio(self) -> float:
        """What the dial reads for 1 at the fastener."""
        arm_m, wrench_m, rad = self.metric
        return float(calc.adapter_setting(1.0, wrench_m, arm_m, rad))


class Tools(Value):
    """What is between the hand and the thread.

    A locknut (its cell), its drag as measured, a crow-foot, wrenches to choose from.
    """

    __slots__ = ("adapter", "locknut", "prevailing", "wrenches")

    locknut: str
    prevailing: Measure | None
    adapter: CrowFoot | None
    wrenches: tuple[WrenchRange, ...]

    def __init__(
        self,
        locknut: str = "",
        prevailing: Measure | None = None,
        adapter: CrowFoot | None = None,
        wrenches: Sequence[WrenchRange] = (),
    ) -> None:
        put(self, "locknut", locknut)
        put(self, "prevailing", prevailing)
        put(self, "adapter", adapter)
        put(self, "wrenches", tuple(wrenches))


class Wish(Value):
    """A torque that somebody names.

    The ``maker``'s, the one ``wanted`` at the fastener, or a setting ``given`` to be judged.
    """

    __slots__ = ("confirmed", "given", "maker", "wanted")

    maker: Maker | None
    wanted: Measure | None
    given: Measure | None
    confirmed: tuple[str, ...]

    def __init__(
        self,
        maker: Maker | None = None,
        wanted: Measure | None = None,
        given: Measure | None = None,
        confirmed: Sequence[str] = (),
    ) -> None:
        put(self, "maker", maker)
        put(self, "wanted", wanted)
        put(self, "given", given)
        put(self, "confirmed", tuple(confirmed))

    @property
    def is_named(self) -> bool:
        """Whether a torque is named that needs no table."""
        return self.maker is not None or self.wanted is not None


class Tapped(Value):
    """What a thread goes into.

    Metal (its cell), steel ``insert`` (yes, no, or blank), thread engaged, tensile strength.
    """

    __slots__ = ("engagement", "insert", "metal", "strength")

    metal: str
    insert: str
    engagement: Measure | None
    strength: Known | None

    def __init__(
        self, metal: str = "", insert: str = "", engagement: Measure | None = None, strength: Known | None = None
    ) -> None:
        put(self, "metal", metal)
        put(self, "insert", insert)
        put(self, "engagement", engagement)
        put(self, "strength", strength)

    @property
    def is_asked(self) -> bool:
        """Whether anything of it is known."""
        return bool(self.metal or self.engagement or self.strength)


class Own(Value):
    """What is stated of a bolt in place of the tables: each a Known, or None."""

    __slots__ = OWN

    nut_factor: Known | None
    preload: Known | None
    proof_strength: Known | None
    yield_strength: Known | None
    tensile_strength: Known | None

    def __init__(
        self,
        nut_factor: Known | None = None,
        preload: Known | None = None,
        proof_strength: Known | None = None,
        yield_strength: Known | None = None,
        tensile_strength: Known | None = None,
    ) -> None:
        put(self, "nut_factor", nut_factor)
        put(self, "preload", preload)
        put(self, "proof_strength", proof_strength)
        put(self, "yield_strength", yield_strength)
        put(self, "tensile_strength", tensile_strength)

    @property
    def is_stated(self) -> bool:
        """Whether anything is."""
        return any(getattr(self, name) is not None for name in OWN)

    @property
    def has_strength(self) -> bool:
        """Whether a proof load can be worked out of it."""
        return self.proof_strength is not None or self.yield_strength is not None

    @property
    def text(self) -> str:
        """All of it in one line."""
        found = ((name, getattr(self, name)) for name in OWN)
        return ", ".join(f"{name.replace('_', ' ')} {known}" for name, known in found if known is not None)


class Grip(Value):
    """What a bolt clamps: the ``length`` of the grip, the plain ``shank`` inside it, the clamped ``metal``, a
    ``modulus`` of that and one of the bolt where they are stated, and the outside ``load`` on one bolt.
    """

    __slots__ = GRIP

    length: Measure
    shank: Measure | None
    metal: str
    modulus: Known | None
    bolt_modulus: Known | None
    load: Measure | None

    def __init__(
        self,
        length: Measure,
        shank: Measure | None = None,
        metal: str = "",
        modulus: Known | None = None,
        bolt_modulus: Known | None = None,
        load: Measure | None = None,
    ) -> None:
        put(self, "length", length)
        put(self, "shank", shank)
        put(self, "metal", metal)
        put(self, "modulus", modulus)
        put(self, "bolt_modulus", bolt_modulus)
        put(self, "load", load)
        if shank is not None and shank.to("m") > length.to("m") * (1 + 1e-9):
            why, do = "longer than the grip that it lies in", "measure the plain shank inside the grip alone"
            raise InputError(shank.text, "grip shank", why, (), do)

    @property
    def text(self) -> str:
        """All of it in one line."""
        found = ((name, getattr(self, name)) for name in GRIP[1:])
        return ", ".join([self.length.text, *(f"{n.replace('_', ' ')} {v}" for n, v in found if v not in (None, ""))])


class Bolt(Value):
    """A thread with its grade and condition in key cells, what it goes into, the tools, a torque that somebody names,
    and what is known of this very bolt.

    ``thread``, ``grade`` (standard and grade) and ``condition`` (cell, surface, lubricant) may each be missing;
    ``rubs`` is the cell of a condition whose friction nobody published.
    """

    __slots__ = ("condition", "grade", "grip", "joint", "own", "rubs", "service", "tapped", "thread", "tools", "wish")

    thread: Thread | None
    grade: tuple[str, str] | None
    condition: tuple[str, str, str] | None
    service: str
    joint: str
    tapped: Tapped
    tools: Tools
    wish: Wish
    own: Own
    grip: Grip | None
    rubs: str

    def __init__(
        self,
        thread: Thread | None,
        grade: tuple[str, str] | None,
        condition: tuple[str, str, str] | None,
        service: str = "vehicle",
        joint: str = "reused",
        tapped: Tapped | None = None,
        tools: Tools | None = None,
        wish: Wish | None = None,
        own: Own | None = None,
        grip: Grip | None = None,
        rubs: str = "",
    ) -> None:
        put(self, "thread", thread)
        put(self, "grade", grade)
        put(self, "condition", condition)
        put(self, "service", service)
        put(self, "joint", joint)
        put(self, "tapped", tapped or Tapped())
        put(self, "tools", tools or Tools())
        put(self, "wish", wish or Wish())
        put(self, "own", own or Own())
        put(self, "grip", grip)
        put(self, "rubs", rubs)

    @property
    def of_threads(self) -> str:
        """The condition of the threads; blank where none was said."""
        return self.condition[0] if self.condition is not None else self.rubs

    @property
    def has_typed(self) -> bool:
        """Whether a torque, a length, a tool or a figure of its own was typed beside the keys."""
        if self.own.is_stated or self.grip is not None:
            return True
        return self.wish != Wish() or self.tapped != Tapped() or self.tools != Tools()


class Piece(Value):
    """A part that has a torque of its own.

    Its key cells, the condition it is tightened in, the tools, a named torque.
    """

    __slots__ = ("condition", "material", "part", "seat", "service", "size", "tools", "wish")

    part: str
    size: str | None
    seat: str | None
    material: str | None
    service: str
    condition: str
    tools: Tools
    wish: Wish

    def __init__(
        self,
        part: str,
        size: str | None = None,
        seat: str | None = None,
        material: str | None = None,
        service: str = "vehicle",
        condition: str = "",
        tools: Tools | None = None,
        wish: Wish | None = None,
    ) -> None:
        put(self, "part", part)
        put(self, "size", size)
        put(self, "seat", seat)
        put(self, "material", material)
        put(self, "service", service)
        put(self, "condition", condition)
        put(self, "tools", tools or Tools())
        put(self, "wish", wish or Wish())

    @property
    def has_typed(self) -> bool:
        """Whether a torque or a tool was typed beside the keys."""
        return self.wish != Wish() or self.tools != Tools()
