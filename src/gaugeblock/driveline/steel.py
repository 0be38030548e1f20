"""The answer ``steel``: what a shaft steel guarantees, and whether a shaft of it carries a torque."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.maker import maker_figure
from gaugeblock.answer.making import base, derived, stated
from gaugeblock.answer.sheet import Sheet, opens
from gaugeblock.calc import driveline as calc
from gaugeblock.driveline import keys
from gaugeblock.driveline.carrying import fact, hardness_fact, outcome
from gaugeblock.driveline.case import with_case
from gaugeblock.driveline.named import HARDNESS, asked_for, hardness_of, strength_of
from gaugeblock.driveline.statements import rule_cautions
from gaugeblock.driveline.steels import TABLE, Steel, governing
from gaugeblock.driveline.strength import strict_yield, torsional_yields
from gaugeblock.driveline.torsion import CASED, Strength, torsion
from gaugeblock.errors import LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic

UNNAMED = "steel not named"
_HARDENED = ("quenched", "hardened", "carburized")
_PREHEAT_USUAL = 0.45  # range of the formula carbon_equivalent
_PROCEDURE = 0.635  # the rule's 0.64, as rounded there
_ELEMENTS = ("carbon", "manganese", "chromium", "molybdenum", "vanadium", "nickel", "copper")


def _steel_topic() -> Topic:
    from gaugeblock.driveline.ask.steels import STEEL

    return STEEL


@opens(_steel_topic, "grade")
def steel(
    grade: str,
    *,
    treatment: str | None = None,
    temper: str | None = None,
    section: str | None = None,
    shaft: str | None = None,
    bore: str | None = None,
    length: str | None = None,
    torque: str | None = None,
    hardness: str | None = None,
    yield_strength: str | None = None,
    certificate: str | None = None,
    case_depth: str | None = None,
    core_hardness: str | None = None,
    shear_modulus: str | None = None,
    fact: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """The strength of a shaft steel, its torsional yield, and what a torque does to a shaft of it.

    Parameters are text as people write them: ``grade`` ``4340``; ``treatment`` ``quenched and tempered``;
    ``temper`` ``800 degF``; ``section`` the bar's own size; ``shaft`` and ``bore`` the shaft's outside and inside
    diameters, ``length`` what twists, ``torque`` what is asked of it; ``hardness`` as measured on this very shaft
    (``42 HRC``), which answers alone for a steel whose ``treatment`` nobody knows; ``yield_strength`` this shaft's
    own, by the ``certificate`` named, in place of the table's,
    or measured (``118 ksi by tensile test on 2026-11-20``); ``shear_modulus`` its own;
    ``case_depth`` and ``core_hardness`` those of a case-hardened shaft; ``fact`` ``yield``,
    ``tensile``, ``torsional yield`` or ``hardness``, which of these is asked where no shaft is; without one it is the
    yield, or the tensile strength of a steel that has no other on record.

    Returns a Sheet: with a shaft and a torque the factor on torsional yield first; then yield and tensile strength
    (the least that a source states, else the typical one), torsional yield by distortion energy and by the rule of a
    paper on axle shafts, strength by hardness, stress, torque at yield and twist. A row for another section than the
    shaft's diameter is shown for its own section and never passes the check.

    Raises LookupMiss with the nearest keys of this steel, InputError or UnitError for what cannot be read.
    Source of the method: Mott, Machine Elements in Mechanical Design, 4th ed., p. 547.

    >>> steel("1050", treatment="cold drawn", section="1 in").figure("yield_strength").text
    '84000'
    """
    data = data or refdata()
    asked = {
        "grade": grade,
        "treatment": treatment,
        "temper": temper,
        "section": section,
        "shaft": shaft,
        "bore": bore,
        "length": length,
        "torque": torque,
        "hardness": hardness,
        "yield_strength": yield_strength,
        "certificate": certificate,
        "case_depth": case_depth,
        "core_hardness": core_hardness,
        "shear_modulus": shear_modulus,
        "fact": fact,
    }
    if certificate is not None:
        from gaugeblock.answer.needs import together

        together(asked, {"certificate": ("yield_strength",)})
    of = keys.Shaft(
        grade,
        treatment or "",
        temper=None if temper is None else units.parse_measure(temper, "temperature", "temper"),
        section=None if section is None else units.parse_measure(section, "length", "section"),
        diameter=keys.positive(shaft, "length", "shaft diameter"),
        bore=keys.positive(bore, "length", "bore"),
        length=keys.positive(length, "length", "length"),
        torque=keys.positive(torque, "torque", "torque"),
        hardness=None if hardness is None else keys.hardness(hardness, data),
        yield_strength=keys.own_stress(yield_strength, "yield strength", "120 ksi"),
        certificate=certificate or "",
        case_depth=keys.positive(case_depth, "length", "case depth"),
        core_hardness=None if core_hardness is None else keys.hardness(core_hardness, data, "core hardness"),
        shear_modulus=keys.own_stress(shear_modulus, "shear modulus", "11.5 Msi"),
    )
    return judged(of, asked, data)


class Material:
    """What is known of the steel of a shaft: its strengths, and what is said of them.

    ``figures``: strengths, torsional yields, those by hardness; ``strength`` what a shaft is judged by; ``welding`` its
    carbon equivalent.
    """

    __slots__ = (
        "cautions",
        "figures",
        "strength",
        "strengths",
        "table",
        "title",
        "torsional",
        "weld_cautions",
        "welding",
    )

    def __init__(self, shaft: keys.Shaft, data: Refdata) -> None:
        self.table = found = steel_of(shaft, data)
        table = governing(found, "yield_strength", "yield_strength_typical")
        own = own_yield(shaft, found, data)
        yields = own or table
        tensile = governing(found, "tensile_strength", "tensile_strength_typical")
        shear = found.figure("shear_strength")
        self.strengths = [f for f in (yields, tensile) if f is not None]
        # of a steel whose yield comes in two steps the lower is told, and judges no shaft
        lower = found.figure("lower_yield_strength_typical") if yields is None else None
        beside = [f for f in (lower, table if own is not None else None) if f is not None]
        torsional = torsional_yields(found, yields, data) if yields is not None else []
        self.torsional = torsional
        hard_figures, own_torsional, hard_cautions = _by_hardness(found, shaft.hardness, data)
        self.figures = [*self.strengths, *beside, *torsional, *([shear] if shear is not None else []), *hard_figures]
        self.cautions = [
            *_cautions(found, self.strengths, data),
            *hard_cautions,
            *_read_as(shaft, found, self.strengths, data),
        ]
        strict = strict_yield(found, yields, data) if yields is not None and shaft.is_asked else None
        # without a yield strength the hardness measured on this very shaft is all there is
        self.strength = Strength(torsional[0] if torsional else own_torsional, strict, own_torsional)
        self.welding, self.weld_cautions = _welding(found, data)
        self.title = ", ".join(value for value in (found.grade, found.treatment, found.temper) if value != "any")


def judged(shaft: keys.Shaft, asked: dict[str, str | None], data: Refdata) -> Sheet:
    """As ``steel``, of a shaft that was read."""
    wanted = asked_for(asked.get("fact"), shaft)
    of = Material(shaft, data)
    figures, weld, cautions = of.figures, of.welding, of.cautions
    if not shaft.is_asked:
        hard = hardness_of(of, data) if wanted == HARDNESS else ()
        end = hardness_fact(hard) if wanted == HARDNESS else fact(strength_of(of, wanted), wanted)
        figures = [*hard, *figures]
        figures = sorted(figures, key=lambda f: f not in end.decision.figures)
        return Sheet(
            of.title,
            asked,
            data,
            figures + weld,
            [],
            cautions + of.weld_cautions,
            decision=end.decision,
            questions=end.questions,
        )
    more = with_case(shaft, of.table, torsion(shaft, of.table, of.strength, data), data)
    end = outcome(shaft, more, data)
    if shaft.diameter is None:
        from gaugeblock.driveline.slimmest import with_slimmest

        end = with_slimmest(end, shaft, of.strength, data)
    cautions += [*more.cautions, *rule_cautions(data, "splines", "stress in the spline")]
    own = () if more.factor is None or end.checks else (more.factor,)
    shown = dict.fromkeys((*end.decision.figures, *own, *figures, *more.figures, *weld))
    return Sheet(
        of.title,
        asked,
        data,
        list(shown),
        [*more.checks, *end.checks],
        cautions + of.weld_cautions,
        decision=end.decision,
        questions=end.questions,
    )


def steel_of(shaft: keys.Shaft, data: Refdata) -> Steel:
    """The steel in the tables; the name alone of one that they do not have, where the shaft's own yield strength is
    given, or of one without a strength in them, where its hardness is; or of one whose treatment or temper was not
    said, where its hardness was: that says what they came to.
    """
    by_hardness = shaft.hardness is not None
    if shaft.grade == UNNAMED and by_hardness:
        return Steel.unlisted(shaft, data)
    try:
        return Steel(shaft, data)
    except LookupMiss as miss:
        if by_hardness and shaft.temper is None and (not shaft.treatment or miss.code == "ambiguous"):
            return Steel.unlisted(shaft, data)
        if shaft.yield_strength is None and not (by_hardness and miss.where == f"{TABLE} strength"):
            raise
        return Steel.unlisted(shaft, data)


def own_yield(shaft: keys.Shaft, found: Steel, data: Refdata) -> Figure | None:
    """The yield strength of this very shaft, by its certificate or as stated."""
    if shaft.yield_strength is None:
        return None
    key = {**found.key, "section": "any"}
    if not shaft.certificate:
        least, read_by = shaft.yield_strength.ends.low, shaft.yield_strength.read_by
        return stated(least, "yield_strength", "yield strength", data, read_by=read_by, key=key)
    made = maker_figure({"value": shaft.yield_strength.ends.low}, "yield_strength", shaft.certificate, "yield strength")
    return made.replace(side=data.quantity("yield_strength")["side"], key=key)


def _by_hardness(
    found: Steel, typed: keys.Hardness | None, data: Refdata
) -> tuple[list[Figure], Figure | None, list[Caution]]:
    """Strength by hardness: of the hardness measured on this shaft, else of the one published with the treatment."""
    from gaugeblock.driveline import hardness as tables

    of, measured = typed, _measured(typed, data) if typed is not None else _published(found)
    if measured is None:
        return [], None, []
    if of is None:
        of = keys.Hardness(measured.unit, units.significant(measured.typical, 6))
    figures = [measured]
    tensile = tables.tensile_from(measured, of, data)
    yields = tables.converted(of, "yield_strength_typical", data) if typed is not None else None
    torsional = tables.torsional_yields(of, data)
    whose = "measured on this shaft" if typed is not None else "published with the treatment"
    for figure in (tensile, yields, *torsional):
        if figure is not None:
            said = f"by hardness {of.text}, {whose}"
            figures.append(figure.replace(conditions=f"{said}; {figure.conditions}" if figure.conditions else said))
    cautions = rule_cautions(data, "hardness conversion", "all scales")
    if typed is not None:
        cautions += _other_hardness(found, measured, tensile, data)
    if tensile is None and typed is not None:
        text = f"{of.text} is outside the printed points of the hardness tables: no strength is taken from it."
        cautions.append(Caution(text, "note", (measured.id,), "refdata"))
    return figures, torsional[0] if typed is not None and torsional else None, cautions


def _measured(of: keys.Hardness, data: Refdata) -> Figure:
    """The hardness read on this very shaft."""
    measure = units.parse_measure(of.text, f"hardness {of.scale}", "hardness")
    read_by = "hardness test of this shaft"
    return stated(measure, f"hardness_{of.scale.casefold()}", "hardness", data, read_by=read_by)


def _published(found: Steel) -> Figure | None:
    return found.figure("hardness_hrc_typical") or found.figure("hardness_hb_typical")


def _other_hardness(found: Steel, measured: Figure, tensile: Figure | None, data: Refdata) -> list[Caution]:
    """That the hardness measured is not that of the treatment named, where the strengths by the two are over a
    tenth apart.
    """
    from gaugeblock.driveline import hardness as tables

    named = _published(found)
    if named is None or tensile is None:
        return []
    number = units.significant(named.typical, 6)
    published = tables.tensile_from(named, keys.Hardness(named.unit, number), data)
    if published is None or 0.9 <= base(tensile) / base(published) <= 1.1:
        return []
    text = (
        f"{measured.text} {measured.unit} was measured, {units.significant(named.typical)} {named.unit} is published "
        "for this treatment: the shaft is not treated as named, or the spot read is not sound metal."
    )
    return [Caution(text, "injury", (measured.id, named.id), named.source)]


def _cautions(found: Steel, strengths: list[Figure], data: Refdata) -> list[Caution]:
    out = []
    for figure in strengths:
        name = figure.quantity.replace("_", " ")
        ids = (figure.id, *(o.id for o in lookup.same_specificity(figure)))
        low, high = lookup.spread(figure)
        if high - low > 0.02 * figure.typical:
            ends = f"{units.significant(low, 4)} to {units.significant(high, 4)} {figure.unit}"
            word = "Sources disagree" if lookup.disagreement(figure) is not None else "Other rows of these keys differ"
            out.append(Caution(f"{word} on {name}: {ends}.", "note", ids, "refdata"))
    for section in dict.fromkeys(f.key["section"] for f in strengths):
        ids = tuple(f.id for f in strengths if f.key["section"] == section)
        if section != "any" and found.size is None:
            out.append(
                Caution(f"Strength here is for section {section}; no section was asked.", "note", ids, "refdata")
            )
        elif not found.covers(section):
            out.append(
                Caution(
                    f"Strength here is for section {section}, not for this shaft's diameter.", "injury", ids, "refdata"
                )
            )
    if any(f.quantity.endswith("_typical") for f in strengths):
        out += rule_cautions(data, "steel strength", "typical figures")
        out.append(
            Caution(
                "Typical, not guaranteed: the shaft maker's certificate governs.",
                "injury",
                tuple(f.id for f in strengths),
                "refdata",
            )
        )
    elif any("not guaranteed" in f.conditions or "estimated" in f.conditions for f in strengths):
        out.append(
            Caution(
                "The steel's strength is an estimated minimum, not a guarantee: the mill's certificate governs.",
                "damage",
                tuple(f.id for f in strengths),
                "refdata",
            )
        )
    out += rule_cautions(data, "steel strength", found.grade)
    by_section = all(f.key["section"] != "any" and found.covers(f.key["section"]) for f in strengths)
    if "quenched" in found.treatment and not (strengths and found.size is not None and by_section):
        out += rule_cautions(data, "steel strength", "bar size")
    if found.treatment in CASED:
        out += rule_cautions(data, "case depth", "hardened shaft") + rule_cautions(
            data, "induction hardening", "case depth"
        )
    return out


def _read_as(shaft: keys.Shaft, found: Steel, strengths: list[Figure], data: Refdata) -> list[Caution]:
    """That the table names the quench and the user did not, or the other way round."""
    if " ".join(shaft.treatment.split()).casefold() == found.treatment.casefold() or not strengths or not found.rows:
        return []
    asked = data.words("driveline", "treatment").get(" ".join(shaft.treatment.split()).casefold(), shaft.treatment)
    if asked.casefold() == found.treatment.casefold():
        return []
    text = f"Published as {found.treatment}, asked as {asked}: the quench is named in one of them only."
    return [Caution(text, "note", tuple(f.id for f in strengths), strengths[0].source or "common practice")]


def _welding(found: Steel, data: Refdata) -> tuple[list[Figure], list[Caution]]:
    """The carbon equivalent of the middle of the heat, and what follows for welding."""
    parts = {r["quantity"]: r for r in found.composition if r["quantity"].startswith("mass_fraction_")}
    masses = [lookup.figure_of(parts[q], data) if (q := f"mass_fraction_{e}") in parts else None for e in _ELEMENTS]
    hardened = any(word in found.treatment for word in _HARDENED)
    cautions = rule_cautions(data, "welding", "hardened shafts") if hardened else []
    subject = "1541, 1050, 4140 and other axle shaft steels"
    if masses[0] is None or masses[1] is None:
        return [], cautions + (rule_cautions(data, "welding", subject) if hardened else [])
    value = calc.carbon_equivalent(*(base(m) * 100 if m is not None else 0.0 for m in masses))
    figure = derived(
        "carbon_equivalent",
        "carbon_equivalent",
        units.from_base(value / 100, "%"),
        "%",
        tuple(m for m in masses if m is not None),
        data,
        key={"steel": found.grade},
        conditions="middle of the composition range; elements without a row counted as none",
    )
    if value >= _PROCEDURE:
        cautions += rule_cautions(data, "welding", subject)
    elif value > _PREHEAT_USUAL:
        text = (
            f"Carbon equivalent {value:.2f}: preheat is usual above about {_PREHEAT_USUAL}. "
            "Weld it by a procedure, not by habit."
        )
        cautions.append(Caution(text, "injury", (figure.id,), "common practice"))
    return [figure], cautions
