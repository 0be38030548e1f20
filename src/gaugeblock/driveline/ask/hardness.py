"""What is asked of a hardness: on another scale, as strength, within bounds; or the hardness of a strength."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Topic, amount, words_of
from gaugeblock.driveline.ask.between import HARDNESS_BETWEEN, SCALE_WANTED, STRENGTH_WANTED, held_against, of_strength
from gaugeblock.driveline.ask.common import HALF_SHAFT, HARDNESS_SAID, SCALE, answer_of
from gaugeblock.errors import Ambiguous

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _by_value(
    value: str, *, steel: str = "", within: str = "", to: str | None = None, wanted: str = "", data: Refdata
) -> Sheet:
    """A hardness on other scales and as strength, which is the same for every steel of even structure; whether it lies
    ``within`` what was asked of it, ``28 to 32 HRC``, or what it is on the scale that it was wanted ``to``; ``wanted``
    is the strength that is asked by its name.
    """
    del steel
    from gaugeblock.driveline.hardness import hardness

    number, scale = value.split(" ")
    if scale == "?":
        raise Ambiguous(
            number, "hardness", "the scale was not said", ("HRC", "HRB", "HB", "HV"), "say the scale, 30 HRC"
        )
    if within:
        return held_against(hardness(scale, number, data=data), number, scale, within)
    made = hardness(scale, number, to=to, data=data)
    return of_strength(made, wanted) if wanted and to is None else made


HARDNESS = Topic(
    lambda: _by_value,
    "hardness",
    {
        "within": HARDNESS_BETWEEN,
        "value": HARDNESS_SAID,
        "to": SCALE_WANTED,
        "wanted": STRENGTH_WANTED,
        "steel": (Named(words_of("driveline", "steel", "driveline/steels"), say="steel {}"),),
    },
    r"how strong(?: (?:is|are|does that make))?(?: it)?|strong|what does (?:that|it) make it(?: for)?|(?:lump|piece"
    r"|length)"
    r" of (?:bar|steel|shaft)|on it|heat treated|make it"
    rf"|{HALF_SHAFT}|(?:in|to|as|into|equals?|is|what|which)(?: what)? (?:{SCALE}|ksi|mpa|psi|tensile)"
    rf"|convert(?:ed)?|conversion"
    rf"|hard(?:ness)?"
    r"|(?:torsion(?:al)?|shear|yield|tensile)?(?: yield)? ?strength|torsion(?:al)?|shear|yield|tensile|equivalent"
    r"|ksi|psi|(?:an? )?alloy steel|steel|shaft|axle|bar|(?:right |all the way )?through|tests?|tested|reads?|hardness"
    r" tester|file(?:"
    r" test(?:er)?)?"
    r"|(?:print|drawing|spec|sheet) (?:calls? for|wants?|asks? for|says?)|(?:mill )?cert(?:ificate)?(?:"
    r" (?:gives?|says?|reads?))?"
    r"|in or out|inside(?: or out)?|within|in range|pass(?:es)?|splines?|journals?|cheap|gives|bar|in spec"
    r"|goes with|(?:what )?does (?:that|it) (?:mean|come to)|comes? to|works? out|roughly|file tester|tester",
    needs=("value",),
)


def _of_strength(strength: str, *, steel: str = "", to: str | None = None, data: Refdata) -> Sheet:
    """The hardness that goes with a tensile strength, which is the same for every steel of even structure."""
    del steel
    from gaugeblock.driveline.hardness import TENSILE, hardness

    return hardness(TENSILE, strength, to=to, data=data)


HARD_OF_STRENGTH = Topic(
    lambda: _of_strength,
    "hardness of a strength",
    {
        "strength": (amount("stress", after="(?:tensile|uts|strength|ultimate)(?: strength)?"), amount("stress")),
        "to": SCALE_WANTED,
        "steel": HARDNESS.slots["steel"],
    },
    HARDNESS.signals + r"|(?:what|which)(?: rockwell| brinell)? (?:hardness|rockwell|brinell|hrc|hb)|how hard|rockwell"
    r"|brinell|hrc|bhn|hb|uts|tensile|is|of|for|that|would|be|should|to get|get|need|do i need|certificate|cert|says",
    needs=("strength",),
    asks_for=r"(?:what|which|how) (?:rockwell|hard\w*|brinell|hrc|hb)|hardness(?: (?:is|of|for|in|to|at))*(?! [0-9])"
    rf"|(?:in|to) (?:{SCALE})",
    is_named=True,
    unmoved="metal finish form service quality",
)
# At the bench a hardness has its scale beside it; a question has both in one.
BY_SCALE = Topic(
    lambda: answer_of("hardness", "hardness"),
    "hardness",
    {"value": (), "to": SCALE_WANTED, "scale": (Named(words_of("driveline", "scale", "driveline/hardness")),)},
    "",
    needs=("scale", "value"),
    columns={"scale": ("driveline/hardness", "scale")},
)
