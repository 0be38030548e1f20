"""Box beam: what a load in the middle of a span makes of a square or rectangular tube: its stress and its sag."""

from __future__ import annotations

from gaugeblock import lookup, units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, none
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.calc import tubes as calc
from gaugeblock.calc.frame import G
from gaugeblock.tubes import keys
from gaugeblock.tubes.beam import READ, SCREENING

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

VERB = "UNDER THIS LOAD"
_YIELD = "stress against the yield strength"


def loaded(section: Sheet, span: str, load: str, material: str | None, data: Refdata) -> Sheet:
    """The Sheet of a box with a load in the middle of its span: stress, and sag where the metal's modulus is known.

    No table has the strength of a box tube, so it asks for that of its paper. Source: elementary beam theory, a load in
    the middle of a beam on two supports: moment F L / 4, sag F L^3 / (48 E I).
    """
    shape = {figure.quantity: figure for figure in section.figures}
    typed = {"span": span, "load": load}
    read = {key: read_positive(text, READ[key][0], key) for key, text in typed.items()}
    title = section.title.replace(": section", f" across {read['span'].text}, {read['load'].text} in the middle")
    odd = [key for key, measure in read.items() if not is_plausible(measure, READ[key][1], data)]
    if odd or "second_moment" not in shape:
        said = did_you_mean(f"{read[odd[0]].text} is no usual {odd[0]} of a tube", ()) if odd else section.decision.do
        return section.replace(title=title, decision=none(VERB, said))
    given = {key: stated(measure, READ[key][1], key, data) for key, measure in read.items()}
    inch = shape["box_height"].unit == "in"
    force = base(given["load"]) * G
    key = {**shape["second_moment"].key, **{k: m.text for k, m in read.items()}}
    number = calc.beam_centre_stress(force, base(shape["section_modulus"]), base(given["span"]))
    unit = "psi" if inch else "MPa"
    inputs = (given["load"], shape["section_modulus"], given["span"])
    words = "in the middle of the span, standing still"
    stress = derived(
        "beam_centre_stress",
        "bending_stress",
        units.from_base(number, unit),
        unit,
        inputs,
        data,
        key=key,
        conditions=words,
    )
    figures = [stress, *given.values()]
    shown = [Candidate(stress, "stress in the middle, standing still")]
    stock = keys.stock(material or "steel", data)
    modulus = lookup.look_up_or_none("tubes/materials", "modulus", data=data, family=stock.family)
    if modulus is not None:
        sag = _sag(given, modulus, shape, key, inch, data)
        figures[:0] = [sag]
        figures.append(modulus)
        shown.insert(0, Candidate(sag, f"sag in the middle, of {stock.family}"))
    text = "State how strong this tube is: the yield strength of its paper."
    check = Check(_YIELD, CANNOT_TELL, "no table has the yield strength of a box tube", bears=ASK)
    do = "Set the stress against the yield strength on the paper of this tube, with room for bumps, before it carries."
    cautions = [Caution(SCREENING, "injury", (stress.id,), "calculated"), *section.cautions]
    return section.replace(
        title=title,
        figures=[*figures, *section.figures],
        checks=[check],
        cautions=cautions,
        decision=ask(VERB, shown, [_YIELD], do),
        questions=[Question(FILL_IN, text, "load", (_YIELD,))],
    )


def _sag(
    given: dict[str, Figure],
    modulus: Figure,
    shape: dict[str, Figure],
    key: dict[str, str],
    inch: bool,
    data: Refdata,
) -> Figure:
    """How far the middle goes down under the load."""
    second = shape["second_moment"]
    down = calc.beam_centre_sag(base(given["load"]) * G, base(given["span"]), base(modulus), base(second))
    unit = "in" if inch else "mm"
    inputs = (given["load"], given["span"], modulus, second)
    number = units.from_base(down, unit)
    return derived("beam_centre_sag", "deflection", number, unit, inputs, data, key=key, conditions="standing still")
