"""The answer ``exhaust_outlet``: where the end of an exhaust may be, by published rules."""

from __future__ import annotations

from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import none
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import LookupMiss
from gaugeblock.exhaust.statements import cautions, of_topic
from gaugeblock.lookup import figure_of
from gaugeblock.tables.load import Refdata, refdata

VERB = "END IT"
_ALL = ("any", "vehicle", "heavy truck")
_CHECK = "rule of the place"


def exhaust_outlet(jurisdiction: str | None = None, *, data: Refdata | None = None) -> Sheet:
    """Where the outlet of an exhaust may be, by the published rules of a place.

    ``jurisdiction`` is the place whose rules hold (``Germany``, ``US New Hampshire``). Returns a Sheet without a figure
    where none is published: what the rules say in words, and what must be asked. Raises LookupMiss for a place of
    which no rule is listed.

    >>> exhaust_outlet("Germany").decision.kind
    'none'
    """
    data = data or refdata()
    rules = of_topic(data, "exhaust outlet", _ALL)
    places = sorted({where for where, _ in rules if where != "any"})
    here = None
    if jurisdiction:
        said = jurisdiction.casefold().strip()
        here = next((p for p in places if p.casefold() == said or p.casefold().split()[-1] == said), None)
        if here is None:
            from gaugeblock.tables.near import nearest

            near = nearest(jurisdiction, places, 5) or places[:5]
            raise LookupMiss(
                jurisdiction[:60],
                "jurisdiction",
                "no rule of this place is listed, and that of another does not hold there",
                near,
                "ask the inspection of that place, or leave the place out for what is said of all",
            )
    told = [c for where, c in rules if here is None or where in (here, "any")]
    told += cautions(data, ("exhaust",), ("carbon monoxide", "exhaust leak"))
    rows = data.table("exhaust/outlets").by_quantity.get("outlet_overhang_maximum", ())
    figures = [figure_of(r, data) for r in rows if here is None or r["jurisdiction"] == here]
    if here is None:
        why = f"the place is not given; rules in words are listed for {', '.join(places)}"
        question = Question(
            FILL_IN, "In which place is it registered? Its own inspection rules govern.", "jurisdiction", (_CHECK,)
        )
        do = "Behind the seats, past the body, never under a door, a window or the filler. Name the place for its rule."
    else:
        why = f"the rules of {here} are words: {told[0].text.removeprefix(here + ': ')}"
        question = Question(
            FILL_IN, f"Ask the inspection of {here} whether this outlet passes.", "jurisdiction", (_CHECK,)
        )
        do = told[0].text.removeprefix(f"{here}: ")
    check = Check(_CHECK, CANNOT_TELL, why.rstrip("."), bears=ASK)
    return Sheet(
        f"exhaust outlet, {here or 'any place'}",
        {"jurisdiction": jurisdiction},
        data,
        figures,
        [check],
        told,
        decision=none(VERB, do),
        questions=[question],
    )
