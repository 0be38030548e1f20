"""What was typed and is not plausible: it is asked about, and the answer is worked out without it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.making import base
from gaugeblock.answer.plausible import (
    base_of,
    did_you_mean,
    is_plausible,
    other_readings,
    plausible_range,
    run_together,
)
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.fasteners.bolt import Bolt, Piece, Tapped, Tools, Wish
from gaugeblock.figure import Figure
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.fasteners.joint import Joint
    from gaugeblock.fasteners.maker import Maker
    from gaugeblock.tables.load import Refdata
    from gaugeblock.units import Measure

TORQUES = ("lbf*ft", "lbf*in", "N*m")
# A torque that clamps less than this share of proof, or more than proof, is asked about; so is a drag of this share of
# the torque, from which a manual (rule prevailing_torque_added) begins to count it at all.
LEAST_SHARE, MOST_SHARE, GREAT_DRAG = 0.25, 1.0, 0.33
_KEYS = {"maker": "maker.torque", "adapter": "adapter.wrench_length"}


class Doubt(Value):
    """A typed value that is not plausible: its option, and what is said and asked about it."""

    __slots__ = ("option", "says")

    option: str
    says: str

    def __init__(self, option: str, says: str) -> None:
        put(self, "option", option)
        put(self, "says", says)

    @property
    def check(self) -> Check:
        """The check that asks before the number is used."""
        return Check(f"{_named(self.option)} as typed", CANNOT_TELL, self.says, bears=ASK)

    @property
    def question(self) -> Question:
        """The question, with the key that closes it."""
        kind = {"maker": ASK_MAKER, "prevailing": MEASURE, "engagement": MEASURE, "adapter": MEASURE}
        text = f"{self.says} If it is right, say that it is confirmed."
        key = _KEYS.get(self.option, self.option)
        return Question(kind.get(self.option, FILL_IN), text, key, (self.check.name,))


def _named(option: str) -> str:
    return {"maker": "maker's figure", "prevailing": "locknut's drag", "adapter": "crow-foot"}.get(
        option, option.replace("_", " ")
    )


def without(bolt: Bolt, doubts: list[Doubt]) -> Bolt:
    """The bolt as if the doubtful values had not been typed."""
    gone = {d.option for d in doubts}
    return bolt.replace(
        tools=_tools_without(bolt.tools, gone),
        wish=_wish_without(bolt.wish, gone),
        tapped=_tapped_without(bolt.tapped, gone),
    )


def piece_without(piece: Piece, doubts: list[Doubt]) -> Piece:
    """The part as if the doubtful values had not been typed."""
    gone = {d.option for d in doubts}
    return piece.replace(tools=_tools_without(piece.tools, gone), wish=_wish_without(piece.wish, gone))


def _tools_without(tools: Tools, gone: set[str]) -> Tools:
    if "adapter" in gone:
        tools = tools.replace(adapter=None, wrenches=())
    if "prevailing" in gone:
        tools = tools.replace(prevailing=None, wrenches=())
    return tools


def _wish_without(wish: Wish, gone: set[str]) -> Wish:
    return wish.replace(**{name: None for name in ("maker", "wanted", "given") if name in gone})


def _tapped_without(tapped: Tapped, gone: set[str]) -> Tapped:
    return tapped.replace(
        engagement=None if "engagement" in gone else tapped.engagement,
        strength=None if "tapped_strength" in gone else tapped.strength,
    )


# --- what is doubtful -------------------------------------------------------------------------------------------------


def of_bolt(bolt: Bolt, found: Joint | None, torque: Figure | None, data: Refdata) -> list[Doubt]:
    """All doubts about what was typed for a bolt; ``torque`` is the one of the tables, None where there is none."""
    is_judged = found is not None and found.proof is not None
    span = _span(found, bolt, data)
    doubts = [*_of_torques(bolt.wish, span, is_judged), *_of_crow_foot(bolt.tools, data)]
    if torque is not None and span is not None and not any(d.option == "maker" for d in doubts):
        doubts += _of_the_other_unit(bolt.wish.maker, torque, span[1])
    named = _first_torque(bolt.wish)
    against = torque if named is None else named
    doubts += _of_drag(bolt.tools, against, data)
    doubts += _of_tapped(bolt, data)
    return [d for d in doubts if d.option not in bolt.wish.confirmed]


def of_piece(piece: Piece, rows: list[Figure], data: Refdata) -> list[Doubt]:
    """All doubts about what was typed for a part; ``rows`` are the torques of the tables that may be its own."""
    torques = [r for r in rows if units.dimension(r.unit) == "torque"]
    ends = [units.to_base(e, r.unit) for r in torques for e in (r.value, r.low, r.high) if e is not None]
    span = (min(ends) / 3, max(ends) * 3) if ends else None
    around = span or _span_of_part(piece.part, data) or plausible_range("tightening_torque", data)
    doubts = [
        *_of_torques(piece.wish, around, False),
        *_of_crow_foot(piece.tools, data),
    ]
    named = _first_torque(piece.wish)
    torque = torques[0] if torques else None
    doubts += _of_drag(piece.tools, torque if named is None else named, data)
    return [d for d in doubts if d.option not in piece.wish.confirmed]


def _span_of_part(part: str, data: Refdata) -> tuple[float, float] | None:
    """A third of the least to three times the most, in N m, that any size of the part takes in any service."""
    ends = [
        units.to_base(float(units.parse_number(row[end])), row["unit"])
        for row in data.table("fasteners/part_torques").rows
        if row.key[0] == part and row["quantity"] == "tightening_torque" and not row["standing"]
        for end in ("value", "low", "high")
        if row[end]
    ]
    return (min(ends) / 3, max(ends) * 3) if ends else None


def _span(found: Joint | None, bolt: Bolt, data: Refdata) -> tuple[float, float] | None:
    """The torques, in N m, that clamp between the least and the most share of proof of the bolt.

    Without a grade, of the weakest and the strongest bolt that is plausible at all.
    """
    if found is None or found.proof is None:
        return _span_of_size(bolt, data)
    proof_n = base(found.area) * units.to_base(found.proof.least, found.proof.unit)
    whole = _nut_factor(found, bolt, data) * base(found.diameter) * proof_n
    return LEAST_SHARE * whole, MOST_SHARE * whole


def _nut_factor(found: Joint, bolt: Bolt, data: Refdata) -> float:
    """The nut factor of the threads that a maker's torque is for, else of these."""
    maker = bolt.wish.maker
    if maker is not None and maker.condition not in ("", bolt.of_threads):
        from gaugeblock.fasteners.turned import factor_of

        there = factor_of(bolt.grade, maker.condition, data)
        if there is not None:
            return there.typical
    return found.friction.factor.typical


def _span_of_size(bolt: Bolt, data: Refdata) -> tuple[float, float] | None:
    from gaugeblock import lookup

    strengths, factors = plausible_range("proof_strength", data), plausible_range("nut_factor", data)
    if bolt.thread is None or strengths is None or factors is None:
        return plausible_range("tightening_torque", data)
    area = lookup.look_up_or_none("fasteners/threads", "tensile_stress_area", data=data, thread=bolt.thread.cell)
    if area is None:
        return plausible_range("tightening_torque", data)
    low, high = (s * base(area) * bolt.thread.diameter_m for s in strengths)
    return LEAST_SHARE * low * factors[0], MOST_SHARE * high * factors[1]


def _first_torque(wish: Wish) -> Measure | None:
    """The torque that somebody names, for a comparison."""
    if wish.given is not None:
        return wish.given
    if wish.maker is not None and wish.maker.stages.torques:
        return wish.maker.stages.torques[-1].low
    return wish.wanted


def _of_torques(wish: Wish, span: tuple[float, float] | None, is_judged: bool) -> list[Doubt]:
    """Doubts about the torques that somebody names; ``is_judged`` says that proof judges one that is too high."""
    if span is None:
        return []
    found = []
    maker = wish.maker
    if maker is not None and maker.stages.torques:
        found += _of_maker(maker, span)
    for option, measure in (("wanted", wish.wanted), ("given", wish.given)):
        if measure is None or (is_judged and base_of(measure) >= span[0]):
            continue  # one over proof is judged: it is refused, with its reason
        if says := _outside(measure, span, ""):
            found.append(Doubt(option, says))
    return found


def _of_maker(maker: Maker, span: tuple[float, float]) -> list[Doubt]:
    """The maker's last torque; one that is followed by an angle, or preceded by stages, may well be low."""
    last = maker.stages.torques[-1]
    if last.low is None or last.high is None:
        return []
    least = span[0] if maker.stages.ends_by_torque else 0.0
    measure = last.high if base_of(last.high) > span[1] else last.low
    says = _outside(measure, (least, span[1]), "the maker's ")
    return [Doubt("maker", says)] if says else []


# So near the tables' torque a number in newton metres is that torque, and was written in pound-feet by mistake, where
# those would come so near proof.
_SAME, _NEAR_PROOF = 0.08, 0.9


def _of_the_other_unit(maker: Maker | None, torque: Figure, most: float) -> list[Doubt]:
    """A maker's pound-feet that are a third over the tables' torque and hardly under the ``most`` that the bolt takes,
    N m, and that would be the tables' torque in newton metres.
    """
    if maker is None or not maker.stages.torques or not maker.stages.ends_by_torque:
        return []
    last = maker.stages.torques[-1].low
    if last is None or last.unit != "lbf*ft" or abs(float(last.value) / base(torque) - 1) > _SAME:
        return []
    if base_of(last) < _NEAR_PROOF * most:
        return []
    has = f"{units.significant(base(torque), 3)} N*m"
    said = f"the maker's {last.text} is {base_of(last) / base(torque):.2g} times the {has} of the tables"
    return [Doubt("maker", did_you_mean(capital(said), (f"{last.number} N*m",)))]


def _outside(measure: Measure, span: tuple[float, float], whose: str) -> str:
    got = base_of(measure)
    if span[0] * (1 - 1e-9) <= got <= span[1] * (1 + 1e-9):
        return ""
    unit = measure.unit
    low, high = (units.significant(units.from_base(e, unit), 2) for e in span)
    if measure.number in (low, high):
        low, high = (units.significant(units.from_base(e, unit), 3) for e in span)
    far = "low" if got < span[0] else "high"
    said = f"{whose}{measure.text} is very {far} here: this fastener takes about {low} to {high} {unit}"
    return did_you_mean(capital(said), other_readings(measure, *span, TORQUES))


def _of_drag(tools: Tools, torque: Figure | Measure | None, data: Refdata) -> list[Doubt]:
    drag = tools.prevailing
    if drag is None:
        return []
    most, of = None, ""
    if torque is not None:
        nm = base(torque) if isinstance(torque, Figure) else base_of(torque)
        most = GREAT_DRAG * nm
        of = f"{torque.text} {torque.unit}" if isinstance(torque, Figure) and torque.text else ""
        if isinstance(torque, Figure) and not of:
            of = f"{units.significant(torque.typical, 3)} {torque.unit}"
        elif not isinstance(torque, Figure):
            of = torque.text
    great = most is not None and base_of(drag) > most
    if not great and (drag.value == 0 or is_plausible(drag, "prevailing_torque", data)):
        return []
    span = plausible_range("prevailing_torque", data) or (0.0, base_of(drag))
    top = min(span[1], most) if most is not None else span[1]
    said = (
        f"{drag.text} is a great drag for a torque of {of}" if great else f"{drag.text} is no usual drag of a locknut"
    )
    return [Doubt("prevailing", did_you_mean(said, other_readings(drag, span[0], top, TORQUES)))]


def _of_crow_foot(tools: Tools, data: Refdata) -> list[Doubt]:
    adapter = tools.adapter
    if adapter is None:
        return []
    for measure, quantity, what in (
        (adapter.wrench, "wrench_length", "length of a torque wrench"),
        (adapter.arm, "adapter_length", "length of a crow-foot"),
    ):
        span = plausible_range(quantity, data)
        if measure.value == 0 or span is None or is_plausible(measure, quantity, data):
            continue
        said = f"{measure.text} is no usual {what}"
        return [Doubt("adapter", did_you_mean(said, other_readings(measure, *span, ("in", "mm", "ft"))))]
    if adapter.arm.to("m") > adapter.wrench.to("m"):
        return [
            Doubt(
                "adapter",
                f"The crow-foot ({adapter.arm}) is longer than its wrench ({adapter.wrench}). Measure both again.",
            )
        ]
    return []


def _of_tapped(bolt: Bolt, data: Refdata) -> list[Doubt]:
    out = []
    length, strength = bolt.tapped.engagement, bolt.tapped.strength
    span = plausible_range("engagement_diameters", data)
    if length is not None and bolt.thread is not None and span is not None:
        low, high = (e * bolt.thread.diameter_m for e in span)
        if run_together(length) or not low <= base_of(length) <= high:
            said = (
                f"{length.text} of thread engaged is {base_of(length) / bolt.thread.diameter_m:.2g} diameters of "
                "this bolt"
            )
            out.append(Doubt("engagement", did_you_mean(said, other_readings(length, low, high, ("in", "mm")))))
    if strength is not None:
        from gaugeblock.fasteners.unlikely import STRESSES, outside

        what = "tensile strength of a metal that is tapped"
        out += outside("tapped_strength", strength, "tapped_strength", what, STRESSES, data)
    return out
