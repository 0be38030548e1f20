"""Pipe thread: the drill for its tap, its threads an inch, how far it goes in by hand."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.answer.decision import none, use
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.sheet import Sheet
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, canonical, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

TABLE = "fasteners/pipe_threads"
# What may be asked of a pipe thread -> the quantities that have it, the first there is.
FACTS = {
    "tap drill": ("hole_diameter",),
    "pitch": ("threads_per_inch", "pitch"),
    "diameter": ("gauge_plane_major_diameter",),
    "hand tight": ("hand_tight_engagement", "gauge_length"),
    "thread length": ("effective_thread_length", "gauge_length"),
}
VERBS = {
    "tap drill": "DRILL",
    "pitch": "PITCH",
    "diameter": "OUTSIDE DIAMETER",
    "hand tight": "IN BY HAND",
    "thread length": "THREAD LENGTH",
}


def pipe_thread(series: str, size: str, *, fact: str = "tap drill", data: Refdata | None = None) -> Sheet:
    """What a pipe thread measures.

    ``series`` ``NPT``, ``BSPT`` or ``BSPP`` (straight); ``size`` its nominal size (``1/4 in``), that of the pipe;
    ``fact`` ``tap drill``, ``pitch``, ``diameter``, ``hand tight`` (how far it goes in by hand) or ``thread length``.

    Returns a Sheet; its decision is ``none`` where the tables lack the fact. Raises LookupMiss for what is no pipe
    thread, InputError for no fact.

    >>> pipe_thread("NPT", "1/4 in").decision.figure.text
    '0.4375'
    """
    data = data or refdata()
    if fact not in FACTS:
        raise InputError(fact, "fact", "nothing of a pipe thread is called so", tuple(FACTS), "ask for one of these")
    size = f"{size} in" if size.replace(" ", "").replace("-", "").replace("/", "").isdigit() else size
    key = {"series": canonical(data, TABLE, "series", series), "size": canonical(data, TABLE, "size", size)}
    asked = {"series": series, "size": size, "fact": fact}
    title = f"{key['size']} {key['series']}"
    quantities = dict.fromkeys(q for names in FACTS.values() for q in names)
    every = [f for q in quantities if (f := lookup.look_up_or_none(TABLE, q, data=data, **key)) is not None]
    wanted = next((f for q in FACTS[fact] for f in every if f.quantity == q), None)
    if wanted is None:
        do = f"No table that was read has the {fact} of a {title} thread. The maker of the tap prints it."
        straight = _straight(key, fact, data)
        every, do = [*straight, *every], f"{do}{_told(straight)}"
        return Sheet(title, asked, data, every, [], [], decision=none(VERBS[fact], do))
    verb = "THREADS PER INCH" if wanted.quantity == "threads_per_inch" else VERBS[fact]
    figures = [wanted, *(f for f in every if f is not wanted)]
    return Sheet(title, asked, data, figures, [], [], decision=use(verb, wanted, _said(wanted.conditions)))


def _said(conditions: str) -> str:
    """The conditions of a figure as a sentence."""
    return f"{capital(conditions)}." if conditions else ""


def _straight(key: dict[str, str], fact: str, data: Refdata) -> list[Figure]:
    """What the straight thread of a British taper one's size has of a fact; none where that is not on record."""
    if key["series"] != "BSPT" or fact != "tap drill":
        return []
    found = lookup.look_up_or_none(TABLE, "hole_diameter", data=data, series="BSPP", size=key["size"])
    return [] if found is None else [found]


def _told(straight: list[Figure]) -> str:
    return "".join(f" The straight one, BSPP, is drilled {f.text} {f.unit}." for f in straight)
